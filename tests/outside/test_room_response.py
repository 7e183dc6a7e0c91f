"""Modes and pressures of rooms against shapes whose modes are known, and against one another's solvers."""

import numpy as np
import pytest
from scipy.optimize import brentq
from scipy.special import j1, y1

from roomlint import roof
from roomlint.figures import modes, prism_room, room_response, sections
from roomlint.figures.bass import level_db
from roomlint.figures.element_room import REFINEMENTS, element_modes
from roomlint.figures.room_shape import shape_of
from roomlint.roof import Facet, volume_m3

C = 343.0
HEIGHT = 2.7
BAND = [float(hz) for hz in range(20, 81)]
OBLONG = ((0.0, 0.0), (6.0, 0.0), (6.0, 4.5), (0.0, 4.5))
UNIT = 2.5
ELL = tuple((x * UNIT, y * UNIT) for x, y in ((-1, -1), (1, -1), (1, 0), (0, 0), (0, 1), (-1, 1)))
SOURCES = [(0.3, 0.3, 0.2), (5.7, 4.2, 0.2), (3.0, 0.2, 1.2)]
EARS = [(4.0, 2.0, 1.2), (3.0, 1.6, 1.1), (2.2, 3.0, 1.0)]


def solved(outline: tuple[tuple[float, float], ...], top_hz: float = 100) -> room_response.RoomResponse:
    return room_response.solve(outline, [Facet(outline, 0.0, 0.0, HEIGHT)], top_hz, C)


def by_elements(outline: tuple, facets: tuple[Facet, ...], top_hz: float, refine: float = 1.0) -> np.ndarray:
    found = element_modes(outline, facets, volume_m3(facets), top_hz, C, refine)
    return np.sqrt(found.wavenumbers_squared[1:]) * C / (2 * np.pi)


@pytest.mark.parametrize(("refine", "within"), [(1.0, 0.003), (REFINEMENTS[-1], 0.01)])
def test_box_cut_into_elements_has_the_modes_of_the_box_formula(refine: float, within: float) -> None:
    exact = [mode.frequency_hz for mode in modes.modes((6.0, 4.5, HEIGHT), 100, C)]
    found = by_elements(OBLONG, roof.flat(OBLONG, HEIGHT), 100, refine)
    assert found[: len(exact)] == pytest.approx(exact, rel=within)


@pytest.mark.parametrize("upright", [False, True])
def test_box_as_a_section_has_the_modes_of_the_box_formula(upright: bool) -> None:  # noqa: FBT001
    k = 2 * np.pi * 100 / C
    section = (
        sections.upright_section((0.0, 2.0, 4.5), (HEIGHT,) * 3, k) if upright else sections.plan_section(OBLONG, k)
    )
    found = prism_room.prism_modes(section, 6.0 if upright else HEIGHT, 0 if upright else 2, 100, C)
    exact = [mode.frequency_hz for mode in modes.modes((6.0, 4.5, HEIGHT), 100, C)]
    frequencies = np.sqrt(found.wavenumbers_squared[1:]) * C / (2 * np.pi)
    assert frequencies[: len(exact)] == pytest.approx(exact, rel=1e-5)


def test_right_isosceles_prism_has_its_textbook_modes() -> None:
    # Neumann eigenvalues of the right isosceles triangle with legs a: pi^2 (m^2 + n^2)/a^2, m >= n >= 0.
    leg = 5.0
    found = solved(((0.0, 0.0), (leg, 0.0), (leg, leg))).frequencies_hz
    exact = sorted(
        modes.mode_frequency_hz((leg, leg, HEIGHT), (m, n, k), C)
        for m in range(5)
        for n in range(m + 1)
        for k in range(3)
        if m + n + k > 0
    )
    below = [hz for hz in exact if hz < 100]
    assert found[: len(below)] == pytest.approx(below, rel=0.003)


@pytest.mark.parametrize(("refine", "within"), [(None, 0.0006), (1.0, 0.006), (REFINEMENTS[-1], 0.015)])
def test_l_shape_has_the_benchmark_eigenvalues(refine: float | None, within: float) -> None:
    # Published Neumann benchmark of the L of three unit squares (side 2 in all), used for Maxwell eigenvalues too.
    found = (
        np.array(solved(ELL).frequencies_hz)
        if refine is None
        else by_elements(ELL, roof.flat(ELL, HEIGHT), 100, refine)
    )
    for eigenvalue in (1.47562182408, 3.53403136678, 9.86960440109, 11.3894793979):
        exact = C / (2 * np.pi) * np.sqrt(eigenvalue) / UNIT
        assert np.abs(found / exact - 1).min() < within


def test_long_room_under_a_gentle_slope_has_the_modes_of_a_linear_horn() -> None:
    # Webster's horn equation with area growing as x: J1(k x1) Y1(k x2) = J1(k x2) Y1(k x1). It neglects the slope's
    # square, here 0.25 %.
    slope, low, length = 0.05, 2.0, 8.0
    outline = ((0.0, 0.0), (length, 0.0), (length, 2.5), (0.0, 2.5))
    found = np.array(room_response.solve(outline, [Facet(outline, slope, 0.0, low)], 70, C).frequencies_hz)
    near, far = low / slope, low / slope + length

    def closed(k: float) -> float:
        return float(j1(k * near) * y1(k * far) - j1(k * far) * y1(k * near))

    for number in (1, 2, 3):
        guess = number * np.pi / length
        exact = brentq(closed, 0.9 * guess, 1.1 * guess) * C / (2 * np.pi)
        assert np.abs(found / exact - 1).min() < 0.003


@pytest.mark.parametrize(("kind", "median", "most"), [("plan", 0.02, 0.2), ("section", 0.02, 0.2), ("any", 0.1, 1.0)])
def test_each_solver_gives_the_pressures_of_the_box_formula_in_a_box(kind: str, median: float, most: float) -> None:
    k = 2 * np.pi * 80 / C
    exact = solved(OBLONG, 80)
    assert exact.shape.kind == "box"
    other = room_response.RoomResponse(exact.shape, 80, C)
    vars(other)["modes"] = {
        "plan": lambda: prism_room.prism_modes(sections.plan_section(OBLONG, k), HEIGHT, 2, 80, C),
        "section": lambda: prism_room.prism_modes(
            sections.upright_section((0.0, 2.0, 4.5), (HEIGHT,) * 3, k), 6.0, 0, 80, C
        ),
        "any": lambda: element_modes(OBLONG, roof.flat(OBLONG, HEIGHT), 72.9, 80, C),
    }[kind]()
    box = exact.transfer(SOURCES, EARS, BAND, 0.4)
    difference = np.abs(level_db(other.transfer(SOURCES, EARS, BAND, 0.4)) - level_db(box))
    assert np.median(difference) < median
    heard = np.abs(box) > 0.5 * np.abs(box).mean()
    assert difference[heard].max() < most


@pytest.mark.parametrize(
    ("outline", "facets"),
    [
        (ELL, roof.flat(ELL, HEIGHT)),
        (OBLONG, roof.gable(OBLONG, 1.6, 3.1, ridge_at_m=1.9)),
        (OBLONG, roof.mono_pitch(OBLONG, 1.8, 3.0, 90.0)),
    ],
    ids=["L", "gable", "mono-pitch"],
)
def test_sections_and_fine_elements_agree_on_the_pressure(outline: tuple, facets: tuple[Facet, ...]) -> None:
    # Two methods with nothing in common but the room: Ritz over a section against a fine mesh of the whole.
    room = room_response.solve(outline, facets, 80, C)
    shape = shape_of(outline, facets)
    other = room_response.RoomResponse(shape, 80, C)
    vars(other)["modes"] = element_modes(shape.outline, shape.facets, shape.volume_m3, 80, C, 1.6)
    low = np.min(outline, axis=0)
    sources = [(low[0] + 0.3, low[1] + 0.3, 0.2), (low[0] + 1.9, low[1] + 0.2, 0.2)]
    ears = [(low[0] + 1.6, low[1] + 2.1, 1.1), (low[0] + 2.1, low[1] + 3.2, 1.2)]
    here, there = (one.transfer(sources, ears, BAND, 0.4) for one in (room, other))
    difference = np.abs(level_db(here) - level_db(there))
    assert np.median(difference) < 0.05
    heard = np.abs(here) > 0.5 * np.abs(here).mean()
    assert difference[heard].max() < 0.5
