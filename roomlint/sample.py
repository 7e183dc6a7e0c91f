"""A plain room to start a case from: 5 by 6 m under 2.6 m, exact to the digit, everything placed from the ear."""

from __future__ import annotations

from typing import Any

EAR = (2.5, 3.5, 1.2)
"""Where the reference ear is: from left, from front, height, in m."""
Data = dict[str, Any]


def at(right: float, front: float, up: float = 0.0) -> dict[str, str]:
    """Return a position so far to the right, to the front and above the reference ear, in m."""
    left, far, high = EAR
    return {
        "from_left": f"{left + right:.4f} m",
        "from_front": f"{far - front:.4f} m",
        "height": f"{high + up:.4f} m",
    }


def speaker(name: str, label: str | None, *place: float, **more: Any) -> Data:  # noqa: ANN401  plain data
    """Return a loudspeaker at a place counted from the ear; without a place when none is given."""
    data: Data = {"id": name, "label": label, "position": at(*place) if place else None, **more}
    return {key: value for key, value in data.items() if value is not None}


def room(*speakers: Data, seats: tuple[tuple[float, float], ...] = (), **more: Any) -> Data:  # noqa: ANN401  the same
    """Return a room with loudspeakers and, beside the reference seat, seats at places counted from its ear."""
    others = [{"id": f"seat-{number}", "ear": at(*place)} for number, place in enumerate(seats, 2)]
    return {
        "roomlint": 1,
        "project": {"code": "case"},
        "survey": {"tolerance": "0 mm", "temperature": "20 degC"},
        "room": {
            "size": {"width": "5 m", "length": "6 m"}, "ceiling": {"shape": "flat", "height": "2.6 m"},
            "openings": "none", "obstacles": "none",
        },
        "seats": [{"id": "seat", "ear": at(0.0, 0.0), "reference": True}, *others],
        "loudspeakers": list(speakers),
        "subwoofers": "none",
        "picture": "none",
        "treatments": "none",
        "electronics": {"amplifiers": "none", "racks": "none"},
        **more,
    }  # fmt: skip
