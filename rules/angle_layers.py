"""Chapter angle, the layers: each as a whole, and its height above the ear, judged at the reference seat."""

from __future__ import annotations

from typing import TYPE_CHECKING

from roomlint.rules.angle import BS775, BS2051, HOME_STUDY, READS, TUTORIAL, in_layout, labelled, layer

from roomlint.review import Against, Group, Level, Window, does_not_apply, memory, practice, rule, standard

if TYPE_CHECKING:
    from collections.abc import Iterator

    from roomlint.design.listening import Loudspeaker
    from roomlint.review import Figure, Room, Says


def ear_layer(room: Room) -> Iterator[Group]:
    """Yield the ear layer as one group, when it surrounds the listener."""
    found = tuple(layer("M")(room))
    if len(found) > 3:  # noqa: PLR2004  three fronts surround nobody
        yield Group(found, joined=", ")


def many_surrounds(room: Room) -> Iterator[Group]:
    """Yield the surround loudspeakers of each side that has three or more."""
    for sign in "+-":
        found = tuple(
            speaker
            for speaker in layer("M")(room)
            if speaker.label is not None
            and speaker.label[1] == sign
            and speaker.label[2:].isdigit()
            and 60 <= int(speaker.label[2:]) < 180  # noqa: PLR2004  the arc of note 4
        )
        if len(found) >= 3:  # noqa: PLR2004  two have one interval
            yield Group(found, joined=", ")


@rule(
    "angle.upper-azimuth",
    level=Level.WARNING,
    basis=BS2051,
    each=layer("U", "UH"),
    reads=(*READS, "layout"),
    since="0.1.0",
    window=Window(30.0, 45.0, "deg"),
    at="position",
)
def upper_azimuth(room: Room, speaker: Loudspeaker) -> Against | Says:
    """Upper loudspeakers stand in the azimuth range that their layout gives their label.

    Why: The same label has different ranges in different layouts; material is made for the layout's.

    How decided: Azimuth at the reference seat toward the label's own side, such as 30 to 45 degrees for U+045 in 4+7+0
    and 45 to 60 in 9+10+3. A single direction is judged with 2 degrees of tolerance, which are ours.

    Remedy: Move the loudspeaker into the range that the message gives.

    When to waive: A slope or a beam that leaves no other place, with the reason recorded as a departure.
    """
    answer: Against | Says = in_layout(room, speaker)
    return answer


@rule(
    "angle.upper-elevation",
    level=Level.WARNING,
    basis=BS2051,
    each=layer("U", "UH"),
    reads=(*READS, "layout"),
    since="0.1.0",
    window=Window(30.0, 55.0, "deg"),
    at="position",
)
def upper_elevation(room: Room, speaker: Loudspeaker) -> Against | Says:
    """Upper loudspeakers stand 30 to 55 degrees above the ear, or as their layout says.

    Why: Lower they are not told apart from the ear layer; higher, front and rear merge overhead.

    How decided: Elevation above the reference seat's ear against the layout's range for the label: 30 to 55 degrees in
    2+5+0, 4+5+0, 4+5+1, 4+7+0 and 4+9+0, 30 to 45 in 3+7+0 and 9+10+3.

    Remedy: Move it nearer to or farther from the seat in plan, or change its height.

    When to waive: A low ceiling where no place reaches the window and the nearest one is taken.
    """
    allowed = room.figures.angles.allowed_elevation(speaker)
    if allowed is None:
        return does_not_apply(f"layout {room.design.layout} has no {speaker.label}.")
    return Against(room.figures.angles.elevation(speaker, room.reference_seat), Window(*allowed, "deg"))


@rule(
    "angle.upper-separation",
    level=Level.WARNING,
    basis=practice("layers 15 degrees apart, 20 for choice, are a choice of this rule book"),
    each=layer("U", "UH"),
    reads=READS,
    since="0.1.0",
    window=Window(15.0, None, "deg"),
    target=Window(20.0, None, "deg"),
    at="position",
)
def upper_separation(room: Room, speaker: Loudspeaker) -> Figure | Says:
    """Upper loudspeakers stand well above the ear-layer loudspeaker below them.

    Why: A raised ear layer under a low ceiling leaves no height between the layers.

    How decided: Elevation at the reference seat minus that of the nearest ear-layer loudspeaker within 45 degrees of
    azimuth. Below 15 degrees, which is also the least the layouts of BS.2051 leave, a warning; below 20 a note.

    Remedy: Lower the ear-layer loudspeaker, or move the upper one toward the seat.

    When to waive: A ceiling so low that nothing better can be had.
    """
    bed = room.figures.angles.nominal_bed(speaker, room.reference_seat, 45.0)
    if bed is None:
        return does_not_apply("no ear-layer loudspeaker stands below it.")
    return room.figures.angles.over_bed(speaker, bed, room.reference_seat)


@rule(
    "angle.over-head",
    level=Level.NOTE,
    basis=memory("65 to 100 degrees counted from straight ahead over the head"),
    each=labelled("U+090", "U-090"),
    reads=READS,
    since="0.1.0",
    window=Window(65.0, 100.0, "deg"),
    at="position",
)
def over_head(room: Room, speaker: Loudspeaker) -> Figure:
    """A single upper pair at the sides stands nearly overhead, 65 to 100 degrees from straight ahead.

    Why: One pair has to serve front and rear heights alike.

    How decided: Angle over the head in the front-to-rear plane at the reference seat; 90 degrees is right above. The
    window is a value from memory that nobody confirmed, so a departure is a note.

    Remedy: Move the pair along the ceiling toward the place above the seat.

    When to waive: A joist or a beam there, when the pair stays in front of the seat.
    """
    return room.figures.angles.over_head(speaker, room.reference_seat)


@rule(
    "angle.ear-elevation",
    level=Level.WARNING,
    basis=(BS775, TUTORIAL, HOME_STUDY),
    each=layer("M"),
    reads=READS,
    since="0.1.0",
    window=Window(-15.0, 15.0, "deg"),
    at="position",
)
def ear_elevation(room: Room, speaker: Loudspeaker) -> Figure:
    """Ear-layer loudspeakers stand within 15 degrees of ear height.

    Why: Higher, the phantom images between them blur and the layers above lose their height.

    How decided: Elevation above the reference seat's ear. A listening study of home rooms found 16.7 degrees still
    usable for loudspeakers that have to be high in a wall.

    Remedy: Lower or raise the loudspeaker to ear height, or move it farther from the seat.

    When to waive: A surround that clears the heads of a row in between and is aimed down.
    """
    return room.figures.angles.elevation(speaker, room.reference_seat)


@rule(
    "angle.ear-layer-level",
    level=Level.NOTE,
    basis=BS2051,
    each=layer("M"),
    reads=(*READS, "layout"),
    since="0.1.0",
    window=Window(-2.0, 2.0, "deg"),
    at="position",
)
def ear_layer_level(room: Room, speaker: Loudspeaker) -> Against | Says:
    """Ear-layer loudspeakers stand at the very elevation that their layout gives.

    Why: Layouts with upper loudspeakers fix the ear layer at ear height, so that the layers stay apart.

    How decided: Elevation above the reference seat's ear against the layout's range for the label; 0 degrees in most
    layouts, up to 15 for the surrounds of 0+5+0 and 2+5+0; 2 degrees of tolerance are ours. Most rooms depart from
    this letter, so it is a note; `angle.ear-elevation` is the window that matters at home.

    Remedy: Set the loudspeaker at ear height, or accept the note.

    When to waive: Nearly always at home, where `angle.ear-elevation` passes.
    """
    allowed = room.figures.angles.allowed_elevation(speaker)
    if allowed is None:
        return does_not_apply(f"layout {room.design.layout} has no {speaker.label}.")
    low, high = allowed
    figure = room.figures.angles.elevation(speaker, room.reference_seat)
    return Against(figure, Window(low - 2.0, high + 2.0, "deg"))


@rule(
    "angle.largest-gap",
    level=Level.NOTE,
    basis=(BS775, BS2051, practice("no gap wider than the nominal layout leaves")),
    each=ear_layer,
    reads=READS,
    since="0.1.0",
    window=Window(None, 140.0, "deg"),
    at="position",
)
def largest_gap(room: Room, speakers: Group) -> Against:
    """No gap between neighbouring ear-layer loudspeakers is wider than the nominal layout leaves.

    Why: Sound that should pass through a wide gap jumps across it.

    How decided: Azimuths at the reference seat, sorted round the circle. With fewer than seven loudspeakers the widest
    nominal gap is the 140 degrees at the rear; with seven or more it is 90.

    Remedy: Move the loudspeakers beside the gap toward it, or add a pair.

    When to waive: A seat against the rear wall that leaves no place behind it.
    """
    figure = room.figures.angles.largest_gap(speakers.elements, room.reference_seat)  # type: ignore[arg-type]
    seven = len(speakers.elements) >= 7  # noqa: PLR2004  the layouts with sides and rears
    return Against(figure, Window(None, 90.0 if seven else 140.0, "deg"))


@rule(
    "angle.even-spacing",
    level=Level.NOTE,
    basis=(
        standard("ITU-R BS.775-3", "figure 1, note 4", read=True),
        practice("15 degrees of spread, a choice of this rule book"),
    ),
    each=many_surrounds,
    reads=READS,
    since="0.1.0",
    window=Window(None, 15.0, "deg"),
    at="position",
)
def even_spacing(room: Room, speakers: Group) -> Figure:
    """Three or more surround loudspeakers of one side stand at even intervals.

    Why: Uneven intervals make sound that circles the listener speed up and slow down.

    How decided: Azimuths at the reference seat of the ear-layer loudspeakers of one side beyond 60 degrees; the widest
    interval minus the narrowest. The standard asks for equal intervals; 15 degrees of spread are our choice.

    Remedy: Spread the loudspeakers over the arc from 60 to 150 degrees.

    When to waive: Openings that fix two of them, with the reason recorded as a departure.
    """
    return room.figures.angles.uneven_spacing(speakers.elements, room.reference_seat)  # type: ignore[arg-type]
