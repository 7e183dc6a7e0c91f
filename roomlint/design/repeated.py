"""One entry of a file that stands for several elements: two mirrored loudspeakers, a row of seats.

Each is an element of its own, with its own id, and all of them stand at the lines of the entry. What they share is one
reading: a distance that is off is off for both of a pair.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Any, TypeVar

from roomlint.design.element import RESTS, WAITING, Element
from roomlint.design.parts import Several
from roomlint.design.products import Product

if TYPE_CHECKING:
    from collections.abc import Callable

    from roomlint.design.reader import Book
    from roomlint.source.node import Node

T = TypeVar("T")
E = TypeVar("E", bound=Element)


class Repeated(Several[T]):
    """A list in which one entry may stand for several elements."""

    def __init__(
        self, about: str, of: type[Element], into: Callable[[Any, Book], tuple[Element, ...]], **more: Any,  # noqa: ANN401
    ) -> None:  # fmt: skip
        """`into` makes of an element that was read all those that it stands for."""
        super().__init__(about, of, **more)
        self.into = into

    def read(self, nodes: list[Node], book: Book, element: Element) -> tuple[Element, ...]:
        """Return the elements that the entries stand for, in the order of the file."""
        found = tuple(each for one in super().read(nodes, book, element) for each in self.into(one, book))
        if len(found) > self.most:
            book.cross(nodes[0], f"the entries of this list stand for {len(found)} elements; {self.most} are the most.")
        return found


def copied(element: E, name: str, book: Book) -> E:
    """Return a copy under another id of an element that nobody has looked at, and of its parts.

    Products are the same ones.
    """
    copies: dict[Element, Element] = {}
    copy: E = _copied(element, copies)
    for one in copies.values():
        if one.id == element.id:
            one.__dict__["id"] = name
    book.also_for(copies)
    return copy


def _copied(value: Any, copies: dict[Element, Element]) -> Any:  # noqa: ANN401  whatever a key holds
    if isinstance(value, tuple):
        return tuple(_copied(one, copies) for one in value)
    if not isinstance(value, Element) or isinstance(value, Product):
        return value
    copy = type(value).__new__(type(value))
    held = dict(value.__dict__)
    held[WAITING] = {attr: _copied(one, copies) for attr, one in held[WAITING].items()}
    if RESTS in held:
        held[RESTS] = dict(held[RESTS])
    copy.__dict__.update(held)
    copies[value] = copy
    return copy
