"""Cases of levels between seats, by the room's size and by the week; the room holds 78 m3."""

from __future__ import annotations

from roomlint.edges import Edge
from roomlint.sample import at, room, speaker
from roomlint.testing import Case, Never, changed

L = speaker("left", "M+030", -1.5, 2.0)
R = speaker("right", "M-030", 1.5, 2.0)
BEHIND = room(L, R, seats=((0.0, -2.0),))
OTHER = "seat/seat-2"
SET = changed(room(), {"calibration": {"reference_level": "78 dB", "hours_a_week": 10}, "project.children": False})
LOUD = {"calibration.reference_level": "85 dB"}
HIGH = changed(SET, {"room.ceiling.height": "1.3 m"})

CASES: list[Case | Never] = [
    # Both 2.5 m from the reference seat; from the one behind it root(1.5^2 + 4^2) = 4.272 m.
    Case("level.between-seats", "fail", BEHIND, subject=OTHER, level="note", figure=-4.6539, source="20 lg(2.5 / 4.272)"),
    Case("level.between-seats", "fail", changed(BEHIND, {"seats.1.ear": at(0.0, -2.4)}), subject="seat/seat-2", level="note"),
    Case("level.between-seats", "pass", changed(BEHIND, {"seats.1.ear": at(0.0, -0.5)}), subject=OTHER),
    # One aside: 1.5811 and 3.2016 m, added as powers over two alike at 2.5 m.
    Case("level.between-seats", "pass", room(L, R, seats=((-1.0, 0.0),)), subject=OTHER, figure=0.1703,
         source="10 lg((6.25 / 4.25 + 6.25 / 10.25) / 2)", within=0.01),
    Case("level.between-seats", "fail", room(L, R, seats=((0.0, 1.6),)), subject=OTHER, level="note", says="louder"),
    Case("level.between-seats", "fail", changed(BEHIND, {"loudspeakers": [changed(L, {"position": at(0.0, 1.0)})]}),
         subject=OTHER, level="warning", says="softer"),
    Case("level.between-seats", "open", changed(BEHIND, {"loudspeakers.0.position": None}), subject=OTHER),
    Case("level.between-seats", "open", changed(BEHIND, {"loudspeakers": [changed(L, {"label": None})]}), subject=OTHER, says="label"),
    # A centre alone does not tell of a front whose sides have no labels.
    Case("level.between-seats", "open",
         changed(BEHIND, {"loudspeakers": [changed(L, {"label": None}), speaker("centre", "M+000", 0.0, 2.0)]}), subject=OTHER, says="label"),
    Case("level.between-seats", "notApplicable", BEHIND, subject="seat/seat"),

    Case("level.room-size", "pass", SET, figure=78.0, source="as entered"),
    Case("level.room-size", "fail", changed(SET, LOUD), level="note", says="loud for 78"),
    Case("level.room-size", "fail", changed(SET, {"calibration.reference_level": "70 dB"}), says="soft for 78"),
    # Half as high it is the least row: 72 to 78 dB.
    Case("level.room-size", "pass", HIGH),
    Case("level.room-size", "fail", changed(HIGH, {"calibration.reference_level": "79 dB"})),
    Case("level.room-size", "open", room(), says="reference_level"),
    Case("level.room-size", "open", changed(SET, {"room.ceiling": None}), says="ceiling"),
    Case("level.room-size", "review", changed(SET, {"calibration.reference_level": "79.8 dB ± 0.5 dB"})),
    Never("level.room-size", "notApplicable", "a room without a level has one to be chosen: it is open"),

    Case("level.exposure", "pass", SET, figure=15.7739, source="100 x 10 / (40 x 10^0.2)"),
    # 85 dB for 12.65 hours are what grown ears may have.
    Case("level.exposure", "fail", changed(SET, {**LOUD, "calibration.hours_a_week": 20}), level="warning",
         figure=158.11, source="100 x 20 / (40 / 10^0.5)", says="20 h a week"),
    Case("level.exposure", "fail", changed(SET, {**LOUD, "calibration.hours_a_week": 10}), level="note"),
    Case("level.exposure", "fail", changed(SET, {**LOUD, "project.children": True}), level="warning", figure=250.0,
         source="100 x 10 / 4", says="children"),
    # What is within whoever listens asks for nobody's age.
    Case("level.exposure", "pass", changed(SET, {"project.children": None, "calibration.hours_a_week": 5}), figure=24.94,
         within=0.01, source="100 x 5 / (40 x 10^-0.3)"),
    Case("level.exposure", "open", changed(SET, {**LOUD, "project.children": None}), says="children"),
    Case("level.exposure", "open", changed(SET, {"calibration.hours_a_week": None}), says="hours_a_week"),
    Case("level.exposure", "review", changed(SET, {"calibration.reference_level": "83 dB ± 1 dB", "calibration.hours_a_week": 20})),
    Never("level.exposure", "notApplicable", "whoever listens has ears; without hours it is open"),
]  # fmt: skip
EDGES: list[Edge] = [
    Edge("level.between-seats", BEHIND, "seats.1.ear.from_front", 0.7, 8.0, 3, subject=OTHER),
    Edge("level.room-size", SET, "calibration.reference_level", 70.0, 85.0, 2, unit="dB"),
    Edge("level.exposure", SET, "calibration.reference_level", 70.0, 95.0, 2, unit="dB"),
]  # fmt: skip
