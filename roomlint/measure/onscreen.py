"""Where loudspeakers and seats stand to the picture."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING, Final

from roomlint.design.base import Missing, need, unsaid
from roomlint.figures import direction
from roomlint.figures.domain import Refused
from roomlint.figures.enclosure import wall_of
from roomlint.figures.layouts import parse_label
from roomlint.measure.view import View

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator

    from roomlint.design.listening import Loudspeaker, Picture, Seat
    from roomlint.design.products import Product
    from roomlint.design.quantity import Quantity
    from roomlint.figures.enclosure import Enclosure
    from roomlint.measure.figure import Figure
    from roomlint.measure.world import World
    from roomlint.plane import Point2

NO_HIGHER_SHARE: Final = 0.60
"""Front loudspeakers stand no higher than this share of the picture's height (text beside BS.775-3, second-hand)."""
_OF_CABINET: Final = 0.85
"""A display's picture fills at least so much of its cabinet, one way or the other; practice, ours."""
_AHEAD: Final = 0.5
"""A wall that shows its face to a seat within 60 deg of square may carry the picture."""


class OnScreen(View):
    """The picture, as a plane in front of the seats."""

    def picture(self) -> Picture | None:
        """Return the picture, None where the file says that there is none; raises `Missing` where it says nothing."""
        picture = self.design.picture
        if picture is None and (missing := unsaid(self.design, "picture")) is not None:
            raise missing
        return picture

    def size(self, picture: Picture) -> tuple[Quantity, Quantity]:
        """Return width and height of the picture, from the file or from its product's diagonal and aspect."""
        if picture.width_m is not None and picture.height_m is not None:
            return picture.width_m, picture.height_m
        data = picture.product.picture if picture.product is not None else None
        if data is None or data.diagonal_m is None or data.aspect is None:
            return need(picture.width_m, picture, "width"), need(picture.height_m, picture, "height")
        return self._of_sheet(data.diagonal_m, data.aspect)

    def off_sheet(self, picture: Picture) -> Figure:
        """How far the size that the file gives is from its sheet's, in percent of that: the worse of width and height.

        From the sheet's own picture; where it gives none, from a display's cabinet, whose face is all picture but for
        a frame: larger than the cabinet, or smaller than so much of it. No picture is wider than what it is on.
        """
        width, height = need(picture.width_m, picture, "width"), need(picture.height_m, picture, "height")
        product = need(picture.product, picture, "product")
        shares = list(self._shares(product, width, height))
        if not shares:
            raise Missing(product, "picture.diagonal")
        return self.figure("picture off its sheet", "%", lambda w: 100.0 * max(share(w) for share in shares))

    def _shares(self, product: Product, width: Quantity, height: Quantity) -> Iterator[Callable[[World], float]]:
        data = product.picture
        if data is not None and data.diagonal_m is not None and data.aspect is not None:
            own = self._of_sheet(data.diagonal_m, data.aspect)
            yield lambda w: abs(w(width) / w(own[0]) - 1.0)
            yield lambda w: abs(w(height) / w(own[1]) - 1.0)
        elif product.kind == "display":
            wide, high = need(product.width_m, product, "width"), need(product.height_m, product, "height")
            yield lambda w: w(height) / w(high) - 1.0
            yield lambda w: _OF_CABINET - max(w(width) / w(wide), w(height) / w(high))
        outer = product.width_m
        if outer is not None:
            yield lambda w: w(width) / w(outer) - 1.0

    @staticmethod
    def _of_sheet(diagonal: Quantity, aspect: float) -> tuple[Quantity, Quantity]:
        over = math.hypot(aspect, 1.0)
        return diagonal * (aspect / over), diagonal * (1.0 / over)

    def facing(self, world: World, picture: Picture, seat: Seat) -> Point2:
        """Return the unit vector in plan that the picture faces along: square off the wall that it is on.

        Where the file names no wall it is the nearest that the seat faces; in a turned room that is no front wall.
        """
        shape = self.figures.space.enclosure(world)
        held = picture.mounting.on if picture.mounting is not None else None
        names = self.design.shell.wall_names
        if held in names:
            return wall_of(shape, names.index(held))[0].inward
        return self._faced(
            shape, world.xyz(need(picture.centre, picture, "centre")), world.xyz(need(seat.ear, seat, "ear"))
        )

    @staticmethod
    def _faced(shape: Enclosure, centre: direction.Point3, ear: direction.Point3) -> Point2:
        away = math.hypot(ear[0] - centre[0], ear[1] - centre[1])
        if away < direction.COINCIDENT_M:
            raise Refused("the picture hangs where the ear is")
        to = ((ear[0] - centre[0]) / away, (ear[1] - centre[1]) / away)
        walls = [surface.wall for surface in shape.surfaces if surface.wall is not None]
        ahead = [wall for wall in walls if wall.inward[0] * to[0] + wall.inward[1] * to[1] > _AHEAD]
        if not ahead:
            raise Refused("no wall behind the picture faces the seat")
        return min(ahead, key=lambda wall: abs(wall.off_m(centre[:2]))).inward

    def edge_mismatch(self, speaker: Loudspeaker, picture: Picture, seat: Seat) -> Figure:
        """Angle between a front loudspeaker and the picture's edge on its side."""
        centre = need(picture.centre, picture, "centre")
        width, _ = self.size(picture)
        side = parse_label(need(speaker.label, speaker, "label")).side

        def compute(world: World) -> float:
            ear, turned = world.xyz(need(seat.ear, seat, "ear")), world(seat.facing_deg)
            nx, ny = self.facing(world, picture, seat)
            x, y, z = world.xyz(centre)
            # Whoever looks at the picture has its left edge along (ny, -nx) of the way that it faces.
            half = side * world(width) / 2.0
            edge = direction.azimuth_deg(ear, turned, (x + half * ny, y - half * nx, z))
            return abs(direction.wrap_deg(self.figures.angles.azimuth_deg(world, speaker, seat) - edge))

        return self.figure("angle to the picture's edge", "deg", compute)

    def off_axis(self, picture: Picture, seat: Seat) -> Figure:
        """Angle in plan between the picture's axis and the line from its middle to a seat."""
        centre, ear = need(picture.centre, picture, "centre"), need(seat.ear, seat, "ear")

        def compute(world: World) -> float:
            nx, ny = self.facing(world, picture, seat)
            (x, y, _), (ex, ey, _) = world.xyz(centre), world.xyz(ear)
            along, aside = (ex - x) * nx + (ey - y) * ny, (ey - y) * nx - (ex - x) * ny
            return abs(math.degrees(math.atan2(aside, along)))

        return self.figure("angle off the picture's axis", "deg", compute)

    def aside(self, picture: Picture, seat: Seat) -> Figure:
        """Angle in plan at an ear between the way that its seat faces and the picture's middle."""
        centre, ear = need(picture.centre, picture, "centre"), need(seat.ear, seat, "ear")

        def compute(world: World) -> float:
            return abs(direction.azimuth_deg(world.xyz(ear), world(seat.facing_deg), world.xyz(centre)))

        return self.figure("angle from straight ahead", "deg", compute)

    def hides(self, picture: Picture, speaker: Loudspeaker, seat: Seat) -> bool:
        """Whether the lit picture is between a loudspeaker and an ear, by where they are."""
        place, centre = self.figures.angles.place(speaker).xyz, need(picture.centre, picture, "centre").xyz
        ear = need(seat.ear, seat, "ear").xyz
        nx, ny = self.facing(self.world, picture, seat)
        off, before = ((x - centre[0]) * nx + (y - centre[1]) * ny for x, y, _ in (place, ear))
        if off >= 0.0 or before <= 0.0:
            return False
        width, height = self.size(picture)
        share = before / (before - off)
        x, y, z = (start + share * (end - start) for start, end in zip(ear, place, strict=True))
        aside = abs((y - centre[1]) * nx - (x - centre[0]) * ny)
        return aside <= width.value / 2.0 and abs(z - centre[2]) <= height.value / 2.0

    def too_high(self, speaker: Loudspeaker, picture: Picture, seat: Seat) -> Figure:
        """Height of a loudspeaker above 60 per cent of the picture's height, or above the ear where that is higher."""
        position, centre = self.figures.angles.place(speaker), need(picture.centre, picture, "centre")
        ear = need(seat.ear, seat, "ear")
        _, height = self.size(picture)

        def compute(world: World) -> float:
            share = world(centre.z) + (NO_HIGHER_SHARE - 0.5) * world(height)
            return world(position.z) - max(share, world(ear.z))

        return self.figure("height above what picture and ear allow", "m", compute)

    def middle_offset(self, speaker: Loudspeaker, picture: Picture, seat: Seat) -> Figure:
        """Vertical angle between a loudspeaker and the picture's middle, without sign."""
        middle, ear = need(picture.centre, picture, "centre"), need(seat.ear, seat, "ear")

        def compute(world: World) -> float:
            seen = direction.elevation_deg(world.xyz(ear), world.xyz(middle))
            return abs(self.figures.angles.elevation_deg(world, speaker, seat) - seen)

        return self.figure("vertical angle to the picture's middle", "deg", compute)

    def centre_offset(self, centre: Loudspeaker, left: Loudspeaker, right: Loudspeaker, seat: Seat) -> Figure:
        """How far above or below left and right the centre is heard, without sign."""

        def compute(world: World) -> float:
            c, a, b = (self.figures.angles.elevation_deg(world, one, seat) for one in (centre, left, right))
            return abs(c - (a + b) / 2.0)

        return self.figure("offset of the centre's elevation", "deg", compute)
