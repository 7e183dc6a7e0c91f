"""A floor plan cut into triangles that keep to its walls and to the creases of its ceiling.

Lengths in metres. Used where a room is neither box nor prism; needs numpy and, to cut, scipy.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

import numpy as np
from numpy.typing import NDArray

from roomlint.figures.conforming import conforming
from roomlint.figures.domain import Refused
from roomlint.roof import Facet

Array = NDArray[np.float64]
Whole = NDArray[np.int64]
Corner = tuple[float, float]

ATTEMPTS = 4
REFINEMENT = 0.7
AREA_SLACK = 1e-6
STEP_SLACK_M = 0.01
TOUCH_M = 1e-4


@dataclass(frozen=True, slots=True, eq=False)
class PlanMesh:
    """Triangles over a plan: corner points, corner indices, ceiling height at each corner of each triangle."""

    points: Array  # (points, 2)
    triangles: Whole  # (triangles, 3)
    heights: Array  # (triangles, 3)


def polygon_area_m2(outline: Sequence[Corner]) -> float:
    """Area of a simple polygon by the shoelace formula, positive whichever way round it is written."""
    x, y = np.asarray(outline, dtype=np.float64).T
    return float(abs(np.dot(x, np.roll(y, -1)) - np.dot(y, np.roll(x, -1))) / 2)


def inside(outline: Sequence[Corner], points: Array) -> NDArray[np.bool_]:
    """Tell which points lie in a simple polygon, by counting how often a ray to the right leaves it."""
    corners = np.asarray(outline, dtype=np.float64)
    following = np.roll(corners, -1, axis=0)
    x, y = points[:, :1], points[:, 1:]
    crosses = (corners[:, 1] > y) != (following[:, 1] > y)
    rise = np.where(following[:, 1] == corners[:, 1], 1.0, following[:, 1] - corners[:, 1])
    at = corners[:, 0] + (y - corners[:, 1]) / rise * (following[:, 0] - corners[:, 0])
    return np.asarray((crosses & (x < at)).sum(axis=1) % 2 == 1)


def _segments(outline: Sequence[Corner], facets: Sequence[Facet]) -> Array:
    """Walls and creases, (segments, 2, 2), cut wherever a corner of another polygon touches them."""
    polygons = [np.asarray(shape, dtype=np.float64) for shape in (outline, *(facet.outline for facet in facets))]
    corners = np.concatenate(polygons)
    pieces: list[tuple[Array, Array]] = []
    for polygon in polygons:
        for start, end in zip(polygon, np.roll(polygon, -1, axis=0), strict=True):
            along = end - start
            length = float(np.hypot(*along))
            if length < TOUCH_M:
                continue
            offset = corners - start
            part = offset @ along / length**2
            aside = np.abs(offset[:, 0] * along[1] - offset[:, 1] * along[0]) / length
            slack = TOUCH_M / length
            cuts = part[(aside < TOUCH_M) & (part > slack) & (part < 1 - slack)]
            stops = np.unique(np.round(np.concatenate([[0.0, 1.0], cuts]), 9))
            pieces.extend((start + low * along, start + high * along) for low, high in pairwise(stops))
    return np.asarray(pieces)


def _scatter(segments: Array, outline: Sequence[Corner], spacing_m: float) -> tuple[Array, Whole]:
    """Points along every segment and, away from them, on a grid inside the plan; and the pieces of the segments."""
    edge_points = []
    for start, end in segments:
        count = max(1, int(np.ceil(np.hypot(*(end - start)) / spacing_m - 1e-9)))
        edge_points.append(start + np.linspace(0, 1, count + 1)[:, None] * (end - start))
    border = np.concatenate(edge_points)
    low, high = border.min(axis=0), border.max(axis=0)
    counts = np.maximum(1, np.ceil((high - low) / spacing_m - 1e-9).astype(int))
    x, y = (np.linspace(low[axis], high[axis], counts[axis] + 1) for axis in (0, 1))
    grid = np.stack([axis.ravel() for axis in np.meshgrid(x, y, indexing="ij")], axis=1)
    grid = grid[inside(outline, grid)]
    start, along = segments[:, 0], segments[:, 1] - segments[:, 0]
    offset = grid[:, None, :] - start
    part = np.clip((offset * along).sum(axis=2) / (along**2).sum(axis=1), 0, 1)
    away = np.linalg.norm(offset - part[:, :, None] * along, axis=2).min(axis=1) > 0.5 * spacing_m
    from scipy.spatial import cKDTree

    every = np.concatenate([border, grid[away]])
    # By distance: rounded to a raster, two points a hair apart can fall to either side of a line and both stay.
    doubles = cKDTree(every).query_pairs(TOUCH_M, output_type="ndarray")
    first = np.ones(len(every), dtype=np.bool_)
    first[doubles[:, 1]] = False
    points = every[first]
    numbers = np.asarray(cKDTree(points).query(border)[1], dtype=np.int64)
    ends = np.cumsum([len(along) for along in edge_points])
    pieces = np.stack([numbers[:-1], numbers[1:]], axis=1)[np.isin(np.arange(1, len(numbers)), ends, invert=True)]
    return points, np.unique(np.sort(pieces[pieces[:, 0] != pieces[:, 1]], axis=1), axis=0)


def _cut(points: Array, pieces: Whole, outline: Sequence[Corner], facets: Sequence[Facet]) -> tuple[PlanMesh, float]:
    """Triangulate, keep what lies in the plan, and take each triangle's ceiling from the facet over its middle."""
    from scipy.spatial import Delaunay

    triangles = conforming(points, Delaunay(points).simplices.astype(np.int64), pieces)
    first, second, third = (points[triangles[:, corner]] for corner in range(3))
    across, along = second - first, third - first
    area = np.abs(across[:, 0] * along[:, 1] - across[:, 1] * along[:, 0]) / 2
    middle = (first + second + third) / 3
    kept = (area > TOUCH_M**2) & inside(outline, middle)
    triangles, middle, area = triangles[kept], middle[kept], area[kept]
    heights = np.full((len(triangles), 3), np.nan)
    for facet in facets:
        under = inside(facet.outline, middle) & np.isnan(heights[:, 0])
        corners = points[triangles[under]]
        heights[under] = facet.a * corners[:, :, 0] + facet.b * corners[:, :, 1] + facet.c
    if np.isnan(heights).any():
        raise Refused("the ceiling leaves a part of the plan open: its pieces must cover the plan")
    # A point that no triangle kept, beside one a hair away on the same wall, would be an unknown without an equation.
    corners_used, numbers = np.unique(triangles, return_inverse=True)
    mesh = PlanMesh(points[corners_used], numbers.reshape(-1, 3).astype(np.int64), heights)
    return mesh, float(area.sum())


def _checked(mesh: PlanMesh, least_height_m: float) -> PlanMesh:
    if mesh.heights.min() < least_height_m:
        raise Refused(
            f"the ceiling comes down to {mesh.heights.min():.2f} m; modes are computed from {least_height_m} m up"
        )
    highest = np.full(len(mesh.points), -np.inf)
    lowest = np.full(len(mesh.points), np.inf)
    np.maximum.at(highest, mesh.triangles, mesh.heights)
    np.minimum.at(lowest, mesh.triangles, mesh.heights)
    step = float((highest - lowest)[np.isfinite(highest)].max())
    if step > STEP_SLACK_M:
        raise Refused(f"the ceiling has a step of {step:.2f} m; only pieces that meet at their edges are modelled")
    return mesh


def mesh_size(outline: Sequence[Corner], facets: Sequence[Facet], spacing_m: float) -> int:
    """About how many unknowns a mesh of that spacing has: corners and middles of sides of its triangles."""
    walls = _edges_m(outline)
    creases = (sum(float(_edges_m(facet.outline).sum()) for facet in facets) - float(walls.sum())) / 2
    border = float(np.ceil(walls / spacing_m).sum()) + 2 * max(creases, 0.0) / spacing_m + len(facets)
    return int(4 * polygon_area_m2(outline) / spacing_m**2 + 3 * border)


def _edges_m(outline: Sequence[Corner]) -> Array:
    corners = np.asarray(outline, dtype=np.float64)
    return np.asarray(np.hypot(*(np.roll(corners, -1, axis=0) - corners).T))


def mesh_plan(
    outline: Sequence[Corner], facets: Sequence[Facet], spacing_m: float, least_height_m: float = 0.3
) -> PlanMesh:
    """Cut a plan into triangles of about `spacing_m`, none across a wall or a crease of the ceiling.

    `outline` is a simple polygon, `facets` cover it without steps. Raises Refused when they do not, when the ceiling
    comes lower than `least_height_m`, or when the plan is too intricate to be cut.
    """
    area = polygon_area_m2(outline)
    segments = _segments(outline, facets)
    for _ in range(ATTEMPTS):
        mesh, covered = _cut(*_scatter(segments, outline, spacing_m), outline, facets)
        if abs(covered / area - 1) < AREA_SLACK:
            return _checked(mesh, least_height_m)
        spacing_m *= REFINEMENT
    raise Refused("the plan is too intricate for its modes to be computed; check its corners for near-doubles")


def locate(mesh: PlanMesh, points: Array) -> tuple[Whole, Array]:
    """Triangle of each point and its three area coordinates there.

    A point outside the plan, which those on a wall are by a hair, is taken to the nearest triangle by its coordinates.
    """
    corners = mesh.points[mesh.triangles]
    origin = corners[:, 0]
    across, along = corners[:, 1] - origin, corners[:, 2] - origin
    twice = across[:, 0] * along[:, 1] - across[:, 1] * along[:, 0]
    offset = points[:, None, :] - origin
    second = (offset[:, :, 0] * along[:, 1] - offset[:, :, 1] * along[:, 0]) / twice
    third = (across[:, 0] * offset[:, :, 1] - across[:, 1] * offset[:, :, 0]) / twice
    shares = np.stack([1 - second - third, second, third], axis=2)
    best = shares.min(axis=2).argmax(axis=1)
    found = np.clip(shares[np.arange(len(points)), best], 0.0, 1.0)
    return best.astype(np.int64), found / found.sum(axis=1, keepdims=True)
