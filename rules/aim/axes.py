"""Axes: coverage of the seats, tilt, mirror images, reach of the mounts, lobes of driver pairs."""

from __future__ import annotations

from typing import TYPE_CHECKING

from roomlint.review import (
    LOUDSPEAKERS,
    Level,
    No,
    Window,
    Windows,
    at_each_seat,
    at_most,
    by_reference,
    computed,
    found,
    labelled,
    memory,
    practice,
    rule,
    standard,
)

from ..layout import PLACED
from . import NOMINAL, PAIRS, on_a_surface

if TYPE_CHECKING:
    from roomlint.design.listening import Loudspeaker, Seat
    from roomlint.review import Answer, Applies, Figure, Pair, Room, Seen


def _half_coverage(room: Room, speaker: Loudspeaker) -> Windows:
    return Windows(Window(None, room.figures.aim.half_coverage_deg(speaker), "deg"))


def _half_height(room: Room, speaker: Loudspeaker) -> Windows:
    return Windows(Window(None, room.figures.aim.half_height_deg(speaker), "deg"))


@rule(
    "aim.coverage",
    level=Level.WARNING,
    basis=NOMINAL,
    each=LOUDSPEAKERS,
    window=computed("deg", "at most half the nominal coverage on the product's sheet", _half_coverage),
    says={"fail": "{seat} sits {figure} off its axis and more than 6 dB down; its coverage ends at {limit}"},
    cure=("aim.azimuth",),
    at="aim",
    since="0.1.0",
)
def coverage(room: Room, speaker: Loudspeaker) -> Answer:
    """Every seat is inside a loudspeaker's horizontal coverage.

    Why: Beyond the coverage the treble is more than 6 dB down and falls apart into lobes; no setting brings it back.

    How decided: The angle to the side of the loudspeaker's axis, seen in its own frame, of the seat farthest off,
    against half the nominal coverage. The axis is the aim of the file; without one it is square out of the wall, slope
    or ceiling that the loudspeaker is mounted on, with the baffle's angle. An axis that falls or rises by more than 45
    degrees is judged by the whole angle off axis, as a cone. How much is lost beyond the coverage no nominal figure
    tells: more than 6 dB.

    Remedy: Turn it towards the middle of the seats, move it back, or choose a product that covers more. A loudspeaker
    in the ceiling wants a driver that can be aimed when the seats are far out.

    When to waive: The seat outside is hardly used.
    """
    view = room.figures.aim
    return found(view.widest(speaker), seat=view.farthest_off(speaker).words)


def _has_two_planes(room: Room, speaker: Loudspeaker) -> Applies:
    cone = room.figures.aim.is_cone(speaker)
    return No("it points more down than out, and its cone is judged as a whole") if cone else True


@rule(
    "aim.coverage-height",
    level=Level.NOTE,
    basis=NOMINAL,
    each=LOUDSPEAKERS,
    when=_has_two_planes,
    window=computed("deg", "at most half the nominal vertical coverage on the product's sheet", _half_height),
    says="a seat lies {figure} above or below its axis; its coverage ends at {limit}",
    cure=("aim.elevation",),
    at="aim",
    since="0.1.0",
)
def coverage_height(room: Room, speaker: Loudspeaker) -> Figure:
    """Every seat is inside a loudspeaker's vertical coverage.

    Why: Above or below its coverage a loudspeaker with drivers one over the other cancels around its crossover.

    How decided: The angle above or below the axis, in the loudspeaker's own frame, of the seat farthest off, against
    half the nominal vertical coverage. A loudspeaker that points more down than out has one cone, which
    `aim.coverage` judges.

    Remedy: Tilt it towards the ears, or bring it nearer to their height.

    When to waive: Listening from that seat showed no loss.
    """
    return room.figures.aim.tallest(speaker)


@rule(
    "aim.tilt",
    level=Level.NOTE,
    basis=memory("within 10 degrees of the ear; the practice of setting up three alike behind or beside a screen"),
    each=labelled("M+000", "M+030", "M-030"),
    window=by_reference(home=at_most(10.0, "deg"), critical=at_most(5.0, "deg")),
    says="the reference ear is {figure} above or below its axis; {window} wanted",
    cure=("aim.elevation",),
    at="aim",
    since="0.1.0",
)
def tilt(room: Room, speaker: Loudspeaker) -> Figure:
    """The front three point at the reference ear in height.

    Why: The crossover between drivers one over the other is in step on one axis only, and voices come from there.

    How decided: The angle of the reference ear above or below the axis of the left, centre and right loudspeaker:
    within 10 degrees, with project.reference critical within 5.

    Remedy: Tilt the cabinet by the figure, or aim it at the reference seat in the file.

    When to waive: The maker states another design axis.
    """
    return room.figures.aim.upright(speaker, room.reference_seat)


@rule(
    "aim.pair",
    level=Level.NOTE,
    basis=(
        standard("ITU-R BS.2051", "symmetry of left and right", read=False),
        memory("five degrees between the two axes"),
    ),
    each=PAIRS,
    window=by_reference(home=at_most(5.0, "deg"), critical=at_most(2.0, "deg")),
    says="their aims differ by {figure}; {window} wanted",
    cure=("aim.azimuth",),
    at="aim",
    since="0.1.0",
)
def mirror_aim(room: Room, pair: Pair[Loudspeaker]) -> Figure:
    """A left and a right loudspeaker look at the reference seat as mirror images.

    Why: Two cabinets turned differently differ in treble at the seat, and the image leans to the brighter one.

    How decided: The directions of the reference seat in the two loudspeakers' own frames, one of them mirrored: the
    angle between them is within 5 degrees, with project.reference critical within 2. One turned 20 degrees outside of
    the seat and one 20 degrees inside are 40 degrees apart.

    Remedy: Turn the one that looks farther past the seat by the difference.

    When to waive: The room forces the pair apart and the difference was equalised by measurement.
    """
    return room.figures.aim.pair_difference(pair, room.reference_seat)


@rule(
    "aim.mount-reach",
    level=Level.WARNING,
    basis=practice("an aim on paper must be one that the bracket, the slope and the baffle allow"),
    each=LOUDSPEAKERS,
    when=on_a_surface,
    window=at_most(10.0, "deg", note=5.0),
    says="the aim asks {swivel} of swivel and {tilt} of tilt: {figure} more than its mount gives; {window} wanted",
    after=PLACED,
    at="aim",
    since="0.1.0",
)
def mount_reach(room: Room, speaker: Loudspeaker) -> Answer:
    """A mounted loudspeaker can be turned to where the file says it points.

    Why: The installer cannot turn a bracket past its stop or a ceiling loudspeaker that has no joint; the seat then
    hears it off axis.

    How decided: From the plane of the wall, slope or ceiling at the loudspeaker, its mount's swivel and tilt and its
    baffle's angle, the aim nearest to the one asked for; the angle left between the two. More than 5 degrees is a note,
    more than 10 a warning. A loudspeaker made to go into the surface without a mount has no joints.

    Remedy: Choose a mount that turns far enough, a baffle of the angle named, or move the loudspeaker.

    When to waive: The maker allows a wedge or an angled frame behind the cabinet, and it is ordered.
    """
    view = room.figures.aim
    beyond = view.beyond_mount(speaker)
    swivel, tilt_asked = view.asked(speaker)
    return found(beyond, swivel=swivel, tilt=tilt_asked)


@rule(
    "aim.centre-interference",
    level=Level.WARNING,
    basis=(
        practice("drivers that play one band cancel where their ways differ by half a wave, by textbook acoustics"),
        practice("6 dB over a third of an octave, a note from 3 dB; choices of this rule book"),
    ),
    each=at_each_seat(labelled("M+000")),
    window=at_most(6.0, "dB", note=3.0),
    says="its drivers cancel {figure} of the speech band there, at {frequency}; {window} wanted",
    cure=("position",),
    at="position",
    since="0.3.0",
)
def centre_interference(room: Room, heard: Seen[Loudspeaker, Seat]) -> Answer:
    """No seat sits where a centre's drivers cancel each other in the speech band.

    Why: Two woofers side by side cancel to the side of their axis around their crossover, where speech lives, and the
    seats beside the middle lose words.

    How decided: The sum of all drivers in the direction of the seat against that on the axis, by their places on the
    front and the crossovers between which each plays, over thirds of an octave from 300 Hz to 4 kHz: the deepest dip.
    A sheet that gives only a spacing and a crossover stands for two alike and one between them; one that speaks of no
    drivers leaves it open, for most centres have several, and one alone is listed as such. Of two that end at
    different crossovers, as in a two-and-a-half-way centre, the higher one alone reaches the notes at which both would
    cancel. Drivers are taken to be in step on the axis. This took over `aim.centre-lobe`, which knew the angle of the
    first null alone.

    Remedy: A centre with its drivers one over the other, one of whose two woofers stops early, or a lower crossover;
    or seats nearer to its axis.

    When to waive: The maker's measurement at that angle shows no dip.
    """
    view = room.figures.aim
    frequency = view.dip_frequency(heard.source, heard.seat)
    return found(view.driver_dip(heard.source, heard.seat), frequency=frequency)
