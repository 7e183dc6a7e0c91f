"""How much a figure made of bass levels owes to what is not known: decay, positions, and the solver itself.

A figure here is any function of levels (seats, frequencies), such as the depth of each seat's deepest dip. Each thing
that is not known is moved to the end of its range, one at a time, and the figure is taken again: no new modes.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Literal, TypeAlias

import numpy as np

from roomlint.figures.bass import drive, level_db

if TYPE_CHECKING:
    from collections.abc import Callable, Sequence

    from roomlint.figures.bass import BassSource
    from roomlint.figures.modal_sum import Array, ComplexArray, Points
    from roomlint.figures.room_response import RoomResponse

    Statistic: TypeAlias = Callable[[Array], Array]

Cause = Literal["decay", "source", "ear", "solver"]


@dataclass(frozen=True, slots=True, eq=False)
class Share:
    """What one unknown brings: which, along which axis if it is a position, and the largest change of the figure."""

    cause: Cause
    number: int  # of the source or ear
    axis: int
    change: Array  # as the statistic, not negative


def shares(
    response: RoomResponse,
    sources: Sequence[BassSource],
    ears: Points,
    frequencies_hz: Sequence[float],
    decays_s: tuple[float, float, float],
    source_moves_m: Array,
    ear_moves_m: Array,
    statistic: Statistic,
) -> tuple[Share, ...]:
    """Return the share of each unknown in a statistic of the levels.

    `decays_s` holds the usual, the shortest and the longest decay; `source_moves_m` (sources, 3) and `ear_moves_m`
    (ears, 3) hold the expanded uncertainty of each coordinate, 0 for exact; a moved point's pressure is developed to
    first order, good for moves of some centimetres. The solver's share is the change to its coarser resolution.
    Raises Refused as `RoomResponse.transfer`.
    """
    decay_s, *extreme_s = decays_s
    places = [source.position for source in sources]
    gains = drive(sources, frequencies_hz)
    paths = response.paths(places, ears)

    def summed(parts: ComplexArray) -> ComplexArray:
        found: ComplexArray = (parts * gains).sum(axis=1)
        return found

    pressure = summed(paths.transfer(frequencies_hz, decay_s))
    usual = statistic(level_db(pressure))

    def change(*pressures: ComplexArray) -> Array:
        return np.asarray(np.max([np.abs(statistic(level_db(moved)) - usual) for moved in pressures], axis=0))

    found = [Share("decay", 0, 0, change(*(summed(paths.transfer(frequencies_hz, decay)) for decay in extreme_s)))]
    if response.found_numerically:
        coarse = response.coarser.transfer(places, ears, frequencies_hz, decay_s)
        found.append(Share("solver", 0, 0, change(summed(coarse))))
    if not (np.any(source_moves_m) or np.any(ear_moves_m)):
        return tuple(found)
    by_source, by_ear = response.slopes(places, ears, frequencies_hz, decay_s)
    of_source = by_source * gains[None, :, None, :]
    of_ear = (by_ear * gains[None, :, None, :]).sum(axis=1)
    for number, axis in np.argwhere(np.asarray(source_moves_m) > 0).tolist():
        move = source_moves_m[number, axis] * of_source[:, number, axis]
        found.append(Share("source", number, axis, change(pressure + move, pressure - move)))
    for number, axis in np.argwhere(np.asarray(ear_moves_m) > 0).tolist():
        move = np.zeros_like(pressure)
        move[number] = ear_moves_m[number, axis] * of_ear[number, axis]
        found.append(Share("ear", number, axis, change(pressure + move, pressure - move)))
    return tuple(found)


def combined(found: Sequence[Share]) -> Array:
    """Return all shares together as the root of their squares. Source: JCGM 100:2008, 5.1.2, independent inputs."""
    return np.asarray(np.sqrt(np.sum([share.change**2 for share in found], axis=0)))
