"""What each awkward room must be told, worked out by hand from its geometry; the arithmetic stands beside each line.

`dx` is how far to the side, `dy` how far ahead of the ear, `rise` how far above it. Angles are atan of their ratios.
"""

from __future__ import annotations

from typing import NamedTuple

import gallery_rooms as rooms
from gallery_rooms import Data


class Expected(NamedTuple):
    """One verdict: which rule says what of which subject, with the figure where it has one."""

    room: Data
    rule: str
    subject: str
    kind: str
    figure: float | None = None
    level: str | None = None


def _of(room: Data, *lines: tuple[object, ...]) -> tuple[Expected, ...]:
    return tuple(Expected(room, *line) for line in lines)  # type: ignore[arg-type]


PAIR = "loudspeaker/left+loudspeaker/right"

EXPECTED = (
    *_of(
        rooms.SLOPE_RISING_TO_REAR,
        # upper-left: dx 1.0, dy 1.2, rise 1.45: atan(1.0/1.2) = 39.81; atan(1.45/1.5620) = 42.87.
        ("angle.upper-azimuth", "loudspeaker/upper-left", "pass", 39.806),
        ("angle.upper-elevation", "loudspeaker/upper-left", "pass", 42.869),
        # high-left: dx 1.0, dy -1.0, rise 1.89: 90 + 45; atan(1.89/1.4142) = 53.19, still below 55.
        ("angle.upper-azimuth", "loudspeaker/high-left", "pass", 135.0),
        ("angle.upper-elevation", "loudspeaker/high-left", "pass", 53.194),
        # high-right: dx 1.4, dy -1.0: 90 + atan(1.0/1.4) = 125.54; atan(1.89/1.7205) = 47.69.
        ("angle.upper-azimuth", "loudspeaker/high-right", "pass", 125.538),
        ("angle.upper-elevation", "loudspeaker/high-right", "pass", 47.688),
        # The pair's azimuths differ by 135 - 125.54 = 9.46.
        ("layout.pair-angle", "loudspeaker/high-left+loudspeaker/high-right", "fail", 9.462, "warning"),
        # The slope looks down and to the rear: (0, 0.2 back, 1 down)/1.0198. The way from upper-left to the ear is 1.0
        # across, 1.2 back, 1.45 down, 2.1313 long: cos = (0.24 + 1.45)/(1.0198 x 2.1313) = 0.7775: 38.96, inside 45.
        ("aim.coverage", "loudspeaker/upper-left", "pass", 38.963),
        # From high-left it is 1.0 across, 1.0 forward, 1.89 down, 2.3605 long: the slope now looks away from the ear:
        # cos = (-0.2 + 1.89)/(1.0198 x 2.3605) = 0.7020: 45.41, just outside 45.
        ("aim.coverage", "loudspeaker/high-left", "fail", 45.41, "warning"),
    ),
    *_of(
        rooms.SLOPE_FALLING_TO_REAR,
        # near-left: dx 1.0, dy -1.0, rise 1.09: atan(1.09/1.4142) = 37.62.
        ("angle.upper-elevation", "loudspeaker/near-left", "pass", 37.622),
        # far-right: dx 1.0, dy -1.6, rise 0.97: plan 1.8868, atan(0.97/1.8868) = 27.21, 2.79 short of 30.
        ("angle.upper-elevation", "loudspeaker/far-right", "fail", 27.208, "warning"),
        # 4.6 m from the front the ceiling is 3.0 - 0.2 x 4.6 = 2.08 m up, 0.22 m below what the file says of `above`.
        ("layout.inside-room", "loudspeaker/above", "fail", None, "error"),
        ("layout.inside-room", "loudspeaker/far-right", "pass"),
        # A U+045 behind the seat is on its own side all the same: 1.0 m to the left.
        ("layout.label-side", "loudspeaker/above", "pass"),
    ),
    *_of(
        rooms.HIDDEN_SEAT,
        # On the way to the bar stool (6, 5) the line from (0.5, 0.5) meets x = 4 at 0.5 + 4.5 x 3.5/5.5 = 3.36 m from
        # the front, the one from (3.5, 0.5) at 0.5 + 4.5 x 0.5/2.5 = 1.40 m: both on the wall that ends at 4 m.
        ("layout.line-of-sight", "loudspeaker/left+seat/bar", "fail", None, "warning"),
        ("layout.line-of-sight", "loudspeaker/right+seat/bar", "fail", None, "warning"),
        ("layout.line-of-sight", "loudspeaker/left+seat/middle", "pass"),
    ),
    *_of(
        rooms.GLASS_SIDE_WALL,
        # The left wall is measured from its rear end: the glass is 5 - 3 = 2 to 4 m from the front and up to 2.1 m.
        # on-glass is at 3 m and 1.2 m up: off sideways after 1.0 + 0.1 m, off upwards after 0.9 + 0.15 = 1.05 m.
        ("layout.clear-of-openings", "loudspeaker/on-glass+opening/glass", "fail", -1.05, "error"),
        # Both stand square beside the seat. high-side: rise 0.8 over 1.8 is 23.96, above the 15 a raised side may have.
        ("angle.side-pair", "loudspeaker/on-glass", "pass", 90.0),
        ("angle.side-pair", "loudspeaker/high-side", "pass", 90.0),
        ("angle.ear-elevation", "loudspeaker/high-side", "fail", 23.962, "warning"),
        # on-glass: rise 0.1 over 1.9 is 3.01.
        ("angle.ear-elevation", "loudspeaker/on-glass", "pass", 3.013),
    ),
    *_of(
        rooms.MOVED_TO_THE_REAR_CORNERS,
        # dx 1.7, dy -1.6: 90 + atan(1.6/1.7) = 133.26: past the standard's 120, and nothing says that the right one
        # stands there on purpose.
        ("angle.surround-pair", "loudspeaker/corner-right", "fail", 133.264, "warning"),
        # The left one does, and is held against the window it names instead, which goes to 135.
        ("angle.surround-pair", "loudspeaker/corner-left", "notApplicable"),
        ("layout.departure", "loudspeaker/corner-left", "pass", 133.264),
    ),
    *_of(
        rooms.DOOR_BEHIND_THE_SEATS,
        # The hinge is at (3.0, 5.0). in-the-way looks at the seat, (-0.6, -1.6)/1.709 = (-0.351, -0.936), and is 0.2 m
        # deep and wide: the corner next to the hinge is at (2.6, 4.6) + 0.2 (0.351, 0.936) + 0.1 (0.936, -0.351) =
        # (2.764, 4.752), 0.342 m from it, within the leaf of 0.8 m by 0.458; past the open leaf it would be 0.494. Back
        # through the wall, 0.435, is no way out.
        ("layout.door-swing", "loudspeaker/in-the-way+opening/door", "fail", -0.458, "error"),
        # clear stands 0.8 m beside the open leaf, less half its width 0.7: from half a metre on nobody asks how far.
        ("layout.door-swing", "loudspeaker/clear+opening/door", "pass", 0.5),
    ),
    *_of(
        rooms.POST,
        # From (3.5, 0.5) to (2, 3): 1.7 m from the front it is at 3.5 - 1.5 x 1.2/2.5 = 2.78 m, inside the post.
        ("layout.line-of-sight", "loudspeaker/right+seat/middle", "fail", None, "warning"),
        ("layout.line-of-sight", "loudspeaker/left+seat/middle", "pass"),
    ),
    *_of(
        rooms.SOFFIT,
        # From (0.3, 2.45 up) to (2.0, 1.1 up): at 0.6 m from the left it is 2.45 - 1.35 x 0.3/1.7 = 2.21 m up, and the
        # soffit hangs down to 2.1 m.
        ("layout.line-of-sight", "loudspeaker/above-soffit+seat/middle", "fail", None, "warning"),
        ("layout.line-of-sight", "loudspeaker/free+seat/middle", "pass"),
    ),
    *_of(
        rooms.SECOND_ROW,
        # centre-low: 1.5 of 3.5 m on the way it is 0.8 + 0.4 x 0.4286 = 0.971 m up, the head before it 1.25: -0.279.
        # left-high passes the same head 0.86 m to its side, and 0.41 m above it: the centre is the tightest.
        ("layout.over-heads", "seat/behind", "fail", -0.279, "warning"),
        ("layout.over-heads", "seat/middle", "pass"),
    ),
    *_of(
        rooms.ANGLED_ON_WALL,
        # 2.8 m ahead, 1.019 m up: atan(1.019/2.8) = 20.00: an upper loudspeaker 10 short of the layout's 30.
        ("angle.upper-elevation", "loudspeaker/turned-down", "fail", 19.998, "warning"),
        # Its baffle takes the 20 degrees away, to 0.002; the flat box keeps them, still inside half of 60.
        ("aim.coverage-height", "loudspeaker/turned-down", "pass", 0.002),
        ("aim.coverage-height", "loudspeaker/flat", "pass", 19.998),
        # high-beside: 31.43 down to the ear less 20 of the baffle.
        ("aim.coverage-height", "loudspeaker/high-beside", "pass", 11.430),
        # high-beside: 1.8 m to the side, 1.1 m up: atan(1.1/1.8) = 31.43, inside 30 to 55.
        ("angle.upper-elevation", "loudspeaker/high-beside", "pass", 31.430),
        # Square beside the seat it is 10 short of the 100 that U+110 begins at.
        ("angle.upper-azimuth", "loudspeaker/high-beside", "fail", 90.0, "warning"),
    ),
    *_of(
        rooms.ANGLED_AND_AIMED,
        # Without a bracket the angled cabinet points straight at the seat, the flat one misses it by 20.
        ("aim.mount-reach", "loudspeaker/turned-down", "pass", 0.002),
        ("aim.mount-reach", "loudspeaker/flat", "fail", 19.998, "warning"),
    ),
    *_of(
        rooms.PORTS,
        # rear: 0.27 m from the wall, 0.20 m deep: 0.07 m behind the port, less than its diameter of 0.08 m.
        ("boundary.port-clearance", "loudspeaker/rear", "fail", 0.07, "error"),
        # Under a downward port of the same size the feet give 0.03 m: more than the quarter of its diameter, 0.02 m,
        # where the gap itself becomes the port, but less than the one diameter that it wants.
        ("boundary.port-clearance", "loudspeaker/bottom", "fail", 0.03, "warning"),
    ),
    *_of(
        rooms.FRONT_PAIR_AND_A_ROW,
        # dx 1.5, dy 2.6: atan(1.5/2.6) = 29.98, just inside 30.
        ("angle.front-pair", "loudspeaker/left", "pass", 29.982),
        ("angle.front-pair", "loudspeaker/right", "pass", 29.982),
        # Seen from the left loudspeaker: middle 29.98, left seat atan(0.8/2.6) = 17.10, right seat
        # atan(2.2/2.6) = 40.24. The farthest from its aim is the left seat, by 12.88: a 90-degree cabinet covers 45.
        ("aim.coverage", "loudspeaker/left", "pass", 12.879),
        ("aim.coverage", "loudspeaker/right", "pass", 12.879),
        # At the left seat the left is 2.7203 m away and the right 3.4059 m: 0.6856 m at 343.2 m/s is 1.998 ms,
        # and no centre loudspeaker holds the voices.
        ("distance.off-centre", PAIR + "+seat/left-seat", "fail", 1.998, "warning"),
    ),
)
