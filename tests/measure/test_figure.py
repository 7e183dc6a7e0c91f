"""Uncertainty carried per reading, against hand arithmetic and against drawing lots."""

from __future__ import annotations

import math
import pickle
import random

import pytest
from hypothesis import given
from hypothesis import strategies as st

from roomlint.design.quantity import assumed, exact, read
from roomlint.figures.domain import Refused
from roomlint.measure.figure import Figure, NoNumberError
from roomlint.measure.world import World


def length(value: float, u: float = 0.0):
    return read(value, u, "m", None)


def made(compute, unit: str = "m") -> Figure:
    return Figure.of("made", unit, World(), compute)


def test_independent_readings_add_as_root_of_squares() -> None:
    a, b = length(1.0, 0.03), length(2.0, 0.04)
    assert made(lambda w: w(a) + w(b)).u == pytest.approx(0.05)


def test_a_product_takes_each_reading_by_its_slope() -> None:
    # d(ab) = b da + a db: 5 x 0.01 = 0.05 and 2 x 0.02 = 0.04; root of squares 0.0640.
    a, b = length(2.0, 0.01), length(5.0, 0.02)
    assert made(lambda w: w(a) * w(b), "m2").u == pytest.approx(math.hypot(0.05, 0.04))


def test_what_two_quantities_share_cancels_in_their_difference() -> None:
    # Two things 1.0 and 2.0 m from the right of a room 5 m +- 100 mm wide, each +- 1 mm: 1.4 mm, not 141.
    width, one, other = length(5.0, 0.1), length(1.0, 0.001), length(2.0, 0.001)
    left, right = width - other, width - one
    assert made(lambda w: w(right) - w(left)).u == pytest.approx(math.sqrt(2) * 0.001)
    assert made(lambda w: w(right) + w(left)).u == pytest.approx(math.hypot(0.2, 0.001, 0.001))


def test_one_reading_used_twice_counts_once_with_both_its_effects() -> None:
    a = length(3.0, 0.1)
    assert made(lambda w: w(a) + w(a)).u == pytest.approx(0.2)


def test_a_figure_made_of_figures_names_the_true_readings() -> None:
    a, b = length(3.0, 0.001), length(4.0, 0.001)
    first = made(lambda w: math.hypot(w(a), w(b)))
    second = made(lambda w: 2.0 * first.at(w) - w(a))
    assert set(second.readings) == {a.shares[0].reading, b.shares[0].reading}
    # d = 2 (0.6 da + 0.8 db) - da = 0.2 da + 1.6 db.
    assert second.u == pytest.approx(math.hypot(0.0002, 0.0016), rel=1e-3)


def test_largest_share_comes_first_and_keeps_its_sign() -> None:
    small, large = length(1.0, 0.01), length(1.0, 0.2)
    shares = made(lambda w: w(small) - w(large)).shares
    assert shares[0].reading is large.shares[0].reading
    assert shares[0].change == pytest.approx(-0.2)


def test_a_reading_known_exactly_brings_nothing_and_is_still_named() -> None:
    a = length(1.0)
    figure = made(lambda w: w(a))
    assert figure.u == 0.0
    assert figure.readings == (a.shares[0].reading,)


def test_at_a_kink_the_larger_side_counts() -> None:
    a = length(1.0, 0.1)
    assert made(lambda w: max(w(a) - 1.0, 0.0)).u == pytest.approx(0.1)
    assert made(lambda w: max(1.0 - w(a), 0.0)).u == pytest.approx(0.1)
    assert made(lambda w: abs(w(a) - 1.02)).u == pytest.approx(0.1)


def test_an_angle_that_passes_180_degrees_is_differenced_the_short_way() -> None:
    a = read(179.0, 2.0, "deg", None)
    assert made(lambda w: (w(a) + 180.0) % 360.0 - 180.0, "deg").u == pytest.approx(2.0)


def test_a_side_on_which_the_formula_does_not_hold_is_remembered() -> None:
    a = length(0.1, 0.2)

    def root(world: World) -> float:
        if world(a) < 0:
            raise Refused("below zero")
        return 3.0 * world(a)

    figure = made(root)
    assert figure.u == pytest.approx(0.6)
    assert figure.one_sided == (a.shares[0].reading,)
    assert not figure.clears(100.0, 4.0) or figure.one_sided


def test_an_assumption_is_a_reading_that_is_told() -> None:
    decay = assumed(0.5, 0.2, "s", "decay of 0.5 s")
    figure = made(lambda w: 10.0 * w(decay), "dB")
    assert figure.assumes == ("decay of 0.5 s",)
    assert figure.u == pytest.approx(2.0)


def test_assumptions_in_words_are_told_once() -> None:
    def compute(world: World) -> float:
        world.assume("side grain")
        world.assume("side grain")
        return 1.0

    assert made(compute).assumes == ("side grain",)


@pytest.mark.parametrize("value", [math.inf, -math.inf, math.nan])
def test_no_figure_is_infinite_or_no_number(value: float) -> None:
    with pytest.raises(NoNumberError):
        made(lambda _: value)


def test_a_part_is_computed_again_only_in_worlds_that_touch_it() -> None:
    a, b = length(1.0, 0.1), length(2.0, 0.1)
    calls = []

    def part(world: World) -> float:
        calls.append(1)
        return world(a) ** 2

    figure = made(lambda w: w.once("part", part) + w(b))
    assert figure.u == pytest.approx(math.hypot(0.21, 0.1))
    assert len(calls) == 3  # as read, and a moved up and down; not for b


def test_a_refusal_is_remembered() -> None:
    calls = []

    def part(_: World) -> float:
        calls.append(1)
        raise Refused("no")

    world = World()
    for _ in range(3):
        with pytest.raises(Refused, match="no"):
            Figure.of("made", "m", world, lambda w: w.once("part", part))
    assert len(calls) == 1


def test_a_figure_travels_settled() -> None:
    a = length(1.0, 0.1)
    figure = made(lambda w: 2.0 * w(a))
    back = pickle.loads(pickle.dumps(figure))  # noqa: S301  our own
    assert (back.value, back.u, back.unit, back.readings) == (2.0, pytest.approx(0.2), "m", ())


def test_moving_a_reading_that_is_exact_tells_what_would_be() -> None:
    width, from_right = length(5.0), length(1.0)
    place = width - from_right
    figure = made(lambda w: w(place))
    assert figure.moved({from_right.shares[0].reading: 0.5}) == pytest.approx(3.5)


def test_an_exact_number_rests_on_nothing() -> None:
    assert made(lambda w: w(exact(2.0))).readings == ()


@given(st.floats(0.5, 5.0), st.floats(0.5, 5.0), st.floats(0.001, 0.02), st.floats(0.001, 0.02))
def test_a_rough_look_never_calls_a_near_limit_far(x: float, y: float, ux: float, uy: float) -> None:
    a, b = length(x, ux), length(y, uy)
    fine = made(lambda w: math.hypot(w(a), w(b))).u
    assert not made(lambda w: math.hypot(w(a), w(b))).clears(2.0 * fine, 4.0)
    assert made(lambda w: math.hypot(w(a), w(b))).clears(6.0 * fine, 4.0)


def test_printed_uncertainty_is_the_95_per_cent_half_width_of_drawn_lots() -> None:
    """Readings drawn from normal distributions whose expanded uncertainty (two standard deviations) is theirs."""
    lots = random.Random(20260101)
    width, one, two, up = length(5.0, 0.03), length(1.2, 0.02), length(3.1, 0.02), length(1.6, 0.01)
    x, y, z = width - one, two, up

    def azimuth(a: float, b: float, _: float) -> float:
        return math.degrees(math.atan2(a - 2.5, b))

    def distance(a: float, b: float, c: float) -> float:
        return math.dist((a, b, c), (2.5, 0.0, 1.2))

    for function, unit in ((azimuth, "deg"), (distance, "m")):
        figure = made(lambda w, f=function: f(w(x), w(y), w(z)), unit)
        drawn = []
        for _ in range(20_000):
            w, o, t, u = (lots.gauss(q.value, q.u / 2.0) for q in (width, one, two, up))
            drawn.append(abs(function(w - o, t, u) - figure.value))
        drawn.sort()
        assert figure.u == pytest.approx(drawn[int(0.9545 * len(drawn))], rel=0.03)


@given(st.floats(0.0, 3.0), st.floats(0.001, 0.05), st.floats(0.001, 0.05))
def test_a_bound_a_metre_never_calls_a_near_limit_far(away: float, ux: float, uy: float) -> None:
    a, b = length(away, ux), length(1.0, uy)
    fine = Figure.of("made", "m", World(), lambda w: math.hypot(w(a), w(b)))
    bounded = Figure.of("made", "m", World(), lambda w: math.hypot(w(a), w(b)), per_m=1.0)
    for margin in (0.5 * fine.u, 2.0 * fine.u, 3.9 * fine.u):
        assert not bounded.clears(margin, 4.0)
    assert bounded.clears(4.1 * math.hypot(ux, uy), 4.0)


@given(
    st.floats(0.0, 3.0), st.floats(0.001, 0.05), st.floats(0.001, 0.05), st.floats(0.1, 3.0),
    st.sampled_from([None, 1.0, 2.0]),
)  # fmt: skip
def test_what_is_surely_below_is_below(away: float, ux: float, uy: float, share: float, per_m: float | None) -> None:
    a, b = length(away, ux), length(1.0, uy)

    def fresh() -> Figure:
        return Figure.of("made", "m", World(), lambda w: math.hypot(w(a), w(b)), per_m)

    most = share * fresh().u
    if fresh().is_surely_below(most):
        assert fresh().u <= most * (1.0 + 1e-9)
    else:
        assert per_m is not None or fresh().u > most * (1.0 - 1e-9)
    if fresh().is_bounded_by(most):
        assert fresh().u <= most * (1.0 + 1e-9)
    assert fresh().is_bounded_by(10.0) == (per_m is not None)


def test_where_a_formula_holds_on_one_side_only_nothing_is_sure() -> None:
    near = length(0.05, 0.1)

    def root(w: World) -> float:
        if w(near) < 0.0:
            raise Refused("below")
        return math.sqrt(w(near))

    assert not made(root).is_surely_below(10.0)


def test_the_readings_that_may_bring_most_are_looked_at_first_and_small_ones_not_at_all() -> None:
    looked: list[float] = []
    large, small = length(1.0, 0.2), [length(1.0, 0.001) for _ in range(20)]

    def compute(w: World) -> float:
        looked.append(w(large))
        return w(large) + sum(w(one) for one in small)

    figure = Figure.of("made", "m", World(), compute, per_m=1.5)
    assert figure.clears(1.0, 4.0)
    assert looked == [1.0, 1.2]


@given(st.floats(0.5, 3.0), st.lists(st.floats(0.001, 0.05), min_size=1, max_size=6), st.floats(0.0, 0.5))
def test_a_bound_changes_no_answer_to_the_wrong_side(away: float, us: list[float], margin: float) -> None:
    parts = [length(away, u) for u in us]
    plain = Figure.of("made", "m", World(), lambda w: math.hypot(*(w(part) for part in parts)))
    bounded = Figure.of("made", "m", World(), lambda w: math.hypot(*(w(part) for part in parts)), per_m=1.0)
    if bounded.clears(margin, 4.0):
        assert margin >= 4.0 * plain.u * 0.9


def test_a_figure_of_another_world_has_the_uncertainty_of_that_world() -> None:
    a = length(1.0, 0.1)
    figure = made(lambda w: w(a) ** 2)
    there = World().with_moved(a.shares[0].reading, 1.0)
    assert figure.within(there, figure.at(there)).u == pytest.approx(2.1**2 - 2.0**2)
    assert figure.elsewhere(figure.at(there)).u == pytest.approx(figure.u)


def test_a_world_that_is_moved_twice_by_one_reading_adds_both() -> None:
    a = length(1.0, 0.1)
    reading = a.shares[0].reading
    assert World().with_moved(reading, 0.5).with_moved(reading, 0.25)(a) == pytest.approx(1.75)
