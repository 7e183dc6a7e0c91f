"""Chapter layout: which loudspeakers there are, and whether they can stand and be heard where the file puts them."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from roomlint.review import No, Subjects, practice, standard

if TYPE_CHECKING:
    from collections.abc import Iterator

    from roomlint.design.listening import Loudspeaker, Picture
    from roomlint.measure.staging import Hung
    from roomlint.review import Applies, Pair, Room

BS775 = standard("ITU-R BS.775-3", "figure 1", read=True)
BS2051 = standard(
    "ITU-R BS.2051-1", "loudspeaker position tables", read=False, note="through the public ADM renderer's data"
)
LABELS = standard("ITU-R BS.2051-3", "table 1", read=False, note="through a public digest")
SYMMETRY = standard("ITU-R BS.2051", "symmetry of left and right", read=False)
HOME_STUDY = standard("Japan Audio Society working group on home theatre", "AES Japan report, 2012", read=False)
BUILT = practice("a drawing that cannot be built is found on paper, not on site")
PLACED: Final = ("layout.inside-room", "layout.on-surface")
"""A place that the room, or what holds the thing, contradicts is none to count from or to aim from."""
SETTING_OUT_DEG: Final = 0.5
"""How closely a published direction is met when a room is set out; ours."""
CLAIMS: Final = frozenset({"home-tolerance", "common-practice"})
"""The windows that a departure can claim to meet instead of its layout's."""
HELD: Final = {
    "stand": "it stands on a stand",
    "furniture": "it stands on furniture",
    "grid-ceiling": "it hangs from a ceiling grid",
    "electrical-box": "it hangs from an electrical box",
    "floor": "it stands on the floor",
}


def _hung(room: Room) -> Iterator[Hung]:
    yield from room.design.sources
    picture = room.design.picture
    if picture is not None:
        yield picture
        if picture.projector is not None:
            yield picture.projector


HUNG: Subjects[Hung] = Subjects(
    "loudspeaker, subwoofer, picture or projector", _hung, ("loudspeakers", "subwoofers", "picture")
)
PICTURE: Subjects[Picture] = Subjects(
    "picture", lambda room: (room.design.picture,) if room.design.picture is not None else (), ("picture",)
)


def with_a_picture(room: Room, _: object) -> Applies:
    """Say whether the room has a picture."""
    return True if room.figures.onscreen.picture() is not None else No("the room has no picture")


def as_laid_out(room: Room, speaker: Loudspeaker) -> Applies:
    """Say whether a loudspeaker keeps to its label's place; one that departs is held against what it claims instead."""
    departure = speaker.departure
    if departure is not None and departure.meets in CLAIMS:
        return No("it departs from its place on purpose and is held against the window that it claims instead")
    return True


def both_as_laid_out(room: Room, pair: Pair[Loudspeaker]) -> Applies:
    """Say whether a pair keeps to its labels' places."""
    answers = [as_laid_out(room, speaker) for speaker in (pair.left, pair.right)]
    return next((answer for answer in answers if isinstance(answer, No)), True)
