"""Arrival times, the delays to enter, and levels by distance."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from roomlint.design.base import Missing, need
from roomlint.figures import delay, settings
from roomlint.figures.direction import free_field_level_db
from roomlint.figures.domain import Refused
from roomlint.measure.view import View

if TYPE_CHECKING:
    from collections.abc import Iterator

    from roomlint.design.base import Pair
    from roomlint.design.listening import Loudspeaker, Picture, Seat, Subwoofer
    from roomlint.design.products import ProcessorData
    from roomlint.design.record import Setting
    from roomlint.design.supply import Processor
    from roomlint.measure.figure import Figure
    from roomlint.measure.world import World

TOUCHING_M = 0.05
"""Nearer than this an ear and a loudspeaker are in one place, and a level there has no meaning."""
MS_PER_M = 6.0
"""No length moves a time of arrival by more than this a metre: twice the way at the speed of sound."""
USUAL_CROSSOVER_HZ = 80.0
ALIGNED = "delays set for the reference seat where none is entered"
UNDELAYED = "no delay entered for the sound"


class Delays(View):
    """Times of arrival."""

    def far_m(self, world: World, source: Loudspeaker | Subwoofer, seat: Seat) -> float:
        """Return the distance from a source to a seat's ear in a world, m."""
        key = ("far", source, seat)
        return world.once(key, lambda w: self.figures.angles.distance_m(w, source, seat))

    def farthest_m(self, world: World, seat: Seat) -> float:
        """Return the distance of the loudspeaker farthest from a seat, m; every loudspeaker must have its place."""
        return world.once(
            ("farthest", seat), lambda w: max(self.far_m(w, speaker, seat) for speaker in self.design.loudspeakers)
        )

    def to_enter(self, speaker: Loudspeaker, seat: Seat) -> Figure:
        """Delay that makes a loudspeaker arrive with the farthest one at a seat, ms."""
        return self.figure(
            "delay to enter", "ms", lambda w: self._to_enter(w, speaker, seat), speaker, seat, per_m=MS_PER_M
        )

    def entered_or_needed(self, speaker: Loudspeaker, seat: Seat) -> Figure:
        """Return the delay that the processor has to give: what is entered where that is more than what is needed."""
        needed = self.to_enter(speaker, seat)
        setting = self.setting_of(speaker)
        entered = setting.delay_s if setting is not None else None
        if entered is None or 1e3 * entered.value <= needed.value:
            return needed
        return self.figure("delay entered", "ms", lambda w: 1e3 * w(entered), speaker)

    def _to_enter(self, world: World, speaker: Loudspeaker, seat: Seat) -> float:
        later_m = self.farthest_m(world, seat) - self.far_m(world, speaker, seat)
        return 1e3 * later_m / self.figures.space.sound_speed_m_s(world)

    def step(self, speaker: Loudspeaker, seat: Seat) -> Figure:
        """Delay to enter rounded to the processor's step where its sheet gives one, ms."""
        data = self.processor_data()
        size = data.delay_step_s if data is not None else None
        if size is None:
            return self.to_enter(speaker, seat)
        return self.to_enter(speaker, seat).then(
            "delay to enter, in the processor's steps", "ms", lambda ms: delay.rounded_to_step(ms, 1e3 * size.value)
        )

    def distance_step(self, speaker: Loudspeaker, seat: Seat) -> Figure:
        """Distance to enter rounded to the processor's step where its sheet gives one, m."""
        data, far = self.processor_data(), self.figures.angles.distance(speaker, seat)
        size = data.distance_step_m if data is not None else None
        if size is None:
            return far
        return far.then(
            "distance to enter, in the processor's steps", "m", lambda m: delay.rounded_to_step(m, size.value)
        )

    def setting_of(self, source: Loudspeaker | Subwoofer) -> Setting | None:
        """Return what is entered for a source, if anything is."""
        return next((setting for setting in self.design.calibration.settings if setting.id == source.id), None)

    def entered_ms(self, world: World, speaker: Loudspeaker | Subwoofer) -> float | None:
        """Return the delay that is in force for a loudspeaker, by delay or by distance; None when none is entered."""
        setting = self.setting_of(speaker)
        if setting is None:
            return None
        if setting.delay_s is not None:
            return 1e3 * world(setting.delay_s)
        if setting.distance_m is None:
            return None
        distances = [world(other.distance_m) for other in self.design.calibration.settings if other.distance_m]
        speed = self._processor_speed_m_s(world)
        return delay.distance_as_delay_ms(world(setting.distance_m), max(distances), speed)

    def _processor_speed_m_s(self, world: World) -> float:
        data = self.processor_data()
        if data is not None and data.speed_of_sound_m_s is not None:
            return world(data.speed_of_sound_m_s)
        return self.figures.space.sound_speed_m_s(world)

    def _in_force_ms(self, world: World, speaker: Loudspeaker) -> float:
        """Return the delay in force: the one entered, or else the one that the drawing asks for."""
        entered = self.entered_ms(world, speaker)
        if entered is not None:
            return entered
        world.assume(ALIGNED)
        return self._to_enter(world, speaker, self.reference())

    def processor(self) -> Processor:
        """Return the processor, or raise `Missing`."""
        return need(self.design.processor, self.design, "electronics.processor")

    def processor_data(self) -> ProcessorData | None:
        """Return the processor's sheet, when there is one."""
        processor = self.design.processor
        product = processor.product if processor is not None else None
        return product.processor if product is not None else None

    def needed_processor_data(self) -> ProcessorData:
        """Return the processor's sheet, or raise `Missing`."""
        processor = self.processor()
        product = need(processor.product, processor, "product")
        return need(product.processor, product, "processor")

    def range_ms(self) -> float:
        """Return the longest delay that the processor can set, ms."""
        data = self.needed_processor_data()
        return 1e3 * need(data.delay_range_s, data, "delay_range").value

    def entered_error(self, speaker: Loudspeaker, setting: Setting, seat: Seat) -> Figure:
        """How far the entered delay is from the one with which it arrives with the others as they are entered, ms."""
        own = need(setting.delay_s, setting, "delay")

        def compute(world: World) -> float:
            return abs(1e3 * world(own) - self._agreeing_ms(world, speaker, seat))

        return self.figure("entered delay against the drawing", "ms", compute, per_m=MS_PER_M)

    def agreeing(self, speaker: Loudspeaker, seat: Seat) -> Figure:
        """Delay that makes a loudspeaker arrive with the others as they are entered, ms.

        Rounded to the processor's step where its sheet gives one; below zero none is short enough.
        """
        exact = self.figure(
            "delay to enter", "ms", lambda w: self._agreeing_ms(w, speaker, seat), speaker, per_m=MS_PER_M
        )
        data = self.processor_data()
        size = data.delay_step_s if data is not None else None
        if size is None:
            return exact
        return exact.then(
            "delay to enter, in the processor's steps", "ms", lambda ms: delay.rounded_to_step(ms, 1e3 * size.value)
        )

    def _agreeing_ms(self, world: World, speaker: Loudspeaker, seat: Seat) -> float:
        return self._common_ms(world, seat) - self._way_ms(world, self.far_m(world, speaker, seat))

    def _way_ms(self, world: World, far_m: float) -> float:
        return delay.travel_ms(far_m, self.figures.space.sound_speed_m_s(world))

    def _common_ms(self, world: World, seat: Seat) -> float:
        return world.once(("common", seat), lambda w: self._find_common_ms(w, seat))

    def _find_common_ms(self, world: World, seat: Seat) -> float:
        """Return when most loudspeakers arrive by way and delay, ms; without an entry one counts with the farthest."""
        latest = self._way_ms(world, self.farthest_m(world, seat))
        arrivals = []
        for one in self.design.loudspeakers:
            entered = self.entered_ms(world, one)
            far = self.far_m(world, one, seat)
            arrivals.append(latest if entered is None else self._way_ms(world, far) + entered)
        return delay.common_arrival_ms(arrivals, latest)

    def distance_error(self, speaker: Loudspeaker, setting: Setting, seat: Seat) -> Figure:
        """How far the entered distance is from the one in the drawing, m."""
        entered = need(setting.distance_m, setting, "distance")
        return self.figure(
            "entered distance against the drawing",
            "m",
            lambda w: abs(w(entered) - self.far_m(w, speaker, seat)),
            per_m=2.0,
        )

    def entries_apart(self, setting: Setting) -> Figure:
        """How far an entered delay and an entered distance of one loudspeaker contradict each other, ms."""
        own, far = need(setting.delay_s, setting, "delay"), need(setting.distance_m, setting, "distance")

        def compute(world: World) -> float:
            distances = [world(other.distance_m) for other in self.design.calibration.settings if other.distance_m]
            by_distance = delay.distance_as_delay_ms(world(far), max(distances), self._processor_speed_m_s(world))
            return abs(1e3 * world(own) - by_distance)

        return self.figure("delay against distance", "ms", compute)

    def speed_error(self) -> Figure:
        """How far the processor's speed of sound is from the one at the survey's temperature, %."""
        data = self.needed_processor_data()
        warm = need(self.design.survey.temperature_degc, self.design.survey, "temperature")
        speed, at = data.speed_of_sound_m_s, data.assumed_temperature_degc
        if speed is None:
            need(at, data, "speed_of_sound")

        def compute(world: World) -> float:
            taken = world(speed) if speed is not None else delay.speed_of_sound_m_s(world(at) if at is not None else 0)
            return 100.0 * abs(taken / delay.speed_of_sound_m_s(world(warm)) - 1.0)

        return self.figure("error of the speed of sound", "%", compute)

    def pair_arrival(self, pair: Pair[Loudspeaker], seat: Seat) -> Figure:
        """How far apart in time left and right arrive at a seat with the delays in force, ms."""
        reference = self.reference()
        left, right = pair.left, pair.right

        def compute(world: World) -> float:
            speed = self.figures.space.sound_speed_m_s(world)
            apart = delay.travel_ms(self.far_m(world, left, seat) - self.far_m(world, right, seat), speed)
            if self.entered_ms(world, left) is None and self.entered_ms(world, right) is None:
                # Both count from the farthest loudspeaker, which drops out of their difference and needs no place.
                world.assume(ALIGNED)
                ahead = self.far_m(world, right, reference) - self.far_m(world, left, reference)
                return abs(apart + delay.travel_ms(ahead, speed))
            return abs(apart + self._in_force_ms(world, left) - self._in_force_ms(world, right))

        return self.figure("time between left and right", "ms", compute, per_m=2.0 * MS_PER_M)

    def spread(self, seat: Seat) -> Figure:
        """Time between the first and the last arrival at a seat with the delays in force, ms."""
        speakers = self.design.loudspeakers

        def compute(world: World) -> float:
            speed = self.figures.space.sound_speed_m_s(world)
            delays = [self._in_force_ms(world, speaker) for speaker in speakers]
            return delay.arrival_spread_ms([self.far_m(world, speaker, seat) for speaker in speakers], delays, speed)

        return self.figure("spread of the arrivals", "ms", compute, per_m=2.0 * MS_PER_M)

    def reference(self) -> Seat:
        """Return the seat that delays are set for."""
        seats = self.design.seats
        if len(seats) == 1:
            return seats[0]
        for seat in seats:
            if seat.reference:
                return seat
        raise Missing(self.design, "seats[].reference")

    def against_centre(self, speaker: Loudspeaker, centre: Loudspeaker, seat: Seat) -> Figure:
        """How much nearer or farther a surround is than the centre, %, without sign."""

        def compute(world: World) -> float:
            own, middle = self.far_m(world, speaker, seat), self.far_m(world, centre, seat)
            if middle < TOUCHING_M:
                raise Refused("the centre loudspeaker stands where the ear is")
            return 100.0 * abs(own / middle - 1.0)

        return self.figure("difference from the centre's distance", "%", compute)

    def gain_over_reference(self, speaker: Loudspeaker, seat: Seat) -> Figure:
        """How much louder a loudspeaker's direct sound is at a seat than at the reference seat, free field, dB."""
        reference = self.reference()

        def compute(world: World) -> float:
            near = self.far_m(world, speaker, seat)
            if near < TOUCHING_M:
                raise Refused("the loudspeaker stands where the ear is")
            return free_field_level_db(near, self.far_m(world, speaker, reference))

        return self.figure("level over that at the reference seat", "dB", compute)

    def sound_ahead(self, picture: Picture) -> Figure:
        """How much earlier the sound leaves the chain than the picture, ms; negative is late."""
        projected = picture.projector if picture.projector is not None else picture
        product = need(projected.product, projected, "product")
        sheet = need(product.picture, product, "picture")
        video = need(sheet.video_latency_s, sheet, "video_latency")
        data = self.needed_processor_data()
        audio = need(data.audio_latency_s, data, "audio_latency")

        def compute(world: World) -> float:
            world.assume(UNDELAYED)
            return 1e3 * (world(video) - world(audio))

        return self.figure("time that the sound is ahead of the picture", "ms", compute)

    def subwoofer_late(self, subwoofer: Subwoofer, seat: Seat) -> Figure:
        """How much later a subwoofer arrives at a seat than the front loudspeakers with the delays in force, ms.

        Against the mean of the front pair and the centre, as far as they are there; negative is early. The delay of the
        subwoofer's own filters is not in the file and left out.
        """
        fronts = [speaker for speaker in self.design.loudspeakers if speaker.label in {"M+030", "M-030", "M+000"}]
        own = need(self.figures.bass.delay(subwoofer), subwoofer, "delay")
        if not fronts:
            raise Missing(self.design, "loudspeakers")

        def compute(world: World) -> float:
            speed = self.figures.space.sound_speed_m_s(world)
            arrivals = [
                1e3 * self.far_m(world, speaker, seat) / speed + self._in_force_ms(world, speaker) for speaker in fronts
            ]
            at = 1e3 * self.far_m(world, subwoofer, seat) / speed + 1e3 * world(own)
            return at - math.fsum(arrivals) / len(arrivals)

        return self.figure("arrival of the subwoofer after the fronts", "ms", compute, per_m=2.0 * MS_PER_M)

    def in_step_ms(self) -> float:
        """Return a quarter of a period at the highest crossover entered for a loudspeaker, at 80 Hz without one, ms."""
        shared = self.figures.bass.highest_shared()
        return settings.quarter_period_ms(shared.value if shared is not None else USUAL_CROSSOVER_HZ)

    def other_seats(self) -> Iterator[Seat]:
        """Yield the seats that the room is not calibrated for."""
        if len(self.design.seats) > 1:
            reference = self.reference()
            yield from (seat for seat in self.design.seats if seat is not reference)
