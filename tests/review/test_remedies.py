"""Remedies: what a move asks for, and what its uncertainty costs."""

from __future__ import annotations

from types import SimpleNamespace
from typing import Any

import pytest

from roomlint.design.base import Missing
from roomlint.design.quantity import Reading
from roomlint.measure.figure import Figure
from roomlint.measure.world import Moved, World
from roomlint.review.judging import Judged
from roomlint.review.remedies import COARSE, _breaks, _held, _makes_an_error, _runs, _span, _whole
from roomlint.review.verdict import Level
from roomlint.review.ways import Way
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
    way = Way(element, "position.from_left", quantity.shares[0].reading, 0.0, 5.0, world)
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
    way = Way(element, "position.from_left", quantity.shares[0].reading, 0.0, 5.0, world)
    assert _breaks(held, way, there) is breaks


def every_run(holds, low: float, high: float, *, from_high: bool) -> list[tuple[float, float]]:
    return list(_runs(holds, low, high, COARSE, from_high=from_high))


def test_where_something_holds_is_the_same_from_either_end() -> None:
    def holds(value: float) -> bool:
        return 0.3 <= value <= 1.1 or value >= 2.2

    upward, downward = (every_run(holds, 0.0, 4.0, from_high=way) for way in (False, True))
    assert [pytest.approx(run, abs=0.01) for run in upward] == [(0.3, 1.1), (2.2, 4.0)]
    assert downward == upward[::-1]


def test_nothing_beyond_the_nearest_run_is_looked_at() -> None:
    # The reading is 5; from the near end of the span down, what holds ends at 3.
    reading = Reading(5.0, 0.0, "m")
    way: Any = SimpleNamespace(reading=reading)
    looked: list[float] = []

    def holds(value: float) -> bool:
        looked.append(value)
        return value >= 3.0 or value <= 1.0

    found = _whole(_span(way, 0.0, 4.0, 0), holds)
    assert found is not None
    assert (found.low, found.high) == pytest.approx((3.0, 4.0), abs=0.01)
    assert min(looked) > 2.0


@pytest.mark.parametrize(
    ("level", "windows", "asked"),
    [
        (Level.ERROR, at_most(1.2, "m"), True),
        (Level.WARNING, at_most(1.2, "m", error=3.0), True),
        (Level.WARNING, at_most(1.2, "m"), False),
        (Level.NOTE, at_most(1.2, "m"), False),
    ],
)
def test_only_windows_that_know_errors_are_asked_for_one(level: Level, windows, asked) -> None:
    looked = []

    def compute(world: World) -> float:
        looked.append(world)
        return world(quantity)

    drawn = room_of(room(speaker("left", "M+030", -1.0, 2.0)))
    element = drawn.design.loudspeakers[0]
    quantity = element.position.x
    world = drawn.figures.world
    plain: Any = SimpleNamespace(guarded=False)
    figure = Figure.of("way from the left", "m", world, compute)
    held = _held(Judged(plain, element, figure, windows, level, 0, fixed=False))
    before = len(looked)
    way = Way(element, "position.from_left", quantity.shares[0].reading, 0.0, 5.0, world)
    _makes_an_error(held, way, 4.0)
    assert (len(looked) > before) is asked
