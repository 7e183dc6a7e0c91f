"""What people type for a channel or a layout, and the name that they are taught."""

from __future__ import annotations

import json
import re

import pytest

from roomlint.design.read import read_design
from roomlint.figures.layouts import LAYOUTS
from roomlint.figures.own_layouts import counts_of
from roomlint.source.spellings import right_label, right_layout
from roomlint.source.tree import read_tree

LABEL = re.compile(r"(M|U|UH|T|B)[+-](0\d\d|1[0-7]\d|180)|M[+-]SC|LFE[12]?")
TYPED = {
    "L": "M+030", "R": "M-030", "C": "M+000", "FL": "M+030", "FR": "M-030", "left": "M+030", "Front Right": "M-030",
    "center": "M+000", "Lw": "M+060", "Lss": "M+090", "Rss": "M-090", "side left": "M+090", "Lrs": "M+135",
    "SBR": "M-135", "Lb": "M+135", "rear-right": "M-135", "Ltm": "U+090", "TML": "U+090", "m+030": "M+030",
    "M+30": "M+030", "M-000": "M+000", "U45L": "U+045", "m30r": "M-030", "sub": "LFE1", "Cs": "M+180",
}  # fmt: skip


@pytest.mark.parametrize(("typed", "label"), TYPED.items())
def test_a_channel_as_people_write_it_gets_its_label(typed: str, label: str) -> None:
    assert right_label(typed) == label
    assert LABEL.fullmatch(label)


@pytest.mark.parametrize("typed", ["Ls", "RS", "surround left", "Rtf", "TFL", "Ltr", "Rrh", "right rear height"])
def test_a_channel_that_depends_on_the_layout_is_told_both_labels_of_its_own_side(typed: str) -> None:
    labels = LABEL.findall(right_label(typed))
    assert len(labels) == 2
    sign = "-" if typed.casefold().startswith("r") else "+"
    assert all(f"{layer}{sign}{angle}" in right_label(typed) for layer, angle in labels)


def test_a_channel_without_a_side_is_told_both() -> None:
    assert right_label("M30") == "M+030 on the left, M-030 on the right"


@pytest.mark.parametrize("typed", ["x", "", "banana", "M+200", "Q+030", "lr", "M+30L"])
def test_what_nobody_can_tell_is_not_guessed(typed: str) -> None:
    assert right_label(typed) == ""


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


def test_the_error_of_a_label_teaches_the_right_one_at_its_place_and_nothing_else() -> None:
    assert told(loudspeakers=[{"id": "a", "label": "L"}]) == [
        "a label of ITU-R BS.2051 says layer, side and angle, so 'L' is M+030; + is left, - is right."
    ]


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


def test_a_label_that_nobody_can_tell_is_told_its_form() -> None:
    assert "such as 'M+030'" in told(loudspeakers=[{"id": "a", "label": "banana"}])[0]
