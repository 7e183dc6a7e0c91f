"""Each finding against an earlier review: new, unchanged, better, worse or gone, by rule and element ids alone."""

from __future__ import annotations

import json
import os
import subprocess
import sys
from typing import TYPE_CHECKING

import pytest
from click.testing import CliRunner

from roomlint.cli import main
from roomlint.design.house import House
from roomlint.measure.figure import Figure
from roomlint.review.compare import FINGERPRINT, NotOursError, compare, earlier_of, fingerprint, read_sarif
from roomlint.review.review import Review, RoomReview
from roomlint.review.verdict import Kind, Level, State, Verdict, Waived
from roomlint.source.place import Place

if TYPE_CHECKING:
    from pathlib import Path

FILE = "attic.room.yaml"


def verdict(kind=Kind.FAIL, level=Level.WARNING, *, subject="loudspeaker/left", margin=-2.0, line=1, waived=None):
    return Verdict(
        rule="angle.front-pair",
        kind=kind,
        level=level if kind is Kind.FAIL else None,
        subject=subject,
        words=subject,
        message="it fails.",
        place=Place(FILE, line, 1, line, 2),
        figure=Figure("azimuth", 26.0, "deg") if margin is not None else None,
        margin=margin,
        waived=waived,
    )


def review(*verdicts, **more):
    return Review((RoomReview(FILE, "A", "", None, House(), verdicts, **more),), ())


def changes(now, then, **more):
    compared = compare(review(*now, **more), earlier_of(review(*then), "HEAD~1"))
    return compared.rooms[0]


def change(now, then):
    return changes([now], [then]).verdicts[0].change


def test_what_was_not_there_is_new() -> None:
    room = changes([verdict()], [])
    assert room.compared
    assert room.verdicts[0].change.state is State.NEW


def test_moved_lines_change_nothing() -> None:
    assert change(verdict(line=80), verdict(line=3)).state is State.UNCHANGED


@pytest.mark.parametrize(("margin", "better"), [(-1.5, 0.5), (-2.5, -0.5)])
def test_a_margin_tells_better_or_worse_by_how_much(margin: float, better: float) -> None:
    told = change(verdict(margin=margin), verdict())
    assert (told.state, told.was, told.better_by) == (State.UPDATED, "warning", pytest.approx(better))


def test_newly_undecided_is_told() -> None:
    told = change(verdict(Kind.OPEN, margin=None), verdict(Kind.PASS, margin=1.0))
    assert (told.state, told.was) == (State.UPDATED, "pass")


def test_a_failure_that_passes_now_or_is_judged_no_more_is_gone() -> None:
    right = verdict(subject="loudspeaker/right")
    room = changes([verdict(Kind.PASS, margin=1.0)], [verdict(), right])
    assert [(gone.subject, gone.change.state) for gone in room.gone] == [
        ("loudspeaker/left", State.ABSENT),
        ("loudspeaker/right", State.ABSENT),
    ]


def test_a_failure_that_cannot_be_decided_now_is_not_gone() -> None:
    assert changes([verdict(Kind.OPEN, margin=None)], [verdict()]).gone == ()


ACCEPTED = Waived("glass", "lead", "", Place(FILE, 9, 1, 9, 2))


@pytest.mark.parametrize(
    ("now", "then", "gates"),
    [
        (verdict(), None, True),
        (verdict(), verdict(), False),
        (verdict(margin=-1.0), verdict(), False),
        (verdict(margin=-3.0), verdict(), True),
        (verdict(), verdict(Kind.PASS, margin=1.0), True),
        (verdict(level=Level.ERROR), verdict(), True),
        (verdict(), verdict(level=Level.ERROR), False),
        (verdict(), verdict(waived=ACCEPTED), True),
        (verdict(waived=ACCEPTED), None, False),
        (verdict(Kind.OPEN, margin=None), verdict(Kind.PASS, margin=1.0), True),
        (verdict(Kind.OPEN, margin=None), verdict(Kind.OPEN, margin=None), False),
    ],
)
def test_gating_only_what_is_new_or_worse(now, then, *, gates: bool) -> None:
    more = {"gate": Level.WARNING, "gate_new": True, "open_level": Level.WARNING}
    room = changes([now], [then] if then is not None else [], **more)
    assert bool(list(room.gating())) is gates


def sarif(**result):
    about = {
        "ruleId": "angle.front-pair",
        "kind": "fail",
        "level": "warning",
        "message": {"text": "it fails."},
        "locations": [{"physicalLocation": {"artifactLocation": {"uri": FILE}, "region": {"startLine": 4}}}],
        "partialFingerprints": {FINGERPRINT: fingerprint(FILE, verdict())},
        "properties": {"figure": {"name": "azimuth", "value": 25.5, "unit": "deg"}, "margin": -2.5},
    }
    return {"version": "2.1.0", "runs": [{"tool": {"driver": {"name": "roomlint"}}, "results": [about | result]}]}


def test_a_sarif_file_of_ours_stands_for_the_earlier_review(tmp_path: Path) -> None:
    (tmp_path / "then.sarif").write_text(json.dumps(sarif()), encoding="utf-8")
    room = compare(review(verdict()), read_sarif(str(tmp_path / "then.sarif"))).rooms[0]
    assert room.verdicts[0].change.better_by == pytest.approx(0.5)


def test_what_was_already_gone_in_a_sarif_file_is_not_taken_up(tmp_path: Path) -> None:
    (tmp_path / "then.sarif").write_text(json.dumps(sarif(baselineState="absent")), encoding="utf-8")
    assert read_sarif(str(tmp_path / "then.sarif")).verdicts == {}


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("{", "no SARIF file"),
        ("[]", "no SARIF file"),
        ("[" * 100_000, "no SARIF file"),
        ('{"runs": [{"tool": {"driver": {"name": "other"}}}]}', "another program"),
        (json.dumps(sarif(partialFingerprints={})), "lacks what roomlint writes"),
        (json.dumps(sarif(kind="strange")), "lacks what roomlint writes"),
        (json.dumps(sarif(locations=[])), "lacks what roomlint writes"),
        (json.dumps(sarif(properties=[1])), "lacks what roomlint writes"),
    ],
)
def test_a_foreign_or_broken_file_is_refused_in_plain_words(text: str, says: str, tmp_path: Path) -> None:
    (tmp_path / "then.sarif").write_text(text, encoding="utf-8")
    with pytest.raises(NotOursError, match=says):
        read_sarif(str(tmp_path / "then.sarif"))


HOUSE = """\
roomlint_house: 1
gate: warning
window_rules:
  - id: house.height
    title: Loudspeakers stand between one metre and one metre and a half.
    figure: height
    each: {loudspeakers: [all]}
    low: 1 m
    high: 1.5 m
    level: warning
    basis: {grade: practice, note: our own habit}
"""
ROOM = """\
roomlint: 1
room: {size: {width: 4 m, length: 5 m}}
loudspeakers:
  - id: left
    label: M+030
    position: {from_left: 1 m, from_front: 1 m, height: 0.8 m}
"""


@pytest.fixture
def repository(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    for name in ("GIT_DIR", "GIT_INDEX_FILE", "GIT_WORK_TREE"):
        monkeypatch.delenv(name, raising=False)
    (tmp_path / "house.yaml").write_text(HOUSE, encoding="utf-8")
    (tmp_path / FILE).write_text(ROOM, encoding="utf-8")
    who = ["-c", "user.name=team", "-c", "user.email=team@example.org"]
    for words in (["init", "--quiet"], ["add", "--all"], [*who, "commit", "--quiet", "-m", "then"]):
        subprocess.run(["git", *words], cwd=tmp_path, check=True)
    monkeypatch.chdir(tmp_path)
    return tmp_path


def checked(*words: str):
    return CliRunner().invoke(main, ["check", "--only", "house", *words])


def test_a_reformatted_room_has_nothing_new(repository: Path) -> None:
    (repository / FILE).write_text("# moved\n\n" + ROOM.replace("height: 0.8 m", "height: 80 cm"), encoding="utf-8")
    assert checked().exit_code == 1
    assert checked("--against", "HEAD", "--gate-new").exit_code == 0


@pytest.mark.skipif(sys.platform != "linux", reason="needs names of any bytes")
def test_a_file_name_that_is_no_utf8_is_compared_too(repository: Path) -> None:
    (repository / FILE).with_name(os.fsdecode(b"caf\xe9.room.yaml")).write_text(ROOM, encoding="utf-8")
    done = checked("--against", "HEAD", ".")
    assert done.exit_code == 1, done.exception
    assert "caf" in done.output


def test_a_worse_room_gates_and_the_house_of_the_revision_judged_the_revision(repository: Path) -> None:
    (repository / FILE).write_text(ROOM.replace("0.8 m", "0.7 m"), encoding="utf-8")
    assert checked("--against", "HEAD", "--gate-new").exit_code == 1
    (repository / FILE).write_text(ROOM, encoding="utf-8")
    (repository / "house.yaml").write_text(HOUSE.replace("low: 1 m", "low: 1.2 m"), encoding="utf-8")
    assert checked("--against", "HEAD", "--gate-new").exit_code == 1


def test_a_sarif_file_that_the_program_wrote_is_read_back_whole(repository: Path) -> None:
    checked("--write", "sarif=then.sarif")
    assert checked("--against", "then.sarif", "--gate-new").exit_code == 0
    (repository / FILE).write_text(ROOM.replace("0.8 m", "0.7 m"), encoding="utf-8")
    assert checked("--against", "then.sarif", "--gate-new").exit_code == 1
    (repository / FILE).write_text(ROOM.replace("0.8 m", "1.2 m"), encoding="utf-8")
    checked("--against", "then.sarif", "--write", "sarif=now.sarif")
    log = json.loads((repository / "now.sarif").read_text(encoding="utf-8"))
    assert sorted(result["baselineState"] for result in log["runs"][0]["results"]) == ["updated"]


@pytest.mark.usefixtures("repository")
@pytest.mark.parametrize(
    "words", [["--against=--help"], ["--against", "nowhere"], ["--against", "none.sarif"], ["--gate-new"]]
)
def test_what_cannot_be_compared_with_is_a_usage_error(words: list[str]) -> None:
    done = checked(*words)
    assert done.exit_code == 2
    assert "Error: --" in done.output
