"""Workflow commands are read by a runner: one wrong sign and a line is lost."""

from __future__ import annotations

from roomlint.report.annotations import annotations_report
from roomlint.review.verdict import Kind, Level
from roomlint.source.place import Place


def test_findings_read_like_this(make):
    verdicts = [
        make.verdict(message="left: wrong."),
        make.verdict(level=Level.NOTE, message="left: so so.", place=Place("a.room.yaml", 2, 1, 4, 2)),
        make.verdict(Kind.REVIEW, message="left: look.", rule="bass.x"),
        make.verdict(Kind.PASS),
    ]
    assert annotations_report(make.review(make.room(*verdicts))).splitlines() == [
        "::warning file=rooms/attic.room.yaml,line=7,col=3,endColumn=7,title=angle.front-pair::left: wrong.",
        "::notice file=a.room.yaml,line=2,col=1,endLine=4,title=angle.front-pair::left: so so.",
        "::notice file=rooms/attic.room.yaml,line=7,col=3,endColumn=7,title=bass.x%2C for review::left: look.",
        (
            "::notice title=roomlint::0 errors, 1 warning, 1 note, 1 for review, 0 open, 1 passed, "
            "0 not applicable, 0 waived."
        ),
    ]


def test_the_gravest_come_first(make):
    verdicts = [make.verdict(level=level, place=make.place(9 - level.rank)) for level in reversed(Level)]
    verdicts.append(make.verdict(level=Level.ERROR, place=make.place(99)))
    lines = annotations_report(make.review(make.room(*verdicts))).splitlines()
    assert [line.split()[0] for line in lines] == ["::error", "::error", "::warning", "::notice", "::notice"]


def test_data_cannot_end_a_property_or_a_line(make):
    verdict = make.verdict(message="50 %\n::error::x", place=make.place(file="a,b:c%.room.yaml"))
    line = annotations_report(make.review(make.room(verdict))).splitlines()[0]
    assert line.startswith("::warning file=a%2Cb%3Ac%25.room.yaml,line=7")
    assert line.endswith("::50 %25 ::error::x.")


def test_waived_failures_are_counted_but_ask_nobody_to_act(make):
    lines = annotations_report(make.review(make.room(make.verdict(waived=make.waived())))).splitlines()
    assert len(lines) == 1
    assert "1 waived" in lines[0]


def test_unreadable_files_and_broken_rules_are_errors(make):
    review = make.review(problems=(make.problem("no unit."),), troubles=(make.trouble("a.b", "it broke"),))
    lines = annotations_report(review).splitlines()
    assert lines[0].startswith("::error file=rooms/attic.room.yaml,line=1,col=1")
    assert lines[1] == "::error title=roomlint is not complete::it broke."
