"""Chapter boundary: what walls and floor do to loudspeakers, ports and seats."""

from __future__ import annotations

from typing import TYPE_CHECKING

from roomlint.design.base import Group, need
from roomlint.review import Against, Level, Window, heard_at, memory, passes, practice, rule, standard

if TYPE_CHECKING:
    from collections.abc import Iterator

    from roomlint.design.listening import Loudspeaker, Seat, Subwoofer
    from roomlint.review import Figure, Room, Says

NULL_BAND_HZ = (60.0, 250.0)
"""Below, the room's modes rule; above, cabinets no longer radiate backward."""
DEFAULT_CROSSOVER_HZ = 80.0


def _seats(room: Room) -> tuple[Seat, ...]:
    return room.design.seats


def _ported(room: Room) -> Iterator[Loudspeaker | Subwoofer]:
    """Yield what has a port, or may have one: a sheet that says `none` takes the cabinet out."""
    for source in room.design.sources:
        data = source.product.loudspeaker if source.product is not None else None
        port = data.port if data is not None else None
        if source.product is None or data is None or port is None or port.face not in {"none", "front"}:
            yield source


def _free_standing(room: Room) -> Iterator[Loudspeaker]:
    for speaker in room.design.loudspeakers:
        held = speaker.mounting.on if speaker.mounting is not None else None
        if held in {None, "stand", "floor", "furniture"} and (speaker.label or "M")[0] == "M":
            yield speaker


def _heard_at_reference(room: Room) -> Iterator[Group]:
    for speaker in _free_standing(room):
        yield heard_at(speaker, room.reference_seat)


@rule(
    "boundary.seat-to-wall",
    level=Level.WARNING,
    basis=(
        standard("CTA/CEDIA-RP22", "parameter 1, level 3", edition="1.2 (2023)", read=False),
        practice("a seat keeps out of the wall's own bass; half a metre is a choice of this rule book"),
    ),
    each=_seats,
    reads=("seats[].ear", "room"),
    since="0.1.0",
    window=Window(0.5, None, "m"),
    target=Window(1.2, None, "m"),
    critical=Window(1.2, None, "m"),
    at="ear",
)
def seat_to_wall(room: Room, seat: Seat) -> Figure:
    """Every seat stands clear of the walls.

    Why: At a wall every mode across the room is at its loudest, and the wall's reflection comes too soon to be told
    apart.

    How decided: Distance in plan from the ear to the nearest wall. Under half a metre is a warning and under 1.2 m a
    note; with project.reference critical under 1.2 m is a warning.

    Remedy: Bring the seat forward, or treat the wall behind the head and say so when waiving.

    When to waive: One row against a wall is all that the room allows, and the client knows what it costs.
    """
    return room.figures.boundary.seat_to_wall(seat)


@rule(
    "boundary.port-clearance",
    level=Level.WARNING,
    basis=practice(
        "two port diameters and 0.15 m are comfortable, one is the least; a downward port needs its plinth gap only"
    ),
    each=_ported,
    reads=("loudspeakers[].position", "subwoofers[].position", "product loudspeaker.port"),
    since="0.1.0",
    at="position",
)
def port_clearance(room: Room, source: Loudspeaker | Subwoofer) -> Against:
    """A cabinet's port has the free distance in front of it that it needs.

    Why: A surface nearer than about one diameter adds to the port's length, retunes it and makes it chuff.

    How decided: The measured clearance, or for a rear port the way from the cabinet's back to the first surface behind
    it. The maker's own figure counts where the sheet gives it; otherwise less than two diameters or 0.15 m is a warning
    and less than one diameter an error. A downward port needs a quarter of its diameter.

    Remedy: Bring the cabinet forward, turn it, or choose one with a front or downward port.

    When to waive: The maker states in writing that the cabinet may stand against a surface.
    """
    view = room.figures.boundary
    gap, port = view.port_gap(source), view.port(source)
    product = need(source.product, source, "product")
    says = f"The port is in the {port.face}."
    if port.clearance_m is not None:
        return Against(
            gap, Window(port.clearance_m.value, None, "m"), says=f"{says} The maker asks for this clearance."
        )
    least, wanted = view.port_need_m(product, port)
    return Against(gap, Window(wanted, None, "m"), says=says, limit=Window(least, None, "m"))


@rule(
    "boundary.rear-null",
    level=Level.WARNING,
    basis=practice("a deep null between 60 and 250 Hz thins the bass; 8 dB is a choice of this rule book"),
    each=_heard_at_reference,
    reads=("loudspeakers[].position", "seats[].ear", "room"),
    since="0.1.0",
    window=Window(-8.0, None, "dB"),
    at="position",
)
def rear_null(room: Room, pair: Group) -> Figure | Says:
    """The wall behind a free-standing loudspeaker takes no octave out of its bass.

    Why: Sound from the wall behind arrives half a wave late at the frequency c/4d and cancels the direct sound there.

    How decided: Distance straight back from the loudspeaker, away from the reference seat, to the first surface; the
    null's frequency c/4d, and its depth there for a wall that gives back 80 % of the pressure. Only a null between 60
    and 250 Hz counts: below, room modes rule; above, a cabinet hardly radiates backward.

    Remedy: Stand the loudspeaker nearer to the wall, so that the null rises above 250 Hz, or much farther away.

    When to waive: The wall behind is treated deep enough to absorb at that frequency.
    """
    speaker, seat = pair.elements
    view = room.figures.boundary
    null = view.rear_null_hz(speaker, seat)  # type: ignore[arg-type]
    if not NULL_BAND_HZ[0] <= null.value <= NULL_BAND_HZ[1]:
        return passes(f"the null of the wall behind is at {null.value:.0f} Hz, outside 60 to 250 Hz.")
    return view.rear_null_depth(speaker, seat)  # type: ignore[arg-type]


@rule(
    "boundary.equal-distances",
    level=Level.NOTE,
    basis=(
        standard("J. Audio Eng. Soc. 22 (1974)", "the influence of room boundaries on power output", read=False),
        memory("a tenth apart is enough to spread the dips"),
    ),
    each=_free_standing,
    reads=("loudspeakers[].position", "room"),
    since="0.1.0",
    window=Window(1.1, None, ""),
    at="position",
)
def equal_distances(room: Room, speaker: Loudspeaker) -> Figure:
    """A loudspeaker stands at different distances from floor, side and rear.

    Why: Three equal distances stack their cancellations on one frequency: the radiated power dips by up to 11 dB there,
    against under 2 dB when the distances differ.

    How decided: The height above the floor and the distances to the two nearest walls that the loudspeaker faces; the
    two most alike must differ by a tenth.

    Remedy: Move the loudspeaker along one of the two directions by a tenth of the distance or more.

    When to waive: The surfaces are treated at the frequency in question.
    """
    return room.figures.boundary.closest_ratio(speaker)


@rule(
    "boundary.subwoofer-null",
    level=Level.NOTE,
    basis=practice("a subwoofer's own wall null belongs an octave above its band"),
    each=lambda room: room.design.subwoofers,
    reads=("subwoofers[].position", "subwoofers[].low_pass", "room"),
    since="0.1.0",
    at="position",
)
def subwoofer_null(room: Room, subwoofer: Subwoofer) -> Against:
    """A subwoofer stands near enough to a wall that the wall's null lies above its band.

    Why: In the middle of the floor the wall's reflection cancels inside the subwoofer's own band.

    How decided: Distance to the nearest wall against c/8f, which puts the first null an octave above the low-pass
    frequency f (80 Hz when the file gives none).

    Remedy: Move the subwoofer towards the wall.

    When to waive: The position was found by measuring at the seats.
    """
    place = need(subwoofer.position, subwoofer, "position")
    low_pass = subwoofer.low_pass_hz.value if subwoofer.low_pass_hz is not None else DEFAULT_CROSSOVER_HZ
    most = room.figures.boundary.clear_of_rear_null_m(2 * low_pass)
    return Against(
        room.figures.space.nearest_wall(place), Window(None, most, "m"), says=f"Its band ends at {low_pass:.0f} Hz."
    )


@rule(
    "boundary.free-standing",
    level=Level.NOTE,
    basis=(
        memory("1 m from the walls", document="ITU-R BS.1116", clause="8.5"),
        practice("0.3 m at home, a choice of this rule book"),
    ),
    each=_free_standing,
    reads=("loudspeakers[].position", "room"),
    since="0.1.0",
    window=Window(0.3, None, "m"),
    critical=Window(1.0, None, "m"),
    critical_level=Level.WARNING,
    at="position",
)
def free_standing(room: Room, speaker: Loudspeaker) -> Figure:
    """A free-standing loudspeaker stands clear of the walls.

    Why: A wall beside it lifts its bass and mirrors its sound within a few milliseconds.

    How decided: Distance in plan to the nearest wall: under 0.3 m is a note; with project.reference critical the
    listening-room figure of 1 m gives a warning. A home seldom meets that figure.

    Remedy: Bring it into the room, or mount it in or on the wall and choose a product made for that.

    When to waive: The product is made for standing near a wall.
    """
    return room.figures.space.nearest_wall(need(speaker.position, speaker, "position"))
