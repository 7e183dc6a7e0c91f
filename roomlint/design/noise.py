"""What is heard when nothing plays: the room's background, and what makes noise in it."""

from __future__ import annotations

from typing import TYPE_CHECKING

from roomlint.design.element import Element
from roomlint.design.keys import ident, number
from roomlint.design.measured import quantity
from roomlint.design.parts import Table, point, several

if TYPE_CHECKING:
    from collections.abc import Mapping

    from roomlint.design.quantity import Quantity

BANDS = {
    "63 Hz": 63.0, "125 Hz": 125.0, "250 Hz": 250.0, "500 Hz": 500.0, "1 kHz": 1000.0, "2 kHz": 2000.0, "4 kHz": 4000.0,
    "8 kHz": 8000.0,
}  # fmt: skip
"""The octave bands of noise, as the file writes them and by their centre frequency in Hz."""


def octaves(about: str) -> Table[Mapping[float, Quantity] | None]:
    """Declare levels by octave."""
    return Table(
        about, BANDS, quantity("Level of the octave", "level", low=-20.0, high=120.0, zero=True, example="31 dB")
    )


class NoiseSource(Element):
    """Something in the room that makes noise: a grille, a fan, a rack."""

    KIND = "noise source"

    id_key = ident()
    position = point("Where it is.")
    level_db = quantity("A-weighted level at 1 m.", "level", low=0.0, high=110.0, zero=True, example="28 dB")
    octaves = octaves("Level at 1 m by octave, instead of level.")


class Noise(Element):
    """What is heard when nothing plays."""

    KIND = "noise"
    ID = "noise"

    octaves = octaves("Background by octave at the seats, equipment off, ventilation on.")
    nc = number("Noise criterion of the background, where only that is known.", 0, 70, example=22)
    nr = number("Noise rating of the background, where only that is known.", 0, 90, example=15)
    level_db = quantity(
        "A-weighted background, where its octaves are not known.", "level", low=0.0, high=110.0, zero=True,
        example="30 dB",
    )  # fmt: skip
    sources = several("What makes noise in the room beside the projector, or none.", NoiseSource, most=40,
                      what="noise source", or_none=True)  # fmt: skip
