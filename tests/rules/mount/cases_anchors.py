"""Cases of steel studs, masonry, board, and what an engineer decides."""

from __future__ import annotations

from mount_rooms import (
    ARM,
    ENGINEER,
    FIXING,
    FLOOR,
    MOUNTING,
    PANEL,
    SHEETS,
    STUDS,
    TOP,
    F,
    above,
    arm,
    on,
    weighing,
)

from roomlint.edges import Edge
from roomlint.testing import Case, Never, changed

STEEL = {
    "room.walls.0.framing": {**STUDS, "kind": "steel-stud", "steel_thickness": "0.0346 in"},
    f"{FIXING}.fastener": "steel-screw",
    f"{FIXING}.into": "steel-stud",
    f"{FIXING}.diameter": "0.19 in",
    f"{FIXING}.backing": "plate",
    f"{FIXING}.engineer": ENGINEER,
}
TOGGLE = {**STEEL, f"{FIXING}.fastener": "toggle", f"{FIXING}.anchor_ultimate": "2 kN"}
APPROVAL = {
    "document": "approval 5",
    "bases": ["concrete", "masonry"],
    "embedment": "50 mm",
    "edge_distance": "60 mm",
    "spacing": "120 mm",
}
CONCRETE = {
    "room.walls.0.framing": {"kind": "concrete"},
    f"{FIXING}.fastener": "expansion-anchor",
    f"{FIXING}.into": "concrete",
    f"{FIXING}.embedment": "60 mm",
    f"{FIXING}.edge_distance": "90 mm",
    f"{FIXING}.anchor_spacing": "150 mm",
    f"{FIXING}.anchor_approval": APPROVAL,
    f"{FIXING}.anchor_ultimate": "8 kN",
}
BLOCK = {**CONCRETE, "room.walls.0.framing": {"kind": "hollow-block"}, f"{FIXING}.into": "hollow-block"}
TEST = {"document": "test sheet 6", "load": "2 kN", "count": 3, "by": "A. N. Installer"}


def without(key: str) -> dict[str, object]:
    """Return the test without one of its keys."""
    return {name: value for name, value in TEST.items() if name != key}


WING = {
    "treatments": [
        {
            "id": "wing",
            "kind": "diffuser",
            "on": "front",
            "mass": "4 kg",
            "thickness": "0.1 m",
            "mounting": {"on": "front", "fixing": {"fastener": "toggle", "into": "board", "count": 2}},
        }
    ],
    "picture": None,
}
PANEL_ON_WALL = "treatment/wing"

CASES: list[Case | Never] = [
    *(Case(rule, "notApplicable", FLOOR, products=SHEETS) for rule in (
        "mount.steel-stud-backing", "mount.steel-stud-pull-out", "mount.anchor-approval", "mount.anchor-seat",
        "mount.anchor-test", "mount.anchor-margin", "mount.board-load", "mount.board-anchor", "mount.engineer", "mount.seismic",
    )),
    on("mount.steel-stud-backing", "notApplicable", says="studs"),
    on("mount.steel-stud-backing", "pass", STEEL),
    on("mount.steel-stud-backing", "fail", {**STEEL, f"{FIXING}.backing": None}, level="error"),
    on("mount.steel-stud-backing", "fail", {**STEEL, f"{FIXING}.engineer": "none"}, level="error"),
    on("mount.steel-stud-backing", "fail", {**STEEL, f"{FIXING}.engineer": None}, products=arm(motion="tilt"),
       level="warning"),
    on("mount.steel-stud-backing", "open", STEEL, products=arm(motion=None)),
    # 367.749 N over 0.85 x 0.87884 x 4.826 x 310 / 3 = 372.52 N
    on("mount.steel-stud-pull-out", "pass", STEEL, figure=0.98720, source="AISI S100 J4 from memory, worked by hand"),
    on("mount.steel-stud-pull-out", "fail", {**STEEL, f"{MOUNTING}.accessories": "5 kg"}, level="warning"),
    on("mount.steel-stud-pull-out", "fail", {**STEEL, f"{FIXING}.diameter": "0.19 in ± 0.01 in"}),
    on("mount.steel-stud-pull-out", "open", {**STEEL, f"{FIXING}.diameter": None}, says="diameter"),
    # Four times 367.749 N over 2 kN.
    on("mount.steel-stud-pull-out", "pass", TOGGLE, figure=0.73550, source="worked by hand"),
    on("mount.steel-stud-pull-out", "open", {**TOGGLE, f"{FIXING}.anchor_ultimate": None}, says="anchor_ultimate"),
    on("mount.steel-stud-pull-out", "review", {**STEEL, f"{FIXING}.fastener": "through-bolt"}),
    on("mount.anchor-approval", "pass", CONCRETE, says="approval 5"),
    on("mount.anchor-approval", "pass", {**CONCRETE, f"{FIXING}.anchor_approval": None, f"{FIXING}.engineer": ENGINEER},
       says="sheet 3"),
    on("mount.anchor-approval", "fail", {**CONCRETE, f"{FIXING}.anchor_approval": None}, level="error"),
    on("mount.anchor-approval", "fail", {**CONCRETE, f"{FIXING}.anchor_approval": "none"}, level="error"),
    on("mount.anchor-approval", "open", {f"{FIXING}.into": None}, says="into"),
    # What an approval says of concrete says nothing of a hollow block.
    on("mount.anchor-approval", "fail", {**BLOCK, f"{FIXING}.anchor_approval": APPROVAL}, level="error",
       says="anchors in hollow block, and approval 5 covers concrete, masonry only"),
    on("mount.anchor-approval", "pass", {**BLOCK, f"{FIXING}.anchor_approval": {**APPROVAL, "bases": ["hollow-block"]}}),
    on("mount.anchor-approval", "pass", {**BLOCK, f"{FIXING}.engineer": ENGINEER}, says="sheet 3"),
    on("mount.anchor-approval", "open", {**CONCRETE, f"{FIXING}.anchor_approval.bases": None}, says="bases"),
    # 383.942 N on the most loaded one.
    on("mount.anchor-test", "pass", {**CONCRETE, f"{FIXING}.test": TEST}, figure=5.2091, source="2 kN over 383.942 N"),
    on("mount.anchor-test", "fail", {**CONCRETE, f"{FIXING}.test": {**TEST, "load": "500 N"}}, level="warning",
       figure=1.3023, source="500 N over 383.942 N", says="at least 1.5"),
    on("mount.anchor-test", "fail", {**CONCRETE, f"{FIXING}.test": {**TEST, "load": "600 N ± 40 N"}}),
    on("mount.anchor-test", "fail", {**CONCRETE, f"{FIXING}.test": {**TEST, "count": 2}}, says="2 of its anchors"),
    on("mount.anchor-test", "open", {**CONCRETE, f"{FIXING}.test": without("load")}, says="load"),
    on("mount.anchor-test", "open", {**CONCRETE, f"{FIXING}.test": without("count")}, says="count"),
    on("mount.anchor-test", "notApplicable", {**CONCRETE, f"{FIXING}.test": "none"}, says="no pull test"),
    on("mount.anchor-test", "notApplicable", CONCRETE),
    on("mount.anchor-seat", "pass", CONCRETE, figure=1.2, source="60 mm over 50 mm, the least of the three"),
    on("mount.anchor-seat", "fail", {**CONCRETE, f"{FIXING}.edge_distance": "36 mm"}, figure=0.6, source="36 mm over 60 mm",
       says="its anchors have 36 mm of the 60 mm of edge distance"),
    on("mount.anchor-seat", "fail", {**CONCRETE, f"{FIXING}.anchor_spacing": "80 mm"}),
    on("mount.anchor-seat", "fail", {**CONCRETE, f"{FIXING}.embedment": "51 mm ± 2 mm"}),
    on("mount.anchor-seat", "open", {**CONCRETE, f"{FIXING}.edge_distance": None}, says="edge_distance"),
    on("mount.anchor-seat", "notApplicable"),
    # 8 kN over sqrt(367.749^2 + 110.325^2) = 383.942 N
    on("mount.anchor-margin", "pass", CONCRETE, figure=20.8365, source="statics worked by hand"),
    on("mount.anchor-margin", "fail", {**CONCRETE, f"{FIXING}.anchor_ultimate": "1 kN"}, level="warning"),
    on("mount.anchor-margin", "fail", {**CONCRETE, f"{FIXING}.anchor_ultimate": "1.6 kN ± 0.1 kN"}),
    on("mount.anchor-margin", "open", {**CONCRETE, f"{FIXING}.anchor_ultimate": None}, says="anchor_ultimate"),
    on("mount.anchor-margin", "notApplicable", says="no published"),
    # A flush loudspeaker on its clamps, and a panel on board alone.
    above("mount.board-load", "pass", figure=3.0, subject=TOP, source="the mass as written"),
    above("mount.board-load", "fail", {"loudspeakers.0.mounting.accessories": "22 kg"}, subject=TOP, level="error"),
    above("mount.board-load", "open", products=(changed(weighing("1 kg")[2], {"mass": None}), *weighing("1 kg")[:2]),
          subject=TOP, says="mass"),
    above("mount.board-load", "notApplicable", {"loudspeakers.0.mounting.fixing": {
        "fastener": "lag-screw", "into": "joist"}}, subject=TOP),
    on("mount.board-load", "pass", WING, subject=PANEL_ON_WALL),
    on("mount.board-load", "fail", {**WING, "treatments.0.mass": "30 kg"}, subject=PANEL_ON_WALL, level="error"),
    on("mount.board-load", "fail", {**WING, "treatments.0.mass": "4.4 kg ± 0.2 kg"}, subject=PANEL_ON_WALL),
    on("mount.board-anchor", "pass", WING, figure=2.0, subject=PANEL_ON_WALL, source="4 kg on two anchors"),
    on("mount.board-anchor", "fail", {**WING, "treatments.0.mounting.fixing.count": 1}, subject=PANEL_ON_WALL),
    on("mount.board-anchor", "open", {**WING, "treatments.0.mounting.fixing.count": None}, subject=PANEL_ON_WALL),
    on("mount.engineer", "pass"),
    on("mount.engineer", "pass", {"room.walls.0.framing.kind": "truss", f"{FIXING}.engineer": ENGINEER}),
    on("mount.engineer", "fail", {"room.walls.0.framing.kind": "truss"}, says="truss"),
    on("mount.engineer", "fail", {f"{FIXING}.into": "hat-channel"}, says="hat channel"),
    on("mount.engineer", "fail", {"room.walls.0.board.material": "plaster-on-lath"}, says="plaster on lath"),
    on("mount.engineer", "fail", {f"{MOUNTING}.accessories": "1 kg"}, says="45 kg"),
    # 44 kg that may be 49 kg.
    on("mount.engineer", "fail", products=(changed(PANEL, {"mass": "34 kg ± 5 kg"}), ARM), says="45 kg"),
    on("mount.engineer", "fail", {f"{MOUNTING}.accessories": "1 kg", f"{FIXING}.engineer": "none"}),
    on("mount.engineer", "open", {"room.walls.0.framing.kind": None}, says="framing"),
    above("mount.seismic", "pass", {f"{F}.engineer": ENGINEER}, says="sheet 3"),
    above("mount.seismic", "pass", {"project.codes.seismic_category": "b"}, says="below"),
    above("mount.seismic", "fail"),
    above("mount.seismic", "fail", {"project.codes.seismic_category": "d1"}),
    # 9 kg with its mount, which may be 11 kg.
    above("mount.seismic", "fail", products=weighing("6 kg ± 2 kg")),
    above("mount.seismic", "pass", products=weighing("6 kg"), says="below"),
    above("mount.seismic", "open", {"project.codes": None}, says="seismic_category"),
    above("mount.seismic", "open", {"project.codes": None, "project.region": None}, says="seismic_category"),
    above("mount.seismic", "notApplicable", {"project.region": "eu", "project.codes": None}, says="own seismic code"),
]  # fmt: skip

EDGES = [
    Edge("mount.steel-stud-pull-out", on("x", "y", {**STEEL, f"{MOUNTING}.accessories": "1 kg"}).room,
         f"{MOUNTING}.accessories", 0.01, 30.0, 1, unit="kg", products=(changed(PANEL, {"mass": "25 kg"}), ARM)),
    Edge("mount.anchor-test", on("x", "y", {**CONCRETE, f"{FIXING}.test": TEST}).room, f"{FIXING}.test.load", 300.0, 900.0,
         1, unit="N", products=SHEETS),
    Edge("mount.anchor-seat", on("x", "y", CONCRETE).room, f"{FIXING}.embedment", 20.0, 61.0, 1, unit="mm", scale=1e-3,
         products=SHEETS),
    Edge("mount.anchor-margin", on("x", "y", CONCRETE).room, f"{FIXING}.anchor_ultimate", 500.0, 8000.0, 1, unit="N",
         products=SHEETS),
    Edge("mount.board-load", on("x", "y", WING).room, "treatments.0.mass", 1.1, 10.0, 2, unit="kg",
         subject=PANEL_ON_WALL, products=SHEETS),
    Edge("mount.board-load", above("x", "y", {"loudspeakers.0.mounting.accessories": "1 kg"}).room,
         "loudspeakers.0.mounting.accessories", 0.01, 10.0, 2, unit="kg", subject=TOP, products=weighing("1 kg")),
    Edge("mount.board-anchor", on("x", "y", WING).room, "treatments.0.mass", 1.1, 10.0, 1, unit="kg",
         subject=PANEL_ON_WALL, products=SHEETS),
]  # fmt: skip
