import numpy as np
import pytest

from roomlint import roof
from roomlint.figures import element_room, room_response
from roomlint.figures.plan_mesh import inside, mesh_plan, mesh_size, polygon_area_m2
from roomlint.roof import Facet

C = 343.0
PLAN = ((0.0, 0.0), (5.0, 0.0), (5.0, 4.0), (0.0, 4.0))
LEFT = ((0.0, 0.0), (5.0, 0.0), (5.0, 2.0), (0.0, 2.0))
RIGHT = ((0.0, 2.0), (5.0, 2.0), (5.0, 4.0), (0.0, 4.0))
UP, DOWN = Facet(LEFT, 0.0, 0.6, 1.5), Facet(RIGHT, 0.0, -0.6, 3.9)
VOLUME = 5.0 * 4.0 * 2.1


def frequencies(found: element_room.ElementModes) -> np.ndarray:
    return np.sqrt(found.wavenumbers_squared[1:]) * C / (2 * np.pi)


@pytest.fixture(scope="module")
def gable() -> element_room.ElementModes:
    return element_room.element_modes(PLAN, [UP, DOWN], VOLUME, 80, C)


def test_half_of_a_gable_has_modes_that_the_gable_has(gable: element_room.ElementModes) -> None:
    half = element_room.element_modes(LEFT, [UP], VOLUME / 2, 80, C)
    for hz in frequencies(half)[:4]:
        assert np.abs(frequencies(gable) / hz - 1).min() < 0.003


def test_finer_mesh_changes_little(gable: element_room.ElementModes) -> None:
    fine = frequencies(element_room.element_modes(PLAN, [UP, DOWN], VOLUME, 80, C, refine=1.8))
    below = fine[fine < 80]
    assert frequencies(gable)[: len(below)] == pytest.approx(below, rel=0.002)


def test_elements_and_section_find_the_same_gable(gable: element_room.ElementModes) -> None:
    section = np.array(room_response.solve(PLAN, [UP, DOWN], 80, C).frequencies_hz)
    below = section[section < 80]
    assert frequencies(gable)[: len(below)] == pytest.approx(below, rel=0.002)


def test_triangles_cover_an_l_shape_and_nothing_else() -> None:
    corners = ((0.0, 0.0), (6.0, 0.0), (6.0, 2.5), (3.1, 2.5), (3.1, 5.0), (0.0, 5.0))
    mesh = mesh_plan(corners, [Facet(corners, 0.0, 0.0, 2.4)], 0.7)
    middles = mesh.points[mesh.triangles].mean(axis=1)
    assert inside(corners, middles).all()
    assert polygon_area_m2(corners) == pytest.approx(6 * 2.5 + 3.1 * 2.5)


def test_size_of_a_mesh_is_foretold_before_it_is_cut() -> None:
    for corners, pieces in ((PLAN, [UP, DOWN]), (PLAN[:3], [Facet(PLAN[:3], 0.0, 0.0, 2.4)])):
        foretold = mesh_size(corners, pieces, 0.5)
        mesh = mesh_plan(corners, pieces, 0.5)
        sides = np.unique(np.sort(mesh.triangles[:, [[1, 2], [2, 0], [0, 1]]].reshape(-1, 2), axis=1), axis=0)
        assert len(mesh.points) + len(sides) == pytest.approx(foretold, rel=0.35)


def test_size_of_a_mesh_by_hand() -> None:
    # 4 by 3 m at 0.5 m: 4 x 12/0.25 inside, and 8 + 6 + 8 + 6 sides along the walls and one piece of ceiling, thrice.
    floor = ((0.0, 0.0), (4.0, 0.0), (4.0, 3.0), (0.0, 3.0))
    assert mesh_size(floor, [Facet(floor, 0.0, 0.0, 2.4)], 0.5) == 192 + 3 * 29


def test_slanting_wall_and_alcove_are_meshed() -> None:
    corners = ((0.0, 0.0), (5.0, 0.0), (5.0, 3.0), (3.7, 4.4), (1.2, 4.4), (1.2, 3.9), (0.0, 3.9))
    assert len(room_response.solve(corners, [Facet(corners, 0.0, 0.0, 2.4)], 60, C).frequencies_hz) > 3


def test_ridge_whose_parts_differ_by_rounding_leaves_no_point_alone() -> None:
    corners = ((0.0, 5.0), (4.4, 5.0), (4.4, 0.0), (0.0, 0.0))
    mesh = mesh_plan(corners, roof.gable(corners, 0.4, 2.0, ridge_at_m=2.10375), 0.8)
    assert sorted(set(mesh.triangles.ravel().tolist())) == list(range(len(mesh.points)))


def test_hall_with_more_modes_than_can_be_found_in_seconds_is_refused() -> None:
    hall = ((0.0, 0.0), (20.0, 0.0), (20.0, 29.0), (19.0, 30.0), (0.0, 30.0))
    with pytest.raises(ValueError, match="too many modes below 128 Hz"):
        room_response.solve(hall, [Facet(hall, 0.0, 0.0, 5.0)], 80, C)


def test_room_solved_once_gives_pressures_for_any_points() -> None:
    room = room_response.solve(PLAN, [UP, DOWN], 80, C)
    sources, ears = [(0.4, 0.3, 0.2)], [(3.5, 1.8, 1.1)]
    found = room.transfer(sources, ears, [25.0, 50.0], 0.5)
    assert np.array_equal(found, room.transfer(sources, ears, [25.0, 50.0], 0.5))
