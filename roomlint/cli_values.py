"""What the options of a command hold: each text as it is written, read into what it means. Refusals teach."""

from __future__ import annotations

import math
import re
from typing import TYPE_CHECKING, Any, Final

import click

if TYPE_CHECKING:
    from collections.abc import Callable

    from roomlint.start.answers import Gap, Said

    Choice = click.Choice[str]
else:
    Choice = click.Choice  # takes no type before click 8.2

LAYOUTS: Final = ("0+2+0", "0+5+0", "2+5+0", "4+5+0", "4+5+1", "3+7+0", "4+9+0", "9+10+3", "0+7+0", "4+7+0")
SIDES: Final = ("left", "right", "front", "rear")
_WIDTH_OF_DIAGONAL: Final = 16.0 / math.hypot(16.0, 9.0)


class Layout(Choice):
    """The layouts of the standard; other names are answered with the one that is meant."""

    def convert(self, value: str, param: click.Parameter | None, ctx: click.Context | None) -> str:
        """Return a layout's name as the standard writes it, or refuse it."""
        from roomlint.source.spellings import right_layout

        meant = right_layout(str(value)) or str(value)
        if value not in LAYOUTS and meant in LAYOUTS:
            self.fail(f"{value!r} is {meant} here: upper + ear layer + bottom, LFE not counted.", param, ctx)
        if value not in LAYOUTS and re.fullmatch(r"[0-9]{1,2}(\+[0-9]{1,2}){2}", meant):
            said = f"{meant} is no layout of the standard; begin with the nearest of {', '.join(LAYOUTS)}"
            self.fail(f"{said}, then change its name and add or drop loudspeakers in the file.", param, ctx)
        return super().convert(value, param, ctx)


def length(text: str, width: Said | None = None) -> Said:
    """Return a length as it was written, and in metres; a slip is answered in the units of the width, once known."""
    from roomlint.source.dimensions import DIMENSIONS
    from roomlint.source.quantity import QuantityError, parse
    from roomlint.source.say import leans_customary
    from roomlint.start.answers import Said

    try:
        return Said(" ".join(text.split()), parse(text, "length").value)
    except QuantityError as error:
        told, known = str(error), DIMENSIONS["length"]
        if width is not None and leans_customary(width.text) > 0:
            told = told.replace(repr(known.example), repr(known.customary))
        raise click.BadParameter(told) from None


def seats(text: str) -> tuple[int, ...]:
    """Return how many seats each row has, from the front: `3`, or `3+4`."""
    if re.fullmatch(r" *[0-9]{1,2}( *\+ *[0-9]{1,2})* *", text) is None:
        raise click.BadParameter(f"{text!r} is no number of seats; write 3, or 3+4 for two rows.")
    return tuple(int(count) for count in text.split("+"))


def sides(text: str) -> tuple[str, ...]:
    """Return sides of a room, each once: `left,right`."""
    found = tuple(dict.fromkeys(part.strip() for part in text.split(",")))
    if any(side not in SIDES for side in found):
        raise click.BadParameter(
            f"{text!r} is no list of sides; write some of {', '.join(SIDES)}, with commas between."
        )
    return found


def opening(text: str) -> Gap:
    """Return an opening: its kind, its wall, where it begins and how wide it is."""
    from roomlint.start.answers import OPENINGS, Gap

    parts = [part.strip() for part in text.split(",")]
    if len(parts) != len(Gap.__slots__) or parts[0] not in OPENINGS or parts[1] not in SIDES:
        raise click.BadParameter(
            f"{text!r} is no opening; write its kind ({', '.join(OPENINGS)}), its wall ({', '.join(SIDES)}), how"
            " far from the wall's left-hand end it begins, seen from inside, and its width, with commas between."
        )
    return Gap(parts[0], parts[1], length(parts[2]), length(parts[3]))


def picture(text: str) -> tuple[str, Said] | str:
    """Return what the picture is and how wide; an empty text for none. A diagonal is taken as that of 16 by 9."""
    from roomlint.source.say import leans_customary
    from roomlint.start.answers import Said
    from roomlint.start.lengths import written

    if text.strip() == "none":
        return ""
    kind, _, size = text.strip().partition(" ")
    number, diagonal, _ = size.partition("diagonal")
    if kind not in {"display", "projection"} or not number.strip():
        hint = "write none, or display or projection and its width, or 'display 65 in diagonal'."
        raise click.BadParameter(f"{text!r} is no picture; {hint}")
    said = length(number)
    if not diagonal:
        return kind, said
    width_m = said.m * _WIDTH_OF_DIAGONAL
    return kind, Said(written(width_m, us=leans_customary(said.text) > 0), width_m)


def read_by(read: Callable[[str], Any]) -> Callable[[click.Context, click.Parameter, Any], Any]:
    """Return what reads an option, one value or several."""

    def callback(ctx: click.Context, param: click.Parameter, value: Any) -> Any:  # noqa: ANN401  what click hands over
        try:
            if isinstance(value, tuple):
                return tuple(read(one) for one in value)
            return read(value) if value is not None else None
        except click.BadParameter as error:
            error.ctx, error.param = ctx, param
            raise

    return callback


def length_option(name: str, about: str) -> Callable[[Any], Any]:
    """Return an option that takes a length."""
    return click.option(name, callback=read_by(length), metavar="LENGTH", help=about)
