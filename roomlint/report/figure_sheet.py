"""The figures of a room as text or as JSON."""

from __future__ import annotations

import json
import textwrap
from typing import TYPE_CHECKING, Final

from roomlint.measure.sheet import Lacking
from roomlint.report.names import key_words
from roomlint.report.units import METRIC, Units
from roomlint.report.wishes import WIDTH
from roomlint.source.say import one_line

if TYPE_CHECKING:
    from collections.abc import Iterable

    from roomlint.measure.names import Named
    from roomlint.measure.sheet import Cell, Table

NONE: Final = "-"
WHOLE: Final = "\N{NO-BREAK SPACE}"
"""Where a line is not folded."""
LENGTHS: Final = frozenset({"m", "mm", "ft", "in"})
"""Units that a length and its uncertainty may differ in."""
TOLD: Final = 5e-4
"""The share of a figure from which its uncertainty is worth a column."""


def sheet_text(title: str, tables: list[Table], units: str = METRIC, width: int = WIDTH) -> str:
    """Return the tables as aligned text; what lacks an input is a dash, and what lacks is listed below.

    A table that is wider than the page is written row by row, each figure after its name.
    """
    told = Units(units)
    lines = _wrapped(title, width)
    for table in tables:
        body = [(name, [_cell(cell, told) for cell in cells]) for name, cells in table.rows]
        across = _across(table, body)
        lines += ["", *_wrapped(table.title, width)]
        lines += across if max(map(len, across)) <= width else _down(table, body, width)
        needs: dict[tuple[str, str], list[str]] = {}
        for name, row_cells in table.rows:
            for cell in row_cells:
                if isinstance(cell, Lacking) and cell.key:
                    needs.setdefault((cell.element, key_words(cell.below) or cell.key), []).append(name)
        rows = {name.split()[0]: name for name, _ in table.rows}
        lacks: dict[str, dict[str, None]] = {}
        for (element, words), names in needs.items():
            # What another row's element lacks is told of that one, once.
            for name in [rows.get(element, element)] if element else names:
                lacks.setdefault(name, {})[words] = None
        for name, keys in lacks.items():
            lines += _wrapped(f"  {one_line(name)}: not known: {', '.join(keys)}", width)
    if not tables:
        lines += ["", *_wrapped("Nothing to compute yet: give seats and loudspeakers with their positions.", width)]
    return "\n".join(lines) + "\n"


def _across(table: Table, body: list[tuple[str, list[str]]]) -> list[str]:
    """Return a table as columns; a column that nothing is known of is left to the list below."""
    known = [index for index in range(len(table.columns)) if any(cells[index] != NONE for _, cells in body)]
    rows = [("", *(table.columns[index] for index in known))]
    rows += [(name, *(cells[index] for index in known)) for name, cells in body]
    widths = [max(len(row[column]) for row in rows) for column in range(len(rows[0]))]
    return [f"  {'  '.join(cell.ljust(size) for cell, size in zip(row, widths, strict=True))}".rstrip() for row in rows]


def _down(table: Table, body: list[tuple[str, list[str]]], width: int) -> list[str]:
    """Return a table as rows that fold between figures: what is not known is left to the list below."""
    lines = []
    for name, cells in body:
        told = [f"{column} {cell}" for column, cell in zip(table.columns, cells, strict=True) if cell != NONE]
        whole = [one.replace(" ", WHOLE) for one in told]
        lines += [line.replace(WHOLE, " ") for line in _wrapped(f"  {name}: {'; '.join(whole) or NONE}", width)]
    return lines


def _wrapped(text: str, width: int) -> list[str]:
    """Return a line folded to the page; what follows stands deeper."""
    indent = " " * (len(text) - len(text.lstrip()))
    return textwrap.wrap(
        text.strip(), width, initial_indent=indent, subsequent_indent=f"{indent}    ",
        break_on_hyphens=False, break_long_words=False,
    )  # fmt: skip


def _cell(cell: Cell, units: Units) -> str:
    if isinstance(cell, Lacking):
        return NONE
    if isinstance(cell, str):
        return one_line(cell)
    scale = units.of([cell])
    text = scale.figures([cell])
    if cell.u <= TOLD * abs(cell.value):
        return text
    spread, _, unit = scale.spread().rpartition(" ")
    if unit not in LENGTHS and f" {unit}" in text:
        # Columns are narrow: the unit is written once.
        return text.replace(f" {unit}", f" {spread} {unit}", 1)
    return f"{text} {spread} {unit}"


def sheet_json(file: str, tables: list[Table]) -> str:
    """Return the tables as JSON.

    A figure is an object with value, unit and uncertainty, a name is text, and what lacks names the key.
    """
    data = {
        "file": file,
        "tables": [
            {
                "title": table.title,
                "rows": [
                    {"name": name, **{column: _object(cell) for column, cell in zip(table.columns, cells, strict=True)}}
                    for name, cells in table.rows
                ],
            }
            for table in tables
        ],
    }
    return json.dumps(data, indent=1, ensure_ascii=False) + "\n"


def _object(cell: Cell) -> dict[str, object] | str:
    if isinstance(cell, str):
        return cell
    if isinstance(cell, Lacking):
        return {"lacks": cell.key}
    made: dict[str, object] = {"value": round(cell.value, 6), "unit": cell.unit, "uncertainty": round(cell.u, 6)}
    return {**made, "assumes": list(cell.assumes)} if cell.assumes else made


def names_text(named: Iterable[Named]) -> str:
    """Return the figures that a house file's window rules can name."""
    rows = [(entry.name, entry.unit or "-", ", ".join(entry.of), entry.means) for entry in named]
    widths = [max(len(row[column]) for row in rows) for column in range(3)]
    lines = [
        f"{name.ljust(widths[0])}  {unit.ljust(widths[1])}  {of.ljust(widths[2])}  {means}"
        for name, unit, of, means in rows
    ]
    return "\n".join(lines) + "\n"
