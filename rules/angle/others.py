"""The labels that no rule of their own judges: the middle, the wides, the bottom, the zenith and placed LFE."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from roomlint.review import SOURCES, Level, Missing, Subjects, Window, Windows, found, need, rule

from . import BS2051, SETTING_OUT_DEG, SIDES, by_tables, in_its_layout

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator

    from roomlint.design.listening import Loudspeaker, Subwoofer
    from roomlint.review import Found, Room

    Source = Loudspeaker | Subwoofer

MIDDLE: Final = {"M+180": True, "B+000": False, "U+000": False, "U+180": True, "UH+180": True}
"""Labels of the middle, and whether they stand behind."""
# What the rules of the front, surround, side, rear and screen-edge pairs and those of the layers judge is not judged
# again here.
AZIMUTH_OF: Final = frozenset({"M+060", "M-060", "B+045", "B-045", "LFE1", "LFE2"})
ELEVATION_OF: Final = frozenset({"T+000", "B+000", "B+045", "B-045", "LFE1", "LFE2"})
SINGLE = Windows(Window(None, 2.0, "deg", SETTING_OUT_DEG))


def _labelled(labels: frozenset[str]) -> Callable[[Room], Iterator[Source | Missing]]:
    def find(room: Room) -> Iterator[Source | Missing]:
        for source in room.design.sources:
            # A subwoofer without a label is one all the same; a loudspeaker without one may be any.
            if source.label is None and source in room.design.loudspeakers:
                yield Missing(source, "label")
            elif source.label in labels:
                yield source

    return find


MIDDLES: Subjects[Source] = Subjects(
    "loudspeaker of the middle but the centre", _labelled(frozenset(MIDDLE)), SOURCES.of
)
OTHER_AZIMUTHS: Subjects[Source] = Subjects("wide, bottom or placed LFE loudspeaker", _labelled(AZIMUTH_OF), SOURCES.of)
OTHER_ELEVATIONS: Subjects[Source] = Subjects(
    "zenith, bottom or placed LFE loudspeaker", _labelled(ELEVATION_OF), SOURCES.of
)


@rule(
    "angle.middle-azimuth",
    level=Level.NOTE,
    basis=BS2051,
    each=MIDDLES,
    when=in_its_layout,
    window=SINGLE,
    says="stands {figure} {way}; {window} wanted",
    after=("layout.inside-room",),
    cure=("position",),
    critical_level=Level.WARNING,
    at="position",
    since="0.2.0",
)
def middle_azimuth(room: Room, source: Source) -> Found:
    """Loudspeakers of the middle, straight ahead or straight behind, stand there to 2 degrees.

    Why: One that is off the middle pulls what it plays to a side, which no other can pull back.

    How decided: Angle at the reference seat between the loudspeaker and the upright half plane straight ahead or
    straight behind, from the horizon to straight up, so that one right overhead is in it; 2 degrees for setting out
    are ours. A note at home, a warning for critical listening. The centre has a rule of its own.

    Remedy: Move the loudspeaker sideways by the angle that the message gives.

    When to waive: The room wants it elsewhere, and the processor's delay and level make up for it.
    """
    behind = MIDDLE[need(source.label, source, "label")]
    figure = room.figures.angles.off_middle(source, room.reference_seat, behind=behind)
    return found(figure, way="from straight behind" if behind else "from straight ahead")


@rule(
    "angle.other-azimuth",
    level=Level.NOTE,
    basis=BS2051,
    each=OTHER_AZIMUTHS,
    when=in_its_layout,
    window=SINGLE,
    says="stands {figure} round from its place by {tables}; {window} is let pass",
    after=SIDES,
    cure=("position",),
    critical_level=Level.WARNING,
    at="position",
    since="0.1.0",
)
def other_azimuth(room: Room, source: Source) -> Found:
    """Wide, bottom and placed LFE loudspeakers stand where the layout puts them.

    Why: They keep the gaps that the layout counts on.

    How decided: Azimuth at the reference seat against the layout's range for the label, with two degrees for setting
    out, which are ours. An LFE loudspeaker is judged only in the layouts that place it, 3+7+0 and 9+10+3. A note at
    home, a warning for critical listening.

    Remedy: Move the loudspeaker round the seat by the angle that the message gives.

    When to waive: The picture or the room wants it elsewhere, and the processor's delay and level make up for it.
    """
    position = need(room.figures.arrangement.position(source), room.design, "layout")
    figure = room.figures.angles.outside_azimuth(source, position, room.reference_seat)
    return found(figure, tables=by_tables(room, source))


@rule(
    "angle.other-elevation",
    level=Level.NOTE,
    basis=BS2051,
    each=OTHER_ELEVATIONS,
    when=in_its_layout,
    window=SINGLE,
    says="is heard {figure} above or below its place by {tables}; {window} is let pass",
    after=("layout.inside-room",),
    cure=("position",),
    critical_level=Level.WARNING,
    at="position.height",
    since="0.1.0",
)
def other_elevation(room: Room, source: Source) -> Found:
    """Zenith, bottom and placed LFE loudspeakers stand as high or low as the layout puts them.

    Why: A bottom loudspeaker at ear height, or a zenith one that is merely high, repeats the layer next to it.

    How decided: Elevation at the reference seat against the layout's range for the label, with two degrees for setting
    out, which are ours. An LFE loudspeaker is judged only in the layouts that place it, 3+7+0 and 9+10+3. A note at
    home, a warning for critical listening.

    Remedy: Raise or lower the loudspeaker, or bring it nearer in plan to make the angle steeper.

    When to waive: Floor or ceiling leaves no other place.
    """
    position = need(room.figures.arrangement.position(source), room.design, "layout")
    figure = room.figures.angles.outside_elevation(source, position, room.reference_seat)
    return found(figure, tables=by_tables(room, source))
