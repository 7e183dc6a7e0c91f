"""Cases of full scale at the reference seat.

Both loudspeakers stand 3.0017 m from the ear, which takes 9.547 dB. The room holds 78 m3, so that 98 dB are full scale
where no reference level is entered: 78 dB and 20 in hand.
"""

from __future__ import annotations

from typing import Any

from channel_rooms import EMPTY, LOW, STEREO, UNSAID, WITH_SUB, amplifier, box, feed, processor

from roomlint.edges import Edge
from roomlint.sample import at
from roomlint.testing import Case, Never, changed

AMP = "electronics.amplifiers.0"
HAND = "sums of decibels by hand"


def loud(sensitivity: str = "88 dB", **more: Any) -> dict[str, Any]:
    """Return the sheet of a cabinet that says how loud it is."""
    data = {"sensitivity": sensitivity, "drive": "2.83 V", "maximum_level": "112 dB", **more}
    return box(**data)


SHEETS = [loud(), amplifier(), processor(), LOW]
BARE = changed(STEREO, {"cables": "none"})
LEFT = "loudspeaker/left"
ROW = {f"{AMP}.feeds": [feed(1, "left", "right", wiring="series")]}
BOTH = {f"{AMP}.feeds": [feed(1, "left", "right", wiring="parallel")]}
CRITICAL = {"project.reference": "critical"}
CINEMA = {"calibration": {"reference_level": "85 dB"}}
HEARD = {"roomlint_product": 1, "id": "low", "kind": "subwoofer", "apparent_power": "300 VA",
         "loudspeaker": {"maximum_level": "118 dB"}}  # fmt: skip
DRIVEN = {"roomlint_product": 1, "id": "low", "kind": "subwoofer",
          "loudspeaker": {"maximum_level": "118 dB", "sensitivity": "88 dB", "drive": "2.83 V", "impedance": "8 ohm"}}  # fmt: skip
# On the floor, three metres ahead of an ear 1.2 m up: nothing of the way by the floor differs.
SUBS = changed(
    WITH_SUB, {"cables": "none", "subwoofers": [{"id": "sub", "product": "low", "position": at(0.0, 3.0, -1.2)}]}
)


def on(rule: str, kind: str, changes: dict[str, Any] | None = None, *sheets: dict[str, Any], **more: Any) -> Case:
    """Return a case of the two loudspeakers, with sheets that stand in for the usual ones."""
    base = more.pop("base", BARE)
    ids = {sheet["id"] for sheet in sheets}
    usual = [sheet for sheet in SHEETS if sheet["id"] not in ids]
    return Case(f"level.{rule}", kind, changed(base, changes or {}), [*sheets, *usual], **more)


CASES: list[Case | Never] = [
    # 100 W into 8 ohm are 28.28 V, 20.00 dB over the drive: 88 + 20.00 - 9.55.
    on("amplifier-reach", "pass", figure=98.448, within=0.005, source=HAND),
    on("amplifier-reach", "fail", {}, loud("87 dB"), level="note", figure=97.448, within=0.005, subject=LEFT,
       says="at least 98 dB wanted for full scale (98 dB)"),
    on("amplifier-reach", "fail", {}, loud("84 dB"), level="warning", says="at least 95 dB wanted", subject=LEFT),
    # For one watt, into 4 ohm 3.01 dB more for 2.83 V.
    on("amplifier-reach", "pass", {}, loud("85 dB", rated="4 ohm", drive="1 W"),
       amplifier(powers=[{"load": "4 ohm", "power": "200 W"}]), figure=98.458, within=0.005, source="85 + 3.01 + 20 - 9.55"),
    # Rated into 8 ohm alone, somewhere between no more power into 4 ohm and twice of it: 1.5 dB less, give or take.
    on("amplifier-reach", "review", {}, loud("86.5 dB", rated="4 ohm"), figure=95.443, within=0.005),
    # Two in a row share the voltage, two side by side do not.
    on("amplifier-reach", "fail", ROW, level="warning", figure=92.428, within=0.005, source="98.448 - 6.02", subject=LEFT),
    on("amplifier-reach", "pass", BOTH, amplifier(powers=[{"load": "4 ohm", "power": "200 W"}]), figure=98.448, within=0.005),
    # Bridged, each channel sees half the load and gives its voltage: 20 lg 2 more.
    on("amplifier-reach", "pass", {f"{AMP}.feeds": [feed(1, "left", bridged=True)]}, loud("82 dB"),
       amplifier(bridged_load="8 ohm", powers=[{"load": "4 ohm", "power": "200 W"}]), figure=98.469, within=0.005,
       source="98.448 - 6 + 6.02", subject=LEFT),
    # 20 m of 1.5 mm2 before a least impedance of 6.4 ohm: 20 lg((6.4 + 0.46) / 6.4).
    on("amplifier-reach", "fail",
       {"cables": [{"id": "run", "carries": "loudspeaker", "from": "amp", "to": "left", "length": "20 m", "conductor": "1.5 mm2"}]},
       level="note", figure=97.84, within=0.05, source="98.448 less 0.61 dB of the wire", subject=LEFT),
    on("amplifier-reach", "open",
       {"cables": [{"id": "run", "carries": "loudspeaker", "from": "amp", "to": "left", "conductor": "1.5 mm2"}]},
       says="length", subject=LEFT),
    on("amplifier-reach", "pass", {"loudspeakers.0.boundary_gain": "3 dB"}, loud("86 dB"), figure=99.448, within=0.005,
       subject=LEFT),
    # The reference level that is entered; for critical listening there is no want, and 3 dB are in hand.
    on("amplifier-reach", "fail", CINEMA, level="warning", says="full scale (105 dB)", subject=LEFT),
    on("amplifier-reach", "fail", CRITICAL, loud("87 dB"), level="warning", says="at least 98 dB", subject=LEFT),
    on("amplifier-reach", "fail", CRITICAL, loud("90 dB"), level="note", says="at least 101 dB", subject=LEFT),
    on("amplifier-reach", "open", {}, loud(drive=None), says="drive"),
    on("amplifier-reach", "open", {}, box(drive="2.83 V"), says="sensitivity"),
    on("amplifier-reach", "open", {}, amplifier(power=None), says="power"),
    on("amplifier-reach", "open", {"seats.0.reference": None, "seats.1": {"id": "other", "ear": at(1.0, 0.0)}}, says="reference"),
    on("amplifier-reach", "open", base=UNSAID),
    on("amplifier-reach", "notApplicable", {"loudspeakers.0.product": "active"},
       {"roomlint_product": 1, "id": "active", "kind": "loudspeaker", "apparent_power": "60 VA"}, subject=LEFT),

    on("loudspeaker-reach", "pass", figure=102.453, within=0.005, source="112 - 9.547"),
    on("loudspeaker-reach", "fail", {}, loud(maximum_level="106 dB"), level="note", subject=LEFT),
    on("loudspeaker-reach", "fail", {}, loud(maximum_level="104 dB"), level="warning", says="94.5 dB", subject=LEFT),
    # 50 W rated: peaks of 200 W are 23.01 dB over one watt, which into 8 ohm is the drive.
    on("loudspeaker-reach", "pass", {}, loud(power_rating="50 W"), figure=101.463, within=0.005, source="88 + 23.01 - 9.547"),
    on("loudspeaker-reach", "fail", {}, loud(power_rating="20 W"), figure=97.484, within=0.005, level="note",
       says="in peaks of 4 times its rated power", subject=LEFT),
    on("loudspeaker-reach", "pass", {}, box(sensitivity="88 dB", drive="2.83 V", power_rating="50 W"), figure=101.463, within=0.005),
    # One that is too loud to need a rating is judged by its largest level alone.
    on("loudspeaker-reach", "pass", {}, box(maximum_level="112 dB", power_rating="20 W"), figure=102.453, within=0.005),
    on("loudspeaker-reach", "open", {}, box(), says="maximum_level"),
    on("loudspeaker-reach", "open", {}, box(power_rating="20 W"), says="sensitivity"),
    on("loudspeaker-reach", "review", {}, loud(maximum_level="104.6 dB ± 0.5 dB"), subject=LEFT),
    # As near as that a level at 1 m says nothing.
    on("loudspeaker-reach", "review", {"loudspeakers.0.position": at(0.1, 0.0)}, subject=LEFT),
    on("loudspeaker-reach", "notApplicable", base=EMPTY),

    # 118 - 20 lg 3.2311 + 6.02; full scale of the low-frequency channel is 108 dB.
    on("subwoofer-reach", "pass", {}, HEARD, base=SUBS, figure=113.83, within=0.01, source="118 - 10.19 + 6.02"),
    on("subwoofer-reach", "fail", {}, changed(HEARD, {"loudspeaker.maximum_level": "111 dB"}), base=SUBS, level="note"),
    on("subwoofer-reach", "fail", {}, changed(HEARD, {"loudspeaker.maximum_level": "108 dB"}), base=SUBS, level="warning",
       says="103.8 dB together; at least 105 dB"),
    # Two alike in step: 6.02 dB more.
    on("subwoofer-reach", "pass",
       {"subwoofers": [{"id": "sub", "product": "low", "position": at(0.0, 3.0, -1.2)},
                       {"id": "other", "product": "low", "position": at(0.0, -2.0, -1.2), "boundary_gain": "0 dB"}]},
       HEARD, base=SUBS, figure=118.40, within=0.01,
       source="20 lg(10^(113.83 / 20) + 10^((118 - 20 lg 2.3324) / 20))"),
    on("subwoofer-reach", "pass", {"subwoofers.0.boundary_gain": "9 dB"}, HEARD, base=SUBS, figure=116.81, within=0.01),
    # Driven from the amplifier it gives no more than that.
    on("subwoofer-reach", "fail", {f"{AMP}.feeds.2": feed(3, "sub")}, DRIVEN, base=SUBS, figure=103.83, within=0.01,
       source="88 + 20 - 10.19 + 6.02", level="warning"),
    # High on a wall the floor cancels it at 118 Hz; over 20 to 120 Hz it adds 0.87 dB, as powers in steps of 20 Hz.
    on("subwoofer-reach", "pass", {"subwoofers.0.position": at(0.0, 3.0, 1.2)}, HEARD, base=SUBS, figure=108.69, within=0.01,
       source="118 - 20 lg 3.2311 + 0.87, the image's sum in numpy"),
    on("subwoofer-reach", "open", {"subwoofers.0.position": None}, HEARD, base=SUBS, says="position"),
    on("subwoofer-reach", "open", {}, base=SUBS, says="loudspeaker"),
    on("subwoofer-reach", "open", {"subwoofers": None}),
    on("subwoofer-reach", "notApplicable"),
]  # fmt: skip
EDGES: list[Edge] = [
    Edge("level.amplifier-reach", BARE, "loudspeaker.sensitivity", 80.0, 95.0, 2, unit="dB", products=SHEETS, sheet="box",
         subject=LEFT),
    Edge("level.loudspeaker-reach", BARE, "loudspeaker.maximum_level", 100.0, 112.0, 2, unit="dB", products=SHEETS,
         sheet="box", subject=LEFT),
    Edge("level.subwoofer-reach", SUBS, "loudspeaker.maximum_level", 100.0, 120.0, 2, unit="dB",
         products=[HEARD, *SHEETS[:3]], sheet="low"),
]  # fmt: skip
