"""The room's own modes, volume and proportions."""

from __future__ import annotations

from typing import TYPE_CHECKING

from roomlint.review import (
    Level,
    No,
    Window,
    Windows,
    between,
    computed,
    fails,
    memory,
    practice,
    rule,
    standard,
    tells,
)

from . import ROOM_SHELL, in_a_box

if TYPE_CHECKING:
    from roomlint.design.shell import Shell
    from roomlint.review import Answer, Applies, Figure, Room

HANDBOOK = standard(
    "Handbook for Sound Engineers",
    "small-room acoustics, axial modes",
    edition="4th edition",
    read=True,
    note="edition told by its contents",
)


@rule(
    "bass.room-volume",
    level=Level.NOTE,
    basis=practice("the formulas of this chapter are for rooms of 20 to 300 m3"),
    each=ROOM_SHELL,
    window=between(20.0, 300.0, "m3"),
    says="the room holds {figure}; these formulas are for {window}",
    since="0.1.0",
)
def room_volume(room: Room, _shell: Shell) -> Figure:
    """The room is of a size that the formulas are for.

    Why: In a very small room modes rule the whole voice range; in a very large one cinema documents apply.

    How decided: Volume under the real ceiling.

    Remedy: None for the room; read this chapter's other findings with care.

    When to waive: The room is as it is.
    """
    return room.figures.bass.volume()


@rule(
    "bass.room-modes",
    level=Level.NOTE,
    basis=HANDBOOK,
    each=ROOM_SHELL,
    when=in_a_box,
    says={"modes": "axial modes step by {smallest} to {largest} below 200 Hz"},
    at="size",
    since="0.2.0",
)
def room_modes(room: Room, _shell: Shell) -> Answer:
    """The steps between the room's axial modes are known to whoever places the seats.

    Why: Two modes at nearly one frequency ring together, and one that stands alone booms; hardly any room, the good
    ones that are published included, is free of both. It is worth knowing and nothing to correct in a room that stands.

    How decided: Axial modes below 200 Hz of a rectangular room with a flat ceiling: the smallest and the largest step.
    This took over `bass.axial-crowding`, `bass.axial-gap`, `bass.mode-count` and `bass.whole-ratios`, four notes about
    one fact.

    Remedy: Place subwoofers and seats by the seat spread.

    When to waive: There is nothing to waive; it is told and does not fail.
    """
    smallest, largest = room.figures.bass.axial_step(largest=False), room.figures.bass.axial_step(largest=True)
    return tells("modes", smallest, smallest=smallest, largest=largest)


def _critical(room: Room, _: Shell) -> Applies:
    return True if room.critical else No("proportions are judged in rooms for critical listening")


def _proportions(room: Room, _: Shell) -> Windows:
    low, high = room.figures.bass.proportion_window()
    return Windows(Window(min(low, high), high, ""))


@rule(
    "bass.proportions",
    level=Level.WARNING,
    basis=memory(
        "inequality for room proportions", document="EBU Tech 3276", edition="2nd edition", clause="Appendix 2"
    ),
    each=ROOM_SHELL,
    when=(in_a_box, _critical),
    window=computed("", "1.1 w/h to 4.5 w/h - 4, and under 3", _proportions),
    says={
        "fail": "the room is {figure} times as long as it is high; {window} wanted",
        "none": "no length suits this width; the shorter side wants 1.18 to 2.73 times the height",
    },
    at="size",
    since="0.1.0",
)
def proportions(room: Room, _shell: Shell) -> Answer:
    """The proportions of a room for critical listening spread its modes.

    Why: Sides too alike or too unlike pile modes on top of each other.

    How decided: 1.1 w/h <= l/h <= 4.5 w/h - 4 with the longer plan side as length, and both sides under 3 times the
    height, which the longer one decides, for a rectangular room with a flat ceiling. At home the room is as it is, and
    nothing is said.

    Remedy: A false wall or ceiling changes the proportion; otherwise place subwoofers and seats by computation.

    When to waive: The room is as it is; the placement was computed.
    """
    view = room.figures.bass
    low, high = view.proportion_window()
    if low > high:
        # 1.1 x exceeds 4.5 x - 4 below x = 4 / 3.4, and 3 above x = 3 / 1.1.
        return fails("none")
    return view.length_ratio()
