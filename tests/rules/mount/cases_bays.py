"""Cases of loudspeakers in walls."""

from __future__ import annotations

from typing import Any

from roomlint.edges import Edge
from roomlint.sample import room, speaker
from roomlint.testing import Case, changed

SHEET: dict[str, Any] = {
    "roomlint_product": 1, "id": "flush", "kind": "loudspeaker",
    "loudspeaker": {"placement": ["in-wall"], "cutout_width": "230 mm", "mounting_depth": "95 mm"},
}  # fmt: skip
STUD = {"kind": "wood-stud", "spacing": "406.4 mm", "member_width": "38.1 mm", "member_depth": "88.9 mm"}
BOARD = {"material": "gypsum", "layers": 1, "thickness": "12.7 mm"}
FLUSH = changed(
    room(speaker("left", "M+030", -1.5, 2.6, product="flush", mounting={"on": "front"})),
    {"room.walls": [{"id": "front", "framing": STUD, "board": BOARD}]},
)
"""A hole of 230 mm between studs at 16 in, which leave 368.3 mm; 95 mm of depth in 101.6 mm of wall."""
OVERHEAD = changed(FLUSH, {"loudspeakers.0.mounting.on": "ceiling", "room.ceiling.framing": {**STUD, "kind": "joist"}})
FREE = changed(FLUSH, {"loudspeakers.0.mounting.on": "floor"})


def sheet(**more: Any) -> list[dict[str, Any]]:
    """Return the sheet with other data."""
    data = {**SHEET["loudspeaker"], **more}
    return [{**SHEET, "loudspeaker": {key: value for key, value in data.items() if value is not None}}]


def on(rule: str, kind: str, changes: dict[str, Any] | None = None, **more: Any) -> Case:
    """Return a case of the flush loudspeaker."""
    products = more.pop("products", [SHEET])
    return Case(f"mount.{rule}", kind, changed(more.pop("base", FLUSH), changes or {}), products, **more)


CASES = [
    on("made-for", "pass", says="in a wall"),
    on("made-for", "pass", products=sheet(placement=["floor", "on-wall"])),
    on("made-for", "fail", products=sheet(placement=["floor"]), level="warning", says="hangs on the front wall, and its sheet has it on the floor only"),
    on("made-for", "fail", base=OVERHEAD, products=sheet(placement=["stand", "floor"]), says="hangs on the ceiling"),
    on("made-for", "fail", base=FREE, level="warning", says="stands on the floor, and its sheet has it in a wall only"),
    on("made-for", "pass", base=FREE, products=sheet(placement=["stand"])),
    # A cabinet for a wall may stand on furniture.
    on("made-for", "pass", {"loudspeakers.0.mounting.on": "furniture"}, products=sheet(placement=["on-wall"])),
    on("made-for", "open", products=sheet(placement=None), says="placement"),
    on("made-for", "open", {"loudspeakers.0.mounting": None}, says="mounting"),
    on("made-for", "open", {"loudspeakers.0.product": None}, says="product"),
    on("made-for", "open", {"loudspeakers": None}, says="loudspeakers"),
    on("made-for", "notApplicable", {"loudspeakers": "none"}),

    on("between-studs", "pass", figure=138.3, source="16 in less 1-1/2 in less 230 mm"),
    on("between-studs", "fail", products=sheet(cutout_width="400 mm"), level="warning", figure=-31.7, source="368.3 mm less 400 mm"),
    on("between-studs", "fail", {"room.walls.0.framing.spacing": "270 mm ± 3 mm"}, figure=1.9, source="270 mm less 38.1 mm less 230 mm, not for certain"),
    on("between-studs", "pass", base=OVERHEAD, figure=138.3, source="the same between joists"),
    on("between-studs", "open", products=sheet(cutout_width=None), says="cutout_width"),
    on("between-studs", "open", {"room.walls.0.framing.spacing": None}, says="spacing"),
    on("between-studs", "open", {"loudspeakers": None}, says="loudspeakers"),
    on("between-studs", "open", products=sheet(placement=None), says="placement"),
    on("between-studs", "notApplicable", {"room.walls.0.framing.kind": "masonry"}, says="no bays"),
    on("between-studs", "notApplicable", products=sheet(placement=["on-wall"])),
    on("between-studs", "notApplicable", base=FREE),

    on("flush-depth", "pass", figure=6.6, source="88.9 mm and 12.7 mm less 95 mm"),
    on("flush-depth", "fail", products=sheet(mounting_depth="110 mm"), level="warning", figure=-8.4, source="101.6 mm less 110 mm"),
    on("flush-depth", "open", products=sheet(mounting_depth=None), says="mounting_depth"),
    on("flush-depth", "open", {"room.walls.0.framing.member_depth": None}, says="member_depth"),
    on("flush-depth", "open", {"room.walls": None}, says="walls[front]"),
    # A wall that nobody has looked into is no wall without bays, and furring is as deep as its strips.
    *(on(which, "open", {"room.walls.0.framing.kind": "unknown"}, says="kind") for which in ("flush-depth", "between-studs")),
    on("flush-depth", "fail", {"room.walls.0.framing": {**STUD, "kind": "furring", "member_depth": "38 mm"}}, figure=-44.3, source="38 mm and 12.7 mm less 95 mm"),
    on("between-studs", "fail", {"room.walls.0.framing": {**STUD, "kind": "hat-channel"}}, products=sheet(cutout_width="400 mm"), figure=-31.7, source="368.3 mm less 400 mm"),
    # Above joists may be a floor: nothing in the file says that there is room.
    on("flush-depth", "pass", {"room.ceiling.board": BOARD}, base=OVERHEAD, figure=6.6, source="88.9 mm and 12.7 mm less 95 mm"),
    on("flush-depth", "fail", {"room.ceiling.board": BOARD}, base=OVERHEAD, products=sheet(mounting_depth="250 mm"), figure=-148.4, source="101.6 mm less 250 mm", says="too deep"),
    on("flush-depth", "notApplicable", {"room.ceiling.framing.kind": "truss"}, base=OVERHEAD, says="trusses"),
    on("flush-depth", "notApplicable", base=FREE),
]  # fmt: skip
EDGES = [
    Edge("mount.between-studs", FLUSH, "room.walls.0.framing.spacing", 100.0, 600.0, 1, unit="mm", scale=0.001, products=[SHEET]),
    Edge("mount.flush-depth", FLUSH, "room.walls.0.framing.member_depth", 50.0, 200.0, 1, unit="mm", scale=0.001, products=[SHEET]),
]  # fmt: skip
