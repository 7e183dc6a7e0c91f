"""The channels: whether the loudspeakers are those of the layout, labelled as it says."""

from __future__ import annotations

from typing import TYPE_CHECKING

from roomlint.review import LOUDSPEAKERS, ROOM, SOURCES, Level, No, fails, need, passes, rule, unsaid

from . import BS2051, LABELS

if TYPE_CHECKING:
    from roomlint.design.listening import Loudspeaker
    from roomlint.design.model import Design
    from roomlint.review import Applies, Room, Says


def with_loudspeakers(room: Room, design: Design) -> Applies:
    """Say whether there is anything to label."""
    if design.loudspeakers or design.subwoofers:
        return True
    missing = unsaid(design, *SOURCES.of)
    if missing is not None:
        raise missing
    return No("the room has no loudspeaker")


def with_channels(room: Room, design: Design) -> Applies:
    """Say whether there is anything that a layout could be held against."""
    return True if design.layout is not None else with_loudspeakers(room, design)


@rule(
    "layout.channel-set",
    level=Level.ERROR,
    basis=(BS2051, LABELS),
    each=ROOM,
    when=with_channels,
    says={
        "missing": "{missing} missing from {layout}: fit, or declare unfitted",
        "extra": "{extra} not in {layout}: correct the label, or name another layout",
        "both": "{missing} missing from {layout}, and {extra} not in it",
        "whole": "all channels of layout {layout} are there",
        "unfitted": "all channels of layout {layout} are there but {unfitted}, left out on purpose",
        "counts": "{layout} is {upper} upper, {middle} ear-layer, {bottom} bottom; here are {there}, in that order",
        "counted": "has as many loudspeakers in each layer as {layout} names; of LFE it names none",
    },
    at="layout",
    since="0.1.0",
)
def channel_set(room: Room, design: Design) -> Says:
    """The loudspeakers are exactly those of the layout that the file names.

    Why: A missing or extra loudspeaker means wrong routing, wiring and settings from the first day.

    How decided: The labels of the loudspeakers against the layout's. Channels that the processor declares as unfitted
    count as left out on purpose; any subwoofer carries the LFE channels, and none carries another one. A layout that
    the standard does not list, such as 6+5+0, names no labels: its name is upper + middle + bottom, and as many must be
    in each layer, not counting, or counting, those left out on purpose: a processor may want channels declared that
    the layout does without. What such a name does not say, LFE channels, is not asked for.

    Remedy: Add the missing loudspeaker, declare its channel unfitted, remove the extra one, or name another layout.

    When to waive: An extra loudspeaker that repeats a channel on purpose, such as a second row of surrounds.
    """
    layout = need(design.layout, design, "layout")
    arrangement = room.figures.arrangement
    named = arrangement.named_counts(layout)
    if named is not None:
        return counted(room, layout, named)
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


def counted(room: Room, layout: str, named: tuple[int, int, int]) -> Says:
    """Hold the loudspeakers against what the name of a layout of one's own counts."""
    arrangement = room.figures.arrangement
    fitted, there = arrangement.counts()
    if all(here <= wanted <= most for here, wanted, most in zip(fitted, named, there, strict=True)):
        return passes("counted", layout=layout)
    unlabelled = arrangement.unlabelled()
    if unlabelled is not None and any(most < wanted for wanted, most in zip(named, there, strict=True)):
        raise unlabelled
    upper, middle, bottom = named
    return fails("counts", layout=layout, upper=upper, middle=middle, bottom=bottom, there=tuple(map(str, fitted)))


@rule(
    "layout.one-label-each",
    level=Level.ERROR,
    basis=LABELS,
    each=LOUDSPEAKERS,
    says={
        "repeated": "shares the label {label} with another; give each its own",
        "own": "has its label to itself",
    },
    at="label",
    since="0.1.0",
)
def one_label_each(room: Room, speaker: Loudspeaker) -> Says:
    """Every loudspeaker has a label, and no two have the same.

    Why: A label is the loudspeaker's name in routing, settings and on the plate behind it.

    How decided: Labels of the loudspeakers, compared. What is judged by the label waits for those that share one.

    Remedy: Label the loudspeaker by its layer and side, such as M+090; give repeated ones their own label.

    When to waive: Two loudspeakers that carry one channel on purpose, such as a second row of surrounds.
    """
    label = need(speaker.label, speaker, "label")
    others = tuple(one for one in room.design.loudspeakers if one is not speaker and one.label == label)
    return fails("repeated", label=label, related=others) if others else passes("own")
