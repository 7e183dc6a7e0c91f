import numpy as np
import pytest

from roomlint.figures import ceiling, odd_room
from roomlint.figures.ceiling import Facet
from roomlint.figures.plan_mesh import inside, mesh_plan, polygon_area_m2

C = 343.0
PLAN = ((0.0, 0.0), (5.0, 0.0), (5.0, 4.0), (0.0, 4.0))
LEFT = ((0.0, 0.0), (5.0, 0.0), (5.0, 2.0), (0.0, 2.0))
RIGHT = ((0.0, 2.0), (5.0, 2.0), (5.0, 4.0), (0.0, 4.0))
UP, DOWN = Facet(LEFT, 0.0, 0.6, 1.5), Facet(RIGHT, 0.0, -0.6, 3.9)


@pytest.fixture(scope="module")
def gable() -> odd_room.OddRoom:
    return odd_room.solve(PLAN, [UP, DOWN], 80, C)


def test_half_of_a_gable_has_modes_that_the_gable_has(gable: odd_room.OddRoom) -> None:
    half = odd_room.solve(LEFT, [UP], 80, C)
    whole = np.array(gable.frequencies_hz)
    for hz in half.frequencies_hz[:4]:
        assert np.abs(whole / hz - 1).min() < 0.003


def test_finer_mesh_changes_little(gable: odd_room.OddRoom) -> None:
    fine = odd_room.solve(PLAN, [UP, DOWN], 80, C, refine=1.8)
    below = [hz for hz in fine.frequencies_hz if hz < 80]
    assert gable.frequencies_hz[: len(below)] == pytest.approx(below, rel=0.003)


def test_source_and_seat_change_places_without_a_trace(gable: odd_room.OddRoom) -> None:
    first, second = (0.4, 0.3, 0.2), (3.5, 1.8, 1.1)
    there = odd_room.transfer(gable, [first], [second], [25.0, 50.0, 75.0], 0.5)
    back = odd_room.transfer(gable, [second], [first], [25.0, 50.0, 75.0], 0.5)
    assert np.allclose(there, back, rtol=1e-6)


def test_mirrored_points_under_a_gable_are_alike(gable: odd_room.OddRoom) -> None:
    source, seat = (0.4, 2.0, 0.2), (3.5, 1.0, 1.1)
    mirrored = (3.5, 3.0, 1.1)
    levels = np.abs(odd_room.transfer(gable, [source], [seat, mirrored], [30.0, 60.0], 0.5))[:, 0]
    assert levels[0] == pytest.approx(levels[1], rel=0.02)


def test_pressure_zone_is_even_all_over_the_room(gable: odd_room.OddRoom) -> None:
    shapes = odd_room.mode_shapes(gable, [(0.0, 0.0, 0.0), (2.5, 2.0, 2.6)])
    volume = 5.0 * 4.0 * 2.1
    assert np.abs(shapes[:, 0]) == pytest.approx(1 / np.sqrt(volume), rel=1e-6)


def test_triangles_cover_an_l_shape_and_nothing_else() -> None:
    corners = ((0.0, 0.0), (6.0, 0.0), (6.0, 2.5), (3.1, 2.5), (3.1, 5.0), (0.0, 5.0))
    mesh = mesh_plan(corners, [Facet(corners, 0.0, 0.0, 2.4)], 0.7)
    middles = mesh.points[mesh.triangles].mean(axis=1)
    assert inside(corners, middles).all()
    assert polygon_area_m2(corners) == pytest.approx(6 * 2.5 + 3.1 * 2.5)


def test_slanting_wall_and_alcove_are_meshed() -> None:
    corners = ((0.0, 0.0), (5.0, 0.0), (5.0, 3.0), (3.7, 4.4), (1.2, 4.4), (1.2, 3.9), (0.0, 3.9))
    assert len(odd_room.solve(corners, [Facet(corners, 0.0, 0.0, 2.4)], 60, C).frequencies_hz) > 3


def test_ridge_whose_parts_differ_by_rounding_leaves_no_point_alone() -> None:
    corners = ((0.0, 5.0), (4.4, 5.0), (4.4, 0.0), (0.0, 0.0))
    mesh = mesh_plan(corners, ceiling.gable(corners, 0.4, 2.0, ridge_at_m=2.10375), 0.8)
    assert sorted(set(mesh.triangles.ravel().tolist())) == list(range(len(mesh.points)))


def test_ceiling_with_a_step_is_refused() -> None:
    with pytest.raises(ValueError, match=r"step of 0\.40 m"):
        odd_room.solve(PLAN, [Facet(LEFT, 0.0, 0.0, 2.4), Facet(RIGHT, 0.0, 0.0, 2.8)], 60, C)


def test_ceiling_that_leaves_a_hole_is_refused() -> None:
    with pytest.raises(ValueError, match="cover the plan"):
        odd_room.solve(PLAN, [Facet(LEFT, 0.0, 0.0, 2.4)], 60, C)


def test_ceiling_down_to_the_floor_is_refused() -> None:
    with pytest.raises(ValueError, match="comes down"):
        odd_room.solve(PLAN, [Facet(PLAN, 0.0, 0.6, 0.0)], 60, C)


def test_seat_outside_the_plan_is_refused(gable: odd_room.OddRoom) -> None:
    with pytest.raises(ValueError, match="outside the plan"):
        odd_room.mode_shapes(gable, [(6.0, 1.0, 1.0)])


def test_seat_above_the_slope_is_refused(gable: odd_room.OddRoom) -> None:
    with pytest.raises(ValueError, match="above the ceiling"):
        odd_room.mode_shapes(gable, [(2.0, 0.2, 2.0)])


def test_frequency_beyond_its_means_is_refused() -> None:
    with pytest.raises(ValueError, match="200 Hz"):
        odd_room.solve(PLAN, [Facet(PLAN, 0.0, 0.0, 2.4)], 400, C)


def test_hall_with_more_modes_than_can_be_found_in_seconds_is_refused() -> None:
    hall = ((0.0, 0.0), (20.0, 0.0), (20.0, 30.0), (0.0, 30.0))
    with pytest.raises(ValueError, match="3000 m3"):
        odd_room.solve(hall, [Facet(hall, 0.0, 0.0, 5.0)], 80, C)
