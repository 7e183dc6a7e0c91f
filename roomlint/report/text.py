"""The text report: one line a finding in the GNU form, then what was counted and what to find out next."""

from __future__ import annotations

from typing import TYPE_CHECKING

from roomlint.report.digest import Digest
from roomlint.report.words import (
    acceptance,
    at,
    brief,
    count_of,
    decided,
    kind_words,
    movement_words,
    one_line,
    place_key,
    printable,
    sentence,
    tally,
    wanted,
)
from roomlint.review.verdict import Kind

if TYPE_CHECKING:
    from collections.abc import Iterator

    from roomlint.review.review import Review, RoomReview
    from roomlint.review.rule import Rule
    from roomlint.review.verdict import Verdict

MOST_KEYS = 5
MOST_MOVED = 20
SHOWN_ALWAYS = frozenset({Kind.FAIL, Kind.REVIEW})
UNREADABLE = "file.unreadable"
COLOURS = {"error": "31", "warning": "33", "note": "36", "review": "35", "waived": "2", "open": "34", "passed": "32"}
"""Word to the number of its colour in ECMA-48, 8.3.117."""


def text_report(review: Review, *, verdicts: bool = False, colour: bool = False) -> str:
    """Return the review as text.

    Failures, waived ones too, and what a person must decide are always shown; `verdicts` adds what is open, passed,
    not applicable or merely worth knowing. The closing block counts everything in either case.
    """
    lines = [
        (
            (problem.place.file, problem.place.line, problem.place.column, "", "", "", problem.text),
            "error",
            at(problem.place),
            f"{one_line(problem.text)} [{UNREADABLE}]",
        )
        for problem in review.problems
    ]
    digest = Digest(review)
    for room in review.rooms:
        digest.add(room)
        lines += [
            (place_key(verdict), *_finding(verdict, room))
            for verdict in room.verdicts
            if verdicts or verdict.kind in SHOWN_ALWAYS
        ]
    lines.sort(key=lambda line: line[0])
    shown = [f"{where}: {_coloured(word, colour=colour)}: {text}" for _, word, where, text in lines]
    if shown:
        shown.append("")
    return printable([*shown, *_closing(review, digest, verdicts=verdicts)])


def _finding(verdict: Verdict, room: RoomReview) -> tuple[str, str, str]:
    word, text = kind_words(verdict), verdict.message
    if verdict.waived is not None:
        word, text = "waived", f"{sentence(text)} {acceptance(verdict)}"
    way = movement_words(verdict)
    if way:
        text = f"{text} ({way})"
    if verdict.place.file != room.file:
        # The same product sheet serves many rooms; each finding says which room it is about.
        text = f"{text} (room {room.file})"
    return word, at(verdict.place), f"{one_line(text)} [{verdict.rule}]"


def _coloured(word: str, *, colour: bool) -> str:
    return f"\x1b[{COLOURS[word]}m{word}\x1b[0m" if colour and word in COLOURS else word


def _closing(review: Review, digest: Digest, *, verdicts: bool) -> Iterator[str]:
    rooms = count_of(digest.rooms, "room", "rooms")
    rules = count_of(len(review.rules), "rule", "rules")
    yield f"{rooms}, {rules}: {tally(digest.counts)}."
    yield from _compared(review, digest)
    yield from _next(digest, verdicts=verdicts)
    yield from _house(digest)
    for name in review.unmatched:
        yield f"Nothing to check in {one_line(name)}: no file there ends in .room.yaml."
    if review.problems:
        files = len({problem.place.file for problem in review.problems})
        yield f"{count_of(files, 'file', 'files')} could not be read; rooms that need them were not reviewed."
    for trouble in review.troubles:
        yield f"Not complete: {one_line(sentence(trouble.text))}"


def _next(digest: Digest, *, verdicts: bool) -> Iterator[str]:
    keys = digest.missing()
    if not keys:
        return
    yield "To find out next (a rule may then ask for one more input):"
    for file, key, count in keys[:MOST_KEYS]:
        many = "verdict is" if count == 1 else "verdicts are"
        yield f"  give {one_line(wanted(key, file))} and {count} {many} decided"
    if len(keys) > MOST_KEYS:
        where = "above" if verdicts else "shown by --verdicts"
        yield f"  and {count_of(len(keys) - MOST_KEYS, 'more key', 'more keys')}, {where}"


def _house(digest: Digest) -> Iterator[str]:
    changed: dict[str, list[str]] = {}
    for file, decision in digest.decisions():
        changed.setdefault(file, []).append(f"{decision.id} ({decided(decision)})")
    for file, rules in changed.items():
        yield f"Rules changed by {one_line(file)}: {one_line(', '.join(rules))}."
    for text in digest.loosened():
        yield f"Loosened where people can get hurt: {one_line(sentence(text))}"


def _compared(review: Review, digest: Digest) -> Iterator[str]:
    if not review.against:
        return
    told = ", ".join(f"{count} {word}" for word, count in digest.moves_in_order())
    yield f"Against {one_line(review.against)}: {told or 'nothing changed'}."
    rules = {rule.id: rule for rule in review.rules}
    for word, verdict in digest.moved.items()[:MOST_MOVED]:
        yield f"  {_change(word, verdict, rules.get(verdict.rule))}"
    if digest.moved.total > MOST_MOVED:
        yield f"  and {count_of(digest.moved.total - MOST_MOVED, 'more change', 'more changes')}"


def _change(word: str, verdict: Verdict, rule: Rule | None) -> str:
    if word == "gone":
        return f"gone: {at(verdict.place)}: {one_line(verdict.words)} [{verdict.rule}]"
    waived = " (waived)" if verdict.waived is not None else ""
    return f"{movement_words(verdict)}: {at(verdict.place)}: {one_line(brief(verdict, rule))}{waived} [{verdict.rule}]"
