"""What must not change a verdict: the unit a length is written in, and which side of the room is which."""

from __future__ import annotations

import copy
import re
from functools import lru_cache
from typing import Any, TypeAlias

import gallery_rooms as rooms
import pytest

from roomlint.review.book import load_book
from roomlint.review.engine import review_room
from roomlint.testing import room_of

RULES = load_book().rules
ROOMS = {
    name: value
    for name, value in vars(rooms).items()
    if isinstance(value, dict) and "roomlint" in value and "room" in value
}
Found: TypeAlias = "set[tuple[str, frozenset[str], str, str | None]]"
every_room = pytest.mark.parametrize("name", sorted(ROOMS))
METRES = re.compile(r"^(-?[0-9.]+) m$")


def _in_feet(value: Any) -> Any:
    """Return the same data with every length in feet and inches; 0.0254 m an inch exactly."""
    if isinstance(value, dict):
        return {key: _in_feet(below) for key, below in value.items()}
    if isinstance(value, list):
        return [_in_feet(below) for below in value]
    found = METRES.match(value) if isinstance(value, str) else None
    if found is None:
        return value
    feet, inches = divmod(float(found[1]) / 0.0254, 12)
    return f"{feet:.0f} ft {inches:.9f} in" if feet else f"{inches:.9f} in"


def _verdicts(data: rooms.Data) -> Found:
    outcome = review_room(room_of(data, rooms.PRODUCTS), RULES)
    assert not outcome.troubles
    return {
        (v.rule, frozenset(v.subject.split("+")), v.kind.value, v.level.value if v.level else None)
        for v in outcome.verdicts
    }


@lru_cache(maxsize=len(ROOMS))
def _as_it_stands(name: str) -> Found:
    return _verdicts(ROOMS[name])


@every_room
def test_feet_and_inches_give_the_verdicts_of_metres(name: str) -> None:
    assert _verdicts(_in_feet(ROOMS[name])) == _as_it_stands(name)


def _m(text: str) -> float:
    return float(text.removesuffix(" m"))


def _mirrored(data: rooms.Data) -> rooms.Data:
    """Return the room seen in a mirror that stands along its middle, labels and sides swapped."""
    result = copy.deepcopy(data)
    shell = result["room"]
    outline = shell.get("outline", [])
    width = max(_m(corner["from_left"]) for corner in outline) if outline else _m(shell["size"]["width"])
    length = 0.0 if outline else _m(shell["size"]["length"])
    for corner in outline:
        corner["from_left"] = f"{width - _m(corner['from_left'])} m"
    for opening in shell.get("openings", []):
        long = length if opening["wall"] in {"left", "right"} else width
        opening["from_wall_left"] = f"{long - _m(opening['from_wall_left']) - _m(opening['width'])} m"
        _swap(opening, "wall", "hinge")
    for obstacle in shell.get("obstacles", []):
        obstacle["from_left"] = f"{width - _m(obstacle['from_left']) - _m(obstacle['width'])} m"
    for element, key in [(s, "ear") for s in result["seats"]] + [(s, "position") for s in result["loudspeakers"]]:
        element[key]["from_left"] = f"{width - _m(element[key]['from_left'])} m"
    for speaker in result["loudspeakers"]:
        speaker["label"] = speaker["label"].translate(str.maketrans("+-", "-+")).replace("M-000", "M+000")
        _swap(speaker.get("mounting", {}), "on")
    return result


def _swap(mapping: dict[str, Any], *keys: str) -> None:
    for key in keys:
        if key in mapping:
            mapping[key] = {"left": "right", "right": "left"}.get(mapping[key], mapping[key])


@every_room
def test_mirrored_room_gets_the_mirrored_verdicts(name: str) -> None:
    assert _verdicts(_mirrored(ROOMS[name])) == _as_it_stands(name)
