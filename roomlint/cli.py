"""The command line; the only place that prints or exits."""

from __future__ import annotations

import errno
import gc
import os
import sys
from dataclasses import replace
from datetime import date
from pathlib import Path
from typing import TYPE_CHECKING

import click

from roomlint import __version__

if TYPE_CHECKING:
    from roomlint.report import Wishes
    from roomlint.review.book import Book
    from roomlint.review.earlier import Earlier
    from roomlint.review.review import Review
    from roomlint.review.session import Choices

FORMATS = ("text", "lines", "sarif", "alerts", "markdown", "annotations")
GATES = ("error", "warning", "note", "never")
USAGE = 2
BAR_FROM = 20
"""Rooms from which a terminal shows how far the run is."""
INCOMPLETE = 4


@click.group(context_settings={"help_option_names": ["-h", "--help"]})
@click.version_option(__version__, prog_name="roomlint", message="%(prog)s %(version)s")
def main() -> None:
    """Review designs of media rooms: text in, located findings out.

    Exit status: 0 nothing at or above the gate, 1 something is, 2 usage or a file that cannot be read,
    3 nothing to check, 4 incomplete (a rule or a rule package broke).
    """


def _writes(ctx: click.Context, param: click.Parameter, values: tuple[str, ...]) -> tuple[tuple[str, str], ...]:
    """Split every `FORMAT=FILE` and refuse a format that does not exist."""
    pairs = []
    for value in values:
        kind, equals, file = value.partition("=")
        if not equals or not file or kind not in FORMATS:
            text = f"{value!r} is not FORMAT=FILE with a format of {', '.join(FORMATS)}."
            raise click.BadParameter(text, ctx=ctx, param=param)
        pairs.append((kind, file))
    return tuple(pairs)


def _day(ctx: click.Context, param: click.Parameter, value: str | None) -> date | None:
    """Read a day of the calendar."""
    try:
        return date.fromisoformat(value) if value is not None else None
    except ValueError:
        text = f"{value!r} is not a day; write year-month-day, such as 2027-06-30."
        raise click.BadParameter(text, ctx=ctx, param=param) from None


@main.command()
@click.argument("paths", nargs=-1, type=click.Path())
@click.option("--format", "kind", type=click.Choice(FORMATS), default="text", help="How to report on the output.")
@click.option(
    "--write",
    "writes",
    multiple=True,
    callback=_writes,
    metavar="FORMAT=FILE",
    help="Also write a report to a file; repeatable.",
)
@click.option("--gate", type=click.Choice(GATES), help="Lowest level that gives exit status 1; else the house decides.")
@click.option("--only", multiple=True, metavar="ID-OR-CHAPTER", help="Run only these rules; repeatable.")
@click.option("--without", multiple=True, metavar="ID-OR-CHAPTER", help="Leave these rules out; repeatable.")
@click.option("--verdicts", is_flag=True, help="Show open, passed and not applicable verdicts too.")
@click.option("--notes", is_flag=True, help="List notes instead of counting them.")
@click.option("--basis", is_flag=True, help="Add why each window is what it is.")
@click.option("--units", type=click.Choice(["metric", "us"]), help="Units instead of those of each file.")
@click.option("--house", type=click.Path(), help="Use this house file instead of the nearest one.")
@click.option(
    "--today", callback=_day, metavar="DATE", help="The day that waivers are held against, instead of the clock's."
)
@click.option("--against", metavar="REV-OR-SARIF", help="Compare with a git revision, or with a SARIF file of ours.")
@click.option("--gate-new", is_flag=True, help="Gate only on what is new or worse; needs --against.")
@click.option("--jobs", type=click.IntRange(1, 64), default=1, help="How many processes review; one unless given.")
def check(  # noqa: PLR0913, PLR0917  one parameter an option
    paths: tuple[str, ...],
    kind: str,
    writes: tuple[tuple[str, str], ...],
    gate: str | None,
    only: tuple[str, ...],
    without: tuple[str, ...],
    house: str | None,
    against: str | None,
    jobs: int,
    today: date | None,
    *,
    gate_new: bool,
    verdicts: bool,
    notes: bool,
    basis: bool,
    units: str | None,
) -> None:
    """Review room files; folders are searched for *.room.yaml."""
    from roomlint.review.session import Choices

    # A review makes many small objects that live as long as their room; looking for cycles often finds nothing.
    gc.set_threshold(100_000, 20, 20)
    if gate_new and against is None:
        raise click.UsageError("--gate-new needs --against: say what is compared with.")
    day = today or date.today()  # noqa: DTZ011  a waiver's day is the local one
    review = _review(paths or (".",), Choices(day, house, gate, only, without, gate_new=gate_new), against, jobs)
    from roomlint.report import Wishes, write

    wishes = Wishes(units or "", verdicts=verdicts, notes=notes, basis=basis)
    for part in write(kind, review, _for_the_output(wishes)):
        _say(part)
    for other, file in writes:
        try:
            with Path(file).open("w", encoding="utf-8", newline="\n") as stream:
                stream.writelines(write(other, review, replace(wishes, verdicts=True)))
        except OSError as error:
            raise click.UsageError(f"cannot write {file}: {error.strerror}.") from None
    sys.exit(review.exit_status)


@main.command("rules")
@click.argument("name", required=False, metavar="[ID-OR-CHAPTER]")
@click.option("--format", "kind", type=click.Choice(["text", "json", "markdown"]), default="text", help="How to print.")
@click.option("--house", type=click.Path(), help="Show the windows and levels that this house file sets.")
@click.option("--clause", metavar="TEXT", help="Only rules whose basis cites this document or clause.")
def rule_book(name: str | None, kind: str, house: str | None, clause: str | None) -> None:
    """Print the rule book: a list, or one rule's page."""
    from roomlint.report.rule_pages import rule_text, rules_json, rules_markdown, rules_text
    from roomlint.review.book import load_book
    from roomlint.review.desk import Desk
    from roomlint.review.session import Reviewer, citing, select

    book = load_book()
    decided, problems = Desk(rules=book.rules).open_house(house)
    if problems:
        for problem in problems:
            click.echo(f"{problem.place.file}:{problem.place.line}: {problem.text}", err=True)
        sys.exit(USAGE)
    book = replace(book, rules=(*book.rules, *Reviewer.of_house(decided)))
    chosen, unknown = select(book, (name,) if name else (), ())
    if unknown or not chosen:
        raise click.UsageError(_unknown(unknown or [str(name)], book.ids))
    if clause is not None:
        chosen = citing(chosen, clause)
        if not chosen:
            raise click.UsageError(f"no rule cites {clause!r}.")
    if kind == "json":
        _say(rules_json(chosen) + "\n")
    elif kind == "markdown":
        _say(rules_markdown(chosen, decided))
    elif name in book.ids:
        _say(rule_text(chosen[0], decided))
    else:
        _say(rules_text(chosen))
    for trouble in book.troubles:
        click.echo(trouble.text, err=True)
    sys.exit(INCOMPLETE if book.troubles else 0)


@main.command("figures")
@click.argument("file", required=False, type=click.Path())
@click.option("--format", "kind", type=click.Choice(["text", "json"]), default="text", help="How to print.")
@click.option("--house", type=click.Path(), help="Use this house file instead of the nearest one.")
@click.option("--units", type=click.Choice(["metric", "us"]), help="Units instead of those of the file.")
@click.option("--names", is_flag=True, help="List the figures that a house file's window rules can name.")
def figure_sheet(file: str | None, kind: str, house: str | None, units: str | None, *, names: bool) -> None:
    """Print the computed figures of a room: per seat, and of bass, fixings and circuits."""
    from roomlint.report.figure_sheet import names_text, sheet_json, sheet_text

    if names:
        from roomlint.measure.names import NAMED

        _say(names_text(NAMED.values()))
        return
    if file is None:
        raise click.UsageError("name a room file, or ask for --names.")
    from roomlint.measure import Figures
    from roomlint.measure.sheet import sheet
    from roomlint.review.desk import Desk
    from roomlint.source.files import shown
    from roomlint.source.say import is_customary

    design, decided, problems = Desk(house=house).open_room(shown(file))
    if design is None or problems:
        for problem in sorted(problems):
            click.echo(
                f"{problem.place.file}:{problem.place.line}:{problem.place.column}: error: {problem.text}", err=True
            )
        sys.exit(USAGE)
    tables = sheet(Figures(design))
    title = f"{design.project.id}: {design.project.title or design.file}"
    units = units or decided.units or ("us" if is_customary(design.at) else "metric")
    _say(sheet_json(design.file, tables) if kind == "json" else sheet_text(title, tables, units))


@main.command()
@click.argument("kind", type=click.Choice(["room", "product", "house"]))
def schema(kind: str) -> None:
    """Print the JSON Schema of a file kind."""
    from importlib.resources import files

    _say((files("roomlint.schemas") / f"{kind}.schema.json").read_text(encoding="utf-8"))


def _say(text: str) -> None:
    """Print a report; an output that takes no more, such as a full disk, is told of in plain words."""
    try:
        click.echo(text, nl=False, color=True)
    except OSError as error:
        if error.errno == errno.EPIPE:
            raise  # the reader has seen enough; click ends quietly
        # What is still in the buffer would break once more at the end of the run.
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        raise click.UsageError(f"cannot write to the output: {error.strerror}.") from None


def _review(paths: tuple[str, ...], choices: Choices, against: str | None, jobs: int) -> Review:
    from roomlint.review.book import load_book
    from roomlint.review.session import select
    from roomlint.source.files import find_rooms

    if choices.house is not None and not Path(choices.house).is_file():
        raise click.UsageError(f"there is no house file {choices.house!r}.")
    book = load_book()
    rules, unknown = select(book, choices.only, choices.without)
    if unknown:
        raise click.UsageError(_unknown(unknown, book.ids))
    if not rules and not any(name.startswith("house") for name in choices.only):
        raise click.UsageError("no rule is left to run; --only and --without leave nothing.")
    rooms, problems, empty = find_rooms(paths)
    earlier = _earlier(against, rooms, book, choices, jobs) if against is not None else None
    found = _run(rooms, book, choices, jobs, "Reviewing")
    if earlier is not None:
        from roomlint.review.compare import compare

        found = compare(found, earlier)
    return replace(
        found,
        problems=tuple(sorted({*found.problems, *problems})),
        troubles=(*book.troubles, *found.troubles),
        unmatched=tuple(empty),
    )


def _run(rooms: list[str], book: Book, choices: Choices, jobs: int, label: str) -> Review:
    from roomlint.review.session import run

    if len(rooms) < BAR_FROM or not sys.stderr.isatty():
        return run(rooms, book, choices, jobs)
    with click.progressbar(length=len(rooms), label=label, file=sys.stderr) as bar:
        return run(rooms, book, choices, jobs, lambda: bar.update(1))


def _earlier(against: str, rooms: list[str], book: Book, choices: Choices, jobs: int) -> Earlier:
    from roomlint.review.compare import NotOursError, earlier_of, read_sarif
    from roomlint.source.revision import Revision, RevisionError

    try:
        if against.endswith((".sarif", ".sarif.json")):
            return read_sarif(against)
        there = Revision(against)
    except (NotOursError, RevisionError) as error:
        raise click.UsageError(f"--against: {error}") from None
    then = [room for room in rooms if there.is_file(room)]
    return earlier_of(_run(then, book, replace(choices, revision=there.commit), jobs, "Reviewing then"), against)


def _unknown(names: list[str], ids: tuple[str, ...]) -> str:
    from roomlint.design.reader import nearest

    known = {*ids, *(rule_id.partition(".")[0] for rule_id in ids)}
    return " ".join(f"{name!r} is neither a rule nor a chapter; {nearest(name, known)}" for name in names)


LOOKS = {
    "heading": {"bold": True},
    "error": {"fg": "red", "bold": True},
    "warning": {"fg": "yellow"},
    "note": {"fg": "cyan"},
    "review": {"fg": "magenta"},
    "quiet": {"dim": True},
}
"""Role of a text to how a terminal shows it."""


def _for_the_output(wishes: Wishes) -> Wishes:
    """Return what is wished for as the output bears it: as wide as a terminal, and coloured only on one."""
    from shutil import get_terminal_size

    from roomlint.report import width_of

    is_terminal = sys.stdout.isatty()
    columns = get_terminal_size((0, 0)).columns if is_terminal or os.environ.get("COLUMNS") else None
    coloured = is_terminal or os.environ.get("FORCE_COLOR", "") not in {"", "0"}
    if os.environ.get("NO_COLOR") or not coloured:
        return replace(wishes, width=width_of(columns))
    return replace(wishes, width=width_of(columns), paint=_painted)


def _painted(text: str, role: str) -> str:
    look = LOOKS.get(role)
    return click.style(text, **look) if look is not None else text  # type: ignore[arg-type]
