"""Branch circuits: receptacles, what is plugged into them, and what stands between."""

from __future__ import annotations

from types import MappingProxyType
from typing import TYPE_CHECKING, Final

from roomlint.design.along import Along
from roomlint.design.element import Element
from roomlint.design.keys import Text, choice, flag, ident, text, whole
from roomlint.design.measured import Measured, length, quantity, surveyed
from roomlint.design.parts import named, several
from roomlint.design.quantity import Quantity, exact
from roomlint.design.reader import nearest

if TYPE_CHECKING:
    from collections.abc import Mapping

    from roomlint.design.reader import Book


PLUGS = (
    "nema-1-15", "nema-5-15", "nema-5-20", "bs1363", "cee7-4", "cee7-7", "cee7-16", "cee7-17", "as3112-10",
    "as3112-15", "iec60309-16", "iec60309-32",
)  # fmt: skip
"""Forms of plugs by the standard and its figure."""
SOCKETS = (
    "nema-5-15",
    "nema-5-20",
    "bs1363",
    "cee7-3",
    "cee7-5",
    "as3112-10",
    "as3112-15",
    "iec60309-16",
    "iec60309-32",
)
"""Forms of receptacles."""


class Receptacle(Along):
    """A receptacle (socket-outlet)."""

    KIND = "receptacle"

    id_key = ident()
    rating_a = quantity("Its rating.", "current", high=125.0, example="20 A")
    form = choice("Its form, by standard.", *SOCKETS)
    outlets = whole("How many plugs it takes: 1 for a single, 2 for a duplex or double.", 1, 6, example=2)
    spur = choice("Whether it is on a spur off a ring, and whether that is fused.", "none", "unfused", "fused")
    where = choice(
        "Where it is.", "habitable", "finished-basement", "unfinished-basement", "garage", "laundry", "kitchen",
        "bathroom", "crawl-space", "outdoors", key="place",
    )  # fmt: skip
    sink_m = Measured[Quantity | None](
        "To the edge of the nearest sink, the way a cord would take, or none.", "length", zero=True, high=50.0,
        example="1.20 m", surveyed=True, or_none=True,
    )  # fmt: skip
    bath_m = Measured[Quantity | None](
        "Level, to the edge of bath or shower, or none where the bathroom has neither.", "length", zero=True, high=50.0,
        example="3.0 m", surveyed=True, or_none=True,
    )  # fmt: skip
    wall = named("The wall it is on.", "surface", "rear")
    height_m = surveyed("Above the floor.", key="height", zero=True, high=20.0, example="0.45 m")
    facing_up = flag("Whether it faces up.")
    listed_for_floor = flag("Whether it is listed for facing up.")
    tamper_resistant = flag("Whether it is tamper resistant.")
    dimmed = flag("Whether a dimmer feeds it.")
    in_cabinet = flag("Whether it is in a cabinet, stage or riser.")
    reachable = flag("Whether its box is reached without taking anything of the building apart.")
    set_back_m = length(
        "How far the front edge of its box lies behind the finished surface; 0 mm when flush.", zero=True, high=0.3,
        example="3 mm",
    )  # fmt: skip

    def settle(self, book: Book) -> None:
        """Work out where it is along its wall."""
        self.begin(book.walls.get(self.given("wall") or ""), exact(0.0, "m"), book)

    @property
    def no_bath(self) -> bool:
        """Whether the file states that the bathroom it is in has neither bath nor shower."""
        return Receptacle.bath_m.says_none(self)

    @property
    def no_sink(self) -> bool:
        """Whether the file states that there is no sink near it."""
        return Receptacle.sink_m.says_none(self)


class Unit(Element):
    """A strip, a conditioner or an uninterruptible supply."""

    KIND = "unit"

    id_key = ident()
    kind = choice("What it is.", "strip", "conditioner", "ups", required=True, default="strip")
    rating_a = quantity("Its rated current.", "current", high=125.0, example="15 A")
    apparent_power_va = quantity("Its rated apparent power, instead of a current.", "apparent_power", example="1500 VA")
    receptacle = Text[str | None]("The receptacle it is plugged into.", example="rack-1", most=63)
    unit = Text[str | None](
        "The other strip, conditioner or supply it is plugged into.", example="conditioner", most=63
    )


class Load(Element):
    """A load."""

    KIND = "load"

    id_key = ident()
    what = text("What it is.", "power amplifier", told=True)
    feeds = named("Id of the element it is, when the design has it.", "element", "amplifier-ear")
    apparent_power_va = quantity("Nameplate apparent power.", "apparent_power")
    current_a = quantity("Nameplate current, instead of apparent_power.", "current", high=125.0, example="5 A")
    continuous = flag("Whether it is expected to run for three hours or more.")
    connection = choice("How it is connected.", "plug", "fastened")
    plug = choice("Form of its plug, by standard.", *PLUGS)
    fuse_a = quantity("Rating of the fuse in its plug.", "current", low=1.0, high=13.0, example="5 A")
    receptacle = Text[str | None]("The receptacle it is plugged into.", example="rack-1", most=63)
    unit = Text[str | None](
        "The strip, conditioner or uninterruptible supply it is plugged into; its receptacle is that one's.",
        example="conditioner", most=63,
    )  # fmt: skip
    cord_concealed = flag("Whether its cord runs through or inside a wall, floor or ceiling.")
    listed_inlet_kit = flag("Whether a listed inlet assembly is used for that.")
    linear_supply = flag("Whether it has a mains-frequency transformer supply.")


class Circuit(Element):
    """A branch circuit (final circuit)."""

    KIND = "circuit"

    id_key = ident()
    rating_a = quantity("Rating of its overcurrent device.", "current", high=125.0, example="20 A")
    voltage_v = quantity("Nominal voltage.", "voltage", low=12.0, high=480.0)
    conductor_m2 = quantity("Conductor size.", "conductor")
    material = choice("Conductor material.", "copper", "aluminium")
    length_m = length("One way, panel to farthest outlet.", example="14 m")
    installation = choice(
        "How the cable is laid.",
        "clipped",
        "conduit",
        "insulated-wall",
        "in-insulation",
    )
    arrangement = choice("How it runs from outlet to outlet.", "radial", "ring")
    dedicated = flag("Whether it feeds one piece of equipment only, an individual branch circuit.")
    feeds_lighting = flag("Whether it also feeds lighting.")
    lighting_va = quantity("Apparent power of that lighting.", "apparent_power", zero=True, example="120 VA")
    new = flag("Whether it is new or extended.")
    afci = flag("Whether it has arc-fault protection.")
    gfci = flag("Whether it has ground-fault protection.")
    rcd_a = quantity(
        "Rated residual current of its RCD, or none.", "current", low=0.001, high=1.0, example="30 mA", or_none=True
    )
    sequenced = flag("Whether its loads switch on one after another.")
    earth_lifted = flag("Whether a protective earth on it is lifted or adapted away.")
    panel = named("The panel that it starts from.", "panel", "house")
    feeder_drop = quantity(
        "Voltage drop of the feeder before it.", "ratio", low=0.0, high=0.2, zero=True, example="1.0 %"
    )
    receptacles = several("Its receptacles, or none.", Receptacle, most=40, what="receptacle", or_none=True)
    units = several(
        "Strips, conditioners and uninterruptible supplies plugged into it, or none.", Unit, most=24, what="unit",
        or_none=True,
    )  # fmt: skip
    loads = several("Its loads, or none.", Load, most=60, what="load", or_none=True)

    @property
    def no_rcd(self) -> bool:
        """Whether the file states that there is no residual-current device."""
        return Circuit.rcd_a.says_none(self)

    def settle(self, book: Book) -> None:
        """See that loads are plugged into receptacles of their circuit, say one current, and forms fit its voltage."""
        self._fit_forms(book)
        self._fit_units(book)
        known = [one.id for one in self.given("receptacles") or ()]
        for load in self.given("loads") or ():
            plugged = load.given("receptacle")
            if plugged is not None and plugged not in known:
                where = load.at.get("receptacle") or load.at
                book.cross(where, f"there is no receptacle {plugged!r} on this circuit; {nearest(plugged, known)}")
            power, current = load.given("apparent_power_va"), load.given("current_a")
            volts = self.given("voltage_v")
            if power is not None and current is not None and volts is not None:
                other = power.value / volts.value
                if not 1 / _AGREE <= current.value / other <= _AGREE:
                    text_of = f"{power.value:g} VA at {volts.value:g} V are {other:.1f} A, not {current.value:g} A."
                    book.cross(current.at, f"{text_of} Give one of the two.")

    def _fit_units(self, book: Book) -> None:
        """See that units and what is plugged into them form a tree, and let loads be on their unit's receptacle."""
        units = {unit.id: unit for unit in self.given("units") or ()}
        known = [one.id for one in self.given("receptacles") or ()]
        for one in (*units.values(), *(self.given("loads") or ())):
            into = one.given("unit")
            if into is not None and into not in units:
                book.cross(one.at.get("unit") or one.at, f"there is no unit {into!r} on this circuit; "
                           f"{nearest(into, list(units))}")  # fmt: skip
            if into is not None and one.given("receptacle") is not None:
                said = "it is plugged into a unit or into a receptacle; give one of the two."
                book.cross(one.at.get("receptacle") or one.at, said)
        for unit in units.values():
            plugged = unit.given("receptacle")
            if plugged is not None and plugged not in known:
                where = unit.at.get("receptacle") or unit.at
                book.cross(where, f"there is no receptacle {plugged!r} on this circuit; {nearest(plugged, known)}")
            if unit.id in (above := [one.id for one in self.above(unit)]):
                book.cross(unit.at.get("unit") or unit.at, f"it is plugged into itself, by way of {above[0]!r}.")
        for load in self.given("loads") or ():
            chain = self.above(load)
            last = chain[-1].given("receptacle") if chain else None
            if last is not None and load.given("receptacle") is None:
                load.put("receptacle", last, "unit")

    def above(self, one: Unit | Load) -> tuple[Unit, ...]:
        """Return the units that something is plugged into, the nearest first; each once, should they form a ring."""
        units = {unit.id: unit for unit in self.given("units") or ()}
        chain: list[Unit] = []
        here = units.get(one.given("unit") or "")
        while here is not None and here not in chain:
            chain.append(here)
            here = units.get(here.given("unit") or "")
        return tuple(chain)

    def _fit_forms(self, book: Book) -> None:
        """Refuse receptacles made for another voltage than the circuit's, or rated for more than their form is."""
        volts = self.given("voltage_v")
        for one in self.given("receptacles") or ():
            form = one.given("form") or ""
            low, high = next((of for start, of in _VOLTS_OF.items() if form.startswith(start)), (0.0, 1000.0))
            if volts is not None and not low <= volts.value <= high:
                made = f"a receptacle to {form.upper()} is made for {low:g} to {high:g} V"
                book.cross(one.at.get("form") or one.at, f"{made}, and its circuit has {volts.value:g} V; correct one.")
            rating, made_for = one.given("rating_a"), SOCKET_A.get(form)
            if rating is not None and made_for is not None and rating.value > made_for:
                words = (
                    f"a receptacle to {form.upper()} is made for {made_for:g} A, and is rated {rating.value:g} A here"
                )
                book.cross(rating.at, f"{words}; correct one.")


SOCKET_A: Final[Mapping[str, float]] = MappingProxyType({
    "nema-5-15": 15.0, "nema-5-20": 20.0, "bs1363": 13.0, "cee7-3": 16.0, "cee7-5": 16.0, "as3112-10": 10.0,
    "as3112-15": 15.0, "iec60309-16": 16.0, "iec60309-32": 32.0,
})  # fmt: skip
"""Rated current of receptacles by form: 13 A and 16 A read second-hand, the others from memory."""
_VOLTS_OF = {"nema-5": (100.0, 127.0), "bs1363": (200.0, 250.0), "cee7": (200.0, 250.0), "as3112": (200.0, 250.0)}
"""Nominal voltages of the circuits that forms of receptacles are made for, by how the form begins; from memory."""
_AGREE = 1.2
"""Two statements of one load that differ by more than this factor contradict each other."""
