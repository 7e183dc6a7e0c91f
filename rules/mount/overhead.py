"""What hangs above people, and what it hangs from."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from roomlint.design.base import need
from roomlint.review import Level, No, asks, at_least, at_most, computed, fails, found, passes, practice, rule, standard

from . import CAREFUL, CAUSES, CAUTION, HELD, fixed, hangs_overhead, on_ceiling, plain

if TYPE_CHECKING:
    from roomlint.measure.holding import Held
    from roomlint.review import Answer, Applies, Figure, Room, Says, Windows

VENUES = standard(
    "DGUV Information 215-313", "1.3 and 1.4", read=True,
    note="Germany, for stages and studios; put to homes as the cautious reading",
)  # fmt: skip
LUMINAIRES = standard(
    "ANSI E1.53", "secondary mounts", read=False,
    note="United States, for luminaires and portable devices overhead; its scope is known, its numbers are not",
)  # fmt: skip
ENCLOSURES = standard(
    "ANSI E1.8", "overhead suspension of loudspeaker enclosures", edition="2018", read=False,
    note="United States; its title and scope are known, its numbers are not",
)  # fmt: skip
BOX_KG: Final = 2.7216
"""6 lb: what may hang on an electrical box that is listed for nothing."""
ONE_WIRE_KG: Final = 4.5359
"""10 lb: what one wire may hold in a ceiling grid."""

_TIMBER: Final = frozenset({"joist", "rafter", "beam", "truss", "blocking", "steel"})
_SOLID: Final = frozenset({"concrete", "masonry", "beam", "steel"})
CARRIES: Final = {
    **dict.fromkeys(("wood-stud", "joist", "truss", "engineered"), _TIMBER),
    **dict.fromkeys(("masonry", "hollow-block", "concrete"), _SOLID),
}
"""What a second support finds above a ceiling of each kind; steel may cross any. Under others anything may be."""


@rule(
    "mount.overhead-screws",
    level=Level.WARNING,
    basis=practice("riggers avoid screws pulled straight out overhead; the wood standard gives them values"),
    each=HELD,
    when=(fixed, on_ceiling),
    says={
        "alone": "{fastener} is all that holds it overhead; through-bolt it or add a second support",
        "twice": "held by {fastener}, with a second support or through the member",
    },
    after=("mount.secondary", *CAUSES),
    at="mounting.fixing",
    caution=CAUTION + " Vibration and drying loosen screws overhead.",
    since="0.1.0",
)
def overhead_screws(room: Room, thing: Held) -> Says:
    """Nothing overhead hangs on pulled screws alone.

    Why: Wood dries, equipment vibrates, and a screw that backs out drops its load on people.

    How decided: Screws, toggles, clamps and anchors overhead need a second support; through-bolts pass.

    Remedy: Through-bolt to blocking, or add a rope or chain to structure.

    When to waive: When an engineer accepted the screws for this load.
    """
    fastener = room.figures.mounts.fastener(thing)
    if fastener != "through-bolt" and room.figures.hanging.secondary(thing) is None:
        return fails("alone", fastener=plain(fastener))
    return passes("twice", fastener=plain(fastener))


def suspended(room: Room, thing: Held) -> Applies:
    """Whether it hangs below its plate."""
    return True if room.figures.hanging.suspended(thing) else No("it sits on its plate, on no pole or sling")


@rule(
    "mount.design-factor",
    level=Level.WARNING,
    basis=(VENUES, ENCLOSURES, practice("5 to 1 in rigging, 10 to 1 over people")),
    each=HELD,
    when=(hangs_overhead, suspended),
    window=at_least(10.0, "", error=5.0),
    says="its weakest part breaks at {figure} times its load; {window} wanted over people",
    cure=("mounting.sling_angle", "mounting.breaking_load"),
    at="mounting",
    caution=CAUTION + " Entertainment practice does not bind a house; it is the cautious reading.",
    since="0.1.0",
)
def design_factor(room: Room, thing: Held) -> Figure:
    """The weakest part of a suspension breaks at no less than ten times its load.

    Why: Over people the trade doubles the ordinary factor of five.

    How decided: The lesser breaking load of mount and suspension over the load on it, on one line, or on each of two
    sling legs. Below 10 is a warning, below 5 an error.

    Remedy: Stronger parts, more lines, steeper slings.

    When to waive: When a rigging engineer documents another factor.
    """
    return room.figures.hanging.hang_factor(thing)


@rule(
    "mount.secondary",
    level=Level.WARNING,
    basis=(VENUES, LUMINAIRES),
    each=HELD,
    when=hangs_overhead,
    says={
        "none": "hangs overhead without a second support; add a rope or chain to structure at its own point",
        "elsewhere": "second support: {second}, but the ceiling is {kind}; see what it is really attached to",
        "held": "second support: {second}",
    },
    at="mounting",
    caution=CAUTION + " A second support has its own attachment point.",
    since="0.1.0",
)
def secondary(room: Room, thing: Held) -> Says:
    """Everything that hangs overhead has a second, independent support.

    Why: One loose screw or one cracked bracket must not drop a load on a listener.

    How decided: The mounting says what the second support is and what it is attached to; the word none is a statement
    that there is none. It holds for flush loudspeakers and panels too. In a ceiling grid or on a box nothing else
    carries. Attached to what a ceiling of its kind does not have, such as concrete above joists, a person looks.

    Remedy: A steel rope or chain to structure at its own attachment point.

    When to waive: When the fixing is locked, needs tools to open, and an engineer accepts it.
    """
    second = room.figures.hanging.secondary(thing)
    if second is None:
        return fails("none")
    ceiling = room.design.shell.ceiling
    kind = ceiling.framing.kind if ceiling is not None else None
    if ceiling is not None and kind in CARRIES and second.attached_to not in CARRIES[kind]:
        return asks("elsewhere", related=(ceiling.framing,), second=second.words, kind=plain(kind))
    return passes("held", second=second.words)


def secured(room: Room, thing: Held) -> Applies:
    """Whether a second support is stated."""
    return True if room.figures.hanging.secondary(thing) is not None else No("it has no second support")


@rule(
    "mount.secondary-rating",
    level=Level.WARNING,
    basis=(VENUES, LUMINAIRES, CAREFUL),
    each=HELD,
    when=(hangs_overhead, secured),
    window=at_least(2.0, "", error=1.0),
    says="its second support is rated for {figure} times its weight; {window} wanted over people",
    cure=("mounting.secondary.rating",),
    at="mounting.secondary",
    caution=CAUTION + " A fall multiplies the weight.",
    since="0.2.0",
)
def secondary_rating(room: Room, thing: Held) -> Figure:
    """A second support is rated for at least twice the weight that it would catch.

    Why: What catches a fall bears more than the weight, and over people the trade uses half of a rated load.

    How decided: Its marked rating over the weight of device, mount and accessories.

    Remedy: A rope, chain and shackle of a higher rating.

    When to waive: When the rope's rating for this drop and mass is documented.
    """
    return room.figures.hanging.secondary_factor(thing)


@rule(
    "mount.secondary-fall",
    level=Level.WARNING,
    basis=(VENUES, LUMINAIRES),
    each=HELD,
    when=(hangs_overhead, secured),
    window=at_most(200.0, "mm"),
    says="falls {figure} before its second support holds; {window} wanted",
    cure=("mounting.secondary_fall",),
    at="mounting",
    caution=CAUTION,
    since="0.1.0",
)
def secondary_fall(room: Room, thing: Held) -> Figure:
    """A second support catches its load within 0.20 m.

    Why: A fall multiplies the force: 0.2 m onto a stiff rope is some twenty times the weight.

    How decided: The fall before the second support holds is at most 200 mm, and none is better.

    Remedy: Shorten the rope until it is just slack.

    When to waive: When the rope's rating for a longer drop is documented.
    """
    return room.figures.hanging.secondary_fall(thing)


def slung(room: Room, thing: Held) -> Applies:
    """Whether it hangs on sling legs: what hangs below its plate on no pole hangs on one rope or on more."""
    mounts = room.figures.mounts
    if mounts.mounting(thing).sling_angle_deg is not None:
        return True
    if not room.figures.hanging.suspended(thing):
        return No("it sits on its plate, on no pole or sling")
    return No("it hangs on a pole") if mounts.motion(thing) == "pole" else True


@rule(
    "mount.sling-angle",
    level=Level.WARNING,
    basis=practice("sling legs no flatter than 45 degrees, never flatter than 30"),
    each=HELD,
    when=(hangs_overhead, slung),
    window=at_least(45.0, "deg", error=30.0),
    says="its slings stand {figure} from the horizontal; {window} wanted",
    cure=("mounting.sling_angle",),
    at="mounting.sling_angle",
    caution=CAUTION + " Tension grows as one over the sine of the angle.",
    since="0.1.0",
)
def sling_angle(room: Room, thing: Held) -> Figure:
    """Sling legs hang steeply.

    Why: At 30 degrees each of two legs carries the whole load, flatter more.

    How decided: Angle from the horizontal at least 45 degrees; below 30 is an error. A single rope stands at 90.

    Remedy: Longer legs, or a spreader bar.

    When to waive: When the tension is computed by a rigging engineer.
    """
    return room.figures.hanging.sling_angle(thing)


def on_box(room: Room, thing: Held) -> Applies:
    """Whether an electrical box holds it."""
    on = room.figures.mounts.on(thing)
    return True if on == "electrical-box" else No("no electrical box holds it")


def box_window(room: Room, thing: Held) -> Windows:
    """Return what the box may carry: what is marked on a listed one, 6 lb on any other."""
    marked_kg = room.figures.hanging.box_mark_kg(thing)
    return at_most(BOX_KG if marked_kg is None else marked_kg, "kg")


@rule(
    "mount.electrical-box",
    level=Level.ERROR,
    basis=standard(
        "NFPA 70", "314.27", edition="2023", read=False, note="6 lb of a luminaire; of other equipment from memory"
    ),
    each=HELD,
    when=on_box,
    window=computed("kg", "the mass marked on a listed box; 2.7216 kg (6 lb) on any other", box_window),
    says="hangs {figure} on an electrical box; {window} wanted",
    at="mounting.on",
    caution=CAUTION + " A box is not a structural support.",
    since="0.1.0",
)
def electrical_box(room: Room, thing: Held) -> Figure:
    """No equipment hangs on an electrical box beyond what the box is listed and marked for.

    Why: A box is held by two short screws or a bar between joists.

    How decided: At most 6 lb on any box; more only as the box's own listing and mark say. A listing of the mount says
    nothing of the box.

    Remedy: Hang the device from structure beside the box.

    When to waive: Never; name the box's listing and its mark instead.
    """
    return room.figures.mounts.hung_mass(thing)


def in_grid(room: Room, thing: Held) -> Applies:
    """Whether it lies in a ceiling grid."""
    on = room.figures.mounts.on(thing)
    return True if on == "grid-ceiling" else No("it is in no ceiling grid")


@rule(
    "mount.grid-ceiling",
    level=Level.WARNING,
    basis=(
        practice("grid ceilings: one slack wire below 10 lb, two to 56 lb, direct support above"),
        standard("ASTM C635", "light duty", read=False, note="the grid is for tile only"),
    ),
    each=HELD,
    when=in_grid,
    window=at_most(25.4012, "kg"),
    says={
        "fail": "puts {figure} into a ceiling grid; {window} wanted, more hangs from structure",
        "none": "is in a ceiling grid without a wire of its own to structure; add one",
        "one": "has one wire to structure for {mass}; two from 4.5 kg (10 lb)",
    },
    after=("mount.secondary",),
    at="mounting",
    caution=CAUTION + " A light-duty grid carries tile only.",
    since="0.1.0",
)
def grid_ceiling(room: Room, thing: Held) -> Answer:
    """What sits in a ceiling grid hangs on wires of its own.

    Why: The grid is made for its tiles; a device in it needs a bridge and wires to structure.

    How decided: One wire below 4.5 kg (10 lb), two to 25.4 kg (56 lb), each at its own point; heavier devices hang from
    structure.

    Remedy: A tile bridge and wires to structure, or direct support.

    When to waive: When the ceiling's maker documents the load.
    """
    mounts = room.figures.mounts
    second = room.figures.hanging.secondary(thing)
    if second is None:
        return fails("none")
    mass = mounts.hung_mass(thing)
    if mounts.edge_case_mass(thing) >= ONE_WIRE_KG and need(second.count, second, "count") < 2:  # noqa: PLR2004  two
        return fails("one", mass=mass)
    return found(mass)


@rule(
    "mount.joist-load",
    level=Level.WARNING,
    basis=(
        standard("International Residential Code", "R301.5", read=False),
        practice("96 and 239 Pa (2 and 5 lbf/ft2) on a ceiling joist, a cautious choice of this rule book"),
    ),
    each=HELD,
    when=(fixed, on_ceiling),
    window=at_most(239.4, "Pa", note=95.8),
    says="with all else on its joist it adds {figure} to the ceiling; {window} wanted",
    at="mounting",
    caution=CAUTION + " Truss chords: ask the truss designer whatever the load.",
    since="0.1.0",
)
def joist_load(room: Room, thing: Held) -> Figure:
    """A device adds little to what its ceiling joist was built for.

    Why: A ceiling joist may have been built for 5 or 10 lbf/ft2 of ceiling and nothing else.

    How decided: Twice the weight over span and spacing, as a load on the joist's own area, together with everything
    else that hangs nearer across the joists than their spacing, or whose place is not given; above 96 Pa (2 lbf/ft2) a
    note, above 239 Pa (5 lbf/ft2) a warning. Where nobody says which way the joists run, the worse way is taken.

    Remedy: Spread it over two joists with blocking, or hang it near a wall.

    When to waive: When the joists are known to be built for a floor above.
    """
    return room.figures.hanging.joist_load(thing)
