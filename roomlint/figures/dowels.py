"""Shear value of a dowel-type fastener between a steel plate and wood, with a gap if board lies between.

The six yield modes of NDS-2015 Table 12.3.1A in the form with a gap, "general dowel equations for calculating
lateral connection values" (American Wood Council Technical Report 12; read second-hand). Tabulated values assume
that the steel touches the wood: with gypsum board between, they do not hold, and a single layer leaves well under
half of them. The equations are homogeneous, so they run in newtons, millimetres and MPa.
"""

import math
from dataclasses import dataclass
from typing import Final, NamedTuple

from roomlint.figures.domain import between, not_negative, positive
from roomlint.figures.fasteners import GRAVITY_RANGE, LagSize, hankinson
from roomlint.figures.inch_pound import INCH_MM, PSI_MPA

COLD_FORMED_STEEL_BEARING_MPA: Final = 61_850 * PSI_MPA
"""Bearing strength of steel under 1/4 in (ASTM A653 grade 33), 1.375 x ultimate; supported by the lateral table."""
HOT_ROLLED_STEEL_BEARING_MPA: Final = 87_000 * PSI_MPA
"""Bearing strength of steel of 1/4 in and more (ASTM A36), 1.5 x ultimate; read second-hand."""

_QUARTER_INCH_MM: Final = 0.25 * INCH_MM
_ONE_INCH_MM: Final = INCH_MM
_SMALL_DOWEL_IN: Final = 0.17
_RIGHT_ANGLE_DEG: Final = 90.0


class YieldModes(NamedTuple):
    """Six numbers, one a yield mode: values in N, or divisors without unit.

    Crushing of the main member (`main_bearing`, mode Im) or the plate (`side_bearing`, Is), of both (`both`, II),
    one plastic hinge in the main (`main_hinge`, IIIm) or side member (`side_hinge`, IIIs), two hinges (`hinges`, IV).
    """

    main_bearing: float
    side_bearing: float
    both: float
    main_hinge: float
    side_hinge: float
    hinges: float


@dataclass(frozen=True, slots=True)
class SingleShear:
    """One fastener through a side plate into a main member; every size in mm, every strength in MPa.

    `diameter_mm` is the root diameter when thread lies in the shear plane, `gap_mm` the board between plate and wood.
    """

    diameter_mm: float
    bending_yield_mpa: float
    main_length_mm: float
    main_bearing_mpa: float
    side_thickness_mm: float
    side_bearing_mpa: float
    gap_mm: float = 0.0


def bearing_parallel_mpa(specific_gravity: float) -> float:
    """Dowel bearing strength along the grain for nominal D of 1/4 in and more, MPa: 11 200 G psi.

    Valid for G 0.31 to 0.73; Refused outside. Source: NDS-2015 Table 12.3.3 footnote (read second-hand).
    """
    return 11_200.0 * between("specific gravity", specific_gravity, GRAVITY_RANGE, "") * PSI_MPA


def bearing_perpendicular_mpa(specific_gravity: float, diameter_mm: float) -> float:
    """Dowel bearing strength across the grain, MPa: 6100 G^1.45 / sqrt(D) psi, D the nominal diameter in inches.

    Valid for G 0.31 to 0.73 and D 6.35 to 25.4 mm; Refused outside. Source: NDS-2015 Table 12.3.3 footnote (read
    second-hand).
    """
    gravity = between("specific gravity", specific_gravity, GRAVITY_RANGE, "")
    diameter = between("nominal diameter", diameter_mm, (_QUARTER_INCH_MM, _ONE_INCH_MM), "mm")
    return float(6100.0 * gravity**1.45 / math.sqrt(diameter / INCH_MM) * PSI_MPA)


def bearing_at_angle_mpa(specific_gravity: float, diameter_mm: float, angle_deg: float) -> float:
    """Dowel bearing strength at an angle to the grain (0 along, 90 across), MPa, by the Hankinson formula.

    A load straight down runs along the grain of a stud and across that of blocking, a plate or a joist.
    Valid as the two strengths it joins; Refused outside. Source: NDS-2015 12.3.4 (read second-hand).
    """
    across = bearing_perpendicular_mpa(specific_gravity, diameter_mm)
    return hankinson(bearing_parallel_mpa(specific_gravity), across, angle_deg)


def steel_bearing_mpa(thickness_mm: float) -> float:
    """Bearing strength of the side plate by its thickness, MPa: cold-formed below 1/4 in, hot-rolled from there.

    Refused for a thickness not above zero. Source: NDS-2015 Table 12K and 12.3.3 notes (read second-hand).
    """
    thickness = positive("plate thickness", thickness_mm, "mm")
    return COLD_FORMED_STEEL_BEARING_MPA if thickness < _QUARTER_INCH_MM else HOT_ROLLED_STEEL_BEARING_MPA


def reduction_terms(root_diameter_mm: float, nominal_diameter_mm: float, angle_deg: float) -> YieldModes:
    """Divisors Rd that turn yield values into reference values, one a mode, no unit.

    Root of 1/4 in to 1 in: 4 Kt (Im, Is), 3.6 Kt (II), 3.2 Kt (others), Kt = 1 + 0.25 angle / 90. Below 1/4 in:
    KD = 2.2 to 0.17 in, 10 D + 0.5 above, in every mode, times Kt when the nominal diameter is 1/4 in or more.
    Refused for diameters not above zero, a root above 1 in or an angle outside 0 to 90 degrees.
    Source: NDS-2015 Table 12.3.1B with its footnote (read second-hand).
    """
    angle = between("angle to the grain", angle_deg, (0.0, _RIGHT_ANGLE_DEG), "deg")
    root = between("root diameter", positive("root diameter", root_diameter_mm, "mm"), (0.0, _ONE_INCH_MM), "mm")
    nominal = positive("nominal diameter", nominal_diameter_mm, "mm")
    grain = 1.0 + 0.25 * angle / _RIGHT_ANGLE_DEG
    if root >= _QUARTER_INCH_MM:
        return YieldModes(4.0 * grain, 4.0 * grain, 3.6 * grain, 3.2 * grain, 3.2 * grain, 3.2 * grain)
    root_in = root / INCH_MM
    small = 2.2 if root_in <= _SMALL_DOWEL_IN else 10.0 * root_in + 0.5
    # The published footnote speaks of 1/4 in and 5/16 in lags, whose root is under 1/4 in though they are not.
    every = small * grain if nominal >= _QUARTER_INCH_MM * (1.0 - 1e-9) else small
    return YieldModes(every, every, every, every, every, every)


def yield_values_n(joint: SingleShear) -> YieldModes:
    """Yield value of each mode in single shear, N, before the divisors of `reduction_terms`.

    Formula: q = strength x D for side and main member, M = Fyb D^3 / 6; modes Im q_m l_m, Is q_s l_s; else the
    positive root P of A P^2 + B P + C = 0 with the published A, B, C, the gap entering B. Mode II uses
    C = -(q_s l_s^2 + q_m l_m^2) / 4: only that sign agrees with the equations without gap.
    Refused for a size or strength not above zero or a negative gap. Source: AWC TR-12 (read second-hand).
    """
    diameter = positive("dowel diameter", joint.diameter_mm, "mm")
    side = positive("side bearing strength", joint.side_bearing_mpa, "MPa") * diameter
    main = positive("main bearing strength", joint.main_bearing_mpa, "MPa") * diameter
    side_len = positive("side member thickness", joint.side_thickness_mm, "mm")
    main_len = positive("length in the main member", joint.main_length_mm, "mm")
    gap = not_negative("gap", joint.gap_mm, "mm")
    moment = positive("bending yield strength", joint.bending_yield_mpa, "MPa") * diameter**3 / 6.0

    def root(a: float, b: float, c: float) -> float:
        return (math.sqrt(b * b - 4.0 * a * c) - b) / (2.0 * a)

    side_crush, main_crush = side * side_len**2 / 4.0, main * main_len**2 / 4.0
    return YieldModes(
        main_bearing=main * main_len,
        side_bearing=side * side_len,
        both=root(0.25 / side + 0.25 / main, side_len / 2.0 + gap + main_len / 2.0, -side_crush - main_crush),
        main_hinge=root(0.5 / side + 0.25 / main, gap + main_len / 2.0, -moment - main_crush),
        side_hinge=root(0.25 / side + 0.5 / main, side_len / 2.0 + gap, -side_crush - moment),
        hinges=root(0.5 / side + 0.5 / main, gap, -2.0 * moment),
    )


def reference_shear_n(joint: SingleShear, divisors: YieldModes) -> float:
    """Give the reference lateral value Z of one fastener, N: the least yield value over its own divisor.

    Refused as `yield_values_n`. Source: NDS-2015 12.3.1 (read second-hand).
    """
    return min(value / divisor for value, divisor in zip(yield_values_n(joint), divisors, strict=True))


def governing_mode(joint: SingleShear, divisors: YieldModes) -> str:
    """Name the yield mode that gives the reference lateral value: a field of `YieldModes`.

    Refused as `yield_values_n`. Source: NDS-2015 12.3.1 (read second-hand).
    """
    values = [value / divisor for value, divisor in zip(yield_values_n(joint), divisors, strict=True)]
    return YieldModes._fields[values.index(min(values))]


@dataclass(frozen=True, slots=True)
class LagSeat:
    """How a lag screw sits under a steel plate, sizes in mm.

    `main_length_mm` is the penetration without the tip, `gap_mm` all board between plate and wood, `angle_deg` the
    angle of the load to the grain.
    """

    main_length_mm: float
    plate_mm: float
    gap_mm: float = 0.0
    angle_deg: float = 0.0


def lag_joint(size: LagSize, specific_gravity: float, seat: LagSeat) -> SingleShear:
    """Joint of a standard lag screw under a steel plate, threads taken as lying in the shear plane.

    Refused as the bearing strengths.
    """
    return SingleShear(
        diameter_mm=size.root_diameter_mm,
        bending_yield_mpa=size.bending_yield_mpa,
        main_length_mm=seat.main_length_mm,
        main_bearing_mpa=bearing_at_angle_mpa(specific_gravity, size.diameter_mm, seat.angle_deg),
        side_thickness_mm=seat.plate_mm,
        side_bearing_mpa=steel_bearing_mpa(seat.plate_mm),
        gap_mm=seat.gap_mm,
    )


def lag_shear_n(size: LagSize, specific_gravity: float, seat: LagSeat) -> float:
    """Give the reference lateral value Z of a standard lag screw under a steel plate, N.

    Joins `lag_joint`, `reduction_terms` and `reference_shear_n`; multiply by the adjustment factors afterwards.
    Refused as those. Source: NDS-2015 12.3.1, AWC TR-12 (read second-hand).
    """
    divisors = reduction_terms(size.root_diameter_mm, size.diameter_mm, seat.angle_deg)
    return reference_shear_n(lag_joint(size, specific_gravity, seat), divisors)


def shear_to_grain(along_n: float, across_n: float) -> tuple[float, float]:
    """Resultant of two shears along and across the grain, N, and its angle to the grain, deg: 0 without load.

    Refused for a negative force. Source: statics.
    """
    along, across = not_negative("shear along the grain", along_n, "N"), not_negative("shear across", across_n, "N")
    return math.hypot(along, across), math.degrees(math.atan2(across, along))
