"""What a seat sees of a picture, and how a projector lights it. All by plain geometry and photometry."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING, Final, TypeAlias

from roomlint.figures import convex
from roomlint.figures.domain import Refused, positive

if TYPE_CHECKING:
    from collections.abc import Iterable

    from roomlint.plane import Point2

Point3: TypeAlias = tuple[float, float, float]
MINUTE_DEG: Final = 1.0 / 60.0
"""What a good eye resolves."""


def seen_width_deg(before_m: float, aside_m: float, width_m: float) -> float:
    """Return the horizontal angle that a picture fills, deg: atan((x + W/2)/d) - atan((x - W/2)/d).

    `before_m` (d) is the eye's distance from the picture's plane, above 0 m, else Refused; `aside_m` (x) is how far the
    eye is to the side of its middle, either way. 2.6566 m seen from 3.20 m on the axis fill 45.09 deg. Source: plane
    geometry; the angles at whole picture heights are those of ITU-R BS.775, note 2.
    """
    positive("distance before the picture", before_m, "m")
    half = positive("picture width", width_m, "m") / 2.0
    return math.degrees(math.atan((aside_m + half) / before_m) - math.atan((aside_m - half) / before_m))


def far_edge_deg(before_m: float, aside_m: float, width_m: float) -> float:
    """Return how far off straight the picture's far edge is seen, deg: atan((|x| + W/2)/d), as `seen_width_deg`."""
    positive("distance before the picture", before_m, "m")
    return math.degrees(math.atan((abs(aside_m) + width_m / 2.0) / before_m))


def upward_deg(distance_m: float, rise_m: float) -> float:
    """Return how steeply an eye looks up to a point, deg: atan(rise / distance in plan); negative down.

    Distance above 0 m, else Refused. 1.1443 m up over 3.20 m are 19.68 deg. Source: plane geometry.
    """
    return math.degrees(math.atan(rise_m / positive("distance in plan", distance_m, "m")))


def acuity_distance_m(height_m: float, lines: int) -> float:
    """Return from where on a line of a picture is one minute of arc, m: (H / N) / tan(1/60 deg).

    3438 picture heights over the number of lines: 3.183 H for 1080, 1.592 H for 2160. Height and lines above 0, else
    Refused. Source: arithmetic; the factor 3438 is ANSI/AVIXA V202.01's for content that is analysed.
    """
    pitch = positive("picture height", height_m, "m") / positive("lines", float(lines), "")
    return pitch / math.tan(math.radians(MINUTE_DEG))


def sight_line_m(focus_m: float, eye_m: float, share: float) -> float:
    """Return how high a line of sight is above a point between, m: z_f + (z_e - z_f) s.

    `share` (s) is how much of the way from the focus to the eye lies before the point, 0 to 1, else Refused. Source:
    similar triangles; the published form C = D (N + R)/(D + T) - R is the same (plus.maths.org, on stadia).
    """
    if not 0.0 < share < 1.0:
        raise Refused("what is not between the focus and the eye hides nothing")
    return focus_m + (eye_m - focus_m) * share


def shadow(eye: Point3, corners: Iterable[Point3]) -> tuple[Point2, ...]:
    """Return what a convex body hides of a plane from an eye: the convex hull of its corners' shadows, anticlockwise.

    All points as (before the plane, to one side, up), m, those of the plane as (to one side, up); corners on the plane
    or before it and nearer to it than the eye, else Refused. A corner half way casts its shadow twice as far from the
    eye's own foot: (side, up) of the eye plus those of the corner less the eye's, over 1 - before / eye's before.
    Source: similar triangles.
    """
    before, side, up = eye
    cast = []
    for near, corner_side, corner_up in corners:
        if not 0.0 <= near < before:
            raise Refused("only what stands between an eye and a plane hides any of it")
        times = 1.0 / (1.0 - near / before)
        cast.append((side + (corner_side - side) * times, up + (corner_up - up) * times))
    if not cast:
        raise Refused("a body without corners hides nothing")
    return convex.hull(cast)


def upright(low: Point2, high: Point2) -> tuple[Point2, ...]:
    """Return a rectangle of a plane by its lowest and highest corner, anticlockwise."""
    return (low, (high[0], low[1]), high, (low[0], high[1]))


def cure_m(short_m: float, share: float) -> float:
    """Return how much higher an eye must be for its line of sight to be `short_m` higher, m: short / s, as above."""
    return short_m / positive("share of the way", share, "")


def raster(width_m: float, height_m: float, aspect: float) -> tuple[float, float]:
    """Return width and height of the projector's whole raster where it just covers a picture, m.

    A picture that is wider than the raster is covered in width, one that is narrower in height. All above 0, else
    Refused. Source: geometry; a 2.39 picture 3.5714 m wide by a 16:9 raster lights 7.17 m2.
    """
    wide = max(positive("picture width", width_m, "m"), positive("picture height", height_m, "m") * aspect)
    return wide, wide / positive("aspect", aspect, "")


def throw_ratio(distance_m: float, width_m: float) -> float:
    """Return the throw ratio: the lens's distance from the picture's plane over the raster's width; both above 0 m."""
    return positive("throw distance", distance_m, "m") / positive("picture width", width_m, "m")


def shift_percent(offset_m: float, side_m: float, *, half: bool) -> float:
    """Return the lens shift that an offset of the lens from the picture's middle asks for, per cent.

    Of the whole height or width, 100 |s| / H; or, `half`, of half of it, 200 |s| / H, the other convention of the
    trade: level with the picture's edge is 50 % by the one and 100 % by the other. Side above 0 m, else Refused.
    Source: installation manuals of several makers.
    """
    return (200.0 if half else 100.0) * abs(offset_m) / positive("picture side", side_m, "m")


def share_of(asked_percent: float, limit_percent: float) -> float:
    """Return the share of a lens's shift that is asked for; none where none is asked, else the limit is above 0."""
    return 0.0 if asked_percent == 0.0 else asked_percent / positive("lens shift", limit_percent, "%")


def luminance_cd_m2(flux_lm: float, gain: float, area_m2: float) -> float:
    """Return a screen's luminance, cd/m2: L = Phi g / (pi A), a diffuse screen's times its gain.

    1500 lm on 3.9697 m2 at gain 1.0 are 120.3 cd/m2. All above 0, else Refused. Source: Lambert's law; g by definition.
    """
    flux = positive("luminous flux", flux_lm, "lm") * positive("gain", gain, "")
    return flux / (math.pi * positive("lit area", area_m2, "m2"))


def gain_share(off_deg: float, half_gain_deg: float) -> float:
    """Return the share of its gain that a screen keeps off its axis: exp(-ln 2 (phi / th)^2).

    One half at the half-gain angle by that angle's definition; the curve between is a model (ours). Angle above 0 deg,
    else Refused.
    """
    return math.exp(-math.log(2.0) * (off_deg / positive("half-gain angle", half_gain_deg, "deg")) ** 2)


def contrast_in_light(white_cd_m2: float, native: float, ambient_lx: float, gain: float) -> float:
    """Return white over black with light falling on a screen: (L_w + L_a) / (L_b + L_a), L_a = E g / pi.

    L_b is the white over the projector's own contrast. 100 cd/m2 over 200:1 in 5 lx at gain 1 leave 48.6. White,
    contrast and gain above 0, light 0 lx or more, else Refused. Source: photometry; as ANSI/AVIXA V201.01 measures it.
    """
    if ambient_lx < 0.0:
        raise Refused("light on the screen is not negative")
    reflected = ambient_lx * positive("gain", gain, "") / math.pi
    black = positive("white", white_cd_m2, "cd/m2") / positive("contrast", native, "")
    return (white_cd_m2 + reflected) / (black + reflected)
