"""Whether panels and curtains leave loudspeakers and heads free."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING, Final, NamedTuple

from roomlint.design.base import Missing, need, unsaid
from roomlint.design.quantity import Assumption, assumed
from roomlint.figures import convex, enclosure, solid
from roomlint.measure.view import View

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator

    from roomlint.design.listening import Loudspeaker, Seat, Subwoofer
    from roomlint.design.quantity import Quantity
    from roomlint.design.shell import Treatment
    from roomlint.figures.solid import Solid
    from roomlint.measure.figure import Figure
    from roomlint.measure.world import World

    Thing = Loudspeaker | Subwoofer | Seat

CANOPY: Final = "canopy"
CURTAIN: Final = "curtain"
FLOOR: Final = "floor"
FOLDS_M: Final = (0.10, 0.05)
"""How deep a curtain hangs in its folds where it is not said, and how uncertain that is; practice, ours."""


class Nearest(NamedTuple):
    """How clear a thing is of the nearest panel, m, which that is, and what is missing of another."""

    figure: Figure
    panel: Treatment
    lacks: Missing | None


class Covering(View):
    """Panels and curtains as the solids that they are."""

    def panels(self) -> tuple[Treatment, ...]:
        """Return what hangs on walls and ceiling; what nobody says where it lies may hang."""
        return tuple(one for one in self.design.treatments if one.on != FLOOR and one.kind != "carpet")

    def hung(self) -> tuple[Treatment, ...]:
        """Return the panels that hang free under the ceiling and of which it is known where, and how large they are."""
        return tuple(one for one in self._hanging() if self._lacks(one) is None)

    def hung_unknown(self) -> Missing | None:
        """Return what is missing of a panel that hangs free, or that the file does not speak of any."""
        lacks = (self._lacks(one) for one in self._hanging())
        return next((one for one in lacks if one is not None), None) or unsaid(self.design, "treatments")

    def _hanging(self) -> Iterator[Treatment]:
        """Yield what hangs under the ceiling: a canopy does, anything else where it is said how far down."""
        for one in self.panels():
            down = one.mounting is not None and one.mounting.drop_m is not None
            if one.on == "ceiling" and (down or one.kind == CANOPY):
                yield one

    @staticmethod
    def _lacks(panel: Treatment) -> Missing | None:
        sizes = {
            "from_left": panel.from_left_m, "from_front": panel.from_front_m, "width": panel.width_m,
            "height": panel.height_m, "thickness": panel.thickness_m,
            "mounting.drop": panel.mounting.drop_m if panel.mounting is not None else None,
        }  # fmt: skip
        return next((Missing(panel, key) for key, size in sizes.items() if size is None), None)

    def boards(self) -> tuple[Treatment, ...]:
        """Return what hangs and does not give way: all but curtains."""
        return tuple(one for one in self.panels() if one.kind != CURTAIN)

    def solid(self, world: World, panel: Treatment) -> Solid:
        """Return a panel as the box that it is; under a slope as high as it hangs at its middle."""
        return world.once(("panel", panel), lambda w: self._solid(w, panel))

    def _solid(self, world: World, panel: Treatment) -> Solid:
        thick = world(self._thickness(panel))
        wide, high = need(panel.width_m, panel, "width"), need(panel.height_m, panel, "height")
        if need(panel.on, panel, "on") != "ceiling":
            there = self.figures.fixtures.rectangle(panel)(world)
            return enclosure.before_opening(self.figures.space.enclosure(world), there, thick)
        drop = panel.mounting.drop_m if panel.mounting is not None else None
        x0, y1 = world(need(panel.from_left_m, panel, "from_left")), world(self.design.shell.length_m)
        y1 -= world(need(panel.from_front_m, panel, "from_front"))
        x1, y0 = x0 + world(wide), y1 - world(high)
        top = self.figures.space.ceiling_height_m(world, (x0 + x1) / 2.0, (y0 + y1) / 2.0)
        top -= world(drop) if drop is not None else 0.0
        return solid.upright_box((x0, y0, top - thick), (x1, y1, top))

    def nearest(self, thing: Thing) -> Nearest:
        """Return how clear a thing is of the panel that it is nearest to; negative: how far it is inside."""
        self.figures.bodies.place(thing)
        known: list[tuple[float, Callable[[World], float], Treatment]] = []
        lacks: Missing | None = None
        for panel in self.panels():
            try:
                clear = self._clear(thing, panel)
            except Missing as missing:
                lacks = lacks or missing
            else:
                known.append((clear(self.world), clear, panel))
        if not known:
            raise lacks or Missing(self.design, "treatments")
        _, nearest, panel = min(known, key=lambda one: one[0])
        return Nearest(self.figure("clearance of a panel", "m", nearest, per_m=3.0), panel, lacks)

    def _clear(self, thing: Thing, panel: Treatment) -> Callable[[World], float]:
        on = need(panel.on, panel, "on")
        thick = self._thickness(panel)
        return self._of_ceiling(thing, panel, thick) if on == "ceiling" else self._of_wall(thing, panel, thick)

    def _thickness(self, panel: Treatment) -> Quantity:
        if panel.kind != CURTAIN:
            return need(panel.thickness_m, panel, "thickness")
        words = Assumption("a curtain {} deep in its folds", (FOLDS_M[0], "m"))
        return self.once(("folds", panel), lambda: panel.thickness_m or assumed(*FOLDS_M, "m", words))

    def _of_wall(self, thing: Thing, panel: Treatment, thick: Quantity) -> Callable[[World], float]:
        need(panel.width_m, panel, "width")
        need(panel.height_m, panel, "height")
        there = self.figures.fixtures.rectangle(panel)

        def clear(world: World) -> float:
            shape, body, spot = self.figures.space.enclosure(world), self._body(world, thing), there(world)
            wall, _ = enclosure.wall_of(shape, spot.piece)
            before = min(wall.off_m(point) for point in solid.footprint(body)) - solid.radius_m(body) - world(thick)
            return _apart(enclosure.gap_on_wall_m(shape, body, spot), before)

        return clear

    def _of_ceiling(self, thing: Thing, panel: Treatment, thick: Quantity) -> Callable[[World], float]:
        """Return how clear a thing is of a panel overhead: in plan, or under it, or above one that hangs free."""
        left, front = need(panel.from_left_m, panel, "from_left"), need(panel.from_front_m, panel, "from_front")
        wide, deep = need(panel.width_m, panel, "width"), need(panel.height_m, panel, "height")
        drop, length_m = panel.mounting.drop_m if panel.mounting is not None else None, self.design.shell.length_m
        place = self.figures.bodies.place(thing)

        def clear(world: World) -> float:
            x, y = world(left), world(length_m) - world(front)
            plan = ((x, y - world(deep)), (x + world(wide), y - world(deep)), (x + world(wide), y), (x, y))
            body = self._body(world, thing)
            low, high = solid.heights_m(body)
            top = self.figures.space.ceiling_height_m(world, world(place.x), world(place.y))
            hangs = world(drop) if drop is not None else 0.0
            under = top - hangs - world(thick) - high
            above = low - (top - hangs) if hangs > 0.0 else -math.inf
            return _apart(convex.plan_gap_m(solid.footprint(body), plan) - solid.radius_m(body), max(under, above))

        return clear

    def _body(self, world: World, thing: Thing) -> Solid:
        return self.figures.bodies.solid(world, thing)


def _apart(beside_m: float, before_m: float) -> float:
    """Return the free distance of what is so far apart two ways; negative where both are."""
    return math.hypot(beside_m, before_m) if beside_m > 0.0 and before_m > 0.0 else max(beside_m, before_m)
