"""Cases of chapter boundary."""

from __future__ import annotations

from roomlint.testing import Case, Never, changed

BOX = {
    "roomlint_product": 1, "id": "vented", "kind": "loudspeaker", "depth": "0.30 m",
    "loudspeaker": {"port": {"face": "rear", "diameter": "60 mm"}},
}  # fmt: skip
CLOSED = changed(BOX, {"loudspeaker.port.face": "none"})
DOWN = changed(BOX, {"loudspeaker.port.face": "bottom"})
MAKER = changed(BOX, {"loudspeaker.port.clearance": "0.4 m"})
SUB = {
    "roomlint_product": 1, "id": "sub", "kind": "subwoofer", "depth": "0.30 m",
    "loudspeaker": {"port": {"face": "none"}},
}  # fmt: skip
ROOM = {
    "roomlint": 1,
    "project": {"code": "case"},
    "survey": {"temperature": "20 degC"},
    "room": {"size": {"width": "4.5 m", "length": "6 m"}, "ceiling": {"shape": "flat", "height": "2.7 m"}},
    "seats": [{"id": "middle", "ear": {"from_left": "2.25 m", "from_front": "4.0 m", "height": "1.1 m"}}],
    "loudspeakers": [
        {
            "id": "centre", "label": "M+000", "product": "vented", "aim": {"seat": "middle"},
            "position": {"from_left": "2.25 m", "from_front": "0.50 m", "height": "0.9 m"},
        }
    ],
    "subwoofers": [
        {"id": "low", "product": "sub", "position": {"from_left": "2 m", "from_front": "0.3 m", "height": "0.3 m"}}
    ],
}  # fmt: skip
SHEETS = (BOX, SUB)
CENTRE, MIDDLE = "loudspeaker/centre", "loudspeaker/centre+seat/middle"


def moved(to: str | None, **more: object) -> dict[str, object]:
    return changed(ROOM, {"loudspeakers.0.position.from_front": to, **more})


NO_SPEAKER = changed(ROOM, {"loudspeakers": None, "subwoofers": None})

CASES: list[Case | Never] = [
    Case("boundary.seat-to-wall", "pass", ROOM, SHEETS, figure=2.0, source="6 m less 4 m to the rear wall"),
    Case("boundary.seat-to-wall", "fail", changed(ROOM, {"seats.0.ear.from_front": "5.7 m"}), SHEETS, level="warning",
         figure=0.3, source="6 m less 5.7 m"),
    Case("boundary.seat-to-wall", "fail", changed(ROOM, {"seats.0.ear.from_front": "5.1 m"}), SHEETS, level="note"),
    Case("boundary.seat-to-wall", "fail",
         changed(ROOM, {"seats.0.ear.from_front": "5.1 m", "project.reference": "critical"}), SHEETS, level="warning"),
    Case("boundary.seat-to-wall", "review", changed(ROOM, {"seats.0.ear.from_rear": "0.51 m ± 2 cm", "seats.0.ear.from_front": None}),
         SHEETS, says="Measure seats[0].ear.from_rear again to within ± 10 mm"),
    Case("boundary.seat-to-wall", "open", changed(ROOM, {"seats.0.ear": None}), SHEETS),
    Case("boundary.seat-to-wall", "notApplicable", changed(ROOM, {"seats": None, "loudspeakers.0.aim": None}), SHEETS),
    # Half a metre to the wall less 0.30 m of cabinet leaves 0.20 m; two diameters are 0.12 m, the floor is 0.15 m.
    Case("boundary.port-clearance", "pass", ROOM, SHEETS, subject=CENTRE, figure=0.20, source="0.50 m - 0.30 m"),
    Case("boundary.port-clearance", "fail", moved("0.40 m"), SHEETS, subject=CENTRE, level="warning", figure=0.10,
         source="0.40 m - 0.30 m"),
    Case("boundary.port-clearance", "fail", moved("0.34 m"), SHEETS, subject=CENTRE, level="error", figure=0.04,
         source="0.34 m - 0.30 m"),
    Case("boundary.port-clearance", "fail", ROOM, (MAKER, SUB), subject=CENTRE, says="maker"),
    # A downward port asks for a quarter of its diameter, 15 mm, where a rear one asks for 150 mm.
    Case("boundary.port-clearance", "pass", changed(ROOM, {"loudspeakers.0.port_clearance": "2 cm"}), (DOWN, SUB), subject=CENTRE),
    Case("boundary.port-clearance", "fail", changed(ROOM, {"loudspeakers.0.port_clearance": "2 cm"}), SHEETS, subject=CENTRE, level="error"),
    Case("boundary.port-clearance", "open", ROOM, (DOWN, SUB), subject=CENTRE, says="port_clearance"),
    Case("boundary.port-clearance", "open", changed(ROOM, {"loudspeakers.0.aim": None}), SHEETS, subject=CENTRE, says="aim"),
    Case("boundary.port-clearance", "notApplicable", ROOM, (CLOSED, SUB)),
    # 0.50 m: null at 171.6 Hz; listener 3.5 m away, wall gives back 0.8: 20 lg(1 - 0.8 x 3.506/4.506) = -8.5 dB.
    Case("boundary.rear-null", "fail", ROOM, SHEETS, subject=MIDDLE, level="warning", figure=-8.46,
         source="published table of null depths: 0.50 m, 3.5 m, R 0.8 gives -8.5 dB"),
    Case("boundary.rear-null", "pass", moved("1.0 m"), SHEETS, subject=MIDDLE),
    Case("boundary.rear-null", "pass", moved("0.30 m"), SHEETS, subject=MIDDLE, says="286 Hz"),
    Case("boundary.rear-null", "open", changed(ROOM, {"loudspeakers.0.position": None}), SHEETS),
    Case("boundary.rear-null", "notApplicable", NO_SPEAKER, SHEETS),
    Case("boundary.equal-distances", "pass", ROOM, SHEETS, figure=1.8, source="0.9 m over 0.5 m"),
    Case("boundary.equal-distances", "fail", moved("0.88 m"), SHEETS, level="note", figure=1.0227, source="0.90 over 0.88"),
    Case("boundary.equal-distances", "open", changed(ROOM, {"loudspeakers.0.position": None}), SHEETS),
    Case("boundary.equal-distances", "notApplicable", NO_SPEAKER, SHEETS),
    # The null an octave above 80 Hz: 343.2 / (8 x 80) = 0.536 m.
    Case("boundary.subwoofer-null", "pass", ROOM, SHEETS, figure=0.3, says="0.24 m inside the window at most 0.54 m",
         source="343.2 m/s over 640 Hz by hand"),
    Case("boundary.subwoofer-null", "fail", changed(ROOM, {"subwoofers.0.position.from_front": "1.0 m"}), SHEETS, level="note"),
    Case("boundary.subwoofer-null", "open", changed(ROOM, {"subwoofers.0.position": None}), SHEETS),
    Case("boundary.subwoofer-null", "notApplicable", NO_SPEAKER, SHEETS),
    Case("boundary.free-standing", "pass", ROOM, SHEETS, figure=0.5, source="as measured"),
    Case("boundary.free-standing", "fail", moved("0.25 m"), SHEETS, level="note"),
    Case("boundary.free-standing", "fail", changed(ROOM, {"project.reference": "critical"}), SHEETS, level="warning"),
    Case("boundary.free-standing", "open", changed(ROOM, {"loudspeakers.0.position": None}), SHEETS),
    Case("boundary.free-standing", "notApplicable", changed(ROOM, {"loudspeakers.0.mounting": {"on": "front"}}), SHEETS),
]  # fmt: skip
