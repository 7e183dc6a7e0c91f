"""Low-voltage cable: what its marking lets it run through, how full a raceway is, what a bundle and a link carry.

Values of NFPA 70 were read in a transcription of the 2017 edition; that later editions kept them is from memory where
nothing else stands beside them. The adopted code and the authority having jurisdiction decide.
"""

import math
from collections.abc import Iterable, Mapping
from types import MappingProxyType
from typing import Final, Literal

from roomlint.figures.circuits import EDITIONS, CodeEdition
from roomlint.figures.conductors import awg_area_mm2
from roomlint.figures.domain import Refused, at_least_one, not_negative, positive

Place = Literal["plenum", "riser", "general"]
Topic = Literal["marking", "separation", "audio apart", "output class"]

PLENUM: Final = frozenset({"CL2P", "CL3P", "CMP"})
RISER: Final = PLENUM | {"CL2R", "CL3R", "CMR"}
GENERAL: Final = RISER | {"CL2", "CL3", "CM", "CMG", "PLTC"}
THIN: Final = frozenset({"CL2X", "CL3X", "CMX"})
"""Markings by the most that they may run through (NFPA 70:2017 Table 725.154(A) and 800.154(d), read in a
transcription); the thin ones in walls of dwellings only below `THIN_M`."""
THIN_M: Final = 0.00635
"""Diameter below which the thin markings may be concealed in a one- or two-family dwelling: 1/4 in, the same source."""

_CLAUSES: Final[Mapping[Topic, tuple[str, str, str, str]]] = MappingProxyType(
    {
        "marking": ("725.154", "725.154", "article 722", "article 722"),
        "separation": ("725.136", "725.136", "725.136", "articles 720 to 725"),
        "audio apart": ("725.139(F)", "725.139(F)", "725.139(F)", "articles 720 to 725"),
        "output class": ("640.9(C)", "640.9(C)", "640.9(C)", "640.9(C)"),
    }
)

FILL_PERCENT: Final = (53.0, 31.0, 40.0)
"""Most of a raceway's cross-section for one, two, and more cables (NFPA 70:2017 chapter 9, Table 1)."""
NIPPLE_FILL_PERCENT: Final = 60.0
NIPPLE_M: Final = 0.610
"""Up to 24 in a raceway is a nipple (the same table, note 4; read as 600 mm)."""
FORTY_PERCENT_MM2: Final[Mapping[str, Mapping[str, float]]] = MappingProxyType(
    {
        "emt": MappingProxyType({"1/2": 78.0, "3/4": 137.0, "1": 222.0, "1-1/4": 387.0, "1-1/2": 526.0, "2": 866.0}),
        "ent": MappingProxyType({"1/2": 73.0, "3/4": 131.0, "1": 215.0, "1-1/4": 375.0, "1-1/2": 512.0, "2": 849.0}),
    }
)
"""Area of 40 % fill by kind and trade size, mm2 (NFPA 70:2017 chapter 9, Table 4, read in a transcription)."""

PAIR_A: Final[Mapping[str, float]] = MappingProxyType({"type-1": 0.175, "type-2": 0.30, "type-3": 0.30, "type-4": 0.48})
"""Current in one conductor, half of the pair's, by type of IEEE 802.3 (read in tables on the web)."""
BUNDLE_SIZES: Final = (1, 7, 19, 37, 61, 91, 192)
"""The largest bundle of each column of the table below."""
BUNDLE_A: Final[Mapping[int, tuple[float | None, ...]]] = MappingProxyType(
    {
        26: (1.0, 1.0, 0.7, 0.5, 0.4, 0.4, None),
        24: (2.0, 1.0, 0.8, 0.6, 0.5, 0.4, 0.3),
        23: (2.5, 1.2, 0.8, 0.6, 0.5, 0.5, 0.4),
        22: (3.0, 1.4, 1.0, 0.7, 0.6, 0.6, 0.5),
    }
)
"""Most current of one conductor, all pairs powered, cable for 60 degC in air of 30 degC, by AWG (NFPA 70:2017
Table 725.144, read in a transcription; the edition of 2020 raised some entries a little)."""
CABLE_DEGC: Final = 60.0
TABLE_DEGC: Final = 30.0
_SAME_SIZE: Final = 1.02

NETWORK_M: Final = (90.0, 100.0)
"""Permanent link, and the channel with its cords (TIA-568, read second-hand)."""
USB_M: Final = (3.0, 5.0)
"""Practical at the faster rates, and the limit of USB 2.0 at its own (read second-hand)."""
USB_SLOW_GB_S: Final = 0.48
VIDEO_M: Final = ((10.2, 5.0, 10.0), (18.0, 3.0, 5.0), (48.0, 3.0, 5.0))
"""Data rate in Gb/s up to which a passive video cable runs so far with care, and so far at best (makers' and retailers'
tables; the interface's own specification gives no length)."""


def clause(topic: Topic, edition: CodeEdition) -> str:
    """Name the clause that treats `topic` in one edition of NFPA 70.

    Source: 2017 read in a transcription; 2023 moved the cables to article 722 and kept 725.136, read in a transcription
    and in reports; 2026 spreads them over articles 720 to 723, read in a report; the rest from memory.
    """
    return _CLAUSES[topic][EDITIONS.index(edition)]


def serves(marking: str, place: Place, diameter_m: float | None = None) -> bool:
    """Whether a marking on the jacket lets a cable be concealed in such a place of a dwelling.

    A thin marking does so where nothing but a dwelling's walls is passed and the diameter is known to be below
    `THIN_M`. Source: NFPA 70:2017 Table 725.154(A), 725.135, 800.154(d).
    """
    if place == "plenum":
        return marking in PLENUM
    if place == "riser":
        return marking in RISER
    return marking in GENERAL or (marking in THIN and diameter_m is not None and diameter_m < THIN_M)


def raceway_mm2(kind: str, size: str) -> float:
    """Inner cross-section of a raceway, mm2: the tabulated area of 40 % fill over 0.4.

    Valid for EMT and ENT of 1/2 to 2; Refused for others. Source: NFPA 70 chapter 9, Table 4 (second-hand).
    """
    row = FORTY_PERCENT_MM2.get(kind, {})
    if size not in row:
        raise Refused(f"{kind} of trade size {size} is not tabulated here: EMT and ENT of 1/2 to 2 are")
    return row[size] / 0.4


def fill_percent(diameters_mm: Iterable[float], inner_mm2: float) -> float:
    """Share of a raceway's cross-section that its cables take, %: sum of pi d^2 / 4 over the inner area.

    A cable counts as one round of its outer diameter, a flat one of its larger side. Refused for a size not above
    zero. Source: NFPA 70 chapter 9, notes 5 and 9 to Table 1 (second-hand).
    """
    taken = math.fsum(math.pi / 4.0 * positive("diameter", one, "mm") ** 2 for one in diameters_mm)
    return 100.0 * taken / positive("inner cross-section", inner_mm2, "mm2")


def fill_limit_percent(cables: int, length_m: float) -> float:
    """Most that cables may take of a raceway, %: 53 for one, 31 for two, 40 for more, 60 in one of 24 in at most.

    Refused for no cable or a negative length. Source: NFPA 70 chapter 9, Table 1 (second-hand).
    """
    count = at_least_one("number of cables", cables)
    if not_negative("length", length_m, "m") <= NIPPLE_M:
        return NIPPLE_FILL_PERCENT
    return FILL_PERCENT[min(count, 3) - 1]


def bundle_limit_a(area_mm2: float, cables: int, ambient_c: float) -> float:
    """Most current of one conductor of a network cable in a bundle, A: the table's, times sqrt((60 - T) / 30).

    A conductor between two gauges counts as the thinner; below 30 degC nothing is added. Refused below 26 AWG, for a
    bundle beyond the table, and where the air is as warm as the cable may be. Source: NFPA 70:2017 Table 725.144 and
    310.15 (second-hand).
    """
    fitting = [gauge for gauge in BUNDLE_A if awg_area_mm2(gauge) <= area_mm2 * _SAME_SIZE]
    if not fitting:
        raise Refused(f"a conductor of {area_mm2:.3f} mm2 is thinner than 26 AWG, the least of the table")
    column = next((n for n, most in enumerate(BUNDLE_SIZES) if at_least_one("cables", cables) <= most), None)
    allowed = BUNDLE_A[min(fitting)][column] if column is not None else None
    if allowed is None:
        raise Refused(f"a bundle of {cables} cables of that size is beyond the table")
    if ambient_c >= CABLE_DEGC:
        raise Refused(f"air of {ambient_c:g} degC is as warm as the cable may be, {CABLE_DEGC:g} degC")
    warm = max(ambient_c, TABLE_DEGC)
    return allowed * math.sqrt((CABLE_DEGC - warm) / (CABLE_DEGC - TABLE_DEGC))


def link_m(carries: str, rate_gb_s: float) -> tuple[float, float]:
    """Length of a passive link that works with care, and the most that it does at best, m.

    Valid for network, usb and video to 48 Gb/s; Refused for others. Sources: `NETWORK_M`, `USB_M`, `VIDEO_M`.
    """
    if carries == "network":
        return NETWORK_M
    if carries == "usb":
        return (
            (USB_M[1], USB_M[1]) if not_negative("rate", rate_gb_s, "Gb/s") <= USB_SLOW_GB_S else (USB_M[0], USB_M[0])
        )
    fitting = next((row for row in VIDEO_M if rate_gb_s <= row[0] * (1.0 + 1e-9)), None)
    if carries != "video" or fitting is None:
        raise Refused(f"no passive link of {carries} at {rate_gb_s:g} Gb/s is tabulated")
    return fitting[1], fitting[2]
