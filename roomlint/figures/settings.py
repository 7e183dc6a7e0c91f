"""What a calibration should come to: levels by sensitivity and distance, arrivals by the crossover."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING, Final

from roomlint.figures.direction import free_field_level_db
from roomlint.figures.domain import Refused, positive

if TYPE_CHECKING:
    from collections.abc import Iterable

ONE_WATT_OHM: Final = 8.0
"""2.83 V are one watt into 8 ohm, near enough: 2.83 squared is 8.01."""


def voltage_sensitivity_db(level_db: float, load_ohm: float) -> float:
    """Return the level for 2.83 V of a loudspeaker whose level for 1 W is known, dB: L + 10 lg(8 / Z).

    Z is the rated impedance in ohm, above zero, else Refused. Source: P = U^2 / Z; IEC 60268-5 states both.
    """
    return level_db + 10.0 * math.log10(ONE_WATT_OHM / positive("rated impedance", load_ohm, "ohm"))


def level_at_seat_db(sensitivity_db: float, distance_m: float) -> float:
    """Return the direct sound's level at a distance for the drive of the sensitivity, dB: L(1 m) - 20 lg(r / 1 m).

    Free field; a room adds alike to alike cabinets. Distance above 0 m, else Refused. Source: inverse square law.
    """
    return sensitivity_db + free_field_level_db(distance_m, 1.0)


def middle(values: Iterable[float]) -> float:
    """Return the median: the value in the middle, of an even number the mean of the two; of none, Refused.

    Of three or more, one that is far off moves it no farther than to its neighbour. Source: ISO 3534-1, 1.13 (memory).
    """
    ordered = sorted(values)
    if not ordered:
        raise Refused("there must be one value at least")
    last = len(ordered) - 1
    return (ordered[last // 2] + ordered[(last + 1) // 2]) / 2.0


def quarter_period_ms(frequency_hz: float) -> float:
    """Return a quarter of a period, ms: 250 / f; 80 Hz give 3.125 ms. Above 0 Hz, else Refused. Source: definition."""
    return 250.0 / positive("frequency", frequency_hz, "Hz")
