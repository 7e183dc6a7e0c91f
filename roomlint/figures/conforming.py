"""Triangles made to keep to given edges: where a triangulation crosses a crease, edges are flipped until none does.

Source: Sloan, A fast algorithm for generating constrained Delaunay triangulations, Computers and Structures 47 (1993),
441-450; the flipping of crossing edges alone, without restoring the Delaunay property afterwards.
"""

from __future__ import annotations

from collections import deque
from typing import TYPE_CHECKING

import numpy as np

from roomlint.figures.domain import Refused

if TYPE_CHECKING:
    from numpy.typing import NDArray

_FLAT = 1e-12
_MOST_TURNS = 20
"""Times that each crossing edge may come up again before it is given up."""


def conforming(
    points: NDArray[np.float64], triangles: NDArray[np.int64], wanted: NDArray[np.int64]
) -> NDArray[np.int64]:
    """Return triangles over the same points in which every wanted edge, (edges, 2) numbers of points, is one.

    The triangles cover a convex area without holes, and no point lies on a wanted edge but its ends. Raises Refused for
    edges that cross one another.
    """
    there = {_edge(int(a), int(b)) for a, b in _sides(triangles).tolist()}
    missing = [pair for pair in (_edge(int(a), int(b)) for a, b in wanted.tolist()) if pair not in there]
    if not missing:
        return triangles
    mesh = _Flips(points, triangles)
    for start, end in missing:
        mesh.force(start, end)
    return mesh.triangles()


def _sides(triangles: NDArray[np.int64]) -> NDArray[np.int64]:
    return triangles[:, [[0, 1], [1, 2], [2, 0]]].reshape(-1, 2)


def _edge(a: int, b: int) -> tuple[int, int]:
    return (a, b) if a < b else (b, a)


class _Flips:
    """Triangles by their edges: of each edge the corners opposite to it."""

    def __init__(self, points: NDArray[np.float64], triangles: NDArray[np.int64]) -> None:
        self.at: list[tuple[float, float]] = [(x, y) for x, y in points.tolist()]
        self.points = points
        self.opposite: dict[tuple[int, int], set[int]] = {}
        for a, b, c in triangles.tolist():
            for first, second, third in ((a, b, c), (b, c, a), (c, a, b)):
                self.opposite.setdefault(_edge(first, second), set()).add(third)

    def triangles(self) -> NDArray[np.int64]:
        found = {tuple(sorted((*edge, corner))) for edge, corners in self.opposite.items() for corner in corners}
        return np.array(sorted(found), dtype=np.int64)

    def force(self, start: int, end: int) -> None:
        """Flip edges until one runs from start to end."""
        waiting = deque(edge for edge in self._near(start, end) if self._crosses(edge, start, end))
        left = _MOST_TURNS * (len(waiting) + 1)
        while waiting:
            left -= 1
            if left < 0:
                raise Refused("the creases of the ceiling cross one another, so its modes cannot be computed")
            edge = waiting.popleft()
            flipped = self._flip(edge)
            if flipped is None:
                waiting.append(edge)
            elif self._crosses(flipped, start, end):
                waiting.append(flipped)
                left += 1

    def _near(self, start: int, end: int) -> list[tuple[int, int]]:
        edges = np.array(list(self.opposite), dtype=np.int64)
        ends = self.points[edges]
        low, high = np.sort(self.points[[start, end]], axis=0)
        over = (ends.max(axis=1) >= low).all(axis=1) & (ends.min(axis=1) <= high).all(axis=1)
        return [(a, b) for a, b in edges[over].tolist()]

    def _crosses(self, edge: tuple[int, int], start: int, end: int) -> bool:
        a, b = edge
        if {a, b} & {start, end}:
            return False
        one, other = self._turn(start, end, a), self._turn(start, end, b)
        here, there = self._turn(a, b, start), self._turn(a, b, end)
        return one * other < -(_FLAT**2) and here * there < -(_FLAT**2)

    def _turn(self, a: int, b: int, c: int) -> float:
        (ax, ay), (bx, by), (cx, cy) = self.at[a], self.at[b], self.at[c]
        return (bx - ax) * (cy - ay) - (by - ay) * (cx - ax)

    def _flip(self, edge: tuple[int, int]) -> tuple[int, int] | None:
        """Exchange the diagonal of the two triangles on an edge; None where they make no convex four-sided figure."""
        a, b = edge
        corners = sorted(self.opposite[edge])
        if len(corners) != 2:  # noqa: PLR2004  an edge of the whole
            return None
        c, d = corners
        if self._turn(c, d, a) * self._turn(c, d, b) >= -_FLAT:
            return None
        del self.opposite[edge]
        for end, other in ((a, b), (b, a)):
            for corner, far in ((c, d), (d, c)):
                beside = self.opposite[_edge(end, corner)]
                beside.discard(other)
                beside.add(far)
        self.opposite[_edge(c, d)] = {a, b}
        return _edge(c, d)
