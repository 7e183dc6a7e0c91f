"""Symbols of a plan: walls, openings, cabinets, listeners, pictures, receptacles; common ones of building drawings."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING, Final

from roomlint.report.drawing.zones import spot, turn_deg

if TYPE_CHECKING:
    from roomlint.measure.scene import Flat, Gap, Outlet, Scene, Shape, Side, Spot2, Thing
    from roomlint.report.drawing.pen import Pen
    from roomlint.report.drawing.shapes import Fill

FACE_MM: Final = 2.2
"""How thick a wall is drawn: its real thickness is not in the file."""
WEDGE_MM: Final = 13.0
"""How far a coverage wedge reaches on the paper."""
_LEVEL: Final = 1e-6
CUT_AT_M: Final = 1.2
"""Height at which a plan is cut: what begins above it is overhead, and dashed."""


def moved(point: Spot2, way: Spot2, by_m: float) -> Spot2:
    """Return a point moved along a direction."""
    return point[0] + way[0] * by_m, point[1] + way[1] * by_m


def walls(pen: Pen, scene: Scene) -> None:
    """Draw the inner faces of the walls, with a band outside that stands for their thickness."""
    sides, thick = scene.sides, pen.m(FACE_MM)
    outer = [_outer(sides[number - 1], side, thick) for number, side in enumerate(sides)]
    for number, side in enumerate(sides):
        band = (side.start, side.end, outer[(number + 1) % len(sides)], outer[number])
        pen.path(band, "poche", closed=True, fill="hatch", key=side.key)
        if min(abs(side.inward[0]), abs(side.inward[1])) < _LEVEL:
            pen.keep_clear(band, 0.0)
    pen.path(scene.outline, "wall", closed=True)


def _outer(before: Side, after: Side, thick: float) -> Spot2:
    """Return the outer corner between two walls, as far as it is not far away."""
    (ax, ay), (bx, by) = before.inward, after.inward
    share = 1.0 + ax * bx + ay * by
    share = max(share, 0.3)
    return after.start[0] - thick * (ax + bx) / share, after.start[1] - thick * (ay + by) / share


def gap(pen: Pen, one: Gap) -> None:
    """Draw a door with its swing, a window, or an opening, in its wall."""
    thick = pen.m(FACE_MM)
    start, end = one.start, one.end
    outside = [moved(point, one.inward, -thick) for point in (end, start)]
    pen.path((start, end, *outside), "opening", closed=True, fill="paper", key=one.key)
    if one.kind in {"window", "glass-door"}:
        middle = [moved(point, one.inward, -thick / 2.0) for point in (start, end)]
        pen.path(middle, "opening", key=one.key)
    if one.swing == "sliding":
        ahead = [moved(point, one.inward, pen.m(0.9)) for point in (start, end)]
        half = ((ahead[0][0] + ahead[1][0]) / 2.0, (ahead[0][1] + ahead[1][1]) / 2.0)
        pen.path((ahead[0], half), "opening", key=one.key)
        return
    if one.kind in {"door", "glass-door"} and one.swing in {"in", "out"} and one.hinge:
        _leaf(pen, one)


def _leaf(pen: Pen, one: Gap) -> None:
    hinge, tip = (one.start, one.end) if one.hinge == "left" else (one.end, one.start)
    width = math.dist(hinge, tip)
    way = one.inward if one.swing == "in" else (-one.inward[0], -one.inward[1])
    open_tip = moved(hinge, way, width)
    pen.path((hinge, open_tip), "opening", key=one.key)
    closed = math.degrees(math.atan2(tip[1] - hinge[1], tip[0] - hinge[0]))
    opened = math.degrees(math.atan2(way[1], way[0]))
    turn = (opened - closed + 180.0) % 360.0 - 180.0
    start, end = (closed, closed + turn) if turn > 0.0 else (closed + turn, closed)
    pen.arc(hinge, width, "swing", start, end, key=one.key)


def solid(pen: Pen, thing: Thing) -> None:
    """Draw an obstacle or a platform: hatched where the plan cuts it, dashed where it is overhead."""
    if thing.kind == "riser":
        pen.path(thing.plan, "riser", closed=True, key=thing.key)
        return
    overhead = thing.low_m >= CUT_AT_M
    layer = "hidden" if overhead else "solid"
    fill = "hatch" if not overhead and thing.high_m > CUT_AT_M else ""
    body(pen, thing, layer, fill == "hatch")


def body(pen: Pen, thing: Thing, layer: str, filled: bool = False) -> None:  # noqa: FBT001, FBT002  one drawing way
    """Draw what a thing covers of the plan."""
    fill: Fill = "hatch" if filled or thing.assumes else "paper"
    layer = "unknown" if thing.assumes else layer
    if len(thing.plan) == 1:
        pen.arc(thing.plan[0], thing.radius_m, layer, fill=fill, key=thing.key)
    else:
        pen.path(thing.plan, layer, closed=True, fill=fill, key=thing.key)
    pen.keep_clear(bounds(thing))


def bounds(thing: Thing) -> tuple[Spot2, Spot2]:
    """Return the corners of the box around a thing in plan."""
    reach = thing.radius_m
    xs, ys = [x for x, _ in thing.plan], [y for _, y in thing.plan]
    return (min(xs) - reach, min(ys) - reach), (max(xs) + reach, max(ys) + reach)


def cabinet(pen: Pen, thing: Thing, layer: str) -> None:
    """Draw a loudspeaker or subwoofer as its box, its front as a broad line, its axis as a chain line."""
    body(pen, thing, "hidden" if thing.overhead else layer)
    if thing.axis is None:
        return
    level = math.hypot(thing.axis[0], thing.axis[1])
    if level < 0.2:  # noqa: PLR2004  it looks up or down: no front in plan
        if thing.overhead:
            _cross(pen, thing)
        return
    azimuth = math.degrees(math.atan2(thing.axis[1], thing.axis[0]))
    at = thing.place[:2]
    if thing.kind == "loudspeaker":
        pen.path((at, spot(at, pen.m(WEDGE_MM + 3.0), azimuth)), "axis", key=thing.key)
        if thing.half_coverage_deg is not None and thing.half_coverage_deg < 180.0:  # noqa: PLR2004  all round
            wedge(pen, thing, azimuth, thing.half_coverage_deg)
    front = _front_face(thing.plan, azimuth)
    if front is not None:
        tip = spot(at, pen.m(1.5), azimuth)
        pen.path((front[0], tip, front[1]), layer, closed=True, fill="solid", key=thing.key)


def wedge(pen: Pen, thing: Thing, azimuth: float, half_deg: float) -> None:
    """Draw between which directions a loudspeaker covers."""
    at, reach = thing.place[:2], pen.m(WEDGE_MM)
    start, end = azimuth - half_deg, azimuth + half_deg
    for angle in (start, end):
        pen.path((at, spot(at, reach, angle)), "cover", key=thing.key)
    pen.arc(at, reach, "cover", start, end, key=thing.key)


def _front_face(plan: Shape, azimuth: float) -> tuple[Spot2, Spot2] | None:
    """Return the edge of a footprint that looks the way of an azimuth."""
    ux, uy = math.cos(math.radians(azimuth)), math.sin(math.radians(azimuth))
    edges = list(zip(plan, (*plan[1:], plan[0]), strict=True)) if len(plan) > 2 else []  # noqa: PLR2004  an area
    if not edges:
        return None
    return max(edges, key=lambda edge: (edge[0][0] + edge[1][0]) * ux + (edge[0][1] + edge[1][1]) * uy)


def _cross(pen: Pen, thing: Thing) -> None:
    (x0, y0), (x1, y1) = bounds(thing)
    if len(thing.plan) == 1:
        reach = thing.radius_m * math.sqrt(0.5)
        x, y = thing.plan[0]
        x0, y0, x1, y1 = x - reach, y - reach, x + reach, y + reach
    pen.path(((x0, y0), (x1, y1)), "speaker", key=thing.key)
    pen.path(((x0, y1), (x1, y0)), "speaker", key=thing.key)


def seat(pen: Pen, thing: Thing) -> None:
    """Draw a listener: the place taken, the ear as a cross, and an arrow where it looks."""
    centre = thing.place[:2]
    body(pen, thing, "seat")
    if thing.reference:
        pen.arc(centre, thing.radius_m - min(pen.m(0.7), thing.radius_m / 2.0), "seat", key=thing.key)
    ahead = turn_deg(thing.facing_deg)
    arm = pen.m(1.2)
    for angle in (ahead, ahead + 90.0):
        pen.path((spot(centre, arm, angle), spot(centre, arm, angle + 180.0)), "seat", key=thing.key)
    tip = spot(centre, thing.radius_m + pen.m(1.6), ahead)
    wings = [spot(tip, pen.m(2.4), ahead + 180.0 + turn) for turn in (-24.0, 24.0)]
    pen.path((wings[0], tip, wings[1]), "seat", closed=True, fill="solid", key=thing.key)


def flat(pen: Pen, one: Flat, layer: str) -> None:
    """Draw a picture or panel on its wall, or a panel by its plan."""
    if len(one.plan) > 2:  # noqa: PLR2004  more than two ends: an area of ceiling or floor
        pen.path(one.plan, layer, closed=True, key=one.key)
        return
    if one.thick_m:
        start, end = one.plan
        inner = [moved(point, one.inward, one.thick_m) for point in (end, start)]
        pen.path((start, end, *inner), layer, closed=True, fill="hatch", key=one.key)
    else:
        pen.path(one.plan, layer, key=one.key)
    pen.keep_clear(one.plan)


def outlet(pen: Pen, one: Outlet, *, customary: bool) -> None:
    """Draw a receptacle: a half circle on a stem (IEC 60617), in the United States a circle with bars."""
    at = one.place[:2]
    reach = pen.m(1.5)
    nx, ny = one.inward if one.inward != (0.0, 0.0) else (0.0, 1.0)
    toward = math.degrees(math.atan2(ny, nx))
    if customary:
        centre = moved(at, (nx, ny), reach if one.inward != (0.0, 0.0) else 0.0)
        pen.arc(centre, reach, "outlet", key=one.key, fill="paper")
        for aside in (-0.45, 0.45):
            middle = spot(centre, aside * reach, toward)
            ends = (spot(middle, 1.5 * reach, toward + 90.0), spot(middle, 1.5 * reach, toward - 90.0))
            pen.path(ends, "outlet", key=one.key)
    else:
        stem = moved(at, (nx, ny), 0.8 * reach)
        pen.path((at, stem), "outlet", key=one.key)
        centre = moved(stem, (nx, ny), reach)
        pen.arc(centre, reach, "outlet", toward + 90.0, toward + 270.0, key=one.key)
        ends = (spot(stem, reach, toward + 90.0), spot(stem, reach, toward - 90.0))
        pen.path(ends, "outlet", key=one.key)
    pen.keep_clear((at, moved(at, (nx, ny), 2.0 * reach)), 1.4)
