"""Low-frequency levels of several subwoofers at several seats.

Positions in metres; frequencies in hertz; levels in decibels. A level of 0 dB is what one source with no offset makes
at 1 m in free field. Arrays are numpy, float64. What a room does on the way comes from `room_response`.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache
from typing import Literal

import numpy as np

from roomlint.figures.domain import Refused
from roomlint.figures.modal_sum import Array, Point
from roomlint.figures.modal_sum import ComplexArray as ComplexArray  # noqa: PLC0414 - named by those who ask
from roomlint.figures.modes import Indices, Size, mode_frequency_hz, mode_shape
from roomlint.figures.room_response import solve
from roomlint.roof import flat

MOST_TOGETHER_DB = 20.0
FilterShape = Literal["butterworth", "linkwitz-riley"]


@dataclass(frozen=True, slots=True)
class LowPass:
    """A low-pass as entered: its corner, class and order; where a file has the corner only, the rest is assumed."""

    corner_hz: float
    shape: FilterShape = "linkwitz-riley"
    order: int = 4


@dataclass(frozen=True, slots=True)
class BassSource:
    """A subwoofer as a small sealed source: where it is and how it is set."""

    position: Point
    level_db: float = 0.0
    delay_s: float = 0.0
    inverted: bool = False
    low_pass: LowPass | None = None


@dataclass(frozen=True, slots=True)
class Box:
    """A rectangular room: inner size, one decay time for all modes, speed of sound."""

    size: Size
    decay_s: float
    sound_speed_mps: float


def transfer(
    room: Box, sources: Sequence[Point], receivers: Sequence[Point], frequencies_hz: Sequence[float]
) -> ComplexArray:
    """Pressure at each receiver for each source alone, (receivers, sources, frequencies), re 1 m in free field.

    `room_response.RoomResponse.transfer` for a box with its corner in the origin, with its range, errors and source.
    """
    length, width, height = room.size
    outline = ((0.0, 0.0), (length, 0.0), (length, width), (0.0, width))
    top_hz = max(frequencies_hz, default=0.0)
    solved = solve(outline, flat(outline, height), top_hz, room.sound_speed_mps)
    return solved.transfer(sources, receivers, frequencies_hz, room.decay_s)


def low_pass(filtering: LowPass, frequencies_hz: Sequence[float] | Array) -> ComplexArray:
    """Complex gain of a low-pass, (frequencies,), for a time factor exp(+j w t).

    Butterworth of order n: product over poles p of -p/(j f/fc - p), p = exp(j pi (2 k + n - 1)/(2 n)), k = 1 ... n:
    3.0 dB down at the corner. Linkwitz-Riley of order n is a Butterworth of order n/2 twice: 6.0 dB down. Raises
    ValueError for a corner that is not positive, an order that is not 1 to 8, or an odd Linkwitz-Riley.
    Source: textbook definitions.
    """
    if not filtering.corner_hz > 0:
        raise Refused(f"the corner of a low-pass must be positive, got {filtering.corner_hz} Hz")
    twice = filtering.shape == "linkwitz-riley"
    if not 1 <= filtering.order <= 8 or (twice and filtering.order % 2):  # noqa: PLR2004 - steeper ones are not built
        raise Refused(f"no {filtering.shape} low-pass of order {filtering.order} is known")
    order = filtering.order // 2 if twice else filtering.order
    poles = np.exp(1j * np.pi * (2 * np.arange(1, order + 1) + order - 1) / (2 * order))
    along = 1j * np.asarray(frequencies_hz, dtype=np.float64) / filtering.corner_hz
    gain: ComplexArray = np.prod(-poles / (along[:, None] - poles), axis=1)
    return gain**2 if twice else gain


def high_pass(filtering: LowPass, frequencies_hz: Sequence[float] | Array) -> ComplexArray:
    """Complex gain of the high-pass that belongs to a low-pass of the same corner, class and order, (frequencies,).

    The low-pass times (j f/fc)^n. An even Linkwitz-Riley sums with it to the same level at every frequency. Range,
    errors and source as for `low_pass`.
    """
    along = 1j * np.asarray(frequencies_hz, dtype=np.float64) / filtering.corner_hz
    found: ComplexArray = low_pass(filtering, frequencies_hz) * along**filtering.order
    return found


def together_db(one: ComplexArray, other: ComplexArray) -> float:
    """Return how much louder two pressures are together as they are than with one of them turned round, dB.

    10 log10 of the mean of |a + b|^2 over the mean of |a - b|^2, each first brought to the same mean level: naught
    where they have nothing to do with each other, below where they cancel; cut at 20 dB either way. Raises Refused
    where one of them is silent. Source: the definition of adding two pressures.
    """
    levels = [float((np.abs(pressure) ** 2).mean()) for pressure in (one, other)]
    if not min(levels) > 0.0:
        raise Refused("one of the two is silent there")
    a, b = one / np.sqrt(levels[0]), other / np.sqrt(levels[1])
    plus, minus = (float((np.abs(a + sign * b) ** 2).mean()) for sign in (1.0, -1.0))
    least = 10.0 ** (-MOST_TOGETHER_DB / 10.0)
    return float(np.clip(10.0 * np.log10(max(plus, least) / max(minus, least)), -MOST_TOGETHER_DB, MOST_TOGETHER_DB))


def drive(sources: Sequence[BassSource], frequencies_hz: Sequence[float] | Array) -> ComplexArray:
    """Complex gain of each source by its settings, (sources, frequencies): level, polarity, delay, low-pass.

    A delay turns a source's phase by -2 pi f t. Raises Refused without sources.
    """
    if not sources:
        raise Refused("at least one source is needed for a response")
    frequencies = np.asarray(frequencies_hz, dtype=np.float64)
    delays = np.array([source.delay_s for source in sources])
    gains = np.array([10 ** (source.level_db / 20) * (-1.0 if source.inverted else 1.0) for source in sources])
    found: ComplexArray = gains[:, None] * np.exp(-2j * np.pi * np.outer(delays, frequencies))
    for number, source in enumerate(sources):
        if source.low_pass is not None:
            found[number] *= low_pass(source.low_pass, frequencies)
    return found


def evened(gains: ComplexArray) -> ComplexArray:
    """Return the gains of sources without what they have in common: over the root of their mean square, by frequency.

    A low-pass that all share is no fault of a seat, and an equaliser undoes it; one that some have alone stays. Where
    all are silent they stay as they are. Source: what equalising all sources alike does.
    """
    strength = np.sqrt((np.abs(gains) ** 2).mean(axis=0))
    found: ComplexArray = gains / np.where(strength > 0.0, strength, 1.0)
    return found


def seat_range_db(levels_db: Array) -> Array:
    """Return the loudest less the quietest seat, averaged over frequency, dB; `levels_db` is (..., seats, frequencies).

    Source: arithmetic.
    """
    found: Array = (levels_db.max(axis=-2) - levels_db.min(axis=-2)).mean(axis=-1)
    return found


def level_db(pressure: ComplexArray, floor_db: float = -80.0) -> Array:
    """Level of a pressure; what is below `floor_db` is lifted to it, so that a perfect null stays a number."""
    found: Array = 20 * np.log10(np.maximum(np.abs(pressure), 10 ** (floor_db / 20)))
    return found


def combined_db(
    parts: ComplexArray, sources: Sequence[BassSource], frequencies_hz: Sequence[float], floor_db: float = -80.0
) -> Array:
    """Level of all sources together, (receivers, frequencies), from a transfer and each source's setting.

    Settings as for `drive`, floor as for `level_db`.
    """
    return level_db((parts * drive(sources, frequencies_hz)).sum(axis=1), floor_db)


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


def mode_drive(size: Size, indices: Indices, sources: Sequence[BassSource], sound_speed_mps: float) -> complex:
    """How strongly sources as set drive a mode of a box together: sum of g psi over the sum of |g|, at the mode's f.

    g is a source's complex gain by level, polarity, delay and low-pass, psi the mode's shape there, from -1 to 1. 1 in
    magnitude is all sources together in a corner, 0 is a mode that the arrangement cancels. Raises Refused without
    sources, for one outside the room, or for sources that are all silent at that frequency.
    Source: the mode's term of the modal sum.
    """
    frequency = mode_frequency_hz(size, indices, sound_speed_mps)
    gains = drive(sources, [frequency])[:, 0]
    whole = float(np.abs(gains).sum())
    if not whole > 0:
        raise Refused(f"no source plays at {frequency:.1f} Hz")
    shapes = [mode_shape(size, indices, source.position) for source in sources]
    return complex((gains * shapes).sum() / whole)


def smoothed_db(levels_db: Array, frequencies_hz: Sequence[float], parts_of_octave: float) -> Array:
    """Power average over a window of 1/n octave round each frequency; the window is cut at the ends of the band.

    `levels_db` (..., frequencies). Each frequency weighs by its share of the logarithmic axis. Raises Refused unless
    `parts_of_octave` is positive. Source: usual fractional-octave smoothing.
    """
    smoothed: Array = 10 * np.log10(10 ** (levels_db / 10) @ _smoothing(tuple(frequencies_hz), parts_of_octave))
    return smoothed


@lru_cache(maxsize=8)
def _smoothing(frequencies_hz: tuple[float, ...], parts_of_octave: float) -> Array:
    if not parts_of_octave > 0:
        raise Refused(f"smoothing is over a positive fraction of an octave, got 1/{parts_of_octave}")
    octaves = np.log2(np.asarray(frequencies_hz, dtype=np.float64))
    share = np.gradient(octaves) if octaves.size > 1 else np.ones(1)
    near = np.abs(octaves[:, None] - octaves[None, :]) <= 0.5 / parts_of_octave + 1e-12
    weights = near * share[None, :]
    found: Array = (weights / weights.sum(axis=1, keepdims=True)).T
    return found
