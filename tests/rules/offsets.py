"""Rooms of the cases of layout and angle; places are offsets from the reference ear: right, to the front, up, in m."""

from __future__ import annotations

from typing import Any

from roomlint.testing import changed

HAND = "right triangle by hand, tangent table"
Data = dict[str, Any]


def at(right: float, front: float, up: float = 0.0) -> dict[str, str]:
    """Return a place in a room of 5 by 6 m, whose ear is in the middle of the width and 3.5 m from the front."""
    return {"from_left": f"{2.5 + right:.4f} m", "from_front": f"{3.5 - front:.4f} m", "height": f"{1.2 + up:.4f} m"}


def speaker(name: str, label: str | None, *place: float, **more: Any) -> Data:
    data = {"id": name, "label": label, "position": at(*place), **more}
    return {key: value for key, value in data.items() if value is not None}


def room(*speakers: Data, **more: Any) -> Data:
    """Return a room whose readings are exact, so that figures are what hand arithmetic gives."""
    return {
        "roomlint": 1,
        "project": {"code": "case"},
        "survey": {"tolerance": "0 mm"},
        "room": {
            "size": {"width": "5 m", "length": "6 m"}, "ceiling": {"shape": "flat", "height": "2.6 m"},
            "openings": "none", "obstacles": "none",
        },
        "seats": [{"id": "seat", "ear": at(0, 0), "reference": True, "width": "0.5 m"}],
        "loudspeakers": list(speakers),
        "subwoofers": "none",
        "picture": "none",
        "treatments": "none",
        "circuits": "none",
        "electronics": {"amplifiers": "none", "racks": "none"},
        **more,
    }  # fmt: skip


def nowhere(data: Data, index: int = 0) -> Data:
    """Return the same room, with one loudspeaker's place not known yet."""
    return changed(data, {f"loudspeakers.{index}.position": None})


def taped(data: Data, tolerance: str = "30 mm") -> Data:
    """Return the same room, measured with a tape."""
    return changed(data, {"survey.tolerance": tolerance})


BOX = {
    "roomlint_product": 1, "id": "box", "kind": "loudspeaker", "width": "0.2 m", "height": "0.3 m", "depth": "0.25 m",
}  # fmt: skip
PICTURE = {"kind": "display", "centre": at(0, 3.4, 0.25), "width": "2.4 m", "height": "1.3 m"}
L, R = speaker("left", "M+030", -1.5, 2.6), speaker("right", "M-030", 1.5, 2.6)
C = speaker("centre", "M+000", 0.0, 2.8)
LS, RS = speaker("ls", "M+110", -2.0, -0.73), speaker("rs", "M-110", 2.0, -0.73)
EMPTY = room()
BARE = changed(room(), {"seats.0": None})
