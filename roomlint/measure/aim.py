"""Where loudspeakers point, what they cover, and whether their mounts can point them there."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING, NamedTuple

from roomlint.design.base import Missing, need
from roomlint.figures import ceiling, lobing, plan
from roomlint.figures.coverage import (
    FRONT,
    UP,
    OffAxis,
    coverage_loss_db,
    mounted_axis,
    off_axis_deg,
    off_axis_parts,
)
from roomlint.figures.direction import angle_between_deg, direction_vector, near_deg, toward
from roomlint.measure.figure import Figure, figure
from roomlint.measure.view import View

if TYPE_CHECKING:
    from collections.abc import Callable

    from roomlint.design.base import Point, Value
    from roomlint.design.listening import Loudspeaker, Seat
    from roomlint.design.products import Transducer
    from roomlint.figures.direction import Point3, Vector3

CEILINGS = frozenset({"ceiling", "grid-ceiling"})
DOWN_DEG = 180.0
STEEP = math.sqrt(0.5)
"""An axis that rises or falls by more than 45 degrees has no sideways of its own: one cone is judged."""
FACING_DOWN = "facing square out of the surface it is mounted on"
LEVEL_AIM = "level aim, as no elevation is given"


class Axis(NamedTuple):
    """How a loudspeaker's axis follows from its own position and further inputs."""

    of: Callable[..., Vector3]
    """From the position and the further numbers to a unit vector."""
    inputs: tuple[Value, ...]
    assumes: tuple[str, ...] = ()

    def at(self, place: Point) -> Vector3:
        """Return the axis for the values as given."""
        return self.of(place.xyz, *(value.value for value in self.inputs))


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

    def half_coverage(self, speaker: Loudspeaker) -> float:
        """Return half the nominal horizontal coverage, deg."""
        data = self.data(speaker)
        return need(data.horizontal_deg, data, "horizontal_coverage").value / 2

    def half_height(self, speaker: Loudspeaker) -> float:
        """Return half the nominal vertical coverage, deg."""
        data = self.data(speaker)
        return need(data.vertical_deg, data, "vertical_coverage").value / 2

    def axis(self, speaker: Loudspeaker) -> Axis:
        """Return where the loudspeaker points: as its aim says, or square out of the surface it is mounted on."""
        return self.once(("axis", speaker.id), lambda: self._axis(speaker))

    def _axis(self, speaker: Loudspeaker) -> Axis:
        aim = speaker.aim
        if aim is not None and aim.seat is not None:
            ear = need(aim.seat.ear, aim.seat, "ear")
            return Axis(lambda place, x, y, z: toward(place, (x, y, z)), ear.values)
        if aim is not None:
            azimuth = need(aim.azimuth_deg, speaker, "aim.azimuth")
            if aim.elevation_deg is None:
                return Axis(lambda _, az: direction_vector(az, 0.0), (azimuth,), (LEVEL_AIM,))
            return Axis(lambda _, az, el: direction_vector(az, el), (azimuth, aim.elevation_deg))
        plane, held = self.plane(speaker), need(speaker.mounting, speaker, "aim")
        baffle = self._baffle_deg(speaker)
        if plane.overhead and baffle:
            # An angled baffle in a ceiling looks wherever it was turned to: only the file can tell.
            raise Missing(speaker, "aim")
        joints = {
            "swivel_deg": held.swivel_deg.value if held.swivel_deg is not None else 0.0,
            "tilt_deg": held.tilt_deg.value if held.tilt_deg is not None else 0.0,
        }
        fixed = mounted_axis(plane.normal, plane.top, baffle_deg=baffle, baffle_toward_deg=DOWN_DEG, **joints)
        return Axis(lambda _: fixed, (), () if any(joints.values()) else (FACING_DOWN,))

    def plane(self, speaker: Loudspeaker) -> Plane:
        """Return the wall or the part of the ceiling that it is mounted on; `Missing` aim when it is on neither."""
        held = speaker.mounting.on if speaker.mounting is not None else None
        shell, space = self.design.shell, self.figures.space
        if held in CEILINGS:
            x, y, _ = self.place(speaker).xyz
            return Plane(ceiling.facet_over(space.facets, (x, y)).normal, FRONT, overhead=True)
        if held in shell.wall_names:
            nx, ny = plan.inward_normal(space.outline, shell.wall_names.index(held))
            return Plane((nx, ny, 0.0), UP, overhead=False)
        raise Missing(speaker, "aim")

    def _baffle_deg(self, speaker: Loudspeaker) -> float:
        data = speaker.product.loudspeaker if speaker.product is not None else None
        return data.baffle_deg.value if data is not None and data.baffle_deg is not None else 0.0

    def is_cone(self, speaker: Loudspeaker) -> bool:
        """Whether it points so far up or down that one cone is judged instead of two planes."""
        return abs(self.axis(speaker).at(self.place(speaker))[2]) > STEEP

    def seats(self) -> tuple[Seat, ...]:
        """Return the seats; raises `Missing` when there is none or one has no ear position."""
        if not self.design.seats:
            raise Missing(self.design, "seats")
        for seat in self.design.seats:
            need(seat.ear, seat, "ear")
        return self.design.seats

    def off_axis(self, speaker: Loudspeaker, seat: Seat) -> Figure:
        """Return the angle between the axis and the line to a seat."""
        return self._angle(speaker, seat, f"angle off axis at {seat.id}", off_axis_deg)

    def across(self, speaker: Loudspeaker, seat: Seat) -> Figure:
        """Return how far to the side of the axis a seat is, in the loudspeaker's own frame."""
        return self._angle(speaker, seat, f"angle to the side of the axis at {seat.id}", _across)

    def upright(self, speaker: Loudspeaker, seat: Seat) -> Figure:
        """Return how far above or below the axis a seat is, in the loudspeaker's own frame."""
        return self._angle(speaker, seat, f"angle above or below the axis at {seat.id}", _upright)

    def widest(self, speaker: Loudspeaker) -> Figure:
        """Return the angle of the seat farthest off: in the cone of a steep axis, to the side of another one."""
        if self.is_cone(speaker):
            place, axis = self.place(speaker).xyz, self.axis(speaker).at(self.place(speaker))
            far = max(self.seats(), key=lambda seat: off_axis_deg(axis, place, need(seat.ear, seat, "ear").xyz))
            return self.off_axis(speaker, far)
        seen = self._seen(speaker)
        return self.across(speaker, max(seen, key=lambda one: abs(one[1].horizontal_deg))[0])

    def tallest(self, speaker: Loudspeaker) -> Figure:
        """Return the angle of the seat farthest above or below the axis."""
        return self.upright(speaker, max(self._seen(speaker), key=lambda one: abs(one[1].vertical_deg))[0])

    def _seen(self, speaker: Loudspeaker) -> list[tuple[Seat, OffAxis]]:
        """Return where each seat lies in the loudspeaker's own frame."""

        def look() -> list[tuple[Seat, OffAxis]]:
            place, axis = self.place(speaker).xyz, self.axis(speaker).at(self.place(speaker))
            return [(seat, off_axis_parts(axis, place, need(seat.ear, seat, "ear").xyz)) for seat in self.seats()]

        return self.once(("seen", speaker.id), look)

    def _angle(
        self, speaker: Loudspeaker, seat: Seat, name: str, measure: Callable[[Vector3, Point3, Point3], float]
    ) -> Figure:
        place, ear, axis = self.place(speaker), need(seat.ear, seat, "ear"), self.axis(speaker)
        if speaker.aim is not None and speaker.aim.seat is seat:
            return Figure(name, 0.0, "deg", inputs=(*place.values, *ear.values))

        def compute(*n: float) -> float:
            at = (n[0], n[1], n[2])
            return measure(axis.of(at, *n[6:]), at, (n[3], n[4], n[5]))

        return figure(name, "deg", compute, *place.values, *ear.values, *axis.inputs, assumes=axis.assumes)

    def loss_words(self, speaker: Loudspeaker) -> str:
        """Say about how much is lost at the seat farthest off, by the model of the square law beyond the coverage."""
        beside = OffAxis(self.widest(speaker).value, 0.0)
        loss = -coverage_loss_db(beside, 2.0 * self.half_coverage(speaker))
        return f"About {loss:.0f} dB down there, by a square-law model."

    def covering_words(self, speaker: Loudspeaker) -> str:
        """Say which way to turn or move a loudspeaker so that every seat is inside its coverage."""
        place, half = self.place(speaker).xyz, self.half_coverage(speaker)
        ears = [need(seat.ear, seat, "ear").xyz for seat in self.seats()]
        if self.is_cone(speaker):
            rise = min(abs(place[2] - ear[2]) for ear in ears)
            return f"Facing straight down it covers ears within {rise * math.tan(math.radians(min(half, 89.0))):.2f} m."
        first = _azimuth_deg(place, ears[0])
        azimuths = [near_deg(_azimuth_deg(place, ear), first) for ear in ears]
        low, high = max(azimuths) - half, min(azimuths) + half
        if low > high:
            span = max(azimuths) - min(azimuths)
            return f"The seats span {span:.0f} deg seen from it: no aim covers them all; move it back."
        if f"{low:.0f}" == f"{high:.0f}":
            return f"Only an aim at azimuth {low:.0f} deg covers every seat."
        return f"An aim between azimuth {low:.0f} and {high:.0f} deg covers every seat."

    def beyond_mount(self, speaker: Loudspeaker) -> Figure:
        """Return the angle left between the aim asked for and the nearest one that mount and baffle allow."""
        need(speaker.aim, speaker, "aim")
        place, axis, plane = self.place(speaker), self.axis(speaker), self.plane(speaker)
        swivel, tilt = self._joints_deg(speaker)
        baffle = self._baffle_deg(speaker)

        def compute(*n: float) -> float:
            wanted = axis.of((n[0], n[1], n[2]), *n[3:])
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

        name = "angle between the aim and what mount and baffle reach"
        inputs = (*place.values, *axis.inputs)
        if compute(*(value.value for value in inputs)) == 0.0:
            # Inside the reach a little more or less changes nothing.
            return Figure(name, 0.0, "deg", inputs=inputs, assumes=axis.assumes)
        return figure(name, "deg", compute, *inputs, assumes=axis.assumes)

    def _joints_deg(self, speaker: Loudspeaker) -> tuple[float, float]:
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

    def asked_words(self, speaker: Loudspeaker) -> str:
        """Say what the aim asks of the mount."""
        plane = self.plane(speaker)
        wanted = self.axis(speaker).at(self.place(speaker))
        asked = off_axis_parts(plane.normal, _ORIGIN, wanted, plane.top)
        swivel, tilt = self._joints_deg(speaker)
        if plane.overhead:
            turn = angle_between_deg(plane.normal, wanted)
            baffle = self._baffle_deg(speaker)
            return f"The aim is {turn:.0f} deg off square to the ceiling; the baffle gives {baffle:.0f}."
        return (
            f"The aim asks for {abs(asked.horizontal_deg):.0f} deg of swivel and {abs(asked.vertical_deg):.0f} deg of "
            f"tilt; the mount gives {swivel:.0f} and {tilt:.0f}."
        )

    def pair_difference(self, left: Loudspeaker, right: Loudspeaker, seat: Seat) -> Figure:
        """Return the difference between the angles at which a seat sees the two axes of a pair."""
        one, other = self.off_axis(left, seat), self.off_axis(right, seat)
        u = math.hypot(one.u, other.u)
        inputs = tuple(dict.fromkeys((*one.inputs, *other.inputs)))
        name = f"difference of the angles off axis at {seat.id}"
        return Figure(name, abs(one.value - other.value), "deg", u, inputs=inputs)

    def lobe_angle(self, speaker: Loudspeaker) -> tuple[float, float]:
        """Return how far off axis a driver pair is 3 dB down, and where it first cancels, at its crossover."""
        data = self.data(speaker)
        spacing = need(data.driver_spacing_m, data, "driver_spacing").value
        crossover = need(data.crossover_hz, data, "crossover").value
        speed = self.figures.space.sound_speed_m_s
        return (
            lobing.half_power_angle_deg(spacing, crossover, speed),
            lobing.null_angle_deg(spacing, crossover, speed),
        )


_ORIGIN = (0.0, 0.0, 0.0)


def _within(asked_deg: float, reach_deg: float) -> float:
    return max(-reach_deg, min(reach_deg, asked_deg))


def _azimuth_deg(start: Point3, end: Point3) -> float:
    return math.degrees(math.atan2(start[0] - end[0], end[1] - start[1]))


def _across(axis: Vector3, place: Point3, ear: Point3) -> float:
    return abs(off_axis_parts(axis, place, ear).horizontal_deg)


def _upright(axis: Vector3, place: Point3, ear: Point3) -> float:
    return abs(off_axis_parts(axis, place, ear).vertical_deg)
