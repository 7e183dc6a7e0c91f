"""Chapter bass: the subwoofers at the seats, and the room's modes."""

from __future__ import annotations

from typing import TYPE_CHECKING

from roomlint.design.base import Group
from roomlint.review import (
    Level,
    Window,
    asks,
    does_not_apply,
    fails,
    memory,
    passes,
    practice,
    rule,
)

if TYPE_CHECKING:
    from collections.abc import Callable, Iterable

    from roomlint.design.listening import Seat, Subwoofer
    from roomlint.design.model import Design
    from roomlint.review import Figure, Room, Says

NOT_A_BOX = "the room is not a rectangle under a flat ceiling, which this formula needs."
SEATS_FOR_ONE = 3


def _with_subwoofers(room: Room) -> Iterable[Design]:
    return (room.design,) if room.design.subwoofers else ()


def _seats_with_subwoofers(room: Room) -> Iterable[Seat]:
    return room.design.seats if room.design.subwoofers else ()


def _several_seats_with_subwoofers(room: Room) -> Iterable[Seat]:
    return room.design.seats if room.design.subwoofers and len(room.design.seats) > 1 else ()


def _seats_of_boxes(room: Room) -> Iterable[Seat]:
    return room.design.seats if room.design.shell.ceiling is None or room.figures.space.is_box else ()


def _computed(figure: Callable[[], Figure]) -> Figure | Says:
    """Return the figure, or leave the matter to a person where the sum over modes does not hold."""
    try:
        return figure()
    except ValueError as error:
        return asks(f"the bass at the seats was not computed: {error}. Measure it on site.")


@rule(
    "bass.seat-spread",
    level=Level.WARNING,
    basis=practice("several subwoofers even out the seats below 80 Hz; 6 and 10 dB are a choice of this rule book"),
    each=_with_subwoofers,
    reads=("subwoofers[].position", "seats[].ear", "room"),
    since="0.1.0",
    window=Window(None, 10.0, "dB"),
    target=Window(None, 6.0, "dB"),
    at="subwoofers",
)
def seat_spread(room: Room, design: Design) -> Figure | Says:
    """The bass is much the same at every seat.

    Why: Equalising helps all seats only as far as they agree; what differs from seat to seat stays.

    How decided: Pressure of all subwoofers together at every seat as a sum over the room's modes, 20 to 80 Hz in
    steps of 1 Hz; at each frequency the loudest less the quietest seat, averaged. It compares layouts: a real room may
    differ by 3 to 6 dB. In a room that is not a box the modes are found numerically; where that cannot be done, such
    as under a ceiling with steps, a person must judge.

    Remedy: Two subwoofers at opposite walls, or four; then try the positions here before building.

    When to waive: Only the reference seat matters to the client.
    """
    if len(room.figures.bass.placed_seats()) == 1:
        return does_not_apply("one seat has nothing to differ from.")
    room.figures.bass.placed_subwoofers()
    return _computed(room.figures.bass.seat_spread)


@rule(
    "bass.deep-null",
    level=Level.WARNING,
    basis=practice("a seat far below the others has lost that note; 15 dB is a choice of this rule book"),
    each=_several_seats_with_subwoofers,
    reads=("subwoofers[].position", "seats[].ear", "room"),
    since="0.1.0",
    window=Window(-15.0, None, "dB"),
    at="ear",
)
def deep_null(room: Room, seat: Seat) -> Figure | Says:
    """No seat falls far below the others at any bass note.

    Why: A deep null cannot be equalised: more power only makes the other seats louder.

    How decided: As for the seat spread; each seat's lowest level against the mean of all seats, 20 to 80 Hz.

    Remedy: Move the seat or a subwoofer out of the null; the frequency in the message tells which mode it is.

    When to waive: The seat is hardly used.
    """
    room.figures.bass.placed_seats()
    room.figures.bass.placed_subwoofers()
    return _computed(lambda: room.figures.bass.deepest_dip(seat))


@rule(
    "bass.subwoofer-count",
    level=Level.NOTE,
    basis=practice("one subwoofer serves up to three seats in one row; published work on several subwoofers agrees"),
    each=_with_subwoofers,
    reads=("subwoofers", "seats[].row"),
    since="0.1.0",
    at="subwoofers",
)
def subwoofer_count(room: Room, design: Design) -> Says:
    """More than three seats, or more than one row, have two subwoofers or more.

    Why: One source leaves every mode of the room alive, and no place is good for all seats.

    How decided: Number of subwoofers against number of seats and rows.

    Remedy: Add a second subwoofer at the opposite wall.

    When to waive: The seat spread computed for this room is small all the same.
    """
    seats = room.figures.bass.placed_seats()
    rows = {seat.row for seat in seats if seat.row is not None}
    if len(design.subwoofers) == 1 and (len(seats) > SEATS_FOR_ONE or len(rows) > 1):
        within = f" in {len(rows)} rows" if len(rows) > 1 else ""
        return fails(f"one subwoofer for {len(seats)} seats{within}; two or more even out the bass.")
    return passes(f"subwoofers: {len(design.subwoofers)}; seats: {len(seats)}.")


@rule(
    "bass.seat-mid-width",
    level=Level.NOTE,
    basis=memory("within 3 % of the middle the first mode's null is heard"),
    each=_seats_with_subwoofers,
    reads=("seats[].ear", "room.size"),
    since="0.1.0",
    window=Window(3.0, None, "%"),
    at="ear",
)
def seat_mid_width(room: Room, seat: Seat) -> Figure | Says:
    """No seat sits in the null of the first mode across the width.

    Why: The first mode across the room is silent in the middle, so one side's bass is lost there.

    How decided: Distance of the ear from the middle of the width in percent. Holds for a box. Subwoofers that stand
    mirror-wise left and right do not drive that mode, and then there is nothing to judge.

    Remedy: Stand the subwoofers mirror-wise to the middle, or move the seat sideways.

    When to waive: The picture wants the seat in the middle and the subwoofers were placed for it.
    """
    if not room.figures.bass.is_box:
        return does_not_apply(NOT_A_BOX)
    if room.figures.bass.first_mode_left("width") < _BARELY_DRIVEN:
        return passes("the subwoofers together do not drive the first mode across the width.")
    return room.figures.bass.off_middle(seat, "width")


@rule(
    "bass.seat-mid-length",
    level=Level.NOTE,
    basis=memory("within 3 % of the middle the first mode's null is heard"),
    each=_seats_with_subwoofers,
    reads=("seats[].ear", "room.size"),
    since="0.1.0",
    window=Window(3.0, None, "%"),
    at="ear",
)
def seat_mid_length(room: Room, seat: Seat) -> Figure | Says:
    """No seat sits half way between the front and the rear wall.

    Why: The first mode along the room is silent half way, and the second is at its loudest.

    How decided: Distance of the ear from the middle of the length in percent. Holds for a box.

    Remedy: Move the row; two thirds of the length from the front is a common place.

    When to waive: The subwoofers stand so that the mode is not driven, and the seat spread shows it.
    """
    if not room.figures.bass.is_box:
        return does_not_apply(NOT_A_BOX)
    if room.figures.bass.first_mode_left("length") < _BARELY_DRIVEN:
        return passes("the subwoofers together do not drive the first mode along the length.")
    return room.figures.bass.off_middle(seat, "length")


_BARELY_DRIVEN = 0.2


@rule(
    "bass.residual-mode",
    level=Level.NOTE,
    basis=practice("mode shapes of a rigid box, by textbook acoustics; 5 % is a choice of this rule book"),
    each=_seats_of_boxes,
    reads=("subwoofers[].position", "seats[].ear", "room.size"),
    since="0.1.0",
    window=Window(5.0, None, "%"),
    at="ear",
)
def residual_mode(room: Room, seat: Seat) -> Figure | Says:
    """No seat sits at the node of a second mode that the subwoofers leave alive.

    Why: Subwoofers at opposite walls cancel the odd modes and drive the even ones; a row a quarter of the length from a
    wall then sits in a null that no equaliser fills.

    How decided: How strongly all subwoofers together drive the second mode along width and length; where that is more
    than half of what one in a corner does, the seat must be 5 % of the side away from its nodes.

    Remedy: Move the row, or stand subwoofers at the middles of all four walls, which leaves that mode silent.

    When to waive: Measured on site and found even.
    """
    if not room.design.subwoofers:
        return does_not_apply("the room has no subwoofer.")
    view = room.figures.bass
    alive = [axis for axis in ("width", "length") if view.second_mode_left(axis) > _HALF]
    if not alive:
        return passes("the subwoofers leave no second mode alive.")
    return min((view.second_mode_at(seat, axis) for axis in alive), key=lambda found: found.value)


_HALF = 0.5


def _crossed_over(room: Room) -> Iterable[Group]:
    settings = {setting.id: setting for setting in room.design.calibration.settings if setting.crossover_hz is not None}
    for speaker in room.design.loudspeakers:
        if speaker.id in settings:
            yield Group((settings[speaker.id],))


@rule(
    "bass.crossover-reach",
    level=Level.WARNING,
    basis=practice("a loudspeaker must reach below its crossover, by half an octave for choice"),
    each=_crossed_over,
    reads=("calibration.settings[].crossover", "product loudspeaker.low_limit"),
    since="0.1.0",
    window=Window(1.0, None, ""),
    target=Window(1.5, None, ""),
    at="crossover",
)
def crossover_reach(room: Room, group: Group) -> Figure:
    """A loudspeaker reaches below its crossover to the subwoofers.

    Why: Between its own lower limit and the crossover nobody plays.

    How decided: Crossover frequency over the lower limit of the product: under 1 is a warning, under 1.5 a note.

    Remedy: Raise the crossover, up to about 120 Hz, or choose a product that reaches lower.

    When to waive: Measured response shows no hole.
    """
    return room.figures.bass.crossover_ratio(group.elements[0].id)


def _under_a_crossover(room: Room) -> Iterable[Subwoofer]:
    return room.design.subwoofers if room.figures.bass.highest_crossover() is not None else ()


@rule(
    "bass.subwoofer-reach",
    level=Level.WARNING,
    basis=practice("a subwoofer must play up to every crossover above it, an octave beyond for choice"),
    each=_under_a_crossover,
    reads=("calibration.settings[].crossover", "product loudspeaker.high_limit"),
    since="0.1.0",
    window=Window(1.0, None, ""),
    target=Window(1.5, None, ""),
    at="product",
)
def subwoofer_reach(room: Room, subwoofer: Subwoofer) -> Figure | Says:
    """A subwoofer plays up to the highest crossover of the loudspeakers.

    Why: Bass sent to it above its own limit is lost; one small surround with a high crossover is enough for that.

    How decided: Upper limit of the product over the highest crossover entered: under 1 is a warning, under 1.5 a note,
    for the filter's slope needs room.

    Remedy: Lower the crossover where the loudspeaker allows it, or choose a subwoofer that plays higher.

    When to waive: Measured response shows no hole.
    """
    crossover = room.figures.bass.highest_crossover()
    if crossover is None:
        return does_not_apply("no crossover is entered.")
    return room.figures.bass.upper_reach(subwoofer, crossover)
