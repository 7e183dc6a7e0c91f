"""Chapter boundary, third part: what stands close to a cabinet's faces, and corners."""

from __future__ import annotations

from typing import TYPE_CHECKING

from roomlint.design.listening import Subwoofer
from roomlint.review import Against, Level, Window, practice, rule

if TYPE_CHECKING:
    from collections.abc import Iterator

    from roomlint.design.listening import Loudspeaker
    from roomlint.review import Figure, Room

STANDING = frozenset({None, "stand", "floor", "furniture"})
SPEAKER_AHEAD_M, SUBWOOFER_AHEAD_M = 0.5, 0.1
FITS = practice("a drawing that cannot be built is found on paper, not on site")


def _sources(room: Room) -> tuple[Loudspeaker | Subwoofer, ...]:
    return room.design.sources


def _standing(room: Room) -> Iterator[Loudspeaker | Subwoofer]:
    for source in room.design.sources:
        if (source.mounting.on if source.mounting is not None else None) in STANDING:
            yield source


def _standing_loudspeakers(room: Room) -> Iterator[Loudspeaker]:
    return (source for source in _standing(room) if not isinstance(source, Subwoofer))


@rule(
    "boundary.front-face",
    level=Level.WARNING,
    basis=practice("half a metre in front of a loudspeaker, a hand's width in front of a subwoofer"),
    each=_sources,
    reads=("loudspeakers[].position", "loudspeakers[].aim", "subwoofers[].position", "subwoofers[].facing", "room"),
    since="0.1.0",
    at="position",
)
def front_face(room: Room, source: Loudspeaker | Subwoofer) -> Against:
    """Nothing stands close in front of a cabinet.

    Why: A post, a soffit or a wall right before the drivers throws the sound back and shades the seats.

    How decided: The way along the axis from the acoustic centre to the first surface or obstacle of the room: half a
    metre for a loudspeaker, 0.1 m for a subwoofer. Furniture that the file does not list is not seen.

    Remedy: Turn or move the cabinet, or the obstacle.

    When to waive: The obstacle is open to sound, such as a cloth-covered frame.
    """
    least = SUBWOOFER_AHEAD_M if isinstance(source, Subwoofer) else SPEAKER_AHEAD_M
    return Against(room.figures.boundary.ahead(source), Window(least, None, "m"))


@rule(
    "boundary.cabinet-room",
    level=Level.WARNING,
    basis=FITS,
    each=_standing,
    reads=("loudspeakers[].position", "subwoofers[].position", "product width", "product depth", "room"),
    since="0.1.0",
    window=Window(0.0, None, "m"),
    target=Window(0.03, None, "m"),
    at="position",
)
def cabinet_room(room: Room, source: Loudspeaker | Subwoofer) -> Figure:
    """A free-standing cabinet fits where the drawing puts it.

    Why: The position is of the acoustic centre; the cabinet around it may reach into the wall, the post or the glass.

    How decided: From the centre to the left, to the right and to the rear along the cabinet's own directions, to the
    first surface or obstacle, less half the width or the depth of the product. Below zero it does not fit, which is a
    warning; under 30 mm is a note.

    Remedy: Move the position by the amount that lacks, or choose a smaller cabinet.

    When to waive: The sheet's size holds feet or connectors that can be taken off.
    """
    return room.figures.boundary.tightest_face(source)


@rule(
    "boundary.corner",
    level=Level.NOTE,
    basis=practice("a main loudspeaker within half a metre of a corner is lifted by two walls and the floor at once"),
    each=_standing_loudspeakers,
    reads=("loudspeakers[].position", "room"),
    since="0.1.0",
    window=Window(0.5, None, "m"),
    at="position",
)
def corner(room: Room, speaker: Loudspeaker) -> Figure:
    """No free-standing loudspeaker stands in a corner.

    Why: Two walls and the floor each lift the bass; together they make it boom, and the side wall mirrors the sound at
    once.

    How decided: Distance in plan from the acoustic centre to the nearest corner of the outline.

    Remedy: Bring it out along one of the two walls, or use a product made for corners.

    When to waive: The product is made for corners, or its bass is turned down to suit.
    """
    return room.figures.boundary.corner(speaker)
