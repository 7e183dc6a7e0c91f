"""The pairs: left against right, at the reference seat."""

from __future__ import annotations

from typing import TYPE_CHECKING

from roomlint.review import PAIRS, Amid, Level, Missing, No, Subjects, at_most, practice, rule

from . import HOME_STUDY, PLACED, SYMMETRY, both_as_laid_out

if TYPE_CHECKING:
    from collections.abc import Iterator

    from roomlint.design.listening import Loudspeaker, Seat
    from roomlint.review import Applies, Figure, Pair, Room

FIVE_DEG = practice("5 degrees, a choice of this rule book")
SIDES = ("layout.one-label-each", "layout.sides-swapped", "layout.label-side")
BESIDE = "layout.stage-middle"
LEANS = (*SIDES, BESIDE)
ROUND = ("angle.front-pair", "angle.surround-pair", "angle.side-pair", "angle.rear-pair", "angle.upper-azimuth")
"""One that is out of its own place is told by itself, with the way back to it; the pair is looked at then."""
HIGH = ("angle.upper-azimuth", "angle.ear-elevation", "angle.upper-elevation")


def _stage(room: Room) -> Iterator[Amid[Seat] | Missing]:
    unsure = next((speaker for speaker in room.design.loudspeakers if speaker.label is None), None)
    if unsure is not None:
        yield Missing(unsure, "label")
    elif room.figures.arrangement.pairs():
        yield Amid(room.reference_seat, room.design.loudspeakers)


def _laid_out(room: Room) -> list[Pair[Loudspeaker]]:
    return [pair for pair in room.figures.arrangement.pairs() if both_as_laid_out(room, pair) is True]


def has_a_stage(room: Room, _: Amid[Seat]) -> Applies:
    """Say whether two pairs or more keep to their labels' places; one alone does not tell what is out of place."""
    return True if len(_laid_out(room)) > 1 else No("there are no two pairs that keep to their labels' places")


STAGE: Subjects[Amid[Seat]] = Subjects("left and right pair", _stage, ("loudspeakers", "seats"))


@rule(
    BESIDE,
    level=Level.WARNING,
    basis=practice("the reference seat is in the middle between left and right; 0.15 m, about 5 degrees, is ours"),
    each=STAGE,
    when=has_a_stage,
    window=at_most(0.15, "m"),
    says="sits {figure} beside the middle between left and right; {window} wanted",
    after=("layout.inside-room",),
    cure=("ear",),
    at="ear",
    since="0.3.0",
)
def stage_middle(room: Room, stage: Amid[Seat]) -> Figure:
    """The reference seat sits in the middle between left and right.

    Why: Every pair leans to the side that the seat is nearer to, and each would be told by itself; one seat moved
    cures them all. What each pair and the centre show of it waits for this.

    How decided: How far the ear is, to its own left or right in plan, from the middle of each pair that keeps to its
    labels' places; of the pair that it is nearest to the middle of. Where it is left of the middle of one pair and
    right of another's, the pairs are wrong, not the seat; one pair alone cannot tell which is. At 0.15 m a front pair
    at 30 degrees and 3 m leans by 5.

    Remedy: Move the seat or the row sideways, choose the middle seat as the reference, or move every pair alike.

    When to waive: A room whose best seat cannot be in the middle, with delays entered for it.
    """
    return room.figures.pairs.beside_the_middle(_laid_out(room), stage.middle)


@rule(
    "layout.pair-angle",
    level=Level.WARNING,
    basis=(SYMMETRY, FIVE_DEG),
    each=PAIRS,
    when=both_as_laid_out,
    window=at_most(5.0, "deg"),
    says="one stands {figure} farther round than the other; {window} wanted",
    after=(*LEANS, *PLACED, *ROUND),
    cure=("position",),
    at="position",
    since="0.1.0",
)
def pair_angle(room: Room, pair: Pair[Loudspeaker]) -> Figure:
    """Left and right of a pair stand at mirrored azimuths, to 5 degrees.

    Why: The stage leans to the side whose loudspeaker stands nearer to the front.

    How decided: Difference of the two azimuths, each toward its own side, at the reference seat. The standard asks for
    symmetry; the 5 degrees are our choice.

    Remedy: Mirror one of the pair, or move the seat to the middle between them.

    When to waive: An opening on one side only, with the reason recorded as a departure.
    """
    return room.figures.pairs.angle_difference(pair, room.reference_seat)


@rule(
    "layout.pair-height",
    level=Level.WARNING,
    basis=FIVE_DEG,
    each=PAIRS,
    window=at_most(5.0, "deg"),
    says="one is heard {figure} higher than the other; {window} wanted",
    after=(*LEANS, *PLACED, *HIGH),
    cure=("position",),
    at="position",
    since="0.1.0",
)
def pair_height(room: Room, pair: Pair[Loudspeaker]) -> Figure:
    """Left and right of a pair are heard at the same elevation, to 5 degrees.

    Why: Sound that moves from one to the other should not climb or fall on the way.

    How decided: Difference of the two elevations at the reference seat; the 5 degrees are our choice.

    Remedy: Bring the two to one height, or change the nearer one's distance.

    When to waive: A slope over one side only.
    """
    return room.figures.pairs.height_difference(pair, room.reference_seat)


@rule(
    "layout.pair-distance",
    level=Level.WARNING,
    basis=(HOME_STUDY, practice("its 10 per cent, found for rear against centre, put to pairs by this rule book")),
    each=PAIRS,
    when=both_as_laid_out,
    window=at_most(1.10, ""),
    says="one stands {figure} times as far off as the other; {window} wanted",
    after=(*LEANS, *PLACED, *ROUND, "layout.pair-angle"),
    cure=("position",),
    at="position",
    since="0.1.0",
)
def pair_distance(room: Room, pair: Pair[Loudspeaker]) -> Figure:
    """Left and right of a pair stand at the same distance, to 10 per cent.

    Why: Delay and level settings line up one seat; equal distances line up all of them.

    How decided: Larger distance over the smaller at the reference seat. 10 per cent, about 0.8 dB, is what a listening
    study allowed a rear loudspeaker against the centre; to put it to pairs is our choice. A pair whose angles differ
    already is told once, by `layout.pair-angle`.

    Remedy: Move the farther one nearer, or the seat to the middle between them.

    When to waive: An opening on one side only, with delay and level entered.
    """
    return room.figures.pairs.distance_ratio(pair, room.reference_seat)


@rule(
    "layout.pair-surroundings",
    level=Level.NOTE,
    basis=practice("a pair has about the same surfaces around it; 0.3 m is a choice of this rule book"),
    each=PAIRS,
    when=both_as_laid_out,
    window=at_most(0.3, "m"),
    says="a surface beside one is {figure} nearer than beside the other; {window} wanted",
    after=(*LEANS, *PLACED, *ROUND, "layout.pair-angle", "layout.pair-distance"),
    cure=("position",),
    at="position",
    since="0.1.0",
)
def pair_surroundings(room: Room, pair: Pair[Loudspeaker]) -> Figure:
    """Left and right of a pair have their mirrored surfaces equally near.

    Why: A wall beside one of them only changes its bass and its reflections, and the stage leans.

    How decided: From each loudspeaker the level ways ahead, behind and out to its own side, as the reference seat
    faces, to the first wall or obstacle; the largest difference between the mirrored ways. Farther than 2 m counts as
    2 m.

    Remedy: Mirror the positions, or treat the nearer wall.

    When to waive: A room open to one side.
    """
    return room.figures.pairs.surroundings_difference(pair, room.reference_seat)
