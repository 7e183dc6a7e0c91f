"""Makes the record of what each rule reads from the examples and the cases: `python -m roomlint.testing inputs`."""

from __future__ import annotations

import json
from functools import partial
from typing import TYPE_CHECKING, Any

from roomlint.review.book import load_book
from roomlint.review.inputs import recorded
from roomlint.sample import CEILINGS, shorthand
from roomlint.source.tree import read_tree
from roomlint.testing import Case, case_modules, room_of

if TYPE_CHECKING:
    from collections.abc import Iterable
    from pathlib import Path

    from roomlint.review.rule import AnyRule


def inputs_text(examples: Path, cases: Path) -> str:
    """Return the record of what each built-in rule reads, as it is kept: in the example rooms and in its own cases.

    No room can be wired by two codes, so that the examples alone would leave out what only some rooms have.
    """

    def plain(path: Path) -> Any:  # noqa: ANN401  plain data
        node, problems = read_tree(path.read_bytes(), path.name)
        if node is None or problems:
            raise ValueError(f"{path}: {problems}")
        return node.plain()

    sheets = [plain(path) for path in sorted((examples / "products").glob("*.product.yaml"))]
    data = [plain(path) for path in sorted(examples.glob("*/*.room.yaml"))]
    data += [shorthand(ceiling) for ceiling in CEILINGS]
    rules = [rule for rule in load_book().rules if rule.package == "roomlint"]
    found = recorded(rules, [partial(room_of, each, sheets) for each in data])
    for rule, keys in reads_of_cases(rules, cases).items():
        found[rule] = sorted({*found[rule], *keys})
    return json.dumps(found, indent=1)


def reads_of_cases(rules: Iterable[AnyRule], folder: Path) -> dict[str, set[str]]:
    """Return the keys that each rule looks at in its passing and failing cases."""
    by_id = {rule.id: rule for rule in rules}
    found: dict[str, set[str]] = {}
    for case in (case for module in case_modules(folder) for case in module.CASES):
        if isinstance(case, Case) and case.kind in {"pass", "fail", "review"} and case.rule in by_id:
            room = partial(room_of, case.room, case.products, case.house, case.today)
            found.setdefault(case.rule, set()).update(recorded([by_id[case.rule]], [room])[case.rule])
    return found
