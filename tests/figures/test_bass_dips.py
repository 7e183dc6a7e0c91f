import numpy as np
import pytest

from roomlint.figures import bass, bass_dips

BAND = [float(hz) for hz in range(14, 114)]


def test_two_seats_are_told_their_whole_difference() -> None:
    levels = np.array([[80.0, 50.8], [80.0, 80.0]])
    assert bass_dips.against_others_db(levels)[0].tolist() == pytest.approx([0.0, -29.2])


def test_seat_against_two_others_by_hand() -> None:
    relative = bass_dips.against_others_db(np.array([[60.0], [70.0], [80.0]]))
    assert relative[:, 0].tolist() == [-15.0, 0.0, 15.0]


def test_lone_seat_has_no_others() -> None:
    with pytest.raises(ValueError, match="others"):
        bass_dips.against_others_db(np.zeros((1, 3)))


def test_lone_seat_still_has_a_dip_against_its_own_band() -> None:
    levels = np.full((1, len(BAND)), 80.0)
    levels[0, BAND.index(57.0)] = 60.0
    hz, depth = bass_dips.lowest(bass_dips.against_own_band_db(levels, BAND), BAND, 20, 80)
    assert hz.tolist() == [57.0]
    assert depth.tolist() == pytest.approx([-20], abs=0.3)


def test_dip_a_hertz_wide_is_no_note_lost_and_one_of_a_third_of_an_octave_is() -> None:
    narrow, wide = np.full((1, len(BAND)), 80.0), np.full((1, len(BAND)), 80.0)
    narrow[0, BAND.index(57.0)] = 40.0
    wide[0, BAND.index(50.0) : BAND.index(64.0) + 1] = 60.0
    both = np.stack([narrow, wide])
    _, depths = bass_dips.lowest(bass_dips.notes_against_own_band_db(both, BAND), BAND, 20, 80)
    assert depths[0, 0] > -0.6
    # A hundredth of the power over a third of the octave: the octave keeps two thirds, 1.7 dB down.
    assert depths[1, 0] == pytest.approx(-20 + 1.7, abs=0.4)


def test_even_tilt_is_no_dip() -> None:
    tilt = -12 * np.log2(np.asarray(BAND) / 20)[None]
    _, depth = bass_dips.lowest(bass_dips.against_own_band_db(tilt, BAND), BAND, 20, 80)
    # mean power over an octave of a slope of 12 dB an octave lies 10 lg(sinh(1.38)/1.38) = 1.35 dB above its middle
    assert depth[0] > -2


def test_null_of_one_seat_alone_is_not_common() -> None:
    relative = np.zeros((2, len(BAND)))
    relative[0, 30] = -20
    assert bass_dips.lowest_of_all_seats(relative, BAND, 20, 80)[1] == 0.0


def test_common_null_is_as_deep_as_at_the_seat_that_loses_least() -> None:
    relative = np.zeros((2, len(BAND)))
    relative[:, BAND.index(57.0)] = [-20, -14]
    relative[:, BAND.index(34.0)] = [-6, -30]
    assert bass_dips.lowest_of_all_seats(relative, BAND, 20, 80) == (57.0, -14.0)


def test_row_at_three_quarters_loses_the_second_length_mode_at_every_seat() -> None:
    # Subwoofers front and rear cancel the first mode along the length and leave the second; a row at 3/4 sits in its
    # node. Between the pressure zone and the modes from 57 Hz on nothing carries the band, and no seat is spared.
    length, width, height = 6.0, 4.5, 2.7
    pair = [bass.BassSource((0.1, width / 2, 0.2)), bass.BassSource((length - 0.1, width / 2, 0.2))]
    seats = [(0.75 * length, width / 2 + off, 1.1) for off in (-0.6, 0.0, 0.6)]
    levels = bass.response_db(bass.Box((length, width, height), 0.4, 343.0), pair, seats, BAND)
    relative = bass_dips.against_own_band_db(levels, BAND)
    hz, depth = bass_dips.lowest_of_all_seats(relative, BAND, 20, 80)
    assert 40 < hz < 60
    assert depth < -10
    _, others = bass_dips.lowest(bass_dips.against_others_db(levels), BAND, 20, 80)
    assert others.min() > depth / 2


def test_band_without_frequencies_is_refused() -> None:
    with pytest.raises(ValueError, match="no frequency"):
        bass_dips.lowest(np.zeros((1, 2)), [30.0, 40.0], 50, 60)
