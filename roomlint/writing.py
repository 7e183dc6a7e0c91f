"""Puts reports out: in one encoding, whole or not at all, and never over what is being reviewed.

Everything that leaves the program as a report leaves through here, so that a report is the same bytes on every machine
and nothing in a reviewed file can steer a terminal or the machine that keeps the log.
"""

from __future__ import annotations

import errno
import os
import re
import stat
import sys
from contextlib import suppress
from pathlib import Path
from typing import TYPE_CHECKING

from roomlint.source.files import repository_of

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

JSON_KINDS = frozenset({"json", "sarif", "alerts"})
COMMAND_KINDS = frozenset({"annotations"})
"""Formats whose very lines are commands to the machine that keeps the log; their writers escape what they hold."""
_DESIGN_ENDINGS = (".yaml", ".yml")
_COLOUR = r"\x1b\[[0-9;]*m"
_LINE_COMMAND = re.compile(r"(?m)^([ \t]*):(?=:)")
_INLINE_COMMAND = re.compile(r"#(?=#[A-Za-z]*\[)")


class CannotWriteError(Exception):
    """A report cannot be written; the text says which and why."""


def say(text: str | Iterable[str], kind: str = "text", *, coloured: bool = False) -> None:
    """Print a report, whole or in parts; raises `CannotWriteError` where there is no output, or one that is full.

    A reader that has seen enough and closed the pipe is no fault: the rest is dropped.
    """
    stream = sys.stdout
    if stream is None:
        raise CannotWriteError("cannot write to the output: it is closed.")
    is_terminal = stream.isatty()
    try:
        for part in _parts(text):
            _put(_tamed(part, kind, coloured=coloured), is_terminal=is_terminal)
        stream.flush()
    except OSError as error:
        # What is still in the buffer would break once more at the end of the run.
        with suppress(OSError, ValueError):
            os.dup2(os.open(os.devnull, os.O_WRONLY), stream.fileno())
        if error.errno != errno.EPIPE:
            raise CannotWriteError(f"cannot write to the output: {error.strerror}.") from None


def _put(text: str, *, is_terminal: bool) -> None:
    """Write to a terminal what it can show, and to anything else UTF-8 with line feeds."""
    stream = sys.stdout
    buffer = getattr(stream, "buffer", None)
    if is_terminal or buffer is None:
        encoding = stream.encoding or "utf-8"
        stream.write(text.encode(encoding, "backslashreplace").decode(encoding))
    else:
        stream.flush()
        buffer.write(_bytes(text))


def _bytes(text: str | bytes) -> bytes:
    return text if isinstance(text, bytes) else text.encode("utf-8", "backslashreplace")  # a file name need not be text


def _parts(text: str | Iterable[str]) -> Iterator[str]:
    if isinstance(text, str):
        yield text
    else:
        yield from text


def _tamed(text: str, kind: str, *, coloured: bool) -> str:
    r"""Return a text without anything that steers a terminal or a log: such signs are written as escapes.

    Machines that run workflows take a line that begins with `::`, and `##[` anywhere, for commands.
    """
    if kind in COMMAND_KINDS:
        return text
    if kind in JSON_KINDS:
        return _INLINE_COMMAND.sub(r"\\u0023", text)
    hidden = re.compile(rf"({_COLOUR})|." if coloured else "(?!)()|.")
    lines = (
        line if line.isprintable() else hidden.sub(lambda found: found[1] or _escaped(found[0]), line)
        for line in text.split("\n")
    )
    return _INLINE_COMMAND.sub(r"\\x23", _LINE_COMMAND.sub(r"\1\\x3a", "\n".join(lines)))


def _escaped(sign: str) -> str:
    return sign if sign.isprintable() or sign == "\t" else sign.encode("unicode_escape").decode("ascii")


class Outputs:
    """The files that reports go to. All are looked at before the run; each is then whole, new, or not there."""

    def __init__(self, files: Iterable[str]) -> None:
        """Raise `CannotWriteError` for a file that no report may go to."""
        self._real: dict[str, Path] = {}
        for file in files:
            real = _checked(file)
            if real in self._real.values():
                raise CannotWriteError(f"cannot write {file}: another report goes to the same file.")
            self._real[file] = real

    def clear(self, read: Iterable[str]) -> None:
        """Remove what an earlier run left, so that nothing old passes for the report of this run.

        `read` are the files that this run reads; none of them is written to.
        """
        known = {key for path in read if (key := _identity(Path(path))) is not None}
        for file, real in self._real.items():
            if _identity(real) in known:
                raise CannotWriteError(f"cannot write {file}: this run reads that file.")
        for file, real in self._real.items():
            try:
                real.unlink(missing_ok=True)
            except OSError as error:
                raise CannotWriteError(f"cannot write {file}: {error.strerror}.") from None

    def write(self, file: str, text: str | Iterable[str | bytes]) -> None:
        """Write a report beside its place and move it there when it is whole; raises `CannotWriteError`."""
        real = self._real[file]
        beside = real.with_name(f".roomlint-{os.getpid()}-{os.urandom(4).hex()}.part")
        try:
            with beside.open("xb") as stream:
                for part in [text] if isinstance(text, str) else text:
                    stream.write(_bytes(part))
                stream.flush()
                os.fsync(stream.fileno())  # some disks say only now that they are full
            beside.replace(real)
        except OSError as error:
            raise CannotWriteError(f"cannot write {file}: {error.strerror}.") from None
        finally:
            with suppress(OSError):
                beside.unlink(missing_ok=True)


def _checked(file: str) -> Path:
    """Return where a report really goes, every link followed."""
    real = Path(os.path.realpath(file))
    if real.name.lower().endswith(_DESIGN_ENDINGS):
        raise CannotWriteError(f"cannot write {file}: a report must not take the place of a design file; rename it.")
    top = repository_of(file)
    if top is not None and not real.is_relative_to(os.path.realpath(top)):
        raise CannotWriteError(f"cannot write {file}: a link there leads out of the repository.")
    try:
        mode = real.stat().st_mode
    except FileNotFoundError:
        mode = stat.S_IFREG
    except OSError as error:
        raise CannotWriteError(f"cannot write {file}: {error.strerror}.") from None
    if stat.S_ISDIR(mode):
        raise CannotWriteError(f"cannot write {file}: it is a folder.")
    if not stat.S_ISREG(mode):
        raise CannotWriteError(f"cannot write {file}: it is not an ordinary file; --format prints to the output.")
    if not os.path.isdir(real.parent):  # noqa: PTH112  never raises
        raise CannotWriteError(f"cannot write {file}: there is no folder {os.path.dirname(file)!r}.")  # noqa: PTH120
    return real


def _identity(path: Path) -> tuple[int, int] | None:
    try:
        found = path.stat()
    except (OSError, ValueError):
        return None
    return found.st_dev, found.st_ino
