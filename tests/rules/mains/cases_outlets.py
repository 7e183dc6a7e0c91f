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
    RACK_KEY,
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

CASES: list[Case | Never] = [
    *silent("mains.receptacle-rating", "mains.socket-device", "mains.plug-rating", "mains.plug-fits",
            "mains.outlet-count", "mains.tamper-resistant", "mains.facing-up", "mains.dimmed-receptacle", "mains.concealed-cord"),
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
    # 13 A fuse, 5 A fuse, 16 A plug.
    on("mains.plug-rating", "pass", room=BRITISH, subject=RACK_KEY, figure=9.0, source="1080 VA, as written"),
    on("mains.plug-rating", "fail", {f"{RACK}.fuse": "5 A"}, room=BRITISH, subject=RACK_KEY, level="error",
       says="draws 9.0 A; its plug, fuse and socket carry at most 5 A"),
    on("mains.plug-rating", "fail", {f"{RACK}.current": "14 A", f"{RACK}.fuse": None}, room=BRITISH, subject=RACK_KEY,
       says="at most 13 A"),
    on("mains.plug-rating", "open", {f"{RACK}.fuse": None}, room=BRITISH, subject=RACK_KEY, says="fuse"),
    on("mains.plug-rating", "pass", {f"{VACUUM}.current": "2.5 A", f"{VACUUM}.fuse": None}, room=BRITISH),
    on("mains.plug-rating", "fail", {f"{VACUUM}.plug": "cee7-16"}, room=GERMAN, says="at most 2.5 A",
       subject="load/vacuum+circuit/c1"),
    on("mains.plug-rating", "fail", {f"{RACK}.current": "12 A"}, room=AUSTRALIAN, subject=RACK_KEY,
       says="at most 10 A"),
    on("mains.plug-rating", "open", {f"{RACK}.plug": None}, room=GERMAN, subject=RACK_KEY, says="plug"),
    on("mains.plug-rating", "open", {f"{OUTLET}.form": None}, room=GERMAN, says="form"),
    on("mains.plug-rating", "open", LOW, room=GERMAN, subject=RACK_KEY, says="mains.sheet-draw"),
    # What another load is wrong about does not touch this one.
    on("mains.plug-rating", "pass", LOW, room=GERMAN, subject="load/vacuum+circuit/c1"),
    on("mains.plug-rating", "notApplicable", FASTENED, room=GERMAN),
    on("mains.plug-rating", "notApplicable"),
    on("mains.plug-fits", "pass"),
    on("mains.plug-fits", "pass", room=GERMAN),
    on("mains.plug-fits", "fail", {f"{RACK}.plug": "bs1363"}, room=GERMAN, subject=RACK_KEY, level="warning",
       says="BS1363"),
    on("mains.plug-fits", "fail", {f"{RACK}.plug": "nema-5-20", f"{OUTLET}.form": "nema-5-15", f"{OUTLET}.rating": "15 A"},
       subject=RACK_KEY),
    on("mains.plug-fits", "open", {f"{RACK}.plug": None}, subject=RACK_KEY, says="plug"),
    on("mains.plug-fits", "open", {f"{OUTLET}.form": None}, says="form"),
    on("mains.plug-fits", "notApplicable", FASTENED),
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
    on("mains.concealed-cord", "pass"),
    on("mains.concealed-cord", "pass", {f"{RACK}.cord_concealed": True, f"{RACK}.listed_inlet_kit": True}),
    on("mains.concealed-cord", "fail", {f"{RACK}.cord_concealed": True}, subject=RACK_KEY, level="error"),
    on("mains.concealed-cord", "open", {f"{RACK}.cord_concealed": None}, subject=RACK_KEY, says="cord_concealed"),
    # What is wired in place and has a cord in the wall all the same is told.
    on("mains.concealed-cord", "fail", {**FASTENED, f"{RACK}.cord_concealed": True}, subject=RACK_KEY, level="error"),
    on("mains.concealed-cord", "notApplicable", {**FASTENED, f"{RACK}.cord_concealed": None}, subject=RACK_KEY),
    on("mains.concealed-cord", "notApplicable", FASTENED),
    on("mains.receptacle-rating", "pass", {CODE: "nec2026"}),
]  # fmt: skip

EDGES: list[Edge] = [
    edge("mains.socket-device", f"{C}.rating", 10.0, 40.0, 1, unit="A", room=GERMAN),
    edge("mains.socket-device", f"{C}.rating", 10.0, 40.0, 1, unit="A", room=BRITISH),
    edge("mains.plug-rating", f"{RACK}.current", 5.0, 15.0, 1, unit="A", room=BRITISH, subject=RACK_KEY),
]
