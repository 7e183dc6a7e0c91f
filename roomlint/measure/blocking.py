"""What stands between a seat's eyes and the picture."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final, NamedTuple

from roomlint import cutting
from roomlint.design.base import need
from roomlint.design.shell import Obstacle
from roomlint.figures import convex, solid, viewing
from roomlint.measure.bodies import obstacle_words
from roomlint.measure.ends import OVER_ALL_M
from roomlint.measure.view import View

if TYPE_CHECKING:
    from roomlint.design.listening import Loudspeaker, Seat, Subwoofer
    from roomlint.design.shell import Treatment
    from roomlint.design.supply import Rack
    from roomlint.figures.viewing import Point3
    from roomlint.measure.figure import Figure
    from roomlint.measure.world import World
    from roomlint.plane import Point2

    Thing = Loudspeaker | Subwoofer | Rack | Obstacle | Treatment

_LOOKED_AT_M: Final = 0.50
"""What is seen farther beside the picture than this does not come before it by what a tape may miss."""
_ALL_BUT: Final = 0.98
"""So much of a picture's width and height is lit for certain: a thing may graze its edge."""
_OWN_M: Final = 0.30
"""What is nearer to the eye than this is the seat's own, or the listener."""


class InView(NamedTuple):
    """How far what is nearest to the sight of the picture stays clear of it, on its plane, and what that is."""

    figure: Figure
    thing: str


class Blocking(View):
    """Cabinets, racks and obstacles in the view of the picture."""

    def nearest(self, seat: Seat) -> InView | None:
        """Return what comes nearest to the picture as a seat sees it; None where nothing comes near."""
        self.figures.onscreen.size(self.figures.viewing.picture)
        self.figures.viewing.stands(self.world, seat)  # asked for even where nothing is in the room yet
        near = [
            (gap, thing) for thing in self._things() if (gap := self._gap_m(self.world, seat, thing)) < _LOOKED_AT_M
        ]
        if not near:
            return None
        _, nearest = min(near, key=lambda one: one[0])
        things = [thing for _, thing in near]
        figure = self.figure("sight beside", "m", lambda w: min(self._gap_m(w, seat, thing) for thing in things))
        return InView(figure, self._words(nearest))

    def _things(self) -> tuple[Thing, ...]:
        bodies = (*self.design.sources, *self.design.racks)
        placed = (one for one in bodies if self.figures.bodies.is_placed(one))
        return (*placed, *self.design.shell.obstacles, *self.figures.covering.hung())

    def _gap_m(self, world: World, seat: Seat, thing: Thing) -> float:
        """Return the gap between the picture and what a thing hides of its plane; far where it is not in between."""
        viewed = self.figures.viewing
        before, aside = viewed.stands(world, seat)
        facing = self.figures.onscreen.facing(world, viewed.picture, seat)
        wide, high = viewed.shown(world)
        return self._beside_m(world, (before, aside, viewed.eye_m(world, seat)), facing, (wide, high), thing)

    def _beside_m(self, world: World, eye: Point3, facing: Point2, size: tuple[float, float], thing: Thing) -> float:
        """Return the gap between a picture of some size and what a thing hides of its plane from a point before it."""
        between = self._between(world, facing, thing, eye[0] - _OWN_M)
        if not between:
            return OVER_ALL_M
        middle = world(need(self.figures.viewing.picture.centre, self.figures.viewing.picture, "centre").z)
        half, up = size[0] / 2.0, size[1] / 2.0
        picture = viewing.upright((-half, middle - up), (half, middle + up))
        return min(convex.plan_gap_m(viewing.shadow(eye, between), picture), OVER_ALL_M)

    def _between(self, world: World, facing: Point2, thing: Thing, nearest_m: float) -> list[Point3]:
        """Return the corners of the part of a thing that is before the picture and not at the eye.

        As (before the plane, to the side of the picture's middle, up). Of a thing that the plane cuts, the part before
        it, as tall as the whole.
        """
        picture, (nx, ny) = self.figures.viewing.picture, facing
        x, y, _ = world.xyz(need(picture.centre, picture, "centre"))
        body = self.figures.bodies.body(world, thing)

        def turned(px: float, py: float) -> tuple[float, float]:
            return (px - x) * nx + (py - y) * ny, (py - y) * nx - (px - x) * ny

        if isinstance(body, solid.Tilted):
            corners = [(*turned(px, py), height) for px, py, height in body.corners]
            if all(0.0 <= before <= nearest_m for before, _, _ in corners):
                return corners
        plan = tuple(turned(px, py) for px, py in solid.footprint(body))
        for normal, offset in (((-1.0, 0.0), 0.0), ((1.0, 0.0), nearest_m)):
            plan = cutting.clipped(plan, normal, offset) if plan else ()
        low, high = solid.heights_m(body)
        return [(max(before, 0.0), aside, height) for before, aside in plan for height in (low, high)]

    # The projector's beam

    def in_beam(self, lens: Point3, size: tuple[float, float]) -> str:
        """Return what stands or hangs in a beam, from a lens before the picture to all of it but a hair at its edges.

        The lens as (before the picture's plane, to the side of its middle, up), the picture as (width, height), m;
        empty when nothing does.
        """
        facing = self.figures.fixtures.faces(self.world, self.figures.viewing.picture)
        inside = (size[0] * _ALL_BUT, size[1] * _ALL_BUT)
        gaps = [(self._beside_m(self.world, lens, facing, inside, thing), thing) for thing in self._things()]
        gap, nearest = min(gaps, key=lambda one: one[0], default=(OVER_ALL_M, None))
        return self._words(nearest) if nearest is not None and gap < 0.0 else ""

    @staticmethod
    def _words(thing: Thing) -> str:
        return obstacle_words(thing) if isinstance(thing, Obstacle) else thing.words
