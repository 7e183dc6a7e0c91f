"""Mounts overhead: what hangs above people, and what it hangs from."""

from __future__ import annotations

from typing import TYPE_CHECKING

from roomlint.design.proofs import stated
from roomlint.review import (
    Against,
    Level,
    Says,
    Window,
    asks,
    fails,
    need,
    passes,
    practice,
    rule,
    standard,
)

if TYPE_CHECKING:
    from roomlint.measure.holding import Held
    from roomlint.review import Room

CAUTION = (
    "Screening only: the installer verifies the real framing, and the instructions of mount and fastener, "
    "a licensed engineer and the local code official decide."
)
VENUES = standard(
    "DGUV Information 215-313", "1.3", read=True, note="for stages and studios; put to homes as the cautious reading"
)


@rule(
    "mount.overhead-screws",
    level=Level.WARNING,
    basis=practice("riggers avoid lag screws pulled straight out overhead; the wood standard gives them values"),
    each=lambda room: tuple(
        device for device in room.figures.mounts.fixed if room.figures.mounts.mounting(device).on == "ceiling"
    ),
    reads=("mounting.fixing.fastener", "mounting.secondary"),
    since="0.1.0",
    at="mounting.fixing",
    caution=CAUTION + " Vibration and drying loosen screws overhead.",
)
def overhead_screws(room: Room, device: Held) -> Says:
    """Nothing overhead hangs on pulled screws alone.

    Why: Wood dries, equipment vibrates, and a screw that backs out drops its load on people.

    How decided: Lag, wood or structural screws overhead need a secondary support; through-bolts pass.

    Remedy: Through-bolt to blocking, or add a rope or chain to structure.

    When to waive: When an engineer accepted the screws for this load.
    """
    fixing = room.figures.mounts.fixing(device)
    fastener = need(fixing.fastener, fixing, "fastener")
    if fastener != "through-bolt" and stated(room.figures.mounts.mounting(device).secondary) is None:
        return fails(f"{fastener.replace('-', ' ')} is all that holds it overhead; through-bolt it or add a secondary.")
    return passes(f"held by {fastener.replace('-', ' ')}, with a second means or through the member.")


@rule(
    "mount.design-factor",
    level=Level.WARNING,
    basis=(
        standard("DGUV Information 215-313", "1.4", read=True, note="half of the rated load over people"),
        practice("5 to 1 in rigging, 10 to 1 over people"),
    ),
    each=lambda room: room.figures.mounts.suspended,
    reads=("mounting.breaking_load", "mounting.sling_angle", "mounting.product"),
    since="0.1.0",
    window=Window(10.0, None, ""),
    limit=Window(5.0, None, ""),
    at="mounting",
    caution=CAUTION + " Entertainment practice does not bind a house; it is the cautious reading.",
)
def design_factor(room: Room, device: Held) -> Against | Says:
    """The weakest part of a suspension breaks at no less than ten times its load.

    Why: Over people the trade doubles the ordinary factor of five.

    How decided: Breaking load over the load on it, on one line, or on each of two sling legs. Below 10 is a warning,
    below 5 an error.

    Remedy: Stronger parts, more lines, steeper slings.

    When to waive: When a rigging engineer documents another factor.
    """
    try:
        return Against(room.figures.mounts.hang_factor(device), says="Use stronger parts or steeper slings.")
    except ValueError as error:
        return asks(f"{error}; a rigging engineer decides.")


@rule(
    "mount.secondary",
    level=Level.WARNING,
    basis=VENUES,
    each=lambda room: room.figures.mounts.overhead,
    reads=("mounting.secondary",),
    since="0.1.0",
    at="mounting",
    caution=CAUTION + " A secondary has its own attachment point.",
)
def secondary(room: Room, device: Held) -> Says:
    """Everything that hangs overhead has a second, independent support.

    Why: One loose screw or one cracked bracket must not drop a load on a listener.

    How decided: The mounting names a secondary support; in a ceiling grid or on a box nothing else carries.

    Remedy: A steel rope or chain to structure at its own attachment point.

    When to waive: When the fixing is locked, needs tools to open, and an engineer accepts it.
    """
    mounting = room.figures.mounts.mounting(device)
    second = stated(mounting.secondary)
    if second is None:
        return fails("no secondary support overhead; add a rope or chain to structure at its own point.")
    return passes(f"secondary: {second.words}.")


@rule(
    "mount.secondary-fall",
    level=Level.WARNING,
    basis=VENUES,
    each=lambda room: tuple(
        device for device in room.figures.mounts.overhead
        if stated(room.figures.mounts.mounting(device).secondary) is not None
    ),
    reads=("mounting.secondary_fall",),
    since="0.1.0",
    window=Window(None, 200.0, "mm"),
    at="mounting",
    caution=CAUTION,
)  # fmt: skip
def secondary_fall(room: Room, device: Held) -> Against:
    """A secondary support catches its load within 0.20 m.

    Why: A fall multiplies the force: 0.2 m onto a stiff rope is some twenty times the weight.

    How decided: The fall before the secondary holds is at most 200 mm, and none is better.

    Remedy: Shorten the rope until it is just slack.

    When to waive: When the rope's rating for a longer drop is documented.
    """
    return Against(room.figures.mounts.secondary_fall(device), says="Shorten the rope until it is just slack.")


@rule(
    "mount.sling-angle",
    level=Level.WARNING,
    basis=practice("sling legs no flatter than 45 degrees, never flatter than 30"),
    each=lambda room: tuple(
        device for device in room.figures.mounts.overhead
        if room.figures.mounts.mounting(device).sling_angle_deg is not None
    ),
    reads=("mounting.sling_angle",),
    since="0.1.0",
    window=Window(45.0, None, "deg"),
    limit=Window(30.0, None, "deg"),
    at="mounting.sling_angle",
    caution=CAUTION + " Tension grows as one over the sine of the angle.",
)  # fmt: skip
def sling_angle(room: Room, device: Held) -> Against:
    """Sling legs hang steeply.

    Why: At 30 degrees each of two legs carries the whole load, flatter more.

    How decided: Angle from the horizontal at least 45 degrees; below 30 is an error.

    Remedy: Longer legs, or a spreader bar.

    When to waive: When the tension is computed by a rigging engineer.
    """
    return Against(room.figures.mounts.sling_angle(device), says="Use longer legs or a spreader bar.")


@rule(
    "mount.electrical-box",
    level=Level.ERROR,
    basis=standard("NFPA 70", "314.27", edition="2020, 2023", read=False),
    each=lambda room: tuple(
        device for device in room.figures.mounts.held if room.figures.mounts.mounting(device).on == "electrical-box"
    ),
    reads=("mounting.on", "mounting.product"),
    since="0.1.0",
    window=Window(None, 2.7216, "kg"),
    at="mounting.on",
    caution=CAUTION + " A box is not a structural support.",
)
def electrical_box(room: Room, device: Held) -> Against:
    """No equipment hangs on an electrical box beyond what the box is listed for.

    Why: A box is held by two short screws or a bar between joists.

    How decided: At most 6 lb on any box, at most 50 lb where the mount's sheet names a listing.

    Remedy: Hang the device from structure beside the box.

    When to waive: When the box itself is listed and marked for the mass.
    """
    mounts = room.figures.mounts
    product = mounts.mounting(device).product
    listed = product is not None and product.mount is not None and product.mount.listed is not None
    window = Window(None, 22.6796, "kg") if listed else Window(None, 2.7216, "kg")
    return Against(mounts.hung_mass(device), window, "Hang it from structure.")


@rule(
    "mount.grid-ceiling",
    level=Level.WARNING,
    basis=(
        practice("grid ceilings: one slack wire below 10 lb, two to 56 lb, direct support above"),
        standard("ASTM C635", "light duty", read=False, note="the grid is for tile only"),
    ),
    each=lambda room: tuple(
        device for device in room.figures.mounts.held if room.figures.mounts.mounting(device).on == "grid-ceiling"
    ),
    reads=("mounting.on", "mounting.secondary"),
    since="0.1.0",
    window=Window(None, 25.4012, "kg"),
    at="mounting",
    caution=CAUTION + " A light-duty grid carries tile only.",
)
def grid_ceiling(room: Room, device: Held) -> Against | Says:
    """What sits in a ceiling grid hangs on a wire of its own.

    Why: The grid is made for its tiles; a device in it needs a bridge and a wire to structure.

    How decided: A secondary support is named, and the mass is at most 56 lb; heavier devices hang from structure.

    Remedy: A tile bridge and a wire to structure, or direct support.

    When to waive: When the ceiling's maker documents the load.
    """
    if stated(room.figures.mounts.mounting(device).secondary) is None:
        return fails("in a ceiling grid without a wire of its own to structure.")
    return Against(room.figures.mounts.hung_mass(device), says="Support it from structure directly.")


@rule(
    "mount.joist-load",
    level=Level.WARNING,
    basis=(
        standard("International Residential Code", "R301.5", read=False),
        practice("96 and 239 Pa (2 and 5 lbf/ft2) on a ceiling joist, a cautious choice of this rule book"),
    ),
    each=lambda room: tuple(
        device for device in room.figures.mounts.fixed if room.figures.mounts.mounting(device).on == "ceiling"
    ),
    reads=("mounting.on", "room.ceiling.framing.spacing"),
    since="0.1.0",
    window=Window(None, 239.4, "Pa"),
    target=Window(None, 95.8, "Pa"),
    at="mounting",
    caution=CAUTION + " Truss chords: ask the truss designer whatever the load.",
)
def joist_load(room: Room, device: Held) -> Against:
    """A device adds little to what its ceiling joist was built for.

    Why: A ceiling joist may have been built for 5 or 10 lbf/ft2 of ceiling and nothing else.

    How decided: Twice the weight over span and spacing, as a load on the joist's own area; above 96 Pa (2 lbf/ft2) a
    note, above 239 Pa (5 lbf/ft2) a warning. The shorter side of the room is taken as the span.

    Remedy: Spread it over two joists with blocking, or hang it near a wall.

    When to waive: When the joists are known to be built for a floor above.
    """
    return Against(room.figures.mounts.joist_load(device), says="Spread it over two joists with blocking.")
