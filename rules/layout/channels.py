"""The channels: whether the loudspeakers are those of the layout, labelled as it says."""

from __future__ import annotations

from typing import TYPE_CHECKING

from roomlint.review import ROOM, Level, No, fails, need, passes, rule

from . import BS2051, LABELS

if TYPE_CHECKING:
    from roomlint.design.model import Design
    from roomlint.review import Applies, Room, Says


def with_loudspeakers(room: Room, design: Design) -> Applies:
    """Say whether there is anything to label."""
    return True if design.loudspeakers or design.subwoofers else No("no loudspeaker is listed")


def with_channels(room: Room, design: Design) -> Applies:
    """Say whether there is anything that a layout could be held against."""
    listed = design.loudspeakers or design.subwoofers or design.layout is not None
    return True if listed else No("no loudspeaker is listed and no layout named")


@rule(
    "layout.channel-set",
    level=Level.ERROR,
    basis=(BS2051, LABELS),
    each=ROOM,
    when=with_channels,
    says={
        "missing": "{missing} missing from layout {layout}: add it, or declare its channel unfitted",
        "extra": "{extra} not in layout {layout}: correct the label, or name another layout",
        "both": "{missing} missing from layout {layout}, and {extra} not in it",
        "whole": "all channels of layout {layout} are there",
        "unfitted": "all channels of layout {layout} are there but {unfitted}, left out on purpose",
    },
    at="layout",
    since="0.1.0",
)
def channel_set(room: Room, design: Design) -> Says:
    """The loudspeakers are exactly those of the layout that the file names.

    Why: A missing or extra loudspeaker means wrong routing, wiring and settings from the first day.

    How decided: The labels of the loudspeakers against the layout's. Channels that the processor declares as unfitted
    count as left out on purpose; any subwoofer carries the LFE channels, and none carries another one.

    Remedy: Add the missing loudspeaker, declare its channel unfitted, remove the extra one, or name another layout.

    When to waive: An extra loudspeaker that repeats a channel on purpose, such as a second row of surrounds.
    """
    layout = need(design.layout, design, "layout")
    arrangement = room.figures.arrangement
    found = arrangement.channel_set(layout)
    unlabelled = arrangement.unlabelled()
    if unlabelled is not None and found.missing:
        # It may be the one that is missing.
        raise unlabelled
    if found.missing and found.extra:
        return fails("both", missing=found.missing, extra=found.extra, layout=layout)
    if found.missing:
        return fails("missing", missing=found.missing, layout=layout)
    if found.extra:
        return fails("extra", extra=found.extra, layout=layout)
    if found.unfitted:
        return passes("unfitted", unfitted=found.unfitted, layout=layout)
    return passes("whole", layout=layout)


@rule(
    "layout.one-label-each",
    level=Level.ERROR,
    basis=LABELS,
    each=ROOM,
    when=with_loudspeakers,
    says={
        "repeated": "more than one loudspeaker is labelled {labels}; give each its own label",
        "subwoofer": "a subwoofer is labelled {labels}, a loudspeaker's channel; a subwoofer carries LFE1 or LFE2",
        "own": "every loudspeaker has a label of its own",
    },
    at="loudspeakers",
    since="0.1.0",
)
def one_label_each(room: Room, design: Design) -> Says:
    """Every loudspeaker has a label, no two have the same, and subwoofers carry none of theirs.

    Why: A label is the loudspeaker's name in routing, settings and on the plate behind it.

    How decided: Labels of the loudspeakers, compared; a label of the layers on a subwoofer is a slip.

    Remedy: Label the loudspeaker by its layer and side, such as M+090; give repeated ones their own label.

    When to waive: Two loudspeakers that carry one channel on purpose, such as a second row of surrounds.
    """
    arrangement = room.figures.arrangement
    repeated, misplaced = arrangement.repeated(), arrangement.misplaced_labels()
    if repeated:
        return fails("repeated", labels=repeated)
    if misplaced:
        return fails("subwoofer", labels=misplaced)
    unlabelled = arrangement.unlabelled()
    if unlabelled is not None:
        raise unlabelled
    return passes("own")
