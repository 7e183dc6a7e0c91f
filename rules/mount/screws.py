"""Screws of mounts in wood: what they hold through plate and board."""

from __future__ import annotations

from typing import TYPE_CHECKING

from roomlint.review import Cases, Figure, Level, No, asks, at_least, at_most, found, practice, rule, standard

from . import (
    CAUSES,
    CAUTION,
    EN_WITHDRAWAL,
    HELD,
    NDS,
    REMEDIES,
    SEATED,
    WITHDRAWAL,
    en1995,
    fixed,
    in_wood,
    on_wall,
    plain,
    screwed,
)

if TYPE_CHECKING:
    from collections.abc import Callable

    from roomlint.measure.holding import Held
    from roomlint.review import Answer, Applies, Room, Says, Windows

TR12 = standard("AWC Technical Report 12", "general dowel equations", read=False)
COMBINED = standard(NDS, "12.4.1", edition="2015", read=False)
EN_SHEAR = en1995("8.2.3, 8.5.1 and 8.7.3", "read in a course page; embedment and the sum of squares from memory")
ASKED = {
    "report": "what its {fastener} may bear is in no table here; its evaluation report or an engineer decides",
    "decided": "{document} decides: see that it covers {mass} at this reach in this wall",
}
"""What is said where nothing is computed."""
LAG_DEPTH = at_least(4.0, "", note=8.0)
SCREW_DEPTH = at_least(6.0, "", note=10.0)
EN_DEPTH = at_least(6.0, "")


def _use(room: Room, thing: Held, compute: Callable[[Held], Figure], *, shear: bool = True) -> Figure | Says:
    """Return the use of what its fasteners hold, or leave it to a person where nothing here computes it."""
    mounts = room.figures.mounts
    fastener = mounts.fastener(thing)
    by_table = mounts.sheared_by_table(thing) if shear else mounts.is_screw(thing)
    if by_table or mounts.report(thing) is not None:
        return compute(thing)
    engineer = mounts.engineer(thing)
    if engineer is not None:
        return asks("decided", document=engineer.words, mass=mounts.hung_mass(thing))
    return asks("report", fastener=plain(fastener))


def pulled_out(room: Room, thing: Held) -> Applies:
    """Whether its fastener can be pulled out of the wood."""
    bolted = room.figures.mounts.fastener(thing) == "through-bolt"
    return No("a bolt through the member is not pulled out of it") if bolted else True


@rule(
    "mount.thread-in-wood",
    level=Level.ERROR,
    basis=(WITHDRAWAL, practice("a millimetre of thread is none, a choice of this rule book")),
    each=HELD,
    when=(fixed, in_wood, screwed),
    window=at_least(1.0, "mm"),
    says="its screws have {figure} of thread in the wood and hold nothing; {window} wanted",
    after=CAUSES,
    cure=("mounting.fixing.length", "mounting.fixing.thread", "mounting.fixing.edge_offset"),
    at="mounting.fixing.length",
    caution=CAUTION + " Thread counts only in the wood, its tip excluded.",
    since="0.2.0",
)
def thread_in_wood(room: Room, thing: Held) -> Figure:
    """Thread lies in the wood behind plate and board.

    Why: A screw whose thread ends in the board, or starts behind the stud, holds nothing.

    How decided: Thread between where the screw enters the wood and its far side, the tip left out; none where
    the screw is as far off the middle of its stud or joist as the edge, or farther. What else would be computed of the
    screw waits for it.

    Remedy: A screw whose thread lies in the wood.

    When to waive: Never; another screw costs less than the fall.
    """
    return room.figures.mounts.thread_in_wood(thing)


@rule(
    "mount.fastener-withdrawal",
    level=Level.ERROR,
    basis=(WITHDRAWAL, EN_WITHDRAWAL),
    each=HELD,
    when=(fixed, in_wood, pulled_out),
    window=at_most(1.0, "", note=0.7),
    says={"fail": "its most loaded fastener is pulled by {pull}, {figure} times what it may bear", **ASKED},
    after=SEATED,
    cure=REMEDIES,
    at="mounting.fixing",
    caution=CAUTION + " Thread counts only in the wood, its tip excluded; the species comes from a grade stamp.",
    since="0.1.0",
)
def fastener_withdrawal(room: Room, thing: Held) -> Answer:
    """Pull on the most loaded screw stays within its allowable withdrawal from the wood.

    Why: At full reach a display's weight pulls the top screws several times harder than flat to the wall.

    How decided: Pull from mass, the largest reach, row spacing and number of top screws; on a ceiling from its slope,
    from what hangs beside the plate and from a push on a pole. Allowable value of lag or wood screws for thread inside
    the wood, permanent load, with factors for wet, hot and end-grain wood; of other screws from their evaluation
    report. More than 0.7 of it is a note.

    Wood with a strength class to EN 338 or EN 14080, and in Europe wood of which nobody says the grade, is judged by
    EN 1995-1-1 instead: 1.35 times the pull over the design withdrawal of screws of 6 to 12 mm, gamma_M 1.3, kmod of a
    permanent load, and the group's n^0.9. National annexes differ. Hardwood counts as C50 at most.

    Remedy: Longer or thicker screws, more of them in framing, a taller plate, a shorter arm.

    When to waive: When an engineer's calculation for this very wall says otherwise.
    """
    mounts = room.figures.mounts
    answer = _use(room, thing, mounts.withdrawal_use, shear=False)
    return found(answer, pull=mounts.pull(thing)) if isinstance(answer, Figure) else answer


@rule(
    "mount.fastener-combined",
    level=Level.ERROR,
    basis=(COMBINED, TR12, EN_WITHDRAWAL, EN_SHEAR),
    each=HELD,
    when=(fixed, in_wood),
    window=at_most(1.0, "", note=0.7),
    says={
        "fail": "pull and shear on its most loaded fastener are {figure} times what it may bear; {window} wanted",
        "beside": "with shear {figure} times",
        **ASKED,
    },
    after=SEATED,
    beside=("mount.fastener-withdrawal",),
    cure=REMEDIES,
    at="mounting.fixing",
    caution=CAUTION + " Tabulated shear values do not hold through board.",
    since="0.1.0",
)
def fastener_combined(room: Room, thing: Held) -> Figure | Says:
    """Pull and shear together stay within what a fastener holds through the board.

    Why: Board between plate and stud bends the screw: one layer leaves less than half of the tabulated shear value.

    How decided: Resultant over allowable resultant by the Hankinson form, shear by the dowel equations with the board
    as a gap and at its angle to the grain, and never less than pull or shear alone uses, which is ours; permanent load;
    on a sloping ceiling the weight shears too. By an evaluation report pull and shear are added in a straight line.
    Wood screws and bolts have no value here: their report, or an engineer, decides.

    By EN 1995-1-1 wood screws have one too: the root of the squares of pull and shear over their design values, shear
    by the forms for a thin plate, whatever the plate, without the rope effect, and with board no more than the dowel
    equations with a gap give.

    Remedy: Cut the board out behind the plate, use thicker or more lags, a taller plate, less reach.

    When to waive: When an engineer's calculation for this very wall says otherwise.
    """
    return _use(room, thing, room.figures.mounts.combined_use)


@rule(
    "mount.misuse-load",
    level=Level.WARNING,
    basis=(
        standard("IEC 62368-1", "8.7.2", read=False, note="3 times the weight second-hand, weight + 880 N from memory"),
        practice("the test's load put to wall and ceiling too, by the Eurocode as a long-term load, our choices"),
    ),
    each=HELD,
    when=(fixed, in_wood),
    window=at_most(1.0, "", error=1.6),
    says={
        "fail": "somebody hanging on it loads a fastener to {figure} times what it may bear; {window} wanted",
        "beside": "{figure} times with somebody hanging on it",
        **ASKED,
    },
    after=SEATED,
    beside=("mount.fastener-combined", "mount.fastener-withdrawal"),
    cure=REMEDIES,
    at="mounting.fixing",
    caution=CAUTION + " People lean on displays and children hang on them.",
    since="0.1.0",
)
def misuse_load(room: Room, thing: Held) -> Figure | Says:
    """The fasteners hold when somebody hangs on the device at the mount's largest reach.

    Why: A bracket is tested with up to three times the weight on top of its own; the wall behind it is not.

    How decided: Weight plus the lesser of three weights and weight + 880 N, pull and shear together, on walls and
    ceilings, always at the largest reach: a parked arm is pulled out sooner or later. Against the ten-year value a
    warning, 1.6 times it, the short-load value, an error. That wall and ceiling must bear the test's load is a choice
    of this rule book. By EN 1995-1-1 the whole counts 1.5 times, against the design value of a long-term load.

    Remedy: More or thicker lags, a taller plate, a shorter arm, a plate straight on the wood.

    When to waive: When the device is out of reach, or an engineer decided.
    """
    return _use(room, thing, room.figures.mounts.misuse_use)


def swings(room: Room, thing: Held) -> Applies:
    """Whether its mount can be swung aside."""
    mounts = room.figures.mounts
    without = mounts.built_without(thing)
    if without and not mounts.has_own_mount(thing):
        return No(without)
    return True if mounts.swings(thing) else No(f"its mount is {mounts.motion(thing)} and does not swing")


@rule(
    "mount.sideways-swing",
    level=Level.WARNING,
    basis=(practice("statics of an arm swung aside"), COMBINED, TR12, EN_WITHDRAWAL, EN_SHEAR),
    each=HELD,
    when=(fixed, on_wall, in_wood, swings),
    window=at_most(1.0, ""),
    says={
        "fail": "swung aside it loads a fastener to {figure} times what it may bear; {window} wanted",
        "beside": "{figure} times swung aside",
        **ASKED,
    },
    after=SEATED,
    beside=("mount.fastener-combined", "mount.fastener-withdrawal", "mount.misuse-load"),
    cure=REMEDIES,
    at="mounting.fixing",
    caution=CAUTION,
    since="0.1.0",
)
def sideways_swing(room: Room, thing: Held) -> Figure | Says:
    """The fasteners hold a mount that is swung fully aside.

    Why: A sideways arm twists the plate about its fasteners, and that shear can exceed the pull of the straight arm.

    How decided: Where the fasteners stand in one column, shear W s / h across the grain of the stud; where two columns
    are stated, the twist shared by the corners. Added to the vertical shear and combined with the pull at the largest
    reach, permanent load, the shear value at the angle that the load has to the grain. Unless column_spacing says
    otherwise all stand in one column.

    Remedy: Fasteners in two studs, blocking between studs, or a shorter arm.

    When to waive: When a stop keeps the arm from swinging that far.
    """
    return _use(room, thing, room.figures.mounts.swing_use)


def depth_window(room: Room, thing: Held) -> Windows:
    """Return the depth that the screw's kind needs by the standard of its wood."""
    mounts = room.figures.mounts
    if mounts.by_eurocode(thing):
        return EN_DEPTH
    return SCREW_DEPTH if mounts.fastener(thing) == "wood-screw" else LAG_DEPTH


@rule(
    "mount.screw-depth",
    level=Level.ERROR,
    basis=(
        standard(
            NDS, "12.1.4.6 and 12.1.5.6", edition="2015", read=False, note="the number for wood screws from memory"
        ),
        en1995("8.7.2(3)", "read in a worked example"),
    ),
    each=HELD,
    when=(fixed, in_wood, screwed),
    window=Cases(
        "",
        (("lag screws", LAG_DEPTH), ("wood screws", SCREW_DEPTH), ("thread of any screw by EN 1995-1-1", EN_DEPTH)),
        depth_window,
    ),
    says="its screws go {figure} diameters into the wood; {window} wanted",
    after=(*CAUSES, "mount.thread-in-wood"),
    cure=("mounting.fixing.length",),
    at="mounting.fixing.length",
    caution=CAUTION + " A short screw is the commonest fault.",
    since="0.1.0",
)
def screw_depth(room: Room, thing: Held) -> Figure:
    """Screws go deep enough into the wood behind plate and board.

    Why: Below the least depth the standard gives no value at all.

    How decided: Depth inside the wood, beyond plate and board and not past the far side, in diameters: lag screws at
    least 4 without the tip, wood screws at least 6 with it. Less than the depth for the full shear value, 8 and 10
    diameters, is a note. In wood that EN 1995-1-1 judges 6 diameters of thread without the tip.

    Remedy: A longer screw, or thicker wood.

    When to waive: Never below the least depth.
    """
    return room.figures.mounts.depth_in_wood(thing)
