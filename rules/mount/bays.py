"""Loudspeakers that sit in a wall: whether the wall has room for them."""

from __future__ import annotations

from typing import TYPE_CHECKING

from roomlint.design.surfaces import BAYS
from roomlint.review import SOURCES, Level, Missing, No, at_least, practice, rule

from . import CAUTION, ELSEWHERE, UNCOVERED, plain

if TYPE_CHECKING:
    from roomlint.design.listening import Loudspeaker, Subwoofer
    from roomlint.review import Applies, Figure, Room

WHOLE = " Whoever cuts a stud to make room has an engineer's word first."


def sunk(room: Room, source: Loudspeaker | Subwoofer) -> Applies:
    """Whether it sits in a hole of a wall or the ceiling."""
    on = room.figures.mounts.on(source)
    if on in {"grid-ceiling", "electrical-box"}:
        return No("it sits in no wall and in no ceiling of framing")
    return True if room.figures.mounts.recessed(source) else No("it stands before its surface", unless=ELSEWHERE)


def between_members(room: Room, source: Loudspeaker | Subwoofer) -> Applies:
    """Whether there are bays behind the board: between studs and joists, and between strips before a wall."""
    on = room.figures.mounts.on(source)
    kind = room.figures.framing.kind(on)
    if kind == "unknown":
        raise Missing(room.figures.framing.of(on), "framing.kind")
    return True if kind in BAYS or kind in UNCOVERED else No(f"there are no bays in {plain(kind)}")


def closed_behind(room: Room, source: Loudspeaker | Subwoofer) -> Applies:
    """Whether what it sits in ends behind it: a wall does, and so does a ceiling under a floor."""
    on = room.figures.mounts.on(source)
    if on == "ceiling" and room.figures.framing.kind(on) == "truss":
        return No("between trusses it may reach higher than their chord")
    return True


@rule(
    "mount.between-studs",
    level=Level.WARNING,
    basis=practice("what is cut into board fits between the members behind it"),
    each=SOURCES,
    when=(sunk, between_members),
    window=at_least(0.0, "mm"),
    says={
        "fail": "its hole has {figure} to spare between the studs or joists; {window} wanted",
        "negative": "its hole is {size} too wide for the bay between the studs or joists",
    },
    after=ELSEWHERE,
    at="product",
    caution=CAUTION + WHOLE,
    since="0.3.0",
)
def between_studs(room: Room, source: Loudspeaker | Subwoofer) -> Figure:
    """A flush loudspeaker fits between the studs or joists.

    Why: Found out with the saw in the board, it ends with a cut stud or a cabinet somewhere else.

    How decided: Spacing of the members, or of furring, less their width, less the hole that its sheet asks for. Where
    the studs stand is for the installer to find; a bay beside a corner or an opening is often narrower.

    Remedy: A narrower loudspeaker, one on the surface, or framing that is drawn for it while the wall is open.

    When to waive: The bay was measured and is wider.
    """
    return room.figures.framing.bay(source)


@rule(
    "mount.flush-depth",
    level=Level.WARNING,
    basis=practice("what is cut into a wall ends inside it"),
    each=SOURCES,
    when=(sunk, closed_behind, between_members),
    window=at_least(0.0, "mm"),
    says={
        "fail": "has {figure} to spare behind it; {window} wanted",
        "negative": "is {size} too deep for the framing that it sits in",
    },
    after=ELSEWHERE,
    at="product",
    caution=CAUTION,
    since="0.3.0",
)
def flush_depth(room: Room, source: Loudspeaker | Subwoofer) -> Figure:
    """A flush loudspeaker is no deeper than its wall, or the joists of its ceiling.

    Why: It stands out of the board, or presses on the board of the next room, or the floor above, and rattles there.

    How decided: Depth of the studs or joists, or of the furring before a wall, and of the board before them, less the
    depth that the sheet asks for behind the face of the board. Trusses are left out: their chord is no measure.

    Remedy: A shallower loudspeaker, or deeper framing.

    When to waive: The wall was opened and is deeper, or above the joists is open space.
    """
    return room.figures.framing.depth_left(source)
