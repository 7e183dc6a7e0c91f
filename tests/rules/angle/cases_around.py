"""Cases of the surrounds and of the ear layer as a whole."""

from __future__ import annotations

from offsets import HAND, LS, RS, C, L, R, nowhere, room, speaker, taped

from roomlint.edges import Edge
from roomlint.testing import Case, Never, changed

SURROUND, SIDE, REAR, GAP, EVEN = (
    f"angle.{slug}" for slug in ("surround-pair", "side-pair", "rear-pair", "largest-gap", "even-spacing")
)
CRITICAL = {"project.reference": "critical"}
BARE = room()
FIVE = room(L, R, C, LS, RS, layout="0+5+0")
S, B = speaker("side", "M+090", -2.2, 0.0), speaker("rear", "M+135", -1.6, -1.8)
SEVEN = room(L, R, C, S, B, speaker("side-r", "M-090", 2.2, 0.0), speaker("rear-r", "M-135", 1.6, -1.8), layout="0+7+0")
DEPARTS = {"because": "glass beside the seat", "meets": "common-practice"}


def surround(*place: float) -> dict[str, object]:
    return room(speaker("ls", "M+110", *place))


def five(*place: float) -> dict[str, object]:
    right, front = place
    return room(L, R, C, speaker("ls", "M+110", right, front), speaker("rs", "M-110", -right, front), layout="0+5+0")


THREE = room(speaker("a", "M+065", -2.0, 1.0), speaker("b", "M+090", -2.0, 0.0), speaker("c", "M+145", -1.0, -2.0))

CASES: list[Case | Never] = [
    Case(SURROUND, "pass", FIVE, figure=110.05, source=f"{HAND}: 90 + atan(0.73 / 2.0)"),
    # What the trade is content with is a note at home, beside the ear and a hair before it too.
    Case(SURROUND, "fail", surround(-2.0, -0.175), level="note", figure=95.0, source=f"{HAND}: 90 + atan(0.175 / 2.0)"),
    Case(SURROUND, "fail", surround(-2.2, 0.019), level="note", figure=89.505, source=f"{HAND}: 90 - atan(0.019 / 2.2)"),
    Case(SURROUND, "fail", surround(-2.0, 0.2), level="warning", figure=84.289, source=f"{HAND}: 90 - atan(0.2 / 2.0)"),
    Case(SURROUND, "fail", surround(-1.6, -1.4904), level="warning", figure=132.97, source=f"{HAND}: 90 + atan(1.4904 / 1.6)"),
    # 100 deg, set out to a millimetre: 2.0 m aside, 2.0 x tan 10 deg = 0.3527 m behind.
    Case(SURROUND, "pass", taped(surround(-2.0, -0.352), "1 mm")),
    Case(SURROUND, "fail", changed(surround(-2.0, -0.175), CRITICAL), level="warning"),
    Case(SURROUND, "notApplicable", changed(surround(-2.0, -0.175), {"loudspeakers.0.departure": DEPARTS}), says="held against the window that it claims"),
    Case(SURROUND, "review", taped(surround(-2.0, -1.2))),
    Case(SURROUND, "open", nowhere(FIVE, 3), subject="loudspeaker/ls"),
    # On the other side it is the label that is wrong, an error of its own rule.
    Case(SURROUND, "open", surround(2.0, -0.73), says="layout.label-side"),
    Case(SURROUND, "notApplicable", BARE),
    Case(SIDE, "pass", SEVEN, subject="loudspeaker/side", figure=90.0, source="straight to the left"),
    Case(SIDE, "fail", room(speaker("side", "M+090", -2.2, 0.5), layout="4+7+0"), level="warning", figure=77.196, source=f"{HAND}: 90 - atan(0.5 / 2.2)"),
    Case(SIDE, "pass", room(speaker("side", "M+090", -2.2, 0.5), layout="3+7+0")),
    Case(SIDE, "review", taped(room(speaker("side", "M+090", -2.2, 0.24), layout="4+7+0"), "60 mm")),
    Case(SIDE, "open", room(S)),
    Case(SIDE, "open", room(speaker("side", "M+090", 2.2, 0.5), layout="4+7+0"), says="layout.label-side"),
    Case(SIDE, "notApplicable", room(S, layout="0+5+0"), says="has no M+090"),
    Case(SIDE, "notApplicable", FIVE),
    Case(REAR, "pass", SEVEN, subject="loudspeaker/rear", figure=138.366, source=f"{HAND}: 180 - atan(1.6 / 1.8)"),
    Case(REAR, "fail", room(speaker("rear", "M+135", -0.5, -1.8), layout="4+7+0"), level="warning", figure=164.476, source=f"{HAND}: 180 - atan(0.5 / 1.8)"),
    Case(REAR, "review", taped(room(speaker("rear", "M+135", -1.0, -1.78), layout="4+7+0"), "60 mm")),
    Case(REAR, "open", room(B)),
    Case(REAR, "open", room(speaker("rear", "M+135", 0.5, -1.8), layout="4+7+0"), says="layout.label-side"),
    Case(REAR, "notApplicable", FIVE),
    Case(GAP, "pass", FIVE, figure=139.89, source=f"{HAND}: 360 - 2 x 110.05"),
    # The standard's own 100 deg leave 160 behind.
    Case(GAP, "pass", taped(five(-2.0, -0.3527), "1 mm"), figure=160.0, source="360 - 2 x 100 deg"),
    # Three fronts and one surround at 110.05 deg: on the other side 360 - 29.98 - 110.05.
    Case(GAP, "fail", room(L, R, C, LS, layout="0+5+0"), level="note", figure=219.97, source=f"{HAND}: 360 - 29.98 - 110.05"),
    Case(GAP, "pass", SEVEN, figure=83.268, source=f"{HAND}: 360 - 2 x 138.366"),
    # A rear on one side only, in the layout of ten.
    Case(GAP, "fail", room(L, R, C, S, speaker("rear", "M+135", -1.8, -1.04), speaker("side-r", "M-090", 2.2, 0.0), layout="9+10+3"), level="note"),
    Case(GAP, "review", taped(room(L, R, C, speaker("a", "M+100", -2.0, -0.35), speaker("b", "M-100", 2.0, -0.35)), "60 mm")),
    Case(GAP, "open", nowhere(FIVE)),
    Case(GAP, "open", five(-2.0, -0.175), says="angle.surround-pair"),
    Case(GAP, "open", changed(FIVE, {"loudspeakers.3.label": None}), says="label of ls"),
    Case(GAP, "notApplicable", room(L, R, C)),
    # 90 - atan(1.0 / 2.0) = 63.43; 90; 180 - atan(1.0 / 2.0) = 153.43: intervals 26.57 and 63.43.
    Case(EVEN, "fail", changed(THREE, {"loudspeakers.1.label": "M+095"}), level="note", figure=36.87, source=f"{HAND}: 63.43 - 26.57"),
    Case(EVEN, "pass", room(speaker("a", "M+070", -2.0, 0.7), speaker("b", "M+110", -2.0, -0.7), speaker("c", "M+150", -1.0, -1.9))),
    Case(EVEN, "review", taped(room(speaker("a", "M+070", -2.0, 0.7), speaker("b", "M+100", -2.0, -0.45), speaker("c", "M+150", -1.0, -1.9)), "50 mm")),
    Case(EVEN, "open", nowhere(THREE, 1)),
    Case(EVEN, "open", changed(THREE, {"layout": "0+7+0", "loudspeakers.1.position.from_front": "4.5 m"}), says="angle.side-pair"),
    Case(EVEN, "notApplicable", FIVE),
    Case(EVEN, "notApplicable", room(speaker("a", "M+060", -2.0, 1.2), speaker("b", "M+090", -2.0, 0.0), speaker("c", "M+135", -1.6, -1.6), layout="9+10+3"), says="gives each its own place"),
]  # fmt: skip
EDGES = [
    Edge(SURROUND, surround(-2.0, -0.73), "loudspeakers.0.position.from_front", 2.5, 5.9, 4),
    Edge(SURROUND, changed(surround(-2.0, -0.73), CRITICAL), "loudspeakers.0.position.from_front", 2.5, 5.9, 2),
    Edge(SIDE, SEVEN, "loudspeakers.3.position.from_front", 2.0, 5.9, 2, subject="loudspeaker/side"),
    Edge(REAR, SEVEN, "loudspeakers.4.position.from_left", 0.05, 2.4, 1, subject="loudspeaker/rear"),
    Edge(REAR, SEVEN, "loudspeakers.4.position.from_front", 3.6, 5.5, 1, subject="loudspeaker/rear"),
    Edge(GAP, room(L, R, C, speaker("a", "M+100", -2.0, -0.7), speaker("b", "M-100", 2.0, -0.7)), "loudspeakers.3.position.from_front", 3.3, 5.9, 1),
    Edge(EVEN, THREE, "loudspeakers.2.position.from_front", 4.0, 5.9, 1),
]  # fmt: skip
