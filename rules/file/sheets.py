"""Product sheets that somebody guessed."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from roomlint.review import Level, No, Subjects, fails, need, passes, practice, rule

if TYPE_CHECKING:
    from roomlint.design.products import Product
    from roomlint.review import Applies, Room, Says

DRAWN: Final = frozenset({"survey", "design"})
PRODUCTS: Final[Subjects[Product]] = Subjects("product sheet", lambda room: room.design.products)


def bought(room: Room, _: Product) -> Applies:
    """Whether the job is so far that products are bought."""
    stage = need(room.design.project.stage, room.design.project, "stage")
    return No(f"at {stage} data may be assumed") if stage in DRAWN else True


@rule(
    "file.assumed-sheet",
    level=Level.NOTE,
    basis=practice("what is ordered and fastened is known by its maker's sheet or by a scale"),
    each=PRODUCTS,
    when=bought,
    says={
        "assumed": "its data are assumed, and the job is at {stage}; put its data sheet in their place",
        "known": "its data are from {source}",
    },
    at="provenance",
    since="0.3.0",
)
def assumed_sheet(room: Room, product: Product) -> Says:
    """From rough-in on no product's data are assumed.

    Why: A guessed mass hangs on real screws, and a guessed draw on a real circuit.

    How decided: Where a sheet says that its data come from, once the job is at rough-in or handover.

    Remedy: Take the data from the maker's sheet, or measure them.

    When to waive: A product of which nothing is published and nothing can be measured.
    """
    source = need(product.provenance, product, "provenance")
    if source == "assumed":
        return fails("assumed", stage=str(room.design.project.stage))
    return passes("known", source="its data sheet" if source == "data-sheet" else "measurement")
