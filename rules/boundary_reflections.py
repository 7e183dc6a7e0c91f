"""Chapter boundary, second part: what the surfaces send after the direct sound."""

from __future__ import annotations

from typing import TYPE_CHECKING

from roomlint.review import Against, Level, Window, heard_at, memory, passes, rule, tells

if TYPE_CHECKING:
    from collections.abc import Iterator

    from roomlint.review import Group, Room, Says

SCREEN_LABELS = frozenset({"M+000", "M+030", "M-030"})


def _screen_at_reference(room: Room) -> Iterator[Group]:
    for speaker in room.design.loudspeakers:
        if speaker.label in SCREEN_LABELS:
            yield heard_at(speaker, room.reference_seat)


@rule(
    "boundary.early-reflections",
    level=Level.NOTE,
    basis=memory("10 dB below the direct sound within 15 ms, 1 to 8 kHz", document="EBU Tech 3276", clause="2.2"),
    each=_screen_at_reference,
    reads=("loudspeakers[].position", "seats[].ear", "room", "treatments[].absorption"),
    since="0.1.0",
    critical=Window(None, -10.0, "dB"),
    critical_level=Level.WARNING,
    at="position",
)
def early_reflections(room: Room, pair: Group) -> Against | Says:
    """The first reflections of the front three are weak at the reference seat.

    Why: Strong copies within some 15 ms blur the stage and colour voices.

    How decided: Mirror images in every wall, in the floor and in each part of the ceiling whose bounce point is free:
    level by the longer way and by the mean absorption, 1 to 4 kHz, of the treatment that covers the bounce point. With
    project.reference critical the loudest within 15 ms must be 10 dB below the direct sound, which no untreated small
    room reaches; otherwise the figure is told and nothing more. Diffusers are not counted as absorbing, and bounces
    behind the loudspeaker not at all.

    Remedy: An absorber at the places that the message names.

    When to waive: The client wants a lively room, or a measurement shows the loudspeaker hardly radiates there.
    """
    speaker, seat = pair.elements
    view = room.figures.reflections
    loudest = view.loudest(speaker, seat)  # type: ignore[arg-type]
    if loudest is None:
        return passes("no reflection arrives within 15 ms.")
    if not room.critical:
        return tells(f"{loudest.name}: {loudest}. {view.treat_words(speaker, seat)}".strip())  # type: ignore[arg-type]
    return Against(loudest, says=view.treat_words(speaker, seat))  # type: ignore[arg-type]
