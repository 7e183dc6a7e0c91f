"""What people sit on, look at and listen to, and how it is held up."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING, Any

from roomlint.design.element import ABSENT, Element
from roomlint.design.keys import choice, flag, formed, ident, labelled, number, text, whole
from roomlint.design.measured import angle, length, quantity, surveyed
from roomlint.design.parts import Each, Name, named, part, point, sheet
from roomlint.design.proofs import AnchorApproval, BoxListing, Engineer, FastenerReport, PullTest, Secondary, Strap
from roomlint.design.quantity import exact

if TYPE_CHECKING:
    from roomlint.design.measured import Measured
    from roomlint.design.quantity import Quantity
    from roomlint.design.reader import Book
    from roomlint.source.node import Node

_PROPORTIONS = "^[1-9][0-9]{0,2}([.][0-9]{1,4})?:[1-9][0-9]{0,2}([.][0-9]{1,4})?$"
HOLDERS = ("stand", "furniture", "grid-ceiling", "electrical-box")
"""What a thing may be held by besides a wall, the ceiling or the floor."""
FREE = frozenset({"floor", "stand", "furniture"})
"""Of all that, what a thing stands on."""
WOOD = frozenset({"stud", "joist", "blocking", "beam", "plywood-backing"})
MASONRY = frozenset({"masonry", "hollow-block", "concrete", "brick-veneer"})
"""Of what fasteners hold in, what is wood and what is masonry."""


EYE_UNDER_EAR_M = 0.10
LOWEST_EAR_M = 0.30
HEAD_OVER_EAR_M = 1.0
"""Whoever stands up is no higher over the ear that sat."""
"""With the head laid far back the eye is a little above the ear still; a hand's breadth for the tape, ours."""


class Seat(Element):
    """One seat, by its listener's ear."""

    KIND = "seat"

    id_key = ident("A name for the seat, unique in its list; the seats of a row are named after it, -1 the left-most.")
    count = whole(
        "How many seats side by side this entry stands for: a row, whose ear position is its middle.", 2, 20, example=3
    )
    spacing_m = surveyed("From ear to ear in a row.", high=5.0, example="0.65 m")
    ear = point("Position of the ear.", lowest=LOWEST_EAR_M)
    ear_above_m = surveyed(
        "Height of the ear above the riser or floor that the seat stands on, instead of the height of the ear.",
        high=3.0, example="1.10 m",
    )  # fmt: skip
    facing_deg = quantity(
        "Direction the listener faces: 0 deg the front wall (the default), positive to the left.", "angle",
        default=exact(0.0, "deg"), example="0 deg",
    )  # fmt: skip
    row = whole("Row, counted from the front.", 1, 12, example=1)
    reference = flag(
        "Whether it is the reference seat: the one the room is calibrated for; of a row with a middle seat, that one."
    )
    reference_number = whole("Which seat of a row is the reference seat, counted from the left.", 1, 20, example=2)
    eye_height_m = surveyed("Height of the eye; the ear height plus 17 mm when not given.", high=5.0, example="1.15 m")
    head_top_m = surveyed("Height of the top of the head.", high=5.0, example="1.25 m")
    back_top_m = surveyed("Height of the top of the seat back or headrest.", high=5.0, example="0.95 m")
    width_m = length("Of the whole seat.", high=10.0, example="0.65 m")
    depth_m = length("Upright, front to rear.", high=5.0, example="0.95 m")
    open_length_m = length("Front to rear with the recliner fully open.", high=5.0, example="1.70 m")
    recline_deg = angle("Of the back, from vertical.", 0.0, 90.0, told=True)
    riser_m = length(
        "Height of the platform it stands on; that of the room's riser under it when not given.", zero=True, high=3.0,
        example="0.30 m",
    )  # fmt: skip

    def settle(self, book: Book) -> None:
        """Refuse a head whose top is under its own ear, and eyes that are not in it."""
        ear, top, eye = self.given("ear"), self.given("head_top_m"), self.given("eye_height_m")
        if ear is not None and top is not None and top.at is not None:
            if top.value <= ear.z.value:
                book.cross(top.at, "the top of the head is not above the ear; both are heights above the floor.")
            elif top.value > max(ear.z.value, LOWEST_EAR_M) + HEAD_OVER_EAR_M:
                book.cross(top.at, "the top of the head is far above the ear; both are heights above the floor.")
        if ear is None or eye is None or eye.at is None:
            return
        if eye.value < ear.z.value - EYE_UNDER_EAR_M:
            book.cross(eye.at, "the eye is far below the ear; both are heights above the floor.")
        elif top is not None and top.value > ear.z.value and eye.value >= top.value:
            book.cross(eye.at, "the eye is above the top of the head; both are heights above the floor.")


class Fixing(Element):
    """How a thing is fastened, and what the fasteners really go into."""

    KIND = "fixing"
    PART = "fixing"

    fastener = choice(
        "Kind of fastener.", "lag-screw", "wood-screw", "nail", "drywall-screw", "through-bolt", "toggle",
        "expansion-anchor", "structural-screw", "steel-screw", "adhesive", "strap", "concrete-screw", "adhesive-anchor",
        "clamp",
    )  # fmt: skip
    into = choice(
        "What the fasteners hold in.", "stud", "joist", "blocking", "beam", "steel-stud", "board", "masonry",
        "hollow-block", "concrete", "glass", "tile", "plaster", "grid", "plywood-backing", "furring", "hat-channel",
        "brick-veneer",
    )  # fmt: skip
    diameter_m = length("Nominal diameter.", high=0.05, example="5/16 in")
    length_m = length("Length under the head.", high=1.0, example="3 in")
    thread_m = length("Length of thread, tip included.", high=1.0, example="2 in")
    count = whole("Fasteners that are really in framing.", 1, 32, example=4)
    top_count = whole("Those of them in the top row.", 1, 16, example=2)
    row_spacing_m = length(
        "Between the top and the bottom fastener row, when the mount's sheet does not say.", high=3.0, example="200 mm"
    )
    column_spacing_m = length(
        "Between the outermost columns of fasteners in framing; 0 mm when all stand in one column.",
        zero=True, high=3.0, example="406 mm",
    )  # fmt: skip
    plate_thickness_m = length(
        "Thickness of what the fasteners hold, when no mount's sheet says: a flange, a bracket.", high=0.1,
        example="3 mm",
    )  # fmt: skip
    standoff_m = length(
        "Spacers between what the fasteners hold and the board; none when not given.", zero=True, high=0.3,
        example="20 mm",
    )  # fmt: skip
    member_thickness_m = length(
        "Actual thickness of what the fasteners enter, along the fastener; a stud or joist has its framing's depth when"
        " not given.", high=1.0, example="38 mm",
    )  # fmt: skip
    edge_offset_m = length(
        "Distance of the fasteners from the middle of the stud's face.", zero=True, high=0.5, example="5 mm"
    )
    grain = choice("Which grain they enter.", "side", "end")
    wet = flag("Whether the wood is wet in service.")
    attic = flag("Whether the place is hotter than 100 degF in summer.")
    hottest_degc = quantity("How hot it gets there.", "temperature", low=-40.0, high=90.0, example="45 degC")
    embedment_m = length("How deep an anchor sits in its base.", high=1.0, example="60 mm")
    edge_distance_m = length("From the fasteners to the nearest edge of what they enter.", high=5.0, example="80 mm")
    anchor_spacing_m = length("Between neighbouring anchors.", high=3.0, example="150 mm")
    report = part("What the fastener's evaluation report allows, or none.", FastenerReport)
    anchor_approval = part("Approval document of an anchor in masonry or concrete, or none.", AnchorApproval)
    test = part("A pull test of such anchors in this base on site, or none.", PullTest)
    anchor_ultimate_n = quantity("Ultimate load the anchor's maker publishes.", "force", high=1e5, example="8 kN")
    backing = text("Backing plate or blocking behind the board.", "18 mm plywood between studs", proves=True)
    engineer = part("The engineer who decided, or none.", Engineer)

    def settle(self, book: Book) -> None:
        """Refuse counts and lengths of which the part is larger than the whole."""
        count, top = self.given("count"), self.given("top_count")
        if count is not None and top is not None and top > count:
            node = self.at.get("top_count") or self.at
            book.cross(node, f"{top} fasteners in the top row are more than the {count} there are.")
        thread, whole_m = self.given("thread_m"), self.given("length_m")
        if thread is not None and whole_m is not None and thread.value > whole_m.value:
            book.cross(thread.at, "the thread is longer than the fastener.")
        depth, thick_m = self.given("embedment_m"), self.given("member_thickness_m")
        if depth is not None and whole_m is not None and depth.value > whole_m.value:
            book.cross(depth.at, "the anchor sits deeper than it is long.")
        elif depth is not None and thick_m is not None and depth.value > thick_m.value:
            book.cross(depth.at, "the anchor sits deeper than what it enters is thick.")


class Mounting(Element):
    """How and where a thing is held."""

    KIND = "mounting"
    PART = "mounting"

    on = named(f"The name of a wall, or ceiling, floor, {', '.join(HOLDERS)}.", "surface", "ceiling", also="holder")
    product = sheet("The mount's product sheet.", "mount", "stand", example="articulated-mount")
    stand = sheet("The product sheet of the stand it is on.", "stand", example="stand-600")
    fixing = part("The fasteners.", Fixing)
    extension_m = length(
        "Reach in use, from the wall to the plane the device is bolted to; without it the mount's largest.",
        zero=True, high=3.0, example="120 mm",
    )  # fmt: skip
    swivel_deg = angle("Swivel in use, positive to the left.")
    tilt_deg = angle("Tilt in use, positive up.", -90.0, 90.0)
    drop_m = length("Length of a pole or suspension.", zero=True, high=10.0, example="0.60 m")
    secondary = part("What holds it if the mount fails, or none.", Secondary)
    secondary_fall_m = length("How far it falls before the secondary holds.", zero=True, high=2.0, example="20 mm")
    sling_angle_deg = angle("Angle of sling legs from the horizontal.", 1.0, 90.0, example="60 deg")
    breaking_load_n = quantity("Breaking load of the weakest part of the suspension.", "force", high=2e5,
                               example="5 kN")  # fmt: skip
    strap = part("What keeps it from tipping, or none.", Strap)
    box = part("What the electrical box that holds it is listed and marked for, or none.", BoxListing)
    accessories_kg = quantity("Mass of what is hung on as well.", "mass", zero=True, high=200.0, example="4 kg")
    carpet = flag("Whether it stands on thick carpet.")

    def settle(self, book: Book) -> None:
        """Take the stand from either key, and refuse both."""
        product, stand = self.given("product"), self.given("stand")
        if product is not None and product.kind == "stand":
            node = self.at.get("stand")
            if node is not None:
                book.cross(node, "name the stand once: as product or as stand.")
            self.put("stand", product)
            self.put("product", None)
        box, on = self.given("box"), self.given("on")
        if box is not None and not box.absent and on not in {None, "electrical-box"}:
            node = self.at.get("box") or self.at
            book.cross(node, f"a box is listed, and {on!r} holds it; what hangs from a box is `on: electrical-box`.")
        if stand is not None and product is not stand and on not in {None, "stand"}:
            book.cross(self.at.get("stand") or self.at, "what is on a stand is `on: stand`.")


class Aim(Element):
    """Where it points: at a seat, or by angles in the room."""

    KIND = "aim"
    PART = "aim"

    seat: Name[Seat | None] = Name("The seat it points at.", "seat", "middle", whole=True)
    azimuth_deg = angle(
        "Direction it faces in the room: 0 towards the front wall, positive to the left.", -360.0, 360.0
    )
    elevation_deg = angle("Upwards positive.", -90.0, 90.0)

    def settle(self, book: Book) -> None:
        """Refuse an aim at a seat and by angles too."""
        if self.at.get("seat") is not None and (self.at.get("azimuth") or self.at.get("elevation")) is not None:
            book.cross(self.at, "aim either at a seat or by angles, not both.")


class Departure(Element):
    """An open departure from the layout's window."""

    KIND = "departure"
    PART = "departure"

    because = text("Why the window is left.", "glass where the side loudspeaker belongs", required=True, told=True)
    meets = choice("The window that it is meant to meet instead.", "home-tolerance", "common-practice", "none")


class Mirrored(Each["tuple[str, ...]"]):
    """The two ids of a mirrored pair."""

    def take(self, node: Node, book: Book, element: Element) -> Any:  # noqa: ANN401
        """Return the ids; the element goes by the first, after which its parts are named."""
        names = super().take(node, book, element)
        if names is not ABSENT and len(names) == self.least and element.at.get("id") is None:
            element.__dict__["id"] = names[0]
        return names

    def schema(self, parts: dict[str, Any]) -> dict[str, Any]:
        """Return a list of two, with an example."""
        return super().schema(parts) | {"examples": [["left", "right"]]}


def mirrored() -> Mirrored:
    """Declare the two ids of a mirrored pair."""
    return Mirrored(
        "Ids of two that are mirrored, the left one first, instead of an id: everything else here is the left one's.",
        ident("An id."), 2, least=2, told=True,
    )  # fmt: skip


def boundary_gain() -> Measured[Quantity | None]:
    """Declare what surfaces near a source add at the seats."""
    return quantity(
        "What walls and floor near it add at the seats over free field, as measured or computed.", "level", low=0.0,
        high=18.0, zero=True, example="3 dB",
    )  # fmt: skip


def pair_middle() -> Measured[Quantity | None]:
    """Declare the line that a pair is mirrored about."""
    return surveyed(
        "How far from the left the line is that a pair is mirrored about; the middle of the room when not given.",
        high=50.0, example="2.10 m",
    )  # fmt: skip


class Loudspeaker(Element):
    """A loudspeaker."""

    KIND = "loudspeaker"

    id_key = ident(required=False)
    pair = mirrored()
    pair_middle_m = pair_middle()
    label = labelled("Its channel's loudspeaker label.")
    product = sheet("Its product sheet.", "loudspeaker", example="wall-two-way")
    position = point("Position of its acoustic centre.")
    aim = part("Where it points.", Aim)
    mounting = part("How it is held.", Mounting)
    departure = part("If it leaves its label's window on purpose.", Departure)
    tap_w = quantity(
        "The tap that its transformer is set to, on a line of constant voltage.", "power", high=1000.0, example="30 W"
    )
    behind_screen = flag("Whether it stands behind the screen.")
    port_clearance_m = surveyed("Clearance in front of the port, as measured.", zero=True, high=20.0, example="200 mm")
    boundary_gain_db = boundary_gain()

    mirrors: Loudspeaker | None = None
    """The left one of its pair, whose values it mirrors; None for any but the right one of a pair."""


class Subwoofer(Element):
    """A subwoofer."""

    KIND = "subwoofer"

    id_key = ident(required=False)
    pair = mirrored()
    pair_middle_m = pair_middle()
    label = labelled("LFE1 or LFE2 when it has that channel.")
    product = sheet("Its product sheet.", "subwoofer", example="sealed-subwoofer")
    position = point("Position of its driver.")
    facing_deg = angle("Direction its front faces: 0 deg towards the front wall, positive to the left.", -180.0, 180.0)
    mounting = part("How it is held.", Mounting)
    level_db = quantity(
        "Level set at it, besides what is entered for it in the processor.",
        "level",
        low=-60.0,
        high=24.0,
        example="-1.5 dB",
    )
    delay_s = quantity("Delay set at it, besides what is entered for it in the processor.", "time", high=0.5, zero=True)
    inverted = flag("Whether its polarity is turned at it, besides what is entered for it in the processor.")
    low_pass_hz = quantity(
        "Frequency of its own low-pass, or none where that is off or bypassed.", "frequency", low=20.0, high=1000.0,
        example="120 Hz", or_none=True,
    )  # fmt: skip
    port_clearance_m = surveyed("Clearance in front of the port, as measured.", zero=True, high=20.0, example="200 mm")
    boundary_gain_db = boundary_gain()

    mirrors: Subwoofer | None = None
    """The left one of its pair, as for a loudspeaker."""

    @property
    def no_low_pass(self) -> bool:
        """Whether the file states that its own low-pass is off."""
        return Subwoofer.low_pass_hz.says_none(self)


class Projector(Element):
    """The projector."""

    KIND = "projector"
    ID = "projector"

    id_key = ident(required=False)
    product = sheet("Its product sheet.", "projector", example="projector-ceiling")
    lens = point("Position of the lens.")
    mounting = part("How it is held.", Mounting)


class Picture(Element):
    """The picture: a display or a screen, its lit area and where it is."""

    KIND = "picture"
    ID = "picture"

    kind = choice("How it is made.", "display", "projection")
    product = sheet("Product sheet of the display or screen.", "display", "screen", example="screen-woven")
    centre = point("Middle of the picture.")
    width_m = length("Width of the lit picture.", high=20.0)
    height_m = length("Height of the lit picture.", high=20.0, example="1.30 m")
    diagonal_m = length(
        "Diagonal of the lit picture, with proportions, instead of width and height.", high=20.0, example="65 in"
    )
    proportions = formed("Width to height of the lit picture, in quotes.", _PROPORTIONS, "16:9")
    lines = whole("Pixels over the height of the picture; a projector's own are on its sheet.", 240, 9000, example=2160)
    formats: Each[tuple[float, ...]] = Each(
        "Aspect ratios that are shown.", number("Width by height.", 1.0, 4.0, example=2.39), 8
    )
    transparent = flag("Whether sound passes through the screen.")
    ambient_lx = quantity("Light on the screen when watching.", "illuminance", zero=True)
    over_fire = flag("Whether a fireplace or a stove is below it.")
    warmest_degc = quantity(
        "Warmest air at it, measured while the fire burns.", "temperature", high=150.0, example="38 degC"
    )
    mounting = part("How it is held.", Mounting)
    projector = part("The projector.", Projector)

    def settle(self, book: Book) -> None:
        """Work out width and height of the diagonal and the proportions."""
        diagonal, proportions = self.given("diagonal_m"), self.given("proportions")
        sizes = [self.at.get(key) for key in ("width", "height")]
        if diagonal is None or proportions is None:
            lone = self.at.get("proportions") if diagonal is None else self.at.get("diagonal")
            if lone is not None and self.at.get("diagonal" if diagonal is None else "proportions") is None:
                wanted = "diagonal" if diagonal is None else 'proportions, such as "16:9"'
                book.cross(lone, f"a picture's size is its diagonal with its proportions: give {wanted} too.")
            return
        for size in sizes:
            if size is not None:
                book.cross(size, "give the picture's width and height, or its diagonal and proportions, not both.")
        width, height = (float(part) for part in proportions.split(":"))
        over = math.hypot(width, height)
        for attr, share in (("width_m", width / over), ("height_m", height / over)):
            self.put(attr, diagonal * share, "diagonal_m", "proportions")
            book.derive(self, attr.removesuffix("_m"), diagonal * share, "diagonal")
