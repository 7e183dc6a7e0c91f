"""What a team reads after an edit of one line: the hook's answer and the comment, each a screen, what changed first."""

from __future__ import annotations

import os
import re
import shutil
import subprocess
import sys
from pathlib import Path

import pytest

EXAMPLES = Path(__file__).parent.parent / "example_projects"
SCREEN = 25
FRAME = 5
"""Lines that the hook's runner sets above what a hook prints: its name, its id, how long, how it ended, a free line."""


def git(folder: Path, *words: str) -> None:
    names = ("-c", "user.name=team", "-c", "user.email=team@example.org")
    subprocess.run(["git", *names, *words], cwd=folder, check=True, capture_output=True)


def check(folder: Path, *words: str) -> subprocess.CompletedProcess[str]:
    command = [sys.executable, "-m", "roomlint", "check", *words, "--today", "2026-06-20"]
    environment = {name: value for name, value in os.environ.items() if name != "COLUMNS"}  # a hook has no terminal
    return subprocess.run(
        command, cwd=folder, env=environment, capture_output=True, text=True, encoding="utf-8", check=False
    )


@pytest.fixture(scope="module")
def team(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Return the example repository with the basement's arm pulled out by 60 mm, staged."""
    folder = tmp_path_factory.mktemp("team")
    shutil.copytree(EXAMPLES, folder, dirs_exist_ok=True)
    git(folder, "init", "--quiet")
    git(folder, "add", "--all")
    git(folder, "commit", "--quiet", "-m", "as it stands")
    room = folder / "basement" / "basement.room.yaml"
    room.write_text(room.read_text(encoding="utf-8").replace("extension: 500 mm", "extension: 560 mm"), "utf-8")
    git(folder, "add", "--all")
    return folder


def test_the_hook_answers_with_what_the_edit_did_on_one_screen(team: Path) -> None:
    done = check(team, "--staged")
    lines = done.stdout.splitlines()
    assert done.returncode == 1
    assert len(lines) + FRAME <= SCREEN, done.stdout
    assert lines[0].startswith("basement-08")
    assert lines[3] == "New"
    told = [line for line in lines if re.match(r" ?\d+\. ", line)]
    assert told
    assert all("picture:" in line for line in told)
    assert "2.69 → 3.00 times what it may bear" in " ".join(done.stdout.split())
    assert "As before: attic-17" in done.stdout


def test_the_comment_says_what_the_edit_did_on_one_screen(team: Path) -> None:
    text = check(team, ".", "--against", "HEAD", "--gate-new", "--format", "markdown").stdout
    unfolded = re.sub(r"<details>\n(<summary>.*?</summary>).*?</details>", r"\1", text, flags=re.DOTALL)
    lines = [line for line in unfolded.splitlines() if line.strip()]
    assert len(lines) <= SCREEN, unfolded
    assert lines[1].startswith("**Held back:** basement-08")
    assert lines[2] == "Compared with revision HEAD: 1 new, 3 worse."
    assert lines[4].startswith("1. **error, new** basement-08: picture:")
    assert all("**error, worse** basement-08: picture:" in line for line in lines[5:8])
    assert "**error**" not in unfolded  # what was there before is folded


def test_the_marks_are_on_the_edited_thing_and_the_tally_is_first(team: Path) -> None:
    lines = check(team, ".", "--against", "HEAD", "--gate-new", "--format", "annotations").stdout.splitlines()
    assert lines[0].startswith("::notice title=roomlint::")
    assert len(lines) == 5
    assert all("file=basement/basement.room.yaml" in line and "::picture:" in line for line in lines[1:])


def test_an_edit_of_a_product_sheet_is_named_with_what_it_did(tmp_path: Path) -> None:
    """A display that weighs 60 kg by its new sheet: no room file changed, and each room that uses it says why."""
    shutil.copytree(EXAMPLES, tmp_path, dirs_exist_ok=True)
    git(tmp_path, "init", "--quiet")
    git(tmp_path, "add", "--all")
    git(tmp_path, "commit", "--quiet", "-m", "as it stands")
    sheet = tmp_path / "products" / "display-65.product.yaml"
    written = sheet.read_text(encoding="utf-8")
    sheet.write_text(re.sub(r"(?m)^mass: .*$", "mass: 60 kg", written), "utf-8")
    assert sheet.read_text(encoding="utf-8") != written
    text = " ".join(check(tmp_path, ".", "--against", "HEAD").stdout.split())
    assert "sheets that changed: display-65" in text
    comment = check(tmp_path, ".", "--against", "HEAD", "--format", "markdown").stdout
    assert "**Product sheets that changed**\n\n- display-65: basement-08" in comment


def test_an_edit_that_changes_nothing_says_so_in_two_lines(team: Path, tmp_path: Path) -> None:
    team = shutil.copytree(team, tmp_path / "team")
    git(team, "commit", "--quiet", "-m", "arm")
    house = team / "house.yaml"
    house.write_text(house.read_text(encoding="utf-8") + "# a remark\n", encoding="utf-8")
    git(team, "add", "--all")
    done = check(team, "--staged")
    assert done.returncode == 0
    assert done.stdout.startswith("As before: attic-17, basement-08")
    assert len(done.stdout.splitlines()) <= 4
