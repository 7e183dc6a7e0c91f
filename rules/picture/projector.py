"""The projector: whether its lens reaches, what stands in its beam, and whether its light is enough."""

from __future__ import annotations

from typing import TYPE_CHECKING

from roomlint.review import (
    SEATS,
    Level,
    Window,
    Windows,
    at_least,
    at_most,
    computed,
    fails,
    memory,
    passes,
    practice,
    rule,
    standard,
)

from ..layout import PICTURE
from . import MAKERS, PROJECTOR, SCREEN_LIGHT, projected

if TYPE_CHECKING:
    from roomlint.design.listening import Picture, Projector, Seat
    from roomlint.review import Figure, Room, Says


def _range(room: Room, _: Projector) -> Windows:
    least, largest = room.figures.viewing.throw_range()
    return Windows(Window(least, largest, ""))


@rule(
    "picture.throw",
    level=Level.ERROR,
    basis=MAKERS,
    each=PROJECTOR,
    window=computed("", "the range of the lens, by the projector's sheet", _range),
    says={
        "below": "stands at {figure} picture widths, too near: its lens goes from {window}",
        "above": "stands at {figure} picture widths, too far: its lens goes to {window}",
    },
    cure=("lens",),
    at="lens",
    since="0.3.0",
)
def throw(room: Room, projector: Projector) -> Figure:
    """The projector stands where its lens can fill the picture.

    Why: A lens that does not reach is found when the ceiling is closed and the mount is up.

    How decided: Distance of the lens before the picture's plane over the width of the raster that just covers the
    picture, against the least and the largest throw ratio of the sheet. 4.20 m for 2.6566 m are 1.58.

    Remedy: Move the projector along its axis, or choose another lens.

    When to waive: Never; another lens is on the sheet or it is not.
    """
    return room.figures.viewing.throw()


@rule(
    "picture.lens-shift",
    level=Level.ERROR,
    basis=(MAKERS, practice("a mount makes up 1 % of a picture for a lens without shift, a choice of this rule book")),
    each=PROJECTOR,
    window=at_most(100.0, "%"),
    says="asks for {figure} of the shift that its lens has up or aside; {window} there is",
    after=("picture.throw",),
    cure=("lens",),
    at="lens",
    since="0.3.0",
)
def lens_shift(room: Room, projector: Projector) -> Figure:
    """The lens's shift brings the picture to the screen, without tilting the projector.

    Why: What shift does not reach is tilted and corrected in software, which costs sharpness and light.

    How decided: How far the lens is above or below the picture's middle, and to its side, in per cent of the raster's
    height and width, or of half of them, as the projector's sheet counts it, against what the sheet allows alone. A
    lens 0.853 m over the middle of 1.494 m asks for 57 % by the one convention and 114 % by the other. A lens without
    shift is held against 1 %, which its mount makes up and the finding tells.

    Remedy: Lower or raise the projector, or move it sideways.

    When to waive: The maker's table of the installation says otherwise.
    """
    return room.figures.viewing.shift()


@rule(
    "picture.both-shifts",
    level=Level.WARNING,
    basis=practice("up and aside trade off; makers' tables are a little wider than the straight line taken here"),
    each=PROJECTOR,
    window=at_most(100.0, "%"),
    says="asks for {figure} of its lens's shift, up and aside taken together; {window} is sure",
    after=("picture.throw", "picture.lens-shift"),
    cure=("lens",),
    at="lens",
    since="0.3.0",
)
def both_shifts(room: Room, projector: Projector) -> Figure:
    """Shift up and shift aside are not both asked for to their ends.

    Why: A lens that is shifted all the way up has nothing left to go aside.

    How decided: The shares of both, as for `picture.lens-shift`, added. Two makers' tables allow 1.08 and 1.10 where
    the sum allows one, so that a figure a little over it is to be looked up. A way that the lens does not shift has
    nothing to trade and does not count.

    Remedy: Put the lens on the picture's middle line.

    When to waive: The maker's table of shifts allows both together.
    """
    return room.figures.viewing.both_shifts()


@rule(
    "picture.beam-heads",
    level=Level.WARNING,
    basis=practice("the beam clears the heads of those who sit by 10 centimetres"),
    each=SEATS,
    when=projected,
    window=at_least(0.10, "m"),
    says={
        "fail": "has the projector's beam {figure} over the head; {window} wanted",
        "negative": "has the head {size} in the projector's beam; {window} over it wanted",
    },
    at="head_top",
    since="0.3.0",
)
def beam_heads(room: Room, seat: Seat) -> Figure:
    """Nobody who sits has the head in the projector's beam.

    Why: A shadow on the picture, and a lamp in the eyes.

    How decided: The ray from the lens to the picture's lower edge, z = z_b + (z_lens - z_b) y/TD, where it passes a
    head that stands between lens and picture within the beam's width, less the top of the head. What is not in the
    beam counts as a metre clear. Those who walk through it are not judged.

    Remedy: Raise the projector, or move the row out of the beam.

    When to waive: Never; the shadow is there in every film.
    """
    return room.figures.viewing.beam_over(seat)


@rule(
    "picture.beam-free",
    level=Level.ERROR,
    basis=practice("light goes straight"),
    each=PROJECTOR,
    says={"met": "has {what} in its beam", "free": "its beam meets nothing before the picture"},
    after=("layout.fixtures-inside",),
    at="lens",
    since="0.3.0",
)
def beam_free(room: Room, projector: Projector) -> Says:
    """No beam, soffit, post, slope, loudspeaker or hung panel comes into the projector's beam.

    Why: What hangs in the beam throws its shadow on every picture.

    How decided: Nine straight lines from the lens, to the picture's middle, edges and corners a hair inside, against
    walls and ceiling; and what obstacles, racks, panels that hang free and cabinets hide of 0.98 of the picture's width
    and height from there. Where the file does not speak of obstacles, treatments or loudspeakers, or one of these has
    no place, a beam that meets nothing stays open.

    Remedy: Move the projector, the picture, or what stands between.

    When to waive: A beam whose edge grazes a thing outside the picture that is shown.
    """
    what = room.figures.viewing.beam_meets()
    if what:
        return fails("met", what=what)
    missing = room.figures.viewing.beam_lacks()
    if missing is not None:
        raise missing
    return passes("free")


@rule(
    "picture.luminance",
    level=Level.WARNING,
    basis=(SCREEN_LIGHT, practice("a home picture is wanted no dimmer than a cinema's")),
    each=PICTURE,
    when=projected,
    window=at_least(37.8, "cd/m2", note=48.0),
    says="is {figure} bright at its middle; {window} wanted",
    since="0.3.0",
)
def luminance(room: Room, picture: Picture) -> Figure:
    """A projected picture is as bright as a cinema's.

    Why: A dim picture has no depth, and a lamp only ever gets weaker.

    How decided: L = flux x gain / (pi x area), the flux that the projector's sheet gives for the mode in use over the
    raster that covers the picture, on the screen's axis. 1500 lm at gain 1.0 on 3.97 m2 are 120 cd/m2. Below 48 it is
    a note, below 37.8, the least of a theatre, a finding. An upper edge is the client's taste.

    Remedy: A brighter projector or mode, a screen with gain, or a smaller picture.

    When to waive: A client who has seen it and likes it.
    """
    return room.figures.viewing.luminance()


@rule(
    "picture.off-axis-light",
    level=Level.WARNING,
    basis=practice(
        "half the gain is left at a screen's half-gain angle by its definition; the curve is a model of ours"
    ),
    each=SEATS,
    when=projected,
    window=at_least(50.0, "%"),
    says="gets {figure} of the light that the screen has on its axis; {window} wanted",
    after=("picture.off-axis",),
    cure=("ear",),
    at="ear",
    since="0.3.0",
)
def off_axis_light(room: Room, seat: Seat) -> Figure:
    """Every seat gets at least half of the screen's light.

    Why: A screen with gain takes from the side seats what it gives to the middle.

    How decided: exp(-ln 2 (phi/th)^2) at the seat's angle off the picture's axis in plan, th the half-gain angle of the
    screen's sheet.

    Remedy: A screen with less gain, or seats nearer to the axis.

    When to waive: A guest's seat.
    """
    return room.figures.viewing.off_axis_light(seat)


@rule(
    "picture.contrast",
    level=Level.WARNING,
    basis=(
        standard(
            "ANSI/AVIXA V201.01", read=False, note="15:1 for what is only looked at; on the body's own calculator page"
        ),
        memory("80:1 for films", document="ANSI/INFOCOMM 3M"),
    ),
    each=PICTURE,
    when=projected,
    window=at_least(15.0, "", note=80.0),
    says="has a contrast of {figure} to 1 with the light that is on; {window} wanted",
    after=("picture.luminance",),
    at="ambient",
    since="0.3.0",
)
def contrast(room: Room, picture: Picture) -> Figure:
    """The light in the room leaves a projected picture its contrast.

    Why: A projector cannot throw black: what falls on the screen is the darkest that anybody sees.

    How decided: (L_w + L_a)/(L_b + L_a), white as in `picture.luminance`, black by the contrast of the projector's
    sheet, and L_a = E x gain / pi of the light on the screen when watching. 100 cd/m2 at 200:1 in 5 lx leave 49 to 1.

    Remedy: Darken the room and its walls, or take a brighter projector.

    When to waive: A room for sports with the lights on.
    """
    return room.figures.viewing.contrast()
