"""Cases of windows in the ceiling."""

from __future__ import annotations

from offsets import BOX, room, speaker, taped

from roomlint.edges import Edge
from roomlint.testing import Case, Never, changed

CLEAR = "layout.clear-of-roof-windows"
PANE = {"id": "pane", "from_left": "2.5 m", "from_front": "1.0 m", "width": "0.8 m", "length": "1.2 m"}
PANEL = {
    "id": "panel", "kind": "absorber", "on": "ceiling", "from_left": "1.0 m", "from_front": "1.2 m", "width": "1.2 m",
    "height": "0.6 m",
}  # fmt: skip
UNDER = changed(room(treatments=[PANEL]), {"room.roof_windows": [PANE]})
# 3 m of plan rise by 4 m: what is 1 m long along the slope is 0.6 m in plan.
STEEP = {"shape": "mono-pitch", "low": "1.0 m", "high": "9.0 m", "low_side": "front"}
TOP = changed(
    room(speaker("top", "U+045", -0.1, 2.0, 1.2, mounting={"on": "ceiling"}, product="box")),
    {"room.roof_windows": [{**PANE, "from_left": "2.6 m"}]},
)

CASES: list[Case | Never] = [
    Case(CLEAR, "pass", UNDER, figure=0.3, source="2.5 m less 1.0 and 1.2 m"),
    Case(CLEAR, "fail", changed(UNDER, {"treatments.0.from_left": "1.25 m"}), level="note", figure=0.05, source="2.5 m less 1.25 and 1.2 m", says="wanted for its lining"),
    Case(CLEAR, "fail", changed(UNDER, {"treatments.0.from_left": "1.5 m"}), level="error", figure=-0.2, source="2.5 m less 1.5 and 1.2 m", says="across the roof window"),
    # Sizes are along the slope: of 1.2 m at 53.13 degrees 0.72 m are left in plan, so 2.0 m back is 0.28 m clear of it.
    Case(CLEAR, "pass", changed(UNDER, {"room.ceiling": STEEP, "room.size.length": "6 m", "treatments.0.from_left": "2.5 m", "treatments.0.from_front": "2.0 m"}), figure=0.28, source="3-4-5 slope: 2.0 m less 1.0 and 0.6 x 1.2 m"),
    # A cabinet 0.2 m wide under the ceiling, its middle at 2.4 m, ends 0.1 m before the pane.
    Case(CLEAR, "pass", TOP, [BOX], figure=0.1, source="2.6 m less 2.4 and half of 0.2 m"),
    Case(CLEAR, "review", taped(changed(UNDER, {"treatments.0.from_left": "1.29 m"}))),
    Case(CLEAR, "open", changed(UNDER, {"room.roof_windows.0.width": None})),
    Case(CLEAR, "open", changed(UNDER, {"treatments.0.on": None})),
    Case(CLEAR, "notApplicable", changed(UNDER, {"treatments.0.on": "floor"}), says="stands on the floor"),
    Case(CLEAR, "notApplicable", changed(UNDER, {"room.roof_windows": "none"})),
    Case(CLEAR, "open", changed(UNDER, {"room.roof_windows": None}), says="roof_windows"),
    Case(CLEAR, "notApplicable", changed(UNDER, {"room.roof_windows": None, "treatments": "none"})),
]  # fmt: skip
EDGES = [Edge(CLEAR, changed(UNDER, {"treatments.0.from_left": "1.35 m"}), "treatments.0.from_left", 0.2, 1.5, 2)]
