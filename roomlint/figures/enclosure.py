"""The room as one body: its real surfaces, how deep a point is inside, and how clear a solid stands of them.

Floor z = 0, upright walls over the outline, ceiling facets over the plan, heights in m. A wall written as several
pieces is one surface, and so are facets of one plane; each surface keeps the numbers of what it was written as.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from functools import lru_cache
from typing import TYPE_CHECKING, NamedTuple

from roomlint import cutting, plane
from roomlint.figures import convex, solid
from roomlint.figures.domain import Refused
from roomlint.plane import (
    ON_WALL_M,
    Corner,
    Outline,
    Point2,
    Wall,
    contains,
    depth_m,
    foot_on_segment,
    true_corners,
    true_walls,
    turning,
)
from roomlint.roof import FLAT_WITHIN_M, Facet, facet_over

if TYPE_CHECKING:
    from collections.abc import Sequence

    from roomlint.figures.convex import Body
    from roomlint.figures.direction import Point3, Vector3
    from roomlint.figures.solid import Solid
    from roomlint.roof import Facets

# A point this far behind a surface still counts as on it: what is set flush is written to a centimetre.
FLUSH_WITHIN_M = 0.01


@dataclass(frozen=True, slots=True)
class Surface:
    """One plane of the room: normal . point = offset, the unit normal into the room.

    `numbers` are those of its pieces in the outline (a wall's from left to right) or of its facets; the floor's is 0.
    """

    kind: str  # wall, ceiling or floor
    numbers: tuple[int, ...]
    normal: Vector3
    offset_m: float
    wall: Wall | None = None
    parts: tuple[tuple[Point2, ...], ...] = ()

    def off_m(self, point: Point3) -> float:
        """Return how far in front of the plane a point is, m; negative behind it."""
        nx, ny, nz = self.normal
        return nx * point[0] + ny * point[1] + nz * point[2] - self.offset_m

    def number_at(self, point: Point3) -> int:
        """Return the number of the piece or facet that a point of the surface lies on."""
        if len(self.numbers) == 1:
            return self.numbers[0]
        if self.wall is not None:
            return self.wall.piece_at(self.wall.along_m(point[:2]))
        depths = [depth_m(part, point[:2]) for part in self.parts]
        return self.numbers[depths.index(max(depths))]


class Near(NamedTuple):
    """How far from a surface, which kind it is, and the number of its piece there; negative beyond the surface."""

    distance_m: float
    kind: str
    number: int


class Opening(NamedTuple):
    """A door, window or hole in a wall: the piece it is in, from that piece's left end as seen from inside, m."""

    piece: int
    from_left_m: float
    width_m: float
    sill_m: float
    height_m: float


@dataclass(frozen=True, slots=True)
class Enclosure:
    """A room ready to be asked: made once by `enclosure`. Its outline holds the corners at which it turns."""

    outline: tuple[Point2, ...]
    facets: tuple[Facet, ...]
    surfaces: tuple[Surface, ...]
    planes: tuple[tuple[float, float, float, float], ...]
    """Of each surface, its normal and offset."""
    plan_convex: bool
    ceiling_convex: bool
    """Whether the room under its ceiling is convex: no valley, no step."""
    pokes: tuple[Corner, ...]
    """The corners that poke into the room."""
    ceiling_pieces: tuple[Body, ...]
    """The ceiling cut into flat convex pieces, where it is not convex."""

    @property
    def convex(self) -> bool:
        """Whether every two points in the room see each other."""
        return self.plan_convex and self.ceiling_convex

    def height_m(self, point: Point2) -> float:
        """Return the height of the ceiling over a point of the plan, m."""
        return facet_over(self.facets, point).height_m(point)

    def holds(self, surface: Surface, point: Point3) -> bool:
        """Say whether a point of a surface's plane lies on the surface itself, to a tenth of a millimetre."""
        flat = point[:2]
        if surface.wall is not None:
            on_wall = -ON_WALL_M <= surface.wall.along_m(flat) <= surface.wall.length_m + ON_WALL_M
            return on_wall and -ON_WALL_M <= point[2] <= self.height_m(flat) + ON_WALL_M
        return any(contains(part, flat) for part in surface.parts)


@lru_cache(maxsize=64)
def enclosure(outline: tuple[Point2, ...], facets: tuple[Facet, ...], kept: tuple[int, ...] | None = None) -> Enclosure:
    """Return a room ready to be asked, from its outline (either way round) and the ceiling's facets over it.

    The outline is simple (see `roomlint.plane.why_not_simple`) and the facets cover it. For a room whose corners are
    moved about by what a tape may be out, `kept` says at which corners the room as drawn turns (`plane.turning`), so
    that a straight wall stays one.
    """
    kept = turning(outline) if kept is None else kept
    walls = _walls(outline, kept)
    pokes = tuple(corner for corner in true_corners(outline, kept) if corner.reentrant)
    outline = tuple(outline[number] for number in kept)
    surfaces = (*walls, Surface("floor", (0,), (0.0, 0.0, 1.0), 0.0, parts=(outline,)), *_ceiling(facets))
    arched = all(
        one.height_m(corner) >= other.height_m(corner) - FLAT_WITHIN_M
        for one in facets
        for other in facets
        for corner in other.outline
    )
    pieces = () if arched else _pieces(outline, [surface for surface in surfaces if surface.kind == "ceiling"])
    planes = tuple((*surface.normal, surface.offset_m) for surface in surfaces)
    return Enclosure(outline, facets, surfaces, planes, not pokes, arched, pokes, pieces)


def room(outline: Outline, facets: Facets, kept: Sequence[int] | None = None) -> Enclosure:
    """Return `enclosure` of any sequences."""
    return enclosure(tuple(outline), tuple(facets), None if kept is None else tuple(kept))


def nearest_surface(shape: Enclosure, point: Point3) -> Near:
    """Return the surface nearest to a point and how far it is, m: positive in the room, negative outside it.

    In the room it is the straight distance, square to a slope as to a wall. Outside, the largest of how far the point
    is beyond the walls, under the floor and above the ceiling.
    """
    flat = point[:2]
    walls = [surface for surface in shape.surfaces if surface.wall is not None]
    aside = depth_m(shape.outline, flat)
    _, number = min(
        (_from_wall_m(surface.wall, flat), n) for n, surface in enumerate(walls) if surface.wall is not None
    )
    found = [Near(aside, "wall", walls[number].number_at(point)), Near(point[2], "floor", 0)]
    over = facet_over(shape.facets, flat)
    if shape.ceiling_convex:
        for surface in shape.surfaces:
            if surface.kind == "ceiling":
                off = surface.off_m(point)
                found.append(Near(off, "ceiling", surface.number_at(point)))
    else:
        above = over.height_m(flat) - point[2]
        steep = -over.normal[2]
        own = Near(above * steep, "ceiling", shape.facets.index(over))
        if above > 0.0:
            alone = convex.Body((point,), (), (), ((point, point),))
            nearest = min(convex.gap_m(alone, piece) for piece in shape.ceiling_pieces)
            own = own._replace(distance_m=nearest)
        found.append(own)
    return min(found, key=lambda near: near.distance_m)


def solid_clearance(shape: Enclosure, thing: Solid, *, floor: bool = True) -> Near:
    """Return how clear a solid stands of the room's surfaces, m, and the surface where it is tightest.

    What stands on the floor is held against the others alone.

    Negative: how far it pokes through. In a convex room it is exact either way: the least over the planes of the
    solid's nearest corner. Elsewhere what is clear is exact, and through a wall it is how far the farthest corner is
    outside, or how far a corner of the room reaches into the solid: never 0 when they overlap, but where several
    corners poke through, a bound from below of the move that would clear it.
    """
    low, _ = solid.heights_m(thing)
    found = [_clear_of_walls(shape, thing), _clear_of_ceiling(shape, thing)]
    if floor:
        found.append(Near(low, "floor", 0))
    return min(found, key=lambda near: near.distance_m)


def refuse_outside(shape: Enclosure, point: Point3) -> None:
    """Raise `Refused` for a point more than a centimetre outside the room."""
    flat = point[:2]
    inside = contains(shape.outline, flat, FLUSH_WITHIN_M)
    if not (inside and -FLUSH_WITHIN_M <= point[2] <= shape.height_m(flat) + FLUSH_WITHIN_M):
        raise Refused("the point lies outside the room")


def wall_of(shape: Enclosure, piece: int) -> tuple[Wall, float]:
    """Return the wall that a piece of the outline belongs to, and how far from its left end the piece begins, m."""
    for surface in shape.surfaces:
        if surface.wall is not None and piece in surface.wall.pieces:
            return surface.wall, surface.wall.starts_m[surface.wall.pieces.index(piece)]
    raise Refused(f"the outline has no wall {piece}")


def before_opening(shape: Enclosure, opening: Opening, reach_m: float = 0.0) -> solid.Upright:
    """Return an opening as a solid: without thickness, or the room in front of it as deep as `reach_m`."""
    wall, start = wall_of(shape, opening.piece)
    first = start + opening.from_left_m
    last = first + opening.width_m
    ends = [wall.at(first), wall.at(last)]
    if reach_m > 0.0:
        ends += [wall.at(last, reach_m), wall.at(first, reach_m)]
    return solid.Upright(convex.hull(ends), opening.sill_m, opening.sill_m + opening.height_m)


def gap_on_wall_m(shape: Enclosure, thing: Solid, opening: Opening) -> float:
    """Return the gap between a solid and an opening as the wall's elevation shows them, m; negative: they overlap.

    The solid is seen square on to the wall, however far off it stands. Exact for what is upright; of a leaning box the
    extent along the wall and in height is taken, so the gap is told too small at most.
    """
    wall, start = wall_of(shape, opening.piece)
    first = start + opening.from_left_m
    along = [wall.along_m(point) for point in solid.footprint(thing)]
    wide = solid.radius_m(thing)
    low, high = solid.heights_m(thing)
    beside = max(first - max(along), min(along) - first - opening.width_m) - wide
    above = max(opening.sill_m - high, low - opening.sill_m - opening.height_m)
    return math.hypot(beside, above) if beside > 0.0 and above > 0.0 else max(beside, above)


def depth_on_wall_m(shape: Enclosure, spot: Opening) -> float:
    """Return how far inside its wall a rectangle of the wall's elevation lies, m; negative: how far it sticks out.

    The least of its distances to the wall's ends, the floor and the ceiling over its two sides: exact under a ceiling
    without a valley. A wall in pieces is one wall. Raises `Refused` for a piece that the outline has not.
    """
    wall, start = wall_of(shape, spot.piece)
    first = start + spot.from_left_m
    last = first + spot.width_m
    sides = [wall.at(min(max(along, 0.0), wall.length_m)) for along in (first, last)]
    above = min(shape.height_m(side) for side in sides) - spot.sill_m - spot.height_m
    return min(first, wall.length_m - last, spot.sill_m, above)


def clear_beside_m(shape: Enclosure, thing: Solid, piece: int | None) -> float:
    """Return how clear a solid that is fixed to a wall (its piece) or to the ceiling (None) is of all others, m.

    Negative: how far it pokes through. On a wall the others are floor, ceiling and the walls that meet it in a corner
    of the room, not one that pokes into it; what is sunk into the wall is held against the ceiling at the wall's face,
    plumb. At the ceiling they are the floor and all walls. Raises `Refused` for a piece that the outline has not.
    """
    low, _ = solid.heights_m(thing)
    if piece is None:
        return min(low, _clear_of_walls(shape, thing).distance_m)
    own, _ = wall_of(shape, piece)
    poking = {corner.point for corner in shape.pokes}
    points = solid.body(thing).points
    found = [low]
    for wall in (surface.wall for surface in shape.surfaces):
        if wall is None or wall is own:
            continue
        met = {own.left: wall.right, own.right: wall.left}
        if any(end == other and end not in poking for end, other in met.items()):
            found += [wall.off_m(point[:2]) for point in points]
    for x, y, z in points:
        sunk = max(-own.off_m((x, y)), 0.0)
        found.append(shape.height_m((x + sunk * own.inward[0], y + sunk * own.inward[1])) - z)
    return min(found)


def _walls(outline: Outline, kept: Sequence[int]) -> list[Surface]:
    found = []
    for wall in true_walls(outline, kept):
        nx, ny = wall.inward
        offset = nx * wall.left[0] + ny * wall.left[1]
        found.append(Surface("wall", wall.pieces, (nx, ny, 0.0), offset, wall))
    return found


def _ceiling(facets: tuple[Facet, ...]) -> list[Surface]:
    """Gather facets of one plane: their heights agree at each other's corners to a hundredth of a millimetre."""
    groups: list[list[int]] = []
    for number, facet in enumerate(facets):
        for group in groups:
            first = facets[group[0]]
            if all(abs(first.height_m(corner) - facet.height_m(corner)) < ON_WALL_M / 10 for corner in facet.outline):
                group.append(number)
                break
        else:
            groups.append([number])
    found = []
    for group in groups:
        normal = facets[group[0]].normal
        offset = normal[2] * facets[group[0]].c
        found.append(Surface("ceiling", tuple(group), normal, offset, parts=tuple(facets[n].outline for n in group)))
    return found


def _pieces(outline: tuple[Point2, ...], ceilings: Sequence[Surface]) -> tuple[Body, ...]:
    """Cut a ceiling with a valley into flat convex pieces.

    Two planes part the plan along the line on which they meet, whatever the plan; more are triangles already.
    """
    triangles = [tuple(outline[i] for i in corners) for corners in cutting.triangulated(outline)]
    found = []
    for surface in ceilings:
        if len(ceilings) == 2:  # noqa: PLR2004  a valley between two slopes
            other = next(one for one in ceilings if one is not surface)
            (a, b, c), (d, e, f) = (_slope(one) for one in (surface, other))
            areas = [cutting.clipped(triangle, (d - a, e - b), c - f) for triangle in triangles]
        else:
            areas = [
                tuple(part[i] for i in corners) for part in surface.parts for corners in cutting.triangulated(part)
            ]
        a, b, c = _slope(surface)
        for area in areas:
            corners = convex.hull(area)
            if len(corners) > 2 and plane.area_m2(corners) > ON_WALL_M**2:  # noqa: PLR2004  a polygon
                found.append(convex.flat([(x, y, a * x + b * y + c) for x, y in corners]))
    return tuple(found)


def _slope(surface: Surface) -> tuple[float, float, float]:
    nx, ny, nz = surface.normal
    return -nx / nz, -ny / nz, surface.offset_m / nz


def _from_wall_m(wall: Wall, point: Point2) -> float:
    return math.dist(point, foot_on_segment(point, wall.left, wall.right))


def _clear_of_walls(shape: Enclosure, thing: Solid) -> Near:
    points, radius = solid.footprint(thing), solid.radius_m(thing)
    sides = [surface.wall for surface in shape.surfaces if surface.wall is not None]
    if shape.plan_convex:
        least = min((wall.off_m(point), n, point) for n, wall in enumerate(sides) for point in points)
        distance, number, at = least
        return Near(distance - radius, "wall", sides[number].piece_at(sides[number].along_m(at)))
    # How deep each corner of the solid is inside the room, and how deep the room's own corners are inside the solid.
    deep, worst = min((depth_m(shape.outline, point), point) for point in points)
    gaps = [convex.plan_gap_m(points, (wall.left, wall.right)) for wall in sides]
    if deep < 0.0 or min(gaps) < 0.0:
        through = min((gap, n) for n, gap in enumerate(gaps))[1]
        reach = max((-convex.plan_gap_m(points, (corner.point,)) for corner in shape.pokes), default=0.0)
        # A wall that runs right through without a corner inside is told by the least move off it.
        most = max(-deep, reach, 0.0) or -gaps[through]
        at = worst if -deep >= reach else sides[through].left
        number = min((_from_wall_m(wall, at), n) for n, wall in enumerate(sides))[1] if deep < 0.0 else through
        wall = sides[number]
        return Near(-most - radius, "wall", wall.piece_at(wall.along_m(at)))
    distance, number = min((gap, n) for n, gap in enumerate(gaps))
    wall = sides[number]
    at = min(points, key=lambda point: _from_wall_m(wall, point))
    return Near(distance - radius, "wall", wall.piece_at(wall.along_m(at)))


def _clear_of_ceiling(shape: Enclosure, thing: Solid) -> Near:
    points = [(x, y, thing.high_m) for x, y in thing.plan] if isinstance(thing, solid.Upright) else thing.corners
    radius = solid.radius_m(thing)
    ceilings = [surface for surface in shape.surfaces if surface.kind == "ceiling"]
    if shape.ceiling_convex:
        distance, number, at = min(
            (surface.off_m(point) - radius * math.hypot(*surface.normal[:2]), n, point)
            for n, surface in enumerate(ceilings)
            for point in points
        )
        return Near(distance, "ceiling", ceilings[number].number_at(at))
    body = solid.body(thing)
    above, highest = max((z - shape.height_m((x, y)), (x, y)) for x, y, z in body.points)
    over = facet_over(shape.facets, highest)
    if above > 0.0:
        return Near(above * over.normal[2], "ceiling", shape.facets.index(over))
    least = min(convex.gap_m(body, piece) for piece in shape.ceiling_pieces)
    return Near(least, "ceiling", shape.facets.index(over))
