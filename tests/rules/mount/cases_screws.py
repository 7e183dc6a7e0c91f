"""Cases of screws in wood."""

from __future__ import annotations

from typing import Any

from mount_rooms import (
    ABOVE,
    BARE,
    ENGINEER,
    FIXING,
    FLOOR,
    HAND,
    HERE,
    MOUNTING,
    NO_BOARD,
    PANEL,
    SHEETS,
    STRONG,
    M,
    above,
    arm,
    on,
)

from roomlint.edges import Edge
from roomlint.testing import Case, Never, changed

RULES = (
    "mount.thread-in-wood", "mount.fastener-withdrawal", "mount.fastener-combined", "mount.misuse-load",
    "mount.sideways-swing", "mount.screw-depth",
)  # fmt: skip
ONE_COLUMN = {f"{FIXING}.column_spacing": "0 mm"}
BLOCKING = {f"{FIXING}.into": "blocking", f"{FIXING}.member_thickness": "38.1 mm"}
PLYWOOD = {f"{FIXING}.into": "plywood-backing", f"{FIXING}.member_thickness": "18 mm"}
REPORTED = {f"{FIXING}.fastener": "structural-screw", f"{FIXING}.report": {
    "document": "report 7", "withdrawal": "1000 N", "shear": "500 N"}}  # fmt: skip
# A flip-down arm of 35 kg in all, 0.5 m beside its plate, rows 100 mm apart, four 1/4 in lags with two pulled:
# W/N + W e/(n h) = 85.808 + 858.082 = 943.89 N.
FLIP_SHEETS = (
    changed(PANEL, {"mass": "30 kg"}),
    {"roomlint_product": 1, "id": "flip", "kind": "mount", "mass": "5 kg", "mount": {
        "motion": "articulated", "reach": "0.46 m", "plate_thickness": "3 mm", "row_spacing": "0.1 m"}},
)  # fmt: skip
FLIP: dict[str, Any] = changed(ABOVE, {
    "loudspeakers": None,
    "picture": {"kind": "display", "product": "panel", "mounting": {"on": "ceiling", "product": "flip", "fixing": {
        "fastener": "lag-screw", "into": "joist", "diameter": "1/4 in", "length": "3 in", "thread": "2 in", "count": 4,
        "top_count": 2, "grain": "side", "wet": False, "attic": False}}},
})  # fmt: skip
GABLE = {"shape": "gable", "height": "4 m", "low": "2.2 m", "ridge": "front-to-rear"}
SLOPE = {f"room.ceiling.{key}": value for key, value in GABLE.items()}

CASES: list[Case | Never] = [
    *(Case(rule, "notApplicable", FLOOR, products=SHEETS) for rule in RULES),
    *(Case(rule, "notApplicable", BARE, products=SHEETS) for rule in RULES),
    # From 0.625 + 0.125 in, where the thread starts behind the board, to 3 - 0.1875 in: 1.8125 in.
    on("mount.thread-in-wood", "pass", figure=46.0375, source="lengths subtracted by hand"),
    on("mount.thread-in-wood", "fail", {f"{FIXING}.length": "0.75 in", f"{FIXING}.thread": "0.7 in"}, level="error"),
    # A 7 in lag with 2 in of thread in a 2 in board: the thread starts behind it.
    # A stud 38.1 mm wide (1-1/2 in): a screw 19.1 mm off its middle has missed it, one 18.5 mm off may have.
    on("mount.thread-in-wood", "fail", {f"{FIXING}.edge_offset": "19.1 mm"}, level="error", figure=0.0, source="by hand"),
    on("mount.thread-in-wood", "fail", {f"{FIXING}.edge_offset": "60 mm"}, level="error", figure=0.0, source="by hand"),
    on("mount.thread-in-wood", "fail", {f"{FIXING}.edge_offset": "18.5 mm ± 2 mm"}, level="error"),
    on("mount.thread-in-wood", "pass", {f"{FIXING}.edge_offset": "15 mm"}),
    # Overhead a screw passes beside a joist of 38 mm as it does beside a stud.
    above("mount.thread-in-wood", "fail", {"room.ceiling.framing.member_width": "38 mm", f"{M}.fixing.edge_offset": "60 mm"}, level="error", figure=0.0, source="by hand"),
    above("mount.thread-in-wood", "pass", {"room.ceiling.framing.member_width": "38 mm", f"{M}.fixing.edge_offset": "4 mm"}),
    on("mount.fastener-withdrawal", "open", {f"{FIXING}.edge_offset": "60 mm"}),
    on("mount.thread-in-wood", "fail", {**BLOCKING, f"{FIXING}.length": "7 in"}, figure=0.0, source="by hand"),
    # 1.2 mm of thread that may be 2 mm less is none.
    on("mount.thread-in-wood", "fail", {f"{FIXING}.length": "22 mm ± 2 mm", f"{FIXING}.thread": "20 mm"}),
    on("mount.thread-in-wood", "open", {f"{FIXING}.thread": None}, says="thread"),
    on("mount.thread-in-wood", "open", {"room.walls.0.framing.member_depth": None}, says="member_depth"),
    on("mount.thread-in-wood", "notApplicable", {f"{FIXING}.fastener": "through-bolt"}),
    # 367.749 / 1485.90 = 0.24749
    on("mount.fastener-withdrawal", "pass", figure=0.24749, subject=HERE, source=HAND),
    # A 1.25 in lag has 1.25 - 0.625 - 0.1875 = 0.4375 in of thread: 358.66 N against 367.749 N.
    on("mount.fastener-withdrawal", "fail", {f"{FIXING}.length": "1.25 in", f"{FIXING}.thread": "1 in"},
       level="error", figure=1.02535, says="368 N", source=HAND),
    # Two of two lags where the sheet speaks of two of four: one holds the top, and it bears 735.5 N.
    on("mount.fastener-withdrawal", "pass", {f"{FIXING}.count": 2, f"{FIXING}.top_count": 1}, figure=0.49498,
       source=HAND),
    on("mount.fastener-withdrawal", "open", {f"{FIXING}.count": 2, f"{FIXING}.top_count": None},
       products=arm(top_fasteners=2, fasteners=4), says="top_count"),
    on("mount.fastener-withdrawal", "open", {f"{FIXING}.count": None}, products=arm(top_fasteners=2, fasteners=4),
       says="count"),
    on("mount.fastener-withdrawal", "pass", {f"{FIXING}.top_count": None}, products=arm(top_fasteners=2, fasteners=4),
       figure=0.24749, source=HAND),
    # A parked arm is judged where it can be pulled out to.
    on("mount.fastener-withdrawal", "pass", {f"{MOUNTING}.extension": "25 mm"}, figure=0.24749, source=HAND),
    # A 3-1/2 in lag with 2-1/2 in of thread in flat blocking: thread from 1 in, wood to 2.125 in, so 1.125 in:
    # 367.749 / (35.86218 x 0.9 x 28.575) = 0.39874
    on("mount.fastener-withdrawal", "pass", {**BLOCKING, f"{FIXING}.length": "3.5 in", f"{FIXING}.thread": "2.5 in"},
       figure=0.39874, source=HAND),
    # In 3/4 in of wood the same 3 in lag has 0.375 in of its thread: 0.24749 x 1.8125 / 0.375.
    on("mount.fastener-withdrawal", "fail", {**BLOCKING, f"{FIXING}.member_thickness": "3/4 in"}, figure=1.1962,
       source=HAND),
    on("mount.fastener-withdrawal", "open", {f"{FIXING}.into": "blocking"}, says="member_thickness"),
    on("mount.fastener-withdrawal", "fail", PLYWOOD, level="error"),
    # An attic is as hot as it gets: 0.24749 over 0.7 where nobody says, over 0.8 at 45 degC.
    on("mount.fastener-withdrawal", "pass", {f"{FIXING}.attic": True}, figure=0.35356, source=HAND),
    on("mount.fastener-withdrawal", "pass", {f"{FIXING}.attic": True, f"{FIXING}.hottest": "45 degC"}, figure=0.30936,
       source=HAND),
    on("mount.fastener-withdrawal", "open", {f"{FIXING}.attic": None}, says="attic"),
    on("mount.fastener-withdrawal", "open", {f"{FIXING}.wet": None}, says="wet"),
    on("mount.fastener-withdrawal", "open", {f"{FIXING}.grain": None}, says="grain"),
    on("mount.fastener-withdrawal", "open", {"room.walls.0.board.layers": None}, says="layers"),
    # Species not known: 0.24749 x (0.42 / 0.31)^1.5
    on("mount.fastener-withdrawal", "pass", {"room.walls.0.framing.species": None}, figure=0.39028, source=HAND),
    on("mount.fastener-withdrawal", "review", {f"{FIXING}.fastener": "structural-screw"}, says="evaluation report"),
    on("mount.fastener-withdrawal", "review", {f"{FIXING}.fastener": "structural-screw", f"{FIXING}.engineer": ENGINEER},
       says="sheet 3 decides"),
    on("mount.fastener-withdrawal", "pass", REPORTED, figure=0.36775, source="367.749 N over 1000 N"),
    on("mount.fastener-withdrawal", "notApplicable", {f"{FIXING}.fastener": "through-bolt"}),
    on("mount.fastener-withdrawal", "review", {f"{FIXING}.diameter": "9 mm"}, says="9 mm"),
    on("mount.fastener-withdrawal", "pass", {f"{FIXING}.diameter": "10 mm"}),
    on("mount.fastener-withdrawal", "pass", {f"{FIXING}.diameter": "1/2 in"}),
    # Rows 30 mm apart that may be none at all: on one side nothing holds.
    on("mount.fastener-withdrawal", "fail", {f"{FIXING}.row_spacing": "300 mm ± 300 mm"},
       products=arm(row_spacing=None)),
    # 2.475 at h = 30 mm falls to 0.99 at 75 mm, which 2 mm less make 1.02.
    on("mount.fastener-withdrawal", "fail", {f"{FIXING}.row_spacing": "75 mm ± 2 mm"}, products=arm(row_spacing=None)),
    # Hung from the ceiling: 36.775 + 50 x 0.6 / 0.24 = 161.775 N over 0.9 x 35.86218 x 46.0375 (3 mm plate).
    above("mount.fastener-withdrawal", "pass", figure=0.10887, within=1e-4,
          source="statics and NDS-2015 12.2 by hand; the 3 mm plate hides no thread"),
    # 943.89 N against 0.9 x 30.336 x 40.5 (W of 1/4 in, 1.8438 in of thread): 0.738
    Case("mount.fastener-withdrawal", "fail", FLIP, products=FLIP_SHEETS, level="note", says="944 N"),
    above("mount.fastener-withdrawal", "open", {f"{M}.drop": None}, says="drop"),
    on("mount.fastener-combined", "pass", figure=0.3244415, source=HAND),
    on("mount.fastener-combined", "fail", {f"{MOUNTING}.accessories": "120 kg"}, level="error"),
    on("mount.fastener-combined", "open", {"room.walls.0.board": None}, says="board"),
    on("mount.fastener-combined", "review", {f"{FIXING}.fastener": "wood-screw"}),
    on("mount.fastener-combined", "review", {f"{FIXING}.fastener": "through-bolt"}),
    *(on(rule, "review", {f"{FIXING}.fastener": "wood-screw", f"{FIXING}.engineer": ENGINEER}, says="sheet 3 decides")
      for rule in ("mount.fastener-combined", "mount.misuse-load", "mount.sideways-swing")),
    # 367.749 / 1000 + 110.325 / 500
    on("mount.fastener-combined", "pass", REPORTED, figure=0.5884, source="straight line by hand"),
    # On a slope of 45 degrees the weight shears the screws as well as it pulls them.
    above("mount.fastener-combined", "pass", {**SLOPE, "picture.projector.lens": {
        "from_left": "1 m", "from_front": "1 m", "height": "2 m"}}),
    above("mount.fastener-combined", "open", SLOPE, says="lens"),
    # The same lag at the ten-year value: 1.166, a warning; an error from 1.6.
    on("mount.misuse-load", "fail", figure=1.1663, level="warning", source=HAND),
    on("mount.misuse-load", "fail", products=arm(reach="0.9 m"), level="error"),
    on("mount.misuse-load", "fail", {f"{MOUNTING}.extension": "25 mm"}, figure=1.1663, level="warning", source=HAND),
    on("mount.misuse-load", "pass", {**STRONG, **NO_BOARD}),
    on("mount.misuse-load", "open", {f"{FIXING}.length": None}, says="length"),
    on("mount.misuse-load", "review", {f"{FIXING}.fastener": "wood-screw"}),
    # 15 kg overhead: 4 x 147.09975 / 4 + 125 = 272.1 N against 35.86218 x 46.0375 x 1.0
    above("mount.misuse-load", "pass", figure=0.16481, within=1e-4, source="statics and NDS-2015 12.2 by hand"),
    Case("mount.misuse-load", "fail", FLIP, products=FLIP_SHEETS, level="error"),
    on("mount.sideways-swing", "notApplicable", products=arm(motion="tilt"), says="does not swing"),
    # On one stud: level shear W s / h = 588.399 N = 132.278 lbf across the grain, where a lag is worth 60.9185 lbf.
    on("mount.sideways-swing", "fail", ONE_COLUMN, level="warning", figure=2.17138,
       source="statics and NDS-2015 12.3 with AWC TR-12, computed apart from this program in pounds and inches"),
    on("mount.sideways-swing", "fail", {f"{FIXING}.column_spacing": None}),
    on("mount.sideways-swing", "pass", {**STRONG, **NO_BOARD, **ONE_COLUMN}, products=arm(side_reach="0.1 m")),
    # Two columns 406.4 mm apart share the twist.
    on("mount.sideways-swing", "pass"),
    on("mount.sideways-swing", "open", products=arm(side_reach=None), says="side_reach"),
    on("mount.sideways-swing", "open", products=arm(motion=None), says="motion"),
    on("mount.sideways-swing", "review", {f"{FIXING}.fastener": "wood-screw"}),
    # (3 - 0.125 - 0.5 - 0.1875) / 0.3125 = 7.0, short of the full 8
    on("mount.screw-depth", "fail", figure=7.0, level="note", source="NDS-2015 12.1.4.6, lengths subtracted by hand"),
    on("mount.screw-depth", "fail", {f"{FIXING}.length": "1.75 in", f"{FIXING}.thread": "1.5 in"}, level="error"),
    on("mount.screw-depth", "fail", {**BLOCKING, f"{FIXING}.member_thickness": "3/4 in"}, figure=2.4, level="error",
       source="0.75 over 0.3125"),
    on("mount.screw-depth", "pass", {f"{FIXING}.length": "3.5 in"}),
    # Spacers of 20 mm take 20 mm of the 55.5625 mm away: 35.5625 mm over 7.9375 mm.
    on("mount.screw-depth", "fail", {f"{FIXING}.standoff": "20 mm"}, figure=4.4803, level="note", source="lengths subtracted by hand"),
    # Spacers of 10 mm: 375.10 N on an arm of 0.51 m, and 45.5625 mm of thread in the wood, 184.3005 lbf for each inch.
    on("mount.fastener-withdrawal", "pass", {f"{FIXING}.standoff": "10 mm"}, figure=0.25507, source="worked by hand"),
    on("mount.screw-depth", "pass", {f"{FIXING}.fastener": "wood-screw", f"{FIXING}.diameter": "0.216 in"}),
    on("mount.screw-depth", "open", {f"{FIXING}.length": None}, says="length"),
    on("mount.screw-depth", "notApplicable", {f"{FIXING}.fastener": "through-bolt"}),
    on("mount.screw-depth", "review", {f"{FIXING}.diameter": "9 mm"}),
]  # fmt: skip

ROWS = on("x", "y", {f"{FIXING}.row_spacing": "0.3 m", **ONE_COLUMN}).room
STRONG_ROWS = on("x", "y", {f"{FIXING}.row_spacing": "0.3 m", **STRONG, **NO_BOARD}).room
NARROW = arm(row_spacing=None)
EDGES = [
    Edge("mount.thread-in-wood", on("x", "y", {f"{FIXING}.thread": "0.7 in"}).room, f"{FIXING}.length", 18.0, 60.0, 1, unit="mm", scale=1e-3,
         products=SHEETS),
    *(Edge(rule, ROWS, f"{FIXING}.row_spacing", 0.02, 2.0, 2, products=NARROW)
      for rule in ("mount.fastener-withdrawal", "mount.fastener-combined")),
    Edge("mount.misuse-load", STRONG_ROWS, f"{FIXING}.row_spacing", 0.02, 2.0, 2, products=NARROW),
    Edge("mount.sideways-swing", ROWS, f"{FIXING}.row_spacing", 0.02, 2.0, 1, products=NARROW),
    Edge("mount.screw-depth", on("x", "y").room, f"{FIXING}.length", 51.0, 90.0, 2, unit="mm", scale=1e-3,
         products=SHEETS),
]  # fmt: skip
