"""The sides and the places: whether a loudspeaker is where its label, or its declared departure, says."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from roomlint.review import (
    PAIRS,
    Level,
    Missing,
    No,
    Subjects,
    Window,
    Windows,
    at_most,
    computed,
    fails,
    found,
    need,
    practice,
    rule,
    tells,
)

from . import BS2051, HOME_STUDY, LABELS, SETTING_OUT_DEG

if TYPE_CHECKING:
    from collections.abc import Iterator

    from roomlint.design.listening import Loudspeaker
    from roomlint.review import Applies, Figure, Found, Pair, Room, Says

NONE: Final = "none"


def _sided(room: Room) -> Iterator[Loudspeaker | Missing]:
    for speaker in room.design.loudspeakers:
        if speaker.label is None:
            yield Missing(speaker, "label")
        elif room.figures.arrangement.side(speaker):
            yield speaker


SIDED: Subjects[Loudspeaker] = Subjects("loudspeaker of the left or the right", _sided, ("loudspeakers",))
DEPARTING: Subjects[Loudspeaker] = Subjects(
    "loudspeaker that departs from its place on purpose",
    lambda room: (speaker for speaker in room.design.loudspeakers if speaker.departure is not None),
    ("loudspeakers",),
)


@rule(
    "layout.sides-swapped",
    level=Level.ERROR,
    basis=LABELS,
    each=PAIRS,
    window=at_most(0.0, "deg"),
    says="stand {figure} on each other's sides: exchange labels",
    at="label",
    since="0.2.0",
)
def sides_swapped(room: Room, pair: Pair[Loudspeaker]) -> Figure:
    """The labels of a left and a right are not exchanged.

    Why: With the two labels exchanged the stage is mirrored against the picture, and every angle of both reads wrong.

    How decided: The angle from the upright plane that the reference seat looks along, away from the side that the
    label names, of whichever of the two is nearer to that plane. Where both are past it, their labels are exchanged;
    where one is, `layout.label-side` says so. The rules of angles wait for it.

    Remedy: Exchange the two labels, not the loudspeakers; left and right are as seen facing the front.

    When to waive: Never; one of the two is wrong.
    """
    return room.figures.angles.both_past_middle(pair, room.reference_seat)


@rule(
    "layout.label-side",
    level=Level.ERROR,
    basis=LABELS,
    each=SIDED,
    window=at_most(0.0, "deg"),
    says="stands {figure} past the middle; its label {label} means {side}: change the sign, or the side",
    after=("layout.one-label-each", "layout.sides-swapped", "layout.inside-room"),
    at="label",
    since="0.1.0",
)
def label_side(room: Room, speaker: Loudspeaker) -> Found:
    """A loudspeaker stands on the side that its label names: + is left, - is right.

    Why: Swapped sides mirror the stage against the picture, and habits differ about which sign is left.

    How decided: The angle from the upright plane that the reference seat looks along, away from the side that the label
    names; overhead and straight behind it passes through nothing smoothly.

    Remedy: Change the sign in the label, or the side in the position; left and right are as seen facing the front.

    When to waive: Never; one of the two is wrong.
    """
    figure = room.figures.angles.past_middle(speaker, room.reference_seat)
    return found(figure, label=need(speaker.label, speaker, "label"), side=room.figures.arrangement.side(speaker))


def claimed(room: Room, speaker: Loudspeaker) -> Windows:
    """Return the window that a departure claims to meet."""
    departure = need(speaker.departure, speaker, "departure")
    meets = need(departure.meets, departure, "meets")
    allowed = room.figures.arrangement.claimed_range(speaker, meets)
    if allowed is None:
        raise Missing(departure, "meets")
    return Windows(Window(*allowed, "deg", SETTING_OUT_DEG))


@rule(
    "layout.departure",
    level=Level.WARNING,
    basis=(
        HOME_STUDY,
        practice("a departure is declared with its reason and with the window that it still meets"),
    ),
    each=DEPARTING,
    window=computed(
        "deg",
        "home-tolerance: 100 to 135 deg for M+110 (the listening study), 60 to 100 for M+090 and 135 to 150 for M+135"
        " (a home layout guide, second-hand); common-practice: 22 to 30 for M+030, 90 to 110 for M+110 and M+090,"
        " 135 to 150 for M+135; right ones mirrored",
        claimed,
    ),
    says={
        "fail": "departs to {figure}; {claim} wants it {window} round",
        "unpublished": "claims {claim}, of which nothing is published for {label}; claim none",
        "none": "stands {azimuth}, outside every window on purpose",
    },
    after=("layout.sides-swapped", "layout.label-side"),
    cure=("position",),
    at="departure",
    since="0.1.0",
)
def departure(room: Room, speaker: Loudspeaker) -> Found | Says:
    """A declared departure meets the window that it says it meets.

    Why: Who reads the plan later must see whether a departure is a small tolerance or another place altogether.

    How decided: Azimuth at the reference seat toward the label's side against the range that the departure claims. One
    that claims a window is judged here instead of by the rules of angles for its place; one that claims none is told
    and judged there.

    Remedy: Claim the window that it meets, or none, or move the loudspeaker.

    When to waive: Never; correct the declaration.
    """
    declared = need(speaker.departure, speaker, "departure")
    claim = need(declared.meets, declared, "meets")
    figure = room.figures.angles.outward(speaker, room.reference_seat)
    if claim == NONE:
        return tells("none", azimuth=figure)
    label = need(speaker.label, speaker, "label")
    if room.figures.arrangement.claimed_range(speaker, claim) is None:
        return fails("unpublished", claim=claim, label=label)
    return found(figure, claim=claim)


def with_a_range(room: Room, speaker: Loudspeaker) -> Applies:
    """Say whether the layout has the loudspeaker's label."""
    if room.figures.arrangement.azimuth_range(speaker) is None:
        if room.figures.arrangement.is_own:
            return No(f"no table of ITU-R BS.2051 has {speaker.label}")
        return No(f"layout {room.design.layout} has no {speaker.label}")
    return True


@rule(
    "layout.departure-needed",
    level=Level.NOTE,
    basis=(BS2051, practice("a plan says only what is so")),
    each=DEPARTING,
    when=with_a_range,
    window=at_most(0.0, "deg"),
    says="stands {figure} inside its layout's own range; the departure can go",
    after=("layout.sides-swapped", "layout.label-side"),
    at="departure",
    since="0.2.0",
)
def departure_needed(room: Room, speaker: Loudspeaker) -> Figure:
    """A declared departure is one: the loudspeaker stands outside its layout's range of azimuth.

    Why: A departure that is none makes the next reader look for a problem that is not there.

    How decided: How far inside the layout's azimuth range for its label it stands at the reference seat; outside is
    negative and passes.

    Remedy: Take the departure out of the file.

    When to waive: A departure in height alone, which the reason says.
    """
    figure = room.figures.arrangement.inside_layout(speaker, room.reference_seat)
    return need(figure, room.design, "layout")
