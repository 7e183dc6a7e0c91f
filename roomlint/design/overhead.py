"""The ceiling as it was given, and its planes over the plan."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any, Final, TypeAlias

from roomlint.design.base import need
from roomlint.design.element import Derived, Element
from roomlint.design.keys import choice
from roomlint.design.measured import surveyed
from roomlint.design.parts import Each, part, several, words
from roomlint.design.quantity import Quantity, exact
from roomlint.design.surfaces import Surface

if TYPE_CHECKING:
    from collections.abc import Callable

    from roomlint.design.outline import Corner
    from roomlint.design.reader import Book
    from roomlint.design.shell import Shell
    from roomlint.plane import Outline, Point2
    from roomlint.roof import Facet

HIGHEST_M: Final = 50.0
"""No ceiling of a residential room is higher than this."""
RISES_TOWARD_DEG: Final = {"left": -90.0, "right": 90.0, "front": 180.0, "rear": 0.0}
"""A slope rises away from its low side: low at the left, it rises toward the right (azimuth -90)."""
_COVERED: Final = 5e-3
"""By this share of the plan its pieces may miss it or overlap: what corners are good for."""
_SAME_M: Final = 1e-3
_AT_THE_SIDE: Final = exact(0.0, "m")
_EDGES: Final = ("from_left", "from_front", "width", "depth")

Numbers: TypeAlias = "Callable[[Quantity], float]"
Spot: TypeAlias = tuple[Quantity, Quantity, Quantity]

BELONGS = {
    "flat": ("height",),
    "mono-pitch": ("high", "low", "low_side"),
    "gable": ("height", "low", "ridge", "ridge_at"),
    "corners": ("heights",),
    "tray": ("height", "low", "raised"),
    "part-sloped": ("height", "low", "low_sides", "slope_width"),
    "pieces": ("pieces",),
}
"""Which keys describe a ceiling of each shape."""
_MAY_LACK = frozenset({"ridge_at"})


class Raised(Element):
    """The raised part of a tray, a rectangle in the lower ceiling."""

    KIND = "raised part"

    from_left = surveyed("Of its left edge, from the left.", zero=True, high=50.0, required=True)
    from_front = surveyed("Of its front edge, from the front.", zero=True, high=50.0, required=True)
    width = surveyed("Left to right.", high=50.0, example="2.40 m", required=True)
    depth = surveyed("Front to rear.", high=50.0, example="3.00 m", required=True)
    side_run = surveyed(
        "How far its sides lean inwards on their way up, in plan; 0 m, upright, when not given.", zero=True, high=10.0,
        example="0.30 m",
    )  # fmt: skip


class Vertex(Element):
    """A corner of a piece of the ceiling."""

    KIND = "corner of the ceiling"

    from_left = surveyed("From the left.", zero=True, high=50.0, required=True)
    from_front = surveyed("From the front.", zero=True, high=50.0, required=True)
    height = surveyed("Height of the ceiling there.", high=20.0, required=True)


class Piece(Element):
    """A flat piece of the ceiling: a polygon of the plan with a height over each corner."""

    KIND = "piece of the ceiling"

    corners = several("Its corners in order around it.", Vertex, least=3, most=32)

    corners.required = True


class Ceiling(Surface):
    """The ceiling's shape as it was given, and what it is made of; its planes are computed from it elsewhere."""

    ID = "ceiling"

    shape = choice("Its shape.", *BELONGS, required=True, default="flat")
    height_m = surveyed(
        "Height of a flat ceiling or the flat part of one, of the ridge of a gable, of the raised part of a tray.",
        low=1.2, high=20.0,
    )  # fmt: skip
    low_m = surveyed(
        "Lowest height: of a mono-pitch or a slope at its low side, of a gable at its eaves, around a tray.", high=20.0,
        example="1.40 m",
    )  # fmt: skip
    high_m = surveyed("Height of a mono-pitch at its high side.", low=1.2, high=20.0, example="2.90 m")
    low_side = choice(
        "Which side of the bounding box a mono-pitch is lowest at.",
        "left",
        "right",
        "front",
        "rear",
    )
    ridge = choice("Which way a gable's ridge runs.", "front-to-rear", "left-to-right")
    ridge_at_m = surveyed(
        "Distance of the ridge from the left (front-to-rear) or the front (left-to-right) side; the middle when not"
        " given.", high=50.0,
    )  # fmt: skip
    heights: Each[tuple[Quantity, ...]] = Each(
        "Ceiling height above each corner, in the order of the outline, or of a rectangle from front left clockwise.",
        surveyed("Height above one corner.", high=20.0), 64,
    )  # fmt: skip

    raised = part("The raised part of a tray.", Raised)
    low_sides = words(
        "Sides of the bounding box along which a part-sloped ceiling slopes down.",
        choice("A side.", "left", "right", "front", "rear"), 4,
    )  # fmt: skip
    slope_width_m = surveyed(
        "How far in plan each slope of a part-sloped ceiling reaches from its side.", high=50.0, example="1.20 m"
    )
    pieces = several(
        "Flat pieces that cover the plan together and meet at their edges, for any other ceiling.", Piece, most=64
    )
    sides_of_raised = Derived["tuple[Quantity, Quantity, Quantity, Quantity] | None"]("raised", default=lambda: None)
    """Left, right, rear and front edge of the raised part in the frame of the design."""
    polygons = Derived["tuple[tuple[Spot, ...], ...]"]("pieces", default=tuple)
    """Of each piece its corners: x, y and the height, in the frame of the design."""

    def facets(self, w: Numbers, shell: Shell) -> tuple[Facet, ...]:
        """Return the ceiling as flat facets, given what gives each quantity its number.

        Raises `Missing` for a shape that lacks what describes it, and `Refused` for one that cannot be.
        """
        outline = tuple((w(corner.x), w(corner.y)) for corner in shell.corners)
        return self._built(w, shell, outline, lambda attr: getattr(self, attr), shell.corners)

    def height_over(self, w: Numbers, shell: Shell, x: Quantity, y: Quantity) -> float:
        """Return the height over a point of the plan, without counting a key as read; errors as for `facets`."""
        from roomlint.roof import height_m

        corners = shell.given("corners") or ()
        outline = tuple((w(corner.x), w(corner.y)) for corner in corners)
        return height_m(self._built(w, shell, outline, self.given, corners), (w(x), w(y)))

    def _built(
        self, w: Numbers, shell: Shell, outline: Outline, get: Callable[[str], Any], corners: tuple[Corner, ...]
    ) -> tuple[Facet, ...]:
        from roomlint import roof

        def m(key: str) -> float:
            return w(need(get(f"{key}_m"), shell, f"ceiling.{key}"))

        def flat() -> tuple[Facet, ...]:
            return roof.flat(outline, m("height"))

        def mono_pitch() -> tuple[Facet, ...]:
            low, high = m("low"), m("high")
            side = need(get("low_side"), shell, "ceiling.low_side")
            return roof.mono_pitch(outline, low, high, RISES_TOWARD_DEG[side])

        def gable() -> tuple[Facet, ...]:
            eaves, ridge = m("low"), m("height")
            # Toward the right the ridge's left-hand side is the front, which `ridge_at` is measured from.
            runs_deg = 0.0 if get("ridge") == "front-to-rear" else -90.0
            at = get("ridge_at_m")
            return roof.gable(outline, eaves, ridge, runs_deg, ridge_at_m=w(at) if at is not None else None)

        def tray() -> tuple[Facet, ...]:
            left, right, rear, front = map(w, need(get("sides_of_raised"), shell, "ceiling.raised"))
            run = get("raised").given("side_run")
            low, high = m("low"), m("height")
            return roof.tray(outline, low, high, (left, right, rear, front), w(run) if run is not None else 0.0)

        def part_sloped() -> tuple[Facet, ...]:
            sides = need(get("low_sides") or None, shell, "ceiling.low_sides")
            toward = [RISES_TOWARD_DEG[side] for side in sides]
            return roof.part_sloped(outline, m("height"), m("low"), m("slope_width"), toward)

        def pieces() -> tuple[Facet, ...]:
            polygons = need(get("polygons") or None, shell, "ceiling.pieces")
            plans = [[(w(x), w(y)) for x, y, _ in spots] for spots in polygons]
            heights = [[w(z) for _, _, z in spots] for spots in polygons]
            return roof.over_pieces(list(zip(plans, heights, strict=True)))

        def over_corners() -> tuple[Facet, ...]:
            get("heights")  # each corner holds its own: whoever asks for the shape has read the list
            return roof.over_corners(outline, [w(need(c.height_m, shell, "ceiling.heights")) for c in corners])

        built = {
            "flat": flat, "mono-pitch": mono_pitch, "gable": gable, "corners": over_corners, "tray": tray,
            "part-sloped": part_sloped, "pieces": pieces,
        }  # fmt: skip
        return built[get("shape") or "flat"]()

    def fit(self, corners: tuple[Corner, ...], book: Book) -> None:
        """Each shape has keys of its own, and needs them."""
        shape = self.given("shape") or "flat"
        belongs = BELONGS[shape]
        for key in sorted({key for keys in BELONGS.values() for key in keys} - set(belongs)):
            node = self.at.get(key)
            if node is not None:
                book.cross(node, f"a {shape} ceiling has no {key}; it is described by {', '.join(belongs)}.")
        lacking = [key for key in belongs if key not in _MAY_LACK and self.at.get(key) is None]
        if lacking:
            book.cross(self.at, f"a {shape} ceiling needs {', '.join(lacking)}.")
        low = self.given("low_m")
        for upper in (self.given("high_m"), self.given("height_m")):
            if low is not None and upper is not None and low.value > upper.value:
                book.cross(low.at, "the low height is above the high one.")
        ridge, across = self.given("ridge_at_m"), book.width if self.given("ridge") == "front-to-rear" else book.length
        if ridge is not None and across is not None and ridge.value >= across.value > 0:
            book.cross(ridge.at, f"the ridge must stand within the {book.words(across.value)} across the room.")
        if shape == "tray":
            self._fit_raised(book)
        elif shape == "pieces":
            self._fit_pieces(corners, book)

    def _fit_raised(self, book: Book) -> None:
        raised = self.given("raised")
        edges: list[Quantity] = [raised.given(key) for key in _EDGES if raised.given(key)] if raised else []
        if len(edges) != len(_EDGES) or book.width is None or book.length is None:
            return
        left, from_front, width, depth = edges
        front = from_front * -1.0 + book.length
        self.put("sides_of_raised", (left, left + width, front - depth, front))
        for start, of, extent, side in (
            (left, width, book.width, "left to right"), (from_front, depth, book.length, "front to rear"),
        ):  # fmt: skip
            if start.value <= 0.0 or start.value + of.value >= extent.value:
                said = f"the raised part must lie inside the {book.words(extent.value)} {side}, clear of the walls"
                book.cross(of.at or self.at, f"{said}; for one that reaches a wall write the ceiling as pieces.")

    def _fit_pieces(self, corners: tuple[Corner, ...], book: Book) -> None:
        """Take what lies on the outline, or on another piece's corner, as the same point: it is one reading there."""
        from roomlint import cutting, plane

        known: list[Spot] = []
        polygons: list[tuple[Spot, ...]] = []
        plans: list[tuple[tuple[Point2, ...], ...]] = []
        room = cutting.triangles([corner.spot for corner in corners])
        plan = sum(plane.area_m2(triangle) for triangle in room)
        for piece in self.given("pieces") or ():
            spots = [self._spot(vertex, corners, known, book) for vertex in piece.given("corners") or ()]
            whole = tuple(spot for spot in spots if spot is not None)
            if len(whole) != len(spots) or not whole:
                return
            known += whole
            outline = [(x.value, y.value) for x, y, _ in whole]
            if plane.why_not_simple(outline):
                book.cross(piece.at, "the corners of this piece make no polygon; list them in order around it.")
                return
            # The same area twice would make up for one that is left out.
            parts = cutting.triangles(outline)
            if any(cutting.common_m2(parts, others) > _COVERED * plan for others in plans):
                book.cross(piece.at, "this piece lies over another one; each part of the plan belongs to one piece.")
                return
            polygons.append(whole)
            plans.append(parts)
        self.put("polygons", tuple(polygons))
        covered = sum(cutting.common_m2(parts, room) for parts in plans)
        if abs(covered / plan - 1.0) > _COVERED:
            book.cross(self.at, f"the pieces cover {covered:.2f} m2, and the plan has {plan:.2f} m2; each part once.")

    @staticmethod
    def _spot(vertex: Vertex, corners: tuple[Corner, ...], known: list[Spot], book: Book) -> Spot | None:
        x, from_front, z = (vertex.given(key) for key in ("from_left", "from_front", "height"))
        if x is None or from_front is None or z is None or book.width is None or book.length is None:
            return None
        y = from_front * -1.0 + book.length
        for there in known:
            if all(abs(one.value - other.value) < _SAME_M for one, other in zip(there, (x, y, z), strict=True)):
                return there
        across = [_AT_THE_SIDE, book.width, *(corner.x for corner in corners), *(spot[0] for spot in known)]
        along = [_AT_THE_SIDE, book.length, *(corner.y for corner in corners), *(spot[1] for spot in known)]
        x = next((end for end in across if abs(end.value - x.value) < _SAME_M), x)
        y = next((end for end in along if abs(end.value - y.value) < _SAME_M), y)
        return (x, y, z)

    @property
    def highest_m(self) -> float:
        """The largest height that the file gives, for what can be in the room at all."""
        given = [self.given(attr) for attr in ("height_m", "low_m", "high_m")] + list(self.given("heights") or ())
        given += [spot[2] for spots in self.given("polygons") or () for spot in spots]
        return max((one.value for one in given if one is not None), default=HIGHEST_M)
