"""Where a seat's bass falls in: against its own band, against the other seats, and at all seats at once.

Levels in decibels as (seats, frequencies), frequencies in hertz, rising.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np

from roomlint.figures.bass import smoothed_db
from roomlint.figures.domain import Refused

if TYPE_CHECKING:
    from collections.abc import Sequence

    from roomlint.figures.modal_sum import Array

OWN_BAND_OCTAVES = 1.0
NOTE_OCTAVES = 1.0 / 3.0
"""Narrower dips are nobody's loss: they fill in with any decay, move with a chair, and no music stays on them."""


def against_own_band_db(levels_db: Array, frequencies_hz: Sequence[float], octaves: float = OWN_BAND_OCTAVES) -> Array:
    """Each seat's level against its own smoothed level, (seats, frequencies).

    Smoothed by a moving mean of power over `octaves` round each frequency, one octave where nothing else is said, cut
    at the ends of the list: let the list reach half that width beyond the band that is judged. Broad tilts, such as
    the rise towards low frequencies of a closed room, thereby do not count as dips.
    Source: fractional-octave smoothing; the choice of an octave is common practice.
    """
    return levels_db - smoothed_db(levels_db, frequencies_hz, 1 / octaves)


def against_others_db(levels_db: Array) -> Array:
    """Each seat's level against the mean in decibels of the other seats, (..., seats, frequencies).

    The seat itself is not in the mean: with it, two seats would tell half their difference. Raises Refused for fewer
    than two seats.
    """
    seats = levels_db.shape[-2]
    if seats < 2:  # noqa: PLR2004 - one seat has no others
        raise Refused("a seat is compared with others only where there are others")
    others: Array = (levels_db.sum(axis=-2, keepdims=True) - levels_db) / (seats - 1)
    return levels_db - others


def notes_against_own_band_db(levels_db: Array, frequencies_hz: Sequence[float]) -> Array:
    """Each seat's level over a third of an octave against its own level over an octave, (..., seats, frequencies).

    Both are moving means of power; see `against_own_band_db`.
    """
    notes = smoothed_db(levels_db, frequencies_hz, 1 / NOTE_OCTAVES)
    return notes - levels_db + against_own_band_db(levels_db, frequencies_hz)


def lowest(relative_db: Array, frequencies_hz: Sequence[float], low_hz: float, high_hz: float) -> tuple[Array, Array]:
    """Return where each curve is lowest within a band, and how low: the last axis is that of the frequencies.

    Raises Refused when no frequency lies in the band.
    """
    frequencies = np.asarray(frequencies_hz, dtype=np.float64)
    band = np.flatnonzero((frequencies >= low_hz) & (frequencies <= high_hz))
    if not band.size:
        raise Refused(f"no frequency was computed between {low_hz} and {high_hz} Hz")
    inside = relative_db[..., band]
    return frequencies[band][inside.argmin(axis=-1)], inside.min(axis=-1)


def lowest_of_all_seats(
    relative_db: Array, frequencies_hz: Sequence[float], low_hz: float, high_hz: float
) -> tuple[Array, Array]:
    """Return the place that all seats lose most: at each frequency the seat that loses least counts.

    No seat is spared what is told here. Levels (..., seats, frequencies); errors as for `lowest`.
    """
    return lowest(relative_db.max(axis=-2), frequencies_hz, low_hz, high_hz)
