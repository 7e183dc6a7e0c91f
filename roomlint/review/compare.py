"""Compares a review with an earlier one: decisions of the house, waivers and the design apart from each other.

Figures are compared, on the window of today: nothing gets better because a window was moved.
"""

from __future__ import annotations

from dataclasses import replace
from functools import cached_property
from typing import TYPE_CHECKING

from roomlint.review.earlier import FINGERPRINT, Earlier, decided_by, earlier_of, fingerprint
from roomlint.review.followed import followed
from roomlint.review.read_sarif import NotOursError, is_json, read_sarif
from roomlint.review.review import Decided, Departed, HouseChange
from roomlint.review.rule import GUARDED
from roomlint.review.standing import standing, standing_changes, whole
from roomlint.review.verdict import By, Change, Kind, State, Verdict, Way
from roomlint.review.waivers import accepts
from roomlint.review.window import Window, decide
from roomlint.source.dimensions import last_digit
from roomlint.source.files import ROOM_ENDINGS, from_top

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator, Mapping, Sequence

    from roomlint.design.house import House
    from roomlint.measure.figure import Figure
    from roomlint.review.review import Review, RoomReview, StandingChange
    from roomlint.review.rule import AnyRule

__all__ = ["FINGERPRINT", "NotOursError", "compare", "earlier_of", "fingerprint", "is_json", "read_sarif"]

SAME = 1e-6
"""Figures nearer than this part of their size are the same: another machine's last bits are no change."""
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
            made = _change(verdict, was.get(key))
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


def _change(verdict: Verdict, was: Verdict | None) -> Change:
    if was is None:
        return Change(State.NEW, _appeared(verdict))
    before = str(was.level or was.kind)
    figure = was.figure if _differ(verdict, was.figure) else None
    window = was.window if _other(verdict.window, was.window) else None
    way, by = _way(verdict, was, figure, window)
    same = (verdict.kind, verdict.level, verdict.waived is None) == (was.kind, was.level, was.waived is None)
    state = State.UNCHANGED if same and way is None and figure is None and window is None else State.UPDATED
    return Change(state, way, by, before, figure, window, was.waived is not None)


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
