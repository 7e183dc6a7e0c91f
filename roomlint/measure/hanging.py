"""What hangs overhead: its suspension, its second support, and what it asks of the joist."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING, Final

from roomlint.design.base import need
from roomlint.design.listening import Loudspeaker, Projector
from roomlint.design.proofs import stated
from roomlint.design.shell import Treatment
from roomlint.figures import loads
from roomlint.measure.holding import OVERHEAD, Holdings

if TYPE_CHECKING:
    from collections.abc import Iterator

    from roomlint.design.proofs import Secondary
    from roomlint.design.quantity import Quantity
    from roomlint.measure.figure import Figure
    from roomlint.measure.holding import Held
    from roomlint.measure.world import World

_LEGS: Final = 2


class Hanging(Holdings):
    """Figures of everything overhead."""

    def overhead(self, thing: Held) -> bool:
        """Whether it hangs over people's heads."""
        return self.on(thing) in OVERHEAD

    def suspended(self, thing: Held) -> bool:
        """Whether it hangs below its plate on a pole, rods or slings."""
        mounting = self.mounting(thing)
        if mounting.drop_m is not None or mounting.sling_angle_deg is not None or mounting.breaking_load_n is not None:
            return True
        return self.motion(thing) == "pole"

    def hang_factor(self, thing: Held) -> Figure:
        """Return the breaking load of the weakest part over its load, on one line or on each of two sling legs."""
        mounting, mount = self.mounting(thing), self.mount_data(thing)
        given = [mounting.breaking_load_n, mount.breaking_load_n if mount is not None else None]
        parts = [one for one in given if one is not None] or [need(None, mounting, "breaking_load")]
        angle = mounting.sling_angle_deg

        def compute(world: World) -> float:
            load = loads.weight_n(self.figures.mounts.mass_kg(world, thing))
            if angle is not None:
                world.assume("two sling legs carry the load")
                load = loads.sling_tension_n(load, _LEGS, world(angle))
            return min(loads.design_factor(world(part), load) for part in parts)

        return self.figure("breaking load over load", "", compute, thing)

    def sling_angle(self, thing: Held) -> Figure:
        """Angle of the sling legs from the horizontal."""
        mounting = self.mounting(thing)
        angle = need(mounting.sling_angle_deg, mounting, "sling_angle")
        return self.figure("sling angle", "deg", lambda w: w(angle), thing)

    def secondary(self, thing: Held) -> Secondary | None:
        """Return what holds it when its mount fails; None when the file states that there is none."""
        mounting = self.mounting(thing)
        return stated(need(mounting.secondary, mounting, "secondary"))

    def secondary_factor(self, thing: Held) -> Figure:
        """Rating of the second support over the weight that it would catch."""
        second = need(stated(self.mounting(thing).secondary), self.mounting(thing), "secondary")
        rating = need(second.rating, second, "rating")

        def compute(world: World) -> float:
            weight = loads.weight_n(self.figures.mounts.mass_kg(world, thing))
            return loads.design_factor(world(rating), weight)

        return self.figure("rating of the second support over the weight", "", compute, thing)

    def secondary_fall(self, thing: Held) -> Figure:
        """How far it falls before the second support holds."""
        mounting = self.mounting(thing)
        fall = need(mounting.secondary_fall_m, mounting, "secondary_fall")
        return self.figure("fall onto the second support", "mm", lambda w: w(fall) * 1e3, thing)

    def box_mark_kg(self, thing: Held) -> float | None:
        """Return the least that the mark on its electrical box may mean, kg; None where it is listed for nothing."""
        box = stated(self.mounting(thing).box)
        if box is None:
            return None
        marked = need(box.marked_mass_kg, box, "marked_mass")
        return marked.value - marked.u

    def needs_seismic_anchorage(self, thing: Held) -> bool:
        """Whether it calls for designed seismic anchorage; everything that hangs is taken as up high."""
        category = need(self.design.project.seismic_category, self.design, "project.codes.seismic_category")
        mass_kg = self.figures.mounts.edge_case_mass(thing)
        return loads.needs_seismic_anchorage(category.upper(), mass_kg, math.inf)

    def joist_load(self, thing: Held) -> Figure:
        """Load on the joist that carries it, with all else on that joist, as if spread over the joist's own area."""
        surface = self.surface(thing)
        spacing = need(surface.framing.spacing_m, surface, "framing.spacing")
        span = need(surface.framing.span_m, surface, "framing.span")

        def compute(world: World) -> float:
            width = world(spacing)
            sums = [self._shared_kg(world, thing, width, axis) for axis in self._axes(surface.framing.runs)]
            return loads.joist_area_load_pa(loads.weight_n(max(sums)), world(span), width)

        return self.figure("added joist load", "Pa", compute, thing)

    @staticmethod
    def _axes(runs: str | None) -> tuple[int, ...]:
        """Return across which axes of the plan joists follow each other; both where nobody says how they run."""
        return {"front-to-rear": (0,), "left-to-right": (1,)}.get(runs or "", (0, 1))

    def _shared_kg(self, world: World, thing: Held, spacing: float, axis: int) -> float:
        """Return the mass on one joist: everything on that ceiling nearer across the joists than their spacing."""
        mine = self._across(thing, axis)
        total = self.figures.mounts.mass_kg(world, thing)
        for other in self._also_on_ceiling(thing):
            theirs = self._across(other, axis)
            if mine is None or theirs is None or abs(world(mine) - world(theirs)) < spacing:
                total += self.figures.mounts.mass_kg(world, other)
        return total

    def _also_on_ceiling(self, thing: Held) -> Iterator[Held]:
        for other in self.held():
            if other is thing or (other.mounting is None and not self.made_for_ceilings(other)):
                continue
            if self.on(other) == "ceiling":
                yield other

    @staticmethod
    def made_for_ceilings(thing: Held) -> bool:
        """Whether it may hang on the ceiling though nobody says how it is held."""
        if isinstance(thing, Loudspeaker):
            data = thing.product.loudspeaker if thing.product is not None else None
            return data is not None and "in-ceiling" in data.placement
        return isinstance(thing, Projector) or (isinstance(thing, Treatment) and thing.on == "ceiling")

    def _across(self, thing: Held, axis: int) -> Quantity | None:
        """Return where a thing is across the joists; None, so that it may be on any, when nobody says."""
        point = self.spot(thing)
        return (point.x, point.y)[axis] if point is not None else None
