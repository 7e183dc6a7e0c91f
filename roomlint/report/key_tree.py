"""The keys of a file kind as text, one line each: what belongs there, an example, and which chapters read it."""

from __future__ import annotations

import re
from dataclasses import dataclass, field
from typing import TYPE_CHECKING, Final

from roomlint.report.units import Units
from roomlint.source.dimensions import DIMENSIONS
from roomlint.source.quantity import parse
from roomlint.source.say import leans_customary

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator, Mapping, Sequence

    from roomlint.source.listing import Listed

_NOBODY: Final[frozenset[str]] = frozenset()
_FIXING: Final = ".mounting.fixing."
_INLINE: Final = re.compile(r"\.(product|mounting\.stand)\.")
"""Below which keys a room file may hold a product sheet."""
_SHEET: Final = "product "
"""What the record writes before the keys of product sheets."""
_WIDEST_FORM: Final = 34
_WIDEST_EXAMPLE: Final = 26
_IN_OTHER_UNITS: Final = frozenset({"length", "mass", "temperature"})
"""Dimensions that a tape, a scale and a thermometer of the United States show in other units."""
_THINNEST_M: Final = 0.005
"""What is thinner is sheet, which no fraction of an inch tells."""


@dataclass(frozen=True, slots=True)
class Readers:
    """Which chapters read each key, by its way without the marks of lists: itself, and something below it."""

    own: Mapping[str, frozenset[str]] = field(default_factory=dict)
    below: Mapping[str, frozenset[str]] = field(default_factory=dict)
    sheets: Readers | None = None
    """Those of product sheets, which a room may hold inline."""

    def of(self, path: str) -> frozenset[str]:
        """Return the chapters that read a key.

        A rule that reads a position reads its coordinates; a mapping is read by whatever reads something below it. Who
        finds that a list is empty reads none of its keys: only what is never read in parts is read with its whole.
        """
        bare = path.replace("[]", "")
        inline = _INLINE.search(bare)
        if inline is not None and self.sheets is not None:
            return self.sheets.of(bare[inline.end() :])  # who looks at which sheet it is has read nothing in it
        found = self.own.get(bare, _NOBODY) | self.below.get(bare, _NOBODY) | self.own.get(_alike(bare), _NOBODY)
        for whole in _wholes(bare):
            if whole not in self.below:
                found |= self.own.get(whole, _NOBODY)
        return found


def readers_of(kind: str, inputs: Mapping[str, Sequence[str]]) -> Readers:
    """Return who reads the keys of a kind of file, from the record of what each rule looks at."""
    own: dict[str, set[str]] = {}
    below: dict[str, set[str]] = {}
    for rule, keys in inputs.items():
        chapter = rule.partition(".")[0]
        for key in keys:
            of_sheet = key.startswith(_SHEET)
            if of_sheet == (kind == "product"):
                bare = key.removeprefix(_SHEET).replace("[]", "")
                for same in {bare, _alike(bare)}:
                    own.setdefault(same, set()).add(chapter)
                for whole in _wholes(bare):
                    below.setdefault(whole, set()).add(chapter)
    return Readers(_frozen(own), _frozen(below), readers_of("product", inputs) if kind == "room" else None)


def _alike(path: str) -> str:
    """Return the way to a key of the fasteners without whose they are: all are judged alike."""
    _, fixing, key = path.partition(_FIXING)
    return f"{fixing}{key}" if fixing else path


def _frozen(found: Mapping[str, set[str]]) -> Mapping[str, frozenset[str]]:
    return {key: frozenset(chapters) for key, chapters in found.items()}


def _wholes(path: str) -> Iterator[str]:
    while "." in path:
        path = path.rpartition(".")[0]
        yield path


def tree_text(keys: Iterable[Listed], read: Readers, *, customary: bool = False) -> str:
    """Return the tree of keys; `customary`: examples in the units of the United States.

    A star marks what its mapping cannot do without, `[]` a list.
    """
    rows = [_row(key, read, customary=customary) for key in keys]
    widths = [max((len(row[column]) for row in rows), default=0) for column in range(3)]
    lines = (
        "  ".join((*(cell.ljust(width) for cell, width in zip(row, widths, strict=False)), row[3])) for row in rows
    )
    return "".join(f"{line.rstrip()}\n" for line in lines)


def _row(key: Listed, read: Readers, *, customary: bool) -> tuple[str, str, str, str]:
    depth = key.path.count(".")
    name = key.path.rpartition(".")[2]
    many = "[]" if key.form.startswith("list") else ""
    star = "*" if key.required else ""
    example = _example(key, customary=customary)
    form = (
        key.form if len(key.form) <= _WIDEST_FORM else f"one of {len(key.choices)} words" if key.choices else key.form
    )
    shown = example if len(example) <= _WIDEST_EXAMPLE else f"{example[: _WIDEST_EXAMPLE - 1]}…"
    return (f"{'  ' * depth}{name}{many}{star}", "" if key.holds else form, shown, ", ".join(sorted(read.of(key.path))))


def _example(key: Listed, *, customary: bool) -> str:
    """Return a key's example in the units asked for."""
    example, dimension = key.example, DIMENSIONS.get(key.dimension)
    if not customary or dimension is None:
        return example
    if example == dimension.example:
        return dimension.customary
    if key.dimension not in _IN_OTHER_UNITS or leans_customary(example) >= 0:
        return example
    measure = parse(example, key.dimension)
    is_sheet = key.dimension == "length" and abs(measure.value) < _THINNEST_M
    return example if measure.u_given or is_sheet else Units("us").number(measure.value, dimension.unit)


def branch_text(keys: Sequence[Listed], read: Readers, *, customary: bool = False) -> str:
    """Return one branch: what its first key is, then every key below it with its words and its choices."""
    top, *below = keys
    lines = [f"{top.path}: {top.about}", ""]
    for key in below or [top]:
        name = key.path.removeprefix(top.path).lstrip("[].") or key.path
        must = " (needed)" if key.required else ""
        lines.append(f"{name}{must}: {key.about}")
        example = _example(key, customary=customary)
        form = "" if key.holds else key.form
        such = f", such as {example}" if example and not key.choices else ""
        by = ", ".join(sorted(read.of(key.path)))
        parts = [part for part in (f"{form}{such}", f"read by {by}" if by else "") if part]
        lines += [f"    {part}" for part in parts]
    return "\n".join(lines) + "\n"
