import math

import numpy as np
import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from roomlint.figures import bass

SIZE = (6.0, 4.5, 2.7)
ROOM = bass.Box(SIZE, 0.4, 343.0)
BAND = [float(f) for f in range(20, 81, 4)]
parts_of_room = st.tuples(st.floats(0, 1), st.floats(0, 1), st.floats(0, 1))


def at(part: tuple[float, float, float]) -> tuple[float, float, float]:
    return (SIZE[0] * part[0], SIZE[1] * part[1], SIZE[2] * part[2])


@settings(max_examples=20, deadline=None)
@given(parts_of_room, parts_of_room)
def test_source_and_receiver_change_places_without_a_trace(
    first: tuple[float, float, float], second: tuple[float, float, float]
) -> None:
    assume(math.dist(at(first), at(second)) > 0.1)
    there = bass.transfer(ROOM, [at(first)], [at(second)], BAND)
    back = bass.transfer(ROOM, [at(second)], [at(first)], BAND)
    assert np.allclose(there, back, rtol=1e-9)


@settings(max_examples=20, deadline=None)
@given(parts_of_room, parts_of_room)
def test_mirrored_room_answers_alike(source: tuple[float, float, float], seat: tuple[float, float, float]) -> None:
    assume(math.dist(at(source), at(seat)) > 0.1)
    mirrored = [(1 - x, y, z) for x, y, z in (source, seat)]
    here = bass.transfer(ROOM, [at(source)], [at(seat)], BAND)
    there = bass.transfer(ROOM, [at(mirrored[0])], [at(mirrored[1])], BAND)
    assert np.allclose(here, there, rtol=1e-6, atol=1e-9)


def test_two_equal_sources_in_one_place_add_six_decibels() -> None:
    source, seat = bass.BassSource((0.3, 0.3, 0.2)), (4.0, 2.0, 1.1)
    one = bass.response_db(ROOM, [source], [seat], BAND)
    two = bass.response_db(ROOM, [source, source], [seat], BAND)
    assert np.allclose(two - one, 20 * np.log10(2))


def test_inverted_twin_silences_its_source_down_to_the_floor() -> None:
    spot, seat = (0.3, 0.3, 0.2), (4.0, 2.0, 1.1)
    pair = [bass.BassSource(spot), bass.BassSource(spot, inverted=True)]
    assert np.allclose(bass.response_db(ROOM, pair, [seat], BAND), -80.0)


def test_half_a_period_of_delay_works_as_inversion() -> None:
    spot, other, seat = (0.3, 0.3, 0.2), (5.7, 4.2, 0.2), (4.0, 2.0, 1.1)
    delayed = bass.response_db(ROOM, [bass.BassSource(spot), bass.BassSource(other, delay_s=1 / 80)], [seat], [40.0])
    inverted = bass.response_db(ROOM, [bass.BassSource(spot), bass.BassSource(other, inverted=True)], [seat], [40.0])
    assert np.allclose(delayed, inverted)


def test_level_setting_shifts_a_lone_source_by_as_much() -> None:
    spot, seat = (0.3, 0.3, 0.2), (4.0, 2.0, 1.1)
    plain = bass.response_db(ROOM, [bass.BassSource(spot)], [seat], BAND)
    lower = bass.response_db(ROOM, [bass.BassSource(spot, level_db=-3.0)], [seat], BAND)
    assert np.allclose(plain - lower, 3.0)


def test_below_the_first_mode_a_closed_room_lifts_the_level_towards_twelve_decibels_an_octave() -> None:
    lively = bass.Box(SIZE, 10.0, 343.0)  # loss would take some of the rise
    levels = bass.response_db(lively, [bass.BassSource((0.3, 0.3, 0.2))], [(4.0, 2.0, 1.1)], [2.5, 5.0])
    assert levels[0, 0] - levels[0, 1] == pytest.approx(12, abs=0.5)


def test_smoothing_leaves_a_flat_response_alone() -> None:
    flat = np.full((2, len(BAND)), 71.0)
    assert np.allclose(bass.smoothed_db(flat, BAND, 6), flat)


def test_smoothing_fills_a_narrow_dip() -> None:
    fine = [float(f) for f in range(20, 81)]
    levels = np.zeros((1, len(fine)))
    levels[0, 40] = -40.0
    assert bass.smoothed_db(levels, fine, 6)[0, 40] > -1.5


def test_seat_outside_the_room_is_refused() -> None:
    with pytest.raises(ValueError, match="outside"):
        bass.transfer(ROOM, [(0.3, 0.3, 0.3)], [(7.0, 1.0, 1.0)], BAND)


def test_room_without_decay_is_refused() -> None:
    with pytest.raises(ValueError, match="decay"):
        bass.transfer(bass.Box(SIZE, 0.0, 343.0), [(0.3, 0.3, 0.3)], [(4.0, 1.0, 1.0)], BAND)


def test_response_without_sources_is_refused() -> None:
    with pytest.raises(ValueError, match="at least one source"):
        bass.response_db(ROOM, [], [(4.0, 1.0, 1.0)], BAND)


def test_source_in_the_listeners_head_is_refused() -> None:
    with pytest.raises(ValueError, match="no point"):
        bass.transfer(ROOM, [(3.0, 2.0, 1.0)], [(3.0, 2.05, 1.0)], BAND)


def test_low_pass_is_three_or_six_decibels_down_at_its_corner_by_class() -> None:
    corner = [80.0]
    for order in (2, 4):
        butterworth = bass.low_pass(bass.LowPass(80.0, "butterworth", order), corner)
        assert 20 * np.log10(abs(butterworth[0])) == pytest.approx(-3.0103, abs=1e-4)
        linkwitz = bass.low_pass(bass.LowPass(80.0, "linkwitz-riley", order), corner)
        assert 20 * np.log10(abs(linkwitz[0])) == pytest.approx(-6.0206, abs=1e-4)


def test_low_pass_of_second_order_is_the_textbook_fraction() -> None:
    x = np.array([10.0, 40.0, 80.0, 150.0])
    s = 1j * x / 80
    assert np.allclose(bass.low_pass(bass.LowPass(80.0, "butterworth", 2), x), 1 / (1 + np.sqrt(2) * s + s**2))
    assert np.allclose(bass.low_pass(bass.LowPass(80.0, "linkwitz-riley", 2), x), 1 / (1 + s) ** 2)


def test_low_pass_of_fourth_order_turns_the_phase_by_half_a_turn_at_its_corner() -> None:
    for shape in ("butterworth", "linkwitz-riley"):
        gain = bass.low_pass(bass.LowPass(80.0, shape), [80.0])[0]
        assert gain.real < 0
        assert gain.imag == pytest.approx(0, abs=1e-12)


@pytest.mark.parametrize("order", [0, 3, 10])
def test_low_pass_that_nobody_builds_is_refused(order: int) -> None:
    with pytest.raises(ValueError, match="order"):
        bass.low_pass(bass.LowPass(80.0, "linkwitz-riley", order), [80.0])


def test_low_pass_lowers_a_lone_source_by_its_own_curve() -> None:
    spot, seat = (0.3, 0.3, 0.2), (4.0, 2.0, 1.1)
    plain = bass.response_db(ROOM, [bass.BassSource(spot)], [seat], BAND)
    cut = bass.response_db(ROOM, [bass.BassSource(spot, low_pass=bass.LowPass(60.0))], [seat], BAND)
    assert np.allclose(plain - cut, -20 * np.log10(np.abs(bass.low_pass(bass.LowPass(60.0), BAND))))


FRONT, REAR = (0.1, 2.25, 0.2), (5.9, 2.25, 0.2)


def test_front_and_rear_subwoofer_in_phase_leave_the_first_length_mode_alone() -> None:
    pair = [bass.BassSource(FRONT), bass.BassSource(REAR)]
    assert abs(bass.mode_drive(SIZE, (1, 0, 0), pair, 343.0)) < 1e-12


def test_front_and_inverted_rear_subwoofer_drive_the_first_length_mode_fully() -> None:
    pair = [bass.BassSource(FRONT), bass.BassSource(REAR, inverted=True)]
    assert abs(bass.mode_drive(SIZE, (1, 0, 0), pair, 343.0)) == pytest.approx(np.cos(np.pi / 60))
    assert abs(bass.mode_drive(SIZE, (2, 0, 0), pair, 343.0)) < 1e-12


def test_delay_of_half_a_period_drives_a_mode_as_inversion_does() -> None:
    half = 1 / (2 * 343.0 / 12)
    pair = [bass.BassSource(FRONT), bass.BassSource(REAR, delay_s=half)]
    assert abs(bass.mode_drive(SIZE, (1, 0, 0), pair, 343.0)) == pytest.approx(np.cos(np.pi / 60))


def test_six_decibels_less_leave_a_third_of_the_mode() -> None:
    # amplitudes 1 and a = 10^(-6/20) against each other: (1 - a)/(1 + a)
    pair = [bass.BassSource((0.0, 2.25, 0.2)), bass.BassSource((6.0, 2.25, 0.2), level_db=-6.0)]
    less = 10 ** (-6 / 20)
    assert abs(bass.mode_drive(SIZE, (1, 0, 0), pair, 343.0)) == pytest.approx((1 - less) / (1 + less))
