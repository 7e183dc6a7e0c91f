"""A figure: a computed quantity with its unit, its uncertainty and the inputs that it came from."""

from __future__ import annotations

import math
from dataclasses import dataclass, replace
from decimal import Decimal
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Callable

    from roomlint.design.base import Value


@dataclass(frozen=True, slots=True)
class Share:
    """How much of a figure's uncertainty one input brings."""

    input: Value
    u: float
    """In the figure's unit."""


@dataclass(frozen=True, slots=True)
class Figure:
    """A computed quantity.

    `u` is the expanded uncertainty, in the figure's own unit; `shares` tells which inputs bring it, largest
    first; `inputs` are the values of the design that it was computed from.
    """

    name: str
    value: float
    unit: str
    u: float = 0.0
    words: str = ""
    """The value in words where a number alone is ambiguous, such as `26.0 deg left`."""
    inputs: tuple[Value, ...] = ()
    shares: tuple[Share, ...] = ()
    assumes: tuple[str, ...] = ()
    """Assumptions that a reader must know, in plain words."""

    def magnitude(self, name: str | None = None) -> Figure:
        """Return the figure without its sign."""
        return replace(self, name=name or self.name, value=abs(self.value))

    def shifted(self, name: str, by: float) -> Figure:
        """Return the figure with a constant added."""
        return replace(self, name=name, value=self.value + by, words="")

    def named(self, name: str, words: str = "") -> Figure:
        """Return the figure under another name."""
        return replace(self, name=name, words=words)

    def __str__(self) -> str:
        """Return value, uncertainty and unit as a message shows them."""
        if self.words:
            return self.words
        text = number(self.value, self.unit)
        if self.u > 0 and self.unit == "m":
            # An uncertainty of a length is told as an installer would: in millimetres.
            return f"{text} m ± {self.u * 1000:.0f} mm"
        if self.u > 0:
            text += f" ± {spread(self.u, self.unit)}"
        return f"{text} {self.unit}".rstrip()


DECIMALS = {
    "deg": 1,
    "m": 2,
    "mm": 0,
    "ms": 2,
    "dB": 1,
    "Hz": 1,
    "%": 1,
    "N": 0,
    "A": 1,
    "V": 1,
    "VA": 0,
    "W": 0,
    "": 2,
}
"""How many decimals a message shows; more would claim more than the trade measures."""
NOTHING = 1e-9
"""Below this a figure of any unit is what is left of rounding in floating point, and is shown as zero."""


def number(value: float, unit: str) -> str:
    """Return a value with the decimals that its unit is shown with, and never a negative zero."""
    decimals = DECIMALS.get(unit, 2)
    text = f"{value:.{decimals}f}"
    if float(text) == 0 and abs(value) > NOTHING:
        # A small figure must not read as nothing.
        text = two_digits(value)
    return text.removeprefix("-") if float(text) == 0 else text


def two_digits(value: float) -> str:
    """Return a value to two significant digits, never as a power of ten."""
    return format(Decimal(f"{value:.1e}"), "f")


def spread(u: float, unit: str) -> str:
    """Return an uncertainty with the decimals of its figure, or one significant digit where those show nothing."""
    return f"{u:.1g}" if u < 10.0 ** -DECIMALS.get(unit, 2) else number(u, unit)


def figure(
    name: str,
    unit: str,
    compute: Callable[..., float],
    *inputs: Value,
    words: Callable[[float], str] | None = None,
    assumes: tuple[str, ...] = (),
) -> Figure:
    """Compute a figure from values and carry their uncertainties to first order.

    Each input is moved up and down by its own expanded uncertainty, inputs taken as independent; the larger change is
    its share, and the shares add as root of squares (JCGM 100:2008, 5.1.2 and 5.1.3, note 2: numerical sensitivities).
    An angle that passes 180 degrees is differenced the short way round.
    """
    numbers = [value.value for value in inputs]
    result = compute(*numbers)
    shares = []
    for value, indices in _measured(inputs):
        change = _change(compute, numbers, indices, value.u, result, unit)
        if change > 0:
            shares.append(Share(value, change))
    shares.sort(key=lambda share: -share.u)
    u = math.sqrt(sum(share.u**2 for share in shares))
    text = words(result) if words is not None else ""
    if text and u > 0:
        text += f" ± {spread(u, unit)}"
    return Figure(name, result, unit, u, text, inputs, tuple(shares), assumes)


def _measured(inputs: tuple[Value, ...]) -> list[tuple[Value, list[int]]]:
    """Return each measurement that may be off with the inputs it gives: one reading moves them all at once."""
    found: dict[int, tuple[Value, list[int]]] = {}
    for index, value in enumerate(inputs):
        if value.u > 0:
            key = id(value.at) if value.at is not None else id(value)
            found.setdefault(key, (value, []))[1].append(index)
    return list(found.values())


def _change(
    compute: Callable[..., float], numbers: list[float], indices: list[int], step: float, result: float, unit: str
) -> float:
    """Return the larger of the two changes when one input moves up or down; at a kink the slope alone says nothing."""
    changes = []
    for sign in (1.0, -1.0):
        moved = list(numbers)
        for index in indices:
            moved[index] += sign * step
        try:
            change = compute(*moved) - result
        except ValueError:
            # Outside the formula's range on this side: the other side alone tells the slope.
            continue
        changes.append(abs((change + 180.0) % 360.0 - 180.0 if unit == "deg" else change))
    if not changes:
        raise ValueError("its inputs are too uncertain: the formula holds on neither side of them")
    return max(changes)
