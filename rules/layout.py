"""Chapter layout: which loudspeakers there are, and whether they can stand and be heard where the file puts them."""

from __future__ import annotations

from typing import TYPE_CHECKING

from roomlint.rules.angle import BS2051, HOME_STUDY

from roomlint.review import (
    Against,
    Group,
    Level,
    Window,
    does_not_apply,
    fails,
    need,
    passes,
    practice,
    rule,
    standard,
    tells,
)

if TYPE_CHECKING:
    from collections.abc import Iterator

    from roomlint.design.listening import Loudspeaker
    from roomlint.design.model import Design
    from roomlint.design.record import Mode
    from roomlint.design.supply import Amplifier
    from roomlint.review import Figure, Room, Says

LABELS = standard("ITU-R BS.2051-3", "table 1", read=False, note="through a public digest")
BUILT = practice("a drawing that cannot be built is found on paper, not on site")

_LEVEL_DEG = 2.0
"""What setting out is allowed in elevation, as in `angle.ear-layer-level`."""


def with_loudspeakers(room: Room) -> Iterator[Design]:
    """Yield the design when it has loudspeakers or names a layout."""
    if room.design.loudspeakers or room.design.layout is not None:
        yield room.design


def sided(room: Room) -> Iterator[Loudspeaker]:
    """Yield the loudspeakers whose label claims a side, and those that have no label yet."""
    for speaker in room.design.loudspeakers:
        if speaker.label is None or room.figures.angles.claims_side(speaker):
            yield speaker


def pairs(room: Room) -> Iterator[Group]:
    """Yield each left loudspeaker with its partner on the right, when both are there."""
    for left, right in room.figures.angles.pairs():
        yield Group((left, right))


def departures(room: Room) -> Iterator[Loudspeaker]:
    """Yield the loudspeakers that declare a departure from their label's window."""
    for speaker in room.design.loudspeakers:
        if speaker.departure is not None:
            yield speaker


def amplifiers(room: Room) -> Iterator[Amplifier]:
    """Yield the amplifiers."""
    yield from room.design.amplifiers


def modes(room: Room) -> Iterator[Mode]:
    """Yield the listening modes."""
    yield from room.design.modes


@rule(
    "layout.channel-set",
    level=Level.ERROR,
    basis=(BS2051, LABELS),
    each=with_loudspeakers,
    reads=("layout", "loudspeakers[].label", "subwoofers", "electronics.processor.unfitted"),
    since="0.1.0",
    at="layout",
)
def channel_set(room: Room, design: Design) -> Says:
    """The loudspeakers are exactly those of the layout that the file names.

    Why: A missing or extra loudspeaker means wrong routing, wiring and settings from the first day.

    How decided: The labels of loudspeakers and subwoofers against the layout's. Channels that the processor declares as
    unfitted count as left out on purpose; any subwoofer carries the LFE channels.

    Remedy: Add the missing loudspeaker, declare its channel unfitted, remove the extra one, or name another layout.

    When to waive: An extra loudspeaker that repeats a channel on purpose, such as a second row of surrounds.
    """
    layout = need(design.layout, design, "layout")
    missing, extra, unfitted = room.figures.angles.channel_set(layout)
    told = []
    if missing:
        told.append(f"layout {layout} also has {', '.join(missing)}. Add what is missing, or declare it unfitted.")
    if extra:
        told.append(f"layout {layout} has no {', '.join(extra)}. Correct the label, or name another layout.")
    if told:
        return fails(" ".join(told))
    without = f", {', '.join(unfitted)} left out on purpose" if unfitted else ""
    return passes(f"all channels of layout {layout} are there{without}.")


@rule(
    "layout.one-label-each",
    level=Level.ERROR,
    basis=LABELS,
    each=with_loudspeakers,
    reads=("loudspeakers[].label",),
    since="0.1.0",
    at="loudspeakers",
)
def one_label_each(room: Room, design: Design) -> Says:
    """Every loudspeaker has a label, and no two have the same.

    Why: A label is the loudspeaker's name in routing, settings and on the plate behind it.

    How decided: Labels of the loudspeakers, compared.

    Remedy: Label the loudspeaker by its layer and side, such as M+090; give repeated ones their own label.

    When to waive: Two loudspeakers that carry one channel on purpose, such as a second row of surrounds.
    """
    if not design.loudspeakers:
        return does_not_apply("the room has no loudspeakers.")
    labels = [need(speaker.label, speaker, "label") for speaker in design.loudspeakers]
    repeated = sorted({label for label in labels if labels.count(label) > 1})
    if repeated:
        return fails(f"more than one loudspeaker is labelled {', '.join(repeated)}. Give each its own label.")
    return passes("every loudspeaker has a label of its own.")


@rule(
    "layout.label-side",
    level=Level.ERROR,
    basis=LABELS,
    each=sided,
    reads=("loudspeakers[].label", "loudspeakers[].position", "seats[].ear", "seats[].facing"),
    since="0.1.0",
    window=Window(0.0, 180.0, "deg"),
    at="label",
)
def label_side(room: Room, speaker: Loudspeaker) -> Against:
    """A loudspeaker stands on the side that its label names: + is left, - is right.

    Why: Swapped sides mirror the stage against the picture, and habits differ about which sign is left.

    How decided: Azimuth at the reference seat, counted toward the label's side, is between 0 and 180 degrees.

    Remedy: Change the sign in the label, or the side in the position; left and right are as seen facing the front.

    When to waive: Never; one of the two is wrong.
    """
    figure = room.figures.angles.toward_side(speaker, room.reference_seat)
    return Against(figure, says="In a label + is left and - is right, as seen from the seat.")


@rule(
    "layout.pair-angle",
    level=Level.WARNING,
    basis=(
        standard("ITU-R BS.2051", "symmetry of left and right", read=False),
        practice("5 degrees, a choice of this rule book"),
    ),
    each=pairs,
    reads=("loudspeakers[].position", "loudspeakers[].label", "seats[].ear"),
    since="0.1.0",
    window=Window(None, 5.0, "deg"),
    at="position",
)
def pair_angle(room: Room, pair: Group) -> Figure:
    """Left and right of a pair stand at mirrored azimuths, to 5 degrees.

    Why: The stage leans to the side whose loudspeaker stands nearer to the front.

    How decided: Difference of the two azimuths, without their signs, at the reference seat. The standard asks for
    symmetry; the 5 degrees are our choice.

    Remedy: Mirror one of the pair, or move the seat to the middle between them.

    When to waive: An opening on one side only, with the reason recorded as a departure.
    """
    left, right = pair.elements
    return room.figures.angles.angle_difference(left, right, room.reference_seat)  # type: ignore[arg-type]


@rule(
    "layout.pair-height",
    level=Level.WARNING,
    basis=practice("5 degrees, a choice of this rule book"),
    each=pairs,
    reads=("loudspeakers[].position", "loudspeakers[].label", "seats[].ear"),
    since="0.1.0",
    window=Window(None, 5.0, "deg"),
    at="position",
)
def pair_height(room: Room, pair: Group) -> Figure:
    """Left and right of a pair stand at the same elevation, to 5 degrees.

    Why: Sound that moves from one to the other should not climb or fall on the way.

    How decided: Difference of the two elevations at the reference seat; the 5 degrees are our choice.

    Remedy: Bring the two to one height, or change the nearer one's distance.

    When to waive: A slope over one side only.
    """
    left, right = pair.elements
    return room.figures.angles.height_difference(left, right, room.reference_seat)  # type: ignore[arg-type]


@rule(
    "layout.pair-distance",
    level=Level.WARNING,
    basis=(HOME_STUDY, practice("its 10 per cent, found for rear against centre, put to pairs by this rule book")),
    each=pairs,
    reads=("loudspeakers[].position", "loudspeakers[].label", "seats[].ear"),
    since="0.1.0",
    window=Window(None, 1.10, ""),
    at="position",
)
def pair_distance(room: Room, pair: Group) -> Figure:
    """Left and right of a pair stand at the same distance, to 10 per cent.

    Why: Delay and level settings line up one seat; equal distances line up all of them.

    How decided: Larger distance over the smaller at the reference seat. 10 per cent, about 0.8 dB, is
    what a listening study allowed a rear loudspeaker against the centre; to put it to pairs is our choice.

    Remedy: Move the farther one nearer, or the seat to the middle between them.

    When to waive: An opening on one side only, with delay and level entered.
    """
    left, right = pair.elements
    return room.figures.angles.distance_ratio(left, right, room.reference_seat)  # type: ignore[arg-type]


@rule(
    "layout.pair-surroundings",
    level=Level.NOTE,
    basis=practice("a pair is about as near to its nearest walls; 0.3 m is a choice of this rule book"),
    each=pairs,
    reads=("loudspeakers[].position", "loudspeakers[].label", "room"),
    since="0.1.0",
    window=Window(None, 0.3, "m"),
    at="position",
)
def pair_surroundings(room: Room, pair: Group) -> Figure:
    """Left and right of a pair stand about equally near to their nearest walls.

    Why: A wall beside one of them only changes its bass and its reflections, and the stage leans.

    How decided: Difference of the distances in plan to the nearest wall of each.

    Remedy: Mirror the positions, or treat the nearer wall.

    When to waive: A room open to one side.
    """
    left, right = pair.elements
    return room.figures.angles.wall_difference(left, right)  # type: ignore[arg-type]


@rule(
    "layout.departure",
    level=Level.WARNING,
    basis=(BS2051, practice("a departure is declared with its reason and with the window that it still meets")),
    each=departures,
    reads=("loudspeakers[].departure", "loudspeakers[].position", "layout"),
    since="0.1.0",
    at="departure",
)
def departure(room: Room, speaker: Loudspeaker) -> Says:
    """A declared departure meets the window that it says it meets.

    Why: Who reads the plan later must see whether a departure is a small tolerance or another place altogether.

    How decided: Azimuth and elevation at the reference seat against the layout's ranges (standard); azimuth alone
    against the wider home range of a listening study or of the layout family (home-tolerance), and the trade's range
    (common-practice), with an elevation outside the layout's range told. A departure that claims a window it does not
    meet fails; one that is not needed is told.

    Remedy: Claim the window that it meets, or none, or move the loudspeaker.

    When to waive: Never; correct the declaration.
    """
    declared = need(speaker.departure, speaker, "departure")
    meets = room.figures.angles.windows_met(speaker, room.reference_seat)
    claimed = declared.meets or "none"
    if "standard" in meets:
        return tells("it is inside its layout's range after all; the departure can go.")
    still = f"in azimuth it meets {' and '.join(meets)}" if meets else "in azimuth it meets no window of its label"
    heights = room.figures.angles.allowed_elevation(speaker)
    elevation = room.figures.angles.elevation(speaker, room.reference_seat)
    if heights is not None and not heights[0] - _LEVEL_DEG <= elevation.value <= heights[1] + _LEVEL_DEG:
        still += f"; its elevation of {elevation} is outside the layout's {heights[0]:g} to {heights[1]:g} deg"
    if claimed != "none" and claimed not in meets:
        return fails(f"it claims to meet {claimed}, but {still}. Correct the claim, or move it.")
    return passes(f"outside its layout's range on purpose; {still}.")


@rule(
    "layout.fed",
    level=Level.ERROR,
    basis=BUILT,
    each=lambda room: room.design.loudspeakers,
    reads=("electronics.amplifiers[].feeds[].loudspeakers", "loudspeakers[].id"),
    since="0.1.0",
)
def fed_once(room: Room, speaker: Loudspeaker) -> Says:
    """Every loudspeaker is fed by exactly one amplifier output.

    Why: An unfed loudspeaker is found when the walls are closed; one fed twice ties two amplifiers together.

    How decided: The feeds of all amplifiers that name the loudspeaker are counted.

    Remedy: Add the loudspeaker to a feed, or take it out of all but one.

    When to waive: A loudspeaker with an amplifier of its own inside.
    """
    if not room.design.amplifiers:
        need(None, room.design, "electronics.amplifiers")
    feeds = [
        amplifier.id
        for amplifier in room.design.amplifiers
        for feed in amplifier.feeds
        if speaker.id in feed.loudspeakers
    ]
    if not feeds:
        return fails("no amplifier output feeds it. Add it to a feed.")
    if len(feeds) > 1:
        return fails(f"more than one output feeds it ({', '.join(feeds)}). Leave one.")
    return passes(f"{feeds[0]} feeds it.")


@rule(
    "layout.amplifier-outputs",
    level=Level.ERROR,
    basis=BUILT,
    each=amplifiers,
    reads=("electronics.amplifiers[].feeds[].output", "product:amplifier.channels"),
    since="0.1.0",
)
def amplifier_outputs(room: Room, amplifier: Amplifier) -> Says:
    """An amplifier has the outputs that its feeds use.

    Why: A channel too many means another amplifier, its place, its power and its heat.

    How decided: Number of feeds and their output numbers against the channels on the amplifier's sheet.

    Remedy: Choose an amplifier with more channels, or add one.

    When to waive: Never; correct the sheet or the feeds.
    """
    product = need(amplifier.product, amplifier, "product")
    data = need(product.amplifier, product, "amplifier")
    channels = need(data.channels, data, "channels")
    numbers = [feed.output for feed in amplifier.feeds if feed.output is not None]
    twice = sorted({number for number in numbers if numbers.count(number) > 1})
    if twice:
        return fails(f"output {', '.join(map(str, twice))} is used more than once. Number the feeds anew.")
    used = max([len(amplifier.feeds), *numbers])
    if used > channels:
        return fails(f"its feeds use {used} outputs and it has {channels}. Choose one with more, or add one.")
    return passes(f"{len(amplifier.feeds)} of {channels} outputs are used.")


@rule(
    "layout.mode-channels",
    level=Level.ERROR,
    basis=BUILT,
    each=modes,
    reads=("listening_modes[].channels", "loudspeakers[].label"),
    since="0.1.0",
    at="channels",
)
def mode_channels(room: Room, mode: Mode) -> Says:
    """A listening mode plays only channels that the room has.

    Why: A channel without a loudspeaker is silence in the middle of a film.

    How decided: The mode's channels, or those of the layout that it names, against the labels of loudspeakers and
    subwoofers; any subwoofer carries the LFE channels.

    Remedy: Take the channel out of the mode, or add its loudspeaker.

    When to waive: Never; correct the mode.
    """
    if not mode.channels and mode.layout is None:
        need(None, mode, "channels")
    silent = room.figures.angles.silent(mode)
    if silent:
        return fails(f"no loudspeaker plays {', '.join(silent)}. Add it, or take the channel out of the mode.")
    return passes("all its channels have loudspeakers.")
