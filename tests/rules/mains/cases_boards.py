"""Cases of panels, worked from NFPA 70, 110.26, 230.67 and 240.24."""

from __future__ import annotations

from typing import Any

from roomlint.edges import Edge
from roomlint.sample import room
from roomlint.testing import Case, Never, changed

PANEL: dict[str, Any] = {
    "id": "board", "kind": "service", "wall": "rear", "from_wall_left": "2.0 m", "width": "0.4 m",
    "handle_height": "1.7 m", "clear_depth": "1.0 m", "clear_width": "0.8 m", "clear_height": "2.3 m",
    "storage": False, "new": True, "surge": "type-2",
}  # fmt: skip
# Seen from inside, the rear wall runs from the right to the left: the panel is 2.6 to 3.0 m from the left.
SUB = {
    "id": "sub", "position": {"from_left": "4.0 m", "from_front": "5.6 m", "height": "0.2 m"}, "facing": "0 deg",
    "product": {"kind": "subwoofer", "width": "0.4 m", "height": "0.4 m", "depth": "0.3 m"},
}  # fmt: skip
HOUSE = changed(room(subwoofers=[SUB]), {"project.codes": {"electrical": "nec2023"}, "panels": [PANEL]})
NONE = changed(HOUSE, {"panels": "none"})
OPEN = changed(HOUSE, {"panels": None})
BRITISH = {"project.codes.electrical": "bs7671"}
P, AT = "panels.0", "subwoofers.0.position"
ELSEWHERE = {f"{P}.wall": None, f"{P}.from_wall_left": None, f"{P}.place": "garage"}
UNMEASURED = {f"{P}.{key}": None for key in ("clear_depth", "clear_width", "clear_height")}
CABINET = {
    "id": "cabinet",
    "kind": "cabinet",
    "from_left": "2.7 m",
    "from_front": "5.4 m",
    "width": "1 m",
    "depth": "0.6 m",
}
SUBJECT = "subwoofer/sub+panel/board"


def on(rule: str, kind: str, changes: dict[str, Any] | None = None, **more: Any) -> Case:
    """Return a case of the house with its panel."""
    return Case(f"mains.{rule}", kind, changed(more.pop("base", HOUSE), changes or {}), **more)


CASES: list[Case | Never] = [
    on("panel-space", "pass", figure=105.0, source="0.8 m of 0.762 m is the tightest: 105 %", within=0.05),
    on("panel-space", "fail", {f"{P}.clear_depth": "0.6 m"}, level="error", figure=66.67, source="0.6 m of 0.9 m", says="0.60 m of free depth"),
    on("panel-space", "fail", {f"{P}.clear_height": "1.8 m"}, figure=90.0, source="1.8 m of 2.0 m", says="free height"),
    # A panel that is wider than 30 in wants its own width.
    on("panel-space", "fail", {f"{P}.width": "1.0 m"}, figure=80.0, source="0.8 m of 1.0 m", says="free width"),
    on("panel-space", "fail", {f"{P}.clear_depth": "0.91 m ± 2 cm"}),
    *(on("panel-space", "open", {f"{P}.{key}": None}, says=key) for key in ("clear_depth", "clear_width", "clear_height")),
    on("panel-space", "open", {f"{P}.wall": None, f"{P}.from_wall_left": None, **UNMEASURED}, says="place"),
    on("panel-space", "open", {"project.codes": None}, says="electrical"),
    on("panel-space", "open", base=OPEN, says="panels"),
    on("panel-space", "notApplicable", {**ELSEWHERE, **UNMEASURED}, says="another room"),
    # What is measured before a panel in the garage counts there too.
    on("panel-space", "pass", ELSEWHERE, figure=105.0, source="0.8 m of 0.762 m", within=0.05),
    on("panel-space", "fail", {**ELSEWHERE, f"{P}.clear_depth": "0.4 m"}, level="error", figure=44.44, source="0.4 m of 0.9 m"),
    on("panel-space", "open", {**ELSEWHERE, f"{P}.clear_width": None}, says="clear_width"),
    on("panel-space", "notApplicable", BRITISH),
    on("panel-space", "notApplicable", base=NONE),

    # The cabinet's near side stands 3.8 m from the left, the panel's 3.0 m; told up to half a metre.
    on("panel-clear", "pass", subject=SUBJECT, figure=0.5, source="0.8 m away, told as half a metre or more"),
    on("panel-clear", "pass", {f"{AT}.from_left": "3.3 m"}, subject=SUBJECT, figure=0.1, source="3.3 m less 0.2 m less 3.0 m", within=1e-3),
    on("panel-clear", "fail", {f"{AT}.from_left": "3.1 m"}, subject=SUBJECT, level="error", figure=-0.1, source="3.1 m less 0.2 m less 3.0 m", within=1e-3, says="0.10 m inside"),
    # A built-in cabinet is in the way as much as one on wheels: 5.6 m to 6 m from the front, 0.3 m into the space's side.
    on("panel-clear", "fail", {"room.obstacles": [CABINET]}, subject="obstacle/cabinet+panel/board", level="error", figure=-0.3, source="3.0 m less 2.7 m", within=1e-3),
    on("panel-clear", "open", {AT: None}, subject=SUBJECT, says="position"),
    on("panel-clear", "open", {f"{P}.width": None}, subject=SUBJECT, says="width"),
    on("panel-clear", "open", base=OPEN, says="panels"),
    on("panel-clear", "notApplicable", ELSEWHERE),
    on("panel-clear", "notApplicable", BRITISH),

    on("panel-place", "pass"),
    on("panel-place", "pass", ELSEWHERE),
    *(on("panel-place", "fail", {**ELSEWHERE, f"{P}.place": place}, level="error", says=said)
      for place, said in (("clothes-closet", "clothes closet"), ("bathroom", "bathroom"), ("stairs", "stairs"))),
    on("panel-place", "fail", {f"{P}.storage": True}, says="no storage"),
    on("panel-place", "open", {f"{P}.storage": None}, says="storage"),
    on("panel-place", "open", {**ELSEWHERE, f"{P}.place": None}, says="place"),
    on("panel-place", "open", base=OPEN, says="panels"),
    # Closets and stairs are of NFPA 70; water is the same anywhere, and so is what stands before a board.
    on("panel-place", "fail", {**BRITISH, **ELSEWHERE, f"{P}.place": "bathroom"}, level="warning", says="bathroom"),
    on("panel-place", "pass", {**BRITISH, **ELSEWHERE, f"{P}.place": "stairs"}),
    on("panel-place", "fail", {**BRITISH, f"{P}.storage": True}, says="no storage"),
    on("panel-place", "notApplicable", base=NONE),

    on("panel-reach", "pass", figure=1.7, source="as it is measured"),
    on("panel-reach", "fail", {f"{P}.handle_height": "2.1 m"}, level="warning", figure=2.1, source="as it is measured"),
    on("panel-reach", "fail", {f"{P}.handle_height": "1.99 m ± 2 cm"}),
    on("panel-reach", "open", {f"{P}.handle_height": None}, says="handle_height"),
    on("panel-reach", "open", base=OPEN, says="panels"),
    on("panel-reach", "notApplicable", BRITISH),
    on("panel-reach", "notApplicable", base=NONE),

    on("surge", "pass", says="type 2"),
    on("surge", "fail", {f"{P}.surge": "none"}, level="note"),
    on("surge", "fail", {f"{P}.surge": "type-3"}, level="note"),
    on("surge", "open", {f"{P}.surge": None}, says="surge"),
    on("surge", "open", {f"{P}.new": None}, says="new"),
    on("surge", "open", base=OPEN, says="panels"),
    on("surge", "notApplicable", {f"{P}.new": False, f"{P}.surge": "none"}),
    on("surge", "notApplicable", {f"{P}.kind": "subpanel"}),
    on("surge", "notApplicable", {"project.codes.electrical": "nec2017", f"{P}.surge": "none"}),
    on("surge", "pass", BRITISH),
    on("surge", "fail", {**BRITISH, f"{P}.surge": "none"}, level="note"),
    on("surge", "notApplicable", {"project.codes.electrical": "asnzs3000", "project.region": "au", f"{P}.surge": "none"}),
]  # fmt: skip
EDGES = [
    Edge("mains.panel-space", HOUSE, f"{P}.clear_depth", 0.3, 0.944, 1),
    Edge("mains.panel-clear", HOUSE, f"{AT}.from_left", 2.9, 3.6, 1, subject=SUBJECT),
    Edge("mains.panel-reach", HOUSE, f"{P}.handle_height", 1.0, 2.5, 1),
]
