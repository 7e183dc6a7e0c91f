"""Which tape readings a distance to a wall rests on."""

from __future__ import annotations

import pytest

from roomlint.testing import room_of

TAPE = {"survey": {"tolerance": "30 mm"}}
SEAT = {"id": "a", "ear": {"from_left": "1 m", "from_front": "2 m", "height": "1.2 m"}}
ROOM = {"roomlint": 1, **TAPE, "room": {"size": {"width": "4 m", "length": "5 m"}}, "seats": [SEAT]}
SHAPE = [(0, 0, "front"), (4, 0, "right"), (4, 5, "rear"), (0, 5, "left")]
OUTLINE = [{"from_left": f"{x} m", "from_front": f"{y} m", "wall": wall} for x, y, wall in SHAPE]


def uncertainty(room, wall: str) -> float:
    made = room_of(room)
    ear = made.design.seats[0].ear
    return made.figures.space.wall_distance(ear, made.design.shell.wall_names.index(wall)).u


@pytest.mark.parametrize("room", [ROOM, {**ROOM, "room": {"outline": OUTLINE}}], ids=["size", "outline"])
@pytest.mark.parametrize("wall", ["front", "left"])
def test_a_wall_that_is_measured_from_adds_nothing(room, wall: str) -> None:
    assert uncertainty(room, wall) == pytest.approx(0.03)


@pytest.mark.parametrize("wall", ["right", "rear"])
def test_a_far_wall_adds_the_rooms_own_reading_once(wall: str) -> None:
    # Two independent readings of 30 mm: root of twice 30 squared.
    assert uncertainty(ROOM, wall) == pytest.approx(0.0424264, rel=1e-4)
