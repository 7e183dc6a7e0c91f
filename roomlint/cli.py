"""The command line; with the other modules that begin with `cli`, the only place that prints or exits."""

from __future__ import annotations

import os
import sys
from contextlib import redirect_stdout, suppress
from dataclasses import replace
from datetime import date
from typing import TYPE_CHECKING, Any

import click

from roomlint import __version__
from roomlint.cli_draw import draw, need_extra
from roomlint.cli_files import new, schema
from roomlint.cli_review import few_collections, refuse_empty, reviewed, staged_choices, unknown
from roomlint.cli_upgrade import tell, upgrade_file
from roomlint.source.day import DayError, read_day
from roomlint.source.say import one_line
from roomlint.terminal import for_the_output, page_width, wrapped
from roomlint.writing import CannotWriteError, Outputs, say

if TYPE_CHECKING:
    from collections.abc import Iterator

    from roomlint.report import Wishes
    from roomlint.review.review import Review

for _threads in ("OPENBLAS_NUM_THREADS", "MKL_NUM_THREADS", "OMP_NUM_THREADS"):
    # The matrices here are small: several threads only wait for each other, and for those of other processes.
    os.environ.setdefault(_threads, "1")

FORMATS = ("text", "lines", "sarif", "alerts", "markdown", "annotations")
DRAWING = "drawing"
"""What is written besides the reports: a page with plan, sections, curves and findings."""
GATES = ("error", "warning", "note", "never")
USAGE = 2
NOTHING = 3
INCOMPLETE = 4
INTERRUPTED = 130
"""What a shell gives for a program that the keyboard interrupted."""
_LONGEST_FAULT = 300


class _Net(click.Group):
    """The commands over a last net: whatever nobody caught is told on one line and ends the run as not complete.

    Our own commands end through click; an exit that comes from anywhere else is a fault like any other.
    """

    def invoke(self, ctx: click.Context) -> Any:  # noqa: ANN401  what click's own returns
        try:
            return super().invoke(ctx)
        except (click.exceptions.Exit, click.ClickException, click.Abort):
            raise
        except CannotWriteError as error:
            raise click.UsageError(str(error)) from None
        except KeyboardInterrupt:
            status, told = INTERRUPTED, "interrupted; the run is not complete."
        except BaseException as error:  # noqa: BLE001  a traceback helps no reader, and ends with the status of findings
            status, told = INCOMPLETE, _fault(error)
        with suppress(OSError, ValueError):
            click.echo(f"roomlint: {told}", err=True)
        return ctx.exit(status)


def _fault(error: BaseException) -> str:
    """Say what broke and where, on one line."""
    from roomlint.review.many import ProcessEndedError  # only a fault needs it

    text = one_line(str(error))[:_LONGEST_FAULT]
    if isinstance(error, ProcessEndedError):
        return f"not complete: {text}."
    trace = error.__traceback__
    while trace is not None and trace.tb_next is not None:
        trace = trace.tb_next
    where = f" in {trace.tb_frame.f_globals.get('__name__', '?')}, line {trace.tb_lineno}" if trace is not None else ""
    name = f"{type(error).__name__}: {text}" if text else type(error).__name__
    return f"not complete: {name}{where}. This is a fault of roomlint or of a rule package; please report it."


@click.group(cls=_Net, context_settings={"help_option_names": ["-h", "--help"]})
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
        if not equals or not file or kind not in {*FORMATS, DRAWING}:
            text = f"{value!r} is not FORMAT=FILE with a format of {', '.join((*FORMATS, DRAWING))}."
            raise click.BadParameter(text, ctx=ctx, param=param)
        pairs.append((kind, file))
    return tuple(pairs)


def _day(ctx: click.Context, param: click.Parameter, value: str | None) -> date | None:
    """Read a day of the calendar."""
    try:
        return read_day(value) if value is not None else None
    except DayError as error:
        raise click.BadParameter(str(error), ctx=ctx, param=param) from None


@main.command()
@click.pass_context
@click.argument("paths", nargs=-1, type=click.Path())
@click.option("--format", "kind", type=click.Choice(FORMATS), default="text", help="How to report on the output.")
@click.option(
    "--write",
    "writes",
    multiple=True,
    callback=_writes,
    metavar="FORMAT=FILE",
    help="Also write a report, or the drawing (drawing=FILE), to a file; repeatable.",
)
@click.option("--gate", type=click.Choice(GATES), help="Lowest level that gives exit status 1; else the house decides.")
@click.option("--only", multiple=True, metavar="ID-OR-CHAPTER", help="Run only these rules; repeatable.")
@click.option("--without", multiple=True, metavar="ID-OR-CHAPTER", help="Leave these rules out; repeatable.")
@click.option("--verdicts", is_flag=True, help="Show open, passed and not applicable verdicts too.")
@click.option("--notes", is_flag=True, help="List all warnings and notes, not only what fits a page.")
@click.option("--missing", is_flag=True, help="Write out all that is missing, as blocks to paste into the files.")
@click.option("--basis", is_flag=True, help="Name the rule of each line, its source, and all its cautions.")
@click.option("--units", type=click.Choice(["metric", "us"]), help="Units instead of those of each file.")
@click.option("--house", type=click.Path(), help="Use this house file instead of the nearest one.")
@click.option(
    "--today", callback=_day, metavar="DATE", help="The day that waivers are held against, instead of the clock's."
)
@click.option(
    "--staged",
    is_flag=True,
    help="Review what git has staged instead of the files on the disk, against HEAD, and gate on what is new or worse.",
)
@click.option("--against", metavar="REV-OR-SARIF", help="Compare with a git revision, or with a SARIF file of ours.")
@click.option(
    "--gate-new/--gate-all",
    default=None,
    help="Gate only on what is new or worse, or on everything; the first needs something to compare with.",
)
@click.option(
    "--jobs",
    type=click.IntRange(1, 64),
    help="How many processes review; unless given as many as there are cores, for eight rooms each at the least.",
)
def check(  # noqa: PLR0913, PLR0917  one parameter an option
    ctx: click.Context,
    paths: tuple[str, ...],
    kind: str,
    writes: tuple[tuple[str, str], ...],
    gate: str | None,
    only: tuple[str, ...],
    without: tuple[str, ...],
    house: str | None,
    against: str | None,
    jobs: int | None,
    today: date | None,
    *,
    staged: bool,
    gate_new: bool | None,
    verdicts: bool,
    notes: bool,
    missing: bool,
    basis: bool,
    units: str | None,
) -> None:
    """Review room files; folders are searched for *.room.yaml and *.room.yml."""
    from roomlint.report import Wishes, write
    from roomlint.review.session import Choices

    few_collections()
    refuse_empty(paths)
    outputs = Outputs(file for _, file in writes)
    day = today or date.today()  # noqa: DTZ011  a waiver's day is the local one
    draws = any(other == DRAWING for other, _ in writes)
    if draws:
        need_extra("html")
    choices = Choices(day, house, gate, only, without, scene=draws)
    if staged:
        choices, against = staged_choices(choices, against)
    elif gate_new and against is None:
        raise click.UsageError("--gate-new needs --against: say what is compared with.")
    newly = against is not None and (staged if gate_new is None else gate_new)
    exact = verdicts or bool(writes) or against is not None or kind == "sarif"
    with redirect_stdout(sys.stderr):  # what a rule prints must not get into a report
        found = reviewed(paths or (".",), replace(choices, gate_new=newly, exact=exact), against, jobs, outputs)
    wishes = Wishes(units or "", verdicts=verdicts, notes=notes, missing=missing, basis=basis)
    for other, file in writes:
        outputs.write(file, _written(other, found, replace(wishes, verdicts=True)))
    wishes, coloured = for_the_output(wishes)
    say(write(kind, found, wishes), kind, coloured=coloured)
    status = found.exit_status
    # A repository whose rooms are all still to come, or gone, is no mistake of the commit that is reviewed.
    ctx.exit(0 if staged and not paths and status == NOTHING and not found.troubles else status)


@main.command("rules")
@click.argument("name", required=False, metavar="[ID-OR-CHAPTER]")
@click.option("--format", "kind", type=click.Choice(["text", "json", "markdown"]), default="text", help="How to print.")
@click.option("--house", type=click.Path(), help="Show the windows and levels that this house file sets.")
@click.option("--clause", metavar="TEXT", help="Only rules whose basis cites this document or clause.")
@click.pass_context
def rule_book(ctx: click.Context, name: str | None, kind: str, house: str | None, clause: str | None) -> None:
    """Print the rule book: a list, or one rule's page."""
    from roomlint.report.rule_pages import rule_text, rules_json, rules_markdown, rules_text
    from roomlint.review.book import load_book
    from roomlint.review.desk import Desk
    from roomlint.review.session import Reviewer, citing, select

    book = load_book()
    decided, problems = Desk(rules=book.rules, today=date.today()).open_house(house)  # noqa: DTZ011  the local day
    if problems:
        tell(problems)
        ctx.exit(USAGE)
    book = replace(book, rules=(*book.rules, *Reviewer.of_house(decided)))
    chosen, strange = select(book, (name,) if name else (), ())
    if strange or not chosen:
        raise click.UsageError(unknown(strange or [str(name)], book.ids))
    if clause is not None:
        chosen = citing(chosen, clause)
        if not chosen:
            raise click.UsageError(f"no rule cites {clause!r}.")
    if kind == "json":
        say(rules_json(chosen) + "\n", kind)
    elif kind == "markdown":
        say(rules_markdown(chosen, decided))
    elif name in book.ids:
        say(wrapped(rule_text(chosen[0], decided)))
    else:
        say(rules_text(chosen))
    for trouble in book.troubles:
        click.echo(one_line(trouble.text), err=True)
    ctx.exit(INCOMPLETE if book.troubles else 0)


@main.command("figures")
@click.argument("file", required=False, type=click.Path())
@click.option("--format", "kind", type=click.Choice(["text", "json"]), default="text", help="How to print.")
@click.option("--house", type=click.Path(), help="Use this house file instead of the nearest one.")
@click.option("--units", type=click.Choice(["metric", "us"]), help="Units instead of those of the file.")
@click.option("--names", is_flag=True, help="List the figures that a house file's window rules can name.")
@click.pass_context
def figure_sheet(
    ctx: click.Context, file: str | None, kind: str, house: str | None, units: str | None, *, names: bool
) -> None:
    """Print the computed figures of a room: per seat, and of bass, fixings and circuits."""
    from roomlint.report.figure_sheet import names_text, sheet_json, sheet_text

    if names:
        from roomlint.measure.names import NAMED

        say(names_text(NAMED.values()))
        return
    if file is None:
        raise click.UsageError("name a room file, or ask for --names.")
    refuse_empty((file,))
    from roomlint.measure import Figures
    from roomlint.measure.sheet import sheet
    from roomlint.review.desk import Desk
    from roomlint.source.files import shown
    from roomlint.source.say import is_customary

    design, decided, problems = Desk(house=house).open_room(shown(file))
    tell(problems)
    if design is None:
        ctx.exit(USAGE)
    tables = sheet(Figures(design))
    title = one_line(f"{design.project.id}: {design.project.title or design.file}")
    units = units or decided.units or ("us" if is_customary(design.at) else "metric")
    say(sheet_json(design.file, tables) if kind == "json" else sheet_text(title, tables, units, page_width()), kind)
    if problems:  # of a sheet that this room does not need
        ctx.exit(USAGE)


def _written(kind: str, found: Review, wishes: Wishes) -> Iterator[str | bytes]:
    """Return a report as it is written to a file."""
    from roomlint.report import draw as drawn
    from roomlint.report import write

    return drawn("html", found, wishes) if kind == DRAWING else write(kind, found, wishes)


main.add_command(draw)
main.add_command(new)
main.add_command(schema)
main.add_command(upgrade_file)
