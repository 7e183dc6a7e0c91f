"""The solids of a room as a drawing shows them: true boxes turned to their aim, and what of them is assumed."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final, TypeAlias

from roomlint.design.base import Missing
from roomlint.design.listening import Loudspeaker, Projector, Seat, Subwoofer
from roomlint.design.quantity import Origin
from roomlint.design.supply import Rack
from roomlint.figures import solid
from roomlint.figures.convex import hull
from roomlint.figures.domain import Refused
from roomlint.measure.bodies import obstacle_words
from roomlint.measure.scene import Thing

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator

    from roomlint.design.shell import Obstacle, Riser
    from roomlint.figures.solid import Solid
    from roomlint.measure import Figures
    from roomlint.measure.scene import Shape, Spot3

Drawn: TypeAlias = Loudspeaker | Subwoofer | Seat | Rack | Projector
_STEEP: Final = 0.5**0.5
"""An axis that rises or falls by more than 45 deg covers a cone, and has no wedge in plan."""


def ask(compute: Callable[[], float]) -> float | None:
    """Return a number, or None where the file lacks what it takes or a formula does not hold."""
    try:
        return compute()
    except (Missing, Refused):
        return None


def things(figures: Figures) -> Iterator[Thing]:
    """Yield what stands in the room as far as it is placed: platforms and obstacles first, then all that is set up."""
    for riser in figures.design.shell.risers:
        platform = _platform(figures, riser)
        if platform is not None:
            yield platform
    for obstacle in figures.design.shell.obstacles:
        block = _obstacle(figures, obstacle)
        if block is not None:
            yield block
    for thing in figures.bodies.things:
        if figures.bodies.is_placed(thing):
            drawn = _thing(figures, thing)
            if drawn is not None:
                yield drawn


def _shapes(body: Solid) -> tuple[Shape, Shape]:
    """Return a solid's outline from the left and from the rear."""
    if isinstance(body, solid.Upright):
        reach = body.radius_m
        points: list[Spot3] = [
            (x + across, y + along, z)
            for x, y in body.plan
            for across in (-reach, reach)
            for along in (-reach, reach)
            for z in (body.low_m, body.high_m)
        ]
    else:
        points = list(body.corners)
    return hull([(y, z) for _, y, z in points]), hull([(x, z) for x, _, z in points])


def _platform(figures: Figures, riser: Riser) -> Thing | None:
    shell = figures.design.shell
    if riser.from_front is None or riser.height is None:
        return None
    left = riser.from_left.value if riser.from_left is not None else 0.0
    right = left + riser.width.value if riser.width is not None else shell.width_m.value
    far = shell.length_m.value - riser.from_front.value
    near = far - riser.depth.value if riser.depth is not None else 0.0
    try:
        body = solid.upright_box((left, near, 0.0), (right, far, riser.height.value))
    except Refused:
        return None
    return _of_body(riser.key, riser.words, "riser", ((left + right) / 2.0, (near + far) / 2.0, 0.0), body)


def _obstacle(figures: Figures, obstacle: Obstacle) -> Thing | None:
    if obstacle.low is None or obstacle.high is None:
        return None
    try:
        body = figures.bodies.obstacle(figures.world, obstacle)
    except (Missing, Refused):
        return None
    (x0, y0, z0), (x1, y1, z1) = obstacle.low.xyz, obstacle.high.xyz
    top = min(z1, figures.space.highest_m) if z1 > z0 else z1
    body = solid.Upright(body.plan, z0, top) if isinstance(body, solid.Upright) and top > z0 else body
    place = ((x0 + x1) / 2.0, (y0 + y1) / 2.0, z0)
    return _of_body(obstacle.key, obstacle_words(obstacle), obstacle.kind, place, body)


def _of_body(key: str, name: str, kind: str, place: Spot3, body: Solid) -> Thing:
    side, front = _shapes(body)
    low, high = solid.heights_m(body)
    plan = solid.footprint(body)
    return Thing(key, name, kind, place, plan, side, front, low, high, solid.radius_m(body))


def _thing(figures: Figures, thing: Drawn) -> Thing | None:
    bodies, world = figures.bodies, figures.world
    try:
        body, trace = world.traced(lambda w: bodies.solid(w, thing))
    except (Missing, Refused):
        return None
    told = [reading.words for reading in trace.readings if reading.origin is Origin.ASSUMED]
    side, front = _shapes(body)
    low, high = solid.heights_m(body)
    common = (
        thing.key,
        thing.words,
        thing.KIND,
        bodies.place(thing).xyz,
        solid.footprint(body),
        side,
        front,
        low,
        high,
    )
    assumes = tuple(dict.fromkeys([*trace.assumes, *told]))
    radius = solid.radius_m(body)
    if isinstance(thing, Seat):
        return Thing(
            *common, radius, assumes=assumes, reference=bool(thing.reference), facing_deg=thing.facing_deg.value,
            eye_m=ask(lambda: figures.viewing.eye_m(world, thing)), head_known=thing.head_top_m is not None,
        )  # fmt: skip
    if isinstance(thing, Rack | Projector):
        return Thing(*common, radius, assumes=assumes, axis=_front_of(body))
    axis = _axis(figures, thing)
    held = thing.mounting.on if thing.mounting is not None else None
    data = thing.product.loudspeaker if thing.product is not None else None
    half = covers = None
    if isinstance(thing, Loudspeaker) and axis is not None:
        if abs(axis[2]) <= _STEEP:
            half = ask(lambda: figures.aim.half_coverage_deg(thing))
        elif held in {"ceiling", "grid-ceiling"}:
            covers = ask(lambda: figures.aim.within_m(thing).value)
    return Thing(
        *common, radius, thing.label or "", axis, half, covers, overhead=held in {"ceiling", "grid-ceiling"},
        port=(data.port.face or "") if data is not None and data.port is not None else "", assumes=assumes,
    )  # fmt: skip


def _axis(figures: Figures, thing: Loudspeaker | Subwoofer) -> Spot3 | None:
    try:
        return figures.bodies.axis(figures.world, thing)
    except (Missing, Refused):
        return None


def _front_of(body: Solid) -> Spot3 | None:
    """Return nothing for what is round, and the axis of a box that leans."""
    return body.axes[2] if isinstance(body, solid.Tilted) else None
