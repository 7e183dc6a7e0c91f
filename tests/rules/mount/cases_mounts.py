"""Cases of mounts and stands."""

from __future__ import annotations

from mount_rooms import ABOVE, ARM, BARE, FIXING, FLOOR, MOUNTING, PANEL, SHEETS, above, arm, on

from roomlint.edges import Edge
from roomlint.testing import Case, Never, changed

ONE_TOP = {f"{FIXING}.count": 2, f"{FIXING}.top_count": 1}
STAND = {
    "roomlint_product": 1,
    "id": "leg",
    "kind": "stand",
    "mass": "8 kg",
    "stand": {"base_width": "0.3 m", "base_depth": "0.4 m", "centre_of_gravity": "0.2 m", "rated_mass": "28 kg"},
}
ON_STAND = changed(ABOVE, {"picture": {"kind": "display", "product": "panel", "mounting": {"on": "stand", "stand": "leg"}},
                           "loudspeakers": None})  # fmt: skip
RACK = {"electronics": {"racks": [{"id": "rack", "mass": "60 kg", "depth": "0.5 m", "mounting": {"on": "front"}}]}}
SCREEN = changed(PANEL, {"kind": "screen"})

CASES: list[Case | Never] = [
    Case("mount.held", "notApplicable", BARE, products=SHEETS),
    on("mount.held", "pass"),
    on("mount.held", "open", {MOUNTING: None}, says="mounting"),
    on("mount.held", "open", {FIXING: None}, says="fixing"),
    on("mount.held", "open", {MOUNTING: {"on": "stand"}}, says="stand"),
    # A wall rack and a panel must be held as well.
    on("mount.held", "open", RACK, subject="rack/rack", says="fixing"),
    on("mount.held", "open", {"treatments": [{"id": "wing", "kind": "diffuser"}]}, subject="treatment/wing"),
    Never("mount.held", "fail", "the question is only whether it is written down: an answer passes, none is open"),
    Case("mount.rated-mass", "notApplicable", FLOOR, products=SHEETS),
    # 50 kg over 35 kg.
    on("mount.rated-mass", "pass", figure=50 / 35, source="the two masses of the sheets, divided by hand"),
    on("mount.rated-mass", "fail", products=arm(rated_mass="30 kg"), level="error"),
    on("mount.rated-mass", "fail", {f"{MOUNTING}.accessories": "8 kg"}, level="note"),
    # 35 kg on a mount for 35.5 kg, which may be 1 kg more or less.
    on("mount.rated-mass", "fail", products=arm(rated_mass="35.5 kg ± 1 kg"), level="error"),
    on("mount.rated-mass", "open", products=arm(rated_mass=None)),
    on("mount.rated-mass", "open", {f"{MOUNTING}.product": None}, says="product"),
    Case(
        "mount.rated-mass", "fail", ON_STAND, products=(PANEL, STAND), level="error", figure=28 / 35, source="by hand"
    ),
    Case("mount.hole-pattern", "notApplicable", FLOOR, products=SHEETS),
    on("mount.hole-pattern", "notApplicable", products=(SCREEN, ARM), says="screen"),
    on("mount.hole-pattern", "pass"),
    on("mount.hole-pattern", "fail", products=arm(patterns=["200x200"]), level="error"),
    on("mount.hole-pattern", "fail", products=arm(screws=["M6"]), level="warning"),
    on("mount.hole-pattern", "open", products=arm(patterns=None)),
    Case("mount.stud-span", "notApplicable", FLOOR, products=SHEETS),
    # 406.4 / 406.4: the fasteners stand in both studs.
    on("mount.stud-span", "pass", figure=1.0, source="distance of the columns over 16 in, divided by hand"),
    on("mount.stud-span", "fail", {f"{FIXING}.column_spacing": None}, products=arm(plate_holes="60 mm")),
    on("mount.stud-span", "fail", {f"{FIXING}.column_spacing": "0 mm"}),
    # A plate of 410 mm with one screw on top and one below is in one stud.
    on("mount.stud-span", "fail", ONE_TOP, products=arm(plate_holes="410 mm"), says="one screw in its top row"),
    on("mount.stud-span", "open", {"room.walls.0.framing.spacing": None}, says="spacing"),
    on("mount.stud-span", "open", {f"{FIXING}.column_spacing": None}, says="column_spacing"),
    on("mount.stud-span", "open", products=arm(motion=None), says="motion"),
    on("mount.stud-span", "notApplicable", {f"{FIXING}.into": "blocking"}),
    on("mount.stud-span", "notApplicable", products=arm(motion="tilt"), says="no arm"),
    Case("mount.lift-mass", "notApplicable", FLOOR, products=SHEETS),
    above("mount.lift-mass", "pass", figure=12.0, source="the mass as written"),
    Case(
        "mount.lift-mass",
        "fail",
        changed(
            FLOOR,
            {
                "picture": "none",
                "electronics": {"racks": [{"id": "rack", "mass": "60 kg", "mounting": {"on": "front"}}]},
            },
        ),
        level="note",
        figure=60.0,
        source="as written",
        subject="rack/rack",
    ),
    on("mount.lift-mass", "fail", level="note"),
    on("mount.lift-mass", "open", products=(changed(PANEL, {"mass": None}), ARM)),
]

EDGES = [
    Edge("mount.rated-mass", on("x", "y", {f"{MOUNTING}.accessories": "1 kg"}).room, f"{MOUNTING}.accessories",
         0.1, 40.0, 2, unit="kg", products=SHEETS),
    Edge("mount.stud-span", on("x", "y").room, f"{FIXING}.column_spacing", 300.0, 415.0, 1, unit="mm", scale=1e-3,
         products=SHEETS),
    Edge("mount.lift-mass", on("x", "y", {**RACK, "picture": None}).room, "electronics.racks.0.mass",
         10.0, 40.0, 1, unit="kg"),
]  # fmt: skip
