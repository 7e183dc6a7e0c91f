"""The uncertainty of the bass is what drawn readings give, from whichever wall places were measured."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

import numpy as np
import pytest
from draws import COVERAGE, STRAIGHT, offsets, read_from, rewritten

from roomlint.testing import room_of

if TYPE_CHECKING:
    from roomlint.measure.figure import Figure
    from roomlint.review.room import Room

WIDTH_M, LENGTH_M = 4.62, 6.14
PLACES = {
    "subwoofers": {"sub": (0.9, 5.4, 0.2), "other": (3.1, 0.5, 0.2)},
    "seats": {"one": (2.0, 2.6, 1.1), "two": (2.9, 2.45, 1.1), "three": (2.4, 1.2, 1.2)},
}
KEYS = {"subwoofers": "position", "seats": "ear"}
WITHIN = 0.15
DRAWS = 80
LEAST = 3

Data = dict[str, Any]


def place(spot: tuple[float, float, float], sides: str, *, mirrored: bool) -> Data:
    """Return a place, written from the sides that are named; mirrored, the same numbers count from the other side."""
    x, y, z = spot
    across = {"left": x, "right": WIDTH_M - x}
    written = "left" if "left" in sides else "right"
    side = {"left": "right", "right": "left"}[written] if mirrored else written
    found = {f"from_{side}": f"{across[written]:.4f} m", "height": f"{z} m"}
    found |= {"from_rear": f"{y:.4f} m"} if "rear" in sides else {"from_front": f"{LENGTH_M - y:.4f} m"}
    return found


def drawn_room(sides: str, shape: str = "box", *, mirrored: bool = False) -> Data:
    data: Data = {
        "roomlint": 1,
        "project": {"code": "measured"},
        "survey": {"tolerance": "10 mm", "temperature": "20 degC ± 2 degC"},
        "layout": "0+5+0",
        "room": {"size": {"width": f"{WIDTH_M} m", "length": f"{LENGTH_M} m"}},
    }
    if shape == "slope":
        low = "right" if mirrored else "left"
        data["room"]["ceiling"] = {"shape": "mono-pitch", "low": "2.1 m", "high": "2.8 m", "low_side": low}
    else:
        data["room"]["ceiling"] = {"shape": "flat", "height": "2.54 m"}
    for kind, spots in PLACES.items():
        data[kind] = [{"id": name, KEYS[kind]: place(spot, sides, mirrored=mirrored)} for name, spot in spots.items()]
    data["seats"][0]["reference"] = True
    return data


def figures(room: Room) -> dict[str, Figure]:
    bass = room.figures.bass
    found = {"spread": bass.seat_spread(), "null": bass.common_null().figure}
    for seat in room.design.seats:
        found |= {f"others at {seat.id}": bass.other_dip(seat).figure, f"own at {seat.id}": bass.own_dip(seat).figure}
    return found


@pytest.mark.parametrize("sides", ["left front", "right front", "left rear", "right rear"])
def test_what_is_printed_is_what_drawn_readings_give(sides: str) -> None:
    data = drawn_room(sides)
    room = room_of(data)
    told = figures(room)
    readings = read_from(told.values())
    off = offsets(len(readings), DRAWS, 1)
    got: dict[str, list[float]] = {name: [] for name in told}
    for row in off:
        moves = {
            place: f"{reading.value + step * reading.u / COVERAGE:.12g} {reading.unit}"
            for (place, reading), step in zip(readings.items(), row, strict=True)
        }
        for name, figure in figures(room_of(rewritten(data, moves, room.design.file))).items():
            got[name].append(figure.value)
    ratios = {}
    for name, values in got.items():
        sd = float(np.std(values, ddof=1))
        slopes = off.T @ (np.array(values) - np.mean(values)) / (DRAWS - 1)
        # Of a figure that bends within the draws, one number on both sides says too little either way.
        if float(slopes @ slopes) / sd**2 > STRAIGHT:
            ratios[name] = told[name].u / (COVERAGE * sd)
    assert len(ratios) >= LEAST
    assert {name: ratio for name, ratio in ratios.items() if abs(ratio - 1.0) > WITHIN} == {}


@pytest.mark.parametrize("sides", ["left front", "right rear"])
@pytest.mark.parametrize(("shape", "alike"), [("box", 0.02), ("slope", 0.03)])
def test_a_room_and_its_mirror_image_are_known_alike(shape: str, alike: float, sides: str) -> None:
    # What was measured from the left is measured from the right in the mirror image, by the same numbers: nothing else
    # differs, but the triangles into which a ceiling was cut and the images that were worth counting.
    here, there = (figures(room_of(drawn_room(sides, shape, mirrored=way))) for way in (False, True))
    for name, figure in here.items():
        assert there[name].value == pytest.approx(figure.value, abs=1e-4), name
        assert there[name].u == pytest.approx(figure.u, rel=alike), name


def test_a_place_from_the_other_wall_is_known_otherwise_by_what_the_size_is_off() -> None:
    # An exact width and length make both the same place; a size that is off does not, and that difference is real.
    data = {sides: drawn_room(sides) for sides in ("left front", "right rear")}
    for room in data.values():
        room["room"]["size"] = {"width": f"{WIDTH_M} m ± 0 mm", "length": f"{LENGTH_M} m ± 0 mm"}
    here, there = (figures(room_of(room)) for room in data.values())
    for name, figure in here.items():
        assert there[name].u == pytest.approx(figure.u, rel=1e-4), name


def test_air_that_may_be_warmer_is_part_of_what_is_not_known() -> None:
    data = drawn_room("left front")
    data["survey"] = {"tolerance": "0 mm", "temperature": "20 degC ± 5 degC"}
    assert all(figure.u > 0.0 for figure in figures(room_of(data)).values())


def test_a_subwoofer_in_a_wall_has_an_uncertainty_though_the_room_may_be_smaller() -> None:
    data = drawn_room("left front")
    data["survey"] = {"tolerance": "30 mm"}
    data["subwoofers"][1]["position"] = {"from_left": f"{WIDTH_M} m", "from_front": "1 m", "height": "0.3 m"}
    assert all(0.0 < figure.u < 10.0 for figure in figures(room_of(data)).values())
