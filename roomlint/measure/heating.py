"""Heat of equipment in racks, and the air that carries it away."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final, NamedTuple

from roomlint.design.base import Missing, need
from roomlint.figures import enclosure, mains_draw
from roomlint.figures.domain import positive
from roomlint.measure.view import View

if TYPE_CHECKING:
    from roomlint.design.listening import Picture, Projector
    from roomlint.design.products import AmplifierData, Product
    from roomlint.design.quantity import Quantity
    from roomlint.design.supply import Rack
    from roomlint.figures.mains_draw import AmplifierClass
    from roomlint.measure.figure import Figure
    from roomlint.measure.powered import Item
    from roomlint.measure.world import World

RISE_K: Final = 10.0
"""Air that leaves a rack is at most so much warmer than what enters it (common practice: 18 to 20 degF)."""
HOT_DEGC: Final = 40.0
"""Beyond it nothing is covered, whatever its sheet says (common practice)."""
_TECHNOLOGY: Final[dict[str, AmplifierClass]] = {"class-ab": "AB", "class-d": "D"}
_EIGHTH: Final = "an amplifier plays an eighth of its rated power on all channels where its sheet states no draw"
_NAMEPLATE: Final = "what does not state its power in use gives off its nameplate power"
_SECONDS_PER_HOUR: Final = 3600.0


class Around(NamedTuple):
    """The least gap around a thing, and to what."""

    figure: Figure
    what: str


class Heating(View):
    """What equipment gives off and what it may take in."""

    def contents(self, rack: Rack) -> tuple[Item, ...]:
        """Return the powered equipment of a rack; raises `Missing` where it is not told what is in it."""
        if not rack.contains and rack.at.get("contains") is None:
            raise Missing(rack, "contains")
        return self.figures.powered.in_rack(rack)

    def _item_w(self, world: World, item: Item) -> float:
        """Return the heat of one item, W: its power in use, or its nameplate, or what its amplifier loses.

        What an amplifier loses is estimated at an eighth of its rated power; what goes to the loudspeakers leaves the
        rack.
        """
        product = need(item.product, item, "product")
        if product.power_w is not None:
            return world(product.power_w)
        if product.apparent_power_va is not None:
            world.assume(_NAMEPLATE)
            return world(product.apparent_power_va)
        estimate = self._estimate_w(world, product, product.amplifier)
        if estimate is None:
            raise Missing(product, "power")
        return estimate

    def _estimate_w(self, world: World, product: Product, data: AmplifierData | None) -> float | None:
        if data is None or data.channels is None or data.power_w is None:
            return None
        world.assume(_EIGHTH)
        efficiency = mains_draw.EFFICIENCY_AT_EIGHTH[_TECHNOLOGY.get(data.technology or "", "unknown")]
        idle = world(product.idle_power_w) if product.idle_power_w is not None else 0.0
        output = mains_draw.average_output_w(data.channels, world(data.power_w))
        drawn = mains_draw.mains_power_w(output, efficiency, idle)
        return mains_draw.amplifier_heat_w(drawn, output)

    def undeclared(self, rack: Rack) -> Missing | None:
        """Return what is missing of the first item whose draw is estimated: an estimate clears nothing."""
        products = (item.product for item in self.contents(rack) if item.product is not None)
        bare = (one for one in products if one.power_w is None and one.apparent_power_va is None)
        return next((Missing(one, "power") for one in bare), None)

    def heat(self, rack: Rack) -> Figure:
        """Heat of all that is in a rack."""
        items = self.contents(rack)
        return self.figure("heat", "W", lambda w: sum(self._item_w(w, item) for item in items), rack)

    def air_needed(self, rack: Rack) -> Figure:
        """Air that carries a rack's heat away at the usual rise."""
        return self.heat(rack).then("air needed", "m3/h", lambda heat: mains_draw.airflow_m3_per_h(heat, RISE_K))

    def air_share(self, rack: Rack) -> Figure:
        """Air that is moved through a rack over the air that is needed."""
        moved, heat = need(rack.airflow_m3_s, rack, "airflow"), self.heat(rack)

        def compute(world: World) -> float:
            needed = mains_draw.airflow_m3_per_h(heat.at(world), RISE_K)
            # Sheets may say that nothing in it gives off heat.
            return 100.0 * world(moved) * _SECONDS_PER_HOUR / positive("air needed", needed, "m3/h")

        return self.figure("air over the air needed", "%", compute, rack)

    def wanted_gap(self, projector: Projector) -> Quantity:
        """Return the air that a projector's maker asks for all round."""
        product = need(projector.product, projector, "product")
        return need(product.clearance_m, product, "clearance")

    def around(self, projector: Projector) -> Around:
        """Return the least gap between a projector and the room's surfaces, or what else stands there."""
        bodies = self.figures.bodies
        bodies.place(projector)
        overlap = bodies.overlap(projector)

        def to_surface(world: World) -> float:
            body = bodies.solid(world, projector)
            return enclosure.solid_clearance(self.figures.space.enclosure(world), body).distance_m

        def compute(world: World) -> float:
            return min(to_surface(world), -overlap.figure.at(world))

        figure = self.figure("air around it", "m", compute, projector, per_m=3.0)
        near = enclosure.solid_clearance(self.figures.space.enclosure(self.world), bodies.solid(self.world, projector))
        surface = "the ceiling or a wall" if near.distance_m <= -overlap.figure.value else ""
        return Around(figure, surface or overlap.other)

    def inlet(self, rack: Rack) -> Figure:
        """Temperature of the air that a rack takes in."""
        air = need(rack.inlet_degc, rack, "inlet")
        return self.figure("air at the inlet", "degC", lambda w: w(air), rack)

    def at_picture(self, picture: Picture) -> Figure:
        """Warmest air at a picture while the fire below it burns."""
        air = need(picture.warmest_degc, picture, "warmest")
        return self.figure("air at the picture", "degC", lambda w: w(air), picture)

    def picture_limit_degc(self, picture: Picture) -> float:
        """Warmest air that a picture may take."""
        product = need(picture.product, picture, "product")
        limit = need(product.maximum_inlet_degc, product, "maximum_inlet")
        return min(HOT_DEGC, limit.value - limit.u)

    def inlet_limit_degc(self, rack: Rack) -> float:
        """Warmest air that all equipment of a rack may take in."""
        limits = []
        for item in self.contents(rack):
            product = need(item.product, item, "product")
            limit = need(product.maximum_inlet_degc, product, "maximum_inlet")
            limits.append(limit.value - limit.u)
        return min([HOT_DEGC, *limits])
