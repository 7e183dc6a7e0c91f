"""What the surfaces send after the direct sound, and what they cancel."""

from __future__ import annotations

from typing import TYPE_CHECKING

from roomlint.review import (
    Level,
    Seen,
    Subjects,
    at_least,
    at_most,
    fails,
    found,
    labelled,
    memory,
    passes,
    practice,
    rule,
    standard,
    tells,
)

from . import EAR_LAYER, FRONT_PAIR, stands_free

if TYPE_CHECKING:
    from collections.abc import Iterator

    from roomlint.design.listening import Loudspeaker, Seat
    from roomlint.review import Answer, Missing, Pair, Room

SCREEN: Subjects[Loudspeaker] = labelled("M+000", "M+030", "M-030")


@rule(
    "boundary.surface-null",
    level=Level.WARNING,
    basis=practice("a deep null between 60 and 200 Hz thins the bass; 9 and 10 dB are a choice of this rule book"),
    each=EAR_LAYER,
    when=stands_free,
    window=at_least(-10.0, "dB", note=-9.0),
    says={
        "fail": "with the {surface} it falls by {size} at {frequency} at the reference seat; {allowed} wanted",
        "none": "no wall cancels between 60 and 200 Hz at the reference seat",
        "level": "only the {surface} cancels: {figure} at {frequency}, as at any place in the plan",
    },
    cure=("position",),
    at="position",
    since="0.2.0",
)
def surface_null(room: Room, speaker: Loudspeaker) -> Answer:
    """No wall near a free-standing loudspeaker takes an octave out of its bass.

    Why: Sound that comes by way of a wall arrives half a wave late at some frequency and cancels the direct sound.

    How decided: Mirror images in every wall and slope: the way by the image less the direct way is half a wave at the
    null; its depth by the ratio of the two and the pressure that the surface returns: 98 % for masonry, 85 % for a wall
    on studs or one that the file says nothing of, which is the least of board on studs. Only nulls between 60 and
    200 Hz count: below, room modes rule; above, a cabinet no longer radiates to all sides. The nulls of the floor and
    of a level ceiling are there at any place in the plan; they are told, not judged. This rule took over
    `boundary.rear-null`, which looked straight back only.

    Remedy: Stand the loudspeaker nearer to the wall, so that the null rises, or much farther away.

    When to waive: The wall is treated deep enough to absorb at that frequency.
    """
    dips = room.figures.boundary.dips(speaker, room.reference_seat)
    for dip in dips:
        if not dip.level_surface:
            return found(dip.level, surface=dip.surface, frequency=dip.frequency)
    for dip in dips:
        return tells("level", dip.level, surface=dip.surface, frequency=dip.frequency)
    return passes("none")


@rule(
    "boundary.equal-distances",
    level=Level.NOTE,
    basis=(
        standard("J. Audio Eng. Soc. 22 (1974)", "the influence of room boundaries on power output", read=False),
        practice("8 dB as the limit; ordinary places lose 5 to 12 dB of power, and three equal distances 11 dB"),
    ),
    each=EAR_LAYER,
    when=stands_free,
    window=at_least(-8.0, "dB"),
    says="floor and walls together take {size} from what it radiates; {allowed} wanted",
    cure=("position",),
    at="position",
    since="0.1.0",
)
def equal_distances(room: Room, speaker: Loudspeaker) -> Answer:
    """A loudspeaker stands at different distances from floor, side and rear.

    Why: Three equal distances stack their cancellations on one frequency: the radiated power dips by up to 11 dB there,
    against under 2 dB when the distances differ.

    How decided: The interference sum of the floor and of the two nearest walls that make a corner, rigid, from 40 to
    400 Hz; the lowest power against free field. Opposite walls do not stack and are not taken together.

    Remedy: Move the loudspeaker along one of the two directions by a tenth of the distance or more.

    When to waive: The surfaces are treated at the frequency in question.
    """
    return room.figures.boundary.power_dip(speaker)


@rule(
    "boundary.early-reflections",
    level=Level.NOTE,
    basis=memory("10 dB below the direct sound within 15 ms, 1 to 8 kHz", document="EBU Tech 3276", clause="2.2"),
    each=SCREEN,
    window=at_most(-10.0, "dB"),
    critical_level=Level.WARNING,
    says={
        "fail": "the {surface} sends {figure} against the direct sound; {window} wanted",
        "home": "loudest early reflection {figure}, off the {surface}, {along} along and {up} up",
        "none": "no reflection arrives within 15 ms",
    },
    at="position",
    since="0.1.0",
)
def early_reflections(room: Room, speaker: Loudspeaker) -> Answer:
    """The first reflections of the front three are weak at the reference seat.

    Why: Strong copies within some 15 ms blur the stage and colour voices.

    How decided: Mirror images in every wall, in the floor and in each part of the ceiling whose bounce point is free:
    level by the longer way and by the mean absorption, 1 to 4 kHz, of the treatment that covers the bounce point. With
    project.reference critical the loudest within 15 ms must be 10 dB below the direct sound, which no untreated small
    room reaches; otherwise the figure is told and nothing more. Diffusers are not counted as absorbing, and bounces
    behind the loudspeaker not at all.

    Remedy: An absorber at the place that the message names.

    When to waive: The client wants a lively room, or a measurement shows the loudspeaker hardly radiates there.
    """
    view, seat = room.figures.reflections, room.reference_seat
    loudest = view.loudest_db(speaker, seat)
    if loudest is None:
        return passes("none")
    first = view.first(speaker, seat)
    if not room.critical:
        along, up = first.place
        return tells("home", loudest, surface=first.surface, along=along, up=up)
    return found(loudest, surface=first.surface)


def _pair_at_reference(room: Room) -> Iterator[Seen[Pair[Loudspeaker], Seat] | Missing]:
    for pair in FRONT_PAIR.find(room):
        yield pair if isinstance(pair, Exception) else Seen(pair, room.reference_seat)


PAIR_AT_REFERENCE: Subjects[Seen[Pair[Loudspeaker], Seat]] = Subjects(
    "front pair", _pair_at_reference, ("loudspeakers",)
)


@rule(
    "boundary.side-reflections",
    level=Level.NOTE,
    basis=practice("first side reflections of left and right alike within 6 dB; a choice of this rule book"),
    each=PAIR_AT_REFERENCE,
    window=at_most(6.0, "dB"),
    says={
        "fail": "their first side reflections differ by {figure}, and by {time}; {window} wanted",
        "one": "only {side} has a wall beside it that reflects to the reference seat",
        "none": "no wall beside the pair reflects to the reference seat",
    },
    at="position",
    since="0.2.0",
)
def side_reflections(room: Room, heard: Seen[Pair[Loudspeaker], Seat]) -> Answer:
    """The first reflections off the walls beside left and right are alike at the reference seat.

    Why: A wall on one side and an opening on the other pull the stage toward the wall and colour the two sides apart.

    How decided: The first mirror image of each in the wall on its own side, level by the longer way and by what covers
    the bounce point; the difference between left and right, and whether only one of the two has such a wall. How far
    apart the two come in time is told with it.

    Remedy: Absorb at the bounce on the louder side, or set up something that reflects on the other.

    When to waive: A room that opens to one side, when the client was told.
    """
    view = room.figures.reflections
    apart = view.side_difference(heard.source, heard.seat)
    if apart is not None:
        return found(apart.level, time=apart.time)
    side = view.one_sided(heard.source, heard.seat)
    return fails("one", side=side) if side else passes("none")
