"""Decay of sound in a room by statistics: what absorbs, how long it rings, and from where on that holds."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING, Final, NamedTuple

from roomlint.figures.absorption import MOST
from roomlint.figures.domain import Refused, between, positive

if TYPE_CHECKING:
    from collections.abc import Sequence

    from roomlint.figures.direction import Vector3

DECAY_FACTOR: Final = 24.0 * math.log(10.0)
"""A level falls by 60 dB when energy falls by a million."""
SCHROEDER: Final = 2000.0
NOMINAL_S: Final = 0.25
NOMINAL_M3: Final = 100.0
NOMINAL_LIMITS_S: Final = (0.2, 0.4)
OCTAVE_EDGE: Final = math.sqrt(2.0)
_SQUARE: Final = math.cos(math.radians(1.0))
"""A surface that is this near to an axis is square to it: no builder works finer."""
_PRESSURE_KPA: Final = 101.325


class Side(NamedTuple):
    """All surfaces of a room that face along one direction: their area, and their equivalent absorption area."""

    area_m2: float
    absorption_m2: float


def directions(normals: Sequence[Vector3]) -> tuple[int, ...]:
    """Return along which of a room's three directions each surface faces: 0 and 1 for walls, 2 for floor and ceiling.

    The first wall's normal is direction 0. Raises Refused for a surface that is not square to the others to a degree.
    """
    first = next((normal for normal in normals if abs(normal[2]) < 1.0 - _SQUARE), (1.0, 0.0, 0.0))
    axes = (first, (-first[1], first[0], 0.0), (0.0, 0.0, 1.0))
    found = []
    for normal in normals:
        along = [abs(sum(a * n for a, n in zip(axis, normal, strict=True))) for axis in axes]
        if max(along) < _SQUARE:
            raise Refused("the formula is for surfaces square to each other; a slope or a slanting wall is not")
        found.append(along.index(max(along)))
    return tuple(found)


def sabine_s(volume_m3: float, absorption_m2: float, air_per_m: float, speed_m_s: float) -> float:
    """Return Sabine's decay time over 60 dB, s: T = 24 ln10 / c V / (A + 4 m V).

    Volume and absorption area above 0, else Refused. Over-predicts where more than about 0.2 to 0.3 is absorbed on
    average. Source: Master Handbook of Acoustics, 6th edition, p. 236 (with 0.049 in feet and sabins).
    """
    positive("volume", volume_m3, "m3")
    whole = absorption_m2 + 4.0 * air_per_m * volume_m3
    return DECAY_FACTOR / positive("speed of sound", speed_m_s, "m/s") * volume_m3 / positive("absorption", whole, "m2")


def modal_decays_s(volume_m3: float, least_m2: float, most_m2: float, speed_m_s: float) -> tuple[float, float]:
    """Return the shortest and the longest decay over 60 dB of single modes, s, for absorption from least to most.

    To first order a mode is damped by d = c/2 (integral of b p^2 over the walls)/(integral of p^2 over the room), with
    the walls' conductance b = a/8 of hard surfaces. That is Sabine's formula for modes with waves along all three axes;
    a wall that a mode grazes has half of its say, so that no mode rings longer than twice as long. Unlike statistics
    this holds below the Schroeder frequency too, as long as little is absorbed. Volume, absorption and speed above 0,
    the least at most the most, else Refused. Source: perturbation of the rigid room as textbooks of room acoustics
    give it (Kuttruff, Room Acoustics, 5th edition, 3.3; Morse and Ingard, Theoretical Acoustics, 9.4), from memory.
    """
    if least_m2 > most_m2:
        raise Refused(f"the least absorption is at most the most, got {least_m2:.3g} and {most_m2:.3g} m2")
    return sabine_s(volume_m3, most_m2, 0.0, speed_m_s), 2.0 * sabine_s(volume_m3, least_m2, 0.0, speed_m_s)


def eyring_s(volume_m3: float, surface_m2: float, absorption_m2: float, air_per_m: float, speed_m_s: float) -> float:
    """Return Eyring's decay time over 60 dB, s: Sabine's with -S ln(1 - A/S) for A.

    Absorption even over all surfaces; a mean coefficient of 0.99 and more is Refused. Source: C. F. Eyring's formula as
    lecture notes print it, 55.3 V / (-c S ln(1 - a)).
    """
    mean = absorption_m2 / positive("surface", surface_m2, "m2")
    if mean > MOST:
        raise Refused(f"a room that absorbs {100.0 * mean:.0f} % of what meets its surfaces has no decay to speak of")
    return sabine_s(volume_m3, -surface_m2 * math.log1p(-mean), air_per_m, speed_m_s)


def arau_s(volume_m3: float, sides: Sequence[Side], air_per_m: float, speed_m_s: float) -> float:
    """Return Arau-Puchades's decay time over 60 dB, s.

    Sabine's with S times the product over the three directions of (-ln(1 - a_i))^(S_i / S) for A: absorption that lies
    unevenly between floor and ceiling and the pairs of walls. For the three sides of a room whose surfaces are square
    to each other (`directions`): a box, and every plan of right angles under a level ceiling. Each has an area, and a
    mean coefficient above 0 that counts up to 0.99, else Refused. Source: as code in acoustic-toolbox 0.2.2.
    """
    whole, product = sum(side.area_m2 for side in sides), 1.0
    for side in sides:
        mean = min(side.absorption_m2 / positive("area", side.area_m2, "m2"), MOST)
        strength = -math.log1p(-positive("absorption of a side", mean, ""))
        product *= math.pow(strength, side.area_m2 / whole)
    return sabine_s(volume_m3, whole * product, air_per_m, speed_m_s)


def air_absorption_per_m(frequency_hz: float, temperature_degc: float, humidity_percent: float) -> float:
    """Return how fast air takes energy from sound, 1/m, at sea level's pressure.

    ISO 9613-1:1993: relaxation of oxygen and nitrogen, attenuation in dB/m over 10 log10(e). From 50 Hz to 10 kHz, -20
    to +50 degC and 10 to 100 % relative humidity, else Refused. Source: a published page of the formula, read, and two
    programs that agree with it.
    """
    between("frequency", frequency_hz, (50.0, 10_000.0), "Hz")
    between("temperature", temperature_degc, (-20.0, 50.0), "degC")
    between("humidity", humidity_percent, (10.0, 100.0), "%")
    kelvin = temperature_degc + 273.15
    ratio = kelvin / 293.15
    vapour_kpa: float = _PRESSURE_KPA * 10.0 ** (-6.8346 * (273.16 / kelvin) ** 1.261 + 4.6151)
    molar = humidity_percent * vapour_kpa / _PRESSURE_KPA
    oxygen: float = 24.0 + 4.04e4 * molar * (0.02 + molar) / (0.391 + molar)
    nitrogen: float = ratio**-0.5 * (9.0 + 280.0 * molar * math.exp(-4.170 * (ratio ** (-1.0 / 3.0) - 1.0)))
    square = frequency_hz**2
    relaxing = 0.01275 * math.exp(-2239.1 / kelvin) / (oxygen + square / oxygen)
    relaxing += 0.1068 * math.exp(-3352.0 / kelvin) / (nitrogen + square / nitrogen)
    db_per_m: float = 8.686 * square * (1.84e-11 * ratio**0.5 + ratio**-2.5 * relaxing)
    return db_per_m / (10.0 * math.log10(math.e))


def schroeder_hz(decay_s: float, volume_m3: float) -> float:
    """Return the frequency above which modes overlap enough for statistics, Hz: 2000 sqrt(T / V).

    Decay and volume above 0, else Refused. Source: akutek.info, which also gives 800 / sqrt(A).
    """
    return SCHROEDER * math.sqrt(positive("decay", decay_s, "s") / positive("volume", volume_m3, "m3"))


def nominal_decay_s(volume_m3: float) -> float:
    """Return the decay time that a room for critical listening is meant to have, s.

    0.25 (V / 100 m3)^(1/3), kept within 0.2 and 0.4 s. Source: EBU Tech 3276 2.3 and ITU-R BS.1116, second-hand.
    """
    nominal: float = NOMINAL_S * (positive("volume", volume_m3, "m3") / NOMINAL_M3) ** (1.0 / 3.0)
    return min(max(nominal, NOMINAL_LIMITS_S[0]), NOMINAL_LIMITS_S[1])


def directivity_factor(horizontal_deg: float, vertical_deg: float) -> float:
    """Return how many times stronger a source is ahead than one that radiates alike to all sides, no unit.

    180 / asin(sin(h/2) sin(v/2)) of the nominal coverage angles. From 1 to 180 deg each, else Refused. Source: the
    formula for rectangular coverage, from memory.
    """
    between("horizontal coverage", horizontal_deg, (1.0, 180.0), "deg")
    between("vertical coverage", vertical_deg, (1.0, 180.0), "deg")
    half = math.sin(math.radians(horizontal_deg / 2.0)) * math.sin(math.radians(vertical_deg / 2.0))
    return 180.0 / math.degrees(math.asin(half))


def critical_distance_m(directivity: float, volume_m3: float, decay_s: float) -> float:
    """Return the distance at which the room's sound is as strong as the direct sound, m: 0.057 sqrt(Q V / T).

    All above 0, else Refused. Indicative in a room that absorbs more than a fifth: its field is not diffuse. Source:
    a published calculation page, and Handbook for Sound Engineers, 4th edition, p. 1658, as 0.141 sqrt(Q R).
    """
    energy = positive("directivity", directivity, "") * positive("volume", volume_m3, "m3")
    return 0.057 * math.sqrt(energy / positive("decay", decay_s, "s"))
