"""Puts views on sheets of paper: what goes on which, at which scale, with frame, key, words and title block."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Final

from roomlint.report.drawing import blocks
from roomlint.report.drawing.paper import BINDING_MM, GUTTER_MM, MARGIN_MM, largest, paper_of, room_mm, scale_words
from roomlint.report.drawing.plan import Planner
from roomlint.report.drawing.plots import plot, with_limits
from roomlint.report.drawing.section import Sectioner

if TYPE_CHECKING:
    from roomlint.measure.scene import Chart, Scene, Spot2
    from roomlint.report.drawing.findings import Finding, Listing
    from roomlint.report.drawing.paper import Paper
    from roomlint.report.drawing.shapes import View
    from roomlint.report.units import Units
    from roomlint.review.review import RoomReview

_CAPTION_MM: Final = 7.0
_CHART_MM: Final = (190.0, 100.0)
_NOT_KNOWN_MM: Final = 42.0
"""How high a chart is that only says what it lacks."""


@dataclass(frozen=True, slots=True)
class Placed:
    """A view and where its upper left corner is on its sheet, mm from the paper's upper left corner."""

    view: View
    x_mm: float
    y_mm: float


@dataclass(frozen=True, slots=True)
class Sheet:
    """One sheet of paper."""

    number: int
    title: str
    width_mm: float
    height_mm: float
    placed: tuple[Placed, ...]


@dataclass(frozen=True, slots=True)
class Views:
    """The views of one room, each at its scale."""

    plan: View
    ceiling: View
    sections: tuple[View, ...]
    charts: tuple[View, ...]

    @property
    def all(self) -> tuple[View, ...]:
        """All views of the room itself."""
        return (self.plan, *self.sections, self.ceiling)


class Drawing:
    """One room's drawing: its views, and the sheets that they are put on."""

    def __init__(
        self, room: RoomReview, scene: Scene, listing: Listing, units: Units, paper: str = "", prefix: str = ""
    ) -> None:
        self.room = room
        self.scene = scene
        self.listing = listing
        self.units = units
        self.prefix = prefix
        self.paper: Paper = paper_of(paper, units)
        was = room.was_scene
        self._planner = Planner(scene, listing.findings, units, was)
        self._sectioner = Sectioner(scene, listing.findings, units, was)
        self.charts = tuple(with_limits(chart, room.verdicts, units) for chart in scene.charts)
        self.views = self._views()

    def _views(self) -> Views:
        wide, high = room_mm(self.paper)

        def plan_fits(scale: float) -> bool:
            w, h = self._planner.extent_mm(scale)
            return w <= wide and h + _CAPTION_MM <= high

        scale = largest(self.units, plan_fits)
        self._plan_scale = scale
        over = max(largest(self.units, lambda one: self._over_fits(one, wide, high)), scale)
        cut = max(largest(self.units, lambda one: self._places(one) is not None), scale)
        sections = tuple(self._sectioner.view(one, cut) for one in self.scene.cuts)
        charts = tuple(plot(chart, self.units, *self._chart_mm(chart)) for chart in self.charts)
        return Views(self._planner.plan(scale), self._planner.overhead(over), sections, charts)

    def _chart_mm(self, chart: Chart) -> Spot2:
        """Return the size of a chart; one of which nothing is known takes no more than to say so."""
        wide, high = room_mm(self.paper)
        most = min(_CHART_MM[1], 0.5 * high)
        return min(_CHART_MM[0], wide - 4.0), most if chart.is_known else min(_NOT_KNOWN_MM, most)

    def _over_fits(self, scale: float, wide: float, high: float) -> bool:
        w, h = self._planner.overhead_mm(scale)
        return w <= wide and h + _CAPTION_MM <= high

    def _places(self, scale: float) -> list[Spot2] | None:
        """Return where the two sections go on their sheet, one above the other or side by side; None: nowhere."""
        wide, high = room_mm(self.paper)
        (lw, lh), (cw, ch) = (self._sectioner.extent_mm(scale, cut.kind) for cut in self.scene.cuts)
        if max(lw, cw) <= wide and lh + ch + 2 * _CAPTION_MM <= high:
            return [(0.0, 0.0), (0.0, lh + _CAPTION_MM)]
        if lw + GUTTER_MM + cw <= wide and max(lh, ch) + _CAPTION_MM <= high:
            return [(0.0, 0.0), (lw + GUTTER_MM, 0.0)]
        return None

    @property
    def names(self) -> dict[str, str]:
        """What each finding says, by its id."""
        return {one.id: f"{one.number} {one.level}: {one.text}" for one in self.listing.findings}

    def elements(self, finding: Finding) -> tuple[str, ...]:
        """Return the elements that a finding is about; of a part, such as a mounting, the thing that it is part of."""
        found: dict[str, None] = {}
        for key in finding.keys:
            found[key] = None
            _, _, name = key.partition("/")
            if self.scene.thing(key) is None:
                found |= {one.key: None for one in self.scene.things if one.key.partition("/")[2] == name}
        return tuple(found)

    @property
    def found(self) -> str:
        """How many errors and warnings are listed."""
        return f"{len(self.listing.of('error'))} / {len(self.listing.of('warning'))}"

    def sheets(self) -> list[Sheet]:
        """Return the sheets: plan, ceiling and sections, curves and setting out, then what is left of the findings."""
        lines = blocks.finding_lines(self.listing, self.paper.column_mm - 4.0)
        found: list[tuple[str, str, list[Placed]]] = []
        found.append(("Plan", scale_words(self._plan_scale, self.units), [self._captioned(self.views.plan, 0.0, 0.0)]))
        found.append(("Sections", scale_words(self.views.sections[0].scale, self.units), self._sections()))
        over = self.views.ceiling
        found.append(("Ceiling plan", scale_words(over.scale, self.units), [self._captioned(over, 0.0, 0.0)]))
        pages, rows = self._curves()
        found += [("Curves", "", page) for page in pages[:-1]]
        begun = not rows or len(rows) < len(blocks.setting_out_rows(self.scene, self.units))
        titles = ["Curves"] * bool(self.views.charts) + ["setting out"] * begun
        found.append((" and ".join(titles).capitalize(), "", pages[-1]))
        wide, high = room_mm(self.paper)
        while rows:
            tables, rows = blocks.setting_out(rows, wide, high)
            found.append((f"Setting out{', continued' if begun else ''}", "", self._tables(tables)))
            begun = True
        column = self._column_high()
        key = blocks.key(self.paper.column_mm)
        taken = blocks.taken(lines, column - key.size_mm[1] - 3.0)
        columns: list[list[View]] = [[key, blocks.text_block(lines[:taken], self.paper.column_mm)]]
        lines = lines[taken:]
        for _ in found[1:]:
            taken = blocks.taken(lines, column)
            columns.append([blocks.text_block(lines[:taken], self.paper.column_mm) if lines else key])
            lines = lines[taken:]
        while lines:
            page, lines = self._findings_page(lines)
            found.append(("Findings, continued", "", page))
            taken = blocks.taken(lines, column)
            columns.append([blocks.text_block(lines[:taken], self.paper.column_mm)])
            lines = lines[taken:]
        many = len(found)
        return [
            self._sheet(number, many, title, scale, placed, column)
            for number, ((title, scale, placed), column) in enumerate(zip(found, columns, strict=True), start=1)
        ]

    def _column_high(self) -> float:
        return self.paper.height_mm - 2.0 * MARGIN_MM - blocks.TITLE_MM - 2.0

    def _captioned(self, view: View, x: float, y: float) -> Placed:
        return Placed(view, BINDING_MM + x, MARGIN_MM + _CAPTION_MM + y)

    def _sections(self) -> list[Placed]:
        views = self.views.sections
        places = self._places(views[0].scale) or [(0.0, 0.0), (0.0, views[0].size_mm[1] + _CAPTION_MM)]
        return [self._captioned(view, x, y) for view, (x, y) in zip(views, places, strict=True)]

    def _curves(self) -> tuple[list[list[Placed]], list[blocks.Row]]:
        """Return sheets of charts, the last with as much of the setting out as fits below, and what is left of it."""
        first, end = MARGIN_MM + _CAPTION_MM, MARGIN_MM + room_mm(self.paper)[1]
        pages: list[list[Placed]] = [[]]
        y = first
        for chart in self.views.charts:
            if pages[-1] and y + chart.size_mm[1] > end:
                pages.append([])
                y = first
            pages[-1].append(Placed(chart, BINDING_MM + 2.0, y))
            y += chart.size_mm[1] + GUTTER_MM
        rows = blocks.setting_out_rows(self.scene, self.units)
        tables, rows = blocks.setting_out(rows, *room_mm(self.paper), y - MARGIN_MM)
        pages[-1] += self._tables(tables)
        return pages, rows

    @staticmethod
    def _tables(tables: list[tuple[float, float, View]]) -> list[Placed]:
        return [Placed(table, BINDING_MM + x, MARGIN_MM + y) for x, y, table in tables]

    def _findings_page(self, lines: list[blocks.TextLine]) -> tuple[list[Placed], list[blocks.TextLine]]:
        wide, high = room_mm(self.paper)
        many = max(1, int(wide // self.paper.column_mm))
        placed = []
        for column in range(many):
            taken = blocks.taken(lines, high - 4.0)
            if not taken:
                break
            view = blocks.text_block(lines[:taken], self.paper.column_mm)
            placed.append(Placed(view, BINDING_MM + 2.0 + column * (self.paper.column_mm + 2.0), MARGIN_MM + 3.0))
            lines = lines[taken:]
        return placed, lines

    def _sheet(self, number: int, many: int, title: str, scale: str, placed: list[Placed], column: list[View]) -> Sheet:
        paper = self.paper
        left = paper.width_mm - MARGIN_MM - paper.column_mm
        frame = blocks.frame(paper, left)
        words = blocks.title_block(
            paper.column_mm, self.room, self.scene, self.units, title=title, scale=scale, sheet=f"{number} of {many}",
            paper=paper.name, found=self.found,
        )  # fmt: skip
        everything = [Placed(frame, 0.0, 0.0), *self._captions(placed), *placed]
        y = MARGIN_MM + 1.0
        for view in column:
            everything.append(Placed(view, left, y))
            y += view.size_mm[1] + 2.0
        everything.append(Placed(words, left, paper.height_mm - MARGIN_MM - blocks.TITLE_MM))
        return Sheet(number, title, paper.width_mm, paper.height_mm, tuple(everything))

    def _captions(self, placed: list[Placed]) -> list[Placed]:
        found = []
        for one in placed:
            if one.view.name in {"plan", "ceiling", "long", "cross"}:
                caption = blocks.caption(one.view, self.units)
                found.append(Placed(caption, one.x_mm, one.y_mm - _CAPTION_MM))
        return found
