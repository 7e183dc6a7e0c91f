"""Awkward rooms as plain data, small enough that every expected number can be worked out on paper.

Unless a room says otherwise it is 4 m wide and 5 m long under a flat ceiling of 2.5 m, with one seat in the middle
of the width, 3 m from the front, the ear 1.1 m up. Lengths are exact: no uncertainty, so nothing ends in review.
"""

from __future__ import annotations

from typing import Any

Data = dict[str, Any]

BOX = {"roomlint_product": 1, "id": "box", "kind": "loudspeaker", "width": "0.2 m", "height": "0.3 m", "depth": "0.2 m"}
PLAIN: Data = {
    **BOX,
    "loudspeaker": {
        "horizontal_coverage": "90 deg",
        "vertical_coverage": "60 deg",
        "baffle_angle": "0 deg",
        "placement": ["on-wall", "stand"],
        "port": {"face": "none"},
    },
}
ANGLED: Data = {
    **BOX,
    "id": "angled",
    "loudspeaker": {
        "horizontal_coverage": "90 deg",
        "vertical_coverage": "60 deg",
        "baffle_angle": "20 deg",
        "placement": ["on-wall"],
        "port": {"face": "none"},
    },
}
ROUND: Data = {
    **BOX,
    "id": "round",
    "loudspeaker": {
        "horizontal_coverage": "90 deg",
        "vertical_coverage": "90 deg",
        "baffle_angle": "0 deg",
        "placement": ["in-ceiling"],
        "port": {"face": "none"},
    },
}


def ported(face: str) -> Data:
    """Return a cabinet with an 80 mm port in one of its faces."""
    return {
        **BOX,
        "id": f"{face}-port",
        "loudspeaker": {"placement": ["stand"], "port": {"face": face, "diameter": "80 mm"}},
    }


EXACT: Data = {"tolerance": "0 mm", "temperature": "20 degC"}
"""What the figures are worked out with: no tolerance, and sound at 343.2 m/s."""

PLATE: Data = {"roomlint_product": 1, "id": "plate", "kind": "mount", "mount": {"motion": "fixed"}}

PRODUCTS = (PLAIN, ANGLED, ROUND, PLATE, ported("rear"), ported("bottom"))


def at(left: float, front: float, height: float) -> Data:
    """Return a position in metres."""
    return {"from_left": f"{left} m", "from_front": f"{front} m", "height": f"{height} m"}


def seat(name: str, left: float = 2.0, front: float = 3.0, height: float = 1.1, **more: object) -> Data:
    """Return a seat."""
    return {"id": name, "ear": at(left, front, height), **more}


def speaker(name: str, label: str, place: tuple[float, float, float], product: str = "box", **more: object) -> Data:
    """Return a loudspeaker."""
    return {"id": name, "label": label, "product": product, "position": at(*place), **more}


def room(*loudspeakers: Data, shape: Data | None = None, seats: list[Data] | None = None, **more: object) -> Data:
    """Return a room of these loudspeakers."""
    plain: Data = {"size": {"width": "4 m", "length": "5 m"}, "ceiling": {"shape": "flat", "height": "2.5 m"}}
    return {
        "roomlint": 1,
        "survey": EXACT,
        "room": {key: value for key, value in {**plain, **(shape or {})}.items() if value is not None},
        "seats": seats or [seat("middle", reference=True)],
        "loudspeakers": list(loudspeakers),
        "treatments": "none",
        **more,
    }


AT_MIDDLE = {"aim": {"seat": "middle"}}
IN_CEILING = {"mounting": {"on": "ceiling"}}

# Rises by 1 m over the 5 m from front to rear: 0.2 m a metre.
RISING = {"ceiling": {"shape": "mono-pitch", "low": "2.2 m", "high": "3.2 m", "low_side": "front"}}
SLOPE_RISING_TO_REAR = room(
    speaker("upper-left", "U+045", (1.0, 1.8, 2.55), "round", **IN_CEILING),
    speaker("upper-right", "U-045", (3.0, 1.8, 2.55), "round", **IN_CEILING),
    speaker("high-left", "U+135", (1.0, 4.0, 2.99), "round", **IN_CEILING),
    speaker("high-right", "U-135", (3.4, 4.0, 2.99), "round", **IN_CEILING),
    shape=RISING,
    layout="4+7+0",
)

# Falls by 1 m over the 5 m from front to rear.
FALLING = {"ceiling": {"shape": "mono-pitch", "low": "2.0 m", "high": "3.0 m", "low_side": "rear"}}
SLOPE_FALLING_TO_REAR = room(
    speaker("near-left", "U+135", (1.0, 4.0, 2.19), "round", **IN_CEILING),
    speaker("far-right", "U-135", (3.0, 4.6, 2.07), "round", **IN_CEILING),
    speaker("above", "U+045", (1.0, 4.6, 2.30), "round", **IN_CEILING),
    shape=FALLING,
    layout="4+7+0",
)

# The long part is 4 m x 6 m; the leg goes 3 m further to the right, from 4 m to 6 m off the front.
L_SHAPE = {
    "obstacles": [],
    "size": None,
    "outline": [
        {"from_left": "0 m", "from_front": "0 m", "wall": "front"},
        {"from_left": "4 m", "from_front": "0 m", "wall": "right"},
        {"from_left": "4 m", "from_front": "4 m", "wall": "leg-front"},
        {"from_left": "7 m", "from_front": "4 m", "wall": "leg-right"},
        {"from_left": "7 m", "from_front": "6 m", "wall": "rear"},
        {"from_left": "0 m", "from_front": "6 m", "wall": "left"},
    ],
}
HIDDEN_SEAT = room(
    speaker("left", "M+030", (0.5, 0.5, 1.1)),
    speaker("right", "M-030", (3.5, 0.5, 1.1)),
    shape=L_SHAPE,
    seats=[seat("middle", reference=True), seat("bar", 6.0, 5.0)],
)

GLASS = {
    "openings": [
        {
            "id": "glass",
            "kind": "glass-door",
            "wall": "left",
            "from_wall_left": "1.0 m",
            "width": "2.0 m",
            "sill": "0 m",
            "height": "2.1 m",
            "swing": "sliding",
        }
    ]
}
GLASS_SIDE_WALL = room(
    speaker("on-glass", "M+090", (0.1, 3.0, 1.2), mounting={"on": "left"}),
    speaker(
        "high-side",
        "M-090",
        (3.8, 3.0, 1.9),
        mounting={"on": "right"},
        departure={"because": "high beside the seats, aimed down, as the glass is on the other side", "meets": "none"},
    ),
    shape=GLASS,
    layout="4+7+0",
)
MOVED_TO_THE_REAR_CORNERS = room(
    speaker(
        "corner-left",
        "M+110",
        (0.3, 4.6, 1.2),
        departure={"because": "glass where the side loudspeaker belongs", "meets": "home-tolerance"},
    ),
    speaker("corner-right", "M-110", (3.7, 4.6, 1.2)),
    shape=GLASS,
    layout="0+5+0",
)

# Seen from inside, the left-hand end of the rear wall is the room's right: the leaf hangs at 4 - 1 = 3 m from the left.
DOOR_BEHIND_THE_SEATS = room(
    speaker("in-the-way", "M+135", (2.6, 4.6, 1.2)),
    speaker("clear", "M-135", (3.8, 4.6, 1.2)),
    shape={
        "openings": [
            {
                "id": "door",
                "kind": "door",
                "wall": "rear",
                "from_wall_left": "1.0 m",
                "width": "0.8 m",
                "sill": "0 m",
                "height": "2.0 m",
                "hinge": "left",
                "swing": "in",
            }
        ]
    },
)

POST = room(
    speaker("left", "M+030", (0.5, 0.5, 1.1)),
    speaker("right", "M-030", (3.5, 0.5, 1.1)),
    shape={
        "obstacles": [
            {
                "id": "post",
                "kind": "post",
                "from_left": "2.7 m",
                "from_front": "1.6 m",
                "width": "0.2 m",
                "depth": "0.2 m",
                "bottom": "0 m",
                "top": "2.5 m",
            }
        ]
    },
)

SOFFIT = room(
    speaker("above-soffit", "U+045", (0.3, 1.5, 2.45), "round", **IN_CEILING),
    speaker("free", "U-045", (3.2, 1.5, 2.45), "round", **IN_CEILING),
    shape={
        "obstacles": [
            {
                "id": "soffit",
                "kind": "soffit",
                "from_left": "0.6 m",
                "from_front": "0 m",
                "width": "0.5 m",
                "depth": "5 m",
                "bottom": "2.1 m",
                "top": "2.5 m",
            }
        ]
    },
    layout="4+7+0",
)

SECOND_ROW = room(
    speaker("centre-low", "M+000", (2.0, 0.5, 0.8)),
    speaker("left-high", "M+030", (0.5, 0.5, 2.0)),
    seats=[
        seat("middle", front=2.0, reference=True, row=1, head_top="1.25 m"),
        seat("behind", front=4.0, height=1.2, row=2, head_top="1.35 m"),
    ],
)

# Straight ahead and high: 2.8 m of floor and a rise of 2.8 tan 20 = 1.019 m.
ANGLED_ON_WALL = room(
    speaker("turned-down", "U+030", (2.0, 0.2, 2.119), "angled", mounting={"on": "front"}),
    speaker("flat", "U-030", (2.0, 0.2, 2.119), "box", mounting={"on": "front"}),
    speaker("high-beside", "U+110", (0.2, 3.0, 2.2), "angled", mounting={"on": "left"}),
    layout="4+5+0",
)

ON_PLATE = {"on": "front", "product": "plate"}
ANGLED_AND_AIMED = room(
    speaker("turned-down", "U+030", (2.0, 0.2, 2.119), "angled", mounting=ON_PLATE, **AT_MIDDLE),
    speaker("flat", "U-030", (2.0, 0.2, 2.119), "box", mounting=ON_PLATE, **AT_MIDDLE),
    layout="4+5+0",
)

FRONT_PAIR_AND_A_ROW = room(
    speaker("left", "M+030", (0.5, 0.4, 1.1), **AT_MIDDLE),
    speaker("right", "M-030", (3.5, 0.4, 1.1), **AT_MIDDLE),
    seats=[seat("left-seat", 1.3), seat("middle", reference=True), seat("right-seat", 2.7)],
)

PORTS = room(
    speaker("rear", "M+030", (0.5, 0.27, 1.1), "rear-port", aim={"azimuth": "180 deg", "elevation": "0 deg"}),
    speaker("bottom", "M-030", (3.5, 0.27, 1.1), "bottom-port", port_clearance="0.03 m"),
)
