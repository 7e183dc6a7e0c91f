"""Ways along which people walk: how wide they are, and what reaches into them."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from roomlint.review import Cases, Level, at_least, rule, standard

from . import CAUTION, IN_WALKWAYS, WALKWAYS

if TYPE_CHECKING:
    from roomlint.design.shell import Walkway
    from roomlint.review import Figure, Room, Seen, Windows

    from . import Standing

WAYS: Final = standard("2010 ADA Standards", "403.5.1", read=True)
REACHING: Final = standard("2010 ADA Standards", "307.2 and 307.4", read=True)


@rule(
    "access.walkway-width",
    level=Level.WARNING,
    basis=WAYS,
    each=WALKWAYS,
    window=at_least(0.915, "m"),
    says="is {figure} wide; {window} wanted",
    cure=("width", "depth"),
    at="width",
    caution=CAUTION,
    since="0.3.0",
)
def walkway_width(room: Room, walkway: Walkway) -> Figure:
    """A way that people walk along is 0.915 m wide.

    Why: In the dark, past open seats, with a tray or in a hurry, people want more than their own width.

    How decided: The shorter side of the strip that the file gives, 36 in. The standard lets a pinch of at most 0.61 m
    length be 0.815 m wide: such a one is no strip of its own. Whether the strip is free is `access.walkway-clear`.

    Remedy: Rows closer to each other, one seat fewer, or a seat that needs less room to open.

    When to waive: A way that nobody but the installer takes.
    """
    return room.figures.access.walkway_width(walkway)


def reach_window(room: Room, both: Seen[Standing, Walkway]) -> Windows:
    """Return how far a thing keeps from a walkway; what a cane does not find on a wall may reach in a little."""
    return at_least(-0.100 if room.figures.access.hangs(both.source) else 0.0, "m")


@rule(
    "access.walkway-clear",
    level=Level.WARNING,
    basis=(WAYS, REACHING),
    each=IN_WALKWAYS,
    window=Cases(
        "m",
        (
            ("what stands on the floor, sits or hangs low", at_least(0.0, "m")),
            ("what is fixed to a wall and begins above 0.685 m", at_least(-0.100, "m")),
        ),
        reach_window,
    ),
    says={
        "fail": "is {figure} from a walkway; {window} wanted",
        "negative": "reaches {size} into a walkway",
    },
    cure=("position", "ear"),
    at="position",
    caution=CAUTION,
    since="0.3.0",
)
def walkway_clear(room: Room, both: Seen[Standing, Walkway]) -> Figure:
    """Nothing stands in a walkway or reaches into it at the height of heads and hips.

    Why: People who look at a dark floor meet the loudspeaker with the face.

    How decided: Each thing and each panel as a solid against the strip, from the floor to 2.03 m. A seat of which depth
    and open length are given counts opened up. A loudspeaker or panel that is fixed to a wall and begins above 0.685 m,
    where no cane finds it, may reach 0.100 m into it; nothing else may. What hangs above 2.03 m is out of the way.

    Remedy: Move the thing or the way, or hang it higher than heads.

    When to waive: A way that nobody but the installer takes.
    """
    return room.figures.access.in_walkway(both.source, both.seat)
