"""What current a conductor of fixed wiring carries for good, by the tables of the codes.

A ceiling for design: grouping, ambient above 30 C and what the terminals bear can only lower it, and a licensed
electrician decides. Grades: the IEC table was found alike in two places that quote it, 1.0 mm2 and every aluminium
figure are from memory; the British table was found in two places that repeat it, its method A from 4.0 mm2 on is from
memory; the columns of NFPA 70 for 14, 12 and 10 AWG copper were read in transcriptions, the rest is from memory.
"""

from collections.abc import Mapping
from types import MappingProxyType
from typing import Final, Literal

from roomlint.figures.conductors import Material, awg_area_mm2
from roomlint.figures.domain import positive
from roomlint.figures.wiring_rules import Family

Laying = Literal["clipped", "conduit", "insulated-wall", "in-insulation"]
LAYINGS: Final[tuple[Laying, ...]] = ("in-insulation", "insulated-wall", "conduit", "clipped")
"""Ways to lay a cable, the one that cools it least first."""

_IEC_A: Final[Mapping[float, tuple[float, float, float]]] = MappingProxyType(
    {
        1.0: (11.0, 13.0, 15.0),
        1.5: (14.0, 16.5, 19.5),
        2.5: (18.5, 23.0, 27.0),
        4.0: (25.0, 30.0, 36.0),
        6.0: (32.0, 38.0, 46.0),
        10.0: (43.0, 52.0, 63.0),
        16.0: (57.0, 69.0, 85.0),
    }
)
"""IEC 60364-5-52 Table B.52.2: copper, PVC, two loaded conductors, 30 C; methods A2, B2 and C."""
_BS_A: Final[Mapping[float, tuple[float, float, float, float]]] = MappingProxyType(
    {
        1.0: (8.0, 11.5, 13.0, 16.0),
        1.5: (10.0, 14.5, 16.5, 20.0),
        2.5: (13.5, 20.0, 23.0, 27.0),
        4.0: (17.5, 26.0, 30.0, 37.0),
        6.0: (23.5, 32.0, 38.0, 47.0),
        10.0: (32.0, 44.0, 52.0, 64.0),
        16.0: (42.5, 57.0, 69.0, 85.0),
    }
)
"""BS 7671 Appendix 4, copper, PVC, 30 C, by `LAYINGS`: flat cable with earth by Table 4D5, methods 103, A and C, and
method B of Table 4D2A for a cable in conduit, which 4D5 does not have."""
_COLUMN: Final[Mapping[Laying, int]] = MappingProxyType({"insulated-wall": 0, "conduit": 1, "clipped": 2})
_SURROUNDED: Final = 0.5
"""Share of method C that is left where insulation surrounds the cable for half a metre or more (BS 7671 523.9)."""
_WARM_AIR: Final = 0.87
"""What air of 40 C leaves of the current that PVC cable carries in air of 30 C (Table B.52.14, BS 7671 Table 4B1)."""
AIR_DEGC: Final[Mapping[Family, float]] = MappingProxyType({"asnzs": 40.0})
"""Air that a code reckons with where it is not 30 C: AS/NZS 3008.1.1 (from memory)."""
_ALUMINIUM_SHARE: Final = 0.77
"""Aluminium carries so much of what copper of the same area does (Table B.52.4 over B.52.2, from memory)."""

_NFPA_A: Final[Mapping[Material, tuple[tuple[int, float], ...]]] = MappingProxyType(
    {
        "copper": ((14, 15.0), (12, 20.0), (10, 30.0), (8, 40.0), (6, 55.0)),
        "aluminium": ((12, 15.0), (10, 25.0), (8, 35.0), (6, 40.0)),
    }
)
"""NFPA 70 Table 310.16 at 60 C, which the terminals of circuits up to 100 A are taken for (110.14(C)), and 240.4(D)."""
_SIXTEEN_AWG_A: Final = 10.0
"""16 AWG copper came with the 2026 edition, on 10 A circuits (change reports, second-hand)."""
_HAIR: Final = 0.02
"""A conductor is of a tabulated size if its area is not smaller by more than this share."""

RING_LEAST_A: Final = 20.0
RING_LEAST_MM2: Final = 2.5
RING_MOST_A: Final = 32.0
"""BS 7671 433.1.204 (quoted second-hand): a ring of BS 1363 accessories behind 30 or 32 A has copper of 2.5 mm2 or more
that carries 20 A or more."""


def iec_ampacity_a(area_mm2: float, laying: Laying, material: Material = "copper") -> float:
    """Current-carrying capacity of a cable with two loaded conductors in PVC at 30 C, A; 0 for one that is too thin.

    The greatest tabulated size that the conductor reaches counts, from 1.0 mm2, the least for fixed wiring; 16 mm2 is
    the top of the table here, and what is larger counts as that. Refuses an area that is not above zero. Source:
    IEC 60364-5-52 Table B.52.2.
    """
    area = positive("cross-section", area_mm2, "mm2")
    size = max((size for size in _IEC_A if size <= area * (1.0 + _HAIR)), default=None)
    if size is None:
        return 0.0
    row = _IEC_A[size]
    table = _SURROUNDED * row[-1] if laying == "in-insulation" else row[_COLUMN[laying]]
    return table * (_ALUMINIUM_SHARE if material == "aluminium" else 1.0)


def bs_ampacity_a(area_mm2: float, laying: Laying, material: Material = "copper") -> float:
    """Current-carrying capacity of flat cable in PVC by the British tables at 30 C, A; 0 for one that is too thin.

    Sizes as `iec_ampacity_a` takes them. In an insulated wall it is reckoned in conduit there (method A), as it carries
    no less where it touches the board (method 102); surrounded by insulation as in a stud wall without touching the
    board (method 103). Aluminium by the same share as there. Source: BS 7671 Appendix 4, Tables 4D5 and 4D2A.
    """
    area = positive("cross-section", area_mm2, "mm2")
    size = max((size for size in _BS_A if size <= area * (1.0 + _HAIR)), default=None)
    if size is None:
        return 0.0
    return _BS_A[size][LAYINGS.index(laying)] * (_ALUMINIUM_SHARE if material == "aluminium" else 1.0)


def laid_ampacity_a(family: Family, area_mm2: float, laying: Laying, material: Material = "copper") -> float:
    """Current-carrying capacity of a laid cable by the tables and the air of the code in force, A; not of NFPA 70.

    British tables for BS 7671, those of IEC 60364 for the rest; in Australia and New Zealand 0.87 of them, for air of
    40 C. A published list of the trade there has 14, 18, 24, 32 and 40 A for 1.0 to 6.0 mm2 clipped: this is up to 7 %
    below it. Sources: as the functions say; AS/NZS 3008.1.1 from memory.
    """
    if family == "bs":
        return bs_ampacity_a(area_mm2, laying, material)
    return iec_ampacity_a(area_mm2, laying, material) * (_WARM_AIR if family in AIR_DEGC else 1.0)


def nfpa_ampacity_a(area_mm2: float, material: Material = "copper", *, sixteen_awg: bool = False) -> float:
    """Greatest rating of the overcurrent device before a branch-circuit conductor, A; 0 for one that is too thin.

    Copper 14 AWG 15 A, 12 AWG 20 A, 10 AWG 30 A, 8 AWG 40 A, 6 AWG 55 A; aluminium from 12 AWG. `sixteen_awg`: 10 A for
    16 AWG copper (2026). 6 AWG is the top of the table, and what is larger counts as that. Source: NFPA 70 240.4(D),
    Table 310.16 at 60 C.
    """
    area = positive("cross-section", area_mm2, "mm2")
    rows = ((16, _SIXTEEN_AWG_A), *_NFPA_A[material]) if sixteen_awg and material == "copper" else _NFPA_A[material]
    return max((amps for gauge, amps in rows if awg_area_mm2(gauge) <= area * (1.0 + _HAIR)), default=0.0)


def table_ends_a(family: Family, material: Material = "copper") -> float:
    """Greatest current of the tables here, A: a larger conductor behind a larger device is not treated."""
    if family == "nfpa":
        return _NFPA_A[material][-1][1]
    return laid_ampacity_a(family, max(_IEC_A), "clipped", material)
