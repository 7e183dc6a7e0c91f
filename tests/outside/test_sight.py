"""Lines of sight and door leaves against worked examples of the trade."""

from __future__ import annotations

import math

import pytest

from roomlint.figures import sight


# Similar triangles by hand: a surround 1.0 m high behind, a rear ear 1.3 m high, a front head between them.
def test_worked_line_of_sight() -> None:
    passed = sight.clearance_over((0.0, 3.5, 1.0), (0.0, -0.8, 1.3), (0.0, 0.5, 1.30))
    assert passed is not None
    assert passed.share == pytest.approx(0.698, abs=5e-4)
    assert passed.above_m == pytest.approx(-0.091, abs=5e-4)


# A seating-tier formula with its published example (plus.maths.org, 'How to design a stadium'): distance 30, eye 10
# above the focus, row pitch 1, clearance 0.15 asks for a riser of 0.4883.
def test_published_sightline_of_a_stadium() -> None:
    rear_eye = (0.0, 31.0, 10.0 + 0.4883)
    passed = sight.clearance_over((0.0, 0.0, 0.0), rear_eye, (0.0, 30.0, 10.0))
    assert passed is not None
    assert passed.above_m == pytest.approx(0.15, abs=1e-4)


# Cinema rows by the same formula: front eye 1.10 m, 3.20 m from the picture, row pitch 1.80 m, riser 0.30 m.
def test_worked_sightline_of_two_rows() -> None:
    passed = sight.clearance_over((0.0, 0.0, 0.75), (0.0, 5.0, 1.40), (0.0, 3.2, 1.10))
    assert passed is not None
    assert passed.above_m == pytest.approx(0.0660, abs=5e-5)


# A 762 mm leaf opening a quarter turn sweeps pi / 4 x 0.762^2 = 0.456 m2.
def test_worked_door_sweep() -> None:
    leaf = sight.DoorSwing((0.0, 0.0), 0.762, closed_deg=-90.0, swing_deg=90.0)
    assert leaf.area_m2 == pytest.approx(math.pi * 0.762**2 / 4)
    assert leaf.area_m2 == pytest.approx(0.456, abs=5e-4)
