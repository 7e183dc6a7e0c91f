"""Cases of lines of constant voltage, and of power against what loudspeakers are rated for."""

from __future__ import annotations

from typing import Any

from channel_rooms import EMPTY, SHEETS, STEREO, UNSAID, amplifier, box, feed

from roomlint.edges import Edge
from roomlint.testing import Case, changed

TAPPED = box(None, name="tapped", taps=["15 W", "30 W", "60 W"])
LINE = [*SHEETS[1:], box(), TAPPED, amplifier(2, name="line", line_voltage="70.7 V")]
DIRECT = [*SHEETS[1:], box(), TAPPED, amplifier(2, name="line", line_voltage="none")]
UNTOLD = [*SHEETS[1:], box(), TAPPED, amplifier(2, name="line")]
ON_LINE = changed(
    STEREO,
    {
        "loudspeakers.0.product": "tapped", "loudspeakers.1.product": "tapped", "loudspeakers.0.tap": "30 W",
        "loudspeakers.1.tap": "30 W", "electronics.amplifiers.0.product": "line",
        "electronics.amplifiers.0.feeds": [feed(1, "left", "right")],
    },
)  # fmt: skip
"""Two taps of 30 W on a line of an amplifier of 100 W."""
FIRST = "loudspeakers.0.tap"
RATED = [box("8 ohm", power_rating="100 W"), *SHEETS[1:]]


def taps(kind: str, changes: dict[str, Any] | None = None, **more: Any) -> Case:
    """Return a case of the line."""
    return Case(
        "channel.taps", kind, changed(more.pop("base", ON_LINE), changes or {}), more.pop("products", LINE), **more
    )


def match(kind: str, changes: dict[str, Any] | None = None, **more: Any) -> Case:
    """Return a case of the stereo room."""
    return Case(
        "channel.power-match",
        kind,
        changed(more.pop("base", STEREO), changes or {}),
        more.pop("products", RATED),
        **more,
    )


def rated(watts: str | None, ohms: str = "8 ohm") -> list[dict[str, Any]]:
    """Return the sheets with a cabinet rated for other power."""
    return [box(ohms, **({"power_rating": watts} if watts else {})), *SHEETS[1:]]


def into(watts: str, ohms: str, given: str) -> list[dict[str, Any]]:
    """Return the sheets with an amplifier whose power into another load is told."""
    two = amplifier(2)
    two["amplifier"] |= {"powers": [{"load": ohms, "power": given}]}
    return [box(ohms, power_rating=watts), two, *(one for one in SHEETS[1:] if one["id"] != two["id"])]


def chained(ohms: str) -> list[dict[str, Any]]:
    """Return the sheets with cabinets of so many ohms, for two in a chain."""
    return [box(ohms, power_rating="100 W"), *SHEETS[1:]]


CHAIN = {"electronics.amplifiers.0.feeds": [feed(1, "left", "right", wiring="series")]}


ON_ONE = {"electronics.amplifiers.0.feeds": [feed(1, "left", "right")]}


CASES = [
    taps("pass", figure=60.0, source="60 W of 100 W"),
    taps("fail", {FIRST: "60 W"}, level="warning", figure=90.0, source="90 W of 100 W"),
    taps("fail", {FIRST: "60 W", "loudspeakers.1.tap": "60 W"}, level="error", figure=120.0, source="120 W of 100 W"),
    taps("fail", products=DIRECT, says="no output for a line"),
    taps("fail", {"loudspeakers.1.product": "box", "loudspeakers.1.tap": None}, says="short circuit"),
    taps("fail", {FIRST: "45 W"}, says="not on the sheet"),
    taps("open", {FIRST: None}, says="tap"),
    taps("open", products=UNTOLD, says="line_voltage"),
    taps("open", base=UNSAID, products=SHEETS, says="amplifiers"),
    taps("notApplicable", base=STEREO, products=SHEETS, says="no transformers"),
    taps("notApplicable", base=EMPTY, products=()),
    # What the output carries then is judged by the taps.
    Case("channel.load", "notApplicable", ON_LINE, LINE, says="line of transformers"),

    match("pass", figure=1.0, source="100 W into 8 ohm for 100 W"),
    match("fail", products=rated("40 W"), level="warning", figure=2.5, source="100 W for 40 W"),
    match("fail", products=rated("300 W"), level="note", figure=0.3333, source="100 W for 300 W"),
    # Into half the impedance an amplifier gives one to two times its power, by a sheet that says no more.
    match("pass", products=rated("200 W", "4 ohm"), figure=0.7071, source="100 W x sqrt(8/4) for 200 W"),
    match("review", products=rated("100 W", "4 ohm")),
    # Its sheet rates it into four ohms too.
    match("pass", products=into("100 W", "4 ohm", "130 W"), figure=1.3, source="130 W for 100 W"),
    match("fail", products=into("100 W", "4 ohm", "210 W"), level="warning", figure=2.1, source="210 W for 100 W"),
    # Two in a chain: 16 ohm, each with half of the voltage of 100 W into 8 ohm, so 25 W for 100 W.
    match("fail", CHAIN, products=chained("8 ohm"), subject="loudspeaker/left", level="note", figure=0.25,
          source="sqrt(800)/2 = 14.14 V across 8 ohm: 25 W for 100 W"),
    # A load that the amplifier does not take is told first.
    match("open", ON_ONE, products=rated("100 W", "4 ohm"), subject="loudspeaker/left"),
    match("open", products=rated(None), says="power_rating"),
    match("open", base=UNSAID, products=RATED, says="amplifiers"),
    match("open", {"loudspeakers": None}, base=EMPTY, products=(), says="loudspeakers"),
    match("notApplicable", {f"loudspeakers.{n}.product": "active" for n in (0, 1)}, says="own"),
    match("notApplicable", base=ON_LINE, products=LINE, says="tap"),
    match("notApplicable", base=EMPTY, products=()),
]  # fmt: skip
EDGES = [
    Edge("channel.taps", ON_LINE, FIRST, 10.0, 150.0, 2, unit="W", products=[*SHEETS[1:], box(), box(None, name="tapped"), LINE[-1]]),
    Edge("channel.power-match", STEREO, "amplifier.power", 10.0, 400.0, 3, unit="W", products=RATED, sheet="amp-two"),
]  # fmt: skip
