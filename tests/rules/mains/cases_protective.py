"""Cases of arc-fault, ground-fault and residual-current protection, and of the earth."""

from __future__ import annotations

from typing import TYPE_CHECKING

from mains_rooms import AUSTRALIAN, BRITISH, CODE, GERMAN, NO_CODE, OUTLET, C, edge, on, silent

if TYPE_CHECKING:
    from roomlint.edges import Edge
    from roomlint.testing import Case, Never

NO_OUTLETS = {
    f"{C}.receptacles": [], f"{C}.loads.0.receptacle": None, f"{C}.loads.1.receptacle": None,
}  # fmt: skip
UNSAID_OUTLETS = {**NO_OUTLETS, f"{C}.receptacles": None}
OTHER = {CODE: "other", "project.region": None}
GARAGE = {f"{OUTLET}.place": "garage"}
BASEMENT = {"room.level": "basement", f"{OUTLET}.place": "finished-basement"}
WET_BAR = {f"{OUTLET}.sink": "1.2 m"}
OLD = {CODE: "nec2017"}

CASES: list[Case | Never] = [
    *silent("mains.small-circuit-receptacle", "mains.arc-fault", "mains.ground-fault", "mains.residual-current",
            "mains.lifted-earth"),
    on("mains.small-circuit-receptacle", "pass"),
    on("mains.small-circuit-receptacle", "fail", {f"{C}.rating": "10 A"}, level="error", says="10 A"),
    on("mains.small-circuit-receptacle", "fail", {f"{C}.rating": "10 A", CODE: "nec2026"}, level="error"),
    on("mains.small-circuit-receptacle", "fail", {f"{C}.rating": "15.5 A +- 1 A"}),
    on("mains.small-circuit-receptacle", "open", NO_CODE, says="codes.electrical"),
    on("mains.small-circuit-receptacle", "open", UNSAID_OUTLETS, says="receptacles"),
    on("mains.small-circuit-receptacle", "notApplicable", NO_OUTLETS),
    on("mains.small-circuit-receptacle", "notApplicable", room=BRITISH),
    on("mains.arc-fault", "pass"),
    on("mains.arc-fault", "fail", {f"{C}.afci": False}, says="210.12(B)"),
    on("mains.arc-fault", "fail", {f"{C}.afci": False, CODE: "nec2020"}, says="210.12(A)"),
    on("mains.arc-fault", "fail", {f"{C}.afci": False, CODE: "nec2026"}, says="210.12(B) (the number of 2023)"),
    on("mains.arc-fault", "open", {f"{C}.afci": None}, says="afci"),
    on("mains.arc-fault", "open", {f"{C}.new": None}, says="new"),
    on("mains.arc-fault", "notApplicable", {f"{C}.new": False}),
    on("mains.arc-fault", "notApplicable", {f"{C}.voltage": "240 V", f"{OUTLET}.form": None}),
    on("mains.arc-fault", "notApplicable", {f"{C}.rating": "30 A"}),
    on("mains.arc-fault", "notApplicable", room=GERMAN),
    # Damp places by edition: a garage and a sink in every one, a finished basement since 2020.
    on("mains.ground-fault", "fail", GARAGE, level="warning", says="garage"),
    on("mains.ground-fault", "fail", {**GARAGE, **OLD}, level="warning"),
    on("mains.ground-fault", "fail", {**OLD, f"{OUTLET}.place": "unfinished-basement"}, level="warning"),
    on("mains.ground-fault", "fail", {**OLD, **WET_BAR}, says="sink"),
    on("mains.ground-fault", "fail", BASEMENT, says="basement"),
    on("mains.ground-fault", "fail", {**BASEMENT, CODE: "nec2026"}),
    on("mains.ground-fault", "notApplicable", {**BASEMENT, **OLD}),
    on("mains.ground-fault", "pass", {**GARAGE, f"{C}.gfci": True}),
    on("mains.ground-fault", "open", {**GARAGE, f"{C}.gfci": None}, says="gfci"),
    on("mains.ground-fault", "open", {f"{OUTLET}.place": None}, says="place"),
    on("mains.ground-fault", "open", {f"{OUTLET}.sink": None}, says="sink"),
    on("mains.ground-fault", "fail", {"room.level": "basement", f"{OUTLET}.place": None}),
    on("mains.ground-fault", "notApplicable"),
    on("mains.ground-fault", "notApplicable", {f"{OUTLET}.sink": "3 m"}),
    # Guarded: 1.85 m +- 0.10 m may be within 1.8 m.
    on("mains.ground-fault", "fail", {f"{OUTLET}.sink": "1.85 m +- 0.10 m"}),
    on("mains.ground-fault", "notApplicable", {**GARAGE, **OLD, f"{C}.voltage": "240 V", f"{OUTLET}.form": None}),
    on("mains.ground-fault", "notApplicable", {**GARAGE, f"{C}.voltage": "277 V", f"{OUTLET}.form": None}),
    on("mains.ground-fault", "notApplicable", room=BRITISH),
    on("mains.residual-current", "pass", room=BRITISH, figure=30.0, source="BS 7671 411.3.3: 30 mA"),
    on("mains.residual-current", "pass", room=GERMAN, figure=30.0, source="IEC 60364-4-41 411.3.3: 30 mA"),
    on("mains.residual-current", "fail", {f"{C}.rcd": "300 mA"}, room=GERMAN, level="error", figure=300.0,
       source="as written", says="trips at 300 mA; at most 30 mA"),
    on("mains.residual-current", "fail", {f"{C}.rcd": "100 mA", f"{C}.new": False}, room=BRITISH, level="warning"),
    # That there is none can be said, and is a finding; unsaid is open.
    on("mains.residual-current", "fail", {f"{C}.rcd": "none"}, room=GERMAN, level="error", says="no residual-current"),
    on("mains.residual-current", "fail", {f"{C}.rcd": "none", f"{C}.new": False}, room=BRITISH, level="warning"),
    on("mains.residual-current", "open", {f"{C}.rcd": None}, room=BRITISH, says="rcd"),
    on("mains.residual-current", "open", UNSAID_OUTLETS, room=GERMAN, says="receptacles"),
    on("mains.residual-current", "notApplicable", NO_OUTLETS, room=GERMAN),
    on("mains.residual-current", "fail", {**NO_OUTLETS, f"{C}.rcd": "none"}, room=AUSTRALIAN),
    # The clause looks at the socket: a larger device before it does not excuse the circuit.
    on("mains.residual-current", "fail", {f"{C}.rating": "40 A", f"{C}.rcd": "none"}, room=GERMAN, level="error"),
    on("mains.residual-current", "fail", {f"{C}.rating": "40 A", f"{C}.rcd": "none"}, room=BRITISH, level="error"),
    on("mains.residual-current", "open", {f"{C}.rating": "40 A", f"{OUTLET}.form": None, f"{OUTLET}.rating": None},
       room=GERMAN, says="form"),
    on("mains.residual-current", "notApplicable",
       {f"{C}.rating": "63 A", f"{OUTLET}.form": None, f"{OUTLET}.rating": "63 A"}, room=GERMAN),
    on("mains.residual-current", "notApplicable"),
    on("mains.residual-current", "notApplicable", OTHER),
    on("mains.lifted-earth", "pass"),
    on("mains.lifted-earth", "fail", {f"{C}.earth_lifted": True}, level="error", says="shock hazard"),
    on("mains.lifted-earth", "open", {f"{C}.earth_lifted": None}, says="earth_lifted"),
]  # fmt: skip

EDGES: list[Edge] = [
    edge("mains.residual-current", f"{C}.rcd", 5.0, 300.0, 1, unit="mA", scale=0.001, room=GERMAN),
]
