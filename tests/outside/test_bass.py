"""Modal response of a box against image sources and independently computed tables."""

import math

import numpy as np
import pyroomacoustics
import pytest

from roomlint.figures import bass
from roomlint.figures.domain import Refused

FOOT = 0.3048
ROOM_A = (6.0, 4.5, 2.7)
BAND = [float(f) for f in range(20, 81)]


def test_response_matches_an_independent_modal_sum() -> None:
    frequencies = [20, 28.5833, 40, 50, 57.1667, 63.5185, 80, 100]
    expected = [7.55, 11.74, -3.02, -5.88, 5.03, -7.70, 9.42, -3.79]
    found = bass.response_db(
        bass.Box(ROOM_A, 0.5, 343.0), [bass.BassSource((0.5, 0.5, 0.3))], [(4.0, 2.0, 1.2)], frequencies
    )
    assert found[0].tolist() == pytest.approx(expected, abs=0.1)


def _image_source_db(absorption: float, order: int, frequencies: np.ndarray) -> np.ndarray:
    rate = 2000
    room = pyroomacoustics.ShoeBox(
        ROOM_A, fs=rate, materials=pyroomacoustics.Material(absorption), max_order=order, air_absorption=False
    )
    room.set_sound_speed(343.0)
    room.add_source([0.5, 0.5, 0.3])
    room.add_microphone([4.0, 2.0, 1.2])
    was = pyroomacoustics.constants.get("rir_hpf_enable")
    pyroomacoustics.constants.set("rir_hpf_enable", val=False)  # its high-pass would cut the very band under test
    room.compute_rir()
    pyroomacoustics.constants.set("rir_hpf_enable", val=was)
    impulse = room.rir[0][0]
    delay = pyroomacoustics.constants.get("frac_delay_length") // 2
    times = (np.arange(impulse.size) - delay) / rate
    # the program's amplitude is already damping over distance, that is 1 at 1 m
    spectrum = np.exp(-2j * np.pi * np.outer(frequencies, times)) @ impulse
    return np.asarray(20 * np.log10(np.abs(spectrum)))


def _peaks(levels: np.ndarray, frequencies: np.ndarray) -> list[float]:
    higher = (levels[1:-1] > levels[:-2]) & (levels[1:-1] > levels[2:])
    return [float(f) for f in frequencies[1:-1][higher]]


def test_response_agrees_with_image_sources() -> None:
    # pyroomacoustics (image sources), uniform absorption 0.3; Sabine decay of that room.
    frequencies = np.arange(15, 150.25, 0.5)
    images = _image_source_db(0.3, 50, frequencies)
    decay = 24 * math.log(10) / 343 * 72.9 / (110.7 * 0.3)
    modal = bass.response_db(
        bass.Box(ROOM_A, decay, 343.0),
        [bass.BassSource((0.5, 0.5, 0.3))],
        [(4.0, 2.0, 1.2)],
        frequencies.tolist(),
    )[0]
    difference = modal - images
    assert np.median(np.abs(difference)) < 1.5
    assert abs(difference.mean()) < 0.5
    below = frequencies < 60
    for image_peak in _peaks(images[below], frequencies[below]):
        assert min(abs(image_peak - peak) for peak in _peaks(modal, frequencies)) <= 1.0


def _layout_levels(layout: str) -> np.ndarray:
    length, width, height, e = 24 * FOOT, 20 * FOOT, 9 * FOOT, 0.1
    front, rear = (e, width / 2), (length - e, width / 2)
    left, right = (length / 2, e), (length / 2, width - e)
    corners = [(e, e), (e, width - e), (length - e, e), (length - e, width - e)]
    spots = {
        "1 corner": corners[:1],
        "1 front mid": [front],
        "2 front corners": corners[:2],
        "2 opposite corners": [corners[0], corners[3]],
        "2 mid front and back": [front, rear],
        "2 mid sides": [left, right],
        "4 corners": corners,
        "4 midpoints": [front, rear, left, right],
    }[layout]
    sources = [bass.BassSource((x, y, e), level_db=-20 * math.log10(len(spots))) for x, y in spots]
    grid = [(i - 1.5) * 2 * FOOT for i in range(4)]
    seats = [(length / 2 + along, width / 2 + across, 1.1) for along in grid for across in grid]
    return bass.response_db(bass.Box((length, width, height), 0.5, 343.0), sources, seats, BAND)


@pytest.mark.parametrize(
    ("layout", "variance", "deviation", "span", "excess"),
    [
        ("1 corner", 18.8, 4.09, 14.2, 5.31),
        ("1 front mid", 21.2, 3.91, 11.1, 4.75),
        ("2 front corners", 13.6, 3.31, 9.4, 3.99),
        ("2 opposite corners", 5.6, 2.13, 6.8, 2.68),
        ("2 mid front and back", 2.6, 1.50, 3.7, 1.78),
        ("2 mid sides", 5.8, 2.14, 5.6, 2.70),
        ("4 corners", 2.7, 1.37, 3.5, 1.71),
        ("4 midpoints", 2.8, 1.34, 3.5, 1.89),
    ],
)
def test_seats_of_known_layouts_differ_as_in_an_independent_modal_sum(
    layout: str, variance: float, deviation: float, span: float, excess: float
) -> None:
    levels = _layout_levels(layout)
    assert levels.var(axis=0).mean() == pytest.approx(variance, abs=0.25)
    assert levels.std(axis=0).mean() == pytest.approx(deviation, abs=0.1)
    assert np.ptp(levels, axis=0).mean() == pytest.approx(span, abs=0.15)
    assert (levels.max(axis=0) - levels.mean(axis=0)).mean() == pytest.approx(excess, abs=0.1)


def test_layouts_rank_as_the_published_study_found() -> None:
    # Conclusions of the 2002 study on several subwoofers, second-hand: four at the wall midpoints vary least, two at
    # opposite midpoints are almost as good, one subwoofer is worst.
    spread = {
        name: _layout_levels(name).std(axis=0).mean()
        for name in ("1 corner", "2 opposite corners", "2 mid front and back", "4 corners", "4 midpoints")
    }
    assert sorted(spread, key=spread.__getitem__) == [
        "4 midpoints",
        "4 corners",
        "2 mid front and back",
        "2 opposite corners",
        "1 corner",
    ]


def _converged(
    size: tuple[float, float, float],
    source: tuple[float, float, float],
    ear: tuple[float, float, float],
    frequencies: np.ndarray,
    decay: float,
) -> np.ndarray:
    """Sum over the modes of two axes, the third in closed form, by definition.

    A mode across falls off as exp(-k d) along the third axis: as many are summed as leave less than 1e-11 of it.
    """
    third = int(np.argmax(np.abs(np.subtract(source, ear))))
    first, second = (axis for axis in range(3) if axis != third)
    apart = abs(source[third] - ear[third])
    number = np.arange(math.ceil(25.3 * max(size) / (math.pi * apart)))
    shares = [
        np.where(number > 0, 2, 1)
        * np.cos(math.pi * number * source[axis] / size[axis])
        * np.cos(math.pi * number * ear[axis] / size[axis])
        / size[axis]
        for axis in (first, second)
    ]
    across = (math.pi * number / size[first])[:, None] ** 2 + (math.pi * number / size[second]) ** 2
    height, low, high = size[third], *sorted((source[third], ear[third]))
    found = []
    for hz in frequencies:
        angular = 2 * math.pi * hz
        root = np.sqrt(across - (angular**2 - 2j * 3 * math.log(10) / decay * angular) / 343.0**2)
        # cosh(a low) cosh(a (H - high))/(a sinh(a H)), in exponentials that do not overflow
        steps = (high - low, high + low, 2 * height - high - low, 2 * height - high + low)
        closed = sum(np.exp(-root * step) for step in steps) / (2 * root * (1 - np.exp(-2 * root * height)))
        found.append(4 * math.pi * (shares[0][:, None] * shares[1] * closed).sum())
    return np.array(found)


@pytest.mark.parametrize(
    ("size", "sources", "ears"),
    [
        (ROOM_A, [(0.5, 0.5, 0.3), (5.6, 4.1, 0.3)], [(4.0, 2.0, 1.2), (4.0, 2.9, 1.2)]),
        ((5.1, 3.8, 2.4), [(0.3, 1.9, 0.2), (4.8, 1.9, 0.2)], [(3.4, 1.3, 1.1), (3.4, 2.5, 1.1)]),
        ((7.3, 5.2, 2.6), [(0.2, 0.2, 0.2), (7.1, 0.2, 0.2), (3.6, 5.0, 1.1)], [(5.4, 2.6, 1.1), (4.6, 1.4, 1.15)]),
    ],
)
def test_levels_in_a_box_are_those_of_the_converged_sum_in_dips_too(
    size: tuple[float, float, float],
    sources: list[tuple[float, float, float]],
    ears: list[tuple[float, float, float]],
) -> None:
    band = np.arange(20.0, 81.0)
    exact = np.array([sum(_converged(size, source, ear, band, 0.5) for source in sources) for ear in ears])
    found = bass.response_db(bass.Box(size, 0.5, 343.0), [bass.BassSource(at) for at in sources], ears, band.tolist())
    assert np.abs(found - 20 * np.log10(np.abs(exact))).max() < 0.001


def test_lone_source_and_ear_half_a_metre_apart_are_those_of_the_converged_sum() -> None:
    band = np.arange(20.0, 81.0)
    source, ear = (3.0, 2.0, 0.9), (3.3, 2.3, 1.2)
    exact = 20 * np.log10(np.abs(_converged(ROOM_A, source, ear, band, 0.5)))
    found = bass.response_db(bass.Box(ROOM_A, 0.5, 343.0), [bass.BassSource(source)], [ear], band.tolist())
    assert np.abs(found[0] - exact).max() < 0.001


def test_seats_differ_as_in_an_independent_table() -> None:
    # An independent modal sum, 0.5 s, 20 to 80 Hz by 1 Hz: 24 x 20 x 9 ft, 16 seats in a centred grid of 6 x 6 ft, ears
    # 1.1 m; a subwoofer 0.1 m from walls and floor. Mean of loudest less quietest: one in a corner 14.2 dB, one amid
    # the front 11.1 dB, two in opposite corners 6.8 dB.
    length, width = 24 * FOOT, 20 * FOOT
    room = bass.Box((length, width, 9 * FOOT), 0.5, 343.0)
    seats = [(length / 2 + i * FOOT, width / 2 + j * FOOT, 1.1) for i in (-3, -1, 1, 3) for j in (-3, -1, 1, 3)]
    corner, other, amid = (0.1, 0.1, 0.1), (length - 0.1, width - 0.1, 0.1), (0.1, width / 2, 0.1)
    for places, expected in (([corner], 14.2), ([amid], 11.1), ([corner, other], 6.8)):
        levels = bass.response_db(room, [bass.BassSource(place) for place in places], seats, BAND)
        assert bass.seat_range_db(levels) == pytest.approx(expected, abs=0.15)


def test_what_all_sources_share_is_left_out() -> None:
    gains = np.array([[1.0 + 0j, 0.5], [1.0, -0.5]])
    assert np.abs(bass.evened(gains)) == pytest.approx(np.ones((2, 2)))
    assert bass.evened(gains)[1, 1] == pytest.approx(-1.0)
    assert (bass.evened(np.zeros((2, 1), dtype=complex)) == 0).all()


def test_a_crossover_sums_flat_and_cancels_turned_round() -> None:
    # Textbook: low- and high-pass of an even Linkwitz-Riley are in phase everywhere and sum to a level of one.
    frequencies = [20.0, 56.6, 80.0, 113.0, 400.0]
    low = bass.low_pass(bass.LowPass(80.0), frequencies)
    high = bass.high_pass(bass.LowPass(80.0), frequencies)
    assert np.abs(low + high) == pytest.approx(np.ones(5), abs=1e-9)
    assert np.abs(low - high)[2] == pytest.approx(0.0, abs=1e-9)
    assert bass.together_db(low, high) > 0.0
    assert bass.together_db(low, -high) == pytest.approx(-bass.together_db(low, high))


def test_what_has_nothing_to_do_with_each_other_adds_nothing() -> None:
    assert bass.together_db(np.array([1.0 + 0j]), np.array([1j])) == pytest.approx(0.0)
    with pytest.raises(Refused):
        bass.together_db(np.zeros(2, dtype=complex), np.ones(2, dtype=complex))
