"""What changes no figure of layout, angle and picture: which side is which, where zero is, the order, the way it faces.

Rooms are drawn by a property-testing library from seeds; each is judged as drawn and as it reads otherwise.
"""

from __future__ import annotations

import copy
import math
import random
from typing import Any

import pytest
from drawn import PRODUCTS, drawn, metres, place
from hypothesis import given, settings
from hypothesis import strategies as st

from roomlint.review.book import load_book
from roomlint.review.engine import review_room
from roomlint.testing import room_of

RULES = [rule for rule in load_book().rules if rule.chapter in {"layout", "angle", "picture"}]
Data = dict[str, Any]
Found = dict[tuple[str, frozenset[str]], tuple[float, float]]
SIDES = {"left": "right", "right": "left"}
seeds = given(st.integers(1000, 100_000))
few = settings(max_examples=40, deadline=None, derandomize=True)


PANEL = {
    "roomlint_product": 1,
    "id": "panel",
    "kind": "display",
    "width": "1.3 m",
    "height": "0.8 m",
    "depth": "0.05 m",
}
SHEETS = (*PRODUCTS, PANEL)


def furnished(seed: int) -> Data:
    """Return a drawn room with a picture on its front wall, a second seat and a rack."""
    data, pick = drawn(seed), random.Random(seed + 1)
    width, length = extent(data)
    data["picture"] = {
        "kind": "display", "product": "panel", "width": "1.20 m", "height": "0.675 m", "mounting": {"on": "front"},
        "centre": place(width * pick.uniform(0.35, 0.65), length - 0.1, pick.uniform(0.9, 1.6), length),
    }  # fmt: skip
    ear = data["seats"][0]["ear"]
    beside = m(ear["from_left"]) + pick.uniform(0.6, 0.9) * pick.choice([-1.0, 1.0])
    data["seats"].append({"id": "beside", "ear": {**ear, "from_left": metres(beside)}, "width": "0.6 m"})
    at = pick.uniform(0.5, width - 0.5), pick.uniform(0.7, length - 0.7)
    data["electronics"] = {
        "racks": [
            {
                "id": "rack", "position": place(*at, 0.0, length),
                "facing": "0 deg", "width": "0.6 m", "height": metres(pick.uniform(0.5, 1.4)), "depth": "0.5 m",
            }
        ]
    }  # fmt: skip
    data["room"].setdefault("obstacles", "none")
    return data


def m(text: str) -> float:
    return float(text.removesuffix(" m"))


def figures(data: Data) -> Found:
    """Return every figure that was judged, with its uncertainty."""
    outcome = review_room(room_of(data, SHEETS), RULES)
    assert outcome.troubles == []
    return {
        (judged.rule.id, frozenset(judged.subject.key.split("+"))): (judged.figure.value, judged.figure.u)
        for judged in outcome.judged
    }


def same(one: Found, other: Found, but: frozenset[str] = frozenset()) -> None:
    """Hold one room's figures against another's, but those of some rules; what follows from these may wait in one."""
    followers = {rule.id for rule in RULES if but.intersection(rule.after)}
    one, other = ({key: value for key, value in found.items() if key[0] not in but} for found in (one, other))
    assert {key for key in one.keys() ^ other.keys() if key[0] not in followers} == set()
    for key in one.keys() & other.keys():
        assert other[key] == pytest.approx(one[key], abs=1e-6), key


def extent(data: Data) -> tuple[float, float]:
    room = data["room"]
    if "size" in room:
        return m(room["size"]["width"]), m(room["size"]["length"])
    return (max(m(c["from_left"]) for c in room["outline"]), max(m(c["from_front"]) for c in room["outline"]))


def points(data: Data) -> list[Data]:
    held = (*data["loudspeakers"], *data["subwoofers"], *data["electronics"]["racks"])
    return [s["ear"] for s in data["seats"]] + [one["position"] for one in held] + [data["picture"]["centre"]]


def obstacles(data: Data) -> list[Data]:
    listed = data["room"]["obstacles"]
    return [] if listed == "none" else listed


def mirrored(data: Data) -> Data:
    """Return the room as a mirror along its middle shows it, labels and names of walls with it."""
    result = copy.deepcopy(data)
    width, length = extent(data)
    shell = result["room"]
    for point in points(result):
        point["from_left"] = metres(width - m(point["from_left"]))
    for corner in shell.get("outline", ()):
        corner["from_left"] = metres(width - m(corner["from_left"]))
    if "outline" in shell:
        # Each wall keeps its name: a wall is named at its first corner, which is now its last.
        names = [corner["wall"] for corner in shell["outline"]]
        turned = shell["outline"][::-1]
        for corner, name in zip(turned, [*names[-2::-1], names[-1]], strict=True):
            corner["wall"] = name
        shell["outline"] = turned
    for opening in shell.get("openings", ()):
        opening["from_wall_left"] = metres(length - m(opening["from_wall_left"]) - m(opening["width"]))
        opening["wall"] = SIDES[opening["wall"]]
    for obstacle in obstacles(result):
        obstacle["from_left"] = metres(width - m(obstacle["from_left"]) - m(obstacle["width"]))
    low = shell["ceiling"].get("low_side")
    if low:
        shell["ceiling"]["low_side"] = SIDES.get(low, low)
    for speaker in result["loudspeakers"]:
        speaker["label"] = speaker["label"].translate(str.maketrans("+-", "-+")).replace("-000", "+000")
        held = speaker.get("mounting")
        if held is not None and "size" in shell:
            # A rectangle's walls are named by where they are, an outline's as it names them.
            held["on"] = SIDES.get(held["on"], held["on"])
    return result


def facing_left(data: Data) -> Data:
    """Return the room turned by a quarter: what was its front is its left, and the seat faces there."""
    result = copy.deepcopy(data)
    width, length = extent(data)
    shell = result["room"]
    shell["size"] = {"width": metres(length), "length": metres(width)}
    for point in points(result):
        left, front = m(point["from_left"]), m(point["from_front"])
        point["from_left"], point["from_front"] = metres(front), metres(width - left)
    walls = {"front": "left", "left": "rear", "rear": "right", "right": "front"}
    for opening in shell.get("openings", ()):
        opening["wall"] = walls[opening["wall"]]
    for one in obstacles(result):
        left, front = m(one["from_left"]), m(one["from_front"])
        one["from_left"], one["from_front"] = metres(front), metres(width - left - m(one["width"]))
        one["width"], one["depth"] = one["depth"], one["width"]
    if "low_side" in shell["ceiling"]:
        shell["ceiling"]["low_side"] = walls[shell["ceiling"]["low_side"]]
    for turned in (*result["seats"], *result["electronics"]["racks"]):
        turned["facing"] = "90 deg"
    result["picture"]["mounting"]["on"] = "left"
    for speaker in result["loudspeakers"]:
        held = speaker.get("mounting")
        if held is not None:
            held["on"] = walls.get(held["on"], held["on"])
    return result


def wider(data: Data, by: float) -> Data:
    """Return the room shifted: a strip of it more on the left and at the front, everything that much farther off."""
    result = copy.deepcopy(data)
    for point in points(result):
        point["from_left"] = metres(m(point["from_left"]) + by)
        point["from_front"] = metres(m(point["from_front"]) + by)
    return result


@few
@seeds
def test_a_mirrored_room_has_the_mirrored_figures(seed: int) -> None:
    data = furnished(seed)
    # A room is measured from its left wall, and its right one is as uncertain as its width: exact ones are compared.
    data["survey"]["tolerance"] = "0 mm"
    same(figures(data), figures(mirrored(data)))


@few
@seeds
def test_a_room_that_is_turned_has_the_same_figures(seed: int) -> None:
    data = furnished(seed)
    if "size" in data["room"]:
        # Lengths from the right and the rear carry the room's own reading, so exact ones are compared.
        data["survey"]["tolerance"] = "0 mm"
        # How a cabinet that looks straight down is turned about its axis nobody says: its sides may change places.
        same(figures(data), figures(facing_left(data)), frozenset({"layout.mounted-inside", "layout.clear-of-solids"}))


@few
@seeds
def test_the_order_of_the_file_changes_no_figure(seed: int) -> None:
    data = furnished(seed)
    turned = {**data, "loudspeakers": data["loudspeakers"][::-1]}
    # What overlaps is told at the one that is listed later: the deepest overlap of all is the same.
    one, other = figures(data), figures(turned)
    same(one, other, frozenset({"layout.clear-of-solids"}))
    deepest = [max(v[0] for key, v in found.items() if key[0] == "layout.clear-of-solids") for found in (one, other)]
    assert deepest[0] == pytest.approx(deepest[1])


ROOM_BOUND = frozenset({
    "layout.inside-room", "layout.clear-of-solids", "layout.on-surface", "layout.clear-of-openings",
    "layout.fixtures-inside",
    "layout.pair-surroundings", "layout.mounted-inside",
})  # fmt: skip
"""Figures that rest on the surfaces of the room, not only on where things stand to each other."""


@few
@seeds
def test_where_the_room_is_measured_from_changes_no_angle(seed: int) -> None:
    data = furnished(seed)
    width, length = extent(data)
    # In a hall around it, so that nothing leaves the room when it is shifted.
    size = {"width": metres(width + 3.0), "length": metres(length + 3.0)}
    data["room"] = {"size": size, "ceiling": {"shape": "flat", "height": "4 m"}, "obstacles": "none"}
    same(figures(data), figures(wider(data, 1.25)), ROOM_BOUND)


@few
@given(st.floats(-179.9, 180.0), st.floats(-60.0, 60.0), st.floats(0.5, 3.0))
def test_every_azimuth_reads_as_it_was_set_out(azimuth: float, elevation: float, away: float) -> None:
    az, el = math.radians(azimuth), math.radians(elevation)
    at = {
        "from_left": f"{5.0 - away * math.sin(az) * math.cos(el):.9f} m",
        "from_rear": f"{5.0 + away * math.cos(az) * math.cos(el):.9f} m",
        "height": f"{4.0 + away * math.sin(el):.9f} m",
    }
    room = room_of(
        {
            "roomlint": 1,
            "project": {"code": "case"},
            "room": {"size": {"width": "10 m", "length": "10 m"}, "ceiling": {"shape": "flat", "height": "8 m"}},
            "seats": [{"id": "a", "ear": {"from_left": "5 m", "from_rear": "5 m", "height": "4 m"}}],
            "loudspeakers": [{"id": "s", "position": at}],
        }
    )
    angles = room.figures.angles
    speaker, seat = room.design.loudspeakers[0], room.design.seats[0]
    assert math.remainder(angles.azimuth(speaker, seat).value - azimuth, 360.0) == pytest.approx(0.0, abs=1e-5)
    assert angles.elevation(speaker, seat).value == pytest.approx(elevation, abs=1e-5)
