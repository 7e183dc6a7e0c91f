"""Lobes of two equal drivers side by side that play the same band.

Spacing between the drivers' centres in m, frequency in Hz, speed of sound in m/s, angles in deg off the axis.
"""

from __future__ import annotations

import math

from roomlint.figures.domain import Refused

_NULL, _HALF_POWER = 2.0, 4.0


def null_angle_deg(spacing_m: float, frequency_hz: float, sound_speed_m_s: float) -> float:
    """Return the angle of the first cancellation, asin(c / (2 f s)), deg; 90 when there is none.

    In-phase drivers add to |cos(pi s f sin(angle) / c)|. Raises Refused for a spacing or frequency not above 0.
    Source: two point sources, any acoustics handbook.
    """
    return _angle(spacing_m, frequency_hz, sound_speed_m_s, _NULL)


def half_power_angle_deg(spacing_m: float, frequency_hz: float, sound_speed_m_s: float) -> float:
    """Return the angle at which the pair is 3 dB down, asin(c / (4 f s)), deg; 90 when it never is.

    Errors and source as for `null_angle_deg`.
    """
    return _angle(spacing_m, frequency_hz, sound_speed_m_s, _HALF_POWER)


def _angle(spacing_m: float, frequency_hz: float, sound_speed_m_s: float, part: float) -> float:
    if spacing_m <= 0.0 or frequency_hz <= 0.0:
        raise Refused(f"spacing and frequency must be above 0, not {spacing_m} m and {frequency_hz} Hz")
    sine = sound_speed_m_s / (part * frequency_hz * spacing_m)
    return 90.0 if sine >= 1.0 else math.degrees(math.asin(sine))
