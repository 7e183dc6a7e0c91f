"""Reads a tree into elements in one walk that also checks it: structure, values, and what must fit together.

Most files are right, and for them nothing else runs. Where the structure is not what the declarations say, jsonschema
tells how, from the schema that was made of the same declarations.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, TypeVar

from roomlint.design.derived import Worked
from roomlint.design.element import ABSENT, WAITING, Element, fresh
from roomlint.design.quantity import Origin, Quantity
from roomlint.source.place import Problem
from roomlint.source.say import a, is_customary, length_words
from roomlint.source.say import nearest as nearest_word

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping

    from roomlint.design.outline import Corner
    from roomlint.design.products import Product
    from roomlint.design.shell import Shell
    from roomlint.source.dimensions import Dimension
    from roomlint.source.node import Node

E = TypeVar("E", bound=Element)

TOLERANCE_M = {"survey": 0.010, "design": 0.005, "rough-in": 0.010, "handover": 0.005}
"""What a length is taken to be good for where the survey states no tolerance, by stage: a tape over studs and rough
openings 10 mm; setting out from a drawing, and measuring finished surfaces, 5 mm. Practice, ours."""
UNSAID_TOLERANCE_M = 0.010
"""The same where no stage is stated either."""
_LISTED = 12
NAMING = ("id", "pair")
"""Keys that name an element."""


class Book:
    """What the reading of one file shares."""

    def __init__(
        self, file: str, root: Node, products: Mapping[str, Product] | None = None, origin: Origin = Origin.FILE
    ) -> None:
        self.file = file
        self.root = root
        self.origin = origin
        self.problems: list[Problem] = []
        """What is wrong with single values."""
        self.crossed: list[Problem] = []
        """What does not fit together; told only of a file whose structure is right."""
        self.broken = False
        """Whether the structure is not what the declarations say."""
        self.stage: str | None = None
        self.tolerance: Quantity | None = None
        self.width: Quantity | None = None
        self.length: Quantity | None = None
        self.names: dict[str, dict[str, Element | None]] = {}
        """What may be referred to, by what it is."""
        self.unknown: set[str] = set()
        """Kinds of things whose names could not be read, so that no name of one is told as wrong."""
        self.shell: Shell | None = None
        """The room, once it is read and fits together."""
        self.walls: dict[str, tuple[Corner, Corner]] = {}
        """Its walls by their names: the corners at their left-hand and right-hand ends, seen from inside."""
        self.halves: dict[Node, tuple[Quantity, Quantity]] = {}
        """Points that lack only their height, by their place in the file."""
        self.worked: list[Worked] = []
        """What was worked out of what the file says."""
        self.used: dict[str, Product] = {}
        """The product sheets that the file uses, each this file's own copy."""
        self._customary: bool | None = None
        self._products = products or {}
        self._wanted: list[tuple[str, str, Node, Element | None, str]] = []

    def tell(self, node: Node, text: str) -> None:
        """Add a problem with one value."""
        self.problems.append(Problem(node.place, text))

    def cross(self, node: Node, text: str) -> None:
        """Add a problem of values that do not fit together."""
        self.crossed.append(Problem(node.place, text))

    def told(self, text: str, dimension: Dimension) -> str:
        """Return a message with its example in the units that the file is written in."""
        return text.replace(repr(dimension.example), repr(dimension.customary)) if self.is_customary else text

    def words(self, metres: float) -> str:
        """Return a length in the units of the file."""
        return length_words(metres, customary=self.is_customary)

    @property
    def is_customary(self) -> bool:
        """Whether the file is written in the units of the United States."""
        if self._customary is None:
            self._customary = is_customary(self.root)
        return self._customary

    @property
    def tolerance_m(self) -> float:
        """Return the expanded uncertainty of a surveyed length that does not state its own."""
        if self.tolerance is not None:
            return self.tolerance.value
        return TOLERANCE_M.get(self.stage or "", UNSAID_TOLERANCE_M)

    def name(self, kind: str, ident: str, element: Element | None = None) -> None:
        """Note something that may be referred to."""
        self.names.setdefault(kind, {})[ident] = element

    def refer(self, kind: str, node: Node, element: Element | None = None, attr: str = "", *, also: str = "") -> None:
        """Note that a node names something, which is looked up when all is read and put in an attribute if wanted."""
        self._wanted.append((kind, also, node, element, attr))

    def derive(self, element: Element, key: str, quantity: Quantity, way: str) -> None:
        """Note something that was worked out, so that reports tell it."""
        self.worked.append(Worked(element, key, quantity, way))

    def also_for(self, copies: Mapping[Element, Element]) -> None:
        """Let what elements refer to be put into their copies as well."""
        again = [one for one in self._wanted if one[3] is not None and one[3] in copies]
        self._wanted += [(kind, also, node, copies[of], attr) for kind, also, node, of, attr in again if of is not None]

    def product(self, node: Node, kinds: tuple[str, ...]) -> Product | None:
        """Return this file's copy of the product that a node names, which must be of one of the kinds."""
        name = str(node.value)
        found = self.used.get(name) or self._products.get(name)
        if found is None:
            known = nearest(name, (p.id for p in self._products.values() if p.kind in kinds))
            self.cross(node, f"no product sheet has the id {name!r}; {known}")
            return None
        if found.kind not in kinds:
            told = found.at.get("kind")
            if told is None or told.value == found.kind:
                self.cross(node, f"{name!r} is {a(found.kind or 'product')}, but {a(' or '.join(kinds))} belongs here.")
            else:
                self.used[name] = fresh(found)  # the sheet is told of, and the room needs it
            return None
        if name not in self.used:
            self.used[name] = fresh(found)
        return self.used[name]

    def finish(self) -> None:
        """Look up everything that was referred to."""
        for kind, also, node, element, attr in self._wanted:
            known = self.names.get(kind, {})
            if also:
                known = {**known, **self.names.get(also, {})}
            name = str(node.value)
            if name not in known and kind not in self.unknown:
                self.cross(node, f"there is no {kind} {name!r}; {nearest(name, known)}")
            elif name in known and element is not None and attr:
                element.put(attr, known[name])

    def answer(self, node: Node, kind: str) -> list[Problem]:
        """Return everything that is wrong with the file, in its order."""
        if not self.broken:
            return sorted({*self.problems, *self.crossed})
        from roomlint.source.check import explain, load_schema

        told = explain(node, node.plain(), load_schema(kind), self.problems)
        # Our walk and jsonschema agree, which tests hold; should they ever not, the file is still not passed over.
        return told or [Problem(node.place, f"this does not have the form of a {kind} file.")]


def read_element(of: type[E], node: Node, book: Book, owner: str = "") -> E | None:
    """Return the element that a mapping describes; None when it is no mapping."""
    items = node.value
    if type(items) is not dict:
        book.broken = True
        return None
    element = of.__new__(of)
    held = element.__dict__
    held["at"], held["id"] = node, of.ID or owner
    waiting = held[WAITING] = {}
    takes = of.TAKES
    for name, child in _in_order(of, items):
        known = takes.get(name)
        if known is None:
            book.broken = True
            continue
        take, attr, told = known
        value = take(child, book, element)
        if value is not ABSENT:
            (held if told else waiting)[attr] = value
    book.broken |= not items.keys() >= of.REQUIRED
    if of.SETTLES:
        element.settle(book)
    return element


def _in_order(of: type[Element], items: dict[str, Node]) -> Iterable[tuple[str, Node]]:
    """Return the keys that are given in the order in which they are to be read."""
    if of.ORDERED:
        first = [(name, items[name]) for name in of.KEYS if name in items]
        return [*first, *((name, node) for name, node in items.items() if name not in of.KEYS)]
    for name in NAMING:
        if name in of.KEYS and name in items and next(iter(items)) != name:
            return [(name, items[name]), *items.items()]  # parts below are named after it, wherever it stands
    return items.items()


def unique(elements: Iterable[Element], what: str, book: Book) -> None:
    """Tell of every id that stands twice in a list."""
    seen: dict[str, Element] = {}
    for element in elements:
        first = seen.setdefault(element.id, element)
        if first is not element and element.id:
            text = f"{what} {element.id!r} stands twice; the first is on line {first.place.line}."
            book.cross(element.at.get("id") or element.at, text)


def nearest(name: str, known: Iterable[str]) -> str:
    """Return a sentence that names the nearest known name, or lists what is known."""
    names = sorted(set(known))
    close = nearest_word(name, names)
    if close:
        return f"did you mean {close!r}?"
    return (
        f"known: {', '.join(names[:_LISTED])}{' ...' if len(names) > _LISTED else ''}." if names else "none is known."
    )
