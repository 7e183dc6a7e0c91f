"""The comment on a pull request: the verdict first, then what is new or worse, what fails, what nobody could decide."""

from __future__ import annotations

from typing import TYPE_CHECKING

from roomlint.report.digest import Digest, Foremost, is_for_action
from roomlint.report.markdown_text import code, data
from roomlint.report.rule_pages import basis_words
from roomlint.report.words import (
    ORDER,
    brief,
    count_of,
    decided,
    kind_words,
    movement,
    movement_words,
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

MOST = 60_000
"""Characters of the whole comment; code hosts refuse longer ones."""
MOST_KEYS = 5
MOST_WORDS = 400
"""Characters of one finding in a table."""
ROOM = {"rooms": 8_000, "troubles": 5_000, "changes": 8_000, "findings": 16_000, "waivers": 6_000, "notes": 5_000}
"""Characters for each part; the folded list gets what is left."""
MOST_ROWS = 500
"""Rows of any part; more never fit."""
LISTED = (Kind.FAIL, Kind.REVIEW, Kind.OPEN, Kind.INFORMATIONAL, Kind.PASS, Kind.NOT_APPLICABLE)
FOLD_END = ["", "</details>"]


def markdown_report(review: Review, *, verdicts: bool = False) -> str:
    """Return the review as a comment in Markdown; `verdicts` lists what passed or does not apply too."""
    seen = _Seen(review, verdicts=verdicts)
    for room in review.rooms:
        seen.add(room)
    lines = [*_rooms(seen), *_troubles(review), *_changes(review, seen), *_findings(seen)]
    lines += [*_undecided(seen.digest), *_waivers(seen), *_house(seen.digest)]
    spent = sum(len(line) + 1 for line in lines)
    return printable([*lines, *_everything(seen, MOST - spent)])


class _Seen:
    """What the comment may show, gathered in one pass over the rooms."""

    def __init__(self, review: Review, *, verdicts: bool) -> None:
        self.digest = Digest(review)
        self.rules = {rule.id: rule for rule in review.rules}
        self.kinds = LISTED if verdicts else LISTED[:3]
        self.rooms: Foremost[str] = Foremost(MOST_ROWS)
        self.stopped = 0
        self.findings: Foremost[Verdict] = Foremost(MOST_ROWS)
        self.waived: Foremost[Verdict] = Foremost(MOST_ROWS)
        self.listed: Foremost[Verdict] = Foremost(MOST_ROWS)
        self.cautions: set[str] = set()

    def add(self, room: RoomReview) -> None:
        self.digest.add(room)
        gating = sum(1 for _ in room.gating())
        self.stopped += gating > 0
        self.rooms.add((gating == 0, room.file), _room(room, gating))
        for verdict in room.verdicts:
            key = place_key(verdict)
            if verdict.waived is not None:
                self.waived.add((key, room.file), verdict)
            elif is_for_action(verdict):
                self.findings.add((*_gravest(verdict), key, room.file), verdict)
                if verdict.rule in self.rules:
                    self.cautions.add(self.rules[verdict.rule].caution)
            if verdict.kind in self.kinds:
                self.listed.add((LISTED.index(verdict.kind), key, room.file), verdict)


def _fitted(head: list[str], rows: list[str], total: int, room: int, foot: list[str] | None = None) -> Iterator[str]:
    """Yield as many rows as there is room for, and say how many are left out."""
    if not rows:
        return
    foot = foot or []
    yield from head
    # The line that tells of the rest, and the blank lines around it, need room too.
    left = room - sum(len(line) + 1 for line in (*head, *foot)) - 60
    shown = 0
    for row in rows:
        left -= len(row) + 1
        if left < 0:
            break
        yield row
        shown += 1
    if shown < total:
        yield ""
        yield f"{total - shown} more in the full report."
    yield from foot
    yield ""


def _rooms(seen: _Seen) -> Iterator[str]:
    rows, total = seen.rooms.items(), seen.rooms.total
    if total == 1:
        yield rows[0].removeprefix("- ")
        yield ""
    elif not rows:
        yield "**No room was reviewed.**"
        yield ""
    else:
        yield f"**{total} rooms, {seen.stopped} stopped by the gate**: {tally(seen.digest.counts)}."
        yield ""
        yield from _fitted([], rows, total, ROOM["rooms"])


def _room(room: RoomReview, gating: int) -> str:
    if room.gate is None:
        verdict = "not gated"
    elif gating:
        verdict = f"stopped by the gate ({room.gate}): {count_of(gating, 'finding', 'findings')}"
    else:
        verdict = f"passes the gate ({room.gate})"
    name = " ".join(part for part in (room.code, room.title) if part)
    stage = f", {data(room.stage)}" if room.stage else ""
    return f"- **{data(name or room.file)}: {verdict}.** {code(room.file)}{stage}: {tally(room.counts())}."


def _troubles(review: Review) -> Iterator[str]:
    rows = [f"- {_where(problem.place.file, problem.place.line)} {data(problem.text)}" for problem in review.problems]
    rows += [f"- A rule broke: {data(sentence(trouble.text))}" for trouble in review.troubles]
    rows += [f"- Nothing to check in {code(name)}." for name in review.unmatched]
    yield from _fitted(["**Not complete**", ""], rows, len(rows), ROOM["troubles"])


def _where(file: str, line: int) -> str:
    return code(f"{file}:{line}")


def _words(verdict: Verdict, rules: dict[str, Rule]) -> str:
    text = brief(verdict, rules.get(verdict.rule))
    return data(text if len(text) <= MOST_WORDS else f"{text[:MOST_WORDS].rstrip()} …")


def _changes(review: Review, seen: _Seen) -> Iterator[str]:
    if not review.against:
        return
    rows = []
    for word, verdict in seen.digest.moved.items():
        change = word if word == "gone" else movement_words(verdict)
        text = data(verdict.words) if word == "gone" else _words(verdict, seen.rules)
        rows.append(f"| {change} | {_where(verdict.place.file, verdict.place.line)} | {text} | {data(verdict.rule)} |")
    if not rows:
        yield f"**Against {data(review.against)}: nothing changed.**"
        yield ""
    head = [f"**Against {data(review.against)}**", "", "| change | where | finding | rule |", "|---|---|---|---|"]
    yield from _fitted(head, rows, seen.digest.moved.total, ROOM["changes"])


def _findings(seen: _Seen) -> Iterator[str]:
    rows = []
    for verdict in seen.findings.items():
        rule = seen.rules.get(verdict.rule)
        basis = "; ".join(basis_words(basis) for basis in rule.bases) if rule is not None else ""
        where = _where(verdict.place.file, verdict.place.line)
        text = _words(verdict, seen.rules)
        rows.append(f"| {kind_words(verdict)} | {where} | {text} | {data(verdict.rule)} | {data(basis)} |")
    if not rows and seen.rooms.total:
        yield "Nothing fails and nothing is for review."
        yield ""
    head = ["**What fails, and what a person must decide**", ""]
    head += ["| level | where | finding | rule | basis |", "|---|---|---|---|---|"]
    yield from _fitted(head, rows, seen.findings.total, ROOM["findings"])
    rows = [f"- {data(text)}" for text in sorted(seen.cautions - {""})]
    yield from _fitted(["**Cautions**", ""], rows, len(rows), ROOM["notes"])


def _gravest(verdict: Verdict) -> tuple[int, int]:
    """Return what findings are sorted by first: new and worse, then the gravest."""
    way = movement(verdict)
    newness = ORDER.index(way) if way in {"new", "worse"} else len(ORDER)
    return newness, -(verdict.level.rank if verdict.level is not None else 0)


def _undecided(digest: Digest) -> Iterator[str]:
    keys = digest.missing()
    if not keys:
        return
    total = sum(count for _, _, count in keys)
    yield f"**{count_of(total, 'verdict', 'verdicts')} could not be decided.** What would decide most:"
    yield ""
    for file, key, count in keys[:MOST_KEYS]:
        yield f"- give {data(wanted(key, file))}: {count_of(count, 'verdict', 'verdicts')}"
    if len(keys) > MOST_KEYS:
        yield f"- and {count_of(len(keys) - MOST_KEYS, 'more key', 'more keys')}"
    yield ""


def _waivers(seen: _Seen) -> Iterator[str]:
    rows = []
    for verdict in seen.waived.items():
        waived = verdict.waived
        if waived is not None:
            who, until = data(waived.approved_by or "nobody named"), data(waived.until or "no end")
            because = data(" ".join(part for part in (sentence(waived.because), waived.document) if part))
            where = _where(waived.place.file, waived.place.line)
            cells = (where, _words(verdict, seen.rules), data(verdict.rule), who, until, because)
            rows.append(f"| {' | '.join(cells)} |")
    head = [
        "**Accepted failures**",
        "",
        "| where | finding | rule | by | until | because |",
        "|---|---|---|---|---|---|",
    ]
    yield from _fitted(head, rows, seen.waived.total, ROOM["waivers"])


def _house(digest: Digest) -> Iterator[str]:
    rows = [f"- **Loosened where people can get hurt:** {data(sentence(text))}" for text in digest.loosened()]
    for file, decision in digest.decisions():
        because = f": {data(sentence(decision.because))}" if decision.because else ""
        rows.append(f"- {data(decision.id)}, by {code(file)}: {data(decided(decision))}{because}")
    yield from _fitted(["**Rules changed by the house**", ""], rows, len(rows), ROOM["notes"])


def _everything(seen: _Seen, room: int) -> Iterator[str]:
    rows = []
    for verdict in seen.listed.items():
        word = "waived" if verdict.waived is not None else kind_words(verdict)
        where = _where(verdict.place.file, verdict.place.line)
        rows.append(f"- {where} {word}: {_words(verdict, seen.rules)} ({data(verdict.rule)})")
    which = "All verdicts" if seen.kinds is LISTED else "All that fails, is for review or is open"
    head = ["<details>", f"<summary>{which}: {seen.listed.total}</summary>", ""]
    yield from _fitted(head, rows, seen.listed.total, room, FOLD_END)
