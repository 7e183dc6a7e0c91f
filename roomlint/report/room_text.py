"""One room of the report for people: what can hurt first, then what to put right, what to decide, what to find out."""

from __future__ import annotations

from collections import Counter
from typing import TYPE_CHECKING, Final

from roomlint.report.asking import DRILLING, block, hazard_order, is_hazard, lacks
from roomlint.report.changes import (
    TITLES,
    WAYS,
    is_as_before,
    of_design,
    of_waivers,
)
from roomlint.report.merging import Entry, merged
from roomlint.report.names import key_words
from roomlint.report.rule_pages import basis_words
from roomlint.report.words import acceptance, at, count_of, few, tally
from roomlint.review.verdict import By, Kind, Level, Way
from roomlint.source.say import one_line

if TYPE_CHECKING:
    from collections.abc import Iterator

    from roomlint.report.asking import Lack
    from roomlint.report.page import Footnotes, Page
    from roomlint.report.telling import Telling
    from roomlint.report.wishes import Wishes
    from roomlint.review.review import RoomReview
    from roomlint.review.verdict import Verdict

MOST_DRILLING: Final = 6
MOST_ASKED: Final = 3
"""Elements whose missing keys are written out; the others are counted."""
MOST_PASTED: Final = 7
"""Lines of that."""
MOST_CHANGED: Final = 12
MOST_NAMED: Final = 6
MOST_UNJUDGED: Final = 8
MOST_ASSUMED: Final = 3
MOST_LIGHT: Final = 4
"""Warnings that are told however many errors stand above them."""
MOST_HEAVY: Final = 20
"""Lines up to which warnings are told."""
FOLDED: Final = (Level.NOTE,)
HEADINGS: Final = {Level.ERROR: "Errors", Level.WARNING: "Warnings", Level.NOTE: "Notes"}


class RoomText:
    """One room, written."""

    def __init__(self, room: RoomReview, telling: Telling, page: Page, footnotes: Footnotes, wishes: Wishes) -> None:
        self.room = room
        self.telling = telling
        self.page = page
        self.footnotes = footnotes
        self.wishes = wishes
        self.lacks = lacks(room.verdicts)
        self.is_narrow = wishes.is_narrow

    def write(self, *, stops: bool) -> None:
        """Write the room: what can hurt people first, known and unknown, then what to do, the gravest first."""
        self._head(stops=stops)
        told = self._changes() if self.room.compared else self._before_drilling()
        self._failures(told)
        self._for_a_person(told)
        self._folded(told)
        if self.wishes.verdicts:
            self._everything_else()
        if not self.room.compared or self.wishes.verdicts:
            self._unjudged()
            self._assumed()
            self._next()

    def _head(self, *, stops: bool) -> None:
        room = self.room
        title = one_line(room.title)
        self.page.heading(" · ".join(part for part in (one_line(room.code), title) if part) or one_line(room.file))
        if room.gate is None:
            verdict = "not gated"
        elif stops:
            many = sum(1 for _ in room.gating())
            verdict = f"held back by {count_of(many, 'finding', 'findings')} ({room.gate} and above)"
        else:
            verdict = f"passes the gate ({room.gate})"
        file = room.file.rpartition("/")[2] if self.is_narrow else room.file
        parts = [one_line(room.stage or ""), verdict, one_line(file)]
        if room.was_file:
            parts.append(f"was {one_line(room.was_file)}")
        self.page.line(" · ".join(part for part in parts if part), role="error" if stops else "quiet")

    def _before_drilling(self) -> list[Verdict]:
        """Write what is wrong with load paths and circuits, the worst first, then what is not known of them."""
        found = [verdict for verdict in self.room.verdicts if is_hazard(verdict)]
        unknown: dict[tuple[str, ...], list[Lack]] = {}
        for lack in sorted(self.lacks, key=lambda lack: lack.order):
            if lack.drilling:
                unknown.setdefault(tuple(key_words(key) for key in lack.drilling), []).append(lack)
        if found or unknown:
            self.page.heading("Before you drill or wire", "error")
        for entry in sorted(merged(found, self.telling), key=lambda entry: hazard_order(entry.first)):
            self._item(entry, "")
        for number, (keys, of) in enumerate(unknown.items()):
            if number == MOST_DRILLING:
                self.page.line(f"and {count_of(len(unknown) - number, 'more', 'more')}; --verdicts lists all", 4)
                break
            who = self.telling.names.several(lack.subject for lack in of)
            marks = self._cautions(of)
            self.page.item(f"{who}: not known: {', '.join(dict.fromkeys(keys))} {marks}".rstrip(), "error")
        return found

    def _cautions(self, of: list[Lack]) -> str:
        """Return the marks of the cautions of the rules that want something: of each what its chapter says."""
        rules = (self.telling.rule(verdict) for lack in of for verdict in lack.rules.values())
        return " ".join(dict.fromkeys(mark for rule in rules if rule for mark in self.footnotes.of(rule.caution, 1)))

    def _changes(self) -> list[Verdict]:
        """Write what changed and return it: it is not told again."""
        telling, told = self.telling, []
        lines = list(of_waivers(self.room, telling))
        if lines:
            self.page.heading("Waivers that changed")
            for line in lines:
                self.page.line(line, 2)
        by_house = [(way, entry) for way in WAYS for entry in of_design(self.room, telling, way, By.HOUSE)]
        if by_house:
            self.page.heading("Because of the house's decisions or the rule book, not of the design")
            self._listed([(TITLES[way], entry) for way, entry in by_house])
            told += [verdict for _, entry in by_house for verdict in entry.verdicts]
        for way in WAYS:
            entries = of_design(self.room, telling, way)
            if entries:
                role = "error" if way in {Way.NEW, Way.WORSE} else "heading"
                self.page.heading(TITLES[way].capitalize(), role, is_apart=not told)
                self._listed([("", entry) for entry in entries])
                told += [verdict for entry in entries for verdict in entry.verdicts]
        return told

    def _listed(self, entries: list[tuple[str, Entry]]) -> None:
        for number, (title, entry) in enumerate(entries):
            if number == MOST_CHANGED and not self.wishes.verdicts:
                self.page.line(f"and {len(entries) - number} more; --verdicts lists all", 4)
                break
            level = entry.first.level
            words = " ".join(part for part in (title, f"{level}" if level is not None else "") if part)
            self._item(entry, f" ({words})" if words else "")

    def _failures(self, told: list[Verdict]) -> None:
        """Write what fails, by level and then by element; of a compared room what stops it though it is not new."""
        chosen = list(self.room.gating()) if self.room.compared else list(self.room.verdicts)
        done = {id(verdict) for verdict in told}
        for level, heading in HEADINGS.items():
            if level in FOLDED and not (self.wishes.notes or self.wishes.verdicts):
                continue
            found = [
                verdict
                for verdict in chosen
                if verdict.level is level and verdict.waived is None and id(verdict) not in done
            ]
            if found:
                self.page.heading(f"{heading}, as before" if self.room.compared else heading, level.value)
                self._entries(merged(found, self.telling), level)

    def _entries(self, entries: list[Entry], level: Level | None) -> None:
        """Write lines by element; errors all, of what weighs less as many as a screen bears, hazards before others."""
        shown = sorted(_by_element(entries), key=lambda entry: entry.first.rule.partition(".")[0] not in DRILLING)
        most = (
            len(shown)
            if level is Level.ERROR or self.wishes.verdicts
            else max(MOST_LIGHT, MOST_HEAVY - self.page.number)
        )
        if len(shown) == most + 1:
            most += 1
        for entry in shown[:most]:
            self._item(entry, "")
        if len(shown) > most:
            self.page.line(f"and {len(shown) - most} more (--verdicts lists all)", 4)

    def _item(self, entry: Entry, end: str) -> None:
        rule = self.telling.rule(entry.first)
        fails = rule is not None and entry.first.kind in {Kind.FAIL, Kind.REVIEW}
        # Of what changed the chapter's caution is told; what a rule adds to it stands on its page.
        most = 1 if self.room.compared and not self.wishes.basis else None
        mark = " ".join(self.footnotes.of(rule.caution, most)) if rule is not None and fails else ""
        level = entry.first.level.value if entry.first.level is not None else "review"
        place = entry.first.place
        if self.room.compared:
            # Whoever has just changed the file wants the line.
            end = f"{end} · {f'line {place.line}' if place.file == self.room.file else at(place)}"
        self.page.item(" ".join(part for part in (f"{entry.text}{end}", mark) if part), level)
        if entry.first.kind in {Kind.FAIL, Kind.REVIEW}:
            for line in _actions(entry, self.telling):
                self.page.under(line)
        if self.wishes.basis and rule is not None:
            self.page.line(f"[{rule.id}] {'; '.join(basis_words(basis) for basis in rule.bases)}", 6, "quiet")

    def _for_a_person(self, told: list[Verdict]) -> None:
        done = {id(verdict) for verdict in told}
        found = [verdict for verdict in self.room.verdicts if verdict.kind is Kind.REVIEW and id(verdict) not in done]
        if self.room.compared and not self.wishes.verdicts:
            return
        if found:
            self.page.heading("For a person to decide", "review")
            self._entries(merged(found, self.telling), None)

    def _folded(self, told: list[Verdict]) -> None:
        """Count what is not written out."""
        room, counts = self.room, self.room.counts()
        done = {id(verdict) for verdict in told}
        lines = []
        notes = Counter(
            verdict.rule.partition(".")[0]
            for verdict in room.verdicts
            if verdict.level is Level.NOTE and verdict.waived is None and id(verdict) not in done
        )
        if room.compared:
            before = Counter(
                str(verdict.level or verdict.kind)
                for verdict in room.verdicts
                if is_as_before(verdict) and verdict.waived is None
            )
            words = tally(before, only=("error", "warning", "note", "review", "open"), zeros=False)
            lines.append(f"As before: {words}" if words else "")
        elif notes and not (self.wishes.notes or self.wishes.verdicts):
            chapters = ", ".join(f"{chapter} {count}" for chapter, count in sorted(notes.items()))
            lines.append(f"{count_of(notes.total(), 'note', 'notes')} (--notes): {chapters}")
        waiting = sum(1 for verdict in room.verdicts if verdict.follows is not None)
        if waiting and not room.compared:
            lines.append(f"{count_of(waiting, 'judgement waits', 'judgements wait')} for causes above")
        if counts.get("waived") and not self.wishes.verdicts and not room.compared:
            lines.append(f"{counts['waived']} accepted on record")
        rest = tally(counts, only=("open", "pass", "notApplicable"), zeros=False)
        if not room.compared and rest:
            lines.append(rest if self.wishes.verdicts else f"{rest} (--verdicts)")
        lines = [line for line in lines if line]
        if lines:
            self.page.blank()
            self.page.line(" ".join(f"{line}." for line in lines), role="quiet")

    def _everything_else(self) -> None:
        """List what is otherwise counted."""
        accepted = [verdict for verdict in self.room.verdicts if verdict.waived is not None]
        if accepted:
            self.page.heading("Accepted on record")
            for entry in merged(accepted, self.telling):
                self._item(entry, "")
                if entry.first.waived is not None:
                    self.page.line(acceptance(entry.first.waived), 6)
        for kind, heading in (
            (Kind.OPEN, "Open"),
            (Kind.PASS, "Passed"),
            (Kind.INFORMATIONAL, "Worth knowing"),
            (Kind.NOT_APPLICABLE, "Does not apply"),
        ):
            found = [verdict for verdict in self.room.verdicts if verdict.kind is kind]
            if found:
                self.page.heading(heading)
                for entry in merged(found, self.telling):
                    self._item(entry, "")

    def _unjudged(self) -> None:
        keys: dict[str, list[str]] = {}
        for one in self.room.unjudged:
            keys.setdefault(one_line(one.words), []).append(key_words(one.key))
        if not keys:
            return
        self.page.blank()
        many = len(self.room.unjudged)
        if many <= MOST_UNJUDGED or self.wishes.verdicts:
            told = "; ".join(f"{name}: {', '.join(dict.fromkeys(words))}" for name, words in keys.items())
        else:
            of = "" if self.is_narrow else f" of {few(list(keys), MOST_NAMED)}"
            told = f"{many} keys{of} (--verdicts)"
        self.page.line(f"Not judged by any rule: {told}.")

    def _assumed(self) -> None:
        found: Counter[str] = Counter()
        for verdict in self.room.verdicts:
            if verdict.figure is not None and verdict.kind is not Kind.NOT_APPLICABLE:
                found.update(verdict.figure.assumes)
        if found:
            words = [one_line(words) for words, _ in found.most_common()]
            most = len(words) if self.wishes.verdicts else 1 if self.is_narrow else MOST_ASSUMED
            more = f"; {len(words) - most} more (--verdicts)" if len(words) > most else ""
            self.page.line(f"Assumed: {'; '.join(words[:most])}{more}.")

    def _next(self) -> None:
        if not self.lacks:
            return
        file = self.lacks[0].file
        chosen: list[Lack] = []
        for lack in (lack for lack in self.lacks if lack.file == file):
            if len(chosen) < MOST_ASKED and len(block([*chosen, lack])) <= MOST_PASTED:
                chosen.append(lack)
        chosen = chosen or self.lacks[:1]
        waiting = sum(lack.waiting for lack in chosen)
        self.page.heading("To find out next")
        names = self.telling.names.several(lack.subject for lack in chosen)
        many = count_of(waiting, "judgement waits", "judgements wait")
        where = "the room file" if file == self.room.file else one_line(file)
        self.page.line(f"{many} for {names}; write into {where}:", 2)
        for line in block(chosen):
            self.page.verbatim(line, 4)
        if len(self.lacks) > len(chosen):
            names = few([self.telling.names.one(lack.subject) for lack in self.lacks if lack not in chosen])
            self.page.line(f"then {names}", 2)


def _by_element(entries: list[Entry]) -> list[Entry]:
    """Return the lines of one element together, in the order of the file."""
    order: dict[str, int] = {}
    for entry in entries:
        order.setdefault(entry.who.partition(" at ")[0], len(order))
    return sorted(entries, key=lambda entry: order[entry.who.partition(" at ")[0]])


def _actions(entry: Entry, telling: Telling) -> Iterator[str]:
    """Yield what to do about a line: the remedies, or what to measure again."""
    remedies = [(verdict, verdict.remedy) for verdict in entry.verdicts if verdict.remedy is not None]
    told: dict[str, list[str]] = {}
    for verdict, remedy in remedies:
        told.setdefault(telling.remedy(remedy, verdict.subject), []).append(telling.names.one(remedy.subject))
    for words, names in told.items():
        yield f"{few(list(dict.fromkeys(names)))}: {words}" if len(entry.verdicts) > 1 else words
    rule = telling.rule(entry.first)
    if not remedies and rule is not None and "hint" in rule.says:
        yield one_line(rule.says["hint"])
    agains = dict.fromkeys(
        telling.again(verdict.again)
        for verdict in entry.verdicts
        if verdict.again is not None and verdict.kind is Kind.REVIEW
    )
    yield from [words for words in agains if words][:2]
    if entry.first.unheld is not None:
        yield f"its waiver {telling.unheld(entry.first.unheld)}"
