"""What a view is made of: lines, arcs, words and numbered marks on named layers.

Points are in metres of the view, u to the right and v up; sizes of words and shifts are in millimetres of the paper.
"""

from __future__ import annotations

import math
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING, Final, Literal, TypeAlias

if TYPE_CHECKING:
    from roomlint.measure.scene import Spot2

Fill: TypeAlias = Literal["", "tint", "paper", "hatch", "solid", "sheet"]


@dataclass(frozen=True, slots=True)
class Layer:
    """How a layer looks: ISO 128-2 line kinds and widths; dashes in multiples of a millimetre."""

    trade: str
    """Its plain name in a CAD file."""
    width_mm: float
    dashes: tuple[float, ...] = ()
    ink: str = "ink"


INK: Final = {
    "ink": "#1a2027",
    "soft": "#59636e",
    "pale": "#c3cad1",
    "sound": "#0b5577",
    "sight": "#6a4a86",
    "cure": "#1d6b4a",
    "bad": "#9c2a10",
    "paper": "#ffffff",
}
"""The palette: each ink is told from the others by its lightness too, and never alone: line kinds and shapes differ."""

THIN: Final = 0.18
NARROW: Final = 0.25
MIDDLE: Final = 0.35
WIDE: Final = 0.5
CUT: Final = 0.7
DASHED: Final = (2.0, 1.0)
LONG: Final = (5.0, 1.0)
CHAIN: Final = (6.0, 1.0, 0.5, 1.0)
DOUBLE_CHAIN: Final = (6.0, 1.0, 0.5, 1.0, 0.5, 1.0)
DOTS: Final = (0.4, 0.9)

LAYERS: Final[dict[str, Layer]] = {
    "wall": Layer("WALLS", CUT),
    "poche": Layer("WALL-FACES", THIN, ink="pale"),
    "beyond": Layer("BEYOND", THIN, ink="soft"),
    "opening": Layer("OPENINGS", NARROW),
    "swing": Layer("DOOR-SWINGS", THIN),
    "solid": Layer("SOLIDS", MIDDLE),
    "hidden": Layer("OVERHEAD", NARROW, DASHED),
    "riser": Layer("PLATFORMS", NARROW),
    "seat": Layer("SEATS", MIDDLE),
    "speaker": Layer("LOUDSPEAKERS", MIDDLE, ink="sound"),
    "sub": Layer("SUBWOOFERS", MIDDLE, ink="sound"),
    "axis": Layer("AXES", THIN, CHAIN, "sound"),
    "cover": Layer("COVERAGE", THIN, LONG, "sound"),
    "picture": Layer("PICTURE", CUT, ink="sight"),
    "sight": Layer("SIGHT-LINES", THIN, DOUBLE_CHAIN, "sight"),
    "beam": Layer("PROJECTOR-BEAM", THIN, DASHED, "sight"),
    "panel": Layer("PANELS", NARROW),
    "outlet": Layer("RECEPTACLES", NARROW),
    "rack": Layer("EQUIPMENT", MIDDLE),
    "ceiling": Layer("CEILING", NARROW),
    "dimension": Layer("DIMENSIONS", THIN, ink="soft"),
    "cutting": Layer("CUTTING-PLANES", NARROW, CHAIN, "soft"),
    "text": Layer("TEXT", THIN),
    "unknown": Layer("NOT-KNOWN", NARROW, DOTS),
    "window": Layer("FINDING-WINDOWS", MIDDLE, LONG, "bad"),
    "cure": Layer("REMEDIES", WIDE, ink="cure"),
    "mark": Layer("FINDINGS", NARROW),
    "earlier": Layer("EARLIER", NARROW, DOTS, "soft"),
    "frame": Layer("FRAME", WIDE),
    "grid": Layer("CHART-GRID", THIN, ink="pale"),
    "spread": Layer("CHART-SPREAD", THIN, ink="pale"),
    "upright": Layer("CHART-MODES", THIN, DASHED, "sight"),
    "curve-1": Layer("CHART-CURVES", WIDE, ink="ink"),
    "curve-2": Layer("CHART-CURVES", WIDE, LONG, "sound"),
    "curve-3": Layer("CHART-CURVES", WIDE, DASHED, "bad"),
    "curve-4": Layer("CHART-CURVES", WIDE, CHAIN, "sight"),
    "curve-5": Layer("CHART-CURVES", WIDE, DOTS, "cure"),
    "curve-6": Layer("CHART-CURVES", WIDE, DOUBLE_CHAIN, "soft"),
}


@dataclass(frozen=True, slots=True)
class Path:
    """Straight lines from point to point."""

    points: tuple[Spot2, ...]
    layer: str
    closed: bool = False
    fill: Fill = ""
    key: str = ""
    """The element that it shows."""
    of: str = ""
    """The findings whose window it shows: their ids, with spaces."""


@dataclass(frozen=True, slots=True)
class Arc:
    """An arc, anticlockwise from one angle to the other, 0 deg to the right; a whole circle from 0 to 360."""

    centre: Spot2
    radius_m: float
    layer: str
    start_deg: float = 0.0
    end_deg: float = 360.0
    fill: Fill = ""
    key: str = ""
    of: str = ""

    @property
    def is_circle(self) -> bool:
        """Whether it goes all round."""
        return self.end_deg - self.start_deg >= 360.0  # noqa: PLR2004  a full turn


Anchor: TypeAlias = Literal["start", "middle", "end"]


@dataclass(frozen=True, slots=True)
class Words:
    """A line of text: its point is shifted on the paper, and the text turned about it."""

    at: Spot2
    text: str
    layer: str = "text"
    size_mm: float = 2.5
    anchor: Anchor = "middle"
    turn_deg: float = 0.0
    shift_mm: Spot2 = (0.0, 0.0)
    bold: bool = False
    key: str = ""


@dataclass(frozen=True, slots=True)
class Mark:
    """A finding's number, beside what it is about."""

    at: Spot2
    number: str
    level: str
    """`error`, `warning`, `note`, `review` or `open`."""
    of: str
    """The finding's id in the list."""
    shift_mm: Spot2 = (0.0, 0.0)
    key: str = ""
    size: float = 1.0
    """How large it is, against the ordinary one."""


Item: TypeAlias = Path | Arc | Words | Mark


_MARK_MM: Final = 3.3
"""Half of what the widest mark takes, with its edge."""
_MAY_END: Final = frozenset({"window", "cover", "axis", "beam"})
"""Layers that may end at the edge of a view: what is allowed reaches as far as it does, in rooms or not."""


@dataclass(frozen=True, slots=True)
class View:
    """One view of the room at a scale, with the room that it takes on the paper."""

    name: str
    title: str
    scale: float
    """Metres of the room to one metre of paper; 1000 draws millimetres of the paper itself as metres."""
    low: Spot2
    high: Spot2
    """Corners of what it takes, in metres of the view."""
    items: tuple[Item, ...]
    about: str = ""
    """What it shows, in a sentence, for who cannot see it."""

    def mm(self, metres: float) -> float:
        """Return a length of the view on paper."""
        return metres * 1000.0 / self.scale

    @property
    def size_mm(self) -> Spot2:
        """Width and height on paper."""
        return self.mm(self.high[0] - self.low[0]), self.mm(self.high[1] - self.low[1])

    def whole(self) -> View:
        """Return it with room for what stands beyond its margins: on paper that runs on, a page would cut it off."""
        points = [self.low, self.high]
        for item in self.items:
            if isinstance(item, Path):
                points += item.points if item.layer not in _MAY_END else ()
            elif not isinstance(item, Arc):
                points += self._corners(item)
        xs, ys = [x for x, _ in points], [y for _, y in points]
        return replace(self, low=(min(xs), min(ys)), high=(max(xs), max(ys)))

    def _corners(self, item: Words | Mark) -> list[Spot2]:
        """Return two corners of what a text or a mark takes, in metres of the view."""
        x, y, a_mm = *item.at, self.scale / 1000.0
        x, y = x + item.shift_mm[0] * a_mm, y + item.shift_mm[1] * a_mm
        if isinstance(item, Mark):
            reach = _MARK_MM * item.size * a_mm
            return [(x - reach, y - reach), (x + reach, y + reach)]
        wide, high = width_mm(item.text, item.size_mm) * a_mm, item.size_mm * a_mm
        first = {"start": 0.0, "middle": -wide / 2.0, "end": -wide}[item.anchor]
        along = math.cos(math.radians(item.turn_deg)), math.sin(math.radians(item.turn_deg))
        return [
            (x + u * along[0] - v * along[1], y + u * along[1] + v * along[0])
            for u in (first, first + wide) for v in (0.0, high)
        ]  # fmt: skip


def width_mm(text: str, size_mm: float) -> float:
    """Return how wide a text is, near enough to keep others clear of it."""
    return sum(_WIDTHS.get(sign, 0.63) for sign in text) * size_mm


_WIDTHS: Final = (
    dict.fromkeys(" .,:;'|!il()[]·", 0.33)
    | dict.fromkeys("-rtfj/", 0.4)
    | dict.fromkeys("mwMW@%", 0.95)
    | dict.fromkeys("ABCDEGHKNOPQRUVXYZ", 0.73)
)
"""Widths of signs by their size, of the widest of the common fonts: what is kept clear is rather too much."""
