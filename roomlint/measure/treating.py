"""Where a panel takes the first reflection of a loudspeaker for every seat of a row."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING, Final, NamedTuple, TypeAlias

from roomlint.design.base import need
from roomlint.figures import areas
from roomlint.figures.direction import direction_vector
from roomlint.figures.domain import Refused
from roomlint.measure.bass import ROW_PITCH_M
from roomlint.measure.reflections import WANTED_DB
from roomlint.measure.view import View

if TYPE_CHECKING:
    from roomlint.design.listening import Loudspeaker, Seat
    from roomlint.design.shell import Opening, RoofWindow
    from roomlint.figures.images import Reflection
    from roomlint.measure.figure import Figure
    from roomlint.measure.world import World

AROUND_M: Final = 0.15
"""A panel reaches so far beyond the places where sound bounces: heads move, and an edge hardly absorbs."""
BESIDE: Final = 0.6
"""Share of the whole way after which sound bounces, at the most, off what is beside or above a loudspeaker."""
LEAST_M: Final = 0.6
"""The least side of a panel that takes what is above 1 kHz, whatever the angle. Practice, ours."""
SPOT_M: Final = 1e-6
"""As good as a point."""
TREATS: Final = frozenset({"absorber", "curtain", "bass-trap", "canopy"})


Facing: TypeAlias = "tuple[str, int]"
"""A surface by its kind and the number of its piece or facet."""


class Place(NamedTuple):
    """A rectangle on a surface as an installer measures it."""

    surface: str
    along: Figure
    """On a wall: from its left end to the panel's nearer edge; on the ceiling: from the left."""
    up: Figure
    """On a wall: from the floor to its lower edge; on the ceiling: from the front."""
    width: Figure
    height: Figure
    opening: Opening | RoofWindow | None = None
    """An opening or a window that is in the way."""
    wholly: bool = False
    """Whether sound bounces in it; else the panel reaches over it."""


class Treating(View):
    """First reflections of a loudspeaker over the row that the reference seat is in."""

    def row(self, reference: Seat) -> tuple[Seat, ...]:
        """Return the seats of a seat's row: those of its number, or those beside it within half a step."""
        seats = self.design.seats
        if reference.row is not None and all(seat.row is not None for seat in seats):
            return tuple(seat for seat in seats if seat.row == reference.row)
        x, y, _ = direction_vector(reference.facing_deg.value, 0.0)
        at = {seat: need(seat.ear, seat, "ear") for seat in seats}
        depth = {key: ear.x.value * x + ear.y.value * y for key, ear in at.items()}
        return tuple(seat for seat in seats if abs(depth[seat] - depth[reference]) < ROW_PITCH_M)

    def surfaces(self, speaker: Loudspeaker, reference: Seat) -> tuple[Facing, ...]:
        """Return the walls and ceilings on a loudspeaker's side that send it to the row early, loudest first.

        As loud as they are bare, for a treatment must not hide what it treats; those count that are less than 10 dB
        below the direct sound, and not much farther from the loudspeaker than from the seat: what is across the room or
        behind the seat is another matter.
        """

        def find() -> tuple[Facing, ...]:
            view, most = self.figures.reflections, dict[Facing, float]()
            for seat in self.row(reference):
                for bounce in view.early(speaker, seat):
                    level = view.bare_db(self.world, speaker, seat, bounce)
                    if bounce.kind != "floor" and level > WANTED_DB and self._is_beside(bounce):
                        key = (bounce.kind, bounce.number)
                        most[key] = max(level, most.get(key, level))
            return tuple(sorted(most, key=lambda key: (-most[key], key)))

        return self.once(("surfaces", speaker, reference), find)

    @staticmethod
    def _is_beside(bounce: Reflection) -> bool:
        """Whether a surface is on the loudspeaker's side: it bounces in the first part of its way."""
        return math.dist(bounce.image, bounce.bounce) <= BESIDE * bounce.path_m

    def treated(self, speaker: Loudspeaker, reference: Seat) -> Facing | None:
        """Return, of those surfaces on which something that absorbs hangs, the one that would send most if bare."""
        return next((one for one in self.surfaces(speaker, reference) if self._is_treated(one)), None)

    def _bounces(
        self, world: World, speaker: Loudspeaker, reference: Seat, surface: Facing
    ) -> list[tuple[Seat, Reflection]]:
        found = [
            (seat, bounce)
            for seat in self.row(reference)
            for bounce in self.figures.boundary.images(world, speaker, seat)
            if (bounce.kind, bounce.number) == surface
        ]
        if not found:
            raise Refused("the reflection misses the row there")
        return found

    def level(self, speaker: Loudspeaker, reference: Seat, surface: Facing) -> Figure:
        """Return the level of a surface's reflection at the seat of the row that gets most of it."""
        return self.figure(
            "reflection off one surface at the row",
            "dB",
            lambda w: max(
                self.figures.reflections.level_db(w, speaker, seat, bounce)
                for seat, bounce in self._bounces(w, speaker, reference, surface)
            ),
        )

    def worst(self, speaker: Loudspeaker, reference: Seat, surface: Facing) -> Seat:
        """Return that seat."""
        bounces = self._bounces(self.world, speaker, reference, surface)
        view = self.figures.reflections
        return max(bounces, key=lambda one: view.level_db(self.world, speaker, *one))[0]

    def _is_treated(self, surface: Facing) -> bool:
        """Whether anything that absorbs hangs on a surface, wherever on it."""
        name = self.name(surface)
        return any(one.on == name and one.kind in TREATS for one in self.design.treatments)

    def name(self, surface: Facing) -> str:
        """Return what the file calls a surface."""
        return self.figures.space.wall_name(surface[1]) if surface[0] == "wall" else surface[0]

    def place(self, speaker: Loudspeaker, reference: Seat, surface: Facing) -> Place:
        """Return the panel that covers where sound bounces on a surface to all seats of the row."""

        def edges(world: World, axis: int) -> tuple[float, float]:
            bounces = self._bounces(world, speaker, reference, surface)
            spots = [self.figures.reflections.on_surface(bounce)[axis] for _, bounce in bounces]
            low, high = min(spots) - AROUND_M, max(spots) + AROUND_M
            short = max(LEAST_M - (high - low), 0.0) / 2.0
            low, high = low - short, high + short
            # A wall ends where it does: the panel is moved along, and cut where it is longer than the wall.
            end = self._length_m(world, surface) if axis == 0 else math.inf
            aside = min(max(-low, 0.0), max(end - high, 0.0)) - min(max(high - end, 0.0), max(low, 0.0))
            return max(low + aside, 0.0), min(high + aside, end)

        def figure(name: str, axis: int, *, size: bool) -> Figure:
            def compute(world: World) -> float:
                low, high = edges(world, axis)
                return high - low if size else low

            return self.figure(name, "m", compute)

        along, up = figure("along", 0, size=False), figure("up", 1, size=False)
        width, height = figure("width", 0, size=True), figure("height", 1, size=True)
        lining, name = self.figures.lining, self.name(surface)
        spots = [
            self.figures.reflections.on_surface(one)
            for _, one in self._bounces(self.world, speaker, reference, surface)
        ]
        inside = (lining.meeting(self.world, name, areas.Patch(*spot, SPOT_M, SPOT_M)) for spot in spots)
        opening = next((one for one in inside if one is not None), None)
        whole = areas.Patch(along.value, up.value, width.value, height.value)
        found = opening or lining.meeting(self.world, name, whole)
        return Place(name, along, up, width, height, found, opening is not None)

    def _length_m(self, world: World, surface: Facing) -> float:
        if surface[0] != "wall":
            return math.inf
        outline = self.figures.space.outline(world)
        return math.dist(outline[surface[1]], outline[(surface[1] + 1) % len(outline)])
