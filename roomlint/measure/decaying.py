"""How long sound rings in the room, octave by octave, and what would shorten it."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final, NamedTuple

from roomlint.design.base import need
from roomlint.design.quantity import Quantity, assumed
from roomlint.figures import decay
from roomlint.figures.absorption import BANDS_HZ, MID_BANDS_HZ, coefficient
from roomlint.figures.decay import Faced
from roomlint.figures.domain import Refused
from roomlint.measure.figure import Figure
from roomlint.measure.view import View

if TYPE_CHECKING:
    from collections.abc import Mapping

    from roomlint.design.listening import Loudspeaker, Seat
    from roomlint.measure.world import World

HUMIDITY: Final = (50.0, 20.0, "%", "air of 50 % humidity")
FORMULAS: Final = "decay between what the statistical formulas give"
PANEL: Final = ("mineral-wool-50",)
"""The treatment that a shortage is told in: 50 mm of mineral wool in front of the wall."""
PANEL_M: Final = 0.05
USABLE: Final = 0.8
"""Of a free wall so much can be covered; the rest is corners, sockets and edges."""
LARGEST_U: Final = 0.3
_TRIES: Final = 30


class Needed(NamedTuple):
    """What is missing for a decay: panels, and where there is wall for them."""

    area: Figure
    thickness: Figure
    where: tuple[str, ...]
    enough: bool


class Decaying(View):
    """Decay by statistics, which holds above the Schroeder frequency only."""

    @property
    def _between(self) -> Quantity:
        return self.once("between", lambda: assumed(0.0, 1.0, "", FORMULAS))

    @property
    def _humidity(self) -> Quantity:
        return self.once("humidity", lambda: assumed(*HUMIDITY))

    def formulas(self, world: World, band_hz: int) -> Mapping[str, float]:
        """Return the decay in an octave by each formula that holds for the room, s."""
        return world.once(("formulas", band_hz), lambda w: self._formulas(w, self._lined(w, band_hz), band_hz))

    def _lined(self, world: World, band_hz: int) -> tuple[Faced, ...]:
        return self.figures.lining.faces(world, band_hz)

    def _formulas(self, w: World, faces: tuple[Faced, ...], band_hz: int) -> dict[str, float]:
        space = self.figures.space
        volume, speed = space.volume_m3(w), space.sound_speed_m_s(w)
        air = decay.air_absorption_per_m(band_hz, w(space.temperature_degc), w(self._humidity))
        furniture = self.figures.lining.furnished_m2(w, band_hz)
        surface, absorbed = sum(face.area_m2 for face in faces), decay.absorbed_m2(faces, furniture)
        found = {
            "sabine": decay.sabine_s(volume, absorbed, air, speed),
            "eyring": decay.eyring_s(volume, surface, absorbed, air, speed),
        }
        if self.is_square:
            found["arau"] = decay.arau_s(volume, faces, furniture, air, speed)
        return found

    @property
    def is_square(self) -> bool:
        """Whether all surfaces are square to each other, which the formula for uneven absorption is for."""
        return self.once("square", self._is_square)

    def _is_square(self) -> bool:
        try:
            faces = [Faced(normal, area, 0.5) for _, normal, area in self.figures.lining.surfaces(self.world)]
            decay.arau_s(1.0, faces, 0.0, 0.0, 343.0)
        except Refused:
            return False
        return True

    def decay_s(self, world: World, band_hz: int) -> float:
        """Return the decay in an octave: in the middle of what the formulas give, their spread as its uncertainty."""
        return self._told(world, self.formulas(world, band_hz))

    def _told(self, world: World, formulas: Mapping[str, float]) -> float:
        low, high = min(formulas.values()), max(formulas.values())
        return (low + high) / 2.0 + world(self._between) * (high - low) / 2.0

    def band(self, band_hz: int) -> Figure:
        """Return the decay in an octave."""
        return self.figure(f"decay at {band_hz} Hz", "s", lambda w: self.decay_s(w, band_hz), band_hz)

    def mid_s(self, world: World) -> float:
        """Return the mean decay of the octaves from 500 Hz to 2 kHz."""
        return sum(self.decay_s(world, band) for band in MID_BANDS_HZ) / len(MID_BANDS_HZ)

    def mid(self) -> Figure:
        """Return the mean decay from 500 Hz to 2 kHz; refuses in a room so small that modes rule there."""

        def compute(world: World) -> float:
            edge = MID_BANDS_HZ[0] / decay.OCTAVE_EDGE
            if self.schroeder_hz(world) > edge:
                raise Refused(f"modes rule up to {self.schroeder_hz(world):.0f} Hz in this room, statistics do not hold")
            return self.mid_s(world)

        return self.figure("mid-band decay", "s", compute, "")

    def schroeder_hz(self, world: World) -> float:
        """Return the frequency below which single modes rule."""
        return decay.schroeder_hz(self.mid_s(world), self.figures.space.volume_m3(world))

    def schroeder(self) -> Figure:
        """Return the Schroeder frequency."""
        return self.figure("Schroeder frequency", "Hz", self.schroeder_hz, "")

    def nominal_s(self) -> float:
        """Return the decay that a room of this volume is meant to have for critical listening."""
        return decay.nominal_decay_s(self.figures.space.volume_m3(self.world))

    def spread(self) -> Figure:
        """Return how far the formulas are apart over the middle octaves, in percent of their mean."""

        def compute(world: World) -> float:
            means = []
            for name in ("sabine", "eyring", "arau"):
                means.append(sum(self.formulas(world, band)[name] for band in MID_BANDS_HZ) / len(MID_BANDS_HZ))
            return 100.0 * (max(means) - min(means)) * len(means) / sum(means)

        return self.figure("spread of the formulas", "%", compute, "")

    def low_band_hz(self) -> int | None:
        """Return the lowest octave up to 250 Hz that lies wholly above the Schroeder frequency; None where none does."""
        found = self.schroeder_hz(self.world)
        return next((band for band in BANDS_HZ[:2] if band / decay.OCTAVE_EDGE >= found), None)

    def low_excess(self, band_hz: int) -> Figure:
        """Return how much longer a low octave rings than the middle ones."""
        return self.figure("excess of a low octave", "s", lambda w: self.decay_s(w, band_hz) - self.mid_s(w), band_hz)

    def critical_share(self, speaker: Loudspeaker, seat: Seat) -> Figure:
        """Return a seat's distance from a loudspeaker over the distance at which the room is as loud as it."""
        data, product = self.figures.boundary.transducer(speaker), need(speaker.product, speaker, "product")
        wide = need(data.horizontal_deg, product, "loudspeaker.horizontal_coverage")
        high = need(data.vertical_deg, product, "loudspeaker.vertical_coverage")
        away = self.figures.angles.distance(speaker, seat)

        def compute(world: World) -> float:
            directed = decay.directivity_factor(min(world(wide), 180.0), min(world(high), 180.0))
            volume = self.figures.space.volume_m3(world)
            return away.at(world) / decay.critical_distance_m(directed, volume, self.mid_s(world))

        return self.figure("distance over the critical distance", "", compute, speaker.key, seat.key)

    def needed(self, longest_s: float) -> Needed:
        """Return how much mineral wool brings the middle octaves to a decay with its uncertainty, and on which surfaces.

        It takes the place of what is there, the largest free surface first. Where no free surface is left it is told
        how much would be wanted in all, going by what the last one is lined with.
        """
        figure, world = self.mid(), self.world
        aim = longest_s * (1.0 - min(figure.u / figure.value, LARGEST_U))
        free = sorted(self.figures.lining.free_m2(world).items(), key=lambda one: (-one[1], one[0]))
        most = USABLE * sum(area for _, area in free)
        enough = self._with_panels(most, free) <= aim
        low, high = 0.0, most
        for _ in range(_TRIES if enough else 0):
            middle = (low + high) / 2.0
            low, high = (middle, high) if self._with_panels(middle, free) > aim else (low, middle)
        left, where = high, []
        for name, area in free:
            if left <= 0.0:
                break
            where.append(name)
            left -= USABLE * area
        return Needed(
            Figure.plain("panels", "m2", high, u=0.0), Figure.plain("thickness", "m", PANEL_M, u=0.0),
            tuple(where), enough,
        )  # fmt: skip

    def _with_panels(self, area_m2: float, free: list[tuple[str, float]]) -> float:
        """Return the mid-band decay with so much of the panels on the free surfaces, in their order."""
        world, lining = self.world, self.figures.lining
        shares, left = {}, area_m2
        for name, area in free:
            covered = min(left, USABLE * area)
            shares[name] = covered / area
            left -= covered
        total = 0.0
        for band in MID_BANDS_HZ:
            wool, faces = coefficient(PANEL, band).at(0.0), []
            for part in lining.parts(world):
                own = lining.absorbed(world, part, band)
                share = shares.get(part.surface, 0.0) if lining.is_bare(part) else 0.0
                faces.append(Faced(part.normal, part.area_m2, own + share * (wool - own)))
            total += self._told(world, self._formulas(world, tuple(faces), band))
        return total / len(MID_BANDS_HZ)

