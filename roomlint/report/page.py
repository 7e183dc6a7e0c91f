"""Lines of text that fit a width: headings, numbered lines with a hanging indent, footnotes."""

from __future__ import annotations

import re
import textwrap
from typing import TYPE_CHECKING, Final

from roomlint.report.words import printable
from roomlint.source.say import one_line

if TYPE_CHECKING:
    from collections.abc import Callable

LETTERS: Final = "abcdefghijklmnopqrstuvwxyz"


class Page:
    """Lines as they are written, wrapped to a width; numbers run through a room as on a snag list."""

    def __init__(self, width: int, paint: Callable[[str, str], str]) -> None:
        self._width = width
        self._paint = paint
        self._lines: list[str] = []
        self._gap = self._started = False
        self.number = 0

    @property
    def height(self) -> int:
        """How many lines there are that nobody took yet."""
        return len(self._lines)

    def trial(self) -> Page:
        """Return an empty page to find out how many lines something takes here."""
        page = Page(self._width, self._paint)
        page.number, page._gap, page._started = self.number, self._gap, self._started
        return page

    def take(self) -> str:
        """Return what was written so far, and forget it."""
        text = "".join(f"{line}\n" for line in self._lines)
        self._lines = []
        return printable(text)

    def blank(self, *, is_apart: bool = True) -> None:
        """Leave a line free before the next one, never two and none at the start; or leave none after all."""
        self._gap = self._started and is_apart

    def heading(self, text: str, role: str = "heading", *, is_apart: bool = True) -> None:
        """Write a heading, after a free line where it stands apart from what is above."""
        if is_apart:
            self.blank()
        self._wrapped(text, "", "", role)

    def line(self, text: str, indent: int = 0, role: str = "") -> None:
        """Write a paragraph."""
        self._wrapped(text, " " * indent, " " * indent, role)

    def item(self, text: str, role: str = "", sign: str = "") -> None:
        """Write a numbered line, or one that starts with a sign instead."""
        if not sign:
            self.number += 1
        mark = f" {sign}  " if sign else f"{self.number:>2}. "
        self._wrapped(text, mark, " " * len(mark), role, first_only=True)

    def under(self, text: str) -> None:
        """Write what belongs to the numbered line above."""
        self._wrapped(text, "    > ", "      ", "")

    def verbatim(self, text: str, indent: int) -> None:
        """Write a line that is to be copied: as it is."""
        self._put([" " * indent + text])

    def marked(self, mark: str, text: str) -> None:
        """Write a footnote."""
        self._wrapped(text, f"{mark} ", "    ", "quiet")

    def _wrapped(self, text: str, first: str, others: str, role: str, *, first_only: bool = False) -> None:
        # A path stays whole, so that an editor or a search finds it, however long it is.
        lines = textwrap.wrap(
            one_line(text), self._width, initial_indent=first, subsequent_indent=others,
            break_on_hyphens=False, break_long_words=False,
        ) or [first.rstrip()]  # fmt: skip
        if role and first_only:
            lines[0] = self._paint(lines[0][: len(first)], role) + lines[0][len(first) :]
        elif role:
            lines = [self._paint(line, role) for line in lines]
        self._put(lines)

    def _put(self, lines: list[str]) -> None:
        self._lines += ["", *lines] if self._gap else lines
        self._gap, self._started = False, True


class Footnotes:
    """Cautions, each written once, with the mark by which findings refer to it."""

    def __init__(self) -> None:
        self.marks: dict[str, str] = {}

    def trial(self) -> Footnotes:
        """Return footnotes with the marks given so far, to find out which others something needs."""
        other = Footnotes()
        other.marks = dict(self.marks)
        return other

    def of(self, caution: str, most: int | None = None) -> list[str]:
        """Return the marks of a caution's sentences: what a whole chapter says is one footnote, not one a rule."""
        sentences = re.split(r"(?<=[.!]) +(?=[A-Z])", caution.removeprefix("Caution: ").strip())
        return [self._mark(sentence[0].upper() + sentence[1:]) for sentence in sentences[:most] if sentence]

    def _mark(self, text: str) -> str:
        if text not in self.marks:
            number = len(self.marks)
            more = number // len(LETTERS)
            self.marks[text] = f"({LETTERS[number % len(LETTERS)]}{more or ''})"
        return self.marks[text]
