"""Writes drawings as one page that needs nothing else: no network, no server; a review's every word is escaped."""

from __future__ import annotations

import base64
import hashlib
from importlib import resources
from typing import TYPE_CHECKING, Any, Final

from roomlint.report.drawing import blocks
from roomlint.report.drawing.findings import LEVELS, SAID
from roomlint.report.drawing.paper import scale_words
from roomlint.report.drawing.plots import Axes
from roomlint.report.drawing.shapes import Mark, View
from roomlint.report.drawing.svg import PATTERN, Writer, legible, number, style
from roomlint.source.dimensions import decimals
from roomlint.source.say import one_line

if TYPE_CHECKING:
    from collections.abc import Iterator

    from roomlint.measure.scene import Chart
    from roomlint.report.drawing.findings import Finding
    from roomlint.report.drawing.sheets import Drawing

SHOWN: Final = (
    ("mark", "findings"),
    ("window", "windows and remedies"),
    ("dimension", "dimensions"),
    ("cover", "coverage and axes"),
    ("sight", "sight lines"),
)
"""Groups of layers that a reader can take away, and what they are called."""
_CSS_SIZES: Final = {"A3": "A3 landscape", "A4": "A4 landscape", "tabloid": "17in 11in", "letter": "letter landscape"}


def html_report(drawings: list[Drawing], title: str, against: str) -> Iterator[str]:
    """Yield a page with the drawings of all rooms."""
    from jinja2 import Environment, StrictUndefined
    from markupsafe import Markup

    here = resources.files("roomlint.report.drawing")
    script = (here / "page.js").read_text(encoding="utf-8")
    paper = drawings[0].paper.name if drawings else "A3"
    css = style() + (here / "page.css").read_text(encoding="utf-8").replace("PAPER", _CSS_SIZES[paper])
    environment = Environment(autoescape=True, undefined=StrictUndefined, trim_blocks=True, lstrip_blocks=True)
    template = environment.from_string((here / "page.html").read_text(encoding="utf-8"))
    yield template.render(
        title=legible(title), css=Markup(css), script=Markup(script), pattern=Markup(PATTERN),  # noqa: S704  our own
        script_hash=base64.b64encode(hashlib.sha256(script.encode()).digest()).decode(), layers=SHOWN,
        who=blocks.WHO_DECIDES, rooms=[_room(drawing, legible(against)) for drawing in drawings],
    )  # fmt: skip


def _room(drawing: Drawing, against: str) -> dict[str, Any]:
    from markupsafe import Markup

    room, units = drawing.room, drawing.units
    writer = Writer(drawing.names, interactive=True)
    cells = blocks.title_cells(
        room, drawing.scene, units, scale=scale_words(drawing.views.plan.scale, units), sheet="", title="",
        paper=drawing.paper.name, found=drawing.found,
    )  # fmt: skip
    key = blocks.key(110.0)
    return {
        "prefix": drawing.prefix,
        "code": legible(one_line(room.code)),
        "title": legible(one_line(room.title or room.file)),
        "cells": [(label, legible(value)) for label, value in cells if value],
        "against": against if room.compared else "",
        "views": [_view(view.whole(), writer, drawing) for view in drawing.views.all],
        "charts": [
            _chart(chart, view, writer) for chart, view in zip(drawing.charts, drawing.views.charts, strict=True)
        ],
        "setting_out": [tuple(map(legible, row)) for row in blocks.setting_out_rows(drawing.scene, units)],
        "groups": [
            (heading, level, [_finding(one, drawing) for one in drawing.listing.of(level)])
            for level, heading in LEVELS.items()
            if drawing.listing.of(level)
        ],
        "cautions": [(mark, legible(text)) for mark, text in drawing.listing.cautions],
        "key": Markup(  # noqa: S704  what the writer writes is escaped
            f'<svg xmlns="http://www.w3.org/2000/svg" role="img" aria-label="Signs of the drawing" viewBox="0 0 '
            f'{number(key.size_mm[0])} {number(key.size_mm[1])}">{_body(key, Writer())}</svg>'
        ),
    }


def _body(view: View, writer: Writer) -> str:
    return "\n".join(writer.view(view))


def _view(view: View, writer: Writer, drawing: Drawing) -> dict[str, Any]:
    from markupsafe import Markup

    wide, high = view.size_mm
    return {
        "name": view.name,
        "title": view.title,
        "scale": scale_words(view.scale, drawing.units),
        "width": number(wide),
        "height": number(high),
        "about": legible(view.about),
        "body": Markup(_body(view, writer)),  # noqa: S704  what the writer writes is escaped
    }


def _chart(chart: Chart, view: View, writer: Writer) -> dict[str, Any]:
    from markupsafe import Markup

    wide, high = view.size_mm
    axes = Axes(chart, wide, high)
    curves = [curve for curve in chart.curves if curve.role != "limit"]
    xs = {x for curve in curves for x, _ in curve.points}
    values = [dict(curve.points) for curve in curves]
    places = decimals(chart.y.unit)
    unknown = {x for x, _, _ in chart.unknown}
    rows = [
        (
            f"{x:g}",
            legible(chart.x.names[int(x)]) if chart.x.names else f"{x:g}",
            [f"{of[x]:.{places}f}" if x in of else "not known" if x in unknown else "" for of in values],
        )
        for x in sorted({*xs, *unknown})
    ]
    heads = [f"{chart.x.name}, {chart.x.unit}".rstrip(", ")]
    heads += [legible(f"{curve.name}, {chart.y.unit}".rstrip(", ")) for curve in curves]
    return {
        "name": view.name,
        "title": view.title,
        "width": number(wide),
        "height": number(high),
        "about": view.about,
        "body": Markup(_body(view, writer)),  # noqa: S704  what the writer writes is escaped
        "left": number(axes.left),
        "wide": number(axes.wide),
        "low": number(chart.x.low),
        "high": number(chart.x.high),
        "octave": int(chart.x.by_octave),
        "top": number(high - axes.below - axes.high),
        "bottom": number(high - axes.below),
        "heads": heads,
        "rows": rows,
    }


def _finding(one: Finding, drawing: Drawing) -> dict[str, Any]:
    from markupsafe import Markup

    mark = ""
    if one.is_marked:
        sign = View("sign", "", 1000.0, (-3.5, -3.5), (3.5, 3.5), (Mark((0.0, 0.0), one.number, one.level, ""),))
        mark = Markup(  # noqa: S704  what the writer writes is escaped
            f'<svg viewBox="0 0 7 7" aria-hidden="true" focusable="false">{_body(sign, Writer())}</svg>'
        )
    return {
        "id": one.id,
        "number": one.number,
        "level": one.level,
        "said": SAID[one.level],
        "text": legible(" ".join((one.text, *one.marks))),
        "actions": [legible(action) for action in one.actions],
        "rules": ", ".join(one.rules),
        "elements": legible(" ".join(drawing.elements(one))),
        "mark": mark,
    }
