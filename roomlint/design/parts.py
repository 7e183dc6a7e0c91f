"""The kinds of keys whose value is made of others: parts, lists, points, and names of other things."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any, TypeVar, overload

from roomlint.design.base import Point
from roomlint.design.element import ABSENT, Element, Holds, Key
from roomlint.design.keys import LONGEST_NAME, NONE, Text
from roomlint.design.measured import surveyed
from roomlint.design.reader import read_element, unique
from roomlint.source.say import a

if TYPE_CHECKING:
    from roomlint.design.products import Product
    from roomlint.design.quantity import Quantity
    from roomlint.design.reader import Book
    from roomlint.source.node import Node

T = TypeVar("T")
E = TypeVar("E", bound=Element)
P = TypeVar("P", bound="Proof")


def described(of: type[Element], about: str, parts: dict[str, Any]) -> dict[str, Any]:
    """Return the JSON Schema of an element, or a reference to it where several keys share it."""
    if not of.PART:
        return {"description": about, **_mapping(of, parts)}
    if of.PART not in parts:
        parts[of.PART] = {}  # its place, should it hold itself
        parts[of.PART] = {"description": of.description(), **_mapping(of, parts)}
    return {"$ref": f"#/$defs/{of.PART}", "description": about}


def _mapping(of: type[Element], parts: dict[str, Any]) -> dict[str, Any]:
    made: dict[str, Any] = {"type": "object", "additionalProperties": False}
    if issubclass(of, Proof):
        made |= {"type": ["string", "object"], "pattern": f"^{NONE}$", "examples": [NONE]}
    made["properties"] = {key.name: key.schema(parts) for key in of.KEYS.values()}
    if (on := made["properties"].get("on")) is not None:
        made["properties"]["on"] = on | {"description": f"{on['description']} {_ON}"}
    return made | ({"required": [name for name in of.KEYS if name in of.REQUIRED]} if of.REQUIRED else {})


_ON = 'Programs that read YAML 1.1 take the bare word for true; in quotes, "on", it is text to all.'


class Proof(Element):
    """A statement that somebody can check: a mapping that says what stands for it, or the word `none`."""

    absent: bool = False
    """Whether the file says that there is none."""


def stated(proof: P | None) -> P | None:
    """Return what is stated; None where nobody said anything and where the word `none` stands."""
    return proof if proof is not None and not proof.absent else None


class Part(Holds[T]):
    """A mapping below an element."""

    def __init__(
        self, about: str, of: type[Element], *, always: bool = False, or_none: bool = False,
        **more: Any,  # noqa: ANN401  what every key takes
    ) -> None:  # fmt: skip
        """Say what it is; `always`: an empty one stands for it when the file does not give it.

        `or_none`: the word `none` may stand in its place and states that there is no such thing.
        """
        super().__init__(about, **more)
        self.of = of
        self.always = always
        self.or_none = or_none

    def absent(self, element: Element) -> T:
        """Return an empty part where there is always one."""
        if not self.always:
            return self.default
        return self.of.empty(element.at, element.id, element.path_of(self.name))  # type: ignore[return-value]

    def take(self, node: Node, book: Book, element: Element) -> Any:  # noqa: ANN401
        """Return the part."""
        if node.value == NONE and issubclass(self.of, Proof):
            stated = self.of.empty(node, element.id)
            stated.__dict__["absent"] = True
            return stated
        if self.or_none and node.value == NONE:
            return None
        found = read_element(self.of, node, book, element.id)
        return ABSENT if found is None else found

    def schema(self, parts: dict[str, Any]) -> dict[str, Any]:
        """Return the part's schema."""
        made = described(self.of, self.about, parts)
        return _or_none(made) if self.or_none else made


class Several(Holds[T]):
    """A list of mappings."""

    def __init__(
        self, about: str, of: type[Element], *, most: int, least: int = 0, names: str = "", what: str = "",
        or_none: bool = False, **more: Any,  # noqa: ANN401  what every key takes
    ) -> None:  # fmt: skip
        """`names`: what an id in it may be referred to as; `what`: what an id that stands twice is called.

        `or_none`: the word `none` may stand for an empty list, which states the same.
        """
        super().__init__(about, default=(), **more)
        self.or_none = or_none
        self.of, self.most, self.least, self.names, self.what = of, most, least, names, what

    def take(self, node: Node, book: Book, element: Element) -> Any:  # noqa: ANN401
        """Return the elements, in the order of the file."""
        nodes = [] if self.or_none and node.value == NONE else node.value
        if type(nodes) is not list or not self.least <= len(nodes) <= self.most:
            book.broken = True
            return ABSENT
        elements = self.read(nodes, book, element)
        if self.names:
            for one in elements:
                book.name(self.names, one.id, one)
        if self.what:
            unique(elements, self.what, book)
        return elements

    def read(self, nodes: list[Node], book: Book, element: Element) -> tuple[Element, ...]:
        """Return the elements that the items of a list are."""
        found = (read_element(self.of, one, book, element.id) for one in nodes)
        return tuple(one for one in found if one is not None)

    def schema(self, parts: dict[str, Any]) -> dict[str, Any]:
        """Return a list of the element's schema."""
        made = listed(self.about, described(self.of, self.of.description(), parts), self.least, self.most)
        return _or_none(made) if self.or_none else made


def _or_none(made: dict[str, Any]) -> dict[str, Any]:
    """Return a schema with the word `none` beside what it takes."""
    return made | {"type": ["string", made["type"]], "pattern": f"^{NONE}$"}


def listed(about: str, items: dict[str, Any], least: int, most: int) -> dict[str, Any]:
    """Return the JSON Schema of a list."""
    made: dict[str, Any] = {"description": about, "type": "array", "items": items}
    return made | ({"minItems": least} if least else {}) | {"maxItems": most}


class Each(Key[T]):
    """A list of plain values, each as a key of its own would be."""

    def __init__(self, about: str, of: Key[Any], most: int, *, least: int = 0, **more: Any) -> None:  # noqa: ANN401
        super().__init__(about, default=(), **more)
        self.of, self.most, self.least = of, most, least

    def take(self, node: Node, book: Book, element: Element) -> Any:  # noqa: ANN401
        """Return the values."""
        nodes = node.value
        if type(nodes) is not list or not self.least <= len(nodes) <= self.most:
            book.broken = True
            return ABSENT
        values = [self.of.take(one, book, element) for one in nodes]
        return tuple(value for value in values if value is not ABSENT)

    def schema(self, parts: dict[str, Any]) -> dict[str, Any]:
        """Return a list."""
        of = self.of.schema(parts)
        made = listed(self.about, of, self.least, self.most)
        example = of["examples"] if "examples" in of else parts[of["$ref"].rpartition("/")[2]]["examples"]
        return made | {"examples": [example[:1]]} if self.least <= 1 else made


class Table(Key[T]):
    """A mapping whose keys are data, all of one kind: gates by stage, absorption by band."""

    def __init__(self, about: str, names: dict[str, Any], of: Key[Any], **more: Any) -> None:  # noqa: ANN401
        """`names` are the keys as the file writes them, with what stands for each in the design."""
        super().__init__(about, **more)
        self.names, self.of = names, of

    def take(self, node: Node, book: Book, element: Element) -> Any:  # noqa: ANN401
        """Return the values by what their keys stand for."""
        items = node.value
        if type(items) is not dict or not items.keys() <= self.names.keys():
            book.broken = True
            return ABSENT
        values = {self.names[name]: self.of.take(one, book, element) for name, one in items.items()}
        return {name: value for name, value in values.items() if value is not ABSENT}

    def schema(self, parts: dict[str, Any]) -> dict[str, Any]:
        """Return a mapping of these keys."""
        below = self.of.schema(parts)
        properties = {name: {**below, "description": f"{self.of.about} ({name})."} for name in self.names}
        return {
            "description": self.about, "type": "object", "additionalProperties": False, "properties": properties,
        }  # fmt: skip


class Plain(Part[T]):
    """A mapping that is kept as plain data; its keys are declared only to be checked."""

    def take(self, node: Node, book: Book, element: Element) -> Any:  # noqa: ANN401
        """Return the data."""
        return ABSENT if super().take(node, book, element) is ABSENT else dict(node.plain())


class PlainEach(Several[T]):
    """A list of such mappings."""

    def take(self, node: Node, book: Book, element: Element) -> Any:  # noqa: ANN401
        """Return the data."""
        found = super().take(node, book, element)
        return found if found is ABSENT else tuple(dict(one.plain()) for one in node.value)


class Name(Text[T]):
    """The name of another thing of the file."""

    def __init__(
        self, about: str, kind: str, example: str, *, also: str = "", whole: bool = False, or_none: bool = False,
        **more: Any,  # noqa: ANN401  what every key takes
    ) -> None:  # fmt: skip
        """`also`: another kind of thing it may be; `whole`: the thing itself is the value, not its name.

        `or_none`: the word `none` may stand in its place, is kept as the value, and states that there is no such thing.
        """
        super().__init__(about, example=example, most=LONGEST_NAME, **more)
        self.kind, self.also, self.whole, self.or_none = kind, also, whole, or_none

    def take(self, node: Node, book: Book, element: Element) -> Any:  # noqa: ANN401
        """Return the name; that there is such a thing is seen when all is read."""
        value = super().take(node, book, element)
        if self.or_none and value == NONE:
            return value
        if value is not ABSENT:
            book.refer(self.kind, node, element if self.whole else None, self.attr, also=self.also)
        return None if self.whole and value is not ABSENT else value


class Sheet(Text[T]):
    """The name of a product sheet, or the data of a one-off product in its place."""

    def __init__(self, about: str, *kinds: str, example: str, **more: Any) -> None:  # noqa: ANN401
        super().__init__(about, example=example, most=LONGEST_NAME, **more)
        self.kinds = kinds

    def take(self, node: Node, book: Book, element: Element) -> Any:  # noqa: ANN401
        """Return the product."""
        if type(node.value) is dict:
            return self._one_off(node, book, element)
        value = super().take(node, book, element)
        return ABSENT if value is ABSENT else book.product(node, self.kinds)

    def _one_off(self, node: Node, book: Book, element: Element) -> Any:  # noqa: ANN401
        """Return the product that is described in the place of its name."""
        from roomlint.design.products import Product
        from roomlint.design.quantity import Origin

        book.origin, before = Origin.SHEET, book.origin
        found = read_element(Product, node, book, element.id)
        book.origin = before
        if found is None:
            return ABSENT
        kind = found.given("kind")
        if kind is None and len(self.kinds) == 1:
            found.__dict__["kind"] = self.kinds[0]
        elif kind not in self.kinds:
            said = f"is {a(kind)}, but {a(' or '.join(self.kinds))} belongs here" if kind else "needs its kind"
            book.cross(
                node.get("kind") or node, f"this product {said}{'' if kind else ': ' + ' or '.join(self.kinds)}."
            )
        found.check(book)
        # Beside the sheets, so that what nobody reads of it is told too; no sheet has a name with a blank.
        book.used[f"{element.id} {self.name} {node.path}"] = found
        return found

    def schema(self, parts: dict[str, Any]) -> dict[str, Any]:
        """Return a name, or a product's own mapping."""
        from roomlint.design.products import Product

        named = super().schema(parts)
        below = described(Product, self.about, parts)
        parts["product"] |= {"type": ["string", "object"], "minLength": 1, "maxLength": LONGEST_NAME}
        return below | {"examples": named["examples"]}


class Coordinates(Element):
    """A point, as an installer measures it.

    From the left or right wall and from the front or rear wall of the room's bounding box, and above the floor. The
    front wall is the one that the reference seat faces.
    """

    PART = "position"

    left = surveyed("From the left wall, facing the front.", key="from_left", zero=True, high=50.0)
    right = surveyed("Instead: from the wall farthest to the right.", key="from_right", zero=True, high=50.0)
    front = surveyed("From the front wall.", key="from_front", zero=True, high=50.0)
    rear = surveyed("Instead: from the wall farthest back.", key="from_rear", zero=True, high=50.0)
    height = surveyed("Above the finished floor of the room.", zero=True, high=20.0, example="1.10 m")

    def settle(self, book: Book) -> None:
        """Refuse a coordinate that is given from both sides."""
        for near, far in (("left", "right"), ("front", "rear")):
            node = self.at.get(f"from_{far}")
            if node is not None and self.at.get(f"from_{near}") is not None:
                book.cross(node, f"give either from_{near} or from_{far}, not both.")

    def composed(self, book: Book) -> Point | None:
        """Return the point in the frame of the design; None when a coordinate is not given."""
        x = _from(self.given("left"), self.given("right"), book.width)
        y = _from(self.given("rear"), self.given("front"), book.length)
        z: Quantity | None = self.given("height")
        if x is not None and y is not None and z is None:
            book.halves[self.at] = (x, y)  # what holds the thing may give the height
        return Point(x, y, z) if x is not None and y is not None and z is not None else None


def _from(near: Quantity | None, far: Quantity | None, extent: Quantity | None) -> Quantity | None:
    """Return a coordinate from the side that it counts from, or from the other side and the room's extent.

    The extent is one reading: two points that are both measured from the far side share it, and it cancels between
    them (JCGM 100:2008, 5.2).
    """
    if near is not None:
        return near
    if far is None or extent is None:
        return None
    # The text that was written for this coordinate comes first, as the place where it stands.
    return far * -1.0 + extent


class Position(Part["Point | None"]):
    """A point of the room."""

    def __init__(self, about: str, *, lowest: float = 0.0) -> None:
        super().__init__(about, Coordinates)
        self.lowest = lowest

    def take(self, node: Node, book: Book, element: Element) -> Any:  # noqa: ANN401
        """Return the point; None when a coordinate is missing, which the file may leave so."""
        found = read_element(Coordinates, node, book, element.id)
        if found is None:
            return ABSENT
        height: Quantity | None = found.given("height")
        if height is not None and height.value < self.lowest:
            book.tell(node.get("height") or node, f"a height of {book.words(self.lowest)} at least is expected here.")
        return found.composed(book)


def point(about: str, *, lowest: float = 0.0) -> Position:
    """Declare a point of the room."""
    return Position(about, lowest=lowest)


def sheet(about: str, *kinds: str, example: str) -> Sheet[Product | None]:
    """Declare the name of a product sheet of one of some kinds."""
    return Sheet(about, *kinds, example=example)


@overload
def part(about: str, of: type[E], *, always: bool, key: str = ..., required: bool = ...) -> Part[E]: ...
@overload
def part(about: str, of: type[E], *, key: str = ..., required: bool = ..., or_none: bool = ...
         ) -> Part[E | None]: ...  # fmt: skip
def part(
    about: str, of: type[E], *, always: bool = False, key: str = "", required: bool = False, or_none: bool = False
) -> Part[Any]:
    """Declare a part that is a mapping of its own."""
    return Part(about, of, always=always, key=key, required=required, or_none=or_none)


def several(
    about: str, of: type[E], *, most: int, least: int = 0, key: str = "", names: str = "", what: str = "",
    told: bool = False, or_none: bool = False,
) -> Several[tuple[E, ...]]:  # fmt: skip
    """Declare a list of elements."""
    return Several(about, of, most=most, least=least, key=key, names=names, what=what, told=told, or_none=or_none)


def words(about: str, of: Text[Any], most: int, *, key: str = "") -> Each[tuple[str, ...]]:
    """Declare a list of texts."""
    return Each(about, of, most, key=key)


def named(
    about: str, kind: str, example: str, *, also: str = "", key: str = "", required: bool = False, or_none: bool = False
) -> Name[str | None]:
    """Declare the name of another thing of the file, of one kind or of `also` another."""
    return Name(about, kind, example, also=also, key=key, required=required, or_none=or_none)
