"""Where panels take the first reflections of the loudspeakers at the picture."""

from __future__ import annotations

from typing import TYPE_CHECKING

from roomlint.review import Level, at_most, found, labelled, memory, passes, practice, rule, tells

if TYPE_CHECKING:
    from roomlint.design.listening import Loudspeaker
    from roomlint.review import Answer, Room, Subjects

SCREEN: Subjects[Loudspeaker] = labelled("M+000", "M+030", "M-030")


@rule(
    "boundary.reflection-panel",
    level=Level.NOTE,
    basis=(
        memory("10 dB below the direct sound within 15 ms, 1 to 8 kHz", document="EBU Tech 3276", clause="2.2"),
        practice("0.15 m around where it bounces, 0.6 m at the least; a choice of this rule book"),
    ),
    each=SCREEN,
    window=at_most(-10.0, "dB"),
    says={
        "fail": "off the {surface} {seat} gets {figure}; {window} wanted: {width} by {height} {along} along, {up} up",
        "place": "a panel of {width} by {height} on the {surface}, {along} along, {up} up, takes its first reflection",
        "opening": "its first reflection comes off {opening} in the {surface}; a curtain there takes it",
        "over": "its panel on the {surface}, {width} by {height}, would reach over {opening}: a curtain over both",
        "none": "no wall or ceiling reflects it early to the row",
    },
    at="position",
    since="0.3.0",
)
def reflection_panel(room: Room, speaker: Loudspeaker) -> Answer:
    """A panel that is meant for a first reflection takes it at every seat of the row.

    Why: A panel that was set out for one seat lets the reflection past at its neighbours, and one that is too thin lets
    it through.

    How decided: Walls and ceiling beside or above a loudspeaker, where sound bounces within 60 % of its way, that
    would send a reflection less than 10 dB below the direct sound within 15 ms to the row of the reference seat, if
    they were bare; where it bounces for each seat of the row. Of those on which something that absorbs hangs, the one
    that would be loudest: the loudest of the row's reflections off it must be 10 dB below the direct sound, by the
    longer way, by treatment, opening or finish where it bounces, and by the loudspeaker's coverage where sheet and aim
    are given. Where nothing hangs on any, the panel that would cover all places on the loudest is told: on a wall from
    its left end and up from the floor, on the ceiling from the left and from the front.

    Remedy: Hang or lengthen the panel as told; before a glass door, a curtain.

    When to waive: The client wants a lively room.
    """
    view, reference = room.figures.treating, room.reference_seat
    treated = view.treated(speaker, reference)
    if treated is not None:
        place = view.place(speaker, reference, treated)
        return found(
            view.level(speaker, reference, treated), surface=place.surface, along=place.along, up=place.up,
            width=place.width, height=place.height, seat=view.worst(speaker, reference, treated).words,
        )  # fmt: skip
    for loudest in view.surfaces(speaker, reference):
        place = view.place(speaker, reference, loudest)
        if place.opening is not None and place.wholly:
            return tells("opening", surface=place.surface, opening=place.opening.words)
        if place.opening is not None:
            return tells(
                "over", place.width, surface=place.surface, opening=place.opening.words, width=place.width,
                height=place.height,
            )  # fmt: skip
        return tells(
            "place", place.width, surface=place.surface, along=place.along, up=place.up, width=place.width,
            height=place.height,
        )  # fmt: skip
    return passes("none")
