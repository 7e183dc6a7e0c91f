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
    (dip,) = bass_dips.deepest_dips(bass_dips.against_own_band_db(levels, BAND), BAND, 20, 80)
    assert dip.hz == 57.0
    assert dip.depth_db == pytest.approx(-20, abs=0.3)


def test_even_tilt_is_no_dip() -> None:
    tilt = -12 * np.log2(np.asarray(BAND) / 20)[None]
    (dip,) = bass_dips.deepest_dips(bass_dips.against_own_band_db(tilt, BAND), BAND, 20, 80)
    # mean power over an octave of a slope of 12 dB an octave lies 10 lg(sinh(1.38)/1.38) = 1.35 dB above its middle
    assert dip.depth_db > -2


def test_null_of_one_seat_alone_is_not_common() -> None:
    relative = np.zeros((2, len(BAND)))
    relative[0, 30] = -20
    assert bass_dips.common_nulls(relative, BAND, 20, 80, 3) == ()


def test_common_nulls_are_as_deep_as_at_the_seat_that_loses_least_and_deepest_first() -> None:
    relative = np.zeros((2, len(BAND)))
    relative[:, BAND.index(57.0)] = [-20, -14]
    relative[:, BAND.index(34.0)] = [-6, -9]
    found = bass_dips.common_nulls(relative, BAND, 20, 80, 3)
    assert found == (bass_dips.Dip(57.0, -14.0), bass_dips.Dip(34.0, -6.0))


def test_row_at_three_quarters_loses_the_second_length_mode_at_every_seat() -> None:
    # Subwoofers front and rear cancel the first mode along the length and leave the second; a row at 3/4 sits in its
    # node. Between the pressure zone and the modes from 57 Hz on nothing carries the band, and no seat is spared.
    length, width, height = 6.0, 4.5, 2.7
    pair = [bass.BassSource((0.1, width / 2, 0.2)), bass.BassSource((length - 0.1, width / 2, 0.2))]
    seats = [(0.75 * length, width / 2 + off, 1.1) for off in (-0.6, 0.0, 0.6)]
    levels = bass.response_db(bass.Box((length, width, height), 0.4, 343.0), pair, seats, BAND)
    relative = bass_dips.against_own_band_db(levels, BAND)
    deepest = bass_dips.common_nulls(relative, BAND, 20, 80, 6)[0]
    assert 40 < deepest.hz < 60
    assert deepest.depth_db < -10
    others = bass_dips.deepest_dips(bass_dips.against_others_db(levels), BAND, 20, 80)
    assert min(dip.depth_db for dip in others) > deepest.depth_db / 2


def test_band_without_frequencies_is_refused() -> None:
    with pytest.raises(ValueError, match="no frequency"):
        bass_dips.deepest_dips(np.zeros((1, 2)), [30.0, 40.0], 50, 60)
