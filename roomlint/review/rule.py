"""The rule protocol: what a rule is, and the decorator that makes one of a function."""

from __future__ import annotations

import inspect
import re
from dataclasses import dataclass
from typing import TYPE_CHECKING, Protocol, cast

if TYPE_CHECKING:
    from collections.abc import Callable, Iterable

    from roomlint.design.base import Subject
    from roomlint.measure.figure import Figure
    from roomlint.review.basis import Basis
    from roomlint.review.room import Room
    from roomlint.review.verdict import Against, Level, Says
    from roomlint.review.window import Window

CHAPTERS = (
    "layout", "angle", "distance", "aim", "boundary", "bass", "level", "decay", "noise",
    "channel", "cable", "mains", "heat", "mount", "picture", "access", "handover", "file",
)  # fmt: skip
GUARDED = frozenset({"mount", "mains"})
"""Chapters in which a limit inside the uncertainty fails: the harm is on one side only."""
CAUTIOUS = frozenset({"mount", "mains", "heat", "access"})
"""Chapters in which people can get hurt: each rule there must carry a caution."""
HEADINGS = ("Why", "How decided", "Remedy", "When to waive")


class Page:
    """A rule's page: its docstring, cut at the fixed headings."""

    __slots__ = ("parts", "summary")

    def __init__(self, docstring: str) -> None:
        text = inspect.cleandoc(docstring)
        self.summary, _, rest = text.partition("\n\n")
        self.summary = " ".join(self.summary.split())
        pieces = re.split(rf"^({'|'.join(HEADINGS)}): ", rest, flags=re.MULTILINE)
        self.parts = {heading: " ".join(body.split()) for heading, body in zip(pieces[1::2], pieces[2::2], strict=True)}


@dataclass(frozen=True, slots=True)
class Rule:
    """A rule: everything a reader, a report or the engine needs to know of it."""

    id: str
    level: Level
    bases: tuple[Basis, ...]
    each: Callable[[Room], Iterable[Subject]]
    judge: Callable[[Room, Subject], Figure | Against | Says]
    reads: tuple[str, ...]
    """The keys of the room file that it reads."""
    since: str
    docstring: str
    window: Window | None = None
    target: Window | None = None
    """A tighter window: outside it, inside the window, is a note."""
    limit: Window | None = None
    """A wider window: outside it is an error."""
    critical: Window | None = None
    """The window for rooms with `project.reference: critical`."""
    critical_level: Level | None = None
    """The level for rooms with `project.reference: critical`."""
    at: str = ""
    """The subject's key that a finding points at."""
    caution: str = ""
    package: str = "roomlint"
    version: str = ""

    @property
    def chapter(self) -> str:
        """The part of the id before the dot."""
        return self.id.partition(".")[0]

    @property
    def guarded(self) -> bool:
        """Whether a limit inside the uncertainty fails instead of asking for review."""
        return self.chapter in GUARDED

    @property
    def page(self) -> Page:
        """The rule's page."""
        return Page(self.docstring)

    @property
    def summary(self) -> str:
        """The first paragraph of its page."""
        return self.page.summary


class JudgeFunction(Protocol):
    """A function that says what a rule finds of one subject."""

    __doc__: str | None

    def __call__(self, room: Room, subject: Subject, /) -> Figure | Against | Says:
        """Judge one subject."""


def rule(  # noqa: PLR0913  a rule is declared in one place, each part by its name
    rule_id: str,
    *,
    level: Level,
    basis: Basis | tuple[Basis, ...],
    each: Callable[[Room], Iterable[Subject]],
    reads: tuple[str, ...],
    since: str,
    window: Window | None = None,
    target: Window | None = None,
    limit: Window | None = None,
    critical: Window | None = None,
    critical_level: Level | None = None,
    at: str = "",
    caution: str = "",
) -> Callable[[Callable[..., Figure | Against | Says]], Rule]:
    """Make a rule of a function `(room, subject) -> answer`.

    The function answers with a `Figure`, which is compared with `window`; with `Against`, a figure and the window of
    this very case; or with `Says`, in words. An input that is missing raises by itself and becomes an open verdict.
    """

    def make(function: Callable[..., Figure | Against | Says]) -> Rule:
        return Rule(
            id=rule_id,
            level=level,
            bases=basis if isinstance(basis, tuple) else (basis,),
            each=each,
            judge=cast("JudgeFunction", function),
            reads=reads,
            since=since,
            docstring=function.__doc__ or "",
            window=window,
            target=target,
            limit=limit,
            critical=critical,
            critical_level=critical_level,
            at=at,
            caution=caution,
        )

    return make
