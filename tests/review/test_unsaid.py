"""What a file does not speak of is not known to be absent; what it says there is none of is."""

from __future__ import annotations

from typing import Any

import pytest

from roomlint.design.base import unsaid
from roomlint.review.book import load_book
from roomlint.review.engine import review_room
from roomlint.review.verdict import Kind
from roomlint.sample import at, room, speaker
from roomlint.testing import changed, room_of

BOOK = load_book()
LISTS = {
    "room.openings": "layout.door-swing",
    "room.obstacles": "layout.line-of-sight",
    "seats": "layout.ear-height",
    "loudspeakers": "channel.fed",
    "subwoofers": "file.subwoofer-label",
    "picture": "layout.on-axis",
    "treatments": "mount.panel-smoke",
    "electronics.amplifiers": "channel.amplifier-outputs",
    "electronics.racks": "",
    "circuits": "mains.individual",
}
"""Lists and parts that may be absent, and a rule that has nothing to look at without."""
PLAIN = changed(room(speaker("left", "M+030", -1.0, 2.0)), {"circuits": "none"})
BOX = {"roomlint_product": 1, "id": "box", "kind": "loudspeaker", "width": "0.2 m", "height": "0.3 m", "depth": "0.2 m",
       "mass": "5 kg"}  # fmt: skip


def verdicts(data: Any, rule: str, sheets: Any = ()) -> list[Any]:
    found = review_room(room_of(data, sheets), [one for one in BOOK.rules if one.id == rule])
    assert not found.troubles
    return found.verdicts


@pytest.mark.parametrize("way", LISTS)
def test_a_list_that_is_not_there_is_missing_and_an_empty_one_is_not(way: str) -> None:
    for said in ("none", []) if way != "picture" else ("none",):
        assert unsaid(room_of(changed(PLAIN, {way: said})).design, way) is None
    missing = unsaid(room_of(changed(PLAIN, {way: None})).design, way)
    assert missing is not None
    assert missing.element.path_of(missing.key) == way


@pytest.mark.parametrize("way", [way for way, rule in LISTS.items() if rule])
def test_a_rule_that_finds_nothing_to_look_at_is_open_until_that_is_stated(way: str) -> None:
    unknown = verdicts(changed(PLAIN, {way: None}), LISTS[way])
    assert {one.kind for one in unknown} == {Kind.OPEN}
    assert {one.wanted.path for one in unknown} == {way}
    stated = verdicts(changed(PLAIN, {way: "none"}), LISTS[way])
    assert Kind.OPEN not in {one.kind for one in stated}


def test_an_unknown_part_of_a_part_that_is_not_there_is_named_from_the_file() -> None:
    missing = unsaid(room_of(changed(PLAIN, {"electronics": None})).design, "electronics.racks")
    assert missing is not None
    assert missing.element.path_of(missing.key) == "electronics.racks"


def test_a_list_that_is_no_list_is_told_in_plain_words() -> None:
    with pytest.raises(ValueError, match=r"write none, or a list"):
        room_of(changed(PLAIN, {"room.openings": "nothing"}))


def test_what_hangs_under_the_ceiling_and_is_said_to_be_on_a_wall_is_not_taken_at_its_word() -> None:
    """Whether it hangs overhead waits until the wall that holds it, or its place, is put right."""
    hung = speaker("side", "M+090", -0.5, 0.0, 1.2, product="box", mounting={"on": "left"}, aim={"azimuth": "-90 deg"})
    rules = [one for one in BOOK.rules if one.id in {"layout.inside-room", "layout.on-surface", "mount.secondary"}]
    found = {
        one.rule: one for one in review_room(room_of(room(hung), (BOX,)), rules).verdicts if one.subject[:4] == "loud"
    }
    assert found["layout.on-surface"].kind is Kind.FAIL
    assert found["mount.secondary"].follows is not None
    assert found["mount.secondary"].follows.rule == "layout.on-surface"
    beside = changed(room(hung), {"loudspeakers.0.position": at(-2.3, 0.0)})
    found = {one.rule: one for one in review_room(room_of(beside, (BOX,)), rules).verdicts if one.subject[:4] == "loud"}
    assert found["mount.secondary"].kind is Kind.NOT_APPLICABLE


def test_what_denies_a_fact_is_judged_before_it_is_asked_for() -> None:
    """Rules run in the order of the book: the places come before the mounts."""
    ids = [rule.id for rule in BOOK.rules]
    assert ids.index("layout.on-surface") < min(n for n, one in enumerate(ids) if one.startswith("mount."))
