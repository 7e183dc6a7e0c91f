"""Cases of plugs and cords."""

from __future__ import annotations

from typing import TYPE_CHECKING

from mains_rooms import AUSTRALIAN, BRITISH, GERMAN, OUTLET, RACK, RACK_KEY, VACUUM, edge, on, silent

if TYPE_CHECKING:
    from roomlint.edges import Edge
    from roomlint.testing import Case, Never

FASTENED = {
    f"{RACK}.connection": "fastened", f"{RACK}.receptacle": None, f"{VACUUM}.connection": "fastened",
    f"{VACUUM}.receptacle": None,
}  # fmt: skip
LOW = {f"{RACK}.current": None, f"{RACK}.apparent_power": "60 VA"}

CASES: list[Case | Never] = [
    *silent("mains.plug-rating", "mains.plug-fits", "mains.concealed-cord"),
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
    on("mains.concealed-cord", "pass"),
    on("mains.concealed-cord", "pass", {f"{RACK}.cord_concealed": True, f"{RACK}.listed_inlet_kit": True}),
    on("mains.concealed-cord", "fail", {f"{RACK}.cord_concealed": True}, subject=RACK_KEY, level="error"),
    on("mains.concealed-cord", "open", {f"{RACK}.cord_concealed": None}, subject=RACK_KEY, says="cord_concealed"),
    # What is wired in place and has a cord in the wall all the same is told.
    on("mains.concealed-cord", "fail", {**FASTENED, f"{RACK}.cord_concealed": True}, subject=RACK_KEY, level="error"),
    on("mains.concealed-cord", "notApplicable", {**FASTENED, f"{RACK}.cord_concealed": None}, subject=RACK_KEY),
    on("mains.concealed-cord", "notApplicable", FASTENED),
]  # fmt: skip

EDGES: list[Edge] = [
    edge("mains.plug-rating", f"{RACK}.current", 5.0, 15.0, 1, unit="A", room=BRITISH, subject=RACK_KEY),
]
