"""Chapter bass: the subwoofers at the seats, and the room's modes."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from roomlint.design.base import Several
from roomlint.review import SEATS, No, Subjects, unsaid

if TYPE_CHECKING:
    from collections.abc import Iterator

    from roomlint.design.listening import Seat
    from roomlint.design.shell import Shell
    from roomlint.review import Applies, Room

ROOM_SHELL: Subjects[Shell] = Subjects("room", lambda room: (room.design.shell,))


def _all_seats(room: Room) -> Iterator[Several[Seat]]:
    if room.design.seats:
        yield Several(room.design.seats)


ALL_SEATS: Subjects[Several[Seat]] = Subjects(SEATS.name, _all_seats, SEATS.of)
"""All seats as one subject: what they share, each of them suffers."""


def has_subwoofers(room: Room, _: Any) -> Applies:  # noqa: ANN401  of any subject
    """Whether the room has subwoofers; a file without any may be of a room that has some."""
    if room.design.subwoofers:
        return True
    missing = unsaid(room.design, "subwoofers")
    if missing is not None:
        raise missing
    return No("the room has no subwoofer")


def several_seats(room: Room, _: Any) -> Applies:  # noqa: ANN401  of any subject
    """Whether there is more than one seat to compare."""
    if len(room.figures.bass.placed_seats()) == 1:
        return No("one seat has nothing to differ from")
    return True


def in_a_box(room: Room, _: Any) -> Applies:  # noqa: ANN401  of any subject
    """Whether the formulas of a box hold."""
    return True if room.figures.bass.is_box else No("the room is not a rectangle under a flat ceiling")
