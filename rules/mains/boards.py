"""Panels: the room to work before them, where they may be, and what keeps surges from the house."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from roomlint.review import (
    Level,
    No,
    Seen,
    Subjects,
    at_least,
    at_most,
    fails,
    found,
    memory,
    need,
    passes,
    practice,
    rule,
    standard,
)

from . import CAUTION, under_nfpa

if TYPE_CHECKING:
    from collections.abc import Iterator

    from roomlint.design.listening import Loudspeaker, Projector, Seat, Subwoofer
    from roomlint.design.shell import Obstacle
    from roomlint.design.structure import Panel
    from roomlint.design.supply import Rack
    from roomlint.review import Applies, Figure, Found, Room, Says

    Body = Loudspeaker | Subwoofer | Seat | Rack | Projector

SPACE: Final = standard(
    "NFPA 70", "110.26(A) and (B), Table 110.26(A)(1)", edition="2023", read=False, note="read in a transcription"
)
PLACE: Final = standard(
    "NFPA 70", "240.24(D) to (F)", edition="2020 and 2023", read=False,
    note="read in transcriptions; the letter of stairs from memory",
)  # fmt: skip
NEVER: Final = {"clothes-closet": "a clothes closet", "bathroom": "a bathroom", "stairs": "above stairs"}
PANELS: Final[Subjects[Panel]] = Subjects("panel", lambda room: room.design.panels, ("panels",))
SPACED: Final = ("clear_depth_m", "clear_width_m", "clear_height_m")


def here(_: Room, panel: Panel) -> Applies:
    """Whether the panel is in this room."""
    if panel.wall is not None or need(panel.where, panel, "place") == "this-room":
        return True
    return No("the panel is in another room")


def measured(room: Room, panel: Panel) -> Applies:
    """Whether the panel is in this room, or the space before it is measured wherever it is."""
    if panel.wall is None and any(getattr(panel, name) is not None for name in SPACED):
        return True
    return here(room, panel)


def _before_panels(room: Room) -> Iterator[Seen[Body | Obstacle, Panel]]:
    for thing in (*room.figures.bodies.things, *room.design.shell.obstacles):
        for panel in room.design.panels:
            yield Seen(thing, panel, " before ")


BEFORE: Final[Subjects[Seen[Body | Obstacle, Panel]]] = Subjects(
    "panel with a thing", _before_panels,
    ("panels", "room.obstacles", "loudspeakers", "subwoofers", "seats", "electronics.racks", "picture"),
)  # fmt: skip


@rule(
    "mains.panel-space",
    level=Level.ERROR,
    basis=SPACE,
    each=PANELS,
    when=(under_nfpa, measured),
    window=at_least(100.0, "%"),
    says="has {there} of free {side} before it, {figure} of what working at it wants; {window} wanted",
    at="clear_depth",
    caution=CAUTION,
    since="0.3.0",
)
def panel_space(room: Room, panel: Panel) -> Found:
    """There is room to work before a panel.

    Why: Who works on a live panel steps back, and a rack or a riser behind them is what they fall against.

    How decided: The free depth, width and height that the file gives, against 0.9 m (3 ft), 0.762 m (30 in) or the
    panel's own width, and 2.0 m (6-1/2 ft); the tightest of the three counts, of a panel in another room too where any
    of them is given. The clause is of panels of at most 150 V to ground. Other codes have spaces of their own, which
    the electrician knows.

    Remedy: Move the panel or what stands before it; a curtain or a panel on hinges before it does not change it.

    When to waive: Never; the authority decides.
    """
    space = room.figures.boards.working_space(panel)
    return found(space.share, side=space.side, there=space.there)


def at_hand(room: Room, both: Seen[Body | Obstacle, Panel]) -> Applies:
    """Whether the panel is on a wall of this room."""
    answer = under_nfpa(room, both)
    return here(room, both.seat) if answer is True else answer


@rule(
    "mains.panel-clear",
    level=Level.ERROR,
    basis=SPACE,
    each=BEFORE,
    when=at_hand,
    window=at_least(0.0, "m"),
    says={
        "fail": "stands {figure} from the working space of a panel; {window} wanted",
        "negative": "stands {size} inside the working space before a panel",
    },
    cure=("position", "ear"),
    at="position",
    caution=CAUTION,
    since="0.3.0",
)
def panel_clear(room: Room, both: Seen[Body | Obstacle, Panel]) -> Figure:
    """Nothing stands in the working space before a panel.

    Why: In a fire or with somebody on a live part nobody first moves a sofa.

    How decided: The room before the panel, as wide as it is, 0.9 m deep and 2.0 m high, against each thing and each
    obstacle as a solid. The rest of its 0.762 m of width may lie to either side and is judged by `mains.panel-space`.

    Remedy: Move the thing, or have the panel moved.

    When to waive: Never; the authority decides.
    """
    return room.figures.boards.before_panel(both.source, both.seat)


@rule(
    "mains.panel-place",
    level=Level.ERROR,
    basis=(
        PLACE,
        SPACE,
        memory("no switchgear in a bathroom's zones, BS 7671 alike", document="IEC 60364-7-701", clause="701.512.3"),
        memory(
            "no switchboard in the zones of a bathroom, nor where it is not at hand",
            document="AS/NZS 3000",
            clause="2.10",
        ),
    ),
    each=PANELS,
    says={
        "place": "is in {place}, where no panel belongs",
        "storage": "has things kept in the space before it, which is no storage",
        "fits": "is where a panel may be, and nothing is kept before it",
    },
    at="place",
    caution=CAUTION,
    since="0.3.0",
)
def panel_place(room: Room, panel: Panel) -> Says:
    """A panel is in no clothes closet, no bathroom and not above stairs, and nothing is kept before it.

    Why: Clothes burn, wet hands conduct, and who trips a breaker on a stair falls down it.

    How decided: The place that the file names, and whether anything is stored before it. On a wall of this room it is
    in this room. Outside North America a bathroom is a warning, from memory: there it is the zones that count, which
    the electrician knows; closets and stairs are of NFPA 70 only.

    Remedy: Another place for the panel, and another for the boxes.

    When to waive: Never; the authority decides.
    """
    place = "this-room" if panel.wall is not None else need(panel.where, panel, "place")
    american = room.figures.mains.family == "nfpa"
    if place in (NEVER if american else {"bathroom"}):
        return fails("place", level=None if american else Level.WARNING, place=NEVER[place])
    return fails("storage") if need(panel.storage, panel, "storage") else passes("fits")


@rule(
    "mains.panel-reach",
    level=Level.WARNING,
    basis=standard("NFPA 70", "240.24(A)", edition="2023", read=False, note="6 ft 7 in; read in a transcription"),
    each=PANELS,
    when=under_nfpa,
    window=at_most(2.0, "m"),
    says="has its highest handle {figure} above the floor; {window} wanted",
    cure=("handle_height",),
    at="handle_height",
    caution=CAUTION,
    since="0.3.0",
)
def panel_reach(room: Room, panel: Panel) -> Figure:
    """The highest handle of a panel is within reach.

    Why: A breaker that nobody reaches is not switched off.

    How decided: Height of the middle of the highest handle in its highest position, 2.0 m (6 ft 7 in) at most.

    Remedy: A lower panel, before the wall is closed.

    When to waive: The authority accepts it, in writing.
    """
    return room.figures.boards.handle(panel)


def _surge_wanted(room: Room, panel: Panel) -> Applies:
    """Whether the code in force asks for surge protection at a panel."""
    if room.figures.mains.family in {"asnzs", "other"}:
        return No("the code in force is not known here to ask for it")
    if room.figures.mains.edition == "nec2017":
        return No("the edition of 2017 does not ask for it")
    if panel.kind != "service":
        return No("it is no service panel")
    return True if need(panel.new, panel, "new") else No("it is neither new nor replaced")


@rule(
    "mains.surge",
    level=Level.NOTE,
    basis=(
        standard("NFPA 70", "230.67", edition="2020 and 2023", read=False, note="read in transcriptions"),
        memory("since the amendment of 2022, unless its owner declines it", document="BS 7671", clause="443.4.1"),
        memory("where the consequence of an overvoltage is large", document="IEC 60364-4-44", clause="443.4"),
        practice("electronics without it are the first to go"),
    ),
    each=PANELS,
    when=_surge_wanted,
    says={
        "none": "is new and has no surge protection of type 1 or 2",
        "there": "has surge protection of {type}",
    },
    at="surge",
    caution=CAUTION,
    since="0.3.0",
)
def surge(_: Room, panel: Panel) -> Says:
    """A new or replaced service panel of a dwelling has surge protection of type 1 or 2.

    Why: Long signal leads between two supplies make a media room the first thing that a surge finds.

    How decided: The type that the file names, by NFPA 70 from the edition of 2020 on, by BS 7671 and IEC 60364 too, of
    a service that is new or replaced. By NFPA 70 from 2023 on it is rated for 10 kA at least, which is for the
    electrician; a strip of type 3 is no substitute.

    Remedy: A protective device at the panel, by an electrician.

    When to waive: The panel is neither new nor replaced: say so in the file. Under BS 7671 the owner declines it, in
    writing.
    """
    kind = need(panel.surge, panel, "surge")
    return passes("there", type=kind.replace("-", " ")) if kind in {"type-1", "type-2"} else fails("none")
