"""Chapter bass, second part: the room's own modes and proportions."""

from __future__ import annotations

from typing import TYPE_CHECKING

from roomlint.rules.bass import NOT_A_BOX

from roomlint.review import Against, Level, Window, does_not_apply, fails, memory, passes, practice, rule, standard

if TYPE_CHECKING:
    from roomlint.design.shell import Shell
    from roomlint.review import Figure, Room, Says

HANDBOOK = standard(
    "Handbook for Sound Engineers",
    "small-room acoustics, axial modes",
    edition="4th edition",
    read=True,
    note="edition told by its contents",
)


def _shell(room: Room) -> tuple[Shell, ...]:
    return (room.design.shell,)


@rule(
    "bass.proportions",
    level=Level.NOTE,
    basis=memory(
        "inequality for room proportions", document="EBU Tech 3276", edition="2nd edition", clause="Appendix 2"
    ),
    each=_shell,
    reads=("room.size", "room.ceiling.height"),
    since="0.1.0",
    critical_level=Level.WARNING,
    at="size",
)
def proportions(room: Room, shell: Shell) -> Against | Says:
    """The room's proportions spread its modes.

    Why: Sides too alike or too unlike pile modes on top of each other.

    How decided: 1.1 w/h <= l/h <= 4.5 w/h - 4 with the longer plan side as length, for a rectangular room with a flat
    ceiling. A note at home; with project.reference critical a warning.

    Remedy: A false wall or ceiling changes the proportion; otherwise place subwoofers and seats by computation.

    When to waive: The room is as it is; the placement was computed.
    """
    if not room.figures.bass.is_box:
        return does_not_apply(NOT_A_BOX)
    low, high = room.figures.bass.proportion_window()
    if low > high:
        # 1.1 x exceeds 4.5 x - 4 below x = 4 / 3.4.
        return fails("no length meets the inequality; the shorter plan side must be 1.18 times the height or more.")
    return Against(room.figures.bass.proportion_margin(), Window(low, high, ""))


@rule(
    "bass.whole-ratios",
    level=Level.NOTE,
    basis=memory(
        "sides within 5 % of a whole-number ratio share modes", document="EBU Tech 3276", edition="2nd edition"
    ),
    each=_shell,
    reads=("room.size", "room.ceiling.height"),
    since="0.1.0",
    window=Window(5.0, None, "%"),
    at="size",
)
def whole_ratios(room: Room, shell: Shell) -> Figure | Says:
    """No side of the room is close to a whole multiple of another.

    Why: Sides in a whole-number ratio share axial modes, which then stand out.

    How decided: Ratio of each pair of sides against the nearest whole number, for a rectangle under a flat ceiling.

    Remedy: As for the proportions; knowing the shared frequency helps to place subwoofers.

    When to waive: The room is as it is; the placement was computed.
    """
    if not room.figures.bass.is_box:
        return does_not_apply(NOT_A_BOX)
    return room.figures.bass.nearest_whole_ratio()


@rule(
    "bass.axial-crowding",
    level=Level.NOTE,
    basis=HANDBOOK,
    each=_shell,
    reads=("room.size", "room.ceiling.height"),
    since="0.1.0",
    window=Window(5.0, None, "Hz"),
    at="size",
)
def axial_crowding(room: Room, shell: Shell) -> Figure | Says:
    """No two axial modes lie within 5 Hz of each other.

    Why: Two modes at nearly one frequency ring together and colour it.

    How decided: Axial modes below 200 Hz of a rectangular room with a flat ceiling. Few real rooms meet it, the
    handbook's own good example does not: hence a note.

    Remedy: Know the frequency; place the seats away from its maxima.

    When to waive: Always acceptable where the seat spread is good.
    """
    if not room.figures.bass.is_box:
        return does_not_apply(NOT_A_BOX)
    return room.figures.bass.closest_axial() or passes("fewer than two axial modes below 200 Hz.")


@rule(
    "bass.axial-gap",
    level=Level.NOTE,
    basis=HANDBOOK,
    each=_shell,
    reads=("room.size", "room.ceiling.height"),
    since="0.1.0",
    window=Window(None, 20.0, "Hz"),
    at="size",
)
def axial_gap(room: Room, shell: Shell) -> Figure | Says:
    """No axial mode stands alone by more than 20 Hz.

    Why: A lone mode is heard as one note that booms between others that do not.

    How decided: Steps between axial modes below 200 Hz of a rectangular room with a flat ceiling.

    Remedy: Know the frequency; treat or equalise it.

    When to waive: Always acceptable where the seat spread is good.
    """
    if not room.figures.bass.is_box:
        return does_not_apply(NOT_A_BOX)
    return room.figures.bass.widest_axial() or passes("fewer than two axial modes below 200 Hz.")


@rule(
    "bass.mode-count",
    level=Level.NOTE,
    basis=standard("J. Audio Eng. Soc. 29 (1981)", "a criterion for the count of modes by third octaves", read=False),
    each=_shell,
    reads=("room.size", "room.ceiling.height"),
    since="0.1.0",
    at="size",
)
def mode_count(room: Room, shell: Shell) -> Says:
    """The number of modes grows from each third-octave band to the next.

    Why: A band with fewer modes than the one below it is a dip that the ear notices.

    How decided: Modes of a rectangular room with a flat ceiling in third octaves from 20 to 200 Hz; the count must not
    fall, and modes may coincide only where a band holds five or more.

    Remedy: Know the band; place subwoofers and seats by computation.

    When to waive: Always acceptable where the seat spread is good.
    """
    if not room.figures.bass.is_box:
        return does_not_apply(NOT_A_BOX)
    falling, crowded = room.figures.bass.uneven_bands()
    told = [f"the count of modes falls at {', '.join(f'{hz:.0f}' for hz in falling)} Hz"] if falling else []
    told += [f"modes coincide at {', '.join(f'{hz:.0f}' for hz in crowded)} Hz"] if crowded else []
    return fails("; ".join(told) + ".") if told else passes("the count of modes never falls.")


@rule(
    "bass.room-volume",
    level=Level.NOTE,
    basis=practice("the formulas of this chapter are for rooms of 20 to 300 m3"),
    each=_shell,
    reads=("room",),
    since="0.1.0",
    window=Window(20.0, 300.0, "m3"),
)
def room_volume(room: Room, shell: Shell) -> Figure:
    """The room is of a size that the formulas are for.

    Why: In a very small room modes rule the whole voice range; in a very large one cinema documents apply.

    How decided: Volume under the real ceiling.

    Remedy: None for the room; read this chapter's other findings with care.

    When to waive: The room is as it is.
    """
    return room.figures.bass.volume()
