"""The texts of a product sheet and a house file that somebody begins: every key with what it means, none with a value.

Data that nobody looked up would be worse than none, so that each key stands in a comment beside its example.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from roomlint.design.products import DATA_OF

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from roomlint.source.listing import Listed

_WRITTEN: Final = ("$schema", "roomlint_product", "id", "kind", "roomlint_house")
_GROUPS: Final = frozenset(group for groups in DATA_OF.values() for group in groups)


def product_text(kind: str, ident: str, keys: Iterable[Listed]) -> str:
    """Return a sheet of one kind of product, from the list of keys of a sheet."""
    groups = DATA_OF.get(kind, ())
    wanted = (key for key in keys if (top := key.path.partition(".")[0]) in groups or top not in _GROUPS)
    lines = [
        f"# Product sheet of a {kind}, begun with `roomlint new`. Copy from the maker's data what they say: take `#: `",
        "# away and put the value in the place of the example. Leave the rest: what a check misses it asks for.",
        "roomlint_product: 1",
        f"id: {ident}  # the name that room files use",
        f"kind: {kind}",
        *_commented(wanted),
    ]
    return "\n".join(lines) + "\n"


def house_text(keys: Iterable[Listed]) -> str:
    """Return a house file, from the list of its keys."""
    lines = [
        "# The team's standing decisions, begun with `roomlint new --house`. It holds for all rooms in and below its",
        "# folder. What follows `#: ` are keys with examples: take `#: ` away from those that you decide.",
        "roomlint_house: 1",
        *_commented(keys),
    ]
    return "\n".join(lines) + "\n"


def _commented(keys: Iterable[Listed]) -> Iterator[str]:
    """Yield every key, with its example, as a line to be used; a mapping opens, a list begins with a dash."""
    dashes: set[str] = set()
    for key in keys:
        if key.path in _WRITTEN:
            continue
        parts = key.path.split(".")
        above = parts[:-1]
        name = parts[-1].replace("[]", "")
        depth = len(above) + sum(part.count("[]") for part in above)
        lead = "  " * depth
        holder = ".".join(above)
        if above and above[-1].endswith("[]") and holder not in dashes:
            dashes.add(holder)
            lead = lead[:-2] + "- "
        yield f"#: {lead}{name}:{_value(key)}  # {key.about}"


def _value(key: Listed) -> str:
    if key.holds:
        return ""
    if key.form.startswith("list of"):
        return f" [{key.example}]"
    return f" {key.example}"
