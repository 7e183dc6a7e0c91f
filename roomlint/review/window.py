"""Windows: the allowed range of a figure, one source for the judging, the page, the reports and the house."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import TYPE_CHECKING, Generic, Literal, TypeVar

from roomlint.design.base import Subject
from roomlint.source.dimensions import decimals, last_digit

if TYPE_CHECKING:
    from collections.abc import Callable

    from roomlint.measure.figure import Figure
    from roomlint.review.room import Room

S_contra = TypeVar("S_contra", bound=Subject, contravariant=True)
SHARED_RISK = 4.0
"""Up to this many setting-out allowances of uncertainty a nominal position on an edge passes."""
CLEAR = 4.0
"""A limit this many rough uncertainties away needs no finer one."""


@dataclass(frozen=True, slots=True)
class Window:
    """An allowed range, edges included; None leaves a side open."""

    low: float | None
    high: float | None
    unit: str
    allowance: float = 0.0
    """What setting out may miss: a published position is met that closely. Never where people can get hurt."""

    def __post_init__(self) -> None:
        """Refuse a window that nothing or everything fits."""
        if self.low is None and self.high is None:
            raise ValueError("a window needs at least one edge")
        if self.low is not None and self.high is not None and self.low > self.high:
            raise ValueError(f"the window's low edge {self.low} is above its high edge {self.high}")
        edges = [edge for edge in (self.low, self.high) if edge is not None]
        if not all(math.isfinite(edge) for edge in edges):
            raise ValueError("an edge of a window is a finite number or left out")

    def margin(self, value: float) -> float:
        """Return the signed distance to the nearest edge: negative is outside."""
        low = value - self.low if self.low is not None else math.inf
        high = self.high - value if self.high is not None else math.inf
        return min(low, high)

    def side(self, value: float) -> Literal["below", "above", "inside"]:
        """Return on which side of the window a value lies."""
        if self.low is not None and value < self.low:
            return "below"
        return "above" if self.high is not None and value > self.high else "inside"

    def nearer_side(self, value: float) -> Literal["below", "above"]:
        """Return beyond which edge a value lies; of one inside, such as near a guarded edge, which edge is nearer."""
        side = self.side(value)
        if side != "inside":
            return side
        low = self.low is not None and (self.high is None or value - self.low < self.high - value)
        return "below" if low else "above"


@dataclass(frozen=True, slots=True)
class Windows:
    """A window with a tighter one inside, beyond which is a note, or a wider one around, beyond which is an error."""

    window: Window
    target: Window | None = None
    limit: Window | None = None

    def __post_init__(self) -> None:
        """Refuse windows of different units, and a target or a limit on the wrong side."""
        for other in (self.target, self.limit):
            if other is not None and other.unit != self.window.unit:
                raise ValueError(f"windows of one rule share their unit, not {self.window.unit!r} and {other.unit!r}")
        if self.target is not None and not _holds(self.window, self.target):
            raise ValueError("a target lies inside its window")
        if self.limit is not None and not _holds(self.limit, self.window):
            raise ValueError("a limit lies around its window")

    @property
    def unit(self) -> str:
        """The unit of all of them."""
        return self.window.unit


def _holds(outer: Window, inner: Window) -> bool:
    low = outer.low is None or (inner.low is not None and inner.low >= outer.low)
    return low and (outer.high is None or (inner.high is not None and inner.high <= outer.high))


@dataclass(frozen=True, slots=True)
class Cases(Generic[S_contra]):
    """The windows of a rule that depend on the case, with every case in words for the rule's page."""

    unit: str
    rows: tuple[tuple[str, Windows | None], ...]
    """When, in words, and the windows then; None where they follow from the subject, which the words explain."""
    choose: Callable[[Room, S_contra], Windows]

    def __post_init__(self) -> None:
        """Refuse rows of another unit, and no rows."""
        if not self.rows or not all(words for words, _ in self.rows):
            raise ValueError("windows by case name each case in words")
        for words, windows in self.rows:
            if windows is not None and windows.unit != self.unit:
                raise ValueError(f"the window {words!r} is in {windows.unit!r}, not in {self.unit!r}")


def at_most(high: float, unit: str, *, note: float | None = None, error: float | None = None) -> Windows:
    """Return the windows of a figure that must not be more: `note` is the tighter edge, `error` the wider one."""
    edges = [Window(None, edge, unit) if edge is not None else None for edge in (note, error)]
    return Windows(Window(None, high, unit), *edges)


def at_least(low: float, unit: str, *, note: float | None = None, error: float | None = None) -> Windows:
    """Return the windows of a figure that must not be less: `note` is the tighter edge, `error` the wider one."""
    edges = [Window(low_edge, None, unit) if low_edge is not None else None for low_edge in (note, error)]
    return Windows(Window(low, None, unit), *edges)


def between(
    low: float,
    high: float,
    unit: str,
    *,
    note: tuple[float, float] | None = None,
    error: tuple[float, float] | None = None,
    allowance: float = 0.0,
) -> Windows:
    """Return the windows of a figure with two edges."""
    edges = [Window(*pair, unit, allowance) if pair is not None else None for pair in (note, error)]
    return Windows(Window(low, high, unit, allowance), *edges)


def computed(unit: str, words: str, choose: Callable[[Room, S_contra], Windows]) -> Cases[S_contra]:
    """Return windows that follow from the subject, such as a circuit's own rating; the words say how."""
    return Cases(unit, ((words, None),), choose)


def by_reference(*, home: Windows, critical: Windows) -> Cases[Subject]:
    """Return windows that depend on `project.reference`."""
    rows = (("at home", home), ("for critical listening", critical))
    return Cases(home.unit, rows, lambda room, _: critical if room.critical else home)


def half_a_digit(unit: str, value: float) -> float:
    """Return half the last digit that a report shows of a number: what lies closer to an edge reads as the edge.

    Near zero a report shows more digits, so that 4 mm beyond a plane do not read as none.
    """
    return 0.5 * min(10.0 ** -decimals(unit), last_digit(unit, value))


def decide(figure: Figure, window: Window, *, guarded: bool) -> tuple[str, float]:
    """Decide a figure against a window and return the verdict kind and the margin.

    JCGM 106:2012, 8.2 and 8.3, in plain form: inside by the uncertainty or more passes, outside by more fails; in
    between a person must look (review), or, guarded, it fails, because there the harm is on one side only. A position
    within the window's setting-out allowance is met (8.2.1, shared risk), as long as its uncertainty is not far larger
    than the allowance. What nobody can read, half the last printed digit, is no finding, but where it is guarded.
    """
    margin = window.margin(figure.value)
    grace = 1e-9 * max(1.0, abs(figure.value))
    if not guarded:
        grace = max(grace, half_a_digit(window.unit, figure.value))
    if abs(margin) <= grace:
        # Standing exactly on the edge is inside; rounding must not decide.
        margin = 0.0
    return (_guarded(figure, margin) if guarded else _open(figure, margin, window.allowance)), margin


def _guarded(figure: Figure, margin: float) -> str:
    # Far inside, the bounds of a figure settle what its uncertainty would take long to say.
    if margin > 0.0 and figure.is_surely_below(margin):
        return "pass"
    # On one side of a reading the formula may not hold: what it would say there, nobody knows.
    return "pass" if margin >= 0.0 and margin >= figure.u and not figure.one_sided else "fail"


def _open(figure: Figure, margin: float, allowance: float) -> str:
    if margin > 0.0 and figure.is_bounded_by(margin):
        return "pass"
    if not -allowance <= margin <= 0.0 and figure.clears(margin, CLEAR):
        return "pass" if margin > 0.0 else "fail"
    u = figure.u
    if figure.one_sided:
        return "review"
    if margin >= u or (margin >= -allowance and u <= SHARED_RISK * allowance):
        return "pass"
    return "fail" if margin < -u else "review"
