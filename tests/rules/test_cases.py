"""Every rule of the built-in book holds its cases, and has a case of every kind."""

from __future__ import annotations

import importlib.util
from pathlib import Path
from typing import TYPE_CHECKING

import pytest

from roomlint.review.book import load_book
from roomlint.testing import Case, Never, check_case

if TYPE_CHECKING:
    from collections.abc import Iterator

BOOK = load_book()
KINDS = ("pass", "fail", "open", "notApplicable")


def _modules() -> Iterator[object]:
    for path in sorted(Path(__file__).parent.glob("cases_*.py")):
        spec = importlib.util.spec_from_file_location(path.stem, path)
        assert spec is not None
        assert spec.loader is not None
        module = importlib.util.module_from_spec(spec)
        spec.loader.exec_module(module)
        yield module


EVERYTHING = [entry for module in _modules() for entry in module.CASES]  # type: ignore[attr-defined]
CASES = [entry for entry in EVERYTHING if isinstance(entry, Case)]
NEVER = [entry for entry in EVERYTHING if isinstance(entry, Never)]


@pytest.mark.parametrize("case", CASES, ids=str)
def test_case_holds(case: Case) -> None:
    check_case(case, BOOK.rules)


@pytest.mark.parametrize("kind", KINDS)
@pytest.mark.parametrize("rule", BOOK.rules, ids=lambda rule: rule.id)
def test_rule_has_a_case_of_the_kind(rule, kind: str) -> None:
    named = {(case.rule, case.kind) for case in CASES} | {(never.rule, never.kind) for never in NEVER if never.because}
    assert (rule.id, kind) in named


@pytest.mark.parametrize("rule", [rule for rule in BOOK.rules if rule.window is not None], ids=lambda rule: rule.id)
def test_rule_with_a_window_has_a_figure_worked_out_elsewhere(rule) -> None:
    assert any(case.rule == rule.id and case.figure is not None and case.source for case in CASES)


@pytest.mark.parametrize("case", CASES, ids=str)
def test_case_is_of_a_rule_of_the_book(case: Case) -> None:
    assert case.rule in BOOK.ids
