"""The layers: how high each stands above the ear, and where its upper loudspeakers are."""

from __future__ import annotations

from typing import TYPE_CHECKING

from roomlint.review import (
    Cases,
    Level,
    Missing,
    No,
    Subjects,
    Window,
    Windows,
    at_least,
    between,
    computed,
    found,
    labelled,
    layered,
    memory,
    need,
    passes,
    practice,
    rule,
)

from . import (
    BESIDE,
    BS775,
    BS2051,
    HOME_STUDY,
    OWN,
    SETTING_OUT_DEG,
    SIDES,
    TUTORIAL,
    as_laid_out,
    by_tables,
    in_its_layout,
    laid_out,
)
from .around import EAR_LAYER

if TYPE_CHECKING:
    from collections.abc import Iterator

    from roomlint.design.listening import Loudspeaker
    from roomlint.review import Applies, Figure, Found, Room, Says

UPPER = layered("U", "UH", name="upper loudspeaker")
SIDES_UP = ("U+090", "U-090")
LEVEL_DEG = 2.0
"""How closely a published elevation is met when a room is set out; ours."""
EAR_HOME = between(-15.0, 15.0, "deg", allowance=SETTING_OUT_DEG)


def _aside(room: Room) -> Iterator[Loudspeaker | Missing]:
    for speaker in UPPER.find(room):
        if isinstance(speaker, Missing) or room.figures.arrangement.side(speaker):
            yield speaker


UPPER_ASIDE: Subjects[Loudspeaker] = Subjects("upper loudspeaker of the left or the right", _aside, UPPER.of)


@rule(
    "angle.upper-azimuth",
    level=Level.WARNING,
    basis=BS2051,
    each=UPPER_ASIDE,
    when=(as_laid_out, in_its_layout),
    window=computed(
        "deg",
        "the layout's range for the label, such as 30 to 45 deg for U+045 in 4+7+0 and 45 to 60 in 9+10+3; a single"
        f" direction with 2 deg to either side{OWN}",
        laid_out,
    ),
    says="stands {figure}; by {tables} its place is {window} round",
    after=(*SIDES, BESIDE),
    cure=("position",),
    at="position",
    since="0.1.0",
)
def upper_azimuth(room: Room, speaker: Loudspeaker) -> Found:
    """Upper loudspeakers of the left and the right stand in the range that their layout gives their label.

    Why: The same label has different ranges in different layouts; material is made for the layout's.

    How decided: Azimuth at the reference seat toward the label's own side, such as 30 to 45 degrees for U+045 in 4+7+0
    and 45 to 60 in 9+10+3. In a layout of one's own the tables that have the label hold, those with as many upper
    loudspeakers before all others: beyond all of their ranges a warning, beyond what they share a note. A single
    direction is judged with 2 degrees of tolerance, which are ours. Within 5 degrees of straight overhead an azimuth
    says nothing, and a person decides. Those of the middle are `angle.other-azimuth`'s.

    Remedy: Move the loudspeaker into the range that the message gives.

    When to waive: A slope or a beam that leaves no other place, with the reason recorded as a departure.
    """
    return found(room.figures.angles.outward(speaker, room.reference_seat), tables=by_tables(room, speaker))


def upper_range(room: Room, speaker: Loudspeaker) -> Windows:
    """Return the range of elevation that the layout gives an upper loudspeaker's label."""
    position = need(room.figures.arrangement.position(speaker), room.design, "layout")
    return Windows(Window(*position.elevation_range, "deg", SETTING_OUT_DEG))


@rule(
    "angle.upper-elevation",
    level=Level.WARNING,
    basis=BS2051,
    each=UPPER,
    when=in_its_layout,
    window=computed(
        "deg",
        "30 to 55 deg in 2+5+0, 4+5+0, 4+5+1, 4+7+0 and 4+9+0; 30 to 45 in 3+7+0 and 9+10+3; 45 to 90 for UH+180; in a"
        " layout of one's own what the tables that have the label allow",
        upper_range,
    ),
    says={
        "below": "is heard {figure} up; lower than {limit} it is not told apart from the ear layer",
        "above": "is heard {figure} up; higher than {limit} front and rear merge overhead",
    },
    after=("layout.inside-room",),
    cure=("position",),
    at="position",
    since="0.1.0",
)
def upper_elevation(room: Room, speaker: Loudspeaker) -> Figure:
    """Upper loudspeakers stand 30 to 55 degrees above the ear, or as their layout says.

    Why: Lower they are not told apart from the ear layer; higher, front and rear merge overhead.

    How decided: Elevation above the reference seat's ear against the layout's range for the label: 30 to 55 degrees in
    2+5+0, 4+5+0, 4+5+1, 4+7+0 and 4+9+0, 30 to 45 in 3+7+0 and 9+10+3. In a layout of one's own whatever one of the
    tables that have the label allows, those with as many upper loudspeakers before all others.

    Remedy: Move it nearer to or farther from the seat in plan, or change its height.

    When to waive: A low ceiling where no place reaches the window and the nearest one is taken.
    """
    return room.figures.angles.elevation(speaker, room.reference_seat)


@rule(
    "angle.upper-separation",
    level=Level.WARNING,
    basis=practice("layers 15 degrees apart, 20 for choice, are a choice of this rule book"),
    each=UPPER,
    window=at_least(15.0, "deg", note=20.0),
    says={
        "fail": "is heard {figure} above the ear layer below it; {window} keeps the layers apart",
        "alone": "no ear-layer loudspeaker stands below it",
    },
    after=("layout.inside-room", "angle.upper-elevation"),
    cure=("position",),
    at="position",
    since="0.1.0",
)
def upper_separation(room: Room, speaker: Loudspeaker) -> Figure | Says:
    """Upper loudspeakers stand well above the ear-layer loudspeaker below them.

    Why: A raised ear layer under a low ceiling leaves no height between the layers.

    How decided: Elevation at the reference seat minus that of the nearest ear-layer loudspeaker within 45 degrees of
    azimuth. Below 15 degrees, which is also the least the layouts of BS.2051 leave, a warning; below 20 a note.

    Remedy: Lower the ear-layer loudspeaker, or move the upper one toward the seat.

    When to waive: A ceiling so low that nothing better can be had.
    """
    beds = [bed for bed in EAR_LAYER.find(room) if not isinstance(bed, Missing)]
    figure = room.figures.angles.over_bed(speaker, beds, room.reference_seat)
    return figure if figure is not None else passes("alone")


def alone_overhead(room: Room, speaker: Loudspeaker) -> Applies:
    """Say whether U+090 and U-090 serve front and rear alike; one layout, and any with other uppers, has them aside."""
    if room.design.layout == "9+10+3":
        return No("layout 9+10+3 has it at the side")
    others = [one for one in UPPER.find(room) if not isinstance(one, Missing) and one.label not in SIDES_UP]
    return No("other upper loudspeakers serve front and rear") if others else True


@rule(
    "angle.over-head",
    level=Level.NOTE,
    basis=memory("65 to 100 degrees counted from straight ahead over the head"),
    each=labelled(*SIDES_UP),
    when=alone_overhead,
    window=between(65.0, 100.0, "deg"),
    says="stands {figure} over the head, counted from straight ahead; {window} serves front and rear alike",
    after=SIDES,
    cure=("position",),
    at="position",
    since="0.1.0",
)
def over_head(room: Room, speaker: Loudspeaker) -> Figure:
    """A single upper pair at the sides stands nearly overhead, 65 to 100 degrees from straight ahead.

    Why: One pair has to serve front and rear heights alike.

    How decided: Angle over the head in the front-to-rear plane at the reference seat; 90 degrees is right above. With
    other upper loudspeakers in the room the pair is one of several, and its layout's ranges are its place. The window
    is a value from memory that nobody confirmed, so a departure is a note.

    Remedy: Move the pair along the ceiling toward the place above the seat.

    When to waive: A joist or a beam there, when the pair stays in front of the seat.
    """
    return room.figures.angles.over_head(speaker, room.reference_seat)


def ear_windows(room: Room, speaker: Loudspeaker) -> Windows:
    """Return the window of an ear-layer loudspeaker's elevation: 15 degrees at home, the layout's own for critical."""
    if not room.critical:
        return EAR_HOME
    position = room.figures.arrangement.position(speaker)
    low, high = position.elevation_range if position is not None else (0.0, 0.0)
    return Windows(Window(low - LEVEL_DEG, high + LEVEL_DEG, "deg", SETTING_OUT_DEG))


@rule(
    "angle.ear-elevation",
    level=Level.WARNING,
    basis=(BS775, TUTORIAL, BS2051, HOME_STUDY),
    each=EAR_LAYER,
    window=Cases(
        "deg",
        (
            ("at home", EAR_HOME),
            ("for critical listening, the layout's own range and 2 deg: -2 to 2 deg in most layouts", None),
        ),
        ear_windows,
    ),
    says={
        "below": "is heard {figure} from the ear's height; {window} holds the layer together",
        "above": "is heard {figure} up; {window} holds the layer together",
    },
    after=("layout.inside-room", "angle.centre-picture", "angle.centre-height"),
    cure=("position",),
    at="position",
    since="0.1.0",
)
def ear_elevation(room: Room, speaker: Loudspeaker) -> Figure:
    """Ear-layer loudspeakers stand within 15 degrees of ear height.

    Why: Higher, the phantom images between them blur and the layers above lose their height.

    How decided: Elevation above the reference seat's ear, at home within 15 degrees; a listening study of home rooms
    found 16.7 still usable for loudspeakers that have to be high in a wall. For critical listening the layout's own
    range, 0 degrees in most, up to 15 for the surrounds of 0+5+0 and 2+5+0, with 2 degrees of ours; that was
    `angle.ear-layer-level`, which noted the same at home in nearly every room.

    Remedy: Lower or raise the loudspeaker to ear height, or move it farther from the seat.

    When to waive: A surround that clears the heads of a row in between and is aimed down.
    """
    return room.figures.angles.elevation(speaker, room.reference_seat)
