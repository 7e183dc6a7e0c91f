"""The example rooms as a lead and an installer read them: a page or a phone's screen, and nothing lost."""

from __future__ import annotations

import re
from datetime import date
from functools import cache
from pathlib import Path

import pytest

from roomlint.report import Wishes, write
from roomlint.report.asking import block, lacks
from roomlint.report.points import points_of
from roomlint.report.telling import Rules, Telling
from roomlint.review.book import load_book
from roomlint.review.session import Choices, run
from roomlint.review.verdict import Kind, Level
from roomlint.source.files import shown
from roomlint.source.tree import read_tree

PROJECTS = Path(__file__).parent.parent.parent / "example_projects"
ROOMS = ("attic/attic", "basement/basement", "garden-studio/quick", "loft-bay/loft-bay")
BASEMENT, QUICK = ROOMS[1], ROOMS[2]
FAULTY = """# Ten minutes with a tape; three things are wrong.
roomlint: 1
project: {code: den, stage: survey, region: us}
survey: {tolerance: 30 mm}
room:
  size: {width: 12 ft 6 in, length: 16 ft 2 in}
  ceiling: {shape: flat, height: 8 ft}
seats:
  - {id: sofa-left, ear: {from_left: 4 ft 3 in, from_front: 9 ft 5 in, height: 3 ft 8 in}}
  - {id: sofa-right, reference: true, ear: {from_left: 6 ft 3 in, from_front: 15 ft 6 in, height: 3 ft 8 in}}
layout: 0+5+0
loudspeakers:
  - {id: left, label: M-030, position: {from_left: 1 ft 4 in, from_front: 1 ft 9 in, height: 3 ft 6 in}}
  - {id: right, label: M+030, position: {from_right: 1 ft 4 in, from_front: 1 ft 9 in, height: 3 ft 6 in}}
  - {id: centre, label: M+000, position: {from_left: 6 ft 3 in, from_front: 1 ft, height: 6 ft 6 in}}
  - {id: surround-left, label: M+110, position: {from_left: 1 ft 8 in, from_front: 15 ft 8 in, height: 4 ft}}
  - {id: surround-right, label: M-110}
subwoofers:
  - {id: sub, label: LFE1, position: {from_left: 2 ft, from_front: 2 ft, height: 9 in}}
"""


@cache
def review(path):
    return run([shown(str(path))], load_book(), Choices(today=date(2026, 11, 25)))


def text(room, **wishes):
    return "".join(write("text", review(PROJECTS / f"{room}.room.yaml"), Wishes(**wishes)))


def test_the_basement_fits_a_page():
    lines = text(BASEMENT).splitlines()
    assert len(lines) <= 45
    assert max(map(len, lines)) <= 100


def test_the_quick_file_fits_a_phone_in_feet_and_inches():
    told = text(QUICK, width=60)
    lines = told.splitlines()
    assert len(lines) <= 40
    assert max(map(len, lines)) <= 60
    assert " in: " in told
    assert not re.search(r"\d (m|mm|cm)\b", told)


def test_three_faults_of_a_quick_file_are_on_the_phone_s_screen(tmp_path):
    file = tmp_path / "den.room.yaml"
    file.write_text(FAULTY, encoding="utf-8")
    told = "".join(write("text", review(file), Wishes(width=60)))
    lines = told.splitlines()
    assert len(lines) <= 40
    assert max(map(len, lines)) <= 60
    assert "exchange labels" in " ".join(told.split())
    assert not re.search(r"\d (m|mm|cm)\b", told)


@pytest.mark.parametrize("wide", [60, 100])
@pytest.mark.parametrize("name", ROOMS)
def test_every_failure_is_on_the_page_or_counted_with_the_option_that_shows_it(name, wide):
    (room,) = review(PROJECTS / f"{name}.room.yaml").rooms
    told = text(name, width=wide)
    telling = Telling(room, Rules(load_book().rules))
    points = points_of(room, telling)
    listed = {int(number) for number in re.findall(r"^ ?(\d+)\. ", told, re.MULTILINE)}
    more = re.search(r"(\d+)(?: to (\d+))?, not listed here\s+\(--notes\)", told)
    if more is not None:
        listed |= set(range(int(more[1]), int(more[2] or more[1]) + 1))
    notes = {point.number for point in points if point.level is Level.NOTE}
    counted = re.search(r"(\d+) notes? \(--notes\)", told)
    assert int(counted[1] if counted else 0) == len(notes - listed)
    for verdict in room.verdicts:
        if verdict.kind is Kind.FAIL and verdict.waived is None:
            assert telling.numbers[verdict.rule, verdict.subject] in listed | notes
    everything = text(name, width=wide, verdicts=True)
    assert {int(number) for number in re.findall(r"^ ?(\d+)\. ", everything, re.MULTILINE)} == listed | notes


@pytest.mark.parametrize("name", ROOMS)
def test_all_that_is_folded_is_counted_as_it_is_listed(name):
    flat = " ".join(text(name).split())
    everything = text(name, verdicts=True)
    for counted, heading in (
        (r"(\d+) passed", "Passed"),
        (r"(\d+) do(?:es)? not apply", "Does not apply"),
        (r"(\d+) waits? for", "Wait for a point above"),
        (r"(\d+) checks? lacks? a value \(--missing\)", "Something is missing"),
    ):
        few, whole = re.search(counted, flat), re.search(rf"^{heading}: (\d+)$", everything, re.MULTILINE)
        assert (few[1] if few else None) == (whole[1] if whole else None)


@pytest.mark.parametrize("name", ROOMS)
def test_no_sentence_names_a_rule_or_a_place_in_a_list(name):
    told = text(name, verdicts=True).partition("Decided by")[0].partition("\n\n")[2]
    ids = {rule.id for rule in load_book().rules}
    assert not [word for word in re.findall(r"[a-z]+\.[a-z0-9-]+", told) if word in ids]
    assert not re.search(r"\[\d+\]", told)
    assert not re.search(r"^(?!\s+(- |\w+:)).*\b[a-z]+_[a-z]+\b", told, re.MULTILINE)


def test_all_that_is_missing_is_written_out_when_asked_for():
    few, whole = text(QUICK), text(QUICK, missing=True)
    assert "(all: --missing)" in few
    assert whole.count("- {id: ") == len(
        {"centre", "left", "right", "surround-left", "surround-right", "sub", "sofa-left", "sofa-right"}
    )
    assert "--missing" not in whole


def test_nothing_is_said_nine_times():
    lines = re.sub(r"\n {4}(?=\S)", " ", text(BASEMENT, verdicts=True)).splitlines()
    told = [line for line in lines if line.startswith(" - ")]
    assert len(told) == len(set(told))


def test_the_gravest_warnings_of_a_full_page_are_read_beside_its_errors():
    told = text(BASEMENT)
    shown = re.search(r"^Warnings: (\d+)(?: to \d+)?; \d+ more, \d+ to \d+, not listed here", told, re.MULTILINE)
    assert shown is not None
    assert f"\n{shown[1]}. " in told


def test_what_one_slip_does_to_layout_and_modes_is_one_point():
    told = " ".join(text(BASEMENT).split())
    assert told.count("U-135") == 2
    assert "U-135 missing from 4+7+0: fit, or declare unfitted; listening mode film wants U-135" in told


def test_an_output_with_two_loudspeakers_is_one_point():
    told = " ".join(text(BASEMENT).split())
    (point,) = re.findall(r"\d+\. output 1 of amplifier-rear: .*?(?= Warnings| \d+\. )", told)
    assert "2.00 ohm together" in point
    assert "M+135, M-135 on one output play the same" in point


def test_subwoofers_on_one_line_output_are_one_point():
    told = " ".join(text(BASEMENT, notes=True).split())
    assert told.count("line output 11 plays sub-left, sub-right") == 1


@pytest.mark.parametrize("width", [0, 56, 96])
@pytest.mark.parametrize("room", ROOMS)
def test_what_is_to_be_pasted_can_be_read(room, width):
    """Whatever is missing and however narrow the page: it is YAML with the keys that are asked for."""
    (reviewed,) = review(PROJECTS / f"{room}.room.yaml").rooms
    missing = lacks(reviewed.verdicts)
    for file in {one.file for one in missing}:
        told = "\n".join(block([one for one in missing if one.file == file], width))
        node, problems = read_tree(told.encode(), file)
        assert problems == []
        assert node is not None
        assert told.count("{- ") == 0


@pytest.mark.parametrize("room", ROOMS)
def test_what_is_to_be_pasted_stands_below_the_keys_that_it_belongs_to(room, tmp_path):
    """A part that is not in the file at all is written out with its own key: `calibration: {reference_level: }`."""
    (reviewed,) = review(PROJECTS / f"{room}.room.yaml").rooms
    told = block([one for one in lacks(reviewed.verdicts) if one.file == reviewed.file])
    pasted = tmp_path / "pasted.room.yaml"
    pasted.write_text("\n".join(["roomlint: 1", *told, ""]))
    refused = [problem.text for problem in review(pasted).problems]
    assert [words for words in refused if "unknown key" in words or "belongs under" in words] == []
