"""The waivers that stand in the room file, judged after every other rule."""

from __future__ import annotations

from datetime import date
from typing import TYPE_CHECKING

from roomlint.review import (
    SOON,
    Fate,
    Kind,
    Level,
    No,
    Subjects,
    asks,
    fails,
    meets,
    named,
    nearest,
    passes,
    practice,
    rule,
    subject_ids,
)

if TYPE_CHECKING:
    from roomlint.design.record import Waiver
    from roomlint.review import Applies, Figure, Room, Says, Unheld

RECORD = practice("an accepted failure is kept on record with its rule, its element, its reason and its end")
WAIVERS: Subjects[Waiver] = Subjects("waiver", lambda room: room.design.waivers)
LACKED = {"approved_by": "an approver", "document": "a document"}
"""What a waiver on record needs, by key."""
OWN = "file.waiver-"
"""Findings about waivers: these cannot be waived."""


def _met(room: Room, waiver: Waiver, fate: Fate) -> dict[str, Unheld]:
    """Return why a waiver does not hold, for each subject that it meets with such an end."""
    return {
        waiving.verdict.words: waiving.unheld
        for waiving in room.waivings
        if waiving.waiver is waiver and waiving.unheld is not None and waiving.fate is fate
    }


def _size(figure: Figure) -> float:
    return figure.value


def _known(room: Room, waiver: Waiver) -> Applies:
    if waiver.rule.startswith(OWN):
        return True
    if waiver.rule not in room.rule_ids or named(waiver) - subject_ids(room.design, room.found):
        return No("it names something unknown, which is a finding of its own")
    return True


def _ran(room: Room, waiver: Waiver) -> Applies:
    if waiver.rule.startswith(OWN) or waiver.rule in room.ran:
        return True
    return No("its rule was left out of this run")


def last_day(waiver: Waiver) -> date:
    """Return a waiver's last day; `_has_last_day` has asked whether there is one."""
    return waiver.until or date.max


def _has_last_day(room: Room, waiver: Waiver) -> Applies:
    if waiver.until is None or room.today is None:
        return No("it has no last day")
    return True


def _not_over(room: Room, waiver: Waiver) -> Applies:
    if room.today is not None and room.today > last_day(waiver):
        return No("it has already ended, which is a finding of its own")
    return True


def _has_bound(_: Room, waiver: Waiver) -> Applies:
    return True if waiver.bound is not None else No("it has no bound")


@rule(
    "file.waiver-unknown-rule",
    level=Level.ERROR,
    basis=RECORD,
    each=WAIVERS,
    closing=True,
    says={"fail": "there is no rule {rule}; {nearest}", "fine": "its rule exists"},
    since="0.1.0",
    at="rule",
)
def unknown_rule(room: Room, waiver: Waiver) -> Says:
    """A waiver names a rule that exists.

    Why: A waiver of a misspelt or withdrawn rule accepts nothing, and the record would look as if it did.

    How decided: The name is looked up among all installed rules and the window rules of the house file. Rules that a
    run leaves out still count as known.

    Remedy: Correct the rule's id; the message gives the nearest one. `roomlint rules` lists them all.

    When to waive: Never; findings about waivers cannot be waived. Correct or remove the waiver.
    """
    if waiver.rule in room.rule_ids:
        return passes("fine")
    return fails("fail", rule=waiver.rule, nearest=nearest(waiver.rule, room.rule_ids).rstrip("."))


@rule(
    "file.waiver-unknown-subject",
    level=Level.ERROR,
    basis=RECORD,
    each=WAIVERS,
    closing=True,
    says={"fail": "there is no element {name}; {nearest}", "fine": "its elements exist"},
    since="0.1.0",
    at="subject",
)
def unknown_subject(room: Room, waiver: Waiver) -> Says:
    """A waiver names elements that exist.

    Why: An element that was renamed or removed leaves its waiver behind, and the next thing of that name would
    inherit it.

    How decided: The subject is an element's id, or several joined by `+`; each is looked up among the ids of the room
    file. `kind/id` tells apart two elements that share an id; the project's code stands for the room as a whole.

    Remedy: Correct the id; the message gives the nearest one. Remove the waiver when the element is gone.

    When to waive: Never; findings about waivers cannot be waived. Correct or remove the waiver.
    """
    known = subject_ids(room.design, room.found)
    for name in sorted(named(waiver) - known):
        return fails("fail", name=name, nearest=nearest(name, known).rstrip("."))
    return passes("fine")


@rule(
    "file.waiver-unmatched",
    level=Level.WARNING,
    basis=RECORD,
    each=WAIVERS,
    closing=True,
    when=(_known, _ran),
    says={
        "fail": "accepts something that no longer fails",
        "nothing": "accepts nothing: its rule does not judge what it names",
        "own": "findings about waivers cannot be accepted; correct the waiver",
        "undecided": "what it accepts cannot be decided yet",
        "fine": "meets a failure",
    },
    since="0.1.0",
)
def unmatched(room: Room, waiver: Waiver) -> Says:
    """A waiver meets a failure that there is.

    Why: A waiver that has outlived its failure would silently accept the next one.

    How decided: The waiver is held against every failure of its rule; it meets those whose subject holds all the ids
    that it names. Where its rule was not run, or could not decide for a missing input or an uncertain one, nothing is
    said.

    Remedy: Remove the waiver; the failure that it accepted is gone.

    When to waive: Never; findings about waivers cannot be waived. Correct or remove the waiver.
    """
    if waiver.rule.startswith(OWN):
        return fails("own")
    kinds = {verdict.kind for verdict in room.found if meets(waiver, verdict)}
    if Kind.FAIL in kinds:
        return passes("fine")
    if kinds & {Kind.OPEN, Kind.REVIEW}:
        return asks("undecided")
    return fails("fail") if kinds else fails("nothing")


@rule(
    "file.waiver-without-reason",
    level=Level.ERROR,
    basis=RECORD,
    each=WAIVERS,
    closing=True,
    says={"fail": "gives no reason, so the failure stands", "fine": "gives its reason"},
    since="0.1.0",
)
def without_reason(room: Room, waiver: Waiver) -> Says:
    """A waiver says why.

    Why: Whoever opens the file years later must be able to tell an accepted compromise from a forgotten one.

    How decided: The key `because` must be there and say something. A waiver without it accepts nothing: the failure
    stands.

    Remedy: Write the reason, and who approved it.

    When to waive: Never; findings about waivers cannot be waived. Correct or remove the waiver.
    """
    if waiver.because is None or not waiver.because.strip():
        return fails("fail")
    return passes("fine")


@rule(
    "file.waiver-unsupported",
    level=Level.ERROR,
    basis=practice("a failure that can hurt people is accepted by a named person on the strength of a document"),
    each=WAIVERS,
    closing=True,
    says={
        "fail": "an error of this chapter is not accepted without {lacks}: {elements}",
        "fine": "nothing here needs an approver and a document that it lacks",
    },
    since="0.1.0",
)
def unsupported(room: Room, waiver: Waiver) -> Says:
    """An error of mounting or mains is waived by a named approver with a document.

    Why: These are the failures that hurt people. Accepting one is a decision of somebody who answers for it, on the
    strength of a calculation, a test or a permit that can be shown.

    How decided: When the waiver meets an error of chapter mount or mains, both `approved_by` and `document` must be
    there. Without them it accepts nothing: the failure stands. What is recorded here replaces neither the local code
    nor the licensed electrician or engineer.

    Remedy: Name the approver and the document's reference, or change the design.

    When to waive: Never; findings about waivers cannot be waived. Correct or remove the waiver.
    """
    met = _met(room, waiver, Fate.UNSUPPORTED)
    if not met:
        return passes("fine")
    lacks = dict.fromkeys(LACKED[key] for unheld in met.values() for key in unheld.lacks)
    return fails("fail", lacks=" and ".join(lacks), elements=tuple(met))


@rule(
    "file.waiver-expired",
    level=Level.WARNING,
    basis=RECORD,
    each=WAIVERS,
    closing=True,
    when=_has_last_day,
    says={"fail": "ended on {day}; the failure stands again", "fine": "has not ended"},
    since="0.1.0",
    at="until",
)
def expired(room: Room, waiver: Waiver) -> Says:
    """A waiver has not expired.

    Why: A date was set so that the matter is looked at again; after it the failure stands.

    How decided: The day of the run, from the system's clock or `--today`, is later than `until`. The day `until`
    itself still counts. Nothing in the file can set the clock.

    Remedy: Clear the failure, or approve it again with a new date.

    When to waive: Never; findings about waivers cannot be waived. Correct or remove the waiver.
    """
    day = last_day(waiver)
    if room.today is not None and room.today > day:
        return fails("fail", day=day.isoformat())
    return passes("fine")


@rule(
    "file.waiver-expiring",
    level=Level.NOTE,
    basis=practice("a month's notice lets a team act before a waiver ends"),
    each=WAIVERS,
    closing=True,
    when=(_has_last_day, _not_over),
    says={"fail": "ends on {day}; clear the failure before, or approve it again", "fine": "does not end soon"},
    since="0.1.0",
    at="until",
)
def expiring(room: Room, waiver: Waiver) -> Says:
    """A waiver does not end within the next 30 days.

    Why: When it ends the failure stands again, on a day when nobody may have the time for it.

    How decided: The day of the run, from the system's clock or `--today`, is at most 30 days before `until`.

    Remedy: Clear the failure before that day, or approve it again with a new date.

    When to waive: Never; findings about waivers cannot be waived. Correct or remove the waiver.
    """
    day = last_day(waiver)
    if room.today is not None and day - room.today <= SOON:
        return fails("fail", day=day.isoformat())
    return passes("fine")


@rule(
    "file.waiver-bound-passed",
    level=Level.WARNING,
    basis=RECORD,
    each=WAIVERS,
    closing=True,
    when=_has_bound,
    says={"fail": "its bound of {bound} is passed by {excess}: {elements}", "fine": "its bound is not passed"},
    since="0.1.0",
    at="bound",
)
def bound_passed(room: Room, waiver: Waiver) -> Says:
    """A waived figure has not got worse than its bound.

    Why: What was accepted was a certain departure, not any departure.

    How decided: The bound is compared with the figure of every failure that the waiver meets, on the side where the
    figure is worse. In the chapters mount and mains the figure's uncertainty counts against the waiver. Beyond the
    bound the failure stands, and the message says by how much it was passed.

    Remedy: Bring the figure back to the bound, or have the new value approved.

    When to waive: Never; findings about waivers cannot be waived. Correct or remove the waiver.
    """
    met = _met(room, waiver, Fate.BOUND_PASSED)
    excess = [unheld.passed for unheld in met.values() if unheld.passed is not None]
    if not excess:
        return passes("fine")
    return fails("fail", bound=waiver.bound or "", excess=max(excess, key=_size), elements=tuple(met))


@rule(
    "file.waiver-bound-unfit",
    level=Level.ERROR,
    basis=RECORD,
    each=WAIVERS,
    closing=True,
    when=_has_bound,
    says={
        "fail": "its bound of {bound} does not fit the figure of {elements}: {why}",
        "figureless": "has a bound of {bound}, and there is no figure to hold to it: {elements}",
        "fine": "its bound fits",
    },
    since="0.1.0",
    at="bound",
)
def bound_unfit(room: Room, waiver: Waiver) -> Says:
    """A waiver's bound is a quantity of the kind of its figure.

    Why: A bound in another unit holds nothing, and the record would look as if it did.

    How decided: The bound is read as a quantity in the dimension of the figure that failed. A failure that is told in
    words has no figure and takes no bound. A waiver whose bound does not fit accepts nothing: the failure stands.

    Remedy: Write the bound with a unit of the figure's dimension, or leave it out.

    When to waive: Never; findings about waivers cannot be waived. Correct or remove the waiver.
    """
    met = _met(room, waiver, Fate.BOUND_UNFIT)
    if not met:
        return passes("fine")
    reasons = tuple(dict.fromkeys(unheld.unfit for unheld in met.values() if unheld.unfit))
    if not reasons:
        return fails("figureless", bound=waiver.bound or "", elements=tuple(met))
    return fails("fail", bound=waiver.bound or "", why=reasons, elements=tuple(met))
