"""What nearby surfaces do to loudspeakers, ports and seats."""

from __future__ import annotations

import math
from itertools import islice
from typing import TYPE_CHECKING, Final, NamedTuple, TypeAlias

from roomlint.design.base import Missing, need
from roomlint.design.quantity import assumed
from roomlint.figures import boundary, enclosure, images, ray
from roomlint.figures.direction import COINCIDENT_M
from roomlint.figures.domain import Refused
from roomlint.measure.view import View
from roomlint.plane import true_corners

if TYPE_CHECKING:
    from roomlint.design.base import Point
    from roomlint.design.listening import Loudspeaker, Seat, Subwoofer
    from roomlint.design.products import Port, Transducer
    from roomlint.design.quantity import Quantity
    from roomlint.figures.images import Reflection
    from roomlint.measure.figure import Figure
    from roomlint.measure.world import World

Source: TypeAlias = "Loudspeaker | Subwoofer"
NULL_BAND_HZ: Final = (60.0, 200.0)
"""Below, the room's modes rule; above, cabinets no longer radiate to all sides."""
HEAVY: Final = frozenset({"masonry", "hollow-block", "concrete"})
HEAVY_FACTOR: Final = (0.98, "masonry that returns 98 % of the pressure")
LIGHT_FACTOR: Final = (0.85, "a wall on studs that returns 85 % of the pressure, the least of board on studs")
"""Board on studs absorbs 0.29 at 125 Hz and 0.10 at 250 Hz: the root of what is left is 0.84 to 0.95. The least makes
the shallowest dip: what fails then fails with any board, and nobody is asked for what no file knows."""
DEFAULT_CROSSOVER: Final = (80.0, 0.0, "Hz", "a crossover at 80 Hz, as none is given")
"""It is chosen, not measured: a file that chooses another is judged by that."""
BAND_HZ: Final = (40.0, 400.0)
"""Where a loudspeaker's radiated power is scanned for what three surfaces take."""


class Dip(NamedTuple):
    """What one surface takes from a loudspeaker's sound at a seat."""

    level: Figure
    """At its deepest, against the direct sound, dB."""
    frequency: Figure
    surface: str
    level_surface: bool
    """Whether it is the floor or a level ceiling, which no place in the plan gets away from."""


class Boundaries(View):
    """Distances to surfaces and what follows from them."""

    def seat_to_wall(self, seat: Seat) -> Figure:
        """Distance from the ear to the nearest wall."""
        return self.to_wall(need(seat.ear, seat, "ear"))

    def to_wall(self, point: Point) -> Figure:
        """Distance in plan from a point to the nearest wall."""
        return self.figure("distance to the nearest wall", "m", lambda w: self._to_wall_m(w, point), per_m=2.0)

    def _to_wall_m(self, world: World, point: Point) -> float:
        count = len(self.design.shell.corners)
        return min(self.figures.space.wall_distance_m(world, point, wall) for wall in range(count))

    def nearest_wall_name(self, point: Point) -> str:
        """Return what the file calls the wall that is nearest to a point."""
        return self.figures.space.wall_name(self.figures.space.nearest_wall(point))

    def transducer(self, source: Source) -> Transducer:
        """Return the data of a source's product, or tell which key would give them."""
        product = need(source.product, source, "product")
        return need(product.loudspeaker, product, "loudspeaker")

    def port(self, source: Source) -> Port:
        """Return the port of a source's product."""
        product = need(source.product, source, "product")
        return need(self.transducer(source).port, product, "loudspeaker.port")

    def images(self, world: World, source: Source, seat: Seat) -> tuple[Reflection, ...]:
        """Return the first-order reflections of a source at a seat in a world, off every real surface."""

        def find(w: World) -> tuple[Reflection, ...]:
            place, ear = w.xyz(need(source.position, source, "position")), w.xyz(need(seat.ear, seat, "ear"))
            if math.dist(place, ear) < COINCIDENT_M:
                raise Refused("the loudspeaker stands where the ear is")
            return images.reflections_in(self.figures.space.enclosure(w), place, ear, self.figures.space.obstacles(w))

        return world.once(("images", source, seat), find)

    def dips(self, source: Source, seat: Seat) -> tuple[Dip, ...]:
        """Return what each wall and the ceiling take from a source's sound at a seat, deepest first, in the band.

        Image path against direct path, each surface for itself; the pressure it returns by its construction.
        """
        found = []
        for reflection in self.images(self.world, source, seat):
            dip = self._dip(source, seat, reflection)
            if dip is not None:
                found.append(dip)
        return tuple(sorted(found, key=lambda dip: dip.level.value))

    def _dip(self, source: Source, seat: Seat, reflection: Reflection) -> Dip | None:
        name = self._surface(reflection)
        factor = self._factor(name)

        def paths(world: World) -> tuple[float, float]:
            # The same surface in another world: the same kind and number, as long as it still reflects.
            for other in self.images(world, source, seat):
                if (other.kind, other.number) == (reflection.kind, reflection.number):
                    return other.direct_m, other.path_m
            raise Refused("the reflection misses the seat")

        frequency = self.figure(
            "frequency of the cancellation",
            "Hz",
            lambda w: boundary.path_null_hz(*paths(w), self.figures.space.sound_speed_m_s(w)),
        )
        if not NULL_BAND_HZ[0] <= frequency.value <= NULL_BAND_HZ[1]:
            return None
        level = self.figure("dip", "dB", lambda w: boundary.null_depth_db(*paths(w), w(factor)))
        return Dip(level, frequency, name, self._is_level(reflection))

    def _is_level(self, reflection: Reflection) -> bool:
        if reflection.kind == "ceiling":
            return self.figures.space.facets(self.world)[reflection.number].slope_deg < _LEVEL_DEG
        return reflection.kind == "floor"

    def _surface(self, reflection: Reflection) -> str:
        if reflection.kind == "wall":
            return self.figures.space.wall_name(reflection.number)
        return reflection.kind

    def _factor(self, surface: str) -> Quantity:
        """Return the pressure that a surface returns in the bass: by its construction, assumed and told."""
        value, words = HEAVY_FACTOR if self._is_heavy(surface) else LIGHT_FACTOR
        return self.once(("factor", words), lambda: assumed(value, 0.0, "", words))

    def _is_heavy(self, surface: str) -> bool:
        found = self.design.shell.surface(surface)
        return found is not None and found.framing.kind in HEAVY

    def power_dip(self, source: Source) -> Figure:
        """Dip of the power that a source radiates, by the floor and the two nearest walls at right angles, dB.

        The walls that it stands square in front of, opposite ones not together: those do not stack.
        """
        place = need(source.position, source, "position")

        def compute(world: World) -> float:
            distances = self._corner_distances(world, place)
            speed = self.figures.space.sound_speed_m_s(world)
            return boundary.deepest_power_dip(distances, *BAND_HZ, speed, step_hz=4.0)[1]

        return self.figure("dip of the radiated power", "dB", compute)

    def _corner_distances(self, world: World, place: Point) -> list[float]:
        """Return the height above the floor and the distances to the two nearest walls that make a corner."""
        x, y, z = world.xyz(place)
        near = sorted(
            (max(surface.off_m((x, y, z)), 0.01), surface.wall.inward)
            for surface in self.figures.space.enclosure(world).surfaces
            if surface.wall is not None and 0.0 <= surface.wall.along_m((x, y)) <= surface.wall.length_m
        )
        found = [max(z, 0.01)]
        if near:
            nearest, (ix, iy) = near[0]
            beside = (distance for distance, (jx, jy) in near if abs(ix * jx + iy * jy) < _NOT_OPPOSITE)
            found += [nearest, *islice(beside, 1)]
        return found

    def port_gap(self, source: Source) -> Figure:
        """Free distance before the port's mouth, as measured, or from where the cabinet stands."""
        measured = source.port_clearance_m
        if measured is not None:
            return self.figure("clearance before the port", "m", lambda w: w(measured))
        if self.port(source).face != "rear":
            raise Missing(source, "port_clearance")
        place = need(source.position, source, "position")
        product = need(source.product, source, "product")
        depth = need(product.depth_m, product, "depth")

        def compute(world: World) -> float:
            x, y, z = self.figures.bodies.axis(world, source)
            shape = self.figures.space.enclosure(world)
            hit = ray.first_met(shape, world.xyz(place), (-x, -y, -z), self.figures.space.obstacles(world))
            return hit.distance_m - world(depth)

        return self.figure("clearance behind the rear port", "m", compute, source)

    def port_need_m(self, source: Source) -> tuple[float, float]:
        """Return the least and the comfortable clearance of a port; the maker's own where the sheet gives it."""
        port, product = self.port(source), need(source.product, source, "product")
        if port.clearance_m is not None:
            least = boundary.port_gap_needed_m(port.diameter_m.value) if port.diameter_m is not None else 0.0
            return min(least, port.clearance_m.value), port.clearance_m.value
        diameter = need(port.diameter_m, product, "loudspeaker.port.diameter").value
        if port.face == "bottom":
            return boundary.plinth_gap_m(diameter), boundary.port_gap_needed_m(diameter)
        return boundary.port_gap_needed_m(diameter), boundary.port_gap_wanted_m(diameter)

    def ahead(self, source: Source) -> Figure:
        """Free way before a cabinet's front, along its axis, to the first surface or obstacle that its face meets."""
        place = need(source.position, source, "position")
        bodies = self.figures.bodies
        flush = self._is_flush(source)

        def compute(world: World) -> float:
            if flush:
                # What sits in the surface has no face before it that could touch: the way counts from its middle.
                space = self.figures.space
                start, way = world.xyz(place), bodies.axis(world, source)
                return ray.first_met(space.enclosure(world), start, way, space.obstacles(world)).distance_m
            width, height, _ = (world(size) for size in bodies.sizes(source))
            # What stands on the floor, to the tape's tolerance, is not stopped by the floor.
            height = min(height, 2.0 * max(world(place.z), _LEAST_FACE_M))
            shape, others = self.figures.space.enclosure(world), self.figures.space.obstacles(world)
            axis = bodies.axis(world, source)
            return ray.ahead_of_face(shape, world.xyz(place), axis, width, height, others).distance_m

        return self.figure("free way before the front", "m", compute, source)

    @staticmethod
    def _is_flush(source: Source) -> bool:
        data = source.product.loudspeaker if source.product is not None else None
        return data is not None and any(place.startswith("in-") for place in data.placement)

    def fit(self, source: Source) -> Figure:
        """How clear a cabinet stands of walls and ceiling; negative: how far it pokes through.

        Raises `Missing` without the cabinet's sizes: an ordinary one is too little to tell whether this one fits.
        """
        need(source.position, source, "position")
        product = need(source.product, source, "product")
        for size, key in ((product.width_m, "width"), (product.height_m, "height"), (product.depth_m, "depth")):
            need(size, product, key)

        def compute(world: World) -> float:
            body = self.figures.bodies.solid(world, source)
            return enclosure.solid_clearance(self.figures.space.enclosure(world), body, floor=False).distance_m

        return self.figure("clearance of the cabinet", "m", compute, per_m=3.0)

    def corner(self, source: Source) -> Figure:
        """Distance in plan to the nearest corner that encloses the source; corners that poke inward do not count."""
        place = need(source.position, source, "position")

        def compute(world: World) -> float:
            at = (world(place.x), world(place.y))
            corners = true_corners(self.figures.space.outline(world))
            return min(math.dist(at, corner.point) for corner in corners if not corner.reentrant)

        return self.figure("distance to the nearest corner", "m", compute, per_m=2.0)

    def band_ends(self, subwoofer: Subwoofer) -> tuple[Quantity, ...]:
        """Return what a subwoofer's band ends at, the lowest of them: its low-pass and the highest crossover entered.

        Where neither is given, the one that is assumed.
        """
        given = (subwoofer.low_pass_hz, self.figures.bass.highest_crossover())
        ends = tuple(end for end in given if end is not None)
        return ends or (self.once("band end", lambda: assumed(*DEFAULT_CROSSOVER)),)

    def own_null(self, subwoofer: Subwoofer) -> Figure:
        """First cancellation of a subwoofer by the wall that it is nearest to, over the end of its band."""
        place, ends = need(subwoofer.position, subwoofer, "position"), self.band_ends(subwoofer)

        def compute(world: World) -> float:
            distance, end = max(self._to_wall_m(world, place), 0.01), min(world(end) for end in ends)
            return boundary.rear_null_hz(distance, self.figures.space.sound_speed_m_s(world)) / end

        return self.figure("null of the wall over the band's end", "", compute)


_LEVEL_DEG: Final = 0.05
_LEAST_FACE_M: Final = 0.01
_NOT_OPPOSITE: Final = 0.5
"""Two walls whose inward directions differ by 60 to 120 degrees form a corner; opposite ones do not."""
