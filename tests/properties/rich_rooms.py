"""Rich rooms as plain data, what the whole rule book says of them, and which rules look at which key."""

from __future__ import annotations

import json
import re
from functools import cache
from pathlib import Path
from typing import TYPE_CHECKING, Any

from roomlint.design.element import unread
from roomlint.review.book import load_book
from roomlint.review.engine import review_room
from roomlint.review.inputs import kept
from roomlint.sample import shorthand
from roomlint.source.tree import read_tree
from roomlint.testing import room_of

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator, Mapping

    from roomlint.review.rule import AnyRule
    from roomlint.review.verdict import Verdict

EXAMPLES = Path(__file__).parent.parent.parent / "example_projects"
BOOK = load_book()
BY_ID = {rule.id: rule for rule in BOOK.rules}
Data = dict[str, Any]
Way = tuple[str | int, ...]
Said = dict[tuple[str, str], Any]
LOCATED = re.compile(r"\d+: ")
"""How a problem that was found in a file is told: the line first."""


def plain(path: Path) -> Data:
    """Return a file as plain data."""
    node, problems = read_tree(path.read_bytes(), path.name)
    assert not problems
    assert node is not None
    data: Data = node.plain()
    return data


@cache
def sheets() -> tuple[Data, ...]:
    """Return all product sheets of the examples."""
    return tuple(plain(path) for path in sorted((EXAMPLES / "products").glob("*.product.yaml")))


def verdicts_of(data: Mapping[str, Any], rules: Iterable[AnyRule] = BOOK.rules) -> Said:
    """Return what rules say, by rule and subject; a file that cannot be read raises."""
    outcome = review_room(room_of(data, sheets()), rules)
    assert not outcome.troubles, outcome.troubles
    return {(verdict.rule, verdict.subject): verdict for verdict in outcome.verdicts}


def _is_part(data: Data, way: Way) -> bool:
    """Return whether a mapping stands at a key; where nothing stands yet, none does."""
    try:
        return isinstance(at(data, way), dict)
    except (KeyError, IndexError):
        return False


class Rich:
    """A rich room: what is said of it, and by which rules once one of its keys is another."""

    def __init__(self, name: str) -> None:
        self.name = name
        self.data = shorthand() if name == "shorthand" else plain(EXAMPLES / f"{name}.room.yaml")
        whole = room_of(self.data, sheets())
        outcome = review_room(whole, BOOK.rules)
        assert not outcome.troubles, outcome.troubles
        self.said: Said = {(verdict.rule, verdict.subject): verdict for verdict in outcome.verdicts}
        self.unread = frozenset(left.node.path for left in unread(whole.design))
        """The keys that reports tell as judged by no rule; what stands below one is not listed again."""

    def rules_of(self, way: Way) -> list[AnyRule]:
        """Return the rules that look at a key, at what is below it or at what it stands in, with their causes.

        What a rule looks at decides what it says, so that no other can say anything else without the key. Of a part the
        record holds the keys below it: who only looks whether it is there has looked at something beside it.
        """
        path = written(way[:-1] if len(way) > 1 and _is_part(self.data, way) else way)
        found: set[str] = set()
        for rule, keys in kept().items():
            for key in keys:
                if key == path or key.startswith((f"{path}.", f"{path}[]")) or path.startswith((f"{key}.", f"{key}[]")):
                    found.add(rule)
                    break
        ahead = list(found)
        while ahead:
            for cause in BY_ID[ahead.pop()].after:
                if cause not in found:
                    found.add(cause)
                    ahead.append(cause)
        return [rule for rule in BOOK.rules if rule.id in found]

    def said_by(self, rules: Iterable[AnyRule]) -> Said:
        """Return what some rules say of the room as it is."""
        wanted = {rule.id for rule in rules}
        return {key: verdict for key, verdict in self.said.items() if key[0] in wanted}


@cache
def rich_room(name: str) -> Rich:
    """Return a rich room, reviewed once."""
    return Rich(name)


def same(one: Verdict | None, other: Verdict | None) -> bool:
    """Whether two verdicts would be told alike: kind, level, figure and words."""
    if one is None or other is None:
        return one is other
    return _told(one) == _told(other)


def _told(verdict: Verdict) -> object:
    figure = verdict.figure
    number = (f"{figure.value:.9g}", f"{figure.u:.6g}", figure.assumes) if figure is not None else None
    facts = tuple((name, str(getattr(fact, "value", fact))) for name, fact in sorted(verdict.facts.items()))
    return (verdict.kind, verdict.level, number, verdict.said, facts, verdict.because, verdict.wanted, verdict.follows,
            verdict.window, verdict.waived is not None)  # fmt: skip


def keys_of(data: Any, way: Way = ()) -> Iterator[Way]:
    """Yield the way to every key of a file, outermost first; items of lists are no keys."""
    if isinstance(data, dict):
        for key, value in data.items():
            yield (*way, key)
            yield from keys_of(value, (*way, key))
    elif isinstance(data, list):
        for index, value in enumerate(data):
            yield from keys_of(value, (*way, index))


def items_of(data: Any, way: Way = ()) -> Iterator[Way]:
    """Yield the way to every item of a list that is an element of its own."""
    for key, value in data.items() if isinstance(data, dict) else enumerate(data) if isinstance(data, list) else ():
        if isinstance(key, int) and isinstance(value, dict) and "id" in value:
            yield (*way, key)
        yield from items_of(value, (*way, key))


def at(data: Any, way: Way) -> Any:
    """Return the value at a way."""
    for step in way:
        data = data[step]
    return data


def without(data: Data, way: Way) -> Data:
    """Return a copy of the data without one key or item."""
    copied: Any = json.loads(json.dumps(data))
    del at(copied, way[:-1])[way[-1]]
    result: Data = copied
    return result


def with_value(data: Data, way: Way, value: object) -> Data:
    """Return a copy of the data with one value that is another."""
    copied: Any = json.loads(json.dumps(data))
    at(copied, way[:-1])[way[-1]] = value
    result: Data = copied
    return result


def numbered(way: Way) -> str:
    """Return a way as reports write it, such as `seats[0].ear.height`."""
    return "".join(f"[{step}]" if isinstance(step, int) else f".{step}" for step in way).lstrip(".")


def written(way: Way) -> str:
    """Return a way as a path, items as `[]`."""
    return ".".join("[]" if isinstance(step, int) else step for step in way).replace(".[]", "[]")
