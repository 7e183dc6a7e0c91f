"""One run: which rules, which rooms, and what comes of them."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from roomlint.review.desk import Desk
from roomlint.review.engine import review_room
from roomlint.review.review import Review, RoomReview
from roomlint.review.room import Room
from roomlint.review.verdict import Level

if TYPE_CHECKING:
    from collections.abc import Callable, Iterable, Sequence
    from datetime import date

    from roomlint.design.house import House
    from roomlint.design.model import Design
    from roomlint.review.book import Book
    from roomlint.review.engine import Trouble
    from roomlint.review.rule import Rule
    from roomlint.source.place import Problem


@dataclass(frozen=True, slots=True)
class Choices:
    """What the command line decided for the run."""

    today: date
    house: str | None = None
    gate: str | None = None
    """Overrides the house's gates; `never` gates nothing."""


def select(book: Book, only: Sequence[str], without: Sequence[str]) -> tuple[tuple[Rule, ...], list[str]]:
    """Return the rules chosen by ids or chapters, and the names that mean nothing."""
    chapters = {rule.chapter for rule in book.rules}
    unknown = [name for name in (*only, *without) if name not in chapters and name not in book.ids]
    chosen = [
        rule
        for rule in book.rules
        if (not only or {rule.id, rule.chapter} & set(only)) and not {rule.id, rule.chapter} & set(without)
    ]
    return tuple(chosen), unknown


def citing(rules: Iterable[Rule], clause: str) -> tuple[Rule, ...]:
    """Return the rules whose basis cites a document or a clause, in part or whole, whatever the case."""
    wanted = clause.casefold()
    return tuple(
        rule
        for rule in rules
        if any(wanted in f"{basis.document} {basis.edition} {basis.clause}".casefold() for basis in rule.bases)
    )


def run(
    paths: Iterable[str], rules: tuple[Rule, ...], choices: Choices, told: Callable[[], None] | None = None
) -> Review:
    """Review room files one after the other; only what the reports need is kept of each."""
    desk = Desk(house=choices.house)
    rooms: list[RoomReview] = []
    problems: dict[Problem, None] = {}
    troubles: list[Trouble] = []
    for path in paths:
        design, house, found = desk.open_room(path)
        problems.update(dict.fromkeys(found))
        if design is not None and not found:
            reviewed, broken = review_design(design, house, rules, choices)
            rooms.append(reviewed)
            troubles += broken
        if told is not None:
            told()
    return Review(tuple(rooms), rules, tuple(sorted(problems)), tuple(troubles))


def review_design(
    design: Design, house: House, rules: tuple[Rule, ...], choices: Choices
) -> tuple[RoomReview, list[Trouble]]:
    """Review one design under its house."""
    room = Room(design, house, choices.today)
    verdicts, troubles = review_room(room, rules)
    project = design.project
    return (
        RoomReview(
            file=design.file,
            code=project.id,
            title=project.title or "",
            stage=project.stage,
            house=house,
            verdicts=tuple(verdicts),
            open_level=_level(house.opens.get(project.stage or "", "never")),
            gate=_level(choices.gate or house.gates.get(project.stage or "") or house.gate or "error"),
        ),
        troubles,
    )


def _level(name: str) -> Level | None:
    return None if name == "never" else Level(name)
