"""What may be cut out of sawn studs and joists, and what fits between them."""

from __future__ import annotations

from typing import Final, Literal

from roomlint.figures.domain import not_negative, positive

Member = Literal["stud", "joist"]
CutKind = Literal["hole", "notch", "end-notch"]
Chase = Literal["upright-chase", "level-chase"]

_STUD: Final = {("notch", True): 25.0, ("notch", False): 40.0, ("hole", True): 40.0, ("hole", False): 60.0}
_DOUBLED: Final = 60.0
_JOIST: Final = {"hole": 100.0 / 3.0, "notch": 100.0 / 6.0, "end-notch": 25.0}
EDGE_M: Final[dict[Member, float]] = {"stud": 0.015875, "joist": 0.0508}
"""Wood that is left between a hole and the edge of its member: 5/8 in and 2 in."""
NOTCH_LENGTH_PERCENT: Final = 100.0 / 3.0
"""Longest notch of a joist by its depth: a third (IRC R502.8.1)."""
CHASE_PERCENT: Final[dict[Chase, float]] = {"upright-chase": 100.0 / 3.0, "level-chase": 100.0 / 6.0}
"""Deepest chase by the thickness of the leaf that it is cut into: a third upright, a sixth level (Approved Document A
to the Building Regulations of England, 2C, as a builder's guide tells it)."""
APART_M: Final = 0.0508
"""Wood along a joist between a hole and the next hole or notch: 2 in."""


def cut_percent(size_m: float, depth_m: float) -> float:
    """Share of a member's depth that a hole or a notch takes, %: 100 d / D.

    d is the diameter of a hole or the depth of a notch, D the depth of the stud or joist, both in m. Refused for a
    depth not above zero or a negative cut. Source: the way that IRC R602.6 and R502.8.1 count (R502.8.1 read in a
    state's copy of an earlier edition, R602.6 there and second-hand).
    """
    return 100.0 * not_negative("size of the cut", size_m, "m") / positive("depth of the member", depth_m, "m")


def most_to_edge_m(size_m: float, depth_m: float) -> float:
    """Most wood that a hole can leave to the nearest edge of its member, m: (D - d) / 2, in the middle; 0 at the least.

    d is the diameter of the hole, D the depth of the member, both in m. Refused as `cut_percent` is. Source: geometry;
    a hole of 1 in in the middle of 3-1/2 in leaves 1-1/4 in.
    """
    return max(positive("depth of the member", depth_m, "m") - not_negative("size of the cut", size_m, "m"), 0.0) / 2.0


def greatest_cut_percent(member: Member, kind: CutKind, *, bearing: bool, doubled: bool = False) -> float:
    """Largest share of a sawn member's depth that may be cut, %.

    Studs (IRC R602.6): notch 25 where they bear, else 40; hole 40 where they bear, 60 where they do not or are doubled.
    Joists, rafters and beams (IRC R502.8.1): hole a third, notch a sixth, notch at the end a quarter; they always bear.
    A notch at the end of a stud counts as any notch. Source: as for `cut_percent`.
    """
    if member == "joist":
        return _JOIST[kind]
    if kind == "hole" and doubled:
        return _DOUBLED
    return _STUD["hole" if kind == "hole" else "notch", bearing]


def clear_between_m(spacing_m: float, member_width_m: float) -> float:
    """Clear width between two studs or joists, m: s - b.

    s is the distance of their centres, b the width of their faces. Refused where the members leave nothing between.
    Source: geometry; 16 in less 1-1/2 in are 14-1/2 in.
    """
    return positive(
        "clear width between members", spacing_m - not_negative("width of a member", member_width_m, "m"), "m"
    )
