"""Writes views as DXF at their true size: the plan's coordinates are the room's own, in millimetres or inches."""

from __future__ import annotations

import io
from typing import TYPE_CHECKING, Any, Final

from roomlint.report.drawing.marks import LOOKS, outline
from roomlint.report.drawing.shapes import INK, LAYERS, Arc, Mark, Path, Words
from roomlint.report.drawing.svg import legible

if TYPE_CHECKING:
    from ezdxf.layouts.layout import Modelspace

    from roomlint.measure.scene import Spot2
    from roomlint.report.drawing.shapes import Layer, View
    from roomlint.report.drawing.sheets import Drawing

INCH_M: Final = 0.0254
BESIDE_MM: Final = 12.0
"""How far apart views stand, on their paper."""
_VERSION: Final = "R2010"
_HATCHED: Final = "ANSI31"
_ANCHORS: Final = {"start": "LEFT", "middle": "CENTER", "end": "RIGHT"}
_WIDTHS: Final = (13, 18, 25, 30, 35, 40, 50, 70)
"""Line widths that DXF knows, in hundredths of a millimetre."""


def dxf_text(drawings: list[Drawing]) -> str:
    """Return the drawings as one DXF: the plan of the first room stands at the origin, all else beside or below it."""
    import ezdxf
    from ezdxf import units as units_of

    customary = bool(drawings) and drawings[0].units.is_us
    document = ezdxf.new(_VERSION, units=units_of.IN if customary else units_of.MM)  # type: ignore[attr-defined]
    document.header["$MEASUREMENT"] = 0 if customary else 1
    scale = drawings[0].views.plan.scale if drawings else 1.0
    per_m = 1.0 / INCH_M if customary else 1000.0
    for name, layer in LAYERS.items():
        _layer(document, name, layer, per_m * scale / 1000.0)
    down = 0.0
    for drawing in drawings:
        right, deepest = 0.0, 0.0
        for view in drawing.views.all:
            _View(document.modelspace(), view, per_m, (right - (view.low[0] if right else 0.0), down)).draw()
            right += view.high[0] - (view.low[0] if right else 0.0) + BESIDE_MM * view.scale / 1000.0
            deepest = max(deepest, view.high[1] - view.low[1])
        down -= deepest + 2.0 * BESIDE_MM * scale / 1000.0
    return _written(document)


def _written(document: Any) -> str:  # noqa: ANN401  ezdxf's document
    """Return a document's text, the same for the same drawing: no clock, no identity drawn by lot."""
    from ezdxf._options import options

    for name in sorted(document.entitydb.dxf_types_in_use()):
        document.classes.add_class(name)
    document.ezdxf_metadata()["CREATED_BY_EZDXF"] = "roomlint"
    was = options.write_fixed_meta_data_for_testing
    options.write_fixed_meta_data_for_testing = True
    try:
        stream = io.StringIO()
        document.write(stream)
    finally:
        options.write_fixed_meta_data_for_testing = was
    return stream.getvalue()


def _layer(document: Any, name: str, layer: Layer, mm: float) -> None:  # noqa: ANN401  ezdxf's document
    if layer.trade in document.layers:
        return
    kind = "CONTINUOUS"
    if layer.dashes:
        kind = f"{layer.trade}-LINE"
        pattern = [part * mm * (-1.0 if number % 2 else 1.0) for number, part in enumerate(layer.dashes)]
        document.linetypes.add(kind, [sum(map(abs, pattern)), *pattern], description=name)
    made = document.layers.add(layer.trade, linetype=kind)
    ink = INK[layer.ink].removeprefix("#")
    made.rgb = (int(ink[0:2], 16), int(ink[2:4], 16), int(ink[4:6], 16))
    made.dxf.lineweight = min(_WIDTHS, key=lambda width: abs(width - 100.0 * layer.width_mm))


class _View:
    """One view as entities of the model."""

    def __init__(self, space: Modelspace, view: View, per_m: float, moved_m: Spot2) -> None:
        self.space = space
        self.view = view
        self.per_m = per_m
        self.moved_m = moved_m

    def at(self, point: Spot2, shift_mm: Spot2 = (0.0, 0.0)) -> Spot2:
        """Return a point of the view in the model's units, shifted by so much of the paper."""
        mm = self.view.scale / 1000.0
        return (
            (point[0] + self.moved_m[0] + shift_mm[0] * mm) * self.per_m,
            (point[1] + self.moved_m[1] + shift_mm[1] * mm) * self.per_m,
        )

    def size(self, mm: float) -> float:
        """Return a length of the paper in the model's units."""
        return mm * self.view.scale / 1000.0 * self.per_m

    def draw(self) -> None:
        """Draw the view, and its title under it."""
        for item in self.view.items:
            if isinstance(item, Path):
                self._path(item)
            elif isinstance(item, Arc):
                self._arc(item)
            elif isinstance(item, Words):
                shift = item.shift_mm
                self._text(item.text, self.at(item.at, shift), item.size_mm, item.layer, item.anchor, item.turn_deg)
            else:
                self._mark(item)
        title = f"{self.view.title} 1:{self.view.scale:.0f}"
        self._text(title, self.at((self.view.low[0], self.view.high[1])), 3.5, "text", "start", 0.0)

    def _path(self, item: Path) -> None:
        points = [self.at(point) for point in item.points]
        looks = {"layer": LAYERS[item.layer].trade}
        if item.fill in {"hatch", "solid"}:
            hatch = self.space.add_hatch(dxfattribs=looks)
            if item.fill == "hatch":
                hatch.set_pattern_fill(_HATCHED, scale=self.size(0.5))
            hatch.paths.add_polyline_path(points, is_closed=True)
        self.space.add_lwpolyline(points, close=item.closed, dxfattribs=looks)

    def _arc(self, item: Arc) -> None:
        looks = {"layer": LAYERS[item.layer].trade}
        centre, radius = self.at(item.centre), item.radius_m * self.per_m
        if not item.is_circle:
            self.space.add_arc(centre, radius, item.start_deg, item.end_deg, dxfattribs=looks)
            return
        if item.fill == "hatch":
            hatch = self.space.add_hatch(dxfattribs=looks)
            hatch.set_pattern_fill(_HATCHED, scale=self.size(0.5))
            hatch.paths.add_edge_path().add_arc(centre, radius, 0.0, 360.0)
        self.space.add_circle(centre, radius, dxfattribs=looks)

    def _text(self, text: str, at: Spot2, size_mm: float, layer: str, anchor: str, turn_deg: float) -> None:
        from ezdxf.enums import TextEntityAlignment

        looks = {"layer": LAYERS[layer].trade, "rotation": turn_deg}
        # Two signs of the percent begin a code of the format; one alone does not.
        plain = legible(text).replace("%%", "% %")
        made = self.space.add_text(plain, height=self.size(size_mm), dxfattribs=looks)
        made.set_placement(at, align=TextEntityAlignment[_ANCHORS[anchor]])

    def _mark(self, item: Mark) -> None:
        corners = [
            self.at(item.at, (item.shift_mm[0] + dx, item.shift_mm[1] + dy))
            for dx, dy in outline(item.level, item.number, item.size)
        ]
        looks: dict[str, Any] = {"layer": LAYERS["mark"].trade, "lineweight": round(100.0 * LOOKS[item.level].width_mm)}
        looks["lineweight"] = min(_WIDTHS, key=lambda width: abs(width - looks["lineweight"]))
        self.space.add_lwpolyline(corners, close=True, dxfattribs=looks)
        size = 2.2 * item.size
        middle = self.at(item.at, (item.shift_mm[0], item.shift_mm[1] - size * 0.36))
        self._text(item.number, middle, size, "mark", "middle", 0.0)
