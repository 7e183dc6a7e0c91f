"""Bass modes and response of a room that is no box: any plan, any ceiling of plane pieces, a level floor.

The room is stretched onto its plan times a unit height, z = s h(x, y), so that walls and sloped ceilings are kept
exactly. Over the plan the pressure is quadratic in each triangle, over the height a polynomial; both converge fast for
waves as long as a room. Positions are x, y in the plan and z above the floor, metres; frequencies hertz.

Accuracy found at the standard spacing, up to the top frequency: within 0.3 % of the exact frequencies of a box and of
a triangular prism, within 0.6 % in an L-shaped room, whose inner corner is the hard part; levels within 1 dB of the
box formula away from nulls.
"""

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.polynomial import legendre
from scipy.sparse import coo_array, csc_array, kron
from scipy.sparse.linalg import LinearOperator, SuperLU, eigsh, splu

from roomlint.figures.bass import Array, ComplexArray, resonance_sum
from roomlint.figures.ceiling import Facet, volume_m3
from roomlint.figures.domain import Refused
from roomlint.figures.modes import Point
from roomlint.figures.plan_mesh import Corner, PlanMesh, Whole, locate, mesh_plan, polygon_area_m2

WAVES_PER_SPACING = 0.2  # spacing of the plan's triangles as a share of the shortest wavelength
NEAR_OVER_TOP = 1.6  # modes to so many times the top frequency are found; those above enter by their tail
SPARE_MODES = 4
MOST_MODES = 120  # a room of some 350 m3 to 80 Hz, found in two seconds or three; the time grows with the square
ABOVE_CEILING = 0.02

# Seven-point rule on a triangle, exact to degree five: area coordinates and shares of the area.
_ROOT = np.sqrt(15.0)
_NEAR, _FAR = (6 - _ROOT) / 21, (6 + _ROOT) / 21
QUADRATURE = np.array(
    [[1 / 3, 1 / 3, 1 / 3]] + [list(np.roll([1 - 2 * at, at, at], turn)) for at in (_NEAR, _FAR) for turn in range(3)]
)
SHARES = np.array([9 / 40] + [(155 - _ROOT) / 1200] * 3 + [(155 + _ROOT) / 1200] * 3)


@dataclass(frozen=True, slots=True, eq=False)
class OddRoom:
    """A room's modes as found, with what is needed to evaluate them at points; made by `solve`."""

    mesh: PlanMesh
    elements: Whole  # (triangles, 6) unknowns of the plan: three corners, then the middles of the opposite sides
    degree: int
    sound_speed_mps: float
    wavenumbers_squared: Array  # (modes,) 1/m2, the first is 0
    shapes: Array  # (unknowns, modes), each of unit mean square times the volume
    shift: float
    factors: SuperLU  # of stiffness - shift * mass
    mass: csc_array

    @property
    def frequencies_hz(self) -> tuple[float, ...]:
        """Mode frequencies, lowest first, without the pressure zone at 0 Hz."""
        found = np.sqrt(np.maximum(self.wavenumbers_squared[1:], 0)) * self.sound_speed_mps / (2 * np.pi)
        return tuple(found.tolist())


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


def _plan_matrices(mesh: PlanMesh, elements: Whole, unknowns: int) -> tuple[tuple[csc_array, ...], float]:
    """Integrals over the plan, each (unknowns, unknowns), and the volume.

    With h the height: h grad grad, slope of h times grad and value, (slope of h)^2/h, 1/h, and h times values.
    """
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
    gathered = tuple(csc_array(coo_array((block.ravel(), (rows, columns)), shape=shape)) for block in blocks)
    return gathered, float((weight * height).sum())


def _mode_count(outline: Sequence[Corner], volume: float, waves_per_m: float) -> int:
    """About how many modes lie below a frequency, by the count formula for boxes with this room's measures."""
    plan = polygon_area_m2(outline)
    corners = np.asarray(outline)
    perimeter = float(np.hypot(*(np.roll(corners, -1, axis=0) - corners).T).sum())
    mean_height = volume / plan
    surface = 2 * plan + perimeter * mean_height
    edges = 2 * perimeter + len(outline) * mean_height
    count = np.pi * (4 / 3 * volume * waves_per_m**3 + surface / 4 * waves_per_m**2) + edges / 8 * waves_per_m
    return int(count) + SPARE_MODES


def solve(
    outline: Sequence[Corner], facets: Sequence[Facet], top_hz: float, sound_speed_mps: float, refine: float = 1.0
) -> OddRoom:
    """Find the modes of a room well enough for responses up to `top_hz`.

    `outline` is the plan as a simple polygon, `facets` the ceiling, pieces that cover the plan and meet at their edges;
    walls stand upright, floor level, all surfaces rigid. `refine` > 1 makes the mesh finer by that factor.
    Raises ValueError for a ceiling with steps, gaps or lower than 0.3 m, a frequency above 200 Hz, or a room so large
    that it has more modes than can be found one by one in seconds.
    Source: Galerkin's method for the Helmholtz equation with rigid walls, textbook; accuracy checked on shapes with
    known answers.
    """
    if not 0 < top_hz <= 200:  # noqa: PLR2004 - a guard against hour-long sums
        raise Refused(f"modes of odd rooms are computed up to 200 Hz, got {top_hz} Hz")
    reach = NEAR_OVER_TOP * top_hz / sound_speed_mps
    room_m3 = volume_m3(facets)
    if _mode_count(outline, room_m3, reach) > MOST_MODES:
        raise Refused(
            f"a room of {room_m3:.0f} m3 that is no box has too many modes below {NEAR_OVER_TOP * top_hz:.0f} Hz"
            " to find them one by one"
        )
    mesh = mesh_plan(outline, facets, WAVES_PER_SPACING * NEAR_OVER_TOP / reach / refine)
    elements, unknowns = _elements(mesh)
    (stiff, lean, steep, thin, mass_plan), volume = _plan_matrices(mesh, elements, unknowns)
    degree = int(np.ceil(2 * mesh.heights.max() * reach)) + 2
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
    return OddRoom(mesh, elements, degree, sound_speed_mps, found[order], shapes[:, order], shift, factors, mass)


def _rows(room: OddRoom, points: Sequence[Point]) -> Array:
    """Return what each unknown adds to the pressure at each point, (points, unknowns)."""
    at = np.asarray(points, dtype=np.float64).reshape(-1, 3)
    triangle, shares = locate(room.mesh, at[:, :2])
    height = (room.mesh.heights[triangle] * shares).sum(axis=1)
    s = at[:, 2] / height
    if s.min() < -ABOVE_CEILING or s.max() > 1 + ABOVE_CEILING:
        raise Refused("a source or receiver lies below the floor or above the ceiling")
    plan, upright = _quadratic(shares), _height_values(np.clip(s, 0, 1), room.degree)[0]
    levels = room.degree + 1
    columns = room.elements[triangle][:, :, None] * levels + np.arange(levels)
    rows = np.zeros((len(at), room.mass.shape[0]))
    np.put_along_axis(
        rows, columns.reshape(len(at), -1), (plan[:, :, None] * upright[:, None, :]).reshape(len(at), -1), axis=1
    )
    return rows


def mode_shapes(room: OddRoom, points: Sequence[Point]) -> Array:
    """Shapes of the modes at points, (points, modes), the pressure zone first; mean square 1/volume.

    Raises ValueError for a point outside the room.
    """
    return np.asarray(_rows(room, points) @ room.shapes)


def transfer(
    room: OddRoom, sources: Sequence[Point], receivers: Sequence[Point], frequencies_hz: Sequence[float], decay_s: float
) -> ComplexArray:
    """Pressure at each receiver for each source alone, (receivers, sources, frequencies), re 1 m in free field.

    The sum of `bass.transfer` over the modes found; those above enter by the first two terms of their tail. Holds up to
    the frequency given to `solve`. Raises ValueError for points outside the room.
    """
    frequencies = np.asarray(frequencies_hz, dtype=np.float64)
    here, there = _rows(room, sources), _rows(room, receivers)
    source_shapes, receiver_shapes = here @ room.shapes, there @ room.shapes
    pairs = (receiver_shapes[:, None, :] * source_shapes[None, :, :]).reshape(-1, source_shapes.shape[1])
    speed_squared = room.sound_speed_mps**2
    angular = np.sqrt(np.maximum(room.wavenumbers_squared, 0)) * room.sound_speed_mps
    near = resonance_sum(pairs, angular, frequencies, decay_s, 4 * np.pi * speed_squared)
    first = room.factors.solve(np.ascontiguousarray(here.T))
    second = room.factors.solve(np.asarray(room.mass @ first))
    above = room.wavenumbers_squared - room.shift
    tail = there @ first - (receiver_shapes / above) @ source_shapes.T
    bend = there @ second - (receiver_shapes / above**2) @ source_shapes.T
    beyond = (2 * np.pi * frequencies) ** 2 / speed_squared - room.shift
    far = 4 * np.pi * (tail[:, :, None] + bend[:, :, None] * beyond)
    return near.reshape(len(there), len(here), frequencies.size) + far
