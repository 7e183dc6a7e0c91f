"""What jsonschema finds is told at its place, in words that say what to do."""

from typing import Any

import pytest

from roomlint.source.check import explain
from roomlint.source.tree import read_tree

SCHEMA: dict[str, Any] = {
    "type": "object",
    "additionalProperties": False,
    "required": ["name"],
    "properties": {
        "name": {"type": "string", "minLength": 1, "maxLength": 5, "description": "What it is called."},
        "width": {"$ref": "#/$defs/length"},
        "kind": {"enum": ["flat", "gable"], "description": "Its shape."},
        "proof": {
            "type": ["string", "object"],
            "pattern": "^none$",
            "additionalProperties": False,
            "properties": {"document": {"type": "string"}},
            "required": ["document"],
        },
        "count": {"type": "integer", "minimum": 1, "maximum": 9},
        "fitted": {"type": "boolean", "examples": [True]},
        "id": {"type": "string", "pattern": "^[a-z]+$", "description": "Small letters.", "examples": ["left"]},
        "rows": {
            "type": "array",
            "minItems": 1,
            "maxItems": 2,
            "items": {"type": "object", "additionalProperties": False, "properties": {"seat_count": {}}},
        },
    },
    "$defs": {"length": {"type": "string", "title": "length", "examples": ["2.40 m", "7 ft 6 in"]}},
}


@pytest.mark.parametrize(
    ("text", "place", "words"),
    [
        ("name: a\nwdith: 2 m\n", "2:1", ["wdith", "width"]),
        ("name: a\nzzz: 2 m\n", "2:1", ["zzz", "known keys", "count"]),
        ("width: 2 m\n", "1:1", ["name", "What it is called"]),
        ("name: a\nwidth: 2.4\n", "2:8", ["2.4", "the unit too: '2.4 m'."]),
        ("name: a\nwidth: [2.4]\n", "2:9", ["width", "a list", "text"]),
        ("name: 7\n", "1:7", ["7", "a number", "text"]),
        ("name:\n", "1:1", ["name", "empty"]),
        ("name: a\nkind: falt\n", "2:7", ["falt", "flat"]),
        ("name: a\nkind: xyz\n", "2:7", ["flat, gable"]),
        ("name: a\ncount: 0\n", "2:8", ["at least 1"]),
        ("name: a\ncount: 10\n", "2:8", ["at most 9"]),
        ("name: a\ncount: 1.5\n", "2:8", ["whole number"]),
        ("name: a\nfitted: yes\n", "2:9", ["true or false"]),
        ("name: a\nid: LEFT\n", "2:5", ["LEFT", "Small letters", "left"]),
        ('name: a\nid: "left\\n"\n', "2:5", ["Small letters"]),
        ("name: ''\n", "1:7", ["at least 1"]),
        ("name: abcdef\n", "1:7", ["at most 5"]),
        ("name: a\nrows: []\n", "2:7", ["at least 1 items"]),
        ("name: a\nrows:\n- {seat_cuont: 1}\n", "3:4", ["seat_cuont", "seat_count"]),
        ("- name\n", "1:3", ["the file", "a list", "a mapping"]),
        ("name: a\nproof: tbd\n", "2:8", ["tbd", "none", "document"]),
        ("name: a\nproof: 3\n", "2:8", ["none or a mapping"]),
        ("name: a\nproof: {}\n", "2:8", ["document"]),
        ("name: 5 ft\nwidth: 2.4\n", "2:8", ["unit", "'2.4 ft' or '2.4 in'"]),
    ],
)
def test_message_stands_where_the_mistake_is(text: str, place: str, words: list[str]) -> None:
    node, problems = read_tree(text, "a.yaml")
    assert node is not None
    assert problems == []
    told = explain(node, node.plain(), SCHEMA)
    assert [f"{problem.place.line}:{problem.place.column}" for problem in told] == [place]
    for word in words:
        assert word in told[0].text


def test_every_mistake_is_told_in_file_order() -> None:
    node, _ = read_tree("width: 2\nkind: x\ncount: 0\nzzz: 1\n", "a.yaml")
    assert node is not None
    assert [problem.place.line for problem in explain(node, node.plain(), SCHEMA)] == [1, 1, 2, 3, 4]


def test_mistake_behind_an_alias_stands_at_the_alias() -> None:
    node, _ = read_tree("name: a\nrows: [&r {seat_cuont: 1}, *r]\n", "a.yaml")
    assert node is not None
    told = explain(node, node.plain(), SCHEMA)
    assert [(problem.place.line, problem.place.column) for problem in told] == [(2, 12), (2, 28)]


def test_a_key_that_is_missing_is_told_with_the_choices() -> None:
    node, _ = read_tree("name: a\n", "a.yaml")
    assert node is not None
    (told,) = explain(node, node.plain(), {**SCHEMA, "required": ["kind"]})
    assert told.text == "the file needs the key 'kind' (Its shape; one of flat, gable)."


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("room: {width: 12 ft, length: 14 ft}", "'width' belongs under size, not here."),
        ("room: {from_wall_left: 2 ft}", "'from_wall_left' belongs under openings, not here."),
        ("seats: [{id: a, height: 4 ft}]", "'height' belongs under ear, not here."),
        ("seats: [{id: a, ear: {row: 1}}]", "'row' belongs beside ear, not here."),
        ("seats: [{id: a, ear: {stage: design}}]", "unknown key 'stage'; known keys: from_left, from_right"),
        ("room: {project: {code: a}}", "'project' belongs beside room, not here."),
        ("loudspeakers: [{id: a, fixing: {}}]", "'fixing' belongs under mounting, not here."),
        ("loudspeakers: [{id: a, lable: M+030}]", "unknown key 'lable'; did you mean 'label'?"),
        ("loudspeakers: [{id: a, mounting: {fixing: {dia: 3 mm}}}]", "unknown key 'dia'; did you mean 'diameter'?"),
        ("room: {ceiling: {shape: flaat}}", "'flaat' is not known; did you mean 'flat'? allowed: flat, mono-pitch"),
        ("room: {level: mezzanine}", "'mezzanine' is not known; allowed: basement, ground, upper, attic."),
        ("room: {ceiling: {}}", "needs the key 'shape' (Its shape; one of flat, mono-pitch"),
        ("project: {region: us}\nroom: {size: {width: 12, length: 14}}", "write the unit too: '12 ft' or '12 in'."),
        ("room: {size: {width: 38, length: 14 ft}}", "write the unit too: '38 in'."),
        ("room: {size: {width: 406, length: 14 m}}", "write the unit too: '406 mm'."),
        ("room: {size: {width: 3'2, length: 14 ft}}", "write it too, such as '3 ft 2 in'."),
        ("room: {size: {width: 12 feet 6 1/2, length: 14 ft}}", "write it too, such as '12 ft 6 1/2 in'."),
        ("room: {size: {width: 1/2, length: 14 ft}}", "'1/2' has no unit; write it too, such as '1/2 in'."),
        ("loudspeakers: [{id: a, product: {mass: 14}}]", "write the unit too: '14 kg'."),
        ("room: {size: {width: 9 ft, length: 14 ft}}\nloudspeakers: [{id: a, product: {mass: 14}}]", "too: '14 lb'."),
        ("loudspeakers: [{id: a, product: {loudspeaker: {sensitivity: 88}}}]", "write the unit too: '88 dB'."),
        ("loudspeakers: [{id: a, product: {loudspeaker: {dispersion: 9 deg}}}]", "did you mean 'horizontal_coverage'?"),
        ("seats: [{id: a, reference: yes}]", "write true."),
        ("seats: [{id: a, reference: 'no'}]", "write false."),
        ("seats: {id: a}", "seats is a mapping, but none or a list belongs here; begin it with '- '."),
        ("picture: {kind: tv}", "'tv' is not known; did you mean 'display'?"),
        ("room: {level: cellar}", "did you mean 'basement'?"),
        ("room: {size: {width: 12, length: 14 m}}", "write the unit too: '12 m'."),
        ("loudspeakers: [{id: Left}]", "letters, digits and dashes alone; write 'left'."),
        ("loudspeakers: [{id: surround left}]", "write 'surround-left'."),
        ("layout: 4-5-0", "'4-5-0' is 4+5+0"),
        ("layout: 4 + 5 + 0", "'4 + 5 + 0' is 4+5+0"),
        ("seats: [{id: 1}]", "seats.id is a number '1', but text belongs here, such as 'left'; a number alone"),
        ("seat: []", "unknown key 'seat'; did you mean 'seats'?"),
        ("loudspeakers: [{id: a, aim: middle}]", "a mapping belongs here: {seat: ..., azimuth: ..., elevation: ...}."),
        ("room: {size: {width: -1 ft, length: 14 ft}}", "'-1 ft' is out of range; expected 3.28 ft to 98.4 ft."),
        ("room: {size: {width: 9 ft, length: 14 ft}}\nsurvey: {tolerance: 9 ft}", "to 3.94 in. Check its unit"),
        ("room: {size: {width: 3 m, length: 4 m}}\nsurvey: {tolerance: 9 m}", "expected 0 m to 100 mm"),
    ],
)  # fmt: skip
def test_a_slip_in_a_room_file_is_answered_with_what_belongs_there(text: str, said: str) -> None:
    from roomlint.design.read import read_design

    node, _ = read_tree(f"roomlint: 1\n{text}\n", "a.room.yaml")
    assert node is not None
    told = " ".join(problem.text for problem in read_design(node, "a.room.yaml", {})[1])
    assert said in told


@pytest.mark.parametrize("kind", ["room", "product", "house"])
def test_a_file_of_a_later_form_is_told_what_to_do(kind: str) -> None:
    from roomlint.design.read import read_design, read_house, read_product

    key = "roomlint" if kind == "room" else f"roomlint_{kind}"
    node, _ = read_tree(f"{key}: 2\n", "a.yaml")
    assert node is not None
    read = {"room": lambda: read_design(node, "a.yaml", {}), "product": lambda: read_product(node, "a.yaml"),
            "house": lambda: read_house(node, "a.yaml")}  # fmt: skip
    told = " ".join(problem.text for problem in read[kind]()[1])
    assert f"{key} is 2, the form of a later roomlint; this one reads 1. Install a newer one." in told


def test_the_key_on_is_a_text_to_us_bare_or_in_quotes_and_true_is_answered() -> None:
    """PyYAML reads YAML 1.1, where the bare word is true; in quotes it is the key that our schema knows."""
    import yaml

    from roomlint.design.read import read_design

    room = "roomlint: 1\nroom: {size: {width: 4 m, length: 5 m}}\nloudspeakers:\n  - {id: a, mounting: {%s: front}}\n"
    for key in ("on", '"on"', "'on'"):
        node, problems = read_tree(room % key, "a.room.yaml")
        assert problems == []
        assert node is not None
        design, problems = read_design(node, "a.room.yaml", {})
        assert problems == []
        mounting = design.loudspeakers[0].mounting
        assert mounting is not None
        assert mounting.on == "front"
        there = yaml.safe_load(room % key)["loudspeakers"][0]["mounting"]
        assert there == ({True: "front"} if key == "on" else {"on": "front"})
    told = [problem.text for problem in read_tree(room % "true", "a.room.yaml")[1]]
    (said,) = told
    assert said.startswith("the key `true` is true or false; keys are text.")
    assert said.endswith("It may have been `on` before another program wrote it: write on.")
