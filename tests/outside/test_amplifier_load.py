"""Loads, powers and levels of the channel chapters against published figures and arithmetic by hand."""

from __future__ import annotations

import pytest

from roomlint.figures import amplifier_load, settings
from roomlint.figures.domain import Refused
from roomlint.figures.own_layouts import counted


@pytest.mark.parametrize(
    ("loads", "together"),
    [
        # The table of combinations that trade pages print.
        ((8, 8), 4.0), ((6, 6), 3.0), ((4, 4), 2.0), ((8, 6), 3.43), ((8, 4), 2.67), ((8, 8, 8), 2.67),
        ((6, 6, 8), 2.18),
        ((8, 8, 8, 8), 2.0), ((4, 4, 4), 1.33), ((16, 16), 8.0),
    ],
)  # fmt: skip
def test_loudspeakers_side_by_side(loads: tuple[float, ...], together: float) -> None:
    assert amplifier_load.parallel_ohm(loads) == pytest.approx(together, abs=0.005)


@pytest.mark.parametrize(("loads", "together"), [((8, 8), 16.0), ((4, 4), 8.0), ((6, 8), 14.0), ((4,), 4.0)])
def test_loudspeakers_one_after_another(loads: tuple[float, ...], together: float) -> None:
    assert amplifier_load.series_ohm(loads) == together


@pytest.mark.parametrize(("rated", "least"), [(4, 3.2), (6, 4.8), (8, 6.4)])
def test_rated_impedance_has_its_least_at_four_fifths(rated: float, least: float) -> None:
    """IEC 60268-5: the least impedance is 80 % of the rated one at the lowest, so that such a rating stands."""
    assert amplifier_load.rating_ohm(rated, least) == pytest.approx(rated)
    assert amplifier_load.rating_ohm(None, least) == pytest.approx(rated)
    assert amplifier_load.rating_ohm(rated, 0.9 * least) == pytest.approx(0.9 * rated)


def test_power_of_a_voltage_source_doubles_as_the_load_halves() -> None:
    """100 W into 8 ohm are 28.3 V, which are 200 W into 4."""
    assert pytest.approx(28.3, abs=0.05) == (100.0 * 8.0) ** 0.5
    assert amplifier_load.power_into_w(100, 8, 4) == pytest.approx(28.28427**2 / 4, rel=1e-5)


@pytest.mark.parametrize(("load", "more"), [(4, 3.01), (6, 1.25), (8, 0.0), (16, -3.01)])
def test_sensitivity_for_two_point_eight_volts(load: float, more: float) -> None:
    """2.83 V into 4 ohm are 2 W: 3.01 dB more than for one watt; 6 ohm 1.25 dB; 8 ohm none."""
    assert settings.voltage_sensitivity_db(87.0, load) == pytest.approx(87.0 + more, abs=0.005)


@pytest.mark.parametrize(("distance", "lost"), [(2.0, 6.02), (4.0, 12.04), (3.16, 10.0)])
def test_level_by_distance(distance: float, lost: float) -> None:
    assert settings.level_at_seat_db(90.0, distance) == pytest.approx(90.0 - lost, abs=0.01)


@pytest.mark.parametrize(("frequency", "quarter"), [(80, 3.125), (100, 2.5), (60, 4.167), (120, 2.083)])
def test_quarter_of_a_period(frequency: float, quarter: float) -> None:
    assert settings.quarter_period_ms(frequency) == pytest.approx(quarter, abs=5e-4)


@pytest.mark.parametrize("loads", [(), (8, 0), (8, -4), (float("nan"),), (float("inf"),)])
def test_no_load_and_impossible_ones_are_refused(loads: tuple[float, ...]) -> None:
    for way in (amplifier_load.parallel_ohm, amplifier_load.series_ohm):
        with pytest.raises(Refused):
            way(loads)


def test_no_impedance_at_all_is_refused() -> None:
    with pytest.raises(Refused):
        amplifier_load.rating_ohm(None, None)


@pytest.mark.parametrize(
    ("name", "labels"),
    [
        # ITU-R BS.2051: a layout is named by its upper, ear-layer and bottom loudspeakers; the zenith counts as upper.
        ("4+7+0", "M+030 M-030 M+000 M+090 M-090 M+135 M-135 U+045 U-045 U+135 U-135"),
        ("3+7+0", "M+030 M-030 M+000 M+090 M-090 M+135 M-135 U+045 U-045 UH+180"),
        ("2+5+1", "M+030 M-030 M+000 M+110 M-110 U+030 T+000 B+000"),
        ("0+2+0", "M+030 M-030"),
    ],
)
def test_layouts_are_counted_as_they_are_named(name: str, labels: str) -> None:
    assert counted(labels.split()).name == name


@pytest.mark.parametrize(
    ("volts", "watts", "ohms"), [(70.7, [100], 50.0), (70.7, [250], 20.0), (100, [250], 40.0), (70.7, [30] * 4, 41.65)]
)
def test_a_line_of_taps_loads_its_amplifier_as_makers_tables_say(volts: float, watts: list[float], ohms: float) -> None:
    """100 W on 70.7 V are 50 ohm, 250 W 20 ohm, 250 W on 100 V 40 ohm."""
    assert amplifier_load.line_ohm(volts, watts) == pytest.approx(ohms, rel=1e-3)


def test_taps_leave_a_fifth_as_a_maker_adds_it() -> None:
    """Six taps of 15 W are 90 W, for which a maker's manual asks for 108 W."""
    assert amplifier_load.tap_share_percent([15.0] * 6, 108.0) == pytest.approx(83.33, abs=0.01)
    with pytest.raises(Refused):
        amplifier_load.line_ohm(70.7, [])
