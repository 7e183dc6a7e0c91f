"""Arrival times, the delays to enter, and levels by distance, with uncertainty."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from roomlint.design.base import Missing, Value, need
from roomlint.figures import delay
from roomlint.figures.direction import free_field_level_db
from roomlint.measure.figure import Figure, figure
from roomlint.measure.view import View

if TYPE_CHECKING:
    from roomlint.design.listening import Loudspeaker, Picture, Seat
    from roomlint.design.products import ProcessorData
    from roomlint.design.record import Setting
    from roomlint.design.supply import Processor


_TOUCHING_M = 1e-3
"""Nearer than this the level has no meaning."""


class Delays(View):
    """Times of arrival."""

    def _points(self, source: Loudspeaker, seat: Seat) -> tuple[Value, ...]:
        return (*need(seat.ear, seat, "ear").values, *need(source.position, source, "position").values)

    def _distance_m(self, source: Loudspeaker, seat: Seat) -> float:
        # A plain number: finding the farthest of many needs no uncertainty.
        return math.dist(need(source.position, source, "position").xyz, need(seat.ear, seat, "ear").xyz)

    def farthest(self, seat: Seat) -> Loudspeaker:
        """Return the loudspeaker farthest from a seat; every loudspeaker must have its place."""
        return self.once(
            ("farthest", seat.id),
            lambda: max(self.design.loudspeakers, key=lambda speaker: self._distance_m(speaker, seat)),
        )

    def to_enter(self, speaker: Loudspeaker, seat: Seat) -> Figure:
        """Return the delay that makes a loudspeaker arrive with the farthest one at a seat, ms."""
        return self.once(("enter", speaker.id, seat.id), lambda: self._to_enter(speaker, seat))

    def _to_enter(self, speaker: Loudspeaker, seat: Seat) -> Figure:
        space, last = self.figures.space, self.farthest(seat)
        speed = space.sound_speed_m_s

        def compute(*values: float) -> float:
            return max(_later(values[:3], values[6:], values[3:6], speed), 0.0)

        inputs = (*self._points(speaker, seat), *need(last.position, last, "position").values)
        return figure("delay to enter", "ms", compute, *inputs, assumes=space.air_assumption)

    def to_enter_words(self, speaker: Loudspeaker, seat: Seat) -> str:
        """Say which delay to enter, rounded to the processor's step where its sheet gives one."""
        wanted = self.to_enter(speaker, seat).value
        data = self.processor_data()
        step = data.delay_step_s if data is not None else None
        if step is not None:
            wanted = delay.rounded_to_step(wanted, 1e3 * step.value)
        steps = ", in the processor's steps" if step is not None else ""
        return f"The drawing asks for {wanted:.2f} ms more than the farthest loudspeaker has{steps}."

    def setting_of(self, speaker: Loudspeaker) -> Setting | None:
        """Return what is entered for a loudspeaker, if anything is."""
        return next((setting for setting in self.design.calibration.settings if setting.id == speaker.id), None)

    def entered(self, speaker: Loudspeaker) -> float | None:
        """Return the delay that is in force for a loudspeaker in ms, by delay or by distance; None when none is."""
        setting = self.setting_of(speaker)
        if setting is None:
            return None
        if setting.delay_s is not None:
            return 1e3 * setting.delay_s.value
        if setting.distance_m is None:
            return None
        distances = [other.distance_m.value for other in self.design.calibration.settings if other.distance_m]
        return delay.distance_as_delay_ms(setting.distance_m.value, max(distances), self._processor_speed())

    def _processor_speed(self) -> float:
        data = self.processor_data()
        if data is not None and data.speed_of_sound_m_s is not None:
            return data.speed_of_sound_m_s.value
        return self.figures.space.sound_speed_m_s

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

    def entered_error(self, speaker: Loudspeaker, setting: Setting, seat: Seat) -> Figure:
        """Return how far the entered delay is from the one that the positions ask for, relative to the farthest, ms."""
        last, speed = self.farthest(seat), self.figures.space.sound_speed_m_s
        own = need(setting.delay_s, setting, "delay")
        base = self.setting_of(last)
        of_last = Value(0.0) if base is None or base.delay_s is None else base.delay_s

        def compute(*values: float) -> float:
            computed = _later(values[:3], values[6:9], values[3:6], speed)
            return abs(1e3 * (values[9] - values[10]) - computed)

        inputs = (*self._points(speaker, seat), *need(last.position, last, "position").values, own, of_last)
        return figure("entered delay minus computed", "ms", compute, *inputs, assumes=self.figures.space.air_assumption)

    def distance_error(self, speaker: Loudspeaker, setting: Setting, seat: Seat) -> Figure:
        """Return how far the entered distance is from the one in the drawing, m."""
        entered = need(setting.distance_m, setting, "distance")

        def compute(*values: float) -> float:
            return abs(values[6] - math.dist(values[:3], values[3:6]))

        inputs = (*self._points(speaker, seat), entered)
        return figure("entered distance minus computed", "m", compute, *inputs)

    def speed_error(self) -> Figure:
        """Return how far the processor's speed of sound is from the one at the survey's temperature, %."""
        data = self.needed_processor_data()
        warm = need(self.design.survey.temperature_degc, self.design.survey, "temperature")
        assumed = data.speed_of_sound_m_s
        if assumed is None:
            at = need(data.assumed_temperature_degc, data, "speed_of_sound")
            assumed = Value(delay.speed_of_sound_m_s(at.value), at=at.at)

        def compute(speed: float, temperature: float) -> float:
            return 100.0 * abs(speed / delay.speed_of_sound_m_s(temperature) - 1.0)

        return figure("error of the speed of sound", "%", compute, assumed, warm)

    def pair_arrival(self, left: Loudspeaker, right: Loudspeaker, seat: Seat) -> Figure:
        """Return how far apart in time left and right arrive at a seat with the delays in force, ms."""
        speed = self.figures.space.sound_speed_m_s
        reference = self.reference()
        if self.entered(left) is None and self.entered(right) is None:
            # Both count from the farthest loudspeaker, which drops out of their difference and needs no place.
            ahead = self._distance_m(right, reference) - self._distance_m(left, reference)
            extra = delay.travel_ms(ahead, speed)
        else:
            extra = self._in_force(left, reference) - self._in_force(right, reference)

        def compute(*values: float) -> float:
            return abs(_later(values[:3], values[3:6], values[6:], speed) + extra)

        first, other = self._points(left, seat), need(right.position, right, "position").values
        return figure(
            "time between left and right", "ms", compute, *first, *other, assumes=self.figures.space.air_assumption
        )

    def spread(self, seat: Seat) -> Figure:
        """Return the time between the first and the last arrival at a seat with the delays in force, ms."""
        reference = self.reference()
        speakers = self.design.loudspeakers
        speed = self.figures.space.sound_speed_m_s
        delays = [self._in_force(speaker, reference) for speaker in speakers]
        arrivals = delay.arrivals_ms([self._distance_m(speaker, seat) for speaker in speakers], delays, speed)
        first, last = arrivals.index(min(arrivals)), arrivals.index(max(arrivals))

        def compute(*values: float) -> float:
            early = math.dist(values[:3], values[3:6]) / speed * 1e3 + delays[first]
            return abs(math.dist(values[:3], values[6:]) / speed * 1e3 + delays[last] - early)

        near, far = speakers[first], speakers[last]
        inputs = (*self._points(near, seat), *need(far.position, far, "position").values)
        assumes = self.figures.space.air_assumption
        if any(self.entered(speaker) is None for speaker in speakers):
            assumes = (*assumes, "delays set for the reference seat where none is entered")
        return figure("spread of the arrivals", "ms", compute, *inputs, assumes=assumes)

    def _in_force(self, speaker: Loudspeaker, reference: Seat) -> float:
        entered = self.entered(speaker)
        if entered is not None:
            return entered
        later = self._distance_m(self.farthest(reference), reference) - self._distance_m(speaker, reference)
        return delay.travel_ms(later, self.figures.space.sound_speed_m_s)

    def reference(self) -> Seat:
        """Return the seat that delays are set for."""
        seats = self.design.seats
        if len(seats) == 1:
            return seats[0]
        for seat in seats:
            if seat.reference:
                return seat
        raise Missing(self.design, "seats[].reference")

    def rear_distance(self, speaker: Loudspeaker, centre: Loudspeaker, seat: Seat) -> Figure:
        """Return how much nearer or farther a surround is than the centre, %, without sign."""

        def compute(*values: float) -> float:
            own, middle = math.dist(values[:3], values[3:6]), math.dist(values[:3], values[6:])
            if middle <= 0.0:
                raise Refused("the centre loudspeaker stands where the ear is")
            return 100.0 * abs(own / middle - 1.0)

        inputs = (*self._points(speaker, seat), *need(centre.position, centre, "position").values)
        return figure("difference from the centre's distance", "%", compute, *inputs)

    def louder_than_reference(self, seat: Seat) -> Figure:
        """Return by how much the loudspeaker that gains most is louder at a seat than at the reference seat, dB."""
        reference = self.reference()
        speaker = max(
            self.design.loudspeakers,
            key=lambda one: self._distance_m(one, reference) / max(self._distance_m(one, seat), _TOUCHING_M),
        )

        def compute(*values: float) -> float:
            return free_field_level_db(math.dist(values[:3], values[3:6]), math.dist(values[6:], values[3:6]))

        inputs = (*self._points(speaker, seat), *need(reference.ear, reference, "ear").values)
        return figure(f"level of {speaker.id} above that at the reference seat", "dB", compute, *inputs)

    def level_spread(self, speaker: Loudspeaker) -> Figure:
        """Return how much louder a loudspeaker's direct sound is at the nearest seat than at the farthest, dB."""
        found = [(self._distance_m(speaker, seat), seat) for seat in self.design.seats]
        near, far = min(found, key=lambda one: one[0])[1], max(found, key=lambda one: one[0])[1]

        def compute(*values: float) -> float:
            return free_field_level_db(math.dist(values[:3], values[3:6]), math.dist(values[6:], values[3:6]))

        inputs = (*self._points(speaker, near), *need(far.ear, far, "ear").values)
        return figure("level between nearest and farthest seat", "dB", compute, *inputs)

    def sound_ahead(self, picture: Picture) -> Figure:
        """Return how much earlier the sound leaves the chain than the picture, ms; negative is late."""
        shown = picture.projector if picture.projector is not None else picture
        product = need(shown.product, shown, "product")
        sheet = need(product.picture, product, "picture")
        video = need(sheet.video_latency_s, sheet, "video_latency")
        data = self.needed_processor_data()
        audio = need(data.audio_latency_s, data, "audio_latency")
        name = "time that the sound is ahead of the picture"
        return figure(
            name,
            "ms",
            lambda late, sound: 1e3 * (late - sound),
            video,
            audio,
            assumes=("no delay entered for the sound",),
        )


def _later(ear: tuple[float, ...], far: tuple[float, ...], near: tuple[float, ...], speed: float) -> float:
    """Return how much later sound from `far` arrives than from `near`, ms."""
    return 1e3 * (math.dist(ear, far) - math.dist(ear, near)) / speed
