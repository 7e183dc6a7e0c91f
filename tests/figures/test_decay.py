"""What holds of any decay, and where the formulas refuse."""

from __future__ import annotations

import pytest

from roomlint.figures import absorption, decay
from roomlint.figures.decay import Side
from roomlint.figures.domain import Refused


def test_where_absorption_is_little_and_even_all_formulas_agree() -> None:
    sides = [Side(area, 0.01 * area) for area in (24.3, 32.4, 54.0)]
    found = [
        decay.sabine_s(72.9, 1.107, 0.0, 343.0),
        decay.eyring_s(72.9, 110.7, 1.107, 0.0, 343.0),
        decay.arau_s(72.9, sides, 0.0, 343.0),
    ]
    assert found[1:] == pytest.approx([found[0]] * 2, rel=6e-3)


def test_even_absorption_makes_the_uneven_formula_the_even_one() -> None:
    sides = [Side(area, 0.3 * area) for area in (24.3, 32.4, 54.0)]
    assert decay.arau_s(72.9, sides, 0.0, 343.0) == pytest.approx(decay.eyring_s(72.9, 110.7, 33.21, 0.0, 343.0))


def test_air_shortens_every_decay() -> None:
    assert decay.sabine_s(72.9, 19.17, 0.005, 343.0) < decay.sabine_s(72.9, 19.17, 0.0, 343.0)
    assert decay.eyring_s(72.9, 110.7, 19.17, 0.005, 343.0) < decay.eyring_s(72.9, 110.7, 19.17, 0.0, 343.0)


def test_directions_of_a_box_and_of_what_is_none() -> None:
    walls = [(0.6, 0.8, 0.0), (-0.8, 0.6, 0.0), (-0.6, -0.8, 0.0), (0.8, -0.6, 0.0)]
    assert decay.directions([*walls, (0.0, 0.0, 1.0), (0.0, 0.0, -1.0)]) == (0, 1, 0, 1, 2, 2)
    with pytest.raises(Refused, match="square"):
        decay.directions([*walls, (0.0, 0.6, -0.8)])


@pytest.mark.parametrize(
    "asked",
    [
        lambda: decay.sabine_s(0.0, 10.0, 0.0, 343.0),
        lambda: decay.sabine_s(50.0, 0.0, 0.0, 343.0),
        lambda: decay.eyring_s(50.0, 80.0, 80.0, 0.0, 343.0),
        lambda: decay.arau_s(50.0, [Side(10.0, 0.0), Side(10.0, 1.0), Side(10.0, 1.0)], 0.0, 343.0),
        lambda: decay.air_absorption_per_m(20.0, 20.0, 50.0),
        lambda: decay.air_absorption_per_m(1000.0, 60.0, 50.0),
        lambda: decay.air_absorption_per_m(1000.0, 20.0, 5.0),
        lambda: decay.schroeder_hz(-1.0, 50.0),
        lambda: decay.critical_distance_m(1.0, 50.0, 0.0),
        lambda: decay.directivity_factor(0.0, 90.0),
        lambda: decay.nominal_decay_s(0.0),
        lambda: absorption.coefficient(("marble",), 500),
        lambda: absorption.coefficient(("glass",), 63),
    ],
)
def test_outside_its_range_a_formula_refuses(asked: object) -> None:
    with pytest.raises(Refused):
        asked()  # type: ignore[operator]


def test_a_single_source_is_good_to_ten_per_cent() -> None:
    assert absorption.coefficient(("vinyl",), 500) == pytest.approx((0.027, 0.033))
    assert absorption.around(1.0, 1.0) == (0.9, 0.99)


def test_a_place_within_a_range() -> None:
    found = absorption.Range(0.1, 0.3)
    assert [found.at(share) for share in (-1.0, 0.0, 1.0)] == pytest.approx([0.1, 0.2, 0.3])


def test_every_row_has_six_octaves_a_source_and_an_honest_grade() -> None:
    for row in absorption.rows():
        assert len(row.values) == len(absorption.BANDS_HZ)
        assert all(0.0 < value <= 1.0 for value in row.values)
        assert row.source
        assert row.grade in {"read", "second-hand", "practice", "memory"}
