"""Times of arrival against ISO 9613-1 values and worked examples."""

from __future__ import annotations

import pytest

from roomlint.figures import delay

C20 = 343.2


# ISO 9613-1:1993, formula A.5, as the public packages pyfar 0.8.1 and acoustic-toolbox 0.2.2 compute it.
@pytest.mark.parametrize(
    ("temperature", "speed"),
    [(0, 331.29), (10, 337.30), (15, 340.26), (20, 343.20), (22, 344.37), (25, 346.11), (30, 349.00)],
)
def test_speed_of_sound(temperature: float, speed: float) -> None:
    assert delay.speed_of_sound_m_s(temperature) == pytest.approx(speed, abs=0.006)


# pyroomacoustics 0.10.1 uses another, cruder formula with humidity; they agree to a third of a per cent at home.
def test_speed_of_sound_agrees_with_a_cruder_formula() -> None:
    crude = 331.4 + 0.6 * 20 + 0.0124 * 50
    assert delay.speed_of_sound_m_s(20) == pytest.approx(crude, rel=0.003)


def test_worked_arrivals_at_a_side_seat() -> None:
    assert delay.arrival_spread_ms((2.4, 3.4), (0.0, 0.0), C20) == pytest.approx(2.914, abs=5e-4)


def test_worked_distance_entered_in_place_of_a_delay() -> None:
    assert delay.distance_as_delay_ms(2.9, 3.1, C20) == pytest.approx(0.583, abs=5e-4)
