"""A room at its handover, with everything entered, measured, stored and recorded, for the cases to spoil."""

from __future__ import annotations

from typing import Any

from roomlint.sample import at, room, speaker
from roomlint.testing import changed

Data = dict[str, Any]
WHO = {"done": True, "by": "installer", "on": "2026-06-01", "evidence": "sheet 1"}


def step(kind: str, on: str = "2026-06-02", **more: Any) -> Data:
    """Return a step of the calibration, named after its kind."""
    return {"id": kind, "kind": kind, **WHO, "on": on, **more}


def item(kind: str, *of: str, **more: Any) -> Data:
    """Return a handover item, named after its kind."""
    return {"id": kind, "kind": kind, **({"of": list(of)} if of else {}), **WHO, **more}


def entry(name: str, arrival: str, **more: Any) -> Data:
    """Return what is entered and measured of a loudspeaker or subwoofer."""
    return {
        "id": name, "delay": "0 ms", "level": "0 dB", "inverted": False, "crossover": "80 Hz",
        "measured_level": "78 dB", "measured_polarity": "positive", "measured_arrival": arrival, **more,
    }  # fmt: skip


BOX: Data = {
    "roomlint_product": 1, "id": "box", "kind": "loudspeaker", "mass": "6 kg",
    "loudspeaker": {"sensitivity": "87 dB", "drive": "2.83 V", "impedance": "8 ohm"},
}  # fmt: skip
WATT: Data = {
    "roomlint_product": 1, "id": "watt", "kind": "loudspeaker",
    "loudspeaker": {"sensitivity": "87 dB", "drive": "1 W", "impedance": "4 ohm"},
}  # fmt: skip
ACTIVE: Data = {"roomlint_product": 1, "id": "active", "kind": "loudspeaker", "apparent_power": "60 VA"}
PROCESSOR: Data = {"roomlint_product": 1, "id": "proc", "kind": "processor", "processor": {"decoded": 5}}
SHEETS = [BOX, WATT, ACTIVE, PROCESSOR]
HUNG: Data = {
    "on": "front",
    "fixing": {"fastener": "lag-screw", "into": "stud", "diameter": "1/4 in", "length": "3 in", "count": 2},
}
READY: Data = changed(
    room(
        speaker("left", "M+030", -1.5, 2.6, product="box", mounting=HUNG),
        speaker("right", "M-030", 1.5, 2.6, product="box", mounting={"on": "floor"}),
    ),
    {
        "project.stage": "handover",
        "room.walls": [{"id": "front"}],
        "subwoofers": [
            {"id": "sub", "position": at(1.0, 2.6), "mounting": {"on": "floor"}},
            {"id": "sub-2", "position": at(-1.0, 2.6), "mounting": {"on": "floor"}},
        ],
        "electronics": {"processor": {"product": "proc"}},
        "cables": [{"id": "run", "carries": "loudspeaker", "from": "processor", "to": "left", "in_wall": True}],
        "circuits": [{"id": "rack", "gfci": True}],
        "listening_modes": [{"id": "music", "layout": "0+2+0"}],
        "calibration": {
            "reference_level": "78 dB",
            "settings": [
                entry("left", "12.0 ms"), entry("right", "12.0 ms"), entry("sub", "13.0 ms"), entry("sub-2", "13.0 ms"),
            ],
            "steps": [
                step("wiring", "2026-06-01"), step("polarity"), step("subwoofers"), step("crossovers"), step("delays"),
                step("levels"), step("correction", "2026-06-03"), step("verification", "2026-06-03"),
                step("taste", "2026-06-04"),
            ],
            "presets": [
                {"id": "plain", "mode": "music", "taste": False}, {"id": "warm", "mode": "music", "taste": True},
            ],
        },
        "handover": [
            item("stud-proved", "left"), item("pilot-hole", "left"), item("torque", "left"),
            item("photo-before-closing", "run", on="2026-05-01"), item("insulation-test", "rack"),
            item("residual-current-test", "rack"), item("drawings"), item("settings", on="2026-06-04"),
            item("responses", on="2026-06-03"), item("instructions"),
            item("versions", "processor", version="2.4.1"),
        ],
    },
)  # fmt: skip
CALIBRATION = "calibration"
STEPS = f"{CALIBRATION}.steps"
WIRING, POLARITY, SUBWOOFERS, CROSSOVERS, DELAYS, LEVELS, CORRECTION, VERIFICATION, TASTE = range(9)
"""Where each step stands."""
EARLY = changed(READY, {"project.stage": "design"})
BARE = changed(READY, {"project.stage": "design", CALIBRATION: None, "handover": None})
"""At the drawing board with nothing of it yet."""
EARLY_SAID = "the job is at design"
"""What is told then: that nothing is there is not known."""
NO_STAGE = changed(READY, {"project.stage": None})
