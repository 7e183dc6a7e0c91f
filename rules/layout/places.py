"""The places: whether things can be where the file puts them."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from roomlint.design.shell import Treatment
from roomlint.review import (
    SOURCES,
    THINGS,
    Level,
    Missing,
    No,
    Seen,
    Subjects,
    at_least,
    at_most,
    found,
    need,
    practice,
    rule,
    unsaid,
)

from ..mount import holder
from . import BUILT, HELD, HUNG

if TYPE_CHECKING:
    from collections.abc import Iterator

    from roomlint.design.listening import Loudspeaker, Projector, Seat, Subwoofer
    from roomlint.design.shell import Opening, RoofWindow
    from roomlint.design.supply import Rack
    from roomlint.measure.staging import Hung
    from roomlint.review import Applies, Figure, Found, Room

    Source = Loudspeaker | Subwoofer
    Thing = Loudspeaker | Subwoofer | Seat
    Body = Thing | Projector | Rack
    Overhead = Loudspeaker | Subwoofer | Treatment

DOORS: Final = frozenset({"door", "glass-door"})
SHUT: Final = {
    "out": "the door opens outward",
    "sliding": "the door slides",
    "none": "it has no leaf that swings",
}


def _beside_openings(room: Room) -> Iterator[Seen[Source, Opening]]:
    for source in room.design.sources:
        for opening in room.design.shell.openings:
            yield Seen(source, opening, " beside ")


def _near_doors(room: Room) -> Iterator[Seen[Body | Treatment, Opening]]:
    for opening in room.design.shell.openings:
        if opening.kind in DOORS:
            for thing in (*room.figures.bodies.things, *room.figures.covering.boards()):
                yield Seen(thing, opening, " near ")


def _beside_roof_windows(room: Room) -> Iterator[Seen[Overhead, RoofWindow] | Missing]:
    things = (*room.design.sources, *room.design.treatments)
    missing = unsaid(room.design, "room.roof_windows")
    if missing is not None and any(_holder(thing) in {None, "ceiling"} for thing in things):
        yield missing  # of no interest where nothing is fixed to the ceiling
    for thing in things:
        for window in room.design.shell.roof_windows:
            yield Seen(thing, window, " beside ")


def _holder(thing: Overhead) -> str | None:
    if isinstance(thing, Treatment):
        return thing.on
    return thing.mounting.on if thing.mounting is not None else None


BESIDE_ROOF_WINDOWS: Subjects[Seen[Overhead, RoofWindow]] = Subjects(
    "roof window beside a loudspeaker or panel", _beside_roof_windows, (*SOURCES.of, "treatments")
)
BESIDE_OPENINGS: Subjects[Seen[Source, Opening]] = Subjects(
    "opening beside a loudspeaker", _beside_openings, ("room.openings", *SOURCES.of)
)
_LISTS = (*THINGS.of, "electronics.racks", "picture")
BODIES: Subjects[Body] = Subjects(
    "loudspeaker, subwoofer, seat, rack or projector", lambda room: room.figures.bodies.things, _LISTS
)
NEAR_DOORS: Subjects[Seen[Body | Treatment, Opening]] = Subjects(
    "door near anything", _near_doors, ("room.openings", "treatments", *_LISTS)
)


def on_a_surface(room: Room, thing: Hung) -> Applies:
    """Say whether something is on a wall, the ceiling or the floor."""
    mounting = need(thing.mounting, thing, "mounting.on")
    held = need(mounting.on, thing, "mounting.on")
    return No(HELD[held]) if held in HELD and held != "floor" else True


def is_mounted(room: Room, source: Source) -> Applies:
    """Say whether something is fixed to a wall or the ceiling of the room."""
    mounting = need(source.mounting, source, "mounting.on")
    held = need(mounting.on, source, "mounting.on")
    return No(HELD[held]) if held in HELD else True


def on_its_wall(room: Room, both: Seen[Source, Opening]) -> Applies:
    """Say whether something hangs on the wall that an opening is in."""
    source = both.source
    mounting = need(source.mounting, source, "mounting.on")
    held = need(mounting.on, source, "mounting.on")
    if held in HELD:
        return No(HELD[held])
    return True if held == both.seat.wall else No(f"it hangs on the {held}, and {both.seat.words} is elsewhere")


def at_the_ceiling(room: Room, both: Seen[Overhead, RoofWindow]) -> Applies:
    """Say whether something is fixed to the ceiling that a roof window is in."""
    thing = both.source
    if isinstance(thing, Treatment):
        held = need(thing.on, thing, "on")
    else:
        held = need(need(thing.mounting, thing, "mounting.on").on, thing, "mounting.on")
    return True if held == "ceiling" else No(HELD.get(held, f"it is on the {held}"))


def opens_inward(room: Room, both: Seen[Body | Treatment, Opening]) -> Applies:
    """Say whether a door's leaf swings into the room."""
    swing = need(both.seat.swing, both.seat, "swing")
    return No(SHUT[swing]) if swing in SHUT else True


@rule(
    "layout.inside-room",
    level=Level.ERROR,
    basis=BUILT,
    each=THINGS,
    window=at_least(-0.05, "m"),
    says={
        "fail": "lies {figure} inside the room's surfaces; {window} wanted",
        "negative": "lies {size} behind a surface of the room; correct its place or the room's outline",
    },
    cure=("position", "ear"),
    at="position",
    since="0.1.0",
)
def inside_room(room: Room, thing: Thing) -> Found:
    """Loudspeakers, subwoofers and ears are inside the room.

    Why: A place behind a wall or above the ceiling is a slip of the pen, and every other figure of it is wrong too.

    How decided: Distance from the acoustic centre or the ear to the nearest wall, slope, floor or ceiling; negative
    outside. Five centimetres are allowed for what is set into a wall or ceiling. Without a ceiling what is outside the
    walls fails all the same, and what is inside them stays open.

    Remedy: Correct the position, or the room's outline or ceiling.

    When to waive: A loudspeaker set deep into a wall, or behind a screen wall that the outline leaves out.
    """
    return found(room.figures.staging.depth_inside(thing), lacks=room.figures.space.no_ceiling)


@rule(
    "layout.mounted-inside",
    level=Level.WARNING,
    basis=BUILT,
    each=SOURCES,
    when=is_mounted,
    window=at_least(-0.05, "m"),
    says={
        "fail": "the mounted cabinet has {figure} to the other surfaces; {window} wanted",
        "negative": "the mounted cabinet reaches {size} through a wall, slope, ceiling or floor beside its mount",
    },
    after=("layout.inside-room",),
    at="position",
    since="0.2.0",
)
def mounted_inside(room: Room, source: Source) -> Figure:
    """A cabinet that is mounted on a wall or the ceiling does not reach through the surfaces beside it.

    Why: The position is of the acoustic centre; the cabinet around it may reach into the next wall or the slope.

    How decided: The whole cabinet, aimed as it is aimed, against floor, ceiling and the walls in whose corner its own
    wall ends; of one at the ceiling, floor and walls. What holds it does not count, and five centimetres are allowed.
    Without a sheet an ordinary cabinet is taken, and the finding says so. It is the sibling of `boundary.cabinet-room`.

    Remedy: Move it along its surface away from the corner, or choose a smaller cabinet.

    When to waive: The cabinet is set into a niche that the outline leaves out.
    """
    surface = need(source.mounting.on if source.mounting is not None else None, source, "mounting.on")
    return room.figures.staging.clear_beside(source, surface)


@rule(
    "layout.clear-of-solids",
    level=Level.ERROR,
    basis=(BUILT, practice("two things that overlap by no more than 5 centimetres may touch, by the tape")),
    each=BODIES,
    window=at_most(0.05, "m"),
    says="overlaps {other} by {figure}; no two things have one place",
    after=("layout.inside-room", "layout.fixtures-inside"),
    cure=("position", "ear"),
    at="position",
    since="0.2.0",
)
def clear_of_solids(room: Room, thing: Body) -> Found:
    """No two things, and nothing and an obstacle, are in one place.

    Why: A cabinet in a chimney breast or a subwoofer under a seat is found on the day of delivery.

    How decided: Cabinets, racks and projectors as boxes by their sizes, turned as they are turned; listeners as columns
    from the floor to the top of the head; obstacles as boxes. How deep two of them overlap, each two once. A thing of
    no given size is taken as an ordinary one, a seat without a width as 0.50 m, and the finding says so. Five
    centimetres may be the tape's. Where the file does not speak of obstacles, what touches nothing else stays open.

    Remedy: Move one of the two.

    When to waive: A loudspeaker that is built into the soffit or the cabinet it stands in.
    """
    overlap = room.figures.bodies.overlap(thing)
    return found(overlap.figure, other=overlap.other, lacks=unsaid(room.design, "room.obstacles"))


@rule(
    "layout.on-surface",
    level=Level.WARNING,
    basis=(BUILT, practice("a hand behind a mounted cabinet; 0.10 m is a choice of this rule book")),
    each=HUNG,
    when=on_a_surface,
    window=at_most(0.10, "m"),
    says="leaves {figure} between its back and {surface}, which holds it; {window} wanted",
    after=("layout.inside-room",),
    cure=("position",),
    at="mounting.on",
    since="0.1.0",
)
def on_surface(room: Room, thing: Hung) -> Found:
    """What is mounted on a wall or ceiling, or stands on the floor, is at that surface.

    Why: The mount, its fixings and its cable are planned for one surface, the angles for another place.

    How decided: Distance of the acoustic centre, the picture's middle or the lens from the named wall, as far as it
    reaches, or from the ceiling above it, less the depth of cabinet, display or screen, of a projector overhead its
    height, and the mount's reach and drop; at most 0.10 m. On the floor, the centre's height less the cabinet's.

    Remedy: Name the surface that it really hangs on, or correct the position.

    When to waive: A bracket longer than its sheet says, noted in the file.
    """
    surface = need(thing.mounting.on if thing.mounting is not None else None, thing, "mounting.on")
    return found(room.figures.staging.off_surface(thing, surface), surface=holder(surface))


@rule(
    "layout.clear-of-openings",
    level=Level.ERROR,
    basis=(BUILT, practice("a frame takes about another tenth of a metre")),
    each=BESIDE_OPENINGS,
    when=on_its_wall,
    window=at_least(0.0, "m", note=0.10),
    says={
        "fail": "hangs {figure} from the edge of the {kind}; {window} wanted for its frame",
        "negative": "hangs {size} across the {kind}; nothing holds in glass or air",
    },
    cure=("position",),
    at="position",
    since="0.1.0",
)
def clear_of_openings(room: Room, both: Seen[Source, Opening]) -> Found:
    """What is mounted on a wall hangs clear of its doors, windows and openings.

    Why: Nothing can be fixed to glass or to air, and the frame of a window takes about another tenth of a metre.

    How decided: Gap on the wall between the cabinet, by its sheet's sizes, and the opening; negative when they overlap,
    below 0.1 m a note. Without a sheet an ordinary cabinet is taken, and the finding says so.

    Remedy: Move the loudspeaker along the wall or above the opening, or use a stand or the ceiling there.

    When to waive: A blind opening that will be closed.
    """
    return found(room.figures.staging.beside_opening(both.source, both.seat), kind=both.seat.kind)


@rule(
    "layout.clear-of-roof-windows",
    level=Level.ERROR,
    basis=(BUILT, practice("the lining of a roof window takes about another tenth of a metre")),
    each=BESIDE_ROOF_WINDOWS,
    when=at_the_ceiling,
    window=at_least(0.0, "m", note=0.10),
    says={
        "fail": "hangs {figure} from the roof window; {window} wanted for its lining",
        "negative": "hangs {size} across the roof window; nothing holds in glass",
    },
    after=("layout.inside-room",),
    cure=("position",),
    at="position",
    since="0.3.0",
)
def clear_of_roof_windows(room: Room, both: Seen[Overhead, RoofWindow]) -> Figure:
    """What is fixed to the ceiling hangs clear of the windows in it.

    Why: Nothing can be fixed to glass, a sash wants its way to turn, and the lining takes a tenth of a metre more.

    How decided: Gap in plan between the cabinet, by its sheet's sizes, or the panel, and the window, whose sizes are
    measured along the slope; negative when they overlap, below 0.1 m a note. Without a sheet an ordinary cabinet is
    taken, and the finding says so.

    Remedy: Move it along the ceiling, or hang it on a wall.

    When to waive: A window that is blinded and boarded over.
    """
    return room.figures.staging.beside_roof_window(both.source, both.seat)


@rule(
    "layout.door-swing",
    level=Level.ERROR,
    basis=BUILT,
    each=NEAR_DOORS,
    when=opens_inward,
    window=at_least(0.0, "m"),
    says={
        "fail": "leaves {figure} to the leaf of the door as it opens; move it out of the way",
        "negative": "reaches {size} into the way of the door as it opens",
    },
    after=("layout.inside-room", "layout.fixtures-inside"),
    cure=("position", "ear"),
    at="position",
    since="0.1.0",
)
def door_swing(room: Room, both: Seen[Body | Treatment, Opening]) -> Figure:
    """Nothing stands in the way of a door that opens into the room.

    Why: A door that hits a loudspeaker, a rack or a chair does not open, also when people have to leave.

    How decided: Free distance between the cabinet, the rack, the panel or the listener and what the leaf sweeps through
    a quarter turn, from its lower to its upper edge; negative where they meet. What hangs above the leaf is out of its
    way.

    Remedy: Move it out of the quarter disc, hang the door on the other side, or let it open outward.

    When to waive: A door that is kept shut for good, where the local code allows it.
    """
    return room.figures.staging.out_of_swing(both.source, both.seat)
