"""Devices that protect people: arc-fault, ground-fault, residual-current, and the earth."""

from __future__ import annotations

from typing import TYPE_CHECKING

from roomlint.review import Level, Missing, No, Subjects, at_most, fails, found, need, passes, practice, rule, standard

from . import CAUTION, CIRCUITS, EARLIER_NUMBER, LIVING_V, nfpa, under_nfpa

if TYPE_CHECKING:
    from roomlint.design.supply import Circuit, Rack
    from roomlint.review import Answer, Applies, Room, Says

RACKS: Subjects[Rack] = Subjects("rack", lambda room: room.design.racks, ("electronics.racks",))
LARGEST_ARC_FAULT_A = 20.0
HIGHEST_GROUND_FAULT_V = 250.0


def listed(circuit: Circuit) -> Applies:
    """Whether a circuit has receptacles; a circuit of which nobody says may have some."""
    if circuit.receptacles:
        return True
    if circuit.at.get("receptacles") is None:
        raise Missing(circuit, "receptacles")
    return No("no receptacle is on it")


def has_receptacles(_: Room, circuit: Circuit) -> Applies:
    """Whether a circuit has receptacles."""
    return listed(circuit)


@rule(
    "mains.small-circuit-receptacle",
    level=Level.ERROR,
    basis=nfpa("210.3, since 2023 210.18, 210.23(A) and Table 210.24(1)"),
    each=CIRCUITS,
    when=(under_nfpa, has_receptacles),
    window=None,
    says={
        "small": "feeds a receptacle from a breaker or fuse of {figure}; 15 A is the least",
        "enough": "its breaker or fuse may feed receptacles",
    },
    at="rating",
    caution=CAUTION,
    since="0.1.0",
)
def small_circuit_receptacle(room: Room, circuit: Circuit) -> Says:
    """No branch circuit of less than 15 A feeds a receptacle.

    Why: Circuits of 10 A came with the 2023 edition for lighting; anything may be plugged into a receptacle.

    How decided: Rating below 15 A with receptacles on the circuit, where NFPA 70 holds.

    Remedy: Feed the receptacle from a circuit of 15 A or 20 A.

    When to waive: Under another code; the electrician decides.
    """
    if room.figures.mains.feeds_receptacles(circuit):
        return passes("enough")
    return fails("small", figure=room.figures.mains.device(circuit))


def lives_with_arcs(room: Room, circuit: Circuit) -> Applies:
    """Whether a circuit is new or extended, of 120 V and up to 20 A."""
    if not need(circuit.new, circuit, "new"):
        return No("the circuit is neither new nor extended")
    if room.figures.mains.least_volts(circuit) > LIVING_V:
        return No("the clause is for circuits of 120 V")
    if room.figures.mains.rating_a(circuit) > LARGEST_ARC_FAULT_A:
        return No("the clause is for circuits up to 20 A")
    return True


@rule(
    "mains.arc-fault",
    level=Level.WARNING,
    basis=nfpa("210.12(A), since 2023 210.12(B); extensions 210.12(D), since 2023 210.12(E)", note=EARLIER_NUMBER),
    each=CIRCUITS,
    when=(under_nfpa, lives_with_arcs),
    says={"none": "has no arc-fault protection, which {clause} wants", "has": "has arc-fault protection"},
    at="afci",
    caution=CAUTION,
    since="0.1.0",
)
def arc_fault(room: Room, circuit: Circuit) -> Says:
    """A new or extended 120 V circuit of a living space has arc-fault protection.

    Why: An inspector will look for it, and it finds damaged cords that a breaker does not.

    How decided: Circuits of 120 V up to 20 A that are new or extended, under NFPA 70. Other codes recommend such
    devices at most.

    Remedy: Have an arc-fault breaker fitted.

    When to waive: The authority accepts another protection.
    """
    if need(circuit.afci, circuit, "afci"):
        return passes("has")
    return fails("none", clause=room.figures.mains.clause("arc-fault protection"))


def damp_or_unknown(room: Room, circuit: Circuit) -> Applies:
    """Whether one of the receptacles is, or may be, where the edition wants ground-fault protection."""
    edition, volts = room.figures.mains.code, room.figures.mains.least_volts(circuit)
    if edition == "nec2017" and volts > LIVING_V:
        return No("the clause of 2017 is for receptacles of 125 V")
    if volts > HIGHEST_GROUND_FAULT_V:
        return No("the clause is for receptacles up to 250 V")
    places = [room.figures.protection.ground_fault(receptacle) for receptacle in circuit.receptacles]
    if any(place.wanted is not False for place in places):
        return True
    return No("none of its receptacles is where the clause asks for it")


@rule(
    "mains.ground-fault",
    level=Level.WARNING,
    basis=nfpa("210.8(A)", note="item numbers differ by copy; 2017 by a copy of 2014 that an ordinance adopts"),
    each=CIRCUITS,
    when=(under_nfpa, has_receptacles, damp_or_unknown),
    says={
        "basement": "has no ground-fault protection; {receptacle} is in a basement",
        "place": "has no ground-fault protection; {receptacle} is in a place that wants it: {kind}",
        "sink": "has no ground-fault protection; {receptacle} is within 1.8 m (6 ft) of a sink",
        "has": "has ground-fault protection",
    },
    at="gfci",
    caution=CAUTION,
    since="0.1.0",
)
def ground_fault(room: Room, circuit: Circuit) -> Says:
    """Receptacles in damp places and near sinks have ground-fault protection.

    Why: Damp floors, water and metal racks meet there, and a breaker never notices a current through a body.

    How decided: Unfinished basements, garages, laundries, kitchens, bathrooms, crawl spaces and outdoors in every
    edition of NFPA 70 here; finished basements since 2020; anywhere within 1.8 m (6 ft) of a sink, a wet bar's too.
    A receptacle of which neither is known keeps the question open, unless the circuit has the protection.

    Remedy: Have a ground-fault device fitted.

    When to waive: The authority accepts another protection.
    """
    if need(circuit.gfci, circuit, "gfci"):
        return passes("has")
    places = [(receptacle, room.figures.protection.ground_fault(receptacle)) for receptacle in circuit.receptacles]
    for receptacle, place in places:
        if place.wanted:
            kind = (receptacle.where or "").replace("-", " ")
            return fails(place.because, receptacle=receptacle.words, kind=kind)
    # It applies only where one is, or may be, in such a place: nothing without the protection passes.
    raise next(place.missing for _, place in places if place.missing is not None)


def body_current(room: Room, circuit: Circuit) -> Applies:
    """Whether the rules in force want residual-current protection of a circuit."""
    family = room.figures.mains.family
    if family == "nfpa":
        return No("NFPA 70 asks for ground-fault protection instead")
    if family == "other":
        return No("what the code in force asks for is not known here")
    if family == "asnzs":
        return True
    found = listed(circuit)
    if isinstance(found, No) or not room.figures.protection.only_large_sockets(circuit):
        return found
    return No("the clause is for socket-outlets up to 32 A")


@rule(
    "mains.residual-current",
    level=Level.ERROR,
    basis=(
        standard("BS 7671", "411.3.3", read=False, note="read in a guide"),
        standard("IEC 60364-4-41", "411.3.3", edition="2017", read=False, note="through a German insurers' rule"),
        standard(
            "AS/NZS 3000", "2.6.3.2", edition="2018", read=False, note="through accounts of makers and inspectors"
        ),
    ),
    each=CIRCUITS,
    when=body_current,
    window=at_most(30.0, "mA"),
    says={
        "fail": "its residual-current device trips at {figure}; {window} protects a person",
        "none": "has no residual-current protection",
    },
    at="rcd",
    caution=CAUTION,
    since="0.1.0",
)
def residual_current(room: Room, circuit: Circuit) -> Answer:
    """Circuits of socket-outlets have residual-current protection of 30 mA outside North America.

    Why: It cuts off a shock through a body, which a breaker against overcurrent never notices.

    How decided: Rated residual current of the circuit's device. BS 7671 and IEC 60364: circuits with
    socket-outlets that are rated up to 32 A, whatever the device before them is rated; AS/NZS 3000: every final circuit
    of a dwelling. A circuit that is neither new nor extended gets a warning
    only, as it may be older than the clause.

    Remedy: Have a 30 mA device fitted.

    When to waive: A documented risk assessment where the rules allow one.
    """
    level = Level.WARNING if circuit.new is False else None
    if circuit.no_rcd:
        return fails("none", level=level)
    return found(room.figures.protection.residual(circuit), level=level)


@rule(
    "mains.lifted-earth",
    level=Level.ERROR,
    basis=practice("a protective earth is never lifted against hum; every code of wiring forbids it"),
    each=CIRCUITS,
    says={"lifted": "its protective earth is lifted, a shock hazard; restore it", "whole": "has its protective earth"},
    at="earth_lifted",
    caution=CAUTION,
    since="0.1.0",
)
def lifted_earth(_: Room, circuit: Circuit) -> Says:
    """No protective earth is lifted or adapted away.

    Why: The metal of everything on that circuit can then stand at mains voltage.

    How decided: A circuit of which the file says that its earth is lifted or adapted away.

    Remedy: Balanced lines, an isolating transformer in the signal, or one circuit for all connected equipment.

    When to waive: Never; nothing makes it right.
    """
    if need(circuit.earth_lifted, circuit, "earth_lifted"):
        return fails("lifted")
    return passes("whole")


def _of_metal(_: Room, rack: Rack) -> Applies:
    """Whether a rack is of metal; one that is bonded need not be asked."""
    if rack.bonded:
        return True
    return True if need(rack.metal, rack, "metal") else No("it is not of metal")


@rule(
    "mains.rack-bonded",
    level=Level.WARNING,
    basis=(
        standard("NFPA 70", "640.22", edition="2020", read=False, note="read in a transcription"),
        practice("the clause is of NFPA 70; the hazard is the same under any code"),
    ),
    each=RACKS,
    when=_of_metal,
    says={
        "loose": "is of metal that is not bonded to earth",
        "bonded": "its metal is bonded to earth",
    },
    at="bonded",
    caution=CAUTION,
    since="0.3.0",
)
def rack_bonded(_: Room, rack: Rack) -> Says:
    """A rack of metal is bonded to earth.

    Why: One chafed cord puts the whole rack at mains voltage, and everybody touches it.

    How decided: Whether the file says that its metal is bonded. Of one that is not bonded it is asked whether it is of
    metal; joinery is not.

    Remedy: A bonding conductor to the circuit's earth, by an electrician.

    When to waive: Never; say in the file that it is not of metal.
    """
    return passes("bonded") if need(rack.bonded, rack, "bonded") else fails("loose")
