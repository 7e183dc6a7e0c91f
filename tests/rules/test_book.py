"""Lints the rule book as a whole, and each built-in rule as a rule of another package is when it is made."""

from __future__ import annotations

import re
from collections import Counter
from string import Formatter
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


def test_rules_that_one_is_told_in_one_breath_with_are_of_the_book() -> None:
    assert {beside for rule in BOOK.rules for beside in rule.beside} <= set(BOOK.ids)


BEYOND = frozenset({
    "layout.rack-fits", "picture.clear-view", "cable.reaches", "layout.receptacle-beside-openings",
    "layout.panel-clear",
    "access.before-door", "access.walkway-clear", "mains.box-covered", "mains.panel-clear",
    "mount.between-studs", "mount.flush-depth", "mount.stand-plate",
    "angle.bottom-separation", "angle.neighbour-gap", "handover.crossovers-alike", "handover.level-entered",
    "layout.clear-of-roof-windows",
    "angle.front-height", "angle.screen-pair", "bass.seat-mid-width", "file.delay-and-distance",
    "distance.delay-entered", "distance.entered", "layout.clear-of-openings", "layout.clear-of-solids",
    "layout.departure-needed", "layout.door-swing", "layout.fixtures-clear-of-openings", "layout.fixtures-inside",
    "layout.inside-room", "layout.label-side", "layout.mounted-inside", "layout.over-heads", "layout.sides-swapped",
    "mount.anchor-seat", "mount.fastener-withdrawal", "mount.screw-through", "mount.sheet-reach", "mount.sheet-rows",
})  # fmt: skip
"""Rules whose sentence names its limit in words: their figure is how far beyond it something is, or a share of it."""


def test_a_finding_names_its_figure_and_its_limit() -> None:
    told = {
        f"{rule.id} {name}": {field for _, field, _, _ in Formatter().parse(template) if field}
        for rule in BOOK.rules
        if rule.window is not None and rule.id not in BEYOND
        for name, template in rule.says.items()
        if name in {"fail", "below", "above", "negative"}
    }
    assert [one for one, fields in told.items() if not fields & {"figure", "size"}] == []
    assert [one for one, fields in told.items() if not fields & {"window", "limit", "allowed"}] == []


def test_a_length_or_mass_that_a_sentence_writes_out_stands_in_both_units() -> None:
    """Fields are written in the file's own units; what the template itself says is read by everybody."""
    alone = re.compile(r"\d (m|cm|mm|kg)\b(?! \([^)]* (ft|in|lb)\))")
    told = [f"{rule.id} {name}" for rule in BOOK.rules for name, says in rule.says.items() if alone.search(says)]
    assert told == []


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
