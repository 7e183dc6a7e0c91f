"""Cases of the seats' own measures."""

from __future__ import annotations

from roomlint.testing import Case, Never, changed

ROOM = {
    "roomlint": 1,
    "project": {"code": "case"},
    "room": {"size": {"width": "4 m", "length": "5 m"}},
    "seats": [{"id": "a", "ear": {"from_left": "2 m", "from_front": "3 m", "height": "1.15 m"}}],
}
RAISED = changed(ROOM, {"seats.0.ear.height": "1.45 m", "seats.0.riser": "0.30 m"})

CASES: list[Case | Never] = [
    Case("layout.ear-height", "pass", ROOM, figure=1.15, source="as measured"),
    Case("layout.ear-height", "pass", RAISED, figure=1.15, source="1.45 m - 0.30 m"),
    Case(
        "layout.ear-height",
        "fail",
        changed(RAISED, {"seats.0.riser": None}),
        level="note",
        figure=1.45,
        source="as measured",
    ),
    Case("layout.ear-height", "review", changed(ROOM, {"seats.0.ear.height": "1.04 m ± 2 cm"})),
    Case("layout.ear-height", "open", changed(ROOM, {"seats.0.ear": None})),
    Case("layout.ear-height", "notApplicable", changed(ROOM, {"seats": None})),
]
