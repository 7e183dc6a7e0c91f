"""Rooms drawn at random: usual layouts, bent until rules fail, in boxes, in rooms with corners and under slopes."""

from __future__ import annotations

import math
import random
from typing import Any

Data = dict[str, Any]

DIRECTIONS = {
    "0+5+0": {"M+030": (30, 0), "M-030": (-30, 0), "M+000": (0, 0), "M+110": (110, 0), "M-110": (-110, 0)},
    "4+7+0": {
        "M+030": (30, 0), "M-030": (-30, 0), "M+000": (0, 0), "M+090": (90, 0), "M-090": (-90, 0), "M+135": (135, 0),
        "M-135": (-135, 0), "U+045": (40, 38), "U-045": (-40, 38), "U+135": (130, 38), "U-135": (-130, 38),
    },
}  # fmt: skip
BOX = {
    "roomlint_product": 1, "id": "box", "kind": "loudspeaker", "width": "0.2 m", "height": "0.3 m", "depth": "0.25 m",
}  # fmt: skip
BIN = {**BOX, "id": "bin", "kind": "subwoofer", "width": "0.4 m", "height": "0.4 m", "depth": "0.4 m"}
PRODUCTS = (BOX, BIN)
LONGEST_M = 12.0


def metres(value: float) -> str:
    return f"{value:.3f} m"


def place(x: float, y: float, z: float, length: float) -> Data:
    return {"from_left": metres(x), "from_front": metres(length - y), "height": metres(z)}


def drawn(seed: int) -> Data:
    """Return one room. Its loudspeakers stand near where the layout wants them, one in three well off."""
    pick = random.Random(seed)
    width, length = pick.uniform(3.6, 6.5), pick.uniform(4.4, 8.0)
    high = pick.uniform(2.3, 3.0)
    data: Data = {
        "roomlint": 1,
        "project": {"code": f"drawn-{seed}"},
        "survey": {"tolerance": pick.choice(["0 mm", "5 mm", "10 mm"])},
        "layout": pick.choice(list(DIRECTIONS)),
        "room": {"size": {"width": metres(width), "length": metres(length)}, **_ceiling(pick, high)},
    }
    if pick.random() < 0.4:
        data["room"] = {**_outline(pick, width, length), "ceiling": {"shape": "flat", "height": metres(high)}}
    ear = (width * pick.uniform(0.45, 0.55), length * pick.uniform(0.35, 0.5), pick.uniform(1.05, 1.25))
    data["seats"] = [{"id": "middle", "ear": place(*ear, length), "reference": True, "width": "0.6 m"}]
    data["loudspeakers"] = [
        _speaker(pick, label, towards, ear, (width, length, high))
        for label, towards in DIRECTIONS[data["layout"]].items()
    ]
    data["subwoofers"] = [
        {"id": "sub", "product": "bin", "mounting": {"on": "floor"}, "position": place(0.5, length - 0.5, 0.2, length)}
    ]
    if pick.random() < 0.5:
        data["room"]["obstacles"] = [
            {
                "id": "post", "kind": "post", "from_left": metres(pick.uniform(0.0, width - 0.4)),
                "from_front": metres(pick.uniform(0.0, length - 0.4)), "width": "0.3 m", "depth": "0.3 m",
            }
        ]  # fmt: skip
    if "size" in data["room"]:
        data["room"]["openings"] = [
            {
                "id": "window", "kind": "window", "wall": pick.choice(["left", "right"]), "width": "1.20 m",
                "from_wall_left": metres(pick.uniform(0.2, length - 1.6)), "sill": "0.80 m", "height": "1.20 m",
            }
        ]  # fmt: skip
    return data


def _ceiling(pick: random.Random, high: float) -> Data:
    if pick.random() < 0.6:
        return {"ceiling": {"shape": "flat", "height": metres(high)}}
    side = pick.choice(["left", "right", "front", "rear"])
    return {"ceiling": {"shape": "mono-pitch", "low": metres(high - 0.6), "high": metres(high), "low_side": side}}


def _outline(pick: random.Random, width: float, length: float) -> Data:
    """Return an L: the rear right corner is cut out of the box."""
    x, y = metres(width * pick.uniform(0.6, 0.8)), metres(length * pick.uniform(0.6, 0.8))
    wide, long = metres(width), metres(length)
    corners = [("0 m", "0 m"), (wide, "0 m"), (wide, y), (x, y), (x, long), ("0 m", long)]
    names = ("front", "right", "step", "niche", "rear", "left")
    return {
        "outline": [
            {"from_left": left, "from_front": front, "wall": name}
            for (left, front), name in zip(corners, names, strict=True)
        ]
    }


def _speaker(pick: random.Random, label: str, towards: tuple[float, float], ear: Any, size: Any) -> Data:
    width, length, high = size
    bent = 30.0 if pick.random() < 0.35 else 4.0
    azimuth = math.radians(towards[0] + pick.uniform(-bent, bent))
    x, y = -math.sin(azimuth), math.cos(azimuth)
    held: Data = {}
    if label.startswith("U"):
        way = min((high - 0.02 - ear[2]) / math.tan(math.radians(towards[1])), _to_walls(ear, x, y, width, length, 0.3))
        z = high - 0.02
        held = {"mounting": {"on": "ceiling"}} if pick.random() < 0.5 else {}
    else:
        way = min(_to_walls(ear, x, y, width, length, 0.35), 4.0) * pick.uniform(0.8, 1.0)
        z = ear[2] + pick.uniform(-0.1, 0.35)
        if abs(towards[0]) == 90 and pick.random() < 0.7:
            # On the side wall.
            left = towards[0] > 0
            at = (0.26 if left else width - 0.26, min(max(ear[1] + way * y, 0.3), length - 0.3), z)
            mounting = {"on": "left" if left else "right"}
            return _made(label, at, length, mounting=mounting)
        held = pick.choice([{}, {"mounting": {"on": "stand"}}])
    return _made(label, (ear[0] + way * x, ear[1] + way * y, z), length, **held)


def _made(label: str, at: tuple[float, float, float], length: float, **held: Any) -> Data:
    name = f"s{label[0].lower()}{label[1:].replace('+', 'l').replace('-', 'r')}"
    return {"id": name, "label": label, "product": "box", "position": place(*at, length), **held}


def _to_walls(ear: Any, x: float, y: float, width: float, length: float, off: float) -> float:
    ways = [LONGEST_M]
    for at, step, size in ((ear[0], x, width), (ear[1], y, length)):
        if abs(step) > 1e-9:
            ways.append(((size - off if step > 0 else off) - at) / step)
    return max(min(ways), 0.3)
