"""Rooms that the cases of chapter mains share: one circuit of North America, one of Europe, one of Britain."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from roomlint.edges import Edge
from roomlint.testing import Case, changed

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence

# A 20 A circuit in 12 AWG, 50 ft to the farthest outlet, with a 9 A rack that runs all evening and a 4 A vacuum.
ROOM: dict[str, Any] = {
    "roomlint": 1,
    "project": {"codes": {"electrical": "nec2023"}},
    "survey": {"tolerance": "0 mm"},
    "room": {
        "size": {"width": "4 m", "length": "5 m"},
        "ceiling": {"shape": "flat", "height": "2.4 m"},
        "level": "ground",
    },
    "picture": "none",
    "panels": [{"id": "service", "kind": "service"}, {"id": "subpanel", "kind": "subpanel", "fed_from": "service"}],
    "electronics": {"amplifiers": [{"id": "amp", "product": "seven"}]},
    "circuits": [
        {
            "id": "c1",
            "rating": "20 A",
            "voltage": "120 V",
            "conductor": "12 AWG",
            "material": "copper",
            "length": "50 ft",
            "dedicated": False,
            "feeds_lighting": False,
            "new": True,
            "afci": True,
            "gfci": False,
            "rcd": "30 mA",
            "sequenced": True,
            "earth_lifted": False,
            "panel": "subpanel",
            "feeder_drop": "1.0 %",
            "receptacles": [
                {
                    "id": "r1",
                    "rating": "20 A",
                    "form": "nema-5-20",
                    "outlets": 2,
                    "place": "habitable",
                    "sink": "none",
                    "height": "0.4 m",
                    "facing_up": False,
                    "listed_for_floor": False,
                    "tamper_resistant": True,
                    "dimmed": False,
                }
            ],
            "loads": [
                {
                    "id": "rack",
                    "feeds": "amp",
                    "current": "9 A",
                    "continuous": True,
                    "connection": "plug",
                    "plug": "nema-5-15",
                    "receptacle": "r1",
                    "cord_concealed": False,
                    "linear_supply": True,
                },
                {
                    "id": "vacuum",
                    "current": "4 A",
                    "continuous": False,
                    "connection": "plug",
                    "plug": "nema-5-15",
                    "receptacle": "r1",
                    "cord_concealed": False,
                    "linear_supply": False,
                },
            ],
        }
    ],
}
SEVEN: dict[str, Any] = {
    "roomlint_product": 1,
    "id": "seven",
    "kind": "amplifier",
    "apparent_power": "1080 VA",
    "amplifier": {"channels": 7, "power": "100 W", "technology": "class-ab"},
}
C = "circuits.0"
RACK, VACUUM, OUTLET = f"{C}.loads.0", f"{C}.loads.1", f"{C}.receptacles.0"
RACK_KEY, OUTLET_KEY = "load/rack+circuit/c1", "receptacle/r1+circuit/c1"
CODE = "project.codes.electrical"
NO_CODE = {CODE: None}
NONE_AT_ALL = changed(ROOM, {"circuits": []})
UNSAID = changed(ROOM, {"circuits": None})

GERMAN = changed(
    ROOM,
    {
        CODE: "iec60364", "project.region": "eu", f"{C}.rating": "16 A", f"{C}.voltage": "230 V",
        f"{C}.conductor": "2.5 mm2", f"{C}.installation": "conduit", f"{C}.length": "20 m", f"{C}.panel": "service",
        f"{C}.feeder_drop": None, f"{OUTLET}.rating": "16 A", f"{OUTLET}.form": "cee7-3", f"{RACK}.plug": "cee7-7",
        f"{VACUUM}.plug": "cee7-17", f"{C}.afci": None, f"{C}.gfci": None,
    },
)  # fmt: skip
"""A 16 A circuit in 2.5 mm2: 13 A on it."""
BRITISH = changed(
    GERMAN,
    {
        CODE: "bs7671", "project.region": "uk", f"{C}.rating": "32 A", f"{C}.arrangement": "ring",
        f"{C}.installation": "clipped", f"{OUTLET}.rating": "13 A", f"{OUTLET}.form": "bs1363",
        f"{RACK}.plug": "bs1363", f"{RACK}.fuse": "13 A", f"{VACUUM}.plug": "bs1363", f"{VACUUM}.fuse": "5 A",
        f"{OUTLET}.spur": "none",
    },
)  # fmt: skip
"""A 32 A ring in 2.5 mm2."""
AUSTRALIAN = changed(
    GERMAN,
    {
        CODE: "asnzs3000", "project.region": "au", f"{C}.rating": "20 A", f"{OUTLET}.rating": "10 A",
        f"{OUTLET}.form": "as3112-10", f"{RACK}.plug": "as3112-10", f"{VACUUM}.plug": "as3112-10",
    },
)  # fmt: skip
NFPA = "NFPA 70 (2023), worked by hand"


def on(
    rule: str,
    kind: str,
    changes: Mapping[str, object] | None = None,
    *,
    room: Mapping[str, Any] = ROOM,
    products: Sequence[Mapping[str, Any]] = (SEVEN,),
    **more: Any,
) -> Case:
    """Return a case of one of the circuits above with some keys changed."""
    return Case(rule, kind, changed(room, changes or {}), products=products, **more)


def silent(*rules: str) -> list[Case]:
    """Return what is said of rooms without circuits: none there are, or nobody says."""
    empty = [Case(rule, "notApplicable", NONE_AT_ALL, products=(SEVEN,)) for rule in rules]
    return empty + [Case(rule, "open", UNSAID, products=(SEVEN,), says="circuits") for rule in rules]


def edge(rule: str, path: str, low: float, high: float, edges: int, **more: Any) -> Edge:
    """Return an edge of the North American circuit."""
    room = changed(more.pop("room", ROOM), more.pop("changes", {}))
    return Edge(rule, room, path, low, high, edges, products=(SEVEN,), **more)
