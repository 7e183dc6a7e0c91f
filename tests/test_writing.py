"""Reports come out whole, in one encoding, and never over what is reviewed."""

from __future__ import annotations

import json
import os
import subprocess
import sys
from pathlib import Path

import pytest
from click.testing import CliRunner

from roomlint.cli import main
from roomlint.writing import CannotWriteError, Outputs

PLAIN = "roomlint: 1\nroom: {size: {width: 4 m, length: 5 m}}\n"
BROKEN = PLAIN + "żółć Ω ≤ ± 3 °: 1\n"
OLD = "what an earlier run left\n"


@pytest.fixture
def repository(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    inside = tmp_path / "repository"
    (inside / ".git").mkdir(parents=True)
    (inside / "a.room.yaml").write_text(PLAIN, encoding="utf-8")
    monkeypatch.chdir(inside)
    return inside


def run(*words: str) -> tuple[int, str]:
    done = CliRunner().invoke(main, list(words))
    assert done.exception is None or isinstance(done.exception, SystemExit), done.exception
    return done.exit_code, done.output


def program(*words: str, **settings: object) -> subprocess.CompletedProcess[bytes]:
    surroundings = {**os.environ, **settings.pop("env", {})}  # type: ignore[dict-item]
    command = [sys.executable, "-P", "-m", "roomlint", *words]
    return subprocess.run(command, check=False, stderr=subprocess.PIPE, env=surroundings, timeout=120, **settings)  # type: ignore[call-overload,no-any-return]


@pytest.mark.parametrize(
    ("kind", "encoding"),
    [
        *((kind, "cp1252") for kind in ("text", "sarif", "alerts", "markdown", "annotations")),
        *(("text", encoding) for encoding in ("cp932", "ascii")),
    ],
)
def test_a_report_is_the_same_bytes_whatever_the_console(kind: str, encoding: str, repository: Path) -> None:
    (repository / "a.room.yaml").write_text(BROKEN, encoding="utf-8")
    words = ("check", "a.room.yaml", "--format", kind, "--today", "2026-11-25")
    here, there = (
        program(*words, env={"PYTHONIOENCODING": name, "PYTHONUTF8": "0"}, stdout=subprocess.PIPE)
        for name in ("utf-8", encoding)
    )
    assert there.returncode == 2, there.stderr
    assert there.stdout == here.stdout
    assert there.stdout.decode("utf-8").isascii() is False
    assert b"\r" not in there.stdout


def test_a_terminal_that_lacks_a_sign_shows_an_escape(repository: Path) -> None:
    (repository / "a.room.yaml").write_text(BROKEN, encoding="utf-8")
    ours, theirs = os.openpty()
    done = program("check", stdout=theirs, env={"PYTHONIOENCODING": "ascii", "PYTHONUTF8": "0"})
    os.close(theirs)
    shown = os.read(ours, 10_000)
    os.close(ours)
    assert done.returncode == 2, done.stderr
    assert b"a.room.yaml:3:1: unknown key '\\u017c" in shown


def test_a_file_name_that_is_no_text_can_be_told(repository: Path) -> None:
    (repository / os.fsdecode(b"caf\xe9.room.yaml")).write_text("nonsense: 1\n", encoding="utf-8")
    done = program("check", stdout=subprocess.PIPE)
    assert done.returncode == 2
    assert b"caf\\udce9.room.yaml:1:1" in done.stdout


@pytest.mark.parametrize("target", ["a.room.yaml", "house.yaml", "sheet.yml", "up/../a.room.yaml", "link"])
def test_a_report_never_takes_the_place_of_a_design_file(target: str, repository: Path) -> None:
    (repository / "up").mkdir()
    (repository / "link").symlink_to("a.room.yaml")
    status, output = run("check", "a.room.yaml", "--write", f"text={target}")
    assert status == 2
    assert "cannot write" in output
    assert (repository / "a.room.yaml").read_text(encoding="utf-8") == PLAIN


def test_a_report_never_takes_the_place_of_what_the_run_reads(repository: Path) -> None:
    (repository / "plain.txt").write_text(PLAIN, encoding="utf-8")
    (repository / "b.room.yaml").symlink_to("plain.txt")
    (repository / "decisions").write_text("roomlint_house: 1\n", encoding="utf-8")
    (repository / "old.sarif").write_text("{}", encoding="utf-8")
    for words in (
        ("b.room.yaml", "--write", "text=plain.txt"),
        ("a.room.yaml", "--house", "decisions", "--write", "text=decisions"),
        ("a.room.yaml", "--against", "old.sarif", "--write", "sarif=old.sarif"),
    ):
        status, output = run("check", *words)
        assert status == 2
        assert "this run reads that file" in output
    assert (repository / "plain.txt").read_text(encoding="utf-8") == PLAIN
    assert (repository / "old.sarif").read_text(encoding="utf-8") == "{}"


@pytest.mark.parametrize("link", ["report.md", "out/report.md", "nowhere.md"])
def test_a_report_never_goes_through_a_link_out_of_the_repository(link: str, repository: Path) -> None:
    outside = repository.parent / "outside"
    outside.mkdir()
    (outside / "report.md").write_text(OLD, encoding="utf-8")
    (repository / "report.md").symlink_to("../outside/report.md")
    (repository / "nowhere.md").symlink_to("../outside/new.md")
    (repository / "out").symlink_to("../outside")
    status, output = run("check", "a.room.yaml", "--write", f"markdown={link}")
    assert status == 2
    assert "leads out of the repository" in output
    assert os.listdir(outside) == ["report.md"]  # noqa: PTH208  names are compared
    assert (outside / "report.md").read_text(encoding="utf-8") == OLD


def test_a_report_may_go_outside_where_that_is_said_outright(repository: Path) -> None:
    run("check", "a.room.yaml", "--write", "markdown=../report.md")
    assert (repository.parent / "report.md").is_file()


def test_a_pipe_a_device_and_a_folder_are_no_place_for_a_report(repository: Path) -> None:
    os.mkfifo(repository / "pipe")
    (repository / "folder").mkdir()
    for target, word in (("pipe", "ordinary"), ("/dev/null", "ordinary"), ("folder", "folder"), ("no/x", "no folder")):
        done = program("check", "a.room.yaml", "--write", f"text={target}", stdout=subprocess.PIPE)
        assert done.returncode == 2
        assert word.encode() in done.stderr
    assert Path("/dev/null").is_char_device()


def test_two_reports_do_not_go_to_one_file(repository: Path) -> None:
    status, output = run("check", "--write", "text=out", "--write", "sarif=./out")
    assert status == 2
    assert "another report" in output


def test_a_run_that_breaks_leaves_no_old_report(repository: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def breaks(*_: object) -> None:
        raise RuntimeError("a bug\nof ours")

    (repository / "report.md").write_text(OLD, encoding="utf-8")
    monkeypatch.setattr("roomlint.review.session.run", breaks)
    status, output = run("check", "a.room.yaml", "--write", "markdown=report.md")
    assert status == 4
    assert "RuntimeError: a bug of ours" in output
    assert output.count("\n") == 1
    assert not (repository / "report.md").exists()


def test_a_revision_that_is_none_leaves_no_old_report(repository: Path) -> None:
    (repository / "report.md").write_text(OLD, encoding="utf-8")
    assert run("check", "a.room.yaml", "--against", "no-such", "--write", "markdown=report.md")[0] == 2
    assert not (repository / "report.md").exists()


def test_a_report_is_whole_or_not_there(repository: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def full(_: int) -> None:
        raise OSError(28, "No space left on device")

    outputs = Outputs(["report.md"])
    outputs.clear([])
    monkeypatch.setattr(os, "fsync", full)
    with pytest.raises(CannotWriteError, match="No space left"):
        outputs.write("report.md", ["half", "a report"])
    assert sorted(os.listdir(repository)) == [".git", "a.room.yaml"]  # noqa: PTH208  names are compared


def test_a_report_has_the_rights_of_any_new_file(repository: Path) -> None:
    run("check", "a.room.yaml", "--write", "text=report.txt")
    (repository / "other").touch()
    assert (repository / "report.txt").stat().st_mode == (repository / "other").stat().st_mode


def test_a_reader_that_has_seen_enough_stops_no_report(repository: Path) -> None:
    ours, theirs = os.pipe()
    os.close(ours)
    done = program("check", "a.room.yaml", "--gate", "never", "--write", "sarif=out.sarif", stdout=theirs)
    os.close(theirs)
    assert done.returncode == 0
    assert done.stderr == b""
    assert json.loads((repository / "out.sarif").read_text(encoding="utf-8"))["version"] == "2.1.0"


def test_an_output_that_is_closed_is_told(repository: Path) -> None:
    command = f'"{sys.executable}" -P -m roomlint check a.room.yaml --gate never >&-'
    done = subprocess.run(["sh", "-c", command], stderr=subprocess.PIPE, text=True, check=False)
    assert done.returncode == 2
    assert "the output: it is closed" in done.stderr


@pytest.mark.parametrize("title", ["a\\n::error::planted", "x ##[error]planted", "\\u202Eplanted", "\\u001B[31mred"])
def test_a_title_steers_neither_a_terminal_nor_a_log(title: str, repository: Path) -> None:
    (repository / "a.room.yaml").write_text(PLAIN + f'project: {{title: "{title}"}}\n', encoding="utf-8")
    for words in (("figures", "a.room.yaml"), ("figures", "a.room.yaml", "--format", "json"), ("check",)):
        output = run(*words)[1]
        assert not any(line.lstrip().startswith("::") for line in output.splitlines())
        assert not any(word in output for word in ("##[", "\u202e", "\x1b"))


def test_window_rules_of_a_house_steer_nothing(repository: Path) -> None:
    rule = (
        'roomlint_house: 1\nwindow_rules:\n  - {id: house.x, title: "a\\n::error::planted \\u202E ##[error]", '
        "figure: height, each: {loudspeakers: [all]}, low: 1 m, level: note, basis: {grade: practice, note: ours}}\n"
    )
    (repository / "house.yaml").write_text(rule, encoding="utf-8")
    for words in (("rules", "--house", "house.yaml"), ("rules", "house.x", "--house", "house.yaml")):
        status, output = run(*words)
        assert status == 0, output
        assert not any(line.lstrip().startswith("::") for line in output.splitlines())
        assert not any(word in output for word in ("##[", "\u202e"))


@pytest.mark.parametrize("name", ["::error::x.room.yaml", "##[error]x.room.yaml"])
def test_a_file_name_is_no_command(name: str, repository: Path) -> None:
    (repository / name).write_text("nonsense: 1\n", encoding="utf-8")
    status, output = run("check")
    assert status == 2
    assert not any(line.lstrip().startswith("::") for line in output.splitlines())
    assert "##[" not in output
    assert json.loads(run("check", "--format", "sarif")[1])["runs"]


def test_a_plain_locale_loses_no_sign_and_ends_as_any_other(repository: Path) -> None:
    (repository / "a.room.yaml").write_text(
        PLAIN.replace("roomlint: 1", "roomlint: 1\nproject: {code: loft, title: Żółty Ω}"), encoding="utf-8"
    )
    plain = {"LANG": "C", "LC_ALL": "C", "PYTHONUTF8": "0", "PYTHONCOERCECLOCALE": "0"}
    usual = {"LANG": "C.UTF-8", "LC_ALL": "C.UTF-8"}
    here, there = (program("check", "a.room.yaml", stdout=subprocess.PIPE, env=env) for env in (plain, usual))
    assert (here.returncode, here.stderr, here.stdout) == (there.returncode, b"", there.stdout)
    assert here.stdout.decode("utf-8").startswith("loft · Żółty Ω\n")
