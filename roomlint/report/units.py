"""Figures and windows in the units that a room file writes: metric, or those of the United States."""

from __future__ import annotations

import math
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING, Final

from roomlint.design.quantity import Assumption
from roomlint.measure.ends import ENDS
from roomlint.source.dimensions import CONDUCTOR_M2, SHORT_M, SYMBOLS, customary, customary_difference, decimals

if TYPE_CHECKING:
    from collections.abc import Iterable

    from roomlint.measure.figure import Figure
    from roomlint.review.window import Window

US: Final = "us"
METRIC: Final = "metric"
INCH_M: Final = 0.0254
FOOT_IN: Final = 12.0
IN_INCHES_BELOW_M: Final = 2 * 0.3048
"""Up to two feet the trade writes inches."""
PARTS: Final = (1, 2, 4, 8, 16, 32, 64)
"""What an inch is told in: halves, quarters and so on."""
EXACT_PARTS: Final = 3
"""Where in `PARTS` a length stands that nothing makes uncertain: eighths."""
FINEST: Final = 5
"""So many steps finer a figure is told to keep it apart from its limit."""
FINE: Final = 0.02
COARSE: Final = 0.2
OF_A_SPAN: Final = 0.5
"""What the digits of a small number leave out of it at most: of a figure, of an uncertainty, of a span's end."""
MANY_TIMES: Final = 10.0
"""From so many times on, nobody asks for hundredths."""
AHEAD_DEG: Final = 0.05
SIDES: Final = {
    "azimuth": ("left", "right"),
    "azimuth to the left": ("left", "right"),
    "azimuth to the right": ("right", "left"),
}
"""Figures that are told with a side: what a positive and a negative number are."""
EITHER: Final = "to either side"
_NAMES: Final = {"lbf": "lb", "ft2": "sq ft", "in2": "sq in", "ft3": "cu ft", "m2": "m²", "m3": "m³", "mm2": "mm²"}
"""How the trade writes a unit in a sentence, where that is not its symbol."""
GAUGES: Final = (*((1 - size, f"{size}/0") for size in (4, 3, 2, 1)), *((size, str(size)) for size in range(1, 31)))
GAUGE_FITS: Final = 0.02
_WHOLE_INCHES_FROM: Final = 3.0
_EDGE_PARTS: Final = 4
_SAME: Final = 1e-9
_FINE_M: Final = 0.0005
_BETWEEN: Final = {("mm", "m"): 0.001, ("m", "mm"): 1000.0, ("mm²", "m2"): 1e-6}


@dataclass(frozen=True, slots=True)
class Units:
    """How numbers are written for one reader."""

    system: str = METRIC

    @property
    def is_us(self) -> bool:
        """Whether lengths are told in feet and inches."""
        return self.system == US

    def scale(self, unit: str, values: Iterable[float], u: float = 0.0) -> Scale:
        """Return how numbers of one unit are written beside each other."""
        return Scale(self, unit, max((abs(value) for value in values if math.isfinite(value)), default=0.0), u)

    def of(self, figures: Iterable[Figure], window: Window | None = None) -> Scale:
        """Return how some figures and the window that they are held against are written."""
        figures = list(figures)
        edges = [edge for edge in (window.low, window.high) if edge is not None] if window is not None else []
        unit = figures[0].unit if figures else window.unit if window is not None else ""
        values = [figure.value for figure in figures] + edges
        return self.scale(unit, values, min((figure.u for figure in figures), default=0.0))

    def number(self, value: float, unit: str, u: float = 0.0) -> str:
        """Return a number with its unit."""
        return self.scale(unit, [value], u).text(value)

    def assumption(self, words: str) -> str:
        """Return what is assumed, its amounts in these units."""
        if not self.is_us or not isinstance(words, Assumption):
            return words
        return words.form.format(*(self.number(value, unit) for value, unit in words.amounts))

    def window(self, window: Window) -> str:
        """Return a window in words."""
        return self.of((), window).window(window)

    def figure(self, figure: Figure, window: Window | None = None) -> str:
        """Return a figure with its unit, in enough digits to differ from an edge that it does not stand on."""
        scale = self.of([figure], window)
        return scale.figures([figure], window)


@dataclass(frozen=True, slots=True)
class Scale:
    """How numbers of one unit are written in one sentence: all alike."""

    units: Units
    unit: str
    largest: float
    u: float
    coarse: float = FINE
    """The share of a small number that its digits may leave out."""

    @property
    def _length_m(self) -> float | None:
        """How many metres one of the unit is; None when it is no length."""
        symbol = SYMBOLS.get(self.unit)
        return symbol.scale if symbol is not None and symbol.dimension == "length" else None

    def text(self, value: float, finer: int = 0) -> str:
        """Return a number with its unit."""
        plain, unit = self.parts(value, finer)
        return f"{plain} {unit}".rstrip()

    def parts(self, value: float, finer: int = 0) -> tuple[str, str]:
        """Return a number, and the unit that follows it; feet and inches stand in the number."""
        length = self._length_m
        if length is not None:
            return self._length(value * length, length, finer)
        if self.unit == "m2" and self.largest < CONDUCTOR_M2:
            return self._conductor(value, finer)
        if self.units.is_us and self.unit in SYMBOLS:
            value, unit = customary(value, self.unit)
        else:
            unit = self.unit
        places = decimals(unit)
        if not unit and abs(value) >= MANY_TIMES:
            places = min(places, 1)
        return self._decimal(value, places, finer), _NAMES.get(unit, unit)

    def _conductor(self, area_m2: float, finer: int) -> tuple[str, str]:
        """Return the section of a wire: by its gauge for a reader in the United States, where it is one."""
        for number, name in GAUGES if self.units.is_us and not finer else ():
            if abs(_gauge_m2(number) / area_m2 - 1.0) < GAUGE_FITS:
                return name, "AWG"
        return self._decimal(area_m2 * 1e6, 1, finer), "mm²"

    def _decimal(self, value: float, places: int, finer: int) -> str:
        text = f"{value:.{places + finer}f}"
        if value and abs(float(text)) < 10.0 ** (1 - places - finer):
            # A small number keeps the digits that say something, an uncertainty the first of them.
            least = range(places + finer, min(places + finer + 2, 9) + 1)
            told = (f"{value:.{digits}f}" for digits in least)
            text = next((one for one in told if abs(float(one) - value) <= self.coarse * abs(value)), text)
        return text.removeprefix("-") if float(text) == 0.0 else text

    def _length(self, metres: float, length: float, finer: int) -> tuple[str, str]:
        largest = self.largest * length
        if not self.units.is_us:
            if largest < SHORT_M:
                return self._decimal(metres * 1000.0, self._tenths(length), finer), "mm"
            return self._decimal(metres, 2, finer), "m"
        inches = metres / INCH_M
        return _feet(inches, self._fraction(length) + finer, in_feet=largest >= IN_INCHES_BELOW_M)

    def _tenths(self, length: float) -> int:
        """Return how many decimals of a millimetre are told: one only where it is known better than half of one."""
        return 1 if 0.0 < self.u * length < _FINE_M else 0

    def _fraction(self, length: float) -> int:
        """Return the place in `PARTS` of the fraction that the uncertainty deserves: no finer than itself."""
        if self.u <= 0.0:
            return EXACT_PARTS + (self.largest * length < SHORT_M)
        inches = self.u * length / INCH_M
        fit = [index for index, parts in enumerate(PARTS[:5]) if 1.0 / parts <= inches * (1.0 + 1e-9)]
        return fit[0] if fit else 4

    def figures(self, figures: list[Figure], window: Window | None = None, before: Figure | None = None) -> str:
        """Return a figure, or the span of several; `before` is told first, with an arrow from it."""
        sides = SIDES.get(figures[0].name) if self.unit == "deg" else None
        values = [figure.value for figure in figures]
        if before is not None:
            values = [before.value, *values[:1]]
        finer = self._steps(values) if before is not None else 0
        # Of a span the smaller end needs no digits that the larger has not.
        scale = replace(self, coarse=OF_A_SPAN) if len(figures) > 1 else self
        told = [scale._apart(value, window, finer) for value in values]  # noqa: SLF001  its own
        if sides is None:
            text = self._joined(told, values, arrow=before is not None)
            return self._open_ended(text, told, values, ENDS.get(figures[0].name)) if before is None else text
        # The left one of a pair stands left and the right one right, both by the same number.
        own = [SIDES.get(figure.name, sides) for figure in figures] if before is None else [sides] * len(values)
        names = [_side(value, of) for value, of in zip(values, own, strict=True)]
        told = [self._apart(abs(value), window, finer) for value in values]
        if len(set(names)) == 1:
            if names[0] == "straight ahead":
                return names[0]
            text = self._joined(told, [abs(value) for value in values], arrow=before is not None)
            others = {_side(figure.value, SIDES.get(figure.name, sides)) for figure in figures}
            name = names[0] if others == {names[0]} else EITHER
            return f"{text} {name}" if name else text
        if before is not None:
            each = [
                name if name == "straight ahead" else f"{' '.join(one)} {name}"
                for one, name in zip(told, names, strict=True)
            ]
            return " → ".join(each)
        return f"{self._joined(told, [abs(value) for value in values], arrow=False)} {EITHER}"

    @staticmethod
    def _open_ended(text: str, told: list[tuple[str, str]], values: list[float], end: float | None) -> str:
        """Return a figure that ends where nobody looks farther as so much or more."""
        at_end = [index for index, value in enumerate(values) if end is not None and abs(value - end) < _SAME]
        if end is None or not at_end:
            return text
        more = "or more" if end > 0 else "or less"
        nearer = min(values) if end > 0 else max(values)
        first, last = told[values.index(nearer)], told[at_end[0]]
        text = " ".join(last).rstrip()
        return f"{text} {more}" if first == last else f"{first[0]} to {text} {more}"

    def sizes(self, figures: list[Figure], before: Figure | None = None) -> str:
        """Return figures without their sign, for a sentence that says which way; an arrow from one of the same way."""
        values = [figure.value for figure in figures]
        arrow = before is not None and before.value * values[0] > 0.0
        if before is not None and arrow:
            values = [before.value, values[0]]
        values = [abs(value) for value in values]
        finer = self._steps(values) if arrow else 0
        return self._joined([self.parts(value, finer) for value in values], values, arrow=arrow)

    @staticmethod
    def _joined(told: list[tuple[str, str]], values: list[float], *, arrow: bool) -> str:
        unit = told[0][1]
        if arrow:
            return f"{told[0][0]} → {told[-1][0]} {unit}".rstrip()
        ordered = [text for _, (text, _) in sorted(zip(values, told, strict=True), key=lambda pair: pair[0])]
        if ordered[0] == ordered[-1]:
            return f"{ordered[0]} {unit}".rstrip()
        return f"{ordered[0]} to {ordered[-1]} {unit}".rstrip()

    def _steps(self, values: list[float]) -> int:
        """Return how much finer a figure is told so that before and after differ."""
        return next(
            (finer for finer in range(FINEST) if self.parts(values[0], finer) != self.parts(values[1], finer)), 0
        )

    def _apart(self, value: float, window: Window | None, least: int = 0) -> tuple[str, str]:
        """Return a number in enough digits to differ from an edge that it does not stand on."""
        edges = ((window.low, "low"), (window.high, "high")) if window is not None else ()
        near = [
            (edge, side) for edge, side in edges if edge is not None and abs(edge - value) > _SAME * max(1.0, abs(edge))
        ]
        for finer in range(least, FINEST):
            told = self.parts(value, finer)
            if all(told != self.parts(edge, finer) and told != self.edge(edge, side) for edge, side in near):
                return told
        return self.parts(value, FINEST)

    def edge(self, value: float, side: str) -> tuple[str, str]:
        """Return an edge of a window: a round number in the units told, on its strict side where it is none."""
        length = self._length_m
        if length is not None and self.units.is_us:
            inches = value * length / INCH_M
            parts = _EDGE_PARTS if inches >= _WHOLE_INCHES_FROM else 16
            strict = math.ceil if side == "low" else math.floor
            inches = strict(inches * parts - math.copysign(1e-6, 1 if side == "low" else -1)) / parts
            return _feet(inches, 4, in_feet=self.largest * length >= IN_INCHES_BELOW_M)
        text, unit = self.parts(value)
        for finer in range(4):
            text, unit = self.parts(value, finer)
            if self.units.is_us or abs(_number(text, unit, self.unit) - value) <= 0.005 * abs(value):
                break
        return (text.partition(".")[0] if "." in text and not text.partition(".")[2].strip("0") else text), unit

    def window(self, window: Window) -> str:
        """Return a window in words."""
        low = self.edge(window.low, "low") if window.low is not None else None
        high = self.edge(window.high, "high") if window.high is not None else None
        if low is None or high is None:
            words, edge = ("at most", high) if low is None else ("at least", low)
            return f"{words} {' '.join(edge or ('', ''))}".rstrip()
        if low == high:
            return f"exactly {' '.join(low)}".rstrip()
        return f"{low[0]} to {' '.join(high)}".rstrip()

    def limit(self, value: float, window: Window) -> str:
        """Return the edge of a window that a value is nearer to."""
        edges = [(edge, side) for edge, side in ((window.low, "low"), (window.high, "high")) if edge is not None]
        edge, side = min(edges, key=lambda one: abs(one[0] - value))
        return " ".join(self.edge(edge, side)).rstrip()

    def round(self, value: float) -> str:
        """Return a number that nothing makes uncertain, such as a breaker's rating: a whole one without decimals."""
        text, unit = self.parts(value)
        whole, _, decimal = text.partition(".")
        return f"{whole if decimal and not decimal.strip('0') else text} {unit}".rstrip()

    def spread(self) -> str:
        """Return the uncertainty, such as `± 6 mm`."""
        symbol = SYMBOLS.get(self.unit)
        if symbol is not None and symbol.offset != SYMBOLS.get(symbol.customary, symbol).offset and self.units.is_us:
            return f"± {self._decimal(customary_difference(self.u, self.unit), 0, 0)} {symbol.customary}"
        scale = replace(self.units.scale(self.unit, [self.u], self.u), coarse=COARSE)
        return f"± {scale.text(self.u)}"


def mirrored(window: Window) -> Window:
    """Return a window of figures below naught as one of their sizes: at least -12 dB is a dip of at most 12 dB."""
    return replace(
        window,
        low=-window.high if window.high is not None else None,
        high=-window.low if window.low is not None else None,
    )


def inward(low: float, high: float, unit: str, units: Units) -> str:
    """Return a range that a remedy gives, its ends rounded so that they stay inside."""
    symbol = SYMBOLS.get(unit)
    scale = units.scale(unit, [low, high])
    if symbol is not None and symbol.dimension == "length" and units.is_us:
        in_feet = max(abs(low), abs(high)) * symbol.scale >= IN_INCHES_BELOW_M
        ends = (
            math.ceil(low * symbol.scale / INCH_M * _EDGE_PARTS - 1e-6) / _EDGE_PARTS,
            math.floor(high * symbol.scale / INCH_M * _EDGE_PARTS + 1e-6) / _EDGE_PARTS,
        )
        if ends[0] <= ends[1]:
            told = [" ".join(_feet(end, 2, in_feet=in_feet)).rstrip() for end in ends]
            return told[0] if told[0] == told[1] else f"{told[0]} to {told[1]}"
    texts = [scale.parts(end, 1 if abs(high - low) < 0.02 * abs(high) else 0) for end in (low, high)]
    if texts[0] == texts[1]:
        return " ".join(texts[0]).rstrip()
    return f"{texts[0][0]} to {' '.join(texts[1])}".rstrip()


def _gauge_m2(number: int) -> float:
    """Return the section of an AWG size (ASTM B258): diameter 0.127 mm x 92^((36 - n) / 39)."""
    diameter_m: float = 0.127e-3 * 92.0 ** ((36 - number) / 39)
    return math.pi / 4.0 * diameter_m**2


def _number(text: str, shown: str, unit: str) -> float:
    """Return what a number that was written in another metric unit is in its own."""
    return float(text) * _BETWEEN.get((shown, unit), 1.0)


def _side(value: float, sides: tuple[str, str]) -> str:
    if abs(value) < AHEAD_DEG:
        return "straight ahead"
    return sides[0] if value > 0 else sides[1]


def _feet(inches: float, place: int, *, in_feet: bool) -> tuple[str, str]:
    """Return inches as the trade writes them: `5 3/8`, or feet and inches; decimals where no fraction will do."""
    sign, inches = ("-" if inches < 0 else ""), abs(inches)
    if place >= len(PARTS):
        return f"{sign}{inches:.{place - len(PARTS) + 3}f}", "in"
    parts = PARTS[place]
    count = round(inches * parts)
    if count == 0:
        sign = ""
    whole, rest = divmod(count, parts)
    feet, whole = divmod(whole, int(FOOT_IN)) if in_feet else (0, whole)
    if rest:
        shared = math.gcd(rest, parts)
        fraction = f"{rest // shared}/{parts // shared}"
        text = f"{whole} {fraction}" if whole or feet else fraction
    else:
        text = str(whole)
    if not in_feet:
        return f"{sign}{text}", "in"
    if not feet:
        return f"{sign}{text} in", ""
    return (f"{sign}{feet} ft {text} in" if text != "0" else f"{sign}{feet} ft"), ""
