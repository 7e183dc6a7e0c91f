"""The commands as a user gives them: statuses, formats, and answers that help."""

from __future__ import annotations

import json
import os
import re
import subprocess
import sys
from pathlib import Path

import pytest
from click.testing import CliRunner

from roomlint.cli import main
from roomlint.review.book import load_book

EXAMPLES = Path(__file__).parent.parent / "example_projects"
TODAY = ("--today", "2026-11-25")


def run(*words: str) -> tuple[int, str]:
    done = CliRunner().invoke(main, list(words))
    assert done.exception is None or isinstance(done.exception, SystemExit), done.exception
    return done.exit_code, done.output


@pytest.mark.parametrize(("folder", "status"), [("attic", 0), ("basement", 1), ("garden-studio", 0)])
def test_status_gates(folder: str, status: int) -> None:
    assert run("check", str(EXAMPLES / folder), *TODAY)[0] == status


def test_gate_never_lets_everything_through() -> None:
    assert run("check", str(EXAMPLES / "basement"), "--gate", "never", *TODAY)[0] == 0


def test_an_unknown_rule_is_told_with_the_nearest_known() -> None:
    status, output = run("check", str(EXAMPLES), "--only", "angle.front-pear")
    assert status == 2
    assert "angle.front-pair" in output


def test_an_unknown_house_file_is_told() -> None:
    status, output = run("check", str(EXAMPLES), "--house", "no-such.yaml")
    assert status == 2
    assert "no-such.yaml" in output


@pytest.mark.skipif(not Path("/dev/full").exists(), reason="needs a device that is always full")
@pytest.mark.parametrize("words", [("check", str(EXAMPLES / "garden-studio")), ("rules",)])
def test_an_output_that_is_full_is_told_of(words: tuple[str, ...]) -> None:
    with Path("/dev/full").open("w", encoding="utf-8") as full:
        done = subprocess.run(
            [sys.executable, "-m", "roomlint", *words], stdout=full, stderr=subprocess.PIPE, text=True, check=False
        )
    assert done.returncode == 2
    assert "cannot write to the output" in done.stderr
    assert "Traceback" not in done.stderr


def test_many_reports_come_from_one_run(tmp_path: Path) -> None:
    sarif, markdown = tmp_path / "out.sarif", tmp_path / "out.md"
    run("check", str(EXAMPLES / "attic"), "--write", f"sarif={sarif}", "--write", f"markdown={markdown}", *TODAY)
    assert json.loads(sarif.read_text(encoding="utf-8"))["version"] == "2.1.0"
    assert markdown.read_text(encoding="utf-8").strip()


def test_a_report_format_that_does_not_exist_is_told() -> None:
    status, output = run("check", str(EXAMPLES), "--write", "paper=out")
    assert status == 2
    assert "FORMAT=FILE" in output


@pytest.mark.parametrize("words", [("check", ""), ("check", str(EXAMPLES), ""), ("figures", "")])
def test_an_empty_name_stands_for_nothing(words: tuple[str, ...]) -> None:
    status, output = run(*words)
    assert status == 2
    assert "an empty text names no file" in output


@pytest.mark.parametrize("command", ["check", "rules", "figures"])
def test_whatever_nobody_caught_is_one_line_and_not_complete(command: str, monkeypatch: pytest.MonkeyPatch) -> None:
    def breaks(*_: object, **__: object) -> None:
        raise OverflowError("(34, 'Numerical result\nout of range')")

    monkeypatch.setattr("roomlint.review.desk.Desk.open_room", breaks)
    monkeypatch.setattr("roomlint.review.desk.Desk.open_house", breaks)
    status, output = run(command, *(() if command == "rules" else (str(EXAMPLES / "attic" / "attic.room.yaml"),)))
    assert status == 4
    assert output.startswith("roomlint: not complete: OverflowError: (34, 'Numerical result out of range')")
    assert output.count("\n") == 1


@pytest.mark.parametrize(("error", "status"), [(SystemExit(0), 4), (MemoryError(), 4), (KeyboardInterrupt(), 130)])
def test_an_exit_that_is_not_ours_is_never_a_pass(
    error: BaseException, status: int, monkeypatch: pytest.MonkeyPatch
) -> None:
    def leaves(*_: object, **__: object) -> None:
        raise error

    monkeypatch.setattr("roomlint.review.session.run", leaves)
    assert run("check", str(EXAMPLES))[0] == status


def test_an_earlier_report_with_a_line_without_end_is_told(tmp_path: Path) -> None:
    report = tmp_path / "then.sarif"
    run("check", str(EXAMPLES / "garden-studio"), "--write", f"sarif={report}", *TODAY)
    text = report.read_text(encoding="utf-8")
    report.write_text(re.sub('"startLine":[0-9]+', '"startLine":1e999', text), encoding="utf-8")
    status, output = run("check", str(EXAMPLES / "garden-studio"), "--against", str(report), *TODAY)
    assert status == 2
    assert "--against" in output


def test_an_earlier_report_is_known_by_what_it_holds_and_what_was_taken_is_said(team: Team, tmp_path: Path) -> None:
    team.stage("a.room.yaml", FAILING)
    team.git("commit", "--quiet", "-m", "as it stands")
    for name in ("then", "then.json", "HEAD.txt"):
        run("check", "a.room.yaml", "--write", f"sarif={name}")
        assert f"Compared with report {name}." in run("check", "a.room.yaml", "--against", name)[1]
    assert "Compared with revision main." in run("check", "a.room.yaml", "--against", "main")[1]
    (tmp_path / "then.sarif").write_text("plain words", encoding="utf-8")
    for name, says in (("then.sarif", "the file of that name is no report"), ("no.sarif", "there is no report")):
        status, output = run("check", "a.room.yaml", "--against", name)
        assert (status, says in output) == (2, True), output


def test_a_pipe_for_an_earlier_report_does_not_hold_the_run(tmp_path: Path) -> None:
    os.mkfifo(tmp_path / "then.sarif")
    command = [sys.executable, "-m", "roomlint", "check", str(EXAMPLES), "--against", str(tmp_path / "then.sarif")]
    done = subprocess.run(command, capture_output=True, text=True, check=False, timeout=60)
    assert done.returncode == 2
    assert "--against" in done.stderr


class Team:
    """A repository in which things are staged and committed."""

    def __init__(self, folder: Path) -> None:
        self.folder = folder
        self.git("init", "--quiet", "--initial-branch=main")

    def git(self, *words: str) -> None:
        names = ("-c", "user.name=team", "-c", "user.email=team@example.org")
        subprocess.run(["git", *names, *words], cwd=self.folder, check=True, capture_output=True)

    def stage(self, name: str, text: str) -> None:
        (self.folder / name).parent.mkdir(parents=True, exist_ok=True)
        (self.folder / name).write_text(text, encoding="utf-8")
        self.git("add", "--", name)


@pytest.fixture
def team(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Team:
    for name in ("GIT_DIR", "GIT_INDEX_FILE", "GIT_WORK_TREE"):
        monkeypatch.delenv(name, raising=False)
    monkeypatch.chdir(tmp_path)
    return Team(tmp_path)


PLAIN = "roomlint: 1\nroom: {size: {width: 4.5 m, length: 6 m}}\n"
FAILING = (
    PLAIN
    + """\
layout: 0+2+0
seats: [{id: middle, ear: {from_left: 2.25 m, from_front: 4 m, height: 1.1 m}}]
loudspeakers:
  - {id: left, label: M+030, position: {from_left: 3.5 m, from_front: 0.5 m, height: 1.1 m}}
"""
)


def test_staged_gates_on_what_is_new_unless_told_otherwise(team: Team) -> None:
    team.stage("rooms/old.room.yaml", FAILING)
    assert run("check", "--staged")[0] == 1  # nothing is committed yet, so all of it is new
    team.git("commit", "--quiet", "-m", "old")
    team.stage("rooms/other.room.yaml", PLAIN)
    status, output = run("check", "--staged")
    assert status == 0
    assert "Compared with revision HEAD" in output
    assert run("check", "--staged", "--gate-all")[0] == 1
    team.git("commit", "--quiet", "-m", "other")
    assert run("check", "--staged", "--against", "HEAD~1")[0] == 0
    team.stage("rooms/new.room.yaml", FAILING)
    assert run("check", "--staged")[0] == 1
    assert run("check", "--staged", "rooms/other.room.yaml")[0] == 0
    assert run("check", "--staged", "--jobs", "2")[0] == 1


def _reviewed_then(monkeypatch: pytest.MonkeyPatch) -> list[str]:
    """Return a list that fills with the rooms which are reviewed as they were."""
    from roomlint.review import session

    reviewed: list[str] = []
    one = session.Reviewer.one

    def noted(self: session.Reviewer, path: str) -> session.One:
        if self.choices.revision not in {"", ":staged"}:
            reviewed.append(Path(path).name)
        return one(self, path)

    monkeypatch.setattr(session.Reviewer, "one", noted)
    return reviewed


@pytest.mark.parametrize(
    ("change", "again"),
    [
        ({"rooms/old.room.yaml": PLAIN}, {"old.room.yaml"}),
        ({"notes.txt": "no design"}, set()),
        ({"house.yaml": "roomlint_house: 1\ngate: never\n"}, {"old.room.yaml", "other.room.yaml", "broken.room.yaml"}),
        ({"rooms/other.room.yaml": "nonsense: 1\n"}, {"other.room.yaml"}),
        ({"rooms/broken.room.yaml": PLAIN}, {"broken.room.yaml"}),
    ],
)
def test_what_is_staged_as_it_was_committed_is_not_reviewed_twice(
    change: dict[str, str], again: set[str], team: Team, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The report is that of a comparison which reviews every room twice."""
    rooms = {"rooms/old.room.yaml": FAILING, "rooms/other.room.yaml": PLAIN, "rooms/broken.room.yaml": "nonsense: 1\n"}
    for file, text in rooms.items():
        team.stage(file, text)
    team.git("commit", "--quiet", "-m", "first")
    for file, text in change.items():
        team.stage(file, text)
    reviewed = _reviewed_then(monkeypatch)
    quick = run("check", "--staged", "--format", "markdown")
    assert set(reviewed) == again
    monkeypatch.setattr("roomlint.source.revision.Revision.same_rooms", lambda *_: frozenset())
    assert run("check", "--staged", "--format", "markdown") == quick
    assert set(reviewed) == {Path(name).name for name in rooms}


def test_many_rooms_are_spread_over_the_cores_and_few_are_not() -> None:
    from roomlint.cli_review import cores, processes

    assert cores() >= 1
    assert processes(1) == processes(15) == 1
    assert processes(1000) == cores()


def test_staged_reads_the_house_file_and_the_rooms_that_are_staged(team: Team) -> None:
    team.stage("house.yaml", "roomlint_house: 1\ngate: never\n")
    team.stage("a.room.yaml", FAILING)
    (team.folder / "house.yaml").unlink()
    (team.folder / "a.room.yaml").write_text("nonsense: 1\n", encoding="utf-8")
    (team.folder / "b.room.yaml").write_text("nonsense: 1\n", encoding="utf-8")
    status, output = run("check", "--staged")
    assert status == 0, output
    assert "not gated: 2 errors · a.room.yaml" in output
    assert "b.room.yaml" not in output
    assert run("check", "--staged", "--house", "house.yaml")[0] == 0
    assert run("check", "--staged", "b.room.yaml")[0] == 2


def test_staged_answers_alike_from_every_folder(team: Team, monkeypatch: pytest.MonkeyPatch) -> None:
    team.stage("up/a.room.yaml", FAILING)
    monkeypatch.chdir(team.folder / "up")
    assert "a.room.yaml:6:" in run("check", "--staged", "--format", "lines")[1]


def test_staged_without_any_room_is_told_and_stops_no_commit(team: Team) -> None:
    team.stage("readme.txt", "later\n")
    status, output = run("check", "--staged")
    assert status == 0
    assert "Nothing to check" in output
    assert run("check", "--staged", ".")[0] == 3


def test_staged_outside_a_repository_is_told(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(tmp_path)
    monkeypatch.setenv("GIT_CEILING_DIRECTORIES", str(tmp_path.parent))
    status, output = run("check", "--staged")
    assert status == 2
    assert "--staged" in output


def test_same_input_gives_the_same_bytes(tmp_path: Path) -> None:
    kinds = ("text", "lines", "sarif", "alerts", "markdown", "annotations")

    def reports(folder: Path) -> tuple[str, dict[str, bytes]]:
        folder.mkdir()
        wanted = [word for kind in kinds for word in ("--write", f"{kind}={folder / kind}")]
        _, output = run("check", str(EXAMPLES / "basement"), *wanted, *TODAY)
        return output, {kind: (folder / kind).read_bytes() for kind in kinds}

    first = reports(tmp_path / "first")
    assert all(first[1].values())
    assert first == reports(tmp_path / "second")


def test_a_machine_s_report_grows_by_what_is_said_of_each_room(tmp_path: Path) -> None:
    """A thousand small rooms are a report that a host takes, not a gigabyte: each says a rule's page no second time.

    What is left of a verdict that says only that a rule is open, or does not apply, is some 750 bytes.
    """

    def size(rooms: int) -> int:
        folder, report = tmp_path / str(rooms), tmp_path / f"{rooms}.sarif"
        folder.mkdir()
        for number in range(rooms):
            text = "roomlint: 1\nroom: {size: {width: 4 m, length: 5 m}}\n"
            (folder / f"{number}.room.yaml").write_text(text, encoding="utf-8")
        run("check", str(folder), "--write", f"sarif={report}")
        return report.stat().st_size

    assert (size(3) - size(1)) / 2 < 760 * len(load_book().ids)


def test_rule_book_as_json_has_what_a_reader_needs() -> None:
    status, output = run("rules", "--format", "json")
    rules = json.loads(output)
    assert status == 0
    assert sorted(rule["id"] for rule in rules) == list(load_book().ids)
    wanted = {"id", "chapter", "level", "summary", "basis", "window", "inputs", "caution", "since"}
    assert all(wanted <= rule.keys() for rule in rules)
    assert {"grade", "document", "edition", "clause", "confirmed"} <= rules[0]["basis"][0].keys()


def test_a_rules_page_shows_every_heading() -> None:
    _, output = run("rules", "angle.front-pair")
    assert all(word in output for word in ("Why", "How decided", "Remedy", "When to waive"))


def test_rules_can_be_found_by_clause() -> None:
    status, output = run("rules", "--clause", "NFPA 70")
    assert status == 0
    assert "mains.circuit-load" in output
    assert "angle.front-pair" not in output


@pytest.mark.parametrize("kind", ["room", "product", "house"])
def test_schema_is_printed(kind: str) -> None:
    status, output = run("schema", kind)
    assert status == 0
    assert json.loads(output)["$schema"] == "https://json-schema.org/draft/2020-12/schema"


def test_figures_of_a_room_as_text_and_json() -> None:
    room = str(EXAMPLES / "garden-studio" / "quick.room.yaml")
    _, text = run("figures", room)
    _, data = run("figures", room, "--format", "json")
    assert "azimuth" in text
    assert json.loads(data)["tables"][0]["rows"][0]["azimuth"]["unit"] == "deg"


def test_figures_that_lack_an_input_say_which() -> None:
    _, text = run("figures", str(EXAMPLES / "garden-studio" / "quick.room.yaml"))
    assert "not known: position" in text


def test_it_runs_as_a_module() -> None:
    done = subprocess.run([sys.executable, "-m", "roomlint", "--version"], capture_output=True, text=True, check=False)
    assert done.stdout.startswith("roomlint ")


def test_a_valid_room_is_checked_without_the_heavy_libraries() -> None:
    code = (
        "import sys; from click.testing import CliRunner; from roomlint.cli import main;"
        f"CliRunner().invoke(main, ['check', {str(EXAMPLES / 'garden-studio')!r}, '--only', 'angle']);"
        "print([name for name in ('pint', 'jsonschema', 'numpy', 'scipy') if name in sys.modules])"
    )
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert done.stdout.strip() == "[]"


def test_files_split_over_runs_give_the_same_findings_as_one_run() -> None:
    def findings(*files: str) -> set[str]:
        output = run("check", *files, "--gate", "never", "--format", "lines", *TODAY)[1]
        found = {line for line in output.splitlines() if ".room.yaml:" in line and line.endswith("]")}
        assert found
        return found

    files = [str(EXAMPLES / name) for name in ("basement/basement.room.yaml", "garden-studio/quick.room.yaml")]
    assert findings(*files) == findings(files[0]) | findings(files[1])
