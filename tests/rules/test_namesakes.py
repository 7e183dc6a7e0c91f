"""Two receptacles, or two loads, of one name on two circuits are two: each is judged by what is said of it alone.

A circuit of one case stands beside the circuit of another, once with its receptacles, units and loads under names of
their own and once under the first one's; the whole chapter must say the same of both rooms.
"""

from __future__ import annotations

import copy
from pathlib import Path
from typing import TYPE_CHECKING, Any

import pytest

from roomlint.review.book import load_book
from roomlint.review.engine import review_room
from roomlint.testing import Case, case_modules, room_of

if TYPE_CHECKING:
    from collections.abc import Iterator

    from roomlint.review.verdict import Verdict

Data = dict[str, Any]
RULES = [rule for rule in load_book().rules if rule.id.partition(".")[0] in {"mains", "channel", "heat"}]
ELSEWHERE = "elsewhere"
"""The id of the second circuit."""
LISTS = ("receptacles", "units", "loads")


def _circuits(case: Case) -> list[Any]:
    circuits = case.room.get("circuits")
    return circuits if isinstance(circuits, list) else []


def _list(circuit: Data, name: str) -> list[Data]:
    items = circuit.get(name)
    return items if isinstance(items, list) else []  # the word `none` is a list too


def _fed(case: Case) -> set[str]:
    return {load["feeds"] for load in _list(_circuits(case)[0], "loads") if "feeds" in load}


def _is_told(case: Case) -> bool:
    """Tell whether every cable names its circuit: a name that two circuits have tells none."""
    cables = case.room.get("cables")
    named = {circuit["id"] for circuit in _circuits(case)}
    return not isinstance(cables, list) or all(named & {one.get("from"), one.get("to")} for one in cables)


def _pairs() -> Iterator[Any]:
    """Yield each room with one circuit beside the one before it whose receptacles or loads differ."""
    cases = [entry for module in case_modules(Path(__file__).parent / "mains") for entry in module.CASES]
    before: dict[tuple[str, str], Case] = {}
    for number, case in enumerate(
        case for case in cases if isinstance(case, Case) and len(_circuits(case)) == 1 and _is_told(case)
    ):
        code = str(case.room.get("project", {}).get("codes", {}).get("electrical"))
        other = before.get((case.rule, code))
        before[case.rule, code] = case
        if other is not None and _circuits(other) != _circuits(case) and _fed(other) <= _fed(case):
            yield pytest.param(other, case, id=f"{case.rule}-{number}")


def _beside(circuit: Data, more: str) -> Data:
    """Return a circuit under another id, what is on it renamed with `more` after each name."""
    found = copy.deepcopy(circuit) | {"id": ELSEWHERE}
    for name in LISTS:
        for item in _list(found, name):
            for key in ("id", "receptacle", "unit"):
                if isinstance(item.get(key), str):
                    item[key] += more
    return found


def _said(case: Case, other: Case, more: str) -> dict[tuple[str, str], tuple[str, ...]]:
    circuits = [*copy.deepcopy(_circuits(case)), _beside(_circuits(other)[0], more)]
    room = room_of({**copy.deepcopy(dict(case.room)), "circuits": circuits}, case.products, case.house)
    return {(one.rule, _plain(one.subject, more)): _of(one) for one in review_room(room, RULES).verdicts}


def _of(verdict: Verdict) -> tuple[str, ...]:
    figure = verdict.figure
    follows = verdict.follows.rule if verdict.follows is not None else ""
    wanted = verdict.wanted.path if verdict.wanted is not None else ""
    return (
        str(verdict.kind),
        str(verdict.level),
        verdict.said,
        follows,
        wanted,
        f"{figure.value:.9g}" if figure else "",
    )


def _plain(subject: str, more: str) -> str:
    return subject.replace(more, "") if more else subject


@pytest.mark.parametrize(("other", "case"), tuple(_pairs()))
def test_namesakes_are_judged_each_by_what_is_said_of_it(other: Case, case: Case) -> None:
    assert _said(case, other, "") == _said(case, other, "-of-another-name")
