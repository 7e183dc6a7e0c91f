"""Cases of the labels that no rule of their own judges."""

from __future__ import annotations

from offsets import BARE, at, room, speaker, taped

from roomlint.edges import Edge
from roomlint.testing import Case, Never, changed

MIDDLE, AZIMUTH, ELEVATION = "angle.middle-azimuth", "angle.other-azimuth", "angle.other-elevation"
CRITICAL = {"project.reference": "critical"}
TEN = room(
    speaker("wide", "M+060", -2.0, 1.2),
    speaker("back", "M+180", 0.0, -1.5),
    speaker("top", "T+000", 0.0, 0.0, 1.4),
    speaker("low", "B+000", 0.0, 3.0, -1.0),
    layout="9+10+3",
    subwoofers=[{"id": "sub", "label": "LFE1", "position": at(-1.5, 2.0, -1.0)}],
)
# 0.1 m aside of 1.5 m behind.
BEHIND = changed(TEN, {"loudspeakers.1.position.from_left": "2.4 m"})
# atan(2.0 / 0.6) = 73.30 deg round: 13.30 beyond 60.
FAR = changed(TEN, {"loudspeakers.0.position": at(-2.0, 0.6)})
OVERHEAD = room(speaker("voice", "UH+180", 0.0, 0.0, 1.3), layout="3+7+0")
SMALL = room(subwoofers=[{"id": "sub", "label": "LFE1", "position": at(-1.5, 2.0, -1.0)}], layout="0+5+0")

CASES: list[Case | Never] = [
    Case(MIDDLE, "pass", TEN, subject="loudspeaker/back", figure=0.0, source="straight behind"),
    Case(MIDDLE, "fail", BEHIND, subject="loudspeaker/back", level="note", figure=3.8141, source="atan(0.1 / 1.5)", says="from straight behind"),
    Case(MIDDLE, "fail", changed(BEHIND, CRITICAL), subject="loudspeaker/back", level="warning"),
    # Right overhead is in the half plane behind; 0.5 m ahead of it at 1.3 m up is atan(0.5 / 1.3) from straight up.
    Case(MIDDLE, "pass", OVERHEAD, figure=0.0, source="straight up is the end of the half plane behind"),
    Case(MIDDLE, "fail", changed(OVERHEAD, {"loudspeakers.0.position": at(0.0, 0.5, 1.3)}), figure=21.038, source="atan(0.5 / 1.3)"),
    Case(MIDDLE, "review", taped(changed(TEN, {"loudspeakers.1.position.from_left": "2.424 m"})), subject="loudspeaker/back"),
    Case(MIDDLE, "open", changed(TEN, {"layout": None}), subject="loudspeaker/back", says="layout"),
    Case(MIDDLE, "notApplicable", BARE),
    Case(AZIMUTH, "pass", TEN, subject="loudspeaker/wide", figure=0.0, source="atan(2.0 / 1.2) = 59.0, inside 45 to 60"),
    Case(AZIMUTH, "fail", FAR, subject="loudspeaker/wide", level="note", figure=13.3, source="atan(2.0 / 0.6) - 60 deg"),
    Case(AZIMUTH, "fail", changed(FAR, CRITICAL), subject="loudspeaker/wide", level="warning"),
    # 1.5 m to the left and 2 m ahead: 36.9 degrees, inside 30 to 90.
    Case(AZIMUTH, "pass", TEN, subject="subwoofer/sub", figure=0.0, source="atan(1.5 / 2) = 36.9, inside 30 to 90"),
    Case(AZIMUTH, "review", taped(changed(TEN, {"loudspeakers.0.position": at(-2.0, 1.02)}), "60 mm"), subject="loudspeaker/wide"),
    Case(AZIMUTH, "open", changed(TEN, {"loudspeakers.0.position": None}), subject="loudspeaker/wide"),
    Case(AZIMUTH, "open", changed(TEN, {"layout": None}), subject="subwoofer/sub", says="layout"),
    Case(AZIMUTH, "notApplicable", BARE),
    Case(AZIMUTH, "notApplicable", SMALL, subject="subwoofer/sub", says="leaves open where LFE1 stands"),
    Case(ELEVATION, "pass", TEN, subject="loudspeaker/top", figure=0.0, source="right overhead"),
    # 1 m below the ear and 3 m ahead: -18.4 degrees, inside -30 to -15.
    Case(ELEVATION, "pass", TEN, subject="loudspeaker/low", figure=0.0, source="-atan(1 / 3) = -18.4"),
    # At 0.9 m: -atan(0.3 / 3) = -5.71 degrees, 9.29 above -15.
    Case(ELEVATION, "fail", changed(TEN, {"loudspeakers.3.position.height": "0.9 m"}), subject="loudspeaker/low", level="note", figure=9.2894, source="15 - atan(0.3 / 3.0)"),
    Case(ELEVATION, "fail", changed(TEN, {"loudspeakers.3.position.height": "0.9 m", **CRITICAL}), subject="loudspeaker/low", level="warning"),
    # 1 m below, 2.5 m away in plan: -21.8 degrees, inside -30 to -15.
    Case(ELEVATION, "pass", TEN, subject="subwoofer/sub", figure=0.0, source="-atan(1 / 2.5) = -21.8"),
    Case(ELEVATION, "review", taped(changed(TEN, {"loudspeakers.3.position.height": "0.54 m"})), subject="loudspeaker/low"),
    Case(ELEVATION, "open", changed(TEN, {"loudspeakers.2.position": None}), subject="loudspeaker/top"),
    Case(ELEVATION, "notApplicable", BARE),
    Case(ELEVATION, "notApplicable", SMALL, subject="subwoofer/sub"),
]  # fmt: skip
EDGES = [
    Edge(MIDDLE, TEN, "loudspeakers.1.position.from_left", 1.5, 3.5, 2, subject="loudspeaker/back"),
    Edge(AZIMUTH, TEN, "loudspeakers.0.position.from_front", 1.0, 3.6, 2, subject="loudspeaker/wide"),
    Edge(ELEVATION, TEN, "loudspeakers.3.position.height", 0.1, 1.4, 1, subject="loudspeaker/low"),
]  # fmt: skip
