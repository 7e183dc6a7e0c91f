"""Slips of the pen in a room in which all is well: each is refused, fails or asks; none passes in silence."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

import pytest
from rich_rooms import BOOK, LOCATED, Data, rich_room, sheets

from roomlint.review.engine import review_room
from roomlint.testing import changed, room_of

if TYPE_CHECKING:
    from collections.abc import Mapping

ROOM = "attic/attic"
LOADS = "circuits.0.loads"
OUTLETS = "circuits.0.receptacles"
WAVY = {"id": "drape", "kind": "curtain", "on": "rear", "from_wall_left": "1.5 m", "bottom": "0 m", "width": "1.4 m",
        "height": "2.1 m"}  # fmt: skip
BEAM = {"id": "beam", "kind": "beam", "from_left": "0 m", "from_front": "2.0 m", "width": "4.2 m", "depth": "0.2 m",
        "bottom": "1.05 m", "top": "1.3 m"}  # fmt: skip


def put(left: float, front: float, height: float) -> dict[str, str]:
    return {"from_left": f"{left} m", "from_front": f"{front} m", "height": f"{height} m"}


SLIPS: dict[str, Mapping[str, Any]] = {
    # Places
    "rack in the door's way": {"electronics.racks.0.position": put(2.1, 4.3, 0.0)},
    "rack on a seat": {"electronics.racks.0.position": put(2.1, 2.7, 0.0)},
    "rack through a loudspeaker": {
        "electronics.racks.0.position": put(0.6, 4.4, 0.0), "electronics.racks.0.height": "1.4 m",
    },
    "rack through the wall": {"electronics.racks.0.position": put(4.1, 3.0, 0.0)},
    "projector at the height of a head": {"picture.projector.lens": put(2.1, 2.85, 1.1)},
    "projector in front of the screen": {"picture.projector.lens": put(2.1, 0.2, 4.0)},
    "picture behind the seats": {"picture.centre": put(2.1, 4.6, 1.3), "picture.mounting.on": "rear"},
    "picture through the ceiling": {"picture.centre.height": "2.2 m"},
    "picture across a window": {"picture.mounting.on": "left", "picture.centre": put(0.1, 1.7, 1.3)},
    "seat that faces the rear": {"seats.0.facing": "180 deg"},
    "ear on the floor": {"seats.1.ear.height": "0.4 m"},
    "seat in the wall": {"seats.0.ear.from_left": "0.05 m"},
    "two seats in one place": {"seats.0.ear.from_left": "2.10 m"},
    "subwoofer under a seat": {"subwoofers.0.position": put(2.1, 2.85, 0.2)},
    "subwoofer in the door's way": {"subwoofers.1.position": put(2.3, 4.5, 0.2)},
    "subwoofer on the floor at two metres": {"subwoofers.0.position.height": "2.0 m"},
    "loudspeaker outside": {"loudspeakers.0.position.from_left": "9 m"},
    "left and right exchanged": {"loudspeakers.0.label": "M-030", "loudspeakers.1.label": "M+030"},
    "one label twice": {"loudspeakers.1.label": "M+030"},
    "a subwoofer's label on a loudspeaker": {"loudspeakers.2.label": "LFE1"},
    "wall loudspeaker under the ceiling": {"loudspeakers.3.position": put(1.6, 3.0, 2.5)},
    "ceiling loudspeaker on a wall by its key": {"loudspeakers.9.mounting.on": "left"},
    "loudspeaker across the window": {"loudspeakers.3.position.from_front": "1.7 m"},
    "loudspeaker on another wall than it is at": {"loudspeakers.0.mounting.on": "rear"},
    "beam before the fronts": {"room.obstacles": [BEAM]},
    "closed screen before the centre": {"picture.transparent": False},
    "display before the centre": {"picture.kind": "display"},
    "centre said to be beside the screen": {"loudspeakers.2.behind_screen": False},
    "left said to be behind the screen": {"loudspeakers.0.behind_screen": True},
    "curtain across the door": {"treatments.2": WAVY},
    "panel across the window": {"treatments.0.from_wall_left": "2.6 m"},
    "panel past the end of its wall": {"treatments.0.from_wall_left": "4.5 m"},
    "receptacle past the end of its wall": {f"{OUTLETS}.0.from_wall_left": "9 m"},
    "receptacle of no wall": {f"{OUTLETS}.0.wall": None, f"{OUTLETS}.0.from_wall_left": None},
    "door wider than its wall": {"room.openings.0.width": "9 m"},
    "door that opens onto a loudspeaker": {"room.openings.0.from_wall_left": "2.9 m"},
    "window above the ceiling": {"room.openings.1.sill": "2.5 m"},
    # What drives it
    "loudspeaker fed twice": {"electronics.amplifiers.1.feeds.0.loudspeakers": ["left"]},
    "loudspeaker that nothing feeds": {"electronics.amplifiers.0.feeds.0": None},
    "crossover at 20 kHz": {"calibration.settings.0.crossover": "20 kHz"},
    "delay of three seconds": {"calibration.settings.0.delay": "3 s"},
    "delay and distance": {"calibration.settings.2.distance": "9 m"},
    "subwoofer inverted": {"subwoofers.0.inverted": True},
    "low-pass at 30 Hz": {"subwoofers.0.low_pass": "30 Hz"},
    # Mounts
    "box listing at a ceiling": {"picture.projector.mounting.box": {"document": "l 1", "marked_mass": "23 kg"}},
    "no second support": {"picture.projector.mounting.secondary": "none"},
    "second support of 50 N": {"picture.projector.mounting.secondary.rating": "50 N"},
    "second support of 100 MN": {"picture.projector.mounting.secondary.rating": "100 MN"},
    "drywall screws": {"loudspeakers.0.mounting.fixing.fastener": "drywall-screw"},
    "into board": {"loudspeakers.0.mounting.fixing.into": "board"},
    "a mount into concrete in a wood wall": {"loudspeakers.0.mounting.fixing.into": "concrete"},
    "one screw": {"picture.mounting.fixing.count": 1, "picture.mounting.fixing.top_count": 1},
    "short screws": {"picture.mounting.fixing.length": "1/2 in", "picture.mounting.fixing.thread": "1/2 in"},
    "accessories of 4 t": {"picture.mounting.accessories": "4000 kg"},
    "accessories of 150 kg": {"picture.mounting.accessories": "150 kg"},
    "fall of a metre": {"picture.projector.mounting.secondary_fall": "1 m"},
    "panel of foam without an approval": {"treatments.0.material": "open-cell-foam",
                                            "treatments.0.thermal_barrier": False},
    "panel that spreads flame": {"treatments.0.flame_spread": 400},
    "rack without a strap": {"electronics.racks.0.mounting.strap": "none", "electronics.racks.0.mass": "80 kg",
                             "project.children": True, "project.codes.seismic_category": "d"},
    "masonry behind lag screws": {"room.walls.0.framing.kind": "masonry"},
    # Circuits
    "breaker of 300 A": {"circuits.0.rating": "300 A"},
    "breaker of 60 A": {"circuits.0.rating": "60 A"},
    "thin conductor": {"circuits.0.conductor": "18 AWG"},
    "circuit of 100 m": {"circuits.0.length": "100 m"},
    "current against power": {f"{LOADS}.0.current": "0.1 A"},
    "a load that its sheet denies": {f"{LOADS}.0.apparent_power": "60 VA"},
    "lifted earth": {"circuits.0.earth_lifted": True},
    "cord in the wall": {f"{LOADS}.0.cord_concealed": True},
    "dedicated with many loads": {"circuits.0.dedicated": True},
    "no ground-fault protection at a sink": {"circuits.0.gfci": False, f"{OUTLETS}.0.sink": "0.5 m"},
    "a British plug": {f"{LOADS}.0.plug": "bs1363"},
    "code of another country": {"project.codes.electrical": "bs7671"},
    "a load on nothing": {f"{LOADS}.0.feeds": None},
    "not known what an amplifier is fed by": {"circuits": None},
}  # fmt: skip
BAD = frozenset({"fail", "review", "open"})


def bad(outcome: Any) -> set[tuple[str, str]]:
    return {(v.rule, v.subject) for v in outcome.verdicts if str(v.kind) in BAD}


@pytest.fixture(scope="module")
def well() -> Data:
    return rich_room(ROOM).data


@pytest.mark.parametrize("slip", SLIPS)
def test_a_slip_is_told(well: Data, slip: str) -> None:
    ways = [tuple(int(step) if step.isdigit() else step for step in path.split(".")) for path in SLIPS[slip]]
    room = rich_room(ROOM)
    read = {rule.id for way in ways for rule in room.rules_of(way)}
    rules = [rule for rule in BOOK.rules if rule.id in read or rule.chapter in {"layout", "file", "mount"}]
    before = {key for key, verdict in room.said.items() if str(verdict.kind) in BAD}
    try:
        outcome = review_room(room_of(changed(well, SLIPS[slip]), sheets()), rules)
    except ValueError as refused:
        told = str(refused)
        outcome = None
    if outcome is None:
        assert LOCATED.match(told)
        return
    assert not outcome.troubles
    assert bad(outcome) - before


def test_the_room_they_are_put_into_is_well() -> None:
    levels = {str(verdict.level) for verdict in rich_room(ROOM).said.values() if str(verdict.kind) == "fail"}
    assert not levels & {"error", "warning"}
