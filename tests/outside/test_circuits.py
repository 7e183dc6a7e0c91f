"""Branch circuits and mains draw against published tables and worked examples."""

import pytest

from roomlint.figures import circuits, mains_draw


def test_shares_of_a_circuit_are_the_code_s() -> None:
    """NFPA 70 210.23(A): four fifths for one plug-in load, half for what is fastened: 1440 and 900 W."""
    assert pytest.approx(1440) == 120 * 15 * circuits.PLUG_IN_SHARE
    assert pytest.approx(900) == 120 * 15 * circuits.FASTENED_SHARE


def test_nine_continuous_and_four_other_amperes_need_a_twenty_ampere_circuit() -> None:
    needed = circuits.required_current_a(9, 4)
    assert needed == pytest.approx(15.25)
    assert circuits.rating_share(needed, 15) > 1 > circuits.rating_share(needed, 20)


@pytest.mark.parametrize(("rating", "within"), [(15, False), (20, True)])
def test_thirteen_ampere_rack_on_a_shared_circuit(rating: float, *, within: bool) -> None:
    assert (circuits.rating_share(13, rating) <= circuits.PLUG_IN_SHARE) is within


@pytest.mark.parametrize(("fastened_a", "within"), [(4 + 2 + 5, False), (4 + 2, True)])
def test_fastened_equipment_on_a_shared_twenty_ampere_circuit(fastened_a: float, *, within: bool) -> None:
    assert (circuits.rating_share(fastened_a, 20) <= circuits.FASTENED_SHARE) is within


@pytest.mark.parametrize(("receptacle", "circuit", "total"), [(15, 15, 12), (15, 20, 12), (20, 20, 16), (30, 30, 24)])
def test_total_on_one_receptacle(receptacle: float, circuit: float, total: float) -> None:
    """NFPA 70 (2023) Table 210.21(B)(2)."""
    assert circuits.receptacle_total_a(receptacle, circuit) == total


@pytest.mark.parametrize(
    ("receptacle", "circuit", "fits"),
    [(15, 15, True), (20, 15, False), (15, 20, True), (20, 20, True), (20, 30, False)],
)
def test_receptacle_rating(receptacle: float, circuit: float, *, fits: bool) -> None:
    """NFPA 70 (2023) Table 210.21(B)(3)."""
    assert circuits.receptacle_fits(receptacle, circuit) is fits


@pytest.mark.parametrize(
    ("edition", "plug_in", "fastened", "arc_fault"),
    [
        ("nec2020", "210.23(A)(1)", "210.23(A)(2)", "210.12(A)"),
        ("nec2023", "210.23(B)(1)", "210.23(B)(2)", "210.12(B)"),
    ],
)
def test_clauses_that_the_2023_edition_renumbered(
    edition: circuits.CodeEdition, plug_in: str, fastened: str, arc_fault: str
) -> None:
    """NFPA 70 of 2020 and 2023, unofficial transcriptions."""
    topics: tuple[circuits.Topic, ...] = ("one plug-in item", "fastened items", "arc-fault protection")
    assert [circuits.clause(topic, edition) for topic in topics] == [plug_in, fastened, arc_fault]


def test_the_2026_edition_is_known_as_far_as_reports_tell() -> None:
    """Reports on the 2026 edition: 125 % stay in 210, 215 and 240, and 210.12(E) is still the clause of extensions."""
    assert circuits.clause("arc-fault extension", "nec2026") == "210.12(E)"
    assert circuits.clause_is_known("arc-fault extension", "nec2026")
    assert not circuits.clause_is_known("dimmed receptacle", "nec2026")
    assert all(circuits.clause_is_known("dimmed receptacle", edition) for edition in circuits.EDITIONS[:3])


@pytest.mark.parametrize(
    ("place", "editions"),
    [("garage", 4), ("unfinished-basement", 4), ("kitchen", 4), ("finished-basement", 3), ("habitable", 0)],
)
def test_places_of_ground_fault_protection_by_edition(place: str, editions: int) -> None:
    """NFPA 70 210.8(A): the list of 2014 as an ordinance prints it; finished basements since 2020."""
    assert sum(circuits.wants_ground_fault(place, edition) for edition in circuits.EDITIONS) == editions


def test_seven_channel_class_ab_amplifier() -> None:
    output = mains_draw.average_output_w(7, 100)
    mains = mains_draw.mains_power_w(output, mains_draw.EFFICIENCY_AT_EIGHTH["AB"])
    assert (output, mains, mains_draw.amplifier_heat_w(mains, output)) == pytest.approx((87.5, 350, 262.5))
    assert mains_draw.mains_current_a(mains, 120) == pytest.approx(4.49, abs=0.005)


def test_heat_of_a_maker_s_table() -> None:
    """A maker's table of a touring amplifier: 685 W mains, 375 W out, 1060 BTU/h printed (rounded to tens)."""
    assert mains_draw.btu_per_hour(mains_draw.amplifier_heat_w(685, 375)) == pytest.approx(1060, abs=5)


def test_ideal_class_b_efficiency() -> None:
    """Textbook: 78.5 % at full power, 27.8 % at one eighth."""
    assert mains_draw.class_b_efficiency_sine(1.0) == pytest.approx(0.785, abs=5e-4)
    assert mains_draw.class_b_efficiency_sine(mains_draw.EIGHTH_POWER) == pytest.approx(0.278, abs=5e-4)


def test_airflow_against_the_inch_pound_rule() -> None:
    """CFM = BTU/h / (1.08 x rise in F), the ventilation trade's rule, for 300 W and 10 K: within 0.3 %."""
    cubic_feet_per_minute = mains_draw.airflow_m3_per_h(300, 10) / (0.3048**3 * 60)
    assert cubic_feet_per_minute == pytest.approx(300 * 3.412 / (1.08 * 18), rel=3e-3)
