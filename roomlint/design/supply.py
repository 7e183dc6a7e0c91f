"""Electronics, cables and raceways."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from roomlint.design.element import Element
from roomlint.design.keys import Number, choice, flag, ident, labelled, whole
from roomlint.design.listening import Mounting
from roomlint.design.measured import angle, length, quantity, surveyed
from roomlint.design.parts import Name, named, part, point, several, sheet, words
from roomlint.design.wiring import PLUGS, SOCKETS, Circuit, Load, Receptacle, Unit

if TYPE_CHECKING:
    from roomlint.design.quantity import Quantity
    from roomlint.design.reader import Book

__all__ = [
    "PLUGS",
    "POWERED",
    "SOCKETS",
    "Amplifier",
    "Cable",
    "Circuit",
    "Electronics",
    "Feed",
    "Load",
    "Processor",
    "Raceway",
    "Rack",
    "Receptacle",
    "Sent",
    "Unit",
    "once",
]  # fmt: skip


def _element(about: str, *, key: str = "") -> Name[str | None]:
    return named(about, "element", "amplifier-ear", key=key)


def once(element: Element, key: str, book: Book) -> None:
    """Tell of every name that stands twice in one list."""
    names = element.given(key) or ()
    for name in dict.fromkeys(name for name in names if names.count(name) > 1):
        book.cross(element.at.get(key) or element.at, f"{name!r} stands twice here; name it once.")


class Sent(Element):
    """One line output of the processor."""

    KIND = "line output"

    output = whole("Number of the output.", 1, 64, example=2)
    plays = words(
        "Ids of what plays its signal, by whatever amplifier.",
        named("Id of a loudspeaker or subwoofer.", "loudspeaker or subwoofer", "side-left"), 16,
    )  # fmt: skip

    output.required = plays.required = True

    @property
    def number(self) -> str:
        """Its number, as a sentence holds it."""
        return str(self.output)

    def settle(self, book: Book) -> None:
        """Name it by its number, and refuse a name that stands twice."""
        self.__dict__["id"] = str(self.given("output"))
        once(self, "plays", book)


class Feed(Element):
    """One output."""

    KIND = "output"

    output = whole("Number of the output.", 1, 64, example=2)
    loudspeakers = words(
        "Ids of what it drives.",
        named("Id of a loudspeaker or subwoofer.", "loudspeaker or subwoofer", "side-left"), 8,
    )  # fmt: skip
    wiring = choice("How several are wired.", "parallel", "series")
    bridged = flag("Whether two channels are bridged into it; they are not where nothing is said.")
    line_output = whole("Number of the processor's line output that is patched to its input.", 1, 64, example=2)

    output.required = loudspeakers.required = True

    def settle(self, book: Book) -> None:
        """Name it by its output, and refuse a name that stands twice."""
        self.__dict__["id"] = str(self.given("output"))
        once(self, "loudspeakers", book)


class Processor(Element):
    """The processor."""

    KIND = "processor"
    ID = "processor"

    id_key = ident(required=False)
    product = sheet("Its product sheet.", "processor", example="processor-16")
    unfitted = words("Labels of channels left out on purpose.", labelled("A label."), 24)
    outputs = several("What each of its line outputs sends.", Sent, most=80)
    feeds = several("What each output of the amplifier built into it drives.", Feed, most=64)


class Amplifier(Element):
    """An amplifier."""

    KIND = "amplifier"

    id_key = ident()
    product = sheet("Its product sheet.", "amplifier", example="amplifier-seven")
    rack = named("The rack it is in.", "rack", "rack")
    feeds = several("What each output drives.", Feed, most=64)


class Rack(Element):
    """A rack or cabinet."""

    KIND = "rack"

    id_key = ident()
    position = point("Middle of its front at its lower edge.")
    facing_deg = angle(
        "Direction its front faces: 0 deg towards the front wall, positive to the left; off the nearest wall when not"
        " given."
    )
    width_m = length("Outer width.", high=3.0, example="0.60 m")
    height_m = length("Outer height.", high=3.0, example="1.20 m")
    enclosed = flag("Whether it is closed.")
    airflow_m3_s = quantity("Air moved through it, or none where nothing moves it.", "airflow", or_none=True)
    inlet_degc = quantity("Air temperature at the inlet.", "temperature", example="24 degC")
    contains = words("Ids of what is in it.", _element("Id of an element."), 64)
    front_clear_m = surveyed("Free depth in front.", zero=True, high=20.0, example="0.90 m")
    rear_clear_m = surveyed("Free depth behind.", zero=True, high=20.0, example="0.70 m")
    service = choice("From where its rear is reached.", "rear", "slides-out", "front")
    metal = flag("Whether it is made of metal.")
    bonded = flag("Whether its metal is bonded to earth.")
    mass_kg = quantity("Mass with everything in it.", "mass", example="60 kg")
    depth_m = length("Outer depth.", high=3.0, example="0.60 m")
    mounting = part("How it is held.", Mounting)

    @property
    def sizes(self) -> tuple[tuple[Quantity | None, str], ...]:
        """Its width, height and depth, each with its key."""
        return (self.width_m, "width"), (self.height_m, "height"), (self.depth_m, "depth")

    @property
    def no_airflow(self) -> bool:
        """Whether the file states that nothing moves air through it."""
        return Rack.airflow_m3_s.says_none(self)


class Electronics(Element):
    """What drives the loudspeakers."""

    KIND = "electronics"

    processor = part("The processor.", Processor)
    amplifiers = several("The amplifiers, or none.", Amplifier, most=24, what="amplifier", or_none=True)
    racks = several("Where equipment stands, or none.", Rack, most=12, what="rack", names="rack", or_none=True)


class Raceway(Element):
    """A raceway."""

    KIND = "raceway"

    id_key = ident()
    kind = choice("Kind.", "emt", "ent", "pvc", "trunking", "sleeve")
    size = choice("Trade size.", "1/2", "3/4", "1", "1-1/4", "1-1/2", "2")
    inner_diameter_m = length("Inner diameter, where no trade size tells it.", high=0.5, example="35 mm")
    inner_area_m2 = quantity("Inner cross-section of one that is not round.", "area", high=0.1, example="1500 mm2")
    length_m = length("Length.", example="6 m")
    partition = flag("Whether a partition divides power in it from everything else.")


POWERED = ("type-1", "type-2", "type-3", "type-4")
"""Types of power over the pairs of a network cable, by IEEE 802.3."""


_THERE_AND_BACK = 2


class Cable(Element):
    """One run."""

    KIND = "cable"

    id_key = ident()
    carries = choice(
        "What it carries.", "loudspeaker", "video", "network", "usb", "control", "line-level", "mains", "trigger",
        "antenna", "lighting",
    )  # fmt: skip
    start = _element("Id of the element it starts at.", key="from")
    end = named("Id of the element it ends at.", "element", "side-left", key="to")
    length_m = length("One way.", example="9 m")
    conductor_m2 = quantity("Size of one conductor.", "conductor")
    conductors: Number[int | None] = Number("How many conductors.", 1, 48, example=2, only_whole=True, told=True)
    outer_diameter_m = length("Outer diameter; of a flat cable the larger side.", high=0.2, example="8 mm")
    marking = choice(
        "Marking printed on the jacket.", "CL2", "CL3", "CL2R", "CL3R", "CL2P", "CL3P", "CL2X", "CL3X", "CM", "CMG",
        "CMR", "CMP", "CMX", "PLTC", "NM", "none",
    )  # fmt: skip
    in_wall = flag("Whether it runs concealed.")
    plenum = flag("Whether it runs through a space that moves air for the building.")
    riser = flag("Whether it runs up a shaft, or through floors of a building of more than two dwellings.")
    raceway = named("The raceway it runs in, or none.", "raceway", "picture-sleeve", or_none=True)
    beside_power_m = quantity(
        "Distance to power conductors that it runs beside, or none where it runs beside none.", "length", zero=True,
        high=50.0, example="300 mm", or_none=True,
    )  # fmt: skip
    power_exception = choice(
        "What stands between where the distance is smaller, or none.", "power-in-raceway", "power-sheathed",
        "cable-in-raceway", "tube", "none",
    )  # fmt: skip
    edge_distance_m = quantity(
        "From its hole, or from itself, to the nearest edge of the framing, or none where it passes no framing.",
        "length", zero=True, high=1.0, example="40 mm", or_none=True,
    )  # fmt: skip
    nail_plate = flag("Whether a steel plate covers it.")
    penetrates = words(
        "Walls, ceiling and floor that it passes through, into another space; an empty list where it passes none.",
        named("Name of the surface.", "surface", "rear"), 8,
    )  # fmt: skip
    fire_stopped = flag("Whether a listed system closes its hole where it passes a rated surface.")
    wall = named("The wall that it runs concealed in.", "surface", "rear")
    depth_m = length("How deep it lies behind the surface of the wall.", zero=True, high=0.5, example="60 mm")
    zone = choice(
        "The zone that it runs in where it lies less deep: level or plumb to an accessory, within 150 mm of the top of"
        " the wall or of a corner, or none of these.", "to-accessory", "top", "corner", "none",
    )  # fmt: skip
    protection = choice("What keeps nails from it in the wall.", "earthed-armour", "earthed-conduit", "none")
    active = flag("Whether it has electronics or is optical.")
    rate_gb_s = quantity("Data rate.", "data_rate")
    bend_radius_m = length("Smallest bend radius.", high=5.0, example="40 mm")
    powered = choice("Power over its pairs, by type of IEEE 802.3, or none.", "none", *POWERED)
    bundle = whole("Cables in the bundle, itself among them.", 1, 200, example=12)
    ambient_degc = quantity("Warmest air around it.", "temperature", example="40 degC")

    @property
    def beside_no_power(self) -> bool:
        """Whether the file states that it runs beside no power."""
        return Cable.beside_power_m.says_none(self)

    @property
    def in_no_framing(self) -> bool:
        """Whether the file states that it passes no framing."""
        return Cable.edge_distance_m.says_none(self)

    def settle(self, book: Book) -> None:
        """Refuse a cable that is thinner than its conductors, and one conductor to a loudspeaker."""
        to_loudspeaker = self.given("carries") == "loudspeaker"
        count, size, outer = self.given("conductors"), self.given("conductor_m2"), self.given("outer_diameter_m")
        if to_loudspeaker and count == 1:
            book.cross(self.at.get("conductors") or self.at, "a loudspeaker wants two conductors, there and back.")
        least = max(count or 0, _THERE_AND_BACK if to_loudspeaker else 1)
        if size is not None and outer is not None and math.pi / 4.0 * outer.value**2 < least * size.value:
            many = f"{least} conductors are" if least > 1 else "conductor is"
            book.cross(outer.at, f"its {many} thicker than the whole cable; correct one of the two.")
