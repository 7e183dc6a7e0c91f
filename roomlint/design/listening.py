"""What people sit on, look at and listen to, and how it is held up."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, ClassVar

from roomlint.design.base import Element, Value

if TYPE_CHECKING:
    from roomlint.design.base import Point
    from roomlint.design.products import Product


@dataclass(frozen=True, slots=True)
class Seat(Element):
    """One seat, by the position of its listener's ear."""

    KIND: ClassVar[str] = "seat"

    ear: Point | None = None
    facing_deg: Value = Value(0.0)
    """0 is the front wall, positive to the left."""
    row: int | None = None
    reference: bool = False
    eye_height_m: Value | None = None
    head_top_m: Value | None = None
    back_top_m: Value | None = None
    """Top of the seat back or headrest."""
    width_m: Value | None = None
    depth_m: Value | None = None
    open_length_m: Value | None = None
    recline_deg: Value | None = None
    riser_m: Value | None = None


@dataclass(frozen=True, slots=True)
class Fixing(Element):
    """How a mount is fastened: the fasteners and what they really go into."""

    KIND: ClassVar[str] = "fixing"

    fastener: str | None = None
    """lag-screw, wood-screw, nail, drywall-screw, through-bolt, toggle, expansion-anchor, structural-screw, strap."""
    into: str | None = None
    """stud, joist, blocking, beam, board, steel-stud, masonry, hollow-block, concrete, glass, tile, plaster, grid."""
    diameter_m: Value | None = None
    length_m: Value | None = None
    thread_m: Value | None = None
    count: int | None = None
    top_count: int | None = None
    row_spacing_m: Value | None = None
    edge_offset_m: Value | None = None
    """Distance of the fastener from the middle of the stud's face."""
    grain: str | None = None
    """side or end."""
    wet: bool | None = None
    attic: bool | None = None
    anchor_approval: str | None = None
    anchor_ultimate_n: Value | None = None
    backing: str | None = None
    engineer: str | None = None


@dataclass(frozen=True, slots=True)
class Mounting(Element):
    """How and where a thing is held."""

    KIND: ClassVar[str] = "mounting"

    on: str | None = None
    """A wall's name, `ceiling`, `floor`, `stand`, `furniture`, `grid-ceiling` or `electrical-box`."""
    product: Product | None = None
    fixing: Fixing | None = None
    extension_m: Value | None = None
    """Reach in use, when it is less than the mount's largest."""
    swivel_deg: Value | None = None
    tilt_deg: Value | None = None
    drop_m: Value | None = None
    secondary: str | None = None
    """What holds it when the mount fails, such as a rope to structure."""
    secondary_fall_m: Value | None = None
    sling_angle_deg: Value | None = None
    breaking_load_n: Value | None = None
    strap: str | None = None
    accessories_kg: Value | None = None
    carpet: bool | None = None


@dataclass(frozen=True, slots=True)
class Aim(Element):
    """Where a loudspeaker points: at a seat, or by angles in the room."""

    KIND: ClassVar[str] = "aim"

    seat: Seat | None = None
    azimuth_deg: Value | None = None
    """Direction it faces: 0 towards the front wall, positive to the left, so 180 is towards the rear."""
    elevation_deg: Value | None = None


@dataclass(frozen=True, slots=True)
class Departure(Element):
    """An open departure from the layout: from which window, and why."""

    KIND: ClassVar[str] = "departure"

    because: str = ""
    meets: str | None = None
    """Which window it is meant to meet instead: home-tolerance or common-practice."""


@dataclass(frozen=True, slots=True)
class Loudspeaker(Element):
    """A loudspeaker of a labelled channel."""

    KIND: ClassVar[str] = "loudspeaker"

    label: str | None = None
    product: Product | None = None
    position: Point | None = None
    """Of its acoustic centre."""
    aim: Aim | None = None
    mounting: Mounting | None = None
    departure: Departure | None = None
    behind_screen: bool | None = None
    port_clearance_m: Value | None = None
    """Measured clearance in front of the port, where the geometry does not tell it."""


@dataclass(frozen=True, slots=True)
class Subwoofer(Element):
    """A subwoofer."""

    KIND: ClassVar[str] = "subwoofer"

    product: Product | None = None
    label: str | None = None
    position: Point | None = None
    facing_deg: Value | None = None
    """Direction its front faces: 0 towards the front wall, positive to the left."""
    mounting: Mounting | None = None
    level_db: Value | None = None
    delay_s: Value | None = None
    inverted: bool | None = None
    low_pass_hz: Value | None = None
    port_clearance_m: Value | None = None


@dataclass(frozen=True, slots=True)
class Projector(Element):
    """A projector and where its lens is."""

    KIND: ClassVar[str] = "projector"

    product: Product | None = None
    lens: Point | None = None
    mounting: Mounting | None = None


@dataclass(frozen=True, slots=True)
class Picture(Element):
    """The picture: a display or a screen, its lit area and where it is."""

    KIND: ClassVar[str] = "picture"

    kind: str | None = None
    """display or projection."""
    product: Product | None = None
    centre: Point | None = None
    width_m: Value | None = None
    height_m: Value | None = None
    lines: int | None = None
    formats: tuple[float, ...] = ()
    transparent: bool | None = None
    ambient_lx: Value | None = None
    mounting: Mounting | None = None
    projector: Projector | None = None
