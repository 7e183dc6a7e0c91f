"""Cases of chapter boundary, second part: a 6.0 x 4.5 x 2.7 m room, its images checked against an image-source program.

Loudspeaker 1.0 m from the front, 1.2 m from the left and 1.0 m up; ear 4.0 m, 2.25 m and 1.1 m: direct 3.1800 m, by the
floor 3.8095 m (pyroomacoustics 0.10.1, order 1), so 20 log10(3.1800/3.8095) = -1.569 dB off a bare floor.
"""

from __future__ import annotations

from roomlint.testing import Case, Never, changed

ROOM = {
    "roomlint": 1,
    "project": {"code": "case", "reference": "critical"},
    "survey": {"temperature": "20 degC"},
    "room": {"size": {"width": "4.5 m", "length": "6 m"}, "ceiling": {"shape": "flat", "height": "2.7 m"}},
    "seats": [{"id": "middle", "ear": {"from_left": "2.25 m", "from_front": "4.0 m", "height": "1.1 m"}}],
    "loudspeakers": [
        {
            "id": "left",
            "label": "M+030",
            "position": {"from_left": "1.2 m", "from_front": "1.0 m", "height": "1.0 m"},
        }
    ],
}
DEAD = {"1 kHz": 0.9, "2 kHz": 0.9, "4 kHz": 0.9}
LAID = {"from_left": "0 m", "from_front": "0 m", "width": "4.5 m", "height": "6 m", "absorption": DEAD}
HUNG = {"from_wall_left": "0 m", "bottom": "0 m", "height": "2.7 m", "width": "6 m", "absorption": DEAD}
TREATED = {
    **ROOM,
    "treatments": [
        {"id": "rug", "kind": "carpet", "on": "floor", **LAID},
        {"id": "cloud", "kind": "canopy", "on": "ceiling", **LAID},
        *({"id": f"on-{wall}", "kind": "absorber", "on": wall, **HUNG} for wall in ("left", "right", "front", "rear")),
    ],
}
PROGRAM = "image list of pyroomacoustics 0.10.1"

CASES: list[Case | Never] = [
    # The carpet takes another 10 log10(1 - 0.9) = -10 dB.
    Case("boundary.early-reflections", "pass", TREATED, figure=-11.569, source=PROGRAM),
    Case("boundary.early-reflections", "fail", ROOM, level="warning", figure=-1.569, says="floor", source=PROGRAM),
    # 1 - 10^((-10 + 1.569)/10) = 0.857, rounded up.
    Case("boundary.early-reflections", "fail", ROOM, says="m from front: 0.86"),
    Case("boundary.early-reflections", "informational", changed(ROOM, {"project.reference": None}), says="-1.6 dB"),
    Case("boundary.early-reflections", "fail", changed(TREATED, {"treatments.2.width": "1 m"}), says="wall left"),
    Case("boundary.early-reflections", "open", changed(TREATED, {"treatments.0.absorption": None}), says="absorption"),
    Case("boundary.early-reflections", "open", changed(ROOM, {"room.ceiling": None}), says="ceiling"),
    Case("boundary.early-reflections", "notApplicable", changed(ROOM, {"loudspeakers.0.label": "M+135"})),
]
