"""Cables and the raceways that they run in."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING, Final

from roomlint.design.base import Missing, need, unsaid
from roomlint.design.quantity import Assumption
from roomlint.figures import amplifier_load, cabling, conductors
from roomlint.measure.routing import DIP
from roomlint.measure.view import View

if TYPE_CHECKING:
    from roomlint.design.base import Point
    from roomlint.design.listening import Loudspeaker, Subwoofer
    from roomlint.design.quantity import Quantity
    from roomlint.design.supply import Cable, Raceway
    from roomlint.figures.cabling import Place, Topic
    from roomlint.measure.figure import Figure
    from roomlint.measure.routing import Driver
    from roomlint.measure.world import World

NO_RACEWAY: Final = "none"
_CLASSED: Final = cabling.GENERAL | cabling.THIN
_COPPER: Final = Assumption("a loudspeaker's cable is of copper, at {}", (20.0, "degC"))
_SIXTY: Final = Assumption("network cable is made for {}", (60.0, "degC"))
_OF_DAMPING_OHM: Final = 8.0
_MM: Final = 1e3
_MM2: Final = 1e6


class Cabling(View):
    """What cables are made for and what they do there."""

    def clause(self, topic: Topic) -> str:
        """Return which clause treats a topic in the edition in force; empty under another code."""
        edition = self.figures.mains.edition
        return "" if edition is None else f"NFPA 70 {cabling.clause(topic, edition)}"

    def is_power(self, cable: Cable) -> bool:
        """Whether a cable carries power of the house; one for lighting does unless its marking is of another class."""
        carries = need(cable.carries, cable, "carries")
        if carries != "lighting":
            return carries == "mains"
        return need(cable.marking, cable, "marking") not in _CLASSED

    def place_of(self, cable: Cable) -> Place:
        """Return the most demanding place that a concealed cable passes."""
        if need(cable.plenum, cable, "plenum"):
            return "plenum"
        return "riser" if need(cable.riser, cable, "riser") else "general"

    def fits_place(self, cable: Cable) -> tuple[bool, Place]:
        """Whether a cable's marking is enough for where it runs; what decides nothing is not asked for."""
        marking = need(cable.marking, cable, "marking")
        if marking in cabling.PLENUM:
            return True, "general"
        place: Place = "plenum" if cable.plenum else "riser" if cable.riser else "general"
        if place != "general" and not cabling.serves(marking, place):
            return False, place
        if marking in cabling.THIN:
            width = need(cable.outer_diameter_m, cable, "outer_diameter")
            if not cabling.serves(marking, "general", width.value + width.u):
                return False, "general"
        place = self.place_of(cable)
        known = cable.outer_diameter_m
        return cabling.serves(marking, place, known.value + known.u if known is not None else None), place

    # Raceways

    def inside(self, raceway: Raceway) -> tuple[tuple[Cable, ...], Missing | None]:
        """Return the cables in a raceway, and what is missing of one that may be in it as well."""
        design = self.design
        if design.at.get("cables") is None:
            return (), Missing(design, "cables")
        unsaid = next((cable for cable in design.cables if cable.raceway is None), None)
        found = tuple(cable for cable in design.cables if cable.raceway == raceway.id)
        return found, Missing(unsaid, "raceway") if unsaid is not None else None

    def _inner(self, raceway: Raceway) -> tuple[Quantity | None, float]:
        """Return a raceway's own measure, or the area of its trade size, mm2."""
        if raceway.inner_area_m2 is not None or raceway.inner_diameter_m is not None:
            return raceway.inner_area_m2 or raceway.inner_diameter_m, 0.0
        kind = need(raceway.kind, raceway, "kind")
        if kind not in cabling.FORTY_PERCENT_MM2:
            raise Missing(raceway, "inner_area" if kind == "trunking" else "inner_diameter")
        return None, cabling.raceway_mm2(kind, need(raceway.size, raceway, "size"))

    def fill(self, raceway: Raceway, cables: tuple[Cable, ...]) -> Figure:
        """Share of a raceway that its cables take."""
        measure, tabled = self._inner(raceway)
        widths = [need(cable.outer_diameter_m, cable, "outer_diameter") for cable in cables]

        def compute(world: World) -> float:
            area = tabled
            if measure is not None:
                size = world(measure)
                area = size * _MM2 if measure.unit == "m2" else math.pi / 4.0 * (size * _MM) ** 2
            return cabling.fill_percent((world(width) * _MM for width in widths), area)

        return self.figure("fill of the raceway", "%", compute, raceway)

    def fill_limit_percent(self, raceway: Raceway, cables: tuple[Cable, ...]) -> float:
        """Most of it that they may take."""
        length = need(raceway.length_m, raceway, "length")
        return cabling.fill_limit_percent(len(cables), length.value + length.u)

    # Loudspeakers

    def fed_by(self, cable: Cable) -> Loudspeaker | Subwoofer | None:
        """Return the loudspeaker that a cable ends at; None where it ends at anything else."""
        end = need(cable.end, cable, "to")
        return next((source for source in self.design.sources if source.id == end), None)

    def least_ohm(self, world: World, source: Loudspeaker | Subwoofer) -> float:
        """Return the least impedance of a loudspeaker, 80 % of the rated one where its sheet does not say."""
        routing = self.figures.routing
        if routing.is_tapped(source):
            return routing.line_ohm(world, source)
        product = need(source.product, source, "product")
        data = need(product.loudspeaker, product, "loudspeaker")
        if data.minimum_impedance_ohm is not None:
            return world(data.minimum_impedance_ohm)
        world.assume(DIP)
        return amplifier_load.LEAST_SHARE * world(need(data.impedance_ohm, data, "impedance"))

    def loop_ohm(self, world: World, cable: Cable) -> float:
        """Return the resistance of a loudspeaker cable, there and back, in a world."""
        length, area = need(cable.length_m, cable, "length"), need(cable.conductor_m2, cable, "conductor")
        world.assume(_COPPER)
        return conductors.loop_ohm(world(length), conductors.installed_ohm_per_m(world(area) * _MM2, 20.0))

    def loss(self, cable: Cable, source: Loudspeaker | Subwoofer) -> Figure:
        """Level that a loudspeaker's cable costs where its impedance is least."""
        return self.figure(
            "loss in the cable", "dB",
            lambda w: conductors.wire_loss_db(self.loop_ohm(w, cable), self.least_ohm(w, source)), cable,
        )  # fmt: skip

    def driver_of(self, cable: Cable, source: Loudspeaker | Subwoofer) -> Driver:
        """Return the amplifier behind a cable, by the one that drives the loudspeaker."""
        routing = self.figures.routing
        ways = routing.feeding(source)
        if not ways:
            raise routing.unsaid_amplifier() or Missing(self.design, "electronics.amplifiers[].feeds")
        begun = next((way.driver for way in ways if way.driver.id == cable.start), None)
        return begun or ways[0].driver

    def damping(self, cable: Cable, source: Loudspeaker | Subwoofer) -> Figure:
        """Damping that is left at the loudspeaker where its impedance is least."""
        data = self.figures.routing.amplifier_data(self.driver_of(cable, source))
        factor = need(data.damping_factor, data, "damping_factor")

        def compute(world: World) -> float:
            own = _OF_DAMPING_OHM / factor
            return conductors.damping_factor(self.least_ohm(world, source), own, self.loop_ohm(world, cable))

        return self.figure("damping at the loudspeaker", "", compute, cable)

    # Signals

    def length(self, cable: Cable) -> Figure:
        """Length of a run, one way."""
        length = need(cable.length_m, cable, "length")
        return self.figure("length", "m", lambda w: w(length), cable)

    def ends(self, cable: Cable) -> tuple[Point, Point] | None:
        """Return where a run starts and ends; None where one of both is nothing that has a place in the room."""
        ends = [self._end(need(cable.start, cable, "from")), self._end(need(cable.end, cable, "to"))]
        start, end = ends
        return None if start is None or end is None else (start, end)

    def _end(self, ident: str) -> Point | None:
        """Return where an element is: by its own place, or by that of the rack that it stands in."""
        design, picture = self.design, self.design.picture
        placed = next((one for one in (*design.sources, *design.racks) if one.id == ident), None)
        if placed is not None:
            return need(placed.position, placed, "position")
        if picture is not None and picture.projector is not None and picture.projector.id == ident:
            return need(picture.projector.lens, picture.projector, "lens")
        if picture is not None and picture.id == ident:
            return need(picture.centre, picture, "centre")
        processor = design.processor
        drivers: tuple[Driver, ...] = design.amplifiers if processor is None else (*design.amplifiers, processor)
        driver = next((one for one in drivers if one.id == ident), None)
        if driver is None:
            return None
        racks = self.figures.routing.racks_of(driver)
        rack = next((one for one in design.racks if one.id in racks), None)
        if rack is not None:
            return need(rack.position, rack, "position")
        missing = unsaid(design, "electronics.racks")
        if design.racks and driver is processor:
            missing = Missing(design, "electronics.racks[].contains")
        elif design.racks:
            missing = Missing(driver, "rack")
        if missing is not None:
            raise missing
        return None

    def beyond_straight(self, cable: Cable, start: Point, end: Point) -> Figure:
        """Length of a run beyond the straight way between its ends; negative where it does not reach."""
        length, way = need(cable.length_m, cable, "length"), self.straight(start, end)
        return self.figure("length beyond the straight way", "m", lambda w: w(length) - way.at(w), per_m=2.0)

    def straight(self, start: Point, end: Point) -> Figure:
        """Straight way between two places."""
        return self.figure("straight way", "m", lambda w: math.dist(w.xyz(start), w.xyz(end)), per_m=2.0)

    def conductor(self, cable: Cable) -> Figure:
        """Section of one conductor."""
        area = need(cable.conductor_m2, cable, "conductor")
        return self.figure("conductor", "m2", lambda w: w(area), cable)

    def link_m(self, cable: Cable) -> tuple[float, float]:
        """Return how far a passive link runs with care, and at best."""
        carries = need(cable.carries, cable, "carries")
        rate = need(cable.rate_gb_s, cable, "rate") if carries != "network" else None
        return cabling.link_m(carries, rate.value if rate is not None else 0.0)

    def to_power(self, cable: Cable) -> Figure:
        """Distance to the power conductors that a cable runs beside."""
        distance = need(cable.beside_power_m, cable, "beside_power")
        return self.figure("distance to power", "mm", lambda w: _MM * w(distance), cable)

    def to_edge(self, cable: Cable) -> Figure:
        """Distance from a cable or its hole to the edge of the framing."""
        distance = need(cable.edge_distance_m, cable, "edge_distance")
        return self.figure("distance to the edge of the framing", "mm", lambda w: _MM * w(distance), cable)

    def bend(self, cable: Cable) -> Figure:
        """Smallest bend of a cable over its diameter."""
        radius, width = (
            need(cable.bend_radius_m, cable, "bend_radius"),
            need(cable.outer_diameter_m, cable, "outer_diameter"),
        )
        return self.figure("bend over the diameter", "", lambda w: w(radius) / w(width), cable)

    def bundle_use(self, cable: Cable, power: str) -> Figure:
        """Share of what a bundle allows that one conductor of a powered network cable carries."""
        area, air = need(cable.conductor_m2, cable, "conductor"), need(cable.ambient_degc, cable, "ambient")
        bundle = need(cable.bundle, cable, "bundle")

        def compute(world: World) -> float:
            world.assume(_SIXTY)
            return 100.0 * cabling.PAIR_A[power] / cabling.bundle_limit_a(world(area) * _MM2, bundle, world(air))

        return self.figure("use of the bundle", "%", compute, cable)
