"""Reads a product sheet."""

from __future__ import annotations

from typing import TYPE_CHECKING

from roomlint.design.products import (
    AmplifierData,
    MountData,
    PictureData,
    Port,
    ProcessorData,
    Product,
    Transducer,
)

if TYPE_CHECKING:
    from roomlint.design.reader import Reader

_DATA_OF = {
    "loudspeaker": "loudspeaker", "subwoofer": "loudspeaker", "amplifier": "amplifier", "processor": "processor",
    "mount": "mount", "display": "picture", "screen": "picture", "projector": "picture",
}  # fmt: skip
"""Which group of keys belongs to which kind of product."""


def read_product(reader: Reader) -> Product:
    """Return the product of a checked sheet."""
    kind = reader.text("kind") or "other"
    for key in sorted(set(_DATA_OF.values())):
        node = reader.at(key)
        if node is not None and _DATA_OF.get(kind) != key:
            reader.book.tell(node, f"a {kind} has no {key} data; either the kind or the key is wrong.")
    return Product(
        at=reader.node,
        id=reader.text("id") or "",
        kind=kind,
        title=reader.text("title"),
        provenance=reader.text("provenance"),
        width_m=reader.length("width"),
        height_m=reader.length("height"),
        depth_m=reader.length("depth"),
        mass_kg=reader.quantity("mass", "mass", positive=True),
        apparent_power_va=reader.quantity("apparent_power", "apparent_power", positive=True),
        power_w=reader.quantity("power", "power", positive=True),
        idle_power_w=reader.quantity("idle_power", "power", positive=True),
        maximum_inlet_degc=reader.quantity("maximum_inlet", "temperature"),
        clearance_m=reader.length("clearance"),
        loudspeaker=_transducer(reader.below("loudspeaker")),
        amplifier=_amplifier(reader.below("amplifier")),
        processor=_processor(reader.below("processor")),
        mount=_mount(reader.below("mount")),
        picture=_picture(reader.below("picture")),
    )


def _transducer(reader: Reader | None) -> Transducer | None:
    if reader is None:
        return None
    port = reader.below("port")
    return Transducer(
        at=reader.node,
        id="",
        sensitivity_db=reader.quantity("sensitivity", "level"),
        drive=reader.text("drive"),
        impedance_ohm=reader.quantity("impedance", "impedance", positive=True),
        minimum_impedance_ohm=reader.quantity("minimum_impedance", "impedance", positive=True),
        power_rating_w=reader.quantity("power_rating", "power", positive=True),
        maximum_level_db=reader.quantity("maximum_level", "level"),
        low_limit_hz=reader.quantity("low_limit", "frequency", positive=True),
        high_limit_hz=reader.quantity("high_limit", "frequency", positive=True),
        horizontal_deg=reader.quantity("horizontal_coverage", "angle", positive=True),
        vertical_deg=reader.quantity("vertical_coverage", "angle", positive=True),
        baffle_deg=reader.angle("baffle_angle"),
        driver_spacing_m=reader.length("driver_spacing"),
        crossover_hz=reader.quantity("crossover", "frequency", positive=True),
        placement=reader.texts("placement"),
        port=Port(port.node, "", port.text("face"), port.length("diameter"), port.length("clearance"))
        if port is not None
        else None,
        base_width_m=reader.length("base_width"),
        base_depth_m=reader.length("base_depth"),
        centre_of_gravity_m=reader.length("centre_of_gravity"),
    )


def _amplifier(reader: Reader | None) -> AmplifierData | None:
    if reader is None:
        return None
    return AmplifierData(
        at=reader.node,
        id="",
        channels=reader.whole("channels"),
        power_w=reader.quantity("power", "power", positive=True),
        power_into_ohm=reader.quantity("power_into", "impedance", positive=True),
        minimum_load_ohm=reader.quantity("minimum_load", "impedance", positive=True),
        damping_factor=reader.number("damping_factor"),
        technology=reader.text("technology"),
        output_class=reader.text("output_class"),
        linear_supply=reader.flag("linear_supply"),
    )


def _processor(reader: Reader | None) -> ProcessorData | None:
    if reader is None:
        return None
    return ProcessorData(
        at=reader.node,
        id="",
        channels=reader.whole("channels"),
        delay_range_s=reader.quantity("delay_range", "time", positive=True),
        delay_step_s=reader.quantity("delay_step", "time", positive=True),
        distance_step_m=reader.length("distance_step"),
        assumed_temperature_degc=reader.quantity("assumed_temperature", "temperature"),
        speed_of_sound_m_s=reader.quantity("speed_of_sound", "speed", positive=True),
        audio_latency_s=reader.quantity("audio_latency", "time"),
    )


def _mount(reader: Reader | None) -> MountData | None:
    if reader is None:
        return None
    return MountData(
        at=reader.node,
        id="",
        motion=reader.text("motion"),
        rated_mass_kg=reader.quantity("rated_mass", "mass", positive=True),
        reach_m=reader.length("reach"),
        side_reach_m=reader.length("side_reach"),
        row_spacing_m=reader.length("row_spacing"),
        top_fasteners=reader.whole("top_fasteners"),
        fasteners=reader.whole("fasteners"),
        plate_thickness_m=reader.length("plate_thickness"),
        plate_holes_m=reader.length("plate_holes"),
        patterns=reader.texts("patterns"),
        screws=reader.texts("screws"),
        swivel_deg=reader.angle("swivel"),
        tilt_deg=reader.angle("tilt"),
        listed=reader.text("listed"),
        breaking_load_n=reader.quantity("breaking_load", "force", positive=True),
    )


def _picture(reader: Reader | None) -> PictureData | None:
    if reader is None:
        return None
    return PictureData(
        at=reader.node,
        id="",
        diagonal_m=reader.length("diagonal"),
        aspect=reader.number("aspect"),
        lines=reader.whole("lines"),
        gain=reader.number("gain"),
        half_gain_deg=reader.angle("half_gain"),
        transparent=reader.flag("transparent"),
        loss_db=reader.quantity("loss", "level"),
        pattern=reader.text("pattern"),
        screw=reader.text("screw"),
        throw_min=reader.number("throw_min"),
        throw_max=reader.number("throw_max"),
        shift_reference=reader.text("shift_reference"),
        shift_vertical=reader.number("shift_vertical"),
        shift_horizontal=reader.number("shift_horizontal"),
        luminous_flux_lm=reader.quantity("luminous_flux", "luminous_flux", positive=True),
        noise_db=reader.quantity("noise", "level"),
        video_latency_s=reader.quantity("video_latency", "time"),
    )
