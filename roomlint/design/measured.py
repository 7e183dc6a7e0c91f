"""The kind of key whose value is a quantity with its unit."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any, Final, TypeVar, overload

from roomlint.design.element import ABSENT, Element, Key
from roomlint.design.keys import NONE
from roomlint.design.quantity import Quantity, read
from roomlint.source.dimensions import DIMENSIONS, SYMBOLS
from roomlint.source.dimensions import customary as in_customary
from roomlint.source.quantity import QuantityError, other_unit, parse

if TYPE_CHECKING:
    from roomlint.design.reader import Book
    from roomlint.source.node import Node

T = TypeVar("T")

LONGEST_QUANTITY: Final = 80
WIDEST_M: Final = 0.1
"""No tape in a room is off by more."""
_WIDEST = {"angle": 30.0, "level": 20.0, "temperature": 20.0}
"""The same of what can be zero without being nothing."""


class Measured(Key[T]):
    """A quantity with its unit."""

    def __init__(
        self, about: str, dimension: str, *, low: float | None = None, high: float | None = None, zero: bool = False,
        example: str = "", surveyed: bool = False, or_none: bool = False,
        **more: Any,  # noqa: ANN401  what every key takes
    ) -> None:  # fmt: skip
        """Without bounds those of the dimension hold; `zero` lets zero pass where it is the bound.

        `surveyed`: it was measured in the room, so that without an uncertainty of its own it has the survey's.
        `or_none`: the word `none` may stand in its place and states absence.
        """
        super().__init__(about, **more)
        self.dimension = dimension
        of = DIMENSIONS[dimension]
        self.of = of
        self.low = of.low if low is None else low
        self.high = of.high if high is None else high
        self.above_zero = self.low == 0.0 and not zero
        self.example = example
        self.surveyed = surveyed
        self.or_none = or_none

    def __set_name__(self, owner: type, attr: str) -> None:
        self.attr = attr
        self.name = self.name or attr.removesuffix(f"_{self.of.suffix}")

    def take(self, node: Node, book: Book, element: Element | None) -> Any:  # noqa: ANN401, ARG002
        """Return the quantity."""
        text = node.value
        if type(text) is not str or len(text) > LONGEST_QUANTITY:
            book.broken = True
            return ABSENT
        if self.or_none and text == NONE:
            return None
        try:
            measure = parse(text, self.dimension)
        except QuantityError as error:
            book.tell(node, book.told(str(error), self.of))
            return ABSENT
        value, u = measure.value, measure.u
        if not self.low <= value <= self.high or (value == 0.0 and self.above_zero):
            book.tell(node, self._out_of_range(text, value, customary=book.is_customary))
            return ABSENT
        if u and u > (limit := self._widest(value)):
            widest = _shown(limit, self.of.unit, customary=book.is_customary)
            said = f"{text!r} may be off by more than {widest}, and then it says nothing;"
            book.tell(node, f"{said} measure it, or leave it out.")
            return ABSENT
        if self.surveyed and not measure.u_given:
            u = book.tolerance_m
        return read(value, u, self.of.unit, node, book.origin)

    def says_none(self, element: Element) -> bool:
        """Whether the file states, with the word, that the element has no such thing; the key counts as read."""
        value = getattr(element, self.attr)
        node = element.at.get(self.name)
        return value is None and node is not None and node.value == NONE

    def _widest(self, value: float) -> float:
        """Return the largest uncertainty that still says something: one that is wider would silence every finding."""
        if self.surveyed:
            return WIDEST_M
        if self.dimension in _WIDEST:
            return _WIDEST[self.dimension]
        return max(abs(value), WIDEST_M if self.dimension == "length" else 0.0)

    def _out_of_range(self, text: str, value: float, *, customary: bool) -> str:
        low, high = (_shown(limit, self.of.unit, customary=customary) for limit in (self.low, self.high))
        limits = f"{low} to {high}"
        if value <= 0.0 <= self.low:
            above = f"more than zero, at most {high}" if self.above_zero and self.low == 0.0 else limits
            return f"{text!r} is out of range; expected {above}."
        meant = other_unit(text, self.dimension, self.low, self.high)
        hint = f"did you mean {meant!r}?" if meant else "Check its unit."
        return f"{text!r} is out of range; expected {limits}{';' if meant else '.'} {hint}"

    def schema(self, parts: dict[str, Any]) -> dict[str, Any]:
        """Return a string of the dimension's form."""
        from roomlint.source.written import pattern

        name = f"{self.dimension}_or_none" if self.or_none else self.dimension
        if name not in parts:
            form = pattern(self.dimension)
            parts[name] = {
                "title": self.dimension,
                "description": f"{self.of.words[0].upper()}{self.of.words[1:]} with its unit"
                + (", or none." if self.or_none else "."),
                "type": "string",
                "pattern": f"^none$|{form}" if self.or_none else form,
                "maxLength": LONGEST_QUANTITY,
                "examples": list(dict.fromkeys((self.of.example, self.of.customary))),
            }
        made: dict[str, Any] = {"$ref": f"#/$defs/{name}", "description": self.about}
        return made | ({"examples": [self.example]} if self.example else {})


def _shown(value: float, unit: str, *, customary: bool) -> str:
    """Return a limit as a message shows it, in a unit that makes it short."""
    if unit == "m2" and abs(value) < 0.01:  # noqa: PLR2004  a conductor
        return f"{value * 1e6:g} mm2"
    if customary and unit in SYMBOLS and SYMBOLS[unit].customary:
        number, symbol = in_customary(value, unit)
        if symbol == "ft" and 0 < abs(number) < 1:
            number, symbol = number * 12.0, "in"
        return f"{number:.3g} {symbol}"
    if unit in {"s", "m"} and 0 < abs(value) < 1:
        return f"{value * 1e3:g} m{unit}"
    return f"{value:g} {unit}"


@overload
def quantity(about: str, dimension: str, *, default: Quantity, low: float | None = ..., high: float | None = ...,
             zero: bool = ..., example: str = ..., key: str = ...) -> Measured[Quantity]: ...  # fmt: skip
@overload
def quantity(about: str, dimension: str, *, low: float | None = ..., high: float | None = ..., zero: bool = ...,
             example: str = ..., key: str = ..., or_none: bool = ...) -> Measured[Quantity | None]: ...  # fmt: skip
def quantity(about: str, dimension: str, **more: Any) -> Measured[Any]:
    """Declare a quantity of a dimension."""
    return Measured(about, dimension, **more)


def length(
    about: str,
    *,
    low: float | None = None,
    high: float | None = None,
    zero: bool = False,
    example: str = "",
    key: str = "",
    told: bool = False,
) -> Measured[Quantity | None]:
    """Declare a nominal size: it is exact unless it says otherwise."""
    return Measured(about, "length", low=low, high=high, zero=zero, example=example, key=key, told=told)


def surveyed(
    about: str, *, low: float | None = None, high: float | None = None, zero: bool = False, example: str = "",
    key: str = "", required: bool = False,
) -> Measured[Quantity | None]:  # fmt: skip
    """Declare a length that a tape measures in the room."""
    return Measured(
        about, "length", low=low, high=high, zero=zero, example=example, surveyed=True, key=key, required=required
    )


def angle(
    about: str, low: float = -180.0, high: float = 180.0, *, key: str = "", example: str = "", told: bool = False
) -> Measured[Quantity | None]:
    """Declare an angle."""
    return Measured(about, "angle", low=low, high=high, zero=True, key=key, example=example, told=told)
