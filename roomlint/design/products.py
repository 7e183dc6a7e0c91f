"""Product sheets: the data of one product each."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, ClassVar

from roomlint.design.base import Element

if TYPE_CHECKING:
    from roomlint.design.base import Value


@dataclass(frozen=True, slots=True)
class Port(Element):
    """The opening of a vented cabinet."""

    KIND: ClassVar[str] = "port"

    face: str | None = None
    """rear, front, bottom, top, side or none (a closed box)."""
    diameter_m: Value | None = None
    clearance_m: Value | None = None
    """Clearance the maker asks for."""


@dataclass(frozen=True, slots=True)
class Transducer(Element):
    """What a loudspeaker or subwoofer does."""

    KIND: ClassVar[str] = "loudspeaker data"

    sensitivity_db: Value | None = None
    drive: str | None = None
    """What the sensitivity is stated for: `2.83 V` or `1 W`, both at 1 m."""
    impedance_ohm: Value | None = None
    minimum_impedance_ohm: Value | None = None
    power_rating_w: Value | None = None
    maximum_level_db: Value | None = None
    low_limit_hz: Value | None = None
    high_limit_hz: Value | None = None
    horizontal_deg: Value | None = None
    """Nominal horizontal coverage: the full angle between the -6 dB points."""
    vertical_deg: Value | None = None
    baffle_deg: Value | None = None
    """Angle between the cabinet's mounting plane and its baffle; 0 for an ordinary box."""
    driver_spacing_m: Value | None = None
    crossover_hz: Value | None = None
    placement: tuple[str, ...] = ()
    port: Port | None = None
    base_width_m: Value | None = None
    base_depth_m: Value | None = None
    centre_of_gravity_m: Value | None = None


@dataclass(frozen=True, slots=True)
class AmplifierData(Element):
    """What an amplifier does."""

    KIND: ClassVar[str] = "amplifier data"

    channels: int | None = None
    power_w: Value | None = None
    power_into_ohm: Value | None = None
    minimum_load_ohm: Value | None = None
    damping_factor: float | None = None
    technology: str | None = None
    """class-ab or class-d."""
    output_class: str | None = None
    """class-1, class-2 or class-3, as marked."""
    linear_supply: bool | None = None


@dataclass(frozen=True, slots=True)
class ProcessorData(Element):
    """What a processor can send and set."""

    KIND: ClassVar[str] = "processor data"

    channels: int | None = None
    delay_range_s: Value | None = None
    delay_step_s: Value | None = None
    distance_step_m: Value | None = None
    assumed_temperature_degc: Value | None = None
    speed_of_sound_m_s: Value | None = None
    audio_latency_s: Value | None = None


@dataclass(frozen=True, slots=True)
class MountData(Element):
    """What a mount carries and how far it moves."""

    KIND: ClassVar[str] = "mount data"

    motion: str | None = None
    """fixed, tilt, swivel, articulated or pole."""
    rated_mass_kg: Value | None = None
    reach_m: Value | None = None
    """Largest distance from the wall to the plane the device is bolted to."""
    side_reach_m: Value | None = None
    row_spacing_m: Value | None = None
    """Between the top and the bottom fastener row."""
    top_fasteners: int | None = None
    fasteners: int | None = None
    plate_thickness_m: Value | None = None
    plate_holes_m: Value | None = None
    """Largest horizontal distance between fastener holes."""
    patterns: tuple[str, ...] = ()
    screws: tuple[str, ...] = ()
    swivel_deg: Value | None = None
    tilt_deg: Value | None = None
    listed: str | None = None
    breaking_load_n: Value | None = None


@dataclass(frozen=True, slots=True)
class PictureData(Element):
    """What a display, a screen or a projector shows."""

    KIND: ClassVar[str] = "picture data"

    diagonal_m: Value | None = None
    aspect: float | None = None
    lines: int | None = None
    gain: float | None = None
    half_gain_deg: Value | None = None
    transparent: bool | None = None
    loss_db: Value | None = None
    pattern: str | None = None
    screw: str | None = None
    throw_min: float | None = None
    throw_max: float | None = None
    shift_reference: str | None = None
    """full-height or half-height."""
    shift_vertical: float | None = None
    shift_horizontal: float | None = None
    luminous_flux_lm: Value | None = None
    noise_db: Value | None = None
    video_latency_s: Value | None = None


@dataclass(frozen=True, slots=True)
class Product(Element):
    """One product: its body, its supply, and the data of its kind."""

    KIND: ClassVar[str] = "product"

    kind: str = ""
    title: str | None = None
    provenance: str | None = None
    """data-sheet, measured or assumed."""
    width_m: Value | None = None
    height_m: Value | None = None
    depth_m: Value | None = None
    mass_kg: Value | None = None
    apparent_power_va: Value | None = None
    power_w: Value | None = None
    idle_power_w: Value | None = None
    maximum_inlet_degc: Value | None = None
    clearance_m: Value | None = None
    loudspeaker: Transducer | None = None
    amplifier: AmplifierData | None = None
    processor: ProcessorData | None = None
    mount: MountData | None = None
    picture: PictureData | None = None
