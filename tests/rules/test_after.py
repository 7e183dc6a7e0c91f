"""Cause before consequence: for each cause that a rule waits for, a room in which only the cause is told."""

from __future__ import annotations

import re
from dataclasses import replace
from typing import TYPE_CHECKING, Any

import pytest
from offsets import BOX, PICTURE, at, room, speaker
from test_cases import BOOK, CASES

from roomlint.review.engine import review_room
from roomlint.review.verdict import Kind
from roomlint.testing import _causes, changed, room_of

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator

    from roomlint.review.rule import AnyRule
    from roomlint.testing import Case

Data = dict[str, Any]
BY_ID = {rule.id: rule for rule in BOOK.rules}
PAIRS = [pytest.param(rule.id, cause, id=f"{rule.id}-after-{cause}") for rule in BOOK.rules for cause in rule.after]
FAR = "40 m"
MOST_ROOMS = 12


def _speakers(room: Data, change: Callable[[int, Data], Data]) -> Data:
    speakers = room.get("loudspeakers")
    listed = enumerate(speakers if isinstance(speakers, list) else ())
    return changed(room, {path: value for n, one in listed for path, value in change(n, one).items()})


def _outside(room: Data) -> Iterator[Data]:
    """Yield the room with everything that sounds, or every seat, beyond its right wall; or through its ceiling."""
    for n, one in enumerate(_list(room, "loudspeakers")):
        if "position" in one:
            yield changed(room, {f"loudspeakers.{n}.position.height": "9 m"})
            yield changed(room, {f"loudspeakers.{n}.position": _aside(one["position"])})
    yield _speakers(room, lambda n, one: {f"loudspeakers.{n}.position.height": "9 m"} if "position" in one else {})
    subs = [n for n, one in enumerate(_list(room, "subwoofers")) if "position" in one]
    yield changed(
        _speakers(
            room, lambda n, one: {f"loudspeakers.{n}.position": _aside(one["position"])} if "position" in one else {}
        ),
        {f"subwoofers.{n}.position": _aside(room["subwoofers"][n]["position"]) for n in subs},
    )
    yield changed(
        room, {f"seats.{n}.ear": _aside(one["ear"]) for n, one in enumerate(_list(room, "seats")) if "ear" in one}
    )


def _list(room: Data, key: str) -> list[Data]:
    found = room.get(key)
    return found if isinstance(found, list) else []


def _aside(place: Data) -> Data:
    return {key: value for key, value in place.items() if key != "from_right"} | {"from_left": FAR}


def _fixtures_outside(room: Data) -> Iterator[Data]:
    if isinstance(room.get("picture"), dict) and "centre" in room["picture"]:
        yield changed(room, {"picture.centre": _aside(room["picture"]["centre"])})
    for n, _ in enumerate(_list(room, "treatments")):
        yield changed(room, {f"treatments.{n}.from_wall_left": FAR})
    for n, one in enumerate(_list(room.get("electronics", {}), "racks")):
        yield changed(room, {f"electronics.racks.{n}.position": _aside(one["position"])})


def _swapped(room: Data) -> Iterator[Data]:
    """Yield the room with every left and right exchanged; who has no partner gets one first."""
    speakers = [one for one in _list(room, "loudspeakers") if "label" in one and "from_left" in one.get("position", {})]
    labels = {one["label"] for one in speakers}
    partners = []
    for one in speakers:
        other = _flipped(one["label"])
        if other not in labels:
            mirrored = f"{5.0 - float(one['position']['from_left'].split()[0]):.4f} m"
            place = {**one["position"], "from_left": mirrored}
            partners.append({**one, "id": f"{one['id']}-too", "label": other, "position": place})
    if speakers:
        both = changed(room, {"loudspeakers": [*room["loudspeakers"], *partners]})
        yield _speakers(
            both, lambda n, one: {f"loudspeakers.{n}.label": _flipped(one["label"])} if "label" in one else {}
        )


def _flipped(label: str) -> str:
    return re.sub(r"[+-](?!000|180)", lambda sign: "-" if sign[0] == "+" else "+", label)


def _on_the_wrong_side(room: Data) -> Iterator[Data]:
    for n, one in enumerate(_list(room, "loudspeakers")):
        if re.search(r"[+-](?!000|180)", one.get("label", "")):
            yield changed(room, {f"loudspeakers.{n}.label": _flipped(one["label"])})
            place = one.get("position", {})
            if "from_left" in place:
                other = 5.0 - float(place["from_left"].split()[0])
                yield changed(room, {f"loudspeakers.{n}.position.from_left": f"{max(other, 0.0):.4f} m"})


def _moved(room: Data) -> Iterator[Data]:
    """Yield the room with one loudspeaker, or two, a good way off, to either side, to front and rear, up and down."""
    for key, by in (("from_front", 1.2), ("from_front", -1.2), ("from_left", 0.9), ("from_left", -0.9), ("height", 1.0),
                    ("height", -0.9), ("from_front", 2.2)):  # fmt: skip
        for n, one in enumerate(_list(room, "loudspeakers")):
            value = one.get("position", {}).get(key)
            if value is not None:
                there = float(value.split()[0]) + by
                yield changed(room, {f"loudspeakers.{n}.position.{key}": f"{max(there, 0.05):.4f} m"})


def _fixings(room: Any, way: str = "") -> Iterator[str]:
    for key, value in room.items() if isinstance(room, dict) else enumerate(room) if isinstance(room, list) else ():
        if key == "fixing":
            yield f"{way}{key}"
        yield from _fixings(value, f"{way}{key}.")


def _fixed(**parts: str) -> Callable[[Data], Iterator[Data]]:
    def change(room: Data) -> Iterator[Data]:
        for way in _fixings(room):
            yield changed(room, {f"{way}.{key}": value for key, value in parts.items()})

    return change


def _any_of(*changes: Callable[[Data], Iterator[Data]]) -> Callable[[Data], Iterator[Data]]:
    def change(room: Data) -> Iterator[Data]:
        for one in changes:
            yield from one(room)

    return change


def _of_another_kind(room: Data) -> Iterator[Data]:
    for kind in ("masonry", "concrete", "steel-stud", "wood-stud"):
        framing = {"kind": kind}
        walls = [{**one, "framing": framing} for one in _list(room.get("room", {}), "walls")]
        yield changed(room, {"room.walls": walls} if walls else {})
        if "ceiling" in room.get("room", {}):
            yield changed(room, {"room.ceiling.framing": framing})


def _without_second(room: Data) -> Iterator[Data]:
    for way in _fixings(room):
        yield changed(room, {f"{way.removesuffix('fixing')}secondary": "none"})


def _under_another_s_label(room: Data) -> Iterator[Data]:
    """Give one loudspeaker after the other a twin of its label."""
    speakers = room.get("loudspeakers", [])
    for one in speakers:
        if "label" in one:
            yield changed(room, {f"loudspeakers.{len(speakers)}": {"id": "twin", "label": one["label"]}})


BREAK: dict[str, Callable[[Data], Iterator[Data]]] = {
    "layout.inside-room": _outside,
    "layout.fixtures-inside": _fixtures_outside,
    "layout.one-label-each": _under_another_s_label,
    "layout.sides-swapped": _swapped,
    "layout.label-side": _on_the_wrong_side,
    "mount.substrate": _any_of(_fixed(into="board"), _fixed(into="tile"), _fixed(into="plaster")),
    "mount.fastener-kind": _any_of(
        _fixed(fastener="nail"), _fixed(fastener="drywall-screw"), _fixed(fastener="adhesive")
    ),
    "mount.fastener-base": _any_of(
        *(_fixed(fastener=kind) for kind in ("toggle", "expansion-anchor", "strap", "lag-screw"))
    ),
    "mount.wall-kind": _of_another_kind,
    "mount.secondary": _without_second,
}
"""How a room is made to have a cause: what is put wrong in it."""


SEVEN = room(
    speaker("left", "M+030", -1.5, 2.6), speaker("right", "M-030", 1.5, 2.6), speaker("wide", "M+060", -2.0, 1.15),
    speaker("side", "M+090", -2.2, 0.0), speaker("rear", "M+135", -2.2, -0.3), layout="4+7+0",
)  # fmt: skip
UPPER = room(
    speaker("front-up", "U+045", -1.8, -0.4, 1.3), speaker("rear-up", "U+135", -1.3, -1.3, 1.3), layout="4+7+0",
)  # fmt: skip
FIVE = room(
    speaker("left", "M+030", -1.5, 2.6), speaker("right", "M-030", 1.5, 2.6), speaker("surround", "M+110", -2.2, 1.6),
    layout="0+5+0",
)  # fmt: skip
AROUND = changed(
    room(
        speaker("centre", "M+000", 0.0, 2.9), speaker("left", "M+030", -1.5, 2.6), speaker("right", "M-030", 1.5, 2.6),
        speaker("one", "M+110", -2.2, -0.8), speaker("other", "M-110", 2.2, -0.8),
    ),
    {"seats.0.ear.from_left": "2.1 m"},
)  # fmt: skip
MIRRORED = room(
    speaker("left", "M+030", -1.5, 2.6), speaker("right", "M-030", 1.5, 2.6),
    speaker("side-left", "M+090", -2.2, 0.0), speaker("side-right", "M-090", 2.2, 0.0),
    speaker("rear-left", "M+135", -1.6, -1.6), speaker("rear-right", "M-135", 1.6, -1.6),
    speaker("up-left", "U+045", -0.9, 0.9, 1.2), speaker("up-right", "U-045", 0.9, 0.9, 1.2),
    speaker("up-rear-left", "U+135", -0.9, -0.9, 1.2), speaker("up-rear-right", "U-135", 0.9, -0.9, 1.2),
    layout="4+7+0", picture=PICTURE,
)  # fmt: skip
ASIDE = changed(MIRRORED, {"seats.0.ear.from_left": "2.1 m"})
SIDE_OUT = changed(MIRRORED, {"loudspeakers.2.position": at(-2.0, 1.15)})
REAR_OUT = changed(MIRRORED, {"loudspeakers.4.position": at(-2.2, -0.3)})
UPPER_OUT = changed(MIRRORED, {"loudspeakers.6.position": at(-0.3, 1.2, 1.2)})
UPPER_LOW = changed(MIRRORED, {"loudspeakers.6.position.height": "1.5 m"})
# Five surrounds of one's own layout, spread as one likes, and the seat beside the middle of all pairs.
FREE = changed(
    room(
        *(speaker(f"{name}-{label}", f"M{sign}{label}", side * right, front)
          for name, sign, side in (("left", "+", -1), ("right", "-", 1))
          for label, right, front in (("030", 1.5, 2.6), ("060", 2.0, 1.15), ("090", 2.2, 0.0), ("135", 1.6, -1.6))),
        layout="0+8+0",
    ),
    {"seats.0.ear.from_left": "2.1 m"},
)  # fmt: skip
SURROUND_OUT = room(
    speaker("left", "M+030", -1.5, 2.6), speaker("right", "M-030", 1.5, 2.6),
    speaker("one", "M+110", -2.2, 1.6), speaker("other", "M-110", 2.0, -0.73), layout="0+5+0",
)  # fmt: skip
HUNG = {"product": "box", "mounting": {"on": "left"}}
OFF_ITS_WALL = changed(MIRRORED, {"loudspeakers.2": speaker("side-left", "M+090", -1.2, 0.0, **HUNG)})
PAIRED = ("layout.pair-angle", "layout.pair-height", "layout.pair-distance", "layout.pair-surroundings")
OUT = {
    "angle.side-pair": SIDE_OUT, "angle.rear-pair": REAR_OUT, "angle.upper-azimuth": UPPER_OUT,
    "angle.surround-pair": SURROUND_OUT, "layout.on-surface": OFF_ITS_WALL, "layout.stage-middle": ASIDE,
}  # fmt: skip
LEANING = ("angle.side-pair", "angle.rear-pair", "angle.upper-azimuth", "angle.picture-edge", "angle.upper-gap")
EXTRA = {
    **{(follower, cause): data for follower in PAIRED for cause, data in OUT.items()},
    **{(follower, "layout.stage-middle"): ASIDE for follower in LEANING},
    ("angle.even-spacing", "layout.stage-middle"): FREE,
    ("layout.pair-height", "angle.upper-elevation"): UPPER_LOW,
    ("angle.centre-azimuth", "layout.stage-middle"): AROUND,
    ("angle.front-pair", "layout.stage-middle"): AROUND,
    ("angle.even-spacing", "angle.rear-pair"): SEVEN,
    ("angle.neighbour-gap", "angle.upper-azimuth"): UPPER,
    ("angle.neighbour-gap", "angle.surround-pair"): FIVE,
}
"""Rooms for causes of which no case has all that the follower looks at."""


def rooms(rule: AnyRule, cause: str) -> Iterator[tuple[Data, Case]]:
    """Yield the rooms that may show a rule waiting: its cases and the cause's, and with the cause put in."""
    own = [case for case in CASES if case.rule == rule.id and case.kind in {"open", "fail", "pass", "review"}]
    others = [case for case in CASES if case.rule == cause and case.kind == "fail"]
    for case in sorted(own, key=lambda case: cause not in case.says):
        if cause in case.says:
            yield dict(case.room), case
    if (rule.id, cause) in EXTRA:
        yield EXTRA[rule.id, cause], replace(own[0], products=[BOX])
    change = BREAK.get(cause, _moved)
    for case in [one for one in own if one.kind != "open"][:MOST_ROOMS]:
        yield from ((data, case) for data in change(dict(case.room)))
    for case in others:
        yield dict(case.room), case


@pytest.mark.parametrize(("follower", "cause"), PAIRS)
def test_only_the_cause_is_told(follower: str, cause: str) -> None:
    """In some room the cause fails, and on the same element the follower waits for it, or does not apply."""
    rule = BY_ID[follower]
    running = [*_causes(rule, BOOK.rules), rule]
    quiet = 0
    for data, case in rooms(rule, cause):
        try:
            read = room_of(data, case.products, case.house, case.today)
        except ValueError:
            continue
        verdicts = review_room(read, running).verdicts
        if any(v.rule == follower and v.follows is not None and v.follows.rule == cause for v in verdicts):
            return
        failing = [v for v in verdicts if v.rule == cause and v.kind is Kind.FAIL]
        failed = {part for v in failing for part in v.subject.split("+")}
        on_it = [v for v in verdicts if v.rule == follower and failed & set(v.subject.split("+"))]
        quiet += bool(on_it) and all(v.kind in {Kind.OPEN, Kind.NOT_APPLICABLE} for v in on_it)
    assert quiet, f"{follower} is judged although {cause} fails"
