"""Where loudspeakers and subwoofers meet: reach, crossover, low-pass, polarity."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from roomlint.review import (
    LOUDSPEAKERS,
    SOURCES,
    SUBWOOFERS,
    Level,
    Missing,
    No,
    at_least,
    at_most,
    fails,
    found,
    labelled,
    passes,
    practice,
    rule,
    standard,
    unsaid,
)

if TYPE_CHECKING:
    from roomlint.design.listening import Loudspeaker, Subwoofer
    from roomlint.design.quantity import Quantity
    from roomlint.review import Answer, Applies, Figure, Room, Says, Subjects
    from roomlint.review.subjects import Source


MOST_HZ: Final = 110.0
SCREEN: Subjects[Loudspeaker] = labelled("M+000", "M+030", "M-030")


def _meets_a_subwoofer(room: Room, _: Loudspeaker) -> Applies:
    if room.design.subwoofers:
        return True
    missing = unsaid(room.design, "subwoofers")
    if missing is not None:
        raise missing
    return No("the room has no subwoofer to hand over to")


def _crossover(room: Room, speaker: Loudspeaker) -> Quantity:
    """Return the crossover entered for a loudspeaker; what is not in the file is wanted."""
    entered = room.figures.bass.crossover(speaker)
    if entered is None:
        setting = room.figures.delays.setting_of(speaker)
        raise Missing(setting, "crossover") if setting is not None else Missing(room.design, "calibration.settings")
    return entered


def _highest(room: Room) -> Quantity:
    crossover = room.figures.bass.highest_crossover()
    if crossover is None:
        raise Missing(room.design, "calibration.settings")
    return crossover


def _in_reach(room: Room, speaker: Loudspeaker) -> Applies:
    if _crossover(room, speaker).value <= MOST_HZ:
        return True
    return No("its crossover lies above the modes that are computed")


@rule(
    "bass.crossover-reach",
    level=Level.WARNING,
    basis=practice("a loudspeaker must reach below its crossover, by half an octave for choice"),
    each=LOUDSPEAKERS,
    when=_meets_a_subwoofer,
    window=at_least(1.0, "", note=1.5),
    says="crosses over at {figure} times its own lower limit; {window} wanted",
    at="product",
    since="0.1.0",
)
def crossover_reach(room: Room, speaker: Loudspeaker) -> Figure:
    """A loudspeaker reaches below its crossover to the subwoofers.

    Why: Between its own lower limit and the crossover nobody plays.

    How decided: Crossover frequency over the lower limit of the product: under 1 is a warning, under 1.5 a note.

    Remedy: Raise the crossover, up to about 120 Hz, or choose a product that reaches lower.

    When to waive: Measured response shows no hole.
    """
    return room.figures.bass.crossover_ratio(speaker, _crossover(room, speaker))


@rule(
    "bass.crossover-high",
    level=Level.NOTE,
    basis=practice("above 120 Hz a subwoofer is heard as a place; above 200 Hz voices come from it"),
    each=LOUDSPEAKERS,
    when=_meets_a_subwoofer,
    window=at_most(120.0, "Hz"),
    says="crosses over at {figure}, where the subwoofer is heard as a place; {window} wanted",
    at="product",
    since="0.2.0",
)
def crossover_high(room: Room, speaker: Loudspeaker) -> Figure:
    """No loudspeaker hands over to the subwoofers above 120 Hz.

    Why: The higher the crossover, the easier the ear finds the subwoofer, and the more of a voice comes from it.

    How decided: The crossover entered against 120 Hz, the upper end of the low-frequency channel.

    Remedy: Choose a product that reaches lower, or stand the subwoofer near the loudspeaker.

    When to waive: The subwoofer stands beside the loudspeaker that it helps.
    """
    return room.figures.bass.crossover_figure(_crossover(room, speaker))


@rule(
    "bass.subwoofer-reach",
    level=Level.WARNING,
    basis=practice("a subwoofer must play up to every crossover above it, an octave beyond for choice"),
    each=SUBWOOFERS,
    window=at_least(1.0, "", note=1.5),
    says="plays up to {figure} times the highest crossover ({crossover}); {window} wanted",
    at="product",
    since="0.1.0",
)
def subwoofer_reach(room: Room, subwoofer: Subwoofer) -> Answer:
    """A subwoofer plays up to the highest crossover of the loudspeakers.

    Why: Bass sent to it above its own limit is lost; one small surround with a high crossover is enough for that.

    How decided: Upper limit of the product over the highest crossover entered: under 1 is a warning, under 1.5 a note,
    for the filter's slope needs room.

    Remedy: Lower the crossover where the loudspeaker allows it, or choose a subwoofer that plays higher.

    When to waive: Measured response shows no hole.
    """
    crossover = _highest(room)
    view = room.figures.bass
    return found(view.upper_reach(subwoofer, crossover), crossover=view.crossover_figure(crossover))


@rule(
    "bass.low-end",
    level=Level.WARNING,
    basis=(
        standard("ITU-R BS.775", "annex 7", read=False, note="low-frequency effects are recorded from 20 Hz up"),
        practice("30 Hz is where most of it ends at home, 40 Hz where it is missed; a choice of this rule book"),
    ),
    each=SUBWOOFERS,
    window=at_most(40.0, "Hz", note=30.0),
    says="plays down to {figure} only; {window} wanted",
    at="product",
    since="0.3.0",
)
def low_end(room: Room, subwoofer: Subwoofer) -> Figure:
    """A subwoofer plays as low as the channel that it is there for.

    Why: What is recorded below its limit is heard as a thump of its own port, or not at all.

    How decided: The lower limit of its band by its sheet: above 40 Hz a warning, above 30 Hz a note. What the room adds
    down there is not counted; it may help by some decibels, or by none.

    Remedy: A subwoofer that plays lower, or one of another kind beside it.

    When to waive: A room for music alone, by the client's word.
    """
    return room.figures.bass.lower_limit(subwoofer)


def _has_low_pass(_: Room, subwoofer: Subwoofer) -> Applies:
    return No("its own low-pass is off") if subwoofer.no_low_pass else True


@rule(
    "bass.low-pass",
    level=Level.WARNING,
    basis=practice("a low-pass of its own below the crossover cuts a hole; half an octave above for choice"),
    each=SUBWOOFERS,
    when=_has_low_pass,
    window=at_least(1.0, "", note=1.5),
    says="its own low-pass cuts at {figure} times the highest crossover ({crossover}); {window} wanted",
    after=("bass.subwoofer-reach",),
    at="low_pass",
    since="0.2.0",
)
def low_pass(room: Room, subwoofer: Subwoofer) -> Answer:
    """A subwoofer's own low-pass lies above the crossover that the processor makes.

    Why: Two low-passes in a row cut a hole below the crossover, and each adds its delay.

    How decided: The low-pass over the highest crossover entered: under 1 is a warning, under 1.5 a note. One that is
    off is written as `none`.

    Remedy: Turn the subwoofer's own filter to its highest position or off.

    When to waive: The processor makes no crossover and the subwoofer's filter is the only one.
    """
    crossover = _highest(room)
    view = room.figures.bass
    return found(view.low_pass_ratio(subwoofer, crossover), crossover=view.crossover_figure(crossover))


@rule(
    "bass.crossover-sum",
    level=Level.NOTE,
    basis=practice("as set at least as loud through the crossover as with one turned round, less 3 dB; our choice"),
    each=SCREEN,
    when=(_meets_a_subwoofer, _in_reach),
    window=at_least(-3.0, "dB"),
    says="through {crossover} it and the subwoofers cancel: {figure} against one turned round; {window} wanted",
    at="position",
    since="0.3.0",
)
def crossover_sum(room: Room, speaker: Loudspeaker) -> Answer:
    """As set, the subwoofers do not work against a main loudspeaker through its crossover.

    Why: A subwoofer of the wrong polarity, or some milliseconds late, takes the loudspeaker's sound away where both
    play.

    How decided: Pressure of all subwoofers, with level, delay, polarity and low-pass as entered, and of the
    loudspeaker, at the reference seat as a sum over the room's modes, half an octave to either side of the crossover
    entered, with filters of the fourth order, both brought to one level; against the same with one of them turned
    round. Computed at decays of 0.3, 0.5 and 0.8 s, or about the measured one, the kindest told. A crossover above
    110 Hz lies beyond the modes that are computed.

    Remedy: Turn the subwoofers' polarity, or set their delay anew by a measurement through the crossover.

    When to waive: A measurement through the crossover shows that it is right.
    """
    crossover = _crossover(room, speaker)
    summed = room.figures.crossing.together(speaker, crossover, room.reference_seat)
    return found(summed, crossover=room.figures.bass.crossover_figure(crossover))


@rule(
    "bass.polarity",
    level=Level.NOTE,
    basis=practice("polarity is turned round only on the strength of a measurement"),
    each=SOURCES,
    says={
        "fail": "its polarity is turned round; keep the measurement that asks for it",
        "fine": "its polarity is as wired",
    },
    at="inverted",
    since="0.2.0",
)
def polarity(room: Room, source: Source) -> Says:
    """No loudspeaker or subwoofer plays with its polarity turned round by accident.

    Why: A front loudspeaker against its neighbours empties the middle; a subwoofer against the fronts cancels around
    the crossover.

    How decided: What stands on the element and what is entered for it in the calibration; twice turned round is none.

    Remedy: Turn it back, or keep the measurement of the crossover on file.

    When to waive: A measurement through the crossover, or at the seats, shows that it is right.
    """
    return fails("fail") if room.figures.bass.inverted(source) else passes("fine")
