"""Chapter mains: what branch circuits carry, the conductors that carry it, and what protects people from it."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Final, TypeVar

from roomlint.review import Missing, No, Seen, Subjects, memory, need, practice, standard

if TYPE_CHECKING:
    from collections.abc import Iterator

    from roomlint.design.base import Element
    from roomlint.design.supply import Cable, Circuit, Load, Receptacle
    from roomlint.review import Applies, Basis, Room

E_co = TypeVar("E_co", bound="Element", covariant=True)

CAUTION: Final = (
    "Caution: a design note, no electrical inspection; the adopted local code and the authority having jurisdiction "
    "decide, and a licensed electrician designs, installs and tests fixed wiring."
)
EDITIONS: Final = "2017 to 2026"
EDITIONS_NOTE: Final = (
    "2020 and 2023 read in transcriptions, 2017 partly from memory; 2026 from change reports, where none tells the "
    "number of 2023 stands"
)
EARLIER_NUMBER: Final = f"{EDITIONS_NOTE}; the number that one clause had before 2023 from memory"
PLANNING: Final = practice("nameplate currents, what nobody says lasts counts as lasting: choices of this rule book")
BS_RING: Final = standard("BS 7671", "433.1.204", read=False, note="quoted in trade forums")
IEC_CURRENT: Final = standard(
    "IEC 60364-5-52", "Table B.52.2", read=False, note="found alike in two places that quote it; 1.0 mm2 from memory"
)
BS_CURRENT: Final = standard(
    "BS 7671", "Appendix 4, Tables 4D5 and 4D2A", read=False,
    note="found in two places that repeat it; method A from 4.0 mm2 on from memory",
)  # fmt: skip
WARM_AIR: Final = memory("air of 40 degC, for which the IEC table is lowered to 0.87", document="AS/NZS 3008.1.1")
CONTRADICTED: Final = ("mains.sheet-draw",)
"""A draw that its own product sheet contradicts: nothing is made of it until one of the two is corrected."""
HAZARD: Final = practice("the clause is of NFPA 70; the hazard is the same under any code")
LIVING_V: Final = 130.0
"""Up to this a circuit is one of 120 V."""


def nfpa(topic: str, *, note: str = EDITIONS_NOTE) -> Basis:
    """Return the basis of clauses of NFPA 70 in all editions that are known here."""
    return standard("NFPA 70", topic, edition=EDITIONS, read=False, note=note)


@dataclass(frozen=True, slots=True)
class Fed(Seen[E_co, "Circuit"]):
    """A load or a receptacle on its circuit, such as `rack on c1`; what is claimed of either may be wrong."""

    joined: str = " on "

    @property
    def item(self) -> E_co:
        """The load or the receptacle."""
        return self.source

    @property
    def circuit(self) -> Circuit:
        """Its circuit."""
        return self.seat

    @property
    def about(self) -> tuple[Element, ...]:
        """Both."""
        return self.elements


@dataclass(frozen=True, slots=True)
class Alone(Fed[E_co]):
    """A load that is judged by itself: what is wrong with another on its circuit does not touch it."""

    @property
    def about(self) -> tuple[Element, ...]:
        """The load."""
        return (self.item,)


def every_circuit(room: Room) -> Iterator[Circuit | Missing]:
    """Yield the circuits; a file that does not speak of circuits may have some."""
    if not room.design.circuits and room.design.at.get("circuits") is None:
        yield Missing(room.design, "circuits")
    yield from room.design.circuits


def every_receptacle(room: Room) -> Iterator[Fed[Receptacle] | Missing]:
    """Yield every receptacle on its circuit; a circuit that does not list any may have some."""
    for circuit in every_circuit(room):
        if isinstance(circuit, Missing):
            yield circuit
        elif not circuit.receptacles and circuit.at.get("receptacles") is None:
            yield Missing(circuit, "receptacles")
        else:
            yield from (Fed(receptacle, circuit) for receptacle in circuit.receptacles)


def every_load(room: Room) -> Iterator[Fed[Load] | Missing]:
    """Yield every load on its circuit; a circuit that does not list any may have some."""
    for circuit in every_circuit(room):
        if isinstance(circuit, Missing):
            yield circuit
        elif not circuit.loads and circuit.at.get("loads") is None:
            yield Missing(circuit, "loads")
        else:
            yield from (Fed(load, circuit) for load in circuit.loads)


def every_cable(room: Room) -> Iterator[Cable | Missing]:
    """Yield the cables; a file that does not list any may have some."""
    if room.design.at.get("cables") is None:
        yield Missing(room.design, "cables")
    yield from room.design.cables


CABLES: Final[Subjects[Cable]] = Subjects("cable", every_cable)
CIRCUITS: Final[Subjects[Circuit]] = Subjects("circuit", every_circuit)
RECEPTACLES: Final[Subjects[Fed[Receptacle]]] = Subjects("receptacle", every_receptacle)
LOADS: Final[Subjects[Fed[Load]]] = Subjects("load", every_load)
LOADS_ALONE: Final[Subjects[Fed[Load]]] = Subjects(
    "load",
    lambda room: (one if isinstance(one, Missing) else Alone(one.item, one.circuit) for one in every_load(room)),
)


def under_nfpa(room: Room, _: object) -> Applies:
    """Whether the National Electrical Code is in force."""
    if room.figures.mains.family == "nfpa":
        return True
    return No(f"the clause is of NFPA 70, and {CODES[room.figures.mains.code]} is in force")


CODES: Final = {
    "nec2017": "NFPA 70 of 2017", "nec2020": "NFPA 70 of 2020", "nec2023": "NFPA 70 of 2023",
    "nec2026": "NFPA 70 of 2026", "bs7671": "BS 7671", "iec60364": "IEC 60364", "asnzs3000": "AS/NZS 3000",
    "other": "another code",
}  # fmt: skip


def shared(circuit: Circuit) -> Applies:
    """Whether a circuit feeds more than one thing; a claim of one that its own loads deny is not taken."""
    if not need(circuit.dedicated, circuit, "dedicated") or more_than_one(circuit):
        return True
    return No("the circuit is dedicated to one piece of equipment")


def on_shared(_: Room, subject: Fed[Element]) -> Applies:
    """Whether a load or receptacle is on a shared circuit."""
    return shared(subject.circuit)


def is_shared(_: Room, circuit: Circuit) -> Applies:
    """Whether the circuit is shared."""
    return shared(circuit)


def more_than_one(circuit: Circuit) -> bool:
    """Whether a circuit is known to feed more than one thing."""
    return len(circuit.loads) > 1 or len(circuit.receptacles) > 1 or circuit.feeds_lighting is True


def plugged(_: Room, subject: Fed[Load]) -> Applies:
    """Whether a load is plugged in."""
    if need(subject.item.connection, subject.item, "connection") == "plug":
        return True
    return No("it is wired in place")
