"""What a mount asks of its fasteners: statics of cantilevered, swung, hung and sloped supports.

Mass stays mass (kg) until `weight_n`; everything after is newtons. Unless a docstring names another source, the
figures are plain statics of a rigid plate whose foot presses on the wall; a plate that bends pries harder.
"""

import math
from collections.abc import Sequence
from typing import Final

from roomlint.figures.domain import Refused, at_least_one, between, not_negative, positive
from roomlint.figures.inch_pound import FOOT_M, POUND_KG, STANDARD_GRAVITY_M_S2

MISUSE_EXTRA_N: Final = 880.0
"""Weight of an adult hanging on a device, added to its own weight in the product-safety test (from memory)."""
_MISUSE_WEIGHTS: Final = 3.0
_ANCHORED_CATEGORIES: Final = frozenset({"D", "E", "F"})
_SEISMIC_MASS_KG: Final = 20.0 * POUND_KG
_SEISMIC_HEIGHT_M: Final = 4.0 * FOOT_M
_SLING_RANGE_DEG: Final = (5.0, 90.0)


def weight_n(mass_kg: float) -> float:
    """Weight of a mass under standard gravity, N: 9.80665 m. ValueError for a negative mass."""
    return not_negative("mass", mass_kg, "kg") * STANDARD_GRAVITY_M_S2


def overturning_moment_nm(load_n: float, reach_m: float) -> float:
    """Moment of a load about the wall face, N m: W e, e the distance of the centre of gravity from the wall.

    Take e at full extension: arm reach plus half the depth of the device. ValueError for a negative input.
    """
    return not_negative("load", load_n, "N") * not_negative("reach", reach_m, "m")


def top_fastener_tension_n(load_n: float, reach_m: float, row_spacing_m: float, top_count: int) -> float:
    """Pull on each fastener of the top row of two, N: W e / (n h).

    `row_spacing_m` is the distance between the two rows, not to the plate's edge: board crushes under an edge.
    `top_count` counts only the fasteners that are in framing. ValueError for a spacing not above zero or no fastener.
    """
    spacing = positive("row spacing", row_spacing_m, "m")
    count = at_least_one("number of top fasteners", top_count)
    return overturning_moment_nm(load_n, reach_m) / (count * spacing)


def row_tensions_n(load_n: float, reach_m: float, rows: Sequence[tuple[float, int]]) -> tuple[float, ...]:
    """Pull on each fastener of every row of a rigid plate, N, in the order of `rows`: M y / sum(n y^2).

    A row is (height above the foot of the plate in m, number of fasteners in framing). ValueError for no row, a height
    below zero or rows that are all at the foot.
    """
    moment = overturning_moment_nm(load_n, reach_m)
    stiffness = sum(
        at_least_one("fasteners in a row", count) * not_negative("row height", height, "m") ** 2
        for height, count in rows
    )
    if stiffness == 0.0:
        raise Refused("no row above the foot of the plate: nothing can hold the overturning moment")
    return tuple(moment * height / stiffness for height, _ in rows)


def vertical_shear_n(load_n: float, count: int) -> float:
    """Downward shear on each fastener, N: W / N over all fasteners in framing. ValueError for no fastener."""
    return not_negative("load", load_n, "N") / at_least_one("number of fasteners", count)


def sideways_shear_n(load_n: float, swing_m: float, spacing_m: float) -> float:
    """Extra horizontal shear on the end fasteners of one column when the arm swings aside, N: W s / h.

    A mount on a single stud twists about it: `swing_m` is the sideways offset of the centre of gravity, `spacing_m` the
    distance between the end fasteners. ValueError for a spacing not above zero.
    """
    return overturning_moment_nm(load_n, swing_m) / positive("fastener spacing", spacing_m, "m")


def resultant_n(first_n: float, second_n: float) -> float:
    """Resultant of two forces at right angles, N: sqrt(a^2 + b^2)."""
    return math.hypot(first_n, second_n)


def ceiling_pole_tension_n(hung_n: float, push_n: float, pole_m: float, spacing_m: float, pulled_count: int) -> float:
    """Greatest pull on a ceiling plate's fastener when the device at the pole's end is pushed sideways, N.

    Formula: W / N + F L / (n b). `hung_n` is W / N, each fastener's share of the weight (`vertical_shear_n`);
    b the distance between the pulled row and the opposite one, n the fasteners in the pulled row.
    ValueError for a spacing not above zero, no fastener or a negative force.
    """
    spacing = positive("plate spacing", spacing_m, "m")
    pulled = at_least_one("number of pulled fasteners", pulled_count)
    return not_negative("hung load", hung_n, "N") + overturning_moment_nm(push_n, pole_m) / (pulled * spacing)


def misuse_extra_n(load_n: float) -> float:
    """Extra downward force of the product-safety mount test, N: the lesser of 3 W and W + 880 N.

    The test is of the device and its bracket; using it for the wall is a choice of this program. ValueError for a
    negative load. Source: IEC 62368-1 8.7.2 (3 W read second-hand; 880 N and "the lesser" from memory).
    """
    load = not_negative("load", load_n, "N")
    return min(_MISUSE_WEIGHTS * load, load + MISUSE_EXTRA_N)


def misuse_load_n(load_n: float) -> float:
    """Whole downward force of the misuse case, N: W + `misuse_extra_n`."""
    return load_n + misuse_extra_n(load_n)


def sling_tension_n(load_n: float, legs: int, angle_deg: float) -> float:
    """Tension in each of `legs` equal sling legs at `angle_deg` above the horizontal, N: W / (n sin angle).

    Valid for 5 to 90 degrees: flatter legs pull without bound; ValueError outside. A rigid load may hang on two legs
    whatever their number.
    """
    angle = between("sling angle from the horizontal", angle_deg, _SLING_RANGE_DEG, "deg")
    load = not_negative("load", load_n, "N")
    return load / (at_least_one("number of legs", legs) * math.sin(math.radians(angle)))


def drop_force_n(load_n: float, drop_m: float, stiffness_n_per_m: float) -> float:
    """Peak force when a load falls onto an elastic secondary bond, N: W (1 + sqrt(1 + 2 h k / W)).

    ValueError for a load or stiffness not above zero or a negative drop. A drop of nothing still doubles the load.
    """
    load = positive("load", load_n, "N")
    ratio = not_negative("drop", drop_m, "m") * positive("stiffness", stiffness_n_per_m, "N/m") / load
    return load * (1.0 + math.sqrt(1.0 + 2.0 * ratio))


def design_factor(breaking_n: float, load_n: float) -> float:
    """Divide breaking strength by working load, no unit. ValueError for a force not above zero."""
    return positive("breaking strength", breaking_n, "N") / positive("load", load_n, "N")


def joist_line_load_n_per_m(point_n: float, span_m: float) -> float:
    """Uniform load with the bending moment of a point load at midspan, N/m: 2 P / L.

    From P L / 4 = w L^2 / 8. ValueError for a span not above zero.
    """
    return 2.0 * not_negative("point load", point_n, "N") / positive("span", span_m, "m")


def joist_area_load_pa(point_n: float, span_m: float, spacing_m: float) -> float:
    """Spread that load over the area that one joist carries, Pa: 2 P / (L s). ValueError as for the line load."""
    return joist_line_load_n_per_m(point_n, span_m) / positive("joist spacing", spacing_m, "m")


def needs_seismic_anchorage(category: str, mass_kg: float, height_m: float) -> bool:
    """Whether a wall- or ceiling-mounted device calls for designed seismic anchorage.

    True in design categories D, E and F above 20 lb (9.07 kg) and more than 4 ft (1.22 m) above the floor. Lighter or
    lower devices still need positive attachment. ValueError for a negative mass.
    Source: FEMA E-74 (2012), on ASCE 7-10 13.1.4 (read).
    """
    heavy = not_negative("mass", mass_kg, "kg") > _SEISMIC_MASS_KG
    return category in _ANCHORED_CATEGORIES and heavy and height_m > _SEISMIC_HEIGHT_M
