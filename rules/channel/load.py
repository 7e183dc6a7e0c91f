"""What amplifiers are asked for: the load on each output, bridging, how many channels, where the power goes."""

from __future__ import annotations

from typing import TYPE_CHECKING

from roomlint.review import (
    ROOM,
    Level,
    No,
    Window,
    Windows,
    at_least,
    computed,
    fails,
    found,
    labelled,
    passes,
    practice,
    rule,
    standard,
)

from . import BUILT, OUTPUTS, Output, with_sources

if TYPE_CHECKING:
    from roomlint.design.listening import Loudspeaker
    from roomlint.design.model import Design
    from roomlint.review import Answer, Applies, Figure, Room, Says


def _least(room: Room, output: Output) -> Windows:
    return Windows(Window(room.figures.routing.least_load(output.feed, output.driver).value, None, "ohm"))


def _drives(_: Room, output: Output) -> Applies:
    return True if output.feed.loudspeakers else No("nothing is wired to it")


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
