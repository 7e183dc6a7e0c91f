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


SETTING = "calibration.settings.0.crossover"

CASES: list[Case | Never] = [
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
    Case("bass.low-pass", "notApplicable", crossed("80 Hz"), SHEETS),
    Case("bass.polarity", "pass", crossed("80 Hz"), SHEETS),
    Case("bass.polarity", "fail", crossed("80 Hz", inverted=True), SHEETS, subject="subwoofer/sub", level="note"),
    # A main that is turned round in the processor.
    Case("bass.polarity", "fail", changed(crossed("80 Hz"), {"calibration.settings.0.inverted": True}), SHEETS,
         subject="loudspeaker/centre"),
    Case("bass.polarity", "notApplicable", room()),
    Never("bass.polarity", "open", "a polarity that nobody turned round is as wired"),
]  # fmt: skip

EDGES: list[Edge] = [
    Edge("bass.crossover-reach", crossed("80 Hz"), SETTING, 30.0, 100.0, 2, unit="Hz", products=SHEETS),
    Edge("bass.crossover-high", crossed("80 Hz"), SETTING, 60.0, 200.0, 1, unit="Hz", products=SHEETS),
    Edge("bass.subwoofer-reach", crossed("80 Hz"), SETTING, 60.0, 200.0, 2, unit="Hz", products=SHEETS),
    Edge("bass.low-pass", crossed("80 Hz", "100 Hz"), SETTING, 50.0, 120.0, 2, unit="Hz", products=SHEETS),
]
