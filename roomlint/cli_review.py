"""Runs the review that a command asks for: which rooms, against what. It talks to the terminal too."""

from __future__ import annotations

import gc
import sys
from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING, Final

import click

if TYPE_CHECKING:
    from roomlint.review.book import Book
    from roomlint.review.earlier import Earlier
    from roomlint.review.review import Review
    from roomlint.review.session import Choices
    from roomlint.source.files import Files
    from roomlint.writing import Outputs

BAR_FROM: Final = 20
"""Rooms from which a terminal shows how far the run is."""


def refuse_empty(paths: tuple[str, ...]) -> None:
    """Refuse an empty name, as of a variable that a script forgot: it must not stand for the folder one is in."""
    if "" in paths:
        raise click.UsageError("an empty text names no file; leave it out, or name a room file or a folder.")


def staged_choices(choices: Choices, against: str | None) -> tuple[Choices, str | None]:
    """Return the choices of a review of what is staged, and what it is compared with: nothing before any commit."""
    from roomlint.source.revision import STAGED, RevisionError, has_commits

    try:
        against = against or ("HEAD" if has_commits() else None)
    except RevisionError as error:
        raise click.UsageError(f"--staged: {error}") from None
    return replace(choices, revision=STAGED), against


def few_collections() -> None:
    """Look for cycles seldom: a review, and its drawing, make many small objects that live as long as their room."""
    gc.set_threshold(100_000, 20, 20)


def reviewed(paths: tuple[str, ...], choices: Choices, against: str | None, jobs: int, outputs: Outputs) -> Review:
    """Return what a run finds, compared with an earlier one where that is asked for."""
    from roomlint.review.book import load_book
    from roomlint.review.session import select
    from roomlint.source.files import find_rooms

    files = _files(choices)
    if choices.house is not None and not files.is_file(choices.house):
        raise click.UsageError(f"there is no house file {choices.house!r}.")
    rooms, problems, empty = find_rooms(paths, files)
    outputs.clear([*rooms, *(name for name in (choices.house, against) if name is not None)])
    book = load_book()
    rules, strange = select(book, choices.only, choices.without)
    if strange:
        raise click.UsageError(unknown(strange, book.ids))
    if not rules and not any(name.startswith("house") for name in choices.only):
        raise click.UsageError("no rule is left to run; --only and --without leave nothing.")
    earlier, renamed = _earlier(against, paths, book, choices, jobs) if against is not None else (None, {})
    found = _run(rooms, book, choices, jobs, "Reviewing")
    if earlier is not None:
        from roomlint.review.compare import compare
        from roomlint.source.files import at_top

        found = compare(found, earlier, renamed, lambda file: files.is_file(at_top(file)))
    return replace(
        found,
        problems=tuple(sorted({*found.problems, *problems})),
        troubles=(*book.troubles, *found.troubles),
        unmatched=tuple(empty),
    )


def _files(choices: Choices) -> Files:
    from roomlint.source.files import Disk

    if not choices.revision:
        return Disk()
    from roomlint.source.revision import Revision, RevisionError

    try:
        return Revision(choices.revision)
    except RevisionError as error:
        raise click.UsageError(f"--staged: {error}") from None


def _run(rooms: list[str], book: Book, choices: Choices, jobs: int, label: str) -> Review:
    from roomlint.review.session import run

    if len(rooms) < BAR_FROM or not sys.stderr.isatty():
        return run(rooms, book, choices, jobs)
    with click.progressbar(length=len(rooms), label=label, file=sys.stderr) as bar:
        return run(rooms, book, choices, jobs, lambda: bar.update(1))


def _earlier(
    against: str, paths: tuple[str, ...], book: Book, choices: Choices, jobs: int
) -> tuple[Earlier, dict[str, str]]:
    """Return the earlier review, of every room that was there then, and which files were renamed since."""
    from roomlint.review.compare import NotOursError, earlier_of, is_json, read_sarif
    from roomlint.source.files import at_top, find_rooms
    from roomlint.source.revision import STAGED, Revision, RevisionError, renamed_since

    try:
        if is_json(against):
            return read_sarif(against), {}
        there = Revision(against)
    except NotOursError as error:
        raise click.UsageError(f"--against: {error}") from None
    except RevisionError as error:
        file = "the file of that name is no report" if Path(against).is_file() else "there is no report of that name"
        raise click.UsageError(f"--against: {str(error).rstrip('.')}, and {file}.") from None
    renamed = renamed_since(there.commit, staged=choices.revision == STAGED)
    then = {room: None for room in find_rooms(paths, there)[0] if there.is_file(room)}
    then |= {at_top(old): None for new, old in renamed.items() if there.is_file(at_top(old)) and _is_asked(new, paths)}
    review = _run(sorted(then), book, replace(choices, revision=there.commit), jobs, "Reviewing then")
    return earlier_of(review, f"revision {against}"), renamed


def _is_asked(file: str, paths: tuple[str, ...]) -> bool:
    """Return whether a room file, named from the top of the repository, is among what is to be reviewed."""
    from roomlint.source.files import ROOM_ENDINGS, at_top

    whole = Path(at_top(file)).resolve()
    return file.endswith(ROOM_ENDINGS) and any(whole.is_relative_to(Path(path).resolve()) for path in paths)


def unknown(names: list[str], ids: tuple[str, ...]) -> str:
    """Return that names mean nothing, each with the nearest one that does."""
    from roomlint.design.reader import nearest

    known = {*ids, *(rule_id.partition(".")[0] for rule_id in ids)}
    return " ".join(f"{name!r} is neither a rule nor a chapter; {nearest(name, known)}" for name in names)
