"""The front: left and right against straight ahead, against each other and against the picture."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from roomlint.review import Cases, Level, Windows, between, labelled, rule, standard

from . import BS775, BS2051, FRONT_PAIR, SETTING_OUT_DEG, TRADE_FRONT

if TYPE_CHECKING:
    from roomlint.design.listening import Loudspeaker
    from roomlint.review import Figure, Pair, Room

WIDE_LAYOUTS: Final = frozenset({"4+9+0", "0+7+0", "4+7+0"})
HOME = between(22.0, 32.0, "deg", allowance=SETTING_OUT_DEG)
WIDE = between(22.0, 45.0, "deg", allowance=SETTING_OUT_DEG)
CRITICAL = between(28.0, 32.0, "deg", allowance=SETTING_OUT_DEG)
CRITICAL_WIDE = between(30.0, 45.0, "deg", allowance=SETTING_OUT_DEG)


def front_windows(room: Room, _: Loudspeaker) -> Windows:
    """Return the window of the front pair: the layout's own where it allows more, and nearer for critical listening."""
    wide = room.design.layout in WIDE_LAYOUTS
    if room.critical:
        return CRITICAL_WIDE if wide else CRITICAL
    return WIDE if wide else HOME


@rule(
    "angle.front-pair",
    level=Level.WARNING,
    basis=(TRADE_FRONT, BS775, BS2051),
    each=labelled("M+030", "M-030"),
    window=Cases(
        "deg",
        (
            ("at home", HOME),
            ("at home in 4+9+0, 0+7+0 and 4+7+0", WIDE),
            ("for critical listening", CRITICAL),
            ("for critical listening in 4+9+0, 0+7+0 and 4+7+0", CRITICAL_WIDE),
        ),
        front_windows,
    ),
    says={
        "below": "stands {figure}; the stage wants it {window} out",
        "above": "stands {figure}; the stage holds together {window} out",
    },
    after=("layout.sides-swapped",),
    cure=("position",),
    at="position",
    since="0.1.0",
)
def front_pair(room: Room, speaker: Loudspeaker) -> Figure:
    """Left and right front loudspeakers stand 22 to 30 degrees either side of straight ahead.

    Why: Closer together the stage collapses toward the middle; wider apart the phantom images in between grow weak and
    leave the picture.

    How decided: Azimuth at the reference seat toward the label's own side. At home 22 to 30 degrees and 2 more for
    setting out, so that the standard's own 30 does not stand on the edge; up to 45 in the layouts whose standard allows
    it (4+9+0, 0+7+0, 4+7+0). For critical listening 30 degrees within 2, or those layouts' own 30 to 45. The 2 degrees
    are ours.

    Remedy: Move the loudspeaker sideways into the range that the message gives, or move the seat.

    When to waive: A picture far wider or narrower than usual, with loudspeakers matched to its edges.
    """
    return room.figures.angles.outward(speaker, room.reference_seat)


@rule(
    "angle.front-included",
    level=Level.NOTE,
    basis=standard(
        "CTA/CEDIA-RP22",
        "front loudspeakers",
        edition="1.2 (2023)",
        read=False,
        note="from a text that does not name its document",
    ),
    each=FRONT_PAIR,
    window=between(44.0, 64.0, "deg"),
    says="span {figure} as heard; {window} wanted",
    cure=("position",),
    at="position",
    since="0.1.0",
)
def front_included(room: Room, pair: Pair[Loudspeaker]) -> Figure:
    """The front pair spans 44 to 60 degrees as heard from the reference seat.

    Why: The span sets the width of the stage, whichever way the pair is turned about the seat.

    How decided: Azimuth of the left minus azimuth of the right at the reference seat; 4 degrees more than 60 are ours,
    for setting out. The window is known from a text that does not name its document, so a departure is a note only.

    Remedy: Widen or narrow the pair, or move the seat nearer or farther.

    When to waive: Loudspeakers matched to the edges of an unusually wide or narrow picture.
    """
    return room.figures.angles.included(pair, room.reference_seat)
