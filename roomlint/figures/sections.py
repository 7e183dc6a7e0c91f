"""Plane sections of a room and their modes: any right-angled plan, or an upright cut under sloping ceilings.

A section is cut into strips. Over each strip the pressure is a polynomial in x, in y the same (or in the share of the
height), joined without a gap: Ritz's method with a few hundred unknowns, all of whose modes are found at once. Lengths
in metres.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from functools import lru_cache
from itertools import pairwise
from typing import TYPE_CHECKING, TypeAlias

import numpy as np
from numpy.polynomial import legendre

from roomlint.figures.domain import Refused
from roomlint.figures.plan_mesh import inside
from roomlint.plane import area_m2

if TYPE_CHECKING:
    from collections.abc import Callable, Sequence

    from numpy.typing import NDArray

    from roomlint.figures.modal_sum import Array

_Cell: TypeAlias = tuple[int, int, slice, slice]

MOST_UNKNOWNS = 1000  # found in half a second; the time grows with the cube
SPARE_DEGREES = 4
LEAST_DEGREE = 2
ONE_LINE_M = 1e-3


@dataclass(frozen=True, slots=True, eq=False)
class Section:
    """All modes of a section as found, and how to evaluate them."""

    outline: tuple[tuple[float, float], ...]  # its corners, anticlockwise
    area_m2: float
    wavenumbers_squared: Array  # (modes,)
    modes: Array  # (unknowns, modes), each of mean square 1/area
    rows: Callable[[Array], Array]  # points (points, 2) to what each unknown adds there, (points, unknowns)

    def shapes(self, points: Array) -> Array:
        """Return the modes' shapes at points of the section, (points, modes)."""
        return np.asarray(self.rows(points) @ self.modes)


@dataclass(frozen=True, slots=True, eq=False)
class _Line:
    """One axis cut into strips: where, of which degree, and at which unknown each begins."""

    breaks: Array
    degrees: tuple[int, ...]

    @property
    def starts(self) -> tuple[int, ...]:
        return (0, *np.cumsum(self.degrees).tolist())

    @property
    def unknowns(self) -> int:
        return sum(self.degrees) + 1

    def rows(self, at: Array) -> Array:
        """Values of the unknowns' polynomials along the axis, (points, unknowns)."""
        strip = np.clip(np.searchsorted(self.breaks, at, side="right") - 1, 0, len(self.degrees) - 1)
        found = np.zeros((at.size, self.unknowns))
        for number, degree in enumerate(self.degrees):
            here = np.flatnonzero(strip == number)
            if here.size:
                low, high = self.breaks[number : number + 2]
                values = legendre.legvander(2 * (at[here] - low) / (high - low) - 1, degree) @ _nodal(degree)
                start = self.starts[number]
                found[here[:, None], np.arange(start, start + degree + 1)] = values
        return found


@lru_cache(maxsize=64)
def _nodal(degree: int) -> Array:
    """Legendre coefficients of the polynomials that are 1 at one Lobatto point and 0 at the others, by column."""
    inner = legendre.legroots(legendre.legder(np.eye(degree + 1)[degree])) if degree > 1 else np.zeros(0)
    points = np.concatenate([[-1.0], np.sort(inner.real), [1.0]])
    return np.asarray(np.linalg.inv(legendre.legvander(points, degree)))


@lru_cache(maxsize=64)
def _reference(degree: int, points: int) -> tuple[Array, Array, Array, Array]:
    """Gauss points and shares on -1 to 1, and the strip's polynomials and their slopes there."""
    at, share = legendre.leggauss(points)
    slopes = np.stack([legendre.legval(at, legendre.legder(row)) for row in np.eye(degree + 1)], axis=1)
    return at, share, legendre.legvander(at, degree) @ _nodal(degree), slopes @ _nodal(degree)


def _degree(width_m: float, k: float, finer: int) -> int:
    """Polynomial degree over a strip: one a radian of the shortest wave, and spare ones where a wave bends at all."""
    radians = k * width_m
    return max(LEAST_DEGREE, math.ceil(radians + SPARE_DEGREES * radians / (1 + radians) - 1e-9)) + finer


def _line(breaks: Sequence[float], k: float, finer: int) -> _Line:
    return _Line(np.asarray(breaks), tuple(_degree(high - low, k, finer) for low, high in pairwise(breaks)))


def _solved(
    stiffness: Array, mass: Array, outline: Sequence[tuple[float, float]], rows: Callable[[Array], Array]
) -> Section:
    """Find all modes of stiffness u = k^2 mass u by Cholesky's reduction to an ordinary symmetric problem."""
    inverse = np.linalg.inv(np.linalg.cholesky(mass))
    squares, vectors = np.linalg.eigh(inverse @ stiffness @ inverse.T)
    squares[0] = 0.0  # the pressure zone, exactly
    return Section(tuple(outline), area_m2(outline), squares, inverse.T @ vectors, rows)


def _bounded(unknowns: int, what: str) -> None:
    if unknowns > MOST_UNKNOWNS:
        raise Refused(
            f"{what} is too large or too intricate for its modes to be found one by one: it would take {unknowns}"
            f" unknowns, and {MOST_UNKNOWNS} are the most"
        )


def _used(across: _Line, along: _Line, kept: NDArray[np.bool_]) -> tuple[NDArray[np.bool_], list[_Cell]]:
    """Which unknowns of the grid belong to the plan, and which of them to each cell."""
    used = np.zeros((across.unknowns, along.unknowns), dtype=np.bool_)
    parts = [
        (i, j, slice(across.starts[i], across.starts[i + 1] + 1), slice(along.starts[j], along.starts[j + 1] + 1))
        for i, j in np.argwhere(kept).tolist()
    ]
    for _, _, columns, lines in parts:
        used[columns, lines] = True
    return used, parts


def check_plan(outline: Sequence[tuple[float, float]], k: float) -> None:
    """Raise ValueError, before anything is solved, when `plan_section` would take too many unknowns."""
    x_breaks, y_breaks, kept = cells(outline)
    used, _ = _used(_line(x_breaks, k, 0), _line(y_breaks, k, 0), kept)
    _bounded(int(used.sum()), "the plan")


def check_upright(breaks: Sequence[float], heights: Sequence[float], k: float) -> None:
    """Raise ValueError, before anything is solved, when `upright_section` would take too many unknowns."""
    _bounded(_line(breaks, k, 0).unknowns * (_degree(max(heights), k, 0) + 1), "the section under the slopes")


def cells(outline: Sequence[tuple[float, float]]) -> tuple[list[float], list[float], NDArray[np.bool_]]:
    """Cut a right-angled plan along all its walls: the strips' ends in x and y, and which cells belong to it."""
    x_breaks, y_breaks = (_apart(sorted(axis)) for axis in np.asarray(outline).T.tolist())
    middles = [[(low + high) / 2 for low, high in pairwise(ends)] for ends in (x_breaks, y_breaks)]
    grid = np.stack([axis.ravel() for axis in np.meshgrid(*middles, indexing="ij")], axis=1)
    return x_breaks, y_breaks, inside(outline, grid).reshape(len(middles[0]), len(middles[1]))


def _apart(values: list[float]) -> list[float]:
    """Drop what lies within a millimetre of the one before."""
    kept = values[:1]
    for value in values[1:]:
        if value - kept[-1] > ONE_LINE_M:
            kept.append(value)
    return kept


def plan_section(outline: Sequence[tuple[float, float]], k: float, finer: int = 0) -> Section:
    """Find the modes of a right-angled plan.

    `outline` anticlockwise, its walls along x and y; `k` is the highest wavenumber of the band, `finer` adds
    to each strip's degree.
    Source: Ritz's method (spectral elements), textbook; accuracy checked on shapes with known answers.
    """
    x_breaks, y_breaks, kept = cells(outline)
    across, along = _line(x_breaks, k, finer), _line(y_breaks, k, finer)
    used, parts = _used(across, along, kept)
    count = int(used.sum())
    numbers = np.full(used.shape, -1)
    numbers[used] = np.arange(count)
    stiffness, mass = np.zeros((count, count)), np.zeros((count, count))
    strips = [[_strip(line, number) for number in range(len(line.degrees))] for line in (across, along)]
    for i, j, columns, lines in parts:
        (mass_x, stiff_x), (mass_y, stiff_y) = strips[0][i], strips[1][j]
        at = numbers[columns, lines].ravel()
        stiffness[at[:, None], at] += np.kron(stiff_x, mass_y) + np.kron(mass_x, stiff_y)
        mass[at[:, None], at] += np.kron(mass_x, mass_y)

    def rows(points: Array) -> Array:
        values = across.rows(points[:, 0])[:, :, None] * along.rows(points[:, 1])[:, None, :]
        return np.asarray(values[:, used])

    return _solved(stiffness, mass, outline, rows)


def _strip(line: _Line, number: int) -> tuple[Array, Array]:
    """Integrals of values and of slopes over one strip."""
    degree = line.degrees[number]
    half = float(line.breaks[number + 1] - line.breaks[number]) / 2
    _, share, value, slope = _reference(degree, degree + 1)
    return half * (value.T * share) @ value, (slope.T * share) @ slope / half


def upright_section(breaks: Sequence[float], heights: Sequence[float], k: float, finer: int = 0) -> Section:
    """Find the modes of an upright section from the floor to a ceiling of straight pieces.

    `heights` of the ceiling at `breaks`, straight in between; points are (along the section, height). The section is
    stretched onto a strip of unit height, z = s h(x), so that slopes are kept exactly. Otherwise as `plan_section`.
    """
    line = _line(breaks, k, finer)
    degree = _degree(max(heights), k, finer)
    # Over the height, s from 0 to 1: values, s times value and slope, s^2 times slopes, slopes.
    at, share, value, slope = _reference(degree, degree + 2)
    s = (at + 1) / 2
    upright = (
        (value.T * (share / 2)) @ value,
        (value.T * (share * s)) @ slope,
        (slope.T * (share * 2 * s**2)) @ slope,
        (slope.T * (share * 2)) @ slope,
    )
    size = (line.unknowns, line.unknowns)
    stiff, lean, steep, thin, mass = (np.zeros(size) for _ in range(5))
    for number, ends in enumerate(zip(pairwise(breaks), pairwise(heights), strict=True)):
        here = slice(line.starts[number], line.starts[number + 1] + 1)
        parts = _under_slope(line.degrees[number], *ends)
        for whole, part in zip((stiff, lean, steep, thin, mass), parts, strict=True):
            whole[here, here] += part
    leaning = np.kron(lean, upright[1])
    stiffness = (
        np.kron(stiff, upright[0]) - leaning - leaning.T + np.kron(steep, upright[2]) + np.kron(thin, upright[3])
    )

    def rows(points: Array) -> Array:
        ceiling = np.interp(points[:, 0], breaks, heights)
        share_up = np.clip(points[:, 1] / ceiling, 0.0, 1.0)
        values = legendre.legvander(2 * share_up - 1, degree) @ _nodal(degree)
        return np.asarray((line.rows(points[:, 0])[:, :, None] * values[:, None, :]).reshape(len(points), -1))

    outline = [(breaks[0], 0.0), (breaks[-1], 0.0), *zip(reversed(breaks), reversed(heights), strict=True)]
    return _solved(stiffness, np.asarray(np.kron(mass, upright[0]), dtype=np.float64), outline, rows)


def _under_slope(degree: int, ends: tuple[float, float], heights: tuple[float, float]) -> tuple[Array, ...]:
    """Integrals over a strip, h being the height: h slopes, h' slope and value, h'^2/h values, values/h, h values."""
    at, share, value, slope = _reference(degree, degree + 10)  # 1/h is no polynomial
    half = (ends[1] - ends[0]) / 2
    tilt = (heights[1] - heights[0]) / 2 / half
    height = heights[0] + (heights[1] - heights[0]) * (at + 1) / 2
    return (
        (slope.T * (share * height / half)) @ slope,
        (slope.T * (share * tilt)) @ value,
        (value.T * (share * half * tilt**2 / height)) @ value,
        (value.T * (share * half / height)) @ value,
        (value.T * (share * half * height)) @ value,
    )
