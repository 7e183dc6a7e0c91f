"""The seats: what they see and hear past, how high their ears are, and where they are to the picture."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from roomlint.review import (
    LOUDSPEAKERS,
    SEATS,
    Level,
    No,
    at_each_seat,
    at_least,
    at_most,
    between,
    by_reference,
    fails,
    found,
    need,
    passes,
    practice,
    rule,
    standard,
    unsaid,
)

from . import BS775, PICTURE, with_a_picture

if TYPE_CHECKING:
    from roomlint.design.listening import Loudspeaker, Picture, Seat
    from roomlint.review import Applies, Figure, Found, Room, Says, Seen

OVER_HEADS_M: Final = 0.10
HIGHEST_RISER_M: Final = 0.50
"""More than three ordinary steps, nobody builds under a row of seats; practice, ours."""


@rule(
    "layout.line-of-sight",
    level=Level.WARNING,
    basis=practice("a listener hears a loudspeaker well where the tweeter is seen"),
    each=at_each_seat(LOUDSPEAKERS),
    says={"hidden": "{what} stands between it and the ear", "free": "the line to the ear is free"},
    after=("layout.inside-room",),
    at="position",
    since="0.1.0",
)
def line_of_sight(room: Room, both: Seen[Loudspeaker, Seat]) -> Says:
    """No wall, post, beam, soffit or hung panel comes between a loudspeaker and an ear.

    Why: Treble does not turn corners; a seat behind a chimney breast hears the room, not the loudspeaker.

    How decided: The straight line from the acoustic centre to each ear against walls, the ceiling, and obstacles and
    panels that hang free as boxes. Two centimetres at either end are left out, for loudspeakers set into a wall. Where
    the file does not speak of obstacles or treatments, a line that meets no wall stays open.

    Remedy: Move the loudspeaker or the seat past the obstacle, or add a loudspeaker for that seat.

    When to waive: A spare seat that is known to be second best.
    """
    hidden = room.figures.staging.hidden_by(both.source, both.seat)
    if hidden:
        return fails("hidden", what=hidden)
    missing = unsaid(room.design, "room.obstacles") or room.figures.covering.hung_unknown()
    if missing is not None:
        raise missing
    return passes("free")


def _with_sound_behind(room: Room, _: Seat) -> Applies:
    """Say whether a loudspeaker of the ear layer stands beside or behind the seats, by its label."""
    if room.figures.arrangement.surrounds():
        return True
    missing = room.figures.arrangement.unlabelled() or unsaid(room.design, "loudspeakers")
    if missing is not None:
        raise missing
    return No("no loudspeaker of the ear layer stands beside or behind the seats")


@rule(
    "layout.seat-back",
    level=Level.NOTE,
    basis=practice("the back of a seat ends below the ears that surround loudspeakers are to reach"),
    each=SEATS,
    when=_with_sound_behind,
    window=at_most(0.0, "m"),
    says="its back ends {figure} over its own ear and hides what is behind; {window} wanted",
    at="back_top",
    since="0.3.0",
)
def seat_back(room: Room, seat: Seat) -> Figure:
    """The back of a seat does not reach above the ear of who sits in it.

    Why: A headrest at ear height is a wall before the rear loudspeakers, and a mirror beside the ear.

    How decided: Height of the top of the seat's back less that of the ear, in rooms with a loudspeaker of the ear layer
    at 90 degrees or farther round.

    Remedy: A lower back, or a headrest that is folded down while it plays.

    When to waive: A headrest that the client wants and that was heard with and without.
    """
    return room.figures.staging.back_over_ear(seat)


@rule(
    "layout.over-heads",
    level=Level.WARNING,
    basis=practice("the line to an ear clears the heads of the rows between; 0.10 m is a choice of this rule book"),
    each=SEATS,
    window=at_least(OVER_HEADS_M, "m"),
    says={
        "fail": "hears {sources} past {head}'s head, {figure} over it; {window} wanted, {rise} more",
        "negative": "hears {sources} through {head}'s head, {size} below its top; "
        "raise {sources}, or the ear by {rise}",
        "tall": "hears {sources} past or through {head}'s head, and would need an ear {rise} higher",
        "alone": "no head of another row comes near a line to it",
    },
    cure=("ear",),
    at="ear",
    since="0.1.0",
)
def over_heads(room: Room, seat: Seat) -> Found | Says:
    """The lines from the loudspeakers to an ear clear the heads of other rows by 10 centimetres.

    Why: A head in the way dulls the treble for the listener behind it.

    How decided: Height of each line where it passes nearest to each head of another row in plan, if within 0.12 m,
    less the top of the head or of the seat back, whichever is higher; the least of all. Rows are told by their
    numbers, or by 0.6 m between front and rear. One finding a listener, with the rise that clears it. While a
    loudspeaker or a seat of another row has no place, what is clear of the rest stays open.

    Remedy: Raise the rear row by what the finding says, raise the loudspeakers, or stagger the seats. More than 0.50 m
    is no riser that anybody builds; then only the loudspeakers or the seats help.

    When to waive: Low surrounds that only the nearer row is meant to hear well.
    """
    passed = room.figures.staging.heads_in_the_way(seat, OVER_HEADS_M)
    if passed is None:
        return passes("alone")
    said = "tall" if passed.rise.value > HIGHEST_RISER_M else ""
    return found(
        passed.figure, said=said, lacks=passed.lacks, sources=passed.sources, head=passed.head, rise=passed.rise
    )  # fmt: skip


@rule(
    "layout.ear-height",
    level=Level.NOTE,
    basis=(
        BS775,
        practice("a seated ear is 1.05 to 1.30 m above its own floor, and 0.70 to 1.70 m whatever the seat"),
    ),
    each=SEATS,
    window=between(1.05, 1.30, "m", error=(0.70, 1.70)),
    says="has its ear {figure} above its own floor; a seated ear is {window}",
    at="ear.height",
    since="0.1.0",
)
def ear_height(room: Room, seat: Seat) -> Figure:
    """The ear of every seat is where a seated person's ear is.

    Why: Every angle and distance is counted from it; a slip of a hand's width here moves them all.

    How decided: Height of the ear less the riser that the seat stands on, between 1.05 and 1.30 m; beyond 0.70 to
    1.70 m nobody sits, which is an error. The standard's figure has the loudspeakers at 1.2 m, a seated ear.

    Remedy: Measure the ear of somebody who sits in the seat, and say which platform it stands on.

    When to waive: A low lounge seat or a bar stool that was measured.
    """
    return room.figures.staging.ear_height(seat)


@rule(
    "layout.picture-ahead",
    level=Level.WARNING,
    basis=(
        practice("a seat is turned to the picture; 60 degrees to the side is ours, 90 is behind the shoulder"),
        standard(
            "SMPTE Journal, January 1986",
            "proposed guideline, part I",
            read=False,
            note="15 degrees, the threshold of discomfort",
        ),
    ),
    each=SEATS,
    when=with_a_picture,
    window=at_most(60.0, "deg", note=15.0, error=90.0),
    says="has the picture {figure} to the side of where it faces; {window} wanted",
    at="facing",
    since="0.3.0",
)
def picture_ahead(room: Room, seat: Seat) -> Figure:
    """Every seat faces the picture.

    Why: A picture at the wrong end of the room, or a seat turned the wrong way, is a slip of the pen that every angle
    of the room is counted from.

    How decided: Angle in plan at the ear between the way that the seat faces and the middle of the picture; beyond 15
    degrees the neck is turned all evening, beyond 90 the picture is behind the listener, which is an error.

    Remedy: Correct the way that the seat faces, or the place of the picture; the front wall is the one that is faced.

    When to waive: A bar stool or a guest's chair that is turned by hand.
    """
    return room.figures.onscreen.aside(need(room.design.picture, room.design, "picture"), seat)


@rule(
    "layout.on-axis",
    level=Level.WARNING,
    basis=practice("the reference seat is on the centre line of the picture; 5 and 15 degrees are ours"),
    each=PICTURE,
    window=by_reference(home=at_most(15.0, "deg", note=5.0), critical=at_most(5.0, "deg")),
    says="is {figure} to the side of its axis from the reference seat {seat}; {window} wanted",
    cure=("centre",),
    at="centre",
    since="0.2.0",
)
def on_axis(room: Room, picture: Picture) -> Found:
    """The reference seat sits on the picture's axis.

    Why: Left and right, the centre and the picture share one middle; a seat beside it hears and sees all of them askew.

    How decided: Angle in plan at the picture's middle between the way that it faces and the reference seat. It faces
    square off the wall that it is on, or, where no wall is named, off the nearest wall that shows its face to the seat.

    Remedy: Make the middle seat the reference, or move the picture or the row sideways.

    When to waive: A room whose best seat cannot be in the middle, with delays entered for it.
    """
    seat = room.reference_seat
    return found(room.figures.onscreen.off_axis(picture, seat), seat=seat.words)
