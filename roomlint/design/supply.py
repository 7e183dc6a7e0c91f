"""Electronics, cables, raceways and circuits."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, ClassVar

from roomlint.design.base import Element

if TYPE_CHECKING:
    from roomlint.design.base import Point, Value
    from roomlint.design.listening import Mounting
    from roomlint.design.products import Product


@dataclass(frozen=True, slots=True)
class Processor(Element):
    """The processor of the room."""

    KIND: ClassVar[str] = "processor"

    product: Product | None = None
    unfitted: tuple[str, ...] = ()
    """Labels of channels that the design leaves out on purpose."""


@dataclass(frozen=True, slots=True)
class Feed(Element):
    """Which loudspeakers one amplifier output drives."""

    KIND: ClassVar[str] = "feed"

    output: int | None = None
    loudspeakers: tuple[str, ...] = ()
    wiring: str | None = None
    """parallel or series, when there are several."""


@dataclass(frozen=True, slots=True)
class Amplifier(Element):
    """An amplifier and what its outputs drive."""

    KIND: ClassVar[str] = "amplifier"

    product: Product | None = None
    feeds: tuple[Feed, ...] = ()
    rack: str | None = None


@dataclass(frozen=True, slots=True)
class Rack(Element):
    """Where equipment stands, and how its heat leaves."""

    KIND: ClassVar[str] = "rack"

    position: Point | None = None
    enclosed: bool | None = None
    airflow_m3_s: Value | None = None
    inlet_degc: Value | None = None
    contains: tuple[str, ...] = ()
    front_clear_m: Value | None = None
    bonded: bool | None = None
    mounting: Mounting | None = None


@dataclass(frozen=True, slots=True)
class Raceway(Element):
    """A conduit or other raceway."""

    KIND: ClassVar[str] = "raceway"

    kind: str | None = None
    size: str | None = None
    inner_diameter_m: Value | None = None
    length_m: Value | None = None


@dataclass(frozen=True, slots=True)
class Cable(Element):
    """One run of cable."""

    KIND: ClassVar[str] = "cable"

    carries: str | None = None
    """loudspeaker, video, network, usb, control, line-level, mains, trigger, antenna or lighting."""
    start: str | None = None
    end: str | None = None
    length_m: Value | None = None
    conductor_m2: Value | None = None
    conductors: int | None = None
    outer_diameter_m: Value | None = None
    marking: str | None = None
    in_wall: bool | None = None
    plenum: bool | None = None
    raceway: str | None = None
    beside_power_m: Value | None = None
    power_exception: str | None = None
    edge_distance_m: Value | None = None
    nail_plate: bool | None = None
    active: bool | None = None
    rate_gb_s: Value | None = None
    bend_radius_m: Value | None = None
    bundle: int | None = None
    ambient_degc: Value | None = None


@dataclass(frozen=True, slots=True)
class Receptacle(Element):
    """A receptacle (socket-outlet) of a circuit."""

    KIND: ClassVar[str] = "receptacle"

    rating_a: Value | None = None
    wall: str | None = None
    start_m: Value | None = None
    height_m: Value | None = None
    facing_up: bool | None = None
    listed_for_floor: bool | None = None
    tamper_resistant: bool | None = None
    dimmed: bool | None = None
    in_cabinet: bool | None = None


@dataclass(frozen=True, slots=True)
class Load(Element):
    """A load on a circuit."""

    KIND: ClassVar[str] = "load"

    what: str | None = None
    feeds: str | None = None
    """Id of the element it is, when the design has it."""
    apparent_power_va: Value | None = None
    current_a: Value | None = None
    continuous: bool | None = None
    connection: str | None = None
    """plug or fastened."""
    receptacle: str | None = None
    cord_concealed: bool | None = None
    listed_inlet_kit: bool | None = None
    linear_supply: bool | None = None


@dataclass(frozen=True, slots=True)
class Circuit(Element):
    """A branch circuit (final circuit)."""

    KIND: ClassVar[str] = "circuit"

    rating_a: Value | None = None
    voltage_v: Value | None = None
    conductor_m2: Value | None = None
    conductor_text: str | None = None
    material: str | None = None
    length_m: Value | None = None
    """One way, from the panel to the farthest outlet."""
    dedicated: bool | None = None
    feeds_lighting: bool | None = None
    new: bool | None = None
    afci: bool | None = None
    gfci: bool | None = None
    rcd_a: Value | None = None
    sequenced: bool | None = None
    earth_lifted: bool | None = None
    feeder_drop: float | None = None
    receptacles: tuple[Receptacle, ...] = ()
    loads: tuple[Load, ...] = ()
