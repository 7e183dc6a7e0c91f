"""Low-frequency response of a rectangular room as a sum over its modes, for several sources and seats.

Positions in metres from one corner along length, width and height; frequencies in hertz; levels in decibels.
A level of 0 dB is what one source with no offset makes at 1 m in free field. Arrays are numpy, float64.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache

import numpy as np
from numpy.typing import NDArray

from roomlint.figures.domain import Refused
from roomlint.figures.modes import Point, Size

Array = NDArray[np.float64]
ComplexArray = NDArray[np.complex128]

# Modes near the band are summed at every frequency; those far above it hardly change over the band, so that
# their share is summed once. Together they cost less than one list to five times the top, and leave less out.
NEAR_OVER_TOP = 3.0
FAR_OVER_TOP = 10.0
DAMPING_60_DB = 3 * np.log(10)  # a pressure that falls as exp(-d t) is 60 dB down after T = 3 ln(10)/d
INSIDE_M = 1e-6


@dataclass(frozen=True, slots=True)
class BassSource:
    """A subwoofer as a small sealed source: where it is and how it is set."""

    position: Point
    level_db: float = 0.0
    delay_s: float = 0.0
    inverted: bool = False


@dataclass(frozen=True, slots=True)
class Box:
    """A rectangular room: inner size, one decay time for all modes, speed of sound."""

    size: Size
    decay_s: float
    sound_speed_mps: float


@dataclass(frozen=True, slots=True)
class SeatSpread:
    """How much the level differs from seat to seat, averaged over frequency, and where the worst dip is."""

    mean_range_db: float
    mean_variance_db2: float
    mean_deviation_db: float
    mean_excess_db: float
    range_db: tuple[float, ...]
    deepest_dip_db: tuple[float, ...]
    dip_hz: tuple[float, ...]


@dataclass(frozen=True, slots=True, eq=False)
class _Modes:
    indices: NDArray[np.int64]  # (3, modes)
    angular: Array  # (modes,) rad/s
    weight: Array  # (modes,) 1 for a zero index, 2 for another, multiplied over the three
    near: int  # so many of them, the lowest, are near the band


@lru_cache(maxsize=64)
def _modes(size: Size, top_hz: float, sound_speed_mps: float) -> _Modes:
    steps = np.array([sound_speed_mps / 2 / side for side in size])
    axes = [np.arange(int(FAR_OVER_TOP * top_hz / step) + 1) for step in steps]
    indices = np.stack([axis.ravel() for axis in np.meshgrid(*axes, indexing="ij")])
    frequency = np.sqrt(((indices.T * steps) ** 2).sum(axis=1))
    order = np.argsort(frequency, kind="stable")
    order = order[: np.searchsorted(frequency[order], FAR_OVER_TOP * top_hz, side="right")]
    indices, frequency = indices[:, order], frequency[order]
    near = int(np.searchsorted(frequency, NEAR_OVER_TOP * top_hz, side="right"))
    return _Modes(indices, 2 * np.pi * frequency, np.where(indices > 0, 2.0, 1.0).prod(axis=0), near)


def _shapes(size: Size, indices: NDArray[np.int64], points: Sequence[Point]) -> Array:
    """Mode shapes at points, (points, modes): a cosine along each side, looked up rather than computed anew."""
    at = np.asarray(points, dtype=np.float64).reshape(-1, 3)
    if not np.all((at >= -INSIDE_M) & (at <= np.asarray(size) + INSIDE_M)):
        raise Refused(f"a source or receiver lies outside the room of size {size}")
    shapes = np.ones((len(at), indices.shape[1]))
    for axis, side in enumerate(size):
        counts = np.arange(indices[axis].max() + 1)
        shapes *= np.cos(np.pi * np.outer(at[:, axis] / side, counts))[:, indices[axis]]
    return shapes


def resonance_sum(
    shape_products: Array, angular: Array, frequencies_hz: Array, decay_s: float, scale: float
) -> ComplexArray:
    """Sum over modes of product/(w_n^2 - w^2 + 2 j d w), times `scale`; d = 3 ln(10)/T.

    `shape_products` (pairs, modes), `angular` (modes,) in rad/s; returns (pairs, frequencies).
    """
    if not decay_s > 0:
        raise Refused(f"a decay time must be positive, got {decay_s} s")
    driven = 2 * np.pi * frequencies_hz[None, :]
    reactance = angular[:, None] ** 2 - driven**2
    loss = (2 * DAMPING_60_DB / decay_s) * driven
    power = reactance**2 + loss**2
    # two real products cost half of one complex product
    terms = np.concatenate([reactance / power, -loss / power], axis=1)
    real, imaginary = np.split(scale * (shape_products @ terms), 2, axis=1)
    return real + 1j * imaginary


def transfer(
    room: Box, sources: Sequence[Point], receivers: Sequence[Point], frequencies_hz: Sequence[float]
) -> ComplexArray:
    """Pressure at each receiver for each source alone, (receivers, sources, frequencies), re 1 m in free field.

    4 pi G with G = (c^2/V) sum e_n psi_n(r) psi_n(rs)/(w_n^2 - w^2 + 2 j d w), the pressure zone included, modes to
    ten times the top frequency, one decay time for all. Holds below about the Schroeder frequency in a rectangular
    closed room with small, even absorption; real rooms differ by 3 to 6 dB, so compare layouts rather than promise
    levels. Raises ValueError for points outside the room or a decay time that is not positive.
    Source: rigid-wall expansion of the Green's function, textbook; checked against an image-source program.
    """
    frequencies = np.asarray(frequencies_hz, dtype=np.float64)
    if frequencies.size == 0 or not np.all(frequencies > 0):
        raise Refused("the frequencies must be positive and at least one")
    top = float(frequencies.max())
    known = _modes(room.size, top, room.sound_speed_mps)
    there = _shapes(room.size, known.indices, receivers)
    here = _shapes(room.size, known.indices, sources) * known.weight
    length, width, height = room.size
    scale = 4 * np.pi * room.sound_speed_mps**2 / (length * width * height)
    near = known.near
    pairs = (there[:, None, :near] * here[None, :, :near]).reshape(-1, near)
    summed = resonance_sum(pairs, known.angular[:near], frequencies, room.decay_s, scale)
    # mean of the squared frequency over a band that reaches down to zero
    far = (there[:, near:] / (known.angular[near:] ** 2 - (2 * np.pi * top) ** 2 / 3)) @ here[:, near:].T
    return summed.reshape(len(there), len(here), frequencies.size) + scale * far[:, :, None]


def combined_db(
    parts: ComplexArray, sources: Sequence[BassSource], frequencies_hz: Sequence[float], floor_db: float = -80.0
) -> Array:
    """Level of all sources together, (receivers, frequencies), from `transfer` and each source's setting.

    A delay turns a source's phase by -2 pi f t. Levels below `floor_db` are lifted to it, so that a perfect null
    stays a number.
    """
    frequencies = np.asarray(frequencies_hz, dtype=np.float64)
    delays = np.array([source.delay_s for source in sources])
    gains = np.array([10 ** (source.level_db / 20) * (-1.0 if source.inverted else 1.0) for source in sources])
    drive = gains[:, None] * np.exp(-2j * np.pi * np.outer(delays, frequencies))
    pressure = np.abs((parts * drive[None, :, :]).sum(axis=1))
    lowest = 10 ** (floor_db / 20)
    level: Array = 20 * np.log10(np.maximum(pressure, lowest))
    return level


def response_db(
    room: Box, sources: Sequence[BassSource], receivers: Sequence[Point], frequencies_hz: Sequence[float]
) -> Array:
    """Level at each receiver with all sources playing, (receivers, frequencies), in dB re one source at 1 m.

    Formula, range, errors and source as for `transfer`; settings as for `combined_db`.
    """
    if not sources:
        raise Refused("at least one source is needed for a response")
    parts = transfer(room, [source.position for source in sources], receivers, frequencies_hz)
    return combined_db(parts, sources, frequencies_hz)


def smoothed_db(levels_db: Array, frequencies_hz: Sequence[float], parts_of_octave: float) -> Array:
    """Power average over a window of 1/n octave round each frequency; the window is cut at the ends of the band.

    `levels_db` (..., frequencies). Each frequency weighs by its share of the logarithmic axis. Raises ValueError unless
    `parts_of_octave` is positive. Source: usual fractional-octave smoothing.
    """
    if not parts_of_octave > 0:
        raise Refused(f"smoothing is over a positive fraction of an octave, got 1/{parts_of_octave}")
    octaves = np.log2(np.asarray(frequencies_hz, dtype=np.float64))
    share = np.gradient(octaves) if octaves.size > 1 else np.ones(1)
    near = np.abs(octaves[:, None] - octaves[None, :]) <= 0.5 / parts_of_octave + 1e-12
    weights = near * share[None, :]
    weights = weights / weights.sum(axis=1, keepdims=True)
    smoothed: Array = 10 * np.log10(10 ** (levels_db / 10) @ weights.T)
    return smoothed


def seat_spread(levels_db: Array, frequencies_hz: Sequence[float]) -> SeatSpread:
    """Seat-to-seat differences of a (seats, frequencies) array of levels.

    At each frequency: range = max - min over seats; variance and standard deviation over seats (of the whole set,
    not a sample); excess = max - mean. Each is then averaged over the frequencies. A seat's dip is its lowest level
    relative to the mean in dB of all seats at that frequency, negative. One seat gives zeros. Raises ValueError
    without seats.
    Source: the metrics named in the published work on several subwoofers (2002); definitions from memory.
    """
    if levels_db.ndim != 2 or levels_db.shape[0] == 0:  # noqa: PLR2004 - seats by frequencies
        raise Refused("levels must come as seats by frequencies, with at least one seat")
    mean = levels_db.mean(axis=0)
    spread = np.ptp(levels_db, axis=0)
    below = levels_db - mean
    lowest = below.argmin(axis=1)
    return SeatSpread(
        mean_range_db=float(spread.mean()),
        mean_variance_db2=float(levels_db.var(axis=0).mean()),
        mean_deviation_db=float(levels_db.std(axis=0).mean()),
        mean_excess_db=float((levels_db.max(axis=0) - mean).mean()),
        range_db=tuple(spread.tolist()),
        deepest_dip_db=tuple(below.min(axis=1).tolist()),
        dip_hz=tuple(float(frequencies_hz[at]) for at in lowest),
    )


def band_level_db(levels_db: Array, frequencies_hz: Sequence[float], low_hz: float, high_hz: float) -> Array:
    """Power mean of each seat's level over a band, (seats,). Raises ValueError when no frequency lies in the band."""
    frequencies = np.asarray(frequencies_hz, dtype=np.float64)
    inside = (frequencies >= low_hz) & (frequencies <= high_hz)
    if not inside.any():
        raise Refused(f"no frequency was computed between {low_hz} and {high_hz} Hz")
    level: Array = 10 * np.log10((10 ** (levels_db[:, inside] / 10)).mean(axis=1))
    return level
