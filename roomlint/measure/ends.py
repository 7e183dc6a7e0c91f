"""How far a search for a clearance goes: a figure at its end says so far or farther, and is told so."""

from __future__ import annotations

from typing import Final

FAR_M: Final = 0.5
"""A clearance of half a metre is enough for whatever asks; how much more it is, nobody looks."""
OVER_ALL_M: Final = 1.0
"""What a line clears heads by when it passes none: how far is nobody's question."""
ENDS: Final = {
    "overlap": -FAR_M,
    "clearance to a door's leaf": FAR_M,
    "clearance before a door": FAR_M,
    "clearance over heads": OVER_ALL_M,
    "sight over heads": OVER_ALL_M,
    "sight beside": OVER_ALL_M,
    "beam over a head": OVER_ALL_M,
}
"""By the name of a figure, the value at which it ends."""
