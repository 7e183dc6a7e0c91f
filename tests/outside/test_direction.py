"""Angles and distances against the ADM renderer's published conventions and against worked examples."""

from __future__ import annotations

import math

import pytest

from roomlint.figures import coverage, direction

EAR = (0.0, 0.0, 0.0)


# The geometry tests of the public ADM renderer package `ear` 2.1.0 (BS.2076 and BS.2127 conventions).
@pytest.mark.parametrize(
    ("angle", "start", "end", "tolerance", "inside"),
    [
        (0, 0, 10, 0, True),
        (5, 0, 10, 0, True),
        (10, 0, 10, 0, True),
        (0, 10, 0, 0, True),
        (5, 10, 0, 0, False),
        (15, 10, 0, 0, True),
        (10, 10, 0, 0, True),
        (0, -10, 10, 0, True),
        (180, -10, 10, 0, False),
        (-180, -10, 10, 0, False),
        (0, -180, 180, 0, True),
        (0, -181, 181, 0, False),
        (0, -180, 180, 1, True),
        (180, 180, -180, 0, True),
        (180, 180, -180, 1, True),
        (90, 180, -180, 0, False),
        (0, 0, 0, 0, True),
        (0, 0, 0, 1, True),
        (90, 0, 0, 0, False),
        (0, 1, 2, 2, True),
        (-1, 1, 2, 2, True),
        (359, 1, 2, 2, True),
    ],
)
def test_circular_range(angle: float, start: float, end: float, tolerance: float, inside: bool) -> None:  # noqa: FBT001
    assert direction.in_circular_range(angle, start, end, tolerance) is inside


# Same source, test_geom.py: (1, 1, 0) is at -45; (0, 1, 1) and (sqrt 2, sqrt 2, 2) are 45 up.
def test_azimuth_is_positive_to_the_left_and_elevation_positive_up() -> None:
    assert direction.azimuth_deg(EAR, 0.0, (1.0, 1.0, 0.0)) == pytest.approx(-45.0)
    assert direction.elevation_deg(EAR, (0.0, 1.0, 1.0)) == pytest.approx(45.0)
    assert direction.elevation_deg(EAR, (math.sqrt(2), math.sqrt(2), 2.0)) == pytest.approx(45.0)


# Same source, cart(90, 0, 1) = (-1, 0, 0): az 90 is straight to the left.
def test_a_quarter_turn_to_the_left_is_minus_x() -> None:
    assert direction.direction_vector(90.0, 0.0) == pytest.approx((-1.0, 0.0, 0.0), abs=1e-12)


# Right triangles worked by hand with tables of the tangent.
@pytest.mark.parametrize(
    ("point", "azimuth"),
    [
        ((-1.5, 2.6, 0), 29.98),
        ((-1.0, 3.2, 0), 17.35),
        ((-1.35, 2.6, 0), 27.44),
        ((-2.0, -0.73, 0), 110.05),
        ((-2.0, 0.2, 0), 84.29),
        ((-2.2, 0.5, 0), 77.20),
        ((-1.6, -1.8, 0), 138.37),
        ((-1.6, 1.2, 0), 53.13),  # the 3-4-5 triangle
        ((-2.2, -0.3, 0), 97.77),
        ((-2.2, 0.9, 0), 67.75),
    ],
)
def test_worked_azimuths(point: tuple[float, float, float], azimuth: float) -> None:
    assert direction.azimuth_deg(EAR, 0.0, point) == pytest.approx(azimuth, abs=0.005)


@pytest.mark.parametrize(
    ("rise", "away", "elevation"),
    [(0.6, 2.13, 15.73), (0.75, 2.4, 17.35), (-0.6, 2.8, -12.09), (1.3, 1.8, 35.84), (1.3, 2.5, 27.47)],
)
def test_worked_elevations(rise: float, away: float, elevation: float) -> None:
    assert direction.elevation_deg(EAR, (0.0, away, rise)) == pytest.approx(elevation, abs=0.005)


def test_worked_angle_over_the_head() -> None:
    assert direction.over_head_deg(EAR, 0.0, (0.4, 0.8, 1.3)) == pytest.approx(58.39, abs=0.005)


# ITU-R BS.775-3, figure 1 and note 1 to it: 30 deg fronts and 110 deg surrounds leave gaps of 30, 80 and 140 deg.
def test_gaps_of_the_3_2_layout() -> None:
    gaps = sorted(gap.width_deg for gap in direction.gaps_deg((0, 30, -30, 110, -110)))
    assert gaps == [30, 30, 80, 80, 140]


# The nominal directions of BS.2051 layout I leave 90 deg behind and nothing wider.
def test_gaps_of_the_seven_channel_layout() -> None:
    assert direction.largest_gap_deg((0, 30, -30, 90, -90, 135, -135)) == 90


def test_worked_gap() -> None:
    assert direction.largest_gap_deg((0, 26, -26, 95, -95)) == pytest.approx(170.0)


# Inverse square law: half the distance is 6.02 dB more (any handbook of acoustics).
@pytest.mark.parametrize(
    ("far", "near", "db"), [(2.0, 1.0, 6.02), (2.0, 0.6, 10.46), (3.10, 2.70, 1.20), (3.4, 2.4, 3.03)]
)
def test_level_by_distance(far: float, near: float, db: float) -> None:
    assert direction.free_field_level_db(near, far) == pytest.approx(db, abs=0.005)


# The loudspeaker at (-1.6, 3.0) aimed at the origin; a seat at (1.2, -0.9): 35.68 - 28.07 = 7.60 deg, by hand.
def test_worked_off_axis_angle() -> None:
    speaker, seat = (-1.6, 3.0, 0.0), (1.2, -0.9, 0.0)
    axis = direction.toward(speaker, EAR)
    assert coverage.off_axis_deg(axis, speaker, seat) == pytest.approx(7.60, abs=0.01)
    assert coverage.off_axis_parts(axis, speaker, seat).horizontal_deg == pytest.approx(7.60, abs=0.01)


# A ceiling loudspeaker 1.3 m above ears, 1.8 m away in plan, facing down: 54.16 deg off axis.
def test_worked_ceiling_loudspeaker() -> None:
    angle = coverage.off_axis_deg((0, 0, -1), (0, 0, 1.3), (1.8, 0, 0))
    assert angle == pytest.approx(54.16, abs=0.005)
