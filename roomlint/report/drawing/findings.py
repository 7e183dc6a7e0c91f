"""The findings as a drawing lists them: in the report's own words and numbers, with what they are about."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING, Final

from roomlint.report.asking import lacks
from roomlint.report.changes import of_design
from roomlint.report.merging import merged
from roomlint.report.names import about, key_words
from roomlint.report.page import LETTERS, Footnotes
from roomlint.report.points import again_of, by_element, other_actions, points_of
from roomlint.report.words import acceptance
from roomlint.review.verdict import By, Kind, Way
from roomlint.source.say import one_line

if TYPE_CHECKING:
    from collections.abc import Iterator

    from roomlint.report.merging import Entry
    from roomlint.report.telling import Telling
    from roomlint.review.review import RoomReview
    from roomlint.review.verdict import Verdict

LEVELS: Final = {
    "error": "Errors",
    "warning": "Warnings",
    "note": "Notes",
    "review": "For a person to decide",
    "open": "Not known",
    "accepted": "Accepted on record",
    "gone": "Gone since the earlier revision",
}
"""Level to the heading of its list, in the order that they are listed."""
SAID: Final = {
    "error": "error", "warning": "warning", "note": "note", "review": "to decide", "open": "not known",
    "accepted": "accepted", "gone": "gone",
}  # fmt: skip

_CIRCUIT: Final = "circuit/"
_RECEPTACLE: Final = "receptacle/"


@dataclass(frozen=True, slots=True)
class Finding:
    """One line of the list."""

    id: str
    number: str
    level: str
    text: str
    actions: tuple[str, ...]
    keys: tuple[str, ...]
    """The elements that it is about, as verdicts name them."""
    verdicts: tuple[Verdict, ...]
    rules: tuple[str, ...] = ()
    marks: tuple[str, ...] = ()
    """Letters of its cautions."""

    @property
    def is_marked(self) -> bool:
        """Whether it has a number on the drawing."""
        return self.level not in {"open", "accepted", "gone"}


@dataclass(frozen=True, slots=True)
class Listing:
    """All that is listed beside a drawing, and the cautions that belong to it."""

    findings: tuple[Finding, ...]
    cautions: tuple[tuple[str, str], ...]

    def of(self, level: str) -> tuple[Finding, ...]:
        """Return the findings of a level."""
        return tuple(finding for finding in self.findings if finding.level == level)


def listing(room: RoomReview, telling: Telling, prefix: str = "") -> Listing:
    """Return what a review found: points, what a person decides, what is not known, what is accepted, what is gone.

    `prefix` begins every id, so that the rooms of one page have ids of their own.
    """
    footnotes, found = Footnotes(), []
    for point in points_of(room, telling):
        told = (*point.entry.verdicts, *point.entry.beside)
        seen = f" (see {' and '.join(map(str, point.seen))})" if point.seen else ""
        found.append(
            _finding(
                str(point.number), point.level.value, f"{point.entry.text}{seen}", tuple(point.actions), told,
                telling, footnotes,
            )
        )  # fmt: skip
    reviews = [verdict for verdict in room.verdicts if verdict.kind is Kind.REVIEW]
    for count, entry in enumerate(by_element(merged(reviews, telling))):
        actions = tuple(filter(None, (again_of(entry, telling), *other_actions(entry, telling, has_remedy=False))))
        found.append(_finding(_letter(count), "review", entry.text, actions, entry.verdicts, telling, footnotes))
    found += _lacking(room, telling)
    accepted = [verdict for verdict in room.verdicts if verdict.waived is not None]
    for count, entry in enumerate(merged(accepted, telling), start=1):
        waived = entry.first.waived
        found.append(_unmarked(f"w{count}", "accepted", entry, (acceptance(waived),) if waived is not None else ()))
    cured = [entry for by in By for entry in of_design(room, telling, Way.GONE, by)]
    for count, entry in enumerate(cured, start=1):
        found.append(_unmarked(f"g{count}", "gone", entry))
    found = [replace(one, id=f"{prefix}{one.id}") for one in found]
    return Listing(tuple(found), tuple((mark, text) for text, mark in footnotes.marks.items()))


def _letter(count: int) -> str:
    """Return A, B ... Z, A1 ...: what a person decides is lettered, so that no number stands twice."""
    more, at = divmod(count, len(LETTERS))
    return f"{LETTERS[at].upper()}{more or ''}"


def _finding(
    number: str, level: str, text: str, actions: tuple[str, ...], verdicts: tuple[Verdict, ...], telling: Telling,
    footnotes: Footnotes,
) -> Finding:  # fmt: skip
    rules = tuple(dict.fromkeys(verdict.rule for verdict in verdicts))
    known = {verdict.rule: telling.rule(verdict) for verdict in verdicts}
    marks = dict.fromkeys(
        mark for rule in known.values() if rule is not None for mark in footnotes.of(rule.caution, 1) if rule.caution
    )
    change = verdicts[0].change
    way = f" ({change.way.value})" if change is not None and change.way is not None else ""
    return Finding(
        f"f{number}", number, level, one_line(f"{text}{way}"), actions, _keys(verdicts), verdicts, rules, tuple(marks)
    )


def _keys(verdicts: tuple[Verdict, ...]) -> tuple[str, ...]:
    return tuple(dict.fromkeys(key for verdict in verdicts for key in _marked(about(verdict.subject).elements)))


def _marked(elements: tuple[str, ...]) -> Iterator[str]:
    """Yield the keys that a drawing's marks have: a receptacle has its name within its circuit only."""
    circuit = next((key for key in elements if key.startswith(_CIRCUIT)), "")
    for key in elements:
        yield f"{key}+{circuit}" if circuit and key.startswith(_RECEPTACLE) else key


def _lacking(room: RoomReview, telling: Telling) -> list[Finding]:
    found = []
    for count, lack in enumerate(lacks(room.verdicts), start=1):
        keys = ", ".join(dict.fromkeys(key_words(key) for key in lack.wanted))
        text = one_line(f"{telling.names.one(lack.subject)}: {keys}")
        above = next((one.above[0] for one in lack.wanted.values() if one.above), "")
        elements = (lack.subject, f"{_CIRCUIT}{above.removeprefix('id: ')}")
        key = next(_marked(elements)) if lack.subject.startswith(_RECEPTACLE) else lack.subject
        found.append(Finding(f"u{count}", "", "open", text, (), (key,), ()))
    return found


def _unmarked(name: str, level: str, entry: Entry, actions: tuple[str, ...] = ()) -> Finding:
    rules = tuple(dict.fromkeys(verdict.rule for verdict in entry.verdicts))
    return Finding(name, "", level, one_line(entry.text), actions, _keys(entry.verdicts), entry.verdicts, rules)
