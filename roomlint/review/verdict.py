"""Verdicts: what a rule says of one subject."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from roomlint.design.base import Subject
    from roomlint.measure.figure import Figure
    from roomlint.review.window import Window
    from roomlint.source.place import Place


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
    text: str


@dataclass(frozen=True, slots=True)
class Waived:
    """Why a failure is accepted, and who says so."""

    because: str
    approved_by: str
    until: str
    place: Place
    document: str = ""


class State(StrEnum):
    """The baseline states of SARIF 2.1.0, 3.27.24."""

    NEW = "new"
    UNCHANGED = "unchanged"
    UPDATED = "updated"
    ABSENT = "absent"


@dataclass(frozen=True, slots=True)
class Change:
    """How a verdict stands to the one of an earlier revision."""

    state: State
    was: str = ""
    """The earlier kind, or level when it failed; empty when there was none."""
    was_waived: bool = False
    """Whether the earlier failure was waived."""
    better_by: float | None = None
    """How much the margin grew, in the figure's unit; negative is worse, None when it cannot be told."""


@dataclass(frozen=True, slots=True)
class Verdict:
    """What one rule says of one subject."""

    rule: str
    kind: Kind
    level: Level | None
    """Set exactly when the kind is fail."""
    subject: str
    """The subject's key: element ids only."""
    words: str
    """The subject as a message names it."""
    message: str
    place: Place
    related: tuple[Related, ...] = ()
    figure: Figure | None = None
    window: Window | None = None
    margin: float | None = None
    missing: str | None = None
    """The path of the key that would decide an open verdict."""
    overridden: tuple[str, ...] = ()
    """What the house file changed of the rule: window, level."""
    waived: Waived | None = None
    change: Change | None = None
    """Set on every verdict of a review that was compared, on none otherwise."""

    def __post_init__(self) -> None:
        """Hold the specification's rule: a level is given exactly when the kind is fail."""
        if (self.kind is Kind.FAIL) != (self.level is not None):
            raise ValueError(f"{self.rule}: a verdict has a level exactly when it fails")

    @property
    def gates(self) -> Level | None:
        """Return the level at which it counts for the gate; a waived failure never does."""
        return None if self.waived is not None else self.level


@dataclass(frozen=True, slots=True)
class Against:
    """A rule's answer: a figure with the window of this very case.

    `says` is a hint for the reader; `target` is a tighter window that gives a note, `limit` a wider one whose
    outside is an error; `level` is for the window itself.
    """

    figure: Figure
    window: Window | None = None
    says: str = ""
    level: Level | None = None
    target: Window | None = None
    limit: Window | None = None
    place: Place | None = None
    """Where the finding points, when that is not a key of the subject."""


@dataclass(frozen=True, slots=True)
class Says:
    """A rule's answer in words, where no figure decides."""

    kind: Kind
    text: str
    level: Level | None = None
    figure: Figure | None = None
    related: tuple[Subject, ...] = ()


def fails(text: str, *, level: Level | None = None, related: tuple[Subject, ...] = ()) -> Says:
    """Answer that the subject fails, at the rule's level unless another is given."""
    return Says(Kind.FAIL, text, level, related=related)


def passes(text: str) -> Says:
    """Answer that nothing is wrong with the subject as far as this rule looks."""
    return Says(Kind.PASS, text)


def asks(text: str, *, related: tuple[Subject, ...] = ()) -> Says:
    """Answer that a person must decide."""
    return Says(Kind.REVIEW, text, related=related)


def does_not_apply(text: str) -> Says:
    """Answer that the rule does not apply to this subject, and why."""
    return Says(Kind.NOT_APPLICABLE, text)


def tells(text: str, figure: Figure | None = None) -> Says:
    """Answer with something worth knowing that is neither right nor wrong."""
    return Says(Kind.INFORMATIONAL, text, figure=figure)
