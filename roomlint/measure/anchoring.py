"""What anchors, toggles and screws in thin steel hold."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING, Final, NamedTuple

from roomlint.design.base import need
from roomlint.design.proofs import stated
from roomlint.figures import thin_steel
from roomlint.figures.domain import positive
from roomlint.measure.holding import Holdings

if TYPE_CHECKING:
    from roomlint.measure.figure import Figure
    from roomlint.measure.holding import Held
    from roomlint.measure.world import World

STEEL_ULTIMATE_MPA: Final = 310.0
"""Ultimate strength of ordinary stud sheet, 45 ksi."""
ANCHOR_MARGIN: Final = 4.0
"""What a published ultimate load is divided by before it is compared with a load."""


class Seat(NamedTuple):
    """How an anchor sits: the least of three shares of what its approval asks for, which, and what is there of what."""

    share: Figure
    part: str
    own: Figure
    asked: Figure


class Anchors(Holdings):
    """Figures of fixings that are not in wood."""

    def steel_use(self, thing: Held) -> Figure:
        """Pull over allowable pull-out of a screw, or over a quarter of a toggle's ultimate load, in a steel stud."""
        fixing, surface = self.fixing(thing), self.surface(thing)
        name = "pull over allowable pull-out"
        if self.fastener(thing) != "steel-screw":
            return self._anchor_use(name, thing)
        sheet = need(surface.framing.steel_thickness_m, surface, "framing.steel_thickness")
        diameter = need(fixing.diameter_m, fixing, "diameter")

        def compute(world: World) -> float:
            world.assume(f"sheet with {STEEL_ULTIMATE_MPA:.0f} MPa ultimate strength")
            allowed = thin_steel.pull_out_allowable_n(world(sheet) * 1e3, world(diameter) * 1e3, STEEL_ULTIMATE_MPA)
            return self.figures.mounts.demand(world, thing).pull / allowed

        return self.figure(name, "", compute, thing)

    def _anchor_use(self, name: str, thing: Held) -> Figure:
        fixing = self.fixing(thing)
        ultimate = need(fixing.anchor_ultimate_n, fixing, "anchor_ultimate")
        return self.figure(
            name, "", lambda w: self.figures.mounts.demand(w, thing).pull * ANCHOR_MARGIN / w(ultimate), thing
        )

    def anchor_margin(self, thing: Held) -> Figure:
        """Ultimate load that an anchor's maker publishes over the load on the most loaded one."""
        fixing = self.fixing(thing)
        ultimate = need(fixing.anchor_ultimate_n, fixing, "anchor_ultimate")

        def compute(world: World) -> float:
            demand = self.figures.mounts.demand(world, thing)
            load = math.hypot(demand.pull, demand.down, demand.across)
            return world(ultimate) / positive("load", load, "N")

        return self.figure("ultimate load over load", "", compute, thing)

    def anchor_seat(self, thing: Held) -> Seat:
        """Return which of depth, edge distance and spacing of an anchor is least over what its approval asks for."""
        fixing = self.fixing(thing)
        approval = need(stated(fixing.anchor_approval), fixing, "anchor_approval")
        sides = {
            "depth": (fixing.embedment_m, "embedment", approval.embedment_m, "embedment"),
            "edge distance": (fixing.edge_distance_m, "edge_distance", approval.edge_distance_m, "edge_distance"),
            "spacing": (fixing.anchor_spacing_m, "anchor_spacing", approval.spacing_m, "spacing"),
        }
        pairs = {
            name: (need(own, fixing, key), need(asked, approval, its)) for name, (own, key, asked, its) in sides.items()
        }
        share = self.figure(
            "depth, edge and spacing over what the approval asks", "",
            lambda w: min(w(own) / w(asked) for own, asked in pairs.values()), thing,
        )  # fmt: skip
        least = min(pairs, key=lambda name: pairs[name][0].value / pairs[name][1].value)
        own, asked = pairs[least]
        there = self.figure(f"{least} there", "mm", lambda w: 1e3 * w(own))
        wanted = self.figure(f"{least} asked for", "mm", lambda w: 1e3 * w(asked))
        return Seat(share, least, there, wanted)

    def tested(self, thing: Held) -> Figure:
        """What each anchor of a pull test held over the load on the most loaded one."""
        fixing = self.fixing(thing)
        test = need(stated(fixing.test), fixing, "test")
        held = need(test.load_n, test, "load")

        def compute(world: World) -> float:
            demand = self.figures.mounts.demand(world, thing)
            load = math.hypot(demand.pull, demand.down, demand.across)
            return world(held) / positive("load", load, "N")

        return self.figure("load of the test over load", "", compute, thing)
