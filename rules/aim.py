"""Chapter aim: where loudspeakers point, whom they cover, and whether their mounts reach that far."""

from __future__ import annotations

from typing import TYPE_CHECKING

from roomlint.review import (
    Against,
    Group,
    Level,
    Window,
    does_not_apply,
    heard_at,
    memory,
    practice,
    rule,
    standard,
)

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from roomlint.design.listening import Loudspeaker
    from roomlint.review import Figure, Room, Says

SCREEN_LABELS = frozenset({"M+000", "M+030", "M-030"})
POINTED = ("loudspeakers[].position", "loudspeakers[].aim", "loudspeakers[].mounting.on", "seats[].ear")


def _speakers(room: Room) -> Iterable[Loudspeaker]:
    return room.design.loudspeakers


def _told_where(room: Room) -> Iterator[Loudspeaker]:
    """Yield what stands on a wall or ceiling and is told where to point."""
    shell = room.design.shell
    for speaker in room.design.loudspeakers:
        held = speaker.mounting.on if speaker.mounting is not None else None
        if speaker.aim is not None and (held in shell.wall_names or held in {"ceiling", "grid-ceiling"}):
            yield speaker


def _screen_at_reference(room: Room) -> Iterator[Group]:
    for speaker in room.design.loudspeakers:
        if speaker.label in SCREEN_LABELS:
            yield heard_at(speaker, room.reference_seat)


def _pairs(room: Room) -> Iterator[Group]:
    """Yield each loudspeaker of the left with its mirror label of the right."""
    by_label = {speaker.label: speaker for speaker in room.design.loudspeakers if speaker.label is not None}
    for label, speaker in by_label.items():
        other = by_label.get(label.replace("+", "-"))
        if "+" in label and other is not None:
            yield Group((speaker, other))


def _driver_pairs(room: Room) -> Iterator[Loudspeaker]:
    """Yield centre loudspeakers, unless their sheet is there and speaks of no second driver."""
    for speaker in room.design.loudspeakers:
        data = speaker.product.loudspeaker if speaker.product is not None else None
        if speaker.label == "M+000" and (data is None or data.driver_spacing_m is not None):
            yield speaker


@rule(
    "aim.coverage",
    level=Level.WARNING,
    basis=practice("nominal coverage is the full angle between the two directions 6 dB down"),
    each=_speakers,
    reads=(*POINTED, "product loudspeaker.horizontal_coverage"),
    since="0.1.0",
    at="aim",
)
def coverage(room: Room, speaker: Loudspeaker) -> Against:
    """Every seat is inside a loudspeaker's horizontal coverage.

    Why: Beyond the coverage the treble is more than 6 dB down and falls apart into lobes; no setting brings it back.

    How decided: The angle to the side of the loudspeaker's axis, seen in its own frame, of the seat farthest off,
    against half the nominal coverage. The axis is the aim of the file; without one it is square out of the wall, slope
    or ceiling that the loudspeaker is mounted on, with the baffle's angle. An axis that falls or rises by more than 45
    degrees is judged by the whole angle off axis, as a cone.

    Remedy: Turn it towards the middle of the seats, move it back, or choose a product that covers more. A loudspeaker
    in the ceiling wants a driver that can be aimed when the seats are far out.

    When to waive: The seat outside is hardly used.
    """
    view = room.figures.aim
    half = view.half_coverage(speaker)
    return Against(
        view.widest(speaker),
        Window(None, half, "deg"),
        says=f"{view.loss_words(speaker)} {view.covering_words(speaker)}",
    )


@rule(
    "aim.coverage-height",
    level=Level.NOTE,
    basis=practice("nominal coverage is the full angle between the two directions 6 dB down"),
    each=_speakers,
    reads=(*POINTED, "product loudspeaker.vertical_coverage"),
    since="0.1.0",
    at="aim",
)
def coverage_height(room: Room, speaker: Loudspeaker) -> Against | Says:
    """Every seat is inside a loudspeaker's vertical coverage.

    Why: Above or below its coverage a loudspeaker with drivers one over the other cancels around its crossover.

    How decided: The angle above or below the axis, in the loudspeaker's own frame, of the seat farthest off, against
    half the nominal vertical coverage. A loudspeaker that points more down than out has one cone, which
    `aim.coverage` judges.

    Remedy: Tilt it towards the ears, or bring it nearer to their height.

    When to waive: Listening from that seat showed no loss.
    """
    view = room.figures.aim
    if view.is_cone(speaker):
        return does_not_apply("it points more down than out; its cone is judged by aim.coverage.")
    return Against(view.tallest(speaker), Window(None, view.half_height(speaker), "deg"))


@rule(
    "aim.tilt",
    level=Level.NOTE,
    basis=memory("within 10 degrees of the ear; the practice of setting up three alike behind or beside a screen"),
    each=_screen_at_reference,
    reads=POINTED,
    since="0.1.0",
    window=Window(None, 10.0, "deg"),
    critical=Window(None, 5.0, "deg"),
    at="aim",
)
def tilt(room: Room, pair: Group) -> Figure:
    """The front three point at the reference ear in height.

    Why: The crossover between drivers one over the other is in step on one axis only, and voices come from there.

    How decided: The angle of the reference ear above or below the axis of the left, centre and right loudspeaker:
    within 10 degrees, with project.reference critical within 5.

    Remedy: Tilt the cabinet by the figure, or aim it at the reference seat in the file.

    When to waive: The maker states another design axis.
    """
    speaker, seat = pair.elements
    return room.figures.aim.upright(speaker, seat)  # type: ignore[arg-type]


@rule(
    "aim.pair",
    level=Level.NOTE,
    basis=(
        standard("ITU-R BS.2051", "symmetry of left and right", read=False),
        memory("five degrees between the two axes"),
    ),
    each=_pairs,
    reads=POINTED,
    since="0.1.0",
    window=Window(None, 5.0, "deg"),
    critical=Window(None, 2.0, "deg"),
    at="aim",
)
def mirror_aim(room: Room, pair: Group) -> Figure:
    """A left and a right loudspeaker look at the reference seat under the same angle.

    Why: Two cabinets turned differently differ in treble at the seat, and the image leans to the brighter one.

    How decided: The difference between the angles off axis at the reference seat: within 5 degrees, with
    project.reference critical within 2.

    Remedy: Turn the farther one in by the difference.

    When to waive: The room forces the pair apart and the difference was equalised by measurement.
    """
    left, right = pair.elements
    return room.figures.aim.pair_difference(left, right, room.reference_seat)  # type: ignore[arg-type]


@rule(
    "aim.mount-reach",
    level=Level.WARNING,
    basis=practice("an aim on paper must be one that the bracket, the slope and the baffle allow"),
    each=_told_where,
    reads=(*POINTED, "loudspeakers[].mounting.product", "product mount.swivel", "product mount.tilt"),
    since="0.1.0",
    window=Window(None, 10.0, "deg"),
    target=Window(None, 5.0, "deg"),
    at="aim",
)
def mount_reach(room: Room, speaker: Loudspeaker) -> Against:
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
    return Against(view.beyond_mount(speaker), says=view.asked_words(speaker))


@rule(
    "aim.centre-lobe",
    level=Level.WARNING,
    basis=practice("two equal sources in step cancel at asin(c / 2fs), by textbook acoustics"),
    each=_driver_pairs,
    reads=(*POINTED, "product loudspeaker.driver_spacing", "product loudspeaker.crossover"),
    since="0.1.0",
    at="position",
)
def centre_lobe(room: Room, speaker: Loudspeaker) -> Against:
    """No seat sits in the lobe null of a centre loudspeaker with two drivers side by side.

    Why: Two woofers beside each other cancel to the side of the axis around their crossover, where speech lives.

    How decided: The angle to the side of the axis of the seat farthest off, against the first null of two equal sources
    at the crossover frequency; from 3 dB down on it is a note.

    Remedy: A centre with its drivers one over the other, a lower crossover, or seats nearer to the axis.

    When to waive: The maker's measurement at that angle shows no dip.
    """
    view = room.figures.aim
    half_power, null = view.lobe_angle(speaker)
    return Against(
        view.widest(speaker),
        Window(None, null, "deg"),
        says=f"At its crossover the pair is 3 dB down {half_power:.1f} deg off and silent {null:.1f} deg off.",
        target=Window(None, half_power, "deg"),
    )
