"""Cases of what a run does to its signal."""

from __future__ import annotations

from typing import Any

from cable_rooms import BARE, LINKED, SHEETS, UNSAID, WIRED
from channel_rooms import amplifier, box

from roomlint.edges import Edge
from roomlint.sample import at
from roomlint.testing import Case, Never, changed

CABLE = "cables.0"
OHM = "0.0082853 ohm/m of 14 AWG at 20 degC, by hand"
BUNDLE = "NFPA 70:2017 Table 725.144, with 0.71 at 45 degC and 0.58 at 50 degC"


def on(rule: str, kind: str, changes: dict[str, Any] | None = None, *sheets: dict[str, Any], **more: Any) -> Case:
    """Return a case of the one run."""
    made = {key if "." in key else f"{CABLE}.{key}": value for key, value in (changes or {}).items()}
    ids = {sheet["id"] for sheet in sheets}
    base = more.pop("base", WIRED if rule in {"wire-loss", "damping"} else LINKED)
    products = [*sheets, *(one for one in SHEETS if one["id"] not in ids)]
    return Case(f"cable.{rule}", kind, changed(base, made), products, **more)


VIDEO = {"carries": "video", "rate": "18 Gb/s", "length": "4 m"}
USB = {"carries": "usb", "rate": "0.48 Gb/s", "length": "4 m"}

RACKED = changed(WIRED, {"electronics.amplifiers.0.rack": "rack", "electronics.racks": [{"id": "rack", "position": at(1.5, 2.6, -1.2)}]})  # fmt: skip
SHOWN = changed(RACKED, {"picture": {}})

CASES: list[Case | Never] = [
    # 15 m of 14 AWG: 0.2486 ohm, 0.266 dB of 8 ohm and 0.524 dB of 4.
    on("wire-loss", "pass", figure=0.266, within=6e-4, source=OHM),
    on("wire-loss", "fail", {"length": "20 m"}, box("4 ohm", "4 ohm"), level="warning", says="on the way to left"),
    on("wire-loss", "fail", {}, box("4 ohm", "4 ohm"), figure=0.524, within=6e-4, source=OHM),
    # The least impedance is 80 % of what is printed where nothing else is said: 0.2486 over 6.4 ohm.
    on("wire-loss", "pass", {}, box("8 ohm"), figure=0.331, within=6e-4, source="20 lg(6.6486 / 6.4)"),
    on("wire-loss", "pass", {"conductor": "2.5 mm2"}, figure=0.2379, within=6e-4, source="IEC 60228: 7.41 ohm/km, 20 lg(8.2223 / 8)"),
    on("wire-loss", "review", {"length": "18 m ± 5 m"}, box("5 ohm", "5 ohm")),
    on("wire-loss", "open", {"length": None}, says="length"),
    on("wire-loss", "open", {"conductor": None}, says="conductor"),
    on("wire-loss", "open", {"to": None}, says="to"),
    on("wire-loss", "open", {"carries": None}, says="carries"),
    on("wire-loss", "open", {"loudspeakers.0.product": None}, says="product"),
    on("wire-loss", "open", {}, box(None), says="impedance"),
    on("wire-loss", "open", base=UNSAID),
    on("wire-loss", "notApplicable", {"carries": "line-level"}),
    on("wire-loss", "notApplicable", {"to": "amp"}),
    on("wire-loss", "notApplicable", base=BARE),

    on("damping", "pass", figure=27.7, within=0.05, source="8 / (8/200 + 0.2486)"),
    on("damping", "fail", {}, box("5 ohm", "5 ohm"), level="note", figure=17.33, within=0.02, source="5 / (8/200 + 0.2486)"),
    on("damping", "open", {"length": "20 m"}, box("4 ohm", "4 ohm"), says="cable.wire-loss"),
    on("damping", "open", {}, amplifier(2), says="damping_factor"),
    on("damping", "open", {"electronics.amplifiers": "none", "from": "left"}, says="amplifiers"),
    on("damping", "review", {"length": "22 m ± 4 m"}),
    on("damping", "notApplicable", {"carries": "network"}),
    on("damping", "notApplicable", base=BARE),

    # From the foot of the rack, 3.0 m to the right of the loudspeaker and 1.2 m lower: the square root of 10.44.
    on("reaches", "pass", base=RACKED, figure=11.7689, source="15 m less 3.2311 m"),
    on("reaches", "fail", {"length": "3 m"}, base=RACKED, level="warning", figure=-0.2311, source="3 m less 3.2311 m", says="too short for the straight way of 3.23 m"),
    on("reaches", "review", {"length": "3.24 m ± 0.1 m"}, base=RACKED),
    on("reaches", "open", {"length": None}, base=RACKED, says="length"),
    on("reaches", "open", {"from": None}, base=RACKED, says="from"),
    on("reaches", "open", {"electronics.racks.0.position": None}, base=RACKED, says="position"),
    on("reaches", "open", {"loudspeakers.0.position": None}, base=RACKED, says="position"),
    on("reaches", "open", {"electronics.racks": None}, base=WIRED, says="racks"),
    on("reaches", "pass", {"to": "beamer", "picture.projector": {"id": "beamer", "lens": at(1.5, 0.6, 0.8)}, "length": "3 m", "picture.kind": "projection"}, base=SHOWN, figure=0.1716, source="3 m less the square root of 8"),
    on("reaches", "fail", {"to": "picture", "picture.centre": at(0.0, 3.4, 0.0), "length": "1 m", "picture.kind": "display"}, base=SHOWN, says="too short"),
    on("reaches", "notApplicable", base=WIRED, says="no place"),
    on("reaches", "notApplicable", {"to": "amp"}, base=WIRED),
    on("reaches", "notApplicable", base=BARE),

    on("link-length", "pass", figure=20.0, source="as given"),
    on("link-length", "fail", {"length": "95 m"}, level="note", says="at most 90"),
    on("link-length", "fail", {"length": "105 m"}, level="warning", says="at most 100"),
    on("link-length", "pass", {**VIDEO, "length": "3 m"}),
    on("link-length", "fail", VIDEO, level="note", says="at most 3"),
    on("link-length", "fail", {**VIDEO, "length": "7 m"}, level="warning", says="at most 5"),
    on("link-length", "fail", {**VIDEO, "rate": "10.2 Gb/s", "length": "7 m"}, level="note"),
    on("link-length", "fail", {**VIDEO, "rate": "10.2 Gb/s", "length": "12 m"}, level="warning", says="at most 10"),
    on("link-length", "review", {**VIDEO, "rate": "80 Gb/s"}, says="80"),
    on("link-length", "pass", USB),
    on("link-length", "fail", {**USB, "length": "6 m"}, level="warning", says="at most 5"),
    on("link-length", "fail", {**USB, "rate": "5 Gb/s"}, level="warning", says="at most 3"),
    on("link-length", "review", {"length": "99 m ± 5 m"}),
    on("link-length", "open", {"length": None}, says="length"),
    on("link-length", "open", {**VIDEO, "rate": None}, says="rate"),
    on("link-length", "open", {**VIDEO, "active": None}, says="active"),
    on("link-length", "open", {"carries": None}, says="carries"),
    on("link-length", "notApplicable", {**VIDEO, "active": True}),
    on("link-length", "notApplicable", {"carries": "line-level"}),
    on("link-length", "notApplicable", base=BARE),

    # Twelve of 24 AWG in 45 degC: 0.8 A x 0.7071 = 0.566 A for 0.48 A; in 50 degC 0.462 A.
    on("bundle-heat", "pass", figure=84.9, within=0.1, source=BUNDLE),
    on("bundle-heat", "fail", {"ambient": "50 degC"}, level="warning", figure=103.9, within=0.1, source=BUNDLE),
    on("bundle-heat", "pass", {"ambient": "20 degC"}, figure=60.0, source=BUNDLE),
    on("bundle-heat", "pass", {"ambient": "50 degC", "powered": "type-2"}),
    on("bundle-heat", "fail", {"bundle": 40, "ambient": "40 degC"}, figure=117.6, within=0.1, source="0.48 / (0.5 x 0.8165)"),
    on("bundle-heat", "review", {"ambient": "60 degC"}, says="60"),
    on("bundle-heat", "review", {"conductor": "30 AWG"}, says="26 AWG"),
    on("bundle-heat", "review", {"ambient": "48 degC ± 3 degC"}),
    on("bundle-heat", "open", {"ambient": None}, says="ambient"),
    on("bundle-heat", "open", {"bundle": None}, says="bundle"),
    on("bundle-heat", "open", {"conductor": None}, says="conductor"),
    on("bundle-heat", "open", {"powered": None}, says="powered"),
    on("bundle-heat", "notApplicable", {"powered": "none"}),
    on("bundle-heat", "notApplicable", {"carries": "usb"}),
    on("bundle-heat", "notApplicable", base=BARE),

    on("bend", "pass", figure=10.0, source="60 / 6"),
    on("bend", "fail", {"bend_radius": "20 mm"}, level="note", figure=3.333, source="20 / 6"),
    on("bend", "review", {"bend_radius": "25 mm ± 5 mm"}),
    on("bend", "open", {"bend_radius": None}, says="bend_radius"),
    on("bend", "open", {"outer_diameter": None}, says="outer_diameter"),
    on("bend", "notApplicable", {"carries": "loudspeaker"}),
    on("bend", "notApplicable", base=BARE),
]  # fmt: skip
EDGES: list[Edge] = [
    Edge("cable.wire-loss", WIRED, f"{CABLE}.length", 1, 100, 1, products=SHEETS),
    Edge("cable.damping", WIRED, f"{CABLE}.length", 1, 100, 1, products=SHEETS),
    Edge("cable.reaches", RACKED, f"{CABLE}.length", 1, 9, 1, products=SHEETS),
    Edge("cable.link-length", LINKED, f"{CABLE}.length", 1, 150, 2, products=SHEETS),
    Edge("cable.bundle-heat", LINKED, f"{CABLE}.ambient", 31, 58, 1, "degC", products=SHEETS),
    Edge("cable.bend", LINKED, f"{CABLE}.bend_radius", 5, 100, 1, "mm", 0.001, products=SHEETS),
]  # fmt: skip
