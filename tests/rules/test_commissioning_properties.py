"""What holds of the chapters channel and handover: knowledge only grows, every key matters, worse is never better."""

from __future__ import annotations

import json
from typing import Any

import pytest
from channel_rooms import SHEETS as WIRES
from channel_rooms import WITH_SUB, amplifier, box, feed, processor
from handover_rooms import READY
from handover_rooms import SHEETS as BOXES

from roomlint.review.book import load_book
from roomlint.review.engine import review_room
from roomlint.testing import changed, room_of

Data = dict[str, Any]
RULES = [rule for rule in load_book().rules if rule.chapter in {"channel", "handover"}]
SILENT = {"pass": {"notApplicable", "gone"}, "fail": {"pass", "notApplicable", "gone"}}
SILENT["review"] = SILENT["fail"]
BROKEN = changed(
    WITH_SUB,
    {
        "electronics.amplifiers.0.feeds": [feed(1, "left", "right", wiring="parallel"), feed(1, "sub")],
        "electronics.processor.unfitted": ["M+030"],
        "cables.1.from": "processor",
        "listening_modes": [{"id": "film", "layout": "0+5+0"}],
    },
)
"""The room with a subwoofer, with a fault of every kind."""
LATE = changed(
    READY,
    {
        "calibration.steps.1.on": "2026-06-09", "calibration.steps.5.done": False, "calibration.presets.0.taste": True,
        "calibration.settings.0.measured_level": "84 dB", "calibration.settings.0.crossover": "120 Hz",
        "calibration.settings.2.measured_polarity": "negative", "calibration.settings.2.measured_arrival": "30 ms",
        "calibration.settings.1.level": None, "handover.2": None, "handover.0.done": False,
    },
)  # fmt: skip
"""The room at its handover, with a fault of every kind."""
ROOMS = {"wired": (WITH_SUB, WIRES), "broken": (BROKEN, WIRES), "ready": (READY, BOXES), "late": (LATE, BOXES)}
ABSENT = {
    ("electronics", "processor", "unfitted"),  # what is not declared is fitted, and nothing more is said
    ("subwoofers", 0, "product"),  # what an amplifier drives is passive until a sheet says otherwise
}
"""Keys without which less is stated, not less known."""


def judged(data: Data, sheets: list[Data]) -> dict[tuple[str, str], str]:
    """Return the kinds of verdicts, by rule and subject, with the level of a failure."""
    outcome = review_room(room_of(data, sheets), RULES)
    assert not outcome.troubles, outcome.troubles
    return {(v.rule, v.subject): str(v.kind) for v in outcome.verdicts}


def ways(data: Any, way: tuple[str | int, ...] = ()) -> list[tuple[str | int, ...]]:
    """Return the way to every key of a file."""
    if isinstance(data, dict):
        return [one for key, value in data.items() for one in ((*way, key), *ways(value, (*way, key)))]
    if isinstance(data, list):
        return [one for index, value in enumerate(data) for one in ways(value, (*way, index))]
    return []


def without(data: Data, way: tuple[str | int, ...]) -> Data:
    """Return the file without a key."""
    copied: Any = json.loads(json.dumps(data))
    at = copied
    for part in way[:-1]:
        at = at[part]
    del at[way[-1]]
    result: Data = copied
    return result


def readable(data: Data, sheets: list[Data]) -> bool:
    """Whether a file holds together without a key: what is required and what is named must be there."""
    try:
        room_of(data, sheets)
    except ValueError:
        return False
    return True


@pytest.mark.parametrize("name", ROOMS)
def test_no_key_that_is_taken_out_makes_a_verdict_fall_silent(name: str) -> None:
    data, sheets = ROOMS[name]
    base, told, tried = judged(data, sheets), [], 0
    for way in ways(data):
        other = without(data, way)
        if way[0] == "room" or way in ABSENT or not readable(other, sheets):
            continue
        tried += 1
        now = judged(other, sheets)
        there = {part for _, subject in now for part in subject.split("+")}
        opened = {
            rule for (rule, subject), kind in now.items() if kind == "open" and base.get((rule, subject)) != "open"
        }
        for (rule, subject), kind in base.items():
            after = now.get((rule, subject), "gone")
            if after not in SILENT.get(kind, ()):
                continue
            if after == "gone" and (rule in opened or not set(subject.split("+")) <= there):
                continue
            told.append(f"without {way}: {rule} of {subject}: {kind} became {after}")
    assert tried > 30
    assert told == []


PROCESSOR, AMPLIFIER, BOX = processor(), amplifier(), box("8 ohm", "6.4 ohm")
OTHER: dict[str, tuple[str, Any]] = {
    # Where a key stands in the room or the sheet, and another value that must not pass unseen.
    "room": ("electronics.processor.outputs.0.output", 2),
    "plays": ("electronics.processor.outputs.0.plays", ["right"]),
    "unfitted": ("electronics.processor.unfitted", ["M+030"]),
    "feed output": ("electronics.amplifiers.0.feeds.0.output", 2),
    "feed loudspeakers": ("electronics.amplifiers.0.feeds.0.loudspeakers", ["right"]),
    "patched": ("electronics.amplifiers.0.feeds.0.line_output", 2),
    "bridged": ("electronics.amplifiers.0.feeds.0.bridged", True),
    "cable from": ("cables.0.from", "processor"),
    "cable to": ("cables.0.to", "right"),
    "cable carries": ("cables.0.carries", "mains"),
    "channels": ("listening_modes.0.channels", ["M+090"]),
    "layout": ("listening_modes.0.layout", "0+5+0"),
    "label": ("loudspeakers.0.label", "M+090"),
}


@pytest.mark.parametrize("key", OTHER)
def test_every_key_of_the_way_to_a_loudspeaker_matters(key: str) -> None:
    way, value = OTHER[key]
    assert judged(changed(WITH_SUB, {way: value}), WIRES) != judged(WITH_SUB, WIRES)


@pytest.mark.parametrize(
    ("sheet", "way", "value"),
    [
        ("proc", "processor.decoded", 1), ("proc", "processor.processed", 1), ("proc", "processor.outputs", 1),
        ("proc", "processor.subwoofer_outputs", 0), ("proc", "processor.layouts", [{"layout": "0+5+0"}]),
        ("amp-two", "amplifier.channels", 1), ("amp-two", "amplifier.minimum_load", "16 ohm"),
        ("amp-two", "amplifier.least_loads", [{"driven": 2, "load": "16 ohm"}]),
        ("box", "loudspeaker.impedance", "2 ohm"), ("box", "loudspeaker.minimum_impedance", "2 ohm"),
        ("low", "apparent_power", None),
    ],
)  # fmt: skip
def test_every_key_of_a_sheet_matters(sheet: str, way: str, value: Any) -> None:
    other = [changed(one, {way: value}) if one["id"] == sheet else one for one in WIRES]
    assert judged(WITH_SUB, other) != judged(WITH_SUB, WIRES)


SETTING, STEP, PRESET, ITEM = "calibration.settings.0", "calibration.steps.5", "calibration.presets.0", "handover.2"


@pytest.mark.parametrize(
    ("way", "value"),
    [
        ("calibration.reference_level", "90 dB"), (f"{SETTING}.level", "20 dB"), (f"{SETTING}.delay", None),
        (f"{SETTING}.measured_level", "90 dB"), (f"{SETTING}.crossover", "200 Hz"), (f"{SETTING}.inverted", None),
        (f"{SETTING}.measured_polarity", "negative"), (f"{SETTING}.measured_arrival", "90 ms"),
        (f"{STEP}.kind", "taste"), (f"{STEP}.done", False), (f"{STEP}.by", None), (f"{STEP}.on", "2026-01-01"),
        (f"{STEP}.evidence", None), (f"{PRESET}.mode", None), (f"{PRESET}.taste", True), (f"{ITEM}.kind", "other"),
        (f"{ITEM}.of", ["right"]), (f"{ITEM}.done", False), ("handover.10.version", None),
        ("handover.10.on", "2026-06-09"), ("cables.0.in_wall", False),
        ("project.stage", "design"),
    ],
)  # fmt: skip
def test_every_key_of_the_handover_matters(way: str, value: Any) -> None:
    assert judged(changed(READY, {way: value}), BOXES) != judged(READY, BOXES)


@pytest.mark.parametrize(("more", "worse"), [(2, 4), (4, 8), (2, 8)])
def test_more_cabinets_on_an_output_are_never_better(more: int, worse: int) -> None:
    names = [f"box-{number}" for number in range(worse)]
    speakers = [{"id": name, "label": "M+030", "product": "box"} for name in names]

    def kind(count: int) -> str:
        feeds = [feed(1, *names[:count], wiring="parallel")]
        data = changed(WITH_SUB, {"loudspeakers": speakers, "electronics.amplifiers.0.feeds": feeds, "cables": [],
                                  "electronics.processor.outputs": []})  # fmt: skip
        return judged(data, WIRES)[("channel.load", "output/1+amplifier/amp")]

    rank = {"pass": 0, "fail": 1}
    assert rank[kind(more)] <= rank[kind(worse)]
