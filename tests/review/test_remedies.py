"""Remedies: what a move asks for, and what its uncertainty costs."""

from __future__ import annotations

from types import SimpleNamespace
from typing import Any

import pytest

from roomlint.design.base import Missing
from roomlint.measure.figure import Figure
from roomlint.measure.world import Moved, World
from roomlint.review.judging import Judged
from roomlint.review.remedies import _breaks, _held, _Way
from roomlint.review.verdict import Level
from roomlint.review.window import at_most
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


@pytest.mark.parametrize(
    ("most", "there", "breaks"),
    [
        (2.0, 1.0, False),  # 1.5 m passes, and passes there
        (2.0, 2.4, True),  # passes, and would fail there
        (1.2, 1.0, False),  # 0.3 m outside, and would pass there
        (1.2, 1.35, False),  # fails there too, by less
        (1.2, 1.52, False),  # by more, but by less than a tenth of what it is outside already
        (1.2, 1.6, True),  # by a third more
        (1.2, 3.2, True),  # past the edge at which it is an error
    ],
)
def test_a_move_breaks_what_would_fail_there_and_passes_now_or_fails_by_less(most: float, there: float, breaks) -> None:
    drawn = room_of(room(speaker("left", "M+030", -1.0, 2.0)))
    element = drawn.design.loudspeakers[0]
    quantity = element.position.x
    world = drawn.figures.world
    figure = Figure.of("way from the left", "m", world, lambda there: there(quantity))
    assert figure.value == pytest.approx(1.5)
    plain: Any = SimpleNamespace(guarded=False)
    held = _held(Judged(plain, element, figure, at_most(most, "m", error=3.0), Level.WARNING, 0, fixed=False))
    way = _Way(element, "position.from_left", quantity.shares[0].reading, 0.0, 5.0, world)
    assert _breaks(held, way, there) is breaks
