"""Cases of the layers."""

from __future__ import annotations

from offsets import HAND, LS, RS, C, L, R, nowhere, room, speaker, taped

from roomlint.edges import Edge
from roomlint.testing import Case, Never, changed

AZIMUTH, ELEVATION, APART = "angle.upper-azimuth", "angle.upper-elevation", "angle.upper-separation"
OVER, EAR = "angle.over-head", "angle.ear-elevation"
CRITICAL = {"project.reference": "critical"}
BARE = room()
FIVE = room(L, R, C, LS, RS, layout="0+5+0")
# atan(1.2 / 1.35) = 41.63 deg round, 1.3 up at 1.806 m: 35.74 deg.
UPPER = speaker("upper", "U+045", -1.2, 1.35, 1.3)
SEVEN = room(L, R, C, UPPER, layout="4+7+0")


def upper(*place: float, label: str = "U+045", layout: str = "4+7+0") -> dict[str, object]:
    return room(speaker("upper", label, *place), layout=layout)


LOW_CENTRE = room(L, R, speaker("centre", "M+000", 0, 2.0, -0.8))
TWO_LAYERS = room(speaker("upper", "U+045", -1.2, 1.6, 1.3), speaker("left", "M+030", -1.2, 1.6, 0.8))

CASES: list[Case | Never] = [
    Case(AZIMUTH, "pass", SEVEN, figure=41.634, source=f"{HAND}: 1.2 / 1.35"),
    Case(AZIMUTH, "fail", upper(-1.6, 1.2, 1.3), level="warning", figure=53.13, source="3-4-5 triangle"),
    # The nominal 45 deg stands on the edge of 30 to 45, and passes as set out.
    Case(AZIMUTH, "pass", taped(upper(-1.3, 1.3, 1.3), "10 mm"), figure=45.0, source="as far aside as ahead"),
    Case(AZIMUTH, "pass", upper(-1.6, 1.2, 1.3, layout="9+10+3")),
    # Straight overhead an azimuth says nothing: a person decides, and no angle is made up.
    Case(AZIMUTH, "review", upper(0.0, 0.0, 1.3), says="straight overhead"),
    Case(AZIMUTH, "open", room(UPPER)),
    Case(AZIMUTH, "open", upper(1.2, 1.35, 1.3), says="layout.label-side"),
    Case(AZIMUTH, "notApplicable", FIVE),
    Case(ELEVATION, "pass", upper(-1.08, 1.44, 1.3), figure=35.838, source=f"{HAND}: 1.3 / 1.8"),
    Case(ELEVATION, "fail", upper(-1.5, 2.0, 1.3), level="warning", figure=27.474, source=f"{HAND}: 1.3 / 2.5", says="not told apart from the ear layer"),
    Case(ELEVATION, "fail", upper(-0.3, 0.4, 1.3), figure=68.962, source=f"{HAND}: 1.3 / 0.5", says="front and rear merge"),
    # A voice of the rear over the head may stand right overhead.
    Case(ELEVATION, "pass", upper(0.0, 0.0, 1.3, label="UH+180", layout="3+7+0"), figure=90.0, source="straight up"),
    Case(ELEVATION, "review", taped(upper(-1.4, 1.86, 1.3), "60 mm")),
    Case(ELEVATION, "open", nowhere(SEVEN, 3)),
    Case(ELEVATION, "open", upper(-1.5, 2.0, 1.6), says="layout.inside-room"),
    Case(ELEVATION, "notApplicable", FIVE),
    Case(APART, "pass", SEVEN),
    # Upper 1.3 up at 2.0 m: 33.02; bed 0.8 up at 2.0 m: 21.80; 11.22 apart.
    Case(APART, "fail", TWO_LAYERS, level="warning", figure=11.223, source=f"{HAND}: atan(1.3 / 2.0) - atan(0.8 / 2.0)"),
    Case(APART, "fail", changed(TWO_LAYERS, {"loudspeakers.1.position.height": "1.75 m"}), level="note", figure=17.65, source=f"{HAND}: atan(1.3 / 2.0) - atan(0.55 / 2.0)"),
    Case(APART, "pass", room(UPPER, layout="4+7+0"), says="no ear-layer"),
    Case(APART, "review", taped(changed(TWO_LAYERS, {"loudspeakers.1.position.height": "1.86 m"}))),
    Case(APART, "open", nowhere(SEVEN, 3)),
    Case(APART, "open", changed(TWO_LAYERS, {"layout": "4+7+0", "loudspeakers.0.position.height": "2.2 m"}), says="angle.upper-elevation"),
    Case(APART, "notApplicable", FIVE),
    Case(OVER, "pass", room(speaker("top", "U+090", -1.0, 0.2, 1.3))),
    Case(OVER, "fail", room(speaker("top", "U+090", -1.0, 0.8, 1.3)), level="note", figure=58.392, source=f"{HAND}: 1.3 / 0.8"),
    Case(OVER, "review", taped(room(speaker("top", "U+090", -1.0, 0.61, 1.3)))),
    Case(OVER, "open", nowhere(room(speaker("top", "U+090", -1.0, 0.2, 1.3)))),
    Case(OVER, "open", room(speaker("top", "U+090", 1.0, 0.2, 1.3)), says="layout.label-side"),
    Case(OVER, "notApplicable", FIVE),
    Case(OVER, "notApplicable", room(speaker("top", "U+090", -1.0, 0.8, 1.3), layout="9+10+3"), says="at the side"),
    Case(EAR, "pass", FIVE),
    Case(EAR, "fail", room(speaker("ls", "M+110", -2.13, 0.0, 0.62)), level="warning", figure=16.229, source=f"{HAND}: 0.62 / 2.13"),
    Case(EAR, "fail", room(speaker("ls", "M+110", -2.13, 0.0, -0.62)), figure=-16.229, source=f"{HAND}: 0.62 / 2.13", says="-16.2 deg from the ear's height"),
    # At home 8 deg up pass; for critical listening the layout's own 0 deg hold, and 15 for the surrounds of five.
    Case(EAR, "pass", room(speaker("left", "M+030", -1.5, 2.6, 0.42), layout="4+7+0")),
    Case(EAR, "fail", changed(room(speaker("left", "M+030", -1.5, 2.6, 0.42), layout="4+7+0"), CRITICAL), level="warning"),
    Case(EAR, "pass", changed(room(speaker("ls", "M+110", -2.0, -0.73, 0.42), layout="0+5+0"), CRITICAL)),
    Case(EAR, "open", changed(room(L), CRITICAL), says="layout"),
    # One low centre is told once.
    Case(EAR, "open", LOW_CENTRE, subject="loudspeaker/centre", says="angle.centre-height"),
    Case(EAR, "review", taped(room(speaker("ls", "M+110", -2.13, 0.0, 0.57)), "60 mm")),
    Case(EAR, "open", nowhere(FIVE), subject="loudspeaker/left"),
    Case(EAR, "notApplicable", BARE),
]  # fmt: skip
EDGES = [
    Edge(AZIMUTH, upper(-1.2, 1.35, 1.3), "loudspeakers.0.position.from_left", 0.2, 2.3, 2),
    Edge(ELEVATION, upper(-0.5, 1.44, 1.3), "loudspeakers.0.position.from_front", 0.1, 3.4, 2),
    Edge(APART, TWO_LAYERS, "loudspeakers.1.position.height", 1.3, 2.5, 2),
    Edge(OVER, room(speaker("top", "U+090", -1.0, 0.2, 1.3)), "loudspeakers.0.position.from_front", 2.0, 4.5, 2),
    Edge(EAR, room(speaker("ls", "M+110", -2.13, 0.0)), "loudspeakers.0.position.height", 0.2, 2.4, 2),
    Edge(EAR, changed(room(speaker("left", "M+030", -1.5, 2.6), layout="4+7+0"), CRITICAL), "loudspeakers.0.position.height", 0.2, 2.4, 2),
]  # fmt: skip
