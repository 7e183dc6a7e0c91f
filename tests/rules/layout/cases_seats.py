"""Cases of the seats."""

from __future__ import annotations

from offsets import BARE, EMPTY, HAND, LS, PICTURE, RS, C, L, R, at, nowhere, room, speaker, taped

from roomlint.edges import Edge
from roomlint.testing import Case, Never, changed

SIGHT, HEADS, EAR, AXIS = "layout.line-of-sight", "layout.over-heads", "layout.ear-height", "layout.on-axis"
AHEAD = "layout.picture-ahead"
FIVE = room(L, R, C, LS, RS)
POST = {"id": "post", "kind": "post", "from_left": "2.4 m", "from_front": "1.5 m", "width": "0.2 m", "depth": "0.2 m", "bottom": "0 m", "top": "2.6 m"}  # fmt: skip
# A loudspeaker 1.0 m high 3.5 m ahead, a rear ear 1.3 m high 0.8 m back, a front head up to 1.30 m at 0.5 m ahead.
ROWS = changed(
    room(speaker("front", "M+000", 0.0, 3.4, -0.2)),
    {
        "seats.0.ear": at(0.0, 0.4, -0.1),
        "seats.0.row": 1,
        "seats.0.head_top": "1.30 m",
        "seats.1": {"id": "rear", "ear": at(0.0, -0.9, 0.1), "row": 2},
    },
)
FRONTS = changed(
    ROWS,
    {
        "loudspeakers.1": speaker("low", "B+000", 0.0, 3.3, -0.6),
        "loudspeakers.2": speaker("wide", "M+030", -0.3, 3.3, -0.2),
    },
)
SCREEN = room(L, R, picture=PICTURE)
ASIDE = changed(SCREEN, {"seats.0.ear.from_left": "3.1 m"})
# The seat looks to the left wall, and the picture hangs there: 0.2 m off it, 2.3 m ahead.
TURNED = changed(SCREEN, {"seats.0.facing": "90 deg", "picture.centre": at(-2.3, 0.4)})

BACK = "layout.seat-back"
SAT = changed(FIVE, {"seats.0.back_top": "1.10 m"})

# Across the line from the centre to the ear, both 1.2 m up under 2.6 m.
SAIL = {"id": "sail", "kind": "canopy", "on": "ceiling", "from_left": "2.0 m", "from_front": "1.5 m", "width": "1.0 m",
        "height": "0.6 m", "thickness": "0.2 m", "mounting": {"on": "ceiling", "drop": "1.3 m"}}  # fmt: skip

CASES: list[Case | Never] = [
    Case(BACK, "pass", SAT, figure=-0.1, source="1.10 less 1.20 m"),
    Case(BACK, "fail", changed(SAT, {"seats.0.back_top": "1.30 m"}), level="note", figure=0.1, source="1.30 less 1.20 m"),
    Case(BACK, "review", taped(changed(SAT, {"seats.0.back_top": "1.21 m"}))),
    Case(BACK, "open", FIVE, says="back_top"),
    Case(BACK, "open", changed(room(L, R, speaker("other", None, 1.0, -1.0)), {"seats.0.back_top": "1.1 m"}), says="label"),
    Case(BACK, "notApplicable", room(L, R, C)),
    Case(BACK, "notApplicable", EMPTY),
    Case(BACK, "notApplicable", BARE),
    Case(SIGHT, "pass", FIVE),
    Case(SIGHT, "fail", changed(room(C), {"room.obstacles": [POST]}), level="warning", says="post stands between"),
    Case(SIGHT, "pass", changed(room(L), {"room.obstacles": [POST]})),
    Case(SIGHT, "open", nowhere(room(C))),
    Case(SIGHT, "open", room(speaker("side", "M-090", 2.7, 0.0)), says="layout.inside-room"),
    # Of a file that does not speak of obstacles nobody knows what stands in the way.
    Case(SIGHT, "open", changed(FIVE, {"room.obstacles": None}), says="obstacles"),
    Case(SIGHT, "fail", changed(room(C), {"room.obstacles": [POST]}), says="post"),
    Case(SIGHT, "fail", changed(room(C), {"treatments": [SAIL]}), says="sail stands between"),
    Case(SIGHT, "pass", changed(room(C), {"treatments": [{**SAIL, "mounting": {"on": "ceiling", "drop": "0.3 m"}}]})),
    Case(SIGHT, "open", changed(room(C), {"treatments": None}), says="treatments"),
    Case(SIGHT, "notApplicable", EMPTY),
    # The picture is 3.4 m ahead and as far to the side as is told; a picture at the rear wall is behind the seat.
    Case(AHEAD, "pass", SCREEN, figure=0.0, source="straight ahead"),
    Case(AHEAD, "fail", changed(SCREEN, {"picture.centre": at(0.0, -2.3)}), level="error", figure=180.0, source="straight behind", says="180.0 deg to the side"),
    Case(AHEAD, "fail", changed(SCREEN, {"seats.0.facing": "70 deg"}), level="warning", figure=70.0, source="as it is turned"),
    # Past the threshold of discomfort the neck is turned all evening.
    Case(AHEAD, "fail", changed(SCREEN, {"seats.0.facing": "20 deg"}), level="note", figure=20.0, source="as it is turned"),
    Case(AHEAD, "review", changed(SCREEN, {"seats.0.facing": "58 deg ± 5 deg"})),
    Case(AHEAD, "open", changed(SCREEN, {"picture": None}), says="picture"),
    Case(AHEAD, "open", changed(SCREEN, {"picture.centre": None}), says="centre"),
    Case(AHEAD, "notApplicable", EMPTY, says="no picture"),
    # Similar triangles: 1.0 + 0.3 x 3.0 / 4.3 = 1.209 m, 0.091 m below the top of the head.
    Case(HEADS, "fail", ROWS, subject="seat/rear", level="warning", figure=-0.0907, source="similar triangles by hand"),
    # 0.1907 m short, and an ear higher by h lifts the line at the head by 3.0 / 4.3 of it: 0.273 m.
    Case(HEADS, "fail", ROWS, subject="seat/rear", says="or the ear by 0.27 m"),
    # More than three steps up no row is raised: then the loudspeakers or the seats must move.
    Case(HEADS, "fail", changed(ROWS, {"seats.0.head_top": "1.60 m"}), subject="seat/rear", says="would need an ear"),
    # Three loudspeakers over one head are one finding.
    Case(HEADS, "fail", FRONTS, subject="seat/rear", says="front, low, wide through seat's head"),
    Case(HEADS, "pass", changed(ROWS, {"loudspeakers.0.position.height": "2.0 m"}), subject="seat/rear"),
    Case(HEADS, "pass", ROWS, subject="seat/seat"),
    Case(HEADS, "pass", changed(ROWS, {"seats.0.ear.from_left": "3.2 m"}), subject="seat/rear", says="no head"),
    Case(HEADS, "review", taped(changed(ROWS, {"loudspeakers.0.position.height": "1.62 m"})), subject="seat/rear"),
    Case(HEADS, "open", changed(ROWS, {"seats.0.head_top": None}), subject="seat/rear"),
    # A head that is in the way is told, whatever else has no place; what is clear of the rest may not be clear of that.
    Case(HEADS, "fail", nowhere(FRONTS, 1), subject="seat/rear", says="seat's head"),
    Case(HEADS, "open", changed(ROWS, {"loudspeakers.0.position": None}), subject="seat/rear", says="position"),
    Case(HEADS, "open", changed(ROWS, {"seats.0.ear": None}), subject="seat/rear", says="ear"),
    Case(HEADS, "open", changed(ROWS, {"loudspeakers": None}), subject="seat/rear", says="loudspeakers"),
    Case(HEADS, "notApplicable", BARE),
    Case(EAR, "pass", EMPTY, figure=1.2, source="as measured"),
    Case(EAR, "pass", changed(EMPTY, {"seats.0.ear.height": "1.45 m", "seats.0.riser": "0.30 m"}), figure=1.15, source="1.45 m - 0.30 m"),
    Case(EAR, "fail", changed(EMPTY, {"seats.0.ear.height": "1.45 m"}), level="note", figure=1.45, source="as measured"),
    Case(EAR, "fail", changed(EMPTY, {"seats.0.ear.height": "0.4 m"}), level="error", figure=0.4, source="as measured"),
    Case(EAR, "review", changed(EMPTY, {"seats.0.ear.height": "1.04 m ± 2 cm"})),
    Case(EAR, "open", changed(EMPTY, {"seats.0.ear": None})),
    Case(EAR, "notApplicable", BARE),
    Case(AXIS, "pass", SCREEN, figure=0.0, source="straight behind the middle"),
    # 0.6 m beside the axis, 3.4 m away.
    Case(AXIS, "fail", ASIDE, level="note", figure=10.008, source=f"{HAND}: 0.6 / 3.4", says="seat seat"),
    Case(AXIS, "fail", changed(ASIDE, {"seats.0.ear.from_left": "3.5 m"}), level="warning", figure=16.39, source=f"{HAND}: 1.0 / 3.4"),
    Case(AXIS, "fail", changed(ASIDE, {"project.reference": "critical"}), level="warning"),
    # In a turned room the picture faces off the wall that it hangs on: 0.4 m beside its axis, 2.3 m away.
    Case(AXIS, "fail", TURNED, level="note", figure=9.866, source=f"{HAND}: 0.4 / 2.3"),
    Case(AXIS, "fail", changed(TURNED, {"picture.mounting": {"on": "left"}}), level="note", figure=9.866, source=f"{HAND}: 0.4 / 2.3"),
    Case(AXIS, "review", taped(changed(ASIDE, {"seats.0.ear.from_left": "3.41 m"}))),
    Case(AXIS, "open", changed(SCREEN, {"picture.centre": None})),
    Case(AXIS, "notApplicable", EMPTY),
]  # fmt: skip
EDGES = [
    Edge(BACK, SAT, "seats.0.back_top", 0.9, 1.5, 1),
    Edge(AHEAD, changed(SCREEN, {"seats.0.facing": "10 deg"}), "seats.0.facing", 5.0, 150.0, 3, unit="deg"),
    Edge(HEADS, ROWS, "loudspeakers.0.position.height", 0.9, 2.5, 1, subject="seat/rear"),
    Edge(EAR, EMPTY, "seats.0.ear.height", 0.5, 2.0, 4),
    Edge(AXIS, SCREEN, "seats.0.ear.from_left", 1.0, 4.0, 4),
    Edge(AXIS, changed(SCREEN, {"project.reference": "critical"}), "seats.0.ear.from_left", 1.0, 4.0, 2),
]  # fmt: skip
