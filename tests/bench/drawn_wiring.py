"""Electronics, modes, cables and a record of the setting up, for rooms that a decent team might hand over."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    import random

Data = dict[str, Any]
STAGES = (None, "survey", "design", "rough-in", "handover", "handover")
PASSIVE: Data = {"impedance": "6 ohm", "minimum_impedance": "4.8 ohm", "sensitivity": "88 dB", "drive": "2.83 V"}
"""What a passive cabinet's sheet says beside its acoustics."""
AMPLIFIER: Data = {
    "roomlint_product": 1, "id": "amp", "kind": "amplifier",
    "amplifier": {"channels": 5, "minimum_load": "4 ohm", "power": "120 W", "power_into": "8 ohm"},
}  # fmt: skip
PROCESSOR: Data = {
    "roomlint_product": 1, "id": "proc", "kind": "processor",
    "processor": {
        "decoded": 11, "processed": 11, "outputs": 11, "subwoofer_outputs": 2,
        "layouts": [{"layout": name, "unfitted": ["M+000"]} for name in ("0+2+0", "0+5+0", "0+7+0", "4+7+0")],
    },
}  # fmt: skip
WHO: Data = {"done": True, "by": "installer", "evidence": "sheet 1"}
STEPS = ("wiring", "polarity", "subwoofers", "crossovers", "delays", "levels", "correction", "verification")
ITEMS = ("drawings", "settings", "responses", "instructions", "versions", "stud-proved", "pilot-hole", "torque")


def _some(chance: random.Random, share: float, items: list[Data]) -> list[Data]:
    """Return a list of which each item is left out now and then."""
    return [item for item in items if chance.random() < share]


def wiring(chance: random.Random, speakers: list[Data], subwoofers: list[Data]) -> Data:
    """Return what drives a room; now and then something is left out, as in any file."""
    names, low = [one["id"] for one in speakers], [one["id"] for one in subwoofers]
    sheets = chance.random() < 0.7
    outputs = [{"output": n, "plays": [name]} for n, name in enumerate([*names, *low], 1)]
    if len(low) == 2 and chance.random() < 0.3:
        outputs = [*outputs[: len(names)], {"output": len(names) + 1, "plays": low}]
    amplifiers = []
    for number in range(0, len(names), 5):
        feeds = [{"output": n, "loudspeakers": [name]} for n, name in enumerate(names[number : number + 5], 1)]
        amplifiers.append({"id": f"amp-{number}", "feeds": feeds, **({"product": "amp"} if sheets else {})})
    layout = "0+7+0" if len(names) > 5 else "0+5+0"
    modes = [{"id": "film", "channels": [one["label"] for one in speakers] + ["LFE1"] * bool(low)}]
    modes += [{"id": "music", "layout": "0+2+0"}] * (chance.random() < 0.7)
    driver = {name: one["id"] for one in amplifiers for feed in one["feeds"] for name in feed["loudspeakers"]}
    ends = [("loudspeaker", driver[name], name) for name in names] + [("line-level", "processor", name) for name in low]
    cables = [
        {
            "id": f"to-{end}",
            "carries": carries,
            "from": start,
            "to": end,
            "in_wall": chance.random() < 0.5,
            "length": "10 m",
            "conductor": "2.5 mm2",
        }
        for carries, start, end in ends
    ]
    found: Data = {
        "layout": layout,
        "electronics": {
            "processor": {"outputs": outputs, **({"product": "proc"} if sheets else {})}, "amplifiers": amplifiers,
            "racks": [{"id": "rack", "contains": ["processor", *(one["id"] for one in amplifiers)]}],
        },
        "listening_modes": modes,
    }  # fmt: skip
    return {**found, "cables": _some(chance, 0.97, cables)} if chance.random() < 0.6 else found


def record(chance: random.Random, sources: list[Data], cables: list[Data]) -> Data:
    """Return the record of the setting up: what is entered and measured, steps, presets, items."""
    entries = [
        {
            "level": f"{chance.uniform(-2.0, 2.0):.1f} dB", "inverted": False,
            "measured_level": f"{78.0 + chance.gauss(0.0, 0.25):.1f} dB", "measured_polarity": "positive",
            "measured_arrival": f"{12.0 + chance.gauss(0.0, 0.1 if 'label' in one else 1.0):.2f} ms",
        }
        for one in sources
    ]  # fmt: skip
    order = list(STEPS)
    if chance.random() < 0.2:
        order[4], order[1] = order[1], order[4]
    steps = [{"id": kind, "kind": kind, "on": "2026-06-02", **WHO} for kind in order]
    items: list[Data] = [{"id": kind, "kind": kind, "on": "2026-06-02", **WHO} for kind in ITEMS]
    items[4] |= {"of": ["processor"], "version": "2.4.1"}
    for item in items[5:]:
        item["of"] = [one["id"] for one in sources]
        item["on"] = "2026-05-20"
    hidden = [cable["id"] for cable in cables if cable["in_wall"]]
    if hidden:
        items.append({"id": "photo", "kind": "photo-before-closing", "of": hidden, **WHO, "on": "2026-05-01"})
    presets = [{"id": "film", "mode": "film", "taste": False}, {"id": "music", "mode": "music", "taste": False}]
    return {
        "entries": entries, "steps": _some(chance, 0.96, steps), "items": _some(chance, 0.95, items),
        "presets": presets,
    }  # fmt: skip
