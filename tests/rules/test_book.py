"""Lints the rule book as a whole, and each built-in rule as a rule of another package is when it is made."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest

from roomlint.review.book import WITHDRAWN, load_book
from roomlint.review.rule import faults

if TYPE_CHECKING:
    from roomlint.review.rule import AnyRule

BOOK = load_book()
every_rule = pytest.mark.parametrize("rule", BOOK.rules, ids=lambda rule: rule.id)


def test_book_loads_whole() -> None:
    assert BOOK.troubles == ()


def test_ids_are_unique() -> None:
    assert len(set(BOOK.ids)) == len(BOOK.ids)


@every_rule
def test_nothing_of_a_rule_breaks_the_protocol(rule: AnyRule) -> None:
    assert list(faults(rule)) == []


@every_rule
def test_id_was_never_withdrawn(rule: AnyRule) -> None:
    assert rule.id not in WITHDRAWN


@pytest.mark.parametrize("withdrawn", WITHDRAWN)
def test_page_of_the_rule_that_took_over_names_the_one_that_was_withdrawn(withdrawn: str) -> None:
    heir = BOOK.get(WITHDRAWN[withdrawn])
    assert heir is not None
    assert f"`{withdrawn}`" in heir.docstring


@every_rule
def test_causes_that_a_rule_names_are_rules_of_the_book(rule: AnyRule) -> None:
    assert set(rule.after) <= set(BOOK.ids)


@every_rule
def test_no_rule_is_its_own_cause_by_whatever_way_round(rule: AnyRule) -> None:
    above, ahead = set(), [rule.id]
    while ahead:
        found = BOOK.get(ahead.pop())
        for cause in found.after if found is not None else ():
            assert cause != rule.id
            if cause not in above:
                above.add(cause)
                ahead.append(cause)


@every_rule
def test_no_two_rules_say_the_same_of_the_same_window(rule: AnyRule) -> None:
    same = [other.id for other in BOOK.rules if other.id != rule.id and other.summary == rule.summary]
    assert same == []
