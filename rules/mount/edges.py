"""Where screws sit in the wood: their distance to its edges and to its far side."""

from __future__ import annotations

from typing import TYPE_CHECKING

from roomlint.review import Cases, Level, No, at_least, at_most, memory, practice, rule

from . import CAUSES, CAUTION, HELD, NDS, base_of, en1995, fixed, in_wood, on_wall, screwed

if TYPE_CHECKING:
    from roomlint.measure.holding import Held
    from roomlint.review import Applies, Figure, Room, Windows

LOADED_EDGE = at_least(4.0, "")
DRIVEN_EDGE = at_least(10.0, "")


def in_stud(room: Room, thing: Held) -> Applies:
    """Whether its fasteners go into studs, joists or rafters."""
    into = room.figures.mounts.into(thing)
    return True if into in {"stud", "joist"} else No(f"its fasteners go into {base_of(into)}")


@rule(
    "mount.stud-edge",
    level=Level.WARNING,
    basis=(
        memory(
            "1.5 diameters to the edge for load along the grain", document=NDS, clause="Table 12.5.1C", edition="2015"
        ),
        en1995("table 8.6", "4 diameters for a pulled screw, in a handbook"),
    ),
    each=HELD,
    when=(fixed, in_stud),
    window=at_least(0.0, "mm"),
    says="its screws have {figure} to spare to the edge of the wood; {window} wanted",
    after=CAUSES,
    cure=("mounting.fixing.edge_offset", "mounting.fixing.diameter"),
    at="mounting.fixing.edge_offset",
    caution=CAUTION + " Find both edges of the stud or joist before drilling.",
    since="0.1.0",
)
def stud_edge(room: Room, thing: Held) -> Figure:
    """Screws keep their edge distance in the stud or joist.

    Why: A screw near the edge splits the wood, and its value is gone.

    How decided: Half the width of the stud's or joist's face less 1.5 diameters less the offset from its middle is not
    negative. In wood that EN 1995-1-1 judges 4 diameters, which a stud of 38 mm leaves no screw of its formula:
    blocking, or a screw whose own declaration allows less, is the way out.

    Remedy: Move the mount so that the screws meet the middle of the wood, or use thinner screws.

    When to waive: When blocking was added beside it.
    """
    return room.figures.mounts.edge_left(thing)


def across_grain(room: Room, thing: Held) -> Applies:
    """Whether its load runs across the grain: in blocking and beams, and of an arm swung aside on one stud."""
    mounts = room.figures.mounts
    into = mounts.into(thing)
    if into in {"blocking", "beam"}:
        return True
    if into != "stud":
        return No(f"its fasteners go into {base_of(into)}")
    if mounts.motion(thing) != "articulated":
        return No("its load runs along the stud, but for a short turn")
    return True if mounts.one_column(thing) else No("its fasteners stand in two columns, which share the twist")


def loaded_window(room: Room, thing: Held) -> Windows:
    """Return the distance that the screw's kind asks for by the standard of its wood."""
    mounts = room.figures.mounts
    driven = mounts.fastener(thing) == "wood-screw" and mounts.by_eurocode(thing)
    return DRIVEN_EDGE if driven else LOADED_EDGE


@rule(
    "mount.loaded-edge",
    level=Level.WARNING,
    basis=(
        memory(
            "4 diameters to the edge that a load across the grain pushes toward", document=NDS, clause="Table 12.5.1C",
            edition="2015",
        ),
        en1995("tables 8.2 and 8.4", "as a handbook gives them for laminated wood"),
    ),
    each=HELD,
    when=(fixed, on_wall, in_wood, screwed, across_grain),
    window=Cases(
        "",
        (("lag screws, and wood screws by the American standard", LOADED_EDGE),
         ("wood screws by EN 1995-1-1, without a bored hole", DRIVEN_EDGE)),
        loaded_window,
    ),
    says="its screws are {figure} diameters from the loaded edge; {window} wanted",
    after=CAUSES,
    cure=("mounting.fixing.edge_distance", "mounting.fixing.edge_offset"),
    at="mounting.fixing",
    caution=CAUTION,
    since="0.2.0",
)  # fmt: skip
def loaded_edge(room: Room, thing: Held) -> Figure:
    """Screws loaded across the grain keep a wide distance to the edge that they are pushed toward.

    Why: A screw pushed toward a near edge opens the wood along its grain at a fraction of its value.

    How decided: Distance from the fasteners to the edge of blocking or beam, or to the edge of the stud for an arm that
    can swing aside on one column of fasteners, in diameters: 4, and 10 of a wood screw that EN 1995-1-1 judges, since
    nobody says that its hole was bored.

    Remedy: Deeper blocking, the screws farther from its edge, or fasteners in two studs.

    When to waive: When an engineer reinforced the wood there.
    """
    return room.figures.mounts.loaded_edge(thing)


def member_closed(room: Room, thing: Held) -> Applies:
    """Whether it is wood that a screw should end in."""
    panel = room.figures.mounts.into(thing) == "plywood-backing"
    return No("a screw passes through plywood as a rule") if panel else True


@rule(
    "mount.screw-through",
    level=Level.NOTE,
    basis=practice("a screw ends in the wood: behind it run cables and pipes, or another room"),
    each=HELD,
    when=(fixed, in_wood, screwed, member_closed),
    window=at_most(0.0, "mm"),
    says="its screws come out {figure} beyond the wood: see what is behind it",
    after=CAUSES,
    cure=("mounting.fixing.length",),
    at="mounting.fixing.length",
    caution=CAUTION + " Cables and pipes run behind the wood.",
    since="0.2.0",
)
def screw_through(room: Room, thing: Held) -> Figure:
    """Screws end inside the wood that they enter.

    Why: A point that comes out of the far side holds nothing there and finds the cable or the pipe behind it.

    How decided: Length less plate, board and the thickness of the wood.

    Remedy: A shorter screw.

    When to waive: When somebody looked behind the wood.
    """
    return room.figures.mounts.beyond(thing)
