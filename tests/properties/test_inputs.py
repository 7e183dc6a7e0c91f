"""What each rule reads is recorded by running it, and the record is kept fresh."""

from __future__ import annotations

from rich_rooms import BOOK, EXAMPLES, plain, sheets

from roomlint.review.inputs import kept, recorded
from roomlint.testing import room_of


def test_every_rule_of_the_book_has_its_record() -> None:
    assert sorted(kept()) == sorted(rule.id for rule in BOOK.rules if rule.package == "roomlint")


def test_what_a_rule_looks_at_stands_in_its_record() -> None:
    data = plain(EXAMPLES / "basement" / "basement.room.yaml")
    found = recorded(BOOK.rules, [lambda: room_of(data, sheets())])
    stale = {rule: sorted(set(keys) - set(kept()[rule])) for rule, keys in found.items() if rule in kept()}
    assert not {rule: keys for rule, keys in stale.items() if keys}, "python -m roomlint.testing inputs"
