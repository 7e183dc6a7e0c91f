"""What draws from the mains: everything is on one circuit, and what is declared agrees with the sheets."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from roomlint.design.supply import Amplifier
from roomlint.review import Level, Missing, Subjects, at_least, fails, passes, practice, rule, standard

from . import CAUTION, CONTRADICTED, Alone, Fed

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from roomlint.design.supply import Load
    from roomlint.measure.powered import Item
    from roomlint.review import Figure, Room, Says

ROUNDING: Final = 0.9
"""A nameplate is rounded, and stated for 115 V or 220 V where the circuit is written as 120 V or 230 V."""


def unfed(room: Room) -> Missing:
    """Return what a file lacks when nothing in it says where an item gets its power."""
    circuits = room.design.circuits
    return Missing(room.design, "circuits[].loads[].feeds" if circuits else "circuits")


def loads_of(room: Room, items: Iterable[Item | Missing]) -> Iterator[Fed[Load] | Missing]:
    """Yield the loads that stand for powered items, each once, and once what is missing where nothing feeds one."""
    done: set[str] = set()
    for item in items:
        if isinstance(item, Missing):
            yield item
            continue
        ways = room.figures.powered.feeding(item)
        found: list[Fed[Load] | Missing] = [Fed(way.load, way.circuit) for way in ways]
        for one in found or [unfed(room)]:
            key = one.key
            if key not in done:
                done.add(key)
                yield one


POWERED: Final[Subjects[Item]] = Subjects("powered item", lambda room: room.figures.powered.items)
ITEM_LOADS: Final[Subjects[Fed[Load]]] = Subjects(
    "powered item", lambda room: loads_of(room, room.figures.powered.items)
)
AMPLIFIER_LOADS: Final[Subjects[Fed[Load]]] = Subjects(
    "amplifier",
    lambda room: (
        one if isinstance(one, Missing) else Alone(one.item, one.circuit)
        for one in loads_of(room, room.design.amplifiers)
    ),
    ("electronics.amplifiers",),
)


@rule(
    "mains.every-item-fed",
    level=Level.ERROR,
    basis=practice("a circuit's load is known only when everything that is powered stands on one circuit, once"),
    each=POWERED,
    says={
        "twice": "gets its power {count} times: {circuits}; one of them is wrong",
        "once": "gets its power from circuit {circuit}",
    },
    caution=CAUTION,
    since="0.2.0",
)
def every_item_fed(room: Room, item: Item) -> Says:
    """Everything that draws from the mains is on exactly one circuit.

    Why: A circuit looks empty when what it feeds is not written down, and full when something is written down twice.

    How decided: Amplifiers, the processor, a display, the projector, subwoofers and loudspeakers whose product sheet
    gives a draw. Each must be named by exactly one load, by its own name or by the rack's that it is in. Named by none,
    the question is open; a subwoofer without a sheet is open as well, unless an amplifier drives it.

    Remedy: Name the item in the load that stands for it, and strike out the other.

    When to waive: A device with two cords, on two circuits on purpose.
    """
    ways = room.figures.powered.feeding(item)
    if not ways:
        raise unfed(room)
    names = tuple(f"{way.load.words} on {way.circuit.words}" for way in ways)
    if len(ways) > 1:
        return fails("twice", count=len(ways), circuits=names)
    return passes("once", circuit=ways[0].circuit.words)


@rule(
    "mains.sheet-draw",
    level=Level.ERROR,
    basis=practice(
        "a draw that is declared below the nameplate of the product is one of two statements that are wrong"
    ),
    each=ITEM_LOADS,
    window=at_least(ROUNDING, ""),
    says="is declared at {figure} of what the product sheet says it draws; {window} is believed",
    at="apparent_power",
    caution=CAUTION,
    since="0.2.0",
)
def sheet_draw(room: Room, fed: Fed[Load]) -> Figure:
    """A load is not declared lower than the nameplate on its product's sheet.

    Why: A low declaration makes a circuit look emptier than it is.

    How decided: Declared current or apparent power over the sheet's; of a rack, over the sum of what is in it. A tenth
    is left for rounding and for nameplates of 115 V or 220 V. What rests on the draw waits until one of the two is
    corrected. A load that declares nothing is taken at its sheet's word.

    Remedy: Enter the nameplate's value, or correct the sheet.

    When to waive: A measured draw under full program, with the sheet of the measurement.
    """
    return room.figures.mains.sheet_ratio(fed.item, fed.circuit)


@rule(
    "mains.declared-draw",
    level=Level.NOTE,
    basis=standard("IEC 60065", "4.2.6: one eighth of rated power", read=False),
    each=AMPLIFIER_LOADS,
    window=at_least(1.0, ""),
    says="is declared at {figure} of what its rated power asks for; {window} is likely",
    after=CONTRADICTED,
    at="current",
    caution=CAUTION,
    since="0.1.0",
)
def declared_draw(room: Room, fed: Fed[Load]) -> Figure:
    """An amplifier's declared current is no lower than what one eighth of its power needs.

    Why: A low declaration makes a circuit look emptier than it is.

    How decided: Declared current over an estimate from channels, rated power, the efficiency of its technology and a
    power factor of 0.65. The nameplate outranks the estimate.

    Remedy: Enter the nameplate current.

    When to waive: The maker publishes a measured draw at one eighth of rated power.
    """
    items = room.figures.powered.items_of(fed.item)
    amplifiers = tuple(item for item in items if isinstance(item, Amplifier))
    return room.figures.mains.draw_ratio(fed.item, fed.circuit, amplifiers)
