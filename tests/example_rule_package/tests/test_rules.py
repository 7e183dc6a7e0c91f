"""How a rule package tests its rules: rooms as plain data and plain pytest."""

import pytest
import roomlint_example_rules

from roomlint.review.book import rules_of
from roomlint.testing import Case, changed, check_case

ROOM = {
    "roomlint": 1,
    "room": {"size": {"width": "4 m", "length": "5 m"}},
    "seats": [{"id": "middle", "ear": {"from_left": "2 m", "from_front": "3 m", "height": "1.1 m"}}],
}
RULE = "layout.example-ear-height"
CASES = [
    Case(RULE, "pass", ROOM, figure=1.1, source="the height as it is written"),
    Case(
        RULE,
        "fail",
        changed(ROOM, {"seats.0.ear.height": "1.6 m"}),
        level="note",
        says="1.60 m above the floor; 0.90 to 1.30 m wanted",
    ),
    Case(RULE, "open", changed(ROOM, {"seats.0.ear": None})),
    Case(RULE, "notApplicable", changed(ROOM, {"seats": "none"})),
]


@pytest.mark.parametrize("case", CASES, ids=str)
def test_case(case: Case) -> None:
    check_case(case, rules_of(roomlint_example_rules))
