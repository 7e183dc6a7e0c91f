"""Standing waves of a rectangular room: which there are and where they lie.

All functions take the room's inner size (length x, width y, height z) in metres and the speed of sound in
m/s, and hold for a box with rigid walls: real walls shift a mode by a few percent and damp it. Frequencies in hertz.
"""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise, product

from roomlint.figures.domain import Refused

Size = tuple[float, float, float]
Point = tuple[float, float, float]
Indices = tuple[int, int, int]

KINDS = ("pressure zone", "axial", "tangential", "oblique")
SOUND_SPEEDS_MPS = (300.0, 400.0)  # outside these the unit is wrong, not the weather
MODE_LIMIT_HZ = 2000.0
ROUNDING_M = 1e-9


@dataclass(frozen=True, slots=True)
class Mode:
    """One standing wave: its frequency and its half-wave counts along length, width and height."""

    frequency_hz: float
    indices: Indices

    @property
    def kind(self) -> str:
        """How many pairs of surfaces it works between: axial one, tangential two, oblique three."""
        return KINDS[sum(index > 0 for index in self.indices)]


@dataclass(frozen=True, slots=True)
class Gap:
    """Two neighbours in a list of modes and the frequency step between them."""

    lower: Mode
    upper: Mode
    gap_hz: float


@dataclass(frozen=True, slots=True)
class Proportion:
    """A room's plan dimensions over its height, with the window that the published inequality gives."""

    length_ratio: float
    lower: float
    upper: float


def _checked(size: Size, sound_speed_mps: float) -> None:
    if not all(math.isfinite(side) and side > 0 for side in size):
        raise Refused(f"a room's length, width and height must be positive lengths, got {size}")
    if not SOUND_SPEEDS_MPS[0] < sound_speed_mps < SOUND_SPEEDS_MPS[1]:
        raise Refused(f"the speed of sound in a room lies near 343 m/s, got {sound_speed_mps}")


def mode_frequency_hz(size: Size, indices: Indices, sound_speed_mps: float) -> float:
    """Frequency of one mode, f = (c/2) sqrt((nx/L)^2 + (ny/W)^2 + (nz/H)^2).

    Raises Refused for a size that is not positive. Source: Rayleigh's formula, as in any acoustics handbook.
    """
    _checked(size, sound_speed_mps)
    return sound_speed_mps / 2 * math.hypot(*(n / side for n, side in zip(indices, size, strict=True)))


def modes(size: Size, up_to_hz: float, sound_speed_mps: float) -> tuple[Mode, ...]:
    """List every mode up to and including a frequency, lowest first; the pressure zone (0, 0, 0) is left out.

    The count grows with the cube of the frequency: about 90 for a 73 m3 room to 200 Hz. Raises Refused for
    a size that is not positive or a limit above 2 kHz, where counting single modes has lost its meaning.
    """
    _checked(size, sound_speed_mps)
    if not 0 < up_to_hz <= MODE_LIMIT_HZ:
        raise Refused(f"modes are listed to at most {MODE_LIMIT_HZ:.0f} Hz, got {up_to_hz} Hz")
    return tuple(sorted(_modes(size, up_to_hz, sound_speed_mps), key=lambda mode: (mode.frequency_hz, mode.indices)))


def _modes(size: Size, up_to_hz: float, sound_speed_mps: float) -> Iterator[Mode]:
    steps = [sound_speed_mps / 2 / side for side in size]
    limit = up_to_hz * (1 + 1e-12)  # a mode that lies on the limit belongs to the list
    ranges = [range(int(limit / step) + 1) for step in steps]
    for nx, ny, nz in product(*ranges):
        frequency = math.hypot(nx * steps[0], ny * steps[1], nz * steps[2])
        if 0 < frequency <= limit:
            yield Mode(frequency, (nx, ny, nz))


def axial_modes(size: Size, up_to_hz: float, sound_speed_mps: float) -> tuple[Mode, ...]:
    """List the axial modes up to a frequency, lowest first; those of equal frequency all appear.

    Raises Refused as `modes` does.
    """
    _checked(size, sound_speed_mps)
    found: list[Mode] = []
    for axis, side in enumerate(size):
        step = sound_speed_mps / 2 / side
        for n in range(1, int(up_to_hz * (1 + 1e-12) / step) + 1):
            indices = [0, 0, 0]
            indices[axis] = n
            found.append(Mode(n * step, (indices[0], indices[1], indices[2])))
    return tuple(sorted(found, key=lambda mode: (mode.frequency_hz, mode.indices)))


def gaps(listed: Sequence[Mode]) -> tuple[Gap, ...]:
    """Frequency steps between neighbours of a sorted list of modes; one fewer than there are modes."""
    return tuple(Gap(low, high, high.frequency_hz - low.frequency_hz) for low, high in pairwise(listed))


def proportion(size: Size) -> Proportion:
    """Room ratios and the window 1.1 w/h <= l/h <= 4.5 w/h - 4 (with l and w under 3 h).

    The longer plan side is the length. Raises Refused for a size that is not positive.
    Source: BBC Research Department report 1993/8, EBU Tech 3276 and ITU-R BS.1116; formula from memory.
    """
    _checked(size, 343.0)
    length, width, height = max(size[0], size[1]), min(size[0], size[1]), size[2]
    return Proportion(length / height, 1.1 * width / height, 4.5 * width / height - 4)


def mode_shape(size: Size, indices: Indices, point: Point) -> float:
    """Pressure of a mode at a point, from -1 to 1: cos(nx pi x/L) cos(ny pi y/W) cos(nz pi z/H).

    The point is measured from a corner along the sides. Raises Refused for a point outside the room.
    Source: rigid-wall solution of the wave equation, any acoustics handbook.
    """
    if any(not -ROUNDING_M <= at <= side + ROUNDING_M for at, side in zip(point, size, strict=True)):
        raise Refused(f"the point {point} lies outside the room of size {size}")
    return math.prod(math.cos(n * math.pi * at / side) for n, at, side in zip(indices, point, size, strict=True))
