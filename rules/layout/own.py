"""Layouts of one's own: what holds of any layout that ITU-R BS.2051 does not list."""

from __future__ import annotations

from typing import TYPE_CHECKING

from roomlint.review import LOUDSPEAKERS, Level, No, fails, need, passes, practice, rule

from . import BS2051, LABELS, SYMMETRY
from .sides import SIDED

if TYPE_CHECKING:
    from roomlint.design.listening import Loudspeaker
    from roomlint.review import Applies, Room, Says


def in_no_table(room: Room, speaker: Loudspeaker) -> Applies:
    """Say whether the layout is one that the standard does not list, or none is named."""
    layout = room.design.layout
    if layout is None or room.figures.arrangement.is_own:
        return True
    return No(f"layout {layout} lists its labels")


def in_an_own_layout(room: Room, speaker: Loudspeaker) -> Applies:
    """Say whether the layout is one that the standard does not list."""
    layout = need(room.design.layout, room.design, "layout")
    return True if room.figures.arrangement.is_own else No(f"layout {layout} has a table of its own")


@rule(
    "layout.pairs-complete",
    level=Level.ERROR,
    basis=(LABELS, SYMMETRY),
    each=SIDED,
    when=in_no_table,
    says={
        "alone": "has no partner: {partner} is neither there nor left out on purpose",
        "paired": "its partner is there, or left out on purpose",
    },
    at="label",
    since="0.3.0",
)
def pairs_complete(room: Room, speaker: Loudspeaker) -> Says:
    """Every loudspeaker of the left has its partner on the right, and the other way round.

    Why: Half a pair pulls everything that it plays to its side, and nothing on the other side answers it.

    How decided: The mirrored label, among the loudspeakers or the channels that the processor declares as unfitted. A
    layout that the standard lists is held against its own list of labels instead.

    Remedy: Add the partner, or declare its channel unfitted; or correct the label.

    When to waive: An effect that belongs to one side only, with the reason recorded.
    """
    partner = room.figures.arrangement.partner_missing(speaker)
    if not partner:
        return passes("paired")
    unlabelled = room.figures.arrangement.unlabelled()
    if unlabelled is not None:
        raise unlabelled
    return fails("alone", partner=partner)


@rule(
    "layout.published-label",
    level=Level.NOTE,
    basis=(BS2051, LABELS, practice("a place that nothing published gives is told as such")),
    each=LOUDSPEAKERS,
    when=in_an_own_layout,
    says={
        "none": "no table of ITU-R BS.2051 has {label}: nothing published says where it belongs",
        "tables": "{label} is judged by the tables that have it: {tables}",
    },
    at="label",
    since="0.3.0",
)
def published_label(room: Room, speaker: Loudspeaker) -> Says:
    """In a layout of one's own every label is one that some table of the standard has.

    Why: The place of a loudspeaker whose label no table has is somebody's idea; no renderer and no colleague knows it.

    How decided: The label against the tables of ITU-R BS.2051's layouts. Where some have it, its place is judged by
    those of them with as many loudspeakers in its layer, or else by all: azimuth and elevation within any of their
    ranges. Where none has it, only sides, pairs, gaps and layers are judged, and this says so.

    Remedy: Give it the nearest label that a table has, such as U+090 for one beside the seat.

    When to waive: A loudspeaker that follows no published layout, on purpose.
    """
    label = need(speaker.label, speaker, "label")
    published = room.figures.arrangement.published(speaker)
    if published is None:
        return fails("none", label=label)
    return passes("tables", label=label, tables=published.tables)
