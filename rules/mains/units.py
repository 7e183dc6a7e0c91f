"""Strips, conditioners and uninterruptible supplies: what is plugged into them, and into what they are plugged."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from roomlint.review import Level, Missing, No, Subjects, at_most, computed, fails, memory, passes, practice, rule

from . import CAUTION, CONTRADICTED, Fed, every_circuit

if TYPE_CHECKING:
    from collections.abc import Iterator

    from roomlint.design.wiring import Unit
    from roomlint.review import Applies, Figure, Room, Says, Windows

KINDS: Final = {"strip": "a strip", "conditioner": "a conditioner", "ups": "an uninterruptible supply"}


def every_unit(room: Room) -> Iterator[Fed[Unit] | Missing]:
    """Yield every unit on its circuit; a circuit that does not list any may have some."""
    for circuit in every_circuit(room):
        if isinstance(circuit, Missing):
            yield circuit
        elif not circuit.units and circuit.at.get("units") is None:
            yield Missing(circuit, "units")
        else:
            yield from (Fed(unit, circuit) for unit in circuit.units)


UNITS: Final[Subjects[Fed[Unit]]] = Subjects("strip, conditioner or uninterruptible supply", every_unit)


def feeds_some(room: Room, fed: Fed[Unit]) -> Applies:
    """Whether any load is plugged into a unit."""
    boards = room.figures.boards
    if boards.through(fed.item, fed.circuit):
        return True
    if not fed.circuit.loads and fed.circuit.at.get("loads") is None:
        raise Missing(fed.circuit, "loads")
    unsaid = boards.unplaced(fed.circuit)
    if unsaid is not None:
        raise unsaid
    return No("no load is plugged into it")


def rating_window(room: Room, fed: Fed[Unit]) -> Windows:
    """Return what a unit is rated for."""
    return at_most(room.figures.boards.unit_rating_a(fed.item, fed.circuit), "A")


@rule(
    "mains.unit-rating",
    level=Level.ERROR,
    basis=practice("what is plugged into a strip, a conditioner or an uninterruptible supply stays within its rating"),
    each=UNITS,
    when=feeds_some,
    window=computed("A", "the current, or the apparent power at the circuit's voltage, that it is rated for",
                    rating_window),
    says="feeds {figure} by the nameplates of what is plugged into it; {window} is what it is rated for",
    after=CONTRADICTED,
    at="rating",
    caution=CAUTION + " Strips add outlets, not capacity.",
    since="0.3.0",
)  # fmt: skip
def unit_rating(room: Room, fed: Fed[Unit]) -> Figure:
    """Strips, conditioners and uninterruptible supplies carry no more than they are rated for.

    Why: The breaker guards the wire in the wall; what is plugged in behind it has only its own rating.

    How decided: Nameplate currents of all loads that are plugged into it, by way of other units too, against its rated
    current, or its rated apparent power at the circuit's voltage. Of a load that is plugged in and says into nothing,
    that is asked for.

    Remedy: A unit of a higher rating, amplifiers on receptacles of their own, or fewer loads.

    When to waive: Never; correct the nameplates or the unit.
    """
    return room.figures.boards.use(fed.item, fed.circuit)


@rule(
    "mains.unit-chain",
    level=Level.WARNING,
    basis=memory(
        "a strip is listed to be plugged into a receptacle of the house, not into another strip", document="UL 1363"
    ),
    each=UNITS,
    says={
        "chain": "is {kind} that is plugged into {into}; it belongs into a receptacle of the house",
        "unit": "is {kind} that is plugged into {into}",
        "wall": "is plugged into a receptacle of the house",
    },
    at="unit",
    caution=CAUTION,
    since="0.3.0",
)
def unit_chain(_: Room, fed: Fed[Unit]) -> Says:
    """No strip is plugged into a strip, a conditioner or an uninterruptible supply, and nothing of that into a strip.

    Why: Each joint in the chain warms, and all of it hangs on the first cord.

    How decided: What each is plugged into: a strip goes into a receptacle of the house, and conditioners and supplies
    into anything but a strip. From memory, so a warning.

    Remedy: Receptacles where they are wanted, by an electrician, or one unit with enough outlets.

    When to waive: The makers of both allow it, in writing.
    """
    unit = fed.item
    above = fed.circuit.above(unit)
    if not above:
        if unit.receptacle is None:
            raise Missing(unit, "receptacle")
        return passes("wall")
    if unit.kind == "strip" or above[0].kind == "strip":
        return fails("chain", related=(above[0],), kind=KINDS[unit.kind], into=KINDS[above[0].kind])
    return passes("unit", kind=KINDS[unit.kind], into=KINDS[above[0].kind])
