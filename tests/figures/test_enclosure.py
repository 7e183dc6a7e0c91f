"""What must hold of walls, surfaces, solids and rays, however a room is written down."""

from __future__ import annotations

import math
from itertools import pairwise

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from roomlint import plane, roof
from roomlint.figures import convex, enclosure, images, ray, solid
from roomlint.figures.direction import direction_vector
from roomlint.figures.domain import Refused

BOX = ((0.0, 0.0), (0.0, 4.0), (5.0, 4.0), (5.0, 0.0))
# The same room, its front wall written as three pieces and its left one as two.
CUT = ((0.0, 0.0), (0.0, 2.5), (0.0, 4.0), (1.0, 4.0), (3.5, 4.0), (5.0, 4.0), (5.0, 0.0))
ELL = ((0.0, 0.0), (0.0, 5.0), (2.5, 5.0), (2.5, 2.5), (5.0, 2.5), (5.0, 0.0))
ROOM = enclosure.enclosure(BOX, roof.flat(BOX, 2.4))
CUT_ROOM = enclosure.enclosure(CUT, roof.flat(CUT, 2.4))
ELL_ROOM = enclosure.enclosure(ELL, roof.flat(ELL, 2.4))
INSIDE = st.tuples(st.floats(0.1, 4.9), st.floats(0.1, 3.9), st.floats(0.1, 2.3))
TURN = st.tuples(st.floats(-180, 180), st.floats(-80, 80))
Outline = tuple[tuple[float, float], ...]


@pytest.mark.parametrize("outline", [CUT, CUT[::-1], CUT[3:] + CUT[:3]])
def test_a_wall_in_pieces_is_one_wall(outline: Outline) -> None:
    walls = plane.true_walls(outline)
    assert sorted(wall.length_m for wall in walls) == [4.0, 4.0, 5.0, 5.0]
    assert sorted(piece for wall in walls for piece in wall.pieces) == list(range(7))
    assert plane.is_rectangle(outline)
    # A corner that splits a wall is none to stand in.
    assert [corner.reentrant for corner in plane.true_corners(outline)] == [False] * 4


def test_pieces_keep_their_place_along_their_wall_seen_from_inside() -> None:
    (front,) = [wall for wall in plane.true_walls(CUT) if wall.inward == (0.0, -1.0)]
    assert (front.left, front.right) == ((0.0, 4.0), (5.0, 4.0))
    assert (front.pieces, front.starts_m) == ((2, 3, 4), (0.0, 1.0, 3.5))
    assert [front.piece_at(along) for along in (0.5, 1.2, 4.0)] == [2, 3, 4]
    (back,) = [wall for wall in plane.true_walls(CUT[::-1]) if wall.inward == (0.0, -1.0)]
    assert (back.left, back.right, back.starts_m) == (front.left, front.right, front.starts_m)


def test_a_millimetre_off_line_is_straight_and_a_jog_is_not() -> None:
    assert len(plane.turning(((0, 0), (2, 0.001), (5, 0), (5, 4), (0, 4)))) == 4
    assert len(plane.turning(((0, 0), (2, 0), (2, 0.02), (5, 0.02), (5, 4), (0, 4)))) == 6
    # A bow of many short pieces is not flattened: its corners are straight only one by one.
    bow = [(0.1 * k, -0.02 * math.sin(math.pi * k / 50)) for k in range(51)]
    kept = plane.turning((*bow, (5.0, 4.0), (0.0, 4.0)))
    assert len(kept) > 6
    outline = (*bow, (5.0, 4.0), (0.0, 4.0))
    sides = [(outline[a], outline[b]) for a, b in pairwise(kept)]
    strays = [min(plane.distance_to_segment_m(point, *side) for side in sides) for point in bow]
    assert max(strays) <= plane.STRAIGHT_WITHIN_M


def test_a_straight_wall_stays_one_while_its_measurements_are_moved_about() -> None:
    kept = plane.turning(CUT)
    moved = tuple((x, y - 0.03) if (x, y) == (1.0, 4.0) else (x, y) for x, y in CUT)
    shape = enclosure.room(moved, roof.flat(moved, 2.4), kept)
    assert shape.convex
    assert len(shape.surfaces) == 6
    assert ray.first_met(shape, (1.0, 2.0, 1.0), (0.0, 1.0, 0.0))[:2] == (pytest.approx(2.0), "wall")
    assert not enclosure.room(moved, roof.flat(moved, 2.4)).convex


def test_a_corner_that_pokes_into_the_room_is_none_to_stand_in() -> None:
    assert [corner.point for corner in plane.true_corners(ELL) if corner.reentrant] == [(2.5, 2.5)]
    assert [round(corner.inside_deg) for corner in plane.true_corners(ELL)] == [90, 90, 90, 270, 90, 90]


def test_a_wall_behind_another_is_not_seen() -> None:
    # A room round a chimney breast that reaches far in: from its left part the wall on the far right is not seen.
    cove = ((0, 0), (0, 4), (2, 4), (2, 1), (3, 1), (3, 4), (5, 4), (5, 0))
    shape = enclosure.room(cove, roof.flat(cove, 2.4))
    hidden = ray.sees(shape, (1.0, 3.0, 1.0), (4.0, 3.0, 1.0))
    assert hidden is not None
    assert (hidden.kind, hidden.number, hidden.distance_m) == ("wall", 2, pytest.approx(1.0))
    assert ray.sees(shape, (1.0, 0.5, 1.0), (4.0, 0.5, 1.0)) is None
    assert ray.sees(shape, (1.0, 3.0, 1.0), (2.0, 3.0, 1.0)) is None  # set into the wall
    post = solid.post((2.5, 0.5), 0.1, 0.0, 2.4)
    between = ray.sees(shape, (1.0, 0.5, 1.0), (4.0, 0.5, 1.0), (post,))
    assert between is not None
    assert (between.kind, between.distance_m) == ("obstacle", pytest.approx(1.4))


def test_a_valley_hides_what_is_high_on_its_other_side() -> None:
    shape = enclosure.enclosure(BOX, roof.gable(BOX, 3.0, 2.0))
    hidden = ray.sees(shape, (0.5, 2.0, 2.5), (4.5, 2.0, 2.5))
    assert hidden is not None
    assert (hidden.kind, hidden.distance_m) == ("ceiling", pytest.approx(0.75))  # 3 - 0.4 x = 2.5 at x = 1.25
    assert ray.sees(shape, (0.5, 2.0, 1.9), (4.5, 2.0, 1.9)) is None


@given(st.sampled_from([BOX, CUT, ELL]), st.integers(0, 6), st.booleans(), st.booleans(), INSIDE, INSIDE)
@settings(max_examples=40)
def test_how_a_room_is_listed_changes_nothing(
    outline: Outline,
    first: int,
    backwards: bool,  # noqa: FBT001
    mirrored: bool,  # noqa: FBT001
    source: tuple[float, float, float],
    ear: tuple[float, float, float],
) -> None:
    assume(plane.contains(outline, source[:2], -0.05) and plane.contains(outline, ear[:2], -0.05))
    assume(math.dist(source, ear) > 0.1)

    def moved(point: tuple[float, ...]) -> tuple[float, ...]:
        x = 5.0 - point[0] if mirrored else point[0]
        return (x + 3.0, point[1] - 2.0, *point[2:])

    other = [moved(corner) for corner in outline]
    first %= len(other)
    other = other[first:] + other[:first]
    if backwards:
        other.reverse()
    a = enclosure.enclosure(outline, roof.gable(outline, 2.4, 3.1))
    b = enclosure.room(other, roof.gable(other, 2.4, 3.1))
    paths_a = sorted(one.path_m for one in images.reflections_in(a, source, ear))
    paths_b = sorted(one.path_m for one in images.reflections_in(b, moved(source), moved(ear)))
    assert paths_a == pytest.approx(paths_b)
    assert enclosure.nearest_surface(a, source).distance_m == pytest.approx(
        enclosure.nearest_surface(b, moved(source)).distance_m
    )
    box_a = solid.cabinet(source, (0.0, -1.0, -0.3), 0.3, 0.4, 0.3)
    box_b = solid.cabinet(moved(source), (0.0, -1.0, -0.3), 0.3, 0.4, 0.3)
    assert enclosure.solid_clearance(a, box_a).distance_m == pytest.approx(
        enclosure.solid_clearance(b, box_b).distance_m, abs=1e-9
    )


@settings(max_examples=40)
@given(INSIDE, st.floats(0.2, 3.0))
def test_a_room_twice_as_large_has_all_distances_twice(point: tuple[float, float, float], times: float) -> None:
    larger = [(times * x, times * y) for x, y in BOX]
    shape = enclosure.room(larger, roof.flat(larger, 2.4 * times))
    at = (times * point[0], times * point[1], times * point[2])
    assert enclosure.nearest_surface(shape, at).distance_m == pytest.approx(
        times * enclosure.nearest_surface(ROOM, point).distance_m
    )


# A cabinet 0.3 m wide, its front flush 0.2 m before the left wall, toed in by 45 deg: its left corner in front is
# 0.15 sin 45 = 0.1061 m nearer, the rear one 0.3 sin 45 more: 0.2 - 0.1061 - 0.2121 = -0.1182 m.
def test_the_corner_of_a_toed_cabinet_is_seen_behind_the_wall() -> None:
    toed = solid.cabinet((0.2, 2.0, 1.0), direction_vector(-45.0, 0.0), 0.3, 0.4, 0.3)
    near = enclosure.solid_clearance(ROOM, toed)
    assert near.kind == "wall"
    assert near.number == 0
    assert near.distance_m == pytest.approx(0.2 - 0.45 * math.sqrt(0.5))
    cabinet = solid.cabinet((0.45 * math.sqrt(0.5) - 0.025, 2.0, 1.0), direction_vector(-45.0, 0.0), 0.3, 0.4, 0.3)
    for shape in (ROOM, CUT_ROOM, ELL_ROOM):
        assert enclosure.solid_clearance(shape, cabinet).distance_m == pytest.approx(-0.025)


def test_a_corner_of_the_room_that_pokes_into_a_cabinet_is_seen() -> None:
    # All eight corners of the cabinet are in the room; the room's own corner reaches 0.05 m into its side.
    astride = solid.upright_box((2.0, 2.0, 0.0), (3.0, 2.55, 1.0))
    assert enclosure.solid_clearance(ELL_ROOM, astride).distance_m == pytest.approx(-0.05)
    turned = solid.cabinet((2.6, 2.3, 1.0), direction_vector(-45.0, 0.0), 1.0, 0.4, 0.3)
    assert all(plane.contains(ELL, corner) for corner in solid.footprint(turned))
    clear = solid.cabinet((2.3, 2.3, 1.0), direction_vector(135.0, 0.0), 1.0, 0.4, 0.2)
    assert enclosure.solid_clearance(ELL_ROOM, clear).distance_m != 0.0


def test_a_cabinet_under_a_slope_meets_it_with_its_top_edge() -> None:
    # z = 1 + y/2 rises to the front: (1 + 2/2) at y = 2. The rear top edge at y = 2 - 0.3, z = 1.8, is the lowest:
    # (1 + 0.85 - 1.8) cos(atan 0.5) = 0.05 x 0.8944.
    facets = roof.mono_pitch(BOX, 1.0, 3.0, 0.0)
    shape = enclosure.enclosure(BOX, facets)
    box = solid.cabinet((2.5, 2.0, 1.6), (0.0, 1.0, 0.0), 0.3, 0.4, 0.3)
    near = enclosure.solid_clearance(shape, box)
    assert (near.kind, near.distance_m) == ("ceiling", pytest.approx(0.05 * math.cos(math.atan(0.5))))


def test_a_valley_over_a_cabinet_is_met_by_its_crease() -> None:
    facets = roof.gable(BOX, 3.0, 2.0)
    shape = enclosure.enclosure(BOX, facets)
    assert not shape.ceiling_convex
    across = solid.upright_box((2.0, 1.0, 0.3), (3.0, 2.0, 1.9))
    assert enclosure.solid_clearance(shape, across).distance_m == pytest.approx(0.1)
    through = solid.upright_box((2.0, 1.0, 0.3), (3.0, 2.0, 2.1))  # its corners are under 2.2 m
    assert enclosure.solid_clearance(shape, through).distance_m == pytest.approx(-0.1)


@given(INSIDE, TURN)
def test_a_cabinet_with_room_to_spare_holds_no_point_near_a_surface(
    place: tuple[float, float, float], turn: tuple[float, float]
) -> None:
    box = solid.cabinet(place, direction_vector(*turn), 0.3, 0.5, 0.4)
    clear = enclosure.solid_clearance(ROOM, box).distance_m
    depths = [enclosure.nearest_surface(ROOM, corner).distance_m for corner in solid.body(box).points]
    if clear > 0.0:
        assert clear == pytest.approx(min(depths))
    else:
        # Past two walls at once a corner is farther from the room than it is past either.
        assert min(depths) <= clear + 1e-9


def test_two_things_in_one_place_overlap() -> None:
    sub = solid.cabinet((1.0, 3.0, 0.3), (0.0, -1.0, 0.0), 0.5, 0.6, 0.5)
    assert solid.clearance_m(sub, solid.cabinet((1.1, 3.1, 0.3), (0.0, -1.0, 0.0), 0.5, 0.6, 0.5)) == pytest.approx(
        -0.4
    )
    assert solid.clearance_m(sub, solid.seated((1.0, 3.2, 1.1), 0.3)) < 0.0
    assert solid.clearance_m(sub, solid.upright_box((1.25, 3.0, 0.0), (2.0, 4.0, 2.4))) == pytest.approx(0.0)


def test_openings_are_measured_on_their_wall_and_before_it() -> None:
    window = enclosure.Opening(3, 0.5, 1.0, 0.9, 1.2)  # 1.5 to 2.5 m along the front wall, which has three pieces
    beside = solid.upright_box((2.7, 3.7, 1.0), (3.0, 4.0, 1.4))
    assert enclosure.gap_on_wall_m(CUT_ROOM, beside, window) == pytest.approx(0.2)
    before = solid.upright_box((2.0, 3.0, 1.0), (2.2, 3.4, 1.4))
    assert enclosure.gap_on_wall_m(CUT_ROOM, before, window) == pytest.approx(
        -0.5
    )  # aside to the left: 1.5 to 2.2 less
    assert solid.clearance_m(before, enclosure.before_opening(CUT_ROOM, window)) == pytest.approx(0.6)


@given(INSIDE, TURN)
@settings(max_examples=80)
def test_a_ray_ends_on_a_surface_and_the_way_there_is_free(
    start: tuple[float, float, float], turn: tuple[float, float]
) -> None:
    way = direction_vector(*turn)
    for shape in (ROOM, CUT_ROOM, enclosure.enclosure(ELL, roof.gable(ELL, 2.4, 2.0))):
        if not plane.contains(shape.outline, start[:2], 0.0) or start[2] > shape.height_m(start[:2]):
            continue
        hit = ray.first_met(shape, start, way)
        assert abs(enclosure.nearest_surface(shape, hit.point).distance_m) < 1e-6
        for share in (0.25, 0.5, 0.75):
            at = tuple(a + share * hit.distance_m * b for a, b in zip(start, way, strict=True))
            assert enclosure.nearest_surface(shape, at).distance_m > -1e-9  # type: ignore[arg-type]


def test_a_ray_from_a_surface_is_not_blind() -> None:
    assert ray.first_met(ROOM, (0.05, 2.0, 1.0), (-1.0, 0.0, 0.0)).distance_m == pytest.approx(0.05)
    assert ray.first_met(ROOM, (0.0, 2.0, 1.0), (-1.0, 0.0, 0.0))[:3] == (0.0, "wall", 0)
    assert ray.first_met(ROOM, (0.0, 2.0, 1.0), (1.0, 0.0, 0.0))[:3] == (5.0, "wall", 2)
    assert ray.first_met(ROOM, (-0.004, 2.0, 1.0), (1.0, 0.0, 0.0)).distance_m == pytest.approx(5.004)
    assert ray.first_met(ELL_ROOM, (0.0, 2.0, 1.0), (-1.0, 0.0, 0.0))[:3] == (0.0, "wall", 0)
    assert ray.first_met(ELL_ROOM, (1.0, 1.0, 0.0), (0.0, 0.0, -1.0))[:2] == (0.0, "floor")
    breast = solid.upright_box((1.0, 1.0, 0.0), (2.0, 2.0, 2.4))
    assert ray.first_met(ROOM, (0.97, 1.5, 1.0), (1.0, 0.0, 0.0), (breast,)).distance_m == pytest.approx(0.03)
    assert ray.first_met(ROOM, (1.0, 1.5, 1.0), (-1.0, 0.0, 0.0), (breast,))[:2] == (1.0, "wall")
    for shape in (ROOM, ELL_ROOM):
        with pytest.raises(Refused):
            ray.first_met(shape, (-0.05, 2.0, 1.0), (1.0, 0.0, 0.0))


def test_a_face_meets_what_its_middle_would_pass() -> None:
    post = solid.post((2.2, 3.0), 0.1, 0.0, 2.4)
    assert ray.first_met(ROOM, (2.0, 1.0, 1.0), (0.0, 1.0, 0.0), (post,)).distance_m == pytest.approx(3.0)
    met = ray.ahead_of_face(ROOM, (2.0, 1.0, 1.0), (0.0, 1.0, 0.0), 0.6, 0.4, (post,))
    assert (met.kind, met.distance_m) == ("obstacle", pytest.approx(1.9, abs=0.003))
    # Toed to the wall: the corner of the face, 0.3 m aside, is 0.3 tan 30 nearer along the axis.
    met = ray.ahead_of_face(ROOM, (2.0, 3.0, 1.0), direction_vector(30.0, 0.0), 0.6, 0.4)
    assert met.distance_m == pytest.approx((1.0 - 0.3 * math.sin(math.radians(30))) / math.cos(math.radians(30)))
    # The corner that pokes into an L is met between the corners of the face.
    met = ray.ahead_of_face(ELL_ROOM, (1.5, 1.5, 1.0), direction_vector(-45.0, 0.0), 0.6, 0.4)
    assert met.distance_m == pytest.approx(math.sqrt(2.0))
    assert ray.ahead_of_face(ROOM, (2.0, 4.0, 1.0), (0.0, 1.0, 0.0), 0.6, 0.4).distance_m == 0.0
    assert ray.ahead_of_face(ROOM, (2.0, 4.0, 1.0), (0.0, -1.0, 0.0), 0.6, 0.4).distance_m == pytest.approx(4.0)


def test_a_wall_in_pieces_reflects_once_and_a_bounce_on_a_window_is_told() -> None:
    source, ear = (1.0, 2.0, 1.2), (1.0, 1.0, 1.2)  # the bounce off the front wall is where two of its pieces meet
    assert len(images.reflections_in(CUT_ROOM, source, ear)) == 6
    window = enclosure.Opening(3, 0.5, 1.0, 0.9, 1.2)
    found = images.reflections_in(CUT_ROOM, (2.0, 2.0, 1.2), (2.0, 1.0, 1.2), openings=(window,))
    assert [(one.kind, one.number, one.opening) for one in found if one.opening is not None] == [("wall", 3, 0)]


def test_a_point_under_a_slope_is_as_deep_as_it_is_square_to_it() -> None:
    shape = enclosure.enclosure(BOX, roof.mono_pitch(BOX, 1.0, 5.0, 0.0))
    near = enclosure.nearest_surface(shape, (2.5, 2.0, 2.4))
    assert (near.kind, near.distance_m) == ("ceiling", pytest.approx(0.6 * math.sqrt(0.5)))
    assert enclosure.nearest_surface(ROOM, (2.5, 2.0, 2.5)).distance_m == pytest.approx(-0.1)
    assert enclosure.nearest_surface(ELL_ROOM, (3.0, 3.0, 1.0)).distance_m == pytest.approx(-0.5)


def test_a_round_post_under_a_slope_meets_it_with_its_rim() -> None:
    # Under z = 1 + y the rim 0.3 m toward the rear is the nearest: (1 + 2 - 0.3 - 2.5) cos 45.
    shape = enclosure.enclosure(BOX, roof.mono_pitch(BOX, 1.0, 5.0, 0.0))
    near = enclosure.solid_clearance(shape, solid.post((2.5, 2.0), 0.3, 0.1, 2.5))
    assert near.distance_m == pytest.approx(0.1)  # to the floor
    low = enclosure.solid_clearance(shape, solid.post((2.5, 2.0), 0.3, 0.2, 2.5))
    assert (low.kind, low.distance_m) == ("ceiling", pytest.approx(0.2 * math.sqrt(0.5)))


def test_a_mounted_cabinet_is_held_against_the_walls_in_whose_corner_its_wall_ends() -> None:
    # Of the L the wall at x = 2.5 m ends at a corner that pokes into the room, and at the front.
    piece = next(n for n in range(6) if {ELL[n], ELL[(n + 1) % 6]} == {(2.5, 5.0), (2.5, 2.5)})
    box = solid.upright_box((2.1, 2.3, 1.0), (2.5, 2.7, 1.4))
    # It stands over the poking corner, and has 1.0 m on all sides: to the floor, and to the ceiling at 2.4 m.
    assert enclosure.clear_beside_m(ELL_ROOM, box, piece) == pytest.approx(1.0)
    front = solid.upright_box((2.1, 4.7, 1.0), (2.5, 5.1, 1.4))
    assert enclosure.clear_beside_m(ELL_ROOM, front, piece) == pytest.approx(-0.1)
    assert enclosure.clear_beside_m(ROOM, solid.upright_box((-0.1, 1.0, 2.1), (0.3, 1.4, 2.5)), None) == pytest.approx(
        -0.1
    )


def test_a_rectangle_on_a_wall_in_pieces_is_held_against_the_whole_wall() -> None:
    # The second piece of the front wall begins 1.0 m from its left end: 3.5 m on, 4.5 m of 5.0 m are used.
    spot = enclosure.Opening(3, 2.5, 1.0, 0.6, 1.2)
    assert enclosure.depth_on_wall_m(CUT_ROOM, spot) == pytest.approx(0.5)
    assert enclosure.depth_on_wall_m(CUT_ROOM, spot._replace(width_m=1.8)) == pytest.approx(-0.3)
    assert enclosure.depth_on_wall_m(CUT_ROOM, spot._replace(sill_m=1.5)) == pytest.approx(-0.3)


def test_a_box_that_slides_meets_another_from_its_near_face_to_its_far_one() -> None:
    """By hand: a box to 1.0 m meets one that stands at 3.0 to 4.5 m after 2.0 m, and its tail at 0 leaves after 4.5."""
    moving = solid.body(solid.upright_box((0.0, 0.0, 0.0), (1.0, 1.0, 1.0)))
    still = solid.body(solid.upright_box((3.0, 0.5, 0.5), (4.5, 2.0, 2.0)))
    assert convex.meeting_m(moving, (1.0, 0.0, 0.0), still) == pytest.approx((2.0, 4.5), abs=1e-5)
    assert convex.meeting_m(moving, (0.0, 1.0, 0.0), still) is None
