"""Where a seat's bass falls in: against its own band, against the other seats, and at all seats at once.

Levels in decibels as (seats, frequencies), frequencies in hertz, rising.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np

from roomlint.figures.bass import smoothed_db
from roomlint.figures.domain import Refused

if TYPE_CHECKING:
    from collections.abc import Sequence

    from numpy.typing import NDArray

    from roomlint.figures.modal_sum import Array

OWN_BAND_OCTAVES = 1.0
NOTE_OCTAVES = 1.0 / 3.0
"""Narrower dips are nobody's loss: they fill in with any decay, move with a chair, and no music stays on them."""


@dataclass(frozen=True, slots=True)
class Dip:
    """A lowest place of a curve: where it is and how far below its reference, negative."""

    hz: float
    depth_db: float


def against_own_band_db(levels_db: Array, frequencies_hz: Sequence[float], octaves: float = OWN_BAND_OCTAVES) -> Array:
    """Each seat's level against its own smoothed level, (seats, frequencies).

    Smoothed by a moving mean of power over `octaves` round each frequency, one octave where nothing else is said, cut
    at the ends of the list: let the list reach half that width beyond the band that is judged. Broad tilts, such as
    the rise towards low frequencies of a closed room, thereby do not count as dips.
    Source: fractional-octave smoothing; the choice of an octave is common practice.
    """
    return levels_db - smoothed_db(levels_db, frequencies_hz, 1 / octaves)


def against_others_db(levels_db: Array) -> Array:
    """Each seat's level against the mean in decibels of the other seats, (seats, frequencies).

    The seat itself is not in the mean: with it, two seats would tell half their difference. Raises Refused for fewer
    than two seats.
    """
    seats = len(levels_db)
    if seats < 2:  # noqa: PLR2004 - one seat has no others
        raise Refused("a seat is compared with others only where there are others")
    others: Array = (levels_db.sum(axis=0) - levels_db) / (seats - 1)
    return levels_db - others


def _within(frequencies_hz: Sequence[float], low_hz: float, high_hz: float) -> NDArray[np.intp]:
    frequencies = np.asarray(frequencies_hz, dtype=np.float64)
    found = np.flatnonzero((frequencies >= low_hz) & (frequencies <= high_hz))
    if not found.size:
        raise Refused(f"no frequency was computed between {low_hz} and {high_hz} Hz")
    return found


def deepest_dips(relative_db: Array, frequencies_hz: Sequence[float], low_hz: float, high_hz: float) -> tuple[Dip, ...]:
    """Each seat's lowest place within a band, of a curve from one of the comparisons above.

    Raises Refused when no frequency lies in the band.
    """
    band = _within(frequencies_hz, low_hz, high_hz)
    lowest = band[relative_db[:, band].argmin(axis=1)]
    return tuple(
        Dip(float(frequencies_hz[at]), float(curve[at])) for at, curve in zip(lowest, relative_db, strict=True)
    )


def common_nulls(
    relative_db: Array, frequencies_hz: Sequence[float], low_hz: float, high_hz: float, at_least_db: float
) -> tuple[Dip, ...]:
    """Frequencies within a band at which every seat falls in by `at_least_db` or more, deepest first.

    The depth is that of the seat that loses least. No equaliser fills such a null, and no seat is spared. Raises
    ValueError when no frequency lies in the band.
    """
    band = _within(frequencies_hz, low_hz, high_hz)
    least = relative_db[:, band].max(axis=0)
    around = np.concatenate([[np.inf], least, [np.inf]])
    bottoms = np.flatnonzero((least < around[:-2]) & (least <= around[2:]) & (least <= -at_least_db))
    found = [Dip(float(frequencies_hz[band[at]]), float(least[at])) for at in bottoms]
    return tuple(sorted(found, key=lambda dip: (dip.depth_db, dip.hz)))
