"""What changed since an earlier revision: the house's decisions, waivers and the design are told apart."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from roomlint.report.merging import Entry, merged
from roomlint.report.units import METRIC, US, Units
from roomlint.report.words import acceptance, house_change, place_key, standing_change
from roomlint.review.house_check import gravest
from roomlint.review.verdict import By, Change, Kind, State, Verdict, Way
from roomlint.source.say import leans_customary, one_line

if TYPE_CHECKING:
    from collections.abc import Iterator

    from roomlint.report.telling import Telling
    from roomlint.review.review import Departed, HouseChange, Review, RoomReview
    from roomlint.review.rule import AnyRule

WAYS: Final = (Way.NEW, Way.WORSE, Way.BETTER, Way.GONE, Way.UNKNOWN, Way.CLOSE)
"""How design changes are listed."""
OWN: Final = "the rule book's own"
MOST_CASES: Final = 3
TITLES: Final = {
    Way.NEW: "new",
    Way.WORSE: "worse",
    Way.BETTER: "better",
    Way.GONE: "cured",
    Way.UNKNOWN: "newly unknown",
    Way.CLOSE: "newly for a person to decide",
}


def house_lines(review: Review) -> list[str]:
    """Return the decisions of the houses that changed, by file."""
    rules = {rule.id: rule for rule in review.rules}
    stages = [f"{one_line(change.file)}: {standing_change(change)}" for change in review.standing_changes]
    return stages + [
        f"{one_line(change.file)}: {house_change(change, _rule_book(change, rules.get(change.rule)))}"
        for change in review.house_changes
    ]


def _rule_book(change: HouseChange, rule: AnyRule | None) -> str:
    """Return what the rule book itself says of what a house decides: its windows, its one level."""
    given = change.now or change.was
    if rule is None or given is None:
        return OWN
    parts = []
    if (given.low, given.high) != (None, None):
        # In the units that the house decides in.
        us = sum(leans_customary(text) for text in (given.low, given.high) if text is not None) > 0
        parts.append(_windows(rule, Units(US if us else METRIC)))
    if given.level is not None:
        parts.append(f"level {gravest(rule)}")
    return ", ".join(parts) or OWN


def _windows(rule: AnyRule, units: Units) -> str:
    """Return the windows of a rule by case, as long as that is short."""
    known = [(case, windows.window) for case, windows in rule.rows() if windows is not None]
    if not known or len(known) < len(rule.rows()) or len(known) > MOST_CASES:
        return OWN
    if len(known) == 1:
        return units.window(known[0][1])
    return ", ".join(f"{units.window(window)} {case.partition(':')[0]}" for case, window in known)


def departed_words(room: Departed) -> str:
    """Return that a room is no longer there, and what went with it."""
    name = one_line(room.code or room.file)
    gone = f"{name} is no longer there ({one_line(room.file)})"
    many = "failure was" if room.failures == 1 else "failures were"
    return f"{gone}; its {room.failures} {many} not cured" if room.failures else gone


def has_changed(room: RoomReview) -> bool:
    """Return whether anything of a room is told in a comparison."""
    if room.gone or room.was_file or room.sheets_changed:
        return True
    return any(
        verdict.change is not None and (verdict.change.way is not None or verdict.change.by is By.WAIVER)
        for verdict in room.verdicts
    )


def of_waivers(room: RoomReview, telling: Telling) -> Iterator[str]:
    """Yield what changed about accepted failures."""
    for verdict in sorted(room.verdicts, key=place_key):
        change = verdict.change
        if change is None or change.by is not By.WAIVER or verdict.kind is not Kind.FAIL:
            continue
        who = f"{telling.names.subject(verdict)} [{verdict.rule}]"
        if verdict.waived is None:
            why = f"; its waiver {telling.unheld(verdict.unheld)}" if verdict.unheld is not None else ""
            yield f"{who}: no longer accepted{why}"
        elif change.was_waived:
            yield f"{who}: {acceptance(verdict.waived)} It was accepted otherwise before."
        else:
            yield f"{who}: {acceptance(verdict.waived)}"


def of_design(room: RoomReview, telling: Telling, way: Way, by: By = By.DESIGN) -> list[Entry]:
    """Return what went one way because the design, or the house, is another; the gravest first."""
    chosen = [
        verdict
        for verdict in (*room.verdicts, *room.gone)
        if (change := verdict.change) is not None and change.way is way and change.by is by
    ]
    entries = merged(chosen, telling, moved=True)
    entries.sort(key=lambda entry: -(entry.first.level.rank if entry.first.level is not None else 0))
    return [_cured(entry) for entry in entries] if way is Way.GONE else entries


def _cured(entry: Entry) -> Entry:
    """Say of a failure that is gone what became of it."""
    change = entry.first.change or Change(State.ABSENT)
    if change.state is State.ABSENT:
        return Entry(entry.verdicts, entry.who, f"no longer there (was {change.was}: {entry.says})")
    if entry.first.kind is Kind.NOT_APPLICABLE:
        return Entry(entry.verdicts, entry.who, f"no longer applies: {entry.says}")
    return Entry(entry.verdicts, entry.who, f"{entry.says} (was {change.was})")


def is_as_before(verdict: Verdict) -> bool:
    """Return whether a verdict stands as it stood."""
    change = verdict.change
    return change is not None and change.way is None and change.by is not By.WAIVER
