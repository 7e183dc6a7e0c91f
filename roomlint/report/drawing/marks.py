"""How the mark of each level looks: by its shape first, then by its fill, so that it reads in grey too."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING, Final, NamedTuple

from roomlint.report.drawing.pen import MARK_MM

if TYPE_CHECKING:
    from roomlint.measure.scene import Shape


class Look(NamedTuple):
    """Fill, edge, ink of the number, width of the edge."""

    fill: str
    edge: str
    text: str
    width_mm: float


LOOKS: Final = {
    "error": Look("#8f1d14", "#8f1d14", "#ffffff", 0.3),
    "warning": Look("#ffe9b8", "#6b4200", "#1a2027", 0.5),
    "note": Look("#ffffff", "#0b5577", "#1a2027", 0.3),
    "review": Look("#ece4f4", "#4d2f6b", "#1a2027", 0.5),
}


def outline(level: str, number: str, size: float = 1.0) -> Shape:
    """Return the outline of a mark about its middle, mm."""
    wide = size * max(0, len(number) - 2) * 0.7
    reach = size * MARK_MM
    if level == "error":
        corner = reach / math.cos(math.pi / 8.0)
        points = _around(corner, 8, 22.5)
    elif level == "warning":
        points = ((reach, reach), (-reach, reach), (-reach, -reach), (reach, -reach))
    elif level == "review":
        points = ((reach * 1.3, 0.0), (0.0, reach * 1.3), (-reach * 1.3, 0.0), (0.0, -reach * 1.3))
    else:
        points = _around(reach, 24, 7.5)
    return tuple((x + math.copysign(wide, x) if x else x, y) for x, y in points)


def _around(radius: float, corners: int, first_deg: float) -> Shape:
    turns = (math.radians(first_deg + 360.0 * corner / corners) for corner in range(corners))
    return tuple((radius * math.cos(turn), radius * math.sin(turn)) for turn in turns)
