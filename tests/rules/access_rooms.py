"""Rooms of the cases of chapter access."""

from __future__ import annotations

from typing import Any

from roomlint.sample import room
from roomlint.testing import changed

Data = dict[str, Any]
NONE = room()
OPEN = changed(NONE, {"room.openings": None})
DOOR = changed(
    room(
        subwoofers=[
            {
                "id": "sub", "position": {"from_left": "3.4 m", "from_front": "5.6 m", "height": "0.2 m"},
                "facing": "0 deg",
                "product": {"kind": "subwoofer", "width": "0.4 m", "height": "0.4 m", "depth": "0.4 m"},
            }
        ]
    ),
    {
        "room.openings": [
            {"id": "door", "kind": "door", "wall": "rear", "from_wall_left": "2.05 m", "width": "0.9 m", "sill": "0 m",
             "height": "2.0 m", "hinge": "left", "swing": "out", "egress": True},
        ]
    },
)  # fmt: skip
"""A door in the middle of the rear wall that opens outward, and a cabinet 0.90 m to its side."""
WINDOW = changed(
    room(),
    {
        "room.openings": [
            {"id": "window", "kind": "window", "wall": "left", "from_front": "2 m", "width": "0.8 m", "sill": "0.9 m",
             "height": "1 m", "egress": True},
        ]
    },
)  # fmt: skip
RACK = changed(
    room(),
    {
        "electronics.racks": [
            {"id": "rack", "position": {"from_left": "0.8 m", "from_front": "5.4 m", "height": "0 m"},
             "facing": "0 deg", "width": "0.6 m", "height": "1.2 m", "depth": "0.5 m",
             "front_clear": "1.2 m", "service": "slides-out"},
        ]
    },
)  # fmt: skip
STEP = changed(
    room(),
    {"room.risers": [{"id": "step", "from_front": "4 m", "height": "0.36 m", "steps": 2}]},
)
KEYPAD = changed(room(), {"room.controls": [{"id": "keypad", "height": "1.1 m"}]})
