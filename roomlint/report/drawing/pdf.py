"""Writes sheets as PDF, each on its own page at its true size, in the fonts that every reader of PDF has."""

from __future__ import annotations

import io
import math
from typing import TYPE_CHECKING, Final

from roomlint.report.drawing.marks import LOOKS, outline
from roomlint.report.drawing.shapes import INK, LAYERS, Arc, Mark, Path, Words
from roomlint.report.drawing.svg import legible

if TYPE_CHECKING:
    from collections.abc import Sequence

    from reportlab.pdfgen.canvas import Canvas
    from reportlab.pdfgen.pathobject import PDFPathObject

    from roomlint.measure.scene import Shape, Spot2
    from roomlint.report.drawing.sheets import Placed, Sheet

POINT_MM: Final = 25.4 / 72.0
_SPACED: Final = {"→": "->", "−": "-", "≤": "<=", "≥": ">=", "′": "'", "″": '"'}
_HATCH_MM: Final = 1.6
_RIM_MM: Final = 0.5
_TINT: Final = "#f3e3df"
_SHEET: Final = "#e6eaee"


def pdf_bytes(sheets: Sequence[Sheet], title: str) -> bytes:
    """Return sheets as a PDF, the same bytes for the same sheets."""
    from reportlab.pdfgen.canvas import Canvas

    stream = io.BytesIO()
    canvas = Canvas(stream, invariant=1, pageCompression=1)
    canvas.setTitle(plain(title))
    canvas.setCreator("roomlint")
    for sheet in sheets:
        canvas.setPageSize((sheet.width_mm / POINT_MM, sheet.height_mm / POINT_MM))
        canvas.scale(1.0 / POINT_MM, 1.0 / POINT_MM)
        for placed in sheet.placed:
            _Page(canvas, sheet.height_mm, placed).draw()
        canvas.showPage()
    canvas.save()
    return stream.getvalue()


def plain(text: str) -> str:
    """Return a text in the signs that the fonts of every reader have; any other is a question mark."""
    for sign, spelled in _SPACED.items():
        text = text.replace(sign, spelled)
    return legible(text).encode("cp1252", "replace").decode("cp1252")


class _Page:
    """One view on its page; the canvas counts millimetres from the lower left corner."""

    def __init__(self, canvas: Canvas, high_mm: float, placed: Placed) -> None:
        self.canvas = canvas
        self.view = placed.view
        self.left = placed.x_mm
        self.top = high_mm - placed.y_mm

    def at(self, point: Spot2, shift_mm: Spot2 = (0.0, 0.0)) -> Spot2:
        """Return where a point of the view is on the page, mm."""
        view = self.view
        return (
            self.left + view.mm(point[0] - view.low[0]) + shift_mm[0],
            self.top - view.mm(view.high[1] - point[1]) + shift_mm[1],
        )

    def draw(self) -> None:
        """Draw the view."""
        for item in self.view.items:
            if isinstance(item, Path):
                path = self._line([self.at(point) for point in item.points], closed=item.closed)
                self._shape(path, item, [self.at(point) for point in item.points])
            elif isinstance(item, Arc):
                self._arc(item)
            elif isinstance(item, Words):
                self._words(item)
            else:
                self._mark(item)

    def _line(self, points: Sequence[Spot2], *, closed: bool) -> PDFPathObject:
        path = self.canvas.beginPath()
        path.moveTo(*points[0])
        for point in points[1:]:
            path.lineTo(*point)
        if closed:
            path.close()
        return path

    def _arc(self, item: Arc) -> None:
        x, y = self.at(item.centre)
        radius = self.view.mm(item.radius_m)
        path = self.canvas.beginPath()
        if item.is_circle:
            path.circle(x, y, radius)
        else:
            turn = item.end_deg - item.start_deg
            path.arc(x - radius, y - radius, x + radius, y + radius, item.start_deg, turn)  # type: ignore[arg-type]
        self._shape(path, item, [(x - radius, y - radius), (x + radius, y + radius)])

    def _shape(self, path: PDFPathObject, item: Path | Arc, points: Sequence[Spot2]) -> None:
        canvas, layer = self.canvas, LAYERS[item.layer]
        fills = {"paper": INK["paper"], "hatch": INK["paper"], "solid": INK[layer.ink], "tint": _TINT, "sheet": _SHEET}
        if item.fill:
            canvas.setFillColor(fills[item.fill])
            canvas.drawPath(path, stroke=0, fill=1)
        if item.fill == "hatch":
            self._hatch(path, points)
        canvas.setStrokeColor(INK[layer.ink])
        canvas.setLineWidth(layer.width_mm)
        canvas.setDash(list(layer.dashes))
        canvas.setLineJoin(1)
        canvas.drawPath(path, stroke=1, fill=0)

    def _hatch(self, path: PDFPathObject, points: Sequence[Spot2]) -> None:
        canvas = self.canvas
        xs, ys = [x for x, _ in points], [y for _, y in points]
        low, high = min(ys), max(ys)
        canvas.saveState()
        canvas.clipPath(path, stroke=0, fill=0)
        canvas.setStrokeColor(INK["soft"])
        canvas.setLineWidth(0.12)
        canvas.setDash([])
        step = _HATCH_MM * math.sqrt(2.0)
        # Lines of one hatch run on in the next, wherever it is.
        first = math.floor((min(xs) - high) / step)
        last = math.ceil((max(xs) - low) / step)
        for number in range(first, last + 1):
            canvas.line(number * step + low, low, number * step + high, high)
        canvas.restoreState()

    def _words(self, item: Words) -> None:
        canvas = self.canvas
        x, y = self.at(item.at, item.shift_mm)
        canvas.saveState()
        canvas.translate(x, y)
        canvas.rotate(item.turn_deg)
        canvas.setFont("Helvetica-Bold" if item.bold else "Helvetica", item.size_mm)
        draw = {"start": canvas.drawString, "middle": canvas.drawCentredString, "end": canvas.drawRightString}
        text = plain(item.text)
        # What stands on a line is read on a rim of paper.
        canvas.setStrokeColor(INK["paper"])
        canvas.setLineWidth(_RIM_MM)
        canvas.setDash([])
        draw[item.anchor](0.0, 0.0, text, mode=1)
        canvas.setFillColor(INK["ink"])
        draw[item.anchor](0.0, 0.0, text, mode=0)
        canvas.restoreState()

    def _mark(self, item: Mark) -> None:
        canvas, look = self.canvas, LOOKS[item.level]
        x, y = self.at(item.at, item.shift_mm)
        corners: Shape = tuple((x + dx, y + dy) for dx, dy in outline(item.level, item.number, item.size))
        canvas.setFillColor(look.fill)
        canvas.setStrokeColor(look.edge)
        canvas.setLineWidth(look.width_mm)
        canvas.setDash([])
        canvas.drawPath(self._line(corners, closed=True), stroke=1, fill=1)
        size = item.size * (2.4 if len(item.number) < 3 else 2.0)  # noqa: PLR2004  three signs take more room
        canvas.setFillColor(look.text)
        canvas.setFont("Helvetica-Bold", size)
        canvas.drawCentredString(x, y - 0.36 * size, plain(item.number))
