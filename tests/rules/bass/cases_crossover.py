"""Cases of where loudspeakers and subwoofers meet."""

from __future__ import annotations

from typing import Any

from roomlint.edges import Edge
from roomlint.sample import room, speaker
from roomlint.testing import Case, Never, changed

BOX = {"roomlint_product": 1, "id": "box", "kind": "loudspeaker", "loudspeaker": {"low_limit": "50 Hz"}}
LOW = {"roomlint_product": 1, "id": "low", "kind": "subwoofer", "loudspeaker": {"high_limit": "140 Hz"}}
SHEETS = (BOX, LOW)
SUB: dict[str, Any] = {
    "id": "sub",
    "product": "low",
    "position": {"from_left": "1 m", "from_front": "0.3 m", "height": "0.3 m"},
}
BARE = room(speaker("centre", "M+000", 0.0, 3.0, product="box"))
WITH_SUB = changed(BARE, {"subwoofers": [SUB]})


def crossed(at: str, own: str | None = None, **more: Any) -> dict[str, Any]:
    """Return a room whose centre hands over to a subwoofer, which may have a low-pass of its own."""
    entered = {"calibration": {"settings": [{"id": "centre", "crossover": at}]}}
    return changed(
        WITH_SUB, {**entered, **{f"subwoofers.0.{key}": value for key, value in {"low_pass": own, **more}.items()}}
    )


def down_to(limit: str) -> list[dict[str, Any]]:
    """Return the sheets with a lower limit of the subwoofer."""
    return [BOX, changed(LOW, {"loudspeaker.low_limit": limit})]


# 4.5 by 6.0 m under 2.7 m; the left one delayed against a subwoofer in the corner.
SHARED: dict[str, Any] = {
    "roomlint": 1,
    "project": {"code": "case"},
    "survey": {"tolerance": "0 mm", "temperature": "20 degC"},
    "room": {"size": {"width": "4.5 m", "length": "6 m"}, "ceiling": {"shape": "flat", "height": "2.7 m"}},
    "seats": [{"id": "middle", "ear": {"from_left": "2.25 m", "from_front": "4.0 m", "height": "1.1 m"}}],
    "loudspeakers": [
        {
            "id": "left", "label": "M+030",
            "position": {"from_left": "1.2 m", "from_front": "1.0 m", "height": "1.0 m"},
        }
    ],
    "subwoofers": [{"id": "sub", "position": {"from_left": "0.4 m", "from_front": "0.4 m", "height": "0.25 m"}}],
    "calibration": {
        "settings": [{"id": "left", "crossover": "80 Hz", "delay": "2.9 ms"}, {"id": "sub", "delay": "0 ms"}],
    },
}  # fmt: skip
LATE = changed(SHARED, {"calibration.settings.0.delay": "10 ms"})
SUMMED = "an independent modal sum of the same room to 1600 Hz with both filters"
SETTING = "calibration.settings.0.crossover"

CASES: list[Case | Never] = [
    Case("bass.crossover-sum", "pass", SHARED, figure=3.18, within=0.15, source=SUMMED),
    Case("bass.crossover-sum", "fail", LATE, level="note", figure=-3.62, within=0.15, source=SUMMED, says="80 Hz"),
    Case("bass.crossover-sum", "pass", changed(SHARED, {"subwoofers.0.inverted": True}), figure=-1.88, within=0.15,
         source=SUMMED),
    # Higher crossovers have as much of the band above them as below: with the upper side cut off these would be -2.9
    # and -5.6 dB.
    Case("bass.crossover-sum", "pass", changed(LATE, {SETTING: "100 Hz"}), figure=-0.66, within=0.15, source=SUMMED),
    Case("bass.crossover-sum", "pass", changed(SHARED, {SETTING: "110 Hz", "calibration.settings.0.delay": "0 ms"}), figure=-1.32,
         within=0.15, source=SUMMED),
    Case("bass.crossover-sum", "open", changed(SHARED, {"calibration.settings.0.crossover": None})),
    Case("bass.crossover-sum", "open", changed(SHARED, {"calibration.settings.0.delay": None}), says="delay"),
    Case("bass.crossover-sum", "open", changed(SHARED, {"calibration.settings.1": None}), says="delay"),
    Case("bass.crossover-sum", "notApplicable", changed(SHARED, {"subwoofers": "none", "calibration.settings.1": None})),
    Case("bass.crossover-sum", "notApplicable", changed(SHARED, {"calibration.settings.0.crossover": "150 Hz"})),
    Case("bass.crossover-reach", "pass", crossed("80 Hz"), SHEETS, figure=1.6, source="80 / 50"),
    Case("bass.crossover-reach", "fail", crossed("40 Hz"), SHEETS, level="warning", figure=0.8, source="40 / 50"),
    Case("bass.crossover-reach", "fail", crossed("60 Hz"), SHEETS, level="note"),
    Case("bass.crossover-reach", "open", changed(crossed("80 Hz"), {"loudspeakers.0.product": None}), SHEETS),
    # No crossover entered is not the same as none wanted.
    Case("bass.crossover-reach", "open", WITH_SUB, SHEETS, says="calibration.settings"),
    Case("bass.crossover-reach", "notApplicable", BARE, SHEETS),
    Case("bass.crossover-high", "pass", crossed("120 Hz"), SHEETS, figure=120.0, source="as entered"),
    Case("bass.crossover-high", "fail", crossed("150 Hz"), SHEETS, level="note", says="heard as a place"),
    Case("bass.crossover-high", "open", WITH_SUB, SHEETS, says="calibration.settings"),
    Case("bass.crossover-high", "notApplicable", BARE, SHEETS),
    Case("bass.low-end", "pass", WITH_SUB, down_to("24 Hz"), figure=24.0, source="its sheet"),
    Case("bass.low-end", "fail", WITH_SUB, down_to("35 Hz"), level="note", says="down to 35"),
    Case("bass.low-end", "fail", WITH_SUB, down_to("55 Hz"), level="warning", says="at most 40 Hz"),
    Case("bass.low-end", "review", WITH_SUB, down_to("41 Hz ± 2 Hz")),
    Case("bass.low-end", "open", WITH_SUB, SHEETS, says="low_limit"),
    Case("bass.low-end", "open", changed(WITH_SUB, {"subwoofers.0.product": None}), SHEETS, says="product"),
    Case("bass.low-end", "open", changed(BARE, {"subwoofers": None}), SHEETS, says="subwoofers"),
    Case("bass.low-end", "notApplicable", BARE, SHEETS),
    Case("bass.subwoofer-reach", "pass", crossed("80 Hz"), SHEETS, figure=1.75, source="140 / 80"),
    Case("bass.subwoofer-reach", "fail", crossed("150 Hz"), SHEETS, level="warning", figure=0.9333, source="140 / 150"),
    Case("bass.subwoofer-reach", "fail", crossed("100 Hz"), SHEETS, level="note", says="100 Hz"),
    Case("bass.subwoofer-reach", "open", changed(crossed("80 Hz"), {"subwoofers.0.product": None}), SHEETS),
    Case("bass.subwoofer-reach", "open", WITH_SUB, SHEETS, says="calibration.settings"),
    Case("bass.subwoofer-reach", "notApplicable", BARE, SHEETS),
    Case("bass.low-pass", "pass", crossed("80 Hz", "120 Hz"), SHEETS, figure=1.5, source="120 / 80"),
    Case("bass.low-pass", "fail", crossed("80 Hz", "60 Hz"), SHEETS, level="warning", figure=0.75,
         source="60 / 80"),
    Case("bass.low-pass", "fail", crossed("80 Hz", "100 Hz"), SHEETS, level="note"),
    Case("bass.low-pass", "open", changed(WITH_SUB, {"subwoofers.0.low_pass": "80 Hz"}), SHEETS),
    # Nothing said of its filter is not the same as none.
    Case("bass.low-pass", "open", crossed("80 Hz"), SHEETS, says="low_pass"),
    Case("bass.low-pass", "notApplicable", crossed("80 Hz", "none"), SHEETS),
    Case("bass.polarity", "pass", crossed("80 Hz"), SHEETS),
    Case("bass.polarity", "fail", crossed("80 Hz", inverted=True), SHEETS, subject="subwoofer/sub", level="note"),
    # A main that is turned round in the processor.
    Case("bass.polarity", "fail", changed(crossed("80 Hz"), {"calibration.settings.0.inverted": True}), SHEETS,
         subject="loudspeaker/centre"),
    Case("bass.polarity", "notApplicable", room()),
    Never("bass.polarity", "open", "a polarity that nobody turned round is as wired"),
]  # fmt: skip

EDGES: list[Edge] = [
    Edge("bass.crossover-sum", SHARED, "calibration.settings.0.delay", 6.0, 10.0, 1, "ms", 0.001),
    Edge("bass.crossover-reach", crossed("80 Hz"), SETTING, 30.0, 100.0, 2, unit="Hz", products=SHEETS),
    Edge("bass.crossover-high", crossed("80 Hz"), SETTING, 60.0, 200.0, 1, unit="Hz", products=SHEETS),
    Edge(
        "bass.low-end",
        WITH_SUB,
        "loudspeaker.low_limit",
        20.0,
        60.0,
        2,
        unit="Hz",
        products=down_to("24 Hz"),
        sheet="low",
    ),
    Edge("bass.subwoofer-reach", crossed("80 Hz"), SETTING, 60.0, 200.0, 2, unit="Hz", products=SHEETS),
    Edge("bass.low-pass", crossed("80 Hz", "100 Hz"), SETTING, 50.0, 120.0, 2, unit="Hz", products=SHEETS),
]
