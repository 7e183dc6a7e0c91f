"""Levels that people set and live with: between seats, by the room's size, by the week."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from roomlint.review import (
    ROOM,
    SEATS,
    Level,
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

from . import ROOMS

if TYPE_CHECKING:
    from roomlint.design.listening import Seat
    from roomlint.design.model import Design
    from roomlint.review import Answer, Applies, Figure, Room

UNDER_DB: Final = 4.0
OVER_DB: Final = 2.0
EAR: Final = (
    "A caution and no medical advice: sound adds up over a week wherever it is heard, and ears differ; who is in doubt"
    " asks a physician."
)


def _elsewhere(room: Room, seat: Seat) -> Applies:
    return No("the room is calibrated for it") if room.figures.delays.reference() is seat else True


def _row(room: Room, _: Design) -> Windows:
    row = room.figures.levels.room_reference_db()
    return Windows(Window(row - UNDER_DB, row + OVER_DB, "dB"))


@rule(
    "level.between-seats",
    level=Level.WARNING,
    basis=practice("voices within 6 dB at every seat, a note from 3 dB; a choice of this rule book"),
    each=SEATS,
    when=_elsewhere,
    window=between(-6.0, 6.0, "dB", note=(-3.0, 3.0)),
    says={
        "above": "hears the front {figure} louder than the reference seat does; {window} wanted",
        "below": "hears the front softer than the reference seat does ({figure}); {window} wanted",
    },
    cure=("ear",),
    at="ear",
    since="0.3.0",
)
def between_seats(room: Room, seat: Seat) -> Figure:
    """Every seat hears the front about as loud as the reference seat does.

    Why: Level is set at one seat; where voices are half as loud somebody asks for more, and the others suffer it.

    How decided: Direct sound of the front three, each set alike at the reference seat, added as powers at the seat.
    Free field: the room lifts far seats by a decibel or three. A single loudspeaker that is near somebody is judged by
    `distance.seat-near-loudspeaker`.

    Remedy: Rows nearer to each other, or the front farther from all of them.

    When to waive: A seat that is seldom used.
    """
    return room.figures.levels.over_reference(seat)


@rule(
    "level.room-size",
    level=Level.NOTE,
    basis=(ROOMS, practice("74 to 80 dB as published for rooms of 40 to 140 m3: 4 dB under the row to 2 dB over")),
    each=ROOM,
    window=computed("dB", "from 4 dB under to 2 dB over the level that rooms of its volume are set to", _row),
    says={
        "above": "its reference level is {figure}, loud for {volume}; rooms of that size have {window}",
        "below": "its reference level is {figure}, soft for {volume}; rooms of that size have {window}",
    },
    at="calibration.reference_level",
    since="0.3.0",
)
def room_size(room: Room, _design: Design) -> Answer:
    """The reference level fits the size of the room.

    Why: In a small room the level of a cinema is heard as louder than there, and nobody keeps it; everything else was
    chosen for it.

    How decided: The reference level of the calibration against 76 dB up to 42 m3, 78 up to 142, 80 up to 283, 82 up to
    566 and 85 beyond, from 4 dB under to 2 dB over: published values for one volume differ by so much.

    Remedy: Set the reference level that the room is used at, and check the others against it.

    When to waive: The client asked for it.
    """
    view = room.figures
    return found(view.levels.reference_figure(), volume=view.bass.volume())


@rule(
    "level.exposure",
    level=Level.WARNING,
    basis=standard(
        "ITU-T H.870", "weekly sound allowance", edition="2018", read=False,
        note="80 dB for 40 hours, children 75 dB, equal energy; as quoted; made for personal devices",
    ),
    each=ROOM,
    window=at_most(100.0, "%", note=50.0),
    says={
        "fail": "{hours} h a week at the reference level are {figure} of what ears are allowed; {window} wanted",
        "children": "{hours} h a week at the reference level are {figure} of what children may have; {window} wanted",
    },
    at="calibration.hours_a_week",
    caution=EAR,
    since="0.3.0",
)  # fmt: skip
def exposure(room: Room, design: Design) -> Answer:
    """The hours at the reference level stay within a week's allowance of sound.

    Why: What harms hearing is level times time; a room that plays like a cinema for many hours a week uses up what ears
    are allowed, and nobody notices.

    How decided: Hours a week over 40 h at 80 dB, for a home with children at 75 dB, 3 dB halving the hours. The
    reference level is taken for the A-weighted mean while something plays, which is more than most programmes have.

    Remedy: A lower reference level, or fewer hours at it.

    When to waive: The hours are spent well below the reference level, and the file should say so.
    """
    calibration, levels = design.calibration, room.figures.levels
    hours = f"{need(calibration.hours_a_week, calibration, 'hours_a_week'):g}"
    strict = levels.exposure("children")
    if design.project.children is None and strict.value <= 50.0:  # noqa: PLR2004  within whoever listens
        return found(strict, said="children", hours=hours)
    if need(design.project.children, design.project, "children"):
        return found(strict, said="children", hours=hours)
    return found(levels.exposure("adults"), hours=hours)
