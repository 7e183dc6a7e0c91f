"""What must hold of fasteners, mounts and stands whatever the numbers, and what is refused."""

import math
from collections.abc import Callable

import pytest
from hypothesis import given
from hypothesis import strategies as st

from roomlint.figures import dowels, fasteners, loads, stability, thin_steel
from roomlint.figures.inch_pound import INCH_MM

gravities = st.floats(*fasteners.GRAVITY_RANGE)
forces = st.floats(0.1, 1e5)
sizes = st.sampled_from(fasteners.LAG_SIZES)
angles = st.floats(0.0, 90.0)


@given(gravities, st.floats(*fasteners.LAG_DIAMETER_RANGE_MM))
def test_denser_wood_holds_a_lag_better(gravity: float, diameter: float) -> None:
    lightest = fasteners.lag_withdrawal_n_per_mm(fasteners.GRAVITY_RANGE[0], diameter)
    assert fasteners.lag_withdrawal_n_per_mm(gravity, diameter) >= lightest


@given(forces, forces, forces, forces)
def test_the_straight_line_sum_is_never_kinder(pull: float, across: float, tension: float, shear: float) -> None:
    combined = fasteners.combined_utilisation(pull, across, tension_n=tension, shear_n=shear)
    straight = fasteners.straight_line_utilisation(pull, across, tension_n=tension, shear_n=shear)
    assert combined <= straight * (1 + 1e-9)


@given(forces, forces, forces)
def test_pure_pull_and_pure_shear_use_their_own_capacity(pull: float, across: float, load: float) -> None:
    pulled = fasteners.combined_utilisation(pull, across, tension_n=load, shear_n=0.0)
    sheared = fasteners.combined_utilisation(pull, across, tension_n=0.0, shear_n=load)
    assert pulled == pytest.approx(load / pull)
    assert sheared == pytest.approx(load / across)


def test_no_load_uses_nothing() -> None:
    assert fasteners.combined_utilisation(100, 100, tension_n=0.0, shear_n=0.0) == 0.0


@given(sizes, gravities, angles, st.floats(0.0, 30.0), st.floats(0.0, 30.0))
def test_more_board_never_helps(size: fasteners.LagSize, gravity: float, angle: float, gap: float, more: float) -> None:
    depth = 8 * size.diameter_mm
    thin = dowels.lag_shear_n(size, gravity, dowels.LagSeat(depth, 3.0, gap, angle))
    thick = dowels.lag_shear_n(size, gravity, dowels.LagSeat(depth, 3.0, gap + more, angle))
    assert thick <= thin * (1 + 1e-9)


@given(sizes, gravities, angles)
def test_shear_across_the_grain_is_never_above_that_at_an_angle(
    size: fasteners.LagSize, gravity: float, angle: float
) -> None:
    depth = 8 * size.diameter_mm
    slanted = dowels.lag_shear_n(size, gravity, dowels.LagSeat(depth, 3.0, angle_deg=angle))
    across = dowels.lag_shear_n(size, gravity, dowels.LagSeat(depth, 3.0, angle_deg=90.0))
    along = dowels.lag_shear_n(size, gravity, dowels.LagSeat(depth, 3.0))
    assert across * (1 - 1e-9) <= slanted <= along * (1 + 1e-9)


@given(st.floats(0.7, 60.0), st.floats(20.0, 60.0), st.floats(1.0, 6.0))
def test_without_a_gap_the_modes_equal_the_plain_yield_equations(length: float, main: float, side: float) -> None:
    """NDS-2015 Table 12.3.1A, modes II, IIIm, IIIs and IV as printed, against the form with a gap."""
    joint = dowels.SingleShear(6.0, 300.0, length, main, side, 400.0)
    ratio, reach = main / 400.0, length / side
    k1 = math.sqrt(ratio + 2 * ratio**2 * (1 + reach + reach**2) + reach**2 * ratio**3) - ratio * (1 + reach)
    k2 = math.sqrt(2 * (1 + ratio) + 2 * 300 * (1 + 2 * ratio) * 36 / (3 * main * length**2)) - 1
    k3 = math.sqrt(2 * (1 + ratio) / ratio + 2 * 300 * (2 + ratio) * 36 / (3 * main * side**2)) - 1
    printed = (
        k1 / (1 + ratio) * 6 * side * 400,
        k2 * 6 * length * main / (1 + 2 * ratio),
        k3 * 6 * side * main / (2 + ratio),
        36 * math.sqrt(2 * main * 300 / (3 * (1 + ratio))),
    )
    assert dowels.yield_values_n(joint)[2:] == pytest.approx(printed, rel=1e-9)


def test_small_dowels_take_one_divisor_in_every_mode() -> None:
    assert set(dowels.reduction_terms(0.16 * INCH_MM, 0.2 * INCH_MM, 90.0)) == {2.2}


def test_thick_plates_count_as_hot_rolled() -> None:
    assert dowels.steel_bearing_mpa(0.25 * INCH_MM) == dowels.HOT_ROLLED_STEEL_BEARING_MPA


@given(st.floats(20, 200), st.floats(0, 250), st.floats(0, 10))
def test_counted_thread_never_exceeds_the_depth(length: float, through: float, tip: float) -> None:
    depth = fasteners.penetration_mm(length, through, tip)
    counted = fasteners.counted_thread_mm(length, 0.6 * length, through, tip)
    assert 0.0 <= counted <= depth * (1.0 + 1e-12)


@given(st.floats(20, 200), st.floats(0, 60), st.floats(5, 60), st.floats(0.2, 1.0))
def test_only_thread_inside_the_wood_counts(length: float, through: float, member: float, share: float) -> None:
    counted = fasteners.counted_thread_mm(length, share * length, through, 5.0, member)
    assert 0.0 <= counted <= member * (1.0 + 1e-12)
    assert counted <= fasteners.counted_thread_mm(length, share * length, through, 5.0) * (1.0 + 1e-12)


def test_a_long_lag_in_a_stud_holds_by_what_is_in_the_stud() -> None:
    """7 in lag with 4 in of thread through 5/8 in into 3-1/2 in: thread from 3 in, wood to 4-1/8 in."""
    counted = fasteners.counted_thread_mm(7 * INCH_MM, 4 * INCH_MM, 0.625 * INCH_MM, 3 / 16 * INCH_MM, 3.5 * INCH_MM)
    assert counted == pytest.approx(1.125 * INCH_MM)
    assert fasteners.penetration_mm(7 * INCH_MM, 0.625 * INCH_MM, 0.0, 3.5 * INCH_MM) == pytest.approx(3.5 * INCH_MM)


def test_an_eight_millimetre_screw_is_no_five_sixteenths_lag() -> None:
    assert fasteners.lag_size(8.0).root_diameter_mm == pytest.approx(5.6)
    assert fasteners.lag_size(0.3125 * INCH_MM).root_diameter_mm == pytest.approx(0.227 * INCH_MM)
    assert fasteners.is_metric(8.0)
    assert not fasteners.is_metric(0.3125 * INCH_MM)


def test_unknown_species_is_the_lightest_listed() -> None:
    assert min(fasteners.SPECIFIC_GRAVITY.values()) == fasteners.UNKNOWN_SPECIES_GRAVITY


@given(forces, st.floats(0.0, 1.0), st.floats(0.05, 1.0), st.floats(0.0, 1.0), st.integers(2, 4))
def test_two_columns_share_a_twist(load: float, aside: float, rows: float, columns: float, corners: int) -> None:
    """The corner's resultant times its lever, over all corners, is the twist."""
    down, level = loads.group_twist_n(load, aside, rows, columns, corners)
    lever = math.hypot(rows, columns) / 2.0
    assert corners * math.hypot(down, level) * lever == pytest.approx(load * aside)


@given(forces, st.floats(0.0, 89.0), st.integers(1, 8))
def test_a_slope_turns_weight_into_shear(load: float, slope: float, count: int) -> None:
    seat = loads.CeilingSeat(count, 1, 0.1, 0.0, 0.0, 0.0, slope)
    pull, shear = loads.ceiling_demand_n(load, seat, 0.0)
    assert math.hypot(pull, shear) == pytest.approx(load / count)
    assert shear == pytest.approx(pull * math.tan(math.radians(slope)), abs=1e-9)


def test_a_stand_s_centre_lies_between_its_own_and_what_is_on_it() -> None:
    assert stability.stacked_centre_m(10.0, 0.2, 10.0, 1.0) == pytest.approx(0.6)


@pytest.mark.parametrize("category", ["D", "D0", "D1", "D2", "E", "F"])
def test_the_residential_code_s_categories_of_high_shaking_count(category: str) -> None:
    assert loads.needs_seismic_anchorage(category, 10.0, 2.0)


@pytest.mark.parametrize(
    ("celsius", "wet", "factor"), [(20, False, 1.0), (45, False, 0.8), (45, True, 0.7), (60, True, 0.5)]
)
def test_warm_wood_is_weaker(celsius: float, factor: float, *, wet: bool) -> None:
    assert fasteners.temperature_factor(celsius, wet=wet) == factor


def test_end_grain_holds_no_wood_screw_or_nail() -> None:
    assert fasteners.end_grain_withdrawal_factor("wood screw") == 0.0
    assert fasteners.end_grain_withdrawal_factor("nail") == 0.0
    assert fasteners.end_grain_lateral_factor() == 0.67


def test_wet_service_of_each_kind() -> None:
    assert fasteners.wet_service_factor("nail", wet=True) == 0.25
    assert fasteners.wet_service_factor("wood screw", wet=False) == 1.0


@given(st.floats(0.0, 1e4))
def test_misuse_never_exceeds_four_times_the_weight(load: float) -> None:
    assert load <= loads.misuse_load_n(load) <= 4 * load + 1e-9


def test_design_factor_divides() -> None:
    assert loads.design_factor(1000, 200) == 5


@given(forces, st.floats(0.01, 1.0), st.floats(0.05, 2.0))
def test_tipping_push_at_the_centre_of_gravity_is_the_tangent_of_the_tip_angle(
    load: float, edge: float, height: float
) -> None:
    tangent = math.tan(math.radians(stability.tip_angle_deg(edge, height)))
    assert stability.push_over_n(load, edge, height) == pytest.approx(load * tangent)


@pytest.mark.parametrize(
    ("figure", "word"),
    [
        (lambda: fasteners.lag_withdrawal_n_per_mm(0.9, 8.0), "specific gravity"),
        (lambda: fasteners.lag_withdrawal_n_per_mm(0.5, 4.0), "diameter"),
        (lambda: fasteners.wood_screw_withdrawal_n_per_mm(0.5, 1.0), "diameter"),
        (lambda: fasteners.lag_size(8.5), "no lag screw"),
        (lambda: fasteners.temperature_factor(70.0), "above 65.6"),
        (lambda: fasteners.counted_thread_mm(50, 60, 10, 0), "more than the whole"),
        (lambda: fasteners.penetration_mm(50, -1), "passed through"),
        (lambda: fasteners.combined_capacity_n(1, 1, tension_n=0, shear_n=0), "no load"),
        (lambda: fasteners.combined_capacity_n(0, 1, tension_n=1, shear_n=0), "withdrawal capacity"),
        (lambda: fasteners.hankinson(1, 1, 91), "angle"),
        (lambda: dowels.reduction_terms(30.0, 30.0, 0.0), "root diameter"),
        (lambda: dowels.bearing_perpendicular_mpa(0.5, 3.0), "nominal diameter"),
        (lambda: thin_steel.pull_out_nominal_n(0.0, 4.8, 310), "sheet thickness"),
        (lambda: loads.weight_n(-1), "mass"),
        (lambda: loads.weight_n(math.nan), "mass"),
        (lambda: loads.top_fastener_tension_n(1, 1, 0, 2), "row spacing"),
        (lambda: loads.top_fastener_tension_n(1, 1, 1, 0), "top fasteners"),
        (lambda: loads.sling_tension_n(1, 2, 0), "sling angle"),
        (lambda: loads.group_twist_n(1, 1, 1, 0, 1), "single fastener"),
        (lambda: loads.ceiling_demand_n(1, loads.CeilingSeat(1, 1, 0.1, 0, 0, 0, 100), 0), "slope"),
        (lambda: loads.ceiling_demand_n(1, loads.CeilingSeat(1, 1, 0.0, 0.5, 0, 0), 0), "plate spacing"),
        (lambda: stability.stacked_centre_m(0, 1, 0, 1), "whole mass"),
        (lambda: dowels.shear_to_grain(-1, 0), "along the grain"),
        (lambda: fasteners.counted_thread_mm(50, 40, 10, 0, 0), "thickness of the wood"),
        (lambda: stability.tip_angle_deg(0.1, 0.0), "centre of gravity"),
    ],
)
def test_numbers_outside_a_formula_s_range_are_refused_by_name(figure: Callable[[], object], word: str) -> None:
    with pytest.raises(ValueError, match=word):
        figure()
