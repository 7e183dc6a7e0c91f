"""Noise by octave: ratings by tangency to families of curves, A-weighting, and what a source in a room comes to.

Octave levels as a mapping from centre frequency in Hz to dB.
"""

from __future__ import annotations

import math
from typing import TYPE_CHECKING, Final

from roomlint.figures.domain import Refused, positive

if TYPE_CHECKING:
    from collections.abc import Mapping

NC_BANDS_HZ: Final = (63.0, 125.0, 250.0, 500.0, 1000.0, 2000.0, 4000.0, 8000.0)
NC_CURVES: Final = {
    15: (47, 36, 29, 22, 17, 14, 12, 11), 20: (51, 40, 33, 26, 22, 19, 17, 16), 25: (54, 44, 37, 31, 27, 24, 22, 21),
    30: (57, 48, 41, 35, 31, 29, 28, 27), 35: (60, 52, 45, 40, 36, 34, 33, 32), 40: (64, 56, 50, 45, 41, 39, 38, 37),
    45: (67, 60, 54, 49, 46, 44, 43, 42), 50: (71, 64, 58, 54, 51, 49, 48, 47), 55: (74, 67, 62, 58, 56, 54, 53, 52),
    60: (77, 71, 67, 63, 61, 59, 58, 57), 65: (80, 75, 71, 68, 66, 64, 63, 62),
}  # fmt: skip
"""Noise criterion curves (ANSI S12.2): 15 to 40 read in a public library and an instrument maker's page, 45 and 50 at
500 Hz in a worked example; the rest of 45 to 65 from memory."""
NR_A: Final = {
    31.5: 55.4, 63.0: 35.4, 125.0: 22.0, 250.0: 12.0, 500.0: 4.8, 1000.0: 0.0, 2000.0: -3.5, 4000.0: -6.1, 8000.0: -8.0,
}  # fmt: skip
NR_B: Final = {
    31.5: 0.681, 63.0: 0.790, 125.0: 0.870, 250.0: 0.930, 500.0: 0.974, 1000.0: 1.0, 2000.0: 1.015, 4000.0: 1.025,
    8000.0: 1.030,
}  # fmt: skip
"""Noise rating, L = a + b NR (ISO R 1996, BS 8233), read in a consultant's public page."""
A_WEIGHTS_DB: Final = {
    31.5: -39.4, 63.0: -26.2, 125.0: -16.1, 250.0: -8.6, 500.0: -3.2, 1000.0: 0.0, 2000.0: 1.2, 4000.0: 1.0,
    8000.0: -1.1,
}  # fmt: skip
"""A-weighting at the octaves (IEC 61672-1, table 3; from memory, held by published sums of whole curves)."""


def criterion_by_octave(levels_db: Mapping[float, float]) -> dict[float, float]:
    """Return the noise criterion curve that each octave reaches; by tangency the highest is that of the whole.

    Between two curves by proportion, 15 under the lowest curve. Bands from 63 Hz to 8 kHz; other ones are left out.
    Refused without any, and above the highest curve. Source: ANSI S12.2, second-hand.
    """
    found = {band: _of_band(place, levels_db[band]) for place, band in enumerate(NC_BANDS_HZ) if band in levels_db}
    if not found:
        raise Refused("a noise criterion needs octaves from 63 Hz to 8 kHz")
    return found


def _of_band(place: int, level_db: float) -> float:
    numbers = list(NC_CURVES)
    curve = [float(NC_CURVES[number][place]) for number in numbers]
    if level_db <= curve[0]:
        return float(numbers[0])
    for number, low, high in zip(numbers, curve, curve[1:], strict=False):
        if level_db <= high:
            return number + 5.0 * (level_db - low) / (high - low)
    raise Refused(f"{level_db:g} dB lie above the highest noise criterion curve")


def rating_by_octave(levels_db: Mapping[float, float]) -> dict[float, float]:
    """Return the noise rating of each octave from 31.5 Hz to 8 kHz, (L - a) / b; the highest is that of the whole.

    Refused without any. Source: ISO R 1996 and BS 8233 by a public page; `NR_A`, `NR_B`.
    """
    found = {band: (level - NR_A[band]) / NR_B[band] for band, level in levels_db.items() if band in NR_A}
    if not found:
        raise Refused("a noise rating needs octaves from 31.5 Hz to 8 kHz")
    return found


def criterion_weighted_db(number: float) -> tuple[float, float]:
    """Return the least and the largest A-weighted level of a background that has a noise criterion, dB.

    It touches its curve in one octave at the least, and in all of them at the most. Between curves by proportion,
    beyond the lowest and the highest by the difference. Source: tangency, `NC_CURVES` and `weighted_db`.
    """
    inside = min(max(number, min(NC_CURVES)), max(NC_CURVES))
    low = min(int(inside // 5 * 5), max(NC_CURVES) - 5)
    share, beyond = (inside - low) / 5.0, number - inside
    curve = [a + share * (b - a) + beyond for a, b in zip(NC_CURVES[low], NC_CURVES[low + 5], strict=True)]
    return _touching_db(dict(zip(NC_BANDS_HZ, curve, strict=True)))


def rating_weighted_db(number: float) -> tuple[float, float]:
    """Return the least and the largest A-weighted level of a background that has a noise rating, dB.

    As for `criterion_weighted_db`, 31.5 Hz to 8 kHz. Source: `NR_A`, `NR_B` and `weighted_db`.
    """
    return _touching_db({band: NR_A[band] + NR_B[band] * number for band in NR_A})


def _touching_db(curve: Mapping[float, float]) -> tuple[float, float]:
    return min(weighted_db({band: level}) for band, level in curve.items()), weighted_db(curve)


def weighted_db(levels_db: Mapping[float, float]) -> float:
    """Return the A-weighted level of octaves, dB: 10 lg sum 10^((L + A) / 10). Refused without any octave.

    Source: IEC 61672-1, `A_WEIGHTS_DB`.
    """
    if not levels_db:
        raise Refused("no octave of the noise is known")
    return 10.0 * math.log10(math.fsum(10.0 ** ((level + A_WEIGHTS_DB[band]) / 10.0)
                                       for band, level in levels_db.items()))  # fmt: skip


def in_room_db(level_1m_db: float, distance_m: float, absorption_m2: float) -> float:
    """Return a source's level at a distance in a room, dB: L(1 m) + 10 lg(1 / r^2 + 8 pi / A).

    The level at 1 m is that over a reflecting floor (ISO 7779), so that L(1 m) = Lw - 10 lg(2 pi); direct and diffuse
    sound add. Distance and absorption above zero, else Refused. Source: Lw + 10 lg(Q / (4 pi r^2) + 4 / A), Q = 2.
    """
    direct = 1.0 / positive("distance", distance_m, "m") ** 2
    return level_1m_db + 10.0 * math.log10(direct + 8.0 * math.pi / positive("absorption", absorption_m2, "m2"))


def absorption_m2(volume_m3: float, decay_s: float) -> float:
    """Return the absorption that a decay tells of, m2: 0.161 V / T. Both above zero, else Refused. Source: Sabine."""
    return 0.161 * positive("volume", volume_m3, "m3") / positive("decay", decay_s, "s")
