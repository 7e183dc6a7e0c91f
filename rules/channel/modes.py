"""Listening modes: each plays what is fitted, one plays the front pair alone, one plays everything."""

from __future__ import annotations

from typing import TYPE_CHECKING

from roomlint.review import ROOM, Level, No, fails, passes, rule

from . import BUILT, LEFT_BEHIND, MODES, with_sources

if TYPE_CHECKING:
    from roomlint.design.model import Design
    from roomlint.design.record import Mode
    from roomlint.review import Applies, Room, Says


def _has_front_pair(room: Room, _: Design) -> Applies:
    playing = room.figures.playing
    if playing.has_front_pair():
        return True
    unlabelled = playing.unlabelled()
    if unlabelled is not None:
        raise unlabelled
    return No("the room has no front pair")


@rule(
    "channel.mode-channels",
    level=Level.ERROR,
    basis=BUILT,
    each=MODES,
    says={
        "silent": "no loudspeaker plays {labels}; add it, or take the channel out of the mode",
        "beside": "{subject} wants {labels}",
        "differs": "names layout {layout} and lists {listed} otherwise; correct one of the two",
        "played": "all its channels have loudspeakers",
    },
    beside=("layout.channel-set",),
    at="channels",
    since="0.3.0",
)
def mode_channels(room: Room, mode: Mode) -> Says:
    """A listening mode plays only channels that the room has.

    Why: A channel without a loudspeaker is silence in the middle of a film.

    How decided: The mode's channels, or those of the layout that it names less what the processor declares not fitted,
    against the labels of loudspeakers; any subwoofer carries the low-frequency channels. Where a mode names a layout
    and lists channels, the two agree, low-frequency channels and channels left out on purpose apart. It took over
    `layout.mode-channels`.

    Remedy: Take the channel out of the mode, or add its loudspeaker.

    When to waive: Never; correct the mode.
    """
    playing = room.figures.playing
    silent, differing = playing.silent(mode), playing.differing(mode)
    if not silent and differing:
        return fails("differs", layout=mode.layout or "", listed=differing)
    if not silent:
        return passes("played")
    unlabelled = room.figures.arrangement.unlabelled()
    if unlabelled is not None:
        raise unlabelled
    return fails("silent", labels=silent)


@rule(
    "channel.stereo-mode",
    level=Level.WARNING,
    basis=LEFT_BEHIND,
    each=ROOM,
    when=_has_front_pair,
    says={
        "none": "no listening mode plays the front pair alone; music in two channels wants one",
        "there": "{modes} plays the front pair alone",
    },
    at="listening_modes",
    since="0.3.0",
)
def stereo_mode(room: Room, _design: Design) -> Says:
    """A listening mode plays the front pair alone.

    Why: Music in two channels is made for two loudspeakers; spread over all of them it is another mix.

    How decided: A mode whose channels are M+030 and M-030; subwoofers may help them.

    Remedy: Add a listening mode of two channels.

    When to waive: A room that only ever plays pictures.
    """
    playing = room.figures.playing
    modes = tuple(mode.words for mode in playing.stereo_modes())
    if modes:
        return passes("there", modes=modes)
    unsaid = playing.unsaid_mode()
    if unsaid is not None:
        raise unsaid
    return fails("none")


@rule(
    "channel.full-mode",
    level=Level.WARNING,
    basis=LEFT_BEHIND,
    each=ROOM,
    when=with_sources,
    says={
        "short": "no listening mode plays every loudspeaker; {labels} play in none",
        "apart": "no listening mode plays every loudspeaker at once",
        "there": "{modes} plays every loudspeaker",
    },
    at="listening_modes",
    since="0.3.0",
)
def full_mode(room: Room, _design: Design) -> Says:
    """A listening mode plays every loudspeaker.

    Why: A loudspeaker that no mode plays was paid for and is never heard.

    How decided: A mode whose channels hold the labels of all loudspeakers, and the low-frequency channel where a
    subwoofer carries it or the layout that is followed has it.

    Remedy: Add a listening mode of all channels, or add the missing ones to it.

    When to waive: A loudspeaker that serves another use, such as the paging of the house.
    """
    playing = room.figures.playing
    unlabelled = playing.unlabelled()
    if unlabelled is not None:
        raise unlabelled
    modes = tuple(mode.words for mode in playing.full_modes())
    if modes:
        return passes("there", modes=modes)
    unsaid = playing.unsaid_mode()
    if unsaid is not None:
        raise unsaid
    never = playing.never_played()
    return fails("short", labels=never) if never else fails("apart")
