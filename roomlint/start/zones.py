"""What is to stay free in a room that is begun: the way through a door, the glass of a window, the picture's front."""

from __future__ import annotations

from itertools import product
from typing import TYPE_CHECKING, Final, NamedTuple, TypeAlias

from roomlint.figures.convex import plan_gap_m
from roomlint.figures.viewing import shadow, upright
from roomlint.start.names import opening_name

if TYPE_CHECKING:
    from roomlint.start.answers import Answers, Gap

Spot: TypeAlias = tuple[float, float, float]
"""From left, from front, height, m."""
_BEFORE_GLASS_M: Final = 0.45
_LEAF_M: Final = 1.0
"""No leaf of a door is wider; what is wider has two, or slides."""
_BESIDE_OPENING_M: Final = 0.25
_SKY_M: Final = 100.0
_CABINET_M: Final = (0.25, 0.40, 0.30)
"""Width, height and depth of an ordinary cabinet, as none is chosen yet."""
_CLEAR_M: Final = 0.10
"""So far over and under it the sight of the picture is kept free as well."""
_AT_THE_EYE_M: Final = 0.50
"""What is nearer to the eye than this is beside it."""
_EYE_ABOVE_EAR_M: Final = 0.017


class Screen(NamedTuple):
    """The picture: its middle, width and height."""

    kind: str
    centre: Spot
    width_m: float
    height_m: float

    def is_hidden_by(self, spot: Spot, seat: Spot) -> bool:
        """Tell whether an ordinary cabinet at a place comes before the picture as a seat sees it."""
        middle, plane, up = self.centre
        eye = (seat[1] - plane, seat[0] - middle, seat[2] + _EYE_ABOVE_EAR_M)
        wide, high, deep = _CABINET_M
        if not 0.0 < spot[1] - plane < eye[0] - _AT_THE_EYE_M:
            return False
        depths = (max(spot[1] - deep - plane, 0.0), spot[1] - plane)
        rise = high / 2.0 + _CLEAR_M
        corners = [
            (depth, spot[0] - middle + side, spot[2] + over)
            for depth, side, over in product(depths, (-wide / 2.0, wide / 2.0), (-rise, rise))
        ]
        half, above = self.width_m / 2.0, self.height_m / 2.0
        picture = upright((-half, up - above), (half, up + above))
        return plan_gap_m(shadow(eye, corners), picture) < 0.0


class Zone(NamedTuple):
    """A box of the room that is to stay free, and what for."""

    low: Spot
    high: Spot
    what: str

    def holds(self, spot: Spot) -> bool:
        """Return whether a place is in it."""
        return all(low < value < high for low, value, high in zip(self.low, spot, self.high, strict=True))


def kept_free(gap: Gap, number: int, answers: Answers) -> Zone:
    """Return what is to stay free before an opening: the way through a door, a hand's depth before glass."""
    width, length = answers.width.m, answers.length.m
    depth = _BEFORE_GLASS_M if gap.kind == "window" else min(gap.width.m, _LEAF_M) + _BESIDE_OPENING_M
    start, end = gap.start.m - _BESIDE_OPENING_M, gap.start.m + gap.width.m + _BESIDE_OPENING_M
    what = f"{opening_name(answers.openings, number)} is to stay free"
    if gap.wall == "front":
        low, high = (start, -1.0), (end, depth)
    elif gap.wall == "rear":
        low, high = (width - end, length - depth), (width - start, length + 1.0)
    elif gap.wall == "right":
        low, high = (width - depth, start), (width + 1.0, end)
    else:
        low, high = (-1.0, length - end), (depth, length - start)
    return Zone((*low, -1.0), (*high, _SKY_M), what)
