"""Finds out which keys each rule reads, by running it alone: `python -m roomlint.testing inputs ROOM ...`.

Nobody declares what a rule reads; what it looks at in rich rooms is recorded, kept in `rules/inputs.json`, and shown on
its page. A test holds the record to what the rules do.
"""

from __future__ import annotations

import json
from functools import cache
from importlib.resources import files
from typing import TYPE_CHECKING

from roomlint.design.element import touched
from roomlint.review.engine import review_room

if TYPE_CHECKING:
    from collections.abc import Callable, Iterable, Iterator, Mapping

    from roomlint.review.room import Room
    from roomlint.review.rule import AnyRule


def recorded(rules: Iterable[AnyRule], rooms: Iterable[Callable[[], Room]]) -> dict[str, list[str]]:
    """Return the keys that each rule looks at in any of the rooms; each call of `rooms` gives an untouched one."""
    makers = tuple(rooms)
    return {rule.id: sorted({key for make in makers for key in _read_by(rule, make())}) for rule in rules}


def _read_by(rule: AnyRule, room: Room) -> Iterable[str]:
    before = set(_touched(room))
    review_room(room, [rule])
    return set(_touched(room)) - before


def _touched(room: Room) -> Iterator[str]:
    yield from (key for key in touched(room.design) if not key.startswith("waivers"))
    for product in room.design.products:
        yield from (f"product {key}" for key in touched(product))


@cache
def kept() -> Mapping[str, list[str]]:
    """Return the record that comes with the rule book."""
    found: dict[str, list[str]] = json.loads((files("roomlint.rules") / "inputs.json").read_text(encoding="utf-8"))
    return found
