"""What became of one verdict since an earlier review: which way it went, and whose doing that is."""

from __future__ import annotations

from typing import TYPE_CHECKING

from roomlint.review.rule import GUARDED
from roomlint.review.verdict import By, Change, Kind, State, Verdict, Way
from roomlint.review.window import Window, decide
from roomlint.source.dimensions import last_digit

if TYPE_CHECKING:
    from roomlint.measure.figure import Figure

SAME = 1e-6
"""Figures nearer than this part of their size are the same: another machine's last bits are no change."""


def change_of(verdict: Verdict, was: Verdict | None) -> Change:
    """Return how a verdict stands to the earlier one of the same rule and subject, if there was one."""
    if was is None:
        return Change(State.NEW, _appeared(verdict))
    before = str(was.level or was.kind)
    figure = was.figure if _differ(verdict, was.figure) else None
    window = was.window if _other(verdict.window, was.window) else None
    way, by = _way(verdict, was, figure, window)
    same = (verdict.kind, verdict.level, verdict.waived is None) == (was.kind, was.level, was.waived is None)
    state = State.UNCHANGED if same and way is None and figure is None and window is None else State.UPDATED
    return Change(state, way, by, before, figure, window, was.waived is not None)


def _appeared(verdict: Verdict) -> Way | None:
    if verdict.kind is Kind.FAIL:
        return Way.NEW if verdict.waived is None else None
    if verdict.kind is Kind.OPEN:
        return Way.UNKNOWN if verdict.follows is None else None
    return Way.CLOSE if verdict.kind is Kind.REVIEW else None


def _way(verdict: Verdict, was: Verdict, figure: Figure | None, window: Window | None) -> tuple[Way | None, By]:
    if verdict.kind is Kind.FAIL and was.kind is Kind.FAIL:
        return _still(verdict, was, figure, window)
    if verdict.kind is Kind.FAIL:
        way = Way.NEW if verdict.waived is None else None
        return way, By.HOUSE if _by_window(verdict, was, window, "fail") else By.DESIGN
    if verdict.kind is Kind.REVIEW:
        way = Way.CLOSE if was.kind is not Kind.REVIEW else None
        return way, By.HOUSE if _by_window(verdict, was, window, "review") else By.DESIGN
    if verdict.kind is Kind.OPEN:
        return (Way.UNKNOWN if was.kind is not Kind.OPEN and verdict.follows is None else None), By.DESIGN
    if was.kind is Kind.FAIL:
        return Way.GONE, By.HOUSE if _by_window(verdict, was, window, "pass") else By.DESIGN
    return None, By.DESIGN


def _still(verdict: Verdict, was: Verdict, figure: Figure | None, window: Window | None) -> tuple[Way | None, By]:
    """Return which way a failure went that failed before."""
    if (verdict.waived is None) != (was.waived is None):
        return (Way.NEW if verdict.waived is None else Way.GONE), By.WAIVER
    if verdict.waived is not None and was.waived is not None:
        told = [(each.because, each.approved_by, each.until, each.document) for each in (verdict.waived, was.waived)]
        if told[0] != told[1]:
            return None, By.WAIVER
    toward = _toward(verdict, figure)
    if toward:
        return (Way.BETTER if toward > 0 else Way.WORSE), By.DESIGN
    rise = (verdict.level.rank if verdict.level else 0) - (was.level.rank if was.level else 0)
    if rise == 0:
        return None, By.HOUSE if window is not None else By.DESIGN
    decided = window is not None or verdict.overridden != was.overridden or figure is None
    return (Way.WORSE if rise > 0 else Way.BETTER), By.HOUSE if decided else By.DESIGN


def _toward(verdict: Verdict, figure: Figure | None) -> int:
    """Return 1 when the figure lies farther in than the earlier one, on the window of today, -1 when farther out.

    It must have moved by more than its uncertainty, the earlier one's or today's, whichever is less: what measuring
    again may give is neither better nor worse. Where people can get hurt whatever can be read counts as worse.
    """
    if figure is None or verdict.figure is None or verdict.window is None:
        return 0
    grew = verdict.window.margin(verdict.figure.value) - verdict.window.margin(figure.value)
    if grew < 0 and _is_guarded(verdict):
        return -1
    if abs(grew) <= max(min(verdict.figure.u, figure.u), SAME * max(1.0, abs(figure.value))):
        return 0
    return 1 if grew > 0 else -1


def _by_window(verdict: Verdict, was: Verdict, window: Window | None, said: str) -> bool:
    """Return whether today's window alone says of the earlier figure what is said today.

    It does not where today's figure gets the same of the window of then: what a note's edge said of a cabinet too near
    the wall is cured by moving it, whatever the edge of the warning is.
    """
    if window is None or verdict.window is None or was.figure is None or was.figure.unit != verdict.window.unit:
        return False
    guarded, figure = _is_guarded(verdict), verdict.figure
    if figure is not None and figure.unit == window.unit and decide(figure, window, guarded=guarded)[0] == said:
        return False
    return decide(was.figure, verdict.window, guarded=guarded)[0] == said


def _is_guarded(verdict: Verdict) -> bool:
    return verdict.rule.partition(".")[0] in GUARDED


def _differ(verdict: Verdict, other: Figure | None) -> bool:
    """Return whether a figure moved by at least the last digit that is printed: less than that nobody can read."""
    one = verdict.figure
    if one is None or other is None or one.unit != other.unit:
        return False
    return abs(one.value - other.value) >= last_digit(one.unit, other.value) * (1.0 - SAME)


def _other(one: Window | None, other: Window | None) -> bool:
    """Return whether two windows have another edge."""
    if one is None or other is None:
        return False
    if one.unit != other.unit:
        return True
    edges = ((one.low, other.low), (one.high, other.high))
    return any(
        (low is None) != (high is None)
        or (low is not None and high is not None and abs(low - high) > SAME * max(1.0, abs(high)))
        for low, high in edges
    )
