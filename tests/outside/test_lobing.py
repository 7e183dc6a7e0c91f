"""Two and three drivers of one cabinet against hand arithmetic with c = 343 m/s, and the trade's own experience."""

import math

import pytest

from roomlint.figures.domain import Refused
from roomlint.figures.lobing import Driver, interference, pressure, share

SPEED = 343.0


def pair(spacing: float, ends: float | None = None, other: float | None = None) -> tuple[Driver, ...]:
    drivers = (Driver(-spacing / 2, 0.0, None, ends), Driver(spacing / 2, 0.0, None, other or ends))
    top = other or ends
    return drivers if top is None else (*drivers, Driver(0.0, 0.0, top))


@pytest.mark.parametrize(
    ("spacing", "frequency", "null", "half_power"), [(0.36, 2500, 10.99, 5.47), (0.30, 2000, 16.61, 8.22)]
)
def test_two_alike_cancel_and_are_three_decibels_down_at_the_angles_of_the_textbook(
    spacing: float, frequency: float, null: float, half_power: float
) -> None:
    # 343 / (2 x 2500 x 0.36) = 0.19056, arcsine 10.985 deg; half of the sine for 3 dB.
    drivers = pair(spacing)
    axis = abs(pressure(drivers, frequency, 0.0, 0.0, SPEED))
    assert axis == 2.0
    assert abs(pressure(drivers, frequency, null, 0.0, SPEED)) / axis < 0.002
    assert 20 * math.log10(abs(pressure(drivers, frequency, half_power, 0.0, SPEED)) / axis) == pytest.approx(
        -3.01, abs=0.02
    )


def test_two_that_are_less_than_half_a_wave_apart_never_cancel() -> None:
    # 0.28 m at 400 Hz: 3 dB down at 49.96 deg, and no null.
    levels = [abs(pressure(pair(0.28), 400.0, angle, 0.0, SPEED)) / 2.0 for angle in range(91)]
    assert 20 * math.log10(levels[50]) == pytest.approx(-3.01, abs=0.02)
    assert min(levels) > 0.5


def test_first_null_at_fifteen_degrees_stands_where_half_a_wave_fits() -> None:
    # 343 / (2 x 0.36 x 0.25882) = 1840.6 Hz.
    found = interference(pair(0.36), 15.0, 0.0, 3.0, SPEED)
    assert found.frequency_hz == pytest.approx(1840.6, rel=0.06)
    assert found.dip_db < -15.0


def test_drivers_over_each_other_cancel_above_and_not_beside() -> None:
    standing = (Driver(0.0, -0.15), Driver(0.0, 0.15))
    assert interference(standing, 40.0, 0.0, 3.0, SPEED).dip_db == pytest.approx(0.0, abs=1e-9)
    assert interference(standing, 0.0, 30.0, 3.0, SPEED).dip_db < -15.0


@pytest.mark.parametrize("driver", [Driver(0.0, 0.0, None, 2000.0), Driver(0.0, 0.0, 2000.0)])
def test_a_crossover_of_fourth_order_halves_the_pressure_and_falls_by_24_decibels_an_octave(driver: Driver) -> None:
    assert share(driver, 2000.0) == 0.5
    far = 16.0 if driver.to_hz is not None else 1 / 16.0
    apart = share(driver, 2000.0 * far) / share(driver, 2000.0 * far * (2.0 if far > 1 else 0.5))
    assert 20 * math.log10(apart) == pytest.approx(24.08, abs=0.01)


def test_both_sides_of_a_crossover_make_one() -> None:
    for hz in (300.0, 1500.0, 2000.0, 4000.0):
        assert share(Driver(0, 0, None, 2000.0), hz) + share(Driver(0, 0, 2000.0), hz) == pytest.approx(1.0)


@pytest.mark.parametrize("degrees", [10.0, 15.0, 20.0])
@pytest.mark.parametrize("side", [1.0, -1.0])
def test_of_two_woofers_one_that_stops_early_leaves_no_lobe_at_the_seats(degrees: float, side: float) -> None:
    """A fact of the trade, without a source: one stops about 1.3 kHz, the other about 2.5 kHz; seats to 20 degrees."""
    both = interference(pair(0.20, 2500.0), side * degrees, 0.0, 3.0, SPEED).dip_db
    early = interference(pair(0.20, 1300.0, 2500.0), side * degrees, 0.0, 3.0, SPEED).dip_db
    assert early > -6.0
    assert early > both / 1.5
    if degrees == 20.0:
        assert both < -9.0


def test_too_near_and_without_drivers_there_is_no_figure() -> None:
    with pytest.raises(Refused):
        interference(pair(0.36), 15.0, 0.0, 0.5, SPEED)
    with pytest.raises(Refused):
        interference((), 15.0, 0.0, 3.0, SPEED)


def test_a_band_that_nobody_plays_is_a_hole() -> None:
    with pytest.raises(Refused):
        interference((Driver(0.1, 0.0, 1e9, None),), 15.0, 0.0, 3.0, 343.0)
