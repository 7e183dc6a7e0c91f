"""Puts verdicts that say one thing together: the pair, the seats, the whole row, the rules that say the same."""

from __future__ import annotations

import re
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING, Final

from roomlint.measure.figure import Figure
from roomlint.report.names import about
from roomlint.report.telling import template_of
from roomlint.report.units import SIDES
from roomlint.report.words import place_key
from roomlint.review.verdict import Kind

if TYPE_CHECKING:
    from collections.abc import Hashable, Iterable, Mapping

    from roomlint.report.telling import Telling
    from roomlint.review.verdict import Fact, Verdict

NAMED_SEATS: Final = 2
"""Up to so many seats are named; more are counted."""
_VERB: Final = re.compile(
    r"(is|has|stands|hangs|falls|tips|sits|loses|leaves|reaches|needs|crosses|plays|faces|arrives|lies|draws|weighs|hears|bears)\b"
)
"""Verbs that findings start with, after the name of one element, and of which many tell of one thing only."""
_OF_ONE: Final = re.compile(
    r"(accepts|asks|bridges|brings|carries|claims|cuts|declares|departs|drives|ends|feeds|follows|gets|gives|holds|keeps|looks|measures"
    r"|meets|moves|names|notches|overlaps|passes|puts|runs|sees|shares|takes|uses|wants|was)\b"
)
"""Verbs that findings start with and that are told of each of several."""
_ITS: Final = re.compile(r"\b(its|it|itself)\b|\b(and|or) (is|has|drives|rises|carries)\b")
_OWN: Final = re.compile(r"\bits\b|\bit(?=$|[;,:.])")
_ALONE: Final = re.compile(r"\b(it|itself|together)\b")
_SIDE: Final = re.compile(r"\b(left|right)\b")
_PLURAL: Final = {"is": "are", "has": "have", "reaches": "reach", "crosses": "cross"}


@dataclass(frozen=True, slots=True)
class Entry:
    """Verdicts that are told as one line."""

    verdicts: tuple[Verdict, ...]
    who: str
    says: str
    beside: tuple[Verdict, ...] = ()
    """What is told in the same breath: other rules' findings of the same thing."""

    @property
    def first(self) -> Verdict:
        """The one that stands first in the file."""
        return self.verdicts[0]

    @property
    def text(self) -> str:
        """Who, and what."""
        return f"{self.who}: {self.says}"

    @property
    def rules(self) -> int:
        """How many rules say it."""
        return len({verdict.rule for verdict in self.verdicts})


def merged(
    verdicts: Iterable[Verdict],
    telling: Telling,
    *,
    moved: bool = False,
    beside: Mapping[int, tuple[Verdict, ...]] | None = None,
) -> list[Entry]:
    """Return verdicts as lines, in the order of the file; with `moved` only what moved alike is told as one.

    `beside`: by the identity of a verdict, what is told in one breath with it.
    """
    groups: dict[Hashable, list[Verdict]] = {}
    told = beside or {}
    for verdict in sorted(verdicts, key=place_key):
        with_it = tuple(sorted({other.rule for other in told.get(id(verdict), ())}))
        key: Hashable = (_key(verdict, telling), with_it, _move(verdict, telling) if moved else "")
        groups.setdefault(key, []).append(verdict)
    return _alike([_entry(group, telling, told, moved=moved) for group in groups.values()])


def _alike(entries: list[Entry]) -> list[Entry]:
    """Return lines so that what several rules say of the same elements in the same words is one of them."""
    found: dict[Hashable, Entry] = {}
    for number, entry in enumerate(entries):
        first = entry.first
        key: Hashable = (entry.text, first.kind, first.level, first.waived, first.change)
        if entry.beside:
            key = number
        same = found.get(key)
        found[key] = replace(same, verdicts=same.verdicts + entry.verdicts) if same is not None else entry
    return list(found.values())


def _entry(group: list[Verdict], telling: Telling, told: Mapping[int, tuple[Verdict, ...]], *, moved: bool) -> Entry:
    says = telling.sentence(group, moved=moved)
    if len({about(verdict.subject).elements for verdict in group}) > 1:
        says = of_several(says)
    beside = tuple(other for verdict in group for other in told.get(id(verdict), ()))
    by_rule: dict[str, list[Verdict]] = {}
    for other in beside:
        by_rule.setdefault(other.rule, []).append(other)
    words = [telling.in_one_breath(others) for others in by_rule.values()]
    return Entry(tuple(group), _who(group, telling), "; ".join([says, *(one for one in words if one)]), beside)


def of_several(says: str) -> str:
    """Return what is said of one element as it is said of several: in the plural, or of each."""
    found = _VERB.match(says)
    if found is None and _OF_ONE.match(says) is None:
        theirs = _OWN.sub(lambda own: "their" if own[0] == "its" else "them", says)
        return f"for each, {says}" if _ITS.search(says) and _ALONE.search(theirs) else theirs
    if found is None or _ITS.search(says):
        return f"each {says}"
    return _PLURAL.get(found[0], found[0].removesuffix("s")) + says[found.end() :]


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


def _move(verdict: Verdict, telling: Telling) -> str:
    """Return what is read of a figure before and after, the two sides of the room as one; empty where none moved."""
    if verdict.change is None or verdict.change.before is None:
        return ""
    text = telling.sentence([verdict], moved=True)
    figure = verdict.figure
    is_sided = figure is not None and figure.name in SIDES and len(_SIDE.findall(text)) == 1
    return _SIDE.sub("", text) if is_sided else text


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
    where: dict[str, list[tuple[str, ...]]] = {}
    for elements, at in seats.items():
        where.setdefault(_seats(elements, list(at), group[0], telling), []).append(elements)
    return "; ".join(f"{telling.names.groups(names)}{at}" for at, names in where.items())


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
