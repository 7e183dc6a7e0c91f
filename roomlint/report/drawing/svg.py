"""Writes views and sheets as SVG: true to scale in millimetres, the same bytes for the same input, nothing fetched."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final
from xml.sax.saxutils import escape, quoteattr

from roomlint.report.drawing.marks import LOOKS, outline
from roomlint.report.drawing.shapes import INK, LAYERS, Arc, Mark, Path, Words
from roomlint.report.words import printable

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping

    from roomlint.measure.scene import Spot2
    from roomlint.report.drawing.shapes import Item, View
    from roomlint.report.drawing.sheets import Sheet

FONT: Final = "'Liberation Sans','DejaVu Sans',Arial,Helvetica,sans-serif"
_FILLS: Final = {"paper": INK["paper"], "hatch": "url(#hatch)", "solid": "currentColor", "sheet": "#e6eaee"}
PATTERN: Final = (
    '<pattern id="hatch" width="1.6" height="1.6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">'
    f'<rect width="1.6" height="1.6" fill="{INK["paper"]}"/>'
    f'<line x1="0" y1="0" x2="0" y2="1.6" stroke="{INK["soft"]}" stroke-width="0.25"/></pattern>'
)


def number(value: float) -> str:
    """Return a number as it is written: to a micrometre of the paper, and no digits that say nothing."""
    text = f"{value:.3f}".rstrip("0").rstrip(".")
    return "0" if text in {"-0", ""} else text


def legible(text: str) -> str:
    """Return a text without what XML cannot hold."""
    return "".join(
        sign for sign in printable(text) if sign.isprintable() or sign == " "
    )  # fmt: skip


def style() -> str:
    """Return the looks of all layers, as a style sheet."""
    rim = f"stroke:{INK['paper']};stroke-width:.5;paint-order:stroke"
    rules = [
        f"text{{font-family:{FONT};fill:{INK['ink']};{rim}}}",
        ".bold{font-weight:700}",
    ]
    for name, layer in LAYERS.items():
        dashes = f";stroke-dasharray:{' '.join(map(number, layer.dashes))}" if layer.dashes else ""
        ink = INK[layer.ink]
        drawn = f"fill:none;stroke:{ink};color:{ink};stroke-width:{number(layer.width_mm)}{dashes}"
        rules.append(f".l-{name}{{{drawn};stroke-linejoin:round}}")
    rules.append(f".tint{{fill:{INK['bad']};fill-opacity:.12}}")
    for level, look in LOOKS.items():
        rules.append(
            f".m-{level} .s{{fill:{look.fill};stroke:{look.edge};stroke-width:{number(look.width_mm)}}}"
            f".m-{level} text{{fill:{look.text};font-weight:700;stroke:none}}"
        )  # fmt: skip
    return "".join(rules)


class Writer:
    """Writes the items of views; `names` gives each finding what it says, for who cannot see its mark."""

    def __init__(self, names: Mapping[str, str] | None = None, *, interactive: bool = False) -> None:
        self._names = names or {}
        self._interactive = interactive

    def view(self, view: View, at_mm: Spot2 = (0.0, 0.0)) -> Iterator[str]:
        """Yield the items of a view whose upper left corner is at a place of the sheet, mm."""

        def place(point: Spot2) -> Spot2:
            return at_mm[0] + view.mm(point[0] - view.low[0]), at_mm[1] + view.mm(view.high[1] - point[1])

        for item in view.items:
            yield self._item(item, place, view)

    def _item(self, item: Item, place: Place, view: View) -> str:
        if isinstance(item, Path):
            return self._path(item, place)
        if isinstance(item, Arc):
            return self._arc(item, place, view)
        if isinstance(item, Words):
            return self._words(item, place)
        return self._mark(item, place)

    def _path(self, item: Path, place: Place) -> str:
        points = " L".join(f"{number(x)} {number(y)}" for x, y in map(place, item.points))
        return f'<path d="M{points}{"Z" if item.closed else ""}"{_looks(item)}/>'

    def _arc(self, item: Arc, place: Place, view: View) -> str:
        import math

        x, y = place(item.centre)
        radius = view.mm(item.radius_m)
        if item.is_circle:
            return f'<circle cx="{number(x)}" cy="{number(y)}" r="{number(radius)}"{_looks(item)}/>'
        ends = [
            (x + radius * math.cos(math.radians(angle)), y - radius * math.sin(math.radians(angle)))
            for angle in (item.start_deg, item.end_deg)
        ]
        large = int(item.end_deg - item.start_deg > 180.0)  # noqa: PLR2004  more than half a turn
        (x0, y0), (x1, y1) = ends
        r = number(radius)
        d = f"M{number(x0)} {number(y0)} A{r} {r} 0 {large} 0 {number(x1)} {number(y1)}"
        return f'<path d="{d}"{_looks(item)}/>'

    def _words(self, item: Words, place: Place) -> str:
        x, y = place(item.at)
        x, y = x + item.shift_mm[0], y - item.shift_mm[1]
        turn = f' transform="rotate({number(-item.turn_deg)} {number(x)} {number(y)})"' if item.turn_deg else ""
        anchor = f' text-anchor="{item.anchor}"' if item.anchor != "start" else ""
        bold = " bold" if item.bold else ""
        return (
            f'<text class="t-{item.layer}{bold}" x="{number(x)}" y="{number(y)}" font-size="{number(item.size_mm)}"'
            f"{anchor}{turn}{_key(item.key)}>{escape(legible(item.text))}</text>"
        )

    def _mark(self, item: Mark, place: Place) -> str:
        x, y = place(item.at)
        x, y = x + item.shift_mm[0], y - item.shift_mm[1]
        said = self._names.get(item.of, "")
        name = f" aria-label={quoteattr(legible(said))}" if said and self._interactive else ""
        role = f' role="button" tabindex="0" aria-controls="{item.of}"' if self._interactive else ""
        title = f"<title>{escape(legible(said))}</title>" if said and not self._interactive else ""
        corners = outline(item.level, item.number, item.size)
        points = " ".join(f"{number(x + dx)},{number(y - dy)}" for dx, dy in corners)
        size = item.size * (2.4 if len(item.number) < 3 else 2.0)  # noqa: PLR2004  three signs take more room
        inside = (
            f'<polygon class="s" points="{points}"/>'
            f'<text x="{number(x)}" y="{number(y + size * 0.36)}" font-size="{number(size)}" text-anchor="middle">'
            f"{escape(legible(item.number))}</text>"
        )
        return f'<g class="mark m-{item.level}" data-of="{item.of}"{_key(item.key)}{role}{name}>{title}{inside}</g>'


if TYPE_CHECKING:
    from collections.abc import Callable
    from typing import TypeAlias

    Place: TypeAlias = Callable[[Spot2], Spot2]


def _key(key: str) -> str:
    return f" data-key={quoteattr(legible(key))}" if key else ""


def _looks(item: Path | Arc) -> str:
    tint = " tint" if item.fill == "tint" else ""
    fill = f' style="fill:{_FILLS[item.fill]}"' if item.fill in _FILLS else ""
    of = f' data-of="{item.of}"' if item.of else ""
    return f' class="l-{item.layer}{tint}"{fill}{_key(item.key)}{of}'


def svg_report(sheets: list[Sheet], names: Mapping[str, str], title: str) -> Iterator[str]:
    """Yield sheets below each other as one SVG, each as large as its paper."""
    width = max(sheet.width_mm for sheet in sheets)
    height = sum(sheet.height_mm for sheet in sheets)
    yield '<?xml version="1.0" encoding="UTF-8"?>\n'
    yield (
        f'<svg xmlns="http://www.w3.org/2000/svg" width="{number(width)}mm" height="{number(height)}mm" '
        f'viewBox="0 0 {number(width)} {number(height)}">\n<title>{escape(legible(title))}</title>\n'
    )
    yield f"<defs>{PATTERN}</defs>\n<style>{style()}</style>\n"
    yield f'<rect width="{number(width)}" height="{number(height)}" fill="{INK["paper"]}"/>\n'
    writer, top = Writer(names), 0.0
    for sheet in sheets:
        yield f'<g id="sheet-{sheet.number}">\n'
        for placed in sheet.placed:
            yield f"<g class={quoteattr('view ' + placed.view.name)}>\n"
            for line in writer.view(placed.view, (placed.x_mm, top + placed.y_mm)):
                yield f"{line}\n"
            yield "</g>\n"
        yield "</g>\n"
        top += sheet.height_mm
    yield "</svg>\n"
