"""What a file says twice and differently: an error at both lines, and what rests on it waits."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from roomlint.review import (
    LOUDSPEAKERS,
    SUBWOOFERS,
    Level,
    No,
    Seen,
    Subjects,
    at_most,
    fails,
    found,
    need,
    passes,
    practice,
    rule,
)

from ..access import RACKS
from ..layout import HELD, HUNG, PICTURE, PLACED
from . import ONCE

if TYPE_CHECKING:
    from collections.abc import Iterator

    from roomlint.design.listening import Loudspeaker, Picture, Subwoofer
    from roomlint.design.record import Setting  # noqa: F401  named in a base class, as a text
    from roomlint.design.supply import Rack
    from roomlint.measure.staging import Hung
    from roomlint.review import Applies, Figure, Found, Room, Says

AGREE_MS: Final = 0.1


class Entered(Seen["Loudspeaker | Subwoofer", "Setting"]):
    """A loudspeaker or subwoofer with what is entered for it; both go by one name."""

    @property
    def words(self) -> str:
        """What the team calls it."""
        return self.source.words


def _settings(room: Room) -> Iterator[Entered]:
    sources = {source.id: source for source in room.design.sources}
    for setting in room.design.calibration.settings:
        yield Entered(sources[setting.id], setting)


SETTINGS: Subjects[Entered] = Subjects("entry for a loudspeaker or subwoofer", _settings)
"""Each entry with what it is for: what is judged of that waits for the entry."""


def _both(_: Room, entered: Entered) -> Applies:
    setting = entered.seat
    if setting.delay_s is None or setting.distance_m is None:
        return No("delay and distance are not both entered")
    return True


@rule(
    "file.delay-and-distance",
    level=Level.ERROR,
    basis=ONCE,
    each=SETTINGS,
    when=_both,
    window=at_most(AGREE_MS, "ms"),
    says="delay and distance entered differ by {figure}; the processor takes one of them",
    since="0.2.0",
)
def delay_and_distance(room: Room, entered: Entered) -> Found:
    """A delay and a distance that are both entered for a loudspeaker agree.

    Why: A processor takes the one or the other; whoever reads the file cannot tell which.

    How decided: The distance as the delay that the processor makes of it, against the farthest distance entered, less
    the delay; within a tenth of a millisecond they agree.

    Remedy: Leave out the one that is not entered in the processor.

    When to waive: Never; one of the two is not what the processor holds.
    """
    setting = entered.seat
    return found(room.figures.delays.entries_apart(setting), place=setting.place_of("delay"))


@rule(
    "file.subwoofer-label",
    level=Level.ERROR,
    basis=ONCE,
    each=SUBWOOFERS,
    says={"fail": "is a subwoofer under the label {label}, which is a loudspeaker's", "fine": "carries {label}"},
    at="label",
    since="0.2.0",
)
def subwoofer_label(_: Room, subwoofer: Subwoofer) -> Says:
    """A subwoofer carries no label of a full-range channel.

    Why: A label says which channel plays there. Under a loudspeaker's label a subwoofer would count as that
    loudspeaker, and the channel set would look complete.

    How decided: The label, where one is given, is LFE, LFE1 or LFE2.

    Remedy: Give the label to the loudspeaker that plays the channel, or leave it out.

    When to waive: Never; the label of a channel belongs to what plays the whole channel.
    """
    if subwoofer.label is None or subwoofer.label.startswith("LFE"):
        return passes("fine", label=subwoofer.label or "no label")
    return fails("fail", label=subwoofer.label)


@rule(
    "file.loudspeaker-label",
    level=Level.ERROR,
    basis=ONCE,
    each=LOUDSPEAKERS,
    says={"fail": "is a loudspeaker under the label {label}, which is a subwoofer's", "fine": "carries {label}"},
    at="label",
    since="0.2.0",
)
def loudspeaker_label(_: Room, speaker: Loudspeaker) -> Says:
    """A loudspeaker carries the label of a channel, not of the low-frequency effects.

    Why: What is listed among the loudspeakers is judged as one: its angle, its coverage, its delay.

    How decided: The label does not begin with LFE.

    Remedy: List it among the subwoofers, or give it the label of its channel.

    When to waive: Never; the element's kind and its label say two different things.
    """
    label = need(speaker.label, speaker, "label")
    return fails("fail", label=label) if label.startswith("LFE") else passes("fine", label=label)


def _aimed_and_turned(room: Room, speaker: Loudspeaker) -> Applies:
    if speaker.aim is None:
        return No("its aim is what its mount says")
    mounting = need(speaker.mounting, speaker, "mounting")
    need(mounting.on, mounting, "on")
    return True if room.figures.aim.turned(speaker) else No("how its mount is turned is not written")


@rule(
    "file.aim-and-mount",
    level=Level.WARNING,
    basis=(ONCE, practice("five degrees between the two, what an installer sets by eye; a choice of this rule book")),
    each=LOUDSPEAKERS,
    when=_aimed_and_turned,
    window=at_most(5.0, "deg"),
    says="its mount as turned points {figure} away from its aim; {window} wanted: one of the two is wrong",
    after=PLACED,
    at="mounting",
    since="0.3.0",
)
def aim_and_mount(room: Room, speaker: Loudspeaker) -> Figure:
    """A mount is swivelled and tilted to where its loudspeaker is aimed.

    Why: The designer reads the aim and the installer the swivel; the room is built by the swivel.

    How decided: The direction of the aim against that of the cabinet square off its wall or ceiling, with its baffle,
    turned by swivel and tilt; what of the two is not written is taken as none, and told.

    Remedy: Leave out the aim, or correct the swivel and the tilt.

    When to waive: Never; one of the two is not what is built.
    """
    return room.figures.aim.mount_off_aim(speaker)


def _reaching(room: Room, thing: Hung) -> Applies:
    """Say whether the file states how far a mount reaches or drops as it is used."""
    mounting = need(thing.mounting, thing, "mounting.on")
    surface = need(mounting.on, thing, "mounting.on")
    if surface in HELD:
        return No(HELD[surface])
    used = mounting.drop_m if surface == "ceiling" else mounting.extension_m
    if used is not None:
        return True
    return No("how far its mount reaches as it is used is not written")


@rule(
    "file.reach-and-place",
    level=Level.WARNING,
    basis=(ONCE, practice("five centimetres between the two may be the tape's; a choice of this rule book")),
    each=HUNG,
    when=_reaching,
    window=at_most(0.05, "m"),
    says="its mount ends {figure} beyond where it is placed; {window} wanted: one of the two is wrong",
    after=("layout.inside-room", "mount.sheet-reach"),
    at="mounting",
    since="0.3.0",
)
def reach_and_place(room: Room, thing: Hung) -> Figure:
    """A mount reaches or drops no farther than to the place of what it holds.

    Why: Angles, heads and clearances are judged at the place, loads at the reach; the room has only one of them.

    How decided: The extension from a wall, or the drop from the ceiling above it, less the distance from there to the
    acoustic centre, the picture's middle or the lens; at most 0.05 m. A mount that ends too far before the place is
    told by `layout.on-surface`.

    Remedy: Correct the extension or the drop, or the position.

    When to waive: Never; one of the two is not what is built.
    """
    surface = need(thing.mounting.on if thing.mounting is not None else None, thing, "mounting.on")
    return room.figures.staging.beyond_place(thing, surface)


def _clear_given(_: Room, rack: Rack) -> Applies:
    """Say whether the file gives a free depth before or behind a rack."""
    if rack.front_clear_m is not None or rack.rear_clear_m is not None:
        return True
    return No("no free depth is given for it")


@rule(
    "file.rack-clear",
    level=Level.WARNING,
    basis=(ONCE, practice("a tenth of a metre between the two may be the tape's; a choice of this rule book")),
    each=RACKS,
    when=_clear_given,
    window=at_most(0.10, "m"),
    says="is given {figure} more free depth than the drawing leaves; {window} wanted: one of the two is wrong",
    after=("layout.fixtures-inside", "layout.clear-of-solids"),
    at="position",
    since="0.3.0",
)
def rack_clear(room: Room, rack: Rack) -> Figure:
    """The free depth that the file gives before and behind a rack is there in the drawing.

    Why: Whoever serves the rack stands in the drawing's room, not in the number's.

    How decided: What `front_clear` and `rear_clear` give, less the way that the rack's face, or its back, has straight
    on to the first wall, obstacle, loudspeaker, seat or rack; the larger of the two, at most 0.10 m. What the file does
    not place cannot stand in the way.

    Remedy: Correct the free depth, the rack's place or the direction it faces.

    When to waive: Never; one of the two is not what is built.
    """
    return room.figures.access.clear_said(rack)


def _sized(_: Room, picture: Picture) -> Applies:
    """Say whether the file gives a picture's size."""
    return True if picture.width_m is not None or picture.height_m is not None else No("its size is that of its sheet")


@rule(
    "file.picture-and-sheet",
    level=Level.WARNING,
    basis=(ONCE, practice("two percent between the two may be rounding; a choice of this rule book")),
    each=PICTURE,
    when=_sized,
    window=at_most(2.0, "%"),
    says="its size in the file is {figure} off what its sheet allows; {window} wanted: one of the two is wrong",
    at="product",
    since="0.3.0",
)
def picture_and_sheet(room: Room, picture: Picture) -> Figure:
    """A picture has the size that its sheet gives it.

    Why: Angles and heights are judged by the size in the file, mass and holes by the sheet of what is bought.

    How decided: Width and height in the file against those of the sheet's diagonal and aspect. A display whose sheet
    gives none must fit its cabinet, and fill 0.85 of its width or of its height (a choice of this rule book). Neither
    a display nor a screen is narrower than its picture.

    Remedy: Correct the size, or name the sheet of what hangs there.

    When to waive: A screen that is masked to a smaller picture for good.
    """
    return room.figures.onscreen.off_sheet(picture)
