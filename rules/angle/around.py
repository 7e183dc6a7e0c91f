"""Around the listener: surrounds, sides and rears, and the ear layer as a whole."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from roomlint.review import (
    Cases,
    Level,
    Missing,
    No,
    Several,
    Subjects,
    Window,
    Windows,
    at_most,
    between,
    by_reference,
    computed,
    found,
    labelled,
    layered,
    practice,
    rule,
    standard,
)

from . import (
    BESIDE,
    BS775,
    BS2051,
    HOME_STUDY,
    OWN,
    SETTING_OUT_DEG,
    SIDES,
    as_laid_out,
    by_tables,
    in_its_layout,
    laid_out,
)

if TYPE_CHECKING:
    from collections.abc import Iterator

    from roomlint.design.listening import Loudspeaker
    from roomlint.review import Applies, Figure, Found, Room

SURROUND_HOME = between(90.0, 120.0, "deg", note=(100.0, 120.0), allowance=SETTING_OUT_DEG)
SURROUND_CRITICAL = between(100.0, 120.0, "deg", allowance=SETTING_OUT_DEG)
PLACES: Final = ("angle.surround-pair", "angle.side-pair", "angle.rear-pair")
EAR_LAYER = layered("M", name="ear-layer loudspeaker")
SEVEN: Final = 7
# Both loudspeakers beside a gap are set out.
FIVE_GAP = Windows(Window(None, 160.0, "deg", 2.0 * SETTING_OUT_DEG))
SEVEN_GAP = Windows(Window(None, 120.0, "deg", 2.0 * SETTING_OUT_DEG))
TEN_GAP = Windows(Window(None, 70.0, "deg", 2.0 * SETTING_OUT_DEG))
_SURROUNDING: Final = 4
_ARC_DEG: Final = range(60, 180)
_SIDED: Final = 3


def _speakers(room: Room) -> Iterator[Several[Loudspeaker] | Missing]:
    """Yield the ear layer as one, when it surrounds the listener; three fronts surround nobody."""
    found, unlabelled = _ear_layer(room)
    if len(found) >= _SURROUNDING and not unlabelled:
        yield Several(tuple(found))
    yield from unlabelled


def _ear_layer(room: Room) -> tuple[list[Loudspeaker], list[Missing]]:
    found: list[Loudspeaker] = []
    unlabelled: list[Missing] = []
    for speaker in EAR_LAYER.find(room):
        if isinstance(speaker, Missing):
            unlabelled.append(speaker)
        else:
            found.append(speaker)
    return found, unlabelled


def _many_surrounds(room: Room) -> Iterator[Several[Loudspeaker] | Missing]:
    """Yield the surround loudspeakers of each side that has three or more: two have one interval."""
    found, unlabelled = _ear_layer(room)
    for sign in "+-":
        side = [speaker for speaker in found if _of_the_arc(speaker.label or "", sign)]
        if len(side) >= _SIDED:
            yield Several(tuple(side))
    yield from unlabelled


def _of_the_arc(label: str, sign: str) -> bool:
    return label[1:2] == sign and label[2:].isdigit() and int(label[2:]) in _ARC_DEG


SURROUNDING: Subjects[Several[Loudspeaker]] = Subjects("ear layer all round the listener", _speakers, EAR_LAYER.of)
MANY_SURROUNDS: Subjects[Several[Loudspeaker]] = Subjects(
    "side with three surround loudspeakers", _many_surrounds, EAR_LAYER.of
)


@rule(
    "angle.surround-pair",
    level=Level.WARNING,
    basis=(BS775, practice("surrounds 90 to 110 degrees round"), HOME_STUDY),
    each=labelled("M+110", "M-110"),
    when=as_laid_out,
    window=by_reference(home=SURROUND_HOME, critical=SURROUND_CRITICAL),
    says="stands {figure}; a surround pair surrounds {window} round",
    after=(*SIDES, BESIDE),
    cure=("position",),
    at="position",
    since="0.1.0",
)
def surround_pair(room: Room, speaker: Loudspeaker) -> Figure:
    """The surround pair of five channels stands 100 to 120 degrees round; at home 90 is only noted.

    Why: Nearer the front it pulls images out of the stage; farther back the sides fall empty.

    How decided: Azimuth at the reference seat toward the label's own side. 100 to 120 passes everywhere. At home from
    90 on, which the trade is content with, a note; beyond 90 to 120 a warning. For critical listening 100 to 120 is
    the window. The wrong side is `layout.label-side`'s error. A declared departure is held against its claim instead,
    such as the 135 degrees that a study of home rooms allows.

    Remedy: Move the loudspeaker along the side wall into the range that the message gives.

    When to waive: Glass or a door where it belongs, with the reason recorded as a departure.
    """
    return room.figures.angles.outward(speaker, room.reference_seat)


@rule(
    "angle.side-pair",
    level=Level.WARNING,
    basis=BS2051,
    each=labelled("M+090", "M-090"),
    when=(as_laid_out, in_its_layout),
    window=computed(
        "deg", f"85 to 110 deg in 0+7+0, 4+7+0 and 4+9+0, 60 to 150 in 3+7+0, 88 to 92 in 9+10+3{OWN}", laid_out
    ),
    says="stands {figure}; {tables} wants it {window} round",
    after=(*SIDES, BESIDE),
    cure=("position",),
    at="position",
    since="0.1.0",
)
def side_pair(room: Room, speaker: Loudspeaker) -> Found:
    """Side loudspeakers stand beside the reference seat, where the layout puts M+090 and M-090.

    Why: In front of the ears they compete with the stage; far behind them the sides fall empty.

    How decided: Azimuth at the reference seat toward the label's own side against the layout's range: 85 to 110 degrees
    in 0+7+0, 4+7+0 and 4+9+0, 60 to 150 in 3+7+0, 90 in 9+10+3, where 2 degrees of tolerance are ours. In a layout of
    one's own the tables that have the label hold, those with as many in the ear layer before all others: beyond all of
    their ranges a warning, beyond what they share a note.

    Remedy: Move the loudspeaker along the side wall into the range that the message gives.

    When to waive: Glass or a door where it belongs, with the reason recorded as a departure.
    """
    return found(room.figures.angles.outward(speaker, room.reference_seat), tables=by_tables(room, speaker))


@rule(
    "angle.rear-pair",
    level=Level.WARNING,
    basis=BS2051,
    each=labelled("M+135", "M-135"),
    when=(as_laid_out, in_its_layout),
    window=computed(
        "deg", f"120 to 150 deg in 0+7+0, 4+7+0 and 4+9+0, 60 to 150 in 3+7+0, 110 to 135 in 9+10+3{OWN}", laid_out
    ),
    says="stands {figure}; {tables} wants it {window} round",
    after=(*SIDES, BESIDE),
    cure=("position",),
    at="position",
    since="0.1.0",
)
def rear_pair(room: Room, speaker: Loudspeaker) -> Found:
    """Rear loudspeakers stand behind the reference seat, where the layout puts M+135 and M-135.

    Why: Too far forward they merge with the sides; too near the middle the rear collapses to one place.

    How decided: Azimuth at the reference seat toward the label's own side against the layout's range: 120 to 150
    degrees in 0+7+0, 4+7+0 and 4+9+0, 60 to 150 in 3+7+0, 110 to 135 in 9+10+3. In a layout of one's own the tables
    that have the label hold, those with as many in the ear layer before all others: beyond all of their ranges a
    warning, beyond what they share a note.

    Remedy: Move the loudspeaker along its wall into the range that the message gives.

    When to waive: A seat against the rear wall that leaves no place behind it.
    """
    return found(room.figures.angles.outward(speaker, room.reference_seat), tables=by_tables(room, speaker))


def gap_windows(room: Room, speakers: Several[Loudspeaker]) -> Windows:
    """Return the widest gap that the layouts' own ranges leave in a layer, by how many loudspeakers it has."""
    if room.design.layout == "9+10+3":
        return TEN_GAP
    return SEVEN_GAP if len(speakers.members) >= SEVEN else FIVE_GAP


GAPS: Cases[Several[Loudspeaker]] = Cases(
    "deg",
    (
        ("fewer than seven in the layer", FIVE_GAP),
        ("seven or more in the layer", SEVEN_GAP),
        ("in 9+10+3", TEN_GAP),
    ),
    gap_windows,
)


@rule(
    "angle.largest-gap",
    level=Level.NOTE,
    basis=(BS775, BS2051, practice("no gap wider than the layout's own ranges leave")),
    each=SURROUNDING,
    window=GAPS,
    says="leave a gap of {figure}; {window} wanted",
    after=(*SIDES, BESIDE, "angle.front-pair", *PLACES),
    cure=("position",),
    at="position",
    since="0.1.0",
)
def largest_gap(room: Room, speakers: Several[Loudspeaker]) -> Figure:
    """No gap between neighbouring ear-layer loudspeakers is wider than the layout's own ranges leave.

    Why: Sound that should pass through a wide gap jumps across it.

    How decided: Azimuths at the reference seat, sorted round the circle. With fewer than seven loudspeakers the
    standard allows 160 degrees at the rear, between surrounds at 100; with seven or more 120, between rears at 120;
    in 9+10+3 70, between a rear at 110 and the one straight behind. A loudspeaker out of its own range is told by its
    own rule first.

    Remedy: Move the loudspeakers beside the gap toward it, or add a pair.

    When to waive: A seat against the rear wall that leaves no place behind it.
    """
    return room.figures.angles.largest_gap(speakers.members, room.reference_seat)


def spaced_freely(room: Room, speakers: Several[Loudspeaker]) -> Applies:
    """Say whether the surrounds are spread over the arc freely, or each has its own place in a named layout."""
    arrangement = room.figures.arrangement
    if room.design.layout is None or arrangement.is_own:
        return True
    if not all(arrangement.position(speaker) for speaker in speakers.members):
        return True
    return No(f"layout {room.design.layout} gives each its own place")


@rule(
    "angle.even-spacing",
    level=Level.NOTE,
    basis=(
        standard("ITU-R BS.775-3", "figure 1, note 4", read=True),
        practice("15 degrees of spread, a choice of this rule book"),
    ),
    each=MANY_SURROUNDS,
    when=spaced_freely,
    window=at_most(15.0, "deg"),
    says="stand at intervals that differ by {figure}; {window} wanted",
    after=(*SIDES, BESIDE, *PLACES),
    cure=("position",),
    at="position",
    since="0.1.0",
)
def even_spacing(room: Room, speakers: Several[Loudspeaker]) -> Figure:
    """Three or more surround loudspeakers of one side stand at even intervals.

    Why: Uneven intervals make sound that circles the listener speed up and slow down.

    How decided: Azimuths at the reference seat of the ear-layer loudspeakers of one side beyond 60 degrees; the widest
    interval minus the narrowest. The standard asks for equal intervals; 15 degrees of spread are our
    choice. A layout that gives each of them its own place is judged by that.

    Remedy: Spread the loudspeakers over the arc from 60 to 150 degrees.

    When to waive: Openings that fix two of them, with the reason recorded as a departure.
    """
    return room.figures.angles.uneven_spacing(speakers.members, room.reference_seat)
