"""What an installer leaves out is worked out: the same room as when it is written out, reading by reading."""

from __future__ import annotations

import copy
import json
import math
from typing import Any

import pytest

from roomlint.design.element import unread
from roomlint.design.house import House
from roomlint.design.read import read_design
from roomlint.review.book import load_book
from roomlint.review.engine import review_room
from roomlint.review.session import Choices, review_design
from roomlint.source.tree import read_tree
from roomlint.testing import changed, room_of

BOX = {
    "roomlint_product": 1, "id": "box", "kind": "loudspeaker", "width": "0.2 m", "height": "0.3 m", "depth": "0.2 m",
    "loudspeaker": {"placement": ["on-wall"]},
}  # fmt: skip
ROUND = {
    "roomlint_product": 1, "id": "round", "kind": "loudspeaker", "width": "0.2 m", "height": "0.2 m",
    "depth": "0.1 m", "loudspeaker": {"placement": ["in-ceiling"]},
}  # fmt: skip
ARM = {"roomlint_product": 1, "id": "arm", "kind": "mount", "mount": {"reach": "0.1 m"}}
SHEETS = (BOX, ROUND, ARM)
Data = dict[str, Any]


def at(left: float, front: float, height: float | None = None) -> Data:
    place = {"from_left": f"{left} m", "from_front": f"{front} m"}
    return place if height is None else {**place, "height": f"{height} m"}


def room(**more: Any) -> Data:
    return {
        "roomlint": 1,
        "project": {"code": "r", "stage": "design"},
        "survey": {"tolerance": "10 mm", "temperature": "20 degC"},
        "room": {"size": {"width": "4 m", "length": "5 m"}, "ceiling": {"shape": "flat", "height": "2.5 m"}},
        "seats": [{"id": "middle", "reference": True, "ear": at(2.0, 3.0, 1.1)}],
        **more,
    }


def found(data: Data) -> dict[tuple[str, str], tuple[Any, ...]]:
    """Return every verdict with its figure and its uncertainty."""
    outcome = review_room(room_of(data, SHEETS), load_book().rules)
    assert outcome.troubles == []
    return {
        (v.rule, v.subject): (v.kind, v.level, round(v.figure.value, 6) if v.figure else None) for v in outcome.verdicts
    }


def told(data: Data) -> list[str]:
    node, problems = read_tree(json.dumps(data, indent=1), "a.yaml")
    assert node is not None
    return [problem.text for problem in (*problems, *read_design(node, "a.yaml", {})[1])]


LEFT: Data = {
    "id": "left", "label": "M+030", "product": "box", "position": at(0.5, 0.4, 1.1),
    "aim": {"azimuth": "-150 deg", "elevation": "0 deg"},
    "mounting": {"on": "front", "product": "arm", "swivel": "-30 deg"},
}  # fmt: skip
RIGHT: Data = {
    "id": "right", "label": "M-030", "product": "box",
    "position": {"from_right": "0.5 m", "from_front": "0.4 m", "height": "1.1 m"},
    "aim": {"azimuth": "150 deg", "elevation": "0 deg"},
    "mounting": {"on": "front", "product": "arm", "swivel": "30 deg"},
}  # fmt: skip
SIDE_L = {"id": "sl", "label": "M+090", "product": "box", "position": at(0.2, 3.0, 1.2), "mounting": {"on": "left"}}
SIDE_R = {
    "id": "sr", "label": "M-090", "product": "box", "mounting": {"on": "right"},
    "position": {"from_right": "0.2 m", "from_front": "3.0 m", "height": "1.2 m"},
}  # fmt: skip


def paired(one: Data, *names: str, **more: Any) -> Data:
    return {key: value for key, value in one.items() if key != "id"} | {"pair": list(names), **more}


def test_a_pair_is_judged_as_its_two_written_apart() -> None:
    apart = room(loudspeakers=[LEFT, RIGHT, SIDE_L, SIDE_R], layout="0+7+0")
    together = room(loudspeakers=[paired(LEFT, "left", "right"), paired(SIDE_L, "sl", "sr")], layout="0+7+0")
    assert found(together) == found(apart)


def test_both_of_a_pair_stand_at_its_lines_and_share_its_readings() -> None:
    design = room_of(room(loudspeakers=[paired(LEFT, "left", "right")]), SHEETS).design
    left, right = design.loudspeakers
    assert (left.id, right.id) == ("left", "right")
    assert left.place == right.place
    assert left.position is not None
    assert right.position is not None
    reading = left.position.x.shares[0].reading
    assert reading in [share.reading for share in right.position.x.shares]
    # 0.5 m each side of a 4 m room, each good for 10 mm: their distance is the width less twice the reading.
    apart = right.position.x - left.position.x
    assert apart.value == pytest.approx(3.0)
    assert apart.u == pytest.approx(math.hypot(0.01, 0.02))


def test_a_pair_may_be_mirrored_about_another_line_than_the_room_s_middle() -> None:
    design = room_of(room(loudspeakers=[paired(LEFT, "left", "right", pair_middle="1.8 m")]), SHEETS).design
    assert design.loudspeakers[1].position is not None
    assert design.loudspeakers[1].position.x.value == pytest.approx(2 * 1.8 - 0.5)


def test_two_subwoofers_may_be_a_pair() -> None:
    sub = {"pair": ["sl", "sr"], "label": "LFE1", "position": at(0.4, 0.4, 0.3), "facing": "-150 deg"}
    left, right = room_of(room(subwoofers=[sub]), SHEETS).design.subwoofers
    assert (left.label, right.label) == ("LFE1", "LFE2")
    assert right.facing_deg is not None
    assert right.facing_deg.value == 150.0


def test_a_pair_that_aims_at_a_seat_aims_both_at_it() -> None:
    data = room(loudspeakers=[paired({**LEFT, "aim": {"seat": "middle"}}, "left", "right")])
    design = room_of(data, SHEETS).design
    assert [one.aim.seat.id for one in design.loudspeakers if one.aim and one.aim.seat] == ["middle", "middle"]


def test_a_remedy_of_a_pair_tells_where_its_left_one_goes() -> None:
    data = room(loudspeakers=[paired({**SIDE_L, "position": at(0.2, 1.0, 1.2)}, "sl", "sr")], layout="0+7+0")
    design = room_of(data, SHEETS).design
    review, troubles = review_design(design, House(), load_book().rules, Choices(today=None))
    assert troubles == []
    remedies = [v.remedy for v in review.verdicts if v.rule == "angle.side-pair" and v.remedy is not None]
    assert [remedy.subject for remedy in remedies] == ["loudspeaker/sl", "loudspeaker/sl"]


@pytest.mark.parametrize(
    ("change", "said"),
    [
        ({"id": "x"}, "either an id or a pair"),
        ({"label": "M+000"}, "stands in the middle and has no partner"),
        ({"pair": ["left"]}, "expected at least 2 items"),
        ({"pair": ["left", "left"]}, "'left' stands twice"),
        ({"pair": None}, "give the loudspeaker an id"),
    ],
)
def test_what_cannot_be_a_pair_is_told(change: Data, said: str) -> None:
    one = {key: value for key, value in paired(LEFT, "left", "right").items() if key != "product"} | change
    one["mounting"] = {"on": "front"}
    data = room(loudspeakers=[{key: value for key, value in one.items() if value is not None}])
    assert any(said in text for text in told(data)), told(data)


GABLE = {"shape": "gable", "low": "2.2 m", "height": "3.0 m", "ridge": "front-to-rear"}
PITCH = {"shape": "mono-pitch", "low": "2.0 m", "high": "3.0 m", "low_side": "left"}
TRAY = {"shape": "tray", "height": "2.9 m", "low": "2.5 m"}
KNEE = {"shape": "part-sloped", "height": "2.8 m", "low": "2.0 m", "low_sides": ["left"], "slope_width": "1.6 m"}
TOP = {"id": "top", "label": "U+045", "product": "round", "position": at(1.0, 2.0), "mounting": {"on": "ceiling"}}


@pytest.mark.parametrize(
    ("ceiling", "height"),
    [
        ({"shape": "flat", "height": "2.5 m"}, 2.5),
        # 1.0 of 2.0 m up to the ridge; 1.0 of 4.0 m across.
        (GABLE, 2.6),
        (PITCH, 2.25),
        ({"shape": "corners", "heights": ["2.2 m", "2.6 m", "2.6 m", "2.2 m"]}, 2.3),
        (KNEE, 2.5),
        ({**TRAY, "raised": {**at(0.5, 1.0), "width": "3 m", "depth": "3 m"}}, 2.9),
    ],
)  # fmt: skip
def test_what_is_in_the_ceiling_is_as_high_as_the_ceiling_there(ceiling: Data, height: float) -> None:
    data = changed(room(loudspeakers=[TOP]), {"room.ceiling": ceiling})
    position = room_of(data, SHEETS).design.loudspeakers[0].position
    assert position is not None
    assert position.z.value == pytest.approx(height)


def test_a_height_under_a_slope_carries_the_readings_of_the_ceiling() -> None:
    position = (
        room_of(changed(room(loudspeakers=[TOP]), {"room.ceiling": PITCH}), SHEETS).design.loudspeakers[0].position
    )
    assert position is not None
    # z = 2 + x/4: low counts 0.75, high 0.25, x 0.25, the width 0.0625, each good for 10 mm.
    exact = 0.01 * math.hypot(0.75, 0.25, 0.25, 0.0625)
    assert position.z.u == pytest.approx(exact, rel=1e-3)


def test_what_hangs_under_the_ceiling_is_lower_by_its_depth_its_mount_and_its_drop() -> None:
    hung = {**TOP, "product": "box", "mounting": {"on": "ceiling", "product": "arm", "drop": "0.3 m"}}
    position = room_of(room(loudspeakers=[hung]), SHEETS).design.loudspeakers[0].position
    assert position is not None
    assert position.z.value == pytest.approx(2.5 - 0.2 - 0.1 - 0.3)
    gap = found(room(loudspeakers=[hung]))["layout.on-surface", "loudspeaker/top"]
    assert gap[2] == pytest.approx(0.0, abs=1e-6)


def test_a_cabinet_of_unknown_depth_at_the_ceiling_leaves_its_height_open() -> None:
    bare = {key: value for key, value in TOP.items() if key != "product"}
    design = room_of(room(loudspeakers=[bare]), SHEETS).design
    assert design.loudspeakers[0].position is None
    assert str(found(room(loudspeakers=[bare]))["layout.inside-room", "loudspeaker/top"][0]) == "open"


def test_a_pair_at_a_slope_is_as_high_as_the_slope_over_each() -> None:
    data = changed(room(loudspeakers=[paired(TOP, "tl", "tr")]), {"room.ceiling": PITCH})
    heights = [one.position.z.value for one in room_of(data, SHEETS).design.loudspeakers if one.position]
    assert heights == pytest.approx([2.25, 2.75])


def test_a_height_that_was_worked_out_follows_its_place_across_the_ridge() -> None:
    from roomlint.measure.world import World

    data = changed(room(loudspeakers=[{**TOP, "position": at(1.9, 2.0)}]), {"room.ceiling": GABLE})
    position = room_of(data, SHEETS).design.loudspeakers[0].position
    assert position is not None
    # The ridge is at 2.0 m: 0.5 m farther right it is at 2.4 m, 0.4 m behind the ridge, not above it.
    moved = World().with_moved(position.x.shares[0].reading, 0.5)
    assert moved(position.z) == pytest.approx(3.0 - 0.4 * 0.4)


ROW: Data = {"id": "sofa", "count": 3, "spacing": "0.6 m", "reference": True, "row": 1, "ear": at(2.0, 3.0, 1.1)}


def test_a_row_is_judged_as_its_seats_written_out() -> None:
    seats = [
        {"id": f"sofa-{n}", "row": 1, "ear": at(left, 3.0, 1.1), "reference": n == 2}
        for n, left in ((1, 1.4), (2, 2.0), (3, 2.6))
    ]
    both = [LEFT, RIGHT]
    assert found(room(seats=[ROW], loudspeakers=both)).keys() == found(room(seats=seats, loudspeakers=both)).keys()
    one, other = (found(room(seats=some, loudspeakers=both)) for some in ([ROW], seats))
    assert {key: value[2] for key, value in one.items()} == {key: value[2] for key, value in other.items()}


def test_a_row_shares_its_readings() -> None:
    first, _, last = room_of(room(seats=[ROW])).design.seats
    assert first.ear is not None
    assert last.ear is not None
    # Twice the spacing, and nothing of where the row stands.
    assert (last.ear.x - first.ear.x).u == pytest.approx(0.02)


def test_a_row_that_faces_another_way_lies_across_it() -> None:
    seats = room_of(room(seats=[{**ROW, "facing": "90 deg"}])).design.seats
    assert [seat.ear.xyz[:2] for seat in seats if seat.ear] == [
        pytest.approx((2.0, 1.4)), pytest.approx((2.0, 2.0)), pytest.approx((2.0, 2.6)),
    ]  # fmt: skip


def test_of_two_seats_the_reference_seat_is_named() -> None:
    two = {**ROW, "count": 2}
    assert any("has no middle seat" in text for text in told(room(seats=[two])))
    two = {**two, "reference_number": 2}
    assert [seat.reference for seat in room_of(room(seats=[two])).design.seats] == [False, True]
    assert any("no seat 4" in text for text in told(room(seats=[{**two, "reference_number": 4}])))


def test_a_row_that_says_both_that_it_has_a_reference_seat_and_that_it_has_none_is_told() -> None:
    row = {**ROW, "reference": False, "reference_number": 2}
    assert any("reference_number that seat 2 is" in text for text in told(room(seats=[row])))


def test_an_ear_may_be_measured_from_the_riser_under_it() -> None:
    behind = {"id": "behind", "ear": at(2.0, 4.2), "ear_above": "1.1 m"}
    before = {"id": "before", "reference": True, "ear": at(2.0, 2.5), "ear_above": "1.1 m"}
    data = changed(
        room(seats=[before, behind]), {"room.risers": [{"id": "step", "from_front": "3.5 m", "height": "0.3 m"}]}
    )
    first, second = room_of(data).design.seats
    assert (first.riser_m, first.ear.z.value if first.ear else None) == (None, 1.1)
    assert second.riser_m is not None
    assert second.riser_m.value == 0.3
    assert second.ear is not None
    assert second.ear.z.value == pytest.approx(1.4)
    assert second.ear.z.u == pytest.approx(math.hypot(0.01, 0.01))
    assert any("not both" in text for text in told(changed(data, {"seats.1.ear.height": "1.2 m"})))


def test_a_picture_may_be_given_by_its_diagonal_and_proportions() -> None:
    picture = {"kind": "display", "diagonal": "65 in", "proportions": "16:9", "centre": at(2.0, 0.1, 1.2)}
    found_picture = room_of(room(picture=picture)).design.picture
    assert found_picture is not None
    assert found_picture.width_m is not None
    assert found_picture.height_m is not None
    # 65 in: 16/sqrt(337) of it wide, 9/sqrt(337) high.
    assert found_picture.width_m.value == pytest.approx(1.651 * 16 / math.sqrt(337))
    assert found_picture.height_m.value == pytest.approx(1.651 * 9 / math.sqrt(337))
    assert any("not both" in text for text in told(room(picture={**picture, "width": "1.4 m"})))
    alone = {key: value for key, value in picture.items() if key != "proportions"}
    assert any("give proportions" in text for text in told(room(picture=alone)))


GLASS = {"id": "glass", "kind": "window", "width": "1.2 m", "sill": "0.9 m", "height": "1.0 m"}


@pytest.mark.parametrize(
    ("wall", "key", "measured", "start"),
    [
        # The rear wall's left-hand end, seen from inside, is the room's right.
        ("rear", "from_left", 0.5, 4.0 - 0.5 - 1.2), ("rear", "from_right", 0.5, 0.5),
        ("rear", "from_wall_right", 0.5, 4.0 - 0.5 - 1.2), ("front", "from_left", 0.5, 0.5),
        ("front", "from_right", 0.5, 4.0 - 0.5 - 1.2), ("left", "from_front", 0.5, 5.0 - 0.5 - 1.2),
        ("left", "from_rear", 0.5, 0.5), ("right", "from_front", 0.5, 0.5), ("right", "from_rear", 0.5, 3.3),
    ],
)  # fmt: skip
def test_an_opening_may_be_measured_from_any_side(wall: str, key: str, measured: float, start: float) -> None:
    data = changed(room(), {"room.openings": [{**GLASS, "wall": wall, key: f"{measured} m"}]})
    opening = room_of(data).design.shell.openings[0]
    assert opening.start_m is not None
    assert opening.start_m.value == pytest.approx(start)


def test_an_opening_of_a_slanting_wall_may_be_measured_from_the_left() -> None:
    corners = (("front", 0.0, 0.0), ("right", 4.0, 0.0), ("slant", 4.0, 2.0), ("rear", 1.0, 6.0), ("left", 0.0, 6.0))
    outline = [{**at(left, front), "wall": wall} for wall, left, front in corners]
    # The slanting wall leads 3 m to the left and 4 m back, 5 m in all; its far edge is 1.75 m from the left.
    data = changed(room(), {"room.size": None, "room.outline": outline, "seats": []})
    data["room"]["openings"] = [{**GLASS, "wall": "slant", "from_left": "1.75 m"}]
    opening = room_of(data).design.shell.openings[0]
    assert opening.start_m is not None
    assert opening.start_m.value == pytest.approx((4.0 - 1.75) / 3.0 * 5.0 - 1.2)


@pytest.mark.parametrize(
    ("keys", "said"),
    [
        ({"from_front": "1 m"}, "its wall runs along that side"),
        ({"from_left": "1 m", "from_wall_left": "1 m"}, "measure it once along its wall"),
        ({"from_left": "1 m", "width": None}, "its width is needed too"),
        ({"from_wall_right": "4 m"}, "it begins 1.20 m before the left-hand end of the wall 'rear', which is 4.00 m"),
        ({"from_left": "3.5 m"}, "it begins 0.70 m before the left-hand end"),
    ],
)
def test_an_opening_that_cannot_be_placed_is_told(keys: Data, said: str) -> None:
    one = {key: value for key, value in {**GLASS, "wall": "rear", **keys}.items() if value is not None}
    assert any(said in text for text in told(changed(room(), {"room.openings": [one]})))


def test_a_panel_and_a_receptacle_are_measured_like_openings() -> None:
    panel = {"id": "p", "kind": "absorber", "on": "left", "from_front": "1 m", "width": "1.2 m", "height": "0.6 m"}
    cloud = {"id": "c", "kind": "absorber", "on": "ceiling", "from_right": "1 m", "from_rear": "1 m", "width": "1.2 m",
             "height": "0.6 m"}  # fmt: skip
    outlet = {"id": "o", "wall": "rear", "from_left": "1 m", "height": "0.4 m"}
    circuits = [{"id": "c1", "receptacles": [outlet]}]
    design = room_of(room(treatments=[panel, cloud], circuits=circuits)).design
    wall, ceiling = design.treatments
    assert wall.start_m is not None
    assert wall.start_m.value == pytest.approx(5.0 - 1.0 - 1.2)
    assert ceiling.from_left_m is not None
    assert ceiling.from_front_m is not None
    assert (ceiling.from_left_m.value, ceiling.from_front_m.value) == pytest.approx((4 - 1 - 1.2, 5 - 1 - 0.6))
    start = design.circuits[0].receptacles[0].start_m
    assert start is not None
    assert start.value == pytest.approx(3.0)


@pytest.mark.parametrize(
    ("keys", "said"),
    [
        ({"from_right": "1 m", "from_left": "1 m"}, "give either from_left or from_right"),
        ({"from_rear": "1 m", "height": None}, "its size is needed too"),
        ({"from_wall_left": "1 m"}, "it lies on none"),
    ],
)
def test_a_panel_overhead_that_cannot_be_placed_is_told(keys: Data, said: str) -> None:
    panel = {"id": "p", "kind": "absorber", "on": "ceiling", "width": "1.2 m", "height": "0.6 m", **keys}
    panel = {key: value for key, value in panel.items() if value is not None}
    assert any(said in text for text in told(room(treatments=[panel])))


def test_a_one_off_is_described_where_its_sheet_would_be_named() -> None:
    data = {key: value for key, value in BOX.items() if key not in {"roomlint_product", "id"}}
    named, inline = room(loudspeakers=[LEFT]), room(loudspeakers=[{**LEFT, "product": data}])
    assert found(inline) == found(named)
    without_kind = {key: value for key, value in data.items() if key != "kind"}
    assert found(room(loudspeakers=[{**LEFT, "product": without_kind}])) == found(named)


@pytest.mark.parametrize(
    ("product", "said"),
    [
        ({"kind": "amplifier"}, "is an amplifier, but a loudspeaker belongs here"),
        ({"mount": {"reach": "0.1 m"}}, "has no mount data"),
        ({"width": "banana"}, "banana"),
        ({"wide": "1 m"}, "unknown key 'wide'"),
        (7, "but text or a mapping belongs here"),
    ],
)
def test_a_one_off_that_does_not_fit_is_told(product: Any, said: str) -> None:
    one = {"id": "left", "product": product}
    assert any(said in text for text in told(room(loudspeakers=[one]))), told(room(loudspeakers=[one]))


def test_what_nobody_reads_of_a_one_off_is_told_of_the_loudspeaker_that_it_is() -> None:
    data = room(loudspeakers=[paired({**LEFT, "product": {"width": "0.2 m", "mass": "6 kg"}}, "left", "right")])
    product = next(one for one in room_of(data, SHEETS).design.products if one.id != "arm")
    assert product.id == "left"
    assert [one.key for one in unread(product)] == ["width", "mass"]


def test_everything_that_was_worked_out_is_told() -> None:
    data = changed(
        room(
            seats=[ROW], loudspeakers=[paired(LEFT, "left", "right"), TOP],
            picture={"diagonal": "65 in", "proportions": "16:9"},
        ),
        {"room.openings": [{**GLASS, "wall": "rear", "from_left": "0.5 m"}]},
    )  # fmt: skip
    worked = {(one.element.id, one.key, one.way) for one in room_of(data, SHEETS).design.worked}
    assert worked == {
        ("sofa-1", "ear", "row"), ("sofa-2", "ear", "row"), ("sofa-3", "ear", "row"), ("right", "position", "pair"),
        ("top", "position.height", "ceiling"), ("picture", "width", "diagonal"), ("picture", "height", "diagonal"),
        ("glass", "from_wall_left", "wall"),
    }  # fmt: skip


PIECES = {
    "shape": "pieces",
    "pieces": [
        {"corners": [at(0, 0, 2.2), at(2, 0, 3.0), at(2, 5, 3.0), at(0, 5, 2.2)]},
        {"corners": [at(2, 0, 3.0), at(4, 0, 2.2), at(4, 5, 2.2), at(2, 5, 3.0)]},
    ],
}


def test_a_gable_in_pieces_is_judged_as_a_gable() -> None:
    one, other = (
        changed(room(loudspeakers=[{**TOP, "position": at(1.0, 2.0, 2.58)}, LEFT]), {"room.ceiling": shape})
        for shape in (PIECES, GABLE)
    )
    assert {k: v[2] for k, v in found(one).items()} == {k: v[2] for k, v in found(other).items()}


def test_where_pieces_meet_one_reading_moves_both() -> None:
    ceiling = room_of(changed(room(), {"room.ceiling": PIECES})).design.shell.ceiling
    assert ceiling is not None
    first, second = ceiling.polygons
    assert first[1] is second[0]
    assert first[2] is second[3]


@pytest.mark.parametrize(
    ("ceiling", "said"),
    [
        (TRAY, "a tray ceiling needs raised"),
        ({**TRAY, "raised": {**at(0.5, 1.0), "width": "3.6 m", "depth": "3 m"}}, "clear of the walls"),
        ({"shape": "part-sloped", "height": "2.9 m", "low": "2.5 m"}, "needs low_sides"),
        ({"shape": "flat", "height": "2.9 m", "low_sides": ["left"]}, "a flat ceiling has no low_sides"),
        ({"shape": "pieces", "pieces": PIECES["pieces"][:1]}, "the pieces cover 10.00 m2, and the plan has 20.00 m2"),
        # As much twice as is left out, and as much outside the room as is left out in it.
        ({"shape": "pieces", "pieces": PIECES["pieces"][:1] * 2}, "this piece lies over another one"),
        (
            {"shape": "pieces", "pieces": [
                PIECES["pieces"][0], {"corners": [at(4, 0, 2.2), at(6, 0, 2.2), at(6, 5, 2.2), at(4, 5, 2.2)]},
            ]},
            "the pieces cover 10.00 m2, and the plan has 20.00 m2",
        ),
    ],
)  # fmt: skip
def test_a_ceiling_that_cannot_be_is_told(ceiling: Data, said: str) -> None:
    assert any(said in text for text in told(changed(room(), {"room.ceiling": copy.deepcopy(ceiling)})))
