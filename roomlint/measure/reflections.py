"""First reflections of a loudspeaker at a seat, with what the treatments at the bounce points absorb."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING, Final, NamedTuple

from roomlint.design.base import need
from roomlint.figures import images
from roomlint.figures.coverage import drop_db, off_axis_parts
from roomlint.figures.direction import dot, toward
from roomlint.figures.domain import Refused
from roomlint.measure.view import View

if TYPE_CHECKING:
    from collections.abc import Callable

    from roomlint.design.base import Pair
    from roomlint.design.listening import Loudspeaker, Seat
    from roomlint.design.shell import Treatment
    from roomlint.figures.direction import Point3
    from roomlint.figures.images import Reflection
    from roomlint.measure.figure import Figure
    from roomlint.measure.world import World

EARLY_MS: Final = 15.0
WANTED_DB: Final = -10.0
SPEECH_BANDS_HZ: Final = (1000, 2000, 4000)
MOST_ABSORBED: Final = 0.99
"""Coefficients above one are an artefact of the measuring method."""
BARE: Final = "surfaces of unknown finish that reflect all, and a loudspeaker without coverage that radiates all round"
_BESIDE: Final = 0.5
"""A wall is a side wall for a seat that looks along it: its inward direction lies across the look."""


class Early(NamedTuple):
    """One early reflection: off what, where, how loud against the direct sound and how late."""

    level: Figure
    delay: Figure
    surface: str
    place: tuple[Figure, Figure]
    """On a wall: from its left end and up; on floor or ceiling: from the left and from the front."""
    absorption: float
    """What it would take there to bring it down to 10 dB below the direct sound."""


class Apart(NamedTuple):
    """How far the first side reflections of a left and a right differ."""

    level: Figure
    time: Figure


class Reflections(View):
    """What arrives just after the direct sound."""

    def early(self, speaker: Loudspeaker, seat: Seat) -> tuple[Reflection, ...]:
        """Return the first reflections within 15 ms, loudest first, as read."""
        return self.once(("early", speaker, seat), lambda: self._early(self.world, speaker, seat))

    def _early(self, world: World, speaker: Loudspeaker, seat: Seat) -> tuple[Reflection, ...]:
        place = world.xyz(need(speaker.position, speaker, "position"))
        ahead = toward(place, world.xyz(need(seat.ear, seat, "ear")))
        speed = self.figures.space.sound_speed_m_s(world)
        soon = [
            bounce
            for bounce in self.figures.boundary.images(world, speaker, seat)
            # Above 1 kHz a cabinet hardly radiates behind itself.
            if bounce.delay_ms(speed) < EARLY_MS and dot(ahead, toward(place, bounce.bounce)) > 0.0
        ]
        return tuple(sorted(soon, key=lambda bounce: -self.level_db(world, speaker, seat, bounce)))

    def loudest_db(self, speaker: Loudspeaker, seat: Seat) -> Figure | None:
        """Level of the loudest early reflection against the direct sound; None when there is none."""
        if not self.early(speaker, seat):
            return None

        def compute(world: World) -> float:
            world.assume(BARE)
            found = self._early(world, speaker, seat)
            if not found:
                raise Refused("no reflection arrives early there")
            return max(self.level_db(world, speaker, seat, bounce) for bounce in found)

        return self.figure("loudest early reflection", "dB", compute)

    def first(self, speaker: Loudspeaker, seat: Seat) -> Early:
        """Return the loudest early reflection with where it bounces; there must be one."""
        return self._told(speaker, seat, self.early(speaker, seat)[0])

    def _told(self, speaker: Loudspeaker, seat: Seat, bounce: Reflection) -> Early:
        def again(world: World) -> Reflection:
            for other in self.figures.boundary.images(world, speaker, seat):
                if (other.kind, other.number) == (bounce.kind, bounce.number):
                    return other
            raise Refused("the reflection misses the seat")

        speed = self.figures.space.sound_speed_m_s
        return Early(
            self.figure("level of the reflection", "dB", lambda w: self.level_db(w, speaker, seat, again(w))),
            self.figure("delay of the reflection", "ms", lambda w: again(w).delay_ms(speed(w))),
            self._surface(bounce),
            (
                self.figure("along", "m", lambda w: self.on_surface(again(w))[0]),
                self.figure("up", "m", lambda w: self.on_surface(again(w))[1]),
            ),
            images.absorption_needed(bounce.direct_m, bounce.path_m, WANTED_DB),
        )

    def _first_side(self, world: World, speaker: Loudspeaker, seat: Seat, side: int) -> Reflection | None:
        """Return the first reflection off a wall beside the seat, on one side (1 left, -1 right).

        The wall lies across the direction that the seat faces, on that side of the loudspeaker.
        """
        place = world.xyz(need(speaker.position, speaker, "position"))
        turn = math.radians(world(seat.facing_deg))
        left = (-math.cos(turn), -math.sin(turn))
        beside = []
        for bounce in self.figures.boundary.images(world, speaker, seat):
            out = (bounce.image[0] - place[0], bounce.image[1] - place[1])
            size = math.hypot(*out)
            if bounce.kind == "wall" and size > 0.0 and side * dot((*out, 0.0), (*left, 0.0)) / size > _BESIDE:
                beside.append(bounce)
        return min(beside, key=lambda bounce: bounce.path_m, default=None)

    def side_difference(self, pair: Pair[Loudspeaker], seat: Seat) -> Apart | None:
        """How much the first side reflections of a left and a right differ; None when one of them has none."""
        sides = ((pair.left, 1), (pair.right, -1))
        if any(self._first_side(self.world, speaker, seat, side) is None for speaker, side in sides):
            return None

        def apart(name: str, unit: str, of: Callable[[World, Loudspeaker, Reflection], float]) -> Figure:
            def compute(world: World) -> float:
                world.assume(BARE)
                found = [(speaker, self._first_side(world, speaker, seat, side)) for speaker, side in sides]
                values = [of(world, speaker, bounce) for speaker, bounce in found if bounce is not None]
                if len(values) < len(sides):
                    raise Refused("no side wall reflects to the seat there")
                return abs(values[0] - values[1])

            return self.figure(name, unit, compute)

        speed = self.figures.space.sound_speed_m_s
        return Apart(
            apart("difference of the side reflections", "dB", lambda w, whose, it: self.level_db(w, whose, seat, it)),
            apart("time between the side reflections", "ms", lambda w, _, it: it.delay_ms(speed(w))),
        )

    def one_sided(self, pair: Pair[Loudspeaker], seat: Seat) -> str:
        """Return which of a pair alone has a side wall that reflects to the seat; empty when both or none have."""
        has = [
            self._first_side(self.world, speaker, seat, side) is not None
            for speaker, side in ((pair.left, 1), (pair.right, -1))
        ]
        if has[0] == has[1]:
            return ""
        return pair.left.words if has[0] else pair.right.words

    def level_db(self, world: World, speaker: Loudspeaker, seat: Seat, bounce: Reflection) -> float:
        """Return a bounce's level against the direct sound, by the longer way, the surface and the coverage."""
        return bounce.level_db(self._absorbed(world, bounce)) - self._weaker_db(world, speaker, seat, bounce)

    def bare_db(self, world: World, speaker: Loudspeaker, seat: Seat, bounce: Reflection) -> float:
        """Return a bounce's level against the direct sound if nothing covered the surface."""
        return bounce.level_db() - self._weaker_db(world, speaker, seat, bounce)

    def _weaker_db(self, world: World, speaker: Loudspeaker, seat: Seat, bounce: Reflection) -> float:
        """Return how much weaker a loudspeaker is toward a bounce than toward the seat."""
        ear = world.xyz(need(seat.ear, seat, "ear"))
        return self._drop_db(world, speaker, bounce.bounce) - self._drop_db(world, speaker, ear)

    def _drop_db(self, world: World, speaker: Loudspeaker, point: Point3) -> float:
        """Return how much weaker a loudspeaker is toward a point than ahead; naught where its coverage is not given."""
        data = speaker.product.loudspeaker if speaker.product is not None else None
        if data is None or speaker.aim is None or data.horizontal_deg is None or data.vertical_deg is None:
            return 0.0
        place = world.xyz(need(speaker.position, speaker, "position"))
        off = off_axis_parts(self.figures.aim.axis(world, speaker), place, point)
        halves = (world(data.horizontal_deg) / 2.0, world(data.vertical_deg) / 2.0)
        return drop_db(off, max(halves[0], 1.0), max(halves[1], 1.0))

    def _surface(self, bounce: Reflection) -> str:
        if bounce.kind == "wall":
            return self.figures.space.wall_name(bounce.number)
        return bounce.kind

    def on_surface(self, bounce: Reflection) -> tuple[float, float]:
        """Return the bounce's place on its surface as an installer finds it, m."""
        x, y, z = bounce.bounce
        shell = self.design.shell
        if bounce.kind == "wall":
            corner = shell.corners[bounce.number]
            return math.dist((corner.x.value, corner.y.value), (x, y)), z
        return x, shell.length_m.value - y

    def _absorbed(self, world: World, bounce: Reflection) -> float:
        """Return the mean absorption, 1 to 4 kHz, of what is where it bounces: treatment, opening or finish."""
        surface, (across, up) = self._surface(bounce), self.on_surface(bounce)
        lining = self.figures.lining
        covering = [
            treatment
            for treatment in self.design.treatments
            if treatment.on == surface and treatment.kind != "diffuser" and self.covers(treatment, bounce)
        ]
        if covering:
            return max(self._taken(world, treatment) for treatment in covering)
        opening = lining.opening_at(world, surface, across, up) if bounce.kind == "wall" else None
        materials = lining.material(opening, surface)
        if materials is None:
            return 0.0
        taken = [lining.taken(world, materials, band) for band in SPEECH_BANDS_HZ]
        return min(MOST_ABSORBED, sum(taken) / len(taken))

    def _taken(self, world: World, treatment: Treatment) -> float:
        """Return what a treatment absorbs: as stated, or by the table where its kind tells what it is."""
        bands = treatment.absorption
        if bands is None:
            materials = self.figures.lining.made_of(treatment)
            taken = [self.figures.lining.taken(world, materials, band) for band in SPEECH_BANDS_HZ]
        else:
            taken = [bands[hz] for hz in SPEECH_BANDS_HZ if hz in bands]
        if not taken:
            need(None, treatment, "absorption.1 kHz")
        return min(MOST_ABSORBED, sum(taken) / len(taken))

    def covers(self, treatment: Treatment, bounce: Reflection) -> bool:
        """Whether a treatment of a surface covers the place where something bounces on it."""
        across, up = self.on_surface(bounce)
        wide, high = need(treatment.width_m, treatment, "width"), need(treatment.height_m, treatment, "height")
        if bounce.kind == "wall":
            start = need(treatment.start_m, treatment, "from_wall_left").value
            low = treatment.bottom_m.value if treatment.bottom_m is not None else 0.0
        else:
            start = need(treatment.from_left_m, treatment, "from_left").value
            low = need(treatment.from_front_m, treatment, "from_front").value
        return start <= across <= start + wide.value and low <= up <= low + high.value
