"""Studs and joists: what is cut out of them, and what is to fit between them."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from roomlint.design.base import Missing, need
from roomlint.figures import framing
from roomlint.measure.fixing import board
from roomlint.measure.view import View

if TYPE_CHECKING:
    from roomlint.design.listening import Loudspeaker, Subwoofer
    from roomlint.design.shell import Surface
    from roomlint.design.structure import Cut
    from roomlint.figures.framing import CutKind, Member
    from roomlint.measure.figure import Figure
    from roomlint.measure.world import World

OVERHEAD: Final = frozenset({"ceiling", "floor"})


class Framings(View):
    """Cuts of framing and bays between its members."""

    def of(self, name: str) -> Surface:
        """Return the surface of a name; raises `Missing` where the file says nothing of it."""
        found = self.design.shell.surface(name)
        if found is None:
            raise Missing(self.design.shell, name if name in OVERHEAD else f"walls[{name}]")
        return found

    def kind(self, name: str) -> str:
        """Return what frames a surface."""
        surface = self.of(name)
        return need(surface.framing.kind, surface, "framing.kind")

    def member(self, cut: Cut) -> Member:
        """Return whether it is a stud that is cut, or a joist or rafter."""
        return "joist" if cut.on in OVERHEAD else "stud"

    def share(self, cut: Cut) -> Figure:
        """Share of a member's depth that a cut takes."""
        surface = self.of(cut.on or "")
        size, depth = (
            need(cut.size_m, cut, "size"),
            need(surface.framing.member_depth_m, surface, "framing.member_depth"),
        )
        return self.figure("cut of the member", "%", lambda w: framing.cut_percent(w(size), w(depth)), cut)

    @staticmethod
    def chase_limit_percent(cut: Cut) -> float:
        """Deepest that a chase may be, in percent of the leaf that it is cut into."""
        return framing.CHASE_PERCENT["upright-chase" if cut.kind == "upright-chase" else "level-chase"]

    def share_limit_percent(self, cut: Cut) -> float:
        """Largest share of its member that a cut may take."""
        member, kind = self.member(cut), _kind(cut)
        if member == "joist":
            return framing.greatest_cut_percent(member, kind, bearing=True)
        doubled = kind == "hole" and bool(cut.doubled)
        if doubled:
            return framing.greatest_cut_percent(member, kind, bearing=True, doubled=True)
        surface = self.of(cut.on or "")
        bearing = need(surface.framing.bearing, surface, "framing.bearing")
        if kind == "hole" and bearing:
            need(cut.doubled, cut, "doubled")
        return framing.greatest_cut_percent(member, kind, bearing=bearing)

    def to_edge(self, cut: Cut) -> Figure:
        """Wood between a hole and the nearest edge of its member."""
        need(cut.edge_distance_m, cut, "edge_distance")
        return self.figure("wood to the edge", "mm", lambda w: 1e3 * self._edge_m(w, cut), cut)

    def _edge_m(self, world: World, cut: Cut) -> float:
        """Return the wood to the nearest edge: what is said, and no more than a hole in the middle leaves."""
        said, size = world(need(cut.edge_distance_m, cut, "edge_distance")), cut.size_m
        surface = self.design.shell.surface(cut.on or "")
        depth = surface.framing.member_depth_m if surface is not None else None
        if size is None or depth is None:
            return said
        return min(said, framing.most_to_edge_m(world(size), world(depth)))

    def apart(self, cut: Cut) -> Figure:
        """Wood along a member between a cut and the next one."""
        apart = need(cut.apart_m, cut, "apart")
        return self.figure("wood to the next cut", "mm", lambda w: 1e3 * w(apart), cut)

    def notch_length(self, cut: Cut) -> Figure:
        """Length of a notch by the depth of its member."""
        surface = self.of(cut.on or "")
        length = need(cut.length_m, cut, "length")
        depth = need(surface.framing.member_depth_m, surface, "framing.member_depth")
        return self.figure("length of the notch", "%", lambda w: framing.cut_percent(w(length), w(depth)), cut)

    def covered(self, cut: Cut) -> Figure:
        """Distance from what runs through a cut to the edge of the framing; none in a notch, in a chase its depth."""
        if cut.is_chase:
            depth = need(cut.size_m, cut, "size")
            return self.figure("distance to the edge of the framing", "mm", lambda w: 1e3 * w(depth), cut)
        if cut.kind != "hole":
            return self.figure("distance to the edge of the framing", "mm", lambda _: 0.0, cut)
        need(cut.edge_distance_m, cut, "edge_distance")
        return self.figure("distance to the edge of the framing", "mm", lambda w: 1e3 * self._edge_m(w, cut), cut)

    # What sits in a wall

    def bay(self, source: Loudspeaker | Subwoofer) -> Figure:
        """Clear width between studs that is left beside a flush loudspeaker's body; negative: it is too wide."""
        surface = self.of(self.figures.mounts.on(source))
        spacing = need(surface.framing.spacing_m, surface, "framing.spacing")
        wide = need(surface.framing.member_width_m, surface, "framing.member_width")
        product = self.figures.mounts.product(source)
        data = need(product.loudspeaker, product, "loudspeaker")
        hole = need(data.cutout_width_m, data, "cutout_width")
        return self.figure(
            "width left between the studs", "mm",
            lambda w: 1e3 * (framing.clear_between_m(w(spacing), w(wide)) - w(hole)), source,
        )  # fmt: skip

    def depth_left(self, source: Loudspeaker | Subwoofer) -> Figure:
        """Depth of a wall that is left behind a flush loudspeaker; negative: it is too deep."""
        surface = self.of(self.figures.mounts.on(source))
        depth, layers = need(surface.framing.member_depth_m, surface, "framing.member_depth"), board(surface)
        product = self.figures.mounts.product(source)
        data = need(product.loudspeaker, product, "loudspeaker")
        wanted = need(data.mounting_depth_m, data, "mounting_depth")

        def compute(world: World) -> float:
            return 1e3 * (world(depth) + world(layers) - world(wanted))

        return self.figure("depth left in the wall", "mm", compute, source)


def _kind(cut: Cut) -> CutKind:
    return "hole" if cut.kind == "hole" else "end-notch" if cut.kind == "end-notch" else "notch"
