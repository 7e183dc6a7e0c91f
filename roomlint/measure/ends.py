"""How far a search for a clearance goes: a figure at its end says so far or farther, and is told so."""

from __future__ import annotations

from typing import Final

FAR_M: Final = 0.5
"""A clearance of half a metre is enough for whatever asks; how much more it is, nobody looks."""
ENDS: Final = {"overlap": -FAR_M, "clearance to a door's leaf": FAR_M}
"""By the name of a figure, the value at which it ends."""
