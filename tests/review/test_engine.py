"""Every rule ends in exactly one verdict for every subject it names."""

from __future__ import annotations

from dataclasses import replace
from datetime import date
from pathlib import Path

import pytest

from roomlint.design.base import need
from roomlint.figures.domain import Refused
from roomlint.report.names import about
from roomlint.report.telling import told
from roomlint.review import (
    LOUDSPEAKERS,
    Kind,
    Level,
    Missing,
    No,
    RuleError,
    Subjects,
    Window,
    Windows,
    between,
    fails,
    memory,
    practice,
    rule,
)
from roomlint.review.book import load_book
from roomlint.review.engine import in_order, review_room
from roomlint.review.remedies import with_remedies
from roomlint.review.session import Choices, run
from roomlint.sample import at, room, speaker
from roomlint.testing import changed, room_of, verdicts

ROOM = changed(
    room(speaker("left", "M+030", 0.0, 2.0), speaker("right", "M-030")),
    {"loudspeakers.0.position.height": "1 m"},
)


@rule(
    "layout.height",
    level=Level.WARNING,
    basis=practice("a test"),
    each=LOUDSPEAKERS,
    window=between(1.2, 1.4, "m", error=(0.5, 2.0)),
    says={"below": "{figure} up; {window} wanted", "above": "{figure} up, above {limit}"},
    at="position.height",
    since="0.1.0",
)
def height(room, speaker):
    """Loudspeakers stand at ear height.

    Why: A test needs a reason, like any rule.

    How decided: By the height of the acoustic centre.

    Remedy: Move it up or down by the figure.

    When to waive: Never, in a test of the engine.
    """
    z = need(speaker.position, speaker, "position").z
    return room.figures.angles.figure("height", "m", lambda w: w(z))


def found(data=ROOM, tried=height, house=None, others=()):
    return {verdict.subject: verdict for verdict in verdicts(tried, room_of(data, house=house), others)}


def left(**more):
    return found(**more)["loudspeaker/left"]


def test_a_missing_input_is_open_and_names_the_key() -> None:
    verdict = found()["loudspeaker/right"]
    assert (verdict.kind, verdict.level) == (Kind.OPEN, None)
    assert (verdict.wanted.words, verdict.wanted.key, verdict.wanted.path) == (
        "right",
        "position",
        "loudspeakers[1].position",
    )


def test_a_half_given_position_names_the_coordinate_that_lacks() -> None:
    data = changed(ROOM, {"loudspeakers.1.position": {"from_left": "1 m", "from_front": "1 m"}})
    assert found(data)["loudspeaker/right"].wanted.key == "position.height"


def test_a_failure_is_data_and_told_by_the_rules_own_template() -> None:
    verdict = left()
    assert (verdict.kind, verdict.level, verdict.margin) == (Kind.FAIL, Level.WARNING, pytest.approx(-0.2))
    assert (verdict.said, verdict.window) == ("below", Window(1.2, 1.4, "m"))
    assert told(verdict, height) == "1.00 m up; 1.20 to 1.40 m wanted"


def test_the_other_side_has_its_own_words() -> None:
    verdict = left(data=changed(ROOM, {"loudspeakers.0.position.height": "1.5 m"}))
    assert told(verdict, height) == "1.50 m up, above 1.40 m"


def test_a_finding_points_at_the_value_itself() -> None:
    place = left().place
    assert place.end_column - place.column == len('"1 m"')


def test_beyond_the_limit_is_an_error() -> None:
    assert left(data=changed(ROOM, {"loudspeakers.0.position.height": "2.5 m"})).level is Level.ERROR


def test_within_the_uncertainty_a_person_is_told_what_to_measure_again_and_how_closely() -> None:
    data = changed(ROOM, {"loudspeakers.0.position.height": "1.19 m ± 20 mm", "project.stage": "survey"})
    verdict = left(data=data)
    assert verdict.kind is Kind.REVIEW
    assert verdict.again.names == (("left", "position.height"),)
    assert verdict.again.within.value == pytest.approx(0.0099, abs=1.1e-4)
    assert not verdict.again.chosen


def test_at_the_drawing_board_another_value_is_chosen_instead() -> None:
    data = changed(ROOM, {"loudspeakers.0.position.height": "1.19 m ± 20 mm", "project.stage": "design"})
    assert left(data=data).again.chosen


def test_on_the_very_edge_no_measuring_helps() -> None:
    data = changed(ROOM, {"loudspeakers.0.position.height": "1.2 m ± 20 mm"})
    verdict = left(data=data)
    assert (verdict.kind, verdict.again.within) == (Kind.REVIEW, None)


def test_nothing_to_look_at_is_told_in_plain_words_once() -> None:
    (verdict,) = found(changed(ROOM, {"loudspeakers": []})).values()
    assert verdict.kind is Kind.NOT_APPLICABLE
    assert verdict.because == "there is no loudspeaker in this room"


def test_a_stated_fact_makes_a_rule_not_apply_and_is_told() -> None:
    def when(room, speaker):
        return No("it has no side") if need(speaker.label, speaker, "label") == "M+000" else True

    tried = replace(height, when=(when,))
    data = changed(ROOM, {"loudspeakers.0.label": "M+000", "loudspeakers.1.label": None})
    answers = found(data, tried)
    assert (answers["loudspeaker/left"].kind, answers["loudspeaker/left"].because) == (
        Kind.NOT_APPLICABLE,
        "it has no side",
    )
    assert (answers["loudspeaker/right"].kind, answers["loudspeaker/right"].wanted.key) == (Kind.OPEN, "label")


def test_an_element_of_unknown_kind_is_open_and_not_left_out() -> None:
    def find(room):
        for one in room.design.loudspeakers:
            yield one if one.label else Missing(one, "label")

    tried = replace(height, each=Subjects("labelled loudspeaker", find))
    answers = found(changed(ROOM, {"loudspeakers.1.label": None}), tried)
    assert answers["loudspeaker/right"].wanted.key == "label"
    assert len(answers) == 2


def test_each_key_that_an_element_lacks_is_open_under_an_identity_of_its_own() -> None:
    def find(room):
        for one in room.design.loudspeakers:
            yield from (Missing(one, key) for key in ("label", "product", "label"))

    answers = verdicts(replace(height, each=Subjects("loudspeaker", find)), room_of(ROOM))
    assert {one.kind for one in answers} == {Kind.OPEN}
    assert len({one.subject for one in answers}) == len(answers) == 4
    assert [(about(one.subject).elements, one.wanted.key) for one in answers[:2]] == [
        (("loudspeaker/left",), "label"), (("loudspeaker/left",), "product"),
    ]  # fmt: skip


def test_what_follows_from_a_failure_waits_for_it() -> None:
    follower = replace(height, id="layout.follower", after=("layout.height",))
    verdict = found(tried=follower, others=(height, follower))["loudspeaker/left"]
    assert (verdict.kind, verdict.follows.rule, verdict.follows.words) == (Kind.OPEN, "layout.height", "left")
    assert told(verdict, follower) == "waits until left is put right: height (layout)"


def test_a_note_hides_no_warning_that_follows_from_it() -> None:
    cause = replace(height, level=Level.NOTE)
    follower = replace(height, id="layout.follower", after=("layout.height",))
    verdict = found(tried=follower, others=(cause, follower))["loudspeaker/left"]
    assert verdict.level is Level.WARNING


def test_an_accepted_cause_hides_nothing_that_follows() -> None:
    follower = replace(height, id="layout.follower", after=("layout.height",))
    waiver = {"rule": "layout.height", "subject": "left", "because": "agreed with the client"}
    verdict = found({**ROOM, "waivers": [waiver]}, follower, others=(height, follower))["loudspeaker/left"]
    assert verdict.kind is Kind.FAIL


def remedied(follower, house=None):
    tried = room_of(ROOM, house=house)
    outcome = review_room(tried, [replace(height, cure=("position",)), follower])
    verdicts = with_remedies(outcome, tried)
    return next(one.remedy for one in verdicts if (one.rule, one.subject) == ("layout.height", "loudspeaker/left"))


def test_a_remedy_leaves_what_waits_within_the_window_of_the_house() -> None:
    follower = replace(height, id="layout.follower", after=("layout.height",))
    decided = {"rule": "layout.follower", "low": "1.3 m", "because": "a test"}
    plain, tighter = remedied(follower), remedied(follower, {"roomlint_house": 1, "decisions": [decided]})
    assert (plain.low.value, plain.high.value) == pytest.approx((1.2, 1.4))
    assert (tighter.low.value, tighter.high.value) == pytest.approx((1.3, 1.4))


@pytest.mark.parametrize("error", [ZeroDivisionError("by zero"), SystemExit(0)])
def test_a_rule_that_breaks_on_what_it_waits_for_leaves_the_others_their_remedies(error) -> None:
    def breaks(room, speaker):
        raise error

    assert remedied(replace(height, id="layout.follower", after=("layout.height",), judge=breaks)) is not None


def test_a_rule_that_breaks_on_a_value_that_is_only_tried_is_told_and_its_finding_stands() -> None:
    def judge(room, speaker):
        z = need(speaker.position, speaker, "position").z
        return room.figures.angles.figure("height", "m", lambda w: 1.0 / (w(z) <= 1.1) and w(z))

    tried = room_of(ROOM)
    outcome = review_room(tried, [replace(height, cure=("position",), judge=judge)])
    (verdict, _) = with_remedies(outcome, tried)
    assert (verdict.kind, verdict.remedy) == (Kind.FAIL, None)
    (trouble,) = outcome.troubles
    assert "layout.height broke" in trouble.text
    assert "while a remedy was sought: ZeroDivisionError" in trouble.text


def test_causes_run_first_whatever_their_names_and_circles_end() -> None:
    one, two = replace(height, id="layout.a", after=("layout.b",)), replace(height, id="layout.b")
    assert [each.id for each in in_order([one, two])] == ["layout.b", "layout.a"]
    assert len(in_order([one, replace(two, after=("layout.a",))])) == 2


def test_the_house_moves_window_and_level_and_it_shows() -> None:
    decided = {"rule": "layout.height", "low": "110 cm", "high": "5 ft", "level": "note", "because": "a test"}
    verdict = left(house={"roomlint_house": 1, "decisions": [decided]})
    assert (verdict.level, verdict.window) == (Level.NOTE, Window(1.1, 1.524, "m"))
    assert set(verdict.overridden) == {"window", "level"}


@pytest.mark.parametrize("error", [ZeroDivisionError("by zero"), ValueError("max() of nothing"), SystemExit(0)])
def test_a_broken_rule_is_told_and_the_others_go_on(error) -> None:
    def breaks(room, speaker):
        if speaker.id == "left":
            raise error
        return height.judge(room, speaker)

    broken = replace(height, id="layout.breaks", judge=breaks)
    outcome = review_room(room_of(ROOM), [broken, height])
    assert [trouble.rule for trouble in outcome.troubles] == ["layout.breaks"]
    room = room_of(ROOM)
    assert f"layout.breaks broke in {room.design.file}: " in outcome.troubles[0].text  # of many rooms, this one
    assert len(outcome.verdicts) == 3  # of the broken rule only the subject that broke is missing


def test_an_infinite_figure_breaks_the_rule_and_where_people_can_get_hurt_fails() -> None:
    tried = replace(height, judge=lambda room, _: room.figures.angles.figure("height", "m", lambda _: float("inf")))
    outcome = review_room(room_of(ROOM), [tried])
    assert len(outcome.troubles) == 2
    assert not outcome.verdicts
    guarded = replace(tried, id="mount.height", caution="An engineer decides what it holds.")
    outcome = review_room(room_of(ROOM), [guarded])
    assert {verdict.kind for verdict in outcome.verdicts} == {Kind.FAIL}
    assert len(outcome.troubles) == 2


def test_a_figure_that_is_refused_is_left_to_a_person_for_that_subject_alone() -> None:
    def outside(room, speaker):
        if speaker.id == "right":
            raise Refused("the point lies outside the room")
        return height.judge(room, speaker)

    answers = found(tried=replace(height, judge=outside))
    assert answers["loudspeaker/right"].kind is Kind.REVIEW
    assert answers["loudspeaker/right"].because == "the point lies outside the room"
    assert answers["loudspeaker/left"].kind is not Kind.REVIEW


def test_words_alone_can_fail_with_facts() -> None:
    tried = replace(height, judge=lambda *_: fails("nail", by="nail"), says={**height.says, "nail": "hangs by a {by}"})
    assert told(left(tried=tried), tried) == "hangs by a nail"


def test_a_template_that_is_not_there_breaks_the_rule() -> None:
    outcome = review_room(room_of(ROOM), [replace(height, judge=lambda *_: fails("nothing"))])
    assert len(outcome.troubles) == 2


def test_a_target_inside_the_window_gives_a_note() -> None:
    windows = Windows(Window(0.8, 1.4, "m"), target=Window(1.1, 1.3, "m"))
    verdict = left(tried=replace(height, window=windows))
    assert (verdict.kind, verdict.level) == (Kind.FAIL, Level.NOTE)


def test_a_figure_in_another_unit_than_its_window_breaks_the_rule() -> None:
    outcome = review_room(room_of(ROOM), [replace(height, window=between(1.0, 2.0, "mm"))])
    assert "against a window in 'mm'" in outcome.troubles[0].text


PAGE = height.docstring


def _made(rule_id="layout.x", doc=PAGE, **more):
    def judge(room, speaker):
        raise AssertionError

    judge.__doc__ = doc
    parts = {
        "level": Level.NOTE,
        "basis": practice("a test"),
        "each": LOUDSPEAKERS,
        "says": "stands {figure}; {window} wanted",
        "window": between(1.0, 2.0, "m"),
        "since": "0.1.0",
        **more,
    }
    return rule(rule_id, **parts)(judge)


@pytest.mark.parametrize(
    ("more", "said"),
    [
        ({"rule_id": "nonsense.Bad_Id"}, "an id is chapter.slug"),
        ({"rule_id": "nonsense.good"}, "there is no chapter 'nonsense'"),
        ({"since": "today"}, "since is a version"),
        ({"basis": memory("a value"), "level": Level.ERROR}, "from memory alone makes no error"),
        ({"basis": memory("a value"), "window": between(1.0, 2.0, "m", error=(0.0, 3.0))}, "makes no error"),
        ({"doc": "Nothing else."}, "the docstring has the parts Why"),
        ({"doc": PAGE.replace("Loudspeakers stand at ear height.", "At ear height")}, "one sentence"),
        ({"rule_id": "mount.x"}, "carries a caution"),
        ({"says": "stands {figure}, which is " + "x" * 110}, "a finding has at most 110"),
        ({"says": "stands somewhere"}, "gives the figure"),
        ({"says": "outside the window: {figure}"}, "say it as the trade does"),
        ({"says": "seats[].ear is {figure}"}, "say it as the trade does"),
        ({"says": "stands {figure"}, "cannot be filled in"),
        ({"says": "stands {figure:.2f} {0}"}, "no plain name"),
        ({"says": {"below": "{figure} low"}}, "by 'below' and 'above'"),
        ({"beside": ("layout.height",)}, "by its template 'beside'"),
        ({"says": {"fail": "{figure} up", "beside": "{figure} up"}}, "by its template 'beside'"),
        ({"says": "{figure} is perfectly safe"}, "nothing here promises freedom from harm"),
    ],
)
def test_a_rule_that_breaks_the_protocol_is_refused_when_it_is_made(more, said) -> None:
    with pytest.raises(RuleError, match=said.replace("[", r"\[")):
        _made(**more)


def test_a_rule_that_keeps_it_is_made() -> None:
    assert _made().id == "layout.x"


def test_the_place_of_a_sample_is_counted_from_the_ear() -> None:
    assert at(0.0, 0.0) == {"from_left": "2.5000 m", "from_front": "3.5000 m", "height": "1.2000 m"}


EXAMPLES = sorted((Path(__file__).parent.parent.parent / "example_projects").glob("*/*.room.yaml"))


@pytest.mark.parametrize("path", EXAMPLES, ids=lambda path: path.parent.name)
def test_each_verdict_is_of_something_that_has_a_name_and_no_two_have_one_identity(path: Path) -> None:
    (room,) = run([str(path)], load_book(), Choices(today=date(2026, 6, 20))).rooms
    identities = [(verdict.rule, verdict.subject) for verdict in room.verdicts]
    assert len(set(identities)) == len(identities)
    assert [verdict.rule for verdict in room.verdicts if not verdict.words] == []
    assert [one for one in identities if any(part.endswith("/") for part in one[1].split("+"))] == []
