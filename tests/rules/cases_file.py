"""Cases of chapter file; the waivers meet failures of a circuit, because it needs little room around it."""

from __future__ import annotations

from datetime import date

from roomlint.testing import Case, Never, changed

DAY = date(2027, 6, 1)
# 2 x 45.72 m x 13 A x 0.006337 ohm/m = 7.53 V of 120 V = 6.28 %: outside the window of mains.voltage-drop (5 %).
LONG = {
    "roomlint": 1,
    "project": {"code": "case", "codes": {"electrical": "nec2023"}},
    "room": {"size": {"width": "4 m", "length": "5 m"}},
    "circuits": [
        {
            "id": "rack", "rating": "20 A", "voltage": "120 V", "conductor": "12 AWG", "material": "copper",
            "length": "150 ft",
            "loads": [{"id": "amp", "what": "amplifier", "current": "9 A", "continuous": True},
                      {"id": "box", "what": "player", "current": "4 A", "continuous": False}],
        }
    ],
}  # fmt: skip
SHORT = changed(LONG, {"circuits.0.length": "50 ft"})
UNDECIDED = changed(LONG, {"circuits.0.length": None})
SMALL = changed(LONG, {"circuits.0.rating": "15 A"})
DROP = {"rule": "mains.voltage-drop", "subject": "rack", "because": "the run follows the old chase"}
LOAD = {"rule": "mains.circuit-load", "subject": "rack", "because": "the player never runs with the amplifier"}
SUPPORTED = {"approved_by": "A. Electrician", "document": "sheet E-3"}


def waiving(waiver: dict[str, str], room: dict[str, object] = LONG, **more: str) -> dict[str, object]:
    return changed(room, {"waivers": [{**waiver, **more}]})


NO_MISSING = "a waiver is read whole: what it lacks is a failure of its own, never an open verdict"

CASES: list[Case | Never] = [
    Case("file.waiver-unknown-rule", "pass", waiving(DROP)),
    Case("file.waiver-unknown-rule", "fail", waiving(DROP, rule="mains.voltage-dorp"), says="'mains.voltage-drop'"),
    Case("file.waiver-unknown-rule", "notApplicable", LONG),
    Case("file.waiver-unknown-subject", "pass", waiving(DROP)),
    Case("file.waiver-unknown-subject", "fail", waiving(DROP, subject="rakc"), says="did you mean 'rack'"),
    Case("file.waiver-unknown-subject", "fail", waiving(DROP, subject="rack+amq"), says="did you mean 'amp'"),
    Case("file.waiver-unknown-subject", "notApplicable", LONG),
    Case("file.waiver-unmatched", "pass", waiving(DROP)),
    Case("file.waiver-unmatched", "fail", waiving(DROP, SHORT), level="warning", says="meets no failure"),
    Case("file.waiver-unmatched", "fail", waiving(DROP, subject="amp"), says="does not judge what it names"),
    Case("file.waiver-unmatched", "fail", waiving(DROP, rule="file.waiver-expired"), says="cannot be waived"),
    Case("file.waiver-unmatched", "notApplicable", waiving(DROP, UNDECIDED), says="cannot be decided yet"),
    Case("file.waiver-unmatched", "notApplicable", waiving(DROP, subject="rakc"), says="a finding of its own"),
    Case("file.waiver-without-reason", "pass", waiving(DROP)),
    Case("file.waiver-without-reason", "fail", waiving(DROP, because=" "), level="error", says="Add `because`"),
    Case("file.waiver-without-reason", "notApplicable", LONG),
    Case("file.waiver-unsupported", "pass", waiving(LOAD, SMALL, **SUPPORTED)),
    Case("file.waiver-unsupported", "pass", waiving(DROP)),
    Case("file.waiver-unsupported", "fail", waiving(LOAD, SMALL), level="error", says="approved_by and document"),
    Case("file.waiver-unsupported", "fail", waiving(LOAD, SMALL, approved_by="lead"), says="lacks document"),
    Case("file.waiver-unsupported", "notApplicable", LONG),
    Case("file.waiver-expired", "pass", waiving(DROP, until="2027-06-01"), today=DAY),
    Case("file.waiver-expired", "fail", waiving(DROP, until="2027-05-31"), today=DAY, level="warning"),
    Case("file.waiver-expired", "notApplicable", waiving(DROP), today=DAY),
    Case("file.waiver-expiring", "pass", waiving(DROP, until="2027-07-02"), today=DAY),
    Case("file.waiver-expiring", "fail", waiving(DROP, until="2027-07-01"), today=DAY, level="note"),
    Case("file.waiver-expiring", "notApplicable", waiving(DROP, until="2027-05-31"), today=DAY),
    Case("file.waiver-expiring", "notApplicable", waiving(DROP), today=DAY),
    Case("file.waiver-bound-passed", "pass", waiving(DROP, bound="7 %")),
    Case("file.waiver-bound-passed", "fail", waiving(DROP, bound="6 %"), level="warning", says="that is passed by"),
    Case("file.waiver-bound-passed", "notApplicable", waiving(DROP)),
    Case("file.waiver-bound-unfit", "pass", waiving(DROP, bound="7 %")),
    Case("file.waiver-bound-unfit", "fail", waiving(DROP, bound="7 m"), level="error"),
    Case("file.waiver-bound-unfit", "notApplicable", waiving(DROP)),
    *(
        Never(rule, "open", NO_MISSING)
        for rule in (
            "file.waiver-bound-passed",
            "file.waiver-bound-unfit",
            "file.waiver-expired",
            "file.waiver-expiring",
            "file.waiver-unknown-rule",
            "file.waiver-unknown-subject",
            "file.waiver-unmatched",
            "file.waiver-unsupported",
            "file.waiver-without-reason",
        )
    ),
]
