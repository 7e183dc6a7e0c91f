"""Clearances of solids against shapely in the plan and against a bounded least-squares solver in space."""

from __future__ import annotations

import math

import numpy as np
import pytest
import shapely
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from scipy.optimize import lsq_linear

from roomlint.figures import solid
from roomlint.figures.direction import direction_vector
from roomlint.figures.sight import DoorSwing

SIZE = st.floats(0.1, 1.2)
PLACE = st.tuples(st.floats(0, 3), st.floats(0, 3), st.floats(0.5, 2))
NEAR = st.tuples(st.floats(0, 0.1), st.floats(0, 0.1), st.floats(1, 1.1))
AIM = st.tuples(st.floats(-180, 180), st.floats(-80, 80))
CABINETS = st.tuples(PLACE, AIM, SIZE, SIZE, SIZE)


def _cabinet(one: tuple[tuple[float, float, float], tuple[float, float], float, float, float]) -> solid.Solid:
    place, (azimuth, elevation), width, height, depth = one
    return solid.cabinet(place, direction_vector(azimuth, elevation), width, height, depth)


def _as_box(thing: solid.Tilted) -> tuple[np.ndarray, np.ndarray, np.ndarray]:
    return np.array(thing.middle), np.array(thing.axes).T, np.array(thing.half_m)


@settings(max_examples=30)
@given(CABINETS, CABINETS)
def test_distance_of_leaning_cabinets_is_that_of_a_bounded_least_squares_solver(one, other) -> None:
    a, b = _cabinet(one), _cabinet(other)
    assume(isinstance(a, solid.Tilted) and isinstance(b, solid.Tilted))
    (pa, ra, ha), (pb, rb, hb) = _as_box(a), _as_box(b)
    bound = np.concatenate([ha, hb])
    found = lsq_linear(np.hstack([ra, -rb]), pb - pa, bounds=(-bound, bound), method="bvls", tol=1e-14)
    distance = float(np.linalg.norm(found.fun))
    gap = solid.clearance_m(a, b)
    assert max(gap, 0.0) == pytest.approx(distance, abs=1e-6)
    assert solid.clearance_m(b, a) == pytest.approx(gap, abs=1e-9)


@given(CABINETS, CABINETS, st.tuples(PLACE, SIZE), st.floats(0.05, 1.0))
def test_what_stands_far_apart_is_told_as_that_far_and_all_else_as_before(one, other, seat, far) -> None:
    things = [_cabinet(one), _cabinet(other), solid.seated(*seat)]
    for thing in things[:2]:
        for beside in things:
            assert solid.clearance_m(thing, beside, far) == min(solid.clearance_m(thing, beside), far)


@settings(max_examples=25)
@given(st.tuples(NEAR, AIM, SIZE, SIZE, SIZE), st.tuples(NEAR, AIM, SIZE, SIZE, SIZE))
def test_depth_of_overlap_is_the_least_move_that_parts_two_cabinets(one, other) -> None:
    a, b = _cabinet(one), _cabinet(other)
    gap = solid.clearance_m(a, b)
    assume(gap < -1e-3)
    points_a, points_b = np.array(solid.body(a).points), np.array(solid.body(b).points)
    rng = np.random.default_rng(1)
    ways = rng.normal(size=(4000, 3))
    ways /= np.linalg.norm(ways, axis=1)[:, None]
    moves = (points_a @ ways.T).max(axis=0) - (points_b @ ways.T).min(axis=0)
    assert moves.min() >= -gap - 1e-9
    assert moves.min() <= -gap + 0.1


@given(st.tuples(PLACE, SIZE, SIZE, SIZE, st.floats(-180, 180)), st.tuples(PLACE, SIZE))
def test_upright_solids_are_as_far_apart_as_their_plans_and_heights(one, other) -> None:
    (place, width, height, depth, azimuth), (ear, radius) = one, other
    box = solid.cabinet(place, direction_vector(azimuth, 0.0), width, height, depth)
    seat = solid.seated(ear, radius, floor_m=0.2)
    plan = shapely.Polygon(solid.footprint(box)).distance(shapely.Point(ear[:2])) - radius
    above = max(place[2] - height / 2 - ear[2], 0.2 - place[2] - height / 2)
    expected = math.hypot(plan, above) if plan > 0 and above > 0 else max(plan, above)
    if plan > -radius + 1e-9:
        assert solid.clearance_m(box, seat) == pytest.approx(expected, abs=1e-9)


# By hand: a cabinet 0.3 m wide and 0.2 m deep, front at (1, 1), turned 30 deg to the left, looks along
# (-0.5, 0.8660); its rear left corner is 0.15 m along its left (-0.8660, -0.5) and 0.2 m back.
def test_worked_corner_of_a_toed_cabinet() -> None:
    box = solid.cabinet((1.0, 1.0, 1.0), direction_vector(30.0, 0.0), 0.3, 0.4, 0.2)
    expected = (1.0 - 0.15 * 0.8660254 + 0.2 * 0.5, 1.0 - 0.15 * 0.5 - 0.2 * 0.8660254)
    assert min(math.dist(corner, expected) for corner in solid.footprint(box)) < 1e-6
    assert solid.heights_m(box) == pytest.approx((0.8, 1.2))


# A box 0.3 m wide, 0.4 m high, 0.2 m deep, tilted down by 30 deg: its top rear edge is the highest, at
# 1.0 + 0.2 cos 30 + 0.2 sin 30 = 1.2732; the bottom front edge the lowest, at 1.0 - 0.2 cos 30 = 0.8268.
def test_worked_heights_of_a_tilted_cabinet() -> None:
    box = solid.cabinet((0.0, 0.0, 1.0), direction_vector(0.0, -30.0), 0.3, 0.4, 0.2)
    assert solid.heights_m(box) == pytest.approx((1.0 - 0.1732051, 1.2732051))


def test_a_cabinet_that_looks_straight_down_is_as_high_as_it_is_deep() -> None:
    box = solid.cabinet((1.0, 2.0, 2.4), (0.0, 0.0, -1.0), 0.3, 0.4, 0.2)
    assert solid.heights_m(box) == pytest.approx((2.4, 2.6))
    xs, ys = zip(*solid.footprint(box), strict=True)
    assert (max(xs) - min(xs), max(ys) - min(ys)) == pytest.approx((0.3, 0.4))


@settings(max_examples=40)
@given(st.floats(0.6, 1.0), st.floats(-180, 180), st.sampled_from([-90.0, 90.0, 60.0, 170.0]), PLACE, SIZE)
def test_a_door_leaf_sweeps_shapelys_sector_to_a_millimetre_or_two(width, closed, swing, place, size) -> None:
    leaf = solid.door_leaf(DoorSwing((1.0, 1.0), width, closed, swing), 0.0, 2.0)
    turns = np.radians(closed + np.linspace(0.0, swing, 400))
    sector = shapely.Polygon([(1.0, 1.0), *zip(1.0 - width * np.sin(turns), 1.0 + width * np.cos(turns), strict=True)])
    swept = shapely.Polygon(leaf.plan)
    assert swept.buffer(1e-6).contains(sector)
    assert swept.difference(sector.buffer(0.0015 * width + 1e-5)).area < 1e-9
    box = solid.cabinet((place[0], place[1], 1.0), (0.0, 1.0, 0.0), size, size, size)
    theirs = sector.distance(shapely.Polygon(solid.footprint(box)))
    assert max(solid.clearance_m(box, leaf), 0.0) == pytest.approx(theirs, abs=2e-3)


# A leaf of 0.8 m hung at the left end of a wall along x, opening to y > 0; a cube of 0.2 m whose middle stands 0.15 m
# before the wall and 0.4 m from the hinge. Back through the wall it would leave by 0.25; beyond the tip by
# 0.8 - hypot(0.3, 0.05) = 0.496 and past the open leaf by 0.5.
def test_nothing_leaves_a_doors_way_through_the_wall() -> None:
    cube = solid.cabinet((0.4, 0.25, 1.0), (0.0, 1.0, 0.0), 0.2, 0.2, 0.2)
    swing = DoorSwing((0.0, 0.0), 0.8, -90.0, 90.0)
    assert solid.clearance_m(cube, solid.door_leaf(swing, 0.0, 2.0)) == pytest.approx(-0.25)
    assert solid.clearance_m(cube, solid.door_leaf(swing, 0.0, 2.0, 1.0)) == pytest.approx(-0.496, abs=2e-3)


# Weights of materials as EN 1991-1-1 lists them in its Table A (from memory): steel 78.5 kN/m3, lead 114 kN/m3, over
# 9.81 m/s2; a cube of a tenth of a metre of each.
@pytest.mark.parametrize(("weight_kn_m3", "times"), [(78.5, 8.0), (114.0, 11.6), (9.81, 1.0)])
def test_a_cube_by_the_weight_of_its_material(weight_kn_m3: float, times: float) -> None:
    mass_kg = weight_kn_m3 * 1e3 / 9.81 * 0.1**3
    assert solid.by_water(mass_kg, 0.1, 0.1, 0.1) == pytest.approx(times, rel=0.01)
