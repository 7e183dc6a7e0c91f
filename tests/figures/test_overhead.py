"""Overhead, a direction is told by its angle from straight up, which no azimuth spoils."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from roomlint.figures import overhead
from roomlint.figures.direction import direction_vector, elevation_deg
from roomlint.figures.domain import Refused

EAR = (0.0, 0.0, 1.2)


def _at(azimuth: float, elevation: float) -> tuple[float, float, float]:
    x, y, z = direction_vector(azimuth, elevation)
    return (1.3 * x, 1.3 * y, EAR[2] + 1.3 * z)


def test_straight_up_has_no_azimuth_and_near_it_neither() -> None:
    assert overhead.set_azimuth_deg(EAR, 0.0, (0.0, 0.0, 2.4)) is None
    assert overhead.set_azimuth_deg(EAR, 0.0, _at(180.0, 86.0)) is None
    assert overhead.set_azimuth_deg(EAR, 0.0, _at(180.0, 84.0)) == pytest.approx(180.0)
    assert overhead.set_azimuth_deg(EAR, 0.0, (0.0, 0.0, 0.2)) is None
    with pytest.raises(Refused):
        overhead.from_zenith_deg(EAR, EAR)


@given(st.floats(-180, 180), st.floats(-89, 90), st.floats(-180, 180))
def test_the_angle_from_straight_up_is_what_elevation_leaves_of_90(
    azimuth: float, elevation: float, facing: float
) -> None:
    point = _at(azimuth, elevation)
    angle = overhead.from_zenith_deg(EAR, point)
    assert angle == pytest.approx(90.0 - elevation_deg(EAR, point), abs=1e-9)
    parts = overhead.from_zenith_parts(EAR, facing, point)
    assert math.hypot(*parts) == pytest.approx(angle, abs=1e-6)


def test_a_hand_either_side_of_straight_up_differs_by_little() -> None:
    ahead = overhead.from_zenith_parts(EAR, 0.0, (0.0, 0.02, 2.4))
    behind = overhead.from_zenith_parts(EAR, 0.0, (0.0, -0.02, 2.4))
    assert (ahead.ahead_deg, behind.ahead_deg) == pytest.approx((0.95, -0.95), abs=0.01)
    assert overhead.from_zenith_parts(EAR, 0.0, _at(90.0, 60.0)) == pytest.approx((0.0, 30.0))
    assert overhead.from_zenith_parts(EAR, 90.0, _at(90.0, 60.0)) == pytest.approx((30.0, 0.0))
