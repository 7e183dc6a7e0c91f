"""Sound absorption of materials by octave, kept as data: a row a source, low and high where sources disagree."""

from __future__ import annotations

import json
from functools import cache
from pathlib import Path
from typing import Final, NamedTuple

from roomlint.figures.domain import Refused

BANDS_HZ: Final = (125, 250, 500, 1000, 2000, 4000)
"""Centres of the octave bands for which tables are printed, Hz."""
MID_BANDS_HZ: Final = (500, 1000, 2000)
MOST: Final = 0.99
"""Coefficients of 1 and more are an artefact of the measuring method; formulas with a logarithm need less than 1."""
LEAST_SPREAD: Final = 0.10
"""With absorption measured for the room itself Sabine's and Eyring's decay come within 10 %: no table is better than
that. J. Acoust. Soc. Am. 152(2), 1158 (2022), abstract read."""
_TABLE: Final = Path(__file__).with_name("materials.json")


class Row(NamedTuple):
    """One source's coefficients of one material, by octave from 125 Hz to 4 kHz."""

    material: str
    of: str
    values: tuple[float, ...]
    source: str
    grade: str


class Range(NamedTuple):
    """What sources give for one octave: the lowest and the highest coefficient."""

    low: float
    high: float

    def at(self, share: float) -> float:
        """Return a coefficient of the range: -1 is its low end, 0 its middle, 1 its high end."""
        middle, half = (self.low + self.high) / 2.0, (self.high - self.low) / 2.0
        return min(max(middle + share * half, 0.0), MOST)


@cache
def rows() -> tuple[Row, ...]:
    """Return every row of the table."""
    data = json.loads(_TABLE.read_text(encoding="utf-8"))
    return tuple(Row(**(row | {"values": tuple(row["values"])})) for row in data["rows"])


@cache
def coefficient(materials: tuple[str, ...], band_hz: int) -> Range:
    """Return the range of the absorption coefficient over all sources of one material, or of several it may be.

    Never narrower than 10 % to either side of its middle. Octave centre in Hz, one of `BANDS_HZ`, and a material of the
    table, else Refused. Source: a row each in `materials.json`.
    """
    if band_hz not in BANDS_HZ:
        raise Refused(f"tables of absorption are for octaves from 125 Hz to 4 kHz, not for {band_hz} Hz")
    number = BANDS_HZ.index(band_hz)
    values = [row.values[number] for row in rows() if row.material in materials]
    if not values:
        raise Refused(f"no table gives the absorption of {' or '.join(materials)}")
    return around(min(values), max(values))


def around(low: float, high: float) -> Range:
    """Return a range that is at least 10 % wide to either side of its middle, cut to 0 and 0.99."""
    middle = (low + high) / 2.0
    half = max((high - low) / 2.0, LEAST_SPREAD * middle)
    return Range(max(middle - half, 0.0), min(middle + half, MOST))
