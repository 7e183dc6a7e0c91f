"""Bass modes of a room that is neither box nor prism: any plan, any ceiling of plane pieces, a level floor.

The room is stretched onto its plan times a unit height, z = s h(x, y), so that walls and sloped ceilings are kept
exactly. Over the plan the pressure is quadratic in each triangle, over the height a polynomial; both converge fast for
waves as long as a room. Positions are x, y in the plan and z above the floor, metres; frequencies hertz.

Accuracy found at the standard spacing, up to the top frequency: within 0.3 % of the exact frequencies of a box and of
a triangular prism, within 0.6 % beside an inner corner; at the coarsest within 1 % and 1.5 %. What is found is
compared with a mesh coarser still, and the difference is part of what is told.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import TYPE_CHECKING

import numpy as np
from numpy.polynomial import legendre

from roomlint.figures.domain import Refused
from roomlint.figures.plan_mesh import locate, mesh_plan, mesh_size, polygon_area_m2

if TYPE_CHECKING:
    from collections.abc import Sequence

    from scipy.sparse import csc_array
    from scipy.sparse.linalg import SuperLU

    from roomlint.figures.modal_sum import Array, ComplexArray
    from roomlint.figures.plan_mesh import Corner, PlanMesh, Whole
    from roomlint.roof import Facet

WAVES_PER_SPACING = 0.14  # spacing of the plan's triangles as a share of the shortest wavelength
NEAR_OVER_TOP = 1.6  # modes to so many times the top frequency are found; those above enter by their tail
TAIL_POWERS = 3
MOST_DRIVEN = 64  # sources whose fields are kept, some 200 kB each
SPARE_MODES = 4
MOST_MODES = 160  # a room of some 170 m3 to 113 Hz
WORK = 350_000  # unknowns times modes: found in about a second
MOST_WORK = 560_000  # and in not much more than that; the coarsest mesh may cost it
REFINEMENTS = (1.0, 0.84, 0.7, 0.56, 0.45)  # the finest that can be paid is taken
COARSER = 0.8

# Seven-point rule on a triangle, exact to degree five: area coordinates and shares of the area.
_ROOT = np.sqrt(15.0)
_NEAR, _FAR = (6 - _ROOT) / 21, (6 + _ROOT) / 21
QUADRATURE = np.array(
    [[1 / 3, 1 / 3, 1 / 3]] + [list(np.roll([1 - 2 * at, at, at], turn)) for at in (_NEAR, _FAR) for turn in range(3)]
)
SHARES = np.array([9 / 40] + [(155 - _ROOT) / 1200] * 3 + [(155 + _ROOT) / 1200] * 3)


@dataclass(frozen=True, slots=True, eq=False)
class ElementModes:
    """A room's modes as found, with what is needed to evaluate them at points; made by `element_modes`."""

    mesh: PlanMesh
    elements: Whole  # (triangles, 6) unknowns of the plan: three corners, then the middles of the opposite sides
    degree: int
    wavenumbers_squared: Array  # (modes,) 1/m2, the first is 0
    modes: Array  # (unknowns, modes), each of mean square 1/volume
    shift: float  # k^2 about which the modes above are developed, below zero
    factors: SuperLU  # of stiffness - shift * mass
    mass: csc_array
    driven: dict[bytes, Array] = field(default_factory=dict)  # what was solved for a source, by its position

    def rows(self, points: Array) -> Array:
        """Return what each unknown adds to the pressure at each point, (points, unknowns)."""
        triangle, shares = locate(self.mesh, points[:, :2])
        height = (self.mesh.heights[triangle] * shares).sum(axis=1)
        upright = _height_values(np.clip(points[:, 2] / height, 0, 1), self.degree)[0]
        levels = self.degree + 1
        columns = self.elements[triangle][:, :, None] * levels + np.arange(levels)
        found = np.zeros((len(points), self.modes.shape[0]))
        values = _quadratic(shares)[:, :, None] * upright[:, None, :]
        np.put_along_axis(found, columns.reshape(len(points), -1), values.reshape(len(points), -1), axis=1)
        return found

    def shapes(self, points: Array) -> Array:
        """Return the modes' shapes at points, (points, modes), of mean square 1/volume."""
        return np.asarray(self.rows(points) @ self.modes)

    def pairs(self, sources: Array, ears: Array) -> tuple[Array, Array]:
        """Return products of shapes, and for each power j the sum of psi psi/(k_n^2 - shift)^(j + 1) over all modes."""
        keys = [source.tobytes() for source in sources]
        fresh = [number for number, key in enumerate(keys) if key not in self.driven]
        if fresh:
            if len(self.driven) > MOST_DRIVEN:
                self.driven.clear()
                fresh = list(range(len(keys)))
            found = [self.factors.solve(np.ascontiguousarray(self.rows(sources[fresh]).T))]
            for _ in range(TAIL_POWERS - 1):
                found.append(self.factors.solve(np.asarray(self.mass @ found[-1])))
            for column, number in enumerate(fresh):
                self.driven[keys[number]] = np.stack([power[:, column] for power in found], axis=1)
        solved = np.stack([self.driven[key] for key in keys], axis=2)
        there = self.rows(ears)
        powers = (there @ solved.reshape(len(solved), -1)).reshape(len(ears), TAIL_POWERS, -1).swapaxes(1, 2)
        shapes = there @ self.modes, self.rows(sources) @ self.modes
        return shapes[0][:, None, :] * shapes[1][None, :, :], np.asarray(powers)

    def weights(self, k_squared: ComplexArray) -> tuple[ComplexArray, ComplexArray]:
        """Return the weights of modes and of powers; what the powers hold of a mode is taken from the mode's own."""
        powers = np.arange(TAIL_POWERS)[:, None]
        beyond = k_squared - self.shift
        share = (beyond / (self.wavenumbers_squared - self.shift)[:, None]) ** TAIL_POWERS
        return share / (self.wavenumbers_squared[:, None] - k_squared), beyond**powers


def _quadratic(shares: Array) -> Array:
    """Six quadratic shape functions at area coordinates (..., 3): corners, then middles of the opposite sides."""
    middles = 4 * shares[..., [1, 2, 0]] * shares[..., [2, 0, 1]]
    return np.concatenate([shares * (2 * shares - 1), middles], axis=-1)


def _quadratic_slopes(shares: Array, slopes: Array) -> Array:
    """Gradients (triangles, points, 6, 2) of the shape functions, from the area coordinates' own (triangles, 3, 2)."""
    corners = (4 * shares - 1)[None, :, :, None] * slopes[:, None, :, :]
    second, third = shares[:, [1, 2, 0]], shares[:, [2, 0, 1]]
    middles = 4 * (
        second[None, :, :, None] * slopes[:, None, [2, 0, 1], :]
        + third[None, :, :, None] * slopes[:, None, [1, 2, 0], :]
    )
    return np.concatenate([corners, middles], axis=2)


def _elements(mesh: PlanMesh) -> tuple[Whole, int]:
    sides = np.sort(mesh.triangles[:, [[1, 2], [2, 0], [0, 1]]].reshape(-1, 2), axis=1)
    _, numbers = np.unique(sides, axis=0, return_inverse=True)
    middles = len(mesh.points) + numbers.reshape(-1, 3)
    return np.concatenate([mesh.triangles, middles], axis=1), int(middles.max()) + 1


def _height_matrices(degree: int) -> tuple[Array, Array, Array, Array]:
    """Over s from 0 to 1: products of values, s times value and slope, s^2 times slopes, slopes."""
    at, weight = legendre.leggauss(degree + 2)
    s, weight = (at + 1) / 2, weight / 2
    value, slope = _height_values(s, degree)
    return (
        value.T @ (weight[:, None] * value),
        value.T @ ((weight * s)[:, None] * slope),
        slope.T @ ((weight * s**2)[:, None] * slope),
        slope.T @ (weight[:, None] * slope),
    )


def _height_values(s: Array, degree: int) -> tuple[Array, Array]:
    rows = np.eye(degree + 1)
    value = legendre.legvander(2 * s - 1, degree)
    slope = np.stack([2 * legendre.legval(2 * s - 1, legendre.legder(row)) for row in rows], axis=1)
    return np.asarray(value, dtype=np.float64), np.asarray(slope, dtype=np.float64)


def _plan_matrices(mesh: PlanMesh, elements: Whole, unknowns: int) -> tuple[csc_array, ...]:
    """Integrals over the plan, each (unknowns, unknowns).

    With h the height: h grad grad, slope of h times grad and value, (slope of h)^2/h, 1/h, and h times values.
    """
    from scipy.sparse import coo_array, csc_array

    corners = mesh.points[mesh.triangles]
    across, along = corners[:, 1] - corners[:, 0], corners[:, 2] - corners[:, 0]
    twice = across[:, 0] * along[:, 1] - across[:, 1] * along[:, 0]
    turned = np.roll(corners, -1, axis=1) - np.roll(corners, 1, axis=1)  # the side opposite each corner
    slopes = np.stack([turned[:, :, 1], -turned[:, :, 0]], axis=2) / twice[:, None, None]
    slopes = np.where(
        (slopes[:, :1] * (corners[:, :1] - corners[:, 1:2])).sum(axis=2, keepdims=True) < 0, -slopes, slopes
    )
    tilt = np.einsum("tc,tcd->td", mesh.heights, slopes)
    height = mesh.heights @ QUADRATURE.T
    weight = np.abs(twice)[:, None] / 2 * SHARES
    value = _quadratic(QUADRATURE)
    grad = _quadratic_slopes(QUADRATURE, slopes)
    uphill = np.einsum("td,tqid->tqi", tilt, grad)
    steepness = (tilt**2).sum(axis=1)[:, None]
    blocks = (
        np.einsum("tq,tqid,tqjd->tij", weight * height, grad, grad, optimize=True),
        np.einsum("tq,tqi,qj->tij", weight, uphill, value, optimize=True),
        np.einsum("tq,qi,qj->tij", weight * steepness / height, value, value, optimize=True),
        np.einsum("tq,qi,qj->tij", weight / height, value, value, optimize=True),
        np.einsum("tq,qi,qj->tij", weight * height, value, value, optimize=True),
    )
    rows, columns = np.repeat(elements, 6, axis=1).ravel(), np.tile(elements, (1, 6)).ravel()
    shape = (unknowns, unknowns)
    return tuple(csc_array(coo_array((block.ravel(), (rows, columns)), shape=shape)) for block in blocks)


def _mode_count(outline: Sequence[Corner], volume: float, waves_per_m: float) -> int:
    """About how many modes lie below a frequency, by the count formula for boxes with this room's measures."""
    area = polygon_area_m2(outline)
    corners = np.asarray(outline)
    perimeter = float(np.hypot(*(np.roll(corners, -1, axis=0) - corners).T).sum())
    mean_height = volume / area
    surface = 2 * area + perimeter * mean_height
    edges = 2 * perimeter + len(outline) * mean_height
    count = np.pi * (4 / 3 * volume * waves_per_m**3 + surface / 4 * waves_per_m**2) + edges / 8 * waves_per_m
    return int(count) + SPARE_MODES


def _spacing_m(reach: float, refine: float) -> float:
    return WAVES_PER_SPACING * NEAR_OVER_TOP / reach / refine


def _degree(highest_m: float, reach: float) -> int:
    return int(np.ceil(2 * highest_m * reach)) + 2


def affordable_refinement(
    outline: Sequence[Corner], facets: Sequence[Facet], volume: float, top_hz: float, sound_speed_mps: float
) -> float:
    """Return how fine a mesh can be paid for, 1 the finest, before anything is solved.

    Raises Refused for a room whose modes would take much longer than a second even with the coarsest.
    """
    reach = NEAR_OVER_TOP * top_hz / sound_speed_mps
    levels = _degree(max(facet.height_m(corner) for facet in facets for corner in facet.outline), reach) + 1
    modes = _mode_count(outline, volume, reach)
    for refine in REFINEMENTS:
        unknowns = mesh_size(outline, facets, _spacing_m(reach, refine)) * levels
        most = MOST_WORK if refine == REFINEMENTS[-1] else WORK
        if modes <= MOST_MODES and unknowns * modes <= most:
            return refine
    raise Refused(
        "a room this large whose walls or ceiling are not at right angles has too many modes below"
        f" {NEAR_OVER_TOP * top_hz:.0f} Hz to find them one by one"
    )


def element_modes(
    outline: Sequence[Corner],
    facets: Sequence[Facet],
    volume: float,
    top_hz: float,
    sound_speed_mps: float,
    refine: float = 1.0,
) -> ElementModes:
    """Find the modes of a room well enough for responses up to `top_hz`.

    `outline` is the plan as a simple polygon, `facets` the ceiling, pieces that cover the plan and meet at their edges;
    walls stand upright, floor level, all surfaces rigid. `refine` > 1 makes the mesh finer by that factor.
    Raises Refused for a ceiling with steps, gaps or lower than 0.3 m.
    Source: Galerkin's method for the Helmholtz equation with rigid walls, textbook; accuracy checked on shapes with
    known answers.
    """
    from scipy.sparse import csc_array, kron
    from scipy.sparse.linalg import LinearOperator, eigsh, splu

    reach = NEAR_OVER_TOP * top_hz / sound_speed_mps
    mesh = mesh_plan(outline, facets, _spacing_m(reach, refine))
    elements, unknowns = _elements(mesh)
    (stiff, lean, steep, thin, mass_plan) = _plan_matrices(mesh, elements, unknowns)
    degree = _degree(float(mesh.heights.max()), reach)
    values, mixed, raised, slopes = _height_matrices(degree)
    leaning = kron(lean, mixed)
    stiffness = csc_array(kron(stiff, values) - leaning - leaning.T + kron(steep, raised) + kron(thin, slopes))
    mass = csc_array(kron(mass_plan, values))
    shift = -((2 * np.pi * 0.3 * top_hz / sound_speed_mps) ** 2)
    factors = splu(csc_array(stiffness - shift * mass), permc_spec="MMD_AT_PLUS_A", options={"SymmetricMode": True})
    wanted = min(_mode_count(outline, volume, reach), mass.shape[0] - 2)
    inverse = LinearOperator(mass.shape, matvec=factors.solve, dtype=np.float64)
    start = np.cos(np.arange(mass.shape[0]))  # any start will do, the same one gives the same bytes
    found, shapes = eigsh(stiffness, k=wanted, M=mass, sigma=shift, OPinv=inverse, v0=start, tol=1e-8)
    order = np.argsort(found)
    squares = found[order]
    squares[0] = 0.0  # the pressure zone, exactly
    return ElementModes(mesh, elements, degree, squares, shapes[:, order], shift, factors, mass)
