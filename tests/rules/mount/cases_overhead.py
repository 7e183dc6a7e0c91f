"""Cases of what hangs above people."""

from __future__ import annotations

from mount_rooms import ABOVE_SHEETS, BEAM, FLOOR, ROPE, SHEETS, TOP, F, M, above, on, pole, weighing

from roomlint.edges import Edge
from roomlint.testing import Case, Never, changed

GRID = {f"{M}.on": "grid-ceiling"}
TWO_WIRES = {**GRID, f"{M}.secondary": {**ROPE, "count": 2}}
BOX = {f"{M}.on": "electrical-box"}
# On slings, without a pole.
SLUNG = {f"{M}.sling_angle": "60 deg"}
ALONE = {"loudspeakers": None}
TWO_PROJECTORS = {
    "loudspeakers.0.position": {"from_left": "1 m", "from_front": "3 m", "height": "2.4 m"},
    "picture.projector.lens": {"from_left": "1.2 m", "from_front": "1 m", "height": "2 m"},
    "room.ceiling.framing.runs": "front-to-rear",
}
CARRIED_ELSEWHERE = {**TWO_PROJECTORS, "picture.projector.lens": {
    "from_left": "2 m", "from_front": "1 m", "height": "2 m"}}  # fmt: skip
ACCEPTED = {
    f"{M}.secondary": "none",
    "waivers": [{"rule": "mount.secondary", "subject": "projector/beam", "because": "The engineer accepts it.",
                 "approved_by": "lead", "until": "2099-12-31"}],
}  # fmt: skip
FROM_A_WALL = ("mount.overhead-screws", "mount.design-factor", "mount.secondary", "mount.secondary-rating",
               "mount.secondary-fall", "mount.sling-angle", "mount.electrical-box", "mount.grid-ceiling",
               "mount.joist-load")  # fmt: skip

CASES: list[Case | Never] = [
    *(on(rule, "notApplicable") for rule in FROM_A_WALL),
    *(Case(rule, "notApplicable", FLOOR, products=SHEETS) for rule in FROM_A_WALL),
    above("mount.overhead-screws", "pass"),
    # Somebody accepted that there is no second support: then the screws alone are judged.
    above("mount.overhead-screws", "pass", {**ACCEPTED, f"{F}.fastener": "through-bolt"}),
    above("mount.overhead-screws", "fail", ACCEPTED, level="warning"),
    above("mount.overhead-screws", "open", {f"{M}.secondary": None}, says="secondary"),
    above("mount.overhead-screws", "open", {f"{F}.fastener": None}),
    # 3000 / 147.09975 on one line; two legs at 60 degrees carry 84.9281 N each.
    above("mount.design-factor", "pass", figure=20.3943, source="divided by hand"),
    above("mount.design-factor", "pass", SLUNG, figure=35.324, source="sling statics worked by hand"),
    # The weaker of pole and rope counts: 1000 / 147.09975.
    above("mount.design-factor", "fail", {f"{M}.breaking_load": "1000 N"}, figure=6.798, level="warning",
          source="divided by hand"),
    above("mount.design-factor", "fail", {f"{M}.breaking_load": "1500 N ± 100 N"}, level="warning"),
    above("mount.design-factor", "fail", {f"{M}.breaking_load": "300 N"}, level="error"),
    above("mount.design-factor", "review", {f"{M}.sling_angle": "2 deg"}, says="sling angle"),
    above("mount.design-factor", "open", products=pole(breaking_load=None), says="breaking_load"),
    above("mount.secondary", "pass", says="wire rope to joist"),
    above("mount.secondary", "fail", {f"{M}.secondary": "none"}, level="warning"),
    # No concrete and no stud is above a ceiling of joists.
    *(above("mount.secondary", "review", {f"{M}.secondary.attached_to": other}, says=f"{other}, but the ceiling is joist")
      for other in ("concrete", "masonry", "stud")),
    above("mount.secondary", "review", {"room.ceiling.framing.kind": "concrete"}, says="the ceiling is concrete"),
    *(above("mount.secondary", "pass", {f"{M}.secondary.attached_to": other}) for other in ("beam", "rafter", "steel")),
    above("mount.secondary", "pass", {"room.ceiling.framing.kind": None}),
    # A loudspeaker flush in the ceiling hangs over people too.
    above("mount.secondary", "fail", {"loudspeakers.0.mounting.secondary": "none"}, subject=TOP),
    above("mount.secondary", "open", {f"{M}.secondary": None}, says="secondary"),
    above("mount.secondary-rating", "pass", figure=6.79811, source="1000 N over 147.09975 N"),
    above("mount.secondary-rating", "fail", {f"{M}.secondary.rating": "250 N"}, level="warning"),
    above("mount.secondary-rating", "fail", {f"{M}.secondary.rating": "300 N ± 10 N"}, level="warning"),
    above("mount.secondary-rating", "fail", {f"{M}.secondary.rating": "100 N"}, level="error"),
    above("mount.secondary-rating", "open", {f"{M}.secondary.rating": None}, says="rating"),
    above("mount.secondary-rating", "notApplicable", {f"{M}.secondary": "none"}),
    above("mount.secondary-fall", "pass", figure=100.0, source="the length as written"),
    above("mount.secondary-fall", "fail", {f"{M}.secondary_fall": "0.3 m"}),
    above("mount.secondary-fall", "fail", {f"{M}.secondary_fall": "0.19 m ± 20 mm"}),
    above("mount.secondary-fall", "open", {f"{M}.secondary_fall": None}),
    above("mount.sling-angle", "pass", SLUNG, figure=60.0, source="the angle as written"),
    above("mount.sling-angle", "fail", {f"{M}.sling_angle": "40 deg"}, level="warning"),
    above("mount.sling-angle", "fail", {f"{M}.sling_angle": "46 deg ± 2 deg"}, level="warning"),
    above("mount.sling-angle", "fail", {f"{M}.sling_angle": "20 deg"}, level="error"),
    above("mount.sling-angle", "notApplicable", says="pole"),
    above("mount.sling-angle", "open", products=pole(motion="fixed"), says="sling_angle"),
    above("mount.electrical-box", "pass", {**BOX, f"{M}.product": None}, products=weighing("2 kg"), figure=2.0,
          source="the mass as written"),
    above("mount.electrical-box", "fail", BOX, level="error"),
    # The listing of a mount says nothing of the box.
    above("mount.electrical-box", "fail", BOX, products=pole(listed="listing 1"), level="error"),
    above("mount.electrical-box", "fail", {**BOX, f"{M}.box": "none"}, level="error"),
    above("mount.electrical-box", "pass", {**BOX, f"{M}.box": {"document": "listing 2", "marked_mass": "50 lb"}}),
    above("mount.electrical-box", "fail", {**BOX, f"{M}.box": {"document": "listing 2", "marked_mass": "10 kg"}}),
    above("mount.electrical-box", "fail", {**BOX, f"{M}.product": None}, products=weighing("2.6 kg ± 0.2 kg")),
    above("mount.electrical-box", "open", {**BOX, f"{M}.product": None},
          products=(changed(ABOVE_SHEETS[0], {"mass": None}), *ABOVE_SHEETS[1:]), says="mass"),
    above("mount.grid-ceiling", "pass", TWO_WIRES, figure=15.0, source="the masses added by hand"),
    # 15 kg on one wire; from 10 lb there are two.
    above("mount.grid-ceiling", "fail", GRID, says="one wire"),
    above("mount.grid-ceiling", "pass", {**GRID, f"{M}.product": None}, products=weighing("4 kg")),
    above("mount.grid-ceiling", "fail", {**GRID, f"{M}.product": None}, products=weighing("4.4 kg ± 0.3 kg")),
    above("mount.grid-ceiling", "fail", {**GRID, **ACCEPTED}, says="without a wire"),
    above("mount.grid-ceiling", "fail", {**TWO_WIRES, f"{M}.accessories": "20 kg"}),
    above("mount.grid-ceiling", "open", {**GRID, f"{M}.secondary.count": None}, says="count"),
    # 2 x 147.09975 / 3.6 = 81.722 N/m, over 0.4064 m = 201.09 Pa
    above("mount.joist-load", "fail", ALONE, figure=201.09, level="note", source="statics worked by hand"),
    # With 3 kg more on the same joist.
    above("mount.joist-load", "fail", TWO_PROJECTORS, figure=241.31, level="warning", source="statics worked by hand"),
    above("mount.joist-load", "fail", CARRIED_ELSEWHERE, figure=201.09, level="note", source="statics worked by hand"),
    above("mount.joist-load", "fail", {**ALONE, f"{M}.accessories": "2.6 kg ± 0.5 kg"}, level="warning"),
    above("mount.joist-load", "pass", ALONE, products=weighing("3 kg")),
    above("mount.joist-load", "open", {"room.ceiling.framing.span": None}, says="span"),
]  # fmt: skip

EDGES = [
    Edge("mount.design-factor", above("x", "y", {f"{M}.breaking_load": "1000 N"}).room, f"{M}.breaking_load",
         500.0, 2000.0, 2, unit="N", products=ABOVE_SHEETS),
    Edge("mount.secondary-rating", above("x", "y").room, f"{M}.secondary.rating", 100.0, 990.0, 2, unit="N",
         subject=BEAM, products=ABOVE_SHEETS),
    Edge("mount.secondary-fall", above("x", "y").room, f"{M}.secondary_fall", 0.15, 0.25, 1, products=ABOVE_SHEETS),
    Edge("mount.sling-angle", above("x", "y", SLUNG).room, f"{M}.sling_angle", 20.0, 60.0, 2, unit="deg",
         products=ABOVE_SHEETS),
    Edge("mount.electrical-box", above("x", "y", {**BOX, f"{M}.accessories": "1 kg", f"{M}.product": None}).room,
         f"{M}.accessories", 0.01, 5.0, 1, unit="kg", products=weighing("1 kg")),
    Edge("mount.grid-ceiling", above("x", "y", {**TWO_WIRES, f"{M}.accessories": "1 kg"}).room, f"{M}.accessories",
         0.01, 15.0, 1, unit="kg", products=ABOVE_SHEETS),
    Edge("mount.joist-load", above("x", "y", {**ALONE, f"{M}.accessories": "1 kg"}).room, f"{M}.accessories", 0.01, 20.0,
         2, unit="kg", products=weighing("1 kg")),
]  # fmt: skip
