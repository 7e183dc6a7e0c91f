import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from roomlint.figures import modes as m

sides = st.floats(2.0, 12.0)
sizes = st.tuples(sides, sides, sides)


@settings(max_examples=30, deadline=None)
@given(sizes)
def test_turning_the_room_round_keeps_its_modes(size: m.Size) -> None:
    turned = (size[1], size[0], size[2])
    before = [mode.frequency_hz for mode in m.modes(size, 80, 343)]
    assert [mode.frequency_hz for mode in m.modes(turned, 80, 343)] == pytest.approx(before)


@settings(max_examples=30, deadline=None)
@given(sizes, st.floats(1.1, 2.0))
def test_a_larger_room_has_lower_modes(size: m.Size, factor: float) -> None:
    larger = (size[0] * factor, size[1] * factor, size[2] * factor)
    for indices in ((1, 0, 0), (1, 2, 0), (1, 1, 1)):
        assert m.mode_frequency_hz(larger, indices, 343) == pytest.approx(
            m.mode_frequency_hz(size, indices, 343) / factor
        )


@settings(max_examples=30, deadline=None)
@given(sizes, st.tuples(st.floats(0, 1), st.floats(0, 1), st.floats(0, 1)))
def test_mode_shape_stays_between_minus_one_and_one(size: m.Size, part: m.Point) -> None:
    point = (size[0] * part[0], size[1] * part[1], size[2] * part[2])
    assert -1 <= m.mode_shape(size, (2, 1, 3), point) <= 1


def test_axial_modes_are_the_axial_ones_of_the_whole_list() -> None:
    size = (6.0, 4.5, 2.7)
    picked = tuple(mode for mode in m.modes(size, 200, 343) if mode.kind == "axial")
    found = m.axial_modes(size, 200, 343)
    assert [mode.indices for mode in found] == [mode.indices for mode in picked]


def test_mode_on_the_limit_belongs_to_the_list() -> None:
    assert len(m.modes((6.0, 4.5, 2.7), 343 / 12, 343)) == 1


def test_first_length_mode_is_silent_half_way_and_full_at_the_wall() -> None:
    size = (6.0, 4.5, 2.7)
    assert m.mode_shape(size, (1, 0, 0), (3.0, 1.0, 1.0)) == pytest.approx(0, abs=1e-12)
    assert abs(m.mode_shape(size, (1, 0, 0), (6.0, 1.0, 1.0))) == 1


def test_kinds_are_named_by_how_many_pairs_of_walls_work() -> None:
    kinds = [m.Mode(1.0, indices).kind for indices in ((1, 0, 0), (0, 2, 1), (1, 1, 1))]
    assert kinds == ["axial", "tangential", "oblique"]


def test_room_without_height_is_refused_with_the_reason() -> None:
    with pytest.raises(ValueError, match="positive lengths"):
        m.modes((6.0, 4.5, 0.0), 100, 343)


def test_speed_of_sound_in_feet_is_refused() -> None:
    with pytest.raises(ValueError, match="343 m/s"):
        m.modes((6.0, 4.5, 2.7), 100, 1130)


def test_point_outside_the_room_is_refused() -> None:
    with pytest.raises(ValueError, match="outside"):
        m.mode_shape((6.0, 4.5, 2.7), (1, 0, 0), (6.1, 1.0, 1.0))
