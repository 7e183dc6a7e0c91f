"""How people come in and out, and reach what they use."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from roomlint.design.base import need
from roomlint.figures import enclosure, solid
from roomlint.measure.ends import FAR_M
from roomlint.measure.view import View

if TYPE_CHECKING:
    from roomlint.design.shell import Control, Opening, Riser
    from roomlint.design.supply import Rack
    from roomlint.measure.figure import Figure
    from roomlint.measure.staging import Thing
    from roomlint.measure.world import World

PASSAGE_M: Final = 0.915
"""How deep the way just inside a door is kept free: a walkway's width (2010 ADA Standards, 403.5.1)."""
ONE_STEP_M: Final = 0.1968
"""What one step rises at most (IRC R311.7): a lower platform needs no second one."""


class Access(View):
    """Doors, platforms, controls, racks."""

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

    def before_door(self, thing: Thing, opening: Opening) -> Figure:
        """Clearance between a thing and the way just inside an opening, as wide as it is; negative in that way."""
        there, bodies = self.figures.staging.opening(opening), self.figures.bodies
        bodies.place(thing)

        def compute(world: World) -> float:
            way = enclosure.before_opening(self.figures.space.enclosure(world), there(world), PASSAGE_M)
            return min(solid.clearance_m(bodies.solid(world, thing), way), FAR_M)

        return self.figure("clearance before a door", "m", compute, per_m=3.0)

    def step(self, riser: Riser) -> Figure:
        """Rise of each step up to a platform, taken as equal; one step where a low platform needs no more."""
        height = need(riser.height, riser, "height")
        low = riser.steps is None and height.value + height.u <= ONE_STEP_M
        steps = 1 if low else need(riser.steps, riser, "steps")
        return self.figure("rise of a step", "m", lambda w: w(height) / steps)

    def control(self, control: Control) -> Figure:
        """Height of what is worked by hand."""
        height = need(control.height_m, control, "height")
        return self.figure("height of a control", "m", lambda w: w(height))

    def before_rack(self, rack: Rack) -> Figure:
        """Free depth in front of a rack."""
        clear = need(rack.front_clear_m, rack, "front_clear")
        return self.figure("free depth in front", "m", lambda w: w(clear))

    def behind_rack(self, rack: Rack) -> Figure:
        """Free depth to stand behind a rack: as it stands, or when it is pulled out by its own depth."""
        if need(rack.service, rack, "service") == "rear":
            clear = need(rack.rear_clear_m, rack, "rear_clear")
            return self.figure("free depth behind", "m", lambda w: w(clear))
        front, depth = need(rack.front_clear_m, rack, "front_clear"), need(rack.depth_m, rack, "depth")
        return self.figure("free depth behind the pulled-out rack", "m", lambda w: w(front) - w(depth))
