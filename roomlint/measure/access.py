"""How people come in and out, and reach what they use."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final, NamedTuple

from roomlint.design.base import need
from roomlint.design.listening import Loudspeaker, Seat, Subwoofer
from roomlint.design.quantity import assumed
from roomlint.design.shell import Treatment
from roomlint.figures import enclosure, ray, solid
from roomlint.figures.direction import direction_vector
from roomlint.measure.ends import FAR_M
from roomlint.measure.view import View

if TYPE_CHECKING:
    from collections.abc import Sequence

    from roomlint.design.quantity import Quantity
    from roomlint.design.shell import Control, Obstacle, Opening, Riser, Walkway
    from roomlint.design.supply import Rack
    from roomlint.figures.solid import Solid
    from roomlint.measure.figure import Figure
    from roomlint.measure.staging import Thing
    from roomlint.measure.world import World

PASSAGE_M: Final = 0.915
"""How deep the way just inside a door is kept free: a walkway's width (2010 ADA Standards, 403.5.1)."""
HEAD_M: Final = 2.03
"""Below it nothing reaches into a way (307.4, 80 in)."""
CANE_M: Final = 0.685
"""What is fixed to a wall and begins lower is found with a cane (307.2, 27 in)."""
BEHIND_EAR_M: Final = (0.25, 0.10)
"""How far a seat reaches behind its listener's ear, and how far that may be off: ordinary seats, ours."""
ONE_STEP_M: Final = 0.1968
"""What one step rises at most (IRC R311.7): a lower platform needs no second one."""


class RackFit(NamedTuple):
    """How much larger than a rack what it contains is, m (negative: to spare), and which way."""

    figure: Figure
    way: str


class Access(View):
    """Doors, platforms, controls, racks."""

    def rack_fit(self, rack: Rack) -> RackFit | None:
        """Return how much more than its sizes the contents of a rack want, the way that is worst; None of none."""
        outer = [
            need(size, rack, key)
            for key, size in (("width", rack.width_m), ("height", rack.height_m), ("depth", rack.depth_m))
        ]
        sheets = [need(item.product, item, "product") for item in self.figures.heating.contents(rack)]
        if not sheets:
            return None
        sizes = [
            [need(getattr(sheet, f"{key}_m"), sheet, key) for key in ("width", "height", "depth")] for sheet in sheets
        ]

        def excess(world: World) -> tuple[float, float, float]:
            wide, high, deep = (world(size) for size in outer)
            boxes = [tuple(world(size) for size in of) for of in sizes]
            return (
                max(box[0] for box in boxes) - wide,
                _stacked_m(boxes, wide) - high,
                max(box[2] for box in boxes) - deep,
            )

        here = excess(self.world)
        figure = self.figure("contents over the rack", "m", lambda w: max(excess(w)), rack)
        return RackFit(figure, ("wider", "taller", "deeper")[here.index(max(here))])

    def wide(self, opening: Opening) -> Figure:
        """Clear width of an opening."""
        width = need(opening.width_m, opening, "width")
        return self.figure("clear width", "m", lambda w: w(width))

    def high(self, opening: Opening) -> Figure:
        """Clear height of an opening."""
        height = need(opening.height_m, opening, "height")
        return self.figure("clear height", "m", lambda w: w(height))

    def sill(self, opening: Opening) -> Figure:
        """Height of an opening's lower edge."""
        sill = need(opening.sill_m, opening, "sill")
        return self.figure("height of the sill", "m", lambda w: w(sill))

    def before_door(self, thing: Thing | Obstacle | Treatment, opening: Opening) -> Figure:
        """Clearance between a thing and the way just inside an opening, as wide as it is; negative in that way."""
        there, bodies = self.figures.staging.opening(opening), self.figures.bodies
        bodies.put(thing)

        def compute(world: World) -> float:
            way = enclosure.before_opening(self.figures.space.enclosure(world), there(world), PASSAGE_M)
            return solid.clearance_m(bodies.body(world, thing), way, FAR_M)

        return self.figure("clearance before a door", "m", compute, per_m=3.0)

    def step(self, riser: Riser) -> Figure:
        """Rise of each step up to a platform, taken as equal; one step where a low platform needs no more."""
        height = need(riser.height, riser, "height")
        low = riser.steps is None and height.value + height.u <= ONE_STEP_M
        steps = 1 if low else need(riser.steps, riser, "steps")
        return self.figure("rise of a step", "m", lambda w: w(height) / steps)

    def walkway_width(self, walkway: Walkway) -> Figure:
        """Width of a walkway: the shorter side of its strip."""
        width, depth = need(walkway.width, walkway, "width"), need(walkway.depth, walkway, "depth")
        return self.figure("width of the walkway", "m", lambda w: min(w(width), w(depth)), walkway)

    def in_walkway(self, thing: Thing | Obstacle | Treatment, walkway: Walkway) -> Figure:
        """Clearance between a thing, a seat opened up, and a walkway below a head's height; negative in its way."""
        left, front = need(walkway.from_left, walkway, "from_left"), need(walkway.from_front, walkway, "from_front")
        width, depth = need(walkway.width, walkway, "width"), need(walkway.depth, walkway, "depth")
        bodies, length = self.figures.bodies, self.design.shell.length_m
        bodies.put(thing)

        def compute(world: World) -> float:
            x, y = world(left), world(length) - world(front)
            strip = solid.upright_box((x, y - world(depth), 0.0), (x + world(width), y, HEAD_M))
            body = self._taken(world, thing) if isinstance(thing, Seat) else bodies.body(world, thing)
            return solid.clearance_m(body, strip, FAR_M)

        return self.figure("clearance to a walkway", "m", compute, per_m=3.0)

    def _taken(self, world: World, thing: Seat) -> Solid:
        """Return what a seat takes up, with its footrest out where its size is given."""
        if thing.depth_m is None:
            return self.figures.bodies.solid(world, thing)
        ear, facing = world.xyz(need(thing.ear, thing, "ear")), world(thing.facing_deg)
        width = world(need(thing.width_m, thing, "width"))
        behind = world(self._behind_ear(thing))
        long = world(thing.open_length_m or thing.depth_m)
        way = direction_vector(facing, 0.0)
        front = (ear[0] + (long - behind) * way[0], ear[1] + (long - behind) * way[1], ear[2] / 2.0)
        return solid.cabinet(front, way, width, ear[2], long)

    def _behind_ear(self, seat: Seat) -> Quantity:
        value, u = BEHIND_EAR_M
        words = f"a seat that reaches {value:.2f} m behind the ear, and opens forward"
        return self.once(("behind", seat), lambda: assumed(value, u, "m", words))

    def hangs(self, thing: Thing | Obstacle | Treatment) -> bool:
        """Whether a thing is fixed to a wall with its underside above where a cane finds it."""
        names = self.design.shell.wall_names
        if not isinstance(thing, Loudspeaker | Subwoofer | Treatment):
            return False
        held = thing.on if isinstance(thing, Treatment) else thing.mounting.on if thing.mounting is not None else None
        if held not in names:
            return False
        low, _ = solid.heights_m(self.figures.bodies.body(self.world, thing))
        return low > CANE_M

    def control(self, control: Control) -> Figure:
        """Height of what is worked by hand."""
        height = need(control.height_m, control, "height")
        return self.figure("height of a control", "m", lambda w: w(height))

    def before_rack(self, rack: Rack) -> Figure:
        """Free depth in front of a rack."""
        clear = need(rack.front_clear_m, rack, "front_clear")
        return self.figure("free depth in front", "m", lambda w: w(clear))

    def clear_said(self, rack: Rack) -> Figure:
        """How much more free depth the file gives before or behind a rack than its drawing leaves, whichever is more.

        To the first wall, obstacle or placed thing that the rack's face would meet, moved straight on.
        """
        place, bodies = need(rack.position, rack, "position"), self.figures.bodies
        width, height, depth = (need(size, rack, key) for size, key in rack.sizes)
        given = tuple(
            (side, clear) for side, clear in ((1.0, rack.front_clear_m), (-1.0, rack.rear_clear_m)) if clear is not None
        )
        others = tuple(one for one in bodies.things if one is not rack and bodies.is_placed(one))

        def compute(world: World) -> float:
            shape = self.figures.space.enclosure(world)
            solids = [*self.figures.space.obstacles(world), *(bodies.solid(world, one) for one in others)]
            (x, y, z), (ax, ay, _) = world.xyz(place), bodies.rack_faces(world, rack)
            wide, high, deep = world(width), world(height), world(depth)

            def free(side: float) -> float:
                back = deep if side < 0.0 else 0.0
                face = (x - back * ax, y - back * ay, z + high / 2.0)
                return ray.ahead_of_face(shape, face, (side * ax, side * ay, 0.0), wide, high, solids).distance_m

            return max(world(clear) - free(side) for side, clear in given)

        return self.figure("free depth that is not there", "m", compute, per_m=3.0)

    def behind_rack(self, rack: Rack) -> Figure:
        """Free depth to stand behind a rack: as it stands, or when it is pulled out by its own depth."""
        if need(rack.service, rack, "service") == "rear":
            clear = need(rack.rear_clear_m, rack, "rear_clear")
            return self.figure("free depth behind", "m", lambda w: w(clear))
        front, depth = need(rack.front_clear_m, rack, "front_clear"), need(rack.depth_m, rack, "depth")
        return self.figure("free depth behind the pulled-out rack", "m", lambda w: w(front) - w(depth))


def _stacked_m(boxes: Sequence[tuple[float, ...]], wide_m: float) -> float:
    """Return how tall boxes (width, height) are one above the other, those that leave room for another by twos."""
    single = sum(box[1] for box in boxes if box[0] > wide_m / 2.0)
    halves = sorted((box[1] for box in boxes if box[0] <= wide_m / 2.0), reverse=True)
    return single + sum(halves[::2])
