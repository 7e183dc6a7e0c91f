"""Cases of receptacles, plugs and cords."""

from __future__ import annotations

from typing import TYPE_CHECKING

from mains_rooms import (
    AUSTRALIAN,
    BRITISH,
    CODE,
    GERMAN,
    NO_CODE,
    OUTLET,
    RACK,
    VACUUM,
    C,
    edge,
    on,
    silent,
)

if TYPE_CHECKING:
    from roomlint.edges import Edge
    from roomlint.testing import Case, Never

FASTENED = {
    f"{RACK}.connection": "fastened", f"{RACK}.receptacle": None, f"{VACUUM}.connection": "fastened",
    f"{VACUUM}.receptacle": None,
}  # fmt: skip
SPUR = {f"{C}.receptacles.1": {"id": "r2", "spur": "unfused", "outlets": 2}}
CLAIMED = {f"{C}.dedicated": True}
SINGLE = {**CLAIMED, f"{C}.loads.1": None, f"{OUTLET}.outlets": 1}
LOW = {f"{RACK}.current": None, f"{RACK}.apparent_power": "60 VA"}

COUNTED = {f"{C}.units": "none"}
STRIP = {"id": "strip", "kind": "strip", "receptacle": "r1", "rating": "15 A"}


def bath(away: str) -> dict[str, object]:
    """Return changes that put the receptacle into a bathroom."""
    return {f"{OUTLET}.place": "bathroom", f"{OUTLET}.bath": away}


CASES: list[Case | Never] = [
    *silent("mains.receptacle-rating", "mains.socket-device",
            "mains.outlet-count", "mains.tamper-resistant", "mains.facing-up", "mains.dimmed-receptacle"),
    *silent("mains.bath-distance"),
    on("mains.bath-distance", "pass", bath("3 m"), room=BRITISH, figure=3.0, source="as it is measured"),
    on("mains.bath-distance", "fail", bath("2 m"), room=BRITISH, level="warning", figure=2.0, source="as it is measured",
       says="2.00 m from the edge of the bath or shower; at least 2.50 m"),
    on("mains.bath-distance", "pass", bath("2 m"), room=GERMAN),
    on("mains.bath-distance", "fail", bath("0.5 m"), room=AUSTRALIAN),
    on("mains.bath-distance", "open", {f"{OUTLET}.place": "bathroom"}, room=BRITISH, says="bath"),
    on("mains.bath-distance", "open", {f"{OUTLET}.place": None}, room=BRITISH, says="place"),
    on("mains.bath-distance", "open", NO_CODE, says="codes.electrical"),
    on("mains.bath-distance", "notApplicable", bath("none"), room=BRITISH, says="neither bath nor shower"),
    on("mains.bath-distance", "notApplicable", room=BRITISH, says="no bathroom"),
    on("mains.bath-distance", "notApplicable", bath("0.5 m"), says="ground-fault"),
    on("mains.outlet-count", "pass", COUNTED),
    on("mains.outlet-count", "fail", {**COUNTED, f"{OUTLET}.outlets": 1}, level="warning", says="has outlets for 1, and 2 plugs are meant for it"),
    on("mains.outlet-count", "pass", {**COUNTED, f"{OUTLET}.outlets": 1, f"{VACUUM}.connection": "fastened", f"{VACUUM}.receptacle": None}),
    # Two into a strip are one plug; a strip that is plugged into the same duplex beside two others is the third.
    on("mains.outlet-count", "pass", {**COUNTED, f"{C}.units": [STRIP], f"{RACK}.unit": "strip", f"{RACK}.receptacle": None}),
    on("mains.outlet-count", "fail", {**COUNTED, f"{C}.units": [STRIP]}, says="3 plugs are meant for it"),
    on("mains.outlet-count", "open", {**COUNTED, f"{OUTLET}.outlets": None}, says="outlets"),
    on("mains.outlet-count", "pass", {**COUNTED, f"{C}.loads.1": None, f"{OUTLET}.outlets": None}),
    on("mains.outlet-count", "open", {**COUNTED, f"{VACUUM}.receptacle": None}, says="receptacle"),
    on("mains.outlet-count", "open", {f"{C}.units": None}, says="units"),
    on("mains.outlet-count", "open", {**COUNTED, f"{C}.loads": None}, says="loads"),
    on("mains.receptacle-rating", "pass"),
    on("mains.receptacle-rating", "fail", {f"{C}.rating": "15 A"}, level="warning", says="20 A"),
    on("mains.receptacle-rating", "fail", {f"{C}.rating": "25 A"}),
    on("mains.receptacle-rating", "open", {f"{OUTLET}.rating": None}, says="rating"),
    # The single receptacle of a dedicated 20 A circuit is rated 20 A or more; a duplex is two receptacles.
    on("mains.receptacle-rating", "fail", {**SINGLE, f"{OUTLET}.rating": "15 A"}),
    on("mains.receptacle-rating", "pass", {**SINGLE, f"{OUTLET}.rating": "30 A", f"{OUTLET}.form": None}),
    on("mains.receptacle-rating", "pass", {**SINGLE, f"{OUTLET}.rating": "15 A", f"{OUTLET}.outlets": 2}),
    on("mains.receptacle-rating", "open", {**SINGLE, f"{OUTLET}.rating": "15 A", f"{OUTLET}.outlets": None},
       says="outlets"),
    on("mains.receptacle-rating", "open", CLAIMED, says="mains.individual"),
    on("mains.receptacle-rating", "notApplicable", room=BRITISH),
    # No table of NFPA's for a European socket, and no review for ever: a window of its own.
    on("mains.socket-device", "pass", room=GERMAN, figure=16.0, source="as written"),
    on("mains.socket-device", "pass", room=BRITISH, figure=32.0, source="as written"),
    on("mains.socket-device", "pass", room=AUSTRALIAN),
    on("mains.socket-device", "fail", {f"{C}.rating": "32 A"}, room=GERMAN, level="warning", says="32.0 A"),
    on("mains.socket-device", "open", {f"{OUTLET}.form": None}, room=GERMAN, says="form"),
    on("mains.socket-device", "notApplicable"),
    # Off a ring of one point: one spur with one double socket.
    on("mains.spur", "pass", room=BRITISH),
    on("mains.spur", "pass", SPUR, room=BRITISH),
    on("mains.spur", "fail", {**SPUR, f"{C}.receptacles.1.outlets": 3}, room=BRITISH, level="warning", says="3 plugs"),
    on("mains.spur", "fail", {f"{OUTLET}.spur": "unfused"}, room=BRITISH, says="1 unfused spurs off 0 points"),
    on("mains.spur", "pass", {**SPUR, f"{OUTLET}.spur": "fused", f"{C}.receptacles.1.spur": "fused"}, room=BRITISH),
    on("mains.spur", "open", {f"{OUTLET}.spur": None}, room=BRITISH, says="spur"),
    on("mains.spur", "open", {f"{C}.arrangement": None}, room=BRITISH, says="arrangement"),
    on("mains.spur", "notApplicable", {f"{C}.arrangement": "radial"}, room=BRITISH),
    on("mains.spur", "notApplicable"),
    on("mains.tamper-resistant", "pass"),
    on("mains.tamper-resistant", "pass", {f"{OUTLET}.height": "1.9 m", f"{OUTLET}.tamper_resistant": False}),
    on("mains.tamper-resistant", "fail", {f"{OUTLET}.tamper_resistant": False}, level="note", says="0.40 m"),
    # Guarded: 1.75 m +- 0.10 m may be within reach.
    on("mains.tamper-resistant", "fail",
       {f"{OUTLET}.tamper_resistant": False, f"{OUTLET}.height": "1.75 m +- 0.10 m"}),
    on("mains.tamper-resistant", "open", {f"{OUTLET}.tamper_resistant": None}, says="tamper_resistant"),
    on("mains.tamper-resistant", "open", {f"{OUTLET}.tamper_resistant": False, f"{OUTLET}.height": None},
       says="height"),
    on("mains.tamper-resistant", "open", NO_CODE, says="codes.electrical"),
    on("mains.tamper-resistant", "notApplicable", room=BRITISH),
    on("mains.facing-up", "pass"),
    on("mains.facing-up", "pass", {f"{OUTLET}.facing_up": True, f"{OUTLET}.listed_for_floor": True}),
    on("mains.facing-up", "fail", {f"{OUTLET}.facing_up": True}, level="warning"),
    on("mains.facing-up", "open", {f"{OUTLET}.facing_up": True, f"{OUTLET}.listed_for_floor": None},
       says="listed_for_floor"),
    on("mains.facing-up", "open", {f"{OUTLET}.facing_up": None}, says="facing_up"),
    on("mains.dimmed-receptacle", "pass"),
    on("mains.dimmed-receptacle", "fail", {f"{OUTLET}.dimmed": True}, level="error"),
    on("mains.dimmed-receptacle", "open", {f"{OUTLET}.dimmed": None}, says="dimmed"),
    on("mains.receptacle-rating", "pass", {CODE: "nec2026"}),
]  # fmt: skip

EDGES: list[Edge] = [
    edge("mains.bath-distance", f"{OUTLET}.bath", 1.0, 4.0, 1, room=BRITISH, changes=bath("2 m")),
    edge("mains.bath-distance", f"{OUTLET}.bath", 0.2, 1.0, 1, room=GERMAN, changes=bath("0.5 m")),
    edge("mains.socket-device", f"{C}.rating", 10.0, 40.0, 1, unit="A", room=GERMAN),
    edge("mains.socket-device", f"{C}.rating", 10.0, 40.0, 1, unit="A", room=BRITISH),
]
