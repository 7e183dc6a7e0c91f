"""Remedies: which value of one input clears a failure, tried against everything else that rests on that input."""

from __future__ import annotations

import math
from dataclasses import replace
from functools import partial
from typing import TYPE_CHECKING, Final, NamedTuple

from roomlint.measure.figure import Figure
from roomlint.review.engine import trouble_of
from roomlint.review.judging import Judged, held_to, level_of
from roomlint.review.verdict import Found, Kind, Level, Remedy
from roomlint.review.ways import Way, ways_of

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator, Sequence

    from roomlint.design.base import Element
    from roomlint.design.quantity import Reading
    from roomlint.review.engine import Outcome
    from roomlint.review.room import Room
    from roomlint.review.verdict import Verdict

STEPS: Final = 40
"""Points at which a way is tried before its ends are found."""
WIDE_STEPS: Final = 20
"""The same for what is dear and changes slowly: the shortest wave of the bass is over 4 m long."""
COARSE: Final = 8
"""Points of a span at which everything else is looked at."""
MOST_BROKEN: Final = 3
"""A change that breaks more rules than this is none to recommend."""
SPARING: Final = (0.25, 0.5, 0.75)
"""Where in a span whose ends break too much a part that breaks less is looked for."""
WORSE: Final = 0.1
"""By so large a share of what it is outside already, a failure that stands is made worse by a move."""
_HALVINGS: Final = 7
_ROUNDING: Final = 1e-6
"""Share of what it is rounded to by which an end may lie beyond what was tried."""
_TOLD: Final = {"m": 0.01, "deg": 1.0}
"""A remedy is told to the centimetre or the degree, rounded inwards."""


class _Held(NamedTuple):
    """A figure that a move may touch, and what its windows say of it as it is."""

    judged: Judged
    kind: Kind
    level: Level
    margin: float

    @property
    def may_be_an_error(self) -> bool:
        """Whether its windows know errors at all."""
        return self.judged.level is Level.ERROR or self.judged.windows.limit is not None

    def is_made_worse(self, then: Kind, at: Level, margin: float) -> bool:
        """Return whether what fails already fails at as high a level elsewhere, and farther outside."""
        fails = self.kind is Kind.FAIL and then is Kind.FAIL
        return fails and at.rank >= self.level.rank and margin < self.margin - WORSE * abs(self.margin)


class _Tries:
    """The figures of one room, with what is said of each as it is, and the ways that were tried; found out once.

    What waits for a cause is among them: it is judged as soon as the cause is cured, so it must hold then too.
    """

    def __init__(self, judged: Sequence[Judged], room: Room) -> None:
        self.judged = (*judged, *_waiting(room))
        self._first_waiting = len(judged)
        self.room = room
        self._held: dict[int, _Held] = {}
        self._ways: dict[tuple[Element, str], list[Way]] = {}

    def ways(self, failed: Judged) -> Iterator[Way]:
        """Yield every way that a rule names: one that several failures are cleared along is one and the same."""
        for element in failed.subject.about:
            for key in failed.rule.cure:
                if (element, key) not in self._ways:
                    self._ways[(element, key)] = list(ways_of(element, key, self.room))
                yield from self._ways[(element, key)]

    def touched(self, failed: Judged, reading: Reading) -> list[_Held]:
        """Return everything else that rests on a reading, what rests on little, and is found soon, first."""
        found = [
            self._as_is(number, other)
            for number, other in enumerate(self.judged)
            if other is not failed and reading in other.figure.readings
        ]
        return sorted(found, key=lambda held: (held.judged.figure.shared, len(held.judged.figure.readings)))

    def _as_is(self, number: int, other: Judged) -> _Held:
        if number not in self._held:
            held = _held(other)
            # Nothing is said yet of what waits: where it fails then, that is new.
            self._held[number] = held._replace(kind=Kind.OPEN) if number >= self._first_waiting else held
        return self._held[number]


def _waiting(room: Room) -> Iterator[Judged]:
    """Yield the figures of what waits for a cause, as they would be compared, by the house's windows where it has any.

    A rule may break on the very thing that it waits for; where it breaks still once that is cured, it is told then.
    """
    for rule, subject in room.waiting:
        decision = room.house.decisions.get(rule.id)
        try:
            answer = rule.judge(room, subject)
            found = Found(answer) if isinstance(answer, Figure) else answer
            if not isinstance(found, Found):
                continue
            judged = held_to(rule, room, subject, found, level_of(rule, room, decision), decision, -1)
        except KeyboardInterrupt:
            raise
        except BaseException:  # noqa: BLE001, S112  whatever a rule raises must not take the run with it
            continue
        yield judged


class _Span(NamedTuple):
    """Where along a way a failure is cleared."""

    way: Way
    low: float
    high: float
    told: float
    """What a remedy in it is rounded to."""
    order: int
    """Of two remedies that are alike, the one that was found along the earlier way is told."""

    @property
    def away(self) -> float:
        """What a remedy in it changes at the least."""
        now = self.way.reading.value
        return max(self.low - now, now - self.high, 0.0) - _ROUNDING * self.told


def _span(way: Way, low: float, high: float, order: int) -> _Span:
    return _Span(way, low, high, _TOLD.get(way.reading.unit, 0.01 * max(abs(low), abs(high))), order)


class _Best(NamedTuple):
    """A remedy that was found, and by what it is better than another."""

    breaks: int
    away: float
    order: int
    remedy: Remedy

    def is_beyond(self, span: _Span) -> bool:
        """Return whether nothing in a span can be better."""
        return not self.breaks and span.away > self.away


def _held(other: Judged) -> _Held:
    kind, level, _, margin = other.outcome(other.figure)
    return _Held(other, kind, level, margin)


def with_remedies(outcome: Outcome, room: Room) -> list[Verdict]:
    """Return the verdicts, each standing error and warning with the remedy that was found for it, if one was.

    A rule that breaks on a value that was only tried is told of, and the finding stands without a remedy.
    """
    done = list(outcome.verdicts)
    tries = _Tries(outcome.judged, room)
    for one in outcome.judged:
        verdict = done[one.number]
        grave = verdict.level in {Level.ERROR, Level.WARNING}
        if grave and verdict.waived is None and one.rule.cure:
            try:
                remedy = _remedy(one, tries)
            except BaseException as error:  # noqa: BLE001  whatever a rule raises must not take the run with it
                outcome.troubles.append(trouble_of(one.rule, room, error, ", while a remedy was sought"))
                continue
            if remedy is not None:
                done[one.number] = replace(verdict, remedy=remedy)
    return done


def remedy_of(failed: Judged, judged: Sequence[Judged], room: Room) -> Remedy | None:
    """Return the remedy of one failure, whatever its level, or None when no way clears it."""
    return _remedy(failed, _Tries(judged, room))


def _remedy(failed: Judged, tries: _Tries) -> Remedy | None:
    """Return the change of one value that clears a failure and breaks least, or None when no way does.

    Every way that the rule names is tried from end to end; a value clears the failure when the figure then passes.
    What else rests on that reading is held against its own windows there: a way that breaks nothing is told first,
    and one that breaks something says what. A place that makes an error, or one that stands worse, is none. Where
    people can get hurt nothing is told but what holds in every respect: all other figures of those chapters that rest
    on the reading hold there, whether they do now or not.

    Of those the smallest change is told, so the nearest span is tried first, and what cannot be nearer is not tried.
    """
    best: _Best | None = None
    steps = WIDE_STEPS if failed.figure.shared else STEPS
    spans = [
        _span(way, low, high, order)
        for order, way in enumerate(tries.ways(failed))
        for low, high in _runs(partial(_clears, failed, way), way.low, way.high, steps)
    ]
    for spoils in (_breaks, _makes_an_error):
        broken: list[_Span] = []
        for span in sorted(spans, key=lambda span: span.away):
            if best is not None and best.is_beyond(span):
                break
            touched = tries.touched(failed, span.way.reading)
            for part in _parts(failed, span, touched) if spoils is _breaks else (span,):
                whole = _whole(part, partial(_none, spoils, touched, part.way))
                if whole is None:
                    broken.append(part)
                    continue
                remedy = _tried(whole, failed, touched)
                if remedy is not None:
                    now = part.way.reading.value
                    away = min(abs(end.value - now) for end in (remedy.low, remedy.high))
                    found = _Best(len(remedy.breaks), away, part.order, remedy)
                    best = found if best is None else min(best, found, key=lambda one: one[:3])
        if best is not None and not best.breaks:
            break
        spans = broken
    return best.remedy if best is not None else None


def _clears(judged: Judged, way: Way, value: float) -> bool:
    there = way.there(judged.figure, value)
    if there is None:
        return False
    return judged.outcome(judged.figure.elsewhere(there))[0] is Kind.PASS


def _known(judged: Judged, way: Way, value: float, *, noted: bool = False) -> bool:
    """Return whether the figure passes there with the uncertainty that it has there, near a limit perhaps another.

    `noted`: or is worth no more than a note.
    """
    there = way.there(judged.figure, value)
    if there is None:
        return False
    kind, level, _, _ = judged.outcome(judged.figure.within(way.world(value), there))
    return kind is Kind.PASS or (noted and kind is Kind.FAIL and level is Level.NOTE)


def _breaks(held: _Held, way: Way, value: float) -> bool:
    """Return whether a figure that rests on the reading passes now and not there, or fails there and more gravely."""
    other, kind, level, _ = held
    there = way.there(other.figure, value)
    if there is None:
        return kind is Kind.PASS
    then, at, _, margin = other.outcome(other.figure.elsewhere(there))
    if kind is Kind.PASS:
        return then is not Kind.PASS
    if then is not Kind.FAIL:
        return False
    return kind is not Kind.FAIL or at.rank > level.rank or held.is_made_worse(then, at, margin)


def _makes_an_error(held: _Held, way: Way, value: float) -> bool:
    """Return whether a figure that rests on the reading fails there as an error, and now does not or by far less."""
    if not held.may_be_an_error:
        return False
    other, kind, level, _ = held
    there = way.there(other.figure, value)
    if there is None:
        return kind is Kind.PASS
    then, at, _, margin = other.outcome(Figure.plain(other.figure.name, other.figure.unit, there, u=0.0))
    if then is not Kind.FAIL or at is not Level.ERROR:
        return False
    return not (kind is Kind.FAIL and level is Level.ERROR) or held.is_made_worse(then, at, margin)


def _leaves_a_danger(held: _Held, way: Way, value: float) -> bool:
    """Return whether a figure that people can get hurt by does not hold there, now or not; a note may stand."""
    return held.judged.rule.guarded and not _known(held.judged, way, value, noted=True)


def _none(spoils: Callable[[_Held, Way, float], bool], touched: list[_Held], way: Way, value: float) -> bool:
    """Return whether none of the figures that a move touches is spoilt there.

    What is spoilt at one place is likely to be at the next: it is looked at first from then on.
    """
    for number, held in enumerate(touched):
        if spoils(held, way, value):
            touched.insert(0, touched.pop(number))
            return False
    return True


def _parts(failed: Judged, span: _Span, touched: list[_Held]) -> Iterator[_Span]:
    """Yield where in a span people cannot get hurt by anything that it touches; of other failures, the whole span."""
    if failed.rule.guarded:
        harmless = partial(_none, _leaves_a_danger, touched, span.way)
        for low, high in _runs(harmless, span.low, span.high, COARSE):
            yield _span(span.way, low, high, span.order)
    else:
        yield span


def _whole(span: _Span, holds: Callable[[float], bool]) -> _Span | None:
    """Return the part of a span that holds everywhere and can be told, the nearest to the reading as it is."""
    now = span.way.reading.value
    runs = _runs(holds, span.low, span.high, COARSE, from_high=span.high < now)
    wide = (span._replace(low=low, high=high) for low, high in runs if high - low > span.told)
    if span.low <= now <= span.high:
        return min(wide, key=lambda run: min(abs(run.low - now), abs(run.high - now)), default=None)
    return next(wide, None)


def _runs(
    holds: Callable[[float], bool], low: float, high: float, steps: int, *, from_high: bool = False
) -> Iterator[tuple[float, float]]:
    """Yield where something holds, found point by point, the ends by halving."""
    step = (high - low) / steps
    if step <= 0.0:
        return
    points = [low + step * number for number in range(steps + 1)]
    last = high
    if from_high:
        points.reverse()
        last = low
    start: float | None = None
    for number, point in enumerate(points):
        here = holds(point)
        if here and start is None:
            start = _edge(holds, point, points[number - 1]) if number else (high if from_high else point)
        if not here and start is not None:
            end = _edge(holds, points[number - 1], point)
            yield (min(start, end), max(start, end))
            start = None
    if start is not None:
        yield (min(start, last), max(start, last))


def _edge(holds: Callable[[float], bool], inside: float, outside: float) -> float:
    for _ in range(_HALVINGS):
        middle = (inside + outside) / 2.0
        if holds(middle):
            inside = middle
        else:
            outside = middle
    return inside


def _tried(span: _Span, failed: Judged, touched: list[_Held]) -> Remedy | None:
    """Return the part of a span in which a failure is known to be cleared, with what else it breaks."""
    way, told = span.way, span.told

    def known(value: float) -> bool:
        harmless = not failed.rule.guarded or _none(_leaves_a_danger, touched, way, value)
        return harmless and _known(failed, way, value)

    middle = (span.low + span.high) / 2.0
    if not known(middle):
        return None
    low, high = (end if known(end) else _edge(known, middle, end) for end in (span.low, span.high))
    if len(_broken(touched, way, low) | _broken(touched, way, high)) > MOST_BROKEN:
        low, high = _sparing(low, high, touched, way)
    low, high = math.ceil(low / told - _ROUNDING) * told, math.floor(high / told + _ROUNDING) * told
    if high < low or not (known(low) and known(high)):
        return None
    breaks = _broken(touched, way, low) | _broken(touched, way, high)
    if len(breaks) > MOST_BROKEN:
        return None
    first, last, now = (
        Figure.plain(way.key, way.reading.unit, value, u=0.0) for value in (low, high, way.reading.value)
    )
    mirrored = f"{way.element.KIND}/{pair[1]}" if (pair := getattr(way.element, "pair", None)) else ""
    return Remedy(way.element.words, way.element.key, way.key, first, last, now, tuple(sorted(breaks)), mirrored)


def _broken(touched: list[_Held], way: Way, value: float) -> set[str]:
    """Return the rules whose figures a move spoils there; of too many, no more than tell that they are."""
    broken: set[str] = set()
    for held in touched:
        if held.judged.rule.id not in broken and _breaks(held, way, value):
            broken.add(held.judged.rule.id)
            if len(broken) > MOST_BROKEN:
                break
    return broken


def _sparing(low: float, high: float, touched: list[_Held], way: Way) -> tuple[float, float]:
    """Return where between two places that spoil too much the least is spoilt, of several the nearest to now."""
    now = way.reading.value
    places = sorted((low + (high - low) * part for part in SPARING), key=lambda place: abs(place - now))
    least, spared = min(((place, _broken(touched, way, place)) for place in places), key=lambda tried: len(tried[1]))
    if len(spared) > MOST_BROKEN:
        return low, high
    others = [held for held in touched if held.judged.rule.id not in spared]
    spares = partial(_none, _breaks, others, way)
    return _edge(spares, least, low), _edge(spares, least, high)
