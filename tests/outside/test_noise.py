"""Ratings of noise against a published example, and A-weighting against the sums of whole curves."""

from __future__ import annotations

import math

import pytest

from roomlint.figures import noise
from roomlint.figures.domain import Refused


def criterion(levels: dict[float, float]) -> float:
    return max(noise.criterion_by_octave(levels).values())


def rating(levels: dict[float, float]) -> float:
    return max(noise.rating_by_octave(levels).values())


EXAMPLE = dict(zip(noise.NC_BANDS_HZ, (61, 56, 54, 50, 44, 43, 39, 34), strict=True))


def test_published_spectrum_reaches_criterion_46_at_500_hz() -> None:
    # A course's example 6.3: tangency at 500 Hz, 45 + 5 (50 - 49) / (54 - 49).
    assert criterion(EXAMPLE) == pytest.approx(46.0)
    assert criterion({500.0: 50.0}) == pytest.approx(46.0)
    assert criterion({**EXAMPLE, 500.0: 45.0}) < 46.0


@pytest.mark.parametrize("number", [15, 20, 25, 30, 35, 40])
def test_a_curve_reaches_itself_in_every_octave(number: int) -> None:
    curve = dict(zip(noise.NC_BANDS_HZ, noise.NC_CURVES[number], strict=True))
    assert {criterion({band: level}) for band, level in curve.items()} == {float(number)}


def test_criterion_refuses_above_the_highest_curve_and_without_octaves() -> None:
    with pytest.raises(Refused):
        criterion({1000.0: 70.0})
    with pytest.raises(Refused):
        criterion({31.5: 50.0})
    assert criterion({1000.0: 5.0}) == 15.0


@pytest.mark.parametrize(
    ("number", "weighted_db"), [(15, 27.1), (20, 31.4), (25, 35.6), (30, 39.8), (35, 44.2)]
)  # fmt: skip
def test_a_weighted_sums_of_criterion_curves(number: int, weighted_db: float) -> None:
    # Summed in another program from the table of IEC 61672-1.
    curve = dict(zip(noise.NC_BANDS_HZ, map(float, noise.NC_CURVES[number]), strict=True))
    assert noise.weighted_db(curve) == pytest.approx(weighted_db, abs=0.1)


NR = {
    10: (62.2, 43.3, 30.7, 21.3, 14.5, 10.0, 6.6, 4.2, 2.3), 15: (65.6, 47.2, 35.0, 26.0, 19.4, 15.0, 11.7, 9.3, 7.5),
    20: (69.0, 51.2, 39.4, 30.6, 24.3, 20.0, 16.8, 14.4, 12.6),
    25: (72.4, 55.1, 43.8, 35.2, 29.1, 25.0, 21.9, 19.5, 17.8),
}  # fmt: skip


@pytest.mark.parametrize("number", NR)
def test_noise_rating_curves_are_the_published_ones(number: int) -> None:
    for band, level in zip(noise.NR_A, NR[number], strict=True):
        assert rating({band: level}) == pytest.approx(number, abs=0.1)


@pytest.mark.parametrize(("number", "weighted_db"), [(10, 25.1), (15, 29.0), (20, 32.9), (25, 36.9)])
def test_a_weighted_sums_of_rating_curves(number: int, weighted_db: float) -> None:
    assert noise.weighted_db(dict(zip(noise.NR_A, NR[number], strict=True))) == pytest.approx(weighted_db, abs=0.15)


@pytest.mark.parametrize(("number", "least_db", "most_db"), [(15, 9.9, 27.1), (20, 14.9, 31.4), (25, 19.9, 35.6)])
def test_a_noise_criterion_holds_between_one_octave_and_the_whole_curve(
    number: float, least_db: float, most_db: float
) -> None:
    # The least is 8 kHz alone, its level less 1.1 dB; the most are the published sums of the curves.
    least, most = noise.criterion_weighted_db(number)
    assert least == pytest.approx(least_db, abs=0.05)
    assert most == pytest.approx(most_db, abs=0.1)


def test_between_and_beyond_the_curves_a_criterion_goes_on_by_proportion_and_by_difference() -> None:
    assert noise.criterion_weighted_db(22.5)[0] == pytest.approx(17.4, abs=0.05)
    # NC-65 at 63 Hz: 80 dB less 26.2 are the least of its octaves.
    assert noise.criterion_weighted_db(70)[0] == pytest.approx(58.8, abs=0.05)
    assert noise.criterion_weighted_db(10)[0] == pytest.approx(4.9, abs=0.05)


@pytest.mark.parametrize(("number", "most_db"), [(10, 25.1), (15, 29.0), (20, 32.9), (25, 36.9)])
def test_a_noise_rating_holds_at_most_its_whole_curve(number: float, most_db: float) -> None:
    # 8 kHz is the least of each: a + b NR less 1.1 dB.
    least, most = noise.rating_weighted_db(number)
    assert least == pytest.approx(-8.0 + 1.03 * number - 1.1, abs=0.005)
    assert most == pytest.approx(most_db, abs=0.15)


def test_without_a_room_a_source_falls_by_six_decibels_a_doubling_and_in_one_it_ends_in_the_diffuse_field() -> None:
    assert noise.in_room_db(40.0, 2.0, 1e9) == pytest.approx(33.98, abs=0.005)
    # Lw = 40 + 10 lg(2 pi) = 47.98; far away Lw + 10 lg(4 / A) = 47.98 - 10 with 40 m2.
    assert noise.in_room_db(40.0, 1e6, 40.0) == pytest.approx(40 + 10 * math.log10(2 * math.pi) - 10.0, abs=0.005)


def test_absorption_of_a_decay_is_sabines() -> None:
    # 72.9 m3 with 0.161 x 72.9 / 0.5 = 23.47 m2.
    assert noise.absorption_m2(72.9, 0.5) == pytest.approx(23.47, abs=0.005)
