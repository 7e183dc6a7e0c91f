"""Data as Markdown: nothing that a file says can become markup, a link, a mention or HTML."""

from __future__ import annotations

from roomlint.source.say import one_line

MARKUP = {ord(sign): f"\\{sign}" for sign in "\\`*_{}[]()|~!"} | {
    ord("&"): "&amp;",
    ord("<"): "&lt;",
    ord(">"): "&gt;",
    ord("@"): "@<!-- -->",
    ord("#"): "#<!-- -->",
}
"""What each sign of data becomes: an empty comment keeps code hosts from making mentions and issue links of it."""
PROSE = {ord("&"): "&amp;", ord("<"): "&lt;", ord(">"): "&gt;"}


def data(text: str) -> str:
    """Return a text from a file as Markdown that shows exactly that text, on one line."""
    text = one_line(text).translate(MARKUP)
    return text.replace("://", ":<!-- -->//").replace("www.", "www<!-- -->.")


def code(text: str) -> str:
    """Return a text from a file as a code span that may stand in a table."""
    text = one_line(text).replace("|", "\\|")
    fence = "`"
    while fence in text:
        fence += "`"
    edge = " " if text.startswith("`") or text.endswith("`") else ""
    return f"{fence}{edge}{text}{edge}{fence}"


def prose(text: str) -> str:
    """Return a rule's own words, which may hold code spans, as Markdown without HTML."""
    parts = text.split("`")
    parts[::2] = [part.translate(PROSE) for part in parts[::2]]
    return "`".join(parts)
