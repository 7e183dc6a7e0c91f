"""Picture angles, sight lines, throw, light and contrast against published tables and worked examples of the trade."""

from __future__ import annotations

import math

import pytest
import shapely

from roomlint.figures import viewing
from roomlint.figures.domain import Refused

WIDE, HIGH = 2.6566, 1.4943
"""A picture of 120 inches in 16:9, m."""


# Distance over picture width, by angle: a table of the trade that is plain geometry.
@pytest.mark.parametrize(
    ("angle", "widths"),
    [
        (30, 1.8660), (33, 1.6880), (40, 1.3737), (43, 1.2693), (45, 1.2071), (50, 1.0723), (60, 0.8660), (80, 0.5959),
        (100, 0.4195),
    ],
)  # fmt: skip
def test_angle_by_picture_widths(angle: float, widths: float) -> None:
    assert viewing.seen_width_deg(widths, 0.0, 1.0) == pytest.approx(angle, abs=0.01)


# Angles at whole picture heights; those of 16:9 at 3H and 2H are ITU-R BS.775's 33 and 48 degrees, and those of 2.39
# at 4, 3 and 2H the 33.3, 43.4 and 61.7 that are quoted for review rooms.
@pytest.mark.parametrize(
    ("aspect", "heights", "angle"),
    [
        (16 / 9, 0.8, 96.03), (16 / 9, 1.5, 61.30), (16 / 9, 1.6, 58.11), (16 / 9, 2.0, 47.92), (16 / 9, 3.0, 33.01),
        (16 / 9, 3.2, 31.05), (16 / 9, 4.0, 25.06), (2.39, 2.0, 61.72), (2.39, 3.0, 43.44), (2.39, 4.0, 33.27),
    ],
)  # fmt: skip
def test_angle_by_picture_heights(aspect: float, heights: float, angle: float) -> None:
    assert viewing.seen_width_deg(heights, 0.0, aspect) == pytest.approx(angle, abs=0.01)


@pytest.mark.parametrize(("before", "angle"), [(3.20, 45.09), (3.60, 40.50), (5.00, 29.75), (4.957, 30.0)])
def test_worked_angles_on_the_axis(before: float, angle: float) -> None:
    assert viewing.seen_width_deg(before, 0.0, WIDE) == pytest.approx(angle, abs=0.01)


def test_worked_angles_aside() -> None:
    assert viewing.seen_width_deg(3.60, 1.20, WIDE) == pytest.approx(37.12, abs=0.01)
    assert viewing.seen_width_deg(3.60, -1.20, WIDE) == pytest.approx(37.12, abs=0.01)
    assert viewing.far_edge_deg(3.60, -1.20, WIDE) == pytest.approx(35.08, abs=0.01)


# 3.20 m before it and the eye at 1.10 m: bottom, middle and top of the picture; a 65 inch panel at 2.40 m.
@pytest.mark.parametrize(
    ("distance", "rise", "angle"),
    [
        (3.20, 0.75 - 1.10, -6.24), (3.20, 0.3972, 7.07), (3.20, 1.1443, 19.68), (2.40, 0.2, 4.76), (2.40, 0.4, 9.46),
        (2.40, 0.4047, 9.57), (2.40, 0.6047, 14.14), (2.40, 0.8047, 18.54), (1.634, 1.1443, 35.0),
        (1.982, 1.1443, 30.0), (1.482, 0.3972, 15.0),
    ],
)  # fmt: skip
def test_worked_elevations(distance: float, rise: float, angle: float) -> None:
    assert viewing.upward_deg(distance, rise) == pytest.approx(angle, abs=0.01)


# A minute of arc a line, in picture heights.
@pytest.mark.parametrize(("lines", "heights"), [(720, 4.775), (1080, 3.183), (2160, 1.592), (4320, 0.796)])
def test_distance_of_one_minute_of_arc(lines: int, heights: float) -> None:
    assert viewing.acuity_distance_m(1.0, lines) == pytest.approx(heights, abs=5e-4)


# A design guide's own example: 1500 mm of 1080 lines are for viewers up to 4775 mm.
def test_published_distance_for_analysed_content() -> None:
    assert viewing.acuity_distance_m(1.5, 1080) == pytest.approx(4.775, abs=1e-3)


# Riser for a clearance C over the eye before: N = (R + C)(D + T)/D - R, with D 3.20 m, T 1.80 m, eyes at 1.10 m.
@pytest.mark.parametrize(
    ("bottom", "clearance", "riser"),
    [
        (0.70, 0.120, 0.4125), (0.75, 0.120, 0.3844), (1.00, 0.120, 0.2438), (1.22, 0.120, 0.1200),
        (1.40, 0.120, 0.0188), (0.75, 0.060, 0.2906), (0.75, 0.127, 0.3953), (0.75, 0.0660, 0.3000),
        (1.4333, 0.120, 0.0),
    ],
)  # fmt: skip
def test_worked_risers(bottom: float, clearance: float, riser: float) -> None:
    share = 3.20 / 5.00
    assert viewing.sight_line_m(bottom, 1.10 + riser, share) == pytest.approx(1.10 + clearance, abs=1e-4)
    short = 1.10 + clearance - viewing.sight_line_m(bottom, 1.10, share)
    assert viewing.cure_m(short, share) == pytest.approx(riser, abs=1e-4)


# The published example of a stadium: distance 30, eye 10 above the focus, pitch 1, clearance 0.15: a riser of 0.4883.
def test_published_riser_of_a_stadium() -> None:
    share = 30.0 / 31.0
    assert viewing.cure_m(10.15 - viewing.sight_line_m(0.0, 10.0, share), share) == pytest.approx(0.4883, abs=1e-4)


# Over a real head: the mean pair, and a short viewer behind a tall one.
@pytest.mark.parametrize(("head", "eye", "riser"), [(1.212, 1.10, 0.3719), (1.389, 1.135, 0.6134)])
def test_worked_risers_over_heads(head: float, eye: float, riser: float) -> None:
    share = 3.20 / 5.00
    assert viewing.cure_m(head - viewing.sight_line_m(0.75, eye, share), share) == pytest.approx(riser, abs=1e-4)


@pytest.mark.parametrize(
    ("ratio", "distance"), [(1.2, 3.188), (1.35, 3.586), (1.5, 3.985), (1.581, 4.20), (2.0, 5.313), (2.20, 5.844)]
)
def test_worked_throws(ratio: float, distance: float) -> None:
    assert viewing.throw_ratio(distance, WIDE) == pytest.approx(ratio, abs=5e-4)


def test_both_conventions_of_lens_shift() -> None:
    assert viewing.shift_percent(0.8528, HIGH, half=False) == pytest.approx(57.07, abs=0.01)
    assert viewing.shift_percent(-0.8528, HIGH, half=True) == pytest.approx(114.14, abs=0.01)
    # Level with the picture's edge.
    assert viewing.shift_percent(HIGH / 2, HIGH, half=False) == pytest.approx(50.0)
    assert viewing.shift_percent(HIGH / 2, HIGH, half=True) == pytest.approx(100.0)


# Two makers' tables of shifts up and aside together: the straight sum is on the cautious side of both.
@pytest.mark.parametrize(
    ("up", "across", "total"), [((10.0, 50.0), (28.1, 31.97), 1.08), ((48.0, 95.0), (31.0, 52.0), 1.10)]
)
def test_published_shifts_together(up: tuple[float, float], across: tuple[float, float], total: float) -> None:
    assert viewing.share_of(*up) + viewing.share_of(*across) == pytest.approx(total, abs=0.005)
    assert viewing.share_of(0.0, 0.0) == 0.0
    with pytest.raises(Refused):
        viewing.share_of(1.0, 0.0)


# A ray over a row: 4.20 m of throw, the lens at 2.35 m, the picture from 0.75 m up, 3.20 m before it.
def test_worked_ray_of_a_projector() -> None:
    assert viewing.sight_line_m(0.75, 2.35, 3.20 / 4.20) == pytest.approx(1.9690, abs=1e-4)
    with pytest.raises(Refused):
        viewing.sight_line_m(0.75, 2.35, 1.0)


@pytest.mark.parametrize(
    ("flux", "gain", "luminance"),
    [
        (1500.0, 1.0, 120.28), (1500.0, 1.3, 156.36), (598.6, 1.0, 48.0), (1247.1, 1.0, 100.0), (683.7, 1.0, 54.82),
        (1875.0, 1.0, 150.35),
    ],
)  # fmt: skip
def test_worked_luminances(flux: float, gain: float, luminance: float) -> None:
    assert viewing.luminance_cd_m2(flux, gain, 3.9697) == pytest.approx(luminance, abs=0.01)


# 14 and 16 foot-lamberts, one of which is 1/(pi x 0.3048^2) cd/m2.
@pytest.mark.parametrize(("foot_lamberts", "candela"), [(14.0, 47.97), (16.0, 54.82), (35.10, 120.28)])
def test_foot_lamberts(foot_lamberts: float, candela: float) -> None:
    feet2 = 3.9697 / 0.3048**2
    assert viewing.luminance_cd_m2(foot_lamberts * feet2, 1.0, 3.9697) == pytest.approx(candela, abs=0.02)


# Constant height by zooming a raster of 16:9 to 2.39: three quarters of the light are used.
def test_worked_zoom() -> None:
    wide, high = viewing.raster(3.5714, HIGH, 16 / 9)
    assert wide * high == pytest.approx(7.1747, abs=1e-3)
    assert viewing.luminance_cd_m2(1500.0, 1.0, wide * high) == pytest.approx(66.55, abs=0.01)
    # 4:3 by the same raster is covered in its height.
    assert viewing.raster(HIGH * 4 / 3, HIGH, 16 / 9) == pytest.approx((HIGH * 16 / 9, HIGH))


@pytest.mark.parametrize(("off", "gain"), [(15.0, 1.1446), (25.0, 0.9128), (35.0, 0.6500), (45.0, 0.4134)])
def test_worked_gains_off_the_axis(off: float, gain: float) -> None:
    assert 1.3 * viewing.gain_share(off, 35.0) == pytest.approx(gain, abs=1e-4)


# 100 cd/m2 over 0.5, gain 1: what light leaves of it.
@pytest.mark.parametrize(
    ("ambient", "contrast"), [(5.0, 48.57), (2.39, 80.0), (4.81, 50.0), (20.76, 15.0), (0.0, 200.0)]
)
def test_worked_contrasts(ambient: float, contrast: float) -> None:
    assert viewing.contrast_in_light(100.0, 200.0, ambient, 1.0) == pytest.approx(contrast, rel=2e-3)
    with pytest.raises(Refused):
        viewing.contrast_in_light(100.0, 200.0, -1.0, 1.0)


def test_nothing_is_seen_from_behind_the_picture() -> None:
    for figure in (viewing.seen_width_deg, viewing.far_edge_deg):
        with pytest.raises(Refused):
            figure(-0.1, 0.0, WIDE)
    with pytest.raises(Refused):
        viewing.throw_ratio(0.0, WIDE)
    assert math.isclose(viewing.gain_share(0.0, 35.0), 1.0)


# Central projection: a point (X, Y, Z) before a camera falls at f X/Z and f Y/Z on its image plane, as R. Hartley and
# A. Zisserman write it (Multiple View Geometry in Computer Vision, 2nd edition, 6.1; from memory). The eye is the
# camera, the picture's plane the image plane, f how far that is.
@pytest.mark.parametrize("eye", [(3.2, 0.0, 1.1), (2.5, -0.7, 1.4), (4.0, 1.1, 0.9)])
def test_shadows_fall_where_a_camera_at_the_eye_sees_them(eye: tuple[float, float, float]) -> None:
    corners = [(b, s, h) for b in (0.2, 0.9) for s in (-0.4, 0.3) for h in (0.1, 0.8)]
    f, side, up = eye
    seen = [(f * (s - side) / (f - b) + side, f * (h - up) / (f - b) + up) for b, s, h in corners]
    hull = shapely.MultiPoint(seen).convex_hull
    assert shapely.Polygon(viewing.shadow(eye, corners)).symmetric_difference(hull).area == pytest.approx(0.0, abs=1e-9)


def test_only_what_stands_in_between_hides() -> None:
    for corners in ([(3.3, 0.0, 1.0)], [(-0.1, 0.0, 1.0)], []):
        with pytest.raises(Refused):
            viewing.shadow((3.2, 0.0, 1.1), corners)
