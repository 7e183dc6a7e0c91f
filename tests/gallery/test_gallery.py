"""Awkward rooms: every verdict expected by hand is the verdict given."""

from __future__ import annotations

from functools import lru_cache
from typing import TYPE_CHECKING

import pytest
from gallery_expected import EXPECTED, Expected
from gallery_rooms import PRODUCTS, Data

from roomlint.review.book import load_book
from roomlint.review.engine import review_room
from roomlint.testing import room_of

if TYPE_CHECKING:
    from roomlint.review.verdict import Verdict

BOOK = load_book()
RULES = {rule.id: rule for rule in BOOK.rules}


def _found(room: Data, rule: str) -> tuple[Verdict, ...]:
    outcome = review_room(_room(id(room)), [RULES[rule]])
    assert not outcome.troubles
    return tuple(outcome.verdicts)


_BY_ID = {id(expected.room): expected.room for expected in EXPECTED}


@lru_cache(maxsize=32)
def _room(which: int):
    return room_of(_BY_ID[which], PRODUCTS)


@pytest.mark.parametrize("expected", EXPECTED, ids=lambda e: f"{e.rule}-{e.subject.rsplit('/', 1)[-1]}-{e.kind}")
def test_verdict_is_the_one_worked_out_by_hand(expected: Expected) -> None:
    found = [v for v in _found(expected.room, expected.rule) if v.subject == expected.subject]
    assert [(v.kind.value, v.level.value if v.level else None) for v in found] == [(expected.kind, expected.level)]
    if expected.figure is not None:
        assert found[0].figure is not None
        assert found[0].figure.value == pytest.approx(expected.figure, abs=2e-3)
