"""Circuits and what they carry."""

from __future__ import annotations

from functools import cached_property
from typing import TYPE_CHECKING, Final

from roomlint.design.base import Group, Value, need
from roomlint.figures import circuits, conductors, mains_draw
from roomlint.measure.figure import Figure, figure
from roomlint.measure.view import View

if TYPE_CHECKING:
    from roomlint.design.supply import Circuit, Load, Receptacle
    from roomlint.figures.mains_draw import AmplifierClass

EDITIONS = ("nec2017", "nec2020", "nec2023")
WARM_CONDUCTOR_DEGC = 75.0
_TECHNOLOGY: Final[dict[str, AmplifierClass]] = {"class-ab": "AB", "class-d": "D"}
_SAME_SIZE = 0.02
CONTINUOUS_PRACTICE = "loads without a word on it taken as continuous: a film evening lasts three hours"


class Mains(View):
    """Currents of circuits, their shares and drops."""

    @property
    def edition(self) -> circuits.CodeEdition | None:
        """The edition of the National Electrical Code in force, when it is one that the rules know."""
        code = self.design.project.electrical_code
        return code if code in EDITIONS else None  # type: ignore[return-value]  # narrowed by the test

    def clause(self, topic: circuits.Topic) -> str:
        """Return which clause treats a topic in the edition in force."""
        return f"NFPA 70, {circuits.clause(topic, self.edition)}" if self.edition is not None else ""

    def current(self, load: Load, circuit: Circuit) -> Value:
        """Return the nameplate current of a load, from its apparent power when that is given instead."""
        if load.current_a is not None:
            return load.current_a
        power = need(load.apparent_power_va or self._sheet_power(load), load, "apparent_power")
        volts = need(circuit.voltage_v, circuit, "voltage")
        return Value(power.value / volts.value, power.u / volts.value, "A", power.at)

    def _sheet_power(self, load: Load) -> Value | None:
        for amplifier in self.design.amplifiers:
            if amplifier.id == load.feeds and amplifier.product is not None:
                return amplifier.product.apparent_power_va
        return None

    def required(self, circuit: Circuit) -> Figure:
        """Return the rating that the circuit's loads ask for: noncontinuous + 1.25 x continuous."""
        currents = [self.current(load, circuit) for load in self.loads(circuit)]
        lasting = [load.continuous is not False for load in self.loads(circuit)]
        assumed = any(load.continuous is None for load in self.loads(circuit))

        def compute(*amps: float) -> float:
            continuous = sum(a for a, long in zip(amps, lasting, strict=True) if long)
            return circuits.required_current_a(continuous, sum(amps) - continuous)

        assumes = (CONTINUOUS_PRACTICE,) if assumed else ()
        return figure("rating that the loads ask for", "A", compute, *currents, assumes=assumes)

    def share(self, load: Load, circuit: Circuit) -> Figure:
        """Return the share of the circuit's rating that one load draws, in percent."""
        rating = need(circuit.rating_a, circuit, "rating")
        current = self.current(load, circuit)
        return figure("share of the rating", "%", lambda i, r: 100 * circuits.rating_share(i, r), current, rating)

    def fastened_share(self, circuit: Circuit) -> Figure:
        """Return the share of the rating that all loads fastened in place draw together, in percent."""
        rating = need(circuit.rating_a, circuit, "rating")
        for load in self.loads(circuit):
            need(load.connection, load, "connection")
        currents = [self.current(load, circuit) for load in circuit.loads if load.connection == "fastened"]

        def compute(r: float, *amps: float) -> float:
            return 100 * circuits.rating_share(sum(amps), r)

        return figure("share of what is fastened in place", "%", compute, rating, *currents)

    def receptacle_total(self, receptacle: Receptacle, circuit: Circuit) -> tuple[Figure, float]:
        """Return the current of all plugs on one receptacle, and the most that they may draw."""
        currents = [self.current(load, circuit) for load in circuit.loads if load.receptacle == receptacle.id]
        own = need(receptacle.rating_a, receptacle, "rating").value
        rating = need(circuit.rating_a, circuit, "rating").value
        total = figure("current of all plugs", "A", lambda *amps: sum(amps), *currents)
        return total, circuits.receptacle_total_a(own, rating)

    def conductor_margin(self, circuit: Circuit) -> Figure:
        """Return the cross-section of the conductor as a share of the least one for the rating, in percent."""
        rating = need(circuit.rating_a, circuit, "rating")
        area = need(circuit.conductor_m2, circuit, "conductor")
        least_mm2 = conductors.awg_area_mm2(conductors.minimum_copper_awg(rating.value))
        name = f"conductor area against the least for {rating.value:g} A ({least_mm2:.2f} mm2)"
        return figure(name, "%", lambda a: 100 * a * 1e6 / least_mm2, area)

    def drop(self, circuit: Circuit) -> Figure:
        """Return the voltage drop to the farthest outlet with all loads there, in percent, conductors at 75 degC."""
        length = need(circuit.length_m, circuit, "length")
        area = need(circuit.conductor_m2, circuit, "conductor")
        volts = need(circuit.voltage_v, circuit, "voltage")
        currents = [self.current(load, circuit) for load in self.loads(circuit)]

        def compute(far: float, a: float, v: float, *amps: float) -> float:
            per_m = _warm_ohm_per_m(a * 1e6)
            return conductors.drop_percent(conductors.voltage_drop_v(far, sum(amps), per_m), v)

        return figure(
            "voltage drop",
            "%",
            compute,
            length,
            area,
            volts,
            *currents,
            words=lambda percent: f"{percent:.2f} %",
            assumes=("copper at 75 degC", "all loads at the far end"),
        )

    def whole_drop(self, circuit: Circuit) -> Figure:
        """Return the drop of feeder and branch together, in percent."""
        feeder = need(circuit.feeder_drop, circuit, "feeder_drop")
        made = self.drop(circuit).shifted("voltage drop of feeder and branch", feeder)
        return made.named(made.name, f"{made.value:.2f} %")

    def loads(self, circuit: Circuit) -> tuple[Load, ...]:
        """Return the loads of a circuit; a circuit without any cannot be judged."""
        return need(circuit.loads or None, circuit, "loads")

    def receptacle_fits(self, receptacle: Receptacle, circuit: Circuit) -> bool:
        """Whether the receptacle's rating is one that its circuit may have; never on a circuit of another rating."""
        own, whole = need(receptacle.rating_a, receptacle, "rating"), need(circuit.rating_a, circuit, "rating")
        try:
            return circuits.receptacle_fits(own.value, whole.value)
        except ValueError:
            return False

    def residual_current(self, circuit: Circuit) -> Figure:
        """Rated residual current of the protective device, mA."""
        return figure("rated residual current", "mA", lambda a: a * 1e3, need(circuit.rcd_a, circuit, "rcd"))

    @cached_property
    def receptacles(self) -> tuple[Group, ...]:
        """Every receptacle with its circuit."""
        return tuple(
            Group((receptacle, circuit), joined=" on ")
            for circuit in self.design.circuits
            for receptacle in circuit.receptacles
        )

    @cached_property
    def amplifiers(self) -> tuple[Group, ...]:
        """Loads that are one of the design's amplifiers, with their circuits."""
        ids = {amplifier.id for amplifier in self.design.amplifiers}
        return tuple(
            Group((load, circuit), joined=" on ")
            for circuit in self.design.circuits
            for load in circuit.loads
            if load.feeds in ids
        )

    def draw_ratio(self, load: Load, circuit: Circuit) -> Figure:
        """Divide the declared current of an amplifier by its estimate at one eighth of rated power."""
        amplifier = next(amplifier for amplifier in self.design.amplifiers if amplifier.id == load.feeds)
        product = need(amplifier.product, amplifier, "product")
        data = need(product.amplifier, product, "amplifier")
        channels = need(data.channels, data, "channels")
        kind = _TECHNOLOGY.get(data.technology or "", "unknown")
        idle_w = product.idle_power_w.value if product.idle_power_w is not None else 0.0

        def compute(amps: float, rated_w: float, volts: float) -> float:
            output = mains_draw.average_output_w(channels, rated_w)
            power = mains_draw.mains_power_w(output, mains_draw.EFFICIENCY_AT_EIGHTH[kind], idle_w)
            return amps / mains_draw.mains_current_a(power, volts)

        return figure(
            "declared current over estimate",
            "",
            compute,
            self.current(load, circuit),
            need(data.power_w, data, "power"),
            need(circuit.voltage_v, circuit, "voltage"),
            assumes=(
                "all channels at one eighth of rated power",
                f"efficiency {mains_draw.EFFICIENCY_AT_EIGHTH[kind]}",
                f"power factor {mains_draw.UNKNOWN_POWER_FACTOR}",
            ),
        )


def _warm_ohm_per_m(area_mm2: float) -> float:
    # A metric size is sold by its greatest resistance, a gauge by its copper area.
    for size in conductors.IEC_60228_OHM_PER_KM:
        if abs(size - area_mm2) <= _SAME_SIZE * size:
            return conductors.at_temperature(conductors.iec_60228_ohm_per_m(size), WARM_CONDUCTOR_DEGC)
    return conductors.copper_ohm_per_m(area_mm2, WARM_CONDUCTOR_DEGC)
