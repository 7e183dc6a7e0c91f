"""Cases of what stands close to a cabinet's faces."""

from __future__ import annotations

from roomlint.testing import Case, Never, changed

BOX = {"roomlint_product": 1, "id": "box", "kind": "loudspeaker", "width": "0.20 m", "depth": "0.30 m"}
SUB = {"roomlint_product": 1, "id": "sub", "kind": "subwoofer", "width": "0.40 m", "depth": "0.40 m"}
ROOM = {
    "roomlint": 1,
    "project": {"code": "case"},
    "room": {
        "size": {"width": "4.5 m", "length": "6 m"},
        "ceiling": {"shape": "flat", "height": "2.7 m"},
        "obstacles": [
            {"id": "post", "kind": "post", "from_left": "2.2 m", "from_front": "2.0 m", "width": "0.1 m", "depth": "0.1 m"}
        ],
    },
    "seats": [{"id": "middle", "ear": {"from_left": "2.25 m", "from_front": "4.0 m", "height": "1.1 m"}}],
    "loudspeakers": [
        {
            "id": "box", "label": "M+000", "product": "box", "aim": {"azimuth": "180 deg", "elevation": "0 deg"},
            "position": {"from_left": "2.25 m", "from_front": "0.60 m", "height": "1.1 m"},
        }
    ],
    "subwoofers": [
        {"id": "low", "product": "sub", "facing": "180 deg", "position": {"from_left": "1 m", "from_front": "0.5 m", "height": "0.3 m"}}
    ],
}  # fmt: skip
SHEETS = (BOX, SUB)
NOTHING = changed(ROOM, {"loudspeakers": None, "subwoofers": None})
SPEAKER, LOW = "loudspeaker/box", "subwoofer/low"


def moved(left: str, front: str, **more: object) -> dict[str, object]:
    return changed(
        ROOM, {"loudspeakers.0.position.from_left": left, "loudspeakers.0.position.from_front": front, **more}
    )


CASES: list[Case | Never] = [
    # From 0.6 m to the post's face at 2.0 m.
    Case("boundary.front-face", "pass", ROOM, SHEETS, subject=SPEAKER, figure=1.4, source="2.0 m - 0.6 m"),
    Case("boundary.front-face", "fail", moved("2.25 m", "1.6 m"), SHEETS, subject=SPEAKER, level="warning", figure=0.4, source="2.0 m - 1.6 m"),
    # Beside the post the way is free to the rear wall.
    Case("boundary.front-face", "pass", moved("2.0 m", "1.6 m"), SHEETS, subject=SPEAKER, figure=4.4, source="6.0 m - 1.6 m"),
    Case("boundary.front-face", "fail", changed(ROOM, {"subwoofers.0.facing": "0 deg", "subwoofers.0.position.from_front": "0.08 m"}), SHEETS,
         subject=LOW, figure=0.08, source="0.08 m to the front wall"),
    Case("boundary.front-face", "open", changed(ROOM, {"loudspeakers.0.aim": None}), SHEETS, subject=SPEAKER),
    Case("boundary.front-face", "notApplicable", NOTHING, SHEETS),
    # 0.6 m to the front wall less 0.30 m of depth; the sides have 2.15 m and more.
    Case("boundary.cabinet-room", "pass", ROOM, SHEETS, subject=SPEAKER, figure=0.3, source="0.60 m - 0.30 m"),
    Case("boundary.cabinet-room", "fail", moved("2.25 m", "0.25 m"), SHEETS, subject=SPEAKER, level="warning", figure=-0.05, source="0.25 m - 0.30 m", says="rear face"),
    # It faces the rear, so its right side is the room's left: 0.12 m less half of 0.20 m is 0.02 m.
    Case("boundary.cabinet-room", "fail", moved("0.12 m", "1.0 m"), SHEETS, subject=SPEAKER, level="note", figure=0.02, source="0.12 m - 0.10 m", says="right face"),
    Case("boundary.cabinet-room", "open", ROOM, (changed(BOX, {"width": None}), SUB), subject=SPEAKER),
    Case("boundary.cabinet-room", "notApplicable", NOTHING, SHEETS),
    Case("boundary.corner", "pass", ROOM, SHEETS, figure=2.3286, source="hypot(2.25, 0.60)"),
    Case("boundary.corner", "fail", moved("0.3 m", "0.3 m"), SHEETS, level="note", figure=0.42426, source="0.3 x root of 2"),
    Case("boundary.corner", "open", changed(ROOM, {"loudspeakers.0.position": None}), SHEETS),
    Case("boundary.corner", "notApplicable", NOTHING, SHEETS),
]  # fmt: skip
