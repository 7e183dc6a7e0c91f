"""Levels that amplifiers and loudspeakers reach, what they add up to, and how much of it an ear may have in a week.

Levels in dB re 20 uPa; of a continuous full-scale sine, so that 20 dB above the reference level is full scale.
"""

from __future__ import annotations

import cmath
import math
from typing import TYPE_CHECKING, Final

from roomlint.figures.domain import Refused, positive
from roomlint.figures.settings import ONE_WATT_OHM

if TYPE_CHECKING:
    from collections.abc import Sequence

DRIVE_V: Final = 2.83
"""The drive that sensitivities are stated for: one watt into 8 ohm."""
HEADROOM_DB: Final = 20.0
"""Full scale over the reference level (SMPTE RP 200: reference at -20 dBFS)."""
LOW_GAIN_DB: Final = 10.0
"""The low-frequency channel is replayed so much louder than a main one (ITU-R BS.775, annex 7)."""
SHORT_PEAKS: Final = 4.0
"""Times its rated noise power that a loudspeaker takes in short peaks: 6 dB, as rated noise has them."""
ROOM_ROWS: Final = ((42.0, 76.0), (142.0, 78.0), (283.0, 80.0), (566.0, 82.0), (math.inf, 85.0))
"""Reference level of one main channel by the room's volume in m3, each row up to its volume: ATSC A/85, of which the
least and the largest level were read at second hand; the rows between are from memory."""
HOURS_A_WEEK: Final = 40.0
"""What the weekly allowances are stated for (ITU-T H.870)."""
ALLOWED_DB: Final = {"adults": 80.0, "children": 75.0}
"""A-weighted levels that these hours are allowed at (ITU-T H.870, 2018; at second hand)."""


def rated_v(power_w: float, load_ohm: float) -> float:
    """Return the voltage at rated power, V: sqrt(P Z). Both above zero, else Refused. Source: P = U^2 / Z."""
    return math.sqrt(positive("rated power", power_w, "W") * positive("its load", load_ohm, "ohm"))


def given_w(voltage_v: float, load_ohm: float) -> float:
    """Return the power of a voltage on a load, W: U^2 / Z. Both above zero, else Refused. Source: P = U^2 / Z."""
    return positive("voltage", voltage_v, "V") ** 2 / positive("its load", load_ohm, "ohm")


def over_drive_db(voltage_v: float) -> float:
    """Return a voltage over 2.83 V, dB: 20 lg(U / 2.83). Above 0 V, else Refused. Source: definition."""
    return 20.0 * math.log10(positive("voltage", voltage_v, "V") / DRIVE_V)


def for_power_db(voltage_sensitivity_db: float, load_ohm: float, power_w: float) -> float:
    """Return the level at 1 m for a power into the rated impedance, dB: S(2.83 V) + 10 lg(Z / 8) + 10 lg P.

    Load and power above zero, else Refused. Source: S(1 W) = S(2.83 V) + 10 lg(Z / 8), by P = U^2 / Z.
    """
    watt = 10.0 * math.log10(positive("rated impedance", load_ohm, "ohm") / ONE_WATT_OHM)
    return voltage_sensitivity_db + watt + 10.0 * math.log10(positive("power", power_w, "W"))


def incoherent_db(levels_db: Sequence[float]) -> float:
    """Return the level of sounds that know nothing of each other, dB: 10 lg sum 10^(L/10). Refused for none.

    Source: powers add.
    """
    if not levels_db:
        raise Refused("nothing sounds")
    return 10.0 * math.log10(math.fsum(10.0 ** (level / 10.0) for level in levels_db))


def in_step_db(levels_db: Sequence[float]) -> float:
    """Return the level of equal sounds that arrive in step, dB: 20 lg sum 10^(L/20), the most that they can be.

    Refused for none. Source: pressures add.
    """
    if not levels_db:
        raise Refused("nothing sounds")
    return 20.0 * math.log10(math.fsum(10.0 ** (level / 20.0) for level in levels_db))


def floor_gain_db(direct_m: float, image_m: float, frequency_hz: float, sound_speed_m_s: float) -> float:
    """Return what a rigid floor adds to a source's sound at a point, dB: 20 lg |1 + (d / d') e^(-jk(d' - d))|.

    d' is the way by the floor, no shorter than d; all above zero, else Refused. 6 dB with the source on the floor.
    Source: image source, any acoustics handbook.
    """
    direct, image = positive("direct way", direct_m, "m"), positive("way by the floor", image_m, "m")
    if image < direct:
        raise Refused("the way by the floor is shorter than the direct one")
    wave_number = 2.0 * math.pi * positive("frequency", frequency_hz, "Hz") / sound_speed_m_s
    pressure = abs(1.0 + direct / image * cmath.exp(-1j * wave_number * (image - direct)))
    if pressure == 0.0:
        raise Refused("the floor cancels the sound")
    return 20.0 * math.log10(pressure)


def room_reference_db(volume_m3: float) -> float:
    """Return the reference level of one main channel for a room, dB. Volume above zero, else Refused.

    Source: `ROOM_ROWS`.
    """
    volume = positive("volume", volume_m3, "m3")
    return next(level for most, level in ROOM_ROWS if volume <= most)


def exposure_percent(level_db: float, hours_a_week: float, allowed_db: float) -> float:
    """Return the share of a week's allowance, %: 100 h / (40 h x 10^((allowed - L) / 10)).

    Equal energy. Hours from 0 to 168, else Refused. Source: ITU-T H.870 (2018), at second hand.
    """
    if not 0.0 <= hours_a_week <= 168.0:  # noqa: PLR2004  hours of a week
        raise Refused(f"a week has no {hours_a_week:g} hours")
    return 100.0 * hours_a_week / HOURS_A_WEEK * math.pow(10.0, (level_db - allowed_db) / 10.0)
