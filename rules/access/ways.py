"""Ways out, and what warns people to take them."""

from __future__ import annotations

from typing import TYPE_CHECKING

from roomlint.review import (
    ROOM,
    Level,
    Missing,
    at_least,
    at_most,
    fails,
    memory,
    need,
    passes,
    practice,
    rule,
    standard,
    unsaid,
)

from . import AT_DOORS, CAUTION, OPENINGS, WAY_OUT, at_escape, escape_door, escape_window

if TYPE_CHECKING:
    from roomlint.design.model import Design
    from roomlint.design.shell import Opening
    from roomlint.review import Figure, Room, Says, Seen

    from . import Standing


@rule(
    "access.escape",
    level=Level.WARNING,
    basis=practice("every room that people sit in has a way out that is meant as one"),
    each=ROOM,
    says={
        "none": "has no opening that people are meant to escape through; name the one that is",
        "there": "has a way out",
    },
    caution=CAUTION,
    since="0.3.0",
)
def escape(room: Room, design: Design) -> Says:
    """The room has an opening that people are meant to escape through.

    Why: In a dark, loud room people find the way out that was planned, or none.

    How decided: One opening at least says that it is a way out. Whether it is enough, and for a basement whether a
    second is due, the local code says.

    Remedy: Say which door it is, and keep it as one; ask the code official before a room in a basement is closed.

    When to waive: Never; the local code decides.
    """
    missing = unsaid(room.design, "room.openings")
    if missing is not None:
        raise missing
    openings = room.design.shell.openings
    if any(opening.egress for opening in openings):
        return passes("there")
    for opening in openings:
        if opening.egress is None:
            raise Missing(opening, "egress")
    return fails("none")


@rule(
    "access.escape-width",
    level=Level.NOTE,
    basis=(WAY_OUT, standard("2010 ADA Standards", "404.2.3", read=True, note="815 mm, face of the leaf to the stop")),
    each=OPENINGS,
    when=escape_door,
    window=at_least(0.813, "m"),
    says="is a way out {figure} wide; {window} wanted",
    cure=("width",),
    at="width",
    caution=CAUTION,
    since="0.3.0",
)
def escape_width(room: Room, opening: Opening) -> Figure:
    """A door that people are meant to escape through is 0.813 m wide.

    Why: People leave side by side with what they carry, and helpers come in.

    How decided: The clear width that the file gives, 32 in, measured between the leaf, open at a right angle, and the
    stop. The clause is of the dwelling's own way out; other doors need not be as wide, so that it is a note.

    Remedy: A wider door, or name another one that people escape through.

    When to waive: The local code official accepts it, in writing.
    """
    return room.figures.access.wide(opening)


@rule(
    "access.escape-height",
    level=Level.NOTE,
    basis=WAY_OUT,
    each=OPENINGS,
    when=escape_door,
    window=at_least(1.981, "m"),
    says="is a way out {figure} high; {window} wanted",
    cure=("height",),
    at="height",
    caution=CAUTION,
    since="0.3.0",
)
def escape_height(room: Room, opening: Opening) -> Figure:
    """A door that people are meant to escape through is 1.981 m high.

    Why: A lintel at forehead height is met in the dark.

    How decided: The clear height that the file gives, 78 in, by the same clause as
    `access.escape-width`. A page on a later edition says 72 in; the higher stands.

    Remedy: A higher door, or name another one that people escape through.

    When to waive: The local code official accepts it, in writing.
    """
    return room.figures.access.high(opening)


@rule(
    "access.escape-window",
    level=Level.WARNING,
    basis=memory("a window to escape through begins at most 44 in above the floor", document="IRC", clause="R310.2"),
    each=OPENINGS,
    when=escape_window,
    window=at_most(1.118, "m"),
    says="is a way out that begins {figure} above the floor; {window} wanted",
    cure=("sill",),
    at="sill",
    caution=CAUTION,
    since="0.3.0",
)
def escape_window_low(room: Room, opening: Opening) -> Figure:
    """A window that people are meant to escape through begins at most 1.118 m above the floor.

    Why: Nobody climbs to a high sill in smoke.

    How decided: The height of its lower edge, 44 in. Its least clear opening, and the well before it in a basement, are
    not judged here: the local code has them.

    Remedy: A lower window, a fixed step that the local code accepts, or another way out.

    When to waive: The local code official accepts it, in writing.
    """
    return room.figures.access.sill(opening)


@rule(
    "access.before-door",
    level=Level.WARNING,
    basis=(
        standard("2010 ADA Standards", "403.5.1", read=True, note="915 mm, a walkway's width"),
        practice("the way just inside a door that people escape through is free, as wide as the door"),
    ),
    each=AT_DOORS,
    when=at_escape,
    window=at_least(0.0, "m"),
    says={
        "fail": "stands {figure} beside the way just inside the door; {window} wanted, whatever the tape says",
        "negative": "reaches {size} into the way just inside the door that people escape through",
    },
    after=("layout.inside-room", "layout.door-swing"),
    cure=("position", "ear"),
    at="position",
    caution=CAUTION,
    since="0.3.0",
)
def before_door(room: Room, both: Seen[Standing, Opening]) -> Figure:
    """Nothing stands in the way just inside a door that people are meant to escape through.

    Why: A subwoofer beside the door is where people stumble in the dark; what hangs there meets a shoulder.

    How decided: Free distance between a cabinet, a rack, a seat, the projector, a panel or an obstacle, by size, and
    the box before the opening, as wide and high as it is and 0.915 m deep; negative inside it. What hangs above the
    opening is out of the way. What the leaf itself sweeps is judged by `layout.door-swing`.

    Remedy: Move it out of the way.

    When to waive: Never for a door that people escape through.
    """
    return room.figures.access.before_door(both.source, both.seat)


@rule(
    "access.alarm",
    level=Level.WARNING,
    basis=(
        memory("smoke alarms in sleeping rooms, outside them and on each storey", document="IRC", clause="R314"),
        practice("an alarm that sounds elsewhere is not heard in a quietened room while a film runs"),
    ),
    each=ROOM,
    says={
        "elsewhere": "is warned of smoke by an alarm elsewhere, which nobody hears over a film; one belongs here",
        "none": "has no smoke alarm that warns who sits here",
        "there": "has a smoke alarm of its own",
    },
    at="room.smoke_alarm",
    caution=CAUTION,
    since="0.3.0",
)
def alarm(room: Room, design: Design) -> Says:
    """Who sits in the room hears a smoke alarm while a film runs.

    Why: The better a room is quietened, the less it hears of the house.

    How decided: Where the file says that the alarm is: in the room itself, elsewhere, or nowhere.

    Remedy: An alarm in the room that is linked with the others, as the local code wants it.

    When to waive: A listed alarm mutes the system, and somebody tried it.
    """
    where = need(design.shell.smoke_alarm, design.shell, "smoke_alarm")
    return passes("there") if where == "in-room" else fails(where)
