"""Pictures above a fire."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from roomlint.review import Level, Missing, No, Subjects, at_most, computed, need, practice, rule, unsaid

from . import CAUTION

if TYPE_CHECKING:
    from collections.abc import Iterator

    from roomlint.design.listening import Picture
    from roomlint.review import Applies, Figure, Room, Windows


def every_picture(room: Room) -> Iterator[Picture | Missing]:
    """Yield the picture; a file that does not speak of one may have one."""
    missing = unsaid(room.design, "picture")
    if room.design.picture is not None:
        yield room.design.picture
    elif missing is not None:
        yield missing


PICTURES: Final[Subjects[Picture]] = Subjects("picture", every_picture)


def _over_fire(_: Room, picture: Picture) -> Applies:
    """Whether a fire is below a picture; one in a flat wall shows nowhere else in a file."""
    return True if need(picture.over_fire, picture, "over_fire") else No("no fire is below it")


def fire_window(room: Room, picture: Picture) -> Windows:
    """Return how warm the air at a picture may be."""
    return at_most(room.figures.heating.picture_limit_degc(picture), "degC")


@rule(
    "heat.over-fire",
    level=Level.ERROR,
    basis=practice(
        "what hangs over a fire is measured while it burns, and its maker's warmest air holds; 40 degC at most"
    ),
    each=PICTURES,
    when=_over_fire,
    window=computed("degC", "the warmest air that its maker allows, 40 degC at most", fire_window),
    says="hangs over a fire in air of {figure}; {window} wanted",
    at="warmest",
    caution=CAUTION,
    since="0.3.0",
)
def over_fire(room: Room, picture: Picture) -> Figure:
    """The air at a picture over a fire is no warmer than its maker allows while the fire burns.

    Why: Above a fireplace a display ages in a winter, and what holds it to a chimney may loosen in the heat.

    How decided: The air at the picture, measured with the fire at its strongest, against the warmest air on its sheet,
    40 degC at most. Whether a fire is below it is asked for: one in a flat wall needs no chimney breast. Clearances
    that the code and the fire's maker ask for are not judged here.

    Remedy: Another wall; a mantel that turns the air away, measured again; or a fire that is no longer lit.

    When to waive: The fire is taken out of use for good, and that is on record.
    """
    return room.figures.heating.at_picture(picture)
