"""Plots a chart as a view: axes with units, curves told apart by their dashes, a spread, upright lines, targets."""

from __future__ import annotations

import math
from dataclasses import replace
from typing import TYPE_CHECKING, Final

from roomlint.measure.scene import Curve
from roomlint.report.drawing.pen import Pen
from roomlint.report.drawing.shapes import width_mm
from roomlint.report.names import key_words

if TYPE_CHECKING:
    from collections.abc import Iterable

    from roomlint.measure.scene import Ax, Chart, Spot2
    from roomlint.report.drawing.shapes import View
    from roomlint.report.units import Units
    from roomlint.review.verdict import Verdict

LEFT_MM: Final = 14.0
BELOW_MM: Final = 13.0
ABOVE_MM: Final = 9.0
RIGHT_MM: Final = 34.0
CURVES: Final = ("curve-1", "curve-2", "curve-3", "curve-4", "curve-5", "curve-6")
_THIRDS: Final = (10, 12.5, 16, 20, 25, 31.5, 40, 50, 63, 80, 100, 125, 160, 200, 250, 315, 400, 500, 630, 800, 1000,
                  1250, 1600, 2000, 2500, 3150, 4000, 5000, 6300, 8000, 10000, 16000)  # fmt: skip
"""Nominal third-octave frequencies (ISO 266)."""
_STEPS: Final = (0.05, 0.1, 0.2, 0.25, 0.5, 1.0, 2.0, 3.0, 5.0, 6.0, 10.0, 12.0, 20.0, 50.0, 100.0)
_MOST_TICKS: Final = 9
_NAME_MM: Final = 2.0
"""Size of the names along an axis of names."""
_NOTE_MM: Final = 5.5
"""What the notes below a chart take, with what is kept clear about them."""
_SIGN_MM: Final = 1.1
"""Half the size of the sign of a value."""
_LETTERS_A_MM: Final = 1.0
"""How many letters of the notes below a chart stand on a millimetre."""


def with_limits(chart: Chart, verdicts: Iterable[Verdict], units: Units) -> Chart:
    """Return a chart with the edges of the window that the review held its figure against, where it did."""
    windows = (one.window for one in verdicts if one.figure is not None and one.figure.name == chart.judged)
    window = next((window for window in windows if window is not None), None) if chart.judged else None
    if window is None or not chart.is_known:
        return chart
    low, high = chart.judged_over
    edges = ((window.low, "at least"), (window.high, "at most"))
    limits = tuple(
        Curve(f"{said} {units.number(edge, window.unit)}", ((low, edge), (high, edge)), role="limit")
        for edge, said in edges
        if edge is not None
    )
    return replace(chart, curves=(*chart.curves, *limits))


class Axes:
    """Where the values of a chart are in a plot of a size, mm."""

    def __init__(self, chart: Chart, wide_mm: float, high_mm: float) -> None:
        self.chart = chart
        named = max((width_mm(name, _NAME_MM) for name in chart.x.names), default=0.0)
        self.left, self.below = LEFT_MM, max(BELOW_MM, named + _NOTE_MM)
        self.wide = wide_mm - LEFT_MM - RIGHT_MM
        self.high = high_mm - self.below - ABOVE_MM

    def x(self, value: float) -> float:
        """Return where a value of the level axis is."""
        return self.left + self.wide * _share(self.chart.x, value)

    def y(self, value: float) -> float:
        """Return where a value of the upright axis is, no farther out than the plot."""
        return self.below + self.high * min(1.0, max(0.0, _share(self.chart.y, value)))

    def spot(self, point: Spot2) -> Spot2:
        """Return where a point is."""
        return self.x(point[0]), self.y(point[1])


def _share(ax: Ax, value: float) -> float:
    if ax.by_octave:
        return math.log(value / ax.low) / math.log(ax.high / ax.low)
    return (value - ax.low) / (ax.high - ax.low)


def ticks(ax: Ax) -> list[float]:
    """Return the values that an axis writes: third octaves, or round steps."""
    if ax.by_octave:
        return [float(hz) for hz in _THIRDS if ax.low <= hz <= ax.high]
    step = next((step for step in _STEPS if (ax.high - ax.low) / step <= _MOST_TICKS), _STEPS[-1])
    first = math.ceil(ax.low / step - 1e-9)
    return [round(step * number, 6) for number in range(first, math.floor(ax.high / step + 1e-9) + 1)]


def plot(chart: Chart, units: Units, wide_mm: float, high_mm: float) -> View:
    """Return a chart as a view in millimetres of the paper."""
    pen = Pen(1000.0, units)
    axes = Axes(chart, wide_mm, high_mm)
    x0, x1, y0, y1 = axes.left, axes.left + axes.wide, axes.below, axes.below + axes.high
    pen.words((x0, y1 + 3.0), chart.title, 2.9, anchor="start", bold=True)
    if not chart.is_known:
        corners = ((x0, y0), (x1, y0), (x1, y1), (x0, y1))
        pen.path(corners, "unknown", closed=True, fill="hatch")
        who, what = chart.lacks
        text = f"Not known: {who}: {key_words(what)}" if what else f"Not told: {who}"
        middle = ((x0 + x1) / 2.0, (y0 + y1) / 2.0)
        pen.path([(x0 + 2, middle[1] - 4), (x1 - 2, middle[1] - 4), (x1 - 2, middle[1] + 4), (x0 + 2, middle[1] + 4)],
                 "dimension", closed=True, fill="paper")  # fmt: skip
        pen.words(middle, text[:110], 2.4, shift_mm=(0.0, -0.8))
        return _view(pen, chart, wide_mm, high_mm)
    _grid(pen, axes)
    if chart.spread:
        lower = [axes.spot((x, low)) for x, low, _ in chart.spread]
        upper = [axes.spot((x, high)) for x, _, high in chart.spread]
        pen.path((*lower, *reversed(upper)), "spread", closed=True, fill="sheet")
    for value, _ in chart.uprights:
        pen.path(((axes.x(value), y0), (axes.x(value), y1)), "upright")
    if chart.x.names:
        _named(pen, axes)
    else:
        _lines(pen, axes)
    notes = [
        f"tinted: {chart.spread_name}" if chart.spread else "",
        f"upright lines: {chart.uprights_name}" if chart.uprights else "",
        _not_known(chart.unknown),
        _assumed(chart.assumes, wide_mm),
    ]
    text = " · ".join(note for note in notes if note)
    pen.words((x0, 1.0), text, 1.8, anchor="start", layer="dimension")
    return _view(pen, chart, wide_mm, high_mm)


def _lines(pen: Pen, axes: Axes) -> None:
    """Draw the curves as lines, each with its name at its end."""
    chart, x1 = axes.chart, axes.left + axes.wide
    places = _ends(axes)
    for number, curve in enumerate(chart.curves):
        layer = CURVES[number % len(CURVES)] if curve.role == "curve" else "window"
        pen.path([axes.spot(point) for point in curve.points], layer, key=curve.key)
        end = axes.spot(curve.points[-1])
        leader = layer if end[0] >= x1 else "dimension"  # a limit ends where what it is of ends
        pen.path((end, (x1 + 3.0, places[number])), leader, key=curve.key)
        pen.words((x1 + 3.6, places[number] - 0.7), curve.name, 2.0, anchor="start", key=curve.key)


def _named(pen: Pen, axes: Axes) -> None:
    """Draw values over names: a sign for each, told apart by its shape, and a bar where it is what is asked for."""
    chart = axes.chart
    step = axes.wide / len(chart.x.names)
    low, high = axes.below, axes.below + axes.high
    for value, _, _ in chart.unknown:
        sides = axes.x(value) - 0.4 * step, axes.x(value) + 0.4 * step
        corners = [(sides[0], low), (sides[1], low), (sides[1], high), (sides[0], high)]
        pen.path(corners, "unknown", closed=True, fill="hatch")
    for number in range(len(chart.x.names)):
        there = [axes.y(y) for curve in chart.curves if curve.role == "curve" for x, y in curve.points if x == number]
        if len(there) > 1:
            pen.path(((axes.x(number), min(there)), (axes.x(number), max(there))), "dimension")
    signs = 0
    for number, curve in enumerate(chart.curves):
        beside = (axes.left + axes.wide + 5.0, high - 3.0 - 5.0 * number)
        for at in (*map(axes.spot, curve.points), beside):
            if curve.role == "curve":
                _sign(pen, at, signs)
            else:
                half = 2.6 if at is beside else 0.42 * step
                pen.path(((at[0] - half, at[1]), (at[0] + half, at[1])), "window")
        signs += curve.role == "curve"
        pen.words((beside[0] + 4.0, beside[1] - 0.7), curve.name, 2.0, anchor="start")


def _sign(pen: Pen, at: Spot2, number: int) -> None:
    x, y = at
    if number == 0:
        pen.arc(at, _SIGN_MM, "curve-1", fill="solid")
        return
    corners = ((x - _SIGN_MM, y - _SIGN_MM), (x + _SIGN_MM, y - _SIGN_MM), (x + _SIGN_MM, y + _SIGN_MM),
               (x - _SIGN_MM, y + _SIGN_MM))  # fmt: skip
    pen.path(corners, "curve-1", closed=True, fill="paper")


def _not_known(unknown: tuple[tuple[float, str, str], ...]) -> str:
    """Return what is lacking where columns are hatched, the first of it in words."""
    if not unknown:
        return ""
    _, who, what = unknown[0]
    more = f" and {len(unknown) - 1} more" if len(unknown) > 1 else ""
    return f"hatched: not known, {who}{': ' if what else ''}{key_words(what) if what else ''}{more}"


def _assumed(assumes: tuple[str, ...], wide_mm: float) -> str:
    """Return what a chart assumes, as much as a line beside the other notes holds, and how much more there is."""
    shown: list[str] = []
    left = int(wide_mm * _LETTERS_A_MM / 2)
    for words in assumes:
        left -= len(words) + 2
        if shown and left < 0:
            break
        shown.append(words)
    more = f" and {len(assumes) - len(shown)} more" if len(shown) < len(assumes) else ""
    return f"assumed: {'; '.join(shown)}{more}" if assumes else ""


def _grid(pen: Pen, axes: Axes) -> None:
    chart = axes.chart
    x0, x1, y0, y1 = axes.left, axes.left + axes.wide, axes.below, axes.below + axes.high
    for number, name in enumerate(chart.x.names):
        pen.words((axes.x(number) + 0.3 * _NAME_MM, y0 - 1.5), name, _NAME_MM, anchor="end", turn_deg=90.0)
    for value in () if chart.x.names else ticks(chart.x):
        x = axes.x(value)
        pen.path(((x, y0), (x, y1)), "grid")
        pen.words((x, y0 - 3.4), f"{value:g}", 2.0)
    for value in ticks(chart.y):
        y = axes.y(value)
        pen.path(((x0, y), (x1, y)), "grid")
        pen.words((x0 - 1.2, y - 0.7), f"{value:g}", 2.0, anchor="end")
    pen.path(((x0, y0), (x1, y0), (x1, y1), (x0, y1)), "opening", closed=True)
    if not chart.x.names:
        pen.words(((x0 + x1) / 2.0, y0 - 7.0), f"{chart.x.name}, {chart.x.unit}".rstrip(", "), 2.2)
    name = f"{chart.y.name}, {chart.y.unit}".rstrip(", ")
    pen.words((4.0, (y0 + y1) / 2.0), name, 2.2, turn_deg=90.0)


def _ends(axes: Axes) -> list[float]:
    """Return where the names of the curves stand at the right, none on another."""
    from roomlint.report.drawing.dimensions import spread

    ends = [axes.y(curve.points[-1][1]) for curve in axes.chart.curves]
    order = sorted(range(len(ends)), key=lambda number: ends[number])
    places = spread([ends[number] for number in order], 2.9, axes.below, axes.below + axes.high)
    found = dict(zip(order, places, strict=True))
    return [found[number] for number in range(len(ends))]


def _view(pen: Pen, chart: Chart, wide_mm: float, high_mm: float) -> View:
    about = f"{chart.title}; the values stand in the table below it." if chart.is_known else chart.title
    return pen.view(f"chart-{chart.key}", chart.title, (0.0, 0.0), (wide_mm, high_mm), about)
