"""How closely something must be measured again, or that another value must be chosen, to decide a figure."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from roomlint.design.quantity import Origin
from roomlint.figures.domain import Refused
from roomlint.measure.figure import Figure
from roomlint.review.verdict import Again

if TYPE_CHECKING:
    from roomlint.design.quantity import Reading, Share
    from roomlint.review.room import Room

MOST_NAMED = 4
"""An installer who must measure more things again measures the room again."""
LEAST_M = 0.5e-3
"""No tape and no laser tells lengths closer than this."""
_TRIES = 6


def again_of(figure: Figure, margin: float, room: Room) -> Again | None:
    """Return which readings to know better, and how closely; None when no reading brings the uncertainty.

    The readings named are the fewest, largest first, of one unit, that decide it when each is known within one common
    `within`; the others stay as they are. `within` is rounded down, and tried before it is told.
    """
    shares = [share for share in figure.shares if share.reading.origin is Origin.FILE]
    if not shares:
        return None
    unit = shares[0].reading.unit
    alike = [share for share in shares if share.reading.unit == unit][:MOST_NAMED]
    for many in range(1, len(alike) + 1):
        within = _within(figure, alike[:many], abs(margin))
        if within is not None:
            known = Figure.plain("within", unit, within, u=0.0)
            return Again(tuple(room.name_of(share.reading) for share in alike[:many]), known, chosen=not room.measured)
    names = tuple(room.name_of(share.reading) for share in alike)
    return Again(names, None, chosen=not room.measured)


def _within(figure: Figure, named: list[Share], margin: float) -> float | None:
    """Return how closely the named readings must be known, rounded down; None when that is not enough."""
    readings = {share.reading for share in named}
    rest = math.hypot(*(share.change for share in figure.shares if share.reading not in readings))
    if rest >= margin:
        return None
    slope = math.hypot(*(share.slope for share in named))
    within = math.sqrt(margin**2 - rest**2) / slope
    for _ in range(_TRIES):
        within = _rounded_down(min(within, *(share.reading.u for share in named)))
        if named[0].reading.unit == "m" and within < LEAST_M:
            return None
        if math.hypot(rest, *(_change(figure, share.reading, within) for share in named)) <= margin:
            return within
        within *= 0.8
    return None


def _change(figure: Figure, reading: Reading, by: float) -> float:
    """Return how far the figure moves when one reading moves so much, to the worse side."""
    changes = [0.0]
    for step in (by, -by):
        try:
            changes.append(abs(figure.moved({reading: step}) - figure.value))
        except Refused:
            return math.inf
    return max(changes)


def _rounded_down(value: float) -> float:
    """Return a value to two significant digits, never more than it was."""
    if value <= 0.0:
        return 0.0
    step = 10.0 ** (math.floor(math.log10(value)) - 1)
    return math.floor(value / step + 1e-9) * step
