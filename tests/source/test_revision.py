"""A git revision is read through git, and nothing in the tree, the index or outside is touched."""

from __future__ import annotations

import subprocess
from typing import TYPE_CHECKING

import pytest

from roomlint.source.files import MAX_BYTES, Unreadable
from roomlint.source.revision import Revision, RevisionError

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


def test_folders_are_listed_with_any_name(repository: Path) -> None:
    there = Revision("main")
    assert there.names("products") == ["é box.product.yaml"]
    assert there.read("products/é box.product.yaml") == b"sheet\n"
    assert there.is_file(str(repository / "a.room.yaml"))


def test_paths_are_taken_from_where_the_program_runs(repository: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(repository / "products")
    assert Revision("HEAD").read("../a.room.yaml") == b"then\n"


@pytest.mark.parametrize("name", ["--output=x", "-h", "", "no-such", "HEAD:a.room.yaml", "HEAD\n"])
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
