"""Makes the drawings of a finished review, and writes them in one of the forms."""

from __future__ import annotations

from typing import TYPE_CHECKING

from roomlint.report.drawing.findings import listing
from roomlint.report.drawing.html import html_report
from roomlint.report.drawing.sheets import Drawing
from roomlint.report.drawing.svg import svg_report
from roomlint.report.telling import Rules, Telling
from roomlint.source.say import one_line

if TYPE_CHECKING:
    from collections.abc import Iterator

    from roomlint.report.wishes import Wishes
    from roomlint.review.review import Review, RoomReview


def drawings(review: Review, wishes: Wishes) -> Iterator[Drawing]:
    """Yield the drawing of each room that has a scene."""
    rules = Rules(review.rules)
    for number, room in enumerate(review.rooms):
        if room.scene is not None:
            telling = Telling(room, rules, wishes.units)
            prefix = f"r{number + 1}-" if number else ""
            yield Drawing(room, room.scene, listing(room, telling, prefix), telling.units, wishes.paper, prefix)


def title_of(room: RoomReview) -> str:
    """Return what a drawing is called."""
    return " · ".join(one_line(part) for part in (room.code, room.title or room.file) if part)


def html(review: Review, wishes: Wishes) -> Iterator[str]:
    """Yield the drawings of all rooms as one page."""
    found = list(drawings(review, wishes))
    yield from html_report(found, ", ".join(title_of(drawing.room) for drawing in found), review.against)


def svg(review: Review, wishes: Wishes) -> Iterator[str]:
    """Yield the sheets of all rooms as one SVG."""
    found = list(drawings(review, wishes))
    sheets = [sheet for drawing in found for sheet in drawing.sheets()]
    names = {key: text for drawing in found for key, text in drawing.names.items()}
    yield from svg_report(sheets, names, ", ".join(title_of(drawing.room) for drawing in found))


def pdf(review: Review, wishes: Wishes) -> Iterator[bytes]:
    """Yield the sheets of all rooms as one PDF."""
    from roomlint.report.drawing.pdf import pdf_bytes  # loads only where it is asked for

    found = list(drawings(review, wishes))
    sheets = [sheet for drawing in found for sheet in drawing.sheets()]
    yield pdf_bytes(sheets, ", ".join(title_of(drawing.room) for drawing in found))


def dxf(review: Review, wishes: Wishes) -> Iterator[str]:
    """Yield the views of all rooms as one DXF."""
    from roomlint.report.drawing.dxf import dxf_text  # loads only where it is asked for

    yield dxf_text(list(drawings(review, wishes)))
