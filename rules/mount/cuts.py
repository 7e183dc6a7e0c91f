"""Studs and joists that are bored, notched or cut through for cable and in-wall cabinets."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from roomlint.design.proofs import stated
from roomlint.design.surfaces import BAYS, LAID, MAKERS, SAWN
from roomlint.review import (
    Cases,
    Level,
    No,
    Subjects,
    asks,
    at_least,
    at_most,
    fails,
    memory,
    need,
    passes,
    practice,
    rule,
    standard,
)

from . import CAUTION, plain

if TYPE_CHECKING:
    from roomlint.design.structure import Cut
    from roomlint.review import Applies, Figure, Room, Says, Windows

STUDS: Final = standard("IRC", "R602.6", edition="2012", read=False, note="in a state's copy, and quoted in two guides")
JOISTS: Final = standard("IRC", "R502.8.1", edition="2012", read=True, note="in a state's copy")
MADE: Final = standard("IRC", "R502.8.2", edition="2012", read=True, note="in a state's copy; steel studs by practice")
STRUCTURAL: Final = (
    CAUTION + " Cut framing is structural: the building official or an engineer says what may be cut, before it is."
)
CUTS: Final[Subjects[Cut]] = Subjects("hole or notch", lambda room: room.design.shell.cuts, ("room.cuts",))
UNPLACED: Final = ("mount.cut-engineer",)


def sawn(room: Room, cut: Cut) -> Applies:
    """Whether it is in sawn wood, of which the code says what may be cut."""
    if cut.is_chase:
        return No("it is a chase", unless=UNPLACED)
    kind = room.figures.framing.kind(cut.on or "")
    if kind in MAKERS or kind == "unknown":
        return No("no table holds for such framing", unless=UNPLACED)
    return True if kind in SAWN else No(f"{plain(kind)} has no studs or joists of wood")


def chased(room: Room, cut: Cut) -> Applies:
    """Whether it is a chase in masonry."""
    if not cut.is_chase:
        return No("it is no chase", unless=UNPLACED)
    kind = room.figures.framing.kind(cut.on or "")
    return True if kind in LAID else No("no rule of chases holds for such a wall", unless=UNPLACED)


def not_through(_: Room, cut: Cut) -> Applies:
    """Whether some of the member is left."""
    return No("it is cut through", unless=UNPLACED) if cut.kind == "cut-through" else True


def is_hole(_: Room, cut: Cut) -> Applies:
    """Whether it is a hole."""
    return True if cut.kind == "hole" else No("it is no hole")


def in_joist(room: Room, cut: Cut) -> Applies:
    """Whether it is in a joist or rafter."""
    return True if room.figures.framing.member(cut) == "joist" else No("it is in a stud")


def is_notch(_: Room, cut: Cut) -> Applies:
    """Whether it is a notch away from the member's end."""
    return True if cut.kind == "notch" else No("it is no notch along the member")


def has_neighbour(_: Room, cut: Cut) -> Applies:
    """Whether its member is cut again."""
    return No("it is the only cut of its member") if cut.alone else True


def share_window(room: Room, cut: Cut) -> Windows:
    """Return how much of its member a cut may take."""
    return at_most(room.figures.framing.share_limit_percent(cut), "%")


@rule(
    "mount.cut-engineer",
    level=Level.ERROR,
    basis=(MADE, practice("who cuts a member through has a header drawn first")),
    each=CUTS,
    says={
        "made": "cuts {kind}; no table allows that, and no maker's or engineer's document is named",
        "through": "cuts a member through, and no engineer's document is named",
        "unknown": "cuts framing that nobody has looked at",
        "allowed": "is allowed by {document}",
        "plain": "is judged by the tables of sawn wood",
        "chase": "is called a chase, and {kind} has none; say whether it is a hole or a notch",
        "judged": "is judged by its depth in the leaf",
        "other": "cuts {kind}, of which no table here says what may be cut",
    },
    at="kind",
    caution=STRUCTURAL,
    since="0.3.0",
)
def cut_engineer(room: Room, cut: Cut) -> Says:
    """Trusses, engineered members and steel studs are cut, and any member is cut through, only by a document.

    Why: A truss with one web cut, or a stud that ends in the air above a cabinet, lets what it carries come down.

    How decided: The framing of the surface. Trusses, I-joists and other engineered wood, and steel studs beyond their
    punched holes, ask for a document of their maker or an engineer; so does any member that is cut through. Where
    nobody knows what the framing is, or what is cut is masonry, concrete or furring, a person looks first: a lintel, a
    slab under tension and a bearing wall are cut by calculation. A chase in masonry is judged by `mount.chase-depth`.

    Remedy: A place between the members, a surface cabinet, or a header that an engineer draws.

    When to waive: Never; name the document instead.
    """
    kind, document = room.figures.framing.kind(cut.on or ""), stated(cut.engineer)
    if cut.is_chase and (kind in BAYS or kind in LAID):
        return passes("judged") if kind in LAID else fails("chase", kind=plain(kind))
    if document is not None and kind != "unknown":
        return passes("allowed", document=document.words)
    if kind not in BAYS:
        return asks("other", kind=plain(kind)) if kind != "unknown" else _unseen(cut)
    if cut.kind != "cut-through" and kind not in MAKERS:
        return passes("plain")
    need(cut.engineer, cut, "engineer")
    return fails("through") if cut.kind == "cut-through" else fails("made", kind=plain(kind))


def _unseen(cut: Cut) -> Says:
    """Return what is said of framing that nobody has looked at: cut through it wants a document, whatever it is."""
    if cut.kind == "cut-through":
        need(cut.engineer, cut, "engineer")
        return fails("through")
    return asks("unknown")


@rule(
    "mount.cut-share",
    level=Level.WARNING,
    basis=(STUDS, JOISTS),
    each=CUTS,
    when=(sawn, not_through),
    window=Cases(
        "%",
        (
            ("a notch in a bearing stud", at_most(25.0, "%")),
            ("a notch in a stud that does not bear", at_most(40.0, "%")),
            ("a hole in a bearing stud", at_most(40.0, "%")),
            ("a hole in a stud that does not bear, or is doubled", at_most(60.0, "%")),
            ("a hole in a joist, rafter or beam, a third", at_most(100.0 / 3.0, "%")),
            ("a notch in it, a sixth", at_most(100.0 / 6.0, "%")),
            ("a notch at its end", at_most(25.0, "%")),
        ),
        share_window,
    ),
    says="takes {figure} of its member's depth; {window} wanted",
    after=UNPLACED,
    cure=("size",),
    at="size",
    caution=STRUCTURAL,
    since="0.3.0",
)
def cut_share(room: Room, cut: Cut) -> Figure:
    """A hole or a notch leaves enough of its stud or joist.

    Why: What is left carries all that the whole did; a bay of bored studs buckles one after the other.

    How decided: Diameter of the hole, or depth of the notch, by the depth of the member. Whether a stud bears is asked
    for; joists and rafters always do. At most two doubled studs in a row may be bored to 60 %, which is for the
    builder. A stud of 3-1/2 in that bears takes a hole of 1.40 in and a notch of 7/8 in.

    Remedy: A smaller hole, two smaller ones apart, or a doubled stud.

    When to waive: The building official or an engineer accepts it, in writing.
    """
    return room.figures.framing.share(cut)


@rule(
    "mount.cut-edge",
    level=Level.WARNING,
    basis=(STUDS, JOISTS),
    each=CUTS,
    when=(sawn, is_hole),
    window=Cases(
        "mm",
        (("in a stud, 5/8 in", at_least(15.875, "mm")), ("in a joist, rafter or beam, 2 in", at_least(50.8, "mm"))),
        lambda room, cut: at_least(50.8 if room.figures.framing.member(cut) == "joist" else 15.875, "mm"),
    ),
    says="leaves {figure} of wood to the edge of its member; {window} wanted",
    after=UNPLACED,
    cure=("edge_distance",),
    at="edge_distance",
    caution=STRUCTURAL,
    since="0.3.0",
)
def cut_edge(room: Room, cut: Cut) -> Figure:
    """A hole keeps from the edge of its stud or joist.

    Why: The edges of a joist carry the bending; a hole there is a notch.

    How decided: Wood between the edge of the hole and the nearest edge of the member, never more than a hole of that
    size in the middle leaves: 5/8 in in studs, 2 in from top and bottom of joists. How far a cable keeps from the edge
    is `cable.plate`.

    Remedy: The hole in the middle of the member.

    When to waive: The building official or an engineer accepts it, in writing.
    """
    return room.figures.framing.to_edge(cut)


@rule(
    "mount.cut-apart",
    level=Level.WARNING,
    basis=(
        JOISTS,
        practice("as much in studs, where the code keeps holes and notches out of one section"),
    ),
    each=CUTS,
    when=(sawn, not_through, has_neighbour),
    window=at_least(50.8, "mm"),
    says="is {figure} along its member from the next cut; {window} wanted",
    after=UNPLACED,
    cure=("apart",),
    at="apart",
    caution=STRUCTURAL,
    since="0.3.0",
)
def cut_apart(room: Room, cut: Cut) -> Figure:
    """Holes and notches of one member keep from each other.

    Why: Two cuts in one section take what each alone would leave.

    How decided: Wood along the member from edge to edge, 2 in. The word `none` states that a cut is the only one.

    Remedy: The next hole farther along, or one hole for both.

    When to waive: The building official or an engineer accepts it, in writing.
    """
    return room.figures.framing.apart(cut)


@rule(
    "mount.notch-length",
    level=Level.WARNING,
    basis=JOISTS,
    each=CUTS,
    when=(sawn, in_joist, is_notch),
    window=at_most(100.0 / 3.0, "%"),
    says="is as long as {figure} of its joist's depth; {window} wanted",
    after=UNPLACED,
    cure=("length",),
    at="length",
    caution=STRUCTURAL,
    since="0.3.0",
)
def notch_length(room: Room, cut: Cut) -> Figure:
    """A notch in a joist is no longer than a third of its depth.

    Why: A long notch makes a thinner joist of it.

    How decided: Length of the notch along the joist by the joist's depth.

    Remedy: A hole in the middle of the depth instead.

    When to waive: The building official or an engineer accepts it, in writing.
    """
    return room.figures.framing.notch_length(cut)


@rule(
    "mount.notch-middle",
    level=Level.WARNING,
    basis=JOISTS,
    each=CUTS,
    when=(sawn, in_joist, is_notch),
    says={
        "middle": "notches a joist in the middle third of its span, where it bends most",
        "outer": "notches a joist in an outer third of its span",
    },
    after=UNPLACED,
    at="middle_third",
    caution=STRUCTURAL,
    since="0.3.0",
)
def notch_middle(_: Room, cut: Cut) -> Says:
    """No joist is notched in the middle third of its span.

    Why: There it bends most, and its edge is what bears the bending.

    How decided: Where the file says that the notch is.

    Remedy: A hole in the middle of the depth, or a notch in an outer third.

    When to waive: The building official or an engineer accepts it, in writing.
    """
    return fails("middle") if need(cut.middle_third, cut, "middle_third") else passes("outer")


def chase_window(room: Room, cut: Cut) -> Windows:
    """Return how deep a chase may be by the thickness of its leaf."""
    return at_most(room.figures.framing.chase_limit_percent(cut), "%")


@rule(
    "mount.chase-depth",
    level=Level.WARNING,
    basis=(
        standard(
            "Approved Document A",
            "2C (chases), Building Regulations of England",
            edition="2013",
            read=False,
            note="as a builder's guide tells it",
        ),
        memory("by depth in mm for the thickness, about as much", document="EN 1996-1-1", clause="8.6, Table 8.1"),
    ),
    each=CUTS,
    when=chased,
    window=Cases(
        "%",
        (
            ("an upright chase, a third", at_most(100.0 / 3.0, "%")),
            ("a level chase, a sixth", at_most(100.0 / 6.0, "%")),
        ),
        chase_window,
    ),
    says={
        "fail": "takes {figure} of the leaf that it is cut into; {window} wanted",
        "backed": "is cut back to back with a chase in the other face",
    },
    cure=("size",),
    at="size",
    caution=STRUCTURAL + " A hollow block keeps 15 mm between a chase and its void.",
    since="0.3.0",
)
def chase_depth(room: Room, cut: Cut) -> Figure | Says:
    """A chase in masonry is a third of the leaf deep at the most, level ones a sixth, and none is back to back.

    Why: A leaf of 100 mm that is chased 40 mm for a loudspeaker's cable on both faces is a wall of 20 mm there.

    How decided: Depth of the chase over the thickness of the leaf (`framing.member_depth`): of a cavity wall the one
    leaf, never the whole wall. Whether the other face is chased at the same place is asked for. How long a level chase
    may be, and how near to an opening, is for the engineer.

    Remedy: A shallower chase with flat conduit, an upright way instead of a level one, or the cable on the surface.

    When to waive: An engineer allows it, in writing.
    """
    if need(cut.back_to_back, cut, "back_to_back"):
        return fails("backed")
    return room.figures.framing.share(cut)
