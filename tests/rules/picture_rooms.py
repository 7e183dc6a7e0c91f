"""Rooms of the cases of chapter picture: 2.6566 m of 16:9, 0.75 m over the floor, 3.20 m before the eye."""

from __future__ import annotations

from typing import Any

from roomlint.sample import room
from roomlint.testing import changed

Data = dict[str, Any]
SCREEN: Data = {
    "roomlint_product": 1, "id": "cloth", "kind": "screen", "picture": {"gain": 1.0, "half_gain": "35 deg"},
}  # fmt: skip
LIGHT: Data = {
    "roomlint_product": 1, "id": "light", "kind": "projector", "width": "0.4 m", "height": "0.15 m", "depth": "0.35 m",
    "picture": {
        "aspect": 1.7778, "throw_min": 1.35, "throw_max": 2.2, "shift_reference": "full-height", "shift_vertical": 60,
        "shift_horizontal": 23, "luminous_flux": "1500 lm", "contrast": 200,
    },
}  # fmt: skip
SHEETS = [SCREEN, LIGHT]
SHOWN = changed(
    room(),
    {
        "seats.0.ear.height": "1.083 m",
        "seats.0.eye_height": "1.10 m",
        "seats.0.head_top": "1.212 m",
        "seats.0.row": 1,
        "picture": {
            "kind": "projection",
            "product": "cloth",
            "centre": {"from_left": "2.5 m", "from_front": "0.3 m", "height": "1.4972 m"},
            "width": "2.6566 m",
            "height": "1.4943 m",
            "lines": 2160,
            "ambient": "0.5 lx",
            "mounting": {"on": "front"},
            "projector": {
                "id": "projector",
                "product": "light",
                "lens": {"from_left": "2.5 m", "from_front": "4.5 m", "height": "2.35 m"},
            },
        },
    },
)
"""One seat on the axis, 3.20 m before the picture; the lens 4.20 m before it and 2.35 m up."""
ROWS = changed(
    SHOWN,
    {
        "seats.1": {
            "id": "rear",
            "ear": {"from_left": "2.5 m", "from_front": "5.3 m", "height": "1.383 m"},
            "eye_height": "1.40 m",
            "head_top": "1.512 m",
            "riser": "0.30 m",
            "row": 2,
        }
    },
)
"""A second row 1.80 m behind it, on 0.30 m."""
DISPLAY = changed(SHOWN, {"picture.kind": "display", "picture.product": None, "picture.projector": None})
NONE = room()
UNSAID = changed(SHOWN, {"picture": None})


def sheets(product: str, **more: Any) -> list[Data]:
    """Return the two sheets with values of one of them changed; None takes one out."""
    return [
        changed(sheet, {f"picture.{key}": value for key, value in more.items()}) if sheet["id"] == product else sheet
        for sheet in SHEETS
    ]
