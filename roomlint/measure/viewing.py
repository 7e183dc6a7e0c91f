"""What each seat sees of the picture, and how the projector lights it."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final, NamedTuple

from roomlint.design.base import Missing, need, unsaid
from roomlint.design.quantity import Assumption, assumed
from roomlint.figures import viewing
from roomlint.figures.ray import sees
from roomlint.measure.ends import OVER_ALL_M
from roomlint.measure.staging import HEAD_HALF_WIDTH_M, another_row
from roomlint.measure.view import View

if TYPE_CHECKING:
    from collections.abc import Iterator

    from roomlint.design.listening import Picture, Projector, Seat
    from roomlint.design.products import PictureData
    from roomlint.design.quantity import Quantity
    from roomlint.measure.figure import Figure
    from roomlint.measure.world import World

EYE_ABOVE_EAR_M: Final = (0.017, 0.013)
"""Mean of a survey of bodies, and how far nine in ten of them are off."""
_LOOKED_AT_M: Final = 0.30
"""A head farther beyond the picture's edge than this does not come before it by what a tape may miss."""
_FIXED_PERCENT: Final = 1.0
"""Shift of a lens whose sheet has less: so much a mount that is turned by hand makes up unseen; practice, ours."""
_FIXED: Final = f"{_FIXED_PERCENT:.0f} % for a lens without shift, which its mount makes up"
_EDGES: Final = (-0.98, 0.0, 0.98)
"""Where across and up the picture rays are followed: its middle, and a hair inside its edges."""


class Hidden(NamedTuple):
    """How far the line to the picture's lower edge clears the heads before a seat, and what would cure it."""

    figure: Figure
    head: str
    rise: Figure


class Viewing(View):
    """Seats and the projector against the picture's plane."""

    @property
    def picture(self) -> Picture:
        """The picture, or `Missing`."""
        return need(self.design.picture, self.design, "picture")

    def is_projected(self, picture: Picture) -> bool:
        """Whether a projector makes the picture, by its kind or by what it is made of; raises `Missing` if unsaid."""
        if picture.kind is not None:
            return picture.kind == "projection"
        if self.figures.fixtures.is_display(picture):
            return False
        if picture.projector is not None or (picture.product is not None and picture.product.kind == "screen"):
            return True
        raise Missing(picture, "kind")

    def projector(self) -> Projector:
        """Return the projector, or raise `Missing`."""
        return need(self.picture.projector, self.picture, "projector")

    def sheet(self, thing: Picture | Projector) -> PictureData:
        """Return what the sheet of a screen, display or projector says of its picture, or raise `Missing`."""
        product = need(thing.product, thing, "product")
        return need(product.picture, product, "picture")

    def shown(self, world: World) -> tuple[float, float]:
        """Return the largest width and height that is shown: of the formats, or of the whole lit picture."""
        wide, high = (world(size) for size in self.figures.onscreen.size(self.picture))
        formats = self.picture.formats
        if not formats:
            return wide, high
        return min(wide, high * max(formats)), min(high, wide / min(formats))

    def stands(self, world: World, seat: Seat) -> tuple[float, float]:
        """Return how far before the picture's plane a seat is, and how far to the side of its middle, m."""
        nx, ny = self.figures.onscreen.facing(world, self.picture, seat)
        x, y, _ = world.xyz(need(self.picture.centre, self.picture, "centre"))
        ex, ey, _ = world.xyz(self.figures.bodies.place(seat))
        return (ex - x) * nx + (ey - y) * ny, (ey - y) * nx - (ex - x) * ny

    def eye_m(self, world: World, seat: Seat) -> float:
        """Return the height of an eye: as given, or over its ear as bodies are."""
        if seat.eye_height_m is not None:
            return world(seat.eye_height_m)
        return world(self.figures.bodies.place(seat).z) + world(self._above_ear)

    @property
    def _above_ear(self) -> Quantity:
        value, u = EYE_ABOVE_EAR_M
        words = Assumption("eyes {} above the ears", (1e3 * value, "mm"))
        return self.once("eye", lambda: assumed(value, u, "m", words))

    def seen_width(self, seat: Seat) -> Figure:
        """Horizontal angle that the widest format fills for a seat."""
        self.figures.onscreen.size(self.picture)

        def compute(world: World) -> float:
            before, aside = self.stands(world, seat)
            return viewing.seen_width_deg(before, aside, self.shown(world)[0])

        return self.figure("picture angle", "deg", compute, seat)

    def acuity(self, seat: Seat) -> Figure:
        """Distance of a seat in terms of the one from which a line of the picture is one minute of arc."""
        count, whole = self._lines()
        _, height = self.figures.onscreen.size(self.picture)

        def compute(world: World) -> float:
            before, _ = self.stands(world, seat)
            return before / viewing.acuity_distance_m(self._raster(world)[1] if whole else world(height), count)

        return self.figure("distance in terms of acuity", "", compute, seat)

    def _lines(self) -> tuple[int, bool]:
        """Return how many lines there are, and whether they fill a projector's whole raster or just the picture."""
        picture, projector = self.picture, self.picture.projector
        sheet = picture.product.picture if picture.product is not None else None
        own = picture.lines or (sheet.lines if sheet is not None else None)
        data = projector.product.picture if projector is not None and projector.product is not None else None
        if own is None and data is not None and data.lines is not None:
            return data.lines, True
        return need(own, picture, "lines"), False

    def upward(self, seat: Seat, *, top: bool) -> Figure:
        """Angle up from an eye to the top or the middle of the picture, square before it."""
        middle = need(self.picture.centre, self.picture, "centre").z
        self.figures.onscreen.size(self.picture)

        def compute(world: World) -> float:
            before, _ = self.stands(world, seat)
            up = self.shown(world)[1] / 2.0 if top else 0.0
            return viewing.upward_deg(before, world(middle) + up - self.eye_m(world, seat))

        return self.figure("angle up to the top" if top else "angle up to the middle", "deg", compute, seat)

    def far_edge(self, seat: Seat) -> Figure:
        """Angle off straight at which a seat sees the picture's far edge."""
        self.figures.onscreen.size(self.picture)

        def compute(world: World) -> float:
            before, aside = self.stands(world, seat)
            return viewing.far_edge_deg(before, aside, self.shown(world)[0])

        return self.figure("angle to the picture's far edge", "deg", compute, seat)

    # What heads hide.

    def over_heads(self, seat: Seat) -> Hidden | None:
        """How far a seat sees over the heads before it to the picture's lower edge; None where none is before it."""
        self.figures.onscreen.size(self.picture)
        heads = list(self._heads(seat))
        if not heads:
            return None
        above = [self._above_m(self.world, seat, head)[0] for head in heads]
        figure = self.figure(
            "sight over heads", "m", lambda w: min(OVER_ALL_M, *(self._above_m(w, seat, head)[0] for head in heads))
        )

        def rise(world: World) -> float:
            found = (self._above_m(world, seat, head) for head in heads)
            return max(0.0, *(viewing.cure_m(-clear, share) for clear, share in found if clear < 0.0), 0.0)

        return Hidden(figure, heads[above.index(min(above))].words, self.figure("rise of the seat", "m", rise))

    def _heads(self, seat: Seat) -> Iterator[Seat]:
        before, aside = self.stands(self.world, seat)
        half = self.shown(self.world)[0] / 2.0
        for other in self.design.seats:
            if other is not seat and other.ear is None and (other.row is None or other.row != seat.row):
                raise Missing(other, "ear")
            if not another_row(other, seat):
                continue
            nearer, its_aside = self.stands(self.world, other)
            if 0.0 < nearer < before:
                beyond = abs(aside + (its_aside - aside) / (1.0 - nearer / before)) - half
                if beyond * (1.0 - nearer / before) <= _LOOKED_AT_M:
                    yield other

    def _above_m(self, world: World, seat: Seat, head: Seat) -> tuple[float, float]:
        """Return how far the line to the picture's lower edge passes over a head, and the head's share of the way."""
        (before, aside), (nearer, its_aside) = self.stands(world, seat), self.stands(world, head)
        share = nearer / before
        wide, high = self.shown(world)
        at = aside + (its_aside - aside) / (1.0 - share)
        if (abs(at) - wide / 2.0) * (1.0 - share) > HEAD_HALF_WIDTH_M:
            return OVER_ALL_M, share
        lower = world(need(self.picture.centre, self.picture, "centre").z) - high / 2.0
        top = world(need(head.head_top_m, head, "head_top"))
        if head.back_top_m is not None:
            top = max(top, world(head.back_top_m))
        return viewing.sight_line_m(lower, self.eye_m(world, seat), share) - top, share

    # The projector.

    def _raster(self, world: World) -> tuple[float, float]:
        wide, high = (world(size) for size in self.figures.onscreen.size(self.picture))
        sheet = self.sheet(self.projector())
        return viewing.raster(wide, high, need(sheet.aspect, sheet, "aspect"))

    def _lens(self, world: World) -> tuple[float, float, float]:
        """Return how far the lens is before the picture's plane, to the side of its middle and above it, m."""
        projector, picture = self.projector(), self.picture
        nx, ny = self.figures.fixtures.faces(world, picture)
        x, y, z = world.xyz(need(picture.centre, picture, "centre"))
        lx, ly, lz = world.xyz(need(projector.lens, projector, "lens"))
        return (lx - x) * nx + (ly - y) * ny, (ly - y) * nx - (lx - x) * ny, lz - z

    def throw(self) -> Figure:
        """Throw ratio that the lens's place and the picture's width ask for."""
        return self.figure(
            "throw ratio", "", lambda w: viewing.throw_ratio(self._lens(w)[0], self._raster(w)[0]), "throw"
        )

    def throw_range(self) -> tuple[float, float]:
        """Return the least and the largest throw ratio of the projector's lens."""
        sheet = self.sheet(self.projector())
        return need(sheet.throw_min, sheet, "throw_min"), need(sheet.throw_max, sheet, "throw_max")

    def _shift_limits(self) -> tuple[float, float]:
        """Return what the lens shifts up or down, and aside, alone, per cent."""
        sheet = self.sheet(self.projector())
        return (
            need(sheet.shift_vertical, sheet, "shift_vertical"),
            need(sheet.shift_horizontal, sheet, "shift_horizontal"),
        )

    def shift_shares(self, world: World) -> tuple[float, float]:
        """Return the shift asked for up or down, and aside, as shares of what the lens can do alone."""
        sheet = self.sheet(self.projector())
        half = need(sheet.shift_reference, sheet, "shift_reference") == "half-height"
        limits = self._shift_limits()
        if min(limits) < _FIXED_PERCENT:
            world.assume(_FIXED)
            limits = max(limits[0], _FIXED_PERCENT), max(limits[1], _FIXED_PERCENT)
        wide, high = self._raster(world)
        _, aside, above = self._lens(world)
        asked = viewing.shift_percent(above, high, half=half), viewing.shift_percent(aside, wide, half=half)
        up, across = (viewing.share_of(one, limit) for one, limit in zip(asked, limits, strict=True))
        return up, across

    def shift(self) -> Figure:
        """Larger share of the lens's shift that is asked for, up or down or aside, per cent."""
        return self.figure("share of the lens shift", "%", lambda w: 100.0 * max(self.shift_shares(w)), "shift")

    def both_shifts(self) -> Figure:
        """Both shares of the lens's shift together, per cent; a way that it does not shift has nothing to give."""
        limits = self._shift_limits()

        def compute(world: World) -> float:
            shares = zip(self.shift_shares(world), limits, strict=True)
            return 100.0 * sum(share for share, limit in shares if limit >= _FIXED_PERCENT)

        return self.figure("both lens shifts", "%", compute, "both")

    def beam_over(self, seat: Seat) -> Figure:
        """How far the beam's lower edge passes over a seated head."""
        self.figures.onscreen.size(self.picture)
        self._lens(self.world)
        top = need(seat.head_top_m, seat, "head_top")

        def compute(world: World) -> float:
            (throw, across, up), (before, aside) = self._lens(world), self.stands(world, seat)
            if not 0.0 < before < throw:
                return OVER_ALL_M
            share = before / throw
            wide, high = (world(size) for size in self.figures.onscreen.size(self.picture))
            if abs(aside - across * share) > wide / 2.0 * (1.0 - share) + HEAD_HALF_WIDTH_M:
                return OVER_ALL_M
            middle = world(need(self.picture.centre, self.picture, "centre").z)
            ray = viewing.sight_line_m(middle - high / 2.0, middle + up, share)
            return min(OVER_ALL_M, ray - world(top))

        return self.figure("beam over a head", "m", compute, seat, "beam")

    def beam_meets(self) -> str:
        """Return what stands in the beam: an obstacle, a wall, the ceiling, a loudspeaker; empty when it is free."""
        picture, projector, world = self.picture, self.projector(), self.world
        lens = need(projector.lens, projector, "lens").xyz
        x, y, z = need(picture.centre, picture, "centre").xyz
        wide, high = (size.value for size in self.figures.onscreen.size(picture))
        nx, ny = self.figures.fixtures.faces(world, picture)
        shape = self.figures.space.enclosure(world)
        for up in _EDGES:
            for across in _EDGES:
                half = across * wide / 2.0
                met = sees(shape, lens, (x - half * ny, y + half * nx, z + up * high / 2.0), ())
                if met is not None:
                    wall = met.kind == "wall"
                    return f"wall {self.figures.space.wall_name(met.number)}" if wall else f"the {met.kind}"
        before, across, up = self._lens(world)
        return self.figures.blocking.in_beam((before, across, z + up), (wide, high))

    def beam_lacks(self) -> Missing | None:
        """Return what may stand in a beam that meets nothing: what has no place, or what the file does not speak of."""
        for source in self.design.sources:
            if source.position is None:
                return Missing(source, "position")
        return unsaid(self.design, "room.obstacles", "loudspeakers") or self.figures.covering.hung_unknown()

    def _white(self, world: World) -> float:
        light, screen = self.sheet(self.projector()), self.sheet(self.picture)
        flux, gain = need(light.luminous_flux_lm, light, "luminous_flux"), need(screen.gain, screen, "gain")
        wide, high = self._raster(world)
        return viewing.luminance_cd_m2(world(flux), gain, wide * high)

    def luminance(self) -> Figure:
        """Luminance of white in the middle of the screen, on its axis."""
        return self.figure("luminance", "cd/m2", self._white, "luminance")

    def off_axis_light(self, seat: Seat) -> Figure:
        """Share of the screen's gain that is left toward a seat, per cent."""
        screen = self.sheet(self.picture)
        half, off = need(screen.half_gain_deg, screen, "half_gain"), self.figures.onscreen.off_axis(self.picture, seat)
        return self.figure(
            "light left off the axis", "%", lambda w: 100.0 * viewing.gain_share(off.at(w), w(half)), seat, "gain"
        )

    def contrast(self) -> Figure:
        """White over black with the light that is on when watching."""
        light, screen = self.sheet(self.projector()), self.sheet(self.picture)
        ambient, native = (
            need(self.picture.ambient_lx, self.picture, "ambient"),
            need(light.contrast, light, "contrast"),
        )
        gain = need(screen.gain, screen, "gain")
        return self.figure(
            "contrast", "", lambda w: viewing.contrast_in_light(self._white(w), native, w(ambient), gain), "contrast"
        )
