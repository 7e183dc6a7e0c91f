"""Bytes to text fit for the parser, spans of that text, and the parser's complaints in plain words."""

import re
from itertools import islice
from typing import Any

from roomlint.source.place import Place, Problem
from roomlint.source.say import shorten
from roomlint.source.slips import slip_of

MAX_BYTES = 1 << 20
_MOST_UNFIT = 20  # more of the same would help nobody

_PROPERTIES = r"(?:[&!]\S*[ \t]+)+"
_DIRECTIVE = r"(?m)^%(?!YAML 1\.2[ \t]*(?:#.*)?\r?$).*"
_WORD = r"[^\s,\[\]{}]+"
_BREAKS = {"\x85": "a next-line character", "\u2028": "a line separator", "\u2029": "a paragraph separator"}


class Source:
    """One file's text, turned into places only when a place is asked for."""

    __slots__ = ("_text", "file")

    def __init__(self, file: str, text: str) -> None:
        self.file = file
        self._text = text

    def at(self, line: int, column: int, width: int = 1) -> Place:
        """Return a place on one line; line and column count from 1."""
        return Place(self.file, line, column, line, column + width)

    def start_of(self, event: Any) -> Place:  # noqa: ANN401
        """Return the first word of a parser event, its anchor or tag included."""
        mark = event.start_mark
        word = re.match(_WORD, self._text[mark.index : mark.index + 80])
        return self.at(mark.line + 1, mark.column + 1, len(word[0]) if word is not None else 1)

    def place(self, event: Any, *, one_line: bool = False) -> Place:  # noqa: ANN401
        """Return the span of a parser event without its anchor or tag, or only the part on its first line."""
        text = self._text
        start, end = event.start_mark, event.end_mark
        line, column, index = start.line + 1, start.column + 1, start.index
        if getattr(event, "anchor", None) is not None or getattr(event, "tag", None) is not None:
            properties = re.match(_PROPERTIES, text[index : end.index])
            if properties is not None:
                column += properties.end()
                index += properties.end()
        end_line, end_column = end.line + 1, end.column + 1
        if end_line != line:
            written = text[index : end.index].rstrip()  # a block scalar runs on to the next content
            breaks = written.count("\n")
            end_line = line + breaks
            end_column = len(written) - written.rfind("\n") if breaks else column + len(written)
        if one_line and end_line != line:
            stop = text.find("\n", index)
            end_line, end_column = line, column + len(text[index:stop].rstrip())
        return Place(self.file, line, column, end_line, end_column)


def position(text: str, index: int) -> tuple[int, int]:
    """Return line and column, from 1, of an index into a text."""
    return text.count("\n", 0, index) + 1, index - text.rfind("\n", 0, index)


def decode(data: bytes | str, file: str) -> tuple[str, list[Problem]]:
    """Turn a file's bytes into text without byte order mark, or say where it is no such text."""
    blank = Source(file, "")
    size = len(data)
    if size > MAX_BYTES:
        said = f"the file holds {size} bytes; at most {MAX_BYTES} are read. Split it, or remove what is not design."
        return "", [Problem(blank.at(1, 1), said)]
    if isinstance(data, str):
        text = data
    else:
        try:
            text = data.decode("utf-8")
        except UnicodeDecodeError as error:
            before = data[: error.start].decode("utf-8").removeprefix("\ufeff")
            return "", [Problem(blank.at(*position(before, len(before))), _not_utf8(data, error.start))]
    text = text.removeprefix("\ufeff")
    unfit = [character for character in set(text) if is_unfit(character)]
    if unfit or text.count("\r") != text.count("\r\n"):
        found = re.finditer(f"[{re.escape(''.join(unfit))}]|\r(?!\n)" if unfit else "\r(?!\n)", text)
        return "", [
            Problem(blank.at(*position(text, match.start())), _unfit(match[0])) for match in islice(found, _MOST_UNFIT)
        ]
    return _directives(text, blank)


def is_unfit(character: str) -> bool:
    """Tell whether the parser refuses a character, or breaks the line at it although editors do not."""
    code = ord(character)
    if code < 0xA0:  # noqa: PLR2004 (the end of the second block of control characters)
        return (code < 0x20 and character not in "\t\n\r") or code >= 0x7F  # noqa: PLR2004
    return character in "\u2028\u2029\ufeff\ufffe\uffff" or 0xD800 <= code < 0xE000  # noqa: PLR2004


def _directives(text: str, blank: Source) -> tuple[str, list[Problem]]:
    if text.startswith("%") or "\n%" in text:
        found = re.search(_DIRECTIVE, text)
        if found is not None:
            written = found[0].strip()
            line, column = position(text, found.start())
            return "", [
                Problem(
                    blank.at(line, column, len(written)),
                    f"`{shorten(written)}` is a directive; the only one read is `%YAML 1.2`. Remove the line.",
                )
            ]
    return text, []


def _not_utf8(data: bytes, offset: int) -> str:
    if data.startswith((b"\xff\xfe", b"\xfe\xff")):
        return "the file is UTF-16, not UTF-8. Save it again as UTF-8."
    return f"byte 0x{data[offset]:02x} at offset {offset} is not UTF-8 text. Save the file again as UTF-8."


def _unfit(character: str) -> str:
    if character == "\r":
        return "a carriage return stands here without a line feed. End lines with LF or CRLF."
    if character in _BREAKS:
        return (
            f"{_BREAKS[character]} (U+{ord(character):04X}) stands here; some programs break the line at it. Remove it."
        )
    if character == "\ufeff":
        return "a byte order mark (U+FEFF) stands inside the text, unseen. Remove it."
    return f"the character U+{ord(character):04X} is not text that can be seen. Remove it."


def syntax_text(error: Any, text: str) -> tuple[int, int, str]:  # noqa: ANN401
    """Return line, column and a plain sentence for a complaint of the parser."""
    said = str(error.problem or error.context or "the text is not YAML")
    mark = error.problem_mark or error.context_mark
    if said.startswith("did not find expected alphabetic"):  # the sign before the name is what is wrong
        mark = error.context_mark or mark
    line, column, index = (mark.line + 1, mark.column + 1, mark.index) if mark is not None else (1, 1, 0)
    here = text[index : index + 1]
    slip = slip_of(error, said, text, index)
    if slip is not None:
        return *position(text, slip[0]), slip[1]
    since = error.context_mark.line + 1 if error.context_mark is not None else line
    if said == "found character that cannot start any token":
        if here == "\t":
            return line, column, "a tab stands where the line is indented. Indent with spaces."
        return line, column, f"`{here}` cannot start a value. Put the value in quotes."
    for start, words in _COMPLAINTS:
        if said.startswith(start):
            return line, column, words.format(since=since)
    return line, column, f"this is not YAML: {said}. Compare with the lines around it."


_COMPLAINTS = (
    (
        "mapping values are not allowed",
        (
            "a `:` stands where no key can be: the line's indent differs from its neighbours', "
            "or the value holds a colon. Correct the indent, or put the value in quotes."
        ),
    ),
    (
        "could not find expected ':'",
        "the text from line {since} on is no `key: value`: a colon is missing, or the line is indented wrongly.",
    ),
    (
        "did not find expected key",
        (
            "a `key: value` was expected in the mapping that starts on line {since}. "
            "Give this line the same indent as that mapping's keys, or close the quotes before it."
        ),
    ),
    (
        "did not find expected '-' indicator",
        "a `- ` was expected in the list that starts on line {since}. Give this line the same indent as its items.",
    ),
    (
        "did not find expected ',' or ']'",
        "the list opened with `[` on line {since} is not closed, or a comma is missing. Add `,` or `]`.",
    ),
    (
        "did not find expected ',' or '}'",
        "the mapping opened with `{{` on line {since} is not closed, or a comma is missing. Add `,` or `}}`.",
    ),
    (
        "found unexpected end of stream",
        "the quotes opened on line {since} are never closed. Close them with the same kind of quote.",
    ),
    (
        "found unexpected document indicator",
        "the quotes opened on line {since} are not closed before this document marker. Close them.",
    ),
    (
        "did not find expected node content",
        "a value was expected here, and this cannot be one. Look for a comma or bracket too many.",
    ),
    (
        "block sequence entries are not allowed",
        "a list item `- ` cannot stand here. Begin the list on a line of its own, below its key.",
    ),
    (
        "block mapping entries are not allowed",
        "a key cannot stand here. Begin the mapping on a line of its own.",
    ),
    (
        "mapping keys are not allowed",
        "a key cannot stand here. Begin the mapping on a line of its own.",
    ),
    (
        "found unexpected ':'",
        "a plain value inside brackets cannot hold a colon. Put the value in quotes.",
    ),
    (
        "found unknown escape character",
        "the text in double quotes holds a backslash that means nothing. Use single quotes, or write `\\\\`.",
    ),
    (
        "did not find expected hexdecimal number",
        "the escape in double quotes lacks its hexadecimal digits. Use single quotes, or write `\\\\`.",
    ),
    (
        "found invalid Unicode character escape code",
        "the escape in double quotes names no character. Write the character itself.",
    ),
    (
        "did not find expected alphabetic or numeric character",
        "`&` or `*` begins an anchor or alias name, and no name follows. Put the value in quotes.",
    ),
    (
        "found undefined tag handle",
        "a value that begins with `!` is a tag, and tags are not read. Remove it, or put the value in quotes.",
    ),
    (
        "did not find expected <document start>",
        "the document ended above, and one file holds one document. Remove this, or the `...` line.",
    ),
    (
        "did not find expected comment or line break",
        "after `|` or `>` the line must end. Put the text on the next line, indented.",
    ),
    (
        "found a tab character where an indentation space is expected",
        "a tab stands where the line is indented. Indent with spaces.",
    ),
    (
        "found incompatible YAML document",
        "the directive asks for another YAML version. Write `%YAML 1.2`, or remove the line.",
    ),
    ("found duplicate %YAML directive", "the `%YAML` directive stands twice. Remove one."),
)
