"""What may be cut out of studs and joists against the residential code's own examples in inches."""

from __future__ import annotations

import pytest

from roomlint.figures import framing
from roomlint.figures.domain import Refused

IN_M = 0.0254


@pytest.mark.parametrize(
    ("depth_in", "kind", "bearing", "cut_in"),
    [
        (3.5, "hole", True, 1.40), (3.5, "hole", False, 2.10), (3.5, "notch", True, 0.875), (3.5, "notch", False, 1.40),
        (5.5, "hole", True, 2.20), (5.5, "hole", False, 3.30), (5.5, "notch", True, 1.375), (5.5, "notch", False, 2.20),
    ],
)  # fmt: skip
def test_studs_are_cut_by_the_fractions_of_r602_6(depth_in: float, kind: str, bearing: bool, cut_in: float) -> None:  # noqa: FBT001
    """A 2x4 that bears takes a hole of 1.40 in and a notch of 0.875 in, one that does not 2.10 in; 2x6 likewise."""
    share = framing.cut_percent(cut_in * IN_M, depth_in * IN_M)
    assert share == pytest.approx(framing.greatest_cut_percent("stud", kind, bearing=bearing))  # type: ignore[arg-type]


def test_a_doubled_stud_that_bears_is_bored_like_one_that_does_not() -> None:
    assert framing.greatest_cut_percent("stud", "hole", bearing=True, doubled=True) == 60.0
    assert framing.greatest_cut_percent("stud", "notch", bearing=True, doubled=True) == 25.0


@pytest.mark.parametrize(
    ("depth_in", "kind", "cut_in"),
    [
        (9.25, "hole", 3.08), (9.25, "notch", 1.54), (9.25, "end-notch", 2.31),
        (7.25, "hole", 2.42), (7.25, "notch", 1.21), (7.25, "end-notch", 1.81),
        (11.25, "hole", 3.75), (11.25, "notch", 1.875), (11.25, "end-notch", 2.81),
    ],
)  # fmt: skip
def test_joists_are_cut_by_the_fractions_of_r502_8_1(depth_in: float, kind: str, cut_in: float) -> None:
    """A 2x10 takes a hole of 3.08 in, a notch of 1.54 in, at its end of 2.31 in; builders' tables of 2x8 and 2x12."""
    limit = framing.greatest_cut_percent("joist", kind, bearing=True)  # type: ignore[arg-type]
    assert limit * depth_in / 100.0 == pytest.approx(cut_in, abs=0.006)


def test_a_notch_is_as_long_as_a_third_of_the_depth() -> None:
    assert pytest.approx(3.08, abs=0.005) == framing.NOTCH_LENGTH_PERCENT * 9.25 / 100.0


def test_edges_are_five_eighths_and_two_inches() -> None:
    assert pytest.approx({"stud": 0.625 * IN_M, "joist": 2.0 * IN_M}) == framing.EDGE_M
    assert pytest.approx(2.0 * IN_M) == framing.APART_M


def test_sixteen_inches_leave_fourteen_and_a_half() -> None:
    assert framing.clear_between_m(16.0 * IN_M, 1.5 * IN_M) == pytest.approx(14.5 * IN_M)
    assert framing.clear_between_m(24.0 * IN_M, 1.5 * IN_M) == pytest.approx(22.5 * IN_M)


def test_a_hole_in_the_middle_leaves_half_of_what_it_does_not_take() -> None:
    """1 in of 3-1/2 in leaves the 1-1/4 in of NFPA 70 300.4(A)(1) without a plate."""
    assert framing.most_to_edge_m(1.0 * IN_M, 3.5 * IN_M) == pytest.approx(1.25 * IN_M)
    assert framing.most_to_edge_m(4.0 * IN_M, 3.5 * IN_M) == 0.0


def test_what_is_no_framing_is_refused() -> None:
    with pytest.raises(Refused):
        framing.cut_percent(0.01, 0.0)
    with pytest.raises(Refused):
        framing.clear_between_m(0.03, 0.04)


def test_chases_as_a_builder_s_guide_tells_them() -> None:
    """Upright no deeper than a third of the leaf, level no deeper than a sixth: 33 mm and 16 mm of 100 mm."""
    assert framing.CHASE_PERCENT["upright-chase"] * 100.0 / 100.0 == pytest.approx(33.3, abs=0.05)
    assert framing.CHASE_PERCENT["level-chase"] * 100.0 / 100.0 == pytest.approx(16.7, abs=0.05)
