"""Cases of what is entered and what was measured."""

from __future__ import annotations

from typing import Any

from handover_rooms import EARLY, NO_STAGE, READY, SHEETS

from roomlint.edges import Edge
from roomlint.sample import at
from roomlint.testing import Case, Never, changed

SETTINGS = "calibration.settings"
LEFT, RIGHT, SUB = (f"{SETTINGS}.{place}" for place in range(3))
DRY = changed(READY, {"subwoofers": [], f"{SETTINGS}.3": None, f"{SETTINGS}.2": None})
CRITICAL = {"project.reference": "critical"}
# 3.0017 m from the ear stand left and right; at twice that a loudspeaker arrives 6.02 dB lower.
FAR = {
    "loudspeakers.2": {"id": "far", "label": "M+000", "product": "box", "position": at(0.0, 3.4)},
    "room.size.length": "12 m",
    f"{SETTINGS}.4": {**READY["calibration"]["settings"][0], "id": "far"},
}
# A centre as far away as they are, set and measured as they are.
CENTRED = {**FAR, "loudspeakers.2": {"id": "centre", "label": "M+000", "product": "box", "position": at(0.0, 3.0017)},
           f"{SETTINGS}.4.id": "centre"}  # fmt: skip
TWICE = {**FAR, "seats.0.ear": {"from_left": "2.5 m", "from_front": "8 m", "height": "1.2 m"},
         "loudspeakers.0.position": {"from_left": "2.5 m", "from_front": "5 m", "height": "1.2 m"},
         "loudspeakers.1.position": {"from_left": "2.5 m", "from_front": "5 m", "height": "1.2 m"},
         "loudspeakers.2.position": {"from_left": "2.5 m", "from_front": "2 m", "height": "1.2 m"}}  # fmt: skip


def on(rule: str, kind: str, changes: dict[str, Any] | None = None, **more: Any) -> Case:
    """Return a case of the room at its handover."""
    return Case(f"handover.{rule}", kind, changed(more.pop("base", READY), changes or {}), SHEETS, **more)


def early(*rules: str) -> list[Case]:
    """Return the cases in which the stage decides: at the drawing board, and where nobody says."""
    return [case for rule in rules for case in (on(rule, "notApplicable", base=EARLY), on(rule, "open", base=NO_STAGE))]


CASES: list[Case | Never] = [
    on("entered", "pass"),
    on("entered", "fail", {f"{LEFT}.level": None, f"{LEFT}.inverted": None}, subject="loudspeaker/left", level="warning",
       says="no level, polarity"),
    on("entered", "fail", {f"{LEFT}.delay": None, f"{LEFT}.crossover": None}, subject="loudspeaker/left", says="delay, crossover"),
    on("entered", "pass", {f"{LEFT}.delay": None, f"{LEFT}.distance": "3 m"}),
    on("entered", "fail", {SETTINGS: []}, says="delay, level, polarity"),
    on("entered", "open", {SETTINGS: None}, says="calibration.settings"),
    # What is set on the subwoofer itself counts.
    on("entered", "pass", {SUB: None, "subwoofers.0.delay": "1 ms", "subwoofers.0.level": "0 dB", "subwoofers.0.inverted": False},
       subject="subwoofer/sub"),
    on("entered", "pass", {f"{LEFT}.crossover": None}, base=DRY, subject="loudspeaker/left"),
    # Where the file speaks of no subwoofer, there may be one to cross over to.
    on("entered", "open", {f"{LEFT}.crossover": None, "subwoofers": None}, base=DRY, subject="loudspeaker/left", says="subwoofers"),
    *early("entered", "level-measured", "level-entered", "crossovers-alike", "crossovers-meet", "polarity", "subwoofer-arrival", "arrival",
           "subwoofers-together"),

    on("level-measured", "pass", figure=0.0, source="78 dB less 78 dB"),
    on("level-measured", "fail", {f"{LEFT}.measured_level": "79.5 dB"}, subject="loudspeaker/left", level="warning", figure=1.5,
       source="79.5 dB less 78 dB"),
    on("level-measured", "fail", {f"{LEFT}.measured_level": "77.2 dB"}, subject="loudspeaker/left", level="note"),
    on("level-measured", "fail", {**CRITICAL, f"{LEFT}.measured_level": "77.2 dB"}, subject="loudspeaker/left", level="warning"),
    on("level-measured", "pass", {f"{SUB}.measured_level": "79.5 dB"}, subject="subwoofer/sub"),
    on("level-measured", "fail", {f"{SUB}.measured_level": "82 dB"}, subject="subwoofer/sub", level="warning"),
    on("level-measured", "review", {f"{LEFT}.measured_level": "78.9 dB ± 0.3 dB"}, subject="loudspeaker/left"),
    on("level-measured", "open", {f"{LEFT}.measured_level": None}, subject="loudspeaker/left", says="measured_level"),
    on("level-measured", "open", {"calibration.reference_level": None}, says="reference_level"),
    on("level-measured", "open", {SETTINGS: []}, says="calibration.settings"),

    on("level-entered", "pass", figure=0.0, within=1e-6, source="left and right are alike"),
    # Twice as far away asks for 6.02 dB more, and nothing more is entered.
    on("level-entered", "fail", TWICE, subject="loudspeaker/far", level="note", figure=-6.0206, source="20 lg 2"),
    on("level-entered", "pass", {**TWICE, f"{SETTINGS}.4.level": "6 dB"}, subject="loudspeaker/far", figure=-0.0206, within=1e-3,
       source="6 dB less 20 lg 2"),
    on("level-entered", "fail", {**TWICE, f"{SETTINGS}.4.level": "12 dB"}, subject="loudspeaker/far"),
    # One watt into 4 ohm is 2 V: the same cabinet plays 3.01 dB louder for 2.83 V.
    on("level-entered", "pass", {**TWICE, "loudspeakers.2.product": "watt", f"{SETTINGS}.4.level": "3 dB"}, subject="loudspeaker/far",
       figure=-0.0103, within=1e-3, source="20 lg 2 less 10 lg 2"),
    # Alike and equally far, and set 6 dB apart.
    on("level-entered", "fail", {f"{LEFT}.level": "6 dB"}, subject="loudspeaker/left", figure=6.0),
    on("level-entered", "fail", {f"{LEFT}.level": "6 dB"}, subject="loudspeaker/right", figure=-6.0),
    # Two of three agree, and the one that does not is told, not the others; a centre with its own amplifier tells nothing.
    on("level-entered", "fail", {**CENTRED, f"{LEFT}.level": "6 dB"}, subject="loudspeaker/left", figure=6.0),
    *(on("level-entered", "pass", {**CENTRED, f"{LEFT}.level": "6 dB"}, subject=f"loudspeaker/{name}", figure=0.0, within=1e-3)
      for name in ("right", "centre")),
    on("level-entered", "fail", {**CENTRED, f"{LEFT}.level": "6 dB", "loudspeakers.2.product": "active"}, subject="loudspeaker/right",
       figure=-6.0),
    on("level-entered", "open", {f"{LEFT}.level": None}, subject="loudspeaker/left", says="level"),
    on("level-entered", "review", {**TWICE, f"{SETTINGS}.4.level": "2 dB ± 1 dB"}, subject="loudspeaker/far"),
    on("level-entered", "notApplicable", {"loudspeakers.0.product": "active"}, subject="loudspeaker/left"),

    on("crossovers-alike", "pass", figure=0.0, source="80 Hz less 80 Hz"),
    on("crossovers-alike", "fail", {f"{LEFT}.crossover": "100 Hz"}, level="warning", figure=20.0, source="100 Hz less 80 Hz"),
    on("crossovers-alike", "open", {f"{LEFT}.crossover": None}, says="crossover"),
    on("crossovers-alike", "review", {f"{LEFT}.crossover": "80.5 Hz ± 1 Hz"}),
    on("crossovers-alike", "notApplicable", base=DRY),
    on("crossovers-alike", "open", {"subwoofers": None}, base=DRY, says="subwoofers"),

    on("crossovers-meet", "pass", figure=1.0, source="80 / 80"),
    on("crossovers-meet", "fail", {f"{SUB}.crossover": "60 Hz"}, subject="subwoofer/sub", level="warning", figure=0.75,
       source="60 / 80", says="0.75 times"),
    on("crossovers-meet", "pass", {f"{SUB}.crossover": "100 Hz"}, subject="subwoofer/sub"),
    on("crossovers-meet", "review", {f"{SUB}.crossover": "79 Hz ± 3 Hz"}, subject="subwoofer/sub"),
    on("crossovers-meet", "open", {f"{SUB}.crossover": None}, subject="subwoofer/sub", says="crossover"),
    on("crossovers-meet", "open", {f"{LEFT}.crossover": None, f"{RIGHT}.crossover": None}, says="crossover"),
    on("polarity", "pass"),
    on("polarity", "fail", {f"{LEFT}.measured_polarity": "negative"}, subject="loudspeaker/left", level="warning"),
    on("polarity", "fail", {f"{SUB}.measured_polarity": "negative"}, subject="subwoofer/sub"),
    on("polarity", "open", {f"{LEFT}.measured_polarity": None}, subject="loudspeaker/left", says="measured_polarity"),

    on("subwoofer-arrival", "pass", figure=1.0, source="13 ms less 12 ms"),
    # A quarter of a period at 80 Hz is 3.125 ms.
    on("subwoofer-arrival", "fail", {f"{SUB}.measured_arrival": "16 ms"}, subject="subwoofer/sub", level="warning", figure=4.0,
       source="16 ms less 12 ms", says="3.1"),
    on("subwoofer-arrival", "fail", {f"{SUB}.measured_arrival": "8 ms"}, subject="subwoofer/sub", says="ahead"),
    on("subwoofer-arrival", "pass", {f"{SUB}.measured_arrival": "16 ms", f"{LEFT}.crossover": "60 Hz", f"{RIGHT}.crossover": "60 Hz",
       f"{SUB}.crossover": "60 Hz", f"{SETTINGS}.3.crossover": "60 Hz"}, subject="subwoofer/sub"),
    # What is entered for the subwoofer itself is the end of the low-frequency channel; they meet at 80 Hz all the same.
    on("subwoofer-arrival", "pass", {f"{SUB}.measured_arrival": "14.5 ms", f"{SUB}.crossover": "120 Hz"}, subject="subwoofer/sub",
       figure=2.5),
    on("subwoofer-arrival", "review", {f"{SUB}.measured_arrival": "15 ms ± 0.5 ms"}, subject="subwoofer/sub"),
    on("subwoofer-arrival", "open", {f"{SUB}.measured_arrival": None}, subject="subwoofer/sub", says="measured_arrival"),
    on("subwoofer-arrival", "open", {f"{LEFT}.measured_arrival": None}, says="measured_arrival"),

    on("arrival", "pass", figure=0.0, source="12 ms less 12 ms"),
    on("arrival", "fail", {f"{LEFT}.measured_arrival": "13.5 ms"}, subject="loudspeaker/left", level="warning", figure=1.5,
       source="13.5 ms less 12 ms", says="1.50 ms behind"),
    on("arrival", "fail", {f"{LEFT}.measured_arrival": "11.5 ms"}, subject="loudspeaker/left", level="note", says="ahead"),
    # Two of three agree: the one that is late is told once.
    on("arrival", "fail", {**CENTRED, f"{LEFT}.measured_arrival": "17 ms"}, subject="loudspeaker/left", figure=5.0, source="17 ms less 12 ms"),
    *(on("arrival", "pass", {**CENTRED, f"{LEFT}.measured_arrival": "17 ms"}, subject=f"loudspeaker/{name}", figure=0.0, within=1e-6)
      for name in ("right", "centre")),
    # Of two nobody can tell which; the subwoofer meets their mean.
    on("subwoofer-arrival", "pass", {f"{LEFT}.measured_arrival": "14 ms"}, subject="subwoofer/sub", figure=0.0, within=1e-6,
       source="13 ms less the mean of 14 and 12 ms"),
    on("subwoofer-arrival", "pass", {**CENTRED, f"{LEFT}.measured_arrival": "30 ms"}, subject="subwoofer/sub", figure=1.0,
       source="13 ms less 12 ms, which two of three keep"),
    on("arrival", "review", {f"{LEFT}.measured_arrival": "12.95 ms ± 0.2 ms"}, subject="loudspeaker/left"),
    on("arrival", "open", {f"{LEFT}.measured_arrival": None}, says="measured_arrival"),
    on("arrival", "open", {"loudspeakers.1.label": None}, subject="loudspeaker/left", says="label"),
    on("arrival", "notApplicable", {"loudspeakers.1": None, f"{RIGHT}": None}),

    on("subwoofers-together", "pass", figure=0.0, source="13 ms less 13 ms"),
    on("subwoofers-together", "fail", {f"{SUB}.measured_arrival": "9 ms"}, level="note", figure=4.0, source="13 ms less 9 ms"),
    on("subwoofers-together", "review", {f"{SUB}.measured_arrival": "16 ms ± 0.5 ms"}),
    on("subwoofers-together", "open", {f"{SUB}.measured_arrival": None}, says="measured_arrival"),
    on("subwoofers-together", "notApplicable", base=DRY),
    on("subwoofers-together", "open", {"subwoofers": None}, base=DRY, says="subwoofers"),
]  # fmt: skip

EDGES: list[Edge] = [
    Edge("handover.level-measured", READY, f"{LEFT}.measured_level", 70.0, 86.0, 4, unit="dB", products=SHEETS,
         subject="loudspeaker/left"),
    Edge("handover.level-measured", changed(READY, CRITICAL), f"{LEFT}.measured_level", 70.0, 86.0, 4, unit="dB",
         products=SHEETS, subject="loudspeaker/left"),
    Edge("handover.level-measured", READY, f"{SUB}.measured_level", 70.0, 86.0, 4, unit="dB", products=SHEETS,
         subject="subwoofer/sub"),
    Edge("handover.level-entered", changed(READY, TWICE), f"{SETTINGS}.4.level", -10.0, 20.0, 2, unit="dB", products=SHEETS,
         subject="loudspeaker/far"),
    Edge("handover.crossovers-meet", READY, f"{SUB}.crossover", 50.0, 120.0, 1, unit="Hz", products=SHEETS,
         subject="subwoofer/sub"),
    Edge("handover.arrival", READY, f"{LEFT}.measured_arrival", 9.0, 15.0, 4, unit="ms", scale=0.001, products=SHEETS,
         subject="loudspeaker/left"),
    Edge("handover.subwoofers-together", READY, f"{SUB}.measured_arrival", 14.0, 25.0, 1, unit="ms", scale=0.001,
         products=SHEETS),
    Edge("handover.crossovers-alike", READY, f"{LEFT}.crossover", 70.0, 95.0, 2, unit="Hz", products=SHEETS),
    Edge("handover.subwoofer-arrival", READY, f"{SUB}.measured_arrival", 5.0, 25.0, 2, unit="ms", scale=0.001, products=SHEETS,
         subject="subwoofer/sub"),
]  # fmt: skip
