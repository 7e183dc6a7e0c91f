"""What a house file names is checked where it stands, and what it decides is seen wherever it acted."""

from __future__ import annotations

from datetime import date
from typing import TYPE_CHECKING

import pytest
from click.testing import CliRunner

from roomlint.cli import main
from roomlint.design.house import Decision
from roomlint.measure.figure import Figure
from roomlint.report import write
from roomlint.report.telling import told
from roomlint.review import ROOM as ROOMS
from roomlint.review import Level, Window, at_most, between, practice, rule, tells
from roomlint.review.book import Book
from roomlint.review.house_check import loosened
from roomlint.review.judging import house_window
from roomlint.review.session import Choices, run
from roomlint.review.window_rules import window_rules
from roomlint.source.files import shown
from roomlint.testing import room_of, verdicts

if TYPE_CHECKING:
    from pathlib import Path

ROOM = """\
roomlint: 1
project: {code: case, stage: design}
room:
  size: {width: 4 m, length: 5 m}
seats:
  - {id: middle, ear: {from_left: 2 m, from_front: 3 m, height: 1.1 m}}
loudspeakers:
  - {id: left, label: M+030, position: {from_left: 1 m, from_front: 1 m, height: 1 m}}
  - {id: side, label: M+090, position: {from_left: 1 m, from_front: 3 m, height: 2 m}}
"""
OWN = """\
roomlint_house: 1
window_rules:
  - id: house.side-height
    title: Side loudspeakers stand at most half a metre above the ear.
    figure: height-above-ear
    each: {loudspeakers: [M+090, M-090], seats: every}
    high: 50 cm
    level: warning
    basis: {grade: practice, note: our own habit}
    message: Lower the side loudspeaker.
    examples:
      - {value: 40 cm, verdict: pass}
      - {value: 0.6 m, verdict: fail}
"""


HEIGHTS = between(1.2, 1.4, "m")


def made(rule_id, window=HEIGHTS, *, level=Level.WARNING, answer=None):
    @rule(
        rule_id,
        level=level,
        basis=practice("a test"),
        each=ROOMS,
        window=window,
        says="{figure} of {window}" if window is not None else "nothing",
        since="0.1.0",
        caution="An engineer decides what it holds." if rule_id.startswith("mount.") else "",
    )
    def judged(room, design):
        """Something holds in a good design.

        Why: A test needs a reason, like any rule.

        How decided: It is not, in a test of the house.

        Remedy: Nothing is to be changed.

        When to waive: Never, in a test of the house.
        """
        return tells("fail") if answer is None else answer

    return judged


BOOK = Book(
    (made("layout.height"), made("layout.words", None), made("mount.load", at_most(1.0, ""), level=Level.ERROR))
)


def reviewed(folder: Path, house: str, room: str = ROOM, **choices):
    (folder / "house.yaml").write_text(house, encoding="utf-8")
    (folder / "case.room.yaml").write_text(room, encoding="utf-8")
    return run([shown(str(folder / "case.room.yaml"))], BOOK, Choices(date(2027, 6, 1), **choices))


def decided(rest: str) -> str:
    return f"roomlint_house: 1\ndecisions:\n  - {{{rest}, because: ours}}\n"


@pytest.mark.parametrize(
    ("house", "where", "says"),
    [
        (decided("rule: layout.hieght, high: 1 m"), "3:12", "did you mean 'layout.height'"),
        (decided("rule: layout.height, high: 40 deg"), "3:33", "in m"),
        (decided("rule: layout.height, low: 2 m, high: 1 m"), "3:32", "above the high edge"),
        (decided("rule: layout.words, high: 1 m"), "3:32", "has no window"),
        (decided("rule: layout.height"), "3:12", "nothing is decided"),
        (OWN.replace("figure: height-above-ear", "figure: hight-above-ear"), "5:13", "did you mean 'height-above-ear'"),
        (OWN.replace("loudspeakers: [M+090, M-090], ", ""), "6:", "nothing is chosen"),
        (OWN.replace("height-above-ear", "ear-height"), "6:", "not of loudspeakers"),
        (OWN.replace("high: 50 cm", "high: 50 deg"), "7:11", "height-above-ear is in m"),
        (OWN.replace("    high: 50 cm\n", ""), "3:", "at least one edge"),
        (OWN.replace("0.6 m, verdict: fail", "0.4 m, verdict: fail"), "13:", "the rule says pass"),
        (OWN.replace("40 cm, verdict", "40 kg, verdict"), "12:", "does not fit"),
        (OWN.replace("grade: practice", "grade: read"), "9:", "names its document"),
        (
            OWN.replace("grade: practice", "grade: memory").replace("level: warning", "level: error"),
            "8:",
            "from memory",
        ),
        (OWN + OWN.split("window_rules:\n")[1], "14:", "already taken"),
    ],
)
def test_a_name_that_means_nothing_is_told_where_it_stands(house: str, where: str, says: str, tmp_path: Path) -> None:
    review = reviewed(tmp_path, house)
    told = [f"{problem.place.line}:{problem.place.column}: {problem.text}" for problem in review.problems]
    assert review.exit_status == 2
    assert any(line.startswith(where) and says in line for line in told), told


def test_a_window_rule_judges_like_any_other(tmp_path: Path) -> None:
    review = reviewed(tmp_path, OWN)
    own = [verdict for verdict in review.rooms[0].verdicts if verdict.rule == "house.side-height"]
    assert [(verdict.subject, verdict.level) for verdict in own] == [("loudspeaker/side+seat/middle", Level.WARNING)]
    rules = {rule.id: rule for rule in review.rules}
    assert told(own[0], rules["house.side-height"]) == "height above ear 0.90 m; at most 0.50 m wanted"
    assert rules["house.side-height"].says["hint"] == "Lower the side loudspeaker."


def test_a_window_rule_has_a_page_with_every_heading(tmp_path: Path) -> None:
    review = reviewed(tmp_path, OWN)
    page = next(rule for rule in review.rules if rule.id.startswith("house.")).page
    assert list(page.parts) == ["Why", "How decided", "Remedy", "When to waive"]
    assert page.summary == "Side loudspeakers stand at most half a metre above the ear."


def test_window_rules_can_be_left_out_and_chosen_like_any_other(tmp_path: Path) -> None:
    assert "house" not in {rule.chapter for rule in reviewed(tmp_path, OWN, without=("house",)).rules}
    assert {rule.id for rule in reviewed(tmp_path, OWN, only=("house.side-height",)).rules} == {"house.side-height"}


def test_choosing_a_window_rule_that_is_not_there_is_told(tmp_path: Path) -> None:
    review = reviewed(tmp_path, OWN, only=("house.side-hight",))
    assert "did you mean 'house.side-height'" in review.problems[0].text


def test_a_required_chapter_cannot_be_left_out(tmp_path: Path) -> None:
    house = "roomlint_house: 1\nrequired_chapters:\n  design: [layout]\n"
    assert reviewed(tmp_path, house).troubles == ()
    review = reviewed(tmp_path, house, without=("layout.words",))
    assert review.exit_status == 4
    assert len(review.rooms) == 1
    assert "requires chapter layout, and this run leaves out layout.words" in review.troubles[0].text


def test_a_required_chapter_without_rules_is_told(tmp_path: Path) -> None:
    review = reviewed(tmp_path, "roomlint_house: 1\nrequired_chapters:\n  design: [heat]\n")
    assert "no installed rule belongs to it" in review.troubles[0].text


def test_gate_and_what_open_counts_as_follow_the_stage(tmp_path: Path) -> None:
    house = OWN + "gates: {design: warning, survey: never}\nopen: {design: note, handover: error}\n"
    design = reviewed(tmp_path, house).rooms[0]
    assert (design.gate, design.open_level) == (Level.WARNING, Level.NOTE)
    survey = reviewed(tmp_path, house, ROOM.replace("stage: design", "stage: survey")).rooms[0]
    assert (survey.gate, survey.open_level) == (None, None)
    handover = reviewed(tmp_path, house, ROOM.replace("stage: design", "stage: handover")).rooms[0]
    assert (handover.gate, handover.open_level) == (Level.ERROR, Level.ERROR)


@pytest.mark.parametrize(
    ("decision", "change"),
    [
        ({"high": "1.5"}, (Window(None, 1.0, ""), Window(None, 1.5, ""))),
        ({"level": "warning"}, (Level.ERROR, Level.WARNING)),
    ],
)
def test_a_looser_rule_where_people_can_get_hurt_is_told(
    decision: dict[str, str], change: tuple[object, object]
) -> None:
    house = room_of({"roomlint": 1, "room": {"size": {"width": "4 m", "length": "5 m"}}}, house={
        "roomlint_house": 1, "decisions": [{"rule": "mount.load", "because": "ours", **decision}]}).house  # fmt: skip
    assert [(one.rule, one.was, one.now) for one in loosened(house, BOOK.rules)] == [("mount.load", *change)]


APPROVED = "approved_by: R. Lead, until: 2027-12-31"


@pytest.mark.parametrize("rest", ["level: note", "level: warning", "high: '1.5'", "level: error, high: '1.5'"])
@pytest.mark.parametrize("given", ["", "approved_by: R. Lead", "until: 2027-12-31"])
def test_nobody_loosens_what_guards_people_without_a_name_and_a_last_day(rest: str, given: str, tmp_path: Path) -> None:
    review = reviewed(tmp_path, decided(f"rule: mount.load, {rest}{f', {given}' if given else ''}"))
    assert review.exit_status == 2
    (problem,) = review.problems
    assert (problem.place.line, problem.place.column) == (3, 12)
    assert "makes mount.load looser, where people can get hurt" in problem.text
    assert ("approved_by" in problem.text, "until" in problem.text) == ("R. Lead" not in given, "until" not in given)


@pytest.mark.parametrize("rest", ["rule: mount.load, high: '0.8'", "rule: layout.height, level: note"])
def test_what_is_made_stricter_or_guards_nobody_needs_no_name(rest: str, tmp_path: Path) -> None:
    assert reviewed(tmp_path, decided(rest)).problems == ()


@pytest.mark.parametrize("name", ["none", "n/a", "tbd"])
def test_a_word_for_nobody_is_no_name(name: str, tmp_path: Path) -> None:
    review = reviewed(tmp_path, decided(f"rule: mount.load, level: note, approved_by: {name}, until: 2027-12-31"))
    assert review.exit_status == 2


@pytest.mark.parametrize("kind", ["text", "lines", "sarif", "alerts", "markdown", "annotations"])
def test_every_report_tells_what_was_loosened_by_whom_and_until_when(kind: str, tmp_path: Path) -> None:
    review = reviewed(tmp_path, decided(f"rule: mount.load, level: note, high: '1.5', {APPROVED}"))
    text = " ".join("".join(write(kind, review)).split())
    assert "mount.load: note instead of error, by " in text
    assert "mount.load: at most 1.50 instead of at most 1, by " in text
    assert "approved by R. Lead until 2027-12-31: ours" in text


@pytest.mark.parametrize("kind", ["text", "lines", "sarif", "alerts", "markdown", "annotations"])
def test_a_decision_whose_last_day_is_over_decides_nothing_and_is_told(kind: str, tmp_path: Path) -> None:
    past = decided("rule: mount.load, level: note, high: '1.5', approved_by: R. Lead, until: 2027-05-31")
    review = reviewed(tmp_path, past)
    assert review.problems == ()
    assert review.rooms[0].house.decisions == {}
    assert review.rooms[0].loosened == ()
    text = " ".join("".join(write(kind, review)).split())
    assert "decides about mount.load ended on 2027-05-31: the rule book's own holds again" in text


def test_an_error_beyond_the_far_edge_stays_one_when_the_house_moves_the_near_one() -> None:
    design = {"roomlint": 1, "room": {"size": {"width": "4 m", "length": "5 m"}}}
    decision = {"rule": "mount.sag", "because": "ours", "high": "0.9"}
    room = room_of(design, house={"roomlint_house": 1, "decisions": [decision]})
    sag = made("mount.sag", at_most(1.0, "", error=1.6), answer=Figure.plain("sag", "", 2.0, u=0.0))
    assert [verdict.level for verdict in verdicts(sag, room)] == [Level.ERROR]


def test_a_stricter_rule_and_one_of_another_chapter_are_not_told() -> None:
    house = room_of({"roomlint": 1, "room": {"size": {"width": "4 m", "length": "5 m"}}}, house={
        "roomlint_house": 1, "decisions": [{"rule": "mount.load", "because": "ours", "high": "0.8"},
        {"rule": "layout.height", "because": "ours", "level": "note"}]}).house  # fmt: skip
    assert loosened(house, BOOK.rules) == ()


def test_every_named_figure_can_be_had() -> None:
    from roomlint.measure.names import NAMED

    room = {
        "roomlint": 1,
        "room": {"size": {"width": "4 m", "length": "5 m"}, "ceiling": {"shape": "flat", "height": "2.5 m"}},
        "seats": [
            {"id": "middle", "ear": {"from_left": "2 m", "from_front": "3 m", "height": "1.1 m"}, "reference": True},
            {"id": "rear", "ear": {"from_left": "2 m", "from_front": "4 m", "height": "1.1 m"}},
        ],
        "loudspeakers": [
            {"id": "left", "label": "M+030", "position": {"from_left": "1 m", "from_front": "1 m", "height": "1 m"}}
        ],
        "subwoofers": [{"id": "sub", "position": {"from_left": "1 m", "from_front": "1 m", "height": "0.3 m"}}],
    }
    kinds = {"loudspeakers": {"loudspeakers": ["all"]}, "subwoofers": {"subwoofers": True}, "seats": {"seats": "every"}}
    for named in NAMED.values():
        each = kinds[named.of[0]]
        entry = {"id": "house.one", "title": "One thing holds.", "figure": named.name, "each": each,
                 "low": f"-1000 {named.unit}", "level": "note", "basis": {"grade": "practice"}}  # fmt: skip
        case = room_of(room, house={"roomlint_house": 1, "window_rules": [entry]})
        found = verdicts(window_rules(case.house)[0], case)
        assert [(verdict.kind, verdict.figure.unit) for verdict in found] == [("pass", named.unit)] * len(found), (
            named.name
        )
        assert found


def test_the_rule_book_with_a_house_shows_its_own_rules(tmp_path: Path) -> None:
    (tmp_path / "house.yaml").write_text(OWN, encoding="utf-8")
    done = CliRunner().invoke(main, ["rules", "house.side-height", "--house", str(tmp_path / "house.yaml")])
    assert "Side loudspeakers stand at most half a metre above the ear." in done.output
    assert CliRunner().invoke(main, ["rules", "house.side-height"]).exit_code == 2


def test_an_edge_that_the_house_does_not_name_stays_the_rules_own() -> None:
    decided = Decision(None, "layout.height", high="2 m")  # type: ignore[arg-type]
    assert house_window(decided, Window(1.2, 1.4, "m")) == Window(1.2, 2.0, "m")
