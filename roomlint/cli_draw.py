"""The command that draws a room. It prints and exits too."""

from __future__ import annotations

import sys
from contextlib import redirect_stdout
from importlib.util import find_spec
from pathlib import Path
from typing import TYPE_CHECKING, Final

import click

from roomlint.cli_review import few_collections, refuse_empty, reviewed
from roomlint.source.say import one_line
from roomlint.writing import Outputs, say

if TYPE_CHECKING:
    from datetime import date

FORMS: Final = {"html": ("jinja2",), "svg": (), "pdf": ("reportlab",), "dxf": ("ezdxf",)}
"""Each form with what it takes beyond the program's own packages."""
PAPERS: Final = ("a3", "a4", "tabloid", "letter")
_FAILS: Final = frozenset({2, 3, 4})
"""Exit statuses of a review that cannot be drawn whole: unreadable, nothing there, not complete."""


def need_extra(form: str) -> None:
    """Refuse a form whose packages are not installed, and say how they are."""
    missing = [name for name in FORMS[form] if find_spec(name) is None]
    if missing:
        raise click.UsageError(
            f"drawing {form} needs {', '.join(missing)}, which is not installed: pip install 'roomlint[draw]'."
        )


def _form(kind: str | None, to: str | None) -> str:
    """Return the form that is asked for, by its name or by the ending of the file."""
    ending = Path(to).suffix.removeprefix(".").lower() if to is not None else ""
    if kind is not None:
        return kind
    if ending and ending not in FORMS:
        raise click.UsageError(f"{to!r} ends in no form of a drawing; say --format {', '.join(FORMS)}.")
    return ending or "html"


def _stem(file: str) -> str:
    """Return what a drawing of a room file is called when nobody says."""
    name = Path(file).name
    return next((name.removesuffix(end) for end in (".room.yaml", ".room.yml") if name.endswith(end)), name)


@click.command("draw")
@click.argument("file", type=click.Path())
@click.option("--format", "kind", type=click.Choice(tuple(FORMS)), help="The form; else the ending of --to, or html.")
@click.option("--to", metavar="FILE", help="Where to; else here, named after the room file.")
@click.option("--paper", type=click.Choice(PAPERS), help="A3 or tabloid, by the units, unless given.")
@click.option("--units", type=click.Choice(["metric", "us"]), help="Units instead of those of the file.")
@click.option("--house", type=click.Path(), help="Use this house file instead of the nearest one.")
@click.option("--against", metavar="REV", help="Show where things were in a git revision.")
@click.option("--today", metavar="DATE", help="The day that waivers are held against, instead of the clock's.")
@click.pass_context
def draw(  # noqa: PLR0917  one parameter an option
    ctx: click.Context, file: str, kind: str | None, to: str | None, paper: str | None, units: str | None,
    house: str | None, against: str | None, today: str | None,
) -> None:  # fmt: skip
    """Draw a room: plan, sections, ceiling plan, curves and findings, to a true scale.

    Needs the packages of roomlint[draw]. Exit status 0 whatever is found; as for check where it cannot be drawn whole.
    """
    from roomlint.report import Wishes
    from roomlint.report import draw as drawn
    from roomlint.review.session import Choices

    few_collections()
    refuse_empty((file,))
    form = _form(kind, to)
    need_extra(form)
    target = to or f"{_stem(file)}.{form}"
    if not Path(file).is_file():
        raise click.UsageError(f"there is no room file {file!r}.")
    outputs = Outputs([target])
    with redirect_stdout(sys.stderr):  # what a rule prints must not get into a report
        choices = Choices(_day(today), house, scene=True, exact=against is not None)
        review = reviewed((file,), choices, against, 1, outputs)
    if review.exit_status in _FAILS:
        from roomlint.cli_upgrade import tell

        tell(review.problems)
        for trouble in review.troubles:
            click.echo(f"roomlint: not complete: {one_line(trouble.text)}", err=True)
    if review.rooms:
        outputs.write(target, drawn(form, review, Wishes(units or "", paper=paper or "")))
        say(f"Drawn to {one_line(target)}.\n")
    ctx.exit(review.exit_status if review.exit_status in _FAILS else 0)


def _day(text: str | None) -> date:
    from datetime import date

    from roomlint.source.day import DayError, read_day

    try:
        return read_day(text) if text is not None else date.today()  # noqa: DTZ011  a waiver's day is the local one
    except DayError as error:
        raise click.BadParameter(str(error), param_hint="--today") from None
