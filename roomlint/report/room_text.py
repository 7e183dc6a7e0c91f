"""One room of the report for people: what can hurt first, then what to put right, what to decide, what to find out."""

from __future__ import annotations

from collections import Counter
from typing import TYPE_CHECKING, Final

from roomlint.report.asking import DRILLING, is_hazard, lacks
from roomlint.report.changes import (
    TITLES,
    WAYS,
    is_as_before,
    of_design,
    of_waivers,
)
from roomlint.report.merging import Entry, merged
from roomlint.report.points import again_of, by_element, other_actions, points_of
from roomlint.report.rest_text import Rest
from roomlint.report.words import at, count_of, lacking, tally
from roomlint.review.verdict import By, Kind, Level, Way
from roomlint.source.say import one_line

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping

    from roomlint.report.page import Footnotes, Page
    from roomlint.report.points import Point
    from roomlint.report.telling import Telling
    from roomlint.report.wishes import Wishes
    from roomlint.review.review import RoomReview
    from roomlint.review.rule import AnyRule
    from roomlint.review.verdict import Verdict

MOST_CHANGED: Final = 12
FEW: Final = 3
"""Warnings that a page lists before it writes out what to find out next."""
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
        self._lacks = lacks(room.verdicts)
        self.is_tight = False
        """Whether the page is full, so that what is missing is counted only."""
        self.points: list[Point] = [] if room.compared else points_of(room, telling)

    @property
    def _rest(self) -> Rest:
        return Rest(self.room, self.telling, self.page, self.footnotes, self.wishes, self._lacks)

    def write(self, *, stops: bool) -> None:
        """Write the room: what can hurt people first, known and unknown, then what to do, the gravest first."""
        self._head(stops=stops)
        if self.room.compared:
            told = self._changes()
            self._as_before(told)
            self._counted()
            if self.wishes.verdicts:
                self._rest.all_verdicts()
            return
        hazards = [point for point in self.points if point.hazard]
        if hazards or self._hazardous or any(lack.drilling for lack in self._lacks):
            self.page.heading("Before you drill or wire", "error")
        self._listed_points(hazards)
        self._reviews(self._hazardous)
        self._rest.not_known()
        others = [point for point in self.points if not point.hazard]
        for level, heading in HEADINGS.items():
            found = [point for point in others if point.level is level]
            if level is Level.ERROR or (found and self._shows_all):
                self._section(heading, found)
            elif level is Level.WARNING:
                # The gravest warnings come before a block to fill in.
                self.is_tight = self._lines_left() < self._height(found[:FEW])
                self._warnings(found)
        self._end()

    def counts(self) -> Mapping[str, int]:
        """Return how many there are of each kind, failures as the points that they are told as."""
        counts = dict(self.room.counts())
        if not self.room.compared:
            points = Counter(str(point.level) for point in self.points)
            counts |= {level.value: points[level.value] for level in Level}
            reviews = [verdict for verdict in self.room.verdicts if verdict.kind is Kind.REVIEW]
            counts["review"] = len(merged(reviews, self.telling))
        return counts

    @property
    def _hazardous(self) -> list[Verdict]:
        """What a person must decide of load paths and circuits."""
        return [verdict for verdict in self.room.verdicts if verdict.kind is Kind.REVIEW and is_hazard(verdict)]

    @property
    def _shows_all(self) -> bool:
        return self.wishes.notes or self.wishes.verdicts

    def _section(self, heading: str, points: list[Point]) -> None:
        if points:
            self.page.heading(heading, points[0].level.value)
            self._listed_points(points)

    def _listed_points(self, points: list[Point]) -> None:
        for point in points:
            seen = f" (see {' and '.join(map(str, point.seen))})" if point.seen else ""
            rules = self._rules(point.entry)
            marks = " ".join(dict.fromkeys(mark for rule in rules for mark in self._marks(rule)))
            self.page.number = point.number - 1
            self.page.item(" ".join(part for part in (f"{point.entry.text}{seen}", marks) if part), point.level.value)
            for line in point.actions:
                self.page.under(line)
            self._rest.bases(point.entry)

    def _rules(self, entry: Entry) -> list[AnyRule]:
        found = {verdict.rule: self.telling.rule(verdict) for verdict in (*entry.verdicts, *entry.beside)}
        return [rule for rule in found.values() if rule is not None]

    def _marks(self, rule: AnyRule) -> list[str]:
        """Return the marks of a rule's cautions: what its chapter says, the rule's own where all is asked for."""
        whole = self.wishes.basis or self.wishes.verdicts
        return self.footnotes.of(rule.caution, None if whole else 1)

    def _warnings(self, points: list[Point]) -> None:
        """Write as many warnings as the page has room for, the first where nothing is graver, and count the others."""
        if not points:
            return
        left, shown = self._lines_left(), 0
        least = 0 if self.points[0].level is Level.ERROR else FEW if self.wishes.is_narrow else 1
        trial, page, footnotes = self.page.trial(), self.page, self.footnotes
        self.page, self.footnotes = trial, footnotes.trial()
        trial.heading(_warned(points, 1), "warning")
        for number, point in enumerate(points, start=1):
            self._listed_points([point])
            if trial.height > left and number > least:
                break
            shown = number
        self.page, self.footnotes = page, footnotes
        self._section(_warned(points, shown), points[:shown])
        if not shown:
            self.page.heading(_warned(points, 0), "warning")

    def _height(self, points: list[Point]) -> int:
        """Return how many lines points take under a heading."""
        page, footnotes = self.page, self.footnotes
        self.page, self.footnotes = page.trial(), footnotes.trial()
        self._section("Warnings", points)
        height = self.page.height
        self.page, self.footnotes = page, footnotes
        return height

    def _lines_left(self) -> int:
        """Return how many lines of a page are left for warnings, once all else is written."""
        page, footnotes = self.page, self.footnotes
        self.page, self.footnotes = page.trial(), footnotes.trial()
        self._end()
        foot = self.page.trial()
        foot.blank(is_apart=not self.is_tight)
        for text, mark in self.footnotes.marks.items():
            foot.marked(mark, text)
        taken = page.height + self.page.height + foot.height
        self.page, self.footnotes = page, footnotes
        return self.wishes.page - taken

    def _end(self) -> None:
        self._for_a_person([] if self.room.compared else self._hazardous)
        folded = [] if self._shows_all else [point for point in self.points if point.level is Level.NOTE]
        if self.wishes.verdicts:
            self._rest.all_verdicts()
        findings = sum(point.findings for point in self.points)
        # On a full page the checks that lack a value are counted among what is folded, with the option that shows them.
        self._rest.folded(len(folded), len(self.points), findings, tight=self.is_tight)
        if not self.is_tight or self.wishes.missing or self.wishes.verdicts:
            self._rest.next()
        if self.wishes.missing:
            self._rest.waiting()

    def _head(self, *, stops: bool) -> None:
        room = self.room
        title = one_line(room.title)
        self.page.heading(" · ".join(part for part in (one_line(room.code), title) if part) or one_line(room.file))
        if room.compared:
            many = sum(1 for _ in room.gating())
            held = f"held back by {count_of(many, 'finding', 'findings')} ({room.gate} and above)"
        else:
            held = f"held back by {self._held()}"
        if stops:
            verdict = held
        else:
            verdict = "not gated" if room.gate is None else f"passes the gate ({room.gate})"
            below = self._counted_points(self.points, Level.ERROR, Level.WARNING)
            verdict += f": {below}" if below and not room.compared else ""
        file = room.file.rpartition("/")[2] if self.wishes.is_narrow else room.file
        parts = [one_line(room.stage or ""), verdict, one_line(file)]
        if room.was_file:
            parts.append(f"was {one_line(room.was_file)}")
        if room.sheets_changed:
            parts.append(f"sheets that changed: {one_line(', '.join(room.sheets_changed))}")
        line = " · ".join(part for part in parts if part)
        if len(line) > self.wishes.width:
            line = line.replace(one_line(room.file), one_line(room.file.rpartition("/")[2]))
        self.page.line(line, role="error" if stops else "quiet")

    def _held(self) -> str:
        """Return what stops the room as it can be counted below: the first points, and what is open where it counts."""
        gate = self.room.gate
        grave = [point for point in self.points if gate is not None and point.level.rank >= gate.rank]
        counted = self._counted_points(grave, *Level)
        opens = sum(1 for verdict in self.room.gating() if verdict.kind is Kind.OPEN)
        parts = []
        if grave:
            span = f", 1 to {len(grave)}" if len(grave) > 1 else ""
            parts.append(f"{count_of(len(grave), 'point', 'points')}{span}: {counted}")
        if opens:
            parts.append(lacking(opens))
        return " and ".join(parts)

    @staticmethod
    def _counted_points(points: list[Point], *levels: Level) -> str:
        """Return the points of some levels, by level."""
        counts = Counter(str(point.level) for point in points)
        return tally(counts, only=tuple(level.value for level in levels), zeros=False)

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

    def _listed(self, entries: list[tuple[str, Entry]], *, with_level: bool = True) -> None:
        for number, (title, entry) in enumerate(entries):
            if number == MOST_CHANGED and not self.wishes.verdicts:
                self.page.line(f"and {len(entries) - number} more; --verdicts lists all", 4)
                break
            level = entry.first.level
            words = " ".join(part for part in (title, f"{level}" if level is not None and with_level else "") if part)
            self._item(entry, f" ({words})" if words else "")

    def _as_before(self, told: list[Verdict]) -> None:
        """Write what stops a compared room though it is not new, by level and then by element."""
        done = {id(verdict) for verdict in told}
        for level, heading in HEADINGS.items():
            if level in FOLDED and not self._shows_all:
                continue
            found = [
                verdict
                for verdict in self.room.gating()
                if verdict.level is level and verdict.waived is None and id(verdict) not in done
            ]
            if found:
                self.page.heading(f"{heading}, as before", level.value)
                entries = by_element(merged(found, self.telling))
                entries.sort(key=lambda entry: entry.first.rule.partition(".")[0] not in DRILLING)
                self._listed([("", entry) for entry in entries], with_level=False)
        if self.wishes.verdicts:
            self._for_a_person(told)

    def _item(self, entry: Entry, end: str) -> None:
        change = entry.first.change
        # What is cured needs neither a remedy nor a caution.
        is_over = change is not None and change.way is Way.GONE
        fails = entry.first.kind in {Kind.FAIL, Kind.REVIEW} and not is_over
        marks = dict.fromkeys(mark for rule in self._rules(entry) for mark in self._marks(rule)) if fails else {}
        level = entry.first.level.value if entry.first.level is not None else "review"
        place = entry.first.place
        if self.room.compared:
            # Whoever has just changed the file wants the line.
            end = f"{end} · {f'line {place.line}' if place.file == self.room.file else at(place)}"
        sign = "" if self.room.compared else "?"
        self.page.item(" ".join(part for part in (f"{entry.text}{end}", *marks) if part), level, sign=sign)
        if fails:
            for line in _actions(entry, self.telling):
                self.page.under(line)
        self._rest.bases(entry)

    def _for_a_person(self, told: list[Verdict]) -> None:
        done = {id(verdict) for verdict in told}
        found = [verdict for verdict in self.room.verdicts if verdict.kind is Kind.REVIEW and id(verdict) not in done]
        if found:
            self.page.heading("For a person to decide", "review")
            self._reviews(found)

    def _reviews(self, found: list[Verdict]) -> None:
        for entry in by_element(merged(found, self.telling)):
            self._item(entry, "")

    def _counted(self) -> None:
        """Count what is not written out of a compared room."""
        before = Counter(
            str(verdict.level or verdict.kind)
            for verdict in self.room.verdicts
            if is_as_before(verdict) and verdict.waived is None
        )
        words = tally(before, only=("error", "warning", "note", "review", "open"), zeros=False)
        if words:
            self.page.blank()
            self.page.line(f"As before: {words}.", role="quiet")


def _warned(points: list[Point], shown: int) -> str:
    """Return the heading of the warnings, of which so many are listed."""
    listed, rest = _span(points[:shown]), _span(points[shown:])
    if not rest:
        return "Warnings"
    more = f"{listed}; {len(points) - shown} more, " if listed else ""
    return f"Warnings: {more}{rest}, not listed here (--notes)"


def _span(points: list[Point]) -> str:
    """Return the numbers of points that follow each other."""
    numbers = list(dict.fromkeys((points[0].number, points[-1].number))) if points else []
    return " to ".join(map(str, numbers))


def _actions(entry: Entry, telling: Telling) -> Iterator[str]:
    """Yield what to do about a line that stands alone: the remedies, or what to measure again."""
    told: dict[str, list[str]] = {}
    subjects = "+".join(verdict.subject for verdict in entry.verdicts)
    for verdict in entry.verdicts:
        if verdict.remedy is not None:
            words = telling.remedy(verdict.remedy, subjects)
            told.setdefault(words, []).append(telling.names.one(verdict.remedy.subject))
    for words, names in told.items():
        yield f"{', '.join(dict.fromkeys(names))}: {words}" if len(entry.verdicts) > 1 else words
    again = again_of(entry, telling) if entry.first.kind is Kind.REVIEW else ""
    if again:
        yield again
    yield from other_actions(entry, telling, has_remedy=bool(told))
