"""What a report tells of a whole run, gathered in one pass: many rooms may be waiting on the disk."""

from __future__ import annotations

from collections import Counter
from typing import TYPE_CHECKING, Any, Generic, TypeVar

from roomlint.report.units import Units
from roomlint.report.words import ended, loosened
from roomlint.review.standing import written
from roomlint.review.verdict import Kind
from roomlint.review.window import Window
from roomlint.source.files import from_top

if TYPE_CHECKING:
    from roomlint.design.house import Decision
    from roomlint.review.review import Loosened, Review, RoomReview
    from roomlint.review.verdict import Verdict
    from roomlint.source.place import Place

T = TypeVar("T")


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
    """Counts and decisions of the house; each room is added once."""

    def __init__(self, review: Review) -> None:
        self.rooms = 0
        self.stopped = 0
        self.counts: Counter[str] = Counter()
        self.ways: Counter[str] = Counter()
        self.codes: dict[str, str] = {}
        self._ran = {rule.id for rule in review.rules}
        self._decisions: dict[tuple[str, str], Decision] = {}
        self._houses: set[str] = set()
        self.standing: dict[str, dict[str, str]] = {}
        """House file from the top to what it decides about the stages."""
        self._loosened: dict[tuple[str, str, bool], Loosened] = {}
        self._ended: dict[tuple[str, str], tuple[Place, str]] = {}

    def add(self, room: RoomReview) -> bool:
        """Take in what a report tells of a room beside its findings; return whether the gate stops it."""
        self.rooms += 1
        self.counts.update(room.counts())
        stops = next(room.gating(), None) is not None
        self.stopped += stops
        self.codes[room.file] = room.code
        self._loosened.update({(one.house, one.rule, isinstance(one.now, Window)): one for one in room.loosened})
        if room.house.file not in self._houses:
            self._houses.add(room.house.file)
            if room.house.file:
                self.standing[from_top(room.house.file)] = written(room.house)
            for rule_id, decision in room.house.decisions.items():
                if rule_id in self._ran:
                    self._decisions[room.house.file, rule_id] = decision
            for decision in room.house.ended:
                words = ended(decision, from_top(room.house.file))
                self._ended[room.house.file, decision.id] = (decision.place_of("until"), words)
        if room.compared:
            for verdict in (*room.verdicts, *room.gone):
                if verdict.change is not None and verdict.change.way is not None:
                    self.ways[verdict.change.way.value] += 1
        return stops

    def decisions(self) -> list[tuple[str, Decision]]:
        """Return the decisions of every house file about rules that ran, each once, with the house's file."""
        return [(file, self._decisions[file, rule_id]) for file, rule_id in sorted(self._decisions)]

    def ended(self) -> list[tuple[Place, str]]:
        """Return the decisions of the houses whose last day is over, each once: where it stands, and its words."""
        return [self._ended[key] for key in sorted(self._ended)]

    def loosened(self, units: str = "") -> list[tuple[Loosened, str]]:
        """Return what the houses made looser where people can get hurt, each once, with its words."""
        told = Units(units or "metric")
        found = []
        for key in sorted(self._loosened):
            one = self._loosened[key]
            edges = [told.window(edge) if isinstance(edge, Window) else edge.value for edge in (one.was, one.now)]
            found.append((one, loosened(one, from_top(one.house), *edges)))
        return found


def is_for_action(verdict: Verdict) -> bool:
    """Return whether somebody must act on a verdict: it fails and nobody accepted it, or a person must decide."""
    return verdict.waived is None and verdict.kind in {Kind.FAIL, Kind.REVIEW}
