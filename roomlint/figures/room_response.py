"""Bass of any room: who solves it, and the pressure from any source to any ear at any frequency and decay.

`solve` picks the solver by the room's shape and checks that it can be solved in about a second; the modes are found
when the first points are asked for, after these were found to lie in the room. Then a moved source or ear, another
decay time or another band costs a millisecond or two.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property, lru_cache
from typing import TYPE_CHECKING, Literal

import numpy as np

from roomlint.figures.domain import Refused
from roomlint.figures.modal_sum import LEAST_DISTANCE_M, k_squared, too_near
from roomlint.figures.room_shape import RoomShape, shape_of

if TYPE_CHECKING:
    from collections.abc import Sequence

    from roomlint.figures.modal_sum import Array, ComplexArray, Modes, Points
    from roomlint.plane import Point2
    from roomlint.roof import Facet

TOP_HZ = 200.0
SLOPE_STEP_M = 0.01

Grade = Literal["fine", "coarse"]


@dataclass(frozen=True, slots=True, eq=False)
class Paths:
    """The ways from some sources to some ears through a solved room, before frequency and decay are chosen."""

    response: RoomResponse
    parts: Array  # (ears * sources, modes and terms of the rest)
    sources: int

    def transfer(self, frequencies_hz: Sequence[float] | Array, decay_s: float) -> ComplexArray:
        """Return the pressure at each ear for each source alone, (ears, sources, frequencies), re 1 m in free field.

        4 pi G with one decay time for all modes, the pressure zone included. Holds below about the Schroeder frequency
        in a closed room with small, even absorption; real rooms differ by 3 to 6 dB, so compare layouts rather than
        promise levels. Raises Refused for a frequency above the one the room was solved for, or a decay time that
        is not positive. Source: rigid-wall expansion of the Green's function, textbook.
        """
        return self.weighed(self.response.weights(frequencies_hz, decay_s))

    def weighed(self, weights: ComplexArray) -> ComplexArray:
        """Return the pressure of `transfer` by the weights of the same room's modes at frequencies and a decay."""
        # two real products cost half of one complex product
        found = self.parts @ weights.real + 1j * (self.parts @ weights.imag)
        return np.asarray(4 * np.pi * found.reshape(-1, self.sources, weights.shape[1]))


class RoomResponse:
    """A room and its modes, whichever solver finds them; made by `solve`."""

    def __init__(self, shape: RoomShape, top_hz: float, sound_speed_mps: float, grade: Grade = "fine") -> None:
        self.shape = shape
        self.top_hz = top_hz
        self.sound_speed_mps = sound_speed_mps
        self.grade = grade
        self._refusal = ""

    @property
    def found_numerically(self) -> bool:
        """Whether the modes were found by an approximation, so that the answer has an error of its own."""
        return self.shape.kind != "box"

    @cached_property
    def coarser(self) -> RoomResponse:
        """The same room at a lower resolution; how far the two differ tells the error of the finer one."""
        return RoomResponse(self.shape, self.top_hz, self.sound_speed_mps, "coarse")

    @cached_property
    def modes(self) -> Modes:
        """The modes as found; a refusal is remembered as well, since it is asked for once for each seat."""
        if not self._refusal:
            try:
                return self._solved()
            except Refused as refusal:
                self._refusal = str(refusal)
        raise Refused(self._refusal)

    def _solved(self) -> Modes:
        shape, top, speed = self.shape, self.top_hz, self.sound_speed_mps
        coarse = self.grade == "coarse"
        if shape.kind == "any":
            from roomlint.figures.element_room import COARSER, affordable_refinement, element_modes

            room = (shape.outline, shape.facets, shape.volume_m3, top, speed)
            return element_modes(*room, affordable_refinement(*room) * (COARSER if coarse else 1.0))
        if shape.kind == "box":
            from roomlint.figures.box_room import box_modes

            (_, _), (length, width) = _bounds(shape.outline)
            return box_modes((length, width, shape.heights[0]), top, speed, 0.6 if coarse else 1.0)
        from roomlint.figures import sections
        from roomlint.figures.prism_room import prism_modes

        finer = -1 if coarse else 0
        k = 2 * np.pi * top / speed
        if shape.kind == "plan":
            section = sections.plan_section(shape.outline, k, finer)
            return prism_modes(section, shape.heights[0], 2, top, speed)
        section = sections.upright_section(shape.breaks, shape.heights, k, finer)
        return prism_modes(section, _bounds(shape.outline)[1][shape.level_axis], shape.level_axis, top, speed)

    @property
    def frequencies_hz(self) -> tuple[float, ...]:
        """Mode frequencies, lowest first, without the pressure zone at 0 Hz; well found up to the top frequency."""
        found = np.sqrt(self.modes.wavenumbers_squared[1:]) * self.sound_speed_mps / (2 * np.pi)
        return tuple(found.tolist())

    def check(self, points: Points) -> None:
        """Raise ValueError, before anything is solved, for a point outside the room by more than a centimetre."""
        self.shape.carried(points)

    def weights(
        self, frequencies_hz: Sequence[float] | Array, decay_s: float, sound_speed_mps: float | None = None
    ) -> ComplexArray:
        """Return what each mode, and each term of the rest, brings at each frequency: all ways are weighed alike.

        `sound_speed_mps`: of other air in the same room, whose modes are where they were. Raises Refused as
        `Paths.transfer` does.
        """
        k2 = k_squared(frequencies_hz, decay_s, sound_speed_mps or self.sound_speed_mps)
        if float(np.max(frequencies_hz)) > self.top_hz * (1 + 1e-9):
            raise Refused(f"the room was solved up to {self.top_hz:.0f} Hz")
        found: ComplexArray = np.concatenate(self.modes.weights(k2))
        return found

    def paths(self, sources: Points, ears: Points, *, near: bool = False) -> Paths:
        """Return the ways from sources to ears, to be evaluated at any frequency and decay.

        Raises Refused for a point outside the room, for none, or for a source within 0.1 m of an ear; `near` lets that
        pass, where what is heard is only summed up over a surface.
        """
        if not len(sources) or not len(ears):
            raise Refused("at least one source and one ear are needed for a response")
        here, there = self.shape.carried(sources), self.shape.carried(ears)
        if not near and too_near(here, there):
            raise Refused(f"a source within {LEAST_DISTANCE_M} m of an ear is no point any more")
        ways = [(here, there)]
        if self.shape.kind == "any":
            # Elements know nothing of a room's symmetry: every way in which it is its own image has an equal say.
            ways = list(zip(self.shape.alike(sources), self.shape.alike(ears), strict=True))
        both = sum(np.concatenate(self.modes.pairs(*way), axis=2) for way in ways) / len(ways)
        parts = np.asarray(both).reshape(len(there) * len(here), -1)
        return Paths(self, parts, len(here))

    def transfer(
        self, sources: Points, ears: Points, frequencies_hz: Sequence[float] | Array, decay_s: float
    ) -> ComplexArray:
        """Return the pressure at each ear for each source alone, (ears, sources, frequencies), re 1 m in free field.

        As `Paths.transfer`, with the errors of `paths`.
        """
        return self.paths(sources, ears).transfer(frequencies_hz, decay_s)

    def slopes(
        self,
        sources: Points,
        ears: Points,
        frequencies_hz: Sequence[float] | Array,
        decays_s: Sequence[float],
    ) -> list[tuple[ComplexArray, ComplexArray]]:
        """Return how the pressure changes with each coordinate of the sources, then of the ears, per metre.

        For each decay, both (ears, sources, 3, frequencies), by differences over two centimetres, inwards at a surface;
        good for moves of some centimetres: add slope times move to the pressure, then take the level. Errors as
        `transfer`.
        """
        weights = [self.weights(frequencies_hz, decay_s) for decay_s in decays_s]
        by_source = self._slopes(sources, ears, weights, moved_ears=False)
        by_ear = self._slopes(ears, sources, weights, moved_ears=True)
        return list(zip(by_source, by_ear, strict=True))

    def _slopes(
        self, moved: Points, others: Points, weights: list[ComplexArray], *, moved_ears: bool
    ) -> list[ComplexArray]:
        here = np.asarray(moved, dtype=float)
        moves = SLOPE_STEP_M * np.concatenate([np.eye(3), -np.eye(3)])
        places = (here[:, None, :] + moves).reshape(-1, 3)
        kept = self.shape.holds(places)
        places = np.where(kept[:, None], places, np.repeat(here, 6, axis=0))
        gone = SLOPE_STEP_M * kept.reshape(1, len(here), 2, 3, 1).sum(axis=2)
        paths = self.paths(others, places) if moved_ears else self.paths(places, others)
        found = []
        for weight in weights:
            pressure = paths.weighed(weight)
            pressure = pressure.swapaxes(0, 1) if moved_ears else pressure
            pairs = pressure.reshape(pressure.shape[0], len(here), 2, 3, -1)
            slope = (pairs[:, :, 0] - pairs[:, :, 1]) / np.maximum(gone, SLOPE_STEP_M)
            found.append(slope.swapaxes(0, 1) if moved_ears else slope)
        return found


def _bounds(outline: Sequence[Point2]) -> tuple[Point2, Point2]:
    x, y = np.asarray(outline).T
    return (float(x.min()), float(y.min())), (float(x.max()), float(y.max()))


def solve(outline: Sequence[Point2], facets: Sequence[Facet], top_hz: float, sound_speed_mps: float) -> RoomResponse:
    """Return the response of a room of any plan under any ceiling of plane pieces, up to `top_hz`.

    Rigid upright walls, a level floor, a closed room. A box is in closed form; a flat ceiling over a right-angled plan
    and slopes along one axis over a rectangle are a section drawn along an axis; all others are cut into elements. The
    answer does not depend on how the room is written. Raises Refused, before anything is solved, for an outline or
    a ceiling that cannot be, a frequency above 200 Hz, or a room that would take much longer than a second.
    """
    found = _solve(tuple(outline), tuple(facets), float(top_hz), float(sound_speed_mps))
    if isinstance(found, RoomResponse):
        return found
    raise Refused(found)


@lru_cache(maxsize=8)
def _solve(
    outline: tuple[Point2, ...], facets: tuple[Facet, ...], top_hz: float, sound_speed_mps: float
) -> RoomResponse | str:
    """Return the room, or why it is refused: a refusal is asked for once for each seat, so it is remembered too."""
    try:
        return _checked(outline, facets, top_hz, sound_speed_mps)
    except Refused as refusal:
        return str(refusal)


def _checked(
    outline: tuple[Point2, ...], facets: tuple[Facet, ...], top_hz: float, sound_speed_mps: float
) -> RoomResponse:
    if not 0 < top_hz <= TOP_HZ:
        raise Refused(f"modes of a room are computed up to {TOP_HZ:.0f} Hz, got {top_hz} Hz")
    shape = shape_of(outline, facets)
    k = 2 * np.pi * top_hz / sound_speed_mps
    if shape.kind == "any":
        from roomlint.figures.element_room import affordable_refinement

        affordable_refinement(shape.outline, shape.facets, shape.volume_m3, top_hz, sound_speed_mps)
    elif shape.kind == "plan":
        from roomlint.figures.sections import check_plan

        check_plan(shape.outline, k)
    elif shape.kind == "section":
        from roomlint.figures.sections import check_upright

        check_upright(shape.breaks, shape.heights, k)
    return RoomResponse(shape, top_hz, sound_speed_mps)
