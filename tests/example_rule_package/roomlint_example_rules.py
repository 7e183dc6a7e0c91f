"""Rules of an invented firm."""

from __future__ import annotations

from typing import TYPE_CHECKING

from roomlint.review import SEATS, Level, between, need, practice, rule

if TYPE_CHECKING:
    from roomlint.design.listening import Seat
    from roomlint.review import Figure, Room


@rule(
    "layout.example-ear-height",
    level=Level.NOTE,
    basis=practice("the firm's own habit"),
    each=SEATS,
    window=between(0.9, 1.3, "m"),
    says="ear {figure} above the floor; {window} wanted",
    since="1.0.0",
    at="ear.height",
)
def ear_height(room: Room, seat: Seat) -> Figure:
    """Ears are at the height of people who sit.

    Why: A seat drawn at another height moves every angle of the room.

    How decided: The height of the ear above the floor is compared with the range.

    Remedy: Correct the ear's height.

    When to waive: On a riser, where the height is meant.
    """
    height = need(seat.ear, seat, "ear").z
    return room.figures.angles.figure("height of the ear", "m", lambda world: world(height))
