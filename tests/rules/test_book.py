"""Lints the rule book as a whole, and each built-in rule as a rule of another package is when it is made."""

from __future__ import annotations

from string import Formatter
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
def test_rules_that_one_is_told_in_one_breath_with_are_of_the_book_and_end_with_its_words(rule: AnyRule) -> None:
    assert set(rule.beside) <= set(BOOK.ids)
    assert ("beside" in rule.says) == bool(rule.beside)


BEYOND = frozenset({
    "aim.centre-lobe", "angle.front-height", "angle.screen-pair", "bass.seat-mid-width", "file.delay-and-distance",
    "distance.delay-entered", "distance.entered", "layout.clear-of-openings", "layout.clear-of-solids",
    "layout.departure-needed", "layout.door-swing", "layout.fixtures-clear-of-openings", "layout.fixtures-inside",
    "layout.inside-room", "layout.label-side", "layout.mounted-inside", "layout.over-heads", "layout.sides-swapped",
    "mount.anchor-seat", "mount.fastener-withdrawal", "mount.screw-through", "mount.sheet-reach", "mount.sheet-rows",
})  # fmt: skip
"""Rules whose sentence names its limit in words: their figure is how far beyond it something is, or a share of it."""


@every_rule
def test_a_finding_names_its_figure_and_its_limit(rule: AnyRule) -> None:
    for name, template in rule.says.items():
        if rule.window is not None and name in {"fail", "below", "above", "negative"} and rule.id not in BEYOND:
            fields = {field for _, field, _, _ in Formatter().parse(template) if field}
            assert fields & {"figure", "size"}, name
            assert fields & {"window", "limit", "allowed"}, name


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
