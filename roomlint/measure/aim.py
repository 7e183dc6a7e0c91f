"""Where loudspeakers point, what they cover, and whether their mounts can point them there."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING, NamedTuple

from roomlint import cutting, roof
from roomlint.design.base import Missing, need
from roomlint.figures.coverage import FRONT, UP, mounted_axis, off_axis_deg, off_axis_parts
from roomlint.figures.coverage import OffAxis as Parts
from roomlint.figures.direction import angle_between_deg, direction_vector, near_deg, toward
from roomlint.figures.domain import Refused
from roomlint.figures.lobing import Driver, Interference, interference
from roomlint.measure.view import View

if TYPE_CHECKING:
    from roomlint.design.base import Pair, Point
    from roomlint.design.listening import Loudspeaker, Seat
    from roomlint.design.products import Transducer
    from roomlint.design.quantity import Quantity
    from roomlint.figures.direction import Point3, Vector3
    from roomlint.measure.figure import Figure
    from roomlint.measure.world import World

CEILINGS = frozenset({"ceiling", "grid-ceiling"})
DOWN_DEG = 180.0
STEEP = math.sqrt(0.5)
"""An axis that rises or falls by more than 45 degrees has no sideways of its own: one cone is judged."""
SQUARE_OUT = "facing square out of the surface it is mounted on"
NOT_TILTED = "not tilted on its mount, as no tilt is given"
NOT_SWIVELLED = "not swivelled on its mount, as no swivel is given"
LEVEL_AIM = "level aim, as no elevation is given"
ONE_BETWEEN = "what plays above the crossover of the two drivers sits between them"
IN_STEP = "crossovers of fourth order, drivers in step on the axis"
_ORIGIN = (0.0, 0.0, 0.0)


class Plane(NamedTuple):
    """The surface a loudspeaker is mounted on."""

    normal: Vector3
    top: Vector3
    overhead: bool


class Aiming(View):
    """Loudspeakers' axes against the seats."""

    def place(self, speaker: Loudspeaker) -> Point:
        """Return the loudspeaker's position."""
        return need(speaker.position, speaker, "position")

    def data(self, speaker: Loudspeaker) -> Transducer:
        """Return the loudspeaker data of its product."""
        product = need(speaker.product, speaker, "product")
        return need(product.loudspeaker, product, "loudspeaker")

    def half_coverage_deg(self, speaker: Loudspeaker) -> float:
        """Return half the nominal horizontal coverage, deg."""
        data = self.data(speaker)
        return need(data.horizontal_deg, data, "horizontal_coverage").value / 2.0

    def half_height_deg(self, speaker: Loudspeaker) -> float:
        """Return half the nominal vertical coverage, deg."""
        data = self.data(speaker)
        return need(data.vertical_deg, data, "vertical_coverage").value / 2.0

    def axis(self, world: World, speaker: Loudspeaker) -> Vector3:
        """Return where a loudspeaker points: as its aim says, or square out of the surface it is mounted on."""
        return world.once(("axis", speaker), lambda w: self._axis(w, speaker))

    def _axis(self, world: World, speaker: Loudspeaker) -> Vector3:
        aim = speaker.aim
        if aim is not None and aim.seat is not None:
            return toward(world.xyz(self.place(speaker)), world.xyz(need(aim.seat.ear, aim.seat, "ear")))
        if aim is not None:
            azimuth = world(need(aim.azimuth_deg, speaker, "aim.azimuth"))
            if aim.elevation_deg is None:
                world.assume(LEVEL_AIM)
                return direction_vector(azimuth, 0.0)
            return direction_vector(azimuth, world(aim.elevation_deg))
        return self._mounted(world, speaker)

    def turned(self, speaker: Loudspeaker) -> bool:
        """Whether a loudspeaker's mount, on a wall or the ceiling, is said to be swivelled or tilted."""
        held = speaker.mounting
        if held is None or (held.on not in CEILINGS and held.on not in self.design.shell.wall_names):
            return False
        return held.swivel_deg is not None or held.tilt_deg is not None

    def mount_off_aim(self, speaker: Loudspeaker) -> Figure:
        """Angle between where a loudspeaker's aim points and where its mount, as it is turned, does."""
        return self.figure(
            "angle between aim and mount", "deg",
            lambda w: angle_between_deg(self.axis(w, speaker), self._mounted(w, speaker)), speaker,
        )  # fmt: skip

    def _mounted(self, world: World, speaker: Loudspeaker) -> Vector3:
        plane, held = self.plane(world, speaker), need(speaker.mounting, speaker, "aim")
        baffle = self._baffle_deg(world, speaker)
        if plane.overhead and baffle:
            # An angled baffle in a ceiling looks wherever it was turned to: only the file can tell.
            raise Missing(speaker, "aim")
        swivel = world(held.swivel_deg) if held.swivel_deg is not None else 0.0
        tilt = world(held.tilt_deg) if held.tilt_deg is not None else 0.0
        if held.swivel_deg is None and held.tilt_deg is None:
            world.assume(SQUARE_OUT)
        elif held.tilt_deg is None:
            world.assume(NOT_TILTED)
        elif held.swivel_deg is None:
            world.assume(NOT_SWIVELLED)
        return mounted_axis(
            plane.normal,
            plane.top,
            baffle_deg=baffle,
            baffle_toward_deg=DOWN_DEG,
            swivel_deg=swivel,
            tilt_deg=tilt,
        )

    def plane(self, world: World, speaker: Loudspeaker) -> Plane:
        """Return the wall or the part of the ceiling that it is mounted on; `Missing` aim when it is on neither."""
        held = speaker.mounting.on if speaker.mounting is not None else None
        shell, space = self.design.shell, self.figures.space
        if held in CEILINGS:
            x, y, _ = world.xyz(self.place(speaker))
            return Plane(roof.facet_over(space.facets(world), (x, y)).normal, FRONT, overhead=True)
        if held in shell.wall_names:
            nx, ny = cutting.inward_normal(space.outline(world), shell.wall_names.index(held))
            return Plane((nx, ny, 0.0), UP, overhead=False)
        raise Missing(speaker, "aim")

    def _baffle_deg(self, world: World, speaker: Loudspeaker) -> float:
        data = speaker.product.loudspeaker if speaker.product is not None else None
        return world(data.baffle_deg) if data is not None and data.baffle_deg is not None else 0.0

    def is_cone(self, speaker: Loudspeaker) -> bool:
        """Whether it points so far up or down that one cone is judged instead of two planes."""
        return abs(self.axis(self.world, speaker)[2]) > STEEP

    def seats(self) -> tuple[Seat, ...]:
        """Return the seats; raises `Missing` when there is none or one has no ear position."""
        if not self.design.seats:
            raise Missing(self.design, "seats")
        for seat in self.design.seats:
            need(seat.ear, seat, "ear")
        return self.design.seats

    def parts(self, world: World, speaker: Loudspeaker, seat: Seat) -> Parts:
        """Return where a seat lies in the loudspeaker's own frame, deg."""

        def look(w: World) -> Parts:
            ear = w.xyz(need(seat.ear, seat, "ear"))
            return off_axis_parts(self.axis(w, speaker), w.xyz(self.place(speaker)), ear)

        return world.once(("parts", speaker, seat), look)

    def off_axis_deg(self, world: World, speaker: Loudspeaker, seat: Seat) -> float:
        """Return the angle between the axis and the line to a seat in a world, deg."""
        ear = world.xyz(need(seat.ear, seat, "ear"))
        return off_axis_deg(self.axis(world, speaker), world.xyz(self.place(speaker)), ear)

    def off_axis(self, speaker: Loudspeaker, seat: Seat) -> Figure:
        """Angle between the axis and the line to a seat."""
        return self.figure("angle off axis", "deg", lambda w: self.off_axis_deg(w, speaker, seat))

    def upright(self, speaker: Loudspeaker, seat: Seat) -> Figure:
        """How far above or below the axis a seat is, in the loudspeaker's own frame."""
        name = "angle above or below the axis"
        return self.figure(name, "deg", lambda w: abs(self.parts(w, speaker, seat).vertical_deg))

    def widest(self, speaker: Loudspeaker) -> Figure:
        """Angle of the seat farthest off: in the cone of a steep axis, to the side of another one."""
        seats, cone = self.seats(), self.is_cone(speaker)

        def compute(world: World) -> float:
            if cone:
                return max(self.off_axis_deg(world, speaker, seat) for seat in seats)
            return max(abs(self.parts(world, speaker, seat).horizontal_deg) for seat in seats)

        return self.figure("angle off axis of the seat farthest off", "deg", compute, speaker)

    def tallest(self, speaker: Loudspeaker) -> Figure:
        """Angle of the seat farthest above or below the axis."""
        seats = self.seats()

        def compute(world: World) -> float:
            return max(abs(self.parts(world, speaker, seat).vertical_deg) for seat in seats)

        return self.figure("angle above or below the axis", "deg", compute, speaker)

    def farthest_off(self, speaker: Loudspeaker) -> Seat:
        """Return the seat farthest off the axis."""
        return max(self.seats(), key=lambda seat: self.off_axis_deg(self.world, speaker, seat))

    def aims(self, speaker: Loudspeaker) -> tuple[Figure, Figure] | None:
        """Return the azimuths between which an aim covers every seat; None when the seats span more than that."""
        if self.is_cone(speaker):
            return None
        half, seats = self.half_coverage_deg(speaker), self.seats()

        def azimuths(world: World) -> list[float]:
            place = world.xyz(self.place(speaker))
            found = [_azimuth_deg(place, world.xyz(need(seat.ear, seat, "ear"))) for seat in seats]
            return [near_deg(azimuth, found[0]) for azimuth in found]

        low = self.figure("aim", "deg", lambda w: max(azimuths(w)) - half)
        high = self.figure("aim", "deg", lambda w: min(azimuths(w)) + half)
        return (low, high) if low.value <= high.value else None

    def span(self, speaker: Loudspeaker) -> Figure:
        """Angle that the seats span seen from a loudspeaker."""
        seats = self.seats()

        def compute(world: World) -> float:
            place = world.xyz(self.place(speaker))
            found = [_azimuth_deg(place, world.xyz(need(seat.ear, seat, "ear"))) for seat in seats]
            near = [near_deg(azimuth, found[0]) for azimuth in found]
            return max(near) - min(near)

        return self.figure("span of the seats", "deg", compute)

    def beyond_mount(self, speaker: Loudspeaker) -> Figure:
        """Angle left between the aim asked for and the nearest one that mount and baffle allow."""
        need(speaker.aim, speaker, "aim")
        swivel, tilt = self.joints_deg(speaker)

        def compute(world: World) -> float:
            plane, wanted, baffle = (
                self.plane(world, speaker),
                self.axis(world, speaker),
                self._baffle_deg(world, speaker),
            )
            asked = off_axis_parts(plane.normal, _ORIGIN, wanted, plane.top)
            reached = mounted_axis(
                plane.normal,
                plane.top,
                swivel_deg=_within(asked.horizontal_deg, swivel),
                tilt_deg=_within(asked.vertical_deg, tilt),
            )
            left = angle_between_deg(wanted, reached)
            # Without joints an angled baffle cannot be straightened; with them it only adds to their reach.
            return max(0.0, left - baffle) if swivel or tilt else abs(left - baffle)

        return self.figure("angle beyond what mount and baffle reach", "deg", compute)

    def joints_deg(self, speaker: Loudspeaker) -> tuple[float, float]:
        """Return how far the mount swivels and tilts either way."""
        held = need(speaker.mounting, speaker, "mounting")
        data = speaker.product.loudspeaker if speaker.product is not None else None
        if held.product is None and data is not None and any(place.startswith("in-") for place in data.placement):
            return 0.0, 0.0
        product = need(held.product, speaker, "mounting.product")
        joint = need(product.mount, product, "mount")
        if need(joint.motion, joint, "motion") == "fixed":
            return 0.0, 0.0
        return need(joint.swivel_deg, joint, "swivel").value, need(joint.tilt_deg, joint, "tilt").value

    def asked(self, speaker: Loudspeaker) -> tuple[Figure, Figure]:
        """Return the swivel and the tilt that the aim asks of the mount."""

        def parts(world: World) -> Parts:
            plane = self.plane(world, speaker)
            return off_axis_parts(plane.normal, _ORIGIN, self.axis(world, speaker), plane.top)

        swivel = self.figure("swivel asked for", "deg", lambda w: abs(parts(w).horizontal_deg))
        return swivel, self.figure("tilt asked for", "deg", lambda w: abs(parts(w).vertical_deg))

    def pair_difference(self, pair: Pair[Loudspeaker], seat: Seat) -> Figure:
        """How far from mirror images the aims of a pair are at a seat, in azimuth and in elevation together.

        Each loudspeaker's axis is seen in its own frame against the line to the seat, positive outward for both: two
        that look equally far past the seat on opposite sides of it are not alike.
        """

        def compute(world: World) -> float:
            left, right = self.parts(world, pair.left, seat), self.parts(world, pair.right, seat)
            return math.hypot(left.horizontal_deg + right.horizontal_deg, left.vertical_deg - right.vertical_deg)

        return self.figure("difference of the two aims", "deg", compute)

    def drivers(self, world: World, speaker: Loudspeaker) -> tuple[Driver, ...]:
        """Return the drivers of a front: as its sheet lists them, or two of one band with one between above it."""
        data = self.data(speaker)
        if data.drivers:
            return tuple(
                Driver(
                    world(need(one.right_m, one, "right")), _or_none(world, one.up_m) or 0.0,
                    _or_none(world, one.from_hz), _or_none(world, one.to_hz),
                )
                for one in data.drivers
            )  # fmt: skip
        half = world(need(data.driver_spacing_m, data, "drivers")) / 2.0
        crossover = world(need(data.crossover_hz, data, "crossover"))
        world.assume(ONE_BETWEEN)
        return (Driver(-half, 0.0, None, crossover), Driver(half, 0.0, None, crossover), Driver(0.0, 0.0, crossover))

    def _interference(self, world: World, speaker: Loudspeaker, seat: Seat) -> Interference:
        world.assume(IN_STEP)
        parts, drivers = self.parts(world, speaker, seat), self.drivers(world, speaker)
        ear = world.xyz(need(seat.ear, seat, "ear"))
        far, speed = math.dist(world.xyz(self.place(speaker)), ear), self.figures.space.sound_speed_m_s(world)
        # What is left of a loudspeaker's own axis is right of it as seen from in front.
        return interference(drivers, parts.horizontal_deg, parts.vertical_deg, far, speed)

    def driver_dip(self, speaker: Loudspeaker, seat: Seat) -> Figure:
        """How deep the drivers of a front cancel each other at a seat in the speech band, against its axis."""
        name = "dip of the drivers against the axis"
        return self.figure(name, "dB", lambda w: -self._interference(w, speaker, seat).dip_db, speaker, seat)

    def dip_frequency(self, speaker: Loudspeaker, seat: Seat) -> Figure:
        """Where in the speech band that is."""
        name = "frequency of the dip"
        return self.figure(name, "kHz", lambda w: self._interference(w, speaker, seat).frequency_hz / 1e3)

    def within_m(self, speaker: Loudspeaker) -> Figure:
        """Radius on the nearest ear's level that a loudspeaker facing straight down covers."""
        half = math.radians(min(self.half_coverage_deg(speaker), 89.0))
        seats = self.seats()

        def compute(world: World) -> float:
            height = world.xyz(self.place(speaker))[2]
            rises = [height - world.xyz(need(seat.ear, seat, "ear"))[2] for seat in seats]
            if min(rises) <= 0.0:
                raise Refused("an ear is not below the loudspeaker")
            return min(rises) * math.tan(half)

        return self.figure("covered radius", "m", compute)


def _or_none(world: World, quantity: Quantity | None) -> float | None:
    return world(quantity) if quantity is not None else None


def _within(asked_deg: float, reach_deg: float) -> float:
    return max(-reach_deg, min(reach_deg, asked_deg))


def _azimuth_deg(start: Point3, end: Point3) -> float:
    return math.degrees(math.atan2(start[0] - end[0], end[1] - start[1]))
