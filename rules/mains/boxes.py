"""Boxes behind panels and in cabinets, and power in British walls."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Final

from roomlint.review import (
    Cases,
    Figure,
    Level,
    Missing,
    No,
    Seen,
    Subjects,
    asks,
    at_least,
    at_most,
    fails,
    need,
    passes,
    rule,
    standard,
)

from . import CABLES, CAUTION, RECEPTACLES, Fed, every_receptacle, under_nfpa

if TYPE_CHECKING:
    from collections.abc import Iterator

    from roomlint.design.shell import Treatment  # noqa: F401  named in a base class, as a text
    from roomlint.design.supply import Cable
    from roomlint.design.wiring import Receptacle
    from roomlint.review import Applies, Room, Says, Windows

REACHED: Final = standard(
    "NFPA 70", "314.29", edition="2023", read=False, note="read in a transcription; that nothing is damaged from memory"
)
FLUSH: Final = standard("NFPA 70", "314.20", edition="2023", read=False, note="read in a transcription")
ZONES: Final = standard(
    "BS 7671",
    "522.6.202 to 522.6.204",
    read=False,
    note="told alike by three guides; earlier editions number otherwise",
)
CLEAR_MM: Final = 6.0
DEEP_M: Final = 0.050
RCD_A: Final = 0.030
EARLY: Final = frozenset({"survey", "design"})


@dataclass(frozen=True, slots=True)
class Behind(Seen["Receptacle", "Treatment"]):
    """A box and a panel of its wall."""

    joined: str = " behind "


def every_behind(room: Room) -> Iterator[Behind | Missing]:
    """Yield every box with every panel that may be on its wall."""
    for fed in every_receptacle(room):
        if isinstance(fed, Missing):
            yield fed
            continue
        yield from (Behind(fed.item, panel) for panel in room.figures.mounts.panels())


BOXES: Final[Subjects[Behind]] = Subjects("receptacle with an acoustic panel", every_behind, ("circuits", "treatments"))


def one_wall(_: Room, behind: Behind) -> Applies:
    """Whether box and panel are on one wall."""
    wall = need(behind.source.wall, behind.source, "wall")
    panel = behind.seat
    if need(panel.on, panel, "on") != wall:
        return No("the panel is on another surface")
    if wall not in {"ceiling", "floor"} or panel.removable:
        return True
    # Nothing tells where on it the box is: whoever placed it says whether it stays within reach.
    need(behind.source.reachable, behind.source, "reachable")
    return No("whether it is reached is stated, and judged by that", unless=("mains.box-access",))


def stays(_: Room, behind: Behind) -> Applies:
    """Whether the panel stays where it is."""
    return No("the panel comes off and goes back without damage") if behind.seat.removable else True


@rule(
    "mains.box-covered",
    level=Level.WARNING,
    basis=REACHED,
    each=BOXES,
    when=(one_wall, stays),
    window=at_least(0.0, "m"),
    says={
        "fail": "is {figure} from a panel; {window} wanted",
        "negative": "is {size} behind an acoustic panel that does not come off without damage",
    },
    at="wall",
    caution=CAUTION,
    since="0.3.0",
)
def box_covered(room: Room, behind: Behind) -> Figure:
    """No box of the house's wiring is covered by a panel that does not come off.

    Why: The joint that fails is in the box that nobody finds, and it is warm by then.

    How decided: Place of the receptacle on its wall against the edges of each absorber, diffuser, bass trap and canopy
    on that wall. A panel that comes off and goes back without damage may cover a box; whether it does is asked for
    where it covers one. On the ceiling and the floor nothing tells where a box is: there it is asked whether the box is
    reached. A cord behind it is another matter (`mains.concealed-cord`).

    Remedy: Move the receptacle or the panel, or hang the panel on clips.

    When to waive: Never; say in the file that the panel comes off.
    """
    figure = room.figures.boards.inside_panel(behind.source, behind.seat)
    if behind.seat.removable is None and figure.value - figure.u < 0.0:
        raise Missing(behind.seat, "removable")
    return figure


def built_in(_: Room, fed: Fed[Receptacle]) -> Applies:
    """Whether something is built around a box."""
    outlet = fed.item
    if outlet.reachable is not None or need(outlet.in_cabinet, outlet, "in_cabinet"):
        return True
    return No("it is in no cabinet, stage or riser")


@rule(
    "mains.box-access",
    level=Level.WARNING,
    basis=REACHED,
    each=RECEPTACLES,
    when=built_in,
    says={
        "closed": "is reached only by taking something of the building apart",
        "open": "is reached without taking anything apart",
    },
    at="reachable",
    caution=CAUTION,
    since="0.3.0",
)
def box_access(_: Room, fed: Fed[Receptacle]) -> Says:
    """A box in a cabinet, a stage or a riser is reached without taking the building apart.

    Why: A riser that is carpeted over a box is torn open by whoever looks for the fault.

    How decided: Whether the file says that the box is reached; asked for where it is in a cabinet, stage or riser.

    Remedy: A hatch over the box, or the receptacle on the wall.

    When to waive: Never; make a hatch.
    """
    return passes("open") if need(fed.item.reachable, fed.item, "reachable") else fails("closed")


def box_set(room: Room, fed: Fed[Receptacle]) -> Applies:
    """Whether the box is set already, or how it is to be is drawn."""
    project = room.design.project
    if fed.item.set_back_m is not None:
        return True
    if need(project.stage, project, "stage") in EARLY:
        return No(f"no box is set at {project.stage}")
    return True


def set_back_window(room: Room, fed: Fed[Receptacle]) -> Windows:
    """Return how far a box may lie behind the surface that it is in."""
    return at_most(0.0 if room.figures.boards.in_combustible(fed.item) else CLEAR_MM, "mm")


@rule(
    "mains.box-flush",
    level=Level.WARNING,
    basis=FLUSH,
    each=RECEPTACLES,
    when=(under_nfpa, box_set),
    window=Cases(
        "mm",
        (("in a surface that does not burn", at_most(CLEAR_MM, "mm")),
         ("in wood and other board that burns", at_most(0.0, "mm"))),
        set_back_window,
    ),
    says="lies {figure} behind the finished surface; {window} wanted",
    cure=("set_back",),
    at="set_back",
    caution=CAUTION,
    since="0.3.0",
)  # fmt: skip
def box_flush(room: Room, fed: Fed[Receptacle]) -> Figure:
    """A box is flush with the surface that burns, and at most 6 mm behind one that does not.

    Why: A spark between box and lining has fuel there that nobody sees.

    How decided: How far the front edge of the box lies behind the finished surface: 6 mm (1/4 in) in gypsum, plaster or
    masonry, nothing in plywood and other board that burns, nor behind a finish of wood, carpet or cloth. A lining that
    is added over the board counts as the surface: say how far behind it the box is.

    Remedy: A listed extender ring.

    When to waive: The authority accepts it, in writing.
    """
    return room.figures.boards.set_back(fed.item)


def british_power(room: Room, cable: Cable) -> Applies:
    """Whether a cable of the house's power runs concealed under BS 7671."""
    if room.figures.mains.family != "bs":
        return No("zones of walls are of BS 7671")
    if not room.figures.cabling.is_power(cable):
        return No("it carries extra-low voltage, or a signal")
    return True if need(cable.in_wall, cable, "in_wall") else No("it runs in the open")


def _guarded(room: Room, cable: Cable) -> bool:
    """Whether the residual-current device before a cable trips at 30 mA at most, for certain."""
    circuit = room.figures.boards.circuit_of(cable)
    device = None if circuit.no_rcd else need(circuit.rcd_a, circuit, "rcd")
    return device is not None and device.value + device.u <= RCD_A


@rule(
    "mains.wall-zone",
    level=Level.ERROR,
    basis=ZONES,
    each=CABLES,
    when=british_power,
    says={
        "beyond": "lies {depth} deep, and its wall is {thick} thick; correct one of them",
        "zone": "carries power {depth} deep in the wall, outside the zones, with nothing that keeps a nail from it",
        "rcd": "runs {depth} deep in a zone of the wall on {circuit}, which has no residual-current device of 30 mA",
        "metal": "lies {depth} deep with no device of 30 mA before it; in a partition of metal framing it wants one",
        "deep": "lies {depth} deep",
        "kept": "has an earthed cover",
        "guarded": "runs in a zone, behind a residual-current device of 30 mA",
    },
    at="zone",
    caution=CAUTION,
    since="0.3.0",
)
def wall_zone(room: Room, cable: Cable) -> Says:
    """Under BS 7671 power in a wall lies 50 mm deep, in a zone behind a 30 mA device, or in an earthed cover.

    Why: A picture hook finds what lies straight up from no socket.

    How decided: Earthed armour or conduit passes; else 50 mm of depth for certain, from the other face too where the
    wall is framed (its members and as much board again as on this side); else the zones: within 150 mm of the wall's
    top or of a corner, or straight, level or plumb, to an accessory, and then the circuit's residual-current device
    trips at 30 mA at most. In a partition of metal framing it is wanted whatever the depth, which is for the
    electrician to see, and so are accessories on the other face of a thin wall.

    Remedy: Another way for the cable, earthed conduit, or the device, by an electrician.

    When to waive: Never; the electrician who certifies the work decides.
    """
    if cable.protection in {"earthed-armour", "earthed-conduit"}:
        return passes("kept")
    boards = room.figures.boards
    deep = boards.deep(cable)
    if deep.value - deep.u >= DEEP_M:
        nearer = _from_the_other_face(room, cable, deep)
        if not isinstance(nearer, Figure):
            return nearer
        deep = nearer
    need(cable.protection, cable, "protection")
    if need(cable.zone, cable, "zone") == "none":
        return fails("zone", depth=deep)
    circuit = boards.circuit_of(cable)
    if not _guarded(room, cable):
        return fails("rcd", related=(circuit,), depth=deep, circuit=circuit.words)
    return passes("guarded")


def _from_the_other_face(room: Room, cable: Cable, deep: Figure) -> Says | Figure:
    """Return what is said of a cable deep behind this face, or its depth behind the other one where that is less."""
    boards = room.figures.boards
    need(cable.protection, cable, "protection")
    wall, thick, other = boards.wall_of(cable), boards.thick(cable), boards.other_face(cable)
    if thick is not None and other is not None and other.value + other.u < 0.0:
        return fails("beyond", related=(wall,), depth=deep, thick=thick)
    if other is not None and other.value - other.u < DEEP_M:
        return other
    if boards.in_metal(cable) and not _guarded(room, cable):
        return asks("metal", related=(wall,), depth=deep)
    return passes("deep", depth=deep)
