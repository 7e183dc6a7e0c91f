"""A remedy of a mount is told only where everything that must hold there holds."""

from __future__ import annotations

from typing import Any

import pytest
from mount_rooms import ABOVE, ABOVE_SHEETS, FIXING, NO_BOARD, ROOM, SHEETS, F, arm

from roomlint.review.book import load_book
from roomlint.review.engine import review_room
from roomlint.review.remedies import remedy_of
from roomlint.review.verdict import Kind, Level
from roomlint.testing import changed, room_of

RULES = [rule for rule in load_book().rules if rule.chapter == "mount"]
# A 27 kg display on a 7.5 kg arm of 0.5 m, one 1/4 x 2 in lag above the other through two layers of board.
SHORT = changed(ROOM, {
    "room.walls.0.board": {"material": "gypsum", "layers": 2, "thickness": "15.9 mm"},
    f"{FIXING}.diameter": "1/4 in", f"{FIXING}.length": "2 in", f"{FIXING}.thread": "1.25 in", f"{FIXING}.count": 2,
    f"{FIXING}.top_count": 1, f"{FIXING}.column_spacing": "0 mm",
})  # fmt: skip
ROOMS: dict[str, tuple[dict[str, Any], Any]] = {
    "short lags": (SHORT, SHEETS),
    "shallow": (changed(ROOM, {**NO_BOARD, f"{FIXING}.length": "1.5 in", f"{FIXING}.thread": "1.3 in"}),
                arm(reach="60 mm", motion="tilt", side_reach="0 mm")),
    "no thread": (changed(ROOM, {**NO_BOARD, f"{FIXING}.length": "0.3 in", f"{FIXING}.thread": "0.3 in"}),
                  arm(reach="60 mm", motion="tilt")),
    "low plate": (changed(ROOM, {**NO_BOARD, f"{FIXING}.row_spacing": "80 mm"}),
                  arm(row_spacing=None, reach="0.2 m", motion="tilt")),
    "overhead": (changed(ABOVE, {f"{F}.length": "1.2 in", f"{F}.thread": "1.1 in"}), ABOVE_SHEETS),
}  # fmt: skip
TOLD = {
    "short lags": set(),
    "shallow": {("mount.screw-depth", "mounting.fixing.length")},
    # A longer screw has thread in the wood and then is not deep enough: what waited for the one fails for the other.
    "no thread": set(),
    "low plate": {("mount.misuse-load", "mounting.fixing.row_spacing")},
    "overhead": {("mount.screw-depth", "mounting.fixing.length")},
}
"""Which failures of each room have a remedy, and of what: the loop below is not to run over nothing."""


@pytest.mark.parametrize("name", ROOMS)
def test_a_remedy_that_is_told_holds_in_every_respect(name: str) -> None:
    data, sheets = ROOMS[name]
    room = room_of(data, sheets)
    outcome = review_room(room, RULES)
    found = set()
    for failed in outcome.judged:
        if failed.outcome(failed.figure)[0] is not Kind.FAIL:
            continue
        remedy = remedy_of(failed, outcome.judged, room)
        if remedy is None:
            continue
        found.add((failed.rule.id, remedy.key))
        way = "picture." if name != "overhead" else "picture.projector."
        for value in (remedy.low.value, remedy.high.value):
            there = changed(data, {f"{way}{remedy.key}": f"{value:.6f} {remedy.low.unit}"})
            again = review_room(room_of(there, sheets), RULES)
            verdicts = {(verdict.rule, verdict.subject): verdict for verdict in again.verdicts}
            assert verdicts[failed.rule.id, failed.subject.key].kind is Kind.PASS
            touched = [other for other in outcome.judged if remedy_reads(other.figure.readings, remedy.key)]
            assert failed in touched
            for other in touched:
                verdict = verdicts[other.rule.id, other.subject.key]
                assert verdict.kind is Kind.PASS or verdict.level is Level.NOTE, f"{remedy.key} {value}: {verdict.rule}"
    assert found == TOLD[name]


def remedy_reads(readings: Any, key: str) -> bool:
    return any(reading.at is not None and reading.at.path.endswith(key) for reading in readings)


def test_short_lags_under_a_long_arm_have_no_cure_by_one_value() -> None:
    """Nearer to the wall the pull would be held, but not the misuse load, nor would the lags be deep enough."""
    room = room_of(*ROOMS["short lags"])
    outcome = review_room(room, RULES)
    failing = {one.rule.id: one for one in outcome.judged if one.outcome(one.figure)[0] is Kind.FAIL}
    assert {"mount.fastener-withdrawal", "mount.fastener-combined", "mount.misuse-load", "mount.screw-depth"} <= set(
        failing
    )
    for rule in ("mount.fastener-withdrawal", "mount.fastener-combined", "mount.misuse-load", "mount.screw-depth"):
        assert remedy_of(failing[rule], outcome.judged, room) is None


def test_a_shallow_screw_is_told_how_long_it_must_be() -> None:
    room = room_of(*ROOMS["shallow"])
    outcome = review_room(room, RULES)
    depth = next(one for one in outcome.judged if one.rule.id == "mount.screw-depth")
    remedy = remedy_of(depth, outcome.judged, room)
    assert remedy is not None
    assert remedy.key == "mounting.fixing.length"
    assert remedy.low.value > 0.0381
