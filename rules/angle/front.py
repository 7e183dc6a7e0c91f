"""The front: left, right and centre against straight ahead, against each other and against the picture."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from roomlint.review import (
    Cases,
    Level,
    No,
    Window,
    Windows,
    at_most,
    between,
    by_reference,
    found,
    labelled,
    need,
    practice,
    rule,
    standard,
)

from . import BESIDE, BS775, BS2051, HOME_STUDY, SETTING_OUT_DEG, SIDES, TRADE_FRONT, as_laid_out, with_a_picture

if TYPE_CHECKING:
    from roomlint.design.listening import Loudspeaker
    from roomlint.review import Applies, Figure, Found, Room

WIDE_LAYOUTS: Final = frozenset({"4+9+0", "0+7+0", "4+7+0"})
SEVEN: Final = 7
NARROW_LAYOUT: Final = "9+10+3"
HOME = between(22.0, 32.0, "deg", allowance=SETTING_OUT_DEG)
WIDE = between(22.0, 45.0, "deg", allowance=SETTING_OUT_DEG)
CRITICAL = between(28.0, 32.0, "deg", allowance=SETTING_OUT_DEG)
CRITICAL_WIDE = between(30.0, 45.0, "deg", allowance=SETTING_OUT_DEG)
CRITICAL_NARROW = between(22.5, 30.0, "deg", allowance=SETTING_OUT_DEG)
MIDDLE_HOME = at_most(7.0, "deg", note=2.0)
MIDDLE_CRITICAL = Windows(Window(None, 2.0, "deg", SETTING_OUT_DEG))


def allows_wide(room: Room) -> bool:
    """Whether the front pair may stand wider: in three layouts, and in one's own with as many in the ear layer."""
    layout = room.design.layout
    named = room.figures.arrangement.named_counts(layout) if layout is not None else None
    return layout in WIDE_LAYOUTS or (named is not None and named.middle >= SEVEN)


def front_windows(room: Room, _: Loudspeaker) -> Windows:
    """Return the window of the front pair: the layout's own where it allows more, and nearer for critical listening."""
    if not room.critical:
        return WIDE if allows_wide(room) else HOME
    if room.design.layout == NARROW_LAYOUT:
        return CRITICAL_NARROW
    return CRITICAL_WIDE if allows_wide(room) else CRITICAL


@rule(
    "angle.front-pair",
    level=Level.WARNING,
    basis=(TRADE_FRONT, BS775, BS2051),
    each=labelled("M+030", "M-030"),
    when=as_laid_out,
    window=Cases(
        "deg",
        (
            ("at home", HOME),
            ("at home in 4+9+0, 0+7+0 and 4+7+0", WIDE),
            ("for critical listening", CRITICAL),
            ("for critical listening in 4+9+0, 0+7+0 and 4+7+0", CRITICAL_WIDE),
            ("for critical listening in 9+10+3", CRITICAL_NARROW),
        ),
        front_windows,
    ),
    says={
        "below": "stands {figure}; the stage wants it {window} out",
        "above": "stands {figure}; the stage holds together {window} out",
    },
    after=(*SIDES, BESIDE),
    cure=("position",),
    at="position",
    since="0.1.0",
)
def front_pair(room: Room, speaker: Loudspeaker) -> Figure:
    """Left and right front loudspeakers stand 22 to 32 degrees either side of straight ahead.

    Why: Closer together the stage collapses toward the middle; wider apart the phantom images in between grow weak and
    leave the picture. What the pair spans follows from it.

    How decided: Azimuth at the reference seat toward the label's own side. At home the trade's 22 to 30 degrees and 2
    more, so that the standard's own 30 does not stand on the edge; up to 45 in the layouts whose standard allows it
    (4+9+0, 0+7+0, 4+7+0). For critical listening 30 degrees within 2, or the layout's own range: 30 to 45 in those
    three, 22.5 to 30 in 9+10+3. A layout of one's own with seven or more in the ear layer is taken as those three, any
    other as the layouts of five. The 2 degrees are ours. It took over `angle.front-included`, which said the same of
    the sum.

    Remedy: Move the loudspeaker sideways into the range that the message gives, or move the seat.

    When to waive: A picture far wider or narrower than usual, with loudspeakers matched to its edges.
    """
    return room.figures.angles.outward(speaker, room.reference_seat)


@rule(
    "angle.centre-azimuth",
    level=Level.WARNING,
    basis=(BS775, practice("a voice 7 degrees off the middle of the stage is heard beside the face; ours")),
    each=labelled("M+000"),
    window=by_reference(home=MIDDLE_HOME, critical=MIDDLE_CRITICAL),
    says="stands {figure} to the side of straight ahead; {window} wanted",
    after=("layout.inside-room", BESIDE),
    cure=("position",),
    at="position",
    since="0.2.0",
)
def centre_azimuth(room: Room, speaker: Loudspeaker) -> Figure:
    """The centre stands straight ahead of the reference seat, to 7 degrees.

    Why: Every voice comes from it; off the middle it pulls the whole stage with it.

    How decided: Angle at the reference seat between the centre and the upright plane straight ahead. The standard has
    it at 0 degrees. At home beyond 2 degrees a note and beyond 7 a warning, both ours; for critical listening 2.

    Remedy: Move the centre sideways under or over the middle of the picture, or make the middle seat the reference.

    When to waive: A door or a fireplace in the middle, with no picture in the room.
    """
    return room.figures.angles.off_middle(speaker, room.reference_seat, behind=False)


@rule(
    "angle.picture-edge",
    level=Level.NOTE,
    basis=(
        standard("ITU-R BS.775-3", "figure 1 and note 2", read=True, note="its two reference screens imply 6 and 13.5"),
        practice("the two as limits are a choice of this rule book"),
    ),
    each=labelled("M+030", "M-030"),
    when=(with_a_picture, as_laid_out),
    window=by_reference(home=at_most(13.5, "deg"), critical=at_most(13.5, "deg", note=6.0)),
    says="is heard {figure} from the picture's edge; {window} keeps sound with sight",
    after=(*SIDES, BESIDE, "angle.front-pair"),
    cure=("position",),
    critical_level=Level.WARNING,
    at="position",
    since="0.1.0",
)
def picture_edge(room: Room, speaker: Loudspeaker) -> Figure:
    """Front loudspeakers are heard near the edges of the picture, to 13.5 degrees.

    Why: Voices and effects that leave the picture sideways are heard away from where they are seen.

    How decided: Angle at the reference seat between the loudspeaker and the picture's edge on its side; the picture
    is square to the way that it faces. The reference screens of the standard leave 6 and 13.5 degrees: a note beyond
    13.5 at home, where a display is seldom as wide as the stage; for critical listening a note beyond 6 and a warning
    beyond 13.5.

    Remedy: Bring loudspeaker and edge together, or choose another picture width.

    When to waive: A music room in which the picture comes second.
    """
    picture = need(room.design.picture, room.design, "picture")
    return room.figures.onscreen.edge_mismatch(speaker, picture, room.reference_seat)


def beside_a_front_pair(room: Room, speaker: Loudspeaker) -> Applies:
    """Say whether there is a left and a right to compare the centre with."""
    pair = [next(room.design.labelled(label), None) for label in ("M+030", "M-030")]
    if None in pair:
        unlabelled = room.figures.arrangement.unlabelled()
        if unlabelled is not None:
            raise unlabelled
        return No("the front pair is not complete")
    return True


@rule(
    "angle.centre-height",
    level=Level.WARNING,
    basis=(HOME_STUDY, practice("a note beyond 10 degrees for critical listening, a choice of this rule book")),
    each=labelled("M+000"),
    when=beside_a_front_pair,
    window=by_reference(home=at_most(20.0, "deg"), critical=at_most(20.0, "deg", note=10.0)),
    says="is heard {figure} above or below left and right; {window} wanted",
    after=("layout.inside-room", "angle.centre-picture"),
    cure=("position",),
    at="position",
    since="0.1.0",
)
def centre_height(room: Room, speaker: Loudspeaker) -> Figure:
    """The centre is heard within 20 degrees of the height of left and right.

    Why: Movement across the stage should not dip or climb at the middle.

    How decided: Elevation of the centre at the reference seat against the mean of left and right. Beyond 20 degrees,
    the limit of a listening study, a warning; for critical listening beyond 10, our choice, a note. Where the centre is
    told against the picture already, this waits: one low centre is told once.

    Remedy: Bring the centre nearer to the height of left and right, or move the three together.

    When to waive: A display that leaves only the place below it, with the centre tilted up to the ear.
    """
    left, right = (
        need(next(room.design.labelled(label), None), room.design, "loudspeakers") for label in ("M+030", "M-030")
    )
    return room.figures.onscreen.centre_offset(speaker, left, right, room.reference_seat)


@rule(
    "angle.centre-picture",
    level=Level.WARNING,
    basis=practice("voices come from near the picture's middle; 7 and 15 degrees are a choice of this rule book"),
    each=labelled("M+000"),
    when=with_a_picture,
    window=at_most(15.0, "deg", note=7.0),
    says="is heard {figure} above or below the middle of the picture; {window} wanted",
    after=("layout.inside-room",),
    cure=("position",),
    at="position",
    since="0.1.0",
)
def centre_picture(room: Room, speaker: Loudspeaker) -> Figure:
    """The centre is heard within 15 degrees of the height of the picture's middle.

    Why: Voices that come from far below or above a face are heard as not belonging to it.

    How decided: Vertical angle at the reference seat's ear between the centre loudspeaker and the picture's middle.

    Remedy: Raise or lower the centre, lower the picture, or put the centre behind a transparent screen.

    When to waive: A display with the centre right below it and the seat far away.
    """
    picture = need(room.design.picture, room.design, "picture")
    return room.figures.onscreen.middle_offset(speaker, picture, room.reference_seat)


@rule(
    "angle.front-height",
    level=Level.NOTE,
    basis=standard("ITU-R BS.775-3", "text on front loudspeakers and picture", read=False),
    each=labelled("M+030", "M-030", "M+000"),
    when=with_a_picture,
    window=at_most(0.0, "m"),
    says="stands {figure} higher than picture and ear allow; sound from above pulls the eye away",
    after=("layout.inside-room", "angle.ear-elevation", "angle.centre-height", "angle.centre-picture"),
    cure=("position",),
    critical_level=Level.WARNING,
    at="position",
    since="0.1.0",
)
def front_height(room: Room, speaker: Loudspeaker) -> Found:
    """Front loudspeakers stand no higher than 60 per cent of the picture's height, or than the ear.

    Why: Sound from above the action pulls the eye away from it.

    How decided: Height of the acoustic centre above 60 per cent of the picture's height, or above the reference seat's
    ear where that is higher: beside a low display a loudspeaker at the ear stands right. The published share is known
    second-hand.

    Remedy: Lower the loudspeaker, or raise the picture.

    When to waive: A centre above the picture where nothing fits below, aimed down at the ear.
    """
    picture = need(room.design.picture, room.design, "picture")
    return found(room.figures.onscreen.too_high(speaker, picture, room.reference_seat))


@rule(
    "angle.screen-pair",
    level=Level.WARNING,
    basis=standard(
        "EBU ADM renderer",
        "check of screen loudspeakers",
        edition="2.1.0",
        read=False,
        note="program text, not a standard's",
    ),
    each=labelled("M+SC", "M-SC"),
    window=Windows(Window(None, 0.0, "deg", SETTING_OUT_DEG)),
    says="stands {azimuth}, {figure} off the 5 to 25 or 35 to 60 deg where it is told apart from left and right",
    after=SIDES,
    cure=("position",),
    at="position",
    since="0.1.0",
)
def screen_pair(room: Room, speaker: Loudspeaker) -> Found:
    """Screen-edge loudspeakers stand inside or outside the front pair, not on it.

    Why: Between 25 and 35 degrees they and the front pair stand in the same direction.

    How decided: How far round the azimuth at the reference seat is from 5 to 25 or 35 to 60 degrees toward the label's
    own side, whichever is nearer; 0 inside them.

    Remedy: Move the pair to the picture's edges, or leave it out and declare the channels unfitted.

    When to waive: Hardly ever; leave the pair out instead.
    """
    seat, angles = room.reference_seat, room.figures.angles
    position = room.figures.arrangement.screen_edge(speaker)
    return found(angles.outside_azimuth(speaker, position, seat), azimuth=angles.outward(speaker, seat))
