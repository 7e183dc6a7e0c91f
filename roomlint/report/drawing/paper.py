"""Papers, scales, and how large a view is drawn."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final, NamedTuple

if TYPE_CHECKING:
    from collections.abc import Callable

    from roomlint.measure.scene import Spot2
    from roomlint.report.units import Units


class Paper(NamedTuple):
    """A paper, landscape, mm; how wide its column of words is."""

    name: str
    width_mm: float
    height_mm: float
    column_mm: float


PAPERS: Final = {
    "a3": Paper("A3", 420.0, 297.0, 118.0),
    "a4": Paper("A4", 297.0, 210.0, 84.0),
    "tabloid": Paper("tabloid", 431.8, 279.4, 118.0),
    "letter": Paper("letter", 279.4, 215.9, 84.0),
}
METRIC_SCALES: Final = (10, 20, 25, 30, 40, 50, 75, 100, 150, 200, 250, 500, 1000)
"""ISO 5455 with the intermediate steps 25, 30, 40 and 75 that plans of rooms are drawn to."""
US_SCALES: Final = {
    12: "1 in = 1 ft", 16: "3/4 in = 1 ft", 24: "1/2 in = 1 ft", 32: "3/8 in = 1 ft", 48: "1/4 in = 1 ft",
    64: "3/16 in = 1 ft", 96: "1/8 in = 1 ft", 128: "3/32 in = 1 ft", 192: "1/16 in = 1 ft", 384: "1/32 in = 1 ft",
    768: "1/64 in = 1 ft",
}  # fmt: skip
MARGIN_MM: Final = 10.0
BINDING_MM: Final = 20.0
"""The edge on the left, for filing (ISO 5457)."""
GUTTER_MM: Final = 4.0


def paper_of(name: str, units: Units) -> Paper:
    """Return the paper of a name; without one, A3, or tabloid for a reader in the United States."""
    return PAPERS[name or ("tabloid" if units.is_us else "a3")]


def scales(units: Units) -> tuple[int, ...]:
    """Return the scales that are drawn to, the largest first."""
    return tuple(US_SCALES) if units.is_us else METRIC_SCALES


def scale_words(scale: float, units: Units) -> str:
    """Return a scale as a title block says it."""
    words = US_SCALES.get(round(scale)) if units.is_us else None
    return f"{words} (1:{scale:.0f})" if words else f"1:{scale:.0f}"


def largest(units: Units, fits: Callable[[float], bool]) -> float:
    """Return the largest scale at which a drawing fits; the smallest there is where it fits at none."""
    known = scales(units)
    return float(next((scale for scale in known if fits(scale)), known[-1]))


def room_mm(paper: Paper) -> Spot2:
    """Return what is left for views beside the column of words, mm."""
    wide = paper.width_mm - BINDING_MM - MARGIN_MM - paper.column_mm - GUTTER_MM
    return wide, paper.height_mm - 2.0 * MARGIN_MM
