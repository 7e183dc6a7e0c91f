"""The channels: whether the loudspeakers are those of the layout, labelled, fed and played."""

from __future__ import annotations

from typing import TYPE_CHECKING

from roomlint.review import LOUDSPEAKERS, ROOM, SOURCES, Level, No, Subjects, fails, need, passes, rule, unsaid

from . import BS2051, BUILT, LABELS

if TYPE_CHECKING:
    from roomlint.design.listening import Loudspeaker
    from roomlint.design.model import Design
    from roomlint.design.record import Mode
    from roomlint.design.supply import Amplifier
    from roomlint.review import Applies, Room, Says

AMPLIFIERS: Subjects[Amplifier] = Subjects(
    "amplifier", lambda room: room.design.amplifiers, ("electronics.amplifiers",)
)
MODES: Subjects[Mode] = Subjects("listening mode", lambda room: room.design.modes)


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
        "missing": "{missing} missing from {layout}: add it, or declare it unfitted",
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


@rule(
    "layout.fed",
    level=Level.ERROR,
    basis=BUILT,
    each=LOUDSPEAKERS,
    says={
        "unfed": "no amplifier output feeds it; add it to a feed",
        "twice": "is fed by more than one output ({amplifiers}); leave one",
        "fed": "{amplifier} feeds it",
    },
    since="0.1.0",
)
def fed_once(room: Room, speaker: Loudspeaker) -> Says:
    """Every loudspeaker is fed by exactly one amplifier output.

    Why: An unfed loudspeaker is found when the walls are closed; one fed twice ties two amplifiers together.

    How decided: The feeds of all amplifiers that name the loudspeaker are counted.

    Remedy: Add the loudspeaker to a feed, or take it out of all but one.

    When to waive: A loudspeaker with an amplifier of its own inside.
    """
    amplifiers = need(room.design.amplifiers or None, room.design, "electronics.amplifiers")
    feeds = tuple(
        amplifier.id for amplifier in amplifiers for feed in amplifier.feeds if speaker.id in feed.loudspeakers
    )
    if not feeds:
        return fails("unfed")
    return fails("twice", amplifiers=feeds) if len(feeds) > 1 else passes("fed", amplifier=feeds[0])


@rule(
    "layout.amplifier-outputs",
    level=Level.ERROR,
    basis=BUILT,
    each=AMPLIFIERS,
    says={
        "twice": "its output {outputs} is used more than once; number the feeds anew",
        "short": "its feeds use {used} outputs and it has {channels}; choose one with more, or add one",
        "enough": "{used} of its {channels} outputs are used",
    },
    since="0.1.0",
)
def amplifier_outputs(room: Room, amplifier: Amplifier) -> Says:
    """An amplifier has the outputs that its feeds use.

    Why: A channel too many means another amplifier, its place, its power and its heat.

    How decided: Number of feeds and their output numbers against the channels on the amplifier's sheet.

    Remedy: Choose an amplifier with more channels, or add one.

    When to waive: Never; correct the sheet or the feeds.
    """
    numbers = [feed.output for feed in amplifier.feeds if feed.output is not None]
    twice = sorted({number for number in numbers if numbers.count(number) > 1})
    if twice:
        return fails("twice", outputs=tuple(map(str, twice)))
    product = need(amplifier.product, amplifier, "product")
    data = need(product.amplifier, product, "amplifier")
    channels = need(data.channels, data, "channels")
    used = max([len(amplifier.feeds), *numbers])
    said = fails if used > channels else passes
    return said("short" if used > channels else "enough", used=used, channels=channels)


@rule(
    "layout.mode-channels",
    level=Level.ERROR,
    basis=BUILT,
    each=MODES,
    says={
        "silent": "no loudspeaker plays {labels}; add it, or take the channel out of the mode",
        "beside": "{subject} lacks {labels}",
        "played": "all its channels have loudspeakers",
    },
    beside=("layout.channel-set",),
    at="channels",
    since="0.1.0",
)
def mode_channels(room: Room, mode: Mode) -> Says:
    """A listening mode plays only channels that the room has.

    Why: A channel without a loudspeaker is silence in the middle of a film.

    How decided: The mode's channels, or those of the layout that it names, against the labels of loudspeakers; any
    subwoofer carries the LFE channels.

    Remedy: Take the channel out of the mode, or add its loudspeaker.

    When to waive: Never; correct the mode.
    """
    need(mode.channels or mode.layout, mode, "channels")
    silent = room.figures.arrangement.silent(mode)
    if not silent:
        return passes("played")
    unlabelled = room.figures.arrangement.unlabelled()
    if unlabelled is not None:
        raise unlabelled
    return fails("silent", labels=silent)
