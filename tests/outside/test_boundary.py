"""Loudspeaker and boundary against printed figures and hand arithmetic."""

import math

import pytest

from roomlint.figures import boundary as b

FOOT = 0.3048


@pytest.mark.parametrize(("feet", "hertz"), [(4, 71), (1, 282)])
def test_null_behind_matches_a_consultancys_printed_figures(feet: float, hertz: float) -> None:
    # An acoustics consultancy's article: 4 ft to the wall gives 71 Hz, 1 ft gives 282 Hz.
    assert b.rear_null_hz(feet * FOOT, 1130 * FOOT) == pytest.approx(hertz, abs=0.6)


def test_null_behind_matches_a_live_sound_pages_figure() -> None:
    # A live-sound concept page: 0.86 m gives about 100 Hz.
    assert b.rear_null_hz(0.86, 343) == pytest.approx(100, abs=0.5)


@pytest.mark.parametrize(("extra_feet", "hertz"), [(7, 81), (6, 94)])
def test_general_null_matches_the_consultancys_printed_figures(extra_feet: float, hertz: float) -> None:
    # The same article: a path longer by 7 ft gives 81 Hz, by 6 ft 94 Hz.
    assert b.path_null_hz(10 * FOOT, (10 + extra_feet) * FOOT, 1130 * FOOT) == pytest.approx(hertz, abs=0.5)


@pytest.mark.parametrize(
    ("distance", "null", "depths"),
    [
        (0.20, 428.8, (-19.8, -16.6, -11.0, -6.7)),
        (0.50, 171.5, (-13.1, -11.7, -8.5, -5.5)),
        (1.00, 85.8, (-8.8, -8.1, -6.2, -4.2)),
        (1.50, 57.2, (-6.7, -6.2, -4.9, -3.4)),
    ],
)
def test_null_frequency_and_depth_match_an_independent_table(
    distance: float, null: float, depths: tuple[float, ...]
) -> None:
    direct = 3.5
    assert b.rear_null_hz(distance, 343) == pytest.approx(null, abs=0.06)
    found = [b.null_depth_db(direct, direct + 2 * distance, factor) for factor in (1.0, 0.95, 0.8, 0.6)]
    assert found == pytest.approx(depths, abs=0.06)


def test_side_wall_and_floor_reflections_match_hand_arithmetic() -> None:
    ear, speaker, image = (4.0, 2.25, 1.1), (1.0, 0.9, 1.0), (1.0, -0.9, 1.0)
    assert b.path_null_hz(math.dist(speaker, ear), math.dist(image, ear), 343) == pytest.approx(161.8, abs=0.05)
    assert b.path_null_hz(3.0017, 3.6620, 343) == pytest.approx(259.7, abs=0.05)


@pytest.mark.parametrize(("surfaces", "gain"), [(1, 3.01), (2, 6.02), (3, 9.03)])
def test_power_gain_tends_to_three_decibels_a_surface(surfaces: int, gain: float) -> None:
    assert b.deepest_power_dip([0.3] * surfaces, 0.1, 0.2, 343)[1] == pytest.approx(gain, abs=0.005)


@pytest.mark.parametrize(("surfaces", "depth", "at"), [(1, -1.06, 0.358), (2, -2.9, 0.319), (3, -11.4, 0.281)])
def test_power_dips_of_equal_distances_match_an_independent_computation(surfaces: int, depth: float, at: float) -> None:
    # Consistent with the 5 to 12 dB variation that J. Audio Eng. Soc. 22 (1974) reports (abstract).
    frequency, level = b.deepest_power_dip([0.5] * surfaces, 100, 400, 343, step_hz=0.25)
    assert level == pytest.approx(depth, abs=0.05)
    assert 0.5 * frequency / 343 == pytest.approx(at, abs=0.002)


def test_staggered_distances_leave_a_shallow_dip() -> None:
    _, level = b.deepest_power_dip([0.45, 0.75, 1.2], 30, 300, 343)
    assert level == pytest.approx(-1.6, abs=0.05)


@pytest.mark.parametrize(
    "distances", [(0.5, 0.5, 0.5), (0.62, 0.6, 0.61), (0.9, 0.88, 0.91), (0.45, 0.5, 1.3), (1.1, 1.1)]
)
def test_a_coarse_scan_finds_the_bottom_of_a_narrow_dip(distances: tuple[float, ...]) -> None:
    """The sum of sin(u)/u over the images, tried every hundredth of a hertz, apart from the program."""
    best = math.inf
    for n in range(4000, 40001):
        k2 = 4.0 * math.pi * n / 100.0 / 343.0
        total = 1.0
        for mask in range(1, 2 ** len(distances)):
            u = k2 * math.sqrt(sum(d * d for i, d in enumerate(distances) if mask >> i & 1))
            total += math.sin(u) / u
        best = min(best, total)
    _, level = b.deepest_power_dip(distances, 40.0, 400.0, 343.0, step_hz=4.0)
    assert level == pytest.approx(10.0 * math.log10(best), abs=0.01)
