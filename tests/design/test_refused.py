"""What no room can have is refused where it stands, with what was expected."""

from __future__ import annotations

import json
from typing import Any

import pytest

from roomlint.design.read import read_design, read_product
from roomlint.source.tree import read_tree
from roomlint.testing import changed

ROOM: dict[str, Any] = {
    "roomlint": 1,
    "project": {"stage": "design"},
    "room": {
        "size": {"width": "4.5 m", "length": "6 m"},
        "ceiling": {"shape": "flat", "height": "2.7 m"},
        "openings": [
            {"id": "door", "kind": "door", "wall": "rear", "from_wall_left": "0.4 m", "width": "0.8 m", "sill": "0 m",
             "height": "2 m"}
        ],
        "obstacles": [
            {"id": "post", "kind": "post", "from_left": "1 m", "from_front": "1 m", "width": "0.2 m", "depth": "0.2 m"}
        ],
    },
    "seats": [
        {"id": "middle", "ear": {"from_left": "2.25 m", "from_front": "4 m", "height": "1.1 m"}, "head_top": "1.25 m"}
    ],
    "loudspeakers": [
        {
            "id": "left",
            "mounting": {"on": "front", "fixing": {"length": "3 in", "thread": "2 in", "count": 4, "top_count": 2}},
        }
    ],
    "subwoofers": [{"id": "sub", "low_pass": "80 Hz", "delay": "3 ms", "level": "-3 dB", "facing": "0 deg"}],
    "circuits": [
        {"id": "av", "rating": "20 A", "voltage": "120 V", "rcd": "30 mA", "loads": [{"id": "amp", "current": "5 A"}]}
    ],
    "calibration": {"settings": [{"id": "left", "delay": "3 ms", "level": "-3 dB", "crossover": "80 Hz"}]},
    "treatments": [{"id": "panel", "kind": "absorber", "mass": "4 kg"}],
}  # fmt: skip


OUTLET = {"id": "socket", "form": "nema-5-20", "rating": "20 A"}
OVERHEAD = {"id": "panel", "kind": "absorber", "on": "ceiling", "mass": "6 kg", "mounting": {"on": "left"}}


def problems(changes: dict[str, object]) -> list[str]:
    node, wrong = read_tree(json.dumps(changed(ROOM, changes)), "a.room.yaml")
    assert node is not None
    return [problem.text for problem in (wrong or read_design(node, "a.room.yaml", {})[1])]


def test_the_room_that_is_spoilt_below_is_right() -> None:
    assert problems({}) == []


M, S, K = "loudspeakers.0.mounting", "subwoofers.0", "calibration.settings.0"
REFUSED = [
    # Uncertainty that would silence every finding, and air that no room has.
    ("survey", {"tolerance": "10 m"}, "0 m to 100 mm"),
    ("survey", {"tolerance": "199 m"}, "out of range"),
    ("survey", {"tolerance": "-5 mm"}, "out of range"),
    ("survey", {"temperature": "1e300 degC"}, "too large for a temperature"),
    ("survey", {"temperature": "150 degF"}, "out of range"),
    # Wood that was graded to two standards at once.
    ("room.walls", [{"id": "rear", "framing": {"species": "hem-fir", "strength_class": "C24"}}], "keep one"),
    # The same, written at one length.
    ("room.size.width", "4.5 m ± 10 m", "off by more than 100 mm"),
    ("room.size.width", "4.5 m ± 1e200 m", "too large for a length"),
    (f"{M}.fixing.diameter", "5/16 in ± 1 m", "off by more than 100 mm"),
    ("treatments.0.mass", "4 kg ± 9 kg", "off by more than 4 kg"),
    (f"{S}.level", "-3 dB ± 40 dB", "off by more than 20 dB"),
    ("survey", {"on": "2026-02-30"}, "calendar"),
    # A negative mass, length or angle takes load away.
    (f"{M}.accessories", "-20 kg", "out of range"),
    (f"{M}.secondary_fall", "-300 mm", "out of range"),
    (f"{M}.sling_angle", "120 deg", "1 deg to 90 deg"),
    (f"{M}.sling_angle", "400 deg", "out of range"),
    (f"{M}.sling_angle", "0 deg", "out of range"),
    (f"{M}.extension", "-25 mm", "out of range"),
    (f"{M}.breaking_load", "0 N", "more than zero"),
    (f"{M}.fixing.row_spacing", "0 mm", "more than zero"),
    (f"{M}.fixing.diameter", "5 m", "out of range"),
    (f"{M}.fixing.edge_offset", "-5 mm", "out of range"),
    (f"{M}.fixing.top_count", 16, "more than the 4"),
    (f"{M}.fixing.thread", "4 in", "longer than the fastener"),
    (f"{M}.fixing.embedment", "4 in", "deeper than it is long"),
    ("treatments.0.mass", "0 kg", "more than zero"),
    # What is set in a processor.
    (f"{S}.low_pass", "8 Hz", "20 Hz to 1000 Hz"),
    (f"{S}.delay", "3 s", "0 s to 500 ms"),
    (f"{S}.level", "60 dB", "-60 dB to 24 dB"),
    (f"{S}.facing", "270 deg", "-180 deg to 180 deg"),
    (f"{K}.delay", "3 s", "out of range"),
    (f"{K}.level", "+60 dB", "out of range"),
    (f"{K}.crossover", "0 Hz", "out of range"),
    # Where people sit and what is in the room.
    ("seats.0.ear.height", "0 m", "0.30 m at least"),
    ("seats.0.head_top", "1.0 m", "above the ear"),
    ("seats.0.head_top", "2.6 m", "far above the ear"),
    ("seats.0.eye_height", "0.9 m", "far below the ear"),
    ("seats.0.eye_height", "1.3 m", "above the top of the head"),
    ("seats.0.recline", "200 deg", "out of range"),
    ("room.openings.0.width", "9 m", "9.40 m along the wall 'rear', which is 4.50 m"),
    ("room.openings.0.width", "0.3 mm", "out of range"),
    ("room.openings.0.from_wall_left", "4 m", "4.80 m along the wall 'rear', which is 4.50 m"),
    ("room.openings.0.height", "3 m", "the ceiling is 2.70 m"),
    ("room.obstacles.0.from_left", "7 m", "out of the room on its right side"),
    ("room.obstacles.0.depth", "6 m", "out of the room on its rear side"),
    # Mains.
    ("circuits.0.voltage", "0 V", "12 V to 480 V"),
    ("circuits.0.rating", "-20 A", "more than zero"),
    ("circuits.0.rcd", "30 A", "out of range"),
    ("circuits.0.loads.0.apparent_power", "1800 VA", "15.0 A, not 5 A"),
    # What contradicts itself.
    ("project", {"region": "uk", "codes": {"electrical": "nec2023"}}, "nec2023 is not in force"),
    ("project", {"region": "us", "codes": {"electrical": "bs7671"}}, "bs7671 is not in force"),
]  # fmt: skip


@pytest.mark.parametrize(("key", "value", "says"), REFUSED, ids=[f"{key}={value}" for key, value, _ in REFUSED])
def test_what_no_room_can_have_is_refused(key: str, value: object, says: str) -> None:
    told = problems({key: value})
    assert len(told) == 1, told
    assert says in told[0]


@pytest.mark.parametrize("key", ["cables.0.length", "circuits.0.length"])
def test_no_length_is_longer_than_a_cable_run(key: str) -> None:
    change: dict[str, object] = {key: "900 m"}
    if key.startswith("cables"):
        change = {"cables": [{"id": "run", "length": "900 m"}]}
    (told,) = problems(change)
    assert "0 m to 200 m" in told


@pytest.mark.parametrize("category", ["a", "d", "d0", "d1", "d2", "e", "f"])
def test_every_seismic_category_of_a_house_can_be_written(category: str) -> None:
    assert problems({"project.codes": {"seismic_category": category}}) == []


SPEAKER = {"roomlint_product": 1, "id": "box", "kind": "loudspeaker"}


@pytest.mark.parametrize(
    ("sheet", "says"),
    [
        ({**SPEAKER, "loudspeaker": {"low_limit": "20 kHz", "high_limit": "50 Hz"}}, "not below the upper"),
        ({**SPEAKER, "loudspeaker": {"impedance": "0 ohm"}}, "out of range"),
        ({**SPEAKER, "loudspeaker": {"horizontal_coverage": "400 deg"}}, "out of range"),
        ({**SPEAKER, "mass": "-6 kg"}, "more than zero"),
        ({**SPEAKER, "width": "0 mm"}, "out of range"),
        ({**SPEAKER, "width": "0.3 mm"}, "out of range"),
        ({**SPEAKER, "mass": "600 kg"}, "out of range"),
        ({**SPEAKER, "mount": {"motion": "fixed"}}, "no mount data"),
        ({**SPEAKER, "kind": "mount", "mount": {"top_fasteners": 4, "fasteners": 2}}, "more than all 2"),
        ({**SPEAKER, "kind": "projector", "picture": {"throw_min": 2, "throw_max": 1}}, "more than the largest"),
    ],
)
def test_a_product_that_nobody_makes_is_refused(sheet: dict[str, Any], says: str) -> None:
    node, _ = read_tree(json.dumps(sheet), "a.product.yaml")
    assert node is not None
    (told,) = read_product(node, "a.product.yaml")[1]
    assert says in told.text


def test_structure_and_values_are_told_together() -> None:
    told = problems({"seats.0.chair": "x", "room.size.width": "4.5 metrs", f"{M}.accessories": "-1 kg"})
    assert len(told) == 3
    assert any("chair" in text for text in told)
    assert any("metrs" in text for text in told)
    assert any("-1 kg" in text for text in told)


def test_a_file_in_feet_and_inches_is_shown_examples_in_them() -> None:
    feet = {"room": {"size": {"width": "15 ft", "length": "20 ft"}, "ceiling": {"shape": "flat", "height": "9"}}}
    node, _ = read_tree(json.dumps({"roomlint": 1, **feet}), "a.room.yaml")
    assert node is not None
    (told,) = read_design(node, "a.room.yaml", {})[1]
    assert "7 ft 6 in" in told.text


OUTLINE = [("0 m", "0 m", "a"), ("6 m", "0 m", "b"), ("6 m", "4 m", "c"), ("3 m", "4 m", "d"), ("0 m", "4 m", "e")]


@pytest.mark.parametrize(
    ("corners", "says"),
    [
        ([*OUTLINE[:3], ("3 m", "0 m", "d"), OUTLINE[4]], "touches"),  # a corner on the wall opposite
        ([OUTLINE[0], OUTLINE[2], OUTLINE[1], OUTLINE[4]], "crosses"),
        ([*OUTLINE[:2], ("2 m", "0 m", "x"), *OUTLINE[2:]], "doubles back"),
        ([OUTLINE[0], OUTLINE[0], *OUTLINE[1:]], "no length"),
        ([*OUTLINE[:4], ("0 m", "4 m", "a")], "two walls are named 'a'"),
        ([("1 m", "0 m", "a"), *OUTLINE[1:4]], "the smallest from_left must be 0 m"),
    ],
)
def test_an_outline_that_is_no_room_is_refused(corners: list[tuple[str, str, str]], says: str) -> None:
    listed = [{"from_left": x, "from_front": y, "wall": wall} for x, y, wall in corners]
    told = problems({"room": {"outline": listed, "ceiling": {"shape": "flat", "height": "2.7 m"}}})
    assert any(says in text for text in told), told


def test_one_wall_may_be_written_as_two() -> None:
    listed = [{"from_left": x, "from_front": y, "wall": wall} for x, y, wall in OUTLINE]
    assert problems({"room": {"outline": listed, "ceiling": {"shape": "flat", "height": "2.7 m"}},
                     f"{M}.on": "a"}) == []  # fmt: skip


@pytest.mark.parametrize(
    ("form", "volts", "told"),
    [
        ("nema-5-20", "240 V", "NEMA-5-20 is made for 100 to 127 V, and its circuit has 240 V"),
        ("nema-5-15", "230 V", "made for 100 to 127 V"),
        ("bs1363", "120 V", "made for 200 to 250 V"),
        ("cee7-3", "120 V", "made for 200 to 250 V"),
        ("nema-5-15", "100 V", None),
        ("nema-5-20", "120 V", None),
        ("as3112-10", "230 V", None),
        ("iec60309-32", "400 V", None),
    ],
)
def test_a_receptacle_is_of_a_form_for_its_voltage(form: str, volts: str, told: str | None) -> None:
    found = problems({"circuits.0.voltage": volts, "circuits.0.receptacles": [{"id": "socket", "form": form}]})
    assert (found == []) if told is None else (len(found) == 1 and told in found[0])


@pytest.mark.parametrize(
    ("form", "rating", "told"),
    [
        ("nema-5-15", "20 A", "NEMA-5-15 is made for 15 A, and is rated 20 A here"),
        ("bs1363", "16 A", "BS1363 is made for 13 A, and is rated 16 A here"),
        ("cee7-3", "20 A", "made for 16 A"),
        ("nema-5-20", "20 A", None),
        ("cee7-3", "10 A", None),
        ("as3112-15", "15 A", None),
    ],
)
def test_a_receptacle_is_rated_for_no_more_than_its_form(form: str, rating: str, told: str | None) -> None:
    volts = "120 V" if form.startswith("nema") else "230 V"
    outlet = {**OUTLET, "form": form, "rating": rating}
    found = problems({"circuits.0.voltage": volts, "circuits.0.receptacles": [outlet]})
    assert (found == []) if told is None else (len(found) == 1 and told in found[0])


TWO = {
    "circuits": [
        {"id": "c1", "receptacles": [{"id": "r1"}]}, {"id": "c2", "receptacles": [{"id": "r1"}, {"id": "r2"}]},
    ],
}  # fmt: skip


@pytest.mark.parametrize(
    ("subject", "told"),
    [
        ("r1", "'r1' is on c1, c2; name the circuit too, such as r1+c1."),
        ("receptacle/r1", "'receptacle/r1' is on c1, c2; name the circuit too"),
        ("r1+c2", None),
        ("receptacle/r1+circuit/c1", None),
        ("r2", None),
        ("left", None),
    ],
)
def test_a_waiver_accepts_one_receptacle_of_a_name_that_two_circuits_have(subject: str, told: str | None) -> None:
    waiver = {"rule": "mains.box-flush", "subject": subject, "because": "seen"}
    found = problems({**TWO, "waivers": [waiver]})
    assert (found == []) if told is None else (len(found) == 1 and told in found[0])


WINDOW = {"kind": "window", "wall": "rear", "width": "1.2 m", "sill": "0.9 m", "height": "1.0 m"}


@pytest.mark.parametrize(
    ("changes", "told"),
    [
        ({}, "it lies 0.40 m across the opening `w1` of the same wall"),
        ({"from_wall_left": "1.7 m"}, None),
        ({"wall": "left"}, None),
        # One above the other is none across it, and what is not known of it may be above.
        ({"sill": "1.9 m", "height": "0.5 m"}, None),
        ({"sill": None}, None),
        ({"sill": "1.8 m", "height": "0.6 m"}, "it lies 0.10 m across"),
    ],
)
def test_no_opening_lies_across_another(changes: dict[str, object], told: str | None) -> None:
    second = {**WINDOW, "id": "w2", "from_wall_left": "1.3 m", **changes}
    both = [{**WINDOW, "id": "w1", "from_wall_left": "0.5 m"}, {key: one for key, one in second.items() if one}]
    found = problems({"room.openings": both})
    assert (found == []) if told is None else (len(found) == 1 and told in found[0]), found


@pytest.mark.parametrize(
    ("key", "box", "told"),
    [
        (
            "risers",
            {"from_left": "2 m", "from_front": "1 m", "width": "9 m", "height": "0.3 m"},
            "out of the room on its right",
        ),
        ("risers", {"from_front": "1 m", "depth": "25 m", "height": "0.3 m"}, "out of the room on its rear"),
        ("risers", {"from_front": "45 m", "height": "0.3 m"}, "out of the room on its rear"),
        ("risers", {"from_front": "1 m", "height": "0.3 m"}, None),
        ("walkways", {"from_left": "2 m", "from_front": "1 m", "width": "9 m", "depth": "1 m"}, "on its right side"),
        ("walkways", {"from_left": "0.2 m", "from_front": "1 m", "width": "1 m", "depth": "1 m"}, None),
    ],
)
def test_what_lies_on_the_floor_ends_inside_the_room(key: str, box: dict[str, str], told: str | None) -> None:
    found = problems({f"room.{key}": [{"id": "box", **box}]})
    assert (found == []) if told is None else (len(found) == 1 and told in found[0]), found


def test_an_anchor_sits_no_deeper_than_what_it_enters_is_thick() -> None:
    depth = {f"{M}.fixing.embedment": "60 mm", f"{M}.fixing.member_thickness": "50 mm"}
    assert problems(depth)[0].endswith("the anchor sits deeper than what it enters is thick.")
    assert problems({**depth, f"{M}.fixing.member_thickness": "100 mm"}) == []


@pytest.mark.parametrize(
    ("changes", "told"),
    [
        ({}, 1),
        ({"mounting": {"on": "floor"}}, 1),
        ({"mounting": {"on": "ceiling"}}, 0),
        ({"mounting": {"on": "grid-ceiling"}}, 0),
        ({"mounting": {}}, 0),
        ({"on": "left"}, 0),
        ({"on": "right"}, 1),
        ({"on": "left", "mounting": {"on": "floor"}}, 0),
        ({"on": "left", "mounting": {"on": "ceiling"}}, 1),
        ({"on": "left", "kind": "curtain", "mounting": {"on": "ceiling"}}, 0),
    ],
)
def test_a_panel_is_held_by_what_it_lies_on(changes: dict[str, object], told: int) -> None:
    found = problems({"treatments": [{**OVERHEAD, **changes}]})
    assert len(found) == told == sum("held by" in text for text in found)


@pytest.mark.parametrize(
    ("path", "value", "told"),
    [
        (f"{M}.box", {"document": "listing 1"}, "'front' holds it"),
        (f"{K}.crossover", "20 kHz", "out of range"),
        (f"{M}.accessories", "4000 kg", "out of range"),
        (f"{M}.secondary", {"kind": "chain", "attached_to": "joist", "rating": "900 kN"}, "out of range"),
        (f"{M}.fixing.report", {"document": "7", "withdrawal": "100 kN"}, "out of range"),
        ("circuits.0.rating", "300 A", "out of range"),
        ("treatments.0.mass", "900 kg", "out of range"),
    ],
)
def test_what_no_home_has_is_refused(path: str, value: object, told: str) -> None:
    assert any(told in text for text in problems({path: value})), problems({path: value})


def sheet_problems(**data: object) -> list[str]:
    """Return what is told of the sheet of a box with an amplifier of its own."""
    sheet = {"roomlint_product": 1, "id": "box", "kind": "loudspeaker", **data}
    tree, _ = read_tree(json.dumps(sheet), "box.product.yaml")
    assert tree is not None
    return [problem.text for problem in read_product(tree, "box.product.yaml")[1]]


@pytest.mark.parametrize(
    ("data", "told"),
    [
        ({"apparent_power": "60 VA", "power": "140 W"}, "it draws more in use than its nameplate says"),
        ({"power": "100 W", "idle_power": "120 W"}, "it draws more when idle than in use"),
        ({"apparent_power": "60 VA", "idle_power": "120 W"}, "it draws more when idle than its nameplate says"),
        ({"apparent_power": "140 VA", "power": "140 W", "idle_power": "20 W"}, None),
        ({"loudspeaker": {"impedance": "8 ohm", "minimum_impedance": "12 ohm"}}, "the least impedance is far above"),
        ({"loudspeaker": {"impedance": "8 ohm", "minimum_impedance": "8.4 ohm"}}, None),
    ],
)
def test_what_a_sheet_says_twice_agrees(data: dict[str, object], told: str | None) -> None:
    found = sheet_problems(**data)
    assert (found == []) if told is None else (len(found) == 1 and told in found[0]), found


@pytest.mark.parametrize(
    ("changes", "told"),
    [
        ({"conductor": "14 AWG", "outer_diameter": "2 mm"}, "its 2 conductors are thicker than the whole cable"),
        ({"conductor": "14 AWG", "outer_diameter": "8 mm"}, None),
        ({"conductor": "14 AWG", "outer_diameter": "2.5 mm", "carries": "control"}, None),
        ({"conductor": "14 AWG", "outer_diameter": "1 mm", "carries": "control"}, "its conductor is thicker"),
        ({"conductors": 1}, "a loudspeaker wants two conductors"),
        ({"conductors": 4, "conductor": "14 AWG", "outer_diameter": "3 mm"}, "its 4 conductors are thicker"),
    ],
)
def test_a_cable_holds_its_conductors(changes: dict[str, object], told: str | None) -> None:
    found = problems({"cables": [{"id": "run", "carries": "loudspeaker", **changes}]})
    assert (found == []) if told is None else (len(found) == 1 and told in found[0]), found
