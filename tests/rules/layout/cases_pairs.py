"""Cases of the pairs."""

from __future__ import annotations

from offsets import HAND, L, R, nowhere, room, speaker, taped

from roomlint.edges import Edge
from roomlint.testing import Case, Never, changed

ANGLE, HEIGHT, DISTANCE = "layout.pair-angle", "layout.pair-height", "layout.pair-distance"
AROUND = "layout.pair-surroundings"
PAIR = room(L, R)
SWAPPED = room(speaker("left", "M+030", 1.5, 2.6), speaker("right", "M-030", -1.5, 2.6))
BENT = room(L, speaker("right", "M-030", 1.2, 2.8))
HIGH = room(speaker("left", "M+030", -1.8, 2.4, 0.4), speaker("right", "M-030", 1.8, 2.4))
FAR = room(speaker("left", "M+030", -1.15, 2.76), speaker("right", "M-030", 1.0, 2.4))
# The seat is 0.5 m left of the middle: the pair is mirrored about it, its walls are not.
ASIDE = changed(
    room(speaker("left", "M+030", -2.0, 2.6), speaker("right", "M-030", 1.0, 2.6)), {"seats.0.ear.from_left": "2.0 m"}
)
DEPARTS = {"because": "a door on that side", "meets": "common-practice"}

MIDDLE = "layout.stage-middle"
# A seat 2.5 m from the left, its pairs mirrored about 2.5 m; then the seat, 0.2 m to the right.
AROUND_IT = room(
    speaker("left", "M+030", -1.5, 2.6), speaker("right", "M-030", 1.5, 2.6),
    speaker("surround-left", "M+110", -2.0, -0.7), speaker("surround-right", "M-110", 2.0, -0.7),
)  # fmt: skip
BESIDE = changed(AROUND_IT, {"seats.0.ear.from_left": "2.7 m"})
ONE_OUT = changed(AROUND_IT, {"loudspeakers.0.position.from_left": "1.4 m"})

CASES: list[Case | Never] = [
    Case(MIDDLE, "pass", AROUND_IT, figure=0.0, source="mirrored positions"),
    Case(MIDDLE, "fail", BESIDE, subject="seat/seat", figure=0.2, level="warning", source="2.7 - 2.5 m", says="0.20 m beside the middle"),
    # The seat faces the left wall: its left and right run from front to rear, and the pairs are mirrored about 3.0 m.
    Case(MIDDLE, "fail", changed(room(speaker("left", "M+030", -2.0, -1.5), speaker("right", "M-030", -2.0, 1.5), speaker("surround-left", "M+110", 0.7, -2.0), speaker("surround-right", "M-110", 0.7, 2.0)), {"seats.0.facing": "90 deg", "seats.0.ear.from_front": "3.2 m"}), figure=0.3, source="the seat 3.2 m from the front; the pairs 3.5 m"),
    # One loudspeaker of the front pair 0.4 m farther in moves the middle of its pair by 0.2 m, and of no other.
    Case(MIDDLE, "pass", ONE_OUT, figure=0.0, source="the surround pair's middle is at the seat"),
    Case(MIDDLE, "review", taped(changed(AROUND_IT, {"seats.0.ear.from_left": "2.64 m"}))),
    Case(MIDDLE, "open", nowhere(AROUND_IT)),
    Case(MIDDLE, "open", changed(AROUND_IT, {"loudspeakers.2.label": None}), says="label"),
    Case(MIDDLE, "notApplicable", PAIR, says="no two pairs"),
    Case(MIDDLE, "notApplicable", room(L)),
    Case(MIDDLE, "notApplicable", changed(BESIDE, {"loudspeakers.1.departure": DEPARTS}), says="no two pairs"),
    Case(ANGLE, "open", BESIDE, says="layout.stage-middle"),
    Case(DISTANCE, "open", BESIDE, says="layout.stage-middle"),
    # 41.5 deg round is out of its own place: that is told, and the pair waits.
    Case(ANGLE, "open", room(L, speaker("right", "M-030", 2.3, 2.6)), says="angle.front-pair"),
    Case(DISTANCE, "open", room(L, speaker("right", "M-030", 2.3, 2.6)), says="angle.front-pair"),
    Case(ANGLE, "fail", ONE_OUT, subject="loudspeaker/left+loudspeaker/right", level="warning"),
    Case(ANGLE, "pass", PAIR, figure=0.0, source="mirrored positions"),
    # 29.98 against atan(1.2 / 2.8) = 23.20 deg.
    Case(ANGLE, "fail", BENT, figure=6.783, level="warning", source=HAND),
    Case(ANGLE, "review", taped(room(L, speaker("right", "M-030", 1.26, 2.7)), "50 mm")),
    Case(ANGLE, "open", nowhere(PAIR)),
    Case(ANGLE, "open", SWAPPED, says="layout.sides-swapped"),
    Case(ANGLE, "notApplicable", room(L)),
    Case(ANGLE, "notApplicable", changed(BENT, {"loudspeakers.1.departure": DEPARTS}), says="departs from its place on purpose"),
    Case(HEIGHT, "pass", PAIR),
    # Both 3.0 m away in plan by 3-4-5; one 0.4 m up: atan(0.4 / 3.0) = 7.59 deg.
    Case(HEIGHT, "fail", HIGH, figure=7.595, level="warning", source=HAND),
    Case(HEIGHT, "review", taped(changed(HIGH, {"loudspeakers.0.position.height": "1.465 m"}))),
    Case(HEIGHT, "open", nowhere(PAIR)),
    Case(HEIGHT, "open", SWAPPED, says="layout.sides-swapped"),
    Case(HEIGHT, "notApplicable", room(L)),
    Case(DISTANCE, "pass", PAIR),
    Case(DISTANCE, "fail", FAR, figure=1.15, level="warning", source="5-12-13 triangles: 2.99 over 2.60 m"),
    Case(DISTANCE, "review", taped(changed(FAR, {"loudspeakers.1.position": {"from_left": "3.55 m", "from_front": "0.994 m", "height": "1.2 m"}}))),
    Case(DISTANCE, "open", nowhere(PAIR)),
    Case(DISTANCE, "open", room(L, speaker("right", "M-030", 0.9, 2.0)), says="layout.pair-angle"),
    Case(DISTANCE, "notApplicable", room(L)),
    Case(AROUND, "pass", PAIR),
    # The left one is 0.5 m from its side wall, the right one 1.5 m from its own.
    Case(AROUND, "fail", ASIDE, figure=1.0, level="note", source="0.5 m to the left wall, 1.5 m to the right one"),
    # 0.4 m from its side wall against 3.9 m, both 0.4 m from the front wall: the nearest walls alone are equal.
    Case(AROUND, "fail", changed(room(speaker("left", "M+030", -2.1, 3.1), speaker("right", "M-030", 1.9, 3.1)), {"room.size.width": "8.3 m", "seats.0.ear.from_left": "2.4 m", "seats.0.ear.from_front": "3.8 m"}), figure=1.6, source="0.4 m against 3.9 m, which counts as 2.0 m"),
    Case(AROUND, "review", taped(changed(ASIDE, {"seats.0.ear.from_left": "2.35 m", "loudspeakers.0.position.from_left": "0.85 m", "loudspeakers.1.position.from_left": "3.85 m"}))),
    Case(AROUND, "open", nowhere(PAIR)),
    Case(AROUND, "open", FAR, says="layout.pair-distance"),
    Case(AROUND, "notApplicable", room(L)),
]  # fmt: skip
EDGES = [
    Edge(MIDDLE, AROUND_IT, "seats.0.ear.from_left", 2.0, 3.0, 2),
    Edge(ANGLE, BENT, "loudspeakers.1.position.from_left", 2.6, 4.9, 2),
    Edge(HEIGHT, HIGH, "loudspeakers.0.position.height", 0.3, 2.5, 2),
    Edge(DISTANCE, PAIR, "loudspeakers.1.position.from_front", 0.1, 3.4, 2),
    Edge(AROUND, PAIR, "loudspeakers.1.position.from_left", 3.0, 4.9, 2),
]  # fmt: skip
