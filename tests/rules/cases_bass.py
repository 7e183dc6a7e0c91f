"""Cases of chapter bass, on a 6.0 x 4.5 x 2.7 m room whose modes are printed in the outside checks."""

from __future__ import annotations

from roomlint.testing import Case, Never, changed


def seat(name: str, left: str, front: str) -> dict[str, object]:
    return {"id": name, "row": 1, "ear": {"from_left": left, "from_front": front, "height": "1.1 m"}}


def subwoofer(name: str, left: str, front: str) -> dict[str, object]:
    return {"id": name, "position": {"from_left": left, "from_front": front, "height": "0.1 m"}}


FRONT, REAR = subwoofer("front", "2.25 m", "0.1 m"), subwoofer("rear", "2.25 m", "5.9 m")
LEFT, RIGHT = subwoofer("left", "0.1 m", "3 m"), subwoofer("right", "4.4 m", "3 m")
ROOM = {
    "roomlint": 1,
    "project": {"code": "case"},
    "survey": {"temperature": "20 degC"},
    "room": {"size": {"width": "4.5 m", "length": "6.0 m"}, "ceiling": {"shape": "flat", "height": "2.7 m"}},
    "seats": [seat("a", "1.5 m", "3.6 m"), seat("b", "3.0 m", "3.6 m"), seat("c", "1.5 m", "4.4 m"), seat("d", "3.0 m", "4.4 m")],
    "subwoofers": [FRONT, REAR, LEFT, RIGHT],
}  # fmt: skip
ONE = changed(ROOM, {"subwoofers": [subwoofer("corner", "0.1 m", "0.1 m")]})
NONE = changed(ROOM, {"subwoofers": None})
NOWHERE = changed(ROOM, {"subwoofers.0.position": None})
NO_CEILING = changed(ROOM, {"room.ceiling": None})
SLOPED = changed(ROOM, {"room.ceiling": {"shape": "mono-pitch", "low": "2 m", "high": "3 m", "low_side": "left"}})
TO_THE_FLOOR = changed(
    SLOPED, {"room.ceiling.low": "0.1 m", "seats": [seat("a", "2 m", "3 m"), seat("b", "3 m", "3 m")]}
)
CORNERS = [("0 m", "0 m"), ("4.5 m", "0 m"), ("4.5 m", "6 m"), ("2.5 m", "6 m"), ("2.5 m", "4.8 m"), ("0 m", "4.8 m")]
L_SHAPED = changed(
    ONE,
    {
        "room.size": None,
        "room.outline": [{"from_left": x, "from_front": y, "wall": f"w{x[0]}{y[0]}"} for x, y in CORNERS],
    },
)
SQUARE = changed(ROOM, {"room.size": {"width": "5 m", "length": "5 m"}, "room.ceiling.height": "2.5 m"})
SPEAKER = {
    "roomlint_product": 1, "id": "box", "kind": "loudspeaker", "loudspeaker": {"low_limit": "50 Hz"},
}  # fmt: skip
ASIDE = changed(ONE, {"seats.0.ear": {"from_left": "0.7 m", "from_front": "3.0 m", "height": "1.1 m"}})
IMAGES = "image sources of pyroomacoustics 0.10.1, order 40, every surface with the Sabine absorption of 0.5 s"
GRID = {
    **ONE,
    "room": {"size": {"width": "20 ft", "length": "24 ft"}, "ceiling": {"shape": "flat", "height": "9 ft"}},
    "seats": [seat(f"s{i}{j}", f"{7 + 2 * i} ft", f"{9 + 2 * j} ft") for i in range(4) for j in range(4)],
}
CROSSED = changed(
    ROOM,
    {
        "loudspeakers": [{"id": "centre", "product": "box"}],
        "calibration": {"settings": [{"id": "centre", "crossover": "80 Hz"}]},
    },
)
LOW = {
    "roomlint_product": 1, "id": "low", "kind": "subwoofer", "loudspeaker": {"high_limit": "140 Hz"},
}  # fmt: skip
FED = changed(CROSSED, {"subwoofers": [{**FRONT, "product": "low"}]})
NEVER_EMPTY = "every room has a shell and a volume; without a ceiling it is open"

CASES: list[Case | Never] = [
    Case("bass.seat-spread", "pass", ROOM),
    Case("bass.seat-spread", "fail", ONE, level="note", says="decay of 0.5 s"),
    Case("bass.seat-spread", "fail", ASIDE, level="warning", figure=12.65, within=1.0, source=IMAGES),
    # One corner of a 24 x 20 x 9 ft room, 16 seats in a 6 x 6 ft grid: 14.2 dB.
    Case("bass.seat-spread", "fail", GRID, figure=14.2, within=0.3, source="an independent modal sum of the same room"),
    Case("bass.seat-spread", "fail", SLOPED, level="note", says="found numerically"),
    Case("bass.seat-spread", "fail", L_SHAPED, says="dB"),
    Case("bass.seat-spread", "review", TO_THE_FLOOR, says="comes down"),
    Case("bass.seat-spread", "open", NOWHERE, says="subwoofers[0].position"),
    Case("bass.seat-spread", "notApplicable", NONE),
    Case("bass.deep-null", "pass", ROOM, subject="seat/a"),
    # The seat half way along the room loses the first mode; nulls of the two methods differ by a few dB.
    Case("bass.deep-null", "fail", ASIDE, subject="seat/a", level="warning", figure=-21.0, within=4.0, says="at 28 Hz", source=IMAGES),
    Case("bass.deep-null", "open", NOWHERE),
    Case("bass.deep-null", "notApplicable", NONE),
    Case("bass.subwoofer-count", "pass", ROOM),
    Case("bass.subwoofer-count", "fail", ONE, level="note", says="one subwoofer for 4 seats"),
    Case("bass.subwoofer-count", "open", changed(ONE, {"seats": None})),
    Case("bass.subwoofer-count", "notApplicable", NONE),
    Case("bass.seat-mid-width", "pass", ROOM, says="do not drive"),
    Case("bass.seat-mid-width", "pass", ONE, subject="seat/a", figure=16.667, source="1.5 m of 4.5 m is a third"),
    Case("bass.seat-mid-width", "fail", changed(ONE, {"seats.0.ear.from_left": "2.3 m"}), subject="seat/a", level="note",
         figure=1.111, source="2.3 / 4.5 - 0.5 = 1.11 %"),
    Case("bass.seat-mid-width", "open", changed(ONE, {"seats.0.ear": None}), subject="seat/a"),
    Case("bass.seat-mid-width", "notApplicable", SLOPED),
    Case("bass.seat-mid-length", "pass", ONE, subject="seat/a", figure=10.0, source="2.4 m of 6 m from the rear"),
    Case("bass.seat-mid-length", "fail", changed(ONE, {"seats.0.ear.from_front": "3.06 m"}), subject="seat/a", level="note",
         figure=1.0, source="2.94 / 6 = 49 %"),
    Case("bass.seat-mid-length", "open", changed(ONE, {"seats.0.ear": None}), subject="seat/a"),
    Case("bass.seat-mid-length", "notApplicable", SLOPED),
    # Front and rear middles drive the second mode along the length fully: a row at 1.5 m from the rear is in its node.
    Case("bass.residual-mode", "pass", ROOM, says="no second mode"),
    Case("bass.residual-mode", "fail",
         changed(ROOM, {"subwoofers": [FRONT, REAR], "seats.0.ear.from_front": "4.5 m"}), subject="seat/a", level="note",
         figure=0.0, source="1.5 m of 6 m is a quarter"),
    Case("bass.residual-mode", "open", changed(NOWHERE, {"seats.0.ear": None}), subject="seat/a"),
    Case("bass.residual-mode", "notApplicable", SLOPED),
    # l/h 6/2.7 = 2.222 between 1.1 x 1.667 = 1.833 and 4.5 x 1.667 - 4 = 3.5; 5 x 5 x 2.5 m: 2.0 under 2.2.
    Case("bass.proportions", "pass", ROOM, figure=2.2222, source="6.0 / 2.7 by hand"),
    Case("bass.proportions", "fail", SQUARE, level="note", figure=2.0, source="5 / 2.5 by hand; lower limit 2.2"),
    Case("bass.proportions", "fail", changed(ROOM, {"room.size": {"width": "2.8 m", "length": "3.0 m"}}), level="note",
         says="no length", source="at 2.8 / 2.7 = 1.037 the limits cross: at least 1.141, at most 0.667"),
    Case("bass.proportions", "open", NO_CEILING),
    Case("bass.proportions", "notApplicable", SLOPED),
    Case("bass.whole-ratios", "pass", changed(ROOM, {"room.size.length": "6.3 m"}), figure=16.667,
         source="6.3/2.7 = 2.333 from 2: 16.7 %; 4.5/2.7 = 1.667 from 2: 16.7 %; 6.3/4.5 = 1.4 from 1: 40 %"),
    Case("bass.whole-ratios", "fail", SQUARE, level="note", figure=0.0, source="5 / 2.5 = 2"),
    Case("bass.whole-ratios", "open", NO_CEILING),
    Case("bass.whole-ratios", "notApplicable", SLOPED),
    Case("bass.axial-crowding", "fail", ROOM, level="note"),
    Case("bass.axial-crowding", "fail", SQUARE, level="note", figure=0.0, source="two equal sides share every mode"),
    Case("bass.axial-crowding", "pass", {**ROOM, "room": {"size": {"width": "1.6 m", "length": "2.6 m"},
         "ceiling": {"shape": "flat", "height": "2.0 m"}}}),
    Case("bass.axial-crowding", "open", NO_CEILING),
    Case("bass.axial-crowding", "notApplicable", SLOPED),
    # 9 m gives 19.07 Hz steps, 7 m 24.5 Hz, 4.5 m 38.1 Hz: the first step, from 19.07 to 24.51 Hz, and no step is over 19.07.
    Case("bass.axial-gap", "pass", changed(ROOM, {"room.size": {"width": "7 m", "length": "9 m"}, "room.ceiling.height": "4.5 m"}),
         figure=19.067, source="343.2 / 18 by hand"),
    Case("bass.axial-gap", "fail", SQUARE, level="note", figure=34.32, source="343.2 / 10 = 34.32 Hz between (1,0,0) and (2,0,0)"),
    Case("bass.axial-gap", "open", NO_CEILING),
    Case("bass.axial-gap", "notApplicable", SLOPED),
    # Published counts by third octaves: this room passes, 6.52 x 4.20 x 2.68 m dips at 31.5 Hz.
    Case("bass.mode-count", "pass", ROOM),
    Case("bass.mode-count", "fail", {**ROOM, "room": {"size": {"width": "4.20 m", "length": "6.52 m"},
         "ceiling": {"shape": "flat", "height": "2.68 m"}}}, level="note", says="falls at 32 Hz"),
    Case("bass.mode-count", "open", NO_CEILING),
    Case("bass.mode-count", "notApplicable", SLOPED),
    Case("bass.room-volume", "pass", ROOM, figure=72.9, source="6.0 x 4.5 x 2.7"),
    Case("bass.room-volume", "fail", changed(ROOM, {"room.size": {"width": "2 m", "length": "3 m"}, "seats": None, "subwoofers": None}), level="note"),
    Case("bass.room-volume", "open", NO_CEILING),
    Never("bass.room-volume", "notApplicable", NEVER_EMPTY),
    Case("bass.crossover-reach", "pass", CROSSED, (SPEAKER,), figure=1.6, source="80 / 50"),
    Case("bass.crossover-reach", "fail", changed(CROSSED, {"calibration.settings.0.crossover": "40 Hz"}), (SPEAKER,),
         level="warning", figure=0.8, source="40 / 50"),
    Case("bass.crossover-reach", "fail", changed(CROSSED, {"calibration.settings.0.crossover": "60 Hz"}), (SPEAKER,), level="note"),
    Case("bass.crossover-reach", "open", changed(CROSSED, {"loudspeakers.0.product": None}), (SPEAKER,)),
    Case("bass.crossover-reach", "notApplicable", ROOM),
    Case("bass.subwoofer-reach", "pass", FED, (SPEAKER, LOW), figure=1.75, source="140 / 80"),
    Case("bass.subwoofer-reach", "fail", changed(FED, {"calibration.settings.0.crossover": "150 Hz"}), (SPEAKER, LOW),
         level="warning", figure=0.9333, source="140 / 150"),
    Case("bass.subwoofer-reach", "fail", changed(FED, {"calibration.settings.0.crossover": "100 Hz"}), (SPEAKER, LOW), level="note"),
    Case("bass.subwoofer-reach", "open", CROSSED, (SPEAKER,), says="product"),
    Case("bass.subwoofer-reach", "notApplicable", ROOM),
]  # fmt: skip
