"""What is cut out of framing, and the boards that power comes from: both belong to the building."""

from __future__ import annotations

from typing import TYPE_CHECKING

from roomlint.design.along import Along
from roomlint.design.element import Element
from roomlint.design.keys import choice, flag, ident
from roomlint.design.measured import length, quantity, surveyed
from roomlint.design.parts import Name, named, part
from roomlint.design.proofs import Engineer

if TYPE_CHECKING:
    from roomlint.design.reader import Book


class Cut(Element):
    """A hole or a notch in one stud or joist, or a chase in a wall of masonry."""

    KIND = "cut"

    id_key = ident()
    on = named("The wall, or ceiling or floor, whose framing is cut.", "surface", "rear", required=True)
    kind = choice(
        "What it is.", "hole", "notch", "end-notch", "cut-through", "upright-chase", "level-chase", required=True,
        default="hole",
    )  # fmt: skip
    size_m = length("Diameter of a hole, or depth of a notch or a chase.", high=1.0, example="25 mm")
    length_m = length("Length of a notch, along the member.", high=3.0, example="60 mm")
    edge_distance_m = length(
        "From the edge of a hole to the nearest edge of the member.", zero=True, high=1.0, example="32 mm"
    )
    apart_m = quantity(
        "Along the member to the next hole or notch, edge to edge, or none where it is the only one.", "length",
        zero=True, high=20.0, example="300 mm", or_none=True,
    )  # fmt: skip
    middle_third = flag("Whether it is in the middle third of the member's span.")
    doubled = flag("Whether the stud is doubled where it is bored.")
    carries = choice("What goes through it.", "cable", "raceway", "loudspeaker", "pipe", "duct", "nothing")
    nail_plate = flag("Whether a steel plate covers it.")
    back_to_back = flag("Whether the other face of the wall is chased at the same place.")
    engineer = part("The engineer, or the member's maker, who allowed it, or none.", Engineer)

    @property
    def is_chase(self) -> bool:
        """Whether it is a chase."""
        return self.kind in {"upright-chase", "level-chase"}

    @property
    def alone(self) -> bool:
        """Whether the file states that it is the only cut of its member."""
        return Cut.apart_m.says_none(self)


class Panel(Along):
    """A board of circuits."""

    KIND = "panel"

    id_key = ident()
    kind = choice("What it is.", "service", "subpanel", required=True, default="service")
    fed_from: Name[str | None] = Name("The panel that feeds it.", "panel", "house", told=True)
    where = choice(
        "Where it is.", "this-room", "utility-room", "garage", "basement", "hallway", "clothes-closet", "bathroom",
        "stairs", "outdoors", key="place",
    )  # fmt: skip
    wall = named("The wall of this room that it is on.", "wall", "rear")
    width_m = surveyed("Width of its enclosure.", high=5.0, example="0.40 m")
    handle_height_m = surveyed("Height of its highest handle, in its highest position.", high=5.0, example="1.70 m")
    clear_depth_m = surveyed("Free depth in front of it.", zero=True, high=20.0, example="1.00 m")
    clear_width_m = surveyed("Free width in front of it.", zero=True, high=20.0, example="0.80 m")
    clear_height_m = surveyed("Free height in front of it, from the floor.", zero=True, high=20.0, example="2.10 m")
    storage = flag("Whether anything is kept in the space in front of it.")
    new = flag("Whether it is new or replaced.")
    surge = choice("Surge protection at it.", "type-1", "type-2", "type-3", "none")

    def settle(self, book: Book) -> None:
        """Work out where it is along its wall, and refuse one that is said to be here and is on none."""
        where = self.given("where")
        if self.given("wall") is not None:
            self.begin(book.walls.get(self.given("wall") or ""), self.given("width_m"), book)
            if where not in {None, "this-room"}:
                book.cross(self.at.get("place") or self.at, "it is on a wall of this room and said to be elsewhere.")
        fed = self.given("fed_from")
        if fed is not None and (self.given("kind") == "service" or fed == self.id):
            said = (
                "a service panel is fed by the supply" if self.given("kind") == "service" else "it cannot feed itself"
            )
            book.cross(self.at.get("fed_from") or self.at, f"{said}; name another panel, or leave this out.")
