"""Cases of walls near seats and loudspeakers, and of what stands close to a cabinet's faces.

The sample room is 5 by 6 m under 2.6 m; its ear is 2.5 m from the left, 3.5 m from the front and 1.2 m up.
"""

from __future__ import annotations

from typing import Any

from roomlint.edges import Edge
from roomlint.sample import room, speaker
from roomlint.testing import Case, Never, changed

HAND = "by hand"
STAND: dict[str, Any] = {"mounting": {"on": "stand"}, "product": "box", "aim": {"azimuth": "180 deg"}}
BOX = {
    "roomlint_product": 1, "id": "box", "kind": "loudspeaker",
    "width": "0.20 m", "height": "0.30 m", "depth": "0.30 m",
    "loudspeaker": {"port": {"face": "rear", "diameter": "60 mm"}},
}  # fmt: skip
CLOSED = changed(BOX, {"loudspeaker.port.face": "none"})
FORWARD = changed(BOX, {"loudspeaker.port.face": "front"})
DOWN = changed(BOX, {"loudspeaker.port.face": "bottom"})
MAKER = changed(BOX, {"loudspeaker.port.clearance": "0.4 m"})
LOW = {
    "roomlint_product": 1, "id": "low", "kind": "subwoofer", "width": "0.40 m", "height": "0.40 m", "depth": "0.40 m",
    "loudspeaker": {"port": {"face": "none"}},
}  # fmt: skip
SHEETS = (BOX, LOW)
CENTRE = "loudspeaker/centre"
BARE = room()


def stands(front: float, left: float = 2.5, **more: Any) -> dict[str, Any]:
    """Return a room with a centre on a stand that faces the rear, so far from the front and from the left."""
    return room(speaker("centre", "M+000", left - 2.5, 3.5 - front, **{**STAND, **more}))


def toed(front: float, left: float, azimuth: str) -> dict[str, Any]:
    return stands(front, left, aim={"azimuth": azimuth})


def sub(front: float, own: str | None = None, **more: Any) -> dict[str, Any]:
    """Return a room with a subwoofer on the floor that faces the rear and may have a low-pass of its own."""
    place = {"from_left": "2.5 m", "from_front": f"{front} m", "height": "0.2 m"}
    one = {"id": "low", "position": place, "facing": "180 deg", "product": "low", "mounting": {"on": "floor"}, **more}
    return room(subwoofers=[{**one, "low_pass": own} if own else one])


def tolerated(data: dict[str, Any]) -> dict[str, Any]:
    return changed(data, {"survey.tolerance": "30 mm"})


POST = {"id": "post", "kind": "post", "from_left": "2.45 m", "from_front": "2.0 m", "width": "0.1 m", "depth": "0.1 m"}
CROSSED = {"calibration": {"settings": [{"id": "low", "crossover": "80 Hz"}]}}
SEAT_AT = {"seats.0.ear.from_front": "5.7 m"}
# An L: the leg at the right rear makes a corner that pokes into the room at 3 m from the left and 4 m from the front.
ELL = changed(
    stands(3.9, 2.9),
    {
        "room.size": None,
        "room.outline": [
            {"from_left": f"{x} m", "from_front": f"{y} m", "wall": f"w{number}"}
            for number, (x, y) in enumerate(((0, 0), (3, 0), (3, 4), (5, 4), (5, 6), (0, 6)))
        ],
    },
)
# The front wall written in two pieces, with a corner at 2.5 m that is none.
TWO_PIECES = changed(
    stands(0.4),
    {
        "room.size": None,
        "room.outline": [
            {"from_left": f"{x} m", "from_front": f"{y} m", "wall": f"w{number}"}
            for number, (x, y) in enumerate(((0, 0), (2.5, 0), (5, 0), (5, 6), (0, 6)))
        ],
    },
)
UNHELD = changed(stands(0.6), {"loudspeakers.0.mounting": None})
ON_WALL = stands(0.2, mounting={"on": "front"})
LOST = changed(stands(0.6), {"loudspeakers.0.position": None})

CASES: list[Case | Never] = [
    Case("boundary.seat-to-wall", "pass", BARE, figure=2.5, source="half of 5 m and 6 m less 3.5 m"),
    Case("boundary.seat-to-wall", "fail", changed(BARE, SEAT_AT), level="warning", figure=0.3, source="6 m less 5.7 m",
         says="from the rear wall"),
    Case("boundary.seat-to-wall", "fail", changed(BARE, {"seats.0.ear.from_front": "5.1 m"}), level="note"),
    Case("boundary.seat-to-wall", "fail",
         changed(BARE, {"seats.0.ear.from_front": "5.1 m", "project.reference": "critical"}), level="warning"),
    Case("boundary.seat-to-wall", "review", tolerated(changed(BARE, {"seats.0.ear.from_front": "5.49 m"}))),
    Case("boundary.seat-to-wall", "open", changed(BARE, {"seats.0.ear": None})),
    Case("boundary.seat-to-wall", "notApplicable", changed(BARE, {"seats": "none"})),
    # Half a metre to the wall less 0.30 m of cabinet leaves 0.20 m; two diameters are 0.12 m, 0.15 m is the least.
    Case("boundary.port-clearance", "pass", stands(0.5), SHEETS, CENTRE, figure=0.20, source="0.50 m - 0.30 m"),
    Case("boundary.port-clearance", "fail", stands(0.4), SHEETS, CENTRE, level="warning", figure=0.10,
         source="0.40 m - 0.30 m", says="the port in its rear"),
    Case("boundary.port-clearance", "fail", stands(0.34), SHEETS, CENTRE, level="error", figure=0.04,
         source="0.34 m - 0.30 m"),
    Case("boundary.port-clearance", "fail", stands(0.5), (MAKER, LOW), CENTRE, level="warning", says="0.40 m"),
    # A downward port of 60 mm: 16 mm is more than a quarter of it and less than one diameter; 5 mm is less than either.
    Case("boundary.port-clearance", "fail", stands(0.5, port_clearance="16 mm"), (DOWN, LOW), CENTRE, level="warning"),
    Case("boundary.port-clearance", "fail", stands(0.5, port_clearance="5 mm"), (DOWN, LOW), CENTRE, level="error"),
    Case("boundary.port-clearance", "pass", stands(0.5, port_clearance="70 mm"), (DOWN, LOW), CENTRE),
    # 5 mm is too little with the maker's figure as it is without.
    Case("boundary.port-clearance", "fail", stands(0.5, port_clearance="5 mm"), (MAKER, LOW), CENTRE, level="error"),
    Case("boundary.port-clearance", "fail", stands(0.5, port_clearance="5 mm"), SHEETS, CENTRE, level="error"),
    # A measured clearance is judged before whichever face the port is in.
    Case("boundary.port-clearance", "fail", stands(0.5, port_clearance="30 mm"), (FORWARD, LOW), CENTRE, level="error",
         says="the port in its front"),
    Case("boundary.port-clearance", "review", tolerated(stands(0.46)), SHEETS, CENTRE),
    Case("boundary.port-clearance", "open", stands(0.5), (DOWN, LOW), CENTRE, says="port_clearance"),
    Case("boundary.port-clearance", "open", stands(0.5), (changed(BOX, {"depth": None}), LOW), CENTRE, says="depth"),
    Case("boundary.port-clearance", "notApplicable", stands(0.5), (CLOSED, LOW), CENTRE, says="no port"),
    Case("boundary.port-clearance", "notApplicable", stands(0.5), (FORWARD, LOW), CENTRE, says="faces the room"),
    Case("boundary.free-standing", "pass", stands(0.5), SHEETS, figure=0.5, source="as measured"),
    Case("boundary.free-standing", "fail", stands(0.25), SHEETS, level="note", says="from the front wall"),
    Case("boundary.free-standing", "fail", changed(stands(0.5), {"project.reference": "critical"}), SHEETS,
         level="warning"),
    Case("boundary.free-standing", "review", tolerated(stands(0.31)), SHEETS),
    Case("boundary.free-standing", "open", LOST, SHEETS),
    # What holds it decides whether it stands free: without that nobody knows.
    Case("boundary.free-standing", "open", UNHELD, SHEETS, says="mounting"),
    Case("boundary.free-standing", "notApplicable", ON_WALL, SHEETS),
    # The cabinet's front is at 1.6 m and the post's face at 2.0 m.
    Case("boundary.front-face", "fail", changed(stands(1.6), {"room.obstacles": [POST]}), SHEETS, CENTRE,
         level="warning", figure=0.4, source="2.0 m - 1.6 m"),
    Case("boundary.front-face", "pass", changed(stands(0.6), {"room.obstacles": [POST]}), SHEETS, CENTRE, figure=1.4,
         source="2.0 m - 0.6 m"),
    # Its axis 0.12 m beside the post: the cabinet is 0.20 m wide and its edge still runs into it.
    Case("boundary.front-face", "fail", changed(stands(1.6, 2.63), {"room.obstacles": [POST]}), SHEETS, CENTRE,
         figure=0.4, source="2.0 m - 1.6 m"),
    Case("boundary.front-face", "pass", changed(stands(1.6, 2.7), {"room.obstacles": [POST]}), SHEETS, CENTRE,
         figure=4.4, source="6.0 m - 1.6 m"),
    # Turned to the front wall, five and two centimetres before it: what is that near is told like any other.
    Case("boundary.front-face", "fail", toed(0.05, 2.5, "0 deg"), SHEETS, CENTRE, figure=0.05, source=HAND),
    Case("boundary.front-face", "fail", toed(0.02, 2.5, "0 deg"), SHEETS, CENTRE, figure=0.02, source=HAND),
    Case("boundary.front-face", "fail", sub(0.08, facing="0 deg"), SHEETS, "subwoofer/low", figure=0.08, source=HAND),
    # A subwoofer on the floor: a hair of tolerance does not put the floor before its front.
    Case("boundary.front-face", "pass", tolerated(sub(0.5)), SHEETS, "subwoofer/low", figure=5.5, source=HAND),
    Case("boundary.front-face", "review", tolerated(sub(5.89)), SHEETS, "subwoofer/low"),
    Case("boundary.front-face", "open", LOST, SHEETS, CENTRE),
    Case("boundary.front-face", "notApplicable", BARE, SHEETS),
    Case("boundary.cabinet-room", "pass", stands(0.6), SHEETS, figure=0.3, source="0.60 m - 0.30 m"),
    Case("boundary.cabinet-room", "fail", stands(0.25), SHEETS, level="warning", figure=-0.05, source="0.25 - 0.30 m"),
    Case("boundary.cabinet-room", "fail", stands(1.0, 0.12), SHEETS, level="note", figure=0.02, source="0.12 - 0.10 m"),
    # Turned 30 deg to the right and away from the front wall: the rear left corner is 0.30 cos 30 + 0.10 sin 30 =
    # 0.3098 m behind the centre, while the middle of its back, 0.2598 m behind, is still inside.
    Case("boundary.cabinet-room", "fail", toed(0.285, 2.5, "210 deg"), SHEETS, level="warning", figure=-0.0248,
         within=1e-3, source="0.285 - 0.30 cos 30 - 0.10 sin 30"),
    Case("boundary.cabinet-room", "review", tolerated(stands(0.31)), SHEETS),
    Case("boundary.cabinet-room", "open", stands(0.6), (changed(BOX, {"width": None}), LOW), says="width"),
    Case("boundary.cabinet-room", "open", UNHELD, SHEETS, says="mounting"),
    Case("boundary.cabinet-room", "notApplicable", ON_WALL, SHEETS),
    Case("boundary.corner", "pass", stands(0.6), SHEETS, figure=2.5710, source="hypot(2.5, 0.6)"),
    Case("boundary.corner", "fail", stands(0.3, 0.3), SHEETS, level="note", figure=0.42426, source="0.3 x root of 2"),
    # The corner 0.14 m away pokes into the room; the nearest that encloses is at 5 m from the left and 4 m from the front.
    Case("boundary.corner", "pass", ELL, SHEETS, figure=2.1024, source="hypot(2.1, 0.1)"),
    Case("boundary.corner", "pass", TWO_PIECES, SHEETS, figure=2.5318, source="hypot(2.5, 0.4)"),
    Case("boundary.corner", "review", tolerated(stands(0.36, 0.36)), SHEETS),
    Case("boundary.corner", "open", LOST, SHEETS),
    Case("boundary.corner", "open", UNHELD, SHEETS, says="mounting"),
    Case("boundary.corner", "notApplicable", ON_WALL, SHEETS),
    # 343.2 / (4 x 0.5) = 171.6 Hz over 80 Hz.
    Case("boundary.subwoofer-null", "pass", sub(0.5), SHEETS, figure=2.145, source="343.2 m/s over 2 m and 80 Hz"),
    Case("boundary.subwoofer-null", "fail", sub(1.0), SHEETS, level="note", figure=1.0725, source="343.2 / 4 / 80"),
    Case("boundary.subwoofer-null", "pass", sub(1.0, "40 Hz"), SHEETS, figure=2.145, source="343.2 / 4 / 40"),
    Case("boundary.subwoofer-null", "fail", sub(0.5, "120 Hz"), SHEETS, figure=1.43, source="171.6 / 120"),
    # The processor's crossover ends the band below a filter of its own that is turned up out of the way.
    Case("boundary.subwoofer-null", "pass", changed(sub(0.5, "160 Hz"), CROSSED), SHEETS, figure=2.145, source="171.6 / 80"),
    Case("boundary.subwoofer-null", "review", tolerated(sub(0.535)), SHEETS),
    Case("boundary.subwoofer-null", "open", changed(sub(0.5), {"subwoofers.0.position": None}), SHEETS),
    Case("boundary.subwoofer-null", "notApplicable", stands(0.5), SHEETS),
]  # fmt: skip

FRONT = "loudspeakers.0.position.from_front"
EDGES: list[Edge] = [
    Edge("boundary.seat-to-wall", changed(BARE, SEAT_AT), "seats.0.ear.from_front", 3.6, 5.9, 2),
    Edge("boundary.port-clearance", stands(0.5), FRONT, 0.31, 1.0, 2, products=SHEETS),
    Edge("boundary.free-standing", stands(0.5), FRONT, 0.1, 1.0, 1, products=SHEETS),
    Edge("boundary.front-face", stands(5.0), FRONT, 4.0, 5.9, 1, products=SHEETS),
    Edge("boundary.front-face", sub(5.0), "subwoofers.0.position.from_front", 4.0, 5.97, 1, products=SHEETS),
    Edge("boundary.cabinet-room", stands(0.5), FRONT, 0.2, 0.6, 2, products=SHEETS),
    Edge("boundary.corner", stands(0.3, 0.3), FRONT, 0.1, 1.0, 1, products=SHEETS),
    Edge("boundary.subwoofer-null", sub(0.5), "subwoofers.0.position.from_front", 0.2, 1.2, 1, products=SHEETS),
]
