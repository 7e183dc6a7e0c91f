"""Chapter cable: what runs concealed and beside power, how full raceways are, and what a run does to its signal."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from roomlint.review import Missing, No, Subjects, memory, need, standard

if TYPE_CHECKING:
    from collections.abc import Iterator

    from roomlint.design.supply import Cable, Raceway
    from roomlint.review import Applies, Basis, Room

CAUTION: Final = (
    "Caution: a design note, no electrical inspection; the adopted local code and the authority having jurisdiction "
    "decide, and a licensed electrician does whatever touches house wiring."
)
SEVENTEEN: Final = "2017 read in a transcription; clauses of later editions partly from memory"
APART: Final = {
    "bs": "BS 7671, 528.1", "iec": "IEC 60364-5-52, 528.1", "asnzs": "AS/NZS 3000, 3.9.8", "other": "every wiring code",
}  # fmt: skip
"""What keeps power and signals apart where NFPA 70 does not hold."""
OTHER_APART: Final = (
    standard("BS 7671", "528.1", read=False, note="read in a guide to an earlier edition"),
    memory("power and signals apart", document="IEC 60364-5-52", clause="528.1"),
    memory("power and signals apart", document="AS/NZS 3000", clause="3.9.8"),
)


def nfpa(topic: str) -> Basis:
    """Return the basis of clauses of NFPA 70 on low-voltage cable."""
    return standard("NFPA 70", topic, edition="2017 to 2026", read=False, note=SEVENTEEN)


def every_cable(room: Room) -> Iterator[Cable | Missing]:
    """Yield the cables; a file that does not list any may have some."""
    if room.design.at.get("cables") is None:
        yield Missing(room.design, "cables")
    yield from room.design.cables


def every_raceway(room: Room) -> Iterator[Raceway | Missing]:
    """Yield the raceways; a file that does not list any may have some, unless each cable is said to run in none."""
    design = room.design
    if design.at.get("raceways") is None:
        if design.at.get("cables") is None:
            yield Missing(design, "cables")
        elif any(cable.raceway is None for cable in design.cables):
            yield Missing(design, "raceways")
    yield from design.raceways


CABLES: Final[Subjects[Cable]] = Subjects("cable", every_cable)
RACEWAYS: Final[Subjects[Raceway]] = Subjects("raceway", every_raceway)


def concealed(_: Room, cable: Cable) -> Applies:
    """Whether a cable runs inside a wall, floor or ceiling."""
    return True if need(cable.in_wall, cable, "in_wall") else No("it runs in the open")


def signal(room: Room, cable: Cable) -> Applies:
    """Whether a cable carries anything but power of the house."""
    return No("it carries power of the house") if room.figures.cabling.is_power(cable) else True


def of_loudspeaker(room: Room, cable: Cable) -> Applies:
    """Whether a cable is the one between an amplifier and a loudspeaker."""
    if need(cable.carries, cable, "carries") != "loudspeaker":
        return No("it is no loudspeaker's cable")
    return True if room.figures.cabling.fed_by(cable) is not None else No("it ends at no loudspeaker")


def holds_something(room: Room, raceway: Raceway) -> Applies:
    """Whether a cable is known to run in a raceway."""
    cables, missing = room.figures.cabling.inside(raceway)
    if cables:
        return True
    if missing is not None:
        raise missing
    return No("no cable runs in it")
