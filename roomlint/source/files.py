"""Finds and reads files, never more of one than a design can be, and never outside the folder it was pointed at."""

from __future__ import annotations

import os
import stat
from pathlib import Path
from typing import TYPE_CHECKING, Protocol

from roomlint.source.place import Place, Problem
from roomlint.source.text import MAX_BYTES

if TYPE_CHECKING:
    from collections.abc import Iterator

ROOM_ENDINGS = (".room.yaml", ".room.yml")
PRODUCT_ENDINGS = (".product.yaml", ".product.yml")
"""Three letters or four: phones and old systems write the shorter one."""
HOUSE_NAME = "house.yaml"
HOUSE_OTHER_NAME = "house.yml"
_HOUSE_KEY = b"roomlint_house"
_LEADS_OUT = "this link leads out of the folder that is checked; it was not read."


class Unreadable(Exception):  # noqa: N818  it is told to the user as a problem of that file
    """A file cannot be read; the text says why and what to do."""


class Files(Protocol):
    """Where files come from: the disk, a revision of the repository, or what git has staged."""

    def read(self, path: str) -> bytes:
        """Return a file's bytes, one more than the limit at most; raises `Unreadable`."""

    def is_file(self, path: str) -> bool:
        """Return whether there is a file of that path."""

    def is_folder(self, path: str) -> bool:
        """Return whether there is a folder of that path."""

    def bears(self, path: str) -> bool:
        """Return whether anything bears that path, be it a file, a folder or a link that leads nowhere."""

    def names(self, folder: str) -> list[str]:
        """Return the names of what lies right in a folder, sorted."""

    def below(self, folder: str, problems: list[Problem]) -> Iterator[str]:
        """Yield the path of every entry below a folder, folders too, in order; what cannot be listed is a problem.

        Folders whose name starts with a dot are passed over, and links to folders are not followed.
        """

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
        except IsADirectoryError:
            raise Unreadable("this is a folder, not a file. Rename it.") from None
        except OSError as error:
            raise Unreadable(f"cannot be read: {error.strerror}.") from None

    # The questions below are asked through os.path, which answers no where pathlib raises: a name that is too long, a
    # link in a circle, a folder that may not be entered. Reading then says what is the matter.

    def is_file(self, path: str) -> bool:
        """Return whether there is a file of that path."""
        return os.path.isfile(path)  # noqa: PTH113  never raises

    def is_folder(self, path: str) -> bool:
        """Return whether there is a folder of that path."""
        return os.path.isdir(path)  # noqa: PTH112  never raises

    def bears(self, path: str) -> bool:
        """Return whether anything bears that path, be it a file, a folder or a link that leads nowhere."""
        return os.path.lexists(path)

    def names(self, folder: str) -> list[str]:
        """Return the names of what lies right in a folder, sorted."""
        try:
            return sorted(os.listdir(folder))  # noqa: PTH208  names are wanted, not paths
        except OSError as error:
            raise Unreadable(f"the folder cannot be read: {error.strerror}.") from None

    def below(self, folder: str, problems: list[Problem]) -> Iterator[str]:
        """Yield the path of every entry below a folder, folders too, in order; what cannot be listed is a problem."""

        def cannot(error: OSError) -> None:
            text = f"the folder cannot be read: {error.strerror}; nothing in it was checked."
            problems.append(Problem(whole(shown(os.fsdecode(error.filename or folder))), text))

        for where, folders, names in os.walk(folder, onerror=cannot):
            folders[:] = sorted(name for name in folders if not name.startswith("."))
            yield from (shown(os.path.join(where, name)) for name in sorted([*folders, *names]))  # noqa: PTH118  text

    def is_within(self, path: str, folder: str) -> bool:
        """Return whether a path, with every link followed, stays inside a folder."""
        return Path(os.path.realpath(path)).is_relative_to(os.path.realpath(folder))


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


def at_top(file: str) -> str:
    """Return a path that is named from the top of the repository that the program runs in as it is shown."""
    top = repository_of("x")
    return shown(str(top / file)) if top is not None else file


def find_rooms(paths: tuple[str, ...], files: Files | None = None) -> tuple[list[str], list[Problem], list[str]]:
    """Return the room files of files and folders, what is wrong with some, and folders that hold none.

    A folder is searched all the way down; links to folders are not followed, and a room file that is a link must
    lead to somewhere inside the folder searched. Folders whose name starts with a dot are passed over. What is named
    nearly as a room file is told of, so that no room is left out in silence.
    """
    there = files or Disk()
    found: dict[str, None] = {}
    problems: list[Problem] = []
    empty: list[str] = []
    for path in paths:
        if there.is_folder(path):
            before = len(problems)
            inside = list(_search(path, there, problems))
            found.update(dict.fromkeys(inside))
            if not inside and len(problems) == before:
                empty.append(path)
        elif not path.endswith(ROOM_ENDINGS) and there.is_file(path):
            text = f"a room file's name ends in {ROOM_ENDINGS[0]}; rename it, or give its folder."
            problems.append(Problem(whole(shown(path)), text))
        else:
            found[shown(path)] = None
    return sorted(found), problems, empty


def _search(folder: str, files: Files, problems: list[Problem]) -> Iterator[str]:
    for path in files.below(folder, problems):
        if not path.endswith(ROOM_ENDINGS):
            if (text := misnamed(path, ROOM_ENDINGS)) and not files.is_folder(path):
                problems.append(Problem(whole(path), text))
        elif not files.is_within(path, folder):
            problems.append(Problem(whole(path), _LEADS_OUT))
        else:
            yield path


def misnamed(path: str, endings: tuple[str, ...]) -> str:
    """Return what is wrong with a name that is nearly one of the endings, as of `.Room.yaml`; empty for any other."""
    if path.endswith(endings) or not path.lower().endswith(endings):
        return ""
    return f"the name must end in {endings[0]}, written just so; this file was not read. Rename it."


def shown(path: str) -> str:
    """Return a path as reports show it: relative to where the program runs, with forward slashes."""
    try:
        return Path(os.path.relpath(path)).as_posix()
    except ValueError:  # on another drive
        return Path(os.path.abspath(path)).as_posix()  # noqa: PTH100  links must stay


def whole(path: str) -> Place:
    """Return the place that stands for a file as a whole."""
    return Place(path, 1, 1, 1, 1)


def house_of(path: str, files: Files) -> str | None:
    """Return the nearest house file above a room file.

    It is sought up to the top of the repository; outside of one, up to the folder where the program runs, and no
    further than the room's own folder when the room lies elsewhere. Whatever bears the name counts, and a house file
    of the other ending too: that it cannot be read is then told, instead of going on without the team's decisions.
    """
    folder = Path(os.path.abspath(path)).parent  # noqa: PTH100  `..` must go, links must stay
    here = Path.cwd()
    last = repository_of(path) or (here if folder.is_relative_to(here) else folder)
    for above in (folder, *folder.parents):
        if files.bears(str(above / HOUSE_NAME)):
            return shown(str(above / HOUSE_NAME))
        other = str(above / HOUSE_OTHER_NAME)
        if files.is_file(other) and _is_house(other, files):
            return shown(other)
        if above == last:
            return None
    return None


def _is_house(path: str, files: Files) -> bool:
    """Tell a house file from another program's file of the same name."""
    try:
        return any(line.startswith(_HOUSE_KEY) for line in files.read(path).splitlines())
    except Unreadable:
        return False
