"""Cases of neighbours in a layer, of the upper layer as a whole, and of labels in layouts of one's own."""

from __future__ import annotations

from offsets import HAND, LS, RS, C, L, R, nowhere, room, speaker, taped

from roomlint.edges import Edge
from roomlint.testing import Case, Never, changed

NEXT, GAP, BELOW = "angle.neighbour-gap", "angle.upper-gap", "angle.bottom-separation"
AZIMUTH, ELEVATION, SIDE, FRONT, OVER = (
    f"angle.{slug}" for slug in ("upper-azimuth", "upper-elevation", "side-pair", "front-pair", "over-head")
)
FIVE = room(L, R, C, LS, RS, layout="0+5+0")
# 2.0 aside, 0.3527 behind: 90 + 10 deg; 0.7279 behind: 90 + 20; 1.1547 behind: 90 + 30.
S = speaker("side", "M+090", -2.0, -0.3527)
BOTH = room(speaker("side", "M+090", -2.0, -0.7279), speaker("rear", "M+135", -2.0, -1.1547), layout="0+7+0")
CLOSE = room(S, speaker("rear", "M+135", -2.0, -0.6), layout="3+7+0")
FOUR = [
    speaker("a", "U+045", -1.2, 1.35, 1.3),
    speaker("b", "U-045", 1.2, 1.35, 1.3),
    speaker("c", "U+135", -1.3, -1.3, 1.3),
    speaker("d", "U-135", 1.3, -1.3, 1.3),
]
OVERHEAD = room(*FOUR, layout="4+7+0")
# 100.005 deg on both sides would leave 160; 0.28 behind at 1.8: 90 + 8.84 deg leave 162.3.
WIDE = room(*FOUR[:2], speaker("c", "U+135", -1.8, -0.28, 1.3), speaker("d", "U-135", 1.8, -0.28, 1.3))
LOW = speaker("low", "B+045", -1.5, 1.5, -0.9)
LEFT = speaker("left", "M+030", -1.5, 2.6)
UNDER = room(LEFT, LOW, layout="9+10+3")
SIX = [*FOUR, speaker("e", "U+090", -1.8, 0.0, 1.3), speaker("f", "U-090", 1.8, 0.0, 1.3)]
OWN = room(L, R, C, LS, RS, *SIX, layout="6+5+0")


def own(label: str, *place: float, layout: str = "6+5+0") -> dict[str, object]:
    return room(speaker("one", label, *place), layout=layout)


CASES: list[Case | Never] = [
    # A side at 110 and a rear at 120, where their ranges end.
    Case(NEXT, "pass", BOTH, figure=10.0, within=0.01, source=f"{HAND}: atan(1.1547 / 2.0) - atan(0.7279 / 2.0)"),
    Case(NEXT, "fail", CLOSE, figure=6.697, level="warning", source=f"{HAND}: atan(0.6 / 2.0) - atan(0.3527 / 2.0)", says="keeps two voices of one layer apart"),
    Case(NEXT, "fail", changed(CLOSE, {"loudspeakers.1.position.from_front": "3.6 m"}), figure=-7.137, source=f"{HAND}: atan(0.1 / 2.0) - atan(0.3527 / 2.0)", says="M+090, M+135 is how their labels go round"),
    # A centre far off the middle comes near the left.
    Case(NEXT, "fail", room(L, speaker("centre", "M+000", -1.2, 2.8)), subject="loudspeaker/centre+loudspeaker/left", figure=6.783, source=f"{HAND}: atan(1.5 / 2.6) - atan(1.2 / 2.8)"),
    Case(NEXT, "review", taped(room(S, speaker("rear", "M+135", -2.0, -0.72), layout="3+7+0"))),
    Case(NEXT, "open", nowhere(CLOSE, 1)),
    Case(NEXT, "open", room(speaker("left", None, -1.5, 2.6))),
    Case(NEXT, "open", changed(CLOSE, {"layout": "0+7+0"}), says="angle.rear-pair"),
    Case(NEXT, "notApplicable", room(L, R)),
    Case(GAP, "pass", OVERHEAD, figure=93.366, source=f"{HAND}: 135 - atan(1.2 / 1.35)"),
    Case(GAP, "fail", WIDE, figure=162.317, level="note", source=f"{HAND}: 180 - 2 atan(0.28 / 1.8)"),
    Case(GAP, "review", taped(changed(WIDE, {"loudspeakers.2.position.from_front": "3.795 m", "loudspeakers.3.position.from_front": "3.795 m"}))),
    Case(GAP, "open", nowhere(OVERHEAD)),
    Case(GAP, "open", changed(OVERHEAD, {"loudspeakers.0.label": None})),
    Case(GAP, "notApplicable", FIVE),
    # 0.9 down at 2.1213 m: -22.99; the left at 0.
    Case(BELOW, "pass", UNDER, figure=22.989, source=f"{HAND}: atan(0.9 / 2.1213)"),
    Case(BELOW, "fail", room(LEFT, speaker("low", "B+030", -1.5, 1.5, -0.5), layout="0+2+1"), figure=13.263, level="warning", source=f"{HAND}: atan(0.5 / 2.1213)"),
    Case(BELOW, "fail", room(LEFT, speaker("low", "B+030", -1.5, 1.5, 0.5), layout="0+2+1"), says="above the ear layer that it belongs below"),
    Case(BELOW, "pass", room(LOW, layout="9+10+3"), says="no ear-layer loudspeaker stands over it"),
    Case(BELOW, "review", taped(room(LEFT, speaker("low", "B+030", -1.5, 1.5, -0.56), layout="0+2+1"))),
    Case(BELOW, "open", nowhere(UNDER, 1)),
    Case(BELOW, "notApplicable", FIVE),
    # Layouts of one's own, label by label: U+045 has 30 to 45 in four upper and 45 to 60 in nine, so six may have both.
    Case(AZIMUTH, "pass", own("U+045", -1.6, 1.2, 1.3), figure=53.13, source="3-4-5 triangle"),
    Case(AZIMUTH, "fail", own("U+045", -1.8, 0.9, 1.3), figure=63.435, source=f"{HAND}: 1.8 / 0.9", says="by the tables of 3+7+0, 4+9+0, 9+10+3, 4+7+0 its place is 30 to 60 deg"),
    # With four upper loudspeakers the tables of four hold, whatever the ear layer.
    Case(AZIMUTH, "fail", own("U+045", -1.6, 1.2, 1.3, layout="4+3+0"), figure=53.13, source="3-4-5 triangle", says="4+9+0, 4+7+0"),
    Case(AZIMUTH, "notApplicable", own("U+070", -1.8, 0.6, 1.3), says="no table of ITU-R BS.2051 has U+070"),
    Case(ELEVATION, "pass", own("U+090", -1.8, 0.0, 1.3), figure=35.838, source=f"{HAND}: 1.3 / 1.8"),
    # Only 9+10+3 has U+090, and ends at 45.
    Case(ELEVATION, "fail", own("U+090", -1.0, 0.0, 1.3), figure=52.431, source=f"{HAND}: 1.3 / 1.0"),
    # A side of seven: 85 to 110 is what the three tables share, 60 to 150 what one of them allows.
    Case(SIDE, "fail", own("M+090", -2.2, 0.5, layout="6+7+0"), level="note", figure=77.196, source=f"{HAND}: 90 - atan(0.5 / 2.2)"),
    Case(SIDE, "fail", own("M+090", -1.2, 1.2, layout="6+7+0"), level="warning", figure=45.0, source="as far aside as ahead"),
    # Seven in the ear layer may stand wider at the front, five may not.
    Case(FRONT, "pass", own("M+030", -1.8, 2.4, layout="6+7+0"), figure=36.87, source="3-4-5 triangle"),
    Case(FRONT, "fail", own("M+030", -1.8, 2.4), level="warning", figure=36.87, source="3-4-5 triangle"),
    # Among six, the pair beside the seat need not serve front and rear alike.
    Case(OVER, "notApplicable", OWN, says="other upper loudspeakers"),
]  # fmt: skip
EDGES = [
    Edge(NEXT, CLOSE, "loudspeakers.1.position.from_front", 3.6, 5.0, 1),
    Edge(GAP, WIDE, "loudspeakers.2.position.from_front", 3.55, 4.6, 1),
    Edge(BELOW, room(LEFT, speaker("low", "B+030", -1.5, 1.5, -0.5)), "loudspeakers.1.position.height", 0.2, 1.1, 1),
]
