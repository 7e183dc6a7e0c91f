"""What is entered in the processor for distance and time."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from roomlint.review import (
    LOUDSPEAKERS,
    ROOM,
    SUBWOOFERS,
    Level,
    Missing,
    No,
    Window,
    Windows,
    at_most,
    between,
    computed,
    found,
    need,
    practice,
    rule,
    standard,
)

from ..layout import PLACED, with_a_picture
from . import AIR, CHANNELS_ALIKE, TUTORIAL, processor_stands

if TYPE_CHECKING:
    from roomlint.design.listening import Loudspeaker, Subwoofer
    from roomlint.design.model import Design
    from roomlint.design.record import Setting
    from roomlint.review import Answer, Applies, Figure, Room


NOTED_MS: Final = 0.025


def setting_of(room: Room, speaker: Loudspeaker) -> Setting:
    """Return what is entered for a loudspeaker; what is not in the file is wanted."""
    setting = room.figures.delays.setting_of(speaker)
    if setting is None:
        raise Missing(room.design, "calibration.settings")
    return setting


def _by_delay(room: Room, speaker: Loudspeaker) -> Applies:
    setting = setting_of(room, speaker)
    if setting.delay_s is None and setting.distance_m is not None:
        return No("a distance is entered for it instead of a delay")
    return True


def _by_distance(room: Room, speaker: Loudspeaker) -> Applies:
    setting = setting_of(room, speaker)
    if setting.distance_m is None and setting.delay_s is not None:
        return No("a delay is entered for it instead of a distance")
    return True


def _in_step(room: Room, _: Subwoofer) -> Windows:
    quarter = room.figures.delays.in_step_ms()
    return Windows(Window(-quarter, quarter, "ms"))


def _range(room: Room, _: Loudspeaker) -> Windows:
    return Windows(Window(None, room.figures.delays.range_ms(), "ms"))


@rule(
    "distance.delay-range",
    level=Level.ERROR,
    basis=(practice("the farthest loudspeaker gets no delay, each nearer one the difference"), AIR),
    each=LOUDSPEAKERS,
    window=computed("ms", "at most the delay range on the processor's sheet", _range),
    says="needs, or has entered, {figure} of delay; the processor gives {limit}",
    cure=("position",),
    at="position",
    since="0.1.0",
)
def delay_range(room: Room, speaker: Loudspeaker) -> Figure:
    """The processor can set the delay that each loudspeaker needs.

    Why: A loudspeaker that cannot be delayed enough is heard first, and everything moves toward it.

    How decided: (Largest distance minus own distance) over the speed of sound at the survey's temperature, at the
    reference seat, or the delay entered where that is more, against the delay range on the processor's sheet.

    Remedy: Move the nearest loudspeaker away or the farthest nearer, or choose a processor with a longer range.

    When to waive: Never for the front; for a far surround, when the missing time is below a millisecond.
    """
    return room.figures.delays.entered_or_needed(speaker, room.reference_seat)


@rule(
    "distance.delay-entered",
    level=Level.WARNING,
    basis=(TUTORIAL, CHANNELS_ALIKE, AIR),
    each=LOUDSPEAKERS,
    when=_by_delay,
    window=at_most(0.1, "ms", note=NOTED_MS),
    says={
        "fail": "the delay entered is {figure} off the drawing; {wanted} wanted",
        "late": "arrives {figure} after the others by the drawing, and no delay is short enough: look at its place",
    },
    after=("file.delay-and-distance", *PLACED),
    at="position",
    since="0.1.0",
)
def delay_entered(room: Room, speaker: Loudspeaker) -> Answer:
    """The delay entered for a loudspeaker is the one that its position asks for.

    Why: A tenth of a millisecond between loudspeakers that play the same thing puts the first notch at 5 kHz.

    How decided: Distance over the speed of sound plus the delay entered, at the reference seat, against that of the
    loudspeaker in the middle of all, so that one wrong entry or place is told once; of two, against the farther one.
    One of which nothing is entered counts as set by the drawing. Beyond 0.1 ms a warning, beyond 0.025 ms (about one
    sample) a note. A coarse survey makes this a review: measure again or align by ear and instrument.

    Remedy: Enter the computed delay, or correct the position in the file.

    When to waive: Delays set by acoustic measurement, which knows better than the drawing.
    """
    setting, seat = setting_of(room, speaker), room.reference_seat
    delays = room.figures.delays
    error, wanted = delays.entered_error(speaker, setting, seat), delays.agreeing(speaker, seat)
    said = "late" if wanted.value < -NOTED_MS else ""
    return found(error, place=setting.place_of("delay"), said=said, wanted=wanted)


@rule(
    "distance.entered",
    level=Level.WARNING,
    basis=practice("0.05 and 0.15 m between entry and drawing, a choice of this rule book; 0.15 m is 0.44 ms"),
    each=LOUDSPEAKERS,
    when=_by_distance,
    window=at_most(0.15, "m", note=0.05),
    says="the distance entered is {figure} off the drawing; {distance} wanted",
    after=("file.delay-and-distance", *PLACED),
    at="position",
    since="0.1.0",
)
def entered(room: Room, speaker: Loudspeaker) -> Answer:
    """The distance entered for a loudspeaker is the one in the drawing.

    Why: The processor turns distances into delays; 0.1 m is 0.29 ms.

    How decided: Entered distance against the straight distance to the reference seat's ear. Beyond 0.15 m a warning,
    beyond 0.05 m a note; both are our choice.

    Remedy: Enter the computed distance, or correct the position in the file.

    When to waive: Distances set by acoustic measurement, which counts delays inside active loudspeakers.
    """
    setting, seat = setting_of(room, speaker), room.reference_seat
    error = room.figures.delays.distance_error(speaker, setting, seat)
    return found(error, place=setting.place_of("distance"), distance=room.figures.delays.distance_step(speaker, seat))


@rule(
    "distance.sound-speed",
    level=Level.NOTE,
    basis=AIR,
    each=ROOM,
    when=processor_stands,
    window=at_most(1.0, "%"),
    says="the processor's speed of sound is {figure} off the room's; {window} wanted",
    at="electronics.processor",
    since="0.1.0",
)
def sound_speed(room: Room, _design: Design) -> Figure:
    """The processor's speed of sound fits the room's temperature to one per cent.

    Why: Distances that are entered right become delays that are wrong.

    How decided: The speed, or the temperature, that the processor's sheet says it assumes, against
    343.2 sqrt(T / 293.15 K) at the survey's temperature.

    Remedy: Enter delays instead of distances, or correct the distances by the ratio.

    When to waive: Small rooms, where one per cent of the differences stays below a tenth of a millisecond.
    """
    return room.figures.delays.speed_error()


@rule(
    "distance.sound-picture",
    level=Level.WARNING,
    basis=standard(
        "ITU-R BT.1359-1",
        "considering g and recommends 2",
        edition="1998",
        read=True,
        note="45 ms early and 125 ms late are noticed, 90 and 185 the limit; read in a copy",
    ),
    each=ROOM,
    when=with_a_picture,
    window=between(-125.0, 45.0, "ms", error=(-185.0, 90.0)),
    says={
        "above": "the sound comes {figure} before the picture; {window} goes unnoticed",
        "below": "the sound is behind the picture ({figure}); {window} goes unnoticed",
    },
    at="picture",
    since="0.1.0",
)
def sound_picture(room: Room, _design: Design) -> Figure:
    """The sound is neither noticeably ahead of the picture nor behind it.

    Why: Lips that move before or after the words tire everybody, early sound sooner than late.

    How decided: The picture's latency less the processor's, from their sheets; the way through the room, 3 ms a metre,
    is left out. Beyond 45 ms early or 125 ms late a warning, beyond 90 and 185 an error.

    Remedy: Enter the difference as sound delay, or choose a picture setting with less processing.

    When to waive: The delay is set by measurement at hand-over.
    """
    return room.figures.delays.sound_ahead(need(room.design.picture, room.design, "picture"))


@rule(
    "distance.subwoofer-arrival",
    level=Level.NOTE,
    basis=practice(
        "in step within a quarter of a period at the crossover: 3.1 ms at 80 Hz; a choice of this rule book"
    ),
    each=SUBWOOFERS,
    window=computed(
        "ms", "a quarter of a period at the loudspeakers' highest crossover, at 80 Hz where none is entered", _in_step
    ),
    says={
        "above": "arrives {figure} after the fronts; {window} keeps them in step",
        "below": "arrives before the fronts ({figure}); {window} keeps them in step",
    },
    at="position",
    since="0.2.0",
)
def subwoofer_arrival(room: Room, subwoofer: Subwoofer) -> Figure:
    """A subwoofer arrives in step with the fronts around their crossover.

    Why: A quarter of a period apart the two no longer add up; half a period apart they cancel, and the note is gone.

    How decided: Distance over the speed of sound plus the delay entered, at the reference seat, less the mean of the
    front loudspeakers with theirs, against a quarter of a period at the highest crossover entered for a loudspeaker:
    3.1 ms at 80 Hz, which is taken where none is. The delay of filters inside the subwoofer is not known to the file: a
    measurement at hand-over decides.

    Remedy: Change the subwoofer's delay by the figure, then measure the crossover's range.

    When to waive: Set by measurement, with the response through the crossover on file.
    """
    return room.figures.delays.subwoofer_late(subwoofer, room.reference_seat)
