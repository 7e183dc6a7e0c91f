"""No key without a reader: whatever a room file or a sheet may say, somebody looks at it, or it is told why not.

Every base room of the cases is reviewed by its own rule, the examples and the shorthand rooms by the whole book, with
their figures; what nobody looks at in any of them stands in the list below, with the reason.
"""

from __future__ import annotations

import sys
from collections import Counter
from pathlib import Path
from typing import TYPE_CHECKING, Any, Final

from rich_rooms import BOOK, BY_ID, EXAMPLES, plain, sheets

from roomlint.design.along import Along
from roomlint.design.element import Element, Holds, Key
from roomlint.design.model import Design
from roomlint.design.parts import Coordinates
from roomlint.design.products import ProductSheet
from roomlint.measure.sheet import sheet
from roomlint.review.engine import review_room
from roomlint.sample import CEILINGS, shorthand
from roomlint.testing import Case, case_modules, changed, room_of

if TYPE_CHECKING:
    from collections.abc import Iterator

    import pytest

CASES = Path(__file__).parent.parent / "rules"
NOT_READ: Final[dict[str, str]] = {}
"""Keys that nobody reads, and why they may be written all the same."""
INSTEAD: Final = Along.KEYS.keys() - {"from_wall_left"}
"""Other ends that a place along a wall may be measured from: where it begins is worked out of any of them."""
MOST: Final = 4
"""So many passing and so many failing cases of each rule are looked at."""


def rooms() -> Iterator[tuple[Any, list[Any]]]:
    """Yield rooms that nobody has read yet, each with the rules that are to look at it."""
    for path in sorted(EXAMPLES.glob("*/*.room.yaml")):
        yield room_of(plain(path), sheets()), list(BOOK.rules)
    for ceiling in CEILINGS:
        yield room_of(shorthand(ceiling), sheets()), list(BOOK.rules)
    cornered = {"shape": "corners", "heights": ["2.4 m", "2.6 m", "2.6 m", "2.4 m"]}
    yield room_of(changed(shorthand(), {"room.ceiling": cornered}), sheets()), list(BOOK.rules)
    seen: Counter[tuple[str, str]] = Counter()
    for module in case_modules(CASES):
        for case in module.CASES:
            if isinstance(case, Case) and case.kind in {"pass", "fail", "review"} and seen[case.rule, case.kind] < MOST:
                seen[case.rule, case.kind] += 1
                try:
                    yield room_of(case.room, case.products, case.house, case.today), [BY_ID[case.rule]]
                except ValueError:
                    continue  # `tests/rules` tells of a case that cannot be read


def unread(of: type[Element], looked_at: set[tuple[str, str]], way: str = "") -> Iterator[str]:
    """Yield the way to every key of a kind of element that nobody looked at, those that only reports tell apart."""
    for key in of.KEYS.values():
        path = f"{way}.{key.name}" if way else key.name
        if key.told or of is Coordinates or (issubclass(of, Along) and key.name in INSTEAD):
            continue
        below = getattr(key, "of", None)
        if isinstance(key, Holds) and isinstance(below, type) and issubclass(below, Element):
            yield from unread(below, looked_at, path)
        if (of.__name__, key.name) not in looked_at:
            yield path


def test_every_key_has_a_reader_or_a_reason(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.syspath_prepend(str(CASES))
    looked_at: set[tuple[str, str]] = set()
    get = Key.__get__

    def noted(self: Key[Any], element: Element | None, owner: type) -> Any:
        if element is not None:
            looked_at.add((type(element).__name__, self.name))
        return get(self, element, owner)

    monkeypatch.setattr(Key, "__get__", noted)
    before = set(sys.modules)
    for room, rules in rooms():
        if len(rules) > 1:
            sheet(room.figures)
        review_room(room, rules)
    for name in set(sys.modules) - before:
        if name.endswith("_rooms"):
            del sys.modules[name]
    nobody = {*unread(Design, looked_at), *unread(ProductSheet, looked_at, "product")}
    assert sorted(nobody) == sorted(NOT_READ)


def test_every_key_of_the_list_is_one() -> None:
    every = {*unread(Design, set()), *unread(ProductSheet, set(), "product")}
    assert NOT_READ.keys() - every == set()
