"""Product sheets: the data of one product each."""

from __future__ import annotations

from typing import TYPE_CHECKING

from roomlint.design.element import Element
from roomlint.design.keys import Number, Text, choice, flag, formed, ident, labelled, number, text, whole
from roomlint.design.measured import angle, length, quantity
from roomlint.design.parts import Each, part, several, words
from roomlint.source.say import a

if TYPE_CHECKING:
    from roomlint.design.quantity import Quantity
    from roomlint.design.reader import Book

_PATTERN = "^[0-9]{2,4}x[0-9]{2,4}$"
_THREAD = "^M[0-9]{1,2}$"
_COUNTS = "^[0-9]{1,2}[+][0-9]{1,2}[+][0-9]{1,2}$"


class Port(Element):
    """The opening of a vented cabinet."""

    KIND = "port"

    face = choice("Which face it is in.", "rear", "front", "bottom", "top", "side", "none", required=True)
    diameter_m = length("Diameter, or that of a circle of the same area.", high=0.5, example="80 mm")
    clearance_m = length("Clearance the maker asks for.", high=5.0, zero=True, example="100 mm")


class Driver(Element):
    """One driver of a cabinet's front, and the band that its crossovers leave it."""

    KIND = "driver"

    right_m = length(
        "To the right of the middle of the front, seen from in front; left of it negative.", low=-2.0, high=2.0,
        zero=True, example="90 mm",
    )  # fmt: skip
    up_m = length(
        "Above the middle of the front; in the middle when not given.", low=-2.0, high=2.0, zero=True, example="0 mm"
    )
    from_hz = quantity(
        "Crossover that its band begins at; nothing begins it when not given.", "frequency", key="from",
        example="300 Hz",
    )  # fmt: skip
    to_hz = quantity(
        "Crossover that its band ends at; nothing ends it when not given.", "frequency", key="to", example="2.5 kHz"
    )

    right_m.required = True

    def settle(self, book: Book) -> None:
        """Refuse a band that ends before it begins."""
        low, high = self.given("from_hz"), self.given("to_hz")
        if low is not None and high is not None and low.value >= high.value:
            book.cross(low.at, "a driver's band does not begin below its end.")


_LEAST_OVER_RATED = 1.25
"""A cabinet is rated at no more than 1.25 times its least impedance (IEC 60268-5, second-hand); no more this way."""


class Transducer(Element):
    """What a loudspeaker or subwoofer does."""

    KIND = "loudspeaker data"

    sensitivity_db = quantity(
        "Sound pressure level at 1 m for the stated drive.", "level", low=50.0, high=125.0, example="88 dB"
    )
    drive = choice("What the sensitivity is stated for.", "2.83 V", "1 W")
    impedance_ohm = quantity("Rated impedance.", "impedance", low=1.0, high=200.0)
    minimum_impedance_ohm = quantity("Least impedance in its band.", "impedance", low=0.5, high=200.0, example="4 ohm")
    power_rating_w = quantity("Rated noise power.", "power", high=10000.0)
    maximum_level_db = quantity("Largest level at 1 m in free field.", "level", low=60.0, high=150.0, example="112 dB")
    low_limit_hz = quantity("Lower limit of its band.", "frequency", high=2e4, example="55 Hz")
    high_limit_hz = quantity("Upper limit of its band.", "frequency", example="20 kHz")
    horizontal_deg = quantity(
        "Full horizontal angle between the -6 dB points.", "angle", key="horizontal_coverage", low=0.0, high=360.0,
        example="90 deg",
    )  # fmt: skip
    vertical_deg = quantity(
        "Full vertical angle between the -6 dB points.", "angle", key="vertical_coverage", low=0.0, high=360.0,
        example="60 deg",
    )  # fmt: skip
    baffle_deg = angle(
        "Angle between the mounting plane and the baffle, downwards when mounted on a wall; 0 deg for an ordinary box.",
        -90.0, 90.0, key="baffle_angle", example="0 deg",
    )  # fmt: skip
    driver_spacing_m = length(
        "Between the centres of two drivers that share a band side by side.", high=3.0, example="150 mm"
    )
    crossover_hz = quantity(
        "Internal crossover of that pair, above which a driver in the middle plays.", "frequency", example="2.2 kHz"
    )
    drivers = several(
        "Every driver of the front, in place of driver_spacing and crossover: for two that do not share one band.",
        Driver, most=12,
    )  # fmt: skip
    placement = words(
        "Where it is meant to be.",
        choice("A placement.", "in-wall", "on-wall", "in-ceiling", "stand", "floor", "behind-screen"), 6,
    )  # fmt: skip
    port = part("The opening of a vented cabinet.", Port)
    taps: Each[tuple[Quantity, ...]] = Each(
        "Taps of its transformer for a line of constant voltage, or an empty list.",
        quantity("A tap.", "power", high=1000.0, example="30 W"), 12,
    )  # fmt: skip
    cutout_width_m = length("Width of the hole that it wants in the board.", high=3.0, example="230 mm")
    mounting_depth_m = length("Depth that it wants behind the face of the board.", high=2.0, example="95 mm")
    base_width_m = length("Width between the feet.", high=5.0, example="0.25 m")
    base_depth_m = length("Depth between the feet.", high=5.0, example="0.30 m")
    centre_of_gravity_m = length("Height of the centre of gravity.", high=5.0, example="0.45 m")

    def settle(self, book: Book) -> None:
        """Refuse a band that ends before it begins, and a least impedance far above the rated one."""
        low, high = self.given("low_limit_hz"), self.given("high_limit_hz")
        if low is not None and high is not None and low.value >= high.value:
            book.cross(low.at, "the lower limit of the band is not below the upper one.")
        rated, least = self.given("impedance_ohm"), self.given("minimum_impedance_ohm")
        if rated is not None and least is not None and least.value > _LEAST_OVER_RATED * rated.value:
            book.cross(least.at, f"the least impedance is far above the rated {rated.value:g} ohm; correct one.")


class LeastLoad(Element):
    """The least load while so many channels are driven at once."""

    KIND = "least load"

    driven = whole("Channels driven at once, at most.", 1, 64, example=2)
    load_ohm = quantity("Least rated load then.", "impedance", low=0.5, high=200.0, example="4 ohm")

    driven.required = load_ohm.required = True


class RatedPower(Element):
    """The power that an amplifier is rated for into another load."""

    KIND = "rated power"

    load_ohm = quantity("The load.", "impedance", low=0.5, high=200.0, example="4 ohm")
    power_w = quantity("Rated power a channel into it, all channels driven.", "power", high=10000.0, example="200 W")

    load_ohm.required = power_w.required = True


class AmplifierData(Element):
    """What an amplifier does; of a processor, the amplifier that is built into it."""

    KIND = "amplifier data"

    channels = whole("Channels.", 1, 64, example=7)
    power_w = quantity("Rated power a channel, all channels driven.", "power", high=10000.0)
    power_into_ohm = quantity("The load that power is stated for.", "impedance", low=1.0, high=200.0)
    powers = several("Rated power into other loads.", RatedPower, most=8)
    minimum_load_ohm = quantity(
        "Least rated load with all channels driven.", "impedance", low=0.5, high=200.0, example="4 ohm"
    )
    least_loads = several("Where that depends on how many channels are driven.", LeastLoad, most=8)
    bridged_load_ohm = quantity(
        "Least rated load of two channels that are bridged, or none where they cannot be.", "impedance", low=0.5,
        high=200.0, example="8 ohm", or_none=True,
    )  # fmt: skip
    line_voltage_v = quantity(
        "Voltage of its output for a line of transformers, or none where it has none.", "voltage", low=20.0, high=200.0,
        example="70.7 V", or_none=True,
    )  # fmt: skip
    damping_factor = number("Damping factor into 8 ohm.", 1, 100000, example=200)
    technology = choice("Output stage.", "class-ab", "class-d")
    output_class = choice("Marked output wiring class.", "class-1", "class-2", "class-3")
    linear_supply = flag("Whether it has a mains-frequency transformer.")

    @property
    def no_line(self) -> bool:
        """Whether the sheet states that it has no output for a line of constant voltage."""
        return AmplifierData.line_voltage_v.says_none(self)

    @property
    def no_bridge(self) -> bool:
        """Whether the sheet states that its channels cannot be bridged."""
        return AmplifierData.bridged_load_ohm.says_none(self)


class Taken(Element):
    """A layout that a processor takes, and which of its channels may be declared and not fitted."""

    KIND = "layout taken"

    layout = formed("Counts of upper, ear-layer and bottom channels, as in a layout's name.", _COUNTS, "6+7+0")
    unfitted = words("Labels of it that may be declared and not fitted.", labelled("A label."), 24)

    layout.required = True


class ProcessorData(Element):
    """What a processor decodes, sends and sets; low-frequency channels are not counted among the channels."""

    KIND = "processor data"

    decoded = whole("Channels it decodes.", 1, 64, example=15)
    processed = whole("Channels it sets the level and the delay of, subwoofers apart.", 1, 64, example=15)
    outputs = whole("Line outputs of these channels, subwoofers apart.", 0, 64, example=15)
    subwoofer_outputs = whole("Subwoofer outputs whose level and delay it sets apart.", 0, 32, example=2)
    layouts = several("The layouts it takes.", Taken, most=60)
    delay_range_s = quantity("Largest delay of one channel.", "time", high=5.0, example="40 ms")
    delay_step_s = quantity("Step of the delay.", "time", high=0.002, example="0.1 ms")
    distance_step_m = length("Step of the distance, when it takes distances.", high=1.0, example="10 mm")
    assumed_temperature_degc = quantity("Temperature it assumes.", "temperature")
    speed_of_sound_m_s = quantity("Speed of sound it assumes.", "speed", low=300.0, high=380.0)
    audio_latency_s = quantity("Its own latency.", "time", zero=True, high=5.0, example="12 ms")


class MountData(Element):
    """What a mount carries and how far it moves."""

    KIND = "mount data"

    motion = choice("How it moves.", "fixed", "tilt", "swivel", "articulated", "pole")
    rated_mass_kg = quantity("Rated mass of the device.", "mass", high=500.0, example="45 kg")
    reach_m = length(
        "Largest distance from the wall to the plane the device is bolted to.", zero=True, high=3.0, example="0.50 m"
    )
    side_reach_m = length(
        "Largest sideways distance of the device from the fasteners.", zero=True, high=3.0, example="0.25 m"
    )
    row_spacing_m = length("Between the top and bottom fastener rows.", high=3.0, example="200 mm")
    top_fasteners = whole("Fasteners in the top row.", 1, 16, example=2)
    fasteners = whole("All fasteners.", 1, 32, example=4)
    plate_thickness_m = length("Thickness of the plate at the fasteners.", high=0.1, example="3 mm")
    plate_holes_m = length("Largest horizontal distance between holes.", zero=True, high=3.0, example="406 mm")
    patterns = words("Hole patterns it takes, in mm.", formed("Width x height.", _PATTERN, "400x400"), 40)
    screws = words("Threads it takes.", formed("A thread.", _THREAD, "M8"), 8)
    swivel_deg = angle("Swivel to each side.", 0.0, 180.0, example="45 deg")
    tilt_deg = angle("Tilt up or down.", 0.0, 180.0, example="15 deg")
    listed = text("Listing document.", "listing number", told=True)
    breaking_load_n = quantity("Breaking load.", "force", high=2e5, example="5 kN")

    def settle(self, book: Book) -> None:
        """Refuse more fasteners in the top row than there are."""
        every, top = self.given("fasteners"), self.given("top_fasteners")
        if every is not None and top is not None and top > every:
            book.cross(self.at.get("top_fasteners") or self.at, f"{top} in the top row are more than all {every}.")


class StandData(Element):
    """What a stand stands on."""

    KIND = "stand data"

    base_width_m = length("Width between the feet.", high=5.0, example="0.30 m")
    base_depth_m = length("Depth between the feet.", high=5.0, example="0.35 m")
    plate_width_m = length("Width of the top plate.", high=5.0, example="0.20 m")
    plate_depth_m = length("Depth of the top plate.", high=5.0, example="0.20 m")
    centre_of_gravity_m = length("Height of its own centre of gravity.", high=5.0, example="0.25 m")
    rated_mass_kg = quantity("Rated mass of what stands on it.", "mass", example="20 kg")


def _ratio(about: str, low: float, high: float, example: float) -> Number[float | None]:
    return number(about, low, high, example=example)


class PictureData(Element):
    """What a display, screen or projector shows."""

    KIND = "picture data"

    diagonal_m = length("Diagonal of the picture.", high=20.0, example="65 in")
    aspect = _ratio("Width by height.", 1, 4, 1.7778)
    lines = whole("Vertical resolution in pixels.", 240, 9000, example=2160)
    gain = _ratio("Screen gain.", 0.1, 5, 1.0)
    half_gain_deg = angle("Angle at which the gain has halved.", 1.0, 90.0, example="35 deg")
    transparent = flag("Whether sound passes through.")
    loss_db = quantity("Sound lost in passing, at 8 kHz.", "level", low=0.0, high=40.0, zero=True, example="2 dB")
    pattern = formed("Hole pattern in mm, width x height.", _PATTERN, "400x400")
    screw = formed("Thread of its holes.", _THREAD, "M8")
    throw_min = _ratio("Least throw distance by picture width.", 0.1, 20, 1.35)
    throw_max = _ratio("Largest throw distance by picture width.", 0.1, 20, 2.2)
    shift_reference = choice("What shift is a percentage of.", "full-height", "half-height")
    shift_vertical = _ratio("Vertical shift in percent.", 0, 500, 60)
    shift_horizontal = _ratio("Horizontal shift in percent.", 0, 500, 25)
    luminous_flux_lm = quantity("Light in the mode that is used.", "luminous_flux")
    contrast = _ratio("White over black, one after the other in the dark, in the mode that is used.", 10, 1e7, 2000)
    noise_db = quantity("A-weighted noise at 1 m.", "level", low=0.0, high=90.0, zero=True, example="26 dB")
    video_latency_s = quantity("Its latency.", "time", zero=True, high=5.0, example="30 ms")

    def settle(self, book: Book) -> None:
        """Refuse a throw whose least is more than its largest."""
        least, largest = self.given("throw_min"), self.given("throw_max")
        if least is not None and largest is not None and least > largest:
            book.cross(self.at.get("throw_min") or self.at, "the least throw is more than the largest.")


DATA_OF = {
    "loudspeaker": ("loudspeaker",), "subwoofer": ("loudspeaker",), "amplifier": ("amplifier",),
    "processor": ("processor", "amplifier"), "mount": ("mount",), "stand": ("stand",), "display": ("picture",),
    "screen": ("picture",), "projector": ("picture",),
}  # fmt: skip
"""Which groups of keys belong to which kind of product; a processor may have amplifiers built in."""


def kind_of_product(*, required: bool) -> Text[str]:
    """Declare what a product is."""
    return choice(
        "What it is.", "loudspeaker", "subwoofer", "amplifier", "processor", "mount", "stand", "display", "screen",
        "projector", "seat", "source", "other", required=required, told=True, default="other",
    )  # fmt: skip


class Product(Element):
    """The data of one product."""

    KIND = "product"
    PART = "product"

    kind = kind_of_product(required=False)
    title = text("A title.", "Two-way wall loudspeaker", told=True)
    provenance = choice("Where the data come from.", "data-sheet", "measured", "assumed")
    width_m = length("Outer width.", low=0.005, high=20.0, example="0.22 m")
    height_m = length("Outer height.", low=0.001, high=20.0, example="0.38 m")
    depth_m = length("Outer depth.", low=0.001, high=20.0, example="0.25 m")
    mass_kg = quantity("Mass.", "mass", high=500.0)
    apparent_power_va = quantity("Nameplate apparent power.", "apparent_power", zero=True)
    power_w = quantity("Typical power drawn in use.", "power", zero=True)
    idle_power_w = quantity("Power drawn when idle.", "power", zero=True, example="20 W")
    maximum_inlet_degc = quantity("Warmest air it may take in.", "temperature", low=0.0, zero=True, example="35 degC")
    clearance_m = length("Air it needs all round.", zero=True, high=5.0, example="50 mm")
    loudspeaker = part("What a loudspeaker or subwoofer does.", Transducer)
    amplifier = part("What an amplifier does.", AmplifierData)
    processor = part("What a processor sends and sets.", ProcessorData)
    mount = part("What a mount carries and how far it moves.", MountData)
    stand = part("What a stand stands on and carries.", StandData)
    picture = part("What a display, screen or projector shows.", PictureData)

    def check(self, book: Book) -> None:
        """Refuse data of another kind of product, and powers that cannot both be true."""
        nameplate, drawn, idle = (self.given(key) for key in ("apparent_power_va", "power_w", "idle_power_w"))
        for smaller, larger, said in (
            (drawn, nameplate, "it draws more in use than its nameplate says"),
            (idle, drawn, "it draws more when idle than in use"),
            (idle, nameplate, "it draws more when idle than its nameplate says"),
        ):
            if smaller is not None and larger is not None and smaller.value > larger.value:
                book.cross(smaller.at, f"{said}; correct one of the two.")
                break
        kind = self.given("kind")
        if kind is None:
            return  # that of a one-off follows from where it stands
        for key in sorted({key for keys in DATA_OF.values() for key in keys}):
            node = self.at.get(key)
            if node is not None and key not in DATA_OF.get(kind, ()):
                book.cross(node, f"{a(kind)} has no {key} data; either the kind or the key is wrong.")


class ProductSheet(Product):
    """The data of one product, in a file of its own."""

    PART = ""

    schema_link = text("Where an editor finds the schema of this file.", "room.schema.json", key="$schema", told=True)
    version = Number[int](
        "Version of this file form.", 1, 1, example=1, only_whole=True, key="roomlint_product", required=True, told=True
    )
    id_key = ident("The name that room files use.")
    kind = kind_of_product(required=True)

    def settle(self, book: Book) -> None:
        """Refuse data of another kind of product."""
        self.check(book)
