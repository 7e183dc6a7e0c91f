"""What an amplifier's output sees: rated impedances as wired, and powers brought to one load.

Rated impedances are resistances in this arithmetic, as data sheets use them: an amplifier's least load is rated the
same way, so that both sides of the comparison carry the same convention.
"""

import math
from collections.abc import Iterable
from typing import Final

from roomlint.figures.domain import Refused, positive

LEAST_SHARE: Final = 0.8
"""A loudspeaker's impedance falls to no less than this share of the rated one (IEC 60268-5, the clause from memory; the
share read in a maker's glossary and in a public measuring library)."""


def rating_ohm(rated_ohm: float | None, least_ohm: float | None) -> float:
    """Return the rated impedance to reckon with, ohm: min(rated, least / 0.8).

    A cabinet that dips below 80 % of what is printed on it is rated too high. Either may be unknown, not both; Refused
    for none or for a value not above zero. Source: IEC 60268-5.
    """
    known = []
    if rated_ohm is not None:
        known.append(positive("rated impedance", rated_ohm, "ohm"))
    if least_ohm is not None:
        known.append(positive("least impedance", least_ohm, "ohm") / LEAST_SHARE)
    if not known:
        raise Refused("neither a rated nor a least impedance is known")
    return min(known)


def parallel_ohm(loads_ohm: Iterable[float]) -> float:
    """Return loads side by side, ohm: 1 / sum(1 / Z). Refused for none or for one not above zero. Source: Kirchhoff."""
    shares = [1.0 / positive("impedance", load, "ohm") for load in loads_ohm]
    if not shares:
        raise Refused("nothing is connected")
    return 1.0 / math.fsum(shares)


def series_ohm(loads_ohm: Iterable[float]) -> float:
    """Return loads one after another, ohm: sum(Z). Refused for none or for one not above zero. Source: Kirchhoff."""
    loads = [positive("impedance", load, "ohm") for load in loads_ohm]
    if not loads:
        raise Refused("nothing is connected")
    return math.fsum(loads)


def line_ohm(line_v: float, taps_w: Iterable[float]) -> float:
    """Return what a line of constant voltage with transformers on it loads its amplifier with, ohm: V^2 / sum(P).

    P are the taps that are set. Refused for none, or for an input not above zero. Source: Ohm's law, as makers' tables
    of 70.7 V and 100 V lines print it.
    """
    taps = [positive("tap", tap, "W") for tap in taps_w]
    if not taps:
        raise Refused("nothing is connected")
    return positive("line voltage", line_v, "V") ** 2 / math.fsum(taps)


def tap_share_percent(taps_w: Iterable[float], amplifier_w: float) -> float:
    """Return the taps on a line by the amplifier's rated power, %: 100 sum(P) / P_amplifier.

    Refused for a tap or a power not above zero. Source: practice; makers leave 10 to 20 % for the transformers' losses.
    """
    whole = math.fsum(positive("tap", tap, "W") for tap in taps_w)
    return 100.0 * whole / positive("rated power", amplifier_w, "W")


def power_into_w(rated_w: float, rated_into_ohm: float, load_ohm: float) -> float:
    """Return the power of an ideal voltage source into another load, W: P Z_rated / Z.

    An upper bound, for real amplifiers run out of current. Refused for an input not above zero. Source: Ohm's law.
    """
    rated = positive("rated power", rated_w, "W") * positive("load of the rated power", rated_into_ohm, "ohm")
    return rated / positive("load", load_ohm, "ohm")
