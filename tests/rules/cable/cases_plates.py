"""Cases of holes and notches for cable, and of what a cable passes through."""

from __future__ import annotations

from typing import Any

from cable_rooms import BARE, SHEETS, UNSAID, WIRED, under

from roomlint.edges import Edge
from roomlint.sample import room
from roomlint.testing import Case, changed

BORED = changed(
    WIRED,
    {"room.cuts": [{"id": "bore", "on": "rear", "kind": "hole", "size": "25 mm", "edge_distance": "35 mm",
                    "carries": "cable", "nail_plate": False}]},
)  # fmt: skip
FROM_EDGE = "room.cuts.0.edge_distance"
NOTCH = {"room.cuts.0.kind": "notch"}
RATED = changed(
    WIRED, {"cables.0.penetrates": ["rear"], "cables.0.fire_stopped": True, "room.walls": [{"id": "rear", "fire_rated": True}]}
)  # fmt: skip


def plate(kind: str, changes: dict[str, Any] | None = None, **more: Any) -> Case:
    """Return a case of the bored stud."""
    return Case("cable.plate", kind, changed(more.pop("base", BORED), changes or {}), SHEETS, **more)


def stop(kind: str, changes: dict[str, Any] | None = None, **more: Any) -> Case:
    """Return a case of the rated wall."""
    return Case("cable.fire-stop", kind, changed(more.pop("base", RATED), changes or {}), SHEETS, **more)


AIRY = changed(
    WIRED, {"cables.0.penetrates": ["rear"], "cables.0.plenum": True, "room.walls": [{"id": "rear", "plenum": True}]}
)  # fmt: skip


def air(kind: str, changes: dict[str, Any] | None = None, **more: Any) -> Case:
    """Return a case of the wall before a space that moves air."""
    return Case("cable.air-space", kind, changed(more.pop("base", AIRY), changes or {}), SHEETS, **more)


SILENT = changed(room(), {"project.codes": {"electrical": "nec2023"}})
"""A room that lists no loudspeaker, and speaks of no cable."""

CASES = [
    # That no loudspeaker is listed does not say that there are no cables.
    *(Case(f"cable.{rule}", "open", SILENT, says="cables") for rule in ("listed", "edge", "wire-loss", "fire-stop", "fill")),
    *(Case(f"cable.{rule}", "notApplicable", changed(SILENT, {"cables": "none", "raceways": "none"})) for rule in ("listed", "fill")),
    plate("pass", figure=35.0, source="as it is measured"),
    plate("fail", {FROM_EDGE: "20 mm"}, level="warning", figure=20.0, source="as it is measured"),
    plate("fail", {FROM_EDGE: "29 mm"}, figure=29.0, source="below 31.75 mm"),
    # No hole of 38 mm leaves 35 mm in a stud of 88.9 mm.
    plate("fail", {"room.cuts.0.size": "38 mm", "room.walls": [{"id": "rear", "framing": {"member_depth": "88.9 mm"}}]},
          figure=25.45, source="88.9 mm less 38 mm, halved"),
    plate("pass", {FROM_EDGE: "1-1/4 in"}, figure=31.75, source="1-1/4 in"),
    # In a notch it lies at the edge itself.
    plate("fail", NOTCH, figure=0.0, source="a notch has no wood before it", within=1e-9),
    plate("fail", {FROM_EDGE: "35 mm"}, base=under("bs7671", BORED), figure=35.0, source="below 50 mm"),
    plate("open", {FROM_EDGE: "20 mm", "room.cuts.0.nail_plate": None}, says="nail_plate"),
    plate("open", {FROM_EDGE: None}, says="edge_distance"),
    plate("open", {"room.cuts.0.carries": None}, says="carries"),
    plate("open", {"room.cuts": None}, says="cuts"),
    # In a chase of 40 mm the cable may lie 40 mm deep; elsewhere than under NFPA 70 the zones of walls tell.
    plate("pass", {"room.cuts.0.kind": "upright-chase", "room.cuts.0.size": "40 mm"}, figure=40.0, source="as it is cut"),
    plate("fail", {"room.cuts.0.kind": "upright-chase"}, figure=25.0, source="as it is cut"),
    plate("notApplicable", {"room.cuts.0.kind": "upright-chase"}, base=under("bs7671", BORED), says="zones of walls"),
    plate("notApplicable", {**NOTCH, "room.cuts.0.nail_plate": True}, says="plate"),
    plate("notApplicable", {"room.cuts.0.carries": "pipe"}),
    plate("notApplicable", base=WIRED),

    stop("pass"),
    stop("pass", {"cables.0.penetrates": ["floor"], "room.floor": {"fire_rated": True}}),
    stop("fail", {"cables.0.fire_stopped": False}, level="warning"),
    stop("open", {"cables.0.fire_stopped": None}, says="fire_stopped"),
    stop("open", {"cables.0.penetrates": None}, says="penetrates"),
    stop("open", {"room.walls.0.fire_rated": None}, says="fire_rated"),
    stop("open", {"room.walls": None}, says="walls[rear]"),
    stop("open", base=UNSAID, says="cables"),
    stop("notApplicable", {"room.walls.0.fire_rated": False}),
    stop("notApplicable", {"cables.0.penetrates": []}),
    stop("notApplicable", base=BARE),

    air("pass"),
    air("pass", {"cables.0.penetrates": ["floor"], "room.floor": {"plenum": True}}),
    air("fail", {"cables.0.plenum": False}, level="warning", says="one of the two is wrong"),
    air("open", {"cables.0.plenum": None}, says="plenum"),
    air("open", {"cables.0.penetrates": None}, says="penetrates"),
    air("open", {"room.walls.0.plenum": None}, says="plenum"),
    air("open", {"room.walls": None}, says="walls[rear]"),
    air("open", base=UNSAID, says="cables"),
    air("notApplicable", {"room.walls.0.plenum": False}, says="no air"),
    air("notApplicable", {"cables.0.penetrates": []}),
    air("notApplicable", base=BARE),
]  # fmt: skip
EDGES = [Edge("cable.plate", BORED, FROM_EDGE, 5.0, 60.0, 1, unit="mm", scale=0.001, products=SHEETS)]
