"""Cases of boxes behind panels and in cabinets, of British walls, and of racks of metal."""

from __future__ import annotations

from typing import Any

from mains_rooms import BRITISH, CODE, NONE_AT_ALL, OUTLET, ROOM, SEVEN, UNSAID, C, on

from roomlint.edges import Edge
from roomlint.testing import Case, Never, changed

PANEL = {
    "id": "panel", "kind": "absorber", "on": "rear", "from_wall_left": "1.0 m", "width": "0.6 m", "bottom": "0.2 m",
    "height": "1.2 m", "removable": False,
}  # fmt: skip
BESIDE = changed(
    ROOM,
    {"survey.tolerance": "0 mm", f"{OUTLET}.wall": "rear", f"{OUTLET}.from_wall_left": "0.8 m",
     "room.walls": [{"id": "rear", "finish": "gypsum-on-studs", "board": {"material": "gypsum"}}], "treatments": [PANEL]},
)  # fmt: skip
"""A receptacle 0.4 m up, 0.2 m beside a panel of its wall."""
ALONG, COVERED, ACCESS, FLUSH = f"{OUTLET}.from_wall_left", "mains.box-covered", "mains.box-access", "mains.box-flush"
BEHIND = {ALONG: "1.3 m"}
CEILED = changed(
    BESIDE,
    {f"{OUTLET}.wall": "ceiling", ALONG: None, "treatments.0.on": "ceiling", "treatments.0.from_wall_left": None,
     "treatments.0.bottom": None},
)  # fmt: skip
BACK, STAGE = f"{OUTLET}.set_back", "project.stage"
SET = changed(BESIDE, {BACK: "3 mm", STAGE: "rough-in"})
ZONE, BONDED = "mains.wall-zone", "mains.rack-bonded"
RUN: dict[str, Any] = {
    "id": "feed", "carries": "mains", "from": "c1", "in_wall": True, "depth": "30 mm", "zone": "to-accessory",
    "protection": "none",
}  # fmt: skip
WALL = changed(BRITISH, {"cables": [RUN]})
"""Power 30 mm deep, straight to its accessory, behind a device of 30 mA."""
METAL = {"id": "rear", "framing": {"kind": "steel-stud", "member_depth": "146 mm"}}
STUDS = {
    "id": "rear",
    "framing": {"kind": "wood-stud", "member_depth": "63 mm"},
    "board": {"thickness": "12.5 mm", "layers": 1},
}


def deep(wall: dict[str, Any], depth: str = "60 mm", **more: Any) -> dict[str, Any]:
    """Return changes that put the power deep into a wall, outside its zones."""
    return {"cables.0.depth": depth, "cables.0.zone": "none", "cables.0.wall": "rear", "room.walls": [wall], **more}


RACKED = changed(ROOM, {"electronics.racks": [{"id": "rack", "metal": True, "bonded": True}]})

CASES: list[Case | Never] = [
    on(COVERED, "pass", room=BESIDE, figure=0.2, source="1.0 m less 0.8 m", within=1e-6),
    on(COVERED, "fail", BEHIND, room=BESIDE, level="warning", figure=-0.2, source="0.4 m less 0.2 m to its lower edge", within=1e-6, says="0.20 m behind"),
    on(COVERED, "fail", {ALONG: "0.99 m ± 2 cm"}, room=BESIDE),
    on(COVERED, "pass", {f"{OUTLET}.height": "0.1 m", ALONG: "1.3 m"}, room=BESIDE, figure=0.1, source="0.2 m less 0.1 m", within=1e-6),
    on(COVERED, "notApplicable", {**BEHIND, "treatments.0.removable": True}, room=BESIDE, says="comes off"),
    on(COVERED, "open", {**BEHIND, "treatments.0.removable": None}, room=BESIDE, says="removable"),
    on(COVERED, "pass", {"treatments.0.removable": None}, room=BESIDE),
    on(COVERED, "open", {"treatments.0.width": None}, room=BESIDE, says="width"),
    on(COVERED, "open", {f"{OUTLET}.wall": None, ALONG: None}, room=BESIDE, says="wall"),
    on(COVERED, "open", {ALONG: None}, room=BESIDE, says="from_wall_left"),
    on(COVERED, "open", {"treatments": None}, room=BESIDE, says="treatments"),
    on(COVERED, "open", room=UNSAID, says="circuits"),
    on(COVERED, "notApplicable", {f"{OUTLET}.wall": "left"}, room=BESIDE),
    # A projector's receptacle in the ceiling, and a panel that is glued there: nothing tells which covers which.
    on(COVERED, "open", room=CEILED, says="reachable"),
    on(COVERED, "notApplicable", {f"{OUTLET}.reachable": True}, room=CEILED, says="judged by that"),
    on(COVERED, "notApplicable", {"treatments.0.removable": True}, room=CEILED, says="comes off"),
    on(ACCESS, "fail", {f"{OUTLET}.reachable": False}, room=CEILED),
    on(COVERED, "notApplicable", {"treatments.0.kind": "curtain"}, room=BESIDE),
    on(COVERED, "notApplicable", {"treatments": "none"}, room=BESIDE),

    on(ACCESS, "pass", {f"{OUTLET}.in_cabinet": True, f"{OUTLET}.reachable": True}),
    on(ACCESS, "fail", {f"{OUTLET}.in_cabinet": True, f"{OUTLET}.reachable": False}, level="warning"),
    on(ACCESS, "fail", {f"{OUTLET}.reachable": False}),
    on(ACCESS, "open", {f"{OUTLET}.in_cabinet": True}, says="reachable"),
    on(ACCESS, "open", says="in_cabinet"),
    on(ACCESS, "open", room=UNSAID, says="circuits"),
    on(ACCESS, "notApplicable", {f"{OUTLET}.in_cabinet": False}),
    on(ACCESS, "notApplicable", room=NONE_AT_ALL),

    on(FLUSH, "pass", {f"{OUTLET}.wall": "floor", ALONG: None, "room.floor": {"board": {"material": "osb"}}, BACK: "0 mm"}, room=SET, figure=0.0, source="flush with the boards", within=1e-9),
    on(FLUSH, "pass", room=SET, figure=3.0, source="as it is measured"),
    on(FLUSH, "fail", {BACK: "10 mm"}, room=SET, level="warning", figure=10.0, source="as it is measured", says="at most 6"),
    on(FLUSH, "fail", {"room.walls.0.board.material": "plywood"}, room=SET, figure=3.0, source="as it is measured", says="at most 0"),
    on(FLUSH, "pass", {"room.walls.0.board.material": "plywood", BACK: "0 mm"}, room=SET, figure=0.0, source="flush", within=1e-9),
    # A finish of wood over gypsum burns as a board does; one that nobody names may.
    on(FLUSH, "fail", {"room.walls.0.finish": "wood-lining"}, room=SET, figure=3.0, source="as it is measured", says="at most 0"),
    on(FLUSH, "open", {"room.walls.0.finish": None}, room=SET, says="finish"),
    on(FLUSH, "pass", {"room.walls.0.finish": None, BACK: "0 mm"}, room=SET),
    on(FLUSH, "open", {BACK: None}, room=SET, says="set_back"),
    on(FLUSH, "open", {BACK: None, STAGE: None}, room=SET, says="stage"),
    on(FLUSH, "open", {"room.walls.0.board": None}, room=SET, says="board.material"),
    on(FLUSH, "open", {"room.walls": None}, room=SET, says="walls[rear]"),
    on(FLUSH, "open", {CODE: None}, room=SET, says="electrical"),
    on(FLUSH, "open", room=UNSAID, says="circuits"),
    on(FLUSH, "notApplicable", {BACK: None, STAGE: "design"}, room=SET),
    on(FLUSH, "notApplicable", {CODE: "iec60364", f"{OUTLET}.form": None}, room=SET),

    on(ZONE, "pass", room=WALL),
    on(ZONE, "fail", {"cables.0.zone": "none"}, room=WALL, level="error", says="outside the zones"),
    on(ZONE, "fail", {f"{C}.rcd": "none"}, room=WALL, says="30 mA"),
    on(ZONE, "fail", {f"{C}.rcd": "100 mA"}, room=WALL),
    on(ZONE, "pass", deep({"id": "rear", "framing": {"kind": "masonry"}}), room=WALL),
    on(ZONE, "open", {"cables.0.depth": "60 mm", "cables.0.zone": "none"}, room=WALL, says="wall"),
    on(ZONE, "open", {"cables.0.depth": "60 mm", "cables.0.wall": "rear"}, room=WALL, says="walls"),
    on(ZONE, "open", deep({"id": "rear"}), room=WALL, says="framing.kind"),
    on(ZONE, "review", deep({"id": "rear", "framing": {"kind": "unknown"}}), room=WALL, says="made of"),
    # A partition of 63 mm studs and two boards is 88 mm thick: 60 mm from one face are 28 mm from the other.
    on(ZONE, "fail", deep(STUDS), room=WALL, level="error", says="28 mm deep"),
    on(ZONE, "pass", deep(STUDS, **{"cables.0.zone": "to-accessory"}), room=WALL),
    on(ZONE, "pass", deep(changed(STUDS, {"framing.member_depth": "120 mm"})), room=WALL),
    on(ZONE, "open", deep(changed(STUDS, {"framing.member_depth": None})), room=WALL, says="member_depth"),
    on(ZONE, "fail", deep(STUDS, "120 mm"), room=WALL, says="88 mm thick; correct one"),
    # In a partition of metal framing the device is wanted whatever the depth (522.6.203).
    on(ZONE, "review", deep(METAL, **{f"{C}.rcd": "none"}), room=WALL, says="metal framing"),
    on(ZONE, "open", deep(METAL, **{f"{C}.rcd": None}), room=WALL, says="rcd"),
    on(ZONE, "pass", deep(METAL), room=WALL),
    # As deep as the limit but not for sure.
    on(ZONE, "fail", {"cables.0.depth": "52 mm ± 5 mm", "cables.0.zone": "none"}, room=WALL),
    on(ZONE, "pass", {"cables.0.protection": "earthed-conduit", "cables.0.zone": "none", f"{C}.rcd": "none"}, room=WALL),
    on(ZONE, "open", {"cables.0.depth": None}, room=WALL, says="depth"),
    on(ZONE, "open", {"cables.0.zone": None}, room=WALL, says="zone"),
    on(ZONE, "open", {"cables.0.protection": None}, room=WALL, says="protection"),
    on(ZONE, "open", {"cables.0.in_wall": None}, room=WALL, says="in_wall"),
    on(ZONE, "open", {f"{C}.rcd": None}, room=WALL, says="rcd"),
    on(ZONE, "open", {"cables.0.from": None}, room=WALL, says="from"),
    # From board to board: which device guards it nobody can tell, and asking again for its ends would not help.
    on(ZONE, "open", {"cables.0.from": "service"}, room=WALL, says="to of feed"),
    on(ZONE, "review", {"cables.0.from": "service", "cables.0.to": "subpanel"}, room=WALL, says="neither of its ends"),
    on(ZONE, "open", {"cables": None}, room=WALL, says="cables"),
    on(ZONE, "notApplicable", {"cables.0.carries": "loudspeaker"}, room=WALL),
    on(ZONE, "notApplicable", {"cables.0.in_wall": False}, room=WALL),
    on(ZONE, "notApplicable", {"cables": [RUN]}),

    on(BONDED, "pass", room=RACKED),
    on(BONDED, "fail", {"electronics.racks.0.bonded": False}, room=RACKED, level="warning"),
    on(BONDED, "open", {"electronics.racks.0.bonded": None}, room=RACKED, says="bonded"),
    on(BONDED, "open", {"electronics.racks.0.bonded": False, "electronics.racks.0.metal": None}, room=RACKED, says="metal"),
    on(BONDED, "open", {"electronics.racks": None}, room=RACKED, says="racks"),
    on(BONDED, "notApplicable", {"electronics.racks.0.bonded": False, "electronics.racks.0.metal": False}, room=RACKED),
    on(BONDED, "notApplicable", {"electronics.racks": "none"}, room=RACKED),
]  # fmt: skip
EDGES = [
    Edge(COVERED, BESIDE, ALONG, 0.5, 1.1, 1, products=[SEVEN]),
    Edge(FLUSH, SET, BACK, 0.5, 20.0, 1, unit="mm", scale=0.001, products=[SEVEN]),
]
