"""Wood fasteners in withdrawal, and withdrawal together with shear (allowable stress design).

Lag screws, wood screws and nails driven into side grain, after the National Design Specification for Wood
Construction (NDS) 2015, chapter 12, and the factors of its Table 11.3.1. Proprietary structural screws are not
covered: only their own evaluation report speaks for them. An allowable value already holds a margin of roughly
4.5 to 5.7 on the average breaking load, so a utilisation just below or above 1 says little by itself.

Grades: the three withdrawal formulas, the lag table and the duration factors were read in scans and secondary
copies; the items marked "from memory" below were not confirmed.
"""

import math
from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType
from typing import Final, Literal

from roomlint.figures.domain import Refused, between, not_negative, positive
from roomlint.figures.inch_pound import INCH_MM, POUND_FORCE_PER_INCH_N_MM, PSI_MPA, fahrenheit_to_celsius

FastenerKind = Literal["lag screw", "wood screw", "nail"]
LoadDuration = Literal["permanent", "ten years", "two months", "seven days", "ten minutes"]

SPECIFIC_GRAVITY: Final[Mapping[str, float]] = MappingProxyType(
    {
        "spruce-pine-fir": 0.42,
        "spruce-pine-fir-south": 0.36,
        "hem-fir": 0.43,
        "hem-fir-north": 0.46,
        "douglas-fir-larch": 0.50,
        "douglas-fir-larch-north": 0.49,
        "douglas-fir-south": 0.46,
        "southern-pine": 0.55,
        "mixed-southern-pine": 0.51,
        "western-cedars": 0.36,
        "eastern-softwoods": 0.36,
        "northern-species": 0.35,
        "redwood": 0.37,
        "ponderosa-pine": 0.43,
        "western-woods": 0.36,
        "aspen": 0.39,
        "northern-white-cedar": 0.31,
        "red-oak": 0.67,
        "white-oak": 0.73,
        "mixed-maple": 0.55,
        "yellow-poplar": 0.43,
        "eastern-white-pine": 0.36,
        "western-hemlock": 0.47,
    }
)
"""Oven-dry specific gravity by species group, NDS Table 12.3.3A (read in a secondary copy)."""

UNKNOWN_SPECIES_GRAVITY: Final = 0.31
"""Specific gravity when no grade stamp names the species: the lightest wood of the table. A choice of this program,
so that not saying the species never helps; no standard gives it."""
PLYWOOD_GRAVITY: Final = 0.42
"""Specific gravity taken for plywood of no stated grade, NDS Table 12.3.3B (from memory)."""

GRAVITY_RANGE: Final = (0.31, 0.73)
LAG_DIAMETER_RANGE_MM: Final = (0.25 * INCH_MM, 1.25 * INCH_MM)
# Extents of the wood-screw and nail tables, numbers 6 to 24 and 0.099 in to 0.375 in: from memory.
WOOD_SCREW_DIAMETER_RANGE_MM: Final = (0.138 * INCH_MM, 0.372 * INCH_MM)

LOAD_DURATION_FACTOR: Final[Mapping[LoadDuration, float]] = MappingProxyType(
    {"permanent": 0.90, "ten years": 1.00, "two months": 1.15, "seven days": 1.25, "ten minutes": 1.60}
)
"""Load duration factor CD, NDS Table 2.3.2 (read second-hand). The impact value 2.0 is left out on purpose:
connections are capped at 1.6. Equipment on a wall is a permanent load."""

_WET_SERVICE_SCREWS: Final = 0.7
_WET_SERVICE_NAILS: Final = 0.25
_END_GRAIN_LAG_WITHDRAWAL: Final = 0.75
_END_GRAIN_LATERAL: Final = 0.67

# Upper bounds of the three temperature bands with (dry, wet) factors: NDS Table 11.3.4. Only the first was read.
_TEMPERATURE_BANDS: Final = (
    (fahrenheit_to_celsius(100.0), 1.0, 1.0),
    (fahrenheit_to_celsius(125.0), 0.8, 0.7),
    (fahrenheit_to_celsius(150.0), 0.7, 0.5),
)

_RIGHT_ANGLE_DEG: Final = 90.0


@dataclass(frozen=True, slots=True)
class LagSize:
    """One standard lag screw: nominal and root diameter, length of the tapered tip, bending yield strength.

    Inch sizes: NDS Appendix L and Table I1. The figures are from memory; the published lateral table (NDS-2015 Table
    12K) is reproduced with those of 1/4, 5/16 and 3/8 in, which is strong support for root diameter and yield
    strength, none for the tip. Metric coach screws: a root of 0.7 of the diameter, a tip as long as the screw is
    thick and the yield strength of the weakest inch lag, all from memory and on the cautious side.
    """

    diameter_mm: float
    root_diameter_mm: float
    tip_mm: float
    bending_yield_mpa: float


def _metric(diameter_mm: float) -> LagSize:
    return LagSize(diameter_mm, 0.7 * diameter_mm, diameter_mm, 45_000 * PSI_MPA)


LAG_SIZES: Final = (
    LagSize(0.25 * INCH_MM, 0.173 * INCH_MM, 5 / 32 * INCH_MM, 70_000 * PSI_MPA),
    LagSize(0.3125 * INCH_MM, 0.227 * INCH_MM, 3 / 16 * INCH_MM, 60_000 * PSI_MPA),
    LagSize(0.375 * INCH_MM, 0.265 * INCH_MM, 7 / 32 * INCH_MM, 45_000 * PSI_MPA),
    LagSize(0.4375 * INCH_MM, 0.328 * INCH_MM, 9 / 32 * INCH_MM, 45_000 * PSI_MPA),
    LagSize(0.5 * INCH_MM, 0.371 * INCH_MM, 5 / 16 * INCH_MM, 45_000 * PSI_MPA),
    LagSize(0.625 * INCH_MM, 0.471 * INCH_MM, 13 / 32 * INCH_MM, 45_000 * PSI_MPA),
)
"""Standard lags of 1/4 to 5/8 in. A lag sold without a grade has an unknown steel strength all the same."""
COACH_SIZES: Final = tuple(_metric(diameter) for diameter in (8.0, 10.0, 12.0))
"""Metric coach screws within the range of the withdrawal formula; one of 6 mm is thinner than the formula's least."""

_SAME_SIZE_MM: Final = 0.02
"""5/16 in and 8 mm differ by 0.06 mm and are different screws."""


def lag_size(diameter_mm: float) -> LagSize:
    """Find the standard lag or coach screw of this nominal diameter (mm), to within 0.02 mm.

    Valid for 1/4, 5/16, 3/8, 7/16, 1/2 and 5/8 in and for 8, 10 and 12 mm; Refused for any other.
    Source: see `LagSize`.
    """
    for size in (*LAG_SIZES, *COACH_SIZES):
        if abs(size.diameter_mm - diameter_mm) <= _SAME_SIZE_MM:
            return size
    raise Refused(
        f"no lag screw of {diameter_mm:g} mm is tabulated here: 1/4 to 5/8 in and 8, 10 and 12 mm are; "
        "an evaluation report speaks for others"
    )


def is_metric(diameter_mm: float) -> bool:
    """Whether a diameter is that of a metric coach screw rather than of a lag in inches."""
    return any(abs(size.diameter_mm - diameter_mm) <= _SAME_SIZE_MM for size in COACH_SIZES)


def lag_withdrawal_n_per_mm(specific_gravity: float, diameter_mm: float) -> float:
    """Give the reference withdrawal value of a lag screw in side grain, N per mm of thread in the main member.

    Formula: W = 1800 G^1.5 D^0.75 lbf/in, D in inches. Valid for G 0.31 to 0.73 and D 6.35 to 31.75 mm, the extents
    of the published table; Refused outside. The tapered tip does not count as thread.
    Source: NDS-2015 12.2-1 and Table 12.2A (table read in a scan).
    """
    gravity = between("specific gravity", specific_gravity, GRAVITY_RANGE, "")
    diameter_in = between("lag screw diameter", diameter_mm, LAG_DIAMETER_RANGE_MM, "mm") / INCH_MM
    return float(1800.0 * gravity**1.5 * diameter_in**0.75 * POUND_FORCE_PER_INCH_N_MM)


def wood_screw_withdrawal_n_per_mm(specific_gravity: float, diameter_mm: float) -> float:
    """Give the reference withdrawal value of a wood screw in side grain, N per mm of thread in the main member.

    Formula: W = 2850 G^2 D lbf/in, D in inches. Valid for G 0.31 to 0.73 and screw numbers 6 to 24 (3.51 to
    9.45 mm); Refused outside. Source: NDS-2015 12.2-2 (formula read second-hand, size range from memory).
    """
    gravity = between("specific gravity", specific_gravity, GRAVITY_RANGE, "")
    diameter_in = between("wood screw diameter", diameter_mm, WOOD_SCREW_DIAMETER_RANGE_MM, "mm") / INCH_MM
    return 2850.0 * gravity**2 * diameter_in * POUND_FORCE_PER_INCH_N_MM


def wet_service_factor(kind: FastenerKind, *, wet: bool) -> float:
    """Wet service factor CM for withdrawal: 1.0 dry; 0.7 lag and wood screws, 0.25 nails in wood above 19 % moisture.

    The nail value is for wood that is made wet and used dry or the reverse. Source: NDS-2015 Table 11.3.3
    (0.7 read second-hand; 0.25 and the 19 % limit from memory).
    """
    if not wet:
        return 1.0
    return _WET_SERVICE_NAILS if kind == "nail" else _WET_SERVICE_SCREWS


def temperature_factor(temperature_c: float, *, wet: bool = False) -> float:
    """Temperature factor Ct for wood held at `temperature_c` (an attic in summer), dry or wet.

    To 37.8 C (100 F) 1.0; to 51.7 C (125 F) 0.8 dry, 0.7 wet; to 65.6 C (150 F) 0.7 dry, 0.5 wet. Refused above
    65.6 C. Source: NDS-2015 Table 11.3.4 (first band read second-hand, the others from memory).
    """
    for limit_c, dry_factor, wet_factor in _TEMPERATURE_BANDS:
        if temperature_c <= limit_c:
            return wet_factor if wet else dry_factor
    raise Refused(f"{temperature_c:g} C is above 65.6 C, the top of the published temperature factors")


def end_grain_withdrawal_factor(kind: FastenerKind) -> float:
    """End grain factor Ceg for withdrawal: lag screw 0.75; wood screw and nail 0, since neither is permitted there.

    Source: NDS-2015 12.5.2 (read second-hand).
    """
    return _END_GRAIN_LAG_WITHDRAWAL if kind == "lag screw" else 0.0


def end_grain_lateral_factor() -> float:
    """End grain factor Ceg for shear, any dowel: 0.67. Source: NDS-2015 12.5.2 (read second-hand)."""
    return _END_GRAIN_LATERAL


def penetration_mm(length_mm: float, through_mm: float, tip_mm: float = 0.0, member_mm: float = math.inf) -> float:
    """Length of a fastener in the main member, mm: from where it enters to its tip or the far side. Never below 0.

    `through_mm` is the bracket plate and every board layer together, `member_mm` the thickness of the main member.
    Give the tapered tip of a lag screw in `tip_mm`; wood screws and nails count the tip in their minimum penetration.
    Refused for a length or member that is not above zero or a negative thickness. Source: arithmetic; which part
    counts is from an American Wood Council answer on penetration and NDS-2015 12.1.4.6 (read second-hand).
    """
    length = positive("fastener length", length_mm, "mm")
    through = not_negative("thickness passed through", through_mm, "mm")
    inside = max(0.0, length - through - not_negative("tip length", tip_mm, "mm"))
    return min(inside, _thickness(member_mm))


def counted_thread_mm(
    length_mm: float, thread_mm: float, through_mm: float, tip_mm: float, member_mm: float = math.inf
) -> float:
    """Thread that works in withdrawal, mm: what lies inside the main member, the tip left out. Never below 0.

    The thread reaches from `length - thread` to `length - tip` below the head, the member from `through` to
    `through + member`; the overlap counts. The tip is left out for lag screws by the standard and for wood screws as
    the cautious reading. Refused for lengths that are not above zero or a thread longer than the fastener.
    Source: NDS-2015 Table 12.2A note (read in a scan); that thread beyond the far side holds nothing is statics.
    """
    thread = positive("thread length", thread_mm, "mm")
    if thread > length_mm * (1.0 + 1e-9):
        raise Refused(f"thread length {thread:g} mm is more than the whole fastener, {length_mm:g} mm")
    enters = not_negative("thickness passed through", through_mm, "mm")
    starts = max(length_mm - thread, enters)
    ends = min(positive("fastener length", length_mm, "mm") - tip_mm, enters + _thickness(member_mm))
    return max(0.0, ends - starts)


def _thickness(member_mm: float) -> float:
    return member_mm if member_mm == math.inf else positive("thickness of the wood", member_mm, "mm")


def edge_tolerance_mm(member_thickness_mm: float, diameter_mm: float, edge_diameters: float = 1.5) -> float:
    """How far off the middle of a member's narrow face a fastener may sit, mm: thickness / 2 - edge_diameters x D.

    Negative means that the fastener cannot keep its edge distance anywhere in that face. Refused for sizes not
    above zero. Source: NDS-2015 Table 12.5.1C, 1.5 D for load along the grain (from memory); EN 1995-1-1 table 8.6,
    4 d for a screw that is pulled (read second-hand).
    """
    half = positive("member thickness", member_thickness_mm, "mm") / 2.0
    return half - positive("edge distance in diameters", edge_diameters, "") * positive("diameter", diameter_mm, "mm")


def combined_capacity_n(withdrawal_n: float, lateral_n: float, *, tension_n: float, shear_n: float) -> float:
    """Give the allowable resultant on one fastener that is pulled and sheared at once, N.

    Formula: Z'a = W'p Z' / (W'p cos^2 a + Z' sin^2 a), tan a = tension / shear, W'p and Z' the adjusted withdrawal
    and lateral capacities. Compare with the resultant sqrt(tension^2 + shear^2), not with the shear.
    Refused for capacities not above zero, negative demands, or no demand at all.
    Source: NDS-2015 12.4.1 (read second-hand).
    """
    pull = positive("withdrawal capacity", withdrawal_n, "N")
    across = positive("lateral capacity", lateral_n, "N")
    tension = not_negative("tension", tension_n, "N")
    shear = not_negative("shear", shear_n, "N")
    squared = tension**2 + shear**2
    if squared == 0.0:
        raise Refused("no load: the direction of the resultant, and so the capacity, is not defined")
    return pull * across * squared / (pull * shear**2 + across * tension**2)


def combined_utilisation(withdrawal_n: float, lateral_n: float, *, tension_n: float, shear_n: float) -> float:
    """Resultant demand over allowable resultant, dimensionless; 0 without load.

    Formula: U = (V^2 / Z' + T^2 / W'p) / sqrt(V^2 + T^2), the same condition as `combined_capacity_n`.
    Refused as there. Source: NDS-2015 12.4.1, rearranged.
    """
    if tension_n == 0.0 and shear_n == 0.0:
        return 0.0
    capacity = combined_capacity_n(withdrawal_n, lateral_n, tension_n=tension_n, shear_n=shear_n)
    return math.hypot(tension_n, shear_n) / capacity


def straight_line_utilisation(withdrawal_n: float, lateral_n: float, *, tension_n: float, shear_n: float) -> float:
    """Sum of the two separate utilisations, T / W'p + V / Z', dimensionless.

    Never less than `combined_utilisation`: a simple cautious check. Refused for capacities not above zero or
    negative demands. Source: plain comparison of the two expressions.
    """
    pull = not_negative("tension", tension_n, "N") / positive("withdrawal capacity", withdrawal_n, "N")
    return pull + not_negative("shear", shear_n, "N") / positive("lateral capacity", lateral_n, "N")


def hankinson(parallel: float, perpendicular: float, angle_deg: float) -> float:
    """Strength at an angle to the grain from those along and across it, in their unit.

    Formula: Fp Fq / (Fp sin^2 + Fq cos^2). Valid for 0 to 90 degrees and strengths above zero; Refused outside.
    Source: NDS-2015 Appendix J (read second-hand).
    """
    along = positive("strength along the grain", parallel, "")
    across = positive("strength across the grain", perpendicular, "")
    angle = math.radians(between("angle to the grain", angle_deg, (0.0, _RIGHT_ANGLE_DEG), "deg"))
    return along * across / (along * math.sin(angle) ** 2 + across * math.cos(angle) ** 2)
