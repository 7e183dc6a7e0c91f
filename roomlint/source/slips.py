"""Slips of the pen that YAML punishes far from where they were made, told where they were made and in plain words."""

from __future__ import annotations

import re
from typing import Any

from roomlint.source.say import code

_ODD_SPACES = "\u00a0\u1680\u2000-\u200b\u202f\u205f\u3000"
_ODD_INDENT = re.compile(rf"(?m)^[ \t]*([{_ODD_SPACES}])")
_ODD_IN_KEY = re.compile(rf"[{_ODD_SPACES}]")
_COMMENT = re.compile(r"[ \t](#[^\n]*)")
_ONLY_A_NUMBER = re.compile(r"[ \t]+(#[0-9]+)[ \t\r]*(?:\n|\Z)")
_SWALLOWED = re.compile(r"[ \t]+(#[^\s#][^\n]*)")
_CURLY = frozenset("“”‘’„‟‚‛")
_OPENERS = {"}": "{", "]": "["}
_DASHED_NUMBER = re.compile(r"[\u2212\u2010\u2011\u2013][0-9]+(?:\.[0-9]+)?")

At = tuple[int, str]
"""Index into the text, and what is told."""


def slip_of(error: Any, said: str, text: str, index: int) -> At | None:  # noqa: ANN401  the parser has no types
    """Return where and what the slip behind a complaint of the parser is; None when it is none of the known."""
    since = error.context_mark.index if error.context_mark is not None else index
    here = text[index : index + 1]
    found = _odd_indent(text, index)
    if found is None and said.startswith(("did not find expected ',' or", "did not find expected node content")):
        found = _closing_in_a_comment(text, min(since, index), index) or _colon_in_braces(text, index)
    if found is None and here in _OPENERS and _is_one_too_many(text, index, here):
        hint = f"there is one `{here}` too many here; what it would close is closed already. Remove it."
        found = index, hint
    if found is None and said.startswith("mapping values are not allowed"):
        found = _colon_in_curly_quotes(text, index)
    return found


def _odd_indent(text: str, index: int) -> At | None:
    """Find the last line up to the complaint that is indented with spaces that YAML does not count."""
    end = text.find("\n", index)
    found = list(_ODD_INDENT.finditer(text, 0, end if end >= 0 else len(text)))
    if not found:
        return None
    return found[-1].start(1), f"{odd_space(found[-1][1])} stands in the indent of this line. Indent with plain spaces."


def odd_space(character: str) -> str:
    """Name a space that looks plain and is not."""
    name = "a no-break space" if character in "\u00a0\u202f" else "a space that is not the keyboard's"
    return f"{name} (U+{ord(character):04X})"


def _closing_in_a_comment(text: str, since: int, index: int) -> At | None:
    start = text.rfind("\n", 0, since) + 1 if since < index else 0
    for found in _COMMENT.finditer(text, start, index):
        closes = any(closer in found[1] for closer in _OPENERS)
        if closes and _is_in_brackets(text, found.start(1)) and not _in_quotes(text, found.start(1)):
            word = re.match(r"#[^\s,{}\[\]]*", found[1])
            value = word[0] if word is not None else "#"
            said = (
                f"{code(value)} begins a comment, and the rest of the line, the closing bracket too, is not read. "
                f'If it is the value, put it in quotes: "{value}".'
            )
            return found.start(1), said
    return None


def _is_in_brackets(text: str, index: int) -> bool:
    """Tell whether the line up to an index opens a bracket that it does not close."""
    before = text[text.rfind("\n", 0, index) + 1 : index]
    return any(before.count(opener) > before.count(closer) for closer, opener in _OPENERS.items())


def _in_quotes(text: str, index: int) -> bool:
    """Tell roughly whether an index lies in quotes that its own line opens."""
    before = text[text.rfind("\n", 0, index) + 1 : index]
    return before.count('"') % 2 == 1 or len(re.findall(r"(?<![A-Za-z])'", before)) % 2 == 1


def _colon_in_braces(text: str, index: int) -> At | None:
    if text[index : index + 1] != ":":
        return None
    start = max(text.rfind(sign, 0, index) for sign in (": ", ",", "{", "[", "\n"))
    value = text[start + 1 : index].strip()
    if text[start : start + 2] != ": " or not value:
        return None
    said = f"the value that begins with {code(value)} holds a colon. Put the whole value in quotes."
    key = re.search(r"[ \t]([a-z]+(?:_[a-z]+)*)$", value)
    if key is not None and text[index + 1 : index + 2] in {" ", "{", "["}:
        # A word and a colon after a value is the next key.
        said = f"a comma is missing before {code(key[1])}. If it is part of the value, put the whole value in quotes."
    return start + 1 + len(text[start + 1 : index]) - len(text[start + 1 : index].lstrip()), said


def _is_one_too_many(text: str, index: int, closer: str) -> bool:
    line = text[text.rfind("\n", 0, index) + 1 : index + 1]
    return line.count(closer) > line.count(_OPENERS[closer])


def _colon_in_curly_quotes(text: str, index: int) -> At | None:
    start = text.rfind("\n", 0, index) + 1
    for offset, character in enumerate(text[start:index]):
        if character in _CURLY:
            said = f"the curly quote {code(character)} is not read as a quote. Use straight quotes, ' or \"."
            return start + offset, said
    return None


def slip_in_key(name: str) -> str:
    """Return what is wrong with a key that holds a space nobody sees; empty when there is none."""
    found = _ODD_IN_KEY.search(name)
    if found is None:
        return ""
    return f"{odd_space(found[0])} stands in or before the key {code(name.strip())}. Use plain spaces."


def slip_in_number(text: str) -> str:
    """Return what is wrong with a bare number whose minus is another sign; empty when it is none."""
    if text.isascii() or _DASHED_NUMBER.fullmatch(text) is None:
        return ""
    return f"the sign before {text[1:]} is U+{ord(text[0]):04X}, not the keyboard's minus. Write -{text[1:]}."


def swallowed(text: str, index: int) -> str:
    """Return what is wrong where a value is missing because a comment swallowed it; empty when none did."""
    found = _SWALLOWED.match(text, index)
    if found is None:
        return ""
    value = found[1].rstrip()
    return f'{code(value)} is a comment, so there is no value here. If it is the value, put it in quotes: "{value}".'


def cut_off(text: str, index: int, value: str) -> str:
    """Return what is wrong where a number sign cuts a text short, as in `Room #17`; empty when none does."""
    found = _ONLY_A_NUMBER.match(text, index)
    if found is None:
        return ""
    full = f"{value} {found[1]}"
    return (
        f'{code(found[1])} begins a comment here, so only {code(value)} is read. Put the whole in quotes, "{full}", '
        "or a blank after the # of a comment."
    )


def has_number_signs(text: str) -> bool:
    """Tell whether a file holds any number sign that may have cut a text short."""
    return "#" in text and re.search(r"[ \t]#[0-9]+[ \t\r]*(?:\n|\Z)", text) is not None
