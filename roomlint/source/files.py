"""Finds and reads files, never more of one than a design can be, and never outside the folder it was pointed at."""

from __future__ import annotations

import os
import stat
from pathlib import Path
from typing import Protocol

from roomlint.source.place import Place, Problem

ROOM_ENDING = ".room.yaml"
PRODUCT_ENDING = ".product.yaml"
HOUSE_NAME = "house.yaml"
MAX_BYTES = 1024 * 1024


class Unreadable(Exception):  # noqa: N818  it is told to the user as a problem of that file
    """A file cannot be read; the text says why and what to do."""


class Files(Protocol):
    """Where files come from: the disk, or a revision of the repository."""

    def read(self, path: str) -> bytes:
        """Return a file's bytes, one more than the limit at most; raises `Unreadable`."""

    def is_file(self, path: str) -> bool:
        """Return whether there is a file of that path."""

    def names(self, folder: str) -> list[str]:
        """Return the names of the files right in a folder, sorted."""

    def is_within(self, path: str, folder: str) -> bool:
        """Return whether a path, with every link followed, stays inside a folder."""


class Disk:
    """The files as they are on the disk."""

    def read(self, path: str) -> bytes:
        """Return a file's bytes, one more than the limit at most, so that a giant file costs nothing."""
        try:
            with open(path, "rb", opener=_open) as stream:
                if not stat.S_ISREG(os.fstat(stream.fileno()).st_mode):
                    raise Unreadable("this is not an ordinary file.")
                return stream.read(MAX_BYTES + 1)
        except OSError as error:
            raise Unreadable(f"cannot be read: {error.strerror}.") from None

    def is_file(self, path: str) -> bool:
        """Return whether there is a file of that path."""
        return Path(path).is_file()

    def names(self, folder: str) -> list[str]:
        """Return the names of the files right in a folder, sorted."""
        try:
            with os.scandir(folder) as entries:
                return sorted(entry.name for entry in entries if not entry.is_dir())
        except OSError as error:
            raise Unreadable(f"the folder cannot be read: {error.strerror}.") from None

    def is_within(self, path: str, folder: str) -> bool:
        """Return whether a path, with every link followed, stays inside a folder."""
        return Path(path).resolve().is_relative_to(Path(folder).resolve())


def _open(path: str, flags: int) -> int:
    """Open without waiting: a pipe in the place of a file must not hold the run."""
    return os.open(path, flags | getattr(os, "O_NONBLOCK", 0))


def repository_of(path: str) -> Path | None:
    """Return the top folder of the repository that a path lies in; None outside of one."""
    folder = Path(os.path.abspath(path)).parent  # noqa: PTH100  `..` must go, links must stay
    return next((above for above in (folder, *folder.parents) if os.path.lexists(above / ".git")), None)


def root_of(path: str) -> str:
    """Return the folder that a file may not lead out of: its repository, or its own folder outside of one."""
    return str(repository_of(path) or Path(os.path.abspath(path)).parent)  # noqa: PTH100  as above


def from_top(path: str) -> str:
    """Return a path from the top of its repository, with forward slashes, wherever the program runs.

    Outside of a repository, the path as it is shown. Links are left as they are written.
    """
    top = repository_of(path)
    if top is None:
        return shown(path)
    return Path(os.path.abspath(path)).relative_to(top).as_posix()  # noqa: PTH100  as above


def find_rooms(paths: tuple[str, ...]) -> tuple[list[str], list[Problem], list[str]]:
    """Return the room files of files and folders, what is wrong with some, and folders that hold none.

    A folder is searched all the way down; links to folders are not followed, and a room file that is a link must
    lead to somewhere inside the folder searched. Folders whose name starts with a dot are passed over.
    """
    found: dict[str, None] = {}
    problems: list[Problem] = []
    empty: list[str] = []
    for path in paths:
        if Path(path).is_dir():
            inside = list(_search(path, problems))
            found.update(dict.fromkeys(inside))
            if not inside:
                empty.append(path)
        elif not path.endswith(ROOM_ENDING) and Path(path).is_file():
            text = f"a room file's name ends in {ROOM_ENDING}; rename it, or give its folder."
            problems.append(Problem(whole(shown(path)), text))
        else:
            found[shown(path)] = None
    return sorted(found), problems, empty


def _search(folder: str, problems: list[Problem]) -> list[str]:
    found = []
    for where, below, names in os.walk(folder):
        below[:] = sorted(name for name in below if not name.startswith("."))
        for name in sorted(names):
            if not name.endswith(ROOM_ENDING):
                continue
            path = Path(where) / name
            if path.is_symlink() and not Disk().is_within(str(path), folder):
                text = "this link leads out of the folder that is checked; it was not read."
                problems.append(Problem(whole(shown(str(path))), text))
                continue
            found.append(shown(str(path)))
    return found


def shown(path: str) -> str:
    """Return a path as reports show it: relative to where the program runs, with forward slashes."""
    return Path(os.path.relpath(path)).as_posix()


def whole(path: str) -> Place:
    """Return the place that stands for a file as a whole."""
    return Place(path, 1, 1, 1, 1)


def house_of(path: str, files: Files) -> str | None:
    """Return the nearest house file above a room file, up to the root of its repository."""
    folder = Path(os.path.abspath(path)).parent  # noqa: PTH100  `..` must go, links must stay
    for above in (folder, *folder.parents):
        candidate = above / HOUSE_NAME
        if files.is_file(str(candidate)):
            return shown(str(candidate))
        if (above / ".git").exists():
            return None
    return None
