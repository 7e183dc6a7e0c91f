"""What a value of a design rests on: what is shared cancels, what nobody said is assumed and told."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING, Any

import pytest

from roomlint.design.quantity import Origin
from roomlint.testing import changed, room_of

if TYPE_CHECKING:
    from roomlint.design.model import Design

TAPE = {"survey": {"tolerance": "10 mm"}}


def at(**where: str) -> dict[str, str]:
    return {"height": "1.1 m", **where}


ROOM: dict[str, Any] = {
    "roomlint": 1,
    **TAPE,
    "room": {
        "size": {"width": "4 m ± 100 mm", "length": "5 m ± 100 mm"},
        "ceiling": {"shape": "flat", "height": "2.5 m"},
    },
    "loudspeakers": [
        {"id": "left", "position": at(from_right="3 m ± 1 mm", from_front="1 m ± 1 mm")},
        {"id": "right", "position": at(from_right="1 m ± 1 mm", from_front="1 m ± 1 mm")},
        {"id": "rear", "position": at(from_left="1 m", from_rear="1 m")},
    ],
}  # fmt: skip


def design(changes: dict[str, object] | None = None, products: tuple[dict[str, Any], ...] = ()) -> Design:
    return room_of(changed(ROOM, changes or {}), products).design


def test_coordinates_from_the_right_and_the_front_are_the_rooms_size_less_what_was_measured() -> None:
    left = design().loudspeakers[0].position
    assert left is not None
    assert left.xyz == pytest.approx((1.0, 4.0, 1.1))
    assert left.x.u == pytest.approx(math.hypot(0.1, 0.001))
    assert left.x.at is not None
    assert left.x.at.value == "3 m ± 1 mm"


def test_the_rooms_size_cancels_between_two_points_from_one_wall() -> None:
    # JCGM 100:2008, 5.2: 100 mm of the room's width are shared; what is left are the two readings of 1 mm.
    left, right, _ = (speaker.position for speaker in design().loudspeakers)
    assert left is not None
    assert right is not None
    assert (right.x - left.x).value == pytest.approx(2.0)
    assert (right.x - left.x).u == pytest.approx(math.hypot(0.001, 0.001))
    assert (right.y - left.y).u == pytest.approx(math.hypot(0.001, 0.001))


def test_a_point_is_as_far_from_the_wall_it_was_measured_from_as_was_measured() -> None:
    made = design()
    left = made.loudspeakers[0].position
    assert left is not None
    assert (made.shell.width_m - left.x).u == pytest.approx(0.001)
    assert (made.shell.length_m - left.y).u == pytest.approx(0.001)


def test_points_from_left_and_rear_rest_on_their_own_reading() -> None:
    rear = design().loudspeakers[2].position
    assert rear is not None
    assert rear.xyz == pytest.approx((1.0, 1.0, 1.1))
    assert rear.y.u == 0.010


def test_the_corners_share_the_rooms_size() -> None:
    corners = {corner.wall: corner for corner in design().shell.corners}
    assert corners["front"].y.u == corners["right"].y.u == pytest.approx(0.1)
    assert (corners["front"].y - corners["right"].y).u == 0.0
    assert corners["left"].x.u == corners["left"].y.u == 0.0


def test_a_rectangle_written_as_an_outline_is_the_same_room() -> None:
    sides = [("0 m", "0 m", "front"), ("4 m", "0 m", "right"), ("4 m", "5 m", "rear"), ("0 m", "5 m", "left")]
    outline = [{"from_left": x, "from_front": y, "wall": wall} for x, y, wall in sides]
    size = design({"room": {"size": {"width": "4 m", "length": "5 m"}}}).shell
    listed = design({"room": {"outline": outline}}).shell
    for a, b in zip(size.corners, listed.corners, strict=True):
        assert (a.wall, a.spot, a.x.u, a.y.u) == (b.wall, b.spot, b.x.u, b.y.u)


def test_an_outline_listed_the_other_way_round_is_the_same_room() -> None:
    sides = [("0 m", "0 m", "left"), ("0 m", "5 m", "rear"), ("4 m", "5 m", "right"), ("4 m", "0 m", "front")]
    outline = [{"from_left": x, "from_front": y, "wall": wall} for x, y, wall in sides]
    ends = {c.wall: c.spot for c in design({"room": {"outline": outline}}).shell.corners}
    # Clockwise seen from above: the front wall runs from left to right.
    assert ends["front"] == (0.0, 5.0)
    assert ends["right"] == (4.0, 5.0)


def test_the_faces_of_an_obstacle_share_its_place() -> None:
    post = {
        "id": "post",
        "kind": "post",
        "from_left": "1 m",
        "from_front": "1 m",
        "width": "200 mm ± 0 mm",
        "depth": "300 mm",
    }
    (box,) = design({"room.obstacles": [post]}).shell.obstacles
    assert box.low is not None
    assert box.high is not None
    assert box.low.xyz == pytest.approx((1.0, 3.7, 0.0))
    assert box.high.xyz[:2] == pytest.approx((1.2, 4.0))
    assert (box.high.x - box.low.x).u == 0.0


@pytest.mark.parametrize("written", ["1 m ± 0 mm", "1 m +/- 0 mm"])
def test_an_uncertainty_of_nothing_that_is_written_is_nothing(written: str) -> None:
    point = design({"loudspeakers.2.position.from_rear": written}).loudspeakers[2].position
    assert point is not None
    assert point.y.u == 0.0


@pytest.mark.parametrize(
    ("stage", "expected_m"),
    [("survey", 0.010), ("rough-in", 0.010), ("design", 0.005), ("handover", 0.005), (None, 0.010)],
)
def test_a_tolerance_that_nobody_states_is_the_trades_and_is_told(stage: str | None, expected_m: float) -> None:
    made = design({"survey": None, "project": {"stage": stage} if stage else None})
    point = made.loudspeakers[2].position
    assert point is not None
    assert point.y.u == expected_m
    told = made.assumed_tolerance
    assert told is not None
    assert told.value == expected_m
    assert told.shares[0].reading.origin is Origin.ASSUMED
    assert f"{expected_m * 1000:.0f} mm" in told.shares[0].reading.words
    assert stage is None or stage in told.shares[0].reading.words


def test_a_tolerance_that_is_stated_is_not_assumed() -> None:
    assert design().assumed_tolerance is None
    assert design({"survey.tolerance": "0 mm"}).loudspeakers[2].position.y.u == 0.0  # type: ignore[union-attr]


def test_nominal_sizes_do_not_carry_the_surveys_tolerance() -> None:
    made = design({"loudspeakers.0.mounting": {"on": "front", "fixing": {"length": "3 in"}}})
    mounting = made.loudspeakers[0].mounting
    assert mounting is not None
    assert mounting.fixing is not None
    assert mounting.fixing.length_m is not None
    assert mounting.fixing.length_m.u == 0.0


def test_data_of_a_sheet_are_looked_up_not_measured() -> None:
    sheet = {"roomlint_product": 1, "id": "box", "kind": "loudspeaker", "mass": "6 kg"}
    product = design({"loudspeakers.0.product": "box"}, (sheet,)).loudspeakers[0].product
    assert product is not None
    assert product.mass_kg is not None
    assert product.mass_kg.shares[0].reading.origin is Origin.SHEET
