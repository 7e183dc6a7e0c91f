"""Whether things stand where they can: in the room, on their surface, clear of openings, in sight of the ears."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING, Final, NamedTuple, TypeAlias

from roomlint import roof
from roomlint.design.base import Missing, need, unsaid
from roomlint.design.listening import HOLDERS, Loudspeaker, Picture, Projector, Seat, Subwoofer
from roomlint.design.shell import Treatment
from roomlint.figures import convex, enclosure, sight, solid
from roomlint.figures.direction import direction_vector
from roomlint.figures.ray import sees
from roomlint.measure.bodies import obstacle_words
from roomlint.measure.ends import FAR_M, OVER_ALL_M
from roomlint.measure.view import View

if TYPE_CHECKING:
    from collections.abc import Callable, Sequence

    from roomlint.design.base import Element, Point
    from roomlint.design.quantity import Quantity
    from roomlint.design.shell import Opening, RoofWindow
    from roomlint.design.supply import Rack
    from roomlint.measure.figure import Figure
    from roomlint.measure.world import World
    from roomlint.plane import Point2

Source: TypeAlias = "Loudspeaker | Subwoofer"
Hung: TypeAlias = "Loudspeaker | Subwoofer | Picture | Projector"
Thing: TypeAlias = "Loudspeaker | Subwoofer | Projector | Rack | Seat"

PANEL_M: Final = 0.30
"""So far a panel may reach from its wall, and would have to be moved out of a door's way."""
HEAD_HALF_WIDTH_M: Final = 0.12
"""Half the width of a head and a little: a head farther to the side does not stand in the way."""
ROW_PITCH_M: Final = 0.6
"""Less than this from front to rear, two seats without row numbers are neighbours."""
_LOOKED_AT_M: Final = 0.3
"""A head farther to the side of a line than this does not come into its way by what a tape may miss."""
_SQUARE: Final = 1e-6


class InTheWay(NamedTuple):
    """How far the lines to a listener clear the heads before it, m, and at the tightest, whose head and from where."""

    figure: Figure
    head: str
    sources: tuple[str, ...]
    rise: Figure
    """How much higher the listener's ear clears the tightest line by the wanted clearance."""
    lacks: Missing | None
    """What is not placed, so that another line may be tighter."""


class _Line(NamedTuple):
    """A line that a head is near to; how high it reaches is looked at, whether or not it is in the way as read."""

    source: Source
    head: Seat
    top_m: Quantity | None
    back_m: Quantity | None


class Staging(View):
    """Places, openings and lines of sight."""

    def depth_inside(self, thing: Thing) -> Figure:
        """How far inside the room an acoustic centre or an ear is, to the nearest surface; negative outside.

        Without a ceiling walls and floor count: a place outside them is outside under any.
        """
        point = self.figures.bodies.place(thing)

        def compute(world: World) -> float:
            return enclosure.nearest_surface(self.figures.space.as_given(world), world.xyz(point)).distance_m

        return self.figure("distance inside the room", "m", compute, thing, per_m=2.0)

    def back_over_ear(self, seat: Seat) -> Figure:
        """How far the back of a seat reaches above the ear of who sits in it."""
        ear, top = need(seat.ear, seat, "ear"), need(seat.back_top_m, seat, "back_top")
        return self.figure("back above the ear", "m", lambda w: w(top) - w(ear.z), per_m=1.0)

    def off_surface(self, thing: Hung, surface: str) -> Figure:
        """Gap between what is mounted, with its mount, and the wall, ceiling or floor that the file says it is on.

        A place is the middle of a front, or a lens: behind it is the depth of cabinet, display or screen, above a lens
        the projector's height, and what the mount reaches or drops. On the floor the centre is at most the cabinet's
        height up.
        """
        point, product = self._place(thing), need(thing.product, thing, "product")
        reach = self._reach(thing)
        upright = surface == "floor" or (surface == "ceiling" and isinstance(thing, Projector))
        size = need(product.height_m, product, "height") if upright else need(product.depth_m, product, "depth")

        def compute(world: World) -> float:
            return self._off_m(world, point, surface) - world(size) - sum(world(length) for length in reach)

        return self.figure("gap behind the cabinet", "m", compute, per_m=2.0)

    def beyond_place(self, thing: Hung, surface: str) -> Figure:
        """How far beyond the place of what it holds a mount ends, by its reach or drop as used; negative before it."""
        point, mounting = self._place(thing), need(thing.mounting, thing, "mounting")
        key = "drop" if surface == "ceiling" else "extension"
        used = need(mounting.drop_m if surface == "ceiling" else mounting.extension_m, mounting, key)
        return self.figure("mount beyond the place", "m", lambda w: w(used) - self._off_m(w, point, surface), per_m=2.0)

    def _place(self, thing: Hung) -> Point:
        return need(thing.centre, thing, "centre") if isinstance(thing, Picture) else self.figures.bodies.place(thing)

    def _off_m(self, world: World, point: Point, surface: str) -> float:
        space = self.figures.space
        if surface == "floor":
            return world(point.z)
        if surface == "ceiling":
            return abs(space.ceiling_height_m(world, world(point.x), world(point.y)) - world(point.z))
        return space.wall_distance_m(world, point, self.design.shell.wall_names.index(surface))

    @staticmethod
    def _reach(thing: Hung) -> tuple[Quantity, ...]:
        """Return what a mount puts between a thing and its surface: its reach in use, or its largest, and a drop."""
        mounting = thing.mounting
        if mounting is None:
            return ()
        data = mounting.product.mount if mounting.product is not None else None
        lengths = (mounting.extension_m or (data.reach_m if data is not None else None), mounting.drop_m)
        return tuple(length for length in lengths if length is not None)

    def clear_beside(self, source: Source, surface: str) -> Figure:
        """How clear a cabinet is of all surfaces but the wall or ceiling that holds it; negative: it pokes through."""
        self.figures.bodies.place(source)
        piece = None if surface == "ceiling" else self.design.shell.wall_names.index(surface)

        def compute(world: World) -> float:
            body = self.figures.bodies.solid(world, source)
            return enclosure.clear_beside_m(self.figures.space.enclosure(world), body, piece)

        return self.figure("clearance of the mounted cabinet", "m", compute, per_m=3.0)

    def beside_opening(self, source: Source, opening: Opening) -> Figure:
        """Gap on the wall between a cabinet and an opening of that wall; negative when they overlap."""
        there = self.opening(opening)

        def compute(world: World) -> float:
            body = self.figures.bodies.solid(world, source)
            return enclosure.gap_on_wall_m(self.figures.space.enclosure(world), body, there(world))

        return self.figure("gap to an opening", "m", compute, per_m=3.0)

    def beside_roof_window(self, thing: Source | Treatment, window: RoofWindow) -> Figure:
        """Gap in plan between what is at the ceiling and a window in it; negative when one covers the other."""
        pane = self.pane(window)
        around = self._spread(thing) if isinstance(thing, Treatment) else self._seen_from_below(thing)

        def compute(world: World) -> float:
            points, radius = around(world)
            return convex.plan_gap_m(points, pane(world)) - radius

        return self.figure("gap to a roof window", "m", compute, per_m=3.0)

    def _seen_from_below(self, source: Source) -> Callable[[World], tuple[Sequence[Point2], float]]:
        self.figures.bodies.place(source)

        def there(world: World) -> tuple[Sequence[Point2], float]:
            body = self.figures.bodies.solid(world, source)
            return solid.footprint(body), solid.radius_m(body)

        return there

    def pane(self, window: RoofWindow) -> Callable[[World], tuple[Point2, ...]]:
        """Return a roof window in plan: its sizes are along the ceiling, which a slope makes shorter there."""
        left, front = need(window.from_left_m, window, "from_left"), need(window.from_front_m, window, "from_front")
        wide, long = need(window.width_m, window, "width"), need(window.length_m, window, "length")

        def there(world: World) -> tuple[Point2, ...]:
            x, y = world(left), world(self.design.shell.length_m) - world(front)
            facet = roof.facet_over(self.figures.space.facets(world), (x + world(wide) / 2.0, y - world(long) / 2.0))
            return _rectangle(x, y, world(wide) / math.hypot(1.0, facet.a), world(long) / math.hypot(1.0, facet.b))

        return there

    def _spread(self, panel: Treatment) -> Callable[[World], tuple[Sequence[Point2], float]]:
        left, front = need(panel.from_left_m, panel, "from_left"), need(panel.from_front_m, panel, "from_front")
        wide, long = need(panel.width_m, panel, "width"), need(panel.height_m, panel, "height")
        depth = self.design.shell.length_m
        return lambda w: (_rectangle(w(left), w(depth) - w(front), w(wide), w(long)), 0.0)

    def opening(self, opening: Opening) -> Callable[[World], enclosure.Opening]:
        """Return where an opening is in its wall, in a world."""
        wall = self.design.shell.wall_names.index(opening.wall)
        first, wide = need(opening.start_m, opening, "from_wall_left"), need(opening.width_m, opening, "width")
        high, sill = need(opening.height_m, opening, "height"), opening.sill_m

        def there(world: World) -> enclosure.Opening:
            low = world(sill) if sill is not None else 0.0
            return enclosure.Opening(wall, world(first), world(wide), low, world(high))

        return there

    def out_of_swing(self, thing: Thing | Treatment, opening: Opening) -> Figure:
        """Clearance between a thing and what a door's leaf sweeps as it opens; negative when the leaf meets it."""
        there, left = self.opening(opening), need(opening.hinge, opening, "hinge") == "left"
        bodies = self.figures.bodies
        bodies.put(thing)
        place = None if isinstance(thing, Treatment) else bodies.place(thing)
        reach_m = PANEL_M if isinstance(thing, Treatment) else bodies.reach_m(thing)

        def compute(world: World) -> float:
            shape, hole = self.figures.space.enclosure(world), there(world)
            wall, start = enclosure.wall_of(shape, hole.piece)
            first = start + hole.from_left_m
            hinge, tip = (first, first + hole.width_m) if left else (first + hole.width_m, first)
            (hx, hy), (tx, ty) = wall.at(hinge), wall.at(tip)
            if place is not None:
                x, y, _ = world.xyz(place)
                if math.dist((x, y), (hx, hy)) - hole.width_m - reach_m > FAR_M:
                    return FAR_M
            # A leaf hung on the left, seen from inside, opens clockwise into the room.
            closed = -math.degrees(math.atan2(tx - hx, ty - hy))
            swing = sight.DoorSwing((hx, hy), hole.width_m, closed, -90.0 if left else 90.0)
            body, low, high = bodies.body(world, thing), hole.sill_m, hole.sill_m + hole.height_m
            clear = solid.clearance_m(body, solid.door_leaf(swing, low, high), FAR_M)
            if clear < 0.0:
                # What stands in the way gets out of it into the room, not through the wall that the door is in.
                clear = solid.clearance_m(body, solid.door_leaf(swing, low, high, hole.width_m + reach_m))
            return clear

        return self.figure("clearance to a door's leaf", "m", compute, per_m=3.0)

    def ear_height(self, seat: Seat) -> Figure:
        """Height of an ear above the floor or platform that its seat stands on."""
        ear, riser = need(seat.ear, seat, "ear"), seat.riser_m
        return self.figure(
            "ear height above its own floor", "m", lambda w: w(ear.z) - (w(riser) if riser is not None else 0.0)
        )

    def hidden_by(self, source: Source, seat: Seat) -> str:
        """Return the wall, ceiling, obstacle or hung panel between a source and a seat's ear; empty of a free line."""
        start, ear = need(source.position, source, "position").xyz, need(seat.ear, seat, "ear").xyz
        space, shell = self.figures.space, self.design.shell
        shape = space.enclosure(self.world)
        placed = [one for one in shell.obstacles if one.low is not None and one.high is not None]
        panels, covering = self.figures.covering.hung(), self.figures.covering
        bodies = [self.figures.bodies.obstacle(self.world, one) for one in placed]
        bodies += [covering.solid(self.world, one) for one in panels]
        met = sees(shape, start, ear, bodies)
        if met is None:
            return ""
        if met.kind == "obstacle":
            names = [*(obstacle_words(one) for one in placed), *(one.words for one in panels)]
            return names[met.number]
        return f"wall {space.wall_name(met.number)}" if met.kind == "wall" else f"the {met.kind}"

    def heads_in_the_way(self, seat: Seat, wanted_m: float) -> InTheWay | None:
        """How far the lines from all loudspeakers to a listener clear heads and seat backs of other rows.

        None when no head comes near a line. Raises `Missing` for a head in the way whose height is not given, and
        where no head is in the way of what is placed and something is not: a line from there may meet one.
        """
        lines, lacks = self._lines(seat), self._not_placed(seat)
        if not lines:
            if lacks is not None:
                raise lacks
            return None
        above = [self._above_m(self.world, line, seat) for line in lines]
        tightest = lines[above.index(min(above))]
        # One head before several loudspeakers is one cause: all that it hides are named.
        hidden = [
            line for line, clear in zip(lines, above, strict=True) if clear < wanted_m and line.head is tightest.head
        ]
        figure = self.figure(
            "clearance over heads", "m", lambda w: min([OVER_ALL_M, *(self._above_m(w, line, seat) for line in lines)])
        )
        sources = tuple(dict.fromkeys(line.source.words for line in hidden))
        rise = self._rise(hidden or [tightest], seat, wanted_m)
        return InTheWay(figure, tightest.head.words, sources, rise, lacks)

    def _not_placed(self, seat: Seat) -> Missing | None:
        """Return what is missing for all lines to a listener: its ear, a loudspeaker, or who sits in another row."""
        need(seat.ear, seat, "ear")
        for source in self.design.loudspeakers:
            if source.position is None:
                return Missing(source, "position")
        for other in self.design.seats:
            alike = other.row is not None and other.row == seat.row
            if other.ear is None and not alike:
                return Missing(other, "ear")
        return unsaid(self.design, "loudspeakers")

    def _rise(self, lines: Sequence[_Line], seat: Seat, wanted_m: float) -> Figure:
        def compute(world: World) -> float:
            rises = [0.0]
            for line in lines:
                passed = self._passed(world, line, seat)
                if passed is not None:
                    rises.append((wanted_m - passed.above_m) / passed.share)
            return max(rises)

        return self.figure("rise of the ear", "m", compute)

    def _lines(self, seat: Seat) -> list[_Line]:
        others = [other for other in self.design.seats if another_row(other, seat)]
        found = []
        for source in self.design.loudspeakers:
            for other in others if source.position is not None else ():
                start, ear, head = (need(p, seat, "ear").xyz for p in (source.position, seat.ear, other.ear))
                passed = sight.clearance_over(start, ear, head)
                if passed is not None and passed.aside_m <= _LOOKED_AT_M:
                    found.append(_Line(source, other, other.head_top_m, other.back_top_m))
        return found

    def _passed(self, world: World, line: _Line, seat: Seat) -> sight.Clearance | None:
        start, ear = world.xyz(self.figures.angles.place(line.source)), world.xyz(self.figures.angles.ear(seat))
        x, y, z = world.xyz(self.figures.angles.ear(line.head))
        passed = sight.clearance_over(start, ear, (x, y, z))
        if passed is None or passed.aside_m > HEAD_HALF_WIDTH_M:
            return None
        top = world(need(line.top_m, line.head, "head_top"))
        if line.back_m is not None:
            top = max(top, world(line.back_m))
        return passed._replace(above_m=passed.above_m + z - top)

    def _above_m(self, world: World, line: _Line, seat: Seat) -> float:
        passed = self._passed(world, line, seat)
        return passed.above_m if passed is not None else OVER_ALL_M

    def free_axes(self, element: Element) -> tuple[str, ...]:
        """Return which coordinates of a thing may change while it stays held as the file says.

        What stands keeps its height, what is on a wall stays on that wall, what is at the ceiling stays at it; an ear
        keeps its height above the floor. Only what nobody says anything of may move every way.
        """
        if isinstance(element, Seat):
            return ("x", "y")
        if isinstance(element, Picture):
            return self._along_its_wall(element)
        held = (
            element.mounting.on
            if isinstance(element, Loudspeaker | Subwoofer) and element.mounting is not None
            else None
        )
        if held is None:
            return ("x", "y", "z") if isinstance(element, Loudspeaker) else ("x", "y")
        if held == "floor" or held in HOLDERS:
            return ("x", "y")
        return self._along_surface(element, held)

    def _along_its_wall(self, picture: Picture) -> tuple[str, ...]:
        """Return how a picture may move: along the wall that holds it, or that it is nearest to."""
        names, held = self.design.shell.wall_names, picture.mounting.on if picture.mounting is not None else None
        if held not in names and picture.centre is not None:
            held = names[self.figures.space.nearest_wall(picture.centre)]
        return self._along_surface(picture, held) if held is not None else ()

    def _along_surface(self, element: Element, held: str) -> tuple[str, ...]:
        shape, names = self.figures.space.enclosure(self.world), self.design.shell.wall_names
        if held in names:
            nx, ny = enclosure.wall_of(shape, names.index(held))[0].inward
            return tuple(axis for axis, across in zip("xyz", (nx, ny, 0.0), strict=True) if abs(across) < _SQUARE)
        place = getattr(element, "position", None)
        if held != "ceiling" or place is None:
            return ()
        facet = roof.facet_over(shape.facets, place.xyz[:2])
        return tuple(axis for axis, slope in zip("xy", (facet.a, facet.b), strict=True) if abs(slope) < _SQUARE)


def _rectangle(left: float, front: float, width: float, depth: float) -> tuple[Point2, ...]:
    return ((left, front - depth), (left + width, front - depth), (left + width, front), (left, front))


def another_row(other: Seat, seat: Seat) -> bool:
    """Say whether two seats stand in different rows: by their numbers, or by what lies between front and rear."""
    if other is seat or other.ear is None or seat.ear is None:
        return False
    if other.row is not None and seat.row is not None:
        return other.row != seat.row
    facing = direction_vector(seat.facing_deg.value, 0.0)
    ahead = [there - here for there, here in zip(other.ear.xyz, seat.ear.xyz, strict=True)]
    return abs(ahead[0] * facing[0] + ahead[1] * facing[1]) >= ROW_PITCH_M
