"""The two upright sections through the reference seat: the true ceiling, who sees over whom, what hangs how high."""

from __future__ import annotations

from itertools import pairwise
from typing import TYPE_CHECKING, Final

from roomlint.report.drawing import dimensions
from roomlint.report.drawing.pen import Pen, lengths
from roomlint.report.drawing.shapes import width_mm

if TYPE_CHECKING:
    from roomlint.measure.scene import Cut, Scene, Spot2, Spot3, Thing
    from roomlint.report.drawing.findings import Finding
    from roomlint.report.drawing.shapes import Fill, View
    from roomlint.report.units import Units

LEFT_MM: Final = 10.0
RIGHT_MM: Final = 16.0
ABOVE_MM: Final = 9.0
BELOW_MM: Final = 17.0
_SMALL_MM: Final = 1.8
HEAD_M: Final = 0.1
"""Half a head, as drawn."""
_BAND_MM: Final = 2.2
_SAME_M: Final = 1e-5
_OF_KIND: Final = {"loudspeaker": "speaker", "subwoofer": "sub", "rack": "rack", "riser": "riser"}
_UPRIGHT: Final = ("height", "elevation", "head", "up to", "beam", "ceiling", "over")
"""Words of the names of figures that a section shows and a plan does not."""


class Sectioner:
    """Draws the sections of one scene."""

    def __init__(self, scene: Scene, findings: tuple[Finding, ...], units: Units, was: Scene | None = None) -> None:
        self.scene = scene
        self.findings = findings
        self.units = units
        self.was = was

    def extent_mm(self, scale: float, kind: str) -> Spot2:
        """Return what a section takes on the paper at a scale, mm."""
        long = self.scene.length_m if kind == "long" else self.scene.width_m
        factor = 1000.0 / scale
        return self.left_mm() + long * factor + RIGHT_MM, ABOVE_MM + self.scene.height_m * factor + BELOW_MM

    def left_mm(self) -> float:
        """Return what the heights at the left take, mm."""
        texts = [f"{_short(names)}  {lengths(self.units, value)}" for value, names in heights(self.scene)]
        return LEFT_MM + max((width_mm(text, _SMALL_MM) for text in texts), default=0.0)

    def view(self, cut: Cut, scale: float) -> View:
        """Return a section: the long one looks to the right, with the front at its left; the cross one to the front."""
        return _Section(self, cut, scale).view()


class _Section:
    def __init__(self, of: Sectioner, cut: Cut, scale: float) -> None:
        self.scene, self.findings, self.was = of.scene, of.findings, of.was
        self.cut = cut
        self.left_mm = of.left_mm()
        self._named: list[tuple[float, float, str, str]] = []
        """Doors, windows and panels that are seen: where their upper edge is, their names and keys."""
        self.pen = Pen(scale, of.units)
        self.is_long = cut.kind == "long"

    def u(self, along: float) -> float:
        """Return where a coordinate along the cut is in the view: in the long one the front is at the left."""
        return self.scene.length_m - along if self.is_long else along

    def at(self, point: Spot3) -> Spot2:
        """Return where a point of the room is in the view."""
        return (self.u(point[1]), point[2]) if self.is_long else (point[0], point[2])

    def is_before(self, thing: Thing) -> bool:
        """Return whether a thing stands before the cut, where who looks has it behind him."""
        return thing.place[0] < self.cut.at_m - 1e-6 if self.is_long else thing.place[1] < self.cut.at_m - 1e-6

    def view(self) -> View:
        pen, scene = self.pen, self.scene
        whole = scene.length_m if self.is_long else scene.width_m
        for start, end in self.cut.beyond:
            pen.path(((self.u(start[0]), start[1]), (self.u(end[0]), end[1])), "beyond")
        self._cut_faces()
        self._gaps()
        self._flats()
        for thing in scene.things:
            self._thing(thing)
        self._lines()
        self._hidden()
        self._ghosts()
        self._heights()
        self._names()
        self._marks()
        below = -pen.m(9.0)
        dimensions.across(pen, 0.0, whole, below)
        if self.is_long:
            pen.words((0.0, 0.0), "FRONT", 2.0, anchor="start", shift_mm=(1.0, -4.5), layer="dimension")
            pen.words((whole, 0.0), "REAR", 2.0, anchor="end", shift_mm=(-1.0, -4.5), layer="dimension")
        else:
            pen.words((0.0, 0.0), "LEFT", 2.0, anchor="start", shift_mm=(1.0, -4.5), layer="dimension")
            pen.words((whole, 0.0), "RIGHT", 2.0, anchor="end", shift_mm=(-1.0, -4.5), layer="dimension")
        low = (-pen.m(self.left_mm), -pen.m(BELOW_MM))
        high = (whole + pen.m(RIGHT_MM), scene.height_m + pen.m(ABOVE_MM))
        name, title, toward = (
            ("long", "Section A, front to rear", "the right") if self.is_long
            else ("cross", "Section B, left to right", "the front")
        )  # fmt: skip
        about = f"Upright section through the reference seat, looking to {toward}; the ceiling as it is there."
        return pen.view(name, title, low, high, about)

    def _cut_faces(self) -> None:
        """Draw what the cut goes through: floor, ceiling, and the walls between them."""
        pen, thick = self.pen, self.pen.m(_BAND_MM)
        for low, high in self.cut.floors:
            a, b = sorted((self.u(low), self.u(high)))
            pen.path(((a, 0.0), (b, 0.0), (b, -thick), (a, -thick)), "poche", closed=True, fill="hatch")
            pen.path(((a, 0.0), (b, 0.0)), "wall")
            ends = [end for piece in self.cut.ceilings for end in piece]
            for end in (low, high):
                near = [z for u, z in ends if abs(u - end) < _SAME_M]
                if near:
                    pen.path(((self.u(end), 0.0), (self.u(end), max(near))), "wall")
        pieces = self.cut.ceilings
        for (u0, z0), (u1, z1) in pieces:
            first, last = (self.u(u0), z0), (self.u(u1), z1)
            upper = ((last[0], last[1] + thick), (first[0], first[1] + thick))
            pen.path((first, last, *upper), "poche", closed=True, fill="hatch")
            pen.path((first, last), "wall")
        for (_, before), (after, _) in pairwise(pieces):
            if abs(before[0] - after[0]) < _SAME_M and before[1] != after[1]:
                pen.path(((self.u(before[0]), before[1]), (self.u(after[0]), after[1])), "wall")
        if not pieces:
            whole = self.scene.length_m if self.is_long else self.scene.width_m
            pen.words((whole / 2.0, self.scene.height_m), "ceiling not known", 2.5)

    def _flats(self) -> None:
        for flat in self.scene.flats:
            along = [self.u(y) if self.is_long else x for x, y in flat.plan]
            low, high = min(along), max(along)
            layer = "picture" if flat.key.startswith("picture/") else "panel"
            if high - low < self.pen.m(0.3):
                self.pen.path(((low, flat.low_m), (low, flat.high_m)), layer, key=flat.key)
            else:
                points = ((low, flat.low_m), (high, flat.low_m), (high, flat.high_m), (low, flat.high_m))
                self.pen.path(points, "panel", closed=True, key=flat.key)
                self._named.append(((low + high) / 2.0, flat.high_m, flat.name, flat.key))

    def _gaps(self) -> None:
        """Draw doors and windows of the walls that are seen, and where the cut walls have theirs."""
        for gap in self.scene.gaps:
            if gap.height_m is None:
                continue
            ends = (gap.start, gap.end)
            low = gap.sill_m or 0.0
            high = low + gap.height_m
            left, right = sorted(self.u(y) if self.is_long else x for x, y in ends)
            behind = max(x if self.is_long else y for x, y in ends) <= self.cut.at_m
            if right - left < self.pen.m(0.3):
                aside = sorted(y if not self.is_long else x for x, y in ends)
                if not aside[0] <= self.cut.at_m <= aside[1]:
                    continue
                half = self.pen.m(0.8)
                left, right = left - half, right + half
            elif behind:
                continue
            points = ((left, low), (right, low), (right, high), (left, high))
            self.pen.path(points, "opening", closed=True, key=gap.key)
            self._named.append(((left + right) / 2.0, high, gap.name, gap.key))

    def _thing(self, thing: Thing) -> None:
        shape = [(self.u(y), z) for y, z in thing.side] if self.is_long else list(thing.front)
        if thing.kind == "seat":
            self._listener(thing)
            return
        layer = {"loudspeaker": "speaker", "subwoofer": "sub", "rack": "rack", "riser": "riser"}.get(
            thing.kind, "solid"
        )
        layer = "hidden" if self.is_before(thing) and thing.kind != "riser" else layer
        cut_through = thing.kind not in {"loudspeaker", "subwoofer", "rack", "projector"} and self._is_cut(thing)
        fill: Fill = "hatch" if thing.assumes or cut_through else ""
        self.pen.path(shape, "unknown" if thing.assumes else layer, closed=True, fill=fill, key=thing.key)
        if thing.kind != "riser":
            self.pen.keep_clear(shape)
        if thing.kind == "loudspeaker" and thing.axis is not None:
            along = -thing.axis[1] if self.is_long else thing.axis[0]
            level = (along**2 + thing.axis[2] ** 2) ** 0.5
            if level > 0.3:  # noqa: PLR2004  it does not look straight at who reads
                at, reach = self.at(thing.place), self.pen.m(8.0)
                end = (at[0] + reach * along / level, at[1] + reach * thing.axis[2] / level)
                self.pen.path((at, end), "axis", key=thing.key)

    def _is_cut(self, thing: Thing) -> bool:
        sides = [point[0] if self.is_long else point[1] for point in thing.plan]
        return min(sides) <= self.cut.at_m <= max(sides)

    def _listener(self, thing: Thing) -> None:
        """Draw a seated listener as a head, a back and a seat: where the ear is, is true; the rest is a sign."""
        pen = self.pen
        u, ear = self.at(thing.place)
        layer = "unknown" if not thing.head_known else "seat"
        pen.arc((u, ear), HEAD_M, layer, key=thing.key, fill="paper")
        top = max(thing.high_m, ear)
        pen.path(((u - HEAD_M, top), (u + HEAD_M, top)), layer, key=thing.key)
        back = 0.0
        if self.is_long:
            back = HEAD_M * 1.4
        knee = thing.low_m + 0.45
        if ear - knee > 0.2:  # noqa: PLR2004  room for a back
            if self.is_long:
                points = ((u + back * 0.4, ear - 0.15), (u + back, knee), (u - 0.4, knee), (u - 0.4, thing.low_m))
            else:
                half = thing.radius_m
                points = ((u - half, thing.low_m), (u - half, knee), (u + half, knee), (u + half, thing.low_m))
            pen.path(points, layer, key=thing.key)
        pen.keep_clear(((u - HEAD_M, ear - HEAD_M), (u + HEAD_M, top)))

    def _lines(self) -> None:
        if not self.is_long:
            return
        for line in self.scene.lines:
            if line.kind in {"sight low", "sight high"}:
                self.pen.path((self.at(line.start), self.at(line.end)), "sight", key=line.key)
            elif line.kind == "beam":
                self.pen.path((self.at(line.start), self.at(line.end)), "beam", key=line.key)

    def _hidden(self) -> None:
        """Ring the heads that hide the picture's lower edge."""
        if not self.is_long:
            return
        for finding in self.findings:
            if any(verdict.figure is not None and "head" in verdict.figure.name for verdict in finding.verdicts):
                for seat, head in self.scene.hides:
                    other = self.scene.thing(head)
                    if seat in finding.keys and other is not None:
                        centre = self.at(other.place)
                        self.pen.arc(centre, HEAD_M * 1.5, "window", key=head, of=finding.id)

    def _ghosts(self) -> None:
        for thing in self.scene.things if self.was is not None else ():
            before = self.was.thing(thing.key) if self.was is not None else None
            if before is None or max(abs(a - b) for a, b in zip(before.place, thing.place, strict=True)) < 0.005:  # noqa: PLR2004
                continue
            shape = [(self.u(y), z) for y, z in before.side] if self.is_long else list(before.front)
            self.pen.path(shape, "earlier", closed=True, key=thing.key)
            self.pen.path((self.at(before.place), self.at(thing.place)), "earlier", key=thing.key)

    def _names(self) -> None:
        told: dict[tuple[int, int], list[Thing]] = {}
        for thing in self.scene.things:
            if thing.kind != "riser":
                u, v = self.at(thing.place)
                told.setdefault((round(self.pen.mm(u) / 3.0), round(self.pen.mm(v) / 3.0)), []).append(thing)
        for together in told.values():
            names = ", ".join(thing.name for thing in together[:3])
            more = f" +{len(together) - 3}" if len(together) > 3 else ""  # noqa: PLR2004  as many as are named
            self.pen.label(self.at(together[0].place), f"{names}{more}", 2.0, beside_mm=3.0, key=together[0].key)
        for u, v, name, key in self._named:
            self.pen.label((u, v), name, 1.8, beside_mm=0.6, key=key)

    def _marks(self) -> None:
        at_element: dict[str, list[tuple[str, str, str]]] = {}
        for finding in self.findings:
            for key in finding.keys if finding.is_marked and _is_upright(finding) else ():
                if self._middle(key) is not None:
                    at_element.setdefault(key, []).append((finding.number, finding.level, finding.id))
        for key, found in at_element.items():
            at = self._middle(key)
            if at is not None:
                self.pen.marks(at, found, beside_mm=3.0, key=key)

    def _middle(self, key: str) -> Spot2 | None:
        thing = self.scene.thing(key)
        if thing is not None:
            return self.at(thing.place)
        flat = next((flat for flat in self.scene.flats if flat.key == key), None)
        if flat is None:
            return None
        xs, ys = [x for x, _ in flat.plan], [y for _, y in flat.plan]
        return self.at((sum(xs) / len(xs), sum(ys) / len(ys), (flat.low_m + flat.high_m) / 2.0))

    def _heights(self) -> None:
        """Write heights above the floor at the left: ears, loudspeakers, picture; the ceiling at the right."""
        pen, scene = self.pen, self.scene
        values = heights(scene)
        x, tick = -pen.m(5.0), pen.m(1.0)
        pen.path(((x, 0.0), (x, scene.height_m)), "dimension")
        places = dimensions.spread([pen.mm(value) for value, _ in values], 2.7, -6.0, pen.mm(scene.height_m) + 6.0)
        for (value, names), place in zip(values, places, strict=True):
            pen.path(((x - tick, value - tick), (x + tick, value + tick)), "dimension")
            knee = x - pen.m(3.0)
            pen.path(((x, value), (knee, pen.m(place))), "dimension")
            text = f"{_short(names)}  {pen.length(value)}"
            pen.words((knee, pen.m(place)), text, _SMALL_MM, anchor="end", shift_mm=(-0.6, -0.6), layer="dimension")
        levels = {round(z, 3) for piece in self.cut.ceilings for _, z in piece}
        whole = scene.length_m if self.is_long else scene.width_m
        right = whole + pen.m(5.0)
        rows = sorted(levels)
        places = dimensions.spread([pen.mm(z) for z in rows], 2.9, -3.0, pen.mm(scene.height_m) + 4.0)
        for z, place in zip(rows, places, strict=True):
            pen.path(((whole + pen.m(2.0), z), (right, pen.m(place))), "dimension")
            pen.words(
                (right, pen.m(place)), pen.length(z), 1.9, anchor="start", shift_mm=(0.5, -0.6), layer="dimension"
            )


def heights(scene: Scene) -> list[tuple[float, str]]:
    """Return the heights that an installer sets out, with what hangs or sits there."""
    found = [(thing.place[2], thing.name) for thing in scene.things if thing.kind in {"loudspeaker", "seat"}]
    for flat in scene.flats:
        if flat.key.startswith("picture/"):
            found += [(flat.low_m, f"{flat.name}, lower edge"), (flat.high_m, f"{flat.name}, upper edge")]
    return dimensions.marks_of(found)


def _short(names: str) -> str:
    first, *rest = names.split(", ")
    return f"{first} +{len(rest)}" if rest and "edge" not in names else names


def _is_upright(finding: Finding) -> bool:
    names = [verdict.figure.name for verdict in finding.verdicts if verdict.figure is not None]
    return any(word in name for name in names for word in _UPRIGHT)
