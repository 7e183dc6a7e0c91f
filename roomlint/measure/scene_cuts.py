"""Upright sections of a room, exact: where a plane across it meets floor and ceiling, and what edges it shows."""

from __future__ import annotations

from itertools import pairwise
from typing import TYPE_CHECKING, Final

from roomlint import roof
from roomlint.measure.scene import Cut

if TYPE_CHECKING:
    from collections.abc import Sequence

    from roomlint.measure.scene import Spot2
    from roomlint.roof import Facets

_NUDGE_M: Final = 1e-7
"""A cut through a corner is taken a hair beside it, so that it meets two edges there or none."""
_LEAST_M: Final = 1e-4


def cut(kind: str, at_m: float, outline: Sequence[Spot2], facets: Facets) -> Cut:
    """Return the section at x (`long`, along y) or at y (`cross`, along x)."""
    across, along = (0, 1) if kind == "long" else (1, 0)
    floors = tuple(_spans(outline, across, at_m))
    pieces = []
    for facet in facets:
        for low, high in _spans(facet.outline, across, at_m):
            ends = [(at_m, u) if across == 0 else (u, at_m) for u in (low, high)]
            pieces.append(((low, facet.height_m(ends[0])), (high, facet.height_m(ends[1]))))
    return Cut(kind, at_m, floors, tuple(sorted(pieces)), tuple(_beyond(along, outline, facets)))


def _spans(polygon: Sequence[Spot2], across: int, at_m: float) -> list[tuple[float, float]]:
    """Return between which coordinates along the cut a polygon lies."""
    if any(abs(point[across] - at_m) < _NUDGE_M for point in polygon):
        at_m += _NUDGE_M if at_m < max(point[across] for point in polygon) - _NUDGE_M else -2.0 * _NUDGE_M
    met = []
    for start, end in pairwise((*polygon, polygon[0])):
        a, b = start[across] - at_m, end[across] - at_m
        if (a < 0.0) != (b < 0.0):
            met.append(start[1 - across] + (end[1 - across] - start[1 - across]) * a / (a - b))
    met.sort()
    return [(low, high) for low, high in zip(met[0::2], met[1::2], strict=True) if high - low > _LEAST_M]


def _beyond(along: int, outline: Sequence[Spot2], facets: Facets) -> list[tuple[Spot2, Spot2]]:
    """Return the edges of the ceiling's parts and the upright edges of the walls, each once."""
    found: dict[tuple[Spot2, Spot2], None] = {}
    for facet in facets:
        corners = [(point[along], facet.height_m(point)) for point in facet.outline]
        for start, end in pairwise((*corners, corners[0])):
            _add(found, start, end)
    for point in outline if facets else ():
        _add(found, (point[along], 0.0), (point[along], roof.height_m(facets, point)))
    sides = [point[along] for point in outline]
    _add(found, (min(sides), 0.0), (max(sides), 0.0))
    return list(found)


def _add(found: dict[tuple[Spot2, Spot2], None], start: Spot2, end: Spot2) -> None:
    first, last = sorted((_rounded(start), _rounded(end)))
    if first != last:
        found[first, last] = None


def _rounded(point: Spot2) -> Spot2:
    return round(point[0], 6), round(point[1], 6)
