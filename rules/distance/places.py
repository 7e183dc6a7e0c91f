"""How far loudspeakers stand from each other and from the seats."""

from __future__ import annotations

from typing import TYPE_CHECKING

from roomlint.review import Level, No, at_least, at_most, between, labelled, practice, rule, standard, tells

from . import AT_OTHER_SEATS, EARS, EVERY_SEAT, FRONT_PAIR, HOME_STUDY, OTHER_SEATS, PAIR_AT_SEATS, TUTORIAL

if TYPE_CHECKING:
    from roomlint.design.listening import Loudspeaker, Seat
    from roomlint.review import Answer, Applies, Figure, Pair, Room, Seen


@rule(
    "distance.base-width",
    level=Level.NOTE,
    basis=standard("ITU-R BS.1116", "loudspeaker arrangement", read=False, note="the page read credits ITU-R BS.775-3"),
    each=FRONT_PAIR,
    window=between(2.0, 5.0, "m"),
    says="stand {figure} apart; {window} wanted",
    cure=("position",),
    at="position",
    since="0.1.0",
)
def base_width(room: Room, pair: Pair[Loudspeaker]) -> Figure:
    """The front pair stands 2 to 5 metres apart.

    Why: Listening-room figures are made for such widths; narrower stages belong to desks.

    How decided: Straight distance between the pair. The standard prefers 2 to 3 m and allows 5 m in a suitable room.

    Remedy: Move the pair apart and the seat back with it, so that the angle stays.

    When to waive: A small room that leaves no more, when the angles are kept.
    """
    return room.figures.pairs.base_width(pair)


@rule(
    "distance.listening",
    level=Level.NOTE,
    basis=(TUTORIAL, standard("trade article on BS.775-1 and BS.1116-1", "listening distance", read=False)),
    each=labelled("M+030", "M-030", "M+000"),
    window=between(2.0, 4.0, "m"),
    says="{figure} from the reference seat; {window} wanted",
    cure=("position",),
    at="position",
    since="0.1.0",
)
def listening(room: Room, speaker: Loudspeaker) -> Figure:
    """Front loudspeakers stand 2 to 4 metres from the reference seat.

    Why: Nearer, the drivers are heard apart; farther, the room is heard more than the loudspeaker.

    How decided: Straight distance from the acoustic centre to the reference seat's ear. One reading of the standards
    gives 2 to 3 m, another up to 13 ft (3.96 m).

    Remedy: Move the seat or the loudspeaker.

    When to waive: A large room whose loudspeakers are chosen for the distance.
    """
    return room.figures.angles.distance(speaker, room.reference_seat)


def _delayed(room: Room, speaker: Loudspeaker) -> Applies:
    """Whether the distance still has to be equal: a delay that is entered makes the arrivals so."""
    if not any(room.design.labelled("M+000")):
        unlabelled = any(other.label is None for other in room.design.loudspeakers)
        return True if unlabelled else No("there is no centre loudspeaker to compare with")
    setting = room.figures.delays.setting_of(speaker)
    if setting is not None and (setting.delay_s is not None or setting.distance_m is not None):
        return No("its delay is entered, which makes up for the distance")
    return True


@rule(
    "distance.surround",
    level=Level.NOTE,
    basis=HOME_STUDY,
    each=labelled("M+110", "M-110", "M+135", "M-135"),
    when=_delayed,
    window=at_most(10.0, "%"),
    says="its distance differs from the centre's by {figure}; {window} wanted, or enter its delay",
    cure=("position",),
    at="position",
    since="0.1.0",
)
def surround(room: Room, speaker: Loudspeaker) -> Answer:
    """Surround loudspeakers stand within 10 per cent of the centre's distance, or have their delay entered.

    Why: Equal distances arrive together at every seat; delay makes them equal at one seat only.

    How decided: Distance of the surround from the reference seat over that of the centre. A listening study of home
    rooms found 10 per cent still good. A delay or a distance that is entered for it makes up for more, and is judged by
    `distance.delay-entered` and `distance.entered`.

    Remedy: Move the surround, or enter its delay.

    When to waive: A narrow room, with the delays set at hand-over.
    """
    for centre in room.design.labelled("M+000"):
        return room.figures.delays.against_centre(speaker, centre, room.reference_seat)
    raise room.unlabelled()


@rule(
    "distance.off-centre",
    level=Level.WARNING,
    basis=EARS,
    each=PAIR_AT_SEATS,
    window=at_most(1.0, "ms"),
    says={
        "fail": "left and right arrive {figure} apart; {window} wanted without a centre",
        "centred": "left and right arrive {figure} apart; the centre holds the voices",
    },
    at="ear",
    since="0.1.0",
)
def off_centre(room: Room, heard: Seen[Pair[Loudspeaker], Seat]) -> Answer:
    """At every seat, left and right arrive within a millisecond of each other.

    Why: Beyond a millisecond the nearer of the two takes the whole image; a centre loudspeaker holds the voices.

    How decided: Difference of the arrivals with the delays in force, entered or computed for the reference seat. A
    warning without a centre loudspeaker. With one, the outer seats of every row would be a note that nobody can clear,
    so it is only told. The reference seat itself is aligned by its delays.

    Remedy: Bring the seats toward the centre line, or add a centre loudspeaker.

    When to waive: Seats at the side of a wide row that everybody knows to be second best.
    """
    figure = room.figures.delays.pair_arrival(heard.source, heard.seat)
    if any(room.design.labelled("M+000")):
        return tells("centred", figure)
    return figure


@rule(
    "distance.late-arrival",
    level=Level.WARNING,
    basis=standard("published studies of speech fusion", "about 30 ms at equal level", read=False),
    each=OTHER_SEATS,
    window=at_most(30.0, "ms", note=15.0),
    says="the last loudspeaker arrives {figure} after the first; {window} wanted",
    at="ear",
    since="0.1.0",
)
def late_arrival(room: Room, seat: Seat) -> Figure:
    """At every other seat, all loudspeakers still arrive within 30 milliseconds.

    Why: Delays line up one seat; beyond 30 ms a loudspeaker is heard as an echo of speech, at equal level.

    How decided: Last arrival minus first with the delays in force, entered or computed for the reference seat. Beyond
    30 ms a warning, beyond 15 ms, our choice, a note.

    Remedy: Bring the rows together, or choose a reference seat between them.

    When to waive: A seat that only gets the far loudspeakers at low level.
    """
    return room.figures.delays.spread(seat)


@rule(
    "distance.seat-near-loudspeaker",
    level=Level.WARNING,
    basis=practice("6 dB louder than at the reference seat, a choice of this rule book"),
    each=AT_OTHER_SEATS,
    window=at_most(6.0, "dB"),
    says="{figure} louder there than at the reference seat; {window} wanted",
    after=("distance.too-near",),
    cure=("position",),
    at="position",
    since="0.1.0",
)
def seat_near_loudspeaker(room: Room, heard: Seen[Loudspeaker, Seat]) -> Figure:
    """No seat hears a loudspeaker more than 6 dB louder than the reference seat does.

    Why: A listener that near hears one loudspeaker and little else; levels are set at one seat, and the others live
    with what distance makes of them.

    How decided: 20 log10 of the reference seat's distance over the seat's own, free field. Half the distance is 6 dB.
    It took over `distance.level-spread`, which said the same of the seat.

    Remedy: Move the loudspeaker up or away from the seat, or the seat away from the wall.

    When to waive: A spare seat that is seldom used.
    """
    return room.figures.delays.gain_over_reference(heard.source, heard.seat)


@rule(
    "distance.too-near",
    level=Level.WARNING,
    basis=practice("no ear nearer than 0.6 m to a loudspeaker, a note under 0.9 m; a choice of this rule book"),
    each=EVERY_SEAT,
    window=at_least(0.6, "m", note=0.9),
    says="{figure} from the ear; {window} wanted",
    cure=("position",),
    at="position",
    since="0.2.0",
)
def too_near(room: Room, heard: Seen[Loudspeaker, Seat]) -> Figure:
    """No loudspeaker stands at anybody's ear.

    Why: An arm's length away the drivers are heard one by one, and what the others play is drowned.

    How decided: Straight distance from the acoustic centre to the ear, at every seat, the reference seat too.

    Remedy: Move the loudspeaker along its wall or higher, or the seat away from it.

    When to waive: A seat that is hardly used.
    """
    return room.figures.angles.distance(heard.source, heard.seat)
