"""Conductors: what they carry against the device before them, and the voltage that they lose."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from roomlint.review import (
    Cases,
    Level,
    No,
    asks,
    at_least,
    at_most,
    fails,
    found,
    memory,
    passes,
    practice,
    rule,
    standard,
)

from . import BS_CURRENT, BS_RING, CABLES, CAUTION, CIRCUITS, CONTRADICTED, IEC_CURRENT, WARM_AIR, nfpa
from .load import feeds_something

if TYPE_CHECKING:
    from roomlint.design.supply import Cable, Circuit
    from roomlint.measure.protection import Wire
    from roomlint.review import Answer, Applies, Figure, Found, Room, Says, Windows

NFPA_DROP: Final = nfpa("210.19(A), since 2023 210.19, informational note", note="recommended, not enforceable")
OTHER_DROP: Final = (
    standard("BS 7671", "Appendix 4, Table 4Ab", read=False, note="public supply; the appendix is informative"),
    memory("3 % for lighting, 5 % for the rest, informative", document="IEC 60364-5-52", clause="Annex G"),
    memory("5 % from the point of supply", document="AS/NZS 3000", clause="3.6.2"),
)


ENOUGH_PERCENT: Final = 100.0
FUSED_A: Final = 13.0
"""The largest fuse of a fused spur (BS 1362, from memory)."""
HAIR: Final = 0.98
"""Sizes of one trade size by two gauges differ by less than this."""


def level_of(wire: Wire) -> Level | None:
    """Return the level of a wire that is too thin: a warning where only warmer air, taken from memory, makes it so."""
    if wire.cool is None or wire.cool.value - wire.cool.u < ENOUGH_PERCENT:
        return None
    return Level.WARNING


@rule(
    "mains.conductor-size",
    level=Level.ERROR,
    basis=(nfpa("240.4(D) and Table 310.16 at 60 degC"), IEC_CURRENT, BS_CURRENT, WARM_AIR, BS_RING),
    each=CIRCUITS,
    window=at_least(100.0, "%"),
    says="its wires may carry {carries}, {figure} of its breaker or fuse; {limit} wanted",
    at="conductor",
    caution=CAUTION,
    since="0.1.0",
)
def conductor_size(room: Room, circuit: Circuit) -> Found:
    """A circuit's conductor carries at least the rating of the overcurrent device before it.

    Why: A conductor too thin for its breaker overheats inside the wall before the breaker ever opens.

    How decided: What the table gives over the device's rating. By NFPA 70: copper 14 AWG 15 A, 12 AWG 20 A, 10 AWG
    30 A, 8 AWG 40 A, 6 AWG 55 A; aluminium from 12 AWG, from memory; 16 AWG copper for 10 A in the 2026 edition. By
    every other code cable in PVC with two loaded conductors. IEC 60364-5-52 at 30 degC: clipped (method C), in conduit
    (B2), in an insulated wall (A2), or surrounded by insulation (half of clipped). BS 7671 has a table of its own for
    flat cable with earth: clipped C, in an insulated wall A, surrounded by insulation 103; in conduit B of Table 4D2A.
    What AS/NZS 3008.1.1 lists is not known here: the IEC table times 0.87 for air of 40 degC, and what only the warmer
    air makes too thin is a warning. BS 7671 lets a ring of 2.5 mm2 copper that carries 20 A stand behind 32 A. Grouping
    and a warm attic lower what is carried and are not counted. How the cable is laid is asked for where it decides.

    Remedy: A larger conductor, or a device of a smaller rating.

    When to waive: Never without the electrician's calculation.
    """
    wire = room.figures.protection.conductor(circuit)
    return found(wire.share, level=level_of(wire), carries=wire.carried)


def carries_power(room: Room, cable: Cable) -> Applies:
    """Whether a cable is wiring of the house that carries power."""
    if not room.figures.cabling.is_power(cable):
        return No("it carries extra-low voltage, or a signal")
    return No("it is the cord of what is plugged in") if room.figures.boards.is_cord(cable) else True


@rule(
    "mains.cable-size",
    level=Level.ERROR,
    basis=(nfpa("240.4(D) and Table 310.16 at 60 degC"), IEC_CURRENT, BS_CURRENT, WARM_AIR, BS_RING),
    each=CABLES,
    when=carries_power,
    window=at_least(100.0, "%"),
    says={
        "fail": "may carry {carries}, {figure} of the device before it on {circuit}; {limit} wanted",
        "fused": "may carry {carries}: too little for {circuit}, enough behind the fuse of its spur; see where it is",
    },
    at="conductor",
    caution=CAUTION,
    since="0.3.0",
)
def cable_size(room: Room, cable: Cable) -> Answer:
    """A listed cable of power carries at least the rating of the overcurrent device before it.

    Why: What is drawn for one branch and pulled with what lay in the van is found when it is warm.

    How decided: As `mains.conductor-size` by the cable's own conductor, with the circuit's material, laid as the
    circuit is, or in conduit where it runs in a raceway. Its circuit is the one that an end names, or on which what an
    end names is. At a British socket on a fused spur a person sees on which side of the fuse it is. A cord from an
    outlet, in the open, is its maker's.

    Remedy: A cable of the circuit's size, or a device of a smaller rating.

    When to waive: Never without the electrician's calculation.
    """
    boards = room.figures.boards
    circuit = boards.circuit_of(cable)
    wire = room.figures.protection.cable(cable, circuit)
    thin, behind_fuse = wire.share.value - wire.share.u < ENOUGH_PERCENT, wire.carried.value - wire.carried.u >= FUSED_A
    if thin and behind_fuse and room.figures.mains.family == "bs" and boards.fused_spur(cable, circuit) is not None:
        return asks("fused", related=(circuit,), carries=wire.carried, circuit=circuit.words)
    return found(wire.share, level=level_of(wire), carries=wire.carried, circuit=circuit.words)


@rule(
    "mains.cable-as-circuit",
    level=Level.WARNING,
    basis=practice("a circuit is reckoned with its thinnest conductor and its longest way"),
    each=CABLES,
    when=carries_power,
    says={
        "thin": "has conductors of {size}, and {circuit} is reckoned with {whole}; give the circuit its thinnest",
        "long": "is {size} long, and {circuit} is reckoned with {whole} from panel to last outlet; correct one",
        "fits": "is as {circuit} is reckoned, or better",
    },
    after=("mains.cable-size",),
    at="conductor",
    caution=CAUTION,
    since="0.3.0",
)
def cable_as_circuit(room: Room, cable: Cable) -> Says:
    """A cable is neither thinner nor longer than its circuit is reckoned with.

    Why: What the circuit carries, and what it loses on the way, is worked out with the circuit's own size and length.

    How decided: The cable's conductor against the circuit's, and the length of one run against the circuit's from panel
    to last outlet; of a British ring, which leads back, only the conductor. A fused spur may be thinner.

    Remedy: Give the circuit the size of its thinnest cable and the length of its longest way.

    When to waive: Never; correct one of the two.
    """
    boards = room.figures.boards
    circuit = boards.circuit_of(cable)
    own, whole = boards.cable_size(cable), boards.circuit_size(circuit)
    if own.value < HAIR * whole.value and boards.fused_spur(cable, circuit) is None:
        return fails("thin", related=(circuit,), size=own, circuit=circuit.words, whole=whole)
    if circuit.arrangement != "ring" and cable.length_m is not None:
        length, way = room.figures.cabling.length(cable), boards.circuit_length(circuit)
        if length.value - length.u > way.value + way.u:
            return fails("long", related=(circuit,), size=length, circuit=circuit.words, whole=way)
    return passes("fits", circuit=circuit.words)


def branch_drop(room: Room, circuit: Circuit) -> Windows:
    """Return the windows of the branch: NFPA 70 recommends 3 %, the others know a whole only."""
    if room.figures.mains.family in {"nfpa", "other"}:
        return at_most(5.0, "%", note=3.0)
    return at_most(room.figures.protection.drop_limit_percent(circuit), "%")


@rule(
    "mains.voltage-drop",
    level=Level.WARNING,
    basis=(NFPA_DROP, *OTHER_DROP, practice("under another code the recommendation of NFPA 70")),
    each=CIRCUITS,
    when=feeds_something,
    window=Cases(
        "%",
        (
            ("under NFPA 70", at_most(5.0, "%", note=3.0)),
            ("under IEC 60364, BS 7671 and AS/NZS 3000", at_most(5.0, "%")),
            ("under IEC 60364 and BS 7671 where lighting shares the circuit", at_most(3.0, "%")),
            ("under another code", at_most(5.0, "%", note=3.0)),
        ),
        branch_drop,
    ),
    says="loses {figure} of its voltage on the way to the last outlet; {window} wanted",
    after=CONTRADICTED,
    at="length",
    caution=CAUTION,
    since="0.1.0",
)
def voltage_drop(room: Room, circuit: Circuit) -> Figure:
    """The voltage drop of a branch stays within what the code in force recommends.

    Why: Long thin runs starve amplifiers at peaks and dim what shares the circuit.

    How decided: Twice the length times the sum of nameplate currents times the resistance of the warm conductor: 75
    degC by NFPA 70, 70 degC elsewhere, aluminium 1.64 times copper, a ring half of a radial. NFPA 70 recommends 3 %
    of a branch and 5 % of feeder and branch; BS 7671 and IEC 60364 give 5 %, and 3 % where lighting shares the
    circuit; AS/NZS 3000 gives 5 %. All but the last are informative.

    Remedy: A larger conductor or a shorter way.

    When to waive: The real current is known to be lower.
    """
    return room.figures.protection.drop(circuit)


def whole_drop(room: Room, circuit: Circuit) -> Windows:
    """Return the window of feeder and branch together."""
    return at_most(room.figures.protection.drop_limit_percent(circuit), "%")


@rule(
    "mains.total-drop",
    level=Level.WARNING,
    basis=(NFPA_DROP, *OTHER_DROP),
    each=CIRCUITS,
    when=feeds_something,
    window=Cases(
        "%",
        (
            ("under every code", at_most(5.0, "%")),
            ("under IEC 60364 and BS 7671 where lighting shares the circuit", at_most(3.0, "%")),
        ),
        whole_drop,
    ),
    says="loses {figure} of its voltage from the service on; {window} wanted",
    after=(*CONTRADICTED, "mains.circuit-load", "mains.voltage-drop"),
    at="feeder_drop",
    caution=CAUTION,
    since="0.1.0",
)
def total_drop(room: Room, circuit: Circuit) -> Figure:
    """Feeder and branch together lose no more than 5 % of the voltage.

    Why: The equipment sees the sum, not the branch alone.

    How decided: The drop of the branch plus the feeder's as given; a circuit that starts at the service has no
    feeder. NFPA 70 recommends 5 %, BS 7671 and IEC 60364 the same and 3 % for lighting, AS/NZS 3000 gives 5 %.

    Remedy: A larger conductor in branch or feeder.

    When to waive: The real current is known to be lower.
    """
    return room.figures.protection.whole_drop(circuit)
