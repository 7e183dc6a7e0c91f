"""The points of a room: its failures as the numbered lines of a list, what belongs together told once."""

from __future__ import annotations

from dataclasses import dataclass, field, replace
from typing import TYPE_CHECKING

from roomlint.report.asking import DRILLING, hazard_order, is_hazard
from roomlint.report.merging import merged
from roomlint.review.verdict import Level
from roomlint.review.waivers import ABOUT_WAIVER, accepts
from roomlint.source.say import one_line

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator, Mapping

    from roomlint.measure.figure import Figure
    from roomlint.report.merging import Entry
    from roomlint.report.telling import Telling
    from roomlint.review.review import RoomReview
    from roomlint.review.verdict import Remedy, Verdict


@dataclass(slots=True)
class Point:
    """One numbered line: what is wrong, with whom, and what to do."""

    entry: Entry
    hazard: bool
    number: int = 0
    actions: list[str] = field(default_factory=list)
    seen: list[int] = field(default_factory=list)
    """Points that say what clears this one too."""

    @property
    def level(self) -> Level:
        """The level of its gravest finding."""
        return self.entry.first.level or Level.NOTE

    @property
    def findings(self) -> int:
        """How many findings it stands for."""
        return len(self.entry.verdicts) + len(self.entry.beside)


def points_of(room: RoomReview, telling: Telling) -> list[Point]:
    """Return the failures that nobody accepted as numbered points: hazards, errors, warnings, notes."""
    failures = [verdict for verdict in room.verdicts if verdict.level is not None and verdict.waived is None]
    beside, taken = in_one_breath(failures, telling)
    left = [verdict for verdict in failures if id(verdict) not in taken]
    hazards = merged([verdict for verdict in left if is_hazard(verdict)], telling, beside=beside)
    points = [Point(entry, hazard=True) for entry in sorted(hazards, key=gravest_first)]
    for level in Level:
        found = [verdict for verdict in left if verdict.level is level and not is_hazard(verdict)]
        entries = by_element(merged(found, telling, beside=beside))
        entries.sort(key=lambda entry: entry.first.rule.partition(".")[0] not in DRILLING)
        points += [Point(entry, hazard=False) for entry in entries]
    for number, point in enumerate(points, start=1):
        point.number = number
        for verdict in (*point.entry.verdicts, *point.entry.beside):
            telling.numbers[verdict.rule, verdict.subject] = number
    _with_remedies(points, telling)
    return points


def gravest_first(entry: Entry) -> tuple[int, float]:
    """Return what hazards are sorted by."""
    return min(hazard_order(verdict) for verdict in (*entry.verdicts, *entry.beside))


def by_element(entries: Iterable[Entry]) -> list[Entry]:
    """Return the lines of one element together, in the order of the file."""
    entries = list(entries)
    order: dict[str, int] = {}
    for entry in entries:
        order.setdefault(entry.who.partition(" at ")[0], len(order))
    return sorted(entries, key=lambda entry: order[entry.who.partition(" at ")[0]])


def in_one_breath(failures: list[Verdict], telling: Telling) -> tuple[dict[int, tuple[Verdict, ...]], set[int]]:
    """Return what is told in one breath with each failure, and the identities of all that is told so.

    What is told with another is of the same element, or of the room; it is never graver than what it is told with.
    """
    by_rule: dict[str, list[Verdict]] = {}
    for verdict in failures:
        by_rule.setdefault(verdict.rule, []).append(verdict)
    beside: dict[int, tuple[Verdict, ...]] = {}
    host_of: dict[int, Verdict] = {}
    for verdict in failures:
        host = _host(verdict, by_rule, telling)
        # Of rules that name each other in a circle one is told by itself.
        if host is not None and _outermost(host, host_of) is not verdict:
            host_of[id(verdict)] = host
    for verdict in failures:
        host = _outermost(verdict, host_of)
        if host is not verdict:
            beside[id(host)] = (*beside.get(id(host), ()), verdict)
    return beside, set(host_of)


def _outermost(verdict: Verdict, host_of: Mapping[int, Verdict]) -> Verdict:
    """Return the failure at whose end another is told at last; itself where it is told by itself."""
    while id(verdict) in host_of:
        verdict = host_of[id(verdict)]
    return verdict


def _host(verdict: Verdict, by_rule: dict[str, list[Verdict]], telling: Telling) -> Verdict | None:
    """Return the failure that another is told in one breath with; None when it is told by itself."""
    if verdict.subject.startswith(ABOUT_WAIVER):
        return _accepted_in_vain(verdict, by_rule)
    rule = telling.rule(verdict)
    if rule is None or not telling.fits_beside(verdict):
        return None
    for name in rule.beside:
        for other in by_rule.get(name, ()):
            same = other.subject == verdict.subject or other.subject.startswith("design/")
            if same and _rank(other) >= _rank(verdict):
                return other
    return None


def _accepted_in_vain(verdict: Verdict, by_rule: dict[str, list[Verdict]]) -> Verdict | None:
    """Return the failure that a waiver which does not hold was meant for: it says itself why that is so."""
    name = verdict.subject.removeprefix(ABOUT_WAIVER).partition(" for ")[0]
    for other in by_rule.get(name, ()):
        if other.unheld is not None and accepts(verdict, other) and _rank(other) >= _rank(verdict):
            return other
    return None


def _rank(verdict: Verdict) -> int:
    return verdict.level.rank if verdict.level is not None else 0


@dataclass(slots=True)
class _Way:
    """The remedies that move one value of one element, and the points that they clear."""

    wants: list[tuple[Point, Remedy]] = field(default_factory=list)

    @property
    def ranges(self) -> list[Remedy]:
        """Each range once."""
        return list({(remedy.low.value, remedy.high.value): remedy for _, remedy in self.wants}.values())

    @property
    def numbers(self) -> list[int]:
        """The points, each once."""
        return sorted({point.number for point, _ in self.wants})

    def common(self) -> Remedy | None:
        """Return the range that clears all of them; None where they do not meet."""
        low = max((remedy.low for remedy in self.ranges), key=_value)
        high = min((remedy.high for remedy in self.ranges), key=_value)
        if low.value > high.value:
            return None
        cleared = {verdict.rule for point, _ in self.wants for verdict in point.entry.verdicts}
        breaks = dict.fromkeys(rule for remedy in self.ranges for rule in remedy.breaks if rule not in cleared)
        return replace(self.ranges[0], low=low, high=high, breaks=tuple(breaks))


def _value(figure: Figure) -> float:
    return figure.value


def _with_remedies(points: list[Point], telling: Telling) -> None:
    """Write under each point what to do, ways that several points share under the first of them."""
    ways: dict[tuple[str, str], _Way] = {}
    for point in points:
        for verdict in (*point.entry.verdicts, *point.entry.beside):
            if verdict.remedy is not None:
                way = ways.setdefault((verdict.remedy.subject, verdict.remedy.key), _Way())
                way.wants.append((point, verdict.remedy))
    for point in points:
        own = [way for way in ways.values() if point.number in way.numbers]
        point.seen = sorted({way.numbers[0] for way in own} - {point.number})
        point.actions += _told_once([way for way in own if way.numbers[0] == point.number], point, telling)
        point.actions += other_actions(point.entry, telling, has_remedy=bool(own))


def _told_once(ways: list[_Way], point: Point, telling: Telling) -> Iterator[str]:
    """Yield the ways that are told under a point, those alike of several elements as one."""
    alike: dict[tuple[str, tuple[int, ...]], list[Remedy]] = {}
    for way in ways:
        remedy = way.common()
        if remedy is None:
            yield one_line(_apart(way, telling))
        else:
            # The pair stays one: what both can do is told of both.
            alike.setdefault((remedy.key.rpartition(".")[2], tuple(way.numbers)), []).append(remedy)
    for (_, numbers), remedies in alike.items():
        rest = [number for number in numbers if number != point.number]
        also = f"; clears {_and(rest)} too" if rest else ""
        shared = _shared(remedies)
        if shared is not None and len(remedies) > 1:
            yield f"{telling.remedies(shared)}{also}"
            continue
        for remedy in remedies:
            words = telling.remedy(remedy, remedy.subject)
            named = {verdict.subject for verdict in point.entry.verdicts} != {remedy.subject}
            yield f"{telling.names.one(remedy.subject)}: {words}{also}" if named else f"{words}{also}"


def _shared(remedies: list[Remedy]) -> list[Remedy] | None:
    """Return the remedies of several elements over the range that all of them have; None where there is none."""
    low = max((remedy.low for remedy in remedies), key=_value)
    high = min((remedy.high for remedy in remedies), key=_value)
    return [replace(remedy, low=low, high=high) for remedy in remedies] if low.value <= high.value else None


def _apart(way: _Way, telling: Telling) -> str:
    """Return that no one value clears all the points, with the range of each."""
    wants: dict[tuple[float, float], list[int]] = {}
    for point, remedy in way.wants:
        wants.setdefault((remedy.low.value, remedy.high.value), []).append(point.number)
    first = way.ranges[0]
    each = [
        f"{_and(sorted(set(wants[remedy.low.value, remedy.high.value])))} wants {telling.span(remedy)}"
        for remedy in way.ranges
    ]
    who, what = telling.names.one(first.subject), telling.one_way(first)
    return f"{who}: no one {what} clears both ({telling.now(first)} now): {', '.join(each)}"


def _and(numbers: list[int]) -> str:
    return " and ".join(str(number) for number in numbers)


def other_actions(entry: Entry, telling: Telling, *, has_remedy: bool) -> Iterator[str]:
    """Yield what to do about a line beside its remedies: a hint of the house, what to measure again, its waiver."""
    rule = telling.rule(entry.first)
    if not has_remedy and rule is not None and "hint" in rule.says:
        yield one_line(rule.says["hint"])
    if entry.first.unheld is not None:
        yield f"its waiver {telling.unheld(entry.first.unheld)}"


def again_of(entry: Entry, telling: Telling) -> str:
    """Return what to measure again, or to choose, so that a line is decided: told once of a pair."""
    agains = [verdict.again for verdict in entry.verdicts if verdict.again is not None]
    return telling.agains(agains) if agains else ""
