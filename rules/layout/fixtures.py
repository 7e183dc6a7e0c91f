"""The places of what neither makes sound nor sits: picture, projector, racks, panels and receptacles."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from roomlint.review import (
    LOUDSPEAKERS,
    THINGS,
    Cases,
    Level,
    Missing,
    No,
    Seen,
    Subjects,
    at_least,
    at_most,
    fails,
    found,
    need,
    passes,
    practice,
    rule,
    standard,
    unsaid,
)

from ..access import RACKS
from . import BUILT, HELD

if TYPE_CHECKING:
    from collections.abc import Iterator

    from roomlint.design.listening import Loudspeaker, Picture, Projector, Seat, Subwoofer
    from roomlint.design.shell import Opening, Treatment
    from roomlint.design.supply import Circuit, Rack, Receptacle
    from roomlint.review import Applies, Figure, Found, Room, Says, Windows

    Thing = Loudspeaker | Subwoofer | Seat
    Fixture = Picture | Projector | Rack | Treatment | Opening | Seen[Receptacle, Circuit]
    Flat = Picture | Treatment


def _fixtures(room: Room) -> Iterator[Fixture]:
    picture = room.design.picture
    if picture is not None:
        yield picture
        if picture.projector is not None:
            yield picture.projector
    yield from room.design.racks
    yield from room.figures.mounts.panels()
    yield from room.design.shell.openings
    for circuit in room.design.circuits:
        for outlet in circuit.receptacles:
            yield Seen(outlet, circuit, " on ")


def _beside_openings(room: Room) -> Iterator[Seen[Flat, Opening]]:
    picture = room.design.picture
    curtains = [one for one in room.design.treatments if one.kind == CURTAIN]
    hung = ([picture] if picture is not None else []) + list(room.figures.mounts.panels()) + curtains
    for thing in hung:
        for opening in room.design.shell.openings:
            yield Seen(thing, opening, " beside ")


FIXTURES: Subjects[Fixture] = Subjects(
    "picture, projector, rack, panel, opening or receptacle", _fixtures,
    ("picture", "electronics.racks", "treatments", "room.openings", "circuits"),
)  # fmt: skip
FLAT_BESIDE: Subjects[Seen[Flat, Opening]] = Subjects(
    "opening beside a picture, panel or curtain", _beside_openings, ("room.openings", "picture", "treatments")
)
CURTAIN: Final = "curtain"
DOORS: Final = frozenset({"door", "glass-door"})
DISPLAY: Final = at_least(0.0, "m", error=0.0)
COVER: Final = at_least(0.0, "m")


def _on_its_wall(room: Room, both: Seen[Flat, Opening]) -> Applies:
    """Say whether a picture or a panel hangs on the wall that an opening is in."""
    if both.source.kind == CURTAIN and both.seat.kind not in DOORS:
        return No("a curtain may hang before a window or an opening")
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
def fixtures_inside(room: Room, thing: Fixture) -> Found:
    """Picture, projector, racks, acoustic panels, openings and receptacles are inside the room.

    Why: A screen wider than its wall or a receptacle past the wall's end is a slip of the pen that costs a day on site.

    How decided: Least distance to the surfaces, negative outside: of the corners of the lit picture, of a panel's edges
    on its wall or in the plan of its ceiling, of the lens, a rack's corners, or the middle of its front where its
    sizes are not given, and a receptacle along its wall, and from floor to ceiling; of a door or window its edges, at
    the height that the ceiling has above them. A picture without a size counts by its middle; a panel or opening
    without one is open unless what is known of it is outside. Five centimetres are allowed. Without a ceiling what is
    outside the walls fails all the same.

    Remedy: Correct the place or the size, or the room's outline or ceiling.

    When to waive: A picture or a rack in a recess that the outline leaves out.
    """
    fixture = thing.source if isinstance(thing, Seen) else thing
    return found(room.figures.fixtures.depth_inside(fixture), lacks=room.figures.fixtures.lacks(fixture))


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
    """What hangs on a wall leaves its doors, windows and openings free: pictures, acoustic panels; curtains the doors.

    Why: A mount holds in neither glass nor air, and a covered door or window is no way out, no light and no air.

    How decided: Gap on the wall between the lit picture or the panel and the opening; negative when they overlap. An
    error for a display. A warning for a projection screen or a panel, which may span a window on purpose: no file says.
    A curtain may hang before a window; across a door it is a warning, as it hides the way out.

    Remedy: Move it along the wall, choose a smaller one, or let the screen come down from the ceiling.

    When to waive: A window that will be closed for good, or a screen that rolls up and is fastened beside the window.
    """
    return found(room.figures.fixtures.beside_opening(both.source, both.seat), kind=both.seat.kind)


def _with_panels(room: Room, _: Thing) -> Applies:
    """Say whether a panel or a curtain hangs in the room."""
    if room.figures.covering.panels():
        return True
    missing = unsaid(room.design, "treatments")
    if missing is not None:
        raise missing
    return No("no panel and no curtain hangs in the room")


@rule(
    "layout.panel-clear",
    level=Level.WARNING,
    basis=BUILT,
    each=THINGS,
    when=_with_panels,
    window=at_least(0.0, "m"),
    says={
        "fail": "is {figure} from {panel}; {window} wanted",
        "negative": "is {size} inside {panel}: cut that out, or move one of the two",
    },
    after=("layout.inside-room", "layout.on-surface"),
    cure=("position", "ear"),
    at="position",
    since="0.3.0",
)
def panel_clear(room: Room, thing: Thing) -> Found:
    """No panel and no curtain hangs where a loudspeaker, a subwoofer or a head is.

    Why: The panel that was drawn for the reflection is found to have a cabinet behind it when both are on site.

    How decided: Cabinets as boxes and listeners as columns against the nearest panel or curtain: on a wall as deep as
    it is thick, a curtain of no given thickness 0.10 m; under the ceiling by its drop and thickness at the thing's
    place.

    Remedy: Move the panel or the loudspeaker, or cut the panel out around it.

    When to waive: A loudspeaker behind a panel or a curtain that lets sound through on purpose.
    """
    nearest = room.figures.covering.nearest(thing)
    return found(nearest.figure, panel=nearest.panel.words, lacks=nearest.lacks)


def _receptacles(room: Room) -> Iterator[Seen[Receptacle, Circuit]]:
    for circuit in room.design.circuits:
        for outlet in circuit.receptacles:
            yield Seen(outlet, circuit, " on ")


def _in_a_wall_with_openings(room: Room, both: Seen[Receptacle, Circuit]) -> Applies:
    """Say whether a receptacle is in a wall that has a door, a window or an opening."""
    wall = need(both.source.wall, both.source, "wall")
    openings = room.design.shell.openings
    if any(one.wall is None or one.wall == wall for one in openings):
        return True
    missing = unsaid(room.design, "room.openings")
    if missing is not None:
        raise missing
    return No("its wall has no opening, or it is in none")


@rule(
    "layout.receptacle-beside-openings",
    level=Level.ERROR,
    basis=BUILT,
    each=Subjects("receptacle", _receptacles, ("circuits",)),
    when=_in_a_wall_with_openings,
    window=at_least(0.0, "m"),
    says={
        "fail": "is {figure} from the {kind}; {window} wanted",
        "negative": "is {size} inside the {kind}; no box is built into glass or air",
    },
    after=("layout.fixtures-inside",),
    at="wall",
    since="0.3.0",
)
def receptacle_beside_openings(room: Room, both: Seen[Receptacle, Circuit]) -> Found:
    """A receptacle is in its wall, not in a door or window of it.

    Why: The electrician finds glass where the plan has a box, and puts it where no cord reaches.

    How decided: Gap on the wall between the receptacle, as a point, and the nearest opening; negative inside it.

    Remedy: Correct where it is along the wall, or how high.

    When to waive: Never; nothing is built into an opening.
    """
    outlet = both.source
    wall = need(outlet.wall, outlet, "wall")
    gaps = [
        (room.figures.fixtures.outlet_beside(outlet, one), one)
        for one in room.design.shell.openings
        if need(one.wall, one, "wall") == wall
    ]
    gap, nearest = min(gaps, key=lambda pair: pair[0].value)
    return found(gap, kind=need(nearest.kind, nearest, "kind"), lacks=unsaid(room.design, "room.openings"))


def _by_a_screen(room: Room, speaker: Loudspeaker) -> Applies:
    """Say whether the picture is between a loudspeaker and the reference seat."""
    picture = room.figures.onscreen.picture()
    if speaker.behind_screen:
        return True
    if picture is None:
        return No("the room has no picture")
    if room.figures.onscreen.hides(picture, speaker, room.reference_seat):
        return True
    return No("the picture is not between it and the reference seat")


@rule(
    "layout.heard-through-screen",
    level=Level.ERROR,
    basis=practice("sound passes a woven or perforated screen; it passes no display and no closed cloth"),
    each=LOUDSPEAKERS,
    when=_by_a_screen,
    says={
        "display": "is heard through a display; put it beside, below or above the picture",
        "closed": "is heard through a screen that lets no sound pass; take a woven or perforated one",
        "nothing": "is said to be behind the screen, and the room has no picture",
        "aside": "is said to be behind the screen, and by its place the picture does not hide it",
        "denied": "is said not to be behind the screen, and by its place the picture hides it",
        "open": "the screen before it lets sound pass",
    },
    at="position",
    since="0.3.0",
)
def heard_through_screen(room: Room, speaker: Loudspeaker) -> Says:
    """A loudspeaker behind the picture has a screen before it that lets sound pass.

    Why: Behind a closed screen or a display the treble and most of the speech are gone.

    How decided: Behind the screen is what the file says so of, and what the lit picture hides from the reference seat;
    where the two contradict each other, one of them is wrong. The picture must then be a projection whose screen lets
    sound pass, by the file and by the screen's sheet.

    Remedy: Choose a screen that lets sound pass, or put the loudspeaker beside or below the picture.

    When to waive: Never; what is heard through a closed screen is not heard.
    """
    picture = room.design.picture
    if picture is None:
        return fails("nothing")
    if not room.figures.onscreen.hides(picture, speaker, room.reference_seat):
        return fails("aside")
    if speaker.behind_screen is False:
        return fails("denied")
    if room.figures.fixtures.is_display(picture):
        return fails("display")
    sheet = picture.product.picture if picture.product is not None else None
    said = [picture.transparent, sheet.transparent if sheet is not None else None]
    if False in said:
        return fails("closed")
    if True not in said:
        raise Missing(picture, "transparent")
    return passes("open")


@rule(
    "layout.screen-loss",
    level=Level.WARNING,
    basis=(
        standard(
            "BS 5382",
            edition="1967",
            read=False,
            note="a cinema's screen takes at most 6 dB at 8 kHz against 500 Hz, as a paper on such screens tells",
        ),
        practice("the loss that the maker states at 8 kHz, never one worked out from the holes"),
    ),
    each=LOUDSPEAKERS,
    when=_by_a_screen,
    window=at_most(6.0, "dB"),
    says="loses {figure} at 8 kHz through the screen; {window} wanted",
    after=("layout.heard-through-screen",),
    at="position",
    since="0.3.0",
)
def screen_loss(room: Room, speaker: Loudspeaker) -> Figure:
    """The screen before a loudspeaker leaves it its treble.

    Why: What a screen takes can be given back by correction only in part, at the cost of level and of a tweeter's life.

    How decided: The loss at 8 kHz of the screen's sheet, for each loudspeaker that the picture stands before as seen
    from the reference seat. The 6 dB are a cinema's, from a British standard of 1967 known second-hand, which
    allows 3 dB at 6 kHz.

    Remedy: Take a screen with a finer weave or smaller holes, or put the loudspeaker beside or below the picture.

    When to waive: A measurement at the seats shows the treble restored at the level that is asked for.
    """
    picture = need(room.design.picture, room.design, "picture")
    return room.figures.fixtures.treble_loss(picture)


@rule(
    "layout.rack-fits",
    level=Level.WARNING,
    basis=(BUILT, practice("a rack is ordered for what goes into it, with air and cables beside")),
    each=RACKS,
    window=at_most(0.0, "m"),
    says={
        "fail": "what it contains is {figure} {way} than it is; a larger rack, or fewer devices",
        "empty": "it is empty",
    },
    at="contains",
    since="0.3.0",
)
def rack_fits(room: Room, rack: Rack) -> Found | Says:
    """What a rack contains fits into it.

    Why: A cabinet two fingers too shallow is found when the doors do not close, and nobody has another.

    How decided: Widest and deepest device, and their heights one above the other, against the rack's own outer sizes,
    which are more than what is free inside; the largest excess counts. Two devices that are no more than half as wide
    as the rack may stand side by side.

    Remedy: A larger rack, or devices elsewhere.

    When to waive: A device that is meant to stand on top of it.
    """
    fit = room.figures.access.rack_fit(rack)
    return passes("empty") if fit is None else found(fit.figure, way=fit.way)
