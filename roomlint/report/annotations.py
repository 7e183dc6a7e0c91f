"""Workflow commands: one line a finding, which a code host's runner pins to the line of the file."""

from __future__ import annotations

from collections import Counter
from typing import TYPE_CHECKING

from roomlint.report.digest import is_for_action
from roomlint.report.words import one_line, place_key, printable, sentence, tally

if TYPE_CHECKING:
    from roomlint.review.review import Review
    from roomlint.source.place import Place

COMMANDS = {"error": "error", "warning": "warning", "note": "notice"}
GRAVEST = {"error": 0, "warning": 1, "notice": 2}
"""The gravest come first: runners show only the first few of a step."""
MESSAGE = {ord("%"): "%25", ord("\r"): "%0D", ord("\n"): "%0A"}
PROPERTY = MESSAGE | {ord(":"): "%3A", ord(","): "%2C"}


def annotations_report(review: Review, *, verdicts: bool = False) -> str:
    """Return what stands open as workflow commands: failures, and what a person must decide as notices.

    Waived failures and everything else are counted in the last line, whatever `verdicts` says: an annotation asks
    somebody to act.
    """
    del verdicts
    found: list[tuple[int, tuple[object, ...], str]] = []
    for problem in sorted(review.problems):
        line = _command("error", problem.place, "file.unreadable", problem.text)
        found.append((GRAVEST["error"], (), line))
    counts: Counter[str] = Counter()
    for room in review.rooms:
        counts.update(room.counts())
        for verdict in room.verdicts:
            if not is_for_action(verdict):
                continue
            name = COMMANDS[verdict.level.value] if verdict.level is not None else "notice"
            title = verdict.rule if verdict.level is not None else f"{verdict.rule}, for review"
            line = _command(name, verdict.place, title, verdict.message)
            found.append((GRAVEST[name], (place_key(verdict), room.file), line))
    found.sort(key=lambda entry: entry[:2])
    lines = [line for _, _, line in found]
    lines += [f"::error title=roomlint is not complete::{_message(trouble.text)}" for trouble in review.troubles]
    lines += [
        f"::warning title=roomlint found nothing to check::{_message(f'no file in {name} ends in .room.yaml')}"
        for name in review.unmatched
    ]
    lines.append(f"::notice title=roomlint::{_message(tally(counts))}")
    return printable(lines)


def _command(name: str, place: Place, title: str, message: str) -> str:
    end = f"endColumn={place.end_column}" if place.end_line == place.line else f"endLine={place.end_line}"
    file = one_line(place.file).translate(PROPERTY)
    where = f"file={file},line={place.line},col={place.column},{end}"
    return f"::{name} {where},title={one_line(title).translate(PROPERTY)}::{_message(message)}"


def _message(text: str) -> str:
    return sentence(one_line(text)).translate(MESSAGE)
