"""Cases of the distances between loudspeakers and seats."""

from __future__ import annotations

from distance_rooms import AHEAD, BARE, BEHIND, HAND, SIDE_SEAT, C, L, R, settings

from roomlint.edges import Edge
from roomlint.sample import room, speaker
from roomlint.testing import Case, Never, changed

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
        "distance.off-centre",
        "fail",
        SIDE_SEAT,
        level="warning",
        figure=2.9138,
        source="1.0 m over 343.2 m/s by hand",
    ),
    Case(
        "distance.off-centre",
        "informational",
        changed(SIDE_SEAT, {"loudspeakers.2": speaker("centre", "M+000", 0.0, 2.7)}),
        figure=2.9138,
    ),
    Case(
        "distance.off-centre",
        "informational",
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
    # 2.0 m from the reference seat, 0.8 m from the seat at its side: 20 log10(2.0 / 0.8) = 7.96 dB.
    Case(
        "distance.seat-near-loudspeaker",
        "fail",
        room(speaker("side", "M+090", -2.0, 0.0), seats=((-1.2, 0.0),)),
        level="warning",
        figure=7.9588,
        source="20 log10(2.0 / 0.8) by hand",
    ),
    Case("distance.seat-near-loudspeaker", "pass", room(C, seats=((0.6, 0.0),))),
    Case(
        "distance.seat-near-loudspeaker",
        "open",
        changed(room(C, seats=((0.6, 0.0),)), {"loudspeakers.0.position": None}),
    ),
    Case("distance.seat-near-loudspeaker", "notApplicable", room(C)),
    Case(
        "distance.surround",
        "notApplicable",
        room(C, speaker("ls", "M+110", -1.5, -2.0), calibration=settings(("ls", "delay", "1 ms"))),
        says="delay is entered",
    ),
    Case(
        "distance.base-width",
        "review",
        {
            **room(speaker("left", "M+030", -1.01, 2.6), speaker("right", "M-030", 1.0, 2.6)),
            "survey": {"tolerance": "30 mm"},
        },
    ),
    Case(
        "distance.listening", "review", {**room(speaker("left", "M+030", -1.21, 1.6)), "survey": {"tolerance": "30 mm"}}
    ),
    Case("distance.off-centre", "review", {**room(L, R, seats=((0.36, -1.0),)), "survey": {"tolerance": "60 mm"}}),
    Case(
        "distance.late-arrival",
        "review",
        {
            **room(AHEAD, BEHIND, seats=((0.0, -0.5),), calibration=settings(("behind", "delay", "38.75 ms"))),
            "survey": {"tolerance": "60 mm"},
        },
        subject="seat/seat-2",
    ),
    Case(
        "distance.seat-near-loudspeaker",
        "review",
        {**room(speaker("side", "M+090", -2.0, 0.0), seats=((-1.01, 0.0),)), "survey": {"tolerance": "30 mm"}},
    ),
    Case("distance.too-near", "pass", room(C), figure=3.0, source=HAND),
    Case(
        "distance.too-near",
        "fail",
        room(speaker("side", "M+090", -0.3, 0.4)),
        level="warning",
        figure=0.5,
        source="3-4-5 triangle",
    ),
    Case(
        "distance.too-near",
        "fail",
        room(speaker("side", "M+090", -0.48, 0.64)),
        level="note",
        figure=0.8,
        source="3-4-5 triangle",
    ),
    Case(
        "distance.too-near", "review", {**room(speaker("side", "M+090", -0.61, 0.0)), "survey": {"tolerance": "30 mm"}}
    ),
    Case("distance.too-near", "open", changed(room(C), {"loudspeakers.0.position": None})),
    Case("distance.too-near", "notApplicable", BARE),
    # Within an arm of the second seat: only that is told, not how much louder it is there.
    Case(
        "distance.seat-near-loudspeaker",
        "open",
        room(speaker("side", "M+090", -2.0, 0.0), seats=((-1.6, 0.0),)),
        says="distance.too-near",
    ),
]

EDGES: list[Edge] = [
    Edge("distance.base-width", room(L, R), "loudspeakers.1.position.from_left", 1.5, 6.5, 2),
    Edge("distance.listening", room(C), "seats.0.ear.from_front", 1.5, 5.9, 2),
    Edge(
        "distance.surround",
        room(C, speaker("ls", "M+110", -1.8, -2.4)),
        "loudspeakers.1.position.from_front",
        4.0,
        5.99,
        1,
    ),
    Edge("distance.off-centre", room(L, R, seats=((0.1, -1.0),)), "seats.1.ear.from_left", 2.5, 4.5, 1),
    Edge(
        "distance.late-arrival",
        room(AHEAD, BEHIND, seats=((0.0, -0.5),), calibration=settings(("behind", "delay", "20 ms"))),
        "calibration.settings.0.delay",
        10.0,
        50.0,
        2,
        unit="ms",
        scale=1e-3,
    ),
    Edge(
        "distance.seat-near-loudspeaker",
        room(speaker("side", "M+090", -2.0, 0.0), seats=((-1.0, 0.0),)),
        "seats.1.ear.from_left",
        0.7,
        2.4,
        1,
    ),
    Edge(
        "distance.too-near", room(speaker("side", "M+090", -2.0, 0.0)), "loudspeakers.0.position.from_left", 0.5, 2.4, 2
    ),
]
