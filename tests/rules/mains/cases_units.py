"""Cases of strips, conditioners and uninterruptible supplies."""

from __future__ import annotations

from mains_rooms import NO_CODE, NONE_AT_ALL, RACK, ROOM, SEVEN, UNSAID, VACUUM, C, on

from roomlint.edges import Edge
from roomlint.testing import Case, Never, changed

STRIP = {"id": "strip", "kind": "strip", "rating": "15 A", "receptacle": "r1"}
ON_STRIP = changed(
    ROOM,
    {f"{C}.units": [STRIP], **{f"{load}.{key}": value for load in (RACK, VACUUM)
                               for key, value in (("receptacle", None), ("unit", "strip"))}},
)  # fmt: skip
"""9 A and 4 A through one strip of 15 A."""
CHAIN = changed(ON_STRIP, {f"{C}.units.1": {"id": "ups", "kind": "ups", "apparent_power": "1500 VA", "unit": "strip"}})
RATING, USE = f"{C}.units.0.rating", "mains.unit-rating"
CHAINED = "mains.unit-chain"

CASES: list[Case | Never] = [
    on(USE, "pass", room=ON_STRIP, figure=13.0, source="9 A and 4 A"),
    on(USE, "fail", {RATING: "10 A"}, room=ON_STRIP, level="error", figure=13.0, source="9 A and 4 A", says="13.0 A"),
    on(USE, "fail", {RATING: "13.5 A ± 1 A"}, room=ON_STRIP),
    # 1500 VA at 120 V are 12.5 A.
    on(USE, "fail", {RATING: None, f"{C}.units.0.apparent_power": "1500 VA"}, room=ON_STRIP, says="at most 12.5 A"),
    # By way of another unit too.
    on(USE, "pass", {f"{RACK}.unit": "ups"}, room=CHAIN, subject="unit/strip+circuit/c1", figure=13.0, source="9 A by way of the other, and 4 A"),
    on(USE, "pass", {f"{RACK}.unit": "ups"}, room=CHAIN, subject="unit/ups+circuit/c1", figure=9.0, source="9 A alone"),
    on(USE, "open", {RATING: None}, room=ON_STRIP, says="rating"),
    on(USE, "open", {f"{VACUUM}.current": None}, room=ON_STRIP, says="apparent_power"),
    # What is known is too much already.
    on(USE, "fail", {f"{VACUUM}.current": None, RATING: "8 A"}, room=ON_STRIP),
    on(USE, "open", says="units"),
    on(USE, "open", room=UNSAID, says="circuits"),
    on(USE, "notApplicable", {f"{C}.units": "none"}),
    on(USE, "notApplicable", {f"{load}.{key}": value for load in (RACK, VACUUM) for key, value in (("unit", None), ("receptacle", "r1"))}, room=ON_STRIP, says="no load"),
    # What is plugged in and does not say into what may be in the strip.
    on(USE, "open", {f"{load}.unit": None for load in (RACK, VACUUM)}, room=ON_STRIP, says="unit of rack"),
    on(USE, "open", {f"{VACUUM}.unit": None, RATING: "12 A"}, room=ON_STRIP, says="unit of vacuum"),
    on(USE, "fail", {f"{VACUUM}.unit": None, RATING: "8 A"}, room=ON_STRIP),
    on(USE, "notApplicable", {f"{C}.loads": []}, room=ON_STRIP, says="no load"),
    on(USE, "open", {f"{C}.loads": None}, room=ON_STRIP, says="loads"),
    on(USE, "notApplicable", room=NONE_AT_ALL),

    on(CHAINED, "pass", room=ON_STRIP),
    # What is plugged into a strip meets the strip's outlets; on its receptacle it counts all the same.
    on("mains.plug-fits", "notApplicable", room=ON_STRIP, says="strip"),
    on("mains.receptacle-total", "pass", room=ON_STRIP, figure=13.0, source="9 A and 4 A through the strip"),
    on(CHAINED, "pass", NO_CODE, room=ON_STRIP),
    on(CHAINED, "fail", room=CHAIN, subject="unit/ups+circuit/c1", level="warning", says="plugged into a strip"),
    on(CHAINED, "fail", {f"{C}.units.1.kind": "strip", f"{C}.units.0.kind": "conditioner"}, room=CHAIN, subject="unit/ups+circuit/c1", says="is a strip that is plugged into a conditioner"),
    on(CHAINED, "pass", {f"{C}.units.0.kind": "conditioner"}, room=CHAIN, subject="unit/ups+circuit/c1", says="plugged into a conditioner"),
    on(CHAINED, "open", {f"{C}.units.0.receptacle": None}, room=ON_STRIP, says="receptacle"),
    on(CHAINED, "open", says="units"),
    on(CHAINED, "notApplicable", {f"{C}.units": "none"}),
]  # fmt: skip
EDGES = [Edge(USE, ON_STRIP, f"{VACUUM}.current", 1.0, 10.0, 1, unit="A", products=[SEVEN])]
