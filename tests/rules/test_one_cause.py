"""One cause is told once, and an ordinary room is told little."""

from __future__ import annotations

import math
from typing import Any

import pytest
from offsets import BOX, LS, PICTURE, RS, C, L, R, at, room, speaker

from roomlint.figures.layouts import layout_of
from roomlint.review.book import load_book
from roomlint.review.engine import review_room
from roomlint.review.verdict import Kind, Level
from roomlint.testing import changed, room_of

RULES = [rule for rule in load_book().rules if rule.chapter in {"layout", "angle"}]
SUB = {"id": "sub", "position": at(2.0, 3.0, -1.0)}
FIVE = room(L, R, C, LS, RS, layout="0+5+0", picture=PICTURE, subwoofers=[SUB])
# Two rows, the second 1 m behind and hardly higher: a head of the front row stands in the lines of all three fronts.
ROWS = changed(
    room(
        speaker("left", "M+030", -0.30, 3.2), speaker("right", "M-030", 0.30, 3.2), C,
    ),
    {
        "seats.0.head_top": "1.33 m",
        "seats.0.row": 1,
        "seats.1": {"id": "rear", "ear": at(0.0, -1.0, 0.05), "riser": "0.05 m", "row": 2, "width": "0.5 m"},
    },
)  # fmt: skip


def put(left: float, front: float, height: float) -> dict[str, str]:
    return {"from_left": f"{left} m", "from_front": f"{front} m", "height": f"{height} m"}


TELEVISION = {
    "roomlint": 1,
    "project": {"code": "television", "stage": "design"},
    "layout": "0+5+0",
    "room": {"size": {"width": "4.2 m", "length": "5.2 m"}, "ceiling": {"shape": "flat", "height": "2.45 m"}},
    "picture": {
        "kind": "display", "centre": put(2.1, 0.1, 1.1),
        "width": "1.43 m", "height": "0.8 m",
    },
    "seats": [
        {"id": "sofa-left", "ear": put(1.5, 3.2, 1.1), "row": 1},
        {"id": "sofa", "ear": put(2.1, 3.2, 1.1), "reference": True},
        {"id": "sofa-right", "ear": put(2.7, 3.2, 1.1), "row": 1},
    ],
    "loudspeakers": [
        {"id": "left", "label": "M+030", "position": put(0.6, 0.5, 1.0)},
        {"id": "right", "label": "M-030", "position": put(3.6, 0.5, 1.0)},
        {"id": "centre", "label": "M+000", "position": put(2.1, 0.4, 0.6)},
        {"id": "ls", "label": "M+110", "position": put(0.3, 3.8, 1.5)},
        {"id": "rs", "label": "M-110", "position": put(3.9, 3.8, 1.5)},
    ],
    "subwoofers": [{"id": "sub", "position": put(0.5, 0.5, 0.2)}],
}  # fmt: skip


def failures(data: dict[str, Any]) -> list[tuple[str, str, Level | None]]:
    outcome = review_room(room_of(data, [BOX]), RULES)
    assert outcome.troubles == []
    return [(v.rule, v.subject, v.level) for v in outcome.verdicts if v.kind is Kind.FAIL]


def rules_that_fail(data: dict[str, Any]) -> list[str]:
    return [rule for rule, _, _ in failures(data)]


def test_the_room_that_the_causes_are_put_into_has_none() -> None:
    assert failures(FIVE) == []


def test_exchanged_labels_are_one_finding_that_says_to_exchange_them() -> None:
    labels = {"loudspeakers.0.label": "M-030", "loudspeakers.1.label": "M+030"}
    assert rules_that_fail(changed(FIVE, labels)) == ["layout.sides-swapped"]


@pytest.mark.parametrize("pair", [("3", "4"), ("0", "1")])
def test_whichever_pair_it_is(pair: tuple[str, str]) -> None:
    one, other = (FIVE["loudspeakers"][int(n)]["label"] for n in pair)
    labels = {f"loudspeakers.{pair[0]}.label": other, f"loudspeakers.{pair[1]}.label": one}
    assert rules_that_fail(changed(FIVE, labels)) == ["layout.sides-swapped"]


def test_a_loudspeaker_on_the_wrong_side_is_one_finding() -> None:
    assert rules_that_fail(changed(FIVE, {"loudspeakers.3.position": at(2.0, -1.4)})) == ["layout.label-side"]


@pytest.mark.parametrize("down", ["0.45 m", "0.30 m", "0.10 m"])
def test_one_low_centre_is_one_finding(down: str) -> None:
    assert len(rules_that_fail(changed(FIVE, {"loudspeakers.2.position.height": down}))) == 1


def test_three_fronts_over_one_head_are_one_finding() -> None:
    data = changed(ROWS, {"loudspeakers.0.position.from_left": "2.45 m", "loudspeakers.1.position.from_left": "2.55 m"})
    assert rules_that_fail(data).count("layout.over-heads") == 1


def test_two_things_in_one_place_are_one_finding() -> None:
    data = changed(FIVE, {"subwoofers.0.position": FIVE["loudspeakers"][0]["position"]})
    assert rules_that_fail(data) == ["layout.clear-of-solids"]


def test_a_narrow_pair_is_told_for_each_and_no_more() -> None:
    narrow = {"loudspeakers.0.position": at(-0.9, 2.9), "loudspeakers.1.position": at(0.9, 2.9)}
    assert rules_that_fail(changed(FIVE, narrow)) == ["angle.front-pair", "angle.front-pair"]


def test_a_departure_that_meets_what_it_claims_is_not_told_by_the_rule_that_it_departs_from() -> None:
    departs = {"because": "a door beside the seat", "meets": "common-practice"}
    moved = {f"loudspeakers.{n}.position": at(side * 2.0, -0.175) for n, side in ((3, -1), (4, 1))}
    assert set(rules_that_fail(changed(FIVE, moved))) == {"angle.surround-pair"}
    departed = {f"loudspeakers.{n}.departure": departs for n in (3, 4)}
    assert not {"angle.surround-pair", "layout.departure"} & set(rules_that_fail(changed(FIVE, moved | departed)))


def test_a_subwoofer_under_a_seat_and_one_in_a_chimney_breast_are_errors() -> None:
    breast = {
        "id": "breast", "kind": "chimney-breast", "from_left": "0 m", "from_front": "0 m", "width": "0.6 m",
        "depth": "0.6 m",
    }  # fmt: skip
    for place in (at(0.0, 0.0, -1.0), at(-2.2, 3.2, -1.0)):
        data = changed(FIVE, {"subwoofers.0.position": place, "room.obstacles": [breast]})
        assert [level for rule, _, level in failures(data) if rule == "layout.clear-of-solids"] == [Level.ERROR]


def test_four_loudspeakers_at_the_ceiling_are_not_asked_to_be_measured_again() -> None:
    upper = [
        speaker(f"top-{n}", label, x, y, 1.4, mounting={"on": "ceiling"}, product="box")
        for n, (label, x, y) in enumerate(
            (("U+045", -1.2, 1.3), ("U-045", 1.2, 1.3), ("U+135", -1.2, -1.3), ("U-135", 1.2, -1.3))
        )
    ]
    data = changed(room(*upper, layout="4+7+0"), {"survey.tolerance": "25 mm"})
    outcome = review_room(room_of(data, [BOX]), RULES)
    asked = {v.rule for v in outcome.verdicts if v.kind is Kind.REVIEW}
    assert not asked & {"layout.inside-room", "layout.on-surface", "layout.clear-of-solids"}


def test_an_ordinary_television_room_has_no_warning_and_few_notes() -> None:
    found = failures(TELEVISION)
    assert [one for one in found if one[2] is not Level.NOTE] == []
    assert len(found) <= 3


@pytest.mark.parametrize("layout", ["0+5+0", "4+5+0", "4+7+0", "0+7+0", "9+10+3", "3+7+0", "4+9+0", "2+5+0"])
@pytest.mark.parametrize("reference", ["home", "critical"])
def test_the_nominal_directions_of_every_layout_pass_as_a_room_is_set_out(layout: str, reference: str) -> None:
    # The published nominal direction of every label, set out to a millimetre, is neither a failure nor a question.
    places = []
    for label, position in layout_of(layout).positions.items():
        if position.is_lfe or label in {"M+SC", "M-SC"}:
            continue
        assert position.azimuth_deg is not None
        assert position.elevation_deg is not None
        azimuth, elevation = math.radians(position.azimuth_deg), math.radians(position.elevation_deg)
        flat = 1.1 * math.cos(elevation) if abs(elevation) > 0 else 1.9
        rise = 1.1 * math.sin(elevation) if abs(elevation) > 0 else 0.0
        places.append(speaker(f"s{len(places)}", label, -flat * math.sin(azimuth), flat * math.cos(azimuth), rise))
    data = changed(room(*places, layout=layout), {"survey.tolerance": "1 mm", "project.reference": reference})
    outcome = review_room(room_of(data), [rule for rule in RULES if rule.chapter == "angle"])
    assert outcome.troubles == []
    unmet = [(v.rule, v.subject) for v in outcome.verdicts if v.kind in {Kind.FAIL, Kind.REVIEW}]
    assert unmet == []
