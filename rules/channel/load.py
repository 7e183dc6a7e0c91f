"""What amplifiers are asked for: the load on each output, bridging, how many channels, where the power goes."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from roomlint.review import (
    ROOM,
    SOURCES,
    Amid,
    Level,
    No,
    Subjects,
    Window,
    Windows,
    at_least,
    at_most,
    computed,
    fails,
    found,
    labelled,
    memory,
    need,
    passes,
    practice,
    rule,
    standard,
)

from . import BUILT, OUTPUTS, Output, with_sources

if TYPE_CHECKING:
    from collections.abc import Iterator

    from roomlint.design.listening import Loudspeaker
    from roomlint.design.model import Design
    from roomlint.review import Answer, Applies, Figure, Room, Says

    from . import Source


def _least(room: Room, output: Output) -> Windows:
    return Windows(Window(room.figures.routing.least_load(output.feed, output.driver).value, None, "ohm"))


def _drives(room: Room, output: Output) -> Applies:
    if not output.feed.loudspeakers:
        return No("nothing is wired to it")
    if any(room.figures.routing.is_tapped(source) for source in room.figures.routing.of_feed(output.feed)):
        return No("it feeds a line of transformers", unless=("channel.taps",))
    return True


def _tapped(room: Room, output: Output) -> Applies:
    if any(room.figures.routing.is_tapped(source) for source in room.figures.routing.of_feed(output.feed)):
        return True
    return No("it feeds no transformers")


def _is_bridged(_: Room, output: Output) -> Applies:
    return True if output.feed.bridged else No("no channels are bridged into it")


@rule(
    "channel.load",
    level=Level.ERROR,
    basis=(
        standard(
            "IEC 60268-5", "rated impedance", read=False, note="80 % of it is the least; read in a maker's glossary"
        ),
        practice("an amplifier drives the least load on its sheet and no less"),
    ),
    each=OUTPUTS,
    when=_drives,
    window=computed("ohm", "at least the load on the amplifier's sheet, with so many channels driven", _least),
    says="carries {loudspeakers}, {figure} together; its amplifier drives {window}",
    after=("channel.bridged",),
    at="loudspeakers",
    since="0.3.0",
)
def load(room: Room, output: Output) -> Answer:
    """No amplifier output carries a lower load than its amplifier is made for.

    Why: Into too low a load an amplifier runs hot, shuts down in the loud scene, or clips and takes tweeters along.

    How decided: Rated impedances as wired, in parallel 1/(1/Z1 + 1/Z2), in series Z1 + Z2. A cabinet whose least
    impedance is under 80 % of what is printed on it counts with least/0.8. Against the amplifier's least load, with as
    many channels driven as are in use, and the bridged one where two are bridged. Two 4 ohm cabinets in parallel are
    2 ohm.

    Remedy: One output for each loudspeaker, or an amplifier that is rated for the load; a switch box is no cure.

    When to waive: Never; the amplifier's maker decides, in writing.
    """
    routing = room.figures.routing
    names = tuple(source.words for source in routing.of_feed(output.feed))
    return found(routing.load(output.feed), loudspeakers=names)


@rule(
    "channel.bridged",
    level=Level.ERROR,
    basis=practice("only channels that the maker rates for it are bridged"),
    each=OUTPUTS,
    when=_is_bridged,
    says={
        "cannot": "bridges two channels of an amplifier that cannot be bridged",
        "can": "bridges two channels of an amplifier that is rated for it",
    },
    at="bridged",
    since="0.3.0",
)
def bridged(room: Room, output: Output) -> Says:
    """Channels are bridged only where the amplifier is rated for it.

    Why: Bridged outputs that share a ground are a short circuit.

    How decided: The least bridged load on the amplifier's sheet, which writes `none` where channels cannot be bridged.

    Remedy: Take one channel, or choose an amplifier with more power.

    When to waive: Never; the amplifier's maker decides.
    """
    routing = room.figures.routing
    if routing.amplifier_data(output.driver).no_bridge:
        return fails("cannot")
    routing.least_load(output.feed, output.driver)
    return passes("can")


@rule(
    "channel.taps",
    level=Level.WARNING,
    basis=practice("80 % of the amplifier's power in taps; makers say 80 to 100 %"),
    each=OUTPUTS,
    when=_tapped,
    window=at_most(80.0, "%", error=100.0),
    says={
        "fail": "feeds taps that are {figure} of its rated power together; {window} wanted",
        "direct": "feeds transformers, and its amplifier has no output for a line of constant voltage",
        "mixed": "feeds {plain} beside transformers: on a line of constant voltage that is a short circuit",
        "other": "feeds {plain}, set to a tap that is not on the sheet",
    },
    cure=("tap",),
    at="loudspeakers",
    since="0.3.0",
)
def taps(room: Room, output: Output) -> Answer:
    """The taps on a line of constant voltage leave the amplifier a fifth of its power.

    Why: Taps beyond the amplifier's power load it below what it is made for; a loudspeaker without a transformer on the
    line takes all of it.

    How decided: The taps that are set on an output's line, over the amplifier's rated power. Every loudspeaker on the
    line has a tap, among those on its sheet, and the amplifier's sheet names the line's voltage. 100 W of taps on 70.7
    V are 50 ohm. Such outputs are often Class 3 or Class 1: `cable.output-class`.

    Remedy: Lower taps, fewer loudspeakers on the line, or a larger amplifier.

    When to waive: The amplifier's maker allows taps of its full power, in writing.
    """
    routing = room.figures.routing
    sources = routing.of_feed(output.feed)
    plain = tuple(source.words for source in sources if not routing.is_tapped(source))
    if plain:
        return fails("mixed", plain=plain)
    routing.taps(output.feed)
    for source in sources:
        data = source.product.loudspeaker if source.product is not None else None
        known = [tap.value for tap in data.taps] if data is not None else []
        tap = getattr(source, "tap_w", None)
        if known and tap is not None and tap.value not in known:
            return fails("other", plain=(source.words,))
    data_of = routing.amplifier_data(output.driver)
    if data_of.no_line:
        return fails("direct")
    need(data_of.line_voltage_v, data_of, "line_voltage")
    return routing.tap_use(output.feed, output.driver)


def every_driven(room: Room) -> Iterator[Amid[Source]]:
    """Yield every loudspeaker amid the outputs that drive it: what is wrong with one of these is told of it."""
    for source in room.design.sources:
        yield Amid(source, tuple(way.feed for way in room.figures.routing.feeding(source)))


DRIVEN: Final[Subjects[Amid[Source]]] = Subjects(SOURCES.name, every_driven, SOURCES.of)


def _passive(room: Room, amid: Amid[Source]) -> Applies:
    source = amid.middle
    if room.figures.routing.is_active(source):
        return No("it has an amplifier of its own")
    if room.figures.routing.is_tapped(source):
        return No("its tap says what it draws")
    return True


@rule(
    "channel.power-match",
    level=Level.WARNING,
    basis=memory("an amplifier of one to two times the loudspeaker's rated power; below half of it it clips"),
    each=DRIVEN,
    when=_passive,
    window=Windows(Window(None, 2.0, ""), Window(0.5, 2.0, "")),
    says="is driven by {figure} times the power that it is rated for; {window} wanted",
    after=("channel.fed", "channel.load"),
    at="product",
    since="0.3.0",
)
def power_match(room: Room, amid: Amid[Source]) -> Figure:
    """An amplifier gives a loudspeaker between half and twice the power that it is rated for.

    Why: Far above it one slip of the level burns a driver; far below it the amplifier clips in the loud scene, and what
    it then sends burns tweeters.

    How decided: What the amplifier gives the loudspeaker as it is wired, alone, beside others, in a chain or bridged,
    over the rated noise power on the loudspeaker's sheet: a warning above 2, a note below a half. The amplifier gives
    what its sheet rates into the load, or, into less than its least rated one, something between the same power and the
    same voltage. From memory.

    Remedy: Another amplifier, or a limiter that is set and on record.

    When to waive: A limiter holds the power below the rating.
    """
    return room.figures.levels.power_match(amid.middle)


@rule(
    "channel.amplified",
    level=Level.ERROR,
    basis=BUILT,
    each=ROOM,
    when=with_sources,
    says={
        "short": "wants {wanted} amplifier channels and has {channels}; an outside amplifier for the other {short}",
        "enough": "{wanted} of {channels} amplifier channels are wanted",
    },
    at="electronics",
    since="0.3.0",
)
def amplified(room: Room, _design: Design) -> Says:
    """There are as many amplifier channels as loudspeakers want.

    Why: A processor may set fifteen channels and amplify eleven; the other four want an amplifier, its place and its
    power, and nobody counts them until the rack is full.

    How decided: Outputs in use, bridged ones twice, and loudspeakers that nothing drives yet, against the channels of
    all amplifiers, the one inside the processor too. What has an amplifier of its own wants none.

    Remedy: Add an outside amplifier, and let it drive the fronts.

    When to waive: Never; correct the sheets or the room.
    """
    routing = room.figures.routing
    wanted, unknown = routing.wanted_channels()
    unsaid = routing.unsaid_amplifier() if not routing.drivers else None
    if unsaid is not None and (wanted or unknown is not None):
        raise unsaid
    channels = sum(routing.amplifier_channels(driver) for driver in routing.drivers)
    if wanted > channels:
        return fails("short", wanted=wanted, channels=channels, short=wanted - channels)
    if unknown is not None:
        raise unknown
    return passes("enough", wanted=wanted, channels=channels)


def _powered_outside(room: Room, speaker: Loudspeaker) -> Applies:
    if room.figures.routing.is_active(speaker):
        return No("it has an amplifier of its own")
    return True if room.figures.routing.rivals(speaker) else No("no amplifier drives anything but the fronts")


@rule(
    "channel.power-first",
    level=Level.NOTE,
    basis=practice("extra power goes to the fronts first"),
    each=labelled("M+030", "M-030", "M+000"),
    when=_powered_outside,
    window=at_least(1.0, ""),
    says="has {figure} times the power that the strongest of the others has; {window} wanted",
    after=("channel.fed",),
    at="label",
    since="0.3.0",
)
def power_first(room: Room, speaker: Loudspeaker) -> Figure:
    """The fronts have at least as much power as any other loudspeaker.

    Why: The fronts play most of the film, and the loudest of it; an outside amplifier helps there first.

    How decided: Rated power of what drives it over the most that drives any loudspeaker but the fronts, each brought to
    one load as of an ideal source. Subwoofers are left out.

    Remedy: Exchange the amplifiers.

    When to waive: Fronts that are so much more sensitive that they need less.
    """
    return room.figures.routing.power_share(speaker, room.figures.routing.rivals(speaker))
