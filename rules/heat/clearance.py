"""Air around what is not in a rack."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from roomlint.review import Level, No, Subjects, Windows, computed, found, practice, rule, unsaid
from roomlint.review import Window as Range

from . import CAUTION

if TYPE_CHECKING:
    from collections.abc import Iterator

    from roomlint.design.listening import Projector
    from roomlint.review import Applies, Found, Missing, Room


def every_projector(room: Room) -> Iterator[Projector | Missing]:
    """Yield the projector; a file that does not speak of a picture may have one."""
    picture = room.design.picture
    missing = unsaid(room.design, "picture")
    if picture is not None and picture.projector is not None:
        yield picture.projector
    elif picture is None and missing is not None:
        yield missing


PROJECTORS: Final[Subjects[Projector]] = Subjects("projector", every_projector)


def wants_air(room: Room, projector: Projector) -> Applies:
    """Whether its maker asks for air around it."""
    return True if room.figures.heating.wanted_gap(projector).value > 0.0 else No("its maker asks for no air around it")


def gap_window(room: Room, projector: Projector) -> Windows:
    """Return the gap that the maker asks for."""
    wanted = room.figures.heating.wanted_gap(projector)
    return Windows(Range(wanted.value + wanted.u, None, "m"))


@rule(
    "heat.clearance",
    level=Level.WARNING,
    basis=practice("equipment has the air around it that its maker asks for"),
    each=PROJECTORS,
    when=wants_air,
    window=computed("m", "the air that its sheet asks for all round", gap_window),
    says="has {figure} of air to {what}; its maker wants {window}",
    cure=("lens",),
    at="lens",
    caution=CAUTION,
    since="0.3.0",
)
def clearance(room: Room, projector: Projector) -> Found:
    """A projector has the air around it that its maker asks for.

    Why: It breathes through its sides; a soffit or a wall beside them lets it breathe what it blew out.

    How decided: The least gap between its body and walls, ceiling, obstacles and other things, against the clearance on
    its sheet. A cover, a hush box or a niche that the file does not tell of is not seen.

    Remedy: Move it, or choose one that breathes another way.

    When to waive: Its maker's drawing allows less on that side.
    """
    around = room.figures.heating.around(projector)
    return found(around.figure, what=around.what)
