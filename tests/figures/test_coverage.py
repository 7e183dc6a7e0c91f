"""How much weaker a loudspeaker is off its axis, by the definition of its coverage."""

from __future__ import annotations

import pytest

from roomlint.figures.coverage import OffAxis, drop_db
from roomlint.figures.domain import Refused


def test_at_its_nominal_angles_it_is_six_decibels_down() -> None:
    assert drop_db(OffAxis(0.0, 0.0), 45.0, 30.0) == 0.0
    assert drop_db(OffAxis(45.0, 0.0), 45.0, 30.0) == pytest.approx(6.0)
    assert drop_db(OffAxis(-45.0, 0.0), 45.0, 30.0) == pytest.approx(6.0)
    assert drop_db(OffAxis(0.0, 30.0), 45.0, 30.0) == pytest.approx(6.0)


def test_far_off_it_is_twelve_decibels_down_at_the_most() -> None:
    assert drop_db(OffAxis(45.0, 30.0), 45.0, 30.0) == pytest.approx(12.0)
    assert drop_db(OffAxis(170.0, 0.0), 45.0, 30.0) == pytest.approx(12.0)


def test_no_coverage_is_none() -> None:
    with pytest.raises(Refused):
        drop_db(OffAxis(0.0, 0.0), 0.0, 30.0)
