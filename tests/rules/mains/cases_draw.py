"""Cases of what is powered and what it is declared to draw."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from mains_rooms import NONE_AT_ALL, RACK, RACK_KEY, ROOM, SEVEN, UNSAID, VACUUM, C, edge, on

from roomlint.testing import Case, changed

if TYPE_CHECKING:
    from roomlint.edges import Edge
    from roomlint.testing import Never

NOTHING = changed(
    ROOM, {"electronics.amplifiers": "none", "loudspeakers": "none", "subwoofers": "none", f"{RACK}.feeds": None}
)
SUB: dict[str, Any] = {"roomlint_product": 1, "id": "bass", "kind": "subwoofer", "apparent_power": "350 VA"}
PASSIVE = changed(SUB, {"apparent_power": None})
DISPLAY: dict[str, Any] = {"roomlint_product": 1, "id": "panel", "kind": "display", "apparent_power": "280 VA"}
WITH_SUB = {"subwoofers": [{"id": "sub", "product": "bass"}]}
DRIVEN = {"electronics.amplifiers.0.feeds": [{"output": 1, "loudspeakers": ["sub"]}]}
SUB_LOAD = {f"{VACUUM}.feeds": "sub"}
SCREEN = {"picture": {"kind": "projection"}}
RACKED = {
    "electronics.racks": [{"id": "cabinet", "contains": ["amp"]}],
    f"{RACK}.feeds": "cabinet",
}
AMP = "amplifier/amp"
LOW = {f"{RACK}.current": None, f"{RACK}.apparent_power": "60 VA"}
AT_ANOTHER = {f"{VACUUM}.feeds": "amp"}

CASES: list[Case | Never] = [
    # Everything that is powered stands on one circuit: unsaid it is open, twice it is wrong.
    on("mains.every-item-fed", "pass", subject=AMP),
    Case("mains.every-item-fed", "open", UNSAID, products=(SEVEN,), subject=AMP, says="circuits"),
    Case("mains.every-item-fed", "open", NONE_AT_ALL, products=(SEVEN,), says="circuits"),
    on("mains.every-item-fed", "open", {f"{RACK}.feeds": None}, says="feeds"),
    on("mains.every-item-fed", "fail", AT_ANOTHER, level="error", subject=AMP, says="2 times"),
    on("mains.every-item-fed", "notApplicable", room=NOTHING),
    on("mains.every-item-fed", "pass", RACKED, subject=AMP),
    on("mains.every-item-fed", "open", WITH_SUB, products=(SEVEN, SUB), subject="subwoofer/sub"),
    on("mains.every-item-fed", "pass", {**WITH_SUB, **SUB_LOAD}, products=(SEVEN, SUB), subject="subwoofer/sub"),
    on("mains.every-item-fed", "open", {"subwoofers": [{"id": "sub"}]}, subject="subwoofer/sub", says="product"),
    on("mains.every-item-fed", "open", WITH_SUB, products=(SEVEN, PASSIVE), says="apparent_power",
       subject="product/bass"),
    on("mains.every-item-fed", "pass", {**WITH_SUB, **DRIVEN}, products=(SEVEN, PASSIVE)),
    on("mains.every-item-fed", "open", SCREEN, says="projector", subject="picture/picture"),
    on("mains.every-item-fed", "open", {"picture": {"product": "panel"}}, products=(SEVEN, DISPLAY),
       subject="picture/picture", says="feeds"),
    on("mains.every-item-fed", "open", {"picture": {"width": "1.4 m"}}, subject="picture/picture", says="kind"),
    # 9 A at 120 V are the sheet's own 1080 VA; 60 VA of 1080 are 0.056 of it.
    on("mains.sheet-draw", "pass", figure=1.0, source="9 A x 120 V over 1080 VA"),
    on("mains.sheet-draw", "fail", LOW, level="error", figure=0.05556, source="60 VA over 1080 VA"),
    on("mains.sheet-draw", "fail", {**RACKED, **LOW}, level="error", figure=0.05556, source="60 VA over 1080 VA"),
    on("mains.sheet-draw", "pass", {f"{RACK}.current": None}),
    on("mains.sheet-draw", "open", {f"{RACK}.feeds": None}, says="feeds"),
    on("mains.sheet-draw", "open", products=(changed(SEVEN, {"apparent_power": None}),), says="apparent_power"),
    on("mains.sheet-draw", "notApplicable", room=NOTHING),
    # Guarded: 8.2 A +- 0.3 A of 9 A is 0.91 +- 0.03.
    on("mains.sheet-draw", "fail", {f"{RACK}.current": "8.2 A +- 0.3 A"}),
    # 7 x 100 W / 8 = 87.5 W out, 350 W mains, 350 / (120 x 0.65) = 4.487 A; 9 / 4.487 = 2.0057
    on("mains.declared-draw", "pass", figure=2.00571, source="IEC 60065 convention of 1/8, worked by hand"),
    on("mains.declared-draw", "fail", {f"{RACK}.current": "3 A"}, level="note",
       products=(changed(SEVEN, {"apparent_power": "330 VA"}),)),
    on("mains.declared-draw", "open", {f"{RACK}.current": "3 A"}, says="mains.sheet-draw"),
    on("mains.declared-draw", "open", {f"{C}.voltage": None}, says="voltage"),
    on("mains.declared-draw", "notApplicable", room=NOTHING),
]  # fmt: skip

EDGES: list[Edge] = [
    edge("mains.sheet-draw", f"{RACK}.current", 2.0, 12.0, 1, unit="A", subject=RACK_KEY),
    edge("mains.declared-draw", f"{RACK}.current", 2.0, 12.0, 1, unit="A", subject=RACK_KEY),
]
