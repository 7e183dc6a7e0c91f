"""A harness for rule packages: rooms as plain data, one rule at a time, no files.

A case says what one rule must find in one room. `check_case` runs it; plain pytest needs no more than

    @pytest.mark.parametrize("case", CASES, ids=str)
    def test_case(case):
        check_case(case, RULES)
"""

from __future__ import annotations

import copy
import importlib.util
import json
import math
import sys
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING, Any

from roomlint.design.house import House
from roomlint.design.read import read_design, read_house, read_product
from roomlint.report.telling import told
from roomlint.review.engine import review_room
from roomlint.review.house_check import check_window_rules
from roomlint.review.room import Room
from roomlint.review.window_rules import window_rules
from roomlint.source.tree import read_tree

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator, Mapping, Sequence
    from datetime import date
    from types import ModuleType

    from roomlint.design.products import Product
    from roomlint.review.rule import AnyRule
    from roomlint.review.verdict import Verdict
    from roomlint.source.node import Node
    from roomlint.source.place import Problem


@dataclass(frozen=True, slots=True)
class Case:
    """What one rule must say of one subject (or, without a subject, of every subject) in one room."""

    rule: str
    kind: str
    room: Mapping[str, Any]
    products: Sequence[Mapping[str, Any]] = ()
    subject: str | None = None
    """The subject's key, such as `loudspeaker/left` or `loudspeaker/left+seat/middle`."""
    level: str | None = None
    figure: float | None = None
    """The figure's value, to one part in a thousand unless `within` says how closely."""
    within: float | None = None
    says: str = ""
    """Something that its sentence must hold; of an open verdict also the key that is missing, as files write it."""
    source: str = ""
    """Where the expected figure was worked out, if not here."""
    house: Mapping[str, Any] | None = None
    today: date | None = None
    """The day that waivers are held against."""

    def __str__(self) -> str:
        """Return a name for the test's list."""
        return f"{self.rule}-{self.kind}-{self.subject or 'all'}"


@dataclass(frozen=True, slots=True)
class Never:
    """A verdict kind that a rule cannot give, and why; it stands in for the case of that kind."""

    rule: str
    kind: str
    because: str


def changed(data: Mapping[str, Any], changes: Mapping[str, Any]) -> dict[str, Any]:
    """Return a copy with dotted paths changed, such as `{"seats.0.ear.height": "1.2 m"}`; None takes a key out.

    A number in a path is an index into a list; the index one past the end appends.
    """
    result: Any = copy.deepcopy(dict(data))
    for path, value in copy.deepcopy(dict(changes)).items():
        *above, last = path.split(".")
        at = result
        for part in above:
            at = at[int(part)] if isinstance(at, list) else at.setdefault(part, {})
        if isinstance(at, list):
            index = int(last)
            if value is None:
                del at[index]
            elif index == len(at):
                at.append(value)
            else:
                at[index] = value
        elif value is None:
            at.pop(last, None)
        else:
            at[last] = value
    changed_data: dict[str, Any] = result
    return changed_data


def room_of(
    data: Mapping[str, Any],
    products: Iterable[Mapping[str, Any]] = (),
    house: Mapping[str, Any] | None = None,
    today: date | None = None,
) -> Room:
    """Return the room of plain data, read exactly as a file would be; problems raise with all their texts."""
    sheets: dict[str, Product] = {}
    for sheet in products:
        file = f"{sheet.get('id', 'sheet')}.product.yaml"
        product, problems = read_product(_tree(sheet, file), file)
        _refuse(problems)
        sheets[product.id] = product
    decided = House()
    if house is not None:
        decided, problems = read_house(_tree(house, "house.yaml"), "house.yaml")
        _refuse(problems or check_window_rules(decided))
    design, problems = read_design(_tree(data, "case.room.yaml"), "case.room.yaml", sheets)
    _refuse(problems)
    return Room(design, decided, today)


def _tree(data: Mapping[str, Any], file: str) -> Node:
    # JSON is YAML, and lists of any depth keep their shape in it.
    node, problems = read_tree(json.dumps(data, indent=1, ensure_ascii=False), file)
    _refuse(problems)
    if node is None:
        raise ValueError("there is nothing in it")
    return node


def _refuse(problems: Iterable[Problem]) -> None:
    told = [f"{problem.place.line}: {problem.text}" for problem in problems]
    if told:
        raise ValueError("\n".join(told))


def _said(verdict: Verdict, rule: AnyRule) -> str:
    """Return a verdict's sentence with the key that it wants, or the rule that it waits for, as the files name them."""
    wanted, follows = verdict.wanted, verdict.follows
    if follows is not None:
        return f"{told(verdict, rule)} [{follows.rule}]"
    return told(verdict, rule) + (f" ({wanted.key} of {wanted.words})" if wanted is not None else "")


def verdicts(rule: AnyRule, room: Room, others: Iterable[AnyRule] = ()) -> list[Verdict]:
    """Return what one rule says of a room; a rule that breaks raises.

    A closing rule judges what the others found: they, and the window rules of the house, run before it.
    Causes run before what follows from them.
    """
    others = tuple(others)
    before = [*others, *window_rules(room.house)] if rule.closing else _causes(rule, others)
    outcome = review_room(room, [*(other for other in before if not other.closing), rule])
    if outcome.troubles:
        raise AssertionError("\n".join(f"{trouble.text}\n{trouble.detail}" for trouble in outcome.troubles))
    return [verdict for verdict in outcome.verdicts if verdict.rule == rule.id]


def _causes(rule: AnyRule, others: tuple[AnyRule, ...]) -> list[AnyRule]:
    """Return the rules that a rule follows from, and those that these follow from."""
    found: dict[str, AnyRule] = {}
    wanted = list(rule.after)
    while wanted:
        cause = next((other for other in others if other.id == wanted[0]), None)
        if cause is not None and cause.id not in found:
            found[cause.id] = cause
            wanted += cause.after
        del wanted[0]
    return list(found.values())


def check_case(case: Case, rules: Iterable[AnyRule], today: date | None = None) -> None:
    """Run a case and raise `AssertionError`, saying what was found instead, when it does not hold."""
    rules = tuple(rules)
    rule = next((rule for rule in rules if rule.id == case.rule), None)
    if rule is None:
        raise AssertionError(f"no rule {case.rule!r}")
    found = verdicts(rule, room_of(case.room, case.products, case.house, case.today or today), rules)
    chosen = [verdict for verdict in found if case.subject in {None, verdict.subject}]
    lines = "\n".join(
        f"  {verdict.kind} {verdict.level or ''} {verdict.subject}: {told(verdict, rule)}" for verdict in found
    )
    if not chosen:
        raise AssertionError(f"{case}: no verdict for that subject; found\n{lines}")
    for verdict in chosen:
        wrong = (
            verdict.kind != case.kind
            or (case.level is not None and verdict.level != case.level)
            or case.says not in _said(verdict, rule)
            or (case.figure is not None and not _close(verdict, case.figure, case.within))
        )
        if wrong:
            raise AssertionError(f"{case}: expected {case.kind} {case.level or ''} {case.figure or ''}; found\n{lines}")


def _close(verdict: Verdict, expected: float, within: float | None) -> bool:
    if verdict.figure is None:
        return False
    relative = 0.0 if within is not None else 1e-3
    return math.isclose(verdict.figure.value, expected, rel_tol=relative, abs_tol=within or 1e-6)


def case_modules(folder: Path) -> Iterator[ModuleType]:
    """Load the modules of cases of all chapters; two chapters may each have a module of one name."""
    for path in sorted(folder.rglob("cases_*.py")):
        spec = importlib.util.spec_from_file_location("_".join(path.relative_to(folder).with_suffix("").parts), path)
        if spec is None or spec.loader is None:
            raise ValueError(f"{path} is no module")
        module = importlib.util.module_from_spec(spec)
        spec.loader.exec_module(module)
        yield module


def main(arguments: Sequence[str]) -> int:
    """Write a new rule's files, `new CHAPTER.RULE`, and say what to do next; returns the exit status."""
    from roomlint.scaffold import scaffold

    match list(arguments):
        case ["new", rule_id]:
            try:
                module, cases = scaffold(rule_id, Path.cwd())
            except ValueError as error:
                sys.stderr.write(f"{error}\n")
                return 2
            sys.stdout.write(f"wrote {module} and {cases}; fill them in, then: pytest tests/rules -k {rule_id}\n")
            return 0
        case ["inputs"]:
            # From the top of a checkout, where the cases are beside the book.
            from roomlint.recording import inputs_text

            sys.path.insert(0, "tests/rules")
            text = inputs_text(Path("example_projects"), Path("tests/rules"))
            Path("rules/inputs.json").write_text(f"{text}\n", encoding="utf-8")
            return 0
        case _:
            sys.stderr.write("usage: python -m roomlint.testing new CHAPTER.RULE | inputs\n")
            return 2


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
