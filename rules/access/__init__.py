"""Chapter access: how people come in and out, step up, and reach what they use; the local code decides."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from roomlint.review import No, Seen, Subjects, need, standard

if TYPE_CHECKING:
    from collections.abc import Iterator

    from roomlint.design.listening import Loudspeaker, Projector, Seat, Subwoofer
    from roomlint.design.shell import Control, Obstacle, Opening, Riser, Treatment, Walkway
    from roomlint.design.supply import Rack
    from roomlint.review import Applies, Room

    Body = Loudspeaker | Subwoofer | Seat | Rack | Projector
    Standing = Body | Obstacle | Treatment

CAUTION: Final = (
    "A design note, no inspection: the adopted local code and the authority having jurisdiction decide on ways out, "
    "alarms and steps; a private home is generally outside the accessibility standards whose figures stand here."
)
WAY_OUT: Final = standard("IRC", "R311.2", edition="2009", read=False, note="quoted in a forum on codes")
REACH: Final = standard("2010 ADA Standards", "308.2.1", read=True)
DOORS: Final = frozenset({"door", "glass-door", "opening"})

OPENINGS: Subjects[Opening] = Subjects("opening", lambda room: room.design.shell.openings, ("room.openings",))
RISERS: Subjects[Riser] = Subjects("platform", lambda room: room.design.shell.risers, ("room.risers",))
WALKWAYS: Subjects[Walkway] = Subjects("walkway", lambda room: room.design.shell.walkways, ("room.walkways",))
CONTROLS: Subjects[Control] = Subjects(
    "keypad, switch or screen on a wall", lambda room: room.design.shell.controls, ("room.controls",)
)
RACKS: Subjects[Rack] = Subjects("rack", lambda room: room.design.racks, ("electronics.racks",))


def _at_doors(room: Room) -> Iterator[Seen[Standing, Opening]]:
    for thing in (*room.figures.bodies.things, *room.design.shell.obstacles, *room.figures.covering.boards()):
        for opening in room.design.shell.openings:
            if opening.kind in DOORS:
                yield Seen(thing, opening)


AT_DOORS: Subjects[Seen[Standing, Opening]] = Subjects(
    "door or opening with a thing", _at_doors,
    ("room.openings", "room.obstacles", "loudspeakers", "subwoofers", "seats", "electronics.racks", "picture",
     "treatments"),
)  # fmt: skip


def _in_walkways(room: Room) -> Iterator[Seen[Standing, Walkway]]:
    for thing in (*room.figures.bodies.things, *room.design.shell.obstacles, *room.figures.covering.boards()):
        for walkway in room.design.shell.walkways:
            yield Seen(thing, walkway, " in ")


IN_WALKWAYS: Subjects[Seen[Standing, Walkway]] = Subjects(
    "walkway with a thing", _in_walkways,
    ("room.walkways", "room.obstacles", "loudspeakers", "subwoofers", "seats", "electronics.racks", "picture",
     "treatments"),
)  # fmt: skip


def escape_door(_: Room, opening: Opening) -> Applies:
    """Whether people are meant to escape through it on foot."""
    if opening.kind not in DOORS:
        return No("it is a window")
    return True if need(opening.egress, opening, "egress") else No("nobody is meant to escape through it")


def escape_window(_: Room, opening: Opening) -> Applies:
    """Whether people are meant to escape through a window."""
    if opening.kind in DOORS:
        return No("it is no window")
    return True if need(opening.egress, opening, "egress") else No("nobody is meant to escape through it")


def at_escape(room: Room, both: Seen[Standing, Opening]) -> Applies:
    """Whether people are meant to escape through the opening that a thing is held against."""
    return escape_door(room, both.seat)
