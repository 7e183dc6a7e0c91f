"""Cases of what stands free."""

from __future__ import annotations

from typing import Any

from mount_rooms import FLOOR, ROOM, SHEETS, on

from roomlint.edges import Edge
from roomlint.testing import Case, Never, changed

BOX: dict[str, Any] = {
    "roomlint_product": 1,
    "id": "box",
    "kind": "loudspeaker",
    "mass": "20 kg",
    "height": "1 m",
    "loudspeaker": {
        "placement": ["floor"],
        "base_width": "0.3 m",
        "base_depth": "0.35 m",
        "centre_of_gravity": "0.5 m",
    },
}
SMALL: dict[str, Any] = {
    "roomlint_product": 1,
    "id": "small",
    "kind": "loudspeaker",
    "mass": "9.4 kg",
    "height": "0.38 m",
    "loudspeaker": {"placement": ["stand"], "base_width": "0.21 m", "base_depth": "0.26 m"},
}
STAND: dict[str, Any] = {
    "roomlint_product": 1,
    "id": "leg",
    "kind": "stand",
    "mass": "9.4 kg",
    "stand": {"base_width": "0.3 m", "base_depth": "0.34 m", "centre_of_gravity": "0.2 m", "rated_mass": "20 kg"},
}
BOXES = (BOX, SMALL, STAND)
STANDS = changed(
    ROOM,
    {
        "picture": None,
        "loudspeakers": [{"id": "left", "product": "box", "mounting": {"on": "floor", "carpet": False}}],
    },
)
L = "loudspeakers.0"
STRAP = {"kind": "strap", "attached_to": "stud"}
SHELF = {f"{L}.mounting": {"on": "furniture"}}
ON_STAND = {
    L: {
        "id": "left",
        "product": "small",
        "position": {"from_left": "1 m", "from_front": "1 m", "height": "1 m"},
        "mounting": {"on": "stand", "stand": "leg", "carpet": False},
    }
}
STRAPPED = {f"{L}.mounting": {"on": "furniture", "strap": {**STRAP, "rating": "500 N"}}}
PULL = f"{L}.mounting.strap.rating"
RACK = {"electronics": {"racks": [{"id": "rack", "mounting": {"on": "floor"}}]}, "loudspeakers": None}


def free(rule: str, kind: str, changes: dict[str, Any] | None = None, **more: Any) -> Case:
    """Return a case of the standing loudspeaker with some keys changed."""
    sheets = more.pop("products", BOXES)
    return Case(rule, kind, changed(STANDS, changes or {}), products=sheets, **more)


def stand(**changes: object) -> tuple[dict[str, Any], ...]:
    """Return the sheets with the stand's data changed."""
    return (BOX, SMALL, changed(STAND, {f"stand.{key}": value for key, value in changes.items()}))


CASES: list[Case | Never] = [
    on("mount.tip-angle", "notApplicable"),
    on("mount.push-over", "notApplicable"),
    on("mount.furniture-strap", "notApplicable"),
    Case("mount.tip-angle", "open", FLOOR, products=SHEETS, says="stand"),
    # Half a base of 0.3 m beside a centre of gravity at 0.5 m.
    free("mount.tip-angle", "pass", figure=16.69924, source="arctangent worked by hand"),
    free("mount.tip-angle", "fail", products=(changed(BOX, {"loudspeaker.centre_of_gravity": "0.9 m"}),)),
    free("mount.tip-angle", "fail", products=(changed(BOX, {"loudspeaker.centre_of_gravity": "0.8 m ± 0.1 m"}),)),
    free("mount.tip-angle", "open", {f"{L}.mounting.carpet": None}, says="carpet"),
    free("mount.tip-angle", "notApplicable", {f"{L}.mounting.strap": STRAP}, says="strap to stud"),
    free("mount.tip-angle", "pass", {f"{L}.mounting.strap": "none"}),
    # 9.4 kg each: the common centre is at 0.60 m; half of 0.30 m beside it is 14.036 degrees.
    free("mount.tip-angle", "pass", ON_STAND, figure=14.0362, source="centres of gravity added by hand"),
    # A base of 210 mm under a centre of 1.00 m: 6 degrees, if the stand weighed nothing.
    free("mount.tip-angle", "fail", ON_STAND, products=stand(base_width="0.21 m", centre_of_gravity="1 m"),
         figure=5.9941, source="arctangent of 105 over 1000"),
    free("mount.tip-angle", "open", {**ON_STAND, f"{L}.mounting.stand": None}, says="stand"),
    free("mount.tip-angle", "open", {**ON_STAND, f"{L}.position": None}, says="position"),
    # Half base 0.15 m over a height of 1 m, over 0.20: 0.75.
    free("mount.push-over", "fail", figure=0.75, source="IEC 62368-1 8.6.5 and statics, worked by hand"),
    free("mount.push-over", "pass", products=(changed(BOX, {"loudspeaker.base_width": "0.41 m",
                                                            "loudspeaker.base_depth": "0.41 m"}),)),
    free("mount.push-over", "fail", products=(changed(BOX, {"loudspeaker.base_width": "0.41 m ± 20 mm",
                                                            "loudspeaker.base_depth": "0.5 m"}),)),
    free("mount.push-over", "open", products=(changed(BOX, {"loudspeaker.base_width": None}),)),
    free("mount.furniture-strap", "pass", {**SHELF, f"{L}.mounting.strap": STRAP}, says="strap to stud"),
    free("mount.furniture-strap", "pass", {**SHELF, "project.children": False}),
    free("mount.furniture-strap", "fail", SHELF),
    free("mount.furniture-strap", "fail", {**SHELF, f"{L}.mounting.strap": "none"}),
    free("mount.furniture-strap", "open", {**SHELF, "project.children": None}, says="children"),
    free("mount.furniture-strap", "fail", RACK, subject="rack/rack"),
    # On the floor or a stand the strap is all that keeps it, as `mount.tip-angle` leaves out what is strapped.
    free("mount.strap-rating", "fail", {f"{L}.mounting.strap": {**STRAP, "rating": "20 N"}}, figure=20.0, source="as it is marked"),
    free("mount.strap-rating", "open", {f"{L}.mounting.strap": STRAP}, says="rating"),
    free("mount.strap-rating", "fail", {**ON_STAND, f"{L}.mounting.strap": {**STRAP, "rating": "20 N"}}),
    free("mount.strap-rating", "pass", STRAPPED, figure=500.0, source="as it is marked"),
    free("mount.strap-rating", "fail", {**STRAPPED, PULL: "200 N"}, level="warning", figure=200.0, source="as it is marked"),
    free("mount.strap-rating", "pass", {**STRAPPED, PULL: "50 lbf"}, figure=222.41, source="50 lbf"),
    free("mount.strap-rating", "fail", {**STRAPPED, PULL: "230 N ± 20 N"}),
    free("mount.strap-rating", "open", {**STRAPPED, PULL: None}, says="rating"),
    free("mount.strap-rating", "notApplicable", {**SHELF, f"{L}.mounting.strap": "none", "project.children": False}),
    free("mount.strap-rating", "open", SHELF, says="strap"),
    free("mount.strap-rating", "notApplicable"),
    # Feet 0.21 m by 0.26 m on a plate of 0.22 m by 0.28 m.
    free("mount.stand-plate", "pass", ON_STAND, products=stand(plate_width="0.22 m", plate_depth="0.28 m"), figure=10.0, source="0.22 m less 0.21 m"),
    free("mount.stand-plate", "fail", ON_STAND, products=stand(plate_width="0.18 m", plate_depth="0.28 m"), level="warning", figure=-30.0, source="0.18 m less 0.21 m"),
    free("mount.stand-plate", "fail", ON_STAND, products=stand(plate_width="0.22 m ± 2 cm", plate_depth="0.28 m")),
    free("mount.stand-plate", "open", ON_STAND, says="plate_width"),
    free("mount.stand-plate", "notApplicable"),
]  # fmt: skip

EDGES = [
    Edge("mount.tip-angle", free("x", "y", ON_STAND).room, f"{L}.position.height", 0.5, 3.0, 1, products=BOXES),
    Edge("mount.strap-rating", free("x", "y", STRAPPED).room, PULL, 100.0, 600.0, 1, "N", products=BOXES),
    Edge(
        "mount.stand-plate",
        free("x", "y", ON_STAND).room,
        "stand.plate_width",
        0.1,
        0.4,
        1,
        sheet="leg",
        products=stand(plate_width="0.22 m", plate_depth="0.40 m"),
    ),
    Edge("mount.push-over", free("x", "y", ON_STAND).room, f"{L}.position.height", 0.3, 1.0, 1, products=BOXES),
]
