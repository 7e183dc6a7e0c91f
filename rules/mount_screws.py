"""Screws of mounts in wood: what they hold through plate and board."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from roomlint.design.proofs import stated
from roomlint.review import (
    Against,
    Level,
    Says,
    Window,
    asks,
    does_not_apply,
    fails,
    memory,
    need,
    passes,
    practice,
    rule,
    standard,
)

if TYPE_CHECKING:
    from collections.abc import Callable

    from roomlint.measure.figure import Figure
    from roomlint.measure.holding import Held
    from roomlint.review import Room

CAUTION = (
    "Screening arithmetic only: the installer verifies the real framing, and the instructions of mount and fastener, "
    "a licensed engineer and the local code official decide."
)
NDS = standard(
    "National Design Specification for Wood Construction", "12.2", edition="2015", read=False, note="table read in scan"
)
NEVER_OVER = Window(None, 1.0, "")
ROOMY = Window(None, 0.7, "")
_FIXING = "loudspeakers[].mounting.fixing"


def _screws_hold(room: Room, device: Held, use: Callable[[Held], Figure], says: str) -> Figure | Against | Says:
    """Judge a use of lag or wood screws, or say why no figure can be given."""
    fixing = room.figures.mounts.fixing(device)
    fastener = need(fixing.fastener, fixing, "fastener")
    if fastener == "structural-screw":
        document = stated(fixing.engineer)
        if document is None:
            return asks("a structural screw is judged by its own evaluation report; name it in fixing.engineer.")
        return passes(f"judged by its own evaluation report: {document.words}.")
    if fastener not in {"lag-screw", "wood-screw"}:
        return does_not_apply(f"{fastener} is not a screw in withdrawal.")
    try:
        nothing = room.figures.mounts.wood(device).holds_nothing
        return fails(nothing) if nothing else Against(use(device), says=says)
    except ValueError as error:
        return asks(f"{error}; an engineer decides.")


@rule(
    "mount.fastener-withdrawal",
    level=Level.ERROR,
    basis=NDS,
    each=lambda room: room.figures.mounts.on_wood,
    reads=(f"{_FIXING}.length", f"{_FIXING}.thread", f"{_FIXING}.diameter", "room.walls[].framing.species"),
    since="0.1.0",
    window=NEVER_OVER,
    target=ROOMY,
    at="mounting.fixing",
    caution=CAUTION + " Thread counts only in the wood, its tip excluded; the species comes from a grade stamp.",
)
def fastener_withdrawal(room: Room, device: Held) -> Figure | Against | Says:
    """Pull on the most loaded screw stays within its allowable withdrawal from the wood.

    Why: At full extension a display's weight pulls the top screws several times harder than flat to the wall.

    How decided: Pull from mass, reach, row spacing and number of top screws; allowable value of lag or wood screws for
    thread in the wood beyond plate and board, permanent load, with factors for wet, hot and end-grain wood. More than
    0.7 of it is a note.

    Remedy: Longer or thicker screws, more of them in framing, a taller plate, a shorter arm.

    When to waive: When an engineer's calculation for this very wall says otherwise.
    """
    mounts = room.figures.mounts
    answer = _screws_hold(room, device, mounts.withdrawal_use, "")
    return replace(answer, says=mounts.withdrawal_remedy(device)) if isinstance(answer, Against) else answer


@rule(
    "mount.fastener-combined",
    level=Level.ERROR,
    basis=(
        standard("National Design Specification for Wood Construction", "12.4.1", edition="2015", read=False),
        standard("AWC Technical Report 12", "general dowel equations", read=False),
    ),
    each=lambda room: room.figures.mounts.on_wood_walls,
    reads=(f"{_FIXING}", "room.walls[].board", "mounting.product"),
    since="0.1.0",
    window=NEVER_OVER,
    target=ROOMY,
    at="mounting.fixing",
    caution=CAUTION + " Tabulated shear values do not hold through board.",
)
def fastener_combined(room: Room, device: Held) -> Figure | Against | Says:
    """Pull and shear together stay within what a lag screw holds through the board.

    Why: Board between plate and stud bends the screw: one layer leaves less than half of the tabulated shear value.

    How decided: Resultant over allowable resultant by the Hankinson form; shear by the dowel equations with the board
    as a gap; permanent load. Wood screws have no shear value here and go to an engineer.

    Remedy: Cut the board out behind the plate, use thicker or more lags, a taller plate, less reach.

    When to waive: When an engineer's calculation for this very wall says otherwise.
    """
    mounts = room.figures.mounts
    if mounts.fixing(device).fastener == "wood-screw":
        return asks("shear of wood screws through board is not computed here; use lag screws or ask an engineer.")
    says = "Use thicker or more lags, a plate straight on the wood, or less reach."
    return _screws_hold(room, device, mounts.combined_use, says)


@rule(
    "mount.misuse-load",
    level=Level.WARNING,
    basis=(
        standard("IEC 62368-1", "8.7.2", read=False, note="3 times the weight second-hand, weight + 880 N from memory"),
        practice("the test's load put to the wall too, a choice of this rule book; the test is of the bracket only"),
    ),
    each=lambda room: room.figures.mounts.on_wood_walls,
    reads=(f"{_FIXING}", "mounting.product"),
    since="0.1.0",
    window=NEVER_OVER,
    limit=Window(None, 1.6, ""),
    at="mounting.fixing",
    caution=CAUTION + " People lean on displays and children hang on them.",
)
def misuse_load(room: Room, device: Held) -> Figure | Against | Says:
    """Lag screws hold when somebody hangs on the device at full extension.

    Why: A bracket is tested with up to three times the weight on top of its own; the wall behind it is not.

    How decided: Weight plus the lesser of three weights and weight + 880 N, pull and shear together, against the
    ten-year value (warning) and 1.6 times it, the short-load value (error). That the wall
    must bear the test's load is a choice of this rule book.

    Remedy: More or thicker lags, a taller plate, a shorter arm, a plate straight on the wood.

    When to waive: When the device is out of reach, or an engineer decided.
    """
    mounts = room.figures.mounts
    if mounts.fixing(device).fastener == "wood-screw":
        return asks("shear of wood screws through board is not computed here; use lag screws or ask an engineer.")
    return _screws_hold(room, device, mounts.misuse_use, "Use thicker or more lags, a taller plate or less reach.")


@rule(
    "mount.sideways-swing",
    level=Level.WARNING,
    basis=practice("statics of an arm swung aside, its screws in a single stud"),
    each=lambda room: tuple(
        device for device in room.figures.mounts.on_wood_walls if room.figures.mounts.motion(device) == "articulated"
    ),
    reads=(f"{_FIXING}", "mounting.product", "room.walls[].framing.spacing"),
    since="0.1.0",
    window=NEVER_OVER,
    at="mounting.fixing",
    caution=CAUTION,
)
def sideways_swing(room: Room, device: Held) -> Figure | Against | Says:
    """Lag screws in a single stud hold an articulated arm swung fully aside.

    Why: On one stud a sideways arm twists the plate, and that shear can exceed the pull of the straight arm.

    How decided: Shear W s / h added to the vertical one, combined with the pull, permanent load. A plate that spans two
    studs is left out.

    Remedy: A plate on two studs, blocking between studs, or a shorter arm.

    When to waive: When a stop keeps the arm from swinging that far.
    """
    mounts = room.figures.mounts
    if not mounts.on_one_stud(device):
        return does_not_apply("the plate spans two studs.")
    if mounts.fixing(device).fastener == "wood-screw":
        return asks("shear of wood screws through board is not computed here; use lag screws or ask an engineer.")
    return _screws_hold(room, device, mounts.swing_use, "Span two studs or use blocking.")


@rule(
    "mount.screw-depth",
    level=Level.ERROR,
    basis=standard(
        "National Design Specification for Wood Construction", "12.1.4.6 and 12.1.5.6", edition="2015", read=False
    ),
    each=lambda room: room.figures.mounts.on_wood,
    reads=(f"{_FIXING}.length", f"{_FIXING}.diameter", "room.walls[].board"),
    since="0.1.0",
    window=Window(4.0, None, ""),
    target=Window(8.0, None, ""),
    at="mounting.fixing.length",
    caution=CAUTION + " A short screw is the commonest fault.",
)
def screw_depth(room: Room, device: Held) -> Figure | Against | Says:
    """Screws go deep enough into the wood behind plate and board.

    Why: Below the least depth the standard gives no value at all.

    How decided: Depth beyond plate and board in diameters: lag screws at least 4 without the tip, 8 for the full shear
    value; wood screws at least 6 and 10 with the tip. Less than the full depth is a note.

    Remedy: A longer screw; check that it does not leave the stud on the far side.

    When to waive: Never below the least depth.
    """
    mounts = room.figures.mounts
    fixing = mounts.fixing(device)
    if need(fixing.fastener, fixing, "fastener") not in {"lag-screw", "wood-screw"}:
        return does_not_apply(f"{fixing.fastener} is not judged by its depth here.")
    try:
        wood = mounts.wood(device)
        depth = wood.depth()
    except ValueError as error:
        return asks(f"{error}; an engineer decides.")
    if wood.is_lag:
        return Against(depth, says="Take a longer screw.")
    return Against(depth, Window(6.0, None, ""), "Take a longer screw.", target=Window(10.0, None, ""))


@rule(
    "mount.stud-edge",
    level=Level.WARNING,
    basis=memory(
        "1.5 diameters to the edge for load along the grain",
        document="National Design Specification for Wood Construction",
        clause="Table 12.5.1C",
        edition="2015",
    ),
    each=lambda room: tuple(
        device for device in room.figures.mounts.on_wood if room.figures.mounts.fixing(device).into == "stud"
    ),
    reads=(f"{_FIXING}.edge_offset", "room.walls[].framing.member_width"),
    since="0.1.0",
    window=Window(0.0, None, "mm"),
    at="mounting.fixing",
    caution=CAUTION + " Find both edges of the stud before drilling.",
)
def stud_edge(room: Room, device: Held) -> Against:
    """Screws keep their edge distance in the stud.

    Why: A screw near the edge splits the stud, and its value is gone.

    How decided: Half the stud's width less 1.5 diameters less the offset from its middle is not negative.

    Remedy: Move the mount so that the screws meet the middle of the studs, or use thinner screws.

    When to waive: When blocking was added beside the stud.
    """
    return Against(room.figures.mounts.edge_left(device), says="Move the screws to the middle of the stud.")


@rule(
    "mount.end-grain",
    level=Level.ERROR,
    basis=standard("National Design Specification for Wood Construction", "12.5.2", edition="2015", read=False),
    each=lambda room: room.figures.mounts.on_wood,
    reads=(f"{_FIXING}.grain", f"{_FIXING}.fastener"),
    since="0.1.0",
    at="mounting.fixing.grain",
    caution=CAUTION,
)
def end_grain(room: Room, device: Held) -> Says:
    """No wood screw or nail is pulled out of end grain.

    Why: Thread in end grain shears the fibres off along their length.

    How decided: Wood screws and nails in end grain fail; a lag screw keeps 0.75 of its value, which the withdrawal
    rule counts; side grain passes.

    Remedy: Turn the joint so that the screw enters the side of the member, or use a through-bolt.

    When to waive: Never for a pulled screw.
    """
    fixing = room.figures.mounts.fixing(device)
    grain, fastener = need(fixing.grain, fixing, "grain"), need(fixing.fastener, fixing, "fastener")
    if grain == "end" and fastener in {"wood-screw", "nail", "drywall-screw"}:
        return fails(f"{fastener.replace('-', ' ')} pulled out of end grain; enter the side of the member.")
    return passes(f"{fastener.replace('-', ' ')} in {grain} grain.")
