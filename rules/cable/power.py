"""Signals and power: the distance between them, what shares a raceway, and how full it is."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from roomlint.review import Cases, Level, Missing, No, at_least, at_most, computed, fails, need, passes, practice, rule

from ..mains import under_nfpa
from . import APART, CABLES, CAUTION, OTHER_APART, RACEWAYS, holds_something, nfpa, signal

if TYPE_CHECKING:
    from roomlint.design.supply import Cable, Raceway
    from roomlint.review import Applies, Figure, Room, Says, Windows

STRONG: Final = frozenset({"loudspeaker", "trigger", "lighting", "control"})
"""What a little hum does nothing to."""
SEPARATION_MM: Final = 50.0
NOISE_MM: Final = 300.0
ROUND: Final = frozenset({"emt", "ent", "pvc", "sleeve"})
"""Raceways that no partition divides."""


def _beside(_: Room, cable: Cable) -> Applies:
    if cable.beside_no_power:
        return No("it runs beside no power")
    if cable.power_exception in {None, "none"}:
        return True
    return No("something stands between it and the power")


def power_window(_: Room, cable: Cable) -> Windows:
    """Return how far a cable keeps from power by what it carries."""
    strong = need(cable.carries, cable, "carries") in STRONG
    return at_least(SEPARATION_MM, "mm", note=None if strong else NOISE_MM)


@rule(
    "cable.power-distance",
    level=Level.WARNING,
    basis=(
        nfpa("725.136(I), 800.133(A)(2), 820.133(A)(2); 2026 articles 720 to 725"),
        practice("the same 50 mm wherever NFPA 70 does not hold, and 300 mm for low-level signals, for the hum"),
    ),
    each=CABLES,
    when=(signal, _beside),
    window=Cases(
        "mm",
        (
            ("for loudspeaker, trigger, control and lighting cable", at_least(SEPARATION_MM, "mm")),
            ("for line-level, network, video, usb and antenna cable", at_least(SEPARATION_MM, "mm", note=NOISE_MM)),
        ),
        power_window,
    ),
    says="runs {figure} beside power conductors with nothing between; {window} wanted",
    at="beside_power",
    caution=CAUTION,
    since="0.3.0",
)
def power_distance(room: Room, cable: Cable) -> Figure:
    """A signal cable keeps 50 mm from power conductors unless something stands between, a low-level one 300 mm.

    Why: A nick where both touch puts mains on the loudspeakers; and what runs along power for metres hums.

    How decided: The distance that the file gives. Under NFPA 70 the 50 mm (2 in) do not hold where either runs in a
    raceway, the power in sheathed or armoured cable, or a tube is between, which the file states as one of these words;
    that is asked for where the distance is less. 300 mm for low-level signals is the trade's, and a note. Crossings at
    a right angle do not count as running beside.

    Remedy: Move the run, cross at a right angle, or put one of the two in a raceway.

    When to waive: Low-level signals on balanced lines that are known to be quiet.
    """
    figure = room.figures.cabling.to_power(cable)
    if cable.power_exception is None and figure.value < SEPARATION_MM:
        raise Missing(cable, "power_exception")
    return figure


@rule(
    "cable.with-power",
    level=Level.ERROR,
    basis=(nfpa("725.136(A) and (B), 800.133, 820.133; 2026 articles 720 to 725"), *OTHER_APART),
    each=RACEWAYS,
    when=holds_something,
    says={
        "shared": "holds {power} together with {others}; {clause} keeps power and signals apart",
        "divided": "a partition divides power in it from the rest",
        "apart": "power and signals do not share it",
    },
    at="kind",
    caution=CAUTION,
    since="0.3.0",
)
def with_power(room: Room, raceway: Raceway) -> Says:
    """No raceway holds power together with signals, unless a partition divides it.

    Why: A fault in the power conductor is then on every loudspeaker and network wire that shares the pipe.

    How decided: What the cables that run in it carry; lighting is power unless its marking is of a limited class. The
    partition is asked for only of what can have one. Every code known here says so; some take insulation for the
    higher voltage or an earthed screen instead, which is for the electrician.

    Remedy: A raceway of its own for the power.

    When to waive: Never without the electrician.
    """
    cabling = room.figures.cabling
    cables, missing = cabling.inside(raceway)
    power = tuple(cable.words for cable in cables if cabling.is_power(cable))
    others = tuple(cable.words for cable in cables if not cabling.is_power(cable))
    if power and others:
        if raceway.kind not in ROUND and need(raceway.partition, raceway, "partition"):
            return passes("divided")
        clause = cabling.clause("separation") or APART[room.figures.mains.family]
        return fails("shared", power=power, others=others, clause=clause)
    if missing is not None:
        raise missing
    return passes("apart")


@rule(
    "cable.audio-apart",
    level=Level.WARNING,
    basis=nfpa("725.139(F); 2026 articles 720 to 725"),
    each=RACEWAYS,
    when=(under_nfpa, holds_something),
    says={
        "shared": "holds {audio} together with {others}; {clause} keeps loudspeakers apart",
        "apart": "loudspeaker cable shares it with nothing else",
    },
    at="kind",
    caution=CAUTION,
    since="0.3.0",
)
def audio_apart(room: Room, raceway: Raceway) -> Says:
    """Loudspeaker cable does not share a raceway with network, video or control cable.

    Why: An amplifier's output is not held to the power of the others' sources, and its faults are not theirs.

    How decided: What the cables in it carry: those of loudspeakers against all other signals, where NFPA 70 holds. The
    clause was read in the edition of 2017; confirm it in the one that is adopted.

    Remedy: A second raceway beside it.

    When to waive: The adopted edition no longer asks for it, or the authority accepts it.
    """
    cabling = room.figures.cabling
    cables, missing = cabling.inside(raceway)
    signals = [cable for cable in cables if not cabling.is_power(cable)]
    audio = tuple(cable.words for cable in signals if cable.carries == "loudspeaker")
    others = tuple(cable.words for cable in signals if cable.carries != "loudspeaker")
    if audio and others:
        return fails("shared", audio=audio, others=others, clause=cabling.clause("audio apart"))
    if missing is not None:
        raise missing
    return passes("apart")


def fill_window(room: Room, raceway: Raceway) -> Windows:
    """Return how much of a raceway its cables may take."""
    cables, _ = room.figures.cabling.inside(raceway)
    return at_most(room.figures.cabling.fill_limit_percent(raceway, cables), "%", note=30.0)


@rule(
    "cable.fill",
    level=Level.WARNING,
    basis=(
        nfpa("chapter 9, Table 1 with its notes, and Table 4; 640.23"),
        practice("the same under other codes; 30 % where somebody will pull another cable later"),
    ),
    each=RACEWAYS,
    when=holds_something,
    window=computed(
        "%", "53 % for one cable, 31 % for two, 40 % for more, 60 % up to 0.61 m; note from 30 %", fill_window
    ),
    says="its cables take {figure} of it; {window} wanted",
    at="size",
    since="0.3.0",
)
def fill(room: Room, raceway: Raceway) -> Figure:
    """The cables in a raceway leave the room that pulling them wants.

    Why: What is pulled through too full a pipe is stretched or skinned, and nothing can be pulled after it.

    How decided: Sum of the cables' round areas over the raceway's, a flat cable by its larger side. EMT and ENT by
    trade size, others by their inner diameter or area. One cable 53 %, two 31 %, more 40 %; in one of up to 0.61 m
    (24 in) 60 %; a note from 30 %, for the cable that comes later. A moulded plug wants far more than this.

    Remedy: The next size of raceway, or a second one; leave a pull string.

    When to waive: A straight sleeve that the cable was already drawn through.
    """
    cabling = room.figures.cabling
    cables, missing = cabling.inside(raceway)
    figure = cabling.fill(raceway, cables)
    if missing is not None and figure.value <= cabling.fill_limit_percent(raceway, cables):
        raise missing
    return figure
