"""One run: which rules, which rooms, and what comes of them."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from roomlint.design.reader import nearest
from roomlint.measure.figure import Figure
from roomlint.review.desk import Desk
from roomlint.review.engine import Trouble, in_book_order, review_room, unjudged
from roomlint.review.remedies import with_remedies
from roomlint.review.review import Review, RoomReview, WorkedOut
from roomlint.review.room import Room
from roomlint.review.verdict import Kind, Level
from roomlint.source.files import whole
from roomlint.source.place import Problem
from roomlint.source.say import is_customary

if TYPE_CHECKING:
    from collections.abc import Callable, Iterable, Iterator, Sequence
    from datetime import date

    from roomlint.design.house import House
    from roomlint.design.model import Design
    from roomlint.measure.scene import Scene
    from roomlint.review.book import Book
    from roomlint.review.rule import AnyRule
    from roomlint.review.spool import Spool
    from roomlint.review.verdict import Verdict
    from roomlint.source.files import Files

SPOOL_FROM = 200
"""Rooms above which reviews are kept on the disk."""
HOUSE = "house"
"""The chapter of the window rules that a house file writes as data."""


@dataclass(frozen=True, slots=True)
class Choices:
    """What the command line decided for the run."""

    today: date
    house: str | None = None
    gate: str | None = None
    """Overrides the house's gates; `never` gates nothing."""
    only: tuple[str, ...] = ()
    """Ids and chapters to run; empty for all."""
    without: tuple[str, ...] = ()
    """Ids and chapters to leave out."""
    revision: str = ""
    """The git revision that the files are read from; empty for the files as they are."""
    gate_new: bool = False
    """Whether only what is new or worse than an earlier review gates."""
    exact: bool = True
    """Whether a report tells, or a comparison asks, how far the figures that pass may be off: it takes a while."""
    scene: bool = False
    """Whether a drawing is wanted: the room's scene is then kept with its review."""


def select(book: Book, only: Sequence[str], without: Sequence[str]) -> tuple[tuple[AnyRule, ...], list[str]]:
    """Return the rules chosen by ids or chapters, and the names that mean nothing.

    Names of the chapter `house` are left to each house file.
    """
    chapters = {rule.chapter for rule in book.rules}
    unknown = [
        name for name in (*only, *without) if name not in chapters and name not in book.ids and not _is_of_house(name)
    ]
    return _chosen(book.rules, only, without), unknown


def _is_of_house(name: str) -> bool:
    return name.partition(".")[0] == HOUSE


def _chosen(rules: Iterable[AnyRule], only: Sequence[str], without: Sequence[str]) -> tuple[AnyRule, ...]:
    return tuple(
        rule
        for rule in rules
        if (not only or {rule.id, rule.chapter} & set(only)) and not {rule.id, rule.chapter} & set(without)
    )


def citing(rules: Iterable[AnyRule], clause: str) -> tuple[AnyRule, ...]:
    """Return the rules whose basis cites a document or a clause, in part or whole, whatever the case."""
    wanted = clause.casefold()
    return tuple(
        rule
        for rule in rules
        if any(wanted in f"{basis.document} {basis.edition} {basis.clause}".casefold() for basis in rule.bases)
    )


@dataclass(frozen=True, slots=True)
class One:
    """What came of one room file."""

    room: RoomReview | None
    problems: tuple[Problem, ...] = ()
    troubles: tuple[Trouble, ...] = ()


class Reviewer:
    """Reviews room files one after the other; what rooms share is read once."""

    def __init__(self, book: Book, choices: Choices) -> None:
        self.book = book
        self.choices = choices
        self.rules = _chosen(book.rules, choices.only, choices.without)
        self.desk = Desk(_files(choices.revision), choices.house, book.rules, choices.today)

    def one(self, path: str) -> One:
        """Review one room file."""
        design, house, problems = self.desk.open_room(path)
        if design is None:
            return One(None, tuple(problems))
        own = self.of_house(house)
        rules = (*self.rules, *_chosen(own, self.choices.only, self.choices.without))
        unknown = list(self._unknown(house, own, path))
        if unknown:
            return One(None, (*problems, *unknown))
        ids = (*self.book.ids, *(rule.id for rule in own))
        room, troubles = review_design(design, house, rules, self.choices, ids)
        if house.decisions:
            from roomlint.review.house_check import loosened

            room = replace(room, loosened=loosened(house, self.book.rules))
        return One(room, tuple(problems), (*self._left_out(design, house, rules), *troubles))

    @staticmethod
    def of_house(house: House) -> tuple[AnyRule, ...]:
        """Return the window rules of a house."""
        if not house.window_rules:
            return ()
        from roomlint.review.window_rules import window_rules  # needed only where a house file has some

        return window_rules(house)

    def _left_out(self, design: Design, house: House, rules: tuple[AnyRule, ...]) -> Iterator[Trouble]:
        """Tell of required chapters that the run leaves out: it goes on, and ends as not complete."""
        if house.required:
            from roomlint.review.house_check import check_required

            for problem in check_required(house, design.project.stage, self.book.rules, rules):
                place = problem.place
                yield Trouble("file.required-chapter", f"{place.file}:{place.line}: {problem.text.rstrip('.')}")

    def _unknown(self, house: House, own: tuple[AnyRule, ...], path: str) -> Iterator[Problem]:
        ids = {rule.id for rule in own}
        for name in (*self.choices.only, *self.choices.without):
            if _is_of_house(name) and name != HOUSE and name not in ids:
                text = f"{name!r} is no window rule of this house; {nearest(name, ids)}"
                yield Problem(whole(house.file or path), text)


def run(
    paths: Sequence[str], book: Book, choices: Choices, jobs: int = 1, told: Callable[[], None] | None = None
) -> Review:
    """Review room files; only what the reports need is kept of each, in the order of the paths."""
    reviewer = Reviewer(book, choices)
    rooms: list[RoomReview] | Spool = _spool() if len(paths) > SPOOL_FROM else []
    houses: dict[str, House] = {}
    problems: dict[Problem, None] = {}
    troubles: list[Trouble] = []
    if jobs > 1 and len(paths) > 1:
        from roomlint.review.many import each_in_processes  # loads only when asked for

        found = each_in_processes(paths, choices, jobs, reviewer.desk)
    else:
        found = map(reviewer.one, paths)
    for one in found:
        problems.update(dict.fromkeys(one.problems))
        troubles += one.troubles
        if one.room is not None:
            rooms.append(one.room)
            houses[one.room.house.file] = one.room.house
        if told is not None:
            told()
    # Two houses may each have a rule of the same id; both are told of.
    rules = {(rule.id, rule.package): rule for rule in reviewer.rules}
    for house in houses.values():
        for rule in _chosen(reviewer.of_house(house), choices.only, choices.without):
            rules.setdefault((rule.id, rule.package), rule)
    return Review(
        tuple(rooms) if isinstance(rooms, list) else rooms,
        tuple(rules[key] for key in sorted(rules)),
        tuple(sorted(problems)),
        tuple(troubles),
    )


def _spool() -> Spool:
    from roomlint.review.spool import Spool  # loads only when there are many rooms

    return Spool()


def _files(revision: str) -> Files | None:
    if not revision:
        return None
    from roomlint.source.revision import Revision  # loads only when a revision is read

    return Revision(revision)


def review_design(
    design: Design, house: House, rules: tuple[AnyRule, ...], choices: Choices, rule_ids: tuple[str, ...] = ()
) -> tuple[RoomReview, list[Trouble]]:
    """Review one design under its house; `rule_ids` are all that exist, whether they run or not."""
    room = Room(design, house, choices.today, rule_ids, exact=choices.exact)
    outcome = review_room(room, rules)
    verdicts = in_book_order(with_remedies(outcome, room), rules)
    project = design.project
    found = (
        RoomReview(
            file=design.file,
            code=project.id,
            title=project.title or "",
            stage=project.stage,
            house=house,
            verdicts=tuple(map(_settled, verdicts)) if choices.exact else verdicts,
            # A part of the book says nothing of what the rest would have looked at.
            unjudged=() if choices.only or choices.without else unjudged(room),
            open_level=_level(house.opens.get(project.stage or "", "never")),
            gate=_level(choices.gate or house.gates.get(project.stage or "") or house.gate or "error"),
            gate_new=choices.gate_new,
            units=house.units or ("us" if is_customary(design.at) else "metric"),
            worked=_worked(design),
            sheets=_sheets(design) if choices.exact else {},
            scene=_scene(room) if choices.scene else None,
        ),
        outcome.troubles,
    )
    room.figures.release()
    return found


def _scene(room: Room) -> Scene:
    """Return what a drawing of a room shows; made last, for what it looks at counts as judged by nobody."""
    from roomlint.measure.scene_of import scene_of  # loads only where a drawing is wanted

    return scene_of(room.figures)


def _settled(verdict: Verdict) -> Verdict:
    """Return a verdict that holds on to neither design nor file; one that does not pass is settled already."""
    if verdict.kind is not Kind.PASS or verdict.figure is None:
        return verdict
    return replace(verdict, figure=verdict.figure.settled())


def _worked(design: Design) -> tuple[WorkedOut, ...]:
    return tuple(
        WorkedOut(one.element.words, one.key, Figure.plain(one.key, "m", one.quantity.value, u=one.quantity.u), one.way)
        for one in design.worked
    )


def _sheets(design: Design) -> dict[str, str]:
    """Return what the sheets of a room say, each as a digest; a one-off that the room describes is its own business."""
    import hashlib  # only who compares needs it

    apart = (product for product in design.products if product.place.file != design.file)
    return {product.id: hashlib.sha256(repr(product.at.plain()).encode()).hexdigest() for product in apart}


def _level(name: str) -> Level | None:
    return None if name == "never" else Level(name)
