"""Conductors against ASTM B258 sizes, NFPA 70 and IEC 60228 resistances and worked examples."""

import pytest

from roomlint.figures import ampacity, conductors
from roomlint.figures.inch_pound import FOOT_M


@pytest.mark.parametrize(("gauge", "diameter_in"), [(-3, 0.460), (10, 0.1019), (14, 0.0641), (36, 0.0050)])
def test_gauge_diameters(gauge: int, diameter_in: float) -> None:
    """The two sizes that define the gauge (4/0 and 36) and two that follow, in the usual inch table."""
    assert conductors.awg_diameter_mm(gauge) / 25.4 == pytest.approx(diameter_in, abs=6e-5)


@pytest.mark.parametrize(("gauge", "ohm_per_km"), [(14, 8.28), (12, 5.21)])
def test_resistance_at_20_c_of_a_published_wire_table(gauge: int, ohm_per_km: float) -> None:
    computed = conductors.copper_ohm_per_m(conductors.awg_area_mm2(gauge)) * 1000
    assert computed == pytest.approx(ohm_per_km, abs=0.006)


@pytest.mark.parametrize("gauge", sorted(conductors.NEC_TABLE_8))
def test_solid_resistance_of_table_8_follows_from_the_gauge(gauge: int) -> None:
    """NFPA 70 chapter 9 Table 8, 75 C, solid. The printed values are 0.0 to 0.4 % away: rounding to three digits."""
    computed = conductors.copper_ohm_per_m(conductors.awg_area_mm2(gauge), 75.0)
    assert computed == pytest.approx(conductors.table_eight_ohm_per_m(gauge), rel=4e-3)


def test_table_8_in_metric_as_printed_beside_it() -> None:
    """The same table prints 12 AWG stranded as 1.98 ohm/kft and 6.50 ohm/km."""
    assert conductors.table_eight_ohm_per_m(12, stranded=True) * 1000 == pytest.approx(6.50, abs=0.005)


def test_coefficient_at_75_c_is_the_one_printed_under_table_8() -> None:
    change = conductors.at_temperature(1.0, 76.0) / conductors.at_temperature(1.0, 75.0) - 1.0
    assert change == pytest.approx(0.00323, abs=5e-6)


@pytest.mark.parametrize("area", sorted(conductors.IEC_60228_OHM_PER_KM))
def test_pure_copper_stays_within_the_greatest_resistance_of_iec_60228(area: float) -> None:
    """The limit allows for a conductor a few percent thinner than its name."""
    assert 0.93 < conductors.copper_ohm_per_m(area) / conductors.iec_60228_ohm_per_m(area) < 1.0


@pytest.mark.parametrize(
    ("gauge", "amps", "feet", "volts", "percent"),
    [(12, 16, 50, 3.088, 2.57), (12, 16, 100, 6.176, 5.15), (14, 12, 50, 3.684, 3.07), (10, 16, 100, 3.872, 3.23)],
)
def test_voltage_drop_on_120_volts(gauge: int, amps: float, feet: float, volts: float, percent: float) -> None:
    """Worked by hand from the ohms per 1000 ft of Table 8."""
    drop = conductors.voltage_drop_v(feet * FOOT_M, amps, conductors.table_eight_ohm_per_m(gauge))
    assert drop == pytest.approx(volts)
    assert conductors.drop_percent(drop, 120) == pytest.approx(percent, abs=0.006)


@pytest.mark.parametrize(("gauge", "amps", "feet"), [(14, 12, 48.9), (12, 16, 58.3), (12, 12, 77.7), (10, 16, 93.0)])
def test_greatest_length_for_three_percent(gauge: int, amps: float, feet: float) -> None:
    length = conductors.greatest_length_m(3, 120, amps, conductors.table_eight_ohm_per_m(gauge))
    assert length / FOOT_M == pytest.approx(feet, abs=0.06)


def test_low_voltage_lighting_feed() -> None:
    drop = conductors.voltage_drop_v(8, 4, conductors.copper_ohm_per_m(conductors.awg_area_mm2(18)))
    assert drop == pytest.approx(1.341, abs=6e-4)
    assert conductors.drop_percent(drop, 24) == pytest.approx(5.59, abs=0.006)


@pytest.mark.parametrize(("gauge", "device"), [(14, 15), (12, 20), (10, 30), (8, 40), (6, 55), (16, 0)])
def test_copper_behind_a_breaker(gauge: int, device: float) -> None:
    """NFPA 70 (2023) 240.4(D) and Table 310.16, the 60 C column."""
    assert ampacity.nfpa_ampacity_a(conductors.awg_area_mm2(gauge)) == device


def test_sixteen_gauge_came_with_the_2026_edition() -> None:
    assert ampacity.nfpa_ampacity_a(conductors.awg_area_mm2(16), sixteen_awg=True) == 10


@pytest.mark.parametrize(
    ("laying", "amps"),
    [("insulated-wall", (18.5, 25, 32, 43)), ("conduit", (23, 30, 38, 52)), ("clipped", (27, 36, 46, 63))],
)
def test_cable_in_pvc_with_two_loaded_conductors(laying: ampacity.Laying, amps: tuple[float, ...]) -> None:
    """Methods A2, B2 and C as a maker's table after DIN VDE 0298-4 prints them at 30 C, for 2.5, 4, 6 and 10 mm2."""
    assert tuple(ampacity.iec_ampacity_a(size, laying) for size in (2.5, 4, 6, 10)) == amps


def test_cable_that_insulation_surrounds_carries_half() -> None:
    """BS 7671 523.9, and method 103 of Table 4D5: 13.5 A for 2.5 mm2, under the 20 A that a ring wants."""
    assert ampacity.iec_ampacity_a(2.5, "in-insulation") == 13.5 < ampacity.RING_LEAST_A


@pytest.mark.parametrize(
    ("laying", "amps"),
    [
        ("clipped", (16, 20, 27, 37, 47, 64, 85)),
        ("in-insulation", (8, 10, 13.5, 17.5, 23.5, 32, 42.5)),
        ("insulated-wall", (11.5, 14.5, 20)),
        ("conduit", (13, 16.5)),
    ],
)
def test_flat_british_cable(laying: ampacity.Laying, amps: tuple[float, ...]) -> None:
    """BS 7671 Table 4D5 from 1.0 mm2 on: a revision card for apprentices (C, 103), an installer's page (A, B)."""
    assert tuple(ampacity.bs_ampacity_a(size, laying) for size in (1, 1.5, 2.5, 4, 6, 10, 16)[: len(amps)]) == amps


@pytest.mark.parametrize(("size", "amps"), [(1.0, 14), (1.5, 18), (2.5, 24), (4.0, 32), (6.0, 40)])
def test_cable_in_warmer_air(size: float, amps: float) -> None:
    """A New Zealand building researcher's list for two-core cable; ours may be lower and never higher."""
    found = ampacity.laid_ampacity_a("asnzs", size, "clipped")
    assert 0.93 * amps <= found <= 1.001 * amps


def test_aluminium_loses_what_the_american_table_says() -> None:
    """NFPA 70 chapter 9, Table 8: 3.18 ohm/kft for 12 AWG aluminium beside 1.93 of copper (from memory)."""
    warm = conductors.installed_ohm_per_m(conductors.awg_area_mm2(12), 75.0, "aluminium")
    assert warm == pytest.approx(3.18 / 304.8, rel=0.01)


def test_metric_copper_loses_what_the_british_table_says() -> None:
    """18 mV/A/m for 2.5 mm2, both conductors at 70 C."""
    assert 2000 * conductors.installed_ohm_per_m(2.5, 70.0) == pytest.approx(18, rel=0.02)


@pytest.mark.parametrize(("gauge", "feet"), [(22, 12), (10, 200)])
def test_published_loudspeaker_wire_table_is_five_percent_of_8_ohm(gauge: int, feet: float) -> None:
    """A much-copied table of greatest lengths at 8 ohm; its round lengths hide the rule within a quarter percent."""
    loop = conductors.loop_ohm(feet * FOOT_M, conductors.copper_ohm_per_m(conductors.awg_area_mm2(gauge)))
    assert loop / 8 == pytest.approx(0.05, abs=0.0025)


@pytest.mark.parametrize(("load", "loss"), [(8, 0.266), (4, 0.524)])
def test_fifteen_metres_of_14_awg(load: float, loss: float) -> None:
    loop = conductors.loop_ohm(15, conductors.copper_ohm_per_m(conductors.awg_area_mm2(14)))
    assert loop == pytest.approx(0.2486, abs=6e-5)
    assert conductors.wire_loss_db(loop, load) == pytest.approx(loss, abs=6e-4)


def test_damping_factor_behind_that_cable() -> None:
    assert conductors.damping_factor(8, 8 / 200, 0.2486) == pytest.approx(27.7, abs=0.05)


def test_tilt_between_impedance_extremes() -> None:
    assert conductors.wire_tilt_db(0.4, 6.4, 30) == pytest.approx(0.412, abs=6e-4)


@pytest.mark.parametrize(("loss", "share"), [(0.3, 0.0351), (0.5, 0.0593), (1.0, 0.1220)])
def test_loop_resistance_for_a_loss(loss: float, share: float) -> None:
    assert conductors.greatest_loop_ohm(loss, 1.0) == pytest.approx(share, abs=6e-5)


@pytest.mark.parametrize(("gauge", "load", "metres"), [(20, 4, 3.0), (16, 8, 15.2), (14, 4, 12.1), (12, 6, 28.8)])
def test_lengths_for_five_percent(gauge: int, load: float, metres: float) -> None:
    per_metre = conductors.copper_ohm_per_m(conductors.awg_area_mm2(gauge))
    assert 0.05 * load / (2 * per_metre) == pytest.approx(metres, abs=0.06)


def test_british_flat_cable_as_a_reference_page_prints_it() -> None:
    """Method C of BS 7671 Table 4D5, 1.5 to 6 mm2 as a public page has it; what pages of the trade say of a ring.

    A forum of the institution: 2.5 mm2 in methods A, 100 and 102 carries the 20 A that a ring of 32 A wants, and no
    more than 13.5 A where insulation is all round it.
    """
    clipped = [ampacity.bs_ampacity_a(size, "clipped") for size in (1.5, 2.5, 4.0, 6.0)]
    assert clipped == [20.0, 27.0, 37.0, 47.0]
    assert ampacity.bs_ampacity_a(2.5, "insulated-wall") == ampacity.RING_LEAST_A
    assert ampacity.bs_ampacity_a(2.5, "in-insulation") == 13.5
    assert ampacity.bs_ampacity_a(0.75, "clipped") == 0.0


@pytest.mark.parametrize("size", [1.0, 1.5, 2.5, 4.0, 6.0, 10.0, 16.0])
def test_british_and_international_tables_are_near_each_other(size: float) -> None:
    """Both are of PVC at 30 degC: they differ by the flat cable's shape, and each method cools better than the last."""
    carried = [ampacity.bs_ampacity_a(size, laying) for laying in ampacity.LAYINGS]
    assert carried == sorted(carried)
    for laying in ("insulated-wall", "conduit", "clipped"):
        assert ampacity.bs_ampacity_a(size, laying) == pytest.approx(ampacity.iec_ampacity_a(size, laying), rel=0.09)
