"""Cases of what each seat sees."""

from __future__ import annotations

from typing import Any

from picture_rooms import DISPLAY, NONE, ROWS, SHEETS, SHOWN, UNSAID, sheets

from roomlint.edges import Edge
from roomlint.testing import Case, Never, changed

HAND = "right triangles by hand, arctangent table"
SEEN = ("angle", "acuity", "top", "height", "off-axis", "far-edge", "sightline", "clear-view")
BACK, UP, ASIDE = "seats.0.ear.from_front", "picture.centre.height", "seats.0.ear.from_left"
# 1.20 m to the side and 3.60 m before it.
SIDE = {ASIDE: "3.7 m", BACK: "3.9 m"}


def on(rule: str, kind: str, changes: dict[str, Any] | None = None, **more: Any) -> Case:
    """Return a case of the room with one seat."""
    return Case(f"picture.{rule}", kind, changed(more.pop("base", SHOWN), changes or {}), BOXES, **more)


FRONT = "loudspeakers.0.position.from_front"
CENTRE = changed(SHOWN, {"loudspeakers": [
    {"id": "centre", "label": "M+000", "product": "low-box", "aim": {"azimuth": "180 deg", "elevation": "0 deg"},
     "position": {"from_left": "2.5 m", "from_front": "0.8 m", "height": "0.60 m"}}]})  # fmt: skip
LOW = {"loudspeakers.0.position.height": "0.75 m"}
POST = {"id": "post", "kind": "post", "from_left": "3.3 m", "from_front": "1.5 m", "width": "0.2 m", "depth": "0.2 m",
        "bottom": "0 m", "top": "2.6 m"}  # fmt: skip
CLOUD = {"id": "cloud", "kind": "canopy", "on": "ceiling", "from_left": "2.0 m", "from_front": "1.7 m", "width": "1.0 m",
         "height": "0.6 m", "thickness": "0.1 m", "mounting": {"on": "ceiling", "drop": "0.7 m"}}  # fmt: skip
BOXES = [*SHEETS, {"roomlint_product": 1, "id": "low-box", "kind": "loudspeaker", "width": "0.5 m", "height": "0.2 m", "depth": "0.3 m"}]  # fmt: skip


CASES: list[Case | Never] = [
    *(on(rule, "notApplicable", base=NONE, says="no picture") for rule in SEEN),
    *(on(rule, "open", base=UNSAID, says="picture") for rule in SEEN),
    *(on(rule, "open", {"picture.centre": None}, says="centre") for rule in SEEN),
    *(on(rule, "open", {"picture.width": None}, says="width") for rule in SEEN if rule != "off-axis"),
    # Of a picture behind the shoulder it is not worth saying how high it hangs.
    *(on(rule, "open", {"seats.0.facing": "180 deg"}, says="layout.picture-ahead") for rule in ("top", "off-axis", "sightline", "clear-view")),

    on("angle", "pass", figure=45.09, source="2 atan(1.3283/3.20)"),
    on("angle", "pass", base=DISPLAY, figure=45.09, source="2 atan(1.3283/3.20)"),
    on("angle", "pass", SIDE, figure=37.12, source="atan(2.5283/3.60) + atan(0.1283/3.60) = 35.08 + 2.04"),
    on("angle", "fail", {BACK: "5.3 m"}, level="warning", figure=29.75, source="2 atan(1.3283/5.00)", says="a larger picture"),
    on("angle", "fail", {BACK: "2.3 m"}, level="note", figure=67.2, source="2 atan(1.3283/2.00)"),
    on("angle", "fail", {BACK: "1.8 m"}, level="warning", figure=83.1, source="2 atan(1.3283/1.50)"),
    # 16:9 in a picture of 2.39: 1.1765 m x 1.7778 = 2.0916 m are shown of 2.8118 m.
    on("angle", "pass", {"picture.width": "2.8118 m", "picture.height": "1.1765 m", "picture.formats": [1.7778]}, figure=36.21, source="2 atan(1.0458/3.20)"),
    on("angle", "review", {BACK: "5.25 m ± 5 cm"}),
    on("angle", "open", {"seats.0.ear": None}, says="ear"),

    on("acuity", "pass", figure=1.3455, source="1.4943 m x 3437.75/2160 = 2.378 m; 3.20/2.378"),
    on("acuity", "fail", {"picture.lines": 1080}, level="note", figure=0.6728, source="half of it"),
    on("acuity", "open", {"picture.lines": None}, says="lines"),
    # A projector's lines fill its raster of 16:9, which covers a picture of 2.39 in width; the file's are the picture's.
    Case("picture.acuity", "pass", changed(SHOWN, {"picture.lines": None, "picture.height": "1.1115 m"}),
         sheets("light", lines=2160), figure=1.3455, source="2.6566 m / 1.7778 = 1.4943 m high: as the picture of 16:9"),
    on("acuity", "pass", {"picture.height": "1.1115 m"}, figure=1.8089, source="1.1115 m x 3437.75/2160 = 1.769 m"),
    Case("picture.acuity", "open", changed(SHOWN, {"picture.lines": None}), sheets("light", lines=2160, aspect=None),
         says="aspect"),
    on("acuity", "review", {BACK: "2.68 m ± 2 cm"}),

    on("top", "pass", figure=19.68, source="atan(1.1443/3.20)"),
    on("top", "fail", {BACK: "2.2 m"}, level="warning", figure=31.06, source="atan(1.1443/1.90)"),
    on("top", "fail", {BACK: "1.9 m"}, level="error", figure=35.57, source="atan(1.1443/1.60)"),
    # 2.39 in a picture of 16:9 is 1.1115 m high: its top is 0.1914 m lower.
    on("top", "pass", {BACK: "2.2 m", "picture.formats": [2.39]}, figure=26.63, source="atan(0.9530/1.90)"),
    on("top", "review", {BACK: "2.28 m ± 2 cm"}),
    # An eye that is not given is 17 mm over the ear.
    on("top", "pass", {"seats.0.eye_height": None}, figure=19.68, source="as it was given"),

    on("height", "pass", figure=7.07, source="atan(0.3972/3.20)"),
    on("height", "fail", {UP: "2.0 m", "picture.height": "0.8 m", "picture.width": "1.42 m"}, level="note", figure=15.71, source="atan(0.90/3.20)"),
    on("height", "fail", {UP: "1.9 m", BACK: "2.0 m", "picture.height": "0.2 m", "picture.width": "2 m"}, level="warning", figure=25.2, source="atan(0.80/1.70)"),
    on("height", "open", {BACK: "1.9 m"}, says="picture.top"),
    on("height", "review", {UP: "2.59 m ± 1 cm", "picture.height": "0.1 m", "picture.width": "2 m"}),

    on("off-axis", "pass", SIDE, figure=18.43, source="atan(1.20/3.60)"),
    on("off-axis", "fail", {ASIDE: "4.6 m", BACK: "2.8 m"}, level="warning", figure=40.03, source="atan(2.10/2.50)"),
    on("off-axis", "fail", {ASIDE: "4.6 m", BACK: "2.0 m"}, level="error", figure=51.0, source="atan(2.10/1.70)"),
    on("off-axis", "review", {ASIDE: "4.74 m ± 2 cm"}),

    on("far-edge", "pass", SIDE, figure=35.08, source="atan(2.5283/3.60)"),
    on("far-edge", "fail", {ASIDE: "3.4 m", BACK: "1.7 m", "picture.width": "3.2 m"}, level="note", figure=60.75, source="atan(2.50/1.40)"),
    on("far-edge", "open", {ASIDE: "4.6 m", BACK: "2.0 m"}, says="picture.off-axis"),
    on("far-edge", "review", {ASIDE: "3.4 m", BACK: "1.743 m ± 1 cm", "picture.width": "3.2 m"}),

    # 0.2 m high, its front 0.5 m before the picture and its rear 0.2 m: from an eye at 1.10 m the rear edge hides most.
    on("clear-view", "fail", LOW, base=CENTRE, level="warning", figure=-0.0833, source="1.10 - 0.25/(1 - 0.2/3.2) = 0.8333 over 0.75 m", says="centre hides 83 mm of the picture"),
    on("clear-view", "pass", base=CENTRE, figure=0.0767, source="1.10 - 0.40/(1 - 0.2/3.2) = 0.6733 under 0.75 m"),
    # What stands behind the picture hides nothing of it, nor does what is at the listener's elbow.
    on("clear-view", "pass", {**LOW, FRONT: "0.28 m"}, base=CENTRE, says="nothing stands before"),
    on("clear-view", "pass", {**LOW, FRONT: "3.4 m", "loudspeakers.0.position.from_left": "3.2 m"}, base=CENTRE, says="nothing stands before"),
    on("clear-view", "fail", {"room.obstacles": [POST]}, figure=-0.0483, source="0.8/(1 - 1.2/3.2) = 1.28 of 1.3283 m", says="post hides"),
    on("clear-view", "pass", {"room.obstacles": [{**POST, "from_left": "3.4 m"}]}, figure=0.1117, source="0.9/(1 - 1.2/3.2) = 1.44 less 1.3283 m"),
    # What the plane of the picture cuts counts as far as it is before it.
    on("clear-view", "fail", {"room.obstacles": [{**POST, "from_left": "2.4 m", "from_front": "0.1 m", "depth": "0.3 m", "top": "1.0 m"}]}, figure=-0.25, source="1.0 less 0.75 m at the plane itself"),
    # 2.6 m less 0.7 m and 0.1 m of panel: its lower edge is 1.80 m up, and hides down to 1.10 + 0.70/(1 - 1.4/3.2) = 2.344 m.
    on("clear-view", "pass", {"treatments": [CLOUD]}, figure=0.1001, source="2.3444 less the picture's 2.2443 m"),
    on("clear-view", "fail", {"treatments": [{**CLOUD, "mounting": {"on": "ceiling", "drop": "0.9 m"}}]}, says="cloud hides"),
    on("clear-view", "open", {"treatments": [CLOUD], "treatments.0.thickness": None}, says="thickness"),
    on("clear-view", "open", {"treatments": None}, says="treatments"),
    on("clear-view", "review", {"loudspeakers.0.position.height": "0.68 m ± 10 mm"}, base=CENTRE),
    on("clear-view", "open", {"room.obstacles": None}, says="obstacles"),
    on("clear-view", "open", {"room.obstacles": None}, base=CENTRE, says="obstacles"),
    on("clear-view", "fail", {**LOW, "room.obstacles": None}, base=CENTRE),

    on("sightline", "pass", says="nobody sits before"),
    # 0.75 + 0.65 x 3.2/5.0 = 1.166 m, where the head before reaches 1.212 m.
    on("sightline", "fail", base=ROWS, subject="seat/rear", level="warning", figure=-0.046, source=HAND, says="a riser 72 mm higher"),
    on("sightline", "pass", base=ROWS, subject="seat/seat"),
    # With 0.072 m more of riser: N = 0.75 + 0.462 x 1.5625 - 1.10 = 0.372 m.
    on("sightline", "pass", {"seats.1.eye_height": "1.473 m"}, base=ROWS, subject="seat/rear"),
    on("sightline", "fail", {"seats.1.eye_height": "0.90 m", "seats.1.ear.height": "0.88 m"}, base=ROWS, subject="seat/rear", says="is no riser"),
    # A seat back that is higher than the head counts; a head beside the picture does not.
    on("sightline", "fail", {"seats.0.back_top": "1.30 m", "seats.1.eye_height": "1.48 m"}, base=ROWS, subject="seat/rear", figure=-0.0828, source="0.75 + 0.73 x 0.64 = 1.2172 m under 1.30 m"),
    on("sightline", "pass", {ASIDE: "3.6 m"}, base=ROWS, subject="seat/rear"),
    on("sightline", "open", {"seats.0.head_top": None}, base=ROWS, subject="seat/rear", says="head_top"),
    on("sightline", "open", {"seats.0.ear": None}, base=ROWS, subject="seat/rear", says="ear"),
    on("sightline", "review", {"seats.0.head_top": "1.167 m ± 5 mm"}, base=ROWS, subject="seat/rear"),
]  # fmt: skip
EDGES = [
    Edge("picture.angle", SHOWN, BACK, 1.5, 5.9, 4, products=SHEETS),
    Edge("picture.acuity", SHOWN, BACK, 1.0, 5.9, 1, products=SHEETS),
    Edge("picture.top", SHOWN, BACK, 1.5, 5.9, 2, products=SHEETS),
    Edge("picture.height", SHOWN, UP, 1.2, 2.8, 2, products=SHEETS),
    Edge("picture.off-axis", changed(SHOWN, {BACK: "2.0 m"}), ASIDE, 2.6, 4.9, 2, products=SHEETS),
    Edge("picture.far-edge", changed(SHOWN, {BACK: "2.3 m"}), ASIDE, 2.6, 4.9, 1, products=SHEETS),
    Edge("picture.clear-view", CENTRE, "loudspeakers.0.position.height", 0.4, 1.0, 1, products=BOXES),
    Edge("picture.sightline", ROWS, "seats.0.head_top", 1.1, 1.3, 1, subject="seat/rear", products=SHEETS),
]
