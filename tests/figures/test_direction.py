"""What must hold of directions, layouts and delays whatever the numbers."""

from __future__ import annotations

import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from roomlint.figures import coverage, delay, direction, layouts

ANGLE = st.floats(-720, 720)
PLACE = st.tuples(st.floats(-5, 5), st.floats(-5, 5), st.floats(-2, 2))


@given(ANGLE)
def test_wrapped_angle_is_the_same_direction_in_range(angle: float) -> None:
    wrapped = direction.wrap_deg(angle)
    assert -180 < wrapped <= 180
    assert math.cos(math.radians(wrapped - angle)) == pytest.approx(1)


@given(st.floats(-179, 179), st.floats(-89, 89), st.floats(-180, 180))
def test_direction_comes_back_from_its_vector(azimuth: float, elevation: float, facing: float) -> None:
    point = direction.direction_vector(azimuth + facing, elevation)
    assert direction.azimuth_deg((0, 0, 0), facing, point) == pytest.approx(azimuth, abs=1e-6)
    assert direction.elevation_deg((0, 0, 0), point) == pytest.approx(elevation, abs=1e-6)


@given(st.lists(st.floats(-180, 180), min_size=1, max_size=12))
def test_gaps_fill_the_circle(azimuths: list[float]) -> None:
    assert sum(gap.width_deg for gap in direction.gaps_deg(azimuths)) == pytest.approx(360)


def test_a_point_in_the_ear_has_no_direction() -> None:
    with pytest.raises(ValueError, match="same place"):
        direction.azimuth_deg((1, 2, 3), 0.0, (1, 2, 3))


@given(st.floats(0, 50), st.sampled_from([0.01, 0.02, 0.1, 1.0]))
def test_rounding_is_within_half_a_step(value: float, step: float) -> None:
    assert abs(delay.rounded_to_step(value, step) - value) <= step / 2 + 1e-9


@pytest.mark.parametrize(
    ("arrivals", "latest_way", "common"),
    [
        ((9.0, 9.0, 12.0), 8.0, 9.0),  # one late of three moves nothing
        ((2.0, 9.0, 9.0), 9.0, 9.0),  # nor does one early
        ((7.0, 9.0), 9.0, 9.0),  # of two, the farther one's way
        ((7.0, 9.0), 11.0, 9.0),  # or the later of the two, where both are early
        ((8.0,), 5.0, 8.0),
    ],
)
def test_the_common_arrival_is_the_middle_one(arrivals: tuple[float, ...], latest_way: float, common: float) -> None:
    assert delay.common_arrival_ms(arrivals, latest_way) == common
    assert delay.common_arrival_ms(arrivals[::-1], latest_way) == common


def test_no_arrivals_have_no_common_one() -> None:
    with pytest.raises(ValueError, match="one arrival"):
        delay.common_arrival_ms((), 1.0)


def test_speed_of_sound_refuses_what_the_formula_does_not_cover() -> None:
    with pytest.raises(ValueError, match="-20 to"):
        delay.speed_of_sound_m_s(60)


@pytest.mark.parametrize("name", layouts.LAYOUTS)
def test_every_nominal_position_is_allowed_and_every_pair_mirrored(name: str) -> None:
    layout = layouts.layout_of(name)
    for label, position in layout.positions.items():
        if position.azimuth_deg is None or position.elevation_deg is None:
            continue
        assert any(direction.in_circular_range(position.azimuth_deg, *allowed) for allowed in position.azimuth_ranges)
        low, high = position.elevation_range
        assert low <= position.elevation_deg <= high
        other = layout.positions[layouts.parse_label(label).mirrored]
        assert other.elevation_range == position.elevation_range


@pytest.mark.parametrize("text", ["L", "M030", "M+30", "U+SC", "M+190", "X+030", "m+030", ""])
def test_what_is_no_label_is_refused(text: str) -> None:
    with pytest.raises(ValueError, match="loudspeaker label"):
        layouts.parse_label(text)


def test_label_names_its_side() -> None:
    assert (layouts.parse_label("U-135").azimuth_deg, layouts.parse_label("U-135").side) == (-135, -1)
    assert layouts.parse_label("M+180").side == 0


@settings(max_examples=50)
@given(st.floats(-80, 80), st.floats(-80, 80))
def test_swivelled_and_tilted_axis_reads_back_in_the_walls_own_frame(swivel: float, tilt: float) -> None:
    normal = (0.0, -1.0, 0.0)
    axis = coverage.mounted_axis(normal, swivel_deg=swivel, tilt_deg=tilt)
    parts = coverage.off_axis_parts(normal, (0, 0, 0), axis)
    assert (parts.horizontal_deg, parts.vertical_deg) == pytest.approx((swivel, tilt), abs=1e-6)


def test_baffle_of_a_ceiling_loudspeaker_leans_toward_its_top() -> None:
    axis = coverage.mounted_axis((0, 0, -1), coverage.FRONT, baffle_deg=15)
    assert axis == pytest.approx((0, math.sin(math.radians(15)), -math.cos(math.radians(15))))


@given(st.floats(-180, 180), st.floats(-180, 180), st.floats(0, 359), st.floats(-720, 720))
def test_the_way_out_of_an_arc_is_the_same_after_a_turn(angle: float, start: float, span: float, turn: float) -> None:
    way = direction.outside_range_deg(angle, start, start + span)
    assert direction.outside_range_deg(angle + turn, start + turn, start + span + turn) == pytest.approx(way, abs=1e-6)


def test_the_way_out_of_an_arc_goes_the_short_way_round() -> None:
    assert direction.outside_range_deg(-178, 180, 180) == pytest.approx(2.0)
    assert direction.outside_range_deg(0, -180, 180) == 0.0
