"""What must hold of circuits and conductors whatever the numbers, and what is refused."""

from collections.abc import Callable

import pytest
from hypothesis import given
from hypothesis import strategies as st

from roomlint.figures import circuits, conductors, mains_draw

amps = st.floats(0.1, 30.0)
lengths = st.floats(0.1, 100.0)


@given(amps, amps)
def test_continuous_load_asks_for_more_than_its_sum(lasting: float, other: float) -> None:
    assert circuits.required_current_a(lasting, other) > lasting + other


@given(st.floats(0.5, 10), st.floats(10, 400), amps, st.sampled_from(sorted(conductors.NEC_TABLE_8)))
def test_the_greatest_length_drops_exactly_the_limit(limit: float, volts: float, load: float, gauge: int) -> None:
    per_metre = conductors.table_eight_ohm_per_m(gauge)
    length = conductors.greatest_length_m(limit, volts, load, per_metre)
    drop = conductors.voltage_drop_v(length, load, per_metre)
    assert conductors.drop_percent(drop, volts) == pytest.approx(limit)


@given(st.integers(-3, 39))
def test_a_higher_gauge_is_a_thinner_wire(gauge: int) -> None:
    assert conductors.awg_area_mm2(gauge + 1) < conductors.awg_area_mm2(gauge)


@given(st.floats(0.01, 3.0), st.floats(2.0, 16.0))
def test_wire_loss_and_greatest_loop_undo_each_other(loss: float, load: float) -> None:
    assert conductors.wire_loss_db(conductors.greatest_loop_ohm(loss, load), load) == pytest.approx(loss)


@given(lengths, lengths)
def test_longer_cable_loses_more(length: float, more: float) -> None:
    short, long = (conductors.loop_ohm(run, 0.01) for run in (length, length + more))
    assert conductors.wire_loss_db(short, 8.0) < conductors.wire_loss_db(long, 8.0)


def test_flexible_cord_may_resist_more_than_fixed_wiring() -> None:
    assert conductors.iec_60228_ohm_per_m(2.5, "class 5/6") > conductors.iec_60228_ohm_per_m(2.5)


def test_an_idle_amplifier_draws_its_idle_power() -> None:
    assert mains_draw.mains_power_w(1.0, 0.5, idle_w=40.0) == 40.0


@pytest.mark.parametrize(
    ("figure", "word"),
    [
        (lambda: circuits.required_current_a(-1, 0), "continuous current"),
        (lambda: circuits.rating_share(1, 0), "circuit rating"),
        (lambda: circuits.receptacle_total_a(20, 15), "not in the table"),
        (lambda: circuits.receptacle_fits(15, 25), "no receptacle rating"),
        (lambda: conductors.awg_diameter_mm(41), "gauge"),
        (lambda: conductors.copper_ohm_per_m(0), "cross-section"),
        (lambda: conductors.copper_ohm_per_m(1, 400), "temperature"),
        (lambda: conductors.table_eight_ohm_per_m(13), "13 AWG"),
        (lambda: conductors.iec_60228_ohm_per_m(3), "not a tabulated"),
        (lambda: conductors.wire_loss_db(1, 0), "load impedance"),
        (lambda: conductors.wire_tilt_db(1, 8, 4), "above the greatest"),
        (lambda: conductors.damping_factor(8, 0, 0), "output and loop"),
        (lambda: mains_draw.mains_power_w(1, 1.2), "efficiency"),
        (lambda: mains_draw.average_output_w(0, 100), "channels"),
        (lambda: mains_draw.amplifier_heat_w(10, 20), "mains power less output"),
        (lambda: mains_draw.airflow_m3_per_h(10, 0), "temperature rise"),
    ],
)
def test_numbers_outside_a_formula_s_range_are_refused_by_name(figure: Callable[[], object], word: str) -> None:
    with pytest.raises(ValueError, match=word):
        figure()
