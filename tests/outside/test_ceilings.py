"""Ceilings of several parts against closed forms, and the bass under one against a raster of cells."""

from __future__ import annotations

import math

import numpy as np
import pytest
from scipy.sparse import coo_array, csc_array
from scipy.sparse.linalg import eigsh

from roomlint import roof
from roomlint.figures import room_response
from roomlint.figures.element_room import element_modes
from roomlint.plane import area_m2, contains
from roomlint.roof import UPRIGHT_RUN_M, over_pieces, part_sloped, surface_m2, tray

C = 343.0
ROOM = ((0.0, 0.0), (0.0, 6.0), (4.5, 6.0), (4.5, 0.0))
LOW, HIGH = 2.4, 2.8
OPENING = (1.0, 3.5, 1.5, 4.5)
TRAY = tray(ROOM, LOW, HIGH, OPENING)


def test_a_tray_has_the_volume_of_two_boxes() -> None:
    assert roof.volume_m3(TRAY) == pytest.approx(4.5 * 6.0 * LOW + 2.5 * 3.0 * (HIGH - LOW), rel=1e-6)


def test_a_tray_has_the_surface_of_its_plan_and_its_sides() -> None:
    # Plan 27 m2, sides 2 (2.5 + 3.0) 0.4 m2; that the sides lean by 20 mm takes a strip of it round the edge.
    exact = 27.0 + 11.0 * (HIGH - LOW)
    assert surface_m2(TRAY) == pytest.approx(exact, abs=11.0 * UPRIGHT_RUN_M)


@pytest.mark.parametrize(
    ("point", "height"),
    [((0.5, 3.0), LOW), ((2.2, 5.0), LOW), ((2.2, 3.0), HIGH), ((1.02, 1.52), HIGH), ((0.98, 3.0), LOW)],
)  # fmt: skip
def test_a_tray_is_as_high_as_its_parts(point: tuple[float, float], height: float) -> None:
    assert roof.height_m(TRAY, point) == pytest.approx(height)


def test_a_coffer_has_the_volume_and_surface_of_a_frustum() -> None:
    run, rise = 0.3, HIGH - LOW
    facets = tray(ROOM, LOW, HIGH, OPENING, run)
    below, above = 2.5 * 3.0, 1.9 * 2.4
    frustum = rise / 3.0 * (below + above + math.sqrt(below * above))
    # Its sides lean alike but are not one pyramid's: the prismatoid rule holds for any.
    middle = 2.2 * 2.7
    assert roof.volume_m3(facets) == pytest.approx(27.0 * LOW + rise / 6.0 * (below + 4.0 * middle + above), rel=1e-9)
    assert abs(rise / 6.0 * (below + 4.0 * middle + above) - frustum) < 0.01
    slant = math.hypot(run, rise)
    sides = (2.5 + 1.9) * slant + (3.0 + 2.4) * slant
    assert surface_m2(facets) == pytest.approx(27.0 - below + above + sides, rel=1e-9)
    assert roof.height_m(facets, (1.15, 3.0)) == pytest.approx(LOW + rise / 2.0)


def test_a_tray_in_an_l_covers_its_plan_once() -> None:
    ell = ((0.0, 0.0), (6.0, 0.0), (6.0, 3.0), (3.0, 3.0), (3.0, 6.0), (0.0, 6.0))
    facets = tray(ell, 2.4, 2.7, (0.5, 2.5, 0.5, 5.5))
    assert sum(area_m2(facet.outline) for facet in facets) == pytest.approx(27.0)
    assert roof.volume_m3(facets) == pytest.approx(27.0 * 2.4 + 10.0 * 0.3, rel=1e-6)


def test_a_ceiling_sloped_on_one_side_is_flat_beyond() -> None:
    # 1.2 m of slope from 1.5 m up to 2.5 m along the left, over 4.5 x 6 m.
    facets = part_sloped(ROOM, 2.5, 1.5, 1.2, [-90.0])
    assert roof.volume_m3(facets) == pytest.approx(6.0 * (3.3 * 2.5 + 1.2 * 2.0))
    assert surface_m2(facets) == pytest.approx(6.0 * (3.3 + math.hypot(1.2, 1.0)))
    assert roof.height_m(facets, (0.3, 1.0)) == pytest.approx(1.75)
    assert roof.height_m(facets, (2.0, 1.0)) == pytest.approx(2.5)


def test_slopes_on_all_sides_make_a_hip_with_the_volume_of_a_prismatoid() -> None:
    facets = part_sloped(ROOM, 3.0, 2.0, 1.0, [-90.0, 90.0, 180.0, 0.0])
    below, middle, above = 27.0, 3.5 * 5.0, 2.5 * 4.0
    assert roof.volume_m3(facets) == pytest.approx(27.0 * 2.0 + (below + 4.0 * middle + above) / 6.0)
    # Every slope is at 45 degrees, so its surface is its plan times the root of two.
    assert surface_m2(facets) == pytest.approx(above + (27.0 - above) * math.sqrt(2.0))
    assert roof.height_m(facets, (0.25, 0.6)) == pytest.approx(2.25)
    assert roof.height_m(facets, (0.6, 0.25)) == pytest.approx(2.25)


def test_pieces_give_what_a_gable_gives() -> None:
    left = [(0.0, 0.0), (2.0, 0.0), (2.0, 6.0), (0.0, 6.0)]
    right = [(2.0, 0.0), (4.5, 0.0), (4.5, 6.0), (2.0, 6.0)]
    made = over_pieces([(left, (2.0, 3.0, 3.0, 2.0)), (right, (3.0, 2.0, 2.0, 3.0))])
    whole = roof.gable(ROOM, 2.0, 3.0, ridge_at_m=2.0)
    assert roof.volume_m3(made) == pytest.approx(roof.volume_m3(whole))
    assert surface_m2(made) == pytest.approx(surface_m2(whole))
    for point in ((0.3, 1.0), (2.0, 3.0), (4.0, 5.5)):
        assert roof.height_m(made, point) == pytest.approx(roof.height_m(whole, point))


def by_differences(step: tuple[float, float, float]) -> np.ndarray:
    """Return the mode frequencies under the tray by central differences on a raster of cells with rigid faces."""
    counts = [round(size / one) for size, one in zip((4.5, 6.0, HIGH), step, strict=True)]
    middles = [(np.arange(count) + 0.5) * one for count, one in zip(counts, step, strict=True)]
    x, y, z = np.meshgrid(*middles, indexing="ij")
    left, right, rear, front = OPENING
    inside = (z < LOW) | ((x > left) & (x < right) & (y > rear) & (y < front))
    numbers = np.where(inside, np.cumsum(inside).reshape(inside.shape) - 1, -1)
    size = int(inside.sum())
    rows, columns, values = [], [], []
    for axis, one in enumerate(step):
        here = np.moveaxis(numbers, axis, 0)[:-1].ravel()
        there = np.moveaxis(numbers, axis, 0)[1:].ravel()
        both = (here >= 0) & (there >= 0)
        a, b, weight = here[both], there[both], np.full(both.sum(), 1.0 / one**2)
        rows += [a, b, a, b]
        columns += [b, a, a, b]
        values += [-weight, -weight, weight, weight]
    matrix = csc_array(
        coo_array((np.concatenate(values), (np.concatenate(rows), np.concatenate(columns))), shape=(size, size))
    )
    found = eigsh(matrix, k=9, sigma=-0.05, return_eigenvectors=False, tol=1e-6)
    return np.sort(np.sqrt(np.maximum(found, 0.0)))[1:] * C / (2 * np.pi)


def test_modes_under_a_tray_are_those_of_a_raster_of_cells() -> None:
    ours = np.array(room_response.solve(ROOM, TRAY, 70, C).frequencies_hz[:8])
    coarse, fine = by_differences((0.5, 0.5, 0.4)), by_differences((0.25, 0.25, 0.2))
    # Differences converge with the square of the step: two rasters give what a third would.
    theirs = fine + (fine - coarse) / 3.0
    assert ours == pytest.approx(theirs, rel=0.005)


def test_modes_of_a_room_with_a_step_are_those_of_its_section_drawn_along_its_width() -> None:
    # An upright section like an L, drawn along the width: the solver of plans takes it as a plan 4.5 m high.
    section = ((0.0, 0.0), (6.0, 0.0), (6.0, 3.0), (3.0, 3.0), (3.0, 2.4), (0.0, 2.4))
    exact = room_response.solve(section, roof.flat(section, 4.5), 70, C)
    assert exact.shape.kind == "plan"
    half = UPRIGHT_RUN_M / 2.0
    pieces = [
        ([(0.0, 0.0), (4.5, 0.0), (4.5, 3.0 - half), (0.0, 3.0 - half)], (2.4,) * 4),
        ([(0.0, 3.0 - half), (4.5, 3.0 - half), (4.5, 3.0 + half), (0.0, 3.0 + half)], (2.4, 2.4, 3.0, 3.0)),
        ([(0.0, 3.0 + half), (4.5, 3.0 + half), (4.5, 6.0), (0.0, 6.0)], (3.0,) * 4),
    ]
    ours = room_response.solve(ROOM, over_pieces(pieces), 70, C)
    assert ours.frequencies_hz[:8] == pytest.approx(exact.frequencies_hz[:8], rel=0.005)


def test_every_point_of_the_plan_is_under_one_facet() -> None:
    for facets in (TRAY, part_sloped(ROOM, 3.0, 2.0, 1.0, [-90.0, 90.0, 180.0, 0.0])):
        for x in np.linspace(0.01, 4.49, 23):
            for y in np.linspace(0.01, 5.99, 31):
                over = [facet for facet in facets if contains(facet.outline, (x, y))]
                assert over
                heights = {round(facet.height_m((x, y)), 6) for facet in over}
                assert max(heights) - min(heights) < 1e-3


def test_a_large_room_under_a_tray_is_solved_as_finely_as_it_can_be_paid_for() -> None:
    # 132 m3 to 113 Hz, the band that the seats are judged in.
    outline = ((0.0, 0.0), (6.0, 0.0), (6.0, 8.0), (0.0, 8.0))
    solved = room_response.solve(outline, tray(outline, 2.6, 2.9, (1.0, 5.0, 1.0, 7.0)), 113.0, C)
    found = np.array(solved.frequencies_hz)
    fine = element_modes(solved.shape.outline, solved.shape.facets, solved.shape.volume_m3, 113.0, C, 0.8)
    theirs = np.sqrt(fine.wavenumbers_squared[1:]) * C / (2 * np.pi)
    below = theirs[theirs < 113.0]
    assert found[: len(below)] == pytest.approx(below, rel=0.01)
