"""What helps to read a plan: where sections are cut, a scale bar, the way to the front, and what is not drawn."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING, Final

from roomlint.report.words import few

if TYPE_CHECKING:
    from roomlint.measure.scene import Scene, Spot2
    from roomlint.report.drawing.pen import Pen

BELOW_MM: Final = 30.0
"""What a plan takes below the room for these."""
_BAR_MM: Final = 9.0
"""How long a part of the scale bar is at least."""
_FOOT_M: Final = 0.3048
_HALF_M: Final = 0.5


def arrow(pen: Pen, tip: Spot2, angle: float) -> None:
    """Draw the head of an arrow."""
    turns = (math.radians(angle + 180.0 + off) for off in (-18.0, 18.0))
    wings = [(tip[0] + pen.m(2.5) * math.cos(turn), tip[1] + pen.m(2.5) * math.sin(turn)) for turn in turns]
    pen.path((wings[0], tip, wings[1]), "cutting", closed=True, fill="solid")


def cutting(pen: Pen, scene: Scene) -> None:
    """Draw where the two sections are cut: at the edges, with a letter and an arrow the way they look."""
    reach, beyond = pen.m(4.5), pen.m(5.0)
    for cut in scene.cuts:
        if cut.kind == "long":
            for v in (scene.length_m + pen.m(3.6), -pen.m(3.6)):
                pen.path(((cut.at_m, v), (cut.at_m + reach, v)), "cutting")
                arrow(pen, (cut.at_m + reach, v), 0.0)
            pen.words((cut.at_m, -beyond + pen.m(1.4)), "A", 3.0, bold=True, shift_mm=(-2.0, -1.0))
        else:
            u = scene.width_m + pen.m(3.6)
            pen.path(((u, cut.at_m), (u, cut.at_m + reach)), "cutting")
            arrow(pen, (u, cut.at_m + reach), 90.0)
            pen.words((u, cut.at_m), "B", 3.0, bold=True, shift_mm=(2.4, -1.0))


def scale_bar(pen: Pen) -> None:
    """Draw a bar of round lengths, and an arrow to the front: north is not in the file."""
    step = _bar_m(pen)
    v, thick = -pen.m(11.5), pen.m(1.2)
    for number in range(4):
        start = number * step
        points = ((start, v), (start + step, v), (start + step, v + thick), (start, v + thick))
        pen.path(points, "opening", closed=True, fill="solid" if number % 2 == 0 else "paper")
    for number in (0, 2, 4):
        pen.words((number * step, v), pen.length(number * step), 1.9, shift_mm=(0.0, -2.9), layer="dimension")
    u = 4 * step + pen.m(14.0)
    pen.keep_clear(((0.0, v - pen.m(3.0)), (u + pen.m(20.0), v + pen.m(4.0))))
    pen.path(((u, v - pen.m(3.0)), (u, v + pen.m(4.0))), "opening")
    arrow(pen, (u, v + pen.m(5.0)), 90.0)
    pen.words((u, v), "to the front", 1.9, anchor="start", shift_mm=(2.0, 0.0), layer="dimension")


def not_placed(pen: Pen, scene: Scene) -> None:
    """Name what the file does not place, under a hatched field: nobody is to think that it was forgotten."""
    names = [name for _, name in scene.unplaced]
    if not names:
        return
    u, v = 0.0, -pen.m(20.0)
    points = ((u, v), (u + pen.m(5.0), v), (u + pen.m(5.0), v + pen.m(2.4)), (u, v + pen.m(2.4)))
    pen.path(points, "unknown", closed=True, fill="hatch")
    text = f"not placed, so not drawn: {few(names, 3)}"
    pen.words((u, v), text, 2.0, anchor="start", shift_mm=(6.0, 0.5), layer="dimension")


def _bar_m(pen: Pen) -> float:
    step = _FOOT_M if pen.units.is_us else _HALF_M
    while pen.mm(step) < _BAR_MM:
        step *= 2.0
    return step
