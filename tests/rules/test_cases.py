"""Every rule of the built-in book holds its cases, has a case of every kind, and is walked to its windows' edges."""

from __future__ import annotations

import importlib.util
from pathlib import Path
from typing import TYPE_CHECKING, Any

import pytest

from roomlint.edges import Edge, check_edge
from roomlint.review.book import load_book
from roomlint.testing import Case, Never, check_case

if TYPE_CHECKING:
    from collections.abc import Iterator

    from roomlint.review.rule import AnyRule

HERE = Path(__file__).parent
BOOK = load_book()
KINDS = ("pass", "fail", "open", "notApplicable")


def _modules() -> Iterator[Any]:
    """Load the case modules of all chapters; two chapters may each have a module of one name."""
    for path in sorted(HERE.rglob("cases_*.py")):
        name = "_".join(path.relative_to(HERE).with_suffix("").parts)
        spec = importlib.util.spec_from_file_location(name, path)
        assert spec is not None
        assert spec.loader is not None
        module = importlib.util.module_from_spec(spec)
        spec.loader.exec_module(module)
        yield module


MODULES = tuple(_modules())
EVERYTHING: list[Case | Never] = [entry for module in MODULES for entry in module.CASES]
CASES = [entry for entry in EVERYTHING if isinstance(entry, Case)]
NEVER = [entry for entry in EVERYTHING if isinstance(entry, Never)]
EDGES: list[Edge] = [edge for module in MODULES for edge in getattr(module, "EDGES", ())]


@pytest.mark.parametrize("case", CASES, ids=str)
def test_case_holds(case: Case) -> None:
    check_case(case, BOOK.rules)


@pytest.mark.parametrize("edge", EDGES, ids=str)
def test_verdict_changes_at_each_edge_within_the_printed_digit(edge: Edge) -> None:
    check_edge(edge, BOOK.rules)


@pytest.mark.parametrize("kind", KINDS)
@pytest.mark.parametrize("rule", BOOK.rules, ids=lambda rule: rule.id)
def test_rule_has_a_case_of_the_kind(rule: AnyRule, kind: str) -> None:
    named = {(case.rule, case.kind) for case in CASES} | {(never.rule, never.kind) for never in NEVER if never.because}
    assert (rule.id, kind) in named


@pytest.mark.parametrize("rule", [rule for rule in BOOK.rules if rule.window is not None], ids=lambda rule: rule.id)
def test_rule_with_a_window_has_a_figure_worked_out_elsewhere(rule: AnyRule) -> None:
    assert any(case.rule == rule.id and case.figure is not None and case.source for case in CASES)


@pytest.mark.parametrize("rule", [rule for rule in BOOK.rules if rule.window is not None], ids=lambda rule: rule.id)
def test_rule_with_a_window_is_walked_to_its_edges(rule: AnyRule) -> None:
    assert any(edge.rule == rule.id for edge in EDGES)


@pytest.mark.parametrize("entry", [*CASES, *EDGES], ids=str)
def test_case_is_of_a_rule_of_the_book(entry: Case | Edge) -> None:
    assert entry.rule in BOOK.ids
