"""Cases of the air around a projector."""

from __future__ import annotations

from typing import Any

from roomlint.edges import Edge
from roomlint.sample import room
from roomlint.testing import Case, changed

SHEET: dict[str, Any] = {
    "roomlint_product": 1, "id": "beamer", "kind": "projector", "width": "0.4 m", "height": "0.2 m", "depth": "0.5 m",
    "clearance": "0.30 m",
}  # fmt: skip
ROOM = changed(
    room(),
    {"picture": {"kind": "projection", "centre": {"from_left": "2.5 m", "from_front": "0.1 m", "height": "1.3 m"},
                 "projector": {"product": "beamer",
                               "lens": {"from_left": "2.5 m", "from_front": "4.5 m", "height": "2.1 m"}}}},
)  # fmt: skip
"""A projector whose top is at 2.2 m, under a ceiling of 2.6 m."""
HIGH = "picture.projector.lens.height"
SHELF = {"id": "shelf", "kind": "cabinet", "from_left": "2.8 m", "from_front": "4 m", "width": "0.5 m", "depth": "1.5 m",
         "bottom": "1.8 m", "top": "2.6 m"}  # fmt: skip


def on(kind: str, changes: dict[str, Any] | None = None, **more: Any) -> Case:
    """Return a case of the projector under the ceiling."""
    return Case("heat.clearance", kind, changed(ROOM, changes or {}), more.pop("products", [SHEET]), **more)


def sheet(**more: Any) -> list[dict[str, Any]]:
    """Return its sheet with other data."""
    return [{key: value for key, value in {**SHEET, **more}.items() if value is not None}]


CASES = [
    on("pass", figure=0.4, source="2.6 m less 2.1 m less half of 0.2 m", within=1e-6),
    on("fail", {HIGH: "2.3 m"}, level="warning", figure=0.2, source="2.6 m less 2.3 m less half of 0.2 m", within=1e-6, says="0.20 m of air to the ceiling"),
    on("fail", {HIGH: "2.19 m ± 2 cm"}),
    on("fail", {"room.obstacles": [SHELF]}, figure=0.1, source="2.8 m less 2.5 m less half of 0.4 m", within=1e-6, says="shelf"),
    on("open", products=sheet(clearance=None), says="clearance"),
    on("open", {"picture.projector.lens": None}, says="lens"),
    on("open", {"picture": None}, says="picture"),
    on("notApplicable", products=sheet(clearance="0 mm"), says="no air"),
    on("notApplicable", {"picture.projector": None}),
    on("notApplicable", {"picture": "none"}),
]  # fmt: skip
EDGES = [Edge("heat.clearance", ROOM, HIGH, 1.8, 2.45, 1, products=[SHEET])]
