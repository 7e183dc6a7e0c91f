"""What a figure claims that no length moves it by more than, a metre, holds for every length that it rests on.

A pass far from its limit is told by that bound alone, in chapters where people can get hurt too.
"""

from __future__ import annotations

import math
from pathlib import Path
from typing import TYPE_CHECKING

import pytest
from drawn import PRODUCTS, drawn

from roomlint.review.book import load_book
from roomlint.review.desk import Desk
from roomlint.review.engine import review_room
from roomlint.review.room import Room
from roomlint.testing import Case, case_modules, room_of

if TYPE_CHECKING:
    from roomlint.measure.figure import Figure

HERE = Path(__file__).parent
RULES = load_book().rules
EXAMPLES = sorted((HERE.parent.parent / "example_projects").glob("*/*.room.yaml"))
SLACK = 1e-9


def too_far(figure: Figure) -> list[str]:
    """Return which lengths move a figure by more than its bound says."""
    found = []
    for reading in figure.readings:
        bound = figure.bound(reading)
        if bound == math.inf:
            continue
        changes = [figure.change(reading, by) for by in (reading.u, -reading.u) if reading.u > 0.0]
        most = max((abs(change) for change in changes if change is not None), default=0.0)
        if most > bound + SLACK:
            found.append(f"{figure.name}: {reading.words} moves it by {most:.4g}, bound {bound:.4g}")
    return found


def figures_of(room: Room) -> list[Figure]:
    return [one.figure for one in review_room(room, RULES).judged]


@pytest.mark.parametrize("file", EXAMPLES, ids=lambda file: file.stem)
def test_bounds_hold_in_the_example_rooms(file: Path) -> None:
    design, house, _ = Desk().open_room(str(file))
    assert design is not None
    figures = figures_of(Room(design, house))
    assert any(figure.bound(reading) < math.inf for figure in figures for reading in figure.readings)
    assert [text for figure in figures for text in too_far(figure)] == []


@pytest.mark.parametrize("seed", range(9000, 9012))
def test_bounds_hold_in_drawn_rooms(seed: int) -> None:
    data = drawn(seed)
    data["survey"]["tolerance"] = "30 mm"
    assert [text for figure in figures_of(room_of(data, PRODUCTS)) for text in too_far(figure)] == []


CASES = [entry for module in case_modules(HERE) for entry in module.CASES if isinstance(entry, Case)]


@pytest.mark.parametrize("chapter", ["access", "heat", "mains", "mount"])
def test_bounds_hold_in_the_cases_of_chapters_where_people_can_get_hurt(chapter: str) -> None:
    rules = {rule.id: rule for rule in RULES}
    found = set()
    for case in CASES:
        if case.rule.partition(".")[0] == chapter and case.kind in {"pass", "fail", "review"}:
            judged = review_room(room_of(case.room, case.products, case.house), [rules[case.rule]]).judged
            found |= {text for one in judged for text in too_far(one.figure)}
    assert sorted(found) == []
