"""Cases of the labels that no rule of their own judges."""

from __future__ import annotations

from roomlint.testing import Case, Never, changed


def speaker(name: str, label: str, left: float, front: float, height: float) -> dict[str, object]:
    place = {"from_left": f"{left} m", "from_front": f"{front} m", "height": f"{height} m"}
    return {"id": name, "label": label, "position": place}


# The ear is 2.5 m from the left, 4 m from the front, 1.2 m up.
ROOM = {
    "roomlint": 1,
    "project": {"code": "case"},
    "layout": "9+10+3",
    "room": {"size": {"width": "5 m", "length": "6 m"}},
    "seats": [{"id": "middle", "ear": {"from_left": "2.5 m", "from_front": "4 m", "height": "1.2 m"}}],
    "loudspeakers": [
        speaker("centre", "M+000", 2.5, 1.0, 1.2),
        speaker("back", "M+180", 2.5, 5.5, 1.2),
        speaker("top", "T+000", 2.5, 4.0, 2.6),
        speaker("low", "B+000", 2.5, 1.0, 0.2),
    ],
    "subwoofers": [speaker("sub", "LFE1", 1.0, 2.0, 0.2)],
}
ASIDE = {"loudspeakers.0.position.from_left": "2.2 m"}
BEHIND = {"loudspeakers.1.position.from_left": "2.4 m"}
BARE = changed(ROOM, {"loudspeakers": None, "subwoofers": None})
SMALL = changed(ROOM, {"layout": "0+5+0", "loudspeakers": None})

CASES: list[Case | Never] = [
    Case("angle.other-azimuth", "pass", ROOM, subject="loudspeaker/centre", figure=0.0, source="straight ahead"),
    Case("angle.other-azimuth", "pass", ROOM, subject="loudspeaker/back", figure=0.0, source="straight behind"),
    # 0.3 m aside of 3 m: atan 0.1 = 5.71 degrees; 0.1 m of 1.5 m behind: atan 0.0667 = 3.81 degrees from straight behind.
    Case("angle.other-azimuth", "fail", changed(ROOM, ASIDE), subject="loudspeaker/centre", level="note", figure=5.7106, source="atan(0.3 / 3.0)"),
    Case("angle.other-azimuth", "fail", changed(ROOM, BEHIND), subject="loudspeaker/back", figure=3.8141, source="atan(0.1 / 1.5)"),
    Case("angle.other-azimuth", "fail", changed(ROOM, {**ASIDE, "project.reference": "critical"}), subject="loudspeaker/centre", level="warning"),
    # 1.5 m to the left and 2 m ahead: 36.9 degrees, inside 30 to 90.
    Case("angle.other-azimuth", "pass", ROOM, subject="subwoofer/sub", figure=0.0, source="atan(1.5 / 2) = 36.9, inside 30 to 90"),
    Case("angle.other-azimuth", "open", changed(ROOM, {"loudspeakers.0.position": None}), subject="loudspeaker/centre"),
    Case("angle.other-azimuth", "open", changed(ROOM, {"layout": None}), subject="loudspeaker/centre", says="layout"),
    Case("angle.other-azimuth", "notApplicable", BARE),
    Case("angle.other-azimuth", "notApplicable", SMALL, subject="subwoofer/sub", says="says nothing"),
    Case("angle.other-elevation", "pass", ROOM, subject="loudspeaker/top", figure=0.0, source="right overhead"),
    # 1 m below the ear and 3 m ahead: -18.4 degrees, inside -30 to -15.
    Case("angle.other-elevation", "pass", ROOM, subject="loudspeaker/low", figure=0.0, source="-atan(1 / 3) = -18.4"),
    # At 0.9 m: -atan(0.3 / 3) = -5.71 degrees, 9.29 above -15.
    Case("angle.other-elevation", "fail", changed(ROOM, {"loudspeakers.3.position.height": "0.9 m"}),
         subject="loudspeaker/low", level="note", figure=9.2894, source="15 - atan(0.3 / 3.0)"),
    # 1 m below, 2.5 m away in plan: -21.8 degrees, inside -30 to -15.
    Case("angle.other-elevation", "pass", ROOM, subject="subwoofer/sub", figure=0.0, source="-atan(1 / 2.5) = -21.8"),
    Case("angle.other-elevation", "open", changed(ROOM, {"loudspeakers.2.position": None}), subject="loudspeaker/top"),
    Case("angle.other-elevation", "notApplicable", BARE),
    Case("angle.other-elevation", "notApplicable", SMALL, subject="subwoofer/sub"),
]  # fmt: skip
