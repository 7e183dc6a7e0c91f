"""What nearby surfaces do to loudspeakers, ports and seats."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from roomlint.design.base import Value, need
from roomlint.design.listening import Loudspeaker, Seat, Subwoofer
from roomlint.figures import boundary, plan
from roomlint.figures.direction import direction_vector, distance_m
from roomlint.measure.figure import Figure, figure
from roomlint.measure.view import View

if TYPE_CHECKING:
    from roomlint.design.base import Point
    from roomlint.design.products import Port, Product, Transducer
    from roomlint.figures.direction import Vector3

Source = Loudspeaker | Subwoofer
REFLECTION_FACTOR = 0.8
"""A furnished room's wall gives back about this much of the pressure; a rigid one would give all."""
CLEAR_OF_ITS_SURFACE_M = 0.06


class Boundaries(View):
    """Distances to surfaces and what follows from them."""

    def seat_to_wall(self, seat: Seat) -> Figure:
        """Distance from the ear to the nearest wall."""
        return self.figures.space.nearest_wall(need(seat.ear, seat, "ear"))

    def transducer(self, source: Source) -> Transducer:
        """Return the data of a source's product, or tell which key would give them."""
        product = need(source.product, source, "product")
        return need(product.loudspeaker, product, "loudspeaker")

    def port(self, source: Source) -> Port:
        """Return the port of a source's product."""
        product = need(source.product, source, "product")
        return need(self.transducer(source).port, product, "loudspeaker.port")

    def behind(self, source: Source, listener: Seat) -> Figure:
        """Distance from a source straight back, away from the listener, to the first surface it meets."""
        place, ear = need(source.position, source, "position"), need(listener.ear, listener, "ear")
        return self.once(("behind", source.id, listener.id), lambda: self._behind(place, ear))

    def _behind(self, place: Point, ear: Point) -> Figure:
        space = self.figures.space

        def compute(x: float, y: float, ex: float, ey: float) -> float:
            away = (x - ex, y - ey, 0.0)
            if math.hypot(*away) == 0:
                raise Refused("source and listener stand over each other")
            return space.free_way((x, y, place.z.value), away).distance_m

        return figure("distance to the surface behind", "m", compute, place.x, place.y, ear.x, ear.y)

    def rear_null_hz(self, source: Source, listener: Seat) -> Figure:
        """First cancellation by the surface behind the source, c/4d."""
        space = self.figures.space
        back = self.behind(source, listener)
        speed = space.sound_speed_m_s
        distance = Value(max(back.value, 0.01), back.u, "m")
        made = figure("first null of the wall behind", "Hz", lambda d: boundary.rear_null_hz(d, speed), distance)
        return Figure(
            made.name, made.value, "Hz", made.u, inputs=back.inputs, shares=back.shares, assumes=space.air_assumption
        )

    def rear_null_depth(self, source: Source, listener: Seat) -> Figure:
        """Depth of that cancellation at the listener."""
        place, ear = need(source.position, source, "position"), need(listener.ear, listener, "ear")
        direct = distance_m(place.xyz, ear.xyz)
        back = self.behind(source, listener)
        depth = boundary.null_depth_db(direct, direct + 2 * max(back.value, 0.001), REFLECTION_FACTOR)
        null = self.rear_null_hz(source, listener)
        assumes = (f"a wall that reflects {REFLECTION_FACTOR:.0%} of the pressure", *null.assumes)
        name = f"depth of the null at {null.value:.0f} Hz from the wall {back.value:.2f} m behind"
        return Figure(name, depth, "dB", inputs=back.inputs, assumes=assumes)

    def clear_of_rear_null_m(self, hz: float) -> float:
        """Distance from the wall within which the first null stays above a frequency."""
        return boundary.rear_null_distance_m(hz, self.figures.space.sound_speed_m_s)

    def closest_ratio(self, source: Source) -> Figure:
        """Ratio of the two most alike of a source's distances: floor, and the two nearest walls it faces."""
        place = need(source.position, source, "position")
        walls = self.figures.space.faced_walls(place)[:2]
        inputs = dict.fromkeys((place.x, place.y, place.z))
        distances = [place.z.value, *(wall.value for wall in walls)]
        ratio = boundary.closest_distance_ratio([max(distance, 0.01) for distance in distances])
        shown = ", ".join(f"{distance:.2f} m" for distance in sorted(distances))
        name = f"ratio of the two most alike boundary distances ({shown})"
        return Figure(name, ratio, "", inputs=tuple(inputs))

    def port_gap(self, source: Source) -> Figure:
        """Free distance in front of the port's mouth, as measured, or from where the cabinet stands."""
        measured = source.port_clearance_m
        if measured is not None:
            return figure("clearance in front of the port", "m", lambda gap: gap, measured)
        if self.port(source).face != "rear":
            need(None, source, "port_clearance")
        return self.once(("port", source.id), lambda: self._rear_port_gap(source))

    def _rear_port_gap(self, source: Source) -> Figure:
        place = need(source.position, source, "position")
        product = need(source.product, source, "product")
        depth = need(product.depth_m, product, "depth")
        facing = self._facing_deg(source)
        space = self.figures.space

        def compute(x: float, y: float, azimuth: float, deep: float) -> float:
            back = (math.sin(math.radians(azimuth)), -math.cos(math.radians(azimuth)), 0.0)
            return space.free_way((x, y, place.z.value), back).distance_m - deep

        return figure("clearance behind the rear port", "m", compute, place.x, place.y, facing, depth)

    def _facing_deg(self, source: Source) -> Value:
        """Return the azimuth that a cabinet's front faces in the room."""
        if isinstance(source, Subwoofer):
            return need(source.facing_deg, source, "facing")
        aim = need(source.aim, source, "aim")
        if aim.seat is None:
            return need(aim.azimuth_deg, source, "aim.azimuth")
        place, ear = need(source.position, source, "position"), need(aim.seat.ear, aim.seat, "ear")
        dx, dy = ear.x.value - place.x.value, ear.y.value - place.y.value
        return Value(-math.degrees(math.atan2(dx, dy)), 0.0, "deg")

    def port_need_m(self, product: Product, port: Port) -> tuple[float, float]:
        """Return the least and the comfortable clearance of a port."""
        diameter = need(port.diameter_m, product, "loudspeaker.port.diameter").value
        if port.face == "bottom":
            return boundary.plinth_gap_m(diameter), boundary.plinth_gap_m(diameter)
        return boundary.port_gap_needed_m(diameter), boundary.port_gap_wanted_m(diameter)

    def ahead(self, source: Source) -> Figure:
        """Return the free way in front of a cabinet, along its axis, to the first surface or obstacle."""
        place = need(source.position, source, "position")
        if isinstance(source, Subwoofer):
            facing = self._facing_deg(source)

            def level(x: float, y: float, z: float, azimuth: float) -> float:
                return self._free_ahead((x, y, z), direction_vector(azimuth, 0.0))

            return figure("free way in front", "m", level, *place.values, facing)
        axis = self.figures.aim.axis(source)

        def along(x: float, y: float, z: float, *rest: float) -> float:
            return self._free_ahead((x, y, z), axis.of((x, y, z), *rest))

        return figure("free way in front", "m", along, *place.values, *axis.inputs, assumes=axis.assumes)

    def _free_ahead(self, start: tuple[float, float, float], way: Vector3) -> float:
        """Return the free way from a little in front: what is flush with a surface must not meet that surface."""
        x, y, z = (at + CLEAR_OF_ITS_SURFACE_M * along for at, along in zip(start, way, strict=True))
        return CLEAR_OF_ITS_SURFACE_M + self.figures.space.free_way((x, y, z), way).distance_m

    def tightest_face(self, source: Source) -> Figure:
        """Return the clearance of a cabinet's left, right or rear face, whichever is tightest."""
        place = need(source.position, source, "position")
        product = need(source.product, source, "product")
        width, depth = need(product.width_m, product, "width"), need(product.depth_m, product, "depth")
        facing, space = self._facing_deg(source), self.figures.space

        def clearances(x: float, y: float, azimuth: float, wide: float, deep: float) -> list[tuple[float, str]]:
            ways = ((90.0, wide / 2, "left face"), (-90.0, wide / 2, "right face"), (180.0, deep, "rear face"))
            return [
                (space.free_way((x, y, place.z.value), direction_vector(azimuth + turn, 0.0)).distance_m - size, face)
                for turn, size, face in ways
            ]

        inputs = (place.x, place.y, facing, width, depth)
        face = min(clearances(*(value.value for value in inputs)))[1]
        return figure(f"clearance of its {face}", "m", lambda *values: min(clearances(*values))[0], *inputs)

    def corner(self, source: Source) -> Figure:
        """Return the distance in plan to the nearest corner of the room."""
        place = need(source.position, source, "position")
        outline = self.figures.space.outline

        def compute(x: float, y: float) -> float:
            return plan.nearest_corner(outline, (x, y)).distance_m

        return figure("distance to the nearest corner", "m", compute, place.x, place.y)
