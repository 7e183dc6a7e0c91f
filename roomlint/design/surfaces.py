"""What walls, ceiling and floor are made of."""

from __future__ import annotations

from typing import TYPE_CHECKING

from roomlint.design.element import Element
from roomlint.design.keys import choice, flag, ident, whole
from roomlint.design.measured import length
from roomlint.design.parts import part

if TYPE_CHECKING:
    from roomlint.design.reader import Book


SAWN = frozenset({"wood-stud", "joist"})
"""Framing of which the residential code says what may be cut."""
MAKERS = frozenset({"truss", "engineered", "steel-stud"})
"""Framing of which only its maker or an engineer says so."""
LAID = frozenset({"masonry", "hollow-block", "brick-veneer"})
"""Masonry, which is chased."""
BAYS = SAWN | MAKERS
"""Framing that leaves bays between its members."""


CLASSES = (
    "C14", "C16", "C18", "C20", "C22", "C24", "C27", "C30", "C35", "C40", "C45", "C50", "D30", "D35", "D40", "D50",
    "D60", "D70", "GL24c", "GL24h", "GL28c", "GL28h", "GL30c", "GL30h", "GL32c", "GL32h",
)  # fmt: skip
"""Strength classes that a screw's value is known for."""


class Framing(Element):
    """What is behind the surface."""

    KIND = "framing"
    PART = "framing"

    kind = choice(
        "What carries.", "wood-stud", "steel-stud", "joist", "truss", "engineered", "masonry", "hollow-block",
        "concrete", "furring", "hat-channel", "brick-veneer", "unknown",
    )  # fmt: skip
    spacing_m = length("Between the centres of studs or joists.", high=3.0, example="16 in")
    member_width_m = length("Width of the face that fasteners enter.", high=1.0, example="38 mm")
    member_depth_m = length(
        "Depth of the stud or joist; of masonry the thickness of its leaf.", high=1.0, example="89 mm"
    )
    species = choice(
        "Species group as on the grade stamp; unknown when there is none.",
        "spruce-pine-fir", "spruce-pine-fir-south", "hem-fir", "hem-fir-north", "douglas-fir-larch",
        "douglas-fir-larch-north", "douglas-fir-south", "southern-pine", "mixed-southern-pine", "western-cedars",
        "eastern-softwoods", "northern-species", "redwood", "ponderosa-pine", "western-woods", "aspen",
        "northern-white-cedar", "red-oak", "white-oak", "mixed-maple", "yellow-poplar", "eastern-white-pine",
        "western-hemlock", "unknown",
    )  # fmt: skip
    strength_class = choice(
        "Strength class as on a European grade stamp, to EN 338 (C and D) or EN 14080 (GL), instead of a species group;"
        " unknown when there is none.", *CLASSES, "unknown",
    )  # fmt: skip
    steel_thickness_m = length("Design thickness of a steel stud's sheet.", high=0.01, example="0.84 mm")
    bearing = flag("Whether it carries the building.")
    span_m = length("Clear span of the joists.", high=20.0, example="3.60 m")
    runs = choice("Which way the joists run.", "front-to-rear", "left-to-right")

    def settle(self, book: Book) -> None:
        """Refuse two stamps on one piece of wood: each standard judges what was graded to it."""
        given, species = self.given("strength_class"), self.given("species")
        if {given, species}.isdisjoint({None, "unknown"}):
            said = f"{species} is a species group of the American standard and {given} a European class; keep one."
            book.cross(self.at.get("strength_class") or self.at, said)


class Board(Element):
    """The board in front of the framing."""

    KIND = "board"
    PART = "board"

    material = choice("What it is.", "gypsum", "plaster-on-lath", "plywood", "osb", "foam-backed", "none")
    layers = whole("How many layers.", 0, 4, example=1)
    thickness_m = length("Of one layer.", high=0.2, example="12.5 mm")


class Surface(Element):
    """A wall, the ceiling or the floor: what it is made of."""

    KIND = "surface"

    framing = part("What is behind it.", Framing, always=True)
    board = part("The board in front of the framing.", Board, always=True)
    finish = choice(
        "The finish, for absorption.", "gypsum-on-studs", "double-gypsum-on-steel", "plaster-on-masonry",
        "plaster-on-lath", "concrete", "concrete-block", "painted-block", "brick", "painted-brick", "glass",
        "heavy-glass", "double-glazing", "wood-on-joists", "parquet-on-concrete", "wood-lining", "vinyl",
        "ceramic-tile", "carpet-on-concrete", "carpet-on-felt", "curtain-light", "curtain-medium", "curtain-heavy",
    )  # fmt: skip
    fire_rated = flag("Whether it is a fire-rated assembly.")
    plenum = flag("Whether the space behind it moves air for the building.")


class Floor(Surface):
    """The floor."""

    ID = "floor"


class Wall(Surface):
    """A wall."""

    id_key = ident("Name of the wall: front, right, rear, left, or as the outline names it.")

    def settle(self, book: Book) -> None:
        """See that it is one of the outline's."""
        node = self.at.get("id")
        if node is not None:
            book.refer("wall", node)
