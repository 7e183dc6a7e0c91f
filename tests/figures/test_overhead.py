"""Overhead, a direction is told by its angle from straight up, which no azimuth spoils."""

from __future__ import annotations

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


@given(st.floats(-180, 180), st.floats(-89, 90))
def test_the_angle_from_straight_up_is_what_elevation_leaves_of_90(azimuth: float, elevation: float) -> None:
    point = _at(azimuth, elevation)
    angle = overhead.from_zenith_deg(EAR, point)
    assert angle == pytest.approx(90.0 - elevation_deg(EAR, point), abs=1e-9)
