"""Chapter picture: what each seat sees of the picture, and whether the projector can light it there."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from roomlint.review import Missing, No, Subjects, practice, standard

if TYPE_CHECKING:
    from collections.abc import Iterator

    from roomlint.design.listening import Projector
    from roomlint.review import Applies, Room

TOWARDS: Final = ("layout.picture-ahead",)
"""Of a picture that a seat does not face nothing else is worth a finding."""
CINEMA: Final = standard(
    "EDCF cinema viewing conditions", edition="2019", read=False, note="a guide of good practice for cinemas"
)
WITHDRAWN: Final = standard(
    "SMPTE EG 18", edition="1994", read=False, note="30 degrees at the farthest seat; withdrawn in 2003"
)
DISCOMFORT: Final = standard(
    "SMPTE Journal, January 1986", "proposed guideline, part I", read=False, note="thresholds of discomfort"
)
CONTENT: Final = standard(
    "ANSI/AVIXA V202.01", edition="2016", read=False, note="known from a design guide that quotes it"
)
SCREEN_LIGHT: Final = standard("SMPTE ST 431-1", edition="2006", read=False, note="48 cd/m2, in theatres 10.2 less")
MAKERS: Final = practice("what a lens can do is on the projector's sheet")


def _projector(room: Room) -> Iterator[Projector | Missing]:
    picture = room.design.picture
    if picture is None:
        return
    if picture.projector is not None:
        yield picture.projector
        return
    try:
        projected = room.figures.viewing.is_projected(picture)
    except Missing as missing:
        yield missing
        return
    if projected:
        yield Missing(picture, "projector")


PROJECTOR: Subjects[Projector] = Subjects("projector", _projector, ("picture",))


def projected(room: Room, _: object) -> Applies:
    """Whether a projector makes the picture."""
    picture = room.figures.onscreen.picture()
    if picture is None:
        return No("the room has no picture")
    return True if room.figures.viewing.is_projected(picture) else No("the picture is a display's")
