"""Whether a free-standing display or loudspeaker stays on its feet: plain statics and the published pushes."""

import math
from typing import Final, Literal

from roomlint.figures.domain import not_negative, positive

StabilityEdition = Literal["2014", "2018"]

# Edition of IEC 62368-1, clause 8.6.5: (share of the weight, ceiling in N).
_PUSH: Final[dict[StabilityEdition, tuple[float, float]]] = {"2014": (0.13, 100.0), "2018": (0.20, 250.0)}


def tip_angle_deg(edge_distance_m: float, gravity_height_m: float) -> float:
    """Slope at which a standing body tips, degrees: arctan(d / h).

    d is the horizontal distance from the centre of gravity to the nearest tipping edge (for feet, to the line between
    them), h the height of the centre of gravity. A centre of gravity outside the edge is given as d = 0.
    Refused for a height not above zero or a negative distance. Source: statics; UL 1678 16.3.1 asks 10 degrees of
    television stands (read second-hand).
    """
    distance = not_negative("distance to the tipping edge", edge_distance_m, "m")
    return math.degrees(math.atan2(distance, positive("height of the centre of gravity", gravity_height_m, "m")))


def stacked_centre_m(lower_kg: float, lower_m: float, upper_kg: float, upper_m: float) -> float:
    """Height of the common centre of gravity of two bodies, m: sum(m h) / sum(m).

    Refused for masses whose sum is not above zero, or a negative mass or height. Source: statics.
    """
    lower, upper = not_negative("mass of the stand", lower_kg, "kg"), not_negative("mass", upper_kg, "kg")
    moment = lower * not_negative("height", lower_m, "m") + upper * not_negative("height", upper_m, "m")
    return moment / positive("whole mass", lower + upper, "kg")


def push_over_n(load_n: float, edge_distance_m: float, push_height_m: float) -> float:
    """Horizontal push that tips a standing body, N: W d / h, h the height of the push above the floor.

    Refused for a height not above zero or a negative load or distance. Source: statics, sliding disregarded.
    """
    moment = not_negative("weight", load_n, "N") * not_negative("tipping edge distance", edge_distance_m, "m")
    return moment / positive("height of the push", push_height_m, "m")


def required_push_n(load_n: float, edition: StabilityEdition = "2018") -> float:
    """Horizontal force that equipment must bear without tipping, N: a share of its weight with a ceiling.

    2018: the lesser of 20 % and 250 N (masses above 25 kg); 2014: the lesser of 13 % and 100 N (above 7 kg).
    Refused for a negative weight. Source: IEC 62368-1 8.6.5 (read second-hand; mass classes from memory).
    """
    share, ceiling = _PUSH[edition]
    return min(share * not_negative("weight", load_n, "N"), ceiling)
