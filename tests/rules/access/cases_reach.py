"""Cases of steps, controls and racks."""

from __future__ import annotations

from access_rooms import KEYPAD, NONE, RACK, STEP

from roomlint.edges import Edge
from roomlint.testing import Case, Never, changed

STEPS, CONTROL, FRONT, REAR = "access.step-height", "access.control-height", "access.rack-front", "access.rack-rear"
HIGH, CLEAR = "room.risers.0.height", "electronics.racks.0.front_clear"
BEHIND = {"electronics.racks.0.service": "rear", "electronics.racks.0.rear_clear": "0.7 m"}

CASES: list[Case | Never] = [
    Case(STEPS, "pass", STEP, figure=0.18, source="0.36 m / 2"),
    Case(STEPS, "fail", changed(STEP, {HIGH: "0.42 m"}), level="warning", figure=0.21, source="0.42 m / 2"),
    # 0.3844 m over two risers, as the worked row of a cinema needs them.
    Case(STEPS, "pass", changed(STEP, {HIGH: "0.3844 m"}), figure=0.1922, source="0.3844 m / 2"),
    Case(STEPS, "fail", changed(STEP, {HIGH: "0.392 m ± 1 cm"})),
    Case(STEPS, "open", changed(STEP, {"room.risers.0.steps": None}), says="steps"),
    # A low platform is one step, whatever is written.
    Case(STEPS, "pass", changed(STEP, {HIGH: "0.15 m", "room.risers.0.steps": None}), figure=0.15, source="as it is"),
    Case(STEPS, "open", changed(STEP, {"room.risers": None}), says="risers"),
    Case(STEPS, "notApplicable", NONE),

    Case(CONTROL, "pass", KEYPAD, figure=1.1, source="as it is measured"),
    Case(CONTROL, "fail", changed(KEYPAD, {"room.controls.0.height": "1.4 m"}), level="note", figure=1.4, source="as it is measured"),
    Case(CONTROL, "fail", changed(KEYPAD, {"room.controls.0.height": "0.3 m"}), level="note"),
    Case(CONTROL, "open", changed(KEYPAD, {"room.controls.0.height": None}), says="height"),
    Case(CONTROL, "open", changed(KEYPAD, {"room.controls": None}), says="controls"),
    Case(CONTROL, "notApplicable", NONE),

    Case(FRONT, "pass", RACK, figure=1.2, source="as it is measured"),
    Case(FRONT, "fail", changed(RACK, {CLEAR: "0.7 m"}), level="warning", figure=0.7, source="as it is measured"),
    Case(FRONT, "open", changed(RACK, {CLEAR: None}), says="front_clear"),
    Case(FRONT, "open", changed(RACK, {"electronics.racks": None}), says="racks"),
    Case(FRONT, "notApplicable", NONE),

    Case(REAR, "pass", RACK, figure=0.7, source="1.2 m less 0.5 m"),
    Case(REAR, "fail", changed(RACK, {CLEAR: "1.0 m"}), level="warning", figure=0.5, source="1.0 m less 0.5 m"),
    Case(REAR, "pass", changed(RACK, BEHIND), figure=0.7, source="as it is measured"),
    Case(REAR, "fail", changed(RACK, {**BEHIND, "electronics.racks.0.rear_clear": "0.2 m"}), level="warning"),
    Case(REAR, "open", changed(RACK, {**BEHIND, "electronics.racks.0.rear_clear": None}), says="rear_clear"),
    Case(REAR, "open", changed(RACK, {"electronics.racks.0.service": None}), says="service"),
    Case(REAR, "open", changed(RACK, {"electronics.racks.0.depth": None}), says="depth"),
    Case(REAR, "notApplicable", changed(RACK, {"electronics.racks.0.service": "front"})),
    Case(REAR, "notApplicable", NONE),
]  # fmt: skip
EDGES = [
    Edge(STEPS, STEP, HIGH, 0.2, 0.6, 1),
    Edge(CONTROL, KEYPAD, "room.controls.0.height", 0.1, 2.0, 2),
    Edge(FRONT, RACK, CLEAR, 0.3, 2.0, 1),
    Edge(REAR, RACK, CLEAR, 0.6, 2.0, 1),
]
