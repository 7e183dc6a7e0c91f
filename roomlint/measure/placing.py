"""Places that a room allows for subwoofers, and what each set of them would do at the seats."""

from __future__ import annotations

import math
from itertools import combinations
from typing import TYPE_CHECKING, Final, NamedTuple

from roomlint.design.base import Missing, need
from roomlint.figures import enclosure, solid
from roomlint.figures.domain import Refused
from roomlint.measure.figure import Figure
from roomlint.measure.seat_bass import BAND_HZ, HIGH_HZ, LOW_HZ
from roomlint.measure.view import View
from roomlint.plane import true_corners, true_walls

if TYPE_CHECKING:
    from collections.abc import Iterator

    from roomlint.design.shell import Opening
    from roomlint.figures.direction import Point3
    from roomlint.figures.enclosure import Enclosure
    from roomlint.plane import Wall

OFF_M: Final = 0.35
"""From a wall to the middle of a subwoofer that stands against it."""
HALF_M: Final = 0.25
"""Half of what one takes, with a hand's breadth around it."""
UP_M: Final = 0.25
LEAST_WALL_M: Final = 1.2
"""A wall that is shorter has no middle to speak of."""
MOST_SETS: Final = 4
"""Subwoofers of a set that is tried, at the most."""
MOST_SPOTS: Final = 12
BEST_FEW: Final = 4
WORTH_DB: Final = 1.0
LOST_DB: Final = -6.0
"""Half the pressure of its octave: what an equaliser lifts."""


class Spot(NamedTuple):
    """A place for a subwoofer: the middle of a wall, or a corner between two."""

    walls: tuple[str, ...]
    at: Point3


class Placed(NamedTuple):
    """Some spots together, and how far the seats then differ."""

    spots: tuple[Spot, ...]
    spread_db: float

    @property
    def corners(self) -> bool:
        """Whether the spots are corners, not middles of walls."""
        return len(self.spots[0].walls) > 1

    @property
    def names(self) -> tuple[str, ...]:
        """What the file calls the walls, or the pairs of walls of the corners."""
        return tuple("/".join(spot.walls) for spot in self.spots)


class Cure(NamedTuple):
    """A set with its spread as a figure."""

    placed: Placed
    spread: Figure


class Placing(View):
    """Subwoofers elsewhere: the same number, or one more, of equal level and undelayed."""

    def spots(self) -> tuple[Spot, ...]:
        """Return the middles of walls and the corners where one can stand: inside, clear, and out of the way."""
        return self.once("spots", lambda: tuple(self._clear_spots())[:MOST_SPOTS])

    def _clear_spots(self) -> Iterator[Spot]:
        space = self.figures.space
        shape = space.enclosure(self.world)
        walls = true_walls(space.outline(self.world))
        for wall in walls:
            if wall.length_m >= LEAST_WALL_M:
                spot = (*wall.at(wall.length_m / 2.0, OFF_M), UP_M)
                if self._is_clear(shape, spot):
                    yield Spot((space.wall_name(wall.piece_at(wall.length_m / 2.0)),), spot)
        for corner in true_corners(space.outline(self.world)):
            beside = [wall for wall in walls if min(math.dist(corner.point, end) for end in wall[:2]) < OFF_M / 10.0]
            if not corner.reentrant and len(beside) == 2:  # noqa: PLR2004  two walls meet
                (ax, ay), (bx, by) = beside[0].inward, beside[1].inward
                x, y = corner.point[0] + OFF_M * (ax + bx), corner.point[1] + OFF_M * (ay + by)
                if self._is_clear(shape, (x, y, UP_M)):
                    yield Spot(tuple(self._named(wall, corner.point) for wall in beside), (x, y, UP_M))

    def _named(self, wall: Wall, near: tuple[float, float]) -> str:
        along = min(max(wall.along_m(near), 0.0), wall.length_m)
        return self.figures.space.wall_name(wall.piece_at(along))

    def _is_clear(self, shape: Enclosure, spot: Point3) -> bool:
        """Whether a subwoofer there is in the room, in no way, and clear of obstacles, racks, seats and cabinets."""
        try:
            enclosure.refuse_outside(shape, spot)
        except Refused:
            return False
        x, y, z = spot
        body = solid.upright_box((x - HALF_M, y - HALF_M, 0.0), (x + HALF_M, y + HALF_M, 2.0 * z))
        if shape.height_m((x, y)) < 2.0 * z:
            return False
        others = [*self.figures.space.obstacles(self.world), *self._openings(shape), *self._kept()]
        if any(solid.clearance_m(body, other) < 0.0 for other in others):
            return False
        taken = [source.position for source in self.design.loudspeakers] + [seat.ear for seat in self.design.seats]
        # What hangs above it is not in its way.
        return all(
            math.dist((x, y), (one.x.value, one.y.value)) > 2.0 * HALF_M or one.z.value > 1.5  # noqa: PLR2004  m
            for one in taken
            if one is not None
        )

    def _kept(self) -> Iterator[solid.Solid]:
        """Yield the racks and the walkways whose places are given."""
        for rack in self.design.racks:
            if self.figures.bodies.is_placed(rack):
                yield self.figures.bodies.solid(self.world, rack)
        length_m = self.design.shell.length_m.value
        for walkway in self.design.shell.walkways:
            sides = (walkway.from_left, walkway.from_front, walkway.width, walkway.depth)
            left, front, width, depth = (side.value if side is not None else None for side in sides)
            if left is not None and front is not None and width is not None and depth is not None:
                low = (left, length_m - front - depth, 0.0)
                yield solid.upright_box(low, (left + width, length_m - front, 2.0 * UP_M))

    def _openings(self, shape: Enclosure) -> Iterator[solid.Upright]:
        """Yield what is kept free before doors and whatever else reaches down to the floor."""
        for opening in self.design.shell.openings:
            hole = self._hole(opening)
            if hole is not None:
                yield enclosure.before_opening(shape, hole, OFF_M)

    def _hole(self, opening: Opening) -> enclosure.Opening | None:
        try:
            hole = self.figures.staging.opening(opening)(self.world)
        except Missing:
            return None
        return hole if hole.sill_m < 2.0 * UP_M else None

    def sets(self) -> tuple[Placed, ...]:
        """Return the best few sets of middles or corners, of as many subwoofers as there are or one more, best first.

        Sets in which all seats lose a note are left out.
        """
        return self.once("sets", self._sets)

    def _sets(self) -> tuple[Placed, ...]:
        import numpy as np

        from roomlint.figures.bass import level_db, seat_range_db

        spots = self.spots()
        chosen = self._chosen(spots)
        if not chosen:
            return ()
        bass = self.figures.bass
        ears = [need(seat.ear, seat, "ear").xyz for seat in bass.placed_seats()]
        paths = bass.response_in(self.world).paths([spot.at for spot in spots], ears)
        each = [paths.weighed(bass.weights(self.world, decay_s)) for decay_s in bass.decays_s(self.world)]
        picked = np.zeros((len(chosen), len(spots)))
        for row, members in enumerate(chosen):
            picked[row, list(members)] = 1.0
        judged = slice(BAND_HZ.index(LOW_HZ), BAND_HZ.index(HIGH_HZ) + 1)
        together = (np.einsum("cs,esf->cef", picked, one[..., judged]) for one in each)
        # The kindest decay, as for the room as it is.
        kindest = np.min([seat_range_db(level_db(one)) for one in together], axis=0)
        best = sorted(range(len(chosen)), key=lambda row: (round(float(kindest[row]), 3), len(chosen[row]), row))
        found: list[Placed] = []
        for row in best:
            if len(found) == BEST_FEW:
                break
            # A note that all seats lose makes them alike, and is no cure.
            lost = max(float(bass.statistics(np.einsum("s,esf->ef", picked[row], one)).common[1]) for one in each)
            if lost > LOST_DB:
                found.append(Placed(tuple(spots[number] for number in chosen[row]), float(kindest[row])))
        return tuple(found)

    def _chosen(self, spots: tuple[Spot, ...]) -> list[tuple[int, ...]]:
        """Return which spots are tried together: as many as there are subwoofers and one more, all of one kind."""
        count = len(self.design.subwoofers)
        kinds = [[n for n, spot in enumerate(spots) if (len(spot.walls) > 1) is corners] for corners in (False, True)]
        many = [number for number in (count, count + 1) if number <= MOST_SETS]
        return [members for number in many for kind in kinds for members in combinations(kind, number)]

    def best(self) -> tuple[Cure, ...]:
        """Return the best few sets with the spread that each makes, as uncertain as the room's own is."""
        u = self.figures.bass.seat_spread().u
        return tuple(
            Cure(one, Figure.plain("level range over the seats", "dB", one.spread_db, u=u)) for one in self.sets()
        )

    def cure(self, now: Figure, enough_db: float) -> Cure | None:
        """Return the best set that helps: one of as many subwoofers where that is even enough, else any.

        It helps where it is more than a decibel, and more than the uncertainty, better than the room as it is.
        """
        same = next((one for one in self.sets() if len(one.spots) == len(self.design.subwoofers)), None)
        best = same if same is not None and same.spread_db <= enough_db else next(iter(self.sets()), None)
        if best is None or now.value - best.spread_db <= max(WORTH_DB, now.u):
            return None
        return Cure(best, Figure.plain("level range over the seats", "dB", best.spread_db, u=now.u))
