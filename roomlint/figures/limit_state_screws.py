"""Screws in withdrawal by the European limit-state method (EN 1995-1-1, clause 8.7.2).

A resistance from here must meet a factored European demand. It must never meet the unfactored loads that the
allowable values of `fasteners` are made for: the two methods hide their margins in different places.
"""

import math
from typing import Final

from roomlint.figures.domain import Refused, at_least_one, between, positive

_DIAMETER_RANGE_MM: Final = (6.0, 12.0)
_LEAST_EMBEDMENT_DIAMETERS: Final = 6.0
_ANGLE_RANGE_DEG: Final = (30.0, 90.0)
_REFERENCE_DIAMETER_MM: Final = 8.0

MODIFICATION_PERMANENT: Final = 0.6
"""Modification factor for permanent load indoors (service class 1 or 2, solid timber), from memory."""
MATERIAL_FACTOR: Final = 1.3
"""Partial factor for connections, from memory; the national annex decides."""


def withdrawal_parameter_mpa(diameter_mm: float, embedment_mm: float, density_kg_m3: float) -> float:
    """Characteristic withdrawal parameter, N/mm2: 0.52 d^-0.5 lef^-0.1 rho^0.8.

    Valid for 6 to 12 mm screws with a thread embedment of at least 6 d; Refused outside.
    Source: EN 1995-1-1 8.7.2 (formula read second-hand, range from memory).
    """
    diameter = between("screw diameter", diameter_mm, _DIAMETER_RANGE_MM, "mm")
    embedment = positive("thread embedment", embedment_mm, "mm")
    if embedment < _LEAST_EMBEDMENT_DIAMETERS * diameter:
        raise Refused(f"thread embedment {embedment:g} mm is under 6 screw diameters, {6 * diameter:g} mm")
    density = positive("characteristic density", density_kg_m3, "kg/m3")
    return float(0.52 * diameter**-0.5 * embedment**-0.1 * density**0.8)


def withdrawal_characteristic_n(
    diameter_mm: float, embedment_mm: float, density_kg_m3: float, *, angle_deg: float = 90.0, count: int = 1
) -> float:
    """Characteristic withdrawal resistance of `count` screws, N.

    Formula: n^0.9 f d lef kd / (1.2 cos^2 a + sin^2 a), kd = min(d / 8 mm, 1), a the angle of the screw to the grain.
    Valid for 30 to 90 degrees and the range of `withdrawal_parameter_mpa`; Refused outside.
    Source: EN 1995-1-1 8.7.2 (formula read second-hand; the 1.2, the exponent 0.9 and the angle range from memory).
    """
    strength = withdrawal_parameter_mpa(diameter_mm, embedment_mm, density_kg_m3)
    angle = math.radians(between("angle to the grain", angle_deg, _ANGLE_RANGE_DEG, "deg"))
    effective = at_least_one("number of screws", count) ** 0.9
    slender = min(diameter_mm / _REFERENCE_DIAMETER_MM, 1.0)
    across = 1.2 * math.cos(angle) ** 2 + math.sin(angle) ** 2
    return float(effective * strength * diameter_mm * embedment_mm * slender / across)


def design_resistance_n(
    characteristic_n: float, modification: float = MODIFICATION_PERMANENT, material: float = MATERIAL_FACTOR
) -> float:
    """Design resistance, N: characteristic x modification factor / material factor.

    Refused for a number not above zero. Source: EN 1995-1-1 2.4.3 (factors from memory).
    """
    resistance = positive("characteristic resistance", characteristic_n, "N")
    return resistance * positive("modification factor", modification, "") / positive("material factor", material, "")
