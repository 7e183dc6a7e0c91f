"""The figures of a room as text or as JSON."""

from __future__ import annotations

import json
from typing import TYPE_CHECKING, Final

from roomlint.measure.sheet import Lacking
from roomlint.report.names import key_words
from roomlint.report.units import METRIC, Units
from roomlint.source.say import one_line

if TYPE_CHECKING:
    from collections.abc import Iterable

    from roomlint.measure.names import Named
    from roomlint.measure.sheet import Cell, Table

TOLD: Final = 5e-4
"""The share of a figure from which its uncertainty is worth a column."""


def sheet_text(title: str, tables: list[Table], units: str = METRIC) -> str:
    """Return the tables as aligned text; what lacks an input is a dash, and what lacks is listed below."""
    told = Units(units)
    lines = [title]
    for table in tables:
        head = ("", *table.columns)
        body = [(name, *(_cell(cell, told) for cell in cells)) for name, cells in table.rows]
        widths = [max(len(row[column]) for row in (head, *body)) for column in range(len(head))]
        lines += ["", table.title]
        for row in (head, *body):
            cells = (cell.ljust(width) for cell, width in zip(row, widths, strict=True))
            lines.append(f"  {'  '.join(cells)}".rstrip())
        for name, row_cells in table.rows:
            keys = dict.fromkeys(_words(cell.key) for cell in row_cells if isinstance(cell, Lacking) and cell.key)
            if keys:
                lines.append(f"  {name} needs {', '.join(keys)}")
    if not tables:
        lines += ["", "Nothing to compute yet: give seats and loudspeakers with their positions."]
    return "\n".join(lines) + "\n"


def _cell(cell: Cell, units: Units) -> str:
    if isinstance(cell, Lacking):
        return "-"
    if isinstance(cell, str):
        return one_line(cell)
    scale = units.of([cell])
    text = scale.figures([cell])
    return f"{text} {scale.spread()}" if cell.u > TOLD * abs(cell.value) else text


def _words(lacks: str) -> str:
    """Return what lacks in words: a key's path loses its place in the list, which the row's name tells."""
    return key_words(lacks.rpartition("]")[2].lstrip(".")) if "[" in lacks else lacks


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
