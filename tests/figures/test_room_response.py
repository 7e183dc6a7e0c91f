"""What must hold of the response of any room, whichever solver finds it."""

import math
import subprocess
import sys

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from roomlint import roof
from roomlint.figures import bass, element_room, room_response
from roomlint.figures.domain import Refused
from roomlint.plane import Outline, Point2
from roomlint.roof import Facet

C = 343.0
BAND = [float(hz) for hz in range(20, 81)]
OBLONG = ((0.0, 0.0), (5.0, 0.0), (5.0, 4.0), (0.0, 4.0))
ELL = ((0.0, 0.0), (6.4, 0.0), (6.4, 2.9), (3.7, 2.9), (3.7, 5.2), (0.0, 5.2))
TEE = ((0.0, 0.0), (7.0, 0.0), (7.0, 2.4), (4.9, 2.4), (4.9, 5.0), (2.2, 5.0), (2.2, 2.4), (0.0, 2.4))
CUT = ((0.0, 0.0), (5.0, 0.0), (5.0, 3.0), (4.0, 4.0), (0.0, 4.0))


def hip(outline: Outline) -> tuple[Facet, ...]:
    (_, _), (far, deep) = outline[0], outline[2]
    return (
        Facet(((0.0, 0.0), (far, 0.0), (3.0, 2.0), (2.0, 2.0)), 0.0, 0.7, 1.5),
        Facet(((far, deep), (0.0, deep), (2.0, 2.0), (3.0, 2.0)), 0.0, -0.7, 4.3),
        Facet(((0.0, deep), (0.0, 0.0), (2.0, 2.0)), 0.7, 0.0, 1.5),
        Facet(((far, 0.0), (far, deep), (3.0, 2.0)), -0.7, 0.0, 5.0),
    )


ROOMS = {
    "box": (OBLONG, roof.flat(OBLONG, 2.5)),
    "L": (ELL, roof.flat(ELL, 2.5)),
    "T": (TEE, roof.flat(TEE, 2.6)),
    "mono-pitch": (OBLONG, roof.mono_pitch(OBLONG, 1.5, 3.2, 0.0)),
    "gable": (OBLONG, roof.gable(OBLONG, 1.2, 3.0, ridge_at_m=1.7)),
    "gable across": (OBLONG, roof.gable(OBLONG, 1.4, 2.8, -90.0)),
    "cut corner": (CUT, roof.flat(CUT, 2.5)),
    "hip": (OBLONG, hip(OBLONG)),
}
KINDS = {"box": "box", "L": "plan", "T": "plan", "mono-pitch": "section", "gable": "section", "gable across": "section"}
SOURCES = [(2.6, 0.3, 0.2), (4.6, 1.9, 0.25)]
EARS = [(2.5, 2.2, 1.1), (3.4, 1.6, 1.15), (3.1, 2.3, 1.0)]


def solved(name: str) -> room_response.RoomResponse:
    return room_response.solve(*ROOMS[name], 80.0, C)


@pytest.mark.parametrize("name", ROOMS)
def test_each_shape_goes_to_its_solver(name: str) -> None:
    assert solved(name).shape.kind == KINDS.get(name, "any")


@pytest.mark.parametrize("name", ROOMS)
def test_source_and_ear_change_places_without_a_trace(name: str) -> None:
    there = solved(name).transfer(SOURCES, EARS, BAND, 0.5)
    back = solved(name).transfer(EARS, SOURCES, BAND, 0.5)
    assert np.allclose(there, back.swapaxes(0, 1), rtol=1e-6, atol=1e-9)


@pytest.mark.parametrize("name", ROOMS)
def test_pressure_zone_is_even_all_over_the_room(name: str) -> None:
    room = solved(name)
    shapes = room.modes.shapes(room.shape.carried([*SOURCES, *EARS]))
    assert np.abs(shapes[:, 0]) == pytest.approx(1 / math.sqrt(room.shape.volume_m3), rel=1e-6)


@pytest.mark.parametrize("name", ROOMS)
def test_far_below_the_first_mode_the_air_is_a_spring(name: str) -> None:
    # closed volume: |p| = rho c^2 Q/(j w V); re 1 m in free field that is 4 pi c^2/(w^2 V), here with little loss
    room = solved(name)
    pressure = np.abs(room.transfer(SOURCES, EARS, [1.0], 30.0))
    stiff = 4 * math.pi * (C / (2 * math.pi)) ** 2 / room.shape.volume_m3
    assert np.allclose(pressure, stiff, rtol=0.05)


@pytest.mark.parametrize("name", ROOMS)
def test_coarser_resolution_tells_the_error_and_it_is_small(name: str) -> None:
    room = solved(name)
    fine, coarse = (one.transfer(SOURCES, EARS, BAND, 0.5).sum(axis=1) for one in (room, room.coarser))
    typical = np.sqrt((np.abs(fine) ** 2).mean(axis=1, keepdims=True))
    share = np.abs(fine - coarse) / typical
    assert share.max() < {"box": 1e-4, "any": 0.2}.get(room.shape.kind, 0.03)
    assert share.max() > 0


WAYS = st.tuples(
    st.floats(0, 360), st.floats(-20, 20), st.floats(-20, 20), st.booleans(), st.booleans(), st.integers(0, 7)
)


@pytest.mark.parametrize("name", ROOMS)
@settings(max_examples=3, deadline=None)
@given(way=WAYS)
def test_answer_does_not_depend_on_how_the_room_is_written(
    name: str, way: tuple[float, float, float, bool, bool, int]
) -> None:
    degrees, right, front, mirrored, reversed_, first = way
    outline, facets = ROOMS[name]
    cosine, sine = math.cos(math.radians(degrees)), math.sin(math.radians(degrees))
    feet = 0.3048 if first % 2 else 1.0

    def plan_point(point: Point2) -> Point2:
        x, y = (-point[0] if mirrored else point[0]), point[1]
        x, y = cosine * x - sine * y + right, sine * x + cosine * y + front
        return x / feet * feet, y / feet * feet

    def points(many: list[tuple[float, float, float]]) -> list[tuple[float, float, float]]:
        return [(*plan_point((x, y)), z / feet * feet) for x, y, z in many]

    def polygon(corners: Outline) -> tuple[Point2, ...]:
        moved = [plan_point(corner) for corner in corners]
        moved = moved[first % len(moved) :] + moved[: first % len(moved)]
        return tuple(reversed(moved)) if reversed_ else tuple(moved)

    def carried(facet: Facet) -> Facet:
        a, b = (-facet.a if mirrored else facet.a), facet.b
        a, b = cosine * a - sine * b, sine * a + cosine * b
        return Facet(polygon(facet.outline), a, b, facet.c - a * right - b * front)

    moved = [carried(facet) for facet in facets]
    if reversed_:
        moved.reverse()
    other = room_response.solve(polygon(outline), moved, 80.0, C)
    here = bass.level_db(solved(name).transfer(SOURCES, EARS, BAND, 0.5))
    there = bass.level_db(other.transfer(points(SOURCES), points(EARS), BAND, 0.5))
    assert np.abs(here - there).max() < 0.02


@pytest.mark.parametrize("name", ["box", "L", "gable", "cut corner"])
def test_wall_written_as_two_collinear_ones_is_one_wall(name: str) -> None:
    outline, facets = ROOMS[name]
    middle = ((outline[0][0] + outline[1][0]) / 2, (outline[0][1] + outline[1][1]) / 2)
    other = room_response.solve((outline[0], middle, *outline[1:]), facets, 80.0, C)
    assert other.shape.kind == solved(name).shape.kind
    here, there = (room.transfer(SOURCES, EARS, BAND, 0.5) for room in (solved(name), other))
    assert np.allclose(here, there, rtol=1e-6)


def test_walls_on_one_line_of_a_turned_room_do_not_cross() -> None:
    turn = math.radians(29.640625)
    cosine, sine = math.cos(turn), math.sin(turn)
    turned = tuple((-cosine * x - sine * y, -sine * x + cosine * y) for x, y in TEE)
    assert room_response.solve(turned, roof.flat(turned, 2.6), 80.0, C).shape.kind == "plan"


@pytest.mark.parametrize(
    "outline", [((0.0, 0.0), (5.0, 4.0), (5.0, 0.0), (0.0, 4.0)), ((0.0, 0.0), (5.0, 0.0), (9.0, 0.0))]
)
def test_plan_that_crosses_itself_or_has_no_area_is_refused(outline: Outline) -> None:
    with pytest.raises(ValueError, match=r"cross or touch|no area"):
        room_response.solve(outline, [Facet(outline, 0.0, 0.0, 2.5)], 80.0, C)


@pytest.mark.parametrize("name", ["box", "L", "gable", "hip"])
def test_slopes_foretell_a_moved_source_and_a_moved_ear(name: str) -> None:
    room = solved(name)
    ((by_source, by_ear),) = room.slopes(SOURCES, EARS, BAND, (0.5,))
    still = room.transfer(SOURCES, EARS, BAND, 0.5)
    sources = [(SOURCES[0][0], SOURCES[0][1] + 0.02, SOURCES[0][2]), SOURCES[1]]
    moved = room.transfer(sources, EARS, BAND, 0.5)
    size = np.abs(still).mean()
    assert np.abs(moved[:, 0] - still[:, 0] - 0.02 * by_source[:, 0, 1]).max() < 0.01 * size
    ears = [(EARS[0][0] + 0.02, EARS[0][1], EARS[0][2]), *EARS[1:]]
    moved = room.transfer(SOURCES, ears, BAND, 0.5)
    assert np.abs(moved[0] - still[0] - 0.02 * by_ear[0, :, 0]).max() < 0.01 * size


def test_source_against_a_wall_has_a_slope_from_one_side() -> None:
    ((by_source, _),) = solved("box").slopes([(2.0, 0.0, 0.0)], EARS, [40.0], (0.5,))
    assert np.isfinite(by_source).all()


@pytest.mark.parametrize("name", ROOMS)
def test_point_outside_is_refused_before_anything_is_solved(name: str) -> None:
    room = room_response.RoomResponse(solved(name).shape, 80.0, C)
    for point, words in (((9.0, 1.0, 1.0), "outside the plan"), ((2.0, 1.0, 4.0), "above the ceiling")):
        with pytest.raises(ValueError, match=words):
            room.transfer([point], EARS, BAND, 0.5)
    assert "modes" not in vars(room)


def test_point_outside_is_told_as_it_was_written() -> None:
    with pytest.raises(ValueError, match=r"9\.00, 1\.00, 1\.00 m"):
        solved("L").check([(9.0, 1.0, 1.0)])


def test_point_a_hair_outside_a_wall_is_on_it() -> None:
    solved("L").check([(-0.005, 1.0, -0.005)])


def circle(walls: int, radius: float) -> tuple[Point2, ...]:
    turns = [2 * math.pi * number / walls for number in range(walls)]
    return tuple((radius * math.cos(turn), radius * math.sin(turn)) for turn in turns)


def stairs(steps: int, step: float) -> tuple[Point2, ...]:
    corners = [(0.0, 0.0), (steps * step, 0.0)]
    for number in range(steps):
        corners += [((steps - number) * step, (number + 1) * step), ((steps - number - 1) * step, (number + 1) * step)]
    return tuple(dict.fromkeys(corners))


HALL = ((0.0, 0.0), (20.0, 0.0), (20.0, 10.0), (10.0, 10.0), (10.0, 20.0), (0.0, 20.0))
WIDE = ((0.0, 0.0), (30.0, 0.0), (30.0, 29.0), (29.0, 30.0), (0.0, 30.0))


@pytest.mark.parametrize(
    ("outline", "height", "words"),
    [
        (HALL, 0.31, "too large or too intricate"),
        (stairs(30, 0.25), 2.5, "too large or too intricate"),
        (circle(80, 3.0), 2.5, "80 walls"),
        (WIDE, 0.31, "too many modes"),
        (WIDE, 5.0, "a room this large whose .* too many modes"),
    ],
)
def test_room_that_would_take_long_is_refused_before_anything_is_solved(
    outline: Outline, height: float, words: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    def solving(*_: object) -> None:
        raise AssertionError

    monkeypatch.setattr("roomlint.figures.sections._solved", solving)
    monkeypatch.setattr("roomlint.figures.element_room.mesh_plan", solving)
    with pytest.raises(ValueError, match=words):
        room_response.solve(outline, roof.flat(outline, height), 80.0, C)


def test_room_and_refusal_are_each_worked_out_once_for_all_seats(monkeypatch: pytest.MonkeyPatch) -> None:
    calls = []
    was = room_response.shape_of
    monkeypatch.setattr(room_response, "shape_of", lambda *room: calls.append(room) or was(*room))
    outline = stairs(29, 0.25)
    for _ in range(60):
        with pytest.raises(ValueError, match="intricate"):
            room_response.solve(outline, roof.flat(outline, 2.5), 80.0, C)
    assert len(calls) == 1


def test_plan_that_cannot_be_cut_is_tried_once_for_all_seats(monkeypatch: pytest.MonkeyPatch) -> None:
    calls = []

    def cutting(*room: object) -> None:
        calls.append(room)
        raise Refused("the plan is too intricate")

    monkeypatch.setattr(element_room, "mesh_plan", cutting)
    for _ in range(60):
        room = room_response.solve(CUT, roof.flat(CUT, 2.47), 80.0, C)
        with pytest.raises(ValueError, match="intricate"):
            room.transfer(SOURCES, EARS, BAND, 0.5)
    assert len(calls) == 1


@pytest.mark.parametrize(
    ("facets", "words"),
    [
        ([Facet(OBLONG, 0.0, 0.0, 0.2)], "comes down to"),
        ([Facet(OBLONG[:3], 0.0, 0.0, 2.4)], "cover the plan"),
        (
            [
                Facet(((0.0, 0.0), (5.0, 0.0), (5.0, 2.0), (0.0, 2.0)), 0.0, 0.0, 2.4),
                Facet(((0.0, 2.0), (5.0, 2.0), (5.0, 4.0), (0.0, 4.0)), 0.0, 0.0, 2.8),
            ],
            r"step of 0\.40 m",
        ),
    ],
)
def test_ceiling_that_cannot_be_modelled_is_refused(facets: list[Facet], words: str) -> None:
    with pytest.raises(ValueError, match=words):
        room_response.solve(OBLONG, facets, 80.0, C)


def test_frequency_beyond_its_means_is_refused() -> None:
    with pytest.raises(ValueError, match="200 Hz"):
        room_response.solve(*ROOMS["box"], 400.0, C)
    with pytest.raises(ValueError, match="up to 80 Hz"):
        solved("box").transfer(SOURCES, EARS, [90.0], 0.5)


def test_boxes_and_prisms_are_solved_without_scipy() -> None:
    program = f"""
import sys
from roomlint import roof
from roomlint.figures import room_response
oblong, ell = {OBLONG!r}, {ELL!r}
for outline, facets in (
    (oblong, roof.flat(oblong, 2.5)),
    (ell, roof.flat(ell, 2.5)),
    (oblong, roof.mono_pitch(oblong, 1.5, 3.0, 90.0)),
    (oblong, roof.gable(oblong, 1.5, 3.0)),
):
    room = room_response.solve(outline, facets, 80.0, 343.0)
    room.transfer([(1.0, 0.3, 0.2)], [(2.0, 2.0, 1.1)], [40.0], 0.5)
assert "scipy" not in sys.modules
"""
    subprocess.run([sys.executable, "-c", program], check=True)
