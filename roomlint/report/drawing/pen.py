"""Draws on one view, and keeps words and marks clear of each other."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING, Final, NamedTuple

from roomlint.report.drawing.shapes import Arc, Mark, Path, View, Words, width_mm

if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence

    from roomlint.measure.scene import Spot2
    from roomlint.report.drawing.shapes import Anchor, Fill, Item
    from roomlint.report.units import Units

MARK_MM: Final = 2.35
"""Half the height of a mark."""
_RINGS: Final = (0.0, 2.0, 4.5, 7.5, 11.0, 15.0, 20.0)
_TURNS: Final = tuple(math.radians(turn) for turn in (90, 270, 0, 180, 45, 135, 315, 225, 20, 160, 200, 340, 70, 110))
_GAP_MM: Final = 0.5
_RING_MM2: Final = 1.5
"""What a ring farther out costs, against an area that is covered."""
_LIKE_M: Final = 1.0
"""Lengths are written as this one is."""


class Box(NamedTuple):
    """What something takes on the paper, mm: middle and half the sizes."""

    x: float
    y: float
    half_w: float
    half_h: float

    def overlap(self, other: Box) -> float:
        """Return how much of an area two boxes share, mm2."""
        wide = self.half_w + other.half_w - abs(self.x - other.x)
        high = self.half_h + other.half_h - abs(self.y - other.y)
        return wide * high if wide > 0.0 and high > 0.0 else 0.0


def lengths(units: Units, metres: float) -> str:
    """Return a length as one of many that stand beside each other: all in the same unit, however short."""
    return units.scale("m", [metres, _LIKE_M]).text(metres)


class Pen:
    """The items of one view as they are drawn."""

    def __init__(self, scale: float, units: Units) -> None:
        self.scale = scale
        self.units = units
        self.items: list[Item] = []
        self._taken: list[Box] = []

    def m(self, mm: float) -> float:
        """Return what so many millimetres of the paper are in the view, m."""
        return mm * self.scale / 1000.0

    def mm(self, metres: float) -> float:
        """Return a length of the view on paper, mm."""
        return metres * 1000.0 / self.scale

    def length(self, metres: float) -> str:
        """Return a length as an installer reads it."""
        return lengths(self.units, metres)

    def path(
        self, points: Iterable[Spot2], layer: str, *, closed: bool = False, fill: Fill = "", key: str = "", of: str = ""
    ) -> None:
        """Draw a line or an area."""
        self.items.append(Path(tuple(points), layer, closed, fill, key, of))

    def arc(
        self, centre: Spot2, radius_m: float, layer: str, start_deg: float = 0.0, end_deg: float = 360.0,
        *, fill: Fill = "", key: str = "", of: str = "",
    ) -> None:  # fmt: skip
        """Draw an arc, or a circle."""
        self.items.append(Arc(centre, radius_m, layer, start_deg, end_deg, fill, key, of))

    def words(
        self, at: Spot2, text: str, size_mm: float = 2.5, *, anchor: Anchor = "middle", turn_deg: float = 0.0,
        shift_mm: Spot2 = (0.0, 0.0), layer: str = "text", bold: bool = False, key: str = "",
    ) -> None:  # fmt: skip
        """Write where told, and keep others clear of it."""
        self.items.append(Words(at, text, layer, size_mm, anchor, turn_deg, shift_mm, bold, key))
        half = width_mm(text, size_mm) / 2.0
        x, y = self.mm(at[0]) + shift_mm[0], self.mm(at[1]) + shift_mm[1]
        along = {"start": half, "middle": 0.0, "end": -half}[anchor]
        turn = math.radians(turn_deg)
        x, y = x + along * math.cos(turn) - size_mm / 3 * math.sin(turn), y + along * math.sin(turn) + size_mm / 3
        wide = abs(half * math.cos(turn)) + abs(size_mm / 2 * math.sin(turn))
        high = abs(half * math.sin(turn)) + abs(size_mm / 2 * math.cos(turn))
        self._taken.append(Box(x, y, wide, high))

    def keep_clear(self, points: Sequence[Spot2], beyond_mm: float = 0.3) -> None:
        """Keep words and marks off what is drawn between points."""
        xs, ys = [self.mm(x) for x, _ in points], [self.mm(y) for _, y in points]
        self._taken.append(
            Box(
                (min(xs) + max(xs)) / 2, (min(ys) + max(ys)) / 2,
                (max(xs) - min(xs)) / 2 + beyond_mm, (max(ys) - min(ys)) / 2 + beyond_mm,
            )
        )  # fmt: skip

    def label(self, at: Spot2, text: str, size_mm: float = 2.2, *, beside_mm: float = 2.0, key: str = "") -> None:
        """Write a name near a point, where it covers least."""
        half_w, half_h = width_mm(text, size_mm) / 2.0, size_mm / 2.0
        x, y = self._free(at, half_w, half_h, beside_mm)
        self._taken.append(Box(x, y, half_w, half_h))
        shift = (x - self.mm(at[0]), y - self.mm(at[1]))
        self.items.append(Words(at, text, "text", size_mm, "middle", 0.0, (shift[0], shift[1] - size_mm / 3), key=key))
        if math.hypot(*shift) > beside_mm + half_w + 2.5 * size_mm:
            self._leader(at, (x, y), half_w, half_h)

    def marks(self, at: Spot2, found: Sequence[tuple[str, str, str]], *, beside_mm: float, key: str) -> None:
        """Put the findings of one element together near it, where they cover least, and join them to it by one line.

        `found`: number, level and id of each.
        """
        across = min(len(found), 3 if len(found) <= 6 else 4)  # noqa: PLR2004  as square as it reads well
        down = math.ceil(len(found) / across)
        pitch = 2.0 * MARK_MM + 0.7
        half_w, half_h = across * pitch / 2.0, down * pitch / 2.0
        x, y = self._free(at, half_w, half_h, beside_mm)
        self._taken.append(Box(x, y, half_w, half_h))
        near = (min(max(self.mm(at[0]), x - half_w), x + half_w), min(max(self.mm(at[1]), y - half_h), y + half_h))
        if math.dist(near, (self.mm(at[0]), self.mm(at[1]))) > 1.0:
            self.path((at, (self.m(near[0]), self.m(near[1]))), "mark", key=key)
            self.arc(at, self.m(0.5), "mark", fill="solid", key=key)
        for count, (number, level, of) in enumerate(found):
            row, column = divmod(count, across)
            there = (x - half_w + (column + 0.5) * pitch, y + half_h - (row + 0.5) * pitch)
            shift = (there[0] - self.mm(at[0]), there[1] - self.mm(at[1]))
            self.items.append(Mark(at, number, level, of, shift, key))

    def mark_here(self, at: Spot2, number: str, level: str, of: str) -> None:
        """Put a finding's number just here, joined to nothing."""
        self.items.append(Mark(at, number, level, of))

    def _leader(self, at: Spot2, end_mm: Spot2, half_w: float, half_h: float) -> None:
        x0, y0 = self.mm(at[0]), self.mm(at[1])
        dx, dy = x0 - end_mm[0], y0 - end_mm[1]
        share = min(half_w / abs(dx) if dx else math.inf, half_h / abs(dy) if dy else math.inf, 1.0)
        start = (self.m(end_mm[0] + share * dx), self.m(end_mm[1] + share * dy))
        self.path((start, at), "dimension")

    def covered(self, at: Spot2, half_w: float, half_h: float) -> float:
        """Return how much a box about a point covers of what is drawn there already, mm2."""
        box = Box(self.mm(at[0]), self.mm(at[1]), half_w, half_h)
        return sum(box.overlap(other) for other in self._taken)

    def _free(self, at: Spot2, half_w: float, half_h: float, beside_mm: float) -> Spot2:
        x, y = self.mm(at[0]), self.mm(at[1])
        reach = beside_mm + _RINGS[-1] + _GAP_MM
        near = [
            box
            for box in self._taken
            if abs(box.x - x) < reach + 2.0 * half_w + box.half_w and abs(box.y - y) < reach + 2.0 * half_h + box.half_h
        ]
        best, least = (x, y), math.inf
        for number, ring in enumerate(_RINGS):
            for turn in _TURNS:
                dx, dy = math.cos(turn), math.sin(turn)
                there = (
                    x + dx * (beside_mm + ring + half_w * abs(dx)), y + dy * (beside_mm + ring + half_h * abs(dy)),
                )  # fmt: skip
                box = Box(*there, half_w + _GAP_MM, half_h + _GAP_MM)
                cost = _RING_MM2 * number
                for other in near:
                    cost += box.overlap(other)
                    if cost >= least:
                        break
                else:
                    if cost <= _RING_MM2 * number:
                        return there
                    best, least = there, cost
        return best

    def view(self, name: str, title: str, low: Spot2, high: Spot2, about: str) -> View:
        """Return what was drawn, as a view."""
        return View(name, title, self.scale, low, high, tuple(self.items), about)
