"""What every part of a design is made of beside its elements: points, groups, and what is missing."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import TYPE_CHECKING, Protocol, TypeVar

from roomlint.design.element import Element

if TYPE_CHECKING:
    from roomlint.design.quantity import Quantity
    from roomlint.source.place import Place
    from roomlint.source.tree import Node

__all__ = ["Element", "Group", "Missing", "Point", "Subject", "Value", "heard_at", "need"]

T = TypeVar("T")


@dataclass(frozen=True, slots=True)
class Value:
    """A number with its uncertainty and its place, for figures that are not yet made of quantities."""

    value: float
    u: float = 0.0
    unit: str = ""
    at: Node | None = field(default=None, compare=False, repr=False)


@dataclass(frozen=True, slots=True)
class Point:
    """A point of the room: x to the right, y to the front, z up, from the rear left corner of the floor, in m."""

    x: Quantity
    y: Quantity
    z: Quantity

    @property
    def xyz(self) -> tuple[float, float, float]:
        """The three coordinates as plain numbers."""
        return (self.x.value, self.y.value, self.z.value)

    @property
    def values(self) -> tuple[Quantity, Quantity, Quantity]:
        """The three coordinates with uncertainty and place."""
        return (self.x, self.y, self.z)


class Subject(Protocol):
    """What a verdict is about: one element or a group of them."""

    @property
    def key(self) -> str:
        """A name made of element ids only, so that it survives every reformatting of the file."""

    @property
    def words(self) -> str:
        """How a message names it."""

    @property
    def place(self) -> Place:
        """Where it stands in its file."""

    def place_of(self, key: str) -> Place:
        """Where one of its keys stands, or the nearest key above it that exists."""

    @property
    def elements(self) -> tuple[Element, ...]:
        """The elements it is made of."""


@dataclass(frozen=True, slots=True)
class Group:
    """Several elements judged together, such as a left and right pair, or a loudspeaker as heard from a seat."""

    elements: tuple[Element, ...]
    joined: str = " and "

    @property
    def key(self) -> str:
        """The keys of its elements, joined."""
        return "+".join(element.key for element in self.elements)

    @property
    def words(self) -> str:
        """The names of its elements, joined as the group was made: `left and right`, `side at seat 2`."""
        return self.joined.join(element.words for element in self.elements)

    @property
    def place(self) -> Place:
        """The place of the first element."""
        return self.elements[0].place

    def place_of(self, key: str) -> Place:
        """Return the place of a key of the first element."""
        return self.elements[0].place_of(key)


def heard_at(source: Element, seat: Element) -> Group:
    """Group a source with the seat it is heard from."""
    return Group((source, seat), joined=" at ")


class Missing(Exception):  # noqa: N818  an absent input is an answer (open), not an error
    """A rule needs a value that the design does not give."""

    def __init__(self, element: Element, key: str) -> None:
        self.element = element
        self.key = key + _lacking(element, key)
        super().__init__(element.path_of(self.key))


_COORDINATES = (("from_left", "from_right"), ("from_front", "from_rear"), ("height",))


def _lacking(element: Element, key: str) -> str:
    """Return which coordinate of a half-given position is not there, as the rest of a key."""
    node = element.at.get(key) if isinstance(element.at.value, dict) else None
    if node is None or not isinstance(node.value, dict):
        return ""
    for names in _COORDINATES:
        if not any(name in node.value for name in names):
            return f".{names[0]}"
    return ""


def need(value: T | None, element: Element, key: str) -> T:
    """Return the value, or raise `Missing` naming the key that would give it."""
    if value is None:
        raise Missing(element, key)
    return value
