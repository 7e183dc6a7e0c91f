"""What people in the trade call things, and the words that the files have for them: hints for who types the former."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

if TYPE_CHECKING:
    from collections.abc import Collection

SAID: Final[dict[str, tuple[str, ...]]] = {
    # What stands in a file.
    "loudspeakers": ("speaker", "speakers", "cabinets", "monitors"),
    "subwoofers": ("sub", "subs", "woofer", "woofers", "bass"),
    "seats": ("chair", "chairs", "sofa", "sofas", "couch", "seating", "listener", "listeners", "rows"),
    "picture": ("tv", "television", "screen", "display", "monitor", "projection", "image"),
    "electronics": ("amp", "amps", "amplifiers", "processor", "receiver", "rack", "racks", "equipment", "gear"),
    "cables": ("wire", "wires", "wiring", "cabling", "leads"),
    "raceways": ("conduit", "conduits", "trunking", "ducts"),
    "openings": ("door", "doors", "window", "windows", "doorway", "doorways"),
    "roof_windows": ("skylight", "skylights", "rooflight", "rooflights", "dormer"),
    "obstacles": ("columns", "posts", "furniture", "chimney"),
    "risers": ("platform", "platforms", "stage", "podium"),
    "treatments": ("acoustics", "absorbers", "diffusers", "traps", "curtains", "drapes", "absorption"),
    "circuits": ("power", "breakers", "electrical", "electricity", "mains"),
    "receptacles": ("sockets", "outlets", "socket-outlets"),
    "panels": ("panelboard", "consumer-unit", "fuse-box", "distribution-board"),
    "listening_modes": ("modes", "scenes"),
    "calibration": ("setup", "tuning", "alignment"),
    "size": ("dimensions", "dims"),
    "display": ("tv", "television", "panel", "monitor", "flat-panel"),
    "projection": ("projector", "screen", "beamer"),
    "diagonal": ("size", "inches"),
    "maximum_level": ("max-spl", "spl", "max-level", "maximum-spl", "max-output"),
    "horizontal_coverage": ("dispersion", "coverage", "beamwidth", "directivity"),
    "low_limit": ("frequency-response", "bandwidth", "f3", "low-cutoff", "extension"),
    "sensitivity": ("efficiency",),
    "impedance": ("nominal-impedance", "ohms", "resistance"),
    "power_rating": ("power", "watts", "power-handling", "rms"),
    "apparent_power": ("consumption", "nameplate", "va", "power-consumption"),
    "rated_mass": ("capacity", "max-load", "load", "weight-capacity", "rating"),
    "patterns": ("vesa", "hole-patterns"),
    "pattern": ("vesa", "hole-pattern"),
    "length": ("long", "depth"),
    "id": ("name",),
    "title": ("name",),
    "label": ("channel",),
    "from_left": ("x", "left"),
    "from_right": ("right",),
    "from_front": ("y", "front"),
    "from_rear": ("rear", "back"),
    "rear": ("back", "behind"),
    "height": ("z", "high"),
    "swivel": ("pan", "yaw", "toe-in"),
    "azimuth": ("angle", "pan", "yaw"),
    "tilt": ("pitch",),
    "elevation": ("pitch",),
    "mounting": ("mount", "bracket", "fixed-to", "mounted"),
    "fixing": ("screws", "bolts", "fasteners", "fixings", "anchors"),
    "mass": ("weight",),
    "product": ("model", "type"),
    "sill": ("sill-height", "bottom"),
    "finish": ("surface", "lining", "covering"),
    "species": ("timber", "lumber", "wood"),
    # What carries, and what is before it.
    "stud": ("studs", "timber", "timber-stud", "wood"),
    "wood-stud": ("stud", "studs", "timber", "timber-stud", "wood", "stick-frame", "stud-wall"),
    "steel-stud": ("metal", "metal-stud", "metal-studs", "steel", "steel-studs"),
    "joist": ("joists", "rafter", "rafters", "ceiling-joist"),
    "masonry": ("brick", "bricks", "brickwork", "stone", "solid-block"),
    "hollow-block": ("block", "blocks", "cmu", "cinder-block", "blockwork", "hollow-brick"),
    "gypsum": ("drywall", "plasterboard", "wallboard", "gypsum-board", "gyp"),
    "board": ("drywall", "plasterboard", "wallboard", "gypsum", "gypsum-board"),
    "plaster-on-lath": ("lath", "lath-and-plaster", "plaster"),
    # What holds in it.
    "lag-screw": ("lag", "lags", "lag-bolt", "coach-screw", "coach-bolt"),
    "wood-screw": ("screw", "screws"),
    "through-bolt": ("bolt", "bolts"),
    "expansion-anchor": ("anchor", "anchors", "sleeve-anchor", "wedge-anchor", "wall-plug", "plug"),
    "toggle": ("toggle-bolt", "toggle-bolts", "butterfly", "hollow-wall-anchor"),
    "adhesive-anchor": ("resin-anchor", "chemical-anchor"),
    "adhesive": ("glue", "tape"),
    # What it looks like.
    "mono-pitch": ("slope", "sloped", "sloping", "pitched", "lean-to", "shed", "single-pitch"),
    "gable": ("ridge", "ridged", "vault", "vaulted", "peaked", "duo-pitch"),
    "tray": ("coffered", "dropped", "recessed"),
    "flat": ("level",),
    "articulated": ("arm", "full-motion", "cantilever"),
    "fixed": ("flush", "low-profile"),
    "in": ("inward", "inwards", "into"),
    "out": ("outward", "outwards"),
    # What runs in a cable, and where the job is.
    "basement": ("cellar", "lower-ground"),
    "ground": ("ground-floor", "main"),
    "upper": ("upstairs", "first-floor"),
    "attic": ("loft", "top-floor"),
    "loudspeaker": ("speaker",),
    "line-level": ("audio", "signal", "interconnect", "line"),
    "network": ("ethernet", "lan", "data"),
    "mains": ("power", "ac", "line-voltage"),
    "aluminium": ("aluminum", "alu", "al"),
    "copper": ("cu",),
    "uk": ("gb", "england", "britain", "great-britain", "united-kingdom", "scotland", "wales"),
    "us": ("usa", "america", "united-states"),
    "eu": ("europe", "germany", "france", "italy", "spain", "netherlands", "austria"),
    "rough-in": ("first-fix", "install", "installation", "prewire", "pre-wire"),
    "handover": ("as-built", "complete", "commissioning", "final", "done"),
    "design": ("concept", "proposal", "plan", "draft"),
}  # fmt: skip
"""For each word of the files what else people say; one such word may mean different things at different keys."""


def ours(word: str, known: Collection[str]) -> str | None:
    """Return the word of the files for what the trade calls otherwise, if it is one that may stand here."""
    plain = word.strip().casefold().replace("_", "-").replace(" ", "-")
    return next((name for name, said in SAID.items() if name in known and plain in said), None)
