"""Screws in European timber against a handbook's worked connection, published densities, and sums done by hand."""

from __future__ import annotations

import math

import pytest

from roomlint.design.surfaces import CLASSES
from roomlint.figures import timber
from roomlint.figures.domain import Refused
from roomlint.figures.seated_screw import EurocodeScrew

# EN 338:2016, softwood, as a public table of material classes prints it (second-hand).
SOFTWOOD = {
    "C14": 290, "C16": 310, "C18": 320, "C20": 330, "C22": 340, "C24": 350, "C27": 360, "C30": 380, "C35": 390,
    "C40": 400, "C45": 410, "C50": 430,
}  # fmt: skip
# EN 338:2009 and EN 1194, hardwood and glued laminated timber, as another public table prints them (second-hand).
EARLIER = {
    "D30": 530, "D35": 540, "D40": 550, "D50": 620, "D70": 900, "GL24c": 350, "GL24h": 380, "GL28c": 380, "GL28h": 410,
    "GL30c": 390, "GL30h": 390, "GL32c": 410, "GL32h": 430,
}  # fmt: skip
COACH = EurocodeScrew(
    kind="lag screw", diameter_mm=8.0, length_mm=80.0, thread_mm=60.0, plate_mm=3.175, board_mm=12.7, member_mm=88.9,
    density_kg_m3=350.0, group=4, row=2, row_apart_mm=300.0,
)  # fmt: skip
"""Thread from 20 to 72 mm below the head, wood from 15.875 mm: 52 mm of thread, 56.125 mm deep."""


def test_softwood_densities_are_those_published() -> None:
    assert {name: timber.DENSITY_KG_M3[name] for name in SOFTWOOD} == SOFTWOOD


def test_no_class_is_taken_denser_than_an_earlier_edition_has_it() -> None:
    assert all(timber.DENSITY_KG_M3[name] <= density for name, density in EARLIER.items())


def test_every_class_that_a_file_may_write_has_its_density() -> None:
    assert set(CLASSES) == timber.DENSITY_KG_M3.keys()


def test_two_screws_of_the_handbook_hold_what_it_says() -> None:
    """Handbook of laminated veneer lumber, Europe 2025, 9.6: two screws of 2.25 kN each, permanent load: 1.9 kN."""
    design = 2 * timber.group_share(2) * 2250.0 * timber.KMOD["permanent", False] / timber.GAMMA_M
    assert design == pytest.approx(1937.84, abs=0.01)
    assert round(design / 1e3, 1) == 1.9


@pytest.mark.parametrize(
    ("diameter_mm", "thread_mm", "characteristic_n", "design_n"), [(8, 50, 5393.56, 2489.34), (6, 40, 2865.82, 1322.69)]
)
def test_withdrawal_from_c24_by_hand(
    diameter_mm: float, thread_mm: float, characteristic_n: float, design_n: float
) -> None:
    """EN 1995-1-1 8.7.2 worked apart from this program: 13.48391 and 15.92121 N/mm2; kd 0.75 for the thin one."""
    found = timber.withdrawal_n(350.0, diameter_mm, thread_mm)
    assert found == pytest.approx(characteristic_n, abs=0.01)
    assert found * 0.6 / 1.3 == pytest.approx(design_n, abs=0.01)


def test_a_slanted_screw_by_hand() -> None:
    """At 45 degrees the divisor is 1.1; at less than 30 nothing may be pulled for good."""
    square = timber.withdrawal_n(350.0, 8.0, 50.0)
    assert timber.withdrawal_n(350.0, 8.0, 50.0, angle_deg=45.0) == pytest.approx(square / 1.1)
    with pytest.raises(Refused):
        timber.withdrawal_n(350.0, 8.0, 50.0, angle_deg=29.0)


@pytest.mark.parametrize("diameter_mm", [5.0, 12.5])
def test_no_screw_outside_the_range_of_the_formula_has_a_value(diameter_mm: float) -> None:
    with pytest.raises(Refused):
        timber.withdrawal_n(350.0, diameter_mm, 50.0)


def test_hardwood_is_pulled_out_of_as_the_densest_softwood() -> None:
    assert timber.withdrawal_n(530.0, 8.0, 50.0, hardwood=True) == timber.withdrawal_n(430.0, 8.0, 50.0)


def test_embedment_of_a_coach_screw_by_hand() -> None:
    """At d 6.16 mm: 0.082 x 0.9384 x 350 = 26.932 MPa along, over 1.35 + 0.0924 across; D30 over 0.9924, so over 1."""
    size = timber.effective_diameter_mm(5.6)
    along, across = (timber.embedment_mpa(350.0, size, angle, predrilled=True) for angle in (0.0, 90.0))
    assert (along, across) == pytest.approx((26.93208, 18.67171), abs=1e-4)
    assert timber.embedment_mpa(530.0, size, 90.0, predrilled=True, hardwood=True) == pytest.approx(40.78286, abs=1e-4)


def test_embedment_of_a_driven_wood_screw_by_hand() -> None:
    """At d 3.96 mm: 0.082 x 350 x 3.96^-0.3 = 18.992 MPa, below 19.557 across and 27.564 along by the other form."""
    assert timber.embedment_mpa(350.0, 3.96, 0.0, predrilled=False) == pytest.approx(18.99212, abs=1e-4)
    assert timber.embedment_mpa(350.0, 3.96, 90.0, predrilled=False) == pytest.approx(18.99212, abs=1e-4)


def test_shear_under_a_thin_plate_by_hand() -> None:
    """My = 0.3 x 400 x 6.16^2.6 = 13 554.7 N mm; 0.4 fh t d = 3724.5 N and 1.15 sqrt(2 My fh d) = 2438.8 N."""
    moment = timber.yield_moment_nmm(6.16)
    assert moment == pytest.approx(13554.737, abs=0.001)
    assert timber.thin_plate_modes_n(26.93208, 6.16, 56.125, moment) == pytest.approx((3724.491, 2438.842), abs=0.01)


def test_three_screws_in_a_short_row_by_hand() -> None:
    """3^-0.1 x (60 / (13 x 6.16))^0.25."""
    assert timber.row_share(3, 60.0, 6.16) == pytest.approx(0.833575, abs=1e-6)
    assert timber.row_share(2, 300.0, 6.16) == 1.0
    assert timber.row_share(1, 1.0, 6.16) == 1.0


def test_the_steel_of_a_screw_by_hand() -> None:
    """0.9 x 400 x pi/4 x 4.8^2 / 1.25."""
    assert timber.steel_tension_n(8.0) == pytest.approx(5211.525, abs=0.001)


def test_the_coach_screw_through_board_by_hand() -> None:
    """F = 5587.349 N, x 4^-0.1 x 0.6/1.3 = 2244.955 N; the hinge at the plate 1083.140 N x 0.6/1.3."""
    assert COACH.counted_thread_mm() == pytest.approx(52.0)
    assert COACH.withdrawal_n("permanent") == pytest.approx(2244.955, abs=0.001)
    assert COACH.shear_n("permanent", 0.0) == pytest.approx(1083.1403 * 0.6 / 1.3, abs=1e-3)
    assert COACH.shear_mode(0.0) == "side_hinge"
    pull, shear = 1.35 * 367.749375 / 2244.955211, 1.35 * 110.3248125 / 499.910908
    used = COACH.pulled_and_sheared("permanent", 367.749375, 110.3248125, 0.0)
    assert used == pytest.approx(math.hypot(pull, shear), abs=1e-6)
    assert used == pytest.approx(0.371036, abs=1e-6)
