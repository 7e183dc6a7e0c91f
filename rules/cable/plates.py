"""What keeps screws from cable in holes and notches, and fire from passing beside it."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Final

from roomlint.review import Cases, Level, Missing, No, Seen, Subjects, at_least, fails, need, passes, rule, standard

from ..file import ONCE
from . import CAUTION, nfpa
from .walls import EDGE_BASIS, EDGE_MM, OTHER_EDGE_MM

if TYPE_CHECKING:
    from collections.abc import Iterator

    from roomlint.design.shell import Surface  # noqa: F401  named in a base class, as a text
    from roomlint.design.structure import Cut
    from roomlint.design.supply import Cable  # noqa: F401  the same
    from roomlint.review import Applies, Figure, Room, Says, Windows

CUTS: Final[Subjects[Cut]] = Subjects("hole or notch", lambda room: room.design.shell.cuts, ("room.cuts",))


def carries_cable(room: Room, cut: Cut) -> Applies:
    """Whether cable or a raceway runs through it; in a chase it is NFPA 70 that asks how far under the surface."""
    if cut.is_chase and room.figures.mains.family != "nfpa":
        return No("it is a chase in masonry, where the zones of walls tell where nails go")
    return True if need(cut.carries, cut, "carries") in {"cable", "raceway"} else No("no cable runs through it")


def bare(_: Room, cut: Cut) -> Applies:
    """Whether no plate covers it."""
    return No("a steel plate covers it") if cut.nail_plate else True


def plate_window(room: Room, _cut: Cut) -> Windows:
    """Return how far a cable keeps from the edge of framing under the code in force."""
    return at_least(EDGE_MM if room.figures.mains.family == "nfpa" else OTHER_EDGE_MM, "mm")


@rule(
    "cable.plate",
    level=Level.WARNING,
    basis=EDGE_BASIS,
    each=CUTS,
    when=(carries_cable, bare),
    window=Cases(
        "mm",
        (
            ("under NFPA 70", at_least(EDGE_MM, "mm")),
            ("under BS 7671, IEC 60364, AS/NZS 3000 and other codes", at_least(OTHER_EDGE_MM, "mm")),
        ),
        plate_window,
    ),
    says="brings cable within {figure} of the edge without a steel plate; {window} wanted",
    cure=("edge_distance",),
    at="kind",
    caution=CAUTION,
    since="0.3.0",
)
def plate(room: Room, cut: Cut) -> Figure:
    """A hole for cable keeps from the edge of its member, and a notch has a steel plate.

    Why: Board screws reach 25 mm and more into a stud; one through a cable is found when the room is finished.

    How decided: From the edge of the hole to the edge of the member; in a notch the cable lies at the edge itself, and
    in a chase no deeper under the surface than that is cut. NFPA 70 asks for 32 mm (1-1/4 in) or a plate of 1.6 mm
    (1/16 in), of low-voltage cable too, in shallow grooves by 300.4(F), from memory; elsewhere the 50 mm of BS 7671 are
    taken, in chases `mains.wall-zone`. Whether a plate is there is asked for where the distance is short.

    Remedy: A hole in the middle of the member, or a steel plate over it before the board goes up.

    When to waive: A raceway of steel that the code takes instead of the plate.
    """
    figure = room.figures.framing.covered(cut)
    limit = plate_window(room, cut).window.low
    if cut.nail_plate is None and limit is not None and figure.value < limit:
        raise Missing(cut, "nail_plate")
    return figure


@dataclass(frozen=True, slots=True)
class Passing(Seen["Cable", "Surface"]):
    """A cable where it passes through a surface."""

    joined: str = " through "


def every_passing(room: Room) -> Iterator[Passing | Missing]:
    """Yield each cable with each surface that it passes; one that does not say which may pass any."""
    for cable in room.design.cables:
        if not cable.penetrates and cable.at.get("penetrates") is None:
            yield Missing(cable, "penetrates")
        for name in cable.penetrates:
            surface = room.design.shell.surface(name)
            if surface is None:
                yield Missing(room.design.shell, name if name in {"ceiling", "floor"} else f"walls[{name}]")
            else:
                yield Passing(cable, surface)


PASSINGS: Final[Subjects[Passing]] = Subjects("cable through a surface", every_passing, ("cables",))


def rated(_: Room, passing: Passing) -> Applies:
    """Whether the surface is a fire-rated assembly."""
    surface = passing.seat
    return True if need(surface.fire_rated, surface, "fire_rated") else No("the surface is not fire-rated")


@rule(
    "cable.fire-stop",
    level=Level.WARNING,
    basis=(
        standard("NFPA 70", "300.21", edition="2023", read=False, note="read in a transcription"),
        standard("IRC", "R302.4", edition="2012", read=True, note="in a state's copy"),
    ),
    each=PASSINGS,
    when=rated,
    says={
        "open": "passes a fire-rated assembly through a hole that no listed system closes",
        "closed": "its hole is closed by a listed system",
    },
    at="fire_stopped",
    caution=CAUTION + " The inspector sees it before the wall is closed.",
    since="0.3.0",
)
def fire_stop(_: Room, passing: Passing) -> Says:
    """Where a cable passes a fire-rated wall, ceiling or floor its hole is closed by a listed system.

    Why: The rating of a wall is that of its largest hole.

    How decided: The surfaces that a cable says it passes, those of them that are rated, and whether its hole is
    fire-stopped. A cable that does not say what it passes may pass any of them. Boxes back to back in a rated wall, and
    how large their openings may be, are for the building code.

    Remedy: A listed fire-stop system for this cable and this wall, with its number on record.

    When to waive: The building official accepts the hole, in writing.
    """
    return passes("closed") if need(passing.source.fire_stopped, passing.source, "fire_stopped") else fails("open")


def before_air(_: Room, passing: Passing) -> Applies:
    """Whether air of the building moves behind the surface."""
    surface = passing.seat
    return True if need(surface.plenum, surface, "plenum") else No("no air of the building moves behind the surface")


@rule(
    "cable.air-space",
    level=Level.WARNING,
    basis=(ONCE, nfpa("300.22(C)")),
    each=PASSINGS,
    when=before_air,
    says={
        "apart": "passes into a space that moves air, and is said to run through none; one of the two is wrong",
        "known": "is said to run through a space that moves air, as it does here",
    },
    at="plenum",
    caution=CAUTION,
    since="0.3.0",
)
def air_space(_: Room, passing: Passing) -> Says:
    """A cable that passes into a space where air of the building moves is said to run through one.

    Why: The grade of its jacket is judged by what the file says of the cable; the wall, ceiling or floor may say more.

    How decided: Each surface that a cable says it passes, where the file says that the space behind it moves air for
    the building: the cable must say the same of itself. `cable.grade` waits for it.

    Remedy: Say that the cable runs through such a space, and give it the grade for that; or correct the surface.

    When to waive: It only crosses a joist or stud bay, square to it, in a dwelling, and the inspector agrees.
    """
    return passes("known") if need(passing.source.plenum, passing.source, "plenum") else fails("apart")
