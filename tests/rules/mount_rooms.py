"""Rooms that the cases of the chapter mount share."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from roomlint.testing import Case, changed

if TYPE_CHECKING:
    from collections.abc import Mapping

# Worked by hand (NDS-2015 12.2 and 12.4.1, AWC TR-12): 35 kg display on a 10 kg arm 0.46 m long, centre of gravity
# 0.50 m from the wall, rows 0.30 m apart, two of four 5/16 x 3 in lags on top, spruce-pine-fir, 1/8 in steel plate,
# 1/2 in board. Pull 367.749 N, shear 110.325 N; allowable 1485.90 N and 81.5543 lbf.
STUDS = {
    "kind": "wood-stud",
    "spacing": "406.4 mm",
    "member_width": "38.1 mm",
    "member_depth": "88.9 mm",
    "species": "spruce-pine-fir",
}
BOARD = {"material": "gypsum", "layers": 1, "thickness": "12.7 mm"}
LAGS = {
    "fastener": "lag-screw",
    "into": "stud",
    "diameter": "5/16 in",
    "length": "3 in",
    "thread": "2 in",
    "count": 4,
    "top_count": 2,
    "column_spacing": "406.4 mm",
    "edge_offset": "2 mm",
    "grain": "side",
    "wet": False,
    "attic": False,
}
ROOM: dict[str, Any] = {
    "roomlint": 1,
    "survey": {"tolerance": "0 mm"},
    "project": {"region": "us", "children": True, "codes": {"seismic_category": "d"}},
    "room": {
        "size": {"width": "4 m", "length": "5 m"},
        "ceiling": {"shape": "flat", "height": "2.4 m"},
        "walls": [{"id": "front", "framing": STUDS, "board": BOARD}],
    },
    "picture": {
        "kind": "display",
        "product": "panel",
        "mounting": {"on": "front", "product": "arm", "fixing": LAGS},
    },
}
PANEL: dict[str, Any] = {
    "roomlint_product": 1,
    "id": "panel",
    "kind": "display",
    "mass": "35 kg",
    "depth": "80 mm",
    "height": "0.8 m",
    "picture": {"pattern": "400x400", "screw": "M8"},
}
ARM: dict[str, Any] = {
    "roomlint_product": 1,
    "id": "arm",
    "kind": "mount",
    "mass": "10 kg",
    "mount": {
        "motion": "articulated",
        "rated_mass": "50 kg",
        "reach": "0.46 m",
        "side_reach": "0.4 m",
        "row_spacing": "0.3 m",
        "plate_thickness": "1/8 in",
        "plate_holes": "420 mm",
        "patterns": ["400x400"],
        "screws": ["M8"],
    },
}
SHEETS = (PANEL, ARM)
FIXING, MOUNTING, HERE = "picture.mounting.fixing", "picture.mounting", "picture/picture"
BARE = changed(ROOM, {
    "picture": "none", "loudspeakers": "none", "subwoofers": "none", "treatments": "none", "electronics.racks": "none",
})  # fmt: skip
FLOOR = changed(ROOM, {MOUNTING: {"on": "floor"}})
HAND = "NDS-2015 12.2 and 12.4.1 with AWC TR-12, worked by hand in pounds and inches"
STRONG = {f"{FIXING}.length": "3.5 in", f"{FIXING}.thread": "3 in", f"{FIXING}.diameter": "3/8 in"}
NO_BOARD = {"room.walls.0.board": {"material": "none"}}


def on(rule: str, kind: str, changes: Mapping[str, object] | None = None, **more: Any) -> Case:
    """Return a case of the display above with some keys changed."""
    sheets = more.pop("products", SHEETS)
    return Case(rule, kind, changed(ROOM, changes or {}), products=sheets, **more)


def arm(**changes: object) -> tuple[Mapping[str, Any], ...]:
    """Return the sheets with the mount's data changed; None takes a key out."""
    return (PANEL, changed(ARM, {f"mount.{key}": value for key, value in changes.items()}))


# A 12 kg projector on a 3 kg pole: 15 kg, 147.09975 N, on a joist at 16 in that spans 3.6 m.
PROJECTOR: dict[str, Any] = {
    "roomlint_product": 1,
    "id": "beamer",
    "kind": "projector",
    "mass": "12 kg",
    "depth": "0.4 m",
    "picture": {"pattern": "200x200", "screw": "M4"},
}
POLE: dict[str, Any] = {
    "roomlint_product": 1,
    "id": "pole",
    "kind": "mount",
    "mass": "3 kg",
    "mount": {
        "motion": "pole",
        "rated_mass": "30 kg",
        "reach": "60 mm",
        "tilt": "0 deg",
        "plate_thickness": "3 mm",
        "breaking_load": "3000 N",
        "patterns": ["200x200"],
        "screws": ["M4"],
    },
}
DISC: dict[str, Any] = {
    "roomlint_product": 1,
    "id": "disc",
    "kind": "loudspeaker",
    "mass": "3 kg",
    "depth": "0.1 m",
    "loudspeaker": {"placement": ["in-ceiling"]},
}
ABOVE_SHEETS = (PROJECTOR, POLE, DISC)
ROPE = {"kind": "wire-rope", "attached_to": "joist", "rating": "1000 N", "count": 1}
ABOVE: dict[str, Any] = {
    "roomlint": 1,
    "survey": {"tolerance": "0 mm"},
    "project": {"region": "us", "children": True, "codes": {"seismic_category": "d"}},
    "room": {
        "size": {"width": "3.6 m", "length": "5 m"},
        "ceiling": {
            "shape": "flat",
            "height": "2.4 m",
            "framing": {
                "kind": "joist",
                "spacing": "406.4 mm",
                "span": "3.6 m",
                "member_depth": "184 mm",
                "species": "spruce-pine-fir",
            },
            "board": BOARD,
            "fire_rated": False,
            "plenum": False,
        },
        "walls": [{"id": "front", "framing": STUDS, "board": BOARD}],
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
                "secondary": ROPE,
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
                    "grain": "side",
                    "wet": False,
                    "attic": False,
                },
            },
        },
    },
    "loudspeakers": [
        {
            "id": "top",
            "product": "disc",
            "position": {"from_left": "3 m", "from_front": "3 m", "height": "2.4 m"},
            "mounting": {"on": "ceiling", "secondary": ROPE, "fixing": {"fastener": "clamp", "into": "board"}},
        }
    ],
}
M = "picture.projector.mounting"
F = f"{M}.fixing"
BEAM, TOP = "projector/beam", "loudspeaker/top"
ENGINEER = {"document": "sheet 3", "by": "A. N. Engineer"}


def above(rule: str, kind: str, changes: Mapping[str, object] | None = None, **more: Any) -> Case:
    """Return a case of the projector and the ceiling loudspeaker with some keys changed; of the projector if unsaid."""
    sheets = more.pop("products", ABOVE_SHEETS)
    subject = more.pop("subject", BEAM)
    return Case(rule, kind, changed(ABOVE, changes or {}), products=sheets, subject=subject, **more)


def pole(**changes: object) -> tuple[Mapping[str, Any], ...]:
    """Return the sheets with the pole's data changed; None takes a key out."""
    return (PROJECTOR, changed(POLE, {f"mount.{key}": value for key, value in changes.items()}), DISC)


def weighing(mass: str) -> tuple[Mapping[str, Any], ...]:
    """Return the sheets with the projector of another mass."""
    return (changed(PROJECTOR, {"mass": mass}), POLE, DISC)
