"""The places of what neither makes sound nor sits: picture, projector, racks, panels and receptacles."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from roomlint.review import Cases, Level, No, Seen, Subjects, at_least, found, practice, rule

from . import BUILT, HELD

if TYPE_CHECKING:
    from collections.abc import Iterator

    from roomlint.design.listening import Picture, Projector
    from roomlint.design.shell import Opening, Treatment
    from roomlint.design.supply import Circuit, Rack, Receptacle
    from roomlint.review import Applies, Figure, Found, Room, Windows

    Fixture = Picture | Projector | Rack | Treatment | Seen[Receptacle, Circuit]
    Flat = Picture | Treatment


def _fixtures(room: Room) -> Iterator[Fixture]:
    picture = room.design.picture
    if picture is not None:
        yield picture
        if picture.projector is not None:
            yield picture.projector
    yield from room.design.racks
    yield from room.figures.mounts.panels()
    for circuit in room.design.circuits:
        for outlet in circuit.receptacles:
            # Most receptacles are planned by circuit; what says nothing of a wall has no place that could be wrong.
            if outlet.wall is not None or outlet.start_m is not None:
                yield Seen(outlet, circuit, " on ")


def _beside_openings(room: Room) -> Iterator[Seen[Flat, Opening]]:
    picture = room.design.picture
    hung = ([picture] if picture is not None else []) + list(room.figures.mounts.panels())
    for thing in hung:
        for opening in room.design.shell.openings:
            yield Seen(thing, opening, " beside ")


FIXTURES: Subjects[Fixture] = Subjects(
    "picture, projector, rack, panel or receptacle", _fixtures,
    ("picture", "electronics.racks", "treatments", "circuits"),
)  # fmt: skip
FLAT_BESIDE: Subjects[Seen[Flat, Opening]] = Subjects(
    "opening beside a picture or panel", _beside_openings, ("room.openings", "picture", "treatments")
)
DISPLAY: Final = at_least(0.0, "m", error=0.0)
COVER: Final = at_least(0.0, "m")


def _on_its_wall(room: Room, both: Seen[Flat, Opening]) -> Applies:
    """Say whether a picture or a panel hangs on the wall that an opening is in."""
    held = room.figures.fixtures.surface(both.source)
    if held in HELD:
        return No(HELD[held])
    return True if held == both.seat.wall else No(f"it hangs on the {held}, and {both.seat.words} is elsewhere")


def _by_weight(room: Room, both: Seen[Flat, Opening]) -> Windows:
    """Return the windows of a display, which is heavy, or of what may cover an opening on purpose."""
    return DISPLAY if room.figures.fixtures.is_display(both.source) else COVER


@rule(
    "layout.fixtures-inside",
    level=Level.ERROR,
    basis=BUILT,
    each=FIXTURES,
    window=at_least(-0.05, "m"),
    says={
        "fail": "reaches {figure} inside the room's surfaces; {window} wanted",
        "negative": "reaches {size} beyond a surface of the room; correct its place or size, or the room's outline",
    },
    since="0.2.0",
)
def fixtures_inside(room: Room, thing: Fixture) -> Figure:
    """Picture, projector, racks, acoustic panels and receptacles are inside the room.

    Why: A screen wider than its wall or a receptacle past the wall's end is a slip of the pen that costs a day on site.

    How decided: Least distance to the surfaces, negative outside: of the corners of the lit picture, of a panel's edges
    on its wall or in the plan of its ceiling, of the lens, the middle of a rack's front, and a receptacle along its
    wall, and from floor to ceiling. A picture without a size counts by its middle. Five centimetres are allowed. A
    receptacle of which the file names no wall is not judged.

    Remedy: Correct the place or the size, or the room's outline or ceiling.

    When to waive: A picture or a rack in a recess that the outline leaves out.
    """
    return room.figures.fixtures.depth_inside(thing.source if isinstance(thing, Seen) else thing)


@rule(
    "layout.fixtures-clear-of-openings",
    level=Level.WARNING,
    basis=(BUILT, practice("a display needs a wall behind it; what else covers an opening may do so on purpose")),
    each=FLAT_BESIDE,
    when=_on_its_wall,
    window=Cases("m", (("a display", DISPLAY), ("a projection screen or a panel", COVER)), _by_weight),
    says={
        "fail": "hangs {figure} from the {kind}; {window} wanted",
        "negative": "hangs {size} across the {kind}; nothing holds in glass or air, and it cannot be used",
    },
    after=("layout.fixtures-inside",),
    since="0.2.0",
)
def fixtures_clear_of_openings(room: Room, both: Seen[Flat, Opening]) -> Found:
    """Pictures and acoustic panels that hang on a wall leave its doors, windows and openings free.

    Why: A mount holds in neither glass nor air, and a covered door or window is no way out, no light and no air.

    How decided: Gap on the wall between the lit picture or the panel and the opening; negative when they overlap. An
    error for a display. A warning for a projection screen or a panel, which may span a window on purpose: no file says.

    Remedy: Move it along the wall, choose a smaller one, or let the screen come down from the ceiling.

    When to waive: A window that will be closed for good, or a screen that rolls up and is fastened beside the window.
    """
    return found(room.figures.fixtures.beside_opening(both.source, both.seat), kind=both.seat.kind)
