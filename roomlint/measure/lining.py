"""What a room is lined with: each surface's area by what covers it, and what that absorbs in a world."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final, NamedTuple

from roomlint.design.base import Missing, need, unsaid
from roomlint.design.quantity import Quantity, assumed
from roomlint.figures import areas, plan
from roomlint.figures.absorption import Range, around, coefficient
from roomlint.figures.decay import Faced
from roomlint.figures.domain import Refused
from roomlint.measure.view import View

if TYPE_CHECKING:
    from collections.abc import Mapping

    from roomlint.design.shell import Opening, RoofWindow, Treatment
    from roomlint.figures.areas import Patch
    from roomlint.figures.direction import Vector3
    from roomlint.measure.world import World

TABLES: Final = "absorption as published tables give it, where they differ anything between"
TESTED: Final = "absorption of treatments as stated, good to 10 %"
SEATED: Final = (
    "seats from empty in leather to occupied in fabric, 0.5 to 1 m2 each, and other furniture up to a tenth of the floor"
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
"""What tables, shelves, books and people absorb that no file lists, at the most, of the floor's area. Practice, ours."""
_HOLE: Final = Range(0.99, 0.99)
_SLACK: Final = 1.02
"""Pieces of a surface may come to this much more than the surface: what corners are good for."""


class Part(NamedTuple):
    """A part of a surface that is covered alike."""

    surface: str
    normal: Vector3
    area_m2: float
    materials: tuple[str, ...] = ()
    """What it may be by the table; empty where a treatment's own report says it, or a hole."""
    treatment: Treatment | None = None


class Lining(View):
    """The inside of the room, surface by surface."""

    def surfaces(self, world: World) -> tuple[tuple[str, Vector3, float], ...]:
        """Return every surface with its normal into the room and its area, slopes of a ceiling one by one."""

        def found(w: World) -> tuple[tuple[str, Vector3, float], ...]:
            space = self.figures.space
            outline, facets = space.outline(w), space.facets(w)
            walls = areas.wall_areas_m2(outline, facets)
            made: list[tuple[str, Vector3, float]] = []
            for number, area in enumerate(walls):
                nx, ny = plan.inward_normal(outline, number)
                made.append((space.wall_name(number), (nx, ny, 0.0), area))
            made.append(("floor", (0.0, 0.0, 1.0), plan.area_m2(outline)))
            made += [("ceiling", facet.normal, facet.area_m2) for facet in facets]
            return tuple(made)

        return world.once("surfaces", found)

    def parts(self, world: World) -> tuple[Part, ...]:
        """Return every surface cut into what covers it.

        Raises `Missing` for a surface without a finish, or where the file does not speak of openings or treatments.
        """
        return world.once("lining", self._parts)

    def _parts(self, w: World) -> tuple[Part, ...]:
        missing = unsaid(self.design, "room.openings", "room.roof_windows", "treatments")
        if missing is not None:
            raise missing
        found: list[Part] = []
        whole: dict[str, float] = {}
        for name, _, area in self.surfaces(w):
            whole[name] = whole.get(name, 0.0) + area
        for name, covered in self._covered(w).items():
            taken = sum(area for _, area in covered)
            if taken > _SLACK * whole.get(name, 0.0):
                raise Refused(f"what is on {name!r} takes {taken:.1f} m2, and it has {whole.get(name, 0.0):.1f} m2")
            for surface, normal, area in self.surfaces(w):
                if surface != name:
                    continue
                share = area / whole[name]
                for part, on_it in covered:
                    found.append(part._replace(normal=normal, area_m2=on_it * share))
                bare = area - taken * share
                if bare > 0.0:
                    found.append(Part(name, normal, bare, (self._finish(name),)))
        return tuple(found)

    def _covered(self, w: World) -> dict[str, list[tuple[Part, float]]]:
        """Return what lies in or on each surface before its finish shows, with its area."""
        found: dict[str, list[tuple[Part, float]]] = {name: [] for name, _, _ in self.surfaces(w)}
        hung: dict[str, list[tuple[Treatment, float, Patch | None]]] = {}
        flat = (0.0, 0.0, 1.0)
        for treatment in self.design.treatments:
            on = need(treatment.on, treatment, "on")
            area = w(need(treatment.width_m, treatment, "width")) * w(need(treatment.height_m, treatment, "height"))
            found.setdefault(on, []).append((Part(on, flat, area, self._made_of(treatment), treatment), area))
            hung.setdefault(on, []).append((treatment, area, self._patch(w, treatment)))
        for opening in self.design.shell.openings:
            wall, hole = need(opening.wall, opening, "wall"), self._opening(w, opening)
            area = hole[0] - sum(
                hole[1].common_m2(patch) for _, _, patch in hung.get(wall, ()) if hole[1] is not None and patch is not None
            )
            if area > 0.0:
                kind = need(opening.kind, opening, "kind")
                found.setdefault(wall, []).append((Part(wall, flat, area, OPENS.get(kind, ())), area))
        for pane in self.design.shell.roof_windows:
            area = self._pane(w, pane)
            found["ceiling"].append((Part("ceiling", flat, area, GLASS), area))
        return found

    def _patch(self, w: World, treatment: Treatment) -> Patch | None:
        """Return where a treatment is on its wall, None where the file does not place it."""
        start, low, width, height = treatment.start_m, treatment.bottom_m, treatment.width_m, treatment.height_m
        if start is None or low is None or width is None or height is None:
            return None
        return areas.Patch(w(start), w(low), w(width), w(height))

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
    def _made_of(treatment: Treatment) -> tuple[str, ...]:
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

    def faces(self, world: World, band_hz: int) -> tuple[Faced, ...]:
        """Return every part with what it absorbs in an octave."""
        return world.once(
            ("faces", band_hz),
            lambda w: tuple(Faced(p.normal, p.area_m2, self.absorbed(w, p, band_hz)) for p in self.parts(w)),
        )

    def absorbed(self, world: World, part: Part, band_hz: int) -> float:
        """Return the coefficient of a part in an octave: somewhere within what its sources give."""
        if part.treatment is None:
            if not part.materials:
                return _HOLE.high
            return coefficient(part.materials, band_hz).at(world(self._where(TABLES, part.materials)))
        if part.materials:
            return coefficient(part.materials, band_hz).at(world(self._where(TABLES, part.materials)))
        stated = self._stated(part.treatment, band_hz)
        return stated.at(world(self._where(TESTED, part.treatment.key)))

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
        missing = unsaid(self.design, "seats")
        if missing is not None:
            raise missing
        count, floor = len(self.design.seats), plan.area_m2(self.figures.space.outline(world))
        least = count * SEAT_M2[0] * coefficient(("seat-leather",), band_hz).low
        most = count * SEAT_M2[1] * coefficient(("seat-occupied",), band_hz).high + OTHER * floor
        return (least + most) / 2.0 + world(self._where(SEATED, "")) * (most - least) / 2.0

    @staticmethod
    def is_bare(part: Part) -> bool:
        """Whether a part is a finish that something could cover: no opening, no treatment, not the floor."""
        return part.surface != "floor" and part.treatment is None and part.materials not in {(), *OPENS.values()}

    def free_m2(self, world: World) -> dict[str, float]:
        """Return what nothing covers of each wall and of the ceiling."""
        found: dict[str, float] = {}
        for part in self.parts(world):
            if self.is_bare(part):
                found[part.surface] = found.get(part.surface, 0.0) + part.area_m2
        return found
