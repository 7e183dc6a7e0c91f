"""The command that rewrites an old file in today's form. It prints and exits too."""

from __future__ import annotations

import os
import sys
import tempfile
from contextlib import suppress
from pathlib import Path
from typing import TYPE_CHECKING

import click

from roomlint.source.say import one_line
from roomlint.writing import say

if TYPE_CHECKING:
    from collections.abc import Iterable

    from roomlint.source.place import Problem
    from roomlint.source.upgrade import Upgrade

_NOT_WRITTEN = 1
_UNREADABLE = 2


@click.command("upgrade")
@click.argument("file", type=click.Path())
@click.option("--yes", is_flag=True, help="Rewrite without asking.")
@click.pass_context
def upgrade_file(ctx: click.Context, file: str, *, yes: bool) -> None:
    """Rewrite a file of an older edition in today's form, comments and order kept.

    Shows what changes first, then asks; where it cannot ask, it only shows, with status 1, unless told --yes.
    """
    from roomlint.review.book import WITHDRAWN
    from roomlint.source.files import Disk, Unreadable
    from roomlint.source.text import decode
    from roomlint.source.upgrade import upgrade

    path = Path(file)
    if path.is_symlink():
        raise click.UsageError(f"{file} is a link; name the file itself.")
    try:
        data = Disk().read(file)
    except Unreadable as error:
        raise click.UsageError(f"{file}: {error}") from None
    unfit = decode(data, path.as_posix())[1]
    text = data.decode("utf-8") if not unfit else ""
    found = upgrade(text, path.as_posix(), WITHDRAWN)
    problems = unfit or found.problems
    if problems:
        tell(problems)
        ctx.exit(_UNREADABLE)
    say(_shown(text, found, path))
    if found.text == text:
        return
    if not yes and not sys.stdin.isatty():
        say("Not written; --yes writes it.\n")
        ctx.exit(_NOT_WRITTEN)
    if not yes and not click.confirm("Write this?"):
        ctx.exit(_NOT_WRITTEN)
    _replace(path, found.text)
    say(f"{path.as_posix()}: rewritten.\n")


def tell(problems: Iterable[Problem]) -> None:
    """Tell on the error output what makes files unreadable, in file order."""
    for problem in sorted(problems):
        place = problem.place
        click.echo(one_line(f"{place.file}:{place.line}:{place.column}: error: {problem.text}"), err=True)


def _shown(old: str, found: Upgrade, path: Path) -> str:
    """Return the changes as a diff, then in words, what a person must look at last."""
    import difflib

    name = path.as_posix()
    before, after = old.splitlines(keepends=True), found.text.splitlines(keepends=True)
    lines = [line.rstrip("\r\n") for line in difflib.unified_diff(before, after, name, name, n=1)]
    lines += [f"{name}:{one.line}: {one.text}." for one in sorted(found.changes, key=lambda one: not one.done)]
    if not found.changes:
        lines.append(f"{name}: nothing to rewrite; it is in today's form.")
    return "\n".join(lines) + "\n"


def _replace(path: Path, text: str) -> None:
    """Put a new text in the place of a file, whole or not at all."""
    try:
        descriptor, made = tempfile.mkstemp(dir=path.parent, prefix=f".{path.name}.")
        try:
            with os.fdopen(descriptor, "wb") as stream:
                stream.write(text.encode())
            Path(made).chmod(path.stat().st_mode & 0o7777)
            Path(made).replace(path)
        except BaseException:
            with suppress(OSError):
                Path(made).unlink()
            raise
    except OSError as error:
        raise click.UsageError(f"cannot write {path}: {error.strerror}.") from None
