"""What several reports say in the same words: order, counts, places, acceptance, decisions of a house."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from roomlint.review.verdict import Kind
from roomlint.source.say import one_line

if TYPE_CHECKING:
    from collections.abc import Mapping

    from roomlint.design.house import Decision
    from roomlint.review.review import Decided, HouseChange, Loosened, StandingChange
    from roomlint.review.verdict import Verdict, Waived
    from roomlint.source.place import Place

COUNTED: Final = (
    ("error", "error", "errors"),
    ("warning", "warning", "warnings"),
    ("note", "note", "notes"),
    ("review", "for a person to decide", "for a person to decide"),
    ("open", "open", "open"),
    ("pass", "passed", "passed"),
    ("notApplicable", "not applicable", "not applicable"),
    ("informational", "informational", "informational"),
    ("waived", "accepted", "accepted"),
)
"""The name of a count, and its words for one and for many."""
ALWAYS: Final = ("error", "warning", "note", "review", "open", "pass", "notApplicable", "waived")
"""Counts that are told even when they are zero: nothing is silently left out."""
KIND_WORDS: Final = {Kind.NOT_APPLICABLE: "not applicable"}
STANDING: Final = {
    "gate": "the gate",
    "open": "what a missing value counts as",
    "required chapters": "the chapters that a run may not leave out",
}
"""What a house decides about stages, in words."""
MOST_NAMED: Final = 4


def printable(text: str) -> str:
    """Return a text that every UTF-8 output bears, whatever bytes a file's name holds."""
    return text.encode("utf-8", "backslashreplace").decode()


def count_of(number_of: int, one: str, many: str) -> str:
    """Return a number with its noun."""
    return f"{number_of} {one if number_of == 1 else many}"


def at(place: Place) -> str:
    """Return a place in the GNU form."""
    return f"{one_line(place.file)}:{place.line}:{place.column}"


def place_key(verdict: Verdict) -> tuple[str, int, int, str, str, str]:
    """Return what verdicts are sorted by: file, line, column, rule, subject, kind."""
    place = verdict.place
    return (place.file, place.line, place.column, verdict.rule, verdict.subject, verdict.kind.value)


def kind_words(verdict: Verdict) -> str:
    """Return the level of a failure, the kind of anything else."""
    if verdict.level is not None:
        return "accepted" if verdict.waived is not None else verdict.level.value
    return KIND_WORDS.get(verdict.kind, verdict.kind.value)


def tally(counts: Mapping[str, int], *, only: tuple[str, ...] = (), zeros: bool = True) -> str:
    """Return the counts by kind in words."""
    return ", ".join(
        count_of(counts.get(name, 0), one, many)
        for name, one, many in COUNTED
        if (not only or name in only) and (counts.get(name, 0) > 0 or (zeros and name in ALWAYS))
    )


def lacking(opens: int) -> str:
    """Return how many open checks stop a room."""
    return f"{count_of(opens, 'check that lacks', 'checks that lack')} a value at this stage"


def acceptance(waived: Waived) -> str:
    """Return who accepted a failure, until when and why, as one sentence."""
    who = f" by {waived.approved_by}" if waived.approved_by else ""
    until = f" until {waived.until}" if waived.until else " with no end"
    record = f" ({waived.document})" if waived.document else ""
    return one_line(f"Accepted{who}{until}{record}: {sentence(waived.because)}")


def sentence(text: str) -> str:
    """Return a text that ends with a full stop."""
    text = text.strip()
    return text if text.endswith((".", "?")) else f"{text}."


def decided(decision: Decided) -> str:
    """Return what a house file says of a rule, in words."""
    parts = []
    if decision.low is not None and decision.high is not None:
        parts.append(f"{decision.low} to {decision.high}")
    elif decision.low is not None:
        parts.append(f"at least {decision.low}")
    elif decision.high is not None:
        parts.append(f"at most {decision.high}")
    if decision.level is not None:
        parts.append(f"level {decision.level}")
    return one_line(", ".join(parts))


def house_change(change: HouseChange, rule_book: str) -> str:
    """Return how a decision of a house changed, in words; `rule_book` is what holds where a house says nothing."""
    before = decided(change.was) if change.was is not None else rule_book
    after = decided(change.now) if change.now is not None else rule_book
    own = any(one is not None and one.is_own for one in (change.was, change.now))
    if own and change.was is None:
        return f"{change.rule} {change.way}: {after}"
    if own and change.now is None:
        return f"{change.rule} {change.way}: it was {before}"
    return f"{change.rule} {change.way}: {before} → {after}"


def standing_change(change: StandingChange) -> str:
    """Return how a decision of a house about stages changed, in words."""
    what = STANDING.get(change.what, change.what)
    return one_line(f"{what} at {', '.join(change.stages)} {change.way}: {change.was} → {change.now}")


def loosened(one: Loosened, house: str, was: str, now: str) -> str:
    """Return what a house made looser where people can get hurt."""
    who = f", approved by {one.approved_by}" if one.approved_by else ""
    until = f" until {one.until}" if one.until else ""
    why = f": {one.because}" if one.because else ""
    return one_line(f"{one.rule}: {now} instead of {was}, by {house}{who}{until}{why}")


def ended(decision: Decision, house: str) -> str:
    """Return that a decision of a house holds no longer."""
    until = decision.until.isoformat() if decision.until is not None else ""
    return one_line(f"What {house} decides about {decision.id} ended on {until}: the rule book's own holds again")


def few(names: list[str], most: int = MOST_NAMED) -> str:
    """Return the first few names of many."""
    return ", ".join(names[:most]) + (f" and {len(names) - most} more" if len(names) > most else "")
