"""Mounts and stands: whether something holds each thing, and whether thing and mount fit each other."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from roomlint.design.base import need
from roomlint.design.listening import FREE, Picture, Projector
from roomlint.review import SOURCES, Level, No, at_least, at_most, fails, passes, practice, rule, standard

from . import CAUSES, CAUTION, HELD, base_of, fixed, holder, on_wall, own_mount

if TYPE_CHECKING:
    from roomlint.design.listening import Loudspeaker, Subwoofer
    from roomlint.measure.holding import Held
    from roomlint.review import Applies, Figure, Room, Says

PLACED: Final = {
    "in-wall": "in a wall", "on-wall": "on a wall", "in-ceiling": "in a ceiling", "stand": "on a stand",
    "floor": "on the floor", "behind-screen": "behind a screen",
}  # fmt: skip
STANDING: Final = frozenset({"floor", "stand"})
FLUSH: Final = frozenset({"in-wall", "in-ceiling"})


@rule(
    "mount.held",
    level=Level.ERROR,
    basis=practice("something must hold every device, and a mount's load path is stated before it is built"),
    each=HELD,
    says={"held": "is held by {on}"},
    caution=CAUTION,
    since="0.1.0",
)
def held(room: Room, thing: Held) -> Says:
    """Every loudspeaker, display, screen, projector, rack and panel says what holds it.

    Why: A load path that nobody wrote down is found on site, with the board already closed.

    How decided: A surface, the floor, a stand or furniture is named; whatever is on a wall or the ceiling also names
    its fasteners and what they go into, whatever is on a stand names the stand.

    Remedy: Add mounting.on, and mounting.fixing for whatever hangs.

    When to waive: Never for equipment overhead.
    """
    mounts = room.figures.mounts
    on = mounts.on(thing)
    if on == "stand":
        mounts.stand(thing)
    elif on not in FREE | {"grid-ceiling", "electrical-box"}:
        mounts.fastener(thing)
        mounts.into(thing)
    return passes("held", on=holder(on))


@rule(
    "mount.made-for",
    level=Level.WARNING,
    basis=practice("a cabinet hangs or stands as its maker's sheet says: one made to stand has nothing to hang it by"),
    each=SOURCES,
    says={
        "hangs": "hangs on {on}, and its sheet has it {made} only; nothing in it is made to hang by",
        "stands": "stands on {on}, and its sheet has it {made} only",
        "made": "its sheet has it {made}",
    },
    at="mounting.on",
    caution=CAUTION,
    since="0.3.0",
)
def made_for(room: Room, source: Loudspeaker | Subwoofer) -> Says:
    """A loudspeaker or subwoofer hangs only where its sheet makes it to hang, and stands only where it can stand.

    Why: A cabinet without inserts or a frame is hung by screws in chipboard, and a frame without a wall stands on its
    cone.

    How decided: What is on a wall or the ceiling needs a placement of its sheet that hangs: on or in a wall, in a
    ceiling, behind a screen. What is on the floor, a stand or furniture needs one that does not lie in a surface. A
    cabinet for a wall may stand on furniture.

    Remedy: Choose a cabinet made for the place, or another place.

    When to waive: The maker offers a bracket for it, and its document is named.
    """
    mounts = room.figures.mounts
    on, product = mounts.on(source), mounts.product(source)
    data = need(product.loudspeaker, product, product.kind)
    placement = need(data.placement or None, data, "placement")
    made, free = tuple(PLACED[one] for one in placement), on in FREE
    if not free and STANDING.issuperset(placement):
        return fails("hangs", on=holder(on), made=made)
    if free and FLUSH.issuperset(placement):
        return fails("stands", on=holder(on), made=made)
    return passes("made", made=made)


def carried(room: Room, thing: Held) -> Applies:
    """Whether a mount or a stand carries it."""
    return True if room.figures.mounts.on(thing) == "stand" else own_mount(room, thing)


@rule(
    "mount.rated-mass",
    level=Level.ERROR,
    basis=(
        practice("the mass a mount is rated for is its maker's limit"),
        standard("UL 2442", "scope", read=False, note="mounts are tested to a multiple of their rating"),
    ),
    each=HELD,
    when=carried,
    window=at_least(1.0, "", note=1.25),
    says="its mount is rated for {figure} times what it carries; {window} wanted",
    at="mounting.product",
    caution=CAUTION + " The rating covers the bracket, not the wall.",
    since="0.1.0",
)
def rated_mass(room: Room, thing: Held) -> Figure:
    """A mount or stand is rated for the mass of the device and all that hangs on it.

    Why: The rating is what the bracket was tested for; accessories and cables count.

    How decided: Rated mass over device and accessories is at least 1; less than 1.25, our choice, is a note, so that
    the next, heavier device does not pass unseen.

    Remedy: Choose a mount with a higher rating, or move accessories to a support of their own.

    When to waive: Never below 1.
    """
    return room.figures.mounts.rating_ratio(thing)


def patterned(room: Room, thing: Held) -> Applies:
    """Whether it is a display or projector, which mounts hold by a hole pattern."""
    if not isinstance(thing, Picture | Projector):
        return No("only displays and projectors have a hole pattern")
    if isinstance(thing, Picture) and room.figures.mounts.product(thing).kind == "screen":
        return No("a screen has no hole pattern")
    return own_mount(room, thing)


@rule(
    "mount.hole-pattern",
    level=Level.ERROR,
    basis=standard("VESA Flat Display Mounting Interface", "parts B to F", read=False),
    each=HELD,
    when=patterned,
    says={
        "pattern": "has holes {own} mm apart; its mount takes {taken}",
        "thread": "takes {own} screws; its mount has {taken}",
        "fits": "its mount takes {own} mm",
    },
    at="mounting.product",
    caution=CAUTION,
    since="0.1.0",
)
def hole_pattern(room: Room, thing: Held) -> Says:
    """A display's hole pattern and screw thread are among those that its mount takes.

    Why: Adapting a pattern on site ends in forced, short or over-long screws.

    How decided: The pattern in mm and the thread on the display's sheet both stand on the mount's sheet.

    Remedy: Choose a mount that lists the pattern and thread, or the maker's own adapter plate.

    When to waive: When an adapter plate by the maker of either is documented.
    """
    product, mount = room.figures.mounts.product(thing), room.figures.mounts.mount(thing)
    data = need(product.picture, product, "picture")
    pattern, screw = need(data.pattern, data, "pattern"), need(data.screw, data, "screw")
    patterns, screws = need(mount.patterns or None, mount, "patterns"), need(mount.screws or None, mount, "screws")
    if pattern not in patterns:
        return fails("pattern", own=pattern, taken=patterns)
    if screw not in screws:
        return fails("thread", level=Level.WARNING, own=screw, taken=screws)
    return passes("fits", own=pattern)


def swung_on_studs(room: Room, thing: Held) -> Applies:
    """Whether it is an arm on studs."""
    mounts = room.figures.mounts
    into = mounts.into(thing)
    if into != "stud":
        return No(f"its fasteners go into {base_of(into)}")
    motion = mounts.motion(thing)
    return True if motion == "articulated" else No(f"its mount is {motion}, no arm")


@rule(
    "mount.stud-span",
    level=Level.WARNING,
    basis=standard("International Residential Code", "Table R602.3(5)", read=False, note="16 and 24 in stud spacing"),
    each=HELD,
    when=(fixed, on_wall, swung_on_studs),
    window=at_least(1.0, ""),
    says={"fail": "its fasteners span {figure} of the stud spacing; {window} wanted, so that two studs carry",
          "one": "has one screw in its top row, so one stud holds the arm"},
    after=CAUSES,
    at="mounting.product",
    caution=CAUTION,
    since="0.1.0",
)  # fmt: skip
def stud_span(room: Room, thing: Held) -> Figure | Says:
    """The fasteners of an articulated mount reach over two studs.

    Why: Two studs share the pull and take the twist of a swung arm.

    How decided: The distance between the outermost columns of fasteners is at least the spacing of the studs. A plate
    whose holes are nearer to each other cannot reach; one screw in the top row is in one stud, however wide the plate.

    Remedy: A wider plate with fasteners in both studs, or blocking between the studs behind the plate.

    When to waive: When one stud carries by mount.sideways-swing and mount.misuse-load.
    """
    if room.figures.mounts.top_count(thing) == 1:
        return fails("one")
    return room.figures.mounts.stud_span(thing)


@rule(
    "mount.lift-mass",
    level=Level.NOTE,
    basis=standard("NIOSH lifting equation", "load constant", read=False),
    each=HELD,
    when=fixed,
    window=at_most(23.0, "kg"),
    says="weighs {figure}; one person lifts {window}: plan two people or a lift",
    caution=CAUTION,
    since="0.1.0",
)
def lift_mass(room: Room, thing: Held) -> Figure:
    """One person lifts no more than 23 kg onto a mount.

    Why: Above it, even a well-placed lift hurts backs, and a dropped display hurts more.

    How decided: Mass of the device alone, against the load constant for ideal conditions.

    Remedy: Plan two people or a lift.

    When to waive: When the visit is planned with two people.
    """
    return room.figures.mounts.own_mass_figure(thing)
