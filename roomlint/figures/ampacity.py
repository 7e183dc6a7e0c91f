"""What current a conductor of fixed wiring carries for good, by the tables of the codes.

A ceiling for design: grouping, ambient above 30 C and what the terminals bear can only lower it, and a licensed
electrician decides. Grades: the IEC table was found alike in two places that quote it, 1.0 mm2 and every aluminium
figure are from memory; the columns of NFPA 70 for 14, 12 and 10 AWG copper were read in transcriptions, the rest is
from memory.
"""

from collections.abc import Mapping
from types import MappingProxyType
from typing import Final, Literal

from roomlint.figures.conductors import Material, awg_area_mm2
from roomlint.figures.domain import positive

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
"""BS 7671 Table 4D5, flat twin and earth in PVC, 30 C, methods 103, A and C; in conduit method B of Table 4D2A. The
column of method C as a reference page prints it, which has 15.5, 65 and 87 A for 1, 10 and 16 mm2; the rest from
memory."""
_COLUMN: Final[Mapping[Laying, int]] = MappingProxyType({"insulated-wall": 0, "conduit": 1, "clipped": 2})
_BS_COLUMN: Final[Mapping[Laying, int]] = MappingProxyType(
    {"in-insulation": 0, "insulated-wall": 1, "conduit": 2, "clipped": 3}
)
_SURROUNDED: Final = 0.5
"""Share of method C that is left where insulation surrounds the cable for half a metre or more (BS 7671 523.9)."""
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


def bs_ampacity_a(area_mm2: float, laying: Laying, material: Material = "copper") -> float:
    """Current-carrying capacity of flat twin and earth in PVC at 30 C, A; 0 for one that is too thin.

    As `iec_ampacity_a`, from 1.0 to 16 mm2; an area above zero, else Refused. Source: BS 7671 Tables 4D5 and 4D2A.
    """
    size = _size(area_mm2)
    if size is None:
        return 0.0
    return _BS_A[size][_BS_COLUMN[laying]] * (_ALUMINIUM_SHARE if material == "aluminium" else 1.0)


def iec_ampacity_a(area_mm2: float, laying: Laying, material: Material = "copper") -> float:
    """Current-carrying capacity of a cable with two loaded conductors in PVC at 30 C, A; 0 for one that is too thin.

    The greatest tabulated size that the conductor reaches counts, from 1.0 mm2, the least for fixed wiring; 16 mm2 is
    the top of the table here, and what is larger counts as that. Refuses an area that is not above zero. Source:
    IEC 60364-5-52 Table B.52.2.
    """
    size = _size(area_mm2)
    if size is None:
        return 0.0
    row = _IEC_A[size]
    table = _SURROUNDED * row[-1] if laying == "in-insulation" else row[_COLUMN[laying]]
    return table * (_ALUMINIUM_SHARE if material == "aluminium" else 1.0)


def _size(area_mm2: float) -> float | None:
    """Return the greatest tabulated size that a conductor reaches, mm2."""
    area = positive("cross-section", area_mm2, "mm2")
    return max((size for size in _IEC_A if size <= area * (1.0 + _HAIR)), default=None)


def nfpa_ampacity_a(area_mm2: float, material: Material = "copper", *, sixteen_awg: bool = False) -> float:
    """Greatest rating of the overcurrent device before a branch-circuit conductor, A; 0 for one that is too thin.

    Copper 14 AWG 15 A, 12 AWG 20 A, 10 AWG 30 A, 8 AWG 40 A, 6 AWG 55 A; aluminium from 12 AWG. `sixteen_awg`: 10 A for
    16 AWG copper (2026). 6 AWG is the top of the table, and what is larger counts as that. Source: NFPA 70 240.4(D),
    Table 310.16 at 60 C.
    """
    area = positive("cross-section", area_mm2, "mm2")
    rows = ((16, _SIXTEEN_AWG_A), *_NFPA_A[material]) if sixteen_awg and material == "copper" else _NFPA_A[material]
    return max((amps for gauge, amps in rows if awg_area_mm2(gauge) <= area * (1.0 + _HAIR)), default=0.0)


def table_ends_a(*, nfpa: bool, material: Material = "copper") -> float:
    """Greatest current of the tables here, A: a larger conductor behind a larger device is not treated."""
    if nfpa:
        return _NFPA_A[material][-1][1]
    return max(row[0] for row in _IEC_A.values()) * (_ALUMINIUM_SHARE if material == "aluminium" else 1.0)
