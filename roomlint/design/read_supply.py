"""Reads electronics, raceways, cables and circuits."""

from __future__ import annotations

from typing import TYPE_CHECKING

from roomlint.design.read_listening import read_mounting
from roomlint.design.reader import unique
from roomlint.design.supply import Amplifier, Cable, Circuit, Feed, Load, Processor, Raceway, Rack, Receptacle

if TYPE_CHECKING:
    from collections.abc import Iterable

    from roomlint.design.reader import Reader


def read_processor(root: Reader) -> Processor | None:
    """Return the processor."""
    electronics = root.below("electronics")
    reader = electronics.below("processor") if electronics is not None else None
    if reader is None:
        return None
    return Processor(
        at=reader.node,
        id=reader.text("id") or "processor",
        product=reader.product("product", "processor"),
        unfitted=reader.texts("unfitted"),
    )


def read_amplifiers(root: Reader, sources: Iterable[str]) -> tuple[Amplifier, ...]:
    """Return the amplifiers; `sources` are the ids of all loudspeakers and subwoofers."""
    electronics = root.below("electronics")
    if electronics is None:
        return ()
    unique(electronics.each("amplifiers"), "amplifier")
    names = tuple(sources)
    return tuple(
        Amplifier(
            at=reader.node,
            id=reader.text("id") or "",
            product=reader.product("product", "amplifier"),
            feeds=tuple(_feed(feed, names) for feed in reader.each("feeds")),
            rack=reader.one_of("rack", (rack.text("id") or "" for rack in electronics.each("racks")), "rack"),
        )
        for reader in electronics.each("amplifiers")
    )


def _feed(reader: Reader, sources: tuple[str, ...]) -> Feed:
    named = reader.names("loudspeakers", sources, "loudspeaker or subwoofer")
    return Feed(reader.node, str(reader.whole("output")), reader.whole("output"), named, reader.text("wiring"))


def read_racks(root: Reader) -> tuple[Rack, ...]:
    """Return the racks."""
    electronics = root.below("electronics")
    if electronics is None:
        return ()
    unique(electronics.each("racks"), "rack")
    return tuple(
        Rack(
            at=reader.node,
            id=reader.text("id") or "",
            position=reader.position("position"),
            enclosed=reader.flag("enclosed"),
            airflow_m3_s=reader.quantity("airflow", "airflow", positive=True),
            inlet_degc=reader.quantity("inlet", "temperature"),
            contains=reader.texts("contains"),
            front_clear_m=reader.surveyed("front_clear"),
            bonded=reader.flag("bonded"),
            mounting=read_mounting(reader),
        )
        for reader in electronics.each("racks")
    )


def read_raceways(root: Reader) -> tuple[Raceway, ...]:
    """Return the raceways."""
    unique(root.each("raceways"), "raceway")
    return tuple(
        Raceway(
            at=reader.node,
            id=reader.text("id") or "",
            kind=reader.text("kind"),
            size=reader.text("size"),
            inner_diameter_m=reader.length("inner_diameter"),
            length_m=reader.length("length"),
        )
        for reader in root.each("raceways")
    )


def read_cables(root: Reader) -> tuple[Cable, ...]:
    """Return the cable runs."""
    unique(root.each("cables"), "cable")
    raceways = tuple(raceway.text("id") or "" for raceway in root.each("raceways"))
    return tuple(_cable(reader, raceways) for reader in root.each("cables"))


def _cable(reader: Reader, raceways: tuple[str, ...]) -> Cable:
    return Cable(
        at=reader.node,
        id=reader.text("id") or "",
        carries=reader.text("carries"),
        start=reader.text("from"),
        end=reader.text("to"),
        length_m=reader.length("length"),
        conductor_m2=reader.quantity("conductor", "conductor", positive=True),
        conductors=reader.whole("conductors"),
        outer_diameter_m=reader.length("outer_diameter"),
        marking=reader.text("marking"),
        in_wall=reader.flag("in_wall"),
        plenum=reader.flag("plenum"),
        raceway=reader.one_of("raceway", raceways, "raceway"),
        beside_power_m=reader.quantity("beside_power", "length"),
        power_exception=reader.text("power_exception"),
        edge_distance_m=reader.quantity("edge_distance", "length"),
        nail_plate=reader.flag("nail_plate"),
        active=reader.flag("active"),
        rate_gb_s=reader.quantity("rate", "data_rate", positive=True),
        bend_radius_m=reader.length("bend_radius"),
        bundle=reader.whole("bundle"),
        ambient_degc=reader.quantity("ambient", "temperature"),
    )


def read_circuits(root: Reader) -> tuple[Circuit, ...]:
    """Return the circuits with their receptacles and loads."""
    unique(root.each("circuits"), "circuit")
    return tuple(_circuit(reader) for reader in root.each("circuits"))


def _circuit(reader: Reader) -> Circuit:
    unique(reader.each("receptacles"), "receptacle")
    unique(reader.each("loads"), "load")
    receptacles = tuple(_receptacle(below) for below in reader.each("receptacles"))
    return Circuit(
        at=reader.node,
        id=reader.text("id") or "",
        rating_a=reader.quantity("rating", "current", positive=True),
        voltage_v=reader.quantity("voltage", "voltage", positive=True),
        conductor_m2=reader.quantity("conductor", "conductor", positive=True),
        conductor_text=reader.text("conductor"),
        material=reader.text("material"),
        length_m=reader.length("length"),
        dedicated=reader.flag("dedicated"),
        feeds_lighting=reader.flag("feeds_lighting"),
        new=reader.flag("new"),
        afci=reader.flag("afci"),
        gfci=reader.flag("gfci"),
        rcd_a=reader.quantity("rcd", "current", positive=True),
        sequenced=reader.flag("sequenced"),
        earth_lifted=reader.flag("earth_lifted"),
        feeder_drop=reader.number("feeder_drop"),
        receptacles=receptacles,
        loads=tuple(_load(below, receptacles) for below in reader.each("loads")),
    )


def _receptacle(reader: Reader) -> Receptacle:
    return Receptacle(
        at=reader.node,
        id=reader.text("id") or "",
        rating_a=reader.quantity("rating", "current", positive=True),
        wall=reader.one_of("wall", reader.book.surfaces, "wall"),
        start_m=reader.surveyed("from_wall_left"),
        height_m=reader.surveyed("height"),
        facing_up=reader.flag("facing_up"),
        listed_for_floor=reader.flag("listed_for_floor"),
        tamper_resistant=reader.flag("tamper_resistant"),
        dimmed=reader.flag("dimmed"),
        in_cabinet=reader.flag("in_cabinet"),
    )


def _load(reader: Reader, receptacles: tuple[Receptacle, ...]) -> Load:
    return Load(
        at=reader.node,
        id=reader.text("id") or "",
        what=reader.text("what"),
        feeds=reader.text("feeds"),
        apparent_power_va=reader.quantity("apparent_power", "apparent_power", positive=True),
        current_a=reader.quantity("current", "current", positive=True),
        continuous=reader.flag("continuous"),
        connection=reader.text("connection"),
        receptacle=reader.one_of("receptacle", (receptacle.id for receptacle in receptacles), "receptacle"),
        cord_concealed=reader.flag("cord_concealed"),
        listed_inlet_kit=reader.flag("listed_inlet_kit"),
        linear_supply=reader.flag("linear_supply"),
    )
