"""Low-voltage cable against the published tables of NFPA 70, IEEE 802.3 and makers, entry by entry."""

from __future__ import annotations

import math

import pytest

from roomlint.figures import cabling, conductors, mains_draw
from roomlint.figures.conductors import awg_area_mm2
from roomlint.figures.domain import Refused

EMT = {"1/2": 78, "3/4": 137, "1": 222, "1-1/4": 387, "1-1/2": 526, "2": 866}
ENT = {"1/2": 73, "3/4": 131, "1": 215, "1-1/4": 375, "1-1/2": 512, "2": 849}
EMT_WHOLE_IN2 = {"1/2": 0.304, "3/4": 0.533, "1": 0.864, "1-1/4": 1.496, "1-1/2": 2.036, "2": 3.356}
"""Chapter 9 Table 4, the column of the whole area in square inches; 3/4 and 1 read, the others from memory."""
IN2_MM2 = 25.4**2


@pytest.mark.parametrize(
    ("kind", "size", "mm2"), [("emt", s, a) for s, a in EMT.items()] + [("ent", s, a) for s, a in ENT.items()]
)
def test_forty_percent_of_each_raceway_is_the_tables(kind: str, size: str, mm2: float) -> None:
    assert cabling.fill_percent([math.sqrt(4 * mm2 / math.pi)], cabling.raceway_mm2(kind, size)) == pytest.approx(40.0)


@pytest.mark.parametrize(("size", "in2"), EMT_WHOLE_IN2.items())
def test_whole_area_in_inches_is_the_other_column_of_the_table(size: str, in2: float) -> None:
    assert cabling.raceway_mm2("emt", size) == pytest.approx(in2 * IN2_MM2, rel=0.008)


@pytest.mark.parametrize(
    ("cables", "length_m", "percent"),
    [(1, 6, 53), (2, 6, 31), (3, 6, 40), (9, 6, 40), (1, 0.6, 60), (4, 0.6, 60), (4, 0.62, 40)],
)
def test_how_full_by_number_of_cables(cables: int, length_m: float, percent: float) -> None:
    """NFPA 70 chapter 9, Table 1, and its note 4."""
    assert cabling.fill_limit_percent(cables, length_m) == percent


@pytest.mark.parametrize(
    ("diameters", "whole_mm2", "percent"),
    [([7.5] * 4, 557.4, 31.7), ([6.2] * 3, 343.9, 26.3), ([10.0], 343.9, 22.84)],
)
def test_fill_worked_by_hand(diameters: list[float], whole_mm2: float, percent: float) -> None:
    """Four of 7.5 mm are 176.7 mm2; three of 6.2 mm are 90.6 mm2; a flat one of 10 by 6 mm counts as 78.5 mm2."""
    assert cabling.fill_percent(diameters, whole_mm2) == pytest.approx(percent, abs=0.05)


TABLE = """
26 1   1   0.7 0.5 0.4 0.4 NA
24 2   1   0.8 0.6 0.5 0.4 0.3
23 2.5 1.2 0.8 0.6 0.5 0.5 0.4
22 3   1.4 1   0.7 0.6 0.6 0.5
"""
SIZES = ((1, 1), (2, 7), (8, 19), (20, 37), (38, 61), (62, 91), (92, 192))
ROWS = [
    (int(row.split()[0]), pair, cell)
    for row in TABLE.strip().splitlines()
    for pair, cell in zip(SIZES, row.split()[1:], strict=True)
]


@pytest.mark.parametrize(("gauge", "bundle", "amps"), ROWS)
def test_current_of_a_bundle_is_the_tables(gauge: int, bundle: tuple[int, int], amps: str) -> None:
    """NFPA 70:2017 Table 725.144, 60 degC, all pairs powered, at both ends of each column."""
    for cables in bundle:
        if amps == "NA":
            with pytest.raises(Refused):
                cabling.bundle_limit_a(awg_area_mm2(gauge), cables, 30.0)
        else:
            assert cabling.bundle_limit_a(awg_area_mm2(gauge), cables, 30.0) == float(amps)


@pytest.mark.parametrize(("ambient", "factor"), [(35, 0.91), (40, 0.82), (45, 0.71), (50, 0.58), (55, 0.41)])
def test_warm_air_takes_the_share_of_table_310_15(ambient: float, factor: float) -> None:
    """The 60 degC column prints a factor for each five degrees, the one of its warm end."""
    share = cabling.bundle_limit_a(awg_area_mm2(24), 12, ambient) / 0.8
    assert share == pytest.approx(factor, abs=0.006)


@pytest.mark.parametrize(
    ("power", "amps_of_pairs"), [("type-1", 0.350), ("type-2", 0.600), ("type-3", 0.600), ("type-4", 0.960)]
)
def test_a_conductor_carries_half_of_what_its_pair_does(power: str, amps_of_pairs: float) -> None:
    """IEEE 802.3, in a published comparison of the types."""
    assert cabling.PAIR_A[power] == amps_of_pairs / 2


@pytest.mark.parametrize(
    ("marking", "plenum", "riser", "general"),
    [
        ("CL2P", True, True, True), ("CL3P", True, True, True), ("CMP", True, True, True),
        ("CL2R", False, True, True), ("CL3R", False, True, True), ("CMR", False, True, True),
        ("CL2", False, False, True), ("CL3", False, False, True), ("CM", False, False, True),
        ("CMG", False, False, True), ("PLTC", False, False, True), ("CL2X", False, False, False),
        ("CL3X", False, False, False), ("CMX", False, False, False), ("none", False, False, False),
    ],
)  # fmt: skip
def test_what_each_marking_may_run_through(marking: str, plenum: bool, riser: bool, general: bool) -> None:  # noqa: FBT001
    """NFPA 70:2017 Table 725.154(A) and 800.154(d), without a known diameter."""
    assert cabling.serves(marking, "plenum") == plenum
    assert cabling.serves(marking, "riser") == riser
    assert cabling.serves(marking, "general") == general


@pytest.mark.parametrize("marking", ["CL2X", "CL3X", "CMX"])
def test_thin_markings_are_for_cable_below_a_quarter_inch(marking: str) -> None:
    assert cabling.serves(marking, "general", 0.25 * 0.0254 - 1e-6)
    assert not cabling.serves(marking, "general", 0.25 * 0.0254)
    assert not cabling.serves(marking, "riser", 0.003)


FIVE_PERCENT_M = """
20 3.0  4.5  6.0
18 4.8  7.2  9.5
16 7.6  11.4 15.2
14 12.1 18.1 24.1
12 19.2 28.8 38.4
10 30.5 45.8 61.0
"""
LENGTHS = [
    (int(row.split()[0]), load, float(cell))
    for row in FIVE_PERCENT_M.strip().splitlines()
    for load, cell in zip((4.0, 6.0, 8.0), row.split()[1:], strict=True)
]


@pytest.mark.parametrize(("gauge", "load_ohm", "metres"), LENGTHS)
def test_lengths_of_the_trade_are_five_percent_of_the_load(gauge: int, load_ohm: float, metres: float) -> None:
    """The table of greatest lengths that the trade prints: 5 % in the cable, 0.424 dB."""
    loop = conductors.loop_ohm(metres, conductors.copper_ohm_per_m(awg_area_mm2(gauge)))
    assert conductors.wire_loss_db(loop, load_ohm) == pytest.approx(20 * math.log10(1.05), abs=0.005)


@pytest.mark.parametrize(
    ("carries", "rate", "careful", "best"),
    [("network", 1, 90, 100), ("usb", 0.48, 5, 5), ("usb", 5, 3, 3), ("video", 10.2, 5, 10), ("video", 17.82, 3, 5),
     ("video", 18, 3, 5), ("video", 48, 3, 5)],
)  # fmt: skip
def test_how_far_a_link_goes(carries: str, rate: float, careful: float, best: float) -> None:
    """TIA-568, USB 2.0, and makers' tables of passive video cable."""
    assert cabling.link_m(carries, rate) == (careful, best)


@pytest.mark.parametrize("edition", ["nec2017", "nec2020", "nec2023", "nec2026"])
def test_every_edition_has_its_clauses(edition: str) -> None:
    topics = ("marking", "separation", "audio apart", "output class")
    assert all(cabling.clause(topic, edition) for topic in topics)  # type: ignore[arg-type]
    assert cabling.clause("marking", "nec2017") == "725.154"
    assert cabling.clause("marking", "nec2023") == "article 722"


@pytest.mark.parametrize(("watts", "rise_f", "cfm"), [(300, 10, 94.8), (1000, 20, 158), (300, 18, 52.7)])
def test_air_that_carries_heat_away_in_the_trades_units(watts: float, rise_f: float, cfm: float) -> None:
    """3.16 cfm for each watt and degree Fahrenheit; others print 3.10 to 3.16."""
    flow = mains_draw.airflow_m3_per_h(watts, rise_f / 1.8)
    assert flow / (0.3048**3 * 60) == pytest.approx(cfm, rel=0.002)
