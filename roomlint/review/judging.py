"""Holds one figure against the windows of its case, and says what the verdict rests on."""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

from roomlint.design.quantity import Origin
from roomlint.measure.figure import Figure
from roomlint.review.again import again_of
from roomlint.review.verdict import Kind, Level, Related, Verdict
from roomlint.review.window import Window, Windows, decide

if TYPE_CHECKING:
    from collections.abc import Mapping

    from roomlint.design.base import Subject
    from roomlint.design.house import Decision
    from roomlint.review.room import Room
    from roomlint.review.rule import AnyRule
    from roomlint.review.verdict import Fact, Found
    from roomlint.source.place import Place


class Judged(NamedTuple):
    """A figure that was compared, kept as long as its room is at hand: remedies are tried against all of them."""

    rule: AnyRule
    subject: Subject
    figure: Figure
    windows: Windows
    level: Level
    number: int
    """Of its verdict among all of the room, so that a remedy finds its way back."""
    fixed: bool
    """Whether the house decided the level, so that no window raises or lowers it."""

    def outcome(self, figure: Figure) -> tuple[Kind, Level, Window, float]:
        """Return what the windows say of a figure: kind, level, the window that says it and the margin to it."""
        window, target, limit = self.windows.window, self.windows.target, self.windows.limit
        guarded, level = self.rule.guarded, self.level
        kind, margin = decide(figure, window, guarded=guarded)
        if kind == "fail" and limit is not None and not self.fixed:
            if decide(figure, limit, guarded=guarded)[0] == "fail":
                level = Level.ERROR
        elif kind == "pass" and target is not None:
            beyond, short = decide(figure, target, guarded=False)
            if beyond == "fail":
                return Kind.FAIL, Level.NOTE, target, short
        return Kind(kind), level, window, margin


def level_of(rule: AnyRule, room: Room, decision: Decision | None) -> Level:
    """Return the level that a rule has in a room: the house's, or its own at the stage."""
    if decision is not None and decision.level is not None:
        return Level(decision.level)
    return rule.critical_level if room.critical and rule.critical_level is not None else rule.level


def held_to(
    rule: AnyRule, room: Room, subject: Subject, found: Found, level: Level, decision: Decision | None, number: int
) -> Judged:
    """Return a figure with the windows and the level that hold for it, the house's decisions among them."""
    windows = rule.windows(room, subject)
    if windows is None:
        raise TypeError(f"{rule.id} answered with a figure but has no window")
    fixed = decision is not None and decision.level is not None
    if not fixed and found.level is not None:
        level = found.level
    if decision is not None and decision.sets_window:
        windows = _of_house(decision, windows)
    if windows.unit != found.figure.unit:
        raise TypeError(f"{rule.id}: figure in {found.figure.unit!r} against a window in {windows.unit!r}")
    return Judged(rule, subject, found.figure, windows, level, number, fixed)


def judged_by(
    rule: AnyRule, room: Room, subject: Subject, found: Found, level: Level, decision: Decision | None, number: int
) -> tuple[Verdict, Judged]:
    """Return the verdict of a figure, and the figure with its windows."""
    judged = held_to(rule, room, subject, found, level, decision, number)
    changed = ["level"] if judged.fixed else []
    if decision is not None and decision.sets_window:
        changed.append("window")
    figure = found.figure
    kind, level, window, margin = judged.outcome(figure)
    place = found.place or subject.place_of(rule.at)
    told = kind is not Kind.PASS
    verdict = Verdict(
        rule=rule.id,
        kind=kind,
        level=level if kind is Kind.FAIL else None,
        subject=subject.key,
        words=subject.words,
        place=place,
        said=(found.said or _template(rule, window.nearer_side(figure.value))) if kind is Kind.FAIL else "",
        facts=facts_of(found.facts) if told else {},
        because=_one_side(figure) if told else "",
        figure=figure.settled() if told else figure if room.exact else figure.valued(),
        window=window,
        margin=margin,
        again=again_of(figure, margin, room) if told and abs(margin) < figure.u else None,
        # Most verdicts pass, and a pass needs no trail: looking up places costs more than judging.
        related=_readings(figure, place) if told else (),
        overridden=tuple(changed),
    )
    return verdict, judged


def _of_house(decision: Decision, windows: Windows) -> Windows:
    """Return the windows with the one that a house sets; what lies beyond the error's edge is an error as before."""
    window, limit = house_window(decision, windows.window), windows.limit
    if limit is None:
        return Windows(window)
    low = min(window.low, limit.low) if window.low is not None and limit.low is not None else None
    high = max(window.high, limit.high) if window.high is not None and limit.high is not None else None
    return Windows(window, limit=Window(low, high, limit.unit) if (low, high) != (None, None) else None)


def house_window(decision: Decision, window: Window) -> Window:
    """Return a rule's window with the edges that a house file sets; an edge it does not name stays."""
    from roomlint.review.units import in_unit  # the quantity parser is needed only where a house file decides

    low = in_unit(decision.low, window.unit) if decision.low is not None else window.low
    high = in_unit(decision.high, window.unit) if decision.high is not None else window.high
    return Window(low, high, window.unit)


def facts_of(facts: Mapping[str, Fact], *, exact: bool = True) -> Mapping[str, Fact]:
    """Return facts that hold on to no design."""
    return {name: plain_of(fact, exact=exact) if isinstance(fact, Figure) else fact for name, fact in facts.items()}


def plain_of(figure: Figure, *, exact: bool) -> Figure:
    """Return a figure that holds on to no design, how far it may be off found out or not."""
    return figure.settled() if exact else figure.valued()


def _template(rule: AnyRule, side: str) -> str:
    return side if side in rule.says else "fail"


def _one_side(figure: Figure) -> str:
    if not figure.one_sided:
        return ""
    return "within the uncertainty of what it is computed from it has no value on one side"


def _readings(figure: Figure, own: Place) -> tuple[Related, ...]:
    """Return the places of the readings that a figure rests on, the finding's own place left out."""
    seen: dict[Place, Related] = {}
    for reading in figure.readings:
        if reading.origin is not Origin.ASSUMED and reading.at is not None and reading.at.place != own:
            seen.setdefault(reading.at.place, Related(reading.at.place, reading.at.path))
    return tuple(seen.values())
