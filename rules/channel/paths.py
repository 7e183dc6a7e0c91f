"""The way to each loudspeaker: a line output, an amplifier's output, a cable, each of them once."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from roomlint.review import SOURCES, SUBWOOFERS, Level, Missing, No, fails, need, passes, practice, rule

from . import AMPLIFIERS, BUILT, OUTPUTS, PROCESSORS, Output

if TYPE_CHECKING:
    from roomlint.design.listening import Subwoofer
    from roomlint.design.supply import Processor
    from roomlint.review import Applies, Room, Says

    from . import Driver, Source

CLOSED: Final = frozenset({"rough-in", "handover"})
"""Stages from which a cable that is on no list is not in the wall either."""


def _by_line(room: Room, source: Source) -> Applies:
    """Whether a source takes its signal from a line output."""
    if room.figures.routing.driven_inside(source):
        return No("the processor's own amplifier drives it")
    return True


@rule(
    "channel.fed",
    level=Level.ERROR,
    basis=BUILT,
    each=SOURCES,
    says={
        "unfed": "no amplifier output drives it; add it to one",
        "twice": "is driven by more than one output ({amplifiers}); leave one",
        "both": "has an amplifier of its own, and {amplifier} drives it too; leave one",
        "fed": "{amplifier} drives it",
        "own": "has an amplifier of its own",
    },
    since="0.3.0",
)
def fed(room: Room, source: Source) -> Says:
    """Every loudspeaker is driven by one amplifier output, or by an amplifier of its own.

    Why: An unfed loudspeaker is found when the walls are closed; one that is fed twice ties two amplifiers together.

    How decided: The outputs of all amplifiers, the one inside the processor too, that name the loudspeaker or
    subwoofer are counted. One whose sheet says that it draws from the mains has an amplifier of its own; a subwoofer
    without a sheet leaves the question open. It took over `layout.fed`.

    Remedy: Add it to an output, or take it out of all but one.

    When to waive: Two outputs on the two halves of one cabinet, with its links taken out.
    """
    routing = room.figures.routing
    ways, active = routing.feeding(source), routing.is_active(source)
    if len(ways) > 1:
        return fails("twice", amplifiers=tuple(way.driver.words for way in ways))
    if ways:
        driver = ways[0].driver.words
        return fails("both", amplifier=driver, level=Level.WARNING) if active else passes("fed", amplifier=driver)
    unsaid = routing.unsaid_amplifier()
    if active and (unsaid is None or not routing.drivers):
        return passes("own")
    if unsaid is not None:
        raise unsaid
    routing.needs_amplifier(source)
    return fails("unfed")


@rule(
    "channel.line-output",
    level=Level.WARNING,
    basis=BUILT,
    each=SOURCES,
    when=_by_line,
    says={
        "none": "no line output of the processor plays it; assign it one",
        "twice": "plays more than one line output ({outputs}); leave one",
        "played": "plays line output {output}",
    },
    since="0.3.0",
)
def line_output(room: Room, source: Source) -> Says:
    """Every loudspeaker plays one output of the processor.

    Why: An amplifier without a signal is as silent as a loudspeaker without an amplifier; two signals on one
    loudspeaker are a mixture that nobody set.

    How decided: The processor's line outputs that name the loudspeaker or subwoofer are counted; what the processor's
    own amplifier drives needs none. Outputs that the file does not list are asked for.

    Remedy: Assign it one output.

    When to waive: A loudspeaker that another source plays, such as the paging of the house.
    """
    outputs = tuple(sent.number for sent in room.figures.routing.sending(source))
    if not outputs:
        return fails("none")
    return passes("played", output=outputs[0]) if len(outputs) == 1 else fails("twice", outputs=outputs)


@rule(
    "channel.cable",
    level=Level.WARNING,
    basis=BUILT,
    each=SOURCES,
    says={
        "none": "no cable on the list runs to it",
        "astray": "its cable comes from {start}, which does not drive it",
        "runs": "{cable} runs to it",
    },
    after=("channel.fed",),
    since="0.3.0",
)
def cable(room: Room, source: Source) -> Says:
    """A cable runs to every loudspeaker from what drives it.

    Why: A run that is on no list is not pulled, and after the boards are up it is a saw that finds out.

    How decided: Cables for loudspeakers, line level and network that end at it must begin at the amplifier that drives
    it, at its neighbour on the same output, or, where it has an amplifier of its own, at the processor. From rough-in
    on a missing one is a finding; before, the list may not be made, and it is asked for.

    Remedy: Add the run to the list, or correct where it begins.

    When to waive: A wireless link.
    """
    routing = room.figures.routing
    runs = routing.cables_to(source)
    if not runs:
        told = room.design.cables or room.design.at.get("cables") is not None
        if not told or need(room.design.project.stage, room.design.project, "stage") not in CLOSED:
            raise Missing(room.design, "cables")
        unsaid = routing.unsaid_run(source)
        if unsaid is not None:
            raise unsaid
        return fails("none")
    begins = routing.begins_of(source)
    starts = tuple(dict.fromkeys(need(run.start, run, "from") for run in runs))
    unsaid = routing.unsaid_amplifier()
    if unsaid is not None and not routing.feeding(source) and not routing.is_active(source):
        raise unsaid
    if begins.isdisjoint(starts):
        return fails("astray", start=starts)
    return passes("runs", cable=next(run.words for run in runs if run.start in begins))


def _stands_apart(room: Room, driver: Driver) -> Applies:
    """Whether an amplifier stands somewhere else than the processor."""
    routing = room.figures.routing
    processor = routing.processor()
    if driver is processor:
        return No("it is the processor's own amplifier")
    if not driver.feeds and driver.at.get("feeds") is not None:
        return No("it drives nothing")
    own, other = routing.racks_of(driver), routing.racks_of(processor)
    return No("it stands in the processor's rack") if own & other else True


@rule(
    "channel.link",
    level=Level.WARNING,
    basis=BUILT,
    each=AMPLIFIERS,
    when=_stands_apart,
    says={
        "none": "stands apart from the processor, and no line-level or network cable on the list runs to it",
        "runs": "{cable} runs to it",
    },
    since="0.3.0",
)
def link(room: Room, driver: Driver) -> Says:
    """A cable runs from the processor to every amplifier that does not stand beside it.

    Why: The run between two places is pulled with the others, or through the finished wall.

    How decided: In one rack no run is asked for. Elsewhere a line-level or network cable must run from the processor to
    the amplifier. From rough-in on a missing one is a finding, once it is known which racks the two are in; before,
    the list may not be made, and it is asked for.

    Remedy: Add the run to the list, or say in which rack the two stand.

    When to waive: A wireless link, or two devices side by side on one shelf.
    """
    routing = room.figures.routing
    links = routing.links_to(driver)
    if links:
        return passes("runs", cable=links[0].words)
    if not routing.racks_of(driver):
        raise Missing(driver, "rack")
    if not routing.racks_of(routing.processor()):
        raise Missing(room.design, "electronics.racks[].contains")
    if need(room.design.project.stage, room.design.project, "stage") not in CLOSED:
        raise Missing(room.design, "cables")
    unsaid = routing.unsaid_link(driver)
    if unsaid is not None:
        raise unsaid
    return fails("none")


@rule(
    "channel.one-signal",
    level=Level.ERROR,
    basis=practice("one output plays one channel; two loudspeakers on it play the same"),
    each=OUTPUTS,
    says={
        "several": "drives {channels}: two channels on one output play the same",
        "beside": "{channels} on one output play the same",
        "mixed": "drives what plays line outputs {lines}; one output has one signal",
        "crossed": "is patched to line output {patched} and drives what plays {lines}; exchange the patch",
        "one": "drives {channels}",
    },
    beside=("channel.load",),
    at="loudspeakers",
    since="0.3.0",
)
def one_signal(room: Room, output: Output) -> Says:
    """Everything on one amplifier output plays the same channel.

    Why: Two channels on one output are one channel: what the mix puts left comes from both sides.

    How decided: Labels of the loudspeakers on the output, all subwoofers as one channel, and the processor's line
    outputs that the loudspeakers play, where these are listed. An input that is patched to another line output than the
    loudspeakers play is a finding as well.

    Remedy: Give each channel an amplifier output of its own.

    When to waive: A second room that only ever plays a mono mix.
    """
    routing = room.figures.routing
    channels, lines = routing.channels(routing.of_feed(output.feed)), routing.lines_on(output.feed)
    if len(channels) > 1:
        return fails("several", channels=channels)
    if len(lines) > 1:
        return fails("mixed", lines=lines)
    patched = output.feed.line_output
    if patched is not None and lines and str(patched) not in lines:
        return fails("crossed", patched=patched, lines=lines)
    return passes("one", channels=channels)


@rule(
    "channel.line-signal",
    level=Level.ERROR,
    basis=practice("one line output carries one channel, and a number stands for one output"),
    each=PROCESSORS,
    says={
        "several": "its line output {output} plays {channels}: two channels from one output are one",
        "twice": "its line output {outputs} is used more than once; number them anew",
        "short": "uses {used} line outputs and has {outputs}; leave some out, or choose one with more",
        "few": "line outputs are short: {wanted} wanted, {outputs} there; leave channels out, or choose one with more",
        "beyond": "its line output {output} is beyond the {outputs} that it has; number them anew",
        "fine": "each of its line outputs plays one channel",
    },
    at="outputs",
    since="0.3.0",
)
def line_signal(room: Room, processor: Processor) -> Says:
    """Each line output of the processor plays one channel, and it has as many as are used.

    Why: What is not sent apart cannot be set apart, and is not heard apart.

    How decided: Labels of what plays each line output, all subwoofers as one channel; numbers used twice; and the
    number of outputs that play loudspeakers, and the highest number in use, against the processor's sheet. Before the
    outputs are listed, the channels that its own amplifier does not drive against that number.

    Remedy: Give each channel a line output of its own, or choose a processor with more.

    When to waive: Never; correct the outputs.
    """
    routing, playing = room.figures.routing, room.figures.playing
    if processor.at.get("outputs") is None:
        data = playing.data()
        wanted, has = playing.lines_wanted(), need(data.outputs, data, "outputs")
        if wanted > has:
            return fails("few", outputs=has, wanted=wanted)
    numbers = [sent.number for sent in routing.sent]
    twice = tuple(sorted({number for number in numbers if numbers.count(number) > 1}))
    if twice:
        return fails("twice", outputs=twice)
    for sent in routing.sent:
        channels = routing.channels(routing.of_sent(sent))
        if len(channels) > 1:
            return fails("several", output=sent.number, channels=channels)
    data = playing.data()
    used, has = routing.lines_used(), need(data.outputs, data, "outputs")
    if used > has:
        return fails("short", used=used, outputs=has)
    every, last = has + need(data.subwoofer_outputs, data, "subwoofer_outputs"), routing.last_line()
    return fails("beyond", output=last, outputs=every) if last > every else passes("fine")


@rule(
    "channel.amplifier-outputs",
    level=Level.ERROR,
    basis=BUILT,
    each=AMPLIFIERS,
    says={
        "twice": "its output {outputs} is used more than once; number the outputs anew",
        "short": "{used} of its channels are used and it has {channels}; choose one with more, or add one",
        "enough": "{used} of its {channels} channels are used",
    },
    since="0.3.0",
)
def amplifier_outputs(room: Room, driver: Driver) -> Says:
    """An amplifier has the channels that its outputs use.

    Why: A channel too many means another amplifier, its place, its power and its heat.

    How decided: Outputs in use and their numbers against the channels on the amplifier's sheet; an output of two
    bridged channels uses two. It took over `layout.amplifier-outputs`.

    Remedy: Choose an amplifier with more channels, or add one.

    When to waive: Never; correct the sheet or the outputs.
    """
    if not driver.feeds and driver.at.get("feeds") is None:
        raise Missing(driver, "feeds")
    used, twice = room.figures.routing.outputs_of(driver)
    if twice:
        return fails("twice", outputs=tuple(twice))
    channels = room.figures.routing.amplifier_channels(driver)
    return (fails if used > channels else passes)(
        "short" if used > channels else "enough", used=used, channels=channels
    )


@rule(
    "channel.subwoofer-outputs",
    level=Level.WARNING,
    basis=practice("each subwoofer has its own level and its own delay"),
    each=SUBWOOFERS,
    when=_by_line,
    says={
        "shared": "has no level and no delay of its own; line output {output} plays {playing}",
        "tied": "the processor sets {apart} subwoofer outputs apart, and {used} are in use",
        "few": "subwoofers want {count} outputs of their own, and the processor sets {apart} apart",
        "own": "has line output {output} to itself",
    },
    after=("channel.line-output",),
    since="0.3.0",
)
def subwoofer_outputs(room: Room, subwoofer: Subwoofer) -> Says:
    """Every subwoofer has an output to itself, whose level and delay are set apart.

    Why: Subwoofers even each other out only when each is set for its place; on one output they are one.

    How decided: What else plays its line output; and the number of line outputs that subwoofers use against the number
    that the processor's sheet says it sets apart. Before the outputs are listed, the number of subwoofers against it.

    Remedy: Give it an output of its own, or set levels and delays apart in an outside unit.

    When to waive: Two that stand mirrored about the seats, so that both want the same setting.
    """
    routing, playing = room.figures.routing, room.figures.playing
    if routing.processor().at.get("outputs") is None:
        count = sum(not routing.driven_inside(one) for one in room.design.subwoofers)
        apart = need(playing.data().subwoofer_outputs, playing.data(), "subwoofer_outputs")
        if count > apart:
            return fails("few", apart=apart, count=count)
    outputs = routing.sending(subwoofer)
    if not outputs:
        raise Missing(routing.processor(), "outputs")
    sharing = tuple(one.words for one in routing.of_sent(outputs[0]))
    if len(sharing) > 1:
        return fails("shared", output=outputs[0].number, playing=sharing)
    data = playing.data()
    apart, used = need(data.subwoofer_outputs, data, "subwoofer_outputs"), routing.subwoofer_lines_used()
    return fails("tied", apart=apart, used=used) if used > apart else passes("own", output=outputs[0].number)
