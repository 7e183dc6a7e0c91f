"""What is told to be measured again decides: known as closely as told, no more is asked."""

from __future__ import annotations

import copy
from typing import TYPE_CHECKING, Any

import pytest
from drawn import PRODUCTS, drawn

from roomlint.review.book import load_book
from roomlint.review.engine import review_room
from roomlint.review.verdict import Kind
from roomlint.testing import room_of

if TYPE_CHECKING:
    from roomlint.review.verdict import Verdict

RULES = [rule for rule in load_book().rules if rule.chapter in {"layout", "angle"}]
BATCHES = [range(first, first + 10) for first in range(200, 240, 10)]


def reviewed(data: dict[str, Any]) -> list[Verdict]:
    outcome = review_room(room_of(data, PRODUCTS), RULES)
    assert outcome.troubles == []
    return outcome.verdicts


def known(data: dict[str, Any], verdict: Verdict) -> dict[str, Any]:
    """Return the room with the readings that a verdict names known as closely as it asks."""
    result = copy.deepcopy(data)
    assert verdict.again is not None
    assert verdict.again.within is not None
    for words, key in verdict.again.names:
        shell = result["room"]
        at: Any = (
            shell["ceiling"]
            if words == "ceiling"
            else next(
                (
                    one
                    for one in (*result["seats"], *result["loudspeakers"], *result["subwoofers"], *_shell(result))
                    if one["id"] == words
                ),
                shell,
            )
        )
        *above, last = key.replace("[", ".").replace("]", "").split(".")
        for part in above:
            at = at[int(part)] if isinstance(at, list) else at[part]
        at[last] = f"{at[last]} ± {verdict.again.within.value:.9f} m"
    return result


def _shell(data: dict[str, Any]) -> list[dict[str, Any]]:
    shell = data["room"]
    return [*shell.get("openings", ()), *shell.get("obstacles", ())]


@pytest.mark.parametrize("batch", BATCHES)
def test_what_is_measured_again_as_told_is_decided(batch: range) -> None:
    asked = 0
    for seed in batch:
        data = drawn(seed)
        data["survey"]["tolerance"] = "60 mm"
        for verdict in reviewed(data):
            if verdict.kind is not Kind.REVIEW or verdict.again is None or verdict.again.within is None:
                continue
            asked += 1
            after = next(
                one
                for one in reviewed(known(data, verdict))
                if (one.rule, one.subject) == (verdict.rule, verdict.subject)
            )
            assert after.kind is not Kind.REVIEW, (seed, verdict.rule, verdict.subject, verdict.again)
    assert asked >= 5
