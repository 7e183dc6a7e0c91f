"""Every rule ends in exactly one verdict for every subject it names."""

from __future__ import annotations

from dataclasses import replace

import pytest

from roomlint.measure.figure import figure
from roomlint.review import Against, Kind, Level, Window, fails, memory, need, practice, rule
from roomlint.review.engine import review_room
from roomlint.testing import changed, room_of, verdicts

ROOM = {
    "roomlint": 1,
    "project": {"code": "case"},
    "room": {"size": {"width": "4 m", "length": "5 m"}},
    "loudspeakers": [
        {"id": "left", "label": "M+030", "position": {"from_left": "1 m", "from_front": "1 m", "height": "1 m"}},
        {"id": "right", "label": "M-030"},
    ],
}


@rule(
    "layout.height",
    level=Level.WARNING,
    basis=practice("a test"),
    each=lambda room: room.design.loudspeakers,
    reads=("loudspeakers[].position",),
    since="0.1.0",
    window=Window(1.2, 1.4, "m"),
    limit=Window(0.5, 2.0, "m"),
    at="position.height",
)
def height(room, speaker):
    """Loudspeakers stand at ear height."""
    return figure("height", "m", lambda z: z, need(speaker.position, speaker, "position").z)


def found(room=ROOM, tried=height, house=None):
    return {verdict.subject: verdict for verdict in verdicts(tried, room_of(room, house=house))}


def test_a_missing_input_is_open_and_names_the_key() -> None:
    verdict = found()["loudspeaker/right"]
    assert (verdict.kind, verdict.level) == (Kind.OPEN, None)
    assert verdict.missing == "loudspeakers[1].position"


def test_a_half_given_position_names_the_coordinate_that_lacks() -> None:
    room = changed(ROOM, {"loudspeakers.1.position": {"from_left": "1 m", "from_front": "1 m"}})
    assert found(room)["loudspeaker/right"].missing == "loudspeakers[1].position.height"


def test_a_failure_tells_figure_margin_window_and_basis() -> None:
    verdict = found()["loudspeaker/left"]
    assert (verdict.kind, verdict.level, verdict.margin) == (Kind.FAIL, Level.WARNING, pytest.approx(-0.2))
    assert verdict.message == (
        "left: height is 1.00 m, 0.20 m below the window 1.20 to 1.40 m. Basis: common practice: a test."
    )


def test_a_finding_points_at_the_value_itself() -> None:
    place = found()["loudspeaker/left"].place
    assert place.end_column - place.column == len('"1 m"')


def test_beyond_the_limit_is_an_error() -> None:
    room = changed(ROOM, {"loudspeakers.0.position.height": "2.5 m"})
    assert found(room)["loudspeaker/left"].level is Level.ERROR


def test_within_the_uncertainty_a_person_measures_again_and_is_told_how_closely() -> None:
    room = changed(ROOM, {"loudspeakers.0.position.height": "1.19 m ± 20 mm"})
    verdict = found(room)["loudspeaker/left"]
    assert verdict.kind is Kind.REVIEW
    assert "Measure loudspeakers[0].position.height again to within ± 10 mm." in verdict.message


def test_the_survey_tolerance_is_carried() -> None:
    room = changed(ROOM, {"survey": {"tolerance": "30 mm"}, "loudspeakers.0.position.height": "1.19 m"})
    assert found(room)["loudspeaker/left"].figure.u == pytest.approx(0.03)


def test_nothing_to_look_at_is_not_applicable_once() -> None:
    (verdict,) = found(changed(ROOM, {"loudspeakers": []})).values()
    assert verdict.kind is Kind.NOT_APPLICABLE


def test_the_house_moves_window_and_level_and_it_shows() -> None:
    decided = {"rule": "layout.height", "low": "110 cm", "high": "5 ft", "level": "note", "because": "a test"}
    verdict = found(house={"roomlint_house": 1, "decisions": [decided]})["loudspeaker/left"]
    assert (verdict.level, verdict.window) == (Level.NOTE, Window(1.1, 1.524, "m"))
    assert set(verdict.overridden) == {"window", "level"}


def test_a_broken_rule_is_told_and_the_others_go_on() -> None:
    def breaks(room, speaker):
        raise ZeroDivisionError("by zero")

    broken = replace(height, id="layout.breaks", judge=breaks)
    verdicts_, troubles = review_room(room_of(ROOM), [broken, height])
    assert [trouble.rule for trouble in troubles] == ["layout.breaks"]
    assert len(verdicts_) == 2


def test_a_figure_that_is_refused_while_subjects_are_sought_is_left_to_a_person() -> None:
    def outside(room):
        raise ValueError("the ridge lies outside the room")

    (verdict,) = found(tried=replace(height, each=outside)).values()
    assert verdict.kind is Kind.REVIEW
    assert "the ridge lies outside the room" in verdict.message


def test_a_figure_outside_its_formula_is_left_to_a_person_for_that_subject_alone() -> None:
    def outside(room, speaker):
        if speaker.id == "right":
            raise ValueError("the point lies outside the room")
        return height.judge(room, speaker)

    answers = found(tried=replace(height, judge=outside))
    assert answers["loudspeaker/right"].kind is Kind.REVIEW
    assert "cannot be computed: the point lies outside the room." in answers["loudspeaker/right"].message
    assert answers["loudspeaker/left"].kind is not Kind.REVIEW


def test_words_alone_can_fail_and_carry_the_caution() -> None:
    told = replace(height, judge=lambda room, speaker: fails("hangs by a nail."), caution="An engineer decides.")
    message = found(tried=told)["loudspeaker/left"].message
    assert message.startswith("left: hangs by a nail.")
    assert message.endswith("An engineer decides.")


def test_a_target_inside_the_window_gives_a_note() -> None:
    def judge(room, speaker):
        made = figure("height", "m", lambda z: z, need(speaker.position, speaker, "position").z)
        return Against(made, Window(0.8, 1.4, "m"), target=Window(1.1, 1.3, "m"))

    verdict = found(tried=replace(height, judge=judge))["loudspeaker/left"]
    assert (verdict.kind, verdict.level) == (Kind.FAIL, Level.NOTE)


def test_a_basis_from_memory_says_so() -> None:
    told = replace(height, bases=(memory("ear height"),))
    assert "value from memory" in found(tried=told)["loudspeaker/left"].message
