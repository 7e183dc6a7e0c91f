"""What people type for a channel or a layout, and the name that they are taught."""

from __future__ import annotations

import json

import pytest

from roomlint.design.read import read_design
from roomlint.figures.layouts import LAYOUTS
from roomlint.figures.own_layouts import counts_of
from roomlint.source.spellings import right_layout
from roomlint.source.tree import read_tree


@pytest.mark.parametrize(
    ("typed", "layout"),
    [
        ("2.0", "0+2+0"), ("stereo", "0+2+0"), ("5.1", "0+5+0"), ("5.1.2", "2+5+0"), ("5.1.4", "4+5+0"),
        ("7.1", "0+7+0"), ("7.1.4", "4+7+0"), ("9.1.4", "4+9+0"), ("22.2", "9+10+3"), ("5.2.6", "6+5+0"),
        ("3.1.2", "2+3+0"), ("7,1,4", "4+7+0"), ("4+7", "4+7+0"),
    ],
)  # fmt: skip
def test_a_layout_as_people_write_it_gets_its_name(typed: str, layout: str) -> None:
    assert right_layout(typed) == layout
    assert layout in LAYOUTS or sum(counts_of(layout)) > 0


@pytest.mark.parametrize("typed", ["surround", "", "five", "5.1.4.2.1", "5"])
def test_a_layout_that_nobody_can_tell_is_not_guessed(typed: str) -> None:
    assert right_layout(typed) == ""


def told(**more: object) -> list[str]:
    data = {"roomlint": 1, "room": {"size": {"width": "5 m", "length": "6 m"}}, **more}
    node, _ = read_tree(json.dumps(data), "a.yaml")
    assert node is not None
    return [problem.text for problem in read_design(node, "a.yaml", {})[1]]


def test_the_error_of_a_layout_teaches_the_right_one() -> None:
    assert told(layout="5.1.4") == [
        "a layout of ITU-R BS.2051 is upper + middle + bottom, so '5.1.4' is 4+5+0; LFE is not counted."
    ]
    # Without quotes YAML takes it for a number.
    assert told(layout=5.1) == [
        "a layout of ITU-R BS.2051 is upper + middle + bottom, so '5.1' is 0+5+0; LFE is not counted."
    ]


def test_a_layout_of_ones_own_is_no_error() -> None:
    assert told(layout="6+5+0") == []
    assert told(layout="2+3+0") == []
