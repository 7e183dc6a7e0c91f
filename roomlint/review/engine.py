"""Runs rules over one room: every rule ends, for every subject, in exactly one verdict."""

from __future__ import annotations

import re
from dataclasses import dataclass, field, replace
from typing import TYPE_CHECKING

from roomlint.design.base import Missing, unsaid
from roomlint.design.element import unread
from roomlint.figures.domain import Refused
from roomlint.measure.figure import Figure, NoNumberError
from roomlint.review.judging import Judged, facts_of, judged_by, level_of, plain_of
from roomlint.review.rule import No
from roomlint.review.verdict import Follows, Found, Kind, Level, Related, Says, Unjudged, Verdict, Wanted
from roomlint.review.waivers import apply_waivers

if TYPE_CHECKING:
    from collections.abc import Iterable

    from roomlint.design.base import Subject
    from roomlint.design.element import Element
    from roomlint.design.house import Decision
    from roomlint.review.room import Room
    from roomlint.review.rule import Answer, AnyRule
    from roomlint.review.waivers import Waiving
    from roomlint.source.node import Node


NO_NUMBER = "no-number"
"""What is said of a guarded figure that came out infinite: a failure until somebody knows better."""


@dataclass(frozen=True, slots=True)
class Trouble:
    """A rule, or a rule package, that broke."""

    rule: str
    text: str
    detail: str = ""


@dataclass(slots=True)
class Outcome:
    """What came of the rules over one room."""

    verdicts: list[Verdict] = field(default_factory=list)
    troubles: list[Trouble] = field(default_factory=list)
    judged: list[Judged] = field(default_factory=list)
    """The figures that were compared with a window, with what remedies are tried against."""
    waivings: list[Waiving] = field(default_factory=list)


def trouble_of(rule: AnyRule, room: Room, error: BaseException, when: str = "") -> Trouble:
    """Return what is told of a rule that raised what no rule may raise; whoever stops the program is not in its way."""
    if isinstance(error, KeyboardInterrupt):
        raise error
    import traceback  # only what breaks needs it

    detail = "".join(traceback.format_exception(error, limit=-3))
    return Trouble(
        rule.id, f"rule {rule.id} broke in {room.design.file}{when}: {type(error).__name__}: {error}", detail
    )


def review_room(room: Room, rules: Iterable[AnyRule]) -> Outcome:
    """Run the rules over one room; a rule that raises is told of, and the others go on.

    Causes run before what follows from them. The closing rules, which judge the waivers, run last.
    """
    rules = tuple(rules)
    outcome = Outcome()
    run = _Run(room, outcome)
    first = in_order([rule for rule in rules if not rule.closing])
    for rule in first:
        run.rule(rule)
    room.ran = frozenset(rule.id for rule in first)
    room.rule_ids = room.rule_ids or tuple(rule.id for rule in rules)
    room.found, room.waivings = tuple(outcome.verdicts), tuple(outcome.waivings)
    for rule in in_order([rule for rule in rules if rule.closing]):
        run.rule(rule)
    return outcome


def in_book_order(verdicts: Iterable[Verdict], rules: Iterable[AnyRule]) -> tuple[Verdict, ...]:
    """Return verdicts in the order of their rules, whatever order these had to run in."""
    order = {rule.id: number for number, rule in enumerate(rules)}
    return tuple(sorted(verdicts, key=lambda verdict: order[verdict.rule]))


def in_order(rules: list[AnyRule]) -> list[AnyRule]:
    """Return the rules so that each comes after those it follows from, otherwise as they came."""
    by_id = {rule.id: rule for rule in rules}
    done: dict[str, AnyRule] = {}

    def add(rule: AnyRule, above: frozenset[str]) -> None:
        for cause in rule.after:
            if cause in by_id and cause not in done and cause not in above:
                add(by_id[cause], above | {cause})
        done.setdefault(rule.id, rule)

    for rule in rules:
        add(rule, frozenset({rule.id}))
    return list(done.values())


class _Run:
    """One run of rules over one room."""

    def __init__(self, room: Room, outcome: Outcome) -> None:
        self.room = room
        self.outcome = outcome
        self.failed: dict[str, dict[tuple[str, str], Verdict]] = {}
        """Rule to where the elements stand that it failed on, and the failure; accepted failures left out."""

    def rule(self, rule: AnyRule) -> None:
        """Run one rule; the verdicts of subjects on which it breaks are told as troubles."""
        try:
            subjects = list(rule.each.find(self.room))
        except Missing as missing:
            self._add(rule, self.room.design, _open(rule, self.room.design, missing, self.room))
            return
        except Refused as refusal:
            self._add(rule, self.room.design, _refused(rule, self.room.design, refusal))
            return
        except BaseException as error:  # noqa: BLE001  whatever a rule raises must not take the run with it
            self._broke(rule, error)
            return
        silent = unsaid(self.room.design, *rule.each.of) if not subjects else None
        if silent is not None:
            self._add(rule, self.room.design, _open(rule, self.room.design, silent, self.room))
        elif not subjects:
            early = rule.each.early(self.room) if rule.each.early is not None else None
            because = early.because if early is not None else f"there is no {rule.each.name} in this room"
            self._add(rule, self.room.design, _plain(rule, self.room.design, Kind.NOT_APPLICABLE, because=because))
        told: dict[tuple[str, str], set[str]] = {}
        for subject in subjects:
            if isinstance(subject, Missing):
                self._lacking(rule, subject, told)
                continue
            try:
                self._add(rule, subject, self._verdict(rule, subject))
            except BaseException as error:  # noqa: BLE001  the same
                self._broke(rule, error)
                if rule.guarded and isinstance(error, NoNumberError):
                    level = level_of(rule, self.room, self.room.house.decisions.get(rule.id))
                    self._add(rule, subject, _plain(rule, subject, Kind.FAIL, said=NO_NUMBER, level=level))

    def _lacking(self, rule: AnyRule, missing: Missing, told: dict[tuple[str, str], set[str]]) -> None:
        """Add what lacks a key, once; what else one element lacks is a subject of its own: it is asked for too."""
        keys = told.setdefault(_where(missing.element), set())
        if missing.key in keys:
            return
        verdict = _open(rule, missing.element, missing, self.room)
        if keys:
            verdict = replace(verdict, subject=f"{verdict.subject}+list/{missing.key}")
        keys.add(missing.key)
        self._add(rule, missing.element, verdict)

    def _broke(self, rule: AnyRule, error: BaseException) -> None:
        self.outcome.troubles.append(trouble_of(rule, self.room, error))

    def _add(self, rule: AnyRule, subject: Subject, verdict: Verdict) -> None:
        if verdict.kind is Kind.FAIL:
            (verdict,), met = apply_waivers([verdict], self.room.design.waivers, self.room.today)
            self.outcome.waivings += met
            if verdict.waived is None:
                self.failed.setdefault(rule.id, {}).update((_where(element), verdict) for element in subject.about)
        self.outcome.verdicts.append(verdict)

    def _verdict(self, rule: AnyRule, subject: Subject) -> Verdict:
        try:
            for applies in rule.when:
                answer = applies(self.room, subject)
                if isinstance(answer, No):
                    denied = self._failed_first(subject, answer.unless)
                    if denied is not None:
                        return _waiting(rule, subject, denied)
                    return _plain(rule, subject, Kind.NOT_APPLICABLE, because=answer.because)
            cause = self._cause(rule, subject)
            if cause is not None:
                self.room.waiting.append((rule, subject))
                return _waiting(rule, subject, cause)
            return self._answered(rule, subject, rule.judge(self.room, subject))
        except Missing as missing:
            return _open(rule, subject, missing, self.room)
        except Refused as refusal:
            return _refused(rule, subject, refusal)

    def _cause(self, rule: AnyRule, subject: Subject) -> Verdict | None:
        """Return the failure that a subject's verdict would follow from; a mere note hides no warning behind it."""
        least = level_of(rule, self.room, self.room.house.decisions.get(rule.id)).rank if rule.after else 0
        return self._failed_first(subject, rule.after, least)

    def _failed_first(self, subject: Subject, causes: tuple[str, ...], least: int = 0) -> Verdict | None:
        for cause in causes:
            failures = self.failed.get(cause)
            if failures:
                for element in subject.about:
                    failure = failures.get(_where(element))
                    if failure is not None and failure.level is not None and failure.level.rank >= least:
                        return failure
        return None

    def _answered(self, rule: AnyRule, subject: Subject, answer: Answer) -> Verdict:
        decision = self.room.house.decisions.get(rule.id)
        level = level_of(rule, self.room, decision)
        if isinstance(answer, Says):
            return self._said(rule, subject, answer, level, decision)
        found = Found(answer) if isinstance(answer, Figure) else answer
        number = len(self.outcome.verdicts)
        verdict, judged = judged_by(rule, self.room, subject, found, level, decision, number)
        self.outcome.judged.append(judged)
        if found.lacks is not None and verdict.kind is not Kind.FAIL:
            return _open(rule, subject, found.lacks, self.room)
        return verdict

    def _said(self, rule: AnyRule, subject: Subject, answer: Says, level: Level, decision: Decision | None) -> Verdict:
        if answer.said not in rule.says:
            raise KeyError(f"{rule.id} has no template {answer.said!r}")
        fixed = decision is not None and decision.level is not None
        level = level if fixed else (answer.level or level)
        found = _plain(rule, subject, answer.kind, said=answer.said, level=level)
        # What is only counted needs no uncertainty: to find one costs more than to judge.
        exact = self.room.exact or answer.kind in {Kind.FAIL, Kind.REVIEW}
        return replace(
            found,
            facts=facts_of(answer.facts, exact=exact),
            figure=plain_of(answer.figure, exact=exact) if answer.figure is not None else None,
            related=tuple(Related(other.place, other.words) for other in answer.related),
            overridden=("level",) if fixed and answer.kind is Kind.FAIL else (),
        )


def _where(element: Element) -> tuple[str, str]:
    """Return where an element stands; two of one name, such as the first receptacle of each circuit, are two."""
    return element.place.file, element.path_of("")


def _waiting(rule: AnyRule, subject: Subject, cause: Verdict) -> Verdict:
    follows = Follows(cause.rule, cause.subject, cause.words)
    return replace(_plain(rule, subject, Kind.OPEN), follows=follows)


def _refused(rule: AnyRule, subject: Subject, refusal: Refused) -> Verdict:
    """Leave to a person what a figure refused: a matter of the design, not of the rule."""
    return _plain(rule, subject, Kind.REVIEW, because=str(refusal).rstrip("."))


def _open(rule: AnyRule, subject: Subject, missing: Missing, room: Room) -> Verdict:
    element = missing.element
    path, file = element.path_of(missing.key), element.place.file
    above = ids_above(room.design.at, path) if file == room.design.file else ()
    wanted = Wanted(element.key, element.words, missing.key, path, file, above)
    own = element.place.file == subject.place.file
    return replace(_plain(rule, subject, Kind.OPEN), wanted=wanted, place=(element if own else subject).place)


def ids_above(root: Node, path: str) -> tuple[str, ...]:
    """Return the names of the list items that a path leads through, from outside in: `id: left`, `pair: [left, right]`.

    Empty where one has none.
    """
    found: list[str] = []
    node: Node | None = root
    for step in re.findall(r"[^.\[\]]+|\[\d+\]", path):
        if node is None:
            break
        if not step.startswith("["):
            node = node.get(step)
        elif isinstance(node.value, list) and int(step[1:-1]) < len(node.value):
            node = node.value[int(step[1:-1])]
            found.append(_name_of(node))
    return tuple(found)


def _name_of(item: Node) -> str:
    """Return the key that an item of a list is found by in its file, with its value; empty where it has none."""
    named = item.get("id")
    if named is not None:
        return f"id: {named.value}"
    pair = item.get("pair")
    if pair is None or not isinstance(pair.value, list):
        return ""
    return f"pair: [{', '.join(str(one.value) for one in pair.value)}]"


def _plain(
    rule: AnyRule, subject: Subject, kind: Kind, *, said: str = "", because: str = "", level: Level | None = None
) -> Verdict:
    return Verdict(
        rule=rule.id,
        kind=kind,
        level=level if kind is Kind.FAIL else None,
        subject=subject.key,
        words=subject.words,
        place=subject.place_of(rule.at),
        said=said,
        because=because,
    )


def unjudged(room: Room) -> tuple[Unjudged, ...]:
    """Return what the room's files hold and nobody looked at; true only once the whole rule book has run."""
    files = (room.design, *room.design.products)
    return tuple(Unjudged(left.element.words, left.key, left.node.place) for file in files for left in unread(file))
