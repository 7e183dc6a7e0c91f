"""Cases of the places of picture, projector, racks, panels and receptacles: a room of 5 by 6 m, 2.6 m high."""

from __future__ import annotations

from offsets import BARE, BOX, EMPTY, PICTURE, C, L, at, nowhere, room, speaker, taped

from roomlint.edges import Edge
from roomlint.testing import Case, Never, changed

INSIDE, OPENINGS = "layout.fixtures-inside", "layout.fixtures-clear-of-openings"
# Its middle is 0.1 m off the front wall and 1.45 m up; 2.4 by 1.3 m, up to 2.1 m.
SHOWN = room(picture={**PICTURE, "mounting": {"on": "front"}})
MIDDLE = "picture.centre.from_left"
PROJECTED = changed(SHOWN, {"picture.kind": "projection", "picture.projector": {"lens": at(0.0, -1.0, 1.0)}})
RACKED = room(electronics={"racks": [{"id": "rack", "position": at(2.0, -2.0, -1.2)}]})
# The left wall seen from inside starts at the rear and is 6 m long.
PANEL = {"id": "panel", "kind": "absorber", "on": "left", "from_wall_left": "2.0 m", "bottom": "0.6 m", "width": "0.9 m", "height": "1.2 m"}  # fmt: skip
CLOUD = {"id": "cloud", "kind": "absorber", "on": "ceiling", "from_left": "1.5 m", "from_front": "2.0 m", "width": "2.0 m", "height": "1.2 m"}  # fmt: skip
LINED, OVERHEAD = room(treatments=[PANEL]), room(treatments=[CLOUD])
OUTLET = {"id": "outlet", "wall": "rear", "from_wall_left": "0.4 m", "height": "0.45 m"}
WIRED = room(circuits=[{"id": "c1", "receptacles": [OUTLET]}])
SOCKET = "circuits.0.receptacles.0"
# An L: the wall "step" runs 2.5 m from left to right, 3 m from the front, and ends at the corner that pokes inside.
STEPPED = changed(
    WIRED,
    {
        "room.size": None,
        "room.outline": [
            {"from_left": "0 m", "from_front": "0 m", "wall": "front"},
            {"from_left": "5 m", "from_front": "0 m", "wall": "right"},
            {"from_left": "5 m", "from_front": "6 m", "wall": "rear"},
            {"from_left": "2.5 m", "from_front": "6 m", "wall": "inner"},
            {"from_left": "2.5 m", "from_front": "4.5 m", "wall": "step"},
            {"from_left": "0 m", "from_front": "4.5 m", "wall": "left"},
        ],
        f"{SOCKET}.wall": "step",
    },
)
SLOPE = {"shape": "mono-pitch", "low": "1.6 m", "high": "3.0 m", "low_side": "front"}
# In the front wall, from 1.0 to 2.0 m from the left: the picture's left edge is 1.3 m from the left.
WINDOW = {"id": "window", "kind": "window", "wall": "front", "from_wall_left": "1.0 m", "width": "1.0 m", "sill": "0.9 m", "height": "1.2 m"}  # fmt: skip
GLAZED = changed(SHOWN, {"room.openings": [WINDOW]})
DOOR = {"id": "door", "kind": "door", "wall": "left", "from_wall_left": "2.5 m", "width": "0.8 m", "height": "2.0 m"}
DOORED = changed(LINED, {"room.openings": [DOOR]})
CURTAIN = {"id": "drape", "kind": "curtain", "on": "left", "from_wall_left": "2.0 m", "bottom": "0 m", "width": "2.0 m", "height": "2.3 m"}  # fmt: skip
DRAPED = changed(room(treatments=[CURTAIN]), {"room.openings": [DOOR]})
THROUGH = "layout.heard-through-screen"
# The centre is 3.0 m ahead, 0.2 m before the picture: then 0.4 m behind it, in its middle.
BEHIND = changed(
    room(C, L, picture={**PICTURE, "kind": "projection", "transparent": True}), {"picture.centre": at(0.0, 2.4)}
)
DECLARED = changed(BEHIND, {"loudspeakers.0.behind_screen": True})
WOVEN = {"roomlint_product": 1, "id": "woven", "kind": "screen", "picture": {"transparent": True}}
CLOSED = {"roomlint_product": 1, "id": "closed", "kind": "screen", "picture": {"transparent": False}}
LOSS = "layout.screen-loss"


def _lossy(loss: str) -> dict[str, object]:
    return changed(WOVEN, {"picture.loss": loss})


WEAVE = changed(BEHIND, {"picture.product": "woven"})

BESIDE = "layout.receptacle-beside-openings"
# In the rear wall, from 1.0 to 2.0 m of it and from 0.9 to 2.1 m up.
PANED = changed(WIRED, {"room.openings": [{**WINDOW, "wall": "rear"}]})
ALONG, UP = f"{SOCKET}.from_wall_left", f"{SOCKET}.height"

CLEAR = "layout.panel-clear"
# A cabinet 0.25 m deep on the left wall, 2.4 to 2.6 m from its left end, in the middle of the panel.
COVERED = room(
    speaker("side", "M+090", -2.25, 0.0, mounting={"on": "left"}, product="box"),
    treatments=[{**PANEL, "thickness": "0.1 m"}],
)
# Another under the ceiling, 0.25 m high, over which the cloud is.
CLOUDED = room(
    speaker("top", "U+045", -0.5, 1.0, 1.15, mounting={"on": "ceiling"}, product="box"),
    treatments=[{**CLOUD, "thickness": "0.1 m"}],
)
SIDE, START = "loudspeaker/side", "treatments.0.from_wall_left"

FITS = "layout.rack-fits"


def device(**more: str | None) -> list[dict[str, object]]:
    """Return the sheet of a device 0.44 m wide, 0.13 m high and 0.40 m deep."""
    data = {"width": "0.44 m", "height": "0.13 m", "depth": "0.40 m", **more}
    return [{"roomlint_product": 1, "id": "amp", "kind": "amplifier", **{key: one for key, one in data.items() if one}}]


FILLED = room(electronics={
    "amplifiers": [{"id": name, "product": "amp"} for name in ("one", "two", "three")],
    "racks": [{"id": "rack", "width": "0.48 m", "height": "0.40 m", "depth": "0.42 m", "contains": ["one", "two", "three"]}],
})  # fmt: skip
IN = "electronics.racks.0"

# In the wall where the ceiling is lowest: 1.6 m, which rises to 3.0 m over the rear wall.
SLOPED = changed(BARE, {"room.openings": [{**WINDOW, "height": "0.6 m"}], "room.ceiling": SLOPE})

CASES: list[Case | Never] = [
    Case(FITS, "pass", FILLED, device(), figure=-0.01, source="three of 0.13 m under 0.40 m"),
    Case(FITS, "fail", changed(FILLED, {f"{IN}.height": "0.35 m"}), device(), level="warning", figure=0.04, source="0.39 less 0.35 m", says="taller than it is"),
    Case(FITS, "fail", FILLED, device(depth="0.55 m"), figure=0.13, source="0.55 less 0.42 m", says="deeper than it is"),
    Case(FITS, "fail", FILLED, device(width="0.52 m"), figure=0.04, source="0.52 less 0.48 m", says="wider than it is"),
    # Two of half the width stand side by side: two rows of 0.13 m.
    Case(FITS, "pass", changed(FILLED, {f"{IN}.height": "0.27 m"}), device(width="0.22 m"), figure=-0.01, source="0.26 under 0.27 m"),
    Case(FITS, "review", FILLED, device(depth="0.42 m ± 5 mm")),
    Case(FITS, "open", FILLED, device(depth=None), says="depth"),
    Case(FITS, "open", changed(FILLED, {f"{IN}.height": None}), device(), says="height"),
    Case(FITS, "open", changed(FILLED, {f"{IN}.contains": None}), device(), says="contains"),
    Case(FITS, "open", changed(FILLED, {"electronics.amplifiers.1.product": None}), device(), says="product"),
    Case(FITS, "open", changed(FILLED, {"electronics": None}), says="racks"),
    Case(FITS, "pass", changed(FILLED, {f"{IN}.contains": []}), device(), says="it is empty"),
    Case(FITS, "notApplicable", room(electronics={"racks": "none"})),
    Case(INSIDE, "pass", SLOPED, subject="opening/window", figure=0.1, source="1.6 less 0.9 and 0.6 m"),
    Case(INSIDE, "fail", changed(SLOPED, {"room.openings.0.height": "1.2 m"}), subject="opening/window", level="error", figure=-0.5, source="1.6 less 2.1 m"),
    Case(INSIDE, "pass", changed(SLOPED, {"room.openings.0.height": "1.2 m", "room.openings.0.wall": "rear"}), subject="opening/window"),
    Case(INSIDE, "open", changed(SLOPED, {"room.openings.0.height": None}), subject="opening/window", says="height"),
    Case(INSIDE, "open", changed(SLOPED, {"room.openings.0.sill": None}), subject="opening/window", says="sill"),
    Case(CLEAR, "fail", COVERED, [BOX], subject=SIDE, level="warning", figure=-0.1, source="0.1 m of panel on the wall that it hangs on", says="inside panel"),
    Case(CLEAR, "pass", changed(COVERED, {START: "3.0 m"}), [BOX], subject=SIDE, figure=0.4, source="3.0 less 2.6 m"),
    Case(CLEAR, "pass", COVERED, [BOX], subject="seat/seat", figure=2.15, source="2.5 m less half a seat of 0.5 m and the panel"),
    Case(CLEAR, "review", taped(changed(COVERED, {START: "2.61 m"})), [BOX], subject=SIDE),
    Case(CLEAR, "fail", changed(COVERED, {"treatments.0": CURTAIN}), [BOX], subject=SIDE, figure=-0.1, source="0.1 m of folds"),
    Case(CLEAR, "fail", CLOUDED, [BOX], subject="loudspeaker/top", figure=-0.1, source="0.1 m of cloud under the ceiling that it hangs from"),
    Case(CLEAR, "pass", changed(CLOUDED, {"treatments.0.mounting": {"on": "ceiling", "drop": "0.4 m"}}), [BOX], subject="loudspeaker/top", figure=0.15, source="2.35 m up over a cloud whose upper side is at 2.2 m"),
    Case(CLEAR, "fail", changed(CLOUDED, {"treatments.0.mounting": {"on": "ceiling", "drop": "1.3 m"}, "treatments.0.from_front": "3.0 m"}), [BOX], subject="seat/seat", says="inside cloud"),
    Case(CLEAR, "open", changed(COVERED, {"treatments.0.thickness": None}), [BOX], subject=SIDE, says="thickness"),
    Case(CLEAR, "open", changed(COVERED, {"treatments": None}), [BOX], subject=SIDE, says="treatments"),
    Case(CLEAR, "notApplicable", EMPTY, subject="seat/seat"),
    Case(CLEAR, "notApplicable", changed(COVERED, {"treatments.0": {**CLOUD, "on": "floor", "kind": "carpet"}}), [BOX], subject=SIDE),
    Case(BESIDE, "pass", PANED, figure=0.75, source="0.6 m beside and 0.45 m under: the square root of 0.5625"),
    Case(BESIDE, "fail", changed(PANED, {ALONG: "1.4 m", UP: "1.2 m"}), level="error", figure=-0.3, source="0.9 less 1.2 m", says="inside the window"),
    Case(BESIDE, "pass", changed(PANED, {ALONG: "1.4 m"}), figure=0.45, source="0.9 less 0.45 m"),
    Case(BESIDE, "review", taped(changed(PANED, {ALONG: "0.98 m", UP: "1.2 m ± 10 mm"}))),
    Case(BESIDE, "open", changed(PANED, {f"{SOCKET}.wall": None}), says="wall"),
    Case(BESIDE, "open", changed(PANED, {UP: None}), says="height"),
    Case(BESIDE, "open", changed(WIRED, {"room.openings": None}), says="openings"),
    Case(BESIDE, "notApplicable", WIRED),
    Case(BESIDE, "notApplicable", changed(PANED, {f"{SOCKET}.wall": "left"})),
    Case(BESIDE, "notApplicable", EMPTY),
    Case(LOSS, "pass", WEAVE, [_lossy("2 dB")], subject="loudspeaker/centre", figure=2.0, source="its own sheet"),
    Case(LOSS, "pass", WEAVE, [_lossy("6 dB")], subject="loudspeaker/centre"),
    Case(LOSS, "fail", WEAVE, [_lossy("7.5 dB")], subject="loudspeaker/centre", level="warning", says="loses 7.5 dB at 8 kHz"),
    Case(LOSS, "review", WEAVE, [_lossy("6.5 dB ± 1 dB")], subject="loudspeaker/centre"),
    Case(LOSS, "open", WEAVE, [WOVEN], subject="loudspeaker/centre", says="loss"),
    Case(LOSS, "open", BEHIND, subject="loudspeaker/centre", says="product"),
    Case(LOSS, "open", WEAVE, [changed(_lossy("2 dB"), {"picture.transparent": False})], subject="loudspeaker/centre", says="heard-through-screen"),
    Case(LOSS, "open", nowhere(WEAVE), [_lossy("2 dB")], subject="loudspeaker/centre"),
    Case(LOSS, "notApplicable", WEAVE, [_lossy("2 dB")], subject="loudspeaker/left", says="not between"),
    Case(LOSS, "notApplicable", changed(BEHIND, {"picture": "none"}), says="no picture"),
    Case(INSIDE, "pass", SHOWN, subject="picture/picture", figure=0.1, source="3.5 - 3.4 m off the front wall"),
    Case(INSIDE, "fail", changed(SHOWN, {"picture.width": "5.6 m"}), subject="picture/picture", level="error", figure=-0.3, source="half of 5.6 m less half of 5.0 m", says="0.30 m beyond a surface"),
    Case(INSIDE, "fail", changed(LINED, {"treatments.0.from_wall_left": None, "treatments.0.from_wall_right": "5.4 m"}), subject="treatment/panel", figure=-0.3, source="6 - 5.4 - 0.9 m: before its wall begins"),
    Case(INSIDE, "fail", changed(OVERHEAD, {"treatments.0.from_left": None, "treatments.0.from_right": "3.2 m"}), subject="treatment/cloud", figure=-0.2, source="5 - 3.2 - 2.0 m: through the left wall"),
    Case(INSIDE, "fail", changed(WIRED, {f"{SOCKET}.from_wall_left": None, f"{SOCKET}.from_right": "5.3 m"}), subject="receptacle/outlet+circuit/c1", figure=-0.3, source="the rear wall runs from the right, 5 m: 5.3 - 5 m"),
    Case(INSIDE, "fail", changed(SHOWN, {"picture.centre.height": "2.2 m"}), figure=-0.25, source="2.2 + 0.65 - 2.6 m"),
    Case(INSIDE, "fail", changed(SHOWN, {"picture.centre.height": "0.5 m"}), figure=-0.15, source="0.5 - 0.65 m: through the floor"),
    # 1.6 m at the front wall, 1.4 m more over 6 m: 2.1 m up it is through the slope, its middle is not.
    Case(INSIDE, "fail", changed(SHOWN, {"room.ceiling": SLOPE, "picture.centre.height": "1.3 m"}), subject="picture/picture", level="error"),
    # Hung flat, as far as a tape can tell.
    Case(INSIDE, "pass", taped(changed(SHOWN, {"picture.centre.from_front": "0 m"})), subject="picture/picture"),
    # A screen that nothing says the wall of stands across the way that the seat looks.
    Case(INSIDE, "fail", changed(SHOWN, {"picture.mounting": None, "picture.width": "5.6 m"}), figure=-0.3, source="half of 5.6 m less half of 5.0 m"),
    # Of a picture without a size only its middle can be outside.
    Case(INSIDE, "pass", changed(SHOWN, {"picture.width": None, "picture.centre.height": "2.5 m"}), figure=0.1, source="2.6 - 2.5 m"),
    # A panel without its size may reach out of the room: what is known of it says only that it may be inside.
    *(Case(INSIDE, "open", changed(LINED, {f"treatments.0.{key}": None}), subject="treatment/panel", says=key) for key in ("width", "height")),
    Case(INSIDE, "fail", changed(LINED, {"treatments.0.height": None, "treatments.0.bottom": "2.8 m"}), subject="treatment/panel"),
    Case(INSIDE, "review", taped(changed(SHOWN, {"picture.width": "5.1 m"})), subject="picture/picture"),
    Case(INSIDE, "open", changed(SHOWN, {"picture.centre": None}), subject="picture/picture", says="centre"),
    Case(INSIDE, "pass", PROJECTED, subject="projector/projector", figure=0.4, source="2.6 - 2.2 m"),
    Case(INSIDE, "fail", changed(PROJECTED, {"picture.projector.lens.from_front": "9 m"}), subject="projector/projector", level="error", figure=-3.0, source="6 - 9 m"),
    Case(INSIDE, "open", changed(PROJECTED, {"picture.projector.lens": None}), subject="projector/projector", says="lens"),
    Case(INSIDE, "pass", RACKED, subject="rack/rack", figure=0.0, source="it stands on the floor"),
    Case(INSIDE, "fail", changed(RACKED, {"electronics.racks.0.position.from_left": "5.4 m"}), subject="rack/rack", figure=-0.4, source="5.0 - 5.4 m"),
    # 0.6 m deep, its back to the right wall, its front 0.5 m before that: 0.1 m through it.
    Case(
        INSIDE, "fail", changed(RACKED, {"electronics.racks.0": {"id": "rack", "position": at(2.0, 0.0, -1.2), "facing": "90 deg", "width": "0.6 m", "height": "1 m", "depth": "0.6 m"}}),
        subject="rack/rack", figure=-0.1, source="5.0 - 4.5 - 0.6 m",
    ),
    Case(INSIDE, "open", changed(RACKED, {"electronics.racks.0.position": None}), subject="rack/rack", says="position"),
    Case(INSIDE, "pass", LINED, subject="treatment/panel", figure=0.6, source="its lower edge above the floor; 0.8 m to the ceiling"),
    Case(INSIDE, "fail", changed(LINED, {"treatments.0.from_wall_left": "5.3 m"}), subject="treatment/panel", level="error", figure=-0.2, source="6.0 - 5.3 - 0.9 m"),
    Case(INSIDE, "fail", changed(LINED, {"treatments.0.bottom": "1.6 m"}), subject="treatment/panel", figure=-0.2, source="2.6 - 1.6 - 1.2 m"),
    Case(INSIDE, "open", changed(LINED, {"treatments.0.from_wall_left": None}), subject="treatment/panel", says="from_wall_left"),
    Case(INSIDE, "pass", OVERHEAD, subject="treatment/cloud", figure=1.5, source="from the left, and 5.0 - 1.5 - 2.0 m from the right"),
    Case(INSIDE, "fail", changed(OVERHEAD, {"treatments.0.from_front": "5.2 m"}), subject="treatment/cloud", figure=-0.4, source="6.0 - 5.2 - 1.2 m"),
    Case(INSIDE, "pass", WIRED, subject="receptacle/outlet+circuit/c1", figure=0.4, source="from the wall's left-hand end"),
    Case(INSIDE, "fail", changed(WIRED, {f"{SOCKET}.from_wall_left": "30 m"}), subject="receptacle/outlet+circuit/c1", level="error", figure=-25.0, source="5 - 30 m"),
    Case(INSIDE, "fail", changed(WIRED, {f"{SOCKET}.wall": "ceiling", f"{SOCKET}.height": "2.9 m"}), figure=-0.3, source="2.6 - 2.9 m"),
    Case(INSIDE, "pass", STEPPED, subject="receptacle/outlet+circuit/c1", figure=0.4, source="from the step's left-hand end"),
    # Past the end of a wall that pokes into the room it hangs in the air, which is in the room and on no wall.
    Case(INSIDE, "fail", changed(STEPPED, {f"{SOCKET}.from_wall_left": "2.9 m"}), subject="receptacle/outlet+circuit/c1", figure=-0.4, source="2.5 - 2.9 m"),
    Case(INSIDE, "open", changed(WIRED, {f"{SOCKET}.from_wall_left": None}), subject="receptacle/outlet+circuit/c1"),
    # Outside the walls is outside under any ceiling; inside them the ceiling decides.
    Case(INSIDE, "fail", changed(SHOWN, {"picture.width": "5.6 m", "room.ceiling": None}), subject="picture/picture", level="error", figure=-0.3, source="half of 5.6 m less half of 5.0 m"),
    Case(INSIDE, "fail", changed(LINED, {"treatments.0.from_wall_left": "5.3 m", "room.ceiling": None}), subject="treatment/panel", figure=-0.2, source="6.0 - 5.3 - 0.9 m"),
    Case(INSIDE, "fail", changed(WIRED, {f"{SOCKET}.from_wall_left": "30 m", "room.ceiling": None}), subject="receptacle/outlet+circuit/c1", figure=-25.0, source="5 - 30 m"),
    Case(INSIDE, "open", changed(SHOWN, {"room.ceiling": None}), subject="picture/picture", says="ceiling"),
    Case(INSIDE, "open", changed(LINED, {"room.ceiling": None}), subject="treatment/panel", says="ceiling"),
    Case(INSIDE, "pass", changed(OVERHEAD, {"room.ceiling": None}), subject="treatment/cloud", figure=1.5, source="from the left"),
    Case(INSIDE, "notApplicable", BARE),
    # A circuit's plan says of most receptacles nothing but that they are there.
    Case(INSIDE, "open", changed(WIRED, {f"{SOCKET}.wall": None, f"{SOCKET}.from_wall_left": None}), says="wall"),
    Case(OPENINGS, "fail", GLAZED, subject="picture/picture+opening/window", level="error", figure=-0.7, source="2.0 m less the picture's left edge, 2.5 - 1.2 m", says="0.70 m across the window"),
    Case(OPENINGS, "fail", changed(GLAZED, {"picture.kind": "projection"}), level="warning", figure=-0.7, source="2.0 - 1.3 m"),
    Case(OPENINGS, "pass", changed(GLAZED, {"room.openings.0.from_wall_left": "0.1 m"}), figure=0.2, source="1.3 - 0.1 - 1.0 m"),
    # Under the picture, whose lower edge is 0.80 m up.
    Case(OPENINGS, "pass", changed(GLAZED, {"room.openings.0.sill": "0.1 m", "room.openings.0.height": "0.6 m"}), figure=0.1, source="1.45 - 0.65 - 0.7 m"),
    Case(OPENINGS, "review", taped(changed(GLAZED, {"room.openings.0.from_wall_left": "0.31 m"}))),
    Case(OPENINGS, "fail", DOORED, subject="treatment/panel+opening/door", level="warning", figure=-0.4, source="2.0 + 0.9 - 2.5 m", says="across the door"),
    Case(OPENINGS, "pass", changed(DOORED, {"treatments.0.from_wall_left": "1.0 m"}), figure=0.6, source="2.5 - 1.0 - 0.9 m"),
    # A curtain across a door hides the way out; before a window it is where it belongs.
    Case(OPENINGS, "fail", DRAPED, subject="treatment/drape+opening/door", level="warning", figure=-1.3, source="2.5 + 0.8 - 2.0 m"),
    Case(OPENINGS, "notApplicable", changed(DRAPED, {"room.openings.0.kind": "window"}), says="before a window"),
    Case(OPENINGS, "open", changed(DRAPED, {"treatments.0.width": None}), says="width"),
    Case(OPENINGS, "open", changed(SHOWN, {"room.openings": None}), says="openings"),
    Case(THROUGH, "pass", BEHIND, subject="loudspeaker/centre"),
    Case(THROUGH, "fail", changed(BEHIND, {"picture.transparent": False}), subject="loudspeaker/centre", level="error", says="no sound pass"),
    Case(THROUGH, "fail", changed(BEHIND, {"picture.kind": "display"}), subject="loudspeaker/centre", level="error", says="display"),
    Case(THROUGH, "fail", changed(DECLARED, {"picture.transparent": False}), subject="loudspeaker/centre"),
    Case(THROUGH, "fail", changed(DECLARED, {"picture": "none"}), subject="loudspeaker/centre", says="no picture"),
    Case(THROUGH, "open", changed(DECLARED, {"picture": None}), says="picture"),
    Case(THROUGH, "open", changed(BEHIND, {"picture.transparent": None}), subject="loudspeaker/centre", says="transparent"),
    Case(THROUGH, "pass", changed(BEHIND, {"picture.transparent": None, "picture.product": "woven"}), [WOVEN], subject="loudspeaker/centre"),
    Case(THROUGH, "fail", changed(BEHIND, {"picture.product": "closed"}), [CLOSED], subject="loudspeaker/centre"),
    Case(
        THROUGH, "fail", changed(BEHIND, {"loudspeakers.0.behind_screen": False}), subject="loudspeaker/centre",
        says="not to be behind",
    ),
    Case(
        THROUGH, "fail", changed(BEHIND, {"loudspeakers.1.behind_screen": True}), subject="loudspeaker/left",
        says="does not hide it",
    ),
    Case(THROUGH, "open", nowhere(BEHIND), subject="loudspeaker/centre"),
    Case(THROUGH, "notApplicable", BEHIND, subject="loudspeaker/left", says="not between"),
    Case(THROUGH, "notApplicable", changed(BEHIND, {"picture": "none"}), says="no picture"),
    Case(OPENINGS, "open", changed(GLAZED, {"picture.width": None}), says="width"),
    Case(OPENINGS, "open", changed(GLAZED, {"picture.mounting": None}), says="mounting"),
    Case(OPENINGS, "open", changed(DOORED, {"treatments.0.height": None}), says="height"),
    Case(OPENINGS, "notApplicable", EMPTY),
    Case(OPENINGS, "notApplicable", changed(GLAZED, {"room.openings.0.wall": "rear"}), says="elsewhere"),
    Case(OPENINGS, "notApplicable", changed(GLAZED, {"picture.mounting.on": "ceiling"}), says="hangs on the ceiling"),
    Case(OPENINGS, "notApplicable", changed(GLAZED, {"picture.mounting.on": "stand"}), says="stands on a stand"),
]  # fmt: skip
EDGES = [
    Edge(FITS, FILLED, f"{IN}.height", 0.3, 0.6, 1, products=device()),
    Edge(CLEAR, COVERED, START, 2.5, 3.2, 1, products=[BOX], subject=SIDE),
    Edge(BESIDE, changed(PANED, {UP: "1.2 m"}), ALONG, 0.2, 1.4, 1),
    Edge(INSIDE, SHOWN, "picture.width", 2.0, 6.0, 1, subject="picture/picture"),
    Edge(INSIDE, WIRED, f"{SOCKET}.from_wall_left", 1.0, 8.0, 1, subject="receptacle/outlet+circuit/c1"),
    Edge(OPENINGS, changed(GLAZED, {"picture.kind": "projection"}), MIDDLE, 2.5, 3.6, 1),
    Edge(OPENINGS, GLAZED, MIDDLE, 2.5, 3.6, 2),
    Edge(
        LOSS,
        WEAVE,
        "picture.loss",
        1.0,
        12.0,
        1,
        unit="dB",
        subject="loudspeaker/centre",
        products=[_lossy("2 dB")],
        sheet="woven",
    ),
]
