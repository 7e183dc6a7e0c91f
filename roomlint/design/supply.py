"""Electronics, cables, raceways and circuits."""

from __future__ import annotations

from typing import TYPE_CHECKING

from roomlint.design.along import Along
from roomlint.design.element import Element
from roomlint.design.keys import Text, choice, flag, ident, labelled, text, whole
from roomlint.design.listening import Mounting
from roomlint.design.measured import Measured, angle, length, quantity, surveyed
from roomlint.design.parts import Name, named, part, point, several, sheet, words
from roomlint.design.quantity import Quantity, exact
from roomlint.design.reader import nearest

if TYPE_CHECKING:
    from roomlint.design.reader import Book


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
    bonded = flag("Whether its metal is bonded to earth.")
    mass_kg = quantity("Mass with everything in it.", "mass", example="60 kg")
    depth_m = length("Outer depth.", high=3.0, example="0.60 m")
    mounting = part("How it is held.", Mounting)

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
    conductors = whole("How many conductors.", 1, 48, example=2)
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


PLUGS = (
    "nema-1-15", "nema-5-15", "nema-5-20", "bs1363", "cee7-4", "cee7-7", "cee7-16", "cee7-17", "as3112-10",
    "as3112-15", "iec60309-16", "iec60309-32",
)  # fmt: skip
"""Forms of plugs by the standard and its figure."""
SOCKETS = (
    "nema-5-15",
    "nema-5-20",
    "bs1363",
    "cee7-3",
    "cee7-5",
    "as3112-10",
    "as3112-15",
    "iec60309-16",
    "iec60309-32",
)
"""Forms of receptacles."""


class Receptacle(Along):
    """A receptacle (socket-outlet)."""

    KIND = "receptacle"

    id_key = ident()
    rating_a = quantity("Its rating.", "current", high=125.0, example="20 A")
    form = choice("Its form, by standard.", *SOCKETS)
    outlets = whole("How many plugs it takes: 1 for a single, 2 for a duplex or double.", 1, 6, example=2)
    spur = choice("Whether it is on a spur off a ring, and whether that is fused.", "none", "unfused", "fused")
    where = choice(
        "Where it is.", "habitable", "finished-basement", "unfinished-basement", "garage", "laundry", "kitchen",
        "bathroom", "crawl-space", "outdoors", key="place",
    )  # fmt: skip
    sink_m = Measured[Quantity | None](
        "To the edge of the nearest sink, the way a cord would take, or none.", "length", zero=True, high=50.0,
        example="1.20 m", surveyed=True, or_none=True,
    )  # fmt: skip
    wall = named("The wall it is on.", "surface", "rear")
    height_m = surveyed("Above the floor.", key="height", zero=True, high=20.0, example="0.45 m")
    facing_up = flag("Whether it faces up.")
    listed_for_floor = flag("Whether it is listed for facing up.")
    tamper_resistant = flag("Whether it is tamper resistant.")
    dimmed = flag("Whether a dimmer feeds it.")
    in_cabinet = flag("Whether it is in a cabinet, stage or riser.")

    def settle(self, book: Book) -> None:
        """Work out where it is along its wall."""
        self.begin(book.walls.get(self.given("wall") or ""), exact(0.0, "m"), book)

    @property
    def no_sink(self) -> bool:
        """Whether the file states that there is no sink near it."""
        return Receptacle.sink_m.says_none(self)


class Load(Element):
    """A load."""

    KIND = "load"

    id_key = ident()
    what = text("What it is.", "power amplifier", told=True)
    feeds = _element("Id of the element it is, when the design has it.")
    apparent_power_va = quantity("Nameplate apparent power.", "apparent_power")
    current_a = quantity("Nameplate current, instead of apparent_power.", "current", high=125.0, example="5 A")
    continuous = flag("Whether it is expected to run for three hours or more.")
    connection = choice("How it is connected.", "plug", "fastened")
    plug = choice("Form of its plug, by standard.", *PLUGS)
    fuse_a = quantity("Rating of the fuse in its plug.", "current", low=1.0, high=13.0, example="5 A")
    receptacle = Text[str | None]("The receptacle it is plugged into.", example="rack-1", most=63)
    cord_concealed = flag("Whether its cord runs through or inside a wall, floor or ceiling.")
    listed_inlet_kit = flag("Whether a listed inlet assembly is used for that.")
    linear_supply = flag("Whether it has a mains-frequency transformer supply.")


class Circuit(Element):
    """A branch circuit (final circuit)."""

    KIND = "circuit"

    id_key = ident()
    rating_a = quantity("Rating of its overcurrent device.", "current", high=125.0, example="20 A")
    voltage_v = quantity("Nominal voltage.", "voltage", low=12.0, high=480.0)
    conductor_m2 = quantity("Conductor size.", "conductor")
    material = choice("Conductor material.", "copper", "aluminium")
    length_m = length("One way, panel to farthest outlet.", example="14 m")
    installation = choice(
        "How the cable is laid.",
        "clipped",
        "conduit",
        "insulated-wall",
        "in-insulation",
    )
    arrangement = choice("How it runs from outlet to outlet.", "radial", "ring")
    dedicated = flag("Whether it feeds one piece of equipment only, an individual branch circuit.")
    feeds_lighting = flag("Whether it also feeds lighting.")
    lighting_va = quantity("Apparent power of that lighting.", "apparent_power", zero=True, example="120 VA")
    new = flag("Whether it is new or extended.")
    afci = flag("Whether it has arc-fault protection.")
    gfci = flag("Whether it has ground-fault protection.")
    rcd_a = quantity(
        "Rated residual current of its RCD, or none.", "current", low=0.001, high=1.0, example="30 mA", or_none=True
    )
    sequenced = flag("Whether its loads switch on one after another.")
    earth_lifted = flag("Whether a protective earth on it is lifted or adapted away.")
    panel = choice("The board that it starts from.", "service", "subpanel")
    feeder_drop = quantity(
        "Voltage drop of the feeder before it.", "ratio", low=0.0, high=0.2, zero=True, example="1.0 %"
    )
    receptacles = several("Its receptacles, or none.", Receptacle, most=40, what="receptacle", or_none=True)
    loads = several("Its loads, or none.", Load, most=60, what="load", or_none=True)

    @property
    def no_rcd(self) -> bool:
        """Whether the file states that there is no residual-current device."""
        return Circuit.rcd_a.says_none(self)

    def settle(self, book: Book) -> None:
        """See that loads are plugged into receptacles of their circuit, say one current, and forms fit its voltage."""
        self._fit_forms(book)
        known = [one.id for one in self.given("receptacles") or ()]
        for load in self.given("loads") or ():
            plugged = load.given("receptacle")
            if plugged is not None and plugged not in known:
                where = load.at.get("receptacle") or load.at
                book.cross(where, f"there is no receptacle {plugged!r} on this circuit; {nearest(plugged, known)}")
            power, current = load.given("apparent_power_va"), load.given("current_a")
            volts = self.given("voltage_v")
            if power is not None and current is not None and volts is not None:
                other = power.value / volts.value
                if not 1 / _AGREE <= current.value / other <= _AGREE:
                    text_of = f"{power.value:g} VA at {volts.value:g} V are {other:.1f} A, not {current.value:g} A."
                    book.cross(current.at, f"{text_of} Give one of the two.")

    def _fit_forms(self, book: Book) -> None:
        """Refuse receptacles that are made for another voltage than the circuit's."""
        volts = self.given("voltage_v")
        for one in self.given("receptacles") or ():
            form = one.given("form") or ""
            low, high = next((of for start, of in _VOLTS_OF.items() if form.startswith(start)), (0.0, 1000.0))
            if volts is not None and not low <= volts.value <= high:
                made = f"a receptacle to {form.upper()} is made for {low:g} to {high:g} V"
                book.cross(one.at.get("form") or one.at, f"{made}, and its circuit has {volts.value:g} V; correct one.")


_VOLTS_OF = {"nema-5": (100.0, 127.0), "bs1363": (200.0, 250.0), "cee7": (200.0, 250.0), "as3112": (200.0, 250.0)}
"""Nominal voltages of the circuits that forms of receptacles are made for, by how the form begins; from memory."""
_AGREE = 1.2
"""Two statements of one load that differ by more than this factor contradict each other."""
