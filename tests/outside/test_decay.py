"""Decay of rooms against handbook rooms, worked formulas, the printed air tables and another program's rays."""

from __future__ import annotations

import json
from pathlib import Path
from typing import TYPE_CHECKING

import numpy as np
import pyroomacoustics
import pytest

from roomlint import roof
from roomlint.figures import absorption, areas, decay
from roomlint.figures.decay import Side
from roomlint.figures.domain import Refused

if TYPE_CHECKING:
    from collections.abc import Callable

FOOT = 0.3048
BANDS = absorption.BANDS_HZ
# 24 ln10 / c for feet and sabins is 0.049 in the handbook: at 343.24 m/s.
HANDBOOK_M_S = decay.DECAY_FACTOR * FOOT / 0.049
CONCRETE = (0.01, 0.01, 0.015, 0.02, 0.02, 0.02)
GYPSUM = (0.29, 0.10, 0.05, 0.04, 0.07, 0.09)
TILE = (0.09, 0.28, 0.78, 0.84, 0.73, 0.64)
ROOM_A = 72.9
# 6.0 x 4.5 x 2.7 m: the two short walls, the two long walls, floor and ceiling.
SIDES_A = (24.3, 32.4, 54.0)


def handbook_s(absorbed_ft2: float) -> float:
    return decay.sabine_s(3728 * FOOT**3, absorbed_ft2 * FOOT**2, 0.0, HANDBOOK_M_S)


def test_the_constant_of_the_handbook_is_that_of_this_speed() -> None:
    assert pytest.approx(344.0, rel=2e-3) == HANDBOOK_M_S


def test_untreated_handbook_room() -> None:
    # Master Handbook of Acoustics, 6th edition, pp. 236-238: 23.3 x 16 x 10 ft; 0.54 s at 125 Hz and 3.39 s at 1 kHz
    # are printed in the text.
    found = [handbook_s(373 * c + 1159 * g) for c, g in zip(CONCRETE, GYPSUM, strict=True)]
    assert [found[0], found[3]] == pytest.approx([0.54, 3.39], abs=0.005)
    assert found == pytest.approx([0.54, 1.53, 2.88, 3.39, 2.06, 1.63], abs=0.01)


def test_treated_handbook_room() -> None:
    # As printed; the book leaves the wall under the tile in the sum.
    found = [handbook_s(373 * c + 1159 * g + 340 * t) for c, g, t in zip(CONCRETE, GYPSUM, TILE, strict=True)]
    assert found == pytest.approx([0.49, 0.85, 0.56, 0.54, 0.54, 0.55], abs=0.007)


def test_one_room_by_three_formulas() -> None:
    # 6.0 x 4.5 x 2.7 m, floor 0.4 and all else 0.1, c = 343 m/s, no air: worked by hand, and to six digits by
    # acoustic-toolbox 0.2.2.
    whole = 27 * 0.4 + 83.7 * 0.1
    assert decay.sabine_s(ROOM_A, whole, 0.0, 343.0) == pytest.approx(0.6127, abs=5e-5)
    assert decay.eyring_s(ROOM_A, 110.7, whole, 0.0, 343.0) == pytest.approx(0.5580, abs=5e-5)
    sides = [Side(24.3, 2.43), Side(32.4, 3.24), Side(54.0, 27 * 0.4 + 27 * 0.1)]
    assert decay.arau_s(ROOM_A, sides, 0.0, 343.0) == pytest.approx(0.6169, abs=5e-5)


def test_carpeted_room_by_octaves() -> None:
    carpet = (0.08, 0.24, 0.57, 0.69, 0.71, 0.73)
    absorbed = [27 * c + 83.7 * g for c, g in zip(carpet, GYPSUM, strict=True)]
    assert absorbed == pytest.approx([26.433, 14.850, 19.575, 21.978, 25.029, 27.243], abs=5e-4)
    speed = decay.DECAY_FACTOR / 0.161
    sabine = [decay.sabine_s(ROOM_A, one, 0.0, speed) for one in absorbed]
    eyring = [decay.eyring_s(ROOM_A, 110.7, one, 0.0, speed) for one in absorbed]
    assert sabine == pytest.approx([0.444, 0.790, 0.600, 0.534, 0.469, 0.431], abs=6e-4)
    assert eyring == pytest.approx([0.389, 0.736, 0.545, 0.479, 0.414, 0.375], abs=6e-4)


def db_per_km(frequency_hz: float, temperature_degc: float, humidity: float) -> float:
    return decay.air_absorption_per_m(frequency_hz, temperature_degc, humidity) * 4342.9448


def test_air_against_the_printed_rows() -> None:
    # ISO 9613-1 by exact midbands, 1000 x 10^(n/10) Hz, at 70 %; the printed rows are from memory.
    exact = [1000 * 10 ** (n / 10) for n in (-12, -9, -6, -3, 0, 3, 6, 9)]
    assert [db_per_km(hz, 20, 70) for hz in exact] == pytest.approx(
        [0.1, 0.3, 1.1, 2.8, 5.0, 9.0, 22.9, 76.6], abs=0.05
    )
    assert [db_per_km(hz, 10, 70) for hz in exact] == pytest.approx(
        [0.1, 0.4, 1.0, 1.9, 3.7, 9.7, 32.8, 117.0], abs=0.15
    )


def test_air_against_two_other_programs() -> None:
    # pyfar 0.8.1 and acoustic-toolbox 0.2.2 agree to four digits at 20 degC and 50 %.
    nominal = (63, 125, 250, 500, 1000, 2000, 4000, 8000)
    assert [db_per_km(hz, 20, 50) for hz in nominal] == pytest.approx(
        [0.122, 0.440, 1.310, 2.728, 4.665, 9.887, 29.67, 105.3], rel=4e-3
    )
    assert 1e3 * decay.air_absorption_per_m(4000, 20, 50) == pytest.approx(6.831, abs=1e-3)


def test_schroeder_frequency_of_published_rooms() -> None:
    # akutek.info: 20 000 m3 and 2 s give 20 Hz; 72.9 m3 and 0.225 s give 111.11 Hz exactly.
    assert decay.schroeder_hz(2.0, 20_000) == pytest.approx(20.0)
    assert decay.schroeder_hz(0.225, ROOM_A) == pytest.approx(111.11, abs=0.005)
    assert decay.schroeder_hz(0.4, ROOM_A) == pytest.approx(148.1, abs=0.05)


def test_critical_distance_of_published_rooms() -> None:
    assert decay.critical_distance_m(2.0, 500, 1.2) == pytest.approx(1.645, abs=5e-4)
    assert decay.critical_distance_m(1.0, ROOM_A, 0.225) == pytest.approx(1.026, abs=5e-4)
    assert decay.critical_distance_m(5.0, ROOM_A, 0.3) == pytest.approx(1.987, abs=5e-4)


def test_directivity_of_what_has_one_by_definition() -> None:
    # A half space is 180 by 180 deg: twice as strong as a whole one. 90 by 40 deg by hand: 180 / asin(0.7071 x 0.3420).
    assert decay.directivity_factor(180, 180) == pytest.approx(2.0)
    assert decay.directivity_factor(90, 40) == pytest.approx(180 / 13.995, rel=1e-3)


def test_nominal_decay_of_worked_volumes() -> None:
    # 0.25 (V / 100)^(1/3): 72.9 m3 is 100 x 0.9^3.
    found = [decay.nominal_decay_s(volume) for volume in (ROOM_A, 100, 150, 250, 50, 900)]
    assert found == pytest.approx([0.225, 0.250, 0.286, 0.339, 0.2, 0.4], abs=5e-4)


def test_rows_that_are_second_hand_are_those_of_the_package_that_quotes_them() -> None:
    data = json.loads((Path(pyroomacoustics.__file__).parent / "data" / "materials.json").read_text(encoding="utf-8"))
    quoted = {tuple(one["coeffs"][:6]) for group in data["absorption"].values() for one in group.values()}
    ours = {row.values for row in absorption.rows() if row.grade == "second-hand"}
    assert len(ours) == 9
    assert ours - quoted == set()


def test_absorption_is_as_wide_as_its_sources() -> None:
    # Board on studs at 125 Hz: 0.29 in one handbook, 0.10 in another, 0.30 in a European table.
    assert absorption.coefficient(("gypsum-on-studs",), 125) == pytest.approx((0.10, 0.30))


def test_walls_under_slopes_have_the_area_that_another_program_measures() -> None:
    outline = ((0.0, 0.0), (5.0, 0.0), (5.0, 6.0), (0.0, 6.0))
    gable = roof.gable(outline, 2.0, 3.5, 0.0)  # the ridge runs along y in the middle of the width
    ell = ((0.0, 0.0), (5.0, 0.0), (5.0, 3.0), (3.0, 3.0), (3.0, 6.0), (0.0, 6.0))
    pitch = roof.mono_pitch(ell, 2.0, 3.2, 0.0)
    for plan, facets in ((outline, gable), (ell, pitch)):
        found = areas.wall_areas_m2(plan, facets)
        for number, (start, end) in enumerate(zip(plan, plan[1:] + plan[:1], strict=True)):
            middle = ((start[0] + end[0]) / 2, (start[1] + end[1]) / 2)
            top = [(*point, roof.height_m(facets, point)) for point in (end, middle, start)]
            corners = [(*start, 0.0), (*end, 0.0), *top]
            other = pyroomacoustics.wall_factory(np.array(corners).T, np.array([0.1]), np.array([0.1]))
            assert found[number] == pytest.approx(other.area(), rel=1e-5)


def test_decay_agrees_with_rays_where_they_are_a_fair_judge() -> None:
    # Image sources and rays of pyroomacoustics with half of the sound scattered: ten per cent is what it is good for.
    for share in (0.1, 0.2):
        room = pyroomacoustics.ShoeBox(
            (6.0, 4.5, 2.7), fs=16000, max_order=3, ray_tracing=True, air_absorption=False,
            materials=pyroomacoustics.Material(share, 0.5),
        )  # fmt: skip
        room.set_sound_speed(343.0)
        room.set_ray_tracing(n_rays=20_000, receiver_radius=0.5)
        room.add_source([1.0, 1.2, 1.1])
        room.add_microphone([4.3, 3.0, 1.4])
        room.compute_rir()
        rays = float(pyroomacoustics.experimental.measure_rt60(room.rir[0][0], fs=16000, decay_db=30))
        ours = decay.eyring_s(ROOM_A, sum(SIDES_A), share * sum(SIDES_A), 0.0, 343.0)
        assert ours == pytest.approx(rays, rel=0.10)


def _ringing_per_s(equation: Callable[[complex], complex], start: complex, speed_m_s: float, across: complex) -> float:
    """Return how fast a mode dies away, 1/s, by the root of a wall's own equation: sqrt(root^2 + across^2)."""
    k = start
    for _ in range(60):
        step = 1e-7
        k -= equation(k) * 2.0 * step / (equation(k + step) - equation(k - step))
    assert abs(equation(k)) < 1e-8
    return abs(((k * k + across * across) ** 0.5).imag) * speed_m_s


# Two walls a length apart with a small conductance b, all else rigid; their absorption is 8 b of their area.
@pytest.mark.parametrize("conductance", [0.001, 0.0025, 0.005])
def test_single_modes_die_away_as_walls_of_some_conductance_say(conductance: float) -> None:
    """The exact modes of a duct between two such walls, exp(2jkL) = ((1 + b)/(1 - b))^2 along it, by Newton's method.

    A mode that runs between the walls is damped as Sabine says of their absorption, one that grazes them half as much.
    """
    length, width, height, speed = 5.0, 4.0, 2.5, 343.2
    area = 2.0 * width * height
    shortest, longest = decay.modal_decays_s(
        length * width * height, 8.0 * conductance * area, 8.0 * conductance * area, speed
    )
    along = 2.0 * np.pi / length
    ring = _ringing_per_s(
        lambda k: np.exp(2j * k * length) - ((1 + conductance) / (1 - conductance)) ** 2, along - 0.01j, speed, 0.0
    )
    assert 3.0 * np.log(10.0) / ring == pytest.approx(shortest, rel=0.01)
    # Across: k_x tan(k_x L/2) = j k b for the even mode, k = sqrt(k_x^2 + (pi/W)^2).
    over = np.pi / width
    ring = _ringing_per_s(
        lambda k: k * np.tan(k * length / 2.0) - 1j * conductance * (k * k + over * over) ** 0.5,
        (2j * over * conductance / length) ** 0.5, speed, over,
    )  # fmt: skip
    assert 3.0 * np.log(10.0) / ring == pytest.approx(longest, rel=0.01)


def test_modes_ring_between_what_least_and_most_absorption_say() -> None:
    assert decay.modal_decays_s(60.0, 4.0, 12.0, 343.2) == pytest.approx((0.805, 4.83), abs=0.005)
    with pytest.raises(Refused):
        decay.modal_decays_s(60.0, 5.0, 4.0, 343.2)
