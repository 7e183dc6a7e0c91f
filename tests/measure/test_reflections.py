"""The early reflection that is told is the one that was found loudest, with its own level and delay."""

from __future__ import annotations

import pytest

from roomlint.sample import room, speaker
from roomlint.testing import changed, room_of


def test_the_reflection_that_is_told_is_the_loudest_one() -> None:
    # 1.0 m to the left and 2.0 m ahead at ear height, 1.2 m up: direct sqrt(5) = 2.2361 m, by the floor sqrt(5 + 2.4^2)
    # = 3.2802 m, by the ceiling, 1.4 m above both, sqrt(5 + 2.8^2) = 3.5833 m. The floor: 20 lg(2.2361/3.2802) =
    # -3.328 dB and (3.2802 - 2.2361)/343.2 = 3.042 ms.
    hall = room_of(room(speaker("left", "M+030", -1.0, 2.0)))
    left, seat = hall.design.loudspeakers[0], hall.design.seats[0]
    told, loudest = hall.figures.reflections.first(left, seat), hall.figures.reflections.loudest_db(left, seat)
    assert loudest is not None
    assert told.level.value == pytest.approx(loudest.value)
    assert told.level.value == pytest.approx(-3.328, abs=1e-3)
    assert told.delay.value == pytest.approx(3.042, abs=2e-3)


def test_what_a_tape_may_miss_moves_the_same_reflection_a_little() -> None:
    hall = room_of(changed(room(speaker("left", "M+030", -1.0, 2.0)), {"survey.tolerance": "10 mm"}))
    told = hall.figures.reflections.first(hall.design.loudspeakers[0], hall.design.seats[0])
    # Heights, places and the ceiling each a centimetre off: none brings another surface's level or delay.
    assert 0.0 < told.level.u < 0.1
    assert 0.0 < told.delay.u < 0.1
