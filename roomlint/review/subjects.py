"""What rules judge: all elements of a kind, and what is said when a room has none."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Generic, TypeAlias, TypeVar

from roomlint.design.base import Missing, Pair, Seen, Subject

if TYPE_CHECKING:
    from collections.abc import Callable, Iterable, Iterator

    from roomlint.design.listening import Loudspeaker, Seat, Subwoofer
    from roomlint.design.model import Design
    from roomlint.design.supply import Circuit
    from roomlint.review.room import Room
    from roomlint.review.rule import No

S = TypeVar("S", bound=Subject)
Source: TypeAlias = "Loudspeaker | Subwoofer"
Thing: TypeAlias = "Loudspeaker | Subwoofer | Seat"


@dataclass(frozen=True, slots=True)
class Subjects(Generic[S]):
    """All elements of a kind that a room has.

    `find` yields a `Missing` in the place of an element of which it cannot be said whether it is of that kind: the
    verdict is then open, and names the key that would tell.
    """

    name: str
    """What one of them is, so that a room without any can be told: `no {name} in this room`."""
    find: Callable[[Room], Iterable[S | Missing]]
    of: tuple[str, ...] = ()
    """The lists and parts of a file that they stand in, such as `room.openings`: where the file says nothing of one of
    them, that there is none is not known."""
    early: Callable[[Room], No | None] | None = None
    """Why none is wanted yet, where the file gives none: that there is none in the room would be too much said."""


def labelled(*labels: str) -> Subjects[Loudspeaker]:
    """Return the loudspeakers that carry one of the labels; one without a label may be any of them."""
    wanted = frozenset(labels)

    def find(room: Room) -> Iterator[Loudspeaker | Missing]:
        for speaker in room.design.loudspeakers:
            if speaker.label is None:
                yield Missing(speaker, "label")
            elif speaker.label in wanted:
                yield speaker

    return Subjects(f"loudspeaker labelled {' or '.join(labels)}", find, ("loudspeakers",))


def layered(*letters: str, name: str) -> Subjects[Loudspeaker]:
    """Return the loudspeakers of some layers, by the first letters of their labels."""

    def find(room: Room) -> Iterator[Loudspeaker | Missing]:
        for speaker in room.design.loudspeakers:
            if speaker.label is None:
                yield Missing(speaker, "label")
            elif speaker.label.rstrip("0123456789SC+-") in letters:
                yield speaker

    return Subjects(name, find, ("loudspeakers",))


def pair_of(left: str, right: str, name: str) -> Subjects[Pair[Loudspeaker]]:
    """Return the pair that carries two labels, when both of it are there."""

    def find(room: Room) -> Iterator[Pair[Loudspeaker] | Missing]:
        one, other = next(room.design.labelled(left), None), next(room.design.labelled(right), None)
        if one is not None and other is not None:
            yield Pair(one, other)
            return
        # A loudspeaker without a label may be the one that is not there.
        yield from (Missing(speaker, "label") for speaker in room.design.loudspeakers if speaker.label is None)

    return Subjects(name, find, ("loudspeakers",))


def at_each_seat(sources: Subjects[S]) -> Subjects[Seen[S, Seat]]:
    """Return the sources as each seat hears them."""

    def find(room: Room) -> Iterator[Seen[S, Seat] | Missing]:
        for source in sources.find(room):
            if isinstance(source, Missing):
                yield source
            else:
                yield from (Seen(source, seat) for seat in room.design.seats)

    return Subjects(f"{sources.name} with a seat", find, (*sources.of, "seats"))


def _pairs(room: Room) -> Iterator[Pair[Loudspeaker] | Missing]:
    yield from room.figures.arrangement.pairs()
    # A loudspeaker without a label may be the other one of a pair.
    yield from (Missing(speaker, "label") for speaker in room.design.loudspeakers if speaker.label is None)


def _things(room: Room) -> Iterable[Loudspeaker | Subwoofer | Seat]:
    return (*room.design.sources, *room.design.seats)


PAIRS: Subjects[Pair[Loudspeaker]] = Subjects("left and right pair", _pairs, ("loudspeakers",))
THINGS: Subjects[Thing] = Subjects("loudspeaker, subwoofer or seat", _things, ("loudspeakers", "subwoofers", "seats"))
LOUDSPEAKERS: Subjects[Loudspeaker] = Subjects("loudspeaker", lambda room: room.design.loudspeakers, ("loudspeakers",))
SUBWOOFERS: Subjects[Subwoofer] = Subjects("subwoofer", lambda room: room.design.subwoofers, ("subwoofers",))
SOURCES: Subjects[Source] = Subjects(
    "loudspeaker or subwoofer", lambda room: room.design.sources, ("loudspeakers", "subwoofers")
)
SEATS: Subjects[Seat] = Subjects("seat", lambda room: room.design.seats, ("seats",))
CIRCUITS: Subjects[Circuit] = Subjects("circuit", lambda room: room.design.circuits, ("circuits",))
ROOM: Subjects[Design] = Subjects("room", lambda room: (room.design,))
