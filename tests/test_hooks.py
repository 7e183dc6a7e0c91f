"""The hooks under the real pre-commit, from a consumer repository."""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path

import pytest

CHECKOUT = Path(__file__).parent.parent
PRE_COMMIT = (sys.executable, "-m", "pre_commit")
GOOD = """\
roomlint: 1
room:
  size: {width: 4.5 m, length: 6.0 m}
"""
BAD = """\
roomlint: 1
room:
  size: {width: 4.5 m, length: 6.0 m}
layout: 0+2+0
seats:
  - id: middle
    ear: {from_left: 2.25 m, from_front: 4.0 m, height: 1.1 m}
loudspeakers:
  - id: left
    label: M+030
    position: {from_left: 3.5 m, from_front: 0.5 m, height: 1.1 m}
"""
SHEET = "roomlint_product: 1\nid: small-box\nkind: loudspeaker\n"
USES_SHEET = GOOD + "loudspeakers:\n  - id: left\n    product: small-box\n"


class Consumer:
    """A team's repository with the hooks set up."""

    def __init__(self, folder: Path, environment: dict[str, str]) -> None:
        self.folder = folder
        self.environment = environment
        self.git("init", "--quiet", "--initial-branch=main")
        self.git("config", "user.name", "team")
        self.git("config", "user.email", "team@example.org")

    def git(self, *words: str) -> subprocess.CompletedProcess[str]:
        return self.run("git", *words)

    def run(self, *words: str) -> subprocess.CompletedProcess[str]:
        return subprocess.run(
            words, cwd=self.folder, env=self.environment, capture_output=True, text=True, check=False, timeout=500
        )

    def write(self, name: str, text: str) -> None:
        path = self.folder / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text, encoding="utf-8")

    def hook(self, name: str, *words: str) -> subprocess.CompletedProcess[str]:
        return self.run(*PRE_COMMIT, "run", name, *words)


@pytest.fixture(scope="module")
def environment(tmp_path_factory: pytest.TempPathFactory) -> dict[str, str]:
    home = tmp_path_factory.mktemp("pre-commit-home")
    kept = {key: value for key, value in os.environ.items() if not key.startswith("GIT_")}
    return {**kept, "PRE_COMMIT_HOME": str(home), "PRE_COMMIT_COLOR": "never"}


@pytest.fixture
def consumer(tmp_path: Path, environment: dict[str, str]) -> Consumer:
    made = Consumer(tmp_path, environment)
    revision = subprocess.run(
        ["git", "rev-parse", "HEAD"], cwd=CHECKOUT, capture_output=True, text=True, check=True
    ).stdout.strip()
    hooks = f"repos:\n- repo: {CHECKOUT}\n  rev: {revision}\n  hooks: [{{id: roomlint}}, {{id: roomlint-all}}]\n"
    made.write(".pre-commit-config.yaml", hooks)
    made.write("house.yaml", "roomlint_house: 1\nproducts: [products]\n")
    made.write("products/small-box.product.yaml", SHEET)
    made.write("rooms/good.room.yaml", GOOD)
    made.git("add", "--all")
    made.git("commit", "--quiet", "--no-verify", "-m", "start")
    return made


def test_manifest_is_valid() -> None:
    done = subprocess.run(
        [*PRE_COMMIT, "validate-manifest", str(CHECKOUT / ".pre-commit-hooks.yaml")], capture_output=True, check=False
    )
    assert done.returncode == 0


def test_try_repo_passes_a_good_room_blocks_a_bad_one_and_changes_nothing(consumer: Consumer) -> None:
    consumer.write("rooms/bad.room.yaml", BAD)
    consumer.git("add", "--all")
    good = consumer.run(*PRE_COMMIT, "try-repo", str(CHECKOUT), "roomlint", "--files", "rooms/good.room.yaml")
    bad = consumer.run(*PRE_COMMIT, "try-repo", str(CHECKOUT), "roomlint", "--files", "rooms/bad.room.yaml")
    assert good.returncode == 0, good.stdout + good.stderr
    assert bad.returncode == 1
    assert "rooms/bad.room.yaml:10:" in bad.stdout
    assert consumer.git("status", "--porcelain").stdout == "A  rooms/bad.room.yaml\n"


def test_only_the_staged_content_is_judged(consumer: Consumer) -> None:
    consumer.write("rooms/bad.room.yaml", GOOD)
    consumer.git("add", "--all")
    consumer.write("rooms/bad.room.yaml", BAD)
    assert consumer.hook("roomlint").returncode == 0
    consumer.git("add", "--all")
    assert consumer.hook("roomlint").returncode == 1


def test_output_of_a_passing_run_is_shown(consumer: Consumer) -> None:
    done = consumer.hook("roomlint", "--all-files")
    assert done.returncode == 0
    assert "pass" in done.stdout


def test_a_changed_sheet_rechecks_the_rooms_that_use_it(consumer: Consumer) -> None:
    consumer.write("rooms/uses.room.yaml", USES_SHEET)
    consumer.git("add", "--all")
    consumer.git("commit", "--quiet", "--no-verify", "-m", "uses the sheet")
    consumer.write("products/small-box.product.yaml", SHEET.replace("small-box", "other-box"))
    consumer.git("add", "--all")
    done = consumer.hook("roomlint-all")
    assert done.returncode == 1, done.stdout
    assert "rooms/uses.room.yaml:6:" in done.stdout
    assert "small-box" in done.stdout


def test_a_commit_with_a_bad_room_is_blocked(consumer: Consumer) -> None:
    consumer.run(*PRE_COMMIT, "install")
    consumer.write("rooms/bad.room.yaml", BAD)
    consumer.git("add", "--all")
    done = consumer.git("commit", "-m", "a bad room")
    assert done.returncode != 0
    assert consumer.git("log", "--oneline").stdout.count("\n") == 1
