"""Window rules: rules of a house file that need no Python, one figure against one window."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from roomlint.design.base import Missing, Seen
from roomlint.measure.names import NAMED, Named
from roomlint.review.basis import Basis, Grade
from roomlint.review.rule import Rule
from roomlint.review.subjects import Subjects
from roomlint.review.units import in_unit
from roomlint.review.verdict import Level
from roomlint.review.window import Window, Windows

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator

    from roomlint.design.house import House, WindowRule
    from roomlint.review.room import Room
    from roomlint.review.rule import Answer, AnyRule

ALL = "all"


def window_rules(house: House) -> tuple[AnyRule, ...]:
    """Return the rules that a house file writes as data; the file has been checked."""
    return tuple(_rule(entry, house) for entry in sorted(house.window_rules, key=lambda entry: entry.id))


def window_of(entry: WindowRule, unit: str) -> Window:
    """Return a window rule's window in its figure's unit; raises `ValueError` when it makes none."""
    low = in_unit(entry.low, unit) if entry.low is not None else None
    high = in_unit(entry.high, unit) if entry.high is not None else None
    return Window(low, high, unit)


def _rule(entry: WindowRule, house: House) -> AnyRule:
    named = NAMED[entry.figure]
    says = f"{named.name.replace('-', ' ')} {{figure}}; {{window}} wanted"
    return Rule(
        id=entry.id,
        level=Level(entry.level),
        bases=(basis_of(entry),),
        each=Subjects(_kind(named), _each(entry, named)),
        judge=_judge(named),
        says={"fail": says, "hint": entry.message} if entry.message else {"fail": says},
        since="0.1.0",
        docstring=_page(entry, named, house),
        window=Windows(window_of(entry, named.unit)),
        caution=entry.caution,
        package=house.file,
    )


def _kind(named: Named) -> str:
    return f"{' or '.join(named.of)} that the rule names"


def basis_of(entry: WindowRule) -> Basis:
    """Return the basis that a window rule gives."""
    given = {key: str(value) for key, value in entry.basis.items() if key != "grade"}
    return Basis(Grade(str(entry.basis["grade"])), **given)


def _judge(named: Named) -> Callable[[Room, Any], Answer]:
    def judge(room: Room, subject: Any) -> Answer:  # noqa: ANN401  a source, a seat, or one as heard at the other
        parts = (subject.source, subject.seat) if isinstance(subject, Seen) else (subject,)
        return named.compute(room.figures, *parts)

    return judge


def _each(entry: WindowRule, named: Named) -> Callable[[Room], Iterator[Any]]:
    labels: Any = entry.each.get("loudspeakers", ())
    subwoofers = bool(entry.each.get("subwoofers"))
    every = entry.each.get("seats") == "every"

    def each(room: Room) -> Iterator[Any]:
        design = room.design
        if labels and ALL not in labels:
            yield from (Missing(speaker, "label") for speaker in design.loudspeakers if speaker.label is None)
        sources: list[Any] = [each for each in design.loudspeakers if ALL in labels or each.label in labels]
        sources += design.subwoofers if subwoofers else ()
        if named.of == ("seats",):
            yield from design.seats if every else (room.reference_seat,)
        elif not named.heard:
            yield from sources
        elif sources:
            seats = design.seats if every else (room.reference_seat,)
            yield from (Seen(source, seat) for source in sources for seat in seats)

    return each


def _page(entry: WindowRule, named: Named, house: House) -> str:
    title = entry.title if entry.title.endswith(".") else f"{entry.title}."
    return (
        f"{title}\n\n"
        f"Why: {basis_of(entry)}.\n\n"
        f"How decided: The figure `{named.name}` ({named.means}) is compared with the window of {house.file}.\n\n"
        f"Remedy: {entry.message or 'Bring the figure into the window.'}\n\n"
        "When to waive: When the team's lead accepts the departure on record."
    )
