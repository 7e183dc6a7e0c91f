"""What an earlier review found, kept room by room so that a comparison holds one room at a time."""

from __future__ import annotations

import hashlib
from dataclasses import dataclass, field
from typing import TYPE_CHECKING

from roomlint.review.review import Decided
from roomlint.review.standing import written
from roomlint.source.files import ROOM_ENDINGS, from_top

if TYPE_CHECKING:
    from collections.abc import Callable, Collection, Mapping

    from roomlint.design.house import House
    from roomlint.measure.scene import Scene
    from roomlint.review.review import Review, RoomReview
    from roomlint.review.verdict import Verdict

FINGERPRINT = "roomlint/v1"


def fingerprint(file: str, verdict: Verdict) -> str:
    """Return what identifies a verdict over the years: rule, file and element ids, never lines or wording.

    `file` is the room's, from the top of its repository.
    """
    text = f"{verdict.rule}\n{file}\n{verdict.subject}"
    return hashlib.sha256(text.encode("utf-8", "backslashreplace")).hexdigest()[:32]


@dataclass(frozen=True, slots=True)
class EarlierRoom:
    """The verdicts of one room in an earlier review, by rule and subject."""

    file: str
    verdicts: Mapping[tuple[str, str], Verdict]
    sheets: Mapping[str, str] = field(default_factory=dict)
    """A digest of each product sheet that it used; a report keeps none."""
    scene: Scene | None = None
    """What a drawing showed of it, where one is wanted."""


@dataclass(frozen=True, slots=True)
class Earlier:
    """An earlier review: which rooms it had, each loaded when it is asked for, and what the houses decided."""

    name: str
    codes: Mapping[str, str]
    """File from the top of the repository to the project's code."""
    load: Callable[[str], EarlierRoom]
    houses: Mapping[str, Mapping[str, Decided]] = field(default_factory=dict)
    """House file to what it decided, by rule."""
    unread: frozenset[str] = frozenset()
    """Files that could not be read then."""
    standing: Mapping[str, Mapping[str, str]] | None = None
    """House file to what it decided about the stages; None where nobody recorded that."""

    def room(self, file: str) -> EarlierRoom | None:
        """Return what a room file had, None when it was not there."""
        return self.load(file) if file in self.codes else None


def earlier_of(review: Review, name: str, still: Review | None = None, same: Collection[str] = ()) -> Earlier:
    """Return a review as an earlier one.

    `still` is today's, of which the rooms of the `same` files, from the top of the repository, were the same then.
    """
    places: dict[str, tuple[Review, int]] = {}
    codes: dict[str, str] = {}
    houses: dict[str, Mapping[str, Decided]] = {}
    stood: dict[str, Mapping[str, str]] = {}
    for of in (review, still) if still is not None else (review,):
        for index, room in enumerate(of.rooms):
            file = from_top(room.file)
            if of is still and file not in same:
                continue
            places[file], codes[file] = (of, index), room.code
            if room.house.file:
                houses.setdefault(from_top(room.house.file), decided_by(room.house))
                stood.setdefault(from_top(room.house.file), written(room.house))

    def load(file: str) -> EarlierRoom:
        of, index = places[file]
        return of_room(file, of.rooms[index])

    unread = {from_top(problem.place.file) for problem in review.problems}
    if still is not None and same:
        found = {from_top(problem.place.file) for problem in still.problems}
        unread |= {file for file in found if file in same or not file.endswith(ROOM_ENDINGS)}
    return Earlier(name, codes, load, houses, frozenset(unread), stood)


def of_room(file: str, room: RoomReview) -> EarlierRoom:
    """Return a room's review as an earlier one."""
    verdicts = {(verdict.rule, verdict.subject): verdict for verdict in room.verdicts}
    return EarlierRoom(file, verdicts, room.sheets, room.scene)


def decided_by(house: House) -> dict[str, Decided]:
    """Return what a house decides of each rule, its own rules among them."""
    found = {
        rule_id: Decided(decision.low, decision.high, decision.level) for rule_id, decision in house.decisions.items()
    }
    own = {entry.id: Decided(entry.low, entry.high, entry.level, is_own=True) for entry in house.window_rules}
    return found | own
