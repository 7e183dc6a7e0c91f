"""Verdicts: what a rule says of one subject, as data; every sentence is made by the report that prints it."""

from __future__ import annotations

from dataclasses import dataclass, field
from enum import StrEnum
from typing import TYPE_CHECKING, TypeAlias

if TYPE_CHECKING:
    from collections.abc import Mapping

    from roomlint.design.base import Missing, Subject
    from roomlint.measure.figure import Figure
    from roomlint.review.window import Window
    from roomlint.source.place import Place

Fact: TypeAlias = "str | int | Figure | Window | tuple[str, ...]"
"""What a template's field may hold: a name, a count, a figure with its unit, a range, or a list of names."""


class Kind(StrEnum):
    """The result kinds of SARIF 2.1.0, 3.27.9."""

    PASS = "pass"  # noqa: S105  not a password
    FAIL = "fail"
    OPEN = "open"
    REVIEW = "review"
    NOT_APPLICABLE = "notApplicable"
    INFORMATIONAL = "informational"


class Level(StrEnum):
    """The result levels of SARIF 2.1.0, 3.27.10."""

    ERROR = "error"
    WARNING = "warning"
    NOTE = "note"

    @property
    def rank(self) -> int:
        """Return 3 for error, 2 for warning, 1 for note."""
        return {"error": 3, "warning": 2, "note": 1}[self.value]


@dataclass(frozen=True, slots=True)
class Related:
    """Another place that a verdict follows from."""

    place: Place
    words: str


@dataclass(frozen=True, slots=True)
class Wanted:
    """The key whose value would decide an open verdict."""

    subject: str
    """Key of the element that lacks it, such as `loudspeaker/left`."""
    words: str
    """What the team calls that element."""
    key: str
    """The key below the element, dotted."""
    path: str
    """The key's path in its file."""
    file: str
    above: tuple[str, ...] = ()
    """What the list items on that path are found by, from outside in, such as `id: left`: what the key is to be written
    below.
    """


@dataclass(frozen=True, slots=True)
class Unjudged:
    """A key that a file gives and that no rule, figure or reference looked at."""

    words: str
    """What the team calls the element."""
    key: str
    """Its way from there, such as `mounting.carpet`."""
    place: Place


@dataclass(frozen=True, slots=True)
class Follows:
    """The failure that must be cured before a verdict can be reached."""

    rule: str
    subject: str
    words: str


@dataclass(frozen=True, slots=True)
class Again:
    """How closely some readings must be known for a figure to be decided."""

    names: tuple[tuple[str, str], ...]
    """Element and key of each reading, as the team calls them: `("sofa-right", "ear.from_front")`."""
    within: Figure | None
    """The uncertainty that decides it, in the readings' unit; None where no measuring does: it stands on the limit."""
    chosen: bool
    """Whether the readings were chosen at the drawing board, so that another value is chosen instead of measured."""


@dataclass(frozen=True, slots=True)
class Remedy:
    """A change of one value that clears a failure, tried before it is told."""

    words: str
    """What the team calls the element whose value changes."""
    subject: str
    key: str
    low: Figure
    high: Figure
    now: Figure
    breaks: tuple[str, ...] = ()
    """Rules that would fail then and do not now; empty when nothing else suffers."""
    mirrored: str = ""
    """The right one of a pair that is written once, which the change moves too; empty for anything else."""


@dataclass(frozen=True, slots=True)
class Waived:
    """Why a failure is accepted, and who says so."""

    because: str
    approved_by: str
    until: str
    place: Place
    document: str = ""


class Fate(StrEnum):
    """What becomes of a waiver that meets a failure."""

    HOLDS = "holds"
    WITHOUT_REASON = "without reason"
    UNSUPPORTED = "unsupported"
    EXPIRED = "expired"
    BOUND_UNFIT = "bound does not fit"
    BOUND_PASSED = "bound passed"


@dataclass(frozen=True, slots=True)
class Unheld:
    """Why a waiver that meets a failure does not hold."""

    fate: Fate
    lacks: tuple[str, ...] = ()
    """Keys without which it supports nothing."""
    ended: str = ""
    """Its last day, when that is over."""
    bound: str = ""
    """Its bound, as written."""
    passed: Figure | None = None
    """By how much the bound is passed."""
    unfit: str = ""
    """Why the bound fits no figure; empty where the failure has none."""


class State(StrEnum):
    """The baseline states of SARIF 2.1.0, 3.27.24."""

    NEW = "new"
    UNCHANGED = "unchanged"
    UPDATED = "updated"
    ABSENT = "absent"


class Way(StrEnum):
    """Which way a verdict went since an earlier revision, what matters most first."""

    NEW = "new"
    WORSE = "worse"
    UNKNOWN = "newly unknown"
    CLOSE = "newly for a person"
    BETTER = "better"
    GONE = "gone"


class By(StrEnum):
    """What made a verdict change: three kinds that are never told as one another."""

    HOUSE = "house"
    """Its window or its level is another, the figure is what it was."""
    WAIVER = "waiver"
    """It was accepted, or is no longer."""
    DESIGN = "design"
    """Its figure, or what it rests on, is another."""


@dataclass(frozen=True, slots=True)
class Change:
    """How a verdict stands to the one of an earlier revision."""

    state: State
    way: Way | None = None
    """None when it stands as it stood."""
    by: By = By.DESIGN
    was: str = ""
    """The earlier kind, or level when it failed; empty when there was none."""
    before: Figure | None = None
    """The earlier figure, where it was another."""
    window: Window | None = None
    """The earlier window, where it was another."""
    was_waived: bool = False
    """Whether the earlier failure was waived."""


@dataclass(frozen=True, slots=True)
class Verdict:
    """What one rule says of one subject."""

    rule: str
    kind: Kind
    level: Level | None
    """Set exactly when the kind is fail."""
    subject: str
    """The subject's key: kinds and ids of its elements only, such as `loudspeaker/left+seat/middle`."""
    words: str
    """The subject as the team names it."""
    place: Place
    said: str = ""
    """Which of the rule's templates says it; empty where the figure and the window say enough."""
    facts: Mapping[str, Fact] = field(default_factory=dict)
    """What the template's fields hold."""
    because: str = ""
    """Of a rule that does not apply: which stated fact makes it so. Of a refused figure: why there is none."""
    figure: Figure | None = None
    window: Window | None = None
    margin: float | None = None
    wanted: Wanted | None = None
    follows: Follows | None = None
    again: Again | None = None
    remedy: Remedy | None = None
    related: tuple[Related, ...] = ()
    overridden: tuple[str, ...] = ()
    """What the house file changed of the rule: window, level."""
    waived: Waived | None = None
    unheld: Unheld | None = None
    """Why a waiver that meets this failure does not hold."""
    change: Change | None = None
    """Set on every verdict of a review that was compared, on none otherwise."""

    def __post_init__(self) -> None:
        """Hold the specification's rule: a level is given exactly when the kind is fail."""
        if (self.kind is Kind.FAIL) != (self.level is not None):
            raise ValueError(f"{self.rule}: a verdict has a level exactly when it fails")

    def __reduce__(self) -> tuple[type[Verdict], tuple[object, ...]]:
        """Travel as what it is made of: the default asks for the fields of every single one again."""
        return (Verdict, tuple([getattr(self, name) for name in Verdict.__slots__]))

    @property
    def gates(self) -> Level | None:
        """Return the level at which it counts for the gate; a waived failure never does."""
        return None if self.waived is not None else self.level


@dataclass(frozen=True, slots=True)
class Found:
    """A rule's answer: a figure, with facts for its templates."""

    figure: Figure
    facts: Mapping[str, Fact] = field(default_factory=dict)
    level: Level | None = None
    """Instead of the rule's own, where the figure is of the lighter sort."""
    place: Place | None = None
    """Where the finding points, when that is not a key of the subject."""
    lacks: Missing | None = None
    """What the file would have to state before the figure could pass: it fails without, and is open otherwise."""
    said: str = ""
    """The template that says the failure, where it is not one of the window's two sides."""


@dataclass(frozen=True, slots=True)
class Says:
    """A rule's answer by one of its templates, where no figure decides."""

    kind: Kind
    said: str
    facts: Mapping[str, Fact] = field(default_factory=dict)
    level: Level | None = None
    figure: Figure | None = None
    related: tuple[Subject, ...] = ()


def found(
    figure: Figure, *, level: Level | None = None, place: Place | None = None, lacks: Missing | None = None,
    said: str = "", **facts: Fact,
) -> Found:  # fmt: skip
    """Answer with a figure and what its templates need beside it."""
    return Found(figure, facts, level, place, lacks, said)


def fails(said: str, *, level: Level | None = None, related: tuple[Subject, ...] = (), **facts: Fact) -> Says:
    """Answer that the subject fails, at the rule's level unless another is given."""
    return Says(Kind.FAIL, said, facts, level, related=related)


def passes(said: str, **facts: Fact) -> Says:
    """Answer that nothing is wrong with the subject as far as this rule looks."""
    return Says(Kind.PASS, said, facts)


def asks(said: str, *, related: tuple[Subject, ...] = (), **facts: Fact) -> Says:
    """Answer that a person must decide."""
    return Says(Kind.REVIEW, said, facts, related=related)


def tells(said: str, figure: Figure | None = None, **facts: Fact) -> Says:
    """Answer with something worth knowing that is neither right nor wrong."""
    return Says(Kind.INFORMATIONAL, said, facts, figure=figure)
