"""Cabinets, listeners and obstacles as solids in the room, and what overlaps what."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING, Final, NamedTuple, TypeAlias

from roomlint.design.base import need
from roomlint.design.listening import Loudspeaker, Projector, Seat
from roomlint.design.quantity import Assumption, assumed
from roomlint.design.shell import Obstacle, Treatment
from roomlint.design.supply import Rack
from roomlint.figures import solid
from roomlint.figures.coverage import UP
from roomlint.figures.direction import COINCIDENT_M, direction_vector, toward
from roomlint.figures.enclosure import wall_of
from roomlint.measure.ends import FAR_M
from roomlint.measure.view import View

if TYPE_CHECKING:
    from roomlint.design.base import Point
    from roomlint.design.listening import Subwoofer
    from roomlint.design.products import Product
    from roomlint.design.quantity import Quantity
    from roomlint.figures.direction import Point3, Vector3
    from roomlint.figures.solid import Solid
    from roomlint.measure.figure import Figure
    from roomlint.measure.world import World

Source: TypeAlias = "Loudspeaker | Subwoofer"
Boxed: TypeAlias = "Loudspeaker | Subwoofer | Projector | Rack"
Thing: TypeAlias = "Loudspeaker | Subwoofer | Projector | Rack | Seat"

NO_SHEET_M: Final = {
    "loudspeaker": ((0.25, 0.10), (0.40, 0.20), (0.30, 0.10)),
    "subwoofer": ((0.40, 0.15), (0.40, 0.15), (0.40, 0.15)),
    "projector": ((0.45, 0.10), (0.18, 0.06), (0.45, 0.15)),
    "rack": ((0.60, 0.10), (1.00, 0.50), (0.60, 0.20)),
}
"""Width, height and depth of what has no sizes given, and how far each may be off: ordinary products, ours."""
_WORDS: Final = {
    "rack": "a rack {{}} {}, as none is given",
    "projector": "a projector {{}} {}, as its sheet is not given",
}
_AIMED: Final = "a cabinet that is turned to the seats, as its aim is not given"
_FRONT: Final = "a projector that faces the front, as the place of the picture is not given"
_NEAREST_WALL: Final = "a rack that faces away from the nearest wall"
SEATED_WIDE_M: Final = (0.50, 0.10)
"""Width of a listener on a seat of which no width is given, and how far it may be off."""
HEAD_ABOVE_EAR_M: Final = 0.13
"""Top of the head above the ear of a seated adult, where the file gives no head."""
_LOOKED_AGAIN_M: Final = 0.3
"""A thing that moves by more than this is held against all others anew."""
_DOWN: Vector3 = (0.0, 0.0, -1.0)


def obstacle_words(obstacle: Obstacle) -> str:
    """Return what the team calls an obstacle, with what it is where its name does not say so."""
    return obstacle.id if obstacle.kind in obstacle.id else f"{obstacle.kind} {obstacle.id}"


def _heights(seat: Seat) -> tuple[Quantity | None, Quantity | None]:
    """Return between which heights a listener is, where the file gives them."""
    return seat.riser_m, seat.head_top_m


class Overlap(NamedTuple):
    """How deep a thing stands in another, m (negative: clear of it), and what that other is."""

    figure: Figure
    other: str


class Bodies(View):
    """Solids and their clearances."""

    def place(self, thing: Thing) -> Point:
        """Return where a thing is: a source's acoustic centre, a seat's ear, a lens, the foot of a rack's front."""
        if isinstance(thing, Seat):
            return need(thing.ear, thing, "ear")
        if isinstance(thing, Projector):
            return need(thing.lens, thing, "lens")
        return need(thing.position, thing, "position")

    @staticmethod
    def is_placed(thing: Thing) -> bool:
        """Whether the file says where a thing is."""
        if isinstance(thing, Seat):
            return thing.ear is not None
        return (thing.lens if isinstance(thing, Projector) else thing.position) is not None

    @property
    def things(self) -> tuple[Thing, ...]:
        """Everything that takes up room, obstacles apart."""
        picture = self.design.picture
        projector = picture.projector if picture is not None else None
        shown = (projector,) if projector is not None else ()
        return (*self.design.sources, *self.design.seats, *self.design.racks, *shown)

    def sizes(self, source: Boxed) -> tuple[Quantity, Quantity, Quantity]:
        """Return width, height and depth of a cabinet: its sheet's, or an ordinary one's that is assumed and told."""
        return self.once(("sizes", source), lambda: self._sizes(source))

    def _sizes(self, source: Boxed) -> tuple[Quantity, Quantity, Quantity]:
        sheet = source if isinstance(source, Rack) else source.product
        known = (sheet.width_m, sheet.height_m, sheet.depth_m) if sheet is not None else (None, None, None)
        found = []
        for name, given, (value, u) in zip(("wide", "high", "deep"), known, NO_SHEET_M[source.KIND], strict=True):
            form = _WORDS.get(source.KIND, "a cabinet {{}} {}, as its sheet is not given").format(name)
            found.append(given if given is not None else assumed(value, u, "m", Assumption(form, (value, "m"))))
        return found[0], found[1], found[2]

    def by_water(self, product: Product) -> Figure:
        """Mass of a product over that of as much water as its outer sizes hold."""
        mass = need(product.mass_kg, product, "mass")
        wide, high = need(product.width_m, product, "width"), need(product.height_m, product, "height")
        deep = need(product.depth_m, product, "depth")
        return self.figure("mass over that of water", "", lambda w: solid.by_water(w(mass), w(wide), w(high), w(deep)))

    def axis(self, world: World, source: Source) -> Vector3:
        """Return the way that a cabinet's front faces in a world.

        As it is aimed; else square off the wall or the ceiling that it is mounted on; else level toward the seats.
        """
        at = world.xyz(self.place(source))
        if isinstance(source, Loudspeaker):
            aim = source.aim
            if aim is not None and aim.seat is not None:
                return toward(at, world.xyz(need(aim.seat.ear, aim.seat, "ear")))
            if aim is not None:
                azimuth = world(need(aim.azimuth_deg, source, "aim.azimuth"))
                return direction_vector(azimuth, world(aim.elevation_deg) if aim.elevation_deg is not None else 0.0)
        elif source.facing_deg is not None:
            return direction_vector(world(source.facing_deg), 0.0)
        held = source.mounting.on if source.mounting is not None else None
        if held == "ceiling":
            return _DOWN
        if held in self.design.shell.wall_names:
            piece = self.design.shell.wall_names.index(held)
            return (*wall_of(self.figures.space.enclosure(world), piece)[0].inward, 0.0)
        world.assume(_AIMED)
        return self._toward_seats(world, at)

    def rack_faces(self, world: World, rack: Rack) -> Vector3:
        """Return the way that a rack's front faces: as said, off the wall that holds it, or off the nearest one."""
        if rack.facing_deg is not None:
            return direction_vector(world(rack.facing_deg), 0.0)
        names, held = self.design.shell.wall_names, rack.mounting.on if rack.mounting is not None else None
        if held in names:
            piece = names.index(held)
        else:
            world.assume(_NEAREST_WALL)
            place = self.place(rack)
            piece = min(range(len(names)), key=lambda n: self.figures.space.wall_distance_m(world, place, n))
        return (*wall_of(self.figures.space.enclosure(world), piece)[0].inward, 0.0)

    def _beam(self, world: World, lens: Point3) -> Vector3:
        """Return the way that a projector's front faces: level, toward the middle of the picture."""
        picture = self.design.picture
        if picture is None or picture.centre is None:
            world.assume(_FRONT)
            return direction_vector(0.0, 0.0)
        x, y, _ = world.xyz(picture.centre)
        if math.dist((x, y), lens[:2]) < COINCIDENT_M:
            return direction_vector(0.0, 0.0)
        return toward((lens[0], lens[1], 0.0), (x, y, 0.0))

    def _toward_seats(self, world: World, at: Point3) -> Vector3:
        seats = self.design.seats
        seat = next((seat for seat in seats if seat.reference), seats[0] if seats else None)
        if seat is None or seat.ear is None:
            return direction_vector(180.0, 0.0)
        ear = world.xyz(seat.ear)
        if math.dist(at[:2], ear[:2]) < COINCIDENT_M:
            return _DOWN
        return toward((at[0], at[1], 0.0), (ear[0], ear[1], 0.0))

    def solid(self, world: World, thing: Thing) -> Solid:
        """Return what a thing takes up in a world: a cabinet, or a listener from the floor to the top of the head."""
        return world.once(("solid", thing), lambda w: self._solid(w, thing))

    def _solid(self, world: World, thing: Thing) -> Solid:
        at = world.xyz(self.place(thing))
        if isinstance(thing, Seat):
            return self._listener(world, thing, at)
        width, height, depth = (world(size) for size in self.sizes(thing))
        if isinstance(thing, Rack):
            front = (at[0], at[1], at[2] + height / 2.0)
            return solid.cabinet(front, self.rack_faces(world, thing), width, height, depth, UP)
        axis = self._beam(world, at) if isinstance(thing, Projector) else self.axis(world, thing)
        return solid.cabinet(at, axis, width, height, depth, UP)

    def _listener(self, world: World, seat: Seat, ear: Point3) -> Solid:
        radius = world(self._seat_width(seat)) / 2.0
        riser, head_top = _heights(seat)
        floor = world(riser) if riser is not None else 0.0
        above = world(head_top) - ear[2] if head_top is not None else HEAD_ABOVE_EAR_M
        return solid.seated(ear, radius, min(floor, ear[2] - 0.1), max(above, 0.0))

    def _seat_width(self, seat: Seat) -> Quantity:
        value, u = SEATED_WIDE_M
        words = Assumption("a seat {} wide, as none is given", (value, "m"))
        return self.once(("seat", seat), lambda: seat.width_m or assumed(value, u, "m", words))

    def put(self, thing: Thing | Obstacle | Treatment) -> None:
        """Raise `Missing` where it is not given where a thing is; obstacles are refused without it."""
        if isinstance(thing, Treatment):
            self.figures.covering.solid(self.world, thing)
        elif not isinstance(thing, Obstacle):
            self.place(thing)

    def body(self, world: World, thing: Thing | Obstacle | Treatment) -> Solid:
        """Return what a thing, an obstacle or a panel takes up in a world."""
        if isinstance(thing, Treatment):
            return self.figures.covering.solid(world, thing)
        return self.obstacle(world, thing) if isinstance(thing, Obstacle) else self.solid(world, thing)

    def obstacle(self, world: World, obstacle: Obstacle) -> Solid:
        """Return an obstacle as a solid; raises `Missing` when its place is not given."""
        low, high = need(obstacle.low, obstacle, "from_left"), need(obstacle.high, obstacle, "from_left")
        return world.once(("obstacle", obstacle), lambda w: solid.upright_box(w.xyz(low), w.xyz(high)))

    def overlap(self, thing: Thing) -> Overlap:
        """How deep a thing stands in an obstacle or in a thing that the file lists before it.

        Each two are compared once. Things far from each other as the file puts them are compared only where the thing
        itself is moved, when another place is sought for it.
        """
        own = self.place(thing)
        things = self.things
        earlier = things[: things.index(thing)]
        near: list[tuple[str, Obstacle | Thing]] = []
        far: list[Obstacle | Thing] = []
        for obstacle in self.design.shell.obstacles:
            if self._beside(own, thing, obstacle):
                near.append((obstacle_words(obstacle), obstacle))
            else:
                far.append(obstacle)
        for other in things:
            if other is thing or not self.is_placed(other):
                continue
            if self._apart_m(own, self.place(other)) > self.reach_m(thing) + self.reach_m(other) + FAR_M:
                if isinstance(other, Seat):
                    _heights(other)  # judged: so far away it is clear, however high it reaches
                far.append(other)
            elif other in earlier:
                near.append((other.words, other))

        def compute(world: World) -> float:
            deepest = max((self._depth_m(world, thing, other) for _, other in near), default=-FAR_M)
            elsewhere = world.once(("elsewhere", thing), lambda w: self._elsewhere_m(w, thing, far))
            return max(deepest, elsewhere, -FAR_M)

        depths = [self._depth_m(self.world, thing, other) for _, other in near]
        nearest = near[depths.index(max(depths))][0] if near else ""
        return Overlap(self.figure("overlap", "m", compute, thing, per_m=3.0), nearest)

    def _elsewhere_m(self, world: World, thing: Thing, others: list[Obstacle | Thing]) -> float:
        """Return how deep a thing that was moved stands in what is far from its place as read."""
        place = self.place(thing)
        if math.dist(world.xyz(place), place.xyz) < _LOOKED_AGAIN_M:
            return -FAR_M
        return max((self._depth_m(world, thing, other) for other in others), default=-FAR_M)

    def _depth_m(self, world: World, thing: Thing, other: Obstacle | Thing) -> float:
        return world.once(("depth", thing, other), lambda w: self._find_depth_m(w, thing, other))

    def _find_depth_m(self, world: World, thing: Thing, other: Obstacle | Thing) -> float:
        if self._gap_at_least_m(world, thing, other) > FAR_M:
            return -FAR_M
        across = self.obstacle(world, other) if isinstance(other, Obstacle) else self.solid(world, other)
        return -solid.clearance_m(self.solid(world, thing), across, FAR_M)

    def _gap_at_least_m(self, world: World, thing: Thing, other: Obstacle | Thing) -> float:
        """Return a gap in plan that two things have at the least: their points' distance less what they reach."""
        own = self.place(thing)
        x, y = world(own.x), world(own.y)
        if isinstance(other, Obstacle):
            low, high = need(other.low, other, "from_left"), need(other.high, other, "from_left")
            aside = max(world(low.x) - x, x - world(high.x), 0.0)
            return math.hypot(aside, max(world(low.y) - y, y - world(high.y), 0.0)) - self.reach_m(thing)
        there = self.place(other)
        return math.dist((x, y), (world(there.x), world(there.y))) - self.reach_m(thing) - self.reach_m(other)

    def reach_m(self, thing: Thing) -> float:
        """Return how far from its point a thing reaches in plan at most, m."""

        def reach() -> float:
            if isinstance(thing, Seat):
                return self._seat_width(thing).value
            width, height, depth = (size.value for size in self.sizes(thing))
            return math.hypot(width / 2.0, height / 2.0, depth)

        return self.once(("reach", thing), reach)

    def _beside(self, own: Point, thing: Thing, obstacle: Obstacle) -> bool:
        low, high = need(obstacle.low, obstacle, "from_left").xyz, need(obstacle.high, obstacle, "from_left").xyz
        out = [max(first - at, at - last, 0.0) for first, last, at in zip(low, high, own.xyz, strict=True)]
        return math.hypot(out[0], out[1]) <= self.reach_m(thing) + FAR_M

    @staticmethod
    def _apart_m(one: Point, other: Point) -> float:
        return math.dist(one.xyz[:2], other.xyz[:2])
