"""The surfaces of the room and what stands in it, with uncertainty."""

from __future__ import annotations

from typing import TYPE_CHECKING

from roomlint.design.base import Value, need
from roomlint.figures import ceiling, plan
from roomlint.figures.delay import speed_of_sound_m_s
from roomlint.figures.sight import Box, Hit, first_hit
from roomlint.measure.figure import Figure, figure
from roomlint.measure.view import View

if TYPE_CHECKING:
    from roomlint.design.base import Point
    from roomlint.figures.ceiling import Facets
    from roomlint.figures.direction import Vector3
    from roomlint.figures.plan import Outline

ASSUMED_TEMPERATURE_DEGC = 20.0
_RISES_TOWARD_DEG = {"left": -90.0, "right": 90.0, "front": 180.0, "rear": 0.0}
"""A mono-pitch rises away from its low side: low at the left, it rises toward the right (azimuth -90)."""


class Space(View):
    """The room's shape."""

    @property
    def outline(self) -> Outline:
        """The corners, clockwise seen from above, m."""
        return self.once(("outline",), lambda: tuple((c.x.value, c.y.value) for c in self.design.shell.corners))

    @property
    def facets(self) -> Facets:
        """The ceiling as flat parts; raises `Missing` when its shape is not given."""
        return self.once(("facets",), self._facets)

    def _facets(self) -> Facets:
        shell = self.design.shell
        shape = need(shell.ceiling, shell, "ceiling")
        outline = self.outline
        if shape.shape == "flat":
            return ceiling.flat(outline, need(shape.height_m, shell, "ceiling.height").value)
        if shape.shape == "mono-pitch":
            low, high = need(shape.low_m, shell, "ceiling.low"), need(shape.high_m, shell, "ceiling.high")
            side = need(shape.low_side, shell, "ceiling.low_side")
            return ceiling.mono_pitch(outline, low.value, high.value, _RISES_TOWARD_DEG[side])
        if shape.shape == "gable":
            eaves, ridge = need(shape.low_m, shell, "ceiling.low"), need(shape.height_m, shell, "ceiling.height")
            # Toward the right the ridge's left-hand side is the front, which `ridge_at` is measured from.
            runs_deg = 0.0 if shape.ridge == "front-to-rear" else -90.0
            at = shape.ridge_at_m.value if shape.ridge_at_m is not None else None
            return ceiling.gable(outline, eaves.value, ridge.value, runs_deg, ridge_at_m=at)
        heights = [need(corner.height_m, shell, "ceiling.heights").value for corner in shell.corners]
        return ceiling.over_corners(outline, heights)

    @property
    def is_rectangle(self) -> bool:
        """Whether the plan is a rectangle."""
        return self.once(("rectangle",), lambda: plan.is_rectangle(self.outline))

    @property
    def is_box(self) -> bool:
        """Whether the room is a rectangle under a flat ceiling, which the box formulas hold for."""
        return self.is_rectangle and len(self.facets) == 1 and self.facets[0].slope_deg < _LEVEL_DEG

    @property
    def box_m(self) -> tuple[float, float, float]:
        """Width, length and height of a box room."""
        shell = self.design.shell
        return (shell.width_m.value, shell.length_m.value, self.facets[0].c)

    @property
    def sizes(self) -> tuple[Value, Value, Value]:
        """Width, length and flat-ceiling height with their uncertainty and places."""
        shell = self.design.shell
        shape = need(shell.ceiling, shell, "ceiling")
        return (shell.width_m, shell.length_m, need(shape.height_m, shell, "ceiling.height"))

    @property
    def volume_m3(self) -> float:
        """The room's volume."""
        return self.once(("volume",), lambda: ceiling.volume_m3(self.facets))

    @property
    def obstacles(self) -> tuple[Box, ...]:
        """The obstacles as boxes."""
        return self.once(
            ("obstacles",),
            lambda: tuple(
                Box(obstacle.low.xyz, obstacle.high.xyz)
                for obstacle in self.design.shell.obstacles
                if obstacle.low is not None and obstacle.high is not None
            ),
        )

    @property
    def sound_speed_m_s(self) -> float:
        """Speed of sound at the survey's temperature, or at 20 degC."""
        warm = self.design.survey.temperature_degc
        return speed_of_sound_m_s(warm.value if warm is not None else ASSUMED_TEMPERATURE_DEGC)

    @property
    def air_assumption(self) -> tuple[str, ...]:
        """What a figure that uses the speed of sound has to state."""
        return () if self.design.survey.temperature_degc is not None else ("air at 20 degC",)

    def contains(self, point: Point) -> bool:
        """Whether a point is in the room, a centimetre of grace at the walls."""
        x, y, z = point.xyz
        return (
            plan.contains(self.outline, (x, y), _GRACE_M) and -_GRACE_M <= z <= self.ceiling_height_m(x, y) + _GRACE_M
        )

    def ceiling_height_m(self, x: float, y: float) -> float:
        """Height of the ceiling over a point of the plan."""
        return ceiling.height_m(self.facets, (x, y))

    def wall_distance(self, point: Point, wall: int) -> Figure:
        """Distance in plan from a point to a wall, as far as the wall reaches."""
        corners = self.design.shell.corners
        start, end = corners[wall], corners[(wall + 1) % len(corners)]

        def compute(x: float, y: float, x1: float, y1: float, x2: float, y2: float) -> float:
            return plan.distance_to_segment_m((x, y), (x1, y1), (x2, y2))

        name = f"distance to wall {start.wall}"
        return figure(name, "m", compute, point.x, point.y, start.x, start.y, end.x, end.y)

    def nearest_wall(self, point: Point) -> Figure:
        """Distance in plan from a point to the nearest wall."""
        x, y, _ = point.xyz
        return self.wall_distance(point, plan.nearest_wall(self.outline, (x, y)).wall)

    def faced_walls(self, point: Point) -> list[Figure]:
        """Distances to the walls that a point stands square in front of, nearest first."""
        x, y, _ = point.xyz
        found = []
        for index, (start, end) in enumerate(plan.walls(self.outline)):
            along = ((x - start[0]) * (end[0] - start[0]) + (y - start[1]) * (end[1] - start[1])) / (
                (end[0] - start[0]) ** 2 + (end[1] - start[1]) ** 2
            )
            if 0 <= along <= 1:
                found.append(self.wall_distance(point, index))
        return sorted(found, key=lambda distance: distance.value)

    def free_way(self, start: tuple[float, float, float], direction: Vector3) -> Hit:
        """Return the first surface or obstacle from a point in a direction; ValueError outside the room."""
        return first_hit(start, direction, self.outline, self.facets, self.obstacles)


_GRACE_M = 0.01
_LEVEL_DEG = 0.05
