"""Words that several messages share."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Iterable

    from roomlint.source.node import Node

_INCH_POUND = r"[0-9½¼¾⅛⅜⅝⅞] ?(?:ft|in|inch|inches|feet|lbs?|lbf|'{1,2}|\"|′|″|degF|°F|cfm)(?![A-Za-z])"
_QUARTER_INCH_M = 0.00635
_METRIC = r"[0-9] ?(?:m|mm|cm|kg|g|N|degC|°C|m3/h)(?![A-Za-z])"


def kind_of(value: object) -> str:
    """Say in plain words what kind of value was found."""
    if value is None:
        return "empty"
    if isinstance(value, bool):
        return "true or false"
    for kind, words in _KINDS:
        if isinstance(value, kind):
            return words
    return type(value).__name__


_KINDS = ((int, "a number"), (float, "a number"), (str, "text"), (dict, "a mapping"), (list, "a list"))


def shorten(text: str, limit: int = 40) -> str:
    """Return a text cut to a length that a one-line message bears."""
    return text if len(text) <= limit else text[: limit - 1] + "…"


def code(text: str) -> str:
    """Return a name or value from a file as a message shows it: short, on one line, nothing hidden."""
    short = shorten(text)
    return f"`{short if short.isprintable() else repr(short)[1:-1]}`"


def nearest(word: str, known: Iterable[str]) -> str | None:
    """Return the known word for what the trade calls otherwise, else the one most like it, if any is near."""
    import difflib  # here, because only a mistake needs it

    from roomlint.source.trade import ours

    known = list(known)
    meant = ours(word, known)
    if meant is not None:
        return meant
    known = [name for name in known if len(name) <= 2 * len(word) + 4]
    folded = {name.casefold(): name for name in known}
    found = difflib.get_close_matches(word.casefold()[:80], folded, n=1, cutoff=0.6)
    return folded[found[0]] if found else None


def a(noun: str) -> str:
    """Return a noun with its article."""
    return f"{'an' if noun[:1] in 'aeiou' else 'a'} {noun}"


def length_words(metres: float, *, customary: bool) -> str:
    """Return a length as a message about a file shows it: to a centimetre, or to a quarter of an inch."""
    if not customary:
        return f"{metres:.2f} m"
    feet, quarters = divmod(round(metres / _QUARTER_INCH_M), 48)
    inches, part = divmod(quarters, 4)
    said = " ".join(filter(None, (str(inches) if inches or not part else "", ("", "1/4", "1/2", "3/4")[part])))
    return " ".join(filter(None, (f"{feet} ft" if feet else "", f"{said} in" if quarters or not feet else "")))


def leans_customary(text: str) -> int:
    """Return 1 for a text in units of the United States, -1 for one in metric ones, 0 where it is neither or both."""
    return (re.search(_INCH_POUND, text) is not None) - (re.search(_METRIC, text) is not None)


def mixes_units(text: str) -> bool:
    """Tell whether a text has units of the United States and metric ones beside each other."""
    return re.search(_INCH_POUND, text) is not None and re.search(_METRIC, text) is not None


def is_customary(root: Node) -> bool:
    """Tell whether a file is written in the units of the United States rather than in metric ones.

    Where its lengths do not tell, because none has a unit yet, the region that it names does.
    """
    count, waiting = 0, [root]
    while waiting:
        value = waiting.pop().value
        if type(value) is str:
            count += leans_customary(value)
        elif type(value) is dict:
            waiting.extend(value.values())
        elif type(value) is list:
            waiting.extend(value)
    return count > 0 or (count == 0 and _is_in_the_us(root))


def _is_in_the_us(root: Node) -> bool:
    project = root.get("project") if type(root.value) is dict else None
    region = project.get("region") if project is not None and type(project.value) is dict else None
    return region is not None and region.value == "us"


def one_line(text: str) -> str:
    """Return a text on one line, with escapes for what is not seen and would steer a terminal or a log."""
    if text.isprintable():
        return text
    return "".join(
        sign if sign.isprintable() else sign.encode("unicode_escape", "backslashreplace").decode("ascii")
        for sign in " ".join(text.split())
    )
