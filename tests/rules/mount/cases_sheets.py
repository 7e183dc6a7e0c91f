"""Cases of a room file against the sheet of its mount."""

from __future__ import annotations

from mount_rooms import BARE, FIXING, FLOOR, MOUNTING, SHEETS, TOP, above, arm, on

from roomlint.edges import Edge
from roomlint.testing import Case, Never

RULES = ("mount.sheet-fasteners", "mount.sheet-rows", "mount.sheet-reach")
TWO_HOLES = arm(fasteners=2, top_fasteners=1, row_spacing="150 mm", reach="30 mm")
FOUR_HOLES = arm(fasteners=4, top_fasteners=2)
ONE_SCREW = {f"{FIXING}.count": 1, f"{FIXING}.top_count": 1}
ROWS, REACH = f"{FIXING}.row_spacing", f"{MOUNTING}.extension"

CASES: list[Case | Never] = [
    *(Case(rule, "notApplicable", FLOOR, products=SHEETS, says="the floor") for rule in RULES),
    *(Case(rule, "notApplicable", BARE, products=SHEETS) for rule in RULES),
    *(above(rule, "notApplicable", subject=TOP, says="its own frame") for rule in RULES),
    *(on(rule, "open", {f"{MOUNTING}.product": None, ROWS: "150 mm", REACH: "30 mm"}, says="product")
      for rule in RULES),
    on("mount.sheet-fasteners", "pass", products=FOUR_HOLES),
    on("mount.sheet-fasteners", "fail", products=TWO_HOLES, level="error",
       says="is given 4 fasteners; its mount's sheet has 2"),
    on("mount.sheet-fasteners", "fail", {f"{FIXING}.count": 16, f"{FIXING}.top_count": 16}, products=TWO_HOLES,
       level="error", says="16 fasteners"),
    on("mount.sheet-fasteners", "fail", {f"{FIXING}.count": 2}, products=TWO_HOLES, level="error",
       says="2 fasteners in the top row; its mount's sheet has 1"),
    # One screw in a bracket with two holes.
    on("mount.sheet-fasteners", "fail", ONE_SCREW, products=TWO_HOLES, level="error", says="wants 2 fasteners; 1 given"),
    on("mount.sheet-fasteners", "fail", {f"{FIXING}.top_count": 1}, products=FOUR_HOLES, level="error",
       says="wants 2 fasteners in the top row; 1 given"),
    # A top row that the sheet cannot have is wrong, whatever the sheet leaves out.
    on("mount.sheet-fasteners", "fail", products=arm(top_fasteners=1), level="error", says="2 fasteners in the top row"),
    on("mount.sheet-fasteners", "open", says="fasteners"),
    on("mount.sheet-fasteners", "open", products=arm(fasteners=4), says="top_fasteners"),
    on("mount.sheet-fasteners", "pass", {f"{FIXING}.top_count": None}, products=arm(fasteners=4)),
    on("mount.sheet-fasteners", "open", {FIXING: None}, says="fixing"),
    on("mount.sheet-fasteners", "notApplicable", {f"{FIXING}.count": None, f"{FIXING}.top_count": None},
       products=FOUR_HOLES, says="counts no fasteners"),
    on("mount.sheet-rows", "pass", {ROWS: "300 mm"}, figure=0.0, source="the same length in two units"),
    # A plate in two studs may be fastened by nearer holes of its slots.
    on("mount.sheet-rows", "pass", {ROWS: "250 mm"}, figure=-50.0, source="lengths subtracted by hand"),
    # 3 m on a plate whose holes are 150 mm apart.
    on("mount.sheet-rows", "fail", {ROWS: "3 m"}, products=TWO_HOLES, level="error", figure=2850.0,
       source="lengths subtracted by hand", says="farther apart"),
    on("mount.sheet-rows", "fail", {ROWS: "300 mm ± 5 mm"}, level="error"),
    on("mount.sheet-rows", "open", {ROWS: "150 mm"}, products=arm(row_spacing=None), says="row_spacing"),
    on("mount.sheet-rows", "notApplicable", says="no row spacing"),
    on("mount.sheet-reach", "pass", {REACH: "460 mm"}, figure=0.0, source="the same length in two units"),
    on("mount.sheet-reach", "pass", {REACH: "25 mm"}, figure=-435.0, source="lengths subtracted by hand"),
    # A mount of 30 mm reach drawn 900 mm out.
    on("mount.sheet-reach", "fail", {REACH: "900 mm"}, products=TWO_HOLES, level="error", figure=870.0,
       source="lengths subtracted by hand", says="farther out"),
    on("mount.sheet-reach", "open", {REACH: "25 mm"}, products=arm(reach=None), says="reach"),
    on("mount.sheet-reach", "notApplicable", says="no reach"),
    # What holds is no more than the plate has holes for: one of two on top, 735.5 N over 1485.9 N, as drawn by hand.
    on("mount.fastener-withdrawal", "pass", {f"{FIXING}.count": 16, f"{FIXING}.top_count": 16},
       products=arm(fasteners=2, top_fasteners=1), figure=0.49498, source="367.749 N x 2 over 1485.90 N"),
    # Rows that the file draws apart pull no less on the top screws.
    on("mount.fastener-withdrawal", "pass", {ROWS: "3 m"}, figure=0.24749, source="as on the sheet: by hand"),
]  # fmt: skip

EDGES = [
    Edge("mount.sheet-rows", on("x", "y", {ROWS: "0.3 m"}).room, ROWS, 200.0, 400.0, 1, unit="mm", scale=1e-3,
         products=SHEETS),
    Edge("mount.sheet-reach", on("x", "y", {REACH: "0.4 m"}).room, REACH, 400.0, 500.0, 1, unit="mm", scale=1e-3,
         products=SHEETS),
]  # fmt: skip
