"""Layouts that ITU-R BS.2051 does not list, such as 6+5+0: what their names count, and where their labels may stand.

A name is upper + middle + bottom loudspeakers, as the standard writes its own; it says nothing of LFE channels. A label
is held against the tables in which it occurs: of those the ones with as many loudspeakers in its layer, where there
are any, otherwise all of them. What no table says is not made up: such a label has no place.
"""

from __future__ import annotations

import re
from functools import lru_cache
from typing import TYPE_CHECKING, Final, NamedTuple

from roomlint.figures.domain import Refused
from roomlint.figures.layouts import ANYWHERE, LAYOUTS, Position, parse_label

if TYPE_CHECKING:
    from collections.abc import Iterable

    from roomlint.figures.layouts import Range

_NAME = re.compile(r"([0-9]{1,2})\+([0-9]{1,2})\+([0-9]{1,2})")
_LAYERS: Final = {"U": 0, "UH": 0, "T": 0, "M": 1, "B": 2}
"""Which of a name's three counts a layer is counted in."""


class Counts(NamedTuple):
    """How many loudspeakers a layout has in each layer; the zenith counts as upper, LFE not at all."""

    upper: int
    middle: int
    bottom: int

    @property
    def name(self) -> str:
        """The counts as a layout's name."""
        return "+".join(map(str, self))

    @property
    def all(self) -> int:
        """All of them."""
        return sum(self)


class Published(NamedTuple):
    """Where the tables put a label: any of their ranges, the range that all of them share, and which tables."""

    position: Position
    shared: Range | None
    """None where they share none, or a single direction only."""
    tables: tuple[str, ...]


def is_listed(name: str) -> bool:
    """Return whether the standard has a table for a layout."""
    return name in LAYOUTS


@lru_cache(maxsize=64)
def counts_of(name: str) -> Counts:
    """Return the counts that a name gives; raises Refused for what is no name."""
    match = _NAME.fullmatch(name)
    if match is None:
        raise Refused(f"{name!r} names no layout: write upper + middle + bottom loudspeakers, such as 6+5+0")
    return Counts(*map(int, match.groups()))


def counted(labels: Iterable[str]) -> Counts:
    """Return how many of some labels belong to each layer."""
    found = [0, 0, 0]
    for label in labels:
        layer = parse_label(label).layer
        if layer in _LAYERS:
            found[_LAYERS[layer]] += 1
    return Counts(*found)


@lru_cache(maxsize=256)
def published(name: str, label: str) -> Published | None:
    """Return where the tables put a label of a layout that has none itself; None for a label that no table has.

    Ranges of azimuth that overlap or touch become one; the elevation is the span of all.
    """
    holding = [layout for layout in LAYOUTS.values() if label in layout.positions]
    if not holding:
        return None
    layer = parse_label(label).layer
    if layer in _LAYERS:
        count = counts_of(name)[_LAYERS[layer]]
        kin = [layout for layout in holding if counts_of(layout.name)[_LAYERS[layer]] == count]
        holding = kin or holding
    places = [layout.positions[label] for layout in holding]
    arcs = _joined([arc for place in places for arc in place.azimuth_ranges])
    if ANYWHERE in arcs:
        arcs = (ANYWHERE,)
    lows, highs = zip(*(place.elevation_range for place in places), strict=True)
    first = places[0]
    position = Position(label, first.azimuth_deg, arcs, first.elevation_deg, (min(lows), max(highs)))
    return Published(position, _shared(places), tuple(layout.name for layout in holding))


def _joined(arcs: list[Range]) -> tuple[Range, ...]:
    found: list[Range] = []
    for low, high in sorted(tuple(sorted(arc)) for arc in arcs):
        if found and low <= found[-1][1]:
            found[-1] = (found[-1][0], max(found[-1][1], high))
        else:
            found.append((low, high))
    return tuple(found)


def _shared(places: list[Position]) -> Range | None:
    if any(len(place.azimuth_ranges) > 1 for place in places):
        return None
    spans = [sorted(place.azimuth_ranges[0]) for place in places]
    low, high = max(span[0] for span in spans), min(span[1] for span in spans)
    return (low, high) if low < high else None
