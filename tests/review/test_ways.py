"""How far somebody would move a thing: a seat goes a step to either side, anything else from wall to wall."""

from __future__ import annotations

import pytest

from roomlint.review.ways import SEAT_STEP_M, ways_of
from roomlint.sample import room, speaker
from roomlint.testing import room_of

READ = room_of(room(speaker("left", "M+030", -1.0, 2.0)))


def test_a_seat_goes_a_step_to_either_side() -> None:
    seat = READ.design.seats[0]
    across = next(way for way in ways_of(seat, "ear", READ) if way.key.endswith("from_left"))
    now = across.reading.value
    assert (across.low, across.high) == pytest.approx((now - SEAT_STEP_M, now + SEAT_STEP_M))


def test_a_loudspeaker_goes_from_wall_to_wall() -> None:
    left = READ.design.loudspeakers[0]
    across = next(way for way in ways_of(left, "position", READ) if way.key.endswith("from_left"))
    assert (across.low, across.high) == pytest.approx((0.0, 5.0))
