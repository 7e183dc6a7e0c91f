"""Chapter mains: what branch circuits carry, and the conductors that carry it."""

from __future__ import annotations

from typing import TYPE_CHECKING, cast

from roomlint.design.base import Group, need
from roomlint.review import (
    Against,
    Level,
    Window,
    asks,
    does_not_apply,
    fails,
    passes,
    practice,
    rule,
    standard,
)

if TYPE_CHECKING:
    from collections.abc import Iterator

    from roomlint.design.supply import Circuit, Load, Receptacle
    from roomlint.review import Figure, Room, Says

CAUTION = (
    "Caution: a design note, no electrical inspection; the adopted local code and the authority having jurisdiction "
    "decide, and a licensed electrician designs, installs and tests fixed wiring."
)
LARGEST_TREATED_A = 30.0
TABLED = frozenset({(15.0, 15.0), (15.0, 20.0), (20.0, 20.0), (30.0, 30.0)})


def _circuits(room: Room) -> tuple[Circuit, ...]:
    return room.design.circuits


def _plugged(room: Room) -> Iterator[Group]:
    for circuit in room.design.circuits:
        for load in circuit.loads:
            if load.connection != "fastened":
                yield Group((load, circuit), joined=" on ")


def _drawn(pair: Group) -> tuple[Load, Circuit]:
    return cast("tuple[Load, Circuit]", pair.elements)


def _fed(pair: Group) -> tuple[Receptacle, Circuit]:
    return cast("tuple[Receptacle, Circuit]", pair.elements)


@rule(
    "mains.circuit-load",
    level=Level.ERROR,
    basis=(
        standard("NFPA 70", "210.20(A)", edition="2020 and 2023", read=False, note="read in transcriptions"),
        practice("a load counts as lasting three hours unless the file says otherwise, a choice of this rule book"),
    ),
    each=_circuits,
    reads=("circuits[].rating", "circuits[].voltage", "circuits[].loads"),
    since="0.1.0",
    at="rating",
    caution=CAUTION,
)
def circuit_load(room: Room, circuit: Circuit) -> Against:
    """A circuit's loads stay within its rating, lasting ones counted a quarter more.

    Why: A breaker that carries its full rating for hours trips in the middle of the film, or ages.

    How decided: Nameplate currents; a load that lasts three hours or more counts 1.25 times, and so does one of which
    the file does not say. Sum against the rating; above 80 % of it is a note. Under another code than the National
    Electrical Code the quarter more is a cautious planning figure.

    Remedy: Move a load to another circuit, or have a dedicated circuit run.

    When to waive: An electrician has confirmed the demand in writing.
    """
    rating = need(circuit.rating_a, circuit, "rating").value
    made = room.figures.mains.required(circuit)
    return Against(made, Window(None, rating, "A"), target=Window(None, 0.8 * rating, "A"))


@rule(
    "mains.plug-in-share",
    level=Level.WARNING,
    basis=standard("NFPA 70", "210.23(A)(1); 2023: 210.23(B)(1)", edition="2020 and 2023", read=False),
    each=_plugged,
    reads=("circuits[].loads", "circuits[].rating", "circuits[].dedicated", "project.codes.electrical"),
    since="0.1.0",
    window=Window(None, 80.0, "%"),
    at="what",
    caution=CAUTION,
)
def plug_in_share(room: Room, pair: Group) -> Against | Says:
    """One plug-in item takes at most 80 % of a shared circuit.

    Why: The rest is left for whatever else is plugged in; a power strip adds outlets, not capacity.

    How decided: Nameplate current over the circuit's rating, unless the circuit is dedicated to the item. The clause
    moved with the 2023 edition; under another code it is a planning figure and a note.

    Remedy: Give the item a circuit of its own.

    When to waive: Under a code without such a clause, with the electrician's word.
    """
    load, circuit = _drawn(pair)
    if need(circuit.dedicated, circuit, "dedicated"):
        return does_not_apply("the circuit is dedicated.")
    need(load.connection, load, "connection")
    clause = room.figures.mains.clause("one plug-in item")
    level = None if clause else Level.NOTE
    return Against(room.figures.mains.share(load, circuit), level=level, says=f"{clause}." if clause else "")


@rule(
    "mains.fastened-share",
    level=Level.WARNING,
    basis=standard("NFPA 70", "210.23(A)(2); 2023: 210.23(B)(2)", edition="2020 and 2023", read=False),
    each=_circuits,
    reads=("circuits[].loads", "circuits[].rating", "circuits[].feeds_lighting"),
    since="0.1.0",
    window=Window(None, 50.0, "%"),
    at="loads",
    caution=CAUTION,
)
def fastened_share(room: Room, circuit: Circuit) -> Against | Says:
    """What is fastened in place takes at most half of a circuit that lights or plugs share.

    Why: Fixed equipment runs whenever it likes; half the circuit is kept for what people plug in.

    How decided: Nameplate currents of fastened loads over the rating, when the circuit also feeds lighting or plug-in
    loads and is not dedicated. The clause moved with the 2023 edition; under another code it is a planning figure and
    a note.

    Remedy: Move the fixed equipment to a circuit of its own.

    When to waive: The authority does not count the item as fastened in place.
    """
    if need(circuit.dedicated, circuit, "dedicated"):
        return does_not_apply("the circuit is dedicated.")
    plugged = any(load.connection == "plug" for load in room.figures.mains.loads(circuit))
    if not plugged and not need(circuit.feeds_lighting, circuit, "feeds_lighting"):
        return does_not_apply("no lighting and no plug shares the circuit.")
    level = None if room.figures.mains.edition else Level.NOTE
    return Against(room.figures.mains.fastened_share(circuit), level=level)


@rule(
    "mains.receptacle-total",
    level=Level.WARNING,
    basis=standard("NFPA 70", "Table 210.21(B)(2)", edition="2023", read=False),
    each=lambda room: room.figures.mains.receptacles,
    reads=("circuits[].receptacles[].rating", "circuits[].loads[].receptacle"),
    since="0.1.0",
    at="rating",
    caution=CAUTION,
)
def receptacle_total(room: Room, pair: Group) -> Against | Says:
    """All plugs on one receptacle of a shared circuit together stay within its share.

    Why: Two plugs of one receptacle can overload it without either being too large.

    How decided: Sum of nameplate currents against 12 A for a 15 A receptacle, 16 A for a 20 A one on a 20 A circuit and
    24 A for a 30 A one. Under another code than the National Electrical Code it is a planning figure and a note.

    Remedy: Spread the plugs over receptacles, or use a circuit of its own.

    When to waive: Under a code without such a table, with the electrician's word.
    """
    receptacle, circuit = _fed(pair)
    if need(circuit.dedicated, circuit, "dedicated"):
        return does_not_apply("the circuit is dedicated.")
    if not any(load.receptacle == receptacle.id for load in circuit.loads):
        return does_not_apply("nothing of the design is plugged in here.")
    rating = need(receptacle.rating_a, receptacle, "rating").value
    whole = need(circuit.rating_a, circuit, "rating").value
    if (rating, whole) not in TABLED:
        return asks(f"a {rating:g} A receptacle on a {whole:g} A circuit is not in the table.")
    total, most = room.figures.mains.receptacle_total(receptacle, circuit)
    return Against(total, Window(None, most, "A"), level=None if room.figures.mains.edition else Level.NOTE)


@rule(
    "mains.conductor-size",
    level=Level.ERROR,
    basis=standard("NFPA 70", "Table 210.24 and 240.4(D)", edition="2020 and 2023", read=False),
    each=_circuits,
    reads=("circuits[].conductor", "circuits[].rating", "circuits[].material", "project.codes.electrical"),
    since="0.1.0",
    window=Window(99.0, None, "%"),
    at="conductor",
    caution=CAUTION,
)
def conductor_size(room: Room, circuit: Circuit) -> Figure | Says:
    """The conductor is large enough for the breaker that protects it.

    Why: A breaker larger than its conductor lets the conductor overheat before it trips.

    How decided: Copper, 14 AWG to 15 A, 12 AWG to 20 A, 10 AWG to 30 A; a metric conductor by its area. Only under the
    National Electrical Code; aluminium and larger circuits are left to a person.

    Remedy: A smaller breaker, or a larger conductor.

    When to waive: Never without a licensed electrician's document.
    """
    need(room.design.project.electrical_code, room.design, "project.codes.electrical")
    if room.figures.mains.edition is None:
        return does_not_apply("the code in force sizes conductors by other tables; the electrician decides.")
    rating = need(circuit.rating_a, circuit, "rating").value
    if circuit.material == "aluminium" or rating > LARGEST_TREATED_A:
        return asks("aluminium conductors and circuits above 30 A are sized by a licensed electrician.")
    return room.figures.mains.conductor_margin(circuit)


@rule(
    "mains.voltage-drop",
    level=Level.WARNING,
    basis=standard(
        "NFPA 70", "210.19, informational note", edition="2020 and 2023", read=False, note="not enforceable"
    ),
    each=_circuits,
    reads=("circuits[].length", "circuits[].conductor", "circuits[].voltage", "circuits[].loads"),
    since="0.1.0",
    window=Window(None, 5.0, "%"),
    target=Window(None, 3.0, "%"),
    at="length",
    caution=CAUTION,
)
def voltage_drop(room: Room, circuit: Circuit) -> Against | Says:
    """The voltage drop to the farthest outlet stays within 5 %, better within 3 %.

    Why: Long thin runs starve amplifiers at peaks and dim what shares the circuit.

    How decided: Twice the length times the sum of nameplate currents times the resistance of copper at 75 degC; more
    than 3 % is a note and more than 5 % a warning. The code recommends it and requires it only where adopted.

    Remedy: A larger conductor or a shorter way.

    When to waive: The real current is known to be lower.
    """
    if circuit.material not in {None, "copper"}:
        return asks(f"the drop of {circuit.material} conductors is not computed here; a licensed electrician decides.")
    return Against(room.figures.mains.drop(circuit), says="Take a larger conductor or a shorter way.")


@rule(
    "mains.inrush",
    level=Level.NOTE,
    basis=practice("two large transformers switched on together trip domestic breakers"),
    each=_circuits,
    reads=("circuits[].loads[].linear_supply", "circuits[].sequenced"),
    since="0.1.0",
    at="sequenced",
    caution=CAUTION,
)
def inrush(room: Room, circuit: Circuit) -> Says:
    """Two or more large transformers on a circuit switch on one after the other.

    Why: A toroid draws many times its rating for a cycle or two; two of them together open a breaker.

    How decided: Number of loads with linear_supply: true on the circuit, against sequenced: true.

    Remedy: A sequencer with one to three seconds between steps.

    When to waive: The equipment has its own soft start.
    """
    for load in room.figures.mains.loads(circuit):
        need(load.linear_supply, load, "linear_supply")
    count = sum(bool(load.linear_supply) for load in circuit.loads)
    if count <= 1:
        return passes(f"{count} linear supplies on the circuit.")
    if need(circuit.sequenced, circuit, "sequenced"):
        return passes(f"{count} linear supplies, switched on in sequence.")
    return fails(f"{count} linear supplies switch on together.")


@rule(
    "mains.total-drop",
    level=Level.WARNING,
    basis=standard(
        "NFPA 70", "210.19, informational note", edition="2020 and 2023", read=False, note="not enforceable"
    ),
    each=lambda room: tuple(circuit for circuit in room.design.circuits if circuit.material in {None, "copper"}),
    reads=("circuits[].feeder_drop", "circuits[].length", "circuits[].conductor", "circuits[].loads"),
    since="0.1.0",
    window=Window(None, 5.0, "%"),
    at="feeder_drop",
    caution=CAUTION,
)
def total_drop(room: Room, circuit: Circuit) -> Against:
    """Feeder and branch together lose no more than 5 % of the voltage.

    Why: The equipment sees the sum, not the branch alone.

    How decided: The drop of mains.voltage-drop plus the feeder's as given. Recommended by the code, not required.

    Remedy: A larger conductor in branch or feeder.

    When to waive: The real current is known to be lower.
    """
    return Against(room.figures.mains.whole_drop(circuit), says="Take a larger conductor in branch or feeder.")


@rule(
    "mains.declared-draw",
    level=Level.NOTE,
    basis=standard("IEC 60065", "4.2.6: one eighth of rated power", read=False),
    each=lambda room: room.figures.mains.amplifiers,
    reads=("circuits[].loads[].feeds", "circuits[].loads[].current", "electronics.amplifiers[].product"),
    since="0.1.0",
    window=Window(1.0, None, ""),
    caution=CAUTION,
)
def declared_draw(room: Room, pair: Group) -> Against:
    """An amplifier's declared current is no lower than what one eighth of its power needs.

    Why: A low declaration makes a circuit look emptier than it is.

    How decided: Declared current over an estimate from channels, rated power, the efficiency of its technology and a
    power factor of 0.65. The nameplate outranks the estimate.

    Remedy: Enter the nameplate current.

    When to waive: The maker publishes a measured draw at one eighth of rated power.
    """
    load, circuit = _drawn(pair)
    return Against(room.figures.mains.draw_ratio(load, circuit), says="Enter the nameplate current.")
