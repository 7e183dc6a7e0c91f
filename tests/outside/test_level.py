"""Levels against published worked examples and tables; where a value is only arithmetic, it is written out."""

from __future__ import annotations

import math

import pytest

from roomlint.figures import level, settings
from roomlint.figures.domain import Refused


@pytest.mark.parametrize(
    ("sensitivity_db", "power_w", "distance_m", "at_seat_db"),
    [
        (98.0, 600.0, 1.0, 125.8),  # a public primer on budgets: 98 dB and 600 W give 126 dB at 1 m
        (88.0, 100.0, 3.5, 97.12),  # 88 + 20 - 10.88
        (88.0, 614.0, 3.5, 105.0),  # the power for 105 dB there
        (86.0, 358.0, 3.0, 102.0),
        (98.0, 13260.0, 9.144, 120.0),  # a trade forum's sum: 96 dB with 20 dB in hand at 30 ft, about 13.2 kW
    ],
)
def test_power_into_eight_ohm_gives_the_level_at_the_seat(
    sensitivity_db: float, power_w: float, distance_m: float, at_seat_db: float
) -> None:
    at_1m = level.for_power_db(sensitivity_db, 8.0, power_w)
    found = settings.level_at_seat_db(at_1m, distance_m)
    assert found == pytest.approx(at_seat_db, abs=0.06 if at_seat_db == 120.0 else 0.03)


def test_voltage_of_a_hundred_watts_into_eight_ohm_is_twenty_decibels_over_the_drive() -> None:
    volts = level.rated_v(100.0, 8.0)
    assert volts == pytest.approx(28.28, abs=0.005)
    assert settings.level_at_seat_db(87.0 + level.over_drive_db(volts), 3.2) == pytest.approx(96.89, abs=0.01)


@pytest.mark.parametrize(("load_ohm", "less_db"), [(4.0, -3.01), (6.0, -1.25), (8.0, 0.0)])
def test_one_watt_is_less_than_the_same_voltage_into_a_low_load(load_ohm: float, less_db: float) -> None:
    # A magazine's page: 2.83 V are 1 W into 8 ohm, 2 W into 4.
    assert level.for_power_db(88.0, load_ohm, 1.0) - 88.0 == pytest.approx(less_db, abs=0.005)


@pytest.mark.parametrize(("count", "gain_db"), [(2, 3.01), (3, 4.77), (4, 6.02), (5, 6.99), (7, 8.45)])
def test_equal_sounds_that_know_nothing_of_each_other_add_as_powers(count: int, gain_db: float) -> None:
    assert level.incoherent_db([85.0] * count) - 85.0 == pytest.approx(gain_db, abs=0.005)


@pytest.mark.parametrize(("count", "gain_db"), [(2, 6.02), (4, 12.04), (5, 13.98)])
def test_equal_sounds_in_step_add_as_pressures(count: int, gain_db: float) -> None:
    assert level.in_step_db([85.0] * count) - 85.0 == pytest.approx(gain_db, abs=0.005)


def test_mixed_sums_of_the_trade() -> None:
    assert level.incoherent_db([85.0] * 3 + [82.0] * 2) == pytest.approx(91.02, abs=0.005)
    # Five channels and the low-frequency one at full scale: 20 lg(5 x 10^5.25 + 10^5.75).
    assert level.in_step_db([105.0] * 5 + [115.0]) == pytest.approx(123.2, abs=0.05)
    assert level.incoherent_db([105.0] * 5 + [115.0]) == pytest.approx(116.8, abs=0.05)


def test_a_source_on_a_rigid_floor_gains_six_decibels_and_loses_all_at_half_a_wave() -> None:
    assert level.floor_gain_db(3.0, 3.0, 120.0, 343.0) == pytest.approx(6.02, abs=0.005)
    # A way half a wave longer, far away: 20 lg(1 - d / d').
    longer = 3.0 + 343.0 / 240.0
    assert level.floor_gain_db(3.0, longer, 120.0, 343.0) == pytest.approx(20 * math.log10(1 - 3.0 / longer), abs=0.01)


@pytest.mark.parametrize(
    ("volume_m3", "reference_db"), [(40.0, 76.0), (72.9, 78.0), (200.0, 80.0), (400.0, 82.0), (600.0, 85.0)]
)
def test_level_by_volume_is_the_published_row(volume_m3: float, reference_db: float) -> None:
    assert level.room_reference_db(volume_m3) == reference_db


@pytest.mark.parametrize(
    ("level_db", "hours"), [(80.0, 40.0), (85.0, 12.65), (89.0, 5.04), (90.0, 4.0), (95.0, 1.26)]
)  # fmt: skip
def test_hours_of_the_weekly_allowance_are_the_published_ones(level_db: float, hours: float) -> None:
    assert level.exposure_percent(level_db, hours, level.ALLOWED_DB["adults"]) == pytest.approx(100.0, rel=0.005)


def test_a_week_has_no_more_hours_than_it_has() -> None:
    with pytest.raises(Refused):
        level.exposure_percent(80.0, 169.0, 80.0)


@pytest.mark.parametrize("levels", [level.incoherent_db, level.in_step_db])
def test_nothing_has_no_level(levels: object) -> None:
    with pytest.raises(Refused):
        levels([])  # type: ignore[operator]


@pytest.mark.parametrize(("volts", "ohms", "watts"), [
    (2.83, 8.0, 1.0),  # the drive of sensitivities: one watt into eight ohms (IEC 60268-5 practice)
    (28.28, 8.0, 100.0),  # the table of voltage, load and power in every amplifier's data: 28.3 V are 100 W into 8 ohm
    (28.28, 4.0, 200.0),
    (70.7, 50.0, 100.0),  # a 70.7 V line: 100 W are 50 ohm
])  # fmt: skip
def test_power_of_a_voltage(volts: float, ohms: float, watts: float) -> None:
    assert level.given_w(volts, ohms) == pytest.approx(watts, rel=2e-3)
    with pytest.raises(Refused):
        level.given_w(0.0, ohms)
