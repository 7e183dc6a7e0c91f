"""What several reports say in the same words: order, counts, places, changes, the house's decisions."""

from __future__ import annotations

from typing import TYPE_CHECKING

from roomlint.measure.figure import number
from roomlint.review.verdict import Kind, Level, State

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping

    from roomlint.design.house import Decision
    from roomlint.review.rule import Rule
    from roomlint.review.verdict import Change, Verdict
    from roomlint.source.place import Place

COUNTED = (
    ("error", "error", "errors"),
    ("warning", "warning", "warnings"),
    ("note", "note", "notes"),
    ("review", "for review", "for review"),
    ("open", "open", "open"),
    ("pass", "passed", "passed"),
    ("notApplicable", "not applicable", "not applicable"),
    ("informational", "informational", "informational"),
    ("waived", "waived", "waived"),
)
"""The name of a count, and its words for one and for many."""
ALWAYS = ("error", "warning", "note", "review", "open", "pass", "notApplicable", "waived")
"""Counts that are told even when they are zero: nothing is silently left out."""
KIND_WORDS = {Kind.NOT_APPLICABLE: "not applicable"}
LEVELS = frozenset(level.value for level in Level)
ORDER = ("new", "worse", "newly undecided", "newly for review", "newly waived", "better", "gone")
"""How the changes since an earlier revision are listed, what matters most first."""


def one_line(text: str) -> str:
    """Return a text on one line, without anything that would steer a terminal."""
    if text.isprintable():
        return text
    text = " ".join(text.split())
    return "".join(
        sign if sign.isprintable() or sign == " " else sign.encode("unicode_escape").decode() for sign in text
    )


def count_of(number_of: int, one: str, many: str) -> str:
    """Return a number with its noun."""
    return f"{number_of} {one if number_of == 1 else many}"


def at(place: Place) -> str:
    """Return a place in the GNU form."""
    return f"{one_line(place.file)}:{place.line}:{place.column}"


def place_key(verdict: Verdict) -> tuple[str, int, int, str, str, str, str]:
    """Return what verdicts are sorted by: file, line, column, rule, subject, and the rest to be sure of one order."""
    place = verdict.place
    return (place.file, place.line, place.column, verdict.rule, verdict.subject, verdict.kind.value, verdict.message)


def kind_words(verdict: Verdict) -> str:
    """Return the level of a failure, the kind of anything else."""
    if verdict.level is not None:
        return verdict.level.value
    return KIND_WORDS.get(verdict.kind, verdict.kind.value)


def tally(counts: Mapping[str, int]) -> str:
    """Return the counts by kind in words."""
    return ", ".join(
        count_of(counts.get(name, 0), one, many)
        for name, one, many in COUNTED
        if name in ALWAYS or counts.get(name, 0) > 0
    )


def acceptance(verdict: Verdict) -> str:
    """Return who accepted a failure, until when and why, as one sentence; empty when nobody did."""
    waived = verdict.waived
    if waived is None:
        return ""
    who = f" by {waived.approved_by}" if waived.approved_by else ""
    until = f" until {waived.until}" if waived.until else " with no end"
    record = f" ({waived.document})" if waived.document else ""
    return f"Accepted{who}{until}{record}: {sentence(waived.because)}"


def sentence(text: str) -> str:
    """Return a text that ends with a full stop."""
    text = text.strip()
    return text if text.endswith(".") else f"{text}."


def brief(verdict: Verdict, rule: Rule | None) -> str:
    """Return a verdict's message without the basis and the caution, for reports that show these apart."""
    text = verdict.message
    if rule is not None:
        text = text.replace(f" Basis: {'; '.join(str(basis) for basis in rule.bases)}.", "", 1)
        if rule.caution:
            text = text.replace(f" {rule.caution}", "", 1)
    return text


def movement(verdict: Verdict) -> str:
    """Return which way a verdict moved since the earlier revision: one of `ORDER`, or empty when it stands."""
    change = verdict.change
    if change is None or change.state in {State.UNCHANGED, State.ABSENT}:
        return ""
    if verdict.kind is Kind.FAIL:
        return _way(verdict, change) if change.was in LEVELS else "new"
    if verdict.kind is Kind.OPEN:
        return "newly undecided" if change.was != Kind.OPEN else ""
    if verdict.kind is Kind.REVIEW:
        return "newly for review" if change.was != Kind.REVIEW else ""
    return "gone" if change.was in LEVELS else ""


def _way(verdict: Verdict, change: Change) -> str:
    if (verdict.waived is not None) != change.was_waived:
        return "worse" if change.was_waived else "newly waived"
    rise = (verdict.level.rank if verdict.level is not None else 0) - Level(change.was).rank
    grew = change.better_by or 0.0
    if rise > 0 or (rise == 0 and grew < 0):
        return "worse"
    return "better" if rise < 0 or grew > 0 else ""


def movement_words(verdict: Verdict) -> str:
    """Return which way a verdict moved and by how much, such as `worse by 1.2 deg`."""
    word = movement(verdict)
    change = verdict.change
    if change is None or word not in {"worse", "better"}:
        return word
    if change.was_waived and verdict.waived is None:
        return f"{word}, no longer waived"
    if change.better_by and (change.better_by > 0) == (word == "better"):
        unit = verdict.figure.unit if verdict.figure is not None else ""
        return f"{word} by {number(abs(change.better_by), unit)} {unit}".rstrip()
    return f"{word}, was {change.was}"


def decided(decision: Decision) -> str:
    """Return what a house file changed of a rule, in words."""
    parts = []
    if decision.low is not None and decision.high is not None:
        parts.append(f"window {decision.low} to {decision.high}")
    elif decision.low is not None:
        parts.append(f"window at least {decision.low}")
    elif decision.high is not None:
        parts.append(f"window at most {decision.high}")
    if decision.level is not None:
        parts.append(f"level {decision.level}")
    return ", ".join(parts)


def wanted(key: str, file: str) -> str:
    """Return a missing key with the file it belongs in; a key of another file names that one already."""
    bare, within, other = key.rpartition(" in ")
    return f"{bare} in {other} (for {file})" if within and other.endswith((".yaml", ".yml")) else f"{key} in {file}"


def printable(lines: Iterable[str]) -> str:
    """Return lines as text that every UTF-8 output bears, whatever bytes a file's name holds."""
    return "".join(f"{line}\n" for line in lines).encode("utf-8", "backslashreplace").decode()
