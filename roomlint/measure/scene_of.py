"""Makes the scene of a room: everything that a drawing shows, computed by the figures, in plain numbers."""

from __future__ import annotations

from contextlib import suppress
from typing import TYPE_CHECKING, Final

from roomlint.design.base import Missing, need
from roomlint.design.shell import HORIZONTAL
from roomlint.figures.domain import Refused
from roomlint.measure.bodies import Bodies
from roomlint.measure.curves import charts
from roomlint.measure.scene import Bounce, Flat, Gap, Line, Outlet, Plane, Scene, Side
from roomlint.measure.scene_cuts import cut
from roomlint.measure.scene_things import things

if TYPE_CHECKING:
    from collections.abc import Iterator

    from roomlint.design.listening import Picture
    from roomlint.design.shell import Opening, Treatment
    from roomlint.design.supply import Receptacle
    from roomlint.measure import Figures
    from roomlint.measure.scene import Cut, Shape, Spot2, Spot3
    from roomlint.roof import Facets

_CORNERS: Final = ((-1, -1), (1, -1), (1, 1), (-1, 1))


def scene_of(figures: Figures) -> Scene:
    """Return the scene of a design. What the file does not place is named in it, never put anywhere."""
    design, shell = figures.design, figures.design.shell
    planes = tuple(_planes(figures))
    drawn = tuple(things(figures))
    tolerance = design.survey.tolerance_m
    joists = shell.ceiling.framing.runs if shell.ceiling is not None else None
    return Scene(
        width_m=shell.width_m.value,
        length_m=shell.length_m.value,
        height_m=max([z for plane in planes for _, _, z in plane.corners] or [figures.space.highest_m, 0.1]),
        sides=tuple(_sides(figures)),
        gaps=tuple(_gaps(figures)),
        things=drawn,
        flats=(*_picture(figures), *_panels(figures), *_roof_windows(figures)),
        outlets=tuple(_outlets(figures)),
        planes=planes,
        cuts=tuple(_cuts(figures)),
        lines=tuple(_lines(figures)),
        bounces=tuple(_bounces(figures)),
        hides=tuple(_hides(figures)),
        unplaced=tuple(_unplaced(figures, {thing.key for thing in drawn})),
        no_ceiling=not planes,
        joists=joists or "",
        tolerance_m=tolerance.value if tolerance is not None else None,
        surveyed_on=str(design.survey.on or ""),
        charts=tuple(charts(figures)),
    )


def _planes(figures: Figures) -> Iterator[Plane]:
    with suppress(Missing, Refused):
        for facet in figures.space.facets(figures.world):
            yield Plane(tuple((x, y, facet.height_m((x, y))) for x, y in facet.outline), facet.slope_deg)


def _inward(start: Spot2, end: Spot2) -> Spot2:
    """Return the way into the room from a wall of an outline that runs clockwise."""
    dx, dy = end[0] - start[0], end[1] - start[1]
    length = (dx * dx + dy * dy) ** 0.5
    return dy / length, -dx / length


def _sides(figures: Figures) -> Iterator[Side]:
    outline = figures.space.outline(figures.world)
    for number, corner in enumerate(figures.design.shell.corners):
        start, end = outline[number], outline[(number + 1) % len(outline)]
        yield Side(f"surface/{corner.wall}", corner.wall, start, end, _inward(start, end))


def _along(figures: Figures, wall: str, *metres: float) -> tuple[tuple[Spot2, ...], Spot2]:
    """Return points of a wall, so far from its left-hand end seen from inside, and the way into the room."""
    outline = figures.space.outline(figures.world)
    number = figures.design.shell.wall_names.index(wall)
    (x0, y0), (x1, y1) = outline[number], outline[(number + 1) % len(outline)]
    length = ((x1 - x0) ** 2 + (y1 - y0) ** 2) ** 0.5
    shares = [metre / length for metre in metres]
    return tuple((x0 + s * (x1 - x0), y0 + s * (y1 - y0)) for s in shares), _inward((x0, y0), (x1, y1))


def _gaps(figures: Figures) -> Iterator[Gap]:
    for opening in figures.design.shell.openings:
        if _is_placed(opening):
            first, wide = need(opening.start_m, opening, "").value, need(opening.width_m, opening, "").value
            (start, end), inward = _along(figures, str(opening.wall), first, first + wide)
            sill, height = opening.sill_m, opening.height_m
            yield Gap(
                opening.key, opening.words, opening.kind, start, end, inward,
                sill.value if sill is not None else None, height.value if height is not None else None,
                opening.hinge or "", opening.swing or "",
            )  # fmt: skip


def _is_placed(opening: Opening) -> bool:
    return None not in (opening.start_m, opening.width_m)


def _picture(figures: Figures) -> Iterator[Flat]:
    picture = figures.design.picture
    if picture is None or picture.centre is None:
        return
    with suppress(Missing, Refused):
        wide, high = (size.value for size in figures.onscreen.size(picture))
        nx, ny = figures.fixtures.faces(figures.world, picture)
        x, y, z = picture.centre.xyz
        half = wide / 2.0
        ends = ((x - half * ny, y + half * nx), (x + half * ny, y - half * nx))
        kind = picture.kind or "picture"
        yield Flat(picture.key, picture.words, kind, ends, z - high / 2.0, z + high / 2.0, "", (nx, ny))


def _panels(figures: Figures) -> Iterator[Flat]:
    for panel in figures.design.treatments:
        if panel.on in HORIZONTAL:
            yield from _overhead(figures, panel)
        elif panel.on in figures.design.shell.wall_names and None not in (panel.start_m, panel.width_m):
            first, wide = need(panel.start_m, panel, "").value, need(panel.width_m, panel, "").value
            ends, inward = _along(figures, str(panel.on), first, first + wide)
            low = panel.bottom_m.value if panel.bottom_m is not None else 0.0
            high = low + (panel.height_m.value if panel.height_m is not None else 0.0)
            thick = panel.thickness_m.value if panel.thickness_m is not None else 0.0
            yield Flat(panel.key, panel.words, panel.kind, ends, low, high, str(panel.on), inward, thick)


def _overhead(figures: Figures, panel: Treatment) -> Iterator[Flat]:
    given = (panel.from_left_m, panel.from_front_m, panel.width_m, panel.height_m)
    if None in given:
        return
    left, from_front, wide, deep = (need(one, panel, "").value for one in given)
    y = figures.design.shell.length_m.value - from_front
    plan = ((left, y), (left + wide, y), (left + wide, y - deep), (left, y - deep))
    z = 0.0
    with suppress(Missing, Refused):
        if panel.on == "ceiling":
            z = figures.space.ceiling_height_m(figures.world, left + wide / 2.0, y - deep / 2.0)
    yield Flat(panel.key, panel.words, panel.kind, plan, z, z, str(panel.on))


def _roof_windows(figures: Figures) -> Iterator[Flat]:
    for window in figures.design.shell.roof_windows:
        with suppress(Missing, Refused):
            plan = tuple(figures.staging.pane(window)(figures.world))
            heights = [figures.space.ceiling_height_m(figures.world, x, y) for x, y in plan]
            yield Flat(window.key, window.words, "roof window", plan, min(heights), max(heights), "ceiling")


def _outlets(figures: Figures) -> Iterator[Outlet]:
    for circuit in figures.design.circuits:
        for outlet in circuit.receptacles:
            found = _outlet(figures, outlet)
            if found is not None:
                place, inward = found
                yield Outlet(f"{outlet.key}+{circuit.key}", outlet.words, circuit.id, place, inward)


def _outlet(figures: Figures, outlet: Receptacle) -> tuple[Spot3, Spot2] | None:
    z = outlet.height_m.value if outlet.height_m is not None else 0.0
    if outlet.wall in figures.design.shell.wall_names and outlet.start_m is not None:
        ((x, y),), inward = _along(figures, str(outlet.wall), outlet.start_m.value)
        return (x, y, z), inward
    if outlet.wall in HORIZONTAL and None not in (outlet.from_left_m, outlet.from_front_m):
        left, front = need(outlet.from_left_m, outlet, ""), need(outlet.from_front_m, outlet, "")
        return (left.value, figures.design.shell.length_m.value - front.value, z), (0.0, 0.0)
    return None


def _cuts(figures: Figures) -> Iterator[Cut]:
    seats = [seat for seat in figures.design.seats if seat.ear is not None]
    at = (figures.design.shell.width_m.value / 2.0, figures.design.shell.length_m.value / 2.0)
    if seats:
        seat = next((one for one in seats if one.reference), seats[0])
        x, y, _ = need(seat.ear, seat, "ear").xyz
        at = (x, y)
    facets: Facets = ()
    with suppress(Missing, Refused):
        facets = tuple(figures.space.facets(figures.world))
    outline = figures.space.outline(figures.world)
    yield cut("long", at[0], outline, facets)
    yield cut("cross", at[1], outline, facets)


def _lines(figures: Figures) -> Iterator[Line]:
    picture, world = figures.design.picture, figures.world
    if picture is None or picture.centre is None:
        return
    corners = _corners(figures, picture)
    if corners is None:
        return
    (left, right), low, high = corners
    for seat in figures.design.seats:
        if seat.ear is None:
            continue
        x, y, _ = seat.ear.xyz
        eye = (x, y, figures.viewing.eye_m(world, seat))
        middle = ((left[0] + right[0]) / 2.0, (left[1] + right[1]) / 2.0)
        yield Line("sight low", seat.key, eye, (*middle, low))
        if seat.reference or len(figures.design.seats) == 1:
            yield Line("sight high", seat.key, eye, (*middle, high))
            yield Line("sight left", seat.key, eye, (*left, (low + high) / 2.0))
            yield Line("sight right", seat.key, eye, (*right, (low + high) / 2.0))
    projector = picture.projector
    if projector is not None and projector.lens is not None:
        for across, up in _CORNERS:
            end = left if across < 0 else right
            yield Line("beam", projector.key, projector.lens.xyz, (*end, low if up < 0 else high))


def _corners(figures: Figures, picture: Picture) -> tuple[Shape, float, float] | None:
    found = next(iter(_picture(figures)), None)
    return (found.plan, found.low_m, found.high_m) if found is not None and picture.centre is not None else None


def _bounces(figures: Figures) -> Iterator[Bounce]:
    design = figures.design
    for seat in design.seats:
        if seat.ear is None or not (seat.reference or len(design.seats) == 1):
            continue
        for speaker in design.loudspeakers:
            with suppress(Missing, Refused):
                early = figures.reflections.early(speaker, seat)
                if early:
                    told = figures.reflections.first(speaker, seat)
                    yield Bounce(speaker.key, seat.key, told.surface, early[0].bounce)


def _hides(figures: Figures) -> Iterator[tuple[str, str]]:
    for seat in figures.design.seats:
        with suppress(Missing, Refused):
            hidden = figures.viewing.over_heads(seat)
            if hidden is not None and hidden.figure.value < 0.0:
                head = next((one for one in figures.design.seats if one.words == hidden.head), None)
                if head is not None:
                    yield seat.key, head.key


def _unplaced(figures: Figures, drawn: set[str]) -> Iterator[tuple[str, str]]:
    design = figures.design
    panels = {panel.key for panel in _panels(figures)}
    for thing in figures.bodies.things:
        if not Bodies.is_placed(thing) or thing.key not in drawn:
            yield thing.key, thing.words
    yield from ((one.key, one.words) for one in design.shell.openings if not _is_placed(one))
    if design.picture is not None and next(iter(_picture(figures)), None) is None:
        yield design.picture.key, design.picture.words
    yield from ((one.key, one.words) for one in design.treatments if one.key not in panels)
    for circuit in design.circuits:
        missing = (outlet for outlet in circuit.receptacles if _outlet(figures, outlet) is None)
        yield from ((outlet.key, f"receptacle {outlet.words} on {circuit.words}") for outlet in missing)
