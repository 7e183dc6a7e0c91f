"""The neighbours: how far apart loudspeakers of one layer stand, and the layers over and under the ear."""

from __future__ import annotations

from itertools import pairwise
from typing import TYPE_CHECKING, Final

from roomlint.review import (
    Level,
    Missing,
    Seen,
    Several,
    Subjects,
    at_least,
    found,
    layered,
    passes,
    practice,
    rule,
)

from . import BESIDE, BS2051, SIDES
from .around import EAR_LAYER, GAPS, PLACES
from .layers import UPPER

if TYPE_CHECKING:
    from collections.abc import Iterator

    from roomlint.design.base import Element
    from roomlint.design.listening import Loudspeaker
    from roomlint.review import Figure, Found, Room, Says

LAYERS: Final = (("M",), ("U", "UH"), ("B",))
BOTTOM = layered("B", name="bottom loudspeaker")
_MIDDLE_DEG: Final = frozenset({0, 180})
_SURROUNDING: Final = 4


class Neighbours(Seen["Loudspeaker", "Loudspeaker"]):
    """A loudspeaker and the next one round on its side."""

    @property
    def about(self) -> tuple[Element, ...]:
        """Both: either may be the one that stands wrong."""
        return self.elements

    @property
    def side(self) -> int:
        """1 on the left, -1 on the right."""
        signs = {(one.label or "")[1:2] for one in (self.source, self.seat) if _nominal_deg(one) not in _MIDDLE_DEG}
        return 1 if "+" in signs else -1


def _nominal_deg(speaker: Loudspeaker) -> int | None:
    digits = (speaker.label or "")[-3:]
    return int(digits) if digits.isdigit() else None


def _neighbours(room: Room) -> Iterator[Neighbours | Missing]:
    for letters in LAYERS:
        found: list[tuple[int, Loudspeaker]] = []
        for speaker in layered(*letters, name="").find(room):
            if isinstance(speaker, Missing):
                continue
            nominal = _nominal_deg(speaker)
            if nominal is not None:
                found.append((nominal, speaker))
        for sign in "+-":
            mine = [one for one in found if one[0] in _MIDDLE_DEG or (one[1].label or "")[-4] == sign]
            mine.sort(key=lambda one: one[0])
            for (first, one), (second, other) in pairwise(mine):
                if first < second and not {first, second} <= _MIDDLE_DEG:
                    yield Neighbours(one, other, " and ")
    # One without a label may stand between any two.
    yield from (Missing(speaker, "label") for speaker in room.design.loudspeakers if speaker.label is None)


def _upper_layer(room: Room) -> Iterator[Several[Loudspeaker] | Missing]:
    """Yield the upper layer as one, when it surrounds the listener."""
    found = list(UPPER.find(room))
    speakers = tuple(one for one in found if not isinstance(one, Missing))
    unlabelled = [one for one in found if isinstance(one, Missing)]
    if len(speakers) >= _SURROUNDING and not unlabelled:
        yield Several(speakers)
    yield from unlabelled


NEIGHBOURS: Subjects[Neighbours] = Subjects("two neighbours of one layer", _neighbours, ("loudspeakers",))
UPPER_LAYER: Subjects[Several[Loudspeaker]] = Subjects(
    "upper layer all round the listener", _upper_layer, ("loudspeakers",)
)


@rule(
    "angle.neighbour-gap",
    level=Level.WARNING,
    basis=(
        BS2051,
        practice("its ranges leave 10 degrees at the least, between a side at 110 and a rear at 120"),
    ),
    each=NEIGHBOURS,
    window=at_least(10.0, "deg"),
    says={
        "fail": "stand {figure} apart; {window} keeps two voices of one layer apart",
        "negative": "stand in the wrong order, by {size}: {order} is how their labels go round",
    },
    after=(*SIDES, BESIDE, "angle.front-pair", *PLACES, "angle.upper-azimuth"),
    cure=("position",),
    at="position",
    since="0.3.0",
)
def neighbour_gap(room: Room, both: Neighbours) -> Found:
    """Neighbours of one layer stand in the order of their labels, 10 degrees apart or more.

    Why: Two loudspeakers in one direction are one voice, and what circles the listener stumbles between them.

    How decided: Azimuths at the reference seat round one side, of each loudspeaker and the next by its label, within
    the ear layer, the upper ones and the bottom ones; those of the middle count on both sides. The published ranges
    leave 10 degrees at the least, in all layouts but 3+7+0, whose side and rear share one range. One out of its own
    range is told by its own rule first.

    Remedy: Move the two apart along their surfaces, or exchange their labels where the order is wrong.

    When to waive: Two that play one channel on purpose.
    """
    figure = room.figures.angles.next_round(both.source, both.seat, both.side, room.reference_seat)
    return found(figure, order=(both.source.label or "", both.seat.label or ""))


@rule(
    "angle.upper-gap",
    level=Level.NOTE,
    basis=(BS2051, practice("no gap wider than the ranges of the layouts with an upper layer all round leave")),
    each=UPPER_LAYER,
    window=GAPS,
    says="leave a gap of {figure} overhead; {window} wanted",
    after=(*SIDES, BESIDE, "angle.upper-azimuth"),
    cure=("position",),
    at="position",
    since="0.3.0",
)
def upper_gap(room: Room, speakers: Several[Loudspeaker]) -> Figure:
    """No gap between neighbouring upper loudspeakers is wider than the layouts' own ranges leave.

    Why: Rain, voices and aircraft that should pass over the listener jump across a wide gap.

    How decided: Azimuths at the reference seat, sorted round the circle, of four upper loudspeakers or more. With fewer
    than seven the ranges of 4+5+0 and 4+7+0 leave 160 degrees at the rear, between uppers at 100; with seven or more
    120, which is the ear layer's; in 9+10+3 70. One out of its own range is told by its own rule first.

    Remedy: Move the loudspeakers beside the gap toward it, or add a pair.

    When to waive: A sloped ceiling that comes down to the ear behind the seat.
    """
    return room.figures.angles.largest_gap(speakers.members, room.reference_seat)


@rule(
    "angle.bottom-separation",
    level=Level.WARNING,
    basis=(
        BS2051,
        practice("bottom loudspeakers 15 degrees below the ear layer: the least that its tables leave"),
    ),
    each=BOTTOM,
    window=at_least(15.0, "deg"),
    says={
        "fail": "is heard {figure} below the ear layer over it; {window} keeps the layers apart",
        "negative": "is heard {size} above the ear layer that it belongs below",
        "alone": "no ear-layer loudspeaker stands over it",
    },
    after=("layout.inside-room", "angle.other-elevation"),
    cure=("position",),
    at="position",
    since="0.3.0",
)
def bottom_separation(room: Room, speaker: Loudspeaker) -> Figure | Says:
    """Bottom loudspeakers stand well below the ear-layer loudspeaker over them.

    Why: A bottom loudspeaker at the height of the ear layer repeats it, and nothing comes from below.

    How decided: Elevation at the reference seat of the nearest ear-layer loudspeaker within 45 degrees of azimuth,
    minus the bottom one's. The published ranges leave 15 degrees: an ear layer at 0 over a bottom one at -15.

    Remedy: Lower the bottom loudspeaker, or move it toward the seat.

    When to waive: A stage or a cabinet that leaves no lower place.
    """
    beds = [bed for bed in EAR_LAYER.find(room) if not isinstance(bed, Missing)]
    figure = room.figures.angles.under_bed(speaker, beds, room.reference_seat)
    return figure if figure is not None else passes("alone")
