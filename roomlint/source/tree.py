"""Text in: YAML read into a tree of values that know where they stand (`node`).

The C parser of ruamel.yaml delivers events and the loop here builds the tree from them, without recursion, so no
depth of nesting can exhaust a stack. Only what a design file needs is let through; everything else becomes a located
`Problem`, never an exception.
"""

import math
import re
from collections.abc import Callable
from typing import Any

from ruamel.yaml.cyaml import CParser  # type: ignore[attr-defined]
from ruamel.yaml.error import MarkedYAMLError, YAMLError
from ruamel.yaml.events import (
    AliasEvent,
    DocumentStartEvent,
    MappingEndEvent,
    MappingStartEvent,
    ScalarEvent,
    SequenceEndEvent,
    SequenceStartEvent,
    StreamEndEvent,
)

from roomlint.source.node import Event, Node
from roomlint.source.place import Place, Problem
from roomlint.source.say import code, kind_of, nearest, shorten
from roomlint.source.slips import cut_off, has_number_signs, slip_in_key, slip_in_number, swallowed
from roomlint.source.text import Source, decode, is_unfit, syntax_text

MAX_DEPTH = 40
MAX_ALIAS_NODES = 10_000
MAX_PROBLEMS = 200  # a file with more is no design file; reading stops there

# Patterns are compiled when a file first needs them.
_INT = r"[-+]?[0-9]+|0o[0-7]+|0x[0-9a-fA-F]+"
_FLOAT = r"[-+]?(?:\.[0-9]+|[0-9]+(?:\.[0-9]*)?)(?:[eE][-+]?[0-9]+)?"
_NOT_FINITE = r"[-+]?\.(?:inf|Inf|INF)|\.(?:nan|NaN|NAN)"
_NUMBER_START = frozenset("0123456789+-.")
_NUMBER_END = frozenset("0123456789abcdefABCDEF.nN")
_WORDS: dict[str, bool | None] = {
    **dict.fromkeys(("", "~", "null", "Null", "NULL")),
    **dict.fromkeys(("true", "True", "TRUE"), True),
    **dict.fromkeys(("false", "False", "FALSE"), False),
}
_TOO_LARGE = 2**63
_MOST_DIGITS = 100


def read_tree(data: bytes | str, file: str) -> tuple[Node | None, list[Problem]]:
    """Read a file into a tree.

    Every problem is located. The tree is None when nothing could be read; a tree beside problems lacks the parts
    complained of and serves only to look for further problems.
    """
    text, problems = decode(data, file)
    if problems:
        return None, problems
    source = Source(file, text)
    builder = _Builder(source, text)
    try:
        parser = CParser(text)
        root = builder.build(parser.get_event)
    except MarkedYAMLError as error:
        line, column, said = syntax_text(error, text)
        place = source.at(line, column)
        if any((known.place.line, known.place.column) == (line, column) for known in builder.problems):
            return None, builder.problems  # the same slip, met before the parser gave up over it
        return None, [*builder.problems, Problem(place, said)]
    except (YAMLError, ValueError, OverflowError) as error:
        return None, [*builder.problems, Problem(source.at(1, 1), f"this is not YAML: {error}.")]
    except _Stop:
        root = None
    return root, builder.problems


def _hidden(text: str) -> bool:
    return not text.isprintable() and ("\r" in text or any(map(is_unfit, text)))


class _Stop(Exception):  # noqa: N818 (no error: a way out of the loop)
    """Reading on would only repeat or hide the problem just noted."""


class _Frame:
    """A mapping or list that is still open."""

    __slots__ = ("items", "key", "name", "node")

    def __init__(self, node: Node) -> None:
        self.node = node
        self.items: Any = node.value
        self.key: Event = None  # the key that waits for its value
        self.name: str | None = None  # its text; None when the key was refused and its value is to be dropped


class _Builder:
    """Builds the tree from parser events, noting problems on the way."""

    def __init__(self, source: Source, text: str) -> None:
        self.source = source
        self.text = text
        self.has_number_signs = has_number_signs(text)
        self.may_slip = self.has_number_signs or not text.isascii()  # most files ask for no second look at each value
        self.problems: list[Problem] = []
        self.anchors: dict[str, Node] = {}
        self.stack: list[_Frame] = []
        self.root: Node | None = None
        self.documents = 0
        self.copied = 0

    def note(self, event: Event, text: str) -> None:
        self.add(self.source.place(event, one_line=True), text)

    def add(self, place: Place, text: str) -> None:
        self.problems.append(Problem(place, text))
        if len(self.problems) >= MAX_PROBLEMS:
            raise _Stop

    def build(self, next_event: Callable[[], Event]) -> Node | None:  # noqa: C901 (one branch an event)
        """Read the one document of a stream."""
        stack = self.stack
        while True:
            event = next_event()
            kind = type(event)
            if kind is ScalarEvent:
                frame = stack[-1] if stack else None
                if frame is not None and frame.key is None and type(frame.items) is dict:
                    self.take_key(frame, event)
                else:
                    self.attach(frame, self.scalar(event), event)
            elif kind is MappingStartEvent:
                self.open({}, event)
            elif kind is SequenceStartEvent:
                self.open([], event)
            elif kind is MappingEndEvent or kind is SequenceEndEvent:
                stack.pop()
            elif kind is AliasEvent:
                self.alias(event)
            elif kind is DocumentStartEvent:
                self.documents += 1
                if self.documents > 1:
                    self.note(event, "a second document starts here; one file holds one. Move it to its own file.")
                    raise _Stop
            elif kind is StreamEndEvent:
                return self.finish()

    def finish(self) -> Node | None:
        if self.root is None and not self.problems:
            self.problems.append(Problem(self.source.at(1, 1, 0), "the file is empty. Write at least its first key."))
        return self.root

    def attach(self, frame: _Frame | None, value: Any, event: Event) -> Node:  # noqa: ANN401
        """Make a node where the parser stands."""
        if frame is None:
            node = self.root = Node(value, event, None, None, self.source)
        elif type(frame.items) is list:
            items = frame.items
            node = Node(value, event, None, (frame.node.trail, len(items)), self.source)
            items.append(node)
        else:
            name = frame.name
            node = Node(value, event, frame.key, (frame.node.trail, name or ""), self.source)
            if name is not None:
                frame.items[name] = node
            frame.key = None
        if event.anchor is not None and type(event) is not AliasEvent:
            self.anchors[event.anchor] = node
        return node

    def open(self, value: Any, event: Event) -> None:  # noqa: ANN401
        stack = self.stack
        if len(stack) >= MAX_DEPTH:
            self.note(event, f"values are nested more than {MAX_DEPTH} deep here. Flatten the file.")
            raise _Stop
        if event.tag is not None:
            self.refuse_tag(event)
        frame = stack[-1] if stack else None
        if frame is not None and frame.key is None and type(frame.items) is dict:
            self.note(event, "a mapping or list stands as a key. Write a plain word before the colon.")
            frame.key, frame.name = event, None
            stack.append(_Frame(Node(value, event, None, None, self.source)))
            return
        stack.append(_Frame(self.attach(frame, value, event)))

    def take_key(self, frame: _Frame, event: Event) -> None:
        """Note the key that waits for its value; a refused one has its value read and dropped."""
        frame.key, frame.name = event, None
        name: str = event.value
        if event.tag is not None:
            self.refuse_tag(event)
            return
        if event.implicit[0]:
            if name == "<<":
                self.note(event, "the merge key `<<` is not read. Write the keys out, or use an alias for one value.")
                return
            if self.may_slip and not name.isascii() and (slip := slip_in_key(name)):
                self.note(event, slip)
                return
            value = self.scalar(event)
            if type(value) is not str:
                hint = "It may have been `on` before another program wrote it: write on." if value is True else ""
                said = f"the key {code(name)} is {kind_of(value)}; keys are text. "
                self.note(event, said + (hint or "Put it in quotes, or rename it."))
                return
        elif event.style == '"' and _hidden(name):
            self.note(event, "the key holds a control character. Write the key without it.")
            return
        first = frame.items.get(name)
        if first is not None:
            line = first.key_place.line
            self.note(event, f"the key {code(name)} stands twice; first on line {line}. Keep one of them.")
            return
        frame.name = name
        if event.anchor is not None:
            self.anchors[event.anchor] = Node(name, event, None, None, self.source)

    def scalar(self, event: Event) -> str | int | float | bool | None:
        """Return the value of a scalar by the core schema of YAML 1.2 (2009), 10.3."""
        text: str = event.value
        if event.tag is not None:
            self.refuse_tag(event)
            return text
        if not event.implicit[0]:
            if event.style == '"' and _hidden(text):
                self.note(event, "the text in double quotes holds a control character. Write it without.")
            return text
        if text in _WORDS:
            if not text and (slip := swallowed(self.text, event.end_mark.index)):
                self.note(event, slip)
            return _WORDS[text]
        if text[0] in _NUMBER_START and text[-1] in _NUMBER_END:
            return self.number(event, text)
        if self.may_slip:
            slip = slip_in_number(text)
            if not slip and self.has_number_signs:
                slip = cut_off(self.text, event.end_mark.index, text)
            if slip:
                self.note(event, slip)
        return text

    def number(self, event: Event, text: str) -> str | int | float:
        value: int | float
        if re.fullmatch(_INT, text) is not None:
            value = int(text, 0 if text[1:2] in ("o", "x") else 10) if len(text) <= _MOST_DIGITS else _TOO_LARGE
            if abs(value) < _TOO_LARGE:
                return value
        elif re.fullmatch(_FLOAT, text) is not None:
            value = float(text)
            if math.isfinite(value):
                return value
        elif re.fullmatch(_NOT_FINITE, text) is not None:
            self.note(
                event, f"{code(text)} is no finite number. Write the value, or leave the key out if it is unknown."
            )
            return 0
        else:
            return text
        self.note(event, f"the number {code(text)} is too large to be a value of a design. Correct it.")
        return 0

    def refuse_tag(self, event: Event) -> None:
        tag = code(str(event.ctag or event.tag))
        said = f"{tag} is a tag, and tags are not read. Remove it, or put the value in quotes."
        self.add(self.source.start_of(event), said)

    def alias(self, event: Event) -> None:
        """Put a copy of the anchored value where the alias stands; every place in it is the alias's own."""
        frame = self.stack[-1] if self.stack else None
        name: str = event.anchor
        said = code(f"*{name}")
        if frame is not None and frame.key is None and type(frame.items) is dict:
            self.note(event, f"the alias {said} stands as a key. Write the key out.")
            frame.key, frame.name = event, None
            return
        original = self.anchors.get(name)
        if original is None:
            near = nearest(name, self.anchors)
            hint = (
                f"did you mean `*{near}`?"
                if near
                else f"Mark a value above with `&{shorten(name)}`, or write the value out."
            )
            self.note(event, f"the alias {said} names no anchor above. {hint}")
            self.attach(frame, None, event)
            return
        if any(open_frame.node is original for open_frame in self.stack):
            self.note(event, f"the alias {said} stands inside the very value it names. Write the value out.")
            self.attach(frame, None, event)
            return
        self.copy(original, self.attach(frame, original.value, event), event)

    def copy(self, original: Node, top: Node, event: Event) -> None:
        waiting = [(original, top, len(self.stack))]
        while waiting:
            old, new, depth = waiting.pop()
            self.copied += 1
            if self.copied > MAX_ALIAS_NODES:
                self.note(
                    event, f"the aliases up to here expand to more than {MAX_ALIAS_NODES} values. Write values out."
                )
                raise _Stop
            if type(old.value) is dict:
                new.value = {
                    name: Node(child.value, event, event, (new.trail, name), self.source)
                    for name, child in old.value.items()
                }
                pairs = zip(old.value.values(), new.value.values(), strict=True)
            elif type(old.value) is list:
                new.value = [
                    Node(child.value, event, None, (new.trail, index), self.source)
                    for index, child in enumerate(old.value)
                ]
                pairs = zip(old.value, new.value, strict=True)
            else:
                continue
            if depth >= MAX_DEPTH:
                self.note(event, f"values are nested more than {MAX_DEPTH} deep in this alias. Flatten the file.")
                raise _Stop
            waiting.extend((old_child, new_child, depth + 1) for old_child, new_child in pairs)
