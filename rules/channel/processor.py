"""What the processor is set up for: channels it decodes and sets, layouts it takes, channels that are not fitted."""

from __future__ import annotations

from typing import TYPE_CHECKING

from roomlint.review import ROOM, Level, Missing, fails, need, passes, rule

from . import PROCESSORS, SHEET, with_sources

if TYPE_CHECKING:
    from roomlint.design.model import Design
    from roomlint.design.supply import Processor
    from roomlint.review import Room, Says


@rule(
    "channel.decoded",
    level=Level.ERROR,
    basis=SHEET,
    each=ROOM,
    when=with_sources,
    says={
        "short": "is set up with {channels} channels and its processor decodes {decoded}; choose fewer, or another",
        "enough": "{channels} of {decoded} decoded channels are set up",
    },
    at="electronics.processor",
    since="0.3.0",
)
def decoded(room: Room, _design: Design) -> Says:
    """The processor decodes as many channels as the room is set up with.

    Why: A channel that is not decoded is silence, or a copy of its neighbour.

    How decided: Labels of the loudspeakers and of channels that are declared and not fitted, low-frequency ones apart,
    against the processor's sheet.

    Remedy: Leave channels out, or choose a processor that decodes more.

    When to waive: Extra loudspeakers that repeat a channel on purpose, under labels of their own.
    """
    playing = room.figures.playing
    data = playing.data()
    most, channels = need(data.decoded, data, "decoded"), playing.set_up.all
    if channels > most:
        return fails("short", channels=channels, decoded=most)
    unlabelled = playing.unlabelled()
    if unlabelled is not None:
        raise unlabelled
    return passes("enough", channels=channels, decoded=most)


@rule(
    "channel.processed",
    level=Level.ERROR,
    basis=SHEET,
    each=ROOM,
    when=with_sources,
    says={
        "short": "has {channels} channels and its processor sets {processed}; leave {short} out, or choose another",
        "enough": "{channels} of {processed} channels are set",
    },
    at="electronics.processor",
    since="0.3.0",
)
def processed(room: Room, _design: Design) -> Says:
    """The processor sets level and delay of as many channels as the room has.

    Why: A loudspeaker whose delay and level nobody can set is wrong at every seat.

    How decided: Different labels of the loudspeakers against the channels that the processor's sheet says it
    processes; subwoofers are counted apart.

    Remedy: Leave channels out, or choose a processor that sets more.

    When to waive: An outside unit that sets the others.
    """
    playing = room.figures.playing
    data = playing.data()
    most, channels = need(data.processed, data, "processed"), len(playing.fitted)
    if channels > most:
        return fails("short", channels=channels, processed=most, short=channels - most)
    unlabelled = playing.unlabelled()
    if unlabelled is not None:
        raise unlabelled
    return passes("enough", channels=channels, processed=most)


@rule(
    "channel.layout-taken",
    level=Level.ERROR,
    basis=SHEET,
    each=PROCESSORS,
    says={
        "ear": "takes {upper} upper channels with {wanted} ear-layer ones, not {ear}: declare {short} more unfitted",
        "other": "is set up as {layout} and does not take it; it takes {layouts}",
        "taken": "takes {layout}",
    },
    at="product",
    since="0.3.0",
)
def layout_taken(room: Room, _processor: Processor) -> Says:
    """The processor takes the layout that the room is set up with.

    Why: Many processors take a number of upper channels only together with a number of ear-layer ones: six above with
    seven at the ears, say. A room of five then declares two that are not fitted, or two of the upper ones stay silent.

    How decided: Counts of upper, ear-layer and bottom channels, fitted or declared and not fitted, and no fewer than in
    the layout that is followed, against the layouts on the processor's sheet.

    Remedy: Declare the ear-layer channels that the processor asks for and that the room leaves out, or leave upper
    channels out.

    When to waive: Never; try it on the processor and correct its sheet.
    """
    playing = room.figures.playing
    layouts = tuple(one.layout or "" for one in playing.taken())
    unlabelled = playing.unlabelled()
    if unlabelled is not None:
        raise unlabelled
    counts = playing.set_up
    if playing.takes(counts) is not None:
        return passes("taken", layout=counts.name)
    wanted = playing.ear_wanted(counts)
    if wanted is None:
        return fails("other", layout=counts.name, layouts=layouts)
    return fails("ear", upper=counts.upper, wanted=wanted, ear=counts.middle, short=wanted - counts.middle)


@rule(
    "channel.unfitted",
    level=Level.ERROR,
    basis=SHEET,
    each=PROCESSORS,
    says={
        "fitted": "declares {labels} not fitted, and a loudspeaker plays there; strike out one of the two",
        "not": "declares {labels} not fitted, which it must have in layout {layout}",
        "none": "declares every channel fitted",
        "may": "may do without {labels}",
    },
    after=("channel.layout-taken",),
    at="unfitted",
    since="0.3.0",
)
def unfitted(room: Room, processor: Processor) -> Says:
    """What is declared and not fitted is really left out, and the processor may do without it.

    Why: What is sent to a channel that is declared and not there must go somewhere else; where the processor does not
    spread it, it is lost.

    How decided: Labels that the processor declares not fitted against those of the loudspeakers, and against what its
    sheet lets go in the layout that the room is set up with.

    Remedy: Strike the label out, or fit the channel.

    When to waive: The maker says how the processor spreads the channel, and the sheet is not yet corrected.
    """
    playing = room.figures.playing
    declared = tuple(label for label in processor.unfitted if label in playing.declared)
    both = tuple(label for label in declared if label in playing.fitted)
    if both:
        return fails("fitted", labels=both)
    if not declared:
        return passes("none")
    counts = playing.set_up
    entry = playing.takes(counts)
    if entry is None:
        raise playing.unlabelled() or Missing(playing.data(), "layouts")
    if not entry.unfitted and entry.at.get("unfitted") is None:
        raise Missing(entry, "unfitted")
    bound = tuple(label for label in declared if label not in entry.unfitted)
    return fails("not", labels=bound, layout=counts.name) if bound else passes("may", labels=declared)
