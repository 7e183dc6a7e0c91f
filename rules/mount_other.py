"""Mounts on steel, masonry and unknown framing, what stands free, and what only a person can decide."""

from __future__ import annotations

from typing import TYPE_CHECKING

from roomlint.design.base import Missing
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
    from collections.abc import Iterator

    from roomlint.design.listening import Loudspeaker, Subwoofer
    from roomlint.design.model import Design
    from roomlint.measure.holding import Held
    from roomlint.review import Room

CAUTION = (
    "Screening only: the installer verifies the real framing, and the instructions of mount and fastener, "
    "a licensed engineer and the local code official decide."
)
MASONRY = frozenset({"masonry", "hollow-block", "concrete"})
NOT_SAWN = frozenset({"truss", "engineered", "unknown"})
_HEAVY = Window(None, 45.0, "kg")


def _seismic(room: Room) -> Iterator[Held | Design]:
    # Regions that build without these categories are left out only when the project names one.
    if room.design.project.region not in {None, "us", "ca"} or not room.figures.mounts.fixed:
        return
    if room.design.project.seismic_category is None:
        raise Missing(room.design, "project.codes.seismic_category")
    yield from room.figures.mounts.fixed


@rule(
    "mount.steel-stud-backing",
    level=Level.ERROR,
    basis=practice("an arm on thin sheet pries its screws out; makers' tables exclude prying"),
    each=lambda room: room.figures.mounts.on_steel,
    reads=("mounting.product", "mounting.fixing.backing", "mounting.fixing.engineer"),
    since="0.1.0",
    at="mounting.fixing",
    caution=CAUTION + " An engineer is required on steel studs.",
)
def steel_stud_backing(room: Room, device: Held) -> Says:
    """An arm on steel studs has backing behind the board and an engineer's document.

    Why: Thin sheet lets go at a fraction of what a wood stud holds, and prying is in no table.

    How decided: Articulated and pole mounts need fixing.backing and fixing.engineer; other mounts need the engineer's
    document, and lack of it is a warning.

    Remedy: A backing plate or blocking across studs, dimensioned by an engineer.

    When to waive: Never for an arm.
    """
    mounts = room.figures.mounts
    fixing = mounts.fixing(device)
    motion = need(mounts.mount(device).motion, mounts.mount(device), "motion")
    if motion in {"articulated", "pole"} and (fixing.backing is None or stated(fixing.engineer) is None):
        return fails(f"{motion} mount on steel studs without backing and an engineer's document.")
    document = stated(fixing.engineer)
    if document is None:
        return fails("a mount on steel studs needs an engineer's document.", level=Level.WARNING)
    return passes(f"decided by {document.words}.")


@rule(
    "mount.steel-stud-pull-out",
    level=Level.WARNING,
    basis=memory("0.85 t d Fu over 3", document="AISI S100", clause="J4"),
    each=lambda room: room.figures.mounts.on_steel,
    reads=("mounting.fixing.diameter", "room.walls[].framing.steel_thickness"),
    since="0.1.0",
    window=Window(None, 1.0, ""),
    at="mounting.fixing",
    caution=CAUTION + " An engineer is required on steel studs.",
)
def steel_stud_pull_out(room: Room, device: Held) -> Against:
    """Pull on a screw in a steel stud stays within its allowable pull-out.

    Why: The screw strips the sheet long before it breaks.

    How decided: Pull on the most loaded screw over a third of the nominal pull-out from the sheet. Prying and board
    between are not in it.

    Remedy: Thicker studs, more screws, backing across studs.

    When to waive: When an engineer's calculation covers the backing.
    """
    return Against(room.figures.mounts.steel_use(device), says="Use backing across studs or thicker studs.")


@rule(
    "mount.anchor-approval",
    level=Level.ERROR,
    basis=standard("ACI 318", "chapter 17", read=False, note="post-installed anchors must be qualified"),
    each=lambda room: tuple(
        device for device in room.figures.mounts.fixed
        if (fixing := room.figures.mounts.mounting(device).fixing) is not None
        and (fixing.into is None or fixing.into in MASONRY)
    ),
    reads=("mounting.fixing.into", "mounting.fixing.anchor_approval"),
    since="0.1.0",
    at="mounting.fixing",
    caution=CAUTION + " No calculation is made here for anchors.",
)  # fmt: skip
def anchor_approval(room: Room, device: Held) -> Says:
    """Anchors in concrete and masonry come with their approval document.

    Why: What an anchor holds depends on base, depth, edge and spacing, and only its approval says how.

    How decided: The fixing names an approval document; nothing is computed.

    Remedy: Name the approval and let an engineer choose the anchor.

    When to waive: When an engineer's document stands for it; then name that in fixing.engineer.
    """
    fixing = room.figures.mounts.fixing(device)
    into = need(fixing.into, fixing, "into")
    named = stated(fixing.anchor_approval) or stated(fixing.engineer)
    if named is None:
        return fails(f"anchors in {into.replace('-', ' ')} without an approval document.")
    return passes(f"covered by {named.words}.")


@rule(
    "mount.engineer",
    level=Level.WARNING,
    basis=practice("what plain tables do not cover goes to an engineer; above 45 kg by choice of this rule book"),
    each=lambda room: room.figures.mounts.fixed,
    reads=("mounting.fixing.engineer", "room.walls[].framing.kind", "room.walls[].board.material"),
    since="0.1.0",
    at="mounting",
    caution=CAUTION,
)
def engineer(room: Room, device: Held) -> Says:
    """What plain tables do not cover has an engineer's document.

    Why: Trusses, engineered members, plaster on lath and unknown walls fail in ways that no table here knows.

    How decided: Framing of those kinds, plaster on lath, or more than 45 kg on one mount (a choice of this rule book)
    need fixing.engineer.

    Remedy: Ask the truss or member's designer or a licensed engineer, and name the document.

    When to waive: When the official accepted the fixing on site.
    """
    mounts = room.figures.mounts
    surface = mounts.surface(device)
    kind = need(surface.framing.kind, surface, "framing.kind")
    reasons = [f"{kind} framing"] if kind in NOT_SAWN else []
    reasons += ["plaster on lath"] if surface.board.material == "plaster-on-lath" else []
    reasons += [f"{mass} on one mount"] if _HEAVY.margin((mass := mounts.hung_mass(device)).value) < 0.0 else []
    document = stated(mounts.fixing(device).engineer)
    if reasons and document is None:
        return fails(f"needs an engineer's document: {', '.join(reasons)}.")
    return passes(f"decided by {document.words}." if document else "plain framing and mass.")


@rule(
    "mount.seismic",
    level=Level.WARNING,
    basis=standard("FEMA E-74", "televisions and monitors", edition="2012", read=True),
    each=_seismic,
    reads=("project.codes.seismic_category", "mounting"),
    since="0.1.0",
    at="mounting",
    caution=CAUTION + " The official decides what a house is exempt from.",
)
def seismic(room: Room, device: Held) -> Says:
    """In seismic categories D to F heavy equipment up high has designed anchorage.

    Why: What only hangs comes down in an earthquake.

    How decided: Above 20 lb (9.1 kg) in categories D, E and F an engineer's document is named. Height is taken as above
    4 ft for all that hangs.

    Remedy: Let an engineer design the anchorage and name the document.

    When to waive: When the local official exempts the house.
    """
    mounts = room.figures.mounts
    if not mounts.needs_seismic_anchorage(device):
        return passes("below the mass or category that asks for designed anchorage; attach it positively all the same.")
    document = stated(mounts.fixing(device).engineer)
    if document is None:
        return fails("needs designed seismic anchorage; name the engineer's document.")
    return passes(f"anchorage by {document.words}.")


@rule(
    "mount.tip-angle",
    level=Level.WARNING,
    basis=(
        standard("UL 1678", "16.3.1", read=False, note="10 degrees, for television stands"),
        practice("the same for loudspeakers, 12 degrees on thick carpet, a choice of this rule book"),
    ),
    each=lambda room: room.figures.mounts.standing,
    reads=("mounting.carpet", "mounting.strap", "mounting.on"),
    since="0.1.0",
    window=Window(10.0, None, "deg"),
    at="mounting",
    caution=CAUTION + " Children climb: anchor what can tip.",
)
def tip_angle(room: Room, device: Loudspeaker | Subwoofer) -> Against | Says:
    """A standing loudspeaker tips no sooner than on a ten-degree slope.

    Why: Tall narrow cabinets fall on those who pull at them.

    How decided: Half the narrower side of the base over the height of the centre of gravity, as an angle; 10 degrees,
    or 12 on thick carpet. A strapped one is left out.

    Remedy: A wider base, outriggers, or a strap to the wall.

    When to waive: When the cabinet is built in.
    """
    mounting = room.figures.mounts.mounting(device)
    strap = stated(mounting.strap)
    if strap is not None:
        return does_not_apply(f"kept from tipping by a {strap.words}.")
    window = Window(12.0 if need(mounting.carpet, mounting, "carpet") else 10.0, None, "deg")
    return Against(room.figures.mounts.tip_angle(device), window, "Widen the base or strap it to the wall.")


@rule(
    "mount.furniture-strap",
    level=Level.WARNING,
    basis=practice("national product-safety advice: anchor displays and furniture where children live"),
    each=lambda room: tuple(
        device for device in room.figures.mounts.held if room.figures.mounts.mounting(device).on == "furniture"
    ),
    reads=("mounting.strap", "project.children"),
    since="0.1.0",
    at="mounting",
    caution=CAUTION + " Children climb on furniture: anchor it and what stands on it.",
)
def furniture_strap(room: Room, device: Held) -> Says:
    """A display or loudspeaker on furniture is strapped where children live.

    Why: Most of the children killed by falling furniture were hit by a television with it.

    How decided: With children in the house the mounting names a strap; without, it passes.

    Remedy: Strap the display and the furniture to framing.

    When to waive: When the furniture is built in and the display bolted to it.
    """
    strap = stated(room.figures.mounts.mounting(device).strap)
    children = need(room.design.project.children, room.design, "project.children")
    if children and strap is None:
        return fails("stands on furniture without a strap in a house with children.")
    return passes(f"strapped: {strap.words}." if strap else "no children in the house.")


@rule(
    "mount.rated-surface",
    level=Level.WARNING,
    basis=standard("NFPA 70", "640.25 and 300.22(C)", edition="2020", read=False),
    each=lambda room: tuple(device for device in room.figures.mounts.held if room.figures.mounts.flush(device)),
    reads=("mounting.on", "room.walls[].fire_rated", "room.ceiling.plenum"),
    since="0.1.0",
    at="mounting.on",
    caution=CAUTION + " Nobody cuts a rated membrane without the official's word.",
)
def rated_surface(room: Room, device: Held) -> Says:
    """No hole for a flush loudspeaker breaks a fire-rated surface or a plenum.

    Why: A cut-out undoes the rating of the whole membrane unless the enclosure restores it.

    How decided: Flush in a surface that is rated or a plenum goes to a person: the loudspeaker is listed for it or sits
    in an enclosure that keeps the rating.

    Remedy: A listed enclosure, or a surface loudspeaker.

    When to waive: When the enclosure's listing is on file.
    """
    surface = room.figures.mounts.surface(device)
    rated = need(surface.fire_rated, surface, "fire_rated")
    plenum = need(surface.plenum, surface, "plenum")
    if rated or plenum:
        what = "fire-rated surface" if rated else "plenum"
        return asks(f"flush in a {what}: is it listed for that, or in an enclosure that keeps the rating?")
    return passes("the surface is neither rated nor a plenum.")


@rule(
    "mount.lift-mass",
    level=Level.NOTE,
    basis=standard("NIOSH lifting equation", "load constant", read=False),
    each=lambda room: room.figures.mounts.fixed,
    reads=("products mass",),
    since="0.1.0",
    window=Window(None, 23.0, "kg"),
    caution=CAUTION,
)
def lift_mass(room: Room, device: Held) -> Against:
    """One person lifts no more than 23 kg onto a mount.

    Why: Above it, even a well-placed lift hurts backs, and a dropped display hurts more.

    How decided: Mass of the device alone, against the load constant for ideal conditions.

    Remedy: Plan two people or a lift.

    When to waive: When the visit is planned with two people.
    """
    return Against(room.figures.mounts.device_mass(device), says="Plan two people or a mechanical lift.")
