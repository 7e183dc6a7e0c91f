"""Every key matters: an absurd value is refused, changes what is said, or stands among what no rule judges."""

from __future__ import annotations

import os
import re
from typing import TYPE_CHECKING, Any, Final

from rich_rooms import LOCATED, at, items_of, keys_of, numbered, same, verdicts_of, with_value, written

from roomlint.design.keys import NONE, Flag, Number, Text
from roomlint.design.measured import Measured
from roomlint.design.model import Design
from roomlint.design.parts import Name, Part, Several

if TYPE_CHECKING:
    from collections.abc import Iterator

    from rich_rooms import Rich, Way

    from roomlint.design.element import Element, Key

EVERY_KEY = "ROOMLINT_EVERY_KEY" in os.environ
"""All keys of a room take up to two minutes: before a release, or when what a rule reads changed."""
STRIDE = 41
"""Otherwise every so many; a prime, so that it falls on all keys of the elements that look alike."""
ALIKE: Final[dict[str, str]] = {
    r"room\.ceiling\.framing\.runs": "which way joists run matters only where two things hang on one",
    r"circuits\[\]\.receptacles\[\]\.(place|sink)": "one receptacle that asks for protection, or has it, is enough",
    r"room\.cuts\[\]\.doubled": "a stud that does not bear takes the larger hole, doubled or not",
    r"circuits\[\]\.gfci": "where no receptacle asks for protection it may be there or not",
    r"circuits\[\]\.feeds_lighting": "a circuit that is overloaded by its plugs needs no lighting for it",
    r"handover\[0\]\.kind": "what nobody asks for beside the rest may be of any kind",
    r"loft-bay/loft-bay: room\.openings\[(0\]\.from_wall_left|1\]\.sill): nothing": "nothing stands near either",
    r"shorthand: room\.openings\[1\]\.from_wall_right: nothing": "nothing stands or hangs near it",
    r"attic/attic: treatments\[[23]\]\.bottom: nothing": "no reflection comes by them: they absorb as well lower down",
    r"basement/basement: room\.(ceiling|walls\[[234]\])\.finish: another word": (
        "its floor has no finish, so that nothing is told of how it rings, whatever the others are"
    ),
    r"room\.risers\[\]\.from_(left|front): nothing": "a riser that is moved a hand's width carries the same seats",
}
"""Values that are as good as each other where they stand, by the pattern of their path, with why.

A pattern may name one item by its number, go on with what is tried, or begin with one room: all else must make a
difference.
"""
NAUGHT = re.compile(r"0(\.0+)? ")


def declared(way: Way) -> Key[Any] | None:
    """Return how the key at the end of a way is declared; None for an item of a list of plain values."""
    of: type[Element] = Design
    key: Key[Any] | None = None
    for step in way:
        if isinstance(step, int):
            continue
        key = of.KEYS.get(step) if key is None or isinstance(key, Part | Several) else None
        if key is None:
            return None
        if isinstance(key, Part | Several):
            of = key.of
    return key


def absurd(rich: Rich, way: Way, key: Key[Any]) -> Iterator[tuple[str, list[object]]]:
    """Yield what is tried in the place of a value, and the values: one of them must make a difference."""
    value = at(rich.data, way)
    if isinstance(key, Measured) and value == NONE:
        yield "something", [key.example or key.of.example, "1 mm"]
    elif isinstance(key, Measured) and isinstance(value, str):
        yield "a thousand times more", [thousandfold(value)]
        if not key.above_zero and not NAUGHT.match(value):
            yield "nothing", [re.sub(r"^[-+]?[0-9][0-9./ -]*", "0 ", value)]
    elif isinstance(key, Number):
        yield "more and less", [value * 1000, 0, key.high, key.low]
    elif isinstance(key, Flag):
        yield "the other", [not value]
    elif isinstance(key, Name):
        yield "another", [one for one in others(rich, way, str(value)) if one != value]
    elif isinstance(key, Text) and key.words:
        yield "another word", [word for word in key.words if word != value]
    elif isinstance(key, Text) and key.part == "label":
        yield "another label", [label for label in ("M+000", "M-090", "U+045", "LFE2") if label != value]


def thousandfold(value: str) -> str:
    """Return a quantity with its first number a thousand times as large; of nothing, a hundred."""
    if NAUGHT.match(value):
        return NAUGHT.sub("100 ", value)
    return re.sub(r"^([-+]?[0-9]+(?:\.[0-9]+)?)", lambda found: f"{float(found[1]) * 1000:g}", value, count=1)


def others(rich: Rich, way: Way, value: str) -> list[str]:
    """Return the ids of the list that an id is of, and the names of walls and holders."""
    alike = [one for one in items_of(rich.data) if at(rich.data, one)["id"] == value]
    found = [at(rich.data, one)["id"] for one in items_of(rich.data) if alike and one[:-1] == alike[0][:-1]]
    return [*found, "left", "right", "ceiling", "floor", "stand", "nobody"]


def makes_a_difference(rich: Rich, way: Way, value: object) -> bool:
    """Whether a file with another value is refused, or is told anything else about."""
    rules = rich.rules_of(way)
    base = rich.said_by(rules)
    try:
        now = verdicts_of(with_value(rich.data, way, value), rules)
    except ValueError as error:
        return LOCATED.match(str(error)) is not None
    return base.keys() != now.keys() or any(not same(verdict, now[key]) for key, verdict in base.items())


def alike(rich: Rich, way: Way, what: str) -> bool:
    """Whether what is tried in the place of a value is as good as it."""
    paths = (written(way), numbered(way))
    forms = [form for path in paths for form in (path, f"{path}: {what}", f"{rich.name}: {path}: {what}")]
    return any(re.fullmatch(pattern, form) for pattern in ALIKE for form in forms)


def without_effect(rich: Rich, way: Way) -> list[str]:
    """Return what can be said in a key's place without anybody noticing."""
    key = declared(way)
    if key is None or key.told or isinstance(at(rich.data, way), dict | list):
        return []
    if any(numbered(way[:end]) in rich.unread for end in range(1, len(way) + 1)):
        return []
    return [
        f"{numbered(way)}: {what} makes no difference"
        for what, values in absurd(rich, way, key)
        if values and not alike(rich, way, what) and not any(makes_a_difference(rich, way, value) for value in values)
    ]


def test_an_absurd_value_is_refused_or_told_or_among_what_no_rule_judges(rich: Rich) -> None:
    ways = [way for way in keys_of(rich.data) if not isinstance(at(rich.data, way), dict | list)]
    assert len(ways) >= 150
    told = [text for way in ways[:: 1 if EVERY_KEY else STRIDE] for text in without_effect(rich, way)]
    assert not told, "\n".join(told)
