"""Uncertainty carried to first order, against hand arithmetic."""

from __future__ import annotations

import math

import pytest

from roomlint.design.base import Value
from roomlint.measure.figure import figure, number


def test_sum_adds_as_root_of_squares() -> None:
    made = figure("sum", "m", lambda a, b: a + b, Value(1.0, 0.03), Value(2.0, 0.04))
    assert made.u == pytest.approx(0.05)


def test_a_product_takes_each_input_by_its_slope() -> None:
    # d(ab) = b da + a db: 5 x 0.01 = 0.05 and 2 x 0.02 = 0.04; root of squares 0.0640.
    made = figure("area", "m2", lambda a, b: a * b, Value(2.0, 0.01), Value(5.0, 0.02))
    assert made.u == pytest.approx(math.hypot(0.05, 0.04))


def test_largest_share_comes_first() -> None:
    small, large = Value(1.0, 0.01), Value(1.0, 0.2)
    made = figure("sum", "m", lambda a, b: a + b, small, large)
    assert made.shares[0].input is large


def test_an_input_known_exactly_brings_nothing() -> None:
    assert figure("same", "m", lambda a: a, Value(1.0)).u == 0


def test_an_angle_that_passes_180_degrees_is_differenced_the_short_way() -> None:
    def wrapped(angle: float) -> float:
        return (angle + 180) % 360 - 180

    assert figure("azimuth", "deg", wrapped, Value(179.0, 2.0)).u == pytest.approx(2.0)


def test_outside_the_formulas_range_the_other_side_tells_the_slope() -> None:
    def root(x: float) -> float:
        if x < 0:
            raise ValueError("below zero")
        return 3 * x

    assert figure("root", "m", root, Value(0.1, 0.2)).u == pytest.approx(0.6)


@pytest.mark.parametrize(
    ("value", "unit", "text"),
    [
        (-0.0001, "m", "-0.00010"),
        (0.00000312, "m", "0.0000031"),
        (3.2e-15, "deg", "0.0"),
        (-7e-16, "m", "0.00"),
        (0.0, "m", "0.00"),
        (-0.0, "deg", "0.0"),
        (12.345, "deg", "12.3"),
    ],
)
def test_numbers_show_what_the_trade_measures(value: float, unit: str, text: str) -> None:
    assert number(value, unit) == text


def test_a_formula_that_holds_on_neither_side_is_refused_not_taken_as_exact() -> None:
    def only_here(x: float) -> float:
        if x != 1.0:
            raise ValueError("nowhere else")
        return x

    with pytest.raises(ValueError, match="too uncertain"):
        figure("point", "m", only_here, Value(1.0, 0.1))
