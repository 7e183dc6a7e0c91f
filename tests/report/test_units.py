"""A figure is told in the units that the file writes, as closely as it is known, and never as if it met its limit."""

from __future__ import annotations

import pickle
import re
from pathlib import Path

import pytest
from click.testing import CliRunner
from hypothesis import given, settings
from hypothesis import strategies as st

from roomlint.cli import main
from roomlint.design.quantity import Assumption
from roomlint.measure.figure import Figure
from roomlint.report.units import Units, inward
from roomlint.review.window import Window
from roomlint.source.dimensions import last_digit

METRIC, US = Units(), Units("us")


def figure(value, unit="m", *, u=0.0, name="distance"):
    return Figure.plain(name, unit, value, u=u)


def told(units, one, window=None):
    return units.figure(one, window)


@pytest.mark.parametrize(
    ("value", "unit", "metric", "us"),
    [
        (2.3, "m", "2.30 m", "7 ft 6 1/2 in"),
        (2.4384, "m", "2.44 m", "8 ft"),
        (0.25, "m", "0.25 m", "9 7/8 in"),
        (0.015, "m", "15 mm", "9/16 in"),
        (83.0, "mm", "83 mm", "3 1/4 in"),
        (-0.1016, "m", "-0.10 m", "-4 in"),
        (0.0, "m", "0 mm", "0 in"),
        (890.0, "N", "890 N", "200 lb"),
        (20.0, "kg", "20.0 kg", "44.1 lb"),
        (1.5, "m2", "1.50 m²", "16.1 sq ft"),
        (2.08e-6, "m2", "2.1 mm²", "14 AWG"),
        (2.5e-6, "m2", "2.5 mm²", "2.5 mm²"),
        (20.0, "degC", "20.0 degC", "68 degF"),
        (20.6, "A", "20.6 A", "20.6 A"),
        (12.34, "dB", "12.3 dB", "12.3 dB"),
        (2.69, "", "2.69", "2.69"),
        (0.0042, "ms", "0.0042 ms", "0.0042 ms"),
        (0.0702, "deg", "0.07 deg", "0.07 deg"),
        (1e-13, "deg", "0.0 deg", "0.0 deg"),
    ],
)
def test_a_number_in_both_systems(value, unit, metric, us):
    assert METRIC.number(value, unit) == metric
    assert US.number(value, unit) == us


@pytest.mark.parametrize(
    ("u", "shown"),
    [(0.03, "7 ft 7 in"), (0.013, "7 ft 6 1/2 in"), (0.0064, "7 ft 6 1/2 in"), (0.0016, "7 ft 6 9/16 in")],
)
def test_the_fraction_of_an_inch_is_the_one_that_the_uncertainty_deserves(u, shown):
    assert told(US, figure(2.3, u=u)) == shown


@pytest.mark.parametrize(
    ("value", "shown"),
    [(21.96, "21.96 deg left"), (21.996, "21.996 deg left"), (22.0, "22.0 deg left"), (-31.0, "31.0 deg right")],
)
def test_a_figure_near_its_limit_is_told_in_enough_digits_to_differ_from_it(value, shown):
    assert told(METRIC, figure(value, "deg", name="azimuth"), Window(22.0, 32.0, "deg")) == shown


@settings(max_examples=300, deadline=None)
@given(
    st.floats(0.001, 60.0), st.floats(-0.05, 0.05),
    st.sampled_from(["m", "mm", "deg", "N", "kg", "degC", "", "dB", "A"]),
    st.sampled_from([METRIC, US]), st.floats(0.0, 0.2),
)  # fmt: skip
def test_no_figure_outside_its_window_reads_like_the_limit(edge, beyond, unit, units, u):
    window = Window(None, edge, unit)
    value = edge + abs(beyond)
    if abs(beyond) < 1e-4 * max(edge, 1.0):
        return
    scale = units.of([figure(value, unit, u=u)], window)
    assert f"at most {scale.figures([figure(value, unit, u=u)], window)}" != scale.window(window)


@pytest.mark.parametrize(
    ("window", "metric", "us"),
    [
        (Window(0.5, None, "m"), "at least 0.50 m", "at least 19 3/4 in"),
        (Window(None, 0.5, "m"), "at most 0.50 m", "at most 19 1/2 in"),
        (Window(22.0, 32.0, "deg"), "22 to 32 deg", "22 to 32 deg"),
        (Window(0.505, 2.0, "m"), "0.505 to 2 m", "1 ft 8 in to 6 ft 6 1/2 in"),
        (Window(1.0, 1.0, ""), "exactly 1", "exactly 1"),
        (Window(None, 0.0033, "ms"), "at most 0.0033 ms", "at most 0.0033 ms"),
    ],
)
def test_an_edge_is_a_round_number_on_the_strict_side(window, metric, us):
    assert METRIC.window(window) == metric
    assert US.window(window) == us


def test_the_sides_of_a_pair_are_told_together():
    pair = [figure(value, "deg", name="azimuth") for value in (17.4, -17.9)]
    assert METRIC.of(pair).figures(pair) == "17.4 to 17.9 deg to either side"
    assert METRIC.of(pair[:1]).figures(pair[:1]) == "17.4 deg left"
    assert METRIC.figure(figure(0.01, "deg", name="azimuth")) == "straight ahead"


def test_before_and_after_stand_in_one_figure():
    scale = METRIC.of([figure(3.1)])
    assert scale.figures([figure(3.1)], None, figure(2.69)) == "2.69 → 3.10 m"
    turned = figure(-2.4, "deg", name="azimuth")
    assert METRIC.of([turned]).figures([turned], None, figure(17.4, "deg", name="azimuth")) == (
        "17.4 deg left → 2.4 deg right"
    )


@settings(max_examples=200, deadline=None)
@given(st.floats(0.0, 9.0), st.floats(0.0, 2.0))
def test_a_remedy_s_range_lies_inside_the_one_that_was_tried(low, width):
    high = low + width
    text = inward(low, high, "m", US)
    ends = [_metres(end) for end in re.split(" to ", text)]
    if width > 0.02:
        assert low - 1e-6 <= ends[0] <= ends[-1] <= high + 1e-6


def _metres(text):
    feet, inches = re.fullmatch(r"(?:(\d+) ft)? ?(?:([\d/ ]+?) ?(?:in)?)?", text).groups()
    parts = sum(int(a) / int(b or 1) for a, _, b in (part.partition("/") for part in (inches or "0").split()))
    return int(feet or 0) * 0.3048 + parts * 0.0254


def test_before_and_after_are_told_in_enough_digits_to_differ():
    now = figure(0.402)
    assert METRIC.of([now]).figures([now], None, figure(0.398)) == "0.398 → 0.402 m"


@pytest.mark.parametrize(
    ("before", "now", "words"),
    [(-0.2, -0.82, "0.20 → 0.82 m"), (0.3, -0.82, "0.82 m"), (None, -0.82, "0.82 m")],
)
def test_how_far_into_something_it_reaches_is_told_without_a_sign(before, now, words):
    was = figure(before) if before is not None else None
    assert METRIC.of([figure(now)]).sizes([figure(now)], was) == words


@pytest.mark.parametrize(
    ("name", "values", "told"),
    [
        ("clearance to a door's leaf", [0.5], "0.50 m or more"),
        ("clearance to a door's leaf", [0.0137, 0.5], "0.01 to 0.50 m or more"),
        ("clearance to a door's leaf", [0.2, 0.3], "0.20 to 0.30 m"),
        ("overlap", [-0.5, -0.03], "-0.03 to -0.50 m or less"),
        ("distance", [0.5], "0.50 m"),
    ],
)
def test_a_clearance_that_nobody_measured_farther_is_so_much_or_more(name, values, told):
    figures = [figure(value, name=name) for value in values]
    assert METRIC.of(figures).figures(figures) == told


def test_a_length_below_a_foot_has_no_feet():
    figures = [figure(inches * 0.0254) for inches in (9.0, 44.0)]
    assert US.of(figures).figures(figures) == "9 in to 3 ft 8 in"


@pytest.mark.parametrize(
    ("value", "unit", "shown"),
    [
        (0.756, "ms", 1.0), (0.0123, "ms", 1.0), (17.4, "deg", 1.0), (0.125, "deg", 1.0), (1.25, "deg", 1.0),
        (2.69, "", 1.0), (0.1745, "", 1.0), (0.0745, "", 1.0), (0.25, "m", 1.0), (0.018, "m", 1000.0),
        (2.5e-6, "m2", 1e6), (985.0, "N", 1.0), (226.87, "Pa", 1.0),
    ],
)  # fmt: skip
def test_the_last_digit_that_a_comparison_goes_by_is_the_one_that_is_shown(value, unit, shown):
    text = Units().number(value, unit).split()[0]
    step = 10.0 ** -len(text.partition(".")[2]) / shown
    assert last_digit(unit, value) == pytest.approx(step)


def test_what_is_assumed_is_told_in_the_units_of_the_file_and_survives_another_process():
    words = Assumption("a seat {} wide in air of {}, as none is given", (0.7, "m"), (20.0, "degC"))
    assert METRIC.assumption(words) == words == "a seat 0.70 m wide in air of 20 degC, as none is given"
    sent = pickle.loads(pickle.dumps(words))  # noqa: S301 - our own bytes
    assert sent == words
    assert US.assumption(sent) == "a seat 2 ft 3 1/2 in wide in air of 68 degF, as none is given"
    assert US.assumption("closed room with rigid walls") == "closed room with rigid walls"


@pytest.mark.parametrize("form", ["text", "markdown"])
def test_a_room_in_feet_has_no_assumption_in_metres(form):
    room = Path(__file__).parents[2] / "example_projects" / "garden-studio" / "quick.room.yaml"
    told = CliRunner().invoke(main, ["check", str(room), "--verdicts", "--format", form]).output
    assert re.search(r"a cabinet 9 7/8 in wide, as its sheet is not given", told.replace("\n", " "))
    assert not re.search(r"\d (m|mm|N|degC)\b", told)
