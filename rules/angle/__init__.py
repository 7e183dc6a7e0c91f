"""Chapter angle: where loudspeakers stand around the listener, judged at the reference seat."""

from __future__ import annotations

from typing import TYPE_CHECKING

from roomlint.review import No, Window, Windows, need, practice, standard

from ..layout import BS775, BS2051, HOME_STUDY, LABELS, SETTING_OUT_DEG, as_laid_out, with_a_picture

if TYPE_CHECKING:
    from roomlint.design.listening import Loudspeaker, Subwoofer
    from roomlint.review import Applies, Room

__all__ = [
    "BESIDE",
    "BS775",
    "BS2051",
    "HOME_STUDY",
    "LABELS",
    "OWN",
    "SETTING_OUT_DEG",
    "SIDES",
    "TRADE_FRONT",
    "TUTORIAL",
    "as_laid_out",
    "by_tables",
    "in_its_layout",
    "laid_out",
    "with_a_picture",
]

TUTORIAL = standard("monitoring tutorial on BS.775-1 and BS.1116-1", edition="2005", read=False)
TRADE_FRONT = practice("front loudspeakers 22 to 30 degrees either side of straight ahead; 2 degrees more are ours")
BESIDE = "layout.stage-middle"
SIDES = ("layout.one-label-each", "layout.sides-swapped", "layout.label-side", "layout.inside-room")
"""What a loudspeaker under another's label, on the wrong side, or outside the room, is told by; its angles wait."""
OWN = "; in a layout of one's own the ranges of the tables that have the label, beyond what they share a note"
"""How a layout that the standard does not list is judged, for the windows of pages."""


def laid_out(room: Room, speaker: Loudspeaker) -> Windows:
    """Return the range of azimuth that the layout gives a loudspeaker's label, toward the label's side."""
    arrangement = room.figures.arrangement
    allowed = need(arrangement.azimuth_range(speaker), room.design, "layout")
    shared = arrangement.shared_range(speaker)
    target = Window(*shared, "deg", SETTING_OUT_DEG) if shared is not None and shared != allowed else None
    return Windows(Window(*allowed, "deg", SETTING_OUT_DEG), target)


def by_tables(room: Room, source: Loudspeaker | Subwoofer) -> str:
    """Return what says where a label's place is: the layout's own table, or those that have the label."""
    published = room.figures.arrangement.published(source)
    if published is None:
        return f"layout {room.design.layout}"
    return f"the table{'s' if len(published.tables) > 1 else ''} of {', '.join(published.tables)}"


def in_its_layout(room: Room, source: Loudspeaker | Subwoofer) -> Applies:
    """Say whether the layout has a place for a label."""
    if room.figures.arrangement.position(source) is None:
        if room.figures.arrangement.is_own:
            return No(f"no table of ITU-R BS.2051 has {source.label}")
        return No(f"layout {room.design.layout} has no {source.label}")
    if not room.figures.arrangement.is_placed(source):
        return No(f"layout {room.design.layout} leaves open where {source.label} stands")
    return True
