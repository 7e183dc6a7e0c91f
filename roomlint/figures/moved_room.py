"""How the pressure in a room changes when its walls and its ceiling stand a little elsewhere: Hadamard's formula.

Solving the room anew for each length that a tape may be off by would cost more than all else together, and two meshes
that differ by a hair differ by more than the hair. The first order needs the room as it was solved alone.
Lengths in metres.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np

from roomlint import cutting, roof

if TYPE_CHECKING:
    from collections.abc import Sequence

    from numpy.typing import NDArray

    from roomlint.figures.modal_sum import Array, ComplexArray, Points
    from roomlint.figures.room_response import RoomResponse
    from roomlint.plane import Outline, Point2
    from roomlint.roof import Facets

SPACING_M = 0.5
"""Side of a triangle: a sixth of the shortest wave to 114 Hz, and twice what a cabinet stands off its wall."""
AT_ONCE = 250
"""Points of the skin that are heard together: the memory that they take is bounded."""


@dataclass(frozen=True, slots=True, eq=False)
class Skin:
    """The walls and the ceiling of a room as triangles; the floor stays where it is. Made by `skin`."""

    points: Array  # (points, 3)
    triangles: NDArray[np.int64]  # (triangles, 3)
    walls: NDArray[np.int64]  # (triangles,) the number of the wall, -1 of the ceiling
    along: Array  # (triangles,) how far along its wall a triangle's middle is, as a share

    def swept_m3(self, outline: Outline, moved: Outline, facets: Facets) -> Array:
        """Return the volume that each triangle sweeps outwards, m3, where the room gets another outline and ceiling.

        A wall is taken from its ends, which keep their numbers, the ceiling at the same place of the plan.
        """
        corners = self.points[self.triangles]
        first, second = corners[:, 1] - corners[:, 0], corners[:, 2] - corners[:, 0]
        upright = self.walls >= 0
        out = np.zeros(len(self.triangles))
        here, there = np.asarray(outline), np.asarray(moved)
        way = np.roll(here, -1, axis=0) - here
        normal = np.stack([-way[:, 1], way[:, 0]], axis=1) / np.hypot(*way.T)[:, None]
        starts = ((there - here) * normal).sum(axis=1)
        ends = (np.roll(there - here, -1, axis=0) * normal).sum(axis=1)
        of, share = self.walls[upright], self.along[upright]
        area = np.linalg.norm(np.cross(first, second), axis=1) / 2
        out[upright] = area[upright] * (starts[of] * (1 - share) + ends[of] * share)
        middles = corners[~upright].mean(axis=1)
        rise = [roof.height_m(facets, (x, y)) - z for x, y, z in middles.tolist()]
        plan = np.abs(first[:, 0] * second[:, 1] - first[:, 1] * second[:, 0]) / 2
        out[~upright] = plan[~upright] * np.asarray(rise)
        return out


def skin(outline: Outline, facets: Facets, spacing_m: float = SPACING_M) -> Skin:
    """Cut the walls and the ceiling of a room, corners clockwise seen from above, into triangles of about a spacing."""
    points: list[tuple[float, float, float]] = []
    triangles: list[tuple[int, int, int]] = []
    walls: list[int] = []
    along: list[float] = []
    for number, start in enumerate(outline):
        _cut_wall(start, outline[(number + 1) % len(outline)], facets, spacing_m, points, triangles)
        walls += [number] * (len(triangles) - len(walls))
    way = np.roll(np.asarray(outline), -1, axis=0) - np.asarray(outline)
    for number, corners in zip(walls, triangles, strict=True):
        middle = np.mean([points[corner][:2] for corner in corners], axis=0) - outline[number]
        along.append(float(middle @ way[number] / (way[number] @ way[number])))
    for facet in facets:
        for cut in cutting.triangles(facet.outline):
            _cut_facet(cut, facet, spacing_m, points, triangles)
    ceiling = len(triangles) - len(walls)
    return Skin(
        np.asarray(points), np.asarray(triangles, dtype=np.int64),
        np.asarray(walls + [-1] * ceiling, dtype=np.int64), np.asarray(along + [0.0] * ceiling),
    )  # fmt: skip


def _cut_wall(
    start: Point2, end: Point2, facets: Facets, spacing_m: float,
    points: list[tuple[float, float, float]], triangles: list[tuple[int, int, int]],
) -> None:  # fmt: skip
    columns = max(1, int(np.ceil(np.hypot(end[0] - start[0], end[1] - start[1]) / spacing_m)))
    feet = [
        (start[0] + share * (end[0] - start[0]), start[1] + share * (end[1] - start[1]))
        for share in np.linspace(0.0, 1.0, columns + 1).tolist()
    ]
    heights = [roof.height_m(facets, foot) for foot in feet]
    rows = max(1, int(np.ceil(max(heights) / spacing_m)))
    first = len(points)
    points += [
        (*foot, height * row / rows) for foot, height in zip(feet, heights, strict=True) for row in range(rows + 1)
    ]
    for column in range(columns):
        for row in range(rows):
            low = first + column * (rows + 1) + row
            triangles += [(low, low + 1, low + rows + 1), (low + 1, low + rows + 2, low + rows + 1)]


def _cut_facet(
    corners: Sequence[Point2], facet: roof.Facet, spacing_m: float,
    points: list[tuple[float, float, float]], triangles: list[tuple[int, int, int]],
) -> None:  # fmt: skip
    """Cut a triangle of the plan into as many along each side, and lift them to the facet."""
    a, b, c = np.asarray(corners)
    sides = [float(np.hypot(*(one - other))) for one, other in ((a, b), (b, c), (c, a))]
    count = max(1, int(np.ceil(max(sides) / spacing_m)))
    numbers: dict[tuple[int, int], int] = {}
    for i in range(count + 1):
        for j in range(count + 1 - i):
            x, y = (a + (b - a) * i / count + (c - a) * j / count).tolist()
            numbers[i, j] = len(points)
            points.append((x, y, facet.height_m((x, y))))
    for i in range(count):
        for j in range(count - i):
            triangles.append((numbers[i, j], numbers[i + 1, j], numbers[i, j + 1]))
            if i + j < count - 1:
                triangles.append((numbers[i + 1, j], numbers[i + 1, j + 1], numbers[i, j + 1]))


def heard(
    response: RoomResponse, points: Array, places: Points, frequencies_hz: Sequence[float], decays_s: Sequence[float]
) -> list[ComplexArray]:
    """Return the pressure at points of a skin of a source at each place, (points, places, frequencies), for each decay.

    As `Paths.transfer`, but a place may lie on the surface: nearer than a loudspeaker is large it is rounded off.
    """
    found: list[list[ComplexArray]] = [[] for _ in decays_s]
    weights = [response.weights(frequencies_hz, decay_s) for decay_s in decays_s]
    for start in range(0, len(points), AT_ONCE):
        paths = response.paths(places, points[start : start + AT_ONCE], near=True)
        for number, weight in enumerate(weights):
            found[number].append(paths.weighed(weight))
    return [np.concatenate(parts) for parts in found]


def change(
    of: Skin, swept_m3: Array, at_sources: ComplexArray, at_ears: ComplexArray, k2: ComplexArray
) -> ComplexArray:
    """Return how the pressure of `Paths.transfer` changes, (ears, sources, frequencies), when a skin moves outwards.

    dG = integral over the skin of (k^2 G_ear G_source - grad G_ear . grad G_source) n, n how far it moves outwards.
    `at_sources` and `at_ears` are what is `heard` on the skin, `k2` is complex k^2 in 1/m2; sources and ears stay where
    they are. Holds for moves that are small against a wavelength and against the way to the nearest source: for moves
    of a centimetre within a tenth of the change. Source: Hadamard's variation of Green's function, rigid walls,
    textbook.
    """
    moved = np.flatnonzero(np.abs(swept_m3) > 0.0)
    corners, share = of.triangles[moved], swept_m3[moved]
    first, second = (of.points[corners[:, n]] - of.points[corners[:, 0]] for n in (1, 2))
    one, both, other = ((first * first).sum(1), (first * second).sum(1), (second * second).sum(1))
    flat = one * other - both**2
    # The slopes of a linear function on a triangle, by its differences along two sides.
    inverse = (other / flat, -both / flat, one / flat)

    def parts(heard: ComplexArray) -> tuple[ComplexArray, ComplexArray, ComplexArray]:
        a, b, c = (heard[corners[:, n]] for n in range(3))
        return (a + b + c) / 3, b - a, c - a

    (ear, ear_1, ear_2), (source, source_1, source_2) = parts(at_ears), parts(at_sources)

    def summed(weight: Array, here: ComplexArray, there: ComplexArray) -> ComplexArray:
        found: ComplexArray = np.einsum("t,tef,tsf->esf", weight, here, there, optimize=True)
        return found

    slopes = summed(share * inverse[0], ear_1, source_1) + summed(share * inverse[2], ear_2, source_2)
    slopes += summed(share * inverse[1], ear_1, source_2) + summed(share * inverse[1], ear_2, source_1)
    return np.asarray((k2 * summed(share, ear, source) - slopes) / (4 * np.pi))
