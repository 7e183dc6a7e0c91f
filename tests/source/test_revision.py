"""A git revision is read through git, and nothing in the tree, the index or outside is touched."""

from __future__ import annotations

import os
import shutil
import subprocess
from typing import TYPE_CHECKING

import pytest

from roomlint.source.files import Unreadable
from roomlint.source.revision import STAGED, Revision, RevisionError, commit_of, has_commits, renamed_since
from roomlint.source.text import MAX_BYTES

if TYPE_CHECKING:
    from pathlib import Path


def git(folder: Path, *words: str) -> str:
    done = subprocess.run(
        ["git", "-c", "user.name=team", "-c", "user.email=team@example.org", *words],
        cwd=folder,
        capture_output=True,
        text=True,
        check=True,
    )
    return done.stdout


@pytest.fixture
def repository(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    for name in ("GIT_DIR", "GIT_INDEX_FILE", "GIT_WORK_TREE"):
        monkeypatch.delenv(name, raising=False)
    git(tmp_path, "init", "--quiet", "--initial-branch=main")
    (tmp_path / "products").mkdir()
    (tmp_path / "a.room.yaml").write_text("then\n", encoding="utf-8")
    (tmp_path / "products" / "é box.product.yaml").write_text("sheet\n", encoding="utf-8")
    (tmp_path / "link.room.yaml").symlink_to("/etc/hostname")
    (tmp_path / "giant.room.yaml").write_bytes(b"#" * (MAX_BYTES + 1))
    git(tmp_path, "add", "--all")
    git(tmp_path, "commit", "--quiet", "-m", "then")
    (tmp_path / "a.room.yaml").write_text("now\n", encoding="utf-8")
    monkeypatch.chdir(tmp_path)
    return tmp_path


def test_a_file_is_read_as_it_was_and_the_tree_is_left_alone(repository: Path) -> None:
    before = git(repository, "status", "--porcelain")
    assert Revision("HEAD").read("a.room.yaml") == b"then\n"
    assert (repository / "a.room.yaml").read_text(encoding="utf-8") == "now\n"
    assert git(repository, "status", "--porcelain") == before


def test_a_folder_that_looks_like_a_repository_does_not_pass_for_ours(
    repository: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    planted = repository / "rooms"
    shutil.copytree(repository / ".git", planted)
    for key, value in (("core.bare", "false"), ("core.worktree", ".")):
        git(planted, "config", "--file", str(planted / "config"), key, value)
    monkeypatch.chdir(planted)
    with pytest.raises(RevisionError, match="bare repository"):
        Revision("HEAD")


def test_git_that_does_not_answer_is_not_waited_for(
    repository: Path, tmp_path_factory: pytest.TempPathFactory, monkeypatch: pytest.MonkeyPatch
) -> None:
    slow = tmp_path_factory.mktemp("bin") / "git"
    slow.write_text("#!/bin/sh\nexec sleep 60\n", encoding="utf-8")
    slow.chmod(0o755)
    monkeypatch.setenv("PATH", f"{slow.parent}{os.pathsep}{os.environ['PATH']}")
    monkeypatch.setattr("roomlint.source.revision.TIMEOUT_S", 0.2)
    with pytest.raises(RevisionError, match="no answer"):
        Revision("HEAD")


@pytest.mark.parametrize("name", ["HEAD", STAGED])
def test_configuration_of_the_repository_runs_nothing(name: str, repository: Path) -> None:
    run = repository / "run"
    for key, value in {
        "core.fsmonitor": f"touch {run}; false",
        "core.sshCommand": f"touch {run}",
        "remote.evil.url": f"ext::sh -c touch% {run}",
        "remote.evil.promisor": "true",
        "extensions.partialClone": "evil",
        "core.repositoryFormatVersion": "1",
        "protocol.ext.allow": "always",
    }.items():
        git(repository, "config", key, value)
    there = Revision(name)
    blob = subprocess.run(["git", "rev-parse", "HEAD:a.room.yaml"], capture_output=True, text=True, check=True).stdout
    (repository / ".git" / "objects" / blob[:2] / blob[2:].strip()).unlink()
    with pytest.raises(Unreadable, match="git says"):
        there.read("a.room.yaml")
    assert not run.exists()


def test_what_is_staged_is_read_whatever_lies_on_the_disk(repository: Path) -> None:
    git(repository, "add", "a.room.yaml")
    (repository / "a.room.yaml").write_text("later\n", encoding="utf-8")
    (repository / "untracked.room.yaml").write_text("draft\n", encoding="utf-8")
    git(repository, "rm", "--quiet", "--cached", "giant.room.yaml")
    there = Revision(STAGED)
    assert there.read("a.room.yaml") == b"now\n"
    assert there.read(str(repository / "products" / "é box.product.yaml")) == b"sheet\n"
    assert not there.is_file("untracked.room.yaml")
    assert not there.is_file("giant.room.yaml")
    with pytest.raises(Unreadable, match="among what git has staged"):
        there.read("untracked.room.yaml")
    with pytest.raises(Unreadable, match="links are not followed"):
        there.read("link.room.yaml")


def test_what_is_announced_without_content_is_not_staged(repository: Path) -> None:
    (repository / "soon.room.yaml").write_text("draft\n", encoding="utf-8")
    (repository / "empty.room.yaml").write_bytes(b"")
    git(repository, "add", "--intent-to-add", "soon.room.yaml")
    git(repository, "add", "empty.room.yaml")
    there = Revision(STAGED)
    assert not there.is_file("soon.room.yaml")
    assert there.read("empty.room.yaml") == b""


def test_a_file_in_conflict_is_told(repository: Path) -> None:
    git(repository, "commit", "--quiet", "-am", "now")
    git(repository, "checkout", "--quiet", "-b", "side", "HEAD~1")
    (repository / "a.room.yaml").write_text("aside\n", encoding="utf-8")
    git(repository, "commit", "--quiet", "-am", "aside")
    subprocess.run(["git", "merge", "--quiet", "main"], capture_output=True, check=False)
    there = Revision(STAGED)
    assert there.is_file("a.room.yaml")
    with pytest.raises(Unreadable, match="in conflict"):
        there.read("a.room.yaml")


def test_before_the_first_commit_there_is_an_index_and_no_head(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    for name in ("GIT_DIR", "GIT_INDEX_FILE", "GIT_WORK_TREE"):
        monkeypatch.delenv(name, raising=False)
    monkeypatch.chdir(tmp_path)
    git(tmp_path, "init", "--quiet")
    assert not has_commits()
    assert list(Revision(STAGED).below(".", [])) == []
    (tmp_path / "a.room.yaml").write_text("first\n", encoding="utf-8")
    git(tmp_path, "add", "--all")
    assert Revision(STAGED).read("a.room.yaml") == b"first\n"


def test_rooms_that_were_and_are_no_more_can_be_told(repository: Path) -> None:
    git(repository, "rm", "--quiet", "--force", "a.room.yaml")
    then, now = Revision("HEAD"), Revision(STAGED)
    assert set(then.below(".", [])) - set(now.below(".", [])) == {"a.room.yaml"}


def test_a_renamed_room_is_followed(repository: Path) -> None:
    text = "".join(f"line {number}\n" for number in range(30))
    (repository / "a.room.yaml").write_text(text, encoding="utf-8")
    git(repository, "commit", "--quiet", "-am", "longer")
    before = commit_of("HEAD")
    (repository / "upstairs").mkdir()
    git(repository, "mv", "a.room.yaml", "upstairs/b.room.yaml")
    (repository / "upstairs" / "b.room.yaml").write_text(text + "one more\n", encoding="utf-8")
    git(repository, "add", "--all")
    assert renamed_since(before, staged=True) == {"upstairs/b.room.yaml": "a.room.yaml"}
    git(repository, "commit", "--quiet", "-m", "moved")
    assert renamed_since(before, staged=False) == {"upstairs/b.room.yaml": "a.room.yaml"}
    assert renamed_since(commit_of("HEAD"), staged=False) == {}


def test_folders_are_searched_without_those_that_start_with_a_dot(repository: Path) -> None:
    for name in (".hidden/a.room.yaml", "up/stairs/.b/c.room.yaml", "up/stairs/d.room.yaml"):
        (repository / name).parent.mkdir(parents=True, exist_ok=True)
        (repository / name).write_text(name, encoding="utf-8")
    git(repository, "add", "--all")
    there = Revision(STAGED)
    assert list(there.below("up", [])) == ["up/stairs/d.room.yaml"]
    assert ".hidden/a.room.yaml" not in list(there.below(".", []))
    assert there.is_folder("up/stairs")
    assert not there.is_folder("up/sta")
    assert there.bears("up")
    assert there.names("up") == ["stairs"]


def test_folders_are_listed_with_any_name(repository: Path) -> None:
    there = Revision("main")
    assert there.names("products") == ["é box.product.yaml"]
    assert there.read("products/é box.product.yaml") == b"sheet\n"
    assert there.is_file(str(repository / "a.room.yaml"))


def test_paths_are_taken_from_where_the_program_runs(repository: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(repository / "products")
    assert Revision("HEAD").read("../a.room.yaml") == b"then\n"


@pytest.mark.parametrize("name", ["--output=x", "-h", "", "no-such", "HEAD:a.room.yaml", "HEAD\n", ":a.room.yaml"])
@pytest.mark.usefixtures("repository")
def test_a_name_of_no_revision_is_refused(name: str) -> None:
    with pytest.raises(RevisionError, match="revision"):
        Revision(name)


def test_outside_a_repository_git_says_so(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(tmp_path)
    monkeypatch.setenv("GIT_CEILING_DIRECTORIES", str(tmp_path.parent))
    with pytest.raises(RevisionError, match="not a git repository"):
        Revision("HEAD")


@pytest.mark.parametrize(
    ("path", "says"),
    [
        ("link.room.yaml", "not an ordinary file"),
        ("giant.room.yaml", "at most"),
        ("none.room.yaml", "is not in revision"),
        ("../outside.room.yaml", "is not in revision"),
        ("/etc/hostname", "is not in revision"),
    ],
)
@pytest.mark.usefixtures("repository")
def test_what_cannot_be_read_is_told(path: str, says: str) -> None:
    with pytest.raises(Unreadable, match=says):
        Revision("HEAD").read(path)


@pytest.mark.usefixtures("repository")
def test_a_folder_that_is_not_there_is_told() -> None:
    with pytest.raises(Unreadable, match="not in revision"):
        Revision("HEAD").names("none")
