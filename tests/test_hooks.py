"""The hooks under the real pre-commit, from a consumer repository."""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
import sysconfig
from pathlib import Path

import pytest
import yaml

pytestmark = pytest.mark.xdist_group("hooks")  # one process installs the hook, once
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
OURS = ("roomlint", "__editable__", "pip", "setuptools", "_distutils_hack", "pkg_resources")
"""What a hook's environment has of its own."""
TYPO = GOOD.replace("room:", "romm:")
SHEET = "roomlint_product: 1\nid: small-box\nkind: loudspeaker\n"
USES_SHEET = GOOD + "loudspeakers:\n  - id: left\n    product: small-box\n"
HOUSE = "roomlint_house: 1\nproducts: [products]\n"


class Consumer:
    """A team's repository with the hooks set up."""

    def __init__(self, folder: Path, hooks: Path, environment: dict[str, str]) -> None:
        self.folder = folder
        self.hooks = hooks
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

    def commit(self) -> None:
        self.git("add", "--all")
        self.git("commit", "--quiet", "--no-verify", "-m", "as it stands")

    def configure(self, **settings: object) -> None:
        """Write the configuration of both hooks as a team would, and stage it."""
        both = [{"id": "roomlint", **settings}, {"id": "roomlint-all", "stages": ["manual"]}]
        config = {"repos": [{"repo": str(self.hooks), "rev": _head(self.hooks), "hooks": both}]}
        self.write(".pre-commit-config.yaml", yaml.safe_dump(config))
        self.git("add", ".pre-commit-config.yaml")

    def install(self, **settings: object) -> None:
        """Let every commit be judged from here on."""
        self.configure(**settings)
        self.run(*PRE_COMMIT, "install")
        self.commit()

    def run_hook(self, hook: str = "roomlint", *words: str) -> tuple[int, str]:
        """Run a hook over what is staged, as a commit would."""
        done = self.run(*PRE_COMMIT, "run", hook, *words)
        return done.returncode, done.stdout + done.stderr


def _head(folder: Path) -> str:
    done = subprocess.run(["git", "rev-parse", "HEAD"], cwd=folder, capture_output=True, text=True, check=True)
    return done.stdout.strip()


@pytest.fixture(scope="module")
def environment(tmp_path_factory: pytest.TempPathFactory) -> dict[str, str]:
    """Return what the hooks run in: roomlint is installed for them anew, what it is made of is the one that is here.

    That its wheel brings along what it needs is tried by `.ci/run`.
    """
    home, here = tmp_path_factory.mktemp("pre-commit-home"), tmp_path_factory.mktemp("here")
    for path in Path(sysconfig.get_path("purelib")).iterdir():
        if not path.name.startswith(OURS) and path.suffix != ".pth":
            (here / path.name).symlink_to(path)
    kept = {key: value for key, value in os.environ.items() if not key.startswith("GIT_")}
    made_of = {"PYTHONPATH": str(here), "PIP_NO_DEPS": "1"}
    return {**kept, **made_of, "PRE_COMMIT_HOME": str(home), "PRE_COMMIT_COLOR": "never"}


@pytest.fixture(scope="module")
def hooks(tmp_path_factory: pytest.TempPathFactory, environment: dict[str, str]) -> Path:
    """Return a repository with roomlint as it is here, committed or not, which pre-commit then installs once."""
    folder = tmp_path_factory.mktemp("hooks")
    for name in ("LICENSE", "README.md", "pyproject.toml", ".pre-commit-hooks.yaml"):
        shutil.copy(CHECKOUT / name, folder)
    for name in ("roomlint", "rules", "schemas"):
        shutil.copytree(CHECKOUT / name, folder / name, ignore=shutil.ignore_patterns("__pycache__"))
    made = Consumer(folder, folder, environment)
    made.commit()
    return folder


@pytest.fixture
def empty(tmp_path: Path, hooks: Path, environment: dict[str, str]) -> Consumer:
    """Return a repository without a commit."""
    made = Consumer(tmp_path, hooks, environment)
    made.configure()
    return made


@pytest.fixture
def consumer(empty: Consumer) -> Consumer:
    empty.write("house.yaml", HOUSE)
    empty.write("products/small-box.product.yaml", SHEET)
    empty.write("rooms/good.room.yaml", GOOD)
    empty.commit()
    return empty


def test_manifest_is_valid() -> None:
    done = subprocess.run(
        [*PRE_COMMIT, "validate-manifest", str(CHECKOUT / ".pre-commit-hooks.yaml")], capture_output=True, check=False
    )
    assert done.returncode == 0


def test_the_hook_can_be_tried_without_any_configuration(consumer: Consumer) -> None:
    consumer.write("rooms/bad.room.yaml", BAD)
    consumer.git("add", "--all")
    done = consumer.run(*PRE_COMMIT, "try-repo", str(consumer.hooks), "roomlint")
    assert done.returncode == 1, done.stdout + done.stderr
    assert "rooms/bad.room.yaml" in done.stdout
    assert consumer.git("status", "--porcelain").stdout == "A  rooms/bad.room.yaml\n"


def test_a_good_room_passes_a_bad_one_is_stopped_and_nothing_is_changed(consumer: Consumer) -> None:
    consumer.write("rooms/other.room.yaml", GOOD)
    consumer.git("add", "--all")
    status, output = consumer.run_hook()
    assert status == 0, output
    consumer.write("rooms/bad.room.yaml", BAD)
    consumer.git("add", "--all")
    status, output = consumer.run_hook()
    assert status == 1
    assert "rooms/bad.room.yaml" in output
    assert "exit code: 1" in output
    assert consumer.git("status", "--porcelain").stdout == "A  rooms/bad.room.yaml\nA  rooms/other.room.yaml\n"


def test_output_of_a_passing_run_is_shown(consumer: Consumer) -> None:
    status, output = consumer.run_hook()
    assert status == 0
    assert "As before: good." in output


def test_what_is_staged_is_judged_not_what_lies_on_the_disk(consumer: Consumer) -> None:
    consumer.write("rooms/new.room.yaml", GOOD)
    consumer.git("add", "--all")
    consumer.write("rooms/new.room.yaml", BAD)
    assert consumer.run_hook()[0] == 0
    consumer.git("add", "--all")
    consumer.write("rooms/new.room.yaml", GOOD)
    assert consumer.run_hook()[0] == 1


def test_an_old_fault_does_not_stop_a_commit_a_new_one_does(consumer: Consumer) -> None:
    consumer.write("rooms/old.room.yaml", BAD)
    consumer.commit()
    consumer.write("rooms/good.room.yaml", GOOD + "# a remark\n")
    consumer.git("add", "--all")
    status, output = consumer.run_hook()
    assert status == 0, output
    assert "old (" in output  # the old fault is counted, though it stops nothing
    consumer.write("rooms/old.room.yaml", BAD.replace("from_left: 3.5 m", "from_left: 4.0 m"))
    consumer.git("add", "--all")
    assert consumer.run_hook()[0] == 1


def test_what_is_new_or_worse_is_told_first_and_what_is_old_only_counted(consumer: Consumer) -> None:
    consumer.write("rooms/old.room.yaml", BAD)
    consumer.commit()
    moved = BAD.replace("from_left: 3.5 m", "from_left: 4.0 m").replace(
        "id: left", "id: left\n    mounting: {on: stand}"
    )
    consumer.write("rooms/old.room.yaml", moved)
    consumer.git("add", "--all")
    status, output = consumer.run_hook()
    assert status == 1, output
    lines = [line for line in output.splitlines() if line]
    headings = [line for line in lines if line in {"New", "Worse", "Errors", "Errors, as before"}]
    assert headings[-1] == "Worse", output
    assert "→" in output
    assert lines.index(headings[-1]) < next(at for at, line in enumerate(lines) if line.startswith("As before"))


def test_a_renamed_room_keeps_its_old_faults_and_stops_no_commit(consumer: Consumer) -> None:
    consumer.write("rooms/old.room.yaml", BAD)
    consumer.commit()
    consumer.git("mv", "rooms/old.room.yaml", "rooms/new.room.yaml")
    status, output = consumer.run_hook()
    assert status == 0, output
    assert "was rooms/old.room.yaml" in " ".join(output.split())


def test_a_house_that_loosens_what_guards_people_without_a_name_stops_the_commit(consumer: Consumer) -> None:
    line = "decisions:\n  - {rule: mount.misuse-load, level: note, because: ours}\n"
    consumer.write("house.yaml", HOUSE + line)
    consumer.git("add", "--all")
    status, output = consumer.run_hook()
    assert status == 1
    assert "exit code: 2" in output
    assert "approved_by" in output
    consumer.write("house.yaml", HOUSE + line.replace("ours}", "ours, approved_by: lead, until: 2099-12-31}"))
    consumer.git("add", "--all")
    status, output = consumer.run_hook()
    assert status == 0, output
    assert "Loosened where people can get hurt: mount.misuse-load" in output


def test_the_other_hook_is_stopped_by_an_old_fault(consumer: Consumer) -> None:
    consumer.write("rooms/old.room.yaml", BAD)
    consumer.commit()
    assert consumer.run_hook("roomlint-all", "--all-files", "--hook-stage", "manual")[0] == 1
    assert consumer.run_hook("roomlint", "--all-files")[0] == 0


def test_an_untracked_draft_does_not_stop_another_commit(consumer: Consumer) -> None:
    consumer.write("rooms/draft.room.yaml", TYPO)
    consumer.write("rooms/good.room.yaml", GOOD + "# a remark\n")
    consumer.git("add", "rooms/good.room.yaml")
    status, output = consumer.run_hook()
    assert status == 0, output
    assert "draft" not in output


def test_a_sheet_that_is_only_announced_is_not_read(consumer: Consumer) -> None:
    consumer.write("products/other.product.yaml", "a draft")
    consumer.git("add", "--intent-to-add", "products/other.product.yaml")
    consumer.write("rooms/good.room.yaml", GOOD + "# a remark\n")
    consumer.git("add", "rooms/good.room.yaml")
    status, output = consumer.run_hook()
    assert status == 0, output


def test_an_untracked_sheet_does_not_exist_for_a_staged_room(consumer: Consumer) -> None:
    consumer.write("rooms/uses.room.yaml", USES_SHEET.replace("small-box", "other-box"))
    consumer.git("add", "--all")
    consumer.write("products/other-box.product.yaml", SHEET.replace("small-box", "other-box"))
    status, output = consumer.run_hook()
    assert status == 1
    assert "exit code: 2" in output
    assert "other-box" in output
    consumer.git("add", "--all")
    assert consumer.run_hook()[0] == 0


@pytest.mark.parametrize("gone", ["products/small-box.product.yaml", "house.yaml"])
def test_a_deleted_sheet_or_house_file_rechecks_the_rooms_that_use_it(gone: str, consumer: Consumer) -> None:
    consumer.write("rooms/uses.room.yaml", USES_SHEET)
    consumer.commit()
    consumer.git("rm", "--quiet", gone)
    status, output = consumer.run_hook()
    assert status == 1, output
    assert "exit code: 2" in output
    assert "rooms/uses.room.yaml:6:" in output


def test_a_changed_sheet_rechecks_the_rooms_that_use_it(consumer: Consumer) -> None:
    consumer.write("rooms/uses.room.yaml", USES_SHEET)
    consumer.commit()
    consumer.write("products/small-box.product.yaml", SHEET.replace("small-box", "other-box"))
    consumer.git("add", "--all")
    status, output = consumer.run_hook()
    assert status == 1
    assert "rooms/uses.room.yaml:6:" in output


def test_a_renamed_room_is_reviewed_under_its_new_name(consumer: Consumer) -> None:
    consumer.git("mv", "rooms/good.room.yaml", "rooms/better.room.yaml")
    consumer.write("rooms/better.room.yaml", TYPO)
    consumer.git("add", "--all")
    status, output = consumer.run_hook()
    assert status == 1
    assert "rooms/better.room.yaml:2:1: " in output


def test_a_deleted_room_is_a_commit_like_any_other(consumer: Consumer) -> None:
    consumer.git("rm", "--quiet", "rooms/good.room.yaml")
    status, output = consumer.run_hook()
    assert status == 0, output
    assert "Nothing to check" in output


def test_the_first_commit_is_judged_as_a_whole(empty: Consumer) -> None:
    empty.write("rooms/first.room.yaml", BAD)
    empty.git("add", "--all")
    status, output = empty.run_hook()
    assert status == 1
    assert "rooms/first.room.yaml" in output
    empty.write("rooms/first.room.yaml", GOOD)
    empty.git("add", "--all")
    assert empty.run_hook()[0] == 0


@pytest.mark.parametrize("name", ["--write=text=PATH.room.yaml", "--house=loose.room.yaml", "--gate=never.room.yaml"])
@pytest.mark.parametrize("settings", [{}, {"pass_filenames": True}], ids=["as it comes", "with names"])
def test_no_file_name_is_taken_for_an_option(name: str, settings: dict[str, object], consumer: Consumer) -> None:
    consumer.write("PATH.room.yaml", GOOD)
    consumer.write("loose.room.yaml", GOOD)
    consumer.install(**settings)
    consumer.write(name, BAD)
    consumer.git("add", "--", name)
    done = consumer.git("commit", "-m", "a name like an option")
    assert done.returncode != 0
    assert name in done.stdout + done.stderr
    assert (consumer.folder / "PATH.room.yaml").read_text(encoding="utf-8") == GOOD


def test_a_commit_with_a_bad_room_is_stopped_from_any_folder(consumer: Consumer) -> None:
    consumer.install()
    consumer.write("rooms/bad.room.yaml", BAD)
    consumer.git("add", "--all")
    done = subprocess.run(
        ["git", "commit", "-m", "a bad room"],
        cwd=consumer.folder / "products",
        env=consumer.environment,
        capture_output=True,
        text=True,
        check=False,
    )
    assert done.returncode != 0
    assert "rooms/bad.room.yaml" in done.stdout + done.stderr
    assert consumer.git("log", "--oneline").stdout.count("\n") == 1


def test_a_commit_of_one_named_file_is_judged_by_that_file(consumer: Consumer) -> None:
    """`git commit FILE` makes an index of its own; what else is staged is not part of that commit."""
    consumer.install()
    consumer.write("rooms/bad.room.yaml", BAD)
    consumer.git("add", "--all")
    consumer.write("rooms/good.room.yaml", GOOD + "# a remark\n")
    done = consumer.git("commit", "-m", "one file", "rooms/good.room.yaml")
    assert done.returncode == 0, done.stdout + done.stderr


def test_other_options_take_the_place_of_the_arguments(consumer: Consumer) -> None:
    consumer.install(args=["--gate", "never"])
    consumer.write("rooms/bad.room.yaml", BAD)
    consumer.git("add", "--all")
    assert consumer.git("commit", "-m", "let through").returncode == 0
