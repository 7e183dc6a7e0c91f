"""Cases of cut framing, worked from IRC R602.6 and R502.8.1."""

from __future__ import annotations

from typing import Any

from roomlint.edges import Edge
from roomlint.sample import room
from roomlint.testing import Case, changed

STUD = {"kind": "wood-stud", "spacing": "406.4 mm", "member_width": "38.1 mm", "member_depth": "88.9 mm",
        "bearing": True}  # fmt: skip
JOIST = {"kind": "joist", "spacing": "406.4 mm", "member_width": "38.1 mm", "member_depth": "234.95 mm"}
HOLE: dict[str, Any] = {
    "id": "bore", "on": "rear", "kind": "hole", "size": "25.4 mm", "edge_distance": "31.75 mm", "apart": "none",
    "doubled": False, "carries": "cable", "nail_plate": False,
}  # fmt: skip
CUT = changed(
    room(),
    {
        "project.codes": {"electrical": "nec2023"},
        "room.walls": [{"id": "rear", "framing": STUD}],
        "room.ceiling.framing": JOIST,
        "room.cuts": [HOLE],
    },
)
"""A stud of 3-1/2 in that bears, with a hole of 1 in in its middle: 1-1/4 in of wood to either edge."""
NOTCHED = changed(
    CUT,
    {"room.cuts": [{"id": "notch", "on": "ceiling", "kind": "notch", "size": "30 mm", "length": "60 mm",
                    "middle_third": False, "apart": "500 mm", "carries": "nothing"}]},
)  # fmt: skip
"""A joist of 9-1/4 in with a notch in its outer third."""
OVERHEAD = changed(CUT, {"room.cuts.0.on": "ceiling", "room.cuts.0.edge_distance": "100 mm"})
CHASED = changed(
    CUT,
    {"room.walls": [{"id": "rear", "framing": {"kind": "masonry", "member_depth": "100 mm"}}],
     "room.cuts": [{"id": "chase", "on": "rear", "kind": "upright-chase", "size": "30 mm", "back_to_back": False,
                    "carries": "cable"}]},
)  # fmt: skip
"""A leaf of 100 mm with an upright chase of 30 mm."""
NONE = room()
OPEN = changed(CUT, {"room.cuts": None})
SIZE, FROM_EDGE, APART = (f"room.cuts.0.{key}" for key in ("size", "edge_distance", "apart"))
PAPER = {"by": "A. N. Engineer", "document": "sketch 4"}


def on(rule: str, kind: str, changes: dict[str, Any] | None = None, **more: Any) -> Case:
    """Return a case of the bored stud, or of another room."""
    return Case(f"mount.{rule}", kind, changed(more.pop("base", CUT), changes or {}), **more)


def framed(kind: str) -> dict[str, Any]:
    """Return the change to a wall that is framed otherwise."""
    return {"room.walls.0.framing.kind": kind}


CASES = [
    on("cut-engineer", "pass"),
    on("cut-engineer", "pass", {**framed("engineered"), "room.cuts.0.engineer": PAPER}, says="sketch 4"),
    # A core through a slab or a chase in masonry is cut by somebody's word too.
    *(on("cut-engineer", "review", framed(kind), says=f"cuts {kind}") for kind in ("masonry", "concrete", "furring")),
    on("cut-engineer", "pass", {**framed("concrete"), "room.cuts.0.engineer": PAPER}, says="sketch 4"),
    *(on("cut-engineer", "fail", {**framed(kind), "room.cuts.0.engineer": "none"}, level="error", says="no table")
      for kind in ("engineered", "truss", "steel-stud")),
    on("cut-engineer", "fail", {"room.cuts.0.kind": "cut-through", "room.cuts.0.engineer": "none"}, level="error", says="through"),
    # That nobody says whether an engineer allowed it is not that one did.
    on("cut-engineer", "open", framed("truss"), says="engineer"),
    on("cut-engineer", "open", {"room.cuts.0.kind": "cut-through"}, says="engineer"),
    on("cut-engineer", "open", {"room.walls.0.framing.kind": None}, says="framing.kind"),
    on("cut-engineer", "open", {"room.walls": None}, says="walls[rear]"),
    on("cut-engineer", "open", base=OPEN, says="cuts"),
    on("cut-engineer", "review", framed("unknown")),
    on("cut-engineer", "review", {**framed("unknown"), "room.cuts.0.engineer": PAPER}),
    on("cut-engineer", "notApplicable", base=NONE),

    on("cut-engineer", "fail", {"room.cuts.0.kind": "level-chase"}, level="error", says="hole or a notch"),
    on("cut-engineer", "pass", base=CHASED, says="depth in the leaf"),
    on("cut-engineer", "review", framed("concrete"), base=CHASED),
    on("cut-share", "notApplicable", base=CHASED),
    # A third of 100 mm upright, a sixth of it level.
    on("chase-depth", "pass", base=CHASED, figure=30.0, source="30 mm of 100 mm"),
    on("chase-depth", "fail", {SIZE: "35 mm"}, base=CHASED, level="warning", figure=35.0, source="35 mm of 100 mm",
       says="takes 35.0 % of the leaf"),
    on("chase-depth", "fail", {"room.cuts.0.kind": "level-chase"}, base=CHASED, figure=30.0, source="30 mm of 100 mm, over a sixth"),
    on("chase-depth", "pass", {"room.cuts.0.kind": "level-chase", SIZE: "16 mm"}, base=CHASED),
    on("chase-depth", "fail", {SIZE: "33 mm ± 2 mm"}, base=CHASED),
    on("chase-depth", "fail", {"room.cuts.0.back_to_back": True}, base=CHASED, says="back to back"),
    on("chase-depth", "open", {"room.cuts.0.back_to_back": None}, base=CHASED, says="back_to_back"),
    on("chase-depth", "open", {SIZE: None}, base=CHASED, says="size"),
    on("chase-depth", "open", {"room.walls.0.framing.member_depth": None}, base=CHASED, says="member_depth"),
    on("chase-depth", "open", base=OPEN, says="cuts"),
    on("chase-depth", "notApplicable", says="no chase"),
    on("chase-depth", "notApplicable", base=NONE),
    on("cut-share", "pass", figure=28.571, source="1 in of 3-1/2 in"),
    on("cut-share", "pass", {"room.cuts.0.on": "floor", "room.floor.framing": JOIST}, figure=10.811, source="1 in of 9-1/4 in under the floor"),
    on("cut-share", "fail", {SIZE: "1.45 in"}, level="warning", figure=41.43, source="1.45 in of 3-1/2 in; 1.40 in are 40 %", within=0.01),
    on("cut-share", "pass", {SIZE: "1.40 in"}, figure=40.0, source="the largest hole in a bearing 2x4: 0.40 x 3.5 in"),
    on("cut-share", "fail", {SIZE: "1.39 in ± 1 mm"}),
    on("cut-share", "pass", {SIZE: "2.1 in", "room.walls.0.framing.bearing": False}, figure=60.0, source="0.60 x 3.5 in = 2.10 in"),
    on("cut-share", "pass", {SIZE: "2.1 in", "room.cuts.0.doubled": True}, figure=60.0, source="the same, doubled"),
    on("cut-share", "fail", {SIZE: "2.2 in", "room.cuts.0.doubled": True}),
    on("cut-share", "fail", {"room.cuts.0.kind": "notch"}, figure=28.571, source="1 in of 3-1/2 in, above 25 %"),
    on("cut-share", "pass", {"room.cuts.0.kind": "notch", SIZE: "0.875 in"}, figure=25.0, source="0.25 x 3.5 in"),
    on("cut-share", "pass", {"room.cuts.0.kind": "end-notch", SIZE: "1.4 in", "room.walls.0.framing.bearing": False}, figure=40.0, source="0.40 x 3.5 in"),
    on("cut-share", "pass", base=NOTCHED, figure=12.768, source="30 mm of 234.95 mm; a sixth is 1.54 in"),
    on("cut-share", "fail", {SIZE: "40 mm"}, base=NOTCHED, figure=17.025, source="40 mm of 234.95 mm"),
    on("cut-share", "pass", {SIZE: "2.31 in", "room.cuts.0.kind": "end-notch"}, base=NOTCHED, figure=24.973, source="2.31 in of 9-1/4 in"),
    on("cut-share", "pass", {SIZE: "3.08 in"}, base=OVERHEAD, figure=33.297, source="3.08 in of 9-1/4 in; a third is 3.083 in"),
    on("cut-share", "fail", {SIZE: "3.1 in"}, base=OVERHEAD),
    on("cut-share", "open", {SIZE: None}, says="size"),
    on("cut-share", "open", {"room.walls.0.framing.bearing": None}, says="bearing"),
    on("cut-share", "open", {"room.cuts.0.doubled": None}, says="doubled"),
    on("cut-share", "open", {"room.walls.0.framing.member_depth": None}, says="member_depth"),
    on("cut-share", "open", base=OPEN, says="cuts"),
    on("cut-share", "open", {**framed("truss"), "room.cuts.0.engineer": "none"}, says="mount.cut-engineer"),
    on("cut-share", "notApplicable", {**framed("truss"), "room.cuts.0.engineer": PAPER}),
    on("cut-share", "notApplicable", framed("masonry")),
    on("cut-share", "notApplicable", base=NONE),

    on("cut-edge", "pass", figure=31.75, source="as it is measured"),
    on("cut-edge", "fail", {FROM_EDGE: "15 mm"}, level="warning", figure=15.0, source="as it is measured"),
    on("cut-edge", "pass", {FROM_EDGE: "5/8 in"}, figure=15.875, source="5/8 in"),
    on("cut-edge", "fail", {FROM_EDGE: "16 mm ± 1 mm"}),
    on("cut-edge", "pass", base=OVERHEAD, figure=100.0, source="as it is measured"),
    on("cut-edge", "fail", {FROM_EDGE: "2 in ± 1 mm"}, base=OVERHEAD, figure=50.8, source="2 in, not for certain"),
    # A hole of 60 mm in 88.9 mm leaves 14.45 mm on its better day, whatever is written.
    on("cut-edge", "fail", {SIZE: "60 mm", FROM_EDGE: "40 mm"}, figure=14.45, source="88.9 mm less 60 mm, halved"),
    on("cut-edge", "pass", {"room.walls.0.framing.member_depth": None}, figure=31.75, source="as it is measured"),
    on("cut-edge", "open", {FROM_EDGE: None}, says="edge_distance"),
    on("cut-edge", "open", base=OPEN, says="cuts"),
    on("cut-edge", "notApplicable", base=NOTCHED),

    on("cut-apart", "pass", {APART: "100 mm"}, figure=100.0, source="as it is measured"),
    on("cut-apart", "fail", {APART: "40 mm"}, level="warning", figure=40.0, source="as it is measured"),
    on("cut-apart", "fail", {APART: "0 mm"}, base=NOTCHED, figure=0.0, source="in one section", within=1e-9),
    on("cut-apart", "open", {APART: None}, says="apart"),
    on("cut-apart", "open", base=OPEN, says="cuts"),
    on("cut-apart", "notApplicable", says="only cut"),

    on("notch-length", "pass", base=NOTCHED, figure=25.537, source="60 mm of 234.95 mm"),
    on("notch-length", "fail", {"room.cuts.0.length": "3.2 in"}, base=NOTCHED, level="warning", figure=34.595, source="3.2 in of 9-1/4 in; a third is 3.08 in"),
    on("notch-length", "open", {"room.cuts.0.length": None}, base=NOTCHED, says="length"),
    on("notch-length", "open", base=OPEN, says="cuts"),
    on("notch-length", "notApplicable"),

    on("notch-middle", "pass", base=NOTCHED),
    on("notch-middle", "fail", {"room.cuts.0.middle_third": True}, base=NOTCHED, level="warning"),
    on("notch-middle", "open", {"room.cuts.0.middle_third": None}, base=NOTCHED, says="middle_third"),
    on("notch-middle", "open", base=OPEN, says="cuts"),
    on("notch-middle", "notApplicable", base=OVERHEAD),
]  # fmt: skip
EDGES = [
    Edge("mount.chase-depth", CHASED, SIZE, 5.0, 80.0, 1, unit="mm", scale=0.001),
    Edge("mount.cut-share", CUT, SIZE, 5.0, 80.0, 1, unit="mm", scale=0.001),
    Edge("mount.cut-edge", CUT, FROM_EDGE, 5.0, 60.0, 1, unit="mm", scale=0.001),
    Edge("mount.cut-edge", OVERHEAD, FROM_EDGE, 5.0, 160.0, 1, unit="mm", scale=0.001),
    Edge("mount.cut-apart", NOTCHED, APART, 5.0, 600.0, 1, unit="mm", scale=0.001),
    Edge("mount.notch-length", NOTCHED, "room.cuts.0.length", 5.0, 200.0, 1, unit="mm", scale=0.001),
]
