"""Whether things stand where they can: in the room, on their surface, clear of openings, in sight of the ears."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING, NamedTuple, TypeAlias

from roomlint.design.base import Value, need
from roomlint.design.listening import Seat
from roomlint.figures import plan, sight
from roomlint.figures.direction import direction_vector
from roomlint.measure.figure import Figure, figure
from roomlint.measure.view import View

if TYPE_CHECKING:
    from roomlint.design.base import Point
    from roomlint.design.listening import Loudspeaker, Subwoofer
    from roomlint.design.shell import Opening
    from roomlint.figures.sight import DoorSwing

Source: TypeAlias = "Loudspeaker | Subwoofer"

# Half the width of a head and a little: a head farther to the side does not stand in the way.
HEAD_HALF_WIDTH_M = 0.12
# Less than this from front to rear, two seats without row numbers are neighbours.
ROW_PITCH_M = 0.6


class Hidden(NamedTuple):
    """What stands between a loudspeaker and an ear."""

    words: str


class Staging(View):
    """Places, openings and lines of sight."""

    def depth_of(self, thing: Source | Seat) -> Figure:
        """Return how far inside the room a source's acoustic centre or a seat's ear is, m."""
        if isinstance(thing, Seat):
            return self.depth_inside(thing.key, need(thing.ear, thing, "ear"))
        return self.depth_inside(thing.key, need(thing.position, thing, "position"))

    def out_of_swing(self, thing: Source | Seat, opening: Opening) -> Figure | None:
        """Return the clearance of a thing to a door's leaf as it opens, m; None when it hangs above the leaf."""
        if isinstance(thing, Seat):
            point, wide = need(thing.ear, thing, "ear"), thing.width_m
        else:
            point = need(thing.position, thing, "position")
            wide = thing.product.width_m if thing.product is not None else None
            tall = thing.product.height_m if thing.product is not None else None
            top = (opening.sill_m.value if opening.sill_m else 0.0) + need(opening.height_m, opening, "height").value
            if point.z.value - (tall.value / 2.0 if tall is not None else 0.0) > top:
                return None
        return self.clear_of_swing(thing.id, point, wide.value / 2.0 if wide is not None else 0.0, opening)

    def depth_inside(self, what: str, point: Point) -> Figure:
        """Return how far inside the room a point is, m: to the nearest wall, floor or ceiling; negative outside."""
        space = self.figures.space
        outline = space.outline
        _ = space.facets

        def compute(x: float, y: float, z: float) -> float:
            near = plan.nearest_wall(outline, (x, y)).distance_m
            aside = near if plan.contains(outline, (x, y), 0.0) else -near
            return min(aside, z, space.ceiling_height_m(x, y) - z)

        return self.once(("inside", what), lambda: figure("distance inside the room", "m", compute, *point.values))

    def off_surface(self, source: Source, surface: str) -> Figure:
        """Return the distance of a source from the wall or ceiling that it is mounted on, m."""
        position = need(source.position, source, "position")
        space = self.figures.space
        if surface == "ceiling":
            _ = space.facets

            def below(x: float, y: float, z: float) -> float:
                return abs(space.ceiling_height_m(x, y) - z)

            return figure("distance from the ceiling", "m", below, *position.values)
        return space.wall_distance(position, self.design.shell.wall_names.index(surface))

    def reach(self, source: Source) -> float:
        """Return how far from its surface a mounted source's acoustic centre can be, m: mount, cabinet, a hand."""
        product = need(source.product, source, "product")
        depth = need(product.depth_m, product, "depth").value
        mounting = source.mounting
        out = 0.0
        if mounting is not None:
            data = mounting.product.mount if mounting.product is not None else None
            for length in (mounting.extension_m or (data.reach_m if data is not None else None), mounting.drop_m):
                out += length.value if length is not None else 0.0
        return depth + out + _A_HAND_M

    def beside_opening(self, source: Source, opening: Opening) -> Figure:
        """Return the gap between a source on a wall and an opening of that wall, m; negative when they overlap."""
        position = need(source.position, source, "position")
        shell = self.design.shell
        wall = shell.wall_names.index(opening.wall)
        start, end = shell.corners[wall], shell.corners[(wall + 1) % len(shell.corners)]
        product = source.product
        half_wide = (product.width_m.value if product is not None and product.width_m else 0.0) / 2.0
        half_high = (product.height_m.value if product is not None and product.height_m else 0.0) / 2.0
        first, wide = need(opening.start_m, opening, "from_wall_left"), need(opening.width_m, opening, "width")
        high = need(opening.height_m, opening, "height")
        sill = opening.sill_m or Value(0.0)
        ax, ay = start.x.value, start.y.value
        length = math.dist((ax, ay), (end.x.value, end.y.value))
        ux, uy = (end.x.value - ax) / length, (end.y.value - ay) / length

        def compute(*v: float) -> float:
            along = (v[0] - ax) * ux + (v[1] - ay) * uy
            aside = max(v[3] - along, along - v[3] - v[4]) - half_wide
            above = max(v[5] - v[2], v[2] - v[5] - v[6]) - half_high
            return max(aside, above)

        return figure(f"gap to {opening.id}", "m", compute, *position.values, first, wide, sill, high)

    def door_swing(self, opening: Opening) -> DoorSwing:
        """Return the floor that a door's leaf sweeps inside the room."""
        shell = self.design.shell
        wall = shell.wall_names.index(opening.wall)
        start, end = shell.corners[wall], shell.corners[(wall + 1) % len(shell.corners)]
        first = need(opening.start_m, opening, "from_wall_left").value
        wide = need(opening.width_m, opening, "width").value
        hinge = need(opening.hinge, opening, "hinge")
        length = math.dist((start.x.value, start.y.value), (end.x.value, end.y.value))
        ux, uy = (end.x.value - start.x.value) / length, (end.y.value - start.y.value) / length
        along = first if hinge == "left" else first + wide
        sign = 1.0 if hinge == "left" else -1.0
        azimuth = -math.degrees(math.atan2(sign * ux, sign * uy))
        # Corners run clockwise, so the room is to the right of each wall: a left-hinged leaf turns clockwise.
        at = (start.x.value + along * ux, start.y.value + along * uy)
        return sight.DoorSwing(at, wide, azimuth, -90.0 if hinge == "left" else 90.0)

    def clear_of_swing(self, what: str, point: Point, half_width_m: float, opening: Opening) -> Figure:
        """Return the distance between what stands at a point and a door's leaf as it opens, m; negative inside."""
        swing = self.door_swing(opening)

        def compute(x: float, y: float) -> float:
            return swing.distance_m((x, y)) - half_width_m

        return figure(f"clearance of {what} to the swing of {opening.id}", "m", compute, point.x, point.y)

    def ear_height(self, seat: Seat) -> Figure:
        """Return the height of an ear above the floor or platform that its seat stands on."""
        ear = need(seat.ear, seat, "ear")
        riser = seat.riser_m or Value(0.0, 0.0, "m")
        return figure("ear height above its own floor", "m", lambda z, step: z - step, ear.z, riser)

    def hidden(self, source: Source, seat: Seat) -> Hidden | None:
        """Return the wall, ceiling or obstacle between a source and a seat's ear, None when the line is free."""
        return self.once(("hidden", source.id, seat.id), lambda: self._hidden(source, seat))

    def _hidden(self, source: Source, seat: Seat) -> Hidden | None:
        start, ear = need(source.position, source, "position").xyz, need(seat.ear, seat, "ear").xyz
        space = self.figures.space
        wall = None if self._convex else sight.wall_between(start[:2], ear[:2], space.outline)
        if wall is not None:
            return Hidden(f"wall {self.design.shell.corners[wall].wall}")
        met = sight.obstacle_between(start, ear, space.obstacles)
        if met is not None:
            shown = [one for one in self.design.shell.obstacles if one.low is not None and one.high is not None]
            return Hidden(f"{shown[met].kind} {shown[met].id}")
        if self.design.shell.ceiling is not None and sight.ceiling_between(start, ear, space.facets) is not None:
            return Hidden("the ceiling")
        return None

    @property
    def _convex(self) -> bool:
        return self.once(("convex",), lambda: plan.is_convex(self.figures.space.outline))

    def over_heads(self, source: Source, seat: Seat) -> tuple[Figure, Seat] | None:
        """Return the least clearance over another listener's head or seat back on the way to an ear, and whose.

        None when the line passes nobody. Raises `Missing` for a listener in the way whose head height is not given.
        """
        start, ear = need(source.position, source, "position"), need(seat.ear, seat, "ear")
        passed = []
        for other in self.design.seats:
            if other.ear is None or not _another_row(other, seat):
                continue
            x, y, z = other.ear.xyz
            by = sight.clearance_over(start.xyz, ear.xyz, (x, y, z))
            if by is not None and by.aside_m <= HEAD_HALF_WIDTH_M:
                passed.append((by.above_m, other))
        if not passed:
            return None
        other = min(passed, key=lambda one: one[0])[1]
        top = need(other.head_top_m, other, "head_top")
        if other.back_top_m is not None and other.back_top_m.value > top.value:
            top = other.back_top_m
        middle = need(other.ear, other, "ear")

        def compute(*v: float) -> float:
            by = sight.clearance_over((v[0], v[1], v[2]), (v[3], v[4], v[5]), (v[6], v[7], v[8]))
            if by is None:
                raise Refused("the line does not pass this head")
            return by.above_m

        inputs = (*start.values, *ear.values, middle.x, middle.y, top)
        return figure(f"clearance over the head at {other.id}", "m", compute, *inputs), other


def _another_row(other: Seat, seat: Seat) -> bool:
    """Say whether two seats stand in different rows: by their numbers, or by what lies between front and rear."""
    if other is seat or other.ear is None or seat.ear is None:
        return False
    if other.row is not None and seat.row is not None:
        return other.row != seat.row
    facing = direction_vector(seat.facing_deg.value, 0.0)
    ahead = [there - here for there, here in zip(other.ear.xyz, seat.ear.xyz, strict=True)]
    return abs(ahead[0] * facing[0] + ahead[1] * facing[1]) >= ROW_PITCH_M


_A_HAND_M = 0.10
"""Slack behind or in front of a mounted cabinet."""
