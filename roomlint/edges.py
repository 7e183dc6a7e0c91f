"""Walks a rule to each edge of its windows: half a printed digit to either side the verdict must change."""

from __future__ import annotations

import re
from dataclasses import dataclass, replace
from functools import cache
from typing import TYPE_CHECKING, Any

from roomlint.figures.domain import Refused
from roomlint.review.engine import review_room
from roomlint.review.window import half_a_digit

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator, Mapping, Sequence

    from roomlint.review.judging import Judged
    from roomlint.review.rule import AnyRule
    from roomlint.review.window import Window

_STEPS = 100
"""Two crossings that lie closer would be missed: an edge says how many there are, so that it is told."""
_FINE = 1e-12


@dataclass(frozen=True, slots=True)
class Edge:
    """A room in which one value, moved, takes a rule's figure across the edges of its windows.

    Every edge that the value can reach between `low` and `high` (in `unit`) is tried; `edges` says how many that must
    be, so that none is missed in silence. The room's readings must be exact.
    """

    rule: str
    room: Mapping[str, Any]
    path: str
    """The dotted path of the value, such as `loudspeakers.0.position.from_left`."""
    low: float
    high: float
    edges: int
    unit: str = "m"
    scale: float = 1.0
    """How many of the reading's own unit one of `unit` is, such as 0.001 for mm."""
    subject: str | None = None
    products: Sequence[Mapping[str, Any]] = ()
    sheet: str = ""
    """The product whose sheet holds the value; empty for the room's own."""
    certain: float = 0.0
    """Of a figure that is uncertain whatever the readings: so far on either side of an edge its verdict is certain."""

    def __str__(self) -> str:
        """Return a name for the test's list."""
        return f"{self.rule}-edges-{self.path}"


def check_edge(edge: Edge, rules: Sequence[AnyRule]) -> None:
    """Try every edge and raise `AssertionError` where the verdict does not change within the printed digit."""
    rule = next(rule for rule in rules if rule.id == edge.rule)
    judged = _judged(edge, rule, edge.room)
    windows = judged.windows
    tried = 0
    for window in (windows.window, windows.target, windows.limit):
        for side, limit in (("low", window.low), ("high", window.high)) if window is not None else ():
            if limit is None or window is None:
                continue
            for inside, outside in _crossings(edge, judged, window, side, limit):
                near = _outcome(edge, rule, inside), _outcome(edge, rule, outside)
                if near[0] == near[1]:
                    raise AssertionError(f"{edge}: {near[0]} on both sides of {limit:g} {window.unit}")
                tried += 1
    if tried != edge.edges:
        raise AssertionError(f"{edge}: {tried} edges were reached, not {edge.edges}")


def _outcome(edge: Edge, rule: AnyRule, value: float) -> tuple[str, str]:
    from roomlint.testing import changed

    plain = not edge.sheet and isinstance(_at(edge.room, edge.path), int | float)
    text = value / edge.scale if plain else f"{value / edge.scale:.9f} {edge.unit}".strip()
    if edge.sheet:
        sheets = [changed(s, {edge.path: text}) if s["id"] == edge.sheet else s for s in edge.products]
        judged = _judged(replace(edge, products=sheets), rule, edge.room)
    else:
        judged = _judged(edge, rule, changed(edge.room, {edge.path: text}))
    kind, level, _, _ = judged.outcome(judged.figure)
    return str(kind), str(level)


def _at(data: Any, path: str) -> object:  # noqa: ANN401  plain data
    for part in path.split("."):
        data = data[int(part) if isinstance(data, list) else part]
    found: object = data
    return found


def _judged(edge: Edge, rule: AnyRule, data: Mapping[str, Any]) -> Judged:
    from roomlint.testing import room_of

    outcome = review_room(room_of(data, edge.products), [rule])
    found = [judged for judged in outcome.judged if edge.subject in {None, judged.subject.key}]
    if not found:
        raise AssertionError(f"{edge}: no figure for that subject; found {outcome.verdicts}")
    return found[0]


def _crossings(edge: Edge, judged: Judged, window: Window, side: str, limit: float) -> Iterator[tuple[float, float]]:
    """Yield the values half a printed digit and a little to either side of an edge, the inner one first."""
    # As files write them: an item of a list by its number, a name with a blank in quotes.
    path = re.sub(r"\.([^.]* [^.]*)", r"['\1']", re.sub(r"\.(\d+)(?=\.|$)", r"[\1]", edge.path))
    reading = next((r for r in judged.figure.readings if r.at is not None and r.at.path == path), None)
    if reading is None:
        known = [r.at.path for r in judged.figure.readings if r.at is not None]
        raise AssertionError(f"{edge}: the figure does not rest on {path}; it rests on {known}")
    way = -1.0 if side == "low" else 1.0
    hair = edge.certain or 1.1 * half_a_digit(window.unit, limit)
    base = limit + way * (0.0 if judged.rule.guarded else window.allowance)

    @cache  # both sides of an edge are sought along the same points
    def at(value: float) -> float:
        try:
            return judged.figure.moved({reading: value - reading.value})
        except Refused:
            return float("nan")

    span = edge.low * edge.scale, edge.high * edge.scale
    inner = _roots(lambda value: at(value) - (base - way * hair), *span)
    outer = _roots(lambda value: at(value) - (base + way * hair), *span)
    for inside in inner:
        outside = min(outer, key=lambda value: abs(value - inside), default=None)
        if outside is not None:
            yield inside, outside


def _roots(function: Callable[[float], float], low: float, high: float) -> list[float]:
    from scipy.optimize import brentq

    points = [low + (high - low) * number / _STEPS for number in range(_STEPS + 1)]
    values = [function(point) for point in points]
    found = []
    for start, end, one, other in zip(points, points[1:], values, values[1:], strict=False):
        if one * other < 0.0:
            found.append(float(brentq(function, start, end, xtol=abs(end - start) * _FINE)))
    return found
