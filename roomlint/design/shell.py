"""The room itself: outline, ceiling, walls, openings and what stands in the way."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, ClassVar

from roomlint.design.base import Element, Value

if TYPE_CHECKING:
    from collections.abc import Mapping

    from roomlint.design.base import Point
    from roomlint.design.listening import Fixing


@dataclass(frozen=True, slots=True)
class Framing:
    """What a surface is built of, as far as something is to be fixed to it."""

    kind: str | None = None
    """wood-stud, steel-stud, joist, truss, engineered, masonry, hollow-block, concrete, unknown."""
    spacing_m: Value | None = None
    member_width_m: Value | None = None
    member_depth_m: Value | None = None
    species: str | None = None
    steel_thickness_m: Value | None = None
    bearing: bool | None = None


@dataclass(frozen=True, slots=True)
class Board:
    """The board or lining in front of the framing."""

    material: str | None = None
    layers: int | None = None
    thickness_m: Value | None = None
    """Thickness of one layer."""


@dataclass(frozen=True, slots=True)
class Surface(Element):
    """A wall, the ceiling or the floor: what it is made of."""

    KIND: ClassVar[str] = "surface"

    framing: Framing = Framing()
    board: Board = Board()
    finish: str | None = None
    fire_rated: bool | None = None
    plenum: bool | None = None


@dataclass(frozen=True, slots=True)
class Corner:
    """A corner of the outline; the wall named by `wall` runs from here to the next corner."""

    x: Value
    y: Value
    wall: str
    height_m: Value | None = None
    """Height of the ceiling above this corner, when the ceiling is given by its corners."""


@dataclass(frozen=True, slots=True)
class Ceiling:
    """The shape of the ceiling as it was given; the surfaces are computed from it elsewhere."""

    shape: str
    """flat, mono-pitch, gable or corners."""
    height_m: Value | None = None
    """Height of a flat ceiling, or of the ridge of a gable."""
    low_m: Value | None = None
    """Lowest height: of a mono-pitch, or the eaves of a gable."""
    high_m: Value | None = None
    low_side: str | None = None
    """left, right, front or rear."""
    ridge: str | None = None
    """front-to-rear or left-to-right."""
    ridge_at_m: Value | None = None
    """Distance of the ridge from the left wall (front-to-rear) or from the front wall (left-to-right)."""


@dataclass(frozen=True, slots=True)
class Opening(Element):
    """A door, a window or a plain opening in a wall."""

    KIND: ClassVar[str] = "opening"

    kind: str = "opening"
    wall: str = ""
    start_m: Value | None = None
    """From the left-hand end of the wall, seen from inside the room."""
    width_m: Value | None = None
    sill_m: Value | None = None
    height_m: Value | None = None
    hinge: str | None = None
    """left or right, seen from inside the room."""
    swing: str | None = None
    """in, out or sliding."""
    egress: bool | None = None


@dataclass(frozen=True, slots=True)
class Obstacle(Element):
    """A post, soffit, chimney breast or other box that sound, sight or people meet."""

    KIND: ClassVar[str] = "obstacle"

    kind: str = "post"
    low: Point | None = None
    """Corner with the smallest coordinates."""
    high: Point | None = None
    """Corner with the largest coordinates."""


@dataclass(frozen=True, slots=True)
class Treatment(Element):
    """Absorber, diffuser, curtain, carpet or bass trap."""

    KIND: ClassVar[str] = "treatment"

    kind: str = "absorber"
    on: str | None = None
    start_m: Value | None = None
    from_left_m: Value | None = None
    from_front_m: Value | None = None
    width_m: Value | None = None
    height_m: Value | None = None
    bottom_m: Value | None = None
    thickness_m: Value | None = None
    gap_m: Value | None = None
    material: str | None = None
    absorption: Mapping[int, float] | None = None
    """Absorption coefficient by octave-band centre frequency in Hz."""
    mass_kg: Value | None = None
    flame_spread: float | None = None
    smoke_developed: float | None = None
    thermal_barrier: bool | None = None
    fixing: Fixing | None = None
    approval: str | None = None


@dataclass(frozen=True, slots=True)
class Shell(Element):
    """The room: corners anticlockwise or clockwise as given, ceiling, surfaces, openings, obstacles."""

    KIND: ClassVar[str] = "room"

    width_m: Value = Value(0.0)
    """Of the bounding box, left to right."""
    length_m: Value = Value(0.0)
    """Of the bounding box, front to rear."""
    corners: tuple[Corner, ...] = ()
    ceiling: Ceiling | None = None
    surfaces: tuple[Surface, ...] = ()
    openings: tuple[Opening, ...] = ()
    obstacles: tuple[Obstacle, ...] = ()
    level: str | None = None
    """basement, ground, upper or attic."""

    def surface(self, name: str) -> Surface | None:
        """Return the wall, ceiling or floor of that name, if the file says anything about it."""
        return next((surface for surface in self.surfaces if surface.id == name), None)

    @property
    def wall_names(self) -> tuple[str, ...]:
        """The names of the walls in the order of the corners."""
        return tuple(corner.wall for corner in self.corners)
