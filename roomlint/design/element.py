"""Elements: the parts of a design, each declared once.

A class of elements lists its keys as descriptors (`keys`). From that one declaration come the reader (`reader`), the
JSON Schema and the list of keys (`roomlint.schemas.make`), and the record of what anybody looked at.

The reader has converted every value of an element before anybody sees it. The first access to an attribute moves its
value from the waiting ones into the instance, which costs a look-up once and nothing afterwards; what is still waiting
when the rules have run is what no rule reads (`unread`).
"""

from __future__ import annotations

from abc import ABC, abstractmethod
from functools import cached_property
from typing import TYPE_CHECKING, Any, ClassVar, Final, Generic, NamedTuple, Self, TypeVar, overload

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator

    from roomlint.design.reader import Book
    from roomlint.source.node import Node
    from roomlint.source.place import Place

T = TypeVar("T")
ABSENT: Final[Any] = object()
"""What a key gives when it is not there, or when what is there was told as a problem."""
WAITING: Final = "_waiting"
RESTS: Final = "_rests"
"""Where an element notes which of its keys a value was worked out of: whoever reads the value has read those keys."""
PATH: Final = "_path"
"""Where a part of which the file says nothing notes where it would stand."""


class Key(ABC, Generic[T]):
    """One key of an element: what it means, what belongs there, and what stands for it when it is not given."""

    attr: str = ""
    name: str
    """As the file writes it."""

    def __init__(
        self,
        about: str,
        *,
        key: str = "",
        default: Any = None,  # noqa: ANN401  what the key holds
        told: bool = False,
        required: bool = False,
    ) -> None:
        """`told`: reports show it as it is, so that it counts as read."""
        self.about = about
        self.name = key
        self.default: T = default
        self.told = told
        self.required = required

    def __set_name__(self, owner: type, attr: str) -> None:
        self.attr = attr
        self.name = self.name or attr

    @overload
    def __get__(self, element: None, owner: type) -> Self: ...
    @overload
    def __get__(self, element: Element, owner: type) -> T: ...
    def __get__(self, element: Element | None, owner: type) -> Self | T:
        if element is None:
            return self
        held = element.__dict__
        value = held[WAITING].pop(self.attr, ABSENT)
        if value is ABSENT:
            value = self.absent(element)
        held[self.attr] = value
        if RESTS in held:
            for of in held[RESTS].pop(self.attr, ()):
                _mark(getattr(element, of) if isinstance(of, str) else getattr(*of))
        return value  # type: ignore[no-any-return]

    def absent(self, element: Element) -> T:  # noqa: ARG002  some keys make an empty part for their element
        """Return what stands for the key when the file does not give it."""
        return self.default

    @abstractmethod
    def take(self, node: Node, book: Book, element: Element) -> Any:  # noqa: ANN401  a value, or ABSENT
        """Return the value of a node, having told what is wrong with it; ABSENT when there is none."""

    @abstractmethod
    def schema(self, parts: dict[str, Any]) -> dict[str, Any]:
        """Return the JSON Schema of the value; shared definitions are put in `parts`."""


class Derived(Generic[T]):
    """An attribute that the reader works out of keys; whoever looks at it has read those keys and all below them."""

    attr: str = ""

    def __init__(self, *keys: str, default: Callable[[], T]) -> None:
        """`keys` are attributes of the same element."""
        self.keys = keys
        self.default = default

    def __set_name__(self, owner: type, attr: str) -> None:
        self.attr = attr

    @overload
    def __get__(self, element: None, owner: type) -> Self: ...
    @overload
    def __get__(self, element: Element, owner: type) -> T: ...
    def __get__(self, element: Element | None, owner: type) -> Self | T:
        if element is None:
            return self
        held = element.__dict__
        value = held[WAITING].pop(self.attr, ABSENT)
        held[self.attr] = value = self.default() if value is ABSENT else value
        for key in self.keys:
            _mark(getattr(element, key))
        return value


def _mark(value: object) -> None:
    """Count a part and everything below it as read."""
    for one in value if isinstance(value, tuple) else (value,):
        if isinstance(one, Element):
            for key in one.KEYS.values():
                _mark(getattr(one, key.attr))


class Element:
    """A part of a design that has an id and knows its place in the file."""

    KIND: ClassVar[str] = "element"
    ID: ClassVar[str] = ""
    """The id of an element that has no key for it; otherwise its owner's serves."""
    PART: ClassVar[str] = ""
    """Its name among the shared parts of the schema, where several keys take it."""
    ORDERED: ClassVar[bool] = False
    """Whether its keys are read in the order of their declaration, because later ones rest on earlier ones."""
    KEYS: ClassVar[dict[str, Key[Any]]] = {}
    """Its keys by the name that the file writes."""
    REQUIRED: ClassVar[frozenset[str]] = frozenset()
    TAKES: ClassVar[dict[str, tuple[Callable[[Node, Book, Element], Any], str, bool]]] = {}
    """The same for the reader: how a key is read, into which attribute, and whether it is told as it is."""
    HOLDS: ClassVar[tuple[str, ...]] = ()
    """The attributes that are made of elements."""
    SETTLES: ClassVar[bool] = False
    """Whether several of its keys rest on one another."""

    at: Node
    id: str

    def __init__(self, at: Node, ident: str, **given: Any) -> None:  # noqa: ANN401  what the keys hold
        """Make one of values that are converted already, by attribute."""
        self.__dict__.update({"at": at, "id": self.ID or ident, WAITING: given})

    def __init_subclass__(cls) -> None:
        own = {value.name: value for value in vars(cls).values() if isinstance(value, Key)}
        cls.KEYS = own | {name: key for name, key in cls.KEYS.items() if name not in own}
        cls.REQUIRED = frozenset(key.name for key in cls.KEYS.values() if key.required)
        cls.TAKES = {name: (key.take, key.attr, key.told) for name, key in cls.KEYS.items()}
        cls.HOLDS = tuple(key.attr for key in cls.KEYS.values() if isinstance(key, Holds))
        cls.SETTLES = cls.settle is not Element.settle

    def __setattr__(self, name: str, value: object) -> None:
        raise AttributeError(f"{type(self).__name__} is not to be changed: {name}")

    def __delattr__(self, name: str) -> None:
        raise AttributeError(f"{type(self).__name__} is not to be changed: {name}")

    def __repr__(self) -> str:
        return f"<{self.KIND} {self.id!r}>"

    @classmethod
    def empty(cls, at: Node, ident: str, path: str = "") -> Self:
        """Return one of which the file says nothing: `path` is where it would stand, `at` what is there instead."""
        element = cls.__new__(cls)
        Element.__init__(element, at, ident)
        element.__dict__[PATH] = path
        return element

    @classmethod
    def description(cls) -> str:
        """Return what it is, in the words of its class."""
        return " ".join((cls.__doc__ or "").split())

    def settle(self, book: Book) -> None:
        """Work out what rests on several keys and tell what does not fit together; runs once, when all are read."""

    def given(self, attr: str) -> Any:  # noqa: ANN401  whatever the key holds
        """Return a value without counting it as read; None when the file does not give it."""
        held = self.__dict__
        return held[attr] if attr in held else held[WAITING].get(attr)

    def put(self, attr: str, value: object, *rests: str | tuple[Element, str]) -> None:
        """Set a value that the reader worked out, and on what it rests: own attributes, or those of other elements."""
        self.__dict__[WAITING][attr] = value
        if rests:
            noted = self.__dict__.setdefault(RESTS, {})
            noted[attr] = (*noted.get(attr, ()), *rests)

    @cached_property
    def key(self) -> str:
        """The element's id, with its kind in front so that ids of different lists cannot meet."""
        return f"{self.KIND}/{self.id}"

    @property
    def words(self) -> str:
        """The id; it is what the team calls the thing."""
        return self.id

    @property
    def place(self) -> Place:
        """The place of the id, or of the element's first key when it has none of its own."""
        named = self.at.get("id") if isinstance(self.at.value, dict) else None
        return (named or self.at).place

    def place_of(self, key: str) -> Place:
        """Return the place of a dotted key below this element, or of the nearest one above it that is there."""
        node, found = self.at, None
        for part in key.split(".") if key else ():
            below = node.get(part) if isinstance(node.value, dict) else None
            if below is None:
                break
            node = found = below
        return found.place if found is not None else self.place

    def path_of(self, key: str) -> str:
        """Return the full path of a key of this element, for telling a reader what to add."""
        above = self.__dict__.get(PATH) or self.at.path
        return f"{above}.{key}" if above else key

    @property
    def elements(self) -> tuple[Element, ...]:
        """Itself."""
        return (self,)

    @property
    def about(self) -> tuple[Element, ...]:
        """Itself."""
        return (self,)


class Unread(NamedTuple):
    """A key that the file gives and that nobody looked at."""

    element: Element
    """The nearest element above it that has a name of its own."""
    key: str
    """Its way from there, such as `mounting.carpet` or `feeds[0].wiring`."""
    node: Node


def unread(element: Element) -> Iterator[Unread]:
    """Yield every key below an element that the file gives and that nobody has read, in the order of declaration.

    A part that nobody looked at is one of them; what is below it is not listed again.
    """
    yield from _unread(element, element, "")


def touched(element: Element, way: str = "") -> Iterator[str]:
    """Yield the way to every key below an element that somebody has looked at, items of lists as `[]`."""
    held = element.__dict__
    for key in element.KEYS.values():
        if key.told or key.attr not in held or key.attr in held[WAITING]:
            continue
        path = f"{way}.{key.name}" if way else key.name
        value = held[key.attr]
        parts = value if isinstance(value, tuple) else (value,)
        below = [part for part in parts if isinstance(part, Element)] if isinstance(key, Holds) else []
        for part in below:
            yield from touched(part, f"{path}[]" if isinstance(value, tuple) else path)
        if not below and element.at.get(key.name) is not None:
            yield path


def _unread(named: Element, element: Element, way: str) -> Iterator[Unread]:
    held = element.__dict__
    waiting = held[WAITING]
    for key in element.KEYS.values():
        path = f"{way}.{key.name}" if way else key.name
        if key.attr in waiting:
            node = element.at.get(key.name)
            if node is not None and _wanted(waiting[key.attr]):
                yield Unread(named, path, node)
        elif key.attr in held and isinstance(key, Holds):
            value = held[key.attr]
            if isinstance(value, Element):
                yield from _below(named, value, path)
            elif isinstance(value, tuple):
                for index, one in enumerate(value):
                    if isinstance(one, Element):
                        yield from _below(named, one, f"{path}[{index}]")


def _wanted(value: object) -> bool:
    """Whether something in a value was there to be read by a rule; a part that only reports tell was not."""
    if isinstance(value, tuple) and value and isinstance(value[0], Element):
        return any(_wanted(one) for one in value)
    if not isinstance(value, Element):
        return True
    waiting = value.__dict__[WAITING]
    return any(_wanted(waiting[key.attr]) for key in value.KEYS.values() if key.attr in waiting)


def _below(named: Element, element: Element, path: str) -> Iterator[Unread]:
    own = isinstance(element.at.value, dict) and "id" in element.KEYS and element.at.get("id") is not None
    yield from _unread(element, element, "") if own else _unread(named, element, path)


class Holds(Key[T]):
    """A key whose value is made of elements of its own, not of names of others."""


def fresh(element: T) -> T:
    """Return a copy of an untouched element of which nothing counts as read.

    A product sheet is read once in a run; each room that uses it reads its own copy, so that what one room's rules look
    at says nothing of another's.
    """
    if isinstance(element, tuple):
        return tuple(fresh(one) for one in element)  # type: ignore[return-value]
    if not isinstance(element, Element):
        return element
    copy = type(element).__new__(type(element))
    held = dict(element.__dict__)
    held[WAITING] = {attr: fresh(value) for attr, value in held[WAITING].items()}
    copy.__dict__.update(held)
    return copy
