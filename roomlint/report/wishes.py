"""What the reader of a report asked for."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Final

if TYPE_CHECKING:
    from collections.abc import Callable

WIDTH: Final = 100
NARROW: Final = 80
PAGE_LINES: Final = 45
PHONE_LINES: Final = 40


def _plain(text: str, _: str) -> str:
    return text


@dataclass(frozen=True, slots=True)
class Wishes:
    """What the reader of a report asked for; the formats for machines decide for themselves."""

    units: str = ""
    """`metric` or `us`; empty for the units that each file is written in."""
    verdicts: bool = False
    """Whether to list what is open, passed or not applicable too."""
    notes: bool = False
    """Whether to list the warnings and notes that are otherwise counted."""
    missing: bool = False
    """Whether to write out all that is missing instead of the most hazardous."""
    basis: bool = False
    """Whether to name the rule of each line, and why its window is what it is."""
    paper: str = ""
    """What a drawing is put on: `a3`, `a4`, `tabloid` or `letter`; empty for the usual one of the units."""
    width: int = WIDTH
    paint: Callable[[str, str], str] = _plain
    """Gives a text the look of a role: `heading`, `error`, `warning`, `note`, `quiet`."""

    @property
    def page(self) -> int:
        """How many lines a room takes before what weighs less is counted: one page, or a screen or two of a phone."""
        return PHONE_LINES if self.is_narrow else PAGE_LINES

    @property
    def is_narrow(self) -> bool:
        """Whether so few columns are there that only what somebody acts on is written."""
        return self.width < NARROW


def width_of(columns: int | None) -> int:
    """Return how wide to write: as wide as the terminal, and no wider than a page."""
    return max(20, min(columns, WIDTH)) if columns else WIDTH
