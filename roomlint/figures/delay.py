"""Times of arrival: the speed of sound, the delays that line loudspeakers up, and what stays uneven after."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from roomlint.figures.domain import Refused

if TYPE_CHECKING:
    from collections.abc import Sequence


def speed_of_sound_m_s(temperature_degc: float = 20.0) -> float:
    """Return the speed of sound in air, m/s.

    343.2 sqrt((t + 273.15) / 293.15), ISO 9613-1:1993, formula A.5. Valid from -20 to +50 degC, else Refused.
    """
    if not -20.0 <= temperature_degc <= 50.0:  # noqa: PLR2004  the formula's range
        raise Refused(f"the formula holds from -20 to +50 degC, not at {temperature_degc} degC")
    return 343.2 * math.sqrt((temperature_degc + 273.15) / 293.15)


def travel_ms(distance_m: float, speed_m_s: float) -> float:
    """Return the time sound needs for a distance, ms. The speed must be above 0 m/s, else Refused."""
    _refuse_speed(speed_m_s)
    return 1e3 * distance_m / speed_m_s


def rounded_to_step(value: float, step: float) -> float:
    """Return the multiple of a processor's step nearest to a value, halves away from zero.

    The step has the value's unit and is above 0, else Refused.
    """
    if step <= 0.0:
        raise Refused(f"a setting's step must be above 0, not {step}")
    return math.copysign(math.floor(abs(value) / step + 0.5) * step, value) + 0.0


def distance_as_delay_ms(entered_m: float, farthest_entered_m: float, speed_m_s: float) -> float:
    """Return the delay a processor sets for a loudspeaker whose distance is entered in place of a delay, ms.

    It delays each against the farthest distance entered: (d_max - d) / c.
    """
    return travel_ms(farthest_entered_m - entered_m, speed_m_s)


def common_arrival_ms(arrivals_ms: Sequence[float], latest_way_ms: float) -> float:
    """Return the arrival that most loudspeakers keep to, ms: the middle one, which one that is off does not move.

    Of an even number, whatever between the two in the middle is nearest to the longest way of all, which no delay is
    added to: of two, the farther one's. Raises Refused when there are none.
    """
    if not arrivals_ms:
        raise Refused("there must be one arrival at least")
    ordered, last = sorted(arrivals_ms), len(arrivals_ms) - 1
    return min(max(latest_way_ms, ordered[last // 2]), ordered[(last + 1) // 2])


def arrival_spread_ms(distances_m: Sequence[float], delays_ms: Sequence[float], speed_m_s: float) -> float:
    """Return the time between the first and the last arrival at a seat with the delays set, ms.

    Each arrival is d_i / c + t_i. Raises Refused when the two sequences differ in length or are empty.
    """
    arrivals = arrivals_ms(distances_m, delays_ms, speed_m_s)
    return max(arrivals) - min(arrivals)


def arrivals_ms(distances_m: Sequence[float], delays_ms: Sequence[float], speed_m_s: float) -> tuple[float, ...]:
    """Return the time of each loudspeaker's arrival at a seat, d_i / c + t_i, ms."""
    _refuse_speed(speed_m_s)
    if not distances_m or len(distances_m) != len(delays_ms):
        raise Refused("arrivals need one delay for each distance, and at least one of each")
    return tuple(1e3 * distance / speed_m_s + delay for distance, delay in zip(distances_m, delays_ms, strict=True))


def _refuse_speed(speed_m_s: float) -> None:
    if speed_m_s <= 0.0:
        raise Refused(f"the speed of sound must be above 0 m/s, not {speed_m_s}")
