"""Polygons against shapely, a geometry library of its own descent."""

from __future__ import annotations

import math

import pytest
import shapely
import shapely.affinity
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from roomlint import plane
from roomlint.figures import convex

COORDINATE = st.floats(-4.0, 8.0)
POINT = st.tuples(COORDINATE, COORDINATE)
MILLIMETRES = st.tuples(st.integers(0, 60), st.integers(0, 60)).map(lambda p: (p[0] / 10.0, p[1] / 10.0))


@st.composite
def rooms(draw: st.DrawFn) -> tuple[tuple[float, float], ...]:
    """Outlines of rooms of any shape: corners round a middle, either way round, at any of them first."""
    count = draw(st.integers(3, 9))
    radii = draw(st.lists(st.floats(0.8, 4.0), min_size=count, max_size=count))
    shares = draw(st.lists(st.floats(-0.35, 0.35), min_size=count, max_size=count))
    turns = [math.tau * (k + share) / count for k, share in enumerate(shares)]
    corners = [(2.0 + r * math.cos(turn), 3.0 + r * math.sin(turn)) for r, turn in zip(radii, turns, strict=True)]
    first = draw(st.integers(0, count - 1))
    corners = corners[first:] + corners[:first]
    return tuple(corners[::-1] if draw(st.booleans()) else corners)


@given(rooms())
def test_area_perimeter_and_centre_are_shapelys(outline: tuple[tuple[float, float], ...]) -> None:
    theirs = shapely.Polygon(outline)
    assume(theirs.is_valid and theirs.area > 0.1)
    assert plane.area_m2(outline) == pytest.approx(theirs.area)
    assert plane.perimeter_m(outline) == pytest.approx(theirs.length)
    assert plane.centroid(outline) == pytest.approx(theirs.centroid.coords[0], abs=1e-9)
    assert (plane.signed_area_m2(outline) > 0) == theirs.exterior.is_ccw


@given(rooms(), POINT)
def test_depth_and_inside_are_shapelys(outline: tuple[tuple[float, float], ...], point: tuple[float, float]) -> None:
    theirs, at = shapely.Polygon(outline), shapely.Point(point)
    assume(theirs.is_valid)
    far = theirs.exterior.distance(at)
    assume(far > 1e-9)
    assert plane.depth_m(outline, point) == pytest.approx(far if theirs.contains(at) else -far, abs=1e-9)


@settings(max_examples=40)
@given(rooms(), POINT, st.floats(0.01, 0.5))
def test_room_to_spare_is_shapelys_shrunk_room(
    outline: tuple[tuple[float, float], ...], point: tuple[float, float], spare: float
) -> None:
    theirs = shapely.Polygon(outline)
    assume(theirs.is_valid)
    shrunk = theirs.buffer(-spare, quad_segs=64)
    assume(shrunk.is_empty or shrunk.boundary.distance(shapely.Point(point)) > 2e-3)
    assert plane.contains(outline, point, -spare) == shrunk.contains(shapely.Point(point))


@given(st.lists(MILLIMETRES, min_size=3, max_size=8))
def test_what_shapely_calls_invalid_is_told(outline: list[tuple[float, float]]) -> None:
    theirs = shapely.Polygon(outline)
    faults = plane.why_not_simple(outline)
    if not theirs.is_valid or theirs.area == 0.0 or len(set(outline)) < len(outline):
        assert faults
    elif faults:
        # What is told beyond that is too thin to be a room, on this raster: a corner under 1 deg or a narrow strip.
        assert {fault.kind for fault in faults} <= {"doubles-back", "touches", "thin"}
        assert (
            "touches" not in {fault.kind for fault in faults}
            or theirs.buffer(-0.01).geom_type == "MultiPolygon"
            or (theirs.buffer(-0.01).area < theirs.area)
        )


@pytest.mark.parametrize(
    ("outline", "kinds"),
    [
        (((0, 0), (4, 0), (4, 3), (0, 3)), []),
        (((0, 0), (4, 0)), ["few-corners"]),
        (((0, 0), (4, 0), (4, 0.0005), (4, 3), (0, 3)), ["no-length"]),
        (((0, 0), (4, 4), (4, 0), (0, 4)), ["crosses"]),
        # A corner drawn onto the wall across the room, and one 0.5 mm short of it.
        (((0, 0), (4, 0), (4, 3), (2, 0), (0, 3)), ["touches"]),
        (((0, 0), (4, 0), (4, 3), (2, 0.0005), (0, 3)), ["touches"]),
        # Two rooms that meet in one corner.
        (((0, 0), (2, 0), (2, 2), (4, 2), (4, 4), (2, 4), (2, 2), (0, 2)), ["same-corner"]),
        # A wall drawn there and back.
        (((0, 0), (4, 0), (4, 3), (4, 1), (4, 3.5), (0, 3)), ["doubles-back", "touches"]),
        (((0, 0), (9, 0), (9, 0.05), (0, 0.05)), ["thin"]),
    ],
)
def test_what_is_no_outline_is_told_with_its_kind(outline: tuple[tuple[float, float], ...], kinds: list[str]) -> None:
    assert sorted({fault.kind for fault in plane.why_not_simple(outline)}) == kinds


@settings(max_examples=40)
@given(rooms(), rooms())
def test_distance_of_convex_plans_is_shapelys(
    one: tuple[tuple[float, float], ...], other: tuple[tuple[float, float], ...]
) -> None:
    moved = [(x + 4.0, y - 1.0) for x, y in other]
    a, b = convex.hull(one), convex.hull(moved)
    theirs_a, theirs_b = shapely.MultiPoint(one).convex_hull, shapely.MultiPoint(moved).convex_hull
    assert plane.area_m2(a) == pytest.approx(theirs_a.area)
    gap = convex.plan_gap_m(a, b)
    assert max(gap, 0.0) == pytest.approx(theirs_a.distance(theirs_b), abs=1e-9)
    if gap < -1e-6:
        assert theirs_a.intersection(theirs_b).area > 0.0
        # No shorter move parts them, in whatever direction; and one that long does in some direction.
        ways = [(math.cos(turn / 50.0), math.sin(turn / 50.0)) for turn in range(315)]
        for x, y in ways:
            assert theirs_a.intersects(shapely.affinity.translate(theirs_b, -gap * 0.99 * x, -gap * 0.99 * y))
