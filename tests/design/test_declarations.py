"""One declaration of a key gives its reader, its schema and its place in the list of keys; the three agree."""

from __future__ import annotations

import copy
import json
import re
import subprocess
import sys
from functools import cache
from importlib.resources import files
from pathlib import Path
from typing import TYPE_CHECKING, Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from jsonschema import Draft202012Validator
from roomlint.schemas.make import KINDS, text

from roomlint.design.house import House
from roomlint.design.model import Design
from roomlint.design.products import ProductSheet
from roomlint.design.read import read_design
from roomlint.design.reader import Book, read_element
from roomlint.source.check import _TELL, load_schema
from roomlint.source.dimensions import DIMENSIONS
from roomlint.source.listing import listed
from roomlint.source.quantity import QuantityError, parse
from roomlint.source.tree import read_tree
from roomlint.source.written import pattern

if TYPE_CHECKING:
    from collections.abc import Iterator

ROOM: dict[str, Any] = {
    "$schema": "../room.schema.json",
    "roomlint": 1,
    "project": {"code": "a-1", "stage": "design", "codes": {"electrical": "nec2023", "seismic_category": "d0"}},
    "survey": {"tolerance": "5 mm", "on": "2026-03-14"},
    "room": {
        "size": {"width": "4.5 m", "length": "6.0 m"},
        "ceiling": {"shape": "flat", "height": "2.7 m"},
        "walls": [{"id": "left", "finish": "glass"}],
    },
    "seats": [{"id": "middle", "ear": {"from_left": "2.25 m", "from_front": "4.0 m", "height": "1.1 m"}, "row": 1}],
    "loudspeakers": [
        {
            "id": "left",
            "label": "M+030",
            "position": {"from_left": "0.7 m", "from_front": "0.5 m", "height": "1.1 m"},
            "aim": {"seat": "middle"},
            "mounting": {
                "on": "front",
                "secondary": {"kind": "wire-rope", "attached_to": "joist", "rating": "500 N"},
                "fixing": {"engineer": "none", "count": 4},
            },
        }
    ],
    "subwoofers": [{"pair": ["sub-left", "sub-right"], "product": {"width": "40 cm", "loudspeaker": {}}}],
    "picture": {"diagonal": "65 in", "proportions": "16:9"},
    "treatments": [{"id": "cloud", "kind": "absorber", "absorption": {"125 Hz": 0.3}, "approval": "none"}],
    "circuits": [{"id": "av", "rcd": "none", "feeder_drop": "1.0 %"}],
}
PRODUCT = {"roomlint_product": 1, "id": "some-box", "kind": "loudspeaker", "width": "20 cm", "mass": "6 kg"}
HOUSE = {"roomlint_house": 1, "gate": "error", "products": ["products"], "open": {"design": "note"}}
VALID: dict[str, dict[str, Any]] = {"room": ROOM, "product": PRODUCT, "house": HOUSE}
OF = {"room": Design, "product": ProductSheet, "house": House}


@cache
def validator(kind: str) -> Any:
    return Draft202012Validator(load_schema(kind))  # type: ignore[arg-type]


def answers(kind: str, data: object) -> tuple[bool, bool, bool]:
    """Whether our walk finds the structure right, whether it tells nothing of single values, and jsonschema's view."""
    node, problems = read_tree(json.dumps(data), "a.yaml")
    assert problems == []
    assert node is not None
    book = Book("a.yaml", node)
    read_element(OF[kind], node, book)  # type: ignore[type-var]
    return not book.broken, not book.problems, validator(kind).is_valid(data)


def told(kind: str, data: object) -> list[str]:
    """Return what is told of data whose structure is wrong, without the sentence that stands in for an explanation."""
    node, _ = read_tree(json.dumps(data), "a.yaml")
    assert node is not None
    book = Book("a.yaml", node)
    read_element(OF[kind], node, book)  # type: ignore[type-var]
    return [problem.text for problem in book.answer(node, kind) if "have the form of a" not in problem.text]


@pytest.mark.parametrize("kind", list(VALID))
def test_valid_data_pass_both(kind: str) -> None:
    assert answers(kind, VALID[kind]) == (True, True, True)


ODD = st.sampled_from(
    [
        *(None, True, False, 0, 1, 1.0, 2.5, -1, 10**6, "", "x", "M+030", "left", "2 m", "a" * 500, "flat", "design"),
        *("LFE1", "2026-01-02", "none", "30 mA", "2 kg", "banana", "2.4", "80 Hz ± 1 Hz", "7 ft 6 in", "14 AWG"),
        *([], {}, ["a"], {"id": "a"}, [[]], [{}], {"x": None}, {"document": "x"}),
    ]
).map(copy.deepcopy)


def spots(data: object) -> list[tuple[Any, Any]]:
    """Every container and key of it where data can be changed."""
    keys: list[Any] = list(data) if isinstance(data, dict) else list(range(len(data))) if isinstance(data, list) else []
    found = [(data, key) for key in keys]
    for key in keys:
        found += spots(data[key])  # type: ignore[index]
    return found


@pytest.mark.parametrize("kind", list(VALID))
@pytest.mark.parametrize("link", ["", [1], None, "a" * 500])
def test_a_schema_named_for_an_editor_is_held_like_any_key(kind: str, link: object) -> None:
    structure, values, theirs = answers(kind, VALID[kind] | {"$schema": link})
    assert not theirs
    assert not (structure and values)


@given(data=st.data(), kind=st.sampled_from(list(VALID)))
@settings(max_examples=400, deadline=None)
def test_our_walk_and_jsonschema_give_the_same_answer(data: st.DataObject, kind: str) -> None:
    changed = copy.deepcopy(VALID[kind])
    for _ in range(data.draw(st.integers(1, 3))):
        holder, key = data.draw(st.sampled_from(spots(changed) or [(changed, "roomlint")]))
        how = data.draw(st.sampled_from(["replace", "remove", "add"]))
        if how == "replace":
            holder[key] = data.draw(ODD)
        elif how == "remove":
            del holder[key]
        elif isinstance(holder, dict):
            holder[data.draw(st.sampled_from(names(kind)))] = data.draw(ODD)
        else:
            holder.append(data.draw(ODD))
    structure, values, theirs = answers(kind, changed)
    if not structure:
        assert not theirs
        assert told(kind, changed)
    elif not theirs:
        assert not values  # text that is no quantity of that dimension: the parser tells it, not jsonschema
    # A value that has the form but is out of range is ours to tell; no schema can.


def walk(schema: object, *, under: str = "") -> Iterator[tuple[str, dict[str, Any]]]:
    """Yield every schema inside a schema, with the key it stands for."""
    if not isinstance(schema, dict):
        return
    yield under, schema
    for holder in ("properties", "$defs"):
        for name, below in schema.get(holder, {}).items():
            yield from walk(below, under=name)
    yield from walk(schema.get("items"), under=under)


@cache
def names(kind: str) -> list[str]:
    return sorted({name for name, _ in walk(load_schema(kind)) if name})


@pytest.mark.parametrize("kind", list(KINDS))
def test_the_committed_schemas_are_as_the_declarations_are_today(kind: str) -> None:
    assert (files("roomlint.schemas") / f"{kind}.schema.json").read_text(encoding="utf-8") == text(kind)


KNOWN = {
    *("$schema", "$id", "$ref", "$defs", "title", "description", "examples", "type", "properties", "required", "enum"),
    *(
        "additionalProperties",
        "items",
        "minItems",
        "maxItems",
        "minimum",
        "maximum",
        "minLength",
        "maxLength",
        "pattern",
    ),
}
SAID_ELSEWHERE = {"$schema", "$id", "$ref", "$defs", "title", "description", "examples", "properties", "items", "type"}


@pytest.mark.parametrize("kind", list(KINDS))
def test_no_schema_has_a_keyword_that_validators_do_not_know(kind: str) -> None:
    Draft202012Validator.check_schema(load_schema(kind))
    used = {keyword for _, schema in walk(load_schema(kind)) for keyword in schema}
    assert used <= KNOWN
    assert used - SAID_ELSEWHERE <= set(_TELL)


@pytest.mark.parametrize("kind", list(KINDS))
def test_every_example_is_valid_where_it_stands(kind: str) -> None:
    root = load_schema(kind)
    for name, schema in walk(root):
        for example in schema.get("examples", ()):
            assert Draft202012Validator({**schema, "$defs": root.get("$defs", {})}).is_valid(example), name
            if "title" in schema and schema["title"] in DIMENSIONS and example != "none":
                parse(example, schema["title"])


@pytest.mark.parametrize("kind", list(KINDS))
def test_every_key_says_what_it_is(kind: str) -> None:
    for name, schema in walk(load_schema(kind)):
        assert schema.get("description"), name


@pytest.mark.parametrize("kind", list(KINDS))
def test_left_is_no_example_of_a_product_a_rack_or_a_seat(kind: str) -> None:
    shown = {name for name, schema in walk(load_schema(kind)) if "left" in schema.get("examples", ())}
    assert shown <= {"id", "low_side", "low_sides", "hinge", "pair"}


@pytest.mark.parametrize("width", ["banana", 2.4, "2.4", "2.4 kg", "80 Hz", "", None, ["2.4 m"], "a" * 200])
def test_any_validator_refuses_what_is_no_length(width: object) -> None:
    data = copy.deepcopy(ROOM)
    data["room"]["size"]["width"] = width
    assert not validator("room").is_valid(data)


WRITTEN = [
    *(
        "2.4 m",
        "2.40 m ± 1 cm",
        "2.40 m +/- 1 cm",
        "2.4 m ± 5 %",
        "7 ft 6 in",
        "7' 6-1/2\"",
        "7′ 6½″",
        "3/8 in",
        "½ in",
    ),
    *("6-1/2 in", "-1.5 dB", "\u22123 dB", "14 AWG", "AWG 14", "#12 AWG", "4/0 AWG", "2.5 mm2", "20°", "21 °C", "21℃"),
    *("8 Ω", "1e3 mm", "12.5kg", "5 lb 3 oz", "3 min 2 s", "0.5 µs", "30 mA", "+3 dB", "3 dm", "1 furlong", "2\u00a0m"),
    *("80 %", "0.8", "343 m/s ± 1 m/s", "70 degF", "55 cfm", "18 Gbit/s", "12 fL", "35 lb"),
]


@pytest.mark.parametrize("dimension", list(DIMENSIONS))
def test_the_form_of_a_quantity_lets_pass_what_the_parser_reads(dimension: str) -> None:
    form = re.compile(pattern(dimension))
    for written in WRITTEN:
        try:
            parse(written, dimension)
        except QuantityError:
            continue
        assert form.search(written), written


@given(
    whole=st.integers(0, 999), unit=st.sampled_from(["m", "mm", "ft", "in", "'", '"']), gap=st.sampled_from(["", " "]),
    tail=st.sampled_from(["", " ± 1 cm", " +/- 1/4 in", " 1/2 in", "-3 in"]),
    over=st.sampled_from(["", "-1/2", ".5", "½"]),
)  # fmt: skip
def test_the_form_of_a_length_lets_pass_what_the_parser_reads(
    whole: int, unit: str, gap: str, tail: str, over: str
) -> None:
    written = f"{whole}{over}{gap}{unit}{tail}"
    try:
        parse(written, "length")
    except QuantityError:
        return
    assert re.search(pattern("length"), written)


def test_a_right_file_loads_neither_jsonschema_nor_pint_nor_the_schema(tmp_path: Path) -> None:
    (tmp_path / "a.yaml").write_text(json.dumps(ROOM), encoding="utf-8")
    code = (
        "import sys; from roomlint.source.tree import read_tree; from roomlint.design.read import read_design;"
        "node, problems = read_tree(open(sys.argv[1], 'rb').read(), 'a');"
        "assert not problems and not read_design(node, 'a', {})[1];"
        "sys.exit(bool({'jsonschema', 'pint', 'json', 'difflib', 'importlib.resources'} & set(sys.modules)))"
    )
    assert subprocess.run([sys.executable, "-c", code, tmp_path / "a.yaml"], check=False).returncode == 0


@given(data=st.binary(max_size=200) | st.text(max_size=200))
@settings(max_examples=300, deadline=None)
def test_any_file_is_read_or_answered(data: bytes | str) -> None:
    node, problems = read_tree(data, "a.yaml")
    assert node is not None or problems
    if node is not None:
        told = read_design(node, "a.yaml", {})[1]
        assert told
        assert all(problem.place.line >= 1 and problem.place.column >= 1 for problem in problems + told)


LINES = json.dumps(ROOM, indent=1)


@given(
    at=st.integers(0, len(LINES)),
    cut=st.integers(0, 30),
    put=st.text(st.sampled_from("{}[]:,-?&*!|>'\"%@`#~<= \n\t\r01.ax\u2028\ufeff\U0001f600é\\"), max_size=8),
)
@settings(max_examples=500, deadline=None)
def test_any_slip_of_the_pen_is_read_or_answered(at: int, cut: int, put: str) -> None:
    slipped = LINES[:at] + put + LINES[at + cut :]
    lines = slipped.count("\n") + 1
    node, problems = read_tree(slipped, "a.yaml")
    assert node is not None or problems
    told = read_design(node, "a.yaml", {})[1] if node is not None else []
    for problem in problems + told:
        assert 1 <= problem.place.line <= problem.place.end_line <= lines + 1
        assert problem.place.column >= 1
        assert "\n" not in problem.text


@pytest.mark.parametrize("kind", list(KINDS))
def test_the_list_of_keys_has_every_key_once_with_its_form(kind: str) -> None:
    found = list(listed(kind))
    paths = [one.path for one in found]
    assert len(paths) == len(set(paths))
    assert all(one.about and one.form for one in found)
    shared = set(load_schema(kind)["$defs"])
    assert set(names(kind)) - shared <= {path.rpartition(".")[2] for path in paths}


def test_the_list_of_keys_says_what_belongs_where() -> None:
    found = {one.path: one for one in listed("room")}
    assert found["seats[].ear.height"].form == "length"
    assert found["seats[].ear.height"].example == "1.10 m"
    assert found["seats[].row"].form == "whole number, 1 to 12"
    assert found["room.ceiling.shape"].form == "one of flat, mono-pitch, gable, corners, tray, part-sloped, pieces"
    assert found["room.ceiling.shape"].required
    assert found["loudspeakers[].mounting.secondary"].form == "none, or mapping"
    assert found["circuits[].rcd"].form == "current, or none"
    assert found["loudspeakers[].product"].form == "text, or mapping"
    assert found["loudspeakers[].product.loudspeaker.sensitivity"].form == "level"
    assert found["loudspeakers[].pair"].form == "list of text"


@pytest.mark.parametrize("width", ["", " ", "banana", "2.4", "a" * 200])
def test_a_quantity_that_is_none_is_told_whatever_else_is_wrong(width: str) -> None:
    for extra in ({}, {"chairs": []}):
        data = copy.deepcopy(ROOM) | extra
        data["room"]["size"]["width"] = width
        node, _ = read_tree(json.dumps(data, indent=1), "a.yaml")
        assert node is not None
        problems = read_design(node, "a.yaml", {})[1]
        size = node.get("room").get("size").get("width").place  # type: ignore[union-attr]
        assert [problem.place for problem in problems if "wall" not in problem.text].count(size) == 1


EXAMPLES = Path(__file__).parent.parent.parent / "example_projects"


@pytest.mark.parametrize("kind", list(KINDS))
def test_an_outside_validator_reads_the_schema_and_passes_the_examples(kind: str) -> None:
    # It reads patterns as ECMA-262 in its strict mode, where Python lets more escapes pass.
    schema = str(files("roomlint.schemas") / f"{kind}.schema.json")
    found = sorted(
        str(path) for path in EXAMPLES.rglob("*.yaml") if path.name.endswith((f".{kind}.yaml", f"{kind}.yaml"))
    )
    assert found
    command = [sys.executable, "-m", "check_jsonschema", "--schemafile", schema, *found]
    done = subprocess.run(command, capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stdout + done.stderr


@pytest.mark.parametrize("dimension", list(DIMENSIONS))
def test_a_form_means_the_same_to_a_strict_engine(dimension: str) -> None:
    regress = pytest.importorskip("regress")
    strict, ours = regress.Regex(pattern(dimension), flags="u"), re.compile(pattern(dimension))
    for written in [*WRITTEN, "banana", "2.4", "2.4 kg", "80 Hz", "", "4 m,", "± 3 m"]:
        assert (strict.find(written) is not None) == (ours.search(written) is not None), written


@pytest.mark.parametrize("dimension", list(DIMENSIONS))
def test_the_form_lets_pass_every_unit_that_the_parser_knows_and_refuses_those_of_other_dimensions(
    dimension: str,
) -> None:
    from roomlint.source.dimensions import SYMBOLS
    from roomlint.source.units import UNITS

    form = re.compile(pattern(dimension))
    for unit in (*UNITS, *SYMBOLS):
        written = f"3 {unit}".strip()
        try:
            parse(written, dimension)
        except QuantityError:
            # A unit that reports show belongs to one dimension for any validator; rarer ones are for the parser.
            same = {"conductor": "area"}.get(dimension, dimension)
            assert unit not in SYMBOLS or SYMBOLS[unit].dimension == same or form.search(written) is None, written
            continue
        assert form.search(written), written


@given(
    dimension=st.sampled_from([name for name in DIMENSIONS if name != "ratio"]),
    text=st.text(st.sampled_from("abmxyz fit,.'-+±/"), max_size=12) | st.from_regex(r"\A[-+]?[0-9]{1,4}(\.[0-9]+)?\Z"),
)
def test_what_has_no_number_or_no_unit_is_refused_by_schema_and_program_alike(dimension: str, text: str) -> None:
    with pytest.raises(QuantityError):
        parse(text, dimension)
    assert re.search(pattern(dimension), text) is None
