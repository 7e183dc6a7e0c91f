"""Cases of panels at first reflections: 4.5 by 6.0 m under 2.7 m, a left loudspeaker 1.2 m from its wall.

By the left wall 4.5730 m against 3.1800 m direct, 3.155 dB down; it bounces 0.348 of the way from front to ear, that is
2.043 m from the front and 1.035 m up. The numbers of the images are those of an image-source program.
"""

from __future__ import annotations

from typing import Any

from roomlint.edges import Edge
from roomlint.testing import Case, changed

PROGRAM = "image list of pyroomacoustics 0.10.1, 20 log10(3.1800 / 4.5730)"
HALL: dict[str, Any] = {
    "roomlint": 1,
    "project": {"code": "case"},
    "survey": {"tolerance": "0 mm", "temperature": "20 degC"},
    "room": {"size": {"width": "4.5 m", "length": "6 m"}, "ceiling": {"shape": "flat", "height": "2.7 m"}},
    "seats": [{"id": "middle", "ear": {"from_left": "2.25 m", "from_front": "4.0 m", "height": "1.1 m"}}],
    "treatments": "none",
    "loudspeakers": [
        {
            "id": "left", "label": "M+030",
            "position": {"from_left": "1.2 m", "from_front": "1.0 m", "height": "1.0 m"},
        }
    ],
}  # fmt: skip


def hung(from_front: float, width: float, absorption: float = 0.9, **more: Any) -> dict[str, Any]:
    """Return the room with a panel on the left wall, from 0.5 m up."""
    bands = {"1 kHz": absorption, "2 kHz": absorption, "4 kHz": absorption}
    panel = {"id": "panel", "kind": "absorber", "on": "left", "from_front": f"{from_front} m", "width": f"{width} m",
             "bottom": "0.5 m", "height": "1.2 m", "absorption": bands, **more}  # fmt: skip
    return changed(HALL, {"treatments": [panel]})


TREATED = hung(1.7, 0.7)
# The ear of a neighbour 0.7 m to the right hears it 1.89 m from the front, past a panel that was set out for the middle.
NARROW = changed(
    hung(1.95, 0.3),
    {
        "seats.0.reference": True,
        "seats.1": {"id": "beside", "ear": {"from_left": "2.95 m", "from_front": "4.0 m", "height": "1.1 m"}},
    },
)
GLASS = changed(
    HALL,
    {"room.openings": [{"id": "garden", "kind": "glass-door", "wall": "left", "from_front": "1.5 m", "width": "2 m",
                        "sill": "0 m", "height": "2.1 m"}]},
)  # fmt: skip
BAFFLED = [
    {
        "roomlint_product": 1, "id": "horn", "kind": "loudspeaker",
        "loudspeaker": {"horizontal_coverage": "60 deg", "vertical_coverage": "40 deg"},
    }
]  # fmt: skip
NARROW_BEAM = changed(HALL, {"loudspeakers.0.product": "horn", "loudspeakers.0.aim": {"seat": "middle"}})
DRAPED = changed(hung(4.0, 0.7), {"room.walls": [{"id": "left", "finish": "curtain-heavy"}]})
SKYLIGHT = changed(
    HALL,
    {
        "room.ceiling.height": "1.9 m",
        "room.roof_windows": [{"id": "pane", "from_left": "1 m", "from_front": "2 m", "width": "2 m", "length": "1 m"}],
    },
)
WOOL = changed(TREATED, {"treatments.0.absorption": None, "treatments.0.material": "mineral-wool",
                         "treatments.0.thickness": "50 mm"})  # fmt: skip
ARCHED = changed(
    hung(4.5, 0.7),
    {"room.openings": [{"id": "arch", "kind": "opening", "wall": "left", "from_front": "1.5 m", "width": "2 m",
                        "sill": "0 m", "height": "2.1 m"}]},
)  # fmt: skip
WALL = hung(0.0, 6.0, 0.7, bottom="0 m", height="2.7 m")

CASES = [
    Case("boundary.reflection-panel", "pass", TREATED, figure=-13.155, source=f"{PROGRAM}, less 10 dB of the panel"),
    Case("boundary.reflection-panel", "pass", NARROW_BEAM, BAFFLED),
    Case("boundary.reflection-panel", "fail", hung(4.0, 0.7), figure=-3.155, source=PROGRAM, says="0.73 m up"),
    Case("boundary.reflection-panel", "fail", NARROW, subject="loudspeaker/left", says="beside"),
    Case("boundary.reflection-panel", "informational", HALL, figure=0.6, says="3.66 m along, 0.73 m up",
         source="6 m less 2.043 m less half of 0.6 m; 1.035 m less half of 0.6 m"),
    Case("boundary.reflection-panel", "informational", GLASS, says="a curtain there"),
    # It bounces 2.043 m from the front: a window from 2.1 m on leaves no room for the panel around it.
    Case("boundary.reflection-panel", "informational", changed(GLASS, {"room.openings.0.from_front": "2.1 m"}),
         says="would reach over"),
    Case("boundary.reflection-panel", "informational", changed(GLASS, {"room.openings.0.from_front": "2.4 m"}),
         says="takes its first reflection"),
    # Under a low ceiling it is the loudest: half way from 1.0 to 1.1 m high and 2.4 m on, 2.47 m from the front.
    Case("boundary.reflection-panel", "informational", SKYLIGHT, says="comes off pane in the ceiling"),
    # 50 mm of mineral wool without a report is the table's: enough here, as far as its sources agree.
    Case("boundary.reflection-panel", "review", WOOL, figure=-11.20, within=0.01,
         source=f"{PROGRAM}, and 10 log10(1 - 0.843) of 0.85, 0.84 and 0.84 in the middle of the table's rows"),
    Case("boundary.reflection-panel", "fail", changed(WOOL, {"treatments.0.on": "right"}), says="off the right"),
    Case("boundary.reflection-panel", "open", changed(TREATED, {"treatments.0.absorption": None}), says="absorption"),
    Case("boundary.reflection-panel", "open", changed(HALL, {"loudspeakers.0.position": None})),
    Case("boundary.reflection-panel", "open", changed(HALL, {"room.ceiling": None})),
    Case("boundary.reflection-panel", "notApplicable", changed(HALL, {"loudspeakers": "none"})),
    Case("boundary.reflection-panel", "fail", DRAPED, figure=-8.24,
         source=f"{PROGRAM}, and 10 log10(1 - 0.69) of the table's heavy curtain"),
    Case("boundary.reflection-panel", "pass", ARCHED),
]  # fmt: skip
EDGES = [Edge("boundary.reflection-panel", WALL, "loudspeakers.0.position.from_left", 0.3, 2.24, 1)]
