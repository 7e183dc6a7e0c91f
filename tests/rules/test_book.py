"""Lints the rule book as a whole, and each built-in rule as a rule of another package is when it is made."""

from __future__ import annotations

from collections import Counter
from typing import TYPE_CHECKING

import pytest

from roomlint.review.book import WITHDRAWN, load_book
from roomlint.review.rule import faults

if TYPE_CHECKING:
    from roomlint.review.rule import AnyRule

BOOK = load_book()


def test_book_loads_whole() -> None:
    assert BOOK.troubles == ()


def test_ids_are_unique() -> None:
    assert len(set(BOOK.ids)) == len(BOOK.ids)


def test_nothing_of_a_rule_breaks_the_protocol() -> None:
    assert {rule.id: found for rule in BOOK.rules if (found := list(faults(rule)))} == {}


def test_no_id_was_ever_withdrawn() -> None:
    assert set(BOOK.ids) & set(WITHDRAWN) == set()


@pytest.mark.parametrize("withdrawn", WITHDRAWN)
def test_page_of_the_rule_that_took_over_names_the_one_that_was_withdrawn(withdrawn: str) -> None:
    heir = BOOK.get(WITHDRAWN[withdrawn])
    assert heir is not None
    assert f"`{withdrawn}`" in heir.docstring


def test_causes_that_a_rule_names_are_rules_of_the_book() -> None:
    assert {cause for rule in BOOK.rules for cause in rule.after} <= set(BOOK.ids)


def causes(rule: AnyRule) -> set[str]:
    """Return the rules that a rule follows from, and those that these follow from."""
    above, ahead = set(), [rule.id]
    while ahead:
        found = BOOK.get(ahead.pop())
        new = set(found.after if found is not None else ()) - above
        above |= new
        ahead += new
    return above


def test_no_rule_is_its_own_cause_by_whatever_way_round() -> None:
    assert [rule.id for rule in BOOK.rules if rule.id in causes(rule)] == []


def test_no_two_rules_say_the_same_of_the_same_window() -> None:
    by_summary = Counter(rule.summary for rule in BOOK.rules)
    assert [summary for summary, count in by_summary.items() if count > 1] == []
