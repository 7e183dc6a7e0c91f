"""Cases of screws in wood that is graded to a European class, or stands in Europe without a grade."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from mount_rooms import ABOVE, ABOVE_SHEETS, FIXING, ROOM, SHEETS, F, M

from roomlint.edges import Edge
from roomlint.testing import Case, Never, changed

if TYPE_CHECKING:
    from collections.abc import Mapping

WALL = "room.walls.0.framing"
C24: dict[str, Any] = changed(ROOM, {
    "project": {"region": "eu", "children": True}, f"{WALL}.species": None, f"{WALL}.strength_class": "C24",
    f"{WALL}.member_width": "75 mm", f"{FIXING}.diameter": "8 mm", f"{FIXING}.length": "80 mm",
    f"{FIXING}.thread": "60 mm",
})  # fmt: skip
"""The display of `mount_rooms` on coach screws of 8 by 80 mm in C24, 52 mm of thread in the wood."""
OVERHEAD: dict[str, Any] = changed(ABOVE, {
    "project": {"region": "uk", "children": True}, "room.ceiling.framing.species": None,
    "room.ceiling.framing.strength_class": "C16", f"{F}.diameter": "8 mm", f"{F}.length": "80 mm",
    f"{F}.thread": "60 mm",
})  # fmt: skip
ONE_COLUMN = {f"{FIXING}.column_spacing": "0 mm"}
DRIVEN = {f"{FIXING}.fastener": "wood-screw", f"{FIXING}.diameter": "6 mm"}
UNGRADED = {f"{WALL}.strength_class": None}
BLOCKING = {f"{FIXING}.into": "blocking", f"{FIXING}.member_thickness": "75 mm", f"{FIXING}.edge_distance": "50 mm"}
HAND = "EN 1995-1-1 8.7.2, 8.2.3 and 8.3.3 with EN 338, worked apart from this program"


def on(rule: str, kind: str, changes: Mapping[str, object] | None = None, **more: Any) -> Case:
    """Return a case of the display in C24 with some keys changed."""
    return Case(f"mount.{rule}", kind, changed(C24, changes or {}), products=SHEETS, **more)


CASES: list[Case | Never] = [
    # 1.35 x 367.749 / (5587.349 x 4^-0.1 x 0.6 / 1.3)
    on("fastener-withdrawal", "pass", figure=0.221145, source=HAND),
    # The class goes by rho^0.8: 310 and 290 against 350; hardwood counts as 430.
    on("fastener-withdrawal", "pass", {f"{WALL}.strength_class": "C16"}, figure=0.243693, source=HAND),
    on("fastener-withdrawal", "pass", {f"{WALL}.strength_class": "D30"}, figure=0.187568, source=HAND),
    on("fastener-withdrawal", "pass", {f"{WALL}.strength_class": "unknown"}, figure=0.257048, source=HAND),
    # In Europe wood of no stated grade is C14; elsewhere the lightest wood of the American table, 0.31.
    on("fastener-withdrawal", "pass", UNGRADED, figure=0.257048, source=HAND),
    on("fastener-withdrawal", "pass", {**UNGRADED, "project.region": "us"}, figure=0.343515,
       source="367.749 / (1800 x 0.31^1.5 x 0.31496^0.75 x 0.175127 x 0.9 x 52), NDS-2015 12.2 by hand"),
    # An American stamp is judged by the American standard wherever it stands: 0.42 instead of 0.31.
    on("fastener-withdrawal", "pass", {**UNGRADED, f"{WALL}.species": "spruce-pine-fir"}, figure=0.217829,
       source="NDS-2015 12.2 by hand"),
    # Service class 3 takes kmod from 0.6 to 0.5.
    on("fastener-withdrawal", "pass", {f"{FIXING}.wet": True}, figure=0.265375, source=HAND),
    on("fastener-withdrawal", "fail", {f"{FIXING}.length": "76 mm", f"{FIXING}.thread": "18 mm",
                                       "picture.mounting.accessories": "55 kg"}, level="error"),
    on("fastener-withdrawal", "open", {f"{FIXING}.wet": None}, says="wet"),
    on("fastener-withdrawal", "open", {f"{FIXING}.count": None}, says="count"),
    # Thinner screws than the formula's: their declaration speaks.
    on("fastener-withdrawal", "review", {**DRIVEN, f"{FIXING}.diameter": "5 mm"}, says="5 mm"),
    on("fastener-withdrawal", "review", {f"{FIXING}.into": "plywood-backing", f"{FIXING}.member_thickness": "60 mm"},
       says="plywood"),
    on("fastener-combined", "review", {f"{FIXING}.into": "plywood-backing", f"{FIXING}.member_thickness": "60 mm"}),
    # 1.35 x 110.325 / (1083.140 x 0.6 / 1.3) = 0.29793, with 0.22115 as the root of squares
    on("fastener-combined", "pass", figure=0.371036, source=HAND),
    on("fastener-combined", "fail", {"picture.mounting.accessories": "130 kg"}, level="error"),
    # By EN 1995-1-1 a wood screw has a shear value: 54 mm of thread, kd 0.75, a root of 0.6 d, a hole not bored.
    on("fastener-combined", "fail", DRIVEN, level="note", figure=0.783494, source=HAND),
    on("fastener-combined", "open", {f"{WALL}.member_depth": None}, says="member_depth"),
    # 3.99408 times the weight, 1.5 times that, against kmod 0.7
    on("misuse-load", "fail", level="warning", figure=1.411389, source=HAND),
    on("sideways-swing", "fail", ONE_COLUMN, level="warning"),
    # 52 mm over 8 mm; 4 diameters would do for a lag by the American standard.
    on("screw-depth", "pass", figure=6.5, source="divided by hand"),
    on("screw-depth", "fail", {f"{FIXING}.thread": "55 mm"}, level="error", figure=5.875, source="47 mm over 8 mm"),
    on("thread-in-wood", "pass", figure=52.0, source="lengths subtracted by hand"),
    # 75 / 2 - 4 x 8 - 2; a stud of 45 mm leaves no screw of 8 mm its 4 diameters: 22.5 - 32 - 2.
    on("stud-edge", "pass", figure=3.5, source="EN 1995-1-1 table 8.6 by hand"),
    on("stud-edge", "fail", {f"{WALL}.member_width": "45 mm"}, level="warning", figure=-11.5,
       source="EN 1995-1-1 table 8.6 by hand"),
    on("loaded-edge", "pass", BLOCKING, figure=6.25, source="divided by hand"),
    on("loaded-edge", "fail", {**BLOCKING, **DRIVEN}, level="warning", figure=8.3333, source="50 mm over 6 mm, 10 wanted"),
    on("end-grain", "fail", {f"{FIXING}.grain": "end"}, level="error", says="lag screw"),
    on("fastener-size", "pass", {f"{FIXING}.diameter": "6 mm"}, figure=1.0, source="6 mm over 6 mm"),
    on("fastener-size", "fail", {f"{FIXING}.diameter": "5 mm"}, level="error", figure=0.83333, source="5 mm over 6 mm"),
    # Hung from C16: (36.775 + 125) N times 1.35 over 310^0.8.
    Case("mount.fastener-withdrawal", "pass", OVERHEAD, products=ABOVE_SHEETS, subject="projector/beam"),
    Case("mount.fastener-withdrawal", "open", changed(OVERHEAD, {f"{M}.drop": None}), products=ABOVE_SHEETS,
         subject="projector/beam", says="drop"),
]  # fmt: skip

EDGES = [
    Edge("mount.screw-depth", C24, f"{FIXING}.thread", 20.0, 66.0, 1, unit="mm", scale=1e-3, products=SHEETS),
    Edge("mount.stud-edge", C24, f"{FIXING}.edge_offset", 0.0, 10.0, 1, unit="mm", scale=1e-3, products=SHEETS),
    Edge("mount.loaded-edge", changed(C24, {**BLOCKING, **DRIVEN}), f"{FIXING}.edge_distance", 10.0, 90.0, 1, unit="mm",
         scale=1e-3, products=SHEETS),
    Edge("mount.fastener-size", C24, f"{FIXING}.diameter", 3.9, 9.0, 1, unit="mm", scale=1e-3, products=SHEETS),
]  # fmt: skip
