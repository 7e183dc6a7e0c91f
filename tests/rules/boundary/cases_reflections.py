"""Cases of what the surfaces send after the direct sound, and of what they cancel.

HALL is 4.5 by 6.0 m under 2.7 m; its images were checked against an image-source program. Loudspeaker 1.2 m from the
left, 1.0 m from the front and up; ear 2.25 m, 4.0 m and 1.1 m: direct 3.1800 m, by the floor 3.8095 m, by the left
wall 4.5730 m, by the front wall 5.1100 m, by the ceiling 4.5818 m.
"""

from __future__ import annotations

import math
from typing import Any

from roomlint.edges import Edge
from roomlint.sample import EAR, room, speaker
from roomlint.testing import Case, Never, changed

PROGRAM = "image list of pyroomacoustics 0.10.1"
STAND = {"mounting": {"on": "stand"}}
HALL: dict[str, Any] = {
    "roomlint": 1,
    "project": {"code": "case"},
    "survey": {"tolerance": "0 mm", "temperature": "20 degC"},
    "room": {"size": {"width": "4.5 m", "length": "6 m"}, "ceiling": {"shape": "flat", "height": "2.7 m"}},
    "seats": [{"id": "middle", "ear": {"from_left": "2.25 m", "from_front": "4.0 m", "height": "1.1 m"}}],
    "loudspeakers": [
        {
            "id": "left", "label": "M+030", **STAND,
            "position": {"from_left": "1.2 m", "from_front": "1.0 m", "height": "1.0 m"},
        }
    ],
}  # fmt: skip
LOST = changed(HALL, {"loudspeakers.0.position": None})
UNHELD = changed(HALL, {"loudspeakers.0.mounting": None})
ON_WALL = changed(HALL, {"loudspeakers.0.mounting": {"on": "left"}})
CRITICAL = changed(HALL, {"project.reference": "critical"})


def masonry(*walls: str) -> dict[str, Any]:
    return {"room.walls": [{"id": wall, "framing": {"kind": "masonry"}} for wall in walls]}


def behind(distance: float) -> dict[str, Any]:
    """Return a centre straight before the seat, so far before a masonry wall."""
    return changed(room(speaker("centre", "M+000", 0.0, EAR[1] - distance, **STAND)), masonry("front"))


FAR = changed(behind(1.0), {"room.size.length": "8 m", "seats.0.ear.from_front": "5 m"})
# A loudspeaker 5 m from each wall of a hall, 3 m before the ear: floor and ceiling alone cancel within the band.
OUT_IN_THE_ROOM = changed(
    HALL,
    {
        "room.size": {"width": "14 m", "length": "16 m"},
        "room.ceiling.height": "3.2 m",
        "seats.0.ear": {"from_left": "7 m", "from_front": "8 m", "height": "1.2 m"},
        "loudspeakers.0.position": {"from_left": "7 m", "from_front": "5 m", "height": "1.4 m"},
    },
)


def corner(left: float, front: float, up: float) -> dict[str, Any]:
    """Return a loudspeaker by its three distances."""
    return room(speaker("left", "M+030", left - EAR[0], EAR[1] - front, up - EAR[2], **STAND))


def treated(absorption: float) -> dict[str, Any]:
    bands = {"1 kHz": absorption, "2 kHz": absorption, "4 kHz": absorption}
    laid = {"from_left": "0 m", "from_front": "0 m", "width": "4.5 m", "height": "6 m", "absorption": bands}
    hung = {"from_wall_left": "0 m", "bottom": "0 m", "height": "2.7 m", "absorption": bands}
    walls = {"left": "6 m", "right": "6 m", "front": "4.5 m", "rear": "4.5 m"}
    return {
        **CRITICAL,
        "treatments": [
            {"id": "rug", "kind": "carpet", "on": "floor", **laid},
            {"id": "cloud", "kind": "canopy", "on": "ceiling", **laid},
            *(
                {"id": f"on-{wall}", "kind": "absorber", "on": wall, "width": width, **hung}
                for wall, width in walls.items()
            ),
        ],
    }  # fmt: skip


TREATED = treated(0.9)
# Left and right 1.0 m from their walls in a room of 5 m; the ear 1.5 m aside and 2.6 m back of both.
PAIR = room(speaker("left", "M+030", -1.5, 2.6, **STAND), speaker("right", "M-030", 1.5, 2.6, **STAND))


def wide(width: float) -> dict[str, Any]:
    return changed(PAIR, {"room.size.width": f"{width} m"})


# Left by way of the wall sqrt(3.5^2 + 2.6^2) = 4.3600 m; right, with the wall at 8 m, sqrt(9.5^2 + 2.6^2) = 9.8494 m.
WIDE_DB = 20.0 * math.log10(9.84937 / 4.36005)
ABSORBER = {
    "id": "panel", "kind": "absorber", "on": "left", "from_wall_left": "0 m", "bottom": "0 m", "width": "6 m",
    "height": "2.6 m", "absorption": {"1 kHz": 0.9, "2 kHz": 0.9, "4 kHz": 0.9},
}  # fmt: skip
# A chimney breast where the sound of the right one would meet its wall, 1.64 m from the front; the same on the left.
BREAST = {"id": "breast", "kind": "chimney-breast", "from_left": "4.3 m", "from_front": "1.3 m", "width": "0.7 m",
          "depth": "0.7 m"}  # fmt: skip
ALCOVE = {**BREAST, "id": "other-breast", "from_left": "0 m"}
PAIR_KEY = "loudspeaker/left+loudspeaker/right+seat/seat"


def tolerated(data: dict[str, Any]) -> dict[str, Any]:
    return changed(data, {"survey.tolerance": "30 mm"})


CASES: list[Case | Never] = [
    # 85 % of 3.1800 over 4.5730 m leaves 40.9 % of the pressure; half a wave is 1.3930 m, 123 Hz.
    Case("boundary.surface-null", "pass", HALL, figure=-7.767, source=f"{PROGRAM}: 3.1800 and 4.5730 m"),
    # 98 %: 31.9 % is left.
    Case("boundary.surface-null", "fail", changed(HALL, masonry("left")), level="note", figure=-9.937,
         says="at 123.2 Hz", source=f"{PROGRAM}: 3.1800 and 4.5730 m"),
    # Straight behind, the null is at c / 4 d: 343.2 / 1.8 = 190.7 Hz; 98 % of 3.05 over 3.95 m leaves 24.3 %.
    Case("boundary.surface-null", "fail", behind(0.45), level="warning", figure=-12.279, says="at 190.7 Hz",
         source="quarter wave and image by hand"),
    # A metre before masonry, 5 m from the wall to the ear: 98 % of 4 over 6 m leaves 34.7 %, at 85.8 Hz.
    Case("boundary.surface-null", "fail", FAR, level="note", figure=-9.199, says="at 85.8 Hz", source="the same"),
    # Ten centimetres off the wall the null is at 858 Hz, where a cabinet no longer radiates to the rear.
    Case("boundary.surface-null", "pass", behind(0.1)),
    Case("boundary.surface-null", "informational", OUT_IN_THE_ROOM, says="only the floor cancels"),
    Case("boundary.surface-null", "review", tolerated(behind(0.62))),
    Case("boundary.surface-null", "open", LOST),
    Case("boundary.surface-null", "open", UNHELD, says="mounting"),
    Case("boundary.surface-null", "notApplicable", ON_WALL),
    # Three equal distances lose 11.4 dB at 0.281 of a wave, three staggered ones 1.6.
    Case("boundary.equal-distances", "fail", corner(0.6, 0.6, 0.6), level="note", figure=-11.4, within=0.1,
         source="published range of 5 to 12 dB for ordinary places; interference sum in another program"),
    Case("boundary.equal-distances", "pass", corner(0.75, 1.2, 0.45), figure=-1.6, within=0.1,
         source="interference sum in another program"),
    # Two alike and one apart do not stack: what counts is the power that is lost, not how alike two lengths are.
    Case("boundary.equal-distances", "pass", corner(1.12, 1.10, 0.35), figure=-2.6, within=0.1,
         source="interference sum in another program"),
    # Half way between opposite walls, which do not stack.
    Case("boundary.equal-distances", "pass", corner(2.5, 1.3, 0.8)),
    Case("boundary.equal-distances", "review", tolerated(corner(0.6, 0.6, 0.785))),
    Case("boundary.equal-distances", "open", LOST),
    Case("boundary.equal-distances", "open", UNHELD, says="mounting"),
    Case("boundary.equal-distances", "notApplicable", ON_WALL),
    # The carpet takes another 10 log10(1 - 0.9) = -10 dB.
    Case("boundary.early-reflections", "pass", TREATED, figure=-11.569, source=PROGRAM),
    Case("boundary.early-reflections", "fail", CRITICAL, level="warning", figure=-1.569, says="floor", source=PROGRAM),
    Case("boundary.early-reflections", "informational", HALL, says="-1.6 dB"),
    Case("boundary.early-reflections", "fail", changed(TREATED, {"treatments.2.width": "1 m"}), says="left"),
    # 1 - 10^((-10 + 1.569) / 10) = 0.8565 is what the carpet needs.
    Case("boundary.early-reflections", "review", tolerated(treated(0.857))),
    Case("boundary.early-reflections", "open", changed(TREATED, {"treatments.1.absorption": None}), says="absorption"),
    # A carpet without a report is one of the table's.
    Case("boundary.early-reflections", "fail", changed(TREATED, {"treatments.0.absorption": None}), figure=-5.485,
         within=0.1, source=f"{PROGRAM}, and 10 log10(1 - 0.59) of the middle of 0.34 to 0.69, 0.48 to 0.71, 0.63 to 0.73"),
    Case("boundary.early-reflections", "open", changed(CRITICAL, {"room.ceiling": None}), says="ceiling"),
    Case("boundary.early-reflections", "notApplicable", changed(CRITICAL, {"loudspeakers.0.label": "M+135"})),
    Case("boundary.side-reflections", "pass", PAIR, subject=PAIR_KEY, figure=0.0, within=1e-6, source="mirror images"),
    Case("boundary.side-reflections", "fail", wide(8.0), level="note", figure=WIDE_DB, says="15.99 ms",
         source="Pythagoras: 4.3600 and 9.8494 m, 5.4893 m over 343.2 m/s"),
    # An absorber on the near wall takes 10 dB there.
    Case("boundary.side-reflections", "pass", {**wide(8.0), "treatments": [ABSORBER]}, figure=10.0 - WIDE_DB,
         source="10 dB less the same"),
    Case("boundary.side-reflections", "fail", changed(PAIR, {"room.obstacles": [BREAST]}), says="only left"),
    Case("boundary.side-reflections", "pass", changed(PAIR, {"room.obstacles": [BREAST, ALCOVE]})),
    Case("boundary.side-reflections", "review", tolerated(wide(7.41))),
    Case("boundary.side-reflections", "open", changed(PAIR, {"loudspeakers.0.position": None})),
    Case("boundary.side-reflections", "notApplicable", room(speaker("left", "M+030", -1.5, 2.6))),
]  # fmt: skip

FRONT = "loudspeakers.0.position.from_front"
EDGES: list[Edge] = [
    Edge("boundary.surface-null", behind(0.6), FRONT, 0.45, 1.2, 2),
    Edge("boundary.equal-distances", corner(0.6, 0.6, 0.6), FRONT, 0.3, 1.2, 2),
    Edge("boundary.early-reflections", treated(0.857), "loudspeakers.0.position.height", 0.5, 1.2, 1),
    Edge("boundary.side-reflections", wide(7.0), "room.size.width", 6.0, 9.0, 1),
]
