"""Checks what a house file names: rules, figures, units, windows and the examples beside its own rules."""

from __future__ import annotations

from typing import TYPE_CHECKING

from roomlint.design.reader import nearest
from roomlint.review.review import Loosened
from roomlint.review.rule import CAUTIOUS
from roomlint.review.units import in_unit
from roomlint.review.verdict import Level
from roomlint.review.window import Window
from roomlint.source.dimensions import SYMBOLS
from roomlint.source.place import Problem

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from roomlint.design.house import Decision, House, WindowRule
    from roomlint.measure.names import Named
    from roomlint.review.rule import AnyRule


def check_house(house: House, rules: Iterable[AnyRule]) -> list[Problem]:
    """Return what is wrong with what a house file names; `rules` are all that are installed."""
    known = {rule.id: rule for rule in rules}
    problems = check_window_rules(house, known)
    own = {entry.id for entry in house.window_rules}
    for decision in house.decided:
        problems += _decision(decision, known, own)
    return sorted(problems)


def check_window_rules(house: House, known: Iterable[str] = ()) -> list[Problem]:
    """Return what is wrong with the rules that a house file writes as data; `known` are ids already taken."""
    taken = set(known)
    problems: list[Problem] = []
    for entry in house.window_rules:
        problems += _window_rule(entry, taken)
        taken.add(entry.id)
    return problems


def own_window(rule: AnyRule) -> Window | None:
    """Return the window that a decision of the house replaces: of several, the one that is told first."""
    return next((windows.window for _, windows in rule.rows() if windows is not None), None)


def _decision(decision: Decision, known: dict[str, AnyRule], own: set[str]) -> Iterator[Problem]:
    at = decision.place_of("rule")
    if decision.id in own:
        yield Problem(at, f"{decision.id!r} is a rule of this very file; change it where it stands.")
        return
    rule = known.get(decision.id)
    if rule is None:
        yield Problem(at, f"there is no rule {decision.id!r}; {nearest(decision.id, known)}")
        return
    if not decision.sets_window and decision.level is None:
        yield Problem(at, f"nothing is decided about {decision.id!r}. Give low, high or level.")
        return
    problems = list(_edges(decision, rule)) if decision.sets_window else []
    yield from problems
    lacks = [key for key in ("approved_by", "until") if getattr(decision, key) is None]
    if lacks and not problems and next(_looser(decision, rule), None) is not None:
        text = (
            f"this makes {rule.id} looser, where people can get hurt; that holds only with the name of whoever answers "
            f"for it and a last day. Add {' and '.join(lacks)}."
        )
        yield Problem(at, text)


def _edges(decision: Decision, rule: AnyRule) -> Iterator[Problem]:
    window = own_window(rule)
    key = "low" if decision.low is not None else "high"
    if window is None:
        yield Problem(decision.place_of(key), f"{rule.id} has no window to set; only its level can be decided.")
        return
    edges: dict[str, float] = {}
    for key in ("low", "high"):
        text = getattr(decision, key)
        if text is not None:
            edge = _edge(text, window.unit)
            if isinstance(edge, str):
                yield Problem(
                    decision.place_of(key), f"the window of {rule.id} is in {window.unit or 'no unit'}: {edge}"
                )
            else:
                edges[key] = edge
    if len(edges) == 2 and edges["low"] > edges["high"]:  # noqa: PLR2004  both edges
        yield Problem(decision.place_of("low"), "the low edge is above the high edge.")


def _edge(text: str, unit: str) -> float | str:
    if unit not in SYMBOLS:
        return f"no quantity is read in {unit!r}; its window cannot be set here."
    try:
        return in_unit(text, unit)
    except ValueError as error:
        return str(error)


def _window_rule(entry: WindowRule, taken: set[str]) -> Iterator[Problem]:
    from roomlint.measure.names import NAMED

    if entry.id in taken:
        yield Problem(entry.place, f"the rule id {entry.id!r} is already taken.")
    if entry.basis.get("grade") in {"read", "second-hand"} and not entry.basis.get("document"):
        yield Problem(entry.place_of("basis"), "a basis of this grade names its document.")
    if entry.basis.get("grade") == "memory" and entry.level == Level.ERROR:
        yield Problem(
            entry.place_of("level"), "a value from memory makes no error; lower the level or find the source."
        )
    named = NAMED.get(entry.figure)
    if named is None:
        yield Problem(entry.place_of("figure"), f"there is no figure {entry.figure!r}; {nearest(entry.figure, NAMED)}")
        return
    yield from _selector(entry, named)
    edges = {key: _edge(text, named.unit) for key in ("low", "high") if (text := getattr(entry, key)) is not None}
    wrong = {key: edge for key, edge in edges.items() if isinstance(edge, str)}
    for key, said in wrong.items():
        yield Problem(entry.place_of(key), f"the figure {named.name} is in {named.unit or 'no unit'}: {said}")
    if wrong:
        return
    try:
        window = Window(_number(edges.get("low")), _number(edges.get("high")), named.unit)
    except ValueError as error:
        yield Problem(entry.place_of("low"), f"{error}.")
        return
    yield from _examples(entry, window)


def _number(edge: float | str | None) -> float | None:
    return None if edge is None or isinstance(edge, str) else edge


def _selector(entry: WindowRule, named: Named) -> Iterator[Problem]:
    given = [key for key in ("loudspeakers", "subwoofers", "seats") if entry.each.get(key)]
    fits = {*named.of, *(("seats",) if named.heard else ())}
    for key in given:
        if key not in fits:
            text = f"the figure {named.name} is not of {key}; it takes {' and '.join(sorted(fits))}."
            yield Problem(entry.place_of(f"each.{key}"), text)
    if not set(given) & set(named.of):
        yield Problem(entry.place_of("each"), f"nothing is chosen; name {' or '.join(named.of)}.")


def _examples(entry: WindowRule, window: Window) -> Iterator[Problem]:
    nodes = entry.at.get("examples")
    for index, example in enumerate(entry.examples):
        node = nodes.value[index] if nodes is not None else entry.at
        value = _edge(str(example["value"]), window.unit)
        if isinstance(value, str):
            yield Problem(node.place, f"the example does not fit the figure: {value}")
            continue
        said = "pass" if window.margin(value) >= 0 else "fail"
        if said != example["verdict"]:
            text = f"of {example['value']} the rule says {said}, and the example expects {example['verdict']}."
            yield Problem(node.place, text)


def check_required(
    house: House, stage: str | None, rules: Iterable[AnyRule], chosen: Iterable[AnyRule]
) -> Iterator[Problem]:
    """Yield a problem for every chapter that the stage requires and that a run leaves out, whole or in part."""
    required = house.required.get(stage or "", ())
    if not required or house.at is None:
        return
    run = {rule.id for rule in chosen}
    place = house.at.value["required_chapters"].value[stage].place
    for chapter in required:
        ids = [rule.id for rule in rules if rule.chapter == chapter]
        left = [rule_id for rule_id in ids if rule_id not in run]
        if not ids:
            yield Problem(place, f"stage {stage} requires chapter {chapter}, and no installed rule belongs to it.")
        elif left:
            text = f"stage {stage} requires chapter {chapter}, and this run leaves out {', '.join(left[:3])}"
            yield Problem(place, f"{text}{' ...' if len(left) > 3 else ''}.")  # noqa: PLR2004  enough to see which


def loosened(house: House, rules: Iterable[AnyRule]) -> tuple[Loosened, ...]:
    """Return every rule of a chapter where people can get hurt that the house made looser."""
    return tuple(
        Loosened(
            rule.id,
            house.file,
            was,
            now,
            decision.place_of("rule"),
            decision.because,
            decision.approved_by or "",
            decision.until.isoformat() if decision.until is not None else "",
        )
        for rule in rules
        if (decision := house.decisions.get(rule.id)) is not None
        for was, now in _looser(decision, rule)
    )


def _looser(decision: Decision, rule: AnyRule) -> Iterator[tuple[Level | Window, Level | Window]]:
    """Yield what a decision makes looser of a rule about what can hurt people: its level, its window, before and after.

    A window that follows from the subject may be tighter than any that a house writes, so that setting it is taken for
    making it looser.
    """
    if rule.chapter not in CAUTIOUS:
        return
    rows = [windows for _, windows in rule.rows()]
    own = gravest(rule)
    if decision.level is not None and Level(decision.level).rank < own.rank:
        yield own, Level(decision.level)
    window = own_window(rule)
    if not decision.sets_window or window is None:
        return
    from roomlint.review.judging import house_window

    now = house_window(decision, window)
    known = [windows.window for windows in rows if windows is not None]
    looser = (one for one in known if wider(now.low, one.low, -1) or wider(now.high, one.high, 1))
    was = next(looser, window if len(known) < len(rows) else None)
    if was is not None:
        yield was, now


def gravest(rule: AnyRule) -> Level:
    """Return the level that a rule can give by itself, of several the gravest; a level that a house sets is fixed."""
    levels = [rule.level, rule.critical_level or rule.level]
    levels += [Level.ERROR for _, windows in rule.rows() if windows is not None and windows.limit is not None]
    return max(levels, key=lambda level: level.rank)


def wider(now: float | None, was: float | None, outwards: int) -> bool:
    """Return whether an edge lies farther out than it was."""
    if was is None:
        return False
    return now is None or (now - was) * outwards > 0
