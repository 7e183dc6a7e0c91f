"""Workflow commands: one line a finding, which a code host's runner pins to the line of the file."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from roomlint.report.digest import Digest, Foremost, is_for_action
from roomlint.report.telling import Rules, Telling
from roomlint.report.words import count_of, place_key, printable, sentence, tally
from roomlint.review.verdict import Way
from roomlint.source.files import from_top
from roomlint.source.say import one_line

if TYPE_CHECKING:
    from collections.abc import Iterator

    from roomlint.report.wishes import Wishes
    from roomlint.review.review import Review
    from roomlint.review.verdict import Verdict
    from roomlint.source.place import Place

COMMANDS: Final = {"error": "error", "warning": "warning", "note": "notice"}
GRAVEST: Final = {"error": 0, "warning": 1, "notice": 2}
"""The gravest come first: runners show only the first few of a step."""
MOST: Final = 200
"""Marks that are written; no runner shows more."""
MESSAGE: Final = {ord("%"): "%25", ord("\r"): "%0D", ord("\n"): "%0A"}
PROPERTY: Final = MESSAGE | {ord(":"): "%3A", ord(","): "%2C"}


def annotations_report(review: Review, wishes: Wishes) -> Iterator[str]:
    """Yield workflow commands: what makes the run incomplete and the tally, then the findings, the gravest first.

    Of a compared review only what is new or worse is marked; everything else is counted. Paths are from the top of the
    repository, as runners want them, wherever the program runs.
    """
    yield from _incomplete(review)
    digest, unmarked, rules = Digest(review), 0, Rules(review.rules)
    found: Foremost[str] = Foremost(MOST)
    for room in review.rooms:
        digest.add(room)
        telling = Telling(room, rules, wishes.units)
        for verdict in room.verdicts:
            if not is_for_action(verdict):
                continue
            if review.against and not _is_moved(verdict):
                unmarked += 1
                continue
            name = COMMANDS[verdict.level.value] if verdict.level is not None else "notice"
            title = verdict.rule if verdict.level is not None else f"{verdict.rule}, for a person to decide"
            key = (GRAVEST[name], place_key(verdict), room.file)
            found.add(key, _command(name, verdict.place, title, _text(verdict, telling)))
    more = found.total - MOST
    told = [tally(digest.counts)]
    if review.against:
        told.append(
            f"compared with {review.against}; {count_of(unmarked, 'finding stands', 'findings stand')} as before"
        )
    if more > 0:
        told.append(f"{more} more are not marked")
    yield _line(f"::notice title=roomlint::{_message('; '.join(told))}")
    for one, text in digest.loosened(wishes.units):
        yield _line(_command("warning", one.place, "made looser where people can get hurt", text))
    for place, text in digest.ended():
        yield _line(_command("warning", place, "a decision of the house is over", text))
    for line in found.items():
        yield _line(line)


def _incomplete(review: Review) -> Iterator[str]:
    """Yield what makes the run incomplete."""
    for trouble in review.troubles:
        yield _line(f"::error title=roomlint is not complete::{_message(trouble.text)}")
    for name in review.unmatched:
        yield _line(
            f"::warning title=roomlint found nothing to check::{_message(f'no file in {name} ends in .room.yaml')}"
        )
    for problem in sorted(review.problems):
        yield _line(_command("error", problem.place, "file.unreadable", problem.text))


def _is_moved(verdict: Verdict) -> bool:
    return verdict.change is None or verdict.change.way in {Way.NEW, Way.WORSE, Way.CLOSE}


def _text(verdict: Verdict, telling: Telling) -> str:
    text = f"{telling.names.subject(verdict)}: {telling.sentence([verdict], moved=True)}."
    if verdict.remedy is None:
        return text
    words = telling.remedy(verdict.remedy, verdict.subject)
    return f"{text} {sentence(words[:1].upper() + words[1:])}"


def _line(text: str) -> str:
    return printable(f"{text}\n")


def _command(name: str, place: Place, title: str, message: str) -> str:
    end = f"endColumn={place.end_column}" if place.end_line == place.line else f"endLine={place.end_line}"
    file = one_line(from_top(place.file)).translate(PROPERTY)
    where = f"file={file},line={place.line},col={place.column},{end}"
    return f"::{name} {where},title={one_line(title).translate(PROPERTY)}::{_message(message)}"


def _message(text: str) -> str:
    return sentence(one_line(text)).translate(MESSAGE)
