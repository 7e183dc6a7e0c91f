"""Remedies: which way one coordinate must move, and how far, for a figure to come into its window."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from roomlint.design.base import need
from roomlint.figures.layouts import parse_label

if TYPE_CHECKING:
    from roomlint.design.listening import Loudspeaker, Seat
    from roomlint.design.model import Design

_FROM = frozenset({"from_left", "from_right", "from_front", "from_rear"})
_PARALLEL = 0.05
"""A ray that runs so nearly along the line of movement never meets it in a room."""


def where_to(design: Design, speaker: Loudspeaker, seat: Seat, low: float, high: float) -> str:
    """Say the range of one coordinate that puts a loudspeaker's azimuth between two angles, deg, or nothing."""
    label = parse_label(need(speaker.label, speaker, "label"))
    position = need(speaker.position, speaker, "position")
    here, ear = position.xyz, need(seat.ear, seat, "ear").xyz
    sign = label.side or 1
    turns = [math.radians(sign * angle + seat.facing_deg.value) for angle in (low, high)]
    rays = [(-math.sin(turn), math.cos(turn)) for turn in turns]
    # Front and rear loudspeakers move along the front or rear wall, side ones along the side walls.
    across = abs(math.sin(math.radians((low + high) / 2.0))) < math.sin(math.pi / 4.0)
    axis = 1 if across else 0
    ways = [(here[axis] - ear[axis]) / ray[axis] if abs(ray[axis]) > _PARALLEL else -1.0 for ray in rays]
    if min(ways) <= 0.0:
        return ""
    other = 1 - axis
    ends = sorted(ear[other] + way * ray[other] for way, ray in zip(ways, rays, strict=True))
    shell = design.shell
    size = shell.width_m.value if across else shell.length_m.value
    if ends[1] < 0.0 or ends[0] > size:
        return ""
    near, far = max(ends[0], 0.0), min(ends[1], size)
    # In the file's own words: x runs from the left, y from the rear.
    given = position.x if across else position.y
    written = given.at.path.rpartition(".")[2] if given.at is not None else ""
    key = written if written in _FROM else ("from_left" if across else "from_front")
    if key in {"from_right", "from_front"}:
        near, far = size - far, size - near
    return f"Moved alone, {key} from {near:.2f} m to {far:.2f} m puts it between {low:g} and {high:g} deg."
