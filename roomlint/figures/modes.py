"""Standing waves of a rectangular room: which there are, where they lie, how they crowd.

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
BAND_HALF_WIDTH = 10 ** (1 / 20)  # one-third octave in base ten: from the band's centre to its edge


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
class BandCount:
    """How many modes fall in a one-third-octave band, and which of them share a frequency."""

    centre_hz: float
    count: int
    coincidences: tuple[Gap, ...]


@dataclass(frozen=True, slots=True)
class Proportion:
    """A room's plan dimensions over its height, with the window that the published inequality gives."""

    length_ratio: float
    width_ratio: float
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


def coincidences(listed: Sequence[Mode], within_hz: float) -> tuple[Gap, ...]:
    """Neighbours of a sorted list that lie no further apart than `within_hz`."""
    return tuple(gap for gap in gaps(listed) if gap.gap_hz <= within_hz)


def mode_count(size: Size, up_to_hz: float, sound_speed_mps: float) -> float:
    """Smooth estimate of the number of modes below a frequency.

    N = (4 pi/3) V (f/c)^3 + (pi/4) S (f/c)^2 + (P/8) (f/c), with volume V, surface S and edges P = 4(L+W+H).
    Within about one mode of a direct count up to 100 Hz in a domestic room. Raises Refused for a bad size.
    Source: handbook formula; coefficients from memory and checked against direct counts.
    """
    _checked(size, sound_speed_mps)
    length, width, height = size
    waves_per_m = up_to_hz / sound_speed_mps
    volume = length * width * height
    surface = 2 * (length * width + width * height + length * height)
    edges = 4 * (length + width + height)
    return 4 * math.pi / 3 * volume * waves_per_m**3 + math.pi / 4 * surface * waves_per_m**2 + edges / 8 * waves_per_m


def third_octave_counts(
    size: Size, sound_speed_mps: float, low_hz: float = 20.0, high_hz: float = 200.0, coincident_hz: float = 0.1
) -> tuple[BandCount, ...]:
    """Modes in each one-third-octave band from `low_hz` to `high_hz`, with the coincident ones named.

    Band centres are 10^(n/10) Hz, edges a factor 10^(1/20) to each side (IEC 61260 base ten). Modes no further
    apart than `coincident_hz` count as coincident. Raises Refused for a bad size.
    Source of the counting: J. Audio Eng. Soc. 29 (1981); seen second-hand in a handbook.
    """
    first, last = round(10 * math.log10(low_hz)), round(10 * math.log10(high_hz))
    listed = modes(size, 10 ** (last / 10) * BAND_HALF_WIDTH, sound_speed_mps)
    bands = []
    for number in range(first, last + 1):
        centre = 10 ** (number / 10)
        low, high = centre / BAND_HALF_WIDTH, centre * BAND_HALF_WIDTH
        inside = [mode for mode in listed if low <= mode.frequency_hz < high]
        bands.append(BandCount(centre, len(inside), coincidences(inside, coincident_hz)))
    return tuple(bands)


def falling_bands(bands: Sequence[BandCount]) -> tuple[BandCount, ...]:
    """Bands that hold fewer modes than the band below them: the first part of the criterion of 1981."""
    return tuple(upper for lower, upper in pairwise(bands) if upper.count < lower.count)


def crowded_bands(bands: Sequence[BandCount], enough: int = 5) -> tuple[BandCount, ...]:
    """Bands with coincident modes and fewer than `enough` modes: the second part of that criterion.

    The number five is from memory.
    """
    return tuple(band for band in bands if band.coincidences and band.count < enough)


def proportion(size: Size) -> Proportion:
    """Room ratios and the window 1.1 w/h <= l/h <= 4.5 w/h - 4 (with l and w under 3 h).

    The longer plan side is the length. Raises Refused for a size that is not positive.
    Source: BBC Research Department report 1993/8, EBU Tech 3276 and ITU-R BS.1116; formula from memory.
    """
    _checked(size, 343.0)
    length, width, height = max(size[0], size[1]), min(size[0], size[1]), size[2]
    return Proportion(length / height, width / height, 1.1 * width / height, 4.5 * width / height - 4)


def nearest_multiples(size: Size) -> tuple[tuple[str, float, int, float], ...]:
    """Each pair of sides as (names, ratio, nearest whole number, relative deviation from it), larger over smaller.

    Sides in a whole-number ratio share axial modes. Deviation is |ratio/n - 1|.
    Raises Refused for a size that is not positive.
    """
    _checked(size, 343.0)
    length, width, height = size
    pairs = (("length/height", length, height), ("width/height", width, height), ("length/width", length, width))
    found = []
    for names, first, second in pairs:
        ratio = max(first, second) / min(first, second)
        whole = max(1, round(ratio))
        found.append((names, ratio, whole, abs(ratio / whole - 1)))
    return tuple(found)


def schroeder_frequency_hz(volume_m3: float, decay_s: float) -> float:
    """Frequency above which modes overlap enough for statistics to hold, fs = 2000 sqrt(T/V).

    Volume in m3, reverberation time in s. Raises Refused unless both are positive.
    Source: the classic formula as printed in room-acoustics teaching pages.
    """
    if volume_m3 <= 0 or decay_s <= 0:
        raise Refused(f"volume and decay time must be positive, got {volume_m3} m3 and {decay_s} s")
    return 2000 * math.sqrt(decay_s / volume_m3)


def modal_bandwidth_hz(decay_s: float) -> float:
    """Half-power width of a mode that decays by 60 dB in `decay_s`, B = 3 ln 10/(pi T) = 2.2/T.

    Raises Refused unless the decay time is positive. Source: exact for an exponential decay.
    """
    if decay_s <= 0:
        raise Refused(f"a decay time must be positive, got {decay_s} s")
    return 3 * math.log(10) / (math.pi * decay_s)


def mode_shape(size: Size, indices: Indices, point: Point) -> float:
    """Pressure of a mode at a point, from -1 to 1: cos(nx pi x/L) cos(ny pi y/W) cos(nz pi z/H).

    The point is measured from a corner along the sides. Raises Refused for a point outside the room.
    Source: rigid-wall solution of the wave equation, any acoustics handbook.
    """
    if any(not -ROUNDING_M <= at <= side + ROUNDING_M for at, side in zip(point, size, strict=True)):
        raise Refused(f"the point {point} lies outside the room of size {size}")
    return math.prod(math.cos(n * math.pi * at / side) for n, at, side in zip(indices, point, size, strict=True))


def drive_factor(size: Size, indices: Indices, points: Sequence[Point]) -> float:
    """How strongly equal sources in phase excite a mode together, from -1 to 1: the mean of its shape over them.

    0 means that the arrangement cancels the mode. Raises Refused without sources or for one outside the room.
    """
    if not points:
        raise Refused("at least one source is needed to excite a mode")
    return math.fsum(mode_shape(size, indices, point) for point in points) / len(points)
