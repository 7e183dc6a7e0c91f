"""Screws in timber by the Eurocode: what a class of wood weighs, and what it gives a screw that is pulled or sheared.

EN 1995-1-1:2004 with A1:2008, clauses 8.2.3 and 8.7, for wood graded to EN 338 or EN 14080; characteristic resistances
become design values by kmod over gamma_M. National annexes may set gamma_M and the loads' own factors otherwise; the
recommended ones stand here. Proprietary screws have parameters of their own, which only their declaration gives.

Grades: withdrawal and thin-plate forms, kmod 0.6, gamma_M 1.3 and the group exponent were read second-hand, in two
handbooks and a course page; densities in two public tables. What is marked "from memory" was not confirmed.
"""

from __future__ import annotations

import math
from types import MappingProxyType
from typing import TYPE_CHECKING, Final, Literal

from roomlint.figures.domain import between, positive

if TYPE_CHECKING:
    from collections.abc import Mapping

Duration = Literal["permanent", "long-term"]

DENSITY_KG_M3: Final[Mapping[str, float]] = MappingProxyType(
    {
        "C14": 290.0, "C16": 310.0, "C18": 320.0, "C20": 330.0, "C22": 340.0, "C24": 350.0, "C27": 360.0, "C30": 380.0,
        "C35": 390.0, "C40": 400.0, "C45": 410.0, "C50": 430.0,
        "D30": 530.0, "D35": 540.0, "D40": 550.0, "D50": 620.0, "D60": 700.0, "D70": 800.0,
        "GL24c": 350.0, "GL24h": 380.0, "GL28c": 380.0, "GL28h": 410.0, "GL30c": 390.0, "GL30h": 390.0,
        "GL32c": 400.0, "GL32h": 430.0,
    }
)  # fmt: skip
"""Characteristic density of softwood (C) and hardwood (D) to EN 338 and of glued laminated timber (GL) to EN 14080.

C as in EN 338:2016, read in a public table. D30 to D50 read in another of EN 338:2009; of D60 and D70, and of every GL
class, the lower of an earlier edition's value, read there, and today's from memory.
"""
LIGHTEST_CLASS: Final = "C14"
"""What is taken where nobody says the class: the lightest one."""
_SOFTWOOD_MOST: Final = 430.0
"""The formula for withdrawal is one for softwood (amendment A2, from memory): hardwood counts as C50 at most."""

SCREW_DIAMETER_RANGE_MM: Final = (6.0, 12.0)
LEAST_ANGLE_DEG: Final = 30.0
"""Smallest angle between screw and grain at which it may be pulled for good."""
LEAST_THREAD_DIAMETERS: Final = 6.0
"""Thread in the wood without which the standard gives no value, 8.7.2(3) (read second-hand)."""
EDGE_DIAMETERS: Final = 4.0
"""From the middle of a screw that is pulled to the edge of the wood, table 8.6 (read second-hand)."""
GAMMA_M: Final = 1.3
"""Partial factor of connections, the recommended value (read second-hand); an annex may raise it."""
KMOD: Final[Mapping[tuple[Duration, bool], float]] = MappingProxyType(
    {("permanent", False): 0.60, ("permanent", True): 0.50, ("long-term", False): 0.70, ("long-term", True): 0.55}
)
"""Modification factor of solid and laminated wood by load duration and whether it is wet in service (class 3)."""
GAMMA_LOAD: Final[Mapping[Duration, float]] = MappingProxyType({"permanent": 1.35, "long-term": 1.5})
"""Partial factor of what loads a screw, EN 1990 (from memory): weight is permanent, whoever hangs on it is not."""

WIRE_STRENGTH_MPA: Final = 400.0
"""Tensile strength of a screw's steel where no declaration tells it: that of a plain coach screw, the least."""
_GAMMA_STEEL: Final = 1.25
_LEAST_ROOT: Final = 0.6
"""Least share of a screw's diameter that its root may be by the range of the formula (from memory)."""
STEEL_BEARING_MPA: Final = 360.0
"""Bearing strength of a plate that board holds off the wood: the ultimate strength of plain steel."""


def withdrawal_n(
    density_kg_m3: float, diameter_mm: float, thread_mm: float, *, hardwood: bool = False, angle_deg: float = 90.0
) -> float:
    """Give the characteristic withdrawal resistance of one screw, N.

    Formula: f = 0.52 d^-0.5 l^-0.1 rho^0.8; F = f d l kd / (1.2 cos^2 a + sin^2 a), kd = min(d/8, 1); d and l in mm,
    rho in kg/m3. Valid for d 6 to 12 mm and screws at 30 to 90 degrees to the grain; Refused outside, and for a thread
    or density not above zero. Source: EN 1995-1-1:2004+A1:2008 8.7.2 (form read second-hand, the 1.2 from memory).
    """
    diameter = between("screw diameter by EN 1995-1-1", diameter_mm, SCREW_DIAMETER_RANGE_MM, "mm")
    thread = positive("thread in the wood", thread_mm, "mm")
    density = positive("density", density_kg_m3, "kg/m3")
    counted = min(density, _SOFTWOOD_MOST) if hardwood else density
    angle = math.radians(between("angle to the grain", angle_deg, (LEAST_ANGLE_DEG, 90.0), "deg"))
    strength = 0.52 * diameter**-0.5 * thread**-0.1 * counted**0.8
    slant = 1.2 * math.cos(angle) ** 2 + math.sin(angle) ** 2
    return float(strength * diameter * thread * min(diameter / 8.0, 1.0) / slant)


def group_share(count: int) -> float:
    """Share of its own resistance that each of `count` screws gives that are pulled together: n^0.9 / n.

    Refused for no screws. Source: EN 1995-1-1 8.7.2(8) (read second-hand).
    """
    return float(positive("screws", count, "") ** -0.1)


def row_share(count: int, spacing_mm: float, diameter_mm: float) -> float:
    """Share that each fastener of a row along the grain gives in shear: n^0.9 (a / 13 d)^0.25 / n, at most 1.

    Refused for a spacing or diameter not above zero. Source: EN 1995-1-1 8.5.1.1(4) (from memory).
    """
    if count == 1:
        return 1.0
    apart = positive("spacing", spacing_mm, "mm") / (13.0 * positive("diameter", diameter_mm, "mm"))
    return min(1.0, float(count**-0.1 * apart**0.25))


def effective_diameter_mm(root_diameter_mm: float) -> float:
    """Diameter that a screw with thread in the shear plane counts for, mm: 1.1 of its root.

    Refused for a root not above zero. Source: EN 1995-1-1 8.7.1(3) (read second-hand).
    """
    return 1.1 * positive("root diameter", root_diameter_mm, "mm")


def yield_moment_nmm(effective_mm: float, strength_mpa: float = WIRE_STRENGTH_MPA) -> float:
    """Give the characteristic yield moment, N mm: 0.3 fu d^2.6, d the effective diameter in mm.

    Refused for values not above zero. Source: EN 1995-1-1 8.5.1.1, equation 8.30 (read second-hand).
    """
    return float(
        0.3 * positive("steel strength", strength_mpa, "MPa") * positive("diameter", effective_mm, "mm") ** 2.6
    )


def embedment_mpa(
    density_kg_m3: float, effective_mm: float, angle_deg: float, *, predrilled: bool, hardwood: bool = False
) -> float:
    """Give the characteristic embedment strength at an angle to the grain (0 along, 90 across), MPa.

    Formula: fh0 = 0.082 (1 - 0.01 d) rho, over k90 sin^2 a + cos^2 a with k90 1.35 + 0.015 d in softwood and
    0.90 + 0.015 d in hardwood, never below 1; without a predrilled hole no more than 0.082 rho d^-0.3. Refused for
    values not above zero or an angle outside 0 to 90 degrees.
    Source: EN 1995-1-1 8.3.1.1 and 8.5.1.1, equations 8.15, 8.31 and 8.32 (from memory; 8.32 read second-hand).
    """
    density = positive("density", density_kg_m3, "kg/m3")
    diameter = positive("diameter", effective_mm, "mm")
    angle = math.radians(between("angle to the grain", angle_deg, (0.0, 90.0), "deg"))
    across = max(1.0, (0.90 if hardwood else 1.35) + 0.015 * diameter)
    bored = 0.082 * (1.0 - 0.01 * diameter) * density / (across * math.sin(angle) ** 2 + math.cos(angle) ** 2)
    return float(bored if predrilled else min(bored, 0.082 * density * diameter**-0.3))


def thin_plate_modes_n(
    embedment: float, effective_mm: float, depth_mm: float, moment_nmm: float
) -> tuple[float, float]:
    """Give what a screw under a thin steel plate bears in shear by each mode, N: it tilts in the wood, or it bends.

    Formula: 0.4 fh t d and 1.15 sqrt(2 My fh d), without the rope effect Fax/4, which a screw that is pulled anyway is
    not credited with here. A plate as thick as the screw bears more only where its holes are no more than a tenth of
    the screw's diameter too wide; those of mounts are slots. Refused for values not above zero.
    Source: EN 1995-1-1 8.2.3, equation 8.9 (read second-hand).
    """
    line = positive("embedment strength", embedment, "MPa") * positive("diameter", effective_mm, "mm")
    tilts = 0.4 * line * positive("depth in the wood", depth_mm, "mm")
    return tilts, 1.15 * math.sqrt(2.0 * positive("yield moment", moment_nmm, "N mm") * line)


def steel_tension_n(diameter_mm: float) -> float:
    """Design resistance of the screw's own steel, N: 0.9 fu A / 1.25 at the thinnest root that the formula allows.

    Refused for a diameter not above zero. Source: EN 1993-1-8 table 3.4 (from memory), with 400 MPa and a root of 0.6
    of the diameter, both the cautious end.
    """
    root = _LEAST_ROOT * positive("diameter", diameter_mm, "mm")
    return 0.9 * WIRE_STRENGTH_MPA * math.pi / 4.0 * root**2 / _GAMMA_STEEL
