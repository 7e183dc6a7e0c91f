"""Reading YAML: where every value stands, and what is refused."""

import json

import pytest

from roomlint.source.node import Node
from roomlint.source.place import Place
from roomlint.source.tree import MAX_ALIAS_NODES, MAX_DEPTH, read_tree


def read(text: bytes | str) -> Node:
    node, problems = read_tree(text, "a.yaml")
    assert problems == []
    assert node is not None
    return node


def at(node: Node | None, *steps: str | int) -> Node:
    for step in steps:
        assert node is not None
        node = node.value[step]
    assert node is not None
    return node


def span(place: Place | None) -> str:
    assert place is not None
    return f"{place.line}:{place.column}-{place.end_line}:{place.end_column}"


def test_scalar_place_is_its_text() -> None:
    assert span(at(read("a:\n  b: 2.40 m  # tape\n"), "a", "b").place) == "2:6-2:12"


def test_key_place_is_the_key() -> None:
    assert span(at(read("a:\n  'b c': 1\n"), "a", "b c").key_place) == "2:3-2:8"


def test_quotes_belong_to_the_place() -> None:
    assert span(at(read("a: 'x y'\n"), "a").place) == "1:4-1:9"


def test_anchor_does_not_belong_to_the_place() -> None:
    assert span(at(read("a: &here  12 m\n"), "a").place) == "1:11-1:15"


def test_mapping_place_is_its_first_key() -> None:
    assert span(at(read("a:\n  bcd: 1\n  e: 2\n"), "a").place) == "2:3-2:6"


def test_list_place_is_its_first_item() -> None:
    assert span(at(read("a:\n  - id: x\n"), "a").place) == "2:5-2:7"


def test_empty_value_is_placed_at_its_key() -> None:
    assert span(at(read("abc:\nd: 1\n"), "abc").place) == "1:1-1:4"


def test_empty_mapping_has_a_place() -> None:
    assert span(at(read("a: {}\n"), "a").place) == "1:4-1:5"


def test_block_scalar_ends_with_its_last_line_of_text() -> None:
    assert span(at(read("a: |\n  one\n  two\n\n# remark\nb: 1\n"), "a").place) == "1:4-3:6"


def test_columns_count_code_points() -> None:
    assert span(at(read("{é: 😀😀, b: 12 m}"), "b").place) == "1:12-1:16"


def test_byte_order_mark_shifts_nothing() -> None:
    assert span(at(read(b"\xef\xbb\xbfa: 1\n"), "a").key_place) == "1:1-1:2"


def test_crlf_shifts_nothing() -> None:
    node = read("a: 1\r\nb:\r\n  c: two words\r\n")
    assert span(at(node, "b", "c").place) == "3:6-3:15"
    assert node.plain() == {"a": 1, "b": {"c": "two words"}}


def test_bytes_and_text_read_alike() -> None:
    text = "a: [é, {b: 1}]\n"
    assert read(text).plain() == read(text.encode()).plain()


def test_path_names_every_step() -> None:
    node = read("speakers:\n  - position: {'from left': 1, x-y: 2}\n")
    assert at(node, "speakers", 0, "position", "x-y").path == "speakers[0].position.x-y"
    assert at(node, "speakers", 0, "position", "from left").path == "speakers[0].position['from left']"
    assert node.path == ""


def test_get_answers_only_for_mappings() -> None:
    node = read("a: [1]\n")
    assert node.get("b") is None
    assert at(node, "a").get("b") is None
    assert at(node, "a") is node.get("a")


@pytest.mark.parametrize(
    ("text", "value"),
    [
        *[(empty, None) for empty in ("", "~", "null", "Null", "NULL")],
        *[(yes, True) for yes in ("true", "True", "TRUE")],
        *[(no, False) for no in ("false", "False", "FALSE")],
        *[("12", 12), ("-7", -7), ("+3", 3), ("007", 7), ("0o17", 15), ("0x1F", 31)],
        *[("1.5", 1.5), ("-.5", -0.5), ("2.", 2.0), ("1e3", 1000.0), ("12e-1", 1.2)],
        *[(word, word) for word in ("yes", "no", "on", "off", "nULL", "1_000", "12:30", "1.2 m", "0b11", "2026-01-02")],
        *[(word, word) for word in ("-", "+", ".", "0x", "1e", "--1", "nan", "inf", "0o8") if word != "-"],
        *[("'12'", "12"), ('"true"', "true"), ("''", "")],
    ],
)
def test_scalars_follow_the_core_schema(text: str, value: object) -> None:
    found = at(read(f"a: {text}\n"), "a").value
    assert found == value
    assert type(found) is type(value)


def test_alias_has_the_value_of_its_anchor_at_its_own_place() -> None:
    node = read("a: &x {b: 1 m}\nlonger: *x\n")
    copy = at(node, "longer", "b")
    assert copy.value == "1 m"
    assert copy.path == "longer.b"
    assert span(copy.place) == "2:9-2:11"
    assert span(at(node, "longer").place) == "2:9-2:11"
    assert span(at(node, "a", "b").place) == "1:11-1:14"


def test_anchor_may_be_set_again() -> None:
    assert read("a: &x 1\nb: *x\nc: &x 2\nd: *x\n").plain() == {"a": 1, "b": 1, "c": 2, "d": 2}


BROKEN = [
    # what is wrong, text, line:column of each answer, a word of the first
    ("empty", "", ["1:1"], "empty"),
    ("only a remark", "# nothing\n", ["1:1"], "empty"),
    ("duplicate key", "a: 1\nb: 2\na: 3\n", ["3:1"], "first on line 1"),
    ("duplicate key in braces", "x: {a: 1, a: 2}\n", ["1:11"], "twice"),
    ("duplicate key in other quotes", "a: 1\n'a': 2\n", ["2:1"], "twice"),
    ("every duplicate", "a: 1\na: 2\nb: {c: 1, c: 2}\n", ["2:1", "3:11"], "twice"),
    ("merge key", "a: &x {b: 1}\nc:\n  <<: *x\n", ["3:3"], "merge"),
    ("number as key", "a: 1\n2: b\n", ["2:1"], "number"),
    ("word for nothing as key", "null: b\n", ["1:1"], "empty"),
    ("true as key", "true: b\n", ["1:1"], "true"),
    ("list as key", "? [a, b]\n: c\n", ["1:3"], "key"),
    ("mapping as key", "{a: 1}: c\n", ["1:1"], "key"),
    ("alias as key", "a: &x b\n*x : c\n", ["2:1"], "key"),
    ("tag", "a: !thing b\n", ["1:4"], "!thing"),
    ("tag of a language", "a: !!python/object:os.system b\n", ["1:4"], "tag"),
    ("tag on a list", "a: !!set [b]\n", ["1:4"], "tag"),
    ("tag on a key", "!x a: b\n", ["1:1"], "tag"),
    ("tag of no handle", "a: !h!x b\n", ["1:4"], "tag"),
    ("unknown alias", "a: &near 1\nb: *neat\n", ["2:4"], "near"),
    ("alias of itself", "a: &x [1, *x]\n", ["1:11"], "inside"),
    ("alias of a mapping above it", "a: &x\n  b:\n    c: *x\n", ["3:8"], "inside"),
    ("infinity", "a: [1, -.inf]\n", ["1:8"], "finite"),
    ("not a number", "a: .NaN\n", ["1:4"], "finite"),
    ("too large", "a: 1e999\nb: 99999999999999999999\n", ["1:4", "2:4"], "too large"),
    ("very many digits", f"a: {'9' * 5000}\n", ["1:4"], "too large"),
    ("second document", "a: 1\n---\nb: 2\n", ["2:1"], "second document"),
    ("text after the end", "a: 1\n...\nb: 2\n", ["3:1"], "one document"),
    ("directive", "%TAG !e! tag:example.org:\n---\na: 1\n", ["1:1"], "directive"),
    ("another version", "%YAML 1.1\n---\na: 1\n", ["1:1"], "1.2"),
    ("tab as indent", "a:\n\tb: 1\n", ["2:1"], "tab"),
    ("indent that fits nothing", "a:\n    b: 1\n  c: 2\n", ["3:3"], "indent"),
    ("colon in a value", "a: b: c\n", ["1:5"], "quotes"),
    ("no colon", "a: 1\nb\nc: 2\n", ["3:1"], "colon"),
    ("open list", "a: [1, 2\nb: 3\n", ["2:2"], "]"),
    ("open mapping", "a: {b: 1\n", ["2:1"], "}"),
    ("open quotes", "a: 'b\nc: 1\n", ["3:1"], "line 1"),
    ("sign that starts nothing", "a: @b\n", ["1:4"], "quotes"),
    ("grave accent", "a: `b`\n", ["1:4"], "quotes"),
    ("unknown escape", 'a: "C:\\q"\n', ["1:7"], "backslash"),
    ("half a character", 'a: "\\ud800"\n', ["1:7"], "escape"),
    ("escape to a control character", 'a: "x\\0y"\n', ["1:4"], "control"),
    ("item beside its key", "a: - b\n", ["1:4"], "list item"),
    ("comma too many", "a: [b,, c]\n", ["1:7"], "comma"),
    ("star without name", "a: *\n", ["1:4"], "alias"),
    ("text on the line of a bar", "a: | b\n  c\n", ["1:6"], "next line"),
    ("null byte", "a: 1\nb: x\0y\n", ["2:5"], "U+0000"),
    ("several control characters", "a: \x01\n\x7f\n", ["1:4", "2:1"], "U+0001"),
    ("next-line character", "a: x\x85y\n", ["1:5"], "next-line"),
    ("line separator", "é: x\u2028y\n", ["1:5"], "line separator"),
    ("lone carriage return", "a: 1\rb: 2\n", ["1:5"], "carriage return"),
    ("byte order mark inside", "a: \ufeffb\n", ["1:4"], "U+FEFF"),
    ("half a surrogate", "a: \ud800\n", ["1:4"], "U+D800"),
    ("Latin-1", "a: 1\nb: caf\xe9\n".encode("latin-1"), ["2:7"], "0xe9"),
    ("not UTF-8 after a wide character", b"a: \xf0\x9f\x98\x80\xff\n", ["1:5"], "UTF-8"),
    ("UTF-16", "a: 1\n".encode("utf-16"), ["1:1"], "UTF-16"),
    ("too long", "#" * (1 << 20) + "#", ["1:1"], "1048576"),
]


@pytest.mark.parametrize(("text", "places", "word"), [case[1:] for case in BROKEN], ids=[case[0] for case in BROKEN])
def test_broken_file_is_answered_at_its_place(text: bytes | str, places: list[str], word: str) -> None:
    _, problems = read_tree(text, "a.yaml")
    assert [f"{problem.place.line}:{problem.place.column}" for problem in problems] == places
    assert word in problems[0].text


def test_problems_of_meaning_leave_the_rest_readable() -> None:
    node, problems = read_tree("a: 1\na: 2\nb: {c: 3}\n", "a.yaml")
    assert len(problems) == 1
    assert node is not None
    assert node.plain() == {"a": 1, "b": {"c": 3}}


def test_message_stays_on_one_line_whatever_the_key() -> None:
    _, problems = read_tree(json.dumps("a\nb" * 50) + ": 1\n" + json.dumps("a\nb" * 50) + ": 2\n", "a.yaml")
    assert len(problems) == 1
    assert "\n" not in problems[0].text
    assert len(problems[0].text) < 150


def test_nesting_to_the_limit_is_read() -> None:
    assert read("[" * MAX_DEPTH + "]" * MAX_DEPTH).value != []


@pytest.mark.parametrize("opening", ["[", "{a: ", "- ", "? ", "[a, ", "- [", "{? "])
def test_deep_nesting_is_refused(opening: str) -> None:
    text = (opening * (1 << 20))[: 1 << 20]
    _, problems = read_tree(text, "a.yaml")
    assert problems


def test_one_past_the_nesting_limit_is_refused_there() -> None:
    _, problems = read_tree("[" * (MAX_DEPTH + 1) + "]" * (MAX_DEPTH + 1), "a.yaml")
    assert [(p.place.line, p.place.column) for p in problems] == [(1, MAX_DEPTH + 1)]


def test_nesting_through_aliases_counts() -> None:
    lines = ["a0: &a0 [[[[[[[[[[1]]]]]]]]]]"]
    lines += [f"a{n}: &a{n} [[[[[[[[[[*a{n - 1}]]]]]]]]]]" for n in range(1, 5)]
    _, problems = read_tree("\n".join(lines), "a.yaml")
    assert "deep" in problems[0].text


def test_aliases_that_multiply_are_refused() -> None:
    lines = [f"a0: &a0 [{', '.join('x' * 10)}]"]
    lines += [f"a{n}: &a{n} [{', '.join([f'*a{n - 1}'] * 10)}]" for n in range(1, 10)]
    _, problems = read_tree("\n".join(lines), "a.yaml")
    assert f"more than {MAX_ALIAS_NODES}" in problems[0].text


def test_file_of_nothing_but_mistakes_stops_early() -> None:
    _, problems = read_tree("- !x a\n" * 100_000, "a.yaml")
    assert len(problems) == 200


@pytest.mark.parametrize(
    "text", ["%TAG !a! b\n" * 90_000, "a" * (1 << 20), '"' + "\\n" * 500_000, "- &a b\n" * 140_000, "# " * 500_000]
)
def test_large_file_is_answered(text: str) -> None:
    node, problems = read_tree(text, "a.yaml")
    assert problems or node is not None
