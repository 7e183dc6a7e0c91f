"""What stands free: whether it tips."""

from __future__ import annotations

from typing import TYPE_CHECKING

from roomlint.design.base import need
from roomlint.design.listening import FREE
from roomlint.design.proofs import stated
from roomlint.design.shell import Treatment
from roomlint.design.supply import Rack
from roomlint.review import SOURCES, Cases, Level, No, at_least, fails, memory, passes, practice, rule, standard

from . import CAREFUL, CAUTION, HELD

if TYPE_CHECKING:
    from roomlint.design.listening import Loudspeaker, Subwoofer
    from roomlint.measure.holding import Held
    from roomlint.review import Applies, Figure, Room, Says, Windows

TIPPING = (
    standard("UL 1678", "16.3.1", read=False, note="10 degrees, for television stands"),
    practice("the same for loudspeakers, 12 degrees on thick carpet, a choice of this rule book"),
)
HARD = at_least(10.0, "deg")
CARPET = at_least(12.0, "deg")


def free(room: Room, thing: Held) -> Applies:
    """Whether it stands on the floor or on a stand by itself."""
    mounts = room.figures.mounts
    on = mounts.on(thing)
    if on not in FREE:
        return No("it does not stand free")
    if on == "furniture":
        return No("it stands on furniture, which is judged by its strap")
    if isinstance(thing, Treatment):
        return No("a panel on the floor leans or is boxed in")
    strap = stated(mounts.mounting(thing).strap)
    if strap is not None:
        return No(f"it is kept from tipping by a {strap.words}")
    return No("a rack is judged by its strap") if isinstance(thing, Rack) else True


def tip_window(room: Room, thing: Held) -> Windows:
    """Return how far it may lean, which is less on thick carpet."""
    mounting = room.figures.mounts.mounting(thing)
    return CARPET if need(mounting.carpet, mounting, "carpet") else HARD


@rule(
    "mount.tip-angle",
    level=Level.WARNING,
    basis=TIPPING,
    each=HELD,
    when=free,
    window=Cases("deg", (("on a hard floor", HARD), ("on thick carpet", CARPET)), tip_window),
    says="tips on a slope of {figure}; {window} wanted",
    at="mounting",
    caution=CAUTION + " Children climb: anchor what can tip.",
    since="0.1.0",
)
def tip_angle(room: Room, thing: Held) -> Figure:
    """What stands free tips no sooner than on a ten-degree slope.

    Why: Tall narrow cabinets and high stands fall on those who pull at them.

    How decided: Half the narrower side of the base over the height of the centre of gravity, as an angle: of the
    cabinet itself, or of the stand with what is on it, at the height where that is placed. 10 degrees, or 12 on thick
    carpet. A strapped one is left out.

    Remedy: A wider base, outriggers, or a strap to the wall.

    When to waive: When the cabinet is built in.
    """
    return room.figures.standing.tip_angle(thing)


@rule(
    "mount.push-over",
    level=Level.WARNING,
    basis=(
        standard("IEC 62368-1", "8.6.5", edition="2018", read=False, note="20 % of the weight, 250 N at most"),
        CAREFUL,
    ),
    each=HELD,
    when=free,
    window=at_least(1.0, ""),
    says="tips at {figure} times the push it must bear at its top; {window} wanted",
    at="mounting",
    caution=CAUTION + " Children climb: anchor what can tip.",
    since="0.2.0",
)
def push_over(room: Room, thing: Held) -> Figure:
    """What stands free bears a push of a fifth of its weight at its top.

    Why: Nobody tilts the floor; people lean and children pull.

    How decided: Push at the top that tips it, weight times half the base over height, over 20 % of the weight or 250 N,
    the lesser. The test is of equipment above 25 kg; put to all that stands, a choice of this rule book.

    Remedy: A wider base, outriggers, or a strap to the wall.

    When to waive: When the cabinet is built in.
    """
    return room.figures.standing.push_ratio(thing)


def on_furniture(room: Room, thing: Held) -> Applies:
    """Whether it stands on furniture, or is a rack, which is furniture itself."""
    on = room.figures.mounts.on(thing)
    if isinstance(thing, Rack) and on in FREE:
        return True
    return True if on == "furniture" else No("it stands on no furniture")


@rule(
    "mount.furniture-strap",
    level=Level.WARNING,
    basis=practice("national product-safety advice: anchor displays and furniture where children live"),
    each=HELD,
    when=on_furniture,
    says={
        "loose": "stands without a strap in a house with children; strap it to structure",
        "strapped": "kept from tipping by a {strap}",
        "grown": "no children in the house",
    },
    at="mounting",
    caution=CAUTION + " Children climb on furniture: anchor it and what stands on it.",
    since="0.1.0",
)
def furniture_strap(room: Room, thing: Held) -> Says:
    """A display, loudspeaker or rack on furniture or the floor is strapped where children live.

    Why: Most of the children killed by falling furniture were hit by a television with it.

    How decided: With children in the house the mounting says what keeps it from tipping and what that is attached to;
    the word none is a statement that nothing does. Without children it passes.

    Remedy: Strap the display and the furniture to framing.

    When to waive: When the furniture is built in and the display bolted to it.
    """
    strap = stated(room.figures.mounts.mounting(thing).strap)
    if strap is not None:
        return passes("strapped", strap=strap.words)
    children = need(room.design.project.children, room.design, "project.children")
    return fails("loose") if children else passes("grown")


def stands(room: Room, thing: Held) -> Applies:
    """Whether it stands, on whatever it does."""
    return True if room.figures.mounts.on(thing) in FREE else No("it does not stand free")


def strapped(room: Room, thing: Held) -> Applies:
    """Whether a strap is stated; what stands by itself without one is judged by how it stands."""
    mounting = room.figures.mounts.mounting(thing)
    if on_furniture(room, thing) is True:
        need(mounting.strap, mounting, "strap")
    judged = ("mount.furniture-strap", "mount.tip-angle", "mount.push-over")
    return True if stated(mounting.strap) is not None else No("no strap is there", unless=judged)


@rule(
    "mount.strap-rating",
    level=Level.WARNING,
    basis=memory("tip restraints are tested with a pull of 50 lbf", document="ASTM F3096"),
    each=HELD,
    when=(stands, strapped),
    window=at_least(222.4, "N"),
    says="is strapped by what is rated for {figure}; {window} wanted",
    cure=("mounting.strap.rating",),
    at="mounting.strap",
    caution=CAUTION + " Children climb: a strap is as good as what it is screwed to.",
    since="0.3.0",
)
def strap_rating(room: Room, thing: Held) -> Figure:
    """A strap that keeps something from tipping is rated for a pull of 222.4 N.

    Why: A child that climbs a drawer pulls with more than its weight.

    How decided: The strap's marked rating against the pull, 50 lbf, that restraints are tested with. From memory. On
    the floor and on a stand too: what a strap keeps is not judged by how far it may lean.

    Remedy: A strap of a marked rating, into framing.

    When to waive: A bracket of the maker, fastened as its instructions say.
    """
    return room.figures.standing.strap_rating(thing)


def on_plate(room: Room, source: Loudspeaker | Subwoofer) -> Applies:
    """Whether it stands on a stand."""
    return True if room.figures.mounts.on(source) == "stand" else No("it stands on no stand")


@rule(
    "mount.stand-plate",
    level=Level.WARNING,
    basis=practice("a cabinet stands with all its feet on the plate of its stand"),
    each=SOURCES,
    when=on_plate,
    window=at_least(0.0, "mm"),
    says={
        "fail": "its stand's plate is {figure} larger than what it stands on; {window} wanted",
        "negative": "its feet stand {size} over the plate of its stand",
    },
    at="mounting",
    caution=CAUTION,
    since="0.3.0",
)
def stand_plate(room: Room, source: Loudspeaker | Subwoofer) -> Figure:
    """A cabinet stands with all its feet on the plate of its stand.

    Why: A foot over the edge is found by whoever vacuums around it.

    How decided: Width and depth of the stand's plate less width and depth between the cabinet's feet, the smaller of
    both. The plate's own adhesive pads are not counted.

    Remedy: A stand with a larger plate, or a board that is bolted to it.

    When to waive: The cabinet is bolted to the plate through its own thread.
    """
    return room.figures.standing.plate_left(source)
