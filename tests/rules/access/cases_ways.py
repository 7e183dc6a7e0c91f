"""Cases of ways out and of what warns people."""

from __future__ import annotations

from typing import Any

from access_rooms import DOOR, NONE, OPEN, WINDOW

from roomlint.edges import Edge
from roomlint.testing import Case, Never, changed

WIDTH, HEIGHT, EGRESS = (f"room.openings.0.{key}" for key in ("width", "height", "egress"))
LOW = "subwoofers.0.position"
CUPBOARD = {
    "id": "cupboard",
    "kind": "cabinet",
    "from_left": "2.5 m",
    "from_front": "5.5 m",
    "width": "0.6 m",
    "depth": "0.4 m",
}


def on(rule: str, kind: str, changes: dict[str, Any] | None = None, **more: Any) -> Case:
    """Return a case of the room with a door."""
    return Case(f"access.{rule}", kind, changed(more.pop("base", DOOR), changes or {}), **more)


CASES: list[Case | Never] = [
    on("escape", "pass"),
    on("escape", "fail", {EGRESS: False}, level="warning", says="no opening that people"),
    on("escape", "fail", base=NONE),
    on("escape", "open", {EGRESS: None}, says="egress"),
    on("escape", "open", base=OPEN, says="openings"),
    Never("access.escape", "notApplicable", "every room that people sit in has a way out"),

    on("escape-width", "pass", figure=0.90, source="as it is measured"),
    on("escape-width", "fail", {WIDTH: "0.80 m"}, level="note", figure=0.80, source="as it is measured"),
    # Where people get hurt, as wide as the edge but not for sure is too narrow.
    on("escape-width", "fail", {WIDTH: "0.82 m ± 1 cm"}, level="note"),
    on("escape-width", "open", {WIDTH: None}, says="width"),
    on("escape-width", "open", {EGRESS: None}, says="egress"),
    on("escape-width", "open", base=OPEN, says="openings"),
    on("escape-width", "notApplicable", {EGRESS: False}),
    on("escape-width", "notApplicable", base=WINDOW, says="window"),

    on("escape-height", "pass", figure=2.0, source="as it is measured"),
    on("escape-height", "fail", {HEIGHT: "1.9 m"}, level="note", figure=1.9, source="as it is measured"),
    on("escape-height", "open", {HEIGHT: None}, says="height"),
    on("escape-height", "open", {EGRESS: None}, says="egress"),
    on("escape-height", "notApplicable", {EGRESS: False}),

    on("escape-window", "pass", base=WINDOW, figure=0.9, source="as it is measured"),
    on("escape-window", "fail", {"room.openings.0.sill": "1.2 m"}, base=WINDOW, level="warning", figure=1.2, source="as it is measured"),
    on("escape-window", "open", {"room.openings.0.sill": None}, base=WINDOW, says="sill"),
    on("escape-window", "open", {EGRESS: None}, base=WINDOW, says="egress"),
    on("escape-window", "notApplicable"),
    on("escape-window", "notApplicable", {EGRESS: False}, base=WINDOW),

    # The way is 0.90 m wide and 0.915 m deep; a cabinet of 0.40 m is 0.90 m from the door's middle: 0.90 - 0.45 - 0.20.
    on("before-door", "pass", subject="subwoofer/sub+opening/door", figure=0.25, source="0.90 m less half of 0.90 m and of 0.40 m", within=1e-3),
    on("before-door", "fail", {f"{LOW}.from_left": "2.8 m"}, subject="subwoofer/sub+opening/door", level="warning", figure=-0.35, source="0.45 + 0.20 - 0.30 m", within=1e-3, says="0.35 m into the way"),
    # Where the figure ends it is told so.
    on("before-door", "pass", {f"{LOW}.from_left": "0.5 m", f"{LOW}.from_front": "1 m"}, subject="subwoofer/sub+opening/door", figure=0.5, source="far away", says="0.50 m or more"),
    # What hangs above the door is out of the way.
    on("before-door", "pass", {f"{LOW}.from_left": "2.8 m", f"{LOW}.height": "2.3 m"}, subject="subwoofer/sub+opening/door"),
    # What is built in before the door is in the way as much.
    on("before-door", "fail", {"room.obstacles": [CUPBOARD]}, subject="obstacle/cupboard+opening/door", says="into the way"),
    on("before-door", "open", {LOW: None}, subject="subwoofer/sub+opening/door", says="position"),
    on("before-door", "open", {EGRESS: None}, subject="subwoofer/sub+opening/door", says="egress"),
    on("before-door", "open", {WIDTH: None}, subject="subwoofer/sub+opening/door", says="width"),
    on("before-door", "notApplicable", {EGRESS: False}),
    on("before-door", "notApplicable", base=WINDOW),

    on("alarm", "pass"),
    on("alarm", "fail", {"room.smoke_alarm": "elsewhere"}, level="warning", says="nobody hears"),
    on("alarm", "fail", {"room.smoke_alarm": "none"}, level="warning", says="has no smoke alarm"),
    on("alarm", "open", {"room.smoke_alarm": None}, says="smoke_alarm"),
    Never("access.alarm", "notApplicable", "whoever sits in a room is to be warned"),
]  # fmt: skip
EDGES = [
    Edge("access.escape-width", DOOR, WIDTH, 0.6, 1.0, 1),
    Edge("access.escape-height", DOOR, HEIGHT, 1.8, 2.1, 1),
    Edge("access.escape-window", WINDOW, "room.openings.0.sill", 0.8, 1.4, 1),
    Edge("access.before-door", DOOR, f"{LOW}.from_left", 2.6, 3.9, 1, subject="subwoofer/sub+opening/door"),
]
