"""What a wall or a ceiling that stands a little elsewhere does, against the room solved anew with it there."""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np
import pytest

from roomlint import roof
from roomlint.figures.modal_sum import k_squared
from roomlint.figures.moved_room import change, heard, skin
from roomlint.figures.room_response import solve

if TYPE_CHECKING:
    from roomlint.figures.modal_sum import ComplexArray
    from roomlint.plane import Outline
    from roomlint.roof import Facet

C = 343.0
TOP_HZ = 80.0
BAND = [float(hz) for hz in range(20, 81, 3)]
DECAY_S = 0.5
SOURCES = [(2.6, 0.3, 0.2), (4.2, 0.25, 0.25)]
EARS = [(2.5, 2.2, 1.1), (3.4, 1.6, 1.15), (1.2, 1.3, 1.0)]
BY_M = 0.004
WITHIN = 0.08
"""A share of the change: the triangles are coarse, and the change is not quite linear."""
AT_INNER_CORNER = 0.1
"""The same where an inner corner moves, at which the pressure is steep without end."""


def oblong(width: float, length: float) -> Outline:
    return ((0.0, length), (width, length), (width, 0.0), (0.0, 0.0))


def ell(width: float = 6.4, niche: float = 3.7) -> Outline:
    return ((0.0, 5.2), (niche, 5.2), (niche, 2.9), (width, 2.9), (width, 0.0), (0.0, 0.0))


Shape = tuple["Outline", "tuple[Facet, ...]"]
PAIRS: dict[str, tuple[Shape, Shape]] = {
    "a box made wider": tuple((w, roof.flat(w, 2.5)) for w in (oblong(5.0, 4.0), oblong(5.0 + BY_M, 4.0))),
    "a box made longer": tuple((w, roof.flat(w, 2.5)) for w in (oblong(5.0, 4.0), oblong(5.0, 4.0 + BY_M))),
    "a box made higher": tuple((oblong(5.0, 4.0), roof.flat(oblong(5.0, 4.0), h)) for h in (2.5, 2.5 + BY_M)),
    "an L made wider": tuple((w, roof.flat(w, 2.5)) for w in (ell(), ell(6.4 + BY_M))),
    "an L with a wider niche": tuple((w, roof.flat(w, 2.5)) for w in (ell(), ell(niche=3.7 + BY_M))),
    "a slope that is steeper": tuple(
        (oblong(5.0, 4.0), roof.mono_pitch(oblong(5.0, 4.0), 2.0, high, 0.0)) for high in (3.2, 3.2 + BY_M)
    ),
    "a sloped room made wider": tuple(
        (w, roof.mono_pitch(w, 2.0, 3.2, 0.0)) for w in (oblong(5.0, 4.0), oblong(5.0 + BY_M, 4.0))
    ),
}  # type: ignore[assignment]


def foretold(here: Shape, there: Shape) -> ComplexArray:
    response, cut = solve(*here, TOP_HZ, C), skin(*here)
    (at_both,) = heard(response, cut.points, [*SOURCES, *EARS], BAND, (DECAY_S,))
    swept = cut.swept_m3(here[0], *there)
    k2 = k_squared(BAND, DECAY_S, C)
    return change(cut, swept, at_both[:, : len(SOURCES)], at_both[:, len(SOURCES) :], k2)


@pytest.mark.parametrize("name", PAIRS)
def test_a_moved_surface_is_foretold_by_the_room_as_it_was_solved(name: str) -> None:
    here, there = PAIRS[name]
    before, after = (solve(*shape, TOP_HZ, C).transfer(SOURCES, EARS, BAND, DECAY_S) for shape in (here, there))
    told = foretold(here, there)
    within = AT_INNER_CORNER if "niche" in name else WITHIN
    assert np.linalg.norm(told - (after - before)) < within * np.linalg.norm(after - before)


def test_the_pressure_zone_falls_as_the_volume_grows() -> None:
    # By hand: far below the first mode G is -1/(k^2 V), so that a volume that grows by a share takes that share off.
    here, there = PAIRS["an L made wider"]
    response, cut, hertz = solve(*here, TOP_HZ, C), skin(*here), [1.0]
    (at_both,) = heard(response, cut.points, [*SOURCES, *EARS], hertz, (DECAY_S,))
    k2 = k_squared(hertz, DECAY_S, C)
    told = change(cut, cut.swept_m3(here[0], *there), at_both[:, :2], at_both[:, 2:], k2)
    volume, grown = 2.5 * (6.4 * 2.9 + 3.7 * 2.3), 2.5 * 2.9 * BY_M
    assert told == pytest.approx(np.full_like(told, 4 * np.pi / k2[0] / volume * grown / volume), rel=0.02)


def test_the_swept_volume_is_what_the_room_grows_by() -> None:
    for here, there in PAIRS.values():
        grown = roof.volume_m3(there[1]) - roof.volume_m3(here[1])
        assert skin(*here).swept_m3(here[0], *there).sum() == pytest.approx(grown, rel=0.01)


def test_a_source_on_the_wall_that_moves_is_heard_all_the_same() -> None:
    here, there = PAIRS["a box made wider"]
    response, cut = solve(*here, TOP_HZ, C), skin(*here)
    (at_both,) = heard(response, cut.points, [(5.0, 2.0, 0.4), *EARS], BAND, (DECAY_S,))
    k2 = k_squared(BAND, DECAY_S, C)
    told = change(cut, cut.swept_m3(here[0], *there), at_both[:, :1], at_both[:, 1:], k2)
    assert np.isfinite(told).all()
    assert np.abs(told).max() < np.abs(response.transfer([(5.0, 2.0, 0.4)], EARS, BAND, DECAY_S)).max()
