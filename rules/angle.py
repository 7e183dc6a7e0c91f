"""Chapter angle: where loudspeakers stand around the listener, judged at the reference seat."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from roomlint.review import Against, Group, Level, Window, does_not_apply, practice, rule, standard

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator

    from roomlint.design.listening import Loudspeaker
    from roomlint.review import Figure, Room, Says

BS775 = standard("ITU-R BS.775-3", "figure 1", read=True)
BS2051 = standard(
    "ITU-R BS.2051-1", "loudspeaker position tables", read=False, note="through the public ADM renderer's data"
)
TUTORIAL = standard("monitoring tutorial on BS.775-1 and BS.1116-1", edition="2005", read=False)
HOME_STUDY = standard("Japan Audio Society working group on home theatre", "AES Japan report, 2012", read=False)
TRADE_FRONT = practice("front loudspeakers 22 to 30 degrees either side of straight ahead")
READS = ("seats[].ear", "seats[].facing", "loudspeakers[].position", "loudspeakers[].label")


def labelled(*labels: str) -> Callable[[Room], Iterator[Loudspeaker]]:
    """Return a selector of the loudspeakers that carry one of the labels."""

    def each(room: Room) -> Iterator[Loudspeaker]:
        return room.design.labelled(*labels)

    return each


def layer(*letters: str) -> Callable[[Room], Iterator[Loudspeaker]]:
    """Return a selector of the loudspeakers of some layers."""

    def each(room: Room) -> Iterator[Loudspeaker]:
        for speaker in room.design.loudspeakers:
            if speaker.label is not None and speaker.label.rstrip("0123456789SC+-") in letters:
                yield speaker

    return each


def front_pair_of(room: Room) -> Iterator[Group]:
    """Yield the front pair, when both of it are there."""
    left, right = next(room.design.labelled("M+030"), None), next(room.design.labelled("M-030"), None)
    if left is not None and right is not None:
        yield Group((left, right))


def _outward(room: Room, speaker: Loudspeaker, window: Window) -> Against:
    seat = room.reference_seat
    figure = room.figures.angles.outward(speaker, seat)
    hint = room.figures.angles.where_to(speaker, seat, window.low or 0.0, window.high or 180.0)
    return Against(figure, window, says=hint)


def in_layout(room: Room, speaker: Loudspeaker) -> Against | Says:
    """Judge a loudspeaker's azimuth by the range that the layout gives its label."""
    allowed = room.figures.angles.allowed(speaker)
    if allowed is None:
        return does_not_apply(f"layout {room.design.layout} has no {speaker.label}.")
    low, high = allowed
    # A single direction is met to the tolerance that setting out can keep.
    return _outward(room, speaker, Window(low, high, "deg") if low < high else Window(low - 2.0, high + 2.0, "deg"))


@rule(
    "angle.front-pair",
    level=Level.WARNING,
    basis=(TRADE_FRONT, BS775, BS2051),
    each=labelled("M+030", "M-030"),
    reads=(*READS, "layout", "project.reference"),
    since="0.1.0",
    window=Window(22.0, 32.0, "deg"),
    critical=Window(28.0, 32.0, "deg"),
    at="position",
)
def front_pair(room: Room, speaker: Loudspeaker) -> Against:
    """Left and right front loudspeakers stand 22 to 30 degrees either side of straight ahead.

    Why: Closer together the stage collapses toward the middle; wider apart the phantom images in between grow weak and
    leave the picture.

    How decided: Azimuth at the reference seat toward the label's own side. At home 22 to 30 degrees and 2 more for
    setting out, so that the standard's own 30 does not stand on the edge; up to 45 in the layouts whose standard allows
    it (4+9+0, 0+7+0, 4+7+0). For critical listening 30 degrees within 2. The 2 degrees are ours.

    Remedy: Move the loudspeaker sideways into the range that the message gives, or move the seat.

    When to waive: A picture far wider or narrower than the window, with loudspeakers matched to its edges.
    """
    wide = room.design.layout in {"4+9+0", "0+7+0", "4+7+0"}
    home = Window(22.0, 45.0 if wide else 32.0, "deg")
    return _outward(room, speaker, Window(28.0, 32.0, "deg") if room.critical else home)


@rule(
    "angle.front-included",
    level=Level.NOTE,
    basis=standard(
        "CTA/CEDIA-RP22",
        "front loudspeakers",
        edition="1.2 (2023)",
        read=False,
        note="from a text that does not name its document",
    ),
    each=front_pair_of,
    reads=READS,
    since="0.1.0",
    window=Window(44.0, 64.0, "deg"),
    at="position",
)
def front_included(room: Room, pair: Group) -> Figure:
    """The front pair spans 44 to 60 degrees as heard from the reference seat.

    Why: The span sets the width of the stage, whichever way the pair is turned about the seat.

    How decided: Azimuth of the left minus azimuth of the right at the reference seat; 4 degrees more than 60 are ours,
    for setting out. The window is known from a text that does not name its document, so a departure is a note only.

    Remedy: Widen or narrow the pair, or move the seat nearer or farther.

    When to waive: Loudspeakers matched to the edges of an unusually wide or narrow picture.
    """
    left, right = pair.elements
    return room.figures.angles.included(left, right, room.reference_seat)  # type: ignore[arg-type]


@rule(
    "angle.picture-edge",
    level=Level.WARNING,
    basis=(
        standard("ITU-R BS.775-3", "figure 1 and note 2", read=True, note="its two reference screens imply 6 and 13.5"),
        practice("the two as limits are a choice of this rule book"),
    ),
    each=labelled("M+030", "M-030"),
    reads=(*READS, "picture.centre", "picture.width"),
    since="0.1.0",
    window=Window(None, 13.5, "deg"),
    target=Window(None, 6.0, "deg"),
    at="position",
)
def picture_edge(room: Room, speaker: Loudspeaker) -> Figure | Says:
    """Front loudspeakers are heard near the edges of the picture.

    Why: Voices and effects that leave the picture sideways are heard away from where they are seen.

    How decided: Angle at the reference seat between the loudspeaker and the picture's edge on its side. The reference
    screens of the standard leave 6 and 13.5 degrees, which are the note and the warning here.

    Remedy: Bring loudspeaker and edge together, or choose another picture width.

    When to waive: A music room in which the picture comes second.
    """
    picture = room.design.picture
    if picture is None:
        return does_not_apply("the room has no picture.")
    return room.figures.angles.picture_mismatch(speaker, picture, room.reference_seat)


@rule(
    "angle.surround-pair",
    level=Level.WARNING,
    basis=(HOME_STUDY, BS775),
    each=labelled("M+110", "M-110"),
    reads=(*READS, "project.reference"),
    since="0.1.0",
    window=Window(100.0, 135.0, "deg"),
    target=Window(100.0, 120.0, "deg"),
    limit=Window(90.0, 150.0, "deg"),
    critical=Window(100.0, 120.0, "deg"),
    at="position",
)
def surround_pair(room: Room, speaker: Loudspeaker) -> Against:
    """The surround pair of five channels stands 100 to 120 degrees round; home rooms reach to 135.

    Why: Nearer the front it pulls images out of the stage; farther back the sides fall empty.

    How decided: Azimuth at the reference seat toward the label's own side. Within 100 to 120 passes everywhere; a home
    room outside that, up to 135, gets a note; beyond it a warning, and outside 90 to 150, our choice, an error. For
    critical listening 100 to 120 is the window.

    Remedy: Move the loudspeaker along the side wall into the range that the message gives.

    When to waive: Glass or a door where it belongs, with the reason recorded as a departure.
    """
    # The hint leads into the standard's own range, which every other window holds as well.
    answer = _outward(room, speaker, Window(100.0, 120.0, "deg"))
    return answer if room.critical else replace(answer, window=Window(100.0, 135.0, "deg"))


@rule(
    "angle.side-pair",
    level=Level.WARNING,
    basis=BS2051,
    each=labelled("M+090", "M-090"),
    reads=(*READS, "layout"),
    since="0.1.0",
    window=Window(85.0, 110.0, "deg"),
    at="position",
)
def side_pair(room: Room, speaker: Loudspeaker) -> Against | Says:
    """Side loudspeakers stand beside the reference seat, where the layout puts M+090 and M-090.

    Why: In front of the ears they compete with the stage; far behind them the sides fall empty.

    How decided: Azimuth at the reference seat toward the label's own side against the layout's range: 85 to 110 degrees
    in 0+7+0, 4+7+0 and 4+9+0, 60 to 150 in 3+7+0, 90 in 9+10+3, where 2 degrees of tolerance are ours.

    Remedy: Move the loudspeaker along the side wall into the range that the message gives.

    When to waive: Glass or a door where it belongs, with the reason recorded as a departure.
    """
    return in_layout(room, speaker)


@rule(
    "angle.rear-pair",
    level=Level.WARNING,
    basis=BS2051,
    each=labelled("M+135", "M-135"),
    reads=(*READS, "layout"),
    since="0.1.0",
    window=Window(120.0, 150.0, "deg"),
    at="position",
)
def rear_pair(room: Room, speaker: Loudspeaker) -> Against | Says:
    """Rear loudspeakers stand behind the reference seat, where the layout puts M+135 and M-135.

    Why: Too far forward they merge with the sides; too near the middle the rear collapses to one place.

    How decided: Azimuth at the reference seat toward the label's own side against the layout's range: 120 to 150
    degrees in 0+7+0, 4+7+0 and 4+9+0, 60 to 150 in 3+7+0, 110 to 135 in 9+10+3.

    Remedy: Move the loudspeaker along its wall into the range that the message gives.

    When to waive: A seat against the rear wall that leaves no place behind it.
    """
    return in_layout(room, speaker)


@rule(
    "angle.centre-height",
    level=Level.WARNING,
    basis=(HOME_STUDY, practice("a note beyond 10 degrees, a choice of this rule book")),
    each=labelled("M+000"),
    reads=READS,
    since="0.1.0",
    window=Window(None, 20.0, "deg"),
    target=Window(None, 10.0, "deg"),
    at="position",
)
def centre_height(room: Room, speaker: Loudspeaker) -> Figure | Says:
    """The centre is heard within 20 degrees of the height of left and right.

    Why: Movement across the stage should not dip or climb at the middle.

    How decided: Elevation of the centre at the reference seat against the mean of left and right. Beyond 20 degrees,
    the limit of a listening study, a warning; beyond 10, our choice, a note.

    Remedy: Bring the centre nearer to the height of left and right, or move the three together.

    When to waive: A display that leaves only the place below it, with the centre tilted up to the ear.
    """
    for pair in front_pair_of(room):
        left, right = pair.elements
        return room.figures.angles.centre_offset(speaker, left, right, room.reference_seat)  # type: ignore[arg-type]
    return does_not_apply("the front pair is not complete.")


@rule(
    "angle.centre-picture",
    level=Level.WARNING,
    basis=practice("voices come from near the picture's middle; 7 and 15 degrees are a choice of this rule book"),
    each=labelled("M+000"),
    reads=(*READS, "picture.centre"),
    since="0.1.0",
    window=Window(None, 15.0, "deg"),
    target=Window(None, 7.0, "deg"),
    at="position",
)
def centre_picture(room: Room, speaker: Loudspeaker) -> Figure | Says:
    """The centre is heard within 15 degrees of the height of the picture's middle.

    Why: Voices that come from far below or above a face are heard as not belonging to it.

    How decided: Vertical angle at the reference seat's ear between the centre loudspeaker and the picture's middle.

    Remedy: Raise or lower the centre, lower the picture, or put the centre behind a transparent screen.

    When to waive: A display with the centre right below it and the seat far away.
    """
    picture = room.design.picture
    if picture is None:
        return does_not_apply("the room has no picture.")
    return room.figures.angles.picture_offset(speaker, picture, room.reference_seat)


@rule(
    "angle.front-height",
    level=Level.WARNING,
    basis=standard("ITU-R BS.775-3", "text on front loudspeakers and picture", read=False),
    each=labelled("M+030", "M-030", "M+000"),
    reads=(*READS, "picture.centre", "picture.height"),
    since="0.1.0",
    window=Window(None, 60.0, "%"),
    at="position",
)
def front_height(room: Room, speaker: Loudspeaker) -> Figure | Says:
    """Front loudspeakers stand no higher than 60 per cent of the picture's height.

    Why: Sound from above the action pulls the eye away from it.

    How decided: Height of the acoustic centre above the picture's bottom, as a share of the picture's height.

    Remedy: Lower the loudspeaker, or raise the picture.

    When to waive: A centre above the picture where nothing fits below, aimed down at the ear.
    """
    picture = room.design.picture
    if picture is None:
        return does_not_apply("the room has no picture.")
    return room.figures.angles.above_picture_bottom(speaker, picture)


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
    reads=READS,
    since="0.1.0",
    window=Window(5.0, 60.0, "deg"),
    at="position",
)
def screen_pair(room: Room, speaker: Loudspeaker) -> Against:
    """Screen-edge loudspeakers stand inside or outside the front pair, not on it.

    Why: Between 25 and 35 degrees they and the front pair stand in the same direction.

    How decided: Azimuth at the reference seat toward the label's own side: 5 to 25 degrees, or 35 to 60.

    Remedy: Move the pair to the picture's edges, or leave it out and declare the channels unfitted.

    When to waive: Hardly ever; leave the pair out instead.
    """
    figure = room.figures.angles.outward(speaker, room.reference_seat)
    inner = Window(5.0, 25.0, "deg")
    return Against(figure, inner if inner.margin(figure.value) > -5.0 else Window(35.0, 60.0, "deg"))  # noqa: PLR2004
