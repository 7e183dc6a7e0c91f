"""What stands on a sheet beside the views: frame, title block, key, captions, the findings in words, the setting out.

All of it is drawn in millimetres of the paper: a view at 1:1000 whose metres are them.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Final, TypeAlias

from roomlint.report.drawing.findings import LEVELS
from roomlint.report.drawing.paper import BINDING_MM, MARGIN_MM, scale_words
from roomlint.report.drawing.pen import Pen, lengths
from roomlint.report.drawing.shapes import Mark, width_mm
from roomlint.report.words import count_of
from roomlint.source.say import one_line

if TYPE_CHECKING:
    from roomlint.measure.scene import Scene
    from roomlint.report.drawing.findings import Listing
    from roomlint.report.drawing.paper import Paper
    from roomlint.report.drawing.shapes import View
    from roomlint.report.units import Units
    from roomlint.review.review import RoomReview

TITLE_MM: Final = 44.0
PAPER_SCALE: Final = 1000.0
WHO_DECIDES: Final = (
    "Set out from the design file, screening arithmetic only. The lead decides the design; load paths, mains,"
    " fire and escape are for licensed engineers and electricians and the local code official."
)
_TEXT_MM: Final = 2.1
_LEAD: Final = 1.32
"""From line to line, in sizes of the text."""
_MARKED_MM: Final = 7.0
_IN_LIST: Final = 0.72
"""How large a mark is in the list."""
_ROW_MM: Final = 3.6
_LEAST_ROWS: Final = 3
Row: TypeAlias = tuple[str, str, str, str]
"""What stands somewhere, from the left, from the front, height."""


@dataclass(frozen=True, slots=True)
class TextLine:
    """One line of the findings."""

    text: str
    size_mm: float = _TEXT_MM
    bold: bool = False
    indent_mm: float = 0.0
    above_mm: float = 0.0
    mark: tuple[str, str, str] | None = None
    """Number, level and id of the finding that begins here."""

    @property
    def high_mm(self) -> float:
        """How much of the column it takes."""
        return self.above_mm + self.size_mm * _LEAD


def wrapped(text: str, wide_mm: float, size_mm: float) -> list[str]:
    """Return a text in lines of a width; a word that is wider is cut."""
    lines, line = [], ""
    for word in one_line(text).split(" "):
        while width_mm(word, size_mm) > wide_mm and len(word) > 1:
            fits = max(1, int(len(word) * wide_mm / width_mm(word, size_mm)) - 1)
            if line:
                lines.append(line)
                line = ""
            lines.append(word[:fits])
            word = word[fits:]  # noqa: PLW2901  what is left of it
        wider = f"{line} {word}".strip()
        if line and width_mm(wider, size_mm) > wide_mm:
            lines.append(line)
            line = word
        else:
            line = wider
    return [*lines, line] if line else lines


def finding_lines(listing: Listing, wide_mm: float) -> list[TextLine]:
    """Return the findings as lines of a column, each level under its heading, the cautions last."""
    lines: list[TextLine] = []
    for level, heading in LEVELS.items():
        found = listing.of(level)
        if found:
            lines.append(TextLine(f"{heading}: {len(found)}", 2.6, bold=True, above_mm=2.2))
        for one in found:
            indent = _MARKED_MM if one.is_marked else 2.0
            told = wrapped(" ".join((one.text, *one.marks)), wide_mm - indent, _TEXT_MM)
            for number, line in enumerate(told):
                mark = (one.number, one.level, one.id) if one.is_marked and number == 0 else None
                above = 1.3 if number == 0 and one.is_marked else 0.6 if number == 0 else 0.0
                lines.append(TextLine(line, indent_mm=indent, above_mm=above, mark=mark))
            for action in one.actions:
                for number, line in enumerate(wrapped(action, wide_mm - indent - 3.0, _TEXT_MM)):
                    sign = "> " if number == 0 else "   "
                    lines.append(TextLine(f"{sign}{line}", indent_mm=indent))
    for letter, text in listing.cautions:
        for number, line in enumerate(wrapped(f"{letter} {text}", wide_mm, 1.9)):
            lines.append(TextLine(line, 1.9, above_mm=1.2 if number == 0 else 0.0))
    return lines


def taken(lines: list[TextLine], high_mm: float) -> int:
    """Return how many lines a height takes; a finding's first line is not parted from its second, nor a heading."""
    used, many = 3.0, 0
    for line in lines:
        used += line.high_mm
        if used > high_mm:
            break
        many += 1
    while 0 < many < len(lines) and (lines[many - 1].bold or lines[many - 1].mark is not None):
        many -= 1
    return many


def text_block(lines: list[TextLine], wide_mm: float) -> View:
    """Return lines as a block."""
    pen = _pen()
    y = 0.0
    for line in lines:
        y -= line.high_mm
        if line.mark is not None:
            number, level, of = line.mark
            pen.items.append(Mark((4.6, y + 0.75), number, level, of, size=_IN_LIST))
        pen.words((2.0 + line.indent_mm, y), line.text, line.size_mm, anchor="start", bold=line.bold)
    return pen.view("words", "", (0.0, y - 2.0), (wide_mm, 0.0), "")


def _pen() -> Pen:
    from roomlint.report.units import Units

    return Pen(PAPER_SCALE, Units())


def frame(paper: Paper, left_mm: float) -> View:
    """Return the frame of a sheet, the line of its column of words, and the marks for folding and centring."""
    pen = _pen()
    w, h = paper.width_mm, paper.height_mm
    inside = (
        (BINDING_MM, MARGIN_MM),
        (w - MARGIN_MM, MARGIN_MM),
        (w - MARGIN_MM, h - MARGIN_MM),
        (BINDING_MM, h - MARGIN_MM),
    )
    pen.path(inside, "frame", closed=True)
    pen.path(((left_mm, MARGIN_MM), (left_mm, h - MARGIN_MM)), "dimension")
    for x in (w / 2.0,):
        pen.path(((x, h - MARGIN_MM), (x, h - 5.0)), "frame")
        pen.path(((x, MARGIN_MM), (x, 5.0)), "frame")
    return pen.view("frame", "", (0.0, 0.0), (w, h), "")


def caption(view: View, units: Units) -> View:
    """Return the title of a view with its scale."""
    pen = _pen()
    pen.words((2.0, 1.5), view.title, 3.2, anchor="start", bold=True)
    after = 2.0 + 1.1 * width_mm(view.title, 3.2) + 3.0
    pen.words((after, 1.5), scale_words(view.scale, units), 2.3, anchor="start", layer="dimension")
    return pen.view("caption", "", (0.0, 0.0), (140.0, 7.0), "")


def title_block(
    wide_mm: float,
    room: RoomReview,
    scene: Scene,
    units: Units,
    *,
    title: str,
    scale: str,
    sheet: str,
    paper: str,
    found: str,
) -> View:
    """Return the title block: which job, which sheet, how far it holds, and who decides."""
    pen = _pen()
    high = TITLE_MM
    pen.path(((0.0, high), (wide_mm, high)), "frame")
    name = one_line(room.title) or one_line(room.file)
    pen.words((2.5, high - 5.5), one_line(room.code) or "no code", 3.6, anchor="start", bold=True)
    lines = wrapped(name, wide_mm - 5.0, 2.9)[:2]
    for number, line in enumerate(lines):
        pen.words((2.5, high - 10.0 - 3.9 * number), line, 2.9, anchor="start")
    top = high - 16.5
    cells = title_cells(room, scene, units, scale=scale, sheet=sheet, title=title, paper=paper, found=found)
    column = wide_mm / 4.0
    for number, (label, value) in enumerate(cells):
        row, at = divmod(number, 4)
        x, y = at * column, top - 8.0 * row
        pen.path(((x, y), (x + column, y)), "dimension")
        if at:
            pen.path(((x, y), (x, y - 8.0)), "dimension")
        pen.words((x + 1.5, y - 2.6), label, 1.6, anchor="start", layer="dimension")
        size = min(2.3, 2.3 * (column - 2.5) / max(width_mm(value, 2.3), 0.1))
        pen.words((x + 1.5, y - 6.3), value, size, anchor="start")
    pen.path(((0.0, top - 16.0), (wide_mm, top - 16.0)), "dimension")
    for number, line in enumerate(wrapped(WHO_DECIDES, wide_mm - 4.0, 1.75)):
        pen.words((2.0, top - 18.8 - 2.3 * number), line, 1.75, anchor="start", layer="dimension")
    return pen.view("title", "", (0.0, 0.0), (wide_mm, high), "")


def title_cells(
    room: RoomReview, scene: Scene, units: Units, *, scale: str, sheet: str, title: str, paper: str, found: str
) -> list[tuple[str, str]]:
    """Return what the title block's cells hold."""
    tolerance = f"± {units.number(scene.tolerance_m, 'm')}" if scene.tolerance_m is not None else "not stated"
    return [
        ("stage", one_line(room.stage or "not stated")),
        ("measured on", scene.surveyed_on or "not stated"),
        ("lengths good to", tolerance),
        ("errors / warnings", found),
        ("sheet", f"{sheet}"),
        ("shows", title),
        ("scale", scale or "none"),
        ("paper", paper),
    ]


def key(wide_mm: float) -> View:
    """Return the key: what the signs, lines and marks mean."""
    pen = _pen()
    rows = [
        ("speaker", "loudspeaker; broad face is its front, chain line its axis"),
        ("hidden", "overhead, or before the cut"),
        ("cover", "nominal coverage"),
        ("sight", "edges of the picture seen from the reference seat"),
        ("window", "where a finding's window is"),
        ("cure", "a place or a panel that would clear a finding"),
        ("unknown", "hatched and dotted: size or aim not known, an ordinary one drawn"),
        ("earlier", "where it was in the earlier revision"),
    ]
    y = -5.0
    pen.words((2.0, y), "Key", 2.6, anchor="start", bold=True)
    for layer, words in rows:
        y -= _ROW_MM
        if layer in {"speaker", "unknown"}:
            fill = "hatch" if layer == "unknown" else "paper"
            pen.path(((3.0, y), (12.0, y), (12.0, y + 2.2), (3.0, y + 2.2)), layer, closed=True, fill=fill)  # type: ignore[arg-type]
        elif layer == "window":
            pen.path(((3.0, y), (12.0, y), (12.0, y + 2.2), (3.0, y + 2.2)), layer, closed=True, fill="tint")
        else:
            pen.path(((3.0, y + 1.1), (12.0, y + 1.1)), layer)
        pen.words((15.0, y + 0.4), words, 2.0, anchor="start")
    column = wide_mm / 4.0
    y -= 5.6
    for number, (level, sample) in enumerate((("error", "1"), ("warning", "2"), ("note", "3"), ("review", "A"))):
        x = 5.5 + number * column
        pen.items.append(Mark((x, y + 0.8), sample, level, ""))
        pen.words((x + 4.6, y), {"review": "to decide"}.get(level, level), 2.0, anchor="start")
    y -= 5.0
    bar = "Measured from the left and the front wall, to the acoustic centre, the ear or the lens."
    for line in wrapped(bar, wide_mm - 4.0, 1.9):
        pen.words((2.0, y), line, 1.9, anchor="start", layer="dimension")
        y -= 2.6
    return pen.view("key", "", (0.0, y), (wide_mm, 0.0), "")


def setting_out_rows(scene: Scene, units: Units) -> list[Row]:
    """Return what an installer sets out: name, from the left, from the front, height."""
    rows = []
    for thing in scene.things:
        if thing.kind in {"loudspeaker", "subwoofer", "seat", "rack", "projector"}:
            x, y, z = thing.place
            name = f"{thing.name} {thing.label}" if thing.label else thing.name
            rows.append((name, *(lengths(units, one) for one in (x, scene.length_m - y, z))))
    for flat in scene.flats:
        if flat.key.startswith("picture/"):
            xs, ys = [x for x, _ in flat.plan], [y for _, y in flat.plan]
            middle = (sum(xs) / 2.0, scene.length_m - sum(ys) / 2.0, (flat.low_m + flat.high_m) / 2.0)
            rows.append((f"{flat.name}, middle", *(lengths(units, one) for one in middle)))
    for outlet in scene.outlets:
        x, y, z = outlet.place
        name = f"receptacle {outlet.name} on {outlet.circuit}"
        rows.append((name, *(lengths(units, one) for one in (x, scene.length_m - y, z))))
    rows += [(name, "not given", "not given", "not given") for _, name in scene.unplaced]
    return [(row[0], row[1], row[2], row[3]) for row in rows]


def setting_out(
    rows: list[Row], wide_mm: float, high_mm: float, from_mm: float = 0.0
) -> tuple[list[tuple[float, float, View]], list[Row]]:
    """Return the setting-out table in as many columns as fit below a height, each with its place, and what is left."""
    column = min(128.0, wide_mm - 4.0)
    most = int((high_mm - from_mm - 14.0) / _ROW_MM)
    found, x = [], 2.0
    while rows and most >= _LEAST_ROWS and x + column <= wide_mm + 1.0:
        found.append((x, from_mm, _table(rows[:most], column)))
        rows = rows[most:]
        x += column + 4.0
    return found, rows


def _table(rows: list[Row], wide_mm: float) -> View:
    pen = _pen()
    ends = [2.0, wide_mm * 0.58, wide_mm * 0.79, wide_mm - 1.0]
    y = -5.0
    heads = (f"Setting out, {count_of(len(rows), 'thing', 'things')}", "from left", "from front", "height")
    for number, (text, x) in enumerate(zip(heads, ends, strict=True)):
        pen.words((x, y), text, 2.2, anchor="start" if number == 0 else "end", bold=True)
    pen.path(((0.0, y - 1.3), (wide_mm, y - 1.3)), "opening")
    for row in rows:
        y -= _ROW_MM
        for number, (text, x) in enumerate(zip(row, ends, strict=True)):
            pen.words((x, y - 1.0), text, 2.1, anchor="start" if number == 0 else "end")
    return pen.view("table", "", (0.0, y - 3.0), (wide_mm, 0.0), "")
