"""Points: the numbered lines of a room, each thing once, that a reader can count."""

from __future__ import annotations

import re

import pytest

from roomlint.report.points import points_of
from roomlint.report.telling import Rules, Telling
from roomlint.review.verdict import Fate, Kind, Level, Unheld
from roomlint.review.window import Window

ONE = Window(None, 1.0, "")


def points(make, *verdicts, rules=(), **more):
    room = make.room(*verdicts, **more)
    return points_of(room, Telling(room, Rules(rules or (make.rule(),))))


def used(make, rule, value, level=Level.ERROR, subject="picture/picture"):
    return make.verdict(rule=rule, level=level, subject=subject, figure=make.figure(value, "", name="use"), window=ONE)


def load_path(make):
    """Return three rules of one load path: the plain load, and two that are told in one breath with it."""
    says = {"fail": "a screw bears {figure} times its load; {window} wanted"}
    return (
        make.rule("mount.pull", window=ONE, says=says),
        make.rule("mount.both", window=ONE, beside=("mount.pull",),
                  says=says | {"beside": "with shear {figure} times"}),
        make.rule("mount.hung-on", window=ONE, says=says | {"beside": "{figure} times hung on"},
                  beside=("mount.both", "mount.pull")),
    )  # fmt: skip


def test_one_load_path_is_one_point(make):
    verdicts = [used(make, "mount.pull", 2.69), used(make, "mount.both", 2.98), used(make, "mount.hung-on", 10.72)]
    (point,) = points(make, *verdicts, rules=load_path(make))
    assert point.entry.text == (
        "picture: a screw bears 2.69 times its load; at most 1 wanted; with shear 2.98 times; 10.7 times hung on"
    )
    assert point.findings == 3


@pytest.mark.parametrize("circle", [("mount.both",), ("mount.hung-on",), ("mount.pull",)])
def test_of_rules_that_name_each_other_in_a_circle_one_is_told_by_itself(make, circle):
    pull, *others = load_path(make)
    pull = make.rule("mount.pull", window=ONE, beside=circle, says={**pull.says, "beside": "{figure} times pulled"})
    verdicts = [used(make, "mount.pull", 2.69), used(make, "mount.both", 2.98), used(make, "mount.hung-on", 10.72)]
    (point,) = points(make, *verdicts, rules=(pull, *others))
    assert point.findings == 3
    assert all(figure in point.entry.text for figure in ("2.69", "2.98", "10.7"))


def test_what_is_graver_or_of_another_element_stands_by_itself(make):
    graver = [used(make, "mount.pull", 2.0, Level.WARNING), used(make, "mount.both", 3.0)]
    assert len(points(make, *graver, rules=load_path(make))) == 2
    apart = [used(make, "mount.pull", 2.0), used(make, "mount.both", 3.0, subject="loudspeaker/side")]
    assert len(points(make, *apart, rules=load_path(make))) == 2


def test_what_no_other_failure_holds_is_told_in_full(make):
    (point,) = points(make, used(make, "mount.hung-on", 10.72), rules=load_path(make))
    assert point.entry.text == "picture: a screw bears 10.7 times its load; at most 1 wanted"


def test_a_channel_that_the_layout_lacks_is_told_once(make):
    rules = (
        make.rule("layout.channels", window=None, says={"missing": "{missing} missing from {layout}"}),
        make.rule("layout.modes", window=None, beside=("layout.channels",),
                  says={"silent": "no loudspeaker plays {labels}", "beside": "{subject} lacks {labels}"}),
    )  # fmt: skip
    verdicts = [
        make.verdict(rule="layout.channels", subject="design/a", said="missing",
                     facts={"missing": ("U-135",), "layout": "4+7+0"}),
        make.verdict(rule="layout.modes", subject="listening mode/film", said="silent", facts={"labels": ("U-135",)}),
    ]  # fmt: skip
    (point,) = points(make, *verdicts, rules=rules)
    assert point.entry.text == "room: U-135 missing from 4+7+0; listening mode film lacks U-135"


def test_a_waiver_that_does_not_hold_is_told_with_its_failure(make):
    verdicts = [
        make.verdict(unheld=Unheld(Fate.EXPIRED, ended="2026-03-31")),
        make.verdict(rule="file.waiver-expired", subject="waiver/angle.front-pair for loudspeaker/left", figure=None),
    ]
    (point,) = points(make, *verdicts)
    assert point.entry.text.startswith("left: stands")
    assert point.actions == ["its waiver expired on 2026-03-31"]
    assert point.findings == 2


def test_what_several_rules_say_in_the_same_words_is_one_line(make):
    same = {"report": "what its bolt may bear is in no table here"}
    rules = [make.rule(name, window=None, says=same) for name in ("mount.pull", "mount.both")]
    verdicts = [make.verdict(Kind.REVIEW, rule=rule.id, said="report", subject="picture/picture") for rule in rules]
    text = make.report("text", make.review(make.room(*verdicts), rules=rules))
    assert text.count("what its bolt may bear") == 1


def two_remedies(make, first, second):
    return [
        make.verdict(rule=rule, remedy=make.remedy(*span, key="position.from_front", now=0.6), level=level)
        for rule, span, level in (("a.port", first, Level.ERROR), ("b.door", second, Level.WARNING))
    ]


def test_remedies_of_one_value_that_meet_are_told_as_what_clears_both(make):
    first, second = points(make, *two_remedies(make, (1.27, 1.66), (1.61, 2.0)))
    assert first.actions == ["place it 1.61 to 1.66 m from the front (now 0.60 m); clears 2 too"]
    assert second.actions == []
    assert second.seen == [1]


def test_remedies_of_one_value_that_do_not_meet_are_one_honest_sentence(make):
    first, second = points(make, *two_remedies(make, (0.73, 1.0), (1.27, 1.66)))
    assert first.actions == [
        "left: no one place from the front clears both (0.60 m now): 1 wants 0.73 to 1.00 m, 2 wants 1.27 to 1.66 m"
    ]
    assert (second.actions, second.seen) == ([], [1])


def test_the_remedies_of_a_pair_are_told_once_where_one_range_serves_both(make):
    pair = [
        make.verdict(
            subject=f"loudspeaker/{name}",
            remedy=make.remedy(1.6, high, key="position.from_front", subject=f"loudspeaker/{name}", now=1.45),
        )
        for name, high in (("left", 4.06), ("right", 4.6))
    ]
    (point,) = points(make, *pair)
    assert point.actions == ["left, right: place each 1.60 to 4.06 m from the front (now 1.45 m)"]


def test_pairs_stay_pairs_and_a_circuit_is_named_once(make):
    def fails(*subjects):
        return [make.verdict(subject=subject) for subject in subjects]

    (pairs,) = points(make, *fails("loudspeaker/l+loudspeaker/r", "loudspeaker/sl+loudspeaker/sr"))
    assert pairs.entry.who == "l and r; sl and sr"
    (sockets,) = points(make, *fails("receptacle/a+circuit/old", "receptacle/b+circuit/old"))
    assert sockets.entry.who == "receptacle a, receptacle b on circuit old"
    (door,) = points(make, *fails("loudspeaker/side+opening/hall-door"))
    assert door.entry.who == "side at hall-door"


def test_a_waiver_is_called_by_what_it_accepts_not_by_a_path(make):
    verdict = make.verdict(
        rule="file.waiver-unmatched", subject="waiver/boundary.seat-to-wall for seat/row2", figure=None
    )
    (point,) = points(make, verdict)
    assert point.entry.who == "waiver for row2, seat to wall (boundary)"


@pytest.mark.parametrize("wide", [60, 100])
def test_the_numbers_in_the_head_are_those_of_the_lines(make, wide):
    room = make.basement()
    text = make.report("text", make.review(room, rules=make.rules()), width=wide)
    many, errors, warnings = map(
        int, re.search(r"held back by (\d+) points, 1 to \1: (\d+) errors?, (\d+)\s+warnings?", text).groups()
    )
    listed = [int(number) for number in re.findall(r"^ ?(\d+)\. ", text, re.MULTILINE)]
    folded = re.search(r"(\d+)(?: to (\d+))?, not listed\s+here", text)
    if folded is not None:
        low, high = int(folded[1]), int(folded[2] or folded[1])
        listed += range(low, high + 1)
    assert errors + warnings == many
    assert listed == list(range(1, many + 1))


def test_every_warning_and_note_keeps_its_number_when_all_are_listed(make):
    room = make.basement()
    few, all_of_them = (
        make.report("text", make.review(room, rules=make.rules()), notes=notes) for notes in (False, True)
    )
    lines = [line for line in few.splitlines() if re.match(r" ?\d+\. ", line)]
    assert lines
    assert not [line for line in lines if line not in all_of_them]
    assert re.search(r"^Notes$", all_of_them, re.MULTILINE)
    assert "not listed" not in all_of_them


def test_what_is_missing_counts_where_the_stage_lets_it_stop_the_room(make):
    verdicts = [make.verdict(level=Level.ERROR), make.open("position", rule="bass.x", subject="subwoofer/sub")]
    head = make.report("text", make.review(make.room(*verdicts, open_level=Level.ERROR))).splitlines()[1]
    assert "held back by 1 point: 1 error and 1 check that lacks a value at this stage" in head


def test_a_load_path_that_a_person_must_decide_stands_before_the_errors_without_a_number(make):
    rule = make.rule(
        "mount.x", window=None, says={"report": "its report decides"}, caution="Caution: an engineer decides."
    )
    verdicts = [
        make.verdict(Kind.REVIEW, rule="mount.x", said="report", subject="picture/picture"),
        make.verdict(level=Level.ERROR),
    ]
    text = make.report("text", make.review(make.room(*verdicts), rules=(rule, make.rule())))
    assert "Before you drill or wire\n ?  picture: its report decides (a)\n\nErrors\n 1. left: " in text
    assert "For a person to decide" not in text


def test_where_the_page_is_full_errors_stand_and_what_is_missing_is_counted(make):
    errors = [
        make.verdict(level=Level.ERROR, subject=f"loudspeaker/l{number}", figure=make.figure(9.0, u=number / 100),
                     facts={"number": number})
        for number in range(60)
    ]  # fmt: skip
    verdicts = [*errors, make.verdict(), make.open("position", rule="bass.x", subject="subwoofer/sub")]
    text = make.report("text", make.review(make.room(*verdicts)))
    assert "\n60. l" in text
    assert "Warnings: 61, not listed here (--notes)" in text
    assert "1 check lacks a value (--missing)" in text
    assert "To find out next" not in text


def test_several_rooms_add_up_as_their_own_lines_do(make):
    pair = [make.verdict(subject=f"loudspeaker/{name}") for name in ("left", "right")]
    text = make.report("text", make.review(make.room(*pair), make.room(*pair, file="b.room.yaml")))
    assert "2 rooms, 0 held back: 0 errors, 2 warnings," in text


def test_notes_that_stop_a_room_are_counted_in_its_head(make):
    head = make.report("text", make.review(make.room(make.verdict(level=Level.NOTE), gate=Level.NOTE))).splitlines()[1]
    assert "held back by 1 point: 1 note" in head
