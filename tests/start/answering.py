"""Many answers, and what the whole rule book says of the files that they begin."""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import TYPE_CHECKING

from hypothesis import strategies as st

from roomlint.design.read import read_design
from roomlint.figures.layouts import LAYOUTS
from roomlint.review.book import load_book
from roomlint.review.engine import review_room
from roomlint.review.room import Room
from roomlint.source.quantity import parse
from roomlint.source.tree import read_tree
from roomlint.start.answers import OPENINGS, RIDGES, SIDES, Answers, Gap, Roof, Said
from roomlint.start.lengths import stepped, written

if TYPE_CHECKING:
    from roomlint.design.model import Design
    from roomlint.review.verdict import Verdict

BOOK = load_book()


def said(value_m: float, *, us: bool) -> Said:
    text = written(stepped(value_m, us=us), us=us)
    return Said(text, parse(text, "length").value)


@dataclass(frozen=True)
class Range:
    low: float
    high: float


@st.composite
def answers(draw: st.DrawFn, smallest: float = 1.8, largest: float = 9.0) -> Answers:
    us = draw(st.booleans())

    def length(low: float, high: float) -> Said:
        return said(draw(st.floats(low, max(high, low + 0.02))), us=us)

    width, long = length(smallest, largest), length(smallest, largest)
    shape = draw(st.sampled_from(["flat", "mono-pitch", "gable", "tray", "part-sloped"]))
    if shape == "flat":
        roof = Roof(shape, height=length(1.9, 4.0))
    elif shape == "mono-pitch":
        low = length(1.2, 2.6)
        roof = Roof(shape, low=low, high=length(max(low.m + 0.1, 2.0), 4.5), low_side=draw(st.sampled_from(SIDES)))
    elif shape == "gable":
        low = length(1.2, 2.6)
        roof = Roof(shape, low=low, height=length(max(low.m + 0.1, 2.0), 4.5), ridge=draw(st.sampled_from(RIDGES)))
    else:
        low, shorter = length(1.4, 2.6), min(width.m, long.m)
        high = length(max(low.m + 0.1, 2.0), 4.5)
        if shape == "tray":
            roof = Roof(shape, low=low, height=high, margin=length(0.1, (shorter - 0.4) / 2.0))
        else:
            low_sides = tuple(draw(st.lists(st.sampled_from(SIDES), min_size=1, max_size=4, unique=True)))
            reach = length(0.2, (shorter - 0.1) / 2.0)
            roof = Roof(shape, low=low, height=high, low_sides=low_sides, slope_width=reach)
    gaps = []
    for _ in range(draw(st.integers(0, 3))):
        wall = draw(st.sampled_from(SIDES))
        side = width.m if wall in {"front", "rear"} else long.m
        start = length(0.0, side * 0.6)
        gaps.append(Gap(draw(st.sampled_from(OPENINGS)), wall, start, length(0.3, min(2.5, side - start.m - 0.05))))
    picture = draw(st.sampled_from(["", "display", "projection"]))
    return Answers(
        width, long, roof, tuple(gaps), tuple(draw(st.lists(st.integers(1, 5), min_size=1, max_size=2))), None,
        draw(st.sampled_from(sorted(LAYOUTS))), (picture, length(0.7, 3.0)) if picture else None, "job-1", "design", us,
    )  # fmt: skip


def design_of(text: str) -> Design:
    """Return what is read of a text, in which nothing may be wrong."""
    node, problems = read_tree(text, "new.room.yaml")
    assert problems == []
    assert node is not None
    design, problems = read_design(node, "new.room.yaml", {})
    assert [problem.text for problem in problems] == [], text
    return design


def verdicts_of(text: str) -> tuple[Verdict, ...]:
    return tuple(review_room(Room(design_of(text)), BOOK.rules).verdicts)


def uncommented(text: str) -> str:
    """Return a file with every key in use that it offers."""
    return re.sub(r"(?m)^( *)#: ", r"\1", text)
