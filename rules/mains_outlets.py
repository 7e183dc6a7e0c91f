"""Chapter mains: receptacles, protection and cords."""

from __future__ import annotations

from typing import TYPE_CHECKING, cast

from roomlint.design.base import Group, need
from roomlint.review import Level, Window, does_not_apply, fails, passes, practice, rule, standard

if TYPE_CHECKING:
    from collections.abc import Iterator

    from roomlint.design.supply import Circuit, Load, Receptacle
    from roomlint.review import Figure, Room, Says

CAUTION = (
    "Caution: a design note, no electrical inspection; the adopted local code and the authority having jurisdiction "
    "decide, and a licensed electrician designs, installs and tests fixed wiring."
)
RECEPTACLE_TOP_M = 1.7
SMALLEST_RECEPTACLE_CIRCUIT_A = 15.0
HIGHEST_LIVING_V = 130.0


def _circuits(room: Room) -> tuple[Circuit, ...]:
    return room.design.circuits


def _receptacles(room: Room) -> tuple[Group, ...]:
    return room.figures.mains.receptacles


def _fed(pair: Group) -> tuple[Receptacle, Circuit]:
    return cast("tuple[Receptacle, Circuit]", pair.elements)


def _loads(room: Room) -> Iterator[Load]:
    for circuit in room.design.circuits:
        yield from circuit.loads


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
    need(room.design.project.electrical_code, room.design, "project.codes.electrical")
    if room.figures.mains.edition is None:
        return does_not_apply("the clause is of the National Electrical Code.")
    rating = need(circuit.rating_a, circuit, "rating").value
    if rating < SMALLEST_RECEPTACLE_CIRCUIT_A:
        return fails(f"a {rating:g} A circuit feeds receptacles ({len(circuit.receptacles)}).")
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
    need(room.design.project.electrical_code, room.design, "project.codes.electrical")
    if room.figures.mains.edition is None:
        return does_not_apply("the clause is of the National Electrical Code.")
    if not need(circuit.new, circuit, "new"):
        return does_not_apply("the circuit is neither new nor extended.")
    if need(circuit.voltage_v, circuit, "voltage").value > HIGHEST_LIVING_V:
        return does_not_apply("the clause is for 120 V circuits.")
    if need(circuit.afci, circuit, "afci"):
        return passes("arc-fault protection is declared.")
    return fails(f"no arc-fault protection ({room.figures.mains.clause('arc-fault protection')}).")


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
    need(room.design.project.electrical_code, room.design, "project.codes.electrical")
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
    receptacle, _ = _fed(pair)
    need(room.design.project.electrical_code, room.design, "project.codes.electrical")
    if room.figures.mains.edition is None:
        return does_not_apply("the clause is of the National Electrical Code.")
    if need(receptacle.height_m, receptacle, "height").value > RECEPTACLE_TOP_M:
        return does_not_apply("it is above 1.7 m.")
    if need(receptacle.tamper_resistant, receptacle, "tamper_resistant"):
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
    receptacle, _ = _fed(pair)
    if not need(receptacle.facing_up, receptacle, "facing_up"):
        return passes("it does not face up.")
    if need(receptacle.listed_for_floor, receptacle, "listed_for_floor"):
        return passes("it is listed for facing up.")
    return fails("it faces up and is not listed for that.")


@rule(
    "mains.dimmed-receptacle",
    level=Level.ERROR,
    basis=standard(
        "NFPA 70", "404.14(E); 2023: 404.14(F)", edition="2020 and 2023", read=False, note="2020 number from memory"
    ),
    each=_receptacles,
    reads=("circuits[].receptacles[].dimmed",),
    since="0.1.0",
    at="dimmed",
    caution=CAUTION,
)
def dimmed_receptacle(room: Room, pair: Group) -> Says:
    """No dimmer feeds a receptacle.

    Why: A dimmer is for lamps that are permanently connected; equipment on a dimmed receptacle fails or burns.

    How decided: A receptacle that says dimmed: true. The clause is of the National Electrical Code; the hazard is the
    same under any code.

    Remedy: Feed the receptacle undimmed.

    When to waive: The control is listed for that very load.
    """
    receptacle, _ = _fed(pair)
    if need(receptacle.dimmed, receptacle, "dimmed"):
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

    How decided: A load with cord_concealed: true, unless a listed inlet assembly is declared. The clause is of the
    National Electrical Code; the hazard is the same under any code.

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

    When to waive: Never; nothing makes it right.
    """
    if need(circuit.earth_lifted, circuit, "earth_lifted"):
        return fails("a protective earth is lifted; shock hazard.")
    return passes("no earth is lifted.")


@rule(
    "mains.receptacle-rating",
    level=Level.WARNING,
    basis=standard("NFPA 70", "Table 210.21(B)(3)", edition="2023", read=False),
    each=_receptacles,
    reads=("circuits[].receptacles[].rating", "circuits[].rating", "project.codes.electrical"),
    since="0.1.0",
    at="rating",
    caution=CAUTION,
)
def receptacle_rating(room: Room, pair: Group) -> Says:
    """A receptacle's rating is one that its circuit may have.

    Why: A 20 A receptacle on a 15 A circuit invites a load that the circuit cannot feed.

    How decided: 15 A circuits take 15 A receptacles, 20 A circuits 15 or 20 A, 30 A circuits 30 A, under the National
    Electrical Code.

    Remedy: Have the receptacle changed.

    When to waive: A single receptacle on an individual circuit, which may have a higher rating.
    """
    receptacle, circuit = _fed(pair)
    need(room.design.project.electrical_code, room.design, "project.codes.electrical")
    if room.figures.mains.edition is None:
        return does_not_apply("the table is of the National Electrical Code.")
    if room.figures.mains.receptacle_fits(receptacle, circuit):
        return passes("its rating fits the circuit.")
    return fails("its rating is none that the circuit may have; have it changed.")


@rule(
    "mains.residual-current",
    level=Level.WARNING,
    basis=standard("BS 7671", "411.3.3", read=False),
    each=_circuits,
    reads=("circuits[].rcd", "project.codes.electrical"),
    since="0.1.0",
    window=Window(None, 30.0, "mA"),
    at="rcd",
    caution=CAUTION,
)
def residual_current(room: Room, circuit: Circuit) -> Figure | Says:
    """Socket-outlets under the British wiring rules have residual-current protection of 30 mA.

    Why: It cuts off a shock through a body, which a breaker against overcurrent never notices.

    How decided: Rated residual current of the circuit's device, where project.codes.electrical is bs7671.

    Remedy: Have a 30 mA device fitted.

    When to waive: A documented risk assessment where the rules allow one.
    """
    if need(room.design.project.electrical_code, room.design, "project.codes.electrical") != "bs7671":
        return does_not_apply("the clause is of BS 7671.")
    return room.figures.mains.residual_current(circuit)
