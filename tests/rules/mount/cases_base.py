"""Cases of what the fasteners go into."""

from __future__ import annotations

from mount_rooms import BARE, FIXING, FLOOR, SHEETS, STUDS, TOP, F, above, on

from roomlint.edges import Edge
from roomlint.testing import Case, Never

STEEL = {**STUDS, "kind": "steel-stud"}
LIGHT = {
    "treatments": [
        {
            "id": "tile",
            "kind": "absorber",
            "on": "front",
            "mass": "2 kg",
            "mounting": {"on": "front", "fixing": {"fastener": "adhesive", "into": "board"}},
        }
    ]
}
TILE = "treatment/tile"

CASES: list[Case | Never] = [
    *(
        Case(rule, "notApplicable", FLOOR, products=SHEETS)
        for rule in (
            "mount.wall-kind", "mount.substrate", "mount.fastener-kind", "mount.fastener-base", "mount.fastener-size",
            "mount.end-grain",
        )
    ),
    Case("mount.wall-kind", "notApplicable", BARE, products=SHEETS, says="device, rack or panel"),
    on("mount.wall-kind", "pass"),
    on("mount.wall-kind", "fail", {"room.walls.0.framing": STEEL}, level="error", says="the front wall is steel stud"),
    on("mount.wall-kind", "fail", {"room.walls.0.framing.kind": "masonry"}, level="error", says="one of the two"),
    on("mount.wall-kind", "fail", {f"{FIXING}.into": "concrete"}, level="error"),
    # The shells of a hollow block are no masonry to an anchor.
    on("mount.wall-kind", "fail", {"room.walls.0.framing.kind": "hollow-block", f"{FIXING}.into": "masonry"},
       says="the front wall is hollow block"),
    on("mount.wall-kind", "pass", {"room.walls.0.framing.kind": "hollow-block", f"{FIXING}.into": "hollow-block"}),
    on("mount.wall-kind", "fail", {f"{FIXING}.into": "joist"}, level="error", says="hangs on the front wall"),
    # What stands in a wall is no joist, whoever made it.
    *(on("mount.wall-kind", "fail", {f"{FIXING}.into": "joist", "room.walls.0.framing.kind": kind}, says="it hangs on")
      for kind in ("joist", "truss", "engineered", "unknown")),
    on("mount.wall-kind", "fail", {"room.walls.0.framing.kind": "joist"}, says="the front wall is joist"),
    above("mount.wall-kind", "pass"),
    *(above("mount.wall-kind", "fail", {f"{F}.into": "stud", "room.ceiling.framing.kind": kind}, level="error",
            says="is overhead") for kind in ("joist", "truss", "wood-stud")),
    above("mount.wall-kind", "fail", {"room.ceiling.framing.kind": "wood-stud"}, says="the ceiling is wood stud"),
    on("mount.wall-kind", "review", {"room.walls.0.framing.kind": "unknown"}, says="prove it before drilling"),
    on("mount.wall-kind", "open", {"room.walls.0.framing.kind": None}, says="framing.kind"),
    on("mount.wall-kind", "open", {FIXING: None}, says="fixing"),
    on("mount.wall-kind", "open", {"room.walls": None}, says="walls[front]"),
    on("mount.substrate", "pass"),
    *(on("mount.substrate", "fail", {f"{FIXING}.into": into}, level="error")
      for into in ("board", "plaster", "tile", "glass", "grid")),
    *(on("mount.substrate", "review", {f"{FIXING}.into": into, "room.walls.0.framing.kind": into},
         says="an engineer decides") for into in ("furring", "hat-channel", "brick-veneer")),
    on("mount.substrate", "open", {f"{FIXING}.into": None}, says="into"),
    above("mount.substrate", "notApplicable", subject=TOP, says="judged by its mass"),
    above("mount.substrate", "fail", {"loudspeakers.0.mounting.fixing.fastener": "drywall-screw"}, subject=TOP),
    on("mount.substrate", "notApplicable", LIGHT, subject=TILE),
    on("mount.fastener-kind", "pass"),
    *(on("mount.fastener-kind", "fail", {f"{FIXING}.fastener": fastener}, level="error")
      for fastener in ("nail", "drywall-screw", "adhesive")),
    on("mount.fastener-kind", "open", {f"{FIXING}.fastener": None}, says="fastener"),
    on("mount.fastener-kind", "pass", LIGHT, subject=TILE, says="light panel"),
    on("mount.fastener-kind", "fail", {**LIGHT, "treatments.0.mass": "30 kg"}, subject=TILE, level="error"),
    # 2.2 kg that may be 2.5 kg is not light.
    on("mount.fastener-kind", "fail", {**LIGHT, "treatments.0.mass": "2.2 kg ± 0.3 kg"}, subject=TILE),
    on("mount.fastener-kind", "fail", {**LIGHT, "treatments.0.on": "ceiling", "treatments.0.mounting.on": "ceiling"}, subject=TILE),
    on("mount.fastener-kind", "open", {**LIGHT, "treatments.0.mass": None}, subject=TILE, says="mass"),
    on("mount.fastener-base", "pass"),
    *(on("mount.fastener-base", "fail", {f"{FIXING}.fastener": fastener}, level="error", says="does not hold in studs")
      for fastener in ("strap", "toggle", "expansion-anchor", "steel-screw", "clamp")),
    on("mount.fastener-base", "fail", {f"{FIXING}.into": "steel-stud", "room.walls.0.framing": STEEL}),
    on("mount.fastener-base", "pass", {f"{FIXING}.into": "steel-stud", f"{FIXING}.fastener": "toggle",
                                       "room.walls.0.framing": STEEL}),
    on("mount.fastener-base", "fail", {f"{FIXING}.into": "concrete", "room.walls.0.framing": {"kind": "concrete"}},
       says="lag screw"),
    on("mount.fastener-base", "open", {f"{FIXING}.fastener": None}, says="fastener"),
    on("mount.fastener-base", "notApplicable", {f"{FIXING}.into": "glass"}),
    on("mount.fastener-size", "pass", figure=1.25, source="5/16 in over 1/4 in"),
    on("mount.fastener-size", "fail", {f"{FIXING}.fastener": "through-bolt", f"{FIXING}.diameter": "3 mm"},
       level="error"),
    on("mount.fastener-size", "fail", {f"{FIXING}.diameter": "6.4 mm ± 0.1 mm"}),
    on("mount.fastener-size", "open", {f"{FIXING}.diameter": None}, says="diameter"),
    on("mount.fastener-size", "notApplicable", {f"{FIXING}.fastener": "structural-screw"}),
    on("mount.end-grain", "pass"),
    on("mount.end-grain", "pass", {f"{FIXING}.grain": "end"}),
    on("mount.end-grain", "fail", {f"{FIXING}.fastener": "wood-screw", f"{FIXING}.grain": "end"}, level="error"),
    on("mount.end-grain", "open", {f"{FIXING}.grain": None}, says="grain"),
]  # fmt: skip

EDGES = [
    Edge("mount.fastener-size", on("x", "y").room, f"{FIXING}.diameter", 3.9, 10.0, 1, unit="mm", scale=1e-3,
         products=SHEETS),
]  # fmt: skip
