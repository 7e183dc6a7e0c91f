"""Cases of the chapter mount: acoustic panels."""

from __future__ import annotations

from typing import TYPE_CHECKING

from roomlint.testing import Case, changed

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
            "mounting": {"fixing": {"fastener": "lag-screw", "into": "joist"}},
        }
    ],
}
T = "treatments.0"
BARE = changed(ROOM, {"treatments": None})
FOAM = {f"{T}.material": "open-cell-foam", f"{T}.thermal_barrier": False}


def on(rule: str, kind: str, changes: Mapping[str, object] | None = None, **more: object) -> Case:
    """Return a case of the panel above with some keys changed."""
    return Case(rule, kind, changed(ROOM, changes or {}), **more)  # type: ignore[arg-type]


CASES: list[Case] = [
    *(
        Case(rule, "notApplicable", BARE)
        for rule in ("mount.panel-flame-spread", "mount.panel-smoke", "mount.foam-barrier", "mount.panel-overhead")
    ),
    on("mount.panel-flame-spread", "pass", figure=25.0, source="ASTM E84 class A ends at 25"),
    on("mount.panel-flame-spread", "fail", {f"{T}.flame_spread": 250}, level="error"),
    on("mount.panel-flame-spread", "open", {f"{T}.flame_spread": None}),
    on("mount.panel-smoke", "pass", figure=50.0, source="the index as written"),
    on("mount.panel-smoke", "fail", {f"{T}.smoke_developed": 500}, level="error"),
    on("mount.panel-smoke", "open", {f"{T}.smoke_developed": None}),
    on("mount.foam-barrier", "notApplicable"),
    on("mount.foam-barrier", "pass", {**FOAM, f"{T}.thermal_barrier": True}),
    on("mount.foam-barrier", "pass", {**FOAM, f"{T}.approval": {"document": "report 12"}}, says="report 12"),
    on("mount.foam-barrier", "fail", FOAM, level="error"),
    on("mount.foam-barrier", "open", {f"{T}.material": None}),
    on("mount.panel-overhead", "pass"),
    on("mount.panel-overhead", "fail", {f"{T}.mounting.fixing.fastener": "adhesive"}, level="error"),
    on("mount.panel-overhead", "fail", {f"{T}.mounting.fixing.into": "board"}, level="error"),
    on(
        "mount.panel-overhead",
        "review",
        {
            f"{T}.mounting.fixing.into": "board",
            f"{T}.mounting.fixing.engineer": {"by": "A. N. Engineer", "document": "sheet 3"},
        },
    ),
    on("mount.panel-overhead", "open", {f"{T}.mounting.fixing": None}),
]
