"""Mounts: whether each device says what holds it, and whether mount, wall and fastener belong together."""

from __future__ import annotations

from typing import TYPE_CHECKING

from roomlint.review import (
    Against,
    Level,
    Says,
    Window,
    does_not_apply,
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
    "Screening arithmetic only: the installer verifies the real framing, and the instructions of mount and fastener, "
    "a licensed engineer and the local code official decide."
)
_FIXING = "loudspeakers[].mounting.fixing"
_MOUNT = "mounting.product"


@rule(
    "mount.held",
    level=Level.ERROR,
    basis=practice("something must hold every device, and a mount's load path is stated before it is built"),
    each=lambda room: room.figures.mounts.devices,
    reads=("loudspeakers[].mounting", "subwoofers[].mounting", "picture.mounting", "picture.projector.mounting"),
    since="0.1.0",
    caution=CAUTION,
)
def held(room: Room, device: Held) -> Says:
    """Every loudspeaker, display, screen and projector says what holds it.

    Why: A load path that nobody wrote down is found on site, with the board already closed.

    How decided: The device has a mounting that names a surface, the floor, a stand or furniture; a device on a wall or
    the ceiling that is not flush in the board also names its fasteners.

    Remedy: Add mounting.on, and mounting.fixing for whatever hangs.

    When to waive: Never for equipment overhead.
    """
    mounts = room.figures.mounts
    mounting = mounts.mounting(device)
    on = need(mounting.on, mounting, "on")
    if device in mounts.fixed:
        mounts.fixing(device)
    return passes(f"held by {on}.")


@rule(
    "mount.rated-mass",
    level=Level.ERROR,
    basis=(
        practice("the mass a mount is rated for is its maker's limit"),
        standard(
            "UL 2442", "scope", read=False, note="wall and ceiling mounts are tested to a multiple of their rating"
        ),
    ),
    each=lambda room: room.figures.mounts.on_mounts,
    reads=("mounting.product", "mounting.accessories"),
    since="0.1.0",
    window=Window(1.0, None, ""),
    target=Window(1.25, None, ""),
    at=_MOUNT,
    caution=CAUTION + " The rating covers the bracket, not the wall.",
)
def rated_mass(room: Room, device: Held) -> Against:
    """A mount is rated for the mass of the device and all that hangs on it.

    Why: The rating is what the bracket was tested for; accessories and cables count.

    How decided: Rated mass over device and accessories is at least 1; less than 1.25, our choice, is a note, so that
    the next, heavier device does not pass unseen.

    Remedy: Choose a mount with a higher rating, or move accessories to a support of their own.

    When to waive: Never below 1.
    """
    return Against(room.figures.mounts.rating_ratio(device), says="Choose a mount with a higher rating.")


@rule(
    "mount.hole-pattern",
    level=Level.ERROR,
    basis=standard("VESA Flat Display Mounting Interface", "parts B to F", read=False),
    each=lambda room: tuple(
        device
        for device in room.figures.mounts.on_mounts
        if device.product is not None and device.product.kind in {"display", "projector"}
    ),
    reads=("picture.product", "picture.mounting.product"),
    since="0.1.0",
    at=_MOUNT,
    caution=CAUTION,
)
def hole_pattern(room: Room, device: Held) -> Says:
    """A display's hole pattern and screw thread are among those that its mount takes.

    Why: Adapting a pattern on site ends in forced, short or over-long screws.

    How decided: The pattern in mm and the thread on the display's sheet both stand on the mount's sheet.

    Remedy: Choose a mount that lists the pattern and thread, or the maker's own adapter plate.

    When to waive: When an adapter plate by the maker of either is documented.
    """
    product = need(device.product, device, "product")
    data, mount = need(product.picture, product, "picture"), room.figures.mounts.mount(device)
    pattern, screw = need(data.pattern, data, "pattern"), need(data.screw, data, "screw")
    patterns = need(mount.patterns or None, mount, "patterns")
    screws = need(mount.screws or None, mount, "screws")
    if pattern not in patterns:
        return fails(f"the display's hole pattern {pattern} mm is not among the mount's: {', '.join(patterns)}.")
    if screw not in screws:
        return fails(f"the display takes {screw} screws, the mount {', '.join(screws)}.", level=Level.WARNING)
    return passes(f"the mount takes {pattern} mm with {screw}.")


@rule(
    "mount.stud-span",
    level=Level.WARNING,
    basis=standard("International Residential Code", "Table R602.3(5)", read=False, note="16 and 24 in stud spacing"),
    each=lambda room: tuple(
        device
        for device in room.figures.mounts.on_mounts
        if room.figures.mounts.motion(device) == "articulated" and device in room.figures.mounts.on_wood_walls
    ),
    reads=("mounting.product", "room.walls[].framing.spacing"),
    since="0.1.0",
    window=Window(1.0, None, ""),
    at=_MOUNT,
    caution=CAUTION,
)
def stud_span(room: Room, device: Held) -> Against | Says:
    """The plate of an articulated mount reaches over two studs.

    Why: Two studs share the pull and take the twist of a swung arm.

    How decided: The widest distance between the plate's holes is at least the spacing of the studs.

    Remedy: A wider plate, or blocking between the studs behind the plate.

    When to waive: When one stud carries by mount.sideways-swing and mount.misuse-load.
    """
    mounts = room.figures.mounts
    if mounts.fixing(device).into != "stud":
        return does_not_apply("the fasteners are not in studs.")
    return Against(mounts.stud_span(device), says="Take a wider plate or put blocking between the studs.")


@rule(
    "mount.fastener-kind",
    level=Level.ERROR,
    basis=practice("no nail, drywall screw or adhesive carries equipment, a cautious choice of this rule book"),
    each=lambda room: room.figures.mounts.fixed,
    reads=(f"{_FIXING}.fastener",),
    since="0.1.0",
    at="mounting.fixing.fastener",
    caution=CAUTION,
)
def fastener_kind(room: Room, device: Held) -> Says:
    """No device hangs on nails, drywall screws or adhesive.

    Why: Nails creep out under steady pull, drywall screws are brittle, adhesive peels off paint and paper.

    How decided: The fastener is none of these.

    Remedy: Lag screws in framing, through-bolts, or the anchor that the mount's instructions name.

    When to waive: Never; nothing makes such a fixing lasting.
    """
    fixing = room.figures.mounts.fixing(device)
    fastener = need(fixing.fastener, fixing, "fastener")
    if fastener in {"nail", "drywall-screw", "adhesive"}:
        return fails(f"hangs on {fastener.replace('-', ' ')}; use lag screws in framing or through-bolts.")
    return passes(f"hangs on {fastener.replace('-', ' ')}.")


@rule(
    "mount.substrate",
    level=Level.ERROR,
    basis=practice("nothing but framing or structure carries equipment, a cautious choice of this rule book"),
    each=lambda room: room.figures.mounts.fixed,
    reads=(f"{_FIXING}.into",),
    since="0.1.0",
    at="mounting.fixing.into",
    caution=CAUTION + " Board has no equipment capacity.",
)
def substrate(room: Room, device: Held) -> Says:
    """Fasteners of equipment go into framing or structure, not into a lining.

    Why: Linings crush, crack and pull out slowly; what looks firm on the day falls later.

    How decided: Board, plaster, tile, glass and ceiling grid fail; wood, steel studs, masonry and concrete pass here
    and are judged by other rules.

    Remedy: Move to a stud or joist, or put blocking behind the board.

    When to waive: Never for equipment.
    """
    fixing = room.figures.mounts.fixing(device)
    into = need(fixing.into, fixing, "into")
    if into in {"board", "plaster", "tile", "glass", "grid"}:
        return fails(f"the fasteners hold in {into} only; move to a stud or joist or add blocking behind.")
    return passes(f"the fasteners hold in {into.replace('-', ' ')}.")
