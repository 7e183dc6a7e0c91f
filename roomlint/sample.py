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
            "size": {"width": "5 m", "length": "6 m"},
            "ceiling": {"shape": "flat", "height": "2.6 m"},
            "openings": "none",
            "roof_windows": "none",
            "obstacles": "none",
            "risers": "none",
            "controls": "none",
            "walkways": "none",
            "cuts": "none",
            "smoke_alarm": "in-room",
        },
        "seats": [{"id": "seat", "ear": at(0.0, 0.0), "reference": True}, *others],
        "loudspeakers": list(speakers),
        "subwoofers": "none",
        "picture": "none",
        "treatments": "none",
        "electronics": {"amplifiers": "none", "racks": "none"},
        "panels": "none",
        **more,
    }


_WALL_BOX: Data = {
    "width": "0.2 m", "height": "0.3 m", "depth": "0.2 m", "mass": "6 kg",
    "loudspeaker": {"horizontal_coverage": "90 deg", "vertical_coverage": "80 deg", "placement": ["on-wall"]},
}  # fmt: skip
_ROUND_BOX: Data = {
    "kind": "loudspeaker", "width": "0.24 m", "height": "0.24 m", "depth": "0.1 m",
    "loudspeaker": {"horizontal_coverage": "100 deg", "vertical_coverage": "100 deg", "placement": ["in-ceiling"]},
}  # fmt: skip
CEILINGS: dict[str, Data] = {
    "tray": {
        "shape": "tray", "low": "2.5 m", "height": "2.8 m",
        "raised": {"from_left": "1 m", "from_front": "1.5 m", "width": "3 m", "depth": "3 m", "side_run": "0.3 m"},
    },
    "part-sloped": {
        "shape": "part-sloped", "height": "2.8 m", "low": "1.8 m", "low_sides": ["left"], "slope_width": "1.2 m",
    },
    "pieces": {
        "shape": "pieces",
        "pieces": [
            {"corners": [
                {"from_left": left, "from_front": front, "height": height}
                for left, front, height in corners
            ]}
            for corners in (
                (("0 m", "0 m", "2.4 m"), ("2 m", "0 m", "2.9 m"), ("2 m", "6 m", "2.9 m"), ("0 m", "6 m", "2.4 m")),
                (("2 m", "0 m", "2.9 m"), ("5 m", "0 m", "2.9 m"), ("5 m", "6 m", "2.9 m"), ("2 m", "6 m", "2.9 m")),
            )
        ],
    },
}  # fmt: skip
"""Ceilings of several parts, by shape."""


def plan(left: float, front: float) -> dict[str, str]:
    """Return a place without its height, from left and front, in m."""
    return {"from_left": f"{left:.3f} m", "from_front": f"{front:.3f} m"}


def shorthand(ceiling: str = "tray") -> Data:
    """Return a room that leaves out whatever can be worked out: pairs, rows, risers, heights, a diagonal, one-offs."""
    return {
        "roomlint": 1,
        "project": {"code": "shorthand", "stage": "design"},
        "survey": {"tolerance": "5 mm", "temperature": "20 degC"},
        "room": {
            "size": {"width": "5 m", "length": "6 m"},
            "ceiling": CEILINGS[ceiling],
            "risers": [
                {"id": "step", "from_left": "0.5 m", "from_front": "4.4 m", "width": "4 m", "depth": "1.5 m",
                 "height": "0.2 m"},
            ],
            "openings": [
                {"id": "window", "kind": "window", "wall": "left", "from_front": "2.0 m", "width": "1.2 m",
                 "sill": "0.9 m", "height": "1.1 m"},
                {"id": "door", "kind": "door", "wall": "rear", "from_wall_right": "0.3 m", "width": "0.8 m",
                 "sill": "0 m", "height": "2.0 m", "hinge": "left", "swing": "out"},
                {"id": "hatch", "kind": "opening", "wall": "right", "from_rear": "0.4 m", "width": "0.6 m",
                 "sill": "1.0 m", "height": "0.6 m"},
            ],
            "obstacles": "none",
            "roof_windows": [{"id": "skylight", "from_left": "3.4 m", "from_front": "3.6 m", "width": "0.6 m",
                              "length": "0.8 m"}],
        },
        "treatments": [
            {"id": "panel", "kind": "absorber", "on": "front", "from_right": "0.4 m", "width": "0.6 m",
             "height": "0.6 m", "bottom": "1.8 m"},
            {"id": "cloud", "kind": "absorber", "on": "ceiling", "from_right": "3.0 m", "from_rear": "2.6 m",
             "width": "0.6 m", "height": "0.6 m"},
        ],
        "seats": [
            {"id": "sofa", "count": 2, "spacing": "0.65 m", "reference_number": 1, "row": 1, "ear": plan(2.8, 3.4),
             "ear_above": "1.1 m", "head_top": "1.25 m"},
            {"id": "back", "count": 3, "spacing": "0.65 m", "row": 2, "ear": plan(2.5, 5.0), "ear_above": "1.15 m",
             "head_top": "1.5 m"},
        ],
        "picture": {"kind": "display", "diagonal": "75 in", "proportions": "16:9",
                    "centre": {**plan(2.5, 0.1), "height": "1.2 m"}},
        "layout": "4+5+0",
        "loudspeakers": [
            {"pair": ["left", "right"], "label": "M+030", "product": _WALL_BOX, "aim": {"seat": "sofa-1"},
             "position": {**plan(0.9, 0.3), "height": "1.1 m"}, "pair_middle": "2.48 m", "mounting": {"on": "front"}},
            {"id": "centre", "label": "M+000", "product": _WALL_BOX, "aim": {"seat": "sofa-1"},
             "position": {**plan(2.475, 0.3), "height": "0.7 m"}, "mounting": {"on": "front"}},
            {"pair": ["surround-left", "surround-right"], "label": "M+110", "product": _WALL_BOX,
             "position": {**plan(0.25, 4.2), "height": "1.3 m"}, "mounting": {"on": "left", "swivel": "20 deg"}},
            {"pair": ["upper-front-left", "upper-front-right"], "label": "U+030", "product": _ROUND_BOX,
             "position": plan(1.4, 1.9), "mounting": {"on": "ceiling"}},
            {"pair": ["upper-rear-left", "upper-rear-right"], "label": "U+110", "product": _WALL_BOX,
             "position": plan(1.4, 4.3), "mounting": {"on": "ceiling", "drop": "0.1 m"}},
        ],
        "subwoofers": [
            {"pair": ["sub-left", "sub-right"], "label": "LFE1", "facing": "160 deg",
             "position": {**plan(0.4, 0.5), "height": "0.25 m"}, "mounting": {"on": "floor"}},
        ],
        "circuits": [
            {"id": "av", "receptacles": [{"id": "outlet", "wall": "front", "from_left": "0.6 m", "height": "0.4 m"}]},
        ],
    }  # fmt: skip
