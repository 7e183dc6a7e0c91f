"""Runs the review that a command asks for: which rooms, against what. It talks to the terminal too."""

from __future__ import annotations

import gc
import os
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
    from roomlint.source.revision import Revision
    from roomlint.writing import Outputs

BAR_FROM: Final = 20
"""Rooms from which a terminal shows how far the run is."""
ROOMS_A_PROCESS: Final = 8
"""Fewer rooms than this are reviewed before another process has started."""


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


def reviewed(
    paths: tuple[str, ...], choices: Choices, against: str | None, jobs: int | None, outputs: Outputs
) -> Review:
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
    before = _before(against) if against is not None else None
    found = _run(rooms, book, choices, jobs, "Reviewing")
    if before is not None:
        earlier, renamed = _earlier(before, f"revision {against}", paths, book, choices, jobs, found, files)
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


def _run(rooms: list[str], book: Book, choices: Choices, jobs: int | None, label: str) -> Review:
    from roomlint.review.session import run

    jobs = jobs or processes(len(rooms))
    if len(rooms) < BAR_FROM or not sys.stderr.isatty():
        return run(rooms, book, choices, jobs)
    with click.progressbar(length=len(rooms), label=label, file=sys.stderr) as bar:
        return run(rooms, book, choices, jobs, lambda: bar.update(1))


def _before(against: str) -> Earlier | Revision:
    """Return what is compared with, an earlier report or a revision; whatever is wrong with it is told at once."""
    from roomlint.review.compare import NotOursError, is_json, read_sarif
    from roomlint.source.revision import Revision, RevisionError

    try:
        return read_sarif(against) if is_json(against) else Revision(against)
    except NotOursError as error:
        raise click.UsageError(f"--against: {error}") from None
    except RevisionError as error:
        file = "the file of that name is no report" if Path(against).is_file() else "there is no report of that name"
        raise click.UsageError(f"--against: {str(error).rstrip('.')}, and {file}.") from None


def processes(rooms: int) -> int:
    """Return how many processes review so many rooms, where nobody says."""
    return max(1, min(cores(), rooms // ROOMS_A_PROCESS))


def cores() -> int:
    """Return how many cores this process may use; on some systems nobody says, and it is all of them."""
    allowed = getattr(os, "sched_getaffinity", None)
    return len(allowed(0)) if allowed is not None else os.cpu_count() or 1


def _earlier(
    before: Earlier | Revision, name: str, paths: tuple[str, ...], book: Book, choices: Choices, jobs: int | None,
    found: Review, files: Files,
) -> tuple[Earlier, dict[str, str]]:  # fmt: skip
    """Return the earlier review, of every room that was there then, and which files were renamed since.

    What is staged as it was committed, in a repository that says the same of houses and products, is not reviewed
    twice: of a commit that changes one room of a hundred that takes half of the time.
    """
    from roomlint.review.compare import earlier_of
    from roomlint.source.files import at_top, find_rooms, from_top
    from roomlint.source.revision import STAGED, Revision, renamed_since

    if not isinstance(before, Revision):
        return before, {}
    renamed = renamed_since(before.commit, staged=choices.revision == STAGED)
    then = {room: None for room in find_rooms(paths, before)[0] if before.is_file(room)}
    then |= {at_top(old): None for new, old in renamed.items() if before.is_file(at_top(old)) and _is_asked(new, paths)}
    same = files.same_rooms(before) if isinstance(files, Revision) and choices.house is None else frozenset()
    changed = sorted(room for room in then if from_top(room) not in same)
    review = _run(changed, book, replace(choices, revision=before.commit), jobs, "Reviewing then")
    return earlier_of(review, name, found, same & {from_top(room) for room in then}), renamed


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
