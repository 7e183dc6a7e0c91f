"""Cases of the waivers that stand in a room file.

They meet a seat 0.3 m from the rear wall, which is closer than the 0.5 m of `boundary.seat-to-wall`, and, where a
document is asked for, a circuit whose loads ask for 15.25 A of a device of 15 A.
"""

from __future__ import annotations

from datetime import date
from typing import Any

from mains_rooms import ROOM as CIRCUIT
from mains_rooms import SEVEN, C

from roomlint.sample import room
from roomlint.testing import Case, Never, changed

DAY = date(2027, 6, 1)
NEAR = changed(room(), {"seats.0.ear.from_front": "5.7 m"})
FAR = room()
UNDECIDED = changed(NEAR, {"seats.0.ear": None})
ROUGH = changed(NEAR, {"seats.0.ear.from_front": "5.49 m", "survey.tolerance": "30 mm"})
SMALL = changed(CIRCUIT, {f"{C}.rating": "15 A"})
SEAT = {"rule": "boundary.seat-to-wall", "subject": "seat", "because": "one row is all that the room allows"}
LOAD = {"rule": "mains.circuit-load", "subject": "c1", "because": "the vacuum never runs with the rack"}
LIFTED = changed(CIRCUIT, {f"{C}.earth_lifted": True})
SUPPORTED = {"approved_by": "A. Electrician", "document": "sheet E-3"}

EARTH = {"rule": "mains.lifted-earth", "subject": "c1", "because": "the hum is gone", **SUPPORTED}


def waiving(waiver: dict[str, str], data: dict[str, Any] = NEAR, **more: str) -> dict[str, Any]:
    return changed(data, {"waivers": [{**waiver, **more}]})


NO_MISSING = "a waiver is read whole: what it lacks is a failure of its own, never an open verdict"
NAMES = "unknown-rule unknown-subject unmatched without-reason unsupported expired expiring bound-passed bound-unfit"

CASES: list[Case | Never] = [
    Case("file.waiver-unknown-rule", "pass", waiving(SEAT)),
    Case("file.waiver-unknown-rule", "fail", waiving(SEAT, rule="boundary.seat-to-wal"), level="error",
         says="boundary.seat-to-wall"),
    Case("file.waiver-unknown-rule", "fail", waiving(SEAT, rule="boundary.rear-null")),
    Case("file.waiver-unknown-rule", "notApplicable", NEAR),
    Case("file.waiver-unknown-subject", "pass", waiving(SEAT)),
    Case("file.waiver-unknown-subject", "pass", waiving(SEAT, subject="seat/seat")),
    Case("file.waiver-unknown-subject", "fail", waiving(SEAT, subject="saet"), level="error", says="'seat'"),
    Case("file.waiver-unknown-subject", "fail", waiving(SEAT, subject="seat+sofa"), says="sofa"),
    Case("file.waiver-unknown-subject", "notApplicable", NEAR),
    Case("file.waiver-unmatched", "pass", waiving(SEAT)),
    Case("file.waiver-unmatched", "fail", waiving(SEAT, FAR), level="warning", says="no longer fails"),
    Case("file.waiver-unmatched", "fail", waiving(SEAT, rule="boundary.corner"), says="does not judge what it names"),
    Case("file.waiver-unmatched", "fail", waiving(SEAT, rule="file.waiver-expired"), says="cannot be accepted"),
    Case("file.waiver-unmatched", "review", waiving(SEAT, UNDECIDED), says="cannot be decided yet"),
    Case("file.waiver-unmatched", "review", waiving(SEAT, ROUGH), says="cannot be decided yet"),
    Case("file.waiver-unmatched", "notApplicable", waiving(SEAT, subject="saet"), says="a finding of its own"),
    Case("file.waiver-without-reason", "pass", waiving(SEAT)),
    Case("file.waiver-without-reason", "fail", waiving(SEAT, because=" "), level="error", says="gives no reason"),
    Case("file.waiver-without-reason", "notApplicable", NEAR),
    Case("file.waiver-unsupported", "pass", waiving(SEAT)),
    Case("file.waiver-unsupported", "pass", waiving(LOAD, SMALL, **SUPPORTED), (SEVEN,)),
    Case("file.waiver-unsupported", "fail", waiving(LOAD, SMALL), (SEVEN,), level="error",
         says="without an approver and a document"),
    Case("file.waiver-unsupported", "fail", waiving(LOAD, SMALL, approved_by="lead"), (SEVEN,), says="without a document"),
    Case("file.waiver-unsupported", "notApplicable", NEAR),
    Case("file.waiver-expired", "pass", waiving(SEAT, until="2027-06-01"), today=DAY),
    Case("file.waiver-expired", "fail", waiving(SEAT, until="2027-05-31"), today=DAY, level="warning",
         says="2027-05-31"),
    Case("file.waiver-expired", "notApplicable", waiving(SEAT), today=DAY, says="no last day"),
    Case("file.waiver-expiring", "pass", waiving(SEAT, until="2027-07-02"), today=DAY),
    Case("file.waiver-expiring", "fail", waiving(SEAT, until="2027-07-01"), today=DAY, level="note"),
    Case("file.waiver-expiring", "notApplicable", waiving(SEAT, until="2027-05-31"), today=DAY, says="already ended"),
    Case("file.waiver-expiring", "notApplicable", waiving(SEAT), today=DAY),
    Case("file.waiver-bound-passed", "pass", waiving(SEAT, bound="0.3 m")),
    Case("file.waiver-bound-passed", "pass", waiving(SEAT, bound="11 in")),
    Case("file.waiver-bound-passed", "fail", waiving(SEAT, bound="0.35 m"), level="warning", says="is passed by 50 mm: seat"),
    Case("file.waiver-bound-passed", "notApplicable", waiving(SEAT), says="no bound"),
    Case("file.waiver-bound-unfit", "pass", waiving(SEAT, bound="0.3 m")),
    Case("file.waiver-bound-unfit", "fail", waiving(SEAT, bound="7 %"), level="error", says="does not fit"),
    Case("file.waiver-bound-unfit", "fail", waiving(EARTH, LIFTED, bound="3 A"), (SEVEN,), level="error",
         says="there is no figure to hold to it"),
    Case("file.waiver-bound-unfit", "notApplicable", waiving(SEAT)),
    *(Never(f"file.waiver-{name}", "open", NO_MISSING) for name in NAMES.split()),
]  # fmt: skip
