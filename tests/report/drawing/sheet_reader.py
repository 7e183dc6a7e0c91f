"""Draws rooms that are given as plain data, and reads what was drawn back out of the SVG."""

from __future__ import annotations

import math
import re
from datetime import date
from typing import TYPE_CHECKING, Any, NamedTuple
from xml.etree import ElementTree as ET

from roomlint.design.house import House
from roomlint.report import Wishes, draw
from roomlint.report.drawing.compose import drawings
from roomlint.review.book import load_book
from roomlint.review.review import Review
from roomlint.review.session import Choices, review_design
from roomlint.testing import room_of

if TYPE_CHECKING:
    from collections.abc import Iterator

    from roomlint.report.drawing.shapes import View
    from roomlint.report.drawing.sheets import Drawing

Data = dict[str, Any]
SVG = "{http://www.w3.org/2000/svg}"
DAY = date(2026, 11, 25)
CHAPTERS = {"angle", "bass", "boundary", "decay", "distance", "layout", "mains", "picture"}
RULES = tuple(rule for rule in load_book().rules if rule.chapter in CHAPTERS)
"""What a plan can show of places; a whole book has its turn where a page is opened."""


def reviewed(data: Data) -> Review:
    """Return the review of a room, with its scene."""
    room, troubles = review_design(room_of(data).design, House(), RULES, Choices(DAY, scene=True))
    return Review((room,), RULES, troubles=tuple(troubles))


def written(kind: str, data: Data, **wishes: Any) -> str:
    """Return a room drawn in a form."""
    return "".join(str(part) for part in draw(kind, reviewed(data), Wishes(**wishes)))


class Read(NamedTuple):
    """Something that was read out of a view: its points in metres of the view, what it shows, and on which layer."""

    points: tuple[tuple[float, float], ...]
    radius_m: float
    key: str
    of: str
    layer: str


class Sheet:
    """The SVG of one room, with the views of it in metres."""

    def __init__(self, data: Data, **wishes: Any) -> None:
        review, wished = reviewed(data), Wishes(**wishes)
        self.drawing: Drawing = next(iter(drawings(review, wished)))
        text = "".join(str(part) for part in draw("svg", review, wished))
        self.root = ET.fromstring(text)  # noqa: S314  we wrote it

    def view(self, name: str) -> View:
        """Return a view as it was drawn."""
        return next(view for view in self.drawing.views.all if view.name == name)

    def read(self, name: str) -> Iterator[Read]:
        """Yield the lines and circles of a view, taken out of the SVG and put back into metres of the view."""
        view = self.view(name)
        placed, top = next(
            (one, number * sheet.height_mm)
            for number, sheet in enumerate(self.drawing.sheets())
            for one in sheet.placed
            if one.view.name == name
        )
        group = next(one for one in self.root.iter(f"{SVG}g") if one.get("class") == f"view {name}")

        def metres(x: float, y: float) -> tuple[float, float]:
            per_m = 1000.0 / view.scale
            return view.low[0] + (x - placed.x_mm) / per_m, view.high[1] - (y - top - placed.y_mm) / per_m

        for one in group.iter():
            layer = re.sub(r"^l-(\S+).*", r"\1", one.get("class") or "")
            words = (one.get("data-key") or "", one.get("data-of") or "", layer)
            if one.tag == f"{SVG}circle":
                middle = metres(float(one.get("cx", "")), float(one.get("cy", "")))
                yield Read((middle,), float(one.get("r", "")) * view.scale / 1000.0, *words)
            elif one.tag == f"{SVG}path":
                ends = re.sub(r"A\S+ \S+ \S+ \S+ \S+ ", "L", one.get("d", ""))
                numbers = [float(number) for number in re.findall(r"-?[\d.]+", ends)]
                yield Read(tuple(map(metres, numbers[0::2], numbers[1::2])), 0.0, *words)

    def of(self, name: str, key: str = "", layer: str = "", finding: str = "") -> list[Read]:
        """Return what a view shows of an element, on a layer, of a finding."""
        return [
            one
            for one in self.read(name)
            if (not key or one.key == key)
            and (not layer or one.layer == layer)
            and (not finding or finding in one.of.split())
        ]


def near(found: tuple[tuple[float, float], ...], wanted: list[tuple[float, float]], within: float = 2e-4) -> bool:
    """Return whether two polygons have the same corners, wherever they begin and whichever way round."""
    return (
        len(found) == len(wanted)
        and all(any(math.dist(one, other) < within for other in wanted) for one in found)
        and all(any(math.dist(one, other) < within for other in found) for one in wanted)
    )
