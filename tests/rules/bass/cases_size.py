"""Cases of the room's own modes, volume and proportions."""

from __future__ import annotations

from typing import Any

from roomlint.edges import Edge
from roomlint.testing import Case, Never, changed


def sized(width: float, length: float, height: float, **more: Any) -> dict[str, Any]:  # noqa: ANN401  plain data
    return {
        "roomlint": 1,
        "project": {"code": "case", **more},
        "survey": {"tolerance": "0 mm", "temperature": "20 degC"},
        "room": {
            "size": {"width": f"{width} m", "length": f"{length} m"},
            "ceiling": {"shape": "flat", "height": f"{height} m"},
        },
    }


ROOM = sized(4.5, 6.0, 2.7)
CRITICAL = sized(4.5, 6.0, 2.7, reference="critical")
NO_CEILING = changed(CRITICAL, {"room.ceiling": None})
SLOPED = changed(
    CRITICAL, {"room.ceiling": {"shape": "mono-pitch", "low": "2 m", "high": "3 m", "low_side": "left"}}
)
# The longest, first wall written in two pieces: a rectangle all the same.
TWO_PIECES = changed(
    CRITICAL,
    {
        "room.size": None,
        "room.outline": [
            {"from_left": f"{x} m", "from_front": f"{y} m", "wall": f"w{number}"}
            for number, (x, y) in enumerate(((0, 0), (2, 0), (4.5, 0), (4.5, 6), (0, 6)))
        ],
    },
)
TOLERATED = changed(CRITICAL, {"survey.tolerance": "30 mm"})

CASES: list[Case | Never] = [
    Case("bass.room-volume", "pass", ROOM, figure=72.9, source="6.0 x 4.5 x 2.7"),
    Case("bass.room-volume", "fail", sized(2.0, 3.0, 2.7), level="note", figure=16.2, source="2.0 x 3.0 x 2.7"),
    Case("bass.room-volume", "review", changed(sized(2.5, 3.0, 2.7), {"survey.tolerance": "30 mm"})),
    Case("bass.room-volume", "open", NO_CEILING),
    Never("bass.room-volume", "notApplicable", "every room has a shell and a volume; without a ceiling it is open"),
    # 343.2 / 2 over 6.0, 4.5 and 2.7 m: 28.60, 38.13, 57.20 (twice: the second along, 2 x 28.60 = 57.20) ...: the
    # widest step is from the first across to the second along, 57.20 - 38.13.
    Case("bass.room-modes", "informational", ROOM, says="19.1 Hz"),
    Case("bass.room-modes", "informational", sized(5.0, 5.0, 2.5), says="step by 0.0 Hz"),
    Case("bass.room-modes", "informational", TWO_PIECES, says="19.1 Hz"),
    Case("bass.room-modes", "open", NO_CEILING),
    Case("bass.room-modes", "notApplicable", SLOPED),
    Never("bass.room-modes", "pass", "it is told and neither right nor wrong"),
    Never("bass.room-modes", "fail", "hardly any room is free of crowded or lonely modes; the seats are judged"),
    # l/h 6/2.7 = 2.222 between 1.1 x 1.667 = 1.833 and 3, for 4.5 x 1.667 - 4 = 3.5 is above it.
    Case("bass.proportions", "pass", CRITICAL, figure=2.2222, source="6.0 / 2.7"),
    Case("bass.proportions", "pass", TWO_PIECES, figure=2.2222, source="6.0 / 2.7"),
    Case("bass.proportions", "fail", sized(5.0, 5.0, 2.5, reference="critical"), level="warning", figure=2.0,
         source="5 / 2.5; at least 2.2"),
    # 8.4 m is 3.1 times 2.7 m: inside 4.5 w/h - 4 = 3.5, and more than three heights long.
    Case("bass.proportions", "fail", sized(4.5, 8.4, 2.7, reference="critical"), level="warning", figure=3.1111,
         source="8.4 / 2.7; less than 3"),
    Case("bass.proportions", "fail", sized(2.8, 3.0, 2.7, reference="critical"), says="no length",
         source="at 2.8 / 2.7 = 1.037 the limits cross: at least 1.141, at most 0.667"),
    Case("bass.proportions", "fail", sized(7.8, 8.0, 2.6, reference="critical"), says="no length",
         source="at 7.8 / 2.6 = 3 the least length is 3.3 heights, the most 3"),
    Case("bass.proportions", "review", changed(TOLERATED, {"room.size.length": "8.09 m"})),
    Case("bass.proportions", "open", NO_CEILING),
    Case("bass.proportions", "notApplicable", ROOM, says="critical listening"),
    Case("bass.proportions", "notApplicable", SLOPED),
]  # fmt: skip

EDGES: list[Edge] = [
    Edge("bass.room-volume", ROOM, "room.size.length", 1.0, 30.0, 2),
    Edge("bass.proportions", CRITICAL, "room.size.length", 4.6, 9.0, 2),
]
