"""Remedies: what a move asks for, and what its uncertainty costs."""

from __future__ import annotations

from roomlint.design.base import Missing
from roomlint.measure.figure import Figure
from roomlint.measure.world import Moved, World
from roomlint.review.remedies import _Way
from roomlint.sample import room, speaker
from roomlint.testing import room_of


def test_a_place_at_which_something_more_would_have_to_be_known_is_no_remedy_and_no_fault() -> None:
    drawn = room_of(room(speaker("left", "M+030", -1.0, 2.0)))
    element = drawn.design.loudspeakers[0]
    quantity = element.position.x
    looked = []

    def compute(world: World) -> float:
        looked.append(world)
        if isinstance(world, Moved):
            raise Missing(drawn.design.seats[0], "head_top")
        return world(quantity)

    world = drawn.figures.world
    way = _Way(element, "position.from_left", quantity.shares[0].reading, 0.0, 5.0, world)
    figure = Figure.of("clearance over heads", "m", world, compute)
    assert way.there(figure, 2.0) is None
    assert way.there(figure, 2.0) is None
    assert len(looked) == 2  # as read, and once there
