"""One fault, one finding: what follows from a fixing that cannot hold waits for it."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

import pytest
from mount_rooms import ABOVE, ABOVE_SHEETS, BEAM, FIXING, HERE, ROOM, SHEETS, STUDS, TOP, F, M, arm

from roomlint.review.book import load_book
from roomlint.review.engine import review_room
from roomlint.review.verdict import Kind
from roomlint.testing import changed, room_of

if TYPE_CHECKING:
    from roomlint.review.verdict import Verdict

RULES = [rule for rule in load_book().rules if rule.chapter == "mount"]
STEEL = {**STUDS, "kind": "steel-stud"}
ANY_FIXING = frozenset({"mount.seismic", "mount.misuse-load", "mount.lift-mass", "mount.engineer", "mount.joist-load"})
"""Rules that look at the thing and not at its fasteners, or that fail in the plain room already."""


def judged(room: dict[str, Any], sheets: Any, subject: str) -> dict[str, Verdict]:
    outcome = review_room(room_of(room, sheets), RULES)
    assert outcome.troubles == []
    return {verdict.rule: verdict for verdict in outcome.verdicts if verdict.subject == subject}


def failures(found: dict[str, Verdict]) -> set[str]:
    return {rule for rule, verdict in found.items() if verdict.kind is Kind.FAIL} - ANY_FIXING


def waits(found: dict[str, Verdict], cause: str) -> set[str]:
    return {rule for rule, verdict in found.items() if verdict.follows is not None and verdict.follows.rule == cause}


@pytest.mark.parametrize("framing", [STEEL, {"kind": "masonry"}, {"kind": "concrete"}])
def test_a_wall_of_another_kind_than_the_fixing_says_is_the_only_finding(framing: dict[str, Any]) -> None:
    found = judged(changed(ROOM, {"room.walls.0.framing": framing}), SHEETS, HERE)
    assert failures(found) == {"mount.wall-kind"}
    assert {"mount.fastener-withdrawal", "mount.fastener-combined", "mount.misuse-load"} <= waits(
        found, "mount.wall-kind"
    )


def test_both_places_of_the_contradiction_are_told() -> None:
    found = judged(changed(ROOM, {"room.walls.0.framing": STEEL}), SHEETS, HERE)["mount.wall-kind"]
    room = room_of(changed(ROOM, {"room.walls.0.framing": STEEL}), SHEETS)
    picture = room.design.picture
    assert picture is not None
    assert found.place == picture.place_of("mounting.fixing.into")
    assert [related.place for related in found.related] == [room.design.shell.walls[0].framing.place]


@pytest.mark.parametrize("fastener", ["strap", "toggle", "expansion-anchor", "steel-screw"])
def test_a_fastener_that_is_not_for_studs_is_the_only_finding(fastener: str) -> None:
    found = judged(changed(ROOM, {f"{FIXING}.fastener": fastener}), SHEETS, HERE)
    assert failures(found) == {"mount.fastener-base"}
    assert "mount.fastener-withdrawal" in waits(found, "mount.fastener-base")


@pytest.mark.parametrize("fastener", ["nail", "drywall-screw", "adhesive"])
def test_a_nail_is_the_only_finding(fastener: str) -> None:
    found = judged(changed(ROOM, {f"{FIXING}.fastener": fastener}), SHEETS, HERE)
    assert failures(found) == {"mount.fastener-kind"}
    assert "mount.fastener-base" in waits(found, "mount.fastener-kind")


def test_board_as_the_only_support_is_the_only_finding() -> None:
    found = judged(changed(ROOM, {f"{FIXING}.into": "board"}), SHEETS, HERE)
    assert failures(found) == {"mount.substrate"}


def test_a_thin_bolt_is_found() -> None:
    changes = {f"{FIXING}.fastener": "through-bolt", f"{FIXING}.diameter": "3 mm", f"{FIXING}.count": 1,
               f"{FIXING}.top_count": 1}  # fmt: skip
    found = judged(changed(ROOM, changes), SHEETS, HERE)
    assert "mount.fastener-size" in failures(found)
    assert found["mount.fastener-combined"].kind is Kind.REVIEW


def test_no_thread_in_the_wood_is_told_once() -> None:
    changes = {f"{FIXING}.length": "0.75 in", f"{FIXING}.thread": "0.7 in"}
    found = judged(changed(ROOM, changes), SHEETS, HERE)
    assert failures(found) == {"mount.thread-in-wood"}
    assert "mount.fastener-combined" in waits(found, "mount.thread-in-wood")


def test_a_wood_screw_in_end_grain_is_told_once() -> None:
    changes = {f"{FIXING}.fastener": "wood-screw", f"{FIXING}.grain": "end", f"{FIXING}.diameter": "0.19 in"}
    found = judged(changed(ROOM, changes), SHEETS, HERE)
    assert failures(found) == {"mount.end-grain"}
    assert "mount.fastener-withdrawal" in waits(found, "mount.end-grain")


def test_no_second_support_is_told_once() -> None:
    found = judged(changed(ABOVE, {f"{M}.secondary": "none"}), ABOVE_SHEETS, BEAM)
    assert "mount.overhead-screws" in waits(found, "mount.secondary")


def test_a_grid_without_wires_waits_for_the_second_support() -> None:
    found = judged(changed(ABOVE, {f"{M}.secondary": "none", f"{M}.on": "grid-ceiling"}), ABOVE_SHEETS, BEAM)
    assert "mount.grid-ceiling" in waits(found, "mount.secondary")


def test_anchors_without_approval_are_not_held_against_it() -> None:
    changes = {
        f"{F}.fastener": "expansion-anchor",
        f"{F}.into": "concrete",
        "room.ceiling.framing": {"kind": "concrete"},
    }
    found = judged(changed(ABOVE, changes), ABOVE_SHEETS, BEAM)
    assert "mount.anchor-seat" in waits(found, "mount.anchor-approval")


def test_a_flush_loudspeaker_on_drywall_screws_is_judged() -> None:
    fixing = {"fastener": "drywall-screw", "into": "board", "count": 4}
    found = judged(changed(ABOVE, {"loudspeakers.0.mounting.fixing": fixing}), ABOVE_SHEETS, TOP)
    assert "mount.substrate" in failures(found)


def test_a_rack_and_a_glued_panel_are_judged() -> None:
    screws = {"fastener": "drywall-screw", "into": "stud", "count": 4}
    glue = {"fastener": "adhesive", "into": "board"}
    room = changed(ROOM, {
        "electronics": {"racks": [{"id": "rack", "mass": "60 kg", "mounting": {"on": "front", "fixing": screws}}]},
        "treatments": [{"id": "wing", "kind": "diffuser", "on": "front", "mass": "30 kg",
                        "mounting": {"on": "front", "fixing": glue}}],
    })  # fmt: skip
    assert "mount.fastener-kind" in failures(judged(room, SHEETS, "rack/rack"))
    assert "mount.fastener-kind" in failures(judged(room, SHEETS, "treatment/wing"))


def test_an_arm_without_a_stated_motion_stays_open() -> None:
    found = judged(ROOM, arm(motion=None), HERE)
    for rule in ("mount.stud-span", "mount.sideways-swing", "mount.loaded-edge"):
        assert found[rule].kind is Kind.OPEN
