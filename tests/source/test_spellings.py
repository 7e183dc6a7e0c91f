"""What people type for a channel or a layout, and the name that they are taught."""

from __future__ import annotations

import json
import re

import pytest
from hypothesis import given
from hypothesis import strategies as st

from roomlint.design.keys import labelled
from roomlint.design.read import read_design
from roomlint.figures.layouts import LAYOUTS
from roomlint.figures.own_layouts import counts_of
from roomlint.source.spellings import no_label, right_layout
from roomlint.source.tree import read_tree
from roomlint.testing import room_of


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


@pytest.mark.parametrize(
    ("written", "meant"),
    [
        ("L", "M+030"),
        ("r", "M-030"),
        ("C", "M+000"),
        ("Ls", "M+110, or M+090 beside the seats and M+135 behind them"),
        ("RS", "M-110, or M-090 beside the seats and M-135 behind them"),
        ("LFE", "LFE1, and LFE2 for a second bass channel"),
        ("sub", "LFE1, and LFE2 for a second bass channel"),
        ("M30", "M+030 on the left, M-030 on the right"),
        ("M+30", "M+030"),
        ("m+030", "M+030"),
        ("U\N{MINUS SIGN}45", "U-045"),
        ("M0", "M+000"),
        ("centre", "M+000"),
        ("front left", "M+030"),
        ("side-right", "M-090"),
        ("rear left", "M+135"),
        ("upper-front-right", "U-045"),
        ("top rear left", "U+135"),
    ],
)
def test_a_label_of_another_kind_is_answered_with_the_one_that_is_meant(written, meant):
    assert no_label(written).startswith(f"no loudspeaker label of ITU-R BS.2051: write {meant} (")


def test_where_nobody_can_tell_what_is_meant_examples_are_given():
    assert "such as M+030, M+000, U-045, LFE1" in no_label("horn")
    assert "such as M+030" in no_label("M+999")


@given(st.text(max_size=12))
def test_what_is_told_to_be_written_is_a_label(written):
    form = re.compile(labelled("a label").form)
    for label in re.findall(r"\b(?:UH|[MUTB])[+-]\d+\b", no_label(written).partition("write ")[2]):
        assert form.search(label)


def test_the_answer_stands_at_the_label_in_the_file():
    with pytest.raises(Exception, match=r"channels 'L' is no loudspeaker label of ITU-R BS\.2051: write M\+030"):
        room_of({"roomlint": 1, "listening_modes": [{"id": "film", "channels": ["L"]}]}, ())
