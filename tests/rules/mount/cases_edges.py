"""Cases of where screws sit in the wood."""

from __future__ import annotations

from mount_rooms import FIXING, FLOOR, HAND, SHEETS, F, above, arm, on

from roomlint.edges import Edge
from roomlint.testing import Case, Never

WIDE = "room.ceiling.framing.member_width"
ONE_COLUMN = {f"{FIXING}.column_spacing": "0 mm"}
BLOCKING = {f"{FIXING}.into": "blocking", f"{FIXING}.member_thickness": "38.1 mm", f"{FIXING}.edge_distance": "60 mm"}
PLYWOOD = {f"{FIXING}.into": "plywood-backing", f"{FIXING}.member_thickness": "18 mm"}

CASES: list[Case | Never] = [
    *(Case(rule, "notApplicable", FLOOR, products=SHEETS)
      for rule in ("mount.stud-edge", "mount.loaded-edge", "mount.screw-through")),
    # 19.05 - 1.5 x 7.9375 - 2 = 5.14375 mm
    on("mount.stud-edge", "pass", figure=5.14375, source="NDS-2015 Table 12.5.1C from memory, worked by hand"),
    on("mount.stud-edge", "fail", {f"{FIXING}.edge_offset": "9 mm"}),
    # 5.1 mm to spare, but nobody knows the middle of the stud to better than 6 mm.
    on("mount.stud-edge", "fail", {f"{FIXING}.edge_offset": "2 mm ± 6 mm"}),
    on("mount.stud-edge", "open", {f"{FIXING}.edge_offset": None}, says="edge_offset"),
    on("mount.stud-edge", "notApplicable", BLOCKING),
    # A joist splits like a stud: half of 38.1 mm less 1.5 x 7.9375 mm less the offset.
    above("mount.stud-edge", "pass", {WIDE: "38.1 mm", f"{F}.edge_offset": "2 mm"}, figure=5.14375, source="as in a stud, by hand"),
    above("mount.stud-edge", "fail", {WIDE: "38.1 mm", f"{F}.edge_offset": "9 mm"}, level="warning"),
    above("mount.stud-edge", "open", {WIDE: "38.1 mm"}, says="edge_offset"),
    # 60 / 7.9375
    on("mount.loaded-edge", "pass", BLOCKING, figure=7.5591, source="divided by hand"),
    on("mount.loaded-edge", "fail", {**BLOCKING, f"{FIXING}.edge_distance": "25 mm"}, level="warning"),
    on("mount.loaded-edge", "fail", {**BLOCKING, f"{FIXING}.edge_distance": "33 mm ± 2 mm"}, level="warning"),
    on("mount.loaded-edge", "open", {**BLOCKING, f"{FIXING}.edge_distance": None}, says="edge_distance"),
    # An arm on one column pushes its screws toward the edge of the stud: (19.05 - 2) / 7.9375.
    on("mount.loaded-edge", "fail", ONE_COLUMN, figure=2.14803, source=HAND),
    on("mount.loaded-edge", "notApplicable", says="two columns"),
    on("mount.loaded-edge", "notApplicable", ONE_COLUMN, products=arm(motion="tilt")),
    # 76.2 - 3.175 - 12.7 - 88.9 = -28.575 mm
    on("mount.screw-through", "pass", figure=-28.575, source="lengths subtracted by hand"),
    on("mount.screw-through", "fail", {f"{FIXING}.length": "5 in"}, level="note"),
    on("mount.screw-through", "open", {"room.walls.0.framing.member_depth": None}, says="member_depth"),
    on("mount.screw-through", "notApplicable", PLYWOOD),
]  # fmt: skip

EDGES = [
    Edge("mount.stud-edge", on("x", "y").room, f"{FIXING}.edge_offset", 0.0, 10.0, 1, unit="mm", scale=1e-3,
         products=SHEETS),
    Edge("mount.loaded-edge", on("x", "y", BLOCKING).room, f"{FIXING}.edge_distance", 10.0, 60.0, 1, unit="mm",
         scale=1e-3, products=SHEETS),
    Edge("mount.screw-through", on("x", "y").room, f"{FIXING}.length", 60.0, 140.0, 1, unit="mm", scale=1e-3,
         products=SHEETS),
]  # fmt: skip
