"""Two-driver lobes against hand arithmetic with c = 343 m/s."""

import pytest

from roomlint.figures import lobing


@pytest.mark.parametrize(
    ("spacing", "frequency", "null", "half_power"), [(0.36, 2500, 10.99, 5.47), (0.30, 2000, 16.61, 8.22)]
)
def test_lobe_angles_match_hand_arithmetic(spacing: float, frequency: float, null: float, half_power: float) -> None:
    # 343 / (2 x 2500 x 0.36) = 0.19056, arcsine 10.985 deg
    assert lobing.null_angle_deg(spacing, frequency, 343) == pytest.approx(null, abs=0.006)
    assert lobing.half_power_angle_deg(spacing, frequency, 343) == pytest.approx(half_power, abs=0.006)


def test_low_crossover_has_no_null_but_is_three_decibels_down_at_fifty_degrees() -> None:
    assert lobing.null_angle_deg(0.28, 400, 343) == 90
    assert lobing.half_power_angle_deg(0.28, 400, 343) == pytest.approx(49.96, abs=0.005)
