"""What the room's own readings, its size and its air, do to the pressure of a source at an ear."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from roomlint.design.base import Missing
from roomlint.figures.domain import Refused
from roomlint.measure.view import View

if TYPE_CHECKING:
    from collections.abc import Sequence

    from roomlint.design.quantity import Reading
    from roomlint.figures.direction import Point3
    from roomlint.figures.modal_sum import ComplexArray
    from roomlint.figures.moved_room import Skin
    from roomlint.figures.room_response import RoomResponse
    from roomlint.plane import Outline
    from roomlint.roof import Facets

    Shape = tuple[Outline, Facets]
    Decays = list[ComplexArray]
    """Pressures or their changes, decay by decay."""
    Asked = tuple[Sequence[Point3], Sequence[Point3], Sequence[float], Sequence[float]]
    """Sources, ears, frequencies and decays."""

WAYS: Final = (1.0, -1.0)


class RoomMoves(View):
    """Pressures in the room whose walls, ceiling or air are a little other than as read.

    A place that was measured from the right moves with the room's width, and so do the room's modes: one without the
    other would make a room and its mirror image differ, and count the width nearly twice where it half cancels
    (JCGM 100:2008, 5.2). A place keeps to the wall that it was measured from, so that the same place written from the
    left and from the right is known with another uncertainty; that difference is real.
    """

    def changes(
        self, response: RoomResponse, sources: Sequence[Point3], ears: Sequence[Point3], hertz: Sequence[float],
        decays_s: Sequence[float],
    ) -> dict[Reading, tuple[Decays, Decays]]:  # fmt: skip
        """Return, by reading, how the pressures (ears, sources, frequencies) change when it is off, up and down.

        By its uncertainty, for each decay; sources and ears stay where they are. A box is solved anew in closed form,
        any other room's change is the first order of its surfaces' move.
        """
        asked = sources, ears, hertz, decays_s
        paths = response.paths(sources, ears)
        as_read = [paths.transfer(hertz, decay_s) for decay_s in decays_s]
        found: dict[Reading, tuple[Decays, Decays]] = {}
        for reading, shapes in self._shapes().items():
            tried = (self._anew(response, (reading, way), shape, asked) for way, shape in shapes.items())
            anew = [there for there in tried if there is not None]
            if len(anew) == len(WAYS):
                up, down = ([a - b for a, b in zip(one, as_read, strict=True)] for one in anew)
            else:
                way, shape = next(iter(shapes.items()))
                change = self._of_skin(response, shape, asked)
                up, down = [way * one for one in change], [-way * one for one in change]
            found[reading] = up, down
        for share in self.figures.space.temperature_degc.shares:
            if share.reading.u > 0.0:
                # The modes stay where they are and sound at other frequencies.
                ways = [
                    [paths.weighed(response.weights(hertz, decay_s, speed)) for decay_s in decays_s]
                    for speed in (self._sound_speed(share.reading, way) for way in WAYS)
                ]
                up, down = ([a - b for a, b in zip(one, as_read, strict=True)] for one in ways)
                found[share.reading] = up, down
        return found

    def _sound_speed(self, reading: Reading, way: float) -> float:
        return self.figures.space.sound_speed_m_s(self.world.with_moved(reading, way * reading.u))

    def _shapes(self) -> dict[Reading, dict[float, Shape]]:
        """Return the room's shape with each of its readings that may be off moved up and down, where it is a room."""
        space, world = self.figures.space, self.world
        found: dict[Reading, dict[float, Shape]] = {}
        for reading in world.traced(lambda w: (space.outline(w), space.facets(w)))[1].readings:
            for way in WAYS if reading.u > 0.0 else ():
                moved = world.with_moved(reading, way * reading.u)
                try:
                    found.setdefault(reading, {})[way] = space.outline(moved), space.facets(moved)
                except (Missing, Refused):
                    continue
        return found

    def _anew(
        self, response: RoomResponse, moved: tuple[Reading, float], shape: Shape, asked: Asked
    ) -> Decays | None:  # fmt: skip
        """Return the pressures in a shape where it costs next to nothing: both it and the room as read are boxes."""
        sources, ears, hertz, decays_s = asked
        if response.found_numerically:
            return None

        def solved() -> RoomResponse:
            from roomlint.figures.room_response import solve

            return solve(*shape, response.top_hz, response.sound_speed_mps)

        try:
            there = self.once(("moved", moved, response.top_hz), solved)
            if there.found_numerically:
                return None
            paths = there.paths(sources, ears)
        except Refused:  # what stands at a wall would stand outside
            return None
        return [paths.transfer(hertz, decay_s) for decay_s in decays_s]

    @property
    def _skin(self) -> Skin:
        from roomlint.figures.moved_room import skin

        space = self.figures.space
        return self.once("skin", lambda: skin(space.outline(self.world), space.facets(self.world)))

    def _of_skin(self, response: RoomResponse, shape: Shape, asked: Asked) -> Decays:
        from roomlint.figures.modal_sum import k_squared
        from roomlint.figures.moved_room import change

        sources, ears, hertz, decays_s = asked
        swept = self._skin.swept_m3(self.figures.space.outline(self.world), *shape)
        heard = self._heard(response, [*sources, *ears], hertz, decays_s)
        count, speed = len(sources), response.sound_speed_mps
        return [
            change(self._skin, swept, of_all[:, :count], of_all[:, count:], k_squared(hertz, decay_s, speed))
            for of_all, decay_s in zip(heard, decays_s, strict=True)
        ]

    def _heard(
        self, response: RoomResponse, places: Sequence[Point3], hertz: Sequence[float], decays_s: Sequence[float]
    ) -> Decays:
        """Return what sources at places do on the skin, decay by decay; each place is asked for once."""
        import numpy as np

        from roomlint.figures.moved_room import heard

        key = ("heard", response.top_hz, tuple(hertz), tuple(decays_s))
        known: dict[Point3, Decays] = self.once(key, dict)
        fresh = [place for place in dict.fromkeys(places) if place not in known]
        if fresh:
            for decay in heard(response, self._skin.points, fresh, hertz, decays_s):
                for number, place in enumerate(fresh):
                    known.setdefault(place, []).append(decay[:, number])
        return [np.stack([known[place][n] for place in places], axis=1) for n in range(len(decays_s))]
