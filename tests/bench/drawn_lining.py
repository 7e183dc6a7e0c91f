"""Finishes, openings and treatments for generated rooms, as people line them."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    import random

Data = dict[str, Any]
WALLS = ("gypsum-on-studs", "gypsum-on-studs", "double-gypsum-on-steel", "plaster-on-masonry")
FLOORS = ("carpet-on-felt", "carpet-on-concrete", "parquet-on-concrete", "wood-on-joists", "vinyl")
WOOL: Data = {"125 Hz": 0.25, "250 Hz": 0.6, "500 Hz": 0.9, "1 kHz": 0.9, "2 kHz": 0.9, "4 kHz": 0.9}


def _names(shell: Data) -> list[str]:
    if "outline" in shell:
        return [corner["wall"] for corner in shell["outline"]]
    return ["front", "right", "rear", "left"]


def lined(chance: random.Random, data: Data) -> Data:
    """Return a room made for films, with a carpet and many panels, or a living room with a rug, curtains and few."""
    shell = dict(data["room"])
    wall = chance.choice(WALLS)
    shell["walls"] = [{"id": name, "finish": wall} for name in _names(shell)]
    shell["ceiling"] = {**shell["ceiling"], "finish": chance.choice(WALLS[:3])}
    theatre = chance.random() < 0.5
    shell["floor"] = {"finish": "carpet-on-felt" if theatre else chance.choice(FLOORS)}
    shell["roof_windows"] = "none"
    if "openings" not in shell:
        door = {"id": "door", "kind": "door", "wall": "rear", "width": "0.8 m", "sill": "0 m", "height": "2.0 m"}
        pane = {"id": "window", "kind": "window", "wall": "left", "width": f"{chance.uniform(0.8, 2.0):.2f} m",
                "sill": "0.9 m", "height": "1.1 m"}  # fmt: skip
        shell["openings"] = [door, pane] if chance.random() < 0.6 else [door]
    treatments: list[Data] = []
    panels = chance.randint(6, 18) if theatre else chance.choice((0, 0, 2, 4, 6))
    for number in range(panels):
        on = ("left", "right", "rear", "ceiling")[number % 4]
        treatments.append({
            "id": f"panel-{number}", "kind": "absorber", "on": on, "width": "1.2 m", "height": "0.6 m",
            **({"absorption": WOOL} if chance.random() < 0.5 else {"material": "mineral-wool", "thickness": "50 mm"}),
        })  # fmt: skip
    if shell["floor"]["finish"] not in FLOORS[:2] and chance.random() < 0.6:
        treatments.append({"id": "rug", "kind": "carpet", "on": "floor", "width": "2.4 m", "height": "1.7 m"})
    if chance.random() < 0.4:
        treatments.append({"id": "curtain", "kind": "curtain", "on": "left", "width": "2.0 m", "height": "2.0 m"})
    return {**data, "room": shell, "treatments": treatments or "none"}
