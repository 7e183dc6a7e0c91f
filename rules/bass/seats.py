"""What the subwoofers do at the seats."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from roomlint.review import (
    ROOM,
    SEATS,
    Level,
    No,
    at_least,
    at_most,
    fails,
    found,
    memory,
    passes,
    practice,
    rule,
)

from . import ALL_SEATS, has_subwoofers, in_a_box, several_seats

if TYPE_CHECKING:
    from roomlint.design.base import Several
    from roomlint.design.listening import Seat
    from roomlint.design.model import Design
    from roomlint.review import Answer, Applies, Figure, Room, Says

EVEN_DB: Final = 6.0
SEATS_FOR_ONE: Final = 3
_BARELY_DRIVEN: Final = 0.2
_HALF: Final = 0.5


@rule(
    "bass.seat-spread",
    level=Level.WARNING,
    basis=practice("several subwoofers even out the seats below 80 Hz; 6 and 10 dB are a choice of this rule book"),
    each=ROOM,
    when=(has_subwoofers, several_seats),
    window=at_most(10.0, "dB", note=EVEN_DB),
    says={
        "fail": "the bass differs by {figure} from seat to seat, 20 to 80 Hz; {window} wanted",
        "middles": "bass differs by {figure} from seat to seat; {window} wanted: {better} with {count} amid {walls}",
        "corners": "bass differs by {figure} from seat to seat; {window} wanted: {better} with {count} in {walls}",
    },
    at="subwoofers",
    since="0.1.0",
)
def seat_spread(room: Room, design: Design) -> Answer:
    """The bass is much the same at every seat.

    Why: Equalising helps all seats only as far as they agree; what differs from seat to seat stays.

    How decided: Pressure of all subwoofers together, as set, at every seat as a sum over the room's modes, 20 to 80 Hz
    in steps of 1 Hz; at each frequency the loudest less the quietest seat, averaged. Computed at decays of 0.3, 0.5 and
    0.8 s, or about the measured one (`survey.bass_decay`), the kindest told: what fails then fails at any decay of a
    furnished room. Where the room is lined with what takes little of the 125 Hz octave, bare masonry or concrete, even
    the shortest decay of its modes is longer, and is taken up to 0.8 s; of soft linings nothing shorter is claimed, for
    tables end at 125 Hz. It compares layouts: a real room may differ by 3 to 6 dB. In a room that is not a box the
    modes are found numerically; where that cannot be done a person must judge.

    Remedy: Places are computed for as many subwoofers and for one more, of equal level and without delay: the middles
    of walls, and corners, that are inside, clear of what the file says of openings, obstacles, racks, walkways, seats
    and loudspeakers.
    The best set is told with what it makes of the seats; `roomlint figures` lists the next ones.

    When to waive: Only the reference seat matters to the client.
    """
    spread = room.figures.bass.seat_spread()
    if spread.value <= EVEN_DB:
        return spread
    cure = room.figures.placing.cure(spread, EVEN_DB)
    if cure is None:
        return spread
    return found(
        spread, said="corners" if cure.placed.corners else "middles", better=cure.spread,
        count=len(cure.placed.spots), walls=cure.placed.names,
    )  # fmt: skip


@rule(
    "bass.deep-null",
    level=Level.WARNING,
    basis=practice("a quarter of the others' pressure, 12 dB down, is a note lost; a choice of this rule book"),
    each=SEATS,
    when=(has_subwoofers, several_seats),
    window=at_least(-12.0, "dB"),
    says="falls {size} below the other seats at {frequency}; {allowed} wanted",
    cure=("ear",),
    at="ear",
    since="0.1.0",
)
def deep_null(room: Room, seat: Seat) -> Answer:
    """No seat falls far below the others at any bass note.

    Why: A deep null cannot be equalised: more power only makes the other seats louder.

    How decided: As for `bass.seat-spread`; each seat's lowest level, averaged over a third of an octave, against the
    mean of the other seats, 20 to 80 Hz. The seat itself is not in the mean. Of three decays the kindest is told, so
    that only the tolerance of positions, and of modes that are found numerically, can leave it to a person.

    Remedy: Move the seat or a subwoofer out of the null; the frequency in the message tells which mode it is.

    When to waive: The seat is hardly used.
    """
    dip = room.figures.bass.other_dip(seat)
    return found(dip.figure, frequency=dip.frequency)


@rule(
    "bass.own-null",
    level=Level.NOTE,
    basis=practice("12 dB under its own octave, a quarter of the pressure, a note is lost; our choice"),
    each=SEATS,
    when=has_subwoofers,
    window=at_least(-12.0, "dB"),
    says="its bass falls {size} below its own octave at {frequency}; {allowed} wanted",
    after=("bass.deep-null", "bass.common-null"),
    cure=("ear",),
    at="ear",
    since="0.2.0",
)
def own_null(room: Room, seat: Seat) -> Answer:
    """No note of the bass falls out of a seat's own band.

    Why: Where all seats sink together none stands out against the others, and the note is lost all the same.

    How decided: As for `bass.deep-null`; each seat's lowest level over a third of an octave against its own level over
    an octave. A lone seat, and the reference seat, are judged like any other.

    Remedy: Move the seat or a subwoofer out of the null; the frequency in the message tells which mode it is.

    When to waive: Measured on site and found even.
    """
    dip = room.figures.bass.own_dip(seat)
    return found(dip.figure, frequency=dip.frequency)


@rule(
    "bass.common-null",
    level=Level.WARNING,
    basis=practice("an equaliser lifts 6 dB, half the pressure; a note that loses more, 12 dB a warning; our choice"),
    each=ALL_SEATS,
    when=(has_subwoofers, several_seats),
    window=at_least(-12.0, "dB", note=-6.0),
    says="all fall {size} below their own octave at {frequency}; {allowed} wanted",
    at="ear",
    since="0.2.0",
)
def common_null(room: Room, _seats: Several[Seat]) -> Answer:
    """The seats do not all sit in one null.

    Why: A row at a node of the room loses one note at every seat; no seat is spared, and an equaliser fills little.

    How decided: As for `bass.own-null`; at each frequency the seat that loses least, and of these the lowest place.
    Half the pressure of the octave, 6 dB down, is a note and a quarter, 12 dB down, a warning.

    Remedy: Move the row, or a subwoofer, so that the mode is not driven or the row leaves its node.

    When to waive: Measured on site and found even.
    """
    null = room.figures.bass.common_null()
    return found(null.figure, frequency=null.frequency)


@rule(
    "bass.subwoofer-count",
    level=Level.NOTE,
    basis=practice("one subwoofer serves up to three seats in one row; published work on several subwoofers agrees"),
    each=ROOM,
    when=has_subwoofers,
    says={
        "rows": "one subwoofer for {seats} seats in {rows} rows; two or more even out the bass",
        "seats": "one subwoofer for {seats} seats; two or more even out the bass",
        "enough": "subwoofers {subwoofers}, seats {seats}",
    },
    at="subwoofers",
    since="0.1.0",
)
def subwoofer_count(room: Room, design: Design) -> Says:
    """More than three seats, or more than one row, have two subwoofers or more.

    Why: One source leaves every mode of the room alive, and no place is good for all seats.

    How decided: Number of subwoofers against number of seats and rows. Seats without a row number whose ears lie 0.6 m
    or more apart along where the reference seat faces count as rows.

    Remedy: Add a second subwoofer at the opposite wall.

    When to waive: The seat spread computed for this room is small all the same.
    """
    seats = room.figures.bass.placed_seats()
    if len(design.subwoofers) > 1:
        return passes("enough", subwoofers=len(design.subwoofers), seats=len(seats))
    rows = room.figures.bass.rows()
    if rows > 1:
        return fails("rows", seats=len(seats), rows=rows)
    if len(seats) > SEATS_FOR_ONE:
        return fails("seats", seats=len(seats))
    return passes("enough", subwoofers=len(design.subwoofers), seats=len(seats))


def _first_mode_driven(axis: str, room: Room) -> Applies:
    if room.figures.bass.driven(axis, 1) < _BARELY_DRIVEN:
        return No(f"the subwoofers together do not drive the first mode across the {axis}")
    return True


def _across(room: Room, _: Seat) -> Applies:
    return _first_mode_driven("width", room)


def _along(room: Room, _: Seat) -> Applies:
    return _first_mode_driven("length", room)


@rule(
    "bass.seat-mid-width",
    level=Level.NOTE,
    basis=memory("within 3 % of the middle the first mode's null is heard"),
    each=SEATS,
    when=(has_subwoofers, in_a_box, _across),
    window=at_least(3.0, "%"),
    says="sits {figure} off the middle of the width, in the first mode's null; balance the subwoofers left and right",
    at="ear",
    since="0.1.0",
)
def seat_mid_width(room: Room, seat: Seat) -> Figure:
    """The first mode across the width is not left to the seats in the middle.

    Why: The first mode across the room is silent in the middle, so one side's bass is lost there.

    How decided: Distance of the ear from the middle of the width in percent. Holds for a box. Subwoofers that stand
    mirror-wise left and right, alike in level and polarity, do not drive that mode, and then there is nothing to judge.

    Remedy: Stand the subwoofers mirror-wise to the middle; the picture wants the seat there.

    When to waive: The subwoofers were placed by measurement.
    """
    return room.figures.bass.off_middle(seat, "width")


@rule(
    "bass.seat-mid-length",
    level=Level.NOTE,
    basis=memory("within 3 % of the middle the first mode's null is heard"),
    each=SEATS,
    when=(has_subwoofers, in_a_box, _along),
    window=at_least(3.0, "%"),
    says="sits {figure} off half way between front and rear, in the first mode's null; {window} wanted",
    cure=("ear",),
    at="ear",
    since="0.1.0",
)
def seat_mid_length(room: Room, seat: Seat) -> Figure:
    """No seat sits half way between the front and the rear wall.

    Why: The first mode along the room is silent half way, and the second is at its loudest.

    How decided: Distance of the ear from the middle of the length in percent. Holds for a box, and where the subwoofers
    as set, with level, delay and polarity, drive that mode.

    Remedy: Move the row; two thirds of the length from the front is a common place.

    When to waive: The subwoofers stand so that the mode is not driven, and the seat spread shows it.
    """
    return room.figures.bass.off_middle(seat, "length")


@rule(
    "bass.residual-mode",
    level=Level.NOTE,
    basis=practice("mode shapes of a rigid box, by textbook acoustics; 5 % is a choice of this rule book"),
    each=SEATS,
    when=(has_subwoofers, in_a_box),
    window=at_least(5.0, "%"),
    says={
        "fail": "sits {figure} from a null of the second {axis} mode, which the subwoofers drive; {window} wanted",
        "silent": "the subwoofers leave no second mode alive",
    },
    cure=("ear",),
    at="ear",
    since="0.1.0",
)
def residual_mode(room: Room, seat: Seat) -> Answer:
    """No seat sits at the node of a second mode that the subwoofers leave alive.

    Why: Subwoofers at opposite walls cancel the odd modes and drive the even ones; a row a quarter of the length from a
    wall then sits in a null that no equaliser fills.

    How decided: How strongly all subwoofers together, as set, drive the second mode along width and length; where that
    is more than half of what they would do in a corner, the seat must be 5 % of the side away from its nodes.

    Remedy: Move the row, or stand subwoofers at the middles of all four walls, which leaves that mode silent.

    When to waive: Measured on site and found even.
    """
    view = room.figures.bass
    alive = [axis for axis in ("width", "length") if view.driven(axis, 2) > _HALF]
    if not alive:
        return passes("silent")
    nearest = min(((view.second_node(seat, axis), axis) for axis in alive), key=lambda one: one[0].value)
    return found(nearest[0], axis=nearest[1])
