"""Cables in walls, floors and ceilings: marking, the framing they pass, the class of what feeds them."""

from __future__ import annotations

from typing import TYPE_CHECKING

from roomlint.review import Cases, Level, Missing, No, at_least, fails, memory, need, passes, practice, rule, standard

from ..mains import under_nfpa
from . import CABLES, CAUTION, concealed, nfpa, of_loudspeaker

if TYPE_CHECKING:
    from roomlint.design.supply import Cable
    from roomlint.review import Applies, Figure, Room, Says, Windows

EDGE_MM = 31.75
OTHER_EDGE_MM = 50.0
EDGE_BASIS = (
    standard("NFPA 70", "300.4(A)(1) and (D), which 725.24 or 722.24 names for low voltage", edition="2017 to 2026",
             read=False, note="2017, 2020 and 2023 read in transcriptions"),
    memory("50 mm from the edge of a joist", document="BS 7671", clause="522.6.201"),
    practice("the 50 mm of BS 7671 wherever NFPA 70 does not hold"),
)  # fmt: skip
"""Why cable keeps from the edge of framing, in a hole or beside it."""


def _not_loose_power(room: Room, cable: Cable) -> Applies:
    """Whether a cable's jacket tells what it is made for: single wires of power in a raceway have none."""
    if room.figures.cabling.is_power(cable):
        if cable.raceway is None:
            raise Missing(cable, "raceway")
        if cable.raceway != "none":
            return No("it carries power in a raceway, in which single wires may run")
    return True


@rule(
    "cable.listed",
    level=Level.ERROR,
    basis=nfpa("725.135, since 2023 article 722; 800.154; 334.10 for power"),
    each=CABLES,
    when=(under_nfpa, concealed, _not_loose_power),
    says={
        "none": "runs concealed and its jacket carries no marking; {clause} wants a listed cable",
        "power": "carries power concealed and is marked {marking}, which is not made for it",
        "listed": "is marked {marking}",
    },
    at="marking",
    caution=CAUTION,
    since="0.3.0",
)
def listed(room: Room, cable: Cable) -> Says:
    """A cable that runs concealed carries the marking of a listed type.

    Why: An unlisted jacket carries a fire from floor to floor, and an inspector has the wall opened for it.

    How decided: The marking printed on the jacket, in walls, floors and ceilings, where NFPA 70 holds: any of CL2, CL3,
    CM and their kin, PLTC or NM for signals, NM for power that runs in no raceway. What grade the place wants is
    `cable.grade`. Under other codes cable is classed by its reaction to fire, which the markings here do not tell.

    Remedy: Pull a listed cable before the wall is closed, and photograph the jacket.

    When to waive: Never; the inspector decides.
    """
    marking = need(cable.marking, cable, "marking")
    if room.figures.cabling.is_power(cable):
        return passes("listed", marking=marking) if marking == "NM" else fails("power", marking=marking)
    if marking == "none":
        return fails("none", clause=room.figures.cabling.clause("marking"))
    return passes("listed", marking=marking)


def _of_the_house(room: Room, cable: Cable) -> bool:
    """Whether a cable is one of the house's own wiring, by what it carries or by its jacket."""
    return room.figures.cabling.is_power(cable) or need(cable.marking, cable, "marking") == "NM"


def _graded(room: Room, cable: Cable) -> Applies:
    if not _of_the_house(room, cable):
        return True
    if not need(cable.plenum, cable, "plenum"):
        return No("it is cable of the house's own wiring, where no air of the building moves")
    return _not_loose_power(room, cable)


@rule(
    "cable.grade",
    level=Level.WARNING,
    basis=nfpa("Table 725.154(A), since 2023 article 722; 800.154; 300.22(C)"),
    each=CABLES,
    when=(under_nfpa, concealed, _graded),
    says={
        "power": "is cable of the house's wiring where air of the building moves; 300.22(C) wants metal around it",
        "plenum": "is marked {marking} where air of the building moves; {clause} wants CL2P, CL3P or CMP",
        "riser": "is marked {marking} and rises through floors; {clause} wants one marked for risers",
        "general": "is marked {marking}, for cable below 6 mm (1/4 in); concealed it wants CL2, CL3 or CM",
        "fits": "is marked {marking}, enough for where it runs",
    },
    after=("cable.listed", "cable.air-space"),
    at="marking",
    caution=CAUTION,
    since="0.3.0",
)
def grade(room: Room, cable: Cable) -> Says:
    """A concealed cable has the grade that the place it runs through asks for.

    Why: Air ducts and shafts carry smoke through the building; the grade of a jacket says how little it adds.

    How decided: Where NFPA 70 holds: CL2P, CL3P or CMP through spaces that move air for the building; those or CL2R,
    CL3R, CMR up a shaft or through floors of a building of more than two dwellings; CL2, CL3, CM, CMG or PLTC else, all
    floors of a one- or two-family dwelling among them; the thin CL2X, CL3X and CMX below 6 mm (1/4 in). A joist bay
    that returns air and is only crossed does not count. Where the marking is enough anywhere, nothing more is asked.
    Cable of the house's own wiring, NM as it is, has no grade for air that moves; in a raceway it is not judged.

    Remedy: Pull the higher grade; it may stand in for every lower one.

    When to waive: The authority accepts the run, in writing.
    """
    if _of_the_house(room, cable):
        return fails("power")
    fits, place = room.figures.cabling.fits_place(cable)
    marking = need(cable.marking, cable, "marking")
    if fits:
        return passes("fits", marking=marking)
    return fails(place, marking=marking, clause=room.figures.cabling.clause("marking"))


def _unprotected(_: Room, cable: Cable) -> Applies:
    if cable.in_no_framing:
        return No("it passes no framing")
    return No("a steel plate covers it") if cable.nail_plate else True


def edge_window(room: Room, _cable: Cable) -> Windows:
    """Return how far a cable keeps from the edge of framing under the code in force."""
    return at_least(EDGE_MM if room.figures.mains.family == "nfpa" else OTHER_EDGE_MM, "mm")


@rule(
    "cable.edge",
    level=Level.WARNING,
    basis=EDGE_BASIS,
    each=CABLES,
    when=(concealed, _unprotected),
    window=Cases(
        "mm",
        (
            ("under NFPA 70", at_least(EDGE_MM, "mm")),
            ("under BS 7671, IEC 60364, AS/NZS 3000 and other codes", at_least(OTHER_EDGE_MM, "mm")),
        ),
        edge_window,
    ),
    says="runs {figure} from the edge of the framing without a steel plate; {window} wanted",
    cure=("edge_distance",),
    at="edge_distance",
    caution=CAUTION,
    since="0.3.0",
)  # fmt: skip
def edge(room: Room, cable: Cable) -> Figure:
    """A concealed cable keeps from the edge of the framing, or a steel plate covers it.

    Why: Board screws reach 25 mm and more into a stud; one through a cable is found when the room is finished.

    How decided: From the hole, or from the cable where it runs along a member, to the nearest edge. NFPA 70 asks for
    32 mm (1-1/4 in) or a plate of 1.6 mm (1/16 in), of low-voltage cable too; elsewhere the 50 mm of BS 7671 are taken,
    from which it excuses extra-low voltage. Whether a plate is there is asked for where the distance is short.

    Remedy: A hole in the middle of the member, or a steel plate over it before the board goes up.

    When to waive: A raceway of steel that the code takes instead of the plate.
    """
    figure = room.figures.cabling.to_edge(cable)
    limit = edge_window(room, cable).window.low
    if cable.nail_plate is None and limit is not None and figure.value < limit:
        raise Missing(cable, "nail_plate")
    return figure


@rule(
    "cable.output-class",
    level=Level.WARNING,
    basis=standard("NFPA 70", "640.9(C)", edition="2020", read=False, note="read in a transcription"),
    each=CABLES,
    when=(under_nfpa, of_loudspeaker, concealed),
    says={
        "one": "is marked {marking}; the outputs of {amplifier} are marked Class 1, which {clause} wires like power",
        "fits": "may carry the outputs of {amplifier}",
    },
    after=("cable.listed",),
    at="marking",
    caution=CAUTION,
    since="0.3.0",
)
def output_class(room: Room, cable: Cable) -> Says:
    """Amplifier outputs that are marked Class 1 are wired as power is, not with loudspeaker cable.

    Why: The marking says what the output can do to whoever touches it; watts and impedance do not.

    How decided: The class on the amplifier's sheet, as marked at its terminals, where NFPA 70 holds: outputs of Class 1
    want conductors and raceways of the house's wiring, so that cable marked CL2, CL3, CM or none does not do.

    Remedy: An amplifier that is marked Class 2 or 3, or conductors in a raceway by an electrician.

    When to waive: The maker's instructions say otherwise, and the authority accepts them.
    """
    cabling = room.figures.cabling
    source = cabling.fed_by(cable)
    if source is None:
        raise Missing(cable, "to")
    driver = cabling.driver_of(cable, source)
    data = room.figures.routing.amplifier_data(driver)
    if need(data.output_class, data, "output_class") != "class-1":
        return passes("fits", amplifier=driver.words)
    marking = need(cable.marking, cable, "marking")
    if marking == "NM":
        return passes("fits", amplifier=driver.words)
    return fails("one", marking=marking, amplifier=driver.words, clause=cabling.clause("output class"))
