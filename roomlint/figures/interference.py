"""A direct sound and its reflections together: the level over frequency and the band in which a dip is heard.

Lengths in m, frequencies in Hz, levels in dB re the direct sound alone, speed of sound in m/s. The source radiates
alike to all sides unless a path's factor says otherwise.
"""

from __future__ import annotations

import cmath
import math
from typing import TYPE_CHECKING, NamedTuple

from roomlint.figures.domain import Refused, between, positive

if TYPE_CHECKING:
    from collections.abc import Iterable

# Where reflections cancel the direct sound altogether there is no level in dB; this is told instead.
FLOOR_DB = -60.0


class Path(NamedTuple):
    """A reflected path: its whole length, and the pressure it returns of what falls on the surface, -1 to 1."""

    length_m: float
    factor: float


def pressure_factor(absorption: float) -> float:
    """Return the pressure reflection factor of a surface from its absorption coefficient, sqrt(1 - a).

    The phase is taken as none, as for a heavy surface; an absorption coefficient is from 0 to 1, else `Refused`.
    Source: energy is pressure squared (ISO 354 states energies).
    """
    return math.sqrt(1.0 - between("an absorption coefficient", absorption, (0.0, 1.0), ""))


def relative_pressure(direct_m: float, path: Path) -> float:
    """Return the pressure of a reflection against the direct sound, g = R direct/reflected, with the sign of R.

    Raises `Refused` unless 0 < direct < reflected and R is from -1 to 1. Source: spherical spreading from the image.
    """
    positive("the direct path", direct_m, "m")
    if not path.length_m > direct_m:
        raise Refused(f"a reflected path is longer than the direct one, got {path.length_m:g} m and {direct_m:g} m")
    return between("a pressure reflection factor", path.factor, (-1.0, 1.0), "") * direct_m / path.length_m


def level_db(direct_m: float, paths: Iterable[Path], frequency_hz: float, sound_speed_m_s: float) -> float:
    """Return the level of direct sound and reflections together at one frequency.

    20 log10 |1 + sum of g exp(-j 2 pi f (reflected - direct)/c)|, not below -60 dB. Errors as for `relative_pressure`.
    Source: coherent sum of image sources.
    """
    wavenumber = math.tau * frequency_hz / positive("the speed of sound", sound_speed_m_s, "m/s")
    total = sum(
        (
            relative_pressure(direct_m, path) * cmath.exp(-1j * wavenumber * (path.length_m - direct_m))
            for path in paths
        ),
        complex(1.0),
    )
    return max(FLOOR_DB, 20.0 * math.log10(max(abs(total), 1e-9)))


def dip_hz(direct_m: float, path: Path, level_under_db: float, sound_speed_m_s: float) -> tuple[float, float] | None:
    """Return the band about the lowest cancellation of one reflection in which the level is under a limit.

    |1 + g exp(-j phi)|^2 = 1 + g^2 + 2 g cos(phi) solved for phi = 2 pi f dL/c. None when the dip does not reach the
    limit, which is below 0 dB and told relative to the direct sound alone, else `Refused`. Errors as for
    `relative_pressure`. Source: derived, two coherent paths.
    """
    if level_under_db >= 0.0:
        raise Refused(f"a dip lies under 0 dB re the direct sound, not {level_under_db:g} dB")
    share = relative_pressure(direct_m, path)
    g = abs(share)
    if g == 0.0 or 20.0 * math.log10(max(1.0 - g, 1e-9)) >= level_under_db:
        return None
    cosine = (math.pow(10.0, level_under_db / 10.0) - 1.0 - g * g) / (2.0 * g)
    # Either side of the middle of the dip, where the reflection arrives half a turn late.
    half = math.pi - math.acos(min(1.0, max(-1.0, cosine)))
    middle = math.pi if share > 0.0 else math.tau
    turn_hz = sound_speed_m_s / (math.tau * (path.length_m - direct_m))
    return (middle - half) * turn_hz, (middle + half) * turn_hz
