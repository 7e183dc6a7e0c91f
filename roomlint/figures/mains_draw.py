"""What electronics draw from the mains on the average, and the heat that follows: estimates, never nameplates.

Safety standards load an audio amplifier with one eighth of its rated power, pink noise that just does not clip
(about 9 dB of headroom); one third stands for the heaviest program. A nameplate current always outranks the estimate.
"""

import math
from collections.abc import Mapping
from types import MappingProxyType
from typing import Final, Literal

from roomlint.figures.domain import at_least_one, between, not_negative, positive

AmplifierClass = Literal["AB", "D", "unknown"]

EIGHTH_POWER: Final = 1.0 / 8.0
"""Share of rated power in normal use (IEC 60065 normal operation, read second-hand)."""
THIRD_POWER: Final = 1.0 / 3.0
"""Share of rated power for the heaviest program (common practice)."""

EFFICIENCY_AT_EIGHTH: Final[Mapping[AmplifierClass, float]] = MappingProxyType({"AB": 0.25, "D": 0.60, "unknown": 0.25})
"""Mains-to-loudspeaker efficiency at one eighth of rated power, supply and idle current included (common practice for
AB; the class D figure from memory)."""

UNKNOWN_POWER_FACTOR: Final = 0.65
"""Power factor of a plain rectifier supply, from memory; a corrected supply comes near 0.95."""

BTU_PER_HOUR_PER_WATT: Final = 3600.0 / 1055.05585262
"""Exact for the International Table British thermal unit."""

AIR_DENSITY_KG_M3: Final = 1.2
AIR_HEAT_J_KG_K: Final = 1005.0
_SECONDS_PER_HOUR: Final = 3600.0


def average_output_w(channels: int, rated_w: float, duty: float = EIGHTH_POWER) -> float:
    """Average power into the loudspeakers, W: channels x rated power x duty.

    Duty above 0 to 1; ValueError outside, for no channel or a negative power. Source: IEC 60065 4.2 convention of 1/8
    (read second-hand).
    """
    share = between("duty", positive("duty", duty, ""), (0.0, 1.0), "")
    return at_least_one("number of channels", channels) * not_negative("rated power", rated_w, "W") * share


def mains_power_w(average_output: float, efficiency: float, idle_w: float = 0.0) -> float:
    """Average mains power of an amplifier, W: the greater of idle power and average output / efficiency.

    Efficiency above 0 to 1; ValueError outside or for a negative power. Source: energy balance.
    """
    share = between("efficiency", positive("efficiency", efficiency, ""), (0.0, 1.0), "")
    return max(not_negative("idle power", idle_w, "W"), not_negative("average output", average_output, "W") / share)


def mains_current_a(power_w: float, voltage_v: float, power_factor: float = UNKNOWN_POWER_FACTOR) -> float:
    """Mains current of a load, A: P / (V PF). Power factor above 0 to 1; ValueError outside. Source: definition."""
    factor = between("power factor", positive("power factor", power_factor, ""), (0.0, 1.0), "")
    return not_negative("power", power_w, "W") / (positive("nominal voltage", voltage_v, "V") * factor)


def amplifier_heat_w(mains_w: float, average_output: float) -> float:
    """Heat given off by the amplifier itself, W: mains power less what leaves for the loudspeakers.

    With the loudspeakers in the same room, the room's heat is the whole mains power. ValueError for an output above the
    mains power. Source: energy balance.
    """
    heat = not_negative("mains power", mains_w, "W") - not_negative("average output", average_output, "W")
    return not_negative("mains power less output", heat, "W")


def btu_per_hour(heat_w: float) -> float:
    """Heat in BTU/h: 3.412 x W. ValueError for a negative heat. Source: unit definition."""
    return not_negative("heat", heat_w, "W") * BTU_PER_HOUR_PER_WATT


def airflow_m3_per_h(heat_w: float, rise_k: float) -> float:
    """Air that carries a heat away at a temperature rise, m3/h: 3600 P / (1.2 x 1005 x dT) = 2.985 P / dT.

    Air of 20 C at sea level; multiply by 101.3 kPa / pressure at altitude. ValueError for a rise not above zero or a
    negative heat. Source: energy balance.
    """
    carried = AIR_DENSITY_KG_M3 * AIR_HEAT_J_KG_K * positive("temperature rise", rise_k, "K")
    return not_negative("heat", heat_w, "W") * _SECONDS_PER_HOUR / carried


def class_b_efficiency_sine(power_share: float) -> float:
    """Efficiency of an ideal class B stage on a sine, no unit: (pi / 4) sqrt(share of full power).

    The bound that no real class AB amplifier passes. Share above 0 to 1; ValueError outside. Source: textbook result.
    """
    share = between("share of full power", positive("share of full power", power_share, ""), (0.0, 1.0), "")
    return math.pi / 4.0 * math.sqrt(share)
