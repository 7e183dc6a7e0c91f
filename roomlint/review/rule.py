"""The rule protocol: what a rule is, and the decorator that makes one of a function."""

from __future__ import annotations

import inspect
import re
import string
from dataclasses import dataclass, field
from typing import TYPE_CHECKING, Any, Generic, Literal, TypeAlias, TypeVar

from roomlint.design.base import Subject
from roomlint.review.basis import Grade
from roomlint.review.verdict import Level
from roomlint.review.window import Cases, Window, Windows

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator, Mapping

    from roomlint.measure.figure import Figure
    from roomlint.review.basis import Basis
    from roomlint.review.room import Room
    from roomlint.review.subjects import Subjects
    from roomlint.review.verdict import Found, Says

S = TypeVar("S", bound=Subject)
CHAPTERS = (
    "layout", "angle", "distance", "aim", "boundary", "bass", "level", "decay", "noise",
    "channel", "cable", "mains", "heat", "mount", "picture", "access", "handover", "file",
)  # fmt: skip
GUARDED = frozenset({"mount", "mains", "heat", "access"})
"""Chapters in which a limit inside the uncertainty fails: the harm is on one side only."""
CAUTIOUS = frozenset({"mount", "mains", "heat", "access"})
"""Chapters in which people can get hurt: each rule there must carry a caution."""
HEADINGS = ("Why", "How decided", "Remedy", "When to waive")
MOST_SAID = 110
"""Signs of a template: a finding is read in one breath."""
BUILT_IN = "roomlint.rules."
"""Where the chapters are that come with the program."""
FILL_IN = "FILL IN"
"""What a new rule's file says where its author has to: a rule that still says so is refused."""
OWN_FIELDS = frozenset({"figure", "size", "window", "allowed", "limit", "beyond", "subject"})
"""Fields that every template may use: the figure, its size without the sign, the window in words, the same of the size,
its nearer edge, the way to it, the subject."""


@dataclass(frozen=True, slots=True)
class No:
    """A rule does not apply to a subject, because of a fact that the file states."""

    because: str
    unless: tuple[str, ...] = ()
    """Rules whose failure on the same element denies that fact: then the verdict waits for them."""


Applies: TypeAlias = Literal[True] | No
Answer: TypeAlias = "Figure | Found | Says"


class RuleError(ValueError):
    """A rule that breaks the protocol; it is refused when it is made."""


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
class Rule(Generic[S]):
    """A rule: everything a reader, a report or the engine needs to know of it."""

    id: str
    level: Level
    bases: tuple[Basis, ...]
    each: Subjects[S]
    """What it judges: all elements of a kind."""
    judge: Callable[[Room, S], Answer]
    says: Mapping[str, str]
    """Its findings in the trade's words: templates by name, `fail` (or `below` and `above`) for its window."""
    since: str
    docstring: str
    window: Windows | Cases[S] | None = None
    when: tuple[Callable[[Room, S], Applies], ...] = ()
    """Whether it applies to a subject: yes, no because of a stated fact, or unknown by raising `Missing`."""
    after: tuple[str, ...] = ()
    """Rules whose failure on the same element makes this one a consequence."""
    beside: tuple[str, ...] = ()
    """Rules whose failure of the same element, or of the room, this one's is told in one breath with: by its template
    `beside` at the end of theirs."""
    cure: tuple[str, ...] = ()
    """Keys of the subject's elements that a remedy may move, such as `position` or `mounting.extension`."""
    critical_level: Level | None = None
    """The level for rooms with `project.reference: critical`."""
    at: str = ""
    """The subject's key that a finding points at."""
    caution: str = ""
    closing: bool = False
    """Whether it judges what the others found, and so runs after all of them."""
    package: str = "roomlint"
    version: str = ""
    chapter: str = field(init=False)
    """The part of the id before the dot."""

    def __post_init__(self) -> None:
        """Refuse what breaks the protocol, so that nobody finds out in a client's room."""
        object.__setattr__(self, "chapter", self.id.partition(".")[0])

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

    @property
    def unit(self) -> str | None:
        """The unit of its windows, None where it has none."""
        return self.window.unit if self.window is not None else None

    def windows(self, room: Room, subject: S) -> Windows | None:
        """Return the windows that hold for a subject."""
        return self.window.choose(room, subject) if isinstance(self.window, Cases) else self.window

    def rows(self) -> tuple[tuple[str, Windows | None], ...]:
        """Return every case of its windows, in words, for its page."""
        if self.window is None:
            return ()
        return self.window.rows if isinstance(self.window, Cases) else (("", self.window),)


AnyRule: TypeAlias = Rule[Any]
"""A rule of whatever subject: the engine and the reports do not mind which."""


def rule(  # noqa: PLR0913  a rule is declared in one place, each part by its name
    rule_id: str,
    *,
    level: Level,
    basis: Basis | tuple[Basis, ...],
    each: Subjects[S],
    says: str | Mapping[str, str],
    since: str,
    window: Windows | Window | Cases[S] | None = None,
    when: Callable[[Room, S], Applies] | tuple[Callable[[Room, S], Applies], ...] = (),
    after: tuple[str, ...] = (),
    beside: tuple[str, ...] = (),
    cure: tuple[str, ...] = (),
    critical_level: Level | None = None,
    at: str = "",
    caution: str = "",
    closing: bool = False,
) -> Callable[[Callable[[Room, S], Answer]], Rule[S]]:
    """Make a rule of a function `(room, subject) -> answer`.

    The function answers with a `Figure`, which is compared with `window`, with `found(figure, ...)` when its template
    needs more, or with `fails`, `passes`, `asks` or `tells` by the name of a template. An input that is missing raises
    by itself and becomes an open verdict. Whatever breaks the protocol is refused here, with a `RuleError`; of the
    built-in chapters by the tests of the rule book.
    """

    def make(function: Callable[[Room, S], Answer]) -> Rule[S]:
        made: Rule[S] = Rule(
            id=rule_id,
            level=level,
            bases=basis if isinstance(basis, tuple) else (basis,),
            each=each,
            judge=function,
            says={"fail": says} if isinstance(says, str) else says,
            since=since,
            docstring=function.__doc__ or "",
            window=Windows(window) if isinstance(window, Window) else window,
            when=when if isinstance(when, tuple) else (when,),
            after=after,
            beside=beside,
            cure=cure,
            critical_level=critical_level,
            at=at,
            caution=caution,
            closing=closing,
        )
        # The built-in chapters are held to the same by the tests of the rule book, not anew at each start.
        wrong = [] if (function.__module__ or "").startswith(BUILT_IN) else list(faults(made))
        if wrong:
            raise RuleError(f"{rule_id}: {'; '.join(wrong)}")
        return made

    return make


def faults(made: AnyRule) -> Iterator[str]:
    """Yield everything about a rule that breaks the protocol."""
    if not re.fullmatch(r"[a-z]+\.[a-z0-9]+(-[a-z0-9]+)*", made.id):
        yield "an id is chapter.slug in small letters, such as angle.front-pair"
    elif made.chapter not in CHAPTERS and made.chapter != "house":
        yield f"there is no chapter {made.chapter!r}; chapters: {', '.join(CHAPTERS)}"
    if not re.fullmatch(r"\d+\.\d+\.\d+", made.since):
        yield f"since is a version such as 0.2.0, not {made.since!r}"
    if FILL_IN in f"{made.docstring} {made.says} {made.bases} {made.caution}":
        yield f"something still says {FILL_IN}"
    if ("beside" in made.says) != bool(made.beside):
        yield "a rule that is told in one breath with another ends that one's sentence by its template 'beside'"
    yield from _basis_faults(made)
    yield from _page_faults(made)
    yield from _template_faults(made)


def _basis_faults(made: AnyRule) -> Iterator[str]:
    if not made.bases:
        yield "a rule has a basis"
    for basis in made.bases:
        if basis.grade in {Grade.READ, Grade.SECOND_HAND} and not basis.document:
            yield f"a basis of grade {basis.grade} names its document"
        if not (basis.document or basis.note):
            yield "a basis of practice or memory says what the practice is"
    if all(basis.grade is Grade.MEMORY for basis in made.bases):
        limits = [windows for _, windows in made.rows() if windows is not None and windows.limit is not None]
        if Level.ERROR in {made.level, made.critical_level} or limits:
            yield "a value from memory alone makes no error"


def _page_faults(made: AnyRule) -> Iterator[str]:
    page = made.page
    if not 10 < len(page.summary) <= 200 or not page.summary.endswith("."):  # noqa: PLR2004  one or two lines
        yield "the docstring starts with one sentence that says what holds in a good design"
    if tuple(page.parts) != HEADINGS or not all(len(text) > 10 for text in page.parts.values()):  # noqa: PLR2004
        yield f"the docstring has the parts {', '.join(HEADINGS)}, each with a sentence"
    if made.chapter in CAUTIOUS and len(made.caution) <= 20:  # noqa: PLR2004  a sentence
        yield f"a rule of chapter {made.chapter} carries a caution"
    if re.search(r"\b(un)?safe(ly)?\b", f"{made.docstring} {made.caution} {made.says}", re.IGNORECASE):
        yield "nothing here promises freedom from harm"


def _template_faults(made: AnyRule) -> Iterator[str]:
    for name, text in made.says.items():
        if len(text) > MOST_SAID:
            yield f"the template {name!r} has {len(text)} signs; a finding has at most {MOST_SAID}"
        if re.search(r"\.yaml|\[\]|_|\bthe window\b", re.sub(r"\{[^}]*\}", "", text)):
            yield f"the template {name!r} names a file, a key or 'the window'; say it as the trade does"
        try:
            fields = [field for _, field, _, _ in string.Formatter().parse(text) if field is not None]
        except ValueError as error:
            yield f"the template {name!r} cannot be filled in: {error}"
            continue
        if not all(re.fullmatch(r"[a-z_]+", field) for field in fields):
            yield f"the template {name!r} has a field that is no plain name"
        if name in {"fail", "below", "above"} and made.window is not None and not {"size", "figure"} & set(fields):
            yield f"the template {name!r} gives the figure"
        if name == "negative" and not {"size", "figure"} & set(fields):
            yield f"the template {name!r} gives the figure, or its size without the sign"
    if made.window is not None and not ({"fail"} <= made.says.keys() or {"below", "above"} <= made.says.keys()):
        yield "a rule with a window says a finding by the template 'fail', or by 'below' and 'above'"
    if not made.says:
        yield "a rule says its finding by a template"
