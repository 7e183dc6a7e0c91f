"""The curves of a room: each a function of its figures that returns a chart, or what the chart lacks.

A further curve is a further function in `CURVES`; whatever draws charts draws it.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from roomlint.design.base import Missing
from roomlint.figures.domain import Refused
from roomlint.measure.scene import Ax, Chart, Curve
from roomlint.measure.seat_bass import BAND_HZ, CLOSED, DECAYS_S, HIGH_HZ, LOW_HZ

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator

    from roomlint.measure import Figures

_STEP_DB: Final = 6.0
_DROWNED_DB: Final = 48.0
"""How far below the loudest a chart reaches: what is deeper is not heard, and would flatten all else."""
_AT_DECAY: Final = f"decay of {DECAYS_S[1]:.1f} s for every mode"


def bass(figures: Figures) -> Chart | None:
    """Level of the subwoofers together at each seat, with the spread over the seats and the room's modes.

    Decibels against one of the sources at 1 m in free field. None where the file states that there is nothing to hear.
    """
    design = figures.design
    if not design.subwoofers:
        return None
    title = "Bass at each seat, all subwoofers together"
    x = Ax("frequency", "Hz", float(LOW_HZ), float(HIGH_HZ), by_octave=True)
    try:
        levels = figures.bass.levels_db(DECAYS_S[1])
        modes = figures.bass.mode_frequencies_hz()
    except Missing as missing:
        return Chart("bass", title, x, Ax("level", "dB", -30.0, 0.0), lacks=(missing.element.words, missing.key))
    except Refused as refusal:
        return Chart("bass", title, x, Ax("level", "dB", -30.0, 0.0), lacks=(str(refusal), ""))
    first, last = BAND_HZ.index(LOW_HZ), BAND_HZ.index(HIGH_HZ) + 1
    hz = BAND_HZ[first:last]
    rows = [row[first:last] for row in levels]
    top = _STEP_DB * (max(max(row) for row in rows) // _STEP_DB + 1.0)
    low = max(_STEP_DB * (min(min(row) for row in rows) // _STEP_DB), top - _DROWNED_DB)
    curves = tuple(
        Curve(seat.words, tuple(zip(hz, row, strict=True)), seat.key)
        for seat, row in zip(figures.bass.placed_seats(), rows, strict=True)
    )
    each = zip(hz, zip(*rows, strict=True), strict=True)
    spread = tuple((at, min(there), max(there)) for at, there in each) if len(rows) > 1 else ()
    return Chart(
        "bass", title, x, Ax("level", "dB", low, top), curves, spread, "spread over the seats",
        tuple((mode, f"{mode:.1f} Hz") for mode in modes if LOW_HZ <= mode <= HIGH_HZ), "modes of the room",
        (_AT_DECAY, CLOSED),
    )  # fmt: skip


CURVES: Final[tuple[Callable[[Figures], Chart | None], ...]] = (bass,)


def charts(figures: Figures) -> Iterator[Chart]:
    """Yield the charts that there are."""
    for curve in CURVES:
        chart = curve(figures)
        if chart is not None:
            yield chart
