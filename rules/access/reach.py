"""Steps, controls and racks: what people climb, work by hand and serve."""

from __future__ import annotations

from typing import TYPE_CHECKING

from roomlint.review import Level, No, at_least, at_most, between, memory, need, practice, rule, standard

from . import CAUTION, CONTROLS, RACKS, REACH, RISERS

if TYPE_CHECKING:
    from roomlint.design.shell import Control, Riser
    from roomlint.design.supply import Rack
    from roomlint.review import Applies, Figure, Room


@rule(
    "access.step-height",
    level=Level.WARNING,
    basis=standard("IRC", "R311.7", read=False, note="7 3/4 in; quoted in an architect's notes"),
    each=RISERS,
    window=at_most(0.1968, "m"),
    says="is climbed by steps of {figure}; {window} wanted",
    at="steps",
    caution=CAUTION,
    since="0.3.0",
)
def step_height(room: Room, riser: Riser) -> Figure:
    """No step up to a platform is higher than 0.197 m.

    Why: A step that is higher than the others, in the dark, is where people fall.

    How decided: The platform's height over the number of steps, taken as equal: 7 3/4 in each at most, and not more
    than 3/8 in between them, which is for the builder. A platform that is no higher than that is one step.

    Remedy: One step more, with a light on its edge.

    When to waive: The local code official accepts it, in writing.
    """
    return room.figures.access.step(riser)


@rule(
    "access.control-height",
    level=Level.NOTE,
    basis=REACH,
    each=CONTROLS,
    window=between(0.38, 1.22, "m"),
    says="is {figure} above the floor; {window} is in everybody's reach",
    cure=("height",),
    at="height",
    caution=CAUTION,
    since="0.3.0",
)
def control_height(room: Room, control: Control) -> Figure:
    """Keypads, switches and screens on walls are in everybody's reach.

    Why: Who sits in a wheelchair, or is ten years old, works the light too.

    How decided: Height of what is worked by hand, 15 to 48 in.

    Remedy: Move it to about 1.1 m.

    When to waive: A screen that is meant for the installer only.
    """
    return room.figures.access.control(control)


@rule(
    "access.rack-front",
    level=Level.WARNING,
    basis=memory("at least 0.75 m to work in before a rack"),
    each=RACKS,
    window=at_least(0.75, "m"),
    says="has {figure} free in front; {window} wanted to work there",
    cure=("front_clear",),
    at="front_clear",
    caution=CAUTION,
    since="0.3.0",
)
def rack_front(room: Room, rack: Rack) -> Figure:
    """There is room to work in front of every rack.

    Why: What cannot be pulled out is not serviced, and somebody bends over live equipment.

    How decided: The free depth that the file gives, at least 0.75 m. The working space before a panel is another
    matter: `mains` and the local code have it.

    Remedy: Move the rack, or what stands before it.

    When to waive: A rack on wheels that is rolled out to be served.
    """
    return room.figures.access.before_rack(rack)


def _served_behind(_: Room, rack: Rack) -> Applies:
    """Whether anybody has to come behind it."""
    return No("it is served from its front alone") if need(rack.service, rack, "service") == "front" else True


@rule(
    "access.rack-rear",
    level=Level.WARNING,
    basis=practice("somebody stands behind a rack to wire it; 0.60 m, a narrow person's way, is ours"),
    each=RACKS,
    when=_served_behind,
    window=at_least(0.60, "m"),
    says="leaves {figure} to stand behind it when it is served; {window} wanted",
    cure=("rear_clear", "front_clear"),
    at="service",
    caution=CAUTION,
    since="0.3.0",
)
def rack_rear(room: Room, rack: Rack) -> Figure:
    """Somebody can stand behind a rack to wire it.

    Why: All terminals are at the rear; whoever cannot see them pulls on what is live.

    How decided: By where the file says that its rear is reached from: the free depth behind it, or, where it slides
    out, the free depth in front less its own depth.

    Remedy: Move it from the wall, let it slide out farther, or choose equipment with terminals in front.

    When to waive: A rack that turns on its base, tried with everything in it.
    """
    return room.figures.access.behind_rack(rack)
