"""What a room's report tells after its points: what is folded and where it shows, and what to find out next."""

from __future__ import annotations

from collections import Counter
from typing import TYPE_CHECKING, Final

from roomlint.report.asking import block
from roomlint.report.derived import MOST, worked_out
from roomlint.report.merging import Entry, merged
from roomlint.report.names import key_words, wanted_words
from roomlint.report.rule_pages import basis_words
from roomlint.report.words import acceptance, count_of
from roomlint.review.verdict import Kind
from roomlint.source.say import one_line

if TYPE_CHECKING:
    from collections.abc import Iterator

    from roomlint.report.asking import Lack
    from roomlint.report.page import Footnotes, Page
    from roomlint.report.telling import Telling
    from roomlint.report.wishes import Wishes
    from roomlint.review.review import RoomReview
    from roomlint.review.verdict import Verdict

MOST_UNJUDGED: Final = 3
"""Keys that no rule looks at, up to which they are named: one of them may be a slip."""
MOST_ASSUMED: Final = 3
"""Assumptions up to which they are written out."""
MOST_PASTED: Final = 5
MOST_PASTED_NARROW: Final = 4
"""Lines to paste that are written out by themselves; --missing writes all."""
OTHERS: Final = (
    (Kind.PASS, "Passed"),
    (Kind.INFORMATIONAL, "Worth knowing"),
    (Kind.NOT_APPLICABLE, "Does not apply"),
)


class Rest:
    """The end of one room's report."""

    def __init__(
        self,
        room: RoomReview,
        telling: Telling,
        page: Page,
        footnotes: Footnotes,
        wishes: Wishes,
        found: list[Lack],
    ) -> None:
        self.room = room
        self.telling = telling
        self.page = page
        self.footnotes = footnotes
        self.wishes = wishes
        self.lacks = found

    def all_verdicts(self) -> None:
        """List what is otherwise counted, under a heading that counts it."""
        accepted = [verdict for verdict in self.room.verdicts if verdict.waived is not None]
        if accepted:
            self.page.heading(f"Accepted on record: {len(accepted)}")
            for entry in merged(accepted, self.telling):
                self._line(entry)
                if entry.first.waived is not None:
                    self.page.line(acceptance(entry.first.waived), 6)
        opens = [verdict for verdict in self.room.verdicts if verdict.kind is Kind.OPEN]
        waits = [verdict for verdict in opens if verdict.follows is not None]
        for heading, found in (
            ("Something is missing", [verdict for verdict in opens if verdict.follows is None]),
            ("Wait for a point above", waits),
            *(
                (heading, [verdict for verdict in self.room.verdicts if verdict.kind is kind])
                for kind, heading in OTHERS
            ),
        ):
            if found:
                self.page.heading(f"{heading}: {len(found)}")
                for entry in merged(found, self.telling):
                    self._line(entry)

    def _of(self, kind: Kind) -> list[Verdict]:
        return [verdict for verdict in self.room.verdicts if verdict.kind is kind]

    def _line(self, entry: Entry) -> None:
        many = len({(verdict.rule, verdict.subject) for verdict in entry.verdicts})
        rules = f" ({entry.rules} rules)" if entry.rules > 1 else ""
        if entry.first.follows is not None and many > 1:
            rules = f" ({many} times)"
        self.page.item(f"{entry.text}{rules}", sign="-")
        self.bases(entry)

    def bases(self, entry: Entry) -> None:
        """Write the rules of a line and what their windows rest on, where that was asked for."""
        if not self.wishes.basis:
            return
        found = {verdict.rule: self.telling.rule(verdict) for verdict in (*entry.verdicts, *entry.beside)}
        for name, rule in found.items():
            if rule is not None:
                self.page.line(f"[{name}] {'; '.join(basis_words(basis) for basis in rule.bases)}", 6, "quiet")

    def folded(self, notes: int, points: int, findings: int, *, tight: bool = False) -> None:
        """Count what is not written out, and name the option that shows it; say what numbers count."""
        self.page.blank()
        assumed = self._assumptions()
        # On a full page what somebody must act on comes before what was worked out.
        worked = 0 if not tight or self.wishes.verdicts else len(self.room.worked)
        told = list(self._folded(notes, len(assumed), worked))
        lines = [f"Folded: {'; '.join(told)}."] if told else []
        if not tight and not self.wishes.is_narrow and not self.wishes.basis:
            if findings > points:
                stand = count_of(points, "point stands", "points stand")
                lines.append(f"The {stand} for {findings} findings of single rules (--basis).")
            elif points:
                lines.append("--basis names rules and sources.")
        if lines:
            self.page.line(" ".join(lines), role="quiet")
        self._unjudged()
        if not worked:
            self._worked()
        if assumed and (self.wishes.verdicts or len(assumed) <= MOST_ASSUMED):
            self.page.line(f"Assumed: {'; '.join(assumed)}.")

    def _folded(self, notes: int, assumed: int, worked: int) -> Iterator[str]:
        room, wishes = self.room, self.wishes
        if notes:
            yield f"{count_of(notes, 'note', 'notes')} (--notes)"
        if wishes.verdicts:
            return
        lacking = sum(1 for verdict in room.verdicts if verdict.kind is Kind.OPEN and verdict.follows is None)
        if lacking:
            option = "" if wishes.missing else " (--missing)"
            yield f"{count_of(lacking, 'check lacks', 'checks lack')} a value{option}"
        counts = room.counts()
        waiting = sum(1 for verdict in room.verdicts if verdict.follows is not None)
        keys = len(room.unjudged)
        rest = [
            count_of(waiting, "waits for one above", "wait for those above") if waiting else "",
            f"{counts['waived']} accepted" if counts.get("waived") else "",
            f"{counts['pass']} passed" if counts.get("pass") else "",
            f"{counts['informational']} worth knowing" if counts.get("informational") else "",
            count_of(counts["notApplicable"], "does not apply", "do not apply") if counts.get("notApplicable") else "",
            f"{count_of(keys, 'key', 'keys')} unjudged" if keys > MOST_UNJUDGED else "",
            count_of(assumed, "assumption", "assumptions") if assumed > MOST_ASSUMED else "",
            f"{count_of(worked, 'value', 'values')} worked out" if worked else "",
        ]
        words = ", ".join(part for part in rest if part)
        if words:
            yield f"{words} (--verdicts)"

    def _unjudged(self) -> None:
        keys: dict[str, list[str]] = {}
        for one in self.room.unjudged:
            keys.setdefault(one_line(one.words), []).append(key_words(one.key))
        if keys and (len(self.room.unjudged) <= MOST_UNJUDGED or self.wishes.verdicts):
            told = "; ".join(f"{name}: {', '.join(dict.fromkeys(words))}" for name, words in keys.items())
            self.page.line(f"Not judged by any rule: {told}.")

    def _assumptions(self) -> list[str]:
        """Return what is assumed, first what most of what fails rests on."""
        found: Counter[str] = Counter()
        for verdict in self.room.verdicts:
            if verdict.figure is not None and verdict.kind is not Kind.NOT_APPLICABLE:
                weight = 1 if verdict.kind is Kind.PASS else 1000
                found.update(dict.fromkeys(verdict.figure.assumes, weight))
        return [one_line(self.telling.units.assumption(words)) for words, _ in found.most_common()]

    def _worked(self) -> None:
        told = worked_out(self.room.worked, self.telling.units, most=None if self.wishes.verdicts else MOST)
        if told:
            self.page.line(f"Worked out: {told}.")

    def not_known(self) -> None:
        """Write what is not known of load paths and circuits, as one line with the cautions."""
        keys: dict[tuple[str, ...], list[Lack]] = {}
        for lack in sorted(self.lacks, key=lambda lack: lack.order):
            if lack.drilling:
                words = dict.fromkeys(wanted_words(wanted) for wanted in lack.drilling.values())
                keys.setdefault(tuple(words), []).append(lack)
        told = []
        for named, of in keys.items():
            who = self.telling.names.several(key for lack in of for key in lack.of)
            marks = " ".join(sorted(self._cautions(of)))
            told.append(f"{who}: {', '.join(named)} {marks}".rstrip())
        if told:
            self.page.item(f"Not known – {'; '.join(told)}", "error", sign="?")

    def _cautions(self, of: list[Lack]) -> list[str]:
        """Return the marks of the cautions of the rules that want something: of each what its chapter says."""
        rules = (self.telling.rule(verdict) for lack in of for verdict in lack.rules.values())
        return list(dict.fromkeys(mark for rule in rules if rule for mark in self.footnotes.of(rule.caution, 1)))

    def next(self) -> None:
        """Write what to find out next as a block to paste: the most hazardous, or with `missing` all of it."""
        whole = self.wishes.missing or self.wishes.verdicts
        files = list(dict.fromkeys(lack.file for lack in self.lacks))
        total = sum(lack.waiting for lack in self.lacks)
        for file in files if whole else files[:1]:
            chosen = self._fitting([lack for lack in self.lacks if lack.file == file], whole=whole)
            if not whole and all(lack.wanted.keys() <= lack.drilling.keys() for lack in chosen):
                checks = count_of(total, "check", "checks")
                self.page.heading(
                    f"To find out next: what is not known above (--missing writes out all, for {checks})."
                )
                return
            waiting = sum(lack.waiting for lack in chosen)
            where = "the room file" if file == self.room.file else one_line(file)
            rest = len(self.lacks) > len(chosen) and not whole
            many = f"{waiting} of {total} checks" if waiting < total else count_of(total, "check", "checks")
            more = " (all: --missing)" if rest else ""
            self.page.heading(f"To find out next, for {many}{more}; write into {where}:")
            for line in block(chosen, self._room_for_a_line):
                self.page.verbatim(line, 4)

    def waiting(self) -> None:
        """List what holds the room back though nothing is missing of it: it waits for another finding."""
        waits = [verdict for verdict in self.room.gating() if verdict.kind is Kind.OPEN and verdict.follows is not None]
        if waits and not self.wishes.verdicts:
            self.page.heading(f"Held back by what waits for another finding: {len(waits)}")
            for entry in merged(waits, self.telling):
                self._line(entry)

    @property
    def _room_for_a_line(self) -> int:
        return self.wishes.width - 4

    def _fitting(self, found: list[Lack], *, whole: bool) -> list[Lack]:
        """Return as many of the elements as fit the lines that there are, the most hazardous first."""
        if whole:
            return found
        most = MOST_PASTED_NARROW if self.wishes.is_narrow else MOST_PASTED
        chosen: list[Lack] = []
        for lack in found:
            if len(block([*chosen, lack], self._room_for_a_line)) <= most:
                chosen.append(lack)
            elif chosen:
                break
        return chosen or found[:1]
