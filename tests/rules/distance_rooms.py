"""Rooms of the distance cases: loudspeakers in line ahead, a seat to the side, and what is entered for them."""

from __future__ import annotations

from typing import Any

from roomlint.sample import at, room, speaker
from roomlint.testing import changed

HAND = "by hand"


def settings(*entered: tuple[str, str, str]) -> dict[str, Any]:
    return {"settings": [{"id": name, key: value} for name, key, value in entered]}


def sheet(**data: str) -> dict[str, Any]:
    return {"roomlint_product": 1, "id": "processor", "kind": "processor", "processor": data}


def display(latency: str) -> dict[str, Any]:
    return {"roomlint_product": 1, "id": "screen", "kind": "display", "picture": {"video_latency": latency}}


L, R = speaker("left", "M+030", -1.5, 2.6), speaker("right", "M-030", 1.5, 2.6)
C = speaker("centre", "M+000", 0.0, 3.0)
BARE = room()
PROCESSOR: dict[str, Any] = {"processor": {"id": "brain", "product": "processor"}}
# In line ahead: 3.10, 2.85 and 2.10 m away need 0, 0.728 and 2.914 ms (0.25 and 1.00 m over 343.2 m/s).
LINE = room(
    speaker("far", "M+000", 0.0, 3.10),
    speaker("middle", "M+030", 0.0, 2.85),
    speaker("near", "M-030", 0.0, 2.10),
)
WIRED = {**LINE, "electronics": PROCESSOR}
WARM = changed(WIRED, {"survey.temperature": "22 degC"})
AHEAD, BEHIND = speaker("ahead", "M+000", 0.0, 3.0), speaker("behind", "M+180", 0.0, -1.0)
# 3-4-5 triangles: 2.4 m and 3.4 m from the second seat, which stands where the reference ear would be.
SIDE_SEAT = changed(
    room(
        speaker("left", "M+030", -1.44, 1.92),
        speaker("right", "M-030", 2.04, 2.72),
        seats=((0.0, 0.0),),
        calibration=settings(("left", "delay", "0 ms"), ("right", "delay", "0 ms")),
    ),
    {"seats.0.ear": at(0.0, 0.6)},
)
SHOWN = room(electronics=PROCESSOR, picture={"kind": "display", "product": "screen"})
SYNC = [sheet(audio_latency="20 ms")]
