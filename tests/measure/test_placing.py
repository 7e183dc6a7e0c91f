"""Where else subwoofers could stand: the room allows it, and what is told of it comes true."""

from __future__ import annotations

from typing import Any

import pytest

from roomlint.review.book import load_book
from roomlint.review.engine import review_room
from roomlint.testing import changed, room_of

RULES = [rule for rule in load_book().rules if rule.id == "bass.seat-spread"]


def seat(name: str, left: float, front: float) -> dict[str, Any]:
    return {"id": name, "row": 1, "ear": {"from_left": f"{left} m", "from_front": f"{front} m", "height": "1.1 m"}}


def subwoofer(name: str, left: float, front: float) -> dict[str, Any]:
    place = {"from_left": f"{left} m", "from_front": f"{front} m", "height": "0.25 m"}
    return {"id": name, "position": place}


ROOM: dict[str, Any] = {
    "roomlint": 1,
    "project": {"code": "case"},
    "survey": {"tolerance": "0 mm", "temperature": "20 degC"},
    "room": {
        "size": {"width": "4.5 m", "length": "6.0 m"}, "ceiling": {"shape": "flat", "height": "2.7 m"},
        "openings": "none", "obstacles": "none",
    },
    "seats": [seat("a", 0.9, 3.9), seat("b", 1.7, 3.9), seat("c", 2.6, 3.9), seat("d", 3.4, 3.9), seat("e", 2.2, 5.0)],
    "subwoofers": [subwoofer("corner", 0.4, 0.4)],
}  # fmt: skip


def test_the_places_told_do_what_is_told_of_them() -> None:
    figures = room_of(ROOM).figures
    now = figures.bass.seat_spread()
    cure = figures.placing.cure(now, 6.0)
    assert cure is not None
    assert cure.spread.value < now.value - 1.0
    moved = []
    for number, spot in enumerate(cure.placed.spots):
        x, y, _ = spot.at
        moved.append(subwoofer(f"s{number}", round(x, 6), round(6.0 - y, 6)))
    there = room_of(changed(ROOM, {"subwoofers": moved})).figures.bass.seat_spread()
    assert there.value == pytest.approx(cure.spread.value, abs=1e-6)


def test_the_finding_tells_the_places() -> None:
    (verdict,) = review_room(room_of(ROOM), RULES).verdicts
    assert verdict.said in {"middles", "corners"}
    assert verdict.facts["walls"]


def test_a_row_of_even_seats_asks_for_nothing() -> None:
    one = changed(ROOM, {"seats": [seat("a", 2.2, 3.9), seat("b", 2.3, 3.9)]})
    (verdict,) = review_room(room_of(one), RULES).verdicts
    assert verdict.kind == "pass"
    assert "placing" not in vars(room_of(one).figures)


def test_what_is_in_the_way_leaves_no_place() -> None:
    spots = room_of(ROOM).figures.placing.spots()
    assert {spot.walls for spot in spots} == {
        ("front",), ("right",), ("rear",), ("left",), ("front", "right"), ("right", "rear"), ("rear", "left"),
        ("front", "left"),
    }  # fmt: skip
    crowded = changed(
        ROOM,
        {
            "room.openings": [
                {"id": "door", "kind": "door", "wall": "rear", "from_left": "1.8 m", "width": "0.9 m", "sill": "0 m",
                 "height": "2 m"},
                {"id": "pane", "kind": "window", "wall": "front", "from_left": "1.8 m", "width": "0.9 m",
                 "sill": "0.9 m", "height": "1 m"},
            ],
            "room.obstacles": [{"id": "stove", "kind": "cabinet", "from_left": "4 m", "from_front": "2.8 m",
                                "width": "0.5 m", "depth": "0.5 m"}],
            "loudspeakers": [{"id": "left", "label": "M+030", "position": {"from_left": "0.5 m", "from_front": "0.4 m",
                                                                           "height": "1 m"}}],
        },
    )  # fmt: skip
    left = {spot.walls for spot in room_of(crowded).figures.placing.spots()}
    assert ("rear",) not in left
    assert ("right",) not in left
    assert ("front", "left") not in left
    assert ("front",) in left


def test_no_subwoofer_is_told_where_a_rack_stands_or_where_people_walk() -> None:
    rack = {"id": "rack", "position": {"from_left": "2.25 m", "from_front": "5.5 m", "height": "0 m"},
            "width": "0.6 m", "height": "1.2 m", "depth": "0.5 m", "facing": "0 deg"}  # fmt: skip
    way = {"id": "way", "from_left": "3.6 m", "from_front": "0 m", "width": "0.9 m", "depth": "6 m"}
    busy = changed(ROOM, {"electronics": {"racks": [rack]}, "room.walkways": [way]})
    walls = {spot.walls for spot in room_of(busy).figures.placing.spots()}
    assert walls == {("front",), ("left",), ("rear", "left"), ("front", "left")}


def test_under_a_low_slope_none_stands() -> None:
    low = changed(ROOM, {"room.ceiling": {"shape": "mono-pitch", "low": "0.4 m", "high": "3 m", "low_side": "front"}})
    walls = {spot.walls for spot in room_of(low).figures.placing.spots()}
    assert ("rear",) in walls


def test_a_subwoofer_with_a_low_pass_of_its_own_is_heard_with_it() -> None:
    two = changed(ROOM, {"subwoofers": [subwoofer("one", 0.4, 0.4), subwoofer("two", 4.1, 5.6)]})
    alike = changed(two, {"subwoofers.0.low_pass": "50 Hz", "subwoofers.1.low_pass": "50 Hz"})
    apart = changed(two, {"subwoofers.0.low_pass": "50 Hz", "subwoofers.1.low_pass": "none"})
    plain, same, other = (room_of(data).figures.bass.seat_spread() for data in (two, alike, apart))
    assert same.value == pytest.approx(plain.value, abs=1e-6)
    assert other.value != pytest.approx(plain.value, abs=0.1)
    assert any("fourth order" in words for words in other.assumes)
