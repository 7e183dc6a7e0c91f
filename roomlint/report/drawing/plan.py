"""The plan and the ceiling plan: where everything stands, how it is aimed, and where findings are."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING, Final

from roomlint.plane import contains
from roomlint.report.drawing import aids, dimensions, symbols
from roomlint.report.drawing.pen import Pen
from roomlint.report.drawing.shapes import width_mm
from roomlint.report.drawing.zones import Zones, spot

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from roomlint.measure.scene import Scene, Side, Spot2, Thing
    from roomlint.report.drawing.findings import Finding
    from roomlint.report.drawing.shapes import View
    from roomlint.report.units import Units

RIGHT_MM: Final = 9.0
_ROW_MM: Final = 7.0
_IN_PLAN: Final = ("loudspeaker", "subwoofer", "rack", "projector", "seat")
_AT_THE_EAR: Final = frozenset({"loudspeaker", "subwoofer", "rack", "seat"})
"""What a ceiling plan names only where it is overhead."""
_LEAST_MOVE_M: Final = 0.005


class Planner:
    """Draws the two plans of one scene."""

    def __init__(self, scene: Scene, findings: tuple[Finding, ...], units: Units, was: Scene | None = None) -> None:
        self.scene = scene
        self.findings = findings
        self.units = units
        self.was = was
        self.customary = units.is_us

    def extent_mm(self, scale: float) -> Spot2:
        """Return what a plan takes on the paper at a scale, mm."""
        pen = Pen(scale, self.units)
        left, top = self._margins(pen)
        loose = len(self._loose(overhead=False))
        wide = pen.mm(self.scene.width_m)
        below = aids.BELOW_MM + self._rows(loose, wide) * _ROW_MM
        return left + wide + RIGHT_MM, top + pen.mm(self.scene.length_m) + below

    def overhead_mm(self, scale: float) -> Spot2:
        """Return what the ceiling plan takes on the paper at a scale, mm."""
        pen = Pen(scale, self.units)
        across, along = self._over()
        left, top = dimensions.needed_mm(along, pen), dimensions.needed_mm(across, pen)
        return left + pen.mm(self.scene.width_m) + RIGHT_MM, top + pen.mm(self.scene.length_m) + 8.0

    def _over(self) -> tuple[list[tuple[float, str]], list[tuple[float, str]]]:
        """Return what stands overhead, from the left and from the front."""
        scene = self.scene
        over = [(thing.place, thing.name) for thing in scene.things if thing.overhead]
        across = dimensions.marks_of([*((place[0], name) for place, name in over), (scene.width_m, "right")])
        ahead = [(scene.length_m - place[1], name) for place, name in over]
        return across, dimensions.marks_of([*ahead, (scene.length_m, "rear")])

    @staticmethod
    def _rows(count: int, wide_mm: float) -> int:
        return math.ceil(count / max(1, int((wide_mm + 20.0) / 7.0)))

    def _margins(self, pen: Pen) -> Spot2:
        return dimensions.needed_mm(self._from_front(), pen), dimensions.needed_mm(self._from_left(), pen)

    def _measured(self) -> Iterator[tuple[Spot2, str]]:
        for thing in self.scene.things:
            if thing.kind in _IN_PLAN and not thing.overhead:
                yield thing.place[:2], thing.name
        for flat in self.scene.flats:
            if flat.key.startswith("picture/"):
                xs, ys = [x for x, _ in flat.plan], [y for _, y in flat.plan]
                yield (sum(xs) / len(xs), sum(ys) / len(ys)), flat.name

    def _from_left(self) -> list[tuple[float, str]]:
        places = [(x, name) for (x, _), name in self._measured()]
        return dimensions.marks_of([*places, (self.scene.width_m, "right")])

    def _from_front(self) -> list[tuple[float, str]]:
        places = [(self.scene.length_m - y, name) for (_, y), name in self._measured()]
        return dimensions.marks_of([*places, (self.scene.length_m, "rear")])

    def plan(self, scale: float) -> View:
        """Return the plan."""
        pen, scene = Pen(scale, self.units), self.scene
        symbols.walls(pen, scene)
        for thing in scene.things:
            if thing.kind == "riser":
                symbols.solid(pen, thing)
        for gap in scene.gaps:
            symbols.gap(pen, gap)
        self._sight(pen)
        for flat in scene.flats:
            if flat.on != "ceiling":
                symbols.flat(pen, flat, "picture" if flat.key.startswith("picture/") else "panel")
        for thing in scene.things:
            if thing.kind not in {*_IN_PLAN, "riser"}:
                symbols.solid(pen, thing)
        self._zones(pen, overhead=False)
        for thing in scene.things:
            self._thing(pen, thing)
        for outlet in scene.outlets:
            symbols.outlet(pen, outlet, customary=self.customary)
        aids.cutting(pen, scene)
        self._ghosts(pen, overhead=False)
        dimensions.along_top(pen, self._from_left(), scene.length_m, scene.width_m)
        dimensions.along_left(pen, self._from_front(), 0.0, scene.length_m, scene.length_m)
        aids.scale_bar(pen)
        aids.not_placed(pen, scene)
        self._names(pen)
        loose = self._marks(pen, overhead=False)
        rows = self._loose_row(pen, loose)
        low, high = self._corners(pen, rows)
        return pen.view("plan", "Plan", low, high, _about_plan(scene))

    def _corners(self, pen: Pen, rows: int) -> tuple[Spot2, Spot2]:
        left, top = self._margins(pen)
        low = (-pen.m(left), -pen.m(aids.BELOW_MM + rows * _ROW_MM))
        return low, (self.scene.width_m + pen.m(RIGHT_MM), self.scene.length_m + pen.m(top))

    def _thing(self, pen: Pen, thing: Thing) -> None:
        if thing.kind == "seat":
            symbols.seat(pen, thing)
        elif thing.kind in {"loudspeaker", "subwoofer"}:
            symbols.cabinet(pen, thing, "speaker" if thing.kind == "loudspeaker" else "sub")
        elif thing.kind in {"rack", "projector"}:
            symbols.body(pen, thing, "rack" if thing.kind == "rack" else "hidden")

    def _sight(self, pen: Pen) -> None:
        for line in self.scene.lines:
            if line.kind in {"sight left", "sight right"}:
                pen.path((line.start[:2], line.end[:2]), "sight", key=line.key)
            elif line.kind == "beam":
                pen.path((line.start[:2], line.end[:2]), "beam", key=line.key)

    def _zones(self, pen: Pen, *, overhead: bool) -> None:
        zones = Zones(pen, self.scene, overhead=overhead)
        for finding in self.findings:
            if finding.is_marked:
                zones.draw(finding)

    def _names(self, pen: Pen) -> None:
        for side in self.scene.sides:
            self._wall_name(pen, side)
        for thing in self.scene.things:
            if thing.kind == "riser":
                text = f"{thing.name} +{pen.length(thing.high_m)}"
                x, y = min(thing.plan)
                pen.words((x, y), text, 2.0, anchor="start", shift_mm=(1.5, 1.5), key=thing.key)
            else:
                text = f"{thing.name} {thing.label}" if thing.label else thing.name
                pen.label(thing.place[:2], text, beside_mm=self._reach_mm(pen, thing), key=thing.key)
        for gap in self.scene.gaps:
            middle = ((gap.start[0] + gap.end[0]) / 2.0, (gap.start[1] + gap.end[1]) / 2.0)
            text = gap.name if gap.sill_m in {None, 0.0} else f"{gap.name}, sill {pen.length(gap.sill_m or 0.0)}"
            pen.label(symbols.moved(middle, gap.inward, pen.m(3.0)), text, 2.0, key=gap.key)
        for outlet in self.scene.outlets:
            pen.label(outlet.place[:2], f"{outlet.name} ({outlet.circuit})", 1.9, beside_mm=2.5, key=outlet.key)
        for flat in self.scene.flats:
            if flat.on != "ceiling" and len(flat.plan) == 2:  # noqa: PLR2004  on a wall
                middle = ((flat.plan[0][0] + flat.plan[1][0]) / 2.0, (flat.plan[0][1] + flat.plan[1][1]) / 2.0)
                pen.label(symbols.moved(middle, flat.inward, pen.m(2.0)), flat.name, 2.0, key=flat.key)

    def _reach_mm(self, pen: Pen, thing: Thing) -> float:
        (x0, y0), (x1, y1) = symbols.bounds(thing)
        return pen.mm(min(x1 - x0, y1 - y0)) / 2.0 + 0.8

    @staticmethod
    def _wall_name(pen: Pen, side: Side) -> None:
        """Write a wall's name along it, where nothing stands before it."""
        (x0, y0), (x1, y1) = side.start, side.end
        turn = math.degrees(math.atan2(y1 - y0, x1 - x0))
        if not -89.0 < turn <= 91.0:  # noqa: PLR2004  read from below or from the right
            turn -= math.copysign(180.0, turn)
        shift = (0.7 * math.sin(math.radians(turn)), -0.7 * math.cos(math.radians(turn)))
        places = [
            symbols.moved((x0 + share * (x1 - x0), y0 + share * (y1 - y0)), side.inward, pen.m(2.4))
            for share in (0.5, 0.35, 0.65, 0.22, 0.78, 0.12, 0.88)
        ]
        half = width_mm(side.name.upper(), 1.9) / 2.0
        upright = abs(math.sin(math.radians(turn))) > 0.7  # noqa: PLR2004  nearer upright than level
        wide, high = (1.0, half) if upright else (half, 1.0)
        at = min(places, key=lambda place: pen.covered(place, wide, high))
        pen.words(at, side.name.upper(), 1.9, turn_deg=turn, shift_mm=shift, layer="dimension")

    def _marks(self, pen: Pen, *, overhead: bool) -> list[Finding]:
        """Put each finding's number where its elements are; return those that are nowhere in the plan."""
        loose = {id(finding) for finding in self._loose(overhead=overhead)}
        at_element: dict[str, list[tuple[str, str, str]]] = {}
        for finding in self.findings:
            for key in finding.keys if finding.is_marked else ():
                if self._place(key, overhead=overhead) is not None:
                    at_element.setdefault(key, []).append((finding.number, finding.level, finding.id))
        for key, found in at_element.items():
            at = self._place(key, overhead=overhead)
            if at is not None:
                thing = self.scene.thing(key)
                beside = self._reach_mm(pen, thing) if thing is not None else 2.0
                pen.marks(at, found, beside_mm=beside, key=key)
        return [finding for finding in self.findings if id(finding) in loose]

    def _loose(self, *, overhead: bool) -> list[Finding]:
        return [
            finding
            for finding in self.findings
            if finding.is_marked and all(self._place(key, overhead=overhead) is None for key in finding.keys)
        ]

    def _place(self, key: str, *, overhead: bool) -> Spot2 | None:
        thing = self.scene.thing(key)
        if thing is not None:
            return thing.place[:2] if thing.overhead is overhead else None
        for flat in self.scene.flats:
            if flat.key == key and (flat.on == "ceiling") is overhead:
                xs, ys = [x for x, _ in flat.plan], [y for _, y in flat.plan]
                return sum(xs) / len(xs), sum(ys) / len(ys)
        if overhead:
            return None
        for gap in self.scene.gaps:
            if gap.key == key:
                return (gap.start[0] + gap.end[0]) / 2.0, (gap.start[1] + gap.end[1]) / 2.0
        outlets = (outlet for outlet in self.scene.outlets if outlet.key == key)
        outlet = next(outlets, None)
        if outlet is not None:
            return outlet.place[:2]
        side = next((side for side in self.scene.sides if side.key == key), None)
        return ((side.start[0] + side.end[0]) / 2.0, (side.start[1] + side.end[1]) / 2.0) if side is not None else None

    def _loose_row(self, pen: Pen, loose: list[Finding]) -> int:
        """Put what is at no place of the plan in rows under it, so that every finding is on the sheet."""
        if not loose:
            return 0
        wide = pen.mm(self.scene.width_m)
        many = max(1, int((wide + 20.0) / 7.0))
        pen.words(
            (0.0, -pen.m(aids.BELOW_MM - 6.0)), "At no place of this view:", 2.2, anchor="start", shift_mm=(0.0, -1.0),
            layer="dimension",
        )  # fmt: skip
        for number, finding in enumerate(loose):
            row, column = divmod(number, many)
            at = (pen.m(3.0 + 7.0 * column), -pen.m(aids.BELOW_MM + row * _ROW_MM - 0.5))
            pen.mark_here(at, finding.number, finding.level, finding.id)
        return math.ceil(len(loose) / many)

    def _ghosts(self, pen: Pen, *, overhead: bool) -> None:
        """Draw where things were in the earlier revision, with an arrow from there."""
        if self.was is None:
            return
        for thing in self.scene.things:
            before = self.was.thing(thing.key)
            if before is None or thing.overhead is not overhead:
                continue
            if math.dist(before.place, thing.place) < _LEAST_MOVE_M:
                continue
            if len(before.plan) == 1:
                pen.arc(before.plan[0], before.radius_m, "earlier", key=thing.key)
            else:
                pen.path(before.plan, "earlier", closed=True, key=thing.key)
            self._moved(pen, before.place[:2], thing.place[:2], thing.key)

    def _moved(self, pen: Pen, start: Spot2, end: Spot2, key: str) -> None:
        if math.dist(start, end) < pen.m(1.0):
            return
        pen.path((start, end), "earlier", key=key)
        angle = math.degrees(math.atan2(end[1] - start[1], end[0] - start[0]))
        aids.arrow(pen, end, angle)

    def overhead(self, scale: float) -> View:
        """Return the ceiling plan, as a mirror on the floor shows it: its left is the plan's left."""
        pen, scene = Pen(scale, self.units), self.scene
        pen.path(scene.outline, "wall", closed=True)
        if scene.no_ceiling:
            pen.path(scene.outline, "unknown", closed=True, fill="hatch")
            pen.words((scene.width_m / 2.0, scene.length_m / 2.0), "ceiling not known", 3.0)
        self._facets(pen)
        self._joists(pen)
        for flat in scene.flats:
            if flat.on == "ceiling":
                symbols.flat(pen, flat, "panel")
                self._named(pen, flat.plan, flat.name, flat.key)
        self._zones(pen, overhead=True)
        for thing in scene.things:
            self._overhead(pen, thing)
        self._ghosts(pen, overhead=True)
        across, along = self._over()
        dimensions.along_top(pen, across, scene.length_m, scene.width_m)
        dimensions.along_left(pen, along, 0.0, scene.length_m, scene.length_m)
        for thing in scene.things:
            if thing.overhead or (thing.low_m >= symbols.CUT_AT_M and thing.kind not in _AT_THE_EAR):
                text = f"{thing.name} {thing.label}" if thing.label else thing.name
                pen.label(thing.place[:2], text, beside_mm=self._reach_mm(pen, thing), key=thing.key)
        self._marks(pen, overhead=True)
        left, top = dimensions.needed_mm(along, pen), dimensions.needed_mm(across, pen)
        low = (-pen.m(left), -pen.m(8.0))
        high = (scene.width_m + pen.m(RIGHT_MM), scene.length_m + pen.m(top))
        return pen.view("ceiling", "Ceiling plan, mirrored", low, high, _about_ceiling(scene))

    def _joists(self, pen: Pen) -> None:
        """Draw which way the joists run, where the file says so: whoever hangs something looks for them."""
        if not self.scene.joists:
            return
        along, across = (0.0, 1.0) if self.scene.joists == "front-to-rear" else (1.0, 0.0)
        reach = pen.m(9.0)
        places = [
            (u * self.scene.width_m, v * self.scene.length_m) for v in (0.62, 0.3, 0.8) for u in (0.78, 0.5, 0.25)
        ]
        middle = next((place for place in places if self._free(place, 1.3 * reach)), places[0])
        x, y = middle
        ends = [(x + way * reach * along, y + way * reach * across) for way in (-1.0, 1.0)]
        pen.path(ends, "ceiling")
        for (u, v), way in zip(ends, (-1.0, 1.0), strict=True):
            turn = math.degrees(math.atan2(way * across, way * along))
            aids.arrow(pen, (u, v), turn)
        pen.keep_clear(ends, 1.0)
        pen.label((x, y), f"joists {self.scene.joists}", 2.0, beside_mm=1.5)

    def _free(self, place: Spot2, reach_m: float) -> bool:
        """Return whether a place of the plan has the room about it, and neither seat nor loudspeaker."""
        corners = [(place[0] + a * reach_m, place[1] + b * reach_m) for a in (-1.0, 1.0) for b in (-1.0, 1.0)]
        near = any(math.dist(thing.place[:2], place) < 1.5 * reach_m for thing in self.scene.things)
        return not near and all(contains(self.scene.outline, corner) for corner in corners)

    def _overhead(self, pen: Pen, thing: Thing) -> None:
        if thing.kind == "seat":
            pen.arc(thing.place[:2], thing.radius_m, "beyond", key=thing.key)
        elif thing.overhead:
            symbols.cabinet(pen, thing, "speaker")
            if thing.covers_m is not None:
                self._covered(pen, thing, thing.covers_m)
        elif thing.low_m >= symbols.CUT_AT_M and thing.kind not in {"loudspeaker", "subwoofer"}:
            symbols.body(pen, thing, "solid")

    def _covered(self, pen: Pen, thing: Thing, radius_m: float) -> None:
        """Draw what a loudspeaker overhead covers on the level of the ears, as far as it is in the room."""
        outline, run = self.scene.outline, []
        for step in range(721):
            point = spot(thing.place[:2], radius_m, 0.5 * step)
            if contains(outline, point):
                run.append(point)
            else:
                self._run(pen, run, thing.key)
                run = []
        self._run(pen, run, thing.key)

    @staticmethod
    def _run(pen: Pen, run: list[Spot2], key: str) -> None:
        if len(run) > 1:
            pen.path(run, "cover", key=key)

    def _facets(self, pen: Pen) -> None:
        told: dict[tuple[float, float, float], None] = {}
        for plane in self.scene.planes:
            pen.path([corner[:2] for corner in plane.corners], "ceiling", closed=True)
            if plane.slope_deg < 0.05:  # noqa: PLR2004  level
                x, y = _middle([corner[:2] for corner in plane.corners])
                pen.label((x, y), f"height {pen.length(plane.corners[0][2])}", 2.3, beside_mm=0.0)
                continue
            for corner in plane.corners:
                told[round(corner[0], 3), round(corner[1], 3), round(corner[2], 3)] = None
            x, y = _middle([corner[:2] for corner in plane.corners])
            if plane.slope_deg < 80.0:  # noqa: PLR2004  an upright side has no slope to tell
                pen.label((x, y), f"slope {plane.slope_deg:.0f}°", 2.3, beside_mm=0.0)
        for x, y, z in told:
            across, along = pen.m(6.0), pen.m(2.5)
            inner = (
                x + (across if x < self.scene.width_m / 2.0 else -across),
                y + (along if y < self.scene.length_m / 2.0 else -along),
            )
            pen.label(inner, pen.length(z), 2.0, beside_mm=0.0)

    @staticmethod
    def _named(pen: Pen, points: Iterable[Spot2], name: str, key: str) -> None:
        pen.label(_middle(list(points)), name, 2.0, beside_mm=0.0, key=key)


def _middle(points: list[Spot2]) -> Spot2:
    return sum(x for x, _ in points) / len(points), sum(y for _, y in points) / len(points)


def _about_plan(scene: Scene) -> str:
    seats = sum(thing.kind == "seat" for thing in scene.things)
    sources = sum(thing.kind in {"loudspeaker", "subwoofer"} for thing in scene.things)
    return f"Plan of the room from above, front wall at the top: {seats} seats, {sources} loudspeakers and subwoofers."


def _about_ceiling(scene: Scene) -> str:
    over = sum(thing.overhead for thing in scene.things)
    return f"Ceiling as a mirror on the floor shows it, front wall at the top: {over} loudspeakers overhead."
