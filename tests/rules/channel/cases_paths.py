"""Cases of the way to each loudspeaker."""

from __future__ import annotations

from typing import Any

from channel_rooms import EMPTY, SHEETS, STEREO, SUB, UNSAID, WITH_SUB, L, R, feed, processor, sends, wired

from roomlint.sample import room
from roomlint.testing import Case, Never, changed


def on(rule: str, kind: str, changes: dict[str, Any] | None = None, **more: Any) -> Case:
    """Return a case of the two loudspeakers with the subwoofer."""
    base = more.pop("base", WITH_SUB)
    return Case(f"channel.{rule}", kind, changed(base, changes or {}), more.pop("sheets", SHEETS), **more)


AMP = "electronics.amplifiers.0"
PROC = "electronics.processor"
LINES = f"{PROC}.outputs"
RECEIVER = {
    "roomlint_product": 1, "id": "receiver", "kind": "processor",
    "processor": {"decoded": 5}, "amplifier": {"channels": 2, "minimum_load": "6 ohm"},
}  # fmt: skip
INSIDE = changed(
    room(L, R),
    {
        "project.stage": "rough-in",
        "electronics": {
            "processor": {"product": "receiver", "feeds": [feed(1, "left"), feed(2, "right")]}, "amplifiers": [],
        },
        "cables": [
            {"id": "to-left", "carries": "loudspeaker", "from": "processor", "to": "left"},
            {"id": "to-right", "carries": "loudspeaker", "from": "processor", "to": "right"},
        ],
    },
)  # fmt: skip
TWO_SUBS = changed(
    WITH_SUB, {"subwoofers.1": {"id": "sub-2", "product": "low"}, LINES: sends("left", "right", "sub", "sub-2")}
)

RACKED = {"electronics.racks": [{"id": "rack", "contains": ["processor", "amp"]}]}
APART = {"electronics.racks": [{"id": "rack", "contains": ["processor"]}, {"id": "far", "contains": ["amp"]}]}

OWN_AMPLIFIER = {LINES: None, "electronics.amplifiers": [], "cables": []}


def amplifying(channels: int | None) -> dict[str, Any]:
    """Return the sheet of a processor without line outputs that has an amplifier of its own."""
    return {**processor(outputs=0), "amplifier": {} if channels is None else {"channels": channels}}


CASES: list[Case | Never] = [
    on("fed", "pass"),
    on("fed", "pass", subject="subwoofer/sub", says="amplifier of its own"),
    on("fed", "pass", base=INSIDE, sheets=[*SHEETS, RECEIVER]),
    on("fed", "pass", {"loudspeakers.0.product": "active", f"{AMP}.feeds": [feed(1, "right")]}, subject="loudspeaker/left"),
    on("fed", "fail", {f"{AMP}.feeds": [feed(1, "left")]}, subject="loudspeaker/right", level="error", says="no amplifier"),
    on("fed", "fail", {f"{AMP}.feeds": [feed(1, "left"), feed(2, "left")]}, subject="loudspeaker/left", says="more than one"),
    # Fed by two amplifiers, one of them inside the processor.
    on("fed", "fail", {"electronics.amplifiers": [{"id": "amp", "product": "amp-two", "feeds": [feed(1, "left")]}]},
       base=INSIDE, sheets=[*SHEETS, RECEIVER], subject="loudspeaker/left", says="more than one"),
    on("fed", "fail", {"loudspeakers.0.product": "active"}, subject="loudspeaker/left", level="warning", says="of its own"),
    on("fed", "fail", {"electronics.amplifiers": [], "cables": None}, subject="loudspeaker/left"),
    on("fed", "open", {f"{AMP}.feeds": None}, subject="loudspeaker/left", says="feeds"),
    on("fed", "open", {"subwoofers.0.product": None}, subject="subwoofer/sub", says="product"),
    on("fed", "open", {"subwoofers.0.product": "bare-low"}, subject="subwoofer/sub", says="apparent_power"),
    on("fed", "open", {f"{AMP}.feeds": [feed(1, "left")], "loudspeakers.1.product": None}, subject="loudspeaker/right"),
    on("fed", "open", base=UNSAID, says="electronics.amplifiers"),
    on("fed", "notApplicable", base=EMPTY),

    on("line-output", "pass"),
    on("line-output", "fail", {LINES: sends("left", "sub")}, subject="loudspeaker/right", level="warning", says="no line output"),
    on("line-output", "fail", {LINES: sends("left", "left", "right", "sub")}, subject="loudspeaker/left", says="more than one"),
    on("line-output", "open", {LINES: None}, says="outputs"),
    on("line-output", "open", base=UNSAID, says="electronics.processor"),
    on("line-output", "notApplicable", base=INSIDE, sheets=[*SHEETS, RECEIVER]),

    on("cable", "pass"),
    on("cable", "pass", base=INSIDE, sheets=[*SHEETS, RECEIVER]),
    # From the neighbour on the same output.
    on("cable", "pass", {f"{AMP}.feeds": [feed(1, "left", "right", wiring="parallel")], "cables.1.from": "left"}),
    on("cable", "fail", {"cables.1": None}, subject="loudspeaker/right", level="warning", says="no cable"),
    on("cable", "fail", {"cables.1.carries": "mains"}, subject="loudspeaker/right"),
    on("cable", "fail", {"cables.1.from": "processor"}, subject="loudspeaker/right", says="comes from processor"),
    on("cable", "fail", {"cables": []}, subject="loudspeaker/right"),
    on("cable", "open", {"cables.1": None, "project.stage": "design"}, subject="loudspeaker/right", says="cables"),
    on("cable", "open", {"cables.1": None, "project.stage": None}, subject="loudspeaker/right", says="stage"),
    # A run that does not say where it goes, or what it carries, may be the one.
    on("cable", "open", {"cables.1.to": None}, subject="loudspeaker/right", says="to"),
    on("cable", "open", {"cables.1.carries": None}, subject="loudspeaker/right", says="carries"),
    on("cable", "fail", {"cables.1.carries": "mains", "cables.1.to": None}, subject="loudspeaker/right"),
    on("cable", "open", {"cables.1.from": None}, subject="loudspeaker/right", says="from"),
    on("cable", "open", {"cables": None}, says="cables"),
    # An unfed one is told as unfed.
    on("cable", "open", {f"{AMP}.feeds": [feed(1, "left")]}, subject="loudspeaker/right", says="channel.fed"),
    on("cable", "notApplicable", base=EMPTY),

    on("link", "notApplicable", RACKED),
    on("link", "fail", APART, level="warning", says="stands apart"),
    on("link", "pass", {**APART, "cables.3": {"id": "tie", "carries": "line-level", "from": "processor", "to": "amp"}}),
    on("link", "fail", {**APART, "cables.3": {"id": "tie", "carries": "trigger", "from": "processor", "to": "amp"}}),
    on("link", "open", {**APART, "cables.3": {"id": "tie", "carries": "line-level", "to": "amp"}}, says="from"),
    on("link", "fail", {**APART, "cables.3": {"id": "tie", "carries": "line-level", "from": "sub"}}),
    on("link", "open", {**APART, "project.stage": "design"}, says="cables"),
    on("link", "open", {**APART, "project.stage": None}, says="stage"),
    on("link", "open", {"electronics.racks": [{"id": "rack"}, APART["electronics.racks"][1]]}, says="contains"),
    on("link", "open", says="rack"),
    on("link", "open", base=UNSAID),
    on("link", "notApplicable", base=INSIDE, sheets=[*SHEETS, RECEIVER]),
    on("one-signal", "pass"),
    # Two rows of surrounds that play one channel.
    on("one-signal", "pass", {"loudspeakers.1.label": "M+030", LINES: sends(("left", "right"), "sub"),
                              f"{AMP}.feeds": [feed(1, "left", "right", wiring="series")]}),
    on("one-signal", "fail", {f"{AMP}.feeds": [feed(1, "left", "right", wiring="parallel")]}, level="error",
       says="M+030, M-030"),
    on("one-signal", "fail", {f"{AMP}.feeds": [feed(1, "left", "sub", wiring="parallel")]}, says="low frequencies"),
    on("one-signal", "fail", {"loudspeakers.1.label": "M+030",
                              f"{AMP}.feeds": [feed(1, "left", "right", wiring="series")]}, says="line outputs 1, 2"),
    # Left and right exchanged at the inputs.
    on("one-signal", "fail", {f"{AMP}.feeds.0.line_output": 2}, subject="output/1+amplifier/amp", says="patched to line output 2 and drives what plays 1"),
    on("one-signal", "pass", {f"{AMP}.feeds.0.line_output": 1}),
    on("one-signal", "open", {"loudspeakers.1.label": None, f"{AMP}.feeds": [feed(1, "left", "right")]}, says="label"),
    on("one-signal", "open", {f"{AMP}.feeds": None}),
    on("one-signal", "open", base=UNSAID),
    on("one-signal", "notApplicable", {"electronics.amplifiers": [], "cables": None}),

    on("line-signal", "pass"),
    on("line-signal", "fail", {LINES: sends(("left", "right"), "sub")}, level="error", says="plays M+030, M-030"),
    on("line-signal", "fail", {LINES: [*sends("left", "right"), {"output": 1, "plays": ["sub"]}]}, says="more than once"),
    on("line-signal", "fail", sheets=[*SHEETS[:2], processor(outputs=1), *SHEETS[3:]], says="uses 2 line outputs and has 1"),
    on("line-signal", "fail", {f"{LINES}.0.output": 40}, says="line output 40 is beyond the 17"),
    on("line-signal", "open", sheets=[*SHEETS[:2], processor(outputs=None), *SHEETS[3:]], says="outputs"),
    on("line-signal", "open", {LINES: None}, says="outputs"),
    # What its own amplifier drives, or may drive, wants none.
    on("line-signal", "open", OWN_AMPLIFIER, sheets=[*SHEETS[:2], amplifying(2), *SHEETS[3:]], says="outputs"),
    on("line-signal", "fail", OWN_AMPLIFIER, sheets=[*SHEETS[:2], amplifying(1), *SHEETS[3:]], says="1 wanted, 0 there"),
    on("line-signal", "fail", {**OWN_AMPLIFIER, "electronics.processor.feeds": [feed(1, "left")]},
       sheets=[*SHEETS[:2], amplifying(2), *SHEETS[3:]], says="1 wanted, 0 there"),
    on("line-signal", "open", OWN_AMPLIFIER, sheets=[*SHEETS[:2], amplifying(None), *SHEETS[3:]], says="channels"),
    # Before they are listed, too few are too few all the same.
    on("line-signal", "fail", {LINES: None}, sheets=[*SHEETS[:2], processor(outputs=1), *SHEETS[3:]], level="error",
       says="2 wanted, 1 there"),
    on("line-signal", "open", {LINES: None, "loudspeakers.1.label": None}, sheets=[*SHEETS[:2], processor(outputs=1), *SHEETS[3:]],
       says="outputs"),
    on("line-signal", "open", {LINES: None}, sheets=[*SHEETS[:2], processor(outputs=None), *SHEETS[3:]], says="outputs"),
    on("line-signal", "open", base=UNSAID),
    Never("channel.line-signal", "notApplicable", "a file that does not speak of a processor may have one"),

    on("amplifier-outputs", "pass", says="2 of its 2"),
    on("amplifier-outputs", "fail", {f"{AMP}.feeds": [feed(3, "left")]}, level="error", says="3 of its channels are used and it has 2"),
    on("amplifier-outputs", "fail", {f"{AMP}.feeds": [feed(1, "left"), feed(1, "right")]}, says="output 1 is used more than once"),
    # A bridged output takes two channels, and another needs one.
    on("amplifier-outputs", "fail", {f"{AMP}.feeds.0.bridged": True}, says="3 of its channels"),
    on("amplifier-outputs", "pass", base=INSIDE, sheets=[*SHEETS, RECEIVER]),
    on("amplifier-outputs", "fail", {f"{PROC}.feeds.2": feed(3, "left")}, base=INSIDE, sheets=[*SHEETS, RECEIVER]),
    on("amplifier-outputs", "open", {f"{AMP}.product": None}),
    on("amplifier-outputs", "open", base=UNSAID),
    on("amplifier-outputs", "notApplicable", {"electronics.amplifiers": [], "cables": None}),

    on("subwoofer-outputs", "pass"),
    on("subwoofer-outputs", "pass", base=TWO_SUBS),
    on("subwoofer-outputs", "fail", {LINES: sends("left", "right", ("sub", "sub-2"))}, base=TWO_SUBS, level="warning",
       says="line output 3"),
    on("subwoofer-outputs", "fail", {LINES: sends(("left", "sub"), "right", "sub-2")}, base=TWO_SUBS, subject="subwoofer/sub",
       says="line output 1 plays left, sub"),
    # Four outputs for subwoofers, and only two of them are set apart.
    on("subwoofer-outputs", "fail", {"subwoofers.2": {**SUB, "id": "sub-3"}, LINES: sends("sub", "sub-2", "sub-3", "left", "right")},
       base=TWO_SUBS, says="sets 2 subwoofer outputs apart, and 3"),
    on("subwoofer-outputs", "fail", {LINES: None}, base=TWO_SUBS, sheets=[*SHEETS[:2], processor(subwoofer_outputs=1), *SHEETS[3:]],
       level="warning", says="want 2 outputs of their own, and the processor sets 1 apart"),
    on("subwoofer-outputs", "open", {LINES: None}, base=TWO_SUBS, says="outputs"),
    on("subwoofer-outputs", "open", sheets=[*SHEETS[:2], processor(subwoofer_outputs=None), *SHEETS[3:]]),
    on("subwoofer-outputs", "open", {LINES: sends("left", "right")}, says="channel.line-output"),
    on("subwoofer-outputs", "notApplicable", base=STEREO),
    on("subwoofer-outputs", "notApplicable", {
        "electronics": wired(feed(1, "left"), feed(2, "right"), feeds=[feed(1, "sub")]), "loudspeakers": [L, R]}),
]  # fmt: skip
