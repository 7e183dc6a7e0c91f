"""Chapter distance: how far things stand, when their sound arrives, and what is entered in the processor for it."""

from __future__ import annotations

from typing import TYPE_CHECKING

from roomlint.rules.angle import HOME_STUDY, TUTORIAL, front_pair_of, labelled

from roomlint.review import Against, Group, Level, Window, does_not_apply, memory, need, practice, rule, standard

if TYPE_CHECKING:
    from collections.abc import Iterator

    from roomlint.design.listening import Loudspeaker, Seat
    from roomlint.design.model import Design
    from roomlint.review import Figure, Room, Says

AIR = standard("ISO 9613-1", "formula A.5", edition="1993", read=False, note="through two public packages")
EARS = standard("published precedence-effect studies", "summing localisation, leading source", read=False)
PLACES = ("seats[].ear", "loudspeakers[].position")


def every_loudspeaker(room: Room) -> Iterator[Loudspeaker]:
    """Yield all loudspeakers."""
    yield from room.design.loudspeakers


def entered_delays(room: Room) -> Iterator[Loudspeaker]:
    """Yield the loudspeakers that something other than a distance is entered for."""
    for speaker in room.design.loudspeakers:
        setting = room.figures.delays.setting_of(speaker)
        if setting is not None and (setting.delay_s is not None or setting.distance_m is None):
            yield speaker


def entered_distances(room: Room) -> Iterator[Loudspeaker]:
    """Yield the loudspeakers that a distance is entered for."""
    for speaker in room.design.loudspeakers:
        setting = room.figures.delays.setting_of(speaker)
        if setting is not None and setting.distance_m is not None:
            yield speaker


def other_seats(room: Room) -> Iterator[Seat]:
    """Yield the seats that the room is not calibrated for."""
    if len(room.design.seats) > 1:
        reference = room.reference_seat
        yield from (seat for seat in room.design.seats if seat is not reference)


def front_pair_at_seats(room: Room) -> Iterator[Group]:
    """Yield the front pair with each seat that the room is not calibrated for."""
    for pair in front_pair_of(room):
        for seat in other_seats(room):
            yield Group((*pair.elements, seat), joined=", ")


def processor_in_use(room: Room) -> Iterator[Design]:
    """Yield the design when a processor stands in it."""
    if room.design.processor is not None:
        yield room.design


def shown(room: Room) -> Iterator[Design]:
    """Yield the design when it has a picture."""
    if room.design.picture is not None:
        yield room.design


def in_rows(room: Room) -> Iterator[Loudspeaker]:
    """Yield all loudspeakers when there is more than one seat."""
    if len(room.design.seats) > 1:
        yield from room.design.loudspeakers


@rule(
    "distance.base-width",
    level=Level.NOTE,
    basis=standard("ITU-R BS.1116", "loudspeaker arrangement", read=False, note="the page read credits ITU-R BS.775-3"),
    each=front_pair_of,
    reads=("loudspeakers[].position",),
    since="0.1.0",
    window=Window(2.0, 5.0, "m"),
    at="position",
)
def base_width(room: Room, pair: Group) -> Figure:
    """The front pair stands 2 to 5 metres apart.

    Why: Listening-room figures are made for such widths; narrower stages belong to desks.

    How decided: Straight distance between the pair. The standard prefers 2 to 3 m and allows 5 m in a suitable room.

    Remedy: Move the pair apart and the seat back with it, so that the angle stays.

    When to waive: A small room that leaves no more, when the angles are kept.
    """
    left, right = pair.elements
    return room.figures.angles.base_width(left, right)  # type: ignore[arg-type]


@rule(
    "distance.listening",
    level=Level.NOTE,
    basis=(TUTORIAL, standard("trade article on BS.775-1 and BS.1116-1", "listening distance", read=False)),
    each=labelled("M+030", "M-030", "M+000"),
    reads=PLACES,
    since="0.1.0",
    window=Window(2.0, 4.0, "m"),
    at="position",
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


@rule(
    "distance.surround",
    level=Level.NOTE,
    basis=HOME_STUDY,
    each=labelled("M+110", "M-110", "M+135", "M-135"),
    reads=PLACES,
    since="0.1.0",
    window=Window(None, 10.0, "%"),
    at="position",
)
def surround(room: Room, speaker: Loudspeaker) -> Figure | Says:
    """Surround loudspeakers stand within 10 per cent of the centre's distance.

    Why: Equal distances arrive together at every seat; delay makes them equal at one seat only.

    How decided: Distance of the surround from the reference seat over that of the centre. A listening study of home
    rooms found 10 per cent still good. Delay can make up for more, so it is a note.

    Remedy: Move the surround, or enter its delay (`distance.delay-entered` checks it).

    When to waive: A narrow room, with the delays entered.
    """
    for centre in room.design.labelled("M+000"):
        return room.figures.delays.rear_distance(speaker, centre, room.reference_seat)
    return does_not_apply("there is no centre loudspeaker to compare with.")


@rule(
    "distance.delay-range",
    level=Level.ERROR,
    basis=(practice("the farthest loudspeaker gets no delay, each nearer one the difference"), AIR),
    each=every_loudspeaker,
    reads=(*PLACES, "electronics.processor.product", "product:processor.delay_range", "survey.temperature"),
    since="0.1.0",
    window=Window(None, 30.0, "ms"),
    at="position",
)
def delay_range(room: Room, speaker: Loudspeaker) -> Against:
    """The processor can set the delay that each loudspeaker needs.

    Why: A loudspeaker that cannot be delayed enough is heard first, and everything moves toward it.

    How decided: (Largest distance minus own distance) over the speed of sound at the survey's temperature, at the
    reference seat, against the delay range on the processor's sheet.

    Remedy: Move the nearest loudspeaker away or the farthest nearer, or choose a processor with a longer range.

    When to waive: Never for the front; for a far surround, when the missing time is below a millisecond.
    """
    data = room.figures.delays.needed_processor_data()
    reach = need(data.delay_range_s, data, "delay_range")
    return Against(room.figures.delays.to_enter(speaker, room.reference_seat), Window(None, 1e3 * reach.value, "ms"))


@rule(
    "distance.delay-entered",
    level=Level.WARNING,
    basis=(TUTORIAL, memory("100 microseconds between channels", document="ITU-R BS.1116"), AIR),
    each=entered_delays,
    reads=(*PLACES, "calibration.settings[].delay", "survey.temperature"),
    since="0.1.0",
    window=Window(None, 0.1, "ms"),
    target=Window(None, 0.025, "ms"),
    at="position",
)
def delay_entered(room: Room, speaker: Loudspeaker) -> Against:
    """The delay entered for a loudspeaker is the one that its position asks for.

    Why: A tenth of a millisecond between loudspeakers that play the same thing puts the first notch at 5 kHz.

    How decided: Entered delay, less the one entered for the farthest loudspeaker, against the difference of the
    distances over the speed of sound, at the reference seat. Beyond 0.1 ms a warning, beyond 0.025 ms (about one
    sample) a note. A coarse survey makes this a review: measure again or align by ear and instrument.

    Remedy: Enter the computed delay, or correct the position in the file.

    When to waive: Delays set by acoustic measurement, which knows better than the drawing.
    """
    setting = need(room.figures.delays.setting_of(speaker), speaker, "setting")
    error = room.figures.delays.entered_error(speaker, setting, room.reference_seat)
    says = room.figures.delays.to_enter_words(speaker, room.reference_seat)
    return Against(error, says=says, place=setting.place_of("delay"))


@rule(
    "distance.entered",
    level=Level.WARNING,
    basis=practice("0.05 and 0.15 m between entry and drawing, a choice of this rule book; 0.15 m is 0.44 ms"),
    each=entered_distances,
    reads=(*PLACES, "calibration.settings[].distance"),
    since="0.1.0",
    window=Window(None, 0.15, "m"),
    target=Window(None, 0.05, "m"),
    at="position",
)
def entered(room: Room, speaker: Loudspeaker) -> Against:
    """The distance entered for a loudspeaker is the one in the drawing.

    Why: The processor turns distances into delays; 0.1 m is 0.29 ms.

    How decided: Entered distance against the straight distance to the reference seat's ear. Beyond 0.15 m a warning,
    beyond 0.05 m a note; both are our choice.

    Remedy: Enter the computed distance, or correct the position in the file.

    When to waive: Distances set by acoustic measurement, which counts delays inside active loudspeakers.
    """
    setting = need(room.figures.delays.setting_of(speaker), speaker, "setting")
    error = room.figures.delays.distance_error(speaker, setting, room.reference_seat)
    return Against(error, place=setting.place_of("distance"))


@rule(
    "distance.sound-speed",
    level=Level.NOTE,
    basis=AIR,
    each=processor_in_use,
    reads=("survey.temperature", "electronics.processor.product", "product:processor.speed_of_sound"),
    since="0.1.0",
    window=Window(None, 1.0, "%"),
    at="electronics.processor",
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
    "distance.off-centre",
    level=Level.WARNING,
    basis=EARS,
    each=front_pair_at_seats,
    reads=(*PLACES, "seats[].reference", "survey.temperature"),
    since="0.1.0",
    window=Window(None, 1.0, "ms"),
    at="ear",
)
def off_centre(room: Room, heard: Group) -> Against:
    """At every seat, left and right arrive within a millisecond of each other.

    Why: Beyond a millisecond the nearer of the two takes the whole image; a centre loudspeaker holds the voices.

    How decided: Difference of the arrivals with the delays in force, entered or computed for the reference seat. A
    warning without a centre loudspeaker, a note with one. The reference seat itself is aligned by its delays.

    Remedy: Bring the seats toward the centre line, or add a centre loudspeaker.

    When to waive: Seats at the side of a wide row that everybody knows to be second best.
    """
    left, right, seat = heard.elements
    figure = room.figures.delays.pair_arrival(left, right, seat)  # type: ignore[arg-type]
    centred = any(room.design.labelled("M+000"))
    return Against(figure, level=Level.NOTE if centred else Level.WARNING)


@rule(
    "distance.late-arrival",
    level=Level.WARNING,
    basis=standard("published studies of speech fusion", "about 30 ms at equal level", read=False),
    each=other_seats,
    reads=(*PLACES, "calibration.settings[].delay", "survey.temperature"),
    since="0.1.0",
    window=Window(None, 30.0, "ms"),
    target=Window(None, 15.0, "ms"),
    at="ear",
)
def late_arrival(room: Room, seat: Seat) -> Figure | Says:
    """At every other seat, all loudspeakers still arrive within 30 milliseconds.

    Why: Delays line up one seat; beyond 30 ms a loudspeaker is heard as an echo of speech, at equal level.

    How decided: Last arrival minus first with the delays in force, entered or computed for the reference seat. Beyond
    30 ms a warning, beyond 15 ms, our choice, a note.

    Remedy: Bring the rows together, or choose a reference seat between them.

    When to waive: A seat that only gets the far loudspeakers at low level.
    """
    if not room.design.loudspeakers:
        return does_not_apply("the room has no loudspeakers.")
    return room.figures.delays.spread(seat)


@rule(
    "distance.seat-near-loudspeaker",
    level=Level.WARNING,
    basis=practice("6 dB louder than at the reference seat, a choice of this rule book"),
    each=other_seats,
    reads=(*PLACES, "seats[].reference"),
    since="0.1.0",
    window=Window(None, 6.0, "dB"),
    at="ear",
)
def seat_near_loudspeaker(room: Room, seat: Seat) -> Figure | Says:
    """No seat hears a loudspeaker more than 6 dB louder than the reference seat does.

    Why: A listener that near hears one loudspeaker and little else.

    How decided: 20 log10 of the reference seat's distance over the seat's own, free field, for the loudspeaker that
    gains most. Half the distance is 6 dB.

    Remedy: Move the loudspeaker up or away from the seat, or the seat away from the wall.

    When to waive: A spare seat that is seldom used.
    """
    if not room.design.loudspeakers:
        return does_not_apply("the room has no loudspeakers.")
    return room.figures.delays.louder_than_reference(seat)


@rule(
    "distance.level-spread",
    level=Level.NOTE,
    basis=practice("6 dB between the nearest and the farthest seat, a choice of this rule book"),
    each=in_rows,
    reads=PLACES,
    since="0.1.0",
    window=Window(None, 6.0, "dB"),
    at="position",
)
def level_spread(room: Room, speaker: Loudspeaker) -> Figure:
    """Each loudspeaker is heard within 6 dB over all seats.

    Why: Levels are set at one seat; the others live with what distance makes of them.

    How decided: 20 log10 of the farthest seat's distance over the nearest one's, free field; coverage is left out.

    Remedy: Move the loudspeaker away from the nearest seat, higher or farther out.

    When to waive: Surrounds beside a single row in a narrow room.
    """
    return room.figures.delays.level_spread(speaker)


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
    each=shown,
    reads=("picture.product", "electronics.processor.product", "product:picture.video_latency"),
    since="0.1.0",
    window=Window(-125.0, 45.0, "ms"),
    limit=Window(-185.0, 90.0, "ms"),
    at="picture",
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
