"""What is entered in the processor and what was measured with it in force."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from roomlint.design.listening import Subwoofer
from roomlint.review import (
    LOUDSPEAKERS,
    PAIRS,
    ROOM,
    SOURCES,
    SUBWOOFERS,
    Cases,
    Level,
    No,
    Window,
    Windows,
    at_least,
    at_most,
    between,
    computed,
    fails,
    memory,
    need,
    passes,
    practice,
    rule,
)

from . import at_handover

if TYPE_CHECKING:
    from roomlint.design.listening import Loudspeaker
    from roomlint.design.model import Design
    from roomlint.review import Applies, Figure, Pair, Room, Says
    from roomlint.review.subjects import Source


def _passive(room: Room, speaker: Loudspeaker) -> Applies:
    if room.figures.routing.is_active(speaker):
        return No("it has an amplifier of its own, whose gain is not in the file")
    return True


def _with_subwoofers(room: Room, _: Pair[Loudspeaker]) -> Applies:
    return True if room.figures.commissioning.subwoofers() else No("the room has no subwoofer to hand over to")


HOME: Final = at_most(1.0, "dB", note=0.5)
CRITICAL: Final = at_most(0.5, "dB", note=0.25)
BASS: Final = at_most(3.0, "dB", note=1.5)


def _levels(room: Room, source: Source) -> Windows:
    if isinstance(source, Subwoofer):
        return BASS
    return CRITICAL if room.critical else HOME


def _in_step(room: Room, _: Subwoofer) -> Windows:
    quarter = room.figures.commissioning.in_step_ms()
    return Windows(Window(-quarter, quarter, "ms"))


@rule(
    "handover.entered",
    level=Level.WARNING,
    basis=practice("what is entered is written down, so that it can be entered again"),
    each=SOURCES,
    when=at_handover,
    says={
        "short": "has no {lacks} written down as entered",
        "whole": "has everything entered",
    },
    since="0.3.0",
)
def entered(room: Room, source: Source) -> Says:
    """Delay, level, polarity and crossover of every loudspeaker are written down as entered.

    Why: After an update or a repair the processor is empty, and the room is set up from this list or not at all.

    How decided: A delay or a distance, a level, a polarity, and for loudspeakers beside subwoofers a crossover. What is
    set on a subwoofer itself counts. Whether delays fit the drawing is judged by `distance.delay-entered` and
    `distance.entered`, crossovers by chapter bass.

    Remedy: Read it off the processor and write it down, naught too.

    When to waive: Never; the export of the settings does not tell a person what they should be.
    """
    room.figures.commissioning.settings()
    lacks = room.figures.commissioning.not_entered(source)
    return fails("short", lacks=lacks) if lacks else passes("whole")


@rule(
    "handover.level-measured",
    level=Level.WARNING,
    basis=(
        practice("levels of a home are equal within a decibel"),
        memory("a quarter of a decibel between channels", document="ITU-R BS.1116"),
    ),
    each=SOURCES,
    when=at_handover,
    window=Cases("dB", (("at home", HOME), ("for critical listening", CRITICAL), ("subwoofers", BASS)), _levels),
    says="is {figure} off the reference level as measured; {window} wanted",
    since="0.3.0",
)
def level_measured(room: Room, source: Source) -> Figure:
    """Every loudspeaker and subwoofer measures the reference level at the reference seat.

    Why: The picture of sound leans toward what is louder, and a decibel is heard.

    How decided: The level measured against the calibration's reference level: beyond 1 dB a warning, beyond 0.5 dB a
    note; half of both for critical listening. Subwoofers, whose band holds few modes, 3 dB and 1.5 dB.

    Remedy: Set its level by the difference and measure again.

    When to waive: A taste of the client's, kept in a preset of its own.
    """
    return room.figures.commissioning.level_error(source)


@rule(
    "handover.level-entered",
    level=Level.NOTE,
    basis=practice("4 dB between entry and arithmetic, a choice of this rule book; rooms add 1 to 3 dB"),
    each=LOUDSPEAKERS,
    when=(at_handover, _passive),
    window=between(-4.0, 4.0, "dB"),
    says={
        "above": "is set {figure} higher than sensitivity and distance ask for; look at its wiring and its sheet",
        "below": "is set lower ({figure}) than sensitivity and distance ask for; look at its wiring and its sheet",
    },
    since="0.3.0",
)
def level_entered(room: Room, speaker: Loudspeaker) -> Figure:
    """The level entered for a loudspeaker is about what its sensitivity and its distance ask for.

    Why: A tweeter that does not play, a wrong tap or a crossed pair is first seen as a level that makes no sense.

    How decided: The level entered plus what arrives (sensitivity for 2.83 V less 20 lg of the distance to the reference
    seat), less that of the middle one of the three fronts; without a passive centre, of the front pair's mean, one of
    the pair less the other's. Amplifiers are taken to have equal gain.

    Remedy: Measure the loudspeaker near by, and look at its wiring; or correct the sheet.

    When to waive: Amplifiers of unequal gain, or a loudspeaker in a niche that lifts it.
    """
    return room.figures.commissioning.trim_error(speaker)


@rule(
    "handover.crossovers-alike",
    level=Level.WARNING,
    basis=practice("left and right are crossed over at one frequency"),
    each=PAIRS,
    when=(at_handover, _with_subwoofers),
    window=at_most(1.0, "Hz"),
    says="cross over {figure} apart; the same wanted for both",
    since="0.3.0",
)
def crossovers_alike(room: Room, pair: Pair[Loudspeaker]) -> Figure:
    """The two loudspeakers of a pair cross over at the same frequency.

    Why: Different crossovers turn the phase of one side, and the middle of the stage moves with the note.

    How decided: The crossovers entered for left and right; within 1 Hz they are the same.

    Remedy: Enter the same for both, the higher of the two.

    When to waive: Two different products stand as a pair, and a measurement shows that they need it.
    """
    return room.figures.commissioning.crossovers_apart(pair.left, pair.right)


@rule(
    "handover.crossovers-meet",
    level=Level.WARNING,
    basis=practice("what the loudspeakers leave to the subwoofers, these play"),
    each=SUBWOOFERS,
    when=at_handover,
    window=at_least(1.0, ""),
    says="is crossed over at {figure} times the highest crossover of the loudspeakers; {window} leaves no hole",
    after=("bass.subwoofer-reach",),
    since="0.3.0",
)
def crossovers_meet(room: Room, subwoofer: Subwoofer) -> Figure:
    """A subwoofer plays up to where the loudspeakers hand over to it.

    Why: Between a subwoofer's crossover and a higher one of the loudspeakers nobody plays.

    How decided: The crossover entered for the subwoofer over the highest that is entered for a loudspeaker. What its
    own low-pass does is judged by `bass.low-pass`.

    Remedy: Enter the loudspeakers' highest crossover for the subwoofer, or lower theirs.

    When to waive: Measured response shows no hole.
    """
    return room.figures.commissioning.crossover_ratio(subwoofer)


@rule(
    "handover.polarity",
    level=Level.WARNING,
    basis=practice("every loudspeaker moves outward on a positive pulse, proved by measurement"),
    each=SOURCES,
    when=at_handover,
    says={
        "turned": "measures with negative polarity; turn its wires, or what is entered, round",
        "outward": "measures with positive polarity",
    },
    since="0.3.0",
)
def polarity(room: Room, source: Source) -> Says:
    """Every loudspeaker and subwoofer measures with positive polarity.

    Why: One loudspeaker against the others empties the stage between them; a subwoofer against the fronts makes a hole
    at the crossover.

    How decided: The polarity measured with everything that is entered in force. What is turned round in the processor
    without a measurement is judged by `bass.polarity`.

    Remedy: Exchange the two wires, or turn round what is entered.

    When to waive: A subwoofer whose response through the crossover asks for it, with the measurement on file.
    """
    setting = room.figures.commissioning.setting(source)
    measured = need(setting.measured_polarity, setting, "measured_polarity")
    return fails("turned") if measured == "negative" else passes("outward")


@rule(
    "handover.subwoofer-arrival",
    level=Level.WARNING,
    basis=practice("in step within a quarter of a period at the crossover; a choice of this rule book"),
    each=SUBWOOFERS,
    when=at_handover,
    window=computed("ms", "a quarter of a period at the highest crossover entered, to either side", _in_step),
    says={
        "above": "measures {figure} behind the fronts; {window} keeps them in step",
        "below": "measures ahead of the fronts ({figure}); {window} keeps them in step",
    },
    since="0.3.0",
)
def subwoofer_arrival(room: Room, subwoofer: Subwoofer) -> Figure:
    """A subwoofer arrives in step with the fronts, as measured.

    Why: Filters and amplifiers inside a subwoofer take milliseconds that no drawing knows; half a period apart at the
    crossover it cancels the fronts.

    How decided: The arrival measured at the reference seat less that of the middle one of the fronts, of two their
    mean, with all delays in force, against a quarter of a period at the highest crossover: 3.1 ms at 80 Hz. What the
    drawing alone says is judged by `distance.subwoofer-arrival`.

    Remedy: Change its delay, or the fronts', by the figure, and measure again.

    When to waive: A measured response through the crossover that has no hole.
    """
    return room.figures.commissioning.measured_late(subwoofer)


def _several_subwoofers(room: Room, _: Design) -> Applies:
    return True if len(room.figures.commissioning.subwoofers()) > 1 else No("the room has no two subwoofers")


def _has_a_front_beside(room: Room, speaker: Loudspeaker) -> Applies:
    if any(one is not speaker for one in room.design.labelled("M+030", "M-030", "M+000")):
        return True
    unlabelled = room.figures.arrangement.unlabelled()
    if unlabelled is not None:
        raise unlabelled
    return No("there is no front loudspeaker beside it to compare with")


def _quarter(room: Room, _: Design) -> Windows:
    return Windows(Window(None, room.figures.commissioning.in_step_ms(), "ms"))


@rule(
    "handover.arrival",
    level=Level.WARNING,
    basis=practice("1 ms, where the nearer takes the image, and a note beyond 0.3 ms; choices of this rule book"),
    each=LOUDSPEAKERS,
    when=(at_handover, _has_a_front_beside),
    window=between(-1.0, 1.0, "ms", note=(-0.3, 0.3)),
    says={
        "above": "measures {figure} behind the fronts; {window} wanted",
        "below": "measures ahead of the fronts ({figure}); {window} wanted",
    },
    since="0.3.0",
)
def arrival(room: Room, speaker: Loudspeaker) -> Figure:
    """Every loudspeaker arrives with the fronts at the reference seat, as measured.

    Why: What arrives first takes the image; a delay that was entered for another loudspeaker shows here.

    How decided: The arrival measured with all delays in force less that of the middle one of the three fronts, so that
    one that is off is told once; of two fronts, their mean, and one of them less the other. Beyond 1 ms a warning,
    beyond 0.3 ms a note. What the drawing alone says is judged by `distance.delay-entered`.

    Remedy: Change its delay by the figure and measure again.

    When to waive: A surround that is delayed on purpose.
    """
    return room.figures.commissioning.measured_late(speaker)


@rule(
    "handover.subwoofers-together",
    level=Level.NOTE,
    basis=practice("subwoofers among themselves first; a quarter of a period is a choice of this rule book"),
    each=ROOM,
    when=(at_handover, _several_subwoofers),
    window=computed("ms", "a quarter of a period at the highest crossover entered", _quarter),
    says="its subwoofers measure {figure} apart; {window} keeps them together",
    at="calibration.settings",
    since="0.3.0",
)
def subwoofers_together(room: Room, _design: Design) -> Figure:
    """The subwoofers arrive together at the reference seat, as measured.

    Why: Two that arrive half a period apart cancel each other at the seat that they were bought for.

    How decided: Last less first of the arrivals measured, against a quarter of a period at the highest crossover.

    Remedy: Set them among themselves before the fronts, and measure their sum.

    When to waive: Delays that were chosen for the sum at all seats, with its responses on file.
    """
    return room.figures.commissioning.subwoofers_spread()
