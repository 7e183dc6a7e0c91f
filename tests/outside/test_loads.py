"""Statics of mounts and stands, worked by hand with a pocket calculator's digits."""

import math

import pytest

from roomlint.figures import loads, stability
from roomlint.figures.inch_pound import FOOT_M, INCH_MM, POUND_FORCE_N, PSF_PA

DISPLAY_N = 441.29925  # 35 kg display and 10 kg mount


def test_conversions_agree_with_the_printed_ones() -> None:
    """Pounds per square foot are printed as 0.0479 kN/m2 in codes that give both units."""
    assert pytest.approx(4.4482216152605, abs=1e-13) == POUND_FORCE_N
    assert pytest.approx(47.9, abs=0.05) == PSF_PA


def test_weight_of_display_and_mount() -> None:
    assert loads.weight_n(45) == pytest.approx(DISPLAY_N)


def test_pull_and_shear_at_full_extension() -> None:
    assert loads.top_fastener_tension_n(DISPLAY_N, 0.5, 0.3, 2) == pytest.approx(367.749375)
    assert loads.vertical_shear_n(DISPLAY_N, 4) == pytest.approx(110.3248125)


def test_pull_when_folded_flat() -> None:
    assert loads.top_fastener_tension_n(DISPLAY_N, 0.08, 0.3, 2) == pytest.approx(58.8399, abs=5e-5)


def test_sideways_swing_on_one_stud() -> None:
    assert loads.sideways_shear_n(DISPLAY_N, 0.4, 0.3) == pytest.approx(588.399)


def test_ceiling_projector_pushed_sideways() -> None:
    seat = loads.CeilingSeat(count=4, pulled=2, spacing_m=0.12, beside_m=0.0, stands_off_m=0.0, drop_m=0.6)
    pull, shear = loads.ceiling_demand_n(loads.weight_n(15), seat, 50)
    assert pull == pytest.approx(161.7749, abs=5e-5)
    assert shear == 0.0


def test_flip_down_arm_under_a_ceiling() -> None:
    """35 kg half a metre beside its plate, rows 100 mm apart, two of four pulled: W/N + W e/(n h) = 944 N."""
    seat = loads.CeilingSeat(count=4, pulled=2, spacing_m=0.1, beside_m=0.5, stands_off_m=0.0, drop_m=0.0)
    pull, _ = loads.ceiling_demand_n(loads.weight_n(35), seat, 0)
    assert pull == pytest.approx(943.89, abs=5e-3)


def test_a_box_on_a_slope_of_forty_five_degrees() -> None:
    """10 kg on four screws, held 0.2 m off the slope, rows 0.1 m apart: 17.3358 + 69.343 x 0.2 / 0.2 = 86.679 N."""
    seat = loads.CeilingSeat(count=4, pulled=2, spacing_m=0.1, beside_m=0.0, stands_off_m=0.2, drop_m=0.0, slope_deg=45)
    pull, shear = loads.ceiling_demand_n(loads.weight_n(10), seat, 0)
    assert pull == pytest.approx(86.679, abs=5e-3)
    assert shear == pytest.approx(17.3358, abs=5e-4)


@pytest.mark.parametrize(("mass_kg", "extra_n"), [(15, 441.29925), (45, 1321.29925), (50, 1370.3325)])
def test_misuse_force(mass_kg: float, extra_n: float) -> None:
    assert loads.misuse_extra_n(loads.weight_n(mass_kg)) == pytest.approx(extra_n)


def test_misuse_demand_on_the_display_mount() -> None:
    whole = loads.misuse_load_n(DISPLAY_N)
    assert whole == pytest.approx(1762.5985)
    assert loads.top_fastener_tension_n(whole, 0.5, 0.3, 2) == pytest.approx(1468.832, abs=5e-4)
    assert loads.vertical_shear_n(whole, 4) == pytest.approx(440.650, abs=5e-4)


@pytest.mark.parametrize(("angle", "tension"), [(60, 169.86), (45, 208.03), (30, 294.20)])
def test_sling_legs(angle: float, tension: float) -> None:
    assert loads.sling_tension_n(loads.weight_n(30), 2, angle) == pytest.approx(tension, abs=0.006)


def test_fifty_pounds_on_one_joist() -> None:
    """50 lb at midspan of a 12 ft joist at 16 in: 8.3333 lbf/ft, 6.25 lbf/ft2."""
    area = loads.joist_area_load_pa(50 * POUND_FORCE_N, 12 * FOOT_M, 16 * INCH_MM / 1000)
    assert area / PSF_PA == pytest.approx(6.25)


def test_joist_load_in_metric() -> None:
    assert loads.joist_line_load_n_per_m(147.09975, 3.6) == pytest.approx(81.722, abs=5e-4)
    assert loads.joist_area_load_pa(147.09975, 3.6, 0.4064) == pytest.approx(201.09, abs=5e-3)


@pytest.mark.parametrize(
    ("category", "mass_kg", "height_m", "needed"),
    [("D", 10, 1.5, True), ("D", 9, 1.5, False), ("D", 10, 1.2, False), ("C", 100, 2.4, False)],
)
def test_seismic_trigger(category: str, mass_kg: float, height_m: float, *, needed: bool) -> None:
    """FEMA E-74 (2012): categories D to F, above 20 lb and above 4 ft."""
    assert loads.needs_seismic_anchorage(category, mass_kg, height_m) is needed


@pytest.mark.parametrize(("edge", "height", "angle"), [(0.150, 0.500, 16.69924), (0.100, 0.600, 9.46232)])
def test_tip_angle(edge: float, height: float, angle: float) -> None:
    assert stability.tip_angle_deg(edge, height) == pytest.approx(angle, abs=6e-6)


def test_ten_degrees_of_slope() -> None:
    assert stability.tip_angle_deg(0.1763269807, 1.0) == pytest.approx(10.0)


def test_push_against_the_2014_edition() -> None:
    weight = loads.weight_n(25)
    assert stability.push_over_n(weight, 0.150, 1.0) == pytest.approx(36.7749, abs=5e-5)
    assert stability.required_push_n(weight, "2014") == pytest.approx(31.8716, abs=5e-5)


def test_push_asked_by_the_2018_edition() -> None:
    assert stability.required_push_n(loads.weight_n(40)) == pytest.approx(78.4532)
    assert stability.required_push_n(10_000) == 250
    assert math.isclose(stability.required_push_n(10_000, "2014"), 100)
