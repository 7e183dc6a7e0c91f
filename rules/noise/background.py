"""The background by octave, and everything that makes noise in the room at the ears."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from roomlint.review import (
    ROOM,
    SEATS,
    Level,
    No,
    at_most,
    by_reference,
    found,
    memory,
    practice,
    rule,
    standard,
)

if TYPE_CHECKING:
    from roomlint.design.listening import Seat
    from roomlint.design.model import Design
    from roomlint.review import Answer, Applies, Figure, Room

CURVES: Final = standard(
    "ANSI S12.2", "noise criterion by tangency", read=False, note="curves read in a public library and a maker's page"
)

FINE_NC: Final = 20.0
FINE_NR: Final = 10.0
FINE_DB: Final = 31.0
FINE_CRITICAL_DB: Final = 25.0


def _at_home(room: Room, _: Design) -> Applies:
    return No("a room for critical listening is judged by its noise rating") if room.critical else True


def _critical(room: Room, _: Design) -> Applies:
    return True if room.critical else No("at home the noise criterion is judged")


def _something_hums(room: Room, _: Seat) -> Applies:
    view = room.figures.noise
    return True if view.sources or view.is_weighted_alone else No("nothing in the room makes noise")


def _by_octave(room: Room, figure: Figure, fine: float) -> Answer:
    octave, unheard = room.figures.noise.deciding(), room.figures.noise.unheard()
    if unheard is not None and figure.value <= fine:
        raise unheard
    return found(figure, said="number") if octave is None else found(figure, octave=octave)


@rule(
    "noise.criterion",
    level=Level.WARNING,
    basis=(
        CURVES,
        practice("15 to 25 in rooms for listening, 25 preferred in film theatres and the least of dwellings"),
    ),
    each=ROOM,
    when=_at_home,
    window=at_most(25.0, "", note=FINE_NC),
    says={
        "fail": "its background reaches noise criterion {figure} at {octave}; {window} wanted",
        "number": "its background has noise criterion {figure}; {window} wanted",
    },
    at="noise",
    since="0.3.0",
)
def criterion(room: Room, _design: Design) -> Answer:
    """The background at the seats stays under noise criterion 25.

    Why: Ventilation and the street cover the soft end of every film, and people turn the rest up.

    How decided: The octave that reaches the highest curve, between curves by proportion; or the number that is given
    where no octaves are. Above 25 a warning, above 20, what a room of its own may have, a note. Some octaves alone may
    fail and do not pass: the others may be louder. Rooms for critical listening are judged by `noise.rating`.

    Remedy: Slower air through larger grilles, lined ducts, closed gaps; the octave that decides tells where to look.

    When to waive: The room is used beside the noise on purpose, and the client has heard it.
    """
    return _by_octave(room, room.figures.noise.criterion(), FINE_NC)


@rule(
    "noise.rating",
    level=Level.WARNING,
    basis=(
        standard("ISO R 1996", "noise rating by octave", read=False, note="by a consultant's public page of BS 8233"),
        memory("NR 10, at most 15", document="ITU-R BS.1116"),
    ),
    each=ROOM,
    when=_critical,
    window=at_most(15.0, "", note=FINE_NR),
    says={
        "fail": "its background reaches noise rating {figure} at {octave}; {window} wanted",
        "number": "its background has noise rating {figure}; {window} wanted",
    },
    at="noise",
    since="0.3.0",
)
def rating(room: Room, _design: Design) -> Answer:
    """The background of a room for critical listening stays under noise rating 15.

    Why: What is judged there is softer than what a home is used to.

    How decided: The highest (L - a) / b of the octaves, or the number that is given where no octaves are. Above 15 a
    warning, above 10 a note. Some octaves alone may fail and do not pass. At home `noise.criterion` is judged instead.

    Remedy: As for a home, and further: equipment out of the room, a floating door.

    When to waive: The room is not used for judging, and should be `home`.
    """
    return _by_octave(room, room.figures.noise.rating(), FINE_NR)


@rule(
    "noise.at-seat",
    level=Level.WARNING,
    basis=practice("the A-weighted sums of the curves for a home, NC 20 and 25, and of NR 10 and 15, rounded"),
    each=SEATS,
    when=_something_hums,
    window=by_reference(home=at_most(35.0, "dB", note=FINE_DB), critical=at_most(29.0, "dB", note=FINE_CRITICAL_DB)),
    says={
        "fail": "hears {figure} A-weighted, most of it from {source}; {window} wanted",
        "background": "hears {figure} A-weighted, most of it background; {window} wanted",
    },
    at="ear",
    since="0.3.0",
)
def at_seat(room: Room, seat: Seat) -> Answer:
    """Projector, racks and grilles together stay soft at every seat.

    Why: A fan at the ear is heard in every pause; what each sheet calls soft adds up.

    How decided: Each source's level at 1 m brought to the ear by 1 / r^2 + 8 pi / A, direct and diffuse sound, with the
    absorption that the volume and the room's decay tell of, a usual one where the file does not say what it is lined
    with; all added as powers, the background too where it is known, by its number between one octave and all of them
    on the curve. What is known by some octaves only may fail and does not pass. A-weighted. At home above 35 dB a
    warning, above 31 a note; for critical listening 29 and 25.

    Remedy: Move what is loudest out of the room or into a hush box with air, or choose the softer mode.

    When to waive: Measured with everything running, it is softer.
    """
    view = room.figures.noise
    figure, source, untold = view.at_seat(seat), view.loudest(seat), view.untold()
    if untold is not None and figure.value <= (FINE_CRITICAL_DB if room.critical else FINE_DB):
        raise untold
    return found(figure, said="" if source else "background", source=source)
