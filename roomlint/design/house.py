"""The house file: a team's standing decisions."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from roomlint.design.element import WAITING, Derived, Element
from roomlint.design.keys import Ident, Number, Text, choice, day, flag, text
from roomlint.design.parts import Each, Plain, PlainEach, Table, several, words

if TYPE_CHECKING:
    from collections.abc import Mapping
    from datetime import date

    from roomlint.design.reader import Book
    from roomlint.source.node import Node

STAGES = {stage: stage for stage in ("survey", "design", "rough-in", "handover")}
CHAPTERS = (
    "layout", "angle", "distance", "aim", "boundary", "bass", "level", "decay", "noise", "channel", "cable", "mains",
    "heat", "mount", "picture", "access", "handover", "file",
)  # fmt: skip
GATES = ("error", "warning", "note", "never")


class Decision(Element):
    """A decision about one rule."""

    KIND = "decision"

    id_key = Ident("Rule id.", example="angle.front-pair", most=80, key="rule", told=True, required=True)
    low = text("Low edge, with its unit.", "28 deg", most=80)
    """The rule's window says which unit it must fit."""
    high = text("High edge, with its unit.", "32 deg", most=80)
    level = choice("Level.", "error", "warning", "note")
    because = text("Why.", "Our rooms are film rooms.", most=1000, required=True)
    approved_by = text(
        "Who answers for it. Where people can get hurt nothing is made looser without a name and a last day.", "lead",
        proves=True,
    )  # fmt: skip
    until = day("Last day it holds; after that the rule book's own holds again.")

    @property
    def sets_window(self) -> bool:
        """Whether it replaces the rule's window."""
        return self.low is not None or self.high is not None


class EachOf(Element):
    """Which subjects."""

    loudspeakers: Each[tuple[str, ...]] = Each("all, or labels.", Text("A label, or all.", example="M+090", most=8), 40)
    subwoofers = flag("Every subwoofer.")
    seats = choice("Which seats.", "reference", "every")


class Grounds(Element):
    """Why the window is what it is."""

    grade = choice("How firm.", "read", "second-hand", "practice", "memory", required=True)
    document = text("Document.", "ITU-R BS.775")
    edition = text("Edition.", "3 (2012)")
    clause = text("Clause.", "Figure 1")
    note = text("Anything else.", "house habit")


class Tried(Element):
    """An example: a value, and what the rule must say of it."""

    value = text("A value with its unit.", "10 deg", most=80, required=True)
    verdict = choice("What it must say.", "pass", "fail", required=True)


class WindowRule(Element):
    """A rule as data: one figure against one window."""

    KIND = "window rule"

    id_key = Ident(
        "Its id, in the chapter house.", form="^house\\.[a-z0-9-]+$", example="house.side-height", told=True,
        required=True,
    )  # fmt: skip
    title = text(
        "One sentence that says what holds.", "Side loudspeakers stand at most 12 degrees above the ear.", required=True
    )
    figure = text("The figure's name, as roomlint figures --names lists them.", "elevation", most=80, required=True)
    each = Plain["Mapping[str, Any]"]("Which subjects.", EachOf, required=True, default={})
    low = text("Low edge, with its unit.", "28 deg", most=80)
    high = text("High edge, with its unit.", "32 deg", most=80)
    level = choice("Level.", "error", "warning", "note", required=True, default="warning")
    basis = Plain["Mapping[str, Any]"]("Why.", Grounds, required=True, default={})
    message = text("A hint for the reader.", "Lower the side loudspeaker.", default="")
    caution = text("Caution, where people can get hurt.", "A licensed electrician decides.", default="")
    examples: PlainEach[tuple[Mapping[str, Any], ...]] = PlainEach(
        "Values and what the rule must say of them.", Tried, most=20
    )


class House(Element):
    """A team's standing decisions; an empty one when there is no house file."""

    KIND = "house"

    schema_link = text("Where an editor finds the schema of this file.", "house.schema.json", key="$schema", told=True)
    version = Number[int](
        "Version of this file form.", 1, 1, example=1, only_whole=True, key="roomlint_house", required=True, told=True
    )
    title = text("The team.", "The house rules of a small firm", default="")
    products = words(
        "Folders of product sheets, relative to this file and below it.",
        Text("A folder.", example="products", most=200), 20,
    )  # fmt: skip
    units = choice("Units that reports are written in, instead of those of each room file.", "metric", "us")
    gate = choice("What gates.", *GATES)
    gates = Table["Mapping[str, str]"]("The gate by stage.", STAGES, choice("What gates", *GATES), default={})
    opens = Table["Mapping[str, str]"](
        "What an open verdict counts as, by stage.", STAGES,
        choice("What an open verdict counts as", "never", "note", "warning", "error"), key="open", default={},
    )  # fmt: skip
    required = Table["Mapping[str, tuple[str, ...]]"](
        "Chapters that a run may not leave out, by stage.", STAGES,
        words("Chapters", choice("A chapter.", *CHAPTERS), len(CHAPTERS)), key="required_chapters", default={},
    )  # fmt: skip
    decided = several("What the house decides about rules.", Decision, most=200, key="decisions")
    window_rules = several("Rules as data: one figure against one window.", WindowRule, most=100)
    decisions = Derived["Mapping[str, Decision]"](default=dict)
    """Rule id to decision, of those that hold."""
    ended = Derived["tuple[Decision, ...]"](default=tuple)
    """Decisions whose last day is over: they decide nothing."""

    file: str

    def __init__(self, file: str = "", at: Node | None = None, **given: Any) -> None:  # noqa: ANN401  as the keys say
        self.__dict__.update({"at": at, "id": "", "file": file, WAITING: given})

    def __eq__(self, other: object) -> bool:
        """Two are the same when they are of one file and say the same."""
        return isinstance(other, House) and self._said() == other._said()

    def __hash__(self) -> int:
        return hash(self.file)

    def _said(self) -> tuple[str, Any]:
        return self.file, self.at.plain() if self.at is not None else None

    def settle(self, book: Book) -> None:
        """Refuse a rule that is decided twice."""
        decisions: dict[str, Decision] = {}
        for one in self.given("decided") or ():
            first = decisions.setdefault(one.id, one)
            if first is not one:
                book.cross(one.at, f"rule {one.id!r} is decided twice; the first is on line {first.place.line}.")
        self.put("decisions", decisions)

    def end(self, today: date) -> None:
        """Let decisions go whose last day is over, before anybody asks for them."""
        told = self.given("decisions") or {}
        ended = tuple(one for one in told.values() if one.until is not None and today > one.until)
        if ended:
            self.put("decisions", {rule_id: one for rule_id, one in told.items() if one not in ended})
            self.put("ended", ended)
