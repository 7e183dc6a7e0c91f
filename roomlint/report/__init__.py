"""Verdicts out: a finished review goes in, text comes out, part by part."""

from __future__ import annotations

from importlib import import_module
from typing import TYPE_CHECKING

from roomlint.report.wishes import Wishes, width_of

if TYPE_CHECKING:
    from collections.abc import Iterator

    from roomlint.review.review import Review

__all__ = ["DRAWN", "WRITERS", "Wishes", "draw", "width_of", "write"]

WRITERS = {
    "text": ("roomlint.report.text", "text_report"),
    "lines": ("roomlint.report.lines", "lines_report"),
    "sarif": ("roomlint.report.sarif", "sarif_report"),
    "alerts": ("roomlint.report.alerts", "alerts_report"),
    "markdown": ("roomlint.report.markdown", "markdown_report"),
    "annotations": ("roomlint.report.annotations", "annotations_report"),
}
"""Format to the module and the function that writes it; a writer loads only when it is asked for."""


DRAWN = ("html", "svg", "pdf", "dxf")
"""The forms of a drawing; a review that is drawn was made with the scenes of its rooms."""


def draw(kind: str, review: Review, wishes: Wishes | None = None) -> Iterator[str | bytes]:
    """Yield the drawings of a finished review in one of the forms."""
    parts: Iterator[str | bytes] = getattr(import_module("roomlint.report.drawing.compose"), kind)(
        review, wishes or Wishes()
    )
    return parts


def write(kind: str, review: Review, wishes: Wishes | None = None) -> Iterator[str]:
    """Yield a finished review in one of the formats, room by room: nothing holds the whole text.

    What a reader wishes for is heard by the formats meant for reading; those meant for machines decide for themselves,
    and the full SARIF always holds every verdict.
    """
    module, function = WRITERS[kind]
    parts: Iterator[str] = getattr(import_module(module), function)(review, wishes or Wishes())
    return parts
