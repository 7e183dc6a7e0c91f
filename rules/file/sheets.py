"""Product sheets that somebody guessed."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from roomlint.review import Level, Missing, No, Subjects, between, fails, need, passes, practice, rule

if TYPE_CHECKING:
    from collections.abc import Iterator

    from roomlint.design.listening import Loudspeaker, Picture, Projector, Subwoofer
    from roomlint.design.products import Product
    from roomlint.design.supply import Amplifier, Processor
    from roomlint.review import Applies, Figure, Room, Says

    Bought = Loudspeaker | Subwoofer | Picture | Projector | Amplifier | Processor

DRAWN: Final = frozenset({"survey", "design"})


def _bought(room: Room) -> Iterator[Bought]:
    design = room.design
    yield from design.sources
    if design.picture is not None:
        yield design.picture
        if design.picture.projector is not None:
            yield design.picture.projector
    if design.processor is not None:
        yield design.processor
    yield from design.amplifiers


BOUGHT: Final[Subjects[Bought]] = Subjects(
    "loudspeaker, picture or electronics", _bought, ("loudspeakers", "subwoofers", "picture", "electronics.amplifiers")
)


def _sheets(thing: Bought) -> tuple[Product, ...]:
    """Return the sheets of a thing and of what holds it."""
    mounting = getattr(thing, "mounting", None)
    held = (mounting.product, mounting.stand) if mounting is not None else ()
    return tuple(sheet for sheet in (thing.product, *held) if sheet is not None)


def ordered(room: Room, thing: Bought) -> Applies:
    """Whether the job is so far that products are ordered; what has no sheet yet may be given a guessed one."""
    stage = need(room.design.project.stage, room.design.project, "stage")
    if stage in DRAWN:
        return No(f"at {stage} data may be assumed")
    need(thing.product, thing, "product")
    return True


@rule(
    "file.assumed-sheet",
    level=Level.NOTE,
    basis=practice("what is ordered and fastened is known by its maker's sheet or by a scale"),
    each=BOUGHT,
    when=ordered,
    says={
        "assumed": "data of {sheets} are assumed, and the job is at {stage}; put the maker's in their place",
        "known": "its data are the maker's, or measured",
    },
    at="product",
    since="0.3.0",
)
def assumed_sheet(room: Room, thing: Bought) -> Says:
    """From rough-in on no product's data are assumed.

    Why: A guessed mass hangs on real screws, and a guessed draw on a real circuit.

    How decided: Where the sheets of a thing, and of the mount or stand that holds it, say that their data come from,
    once the job is at rough-in or handover.

    Remedy: Take the data from the maker's sheet, or measure them.

    When to waive: A product of which nothing is published and nothing can be measured.
    """
    sources = {sheet.words: need(sheet.provenance, sheet, "provenance") for sheet in _sheets(thing)}
    guessed = tuple(name for name, source in sources.items() if source == "assumed")
    if guessed:
        return fails("assumed", sheets=guessed, stage=str(room.design.project.stage))
    if "mounting" in thing.KEYS and getattr(thing, "mounting", None) is None:
        raise Missing(thing, "mounting")
    return passes("known")


def _solid(_: Room, thing: Bought) -> Applies:
    """Whether a thing is a box: a screen's mass is in its frame."""
    product = need(thing.product, thing, "product")
    return No("a screen is mostly air and cloth") if product.kind == "screen" else True


@rule(
    "file.mass-and-size",
    level=Level.WARNING,
    basis=practice("boxes of the trade weigh 0.2 to 1.5 times as much as water; ours, with much to spare"),
    each=BOUGHT,
    when=_solid,
    window=between(0.08, 2.5, ""),
    says={
        "below": "weighs {figure} times as much as water of its size; {window} wanted: check mass and sizes",
        "above": "weighs {figure} times as much as water of its size; {window} wanted: check mass and sizes",
    },
    at="product",
    since="0.3.0",
)
def mass_and_size(room: Room, thing: Bought) -> Figure:
    """The mass and the outer sizes of a sheet can both be true.

    Why: A decimal point that slipped in a mass lets a mount pass that will not hold.

    How decided: Mass over width, height and depth, and over the 1 kg of a litre of water. A loudspeaker of 6.5 kg in
    9.5 litres weighs 0.68 times as much.

    Remedy: Take both from the maker's sheet again.

    When to waive: A scale and a rule have confirmed them.
    """
    return room.figures.bodies.by_water(need(thing.product, thing, "product"))
