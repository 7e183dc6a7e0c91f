"""Chapter layout, the places: whether things can stand and be heard where the file puts them."""

from __future__ import annotations

from typing import TYPE_CHECKING

from roomlint.review import Against, Group, Level, Window, fails, heard_at, need, passes, practice, rule, standard

if TYPE_CHECKING:
    from collections.abc import Iterator

    from roomlint.design.listening import Loudspeaker, Seat, Subwoofer
    from roomlint.review import Figure, Room, Says

BUILT = practice("a drawing that cannot be built is found on paper, not on site")
ON_NOTHING = frozenset({"floor", "stand", "furniture", "grid-ceiling", "electrical-box"})


def sources(room: Room) -> Iterator[Loudspeaker | Subwoofer]:
    """Yield loudspeakers and subwoofers."""
    yield from room.design.loudspeakers
    yield from room.design.subwoofers


def placed(room: Room) -> Iterator[Loudspeaker | Subwoofer | Seat]:
    """Yield what has a place in the room: loudspeakers, subwoofers and seats."""
    yield from sources(room)
    yield from room.design.seats


def on_surfaces(room: Room) -> Iterator[Loudspeaker | Subwoofer]:
    """Yield what is mounted on a wall or the ceiling."""
    for source in sources(room):
        held = source.mounting.on if source.mounting is not None else None
        if held is not None and held not in ON_NOTHING:
            yield source


def beside_openings(room: Room) -> Iterator[Group]:
    """Yield what is mounted on a wall with each opening of that wall."""
    for source in on_surfaces(room):
        for opening in room.design.shell.openings:
            if source.mounting is not None and opening.wall == source.mounting.on:
                yield Group((source, opening), joined=" beside ")


def near_doors(room: Room) -> Iterator[Group]:
    """Yield what has a place in the room with each door that opens into it."""
    for opening in room.design.shell.openings:
        if opening.kind in {"door", "glass-door"} and opening.swing in {None, "in"}:
            for thing in placed(room):
                yield Group((thing, opening), joined=" near ")


def heard(room: Room) -> Iterator[Group]:
    """Yield each loudspeaker with each seat."""
    for seat in room.design.seats:
        for speaker in room.design.loudspeakers:
            yield heard_at(speaker, seat)


@rule(
    "layout.inside-room",
    level=Level.ERROR,
    basis=BUILT,
    each=placed,
    reads=("loudspeakers[].position", "subwoofers[].position", "seats[].ear", "room"),
    since="0.1.0",
    window=Window(-0.02, None, "m"),
    at="position",
)
def inside_room(room: Room, thing: Loudspeaker | Subwoofer | Seat) -> Figure:
    """Loudspeakers, subwoofers and ears are inside the room.

    Why: A place behind a wall or above the ceiling is a slip of the pen, and every other figure of it is wrong too.

    How decided: Distance to the nearest wall, the floor and the ceiling above it, whichever is least; negative outside.
    Two centimetres are allowed for a loudspeaker set into a wall or ceiling.

    Remedy: Correct the position, or the room's outline or ceiling.

    When to waive: A loudspeaker set deep into a wall, or behind a screen wall that the outline leaves out.
    """
    return room.figures.staging.depth_of(thing)


@rule(
    "layout.on-surface",
    level=Level.WARNING,
    basis=BUILT,
    each=on_surfaces,
    reads=("loudspeakers[].mounting.on", "loudspeakers[].position", "loudspeakers[].product", "product:depth", "room"),
    since="0.1.0",
    window=Window(None, 0.5, "m"),
    at="mounting.on",
)
def on_surface(room: Room, source: Loudspeaker | Subwoofer) -> Against | Says:
    """What is mounted on a wall or ceiling stands at that surface.

    Why: The mount, its fixings and its cable are planned for one surface, the angles for another place.

    How decided: Distance of the acoustic centre from the named wall, as far as it reaches, or from the ceiling above
    it; at most the cabinet's depth, the mount's reach and drop, and 0.10 m.

    Remedy: Name the surface that it really hangs on, or correct the position.

    When to waive: A bracket longer than its sheet says, noted in the file.
    """
    held = source.mounting.on if source.mounting is not None else None
    surface = need(held, source, "mounting.on")
    if surface != "ceiling" and surface not in room.design.shell.wall_names:
        return fails(f"it is mounted on {surface}, and the room has no wall of that name.")
    figure = room.figures.staging.off_surface(source, surface)
    return Against(figure, Window(None, room.figures.staging.reach(source), "m"))


@rule(
    "layout.clear-of-openings",
    level=Level.ERROR,
    basis=BUILT,
    each=beside_openings,
    reads=("loudspeakers[].mounting.on", "loudspeakers[].position", "room.openings[]"),
    since="0.1.0",
    window=Window(0.0, None, "m"),
    target=Window(0.1, None, "m"),
    at="position",
)
def clear_of_openings(room: Room, both: Group) -> Figure:
    """What is mounted on a wall hangs clear of its doors, windows and openings.

    Why: Nothing can be fixed to glass or to air, and the frame of a window takes about another tenth of a metre.

    How decided: Gap on the wall between the cabinet, by its product's width and height, and the opening; negative when
    they overlap, below 0.1 m a note. Without a product the acoustic centre stands for the cabinet.

    Remedy: Move the loudspeaker along the wall or above the opening, or use a stand or the ceiling there.

    When to waive: A blind opening that will be closed.
    """
    source, opening = both.elements
    return room.figures.staging.beside_opening(source, opening)  # type: ignore[arg-type]


@rule(
    "layout.door-swing",
    level=Level.ERROR,
    basis=BUILT,
    each=near_doors,
    reads=("room.openings[].swing", "room.openings[].hinge", "loudspeakers[].position", "seats[].ear"),
    since="0.1.0",
    window=Window(0.0, None, "m"),
    at="position",
)
def door_swing(room: Room, both: Group) -> Figure | Says:
    """Nothing stands in the way of a door that opens into the room.

    Why: A door that hits a loudspeaker or a chair does not open, also when people have to leave.

    How decided: Distance in plan between the quarter disc that the leaf sweeps and the thing, by half its width where
    that is known. What hangs wholly above the leaf is out of its way.

    Remedy: Move it out of the quarter disc, hang the door on the other side, or let it open outward.

    When to waive: A door that is kept shut for good, where the local code allows it.
    """
    thing, opening = both.elements
    need(opening.swing, opening, "swing")  # type: ignore[attr-defined]
    figure = room.figures.staging.out_of_swing(thing, opening)  # type: ignore[arg-type]
    return figure if figure is not None else passes("it hangs above the leaf.")


@rule(
    "layout.line-of-sight",
    level=Level.WARNING,
    basis=practice("a listener hears a loudspeaker well where the tweeter is seen"),
    each=heard,
    reads=("loudspeakers[].position", "seats[].ear", "room.outline", "room.obstacles[]"),
    since="0.1.0",
    at="position",
)
def line_of_sight(room: Room, both: Group) -> Says:
    """No wall, post, beam or soffit stands between a loudspeaker and an ear.

    Why: Treble does not turn corners; a seat behind a chimney breast hears the room, not the loudspeaker.

    How decided: The straight line from the acoustic centre to each ear against walls, obstacles as boxes, and the
    ceiling. Two centimetres at either end are left out, for loudspeakers set into a wall.

    Remedy: Move the loudspeaker or the seat past the obstacle, or add a loudspeaker for that seat.

    When to waive: A spare seat that is known to be second best.
    """
    speaker, seat = both.elements
    hidden = room.figures.staging.hidden(speaker, seat)  # type: ignore[arg-type]
    return fails(f"{hidden.words} stands in between.") if hidden is not None else passes("the line is free.")


@rule(
    "layout.over-heads",
    level=Level.WARNING,
    basis=practice("the line to an ear clears the heads of the rows between; 0.10 m is a choice of this rule book"),
    each=heard,
    reads=("loudspeakers[].position", "seats[].ear", "seats[].row", "seats[].head_top", "seats[].back_top"),
    since="0.1.0",
    window=Window(0.10, None, "m"),
    at="position",
)
def over_heads(room: Room, both: Group) -> Figure | Says:
    """The line from a loudspeaker to an ear clears the heads of other rows by 10 centimetres.

    Why: A head in the way dulls the treble for the listener behind it.

    How decided: Height of the line where it passes nearest to each head of another row in plan, if within 0.12 m, less
    the top of the head or of the seat back, whichever is higher. Rows are told by their numbers, or by 0.6 m between
    front and rear.

    Remedy: Raise the loudspeaker or the rear row, or stagger the seats.

    When to waive: Low surrounds that only the nearer row is meant to hear well.
    """
    speaker, seat = both.elements
    found = room.figures.staging.over_heads(speaker, seat)  # type: ignore[arg-type]
    return found[0] if found is not None else passes("it passes no head of another row.")


@rule(
    "layout.ear-height",
    level=Level.NOTE,
    basis=(
        standard("ITU-R BS.775-3", "figure 1", read=True, note="loudspeakers at 1.2 m, a seated ear"),
        practice("a seated ear is 1.05 to 1.30 m above its own floor; body measurements of 2012 agree"),
    ),
    each=lambda room: room.design.seats,
    reads=("seats[].ear", "seats[].riser"),
    since="0.1.0",
    window=Window(1.05, 1.30, "m"),
    at="ear.height",
)
def ear_height(room: Room, seat: Seat) -> Figure:
    """The ear of every seat is where a seated person's ear is.

    Why: Every angle and distance is counted from it; a slip of a hand's width here moves them all.

    How decided: Height of the ear less the riser that the seat stands on, between 1.05 and 1.30 m.

    Remedy: Measure the ear of somebody who sits in the seat, and say which platform it stands on.

    When to waive: A low lounge seat or a bar stool that was measured.
    """
    return room.figures.staging.ear_height(seat)
