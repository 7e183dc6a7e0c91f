"""Cases of chapter layout. Positions are offsets from the reference ear: to the right, to the front, up, in m."""

from __future__ import annotations

from typing import Any

from roomlint.testing import Case, Never, changed

HAND = "by hand"


def at(right: float, front: float, up: float = 0.0) -> dict[str, str]:
    return {"from_left": f"{2.5 + right:.4f} m", "from_front": f"{3.5 - front:.4f} m", "height": f"{1.2 + up:.4f} m"}


def speaker(name: str, label: str | None, *place: float, **more: Any) -> dict[str, Any]:
    data = {"id": name, "label": label, "position": at(*place), **more}
    return {key: value for key, value in data.items() if value is not None}


def room(*speakers: dict[str, Any], **more: Any) -> dict[str, Any]:
    return {
        "roomlint": 1,
        "project": {"code": "case"},
        "room": {"size": {"width": "5 m", "length": "6 m"}, "ceiling": {"shape": "flat", "height": "2.6 m"}},
        "seats": [{"id": "seat", "ear": at(0, 0), "reference": True}],
        "loudspeakers": list(speakers),
        **more,
    }


def nowhere(data: dict[str, Any], index: int = 0) -> dict[str, Any]:
    return changed(data, {f"loudspeakers.{index}.position": None})


L, R = speaker("left", "M+030", -1.5, 2.6), speaker("right", "M-030", 1.5, 2.6)
C = speaker("centre", "M+000", 0.0, 2.8)
LS, RS = speaker("ls", "M+110", -2.0, -0.73), speaker("rs", "M-110", 2.0, -0.73)
SUB = {"id": "sub", "position": at(-2.0, 3.0, -1.0)}
FIVE = room(L, R, C, LS, RS, layout="0+5+0", subwoofers=[SUB])
PAIR = room(L, R)
BARE = changed(room(), {"seats.0": None})
EMPTY = room()
BOX = {
    "roomlint_product": 1,
    "id": "box",
    "kind": "loudspeaker",
    "width": "0.2 m",
    "height": "0.3 m",
    "depth": "0.25 m",
}
# On the left wall, 0.15 m off it; the ear's from_front is 3.5 m.
HUNG = room(speaker("side", "M+090", -2.35, 0.0, mounting={"on": "left"}, product="box"))
# The left wall seen from inside starts at the rear: its left-hand end is 6.0 m from the front.
WINDOW = {
    "id": "window",
    "kind": "window",
    "wall": "left",
    "from_wall_left": "2.0 m",
    "width": "1.0 m",
    "sill": "0.9 m",
    "height": "1.2 m",
}
GLAZED = changed(HUNG, {"room.openings": [WINDOW]})
DOOR = {
    "id": "door",
    "kind": "door",
    "wall": "rear",
    "from_wall_left": "1.0 m",
    "width": "0.8 m",
    "height": "2.0 m",
    "hinge": "left",
    "swing": "in",
}
# The rear wall seen from inside has its left-hand end at the right: the hinge is 4.0 m from the left wall.
ENTERED = changed(room(speaker("rear", "M+135", 1.0, -1.9)), {"room.openings": [DOOR], "seats": []})
POST = {
    "id": "post",
    "kind": "post",
    "from_left": "2.4 m",
    "from_front": "1.5 m",
    "width": "0.2 m",
    "depth": "0.2 m",
    "bottom": "0 m",
    "top": "2.6 m",
}
# A loudspeaker 1.0 m high 3.5 m ahead, a rear ear 1.3 m high 0.8 m back, a front head up to 1.30 m at 0.5 m ahead.
ROWS = changed(
    room(speaker("front", "M+000", 0.0, 3.4, -0.2)),
    {
        "seats.0.ear": at(0.0, 0.4, -0.1),
        "seats.0.row": 1,
        "seats.0.head_top": "1.30 m",
        "seats.1": {"id": "rear", "ear": at(0.0, -0.9, 0.1), "row": 2},
    },
)
AMPLIFIER = {
    "roomlint_product": 1,
    "id": "two",
    "kind": "amplifier",
    "amplifier": {"channels": 2},
}


def fed_by(*feeds: tuple[int, str]) -> dict[str, Any]:
    outputs = [{"output": number, "loudspeakers": [name]} for number, name in feeds]
    return {"amplifiers": [{"id": "amp", "product": "two", "feeds": outputs}]}


def departed(place: tuple[float, ...], meets: str) -> dict[str, Any]:
    departure = {"because": "glass where it belongs", "meets": meets}
    return room(speaker("ls", "M+110", *place, departure=departure), layout="0+5+0")


CASES: list[Case | Never] = [
    Case("layout.channel-set", "pass", FIVE),
    Case("layout.channel-set", "fail", changed(FIVE, {"loudspeakers.4": None}), says="M-110"),
    Case("layout.channel-set", "fail", changed(FIVE, {"layout": "0+7+0"}), says="M+090, M-090, M+135, M-135"),
    Case(
        "layout.channel-set",
        "pass",
        changed(FIVE, {"loudspeakers.4": None, "electronics": {"processor": {"id": "brain", "unfitted": ["M-110"]}}}),
        says="on purpose",
    ),
    Case("layout.channel-set", "open", changed(FIVE, {"layout": None})),
    Case("layout.channel-set", "notApplicable", EMPTY),
    Case("layout.one-label-each", "pass", FIVE),
    Case("layout.one-label-each", "fail", room(L, speaker("other", "M+030", -1.0, 2.0)), says="M+030"),
    Case("layout.one-label-each", "open", room(speaker("left", None, -1.5, 2.6))),
    Case("layout.one-label-each", "notApplicable", EMPTY),
    Case("layout.label-side", "pass", PAIR),
    Case(
        "layout.label-side",
        "fail",
        room(speaker("side", "M+090", 2.0, 0.0)),
        level="error",
        figure=-90.0,
        source="straight to the right is azimuth -90 in ITU-R BS.2076",
    ),
    Case("layout.label-side", "open", room(speaker("left", None, -1.5, 2.6))),
    Case("layout.label-side", "notApplicable", room(C)),
    Case("layout.inside-room", "pass", HUNG, [BOX], subject="loudspeaker/side", figure=0.15, source=HAND),
    Case("layout.inside-room", "fail", room(speaker("top", "U+030", -1.0, 1.0, 1.5)), subject="loudspeaker/top"),
    Case(
        "layout.inside-room", "fail", room(speaker("left", "M+030", -1.0, 3.7)), figure=-0.2, subject="loudspeaker/left"
    ),
    Case("layout.inside-room", "open", nowhere(PAIR), subject="loudspeaker/left"),
    Case("layout.inside-room", "notApplicable", BARE),
    Case("layout.on-surface", "pass", HUNG, [BOX], figure=0.15, source=HAND),
    Case(
        "layout.on-surface",
        "fail",
        changed(HUNG, {"loudspeakers.0.position": at(-1.5, 0.0)}),
        [BOX],
        figure=1.0,
        level="warning",
    ),
    Case("layout.on-surface", "fail", changed(HUNG, {"loudspeakers.0.mounting.on": "ceiling"}), [BOX], figure=1.4),
    Case("layout.on-surface", "open", changed(HUNG, {"loudspeakers.0.product": None})),
    Case("layout.on-surface", "notApplicable", PAIR),
    # The window runs from 2.0 to 3.0 m from the rear, the loudspeaker's middle stands at 2.5 m.
    Case(
        "layout.clear-of-openings",
        "fail",
        GLAZED,
        [BOX],
        level="error",
        figure=-0.45,
        source="1.2 m lies 0.30 m above the sill of 0.9; half a cabinet is 0.15 more",
    ),
    Case("layout.clear-of-openings", "pass", changed(GLAZED, {"room.openings.0.from_wall_left": "3.5 m"}), [BOX]),
    Case(
        "layout.clear-of-openings",
        "fail",
        changed(GLAZED, {"room.openings.0.from_wall_left": "2.65 m"}),
        [BOX],
        level="note",
        figure=0.05,
    ),
    Case("layout.clear-of-openings", "open", changed(GLAZED, {"room.openings.0.width": None}), [BOX]),
    Case("layout.clear-of-openings", "notApplicable", HUNG, [BOX]),
    # 3.5 m from the left, 0.6 m from the rear: sqrt(0.5^2 + 0.6^2) = 0.781 m from the hinge, in a leaf of 0.8 m.
    Case("layout.door-swing", "fail", ENTERED, level="error", figure=-0.01898, source="0.78102 less 0.8 m by hand"),
    # 1.0 m ahead of the hinge: 0.2 m beyond the leaf's edge.
    Case(
        "layout.door-swing",
        "pass",
        changed(ENTERED, {"loudspeakers.0.position": at(1.5, -1.5)}),
        figure=0.2,
        source=HAND,
    ),
    Case("layout.door-swing", "pass", changed(ENTERED, {"loudspeakers.0.position": at(1.0, -1.9, 1.2)}), says="above"),
    Case("layout.door-swing", "open", changed(ENTERED, {"room.openings.0.swing": None})),
    Case("layout.door-swing", "notApplicable", changed(ENTERED, {"room.openings.0.swing": "out"})),
    Case("layout.line-of-sight", "pass", FIVE),
    Case("layout.line-of-sight", "fail", changed(room(C), {"room.obstacles": [POST]}), says="post"),
    Case("layout.line-of-sight", "pass", changed(room(L), {"room.obstacles": [POST]})),
    Case("layout.line-of-sight", "open", nowhere(room(C))),
    Case("layout.line-of-sight", "notApplicable", EMPTY),
    # Similar triangles: 1.0 + 0.3 x 3.0 / 4.3 = 1.209 m, 0.091 m below the top of the head.
    Case(
        "layout.over-heads",
        "fail",
        ROWS,
        subject="loudspeaker/front+seat/rear",
        figure=-0.0907,
        source="similar triangles by hand",
    ),
    Case(
        "layout.over-heads",
        "pass",
        changed(ROWS, {"loudspeakers.0.position.height": "2.0 m"}),
        subject="loudspeaker/front+seat/rear",
    ),
    Case(
        "layout.over-heads",
        "open",
        changed(ROWS, {"seats.0.head_top": None}),
        subject="loudspeaker/front+seat/rear",
    ),
    Case("layout.over-heads", "notApplicable", EMPTY),
    Case("layout.pair-angle", "pass", PAIR, figure=0.0, source="mirrored positions"),
    # 29.98 against atan(1.2 / 2.8) = 23.20 deg.
    Case(
        "layout.pair-angle",
        "fail",
        room(L, speaker("right", "M-030", 1.2, 2.8)),
        figure=6.783,
        source="right triangles by hand, tangent table",
    ),
    Case("layout.pair-angle", "open", nowhere(PAIR)),
    Case("layout.pair-angle", "notApplicable", room(L)),
    Case("layout.pair-height", "pass", PAIR),
    # Both 3.0 m away in plan by 3-4-5; one 0.4 m up: atan(0.4 / 3.0) = 7.59 deg.
    Case(
        "layout.pair-height",
        "fail",
        room(speaker("left", "M+030", -1.8, 2.4, 0.4), speaker("right", "M-030", 1.8, 2.4)),
        figure=7.595,
        source="right triangle by hand, tangent table",
    ),
    Case("layout.pair-height", "open", nowhere(PAIR)),
    Case("layout.pair-height", "notApplicable", room(L)),
    Case("layout.pair-distance", "pass", PAIR),
    Case(
        "layout.pair-distance",
        "fail",
        room(speaker("left", "M+030", -1.86, 2.48), speaker("right", "M-030", 1.62, 2.16)),
        figure=1.1481,
        source="3-4-5 triangles: 3.10 over 2.70 m",
    ),
    Case("layout.pair-distance", "open", nowhere(PAIR)),
    Case("layout.pair-distance", "notApplicable", room(L)),
    Case("layout.pair-surroundings", "pass", PAIR),
    # 0.9 m from the front wall on both sides; the right one 0.5 m from the right wall: 0.4 m apart.
    Case(
        "layout.pair-surroundings",
        "fail",
        room(L, speaker("right", "M-030", 2.0, 2.6)),
        figure=0.4,
        source="0.9 less 0.5 m by hand",
    ),
    Case("layout.pair-surroundings", "open", nowhere(PAIR)),
    Case("layout.pair-surroundings", "notApplicable", room(L)),
    # 180 - atan(1.6 / 1.4) = 131.2 deg: inside the home range, outside the standard's.
    Case("layout.departure", "pass", departed((-1.6, -1.4), "home-tolerance")),
    Case(
        "layout.departure", "fail", departed((-1.6, -1.4), "common-practice"), says="in azimuth it meets home-tolerance"
    ),
    Case("layout.departure", "fail", departed((-2.0, 1.0), "home-tolerance"), says="no window"),
    # atan(1.3 / hypot(1.6, 1.4)) = 31.4 deg up: the azimuth alone meets the home range, and the finding says so.
    Case(
        "layout.departure",
        "pass",
        departed((-1.6, -1.4, 1.3), "home-tolerance"),
        says="its elevation of 31.4 deg",
    ),
    Case("layout.departure", "informational", departed((-2.0, -0.73), "none")),
    Case("layout.departure", "open", nowhere(departed((-1.6, -1.4), "home-tolerance"))),
    Case("layout.departure", "notApplicable", PAIR),
    Case("layout.fed", "pass", changed(PAIR, {"electronics": fed_by((1, "left"), (2, "right"))}), [AMPLIFIER]),
    Case(
        "layout.fed",
        "fail",
        changed(PAIR, {"electronics": fed_by((1, "left"))}),
        [AMPLIFIER],
        subject="loudspeaker/right",
    ),
    Case(
        "layout.fed",
        "fail",
        changed(room(L), {"electronics": fed_by((1, "left"), (2, "left"))}),
        [AMPLIFIER],
        says="more than one",
    ),
    Case("layout.fed", "open", PAIR),
    Case("layout.fed", "notApplicable", EMPTY),
    Case("layout.amplifier-outputs", "pass", changed(PAIR, {"electronics": fed_by((1, "left"))}), [AMPLIFIER]),
    Case(
        "layout.amplifier-outputs", "fail", changed(PAIR, {"electronics": fed_by((3, "left"))}), [AMPLIFIER], says="3"
    ),
    Case(
        "layout.amplifier-outputs",
        "open",
        changed(PAIR, {"electronics": fed_by((1, "left"))}),
        [{**AMPLIFIER, "amplifier": {"technology": "class-d"}}],
    ),
    Case("layout.amplifier-outputs", "notApplicable", PAIR),
    Case("layout.mode-channels", "pass", changed(FIVE, {"listening_modes": [{"id": "all", "layout": "0+5+0"}]})),
    Case(
        "layout.mode-channels",
        "fail",
        changed(FIVE, {"listening_modes": [{"id": "all", "channels": ["M+030", "U+045"]}]}),
        says="U+045",
    ),
    Case("layout.mode-channels", "open", changed(FIVE, {"listening_modes": [{"id": "all", "title": "All"}]})),
    Case("layout.mode-channels", "notApplicable", FIVE),
]
