"""Slips that YAML punishes elsewhere are told where they were made, with what to write instead."""

from __future__ import annotations

import pytest

from roomlint.source.tree import read_tree

SLIPS = [
    # the slip, text, line:column, words of the answer
    ("a brace too many", "room:\n  size: {width: 4 m}}\nseats: []\n", "2:21", ["one `}` too many", "Remove it"]),
    ("a brace too many in a list", "- {id: a}}\n- {id: b}\n", "1:10", ["one `}` too many"]),
    ("a bracket too many", "a: [1, 2]]\n", "1:10", ["one `]` too many"]),
    ("a colon in braces", "project: {title: Attic: north, code: x}\n", "1:18", ["`Attic`", "colon", "quotes"]),
    (
        "a comma left out",
        "ear: {from_left: 6 ft 3 in from_rear: 2 ft}\n",
        "1:18",
        ["comma is missing before `from_rear`"],
    ),
    ("a comment closes the braces", "project: {code: #17}\nroom: {}\n", "1:17", ["`#17`", "comment", '"#17"']),
    ("a comment ends the braces", "p: {code: #17, title: x}\nroom: {a: b}\n", "1:11", ["`#17`", "comment"]),
    ("a comment for a value", "project:\n  code: #17\n", "2:8", ["`#17`", "no value", '"#17"']),
    ("a comment cuts a title", "project:\n  title: Room #17\n", "2:10", ["only `Room`", '"Room #17"']),
    (
        "a no-break space as indent",
        "a:\n\u00a0\u00a0b: x\n  c: y\n",
        "2:1",
        ["no-break space", "U+00A0", "plain spaces"],
    ),
    ("a no-break space before a key", "a:\n  b: x\n\u00a0\u00a0c: y\n", "3:1", ["no-break space", "`c`"]),
    ("a wide space as indent", "a:\n  b: x\n\u3000c: y\n", "3:1", ["U+3000"]),
    ("curly quotes around a colon", "title: “Attic: north”\n", "1:8", ["curly", "straight quotes"]),
    ("another minus", "a: {b: \u22123}\n", "1:8", ["U+2212", "Write -3"]),
    ("a dash for a minus", "a: \u201312.5\n", "1:4", ["U+2013", "Write -12.5"]),
]


@pytest.mark.parametrize(("text", "where", "words"), [slip[1:] for slip in SLIPS], ids=[slip[0] for slip in SLIPS])
def test_slip_is_told_where_it_was_made(text: str, where: str, words: list[str]) -> None:
    _, problems = read_tree(text, "a.yaml")
    assert [f"{problem.place.line}:{problem.place.column}" for problem in problems][:1] == [where]
    assert all(word in problems[0].text for word in words), problems[0].text
    assert "\n" not in problems[0].text


@pytest.mark.parametrize(
    ("text", "value"),
    [
        ("a: x  # 17 of them\n", "x"),
        ("a: x  # see #17\n", "x"),
        ("a: x  #17 of them\n", "x"),
        ("a: 'Room #17'\n", "Room #17"),
        ("a: Room#17\n", "Room#17"),
        ("a: “Attic”\n", "“Attic”"),
        ("a: caf\u00e9\u00a0noir\n", "caf\u00e9\u00a0noir"),
        ("a: |\n  x\n  \u00a0y\n", "x\n\u00a0y\n"),
    ],
)
def test_what_is_meant_is_left_alone(text: str, value: str) -> None:
    node, problems = read_tree(text, "a.yaml")
    assert problems == []
    assert node is not None
    assert node.plain() == {"a": value}
