"""Cases of how long rooms ring: 5 by 6 m under 2.6 m with one seat, lined with painted brick unless a case says otherwise.

Worked out by hand from the rows of the table: painted brick takes 0.02 at 500 Hz to 2 kHz, a carpet on felt 0.480,
0.515 and 0.595 in the middle of its two rows; the seat and other furniture 3.006, 3.170 and 3.030 m2 with floor and
ceiling; air 0.628, 1.074 and 2.277 in a thousand per metre; c = 343.2 m/s.
"""

from __future__ import annotations

from typing import Any

from roomlint.edges import Edge
from roomlint.sample import room, speaker
from roomlint.testing import Case, Never, changed

HAND = "by hand: volume 78 m3, surfaces 30, 30, 31.2 and 26 m2, coefficients above"
BOX: dict[str, Any] = {
    "roomlint_product": 1, "id": "box", "kind": "loudspeaker",
    "loudspeaker": {"horizontal_coverage": "100 deg", "vertical_coverage": "60 deg"},
}  # fmt: skip
WALLS = ("front", "right", "rear", "left")
HALL = {"room.size": {"width": "9 m", "length": "12 m"}, "room.ceiling.height": "3 m"}


def lined(walls: str, floor: str, ceiling: str, **more: Any) -> dict[str, Any]:
    """Return the room with its finishes and a loudspeaker 2 m before the ear."""
    plain = room(speaker("centre", "M+000", 0.0, 2.0, product="box"), **more)
    return changed(
        plain,
        {
            "room.walls": [{"id": wall, "finish": walls} for wall in WALLS],
            "room.floor": {"finish": floor},
            "room.ceiling.finish": ceiling,
        },
    )


BRICK = lined("painted-brick", "painted-brick", "painted-brick")
CARPET = changed(BRICK, {"room.floor.finish": "carpet-on-felt"})


def panelled(*on: str, absorption: float = 0.9) -> dict[str, Any]:
    """Return the carpeted room with a panel of 4 by 2.4 m on each of some surfaces."""
    bands = dict.fromkeys(("125 Hz", "250 Hz", "500 Hz", "1 kHz", "2 kHz", "4 kHz"), absorption)
    panel = {"kind": "absorber", "width": "4 m", "height": "2.4 m", "absorption": bands}
    return changed(CARPET, {"treatments": [{"id": f"panel-{one}", "on": one, **panel} for one in on]})


TREATED = panelled("front", "rear", "ceiling")
DEAD = panelled("front", "rear", "left", "right", "ceiling", absorption=1.0)
DEAD = changed(DEAD, {"treatments.4.width": "5 m", "treatments.4.height": "6 m"})
UNLINED = changed(BRICK, {"room.walls.1": None})
UNKNOWN = changed(BRICK, {"room.openings": None})
UNTESTED = changed(TREATED, {"treatments.0.absorption": None})
SLOPED = changed(CARPET, {"room.ceiling": {"shape": "mono-pitch", "low": "2 m", "high": "3 m", "low_side": "left",
                                           "finish": "painted-brick"}})  # fmt: skip
CRITICAL = {"project.reference": "critical"}
GLAZED = changed(
    CARPET,
    {"room.openings": [{"id": "pane", "kind": "window", "wall": "left", "width": "2 m", "sill": "0.5 m",
                        "height": "1.5 m"}]},
)  # fmt: skip
CROWDED = panelled("front", "front2")
CROWDED = changed(CROWDED, {"treatments.1.on": "front"})
BOOMY = changed(lined("painted-brick", "carpet-on-concrete", "painted-brick"), HALL)
FAR = changed(
    CARPET, {"room.size.length": "10 m", "seats.0.ear.from_front": "9 m", "loudspeakers.0.position.from_front": "0.5 m"}
)
LAID = changed(
    changed(BRICK, HALL),
    {"treatments": [{"id": "rug", "kind": "carpet", "on": "floor", "width": "2 m", "height": "12 m"}]},
)
SIDED = changed(panelled("left", "front"), {"treatments.1.width": "1 m"})
WIDE = changed(
    panelled("left", "front"), {"room.size": {"width": "7 m", "length": "8 m"}, "room.ceiling.height": "3 m"}
)
SHEETS = (BOX,)

CASES = [
    Case("decay.mid-band", "fail", CARPET, SHEETS, level="note", figure=0.8638, source=HAND, says="wool"),
    Case("decay.mid-band", "fail", changed(CARPET, CRITICAL), SHEETS, level="warning"),
    Case("decay.mid-band", "fail", DEAD, SHEETS, level="note", says="absorbs too much"),
    Case("decay.mid-band", "fail", GLAZED, SHEETS, level="note"),
    Case("decay.mid-band", "pass", TREATED, SHEETS),
    Case("decay.mid-band", "open", UNLINED, SHEETS, says="walls[right].finish"),
    Case("decay.mid-band", "open", UNKNOWN, SHEETS, says="openings"),
    Case("decay.mid-band", "open", UNTESTED, SHEETS, says="absorption"),
    Case("decay.mid-band", "open", changed(BRICK, {"room.ceiling": None}), SHEETS, says="ceiling"),
    Case("decay.mid-band", "review", BRICK, SHEETS, says="modes rule up to 371 Hz"),
    Case("decay.mid-band", "review", CROWDED, SHEETS, says="takes 19.2 m2, and it has 13.0 m2"),
    Never("decay.mid-band", "notApplicable", "every room has a shell that rings"),
    Case("decay.uneven", "pass", changed(BRICK, HALL), SHEETS),
    Case("decay.uneven", "review", BRICK, SHEETS, says="modes rule up to 371 Hz"),
    Case("decay.uneven", "fail", CARPET, SHEETS, figure=74.06, source=HAND),
    Case("decay.uneven", "open", UNLINED, SHEETS),
    Case("decay.uneven", "notApplicable", SLOPED, SHEETS, says="not square"),
    Case("decay.low-band", "pass", TREATED, SHEETS),
    Case("decay.low-band", "fail", BOOMY, SHEETS, level="note", figure=2.560, says="250 Hz",
         source="by hand: 3.955 s at 250 Hz with 0.06 of the carpet, 0.01 of the brick and furniture of 5.92 m2"),
    Case("decay.low-band", "open", changed(TREATED, {"room.floor": None}), SHEETS),
    Case("decay.low-band", "notApplicable", CARPET, SHEETS, says="modes"),
    Case("decay.schroeder", "informational", BRICK, SHEETS, figure=370.99, source=HAND),
    Case("decay.schroeder", "open", UNLINED, SHEETS),
    Never("decay.schroeder", "pass", "it is told and neither right nor wrong"),
    Never("decay.schroeder", "fail", "it is told and neither right nor wrong"),
    Never("decay.schroeder", "notApplicable", "every room has one"),
    Case("decay.critical-distance", "pass", CARPET, SHEETS, figure=1.3060,
         source=f"{HAND}; Q 7.993 of 100 by 60 deg, 1.5314 m at 0.8638 s"),
    Case("decay.critical-distance", "review", BRICK, SHEETS, says="modes rule up to 371 Hz"),
    Case("decay.critical-distance", "fail", FAR, SHEETS),
    Case("decay.critical-distance", "open", changed(BRICK, {"loudspeakers.0.product": None}), SHEETS),
    Case("decay.critical-distance", "notApplicable", changed(BRICK, {"loudspeakers": "none"}), SHEETS),
]  # fmt: skip
EDGES = [
    Edge("decay.mid-band", SIDED, "treatments.0.width", 0.05, 5.9, 1, products=SHEETS, certain=0.09),
    Edge("decay.uneven", LAID, "treatments.0.width", 0.01, 8.9, 1, products=SHEETS, certain=13.0),
    Edge("decay.low-band", WIDE, "treatments.0.width", 0.1, 7.9, 1, products=SHEETS, certain=0.08),
    Edge("decay.critical-distance", FAR, "loudspeakers.0.position.from_front", 0.1, 8.0, 1, products=SHEETS,
         certain=0.78),
]  # fmt: skip
