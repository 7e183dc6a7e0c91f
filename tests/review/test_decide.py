"""The decision rule of JCGM 106:2012 as roomlint uses it."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from roomlint.design.quantity import read
from roomlint.figures.domain import Refused
from roomlint.measure.figure import Figure
from roomlint.measure.world import World
from roomlint.review.window import Window, Windows, at_least, at_most, between, decide

TEN_TO_TWENTY = Window(10.0, 20.0, "deg")


def at(value: float, u: float = 0.0) -> Figure:
    return Figure.plain("angle", "deg", value, u=u)


@pytest.mark.parametrize(
    ("value", "u", "kind"),
    [
        (15.0, 0.0, "pass"),
        (10.0, 0.0, "pass"),  # the edge itself is inside
        (9.96, 0.0, "pass"),  # read as 10.0
        (9.94, 0.0, "fail"),
        (11.0, 1.0, "pass"),  # inside by just the uncertainty
        (10.5, 1.0, "review"),
        (9.5, 1.0, "review"),
        (9.0, 1.0, "review"),  # outside by just the uncertainty
        (8.9, 1.0, "fail"),
        (20.5, 1.0, "review"),
        (21.1, 1.0, "fail"),
    ],
)
def test_a_figure_is_decided_by_its_margin_and_uncertainty(value: float, u: float, kind: str) -> None:
    assert decide(at(value, u), TEN_TO_TWENTY, guarded=False)[0] == kind


@pytest.mark.parametrize("value", [10.5, 9.5, 20.5])
def test_guarded_fails_where_a_person_would_have_to_look(value: float) -> None:
    assert decide(at(value, 1.0), TEN_TO_TWENTY, guarded=True)[0] == "fail"


@given(st.floats(-1e3, 1e3), st.floats(0, 50))
def test_guarding_never_turns_a_failure_into_a_pass(value: float, u: float) -> None:
    open_kind = decide(at(value, u), TEN_TO_TWENTY, guarded=False)[0]
    guarded_kind = decide(at(value, u), TEN_TO_TWENTY, guarded=True)[0]
    assert (open_kind, guarded_kind) in {("pass", "pass"), ("fail", "fail"), ("review", "fail")}


@pytest.mark.parametrize(
    ("value", "u", "kind"),
    [
        (45.0, 0.9, "pass"),  # nominal on the edge of a published range, within what a tape can tell
        (45.4, 0.9, "pass"),
        (45.6, 0.9, "review"),
        (46.5, 0.9, "fail"),
        (45.0, 3.0, "review"),  # a survey this rough cannot say that it stands there
        (30.0, 0.0, "pass"),
        (29.4, 0.0, "fail"),
    ],
)
def test_a_nominal_position_on_the_edge_is_met_as_closely_as_a_room_is_set_out(value, u, kind) -> None:
    assert decide(at(value, u), Window(30.0, 45.0, "deg", allowance=0.5), guarded=False)[0] == kind


def test_no_setting_out_allowance_where_people_can_get_hurt() -> None:
    assert decide(at(45.2), Window(30.0, 45.0, "deg", allowance=0.5), guarded=True)[0] == "fail"


def test_what_nobody_can_read_is_no_finding_but_where_people_can_get_hurt() -> None:
    window = Window(None, 1.0, "")
    assert decide(at(1.004), window, guarded=False)[0] == "pass"
    assert decide(at(1.006), window, guarded=False)[0] == "fail"
    assert decide(at(1.004), window, guarded=True)[0] == "fail"


def test_what_a_report_shows_in_finer_digits_near_zero_is_a_finding() -> None:
    wall = Window(0.0, None, "m")
    assert decide(Figure.plain("gap", "m", -0.004), wall, guarded=False)[0] == "fail"  # told as -4 mm
    assert decide(Figure.plain("gap", "m", -0.0004), wall, guarded=False)[0] == "pass"
    loss = Window(None, 0.5, "dB")
    assert decide(Figure.plain("loss", "dB", 0.52), loss, guarded=False)[0] == "fail"  # told as 0.52 dB
    assert decide(Figure.plain("loss", "dB", 0.504), loss, guarded=False)[0] == "pass"


@pytest.mark.parametrize(("guarded", "kind"), [(False, "review"), (True, "fail")])
def test_a_formula_that_holds_on_one_side_only_decides_nothing(guarded, kind) -> None:
    spacing = read(0.03, 0.03, "m", None)

    def use(world: World) -> float:
        if world(spacing) <= 0.0:
            raise Refused("no spacing")
        return 0.001 / world(spacing)

    assert decide(Figure.of("use", "", World(), use), Window(None, 0.05, ""), guarded=guarded)[0] == kind


def test_windows_are_refused_when_nothing_or_everything_fits_or_the_order_is_wrong() -> None:
    for wrong in (
        lambda: Window(None, None, "m"),
        lambda: Window(2.0, 1.0, "m"),
        lambda: Window(float("inf"), None, "m"),
    ):
        with pytest.raises(ValueError, match="edge"):
            wrong()
    with pytest.raises(ValueError, match="unit"):
        Windows(Window(1.0, None, "m"), target=Window(2.0, None, "mm"))
    with pytest.raises(ValueError, match="inside"):
        at_most(1.0, "m", note=2.0)
    with pytest.raises(ValueError, match="around"):
        at_least(1.0, "m", error=2.0)
    with pytest.raises(ValueError, match="around"):
        between(1.0, 2.0, "m", error=(1.5, 3.0))
