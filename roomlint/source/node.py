"""One value of a file, which knows where it stands."""

import re
from typing import Any, TypeAlias

from ruamel.yaml.events import AliasEvent, ScalarEvent

from roomlint.source.place import Place
from roomlint.source.text import Source

Event: TypeAlias = Any  # the C parser has no types
Trail: TypeAlias = "tuple[Trail, str | int] | None"  # the way from the root, innermost step outermost

_PLAIN_STEP = r"[A-Za-z_][A-Za-z0-9_-]*"


class Node:
    """One value of a file: a scalar, a mapping of nodes or a list of nodes, with its place and path.

    `value` is `str | int | float | bool | None`, `dict[str, Node]` or `list[Node]`.
    """

    __slots__ = ("_event", "_place", "_source", "key_event", "trail", "value")

    value: Any
    _place: Place | None

    def __init__(self, value: Any, event: Event, key: Event, trail: Trail, source: Source) -> None:  # noqa: ANN401
        self.value = value
        self._event = event
        self._place = None
        self.key_event = key
        self.trail = trail
        self._source = source

    def __repr__(self) -> str:
        return f"Node({self.path!r}, {self.plain()!r})"

    def get(self, key: str) -> "Node | None":
        """Return the node under a key; None when it is absent or this is not a mapping."""
        value = self.value
        if type(value) is dict:
            return value.get(key)
        return None

    @property
    def place(self) -> Place:
        """The span of a scalar; of a mapping its first key, of a list its first item, kept on one line."""
        if self._place is None:
            self._place = self._find_place()
        return self._place

    def _find_place(self) -> Place:
        node = self
        while True:
            event = node._event
            value = node.value
            if type(event) is AliasEvent or not value or type(value) not in (dict, list):
                break
            if type(value) is dict:
                first = next(iter(value.values()))
                return self._source.place(first.key_event, one_line=True)
            node = value[0]
        if type(event) is ScalarEvent and event.start_mark.index == event.end_mark.index and node.key_event is not None:
            return self._source.place(node.key_event)  # nothing is written: point at the key that wants a value
        one_line = type(event) is not ScalarEvent or node is not self
        return self._source.place(event, one_line=one_line)

    @property
    def key_place(self) -> Place | None:
        """The span of the key that holds this node; None for a list item or the root."""
        return None if self.key_event is None else self._source.place(self.key_event)

    @property
    def path(self) -> str:
        """The way from the root, such as `loudspeakers[2].position.from_left`, items counted from 0."""
        steps: list[str] = []
        trail = self.trail
        while trail is not None:
            trail, step = trail
            if type(step) is int:
                steps.append(f"[{step}]")
            elif re.fullmatch(_PLAIN_STEP, step):  # type: ignore[arg-type]
                steps.append(f".{step}")
            else:
                steps.append(f"[{step!r}]")
        return "".join(reversed(steps)).removeprefix(".")

    def plain(self) -> Any:  # noqa: ANN401
        """Return the values alone, as plain Python data."""
        value = self.value
        if type(value) is dict:
            return {key: child.plain() for key, child in value.items()}
        if type(value) is list:
            return [child.plain() for child in value]
        return value
