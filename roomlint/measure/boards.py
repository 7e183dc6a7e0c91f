"""Panels, boxes, and what stands between a receptacle and its loads: one tree of power."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final, NamedTuple

from roomlint.design.base import Missing, need
from roomlint.figures import enclosure, solid
from roomlint.figures.domain import Refused
from roomlint.measure import fixing
from roomlint.measure.ends import FAR_M
from roomlint.measure.view import View

if TYPE_CHECKING:
    from collections.abc import Iterator
    from collections.abc import Set as AbstractSet

    from roomlint.design.quantity import Quantity
    from roomlint.design.shell import Obstacle, Surface, Treatment
    from roomlint.design.structure import Panel
    from roomlint.design.supply import Cable
    from roomlint.design.wiring import Circuit, Load, Receptacle, Unit
    from roomlint.measure.figure import Figure
    from roomlint.measure.staging import Thing
    from roomlint.measure.world import World

DEEP_M: Final = 0.9
WIDE_M: Final = 0.762
HIGH_M: Final = 2.0
"""The working space before a panel of at most 150 V to ground (NFPA 70, 110.26(A))."""
COMBUSTIBLE: Final = frozenset({"plywood", "osb", "foam-backed"})
"""Board that burns."""
BURNING: Final = frozenset({
    "wood-on-joists", "parquet-on-concrete", "wood-lining", "carpet-on-concrete", "carpet-on-felt", "curtain-light",
    "curtain-medium", "curtain-heavy",
})  # fmt: skip
"""Finishes that burn, whatever is behind them."""
METAL: Final = frozenset({"steel-stud", "hat-channel"})
"""Framing of metal."""
FRAMED: Final = METAL | {"wood-stud", "furring"}
"""Framing of a partition that has another face at the depth of its members."""


class Space(NamedTuple):
    """The tightest side of a working space: by its share of what is wanted, which side, and how much there is."""

    share: Figure
    side: str
    there: Figure


class Boards(View):
    """Panels, units and boxes."""

    def of(self, circuit: Circuit) -> Panel:
        """Return the panel that a circuit starts from."""
        name = need(circuit.panel, circuit, "panel")
        return next(panel for panel in self.design.panels if panel.id == name)

    def working_space(self, panel: Panel) -> Space:
        """Return the tightest side of the free space before a panel, by what the clause wants of it."""
        wide = panel.width_m
        sides: tuple[tuple[str, Quantity, float], ...] = (
            ("depth", need(panel.clear_depth_m, panel, "clear_depth"), DEEP_M),
            ("width", need(panel.clear_width_m, panel, "clear_width"), WIDE_M),
            ("height", need(panel.clear_height_m, panel, "clear_height"), HIGH_M),
        )

        def shares(world: World) -> list[float]:
            wanted = [least for _, _, least in sides]
            if wide is not None:
                wanted[1] = max(wanted[1], world(wide))
            return [100.0 * world(there) / least for (_, there, least), least in zip(sides, wanted, strict=True)]

        share = self.figure("working space", "%", lambda w: min(shares(w)), panel)
        side, there, _ = sides[shares(self.world).index(share.value)]
        return Space(share, side, self.figure(f"free {side}", "m", lambda w: w(there), panel))

    def handle(self, panel: Panel) -> Figure:
        """Height of the highest handle of a panel."""
        height = need(panel.handle_height_m, panel, "handle_height")
        return self.figure("height of the highest handle", "m", lambda w: w(height), panel)

    def before_panel(self, thing: Thing | Obstacle, panel: Panel) -> Figure:
        """Clearance between a thing and the room before a panel, as wide as it is; negative in that room."""
        wall = self.design.shell.wall_names.index(need(panel.wall, panel, "wall"))
        start, wide = need(panel.start_m, panel, "from_wall_left"), need(panel.width_m, panel, "width")
        bodies = self.figures.bodies
        bodies.put(thing)

        def compute(world: World) -> float:
            shape = self.figures.space.enclosure(world)
            front = enclosure.Opening(wall, world(start), world(wide), 0.0, HIGH_M)
            space = enclosure.before_opening(shape, front, DEEP_M)
            return solid.clearance_m(bodies.body(world, thing), space, FAR_M)

        return self.figure("clearance before a panel", "m", compute, per_m=3.0)

    # Strips, conditioners, uninterruptible supplies

    @staticmethod
    def through(unit: Unit, circuit: Circuit) -> tuple[Load, ...]:
        """Return the loads that are fed through a unit, by way of others too."""
        into = [*(one.unit for one in circuit.units), *(load.unit for load in circuit.loads)]  # what decides it is read
        return tuple(load for load in circuit.loads if unit in circuit.above(load)) if any(into) else ()

    @staticmethod
    def unplaced(circuit: Circuit) -> Missing | None:
        """Return what is missing of the first load that may be plugged into any unit, as nothing says into what."""
        bare = (load for load in circuit.loads if load.connection != "fastened")
        return next((Missing(load, "unit") for load in bare if load.unit is None and load.receptacle is None), None)

    def rating(self, unit: Unit, circuit: Circuit) -> Figure:
        """Rated current of a unit."""
        rated, power = unit.rating_a, unit.apparent_power_va
        if rated is not None:
            return self.figure("rating", "A", lambda w: w(rated))
        whole, volts = need(power, unit, "rating"), need(circuit.voltage_v, circuit, "voltage")
        return self.figure("rating", "A", lambda w: w(whole) / w(volts))

    def use(self, unit: Unit, circuit: Circuit) -> Figure:
        """Return the current that all loads on a unit draw together, by their nameplates.

        What is not known is asked for unless the known part is too much already.
        """
        drawn = self.figures.mains.known(circuit, self.through(unit, circuit))

        def compute(world: World) -> float:
            return sum(self.figures.mains.current_a(world, load, circuit) for load in drawn.loads)

        figure = self.figure("current through it", "A", compute, circuit, unit)
        missing = drawn.missing or self.unplaced(circuit)
        if missing is not None and figure.value - figure.u <= self.unit_rating_a(unit, circuit):
            raise missing
        return figure

    def unit_rating_a(self, unit: Unit, circuit: Circuit) -> float:
        """Return the rated current of a unit, at the near end of its uncertainty."""
        rating = self.rating(unit, circuit)
        return rating.value - rating.u

    # Boxes

    def inside_panel(self, outlet: Receptacle, panel: Treatment) -> Figure:
        """Gap on the wall between a box and a panel of the same wall; negative: how far it is behind the panel."""
        wall, fixtures = need(outlet.wall, outlet, "wall"), self.figures.fixtures
        there, flat = fixtures.spot(outlet, wall), fixtures.hung(panel)

        def compute(world: World) -> float:
            gap = enclosure.gap_on_wall_m(self.figures.space.enclosure(world), flat(world), there(world))
            return min(gap, FAR_M)

        return self.figure("gap between box and panel", "m", compute, per_m=3.0)

    def set_back(self, outlet: Receptacle) -> Figure:
        """How far a box lies behind the finished surface."""
        back = need(outlet.set_back_m, outlet, "set_back")
        return self.figure("set back behind the surface", "mm", lambda w: 1e3 * w(back), outlet)

    def in_combustible(self, outlet: Receptacle) -> bool:
        """Whether a box sits in board that burns, or behind a finish that does.

        A finish that nobody names is asked for where the box is set back at all.
        """
        name = need(outlet.wall, outlet, "wall")
        surface = self.design.shell.surface(name)
        if surface is None:
            raise Missing(self.design.shell, name if name in {"ceiling", "floor"} else f"walls[{name}]")
        if need(surface.board.material, surface, "board.material") in COMBUSTIBLE:
            return True
        back = need(outlet.set_back_m, outlet, "set_back")
        return back.value + back.u > 0.0 and need(surface.finish, surface, "finish") in BURNING

    # Power in British walls

    def deep(self, cable: Cable) -> Figure:
        """Depth of a cable behind the surface of its wall."""
        depth = need(cable.depth_m, cable, "depth")
        return self.figure("depth in the wall", "m", lambda w: w(depth), cable)

    def circuit_of(self, cable: Cable) -> Circuit:
        """Return the circuit that a cable of power is of: one of its ends names it, what is on it, or what that feeds.

        A name that several circuits have, such as `r1`, tells none of them: the other end has to.
        """
        ends = {cable.start, cable.end} - {None}
        named = [circuit for circuit in self.design.circuits if circuit.id in ends]
        found = named or [circuit for circuit in self.design.circuits if not ends.isdisjoint(_on(circuit))]
        if len(found) == 1:
            return found[0]
        need(cable.start, cable, "from")
        need(cable.end, cable, "to")
        if found:
            raise Refused(f"its ends are of {len(found)} circuits; let one of them name its circuit")
        raise Refused("neither of its ends names a circuit, a receptacle or a load")

    def is_cord(self, cable: Cable) -> bool:
        """Whether a cable is a cord: in the open, from an outlet to what is plugged into it, no wiring of the house."""
        ends = {cable.start, cable.end} - {None}
        # Two circuits may have things of these names: it is a cord only if it is one on each of them.
        of = [circuit for circuit in self.design.circuits if len(ends) > 1 and ends <= set(_on(circuit))]
        if not of or not all(_plugs(circuit, ends) for circuit in of):
            return False
        return not need(cable.in_wall, cable, "in_wall")

    def fused_spur(self, cable: Cable, circuit: Circuit) -> Receptacle | None:
        """Return the receptacle on a fused spur that a cable ends at, if it does."""
        ends = {cable.start, cable.end}
        return next((one for one in circuit.receptacles if one.id in ends and one.spur == "fused"), None)

    def cable_size(self, cable: Cable) -> Figure:
        """Cross-section of a cable's conductor."""
        area = need(cable.conductor_m2, cable, "conductor")
        return self.figure("conductor of the cable", "mm2", lambda w: 1e6 * w(area), cable)

    def circuit_size(self, circuit: Circuit) -> Figure:
        """Cross-section that a circuit is reckoned with."""
        area = need(circuit.conductor_m2, circuit, "conductor")
        return self.figure("conductor of the circuit", "mm2", lambda w: 1e6 * w(area), circuit)

    def circuit_length(self, circuit: Circuit) -> Figure:
        """Length that a circuit is reckoned with."""
        length = need(circuit.length_m, circuit, "length")
        return self.figure("length of the circuit", "m", lambda w: w(length), circuit)

    # The wall that a cable runs in

    def wall_of(self, cable: Cable) -> Surface:
        """Return the wall that a cable runs in; refuses one of which nobody knows what it is made of."""
        name = need(cable.wall, cable, "wall")
        surface = self.design.shell.surface(name)
        if surface is None:
            raise Missing(self.design.shell, name if name in {"ceiling", "floor"} else f"walls[{name}]")
        if need(surface.framing.kind, surface, "framing.kind") == "unknown":
            raise Refused(f"nobody knows what {surface.words} is made of, and so where its other face is")
        return surface

    def in_metal(self, cable: Cable) -> bool:
        """Whether the wall that a cable runs in is framed in metal."""
        return self.wall_of(cable).framing.kind in METAL

    def thick(self, cable: Cable) -> Figure | None:
        """Thickness of a framed wall with its boards, the same on both faces; None of any other wall."""
        surface = self.wall_of(cable)
        if surface.framing.kind not in FRAMED:
            return None
        depth = need(surface.framing.member_depth_m, surface, "framing.member_depth")
        boards = fixing.board(surface) if surface.board.thickness_m is not None else None
        whole = depth + boards * 2.0 if boards is not None else depth
        return self.figure("thickness of the wall", "m", lambda w: w(whole), cable)

    def other_face(self, cable: Cable) -> Figure | None:
        """Depth of a cable behind the other face of its wall, negative where that is less thick; None as `thick`."""
        thick, depth = self.thick(cable), need(cable.depth_m, cable, "depth")
        if thick is None:
            return None
        return self.figure("depth behind the other face", "m", lambda w: thick.at(w) - w(depth), cable)


def _on(circuit: Circuit) -> Iterator[str]:
    """Yield the names of what is on a circuit, and of what its loads are."""
    yield from (one.id for one in (*circuit.receptacles, *circuit.units, *circuit.loads))
    yield from (load.feeds for load in circuit.loads if load.feeds is not None)


def _plugs(circuit: Circuit, ends: AbstractSet[str | None]) -> bool:
    """Whether names are those of an outlet and of what is plugged in, on a circuit."""
    into = {one.id for one in (*circuit.receptacles, *circuit.units)}
    loads = [load for load in circuit.loads if load.connection != "fastened"]
    return bool(ends & into) and ends <= into | {load.id for load in loads} | {load.feeds for load in loads}
