"""Cases of the chapter mount: overhead, steel, masonry, free-standing, and what a person decides."""

from __future__ import annotations

from typing import TYPE_CHECKING

from roomlint.testing import Case, Never, changed

if TYPE_CHECKING:
    from collections.abc import Mapping

PROJECTOR = {
    "roomlint_product": 1,
    "id": "beamer",
    "kind": "projector",
    "mass": "12 kg",
    "depth": "0.4 m",
    "picture": {"pattern": "200x200", "screw": "M4"},
}
POLE = {
    "roomlint_product": 1,
    "id": "pole",
    "kind": "mount",
    "mass": "3 kg",
    "mount": {
        "motion": "pole",
        "rated_mass": "30 kg",
        "plate_thickness": "3 mm",
        "breaking_load": "3000 N",
        "patterns": ["200x200"],
        "screws": ["M4"],
    },
}
BOX = {
    "roomlint_product": 1,
    "id": "box",
    "kind": "loudspeaker",
    "mass": "2 kg",
    "height": "1 m",
    "loudspeaker": {
        "placement": ["floor"],
        "base_width": "0.3 m",
        "base_depth": "0.35 m",
        "centre_of_gravity": "0.5 m",
    },
}
DISC = {
    "roomlint_product": 1,
    "id": "disc",
    "kind": "loudspeaker",
    "mass": "3 kg",
    "loudspeaker": {"placement": ["in-ceiling"]},
}
SHEETS = (PROJECTOR, POLE, BOX, DISC)
# A 12 kg projector on a 3 kg pole: 15 kg, 147.09975 N, on a joist at 16 in; the shorter side of the room is 3.6 m.
ROOM = {
    "roomlint": 1,
    "project": {"children": True, "codes": {"seismic_category": "d"}},
    "room": {
        "size": {"width": "3.6 m", "length": "5 m"},
        "ceiling": {
            "shape": "flat",
            "height": "2.4 m",
            "framing": {"kind": "joist", "spacing": "406.4 mm", "species": "spruce-pine-fir"},
            "board": {"material": "gypsum", "layers": 1, "thickness": "12.7 mm"},
            "fire_rated": False,
            "plenum": False,
        },
        "walls": [
            {
                "id": "front",
                "framing": {"kind": "steel-stud", "steel_thickness": "0.0346 in"},
                "board": {"material": "gypsum", "layers": 1, "thickness": "12.7 mm"},
            }
        ],
    },
    "picture": {
        "kind": "projection",
        "projector": {
            "id": "beam",
            "product": "beamer",
            "mounting": {
                "on": "ceiling",
                "product": "pole",
                "drop": "0.6 m",
                "sling_angle": "60 deg",
                "breaking_load": "3000 N",
                "secondary": {"kind": "wire-rope", "attached_to": "joist"},
                "secondary_fall": "0.1 m",
                "fixing": {
                    "fastener": "lag-screw",
                    "into": "joist",
                    "diameter": "5/16 in",
                    "length": "3 in",
                    "thread": "2 in",
                    "count": 4,
                    "top_count": 2,
                    "row_spacing": "0.12 m",
                    "engineer": {"by": "A. N. Engineer", "document": "sheet 3"},
                },
            },
        },
    },
    "loudspeakers": [
        {"id": "left", "product": "box", "mounting": {"on": "floor", "carpet": False}},
        {"id": "top", "product": "disc", "mounting": {"on": "ceiling"}},
    ],
}
M = "picture.projector.mounting"
F = f"{M}.fixing"
BEAM, LEFT, TOP = "projector/beam", "loudspeaker/left", "loudspeaker/top"
BARE = changed(ROOM, {"picture": None, "loudspeakers": None})


def on(rule: str, kind: str, changes: Mapping[str, object] | None = None, **more: object) -> Case:
    """Return a case of the room above with some keys changed."""
    sheets = more.pop("products", SHEETS)
    return Case(rule, kind, changed(ROOM, changes or {}), products=sheets, **more)  # type: ignore[arg-type]


# The same projector on the front wall, into steel studs by #10 screws.
STEEL = {
    M: {
        "on": "front",
        "product": "pole",
        "extension": "0.1 m",
        "fixing": {
            "fastener": "steel-screw",
            "into": "steel-stud",
            "diameter": "0.19 in",
            "count": 4,
            "top_count": 2,
            "row_spacing": "0.3 m",
            "backing": "plate",
            "engineer": {"by": "A. N. Engineer", "document": "sheet 3"},
        },
    }
}


BARE_RULES = (
    "mount.steel-stud-backing", "mount.steel-stud-pull-out", "mount.anchor-approval", "mount.engineer",
    "mount.overhead-screws", "mount.design-factor", "mount.secondary", "mount.secondary-fall", "mount.sling-angle",
    "mount.electrical-box", "mount.grid-ceiling", "mount.joist-load", "mount.seismic", "mount.tip-angle",
    "mount.furniture-strap", "mount.rated-surface", "mount.lift-mass",
)  # fmt: skip
SHELF = {"loudspeakers.0.mounting": {"on": "furniture", "strap": {"kind": "strap", "attached_to": "stud"}}}

CASES: list[Case | Never] = [
    *(Case(rule, "notApplicable", BARE, products=SHEETS) for rule in BARE_RULES),
    on("mount.steel-stud-backing", "pass", STEEL, subject=BEAM),
    on("mount.steel-stud-backing", "fail", {**STEEL, f"{F}.backing": None}, subject=BEAM, level="error"),
    on("mount.steel-stud-backing", "open", STEEL, products=(PROJECTOR, changed(POLE, {"mount.motion": None}), BOX, DISC)),
    on("mount.steel-stud-backing", "fail", {**STEEL, f"{F}.engineer": None}, level="warning",
       products=(PROJECTOR, changed(POLE, {"mount.motion": "tilt"}), BOX, DISC)),
    # 147.09975 x (0.1 + 0.2) / (2 x 0.3) = 73.5499 N; allowable 0.85 x 0.87884 x 4.826 x 310 / 3 = 372.52 N
    on("mount.steel-stud-pull-out", "pass", STEEL, figure=0.197437, source="AISI S100 J4 from memory, worked by hand"),
    on("mount.steel-stud-pull-out", "fail", {**STEEL, f"{M}.extension": "1.5 m"}, level="warning"),
    on("mount.steel-stud-pull-out", "open", {**STEEL, f"{F}.diameter": None}, says="diameter"),
    on("mount.anchor-approval", "pass", {f"{F}.into": "concrete"}, says="sheet 3"),
    on("mount.anchor-approval", "fail", {f"{F}.into": "concrete", f"{F}.engineer": None}, level="error"),
    on("mount.anchor-approval", "open", {f"{F}.into": None}, says="into"),
    on("mount.engineer", "pass"),
    on("mount.engineer", "fail", {"room.ceiling.framing.kind": "truss", f"{F}.engineer": None}, says="truss"),
    on("mount.engineer", "fail", {f"{M}.accessories": "40 kg", f"{F}.engineer": None}, says="55"),
    on("mount.engineer", "open", {"room.ceiling.framing.kind": None}, says="framing"),
    on("mount.overhead-screws", "pass", subject=BEAM),
    on("mount.overhead-screws", "fail", {f"{M}.secondary": None}, subject=BEAM, level="warning"),
    on("mount.overhead-screws", "open", {f"{F}.fastener": None}, subject=BEAM),
    # Two legs at 60 degrees carry 147.09975 / (2 x 0.8660254) = 84.9281 N each; 3000 / 84.9281 = 35.324
    on("mount.design-factor", "pass", figure=35.324, source="sling statics worked by hand"),
    # 1000 / 147.09975 = 6.798 on one line
    on("mount.design-factor", "fail", {f"{M}.sling_angle": None, f"{M}.breaking_load": "1000 N"}, figure=6.798,
       level="warning", source="divided by hand"),
    on("mount.design-factor", "fail", {f"{M}.breaking_load": "300 N"}, level="error"),
    on("mount.design-factor", "review", {f"{M}.sling_angle": "2 deg"}, says="rigging engineer"),
    on("mount.design-factor", "open", {f"{M}.breaking_load": None},
       products=(PROJECTOR, changed(POLE, {"mount.breaking_load": None}), BOX, DISC)),
    on("mount.secondary", "pass", subject=BEAM),
    on("mount.secondary", "fail", {f"{M}.secondary": None}, subject=BEAM),
    Never("mount.secondary", "open", "a secondary support that is not named is what the rule finds"),
    on("mount.secondary-fall", "pass", figure=100.0, source="the length as written"),
    on("mount.secondary-fall", "fail", {f"{M}.secondary_fall": "0.3 m"}),
    on("mount.secondary-fall", "open", {f"{M}.secondary_fall": None}),
    on("mount.sling-angle", "pass", figure=60.0, source="the angle as written"),
    on("mount.sling-angle", "fail", {f"{M}.sling_angle": "40 deg"}, level="warning"),
    on("mount.sling-angle", "fail", {f"{M}.sling_angle": "20 deg"}, level="error"),
    Never("mount.sling-angle", "open", "only a mounting that gives its sling angle is a sling"),
    on("mount.electrical-box", "pass", {"loudspeakers.0.mounting.on": "electrical-box"}, figure=2.0,
       source="the mass as written"),
    on("mount.electrical-box", "fail", {f"{M}.on": "electrical-box"}, level="error"),
    on("mount.electrical-box", "pass", {f"{M}.on": "electrical-box"},
       products=(PROJECTOR, changed(POLE, {"mount.listed": "listing 1"}), BOX, DISC)),
    on("mount.electrical-box", "open", {"loudspeakers.0.mounting.on": "electrical-box"},
       products=(PROJECTOR, POLE, changed(BOX, {"mass": None}), DISC), says="mass"),
    on("mount.grid-ceiling", "pass", {f"{M}.on": "grid-ceiling"}, figure=15.0, source="the masses added by hand"),
    on("mount.grid-ceiling", "fail", {f"{M}.on": "grid-ceiling", f"{M}.secondary": None}),
    on("mount.grid-ceiling", "fail", {f"{M}.on": "grid-ceiling", f"{M}.accessories": "20 kg"}),
    on("mount.grid-ceiling", "open", {f"{M}.on": "grid-ceiling"},
       products=(changed(PROJECTOR, {"mass": None}), POLE, BOX, DISC)),
    # 2 x 147.09975 / 3.6 = 81.722 N/m, over 0.4064 m = 201.09 Pa
    on("mount.joist-load", "fail", figure=201.09, level="note", source="statics worked by hand"),
    on("mount.joist-load", "fail", {f"{M}.accessories": "15 kg"}, level="warning"),
    on("mount.joist-load", "pass", products=(changed(PROJECTOR, {"mass": "3 kg"}), POLE, BOX, DISC)),
    on("mount.joist-load", "open", {"room.ceiling.framing.spacing": None}, says="spacing"),
    on("mount.seismic", "pass", says="sheet 3"),
    on("mount.seismic", "pass", {"project.codes.seismic_category": "b"}, says="below"),
    on("mount.seismic", "fail", {f"{F}.engineer": None}),
    on("mount.seismic", "open", {"project.codes": None}, says="seismic_category"),
    on("mount.seismic", "notApplicable", {"project.region": "eu"}),
    # Half a base of 0.3 m beside a centre of gravity at 0.5 m.
    on("mount.tip-angle", "pass", figure=16.69924, source="arctangent worked by hand"),
    on("mount.tip-angle", "fail", products=(PROJECTOR, POLE, changed(BOX, {"loudspeaker.centre_of_gravity": "0.9 m"}), DISC)),
    on("mount.tip-angle", "open", {"loudspeakers.0.mounting.carpet": None}),
    on("mount.tip-angle", "notApplicable", {"loudspeakers.0.mounting.strap": {"kind": "strap", "attached_to": "stud"}}),
    on("mount.furniture-strap", "pass", SHELF),
    on("mount.furniture-strap", "pass", {"loudspeakers.0.mounting": {"on": "furniture"}, "project.children": False}),
    on("mount.furniture-strap", "fail", {"loudspeakers.0.mounting": {"on": "furniture"}}),
    on("mount.furniture-strap", "open", {**SHELF, "project.children": None}, says="children"),
    on("mount.rated-surface", "pass", subject=TOP),
    on("mount.rated-surface", "review", {"room.ceiling.fire_rated": True}, subject=TOP),
    on("mount.rated-surface", "open", {"room.ceiling.plenum": None}, subject=TOP),
    Never("mount.rated-surface", "fail", "whether an enclosure keeps the rating is for a person: it is asked, not failed"),
    on("mount.lift-mass", "pass", figure=12.0, source="the mass as written"),
    on("mount.lift-mass", "fail", products=(changed(PROJECTOR, {"mass": "30 kg"}), POLE, BOX, DISC), level="note"),
    on("mount.lift-mass", "open", products=(changed(PROJECTOR, {"mass": None}), POLE, BOX, DISC)),
]  # fmt: skip
