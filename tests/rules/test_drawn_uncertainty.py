"""The uncertainty that is printed is the spread that drawn readings give, each draw the whole way from text anew."""

from __future__ import annotations

import statistics
from typing import Any

import drawn
import mount_rooms
import pytest
from draws import by_name, drawn_figures

from roomlint.review.book import load_book
from roomlint.testing import changed

WITHIN = 0.15
RULES = [rule for rule in load_book().rules if rule.window is not None]
DRAWS = 100


def taped(seed: int) -> dict[str, Any]:
    return {**drawn.drawn(seed), "survey": {"tolerance": "10 mm"}}


ROOMS = {
    "rectangle": (taped(5001), drawn.PRODUCTS, {"layout", "angle", "aim", "distance"}, 40),
    "with a corner cut out": (taped(5000), drawn.PRODUCTS, {"layout", "boundary"}, 60),
    "under a slope": (taped(5010), drawn.PRODUCTS, {"layout", "angle", "boundary"}, 60),
    "a display on its arm": (
        changed(mount_rooms.ROOM, {f"{mount_rooms.MOUNTING}.extension": "0.30 m ± 20 mm"}),
        (changed(mount_rooms.SHEETS[0], {"mass": "25 kg ± 1 kg"}), *mount_rooms.SHEETS[1:]), {"mount"}, 4,
    ),
}  # fmt: skip


@pytest.mark.parametrize("name", ROOMS)
def test_printed_uncertainty_is_what_drawn_readings_give(name: str) -> None:
    data, sheets, chapters, least = ROOMS[name]
    found = drawn_figures(data, [rule for rule in RULES if rule.chapter in chapters], sheets, DRAWS)
    straight = [spread for spread in found.spreads if not spread.bends]
    assert len(straight) >= least
    off = {
        figure: [(one.rule, one.subject, round(one.ratio, 3)) for one in all_of]
        for figure, all_of in by_name(straight).items()
        if abs(statistics.median(one.ratio for one in all_of) - 1.0) > WITHIN
    }
    assert off == {}
