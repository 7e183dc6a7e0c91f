"""Cases of walkways and of what reaches into them."""

from __future__ import annotations

from typing import Any

from roomlint.edges import Edge
from roomlint.sample import room, speaker
from roomlint.testing import Case, changed

WAY = {"id": "aisle", "from_left": "4.0 m", "from_front": "1.0 m", "width": "1.0 m", "depth": "4.0 m"}
BOX: dict[str, Any] = {"kind": "loudspeaker", "width": "0.2 m", "height": "0.3 m", "depth": "0.2 m"}
ROOM = changed(
    room(speaker("side", "M-090", 1.3, 0.0, product=BOX, aim={"azimuth": "90 deg", "elevation": "0 deg"},
                 mounting={"on": "right"})),
    {"room.walkways": [WAY]},
)  # fmt: skip
"""A loudspeaker 3.8 m from the left, its back toward a way that begins at 4.0 m."""
BARE = changed(ROOM, {"loudspeakers": "none", "seats": "none"})
SEATED = changed(
    ROOM,
    {"loudspeakers": "none", "seats": [{"id": "seat", "reference": True, "facing": "-90 deg", "width": "0.6 m", "depth": "0.9 m",
               "open_length": "1.5 m", "ear": {"from_left": "2.5 m", "from_front": "3.5 m", "height": "1.2 m"}}]},
)  # fmt: skip
"""A seat that faces the way, and opens to 1.25 m before its ear."""
NONE = room()
OPEN = changed(ROOM, {"room.walkways": None})
WIDE, LEFT = "room.walkways.0.width", "loudspeakers.0.position.from_left"
SIDE, SEAT = "loudspeaker/side+walkway/aisle", "seat/seat+walkway/aisle"
POST = [{"id": "post", "kind": "post", "from_left": "4.4 m", "from_front": "2 m", "width": "0.2 m", "depth": "0.2 m"}]

PANEL = {"id": "panel", "kind": "absorber", "on": "right", "from_wall_left": "1.5 m", "width": "1.0 m", "bottom": "1.0 m",
         "height": "0.6 m", "thickness": "0.08 m"}  # fmt: skip


def on(rule: str, kind: str, changes: dict[str, Any] | None = None, **more: Any) -> Case:
    """Return a case of the room with a way along its right wall."""
    return Case(f"access.{rule}", kind, changed(more.pop("base", ROOM), changes or {}), **more)


CASES = [
    on("walkway-width", "pass", figure=1.0, source="as it is measured"),
    on("walkway-width", "fail", {WIDE: "0.8 m"}, level="warning", figure=0.8, source="as it is measured"),
    on("walkway-width", "fail", {WIDE: "0.92 m ± 1 cm"}),
    # A strip has no direction but its longer side: one of 0.6 m is no pinch of 0.815 m, and asks for its whole width.
    on("walkway-width", "fail", {WIDE: "0.6 m", "room.walkways.0.depth": "0.6 m"}, figure=0.6, source="as it is measured", says="at least 0.915 m"),
    on("walkway-width", "open", {WIDE: None}, says="width"),
    on("walkway-width", "open", base=OPEN, says="walkways"),
    on("walkway-width", "notApplicable", base=NONE),

    # 4.0 m less 3.8 m and a depth of 0.2 m: its back touches the way, and 0.1 m of reaching in is allowed.
    on("walkway-clear", "pass", subject=SIDE, figure=0.0, source="3.8 m and 0.2 m of depth", within=1e-6),
    on("walkway-clear", "pass", {LEFT: "3.88 m"}, subject=SIDE, figure=-0.08, source="0.08 m in", within=1e-6),
    on("walkway-clear", "fail", {LEFT: "3.95 m"}, subject=SIDE, level="warning", figure=-0.15, source="0.15 m in", within=1e-6, says="0.15 m into"),
    # Low down it is met with the shin, on a stand with anything.
    on("walkway-clear", "fail", {LEFT: "3.88 m", "loudspeakers.0.position.height": "0.5 m"}, subject=SIDE),
    on("walkway-clear", "fail", {LEFT: "3.88 m", "loudspeakers.0.mounting.on": "stand"}, subject=SIDE),
    # Above heads it is out of the way.
    on("walkway-clear", "pass", {LEFT: "4.3 m", "loudspeakers.0.position.height": "2.3 m"}, subject=SIDE),
    on("walkway-clear", "open", {"loudspeakers.0.position": None}, subject=SIDE, says="position"),
    # 4.0 m less 2.5 m less 1.25 m: the footrest ends a quarter of a metre from the way.
    on("walkway-clear", "pass", base=SEATED, subject=SEAT, figure=0.25, source="4.0 - 2.5 - (1.5 - 0.25) m", within=1e-6),
    on("walkway-clear", "fail", {"seats.0.open_length": "1.9 m"}, base=SEATED, subject=SEAT, figure=-0.15, source="4.0 - 2.5 - (1.9 - 0.25) m", within=1e-6),
    on("walkway-clear", "fail", {"seats.0.open_length": "1.72 m"}, base=SEATED, subject=SEAT),
    on("walkway-clear", "open", {"seats.0.width": None}, base=SEATED, subject=SEAT, says="width"),
    on("walkway-clear", "fail", {"room.obstacles": POST}, base=BARE, subject="obstacle/post+walkway/aisle"),
    # A panel on the wall along the way: as deep as a hand it may be where it begins above a cane.
    on("walkway-clear", "pass", {"treatments": [PANEL]}, base=BARE, subject="treatment/panel+walkway/aisle", figure=-0.08, source="as thick as it is", within=1e-6),
    on("walkway-clear", "fail", {"treatments": [{**PANEL, "thickness": "0.3 m"}]}, base=BARE, subject="treatment/panel+walkway/aisle", figure=-0.3, source="as thick as it is", within=1e-6),
    on("walkway-clear", "fail", {"treatments": [{**PANEL, "bottom": "0.3 m"}]}, base=BARE, subject="treatment/panel+walkway/aisle", figure=-0.08, source="as thick as it is", within=1e-6),
    on("walkway-clear", "open", {"treatments": [PANEL], "treatments.0.thickness": None}, base=BARE, says="thickness"),
    on("walkway-clear", "open", {"room.walkways.0.from_left": None}, subject=SIDE, says="from_left"),
    on("walkway-clear", "open", base=OPEN, says="walkways"),
    on("walkway-clear", "notApplicable", base=NONE),
]  # fmt: skip
EDGES = [
    Edge("access.walkway-width", ROOM, WIDE, 0.5, 1.2, 1),
    Edge("access.walkway-clear", ROOM, LEFT, 3.7, 4.0, 1, subject=SIDE),
]
