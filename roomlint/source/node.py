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

    def span(self, text: str) -> tuple[int, int]:
        """Return where the whole value is written, as indices into its file's text; the end is exclusive.

        Of a mapping or list between brackets the closing one is in it, of one in lines its last value.
        """
        event, value = self._event, self.value
        start: int = event.start_mark.index
        if type(event) is AliasEvent or type(value) not in (dict, list):
            return start, start + len(text[start : event.end_mark.index].rstrip())
        inner = list(value.values()) if type(value) is dict else value
        end = inner[-1].span(text)[1] if inner else start + 1
        if not event.flow_style:
            return start, end
        closing = re.compile(r"(?:[\s,]|#[^\n]*)*[}\]]").match(text, end)
        return start, closing.end() if closing is not None else end

    @property
    def key_start(self) -> int:
        """Where the key that holds this value begins, as an index into the text; -1 where none does."""
        return -1 if self.key_event is None else self.key_event.start_mark.index

    @property
    def is_alias(self) -> bool:
        """Whether an alias stands in its place, so that what is below it is written elsewhere."""
        return type(self._event) is AliasEvent

    @property
    def in_brackets(self) -> bool:
        """Whether it is a mapping or list that is written between brackets."""
        return bool(getattr(self._event, "flow_style", False))

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
