"""Rooms and sheets that the cases of the chapters cable and heat start from."""

from __future__ import annotations

from typing import Any

from channel_rooms import amplifier, box, feed

from roomlint.sample import room, speaker
from roomlint.testing import changed

Data = dict[str, Any]
RUN: Data = {
    "id": "run", "carries": "loudspeaker", "from": "amp", "to": "left", "length": "15 m", "conductor": "14 AWG",
    "conductors": 2, "outer_diameter": "8 mm", "marking": "CL3", "in_wall": True, "plenum": False, "riser": False,
    "raceway": "none", "beside_power": "300 mm", "edge_distance": "40 mm", "nail_plate": False, "bend_radius": "60 mm",
    "penetrates": [],
    "power_exception": "none",
}  # fmt: skip
"""A loudspeaker's cable in a wall, as it should be."""
LINK: Data = {
    **RUN, "carries": "network", "length": "20 m", "conductor": "24 AWG", "conductors": 8, "outer_diameter": "6 mm",
    "marking": "CM", "active": False, "powered": "type-4", "bundle": 12, "ambient": "45 degC",
}  # fmt: skip
"""A network cable that carries power, in a bundle under a roof."""
SHEETS = [box("8 ohm", "8 ohm"), amplifier(2, damping_factor=200, output_class="class-2")]
WIRED: Data = changed(
    room(speaker("left", "M+030", -1.5, 2.6, product="box")),
    {
        "project.codes": {"electrical": "nec2023"},
        "electronics": {
            "amplifiers": [{"id": "amp", "product": "amp-two", "feeds": [feed(1, "left")]}],
            "racks": "none",
        },
        "cables": [RUN],
        "raceways": "none",
    },
)
LINKED = changed(WIRED, {"cables": [LINK]})
OTHERS: Data = {"bs7671": "BS 7671", "iec60364": "IEC 60364", "asnzs3000": "AS/NZS 3000"}
EVERY_CODE = ("nec2017", "nec2020", "nec2023", "nec2026", *OTHERS, "other")
UNSAID = changed(WIRED, {"cables": None, "raceways": None})
"""A room that does not speak of cables."""
BARE = changed(WIRED, {"cables": "none"})
"""A room that has none."""


def piped(*cables: Data, **more: Any) -> Data:
    """Return the room with a raceway and what runs in it."""
    pipe = {"id": "pipe", "kind": "emt", "size": "3/4", "length": "6 m", **more}
    inside = [{**RUN, "id": f"run-{number}", "raceway": "pipe", **cable} for number, cable in enumerate(cables, 1)]
    pipe, *inside = ({key: value for key, value in one.items() if value is not None} for one in (pipe, *inside))
    return changed(WIRED, {"raceways": [pipe], "cables": inside})


def under(code: str, base: Data = WIRED) -> Data:
    """Return a room under another electrical code."""
    return changed(base, {"project.codes.electrical": code})


def sheet(name: str = "hot", **more: Any) -> Data:
    """Return the sheet of an amplifier of seven channels of 100 W."""
    data: Data = {
        "roomlint_product": 1, "id": name, "kind": "amplifier", "maximum_inlet": "35 degC", "power": "262.5 W",
        "amplifier": {"channels": 7, "power": "100 W", "power_into": "8 ohm", "technology": "class-ab"}, **more,
    }  # fmt: skip
    return {key: value for key, value in data.items() if value is not None}


RACKED: Data = changed(
    room(speaker("left", "M+030", -1.5, 2.6)),
    {
        "cables": "none",
        "raceways": "none",
        "electronics": {
            "amplifiers": [{"id": "amp", "product": "hot"}],
            "racks": [{"id": "rack", "enclosed": True, "airflow": "100 m3/h", "inlet": "24 degC", "contains": ["amp"]}],
        },
    },
)
"""An amplifier in a closed rack with a fan."""
