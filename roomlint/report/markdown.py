"""The comment on a pull request: the verdict and its reason, what to read first, what was cured; all else folded."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any, Final

from roomlint.report.asking import is_hazard, lacks
from roomlint.report.changes import TITLES, departed_words, has_changed, house_lines, of_design, of_waivers
from roomlint.report.derived import worked_out
from roomlint.report.digest import Digest, Foremost, is_for_action
from roomlint.report.markdown_text import code, data
from roomlint.report.merging import Entry, merged
from roomlint.report.names import key_words, wanted_words
from roomlint.report.page import Footnotes
from roomlint.report.points import gravest_first, in_one_breath
from roomlint.report.rule_pages import basis_words
from roomlint.report.telling import Rules, Telling
from roomlint.report.words import (
    acceptance,
    count_of,
    decided,
    few,
    lacking,
    place_key,
    printable,
    sentence,
    tally,
)
from roomlint.review.review import Decided
from roomlint.review.verdict import By, Kind, Way
from roomlint.source.files import from_top

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from roomlint.report.asking import Lack
    from roomlint.report.wishes import Wishes
    from roomlint.review.review import Review, RoomReview
    from roomlint.review.verdict import Verdict

MARKER: Final = "<!-- roomlint: this one comment is kept up to date -->"
"""The first line: by it a workflow finds its earlier comment and writes it anew."""
MOST: Final = 60_000
"""Characters of the whole comment; code hosts refuse longer ones."""
MOST_WORDS: Final = 400
"""Characters of one line."""
FIRST: Final = 5
MOST_CURED: Final = 8
MOST_UNKNOWN: Final = 5
MOST_NAMED: Final = 12
MOST_CURES: Final = 2
MOST_ROOMS: Final = 20
MOST_PROBLEMS: Final = 10
MOST_ROWS: Final = 400
MOST_WAIVED: Final = 40
MOST_LACKS: Final = 60
MOST_KEYS: Final = 8
_NO_HAZARD: Final = (9, 0.0)
AS_BEFORE: Final = "as before"
WHAT_ELSE: Final = "What else fails or is for a person to decide"


def markdown_report(review: Review, wishes: Wishes) -> Iterator[str]:
    """Yield the review as a comment in Markdown, which never lists what passed or does not apply."""
    seen = _Seen(review, wishes)
    for room in review.rooms:
        seen.add(room)
    lines = [MARKER, *seen.verdict(), *_incomplete(review), *seen.house(), *seen.first(), *seen.moved()]
    lines += [*seen.others(), *seen.cautions(), *seen.loosened()]
    spent = 0
    for line in lines:
        spent += len(line) + 1
        yield printable(f"{line}\n")
    for line in seen.folded(MOST - spent):
        yield printable(f"{line}\n")


class _Seen:
    """What the comment may show, gathered in one pass over the rooms."""

    def __init__(self, review: Review, wishes: Wishes) -> None:
        self.review = review
        self.wishes = wishes
        self.digest = Digest(review)
        self._rules = Rules(review.rules)
        self._only = data(review.rooms[0].code or review.rooms[0].file) if len(review.rooms) == 1 else ""
        """The name of the one room, where there is one: then no line need say of which it speaks."""
        self._stopped: Foremost[str] = Foremost(MOST_ROOMS)
        self._passed: list[str] = []
        self._renamed: list[str] = []
        self._sheets: dict[str, list[str]] = {}
        """Product sheets that changed, and the rooms that use them."""
        self._first: Foremost[tuple[str, str, str]] = Foremost(FIRST)
        """The line, the rule's caution and its bases."""
        self._rows: Foremost[tuple[str, str]] = Foremost(FIRST)
        """The same lines as they stand in the lists below, which must not tell them again."""
        self._moved = {way: Foremost[str](MOST_CURED) for way in (Way.BETTER, Way.GONE, Way.UNKNOWN)}
        self._by_house: Foremost[str] = Foremost(MOST_CURED)
        self._waivers: Foremost[str] = Foremost(MOST_CURED)
        self._waived: Foremost[str] = Foremost(MOST_WAIVED)
        self._listed: Foremost[str] = Foremost(MOST_ROWS)
        self._old: Foremost[str] = Foremost(MOST_ROWS)
        self._lacks: Foremost[str] = Foremost(MOST_LACKS)
        self._assumed: dict[str, dict[str, None]] = {}
        """What is assumed to the rooms that it is assumed in."""
        self._worked: list[str] = []
        self._unjudged: list[str] = []
        self._bases: dict[str, str] = {}

    def add(self, room: RoomReview) -> None:
        """Take in one room."""
        stops = self.digest.add(room)
        telling = Telling(room, self._rules, self.wishes.units)
        name = data(room.code or room.file)
        of = "" if self._only else f"{name}: "
        quiet = room.compared or not any(is_for_action(verdict) for verdict in room.verdicts)
        if not stops and quiet and not has_changed(room):
            self._passed.append(name)
        if room.was_file:
            self._renamed.append(f"- {name}: {code(room.was_file)} → {code(from_top(room.file))}")
        for sheet in room.sheets_changed:
            self._sheets.setdefault(data(sheet), []).append(name)
        if room.compared:
            self._changes(room, telling, of)
        points = self._findings(room, telling, name, of)
        if stops:
            self._stopped.add(room.file, _held(room, name, points))

    def _changes(self, room: RoomReview, telling: Telling, of: str) -> None:
        for way in self._moved:
            for number, entry in enumerate(of_design(room, telling, way)):
                self._moved[way].add((room.file, number), f"- {self._row(entry, of, is_dated=False)}")
        for way in TITLES:
            for number, entry in enumerate(of_design(room, telling, way, By.HOUSE)):
                row = self._row(entry, of, is_dated=False)
                self._by_house.add((room.file, number), f"- {TITLES[way]}: {row}")
        for number, line in enumerate(of_waivers(room, telling)):
            self._waivers.add((room.file, number), f"- {of}{data(line)}")

    def _findings(self, room: RoomReview, telling: Telling, name: str, of: str) -> int:
        """Take in what fails, and return how many points of it hold the room back, counted as its list counts them."""
        chosen = [verdict for verdict in room.verdicts if is_for_action(verdict)]
        gating = {id(verdict) for verdict in room.gating()}
        # Compared, each figure is told with what it was before; else what one load path does is one line.
        beside, taken = (
            ({}, set()) if room.compared else in_one_breath([one for one in chosen if one.level is not None], telling)
        )
        chosen = [verdict for verdict in chosen if id(verdict) not in taken]
        points = 0
        for number, entry in enumerate(merged(chosen, telling, moved=True, beside=beside)):
            points += any(id(verdict) in gating for verdict in entry.verdicts)
            row, plain = self._row(entry, of), self._row(entry, of, is_dated=False)
            change = entry.first.change
            is_moved = change is None or change.way in {Way.NEW, Way.WORSE, Way.CLOSE}
            hazard = gravest_first(entry) if is_hazard(entry.first) and change is None else _NO_HAZARD
            order = (*_gravity(entry), hazard, room.file, number)
            if is_moved:
                self._listed.add(order, f"- {row}")
            else:
                self._old.add(order, f"- {plain}")
            is_note = entry.first.level is None or entry.first.level.rank == 1
            if not (is_moved or id(entry.first) in gating) or (change is None and is_note):
                continue
            rule = telling.rule(entry.first)
            caution = rule.caution if rule is not None else ""
            bases = "; ".join(basis_words(basis) for basis in rule.bases) if rule is not None else ""
            key: tuple[Any, ...] = (not is_moved, *order)
            self._first.add(key, (f"{row}{_cure(entry, telling)}", caution, f"{entry.first.rule}: {bases}"))
            self._rows.add(key, (f"- {row}", f"- {plain}"))
        for verdict in sorted(room.verdicts, key=place_key):
            if verdict.waived is not None:
                text = f"{telling.whole(verdict)} {acceptance(verdict.waived)}"
                self._waived.add((room.file, place_key(verdict)), f"- {of}{_cut(data(text))} ({data(verdict.rule)})")
        self._unknown(room, telling, name, of)
        return points

    def _unknown(self, room: RoomReview, telling: Telling, name: str, of: str) -> None:
        """Take in what is not known, what is assumed, and what no rule looks at."""
        alike: dict[str, list[Lack]] = {}
        for lack in lacks(room.verdicts):
            alike.setdefault(few([wanted_words(wanted) for wanted in lack.wanted.values()]), []).append(lack)
        for keys, those in alike.items():
            waiting = sum(lack.waiting for lack in those)
            waits = count_of(waiting, "check waits", "checks wait")
            row = f"- {of}{data(telling.names.several(lack.subject for lack in those))}: {data(keys)} ({waits})"
            self._lacks.add((those[0].hazard, -waiting, room.file, those[0].subject), _cut(row))
        for verdict in room.verdicts:
            if verdict.figure is not None and verdict.kind is not Kind.NOT_APPLICABLE:
                for assumed in verdict.figure.assumes:
                    self._assumed.setdefault(telling.units.assumption(assumed), {})[name] = None
        if room.worked:
            self._worked.append(f"- {of}{_cut(data(worked_out(room.worked, telling.units)))}")
        if room.unjudged:
            words = (f"{one.words}: {key_words(one.key)}" for one in room.unjudged)
            keys = few([word.removeprefix(f"{room.code}: ") for word in words], MOST_KEYS)
            self._unjudged.append(f"- {of}{_cut(data(keys))}")

    @staticmethod
    def _row(entry: Entry, of: str, *, is_dated: bool = True) -> str:
        """Return one line of the comment; a dated one says whether it is new."""
        verdict = entry.first
        way = verdict.change.way if verdict.change is not None else None
        since = "" if verdict.change is None or not is_dated else TITLES[way] if way is not None else AS_BEFORE
        words = ", ".join(word for word in (verdict.level.value if verdict.level is not None else "", since) if word)
        level = f"**{words}** " if words else ""
        where = code(f"{from_top(verdict.place.file)}:{verdict.place.line}")
        rules = ", ".join(dict.fromkeys(one.rule for one in (*entry.verdicts, *entry.beside)))
        return f"{level}{of}{_cut(data(entry.text))} ({data(rules)}, {where})"

    def verdict(self) -> Iterator[str]:
        """Yield the verdict and its reason."""
        review, digest = self.review, self.digest
        if review.problems or review.troubles:
            yield "**Not complete: this review says nothing final.**"
        elif not digest.rooms:
            yield "**No room was reviewed.**"
        elif digest.stopped:
            rows = self._stopped.items()
            more = f"; and {digest.stopped - len(rows)} more rooms" if digest.stopped > len(rows) else ""
            yield f"**Held back:** {'; '.join(rows)}{more}."
        else:
            rooms = self._only or count_of(digest.rooms, "room", "rooms")
            yield f"**Nothing holds this back** ({rooms})."
        if review.against:
            ways = ", ".join(f"{digest.ways[way.value]} {TITLES[way]}" for way in TITLES if digest.ways[way.value])
            yield f"Compared with {data(review.against)}: {ways or 'nothing changed'}."
        yield ""

    def house(self) -> Iterator[str]:
        """Yield what was decided otherwise, before anything that the design did."""
        lines = house_lines(self.review)
        yield from _list(
            "Decisions of the house that changed", [f"- {data(line)}" for line in lines[:MOST_NAMED]], len(lines)
        )
        yield from _list("Because of that, not of the design", self._by_house.items(), self._by_house.total)
        yield from _list("Waivers that changed", self._waivers.items(), self._waivers.total)
        gone = [f"- {data(departed_words(room))}" for room in self.review.departed]
        yield from _list("Rooms that are gone", gone[:MOST_NAMED], len(gone))
        sheets = [
            f"- {sheet}{'' if self._only else f': {few(rooms, MOST_NAMED)}'}" for sheet, rooms in self._sheets.items()
        ]
        yield from _list("Product sheets that changed", sheets[:MOST_NAMED], len(sheets))
        yield from _list("Rooms under another name", self._renamed[:MOST_NAMED], len(self._renamed))

    def first(self) -> Iterator[str]:
        """Yield the few things to read first."""
        rows = [f"{number}. {line}" for number, (line, _, _) in enumerate(self._first.items(), 1)]
        where = ", among what is folded below" if self.review.against else ""
        yield from _list("Read first", rows, self._first.total, where)

    def moved(self) -> Iterator[str]:
        """Yield what was cured, what got better, and what nobody can tell any more."""
        for way, title in ((Way.GONE, "Cured"), (Way.BETTER, "Better"), (Way.UNKNOWN, "Newly unknown")):
            yield from _list(title, self._moved[way].items(), self._moved[way].total)
        if not self.review.against:
            yield from _list("To find out next", self._lacks.items()[:MOST_UNKNOWN], self._lacks.total)

    def others(self) -> Iterator[str]:
        """Yield the rooms of which there is nothing to say."""
        if self._passed:
            said = "As before" if self.review.against else "Nothing to put right"
            yield f"{said}: {few(self._passed, MOST_NAMED)}."
            yield ""

    def cautions(self) -> Iterator[str]:
        """Yield the cautions of what is read first, each once."""
        footnotes = Footnotes()
        for _, caution, _ in self._first.items():
            footnotes.of(caution)
        if footnotes.marks:
            yield f"> {' '.join(data(sentence(text)) for text in footnotes.marks)}"
            yield ""

    def loosened(self) -> Iterator[str]:
        """Yield what the houses made looser where people can get hurt, and which of their decisions are over."""
        for _, text in self.digest.loosened(self.wishes.units):
            yield from (f"**Loosened where people can get hurt:** {data(sentence(text))}", "")
        for _, text in self.digest.ended():
            yield from (f"**Over:** {data(sentence(text))}", "")

    def folded(self, room: int) -> Iterator[str]:
        """Yield everything else, folded, as far as there is room."""
        digest = self.digest
        bases = dict.fromkeys(f"- {data(bases)}" for _, _, bases in self._first.items())
        decisions = [
            f"- {data(decision.id)}, by {code(from_top(file))}: "
            f"{data(decided(Decided(decision.low, decision.high, decision.level)))}"
            f"{f': {data(sentence(decision.because))}' if decision.because else ''}"
            for file, decision in digest.decisions()
        ]
        first = {row for rows in self._rows.items() for row in rows}
        moved, old = (_without(rows, first) for rows in (self._listed, self._old))
        # Of a comparison only what is newly unknown was told above.
        shown = 0 if self.review.against else min(MOST_UNKNOWN, self._lacks.total)
        assumed = [
            f"- {data(words)}{'' if self._only else f': {few(list(rooms), MOST_KEYS)}'}"
            for words, rooms in sorted(self._assumed.items())
        ]
        parts = (
            ("What else is new or worse" if self.review.against else WHAT_ELSE, *moved),
            ("As before, not of this change", *old),
            ("Accepted failures", self._waived.items(), self._waived.total),
            ("Not known", self._lacks.items()[shown:], self._lacks.total - shown),
            ("Assumed, because no file says it", assumed, len(assumed)),
            ("Worked out of what the file says", self._worked[:MOST_LACKS], len(self._worked)),
            ("Not looked at by any rule", self._unjudged[:MOST_LACKS], len(self._unjudged)),
            ("What the house decided", decisions[:MOST_NAMED], len(decisions)),
            ("Why: the bases of what is read first", list(bases), len(bases)),
        )
        room -= 300
        for title, rows, total in parts:
            if not rows:
                continue
            head = ["<details>", f"<summary>{title}: {total}</summary>", ""]
            room -= sum(len(line) + 1 for line in head) + 60
            fitting = []
            for row in rows:
                room -= len(row) + 1
                if room < 0:
                    break
                fitting.append(row)
            yield from head
            yield from fitting
            if len(fitting) < total:
                yield f"- {total - len(fitting)} more in the full report."
            yield from ("", "</details>")
        if digest.rooms or not self.review.problems:
            yield ""
            yield f"{count_of(digest.rooms, 'room', 'rooms')}: {tally(digest.counts)}."


def _held(room: RoomReview, name: str, points: int) -> str:
    """Return a room that is held back, and what holds it."""
    rules: dict[str, None] = {}
    gating = sorted(room.gating(), key=lambda verdict: (-_rank(verdict), place_key(verdict)))
    for verdict in gating:
        rules[verdict.rule] = None
    opens = sum(verdict.kind is Kind.OPEN for verdict in gating)
    # A comparison numbers no points; it counts findings, as the text does.
    many = (
        count_of(len(gating) - opens, "finding", "findings") if room.compared else count_of(points, "point", "points")
    )
    parts = [f"{many} at {room.gate} or above"] if len(gating) > opens else []
    parts += [lacking(opens)] if opens else []
    return f"{name}, {' and '.join(parts)} ({data(few(list(rules), 3))})"


def _cure(entry: Entry, telling: Telling) -> str:
    """Return what clears a finding, on lines of their own."""
    remedies = [(each, each.remedy) for each in entry.verdicts if each.remedy is not None]
    alone = len(entry.verdicts) == 1
    return "".join(
        f"<br>→ {'' if alone else f'{data(telling.names.one(remedy.subject))}: '}"
        f"{data(telling.remedy(remedy, each.subject))}"
        for each, remedy in remedies[:MOST_CURES]
    )


def _without(rows: Foremost[str], first: set[str]) -> tuple[list[str], int]:
    """Return the lines that are not among the first, and how many there are of them in all."""
    others = [row for row in rows.items() if row not in first]
    return others, rows.total - len(rows.items()) + len(others)


def _rank(verdict: Verdict) -> int:
    return verdict.level.rank if verdict.level is not None else 0


def _gravity(entry: Entry) -> tuple[int, int]:
    change = entry.first.change
    is_new = change is not None and change.way in {Way.NEW, Way.WORSE}
    return -_rank(entry.first), 0 if is_new else 1


def _cut(text: str) -> str:
    return text if len(text) <= MOST_WORDS else f"{text[:MOST_WORDS].rstrip()} …"


def _incomplete(review: Review) -> Iterator[str]:
    rows = [
        f"- {code(f'{from_top(problem.place.file)}:{problem.place.line}')} {_cut(data(problem.text))}"
        for problem in sorted(review.problems)
    ]
    rows += [f"- {_cut(data(sentence(trouble.text)))}" for trouble in review.troubles]
    rows += [f"- Nothing to check in {code(name)}." for name in review.unmatched]
    yield from _list("What could not be reviewed", rows[:MOST_PROBLEMS], len(rows))


def _list(title: str, rows: Iterable[str], total: int, where: str = "") -> Iterator[str]:
    rows = list(rows)
    if not rows:
        return
    yield f"**{title}**"
    yield ""
    yield from rows
    if total > len(rows):
        yield f"- and {total - len(rows)} more{where}"
    yield ""
