"""What each rule reads is recorded by running it, and the record is kept fresh."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

from rich_rooms import BOOK, BY_ID, EXAMPLES, plain, sheets

from roomlint.review.inputs import kept, recorded
from roomlint.testing import Case, case_modules, room_of

if TYPE_CHECKING:
    import pytest

CASES = Path(__file__).parent.parent / "rules"


def test_every_rule_of_the_book_has_its_record() -> None:
    assert sorted(kept()) == sorted(rule.id for rule in BOOK.rules if rule.package == "roomlint")


def test_what_a_rule_looks_at_stands_in_its_record() -> None:
    data = plain(EXAMPLES / "basement" / "basement.room.yaml")
    found = recorded(BOOK.rules, [lambda: room_of(data, sheets())])
    stale = {rule: sorted(set(keys) - set(kept()[rule])) for rule, keys in found.items() if rule in kept()}
    assert not {rule: keys for rule, keys in stale.items() if keys}, "python -m roomlint.testing inputs"


def test_what_only_some_rooms_have_stands_in_the_record_too(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.syspath_prepend(str(CASES))
    cases = [case for module in case_modules(CASES) for case in module.CASES if isinstance(case, Case)]
    last = {case.rule: case for case in cases if case.kind == "fail"}
    stale = {}
    for rule, case in last.items():
        reads = recorded([BY_ID[rule]], [lambda case=case: room_of(case.room, case.products, case.house, case.today)])
        stale[rule] = sorted(set(reads[rule]) - set(kept()[rule]))
    assert not {rule: keys for rule, keys in stale.items() if keys}, "python -m roomlint.testing inputs"
    assert "circuits[].rcd" in kept()["mains.residual-current"]
