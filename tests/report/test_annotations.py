"""Workflow commands are read by a runner: one wrong sign and a line is lost, and only the first few are shown."""

from __future__ import annotations

import subprocess

from roomlint.review.verdict import Kind, Level, Way
from roomlint.source.place import Place


def lines_of(make, *rooms, **more):
    return make.report("annotations", make.review(*rooms, **more)).splitlines()


def test_findings_read_like_this(make):
    verdicts = [
        make.verdict(remedy=make.remedy()),
        make.verdict(level=Level.NOTE, place=Place("a.room.yaml", 2, 1, 4, 2)),
        make.verdict(Kind.REVIEW, rule="bass.x", because="look"),
        make.verdict(Kind.PASS),
    ]
    said = "stands 17.4 deg left; the stage wants it 22 to 32 deg out."
    assert lines_of(make, make.room(*verdicts)) == [
        (
            "::notice title=roomlint::0 errors, 1 warning, 1 note, 1 for a person to decide, 0 open, 1 passed, "
            "0 not applicable, 0 accepted."
        ),
        (
            "::warning file=rooms/attic.room.yaml,line=7,col=3,endColumn=7,title=angle.front-pair::"
            f"left: {said} Place it 0.80 to 1.10 m from the left (now 0.50 m)."
        ),
        f"::notice file=a.room.yaml,line=2,col=1,endLine=4,title=angle.front-pair::left: {said}",
        (
            "::notice file=rooms/attic.room.yaml,line=7,col=3,endColumn=7,"
            "title=bass.x%2C for a person to decide::left: look."
        ),
    ]


def test_what_makes_the_run_incomplete_and_the_tally_come_before_any_finding(make):
    lines = lines_of(
        make,
        make.room(make.verdict(level=Level.ERROR)),
        problems=(make.problem("no unit."),),
        troubles=(make.trouble("a.b", "it broke"),),
        unmatched=("rooms",),
    )
    assert lines[0] == "::error title=roomlint is not complete::it broke."
    assert lines[1].startswith("::warning title=roomlint found nothing to check")
    assert lines[2].startswith("::error file=rooms/attic.room.yaml,line=1,col=1")
    assert lines[3].startswith("::notice title=roomlint::1 error")
    assert lines[4].startswith("::error file=")


def test_of_a_comparison_only_what_is_new_or_worse_is_marked(make):
    verdicts = [
        make.verdict(subject=f"loudspeaker/{way}", change=make.change(way))
        for way in (Way.NEW, Way.WORSE, Way.BETTER, None)
    ]
    lines = lines_of(make, make.room(*verdicts, compared=True), against="main")
    assert [line.rpartition("::")[2].partition(":")[0] for line in lines[1:]] == ["new", "worse"]
    assert "compared with main; 2 findings stand as before" in lines[0]


def test_the_gravest_come_first(make):
    verdicts = [make.verdict(level=level, place=make.place(9 - level.rank)) for level in reversed(Level)]
    verdicts.append(make.verdict(level=Level.ERROR, place=make.place(99)))
    lines = lines_of(make, make.room(*verdicts))
    assert [line.split()[0] for line in lines[1:]] == ["::error", "::error", "::warning", "::notice"]


def test_more_than_a_runner_shows_is_counted_and_not_written(make):
    verdicts = [make.verdict(subject=f"loudspeaker/s{index}") for index in range(300)]
    lines = lines_of(make, make.room(*verdicts))
    assert len(lines) == 201
    assert lines[0].endswith("; 100 more are not marked.")


def test_data_cannot_end_a_property_or_a_line(make):
    verdict = make.verdict(Kind.REVIEW, because="50 %\n::error::x", place=make.place(file="a,b:c%.room.yaml"))
    line = lines_of(make, make.room(verdict))[1]
    assert line.startswith("::notice file=a%2Cb%3Ac%25.room.yaml,line=7")
    assert line.endswith("::left: 50 %25 ::error::x.")


def test_waived_failures_are_counted_but_ask_nobody_to_act(make):
    (line,) = lines_of(make, make.room(make.verdict(waived=make.waived())))
    assert "1 accepted" in line


def test_marks_are_put_from_the_top_of_the_repository(make, tmp_path, monkeypatch):
    subprocess.run(["git", "init", "--quiet", str(tmp_path)], check=True)
    (tmp_path / "rooms").mkdir()
    monkeypatch.chdir(tmp_path / "rooms")
    room = make.room(make.verdict(place=make.place(file="a.room.yaml")), file="a.room.yaml")
    assert "file=rooms/a.room.yaml," in lines_of(make, room)[1]
