"""What is heard at the seats when nothing plays."""

from __future__ import annotations

import math
from functools import cached_property
from typing import TYPE_CHECKING, Final, NamedTuple, TypeAlias

from roomlint.design.base import Missing, need, unsaid
from roomlint.design.noise import BANDS
from roomlint.design.quantity import assumed
from roomlint.figures import level, noise
from roomlint.figures.domain import Refused
from roomlint.measure.delays import TOUCHING_M
from roomlint.measure.view import View

if TYPE_CHECKING:
    from collections.abc import Callable, Mapping

    from roomlint.design.base import Point
    from roomlint.design.listening import Seat
    from roomlint.design.noise import Noise, NoiseSource
    from roomlint.design.quantity import Quantity
    from roomlint.measure.figure import Figure
    from roomlint.measure.world import World

DECAY: Final = (0.35, 0.15, "s", "a decay of 0.2 to 0.5 s, as of furnished rooms, for the noise in the room")
ByOctave: TypeAlias = "Callable[[Mapping[float, float]], dict[float, float]]"
ALONE: Final = "a background of which nothing is known is not counted"
BY_NUMBER: Final = "a background of which only a number is known has from one octave to all of them on its curve"


class Humming(NamedTuple):
    """Something in the room that makes noise, at a place: by octave or A-weighted, at 1 m."""

    ident: str
    place: Point
    octaves: Mapping[float, Quantity] | None
    weighted: Quantity | None


class Noises(View):
    """The background, and what makes noise in the room."""

    def told(self) -> Noise:
        """Return what the file says of noise, or raise `Missing`."""
        return need(self.design.noise, self.design, "noise")

    # The background

    def criterion(self) -> Figure:
        """Noise criterion of the background: by its octaves, or the number that is given."""
        return self._rated("noise criterion", self.told().nc, noise.criterion_by_octave)

    def rating(self) -> Figure:
        """Noise rating of the background: by its octaves, or the number that is given."""
        return self._rated("noise rating", self.told().nr, noise.rating_by_octave)

    def _rated(self, name: str, given: float | None, rate: ByOctave) -> Figure:
        told = self.told()
        if not told.octaves and given is not None:
            return self.figure(name, "", lambda _: given)
        octaves = need(told.octaves or None, told, "octaves")
        return self.figure(name, "", lambda w: max(rate(_levels(w, octaves)).values()))

    def unheard(self) -> Missing | None:
        """Return what is missing of a background of which only some octaves are known: the others may be louder."""
        told = self.told()
        return _unheard(told, told.octaves)

    def deciding(self) -> Figure | None:
        """Return the octave that decides the background's rating; None where only a number is known."""
        octaves = self.told().octaves
        if not octaves:
            return None
        critical = self.design.project.reference == "critical"
        rate = noise.rating_by_octave if critical else noise.criterion_by_octave

        def compute(world: World) -> float:
            found = rate(_levels(world, octaves))
            return max(found, key=lambda band: found[band])

        return self.figure("deciding octave", "Hz", compute)

    def by_octave(self) -> tuple[tuple[float, Figure, Figure], ...]:
        """Return the background's octaves with their levels, and the criterion or the rating that each reaches."""
        octaves = self.told().octaves or {}
        critical = self.design.project.reference == "critical"
        rate = noise.rating_by_octave if critical else noise.criterion_by_octave
        name = "noise rating" if critical else "noise criterion"

        def one(band: float, level: Quantity) -> tuple[float, Figure, Figure]:
            heard = self.figure("level of the octave", "dB", lambda w: w(level))
            return band, heard, self.figure(name, "", lambda w: rate({band: w(level)})[band])

        return tuple(one(band, level) for band, level in octaves.items())

    def _background_db(self, world: World) -> float | None:
        """Return the A-weighted background; None where nothing is known of it."""
        told = self.design.noise
        if told is None:
            return None
        if told.octaves:
            return noise.weighted_db(_levels(world, told.octaves))
        if told.level_db is not None:
            return world(told.level_db)
        if told.nc is not None:
            low, high = noise.criterion_weighted_db(told.nc)
        elif told.nr is not None:
            low, high = noise.rating_weighted_db(told.nr)
        else:
            return None
        share = self.once("by number", lambda: assumed(0.0, 1.0, "", BY_NUMBER))
        return (low + high) / 2.0 + world(share) * (high - low) / 2.0

    @property
    def is_weighted_alone(self) -> bool:
        """Whether of the background an A-weighted level is known and nothing that a curve is laid on."""
        told = self.told()
        number = told.nr if self.design.project.reference == "critical" else told.nc
        return told.level_db is not None and not told.octaves and number is None

    # What stands in the room

    @cached_property
    def sources(self) -> tuple[Humming, ...]:
        """Everything in the room that makes noise; raises `Missing` where the file leaves it open."""
        told, found = self.told(), []
        if not told.sources and told.at.get("sources") is None:
            raise Missing(told, "sources")
        for one in told.sources:
            if not one.octaves and one.level_db is None:
                raise Missing(one, "level")
            found.append(Humming(one.id, need(one.position, one, "position"), one.octaves, one.level_db))
        return (*found, *self._projected())

    def _projected(self) -> tuple[Humming, ...]:
        missing = unsaid(self.design, "picture")
        if missing is not None:
            raise missing
        picture = self.design.picture
        projector = picture.projector if picture is not None else None
        if projector is None:
            if picture is not None and picture.kind == "projection":
                raise Missing(picture, "projector")
            return ()
        product = need(projector.product, projector, "product")
        data = need(product.picture, product, "picture")
        return (
            Humming(projector.id, need(projector.lens, projector, "lens"), None, need(data.noise_db, data, "noise")),
        )

    def at_seat(self, seat: Seat) -> Figure:
        """A-weighted level of everything that makes noise, at a seat's ear."""
        sources = self.sources

        def compute(world: World) -> float:
            background = self._background_db(world)
            if background is None:
                world.assume(ALONE)
            heard = [self._heard_db(world, one, seat) for one in sources]
            return level.incoherent_db([*heard, *([background] if background is not None else [])])

        return self.figure("noise at the ear", "dB", compute, seat)

    def untold(self) -> Missing | None:
        """Return what is missing of the octaves of whatever is known by octave: the background, or a source."""
        told = self.told()
        every: tuple[Noise | NoiseSource, ...] = (told, *told.sources)
        return next((missing for one in every if (missing := _unheard(one, one.octaves)) is not None), None)

    def loudest(self, seat: Seat) -> str:
        """Return what brings the most of the noise at a seat; empty where that is the background."""
        heard = [(self._heard_db(self.world, one, seat), one.ident) for one in self.sources]
        background = self._background_db(self.world)
        if not heard:
            return ""
        level_db, ident = max(heard)
        return ident if background is None or level_db > background else ""

    def _heard_db(self, world: World, source: Humming, seat: Seat) -> float:
        far = math.dist(world.xyz(source.place), world.xyz(need(seat.ear, seat, "ear")))
        if far < TOUCHING_M:
            raise Refused("what makes the noise stands where the ear is")
        at_1m = noise.weighted_db(_levels(world, source.octaves)) if source.octaves else None
        if at_1m is None:
            # One of the two is there: what has neither was asked for.
            at_1m = world(source.weighted) if source.weighted is not None else 0.0
        return noise.in_room_db(at_1m, far, self._absorption_m2(world))

    @cached_property
    def _knows_decay(self) -> bool:
        """Whether the file tells what the room is lined with, so that its own decay is known."""
        try:
            self.figures.decaying.mid_s(self.world)
        except (Missing, Refused):
            return False
        return True

    def _absorption_m2(self, world: World) -> float:
        if self._knows_decay:
            decay_s = self.figures.decaying.mid_s(world)
        else:
            decay_s = world(self.once("decay", lambda: assumed(*DECAY)))
        return noise.absorption_m2(self.figures.space.volume_m3(world), decay_s)


def _unheard(of: Noise | NoiseSource, octaves: Mapping[float, Quantity] | None) -> Missing | None:
    if not octaves:
        return None
    return next((Missing(of, f"octaves.{name}") for name, band in BANDS.items() if band not in octaves), None)


def _levels(world: World, octaves: Mapping[float, Quantity]) -> dict[float, float]:
    return {band: world(found) for band, found in octaves.items()}
