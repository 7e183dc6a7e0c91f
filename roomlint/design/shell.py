"""The room itself: outline, ceiling, walls, openings, what stands in the way, and what lines it."""

from __future__ import annotations

from itertools import combinations
from typing import TYPE_CHECKING

from roomlint.design.along import EDGE, SLIP_M, Along
from roomlint.design.base import Point
from roomlint.design.element import Derived, Element
from roomlint.design.keys import choice, flag, ident, number, whole
from roomlint.design.listening import HOLDERS, Fixing, Mounting
from roomlint.design.measured import length, quantity, surveyed
from roomlint.design.outline import Corner, read_outline
from roomlint.design.overhead import HIGHEST_M, Ceiling
from roomlint.design.parts import Table, named, part, several
from roomlint.design.proofs import FireApproval
from roomlint.design.quantity import Quantity, exact
from roomlint.design.structure import Cut
from roomlint.design.surfaces import Board, Floor, Framing, Surface, Wall
from roomlint.source.say import code

if TYPE_CHECKING:
    from collections.abc import Mapping

    from roomlint.design.reader import Book

__all__ = [
    "Board", "Ceiling", "Corner", "Floor", "Framing", "Obstacle", "Opening", "Shell", "Size", "Surface", "Treatment",
    "Wall",
]  # fmt: skip

HORIZONTAL = ("ceiling", "floor")
BANDS = {"125 Hz": 125, "250 Hz": 250, "500 Hz": 500, "1 kHz": 1000, "2 kHz": 2000, "4 kHz": 4000}
"""The octave bands of an absorption coefficient, as the file writes them and by their centre frequency in Hz."""


class Listed(Element):
    """A corner; the wall named here runs from it to the next corner."""

    KIND = "corner"

    from_left = surveyed("From the left side of the bounding box.", zero=True, high=50.0, required=True)
    from_front = surveyed("From the front side of the bounding box.", zero=True, high=50.0, required=True)
    wall = ident("Name of the wall from this corner to the next.", key="wall")


class Size(Element):
    """A rectangular room; its walls are front, right, rear and left."""

    KIND = "size"

    width_m = surveyed("Left wall to right wall.", low=1.0, high=30.0, example="4.20 m", required=True)
    length_m = surveyed("Front wall to rear wall.", low=1.0, high=30.0, example="5.60 m", required=True)


class Opening(Along):
    """An opening in a wall."""

    KIND = "opening"

    id_key = ident()
    kind = choice("What it is.", "door", "glass-door", "window", "opening", required=True, default="opening")
    wall = named("The wall it is in.", "wall", "rear", required=True)
    width_m = surveyed("Clear width.", low=0.05, high=20.0, example="0.90 m")
    sill_m = surveyed("Height of its lower edge; 0 m for a door.", zero=True, high=20.0, example="0 m")
    height_m = surveyed("Height of the opening itself.", low=0.05, high=20.0, example="2.05 m")
    hinge = choice("Hinge side, seen from inside the room.", "left", "right")
    swing = choice("Which way the leaf moves.", "in", "out", "sliding", "none")
    egress = flag("Whether people are meant to escape through it.")

    def fit(self, ends: tuple[Corner, Corner] | None, highest_m: float, book: Book) -> None:
        """See that it is in its wall, whichever end it was measured from, and under the ceiling."""
        if ends is not None:
            self.fit_wall(ends, self.given("width_m"), book)
        sill, height = self.given("sill_m"), self.given("height_m")
        slack = EDGE * book.tolerance_m + SLIP_M
        if height is not None:
            top = height.value + (sill.value if sill is not None else 0.0)
            if top > highest_m + slack:
                book.cross(
                    height.at,
                    f"it reaches up to {book.words(top)}; the ceiling is {book.words(highest_m)} high at most.",
                )

    def across(self, other: Opening) -> float:
        """Return how far it lies across another opening of its wall, m; 0 where it does not, or nobody knows."""
        if self.given("wall") != other.given("wall"):
            return 0.0
        beside = _overlap(self.given("start_m"), self.given("width_m"), other.given("start_m"), other.given("width_m"))
        above = _overlap(self.given("sill_m"), self.given("height_m"), other.given("sill_m"), other.given("height_m"))
        return min(beside, above)


def _overlap(*of: Quantity | None) -> float:
    if any(one is None for one in of):
        return 0.0
    low, size, other_low, other_size = (one.value for one in of if one is not None)
    return max(min(low + size, other_low + other_size) - max(low, other_low), 0.0)


class RoofWindow(Element):
    """A window in the ceiling."""

    KIND = "roof window"

    id_key = ident()
    from_left_m = surveyed("Of its left edge, from the left.", zero=True, high=50.0)
    from_front_m = surveyed("Of its front edge, from the front.", zero=True, high=50.0)
    width_m = surveyed("Left to right, measured along the ceiling.", low=0.05, high=20.0, example="0.78 m")
    length_m = surveyed("Front to rear, measured along the ceiling.", low=0.05, high=20.0, example="1.18 m")

    def fit(self, book: Book) -> None:
        """See that it begins in the room."""
        for attr, extent in (("from_left_m", book.width), ("from_front_m", book.length)):
            edge = self.given(attr)
            if edge is not None and extent is not None and edge.value >= extent.value:
                book.cross(
                    edge.at or self.at, f"it begins outside the room, which is {book.words(extent.value)} there."
                )


class Obstacle(Element):
    """An upright box that sound, sight and people meet."""

    KIND = "obstacle"

    id_key = ident()
    kind = choice(
        "What it is.", "post", "soffit", "beam", "chimney-breast", "duct", "cabinet", "stair", "riser", required=True,
        default="post",
    )  # fmt: skip
    from_left = surveyed("Of its left side, from the left.", zero=True, high=50.0, required=True)
    from_front = surveyed("Of its front side, from the front.", zero=True, high=50.0, required=True)
    width = surveyed("Left to right.", high=50.0, example="0.30 m", required=True)
    depth = surveyed("Front to rear.", high=50.0, example="0.30 m", required=True)
    bottom = surveyed("Height of its underside; 0 m when not given.", zero=True, high=20.0, example="2.20 m")
    top = surveyed("Height of its top; the ceiling when not given.", high=20.0, example="2.50 m")
    fire_blocking = choice(
        "Whether the hollow of a soffit is closed off inside against fire, or is none.", "blocked", "open", "none"
    )
    low = Derived[Point | None]("from_left", "from_front", "width", "depth", "bottom", "top", default=lambda: None)
    """Corner with the smallest coordinates."""
    high = Derived[Point | None]("from_left", "from_front", "width", "depth", "bottom", "top", default=lambda: None)
    """Corner with the largest coordinates."""

    def fit(self, book: Book) -> None:
        """Place the box in the room."""
        left, front, width, depth = (self.given(key) for key in ("from_left", "from_front", "width", "depth"))
        bottom, top = self.given("bottom"), self.given("top")
        if bottom is not None and top is not None and bottom.value >= top.value:
            book.cross(bottom.at, "the bottom of the obstacle is not below its top.")
        if None in (left, front, width, depth) or book.length is None or book.width is None:
            return
        far = front * -1.0 + book.length
        self.put("low", Point(left, far - depth, bottom or exact(0.0, "m")))
        self.put("high", Point(left + width, far, top or exact(HIGHEST_M, "m")))
        _fit_plan(self, book)


def _fit_plan(box: Obstacle | Riser | Walkway, book: Book) -> None:
    """See that what has sides in the plan ends inside the room; what no side is given of ends at a wall."""
    slack = EDGE * book.tolerance_m + SLIP_M
    sides = (("from_left", "width", book.width, "right"), ("from_front", "depth", book.length, "rear"))
    for first, size, extent, side in sides:
        start, of = box.given(first), box.given(size)
        end = (start.value if start is not None else 0.0) + (of.value if of is not None else 0.0)
        if extent is not None and end > extent.value + slack:
            at = of if of is not None else start
            book.cross(at.at, f"it reaches {book.words(end - extent.value)} out of the room on its {side} side.")


class Riser(Element):
    """A platform that seats stand on, from wall to wall unless it says otherwise."""

    KIND = "riser"

    id_key = ident()
    from_left = surveyed("Of its left side, from the left; the left wall when not given.", zero=True, high=50.0)
    from_front = surveyed("Of its front edge, from the front.", zero=True, high=50.0, required=True)
    width = surveyed("Left to right; up to the right wall when not given.", high=50.0, example="3.20 m")
    depth = surveyed("Front to rear; up to the rear wall when not given.", high=50.0, example="1.80 m")
    height = surveyed("Height of the platform.", high=3.0, example="0.30 m", required=True)
    steps = whole("How many times one steps up to it, the last onto the platform itself.", 1, 12, example=2)

    def fit(self, book: Book) -> None:
        """See that it is in the room."""
        _fit_plan(self, book)

    def holds(self, plan: tuple[Quantity, Quantity], book: Book) -> bool:
        """Return whether a place of the plan is over it."""
        front, height = self.given("from_front"), self.given("height")
        if front is None or height is None or book.width is None or book.length is None:
            return False
        left, width, depth = (self.given(key) for key in ("from_left", "width", "depth"))
        start = left.value if left is not None else 0.0
        end = start + width.value if width is not None else book.width.value
        rear = front.value + depth.value if depth is not None else book.length.value
        x, from_front = plan[0].value, book.length.value - plan[1].value
        return bool(start <= x <= end and front.value <= from_front <= rear)


class Walkway(Element):
    """A strip of the floor that people walk along."""

    KIND = "walkway"

    id_key = ident()
    from_left = surveyed("Of its left side, from the left.", zero=True, high=50.0)
    from_front = surveyed("Of its front side, from the front.", zero=True, high=50.0)
    width = surveyed("Left to right.", high=50.0, example="0.95 m")
    depth = surveyed("Front to rear.", high=50.0, example="3.00 m")

    def fit(self, book: Book) -> None:
        """See that it is in the room."""
        _fit_plan(self, book)


class Control(Element):
    """Something that people work by hand: a keypad, a switch, a screen on the wall."""

    KIND = "control"

    id_key = ident()
    height_m = surveyed("Height of what is worked by hand.", zero=True, high=5.0, example="1.10 m")


class Treatment(Along):
    """An absorber, diffuser, curtain, carpet or bass trap."""

    KIND = "treatment"

    id_key = ident()
    kind = choice(
        "What it is.", "absorber", "diffuser", "curtain", "carpet", "bass-trap", "canopy", required=True,
        default="absorber",
    )  # fmt: skip
    on = named("The wall's name, ceiling or floor.", "surface", "ceiling")
    width_m = surveyed("Width.", high=50.0, example="1.20 m")
    height_m = surveyed("Height on a wall; depth front to rear on ceiling or floor.", high=50.0, example="0.60 m")
    bottom_m = surveyed("Height of its lower edge.", zero=True, high=20.0, example="0.80 m")
    thickness_m = length("Thickness.", high=2.0, example="100 mm")
    gap_m = length("Air gap behind it.", zero=True, high=5.0, example="50 mm")
    material = choice(
        "What it is made of.", "mineral-wool", "glass-fibre", "open-cell-foam", "polyester", "wood", "fabric",
        "membrane",
    )  # fmt: skip
    absorption: Table[Mapping[int, float] | None] = Table(
        "Absorption coefficient by octave band.", BANDS, number("Coefficient of the band", 0, 1.3, example=0.6)
    )
    mass_kg = quantity("Of the whole panel.", "mass", high=300.0)
    flame_spread = number("Flame-spread index of the test report.", 0, 500, example=25)
    smoke_developed = number("Smoke-developed index of the test report.", 0, 1000, example=50)
    thermal_barrier = flag("Whether a thermal barrier covers it.")
    removable = flag("Whether it comes off its wall and goes back without damage.")
    approval = part("Approval of the material by a large-scale fire test, or none.", FireApproval)
    mounting = part("How it is held.", Mounting)

    @property
    def fixing(self) -> Fixing | None:
        """Its fasteners."""
        return self.mounting.fixing if self.mounting is not None else None

    def settle(self, book: Book) -> None:
        """Refuse one that lies on one surface and is held by another; a curtain may hang from the ceiling."""
        lies, mounting = self.given("on"), self.given("mounting")
        if lies in book.walls:
            self.begin(book.walls[lies], self.given("width_m"), book)
        elif lies in HORIZONTAL:
            self.spread(self.given("width_m"), self.given("height_m"), book)
        held = mounting.given("on") if mounting is not None else None
        if lies is None or held is None or lies == held:
            return
        if lies == "ceiling":
            fits = held in _OVERHEAD
        else:
            fits = held in {"floor", *HOLDERS} or (held == "ceiling" and self.given("kind") == "curtain")
        if not fits:
            node = mounting.at.get("on") or mounting.at
            book.cross(node, f"it is on {lies!r} and is held by {held!r}; correct one of the two.")


_OVERHEAD = ("grid-ceiling", "electrical-box")
"""What holds a panel that is on the ceiling, besides the ceiling itself."""


class Shell(Element):
    """The room itself. Give size for a rectangle or outline for any other shape."""

    KIND = "room"

    size = part("A rectangular room; its walls are front, right, rear and left.", Size)
    outline = several(
        "Corners of any simple polygon, in order around the room, from the left-most and front-most sides of the"
        " bounding box.", Listed, least=3, most=64,
    )  # fmt: skip
    ceiling = part("The ceiling's shape.", Ceiling)
    floor = part("The floor.", Floor)
    walls = several("What is known of the walls.", Wall, most=64, what="wall")
    level = choice("Where in the building.", "basement", "ground", "upper", "attic")
    openings = several("Doors, windows and plain openings, or none.", Opening, most=200, what="opening", or_none=True)
    roof_windows = several("Windows in the ceiling, or none.", RoofWindow, most=24, what="roof window", or_none=True)
    obstacles = several("Boxes that sound, sight and people meet, or none.", Obstacle, most=200, what="obstacle",
                        or_none=True)  # fmt: skip
    risers = several("Platforms that rows of seats stand on, or none.", Riser, most=12, what="riser", or_none=True)
    controls = several("Keypads, switches and screens on the walls, or none.", Control, most=40, what="control",
                       or_none=True)  # fmt: skip
    walkways = several("Strips of the floor that people walk along, or none.", Walkway, most=24, what="walkway",
                       or_none=True)  # fmt: skip
    cuts = several("Holes and notches in studs and joists, or none.", Cut, most=100, what="cut", or_none=True)
    smoke_alarm = choice("Where the smoke alarm is that warns who sits here.", "in-room", "elsewhere", "none")
    width_m = Derived[Quantity]("size", "outline", default=lambda: exact(0.0, "m"))
    """Of the bounding box, left to right."""
    length_m = Derived[Quantity]("size", "outline", default=lambda: exact(0.0, "m"))
    """Of the bounding box, front to rear."""
    corners = Derived[tuple[Corner, ...]]("size", "outline", default=tuple)
    """Clockwise seen from above."""

    @property
    def surfaces(self) -> tuple[Surface, ...]:
        """The walls, the ceiling and the floor, as far as the file says anything about them."""
        return (*self.walls, *(one for one in (self.ceiling, self.floor) if one is not None))

    def surface(self, name: str) -> Surface | None:
        """Return the wall, ceiling or floor of that name, if the file says anything about it."""
        return next((surface for surface in self.surfaces if surface.id == name), None)

    @property
    def wall_names(self) -> tuple[str, ...]:
        """The names of the walls in the order of the corners."""
        return tuple(corner.wall for corner in self.corners)

    def settle(self, book: Book) -> None:
        """Work out the corners, and see that what is in the room fits them."""
        before = len(book.crossed)
        corners = read_outline(self, book)
        walls = [corner.wall for corner in corners]
        for kind, names in (("wall", walls), ("surface", [*walls, *HORIZONTAL]), ("holder", HOLDERS)):
            for name in names:
                book.name(kind, name)
        if not corners or book.width is None or book.length is None:
            book.unknown |= {"wall", "surface"}  # what they are called is unknown, so no name of one is wrong
            return
        self.put("corners", corners)
        self.put("width_m", book.width)
        self.put("length_m", book.length)
        if len(book.crossed) > before:
            return  # what does not fit a room that is wrong itself may well be right
        ceiling = self.given("ceiling")
        if ceiling is not None:
            ceiling.fit(corners, book)
        book.shell = self
        for listed in ("obstacles", "roof_windows", "risers", "walkways"):
            for one in self.given(listed) or ():
                one.fit(book)
        book.walls = dict(zip(walls, zip(corners, corners[1:] + corners[:1], strict=True), strict=True))
        self._fit_openings(ceiling.highest_m if ceiling is not None else HIGHEST_M, book)

    def _fit_openings(self, highest_m: float, book: Book) -> None:
        """See that openings are in their walls, and none across another."""
        openings: tuple[Opening, ...] = self.given("openings") or ()
        for opening in openings:
            ends = book.walls.get(opening.given("wall"))
            opening.begin(ends, opening.given("width_m"), book)
            opening.fit(ends, highest_m, book)
        for one, other in combinations(openings, 2):
            across = other.across(one)
            if across > EDGE * book.tolerance_m + SLIP_M:
                name = code(str(one.given("id")))
                book.cross(
                    other.at, f"it lies {book.words(across)} across the opening {name} of the same wall; correct one."
                )
