"""Modes and response of a rectangular room in closed form.

Axes are the sides of the box, the origin in a corner, metres.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache
from typing import TYPE_CHECKING

import numpy as np

from roomlint.figures.domain import Refused
from roomlint.figures.modal_sum import HeatSplit, heat_split

if TYPE_CHECKING:
    from numpy.typing import NDArray

    from roomlint.figures.modal_sum import Array, ComplexArray

MOST_MODES = 20_000  # a hall of 3000 m3 to 400 Hz; no room that is heard mode by mode has so many


@dataclass(frozen=True, slots=True, eq=False)
class BoxModes:
    """The modes of a box near the band and its heat kernel; made by `box_modes`."""

    size: tuple[float, float, float]
    split: HeatSplit
    indices: NDArray[np.int64]  # (3, modes)
    wavenumbers_squared: Array
    scale: Array  # (modes,) root of 1, 2, 4 or 8 over the volume

    def shapes(self, points: Array) -> Array:
        """Return cosines along each side, (points, modes), of mean square 1/volume."""
        found = np.broadcast_to(self.scale, (len(points), self.scale.size))
        for axis, side in enumerate(self.size):
            counts = np.arange(self.indices[axis].max(initial=0) + 1)
            found = found * np.cos(np.pi / side * np.outer(points[:, axis], counts))[:, self.indices[axis]]
        return np.asarray(found)

    def pairs(self, sources: Array, ears: Array) -> tuple[Array, Array]:
        """Return products of shapes and the heat kernel at the split's times, a product over the three sides."""
        shapes = self.shapes(np.concatenate([ears, sources]))
        products = shapes[: len(ears), None, :] * shapes[None, len(ears) :, :]
        kernels = [self.split.along(ears[:, axis], sources[:, axis], side) for axis, side in enumerate(self.size)]
        return products, kernels[0] * kernels[1] * kernels[2]

    def weights(self, k_squared: ComplexArray) -> tuple[ComplexArray, ComplexArray]:
        """Return the split's weights at complex k^2."""
        return self.split.weights(self.wavenumbers_squared, k_squared)


@lru_cache(maxsize=64)
def box_modes(size: tuple[float, float, float], top_hz: float, sound_speed_mps: float, wider: float = 1.0) -> BoxModes:
    """Find the modes of a box of `size` that matter up to `top_hz`, k_n^2 = sum of (pi n/side)^2.

    `wider` moves the split of the sum: two answers differ by what the sum leaves out, some 1e-5 of the pressure.
    Raises Refused for a side that is not positive, or when there are more modes than can be told apart.
    Source: rigid-wall solution of the wave equation; Ewald's summation for its Green's function, textbook.
    """
    if not all(np.isfinite(side) and side > 0 for side in size):
        raise Refused(f"a room's length, width and height must be positive lengths, got {size}")
    split = heat_split(float(np.prod(size)), top_hz, sound_speed_mps, wider)
    steps = np.pi / np.asarray(size)
    axes = [np.arange(int(split.reach / step) + 1) for step in steps]
    if np.prod([float(axis.size) for axis in axes]) > MOST_MODES:
        raise Refused(f"a room this large has too many modes below {top_hz:.0f} Hz to tell them apart")
    indices = np.stack([axis.ravel() for axis in np.meshgrid(*axes, indexing="ij")])
    squares = ((indices.T * steps) ** 2).sum(axis=1)
    order = np.argsort(squares, kind="stable")
    order = order[: np.searchsorted(squares[order], split.reach**2, side="right")]
    indices = indices[:, order]
    scale = np.sqrt(np.where(indices > 0, 2.0, 1.0).prod(axis=0) / np.prod(size))
    return BoxModes(size, split, indices, squares[order], scale)
