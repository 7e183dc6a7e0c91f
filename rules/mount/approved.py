"""Anchors in masonry and concrete: their approval, their seat, a test on site, and what their maker publishes."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from roomlint.design.base import need
from roomlint.design.proofs import stated
from roomlint.review import Level, No, at_least, fails, found, memory, passes, rule, standard

from . import CAUSES, CAUTION, HELD, base_of, fixed, in_masonry, plain

if TYPE_CHECKING:
    from roomlint.measure.holding import Held
    from roomlint.review import Applies, Figure, Found, Room, Says

LEAST_TESTED: Final = 3


@rule(
    "mount.anchor-approval",
    level=Level.ERROR,
    basis=standard("ACI 318", "chapter 17", read=False, note="post-installed anchors must be qualified"),
    each=HELD,
    when=(fixed, in_masonry),
    says={
        "none": "anchors in {into} without an approval document",
        "other": "anchors in {into}, and {document} covers {bases} only",
        "named": "anchors in {into} covered by {document}",
    },
    after=CAUSES,
    at="mounting.fixing",
    caution=CAUTION + " No calculation is made here for anchors.",
    since="0.1.0",
)
def anchor_approval(room: Room, thing: Held) -> Says:
    """Anchors in concrete and masonry come with their approval document.

    Why: What an anchor holds depends on base, depth, edge and spacing, and only its approval says how.

    How decided: The fixing names an approval document whose bases hold what the anchors go into, or the engineer's
    document; the word none, or nothing, is neither.

    Remedy: Name the approval and let an engineer choose the anchor.

    When to waive: When an engineer's document stands for it; then name that in fixing.engineer.
    """
    mounts = room.figures.mounts
    fixing, into = mounts.fixing(thing), base_of(mounts.into(thing))
    engineer, approval = mounts.engineer(thing), stated(fixing.anchor_approval)
    if engineer is not None:
        return passes("named", into=into, document=engineer.words)
    if approval is None:
        return fails("none", into=into)
    bases = need(approval.bases or None, approval, "bases")
    if mounts.into(thing) not in bases:
        return fails("other", into=into, document=approval.words, bases=tuple(plain(base) for base in bases))
    return passes("named", into=into, document=approval.words)


@rule(
    "mount.anchor-seat",
    level=Level.WARNING,
    basis=standard("ACI 318", "chapter 17", read=False, note="depth, edge distance and spacing of the qualification"),
    each=HELD,
    when=(fixed, in_masonry),
    window=at_least(1.0, ""),
    says="its anchors have {own} of the {asked} of {part} that their approval asks for, {figure} of it",
    after=(*CAUSES, "mount.anchor-approval"),
    cure=("mounting.fixing.embedment", "mounting.fixing.edge_distance", "mounting.fixing.anchor_spacing"),
    at="mounting.fixing",
    caution=CAUTION + " No calculation is made here for anchors.",
    since="0.2.0",
)
def anchor_seat(room: Room, thing: Held) -> Found:
    """Anchors keep the depth, edge distance and spacing that their approval asks for.

    Why: An anchor too shallow, too near an edge or to its neighbour breaks a cone out of the base.

    How decided: The least of the three, each over what the approval asks.

    Remedy: Deeper holes, or the plate farther from the edge.

    When to waive: When an engineer's document covers the reduced distances.
    """
    seat = room.figures.anchors.anchor_seat(thing)
    return found(seat.share, part=seat.part, own=seat.own, asked=seat.asked)


def tested(room: Room, thing: Held) -> Applies:
    """Whether its anchors are in masonry and a pull test on site is told."""
    if stated(room.figures.mounts.fixing(thing).test) is not None:
        return True
    return No("no pull test on site is told")


@rule(
    "mount.anchor-test",
    level=Level.WARNING,
    basis=memory("one and a half times the working load, at least three anchors", document="BS 8539", clause="9"),
    each=HELD,
    when=(fixed, in_masonry, tested),
    window=at_least(1.5, ""),
    says={
        "fail": "its anchors were pulled on site to {figure} times the load on one; {window} wanted",
        "few": "{count} of its anchors were pulled on site; at least 3 wanted",
    },
    after=CAUSES,
    cure=("mounting.fixing.row_spacing",),
    at="mounting.fixing.test",
    caution=CAUTION + " A test on site proves workmanship, not an anchor that is wrong for its base.",
    since="0.3.0",
)
def anchor_test(room: Room, thing: Held) -> Figure | Says:
    """Anchors that were pulled on site held one and a half times what they bear, three of them at least.

    Why: Old brick and blocks of unknown make hold what they hold, and only a pull tells.

    How decided: What each tested anchor held over the resultant of pull and shear on the most loaded one. A test stands
    for no approval: it proves that what the approval covers was set as it says. From memory, so a warning.

    Remedy: Test again with the right load, or choose other anchors.

    When to waive: An engineer set another load, in writing.
    """
    fixing = room.figures.mounts.fixing(thing)
    test = need(stated(fixing.test), fixing, "test")
    count = need(test.count, test, "count")
    if count < LEAST_TESTED:
        return fails("few", count=count)
    return room.figures.anchors.tested(thing)


def published(room: Room, thing: Held) -> Applies:
    """Whether it hangs on toggles or anchors, whose makers publish ultimate loads."""
    fastener = room.figures.mounts.fastener(thing)
    anchors = {"toggle", "expansion-anchor", "concrete-screw", "adhesive-anchor"}
    return True if fastener in anchors else No(f"a {plain(fastener)} has no published ultimate load")


@rule(
    "mount.anchor-margin",
    level=Level.WARNING,
    basis=standard("trade pages on hollow-wall anchors", read=False, note="a quarter of the published ultimate load"),
    each=HELD,
    when=(fixed, published),
    window=at_least(4.0, ""),
    says="its anchors' published ultimate load is {figure} times the load on one; {window} wanted",
    after=CAUSES,
    at="mounting.fixing.anchor_ultimate",
    caution=CAUTION + " A published ultimate load was reached in a laboratory.",
    since="0.2.0",
)
def anchor_margin(room: Room, thing: Held) -> Figure:
    """An anchor's published ultimate load is at least four times what it bears.

    Why: Ultimate loads are averages of what broke in a laboratory.

    How decided: Published ultimate load over the resultant of pull and shear on the most loaded anchor.

    Remedy: Larger anchors, more of them, or framing.

    When to waive: When the anchor's approval gives an allowable load and an engineer used it.
    """
    return room.figures.anchors.anchor_margin(thing)
