"""How long sound rings in the room, octave by octave, and what would shorten it."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final, NamedTuple, TypeAlias

from roomlint.design.base import need
from roomlint.design.quantity import Quantity, assumed
from roomlint.figures import decay
from roomlint.figures.absorption import BANDS_HZ, MID_BANDS_HZ, coefficient
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
_TRIES: Final = 14


Absorbing: TypeAlias = "tuple[tuple[int, float, float], ...]"
"""Of each part its direction, area and coefficient."""


class Needed(NamedTuple):
    """What is missing for a decay: panels, and where there is wall for them."""

    least: Figure
    """So that the decay as computed is short enough."""
    area: Figure
    """So that it is with its uncertainty."""
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

        def found(w: World) -> Mapping[str, float]:
            lining = self.figures.lining
            absorbing = ((p.direction, p.area_m2, lining.absorbed(w, p, band_hz)) for p in lining.groups(w))
            return self._formulas(w, tuple(absorbing), band_hz)

        return world.once(("formulas", band_hz), found)

    def _formulas(self, w: World, absorbing: Absorbing, band_hz: int) -> dict[str, float]:
        space = self.figures.space
        volume, speed = space.volume_m3(w), space.sound_speed_m_s(w)
        air = w.once(
            ("air", band_hz),
            lambda v: decay.air_absorption_per_m(band_hz, v(space.temperature_degc), v(self._humidity)),
        )
        # What stands on the floor counts with it.
        areas, taken = [0.0, 0.0, 0.0], [0.0, 0.0, self.figures.lining.furnished_m2(w, band_hz)]
        for direction, area, share in absorbing:
            areas[direction] += area
            taken[direction] += area * share
        found = {
            "sabine": decay.sabine_s(volume, sum(taken), air, speed),
            "eyring": decay.eyring_s(volume, sum(areas), sum(taken), air, speed),
        }
        if self.is_square:
            sides = [decay.Side(area, absorbed) for area, absorbed in zip(areas, taken, strict=True)]
            found["arau"] = decay.arau_s(volume, sides, air, speed)
        return found

    @property
    def is_square(self) -> bool:
        """Whether all surfaces are square to each other, which the formula for uneven absorption is for."""
        return bool(self.figures.lining.directions)

    def decay_s(self, world: World, band_hz: int) -> float:
        """Return the decay in an octave: in the middle of what the formulas give, their spread as its uncertainty."""
        return self._told(world, self.formulas(world, band_hz))

    def _told(self, world: World, formulas: Mapping[str, float]) -> float:
        low, high = min(formulas.values()), max(formulas.values())
        return (low + high) / 2.0 + world(self._between) * (high - low) / 2.0

    def band(self, band_hz: int) -> Figure:
        """Return the decay in an octave."""
        return self.figure(f"decay at {band_hz} Hz", "s", lambda w: self.decay_s(w, band_hz), band_hz)

    def by(self, formula: str, band_hz: int) -> Figure:
        """Return the decay in an octave by one formula; refuses one that does not hold for the room's shape."""

        def compute(world: World) -> float:
            found = self.formulas(world, band_hz)
            if formula not in found:
                raise Refused("its surfaces are not square to each other")
            return found[formula]

        return self.figure(f"decay at {band_hz} Hz by {formula}", "s", compute, formula, band_hz)

    def mid_s(self, world: World) -> float:
        """Return the mean decay of the octaves from 500 Hz to 2 kHz."""
        return sum(self.decay_s(world, band) for band in MID_BANDS_HZ) / len(MID_BANDS_HZ)

    def mid(self) -> Figure:
        """Return the mean decay from 500 Hz to 2 kHz; refuses in a room so small that modes rule there."""
        return self.figure("mid-band decay", "s", self._held_mid_s, "")

    def _held_mid_s(self, world: World) -> float:
        """Return the mean decay of the middle octaves; refuses where modes rule in them."""
        modes_hz = self.schroeder_hz(world)
        if modes_hz > MID_BANDS_HZ[0] / decay.OCTAVE_EDGE:
            raise Refused(f"modes rule up to {modes_hz:.0f} Hz in this room, statistics do not hold")
        return self.mid_s(world)

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
        """Return how far the formulas are apart over the middle octaves, in percent of their mean; refuses as `mid`."""

        def compute(world: World) -> float:
            self._held_mid_s(world)
            by_band = [self.formulas(world, band) for band in MID_BANDS_HZ]
            means = [sum(found[name] for found in by_band) / len(by_band) for name in ("sabine", "eyring", "arau")]
            return 100.0 * (max(means) - min(means)) * len(means) / sum(means)

        return self.figure("spread of the formulas", "%", compute, "")

    def modes_s(self) -> tuple[float, float]:
        """Return the shortest and the longest decay of single modes by what the room is lined with, as read.

        By the lowest octave that tables have. Raises `Missing` where the file does not say what the room is lined with.
        """
        space = self.figures.space
        least, most = self.figures.lining.between_m2(BANDS_HZ[0])
        return decay.modal_decays_s(space.volume_m3(self.world), least, most, space.sound_speed_m_s(self.world))

    def low_band_hz(self) -> int | None:
        """Return the lowest octave up to 250 Hz that is wholly above the Schroeder frequency; None where none is."""
        found = self.schroeder_hz(self.world)
        return next((band for band in BANDS_HZ[:2] if band / decay.OCTAVE_EDGE >= found), None)

    def low_excess(self, band_hz: int) -> Figure:
        """Return how much longer a low octave rings than the middle ones."""
        return self.figure("excess of a low octave", "s", lambda w: self.decay_s(w, band_hz) - self.mid_s(w), band_hz)

    def critical_share(self, speaker: Loudspeaker, seat: Seat) -> Figure:
        """Return a seat's distance from a loudspeaker over the distance at which the room is as loud as it.

        Refuses as `mid` does: where modes rule there is no diffuse sound to be as loud as.
        """
        data, product = self.figures.boundary.transducer(speaker), need(speaker.product, speaker, "product")
        wide = need(data.horizontal_deg, product, "loudspeaker.horizontal_coverage")
        high = need(data.vertical_deg, product, "loudspeaker.vertical_coverage")
        away = self.figures.angles.distance(speaker, seat)

        def compute(world: World) -> float:
            directed = decay.directivity_factor(min(world(wide), 180.0), min(world(high), 180.0))
            volume = self.figures.space.volume_m3(world)
            return away.at(world) / decay.critical_distance_m(directed, volume, self._held_mid_s(world))

        return self.figure("distance over the critical distance", "", compute, speaker, seat)

    def needed(self, longest_s: float, shortest_s: float) -> Needed:
        """Return how much mineral wool brings the middle octaves to a decay and its uncertainty, and on which surfaces.

        Never to less than half way to the shortest that is wanted: more would make too dead what may be right. It takes
        the place of what is there, first in the direction that absorbs least, where it does most, and there on the
        largest free surface first.
        """
        figure = self.mid()
        aim = max(longest_s * (1.0 - min(figure.u / figure.value, LARGEST_U)), (longest_s + shortest_s) / 2.0)
        free = self._free()
        least, area = self._area_for(longest_s, free), self._area_for(aim, free)
        where, left = [], area or 0.0
        for name, found in free:
            if left > 0.0:
                where.append(name)
            left -= USABLE * found
        return Needed(
            Figure.plain("panels", "m2", least or 0.0, u=0.0), Figure.plain("panels", "m2", area or 0.0, u=0.0),
            Figure.plain("thickness", "m", PANEL_M, u=0.0), tuple(where), area is not None,
        )  # fmt: skip

    def _free(self) -> list[tuple[str, float]]:
        """Return the surfaces with what is free of each, in the order in which panels are put on them."""
        lining, band = self.figures.lining, MID_BANDS_HZ[1]
        areas: dict[int, float] = {}
        taken: dict[int, float] = {}
        for part in lining.groups(self.world):
            areas[part.direction] = areas.get(part.direction, 0.0) + part.area_m2
            taken[part.direction] = taken.get(part.direction, 0.0) + part.area_m2 * lining.absorbed(
                self.world, part, band
            )
        facing = {part.surface: part.direction for part in lining.parts(self.world)}

        def order(one: tuple[str, float]) -> tuple[float, float, str]:
            direction = facing[one[0]]
            return (round(taken[direction] / areas[direction], 3), -one[1], one[0])

        return sorted(lining.free_m2(self.world).items(), key=order)

    def _area_for(self, longest_s: float, free: list[tuple[str, float]]) -> float | None:
        """Return the least area of panels with which the middle octaves ring no longer; None when none is enough."""
        low, high = 0.0, USABLE * sum(area for _, area in free)
        if self._with_panels(high, free) > longest_s:
            return None
        for _ in range(_TRIES):
            middle = (low + high) / 2.0
            low, high = (middle, high) if self._with_panels(middle, free) > longest_s else (low, middle)
        return high

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
            wool, absorbing = coefficient(PANEL, band).at(0.0), []
            for part in lining.parts(world):
                own = lining.absorbed(world, part, band)
                share = shares.get(part.surface, 0.0) if part.is_bare else 0.0
                absorbing.append((part.direction, part.area_m2, own + share * (wool - own)))
            total += self._told(world, self._formulas(world, tuple(absorbing), band))
        return total / len(MID_BANDS_HZ)
