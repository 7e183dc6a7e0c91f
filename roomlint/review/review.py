"""A finished review: what the reports are written from."""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass, field
from typing import TYPE_CHECKING

from roomlint.review.verdict import Kind, Level, State, Way

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping, Sequence

    from roomlint.design.house import House
    from roomlint.measure.figure import Figure
    from roomlint.measure.scene import Scene
    from roomlint.review.engine import Trouble
    from roomlint.review.rule import AnyRule
    from roomlint.review.verdict import Unjudged, Verdict
    from roomlint.review.window import Window
    from roomlint.source.place import Place, Problem


@dataclass(frozen=True, slots=True)
class Decided:
    """What a house file says of one rule: edges as they are written there, and a level."""

    low: str | None = None
    high: str | None = None
    level: str | None = None
    is_own: bool = False
    """Whether the rule itself is the house's, written as data."""


@dataclass(frozen=True, slots=True)
class HouseChange:
    """A decision of a house that is another than in the earlier revision."""

    file: str
    rule: str
    way: str
    """`added`, `removed`, `loosened`, `tightened` or `changed`."""
    was: Decided | None
    now: Decided | None


@dataclass(frozen=True, slots=True)
class StandingChange:
    """What a house decides about stages otherwise than in the earlier revision."""

    file: str
    what: str
    """`gate`, `open` or `required chapters`."""
    stages: tuple[str, ...]
    way: str
    """`loosened`, `tightened` or `changed`."""
    was: str
    now: str


@dataclass(frozen=True, slots=True)
class Departed:
    """A room of the earlier revision that is no longer there."""

    file: str
    code: str
    failures: int


@dataclass(frozen=True, slots=True)
class Loosened:
    """A rule of a chapter where people can get hurt that a house made looser."""

    rule: str
    house: str
    was: Level | Window
    now: Level | Window
    place: Place
    because: str = ""
    approved_by: str = ""
    until: str = ""


@dataclass(frozen=True, slots=True)
class WorkedOut:
    """One value that the file does not write down, and of what it was worked out: the ceiling, a pair, a row, ..."""

    words: str
    """What the team calls the element."""
    key: str
    figure: Figure
    way: str


@dataclass(frozen=True, slots=True)
class RoomReview:
    """What was found in one room file."""

    file: str
    code: str
    title: str
    stage: str | None
    house: House
    verdicts: tuple[Verdict, ...]
    open_level: Level | None = None
    """What an open verdict counts as for the gate at this stage; None: it never gates."""
    gate: Level | None = Level.ERROR
    """The level that gates this room; None: nothing does."""
    gone: tuple[Verdict, ...] = ()
    """Failures of the earlier revision that are no longer there, when compared."""
    compared: bool = False
    gate_new: bool = False
    """Whether only what is new or worse gates, when compared."""
    loosened: tuple[Loosened, ...] = ()
    units: str = "metric"
    """The units that the file is written in, or that its house wants: `metric` or `us`."""
    unjudged: tuple[Unjudged, ...] = ()
    """What the file gives and no rule that ran looks at."""
    was_file: str = ""
    """Its file in the earlier revision, when it had another name."""
    worked: tuple[WorkedOut, ...] = ()
    """What was worked out of what the file says."""
    sheets: Mapping[str, str] = field(default_factory=dict)
    """A digest of each product sheet that it uses, by the product's id; empty where nothing is compared."""
    sheets_changed: tuple[str, ...] = ()
    """The products whose sheets say something else than in the earlier revision, when compared."""
    scene: Scene | None = None
    """What a drawing shows, where one is wanted."""
    was_scene: Scene | None = None
    """The same of the earlier revision, when compared."""

    def counts(self) -> Mapping[str, int]:
        """Return how many verdicts there are of each kind; failures are counted by level, waived ones apart."""
        names = ("waived" if verdict.waived is not None else verdict.level or verdict.kind for verdict in self.verdicts)
        return Counter(str(name) for name in names)

    def counts_as(self, verdict: Verdict) -> Level | None:
        """Return the level at which a verdict counts for the gate."""
        return self.open_level if verdict.kind is Kind.OPEN else verdict.gates

    def gating(self) -> Iterator[Verdict]:
        """Yield the verdicts at or above the gate."""
        if self.gate is None:
            return
        for verdict in self.verdicts:
            level = self.counts_as(verdict)
            if level is None or level.rank < self.gate.rank:
                continue
            if not self.gate_new or self._is_worse(verdict, level):
                yield verdict

    @staticmethod
    def _is_worse(verdict: Verdict, level: Level) -> bool:
        """Return whether a verdict that counts at a level is new, or worse than it was."""
        change = verdict.change
        if change is None or change.state is State.NEW:
            return True
        if change.way is Way.UNKNOWN and change.was in set(Level):
            return Level(change.was).rank < level.rank
        return change.way in {Way.NEW, Way.WORSE, Way.UNKNOWN}


@dataclass(frozen=True, slots=True)
class Review:
    """One run over one or many room files."""

    rooms: Sequence[RoomReview]
    rules: tuple[AnyRule, ...]
    """The rules that were selected, all of them, whether they fired or not."""
    problems: tuple[Problem, ...] = ()
    """What made files unreadable."""
    troubles: tuple[Trouble, ...] = ()
    """Rules and rule packages that broke: the review is not complete."""
    against: str = ""
    """What it was compared with, if anything."""
    house_changes: tuple[HouseChange, ...] = ()
    standing_changes: tuple[StandingChange, ...] = ()
    departed: tuple[Departed, ...] = ()
    unmatched: tuple[str, ...] = field(default=())
    """Arguments that named nothing to check."""

    def counts(self) -> Mapping[str, int]:
        """Return the counts of all rooms together."""
        total: Counter[str] = Counter()
        for room in self.rooms:
            total.update(room.counts())
        return total

    @property
    def exit_status(self) -> int:
        """Return the exit status: 2 unreadable, 3 nothing to check, 4 incomplete, 1 gated, 0 otherwise."""
        if self.problems:
            return 2
        if not self.rooms:
            return 3
        if self.troubles:
            return 4
        return 1 if any(True for room in self.rooms for _ in room.gating()) else 0
