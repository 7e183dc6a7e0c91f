"""What somebody answers who begins a room, and which answers cannot be a room."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Final

from roomlint import roof
from roomlint.design.overhead import RISES_TOWARD_DEG

if TYPE_CHECKING:
    from roomlint.roof import Facets

SMALLEST_M: Final = 1.5
LARGEST_M: Final = 30.0
"""A side of a room that anybody puts a seat and loudspeakers in."""
LOWEST_M: Final = 1.6
HIGHEST_M: Final = 12.0
"""The same of the ceiling where it is highest."""
LEAST_RAISED_M: Final = 0.3
"""No raised part of a tray is narrower."""
MOST_SEATS: Final = 20
SIDES: Final = ("left", "right", "front", "rear")
RIDGES: Final = ("front-to-rear", "left-to-right")
NEEDS: Final = {
    "flat": ("height",), "mono-pitch": ("low", "high", "low-side"), "gable": ("low", "height", "ridge"),
    "tray": ("low", "height", "margin"), "part-sloped": ("low", "height", "low-sides", "slope-width"),
}  # fmt: skip
"""The answers that each shape of ceiling needs."""
OPENINGS: Final = ("door", "glass-door", "window", "opening")


class UnfitError(ValueError):
    """An answer cannot be a room; `option` is the one to change."""

    def __init__(self, option: str, text: str) -> None:
        self.option = option
        super().__init__(text)


@dataclass(frozen=True, slots=True)
class Said:
    """A length as it was written, and in metres."""

    text: str
    m: float


@dataclass(frozen=True, slots=True)
class Roof:
    """The ceiling: its shape and what that shape needs."""

    shape: str
    height: Said | None = None
    low: Said | None = None
    high: Said | None = None
    low_side: str = ""
    ridge: str = ""
    low_sides: tuple[str, ...] = ()
    slope_width: Said | None = None
    margin: Said | None = None
    """How broad the lower part around a tray is, the same on all sides."""


@dataclass(frozen=True, slots=True)
class Gap:
    """An opening of a wall, from the wall's left-hand end as seen from inside."""

    kind: str
    wall: str
    start: Said
    width: Said


@dataclass(frozen=True, slots=True)
class Answers:
    """All of them, in the order in which they are asked."""

    width: Said
    length: Said
    roof: Roof
    openings: tuple[Gap, ...]
    rows: tuple[int, ...]
    """Seats of each row, from the front."""
    ear_from_front: Said | None
    layout: str
    picture: tuple[str, Said] | None
    """What it is, a display or a projection, and how wide."""
    code: str
    stage: str
    us: bool
    """Whether the file is written in the units of the United States."""

    @property
    def facets(self) -> Facets:
        """Return the ceiling as flat parts."""
        said, long, wide = self.roof, self.length.m, self.width.m
        outline = ((0.0, long), (wide, long), (wide, 0.0), (0.0, 0.0))
        if said.shape == "mono-pitch":
            return roof.mono_pitch(outline, _m(said.low), _m(said.high), RISES_TOWARD_DEG[said.low_side])
        if said.shape == "gable":
            runs_deg = 0.0 if said.ridge == "front-to-rear" else -90.0
            return roof.gable(outline, _m(said.low), _m(said.height), runs_deg)
        if said.shape == "tray":
            around = _m(said.margin)
            return roof.tray(outline, _m(said.low), _m(said.height), (around, wide - around, around, long - around))
        if said.shape == "part-sloped":
            toward = [RISES_TOWARD_DEG[side] for side in said.low_sides]
            return roof.part_sloped(outline, _m(said.height), _m(said.low), _m(said.slope_width), toward)
        return roof.flat(outline, _m(said.height))

    def check(self) -> None:
        """Raise `UnfitError` for the first answer that cannot be a room."""
        for option, said in (("--width", self.width), ("--length", self.length)):
            if not SMALLEST_M <= said.m <= LARGEST_M:
                text = f"{said.text} is no side of a room; {self._range(SMALLEST_M, LARGEST_M)} are expected."
                raise UnfitError(option, text)
        self._check_roof()
        for gap in self.openings:
            self._check_opening(gap)
        if not self.rows or min(self.rows) < 1 or sum(self.rows) > MOST_SEATS:
            raise UnfitError("--seats", f"one to {MOST_SEATS} seats are expected.")
        if self.ear_from_front is not None and not 0.0 < self.ear_from_front.m < self.length.m:
            text = f"{self.ear_from_front.text} from the front wall is not in a room {self.length.text} long."
            raise UnfitError("--ear-from-front", text)

    def _range(self, low_m: float, high_m: float) -> str:
        """Return two limits in the units of the file, in whole feet or as they are."""
        if not self.us:
            return f"{low_m:g} m to {high_m:g} m"
        return f"{low_m / 0.3048:.0f} ft to {high_m / 0.3048:.0f} ft"

    def _check_roof(self) -> None:
        roof = self.roof
        top = roof.high if roof.shape == "mono-pitch" else roof.height
        option = "--high" if roof.shape == "mono-pitch" else "--height"
        if top is None or not LOWEST_M <= top.m <= HIGHEST_M:
            text = f"a ceiling {self._range(LOWEST_M, HIGHEST_M)} high is expected where it is highest."
            raise UnfitError(option, text)
        if roof.low is not None and not 0.0 < roof.low.m <= top.m:
            raise UnfitError("--low", f"{roof.low.text} is not between the floor and the highest point, {top.text}.")
        self._check_parts(roof)

    def _check_parts(self, roof: Roof) -> None:
        """Refuse a tray without a raised part, and slopes that meet before they are up."""
        if (
            roof.margin is not None
            and not 0.0 < 2.0 * roof.margin.m < min(self.width.m, self.length.m) - LEAST_RAISED_M
        ):
            size = f"{self.width.text} x {self.length.text}"
            text = f"{roof.margin.text} on all sides leave no raised part in a room of {size}."
            raise UnfitError("--margin", text)
        if roof.slope_width is None:
            return
        for one, other, side in (("left", "right", self.width), ("front", "rear", self.length)):
            slopes = (one in roof.low_sides) + (other in roof.low_sides)
            if slopes and not 0.0 < slopes * roof.slope_width.m < side.m:
                text = f"slopes that reach {roof.slope_width.text} leave no flat part of {side.text}."
                raise UnfitError("--slope-width", text)

    def _check_opening(self, gap: Gap) -> None:
        side = self.width if gap.wall in {"front", "rear"} else self.length
        if gap.start.m < 0.0 or gap.width.m <= 0.0 or gap.start.m + gap.width.m > side.m + 1e-6:
            text = (
                f"an opening {gap.width.text} wide that begins {gap.start.text} along the {gap.wall} wall does not fit"
                f" that wall, which is {side.text} long."
            )
            raise UnfitError("--opening", text)


def _m(said: Said | None) -> float:
    return said.m if said is not None else 0.0
