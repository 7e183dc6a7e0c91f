"""What a drawing of a room shows, as plain numbers: shapes in the room's frame, in m, and what is not known of them.

A scene holds on to neither design nor figures, so that it travels with a finished review. The frame is the design's: x
right, y front, z up, origin at the rear left corner of the floor; azimuth 0 towards the front, positive to the left.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import TypeAlias

Spot2: TypeAlias = tuple[float, float]
Spot3: TypeAlias = tuple[float, float, float]
Shape: TypeAlias = tuple[Spot2, ...]


@dataclass(frozen=True, slots=True)
class Thing:
    """A solid in the room: a cabinet, a rack, a projector, an obstacle, a platform, a listener."""

    key: str
    """Kind and id, such as `loudspeaker/left`, as verdicts name it."""
    name: str
    kind: str
    place: Spot3
    """The point that the file gives: acoustic centre, driver, lens, ear, foot of a rack; an obstacle's middle."""
    plan: Shape
    """What it covers of the floor, anticlockwise; one point and a radius is round."""
    side: Shape
    """Its outline seen from the left wall: y and z."""
    front: Shape
    """Its outline seen from the rear wall: x and z."""
    low_m: float
    high_m: float
    radius_m: float = 0.0
    label: str = ""
    axis: Spot3 | None = None
    """Which way its front faces, where it has one."""
    half_coverage_deg: float | None = None
    """Half the nominal horizontal coverage of a loudspeaker that does not point steeply up or down."""
    covers_m: float | None = None
    """Radius on the level of the nearest ear that a loudspeaker overhead covers."""
    overhead: bool = False
    port: str = ""
    """The face that its port is in."""
    assumes: tuple[str, ...] = ()
    """What of its shape the file does not give."""
    reference: bool = False
    """Whether it is the reference seat."""
    facing_deg: float = 0.0
    """Where a listener looks."""
    eye_m: float | None = None
    head_known: bool = True


@dataclass(frozen=True, slots=True)
class Side:
    """A wall: its name and its ends, the left-hand one first as seen from inside."""

    key: str
    name: str
    start: Spot2
    end: Spot2
    inward: Spot2


@dataclass(frozen=True, slots=True)
class Gap:
    """A door, window or opening: where it is in its wall, and how its leaf moves."""

    key: str
    name: str
    kind: str
    start: Spot2
    end: Spot2
    inward: Spot2
    sill_m: float | None
    height_m: float | None
    hinge: str = ""
    swing: str = ""


@dataclass(frozen=True, slots=True)
class Flat:
    """What hangs flat on a wall: a picture or a panel; or a panel, window or joist field of the ceiling by its plan."""

    key: str
    name: str
    kind: str
    plan: Shape
    """Its two ends on a wall; its corners overhead or on the floor."""
    low_m: float
    high_m: float
    on: str = ""
    inward: Spot2 = (0.0, 0.0)
    thick_m: float = 0.0


@dataclass(frozen=True, slots=True)
class Outlet:
    """A receptacle, and the circuit that feeds it."""

    key: str
    name: str
    circuit: str
    place: Spot3
    inward: Spot2


@dataclass(frozen=True, slots=True)
class Cut:
    """An upright section: along y (`long`) or along x (`cross`), through the reference ear."""

    kind: str
    at_m: float
    """x of a long section, y of a cross section."""
    floors: tuple[tuple[float, float], ...]
    """Between which u the cut is inside the room."""
    ceilings: tuple[tuple[Spot2, Spot2], ...]
    """Straight pieces of the ceiling in the cut: u and z of both ends."""
    beyond: tuple[tuple[Spot2, Spot2], ...]
    """Edges of walls and ceiling that are seen beyond or before the cut."""


@dataclass(frozen=True, slots=True)
class Line:
    """A straight line between two points: of sight, of a beam."""

    kind: str
    key: str
    start: Spot3
    end: Spot3


@dataclass(frozen=True, slots=True)
class Bounce:
    """The loudest early reflection from a loudspeaker to a seat, and where it bounces."""

    source: str
    seat: str
    surface: str
    at: Spot3


@dataclass(frozen=True, slots=True)
class Plane:
    """A flat part of the ceiling: its corners with the height over each."""

    corners: tuple[Spot3, ...]
    slope_deg: float


@dataclass(frozen=True, slots=True)
class Ax:
    """An axis of a chart."""

    name: str
    unit: str
    low: float
    high: float
    by_octave: bool = False
    names: tuple[str, ...] = ()
    """What stands at 0, 1, 2 ... of an axis that has no numbers: each is drawn by its values, with no line between."""


@dataclass(frozen=True, slots=True)
class Curve:
    """A named line of a chart."""

    name: str
    points: tuple[Spot2, ...]
    key: str = ""
    """The element that it is of."""
    role: str = "curve"
    """`curve`, or `limit`: an edge of what is allowed, or `target`."""


@dataclass(frozen=True, slots=True)
class Chart:
    """A plot: axes, curves, a spread between two edges, upright lines; or why there is none."""

    key: str
    title: str
    x: Ax
    y: Ax
    curves: tuple[Curve, ...] = ()
    spread: tuple[tuple[float, float, float], ...] = ()
    """x, and the lowest and the highest value there."""
    spread_name: str = ""
    uprights: tuple[tuple[float, str], ...] = ()
    uprights_name: str = ""
    assumes: tuple[str, ...] = ()
    judged: str = ""
    """The figure that is held against a window in the chart's upright unit, by its name."""
    judged_over: tuple[float, float] = (0.0, 0.0)
    """From where to where that figure stands for."""
    lacks: tuple[str, str] = ("", "")
    """The element and the key that it lacks, or, with no key, why a formula does not hold."""
    unknown: tuple[tuple[float, str, str], ...] = ()
    """Where a value is not known though others are, with what is lacking there as in `lacks`."""

    @property
    def is_known(self) -> bool:
        """Whether there is anything to plot."""
        return bool(self.curves)


@dataclass(frozen=True, slots=True)
class Scene:
    """All that is drawn of one room."""

    width_m: float
    length_m: float
    height_m: float
    sides: tuple[Side, ...]
    gaps: tuple[Gap, ...] = ()
    things: tuple[Thing, ...] = ()
    flats: tuple[Flat, ...] = ()
    outlets: tuple[Outlet, ...] = ()
    planes: tuple[Plane, ...] = ()
    cuts: tuple[Cut, ...] = ()
    lines: tuple[Line, ...] = ()
    bounces: tuple[Bounce, ...] = ()
    hides: tuple[tuple[str, str], ...] = ()
    """Seats, each with the head that hides the lower edge of the picture from it."""
    unplaced: tuple[tuple[str, str], ...] = ()
    """Key and name of what the file does not place."""
    no_ceiling: bool = False
    joists: str = ""
    """Which way the joists run, where that is given."""
    tolerance_m: float | None = None
    surveyed_on: str = ""
    charts: tuple[Chart, ...] = field(default=())

    @property
    def outline(self) -> Shape:
        """The corners of the plan, clockwise seen from above."""
        return tuple(side.start for side in self.sides)

    def thing(self, key: str) -> Thing | None:
        """Return the thing of a key, if it is placed."""
        return next((thing for thing in self.things if thing.key == key), None)

    @property
    def reference(self) -> Thing | None:
        """The reference seat; without one the first seat."""
        seats = [thing for thing in self.things if thing.kind == "seat"]
        return next((seat for seat in seats if seat.reference), seats[0] if seats else None)
