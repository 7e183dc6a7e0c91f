"""How fasteners sit in what holds them: thread and depth in the wood, edges, columns and least sizes."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from roomlint.design.base import need
from roomlint.design.quantity import exact
from roomlint.figures import fasteners, timber
from roomlint.measure.mounting import Hung

if TYPE_CHECKING:
    from roomlint.measure.figure import Figure
    from roomlint.measure.holding import Held
    from roomlint.measure.world import World

LEAST_MM: Final = {"lag-screw": 6.35, "through-bolt": 6.35, "wood-screw": 3.5052}
"""Least diameters that the wood standard has values for: 1/4 in, and screw number 6."""
EUROCODE_LEAST_MM: Final = LEAST_MM | {"lag-screw": 6.0, "through-bolt": 6.0}
"""The same where EN 1995-1-1 judges; of thinner wood screws their maker's declaration speaks."""
EDGE_DIAMETERS: Final = 1.5
"""From the middle of a screw to the edge of the wood by the American standard, for load along the grain."""
_SLENDER: Final = frozenset({"stud", "joist"})
"""What a screw may pass beside, where how far it is off the middle and how wide the member is are given."""


class Mounts(Hung):
    """What hangs or stands, what loads its fasteners, and how these sit in what holds them."""

    def thread_in_wood(self, thing: Held) -> Figure:
        """Thread of the screw that works in the wood: none of one that passes beside its stud or joist."""
        wood, fixing = self.wood(thing), self.fixing(thing)
        width = self.surface(thing).framing.member_width_m if fixing.into in _SLENDER else None
        offset = fixing.edge_offset_m

        def compute(world: World) -> float:
            thread = wood.screw(world).counted_thread_mm()
            if width is None or offset is None:
                return thread
            # On the dangerous side: one that may pass beside has no thread in it.
            beside = abs(world(offset)) + offset.u >= (world(width) - width.u) / 2.0
            return 0.0 if beside else thread

        return self.figure("thread in the wood", "mm", compute, thing)

    def depth_in_wood(self, thing: Held) -> Figure:
        """Depth of the screw in the wood, in diameters."""
        wood = self.wood(thing)
        return self.figure("depth in the wood, in diameters", "", lambda w: wood.screw(w).depth_diameters(), thing)

    def beyond(self, thing: Held) -> Figure:
        """How far the screw's point stands out of the far side of the wood."""
        wood = self.wood(thing)
        return self.figure("point beyond the wood", "mm", lambda w: wood.screw(w).beyond_mm(), thing)

    def edge_left(self, thing: Held) -> Figure:
        """Room left between a screw's edge distance and the edge of the stud or joist; negative is too near."""
        fixing, surface = self.fixing(thing), self.surface(thing)
        width = need(surface.framing.member_width_m, surface, "framing.member_width")
        diameter, offset = (
            need(fixing.diameter_m, fixing, "diameter"),
            need(fixing.edge_offset_m, fixing, "edge_offset"),
        )

        asked = timber.EDGE_DIAMETERS if self.by_eurocode(thing) else EDGE_DIAMETERS

        def compute(world: World) -> float:
            spare = fasteners.edge_tolerance_mm(world(width) * 1e3, world(diameter) * 1e3, asked)
            return spare - abs(world(offset)) * 1e3

        return self.figure("edge distance to spare", "mm", compute, thing)

    def loaded_edge(self, thing: Held) -> Figure:
        """Distance from the fasteners to the edge that a load across the grain pushes them toward, in diameters."""
        fixing = self.fixing(thing)
        diameter = need(fixing.diameter_m, fixing, "diameter")
        if fixing.into == "stud":
            surface = self.surface(thing)
            width = need(surface.framing.member_width_m, surface, "framing.member_width")
            offset = need(fixing.edge_offset_m, fixing, "edge_offset")
        else:
            width, offset = need(fixing.edge_distance_m, fixing, "edge_distance") * 2.0, exact(0.0, "m")

        def compute(world: World) -> float:
            return (world(width) / 2.0 - abs(world(offset))) / world(diameter)

        return self.figure("distance to the loaded edge, in diameters", "", compute, thing)

    def stud_span(self, thing: Held) -> Figure:
        """Distance between the columns of fasteners over the spacing of the studs.

        A plate whose holes are narrower than that cannot span two studs, wherever its fasteners are.
        """
        surface, mount, fixing = self.surface(thing), self.mount(thing), self.fixing(thing)
        spacing = need(surface.framing.spacing_m, surface, "framing.spacing")
        columns, holes = fixing.column_spacing_m, mount.plate_holes_m
        if columns is None and (holes is None or holes.value >= spacing.value):
            need(columns, fixing, "column_spacing")
        given = [one for one in (columns, holes) if one is not None]

        def compute(world: World) -> float:
            return min(world(one) for one in given) / world(spacing)

        return self.figure("distance between columns of fasteners over stud spacing", "", compute, thing)

    def has_least_size(self, thing: Held) -> bool:
        """Whether the wood standard has a least diameter for its fastener."""
        return self.fastener(thing) in LEAST_MM

    def size_ratio(self, thing: Held) -> Figure:
        """Nominal diameter of the fasteners over the least that the wood standard has values for."""
        fixing = self.fixing(thing)
        least = (EUROCODE_LEAST_MM if self.by_eurocode(thing) else LEAST_MM)[self.fastener(thing)]
        given = need(fixing.diameter_m, fixing, "diameter")
        return self.figure("diameter over the least one", "", lambda w: w(given) * 1e3 / least, thing)
