"""The comment on a pull request: the verdict first, then what is new or worse, what fails, what nobody could decide."""

from __future__ import annotations

from typing import TYPE_CHECKING

from roomlint.report.markdown_text import code, data
from roomlint.report.rule_pages import basis_words
from roomlint.report.words import (
    ORDER,
    brief,
    count_of,
    decided,
    decisions,
    kind_words,
    loosened,
    moved,
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
ACTION = frozenset({Kind.FAIL, Kind.REVIEW})
LISTED = (Kind.FAIL, Kind.REVIEW, Kind.OPEN, Kind.INFORMATIONAL, Kind.PASS, Kind.NOT_APPLICABLE)
FOLD_END = ["", "</details>"]


def markdown_report(review: Review, *, verdicts: bool = False) -> str:
    """Return the review as a comment in Markdown; `verdicts` lists what passed or does not apply too."""
    rules = {rule.id: rule for rule in review.rules}
    lines = [*_rooms(review), *_troubles(review), *_changes(review, rules), *_findings(review, rules)]
    lines += [*_undecided(review), *_waivers(review, rules), *_house(review)]
    spent = sum(len(line) + 1 for line in lines)
    return printable([*lines, *_everything(review, rules, MOST - spent, verdicts=verdicts)])


def _fitted(head: list[str], rows: list[str], room: int, foot: list[str] | None = None) -> Iterator[str]:
    """Yield as many rows as there is room for, and say how many are left out."""
    if not rows:
        return
    foot = foot or []
    yield from head
    # The line that tells of the rest, and the blank lines around it, need room too.
    left = room - sum(len(line) + 1 for line in (*head, *foot)) - 60
    for index, row in enumerate(rows):
        left -= len(row) + 1
        if left < 0:
            yield ""
            yield f"{len(rows) - index} more in the full report."
            break
        yield row
    yield from foot
    yield ""


def _rooms(review: Review) -> Iterator[str]:
    rows = [_room(room) for room in sorted(review.rooms, key=lambda room: (not any(room.gating()), room.file))]
    if len(rows) == 1:
        yield rows[0].removeprefix("- ")
        yield ""
        return
    if not rows:
        yield "**No room was reviewed.**"
        yield ""
        return
    stopped = sum(1 for room in review.rooms if any(room.gating()))
    yield f"**{count_of(len(rows), 'room', 'rooms')}, {stopped} stopped by the gate**: {tally(review.counts())}."
    yield ""
    yield from _fitted([], rows, ROOM["rooms"])


def _room(room: RoomReview) -> str:
    gating = sum(1 for _ in room.gating())
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
    yield from _fitted(["**Not complete**", ""], rows, ROOM["troubles"])


def _where(file: str, line: int) -> str:
    return code(f"{file}:{line}")


def _words(verdict: Verdict, rules: dict[str, Rule]) -> str:
    text = brief(verdict, rules.get(verdict.rule))
    return data(text if len(text) <= MOST_WORDS else f"{text[:MOST_WORDS].rstrip()} …")


def _changes(review: Review, rules: dict[str, Rule]) -> Iterator[str]:
    if not review.against:
        return
    rows = []
    for word, _, verdict in moved(review):
        change = word if word == "gone" else movement_words(verdict)
        text = data(verdict.words) if word == "gone" else _words(verdict, rules)
        rows.append(f"| {change} | {_where(verdict.place.file, verdict.place.line)} | {text} | {data(verdict.rule)} |")
    if not rows:
        yield f"**Against {data(review.against)}: nothing changed.**"
        yield ""
    head = [f"**Against {data(review.against)}**", "", "| change | where | finding | rule |", "|---|---|---|---|"]
    yield from _fitted(head, rows, ROOM["changes"])


def _findings(review: Review, rules: dict[str, Rule]) -> Iterator[str]:
    found = [
        verdict
        for room in review.rooms
        for verdict in room.verdicts
        if verdict.kind in ACTION and verdict.waived is None
    ]
    if not found and review.rooms:
        yield "Nothing fails and nothing is for review."
        yield ""
    rows = []
    for verdict in sorted(found, key=_gravest):
        rule = rules.get(verdict.rule)
        basis = "; ".join(basis_words(basis) for basis in rule.bases) if rule is not None else ""
        where = _where(verdict.place.file, verdict.place.line)
        text = _words(verdict, rules)
        rows.append(f"| {kind_words(verdict)} | {where} | {text} | {data(verdict.rule)} | {data(basis)} |")
    head = ["**What fails, and what a person must decide**", ""]
    head += ["| level | where | finding | rule | basis |", "|---|---|---|---|---|"]
    yield from _fitted(head, rows, ROOM["findings"])
    cautions = {rules[verdict.rule].caution for verdict in found if verdict.rule in rules} - {""}
    yield from _fitted(["**Cautions**", ""], [f"- {data(text)}" for text in sorted(cautions)], ROOM["notes"])


def _gravest(verdict: Verdict) -> tuple[object, ...]:
    """Return what findings are sorted by: new and worse first, then the gravest, then by place."""
    way = movement(verdict)
    newness = ORDER.index(way) if way in {"new", "worse"} else len(ORDER)
    return newness, -(verdict.level.rank if verdict.level is not None else 0), place_key(verdict)


def _undecided(review: Review) -> Iterator[str]:
    keys = review.missing_inputs()
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


def _waivers(review: Review, rules: dict[str, Rule]) -> Iterator[str]:
    rows = []
    found = [verdict for room in review.rooms for verdict in room.verdicts]
    for verdict in sorted(found, key=place_key):
        waived = verdict.waived
        if waived is not None:
            who, until = data(waived.approved_by or "nobody named"), data(waived.until or "no end")
            because = data(" ".join(part for part in (sentence(waived.because), waived.document) if part))
            where = _where(waived.place.file, waived.place.line)
            cells = (where, _words(verdict, rules), data(verdict.rule), who, until, because)
            rows.append(f"| {' | '.join(cells)} |")
    head = [
        "**Accepted failures**",
        "",
        "| where | finding | rule | by | until | because |",
        "|---|---|---|---|---|---|",
    ]
    yield from _fitted(head, rows, ROOM["waivers"])


def _house(review: Review) -> Iterator[str]:
    rows = [f"- **Loosened where people can get hurt:** {data(sentence(text))}" for text in loosened(review)]
    for file, decision in decisions(review):
        because = f": {data(sentence(decision.because))}" if decision.because else ""
        rows.append(f"- {data(decision.id)}, by {code(file)}: {data(decided(decision))}{because}")
    yield from _fitted(["**Rules changed by the house**", ""], rows, ROOM["notes"])


def _everything(review: Review, rules: dict[str, Rule], room: int, *, verdicts: bool) -> Iterator[str]:
    kinds = LISTED if verdicts else LISTED[:3]
    found = [verdict for one in review.rooms for verdict in one.verdicts if verdict.kind in kinds]
    found.sort(key=lambda verdict: (LISTED.index(verdict.kind), place_key(verdict)))
    rows = []
    for verdict in found:
        word = "waived" if verdict.waived is not None else kind_words(verdict)
        where = _where(verdict.place.file, verdict.place.line)
        rows.append(f"- {where} {word}: {_words(verdict, rules)} ({data(verdict.rule)})")
    which = "All verdicts" if verdicts else "All that fails, is for review or is open"
    head = ["<details>", f"<summary>{which}: {len(rows)}</summary>", ""]
    yield from _fitted(head, rows, room, FOLD_END)
