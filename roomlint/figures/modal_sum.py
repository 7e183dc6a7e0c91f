"""Green's function of a closed room as a short sum over modes and a short sum over diffusion times.

With one decay time for all modes the pressure of a point source is G(k^2) = sum psi_n(r) psi_n(s)/(k_n^2 - k^2) with a
complex k^2 that is the same for every mode. Split in time (Ewald's way), with E an area:

    G = sum psi psi exp(-(k_n^2 - k^2) E)/(k_n^2 - k^2)  +  integral from 0 to E of exp(k^2 t) theta(t) dt

where theta is the kernel of heat conduction in the room. The first sum fades beyond the modes near the band, the second
part needs the images near the source only; together they leave nothing out that could be seen in a level. Where no heat
kernel is known (elements), the modes above the band enter by powers of k^2 about a shift instead.

Lengths in metres, k in 1/m, frequencies in hertz. Arrays are numpy, float64.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from functools import lru_cache
from typing import TYPE_CHECKING, Protocol, TypeAlias

import numpy as np
from numpy.typing import NDArray

from roomlint.figures.domain import Refused

if TYPE_CHECKING:
    from collections.abc import Sequence

Array: TypeAlias = NDArray[np.float64]
ComplexArray: TypeAlias = NDArray[np.complex128]
Point: TypeAlias = tuple[float, float, float]
Points: TypeAlias = "Sequence[Point] | Array"

DAMPING_60_DB = 3 * np.log(10)  # a pressure that falls as exp(-d t) is 60 dB down after T = 3 ln(10)/d
LEFT_OUT = 1e-5  # what the split neglects, as a share of the pressure
LEAST_DISTANCE_M = 0.1  # nearer than this a loudspeaker is no point
SPLIT_OVER_AREA = 0.06  # E over volume^(2/3): modes and images then cost about alike
TIMES = 20


class Modes(Protocol):
    """What a solver hands over: modes near the band and what is needed for the rest, at any points of the room."""

    @property
    def wavenumbers_squared(self) -> Array:
        """k_n^2 of the modes near the band, lowest first, the pressure zone's 0 included, 1/m2."""

    def shapes(self, points: Array) -> Array:
        """Return the modes' shapes at points, (points, modes), of mean square 1/volume."""

    def pairs(self, sources: Array, ears: Array) -> tuple[Array, Array]:
        """Return the products of shapes (ears, sources, modes) and what stands for the rest (ears, sources, terms)."""

    def weights(self, k_squared: ComplexArray) -> tuple[ComplexArray, ComplexArray]:
        """Return the weights of modes (modes, frequencies) and of the rest (terms, frequencies)."""


def k_squared(frequencies_hz: Sequence[float] | Array, decay_s: float, sound_speed_mps: float) -> ComplexArray:
    """Return (w^2 - 2 j d w)/c^2 with d = 3 ln(10)/T, 1/m2, for a time factor exp(+j w t).

    Raises Refused for a frequency or a decay time that is not positive. Source: one exponential decay for all modes.
    """
    frequencies = np.asarray(frequencies_hz, dtype=np.float64)
    if frequencies.size == 0 or not np.all(frequencies > 0):
        raise Refused("the frequencies must be positive and at least one")
    if not (math.isfinite(decay_s) and decay_s > 0):
        raise Refused(f"a decay time must be positive, got {decay_s} s")
    angular = 2 * np.pi * frequencies
    found: ComplexArray = (angular**2 - 2j * (DAMPING_60_DB / decay_s) * angular) / sound_speed_mps**2
    return found


@dataclass(frozen=True, slots=True, eq=False)
class HeatSplit:
    """Where the sum is split (`area_m2` is E), up to which k modes matter, and how the integral over t is taken."""

    area_m2: float
    reach: float
    times: Array  # (terms,) m2
    shares: Array  # (terms,) m2

    def weights(self, wavenumbers_squared: Array, k2: ComplexArray) -> tuple[ComplexArray, ComplexArray]:
        """Return the weights of modes and of times at complex k^2."""
        above = wavenumbers_squared[:, None] - k2
        return np.exp(-self.area_m2 * above) / above, self.shares[:, None] * np.exp(np.outer(self.times, k2))

    def along(self, ears: Array, sources: Array, length: float) -> Array:
        """Return the heat kernel between rigid ends of one axis, (ears, sources, terms), by images.

        Each image's share is exp(-distance^2/4t)/sqrt(4 pi t). Source: textbook.
        """
        away = math.sqrt(-4 * self.area_m2 * math.log(LEFT_OUT))
        count = math.ceil(away / 2 / length)
        turns = 2 * length * np.arange(-count, count + 1)
        apart, both = ears[:, None, None] - sources[:, None], ears[:, None, None] + sources[:, None]
        squares = np.concatenate([apart + turns, both + turns], axis=2) ** 2
        # An image farther than that adds nothing at any time up to E.
        squares = np.sort(squares, axis=2)[:, :, : _worth(squares, away**2)]
        kernel: Array = np.exp(squares[:, :, None, :] * (-1 / (4 * self.times))[:, None]).sum(axis=3)
        return kernel / np.sqrt(4 * np.pi * self.times)


def _worth(squares: Array, limit: float) -> int:
    return max(1, int((squares <= limit).sum(axis=2).max(initial=1)))


@lru_cache(maxsize=8)
def _log_rule() -> tuple[Array, Array]:
    at, share = np.polynomial.legendre.leggauss(TIMES)
    return (at + 1) / 2, share / 2


def heat_split(volume_m3: float, top_hz: float, sound_speed_mps: float, wider: float = 1.0) -> HeatSplit:
    """Return the split for a room and a band; `wider` moves it, and a right answer does not move with it."""
    area = wider * SPLIT_OVER_AREA * volume_m3 ** (2 / 3)
    reach = math.sqrt((2 * math.pi * top_hz / sound_speed_mps) ** 2 - math.log(LEFT_OUT) / area)
    # In u = t^(-1/2) the integrand is a Gaussian exp(-r^2 u^2/4): from E down to where the nearest pair has none left.
    low, high = -0.5 * math.log(area), math.log(7.0 / LEAST_DISTANCE_M)
    at, share = _log_rule()
    times = np.exp(-2 * (low + (high - low) * at))
    return HeatSplit(area, reach, times, share * (high - low) * 2 * times)


def too_near(sources: Array, ears: Array) -> bool:
    """Tell whether a source lies so near to an ear that a point's pressure would say nothing."""
    apart = np.linalg.norm(ears[:, None, :] - sources[None, :, :], axis=2)
    return bool(apart.min(initial=math.inf) < LEAST_DISTANCE_M)
