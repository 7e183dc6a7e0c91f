"""What a room is lined with: each surface's area by what covers it, and what that absorbs in a world."""

from __future__ import annotations

from functools import cached_property
from typing import TYPE_CHECKING, Final, NamedTuple

from roomlint import cutting, plane
from roomlint.design.base import Missing, need, unsaid
from roomlint.design.quantity import Quantity, assumed
from roomlint.figures import areas
from roomlint.figures.absorption import Range, around, coefficient
from roomlint.figures.decay import directions
from roomlint.figures.domain import Refused
from roomlint.measure.view import View

if TYPE_CHECKING:
    from collections.abc import Mapping

    from roomlint.design.shell import Opening, RoofWindow, Treatment
    from roomlint.figures.areas import Patch
    from roomlint.measure.world import World

TABLES: Final = "absorption as published tables give it, where they differ anything between"
TESTED: Final = "absorption of treatments as stated, good to 10 %"
SEATED: Final = (
    "seats from empty in leather to occupied in fabric, 0.5 to 1 m2 each, and furniture up to a tenth of the floor"
)
GLASS: Final = ("glass", "heavy-glass", "double-glazing")
"""What a pane may be where no file says which."""
OPENS: Final = {"door": ("door",), "glass-door": GLASS, "window": GLASS}
"""What fills an opening; one without a leaf takes all that meets it."""
LAID: Final = {
    "carpet": ("carpet-on-concrete", "carpet-on-felt"), "curtain": ("curtain-light", "curtain-medium", "curtain-heavy"),
}  # fmt: skip
"""What a treatment without a test report may be, by its kind."""
WOOL_M: Final = (0.045, 0.055)
"""A panel of mineral wool of this thickness is the table's."""
SEAT_M2: Final = (0.5, 1.0)
"""Of the floor that one seat takes: a row of cinema seats, and an armchair with its sides. Practice, ours."""
OTHER: Final = 0.1
"""What tables, shelves and people absorb that no file lists, at the most, of the floor's area. Practice, ours."""
UNKNOWN: Final = -1
_HOLE: Final = 0.99
_SLACK: Final = 1.02
"""Pieces of a surface may come to this much more than the surface: what corners are good for."""


class Part(NamedTuple):
    """A part of a surface that is covered alike."""

    surface: str
    area_m2: float
    materials: tuple[str, ...] = ()
    """What it may be by the table; empty where a treatment's own report says it, or a hole."""
    treatment: Treatment | None = None
    direction: int = UNKNOWN
    """Which of the room's directions it faces along; `UNKNOWN` where surfaces are not square to each other."""

    @property
    def is_bare(self) -> bool:
        """Whether it is a finish that something could cover: no opening, no treatment, not the floor."""
        return self.surface != "floor" and self.treatment is None and self.materials not in {(), *OPENS.values()}


class Lining(View):
    """The inside of the room, surface by surface."""

    def surfaces(self, world: World) -> tuple[tuple[str, float], ...]:
        """Return the area of every surface, slopes of a ceiling one by one."""

        def found(w: World) -> tuple[tuple[str, float], ...]:
            space = self.figures.space
            outline, facets = space.outline(w), space.facets(w)
            walls = enumerate(areas.wall_areas_m2(outline, facets))
            made = [(space.wall_name(number), area) for number, area in walls]
            return (*made, ("floor", plane.area_m2(outline)), *(("ceiling", facet.area_m2) for facet in facets))

        return world.once("surfaces", found)

    @cached_property
    def directions(self) -> tuple[int, ...]:
        """Which of the room's directions each surface faces along; none where they are not square to each other."""
        space = self.figures.space
        outline, facets = space.outline(self.world), space.facets(self.world)
        walls = [(*cutting.inward_normal(outline, number), 0.0) for number in range(len(outline))]
        try:
            return directions([*walls, (0.0, 0.0, 1.0), *(facet.normal for facet in facets)])
        except Refused:
            return ()

    def parts(self, world: World) -> tuple[Part, ...]:
        """Return every surface cut into what covers it.

        Raises `Missing` for a surface without a finish, or where the file does not speak of openings or treatments.
        """
        return world.once("lining", self._parts)

    def _parts(self, w: World) -> tuple[Part, ...]:
        missing = unsaid(self.design, "room.openings", "room.roof_windows", "treatments")
        if missing is not None:
            raise missing
        covered, whole, found = self._covered(w), dict[str, float](), list[Part]()
        for name, area in self.surfaces(w):
            whole[name] = whole.get(name, 0.0) + area
        taken = {name: sum(part.area_m2 for part in parts) for name, parts in covered.items()}
        for name, most in whole.items():
            if taken.get(name, 0.0) > _SLACK * most:
                raise Refused(f"what is on {name!r} takes {taken[name]:.1f} m2, and it has {most:.1f} m2")
        facing = self.directions or (UNKNOWN,) * len(self.surfaces(w))
        for (name, area), direction in zip(self.surfaces(w), facing, strict=True):
            # Where on a ceiling of several slopes a panel lies matters little: each has its share.
            share = area / whole[name]
            on_it = covered.get(name, ())
            found += [part._replace(direction=direction, area_m2=part.area_m2 * share) for part in on_it]
            bare = area - taken.get(name, 0.0) * share
            if bare > 0.0:
                found.append(Part(name, bare, (self._finish(name),), None, direction))
        return tuple(found)

    def _covered(self, w: World) -> dict[str, list[Part]]:
        """Return what lies in or on each surface before its finish shows."""
        found: dict[str, list[Part]] = {}
        hung: dict[str, list[Patch]] = {}
        for treatment in self.design.treatments:
            on = need(treatment.on, treatment, "on")
            area = w(need(treatment.width_m, treatment, "width")) * w(need(treatment.height_m, treatment, "height"))
            found.setdefault(on, []).append(Part(on, area, self.made_of(treatment), treatment))
            patch = self._patch(w, treatment)
            if patch is not None:
                hung.setdefault(on, []).append(patch)
        for opening in self.design.shell.openings:
            wall, (area, patch) = need(opening.wall, opening, "wall"), self._opening(w, opening)
            if patch is not None:
                # A curtain before a window: the glass does not show.
                area -= sum(patch.common_m2(other) for other in hung.get(wall, ()))
            if area > 0.0:
                materials = OPENS.get(need(opening.kind, opening, "kind"), ())
                found.setdefault(wall, []).append(Part(wall, area, materials))
        panes = [Part("ceiling", self._pane(w, pane), GLASS) for pane in self.design.shell.roof_windows]
        return {**found, "ceiling": found.get("ceiling", []) + panes}

    def _patch(self, w: World, treatment: Treatment) -> Patch | None:
        """Return where a treatment is on its wall, None where the file does not place it."""
        start, low, width, height = treatment.start_m, treatment.bottom_m, treatment.width_m, treatment.height_m
        if start is None or low is None or width is None or height is None:
            return None
        return areas.Patch(w(start), w(low), w(width), w(height))

    def meeting(self, world: World, surface: str, patch: Patch) -> Opening | RoofWindow | None:
        """Return an opening of a wall, or a window of the ceiling, that a rectangle on it shares area with.

        On the ceiling from the left and from the front, as its windows are measured; one whose place is not given is
        nowhere.
        """
        if surface == "ceiling":
            for pane in self.design.shell.roof_windows:
                sides = (pane.from_left_m, pane.from_front_m, pane.width_m, pane.length_m)
                left, front, width, length = (world(side) if side is not None else None for side in sides)
                if left is None or front is None or width is None or length is None:
                    continue
                if areas.Patch(left, front, width, length).common_m2(patch) > 0.0:
                    return pane
            return None
        for opening in self.design.shell.openings:
            if opening.wall == surface and opening.width_m is not None and opening.height_m is not None:
                hole = self._opening(world, opening)[1]
                if hole is not None and hole.common_m2(patch) > 0.0:
                    return opening
        return None

    def _opening(self, w: World, opening: Opening) -> tuple[float, Patch | None]:
        width, height = need(opening.width_m, opening, "width"), need(opening.height_m, opening, "height")
        place = None
        if opening.start_m is not None:
            sill = w(opening.sill_m) if opening.sill_m is not None else 0.0
            place = areas.Patch(w(opening.start_m), sill, w(width), w(height))
        return w(width) * w(height), place

    @staticmethod
    def _pane(w: World, pane: RoofWindow) -> float:
        return w(need(pane.width_m, pane, "width")) * w(need(pane.length_m, pane, "length"))

    def _finish(self, name: str) -> str:
        """Return a surface's finish; raises `Missing` with the key that would give it."""
        surface = self.design.shell.surface(name)
        if surface is None:
            wall = name not in {"ceiling", "floor"}
            raise Missing(self.design.shell, f"walls[{name}].finish" if wall else f"{name}.finish")
        return need(surface.finish, surface, "finish")

    @staticmethod
    def made_of(treatment: Treatment) -> tuple[str, ...]:
        """Return what a treatment may be by the table; empty where its own report is given."""
        if treatment.absorption is not None:
            return ()
        kind, thick = need(treatment.kind, treatment, "kind"), treatment.thickness_m
        if kind in LAID:
            return LAID[kind]
        wool = treatment.material == "mineral-wool" and thick is not None and treatment.gap_m is None
        if kind == "absorber" and wool and thick is not None and WOOL_M[0] <= thick.value <= WOOL_M[1]:
            return ("mineral-wool-50",)
        raise Missing(treatment, "absorption")

    def groups(self, world: World) -> tuple[Part, ...]:
        """Return the parts, those that face alike and are covered alike taken together."""

        def found(w: World) -> tuple[Part, ...]:
            alike: dict[tuple[object, ...], Part] = {}
            for part in self.parts(w):
                key = (part.direction, part.materials, part.treatment if part.treatment is not None else "")
                known = alike.get(key)
                alike[key] = part if known is None else known._replace(area_m2=known.area_m2 + part.area_m2)
            return tuple(alike.values())

        return world.once("lining groups", found)

    def absorbed(self, world: World, part: Part, band_hz: int) -> float:
        """Return the coefficient of a part in an octave: somewhere within what its sources give."""
        if part.treatment is None or part.materials:
            return self.taken(world, part.materials, band_hz)
        stated = self._stated(part.treatment, band_hz)
        return stated.at(world(self._where(TESTED, part.treatment)))

    def taken(self, world: World, materials: tuple[str, ...], band_hz: int) -> float:
        """Return the coefficient of what may be one of some materials of the table; a hole takes all."""
        if not materials:
            return _HOLE
        return coefficient(materials, band_hz).at(world(self._where(TABLES, materials)))

    def between_m2(self, band_hz: int) -> tuple[float, float]:
        """Return the least and the most that the room may take in an octave, by all that its sources give.

        What stands on the floor counts as its most only: what it takes of the bass no table says.
        """
        least, most = 0.0, self._furniture_m2(self.world, band_hz)[1]
        for part in self.groups(self.world):
            if part.treatment is not None and not part.materials:
                span = self._stated(part.treatment, band_hz)
            else:
                span = coefficient(part.materials, band_hz) if part.materials else Range(_HOLE, _HOLE)
            least, most = least + part.area_m2 * span.low, most + part.area_m2 * span.high
        return least, most

    def opening_at(self, world: World, wall: str, across_m: float, up_m: float) -> Opening | None:
        """Return the opening that a point of a wall is in; one whose place is not given is nowhere."""
        spot = areas.Patch(across_m, up_m, 0.0, 0.0)
        for opening in self.design.shell.openings:
            if opening.wall == wall and opening.start_m is not None and opening.width_m is not None:
                patch = self._opening(world, opening)[1] if opening.height_m is not None else None
                if patch is not None and patch.holds(spot):
                    return opening
        return None

    def material(self, opening: Opening | None, surface: str) -> tuple[str, ...] | None:
        """Return what an opening, or else a surface, may be of by the table; None for a surface without a finish."""
        if opening is not None:
            return OPENS.get(need(opening.kind, opening, "kind"), ())
        found = self.design.shell.surface(surface)
        return (found.finish,) if found is not None and found.finish is not None else None

    @staticmethod
    def _stated(treatment: Treatment, band_hz: int) -> Range:
        bands: Mapping[int, float] = need(treatment.absorption, treatment, "absorption")
        if band_hz not in bands:
            name = f"{band_hz // 1000} kHz" if band_hz >= 1000 else f"{band_hz} Hz"  # noqa: PLR2004
            raise Missing(treatment, f"absorption.{name}")
        return around(bands[band_hz], bands[band_hz])

    def _where(self, words: str, of: object) -> Quantity:
        """Return where within its range a coefficient is: one reading for all octaves, for sources differ alike."""
        return self.once(("where", words, of), lambda: assumed(0.0, 1.0, "", words))

    def furnished_m2(self, world: World, band_hz: int) -> float:
        """Return what stands in the room absorbs in an octave: seats of whatever cover, and what no file lists."""
        least, most = self._furniture_m2(world, band_hz)
        return (least + most) / 2.0 + world(self._where(SEATED, "")) * (most - least) / 2.0

    def _furniture_m2(self, world: World, band_hz: int) -> tuple[float, float]:
        missing = unsaid(self.design, "seats")
        if missing is not None:
            raise missing
        count, floor = len(self.design.seats), plane.area_m2(self.figures.space.outline(world))
        least = count * SEAT_M2[0] * coefficient(("seat-leather",), band_hz).low
        most = count * SEAT_M2[1] * coefficient(("seat-occupied",), band_hz).high + OTHER * floor
        return least, most

    def free_m2(self, world: World) -> dict[str, float]:
        """Return what nothing covers of each wall and of the ceiling."""
        found: dict[str, float] = {}
        for part in self.parts(world):
            if part.is_bare:
                found[part.surface] = found.get(part.surface, 0.0) + part.area_m2
        return found
