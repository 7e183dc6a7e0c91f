"""What a run does to its signal: loss and damping of loudspeaker cable, length of links, heat of bundles, bends."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from roomlint.review import (
    Level,
    Missing,
    No,
    at_least,
    at_most,
    computed,
    found,
    need,
    practice,
    rule,
    standard,
)

from . import CABLES, CAUTION, nfpa, of_loudspeaker

if TYPE_CHECKING:
    from roomlint.design.supply import Cable
    from roomlint.review import Applies, Figure, Found, Room, Windows

LINKS: Final = frozenset({"network", "usb", "video"})
BENT: Final = LINKS | {"antenna"}


@rule(
    "cable.wire-loss",
    level=Level.WARNING,
    basis=practice("half a decibel at most in the cable; tables of lengths say 5 % of the load, 0.42 dB"),
    each=CABLES,
    when=of_loudspeaker,
    window=at_most(0.5, "dB"),
    says="loses {figure} on the way to {loudspeaker}; {window} wanted",
    at="conductor",
    since="0.3.0",
)
def wire_loss(room: Room, cable: Cable) -> Found:
    """A loudspeaker's cable costs half a decibel at most.

    Why: Level that stays in the wall, and a response that follows the loudspeaker's impedance.

    How decided: 20 lg((Z + R) / Z), R the resistance there and back of copper at 20 degC, Z the least impedance of the
    loudspeaker, 80 % of the rated one where its sheet does not say. Two cores side by side count as one of both areas.

    Remedy: Three gauges thicker halve the resistance; or move the amplifier.

    When to waive: A loudspeaker for the paging of the house.
    """
    source = room.figures.cabling.fed_by(cable)
    if source is None:
        raise Missing(cable, "to")
    return found(room.figures.cabling.loss(cable, source), loudspeaker=source.words)


@rule(
    "cable.damping",
    level=Level.NOTE,
    basis=practice("a damping factor of 20 at the loudspeaker is well in hand"),
    each=CABLES,
    when=of_loudspeaker,
    window=at_least(20.0, ""),
    says="leaves a damping factor of {figure} at the loudspeaker; {window} wanted",
    after=("cable.wire-loss",),
    at="conductor",
    since="0.3.0",
)
def damping(room: Room, cable: Cable) -> Figure:
    """Amplifier and cable together leave a damping factor of 20 at the loudspeaker.

    Why: Below it the loudspeaker's own resonance begins to show in the bass.

    How decided: Least impedance of the loudspeaker over the resistance of cable and amplifier, the amplifier's as 8 ohm
    over the factor on its sheet.

    Remedy: A thicker cable, or the amplifier nearer to the loudspeaker.

    When to waive: A loudspeaker that is crossed over above the bass.
    """
    source = room.figures.cabling.fed_by(cable)
    if source is None:
        raise Missing(cable, "to")
    return room.figures.cabling.damping(cable, source)


def _between_places(room: Room, cable: Cable) -> Applies:
    if room.figures.cabling.ends(cable) is None:
        return No("it starts or ends at something that has no place in the room")
    return True


@rule(
    "cable.reaches",
    level=Level.WARNING,
    basis=practice("a cable is no shorter than the straight way; what it goes around comes on top"),
    each=CABLES,
    when=_between_places,
    window=at_least(0.0, "m"),
    says={
        "fail": "is {figure} longer than the straight way between its ends; {window} wanted",
        "negative": "is {size} too short for the straight way of {way} between its ends",
    },
    at="length",
    cure=("length",),
    since="0.3.0",
)
def reaches(room: Room, cable: Cable) -> Found:
    """A cable is at least as long as the straight way between its ends.

    Why: Loss, damping and the order at the wholesaler rest on a length that somebody guessed.

    How decided: Length one way, less the distance from where it starts to where it ends: a loudspeaker's, projector's
    or picture's own place, the foot of the rack that an amplifier or the processor stands in.

    Remedy: Measure the way along walls and framing, and add what both ends need.

    When to waive: What it starts at stands nearer than the drawing says, which then wants correcting.
    """
    ends = room.figures.cabling.ends(cable)
    if ends is None:
        raise Missing(cable, "to")
    figure = room.figures.cabling.beyond_straight(cable, *ends)
    return found(figure, way=room.figures.cabling.straight(*ends))


def _passive_link(_: Room, cable: Cable) -> Applies:
    if need(cable.carries, cable, "carries") not in LINKS:
        return No("no length is known that such a cable must not pass")
    return No("it has electronics or is optical: its maker says how far it goes") if _is_active(cable) else True


def _is_active(cable: Cable) -> bool:
    """Whether a cable has electronics; the network's rows hold for plain pairs and are not asked for it."""
    return bool(cable.active) if cable.carries == "network" else need(cable.active, cable, "active")


def link_window(room: Room, cable: Cable) -> Windows:
    """Return how far a link goes by its kind and rate."""
    careful, best = room.figures.cabling.link_m(cable)
    return at_most(best, "m", note=careful)


@rule(
    "cable.link-length",
    level=Level.WARNING,
    basis=(
        standard("TIA-568", "channel and permanent link", read=False, note="90 m and 100 m"),
        standard("USB 2.0", "cable delay", read=False, note="5 m; 3 m at faster rates is the trade's"),
        practice("makers' tables of passive video cable; the interface itself gives no length"),
    ),
    each=CABLES,
    when=_passive_link,
    window=computed(
        "m",
        "network 100 m, a note from 90 m; usb 5 m, 3 m above 0.48 Gb/s; video to 10.2 Gb/s 10 m, a note from 5 m, to"
        " 48 Gb/s 5 m, a note from 3 m",
        link_window,
    ),
    says="is {figure} long; {window} wanted for what it carries",
    at="length",
    cure=("length",),
    since="0.3.0",
)
def link_length(room: Room, cable: Cable) -> Figure:
    """A passive link is no longer than its kind carries at its rate.

    Why: It plays on the bench and drops out with the first bright scene, when the ceiling is closed.

    How decided: One-way length by what it carries and at which rate. A cable with electronics, or an optical one, goes
    as far as its maker says.

    Remedy: An active or optical cable, an extender, or a raceway to replace it through.

    When to waive: The very cable was tried at its rate, after it was pulled.
    """
    return room.figures.cabling.length(cable)


def _powered(_: Room, cable: Cable) -> Applies:
    if need(cable.carries, cable, "carries") != "network":
        return No("it is no network cable")
    return No("no power runs over its pairs") if need(cable.powered, cable, "powered") == "none" else True


@rule(
    "cable.bundle-heat",
    level=Level.WARNING,
    basis=(
        nfpa("Table 725.144 of 2017; 2026 articles 720 to 725"),
        practice("the same under other codes: a bundle warms as it does"),
    ),
    each=CABLES,
    when=_powered,
    window=at_most(100.0, "%"),
    says="its conductors carry {figure} of what its bundle allows; {window} wanted",
    at="bundle",
    caution=CAUTION,
    since="0.3.0",
)
def bundle_heat(room: Room, cable: Cable) -> Figure:
    """Network cables that carry power do not warm each other beyond what they are made for.

    Why: In the middle of a bundle in a warm attic nothing carries the heat away, and the insulation ages.

    How decided: Half the current of a pair by the type of IEEE 802.3 over what the table allows for the gauge and the
    bundle, cable for 60 degC, times sqrt((60 - T) / 30) above 30 degC. Later editions allow a little more.

    Remedy: Smaller bundles, a thicker gauge, or a run through cooler air.

    When to waive: The cable is marked for the current, and its marking is on record.
    """
    return room.figures.cabling.bundle_use(cable, need(cable.powered, cable, "powered"))


def _bends(_: Room, cable: Cable) -> Applies:
    carries = need(cable.carries, cable, "carries")
    return True if carries in BENT else No("a bend does nothing to such a cable that is heard")


@rule(
    "cable.bend",
    level=Level.NOTE,
    basis=standard("TIA-568.0-D", "bend radius of unshielded pairs", read=False, note="for other cables as practice"),
    each=CABLES,
    when=_bends,
    window=at_least(4.0, ""),
    says="is bent to {figure} times its diameter; {window} wanted",
    at="bend_radius",
    cure=("bend_radius",),
    since="0.3.0",
)
def bend(room: Room, cable: Cable) -> Figure:
    """A fast cable is bent no closer than four times its diameter.

    Why: A tight bend moves the pairs apart, and what was a clean link echoes.

    How decided: Smallest bend radius over the outer diameter; the standard's figure for unshielded network pairs, taken
    for video, usb and antenna cable too. While pulling twice as much is wanted.

    Remedy: A wider corner, or a box to turn in.

    When to waive: The cable's maker allows a closer bend.
    """
    return room.figures.cabling.bend(cable)
