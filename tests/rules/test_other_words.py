"""The same room in other words gets the same verdicts, from the whole rule book, however closely it was measured.

Drawn rooms, rectangles, L-shapes, mono-pitch attics and gables, exact and as a tape measures them, are written again:
in feet and inches, seen in a mirror, with another wall as the front, with every list the other way round, with one wall
as two, and with the outline of their size. Every rule must say the same of the same elements.
"""

from __future__ import annotations

import copy
import os
import random
from functools import lru_cache
from typing import TYPE_CHECKING, Any

import pytest
from drawn import PRODUCTS, drawn, metres

from roomlint.review.book import load_book
from roomlint.review.engine import review_room
from roomlint.testing import room_of

if TYPE_CHECKING:
    from collections.abc import Callable, Mapping

Data = dict[str, Any]
Found = dict[tuple[str, frozenset[str]], tuple[str, str]]
INCH_M = 0.0254
RULES = load_book().rules
SHAPES = ("rectangle", "corner", "mono-pitch", "gable")
TAPED, EXACT = "15 mm", "0 mm"
SEEDS = range(7000, 7000 + int(os.environ.get("ROOMLINT_SEEDS", "1")))
"""One room of each shape and tolerance; more where a change may matter to how a room is written."""
QUARTER = {"front": "left", "left": "rear", "rear": "right", "right": "front"}
"""What a wall is called once the wall that was on the right is the front."""
MIRROR = {"left": "right", "right": "left"}
WORDS = {"from_left": "from_right", "from_right": "from_left"}
OTHER_WAY = {"bass.seat-mid-width": "bass.seat-mid-length", "bass.seat-mid-length": "bass.seat-mid-width"}
TURNED = {"from_left": "from_rear", "from_front": "from_left", "from_right": "from_front", "from_rear": "from_right"}


def m(text: str) -> float:
    return float(text.removesuffix(" m"))


@lru_cache(maxsize=64)
def room(shape: str, seed: int, tolerance: str) -> Data:
    """Return a drawn room of a shape: the first from the seed on that was drawn so, or is made so."""
    for number in range(seed * 100, seed * 100 + 100):
        data = drawn(number)
        data["survey"]["tolerance"] = tolerance
        shell = data["room"]
        data["seats"] += _second_row(data)
        if shape == "corner" and "outline" in shell:
            return data
        if "size" not in shell or shape == "corner":
            continue
        if shape == "gable":
            high = m(shell["ceiling"].get("height") or shell["ceiling"]["high"])
            shell["ceiling"] = {
                "shape": "gable", "height": metres(high + 0.4), "low": metres(high - 0.5),
                "ridge": random.Random(number).choice(["front-to-rear", "left-to-right"]),
            }  # fmt: skip
            return data
        if shell["ceiling"]["shape"] == {"rectangle": "flat"}.get(shape, shape):
            return data
    raise AssertionError(f"no room of that shape in a hundred: {shape}")


def _second_row(data: Data) -> list[Data]:
    """Return a seat beside the reference one: pairs, spreads and rows have something to say."""
    ear = copy.deepcopy(data["seats"][0]["ear"])
    ear["from_left"] = metres(m(ear["from_left"]) - 0.73)
    return [{"id": "beside", "ear": ear, "width": "0.6 m"}]


def verdicts(data: Data, names: Mapping[str, str] | None = None) -> Found:
    """Return kind and level by rule and elements; `names` gives a wall the name that it had before."""
    outcome = review_room(room_of(data, PRODUCTS), RULES)
    assert outcome.troubles == []
    walls = {f"wall/{new}": f"wall/{old}" for new, old in (names or {}).items()}
    return {
        (v.rule, frozenset(walls.get(part, part) for part in v.subject.split("+"))): (str(v.kind), str(v.level))
        for v in outcome.verdicts
    }


@lru_cache(maxsize=64)
def as_drawn(shape: str, seed: int, tolerance: str) -> Found:
    return verdicts(room(shape, seed, tolerance))


def in_feet(data: Any) -> Any:
    if isinstance(data, dict):
        return {key: in_feet(value) for key, value in data.items()}
    if isinstance(data, list):
        return [in_feet(value) for value in data]
    if not isinstance(data, str) or not data.endswith((" m", " mm")):
        return data
    number, unit = data.split()
    feet, inches = divmod(float(number) * (1.0 if unit == "m" else 1e-3) / INCH_M, 12.0)
    return f"{feet:.0f} ft {inches:.9f} in" if feet else f"{inches:.9f} in"


def points(data: Data) -> list[Data]:
    return [s["ear"] for s in data["seats"]] + [s["position"] for s in (*data["loudspeakers"], *data["subwoofers"])]


def _renamed(point: Data, words: Mapping[str, str]) -> None:
    """Say the same lengths of a point with other words: they are measured from the same walls as before."""
    new = {words.get(key, key): value for key, value in point.items()}
    point.clear()
    point.update(new)


def _along(data: Data, wall: str) -> float:
    size = data["room"]["size"]
    return m(size["width"] if wall in {"front", "rear"} else size["length"])


def _held(data: Data, walls: Mapping[str, str]) -> None:
    low = data["room"]["ceiling"].get("low_side")
    if low:
        data["room"]["ceiling"]["low_side"] = walls.get(low, low)
    for speaker in data["loudspeakers"]:
        held = speaker.get("mounting")
        if held is not None:
            held["on"] = walls.get(held["on"], held["on"])


def mirrored(data: Data) -> Data:
    """Return a rectangle as a mirror along its middle shows it; what was measured from the left is from the right."""
    result = copy.deepcopy(data)
    for point in points(result):
        _renamed(point, WORDS)
    for opening in result["room"].get("openings", ()):
        across = _along(data, opening["wall"]) - m(opening["from_wall_left"]) - m(opening["width"])
        opening["from_wall_left"] = metres(across)
        opening["wall"] = MIRROR.get(opening["wall"], opening["wall"])
    for obstacle in result["room"].get("obstacles", ()):
        obstacle["from_left"] = metres(_along(data, "front") - m(obstacle["from_left"]) - m(obstacle["width"]))
    _held(result, MIRROR)
    for speaker in result["loudspeakers"]:
        speaker["label"] = speaker["label"].translate(str.maketrans("+-", "-+")).replace("-000", "+000")
    return result


def turned(data: Data) -> Data:
    """Return a rectangle with another wall for its front, the seats facing where they did."""
    result = copy.deepcopy(data)
    shell = result["room"]
    shell["size"] = {"width": shell["size"]["length"], "length": shell["size"]["width"]}
    for point in points(result):
        _renamed(point, TURNED)
    for opening in shell.get("openings", ()):
        opening["wall"] = QUARTER[opening["wall"]]
    for one in shell.get("obstacles", ()):
        left, front = m(one["from_left"]), m(one["from_front"])
        one["from_left"], one["width"], one["depth"] = one["from_front"], one["depth"], one["width"]
        one["from_front"] = metres(_along(data, "front") - left - m(one["depth"]))
        assert front >= 0.0
    if "ridge" in shell["ceiling"]:
        other = {"front-to-rear": "left-to-right", "left-to-right": "front-to-rear"}
        shell["ceiling"]["ridge"] = other[shell["ceiling"]["ridge"]]
    _held(result, QUARTER)
    for seat in result["seats"]:
        seat["facing"] = "90 deg"
    return result


def backwards(data: Data) -> Data:
    result = copy.deepcopy(data)
    for holder, key in [(result, "seats"), (result, "loudspeakers"), (result, "subwoofers"),
                        (result["room"], "openings"), (result["room"], "obstacles")]:  # fmt: skip
        if key in holder:
            holder[key].reverse()
    return result


def outlined(data: Data) -> Data:
    """Return a rectangle as the outline of its size."""
    result = copy.deepcopy(data)
    size = result["room"].pop("size")
    wide, long = size["width"], size["length"]
    corners = [("0 m", "0 m", "front"), (wide, "0 m", "right"), (wide, long, "rear"), ("0 m", long, "left")]
    result["room"]["outline"] = [
        {"from_left": left, "from_front": front, "wall": wall} for left, front, wall in corners
    ]
    return result


def split(data: Data) -> Data:
    """Return an outline whose left wall, the last, is written as two in one line, before any opening in it."""
    result = copy.deepcopy(data if "outline" in data["room"] else outlined(data))
    corners = result["room"]["outline"]
    whole = m(corners[-1]["from_front"])
    # Seen from inside the wall begins at its rear end; what is in it must lie in one of the two.
    taken = [one for one in result["room"].get("openings", ()) if one["wall"] == "left"]
    rear = whole * 0.63
    if any(m(one["from_wall_left"]) < rear < m(one["from_wall_left"]) + m(one["width"]) for one in taken):
        rear = max(m(one["from_wall_left"]) + m(one["width"]) for one in taken) + 0.05
    for one in taken:
        if m(one["from_wall_left"]) >= rear:
            one["wall"], one["from_wall_left"] = "left-front", metres(m(one["from_wall_left"]) - rear)
    corners.append({"from_left": "0 m", "from_front": metres(whole - rear), "wall": "left-front"})
    return result


def differences(one: Found, other: Found) -> list[str]:
    keys = sorted(one.keys() | other.keys(), key=str)
    return [
        f"{rule} {'+'.join(sorted(about))}: {one.get((rule, about))} became {other.get((rule, about))}"
        for rule, about in keys
        if one.get((rule, about)) != other.get((rule, about))
    ]


every_room = pytest.mark.parametrize("seed", SEEDS)
RECTANGLES = [shape for shape in SHAPES if shape != "corner"]


def check(change: Callable[[Data], Data], shape: str, seed: int, tolerance: str = TAPED) -> None:
    told = differences(as_drawn(shape, seed, tolerance), verdicts(change(room(shape, seed, tolerance))))
    assert told == [], "\n".join(told)


@every_room
@pytest.mark.parametrize("shape", SHAPES)
def test_feet_and_inches_change_no_verdict(shape: str, seed: int) -> None:
    check(in_feet, shape, seed)


@every_room
@pytest.mark.parametrize("shape", SHAPES)
def test_the_order_of_every_list_changes_no_verdict(shape: str, seed: int) -> None:
    check(backwards, shape, seed)


@every_room
@pytest.mark.parametrize("shape", RECTANGLES)
def test_a_mirror_changes_no_verdict(shape: str, seed: int) -> None:
    check(mirrored, shape, seed)


@every_room
@pytest.mark.parametrize("shape", RECTANGLES)
def test_another_wall_for_the_front_changes_no_verdict(shape: str, seed: int) -> None:
    found = verdicts(turned(room(shape, seed, TAPED)))
    # What was across is along now, and the two rules about it change places.
    found = {(OTHER_WAY.get(rule, rule), about): said for (rule, about), said in found.items()}
    told = differences(as_drawn(shape, seed, TAPED), found)
    assert told == [], "\n".join(told)


@every_room
@pytest.mark.parametrize("shape", RECTANGLES)
def test_the_outline_of_a_size_gets_the_verdicts_of_the_size(shape: str, seed: int) -> None:
    check(outlined, shape, seed)


@every_room
@pytest.mark.parametrize("shape", SHAPES)
def test_one_wall_written_as_two_changes_no_verdict(shape: str, seed: int) -> None:
    check(split, shape, seed)


@every_room
@pytest.mark.parametrize("shape", SHAPES)
def test_all_of_it_at_once_changes_no_verdict_of_an_exact_room(shape: str, seed: int) -> None:
    def change(data: Data) -> Data:
        return in_feet(backwards(split(data if shape == "corner" else mirrored(data))))

    check(change, shape, seed, EXACT)
