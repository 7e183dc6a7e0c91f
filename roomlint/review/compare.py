"""Compares a review with an earlier one: decisions of the house, waivers and the design apart from each other.

Figures are compared, on the window of today: nothing gets better because a window was moved.
"""

from __future__ import annotations

from dataclasses import replace
from functools import cached_property
from typing import TYPE_CHECKING

from roomlint.review.change import change_of
from roomlint.review.earlier import FINGERPRINT, Earlier, decided_by, earlier_of, fingerprint
from roomlint.review.followed import followed
from roomlint.review.read_sarif import NotOursError, is_json, read_sarif
from roomlint.review.review import Decided, Departed, HouseChange
from roomlint.review.standing import standing, standing_changes, whole
from roomlint.review.verdict import By, Change, Kind, State, Verdict, Way
from roomlint.review.waivers import accepts
from roomlint.source.files import ROOM_ENDINGS, from_top

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator, Mapping, Sequence

    from roomlint.design.house import House
    from roomlint.review.review import Review, RoomReview, StandingChange
    from roomlint.review.rule import AnyRule

__all__ = ["FINGERPRINT", "NotOursError", "compare", "earlier_of", "fingerprint", "is_json", "read_sarif"]

_CURED_BY_HOUSE = (Way.GONE, By.HOUSE)


def _always(_: str) -> bool:
    return True


def compare(
    review: Review,
    earlier: Earlier,
    renamed: Mapping[str, str] | None = None,
    is_there: Callable[[str], bool] = _always,
) -> Review:
    """Return the review with how each verdict stands to the earlier one, and which failures are gone.

    `renamed` leads from a file to its earlier name, as git found it; without that a room is followed by its project's
    code. `is_there` says of an earlier room whether it still is one that the review could have held. Files are named
    from the top of the repository.
    """
    comparing = _Comparing(review, earlier, renamed or {})
    done = (comparing.room(room) for room in review.rooms)
    rooms: Sequence[RoomReview]
    if isinstance(review.rooms, tuple):
        rooms = tuple(done)
    else:
        from roomlint.review.spool import spooled  # loads only when there are many rooms

        rooms = spooled(done)
    return replace(
        review,
        rooms=rooms,
        against=_name(earlier),
        house_changes=tuple(comparing.house_changes()),
        standing_changes=tuple(comparing.standing_changes()),
        departed=tuple(comparing.departed(is_there)),
    )


def _name(earlier: Earlier) -> str:
    """Return what the earlier review is called; files that could not be read then are told with it."""
    unread = sorted(earlier.unread)
    most = 3
    more = " ..." if len(unread) > most else ""
    return f"{earlier.name} ({', '.join(unread[:most])}{more} could not be read there)" if unread else earlier.name


class _Comparing:
    """One comparison: each room with its own earlier one, and the houses that the rooms are judged under."""

    def __init__(self, review: Review, earlier: Earlier, renamed: Mapping[str, str]) -> None:
        self._earlier = earlier
        self._renamed = renamed
        self._rules = {(rule.id, rule.package): rule for rule in review.rules}
        self._houses: dict[str, dict[str, Decided]] = {}
        self._standing: dict[str, dict[str, str]] = {}
        self._files: dict[str, str] = {}
        """House file as it is shown to the one from the top."""
        self._matched: set[str] = set()
        self._review = review

    def room(self, room: RoomReview) -> RoomReview:
        """Return a room with how each of its verdicts stands."""
        file = from_top(room.file)
        then_file = self._then(file, room)
        self._matched.add(then_file)
        then = self._earlier.room(then_file)
        if then is None and any(name == then_file or not name.endswith(ROOM_ENDINGS) for name in self._earlier.unread):
            # What it needs could not be read then: nobody knows what is new of it.
            return room
        was = _of_code(then.verdicts, self._earlier.codes[then_file], room.code) if then is not None else {}
        was = followed(was, room.verdicts)
        now = self._house(room.house)
        before = self._earlier.houses.get(self._files[room.house.file], {})
        ran = {rule for rule, _ in was}
        runs = {verdict.rule for verdict in room.verdicts}
        verdicts: list[Verdict] = []
        keys = set()
        for verdict in room.verdicts:
            key = (verdict.rule, verdict.subject)
            keys.add(key)
            made = change_of(verdict, was.get(key))
            if made.by is By.HOUSE and self._is_by_case(verdict.rule, before, now):
                made = replace(made, by=By.DESIGN)
            if made.state is State.NEW and then is not None and verdict.rule not in ran:
                made = replace(made, by=By.HOUSE)
            verdicts.append(replace(verdict, change=made))
        gone = [
            replace(failed, change=Change(State.ABSENT, Way.GONE, _gone_by(failed, runs), was=str(failed.level)))
            for key, failed in was.items()
            if failed.kind is Kind.FAIL and key not in keys
        ]
        verdicts = _idle_by_house(verdicts, gone)
        was_file = then_file if then is not None and then_file != file else ""
        sheets = then.sheets if then is not None else {}
        return replace(
            room,
            verdicts=tuple(verdicts),
            gone=tuple(gone),
            compared=True,
            was_file=was_file,
            sheets_changed=tuple(name for name, now in room.sheets.items() if sheets.get(name, now) != now),
            was_scene=then.scene if then is not None else None,
        )

    def _is_by_case(self, rule_id: str, was: Mapping[str, Decided], now: Mapping[str, Decided]) -> bool:
        """Return whether a rule's window follows from the design, and no house has decided it otherwise."""
        rule = self._rule(rule_id)
        if rule is None or not self._same(rule_id, was.get(rule_id), now.get(rule_id)):
            return False
        return len(rule.rows()) > 1 or any(windows is None for _, windows in rule.rows())

    def _then(self, file: str, room: RoomReview) -> str:
        """Return a room's file in the earlier review: by its name, as git followed it, or by the project's code."""
        if file in self._renamed:
            return self._renamed[file]
        codes = self._earlier.codes
        if file in codes or not room.code:
            return file
        alike = [name for name, code in codes.items() if code == room.code]
        if len(alike) != 1 or alike[0] in self._present:
            return file
        return alike[0]

    @cached_property
    def _present(self) -> frozenset[str]:
        """The files of today's rooms; asked for only when one has no earlier name."""
        return frozenset(from_top(room.file) for room in self._review.rooms)

    def _house(self, house: House) -> dict[str, Decided]:
        if house.file not in self._files:
            self._files[house.file] = from_top(house.file) if house.file else ""
            self._houses[self._files[house.file]] = decided_by(house)
            self._standing[self._files[house.file]] = standing(house)
        return self._houses[self._files[house.file]]

    def house_changes(self) -> Iterator[HouseChange]:
        """Yield what the houses decide otherwise than before, by file and rule."""
        for file in sorted(self._houses):
            was, now = self._earlier.houses.get(file, {}), self._houses[file]
            for rule_id in sorted(was.keys() | now.keys()):
                before, after = was.get(rule_id), now.get(rule_id)
                if not self._same(rule_id, before, after):
                    yield HouseChange(file, rule_id, self._way(rule_id, before, after), before, after)

    def standing_changes(self) -> Iterator[StandingChange]:
        """Yield what the houses decide about the stages otherwise than before, by file."""
        stood = self._earlier.standing
        if stood is None:
            return
        for file, now in sorted(self._standing.items()):
            yield from standing_changes(file, whole(stood.get(file, {})), now)

    def _rule(self, rule_id: str) -> AnyRule | None:
        return next((rule for (name, _), rule in self._rules.items() if name == rule_id), None)

    def _same(self, rule_id: str, was: Decided | None, now: Decided | None) -> bool:
        """Return whether two decisions say the same, in whatever units they are written."""
        if was is None or now is None or (was.level, was.is_own) != (now.level, now.is_own):
            return was == now
        rule = self._rule(rule_id)
        if was == now or rule is None or rule.unit is None:
            return was == now
        return _edges(rule.unit, was) == _edges(rule.unit, now)

    def _way(self, rule_id: str, was: Decided | None, now: Decided | None) -> str:
        if now is None and was is not None and was.is_own:
            return "removed"
        if was is None and now is not None and now.is_own:
            return "added"
        rule = self._rule(rule_id)
        moved = _moved(rule, was, now) if rule is not None else {0}
        if moved <= {0}:
            return "changed"
        return "changed" if {-1, 1} <= moved else "loosened" if 1 in moved else "tightened"

    def departed(self, is_there: Callable[[str], bool]) -> Iterator[Departed]:
        """Yield the rooms of the earlier review that are no longer there."""
        for file, code in sorted(self._earlier.codes.items()):
            if file not in self._matched and not is_there(file):
                failures = sum(
                    verdict.kind is Kind.FAIL and verdict.waived is None
                    for verdict in self._earlier.load(file).verdicts.values()
                )
                yield Departed(file, code, failures)


def _of_code(verdicts: Mapping[tuple[str, str], Verdict], was: str, now: str) -> Mapping[tuple[str, str], Verdict]:
    """Return earlier verdicts under today's code of the project, which names the room in what is judged as a whole."""
    if was == now or not was:
        return verdicts
    renamed = {f"design/{was}": f"design/{now}"}
    return {
        (rule, "+".join(renamed.get(part, part) for part in subject.split("+"))): verdict
        for (rule, subject), verdict in verdicts.items()
    }


def _edges(unit: str, decided: Decided) -> tuple[float | str | None, ...]:
    """Return the edges of a decision in a unit, to nine digits; as they are written where they do not fit."""
    from roomlint.review.units import in_unit

    try:
        return tuple(
            float(f"{in_unit(text, unit):.9g}") if text is not None else None for text in (decided.low, decided.high)
        )
    except (ValueError, KeyError):
        return decided.low, decided.high


def _moved(rule: AnyRule, was: Decided | None, now: Decided | None) -> set[int]:
    """Return which ways a decision moved a rule: 1 is looser, -1 is tighter."""
    from roomlint.review.house_check import gravest, own_window, wider
    from roomlint.review.units import in_unit
    from roomlint.review.verdict import Level

    levels = [Level(one.level) if one is not None and one.level is not None else gravest(rule) for one in (was, now)]
    moved = {(levels[0].rank > levels[1].rank) - (levels[0].rank < levels[1].rank)}
    window = own_window(rule)
    if window is None:
        return moved
    try:
        edges = [
            [
                in_unit(text, window.unit) if one is not None and (text := getattr(one, key)) is not None else own
                for key, own in (("low", window.low), ("high", window.high))
            ]
            for one in (was, now)
        ]
    except (ValueError, KeyError):
        return moved
    for side, outwards in ((0, -1), (1, 1)):
        before, after = edges[0][side], edges[1][side]
        moved.add(int(wider(after, before, outwards)) - int(wider(before, after, outwards)))
    return moved


def _gone_by(failed: Verdict, runs: set[str]) -> By:
    """Return why a failure is gone: its rule no longer runs, or what it was about is no longer there."""
    return By.DESIGN if failed.rule in runs else By.HOUSE


def _idle_by_house(verdicts: list[Verdict], gone: list[Verdict]) -> list[Verdict]:
    """Return verdicts with a finding about a waiver told as the house's doing where the house cured what it accepts."""
    cured = [
        one
        for one in (*verdicts, *gone)
        if one.change is not None and (one.change.way, one.change.by) == _CURED_BY_HOUSE
    ]
    if not cured:
        return verdicts
    return [
        replace(verdict, change=replace(verdict.change, by=By.HOUSE))
        if verdict.change is not None
        and verdict.change.way is Way.NEW
        and any(accepts(verdict, other) for other in cured)
        else verdict
        for verdict in verdicts
    ]
