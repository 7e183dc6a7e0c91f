"""Cases of the sides and of declared departures."""

from __future__ import annotations

from typing import Any

from offsets import HAND, C, L, R, nowhere, room, speaker, taped

from roomlint.edges import Edge
from roomlint.testing import Case, Never, changed

PAIR = room(L, R)
SWAPPED = room(speaker("left", "M+030", 1.5, 2.6), speaker("right", "M-030", -1.5, 2.6))
BEHIND = room(speaker("rear", "M+135", 1.0, -1.0))
ACROSS = room(speaker("side", "M+090", 2.0, 0.0))


def departed(place: tuple[float, ...], meets: str | None, **more: Any) -> dict[str, Any]:
    departure = {"because": "glass where it belongs", **({"meets": meets} if meets else {})}
    return room(speaker("ls", "M+110", *place, departure=departure), layout="0+5+0", **more)


CLAIM = "layout.departure"
NEEDED = "layout.departure-needed"
# 180 - atan(1.6 / 1.4) = 131.2 deg: inside the home range, outside the standard's.
HOME = departed((-1.6, -1.4), "home-tolerance")

CASES: list[Case | Never] = [
    Case("layout.sides-swapped", "pass", PAIR, figure=-27.46 + 0.0, within=3.0, source="both on their own sides"),
    # Level with the ear the angle from the middle plane is the azimuth: atan(1.5 / 2.6).
    Case("layout.sides-swapped", "fail", SWAPPED, level="error", figure=29.98, source=f"{HAND}: 1.5 / 2.6", says="exchange labels"),
    # One alone on the wrong side is no exchange.
    Case("layout.sides-swapped", "pass", room(speaker("left", "M+030", 1.0, 2.6), R)),
    Case("layout.sides-swapped", "review", taped(room(speaker("left", "M+030", 0.01, 2.6), speaker("right", "M-030", -0.01, 2.6)))),
    Case("layout.sides-swapped", "open", room(L, speaker("right", None, 1.5, 2.6)), says="label of right"),
    Case("layout.sides-swapped", "open", nowhere(PAIR)),
    Case("layout.sides-swapped", "notApplicable", room(L)),
    Case("layout.label-side", "pass", PAIR),
    Case("layout.label-side", "fail", ACROSS, level="error", figure=90.0, source="straight to the right is 90 deg off the plane that the seat looks along", says="its label M+090 means left: change the sign, or the side"),
    # Behind the ear, 45 deg to the wrong side of straight behind.
    Case("layout.label-side", "fail", BEHIND, figure=45.0, source=f"{HAND}: 1.0 / 1.0"),
    # Exchanged labels are told once, by the rule of exchanged labels.
    Case("layout.label-side", "open", SWAPPED, says="layout.sides-swapped"),
    Case("layout.label-side", "review", taped(room(speaker("side", "M+090", 0.01, 2.0)))),
    Case("layout.label-side", "open", room(speaker("left", None, -1.5, 2.6))),
    Case("layout.label-side", "notApplicable", room(C)),
    Case(CLAIM, "pass", HOME, figure=131.186, source=f"{HAND}: 180 - atan(1.6 / 1.4)"),
    Case(CLAIM, "fail", departed((-1.6, -1.4), "common-practice"), level="warning", says="common-practice wants it 90 to 110 deg round"),
    Case(CLAIM, "fail", departed((-2.0, 1.0), "home-tolerance"), says="63.4 deg left"),
    Case(CLAIM, "fail", room(speaker("top", "U+045", -1.5, 1.2, 1.3, departure={"because": "beam", "meets": "home-tolerance"}), layout="4+7+0"), says="nothing is published for U+045"),
    Case(CLAIM, "informational", departed((-2.0, 1.0), "none")),
    Case(CLAIM, "review", taped(departed((-1.6, -1.6), "home-tolerance"), "100 mm")),
    Case(CLAIM, "open", nowhere(HOME)),
    Case(CLAIM, "open", departed((-1.6, -1.4), None), says="meets"),
    Case(CLAIM, "open", departed((1.6, -1.4), "home-tolerance"), says="layout.label-side"),
    Case(CLAIM, "notApplicable", PAIR),
    # 110.05 deg is 9.95 inside 120.
    Case(NEEDED, "fail", departed((-2.0, -0.73), "home-tolerance"), level="note", figure=9.948, source=f"{HAND}: 120 - 90 - atan(0.73 / 2.0)"),
    Case(NEEDED, "pass", HOME, figure=-11.186, source=f"{HAND}: 120 - 131.186"),
    Case(NEEDED, "review", taped(departed((-2.0, -1.15), "home-tolerance"))),
    # What misses its own claim may be no departure at all: both are told.
    Case(NEEDED, "pass", departed((-2.0, 1.0), "home-tolerance")),
    Case(NEEDED, "fail", departed((-2.0, -0.9), "common-practice"), level="note", figure=5.772, source=f"{HAND}: 120 - 90 - atan(0.9 / 2.0)"),
    Case(CLAIM, "fail", departed((-2.0, -0.9), "common-practice"), figure=114.228, source=f"{HAND}: 90 + atan(0.9 / 2.0)"),
    Case(NEEDED, "open", departed((1.6, -1.4), "home-tolerance"), says="layout.label-side"),
    Case(NEEDED, "open", changed(HOME, {"layout": None})),
    Case(NEEDED, "notApplicable", PAIR),
    Case(NEEDED, "notApplicable", changed(HOME, {"layout": "0+7+0"}), says="has no M+110"),
]  # fmt: skip
EDGES = [
    Edge("layout.sides-swapped", room(speaker("left", "M+030", 0.5, 2.6), speaker("right", "M-030", -1.5, 2.6)), "loudspeakers.0.position.from_left", 1.5, 3.5, 1),
    Edge("layout.label-side", room(speaker("side", "M+090", 2.0, 0.5)), "loudspeakers.0.position.from_left", 0.5, 4.5, 1),
    Edge(CLAIM, HOME, "loudspeakers.0.position.from_front", 0.5, 5.9, 2),
    Edge(CLAIM, departed((-1.6, -0.3), "common-practice"), "loudspeakers.0.position.from_front", 0.5, 5.9, 2),
    # The window is one-sided, and the loudspeaker passes both ends of 100 to 120 deg.
    Edge(NEEDED, HOME, "loudspeakers.0.position.from_front", 0.5, 5.9, 2),
]  # fmt: skip
