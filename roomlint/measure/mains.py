"""Circuits and what they carry."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final, NamedTuple

from roomlint.design.base import Missing, need
from roomlint.figures import circuits, mains_draw
from roomlint.figures.wiring_rules import FAMILY
from roomlint.measure.view import View

if TYPE_CHECKING:
    from collections.abc import Callable, Iterable

    from roomlint.design.supply import Amplifier, Circuit, Load, Receptacle
    from roomlint.figures.mains_draw import AmplifierClass
    from roomlint.figures.wiring_rules import Family
    from roomlint.measure.figure import Figure
    from roomlint.measure.world import World

_TECHNOLOGY: Final[dict[str, AmplifierClass]] = {"class-ab": "AB", "class-d": "D"}
CONTINUOUS_PRACTICE: Final = "what nobody says lasts less than three hours counts as lasting, as a film evening does"
LIGHTING_LASTS: Final = "lighting counts as lasting three hours"


class Drawn(NamedTuple):
    """The loads of a circuit whose current is known, and the first thing that is not known of the rest."""

    loads: tuple[Load, ...]
    missing: Missing | None


class Mains(View):
    """Currents of circuits and their shares."""

    @property
    def edition(self) -> circuits.CodeEdition | None:
        """The edition of the National Electrical Code in force, when it is that code."""
        return next((edition for edition in circuits.EDITIONS if edition == self.design.project.electrical_code), None)

    @property
    def code(self) -> str:
        """The electrical code in force."""
        return need(self.design.project.electrical_code, self.design, "project.codes.electrical")

    @property
    def family(self) -> Family:
        """Which wiring rules the code in force belongs to."""
        return FAMILY[self.code]

    def clause(self, topic: circuits.Topic) -> str:
        """Return which clause treats a topic in the edition in force; empty under another code."""
        edition = self.edition
        if edition is None:
            return ""
        known = "" if circuits.clause_is_known(topic, edition) else " (the number of 2023)"
        return f"{circuits.clause(topic, edition)}{known}"

    def loads(self, circuit: Circuit) -> tuple[Load, ...]:
        """Return the loads of a circuit; none only where the file says so with an empty list."""
        if not circuit.loads and circuit.at.get("loads") is None:
            raise Missing(circuit, "loads")
        return circuit.loads

    def current_a(self, world: World, load: Load, circuit: Circuit) -> float:
        """Return the nameplate current of a load; the greater one where it is stated both ways, else its sheet's."""
        stated = []
        if load.current_a is not None:
            stated.append(world(load.current_a))
        if load.apparent_power_va is not None or not stated:
            if load.apparent_power_va is not None:
                power = world(load.apparent_power_va)
            elif self.figures.powered.items_of(load):
                power = self.figures.powered.sheet_va(world, load)
            else:
                raise Missing(load, "apparent_power")
            stated.append(power / world(need(circuit.voltage_v, circuit, "voltage")))
        return max(stated)

    def current(self, load: Load, circuit: Circuit) -> Figure:
        """Nameplate current of a load."""
        return self.figure("current", "A", lambda w: self.current_a(w, load, circuit), circuit, load)

    def known(self, circuit: Circuit, loads: Iterable[Load]) -> Drawn:
        """Return the loads whose current is known, and what is missing of the first that is not."""
        found, missing = [], None
        for load in loads:
            try:
                self.current(load, circuit)
            except Missing as one:
                missing = missing or one
            else:
                found.append(load)
        return Drawn(tuple(found), missing)

    def known_with_lighting(self, circuit: Circuit) -> Drawn:
        """Return the same of all that a circuit feeds, its lighting too."""
        drawn = self.known(circuit, self.loads(circuit))
        missing = drawn.missing
        if circuit.feeds_lighting is None:
            missing = missing or Missing(circuit, "feeds_lighting")
        elif circuit.feeds_lighting and circuit.lighting_va is None:
            missing = missing or Missing(circuit, "lighting")
        elif circuit.feeds_lighting and circuit.voltage_v is None:
            missing = missing or Missing(circuit, "voltage")
        return Drawn(drawn.loads, missing)

    def lighting_a(self, world: World, circuit: Circuit) -> float:
        """Return the current of the lighting that a circuit feeds as well, as far as it is known."""
        if not circuit.feeds_lighting or circuit.lighting_va is None or circuit.voltage_v is None:
            return 0.0
        return world(circuit.lighting_va) / world(circuit.voltage_v)

    def required(self, circuit: Circuit) -> Figure:
        """Return the rating that a circuit's loads ask for; by NFPA 70 what lasts counts a quarter more.

        What is not known is asked for unless it cannot decide: the known part may be too much already.
        """
        rating = need(circuit.rating_a, circuit, "rating")
        drawn = self.known_with_lighting(circuit)
        code = self.design.project.electrical_code
        most = circuits.CONTINUOUS_FACTOR
        factor = most if code is None or FAMILY[code] == "nfpa" else 1.0
        least = self._asked(circuit, drawn.loads, factor if code is not None else 1.0)
        if drawn.missing is None and code is not None:
            return least
        if least.value - least.u > rating.value + rating.u:
            return least
        if drawn.missing is not None:
            raise drawn.missing
        greatest = self._asked(circuit, drawn.loads, most)
        if greatest.value + greatest.u <= rating.value - rating.u:
            return greatest
        raise Missing(self.design, "project.codes.electrical")

    def _asked(self, circuit: Circuit, loads: tuple[Load, ...], factor: float) -> Figure:
        def compute(world: World) -> float:
            lasting = self.lighting_a(world, circuit)
            passing = 0.0
            if lasting and factor > 1.0:
                world.assume(LIGHTING_LASTS)
            for load in loads:
                amps = self.current_a(world, load, circuit)
                if load.continuous is None and factor > 1.0:
                    world.assume(CONTINUOUS_PRACTICE)
                if load.continuous is False:
                    passing += amps
                else:
                    lasting += amps
            return circuits.required_current_a(lasting, passing) if factor > 1.0 else lasting + passing

        return self.figure("rating that the loads ask for", "A", compute)

    def rating_a(self, circuit: Circuit) -> float:
        """Return the rating of a circuit's overcurrent device, at its least, as a limit to hold a figure against."""
        rating = need(circuit.rating_a, circuit, "rating")
        return rating.value - rating.u

    def least_volts(self, circuit: Circuit) -> float:
        """Return a circuit's nominal voltage at its least, for clauses that hold up to a voltage."""
        volts = need(circuit.voltage_v, circuit, "voltage")
        return volts.value - volts.u

    def device(self, circuit: Circuit) -> Figure:
        """Rating of a circuit's overcurrent device."""
        rating = need(circuit.rating_a, circuit, "rating")
        return self.figure("rating of the device", "A", lambda w: w(rating), circuit)

    def own_rating(self, receptacle: Receptacle) -> Figure:
        """Rating of a receptacle."""
        rating = need(receptacle.rating_a, receptacle, "rating")
        return self.figure("rating of the receptacle", "A", lambda w: w(rating))

    def feeds_receptacles(self, circuit: Circuit) -> bool:
        """Whether a circuit is large enough to feed receptacles, its uncertainty counted."""
        rating = need(circuit.rating_a, circuit, "rating")
        return rating.value - rating.u >= circuits.LEAST_FOR_RECEPTACLES_A

    def share(self, load: Load, circuit: Circuit) -> Figure:
        """Return the share of the circuit's rating that one load draws, in percent."""
        return self._share(circuit, (load,), "share of the rating")

    def _share(self, circuit: Circuit, loads: tuple[Load, ...], name: str) -> Figure:
        rating = need(circuit.rating_a, circuit, "rating")

        def compute(world: World) -> float:
            amps = sum(self.current_a(world, load, circuit) for load in loads)
            return 100.0 * circuits.rating_share(amps, world(rating))

        return self.figure(name, "%", compute)

    def fastened_share(self, circuit: Circuit) -> Figure:
        """Return the share of the rating that all loads fastened in place draw together, in percent."""
        loads = self.loads(circuit)
        drawn = self.known(circuit, [load for load in loads if load.connection == "fastened"])
        unsaid = next((Missing(load, "connection") for load in loads if load.connection is None), None)
        name, limit = "share of what is fastened in place", 100.0 * circuits.FASTENED_SHARE
        return self._known_or(drawn, unsaid, limit, lambda known: self._share(circuit, known, name))

    def receptacle_total(self, receptacle: Receptacle, circuit: Circuit) -> Figure:
        """Return the current of all plugs on one receptacle."""
        loads = self.loads(circuit)
        drawn = self.known(circuit, [load for load in loads if load.receptacle == receptacle.id])
        unsaid = next(
            (
                Missing(load, "receptacle")
                for load in loads
                if load.receptacle is None and load.connection != "fastened"
            ),
            None,
        )

        def total(known: tuple[Load, ...]) -> Figure:
            def compute(world: World) -> float:
                return sum(self.current_a(world, load, circuit) for load in known)

            return self.figure("current of all plugs", "A", compute)

        return self._known_or(drawn, unsaid, self.receptacle_limit_a(receptacle, circuit), total)

    def receptacle_limit_a(self, receptacle: Receptacle, circuit: Circuit) -> float:
        """Return the most that all plugs on a receptacle of a shared circuit may draw together."""
        own = need(receptacle.rating_a, receptacle, "rating").value
        return circuits.receptacle_total_a(own, need(circuit.rating_a, circuit, "rating").value)

    def receptacle_is_tabled(self, receptacle: Receptacle, circuit: Circuit) -> bool:
        """Whether a receptacle of its rating has a limit on a circuit of that rating."""
        own = need(receptacle.rating_a, receptacle, "rating").value
        return circuits.total_is_tabled(own, need(circuit.rating_a, circuit, "rating").value)

    @staticmethod
    def _known_or(
        drawn: Drawn, unsaid: Missing | None, limit: float, make: Callable[[tuple[Load, ...]], Figure]
    ) -> Figure:
        """Return the figure of what is known where that is all there is, or is too much already; else ask."""
        figure = make(drawn.loads)
        missing = drawn.missing or unsaid
        if missing is not None and figure.value - figure.u <= limit:
            raise missing
        return figure

    def receptacle_fits(self, receptacle: Receptacle, circuit: Circuit) -> bool:
        """Whether a receptacle's rating is one that its circuit may have.

        A single receptacle on an individual circuit has the circuit's rating or more (NFPA 70 210.21(B)(1)); every
        other by the table, in which a circuit of another rating has none.
        """
        own = need(receptacle.rating_a, receptacle, "rating").value
        whole = need(circuit.rating_a, circuit, "rating").value
        shared = circuits.receptacle_fits(own, whole) if whole in circuits.TABLED_A else False
        single = own >= whole
        if not need(circuit.dedicated, circuit, "dedicated") or single == shared:
            return shared
        return single if need(receptacle.outlets, receptacle, "outlets") == 1 else shared

    def linear_supplies(self, circuit: Circuit) -> tuple[int, Missing | None]:
        """Return how many loads are known to have a mains-frequency transformer, and of which it is not known."""
        count, missing = 0, None
        for load in self.loads(circuit):
            sheets = [getattr(item.product, "amplifier", None) for item in self.figures.powered.items_of(load)]
            said = [load.linear_supply, *(sheet.linear_supply for sheet in sheets if sheet is not None)]
            known = next((one for one in said if one is not None), None)
            count += bool(known)
            if known is None:
                missing = missing or Missing(load, "linear_supply")
        return count, missing

    def sheet_ratio(self, load: Load, circuit: Circuit) -> Figure:
        """Divide the draw that is declared for a load by what the sheets of its items say."""
        powered, volts = self.figures.powered, need(circuit.voltage_v, circuit, "voltage")

        def compute(world: World) -> float:
            return self.current_a(world, load, circuit) * world(volts) / powered.sheet_va(world, load)

        return self.figure("declared draw over the product sheet's", "", compute)

    def draw_ratio(self, load: Load, circuit: Circuit, amplifiers: tuple[Amplifier, ...]) -> Figure:
        """Divide the current of amplifiers by an estimate for one eighth of their rated power."""
        volts = need(circuit.voltage_v, circuit, "voltage")

        def compute(world: World) -> float:
            world.assume("all channels at one eighth of rated power")
            world.assume(f"amplifiers of power factor {mains_draw.UNKNOWN_POWER_FACTOR}")
            power = sum(_eighth_w(world, amplifier) for amplifier in amplifiers)
            return self.current_a(world, load, circuit) / mains_draw.mains_current_a(power, world(volts))

        return self.figure("declared current over the estimate", "", compute)


def _eighth_w(world: World, amplifier: Amplifier) -> float:
    """Return an estimate of an amplifier's mains power at one eighth of its rated power."""
    product = need(amplifier.product, amplifier, "product")
    data = need(product.amplifier, product, "amplifier")
    efficiency = mains_draw.EFFICIENCY_AT_EIGHTH[_TECHNOLOGY.get(data.technology or "", "unknown")]
    world.assume(f"amplifiers of efficiency {efficiency}")
    idle_w = world(product.idle_power_w) if product.idle_power_w is not None else 0.0
    rated_w = world(need(data.power_w, data, "power"))
    output_w = mains_draw.average_output_w(need(data.channels, data, "channels"), rated_w)
    return mains_draw.mains_power_w(output_w, efficiency, idle_w)
