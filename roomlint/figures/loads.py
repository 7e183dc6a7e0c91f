"""What a mount asks of its fasteners: statics of cantilevered, swung, hung and sloped supports.

Mass stays mass (kg) until `weight_n`; everything after is newtons. Unless a docstring names another source, the
figures are plain statics of a rigid plate whose foot presses on the wall; a plate that bends pries harder.
"""

import math
from dataclasses import dataclass
from typing import Final

from roomlint.figures.domain import Refused, at_least_one, between, not_negative, positive
from roomlint.figures.inch_pound import FOOT_M, POUND_KG, STANDARD_GRAVITY_M_S2

MISUSE_EXTRA_N: Final = 880.0
"""Weight of an adult hanging on a device, added to its own weight in the product-safety test (from memory)."""
_MISUSE_WEIGHTS: Final = 3.0
_ANCHORED_CATEGORIES: Final = frozenset({"D", "D0", "D1", "D2", "E", "F"})
_SEISMIC_MASS_KG: Final = 20.0 * POUND_KG
_SEISMIC_HEIGHT_M: Final = 4.0 * FOOT_M
_SLING_RANGE_DEG: Final = (5.0, 90.0)
_LEAST_GROUP: Final = 2


@dataclass(frozen=True, slots=True)
class CeilingSeat:
    """How a plate sits under a ceiling and what hangs on it; lengths in m."""

    count: int
    """All fasteners in framing."""
    pulled: int
    """Those in the row that is pulled when the plate is turned."""
    spacing_m: float
    """Between that row and the opposite one."""
    beside_m: float
    """How far beside the plate's middle the centre of gravity can be."""
    stands_off_m: float
    """How far from a sloping ceiling it is held, at right angles; 0 for what hangs plumb from a joint."""
    drop_m: float
    """How far below the plate a push meets it."""
    slope_deg: float = 0.0


def weight_n(mass_kg: float) -> float:
    """Weight of a mass under standard gravity, N: 9.80665 m. Refused for a negative mass."""
    return not_negative("mass", mass_kg, "kg") * STANDARD_GRAVITY_M_S2


def overturning_moment_nm(load_n: float, reach_m: float) -> float:
    """Moment of a load about the wall face, N m: W e, e the distance of the centre of gravity from the wall.

    Take e at full extension: arm reach plus half the depth of the device. Refused for a negative input.
    """
    return not_negative("load", load_n, "N") * not_negative("reach", reach_m, "m")


def top_fastener_tension_n(load_n: float, reach_m: float, row_spacing_m: float, top_count: int) -> float:
    """Pull on each fastener of the top row of two, N: W e / (n h).

    `row_spacing_m` is the distance between the two rows, not to the plate's edge: board crushes under an edge.
    `top_count` counts only the fasteners that are in framing. Refused for a spacing not above zero or no fastener.
    """
    spacing = positive("row spacing", row_spacing_m, "m")
    count = at_least_one("number of top fasteners", top_count)
    return overturning_moment_nm(load_n, reach_m) / (count * spacing)


def vertical_shear_n(load_n: float, count: int) -> float:
    """Downward shear on each fastener, N: W / N over all fasteners in framing. Refused for no fastener."""
    return not_negative("load", load_n, "N") / at_least_one("number of fasteners", count)


def sideways_shear_n(load_n: float, swing_m: float, spacing_m: float) -> float:
    """Extra horizontal shear on the end fasteners of one column when the arm swings aside, N: W s / h.

    A mount on a single stud twists about it: `swing_m` is the sideways offset of the centre of gravity, `spacing_m` the
    distance between the end fasteners. Refused for a spacing not above zero.
    """
    return overturning_moment_nm(load_n, swing_m) / positive("fastener spacing", spacing_m, "m")


def group_twist_n(load_n: float, swing_m: float, rows_m: float, columns_m: float, corners: int) -> tuple[float, float]:
    """Extra vertical and horizontal shear on a corner fastener of a rectangular group that a load aside twists, N.

    Formula: M r / sum(r^2) about the middle of the group, M = W s, all `corners` fasteners at the distance
    r = sqrt(rows^2 + columns^2) / 2: (M b / 2, M h / 2) / (n r^2). Two to four fasteners stand at the corners.
    Refused for a spacing of rows not above zero, a negative spacing of columns or fewer than two corners.
    Source: statics of a rigid plate.
    """
    moment = overturning_moment_nm(load_n, swing_m)
    rows, columns = positive("row spacing", rows_m, "m"), not_negative("column spacing", columns_m, "m")
    if corners < _LEAST_GROUP:
        raise Refused("a single fastener cannot hold a twist")
    stiffness = corners * (rows**2 + columns**2) / 4.0
    return moment * columns / 2.0 / stiffness, moment * rows / 2.0 / stiffness


def ceiling_demand_n(load_n: float, seat: CeilingSeat, push_n: float) -> tuple[float, float]:
    """Greatest pull, and the shear in the ceiling's plane, on one fastener of a ceiling plate, N.

    Formula: on a ceiling that slopes by a, each of N fasteners bears W cos a / N in pull and W sin a / N in shear. What
    hangs beside the plate adds W cos a e / (n h), what stands off a slope W sin a d / (n h), and a sideways push at
    the end of the drop F L / (n h); the three are added, as if all turned the plate the same way.
    Refused for a slope outside 0 to 90 degrees, a spacing not above zero or no fastener. Source: statics.
    """
    slope = math.radians(between("slope of the ceiling", seat.slope_deg, (0.0, 90.0), "deg"))
    load, count = not_negative("load", load_n, "N"), at_least_one("number of fasteners", seat.count)
    into, along = load * math.cos(slope), load * math.sin(slope)
    turning = overturning_moment_nm(into, seat.beside_m) + overturning_moment_nm(along, seat.stands_off_m)
    turning += overturning_moment_nm(push_n, seat.drop_m)
    if turning == 0.0:
        return into / count, along / count
    pulled = at_least_one("number of pulled fasteners", seat.pulled)
    return into / count + turning / (pulled * positive("plate spacing", seat.spacing_m, "m")), along / count


def misuse_extra_n(load_n: float) -> float:
    """Extra downward force of the product-safety mount test, N: the lesser of 3 W and W + 880 N.

    The test is of the device and its bracket; using it for the wall is a choice of this program. Refused for a
    negative load. Source: IEC 62368-1 8.7.2 (3 W read second-hand; 880 N and "the lesser" from memory).
    """
    load = not_negative("load", load_n, "N")
    return min(_MISUSE_WEIGHTS * load, load + MISUSE_EXTRA_N)


def misuse_load_n(load_n: float) -> float:
    """Whole downward force of the misuse case, N: W + `misuse_extra_n`."""
    return load_n + misuse_extra_n(load_n)


def sling_tension_n(load_n: float, legs: int, angle_deg: float) -> float:
    """Tension in each of `legs` equal sling legs at `angle_deg` above the horizontal, N: W / (n sin angle).

    Valid for 5 to 90 degrees: flatter legs pull without bound; Refused outside. A rigid load may hang on two legs
    whatever their number.
    """
    angle = between("sling angle from the horizontal", angle_deg, _SLING_RANGE_DEG, "deg")
    load = not_negative("load", load_n, "N")
    return load / (at_least_one("number of legs", legs) * math.sin(math.radians(angle)))


def design_factor(breaking_n: float, load_n: float) -> float:
    """Divide breaking strength by working load, no unit. Refused for a force not above zero."""
    return positive("breaking strength", breaking_n, "N") / positive("load", load_n, "N")


def joist_line_load_n_per_m(point_n: float, span_m: float) -> float:
    """Uniform load with the bending moment of a point load at midspan, N/m: 2 P / L.

    From P L / 4 = w L^2 / 8. Refused for a span not above zero.
    """
    return 2.0 * not_negative("point load", point_n, "N") / positive("span", span_m, "m")


def joist_area_load_pa(point_n: float, span_m: float, spacing_m: float) -> float:
    """Spread that load over the area that one joist carries, Pa: 2 P / (L s). Refused as for the line load."""
    return joist_line_load_n_per_m(point_n, span_m) / positive("joist spacing", spacing_m, "m")


def needs_seismic_anchorage(category: str, mass_kg: float, height_m: float) -> bool:
    """Whether a wall- or ceiling-mounted device calls for designed seismic anchorage.

    True in design categories D (D0 to D2 of the residential code with it), E and F above 20 lb (9.07 kg) and more than
    4 ft (1.22 m) above the floor. Lighter or lower devices still need positive attachment. Refused for a negative mass.
    Source: FEMA E-74 (2012), on ASCE 7-10 13.1.4 (read).
    """
    heavy = not_negative("mass", mass_kg, "kg") > _SEISMIC_MASS_KG
    return category in _ANCHORED_CATEGORIES and heavy and height_m > _SEISMIC_HEIGHT_M
