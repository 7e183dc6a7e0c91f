"""What each seat sees: how large the picture is, how far up and aside, and past whom."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from roomlint.review import SEATS, Level, at_least, at_most, between, found, passes, practice, rule, standard, unsaid

from ..layout import with_a_picture
from . import CINEMA, CONTENT, DISCOMFORT, TOWARDS, WITHDRAWN

if TYPE_CHECKING:
    from roomlint.design.listening import Seat
    from roomlint.review import Figure, Found, Room, Says

BODIES: Final = ("loudspeakers", "subwoofers", "electronics.racks")
"""What may stand or hang before a picture, obstacles apart."""
HIGHEST_RISE_M: Final = 0.50
"""More than three ordinary steps, nobody builds under a row of seats; practice, ours."""


@rule(
    "picture.angle",
    level=Level.WARNING,
    basis=(WITHDRAWN, CINEMA, practice("61 degrees, 1.5 picture heights of 16:9, is as near as most like to sit")),
    each=SEATS,
    when=with_a_picture,
    window=between(30.0, 80.0, "deg", note=(30.0, 61.3)),
    says={
        "below": "the picture fills {figure} of its view; {window} wanted: a larger picture, or a nearer seat",
        "above": "the picture fills {figure} of its view; {window} wanted",
    },
    cure=("ear",),
    at="ear",
    since="0.3.0",
)
def angle(room: Room, seat: Seat) -> Figure:
    """The picture is neither small nor overwhelming from any seat.

    Why: Below 30 degrees a film is a programme on a set; from too near nobody sees the whole of it.

    How decided: Horizontal angle of the widest format that is shown, in plan at the seat: atan((x + W/2)/d) less
    atan((x - W/2)/d). 2.6566 m from 3.20 m fill 45.1 degrees, from 5.00 m 29.7. The 30 degrees come from a guideline
    that was withdrawn, and stand as the trade's habit; 80 is a cinema's first row; above 61 it is a note.

    Remedy: Take another size of picture, or move the row.

    When to waive: A display in a living room that is not for films, or a seat at a bar.
    """
    return room.figures.viewing.seen_width(seat)


@rule(
    "picture.acuity",
    level=Level.NOTE,
    basis=(
        CONTENT,
        practice("a good eye resolves a minute of arc, so that nearer than this lines may show"),
    ),
    each=SEATS,
    when=with_a_picture,
    window=at_least(1.0, ""),
    says="sits at {figure} of the distance at which the picture's lines no longer show; {window} wanted",
    cure=("ear",),
    at="ear",
    since="0.3.0",
)
def acuity(room: Room, seat: Seat) -> Figure:
    """No seat is so near that the picture's lines may show.

    Why: What is bought in sharpness is lost where the raster itself is seen.

    How decided: Distance before the picture over the one at which a line is one minute of arc, 3438 picture heights
    over the number of lines: 1.59 heights for 2160 lines, 3.18 for 1080. The lines of a projector's sheet fill the
    whole raster that covers the picture: of 2160 on 16:9 a picture of 2.39 shows 1607. Sitting farther is no fault, so
    that there is no upper edge.

    Remedy: A picture with more lines, a smaller one, or a seat farther back.

    When to waive: Moving pictures only, and nobody minds.
    """
    return room.figures.viewing.acuity(seat)


@rule(
    "picture.top",
    level=Level.WARNING,
    basis=(CONTENT, DISCOMFORT),
    each=SEATS,
    when=with_a_picture,
    window=at_most(30.0, "deg", error=35.0),
    says="looks up {figure} to the top of the picture; {window} wanted",
    after=TOWARDS,
    cure=("ear",),
    at="ear",
    since="0.3.0",
)
def top(room: Room, seat: Seat) -> Figure:
    """Nobody cranes their neck to the top of the picture.

    Why: A picture over a mantelpiece, or a first row under a large screen, is a stiff neck after an hour.

    How decided: Angle up from the eye to the top of the tallest format, square before it. The eye's height as given,
    or 17 mm above the ear. Beyond 35 degrees, the threshold of discomfort, it is an error.

    Remedy: Hang the picture lower, or move the row back.

    When to waive: Seats that lie back as far as the picture is high.
    """
    return room.figures.viewing.upward(seat, top=True)


@rule(
    "picture.height",
    level=Level.WARNING,
    basis=(
        CINEMA,
        standard("SMPTE ST 196", "9", edition="2003", read=False, note="15 degrees in review rooms"),
    ),
    each=SEATS,
    when=with_a_picture,
    window=at_most(25.0, "deg", note=15.0),
    says="looks up {figure} to the middle of the picture; {window} wanted",
    after=("picture.top",),
    cure=("ear",),
    at="ear",
    since="0.3.0",
)
def height(room: Room, seat: Seat) -> Figure:
    """The middle of the picture is at most 25 degrees, better 15, above the eyes.

    Why: A relaxed gaze falls a little below level; what hangs high is watched with the neck bent back.

    How decided: Angle up from the eye to the picture's middle, square before it. The eye's height as given, or 17 mm
    above the ear.

    Remedy: Hang the picture lower.

    When to waive: Seats that lie back.
    """
    return room.figures.viewing.upward(seat, top=False)


@rule(
    "picture.off-axis",
    level=Level.WARNING,
    basis=CINEMA,
    each=SEATS,
    when=with_a_picture,
    window=at_most(35.0, "deg", error=45.0),
    says="sees the picture from {figure} off its axis; {window} wanted",
    after=TOWARDS,
    cure=("ear",),
    at="ear",
    since="0.3.0",
)
def off_axis(room: Room, seat: Seat) -> Figure:
    """No seat sees the picture from far aside.

    Why: Faces become narrow, and many displays lose colour and contrast.

    How decided: Angle in plan at the picture's middle between the way that it faces and the seat: 35 degrees are good,
    beyond 45 nobody should have to sit. The reference seat is judged closer by `layout.on-axis`.

    Remedy: Move the seat inwards, or the picture farther away.

    When to waive: A guest's seat that is known to be second best.
    """
    return room.figures.onscreen.off_axis(room.figures.viewing.picture, seat)


@rule(
    "picture.far-edge",
    level=Level.NOTE,
    basis=CONTENT,
    each=SEATS,
    when=with_a_picture,
    window=at_most(60.0, "deg"),
    says="sees the picture's far edge {figure} off straight; {window} wanted",
    after=("picture.off-axis",),
    cure=("ear",),
    at="ear",
    since="0.3.0",
)
def far_edge(room: Room, seat: Seat) -> Figure:
    """The far edge of the picture is at most 60 degrees off straight from any seat.

    Why: Beyond that, what is written at the far edge is no longer read.

    How decided: atan((|x| + W/2)/d) in plan for the widest format, x to the side of the picture's middle and d before
    it: 1.20 m aside and 3.60 m before a picture of 2.6566 m it is 35.1 degrees.

    Remedy: Move the seat inwards or back.

    When to waive: A guest's seat that is known to be second best.
    """
    return room.figures.viewing.far_edge(seat)


@rule(
    "picture.sightline",
    level=Level.WARNING,
    basis=(
        standard(
            "Worksheet on sightlines in theatres and stadia", read=False,
            note="120 mm over the eye before is optimal, about an eye to the top of a head",
        ),
        practice("every row sees the picture's lower edge over the row before it"),
    ),
    each=SEATS,
    when=with_a_picture,
    window=at_least(0.0, "m"),
    says={
        "fail": "sees the picture's lower edge {figure} over {head}'s head; {window} wanted",
        "negative": "{head} hides the picture's lower edge, by {size}; {window} over it wanted: a riser {rise} higher",
        "tall": "{head} hides the picture's lower edge, by {size}; {rise} is no riser: raise the picture, or stagger",
        "free": "nobody sits before the picture",
    },
    after=TOWARDS,
    at="ear",
    since="0.3.0",
)  # fmt: skip
def sightline(room: Room, seat: Seat) -> Found | Says:
    """Every seat sees the picture down to its lower edge, over the heads of the rows before it.

    Why: Subtitles stand there, and a riser is built once.

    How decided: The line from the eye to the lower edge of the tallest format, where it passes a head of another row
    before the picture's width, less the top of that head or of its seat back, whichever is higher: similar triangles,
    the same as C = D(N + R)/(D + T) - R. With eyes at 1.10 m, 3.20 m from a picture that begins at 0.75 m, and the next
    row 1.80 m behind, 0.384 m of riser put the line 0.12 m over the eye before.

    Remedy: Raise the rear row by what the finding says, raise the picture, or stagger the seats.

    When to waive: A rear row that is a bar or a guest's bench.
    """
    hidden = room.figures.viewing.over_heads(seat)
    if hidden is None:
        return passes("free")
    said = "tall" if hidden.rise.value > HIGHEST_RISE_M else ""
    return found(hidden.figure, said=said, head=hidden.head, rise=hidden.rise)


@rule(
    "picture.clear-view",
    level=Level.WARNING,
    basis=practice("nothing stands before the picture: a centre below it ends below its lower edge for every seat"),
    each=SEATS,
    when=with_a_picture,
    window=at_least(0.0, "m"),
    says={
        "fail": "sees {thing} {figure} beside the picture; {window} wanted",
        "negative": "{thing} hides {size} of the picture; move the one or the other",
        "free": "nothing stands before the picture",
    },
    after=TOWARDS,
    at="ear",
    since="0.3.0",
)
def clear_view(room: Room, seat: Seat) -> Found | Says:
    """No cabinet, rack, obstacle or hung panel comes between a seat and the picture.

    Why: The centre that fits under the picture on the elevation stands before it for who sits low or near.

    How decided: From the eye the shadow of each loudspeaker, subwoofer, rack, obstacle and panel that hangs free on the
    picture's plane against the picture: negative by the least move that would part the two. A corner half way between
    eye and picture casts its shadow twice as far from the eye's own foot. What stands behind the plane, or within
    0.30 m of the eye, hides nothing. Heads are judged by `picture.sightline`.

    Remedy: Set it lower or aside, tilt it up to the ears, or raise the picture.

    When to waive: A screen that is let down behind it only for a show on purpose.
    """
    nearest = room.figures.blocking.nearest(seat)
    missing = unsaid(room.design, "room.obstacles", *BODIES) or room.figures.covering.hung_unknown()
    if nearest is None:
        if missing is not None:
            raise missing
        return passes("free")
    return found(nearest.figure, thing=nearest.thing, lacks=missing)
