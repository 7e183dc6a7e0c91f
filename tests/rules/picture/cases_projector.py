"""Cases of the projector: its lens, its beam and its light."""

from __future__ import annotations

from typing import Any

from picture_rooms import DISPLAY, NONE, SHEETS, SHOWN, UNSAID, sheets

from roomlint.edges import Edge
from roomlint.sample import speaker
from roomlint.testing import Case, Never, changed

HAND = "arithmetic by hand"
OF_PROJECTOR = ("throw", "lens-shift", "both-shifts", "beam-free")
OF_LIGHT = ("beam-heads", "luminance", "off-axis-light", "contrast")
LENS = "picture.projector.lens"
POST = {"id": "post", "kind": "post", "from_left": "2.4 m", "from_front": "2 m", "width": "0.2 m", "depth": "0.2 m"}

HUNG = speaker("hung", "U+045", 0.0, 0.5, 0.85)
APART = speaker("hung", "U+045", -2.0, 0.5, 0.85)


def on(rule: str, kind: str, changes: dict[str, Any] | None = None, **more: Any) -> Case:
    """Return a case of the room with a projector."""
    products = more.pop("products", SHEETS)
    return Case(f"picture.{rule}", kind, changed(more.pop("base", SHOWN), changes or {}), products, **more)


# 0.05 m thick, 0.6 m deep, from 1.4 to 2.0 m off the front wall; the beam is 1 m high there.
SAIL = {"id": "sail", "kind": "canopy", "on": "ceiling", "from_left": "2.0 m", "from_front": "1.4 m", "width": "1.0 m",
        "height": "0.6 m", "thickness": "0.05 m", "mounting": {"on": "ceiling", "drop": "0.75 m"}}  # fmt: skip

CASES: list[Case | Never] = [
    *(on(rule, "notApplicable", base=base) for rule in (*OF_PROJECTOR, *OF_LIGHT) for base in (NONE, DISPLAY)),
    *(on(rule, "open", base=UNSAID, says="picture") for rule in (*OF_PROJECTOR, *OF_LIGHT)),
    *(on(rule, "open", {"picture.projector": None}, says="projector") for rule in OF_PROJECTOR),
    # A picture of which nobody says how it is made may be a projector's.
    *(on(rule, "open", {"picture.kind": None, "picture.product": None, "picture.projector": None}, says="kind") for rule in (*OF_PROJECTOR, *OF_LIGHT)),
    *(on(rule, "open", {LENS: None}, says="lens") for rule in (*OF_PROJECTOR, "beam-heads")),

    on("throw", "pass", figure=1.581, source="4.20 m / 2.6566 m"),
    on("throw", "fail", {f"{LENS}.from_front": "3.5 m"}, level="error", figure=1.2045, source="3.20 m / 2.6566 m", says="too near"),
    on("throw", "fail", {"picture.width": "1.6 m", "picture.height": "0.9 m"}, level="error", figure=2.625, source="4.20 m / 1.60 m", says="too far"),
    # A picture of 4:3 is covered in its height: 1.4943 m x 1.7778 wide.
    on("throw", "pass", {"picture.width": "1.9924 m"}, figure=1.581, source="4.20 m / 2.6566 m"),
    on("throw", "review", {f"{LENS}.from_front": "3.89 m ± 2 cm"}),
    on("throw", "open", products=sheets("light", throw_max=None), says="throw_max"),
    on("throw", "open", {"picture.projector.product": None}, says="product"),

    # 0.8528 m over the middle of 1.4943 m: 57.07 % of the height, 114.14 % of half of it.
    on("lens-shift", "pass", figure=95.12, source="57.07/60", within=0.02),
    on("lens-shift", "fail", products=sheets("light", shift_reference="half-height"), level="error", figure=190.2, source="114.14/60"),
    on("lens-shift", "pass", products=sheets("light", shift_reference="half-height", shift_vertical=120), figure=95.12, source="114.14/120", within=0.02),
    on("lens-shift", "fail", {f"{LENS}.from_left": "3.2 m"}, level="error", figure=114.6, source="0.70/2.6566 = 26.35 % of 23 %"),
    on("lens-shift", "review", {f"{LENS}.height": "2.394 m ± 1 cm"}),
    # A lens that shifts no way aside is wrong 0.30 m off the middle, and right on it; 0.01 m its mount makes up.
    on("lens-shift", "fail", {f"{LENS}.from_left": "2.8 m"}, products=sheets("light", shift_horizontal=0), level="error", figure=1129.3, source="0.30/2.6566 = 11.293 % of 1 %"),
    on("lens-shift", "pass", products=sheets("light", shift_horizontal=0), figure=95.12, source="57.07/60", within=0.02),
    on("lens-shift", "pass", {f"{LENS}.from_left": "2.51 m", f"{LENS}.height": "1.4972 m"}, products=sheets("light", shift_horizontal=0, shift_vertical=0), figure=37.64, source="0.01/2.6566 = 0.3764 % of 1 %"),
    on("lens-shift", "open", products=sheets("light", shift_reference=None), says="shift_reference"),

    on("both-shifts", "pass", figure=95.12, source="nothing aside", within=0.02),
    on("both-shifts", "fail", {f"{LENS}.from_left": "2.9 m"}, level="warning", figure=160.6, source="95.12 + 100 x 15.06/23"),
    on("both-shifts", "pass", {f"{LENS}.from_left": "2.51 m"}, products=sheets("light", shift_horizontal=0), figure=95.12, source="57.07/60", within=0.02),
    on("both-shifts", "open", {f"{LENS}.from_left": "3.2 m"}, says="picture.lens-shift"),
    on("both-shifts", "review", {f"{LENS}.from_left": "2.53 m ± 1 cm"}),

    # 0.75 + 1.60 x 3.20/4.20 = 1.969 m.
    on("beam-heads", "pass", figure=0.757, source="1.969 m less 1.212 m"),
    on("beam-heads", "fail", {"seats.0.head_top": "1.90 m"}, level="warning", figure=0.069, source="1.969 m less 1.90 m", within=0.001),
    on("beam-heads", "fail", {"seats.0.head_top": "2.0 m"}, level="warning", says="in the projector's beam"),
    # Behind the lens, and beside the beam, nobody is in its way.
    on("beam-heads", "pass", {"seats.0.head_top": "1.90 m", f"{LENS}.from_front": "3.4 m"}, says="1.00 m or more"),
    on("beam-heads", "pass", {"seats.0.head_top": "1.90 m", "seats.0.ear.from_left": "3.4 m"}),
    on("beam-heads", "open", {"seats.0.head_top": None}, says="head_top"),
    on("beam-heads", "review", {"seats.0.head_top": "1.868 m ± 5 mm"}),

    on("beam-free", "pass"),
    on("beam-free", "fail", {"room.obstacles": [POST]}, level="error", says="post"),
    on("beam-free", "fail", {"loudspeakers": [HUNG]}, says="hung"),
    # A thin panel between two of nine lines is in the beam all the same.
    on("beam-free", "fail", {"treatments": [SAIL]}, says="sail"),
    on("beam-free", "pass", {"treatments": [{**SAIL, "mounting": {"on": "ceiling", "drop": "0.05 m"}}]}),
    on("beam-free", "pass", {"treatments": [{**SAIL, "from_left": "0.1 m"}]}),
    on("beam-free", "open", {"treatments": [SAIL], "treatments.0.width": None}, says="width"),
    on("beam-free", "open", {"treatments": [SAIL], "treatments.0.mounting": None}, says="drop"),
    on("beam-free", "open", {"treatments": None}, says="treatments"),
    on("beam-free", "pass", {"room.obstacles": [{**POST, "from_left": "0.2 m"}]}),
    on("beam-free", "open", {"room.obstacles": None}, says="obstacles"),
    # What has no place yet, or is not spoken of, may stand in it; what is known to does so all the same.
    on("beam-free", "open", {"loudspeakers": [HUNG, {"id": "drawn", "label": "M+030"}], "loudspeakers.0": APART}, says="position of drawn"),
    on("beam-free", "fail", {"loudspeakers": [HUNG, {"id": "drawn", "label": "M+030"}]}, says="hung"),
    on("beam-free", "open", {"loudspeakers": None}, says="loudspeakers"),

    on("luminance", "pass", figure=120.28, source="1500 lm/(pi x 3.9697 m2)"),
    on("luminance", "fail", products=sheets("light", luminous_flux="500 lm"), level="note", figure=40.09, source="a third of it"),
    on("luminance", "fail", products=sheets("light", luminous_flux="400 lm"), level="warning", figure=32.07, source="400/1500 of it"),
    # 2.39 by zooming a raster of 16:9: 3.5714 m wide, 7.1747 m2 are lit.
    on("luminance", "pass", {"picture.width": "3.5714 m"}, figure=66.55, source="1500 lm/(pi x 7.1747 m2)"),
    on("luminance", "open", products=sheets("light", luminous_flux=None), says="luminous_flux"),
    on("luminance", "open", {"picture.product": None, "picture.kind": "projection"}, says="product"),
    on("luminance", "review", products=sheets("light", luminous_flux="475 lm ± 20 lm")),

    on("off-axis-light", "pass", figure=100.0, source="on the axis"),
    # 35 deg off, the half-gain angle itself is 25: exp(-ln 2 x 1.96) = 25.7 %.
    on("off-axis-light", "fail", {"seats.0.ear.from_left": "4.74 m"}, products=sheets("cloth", half_gain="25 deg"), level="warning", figure=25.7, source="exp(-ln 2 x (34.99/25)^2)"),
    on("off-axis-light", "pass", {"seats.0.ear.from_left": "3.3574 m"}, figure=88.05, source="gain 1.1446 of 1.3 at 15 deg of 35"),
    on("off-axis-light", "open", products=sheets("cloth", half_gain=None), says="half_gain"),
    on("off-axis-light", "review", {"seats.0.ear.from_left": "3.993 m"}, products=sheets("cloth", half_gain="25 deg ± 1 deg")),

    # 100 cd/m2 over 0.5 in 5 lx: 101.592/2.092.
    on("contrast", "fail", {"picture.ambient": "5 lx"}, products=sheets("light", luminous_flux="1247.1 lm"), level="note", figure=48.57, source="(100 + 1.592)/(0.5 + 1.592)"),
    on("contrast", "pass", {"picture.ambient": "2.3 lx"}, products=sheets("light", luminous_flux="1247.1 lm")),
    on("contrast", "fail", {"picture.ambient": "21 lx"}, products=sheets("light", luminous_flux="1247.1 lm"), level="warning"),
    on("contrast", "open", {"picture.ambient": None}, says="ambient"),
    on("contrast", "open", products=sheets("light", contrast=None), says="contrast"),
    on("contrast", "review", {"picture.ambient": "20.7 lx ± 0.5 lx"}, products=sheets("light", luminous_flux="1247.1 lm")),
]  # fmt: skip
EDGES = [
    Edge("picture.throw", SHOWN, f"{LENS}.from_front", 3.0, 5.95, 1, products=SHEETS),
    Edge("picture.throw", changed(SHOWN, {"picture.width": "2 m", "picture.height": "1.12 m"}), f"{LENS}.from_front", 3.5, 5.9, 1, products=SHEETS),
    Edge("picture.lens-shift", SHOWN, f"{LENS}.height", 1.5, 2.55, 1, products=SHEETS),
    Edge("picture.both-shifts", SHOWN, f"{LENS}.from_left", 2.5, 2.6, 1, products=SHEETS),
    Edge("picture.beam-heads", SHOWN, "seats.0.head_top", 1.5, 2.1, 1, products=SHEETS),
    Edge("picture.luminance", SHOWN, "picture.luminous_flux", 300.0, 900.0, 2, unit="lm", products=SHEETS, sheet="light"),
    Edge("picture.off-axis-light", changed(SHOWN, {"seats.0.ear.from_left": "3.5 m"}), "picture.half_gain", 3.0, 60.0, 1, unit="deg", products=SHEETS, sheet="cloth"),
    Edge("picture.contrast", SHOWN, "picture.ambient", 0.5, 60.0, 2, unit="lx", products=SHEETS),
]  # fmt: skip
