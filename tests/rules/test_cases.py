"""Every rule of the built-in book holds its cases, has a case of every kind, and is walked to its windows' edges."""

from __future__ import annotations

from pathlib import Path

import pytest

from roomlint.edges import Edge, check_edge
from roomlint.review.book import load_book
from roomlint.testing import Case, Never, case_modules, check_case

HERE = Path(__file__).parent
BOOK = load_book()
KINDS = ("pass", "fail", "open", "notApplicable")


MODULES = tuple(case_modules(HERE))
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


# What the tables must hold is asked of all rules at once: thousands of tests that each look up one word would cost more
# than the cases themselves.


def test_every_rule_has_a_case_of_every_kind() -> None:
    named = {(case.rule, case.kind) for case in CASES} | {(never.rule, never.kind) for never in NEVER if never.because}
    assert {(rule.id, kind) for rule in BOOK.rules for kind in KINDS} - named == set()


def test_every_rule_with_a_window_has_a_figure_worked_out_elsewhere() -> None:
    worked_out = {case.rule for case in CASES if case.figure is not None and case.source}
    assert {rule.id for rule in BOOK.rules if rule.window is not None} - worked_out == set()


def test_every_rule_with_a_window_is_walked_to_its_edges() -> None:
    assert {rule.id for rule in BOOK.rules if rule.window is not None} - {edge.rule for edge in EDGES} == set()


def test_every_case_is_of_a_rule_of_the_book() -> None:
    assert {entry.rule for entry in (*CASES, *NEVER, *EDGES)} <= set(BOOK.ids)
