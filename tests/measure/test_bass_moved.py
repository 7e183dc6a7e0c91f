"""A subwoofer or a seat that is moved is heard as in the room that has it there, whatever was known before."""

from __future__ import annotations

from typing import Any

import pytest

from roomlint.sample import at, room
from roomlint.testing import room_of

PLACES = {"sub": (-1.9, 3.1, -1.0), "other": (2.0, -2.0, -1.0)}


def drawn(**moved: tuple[float, float, float]) -> Any:
    places = {**PLACES, **moved}
    subwoofers = [{"id": name, "position": at(*places[name])} for name in PLACES]
    seats = tuple(moved.get(f"seat-{number}", place) for number, place in ((2, (0.8, 0.0)), (3, (0.0, -1.0))))
    return room_of(room(seats=seats, subwoofers=subwoofers))


@pytest.mark.parametrize(
    ("name", "place"), [("sub", (-1.4, 3.1, -1.0)), ("other", (2.0, -1.0, -1.0)), ("seat-2", (1.1, 0.0))]
)
def test_what_is_heard_anew_is_what_the_room_drawn_so_gives(name: str, place: tuple[float, ...]) -> None:
    as_read, there = drawn(), drawn(**{name: place})
    points = {thing.id: thing.position for thing in as_read.design.subwoofers}
    points |= {seat.id: seat.ear for seat in as_read.design.seats}
    ends = {thing.id: thing.position for thing in there.design.subwoofers}
    ends |= {seat.id: seat.ear for seat in there.design.seats}
    moves = {
        here.shares[0].reading: (to.value - here.value) / here.shares[0].slope
        for here, to in zip(points[name].values, ends[name].values, strict=True)
    }
    figure = as_read.figures.bass.seat_spread()
    # How many images count is cut by those that are asked for together.
    assert figure.moved(moves) == pytest.approx(there.figures.bass.seat_spread().value, abs=1e-5)
    assert figure.moved(moves) != pytest.approx(figure.value, abs=1e-3)
