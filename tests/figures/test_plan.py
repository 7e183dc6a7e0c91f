"""What must hold of plans, ceilings, rays and reflections whatever the numbers."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from roomlint import cutting, plane, roof
from roomlint.figures import enclosure, images, sight

BOX = ((0.0, 0.0), (0.0, 4.0), (5.0, 4.0), (5.0, 0.0))
ELL = ((0.0, 0.0), (0.0, 5.0), (2.5, 5.0), (2.5, 2.5), (5.0, 2.5), (5.0, 0.0))
BOW = ((0.0, 0.0), (4.0, 4.0), (4.0, 0.0), (0.0, 4.0))
INSIDE = st.tuples(st.floats(0.1, 4.9), st.floats(0.1, 3.9), st.floats(0.1, 2.3))


def test_area_has_the_sign_of_the_turning() -> None:
    assert plane.signed_area_m2(BOX) == -20
    assert plane.signed_area_m2(plane.anticlockwise(BOX)) == 20
    assert plane.area_m2(ELL) == pytest.approx(18.75)


def test_a_crossed_outline_is_told_and_a_simple_one_is_not() -> None:
    assert [fault.kind for fault in plane.why_not_simple(BOW)] == ["crosses"]
    assert plane.why_not_simple(ELL) == ()


def test_only_the_box_is_convex_and_a_rectangle() -> None:
    assert plane.is_rectangle(BOX)
    assert not any(corner.reentrant for corner in plane.true_corners(BOX))
    assert not plane.is_rectangle(ELL)
    assert sum(corner.reentrant for corner in plane.true_corners(ELL)) == 1


@pytest.mark.parametrize("outline", [BOX, ELL, (*ELL[:1], (0.0, 2.0), *ELL[1:])])
def test_triangles_add_up_to_the_outline(outline: tuple[tuple[float, float], ...]) -> None:
    triangles = cutting.triangulated(outline)
    assert len(triangles) == len(outline) - 2
    assert sum(plane.area_m2([outline[i] for i in one]) for one in triangles) == pytest.approx(plane.area_m2(outline))


def test_normals_point_into_the_room() -> None:
    for number, (start, end) in enumerate(plane.walls(ELL)):
        nx, ny = cutting.inward_normal(ELL, number)
        middle = ((start[0] + end[0]) / 2 + 0.1 * nx, (start[1] + end[1]) / 2 + 0.1 * ny)
        assert plane.contains(ELL, middle)


@given(st.floats(2.0, 3.0), st.floats(2.0, 4.0))
def test_volume_under_one_slope_is_area_times_mean_height(low: float, high: float) -> None:
    facets = roof.mono_pitch(BOX, low, high, 90.0)
    assert roof.volume_m3(facets) == pytest.approx(20 * (low + high) / 2)
    assert roof.height_m(facets, (0.0, 2.0)) == pytest.approx(high)  # it rises toward the left


def test_corner_heights_in_one_plane_make_one_facet_and_others_make_triangles() -> None:
    assert len(roof.over_corners(BOX, (2.0, 2.0, 3.0, 3.0))) == 1
    assert len(roof.over_corners(BOX, (2.0, 2.0, 3.0, 2.0))) == 2


def test_a_gable_over_an_l_shaped_room_covers_it() -> None:
    facets = roof.gable(ELL, 2.0, 3.0)
    assert sum(plane.area_m2(facet.outline) for facet in facets) == pytest.approx(18.75)


def test_a_leaf_sweeps_the_quarter_disc_it_opens_through() -> None:
    leaf = sight.DoorSwing((0.0, 0.0), 0.8, closed_deg=-90.0, swing_deg=90.0)  # from +x round to +y
    assert leaf.meets((0.5, 0.5))
    assert not leaf.meets((-0.2, 0.5))
    assert leaf.meets((-0.2, 0.5), 0.25)
    assert leaf.distance_m((2.0, 0.0)) == pytest.approx(1.2)


@given(st.floats(1.0, 3.0), st.floats(2.0, 4.0), st.floats(0.5, 4.5))
def test_volume_under_a_gable_is_area_times_mean_height(eaves: float, ridge: float, at: float) -> None:
    facets = roof.gable(BOX, eaves, ridge, ridge_at_m=at)
    assert roof.volume_m3(facets) == pytest.approx(20 * (eaves + ridge) / 2)


@given(INSIDE, INSIDE)
def test_a_box_gives_six_reflections_no_shorter_than_the_direct_way(
    source: tuple[float, float, float], ear: tuple[float, float, float]
) -> None:
    if math.dist(source, ear) < 0.1:
        return
    found = images.reflections_in(enclosure.room(BOX, roof.flat(BOX, 2.4)), source, ear)
    assert len(found) == 6
    for one in found:
        legs = math.dist(source, one.bounce) + math.dist(one.bounce, ear)
        assert legs == pytest.approx(one.path_m)
        assert one.path_m >= one.direct_m
