"""The text report: one line a finding in the GNU form, then what was counted and what to find out next."""

from __future__ import annotations

from typing import TYPE_CHECKING

from roomlint.review.verdict import Kind, State

if TYPE_CHECKING:
    from collections.abc import Iterator

    from roomlint.review.review import Review, RoomReview
    from roomlint.review.verdict import Verdict
    from roomlint.source.place import Place

MOST_KEYS = 5
_SHOWN_ALWAYS = frozenset({Kind.FAIL, Kind.REVIEW})
_COUNTED = (
    ("error", "errors"), ("warning", "warnings"), ("note", "notes"), ("review", "for review"), ("waived", "waived"),
    ("open", "open"), ("informational", "informational"), ("pass", "passed"), ("notApplicable", "not applicable"),
)  # fmt: skip
_NAMES = {Kind.NOT_APPLICABLE: "not applicable"}


def text_report(review: Review, *, verdicts: bool = False) -> str:
    """Return the review as text; `verdicts` shows what is open, passed or not applicable too."""
    lines = [f"{_at(problem.place)}: error: {problem.text} [file.unreadable]" for problem in review.problems]
    for room in review.rooms:
        lines += [_line(verdict) for verdict in _sorted(room) if verdicts or verdict.kind in _SHOWN_ALWAYS]
    if lines:
        lines.append("")
    lines += _closing(review)
    return "\n".join(lines) + "\n"


def _sorted(room: RoomReview) -> list[Verdict]:
    return sorted(room.verdicts, key=lambda verdict: (verdict.place, verdict.rule, verdict.subject))


def _at(place: Place) -> str:
    return f"{place.file}:{place.line}:{place.column}"


def _line(verdict: Verdict) -> str:
    if verdict.waived is not None:
        waived = verdict.waived
        who = f"{waived.approved_by}, " if waived.approved_by else ""
        text = f"{verdict.message} Accepted ({who}until {waived.until or 'further notice'}): {waived.because}"
        return f"{_at(verdict.place)}: waived: {text} [{verdict.rule}]"
    kind = verdict.level or _NAMES.get(verdict.kind, verdict.kind)
    return f"{_at(verdict.place)}: {kind}: {verdict.message}{_changed(verdict)} [{verdict.rule}]"


def _changed(verdict: Verdict) -> str:
    change = verdict.change
    if change is None or verdict.kind is not Kind.FAIL:
        return ""
    if change.state is State.NEW:
        return f" (new{f', was {change.was}' if change.was else ''})"
    if change.state is State.UPDATED and change.better_by is not None and verdict.figure is not None:
        side = "better" if change.better_by > 0 else "worse"
        return f" ({side} by {abs(change.better_by):.3g} {verdict.figure.unit})".replace(" )", ")")
    return ""


def _closing(review: Review) -> Iterator[str]:
    counts = review.counts()
    rooms, rules = len(review.rooms), len(review.rules)
    told = ", ".join(f"{counts[name]} {words}" for name, words in _COUNTED if counts.get(name))
    yield f"{rooms} room{'s' * (rooms != 1)}, {rules} rules: {told or 'no verdicts'}."
    yield from _next(review)
    yield from _house(review)
    if review.against:
        yield from _compared(review)
    for folder in review.unmatched:
        yield f"Nothing to check in {folder}: no file there ends in .room.yaml."
    if review.problems:
        files = len({problem.place.file for problem in review.problems})
        yield f"{files} file{'s' * (files != 1)} could not be read; rooms that depend on them were not reviewed."
    for trouble in review.troubles:
        yield f"Not complete: {trouble.text}."


def _next(review: Review) -> Iterator[str]:
    wanted = review.missing_inputs()
    if not wanted:
        return
    yield "To decide more:"
    for file, key, count in wanted[:MOST_KEYS]:
        yield f"  give {key} in {file} and {count} verdict{'s' * (count != 1)} can be decided"
    if len(wanted) > MOST_KEYS:
        yield f"  and {len(wanted) - MOST_KEYS} more keys (--verdicts shows all)"


def _house(review: Review) -> Iterator[str]:
    changed: dict[str, set[str]] = {}
    for room in review.rooms:
        for verdict in room.verdicts:
            if verdict.overridden:
                changed.setdefault(room.house.file, set()).add(verdict.rule)
    for file, rules in sorted(changed.items()):
        yield f"Decided by {file}: {', '.join(sorted(rules))}."
    loosened = {text for room in review.rooms for text in room.loosened}
    for text in sorted(loosened):
        yield f"Loosened where people can get hurt: {text}"


def _compared(review: Review) -> Iterator[str]:
    new = worse = better = undecided = gone = 0
    for room in review.rooms:
        gone += len(room.gone)
        for verdict in room.verdicts:
            change = verdict.change
            if change is None:
                continue
            if verdict.kind is Kind.FAIL and change.state is State.NEW:
                new += 1
            elif verdict.kind is Kind.OPEN and change.was not in {"", "open"}:
                undecided += 1
            elif change.state is State.UPDATED and change.better_by is not None:
                worse, better = worse + (change.better_by < 0), better + (change.better_by > 0)
    told = f"{new} new, {worse} worse, {better} better, {gone} gone, {undecided} newly undecided"
    yield f"Against {review.against}: {told}."
    for room in review.rooms:
        for verdict in room.gone:
            yield f"  gone: {verdict.place.file}: {verdict.words} [{verdict.rule}]"
