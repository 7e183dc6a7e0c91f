"""Schema checks: messages at their place, and the compiled checks' agreement with jsonschema."""

import copy
import json
import subprocess
import sys
from functools import cache
from importlib.resources import files
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from roomlint.schemas.compiled import CHECKS, NotValid

from roomlint.source.check import _TELL, check, explain, load_schema
from roomlint.source.quantity import parse
from roomlint.source.tree import read_tree

SCHEMA: dict[str, Any] = {
    "type": "object",
    "additionalProperties": False,
    "required": ["name"],
    "properties": {
        "name": {"type": "string", "minLength": 1, "maxLength": 5, "description": "What it is called."},
        "width": {"$ref": "#/$defs/length"},
        "kind": {"enum": ["flat", "gable"]},
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
    "$defs": {"length": {"type": "string", "quantity": "length", "examples": ["2.40 m"]}},
}


@pytest.mark.parametrize(
    ("text", "place", "words"),
    [
        ("name: a\nwdith: 2 m\n", "2:1", ["wdith", "width"]),
        ("name: a\nzzz: 2 m\n", "2:1", ["zzz", "known keys", "count"]),
        ("width: 2 m\n", "1:1", ["name", "What it is called"]),
        ("name: a\nwidth: 2.4\n", "2:8", ["2.4", "unit", "2.40 m"]),
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


ROOM: dict[str, Any] = {
    "roomlint": 1,
    "room": {
        "size": {"width": "4.5 m", "length": "6.0 m"},
        "ceiling": {"shape": "flat", "height": "2.7 m"},
        "walls": [{"id": "left", "finish": "glass"}],
    },
    "seats": [{"id": "middle", "ear": {"from_left": "2.25 m", "from_front": "4.0 m", "height": "1.1 m"}}],
    "loudspeakers": [
        {
            "id": "left",
            "label": "M+030",
            "position": {"from_left": "0.7 m", "from_front": "0.5 m", "height": "1.1 m"},
            "aim": {"seat": "middle"},
        }
    ],
}
PRODUCT = {"roomlint_product": 1, "id": "some-box", "kind": "loudspeaker", "width": "20 cm", "mass": "6 kg"}
VALID: dict[str, dict[str, Any]] = {
    "room": ROOM,
    "product": PRODUCT,
    "house": {"roomlint_house": 1, "gate": "error", "products": ["products"]},
}


def verdicts(kind: str, data: object) -> tuple[bool, bool]:
    """Whether the compiled check and jsonschema let data pass."""
    try:
        CHECKS[kind](copy.deepcopy(data))
    except NotValid:
        compiled = False
    else:
        compiled = True
    node, problems = read_tree(json.dumps(data), "a.yaml")
    assert problems == []
    assert node is not None
    return compiled, not explain(node, data, load_schema(kind))


@pytest.mark.parametrize("kind", list(VALID))
def test_valid_data_pass_both_checks(kind: str) -> None:
    assert verdicts(kind, VALID[kind]) == (True, True)


ODD = st.sampled_from(
    [
        *(None, True, False, 0, 1, 1.0, 2.5, -1, 10**6, "", "x", "M+030", "left\n", "2 m", "a" * 500, "flat", "design"),
        *("LFE1", "2026-01-02", [], {}, ["a"], {"id": "a"}, [[]], [{}], {"x": None}),
    ]
).map(copy.deepcopy)


def spots(data: object) -> list[tuple[Any, Any]]:
    """Every container and key of it where data can be changed."""
    keys: list[Any] = list(data) if isinstance(data, dict) else list(range(len(data))) if isinstance(data, list) else []
    found = [(data, key) for key in keys]
    for key in keys:
        found += spots(data[key])  # type: ignore[index]
    return found


@given(data=st.data(), kind=st.sampled_from(list(VALID)))
@settings(max_examples=300, deadline=None)
def test_compiled_check_agrees_with_jsonschema(data: st.DataObject, kind: str) -> None:
    changed = copy.deepcopy(VALID[kind])
    for _ in range(data.draw(st.integers(1, 3))):
        holder, key = data.draw(st.sampled_from(spots(changed) or [(changed, "roomlint")]))
        how = data.draw(st.sampled_from(["replace", "remove", "add"]))
        if how == "replace":
            holder[key] = data.draw(ODD)
        elif how == "remove":
            del holder[key]
        elif isinstance(holder, dict):
            holder[data.draw(known_keys(kind))] = data.draw(ODD)
        else:
            holder.append(data.draw(ODD))
    compiled, explained = verdicts(kind, changed)
    assert compiled == explained


@cache
def known_keys(kind: str) -> st.SearchStrategy[str]:
    """Names of keys anywhere in a schema."""
    names: set[str] = set()

    def walk(part: object) -> None:
        if isinstance(part, dict):
            names.update(part.get("properties", {}))
            for below in part.values():
                walk(below)

    walk(load_schema(kind))
    return st.sampled_from(sorted(names))


def test_compiled_checks_are_as_the_schemas_are_today() -> None:
    from roomlint.schemas.make_compiled import compiled

    written = (files("roomlint.schemas") / "compiled.py").read_text(encoding="utf-8")
    assert compiled() == written


ANNOTATIONS = {"$schema", "$id", "title", "description", "examples", "quantity", "$defs", "properties", "items", "$ref"}


def keywords(schema: object) -> set[str]:
    if not isinstance(schema, dict):
        return set()
    found = set(schema)
    for name in ("properties", "$defs"):
        for below in schema.get(name, {}).values():
            found |= keywords(below)
    return found | keywords(schema.get("items"))


@pytest.mark.parametrize("kind", list(CHECKS))
def test_every_keyword_of_the_schemas_can_be_told(kind: str) -> None:
    assert keywords(load_schema(kind)) - ANNOTATIONS <= set(_TELL)


def quantities(schema: object) -> list[tuple[str, str]]:
    if isinstance(schema, dict):
        own = [(text, schema["quantity"]) for text in schema.get("examples", [])] if "quantity" in schema else []
        return own + [pair for below in schema.values() for pair in quantities(below)]
    return []


@pytest.mark.parametrize("kind", list(CHECKS))
def test_examples_of_quantities_are_quantities(kind: str) -> None:
    for text, dimension in quantities(load_schema(kind)):
        parse(text, dimension)


def test_valid_file_does_not_load_jsonschema(tmp_path: Path) -> None:
    (tmp_path / "a.yaml").write_text(json.dumps(ROOM), encoding="utf-8")
    code = (
        "import sys; from roomlint.source.tree import read_tree; from roomlint.source.check import check;"
        "node, problems = read_tree(open(sys.argv[1], 'rb').read(), 'a');"
        "assert not problems and not check(node, 'room'); sys.exit('jsonschema' in sys.modules)"
    )
    assert subprocess.run([sys.executable, "-c", code, tmp_path / "a.yaml"], check=False).returncode == 0


WRITTEN = json.dumps(ROOM, indent=1)


@given(data=st.binary(max_size=200) | st.text(max_size=200))
@settings(max_examples=300, deadline=None)
def test_any_file_is_read_or_answered(data: bytes | str) -> None:
    node, problems = read_tree(data, "a.yaml")
    assert node is not None or problems
    if node is not None:
        told = check(node, "room")
        assert all(problem.place.line >= 1 and problem.place.column >= 1 for problem in problems + told)


@given(
    at=st.integers(0, len(WRITTEN)),
    cut=st.integers(0, 30),
    put=st.text(st.sampled_from("{}[]:,-?&*!|>'\"%@`#~<= \n\t\r01.ax\u2028\ufeff\U0001f600é\\"), max_size=8),
)
@settings(max_examples=500, deadline=None)
def test_any_slip_of_the_pen_is_read_or_answered(at: int, cut: int, put: str) -> None:
    text = WRITTEN[:at] + put + WRITTEN[at + cut :]
    lines = text.count("\n") + 1
    node, problems = read_tree(text, "a.yaml")
    assert node is not None or problems
    told = check(node, "room") if node is not None else []
    for problem in problems + told:
        assert 1 <= problem.place.line <= problem.place.end_line <= lines + 1
        assert problem.place.column >= 1
        assert "\n" not in problem.text
