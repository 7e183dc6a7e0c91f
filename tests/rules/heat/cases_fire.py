"""Cases of pictures above a fire."""

from __future__ import annotations

from typing import Any

from roomlint.edges import Edge
from roomlint.sample import room
from roomlint.testing import Case, Never, changed

PANEL: dict[str, Any] = {"roomlint_product": 1, "id": "panel", "kind": "display", "maximum_inlet": "35 degC"}
TOUGH = {**PANEL, "maximum_inlet": "50 degC"}
BREAST = {
    "id": "breast", "kind": "chimney-breast", "from_left": "1.8 m", "from_front": "0 m", "width": "1.4 m", "depth": "0.4 m",
}  # fmt: skip
FIRE = changed(
    room(), {"picture": {"kind": "display", "product": "panel", "over_fire": True, "warmest": "33 degC"},
             "room.obstacles": [BREAST]},
)  # fmt: skip


def fire(kind: str, changes: dict[str, Any] | None = None, panel: dict[str, Any] = PANEL, **more: Any) -> Case:
    """Return a case of the display over the fire."""
    return Case("heat.over-fire", kind, changed(FIRE, changes or {}), [panel], **more)


CASES: list[Case | Never] = [
    fire("pass", figure=33.0, source="as measured"),
    fire("fail", {"picture.warmest": "60 degC"}, level="error", says="over a fire in air of 60.0 degC; at most 35"),
    fire("fail", {"picture.warmest": "42 degC"}, TOUGH, says="at most 40"),
    fire("fail", {"picture.warmest": "34 degC ± 2 degC"}),
    fire("fail", {"picture.warmest": "60 degC", "room.obstacles": "none"}),
    fire("open", {"picture.warmest": None}, says="warmest"),
    fire("open", {"picture.over_fire": None}, says="over_fire"),
    fire("open", {"picture.over_fire": None, "room.obstacles": None}, says="over_fire"),
    # A fire in a flat wall needs no chimney breast.
    fire("open", {"picture.over_fire": None, "room.obstacles": "none"}, says="over_fire"),
    fire("open", {"picture.product": None}, says="product"),
    fire("open", {}, {"roomlint_product": 1, "id": "panel", "kind": "display"}, says="maximum_inlet"),
    fire("open", {"picture": None}, says="picture"),
    fire("notApplicable", {"picture.over_fire": False}),
    fire("notApplicable", {"picture": "none"}),
]
EDGES: list[Edge] = [Edge("heat.over-fire", FIRE, "picture.warmest", 10, 60, 1, "degC", products=[PANEL])]
