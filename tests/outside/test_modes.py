"""Room modes against printed handbook tables and worked room-ratio examples."""

import pytest

from roomlint.figures import modes as m
from roomlint.figures.bass import BassSource, mode_drive

FOOT = 0.3048
C_1130 = 1130 * FOOT  # the handbooks' round 1130 ft/s

ROOM_A = (6.0, 4.5, 2.7)
ROOM_C = (16 * FOOT, 12 * FOOT, 8 * FOOT)
ROOM_D = (23 * FOOT, 17 * FOOT, 9 * FOOT)
# A university listening room built to IEC 60268-13: 6.52 m by 4.20 m by 2.68 m, from its facility page.
ROOM_E = (6.52, 4.20, 2.68)


def test_poor_room_matches_printed_axial_table() -> None:
    # Handbook for Sound Engineers (4th ed.), chapter on small rooms, p. 130: 16 x 12 x 8 ft, c = 1130 ft/s.
    listed = m.axial_modes(ROOM_C, 145, C_1130)
    printed = [35.31, 47.08, 70.63, 70.63, 94.17, 105.94, 141.25, 141.25, 141.25]
    assert [mode.frequency_hz for mode in listed] == pytest.approx(printed, abs=0.01)


def test_news_studio_modes_match_printed_figures() -> None:
    # Master Handbook of Acoustics (6th ed.), p. 216; dimensions inferred from the printed frequencies.
    size = (23 * FOOT + 4 * 0.0254, 16 * FOOT, 10 * FOOT)
    c = 1128.6 * FOOT
    printed = {(1, 0, 0): 24.18, (0, 1, 0): 35.27, (1, 1, 0): 42.76, (2, 0, 0): 48.37, (0, 0, 1): 56.43}
    for indices, frequency in printed.items():
        assert m.mode_frequency_hz(size, indices, c) == pytest.approx(frequency, abs=0.02)


def test_modes_of_a_listening_room_match_an_independent_computation() -> None:
    expected = [26.30, 40.83, 48.57, 52.61, 63.99, 66.60, 69.19, 75.91, 78.91, 80.34, 81.67, 82.84]
    assert [x.frequency_hz for x in m.modes(ROOM_E, 83, 343)] == pytest.approx(expected, abs=0.01)


@pytest.mark.parametrize(("limit", "direct"), [(50, 3), (80, 10), (100, 17), (150, 44), (200, 92)])
def test_mode_count_matches_an_independent_computation(limit: float, direct: int) -> None:
    assert len(m.modes(ROOM_A, limit, 343)) == direct


def test_handbooks_good_room_breaks_its_own_axial_spacing_rule() -> None:
    # p. 134 asks for axial modes no nearer than 5 Hz and no further than 20 Hz; p. 130 calls this room good.
    steps = [gap.gap_hz for gap in m.gaps(m.axial_modes(ROOM_D, 99, C_1130))]
    assert min(steps) == pytest.approx(3.7, abs=0.05)
    assert max(steps) == pytest.approx(24.6, abs=0.05)


@pytest.mark.parametrize(
    ("size", "lower", "length_ratio", "upper"),
    [
        (ROOM_A, 1.8333, 2.2222, 3.5000),
        (ROOM_E, 1.724, 2.433, 3.052),
        (ROOM_D, 2.078, 2.556, 4.500),
        ((7.0, 3.5, 2.4), 1.604, 2.917, 2.5625),
        ((5.0, 5.0, 2.5), 2.2, 2.0, 5.0),
        (ROOM_C, 1.65, 2.0, 2.75),
    ],
)
def test_room_ratio_window_matches_hand_arithmetic(
    size: m.Size, lower: float, length_ratio: float, upper: float
) -> None:
    found = m.proportion(size)
    assert (found.lower, found.length_ratio, found.upper) == pytest.approx((lower, length_ratio, upper), abs=0.0006)


@pytest.mark.parametrize(
    ("indices", "factors"),
    [
        ((1, 0, 0), (0, 0, 0, 0, 1, 1)),
        ((0, 1, 0), (0, 0, 0, 0, 1, 0)),
        ((1, 1, 0), (0, 0, 0, 0, 1, 0)),
        ((2, 0, 0), (0, 1, 1, -1, 1, 1)),
        ((0, 2, 0), (0, 1, -1, 1, 1, -1)),
        ((2, 1, 0), (0, 0, 0, 0, 1, 0)),
        ((2, 2, 0), (-1, 1, -1, -1, 1, -1)),
    ],
)
def test_symmetric_subwoofers_cancel_the_modes_that_symmetry_says(
    indices: m.Indices, factors: tuple[float, ...]
) -> None:
    # Exact from the cosines; the published work on several subwoofers (2002) rests on it.
    x, y, _ = ROOM_A
    front, rear, left, right = (0, y / 2, 0), (x, y / 2, 0), (x / 2, 0, 0), (x / 2, y, 0)
    corners = [(0.0, 0.0, 0.0), (0.0, y, 0.0), (x, 0.0, 0.0), (x, y, 0.0)]
    layouts = [[front, rear, left, right], corners, [front, rear], [left, right], corners[:1], [front]]
    found = [mode_drive(ROOM_A, indices, [BassSource(at) for at in layout], 343).real for layout in layouts]
    assert found == pytest.approx(factors, abs=1e-12)
