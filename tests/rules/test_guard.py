"""Where people can get hurt a figure that is inside by less than its uncertainty fails, whatever the rule."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

import pytest
from test_cases import EDGES

from roomlint import edges
from roomlint.review.book import load_book
from roomlint.review.verdict import Kind
from roomlint.testing import changed

if TYPE_CHECKING:
    from roomlint.edges import Edge
    from roomlint.review.judging import Judged
    from roomlint.review.rule import AnyRule

GUARDED = [rule for rule in load_book().rules if rule.guarded and rule.window is not None]
BY_ID = {rule.id: rule for rule in GUARDED}
PLAIN = {
    "mount.panel-flame-spread": "an index of a test report has no unit and no uncertainty",
    "mount.panel-smoke": "an index of a test report has no unit and no uncertainty",
}
"""Rules whose value no file can give an uncertainty of, with why."""
WALKED = [edge for edge in EDGES if edge.rule in BY_ID and edge.unit]


def judged_at(edge: Edge, rule: AnyRule, text: str) -> Judged:
    """Return the figure with the edge's value written as a text, in the room or in its product's sheet."""
    if not edge.sheet:
        return edges._judged(edge, rule, changed(edge.room, {edge.path: text}))  # noqa: SLF001  the walk is the same
    sheets = [changed(one, {edge.path: text}) if one["id"] == edge.sheet else one for one in edge.products]
    return edges._judged(replace(edge, products=sheets), rule, edge.room)  # noqa: SLF001


@pytest.mark.parametrize("edge", WALKED, ids=str)
def test_inside_by_less_than_the_uncertainty_fails(edge: Edge) -> None:
    rule = BY_ID[edge.rule]
    judged = edges._judged(edge, rule, edge.room)  # noqa: SLF001
    window = judged.windows.window
    tried = 0
    for side, limit in (("low", window.low), ("high", window.high)):
        for inside, outside in edges._crossings(edge, judged, window, side, limit) if limit is not None else ():  # noqa: SLF001
            wide = 3.0 * abs(outside - inside) / edge.scale
            again = judged_at(edge, rule, f"{inside / edge.scale:.9f} {edge.unit} ± {wide:.9f} {edge.unit}")
            assert window.margin(again.figure.value) >= 0.0
            assert again.outcome(again.figure)[0] is Kind.FAIL
            tried += 1
    assert tried


@pytest.mark.parametrize("rule", GUARDED, ids=lambda rule: rule.id)
def test_every_window_of_the_guarded_chapters_is_tried(rule: AnyRule) -> None:
    assert (rule.id in {edge.rule for edge in WALKED}) != (rule.id in PLAIN)
