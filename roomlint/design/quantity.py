"""Quantities of a design: numbers that know which readings they rest on, and how much each moves them."""

from __future__ import annotations

import math
from dataclasses import dataclass, field
from enum import StrEnum
from typing import TYPE_CHECKING, Self

if TYPE_CHECKING:
    from collections.abc import Callable

    from roomlint.source.node import Node


class Origin(StrEnum):
    """How a reading came to be."""

    FILE = "file"
    """Written in the room file: measured on site, or chosen at the drawing board."""
    SHEET = "sheet"
    """Looked up in a product sheet."""
    ASSUMED = "assumed"
    """Said by nobody: a default of the trade, which every finding that rests on it tells."""


class Assumption(str):
    """What is assumed, in plain words; its amounts are kept beside them, for a reader of other units."""

    __slots__ = ("amounts", "form")
    amounts: tuple[tuple[float, str], ...]
    form: str

    def __new__(cls, form: str, *amounts: tuple[float, str]) -> Self:
        """Take words with `{}` for each amount, a number and its unit."""
        told = (f"{value:.2f} {unit}" if unit == "m" else f"{value:.0f} {unit}" for value, unit in amounts)
        made = super().__new__(cls, form.format(*told))
        made.form, made.amounts = form, amounts
        return made

    def __reduce__(self) -> tuple[type[Assumption], tuple[object, ...]]:
        """Go to another process as what it was made of."""
        return type(self), (self.form, *self.amounts)


@dataclass(frozen=True, slots=True, eq=False)
class Reading:
    """One value that somebody measured, chose or looked up, or that is assumed.

    Two quantities that rest on one reading move together: it is one and the same object in both (JCGM 100:2008, 5.2).
    """

    value: float
    u: float
    """Expanded uncertainty, in the reading's unit."""
    unit: str
    origin: Origin = Origin.FILE
    at: Node | None = field(default=None, repr=False)
    words: str = ""
    """What is assumed, in plain words; only of an assumption."""


@dataclass(frozen=True, slots=True)
class Share:
    """How one reading moves a quantity: by `slope` units for each unit of the reading."""

    reading: Reading
    slope: float

    @property
    def change(self) -> float:
        """How far the reading's uncertainty moves the quantity, with its sign."""
        return self.slope * self.reading.u


@dataclass(frozen=True, slots=True)
class Quantity:
    """A number in SI (angles in degrees, levels in dB, temperature in degC) and the readings that it rests on.

    What a design holds is linear in its readings: a length as it was written, or the room's width less a length that
    was measured from the right. Where it is not, as a height under a slope, the shares are its slopes where it was read
    and `compute` gives it anew elsewhere. What rules ask for is a `Figure`.
    """

    value: float
    unit: str = ""
    shares: tuple[Share, ...] = field(default=(), compare=False, repr=False)
    compute: Callable[[Callable[[Quantity], float]], float] | None = field(default=None, compare=False, repr=False)
    """Of one that was worked out of others (`derived`): how, given something that gives each of them its number."""

    @property
    def u(self) -> float:
        """Expanded uncertainty: the shares of different readings are independent (JCGM 100:2008, 5.1.2)."""
        return math.hypot(*(share.change for share in self.shares))

    @property
    def at(self) -> Node | None:
        """The text that it was written as, when there is one."""
        return next((share.reading.at for share in self.shares if share.reading.at is not None), None)

    def __add__(self, other: Quantity) -> Quantity:
        """Return the sum; what both rest on adds up once."""
        return Quantity(self.value + other.value, self.unit, _merged(self.shares, other.shares, 1.0))

    def __sub__(self, other: Quantity) -> Quantity:
        """Return the difference; what both rest on cancels."""
        return Quantity(self.value - other.value, self.unit, _merged(self.shares, other.shares, -1.0))

    def __mul__(self, factor: float) -> Quantity:
        """Return the quantity times a plain number."""
        return self.scaled(factor, self.unit)

    def scaled(self, factor: float, unit: str) -> Quantity:
        """Return the quantity times a plain number, in another unit."""
        shares = tuple(Share(share.reading, share.slope * factor) for share in self.shares)
        return Quantity(self.value * factor, unit, shares)


def exact(value: float, unit: str = "") -> Quantity:
    """Return a number that nobody read and nothing can move, such as the floor's height."""
    return Quantity(value, unit)


def read(value: float, u: float, unit: str, at: Node | None, origin: Origin = Origin.FILE) -> Quantity:
    """Return a value as it was read from a file."""
    return Quantity(value, unit, (Share(Reading(value, u, unit, origin, at), 1.0),))


def assumed(value: float, u: float, unit: str, words: str) -> Quantity:
    """Return a value that is assumed: whatever rests on it tells so, in these words."""
    return Quantity(value, unit, (Share(Reading(value, u, unit, Origin.ASSUMED, None, words), 1.0),))


def _merged(these: tuple[Share, ...], those: tuple[Share, ...], sign: float) -> tuple[Share, ...]:
    slopes = {share.reading: share.slope for share in these}
    for share in those:
        slopes[share.reading] = slopes.get(share.reading, 0.0) + sign * share.slope
    # The one that is written comes first: it is where the quantity stands in the file.
    return tuple(Share(reading, slope) for reading, slope in slopes.items())
