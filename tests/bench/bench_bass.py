"""Milliseconds for the bass of each shape of room, and whether it took scipy; run by hand, never as a timed test.

    OPENBLAS_NUM_THREADS=1 python tests/bench/bench_bass.py

Best of several runs, 20 to 80 Hz. Solved: from plan and ceiling to modes. Asked: five sources, eight ears, 61 steps of
frequency in a solved room. Again: another decay time. Error: what the coarser resolution changes in single paths
(median, 99 %).
"""

from __future__ import annotations

import sys
import time
from typing import TYPE_CHECKING

import numpy as np

from roomlint import roof
from roomlint.figures import room_response
from roomlint.figures.bass import level_db
from roomlint.roof import Facet

if TYPE_CHECKING:
    from collections.abc import Callable

OBLONG = ((0.0, 0.0), (5.4, 0.0), (5.4, 4.2), (0.0, 4.2))
ELL = ((0.0, 0.0), (6.4, 0.0), (6.4, 2.9), (3.7, 2.9), (3.7, 5.2), (0.0, 5.2))
YOU = ((0.0, 0.0), (7.0, 0.0), (7.0, 5.0), (5.0, 5.0), (5.0, 2.6), (2.0, 2.6), (2.0, 5.0), (0.0, 5.0))
CUT = ((0.0, 0.0), (5.4, 0.0), (5.4, 3.2), (4.4, 4.2), (0.0, 4.2))
HIP = (
    Facet(((0.0, 0.0), (5.4, 0.0), (3.3, 2.1), (2.1, 2.1)), 0.0, 0.6, 1.6),
    Facet(((5.4, 4.2), (0.0, 4.2), (2.1, 2.1), (3.3, 2.1)), 0.0, -0.6, 4.12),
    Facet(((0.0, 4.2), (0.0, 0.0), (2.1, 2.1)), 0.6, 0.0, 1.6),
    Facet(((5.4, 0.0), (5.4, 4.2), (3.3, 2.1)), -0.6, 0.0, 4.84),
)
ROOMS = {
    "box": (OBLONG, roof.flat(OBLONG, 2.5)),
    "L, flat": (ELL, roof.flat(ELL, 2.5)),
    "U, flat": (YOU, roof.flat(YOU, 2.5)),
    "mono-pitch": (OBLONG, roof.mono_pitch(OBLONG, 1.5, 3.2, 0.0)),
    "gable": (OBLONG, roof.gable(OBLONG, 1.2, 3.0, ridge_at_m=1.9)),
    "cut corner, flat": (CUT, roof.flat(CUT, 2.5)),
    "hip": (OBLONG, HIP),
    "corner heights": (OBLONG, roof.over_corners(OBLONG, [2.2, 2.6, 3.0, 2.3])),
}
SOURCES = [(0.3, 0.3, 0.2), (5.0, 0.3, 0.2), (0.3, 2.4, 0.2), (2.5, 0.2, 0.2), (4.9, 2.4, 0.25)]
EARS = [(1.6 + 0.5 * column, 1.2 + 0.7 * row, 1.1) for row in range(2) for column in range(4)]
BAND = [float(hz) for hz in range(20, 81)]


def best_ms(work: Callable[[], object], runs: int) -> float:
    times = []
    for _ in range(runs):
        start = time.perf_counter()
        work()
        times.append(time.perf_counter() - start)
    return min(times) * 1e3


def main() -> None:
    print(f"{'room':17s} {'solver':8s} {'modes':>5s} {'solved':>8s} {'asked':>7s} {'again':>7s}  error, dB      scipy")
    for name, (outline, facets) in ROOMS.items():
        shape = room_response.solve(outline, facets, 80.0, 343.0).shape

        def fresh() -> room_response.RoomResponse:
            room_response._solve.cache_clear()  # noqa: SLF001 - the cache would answer
            room = room_response.solve(outline, facets, 80.0, 343.0)  # noqa: B023 - called at once
            assert room.modes
            return room

        room = fresh()
        solved = best_ms(fresh, 5)
        asked = best_ms(lambda: room.transfer(SOURCES, EARS, BAND, 0.5), 30)  # noqa: B023
        paths = room.paths(SOURCES, EARS)
        again = best_ms(lambda: paths.transfer(BAND, 0.3), 30)  # noqa: B023
        fine, coarse = (level_db(one.transfer(SOURCES, EARS, BAND, 0.5)) for one in (room, room.coarser))
        error = np.quantile(np.abs(fine - coarse), [0.5, 0.99])
        print(
            f"{name:17s} {shape.kind:8s} {len(room.frequencies_hz):5d} {solved:8.2f} {asked:7.2f} {again:7.2f}"
            f"  {error[0]:.4f} {error[1]:.4f}  {'loaded' if 'scipy' in sys.modules else 'not loaded'}"
        )


if __name__ == "__main__":
    main()
