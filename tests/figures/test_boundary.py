import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from roomlint.figures import boundary as b


@settings(max_examples=40, deadline=None)
@given(st.floats(1, 6), st.floats(0.1, 4), st.floats(0, 1))
def test_null_is_never_above_the_direct_sound(direct: float, extra: float, factor: float) -> None:
    assert b.null_depth_db(direct, direct + extra, factor) <= 0


@settings(max_examples=40, deadline=None)
@given(st.lists(st.floats(0.1, 3), min_size=1, max_size=3), st.floats(20, 400))
def test_power_gain_does_not_depend_on_the_order_of_the_walls(distances: list[float], frequency: float) -> None:
    there = b.deepest_power_dip(distances, frequency, 2 * frequency, 343)
    assert b.deepest_power_dip(distances[::-1], frequency, 2 * frequency, 343) == pytest.approx(there)


def test_general_null_becomes_the_quarter_wave_rule_straight_ahead() -> None:
    assert b.path_null_hz(3.0, 4.0, 343) == pytest.approx(b.rear_null_hz(0.5, 343))


def test_narrow_port_still_wants_fifteen_centimetres() -> None:
    assert b.port_gap_wanted_m(0.05) == 0.15
    assert b.port_gap_wanted_m(0.10) == 0.20
    assert b.port_gap_needed_m(0.10) == 0.10


def test_plinth_gap_gives_the_port_its_own_area() -> None:
    diameter = 0.12
    assert math.pi * diameter * b.plinth_gap_m(diameter) == pytest.approx(math.pi * diameter**2 / 4)


def test_wall_inside_the_loudspeaker_is_refused() -> None:
    with pytest.raises(ValueError, match="positive"):
        b.rear_null_hz(0, 343)


def test_reflected_path_shorter_than_direct_is_refused() -> None:
    with pytest.raises(ValueError, match="longer"):
        b.path_null_hz(3.0, 2.9, 343)


def test_reflection_factor_above_one_is_refused() -> None:
    with pytest.raises(ValueError, match="between 0 and 1"):
        b.null_depth_db(3.0, 4.0, 1.2)


def test_four_walls_at_right_angles_are_refused() -> None:
    with pytest.raises(ValueError, match="right angles"):
        b.deepest_power_dip([1, 1, 1, 1], 50, 60, 343)
