"""The decision rule of JCGM 106:2012 as roomlint uses it."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from roomlint.measure.figure import Figure
from roomlint.review.window import Window, around, decide

TEN_TO_TWENTY = Window(10.0, 20.0, "deg")


def at(value: float, u: float = 0.0) -> Figure:
    return Figure("angle", value, "deg", u)


@pytest.mark.parametrize(
    ("value", "u", "kind"),
    [
        (15.0, 0.0, "pass"),
        (10.0, 0.0, "pass"),  # the edge itself is inside
        (9.999, 0.0, "fail"),
        (11.0, 1.0, "pass"),  # inside by just the uncertainty
        (10.5, 1.0, "review"),
        (9.5, 1.0, "review"),
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


@given(st.floats(-1e3, 1e3), st.floats(-90, 90))
def test_margin_does_not_change_when_window_and_figure_shift_together(value: float, shift: float) -> None:
    moved = Window(10.0 + shift, 20.0 + shift, "deg")
    assert moved.margin(value + shift) == pytest.approx(TEN_TO_TWENTY.margin(value), abs=1e-9)


def test_a_window_with_no_edge_is_refused() -> None:
    with pytest.raises(ValueError, match="edge"):
        Window(None, None, "m")


def test_a_window_the_wrong_way_round_is_refused() -> None:
    with pytest.raises(ValueError, match="above"):
        Window(2.0, 1.0, "m")


def test_windows_are_told_in_words() -> None:
    shown = [str(Window(None, 3.0, "dB")), str(Window(3.0, None, "dB")), str(around(30.0, 2.0, "deg"))]
    assert shown == ["at most 3.0 dB", "at least 3.0 dB", "28.0 to 32.0 deg"]
