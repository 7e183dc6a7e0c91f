"""One line a finding: file, line, column, level, subject, sentence, rule; for editors and other programs."""

from __future__ import annotations

from typing import TYPE_CHECKING

from roomlint.report.digest import Digest
from roomlint.report.telling import Rules, Telling
from roomlint.report.words import at, kind_words, place_key, printable, sentence
from roomlint.review.verdict import Kind
from roomlint.source.say import one_line

if TYPE_CHECKING:
    from collections.abc import Iterator

    from roomlint.report.wishes import Wishes
    from roomlint.review.review import Review

SHOWN_ALWAYS = frozenset({Kind.FAIL, Kind.REVIEW})
UNREADABLE = "file.unreadable"
LOOSENED = "house.loosened"
ENDED = "house.ended"


def lines_report(review: Review, wishes: Wishes) -> Iterator[str]:
    """Yield a line for each finding, room by room, each room's in the order of its file.

    Failures, accepted ones too, what a person must decide, and what is not known where that holds the room back are
    always there; `missing` adds all that lacks a value, `verdicts` all else.
    """
    for problem in sorted(review.problems):
        yield printable(f"{at(problem.place)}: error: {one_line(sentence(problem.text))} [{UNREADABLE}]\n")
    for trouble in review.troubles:
        yield printable(f"roomlint: error: not complete: {one_line(sentence(trouble.text))}\n")
    for name in review.unmatched:
        yield printable(f"{one_line(name)}: note: nothing to check here; no file ends in .room.yaml.\n")
    rules, digest = Rules(review.rules), Digest(review)
    for room in review.rooms:
        digest.add(room)
        telling = Telling(room, rules, wishes.units)
        holding = {(verdict.rule, verdict.subject) for verdict in room.gating()}
        for verdict in sorted(room.verdicts, key=place_key):
            asked = wishes.verdicts or (wishes.missing and verdict.wanted is not None and verdict.kind is Kind.OPEN)
            if verdict.kind not in SHOWN_ALWAYS and not asked and (verdict.rule, verdict.subject) not in holding:
                continue
            change = verdict.change
            way = f" ({change.way.value})" if change is not None and change.way is not None else ""
            # The same product sheet serves many rooms; each finding says which room it is about.
            whose = f" (room {one_line(room.file)})" if verdict.place.file != room.file else ""
            text = f"{telling.names.subject(verdict)}: {telling.sentence([verdict])}{way}{whose}"
            yield printable(f"{at(verdict.place)}: {kind_words(verdict)}: {text} [{verdict.rule}]\n")
    for one, text in digest.loosened(wishes.units):
        yield printable(f"{at(one.place)}: warning: made looser where people can get hurt: {text} [{LOOSENED}]\n")
    for place, text in digest.ended():
        yield printable(f"{at(place)}: warning: {text} [{ENDED}]\n")
