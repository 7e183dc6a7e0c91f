"""Cases of chapter distance. Positions are offsets from the reference ear: to the right, to the front, up, in m."""

from __future__ import annotations

from typing import Any

from roomlint.testing import Case, Never, changed

HAND = "by hand"


def at(right: float, front: float, up: float = 0.0) -> dict[str, str]:
    return {"from_left": f"{2.5 + right:.4f} m", "from_front": f"{3.5 - front:.4f} m", "height": f"{1.2 + up:.4f} m"}


def speaker(name: str, label: str, *place: float) -> dict[str, Any]:
    return {"id": name, "label": label, "position": at(*place)}


def room(*speakers: dict[str, Any], seats: tuple[tuple[float, float], ...] = (), **more: Any) -> dict[str, Any]:
    others = [{"id": f"seat-{number}", "ear": at(*place)} for number, place in enumerate(seats, 2)]
    return {
        "roomlint": 1,
        "project": {"code": "case"},
        "room": {"size": {"width": "5 m", "length": "6 m"}, "ceiling": {"shape": "flat", "height": "2.6 m"}},
        "seats": [{"id": "seat", "ear": at(0, 0), "reference": True}, *others],
        "loudspeakers": list(speakers),
        **more,
    }


def settings(*entered: tuple[str, str, str]) -> dict[str, Any]:
    return {"settings": [{"id": name, key: value} for name, key, value in entered]}


def sheet(**data: str) -> dict[str, Any]:
    return {"roomlint_product": 1, "id": "processor", "kind": "processor", "processor": data}


def display(latency: str) -> dict[str, Any]:
    return {"roomlint_product": 1, "id": "screen", "kind": "display", "picture": {"video_latency": latency}}


L, R = speaker("left", "M+030", -1.5, 2.6), speaker("right", "M-030", 1.5, 2.6)
C = speaker("centre", "M+000", 0.0, 3.0)
BARE = room()
PROCESSOR: dict[str, Any] = {"processor": {"id": "brain", "product": "processor"}}
# In line ahead: 3.10, 2.85 and 2.10 m away need 0, 0.728 and 2.914 ms (0.25 and 1.00 m over 343.2 m/s).
LINE = room(
    speaker("far", "M+000", 0.0, 3.10),
    speaker("middle", "M+030", 0.0, 2.85),
    speaker("near", "M-030", 0.0, 2.10),
)
WIRED = {**LINE, "electronics": PROCESSOR}
AHEAD, BEHIND = speaker("ahead", "M+000", 0.0, 3.0), speaker("behind", "M+180", 0.0, -1.0)
# 3-4-5 triangles: 2.4 m and 3.4 m from the second seat, which stands where the reference ear would be.
SIDE_SEAT = changed(
    room(
        speaker("left", "M+030", -1.44, 1.92),
        speaker("right", "M-030", 2.04, 2.72),
        seats=((0.0, 0.0),),
        calibration=settings(("left", "delay", "0 ms"), ("right", "delay", "0 ms")),
    ),
    {"seats.0.ear": at(0.0, 0.6)},
)
SHOWN = room(electronics=PROCESSOR, picture={"kind": "display", "product": "screen"})
SYNC = [sheet(audio_latency="20 ms")]


CASES: list[Case | Never] = [
    Case("distance.base-width", "pass", room(L, R), figure=3.0, source=HAND),
    Case(
        "distance.base-width",
        "fail",
        room(speaker("left", "M+030", -0.8, 1.4), speaker("right", "M-030", 0.8, 1.4)),
        figure=1.6,
        source=HAND,
    ),
    Case("distance.base-width", "open", changed(room(L, R), {"loudspeakers.0.position": None})),
    Case("distance.base-width", "notApplicable", BARE),
    Case("distance.listening", "pass", room(C), figure=3.0, source=HAND),
    Case("distance.listening", "fail", room(speaker("left", "M+030", -0.9, 1.2)), figure=1.5, source="3-4-5 triangle"),
    Case("distance.listening", "open", changed(room(C), {"loudspeakers.0.position": None})),
    Case("distance.listening", "notApplicable", BARE),
    Case("distance.surround", "pass", room(C, speaker("ls", "M+110", -1.8, -2.4)), figure=0.0, source="3-4-5 triangle"),
    Case(
        "distance.surround",
        "fail",
        room(C, speaker("ls", "M+110", -1.5, -2.0)),
        figure=16.667,
        source="3-4-5 triangle: 2.5 over 3.0 m",
    ),
    Case("distance.surround", "open", changed(room(C, L), {"loudspeakers.1": {"id": "ls", "label": "M+110"}})),
    Case("distance.surround", "notApplicable", room(C)),
    Case(
        "distance.surround",
        "review",
        room(speaker("c", "M+000", 0, 0), speaker("ls", "M+110", -1.8, -2.4)),
        says="stands where the ear is",
    ),
    Case(
        "distance.delay-range",
        "pass",
        WIRED,
        [sheet(delay_range="12 ms")],
        subject="loudspeaker/near",
        figure=2.9138,
        source="1.00 m over 343.2 m/s by hand",
    ),
    Case(
        "distance.delay-range",
        "fail",
        WIRED,
        [sheet(delay_range="2 ms")],
        subject="loudspeaker/near",
        level="error",
    ),
    Case(
        "distance.delay-range", "pass", WIRED, [sheet(delay_range="2 ms")], subject="loudspeaker/middle", figure=0.7284
    ),
    Case("distance.delay-range", "open", WIRED, [sheet(delay_step="0.02 ms")]),
    Case("distance.delay-range", "notApplicable", BARE),
    Case("distance.delay-entered", "pass", changed(LINE, {"calibration": settings(("near", "delay", "2.914 ms"))})),
    Case(
        "distance.delay-entered",
        "fail",
        changed(LINE, {"calibration": settings(("near", "delay", "2.60 ms"))}),
        level="warning",
        figure=0.31375,
        source="1.00 / 343.2 s less 2.60 ms by hand",
        says="asks for 2.91 ms more than the farthest",
    ),
    # 2.914 ms in steps of 0.05 ms is 2.90 ms.
    Case(
        "distance.delay-entered",
        "fail",
        changed(WIRED, {"calibration": settings(("near", "delay", "2.60 ms"))}),
        [sheet(delay_step="0.05 ms")],
        says="asks for 2.90 ms more than the farthest loudspeaker has, in the processor's steps",
    ),
    Case(
        "distance.delay-entered",
        "fail",
        changed(LINE, {"calibration": settings(("near", "delay", "2.86 ms"))}),
        level="note",
    ),
    Case("distance.delay-entered", "open", changed(LINE, {"calibration": settings(("near", "level", "0 dB"))})),
    Case("distance.delay-entered", "notApplicable", LINE),
    Case("distance.entered", "pass", changed(LINE, {"calibration": settings(("far", "distance", "3.1 m"))})),
    Case(
        "distance.entered",
        "fail",
        changed(LINE, {"calibration": settings(("far", "distance", "2.9 m"))}),
        level="warning",
        figure=0.2,
        source="3.10 - 2.90 m by hand",
    ),
    Case(
        "distance.entered",
        "open",
        changed(LINE, {"calibration": settings(("far", "distance", "2.9 m")), "loudspeakers.0.position": None}),
    ),
    Case("distance.entered", "notApplicable", LINE),
    Case(
        "distance.sound-speed",
        "fail",
        changed(WIRED, {"survey": {"temperature": "22 degC"}}),
        [sheet(speed_of_sound="340 m/s")],
        figure=1.2690,
        source="340 over 344.37 m/s, the ISO 9613-1 value at 22 degC",
    ),
    Case(
        "distance.sound-speed",
        "pass",
        changed(WIRED, {"survey": {"temperature": "22 degC"}}),
        [sheet(assumed_temperature="20 degC")],
    ),
    Case("distance.sound-speed", "open", WIRED, [sheet(speed_of_sound="340 m/s")]),
    Case("distance.sound-speed", "notApplicable", BARE),
    Case(
        "distance.off-centre",
        "fail",
        SIDE_SEAT,
        level="warning",
        figure=2.9138,
        source="1.0 m over 343.2 m/s by hand",
    ),
    Case(
        "distance.off-centre",
        "fail",
        changed(SIDE_SEAT, {"loudspeakers.2": speaker("centre", "M+000", 0.0, 2.7)}),
        level="note",
    ),
    Case(
        "distance.off-centre",
        "fail",
        changed(SIDE_SEAT, {"loudspeakers.2": {"id": "centre", "label": "M+000"}}),
        figure=2.9138,
        source="the same: a loudspeaker without a place has no part in it",
    ),
    Case("distance.off-centre", "pass", room(L, R, seats=((0.0, -1.0),)), figure=0.0, source="on the centre line"),
    Case("distance.off-centre", "open", changed(SIDE_SEAT, {"loudspeakers.1.position": None})),
    Case("distance.off-centre", "notApplicable", room(L, R)),
    # At 0.5 m back: 3.5 m and 0.5 m away; the rear one is delayed by 2.0 m: 3.5 - 2.5 = 1.0 m apart.
    Case(
        "distance.late-arrival",
        "pass",
        room(AHEAD, BEHIND, seats=((0.0, -0.5),)),
        figure=2.9138,
        source="1.0 m over 343.2 m/s by hand",
    ),
    Case(
        "distance.late-arrival",
        "fail",
        room(AHEAD, BEHIND, seats=((0.0, -0.5),), calibration=settings(("behind", "delay", "40 ms"))),
        level="warning",
        figure=31.259,
        source="40 ms less 3.0 m over 343.2 m/s by hand",
    ),
    Case(
        "distance.late-arrival",
        "open",
        changed(room(AHEAD, BEHIND, seats=((0.0, -0.5),)), {"loudspeakers.0.position": None}),
    ),
    Case("distance.late-arrival", "notApplicable", room(AHEAD, BEHIND)),
    # 2.0 m from the reference seat, 0.6 m from the seat at its side: 20 log10(2.0 / 0.6) = 10.46 dB.
    Case(
        "distance.seat-near-loudspeaker",
        "fail",
        room(speaker("side", "M+090", -2.0, 0.0), seats=((-1.4, 0.0),)),
        level="warning",
        figure=10.4576,
        source="20 log10(2.0 / 0.6) by hand",
    ),
    Case("distance.seat-near-loudspeaker", "pass", room(C, seats=((0.6, 0.0),))),
    Case(
        "distance.seat-near-loudspeaker",
        "open",
        changed(room(C, seats=((0.6, 0.0),)), {"loudspeakers.0.position": None}),
    ),
    Case("distance.seat-near-loudspeaker", "notApplicable", room(C)),
    # 2.0 m and 4.0 m: twice the distance is 6.02 dB.
    Case(
        "distance.level-spread",
        "fail",
        room(speaker("centre", "M+000", 0.0, 2.0), seats=((0.0, -2.0),)),
        level="note",
        figure=6.0206,
        source="20 log10(2) by hand",
    ),
    Case("distance.level-spread", "pass", room(C, seats=((0.0, -1.0),))),
    Case("distance.level-spread", "open", changed(room(C, seats=((0.0, -1.0),)), {"loudspeakers.0.position": None})),
    Case("distance.level-spread", "notApplicable", room(C)),
    Case(
        "distance.sound-picture",
        "fail",
        SHOWN,
        [display("120 ms"), *SYNC],
        level="error",
        figure=100.0,
        source="120 less 20 ms by hand",
    ),
    Case("distance.sound-picture", "fail", SHOWN, [display("80 ms"), *SYNC], level="warning"),
    Case("distance.sound-picture", "pass", SHOWN, [display("40 ms"), *SYNC]),
    Case("distance.sound-picture", "open", SHOWN, [display("40 ms"), sheet(delay_range="12 ms")]),
    Case("distance.sound-picture", "notApplicable", BARE),
]
