"""What the drivers of one cabinet do to each other beside its axis.

Places of drivers on the front in m: to the right, seen from in front, and up; frequencies in Hz, speed of sound in m/s.
"""

from __future__ import annotations

import cmath
import math
from functools import lru_cache
from typing import Final, NamedTuple

from roomlint.figures.domain import Refused, positive

SPEECH_HZ: Final = (300.0, 4000.0)
"""Where speech is understood by: the band of a telephone, rounded."""
STEPS: Final = 12
"""Points an octave."""
THIRD: Final = 2
"""Points to either side of one that a third of an octave holds."""
HOLE: Final = 0.01
"""Less than this of one driver's power on the axis is a part of the band that nobody plays."""
FAR: Final = 4.0
"""A seat this many times the farthest driver's distance from the middle away hears plane waves, near enough."""


class Driver(NamedTuple):
    """A driver: its place on the front, and the crossovers that its band begins and ends at; None where none does."""

    right_m: float
    up_m: float
    from_hz: float | None = None
    to_hz: float | None = None


class Interference(NamedTuple):
    """The deepest dip against the axis, dB and negative, or 0 where nothing is lost, and its frequency in Hz."""

    dip_db: float
    frequency_hz: float


def share(driver: Driver, frequency_hz: float) -> float:
    """Return what a driver's crossovers leave of a frequency: 1 / (1 + (f / to)^4), and (f / from)^4 / (1 + ...).

    Two second-order maximally flat filters in a row: fourth order, half the pressure at the crossover. The drivers are
    taken to be in step on the axis, which is what a crossover is made for; no sheet tells its phases. Crossovers above
    zero, else Refused. Source: textbook filter theory.
    """
    left = 1.0
    if driver.to_hz is not None:
        left /= 1.0 + (frequency_hz / positive("crossover", driver.to_hz, "Hz")) ** 4
    if driver.from_hz is not None:
        ratio = (frequency_hz / positive("crossover", driver.from_hz, "Hz")) ** 4
        left *= ratio / (1.0 + ratio)
    return left


class _Points(NamedTuple):
    """The band in points, with a third of an octave beyond it on either side."""

    frequencies_hz: tuple[float, ...]
    shares: tuple[tuple[float, ...], ...]
    """Of each driver, point by point."""
    before: tuple[float, ...]
    """Power on the axis over a third of an octave around each point of the band itself."""


@lru_cache(maxsize=256)
def _points(drivers: tuple[Driver, ...]) -> _Points:
    low, high = SPEECH_HZ
    count = math.ceil(STEPS * math.log2(high / low))
    points = tuple(low * 2.0 ** (number / STEPS) for number in range(-THIRD, count + THIRD + 1))
    shares = tuple(tuple(share(driver, hz) for hz in points) for driver in drivers)
    before = _thirds([math.fsum(at) ** 2 for at in zip(*shares, strict=True)])
    if min(before) < HOLE * 2 * THIRD:
        raise Refused("none of the drivers plays a part of the speech band")
    return _Points(points, shares, tuple(before))


def _thirds(powers: list[float]) -> list[float]:
    """Return powers over a third of an octave around every point but the outer ones, by trapezoids."""
    return [
        a / 2.0 + b + c + d + e / 2.0
        for a, b, c, d, e in zip(powers, powers[1:], powers[2:], powers[3:], powers[4:], strict=False)
    ]


def pressure(
    drivers: tuple[Driver, ...], frequency_hz: float, to_right_deg: float, above_deg: float, sound_speed_m_s: float
) -> complex:
    """Return the drivers' pressure together in a direction, as a multiple of one driver's alone.

    Sum of share x e^(jk(x sin(a) cos(b) + y sin(b))): plane waves. The direction is to the right of the axis, seen from
    in front, and above it, deg. Source: two and more point sources, any acoustics handbook.
    """
    ahead = _ahead_m(drivers, to_right_deg, above_deg)
    turn = 2j * math.pi * positive("frequency", frequency_hz, "Hz") / sound_speed_m_s
    parts = (share(driver, frequency_hz) * cmath.exp(turn * m) for driver, m in zip(drivers, ahead, strict=True))
    return sum(parts, 0j)


def _ahead_m(drivers: tuple[Driver, ...], to_right_deg: float, above_deg: float) -> list[float]:
    side, rise = math.radians(to_right_deg), math.radians(above_deg)
    across, up = math.sin(side) * math.cos(rise), math.sin(rise)
    return [driver.right_m * across + driver.up_m * up for driver in drivers]


def interference(
    drivers: tuple[Driver, ...], to_right_deg: float, above_deg: float, distance_m: float, sound_speed_m_s: float
) -> Interference:
    """Return the deepest dip of a cabinet's speech band in a direction, against its own axis.

    Powers over a third of an octave in the direction over those on the axis, 300 Hz to 4 kHz, twelve points an octave;
    between points a parabola. Refused without drivers, nearer than four times the farthest driver's distance from the
    middle, and where the drivers leave a hole on the axis itself. Source: `pressure`; the third of an octave is what an
    ear resolves, by practice.
    """
    if not drivers:
        raise Refused("no driver is known")
    reach = max(math.hypot(driver.right_m, driver.up_m) for driver in drivers)
    if distance_m < FAR * reach:
        raise Refused(f"{distance_m:.2f} m away the drivers are heard one by one")
    points = _points(drivers)
    real, imaginary = [0.0] * len(points.frequencies_hz), [0.0] * len(points.frequencies_hz)
    for shares, ahead in zip(points.shares, _ahead_m(drivers, to_right_deg, above_deg), strict=True):
        turn = 2.0 * math.pi / sound_speed_m_s * ahead
        angles = [turn * hz for hz in points.frequencies_hz]
        real = [sofar + left * math.cos(angle) for sofar, left, angle in zip(real, shares, angles, strict=True)]
        imaginary = [
            sofar + left * math.sin(angle) for sofar, left, angle in zip(imaginary, shares, angles, strict=True)
        ]
    beside = _thirds([one * one + other * other for one, other in zip(real, imaginary, strict=True)])
    lost = [after / whole for after, whole in zip(beside, points.before, strict=True)]
    at = lost.index(min(lost))
    if lost[at] <= 0.0:
        raise Refused("the drivers cancel over a third of an octave")
    near = [10.0 * math.log10(lost[place]) for place in range(max(at - 1, 0), min(at + 2, len(lost)))]
    dip = _bottom(*near) if len(near) == THIRD + 1 else min(near)
    return Interference(min(dip, 0.0), points.frequencies_hz[at + THIRD])


def _bottom(before: float, at: float, after: float) -> float:
    """Return the lowest point of the parabola through three, so that a dip between points moves evenly."""
    bend = before - 2.0 * at + after
    return at if bend <= 0.0 else at - (after - before) ** 2 / (8.0 * bend)
