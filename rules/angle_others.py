"""Chapter angle, third part: the labels that no rule of their own judges."""

from __future__ import annotations

from typing import TYPE_CHECKING

from roomlint.rules.angle import BS2051, READS

from roomlint.review import Against, Level, Window, does_not_apply, rule

if TYPE_CHECKING:
    from collections.abc import Iterator

    from roomlint.design.listening import Loudspeaker, Subwoofer
    from roomlint.review import Room, Says

# What the rules of the front, surround, side, rear and screen-edge pairs and those
# of the upper layer judge is not judged again here.
AZIMUTH_OF = frozenset({"M+000", "M+060", "M-060", "M+180", "B+000", "B+045", "B-045", "LFE1", "LFE2"})
ELEVATION_OF = frozenset({"T+000", "B+000", "B+045", "B-045", "LFE1", "LFE2"})
NOT_PLACED = "the layout says nothing of where this label stands."


def _azimuths(room: Room) -> Iterator[Loudspeaker | Subwoofer]:
    return (source for source in room.design.sources if source.label in AZIMUTH_OF)


def _elevations(room: Room) -> Iterator[Loudspeaker | Subwoofer]:
    return (source for source in room.design.sources if source.label in ELEVATION_OF)


@rule(
    "angle.other-azimuth",
    level=Level.NOTE,
    basis=BS2051,
    each=_azimuths,
    reads=(*READS, "subwoofers[].position", "subwoofers[].label", "layout"),
    since="0.1.0",
    window=Window(None, 2.0, "deg"),
    critical_level=Level.WARNING,
    at="position",
)
def other_azimuth(room: Room, source: Loudspeaker | Subwoofer) -> Against | Says:
    """Centre, wide, rear centre, bottom and placed LFE loudspeakers stand where the layout puts them.

    Why: A centre off the middle pulls every voice aside; the other labels keep the gaps that the layout counts on.

    How decided: Azimuth at the reference seat against the layout's range for the label, with two degrees for setting
    out, which are ours. An LFE loudspeaker is judged only in the layouts that place it, 3+7+0 and 9+10+3. A note at
    home, a warning with project.reference critical.

    Remedy: Move the loudspeaker round the seat by the angle that the message gives.

    When to waive: The picture or the room wants it elsewhere, and the processor's delay and level make up for it.
    """
    view = room.figures.angles
    position = view.placed(source)
    if position is None:
        return does_not_apply(NOT_PLACED)
    return Against(view.outside_azimuth(source, position, room.reference_seat))


@rule(
    "angle.other-elevation",
    level=Level.NOTE,
    basis=BS2051,
    each=_elevations,
    reads=(*READS, "subwoofers[].position", "subwoofers[].label", "layout"),
    since="0.1.0",
    window=Window(None, 2.0, "deg"),
    critical_level=Level.WARNING,
    at="position.height",
)
def other_elevation(room: Room, source: Loudspeaker | Subwoofer) -> Against | Says:
    """Zenith, bottom and placed LFE loudspeakers stand as high or low as the layout puts them.

    Why: A bottom loudspeaker at ear height, or a zenith one that is merely high, repeats the layer next to it.

    How decided: Elevation at the reference seat against the layout's range for the label, with two degrees for setting
    out, which are ours. An LFE loudspeaker is judged only in the layouts that place it, 3+7+0 and 9+10+3. A note at
    home, a warning with project.reference critical.

    Remedy: Raise or lower the loudspeaker, or bring it nearer in plan to make the angle steeper.

    When to waive: Floor or ceiling leaves no other place.
    """
    view = room.figures.angles
    position = view.placed(source)
    if position is None:
        return does_not_apply(NOT_PLACED)
    return Against(view.outside_elevation(source, position, room.reference_seat))
