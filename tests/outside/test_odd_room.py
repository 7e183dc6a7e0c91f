"""Modes of rooms that are no boxes against shapes whose modes are known."""

import numpy as np
import pytest
from scipy.optimize import brentq
from scipy.special import j1, y1

from roomlint.figures import bass, modes, odd_room
from roomlint.figures.ceiling import Facet

C = 343.0
HEIGHT = 2.7


def _flat(outline: tuple[tuple[float, float], ...], top_hz: float = 100) -> odd_room.OddRoom:
    return odd_room.solve(outline, [Facet(outline, 0.0, 0.0, HEIGHT)], top_hz, C)


def test_box_has_the_modes_of_the_box_formula() -> None:
    found = _flat(((0.0, 0.0), (6.0, 0.0), (6.0, 4.5), (0.0, 4.5))).frequencies_hz
    exact = [mode.frequency_hz for mode in modes.modes((6.0, 4.5, HEIGHT), 100, C)]
    assert found[: len(exact)] == pytest.approx(exact, rel=0.003)


def test_right_isosceles_prism_has_its_textbook_modes() -> None:
    # Neumann eigenvalues of the right isosceles triangle with legs a: pi^2 (m^2 + n^2)/a^2, m >= n >= 0.
    leg = 5.0
    found = _flat(((0.0, 0.0), (leg, 0.0), (leg, leg))).frequencies_hz
    exact = sorted(
        modes.mode_frequency_hz((leg, leg, HEIGHT), (m, n, k), C)
        for m in range(5)
        for n in range(m + 1)
        for k in range(3)
        if m + n + k > 0
    )
    below = [hz for hz in exact if hz < 100]
    assert found[: len(below)] == pytest.approx(below, rel=0.003)


def test_l_shape_has_the_benchmark_eigenvalues() -> None:
    # Published Neumann benchmark of the L of three unit squares (side 2 in all), used for Maxwell eigenvalues too.
    unit = 2.5
    corners = ((-1, -1), (1, -1), (1, 0), (0, 0), (0, 1), (-1, 1))
    found = np.array(_flat(tuple((x * unit, y * unit) for x, y in corners)).frequencies_hz)
    for eigenvalue in (1.47562182408, 3.53403136678, 9.86960440109, 11.3894793979):
        exact = C / (2 * np.pi) * np.sqrt(eigenvalue) / unit
        assert np.abs(found / exact - 1).min() < 0.006


def test_long_room_under_a_gentle_slope_has_the_modes_of_a_linear_horn() -> None:
    # Webster's horn equation with area growing as x: J1(k x1) Y1(k x2) = J1(k x2) Y1(k x1). It neglects the slope's
    # square, here 0.25 %.
    slope, low, length = 0.05, 2.0, 8.0
    outline = ((0.0, 0.0), (length, 0.0), (length, 2.5), (0.0, 2.5))
    found = np.array(odd_room.solve(outline, [Facet(outline, slope, 0.0, low)], 70, C).frequencies_hz)
    near, far = low / slope, low / slope + length

    def closed(k: float) -> float:
        return float(j1(k * near) * y1(k * far) - j1(k * far) * y1(k * near))

    for number in (1, 2, 3):
        guess = number * np.pi / length
        exact = brentq(closed, 0.9 * guess, 1.1 * guess) * C / (2 * np.pi)
        assert np.abs(found / exact - 1).min() < 0.003


def test_response_in_a_box_agrees_with_the_box_formula() -> None:
    outline = ((0.0, 0.0), (6.0, 0.0), (6.0, 4.5), (0.0, 4.5))
    band = [float(hz) for hz in range(20, 81)]
    sources, seats = [(0.3, 0.3, 0.2), (5.7, 4.2, 0.2)], [(4.0, 2.0, 1.2), (3.0, 1.0, 1.1)]
    odd = np.abs(odd_room.transfer(_flat(outline, 80), sources, seats, band, 0.4))
    box = np.abs(bass.transfer(bass.Box((6.0, 4.5, HEIGHT), 0.4, C), sources, seats, band))
    difference = np.abs(20 * np.log10(odd / box))
    assert np.median(difference) < 0.1
    assert difference[box > 0.5 * box.mean()].max() < 1.0
