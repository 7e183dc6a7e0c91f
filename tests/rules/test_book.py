"""Lints the rule book itself."""

from __future__ import annotations

import re

import pytest

from roomlint.review.basis import Grade
from roomlint.review.book import WITHDRAWN, load_book
from roomlint.review.rule import CAUTIOUS, CHAPTERS, HEADINGS
from roomlint.review.verdict import Level

BOOK = load_book()
every_rule = pytest.mark.parametrize("rule", BOOK.rules, ids=lambda rule: rule.id)


def test_book_loads_whole() -> None:
    assert BOOK.troubles == ()


def test_ids_are_unique() -> None:
    assert len(set(BOOK.ids)) == len(BOOK.ids)


@every_rule
def test_id_names_a_chapter_and_was_never_withdrawn(rule) -> None:
    assert rule.chapter in CHAPTERS
    assert re.fullmatch(r"[a-z]+\.[a-z0-9]+(-[a-z0-9]+)*", rule.id)
    assert rule.id not in WITHDRAWN


@every_rule
def test_page_has_a_summary_and_every_heading(rule) -> None:
    page = rule.page
    assert 10 < len(page.summary) <= 200
    assert page.summary.endswith(".")
    assert tuple(page.parts) == HEADINGS
    assert all(len(text) > 10 for text in page.parts.values())


@every_rule
def test_basis_is_given_and_a_memory_never_makes_an_error(rule) -> None:
    assert rule.bases
    if all(basis.grade is Grade.MEMORY for basis in rule.bases):
        assert rule.level is not Level.ERROR
        assert rule.critical_level is not Level.ERROR
        assert rule.limit is None


@every_rule
def test_published_basis_names_document_and_practice_says_what(rule) -> None:
    for basis in rule.bases:
        if basis.grade in {Grade.READ, Grade.SECOND_HAND}:
            assert basis.document
        else:
            assert basis.document or basis.note


@every_rule
def test_cautious_chapters_carry_a_caution_and_nobody_says_safe(rule) -> None:
    if rule.chapter in CAUTIOUS:
        assert len(rule.caution) > 20
    assert not re.search(r"\b(un)?safe\b", f"{rule.docstring} {rule.caution}", flags=re.IGNORECASE)


@every_rule
def test_reads_and_since_are_given(rule) -> None:
    assert rule.reads
    assert re.fullmatch(r"\d+\.\d+\.\d+", rule.since)


@every_rule
def test_windows_of_one_rule_share_their_unit(rule) -> None:
    windows = [window for window in (rule.window, rule.target, rule.limit, rule.critical) if window is not None]
    assert len({window.unit for window in windows}) <= 1
