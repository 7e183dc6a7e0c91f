"""Walls near seats and loudspeakers, and what stands close to a cabinet's faces."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from roomlint.design.base import need
from roomlint.design.listening import Subwoofer
from roomlint.review import (
    LOUDSPEAKERS,
    SEATS,
    SOURCES,
    SUBWOOFERS,
    Cases,
    Level,
    No,
    Window,
    Windows,
    at_least,
    by_reference,
    computed,
    found,
    memory,
    practice,
    rule,
    standard,
)

from . import EAR_LAYER, stands_free

if TYPE_CHECKING:
    from roomlint.design.listening import Loudspeaker, Seat
    from roomlint.review import Answer, Applies, Figure, Room
    from roomlint.review.subjects import Source

SPEAKER_AHEAD: Final = at_least(0.5, "m")
SUBWOOFER_AHEAD: Final = at_least(0.1, "m")


@rule(
    "boundary.seat-to-wall",
    level=Level.WARNING,
    basis=(
        standard("CTA/CEDIA-RP22", "parameter 1, level 3", edition="1.2 (2023)", read=False),
        practice("a seat keeps out of the wall's own bass; half a metre is a choice of this rule book"),
    ),
    each=SEATS,
    window=by_reference(home=at_least(0.5, "m", note=1.2), critical=at_least(1.2, "m")),
    says="{figure} from the {wall} wall; {window} wanted",
    cure=("ear",),
    at="ear",
    since="0.1.0",
)
def seat_to_wall(room: Room, seat: Seat) -> Answer:
    """Every seat stands clear of the walls.

    Why: At a wall every mode across the room is at its loudest, and the wall's reflection comes too soon to be told
    apart.

    How decided: Distance in plan from the ear to the nearest wall. Under half a metre is a warning and under 1.2 m a
    note; with project.reference critical under 1.2 m is a warning.

    Remedy: Bring the seat forward, or treat the wall behind the head and say so when waiving.

    When to waive: One row against a wall is all that the room allows, and the client knows what it costs.
    """
    view = room.figures.boundary
    return found(view.seat_to_wall(seat), wall=view.nearest_wall_name(need(seat.ear, seat, "ear")))


def _has_a_port(room: Room, source: Source) -> Applies:
    face = room.figures.boundary.port(source).face
    if face == "none":
        return No("its sheet says that it has no port")
    if face == "front" and source.port_clearance_m is None:
        return No("its port faces the room")
    return True


def _port_windows(room: Room, source: Source) -> Windows:
    least, wanted = room.figures.boundary.port_need_m(source)
    return Windows(Window(wanted, None, "m"), limit=Window(least, None, "m"))


@rule(
    "boundary.port-clearance",
    level=Level.WARNING,
    basis=practice(
        "two port diameters and 0.15 m are comfortable, one is the least; under a downward port one, a quarter at least"
    ),
    each=SOURCES,
    when=_has_a_port,
    window=computed(
        "m", "the maker's own clearance, or two port diameters and 0.15 m; an error under one diameter", _port_windows
    ),
    says={
        "fail": "{figure} before the port in its {face}; {window} wanted",
        "negative": "has the port in its {face} {size} behind the nearest surface; {window} before it wanted",
    },
    cure=("position",),
    at="position",
    since="0.1.0",
)
def port_clearance(room: Room, source: Source) -> Answer:
    """A cabinet's port has the free distance in front of it that it needs.

    Why: A surface nearer than about one diameter adds to the port's length, retunes it and makes it chuff.

    How decided: The measured clearance, or for a rear port the way from the cabinet's back to the first surface behind
    it. The maker's own figure counts where the sheet gives it; else less than two diameters or 0.15 m is a warning.
    Less than one diameter is an error either way. Under a downward port less than one diameter is a warning, and less
    than a quarter, where the gap's own area is smaller than the port's, an error.

    Remedy: Bring the cabinet forward, turn it, or choose one with a front or downward port.

    When to waive: The maker states in writing that the cabinet may stand against a surface.
    """
    view = room.figures.boundary
    return found(view.port_gap(source), face=view.port(source).face or "cabinet")


@rule(
    "boundary.free-standing",
    level=Level.NOTE,
    basis=(
        memory("1 m from the walls", document="ITU-R BS.1116", clause="8.5"),
        practice("0.3 m at home, a choice of this rule book"),
    ),
    each=EAR_LAYER,
    when=stands_free,
    window=by_reference(home=at_least(0.3, "m"), critical=at_least(1.0, "m")),
    critical_level=Level.WARNING,
    says="stands {figure} from the {wall} wall; {window} wanted",
    cure=("position",),
    at="position",
    since="0.1.0",
)
def free_standing(room: Room, speaker: Loudspeaker) -> Answer:
    """A free-standing loudspeaker stands clear of the walls.

    Why: A wall beside it lifts its bass and mirrors its sound within a few milliseconds.

    How decided: Distance in plan to the nearest wall: under 0.3 m is a note; with project.reference critical the
    listening-room figure of 1 m gives a warning. A home seldom meets that figure.

    Remedy: Bring it into the room, or mount it in or on the wall and choose a product made for that.

    When to waive: The product is made for standing near a wall.
    """
    place = need(speaker.position, speaker, "position")
    view = room.figures.boundary
    return found(view.to_wall(place), wall=view.nearest_wall_name(place))


def _ahead(_: Room, source: Source) -> Windows:
    return SUBWOOFER_AHEAD if isinstance(source, Subwoofer) else SPEAKER_AHEAD


@rule(
    "boundary.front-face",
    level=Level.WARNING,
    basis=practice("half a metre in front of a loudspeaker, a hand's width in front of a subwoofer"),
    each=SOURCES,
    window=Cases("m", (("before a loudspeaker", SPEAKER_AHEAD), ("before a subwoofer", SUBWOOFER_AHEAD)), _ahead),
    says="{figure} free before its front; {window} wanted",
    after=("layout.inside-room", "layout.clear-of-solids", "boundary.cabinet-room"),
    cure=("position",),
    at="position",
    since="0.1.0",
)
def front_face(room: Room, source: Source) -> Figure:
    """Nothing stands close in front of a cabinet.

    Why: A post, a soffit or a wall right before the drivers throws the sound back and shades the seats.

    How decided: The way that the cabinet's front has along its axis before any part of it meets a surface or an
    obstacle of the room: half a metre for a loudspeaker, 0.1 m for a subwoofer. Furniture that the file does not list
    is not seen.

    Remedy: Turn or move the cabinet, or the obstacle.

    When to waive: The obstacle is open to sound, such as a cloth-covered frame.
    """
    return room.figures.boundary.ahead(source)


@rule(
    "boundary.cabinet-room",
    level=Level.WARNING,
    basis=practice("a drawing that cannot be built is found on paper, not on site"),
    each=SOURCES,
    when=stands_free,
    window=at_least(0.0, "m", note=0.03),
    says={"fail": "the cabinet has {figure} to the nearest surface; {window} wanted"},
    after=("layout.inside-room",),
    cure=("position",),
    at="position",
    since="0.1.0",
)
def cabinet_room(room: Room, source: Source) -> Figure:
    """A free-standing cabinet fits where the drawing puts it.

    Why: The position is of the acoustic centre; the cabinet around it may reach into the wall or the slope.

    How decided: The whole cabinet, turned as it is aimed, against walls, floor and ceiling. Below zero a corner of it
    pokes through, which is a warning; under 30 mm is a note. The sheet gives its size. What it shares with furniture
    and other cabinets is judged by `layout.clear-of-solids`.

    Remedy: Move the position by the amount that lacks, or choose a smaller cabinet.

    When to waive: The sheet's size holds feet or connectors that can be taken off.
    """
    return room.figures.boundary.fit(source)


@rule(
    "boundary.corner",
    level=Level.NOTE,
    basis=practice("a main loudspeaker within half a metre of a corner is lifted by two walls and the floor at once"),
    each=LOUDSPEAKERS,
    when=stands_free,
    window=at_least(0.5, "m"),
    says="stands {figure} from a corner; {window} wanted",
    cure=("position",),
    at="position",
    since="0.1.0",
)
def corner(room: Room, speaker: Loudspeaker) -> Figure:
    """No free-standing loudspeaker stands in a corner.

    Why: Two walls and the floor each lift the bass; together they make it boom, and the side wall mirrors the sound at
    once.

    How decided: Distance in plan from the acoustic centre to the nearest corner of the room that encloses it. A corner
    that pokes into the room lifts nothing, and a straight wall that is written in two pieces has none.

    Remedy: Bring it out along one of the two walls, or use a product made for corners.

    When to waive: The product is made for corners, or its bass is turned down to suit.
    """
    return room.figures.boundary.corner(speaker)


@rule(
    "boundary.subwoofer-null",
    level=Level.NOTE,
    basis=practice("a subwoofer's own wall null belongs an octave above its band"),
    each=SUBWOOFERS,
    window=at_least(2.0, ""),
    says="the {wall} wall cancels a note at {figure} times its crossover; {window} wanted",
    cure=("position",),
    at="position",
    since="0.1.0",
)
def subwoofer_null(room: Room, subwoofer: Subwoofer) -> Answer:
    """A subwoofer stands near enough to a wall that the wall's null lies above its band.

    Why: In the middle of the floor the wall's reflection cancels inside the subwoofer's own band.

    How decided: First null c/4d of the nearest wall over the end of the band: the lower of its low-pass and the
    highest crossover entered, else 80 Hz, which is told. What all surfaces together do at the seats is the modal sum
    of chapter bass; this rule is about the one wall that a subwoofer can be moved to.

    Remedy: Move the subwoofer towards the wall.

    When to waive: The position was found by measuring at the seats.
    """
    place = need(subwoofer.position, subwoofer, "position")
    view = room.figures.boundary
    return found(view.own_null(subwoofer), wall=view.nearest_wall_name(place))
