"""What every part of a design is made of: values that know their place, points, elements and groups of elements."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, ClassVar, Generic, Protocol, TypeVar

from roomlint.design.element import Element

if TYPE_CHECKING:
    from roomlint.design.quantity import Quantity
    from roomlint.source.place import Place

__all__ = ["Element", "Missing", "Pair", "Point", "Seen", "Several", "Subject", "joined_key", "need", "unsaid"]

T = TypeVar("T")
E = TypeVar("E", bound=Element)
S_co = TypeVar("S_co", bound="Subject", covariant=True)
T_co = TypeVar("T_co", bound="Subject", covariant=True)


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

    @property
    def about(self) -> tuple[Element, ...]:
        """The elements that are judged; others only say where from."""


@dataclass(frozen=True, slots=True)
class Pair(Generic[E]):
    """A left and a right that are judged together."""

    left: E
    right: E
    joined: ClassVar[str] = " and "

    @property
    def elements(self) -> tuple[Element, ...]:
        """Both."""
        return (self.left, self.right)

    @property
    def about(self) -> tuple[Element, ...]:
        """Both."""
        return self.elements

    @property
    def key(self) -> str:
        """The keys of its elements, joined."""
        return joined_key(self)

    @property
    def words(self) -> str:
        """Both names."""
        return f"{self.left.words} and {self.right.words}"

    @property
    def place(self) -> Place:
        """The place of the left."""
        return self.left.place

    def place_of(self, key: str) -> Place:
        """Return the place of a key of the left."""
        return self.left.place_of(key)


@dataclass(frozen=True, slots=True)
class Seen(Generic[S_co, T_co]):
    """Something as heard or seen from a seat, or another thing that is judged at a place of somebody else's."""

    source: S_co
    seat: T_co
    joined: str = " at "

    @property
    def elements(self) -> tuple[Element, ...]:
        """The elements of both."""
        return (*self.source.elements, *self.seat.elements)

    @property
    def about(self) -> tuple[Element, ...]:
        """What is heard: the seat is where it is judged, not what is judged."""
        return self.source.about

    @property
    def key(self) -> str:
        """The keys of its elements, joined."""
        return joined_key(self)

    @property
    def words(self) -> str:
        """Both names, such as `side at seat 2`."""
        return f"{self.source.words}{self.joined}{self.seat.words}"

    @property
    def place(self) -> Place:
        """The place of what is heard."""
        return self.source.place

    def place_of(self, key: str) -> Place:
        """Return the place of a key of what is heard."""
        return self.source.place_of(key)


@dataclass(frozen=True, slots=True)
class Amid(Generic[E]):
    """One element amid others: it is what is wrong, and what is found of the others follows from it."""

    middle: E
    others: tuple[Element, ...]

    @property
    def elements(self) -> tuple[Element, ...]:
        """The one."""
        return (self.middle,)

    @property
    def about(self) -> tuple[Element, ...]:
        """All of them."""
        return (self.middle, *self.others)

    @property
    def key(self) -> str:
        """The key of the one."""
        return self.middle.key

    @property
    def words(self) -> str:
        """The name of the one."""
        return self.middle.words

    @property
    def place(self) -> Place:
        """The place of the one."""
        return self.middle.place

    def place_of(self, key: str) -> Place:
        """Return the place of a key of the one."""
        return self.middle.place_of(key)


@dataclass(frozen=True, slots=True)
class Several(Generic[E]):
    """Elements of one kind that are judged as a whole, such as the ear layer."""

    members: tuple[E, ...]

    @property
    def elements(self) -> tuple[Element, ...]:
        """All of them."""
        return self.members

    @property
    def about(self) -> tuple[Element, ...]:
        """All of them."""
        return self.members

    @property
    def key(self) -> str:
        """The keys of its elements, joined."""
        return joined_key(self)

    @property
    def words(self) -> str:
        """Their names."""
        return ", ".join(member.words for member in self.members)

    @property
    def place(self) -> Place:
        """The place of the first."""
        return self.members[0].place

    def place_of(self, key: str) -> Place:
        """Return the place of a key of the first."""
        return self.members[0].place_of(key)


def joined_key(subject: Subject) -> str:
    """Return the key of a subject of several elements: all their keys."""
    return "+".join(element.key for element in subject.elements)


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


def unsaid(root: Element, *ways: str) -> Missing | None:
    """Return what is missing of lists and parts that may be absent: the first of which the file says nothing.

    Each way is dotted, from the element. An empty list and the word `none` state that there is none.
    """
    for way in ways:
        element, rest = root, way
        while "." in rest:
            first, below = rest.split(".", 1)
            part = element.given(element.KEYS[first].attr)
            if not isinstance(part, Element):
                break
            element, rest = part, below
        if "." in rest or element.at.get(rest) is None:
            return Missing(element, rest)
    return None


def need(value: T | None, element: Element, key: str) -> T:
    """Return the value, or raise `Missing` naming the key that would give it."""
    if value is None:
        raise Missing(element, key)
    return value
