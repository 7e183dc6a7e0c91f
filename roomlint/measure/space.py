"""The surfaces of the room and what stands in it, in a world."""

from __future__ import annotations

from functools import cached_property
from typing import TYPE_CHECKING, Final

from roomlint import cutting, plane, roof
from roomlint.design.base import Missing, need
from roomlint.design.overhead import HIGHEST_M
from roomlint.design.quantity import Assumption, Quantity, assumed
from roomlint.figures.delay import speed_of_sound_m_s
from roomlint.figures.enclosure import room
from roomlint.figures.solid import Upright, upright_box
from roomlint.measure.view import View

if TYPE_CHECKING:
    from roomlint.design.base import Point
    from roomlint.figures.enclosure import Enclosure
    from roomlint.measure.figure import Figure
    from roomlint.measure.world import World
    from roomlint.plane import Outline
    from roomlint.roof import Facets

ASSUMED_DEGC: Final = (20.0, 5.0)
"""Air of a home where the survey gives no temperature, and how far it may be off."""
_GRACE_M: Final = 0.01
_LEVEL_DEG: Final = 0.05


class Space(View):
    """The room's shape."""

    def outline(self, world: World) -> Outline:
        """Return the corners, clockwise seen from above, m."""
        corners = self.design.shell.corners
        return world.once("outline", lambda w: tuple((w(corner.x), w(corner.y)) for corner in corners))

    def facets(self, world: World) -> Facets:
        """Return the ceiling as flat parts; raises `Missing` when its shape is not given."""
        return world.once("facets", self._facets)

    def _facets(self, world: World) -> Facets:
        shell = self.design.shell
        return need(shell.ceiling, shell, "ceiling").facets(world, shell)

    def enclosure(self, world: World) -> Enclosure:
        """Return the room as one body, ready to be asked; raises `Missing` when the ceiling is not given."""
        return world.once("enclosure", lambda w: room(self.outline(w), self.facets(w)))

    @cached_property
    def no_ceiling(self) -> Missing | None:
        """What is missing of the ceiling's shape; None where it is given."""
        try:
            self.facets(self.world)
        except Missing as missing:
            return missing
        return None

    def as_given(self, world: World) -> Enclosure:
        """Return the room as one body; without a ceiling its walls and floor, open above whatever a file can hold."""
        if self.no_ceiling is None:
            return self.enclosure(world)
        return world.once("open above", lambda w: room(self.outline(w), roof.flat(self.outline(w), 2.0 * HIGHEST_M)))

    @cached_property
    def highest_m(self) -> float:
        """The height of the ceiling where it is highest; without a ceiling, of what stands highest."""
        if self.design.shell.ceiling is not None:
            return roof.highest_m(self.facets(self.world))
        points = [source.position for source in self.design.sources] + [seat.ear for seat in self.design.seats]
        return max((point.z.value for point in points if point is not None), default=0.0)

    @cached_property
    def is_rectangle(self) -> bool:
        """Whether the plan is a rectangle."""
        return plane.is_rectangle(self.outline(self.world))

    @cached_property
    def is_box(self) -> bool:
        """Whether the room is a rectangle under a flat ceiling, which the box formulas hold for."""
        facets = self.facets(self.world)
        return self.is_rectangle and len(facets) == 1 and facets[0].slope_deg < _LEVEL_DEG

    def box_m(self, world: World) -> tuple[float, float, float]:
        """Return width, length and height of a box room."""
        shell = self.design.shell
        return (world(shell.width_m), world(shell.length_m), self.facets(world)[0].c)

    def volume_m3(self, world: World) -> float:
        """Return the room's volume."""
        return world.once("volume", lambda w: roof.volume_m3(self.facets(w)))

    def obstacles(self, world: World) -> tuple[Upright, ...]:
        """Return the obstacles whose place is given, as solids."""
        placed = [
            (obstacle.low, obstacle.high)
            for obstacle in self.design.shell.obstacles
            if obstacle.low is not None and obstacle.high is not None
        ]
        return world.once("obstacles", lambda w: tuple(upright_box(w.xyz(low), w.xyz(high)) for low, high in placed))

    @cached_property
    def temperature_degc(self) -> Quantity:
        """Temperature of the air: the survey's, or one that is assumed and told."""
        value, u = ASSUMED_DEGC
        words = Assumption("air at {}", (value, "degC"))
        return self.design.survey.temperature_degc or assumed(value, u, "degC", words)

    def sound_speed_m_s(self, world: World) -> float:
        """Return the speed of sound at the room's temperature."""
        return world.once("speed of sound", lambda w: speed_of_sound_m_s(w(self.temperature_degc)))

    def contains(self, point: Point) -> bool:
        """Whether a point is in the room, a centimetre of grace at the walls."""
        x, y, z = point.xyz
        outline, facets = self.outline(self.world), self.facets(self.world)
        return plane.contains(outline, (x, y), _GRACE_M) and -_GRACE_M <= z <= roof.height_m(facets, (x, y)) + _GRACE_M

    def ceiling_height_m(self, world: World, x: float, y: float) -> float:
        """Return the height of the ceiling over a point of the plan."""
        return roof.height_m(self.facets(world), (x, y))

    def wall_distance_m(self, world: World, point: Point, wall: int) -> float:
        """Return the distance in plan from a point to a wall, as far as the wall reaches."""
        outline = self.outline(world)
        start, end = outline[wall], outline[(wall + 1) % len(outline)]
        return plane.distance_to_segment_m((world(point.x), world(point.y)), start, end)

    def wall_distance(self, point: Point, wall: int) -> Figure:
        """Return the distance in plan from a point to a wall, as far as the wall reaches."""
        return self.figure("distance to a wall", "m", lambda w: self.wall_distance_m(w, point, wall))

    def nearest_wall(self, point: Point) -> int:
        """Return the number of the wall that is nearest to a point in plan."""
        x, y, _ = point.xyz
        return cutting.nearest_wall(self.outline(self.world), (x, y)).wall

    def wall_name(self, wall: int) -> str:
        """Return what the file calls a wall."""
        return self.design.shell.corners[wall].wall
