"""Cases of the places."""

from __future__ import annotations

from offsets import BARE, BOX, EMPTY, PICTURE, L, R, at, nowhere, room, speaker, taped

from roomlint.edges import Edge
from roomlint.testing import Case, Never, changed

INSIDE, SOLIDS, SURFACE = "layout.inside-room", "layout.clear-of-solids", "layout.on-surface"
MOUNTED = "layout.mounted-inside"
OPENINGS, SWING = "layout.clear-of-openings", "layout.door-swing"
PAIR = room(L, R)
# On the left wall, 0.15 m off it: the ear is 2.5 m from it. Its front looks into the room.
HUNG = room(speaker("side", "M+090", -2.35, 0.0, mounting={"on": "left"}, product="box"))
SEEN = room(picture=PICTURE | {
    "product": "panel", "mounting": {"on": "front"},
    "projector": {"id": "beamer", "product": "beamer", "lens": at(0, 0, 0.8), "mounting": {"on": "ceiling"}},
})  # fmt: skip
SHOWN = [
    {"roomlint_product": 1, "id": "panel", "kind": "display", "depth": "60 mm"},
    {"roomlint_product": 1, "id": "beamer", "kind": "projector", "height": "0.2 m", "depth": "0.4 m"},
]
TOP = room(speaker("top", "U+045", -1.0, 1.0, 1.4, mounting={"on": "ceiling"}, product="box"))
STANDING = room(
    subwoofers=[{"id": "sub", "position": at(-2.0, 3.0, -1.0), "mounting": {"on": "floor"}, "product": "bin"}]
)
BIN = {"roomlint_product": 1, "id": "bin", "kind": "subwoofer", "width": "0.4 m", "height": "0.4 m", "depth": "0.4 m"}
# The left wall seen from inside starts at the rear: its left-hand end is 6.0 m from the front.
WINDOW = {"id": "window", "kind": "window", "wall": "left", "from_wall_left": "2.0 m", "width": "1.0 m", "sill": "0.9 m", "height": "1.2 m"}  # fmt: skip
GLAZED = changed(HUNG, {"room.openings": [WINDOW]})
DOOR = {"id": "door", "kind": "door", "wall": "rear", "from_wall_left": "1.0 m", "width": "0.8 m", "height": "2.0 m", "hinge": "left", "swing": "in"}  # fmt: skip
# The rear wall seen from inside has its left-hand end at the right: the hinge is 4.0 m from the left wall.
# A box that looks to the front, 0.5 m beside the hinge and 0.6 m ahead of it.
TO_FRONT = {"azimuth": "0 deg"}
ENTERED = changed(
    room(speaker("rear", "M+135", 1.0, -1.9, product="box", aim=TO_FRONT)), {"room.openings": [DOOR], "seats": []}
)
PANEL = {"id": "panel", "kind": "absorber", "on": "right", "from_wall_left": "5.3 m", "width": "0.6 m", "bottom": "0.5 m",
         "height": "1.2 m", "thickness": "0.1 m"}  # fmt: skip
LEAFED = changed(
    ENTERED,
    {"treatments": [PANEL], "room.openings": [{**DOOR, "from_wall_left": "0.05 m"}], "loudspeakers": "none"},
)
# A chimney breast in the middle of the front wall, 0.5 m deep.
BREAST = {
    "id": "breast",
    "kind": "chimney-breast",
    "from_left": "2.0 m",
    "from_front": "0 m",
    "width": "1.0 m",
    "depth": "0.5 m",
}
# A box whose front looks to the rear: its front is 0.4 m from the front wall, its back 0.15 m, its sides 0.1 m to either.
BUILT_IN = changed(
    room(speaker("centre", "M+000", 0.0, 3.1, product="box", aim={"azimuth": "180 deg"})), {"room.obstacles": [BREAST]}
)
ONE_PLACE = room(
    speaker("left", "M+030", -1.5, 2.6, product="box", aim=TO_FRONT),
    speaker("other", "M+060", -1.5, 2.6, product="box", aim=TO_FRONT),
)
# On the left wall, looking straight off it: its middle is 0.4 m from the front wall, its side 0.3 m.
CORNERED = room(
    speaker("side", "M+090", -2.25, 3.1, mounting={"on": "left"}, product="box", aim={"azimuth": "-90 deg"})
)
FROM_FRONT, UP = "loudspeakers.0.position.from_front", "loudspeakers.0.position.height"
UNDER_SLOPE = changed(
    CORNERED,
    {"room.ceiling": {"shape": "mono-pitch", "low": "1.2 m", "high": "2.7 m", "low_side": "front"}, UP: "1.1 m"},
)
UNDER_SEAT = changed(STANDING, {"subwoofers.0.position": at(0.0, 0.0, -1.0)})
RACK = "electronics.racks.0"
CROWDED = room(electronics={"amplifiers": "none", "racks": [
    {"id": "rack", "position": at(0.0, 0.3, -1.2), "width": "0.6 m", "height": "1.2 m", "depth": "0.6 m", "facing": "0 deg"},
]})  # fmt: skip
THROUGH_RACK = changed(CROWDED, {"loudspeakers.0": speaker("left", "M+030", -1.5, 2.6, -0.4, product="box", aim=TO_FRONT),
                                 f"{RACK}.position": at(-1.5, 2.6, -1.2)})  # fmt: skip
PROJECTED = room(picture={"kind": "projection", "centre": at(0.0, 3.0), "projector": {"lens": at(0.0, 0.1)}})
BLOCKED = changed(CROWDED, {"room.openings": [DOOR], f"{RACK}.position": at(1.1, -1.8, -1.2)})

CASES: list[Case | Never] = [
    Case(INSIDE, "pass", HUNG, [BOX], subject="loudspeaker/side", figure=0.15, source="2.5 - 2.35 m"),
    Case(INSIDE, "fail", room(speaker("top", "U+030", -1.0, 1.0, 1.5)), subject="loudspeaker/top", level="error", figure=-0.1, source="1.2 + 1.5 - 2.6 m", says="0.10 m behind a surface"),
    Case(INSIDE, "fail", room(speaker("side", "M-090", 2.7, 0.0)), figure=-0.2, subject="loudspeaker/side", source="2.5 + 2.7 - 5.0 m"),
    # At the ceiling, as far as a tape can tell.
    Case(INSIDE, "pass", taped(TOP), [BOX], subject="loudspeaker/top"),
    Case(INSIDE, "review", taped(room(speaker("top", "U+030", -1.0, 1.0, 1.46))), subject="loudspeaker/top"),
    Case(INSIDE, "open", nowhere(PAIR), subject="loudspeaker/left"),
    # Outside the walls is outside under any ceiling; inside them the ceiling decides.
    Case(INSIDE, "fail", changed(room(speaker("side", "M-090", 2.7, 0.0)), {"room.ceiling": None}), figure=-0.2, subject="loudspeaker/side", level="error", source="2.5 + 2.7 - 5.0 m"),
    Case(INSIDE, "open", changed(PAIR, {"room.ceiling": None}), subject="loudspeaker/left", says="ceiling"),
    Case(INSIDE, "notApplicable", BARE),
    Case(MOUNTED, "pass", CORNERED, [BOX], figure=0.3, source="0.4 m less half of 0.2 m"),
    Case(MOUNTED, "fail", changed(CORNERED, {FROM_FRONT: "0.04 m"}), [BOX], level="warning", figure=-0.06, source="0.04 - 0.1 m", says="60 mm through a wall"),
    Case(MOUNTED, "fail", changed(CORNERED, {UP: "0.05 m"}), [BOX], figure=-0.1, source="0.05 - 0.15 m: through the floor"),
    Case(MOUNTED, "fail", changed(CORNERED, {UP: "2.55 m"}), [BOX], figure=-0.1, source="2.6 - 2.55 - 0.15 m"),
    # Over its side 0.3 m from the front the slope is 1.2 + 0.25 x 0.3 m high.
    Case(MOUNTED, "pass", UNDER_SLOPE, [BOX], figure=0.025, within=1e-4, source="1.275 - 1.25 m"),
    Case(MOUNTED, "fail", changed(UNDER_SLOPE, {UP: "1.2 m"}), [BOX], figure=-0.075, within=1e-4, source="1.275 - 1.35 m"),
    # Its own wall does not count: a flush cabinet is behind it.
    Case(MOUNTED, "pass", changed(CORNERED, {"loudspeakers.0.position.from_left": "0 m"}), [BOX], figure=0.3, source="0.4 m less half of 0.2 m"),
    # At the ceiling, its front looking to the rear: 0.1 m to either side of a middle that is 0.03 m off the left wall.
    Case(MOUNTED, "fail", room(speaker("top", "U+045", -2.47, 1.0, 1.15, mounting={"on": "ceiling"}, product="box", aim={"azimuth": "180 deg"})), [BOX], figure=-0.07, source="0.03 - 0.1 m"),
    Case(MOUNTED, "review", taped(changed(CORNERED, {FROM_FRONT: "0.06 m"})), [BOX]),
    Case(MOUNTED, "open", nowhere(CORNERED), [BOX], says="position"),
    Case(MOUNTED, "open", PAIR, says="mounting"),
    Case(MOUNTED, "notApplicable", EMPTY),
    Case(MOUNTED, "notApplicable", STANDING, [BIN], says="stands on the floor"),
    Case(SOLIDS, "pass", PAIR),
    Case(SOLIDS, "fail", BUILT_IN, [BOX], subject="loudspeaker/centre", level="error", figure=0.35, source="its back is 0.15 m from the wall, the breast's face 0.5 m: 0.35 m to pull it out, less than any other way", says="chimney-breast breast"),
    Case(SOLIDS, "fail", ONE_PLACE, [BOX], subject="loudspeaker/other", figure=0.2, source="two boxes in one place part by their least size, the width", says="overlaps left"),
    # Told once, at the one that the file lists later.
    Case(SOLIDS, "pass", ONE_PLACE, [BOX], subject="loudspeaker/left"),
    Case(SOLIDS, "fail", UNDER_SEAT, [BIN], subject="seat/seat", says="overlaps sub"),
    Case(SOLIDS, "pass", changed(BUILT_IN, {"loudspeakers.0.position.from_front": "0.75 m"}), [BOX], subject="loudspeaker/centre", figure=0.0, within=1e-4, source="its back touches the breast"),
    Case(SOLIDS, "review", taped(changed(BUILT_IN, {"loudspeakers.0.position.from_front": "0.71 m"})), [BOX], subject="loudspeaker/centre"),
    Case(SOLIDS, "open", nowhere(PAIR), subject="loudspeaker/left"),
    Case(SOLIDS, "notApplicable", BARE),
    # Nobody knows what else is there where the file does not speak of obstacles; what overlaps already does so.
    Case(SOLIDS, "open", changed(PAIR, {"room.obstacles": None}), says="obstacles"),
    Case(SOLIDS, "fail", changed(ONE_PLACE, {"room.obstacles": None}), [BOX], subject="loudspeaker/other"),
    # A rack, 0.6 m wide and deep, whose front is 0.3 m before the ear: the listener, 0.5 m wide, sits in it.
    Case(SOLIDS, "fail", CROWDED, subject="rack/rack", level="error", says="overlaps seat"),
    Case(SOLIDS, "fail", changed(CROWDED, {f"{RACK}.height": None}), subject="rack/rack", level="error"),
    Case(SOLIDS, "pass", changed(CROWDED, {f"{RACK}.position": at(2.0, -1.2, -1.2)}), subject="rack/rack"),
    Case(SOLIDS, "open", changed(CROWDED, {f"{RACK}.position": None}), subject="rack/rack", says="position"),
    # A loudspeaker that stands where the rack is.
    Case(SOLIDS, "fail", THROUGH_RACK, [BOX], subject="rack/rack", says="overlaps left"),
    # A lens at the height of the ear, in the listener's place.
    Case(SOLIDS, "fail", PROJECTED, subject="projector/projector", says="overlaps seat"),
    Case(SURFACE, "pass", HUNG, [BOX], figure=-0.1, source="0.15 m off the wall, a cabinet of 0.25 m"),
    Case(SURFACE, "fail", changed(HUNG, {"loudspeakers.0.position": at(-1.5, 0.0)}), [BOX], figure=0.75, level="warning", source="1.0 m off the wall less 0.25 m"),
    Case(SURFACE, "fail", changed(HUNG, {"loudspeakers.0.mounting.on": "ceiling"}), [BOX], figure=1.15, source="1.4 m under the ceiling less 0.25 m"),
    Case(SURFACE, "pass", STANDING, [BIN]),
    Case(SURFACE, "fail", changed(STANDING, {"subwoofers.0.position.height": "2.5 m"}), [BIN], figure=2.1, source="2.5 m up less a cabinet of 0.4 m"),
    # A picture 0.1 m off the front wall and 60 mm deep; a lens 0.6 m under the ceiling, 0.2 m of it the projector.
    Case(SURFACE, "pass", SEEN, SHOWN, subject="picture/picture", figure=0.04, source="0.1 m less 0.06 m"),
    Case(SURFACE, "fail", changed(SEEN, {"picture.centre": at(0, 3.2, 0.25)}), SHOWN, subject="picture/picture", figure=0.24, source="0.3 m less 0.06 m"),
    Case(SURFACE, "fail", SEEN, SHOWN, subject="projector/beamer", figure=0.4, source="0.6 m less 0.2 m"),
    Case(SURFACE, "pass", changed(SEEN, {"picture.projector.mounting.drop": "0.35 m"}), SHOWN, subject="projector/beamer", figure=0.05, source="0.6 m less 0.2 and 0.35 m"),
    Case(SURFACE, "open", changed(SEEN, {"picture.projector.lens": None}), SHOWN, subject="projector/beamer", says="lens"),
    Case(SURFACE, "review", taped(changed(HUNG, {"loudspeakers.0.position.from_left": "0.36 m"})), [BOX]),
    Case(SURFACE, "open", changed(HUNG, {"loudspeakers.0.product": None})),
    # What nobody said the mounting of may hang anywhere.
    Case(SURFACE, "open", PAIR, says="mounting"),
    Case(SURFACE, "notApplicable", EMPTY),
    Case(SURFACE, "notApplicable", changed(HUNG, {"loudspeakers.0.mounting.on": "stand"}), [BOX], says="it stands on a stand"),
    # The window runs from 2.0 to 3.0 m from the rear, the loudspeaker's middle stands at 2.5 m.
    Case(OPENINGS, "fail", GLAZED, [BOX], level="error", figure=-0.45, source="1.2 m lies 0.30 m above the sill of 0.9; half a cabinet is 0.15 more", says="0.45 m across the window"),
    Case(OPENINGS, "pass", changed(GLAZED, {"room.openings.0.from_wall_left": "3.5 m"}), [BOX], figure=0.9, source="3.5 - 2.5 - 0.1 m"),
    Case(OPENINGS, "fail", changed(GLAZED, {"room.openings.0.from_wall_left": "2.65 m"}), [BOX], level="note", figure=0.05, source="2.65 - 2.5 - 0.1 m", says="0.05 m from the edge"),
    Case(OPENINGS, "review", taped(changed(GLAZED, {"room.openings.0.from_wall_left": "2.61 m"})), [BOX]),
    Case(OPENINGS, "open", changed(GLAZED, {"room.openings.0.width": None}), [BOX]),
    # Beside a window, and nobody says what holds it.
    Case(OPENINGS, "open", changed(GLAZED, {"loudspeakers.0.mounting": None}), [BOX], says="mounting"),
    Case(OPENINGS, "notApplicable", HUNG, [BOX]),
    Case(OPENINGS, "notApplicable", changed(GLAZED, {"loudspeakers.0.mounting.on": "ceiling"}), [BOX], says="hangs on the ceiling"),
    Case(OPENINGS, "notApplicable", changed(GLAZED, {"loudspeakers.0.mounting.on": "floor"}), [BOX], says="stands on the floor"),
    # The box looks to the front: its near side is 0.4 m beside the hinge, its back 0.35 m from the wall.
    # A door 0.05 m from the corner, and a panel 0.1 m thick on the wall that its leaf comes to.
    Case(SWING, "fail", LEAFED, subject="treatment/panel+opening/door", level="error", figure=-0.05, source="0.10 less 0.05 m", within=0.002),
    Case(SWING, "pass", changed(LEAFED, {"treatments": [{**PANEL, "thickness": "0.03 m"}]}), subject="treatment/panel+opening/door", figure=0.02, source="0.05 less 0.03 m", within=0.002),
    Case(SWING, "pass", changed(LEAFED, {"treatments": [{**PANEL, "bottom": "2.1 m", "height": "0.3 m"}]}), subject="treatment/panel+opening/door"),
    Case(SWING, "open", changed(LEAFED, {"treatments.0.thickness": None}), subject="treatment/panel+opening/door", says="thickness"),
    Case(SWING, "fail", ENTERED, [BOX], level="error", says="into the way of the door"),
    # In front of the hinge: its front is 1.45 m from the rear wall, its back 1.20 m, the open leaf's tip 0.80 m.
    Case(SWING, "pass", changed(ENTERED, {"loudspeakers.0.position": at(1.5, -1.05)}), [BOX], figure=0.4, within=0.002, source="1.45 - 0.25 - 0.80 m"),
    # 2.4 m up, its underside is 0.25 m above a leaf of 2.0 m.
    Case(SWING, "pass", changed(ENTERED, {"loudspeakers.0.position": at(1.0, -1.9, 1.2)}), [BOX], figure=0.25, source="2.4 - 0.15 - 2.0 m"),
    Case(SWING, "fail", changed(ENTERED, {"seats": [{"id": "guest", "ear": at(1.0, -1.9), "reference": True, "width": "0.5 m"}]}), [BOX], subject="seat/guest+opening/door"),
    Case(SWING, "review", taped(changed(ENTERED, {"loudspeakers.0.position": at(1.5, -1.44)})), [BOX]),
    Case(SWING, "open", changed(ENTERED, {"room.openings.0.swing": None}), [BOX]),
    Case(SWING, "open", changed(ENTERED, {"room.openings.0.hinge": None}), [BOX]),
    Case(SWING, "notApplicable", changed(ENTERED, {"room.openings.0.swing": "out"}), [BOX], says="opens outward"),
    Case(SWING, "notApplicable", HUNG, [BOX]),
    Case(SWING, "open", changed(ENTERED, {"room.openings": None}), [BOX], says="openings"),
    # A rack 0.6 m deep whose front is 0.7 m before the rear wall, in the middle of the door of 0.8 m.
    Case(SWING, "fail", BLOCKED, subject="rack/rack+opening/door", level="error", says="into the way"),
    Case(SWING, "pass", changed(BLOCKED, {f"{RACK}.position": at(-2.0, 2.0, -1.2)}), subject="rack/rack+opening/door"),
]  # fmt: skip
EDGES = [
    Edge(INSIDE, PAIR, "loudspeakers.0.position.height", 2.0, 3.0, 1, subject="loudspeaker/left"),
    Edge(MOUNTED, CORNERED, FROM_FRONT, 0.0, 1.0, 1, products=[BOX]),
    Edge(SOLIDS, BUILT_IN, "loudspeakers.0.position.from_front", 0.5, 1.2, 1, products=[BOX], subject="loudspeaker/centre"),
    Edge(SURFACE, HUNG, "loudspeakers.0.position.from_left", 0.05, 2.0, 1, products=[BOX]),
    Edge(OPENINGS, GLAZED, "loudspeakers.0.position.height", 0.3, 0.9, 2, products=[BOX]),
    Edge(SWING, changed(ENTERED, {"loudspeakers.0.position": at(1.5, 0.0)}), "loudspeakers.0.position.from_front", 3.0, 5.2, 1, products=[BOX]),
]  # fmt: skip
