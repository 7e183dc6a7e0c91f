"""Reads the room itself: surfaces, openings, obstacles, treatments."""

from __future__ import annotations

from typing import TYPE_CHECKING

from roomlint.design.base import Point, Value
from roomlint.design.outline import read_outline
from roomlint.design.read_listening import read_fixing
from roomlint.design.reader import unique
from roomlint.design.shell import Board, Ceiling, Framing, Obstacle, Opening, Shell, Surface, Treatment

if TYPE_CHECKING:
    from collections.abc import Iterable

    from roomlint.design.reader import Reader


HORIZONTAL = ("ceiling", "floor")
_BANDS = {"125 Hz": 125, "250 Hz": 250, "500 Hz": 500, "1 kHz": 1000, "2 kHz": 2000, "4 kHz": 4000}


def read_shell(room: Reader, code: str) -> Shell:
    """Return the room; its corners are empty when the outline makes no room."""
    corners = read_outline(room)
    walls = tuple(corner.wall for corner in corners)
    room.book.surfaces = (*walls, *HORIZONTAL)
    unique(room.each("walls"), "wall")
    unique(room.each("openings"), "opening")
    unique(room.each("obstacles"), "obstacle")
    return Shell(
        at=room.node,
        id=code,
        width_m=room.book.width,
        length_m=room.book.length,
        corners=corners,
        ceiling=_ceiling(room),
        surfaces=tuple(_surfaces(room, walls)),
        openings=tuple(_opening(reader, walls) for reader in room.each("openings")),
        obstacles=tuple(_obstacle(reader, room) for reader in room.each("obstacles")),
        level=room.text("level"),
    )


def _ceiling(room: Reader) -> Ceiling | None:
    reader = room.below("ceiling")
    if reader is None:
        return None
    shape = reader.text("shape") or "flat"
    ceiling = Ceiling(
        shape=shape,
        height_m=reader.surveyed("height", positive=True),
        low_m=reader.surveyed("low", positive=True),
        high_m=reader.surveyed("high", positive=True),
        low_side=reader.text("low_side"),
        ridge=reader.text("ridge"),
        ridge_at_m=reader.surveyed("ridge_at", positive=True),
    )
    belongs = {
        "flat": {"height"},
        "mono-pitch": {"low", "high", "low_side"},
        "gable": {"height", "low", "ridge", "ridge_at"},
        "corners": {"heights"},
    }[shape]
    for key in sorted({"height", "low", "high", "low_side", "ridge", "ridge_at", "heights"} - belongs):
        node = reader.at(key)
        if node is not None:
            reader.book.tell(node, f"a {shape} ceiling has no {key}; it is described by {', '.join(sorted(belongs))}.")
    for key in sorted(belongs - {"ridge_at"}):
        if reader.at(key) is None:
            reader.book.tell(reader.node, f"a {shape} ceiling needs {key}.")
    for lower, upper in ((ceiling.low_m, ceiling.high_m), (ceiling.low_m, ceiling.height_m)):
        if lower is not None and upper is not None and lower.at is not None and lower.value > upper.value:
            reader.book.tell(lower.at, "the low height is above the high one.")
    ridge, across = ceiling.ridge_at_m, room.book.width if ceiling.ridge == "front-to-rear" else room.book.length
    if ridge is not None and ridge.at is not None and ridge.value >= across.value > 0:
        reader.book.tell(ridge.at, f"the ridge must stand within the {across.value:g} m across the room.")
    return ceiling


def _surfaces(room: Reader, walls: tuple[str, ...]) -> Iterable[Surface]:
    for reader in room.each("walls"):
        name = reader.one_of("id", walls, "wall")
        if name is not None:
            yield _surface(reader, name)
    for name in HORIZONTAL:
        below = room.below(name)
        if below is not None:
            yield _surface(below, name)


def _surface(reader: Reader, name: str) -> Surface:
    framing, board = reader.below("framing"), reader.below("board")
    return Surface(
        at=reader.node,
        id=name,
        framing=Framing(
            kind=framing.text("kind"),
            spacing_m=framing.length("spacing"),
            member_width_m=framing.length("member_width"),
            member_depth_m=framing.length("member_depth"),
            species=framing.text("species"),
            steel_thickness_m=framing.length("steel_thickness"),
            bearing=framing.flag("bearing"),
        )
        if framing is not None
        else Framing(),
        board=Board(board.text("material"), board.whole("layers"), board.length("thickness"))
        if board is not None
        else Board(),
        finish=reader.text("finish"),
        fire_rated=reader.flag("fire_rated"),
        plenum=reader.flag("plenum"),
    )


def _opening(reader: Reader, walls: tuple[str, ...]) -> Opening:
    return Opening(
        at=reader.node,
        id=reader.text("id") or "",
        kind=reader.text("kind") or "opening",
        wall=reader.one_of("wall", walls, "wall") or "",
        start_m=reader.surveyed("from_wall_left"),
        width_m=reader.surveyed("width", positive=True),
        sill_m=reader.surveyed("sill"),
        height_m=reader.surveyed("height", positive=True),
        hinge=reader.text("hinge"),
        swing=reader.text("swing"),
        egress=reader.flag("egress"),
    )


def _obstacle(reader: Reader, room: Reader) -> Obstacle:
    book = room.book
    left, front = reader.surveyed("from_left"), reader.surveyed("from_front")
    width, depth = reader.surveyed("width", positive=True), reader.surveyed("depth", positive=True)
    bottom, top = reader.surveyed("bottom"), reader.surveyed("top", positive=True)
    low = high = None
    if left is not None and front is not None and width is not None and depth is not None:
        far_y = book.length.value - front.value
        floor = bottom or Value(0.0, 0.0, "m")
        # A top that is not given is the ceiling; no ceiling of a residential room is higher than this.
        roof = top or Value(50.0, 0.0, "m")
        low = Point(left, Value(far_y - depth.value, front.u, "m", front.at), floor)
        high = Point(Value(left.value + width.value, left.u, "m", left.at), Value(far_y, front.u, "m", front.at), roof)
        if bottom is not None and top is not None and bottom.value >= top.value and bottom.at is not None:
            book.tell(bottom.at, "the bottom of the obstacle is not below its top.")
    return Obstacle(at=reader.node, id=reader.text("id") or "", kind=reader.text("kind") or "post", low=low, high=high)


def read_treatments(root: Reader) -> tuple[Treatment, ...]:
    """Return the treatments."""
    unique(root.each("treatments"), "treatment")
    return tuple(_treatment(reader) for reader in root.each("treatments"))


def _treatment(reader: Reader) -> Treatment:
    bands, fixing = reader.below("absorption"), reader.below("fixing")
    absorption = None
    if bands is not None:
        given = {hz: bands.number(key) for key, hz in _BANDS.items()}
        absorption = {hz: value for hz, value in given.items() if value is not None}
    return Treatment(
        at=reader.node,
        id=reader.text("id") or "",
        kind=reader.text("kind") or "absorber",
        on=reader.one_of("on", reader.book.surfaces, "surface"),
        start_m=reader.surveyed("from_wall_left"),
        from_left_m=reader.surveyed("from_left"),
        from_front_m=reader.surveyed("from_front"),
        width_m=reader.surveyed("width", positive=True),
        height_m=reader.surveyed("height", positive=True),
        bottom_m=reader.surveyed("bottom"),
        thickness_m=reader.length("thickness"),
        gap_m=reader.length("gap"),
        material=reader.text("material"),
        absorption=absorption,
        mass_kg=reader.quantity("mass", "mass", positive=True),
        flame_spread=reader.number("flame_spread"),
        smoke_developed=reader.number("smoke_developed"),
        thermal_barrier=reader.flag("thermal_barrier"),
        fixing=read_fixing(fixing) if fixing is not None else None,
        approval=reader.text("approval"),
    )
