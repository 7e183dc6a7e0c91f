"""The line form is read by editors: file, line, column, level, subject, sentence, rule."""

from __future__ import annotations

import pytest

from roomlint.review.verdict import Kind, Level, Way


def test_a_line_has_the_form_that_editors_know(make):
    verdicts = [
        make.verdict(place=make.place(9)),
        make.verdict(Kind.REVIEW, rule="aim.seat", because="look", place=make.place(3)),
    ]
    assert make.report("lines", make.review(make.room(*verdicts))) == (
        "rooms/attic.room.yaml:3:3: review: left: look [aim.seat]\n"
        "rooms/attic.room.yaml:9:3: warning: left: stands 17.4 deg left; the stage wants it 22 to 32 deg out "
        "[angle.front-pair]\n"
    )


def test_lines_carry_no_basis(make):
    assert "BS.775" not in make.report("lines", make.review(make.room(make.verdict())), basis=True)


@pytest.mark.parametrize("kind", [Kind.OPEN, Kind.PASS, Kind.NOT_APPLICABLE, Kind.INFORMATIONAL])
def test_what_needs_no_action_shows_only_when_asked_for(make, kind):
    review = make.review(make.room(make.verdict(kind, because="fine.")))
    assert make.report("lines", review) == ""
    assert ": left: fine [angle.front-pair]" in make.report("lines", review, verdicts=True)


def test_what_is_not_known_shows_where_it_holds_the_room_back_or_is_asked_for(make):
    waits = make.verdict(Kind.OPEN, rule="b.b", because="waits.")
    lacks = make.verdict(Kind.OPEN, wanted=make.wanted("gfci", subject="circuit/c1", path="circuits[0].gfci"))
    plain = make.review(make.room(waits, lacks))
    assert make.report("lines", plain) == ""
    assert make.report("lines", plain, missing=True).count(": open: ") == 1
    held = make.review(make.room(waits, lacks, gate=Level.ERROR, open_level=Level.ERROR))
    assert make.report("lines", held).count(": open: ") == 2


def test_findings_are_sorted_by_place_then_rule_then_subject(make):
    verdicts = [
        make.verdict(place=make.place(9)),
        make.verdict(rule="b.b", subject="loudspeaker/z"),
        make.verdict(rule="b.b", subject="loudspeaker/a"),
        make.verdict(rule="a.a"),
    ]
    lines = make.report("lines", make.review(make.room(*verdicts))).splitlines()
    assert [line.rpartition("[")[2] for line in lines] == ["a.a]", "b.b]", "b.b]", "angle.front-pair]"]
    assert ": a: " in lines[1]


def test_a_finding_in_a_shared_sheet_says_which_room_it_is_about(make):
    verdict = make.verdict(place=make.place(file="sheets/a.product.yaml"))
    assert "(room rooms/attic.room.yaml)" in make.report("lines", make.review(make.room(verdict)))


def test_a_waived_failure_and_a_change_are_marked(make):
    verdicts = [make.verdict(waived=make.waived()), make.verdict(level=Level.ERROR, change=make.change(Way.WORSE))]
    lines = make.report("lines", make.review(make.room(*verdicts, compared=True), against="main")).splitlines()
    assert ":7:3: accepted: left: " in lines[0]
    assert "(worse) [" in lines[1]


def test_unreadable_files_stand_first(make):
    review = make.review(make.room(make.verdict()), problems=(make.problem("unknown key `seat`."),))
    lines = make.report("lines", review).splitlines()
    assert lines[0] == "rooms/attic.room.yaml:1:1: error: unknown key `seat`. [file.unreadable]"


def test_one_finding_is_one_line(make):
    report = make.report("lines", make.review(make.room(make.verdict(Kind.REVIEW, because="a\nb:1:1: error: \x1b[2J"))))
    assert report.count("\n") == 1
    assert "\x1b" not in report
