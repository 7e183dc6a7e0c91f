"""Window rules: rules of a house file that need no Python, one figure against one window."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from roomlint.design.base import heard_at
from roomlint.measure.names import NAMED, Named
from roomlint.review.basis import Basis, Grade
from roomlint.review.rule import Rule
from roomlint.review.units import in_unit
from roomlint.review.verdict import Against, Level
from roomlint.review.window import Window

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator

    from roomlint.design.base import Element, Subject
    from roomlint.design.house import House, WindowRule
    from roomlint.measure.figure import Figure
    from roomlint.review.room import Room
    from roomlint.review.verdict import Says

ALL = "all"


def window_rules(house: House) -> tuple[Rule, ...]:
    """Return the rules that a house file writes as data; the file has been checked."""
    return tuple(_rule(entry, house) for entry in sorted(house.window_rules, key=lambda entry: entry.id))


def window_of(entry: WindowRule, unit: str) -> Window:
    """Return a window rule's window in its figure's unit; raises `ValueError` when it makes none."""
    low = in_unit(entry.low, unit) if entry.low is not None else None
    high = in_unit(entry.high, unit) if entry.high is not None else None
    return Window(low, high, unit)


def _rule(entry: WindowRule, house: House) -> Rule:
    named = NAMED[entry.figure]
    return Rule(
        id=entry.id,
        level=Level(entry.level),
        bases=(basis_of(entry),),
        each=_each(entry, named),
        judge=_judge(entry, named),
        reads=_reads(named),
        since="0.1.0",
        docstring=_page(entry, named, house),
        window=window_of(entry, named.unit),
        caution=entry.caution,
        package=house.file,
    )


def basis_of(entry: WindowRule) -> Basis:
    """Return the basis that a window rule gives."""
    given = {key: str(value) for key, value in entry.basis.items() if key != "grade"}
    return Basis(Grade(str(entry.basis["grade"])), **given)


def _judge(entry: WindowRule, named: Named) -> Callable[[Room, Subject], Figure | Against | Says]:
    def judge(room: Room, subject: Subject) -> Figure | Against | Says:
        return Against(named.compute(room.figures, *subject.elements), says=entry.message)

    return judge


def _each(entry: WindowRule, named: Named) -> Callable[[Room], Iterator[Subject]]:
    labels: Any = entry.each.get("loudspeakers", ())
    subwoofers = bool(entry.each.get("subwoofers"))
    every = entry.each.get("seats") == "every"

    def each(room: Room) -> Iterator[Subject]:
        design = room.design
        sources: list[Element] = [each for each in design.loudspeakers if ALL in labels or each.label in labels]
        sources += design.subwoofers if subwoofers else ()
        if named.of == ("seats",):
            yield from design.seats if every else (room.reference_seat,)
        elif not named.heard:
            yield from sources
        elif sources:
            seats = design.seats if every else (room.reference_seat,)
            yield from (heard_at(source, seat) for source in sources for seat in seats)

    return each


def _reads(named: Named) -> tuple[str, ...]:
    of = [f"{kind}[].ear" if kind == "seats" else f"{kind}[].position" for kind in named.of]
    return (*of, "seats[].ear") if named.heard else tuple(of)


def _page(entry: WindowRule, named: Named, house: House) -> str:
    title = entry.title if entry.title.endswith(".") else f"{entry.title}."
    return (
        f"{title}\n\n"
        f"Why: {basis_of(entry)}.\n\n"
        f"How decided: The figure `{named.name}` ({named.means}) is compared with the window of {house.file}.\n\n"
        f"Remedy: {entry.message or 'Bring the figure into the window.'}\n\n"
        "When to waive: When the team's lead accepts the departure on record."
    )
