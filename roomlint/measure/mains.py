"""Circuits and what they carry."""

from __future__ import annotations

from typing import TYPE_CHECKING

from roomlint.design.base import Value, need
from roomlint.figures import circuits, conductors
from roomlint.measure.figure import Figure, figure
from roomlint.measure.view import View

if TYPE_CHECKING:
    from roomlint.design.supply import Circuit, Load, Receptacle

EDITIONS = ("nec2017", "nec2020", "nec2023")
WARM_CONDUCTOR_DEGC = 75.0
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
        power = need(load.apparent_power_va, load, "apparent_power")
        volts = need(circuit.voltage_v, circuit, "voltage")
        return Value(power.value / volts.value, power.u / volts.value, "A", power.at)

    def required(self, circuit: Circuit) -> Figure:
        """Return the rating that the circuit's loads ask for: noncontinuous + 1.25 x continuous."""
        currents = [self.current(load, circuit) for load in circuit.loads]
        lasting = [load.continuous is not False for load in circuit.loads]
        assumed = any(load.continuous is None for load in circuit.loads)

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
        for load in circuit.loads:
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
        """Return the voltage drop to the farthest outlet at the loads' own current, in percent, conductors at 75 degC."""
        length = need(circuit.length_m, circuit, "length")
        area = need(circuit.conductor_m2, circuit, "conductor")
        volts = need(circuit.voltage_v, circuit, "voltage")
        currents = [self.current(load, circuit) for load in circuit.loads]

        def compute(far: float, a: float, v: float, *amps: float) -> float:
            per_m = conductors.copper_ohm_per_m(a * 1e6, WARM_CONDUCTOR_DEGC)
            return conductors.drop_percent(conductors.voltage_drop_v(far, sum(amps), per_m), v)

        assumes = ("copper at 75 degC",)
        return figure("voltage drop", "%", compute, length, area, volts, *currents, assumes=assumes)

    def whole_drop(self, circuit: Circuit) -> Figure:
        """Return the drop of feeder and branch together, in percent."""
        feeder = need(circuit.feeder_drop, circuit, "feeder_drop")
        return self.drop(circuit).shifted("voltage drop of feeder and branch", feeder)
