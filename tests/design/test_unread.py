"""What nobody looked at is known key by key, of the room and of each sheet it uses."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

import pytest

from roomlint.design.element import Element, unread
from roomlint.testing import changed, room_of

if TYPE_CHECKING:
    from roomlint.design.model import Design

SHEET = {"roomlint_product": 1, "id": "box", "kind": "loudspeaker", "title": "A box", "mass": "6 kg", "width": "0.2 m"}
ROOM: dict[str, Any] = {
    "$schema": "room.schema.json",
    "roomlint": 1,
    "project": {"code": "r", "title": "T", "about": "A", "children": True, "codes": {"seismic_category": "b"}},
    "survey": {"tolerance": "5 mm", "by": "somebody", "on": "2026-03-14"},
    "room": {"size": {"width": "4 m", "length": "5 m"}, "ceiling": {"shape": "flat", "height": "2.5 m"}},
    "seats": [{"id": "middle", "ear": {"from_left": "2 m", "from_front": "3 m", "height": "1.1 m"}, "row": 1}],
    "loudspeakers": [
        {"id": "left", "product": "box", "label": "M+030",
         "mounting": {"on": "front", "fixing": {"count": 2, "wet": False}}},
        {"id": "right", "product": "box", "label": "M-030"},
    ],
    "electronics": {
        "amplifiers": [{"id": "amp", "feeds": [{"output": 1, "loudspeakers": ["left"], "wiring": "parallel"}]}]
    },
}  # fmt: skip


@pytest.fixture
def design() -> Design:
    return room_of(ROOM, (SHEET,)).design


def left_over(element: Element) -> list[str]:
    return [f"{one.element.id}: {one.key}" for one in unread(element)]


def test_what_reports_tell_as_it_is_counts_as_read_and_nothing_else_does(design: Design) -> None:
    assert left_over(design) == [
        "r: project", "r: room", "r: seats", "r: loudspeakers", "r: electronics"
    ]  # fmt: skip
    assert left_over(design.project) == ["r: children", "r: codes"]
    assert left_over(design.survey) == []


def test_a_key_is_read_by_whoever_looks_at_it_and_what_is_below_is_not(design: Design) -> None:
    assert design.seats[0].row == 1
    assert "middle: ear" in left_over(design)
    assert "middle: row" not in left_over(design)


def test_parts_and_lists_are_followed_to_the_key(design: Design) -> None:
    for speaker in design.loudspeakers:
        assert speaker.label
    mounting = design.loudspeakers[0].mounting
    assert mounting is not None
    assert mounting.on == "front"
    assert mounting.fixing is not None
    assert mounting.fixing.count == 2
    assert design.amplifiers[0].feeds[0].output == 1
    told = left_over(design)
    assert "left: mounting.fixing.wet" in told
    assert "left: mounting.on" not in told
    assert "amp: feeds[0].wiring" in told
    assert "amp: feeds[0].output" not in told


def test_what_is_worked_out_of_keys_reads_them(design: Design) -> None:
    assert design.shell.corners
    assert not any("size" in key for key in left_over(design))
    assert "r: room.ceiling" in left_over(design)


def test_each_place_is_where_the_key_stands(design: Design) -> None:
    assert design.seats
    (one,) = [one for one in unread(design) if one.key == "row"]
    assert one.node.path == "seats[0].row"


def test_a_key_that_is_not_given_is_never_unread(design: Design) -> None:
    assert not any(key.endswith(": facing") for key in left_over(design.seats[0]))


def test_a_sheet_is_read_for_the_room_that_uses_it_only() -> None:
    first, second = (room_of(ROOM, (SHEET,)).design for _ in range(2))
    product = first.loudspeakers[0].product
    assert product is first.loudspeakers[1].product
    assert product is not None
    assert product.mass_kg is not None
    assert [left_over(one) for one in first.products] == [["box: width"]]
    assert [left_over(one) for one in second.products] == [["box: width", "box: mass"]]


def test_a_seat_that_is_aimed_at_is_the_seat() -> None:
    made = room_of(changed(ROOM, {"loudspeakers.0.aim": {"seat": "middle"}}), (SHEET,)).design
    aim = made.loudspeakers[0].aim
    assert aim is not None
    assert aim.seat is made.seats[0]


def test_elements_cannot_be_changed(design: Design) -> None:
    with pytest.raises(AttributeError):
        design.seats[0].row = 2  # type: ignore[misc]
    with pytest.raises(AttributeError):
        del design.seats[0].row


def test_naming_every_element_reads_none(design: Design) -> None:
    before = left_over(design)
    assert {element.id for element in design.named_elements()} >= {"middle", "left", "right", "amp", "ceiling"}
    assert left_over(design) == before


def test_a_part_that_holds_nothing_for_a_rule_is_not_unread() -> None:
    made = room_of(changed(ROOM, {"loudspeakers.0.departure": {"because": "glass"}}), (SHEET,)).design
    assert made.loudspeakers
    # A reason is told as it stands; nothing else is in that part, so nobody passed over anything.
    assert not any("departure" in key for key in left_over(made))
