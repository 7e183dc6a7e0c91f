"""Cases of acoustic panels as linings, and of holes for flush loudspeakers."""

from __future__ import annotations

from typing import TYPE_CHECKING

from mount_rooms import TOP, above, on

from roomlint.edges import Edge
from roomlint.testing import Case, Never, changed

if TYPE_CHECKING:
    from collections.abc import Mapping

ROOM = {
    "roomlint": 1,
    "room": {"size": {"width": "4 m", "length": "5 m"}, "ceiling": {"shape": "flat", "height": "2.4 m"}},
    "treatments": [
        {
            "id": "cloud",
            "kind": "absorber",
            "on": "ceiling",
            "material": "mineral-wool",
            "flame_spread": 25,
            "smoke_developed": 50,
        }
    ],
}
T = "treatments.0"
BARE = changed(ROOM, {"treatments": "none"})
SUNK = {"roomlint_product": 1, "id": "sunk", "kind": "loudspeaker", "loudspeaker": {"placement": ["in-wall"]}}
IN_WALL = changed(BARE, {
    "room.walls": [{"id": "front", "fire_rated": False, "plenum": True}],
    "loudspeakers": [{"id": "left", "product": "sunk", "mounting": {"on": "front"}}],
})  # fmt: skip
SOFFIT = changed(ROOM, {"room.obstacles": [
    {"id": "soffit", "kind": "soffit", "from_left": "0 m", "from_front": "0 m", "width": "0.4 m", "depth": "5 m",
     "bottom": "2.1 m", "fire_blocking": "blocked"},
]})  # fmt: skip
BLOCKING = "room.obstacles.0.fire_blocking"
FOAM = {f"{T}.material": "open-cell-foam", f"{T}.thermal_barrier": False}


def panel(rule: str, kind: str, changes: Mapping[str, object] | None = None, **more: object) -> Case:
    """Return a case of the panel above with some keys changed."""
    return Case(rule, kind, changed(ROOM, changes or {}), **more)  # type: ignore[arg-type]


CASES: list[Case | Never] = [
    *(Case(rule, "notApplicable", BARE) for rule in ("mount.panel-flame-spread", "mount.panel-smoke",
                                                      "mount.foam-barrier")),
    panel("mount.panel-flame-spread", "pass", figure=25.0, source="ASTM E84 class A ends at 25"),
    panel("mount.panel-flame-spread", "fail", {f"{T}.flame_spread": 250}, level="error"),
    panel("mount.panel-flame-spread", "open", {f"{T}.flame_spread": None}),
    panel("mount.panel-smoke", "pass", figure=50.0, source="the index as written"),
    panel("mount.panel-smoke", "fail", {f"{T}.smoke_developed": 500}, level="error"),
    panel("mount.panel-smoke", "open", {f"{T}.smoke_developed": None}),
    panel("mount.foam-barrier", "notApplicable", says="mineral wool"),
    panel("mount.foam-barrier", "pass", {**FOAM, f"{T}.thermal_barrier": True}),
    panel("mount.foam-barrier", "pass", {**FOAM, f"{T}.approval": {"document": "report 12"}}, says="report 12"),
    panel("mount.foam-barrier", "fail", FOAM, level="error"),
    panel("mount.foam-barrier", "fail", {**FOAM, f"{T}.approval": "none"}, level="error"),
    panel("mount.foam-barrier", "open", {f"{T}.material": None}),
    on("mount.rated-surface", "notApplicable"),
    above("mount.rated-surface", "pass", subject=TOP),
    Case("mount.rated-surface", "review", IN_WALL, (SUNK,), says="plenum"),
    above("mount.rated-surface", "review", {"room.ceiling.fire_rated": True}, subject=TOP),
    above("mount.rated-surface", "open", {"room.ceiling.plenum": None}, subject=TOP),
    Never("mount.rated-surface", "fail", "whether an enclosure keeps the rating is for a person: it is asked, not failed"),
    Case("mount.fire-blocking", "pass", SOFFIT),
    Case("mount.fire-blocking", "pass", changed(SOFFIT, {BLOCKING: "none"})),
    Case("mount.fire-blocking", "fail", changed(SOFFIT, {BLOCKING: "open"}), level="warning"),
    Case("mount.fire-blocking", "open", changed(SOFFIT, {BLOCKING: None}), says="fire_blocking"),
    Case("mount.fire-blocking", "open", changed(SOFFIT, {"room.obstacles": None}), says="obstacles"),
    Case("mount.fire-blocking", "notApplicable", changed(SOFFIT, {"room.obstacles": "none"})),
    Case("mount.fire-blocking", "notApplicable", changed(SOFFIT, {"room.obstacles.0.kind": "beam"})),
]  # fmt: skip

EDGES = [
    Edge("mount.panel-flame-spread", ROOM, f"{T}.flame_spread", 0.0, 490.0, 1, unit=""),
    Edge("mount.panel-smoke", ROOM, f"{T}.smoke_developed", 0.0, 990.0, 1, unit=""),
]
