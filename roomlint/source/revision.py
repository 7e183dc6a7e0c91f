"""Files of a git revision, or as git has them staged, read through git; tree and index are never touched."""

from __future__ import annotations

import os
import subprocess
from pathlib import Path
from typing import TYPE_CHECKING, NamedTuple

from roomlint.source.files import HOUSE_NAME, PRODUCT_ENDINGS, ROOM_ENDINGS, Unreadable, shown
from roomlint.source.text import MAX_BYTES

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from roomlint.source.place import Problem

STAGED = ":staged"
"""The name that stands for what git has staged; no revision can have it."""
LINK = "120000"
ORDINARY = "blob"
CONFLICT = "conflict"
TIMEOUT_S = 60
"""How long git may take for one answer; the largest repositories list their files in a few seconds."""
_AT_ONCE_BYTES = 64 * MAX_BYTES
"""Design files up to this sum are fetched in one go; what a team's repository holds is a fraction of it."""

_SETTINGS = (
    *("-c", "safe.bareRepository=explicit"),  # a folder that looks like a repository must not pass for ours
    *("-c", "protocol.allow=never"),
    *("-c", "core.hooksPath=" + os.devnull),
    *("-c", "core.fsmonitor=false"),  # it names a program that reading the index would start
)
_SURROUNDINGS = {
    # Naming no protocol at all, which no configuration can widen.
    "GIT_ALLOW_PROTOCOL": "",
    "GIT_NO_LAZY_FETCH": "1",
    "GIT_OPTIONAL_LOCKS": "0",
    "GIT_TERMINAL_PROMPT": "0",
    "LC_ALL": "C",
}


class RevisionError(ValueError):
    """A revision that cannot be read; the text says why."""


class _Entry(NamedTuple):
    mode: str
    kind: str
    name: str


class Revision:
    """The files of one revision, or those that are staged; paths are as on the disk, relative or absolute."""

    def __init__(self, name: str) -> None:
        if name != STAGED and (not name or name.startswith(("-", ":")) or not name.isprintable()):
            raise RevisionError(f"{name!r} is no name of a git revision.")
        self.name = name
        self._top = Path(os.fsdecode(_git("rev-parse", "--show-toplevel").removesuffix(b"\n")))
        self.commit = name if name == STAGED else commit_of(name)
        self._where = "among what git has staged" if name == STAGED else f"in revision {name}"
        self._entries = dict(_staged() if name == STAGED else _committed(self.commit))
        self._folders = {folder for path in self._entries for folder in _above(path)}
        self._blobs: dict[str, bytes] = {}

    def read(self, path: str) -> bytes:
        """Return a file's bytes; raises `Unreadable`."""
        inside = self._inside(path)
        entry = self._entries.get(inside)
        if entry is None:
            if inside in self._folders:
                raise Unreadable("this is a folder, not a file. Rename it.")
            raise Unreadable(f"is not {self._where}.")
        if entry.kind == CONFLICT:
            raise Unreadable("two versions of this file are in conflict; settle them and stage the file.")
        if entry.kind != ORDINARY or entry.mode == LINK:
            raise Unreadable("this is not an ordinary file; links are not followed in git.")
        if not self._blobs:
            self._fetch_designs()
        try:
            return self._blobs.get(entry.name) or self._blob(entry.name)
        except RevisionError as error:
            raise Unreadable(str(error)) from None

    def is_file(self, path: str) -> bool:
        """Return whether there is a file of that path."""
        entry = self._entries.get(self._inside(path))
        return entry is not None and entry.kind in {ORDINARY, CONFLICT}

    def is_folder(self, path: str) -> bool:
        """Return whether there is a folder of that path."""
        return self._inside(path) in self._folders

    def bears(self, path: str) -> bool:
        """Return whether anything bears that path."""
        inside = self._inside(path)
        return inside in self._entries or inside in self._folders

    def names(self, folder: str) -> list[str]:
        """Return the names of what lies right in a folder, sorted."""
        inside = self._inside(folder)
        if inside not in self._folders and inside != ".":
            raise Unreadable(f"the folder is not {self._where}.")
        start = "" if inside == "." else f"{inside}/"
        return sorted({path[len(start) :].partition("/")[0] for path in self._entries if path.startswith(start)})

    def below(self, folder: str, problems: list[Problem]) -> Iterator[str]:  # noqa: ARG002  git lists all or nothing
        """Yield the path of every file below a folder, in order; folders whose name starts with a dot are left out."""
        inside = self._inside(folder)
        start = "" if inside == "." else f"{inside}/"
        for path in sorted(self._entries):
            parts = path[len(start) :].split("/")
            if path.startswith(start) and not any(part.startswith(".") for part in parts[:-1]):
                yield shown(str(self._top / path))

    def is_within(self, path: str, folder: str) -> bool:
        """Return whether a path stays inside a folder; links are never followed, so names decide."""
        return Path(os.path.abspath(path)).is_relative_to(os.path.abspath(folder))  # noqa: PTH100  links must stay

    def same_rooms(self, other: Revision) -> frozenset[str]:
        """Return the room files, from the top, that are the same in both, and so is all that a room may rest on.

        That is every other YAML file of the repository; where one of them differs, no room is sure to be the same.
        """
        mine, theirs = self._designs(), other._designs()
        if {path: entry for path, entry in mine.items() if not path.endswith(ROOM_ENDINGS)} != {
            path: entry for path, entry in theirs.items() if not path.endswith(ROOM_ENDINGS)
        }:
            return frozenset()
        return frozenset(path for path, entry in mine.items() if theirs.get(path) == entry and entry.kind == ORDINARY)

    def _designs(self) -> dict[str, _Entry]:
        return {path: entry for path, entry in self._entries.items() if path.endswith((".yaml", ".yml"))}

    def _inside(self, path: str) -> str:
        """Return the path from the top of the repository, as git writes it."""
        full = Path(os.path.normpath(Path.cwd() / path))
        for top in (self._top, self._top.resolve()):
            if full.is_relative_to(top):
                return full.relative_to(top).as_posix()
        return str(full)

    def _blob(self, name: str) -> bytes:
        size = int(_git("cat-file", "-s", name))
        if size > MAX_BYTES:
            raise RevisionError(f"the file holds {size} bytes; at most {MAX_BYTES} are read.")
        return _git("cat-file", "blob", name)

    def _fetch_designs(self) -> None:
        """Fetch all design files with two questions to git instead of two a file."""
        names = dict.fromkeys(
            entry.name
            for path, entry in self._entries.items()
            if entry.kind == ORDINARY
            and entry.mode != LINK
            and path.endswith((*ROOM_ENDINGS, *PRODUCT_ENDINGS, HOUSE_NAME))
        )
        total = 0
        wanted = []
        for line in _git("cat-file", "--batch-check", told=_lines(names)).decode("ascii", "replace").splitlines():
            name, _, size = line.partition(" blob ")
            if size.isdigit() and int(size) <= MAX_BYTES and total + int(size) <= _AT_ONCE_BYTES:
                total += int(size)
                wanted.append(name)
        said = _git("cat-file", "--batch", told=_lines(wanted))
        at = 0
        for name in wanted:  # each is answered by its name, kind and length on a line, its bytes, and a line feed
            head, _, _ = said[at : at + 200].partition(b"\n")
            start = at + len(head) + 1
            at = start + int(head.split()[2]) + 1
            self._blobs[name] = said[start : at - 1]


def commit_of(name: str) -> str:
    """Return the object name of a revision's commit; nothing that follows takes a name from outside."""
    try:
        said = _git("rev-parse", "--verify", "--quiet", "--end-of-options", f"{name}^{{commit}}")
    except RevisionError:
        raise RevisionError(f"git knows no revision {name!r} here.") from None
    return said.decode("ascii").strip()


def has_commits() -> bool:
    """Return whether the repository has a commit yet; raises `RevisionError` where there is no repository."""
    _git("rev-parse", "--show-toplevel")
    try:
        return bool(commit_of("HEAD"))
    except RevisionError:
        return False


def renamed_since(commit: str, *, staged: bool) -> dict[str, str]:
    """Return which files git takes for renamed since a commit: new name to old, from the top of the repository."""
    words = ["diff", "--name-status", "-z", "--find-renames", "--diff-filter=R", "--no-ext-diff", "--no-textconv"]
    told = _git(*words, *(["--cached"] if staged else []), commit, "--").split(b"\0")
    # Each is three texts: R and how alike they are, the old name, the new one.
    return {os.fsdecode(new): os.fsdecode(old) for old, new in zip(told[1::3], told[2::3], strict=False)}


def _above(path: str) -> Iterator[str]:
    while (path := path.rpartition("/")[0]) != "":
        yield path
    yield "."


def _lines(names: Iterable[str]) -> bytes:
    return "".join(f"{name}\n" for name in names).encode("ascii")


def _committed(commit: str) -> Iterator[tuple[str, _Entry]]:
    for line in _git("ls-tree", "-r", "-z", "--full-tree", commit).split(b"\0"):
        about, _, path = line.partition(b"\t")
        if path:
            yield os.fsdecode(path), _Entry(*about.decode("ascii").split())


def _staged() -> Iterator[tuple[str, _Entry]]:
    """List the index. What is only announced, with no content staged, is not there yet."""
    announced: set[bytes] = set()
    listed = _git("ls-files", "--stage", "-z", "--full-name", ":/").split(b"\0")
    empty = _git("hash-object", "--stdin", told=b"").split()[0]
    if any(line.split(b" ", 2)[1:2] == [empty] for line in listed):
        announced = set(_git("diff-files", "-z", "--name-only", "--diff-filter=A").split(b"\0"))
    for line in listed:
        about, _, path = line.partition(b"\t")
        if not path or path in announced:
            continue
        mode, name, stage = about.decode("ascii").split()
        kind = CONFLICT if stage != "0" else "commit" if mode == "160000" else ORDINARY
        yield os.fsdecode(path), _Entry(mode, kind, name)


def _git(*words: str, told: bytes = b"") -> bytes:
    """Run one of git's reading commands: no hook, no pager, no network, no replacement of objects, and not for ever."""
    command = ["git", "--no-pager", "--no-replace-objects", *_SETTINGS, *words]
    environment = {**os.environ, **_SURROUNDINGS}
    try:
        done = subprocess.run(  # noqa: S603  fixed words and checked names
            command, capture_output=True, check=False, env=environment, input=told, timeout=TIMEOUT_S
        )
    except OSError as error:
        raise RevisionError(f"git cannot be run: {error.strerror}.") from None
    except subprocess.TimeoutExpired:
        raise RevisionError(f"git gave no answer within {TIMEOUT_S} s.") from None
    if done.returncode != 0:
        said = done.stderr.decode("utf-8", "replace").strip().splitlines()
        raise RevisionError(f"git says: {said[-1] if said else 'nothing'}.")
    return done.stdout
