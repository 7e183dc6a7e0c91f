"""Conductors, plugs and receptacles against the devices before them, and the voltage that a run loses."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING, Final, Literal, NamedTuple

from roomlint.design.base import Missing, need
from roomlint.design.quantity import Assumption, exact
from roomlint.design.wiring import SOCKET_A
from roomlint.figures import ampacity, circuits, conductors, wiring_rules
from roomlint.figures.domain import Refused
from roomlint.measure.view import View

if TYPE_CHECKING:
    from collections.abc import Callable

    from roomlint.design.quantity import Quantity
    from roomlint.design.supply import Cable, Circuit, Load, Receptacle
    from roomlint.figures.ampacity import Laying
    from roomlint.figures.conductors import Material
    from roomlint.measure.figure import Figure
    from roomlint.measure.world import World

NFPA_WARM_DEGC: Final = 75.0
"""Temperature of the conductor that NFPA 70 tabulates resistance for."""
IEC_WARM_DEGC: Final = 70.0
"""The same of PVC cable by IEC 60364 and BS 7671."""
COOL_DEGC: Final = 30.0
"""Air that the tables of IEC 60364 and BS 7671 are for."""
FAR_END: Final = "all loads at the far end of their circuit"
AS_RADIAL: Final = "a radial circuit"
_SMALL_CIRCUIT_A: Final = 10.0
_MM2: Final = 1e6
_HAIR_MM2: Final = 1e-6
_PIPES: Final = frozenset({"emt", "ent", "pvc", "trunking"})
"""Raceways that a cable runs in; a sleeve is only passed."""
ENOUGH_PERCENT: Final = 100.0


class Held(NamedTuple):
    """A figure and the limit that it is held against."""

    figure: Figure
    limit: float


class Wire(NamedTuple):
    """What a conductor carries of what it must, in percent, and what it carries, A."""

    share: Figure
    carried: Figure
    cool: Figure | None = None
    """The same share in air of 30 C, where the code in force is taken to reckon with warmer air."""


class Damp(NamedTuple):
    """Whether a receptacle is where ground-fault protection is wanted; None while something is not known."""

    wanted: bool | None
    because: Literal["", "basement", "place", "sink"] = ""
    missing: Missing | None = None


class Protection(View):
    """What stands between an overload and a fire."""

    def _material(self, circuit: Circuit) -> Material:
        return "aluminium" if need(circuit.material, circuit, "material") == "aluminium" else "copper"

    def conductor(self, circuit: Circuit) -> Wire:
        """Return what a circuit's conductor carries, and how much that is of what it must.

        How the cable is laid, and whether a British circuit is a ring, is asked for only where it decides.
        """
        area = need(circuit.conductor_m2, circuit, "conductor")
        return self._carries(circuit, area, need(circuit.rating_a, circuit, "rating"))

    def cable(self, cable: Cable, circuit: Circuit) -> Wire:
        """Return what a cable carries, and how much that is of what its circuit asks for; in a pipe it cools less."""
        area = need(cable.conductor_m2, cable, "conductor")
        pipe = next((one for one in self.design.raceways if one.id == cable.raceway), None)
        rating = need(circuit.rating_a, circuit, "rating")
        return self._carries(circuit, area, rating, in_pipe=pipe is not None and pipe.kind in _PIPES)

    def _carries(self, circuit: Circuit, area: Quantity, rating: Quantity, *, in_pipe: bool = False) -> Wire:
        material, device = self._material(circuit), rating.value + rating.u
        if self.figures.mains.family == "nfpa":
            sixteen = self.figures.mains.edition == "nec2026" and device <= _SMALL_CIRCUIT_A
            self._refuse_beyond(area.value * _MM2, device, material)

            def carried(world: World) -> float:
                return ampacity.nfpa_ampacity_a(world(area) * _MM2, material, sixteen_awg=sixteen)

            return self._wire(carried, rating)
        self._refuse_beyond(area.value * _MM2, device, material)
        layings = [laying for laying in ampacity.LAYINGS if circuit.installation in {None, laying}]
        if in_pipe:
            # `LAYINGS` begins with what cools least: a pipe is no better than itself.
            layings = [min(laying, "conduit", key=ampacity.LAYINGS.index) for laying in layings]
        least, most = self._asked(circuit, area, rating, material)
        best = self._laid(area, material, layings[-1], least)
        worst = self._laid(area, material, layings[0], most)
        if best.share.value - best.share.u < ENOUGH_PERCENT:
            return best
        if worst.share.value + worst.share.u >= ENOUGH_PERCENT:
            return worst
        raise Missing(circuit, "installation" if len(layings) > 1 else "arrangement")

    def _wire(self, carried: Callable[[World], float], asked: Quantity) -> Wire:
        def share(world: World) -> float:
            return 100.0 * carried(world) / world(asked)

        return Wire(
            self.figure("what the conductor carries of the device's rating", "%", share),
            self.figure("current that the conductor carries", "A", carried),
        )

    def _laid(self, area: Quantity, material: Material, laying: Laying, asked: Quantity) -> Wire:
        family = self.figures.mains.family
        air = ampacity.AIR_DEGC.get(family)

        def carried(world: World) -> float:
            world.assume(Assumption("PVC cable in air of {}, no other cable beside it", (air or COOL_DEGC, "degC")))
            return ampacity.laid_ampacity_a(family, world(area) * _MM2, laying, material)

        def cool(world: World) -> float:
            return 100.0 * ampacity.iec_ampacity_a(world(area) * _MM2, laying, material) / world(asked)

        wire = self._wire(carried, asked)
        return wire if air is None else wire._replace(cool=self.figure("the same in cooler air", "%", cool))

    def _asked(
        self, circuit: Circuit, area: Quantity, rating: Quantity, material: Material
    ) -> tuple[Quantity, Quantity]:
        """Return the least and the most that a circuit's conductor may have to carry, by what is said of a ring."""
        ring = (
            self.figures.mains.family == "bs"
            and ampacity.RING_LEAST_A < rating.value <= ampacity.RING_MOST_A
            and area.value * _MM2 >= ampacity.RING_LEAST_MM2 - _HAIR_MM2
            and material == "copper"
        )
        if not ring or circuit.arrangement == "radial":
            return (rating, rating)
        least = exact(ampacity.RING_LEAST_A, "A")
        return (least, least) if circuit.arrangement == "ring" else (least, rating)

    def _refuse_beyond(self, area_mm2: float, device_a: float, material: Material) -> None:
        family = self.figures.mains.family
        top = ampacity.table_ends_a(family, material)
        if family == "nfpa":
            most = ampacity.nfpa_ampacity_a(area_mm2, material)
        else:
            most = ampacity.laid_ampacity_a(family, area_mm2, "clipped", material)
        if device_a > top and most >= top:
            raise Refused(f"conductors for more than {top:g} A are not tabulated here")

    def from_bath(self, receptacle: Receptacle) -> Figure:
        """Level distance from a receptacle to the edge of the bath or shower."""
        away = need(receptacle.bath_m, receptacle, "bath")
        return self.figure("distance to the bath", "m", lambda w: w(away), receptacle)

    def drop(self, circuit: Circuit) -> Figure:
        """Voltage drop to the farthest outlet with all loads there, in percent, the conductors warm."""
        return self.once(("drop", circuit), lambda: self._drop(circuit))

    def _drop(self, circuit: Circuit) -> Figure:
        length, area = need(circuit.length_m, circuit, "length"), need(circuit.conductor_m2, circuit, "conductor")
        volts, material = need(circuit.voltage_v, circuit, "voltage"), self._material(circuit)
        mains = self.figures.mains
        warm = NFPA_WARM_DEGC if mains.family == "nfpa" else IEC_WARM_DEGC
        drawn = mains.known_with_lighting(circuit)

        def compute(world: World) -> float:
            world.assume(Assumption(f"{material} at {{}}", (warm, "degC")))
            world.assume(FAR_END)
            amps = mains.lighting_a(world, circuit)
            amps += sum(mains.current_a(world, load, circuit) for load in drawn.loads)
            per_m = conductors.installed_ohm_per_m(world(area) * _MM2, warm, material)
            percent = conductors.drop_percent(conductors.voltage_drop_v(world(length), amps, per_m), world(volts))
            if circuit.arrangement == "ring":
                # Both ways round lead to the far point: half the current, half the drop.
                return percent / 2.0
            if circuit.arrangement is None and mains.family == "bs":
                world.assume(AS_RADIAL)
            return percent

        figure = self.figure("voltage drop", "%", compute)
        if drawn.missing is not None and figure.value - figure.u <= self.drop_limit_percent(circuit):
            raise drawn.missing
        return figure

    def whole_drop(self, circuit: Circuit) -> Figure:
        """Voltage drop from the service on, feeder and branch together, in percent."""
        branch = self.drop(circuit)
        feeder = circuit.feeder_drop
        if feeder is None and self.figures.boards.of(circuit).kind == "subpanel":
            raise Missing(circuit, "feeder_drop")

        def compute(world: World) -> float:
            return branch.at(world) + (100.0 * world(feeder) if feeder is not None else 0.0)

        return self.figure("voltage drop of feeder and branch", "%", compute)

    def drop_limit_percent(self, circuit: Circuit) -> float:
        """Return the greatest drop that the code in force knows: less where lighting shares the circuit."""
        if circuit.feeds_lighting and self.figures.mains.family in {"iec", "bs"}:
            return wiring_rules.LIGHTING_DROP_PERCENT
        return wiring_rules.OTHER_DROP_PERCENT

    def residual(self, circuit: Circuit) -> Figure:
        """Rated residual current of the protective device."""
        rated = need(circuit.rcd_a, circuit, "rcd")
        return self.figure("rated residual current", "mA", lambda w: 1e3 * w(rated))

    def only_large_sockets(self, circuit: Circuit) -> bool:
        """Whether every socket-outlet of a circuit is rated above 32 A, by its rating or its form.

        One that says neither is behind a device of that rating at most, where the circuit gives it.
        """
        largest, unknown = wiring_rules.LARGEST_GENERAL_SOCKET_A, None
        for one in circuit.receptacles:
            known = [one.rating_a.value - one.rating_a.u] if one.rating_a is not None else []
            known += [SOCKET_A[one.form]] if one.form is not None else []
            if min(known, default=math.inf) <= largest:
                return False
            if not known:
                unknown = unknown or one
        if unknown is None:
            return True
        if self.figures.mains.rating_a(circuit) <= largest:
            return False
        raise Missing(unknown, "form")

    def ground_fault(self, receptacle: Receptacle) -> Damp:
        """Return whether the edition of NFPA 70 in force wants ground-fault protection of a receptacle."""
        edition, found = self.figures.mains.edition, Damp(wanted=False)
        place, sink, level = receptacle.where, receptacle.sink_m, self.design.shell.level
        if edition is None:
            return found
        # The room's level says as much as that: since 2020 it does not matter whether the basement is finished.
        if level == "basement" and circuits.wants_ground_fault("finished-basement", edition):
            found = Damp(wanted=True, because="basement")
        elif place is not None and circuits.wants_ground_fault(place, edition):
            found = Damp(wanted=True, because="place")
        elif sink is not None and sink.value - sink.u <= circuits.SINK_M:
            found = Damp(wanted=True, because="sink")
        elif place is None:
            found = Damp(wanted=None, missing=Missing(receptacle, "place"))
        elif sink is None and not receptacle.no_sink:
            found = Damp(wanted=None, missing=Missing(receptacle, "sink"))
        return found

    def height(self, receptacle: Receptacle) -> Figure:
        """Height of a receptacle above the floor."""
        height = need(receptacle.height_m, receptacle, "height")
        return self.figure("height", "m", lambda w: w(height))

    def out_of_reach(self, receptacle: Receptacle) -> bool:
        """Whether a receptacle is too high for children for certain."""
        height = need(receptacle.height_m, receptacle, "height")
        return height.value - height.u > circuits.REACH_OF_CHILDREN_M

    def plug(self, load: Load, circuit: Circuit) -> Held:
        """Return the current of a load and the least rating on its way: plug, fuse in the plug, receptacle.

        What is not known is asked for only where it decides.
        """
        return self.once(("plug", circuit, load), lambda: self._plug(load, circuit))

    def _plug(self, load: Load, circuit: Circuit) -> Held:
        current = self.figures.mains.current(load, circuit)
        parts = [*self._plug_ratings(load), self._socket_rating(load, circuit)]
        lowest, highest = min(low for low, _, _ in parts), min(high for _, high, _ in parts)
        if current.value + current.u > highest:
            return Held(current, highest)
        unsure = next(
            (missing for low, _, missing in parts if missing is not None and low < current.value + current.u), None
        )
        if unsure is not None:
            raise unsure
        return Held(current, lowest if math.isfinite(lowest) and lowest > 0.0 else highest)

    def _plug_ratings(self, load: Load) -> list[tuple[float, float, Missing | None]]:
        """Return the least and the greatest rating that plug and fuse may have, and what would tell which."""
        if load.plug is None:
            return [(0.0, math.inf, Missing(load, "plug"))]
        rated = wiring_rules.PLUG_A[load.plug]
        found: list[tuple[float, float, Missing | None]] = [(rated, rated, None)]
        if load.plug == wiring_rules.FUSED_PLUG:
            fuse = load.fuse_a
            if fuse is None:
                found.append((wiring_rules.LEAST_FUSE_A, rated, Missing(load, "fuse")))
            else:
                found.append((fuse.value, fuse.value, None))
        return found

    def _socket_rating(self, load: Load, circuit: Circuit) -> tuple[float, float, Missing | None]:
        receptacle = self.receptacle_of(load, circuit)
        if receptacle is None:
            return (0.0, math.inf, Missing(load, "receptacle"))
        ratings = [receptacle.rating_a.value] if receptacle.rating_a is not None else []
        ratings += [SOCKET_A[receptacle.form]] if receptacle.form is not None else []
        known = min(ratings, default=math.inf)
        if receptacle.rating_a is None or receptacle.form is None:
            key = "form" if receptacle.form is None else "rating"
            return (0.0, known, Missing(receptacle, key))
        return (known, known, None)

    @staticmethod
    def receptacle_of(load: Load, circuit: Circuit) -> Receptacle | None:
        """Return the receptacle that a load is plugged into."""
        return next((one for one in circuit.receptacles if one.id == load.receptacle), None)

    def plug_fits(self, load: Load, circuit: Circuit) -> bool:
        """Whether a load's plug is one that its receptacle takes."""
        receptacle = need(self.receptacle_of(load, circuit), load, "receptacle")
        form = need(receptacle.form, receptacle, "form")
        return wiring_rules.plug_fits(need(load.plug, load, "plug"), form)

    def before_socket(self, receptacle: Receptacle, circuit: Circuit) -> Held:
        """Return the rating of the device before a socket-outlet and the greatest that it is fitted behind."""
        rating = need(circuit.rating_a, circuit, "rating")
        limit = wiring_rules.greatest_device_a(need(receptacle.form, receptacle, "form"))
        return Held(self.figure("rating of the device", "A", lambda w: w(rating)), limit)
