"""The curves of a room: each a function of its figures that returns a chart, or what the chart lacks.

A further curve is a further function in `CURVES`; whatever draws charts draws it.
"""

from __future__ import annotations

import math
from typing import TYPE_CHECKING, Final

from roomlint.design.base import Missing
from roomlint.figures.absorption import BANDS_HZ, MID_BANDS_HZ
from roomlint.figures.domain import Refused
from roomlint.measure.scene import Ax, Chart, Curve
from roomlint.measure.seat_bass import BAND_HZ, CLOSED, HIGH_HZ, LOW_HZ

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator

    from roomlint.measure import Figures
    from roomlint.measure.scene import Spot2

_STEP_DB: Final = 6.0
_DROWNED_DB: Final = 48.0
"""How far below the loudest a chart reaches: what is deeper is not heard, and would flatten all else."""
_STEP_S: Final = 0.2
_LEAST_TOP_S: Final = 0.8
"""What a chart of decay reaches up to at the least: one of a dead room is no zoom into nothing."""


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
        levels = figures.bass.levels_db()
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
        (f"decay of {figures.bass.decays_s(figures.world)[1]:.2g} s for every mode", CLOSED),
    )  # fmt: skip


def decay(figures: Figures) -> Chart | None:
    """Decay of the room by octave, with its range, the octaves that the mid-band decay stands for, and Schroeder's.

    None where no surface says its finish: the room has no decay that anybody could tell.
    """
    if all(surface.finish is None for surface in figures.design.shell.surfaces):
        return None
    title = "Decay by octave, from tables of absorption"
    x = Ax("frequency", "Hz", float(BANDS_HZ[0]), float(BANDS_HZ[-1]), by_octave=True)
    view = figures.decaying
    try:
        found = [view.band(band) for band in BANDS_HZ]
        edge = view.schroeder().value
    except Missing as missing:
        return Chart("decay", title, x, Ax("decay", "s", 0.0, 1.0), lacks=(missing.element.words, missing.key))
    except Refused as refusal:
        return Chart("decay", title, x, Ax("decay", "s", 0.0, 1.0), lacks=(str(refusal), ""))
    spread = tuple(
        (float(band), max(one.value - one.u, 0.0), one.value + one.u) for band, one in zip(BANDS_HZ, found, strict=True)
    )
    top = max(_LEAST_TOP_S, _STEP_S * math.ceil(max(high for _, _, high in spread) / _STEP_S))
    points = tuple((float(band), one.value) for band, one in zip(BANDS_HZ, found, strict=True))
    return Chart(
        "decay", title, x, Ax("decay", "s", 0.0, top), (Curve("decay", points),), spread, "its range",
        ((edge, f"{edge:.0f} Hz"),) if x.low <= edge <= x.high else (), "Schroeder frequency, single modes below it",
        tuple(dict.fromkeys(words for one in found for words in one.assumes)),
        "mid-band decay", (float(MID_BANDS_HZ[0]), float(MID_BANDS_HZ[-1])),
    )  # fmt: skip


def levels(figures: Figures) -> Chart | None:
    """Full scale at the reference seat by what ends it: what each amplifier gives, what each loudspeaker bears.

    None where no loudspeaker has a sheet: all of them would be unknown, and the findings ask for the sheets.
    """
    design, view = figures.design, figures.levels
    seat = next((seat for seat in design.seats if seat.reference or len(design.seats) == 1), None)
    sources = design.loudspeakers
    if seat is None or all(source.product is None for source in sources):
        return None
    amplified: list[Spot2] = []
    borne: list[Spot2] = []
    lacks: dict[int, tuple[str, str]] = {}
    assumes: dict[str, None] = {}
    for number, source in enumerate(sources):
        ways = [(borne, view.borne)]
        if not figures.routing.is_active(source):
            ways.append((amplified, view.amplified))
        for points, compute in ways:
            try:
                found = compute(source, seat)
            except Missing as missing:
                lacks.setdefault(number, (missing.element.words, missing.key))
            except Refused as refusal:
                lacks.setdefault(number, (str(refusal), ""))
            else:
                points.append((float(number), found.value))
                assumes |= dict.fromkeys(found.assumes)
    title = f"Full scale at {seat.id}: what each loudspeaker reaches"
    x = Ax("loudspeaker", "", -0.5, len(sources) - 0.5, names=tuple(source.id for source in sources))
    values = [value for _, value in (*amplified, *borne)]
    if not values:
        return Chart("levels", title, x, Ax("level", "dB", 80.0, 110.0), lacks=next(iter(lacks.values()), ("", "")))
    wanted = view.wanted().value
    values.append(wanted)
    asked = tuple((float(number), wanted) for number in range(len(sources)))
    low = _STEP_DB * math.floor((min(values) - 1.0) / _STEP_DB)
    high = _STEP_DB * math.ceil((max(values) + 1.0) / _STEP_DB)
    # What its own amplifier drives has no line for one; where all have, nothing is said of amplifiers.
    given = (Curve("the amplifier gives", tuple(amplified)),) if amplified or lacks else ()
    return Chart(
        "levels", title, x, Ax("level", "dB", low, high),
        (Curve("the loudspeaker bears", tuple(borne)), *given, Curve("asked for", asked, role="target")),
        assumes=tuple(assumes), unknown=tuple((float(number), *lack) for number, lack in lacks.items()),
    )  # fmt: skip


CURVES: Final[tuple[Callable[[Figures], Chart | None], ...]] = (bass, decay, levels)


def charts(figures: Figures) -> Iterator[Chart]:
    """Yield the charts that there are."""
    for curve in CURVES:
        chart = curve(figures)
        if chart is not None:
            yield chart
