"""A house that says everything of its panels, boxes, units and cuts gets an answer under every wiring code."""

from __future__ import annotations

from typing import Any

import pytest
from cable_rooms import EVERY_CODE, SHEETS, WIRED, under
from mains_rooms import SEVEN

from roomlint.review.book import load_book
from roomlint.review.engine import review_room
from roomlint.testing import changed, room_of

ASKED = {
    *(f"mains.{name}" for name in ("panel-space", "panel-place", "panel-reach", "surge", "unit-rating", "unit-chain",
                                   "box-access", "box-flush", "box-covered", "wall-zone", "rack-bonded")),
    "cable.plate", "cable.fire-stop", "mount.cut-share", "mount.cut-engineer",
}  # fmt: skip
RULES = [rule for rule in load_book().rules if rule.id in ASKED]
CIRCUIT: dict[str, Any] = {
    "id": "c1", "rating": "20 A", "voltage": "230 V", "rcd": "30 mA", "panel": "board",
    "receptacles": [{"id": "r1", "wall": "rear", "from_wall_left": "0.5 m", "height": "0.4 m", "in_cabinet": False,
                     "set_back": "2 mm"}],
    "units": [{"id": "strip", "kind": "strip", "rating": "13 A", "receptacle": "r1"}],
    "loads": [{"id": "amp-load", "current": "4 A", "connection": "plug", "unit": "strip"}],
}  # fmt: skip
HOUSE = changed(
    WIRED,
    {
        "room.walls": [{"id": "rear", "framing": {"kind": "wood-stud", "member_depth": "89 mm", "bearing": False},
                        "board": {"material": "gypsum"}, "finish": "gypsum-on-studs", "fire_rated": True}],
        "room.cuts": [{"id": "bore", "on": "rear", "kind": "hole", "size": "20 mm", "edge_distance": "34 mm",
                       "carries": "cable", "nail_plate": False}],
        "panels": [{"id": "board", "kind": "service", "wall": "rear", "from_wall_left": "2 m", "width": "0.4 m",
                    "handle_height": "1.7 m", "clear_depth": "1 m", "clear_width": "0.8 m", "clear_height": "2.1 m",
                    "storage": False, "new": True, "surge": "type-2"}],
        "treatments": [{"id": "panel", "kind": "absorber", "on": "rear", "from_wall_left": "1 m", "width": "0.6 m",
                        "bottom": "0.5 m", "height": "1 m", "removable": False}],
        "circuits": [CIRCUIT],
        "electronics.racks": [{"id": "rack", "metal": True, "bonded": True}],
        "cables.0.penetrates": ["rear"],
        "cables.0.fire_stopped": True,
        "cables.1": {"id": "feed", "carries": "mains", "from": "c1", "in_wall": True, "depth": "30 mm", "zone": "top",
                     "protection": "none", "penetrates": []},
    },
)  # fmt: skip


@pytest.mark.parametrize("code", EVERY_CODE)
def test_every_code_has_an_answer(code: str) -> None:
    outcome = review_room(room_of(under(code, HOUSE), [*SHEETS, SEVEN]), RULES)
    assert not outcome.troubles
    kinds: dict[str, set[str]] = {}
    for verdict in outcome.verdicts:
        kinds.setdefault(verdict.rule, set()).add(str(verdict.kind))
    assert kinds.keys() == ASKED
    assert {rule for rule, found in kinds.items() if "open" in found} == set()
    assert ("notApplicable" in kinds["mains.panel-space"]) == (not code.startswith("nec"))
    assert ("pass" in kinds["mains.wall-zone"]) == (code == "bs7671")
    # 34 mm are enough under NFPA 70 and short of the 50 mm elsewhere.
    assert kinds["cable.plate"] == ({"pass"} if code.startswith("nec") else {"fail"})
