"""Where pictures, projectors, racks, panels and receptacles are, against the room's surfaces and openings."""

from __future__ import annotations

from typing import TYPE_CHECKING, TypeAlias

from roomlint import roof
from roomlint.design.base import Missing, need
from roomlint.design.listening import Picture, Projector
from roomlint.design.quantity import exact
from roomlint.design.shell import HORIZONTAL, Opening, Treatment
from roomlint.design.supply import Rack, Receptacle
from roomlint.figures import enclosure
from roomlint.figures.domain import Refused
from roomlint.figures.solid import Upright
from roomlint.measure.view import View
from roomlint.plane import depth_m

if TYPE_CHECKING:
    from collections.abc import Callable

    from roomlint.design.base import Point
    from roomlint.design.quantity import Quantity
    from roomlint.measure.figure import Figure
    from roomlint.measure.world import World
    from roomlint.plane import Point2

Fixture: TypeAlias = Picture | Projector | Rack | Treatment | Receptacle | Opening
Flat: TypeAlias = Picture | Treatment
"""What hangs flat on a wall."""


class Fixtures(View):
    """Places of what neither makes sound nor sits."""

    def depth_inside(self, thing: Fixture) -> Figure:
        """How far inside the room a thing is, to the nearest surface; negative outside.

        Of a picture its corners count, of a panel its edges on its surface, of all else the point that is given. What
        is given along a wall is held against that wall's ends, the floor and the ceiling, where one is given.
        """
        compute = self._depth(thing)
        return self.figure("distance inside the room", "m", compute, per_m=3.0)

    def lacks(self, thing: Fixture) -> Missing | None:
        """Return what is missing, so that a thing may reach farther than is known: its own size, or the ceiling.

        Of what lies flat only the plan counts.
        """
        if isinstance(thing, Treatment | Opening):
            low = [("sill", thing.sill_m)] if isinstance(thing, Opening) else []
            for key, size in (("width", thing.width_m), ("height", thing.height_m), *low):
                if size is None:
                    return Missing(thing, key)
        lies = isinstance(thing, Treatment) and thing.on in HORIZONTAL
        return None if lies else self.figures.space.no_ceiling

    def _depth(self, thing: Fixture) -> Callable[[World], float]:
        if isinstance(thing, Treatment):
            on = need(thing.on, thing, "on")
            return self._on_level(thing) if on in HORIZONTAL else self._on_wall(self._panel(thing, on))
        if isinstance(thing, Opening):
            start, wall = need(thing.start_m, thing, "from_wall_left"), need(thing.wall, thing, "wall")
            sizes = (_or_nothing(size) for size in (thing.sill_m, thing.width_m, thing.height_m))
            return self._on_wall(self._spread(wall, start, *sizes))
        if isinstance(thing, Receptacle):
            wall = need(thing.wall, thing, "wall")
            return self._at_height(thing) if wall in HORIZONTAL else self._on_wall(self.spot(thing, wall))
        if isinstance(thing, Picture):
            return self._nearest(self._corners(thing))
        if isinstance(thing, Rack) and None not in (thing.width_m, thing.height_m, thing.depth_m):
            return self._body(thing)
        place = (
            need(thing.lens, thing, "lens") if isinstance(thing, Projector) else need(thing.position, thing, "position")
        )
        return self._nearest(lambda w: Upright(((w(place.x), w(place.y)),), w(place.z), w(place.z)))

    def _body(self, rack: Rack) -> Callable[[World], float]:
        """Return how far a rack of known size is inside: its foot on the floor, the rest clear of walls and ceiling."""
        place = need(rack.position, rack, "position")

        def compute(world: World) -> float:
            shape = self.figures.space.as_given(world)
            body = self.figures.bodies.solid(world, rack)
            beside = enclosure.solid_clearance(shape, body, floor=False).distance_m
            return min(enclosure.nearest_surface(shape, world.xyz(place)).distance_m, beside)

        return compute

    def _nearest(self, of: Callable[[World], Upright]) -> Callable[[World], float]:
        def compute(world: World) -> float:
            shape, flat = self.figures.space.as_given(world), of(world)
            points = [(x, y, z) for x, y in flat.plan for z in (flat.low_m, flat.high_m)]
            return min(enclosure.nearest_surface(shape, point).distance_m for point in points)

        return compute

    def _on_wall(self, there: Callable[[World], enclosure.Opening]) -> Callable[[World], float]:
        return lambda w: enclosure.depth_on_wall_m(self.figures.space.as_given(w), there(w))

    def _at_height(self, outlet: Receptacle) -> Callable[[World], float]:
        """Return how far a receptacle of ceiling or floor, of which no more is given, is between the two."""
        height = need(outlet.height_m, outlet, "height")
        return lambda w: min(w(height), roof.highest_m(self.figures.space.as_given(w).facets) - w(height))

    def _on_level(self, panel: Treatment) -> Callable[[World], float]:
        left, front = need(panel.from_left_m, panel, "from_left"), need(panel.from_front_m, panel, "from_front")
        wide, deep, length_m = _or_nothing(panel.width_m), _or_nothing(panel.height_m), self.design.shell.length_m

        def compute(world: World) -> float:
            outline = self.figures.space.outline(world)
            x, y = world(left), world(length_m) - world(front)
            return min(
                depth_m(outline, (along, ahead)) for along in (x, x + world(wide)) for ahead in (y, y - world(deep))
            )

        return compute

    def _panel(self, panel: Treatment, on: str) -> Callable[[World], enclosure.Opening]:
        start, low = need(panel.start_m, panel, "from_wall_left"), _or_nothing(panel.bottom_m)
        return self._spread(on, start, low, _or_nothing(panel.width_m), _or_nothing(panel.height_m))

    def rectangle(self, panel: Treatment) -> Callable[[World], enclosure.Opening]:
        """Return a panel or a curtain as a rectangle of its wall."""
        return self._panel(panel, need(panel.on, panel, "on"))

    def spot(self, outlet: Receptacle, wall: str) -> Callable[[World], enclosure.Opening]:
        """Return a receptacle as a point of its wall."""
        start, height = need(outlet.start_m, outlet, "from_wall_left"), need(outlet.height_m, outlet, "height")
        return self._spread(wall, start, height, _or_nothing(None), _or_nothing(None))

    def _spread(
        self, on: str, start: Quantity, low: Quantity, wide: Quantity, high: Quantity
    ) -> Callable[[World], enclosure.Opening]:
        wall = self.design.shell.wall_names.index(on)
        return lambda w: enclosure.Opening(wall, w(start), w(wide), w(low), w(high))

    def _corners(self, picture: Picture) -> Callable[[World], Upright]:
        """Return a picture as an upright without thickness; as its middle where its size or its way is not known."""
        centre = need(picture.centre, picture, "centre")
        try:
            width, height = self.figures.onscreen.size(picture)
            self.faces(self.world, picture)
        except (Missing, Refused):
            width, height = _or_nothing(None), _or_nothing(None)
        return self._sheet(picture, centre, width, height)

    def _sheet(self, picture: Picture, centre: Point, width: Quantity, height: Quantity) -> Callable[[World], Upright]:
        def compute(world: World) -> Upright:
            (x, y, z), half, up = world.xyz(centre), world(width) / 2.0, world(height) / 2.0
            if half <= 0.0:
                return Upright(((x, y),), z, z)
            nx, ny = self.faces(world, picture)
            return Upright(((x - half * ny, y + half * nx), (x + half * ny, y - half * nx)), z - up, z + up)

        return compute

    def faces(self, world: World, picture: Picture) -> Point2:
        """Return the way that a picture faces in plan: off its wall, or off the wall before the reference seat."""
        names = self.design.shell.wall_names
        held = picture.mounting.on if picture.mounting is not None else None
        if held in names:
            return enclosure.wall_of(self.figures.space.as_given(world), names.index(held))[0].inward
        seats = self.design.seats
        seat = next((seat for seat in seats if seat.reference), seats[0] if seats else None)
        return self.figures.onscreen.facing(world, picture, need(seat, self.design, "seats[].reference"))

    @staticmethod
    def surface(thing: Flat) -> str:
        """Return what a picture or a panel is on."""
        if isinstance(thing, Treatment):
            return need(thing.on, thing, "on")
        mounting = need(thing.mounting, thing, "mounting.on")
        return need(mounting.on, thing, "mounting.on")

    @staticmethod
    def is_display(thing: Flat) -> bool:
        """Whether it is a display, by its kind or its product."""
        if isinstance(thing, Treatment):
            return False
        return thing.kind == "display" or (thing.product is not None and thing.product.kind == "display")

    def treble_loss(self, picture: Picture) -> Figure:
        """Sound that the screen takes at 8 kHz, by its sheet."""
        sheet = need(picture.product, picture, "product")
        loss = need(need(sheet.picture, sheet, "picture").loss_db, sheet, "picture.loss")
        return self.figure("loss through the screen", "dB", lambda w: w(loss))

    def beside_opening(self, thing: Flat, opening: Opening) -> Figure:
        """Gap on the wall between a picture or a panel and an opening of that wall; negative when they overlap."""
        there = self.figures.staging.opening(opening)
        flat = self.hung(thing)

        def compute(world: World) -> float:
            return enclosure.gap_on_wall_m(self.figures.space.enclosure(world), flat(world), there(world))

        return self.figure("gap to an opening", "m", compute, per_m=3.0)

    def outlet_beside(self, outlet: Receptacle, opening: Opening) -> Figure:
        """Gap on the wall between a receptacle, as a point, and an opening of that wall; negative inside it."""
        there = self.figures.staging.opening(opening)
        spot = self.spot(outlet, need(outlet.wall, outlet, "wall"))

        def compute(world: World) -> float:
            shape = self.figures.space.enclosure(world)
            return enclosure.gap_on_wall_m(shape, enclosure.before_opening(shape, spot(world)), there(world))

        return self.figure("gap to an opening", "m", compute, per_m=3.0)

    def hung(self, thing: Flat) -> Callable[[World], Upright]:
        """Return a picture or a panel as an upright without thickness, or as deep as what it covers."""
        if isinstance(thing, Picture):
            centre = need(thing.centre, thing, "centre")
            return self._sheet(thing, centre, *self.figures.onscreen.size(thing))
        need(thing.width_m, thing, "width")
        need(thing.height_m, thing, "height")
        there = self.rectangle(thing)
        return lambda w: enclosure.before_opening(self.figures.space.enclosure(w), there(w))


def _or_nothing(size: Quantity | None) -> Quantity:
    """Return a size, or none at all: what is not given reaches no farther than its point."""
    return size if size is not None else exact(0.0, "m")
