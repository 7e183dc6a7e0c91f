"""Files of a git revision, read through git; neither the working tree nor the index is touched."""

from __future__ import annotations

import os
import subprocess
from pathlib import Path, PurePosixPath
from typing import NamedTuple

from roomlint.source.files import MAX_BYTES, Unreadable

LINK = "120000"
ORDINARY = "blob"


class RevisionError(ValueError):
    """A revision that cannot be read; the text says why."""


class _Entry(NamedTuple):
    mode: str
    kind: str
    name: str
    size: int


class Revision:
    """The files of one revision; paths are as on the disk, relative to where the program runs or absolute."""

    def __init__(self, name: str) -> None:
        if not name or name.startswith("-") or not name.isprintable():
            raise RevisionError(f"{name!r} is no name of a git revision.")
        self.name = name
        self._top = Path(_git("rev-parse", "--show-toplevel").decode().rstrip("\n"))
        try:
            # Resolved to an object's own name once: nothing that follows takes a name from outside.
            commit = _git("rev-parse", "--verify", "--quiet", "--end-of-options", f"{name}^{{commit}}")
        except RevisionError:
            raise RevisionError(f"git knows no revision {name!r} here.") from None
        self.commit = commit.decode("ascii").strip()
        self._entries: dict[str, _Entry] = {}
        for line in _git("ls-tree", "-r", "-l", "-z", "--full-tree", self.commit).split(b"\0"):
            if line:
                about, _, path = line.partition(b"\t")
                mode, kind, oid, size = about.decode("ascii").split()
                self._entries[os.fsdecode(path)] = _Entry(mode, kind, oid, int(size) if size.isdigit() else 0)

    def read(self, path: str) -> bytes:
        """Return a file's bytes; raises `Unreadable`."""
        entry = self._entries.get(self._inside(path))
        if entry is None:
            raise Unreadable(f"is not in revision {self.name}.")
        if entry.kind != ORDINARY or entry.mode == LINK:
            raise Unreadable("this is not an ordinary file; links are not followed in a revision.")
        if entry.size > MAX_BYTES:
            raise Unreadable(f"the file holds {entry.size} bytes; at most {MAX_BYTES} are read.")
        try:
            return _git("cat-file", "blob", entry.name)
        except RevisionError as error:
            raise Unreadable(str(error)) from None

    def is_file(self, path: str) -> bool:
        """Return whether there is a file of that path."""
        entry = self._entries.get(self._inside(path))
        return entry is not None and entry.kind == ORDINARY

    def names(self, folder: str) -> list[str]:
        """Return the names of the files right in a folder, sorted."""
        inside = self._inside(folder)
        found = sorted(PurePosixPath(path).name for path in self._entries if str(PurePosixPath(path).parent) == inside)
        start = f"{inside}/"
        if not found and inside != "." and not any(path.startswith(start) for path in self._entries):
            raise Unreadable(f"the folder is not in revision {self.name}.")
        return found

    def is_within(self, path: str, folder: str) -> bool:
        """Return whether a path stays inside a folder; links are never followed, so names decide."""
        return Path(os.path.abspath(path)).is_relative_to(os.path.abspath(folder))  # noqa: PTH100  links must stay

    def _inside(self, path: str) -> str:
        """Return the path from the top of the repository, as git writes it."""
        here = Path(path)
        full = Path(os.path.normpath(Path.cwd() / here))
        for top in (self._top, self._top.resolve()):
            if full.is_relative_to(top):
                return full.relative_to(top).as_posix()
        return str(full)


def _git(*words: str) -> bytes:
    """Run one of git's reading commands; no hook, no pager, no network, no replacement of objects."""
    environment = {**os.environ, "GIT_NO_LAZY_FETCH": "1", "GIT_OPTIONAL_LOCKS": "0", "GIT_TERMINAL_PROMPT": "0"}
    command = ["git", "--no-pager", "--no-replace-objects", "-c", "protocol.allow=never", *words]
    try:
        done = subprocess.run(command, capture_output=True, check=False, env=environment, stdin=subprocess.DEVNULL)  # noqa: S603  fixed words and checked names
    except OSError as error:
        raise RevisionError(f"git cannot be run: {error.strerror}.") from None
    if done.returncode != 0:
        said = done.stderr.decode("utf-8", "replace").strip().splitlines()
        raise RevisionError(f"git says: {said[-1] if said else 'nothing'}.")
    return done.stdout
