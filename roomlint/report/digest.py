"""What a report tells of a whole run, gathered in one pass: many rooms may be waiting on the disk."""

from __future__ import annotations

from collections import Counter
from typing import TYPE_CHECKING, Any, Generic, TypeVar

from roomlint.report.words import ORDER, movement, place_key
from roomlint.review.verdict import Kind

if TYPE_CHECKING:
    from roomlint.design.house import Decision
    from roomlint.review.review import Review, RoomReview
    from roomlint.review.verdict import Verdict

T = TypeVar("T")

MOST_MOVED = 250


class Foremost(Generic[T]):
    """The first so many of many things, in the order of their keys, and how many there were."""

    __slots__ = ("_kept", "_most", "total")

    def __init__(self, most: int) -> None:
        self._most = most
        self._kept: list[tuple[Any, T]] = []
        self.total = 0

    def add(self, key: Any, item: T) -> None:  # noqa: ANN401  whatever sorts
        """Add a thing; it is kept as long as it is among the first."""
        self.total += 1
        self._kept.append((key, item))
        if len(self._kept) > 4 * self._most:
            self._cut()

    def items(self) -> list[T]:
        """Return the first things, sorted."""
        self._cut()
        return [item for _, item in self._kept]

    def _cut(self) -> None:
        self._kept.sort(key=lambda entry: entry[0])
        del self._kept[self._most :]


class Digest:
    """Counts, missing inputs, changes and decisions of the house; each room is added once."""

    def __init__(self, review: Review) -> None:
        self.rooms = 0
        self.counts: Counter[str] = Counter()
        self.moves: Counter[str] = Counter()
        self.moved: Foremost[tuple[str, Verdict]] = Foremost(MOST_MOVED)
        self._compared = bool(review.against)
        self._ran = {rule.id for rule in review.rules}
        self._missing: Counter[tuple[str, str]] = Counter()
        self._decisions: dict[tuple[str, str], Decision] = {}
        self._houses: set[str] = set()
        self._loosened: set[str] = set()

    def add(self, room: RoomReview) -> None:
        """Take in what a report tells of a room beside its findings."""
        self.rooms += 1
        self.counts.update(room.counts())
        self._missing.update((room.file, verdict.missing) for verdict in room.verdicts if verdict.missing is not None)
        self._loosened.update(room.loosened)
        if room.house.file not in self._houses:
            self._houses.add(room.house.file)
            for rule_id, decision in room.house.decisions.items():
                if rule_id in self._ran:
                    self._decisions[room.house.file, rule_id] = decision
        if self._compared:
            for verdict in room.verdicts:
                self._move(movement(verdict), verdict, room)
            for verdict in left(room):
                self._move("gone", verdict, room)

    def _move(self, word: str, verdict: Verdict, room: RoomReview) -> None:
        if word:
            self.moves[word] += 1
            self.moved.add((ORDER.index(word), place_key(verdict), room.file), (word, verdict))

    def moves_in_order(self) -> list[tuple[str, int]]:
        """Return how many verdicts moved which way, what matters most first."""
        return [(word, self.moves[word]) for word in ORDER if self.moves[word]]

    def missing(self) -> list[tuple[str, str, int]]:
        """Return file, key and how many verdicts wait for it, most first."""
        ranked = sorted(self._missing.items(), key=lambda entry: (-entry[1], entry[0]))
        return [(file, key, count) for (file, key), count in ranked]

    def decisions(self) -> list[tuple[str, Decision]]:
        """Return the decisions of every house file about rules that ran, each once, with the house's file."""
        return [(file, self._decisions[file, rule_id]) for file, rule_id in sorted(self._decisions)]

    def loosened(self) -> list[str]:
        """Return what the house made looser where people can get hurt, each once."""
        return sorted(self._loosened)


def left(room: RoomReview) -> list[Verdict]:
    """Return the failures of the earlier revision of which nothing is left, not even a verdict that now passes."""
    if not room.gone:
        return []
    still = {(verdict.rule, verdict.subject) for verdict in room.verdicts}
    return [verdict for verdict in room.gone if (verdict.rule, verdict.subject) not in still]


def is_for_action(verdict: Verdict) -> bool:
    """Return whether somebody must act on a verdict: it fails and nobody accepted it, or a person must decide."""
    return verdict.waived is None and verdict.kind in {Kind.FAIL, Kind.REVIEW}
