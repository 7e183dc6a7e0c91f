"""Full scale at the seats: what amplifiers give, what loudspeakers bear, what subwoofers give together."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from roomlint.review import (
    LOUDSPEAKERS,
    ROOM,
    Amid,
    Cases,
    Level,
    No,
    Subjects,
    found,
    practice,
    rule,
    standard,
    unsaid,
)

from . import CALIBRATION, ROOMS, SPARE, reaching

if TYPE_CHECKING:
    from collections.abc import Iterator

    from roomlint.design.listening import Loudspeaker
    from roomlint.design.model import Design
    from roomlint.review import Answer, Applies, Figure, Room, Windows

HOME: Final = "at home: 3 dB under full scale at the reference level, a note under full scale"
CRITICAL: Final = "for critical listening: full scale at the reference level, a note within 3 dB of it"


def every_amplified(room: Room) -> Iterator[Amid[Loudspeaker]]:
    """Yield every loudspeaker amid the outputs that drive it: what is wrong with one of these is told of it."""
    for speaker in room.design.loudspeakers:
        yield Amid(speaker, tuple(way.feed for way in room.figures.routing.feeding(speaker)))


AMPLIFIED: Final[Subjects[Amid[Loudspeaker]]] = Subjects(LOUDSPEAKERS.name, every_amplified, LOUDSPEAKERS.of)


def _wanted(room: Room, _: object) -> Windows:
    return reaching(room, room.figures.levels.wanted_db)


def _low_wanted(room: Room, _: Design) -> Windows:
    return reaching(room, room.figures.levels.low_wanted_db)


def _amplified_outside(room: Room, amid: Amid[Loudspeaker]) -> Applies:
    if room.figures.routing.is_active(amid.middle):
        return No("it has an amplifier of its own")
    return True


def _has_subwoofer(room: Room, _: Design) -> Applies:
    if room.design.subwoofers:
        return True
    missing = unsaid(room.design, "subwoofers")
    if missing is not None:
        raise missing
    return No("the room has no subwoofer")


@rule(
    "level.amplifier-reach",
    level=Level.WARNING,
    basis=(
        CALIBRATION, ROOMS, SPARE,
        practice("a sheet's level for 2.83 V is that of one watt into 8 ohm, of two into 4 ohm"),
    ),
    each=AMPLIFIED,
    when=_amplified_outside,
    window=Cases("dB", ((HOME, None), (CRITICAL, None)), _wanted),
    says="reaches {figure} at its amplifier's rated power; {window} wanted for full scale ({wanted})",
    after=("channel.fed", "channel.load", "layout.inside-room"),
    at="product",
    since="0.3.0",
)  # fmt: skip
def amplifier_reach(room: Room, amid: Amid[Loudspeaker]) -> Answer:
    """Amplifiers drive every loudspeaker to full scale at the reference seat before they clip.

    Why: An amplifier that ends first clips in every loud scene, and it is the tweeter that pays.

    How decided: Sensitivity for 2.83 V, or for one watt brought there by 10 lg(8 / Z); the voltage at rated power into
    the load as wired, by the largest rated load on the amplifier's sheet that is no more; less the loss of the cable
    where impedance is least, less 20 lg of the distance to the reference seat, plus a declared `boundary_gain`. Against
    the reference level of the calibration plus 20 dB; where none is entered, of the level that rooms of such a volume
    are set to. At home up to 3 dB of want is a note; for critical listening less than 3 dB in hand is one.

    Remedy: A more sensitive loudspeaker, more power (3 dB are twice of it), a thicker cable, or a lower reference
    level.

    When to waive: The client listens far below that level, and knows it.
    """
    levels = room.figures.levels
    return found(levels.amplified(amid.middle, levels.reference_seat()), wanted=levels.wanted())


@rule(
    "level.loudspeaker-reach",
    level=Level.WARNING,
    basis=(
        CALIBRATION, ROOMS, SPARE,
        practice("rated noise power holds peaks of four times as much, 6 dB; trade articles on the rating"),
    ),
    each=LOUDSPEAKERS,
    window=Cases("dB", ((HOME, None), (CRITICAL, None)), _wanted),
    after=("layout.inside-room",),
    says={
        "fail": "bears {figure}; {window} wanted for full scale ({wanted})",
        "power": "reaches {figure} in peaks of 4 times its rated power; {window} wanted for full scale ({wanted})",
        "beside": "the loudspeaker itself bears {figure}",
    },
    beside=("level.amplifier-reach",),
    at="product",
    since="0.3.0",
)  # fmt: skip
def loudspeaker_reach(room: Room, speaker: Loudspeaker) -> Answer:
    """Every loudspeaker bears full scale at the reference seat.

    Why: Where the loudspeaker ends first, more power only burns it.

    How decided: The largest level on its sheet, or, where that is less or alone, the level at four times its rated
    power; less 20 lg of the distance, plus a declared `boundary_gain`. Against the same levels as
    `level.amplifier-reach`, which judges what drives it. What reaches the other seats is printed by `roomlint figures`,
    and how unlike they are is judged by `level.between-seats`.

    Remedy: A loudspeaker that plays louder, a seat nearer to it, or a lower reference level.

    When to waive: The client listens far below that level, and knows it.
    """
    levels = room.figures.levels
    figure = levels.borne(speaker, levels.reference_seat())
    said = "power" if levels.rated_first(speaker) else ""
    return found(figure, said=said, wanted=levels.wanted())


@rule(
    "level.subwoofer-reach",
    level=Level.WARNING,
    basis=(
        standard("ITU-R BS.775", "low-frequency channel, annex 7", read=False, note="10 dB over a main one, as quoted"),
        CALIBRATION, ROOMS, SPARE,
    ),
    each=ROOM,
    when=_has_subwoofer,
    window=Cases("dB", ((HOME, None), (CRITICAL, None)), _low_wanted),
    says="its subwoofers reach {figure} together; {window} wanted for full scale of the low-frequency channel",
    at="subwoofers",
    since="0.3.0",
)  # fmt: skip
def subwoofer_reach(room: Room, _design: Design) -> Figure:
    """The subwoofers play the low-frequency channel to full scale at the reference seat.

    Why: The low-frequency channel is replayed 10 dB over a main one; what cannot follow distorts in the one scene that
    it was bought for.

    How decided: The largest level of each on its sheet, at 1 m in free field, less 20 lg of the distance, plus its
    `boundary_gain` or what the floor alone adds over 20 to 120 Hz; of an own amplifier elsewhere no more than its power
    gives.
    All together in step, which is the most that they can be: what modes take and give is judged by chapter bass. The
    bass of the main channels, which may come on top, is not counted.

    Remedy: One more subwoofer, up to 6 dB; or one that plays louder; or a lower reference level.

    When to waive: A measurement in the room shows the level.
    """
    levels = room.figures.levels
    return levels.low(levels.reference_seat())
