"""Modes and response of a room that is a plane section drawn along an axis.

A flat ceiling over a right-angled plan is one (the axis stands upright), a mono-pitch or a gable over a rectangle too
(the axis is level, along the ridge). The section is solved by Ritz's method, the axis in closed form.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np

from roomlint.figures.modal_sum import HeatSplit, heat_split

if TYPE_CHECKING:
    from numpy.typing import NDArray

    from roomlint.figures.modal_sum import Array, ComplexArray
    from roomlint.figures.sections import Section

# A truncated sum of modes is blurred where heat has hardly spread. Up to this share of 1/k^2 the nearest images say
# better what it is, as long as heat has not come from one wall to the next and back.
EARLY = 0.32
EARLY_OVER_EDGE = 1 / 6
ON_SIDE_M = 1e-6
SQUARE_WITHIN = 0.34  # sine of 20 degrees: corners that reflect nearly like a square one


@dataclass(frozen=True, slots=True, eq=False)
class PrismModes:
    """The modes of a prism near the band and its heat kernel; made by `prism_modes`."""

    section: Section
    length_m: float
    axis: int  # which coordinate of a point runs along the axis; the other two lie in the section, in order
    split: HeatSplit
    early: int  # so many of the split's last times are early ones
    of_section: NDArray[np.int64]  # (modes,) which mode of the section
    counts: Array  # (modes,) half waves along the axis
    wavenumbers_squared: Array

    def shapes(self, points: Array) -> Array:
        """Return the shapes, (points, modes), of mean square 1/volume: the section's times a cosine."""
        return self._shapes(points, self._across(points))

    def _shapes(self, points: Array, across: Array) -> Array:
        waves = np.cos(np.pi / self.length_m * np.outer(points[:, self.axis], self.counts))
        scale = np.sqrt(np.where(self.counts > 0, 2.0, 1.0) / self.length_m)
        return np.asarray(across[:, self.of_section] * waves * scale)

    def _across(self, points: Array) -> Array:
        return self.section.shapes(np.delete(points, self.axis, axis=1))

    def pairs(self, sources: Array, ears: Array) -> tuple[Array, Array]:
        """Return products of shapes and the heat kernel at the split's times: the section's times the axis's."""
        points = np.concatenate([ears, sources])
        every = self._across(points)
        shapes = self._shapes(points, every)
        there, here = every[: len(ears)], every[len(ears) :]
        late = self.split.times.size - self.early
        fading = np.exp(-np.outer(self.section.wavenumbers_squared, self.split.times[:late]))
        pairs = (there[:, None, :] * here[None, :, :]).reshape(-1, here.shape[1])
        across = (pairs @ fading).reshape(len(ears), len(sources), -1)
        by_images = early_kernel(
            np.asarray(self.section.outline),
            np.delete(sources, self.axis, axis=1),
            np.delete(ears, self.axis, axis=1),
            self.split.times[late:],
        )
        along = self.split.along(ears[:, self.axis], sources[:, self.axis], self.length_m)
        products = shapes[: len(ears), None, :] * shapes[None, len(ears) :, :]
        return products, np.concatenate([across, by_images], axis=2) * along

    def weights(self, k_squared: ComplexArray) -> tuple[ComplexArray, ComplexArray]:
        """Return the split's weights at complex k^2."""
        return self.split.weights(self.wavenumbers_squared, k_squared)


def prism_modes(section: Section, length_m: float, axis: int, top_hz: float, sound_speed_mps: float) -> PrismModes:
    """Find a prism's modes that matter up to `top_hz`: k^2 of the section plus (pi n/length)^2.

    Source: separation of variables; the sum as in `modal_sum`.
    """
    split = heat_split(section.area_m2 * length_m, top_hz, sound_speed_mps)
    along = np.pi / length_m * np.arange(int(split.reach * length_m / np.pi) + 1)
    squares = section.wavenumbers_squared[:, None] + along**2
    of_section, counts = np.nonzero(squares <= split.reach**2)
    found = squares[of_section, counts]
    order = np.argsort(found, kind="stable")
    shortest = float(np.hypot(*_sides(np.asarray(section.outline)).T).min())
    until = min(EARLY / (2 * np.pi * top_hz / sound_speed_mps) ** 2, EARLY_OVER_EDGE * shortest**2)
    early = int((split.times < until).sum())
    waves = counts[order].astype(np.float64)
    return PrismModes(section, length_m, axis, split, early, of_section[order], waves, found[order])


def _sides(corners: Array) -> Array:
    return np.asarray(np.roll(corners, -1, axis=0) - corners)


def early_kernel(corners: Array, sources: Array, ears: Array, times: Array) -> Array:
    """Return the heat kernel of a polygon with rigid sides soon after the start, (ears, sources, times).

    The direct share exp(-r^2/4t)/(4 pi t) where the ear is seen, one image in each side that mirrors the source to the
    ear, and one in each corner that is nearly square. `corners` anticlockwise. Source: method of images, textbook.
    """
    start, along = corners, _sides(corners)
    length = np.hypot(*along.T)
    along = along / length[:, None]
    inward = np.stack([-along[:, 1], along[:, 0]], axis=1)
    from_side = ((sources[:, None, :] - start) * inward).sum(axis=2)  # (sources, sides)
    ear_side = ((ears[:, None, :] - start) * inward).sum(axis=2)
    source_at = ((sources[:, None, :] - start) * along).sum(axis=2)
    ear_at = ((ears[:, None, :] - start) * along).sum(axis=2)
    both = np.maximum(np.abs(from_side)[None] + np.abs(ear_side)[:, None], 1e-9)
    mirror_at = (source_at[None] * np.abs(ear_side)[:, None] + ear_at[:, None] * np.abs(from_side)[None]) / both
    within = (mirror_at >= 0) & (mirror_at <= length)
    crossed = (from_side[None] * ear_side[:, None] < -(ON_SIDE_M**2)) & within
    mirrors = within & (from_side[None] > -ON_SIDE_M) & (ear_side[:, None] > -ON_SIDE_M)
    images = sources[:, None, :] - 2 * from_side[:, :, None] * inward
    before = np.roll(along, 1, axis=0)
    turn = before[:, 0] * along[:, 1] - before[:, 1] * along[:, 0]
    square = (turn > 0) & (np.abs((before * along).sum(axis=1)) < SQUARE_WITHIN)
    corner_images = 2 * corners[square][None] - sources[:, None, :]
    places = np.concatenate([sources[:, None, :], images, corner_images], axis=1)  # (sources, images, 2)
    shape = (len(ears), len(sources), 1)
    heard = np.concatenate([~crossed.any(axis=2, keepdims=True), mirrors, np.ones((*shape[:2], square.sum()), bool)], 2)
    squares = np.where(heard, ((ears[:, None, None, :] - places[None]) ** 2).sum(axis=3), np.inf)
    return np.asarray(np.exp(-squares[:, :, :, None] / (4 * times)).sum(axis=2) / (4 * np.pi * times))
