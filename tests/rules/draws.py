"""Printed uncertainty against drawn readings: each room is read from text again and again, every reading off by lot.

What a tape may be off by is drawn for every reading that a room's figures rest on, and written into the room's file;
the whole way from text to figure is gone anew. The spread of what comes out is held against the uncertainty that is
printed, which was found by moving one reading at a time.
"""

from __future__ import annotations

import re
from dataclasses import dataclass, field
from typing import TYPE_CHECKING, Any, NamedTuple

import numpy as np

from roomlint.design.base import Missing
from roomlint.figures.domain import Refused
from roomlint.measure.figure import Figure
from roomlint.review.engine import review_room
from roomlint.review.rule import No
from roomlint.review.verdict import Found
from roomlint.testing import changed, room_of

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator, Mapping, Sequence

    from roomlint.design.quantity import Reading
    from roomlint.review.room import Room
    from roomlint.review.rule import AnyRule

Data = dict[str, Any]
Key = tuple[str, str]
Place = tuple[str, str]
"""A file and a path in it."""
COVERAGE = 2.0
"""How many standard deviations an expanded uncertainty is: of readings and figures alike, so that it cancels."""
STRAIGHT = 0.98
"""Share of the variance that a plane through the draws explains; below that the figure has a kink or bends here."""
HELD = 0.05
"""Share of a figure's variance that may come of what is not drawn: what nobody wrote down stays put."""

FROM_NOTHING = 3.0
"""How many of its uncertainties a reading must be away from nothing to be drawn."""


class Spread(NamedTuple):
    """What was printed of one figure, and what came of the draws."""

    name: str
    rule: str
    subject: str
    value: float
    printed: float
    drawn: float
    straight: float

    @property
    def ratio(self) -> float:
        return self.printed / self.drawn

    @property
    def bends(self) -> bool:
        return self.straight < STRAIGHT


@dataclass
class Drawn:
    """All figures of one room; those whose formula did not hold in some draw are named, not counted."""

    spreads: list[Spread] = field(default_factory=list)
    refused: list[Key] = field(default_factory=list)
    idle: list[Key] = field(default_factory=list)
    """Figures that nothing which was read moves: their printed uncertainty must be nothing as well."""


def values(room: Room, rules: Iterable[AnyRule]) -> dict[Key, Figure]:
    """Return every figure that a rule would compare, without comparing it."""
    found: dict[Key, Figure] = {}
    for rule in rules:
        for subject, answer in _answers(room, rule):
            figure = answer.figure if isinstance(answer, Found) else answer
            if isinstance(figure, Figure):
                found[rule.id, "+".join(sorted(subject.split("+")))] = figure
    return found


def _answers(room: Room, rule: AnyRule) -> Iterator[tuple[str, Any]]:
    try:
        subjects = [subject for subject in rule.each.find(room) if not isinstance(subject, Missing)]
    except (Missing, Refused):
        return
    for subject in subjects:
        try:
            if not any(isinstance(applies(room, subject), No) for applies in rule.when):
                yield subject.key, rule.judge(room, subject)
        except (Missing, Refused):
            continue


def read_from(figures: Iterable[Figure]) -> dict[Place, Reading]:
    """Return the readings of the room's text and its sheets that may be off, by file and path."""
    readings = (reading for figure in figures for reading in figure.readings if reading.u > 0.0)
    return {
        (reading.at.place.file, re.sub(r"\[(\d+)\]", r".\1", reading.at.path)): reading
        for reading in readings
        # A length of nearly nothing cannot be drawn: less than nothing is no length, and the reader says so.
        if reading.at is not None and abs(reading.value) > FROM_NOTHING * reading.u
    }


def rewritten(data: Data, moves: Mapping[Place, str], file: str) -> Data:
    return changed(data, {path: text for (where, path), text in moves.items() if where == file})


def _along_one_side(data: Data, place: Place, readings: Mapping[Place, Reading]) -> list[Place]:
    """Return the other corners of an outline that stand on one side of the room with a corner, measured with it."""
    file, path = place
    way, _, key = path.rpartition(".")
    if not way.startswith("room.outline."):
        return []
    corners = data["room"]["outline"]
    at = corners[int(way.rpartition(".")[2])][key]
    others = [(file, f"room.outline.{number}.{key}") for number, corner in enumerate(corners) if corner[key] == at]
    return [other for other in others if other not in readings]


def offsets(count: int, draws: int, seed: int) -> np.ndarray:
    """Return normal draws, one column a reading, made exactly uncorrelated and of unit variance in this sample.

    What is left of chance is then in the figures' bends alone: of a figure that is linear the spread comes out exact.
    """
    normal = np.random.default_rng(seed).standard_normal((draws, count))
    apart, _ = np.linalg.qr(normal - normal.mean(axis=0))
    return apart * np.sqrt(draws - 1.0)


def drawn_figures(
    data: Data, rules: Sequence[AnyRule], products: Sequence[Mapping[str, Any]] = (), draws: int = 200, seed: int = 1
) -> Drawn:
    """Return what the draws say of every figure of a room."""
    room = room_of(data, products)
    outcome = review_room(room, rules)
    assert not outcome.troubles, outcome.troubles
    judged = {
        (j.rule.id, "+".join(sorted(j.subject.key.split("+")))): j.figure for j in outcome.judged if not j.figure.shared
    }
    asked = [rule for rule in rules if any(rule.id == key[0] for key in judged)]
    readings = read_from(judged.values())
    off = offsets(len(readings), max(draws, len(readings) * 5 // 4 + 2), seed)
    got: dict[Key, list[float]] = {key: [] for key in judged}
    for row in off:
        moves = {
            other: f"{reading.value + step * reading.u / COVERAGE:.12g} {reading.unit}"
            for (place, reading), step in zip(readings.items(), row, strict=True)
            for other in (place, *_along_one_side(data, place, readings))
        }
        sheets = [rewritten(dict(sheet), moves, f"{sheet['id']}.product.yaml") for sheet in products]
        there = room_of(rewritten(data, moves, room.design.file), sheets)
        for key, figure in values(there, asked).items():
            if key in got:
                got[key].append(figure.value)
    return _summed(judged, got, off, set(readings.values()))


def _summed(
    judged: Mapping[Key, Figure], got: Mapping[Key, list[float]], off: np.ndarray, moved: set[Reading]
) -> Drawn:
    result = Drawn()
    for key, figure in judged.items():
        squares = {share.reading: share.change**2 for share in figure.shares}
        whole = sum(squares.values())
        own = sum(square for reading, square in squares.items() if reading in moved)
        if len(got[key]) < len(off):
            result.refused.append(key)
            continue
        sample = np.array(got[key]) - figure.value
        if figure.unit == "deg":
            sample = (sample + 180.0) % 360.0 - 180.0
        sd = float(np.std(sample, ddof=1))
        if sd < 1e-9 * max(1.0, abs(figure.value)):
            result.idle.append(key)
            assert own**0.5 < 1e-6 * max(1.0, abs(figure.value)), f"{key}: {own**0.5} printed, and nothing moves it"
            continue
        if own < (1.0 - HELD) * whole:
            continue
        slopes = off.T @ (sample - sample.mean()) / (len(off) - 1.0)
        straight = float(slopes @ slopes) / sd**2
        result.spreads.append(Spread(figure.name, *key, figure.value, own**0.5, COVERAGE * sd, straight))
    return result


def by_name(spreads: Iterable[Spread]) -> dict[str, list[Spread]]:
    """Return the spreads of each figure's name, the names in order."""
    found: dict[str, list[Spread]] = {}
    for spread in spreads:
        found.setdefault(spread.name, []).append(spread)
    return dict(sorted(found.items()))
