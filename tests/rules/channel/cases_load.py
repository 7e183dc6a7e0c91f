"""Cases of what amplifiers are asked for."""

from __future__ import annotations

from typing import Any

from channel_rooms import (
    EMPTY,
    LS,
    RS,
    SHEETS,
    STEREO,
    UNSAID,
    C,
    L,
    R,
    amplifier,
    box,
    feed,
    processor,
    upper,
)

from roomlint.edges import Edge
from roomlint.sample import room, speaker
from roomlint.testing import Case, Never, changed

AMP = "electronics.amplifiers.0"
HAND = "Kirchhoff's laws by hand"
FOUR = box("4 ohm", "3.2 ohm")


def on(rule: str, kind: str, changes: dict[str, Any] | None = None, *sheets: dict[str, Any], **more: Any) -> Case:
    """Return a case of the two loudspeakers, with sheets that stand in for the usual ones."""
    base = more.pop("base", STEREO)
    ids = {sheet["id"] for sheet in sheets}
    usual = [sheet for sheet in SHEETS if sheet["id"] not in ids]
    return Case(f"channel.{rule}", kind, changed(base, changes or {}), [*sheets, *usual], **more)


BOTH = {f"{AMP}.feeds": [feed(1, "left", "right", wiring="parallel")]}
ROW = {f"{AMP}.feeds": [feed(1, "left", "right", wiring="series")]}
BRIDGED = {f"{AMP}.feeds": [feed(1, "left", bridged=True)]}
BY_CHANNELS = amplifier(
    minimum_load="6 ohm", least_loads=[{"driven": 1, "load": "4 ohm"}, {"driven": 2, "load": "6 ohm"}]
)
STRONG = amplifier(2, "amp-strong", power="150 W")
FIVE = changed(
    room(L, R, C, LS, RS),
    {
        "electronics": {
            "amplifiers": [
                {
                    "id": "fronts",
                    "product": "amp-three",
                    "feeds": [feed(1, "left"), feed(2, "right"), feed(3, "centre")],
                },
                {"id": "rears", "product": "amp-strong", "feeds": [feed(1, "ls"), feed(2, "rs")]},
            ]
        }
    },
)
THREE = amplifier(3, "amp-three")
# Fifteen channels that are set, eleven that are amplified: five at the ears, six above, four to go outside.
ELEVEN = {
    "roomlint_product": 1, "id": "proc", "kind": "processor", "processor": processor()["processor"],
    "amplifier": {"channels": 11, "minimum_load": "4 ohm"},
}  # fmt: skip
MORE = [
    speaker(name, label, product="box")
    for name, label in (("sl", "M+090"), ("sr", "M-090"), ("bl", "M+135"), ("br", "M-135"))
]
FIFTEEN = changed(
    room(L, R, C, LS, RS, *MORE, *upper(30, 90, 135)),
    {"electronics": {"processor": {"product": "proc"}, "amplifiers": []}},
)

CASES: list[Case | Never] = [
    on("load", "pass", figure=8.0, source=HAND),
    # Two of 4 ohm side by side are 2 ohm, on an amplifier for 4.
    on("load", "fail", BOTH, FOUR, figure=2.0, source=HAND, level="error", says="left, right, 2.00 ohm together"),
    on("load", "pass", BOTH, figure=4.0, source=HAND),
    on("load", "pass", ROW, FOUR, figure=8.0, source=HAND),
    on("load", "fail", BOTH, box("6 ohm"), figure=3.0, source=HAND),
    # Printed as 8 ohm, dips to 4: counts as 5.
    on("load", "pass", {}, box("8 ohm", "4 ohm"), figure=5.0, source="4 / 0.8, IEC 60268-5"),
    on("load", "fail", {}, box("8 ohm", "3 ohm"), figure=3.75, source="3 / 0.8, IEC 60268-5"),
    on("load", "pass", {}, box(None, "4 ohm"), figure=5.0),
    # 4 ohm with one channel driven, 6 with both.
    on("load", "fail", {}, FOUR, BY_CHANNELS, figure=4.0, says="at least 6 ohm"),
    on("load", "pass", {f"{AMP}.feeds": [feed(1, "left")]}, FOUR, BY_CHANNELS, figure=4.0),
    on("load", "fail", BRIDGED, FOUR, amplifier(bridged_load="8 ohm"), says="at least 8 ohm"),
    on("load", "pass", BRIDGED, amplifier(bridged_load="8 ohm")),
    on("load", "open", BRIDGED, says="bridged_load"),
    on("load", "open", BRIDGED, amplifier(bridged_load="none"), says="channel.bridged"),
    on("load", "open", {f"{AMP}.feeds": [feed(1, "left", "right")]}, says="wiring"),
    on("load", "open", {}, box(None), says="impedance"),
    on("load", "open", {}, amplifier(minimum_load=None), says="minimum_load"),
    on("load", "review", {}, box("4 ohm ± 0.4 ohm"), box("4 ohm ± 0.4 ohm")),
    on("load", "open", base=UNSAID),
    on("load", "notApplicable", {f"{AMP}.feeds": [feed(1)]}),
    on("load", "notApplicable", {"electronics.amplifiers": [], "cables": None}),

    on("bridged", "pass", BRIDGED, amplifier(bridged_load="8 ohm")),
    on("bridged", "fail", BRIDGED, amplifier(bridged_load="none"), level="error"),
    on("bridged", "open", BRIDGED, says="bridged_load"),
    on("bridged", "notApplicable"),

    on("amplified", "pass", says="2 of 2"),
    on("amplified", "fail", {}, ELEVEN, base=FIFTEEN, says="wants 15 amplifier channels and has 11; an outside amplifier for the other 4"),
    on("amplified", "fail", {}, ELEVEN, base=FIFTEEN, level="error"),
    on("amplified", "pass", {"electronics.amplifiers": [
        {"id": "outside", "product": "amp-four", "feeds": [feed(1, "left"), feed(2, "right"), feed(3, "centre"), feed(4, "ls")]},
    ]}, ELEVEN, amplifier(4, "amp-four"), base=FIFTEEN, says="15 of 15"),
    on("amplified", "fail", {"loudspeakers.2": C}, says="wants 3 amplifier channels and has 2"),
    on("amplified", "pass", {"loudspeakers.2": {**C, "product": "active"}}),
    # Two on one output want one channel.
    on("amplified", "pass", BOTH, says="1 of 2"),
    on("amplified", "open", {"subwoofers": [{"id": "sub"}]}, says="product"),
    on("amplified", "open", base=UNSAID),
    on("amplified", "open", {}, amplifier(None), says="channels"),
    on("amplified", "notApplicable", base=EMPTY),

    on("power-first", "fail", {}, THREE, STRONG, base=FIVE, figure=0.6667, source="100 / 150", level="note"),
    on("power-first", "pass", {}, amplifier(3, "amp-three", power="200 W"), STRONG, base=FIVE, figure=1.3333, source="200 / 150"),
    # 150 W into 4 ohm are 75 W into 8.
    on("power-first", "pass", {}, THREE, amplifier(2, "amp-strong", power="150 W", power_into="4 ohm"), base=FIVE,
       figure=1.3333, source="100 / (150 x 4 / 8)"),
    on("power-first", "open", {}, amplifier(3, "amp-three", power=None), STRONG, base=FIVE, says="power"),
    on("power-first", "open", {"loudspeakers.3.label": None}, THREE, STRONG, base=FIVE, says="label"),
    on("power-first", "review", {}, amplifier(3, "amp-three", power="150 W ± 10 W"), STRONG, base=FIVE),
    on("power-first", "notApplicable"),
    on("power-first", "notApplicable", {"loudspeakers.0.product": "active"}, THREE, STRONG, base=FIVE, subject="loudspeaker/left"),
]  # fmt: skip
EDGES: list[Edge] = [
    Edge("channel.load", STEREO, "loudspeaker.impedance", 2.0, 16.0, 1, unit="ohm", products=SHEETS, sheet="box",
         subject="output/1+amplifier/amp"),
    Edge("channel.power-first", FIVE, "amplifier.power", 50.0, 300.0, 1, unit="W", products=[THREE, STRONG, box()],
         sheet="amp-three", subject="loudspeaker/left"),
]  # fmt: skip
