"""Files are found wherever they lie, and nothing that bears a design file's name is passed over in silence."""

from __future__ import annotations

import os
from pathlib import Path

import pytest

from roomlint.source.files import Disk, Unreadable, find_rooms, from_top, house_of, root_of

ROOM = "roomlint: 1\nroom: {size: {width: 4 m, length: 5 m}}\n"
HOUSE = "roomlint_house: 1\n"


@pytest.fixture
def folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.chdir(tmp_path)
    (tmp_path / "rooms").mkdir()
    (tmp_path / "rooms" / "a.room.yaml").write_text(ROOM, encoding="utf-8")
    return tmp_path


def forbid(folder: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Refuse a folder to this process, as a mode without rights does to anybody but the superuser."""
    scandir, stat = os.scandir, os.stat

    def refuse(path: object, *_: object, **__: object) -> None:
        if isinstance(path, (str, os.PathLike)) and Path(path).absolute().is_relative_to(folder):
            raise PermissionError(13, "Permission denied", str(path))

    def scan(path: str = ".") -> object:
        refuse(path)
        return scandir(path)

    def look(path: object, *words: object, **names: object) -> object:
        if Path(str(path)).absolute() != folder:
            refuse(path)
        return stat(path, *words, **names)  # type: ignore[arg-type]

    monkeypatch.setattr(os, "scandir", scan)
    monkeypatch.setattr(os, "stat", look)


def test_a_folder_below_that_cannot_be_read_is_told(folder: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    (folder / "rooms" / "closed").mkdir()
    forbid(folder / "rooms" / "closed", monkeypatch)
    rooms, problems, empty = find_rooms((".",))
    assert rooms == ["rooms/a.room.yaml"]
    assert [problem.place.file for problem in problems] == ["rooms/closed"]
    assert "Permission denied" in problems[0].text
    assert empty == []


def test_a_room_in_a_forbidden_folder_is_a_room_that_cannot_be_read(
    folder: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    forbid(folder / "rooms", monkeypatch)
    assert find_rooms(("rooms/b.room.yaml",)) == (["rooms/b.room.yaml"], [], [])
    assert root_of("rooms/b.room.yaml") == str(folder / "rooms")
    assert house_of("rooms/b.room.yaml", Disk()) is None


@pytest.mark.parametrize("name", ["B.Room.yaml", "b.ROOM.YML"])
def test_a_name_that_is_nearly_a_rooms_is_told(name: str, folder: Path) -> None:
    (folder / "rooms" / name).write_text(ROOM, encoding="utf-8")
    rooms, problems, _ = find_rooms((".",))
    assert rooms == ["rooms/a.room.yaml"]
    assert [problem.place.file for problem in problems] == [f"rooms/{name}"]
    assert ".room.yaml" in problems[0].text


def test_a_name_of_the_shorter_ending_is_a_rooms(folder: Path) -> None:
    (folder / "rooms" / "b.room.yml").write_text(ROOM, encoding="utf-8")
    assert find_rooms((".",)) == (["rooms/a.room.yaml", "rooms/b.room.yml"], [], [])
    assert find_rooms(("rooms/b.room.yml",)) == (["rooms/b.room.yml"], [], [])


def test_a_link_in_a_circle_is_a_file_that_cannot_be_read(folder: Path) -> None:
    (folder / "loop.room.yaml").symlink_to("loop.room.yaml")
    assert "loop.room.yaml" in find_rooms((".",))[0]
    assert Disk().is_within("loop.room.yaml", ".")
    with pytest.raises(Unreadable, match="cannot be read"):
        Disk().read("loop.room.yaml")


def test_a_name_that_is_too_long_is_a_file_that_cannot_be_read(folder: Path) -> None:
    name = f"{'x' * 300}.room.yaml"
    assert find_rooms((name,)) == ([name], [], [])
    assert root_of(f"{'x' * 300}/{name}") == str(folder / ("x" * 300))
    with pytest.raises(Unreadable, match="too long"):
        Disk().read(name)


def test_a_folder_with_a_rooms_name_is_told(folder: Path) -> None:
    (folder / "hall.room.yaml").mkdir()
    assert "hall.room.yaml" in find_rooms((".",))[0]
    with pytest.raises(Unreadable, match="a folder"):
        Disk().read("hall.room.yaml")


def test_one_broken_link_does_not_hide_a_folder(folder: Path) -> None:
    (folder / "rooms" / "loop").symlink_to("loop")
    assert Disk().names("rooms") == ["a.room.yaml", "loop"]


@pytest.mark.parametrize("kind", ["nowhere", "circle", "pipe", "folder"])
def test_whatever_bears_the_house_files_name_counts(kind: str, folder: Path) -> None:
    house = folder / "house.yaml"
    if kind == "pipe":
        os.mkfifo(house)
    elif kind == "folder":
        house.mkdir()
    else:
        house.symlink_to("house.yaml" if kind == "circle" else "nowhere.yaml")
    (folder / ".git").mkdir()
    assert house_of("rooms/a.room.yaml", Disk()) == "house.yaml"
    with pytest.raises(Unreadable):
        Disk().read("house.yaml")


def test_a_house_file_of_the_other_ending_counts_when_it_is_one(folder: Path) -> None:
    (folder / ".git").mkdir()
    (folder / "house.yml").write_text("lights: [porch]\n", encoding="utf-8")
    assert house_of("rooms/a.room.yaml", Disk()) is None
    (folder / "house.yml").write_text(HOUSE, encoding="utf-8")
    assert house_of("rooms/a.room.yaml", Disk()) == "house.yml"


def test_outside_a_repository_the_house_file_is_sought_up_to_where_the_program_runs(
    folder: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("roomlint.source.files.repository_of", lambda _: None)
    (folder / "house.yaml").write_text(HOUSE, encoding="utf-8")
    assert house_of("rooms/a.room.yaml", Disk()) == "house.yaml"
    monkeypatch.chdir(folder / "rooms")
    assert house_of("a.room.yaml", Disk()) is None


@pytest.mark.parametrize(
    ("where", "path"), [(".", "rooms/a.room.yaml"), ("rooms", "a.room.yaml"), ("other", "../rooms/a.room.yaml")]
)
def test_a_path_from_the_top_is_the_same_wherever_one_stands(
    where: str, path: str, folder: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    (folder / ".git").mkdir()
    (folder / "other").mkdir()
    monkeypatch.chdir(folder / where)
    assert from_top(path) == "rooms/a.room.yaml"
    assert from_top(str(folder / "rooms" / "a.room.yaml")) == "rooms/a.room.yaml"


def test_a_path_of_another_repository_is_from_that_ones_top(
    folder: Path, tmp_path_factory: pytest.TempPathFactory
) -> None:
    (folder / ".git").mkdir()
    other = tmp_path_factory.mktemp("other")
    (other / ".git").write_text("gitdir: elsewhere\n", encoding="utf-8")  # a worktree has a file of that name
    assert from_top(str(other / "b" / "c.room.yaml")) == "b/c.room.yaml"


def test_outside_a_repository_a_path_is_as_it_is_shown(folder: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("roomlint.source.files.repository_of", lambda _: None)
    monkeypatch.chdir(folder / "rooms")
    assert from_top("a.room.yaml") == "a.room.yaml"
