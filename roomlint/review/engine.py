"""Runs rules over one room and turns every answer into exactly one verdict a subject."""

from __future__ import annotations

import math
import traceback
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from roomlint.design.base import Missing
from roomlint.measure.figure import Figure, number, two_digits
from roomlint.review.verdict import Against, Kind, Level, Related, Says, Verdict
from roomlint.review.waivers import apply_waivers
from roomlint.review.window import Window, decide

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from roomlint.design.base import Subject
    from roomlint.design.house import Decision
    from roomlint.review.room import Room
    from roomlint.review.rule import Rule
    from roomlint.source.place import Place


LAST = "file"
"""The chapter whose rules judge what the others found."""


@dataclass(frozen=True, slots=True)
class Trouble:
    """A rule, or a rule package, that broke."""

    rule: str
    text: str
    detail: str = ""


def review_room(room: Room, rules: Iterable[Rule]) -> tuple[list[Verdict], list[Trouble]]:
    """Run the rules over one room; a rule that raises is told of, and the others go on.

    Waivers are then held against the failures, and the rules of chapter `file`, which judge the waivers, run last.
    """
    rules = tuple(rules)
    first = [rule for rule in rules if rule.chapter != LAST]
    verdicts, troubles = _run(first, room)
    verdicts, waivings = apply_waivers(verdicts, room.design.waivers, room.today)
    room.ran = frozenset(rule.id for rule in first)
    room.rule_ids = room.rule_ids or tuple(rule.id for rule in rules)
    room.found, room.waivings = tuple(verdicts), tuple(waivings)
    more, more_troubles = _run([rule for rule in rules if rule.chapter == LAST], room)
    return [*verdicts, *more], [*troubles, *more_troubles]


def _run(rules: Iterable[Rule], room: Room) -> tuple[list[Verdict], list[Trouble]]:
    verdicts: list[Verdict] = []
    troubles: list[Trouble] = []
    for rule in rules:
        try:
            verdicts.extend(_verdicts(rule, room))
        except Exception as error:  # noqa: BLE001  whatever a rule raises must not take the run with it
            detail = traceback.format_exc(limit=-3)
            troubles.append(Trouble(rule.id, f"rule {rule.id} broke: {type(error).__name__}: {error}", detail))
    return verdicts, troubles


def _verdicts(rule: Rule, room: Room) -> Iterator[Verdict]:
    decision = room.house.decisions.get(rule.id)
    try:
        subjects = list(rule.each(room))
    except Missing as missing:
        yield _open(rule, room.design, missing)
        return
    except ValueError as error:
        yield _no_figure(rule, room.design, error)
        return
    if not subjects:
        text = "nothing in this room that the rule looks at."
        yield _plain(rule, room.design, Kind.NOT_APPLICABLE, text)
        return
    for subject in subjects:
        try:
            answer = rule.judge(room, subject)
        except Missing as missing:
            yield _open(rule, subject, missing)
            continue
        except ValueError as error:
            yield _no_figure(rule, subject, error)
            continue
        yield _verdict(rule, room, subject, answer, decision)


def _no_figure(rule: Rule, subject: Subject, error: ValueError) -> Verdict:
    """Leave to a person what a figure refused.

    Figures raise `ValueError`, with the reason, where their formula does not hold: a point outside the room, two things
    in one place. That is a matter of the design, not of the rule.
    """
    return _plain(rule, subject, Kind.REVIEW, f"the figure cannot be computed: {str(error).rstrip('.')}.")


def _verdict(
    rule: Rule, room: Room, subject: Subject, answer: Figure | Against | Says, decision: Decision | None
) -> Verdict:
    level = _level(rule, room, decision)
    if isinstance(answer, Says):
        return _said(rule, subject, answer, level, decision)
    against = Against(answer) if isinstance(answer, Figure) else answer
    return _judged(rule, room, subject, against, level, decision)


def _level(rule: Rule, room: Room, decision: Decision | None) -> Level:
    if decision is not None and decision.level is not None:
        return Level(decision.level)
    return rule.critical_level if room.critical and rule.critical_level is not None else rule.level


def _said(rule: Rule, subject: Subject, answer: Says, level: Level, decision: Decision | None) -> Verdict:
    fixed = decision is not None and decision.level is not None
    found = _plain(rule, subject, answer.kind, answer.text, level=level if fixed else (answer.level or level))
    if answer.figure is None and not answer.related and not fixed:
        return found
    related = tuple(Related(other.place, other.words) for other in answer.related)
    changed = ("level",) if fixed and answer.kind is Kind.FAIL else ()
    figure = _bare(answer.figure) if answer.figure is not None else None
    return replace(found, figure=figure, related=related, overridden=changed)


def _bare(figure: Figure) -> Figure:
    """Return the figure without its trail: a verdict must not hold on to the text of its file."""
    return Figure(figure.name, figure.value, figure.unit, figure.u, figure.words, assumes=figure.assumes)


def _judged(
    rule: Rule, room: Room, subject: Subject, answer: Against, level: Level, decision: Decision | None
) -> Verdict:
    figure = answer.figure
    window = answer.window or (rule.critical if room.critical else None) or rule.window
    if window is None:
        raise ValueError(f"{rule.id} answered with a figure but has no window")
    target, limit = answer.target or rule.target, answer.limit or rule.limit
    changed: list[str] = []
    if decision is not None and decision.level is not None:
        changed.append("level")
        limit = None
    elif answer.level is not None:
        level = answer.level
    if decision is not None and decision.sets_window:
        window, target, limit = house_window(decision, window), None, None
        changed.append("window")
    if window.unit != figure.unit:
        raise ValueError(f"{rule.id}: figure in {figure.unit!r} against a window in {window.unit!r}")
    kind, margin = decide(figure, window, guarded=rule.guarded)
    if kind == "fail" and limit is not None and decide(figure, limit, guarded=rule.guarded)[0] == "fail":
        level = Level.ERROR
    if kind == "pass" and target is not None and decide(figure, target, guarded=False)[0] == "fail":
        kind, window, margin, level = "fail", target, target.margin(figure.value), Level.NOTE
    place = answer.place or subject.place_of(rule.at)
    return Verdict(
        rule=rule.id,
        kind=Kind(kind),
        level=level if kind == "fail" else None,
        subject=subject.key,
        words=subject.words,
        message=_message(rule, subject, answer, window, kind, margin),
        place=place,
        # A pass needs no trail of its inputs, and most verdicts pass: looking up their places costs more than judging.
        related=_inputs(figure, place) if kind != "pass" else (),
        figure=_bare(figure),
        window=window,
        margin=margin,
        overridden=tuple(changed),
    )


def house_window(decision: Decision, window: Window) -> Window:
    """Return a rule's window with the edges that a house file sets; an edge it does not name stays."""
    from roomlint.review.units import in_unit  # the quantity parser is needed only where a house file decides

    low = in_unit(decision.low, window.unit) if decision.low is not None else window.low
    high = in_unit(decision.high, window.unit) if decision.high is not None else window.high
    return Window(low, high, window.unit)


def _message(rule: Rule, subject: Subject, answer: Against, window: Window, kind: str, margin: float) -> str:
    figure = answer.figure
    lead = f"{subject.words}: {figure.name} is {figure}"
    distance = f"{number(abs(margin), figure.unit)} {figure.unit}".rstrip()
    if kind == "pass":
        parts = [f"{lead}, {distance} inside the window {window}."]
    elif kind == "review":
        parts = [
            f"{lead}, too close to the edge of the window {window} for its uncertainty.",
            *_measure_again(figure, margin),
        ]
    elif margin >= 0 or abs(margin) < figure.u:
        parts = [f"{lead}; the edge of the window {window} lies inside the uncertainty, which counts as failed here."]
        parts += _measure_again(figure, margin)
    else:
        side = "below" if window.low is not None and figure.value < window.low else "above"
        parts = [f"{lead}, {distance} {side} the window {window}."]
    if answer.says and kind != "pass":
        parts.append(answer.says)
    parts += [f"Assumed: {'; '.join(figure.assumes)}."] if figure.assumes else []
    if kind != "pass":
        parts.append(f"Basis: {'; '.join(str(basis) for basis in rule.bases)}.")
        parts += [rule.caution] if rule.caution else []
    return " ".join(parts)


def _measure_again(figure: Figure, margin: float) -> list[str]:
    """Say which measurement to repeat, and how closely, so that the uncertainty no longer covers the edge."""
    if not figure.shares:
        return []
    top = figure.shares[0]
    rest = figure.u**2 - top.u**2
    where = top.input.at.path if top.input.at is not None else "the largest input"
    if rest < margin**2:
        scale = math.sqrt(margin**2 - rest) / top.u
        return [f"Measure {where} again to within ± {_size(top.input.u * scale, top.input.unit)}."]
    several = [share.input for share in figure.shares if share.u > top.u / 2]
    names = ", ".join(dict.fromkeys(value.at.path for value in several if value.at is not None))
    if margin == 0 or not names:
        return [f"It stands on the edge: no measurement of {names or where} decides it; choose a side."]
    return [f"Measure {names} again to within ± {_size(top.input.u * abs(margin) / figure.u, top.input.unit)}."]


def _size(value: float, unit: str) -> str:
    return f"{two_digits(value * 1000)} mm" if unit == "m" else f"{two_digits(value)} {unit}".rstrip()


def _inputs(figure: Figure, own: Place) -> tuple[Related, ...]:
    """Return the places of the figure's inputs, the finding's own place left out."""
    seen: dict[Place, Related] = {}
    for value in figure.inputs:
        if value.at is not None and value.at.place != own:
            seen.setdefault(value.at.place, Related(value.at.place, value.at.path))
    return tuple(seen.values())


def _open(rule: Rule, subject: Subject, missing: Missing) -> Verdict:
    path = missing.element.path_of(missing.key)
    where = "" if missing.element.place.file == subject.place.file else f" in {missing.element.place.file}"
    found = _plain(rule, subject, Kind.OPEN, f"cannot be decided without {path}{where}.")
    return replace(found, missing=f"{path}{where}", place=missing.element.place if not where else subject.place)


def _plain(rule: Rule, subject: Subject, kind: Kind, text: str, *, level: Level | None = None) -> Verdict:
    message = f"{subject.words}: {text}"
    if kind in {Kind.FAIL, Kind.REVIEW}:
        message += f" Basis: {'; '.join(str(basis) for basis in rule.bases)}."
        message += f" {rule.caution}" if rule.caution else ""
    return Verdict(
        rule=rule.id,
        kind=kind,
        level=level if kind is Kind.FAIL else None,
        subject=subject.key,
        words=subject.words,
        message=message,
        place=subject.place_of(rule.at),
    )
