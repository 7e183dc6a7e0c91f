"""How long the room rings, by statistics."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from roomlint.review import (
    Cases,
    Level,
    No,
    Window,
    Windows,
    at_most,
    between,
    by_reference,
    found,
    labelled,
    memory,
    practice,
    rule,
    standard,
    tells,
)

from . import ROOM_SHELL

if TYPE_CHECKING:
    from roomlint.design.listening import Loudspeaker
    from roomlint.design.shell import Shell
    from roomlint.review import Answer, Applies, Figure, Room, Subjects

AT_HOME: Final = between(0.2, 0.5, "s")
TOLERANCE_S: Final = 0.05
LOWEST_HZ: Final = 250
MAIN: Subjects[Loudspeaker] = labelled("M+000", "M+030", "M-030")


def _wanted(room: Room, _: Shell) -> Windows:
    if not room.critical:
        return AT_HOME
    nominal = room.figures.decaying.nominal_s()
    return Windows(Window(nominal - TOLERANCE_S, nominal + TOLERANCE_S, "s"))


@rule(
    "decay.mid-band",
    level=Level.NOTE,
    critical_level=Level.WARNING,
    basis=(
        practice("0.2 to 0.5 s at home; a choice of this rule book"),
        standard(
            "Master Handbook of Acoustics", "p. 233: 16 furnished living rooms", edition="6th edition", read=True,
            note="0.35 to 0.45 s",
        ),
        standard("EBU Tech 3276", "2.3: 0.25 (V / 100 m3)^(1/3), +-0.05 s", edition="2nd edition", read=False),
    ),
    each=ROOM_SHELL,
    window=Cases(
        "s", (("at home", AT_HOME), ("for critical listening, by the volume: 0.2 to 0.4 s, +-0.05 s", None)), _wanted
    ),
    says={
        "below": "it rings for {figure}, 0.5 to 2 kHz; {window} wanted; it absorbs too much",
        "above": "it rings for {figure}, 0.5 to 2 kHz; {window} wanted: {least} to {area} of {thickness} wool, {where}",
        "full": "it rings for {figure}, 0.5 to 2 kHz; {window} wanted, more than wool on walls and ceiling does",
    },
    at="walls",
    since="0.3.0",
)  # fmt: skip
def mid_band(room: Room, _shell: Shell) -> Answer:
    """The room rings neither too long nor too short between 500 Hz and 2 kHz.

    Why: A room that rings for long smears speech and blurs where sound comes from; one that hardly rings is tiring.

    How decided: Volume and areas under the real ceiling; absorption of finishes, treatments, openings and seats by
    octave from published tables, each with all that its sources give; a tenth of the floor at the most for other
    furniture; air by ISO 9613-1. The mean over the three octaves by Sabine, Eyring and, where surfaces are square to
    each other, Arau-Puchades; the middle of what they give, their spread and the tables' as its uncertainty. A surface
    without a finish leaves it open; a room in which modes rule up to 350 Hz is left to a person. Panels of mineral wool
    that would do are told, from what the figure asks to what it asks with its uncertainty, and no more than brings it
    half way through the window, with the surfaces that have room for them: those across which least is absorbed first.
    What stands before a wall is not looked at.

    Remedy: Absorbing panels, a carpet or curtains; of a dead room, take some away or set up what scatters.

    When to waive: A measured decay is at hand.
    """
    view = room.figures.decaying
    figure, windows = view.mid(), _wanted(room, _shell)
    low, high = windows.window.low, windows.window.high
    if low is None or high is None or figure.value <= high:
        return figure
    needed = view.needed(high, low)
    if not needed.enough:
        return found(figure, said="full")
    return found(figure, least=needed.least, area=needed.area, thickness=needed.thickness, where=needed.where)


def _square(room: Room, _: Shell) -> Applies:
    if room.figures.decaying.is_square:
        return True
    return No("its surfaces are not square to each other, which the formula for uneven absorption is for")


@rule(
    "decay.uneven",
    level=Level.NOTE,
    basis=practice("formulas that differ by a quarter are no longer of one room; a choice of this rule book"),
    each=ROOM_SHELL,
    when=_square,
    window=at_most(25.0, "%"),
    says="formulas of its decay differ by {figure}, {window} wanted: its absorption lies unevenly",
    at="walls",
    since="0.3.0",
)
def uneven(room: Room, _shell: Shell) -> Figure:
    """What absorbs is spread over all three directions of the room.

    Why: Where floor and ceiling absorb and walls do not, sound goes on between the walls and flutters; no single decay
    says how such a room sounds.

    How decided: Mean decay from 500 Hz to 2 kHz by Sabine, Eyring and Arau-Puchades; the longest less the shortest
    against their mean. They agree where absorption is little and even. Where modes rule up to 350 Hz no formula holds,
    and a person must look.

    Remedy: Treat the surfaces of the direction that has least.

    When to waive: A measured decay falls evenly.
    """
    return room.figures.decaying.spread()


def _above_modes(room: Room, _: Shell) -> Applies:
    if room.figures.decaying.low_band_hz() is not None:
        return True
    return No("single modes rule up to the octave of 250 Hz, and no decay says anything of them")


@rule(
    "decay.low-band",
    level=Level.NOTE,
    basis=memory("a mask that rises to 0.3 s above the nominal at 63 Hz", document="EBU Tech 3276", clause="2.3"),
    each=ROOM_SHELL,
    when=_above_modes,
    window=by_reference(home=at_most(0.3, "s"), critical=at_most(0.15, "s")),
    says="at {octave} it rings for {figure} longer than from 500 Hz to 2 kHz; {window} wanted",
    at="walls",
    since="0.3.0",
)
def low_band(room: Room, _shell: Shell) -> Answer:
    """The room does not ring much longer at 125 or 250 Hz than above.

    Why: A carpet and thin panels take the treble only, and what is left booms.

    How decided: Decay of the lowest octave that lies wholly above the Schroeder frequency, 125 or 250 Hz, less the mean
    of 500 Hz to 2 kHz. Below that frequency modes rule and nothing is said.

    Remedy: Thicker absorbers, or absorbers with an air gap, or panels that move.

    When to waive: Measured on site and found even.
    """
    view = room.figures.decaying
    band = view.low_band_hz() or LOWEST_HZ
    return found(view.low_excess(band), octave=f"{band} Hz")


@rule(
    "decay.schroeder",
    level=Level.NOTE,
    basis=standard("akutek.info", "2000 sqrt(T/V), about 800/sqrt(A)", read=True),
    each=ROOM_SHELL,
    says={"modes": "below {figure} single modes rule; its decay says nothing of the bass"},
    since="0.3.0",
)
def schroeder(room: Room, _shell: Shell) -> Answer:
    """From which frequency on a decay time says something is known.

    Why: Below it the room answers with a few modes, each with a decay of its own; a table of absorption says nothing of
    them.

    How decided: Schroeder's frequency from the volume and the mean decay of 500 Hz to 2 kHz.

    Remedy: Below it place subwoofers and seats by the chapter on bass.

    When to waive: There is nothing to waive; it is told and does not fail.
    """
    return tells("modes", room.figures.decaying.schroeder())


@rule(
    "decay.critical-distance",
    level=Level.NOTE,
    basis=(
        standard("Handbook for Sound Engineers", "p. 1658: critical distance", edition="4th edition", read=True),
        memory("three times that distance, 9.5 dB under the room"),
    ),
    each=MAIN,
    window=at_most(3.0, ""),
    says="the reference seat is {figure} times as far as where direct sound and room are even; {window} wanted",
    cure=("position",),
    at="position",
    since="0.3.0",
)
def critical_distance(room: Room, speaker: Loudspeaker) -> Figure:
    """The reference seat hears a main loudspeaker more than it hears the room.

    Why: Three times as far as the critical distance the direct sound lies 9.5 dB below the room's, and detail goes.

    How decided: Distance over 0.057 sqrt(Q V / T), T the mean decay of 500 Hz to 2 kHz and Q from the coverage angles
    of the loudspeaker's sheet. Indicative in a room that absorbs much; where modes rule up to 350 Hz left to a person.

    Remedy: Sit nearer, treat the room, or take a loudspeaker that directs more.

    When to waive: Diffuse sound is wanted.
    """
    return room.figures.decaying.critical_share(speaker, room.reference_seat)
