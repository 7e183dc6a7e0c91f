"""Chapter mains: branch circuits, receptacles and cords."""

from __future__ import annotations

from typing import TYPE_CHECKING

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

    from roomlint.design.supply import Circuit, Load
    from roomlint.review import Figure, Room, Says

CAUTION = (
    "Caution: a design note, no electrical inspection; the adopted local code and the authority having jurisdiction decide,"
    " and a licensed electrician designs, installs and tests fixed wiring."
)
RECEPTACLE_TOP_M = 1.7
SMALLEST_RECEPTACLE_CIRCUIT_A = 15.0


def _loaded(room: Room) -> Iterator[Circuit]:
    return (circuit for circuit in room.design.circuits if circuit.loads)


def _circuits(room: Room) -> tuple[Circuit, ...]:
    return room.design.circuits


def _plugged(room: Room) -> Iterator[Group]:
    for circuit in room.design.circuits:
        for load in circuit.loads:
            if load.connection != "fastened":
                yield Group((load, circuit), joined=" on ")


def _loads(room: Room) -> Iterator[Load]:
    for circuit in room.design.circuits:
        yield from circuit.loads


def _receptacles(room: Room) -> Iterator[Group]:
    for circuit in room.design.circuits:
        for receptacle in circuit.receptacles:
            yield Group((receptacle, circuit), joined=" on ")


@rule(
    "mains.circuit-load",
    level=Level.ERROR,
    basis=standard("NFPA 70", "210.20(A)", edition="2020 and 2023", read=False, note="read in transcriptions"),
    each=_loaded,
    reads=("circuits[].rating", "circuits[].voltage", "circuits[].loads"),
    since="0.1.0",
    at="rating",
    caution=CAUTION,
)
def circuit_load(room: Room, circuit: Circuit) -> Against:
    """A circuit's loads stay within its rating, lasting ones counted a quarter more.

    Why: A breaker that carries its full rating for hours trips in the middle of the film, or ages.

    How decided: Nameplate currents; a load that lasts three hours or more counts 1.25 times, and so does one of which the
    file does not say. Sum against the rating; above 80 % of it is a note.

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
    moved with the 2023 edition; under another code it is a planning figure.

    Remedy: Give the item a circuit of its own.

    When to waive: Under a code without such a clause, with the electrician's word.
    """
    load, circuit = pair.elements
    if need(circuit.dedicated, circuit, "dedicated"):  # type: ignore[attr-defined]
        return does_not_apply("the circuit is dedicated.")
    need(load.connection, load, "connection")  # type: ignore[attr-defined]
    clause = room.figures.mains.clause("one plug-in item")
    level = None if clause else Level.NOTE
    return Against(room.figures.mains.share(load, circuit), level=level, says=f"{clause}." if clause else "")  # type: ignore[arg-type]


@rule(
    "mains.fastened-share",
    level=Level.WARNING,
    basis=standard("NFPA 70", "210.23(A)(2); 2023: 210.23(B)(2)", edition="2020 and 2023", read=False),
    each=_loaded,
    reads=("circuits[].loads", "circuits[].rating", "circuits[].feeds_lighting"),
    since="0.1.0",
    window=Window(None, 50.0, "%"),
    at="loads",
    caution=CAUTION,
)
def fastened_share(room: Room, circuit: Circuit) -> Figure | Says:
    """What is fastened in place takes at most half of a circuit that lights or plugs share.

    Why: Fixed equipment runs whenever it likes; half the circuit is kept for what people plug in.

    How decided: Nameplate currents of fastened loads over the rating, when the circuit also feeds lighting or plug-in
    loads and is not dedicated.

    Remedy: Move the fixed equipment to a circuit of its own.

    When to waive: The authority does not count the item as fastened in place.
    """
    if need(circuit.dedicated, circuit, "dedicated"):
        return does_not_apply("the circuit is dedicated.")
    plugged = any(load.connection == "plug" for load in circuit.loads)
    if not plugged and not need(circuit.feeds_lighting, circuit, "feeds_lighting"):
        return does_not_apply("no lighting and no plug shares the circuit.")
    return room.figures.mains.fastened_share(circuit)


@rule(
    "mains.receptacle-total",
    level=Level.WARNING,
    basis=standard("NFPA 70", "Table 210.21(B)(2)", edition="2023", read=False),
    each=_receptacles,
    reads=("circuits[].receptacles[].rating", "circuits[].loads[].receptacle"),
    since="0.1.0",
    at="rating",
    caution=CAUTION,
)
def receptacle_total(room: Room, pair: Group) -> Against | Says:
    """All plugs on one receptacle of a shared circuit together stay within its share.

    Why: Two plugs of one receptacle can overload it without either being too large.

    How decided: Sum of nameplate currents against 12 A for a 15 A receptacle, 16 A for a 20 A one on a 20 A circuit and
    24 A for a 30 A one.

    Remedy: Spread the plugs over receptacles, or use a circuit of its own.

    When to waive: Under a code without such a table, with the electrician's word.
    """
    receptacle, circuit = pair.elements
    if circuit.dedicated:  # type: ignore[attr-defined]
        return does_not_apply("the circuit is dedicated.")
    if not any(load.receptacle == receptacle.id for load in circuit.loads):  # type: ignore[attr-defined]
        return does_not_apply("nothing of the design is plugged in here.")
    rating = need(receptacle.rating_a, receptacle, "rating").value  # type: ignore[attr-defined]
    whole = need(circuit.rating_a, circuit, "rating").value  # type: ignore[attr-defined]
    if (rating, whole) not in {(15.0, 15.0), (15.0, 20.0), (20.0, 20.0), (30.0, 30.0)}:
        return asks(f"a {rating:g} A receptacle on a {whole:g} A circuit is not in the table.")
    total, most = room.figures.mains.receptacle_total(receptacle, circuit)  # type: ignore[arg-type]
    return Against(total, Window(None, most, "A"))


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
    need(room.design.project.electrical_code, room.design.project, "codes.electrical")
    if room.figures.mains.edition is None:
        return does_not_apply("the code in force sizes conductors by other tables; the electrician decides.")
    rating = need(circuit.rating_a, circuit, "rating").value
    if circuit.material == "aluminium" or rating > LARGEST_TREATED_A:
        return asks("aluminium conductors and circuits above 30 A are sized by a licensed electrician.")
    return room.figures.mains.conductor_margin(circuit)


LARGEST_TREATED_A = 30.0


@rule(
    "mains.voltage-drop",
    level=Level.NOTE,
    basis=standard(
        "NFPA 70", "210.19, informational note", edition="2020 and 2023", read=False, note="not enforceable"
    ),
    each=_loaded,
    reads=("circuits[].length", "circuits[].conductor", "circuits[].voltage", "circuits[].loads"),
    since="0.1.0",
    window=Window(None, 3.0, "%"),
    at="length",
    caution=CAUTION,
)
def voltage_drop(room: Room, circuit: Circuit) -> Against:
    """The voltage drop to the farthest outlet stays within 3 %.

    Why: Long thin runs starve amplifiers at peaks and dim what shares the circuit.

    How decided: Twice the length times the sum of nameplate currents times the resistance of copper at 75 degC; more than
    3 % is a note and more than 5 % a warning. The code recommends this and does not require it unless adopted locally.

    Remedy: A larger conductor or a shorter way.

    When to waive: The real current is known to be lower.
    """
    made = room.figures.mains.drop(circuit)
    heavy = made.value - made.u > FIVE_PERCENT
    return Against(made, level=Level.WARNING if heavy else Level.NOTE)


FIVE_PERCENT = 5.0


@rule(
    "mains.small-circuit-receptacle",
    level=Level.ERROR,
    basis=standard("NFPA 70", "210.23(A) and Table 210.24(1)", edition="2023", read=False),
    each=lambda room: (circuit for circuit in room.design.circuits if circuit.receptacles),
    reads=("circuits[].rating", "circuits[].receptacles"),
    since="0.1.0",
    at="rating",
    caution=CAUTION,
)
def small_circuit_receptacle(room: Room, circuit: Circuit) -> Says:
    """No 10 A branch circuit feeds a receptacle.

    Why: Circuits of 10 A came with the 2023 edition for lighting; anything may be plugged into a receptacle.

    How decided: Rating below 15 A with receptacles on the circuit, where the National Electrical Code holds.

    Remedy: Feed the receptacle from a 15 A or 20 A circuit.

    When to waive: Under another code; the electrician decides.
    """
    need(room.design.project.electrical_code, room.design.project, "codes.electrical")
    if room.figures.mains.edition is None:
        return does_not_apply("the clause is of the National Electrical Code.")
    rating = need(circuit.rating_a, circuit, "rating").value
    if rating < SMALLEST_RECEPTACLE_CIRCUIT_A:
        return fails(f"a {rating:g} A circuit feeds {len(circuit.receptacles)} receptacles.")
    return passes(f"a {rating:g} A circuit may feed receptacles.")


@rule(
    "mains.arc-fault",
    level=Level.WARNING,
    basis=standard("NFPA 70", "210.12(A); 2023: 210.12(B)", edition="2020 and 2023", read=False),
    each=_circuits,
    reads=("circuits[].afci", "circuits[].new", "circuits[].voltage", "project.codes.electrical"),
    since="0.1.0",
    at="afci",
    caution=CAUTION,
)
def arc_fault(room: Room, circuit: Circuit) -> Says:
    """A new or extended 120 V circuit of a living space has arc-fault protection.

    Why: An inspector will look for it, and it finds damaged cords that a breaker does not.

    How decided: 120 V circuits that are new or extended, under the National Electrical Code, must say afci: true.

    Remedy: Have an arc-fault breaker fitted.

    When to waive: The authority accepts another protection.
    """
    need(room.design.project.electrical_code, room.design.project, "codes.electrical")
    if room.figures.mains.edition is None:
        return does_not_apply("the clause is of the National Electrical Code.")
    if not need(circuit.new, circuit, "new"):
        return does_not_apply("the circuit is neither new nor extended.")
    if need(circuit.voltage_v, circuit, "voltage").value > HIGHEST_LIVING_V:
        return does_not_apply("the clause is for 120 V circuits.")
    if need(circuit.afci, circuit, "afci"):
        return passes("arc-fault protection is declared.")
    return fails(f"no arc-fault protection ({room.figures.mains.clause('arc-fault protection')}).")


HIGHEST_LIVING_V = 130.0


@rule(
    "mains.ground-fault",
    level=Level.WARNING,
    basis=standard("NFPA 70", "210.8(A)", edition="2020 and 2023", read=False, note="item numbers differ by copy"),
    each=lambda room: (circuit for circuit in room.design.circuits if circuit.receptacles),
    reads=("circuits[].gfci", "room.level", "project.codes.electrical"),
    since="0.1.0",
    at="gfci",
    caution=CAUTION,
)
def ground_fault(room: Room, circuit: Circuit) -> Says:
    """Receptacles in a basement have ground-fault protection.

    Why: Since 2020 finished basements count as well; damp floors and metal racks meet there.

    How decided: Circuits with receptacles in a room of level basement must say gfci: true, under the editions of 2020
    and 2023.

    Remedy: Have a ground-fault device fitted.

    When to waive: The authority accepts another protection.
    """
    need(room.design.project.electrical_code, room.design.project, "codes.electrical")
    if room.figures.mains.edition not in {"nec2020", "nec2023"}:
        return does_not_apply("the clause is of the 2020 and 2023 editions.")
    if need(room.design.shell.level, room.design.shell, "level") != "basement":
        return does_not_apply("the room is not in a basement.")
    if need(circuit.gfci, circuit, "gfci"):
        return passes("ground-fault protection is declared.")
    return fails("basement receptacles without ground-fault protection.")


@rule(
    "mains.tamper-resistant",
    level=Level.NOTE,
    basis=standard("NFPA 70", "406.12", edition="2023", read=False),
    each=_receptacles,
    reads=("circuits[].receptacles[].tamper_resistant", "circuits[].receptacles[].height"),
    since="0.1.0",
    at="tamper_resistant",
    caution=CAUTION,
)
def tamper_resistant(room: Room, pair: Group) -> Says:
    """A receptacle within reach of children is tamper resistant.

    Why: Dwellings need it below 1.7 m, behind furniture too.

    How decided: Receptacles not above 1.7 m must say tamper_resistant: true, under the National Electrical Code.

    Remedy: Fit a tamper-resistant receptacle.

    When to waive: Under another code; the electrician decides.
    """
    receptacle = pair.elements[0]
    need(room.design.project.electrical_code, room.design.project, "codes.electrical")
    if room.figures.mains.edition is None:
        return does_not_apply("the clause is of the National Electrical Code.")
    if need(receptacle.height_m, receptacle, "height").value > RECEPTACLE_TOP_M:  # type: ignore[attr-defined]
        return does_not_apply("it is above 1.7 m.")
    if need(receptacle.tamper_resistant, receptacle, "tamper_resistant"):  # type: ignore[attr-defined]
        return passes("tamper resistance is declared.")
    return fails("not tamper resistant.")


@rule(
    "mains.facing-up",
    level=Level.WARNING,
    basis=standard("NFPA 70", "406.5(H)", edition="2023", read=False),
    each=_receptacles,
    reads=("circuits[].receptacles[].facing_up", "circuits[].receptacles[].listed_for_floor"),
    since="0.1.0",
    at="facing_up",
    caution=CAUTION,
)
def facing_up(room: Room, pair: Group) -> Says:
    """No receptacle in seating or a riser faces up unless it is listed for that.

    Why: Drinks and dust fall in.

    How decided: A receptacle that faces up must say listed_for_floor: true.

    Remedy: A listed floor box or furniture power unit.

    When to waive: Under another code; the electrician decides.
    """
    receptacle = pair.elements[0]
    if not need(receptacle.facing_up, receptacle, "facing_up"):  # type: ignore[attr-defined]
        return passes("it does not face up.")
    if need(receptacle.listed_for_floor, receptacle, "listed_for_floor"):  # type: ignore[attr-defined]
        return passes("it is listed for facing up.")
    return fails("it faces up and is not listed for that.")


@rule(
    "mains.dimmed-receptacle",
    level=Level.ERROR,
    basis=standard("NFPA 70", "404.14(E); 2023: 404.14(F)", edition="2020 and 2023", read=False),
    each=_receptacles,
    reads=("circuits[].receptacles[].dimmed",),
    since="0.1.0",
    at="dimmed",
    caution=CAUTION,
)
def dimmed_receptacle(room: Room, pair: Group) -> Says:
    """No dimmer feeds a receptacle.

    Why: A dimmer is for lamps that are permanently connected; equipment on a dimmed receptacle fails or burns.

    How decided: A receptacle that says dimmed: true.

    Remedy: Feed the receptacle undimmed.

    When to waive: The control is listed for that very load.
    """
    receptacle = pair.elements[0]
    if need(receptacle.dimmed, receptacle, "dimmed"):  # type: ignore[attr-defined]
        return fails("a dimmer feeds it.")
    return passes("no dimmer feeds it.")


@rule(
    "mains.concealed-cord",
    level=Level.ERROR,
    basis=standard("NFPA 70", "400.12 and 400.10(A)(11)", edition="2020 and 2023", read=False),
    each=_loads,
    reads=("circuits[].loads[].cord_concealed", "circuits[].loads[].listed_inlet_kit"),
    since="0.1.0",
    at="cord_concealed",
    caution=CAUTION,
)
def concealed_cord(room: Room, load: Load) -> Says:
    """No power cord runs inside or through a wall, floor or ceiling.

    Why: A cord is no fixed wiring: inside a wall it is neither protected nor seen when it fails.

    How decided: A load with cord_concealed: true, unless a listed inlet assembly is declared.

    Remedy: A receptacle behind the equipment by an electrician, or a listed inlet kit.

    When to waive: Never without a licensed electrician's document.
    """
    if not need(load.cord_concealed, load, "cord_concealed"):
        return passes("its cord is in the open.")
    if load.listed_inlet_kit:
        return passes("a listed inlet assembly carries it through the wall.")
    return fails("its cord is concealed and no listed inlet assembly is declared.")


@rule(
    "mains.lifted-earth",
    level=Level.ERROR,
    basis=practice("a protective earth is never lifted against hum; every code of wiring forbids it"),
    each=_circuits,
    reads=("circuits[].earth_lifted",),
    since="0.1.0",
    at="earth_lifted",
    caution=CAUTION,
)
def lifted_earth(room: Room, circuit: Circuit) -> Says:
    """No protective earth is lifted or adapted away.

    Why: The metal of everything on that circuit can then stand at mains voltage.

    How decided: A circuit that says earth_lifted: true.

    Remedy: Balanced lines, an isolating transformer in the signal, or one circuit for all connected equipment.

    When to waive: Never.
    """
    if need(circuit.earth_lifted, circuit, "earth_lifted"):
        return fails("a protective earth is lifted; shock hazard.")
    return passes("no earth is lifted.")


@rule(
    "mains.inrush",
    level=Level.NOTE,
    basis=practice("two large transformers switched on together trip domestic breakers"),
    each=_loaded,
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
    for load in circuit.loads:
        need(load.linear_supply, load, "linear_supply")
    count = sum(bool(load.linear_supply) for load in circuit.loads)
    if count <= 1:
        return passes(f"{count} linear supplies on the circuit.")
    if need(circuit.sequenced, circuit, "sequenced"):
        return passes(f"{count} linear supplies, switched on in sequence.")
    return fails(f"{count} linear supplies switch on together.")
