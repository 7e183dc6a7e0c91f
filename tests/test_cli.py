"""The commands as a user gives them: statuses, formats, and answers that help."""

from __future__ import annotations

import json
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
@pytest.mark.parametrize("words", [("check", str(EXAMPLES)), ("rules",)])
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


@pytest.mark.parametrize("kind", ["text", "lines", "sarif", "alerts", "markdown", "annotations"])
def test_same_input_gives_the_same_bytes(kind: str) -> None:
    first = run("check", str(EXAMPLES / "basement"), "--format", kind, *TODAY)
    assert first == run("check", str(EXAMPLES / "basement"), "--format", kind, *TODAY)


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
    assert "needs loudspeakers[" in text


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
        output = run("check", *files, "--gate", "never", *TODAY)[1]
        return {line for line in output.splitlines() if ".room.yaml:" in line and line.endswith("]")}

    files = [str(EXAMPLES / name) for name in ("basement/basement.room.yaml", "garden-studio/quick.room.yaml")]
    assert findings(*files) == findings(files[0]) | findings(files[1])
