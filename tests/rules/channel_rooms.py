"""Rooms and sheets that the cases of the chapters channel and handover start from."""

from __future__ import annotations

from typing import Any

from roomlint.sample import room, speaker
from roomlint.testing import changed

Data = dict[str, Any]


def box(rated: str | None = "8 ohm", least: str | None = None, name: str = "box", **more: Any) -> Data:
    """Return the sheet of a passive cabinet."""
    data = {"impedance": rated, "minimum_impedance": least, **more}
    return {
        "roomlint_product": 1, "id": name, "kind": "loudspeaker",
        "loudspeaker": {key: value for key, value in data.items() if value is not None},
    }  # fmt: skip


def amplifier(channels: int | None = 2, name: str = "amp-two", **more: Any) -> Data:
    """Return the sheet of an amplifier for 4 ohm."""
    data = {"channels": channels, "minimum_load": "4 ohm", "power": "100 W", "power_into": "8 ohm", **more}
    return {
        "roomlint_product": 1, "id": name, "kind": "amplifier",
        "amplifier": {key: value for key, value in data.items() if value is not None},
    }  # fmt: skip


def processor(**more: Any) -> Data:
    """Return the sheet of a processor that takes six upper channels with seven at the ears only."""
    data: Data = {
        "decoded": 15, "processed": 15, "outputs": 15, "subwoofer_outputs": 2,
        "layouts": [
            {"layout": "0+2+0", "unfitted": []}, {"layout": "0+5+0", "unfitted": []},
            {"layout": "4+5+0", "unfitted": []}, {"layout": "6+7+0", "unfitted": ["M+135", "M-135"]},
        ],
        **more,
    }  # fmt: skip
    return {
        "roomlint_product": 1, "id": "proc", "kind": "processor",
        "processor": {key: value for key, value in data.items() if value is not None},
    }  # fmt: skip


ACTIVE = {"roomlint_product": 1, "id": "active", "kind": "loudspeaker", "apparent_power": "60 VA"}
LOW = {"roomlint_product": 1, "id": "low", "kind": "subwoofer", "apparent_power": "300 VA"}
BARE_LOW = {"roomlint_product": 1, "id": "bare-low", "kind": "subwoofer"}
SHEETS = [box(), amplifier(), processor(), ACTIVE, LOW, BARE_LOW]
L = speaker("left", "M+030", -1.5, 2.6, product="box")
R = speaker("right", "M-030", 1.5, 2.6, product="box")
C = speaker("centre", "M+000", 0.0, 3.0, product="box")
LS = speaker("ls", "M+110", -2.0, -0.73, product="box")
RS = speaker("rs", "M-110", 2.0, -0.73, product="box")
SUB = {"id": "sub", "product": "low"}


def upper(*azimuths: int) -> list[Data]:
    """Return pairs of upper loudspeakers without places."""
    return [
        speaker(f"up-{side}-{a}", f"U{sign}{a:03}", product="box")
        for a in azimuths
        for side, sign in (("left", "+"), ("right", "-"))
    ]


def feed(output: int, *names: str, **more: Any) -> Data:
    """Return one output of an amplifier."""
    return {"output": output, "loudspeakers": list(names), **more}


def sends(*names: str | tuple[str, ...]) -> list[Data]:
    """Return the line outputs of a processor, numbered as they come."""
    return [
        {"output": number, "plays": [name] if isinstance(name, str) else list(name)}
        for number, name in enumerate(names, 1)
    ]


def wired(*feeds: Data, outputs: list[Data] | None = None, **more: Any) -> Data:
    """Return electronics with a processor and one amplifier of two channels."""
    data: Data = {"product": "proc", "outputs": outputs, **more}
    return {
        "processor": {key: value for key, value in data.items() if value is not None},
        "amplifiers": [{"id": "amp", "product": "amp-two", "feeds": list(feeds)}],
    }


EMPTY = room()
STEREO = changed(
    room(L, R),
    {
        "project.stage": "rough-in",
        "electronics": wired(feed(1, "left"), feed(2, "right"), outputs=sends("left", "right")),
        "cables": [
            {"id": "to-left", "carries": "loudspeaker", "from": "amp", "to": "left"},
            {"id": "to-right", "carries": "loudspeaker", "from": "amp", "to": "right"},
        ],
        "listening_modes": [{"id": "music", "channels": ["M+030", "M-030"]}],
    },
)
"""Two loudspeakers, each on its way, once."""
WITH_SUB = changed(
    STEREO,
    {
        "subwoofers": [SUB],
        "electronics.processor.outputs": sends("left", "right", "sub"),
        "cables.2": {"id": "to-sub", "carries": "line-level", "from": "processor", "to": "sub"},
    },
)
"""The same with a subwoofer that has an amplifier of its own."""
UNSAID = changed(room(L, R), {"project.stage": "rough-in", "electronics": None})
"""Two loudspeakers and nothing of what drives them."""
