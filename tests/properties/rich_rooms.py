"""Rich rooms as plain data, and what the whole rule book says of them."""

from __future__ import annotations

import json
from functools import cache
from pathlib import Path
from typing import TYPE_CHECKING, Any

from roomlint.review.book import load_book
from roomlint.review.engine import review_room
from roomlint.source.tree import read_tree
from roomlint.testing import room_of

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping

EXAMPLES = Path(__file__).parent.parent.parent / "example_projects"
RICH = ("attic/attic", "basement/basement", "loft-bay/loft-bay")
BOOK = load_book()
Data = dict[str, Any]


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


def verdicts_of(data: Mapping[str, Any]) -> dict[tuple[str, str], Any]:
    """Return what the whole book says, by rule and subject; a file that cannot be read raises."""
    outcome = review_room(room_of(data, sheets()), BOOK.rules)
    assert not outcome.troubles, outcome.troubles
    return {(verdict.rule, verdict.subject): verdict for verdict in outcome.verdicts}


def keys_of(data: Any, way: tuple[str | int, ...] = ()) -> Iterator[tuple[str | int, ...]]:
    """Yield the way to every key of a file, outermost first; items of lists are no keys."""
    if isinstance(data, dict):
        for key, value in data.items():
            yield (*way, key)
            yield from keys_of(value, (*way, key))
    elif isinstance(data, list):
        for index, value in enumerate(data):
            yield from keys_of(value, (*way, index))


def without(data: Data, way: tuple[str | int, ...]) -> Data:
    """Return a copy of the data without one key."""
    copied: Any = json.loads(json.dumps(data))
    at = copied
    for step in way[:-1]:
        at = at[step]
    del at[way[-1]]
    result: Data = copied
    return result


def written(way: tuple[str | int, ...]) -> str:
    """Return a way as a path, items as `[]`."""
    return ".".join("[]" if isinstance(step, int) else step for step in way).replace(".[]", "[]")

