"""A label that is none is answered with the one that is meant, by the names that people give loudspeakers."""

from __future__ import annotations

import re

import pytest
from hypothesis import given
from hypothesis import strategies as st

from roomlint.design.keys import labelled
from roomlint.source.spellings import no_label
from roomlint.testing import room_of


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
