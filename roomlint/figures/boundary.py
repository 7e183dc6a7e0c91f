"""A loudspeaker beside walls: cancellation at the listener, radiated power, port clearance.

Lengths in metres, frequencies in hertz, levels in decibels, speed of sound in m/s.
"""

from __future__ import annotations

import math
from itertools import combinations
from typing import TYPE_CHECKING, Final

from roomlint.figures.domain import Refused

if TYPE_CHECKING:
    from collections.abc import Sequence

    from roomlint.figures.modal_sum import Array

PORT_GAP_FLOOR_M = 0.15
SURFACES_AT_RIGHT_ANGLES = 3


_FINER: Final = 16
_NEARLY: Final = 1.15
"""What is 0.6 dB above the lowest step may hold the lowest place between steps."""


def _positive(name: str, value: float) -> None:
    if not (math.isfinite(value) and value > 0):
        raise Refused(f"{name} must be a positive number, got {value}")


def rear_null_hz(distance_m: float, sound_speed_mps: float) -> float:
    """First cancellation on axis from a wall behind the source, f = c/(4 d); further ones at odd multiples.

    `distance_m` from the acoustic centre to the wall, > 0 (else Refused).
    Source: quarter-wave argument as printed in audio glossaries; exact for a far listener straight ahead.
    """
    _positive("the distance to the wall", distance_m)
    return sound_speed_mps / (4 * distance_m)


def path_null_hz(
    direct_m: float, reflected_m: float, sound_speed_mps: float, *, number: int = 1, inverted: bool = False
) -> float:
    """Give a cancellation between a direct and a reflected path, where the reflection arrives in opposite phase.

    `reflected_m` is the distance from the mirror image of the source to the listener. A surface that returns the
    pressure in phase (walls, floor, ceiling: reflection factor above 0) cancels where the paths differ by an odd number
    of half wavelengths, f = (2 n - 1) c/(2 (reflected - direct)); one that inverts it, or a second source in opposite
    polarity, where they differ by whole ones, f = n c/(reflected - direct). `number` n counts from the lowest.

    Raises Refused unless 0 < direct < reflected and n is 1 or more. Source: half-wave path difference, c/(2 dL) as
    an acoustics consultancy's article prints it; exact for one real reflection factor. On axis before a wall d behind
    the source it is c/(4 d).
    """
    _positive("the direct path", direct_m)
    if reflected_m <= direct_m:
        raise Refused(f"a reflected path is longer than the direct one, got {reflected_m} m against {direct_m} m")
    if number < 1:
        raise Refused(f"cancellations are counted from 1, not {number}")
    halves = 2 * number if inverted else 2 * number - 1
    return halves * sound_speed_mps / (2 * (reflected_m - direct_m))


def null_depth_db(direct_m: float, reflected_m: float, reflection_factor: float) -> float:
    """Level at a cancellation relative to the direct sound, 20 log10(1 - g) with g = R direct/reflected; negative.

    `reflection_factor` R is the pressure reflection factor of the surface, 0 <= R < 1, or 1 for a rigid one. The
    source is taken to radiate alike in all directions, so it is the worst case. Raises Refused outside that range.
    Source: coherent image source.
    """
    return 20 * math.log10(1 - _image_share(direct_m, reflected_m, reflection_factor))


def _image_share(direct_m: float, reflected_m: float, reflection_factor: float) -> float:
    _positive("the direct path", direct_m)
    if reflected_m <= direct_m:
        raise Refused(f"a reflected path is longer than the direct one, got {reflected_m} m against {direct_m} m")
    if not 0 <= reflection_factor <= 1:
        raise Refused(f"a pressure reflection factor lies between 0 and 1, got {reflection_factor}")
    return reflection_factor * direct_m / reflected_m


def deepest_power_dip(
    distances_m: Sequence[float], low_hz: float, high_hz: float, sound_speed_mps: float, step_hz: float = 1.0
) -> tuple[float, float]:
    """(frequency, level) of the lowest radiated power of a small source between two frequencies, scanned in steps.

    Around the steps that are nearly as low as the lowest it is scanned again, sixteen times as finely: a dip of three
    equal distances is narrow, and steps of 4 Hz miss up to 0.3 dB of it.

    Level in dB relative to free field, beside one, two or three rigid surfaces at right angles: W/W0 = 1 + sum over the
    images of sin(u)/u, u = 2 k r, r the root of the sum of squares of each subset of the distances. Tends to 3, 6 and
    9 dB at low frequency. Raises Refused for none or more than three distances, or for a band that does not run upward.
    Source: the interference sum of boundaries as applied to loudspeakers in J. Audio Eng. Soc. 22 (1974);
    formula from memory.
    """
    if not 0 < low_hz < high_hz:
        raise Refused(f"the band must run upward from above 0 Hz, got {low_hz} to {high_hz} Hz")
    frequencies = [low_hz + step_hz * n for n in range(int((high_hz - low_hz) / step_hz) + 1)]
    gains = _power_gains(distances_m, frequencies, sound_speed_mps)
    near = [frequency for frequency, gain in zip(frequencies, gains, strict=True) if gain <= _NEARLY * gains.min()]
    fine = sorted({
        min(max(frequency + step_hz * n / _FINER, low_hz), high_hz)
        for frequency in near
        for n in range(-_FINER, _FINER + 1)
    })  # fmt: skip
    gains = _power_gains(distances_m, fine, sound_speed_mps)
    lowest = int(gains.argmin())
    return fine[lowest], 10 * math.log10(float(gains[lowest]))


def _power_gains(distances_m: Sequence[float], frequencies_hz: Sequence[float], sound_speed_mps: float) -> Array:
    """Return the radiated power at each frequency over that in free field."""
    import numpy as np  # only where a loudspeaker's power is asked for

    if not 1 <= len(distances_m) <= SURFACES_AT_RIGHT_ANGLES:
        raise Refused(f"one, two or three surfaces at right angles are expected, got {len(distances_m)}")
    for distance in distances_m:
        if distance < 0:
            raise Refused(f"a distance to a surface cannot be negative, got {distance} m")
    for frequency in frequencies_hz[:1]:
        _positive("the frequency", frequency)
    ways = [
        math.hypot(*subset) for number in range(1, len(distances_m) + 1) for subset in combinations(distances_m, number)
    ]
    # numpy's sinc is sin(pi x)/(pi x): 2 k r is pi times 4 f r/c.
    found: Array = 1.0 + np.sinc(np.outer(ways, frequencies_hz) * (4.0 / sound_speed_mps)).sum(axis=0)
    return found


def port_gap_needed_m(diameter_m: float) -> float:
    """Least free distance in front of a port's mouth: one diameter. Nearer than that the wall retunes the port.

    Raises Refused unless the diameter is positive. Source: common practice; no standard was found. The physics
    behind it is the end correction of about 0.6 to 0.85 diameter.
    """
    _positive("the diameter of a port", diameter_m)
    return diameter_m


def port_gap_wanted_m(diameter_m: float) -> float:
    """Comfortable free distance in front of a port's mouth: two diameters, and 0.15 m at least.

    Raises Refused unless the diameter is positive. Source: common practice; no standard was found.
    """
    _positive("the diameter of a port", diameter_m)
    return max(2 * diameter_m, PORT_GAP_FLOOR_M)


def plinth_gap_m(diameter_m: float) -> float:
    """Height under a downward port that leaves as much open area round its mouth as the port has, D/4.

    pi D h = pi D^2/4. Raises Refused unless the diameter is positive. Source: equal areas, derived.
    """
    _positive("the diameter of a port", diameter_m)
    return diameter_m / 4
