"""First reflections of a loudspeaker at a seat, with what the treatments at the bounce points absorb."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from roomlint.design.base import need
from roomlint.figures import images, plan
from roomlint.figures.direction import dot, toward
from roomlint.measure.figure import Figure, figure
from roomlint.measure.view import View

if TYPE_CHECKING:
    from roomlint.design.listening import Loudspeaker, Seat
    from roomlint.design.shell import Treatment
    from roomlint.figures.direction import Point3, Vector3
    from roomlint.figures.images import Reflection

EARLY_MS = 15.0
WANTED_DB = -10.0
SPEECH_BANDS_HZ = (1000, 2000, 4000)
MOST_ABSORBED = 0.99
"""Coefficients above one are an artefact of the measuring method."""
BARE = "bare surfaces that reflect all, and a loudspeaker that radiates alike to all sides but its back"


class Reflections(View):
    """What arrives just after the direct sound."""

    def early(self, speaker: Loudspeaker, seat: Seat) -> tuple[tuple[Reflection, float], ...]:
        """Return the first reflections within 15 ms, loudest first, each with the absorption where it bounces."""
        return self.once(("early", speaker.id, seat.id), lambda: self._early(speaker, seat))

    def _early(self, speaker: Loudspeaker, seat: Seat) -> tuple[tuple[Reflection, float], ...]:
        place, ear = need(speaker.position, speaker, "position"), need(seat.ear, seat, "ear")
        space = self.figures.space
        found = images.reflections(place.xyz, ear.xyz, space.outline, space.facets, space.obstacles)
        ahead = toward(place.xyz, ear.xyz)
        soon = [
            bounce
            for bounce in found
            # Above 1 kHz a cabinet hardly radiates behind itself.
            if bounce.delay_ms(space.sound_speed_m_s) < EARLY_MS and dot(ahead, toward(place.xyz, bounce.bounce)) > 0.0
        ]
        heard = [(bounce, self._absorbed(bounce)) for bounce in soon]
        return tuple(sorted(heard, key=lambda pair: -pair[0].level_db(pair[1])))

    def loudest(self, speaker: Loudspeaker, seat: Seat) -> Figure | None:
        """Return the level of the loudest early reflection against the direct sound; None when there is none."""
        early = self.early(speaker, seat)
        if not early:
            return None
        place, ear = need(speaker.position, speaker, "position"), need(seat.ear, seat, "ear")
        bounce, absorbed = early[0]
        on_plane, normal = self._plane(bounce)

        def compute(*n: float) -> float:
            source, listener = (n[0], n[1], n[2]), (n[3], n[4], n[5])
            image = images.mirrored_in_plane(source, on_plane, normal)
            return images.reflection_level_db(math.dist(source, listener), math.dist(image, listener), absorbed)

        name = f"loudest early reflection, off the {self._where(bounce)[0]}, against the direct sound"
        assumes = (BARE, *self.figures.space.air_assumption)
        return figure(name, "dB", compute, *place.values, *ear.values, assumes=assumes)

    def treat_words(self, speaker: Loudspeaker, seat: Seat) -> str:
        """Say where each reflection that is too loud bounces, and what absorption it takes there."""
        asks = []
        for bounce, absorbed in self.early(speaker, seat):
            least = images.absorption_needed(bounce.direct_m, bounce.path_m, WANTED_DB)
            if absorbed < least:
                surface, spot = self._where(bounce)
                asks.append(f"{surface} {spot}: {math.ceil(least * 100) / 100:.2f}")
        return f"Absorption wanted, 1 to 4 kHz, at {'; '.join(asks)}." if asks else ""

    def _plane(self, bounce: Reflection) -> tuple[Point3, Vector3]:
        space = self.figures.space
        if bounce.kind == "floor":
            return (0.0, 0.0, 0.0), (0.0, 0.0, 1.0)
        if bounce.kind == "ceiling":
            return bounce.bounce, space.facets[bounce.number].normal
        nx, ny = plan.inward_normal(space.outline, bounce.number)
        return bounce.bounce, (nx, ny, 0.0)

    def _where(self, bounce: Reflection) -> tuple[str, str]:
        """Return the surface's name and the place on it as an installer finds it."""
        x, y, z = bounce.bounce
        shell = self.design.shell
        if bounce.kind == "wall":
            return (
                f"wall {shell.corners[bounce.number].wall}",
                f"{self._along(bounce):.2f} m from its left, {z:.2f} m up",
            )
        return bounce.kind, f"{x:.2f} m from left, {shell.length_m.value - y:.2f} m from front"

    def _along(self, bounce: Reflection) -> float:
        corner = self.design.shell.corners[bounce.number]
        return math.dist((corner.x.value, corner.y.value), bounce.bounce[:2])

    def _absorbed(self, bounce: Reflection) -> float:
        """Return the mean absorption, 1 to 4 kHz, of what covers the bounce point; 0 for a bare surface."""
        surface = self.design.shell.corners[bounce.number].wall if bounce.kind == "wall" else bounce.kind
        most = 0.0
        for treatment in self.design.treatments:
            if treatment.on == surface and treatment.kind != "diffuser" and self._covers(treatment, bounce):
                bands = need(treatment.absorption, treatment, "absorption")
                known = [bands[hz] for hz in SPEECH_BANDS_HZ if hz in bands]
                if not known:
                    need(None, treatment, "absorption.1 kHz")
                most = max(most, min(MOST_ABSORBED, sum(known) / len(known)))
        return most

    def _covers(self, treatment: Treatment, bounce: Reflection) -> bool:
        x, y, z = bounce.bounce
        wide, high = need(treatment.width_m, treatment, "width"), need(treatment.height_m, treatment, "height")
        if bounce.kind == "wall":
            across, up = self._along(bounce), z
            start = need(treatment.start_m, treatment, "from_wall_left").value
            low = treatment.bottom_m.value if treatment.bottom_m is not None else 0.0
        else:
            across, up = x, self.design.shell.length_m.value - y
            start = need(treatment.from_left_m, treatment, "from_left").value
            low = need(treatment.from_front_m, treatment, "from_front").value
        return start <= across <= start + wide.value and low <= up <= low + high.value
