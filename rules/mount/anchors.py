"""Fixings in steel studs and board, and what only an engineer decides."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from roomlint.design.base import need
from roomlint.design.shell import Treatment
from roomlint.review import (
    Cases,
    Level,
    No,
    asks,
    at_most,
    fails,
    memory,
    passes,
    practice,
    rule,
    standard,
)

from . import CAREFUL, CAUSES, CAUTION, HELD, UNCOVERED, fixed, in_steel, plain
from .base import bears_on_board

if TYPE_CHECKING:
    from roomlint.measure.holding import Held
    from roomlint.review import Applies, Figure, Room, Says, Windows

HEAVY_KG: Final = 45.0
NOT_SAWN: Final = frozenset({"truss", "engineered", "unknown", *UNCOVERED})
_SEISMIC_REGIONS: Final = frozenset({"us", "ca", "other"})
PANEL_ON_BOARD = at_most(4.5, "kg", error=4.5)
FLUSH_ON_BOARD = at_most(4.5, "kg", error=9.0)


@rule(
    "mount.steel-stud-backing",
    level=Level.ERROR,
    basis=practice("an arm on thin sheet pries its screws out; makers' tables exclude prying"),
    each=HELD,
    when=(fixed, in_steel),
    says={
        "arm": "has its {motion} mount on steel studs without backing and an engineer's document",
        "document": "is fixed to steel studs without an engineer's document",
        "decided": "is fixed to steel studs, decided by {document}",
    },
    after=CAUSES,
    at="mounting.fixing",
    caution=CAUTION + " An engineer is required on steel studs.",
    since="0.1.0",
)
def steel_stud_backing(room: Room, thing: Held) -> Says:
    """An arm on steel studs has backing behind the board and an engineer's document.

    Why: Thin sheet lets go at a fraction of what a wood stud holds, and prying is in no table.

    How decided: Articulated and pole mounts need fixing.backing and the engineer's document; other mounts need the
    document, and lack of it is a warning.

    Remedy: A backing plate or blocking across studs, dimensioned by an engineer.

    When to waive: Never for an arm.
    """
    mounts = room.figures.mounts
    motion, backing, document = mounts.motion(thing), mounts.fixing(thing).backing, mounts.engineer(thing)
    if motion in {"articulated", "pole"} and (backing is None or document is None):
        return fails("arm", motion=motion)
    if document is None:
        return fails("document", level=Level.WARNING)
    return passes("decided", document=document.words)


@rule(
    "mount.steel-stud-pull-out",
    level=Level.WARNING,
    basis=memory("0.85 t d Fu over 3; a quarter of a toggle's published ultimate", document="AISI S100", clause="J4"),
    each=HELD,
    when=(fixed, in_steel),
    window=at_most(1.0, ""),
    says={"fail": "its most loaded fastener is pulled by {figure} times what the steel stud holds; {window} wanted",
          "bolt": "what its bolts may bear in the steel stud is in no table here; an engineer decides"},
    after=CAUSES,
    cure=("mounting.fixing.row_spacing",),
    at="mounting.fixing",
    caution=CAUTION + " An engineer is required on steel studs.",
    since="0.1.0",
)  # fmt: skip
def steel_stud_pull_out(room: Room, thing: Held) -> Figure | Says:
    """Pull on a fastener in a steel stud stays within what the sheet allows.

    Why: The screw strips the sheet long before it breaks.

    How decided: Pull on the most loaded screw over a third of the nominal pull-out from the sheet; of a toggle over a
    quarter of the ultimate load that its maker publishes. Prying and board between are not in it. Bolts go to an
    engineer.

    Remedy: Thicker studs, more fasteners, backing across studs.

    When to waive: When an engineer's calculation covers the backing.
    """
    mounts = room.figures.mounts
    return asks("bolt") if mounts.fastener(thing) == "through-bolt" else room.figures.anchors.steel_use(thing)


def on_board(room: Room, thing: Held) -> Applies:
    """Whether the board is meant to hold it."""
    return True if bears_on_board(room, thing) else No("framing or structure is meant to hold it")


def board_window(_room: Room, thing: Held) -> Windows:
    """Return what board may carry: a panel's mass, or a flush loudspeaker's."""
    return PANEL_ON_BOARD if isinstance(thing, Treatment) else FLUSH_ON_BOARD


@rule(
    "mount.board-load",
    level=Level.WARNING,
    basis=(practice("5 lb an anchor and 10 lb an item on board alone"), CAREFUL),
    each=HELD,
    when=(fixed, on_board),
    window=Cases("kg", (("panels on a wall", PANEL_ON_BOARD), ("flush loudspeakers", FLUSH_ON_BOARD)), board_window),
    says="hangs {figure} on board alone; {window} wanted",
    after=CAUSES,
    at="mounting.fixing",
    caution=CAUTION + " Board has no equipment capacity; no published value was found for it.",
    since="0.2.0",
)
def board_load(room: Room, thing: Held) -> Figure:
    """What hangs on board alone weighs little.

    Why: Board crushes under clamps and anchors, and it sags with the years.

    How decided: A flat panel on a wall, and a flush loudspeaker on its clamps, weigh at most 4.5 kg (10 lb); a
    heavier panel, and a loudspeaker above 9 kg, is an error. The limits are ours; no standard gives any.

    Remedy: A frame between studs or joists, or fasteners in framing.

    When to waive: When the maker of board or loudspeaker documents the load.
    """
    return room.figures.mounts.hung_mass(thing)


def anchored_panel(room: Room, thing: Held) -> Applies:
    """Whether it is a panel on anchors in board."""
    mounts = room.figures.mounts
    if not isinstance(thing, Treatment):
        return No("only panels hang on anchors in board")
    if mounts.fastener(thing) == "adhesive":
        return No("it is stuck on")
    return on_board(room, thing)


@rule(
    "mount.board-anchor",
    level=Level.WARNING,
    basis=(practice("5 lb an anchor on board alone"), CAREFUL),
    each=HELD,
    when=(fixed, anchored_panel),
    window=at_most(2.3, "kg"),
    says="hangs {figure} on each anchor in board; {window} wanted",
    after=CAUSES,
    at="mounting.fixing.count",
    caution=CAUTION + " Board has no equipment capacity; no published value was found for it.",
    since="0.2.0",
)
def board_anchor(room: Room, thing: Held) -> Figure:
    """Each anchor of a panel in board carries little.

    Why: One anchor after the other lets go when the first does.

    How decided: Mass over the number of anchors, at most 2.3 kg (5 lb), a choice of this rule book.

    Remedy: More anchors, or screws in studs.

    When to waive: When the anchor's own document gives a load for this board.
    """
    return room.figures.mounts.mass_each(thing)


@rule(
    "mount.engineer",
    level=Level.WARNING,
    basis=practice("what plain tables do not cover goes to an engineer; above 45 kg by choice of this rule book"),
    each=HELD,
    when=fixed,
    says={
        "needed": "needs an engineer's document: {reasons}",
        "decided": "decided by {document}",
        "plain": "plain framing and mass",
    },
    after=("mount.wall-kind",),
    at="mounting.fixing",
    caution=CAUTION,
    since="0.1.0",
)
def engineer(room: Room, thing: Held) -> Says:
    """What plain tables do not cover has an engineer's document.

    Why: Trusses, engineered members, furring, plaster on lath and unknown walls fail in ways that no table here knows.

    How decided: Framing or a base of those kinds, plaster on lath, or a mass that can be more than 45 kg within its
    uncertainty (a choice of this rule book) need the engineer's document.

    Remedy: Ask the truss or member's designer or a licensed engineer, and name the document.

    When to waive: When the official accepted the fixing on site.
    """
    mounts = room.figures.mounts
    document = mounts.engineer(thing)
    if document is not None:
        return passes("decided", document=document.words)
    surface, into = mounts.surface(thing), mounts.into(thing)
    kind = need(surface.framing.kind, surface, "framing.kind")
    reasons = [f"{plain(one)}" for one in dict.fromkeys((kind, into)) if one in NOT_SAWN]
    reasons += ["plaster on lath"] if surface.board.material == "plaster-on-lath" else []
    reasons += ["more than 45 kg on one mount"] if mounts.edge_case_mass(thing) > HEAVY_KG else []
    return fails("needed", reasons=tuple(reasons)) if reasons else passes("plain")


def seismic_region(room: Room, _: Held) -> Applies:
    """Whether seismic design categories are used where the room is."""
    project = room.design.project
    if project.region is None or project.region in _SEISMIC_REGIONS or project.seismic_category is not None:
        return True
    return No("the region's own seismic code holds, by other categories")


@rule(
    "mount.seismic",
    level=Level.WARNING,
    basis=standard("FEMA E-74", "televisions and monitors", edition="2012", read=True),
    each=HELD,
    when=(fixed, seismic_region),
    says={
        "needed": "needs designed seismic anchorage; name the engineer's document",
        "decided": "anchorage by {document}",
        "light": "below the mass or category that asks for designed anchorage; attach it positively all the same",
    },
    at="mounting",
    caution=CAUTION + " The official decides what a house is exempt from.",
    since="0.1.0",
)
def seismic(room: Room, thing: Held) -> Says:
    """In seismic categories D to F heavy equipment up high has designed anchorage.

    Why: What only hangs comes down in an earthquake.

    How decided: A mass that can be above 20 lb (9.1 kg) within its uncertainty, in categories D (D0 to D2 with it), E
    and F, needs the engineer's document. Height is taken as above 4 ft for all that hangs.

    Remedy: Let an engineer design the anchorage and name the document.

    When to waive: When the local official exempts the house.
    """
    mounts = room.figures.mounts
    if not room.figures.hanging.needs_seismic_anchorage(thing):
        return passes("light")
    document = mounts.engineer(thing)
    return passes("decided", document=document.words) if document is not None else fails("needed")
