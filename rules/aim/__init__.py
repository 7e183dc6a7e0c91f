"""Chapter aim: where loudspeakers point, whom they cover, and whether their mounts reach that far."""

from __future__ import annotations

from typing import TYPE_CHECKING

from roomlint.review import Missing, No, Pair, Subjects, practice

if TYPE_CHECKING:
    from collections.abc import Iterator

    from roomlint.design.listening import Loudspeaker
    from roomlint.review import Applies, Room

NOMINAL = practice("nominal coverage is the full angle between the two directions 6 dB down")


def _pairs(room: Room) -> Iterator[Pair[Loudspeaker] | Missing]:
    by_label: dict[str, Loudspeaker] = {}
    for speaker in room.design.loudspeakers:
        if speaker.label is None:
            yield Missing(speaker, "label")
        else:
            by_label.setdefault(speaker.label, speaker)
    for label, speaker in by_label.items():
        other = by_label.get(label.replace("+", "-"))
        if "+" in label and other is not None:
            yield Pair(speaker, other)


PAIRS: Subjects[Pair[Loudspeaker]] = Subjects("left and right pair", _pairs, ("loudspeakers",))


def on_a_surface(room: Room, speaker: Loudspeaker) -> Applies:
    """Whether it is mounted on a wall or the ceiling, so that a bracket or a baffle must point it."""
    if speaker.mounting is None or speaker.mounting.on is None:
        raise Missing(speaker, "mounting.on")
    held = speaker.mounting.on
    if held in room.design.shell.wall_names or held in {"ceiling", "grid-ceiling"}:
        return True
    return No("it stands free and is turned by hand")
