"""The figures of a room as text or as JSON."""

from __future__ import annotations

import json
from typing import TYPE_CHECKING

from roomlint.measure.sheet import Lacking

if TYPE_CHECKING:
    from collections.abc import Iterable

    from roomlint.measure.figure import Figure
    from roomlint.measure.names import Named
    from roomlint.measure.sheet import Table


def sheet_text(title: str, tables: list[Table]) -> str:
    """Return the tables as aligned text; what lacks an input is a dash, and the keys that lack are listed below."""
    lines = [title]
    for table in tables:
        head = ("", *table.columns)
        body = [(name, *(_cell(cell) for cell in cells)) for name, cells in table.rows]
        widths = [max(len(row[column]) for row in (head, *body)) for column in range(len(head))]
        lines += ["", table.title]
        for row in (head, *body):
            cells = (cell.ljust(width) for cell, width in zip(row, widths, strict=True))
            lines.append(f"  {'  '.join(cells)}".rstrip())
        lacking = dict.fromkeys(
            cell.key for _, cells in table.rows for cell in cells if isinstance(cell, Lacking) and cell.key
        )
        lines += [f"  needs {key}" for key in lacking]
    if not tables:
        lines += ["", "Nothing to compute yet: give seats and loudspeakers with their positions."]
    return "\n".join(lines) + "\n"


def _cell(cell: Figure | Lacking) -> str:
    return "-" if isinstance(cell, Lacking) else str(cell)


def sheet_json(file: str, tables: list[Table]) -> str:
    """Return the tables as JSON; a figure is an object with value, unit and uncertainty, what lacks names the key."""
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


def _object(cell: Figure | Lacking) -> dict[str, object]:
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
