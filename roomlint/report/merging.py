"""Puts verdicts that say one thing together: the pair, the seats, the whole row."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Final

from roomlint.measure.figure import Figure
from roomlint.report.names import about
from roomlint.report.telling import template_of
from roomlint.report.words import place_key
from roomlint.review.verdict import Kind

if TYPE_CHECKING:
    from collections.abc import Hashable, Iterable

    from roomlint.report.telling import Telling
    from roomlint.review.verdict import Fact, Verdict

NAMED_SEATS: Final = 2
"""Up to so many seats are named; more are counted."""


@dataclass(frozen=True, slots=True)
class Entry:
    """Verdicts that are told as one line."""

    verdicts: tuple[Verdict, ...]
    who: str
    says: str

    @property
    def first(self) -> Verdict:
        """The one that stands first in the file."""
        return self.verdicts[0]

    @property
    def text(self) -> str:
        """Who, and what."""
        return f"{self.who}: {self.says}"


def merged(verdicts: Iterable[Verdict], telling: Telling, *, moved: bool = False) -> list[Entry]:
    """Return verdicts as lines, in the order of the file; with `moved` those that moved stand each alone."""
    groups: dict[Hashable, list[Verdict]] = {}
    for number, verdict in enumerate(sorted(verdicts, key=place_key)):
        alone = moved and verdict.change is not None and verdict.change.before is not None
        groups.setdefault(number if alone else _key(verdict, telling), []).append(verdict)
    return [_entry(group, telling, moved=moved) for group in groups.values()]


def _entry(group: list[Verdict], telling: Telling, *, moved: bool) -> Entry:
    return Entry(tuple(group), _who(group, telling), telling.sentence(group, moved=moved))


def _key(verdict: Verdict, telling: Telling) -> Hashable:
    """Return what verdicts share that are told as one: all but the figures and the elements."""
    wanted = verdict.wanted
    facts = tuple((name, _plain(fact, telling)) for name, fact in sorted(verdict.facts.items()))
    return (
        verdict.rule,
        verdict.kind,
        verdict.level,
        template_of(verdict, telling.rule(verdict)),
        verdict.window,
        facts,
        verdict.because if verdict.figure is None else "",
        verdict.waived is None,
        (wanted.key, wanted.subject in verdict.subject.split("+") or wanted.subject) if wanted is not None else None,
        verdict.follows,
        (verdict.change.way, verdict.change.by) if verdict.change is not None else None,
    )


def _plain(fact: Fact, telling: Telling) -> Hashable:
    """Return a fact as it is compared: a figure by what is read of it, such as a delay to enter."""
    return telling.units.figure(fact) if isinstance(fact, Figure) else fact


def _who(group: list[Verdict], telling: Telling) -> str:
    """Return whom a line is about, such as `left, right` or `side-left at 4 of 5 seats`."""
    if len(group) == 1:
        return telling.names.subject(group[0])
    seats: dict[tuple[str, ...], dict[str, None]] = {}
    for verdict in group:
        found = about(verdict.subject)
        seats.setdefault(found.elements, {}).update(dict.fromkeys(found.seats))
    where: dict[str, list[str]] = {}
    for elements, at in seats.items():
        where.setdefault(_seats(elements, list(at), group[0], telling), []).append(telling.names.several(elements))
    return "; ".join(", ".join(dict.fromkeys(names)) + at for at, names in where.items())


def _seats(elements: tuple[str, ...], seats: list[str], verdict: Verdict, telling: Telling) -> str:
    if not seats:
        return ""
    judged = {
        seat
        for other in telling.room.verdicts
        if other.rule == verdict.rule and other.kind is not Kind.NOT_APPLICABLE
        for found in (about(other.subject),)
        if found.elements == elements
        for seat in found.seats
    }
    if len(seats) <= NAMED_SEATS and len(seats) < len(judged):
        return f" at {telling.names.several(seats)}"
    if len(seats) >= len(judged):
        return f" at all {len(seats)} seats" if len(seats) > 1 else f" at {telling.names.several(seats)}"
    return f" at {len(seats)} of {len(judged)} seats"
