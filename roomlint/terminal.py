"""What the output bears: how wide a report is written, and whether in colours."""

from __future__ import annotations

import os
import sys
from dataclasses import replace
from typing import TYPE_CHECKING, Any, Final

import click

from roomlint.report import width_of

if TYPE_CHECKING:
    from roomlint.report import Wishes

LOOKS: Final[dict[str, dict[str, Any]]] = {
    "heading": {"bold": True},
    "error": {"fg": "red", "bold": True},
    "warning": {"fg": "yellow"},
    "note": {"fg": "cyan"},
    "review": {"fg": "magenta"},
    "quiet": {"dim": True},
}
"""Role of a text to how a terminal shows it."""


def for_the_output(wishes: Wishes) -> tuple[Wishes, bool]:
    """Return what is wished for as the output bears it: as wide as a terminal, and coloured only on one."""
    is_terminal, width = _is_terminal(), page_width()
    coloured = is_terminal or os.environ.get("FORCE_COLOR", "") not in {"", "0"}
    if os.environ.get("NO_COLOR") or not coloured:
        return replace(wishes, width=width), False
    return replace(wishes, width=width, paint=_painted), True


def page_width() -> int:
    """Return how wide to write: as the terminal, or as the shell says, and no wider than a page."""
    if not _is_terminal() and not os.environ.get("COLUMNS"):
        return width_of(None)
    from shutil import get_terminal_size  # most reports go to a file or a pipe

    return width_of(get_terminal_size((0, 0)).columns)


def wrapped(text: str) -> str:
    """Return a page for reading no wider than the terminal.

    Into a file or a pipe a paragraph stays one line, unless the shell says that there is less than a page's width.
    """
    width = page_width()
    if not _is_terminal() and width == width_of(None):
        return text
    from textwrap import fill

    lines = (
        fill(line, width, subsequent_indent="    ", break_on_hyphens=False, break_long_words=False) if line else ""
        for line in text.split("\n")
    )
    return "\n".join(lines)


def _is_terminal() -> bool:
    return sys.stdout is not None and sys.stdout.isatty()


def _painted(text: str, role: str) -> str:
    look = LOOKS.get(role)
    return click.style(text, **look) if look is not None else text
