"""Cases of the sums of a circuit."""

from __future__ import annotations

from typing import TYPE_CHECKING

from mains_rooms import (
    BRITISH,
    CODE,
    GERMAN,
    NFPA,
    NO_CODE,
    OUTLET,
    OUTLET_KEY,
    RACK,
    RACK_KEY,
    SEVEN,
    VACUUM,
    C,
    edge,
    on,
    silent,
)

from roomlint.testing import changed

if TYPE_CHECKING:
    from roomlint.edges import Edge
    from roomlint.testing import Case, Never

FASTENED = {f"{RACK}.connection": "fastened", f"{RACK}.receptacle": None}
NAMEPLATE_13 = {f"{RACK}.current": "13 A"}
LOW = {f"{RACK}.current": None, f"{RACK}.apparent_power": "60 VA"}
ALONE = {f"{C}.loads.1": None}
CLAIMED = {f"{C}.dedicated": True}
SINGLE = {**CLAIMED, **ALONE}

CASES: list[Case | Never] = [
    *silent("mains.individual", "mains.circuit-load", "mains.plug-in-share", "mains.fastened-share",
            "mains.receptacle-total", "mains.inrush"),
    # Dedicated means one piece of equipment.
    on("mains.individual", "pass", SINGLE),
    on("mains.individual", "fail", CLAIMED, level="error", says="2 loads"),
    on("mains.individual", "fail", {**SINGLE, f"{C}.feeds_lighting": True}, says="lighting"),
    on("mains.individual", "open", {**SINGLE, f"{C}.feeds_lighting": None}, says="feeds_lighting"),
    on("mains.individual", "open", {f"{C}.dedicated": None}, says="dedicated"),
    on("mains.individual", "notApplicable"),
    # 1.25 x 9 + 4 = 15.25 A: within 20 A, not within 15 A.
    on("mains.circuit-load", "pass", figure=15.25, source=NFPA),
    on("mains.circuit-load", "fail", {f"{C}.rating": "15 A"}, figure=15.25, level="error", source=NFPA,
       says="its loads ask for a rating of 15.2 A; its breaker or fuse is rated 15 A"),
    on("mains.circuit-load", "pass", {CODE: "nec2026"}, figure=15.25, source=NFPA),
    on("mains.circuit-load", "pass", {f"{RACK}.continuous": None}, figure=15.25, source=NFPA),
    on("mains.circuit-load", "pass", {f"{RACK}.current": None}, figure=15.25, source="1080 VA over 120 V is 9 A"),
    on("mains.circuit-load", "pass", {f"{RACK}.current": None, f"{RACK}.apparent_power": "1080 VA"}, figure=15.25,
       source="1080 VA over 120 V is 9 A"),
    on("mains.circuit-load", "open", {f"{C}.loads": None}, says="loads"),
    on("mains.circuit-load", "open", {f"{VACUUM}.current": None}, says="apparent_power"),
    # Lighting on the circuit is a load: unsaid or unknown it is asked for, never nothing.
    on("mains.circuit-load", "open", {f"{C}.feeds_lighting": None}, says="feeds_lighting"),
    on("mains.circuit-load", "open", {f"{C}.feeds_lighting": True}, says="lighting"),
    on("mains.circuit-load", "pass", {f"{C}.feeds_lighting": True, f"{C}.lighting": "120 VA"}, figure=16.5,
       source="1.25 x (9 + 1) + 4 A"),
    # What is known is too much already, whatever the rest draws.
    on("mains.circuit-load", "fail", {f"{RACK}.current": "17 A", f"{VACUUM}.current": None}, figure=21.25,
       source="1.25 x 17 A"),
    # Without a code both sums must agree: 15.25 and 13 A within 20 A, neither within 12 A, one within 15 A.
    on("mains.circuit-load", "pass", NO_CODE),
    on("mains.circuit-load", "fail", {**NO_CODE, f"{C}.rating": "12 A"}),
    on("mains.circuit-load", "open", {**NO_CODE, f"{C}.rating": "15 A"}, says="codes.electrical"),
    # The quarter more is NFPA's: 13 A stand on a German 16 A circuit, 17 A do not.
    on("mains.circuit-load", "pass", room=GERMAN, figure=13.0, source="9 A and 4 A"),
    on("mains.circuit-load", "fail", {f"{VACUUM}.current": "8 A"}, room=GERMAN, figure=17.0, level="error",
       source="9 A and 8 A"),
    on("mains.circuit-load", "notApplicable", {f"{C}.loads": []}),
    # Guarded: 15.9 A +- 0.2 A is within 16 A by less than its uncertainty.
    on("mains.circuit-load", "fail", {f"{VACUUM}.current": "6.9 A +- 0.2 A"}, room=GERMAN, figure=15.9,
       source="9 A and 6.9 A"),
    # A declared 60 VA against a sheet's 1080 VA: nothing is made of it until one of the two is corrected.
    on("mains.circuit-load", "open", LOW, says="mains.sheet-draw"),
    # A rack of 13 A by cord: too much for a shared 15 A circuit (12 A), within a 20 A one (16 A).
    on("mains.plug-in-share", "pass", NAMEPLATE_13, subject=RACK_KEY, figure=65.0, source=NFPA),
    on("mains.plug-in-share", "fail", {**NAMEPLATE_13, f"{C}.rating": "15 A"}, subject=RACK_KEY,
       figure=86.6667, level="warning", source=NFPA),
    on("mains.plug-in-share", "open", {f"{C}.dedicated": None}, says="dedicated"),
    on("mains.plug-in-share", "open", {f"{RACK}.connection": None}, subject=RACK_KEY, says="connection"),
    on("mains.plug-in-share", "notApplicable", SINGLE),
    on("mains.plug-in-share", "notApplicable", FASTENED, subject=RACK_KEY),
    on("mains.plug-in-share", "open", CLAIMED, says="mains.individual"),
    on("mains.plug-in-share", "open", LOW, subject=RACK_KEY, says="mains.sheet-draw"),
    # No share of the circuit in Europe: 13 A of 16 A are 81 %.
    on("mains.plug-in-share", "notApplicable", NAMEPLATE_13, room=GERMAN),
    # 11 A fastened in place on a shared 20 A circuit is 55 %; 9 A is 45 %.
    on("mains.fastened-share", "fail", {**FASTENED, f"{RACK}.current": "11 A"}, figure=55.0, source=NFPA),
    on("mains.fastened-share", "pass", FASTENED, figure=45.0, source=NFPA),
    on("mains.fastened-share", "open", {f"{RACK}.connection": None}, says="connection"),
    on("mains.fastened-share", "fail",
       {**FASTENED, f"{RACK}.current": "11 A", f"{VACUUM}.connection": None, f"{C}.feeds_lighting": True}),
    on("mains.fastened-share", "open", {**CLAIMED, **FASTENED}, says="mains.individual"),
    on("mains.fastened-share", "open", LOW, says="mains.sheet-draw"),
    on("mains.fastened-share", "notApplicable",
       {**FASTENED, f"{VACUUM}.connection": "fastened", f"{VACUUM}.receptacle": None}),
    on("mains.fastened-share", "notApplicable", FASTENED, room=BRITISH),
    on("mains.receptacle-total", "pass", figure=13.0, source="9 A + 4 A against 16 A of Table 210.21(B)(2)"),
    on("mains.receptacle-total", "fail", {f"{OUTLET}.rating": "15 A"}, figure=13.0, subject=OUTLET_KEY,
       source="9 A + 4 A against 12 A of Table 210.21(B)(2)"),
    on("mains.receptacle-total", "open", {f"{OUTLET}.rating": None}, says="rating"),
    # A plug that names no receptacle may be in this one.
    on("mains.receptacle-total", "open", {f"{RACK}.receptacle": None}, says="receptacle"),
    on("mains.receptacle-total", "open", {f"{RACK}.receptacle": None, f"{VACUUM}.receptacle": None}, says="receptacle"),
    on("mains.receptacle-total", "open", CLAIMED, says="waits until"),
    # A receptacle that the circuit may not have is a finding of its own.
    on("mains.receptacle-total", "notApplicable", {f"{OUTLET}.rating": "30 A", f"{OUTLET}.form": None}),
    on("mains.receptacle-total", "open", LOW, says="mains.sheet-draw"),
    on("mains.receptacle-total", "notApplicable", SINGLE),
    on("mains.receptacle-total", "notApplicable",
       {**FASTENED, f"{VACUUM}.connection": "fastened", f"{VACUUM}.receptacle": None}),
    on("mains.receptacle-total", "notApplicable", room=GERMAN),
    on("mains.inrush", "pass"),
    on("mains.inrush", "pass", {f"{VACUUM}.linear_supply": True}),
    on("mains.inrush", "fail", {f"{VACUUM}.linear_supply": True, f"{C}.sequenced": False}, level="note",
       says="2 transformer supplies"),
    on("mains.inrush", "open", {f"{RACK}.linear_supply": None}, says="linear_supply"),
    on("mains.inrush", "open", {f"{VACUUM}.linear_supply": True, f"{C}.sequenced": None}, says="sequenced"),
    on("mains.inrush", "fail", {f"{RACK}.linear_supply": None, f"{VACUUM}.linear_supply": True, f"{C}.sequenced": False},
       products=(changed(SEVEN, {"amplifier.linear_supply": True}),)),
    on("mains.inrush", "notApplicable", {f"{C}.loads": []}),
]  # fmt: skip

EDGES: list[Edge] = [
    edge("mains.circuit-load", f"{VACUUM}.current", 1.0, 12.0, 1, unit="A"),
    edge("mains.plug-in-share", f"{RACK}.current", 9.0, 20.0, 1, unit="A", subject=RACK_KEY),
    edge("mains.fastened-share", f"{RACK}.current", 9.0, 20.0, 1, unit="A", changes=FASTENED),
    edge("mains.receptacle-total", f"{VACUUM}.current", 1.0, 12.0, 1, unit="A"),
]
