"""What holds of the chapters cable and heat: knowledge only grows, and every code has an answer."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

import pytest
from cable_rooms import EVERY_CODE, LINKED, RACKED, SHEETS, WIRED, piped, sheet, under
from test_commissioning_properties import SILENT, readable, ways, without

from roomlint.review.book import load_book
from roomlint.review.engine import review_room
from roomlint.testing import changed, room_of

if TYPE_CHECKING:
    from roomlint.review.verdict import Verdict

Data = dict[str, Any]
RULES = [rule for rule in load_book().rules if rule.chapter in {"cable", "heat"}]
POWER = {"carries": "mains", "marking": "NM", "outer_diameter": "10 mm"}
NETWORK = {"carries": "network", "marking": "CMR", "powered": "none", "active": False}
FAULTY = changed(
    WIRED,
    {
        "cables.0.marking": "none", "cables.0.beside_power": "20 mm", "cables.0.edge_distance": "10 mm",
        "cables.0.length": "40 m", "cables.0.plenum": True,
    },
)  # fmt: skip
"""A run with a fault of every kind."""
ROOMS = {
    "wired": (WIRED, SHEETS),
    "faulty": (FAULTY, SHEETS),
    "graded": (changed(FAULTY, {"cables.0.marking": "CL3"}), SHEETS),
    "linked": (LINKED, SHEETS),
    "long link": (changed(LINKED, {"cables.0.length": "120 m", "cables.0.bend_radius": "8 mm"}), SHEETS),
    "shared": (piped(POWER, {}, NETWORK), SHEETS),
    "divided": (piped(POWER, {}, kind="trunking", size=None, inner_area="1500 mm2", partition=True), SHEETS),
    "apart": (piped({}, {}), SHEETS),
    "full": (piped({"outer_diameter": "12 mm"}, {"outer_diameter": "12 mm"}, size="1/2"), SHEETS),
    "racked": (RACKED, [sheet(power=None, apparent_power="700 VA", idle_power="40 W")]),
    "in use": (RACKED, [sheet(power="700 W", apparent_power="900 VA")]),
    "estimated": (changed(RACKED, {"electronics.racks.0.airflow": "50 m3/h"}), [sheet(power=None)]),
    "hot": (changed(RACKED, {"electronics.racks.0.inlet": "38 degC"}), [sheet()]),
    "still": (changed(RACKED, {"electronics.racks.0.airflow": "none"}), [sheet()]),
}


def judged(data: Data, sheets: list[Data]) -> dict[tuple[str, str], Verdict]:
    """Return what the two chapters say, by rule and subject."""
    outcome = review_room(room_of(data, sheets), RULES)
    assert not outcome.troubles, outcome.troubles
    return {(verdict.rule, verdict.subject): verdict for verdict in outcome.verdicts}


@pytest.mark.parametrize("name", ROOMS)
def test_no_key_that_is_taken_out_makes_a_verdict_fall_silent(name: str) -> None:
    data, sheets = ROOMS[name]
    base, told, tried = judged(data, sheets), [], 0
    others = [(way, without(data, way), sheets) for way in ways(data) if way[0] not in {"room", "seats"}]
    for number, one in enumerate(sheets):
        left = [(way, without(one, way)) for way in ways(one)]
        others += [(("sheet", *way), data, [*sheets[:number], other, *sheets[number + 1 :]]) for way, other in left]
    for way, other, products in others:
        if not readable(other, products):
            continue
        tried += 1
        now = judged(other, products)
        there = {part for _, subject in now for part in subject.split("+")}
        opened = {rule for (rule, subject), verdict in now.items() if str(verdict.kind) == "open"}
        for (rule, subject), verdict in base.items():
            kind = str(verdict.kind)
            after = str(now[rule, subject].kind) if (rule, subject) in now else "gone"
            if after not in SILENT.get(kind, ()) or (after == "gone" and (rule in opened or subject not in there)):
                continue
            told.append(f"without {way}: {rule} of {subject}: {kind} became {after}")
    assert tried > 15
    assert told == []


@pytest.mark.parametrize("code", EVERY_CODE)
@pytest.mark.parametrize("name", ROOMS)
def test_every_code_has_an_answer(name: str, code: str) -> None:
    """A complete room is decided under each code: nothing stays with a person because a clause is not known."""
    data, sheets = ROOMS[name]
    said = judged(under(code, data), sheets)
    assert said
    assert [key for key, verdict in said.items() if str(verdict.kind) == "review"] == []
    assert [key for key, verdict in said.items() if str(verdict.kind) == "open" and verdict.follows is None] == []
