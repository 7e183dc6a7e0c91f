"""The commands about files themselves: a new one, the keys of one, an old one made new. They print and exit too."""

from __future__ import annotations

import re
import sys
from pathlib import Path
from typing import TYPE_CHECKING, Any, Final

import click

from roomlint.cli_values import LAYOUTS, SIDES, Layout, length, length_option, opening, picture, read_by, seats, sides
from roomlint.writing import say

if TYPE_CHECKING:
    from collections.abc import Callable

    from roomlint.start.answers import Answers, Gap, Roof, Said
    from roomlint.start.places import Proposal

KINDS: Final = ("room", "product", "house")
PRODUCTS: Final = (
    "loudspeaker", "subwoofer", "amplifier", "processor", "mount", "stand", "display", "screen", "projector", "seat",
    "source", "other",
)  # fmt: skip
SHAPES: Final = ("flat", "mono-pitch", "gable", "tray", "part-sloped")
STAGES: Final = ("survey", "design", "rough-in", "handover")
_ROOM, _PRODUCT, _HOUSE = ".room.yaml", ".product.yaml", "house.yaml"


@click.command("new")
@click.argument("file", required=False, type=click.Path())
@click.option("--quick", is_flag=True, help="A file for the field: at most 40 lines, no explanations.")
@click.option("--product", type=click.Choice(PRODUCTS), help="Begin a product sheet of this kind instead of a room.")
@click.option("--house", is_flag=True, help="Begin a house file instead of a room.")
@length_option("--width", "Left wall to right wall, such as 12 ft 6 in or 4.20 m.")
@length_option("--length", "Front wall to rear wall.")
@click.option("--ceiling", type=click.Choice(SHAPES), help="Shape of the ceiling; flat unless given.")
@length_option("--height", "Height of a flat ceiling, of a gable's ridge, of a tray's raised part.")
@length_option("--low", "Height of a mono-pitch or slope at its low side, of a gable at its eaves, around a tray.")
@length_option("--high", "Height of a mono-pitch at its high side.")
@click.option("--low-side", type=click.Choice(SIDES), help="The side at which a mono-pitch is lowest.")
@click.option("--ridge", type=click.Choice(["front-to-rear", "left-to-right"]), help="Which way a gable's ridge runs.")
@click.option(
    "--low-sides", callback=read_by(sides), metavar="SIDES", help="Sides along which a part-sloped ceiling slopes down."
)
@length_option("--slope-width", "How far in plan each of those slopes reaches from its side.")
@length_option("--margin", "How broad the lower part around a tray is, the same on all sides.")
@click.option(
    "--opening", "openings", callback=read_by(opening), multiple=True, metavar="KIND,WALL,START,WIDTH",
    help="A door, glass-door, window or opening; START from the wall's left-hand end, seen from inside; repeatable.",
)  # fmt: skip
@click.option(
    "--seats", callback=read_by(seats), metavar="COUNT", help="How many seats: 3, or 3+4 for two rows from the front."
)
@length_option("--ear-from-front", "Ears of the first row from the front wall; proposed unless given.")
@click.option(
    "--layout",
    type=Layout(LAYOUTS),
    help="By its name in ITU-R BS.2051, upper + ear layer + bottom: 4+5+0 is five at ear height under four.",
)
@click.option(
    "--picture",
    callback=read_by(picture),
    metavar="PICTURE",
    help="none, or display or projection with its width, 'display 1.44 m', or its diagonal, 'display 65 in diagonal'.",
)
@click.option("--code", help="The job's code; the file's name unless given.")
@click.option("--stage", type=click.Choice(STAGES), help="How far the job is; survey for a quick file, else design.")
@click.option(
    "--units", type=click.Choice(["metric", "us"]), help="Units of the file; those of the width unless given."
)
def new(file: str | None, product: str | None, *, quick: bool, house: bool, **given: Any) -> None:  # noqa: ANN401
    """Begin a room file: loudspeakers at the layout's nominal places, marked as a proposal.

    Asks for what the options leave out when it runs at a terminal. It never writes over a file.
    """
    if (product is not None) + house + quick > 1:
        raise click.UsageError("--quick, --product and --house are three different files; give one of them.")
    if product is not None:
        _write(_named(file, _PRODUCT, "--product"), lambda name: _product_text(product, name))
    elif house:
        _write(_named(file or _HOUSE, _HOUSE, "--house"), lambda _: _house_text())
    else:
        _new_room(_named(file, _ROOM, "a room"), given, quick=quick)


def _named(file: str | None, ending: str, what: str) -> Path:
    """Return where the file goes; refuses a name that the check would not find, and one that is taken."""
    if not file:
        raise click.UsageError(f"name the file that {what} goes to, such as den{ending}.")
    path = Path(file)
    fits = path.name == ending if ending == _HOUSE else path.name.endswith((ending, ending.replace("yaml", "yml")))
    if not fits or (path.name in {ending, ending.replace("yaml", "yml")} != {_HOUSE} and path.name.startswith(".")):
        said = "is named" if ending == _HOUSE else "ends in"
        raise click.UsageError(f"{file!r} is not the name of such a file; it {said} {ending}.")
    if path.exists() or path.is_symlink():
        raise click.UsageError(f"{file} is there already; it is never written over.")
    if not path.parent.is_dir():
        raise click.UsageError(f"there is no folder {str(path.parent)!r}.")
    return path


def _stem(path: Path) -> str:
    """Return a name that a file's name gives: small letters, digits and dashes."""
    return re.sub(r"[^a-z0-9]+", "-", path.name.partition(".")[0].lower()).strip("-")[:63] or "room"


def _write(path: Path, text: Callable[[str], str]) -> None:
    content = text(_stem(path)).encode()
    try:
        with path.open("xb") as stream:
            stream.write(content)
    except FileExistsError:
        raise click.UsageError(f"{path} is there already; it is never written over.") from None
    except OSError as error:
        raise click.UsageError(f"cannot write {path}: {error.strerror}.") from None
    say(f"{path.as_posix()}: written.\n")


def _product_text(kind: str, ident: str) -> str:
    from roomlint.source.listing import listed
    from roomlint.start.sheets import product_text

    return product_text(kind, ident, listed("product"))


def _house_text() -> str:
    from roomlint.source.listing import listed
    from roomlint.start.sheets import house_text

    return house_text(listed("house"))


def _new_room(path: Path, given: dict[str, Any], *, quick: bool) -> None:
    from roomlint.start.answers import UnfitError
    from roomlint.start.places import propose
    from roomlint.start.room_file import quick_text, room_text

    answered = _answered(given)
    while True:
        try:
            answers = _answers(answered, _stem(path), quick=quick)
            proposal = propose(answers)
            break
        except UnfitError as error:
            # Who was asked is asked again, and keeps the other answers.
            name = {"opening": "openings"}.get(error.option.removeprefix("--"), error.option.removeprefix("--"))
            question = next((one for one in _QUESTIONS if one[0] == name), None)
            if answered is given or question is None:
                raise click.UsageError(f"{error.option}: {error}") from None
            click.echo(f"Error: {error}", err=True)
            answered[name.replace("-", "_")] = _ask(*question, answered)
    _write(path, lambda _: quick_text(answers, proposal) if quick else room_text(answers, proposal, path.name))
    say(_told(proposal, path))


def _told(proposal: Proposal, path: Path) -> str:
    """Say what was proposed, what was moved and what found no place."""
    count = sum(one.spot is not None for one in proposal.placed)
    lines = [f"{count} of {len(proposal.placed)} loudspeakers and subwoofers have a proposed place."]
    lines += [f"  {one.name} ({one.label}): {one.moved}." for one in proposal.placed if one.moved]
    lines += [f"  {one.name} ({one.label}) has none: {one.why_not}." for one in proposal.placed if one.spot is None]
    lines.append(f"Correct what is marked proposal, then: roomlint check {path.as_posix()}")
    return "\n".join(lines) + "\n"


def _missing(given: dict[str, Any]) -> list[str]:
    """Return the options that a room cannot do without, in the order in which they are asked."""
    from roomlint.start.answers import NEEDS

    needed = ("width", "length", *NEEDS[given["ceiling"] or "flat"], "seats", "layout")
    return [name for name in needed if given[name.replace("-", "_")] is None]


def _answered(given: dict[str, Any]) -> dict[str, Any]:
    """Return the answers complete: asked for at a terminal, refused elsewhere."""
    missing = _missing(given)
    if not missing:
        return given
    if not sys.stdin.isatty():
        listed = ", ".join(f"--{name}" for name in missing)
        raise click.UsageError(f"a room needs {listed} too; at a terminal they are asked for.")
    asked = dict(given)
    for name, question, kind, default in _QUESTIONS:
        needed = _missing(asked)
        optional = {"ceiling", "openings", "picture"}
        if (name in needed) or (name in optional and not given[name]):
            asked[name.replace("-", "_")] = _ask(name, question, kind, default, asked)
    return asked


def _ask(name: str, question: str, kind: Any, default: str | None, known: dict[str, Any]) -> Any:  # noqa: ANN401
    """Return the answer to a question, in the type that its option has."""
    question = _HEIGHTS.get((known["ceiling"] or "flat", name), question)
    if kind is length:
        return click.prompt(question, value_proc=lambda text: length(text, known["width"]), default=default)
    if isinstance(kind, click.Choice):
        return click.prompt(question, type=kind, default=default)
    if name != "openings":
        return click.prompt(question, value_proc=kind, default=default)
    found: list[Gap] = []
    while True:
        said = click.prompt(question, default="none", show_default=not found)
        if said.strip() in {"none", ""}:
            return tuple(found)
        try:
            found.append(opening(said))
        except click.BadParameter as error:
            click.echo(f"Error: {error.message}", err=True)


_HEIGHTS: Final = {
    ("flat", "height"): "Height of the ceiling",
    ("gable", "height"): "Height of the ridge",
    ("gable", "low"): "Height at the eaves",
    ("mono-pitch", "low"): "Height at the low side",
    ("tray", "low"): "Height around the raised part",
    ("tray", "height"): "Height of the raised part",
    ("part-sloped", "low"): "Height at the low sides",
    ("part-sloped", "height"): "Height of the flat part",
}
_QUESTIONS: Final[tuple[tuple[str, str, Any, str | None], ...]] = (
    ("width", "Width of the room, left wall to right wall, such as 12 ft 6 in or 4.20 m", length, None),
    ("length", "Length, front wall to rear wall", length, None),
    ("ceiling", "Shape of the ceiling", click.Choice(SHAPES), "flat"),
    ("low", "Height at the low side or the eaves", length, None),
    ("height", "Height of the ceiling, or of the ridge", length, None),
    ("high", "Height at the high side", length, None),
    ("low-side", "The low side", click.Choice(SIDES), None),
    ("ridge", "Which way the ridge runs", click.Choice(["front-to-rear", "left-to-right"]), None),
    ("low-sides", "Sides along which it slopes down, such as left,right", sides, None),
    ("slope-width", "How far in plan each slope reaches from its side", length, None),
    ("margin", "How broad the lower part around the raised one is", length, None),
    ("openings", "A door or window as kind, wall, start from the wall's left-hand end, width; or none", None, None),
    ("seats", "How many seats; 3+4 for two rows from the front", seats, "3"),
    (
        "layout",
        "Layout by ITU-R BS.2051, upper + ear layer + bottom: 4+5+0 is five at ear height under four",
        Layout(LAYOUTS),
        "0+5+0",
    ),
    ("picture", "Picture: none, or such as display 57 in wide, or display 65 in diagonal", picture, "none"),
)


def _answers(given: dict[str, Any], stem: str, *, quick: bool) -> Answers:
    from roomlint.source.say import leans_customary
    from roomlint.start.answers import Answers

    width: Said = given["width"]
    units = given["units"] or ("us" if leans_customary(width.text) > 0 else "metric")
    return Answers(
        width=width,
        length=given["length"],
        roof=_roof(given),
        openings=tuple(given["openings"]),
        rows=given["seats"],
        ear_from_front=given["ear_from_front"],
        layout=given["layout"],
        picture=given["picture"] or None,
        code=given["code"] or stem,
        stage=given["stage"] or ("survey" if quick else "design"),
        us=units == "us",
    )


def _roof(given: dict[str, Any]) -> Roof:
    """Return the ceiling; an answer that its shape has no use for is refused, not dropped."""
    from roomlint.start.answers import NEEDS, Roof, UnfitError

    shape = given["ceiling"] or "flat"
    for name in ("height", "low", "high", "low-side", "ridge", "low-sides", "slope-width", "margin"):
        if given[name.replace("-", "_")] is not None and name not in NEEDS[shape]:
            raise UnfitError(f"--{name}", f"a {shape} ceiling has none; it takes {', '.join(NEEDS[shape])}.")
    return Roof(
        shape, given["height"], given["low"], given["high"], given["low_side"] or "", given["ridge"] or "",
        given["low_sides"] or (), given["slope_width"], given["margin"],
    )  # fmt: skip


@click.command()
@click.argument("kind", type=click.Choice(KINDS))
@click.argument("branch", required=False)
@click.option("--keys", is_flag=True, help="Print the tree of keys instead, one line each.")
@click.option("--units", type=click.Choice(["metric", "us"]), default="metric", help="Units of the examples.")
def schema(kind: str, branch: str | None, units: str, *, keys: bool) -> None:
    """Print the JSON Schema of a file kind, its keys, or one branch of them such as loudspeakers.mounting."""
    from importlib.resources import files

    if not keys and branch is None:
        say((files("roomlint.schemas") / f"{kind}.schema.json").read_text(encoding="utf-8"))
        return
    from roomlint.report.key_tree import branch_text, readers_of, tree_text
    from roomlint.review.inputs import kept
    from roomlint.source.listing import listed
    from roomlint.terminal import wrapped

    found = list(listed(kind))
    read = readers_of(kind, kept())
    if branch is not None:
        wanted = branch.replace("[]", "")
        bare = {key: key.path.replace("[]", "") for key in found}
        chosen = [key for key in found if bare[key] == wanted or bare[key].startswith(f"{wanted}.")]
        if not chosen:
            raise click.UsageError(f"{kind} files have no key {branch!r}; {_near(wanted, set(bare.values()))}")
        found = chosen
    customary = units == "us"
    text = tree_text(found, read, customary=customary) if keys else branch_text(found, read, customary=customary)
    say(wrapped(text))


def _near(wanted: str, known: set[str]) -> str:
    """Return a hint: the same key elsewhere, or the one most like it."""
    from roomlint.source.say import nearest

    last = wanted.rpartition(".")[2]
    same = sorted((path for path in known if path.rpartition(".")[2] == last), key=lambda path: (path.count("."), path))
    if "." not in wanted and (close := nearest(wanted, {path for path in known if "." not in path})):
        return f"did you mean {close!r}?"
    if same:
        return f"there is {', '.join(same[:4])}{' ...' if len(same) > 4 else ''}."  # noqa: PLR2004  a line's worth
    close = nearest(wanted, known)
    return f"did you mean {close!r}?" if close else "see --keys."
