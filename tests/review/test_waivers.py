"""Waivers accept failures on the record, and only as far as the record goes."""

from __future__ import annotations

from dataclasses import replace
from datetime import date

import pytest

from roomlint.design.base import Seen, need
from roomlint.measure.figure import Figure
from roomlint.review import (
    LOUDSPEAKERS,
    ROOM,
    Fate,
    Kind,
    Level,
    Unheld,
    at_each_seat,
    at_least,
    between,
    practice,
    rule,
)
from roomlint.review.engine import review_room
from roomlint.testing import changed, room_of

DAY = date(2027, 6, 1)
DATA = {
    "roomlint": 1,
    "project": {"code": "attic-17"},
    "room": {"size": {"width": "4 m", "length": "5 m"}},
    "seats": [{"id": "middle"}, {"id": "aisle"}],
    "loudspeakers": [
        {"id": "left", "position": {"from_left": "1 m", "from_front": "1 m", "height": "1 m ± 1 cm"}},
        {"id": "right", "position": {"from_left": "3 m", "from_front": "1 m", "height": "1.3 m"}},
    ],
}


def height_rule(rule_id, *, level=Level.WARNING, each=LOUDSPEAKERS):
    @rule(
        rule_id,
        level=level,
        basis=practice("a test"),
        each=each,
        window=between(1.2, 1.4, "m"),
        says="{figure} up; {window} wanted",
        since="0.1.0",
        caution="An engineer decides what it holds." if rule_id.startswith("mount.") else "",
    )
    def judged(room, subject):
        """Loudspeakers stand at ear height.

        Why: A test needs a reason, like any rule.

        How decided: By the height of the acoustic centre.

        Remedy: Move it up or down by the figure.

        When to waive: Never, in a test of waivers.
        """
        speaker = subject.source if isinstance(subject, Seen) else subject
        height = need(speaker.position, speaker, "position").z
        return room.figures.angles.figure("height", "m", lambda world: world(height))

    return judged


HEIGHT = height_rule("layout.height")
AT_SEATS = height_rule("layout.heard", each=at_each_seat(LOUDSPEAKERS))
HELD = height_rule("mount.height", level=Level.ERROR)


def failed(waiver, judged=HEIGHT, room=DATA, today=DAY):
    waivers = [{"rule": judged.id, "subject": "left", "because": "glass"} | waiver]
    done = review_room(room_of(changed(room, {"waivers": waivers}), today=today), [judged])
    assert done.troubles == []
    return {verdict.subject: verdict for verdict in done.verdicts if verdict.kind is Kind.FAIL}


def test_a_waived_failure_keeps_its_level_and_never_gates() -> None:
    verdict = failed({"approved_by": "lead", "until": "2027-12-31"})["loudspeaker/left"]
    assert verdict.level is Level.WARNING
    assert verdict.gates is None
    assert verdict.waived is not None
    assert (verdict.waived.because, verdict.waived.approved_by, verdict.waived.until) == ("glass", "lead", "2027-12-31")


def test_a_waiver_of_one_element_meets_it_at_every_seat() -> None:
    found = failed({}, AT_SEATS)
    assert {subject for subject, verdict in found.items() if verdict.waived is not None} == {
        "loudspeaker/left+seat/middle",
        "loudspeaker/left+seat/aisle",
    }


def test_a_waiver_of_joined_ids_meets_one_seat_only() -> None:
    found = failed({"subject": "left + middle"}, AT_SEATS)
    assert found["loudspeaker/left+seat/middle"].waived is not None
    assert found["loudspeaker/left+seat/aisle"].waived is None


def test_a_kind_before_the_id_tells_apart_elements_that_share_it() -> None:
    room = changed(DATA, {"seats.0.id": "left"})
    found = failed({"subject": "seat/left"}, AT_SEATS, room)
    assert found["loudspeaker/left+seat/left"].waived is not None
    assert found["loudspeaker/left+seat/aisle"].waived is None


def test_the_projects_code_waives_a_rule_about_the_whole_room() -> None:
    whole = replace(
        HEIGHT,
        id="layout.whole",
        each=ROOM,
        window=at_least(1.0, "m"),
        judge=lambda *_: Figure.plain("nothing", "m", 0.0),
    )
    assert failed({"subject": "attic-17"}, whole)["design/attic-17"].waived is not None


def test_an_expired_waiver_leaves_the_failure_and_says_so() -> None:
    verdict = failed({"until": "2027-05-31"})["loudspeaker/left"]
    assert verdict.waived is None
    assert verdict.unheld == Unheld(Fate.EXPIRED, ended="2027-05-31")


def test_the_last_day_still_counts() -> None:
    assert failed({"until": "2027-06-01"})["loudspeaker/left"].waived is not None


@pytest.mark.parametrize(("bound", "waived"), [("1 m", True), ("95 cm", True), ("1.05 m", False)])
def test_a_bound_counts_on_the_side_where_the_figure_is_worse(bound: str, *, waived: bool) -> None:
    verdict = failed({"bound": bound})["loudspeaker/left"]
    assert (verdict.waived is not None) is waived


def test_a_passed_bound_says_by_how_much() -> None:
    unheld = failed({"bound": "1.05 m"})["loudspeaker/left"].unheld
    assert (unheld.fate, unheld.bound, unheld.passed.unit) == (Fate.BOUND_PASSED, "1.05 m", "m")
    assert unheld.passed.value == pytest.approx(0.05)


def test_a_bound_above_the_window_counts_upward() -> None:
    room = changed(DATA, {"loudspeakers.0.position.height": "1.8 m"})
    assert failed({"bound": "1.9 m"}, room=room)["loudspeaker/left"].waived is not None
    assert failed({"bound": "1.7 m"}, room=room)["loudspeaker/left"].waived is None


def test_where_people_can_get_hurt_the_uncertainty_counts_against_the_bound() -> None:
    record = {"approved_by": "A. Engineer", "document": "sheet 3"}
    assert failed({"bound": "1 m", **record}, HELD)["loudspeaker/left"].waived is None
    assert failed({"bound": "0.98 m", **record}, HELD)["loudspeaker/left"].waived is not None


def test_a_bound_in_another_unit_accepts_nothing() -> None:
    unheld = failed({"bound": "7 %"})["loudspeaker/left"].unheld
    assert unheld.fate is Fate.BOUND_UNFIT
    assert unheld.unfit


@pytest.mark.parametrize(
    ("record", "lacks"),
    [
        ({}, ("approved_by", "document")),
        ({"approved_by": "lead"}, ("document",)),
        ({"document": "sheet 3"}, ("approved_by",)),
    ],
)
def test_an_error_of_mounting_needs_approver_and_document(record: dict[str, str], lacks: tuple[str, ...]) -> None:
    verdict = failed(record, HELD)["loudspeaker/left"]
    assert verdict.waived is None
    assert verdict.unheld == Unheld(Fate.UNSUPPORTED, lacks=lacks)


def test_a_waiver_without_a_reason_accepts_nothing() -> None:
    assert failed({"because": " "})["loudspeaker/left"].waived is None


def test_one_waiver_that_holds_is_enough() -> None:
    waivers = [
        {"rule": HEIGHT.id, "subject": "left", "because": "old", "until": "2027-01-01"},
        {"rule": HEIGHT.id, "subject": "left", "because": "renewed"},
    ]
    done = review_room(room_of(changed(DATA, {"waivers": waivers}), today=DAY), [HEIGHT])
    assert [verdict.waived.because for verdict in done.verdicts if verdict.waived] == ["renewed"]
